//! What must hold between elements, beyond single tables.

mod crossings;

use super::source::{Problems, Said, Source};
use crate::model::{
    BodyKind, Build, CarrierKind, EndPlace, Flows, ItemKind, Model, Name, Place, PlaceAt,
    ReadingKind, Run, RunEnd, Stance, Stock, StockShape, TapeEnd,
};
use crate::quantity::{Money, Quantity};
use crate::span::Span;
use std::collections::BTreeSet;
use tubewright_geometry::Angle;

struct Linking<'p, 'a> {
    sources: &'p [&'p Source<'a>],
    problems: &'p mut Problems,
}

/// Checks what must hold between elements; elements at fault are left out.
pub(crate) fn link(model: &mut Model, sources: &[&Source<'_>], problems: &mut Problems) {
    let mut linking = Linking { sources, problems };
    linking.readings(&mut model.build);
    linking.car(&mut model.build);
    linking.shelf(&mut model.stock);
    linking.money(&mut model.stock);
    linking.hand_made(&mut model.stock);
    linking.components(&mut model.build, &model.stock);
    linking.stand_ins(&mut model.build, &model.stock);
    linking.turned_parts(&mut model.build, &model.stock);
    linking.stretches(&mut model.build, &model.stock);
    linking.runs(&mut model.build, &model.stock);
}

impl Linking<'_, '_> {
    fn error(&mut self, span: Span, said: Said) {
        if let Some(source) = self.sources.iter().find(|source| source.file == span.file) {
            self.problems.error(source, span.range(), said);
        }
    }

    fn readings(&mut self, build: &mut Build) {
        let mut numbers = BTreeSet::new();
        let readings = core::mem::take(&mut build.readings);
        for reading in readings {
            // Told where the numbers are read; the first of the two stays.
            if !numbers.insert(reading.number) {
                continue;
            }
            let places: Vec<&Place> = match &reading.kind {
                ReadingKind::Tape { from, to, .. }
                | ReadingKind::Plumb { from, to, .. }
                | ReadingKind::Offset { from, to, .. }
                | ReadingKind::Inclination { from, to, .. }
                | ReadingKind::Bearing { from, to, .. } => vec![from, to],
                ReadingKind::Height { of, .. } => vec![of],
                ReadingKind::Symmetry { .. } | ReadingKind::Face { .. } => Vec::new(),
            };
            let mut is_sound = true;
            for place in places {
                is_sound &= self.bolt_exists(build, place);
            }
            if is_sound && self.sides_are_on_tubes(&reading.kind) {
                build.readings.push(reading);
            }
        }
    }

    fn bolt_exists(&mut self, build: &Build, place: &Place) -> bool {
        let PlaceAt::End {
            end,
            at: EndPlace::Bolt(number),
        } = &place.at
        else {
            return true;
        };
        let Some(found) = build.end(end) else {
            return true;
        };
        let count = found.bolts.len();
        if usize::try_from(*number).is_ok_and(|number| (1..=count).contains(&number)) {
            return true;
        }
        self.error(
            place.span,
            Said::new(
                format!("end `{end}` has no bolt hole {number}"),
                format!("it lists {count}"),
                "add the hole to its `bolts`, or correct the number",
            ),
        );
        false
    }

    fn sides_are_on_tubes(&mut self, kind: &ReadingKind) -> bool {
        let ReadingKind::Tape {
            from,
            to,
            holes,
            sides,
            ..
        } = kind
        else {
            return true;
        };
        for end in [TapeEnd::From, TapeEnd::To] {
            let has_hole = holes.iter().any(|hole| hole.at == end);
            let has_side = sides.iter().any(|side| side.at == end);
            if has_hole && has_side {
                let place = if end == TapeEnd::From { from } else { to };
                self.error(
                    place.span,
                    Said::new(
                        "this end of the tape lies in a hole's edge and on a tube's face at once",
                        "both would be taken off",
                        "keep `hole` or `side` for this end",
                    ),
                );
                return false;
            }
        }
        true
    }

    fn car(&mut self, build: &mut Build) {
        let mut carriers = core::mem::take(&mut build.carriers);
        carriers.retain(|carrier| match &carrier.kind {
            CarrierKind::Engine(motion)
            | CarrierKind::Wheel(motion)
            | CarrierKind::Axle(motion) => {
                self.rises(motion.rock.as_ref()) && self.rises(motion.steer.as_ref())
            }
            CarrierKind::Hung { .. } => true,
        });
        build.carriers = carriers;
        let mut bodies = core::mem::take(&mut build.bodies);
        bodies.retain(|body| {
            let BodyKind::Ground { setup } = &body.kind else {
                return true;
            };
            let is_on_wheels = build
                .setup(setup)
                .is_none_or(|setup| setup.stance == Stance::Wheels);
            if !is_on_wheels {
                self.error(
                    header(body.span),
                    Said::new(
                        format!("the ground `{}` lies in the set-up `{setup}`", body.name),
                        "on a lift or on stands the floor is not where it is under way",
                        "name a set-up whose stance is wheels",
                    ),
                );
            }
            is_on_wheels
        });
        build.bodies = bodies;
    }

    fn rises(&mut self, pair: Option<&[Quantity<Angle>; 2]>) -> bool {
        let Some([least, most]) = pair else {
            return true;
        };
        if least.rad() <= most.rad() {
            return true;
        }
        self.error(
            least.span,
            Said::new(
                format!("the range goes from {} to {}", least.text, most.text),
                "the first is the least and the second the most",
                "swap the two",
            ),
        );
        false
    }

    fn shelf(&mut self, stock: &mut Stock) {
        let mut tubes = core::mem::take(&mut stock.tubes);
        tubes.retain(|tube| {
            let is_hollow = tube.wall.mm() < tube.od.mm() / 2.0;
            if !is_hollow {
                self.error(
                    tube.wall.span,
                    Said::new(
                        format!(
                            "the wall {} fills the tube of {}",
                            tube.wall.text, tube.od.text
                        ),
                        "a wall is less than half the outside diameter",
                        "look at both again",
                    ),
                );
            }
            is_hollow
        });
        stock.tubes = tubes;
        let mut items = core::mem::take(&mut stock.items);
        items.retain(|item| match &item.kind {
            ItemKind::Stock(shape) => self.shape(shape, item.tube.as_ref(), stock),
            ItemKind::Component(part) => {
                let necks = part.necks[0].mm() + part.necks[1].mm();
                let fits = necks <= part.length.mm();
                if !fits {
                    self.error(
                        part.length.span,
                        Said::new(
                            format!("the necks of `{}` are longer than the whole", item.name),
                            "the length counts the necks",
                            "look at `length` and `neck` again",
                        ),
                    );
                }
                fits
            }
        });
        stock.items = items;
        let mut on_hand = core::mem::take(&mut stock.on_hand);
        on_hand.retain(|thing| match &thing.what {
            crate::model::OnHandWhat::Stock { tube, shape } => self.shape(shape, Some(tube), stock),
            crate::model::OnHandWhat::Item(_) => true,
        });
        stock.on_hand = on_hand;
    }

    fn shape(&mut self, shape: &StockShape, tube: Option<&Name>, stock: &Stock) -> bool {
        let StockShape::Bend { angle, clr, .. } = shape else {
            return true;
        };
        if angle.deg() > 180.0 + 1e-9 {
            self.error(
                angle.span,
                Said::new(
                    format!("a bend of {} is more than a U", angle.text),
                    "stock bends end at 180 deg",
                    "look at the angle again",
                ),
            );
            return false;
        }
        let od = tube
            .and_then(|tube| stock.tube(tube))
            .map(|tube| tube.od.clone());
        if let Some(od) = od.filter(|od| clr.mm() < od.mm() / 2.0) {
            self.error(
                clr.span,
                Said::new(
                    format!(
                        "the centre-line radius {} is less than half of {}",
                        clr.text, od.text
                    ),
                    "the inside of the bend would lie beyond its centre",
                    "look whether the radius is to the centre line and not to the inside",
                ),
            );
            return false;
        }
        true
    }

    fn money(&mut self, stock: &mut Stock) {
        let Some(currency) = stock.currency else {
            return;
        };
        let mut offers = core::mem::take(&mut stock.offers);
        offers.retain(|offer| {
            let prices = core::iter::once(&offer.price)
                .chain(offer.breaks.iter().map(|price_break| &price_break.price));
            let mut is_sound = true;
            for price in prices {
                is_sound &= self.is_in_currency(price, currency.code());
            }
            let rising = offer
                .breaks
                .windows(2)
                .all(|pair| matches!(pair, [a, b] if a.from < b.from));
            if !rising {
                self.error(
                    header(offer.span),
                    Said::new(
                        format!("the breaks of the offer for `{}` do not rise", offer.item),
                        "each break starts at a larger number than the one before",
                        "put them in order",
                    ),
                );
            }
            is_sound && rising
        });
        stock.offers = offers;
        let mut suppliers = core::mem::take(&mut stock.suppliers);
        suppliers.retain(|supplier| {
            supplier
                .delivery_charge
                .as_ref()
                .is_none_or(|charge| self.is_in_currency(charge, currency.code()))
        });
        stock.suppliers = suppliers;
        let practice = &mut stock.practice;
        for rate in [
            &mut practice.rate,
            &mut practice.flow_per_degree,
            &mut practice.flow_per_metre,
            &mut practice.ground_loss,
        ] {
            let foreign = rate
                .as_ref()
                .filter(|rate| rate.currency != currency)
                .map(|rate| (rate.span, rate.text.clone()));
            if let Some((span, text)) = foreign {
                self.foreign(span, &text, currency.code());
                *rate = None;
            }
        }
    }

    fn is_in_currency(&mut self, price: &Quantity<Money>, code: &str) -> bool {
        if price.currency.code() == code {
            return true;
        }
        self.foreign(price.span, &price.text, code);
        false
    }

    fn foreign(&mut self, span: Span, text: &str, code: &str) {
        self.error(
            span,
            Said::new(
                format!("{text} is not in {code}"),
                format!(
                    "the file says `currency = \"{code}\"`, and rates of exchange are not kept"
                ),
                format!("write it in {code}"),
            ),
        );
    }

    fn components(&mut self, build: &mut Build, stock: &Stock) {
        let mut components = core::mem::take(&mut build.components);
        components.retain(|component| {
            let is_tube = stock
                .item(&component.item)
                .is_some_and(|item| matches!(item.kind, ItemKind::Stock(_)));
            if is_tube {
                self.error(
                    header(component.span),
                    Said::new(
                        format!(
                            "component `{}` is the tube `{}`",
                            component.name, component.item
                        ),
                        "bends and straights are what the runs are made of, not parts in them",
                        "name a catalyst, silencer, flex or another part with ports",
                    ),
                );
            }
            !is_tube
        });
        build.components = components;
    }

    fn runs(&mut self, build: &mut Build, stock: &Stock) {
        let mut passed: BTreeSet<(Name, Option<String>)> = BTreeSet::new();
        let mut met: BTreeSet<(&str, Name, Option<String>)> = BTreeSet::new();
        let mut runs = core::mem::take(&mut build.runs);
        runs.retain(|run| {
            let mut is_sound = self.run_end(build, stock, run, Flows::Out);
            is_sound &= self.run_end(build, stock, run, Flows::In);
            for (end, key) in [(&run.from, "from"), (&run.to, "to")] {
                let RunEnd::Port { component, port } = end else {
                    continue;
                };
                if !met.insert((key, component.clone(), port.clone())) {
                    is_sound = false;
                    let label = port_label(component, port.as_deref());
                    self.error(
                        header(run.span),
                        Said::new(
                            format!(
                                "run `{}`: `{key}` names `{label}`, which another run has",
                                run.name
                            ),
                            "one tube is welded to one neck",
                            "name the other port, or take an item with a port for each run",
                        ),
                    );
                }
            }
            for through in &run.through {
                let side = through.side.as_deref();
                let label = port_label(&through.component, side);
                if !passed.insert((through.component.clone(), through.side.clone())) {
                    is_sound = false;
                    self.error(
                        through.span,
                        Said::new(
                            format!("`{label}` is passed twice"),
                            "the same steel cannot stand in two places of the runs",
                            "add a second component of the same item",
                        ),
                    );
                }
                let inlet = Port::find(build, stock, &through.component, side, Flows::In);
                let outlet = Port::find(build, stock, &through.component, side, Flows::Out);
                for port in [inlet, outlet] {
                    if let Port::Missing(sides) = port {
                        is_sound = false;
                        self.port_missing(through.span, &through.component, side, &sides);
                        break;
                    }
                }
            }
            is_sound
        });
        build.runs = runs;
    }

    /// Checks one end of a run; `leaves` is what an end must do there.
    fn run_end(&mut self, build: &Build, stock: &Stock, run: &Run, leaves: Flows) -> bool {
        let (end, key) = match leaves {
            Flows::Out => (&run.from, "from"),
            Flows::In => (&run.to, "to"),
        };
        match end {
            RunEnd::End(name) => {
                let fits = build.end(name).is_none_or(|end| end.flows == leaves);
                if !fits {
                    let (is, meant) = match leaves {
                        Flows::Out => ("arrives at", "out"),
                        Flows::In => ("leaves", "in"),
                    };
                    self.error(
                        header(run.span),
                        Said::new(
                            format!(
                                "run `{}`: a run {is} end `{name}`, but `{key}` names it",
                                run.name
                            ),
                            "gas goes from an end that flows out to one that flows in",
                            format!(
                                "swap `from` and `to`, or write `flows = \"{meant}\"` at the end"
                            ),
                        ),
                    );
                }
                fits
            }
            RunEnd::Port { component, port } => {
                // Gas enters a run where it leaves the component.
                let found = Port::find(build, stock, component, port.as_deref(), leaves);
                let Port::Missing(ports) = found else {
                    return true;
                };
                self.port_missing(header(run.span), component, port.as_deref(), &ports);
                false
            }
        }
    }

    fn port_missing(&mut self, span: Span, component: &Name, side: Option<&str>, ports: &[String]) {
        let listed = ports.join(", ");
        let what = match side {
            Some(side) => format!("component `{component}` has no port `{side}` for this"),
            None => format!("component `{component}` has no single way through it"),
        };
        let why = if ports.is_empty() {
            "its item has no ports".to_owned()
        } else {
            format!("the ports of its item are {listed}")
        };
        let example = ports.first().map_or("L", String::as_str);
        self.error(
            span,
            Said::new(
                what,
                why,
                format!("name a side after a full stop, such as `{component}.{example}`, or give the item its ports"),
            ),
        );
    }
}

/// A component with its side or port, as the files write it.
fn port_label(component: &Name, port: Option<&str>) -> String {
    port.map_or_else(
        || component.to_string(),
        |port| format!("{component}.{port}"),
    )
}

/// Whether a component has the port that is meant.
enum Port {
    Found,
    /// The names of those there are.
    Missing(Vec<String>),
}

impl Port {
    fn find(
        build: &Build,
        stock: &Stock,
        component: &Name,
        side: Option<&str>,
        flows: Flows,
    ) -> Self {
        // A component or item that was left out is told elsewhere.
        let item = build
            .component(component)
            .and_then(|component| stock.item(&component.item));
        let Some(ItemKind::Component(part)) = item.map(|item| &item.kind) else {
            return Self::Found;
        };
        let found = match flows {
            Flows::In => part.inlet(side),
            Flows::Out => part.outlet(side),
        };
        if found.is_some() {
            return Self::Found;
        }
        let mut names: Vec<String> = part.ports.iter().map(|port| port.name.clone()).collect();
        names.dedup();
        Self::Missing(names)
    }
}

/// The header line of an element.
const fn header(span: Span) -> Span {
    Span::new(span.file, span.start, span.start)
}

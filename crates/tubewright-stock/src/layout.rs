//! From the solver's counts to marked parts in stock items.

use std::collections::{BTreeMap, VecDeque};

use tubewright_geometry::Length;

use crate::cutting::{CutUse, CuttingSolution, Pattern, whole_legs};
use crate::item::StockShape;
use crate::model::{StockModel, Wanted};
use crate::plan::{
    ComponentUse, CutPart, CutStock, Missing, MissingWhy, PartPlace, Source, StockEnd,
};
use crate::size::{angle_of, length_of};

/// What the layout makes.
#[derive(Default)]
pub(crate) struct Layout {
    pub(crate) cuts: Vec<CutStock>,
    pub(crate) components: Vec<ComponentUse>,
    pub(crate) missing: Vec<Missing>,
}

/// A leg that nothing keeps, of the stock item at this index.
struct FreeLeg {
    cut: usize,
    end: StockEnd,
    class: usize,
}

struct Builder<'a> {
    model: &'a StockModel,
    queues: BTreeMap<usize, VecDeque<Wanted>>,
    /// Bins used so far.
    used: Vec<u32>,
    numbers: BTreeMap<Source, u32>,
    free_legs: Vec<FreeLeg>,
    layout: Layout,
}

pub(crate) fn lay_out(model: &StockModel, solution: &CuttingSolution) -> Layout {
    let mut queues: BTreeMap<usize, VecDeque<Wanted>> = BTreeMap::new();
    let chosen = solution
        .chosen
        .iter()
        .filter_map(|choice| model.choice_wanted.get(*choice).and_then(Option::as_ref));
    for wanted in model.wanted.iter().chain(chosen) {
        queues
            .entry(wanted.class)
            .or_default()
            .push_back(wanted.clone());
    }
    let mut builder = Builder {
        model,
        queues,
        used: vec![0; model.bins.len()],
        numbers: BTreeMap::new(),
        free_legs: Vec::new(),
        layout: Layout::default(),
    };
    builder.take_missing(solution);
    for cut in &solution.cuts {
        for _ in 0..cut.count {
            builder.cut_one(cut);
        }
    }
    for fill in &solution.fills {
        for _ in 0..fill.count {
            builder.fill_leg(fill.class, &fill.parts);
        }
    }
    let mut layout = builder.layout;
    for cut in &mut layout.cuts {
        cut.parts.sort_by_key(|part| order_on_stock(&part.place));
    }
    // A bin may be cut only for parts that other patterns gave as well.
    layout.cuts.retain(|cut| !cut.parts.is_empty());
    layout
}

/// Leg A from its end, then the arc, then leg B toward its end.
fn order_on_stock(place: &PartPlace) -> (u8, i64) {
    let thousandths = |mm: f64| (mm * 1000.0).round() as i64;
    match place {
        PartPlace::Bar { start, .. } => (0, thousandths(start.mm())),
        PartPlace::Leg {
            end: StockEnd::A,
            start,
            ..
        } => (0, thousandths(start.mm())),
        PartPlace::Arc { start, .. } => (1, thousandths(start.deg())),
        PartPlace::Leg {
            end: StockEnd::B,
            start,
            ..
        } => (2, -thousandths(start.mm())),
    }
}

impl Builder<'_> {
    fn next(&mut self, class: usize) -> Option<Wanted> {
        self.queues.get_mut(&class).and_then(VecDeque::pop_front)
    }

    /// What cannot be made is taken from the back of each queue.
    fn take_missing(&mut self, solution: &CuttingSolution) {
        let problem = &self.model.problem;
        for (class, count) in &solution.missing {
            let part = &problem.parts[*class];
            let fits = problem.bins.iter().any(|bin| {
                (bin.family == part.family && part.size <= bin.size)
                    || (bin.leg_family == Some(part.family)
                        && bin.legs.iter().any(|leg| part.size <= leg - bin.leg_kerf))
            });
            let why = if fits {
                MissingWhy::NotEnough
            } else {
                MissingWhy::NothingFits
            };
            for _ in 0..*count {
                let wanted = self.queues.get_mut(class).and_then(VecDeque::pop_back);
                for serves in wanted.into_iter().flat_map(|wanted| wanted.serves) {
                    self.layout.missing.push(Missing {
                        mark: serves.mark,
                        why,
                    });
                }
            }
        }
    }

    /// The next bin of a kind: what lies there first.
    fn source(&mut self, bin: usize) -> Source {
        let stock = &self.model.bins[bin];
        let mut before = self.used[bin];
        self.used[bin] += 1;
        for (name, count) in &stock.on_hand {
            if before < *count {
                return Source::OnHand(name.clone());
            }
            before -= count;
        }
        Source::Bought(stock.item.clone().unwrap_or_default())
    }

    fn cut_one(&mut self, cut: &CutUse) {
        let pattern = &cut.pattern;
        let source = self.source(pattern.bin);
        let Some(stock) = self.model.bins[pattern.bin].stock.clone() else {
            self.use_components(pattern, &source);
            return;
        };
        let number = self.numbers.entry(source.clone()).or_insert(0);
        *number += 1;
        let number = *number;
        let trimmed = self.model.bins[pattern.bin].trim;
        let parts = match stock.shape {
            StockShape::Straight { .. } => self.bar_parts(pattern, trimmed),
            StockShape::Bend { .. } => self.arc_parts(pattern),
        };
        for (end, class) in [StockEnd::A, StockEnd::B].into_iter().zip(cut.leg_classes) {
            if let Some(class) = class {
                self.free_legs.push(FreeLeg {
                    cut: self.layout.cuts.len(),
                    end,
                    class,
                });
            }
        }
        self.layout.cuts.push(CutStock {
            source,
            number,
            stock,
            trimmed,
            parts,
        });
    }

    fn use_components(&mut self, pattern: &Pattern, source: &Source) {
        for class in classes(pattern) {
            let Some(wanted) = self.next(class) else {
                continue;
            };
            let mark = wanted.serves.into_iter().map(|serves| serves.mark).next();
            if let (Some(mark), Some(item)) = (mark, wanted.component) {
                self.layout.components.push(ComponentUse {
                    mark,
                    item,
                    source: source.clone(),
                });
            }
        }
    }

    /// Shortest first: the saw then holds the long rest.
    fn bar_parts(&mut self, pattern: &Pattern, trimmed: Length) -> Vec<CutPart> {
        let problem = &self.model.problem;
        let kerf = length_of(problem.bins[pattern.bin].kerf);
        let mut in_order: Vec<usize> = classes(pattern).collect();
        in_order.sort_by_key(|class| problem.parts[*class].size);
        let mut start = trimmed;
        let mut parts = Vec::new();
        for class in in_order {
            let Some(wanted) = self.next(class) else {
                continue;
            };
            let length = length_of(problem.parts[class].size);
            parts.push(CutPart {
                serves: wanted.serves,
                place: PartPlace::Bar { start, length },
                is_reversed: false,
            });
            start += length + kerf;
        }
        parts
    }

    fn arc_parts(&mut self, pattern: &Pattern) -> Vec<CutPart> {
        let problem = &self.model.problem;
        let bin = &problem.bins[pattern.bin];
        if let [Some(class), Some(other)] = pattern.ends
            && class == other
            && pattern.part_count() == 1
        {
            return self.whole_part(pattern.bin, class, pattern.is_turned);
        }
        let mut middle: Vec<usize> = classes(pattern).collect();
        for class in pattern.ends.iter().flatten() {
            if let Some(at) = middle.iter().position(|known| known == class) {
                middle.remove(at);
            }
        }
        middle.sort_by_key(|class| problem.parts[*class].size);
        let mut parts = Vec::new();
        let mut start = 0;
        let first = pattern.ends[0].map(|class| (class, true));
        for (class, keeps_a) in first
            .into_iter()
            .chain(middle.into_iter().map(|class| (class, false)))
        {
            let Some(wanted) = self.next(class) else {
                continue;
            };
            let size = problem.parts[class].size;
            parts.push(arc_part(wanted, start, size, keeps_a, false));
            start += size + bin.kerf;
        }
        if let Some(class) = pattern.ends[1]
            && let Some(wanted) = self.next(class)
        {
            let size = problem.parts[class].size;
            parts.push(arc_part(wanted, bin.size - size, size, false, true));
        }
        parts
    }

    fn whole_part(&mut self, bin: usize, class: usize, is_turned: bool) -> Vec<CutPart> {
        let problem = &self.model.problem;
        let (bin, part) = (&problem.bins[bin], &problem.parts[class]);
        let (Some(wanted), Some([at_a, at_b])) =
            (self.next(class), whole_legs(bin, part, is_turned))
        else {
            return Vec::new();
        };
        let is_reversed = wanted.legs != [at_a, at_b];
        vec![CutPart {
            serves: wanted.serves,
            place: PartPlace::Arc {
                start: angle_of(0),
                sweep: angle_of(part.size),
                keeps_a: length_of(at_a),
                keeps_b: length_of(at_b),
            },
            is_reversed,
        }]
    }

    fn fill_leg(&mut self, class: usize, fill: &[(usize, u32)]) {
        let Some(at) = self.free_legs.iter().position(|leg| leg.class == class) else {
            return;
        };
        let leg = self.free_legs.remove(at);
        let problem = &self.model.problem;
        let kerf = self
            .layout
            .cuts
            .get(leg.cut)
            .and_then(|cut| {
                self.model
                    .bins
                    .iter()
                    .position(|bin| bin.stock.as_ref() == Some(&cut.stock))
            })
            .map_or(0, |bin| problem.bins[bin].leg_kerf);
        let mut start = 0;
        let mut parts = Vec::new();
        for (class, count) in fill {
            for _ in 0..*count {
                let Some(wanted) = self.next(*class) else {
                    continue;
                };
                let size = problem.parts[*class].size;
                parts.push(CutPart {
                    serves: wanted.serves,
                    place: PartPlace::Leg {
                        end: leg.end,
                        start: length_of(start),
                        length: length_of(size),
                    },
                    is_reversed: false,
                });
                start += size + kerf;
            }
        }
        if let Some(cut) = self.layout.cuts.get_mut(leg.cut) {
            cut.parts.extend(parts);
        }
    }
}

fn classes(pattern: &Pattern) -> impl Iterator<Item = usize> + '_ {
    pattern
        .counts
        .iter()
        .flat_map(|(class, count)| core::iter::repeat_n(*class, *count as usize))
}

fn arc_part(wanted: Wanted, start: i64, size: i64, at_a: bool, at_b: bool) -> CutPart {
    let [up, down] = wanted.legs;
    let leg = length_of(up.max(down));
    // At end A the upstream leg lies as the flow runs, at end B the downstream one.
    let is_reversed = (at_a && up == 0) || (at_b && down == 0);
    CutPart {
        serves: wanted.serves,
        place: PartPlace::Arc {
            start: angle_of(start),
            sweep: angle_of(size),
            keeps_a: if at_a { leg } else { Length::ZERO },
            keeps_b: if at_b { leg } else { Length::ZERO },
        },
        is_reversed,
    }
}

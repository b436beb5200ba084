//! Defaults filled in, with a list of what was filled in so that it can be shown.
//!
//! All defaults here are common practice, no source.

use crate::model::{Accuracy, Build, Class, Gaps, LengthUnits, Practice, ReadingKind};
use crate::quantity::{Currency, Duration, Per, Quantity, Rate};
use tubewright_geometry::{Angle, Length};

/// A value that the person left out and common practice filled in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Defaulted {
    /// The table it belongs to: `accuracy`, `gaps` or `practice`.
    pub table: &'static str,
    /// The key as it would be written.
    pub key: &'static str,
    /// The value as it would be written.
    pub text: String,
}

/// ± (19 in 20) of every kind of reading.
#[derive(Clone, Debug, PartialEq)]
pub struct ResolvedAccuracy {
    /// Tape.
    pub tape: Length,
    /// Height over the floor.
    pub height: Length,
    /// Plumb-bob points on the floor.
    pub plumb: Length,
    /// Offset along a direction.
    pub offset: Length,
    /// Symmetry of the car.
    pub symmetry: Length,
    /// Inclination, bearing and face.
    pub angle: Angle,
    /// Tape to the rim, a bolt hole or the centre of an end, in place of the tape's own.
    pub rim: Length,
    /// What was left out.
    pub defaulted: Vec<Defaulted>,
}

/// The gap to every class.
#[derive(Clone, Debug, PartialEq)]
pub struct ResolvedGaps {
    /// To structure.
    pub structure: Length,
    /// To the floor pan.
    pub floor: Length,
    /// To the driveline.
    pub driveline: Length,
    /// To moving parts.
    pub moving: Length,
    /// To tyres.
    pub tyre: Length,
    /// To hose, wiring, plastic without a shield.
    pub soft: Length,
    /// To hose, wiring, plastic behind a shield.
    pub soft_shielded: Length,
    /// To fuel and brake parts.
    pub fuel_brake: Length,
    /// To hot metal.
    pub heat: Length,
    /// To the ground.
    pub ground: Length,
    /// To the bonnet.
    pub bonnet: Length,
    /// To room kept free by hand.
    pub service: Length,
    /// Run against run.
    pub run: Length,
    /// A run against itself.
    pub itself: Length,
    /// What was left out.
    pub defaulted: Vec<Defaulted>,
}

impl ResolvedGaps {
    /// The gap to a class.
    #[must_use]
    pub const fn of(&self, class: Class) -> Length {
        match class {
            Class::Structure => self.structure,
            Class::Floor => self.floor,
            Class::Driveline => self.driveline,
            Class::Moving => self.moving,
            Class::Tyre => self.tyre,
            Class::Soft => self.soft,
            Class::SoftShielded => self.soft_shielded,
            Class::FuelBrake => self.fuel_brake,
            Class::Heat => self.heat,
            Class::Ground => self.ground,
            Class::Bonnet => self.bonnet,
            Class::Service => self.service,
        }
    }
}

/// Every figure of the shop.
#[derive(Clone, Debug, PartialEq)]
pub struct ResolvedPractice {
    /// Price of an hour.
    pub rate: Rate,
    /// Time for one weld, fit-up included.
    pub weld_time: Duration,
    /// Time for one cut.
    pub cut_time: Duration,
    /// Width of the saw cut.
    pub kerf: Length,
    /// Lengths are rounded to this.
    pub length_step: Length,
    /// Bend angles are rounded to this.
    pub bend_step: Angle,
    /// Clock angles are rounded to this.
    pub clock_step: Angle,
    /// Shortest straight between two bends.
    pub least_straight: Length,
    /// Smallest bend worth making.
    pub least_bend: Angle,
    /// Shortest piece that the saw can hold.
    pub least_grip: Length,
    /// Largest section that the saw takes.
    pub saw_capacity: Length,
    /// ± of a cut length (19 in 20).
    pub cut_length: Length,
    /// ± of a cut angle.
    pub cut_angle: Angle,
    /// ± of a clock mark.
    pub clock: Angle,
    /// ± of a bend's true angle.
    pub bend_true: Angle,
    /// Shrink per weld, added to cut lengths.
    pub weld_pull: Length,
    /// Worth of flow lost per degree of bend.
    pub flow_per_degree: Rate,
    /// Worth of flow lost per metre.
    pub flow_per_metre: Rate,
    /// Worth of ground clearance lost per millimetre below 150 mm.
    pub ground_loss: Rate,
    /// Spare bends on the buying list beside the plan; none unless a number is written.
    pub spares: u32,
    /// What was left out.
    pub defaulted: Vec<Defaulted>,
}

/// Collects what was left out while the values are taken.
struct Filling {
    table: &'static str,
    defaulted: Vec<Defaulted>,
}

impl Filling {
    const fn new(table: &'static str) -> Self {
        Self {
            table,
            defaulted: Vec::new(),
        }
    }

    fn note(&mut self, key: &'static str, text: String) {
        self.defaulted.push(Defaulted {
            table: self.table,
            key,
            text,
        });
    }

    fn length(&mut self, given: Option<&Quantity<Length>>, key: &'static str, mm: f64) -> Length {
        given.map_or_else(
            || {
                self.note(key, format!("{mm} mm"));
                Length::from_mm(mm)
            },
            |given| given.value,
        )
    }

    fn angle(&mut self, given: Option<&Quantity<Angle>>, key: &'static str, deg: f64) -> Angle {
        given.map_or_else(
            || {
                self.note(key, format!("{deg} deg"));
                Angle::from_deg(deg)
            },
            |given| given.value,
        )
    }

    fn minutes(
        &mut self,
        given: Option<&Quantity<Duration>>,
        key: &'static str,
        min: f64,
    ) -> Duration {
        given.map_or_else(
            || {
                self.note(key, format!("{min} min"));
                Duration::from_minutes(min)
            },
            |given| given.value,
        )
    }

    fn rate(
        &mut self,
        given: Option<&Quantity<Rate>>,
        key: &'static str,
        major_per_unit: f64,
        currency: Currency,
        per: Per,
    ) -> Rate {
        given.map_or_else(
            || {
                self.note(
                    key,
                    format!("{major_per_unit} {}/{}", currency.code(), per.word()),
                );
                Rate {
                    major_per_unit,
                    currency,
                    per,
                }
            },
            |given| given.value,
        )
    }
}

/// In what lengths are shown, and whether the person said so.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ShownUnits {
    /// The units.
    pub units: LengthUnits,
    /// False when they were taken from how most of the readings are written.
    pub is_wished: bool,
}

impl Build {
    /// The units that the person wished; else those that most of the readings are written in, and
    /// millimetres where there are as many of either.
    #[must_use]
    pub fn shown_units(&self) -> ShownUnits {
        if let Some(units) = self.wishes.units {
            return ShownUnits {
                units,
                is_wished: true,
            };
        }
        let lengths = || {
            self.readings
                .iter()
                .filter_map(|reading| match &reading.kind {
                    ReadingKind::Tape { reads, .. }
                    | ReadingKind::Height { reads, .. }
                    | ReadingKind::Plumb { reads, .. }
                    | ReadingKind::Offset { reads, .. } => Some(reads.text.as_str()),
                    _ => None,
                })
        };
        let in_inches = lengths().filter(|text| is_in_inches(text)).count();
        ShownUnits {
            units: if 2 * in_inches > lengths().count() {
                LengthUnits::Inches
            } else {
                LengthUnits::Millimetres
            },
            is_wished: false,
        }
    }
}

/// Whether a length that could be read was written in inches or feet.
fn is_in_inches(text: &str) -> bool {
    ["in", "ft", "foot", "feet", "'", "\"", "′", "″", "’", "”"]
        .iter()
        .any(|unit| text.contains(unit))
}

impl Accuracy {
    /// Every kind of reading, common practice (no source) where nothing was written.
    #[must_use]
    pub fn resolved(&self) -> ResolvedAccuracy {
        let mut fill = Filling::new("accuracy");
        ResolvedAccuracy {
            tape: fill.length(self.tape.as_ref(), "tape", 3.0),
            height: fill.length(self.height.as_ref(), "height", 2.0),
            plumb: fill.length(self.plumb.as_ref(), "plumb", 3.0),
            offset: fill.length(self.offset.as_ref(), "offset", 3.0),
            symmetry: fill.length(self.symmetry.as_ref(), "symmetry", 4.0),
            angle: fill.angle(self.angle.as_ref(), "angle", 0.4),
            rim: fill.length(self.rim.as_ref(), "rim", 3.0),
            defaulted: fill.defaulted,
        }
    }
}

impl Gaps {
    /// Every class, common practice (no source) where nothing was written.
    #[must_use]
    pub fn resolved(&self) -> ResolvedGaps {
        let mut fill = Filling::new("gaps");
        ResolvedGaps {
            structure: fill.length(self.structure.as_ref(), "structure", 25.0),
            floor: fill.length(self.floor.as_ref(), "floor", 20.0),
            driveline: fill.length(self.driveline.as_ref(), "driveline", 25.0),
            moving: fill.length(self.moving.as_ref(), "moving", 25.0),
            tyre: fill.length(self.tyre.as_ref(), "tyre", 25.0),
            soft: fill.length(self.soft.as_ref(), "soft", 75.0),
            soft_shielded: fill.length(self.soft_shielded.as_ref(), "soft-shielded", 40.0),
            fuel_brake: fill.length(self.fuel_brake.as_ref(), "fuel-brake", 75.0),
            heat: fill.length(self.heat.as_ref(), "heat", 15.0),
            ground: fill.length(self.ground.as_ref(), "ground", 120.0),
            bonnet: fill.length(self.bonnet.as_ref(), "bonnet", 25.0),
            service: fill.length(self.service.as_ref(), "service", 0.0),
            run: fill.length(self.run.as_ref(), "run", 15.0),
            itself: fill.length(self.itself.as_ref(), "self", 10.0),
            defaulted: fill.defaulted,
        }
    }
}

impl Practice {
    /// Every figure, common practice (no source) where nothing was written; money that is filled in
    /// is in `currency`.
    #[must_use]
    pub fn resolved(&self, currency: Currency) -> ResolvedPractice {
        let mut fill = Filling::new("practice");
        let degree = Per::Degree;
        ResolvedPractice {
            rate: fill.rate(self.rate.as_ref(), "rate", 65.0, currency, Per::Hour),
            weld_time: fill.minutes(self.weld_time.as_ref(), "weld-time", 14.0),
            cut_time: fill.minutes(self.cut_time.as_ref(), "cut-time", 6.0),
            kerf: fill.length(self.kerf.as_ref(), "kerf", 1.6),
            length_step: fill.length(self.length_step.as_ref(), "length-step", 1.0),
            bend_step: fill.angle(self.bend_step.as_ref(), "bend-step", 1.0),
            clock_step: fill.angle(self.clock_step.as_ref(), "clock-step", 1.0),
            least_straight: fill.length(self.least_straight.as_ref(), "least-straight", 25.0),
            least_bend: fill.angle(self.least_bend.as_ref(), "least-bend", 5.0),
            least_grip: fill.length(self.least_grip.as_ref(), "least-grip", 40.0),
            saw_capacity: fill.length(self.saw_capacity.as_ref(), "saw-capacity", 150.0),
            cut_length: fill.length(self.cut_length.as_ref(), "cut-length", 1.0),
            cut_angle: fill.angle(self.cut_angle.as_ref(), "cut-angle", 0.5),
            clock: fill.angle(self.clock.as_ref(), "clock", 1.0),
            bend_true: fill.angle(self.bend_true.as_ref(), "bend-true", 1.0),
            weld_pull: fill.length(self.weld_pull.as_ref(), "weld-pull", 0.5),
            flow_per_degree: fill.rate(
                self.flow_per_degree.as_ref(),
                "flow-per-degree",
                0.05,
                currency,
                degree,
            ),
            flow_per_metre: fill.rate(
                self.flow_per_metre.as_ref(),
                "flow-per-metre",
                4.0,
                currency,
                Per::Metre,
            ),
            ground_loss: fill.rate(
                self.ground_loss.as_ref(),
                "ground-loss",
                0.20,
                currency,
                Per::Millimetre,
            ),
            spares: self.spares.unwrap_or(0),
            defaulted: fill.defaulted,
        }
    }
}

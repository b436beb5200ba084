//! The build document's readings as a network of equations.

use std::collections::BTreeMap;
use tubewright_build::model::{
    self, Along, Build, CarrierRef, EndPlace, Face, HoleEdge, Place, PlaceAt, PlusMinus, Reading,
    ReadingKind, Stance, TapeEnd,
};
use tubewright_build::resolved::ResolvedAccuracy;
use tubewright_geometry::{Point, math};
use tubewright_survey as survey;
use tubewright_survey::{Contact, Line, Network, PlaceHint, Target, Touch};

/// Half-width of the two-sided interval that holds 19 in 20 of a normal distribution, in σ.
pub const NINETEEN_IN_TWENTY: f64 = 1.959_963_984_540_054;

/// A network and the numbers by which the build's names are found in it.
#[derive(Clone, Debug, Default)]
pub struct NamedNetwork {
    /// What the survey adjusts.
    pub network: Network,
    points: BTreeMap<String, survey::PointId>,
    ends: BTreeMap<String, survey::EndId>,
    setups: BTreeMap<String, survey::SetupId>,
}

impl NamedNetwork {
    /// The number of a mark or point.
    #[must_use]
    pub fn point(&self, name: &str) -> Option<survey::PointId> {
        self.points.get(name).copied()
    }

    /// The number of an end that was measured on its rim, bolts or face.
    #[must_use]
    pub fn end(&self, name: &str) -> Option<survey::EndId> {
        self.ends.get(name).copied()
    }

    /// The number of a set-up.
    #[must_use]
    pub fn setup(&self, name: &str) -> Option<survey::SetupId> {
        self.setups.get(name).copied()
    }

    /// The target that a place of the build names; `None` when the place is an end that is given by
    /// a point and words and has no rim to measure.
    #[must_use]
    pub fn target(&self, place: &PlaceAt) -> Option<Target> {
        match place {
            PlaceAt::Mark(name) | PlaceAt::Point(name) => self.point(name).map(Target::Point),
            PlaceAt::End { end, at } => {
                let end = self.end(end)?;
                Some(match *at {
                    EndPlace::Centre => Target::Centre(end),
                    EndPlace::Rim(clock) => Target::Rim {
                        end,
                        clock_rad: clock.angle().rad(),
                    },
                    EndPlace::Bolt(number) => Target::Hole {
                        end,
                        hole: usize::try_from(number).ok()?.checked_sub(1)?,
                    },
                })
            }
        }
    }
}

/// Builds the network: every mark, point, measured end and set-up of the build, and every reading
/// whose places exist in it.
#[must_use]
pub fn network_of(build: &Build, accuracy: &ResolvedAccuracy) -> NamedNetwork {
    let mut named = NamedNetwork::default();
    for (name, side) in build
        .marks
        .iter()
        .map(|mark| (&mark.name, mark.side))
        .chain(build.points.iter().map(|point| (&point.name, point.side)))
    {
        let hint = PlaceHint {
            side: side.map(side_of),
            along: build.frame.as_ref().and_then(|frame| along_of(frame, name)),
            level: None,
        };
        let id = named
            .network
            .add_point(survey::PointSpec::hinted(name.as_str(), hint));
        named.points.insert(name.to_string(), id);
    }
    // A tip that points rearwards lies behind the marks in all but the oddest car.
    for given in build.ends.iter().filter_map(|end| end.given.as_ref()) {
        if given.points == model::Direction::Rear {
            let place = named.point(given.at.at.name());
            named.network.likely_rear.extend(place);
        }
    }
    for end in build.ends.iter().filter(|end| end.given.is_none()) {
        let id = named.network.add_end(survey::End {
            name: end.name.to_string(),
            rim_radius_mm: 0.5 * end.rim_diameter().mm(),
            holes: end.bolts.iter().map(hole_in_end).collect(),
        });
        named.ends.insert(end.name.to_string(), id);
    }
    for setup in &build.setups {
        let stance = match setup.stance {
            Stance::Wheels => survey::Stance::Wheels,
            Stance::Lift => survey::Stance::Lift,
            Stance::Stands => survey::Stance::Stands,
        };
        let id = named
            .network
            .add_setup(survey::SetupSpec::new(setup.name.as_str(), stance));
        named.setups.insert(setup.name.to_string(), id);
    }
    for pair in build.frame.iter().flat_map(|frame| &frame.centre_line) {
        if let (Some(left), Some(right)) = (
            named.point(pair.left.at.name()),
            named.point(pair.right.at.name()),
        ) {
            named.network.pairs.push(survey::Pair { left, right });
        }
    }
    let readings: Vec<_> = build
        .readings
        .iter()
        .filter_map(|reading| named.reading(reading, accuracy))
        .collect();
    named.network.readings = readings;
    named
}

fn side_of(side: model::Side) -> survey::Side {
    match side {
        model::Side::Left => survey::Side::Left,
        model::Side::Right => survey::Side::Right,
        model::Side::Centre => survey::Side::Centre,
    }
}

/// The pairs of the centre line are written from front to rear, which tells the car from its mirror
/// image: readings alone fit both.
fn along_of(frame: &model::FrameChoice, name: &str) -> Option<survey::Along> {
    let holds = |pair: &model::CentreLinePair| {
        *pair.left.at.name() == *name || *pair.right.at.name() == *name
    };
    match frame.centre_line.as_slice() {
        [front, .., rear] if holds(front) != holds(rear) => Some(if holds(front) {
            survey::Along::Front
        } else {
            survey::Along::Rear
        }),
        _ => None,
    }
}

fn hole_in_end(bolt: &model::Bolt) -> Point {
    let (sin, cos) = math::sin_cos(bolt.clock.angle().rad());
    let radius = 0.5 * bolt.circle.mm();
    Point::new(0.0, radius * cos, radius * sin)
}

impl NamedNetwork {
    fn reading(&self, reading: &Reading, accuracy: &ResolvedAccuracy) -> Option<survey::Reading> {
        let (kind, value, usual) = self.kind(&reading.kind, accuracy)?;
        let plus_minus = match &reading.plus_minus {
            Some(PlusMinus::Length(length)) => length.mm(),
            Some(PlusMinus::Angle(angle)) => angle.rad(),
            None => usual,
        };
        let mut result =
            survey::Reading::new(reading.number, kind, value, plus_minus / NINETEEN_IN_TWENTY);
        result.scale = match reading.reads_text() {
            Some(text)
                if text.contains(['"', '\'']) || text.contains("in") || text.contains("ft") =>
            {
                survey::TapeScale::Inches
            }
            _ => survey::TapeScale::Millimetres,
        };
        result.set_aside = !reading.is_used();
        Some(result)
    }

    /// Kind, value as read, and the usual ± in mm or radians.
    fn kind(
        &self,
        kind: &ReadingKind,
        accuracy: &ResolvedAccuracy,
    ) -> Option<(survey::ReadingKind, f64, f64)> {
        use survey::ReadingKind as Kind;
        let at = |place: &Place| self.target(&place.at);
        Some(match kind {
            ReadingKind::Tape {
                from,
                to,
                reads,
                burnt,
                holes,
                sides,
            } => {
                let touch = |place: &Place, which: TapeEnd| -> Option<Touch> {
                    let hole = holes.iter().find(|hole| hole.at == which);
                    let side = sides.iter().find(|side| side.at == which);
                    let contact = match (hole, side) {
                        (Some(hole), _) => {
                            let diameter_mm = hole.diameter.mm();
                            match hole.edge {
                                HoleEdge::Near => Contact::HoleNearEdge { diameter_mm },
                                HoleEdge::Far => Contact::HoleFarEdge { diameter_mm },
                            }
                        }
                        (None, Some(side)) => {
                            let width_mm = side.of.mm();
                            match side.face {
                                Face::Near => Contact::NearSide { width_mm },
                                Face::Far => Contact::FarSide { width_mm },
                                Face::Outer => Contact::OuterSide { width_mm },
                                Face::Inner => Contact::InnerSide { width_mm },
                            }
                        }
                        (None, None) => Contact::Place,
                    };
                    Some(Touch {
                        target: at(place)?,
                        contact,
                    })
                };
                let kind = Kind::Tape {
                    from: touch(from, TapeEnd::From)?,
                    to: touch(to, TapeEnd::To)?,
                    burnt_mm: burnt.as_ref().map_or(0.0, |burnt| burnt.mm()),
                };
                let on_rim = [from, to]
                    .iter()
                    .any(|place| matches!(place.at, PlaceAt::End { .. }));
                let usual = if on_rim { accuracy.rim } else { accuracy.tape };
                (kind, reads.mm(), usual.mm())
            }
            ReadingKind::Height { of, setup, reads } => (
                Kind::Height {
                    target: Touch::place(at(of)?),
                    setup: self.setup(setup)?,
                },
                reads.mm(),
                accuracy.height.mm(),
            ),
            ReadingKind::Plumb {
                from,
                to,
                setup,
                reads,
            } => (
                Kind::Plumb {
                    from: at(from)?,
                    to: at(to)?,
                    setup: self.setup(setup)?,
                },
                reads.mm(),
                accuracy.plumb.mm(),
            ),
            ReadingKind::Offset {
                from,
                to,
                along,
                reads,
            } => {
                let along = match along {
                    Along::Line([a, b]) => Line::Through(at(a)?, at(b)?),
                    Along::Plumb { setup } => Line::Plumb(self.setup(setup)?),
                };
                (
                    Kind::Offset {
                        from: at(from)?,
                        to: at(to)?,
                        along,
                    },
                    reads.mm(),
                    accuracy.offset.mm(),
                )
            }
            ReadingKind::Symmetry { left, right } => (
                Kind::Symmetry {
                    left: at(left)?,
                    right: at(right)?,
                },
                0.0,
                accuracy.symmetry.mm(),
            ),
            ReadingKind::Inclination {
                from,
                to,
                setup,
                reads,
            } => (
                Kind::Inclination {
                    from: at(from)?,
                    to: at(to)?,
                    setup: self.setup(setup)?,
                },
                reads.rad(),
                accuracy.angle.rad(),
            ),
            ReadingKind::Bearing {
                from,
                to,
                base: [base_from, base_to],
                setup,
                reads,
            } => (
                Kind::Bearing {
                    from: at(from)?,
                    to: at(to)?,
                    base_from: at(base_from)?,
                    base_to: at(base_to)?,
                    setup: self.setup(setup)?,
                },
                reads.rad(),
                accuracy.angle.rad(),
            ),
            ReadingKind::Face {
                end,
                clock,
                setup,
                reads,
            } => (
                Kind::FaceInclination {
                    end: self.end(end)?,
                    clock_rad: clock.angle().rad(),
                    setup: self.setup(setup)?,
                },
                reads.rad(),
                accuracy.angle.rad(),
            ),
            _ => return None,
        })
    }
}

/// The carrier of a place: that of its mark, point or end.
#[must_use]
pub fn carrier_of<'a>(build: &'a Build, place: &PlaceAt) -> Option<&'a CarrierRef> {
    match place {
        PlaceAt::Mark(name) => build.mark(name).map(|mark| &mark.carrier),
        PlaceAt::Point(name) => build.point(name).map(|point| &point.carrier),
        PlaceAt::End { end, .. } => build.end(end).map(|end| &end.carrier),
    }
}

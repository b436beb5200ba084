//! From the program's types to the walker's: numbers only, no computation that could hide an error.

use tubewright_build::model::{Build, CarrierKind, CarrierRef, Flows, ItemKind, Model, RunEnd};
use tubewright_build::model::{ComponentItem, Port, Section as WrittenSection};
use tubewright_geometry::{Frame as PlanFrame, Point, Solid as PlanSolid, UnitVector, Vector};
use tubewright_plan::places::Places;
use tubewright_plan::routes::RollMark;
use tubewright_route::problem::PartPose;
use tubewright_stock::{CutCard, FaceBy, FitMark, KerfSide, Source, StockEnd, StockShape};
use tubewright_walker::{
    Card, End, Fit, Frame, Freedom, Roll, SawCut, Section, Solid, StockItem, Surface,
};

/// The port of a side: the only one of its kind, the one of that name, or by the order in which they are
/// written.
pub(crate) fn port<'a>(item: &'a ComponentItem, flows: Flows, side: &str) -> Option<&'a Port> {
    let ports: Vec<&Port> = item
        .ports
        .iter()
        .filter(|port| port.flows == flows)
        .collect();
    let named = ports.iter().find(|port| port.name == side);
    let number = usize::from(side == "R" && ports.len() > 1);
    named.or_else(|| ports.get(number)).copied()
}

/// Names of all components that hang together with a run's own where runs end in one and start from it.
pub(crate) fn hanging_together(build: &Build, run: &str) -> Vec<String> {
    let of = |name: &str| -> (Vec<String>, Vec<String>) {
        let run = build.run(name).expect("of the build");
        let met: Vec<String> = [&run.from, &run.to]
            .into_iter()
            .filter_map(|end| match end {
                RunEnd::Port { component, .. } => Some(component.to_string()),
                RunEnd::End(_) => None,
            })
            .collect();
        let through = run.through.iter().map(|t| t.component.to_string());
        (through.chain(met.clone()).collect(), met)
    };
    let (mut components, mut met) = of(run);
    for _ in 0..build.runs.len() {
        for other in &build.runs {
            let (own, its) = of(other.name.as_str());
            if its.iter().any(|part| met.contains(part)) {
                components.extend(own);
                met.extend(its);
            }
        }
        components.sort();
        components.dedup();
        met.sort();
        met.dedup();
    }
    components
}

/// A displacement of a part where runs meet that lies along the car, as the plan says that it is turned: rolled
/// clockwise looking rearwards, its rear end raised, its rear end turned to the right.
pub(crate) fn turned(pose: &PartPose, along: Vector) -> Vector {
    let axis = |x, y, z| Vector::new(x, y, z).direction().expect("no nought");
    [
        (axis(1.0, 0.0, 0.0), pose.turn.roll_rad),
        (axis(0.0, -1.0, 0.0), pose.turn.up_rad),
        (axis(0.0, 0.0, 1.0), pose.turn.right_rad),
    ]
    .into_iter()
    .fold(along, |v, (axis, rad)| match rad {
        0.0 => v,
        rad => v.rotated_about(axis, rad),
    })
}

pub(crate) fn p(point: Point) -> [f64; 3] {
    point.to_array()
}

pub(crate) fn u(direction: UnitVector) -> [f64; 3] {
    direction.to_array()
}

pub(crate) fn frame(of: &PlanFrame) -> Frame {
    Frame {
        point: p(of.origin),
        travel: u(of.travel()),
        twelve: u(of.twelve()),
    }
}

pub(crate) fn solid(of: &PlanSolid) -> Solid {
    match of {
        PlanSolid::Box(b) => Solid::Box {
            centre: p(b.centre),
            half: b.half,
            axes: b.axes.map(u),
        },
        PlanSolid::Capsule { a, b, radius } => Solid::Capsule {
            a: p(*a),
            b: p(*b),
            radius: *radius,
        },
        PlanSolid::Cylinder { a, b, radius } => Solid::Cylinder {
            a: p(*a),
            b: p(*b),
            radius: *radius,
        },
        PlanSolid::Sphere { centre, radius } => Solid::Sphere {
            centre: p(*centre),
            radius: *radius,
        },
        PlanSolid::HalfSpace { point, outward } => Solid::HalfSpace {
            point: p(*point),
            outward: u(*outward),
        },
        PlanSolid::Prism(prism) => Solid::Prism {
            origin: p(prism.origin),
            u: u(prism.u),
            v: u(prism.v),
            outline: prism.outline.clone(),
            depth: prism.depth,
        },
        PlanSolid::Mesh(mesh) => {
            let vertices: Vec<[f64; 3]> = mesh.vertices().iter().map(|v| p(*v)).collect();
            let faces: Vec<[usize; 3]> = mesh
                .triangles()
                .iter()
                .map(|t| t.map(|i| usize::try_from(i).expect("fits")))
                .collect();
            if mesh.is_closed() {
                Solid::Mesh { vertices, faces }
            } else {
                Solid::Surface(Surface::new(&vertices, faces))
            }
        }
        PlanSolid::Cloud { points, radius } => Solid::Points {
            centres: points.iter().map(|point| p(*point)).collect(),
            radius: *radius,
        },
        PlanSolid::PointCloud(cloud) => Solid::Points {
            centres: cloud.points().iter().map(|point| p(*point)).collect(),
            radius: cloud.radius_mm(),
        },
        other => panic!("the walker has no such body: {other:?}"),
    }
}

/// What a carrier may do, read from the build by its definition: rock right-handed about front →
/// rear, steer about the kingpin from low to high, then bump (up) and droop (down).
pub(crate) fn freedoms(build: &Build, carrier: &CarrierRef, places: &Places) -> Vec<Freedom> {
    let CarrierRef::Carrier(name) = carrier else {
        return Vec::new();
    };
    let carrier = build.carrier(name).expect("the carrier is there");
    let motion = match &carrier.kind {
        CarrierKind::Hung { sway } => {
            return vec![Freedom::Sway { radius: sway.mm() }];
        }
        CarrierKind::Engine(motion) | CarrierKind::Wheel(motion) | CarrierKind::Axle(motion) => {
            motion
        }
        other => panic!("the walker has no such carrier: {other:?}"),
    };
    let mut out = Vec::new();
    for (axis, range) in [
        (&motion.axis, &motion.rock),
        (&motion.kingpin, &motion.steer),
    ] {
        if let (Some([from, to]), Some([least, most])) = (axis, range) {
            let [a, b] = [from, to].map(|place| {
                p(places
                    .place(&place.at)
                    .expect("its place is found")
                    .point_in_car)
            });
            let d = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
            let length = d.iter().map(|x| x * x).sum::<f64>().sqrt();
            out.push(Freedom::Turn {
                on: a,
                axis: d.map(|x| x / length),
                range_deg: [least.deg(), most.deg()],
            });
        }
    }
    if motion.bump.is_some() || motion.droop.is_some() {
        out.push(Freedom::Shift {
            along: [0.0, 0.0, 1.0],
            range: [
                -motion.droop.as_ref().map_or(0.0, |droop| droop.mm()),
                motion.bump.as_ref().map_or(0.0, |bump| bump.mm()),
            ],
        });
    }
    out
}

pub(crate) fn component_item<'a>(model: &'a Model, component: &str) -> Option<&'a ComponentItem> {
    let item = &model.build.component(component)?.item;
    match &model.stock.item(item)?.kind {
        ItemKind::Component(item) => Some(item),
        ItemKind::Stock(_) => None,
    }
}

pub(crate) fn section(of: &WrittenSection) -> Section {
    match of {
        WrittenSection::Round { diameter } => Section::Round(diameter.mm()),
        WrittenSection::Oval { width, height } => Section::Oval(width.mm(), height.mm()),
        WrittenSection::Box { width, height } => Section::Rectangle(width.mm(), height.mm()),
    }
}

pub(crate) fn source_name(source: &Source) -> String {
    match source {
        Source::OnHand(name) | Source::Bought(name) => name.clone(),
    }
}

/// The card as it is.
pub(crate) fn card(of: &CutCard) -> Card {
    Card {
        name: format!("{} no. {}", source_name(&of.source), of.number),
        item: match of.stock.shape {
            StockShape::Straight { length } => StockItem::Straight {
                length: length.mm(),
            },
            StockShape::Bend {
                angle,
                clr,
                leg_a,
                leg_b,
            } => StockItem::Bend {
                angle_deg: angle.deg(),
                clr: clr.mm(),
                leg_a: leg_a.mm(),
                leg_b: leg_b.mm(),
            },
        },
        od: of.stock.tube.od.mm(),
        parts: of
            .parts
            .iter()
            .map(|part| part.serves.iter().map(|s| s.mark.clone()).collect())
            .collect(),
        cuts: of
            .cuts
            .iter()
            .map(|cut| SawCut {
                number: cut.number,
                from: match cut.from {
                    StockEnd::A => End::A,
                    StockEnd::B => End::B,
                },
                outside: cut.reach.outside.mm(),
                inside: cut.reach.inside.mm(),
                side: cut.reach.side.mm(),
                saw_deg: cut.angle.deg(),
                is_dressed: matches!(cut.by, FaceBy::Dress { .. }),
                kerf_toward: match cut.kerf {
                    KerfSide::TowardA => End::A,
                    KerfSide::TowardB => End::B,
                },
                faces: cut.faces.clone(),
            })
            .collect(),
    }
}

pub(crate) fn fit(of: &FitMark) -> Fit {
    Fit {
        marks: of.marks.clone(),
        clock_deg: of.clock.deg(),
        round_outside: of.round_outside.mm(),
        is_reversed: of.is_reversed,
    }
}

/// The roll of an oval or a box, whose neck is as wide as the run's tube.
pub(crate) fn roll(of: &RollMark, neck_od: f64) -> Roll {
    Roll {
        clock_deg: of.clock.deg(),
        round_neck: of.round_neck.mm(),
        neck_od,
    }
}

/// True for a component that can be put on rolled wrongly.
pub(crate) fn has_broad_side(model: &Model, component: &str) -> bool {
    component_item(model, component).is_some_and(|item| {
        matches!(
            item.body,
            Some(WrittenSection::Oval { .. } | WrittenSection::Box { .. })
        )
    })
}

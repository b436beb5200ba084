//! The joint map: what a tape, a plumb line and a height rule find of each joint, on its wheels and on a lift.

use super::{BUILD, bench, bench_of, list, model_of, packet, words};
use tubewright_geometry::{Solid, Vector};
use tubewright_plan::packet::joints_of;
use tubewright_plan::stages::Routed;

/// Where a side of a tube is from its middle, by its name: the one of eight that faces most as its words say.
fn side(name: &str, along: Vector, up: Vector) -> Vector {
    let words: Vector = name
        .split(' ')
        .map(|word| match word {
            "top" | "upper" => Vector::new(0.0, 0.0, 1.0),
            "underside" | "lower" => Vector::new(0.0, 0.0, -1.0),
            "left" => Vector::new(0.0, -1.0, 0.0),
            "right" => Vector::new(0.0, 1.0, 0.0),
            "front" => Vector::new(-1.0, 0.0, 0.0),
            "rear" => Vector::new(1.0, 0.0, 0.0),
            "side" => Vector::ZERO,
            other => panic!("{other} is no side"),
        })
        .fold(Vector::ZERO, |sum, way| sum + way);
    let across = along.cross(up);
    (0..8)
        .map(|eighth| {
            let (sin, cos) = tubewright_geometry::math::sin_cos(
                f64::from(eighth) * core::f64::consts::FRAC_PI_4,
            );
            up * cos + across * sin
        })
        .max_by(|a, b| a.dot(words).total_cmp(&b.dot(words)))
        .unwrap()
}

/// What the joint map says of a joint, found again from the joint and the marks alone: each tape goes from its mark
/// to the side that is told, and behind, off the middle and straight up from the floor are where the joint is.
#[test]
fn tape_and_plumb_line_find_each_joint_where_the_map_says() {
    let bench = bench();
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let printed = packet(&bench);
    let (rows, heights) = (list(&printed, "joints"), list(&printed, "joint-heights"));
    let joints = joints_of(&bench.model, &alternatives[0].runs, &bench.supply);
    assert_eq!((rows.len(), heights.len()), (joints.len(), joints.len()));
    let places = &bench.around.measured.places;
    let floor = places
        .floors
        .values()
        .find(|floor| floor.is_on_wheels)
        .unwrap();
    let mut tapes = 0;
    for ((row, height), joint) in rows.iter().zip(&heights).zip(&joints) {
        assert_eq!(
            (&row["joint"], &height["joint"]),
            (&joint.mark, &joint.mark)
        );
        let at = joint.frame.origin;
        let along = joint.frame.travel().vector();
        // Up square to the tube, and what lies clockwise of it looking downstream.
        let up = (tubewright_geometry::Vector::new(0.0, 0.0, 1.0) - along * along.z)
            .direction()
            .unwrap();
        for tape in row["tapes to its tube, mm"]
            .split("; ")
            .filter(|tape| tape.contains(" to "))
        {
            let (mark, to) = tape.split_once(" to its ").unwrap();
            let (name, mm) = to.split_once(" = ").unwrap();
            let rim = at + side(name, along, up.vector()) * 25.0;
            let read: f64 = mm.parse().unwrap();
            let from = places.points[mark].point_in_car;
            assert!(
                (from.distance(rim) - read).abs() < 0.51,
                "{}: {tape}",
                joint.mark
            );
            tapes += 1;
        }
        let figure = |head: &str| height[head].parse::<f64>().unwrap();
        assert!((figure("on its wheels: behind A left, mm") - at.x).abs() < 0.51);
        let (off, side) = height["on its wheels: off the middle, mm"]
            .split_once(' ')
            .unwrap();
        let sense = if side == "right" { 1.0 } else { -1.0 };
        assert!((off.parse::<f64>().unwrap() * sense - at.y).abs() < 0.51);
        // Straight down from the middle of a tube that slopes the metal is further off than square to it: the whole of
        // the radius over the cosine of the slope.
        let under = at.z - floor.point_in_car.z - 25.0 / up.vector().z;
        // The floor is level to a tenth of a degree: a millimetre or two over the length of the car.
        assert!(
            (figure("on its wheels: underside over the floor, mm") - under).abs() < 3.0,
            "{row:?}"
        );
    }
    assert!(
        tapes >= joints.len(),
        "{tapes} tapes for {} joints",
        joints.len()
    );
}

/// With heights on a lift that leans the map tells both: what stands on the plane through the marks as they were read
/// there, and by how much a place is over it straight up.
#[test]
fn the_map_holds_on_the_lift_too() {
    let lift: String = [("A left", 1200), ("A right", 1210), ("B left", 1240), ("B right", 1250)]
        .into_iter()
        .zip(31..)
        .map(|((mark, mm), number)| {
            format!(
                "\n[[reading]]\nnumber = {number}\nkind = \"height\"\nof = \"{mark}\"\nsetup = \"on the lift\"\nreads = \"{mm} mm\"\n"
            )
        })
        .collect();
    let build = BUILD.replacen(
        "[[end]]",
        &format!("[[setup]]\nname = \"on the lift\"\nstance = \"lift\"\n{lift}\n[[end]]"),
        1,
    );
    let bench = bench_of(model_of(&build));
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let printed = packet(&bench);
    for row in list(&printed, "stands") {
        let read = match row["mark"].as_str() {
            "A left" => 1200.0,
            "A right" => 1210.0,
            "B left" => 1240.0,
            _ => 1250.0,
        };
        let told: f64 = row["over the floor on the lift, mm"].parse().unwrap();
        assert!((told - read).abs() < 2.1, "{row:?}");
    }
    let joints = joints_of(&bench.model, &alternatives[0].runs, &bench.supply);
    for (row, joint) in list(&printed, "joint-heights").iter().zip(&joints) {
        let at = joint.frame.origin;
        let along = joint.frame.travel().vector();
        let up = 25.0 / (1.0 - along.z * along.z).sqrt();
        // Marks stand 1 m apart and 2 m along: the floor falls 10 mm a metre to the right and 10 mm a metre rearward,
        // where the marks themselves rise 20 mm in 2 m.
        let floor = -1200.0 - 0.01 * (at.y + 500.0) - (1240.0 - 1200.0 - 20.0) / 2000.0 * at.x;
        let told: f64 = row["on the lift: underside over the floor, mm"]
            .parse()
            .unwrap();
        assert!(
            (told - (at.z - up - floor)).abs() < 4.0,
            "{row:?}: {}",
            at.z - up - floor
        );
    }
    let said = words(&printed);
    assert!(said.contains("holds as the car stood on the lift"));
}

/// What stands between a joint and the floor is named, for neither plumb line nor rule comes through.
#[test]
fn what_is_below_a_joint_is_named() {
    let mut bench = bench();
    let Routed::Found(alternatives) = &bench.routed else {
        panic!("the small bench has a route");
    };
    let joints = joints_of(&bench.model, &alternatives[0].runs, &bench.supply);
    let below = joints[5].frame.origin + Vector::new(0.0, 0.0, -120.0);
    let mut stand = bench.around.bodies.placed[0].clone();
    stand.name = "stand".to_owned();
    stand.solid_in_car = Solid::Sphere {
        centre: below,
        radius: 20.0,
    };
    bench.around.bodies.placed.push(stand);
    for (number, row) in list(&packet(&bench), "joint-heights").iter().enumerate() {
        let told = &row["on its wheels: underside over the floor, mm"];
        assert_eq!(told == "stand is below", number == 5, "{row:?}");
    }
}

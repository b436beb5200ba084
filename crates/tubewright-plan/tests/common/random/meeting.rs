//! Random cars whose runs meet in a part.

use std::fmt::Write;

use super::{RandomCar, Writer, bodies, carriers, ends, head, marks, stock};

/// A car from a seed whose runs meet: two banks that end in one part and one tail that leaves it, or one bank
/// that parts into two tips.
pub(crate) fn random_meeting_car(seed: u64) -> RandomCar {
    let mut w = Writer::new(seed ^ 0x4D45_4554);
    head(&mut w, seed);
    marks(&mut w);
    let (_, tip_ys) = ends(&mut w, Some(true));
    carriers(&mut w);
    // A steered wheel two metres ahead of a tail is stated some millimetres nearer than it can come: its search
    // ends there, which is on the safe side and no matter of meeting.
    bodies(&mut w, &tip_ys, false);
    let is_merge = w.dice.chance(0.6);
    meeting_runs(&mut w, is_merge);
    let build = format!("{}{}{}", w.head, w.readings, w.rest);
    let mut stock = stock(&mut w.dice);
    let aside = w.dice.between(34.0, 60.0);
    let lean = w.dice.between(5.0, 20.0);
    let sides = |at: &str, flows: &str, sign: f64| {
        [("L", -1.0), ("R", 1.0)].map(|(name, side)| {
            format!(
                "  {{ name = \"{name}\", at = [\"{at}\", \"{:.1} mm\", \"0 mm\"], flows = \"{flows}\", turn = {{ up = \"0 deg\", right = \"{:.1} deg\" }} }},\n",
                side * aside,
                sign * side * lean
            )
        })
        .concat()
    };
    let one = |name: &str, at: &str, flows: &str| {
        format!(
            "  {{ name = \"{name}\", at = [\"{at}\", \"0 mm\", \"0 mm\"], flows = \"{flows}\" }},\n"
        )
    };
    let ports = if is_merge {
        sides("0 mm", "in", -1.0) + &one("out", "170 mm", "out")
    } else {
        one("in", "0 mm", "in") + &sides("170 mm", "out", 1.0)
    };
    let _ = write!(
        stock,
        "\n[[item]]\nname = \"meeting 60\"\nkind = \"merge\"\ntube = \"60x1.5 304\"\nlength = \"170 mm\"\nports = [\n{ports}]\nmass = \"0.9 kg\"\n\n[[offer]]\nitem = \"meeting 60\"\nsupplier = \"shop round the corner\"\nprice = \"55.00 EUR\"\n"
    );
    RandomCar { build, stock }
}

fn meeting_runs(w: &mut Writer, is_merge: bool) {
    w.rest
        .push_str("\n[[component]]\nname = \"meeting\"\nitem = \"meeting 60\"\n");
    let banks: &[&str] = if is_merge {
        &["first", "second"]
    } else {
        &["first"]
    };
    let mut rows: Vec<[String; 4]> = Vec::new();
    for (bank, side) in banks.iter().zip(["L", "R"]) {
        let _ = write!(
            w.rest,
            "\n[[component]]\nname = \"{bank} flex\"\nitem = \"flex 60\"\ncarrier = \"engine\"\n"
        );
        let port = if is_merge { side } else { "in" };
        rows.push([
            format!("{bank} bank"),
            format!("{bank} outlet"),
            format!("meeting.{port}"),
            format!("\"{bank} flex\""),
        ]);
    }
    let tails: &[(&str, &str)] = if is_merge {
        &[("out", "first")]
    } else {
        &[("L", "first"), ("R", "second")]
    };
    for (port, tip) in tails {
        let through = if w.dice.chance(0.6) {
            let item = w
                .dice
                .one_of(&["round silencer 60", "oval silencer 60", "box silencer 60"]);
            let _ = write!(
                w.rest,
                "\n[[component]]\nname = \"{tip} silencer\"\nitem = \"{item}\"\ncarrier = \"hung\"\n"
            );
            format!("\"{tip} silencer\"")
        } else {
            String::new()
        };
        rows.push([
            format!("tail to {tip}"),
            format!("meeting.{port}"),
            format!("{tip} tip"),
            through,
        ]);
    }
    // In whatever order they are written.
    if w.dice.chance(0.5) {
        rows.reverse();
    }
    for [name, from, to, through] in rows {
        let _ = write!(
            w.rest,
            "\n[[run]]\nname = \"{name}\"\nfrom = \"{from}\"\nto = \"{to}\"\ntube = \"60x1.5 304\"\nthrough = [{through}]\nmax-bends = 9\n"
        );
    }
}

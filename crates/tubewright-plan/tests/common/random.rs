//! Random cars as texts: marks, readings with small errors, bodies of every kind, what moves, one or
//! two runs, and a shelf. Nobody wrote the program against them.

pub(crate) mod meeting;

use std::fmt::Write;

use tubewright_geometry::math;

/// splitmix64 (Steele, Lea and Flood 2014; from memory): any seed will do.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(crate) fn one_of<'a, T: ?Sized>(&mut self, of: &[&'a T]) -> &'a T {
        let count = of.len() as u64;
        of[usize::try_from(self.next() % count).expect("small")]
    }

    pub(crate) fn chance(&mut self, share: f64) -> bool {
        self.between(0.0, 1.0) < share
    }
}

type V = [f64; 3];

/// A car's two texts.
pub(crate) struct RandomCar {
    pub(crate) build: String,
    pub(crate) stock: String,
}

struct Writer {
    dice: Dice,
    head: String,
    readings: String,
    rest: String,
    number: u32,
    marks: Vec<(String, V)>,
}

fn sub(a: V, b: V) -> V {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn norm(a: V) -> f64 {
    (a[0] * a[0] + a[1] * a[1] + a[2] * a[2]).sqrt()
}

impl Writer {
    fn new(seed: u64) -> Self {
        Self {
            dice: Dice::new(seed),
            head: String::new(),
            readings: String::new(),
            rest: String::new(),
            number: 0,
            marks: Vec::new(),
        }
    }

    fn reading(&mut self, keys: &str, mm: f64) {
        self.number += 1;
        // A good shop: most readings within a millimetre.
        let reads = mm + self.dice.between(-0.8, 0.8);
        let _ = write!(
            self.readings,
            "\n[[reading]]\nnumber = {}\n{keys}reads = \"{reads:.1} mm\"\n",
            self.number
        );
    }

    fn tape(&mut self, a: (&str, V), b: (&str, V), more: &str) {
        let keys = format!(
            "kind = \"tape\"\nfrom = \"{}\"\nto = \"{}\"\n{more}",
            a.0, b.0
        );
        self.reading(&keys, norm(sub(a.1, b.1)));
    }

    fn height(&mut self, of: &str, at: V) {
        let keys = format!("kind = \"height\"\nof = \"{of}\"\nsetup = \"wheels\"\n");
        self.reading(&keys, at[2] + FLOOR_BELOW_A_MM);
    }

    fn plumb(&mut self, a: (&str, V), b: (&str, V)) {
        let d = sub(a.1, b.1);
        let keys = format!(
            "kind = \"plumb\"\nfrom = \"{}\"\nto = \"{}\"\nsetup = \"wheels\"\n",
            a.0, b.0
        );
        self.reading(&keys, norm([d[0], d[1], 0.0]));
    }

    /// A point with a height and what the nearest marks give.
    fn point(&mut self, name: &str, at: V) {
        let _ = write!(
            self.head,
            "\n[[point]]\nname = \"{name}\"\nplace = \"somewhere\"\n"
        );
        self.height(name, at);
        let mut marks = self.marks.clone();
        marks.retain(|(_, mark)| norm(sub(*mark, at)) > 120.0);
        marks.sort_by(|a, b| norm(sub(a.1, at)).total_cmp(&norm(sub(b.1, at))));
        for (count, (mark, place)) in marks.iter().take(6).enumerate() {
            if count % 2 == 0 {
                self.tape((mark, *place), (name, at), "");
            } else {
                self.plumb((mark, *place), (name, at));
            }
        }
    }

    fn body(&mut self, name: &str, keys: &str) {
        let _ = write!(self.rest, "\n[[body]]\nname = \"{name}\"\n{keys}");
    }
}

/// Height of the origin mark over the floor.
const FLOOR_BELOW_A_MM: f64 = 230.0;

/// A car from a seed.
pub(crate) fn random_car(seed: u64) -> RandomCar {
    let mut w = Writer::new(seed);
    head(&mut w, seed);
    marks(&mut w);
    let (two, tip_ys) = ends(&mut w, None);
    carriers(&mut w);
    bodies(&mut w, &tip_ys, true);
    runs(&mut w, two);
    let build = format!("{}{}{}", w.head, w.readings, w.rest);
    let stock = stock(&mut w.dice);
    RandomCar { build, stock }
}

fn head(w: &mut Writer, seed: u64) {
    let _ = write!(
        w.head,
        "format = \"tubewright-build/1\"\nname = \"random car {seed}\"\n\n[frame]\norigin = \"A left\"\ncentre-line = [[\"A left\", \"A right\"], [\"D left\", \"D right\"]]\nlevel = \"wheels\"\n\n[accuracy]\ntape = \"2 mm\"\nheight = \"2 mm\"\nplumb = \"2 mm\"\n\n[[setup]]\nname = \"wheels\"\nstance = \"wheels\"\n"
    );
}

fn marks(w: &mut Writer) {
    let rows = [
        ("A", 0.0, 0.0),
        ("B", 800.0, 20.0),
        ("C", 1300.0, 380.0),
        ("D", 2100.0, 10.0),
        ("E", 2800.0, 350.0),
        ("F", 400.0, 420.0),
    ];
    for (letter, x, z) in rows {
        let half = if letter == "A" {
            430.0
        } else {
            w.dice.between(350.0, 480.0)
        };
        for (side, word) in [(-1.0, "left"), (1.0, "right")] {
            let name = format!("{letter} {word}");
            // A pair of the centre line lies equally far out, the others nearly so.
            let jitter = if letter == "A" || letter == "D" {
                0.0
            } else {
                w.dice.between(-4.0, 4.0)
            };
            let at = [
                x + if letter == "A" {
                    0.0
                } else {
                    w.dice.between(-5.0, 5.0)
                },
                side * half + jitter,
                z,
            ];
            let _ = write!(
                w.head,
                "\n[[mark]]\nname = \"{name}\"\nplace = \"punched\"\nside = \"{word}\"\n"
            );
            w.height(&name, at);
            w.marks.push((name, at));
        }
    }
    let all = w.marks.clone();
    for (i, a) in all.iter().enumerate() {
        for b in all.iter().skip(i + 1) {
            let apart = norm(sub(a.1, b.1));
            if apart < 1200.0 {
                w.tape((&a.0, a.1), (&b.0, b.1), "");
            } else if apart < 1900.0 && w.dice.chance(0.5) {
                w.plumb((&a.0, a.1), (&b.0, b.1));
            }
        }
    }
}

/// One or two outlets and tips; whether two, and where the runs lie across.
fn ends(w: &mut Writer, two: Option<bool>) -> (bool, Vec<f64>) {
    let two = two.unwrap_or_else(|| w.dice.chance(0.3));
    let sides: &[f64] = if two { &[-1.0, 1.0] } else { &[1.0] };
    let mut ys = Vec::new();
    for (index, side) in sides.iter().enumerate() {
        let word = if index == 0 { "first" } else { "second" };
        let y = if two {
            side * w.dice.between(150.0, 260.0)
        } else {
            w.dice.between(-250.0, 250.0)
        };
        let at = [w.dice.between(150.0, 420.0), y, w.dice.between(60.0, 260.0)];
        // Rearwards, a little down and aside.
        let d = [1.0, w.dice.between(-0.4, 0.4), w.dice.between(-0.7, 0.1)];
        let d = d.map(|x| x / norm(d));
        let dot_up = d[2];
        let up = [-d[0] * dot_up, -d[1] * dot_up, 1.0 - d[2] * dot_up];
        let up = up.map(|x| x / norm(up));
        let three = [
            d[1] * up[2] - d[2] * up[1],
            d[2] * up[0] - d[0] * up[2],
            d[0] * up[1] - d[1] * up[0],
        ];
        let outlet = format!("{word} outlet");
        for (clock, hours) in [("12:00", 0.0), ("3:00", 3.0), ("6:00", 6.0), ("9:00", 9.0)] {
            let (sin, cos) = math::sin_cos(hours * 30.0_f64.to_radians());
            let rim: V = core::array::from_fn(|k| at[k] + 50.0 * (cos * up[k] + sin * three[k]));
            let mut marks = w.marks.clone();
            marks.sort_by(|a, b| norm(sub(a.1, rim)).total_cmp(&norm(sub(b.1, rim))));
            for (mark, place) in marks.into_iter().take(5) {
                w.tape(
                    (&mark, place),
                    (&outlet, rim),
                    &format!("rim = \"{clock}\"\n"),
                );
            }
        }
        let tip_y = if two {
            side * w.dice.between(250.0, 450.0)
        } else {
            w.dice.between(-450.0, 450.0)
        };
        let tip = [
            w.dice.between(2700.0, 3100.0),
            tip_y,
            w.dice.between(60.0, 140.0),
        ];
        w.point(&format!("{word} tip point"), tip);
        let _ = write!(
            w.rest,
            "\n[[end]]\nname = \"{outlet}\"\nkind = \"flange\"\ncarrier = \"engine\"\nod = \"60 mm\"\nrim = \"100 mm\"\nmaterial = \"304\"\nflows = \"out\"\n\n[[end]]\nname = \"{word} tip\"\nkind = \"tip\"\ncarrier = \"chassis\"\nod = \"60 mm\"\nflows = \"in\"\nat = \"{word} tip point\"\npoints = \"rearwards\"\nwithin = \"15 mm\"\n"
        );
        ys.extend([y, tip_y]);
    }
    (two, ys)
}

fn carriers(w: &mut Writer) {
    let x = w.dice.between(-300.0, 200.0);
    let aside = [w.dice.between(-20.0, 20.0), w.dice.between(-20.0, 20.0)];
    w.point("mount front", [x, aside[0], 250.0]);
    w.point("mount rear", [x + 500.0, aside[1], 240.0]);
    let (least, most) = (w.dice.between(-4.0, -0.5), w.dice.between(0.5, 4.0));
    let (bump, droop) = (w.dice.between(20.0, 80.0), w.dice.between(20.0, 80.0));
    let steer = w.dice.between(5.0, 30.0);
    let sway = w.dice.between(2.0, 8.0);
    w.point("kingpin low", [-300.0, -640.0, 0.0]);
    w.point("kingpin high", [-310.0, -620.0, 250.0]);
    let _ = write!(
        w.rest,
        "\n[[carrier]]\nname = \"engine\"\nkind = \"engine\"\naxis = [\"mount front\", \"mount rear\"]\nrock = [\"{least:.2} deg\", \"{most:.2} deg\"]\n\n[[carrier]]\nname = \"axle\"\nkind = \"axle\"\nbump = \"{bump:.0} mm\"\ndroop = \"{droop:.0} mm\"\n\n[[carrier]]\nname = \"front wheel\"\nkind = \"wheel\"\nbump = \"{bump:.0} mm\"\ndroop = \"{droop:.0} mm\"\nkingpin = [\"kingpin low\", \"kingpin high\"]\nsteer = [\"-{steer:.0} deg\", \"{steer:.0} deg\"]\n\n[[carrier]]\nname = \"hung\"\nkind = \"hung\"\nsway = \"{sway:.1} mm\"\n"
    );
}

fn bodies(w: &mut Writer, taken_ys: &[f64], has_front_wheel: bool) {
    w.body(
        "ground",
        "kind = \"ground\"\nclass = \"ground\"\nsetup = \"wheels\"\ngap = \"90 mm\"\n",
    );
    w.body(
        "left rail",
        "kind = \"rail\"\nclass = \"structure\"\nfrom = \"A left\"\nto = \"B left\"\nedge = \"lower outer\"\nwidth = \"50 mm\"\nheight = \"60 mm\"\n",
    );
    w.body(
        "floor",
        "kind = \"outline\"\nclass = \"floor\"\ncorners = [\"F left\", \"F right\", \"E right\", \"E left\"]\ndepth = \"4 mm\"\ndepth-goes = \"up\"\n",
    );
    let count = 3 + (w.dice.between(0.0, 5.0)) as usize;
    for index in 0..count {
        let x = w.dice.between(750.0, 2350.0);
        let mut y = w.dice.between(-420.0, 420.0);
        // Not right behind an outlet or before a tip more often than chance would have it.
        if taken_ys.iter().any(|taken| (taken - y).abs() < 60.0) {
            y = -y;
        }
        let z = w.dice.between(-60.0, 300.0);
        let (a, b) = (format!("a {index}"), format!("b {index}"));
        let kind = w
            .dice
            .one_of(&["box", "capsule", "cylinder", "sphere", "tube"]);
        let class = w
            .dice
            .one_of(&["structure", "driveline", "soft-shielded", "moving", "heat"]);
        let carrier = w.dice.one_of(&["chassis", "chassis", "axle", "engine"]);
        let size = w.dice.between(40.0, 160.0);
        w.point(&a, [x, y, z]);
        let keys = format!("class = \"{class}\"\ncarrier = \"{carrier}\"\n");
        let name = format!("body {index}");
        if kind == "sphere" {
            w.body(
                &name,
                &format!("kind = \"sphere\"\n{keys}at = \"{a}\"\ndiameter = \"{size:.0} mm\"\n"),
            );
            continue;
        }
        let reach = if kind == "box" { 200.0 } else { 450.0 };
        let end = [
            x + w.dice.between(60.0, reach),
            y + w.dice.between(30.0, 200.0) * if y > 0.0 { -1.0 } else { 1.0 },
            z + w.dice.between(40.0, 120.0),
        ];
        w.point(&b, end);
        let more = match kind {
            "box" => format!("kind = \"box\"\n{keys}corner = \"{a}\"\nopposite = \"{b}\"\n"),
            "tube" => format!(
                "kind = \"tube\"\n{keys}from = \"{a}\"\nto = \"{b}\"\ntouched = \"below\"\ndiameter = \"{:.0} mm\"\n",
                0.5 * size
            ),
            _ => format!(
                "kind = \"{kind}\"\n{keys}from = \"{a}\"\nto = \"{b}\"\ndiameter = \"{:.0} mm\"\n",
                0.5 * size
            ),
        };
        w.body(&name, &more);
    }
    if w.dice.chance(0.6) {
        w.point("hub", [2350.0, -760.0, 100.0]);
        w.body(
            "rear tyre",
            "kind = \"tyre\"\nclass = \"tyre\"\ncarrier = \"axle\"\nhub = \"hub\"\nmarking = \"205/55 R16\"\nside = \"left\"\ninboard = \"40 mm\"\n",
        );
    }
    if w.dice.chance(0.6) && has_front_wheel {
        w.point("front hub", [-300.0, -720.0, 100.0]);
        w.body(
            "front tyre",
            "kind = \"tyre\"\nclass = \"tyre\"\ncarrier = \"front wheel\"\nhub = \"front hub\"\nmarking = \"205/55 R16\"\nside = \"left\"\ninboard = \"40 mm\"\n",
        );
    }
}

fn runs(w: &mut Writer, two: bool) {
    let crossover = two && w.dice.chance(0.7);
    let banks: &[&str] = if two {
        &["first", "second"]
    } else {
        &["first"]
    };
    if crossover {
        w.rest
            .push_str("\n[[component]]\nname = \"cross\"\nitem = \"crossover 60\"\n");
    }
    for (bank, side) in banks.iter().zip(["L", "R"]) {
        let mut through = vec![format!("\"{bank} flex\"")];
        let _ = write!(
            w.rest,
            "\n[[component]]\nname = \"{bank} flex\"\nitem = \"flex 60\"\ncarrier = \"engine\"\n"
        );
        if crossover {
            through.push(format!("\"cross.{side}\""));
        }
        if w.dice.chance(0.7) {
            let item = w
                .dice
                .one_of(&["round silencer 60", "oval silencer 60", "box silencer 60"]);
            let _ = write!(
                w.rest,
                "\n[[component]]\nname = \"{bank} silencer\"\nitem = \"{item}\"\ncarrier = \"hung\"\n"
            );
            through.push(format!("\"{bank} silencer\""));
        }
        let _ = write!(
            w.rest,
            "\n[[run]]\nname = \"{bank} bank\"\nfrom = \"{bank} outlet\"\nto = \"{bank} tip\"\ntube = \"60x1.5 304\"\nthrough = [{}]\nmax-bends = 9\n",
            through.join(", ")
        );
    }
}

fn stock(dice: &mut Dice) -> String {
    let mut text = String::from(
        "format = \"tubewright-stock/1\"\ncurrency = \"EUR\"\n\n[[tube]]\nname = \"60x1.5 304\"\nod = \"60 mm\"\nwall = \"1.5 mm\"\nmaterial = \"304\"\n\n[[supplier]]\nname = \"shop round the corner\"\ndelivery-charge = \"5.00 EUR\"\n",
    );
    let clr = dice.between(75.0, 110.0);
    let (leg_a, leg_b) = (dice.between(20.0, 120.0), dice.between(20.0, 120.0));
    let offer = |text: &mut String, item: &str, price: f64| {
        let _ = write!(
            text,
            "\n[[offer]]\nitem = \"{item}\"\nsupplier = \"shop round the corner\"\nprice = \"{price:.2} EUR\"\n"
        );
    };
    for angle in [15, 30, 45, 60, 90] {
        if angle != 90 && dice.chance(0.3) {
            continue;
        }
        let name = format!("bend {angle}");
        let _ = write!(
            text,
            "\n[[item]]\nname = \"{name}\"\nkind = \"bend\"\ntube = \"60x1.5 304\"\nangle = \"{angle} deg\"\nclr = \"{clr:.1} mm\"\nlegs = [\"{leg_a:.0} mm\", \"{leg_b:.0} mm\"]\n"
        );
        let price = 8.0 + f64::from(angle) / 15.0 + dice.between(0.0, 4.0);
        offer(&mut text, &name, price);
    }
    for length in [1000, 3000] {
        let name = format!("straight {length}");
        let _ = write!(
            text,
            "\n[[item]]\nname = \"{name}\"\nkind = \"straight\"\ntube = \"60x1.5 304\"\nlength = \"{length} mm\"\n"
        );
        offer(&mut text, &name, f64::from(length) * 0.015);
    }
    for (name, kind, length, body, neck) in [
        (
            "flex 60",
            "flex",
            120,
            "{ shape = \"round\", diameter = \"80 mm\" }",
            20,
        ),
        (
            "round silencer 60",
            "silencer",
            350,
            "{ shape = \"round\", diameter = \"140 mm\" }",
            40,
        ),
        (
            "oval silencer 60",
            "silencer",
            380,
            "{ shape = \"oval\", width = \"180 mm\", height = \"110 mm\" }",
            35,
        ),
        (
            "box silencer 60",
            "silencer",
            300,
            "{ shape = \"box\", width = \"160 mm\", height = \"100 mm\" }",
            30,
        ),
    ] {
        let _ = write!(
            text,
            "\n[[item]]\nname = \"{name}\"\nkind = \"{kind}\"\ntube = \"60x1.5 304\"\nlength = \"{length} mm\"\nbody = {body}\nneck = \"{neck} mm\"\n"
        );
        offer(&mut text, name, 60.0);
    }
    text.push_str("\n[[item]]\nname = \"crossover 60\"\nkind = \"crossover\"\ntube = \"60x1.5 304\"\nlength = \"240 mm\"\nbody = { shape = \"round\", diameter = \"66 mm\" }\nports = [\n  { name = \"L\", in = [\"0 mm\", \"-65 mm\", \"0 mm\"], out = [\"240 mm\", \"-65 mm\", \"0 mm\"], toe = \"15 deg\" },\n  { name = \"R\", in = [\"0 mm\", \"65 mm\", \"0 mm\"], out = [\"240 mm\", \"65 mm\", \"0 mm\"], toe = \"15 deg\" },\n]\n");
    offer(&mut text, "crossover 60", 120.0);
    if dice.chance(0.6) {
        let angle = dice.between(25.0, 88.0);
        let measured = clr + dice.between(-0.8, 0.8);
        let _ = write!(
            text,
            "\n[[on-hand]]\nname = \"offcut 1\"\ntube = \"60x1.5 304\"\nkind = \"bend\"\nangle = \"{angle:.1} deg\"\nclr = \"{measured:.1} mm\"\nlegs = [\"{:.0} mm\", \"0 mm\"]\ncount = 1\n",
            dice.between(0.0, 90.0)
        );
    }
    if dice.chance(0.6) {
        let _ = write!(
            text,
            "\n[[on-hand]]\nname = \"offcut 2\"\ntube = \"60x1.5 304\"\nkind = \"straight\"\nlength = \"{:.0} mm\"\ncount = 2\n",
            dice.between(150.0, 900.0)
        );
    }
    let (length_step, pull) = if dice.chance(0.3) {
        ("1/16 in", "1/64 in")
    } else {
        ("1 mm", "0.5 mm")
    };
    let angle_step = dice.one_of(&["1 deg", "1 deg", "0.5 deg", "2 deg"]);
    let _ = write!(
        text,
        "\n[practice]\nkerf = \"{:.1} mm\"\nlength-step = \"{length_step}\"\nbend-step = \"{angle_step}\"\nclock-step = \"{angle_step}\"\nleast-straight = \"{:.0} mm\"\nleast-bend = \"5 deg\"\nleast-grip = \"{:.0} mm\"\nsaw-capacity = \"120 mm\"\nweld-pull = \"{pull}\"\n",
        dice.between(1.0, 3.0),
        dice.between(15.0, 40.0),
        dice.between(20.0, 60.0),
    );
    text
}

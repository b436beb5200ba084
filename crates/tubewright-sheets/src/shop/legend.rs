//! What stands beside the views: the meaning of the lines, and the tightest places.

use super::tubes::texture;
use crate::drawing::{Dash, Fill, Item, Lettering, Line, Rect, Spot, Weight};
use crate::figure::Figure;
use crate::scene::{DrawnUnit, PieceKind, Scene};
use tubewright_geometry::math;

const HEAD: Lettering = Lettering::plain(2.8).bold();
const WORDS: Lettering = Lettering::plain(2.4);
const ROW_MM: f64 = 5.2;
const SYMBOL_MM: f64 = 16.0;

/// The legend: only what the scene shows. Returns the items and the height used.
pub(crate) fn legend(scene: &Scene, room: Rect) -> (Vec<Item>, f64) {
    let mut rows: Vec<(Symbol, &str)> =
        vec![(Symbol::Tube, "tube with its centre line; tick: joint (J)")];
    for (kind, words) in [
        (PieceKind::Flex, "flex section"),
        (PieceKind::Catalyst, "catalyst"),
        (PieceKind::Resonator, "resonator"),
        (PieceKind::Silencer, "silencer"),
        (PieceKind::Component, "other bought part"),
    ] {
        if scene
            .runs
            .iter()
            .flat_map(|r| &r.pieces)
            .any(|p| p.kind == kind)
        {
            rows.push((Symbol::Part(kind), words));
        }
    }
    if scene.bodies.iter().any(|b| !b.is_moving) {
        rows.push((Symbol::Line(Dash::Phantom), "body that stays put"));
    }
    if scene.bodies.iter().any(|b| b.is_moving) {
        rows.push((Symbol::Line(Dash::Dashed), "body that moves, drawn at rest"));
    }
    if !scene.marks.is_empty() {
        rows.push((Symbol::Mark, "datum mark"));
    }
    if !scene.tight_places.is_empty() {
        rows.push((Symbol::Flag, "tight place, by number"));
    }
    let mut items = vec![Item::text(
        Spot::new(room.min.x, room.min.y + 2.6),
        "WHAT THE LINES MEAN",
        HEAD,
    )];
    let mut y = room.min.y + 7.2;
    for (symbol, words) in rows {
        items.extend(symbol.items(Spot::new(room.min.x, y)));
        items.push(Item::text(
            Spot::new(room.min.x + SYMBOL_MM + 3.0, y + 0.36 * WORDS.size_mm),
            words,
            WORDS,
        ));
        y += ROW_MM;
    }
    (items, y - room.min.y)
}

enum Symbol {
    Tube,
    Part(PieceKind),
    Line(Dash),
    Mark,
    Flag,
}

impl Symbol {
    fn items(&self, at: Spot) -> Vec<Item> {
        let (a, b) = (at, at + Spot::new(SYMBOL_MM, 0.0));
        let middle = a.lerp(b, 0.5);
        match self {
            Self::Tube => vec![
                Item::Band {
                    spots: vec![a, b],
                    width_mm: 3.2,
                    line: Some(Line::solid(Weight::Medium)),
                    fill: Fill::Paper,
                },
                Item::line(a, b, Line::new(Weight::Hair, Dash::Centre)),
                Item::line(
                    middle - Spot::new(0.0, 2.3),
                    middle + Spot::new(0.0, 2.3),
                    Line::solid(Weight::Wide),
                ),
            ],
            Self::Part(kind) => {
                let rect = Rect::new(at.x + 2.0, at.y - 1.7, SYMBOL_MM - 4.0, 3.4);
                let mut out = vec![Item::rect(
                    rect,
                    Some(Line::solid(Weight::Wide)),
                    Fill::Paper,
                )];
                out.extend(texture(*kind, &rect.corners()));
                out
            }
            Self::Line(dash) => vec![Item::line(a, b, Line::new(Weight::Narrow, *dash).grey())],
            Self::Mark => mark_symbol(middle),
            Self::Flag => vec![Item::Circle {
                centre: middle,
                radius_mm: 0.9,
                line: Some(Line::solid(Weight::Medium)),
                fill: Fill::Open,
            }],
        }
    }
}

/// The ring and punch of a datum mark: opposite quarters black.
pub(crate) fn mark_symbol(centre: Spot) -> Vec<Item> {
    let mut items = vec![Item::Circle {
        centre,
        radius_mm: 1.1,
        line: Some(Line::solid(Weight::Narrow)),
        fill: Fill::Paper,
    }];
    for quarter in [0.0, math::PI] {
        let mut spots = vec![centre];
        spots.extend(
            (0..=6).map(|i| {
                centre + Spot::toward(quarter + math::FRAC_PI_2 * f64::from(i) / 6.0) * 1.1
            }),
        );
        items.push(Item::Polygon {
            spots,
            line: None,
            fill: Fill::Solid,
        });
    }
    items
}

/// The tightest places as a small table; says how many it leaves out when the room ends.
pub(crate) fn tight_table(scene: &Scene, room: Rect) -> Vec<Item> {
    let places = &scene.tight_places;
    if places.is_empty() || room.height() < 12.0 {
        return Vec::new();
    }
    let mut items = vec![Item::text(
        Spot::new(room.min.x, room.min.y + 2.6),
        "TIGHTEST PLACES",
        HEAD,
    )];
    let columns = [0.0, 7.0, room.width() - 40.0, room.width() - 18.0];
    let [number, what, gap, wanted] = columns.map(|dx| room.min.x + dx);
    let mut y = room.min.y + 7.0;
    let small = Lettering::plain(2.0).grey();
    let unit = scene.unit;
    for (x, words) in [
        (number, "no.".to_owned()),
        (what, "between".to_owned()),
        (gap, format!("gap {}", unit.sign())),
        (wanted, format!("wants {}", unit.sign())),
    ] {
        items.push(Item::text(Spot::new(x, y), words, small));
    }
    let rule = |y: f64| {
        Item::line(
            Spot::new(room.min.x, y),
            Spot::new(room.max.x, y),
            Line::solid(Weight::Hair),
        )
    };
    items.push(rule(y + 1.2));
    for (i, place) in places.iter().enumerate() {
        y += 4.6;
        if y > room.max.y - 4.6 && i + 1 < places.len() {
            items.push(Item::text(
                Spot::new(what, y),
                format!("and {} more in the plan", places.len() - i),
                WORDS.italic(),
            ));
            break;
        }
        let gap_words = match place.plus_minus_mm {
            Some(pm_mm) => format!("{} ± {}", read(place.gap_mm, unit), read(pm_mm, unit)),
            None => read(place.gap_mm, unit),
        };
        let between = format!("{} – {}", place.piece, place.body);
        items.push(Item::text(
            Spot::new(number, y),
            (i + 1).to_string(),
            WORDS.bold(),
        ));
        items.push(Item::text(Spot::new(what, y), between, WORDS));
        items.push(Item::text(Spot::new(gap, y), gap_words, WORDS.bold()));
        items.push(Item::text(
            Spot::new(wanted, y),
            match unit {
                DrawnUnit::Millimetres => Figure(place.wanted_mm).to_string(),
                DrawnUnit::Inches => read(place.wanted_mm, unit),
            },
            WORDS,
        ));
        items.push(rule(y + 1.2));
    }
    items
}

/// A gap as it is read: whole millimetres, or tenths of an inch.
fn read(mm: f64, unit: DrawnUnit) -> String {
    match unit {
        DrawnUnit::Millimetres => format!("{mm:.0}"),
        DrawnUnit::Inches => format!("{:.1}", mm / unit.mm()),
    }
}

//! Renaming against a renaming of the checked model itself.

use super::{NameKind, RenameError, rename};
use crate::folder::Changes;
use crate::keys::Target;
use crate::model::visit::{Declares, Refers, See};
use crate::model::{Model, Name};
use crate::read::{rivals, unfit_name};
use crate::span::FileKind;
use crate::{Texts, read};
use proptest::prelude::*;

const BUILD: &str = include_str!("../../tests/data/estate/build.toml");
const STOCK: &str = include_str!("../../tests/data/estate/stock.toml");
const SHOP: &str = include_str!("../../tests/data/estate/shop.toml");
const PLAN: &str = r#"{
  "format": "tubewright-plan/1",
  "stages": { "survey": { "result": {
    "points": { "rail L front": {"place": "A left", "xyz": [1.0, 2.50, -3e-2]} },
    "worst": [ { "from": "left port", "to": "X.L", "note": "A left" } ],
    "through": ["flex L", "X.L"], "run": "left bank"
  } } }
}
"#;

fn texts() -> Texts<'static> {
    Texts {
        build: Some(BUILD),
        stock: Some(STOCK),
        shop: Some(SHOP),
    }
}

fn all_names(model: &mut Model, see: See<'_>) {
    fn both<T: Declares + Refers>(list: &mut [T], see: See<'_>) {
        for element in list {
            see(T::TARGET, element.own_name());
            element.references(see);
        }
    }
    fn references<'r, T: Refers + 'r>(list: impl IntoIterator<Item = &'r mut T>, see: See<'_>) {
        for element in list {
            element.references(see);
        }
    }
    let (build, stock) = (&mut model.build, &mut model.stock);
    references(&mut build.frame, see);
    both(&mut build.marks, see);
    both(&mut build.points, see);
    both(&mut build.setups, see);
    references(&mut build.readings, see);
    both(&mut build.ends, see);
    both(&mut build.carriers, see);
    both(&mut build.bodies, see);
    both(&mut build.components, see);
    both(&mut build.runs, see);
    both(&mut stock.tubes, see);
    both(&mut stock.items, see);
    references(&mut stock.offers, see);
    both(&mut stock.suppliers, see);
    both(&mut stock.on_hand, see);
    references(&mut model.shop.entries, see);
}

/// Every declared name with its kind.
fn declared() -> Vec<(NameKind, String)> {
    let model = read(texts()).model;
    let mut list = Vec::new();
    let mut add = |kind: NameKind, names: Vec<&Name>| {
        list.extend(names.into_iter().map(|name| (kind, name.to_string())));
    };
    let (build, stock) = (&model.build, &model.stock);
    add(
        NameKind::Mark,
        build.marks.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Point,
        build.points.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Setup,
        build.setups.iter().map(|e| &e.name).collect(),
    );
    add(NameKind::End, build.ends.iter().map(|e| &e.name).collect());
    add(
        NameKind::Carrier,
        build.carriers.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Body,
        build.bodies.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Component,
        build.components.iter().map(|e| &e.name).collect(),
    );
    add(NameKind::Run, build.runs.iter().map(|e| &e.name).collect());
    add(
        NameKind::Tube,
        stock.tubes.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Item,
        stock.items.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::Supplier,
        stock.suppliers.iter().map(|e| &e.name).collect(),
    );
    add(
        NameKind::OnHand,
        stock.on_hand.iter().map(|e| &e.name).collect(),
    );
    list
}

/// The model with one thing renamed, by its own visitor and not by the text.
fn renamed_model(mut model: Model, target: Target, old: &str, new: &str) -> Model {
    let old_is_item = model.stock.item(old).is_some();
    all_names(&mut model, &mut |seen, name| {
        let is_meant = match seen {
            Target::CutFrom => {
                target
                    == if old_is_item {
                        Target::Item
                    } else {
                        Target::OnHand
                    }
            }
            seen => seen == target,
        };
        if is_meant && *name == *old {
            *name = Name::new(new);
        }
    });
    model
}

fn after<'t>(changes: &'t Changes, file: FileKind, before: &'t str) -> &'t str {
    changes.text(file).unwrap_or(before)
}

fn target(kind: NameKind) -> Target {
    kind.target()
}

fn new_name() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-zA-Z0-9 #'\"\\\\=\\[\\]]{1,20}",
        "\\PC{1,12}",
        Just("Штуцер левый".to_owned())
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn renaming_the_text_is_renaming_the_model(
        pick in any::<prop::sample::Index>(),
        new in new_name(),
    ) {
        let all = declared();
        let (kind, old) = pick.get(&all).clone();
        let target = target(kind);
        prop_assume!(unfit_name(target, &new).is_none());
        let is_taken = all.iter().any(|(other, name)| {
            *name == new && rivals(target).any(|rival| rival == other.target())
        });
        let result = rename(texts(), Some(PLAN), kind, &old, &new);
        if is_taken && new != old || new == "chassis" && target == Target::Carrier {
            prop_assert!(matches!(result, Err(RenameError::Taken { .. })), "{:?}", result);
            return Ok(());
        }
        let changes = result.unwrap();
        let texts_after = Texts {
            build: Some(after(&changes, FileKind::Build, BUILD)),
            stock: Some(after(&changes, FileKind::Stock, STOCK)),
            shop: Some(after(&changes, FileKind::Shop, SHOP)),
        };
        let read_after = read(texts_after);
        prop_assert!(read_after.problems.is_empty(), "{:#?}", read_after.problems);
        prop_assert_eq!(
            &read_after.model,
            &renamed_model(read(texts()).model, target, &old, &new)
        );
        // There and back again leaves every byte, comments, order and spacing among them.
        let plan_after = after(&changes, FileKind::Plan, PLAN).to_owned();
        let back = rename(texts_after, Some(&plan_after), kind, &new, &old).unwrap();
        prop_assert_eq!(after(&back, FileKind::Build, texts_after.build.unwrap()), BUILD);
        prop_assert_eq!(after(&back, FileKind::Stock, texts_after.stock.unwrap()), STOCK);
        prop_assert_eq!(after(&back, FileKind::Shop, texts_after.shop.unwrap()), SHOP);
        prop_assert_eq!(after(&back, FileKind::Plan, &plan_after), PLAN);
    }
}

#[test]
fn a_side_of_a_component_follows_its_component() {
    let changes = rename(texts(), Some(PLAN), NameKind::Component, "X", "crossing").unwrap();
    let build = changes.text(FileKind::Build).unwrap();
    assert!(build.contains(r#"through = ["flex L", "crossing.L", "silencer L"]"#));
    assert!(build.contains(r#"to = "crossing.R""#));
    let plan = changes.text(FileKind::Plan).unwrap();
    assert!(plan.contains(r#""to": "crossing.L""#), "{plan}");
    assert!(plan.contains(r#"["flex L", "crossing.L"]"#), "{plan}");
}

#[test]
fn the_plan_keeps_its_layout_and_its_words() {
    let changes = rename(texts(), Some(PLAN), NameKind::Mark, "A left", "A1").unwrap();
    let plan = changes.text(FileKind::Plan).unwrap();
    assert_eq!(
        plan,
        PLAN.replacen("\"place\": \"A left\"", "\"place\": \"A1\"", 1)
    );
    let changes = rename(texts(), Some(PLAN), NameKind::Point, "rail L front", "r1").unwrap();
    let plan = changes.text(FileKind::Plan).unwrap();
    assert_eq!(plan, PLAN.replace("\"rail L front\":", "\"r1\":"));
}

#[test]
fn nothing_is_renamed_when_the_name_is_unknown_or_a_file_cannot_be_read() {
    let unknown = rename(texts(), None, NameKind::Point, "rail L frnt", "x");
    assert_eq!(
        unknown,
        Err(RenameError::Unknown {
            kind: "point",
            old: "rail L frnt".to_owned(),
            did_you_mean: Some("rail L front".to_owned()),
        })
    );
    let broken = Texts {
        stock: Some("[[tube]\n"),
        ..texts()
    };
    assert!(matches!(
        rename(broken, None, NameKind::Mark, "A left", "A1"),
        Err(RenameError::NotReadable(_))
    ));
    assert_eq!(
        rename(texts(), Some("{\"a\": "), NameKind::Mark, "A left", "A1"),
        Err(RenameError::PlanNotReadable)
    );
}

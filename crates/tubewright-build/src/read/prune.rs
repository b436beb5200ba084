//! Leaves out what refers to something that was left out, so that every name in the model can be
//! looked up in the model.

use super::source::{Problems, Said, Source};
use crate::keys::Target;
use crate::model::visit::{Declares, Refers};
use crate::model::{Model, Name};
use crate::span::Span;
use std::collections::BTreeSet;

type Known = BTreeSet<(Target, Name)>;

struct Pruning<'p, 'a> {
    known: Known,
    sources: &'p [&'p Source<'a>],
    problems: &'p mut Problems,
}

/// Leaves out until nothing dangles; each thing left out is told as a hint.
pub(crate) fn prune(model: &mut Model, sources: &[&Source<'_>], problems: &mut Problems) {
    loop {
        let mut pruning = Pruning {
            known: known_names(model),
            sources,
            problems,
        };
        let before = count(model);
        pruning.round(model);
        if count(model) == before {
            return;
        }
    }
}

fn known_names(model: &Model) -> Known {
    let mut known = Known::new();
    let build = &model.build;
    let mut add = |target: Target, names: Vec<&Name>| {
        known.extend(names.into_iter().map(|name| (target, name.clone())));
    };
    add(Target::Mark, build.marks.iter().map(|e| &e.name).collect());
    add(
        Target::Point,
        build.points.iter().map(|e| &e.name).collect(),
    );
    add(
        Target::Setup,
        build.setups.iter().map(|e| &e.name).collect(),
    );
    add(Target::End, build.ends.iter().map(|e| &e.name).collect());
    add(
        Target::Carrier,
        build.carriers.iter().map(|e| &e.name).collect(),
    );
    add(
        Target::Component,
        build.components.iter().map(|e| &e.name).collect(),
    );
    add(Target::Run, build.runs.iter().map(|e| &e.name).collect());
    let stock = &model.stock;
    add(Target::Tube, stock.tubes.iter().map(|e| &e.name).collect());
    add(Target::Item, stock.items.iter().map(|e| &e.name).collect());
    add(
        Target::Supplier,
        stock.suppliers.iter().map(|e| &e.name).collect(),
    );
    add(
        Target::OnHand,
        stock.on_hand.iter().map(|e| &e.name).collect(),
    );
    known
}

fn count(model: &Model) -> usize {
    let (build, stock) = (&model.build, &model.stock);
    usize::from(build.frame.is_some())
        + build.marks.len()
        + build.points.len()
        + build.readings.len()
        + build.ends.len()
        + build.carriers.len()
        + build.bodies.len()
        + build.components.len()
        + build.runs.len()
        + stock.items.len()
        + stock.offers.len()
        + stock.on_hand.len()
        + model.shop.entries.len()
}

impl Pruning<'_, '_> {
    fn round(&mut self, model: &mut Model) {
        let build = &mut model.build;
        if let Some(frame) = &mut build.frame
            && let Some(lost) = self.lost(frame)
        {
            self.tell("the frame", frame.span, &lost);
            build.frame = None;
        }
        self.named(&mut build.marks, |e| e.span);
        self.named(&mut build.points, |e| e.span);
        self.unnamed(&mut build.readings, |e| {
            (format!("reading {}", e.number), e.span)
        });
        self.named(&mut build.ends, |e| e.span);
        self.named(&mut build.carriers, |e| e.span);
        self.named(&mut build.bodies, |e| e.span);
        self.named(&mut build.components, |e| e.span);
        self.named(&mut build.runs, |e| e.span);
        let stock = &mut model.stock;
        self.named(&mut stock.items, |e| e.span);
        self.unnamed(&mut stock.offers, |e| {
            (format!("the offer for `{}`", e.item), e.span)
        });
        self.named(&mut stock.on_hand, |e| e.span);
        self.unnamed(&mut model.shop.entries, |e| {
            (format!("the entry of {}", e.on), e.span)
        });
    }

    fn named<T: Declares + Refers>(&mut self, list: &mut Vec<T>, span: fn(&T) -> Span) {
        list.retain_mut(|element| {
            let Some(lost) = self.lost(element) else {
                return true;
            };
            let label = format!("{} `{}`", T::TARGET.words(), element.own_name());
            self.tell(&label, span(element), &lost);
            false
        });
    }

    fn unnamed<T: Refers>(&mut self, list: &mut Vec<T>, describe: fn(&T) -> (String, Span)) {
        list.retain_mut(|element| {
            let Some(lost) = self.lost(element) else {
                return true;
            };
            let (label, span) = describe(element);
            self.tell(&label, span, &lost);
            false
        });
    }

    /// The first name that the element refers to and that is not in the model.
    fn lost(&self, element: &mut impl Refers) -> Option<String> {
        let mut lost = None;
        element.references(&mut |target, name| {
            let is_known = target
                .declared()
                .iter()
                .any(|&kind| self.known.contains(&(kind, name.clone())));
            if !is_known && lost.is_none() {
                lost = Some(format!("{} `{name}`", target.words()));
            }
        });
        lost
    }

    fn tell(&mut self, label: &str, span: Span, lost: &str) {
        let Some(source) = self.sources.iter().find(|source| source.file == span.file) else {
            return;
        };
        self.problems.hint(
            source,
            span.start..span.start,
            Said::new(
                format!("{label} is left out"),
                format!("{lost}, which it refers to, could not be used"),
                "put that right first",
            ),
        );
    }
}

//! Wrap-round templates of the way that is shown.

use crate::api::{TemplateView, TemplatesView};
use crate::derived::Shown;
use tubewright_plan::lengths::Lengths;
use tubewright_plan::packet::{
    TemplateJob, TrueScale, shaped_words, templates_of, why_not_by_hand,
};
use tubewright_plan::plan_file::{routes_inputs, stock_inputs};
use tubewright_sheets::Paper;

/// Digits of the plan's hash that are printed: as many as on the packet.
const HASH_DIGITS: usize = 10;
/// Most letters of a date.
const DATE: usize = 10;

/// What is asked for.
#[derive(Clone, Debug)]
pub(crate) struct Wanted {
    /// Pages of US Letter, else of A4.
    pub(crate) is_letter: bool,
    /// Unit that the person picked; without it the build's.
    pub(crate) unit: Option<String>,
    /// Date that is printed.
    pub(crate) on: String,
}

/// Every template, drawn.
///
/// # Errors
/// Words why there are none.
pub(crate) fn drawn(shown: &Shown, wanted: &Wanted) -> Result<Vec<TrueScale>, String> {
    let none = || "there is no way yet, so there is no template: see Route".to_owned();
    let job = shown.car.good_job().ok_or_else(none)?;
    let runs = shown.car.runs(shown.way);
    if runs.is_empty() {
        return Err(none());
    }
    let model = shown.car.model();
    let practice = &job.around.practice;
    let routes = routes_inputs(model, &shown.car.scans, practice, job.budget);
    let frozen = job.chosen.as_ref().map(|chosen| &chosen.plan);
    let hash = stock_inputs(model, practice, &routes, frozen).hash();
    let source_line = format!(
        "{} · plan {} · {}",
        model.build.name.clone().unwrap_or_default(),
        hash.to_string()
            .chars()
            .take(HASH_DIGITS)
            .collect::<String>(),
        wanted.on.chars().take(DATE).collect::<String>(),
    );
    let lengths = wanted.unit.as_deref().and_then(Lengths::of_sign);
    templates_of(TemplateJob {
        model,
        runs,
        supply: shown.now().and_then(Result::ok),
        lengths: lengths.unwrap_or_else(|| Lengths::of(model)),
        source_line: &source_line,
        paper: if wanted.is_letter {
            Paper::LETTER
        } else {
            Paper::A4
        },
    })
    .map_err(|error| error.to_string())
}

/// The list of them.
pub(crate) fn of(shown: &Shown, wanted: &Wanted) -> TemplatesView {
    let runs = shown.car.runs(shown.way);
    let supply = shown.now().and_then(Result::ok);
    let mut words = vec![shaped_words(runs, supply)];
    words.extend(supply.map_or_else(Vec::new, |supply| why_not_by_hand(runs, supply)));
    let (templates, trouble) = match drawn(shown, wanted) {
        Ok(drawn) => (
            (0..).zip(&drawn).map(|(at, one)| view(at, one)).collect(),
            None,
        ),
        Err(why) => (Vec::new(), Some(why)),
    };
    TemplatesView {
        version: shown.version.clone(),
        words,
        trouble,
        templates,
    }
}

fn view(number: u32, template: &TrueScale) -> TemplateView {
    TemplateView {
        number,
        file: template.name.clone(),
        title: template.title.trim_start_matches("Template: ").to_owned(),
        lay: template.lay.clone(),
        width: template.whole.width_mm,
        height: template.whole.height_mm,
        pages: u32::try_from(template.pages.len()).unwrap_or(u32::MAX),
    }
}

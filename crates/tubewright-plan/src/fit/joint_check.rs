//! The check distances at one joint: what they hold, what they leave loose, and what else to do there.

use tubewright_fit::budget::Source;
use tubewright_fit::check::{CheckDistance, Tolerance};

use super::loose::LooseWay;
use super::new_mark::NewMark;
use crate::lengths::Lengths;

/// The check distances at one joint.
#[derive(Clone, Debug, PartialEq)]
pub struct JointCheck {
    /// Mark of the joint.
    pub joint: String,
    /// The distances.
    pub distances: Vec<CheckDistance>,
    /// How far each may be off.
    pub tolerance: Tolerance,
    /// What sets the tolerance, in words.
    pub tolerance_by: Option<String>,
    /// ± (19 in 20) of the joint by the pieces alone, in the worst direction at most, mm.
    pub plus_minus_before_mm: f64,
    /// ± when the check distances are kept to, mm.
    pub plus_minus_after_mm: f64,
    /// What would have to be better, to which share of what it is, when a gap is lost even with
    /// distances that read true. The least trouble first.
    pub better: Vec<(Source, f64)>,
    /// Why there are fewer distances than are wanted.
    pub too_few: Option<String>,
    /// In which direction the distances leave the joint loose, when they do.
    pub loose: Option<LooseWay>,
    /// Where one more mark would help, when the joint is left loose.
    pub one_more: Option<NewMark>,
}

impl JointCheck {
    /// What to do where the distances do not hold the joint; `None` where they do.
    #[must_use]
    pub fn advice(&self, lengths: Lengths) -> Option<String> {
        const NOWHERE: &str = "No structure or floor that was measured sees it from a side that helps: set it by \
                               its place on the joint map and the gaps to what is nearest";
        let only = self.only_mark();
        if self.loose.is_none() && self.too_few.is_none() && only.is_none() {
            return None;
        }
        let words =
            |mark: &NewMark| format!("{}; then ask for the fit sheet again", mark.words(lengths));
        let words = self.one_more.as_ref().map_or(NOWHERE.to_owned(), words);
        Some(match only {
            Some(mark) => format!(
                "{mark} alone sees it: its tape does NOT fix {}, which can still swing round that mark. Set it by \
                 the clock of its part, its height and place on the joint map and the gaps to what is nearest, and look \
                 at it from two sides. {words}",
                self.joint
            ),
            None => words,
        })
    }

    /// The mark that all distances are from, when they are from one alone: they then do not fix the joint.
    #[must_use]
    pub fn only_mark(&self) -> Option<&str> {
        let (first, others) = self.distances.split_first()?;
        let is_same = |other: &CheckDistance| other.mark == first.mark;
        others.iter().all(is_same).then_some(first.mark.as_str())
    }

    /// What would have to be better for the gap to be kept, and by how much; empty when no single figure of the
    /// shop does.
    #[must_use]
    pub fn better_words(&self) -> Vec<String> {
        let words = |(source, share): &(Source, f64)| {
            format!("{} {:.0} % better", source.words(), (1.0 - share) * 100.0)
        };
        self.better.iter().map(words).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use tubewright_fit::check::{Mark, Taping, distances_from};
    use tubewright_geometry::{Frame, Point, UnitVector};

    fn check(marks: &[Point]) -> JointCheck {
        let frame = Frame::upright(Point::new(1000.0, 0.0, 300.0), UnitVector::X);
        let marks: Vec<Mark> = ["A", "B", "C"]
            .iter()
            .zip(marks)
            .map(|(name, place)| Mark {
                name: (*name).to_owned(),
                place: *place,
                covariance: [[0.0; 3]; 3],
            })
            .collect();
        let taping = Taping::usual(1.0);
        let mut distances = Vec::new();
        for mark in &marks {
            distances.extend(distances_from(mark, &frame, 30.0, &taping).take(3));
        }
        JointCheck {
            joint: "J4".to_owned(),
            distances,
            tolerance: Tolerance {
                most_mm: 5.0,
                set_by: None,
            },
            tolerance_by: None,
            plus_minus_before_mm: 4.0,
            plus_minus_after_mm: 3.0,
            better: Vec::new(),
            too_few: None,
            loose: None,
            one_more: None,
        }
    }

    /// Three tapes from one mark prove how far it is from that mark and nothing else, however tight the parts hold it.
    #[test]
    fn tapes_from_one_mark_do_not_fix_a_joint() {
        let one = check(&[Point::new(900.0, -400.0, 500.0)]);
        assert_eq!(one.distances.len(), 3);
        assert_eq!(one.only_mark(), Some("A"));
        let said = one.advice(Lengths::Millimetres).unwrap_or_default();
        assert!(
            said.contains("A alone sees it: its tape does NOT fix J4"),
            "{said}"
        );
        let two = check(&[
            Point::new(900.0, -400.0, 500.0),
            Point::new(900.0, 400.0, 500.0),
        ]);
        assert_eq!(
            (two.only_mark(), two.advice(Lengths::Millimetres)),
            (None, None)
        );
        assert_eq!(check(&[]).only_mark(), None);
    }
}

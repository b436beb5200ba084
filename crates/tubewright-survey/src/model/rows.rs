//! All equations of a network at the present values, as sparse rows.

use super::state::State;
use super::writer::Writer;
use super::{FLOOR_LEVEL_SIGMA_RAD, Layout, TILT_LEVER_MM};
use crate::network::{Network, ReadingKind};
use crate::solve::least_squares::Equations;
use tubewright_geometry::math;

/// Whose equation a row is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum RowOwner {
    /// A reading, by its place in the list.
    Reading(usize),
    /// The floor of a set-up is nearly level.
    LevelFloor,
}

/// Rows `misfit = model − observed` with derivatives, in the order of the readings.
#[derive(Clone, Debug, Default)]
pub(crate) struct Rows {
    starts: Vec<usize>,
    entries: Vec<(usize, f64)>,
    pub(crate) misfit: Vec<f64>,
    pub(crate) sigma: Vec<f64>,
    pub(crate) owner: Vec<RowOwner>,
}

impl Rows {
    pub(crate) fn len(&self) -> usize {
        self.misfit.len()
    }

    pub(crate) fn row(&self, index: usize) -> &[(usize, f64)] {
        let start = if index == 0 {
            0
        } else {
            self.starts[index - 1]
        };
        &self.entries[start..self.starts[index]]
    }

    /// Ends a row whose entries are written already.
    fn end(&mut self, entries: usize, misfit: f64, sigma: f64, owner: RowOwner) {
        self.starts.push(entries);
        self.misfit.push(misfit);
        self.sigma.push(sigma);
        self.owner.push(owner);
    }

    /// Weighted sum of squares v'Pv.
    pub(crate) fn cost(&self) -> f64 {
        self.misfit
            .iter()
            .zip(&self.sigma)
            .map(|(v, s)| (v / s) * (v / s))
            .sum()
    }

    fn clear(&mut self) {
        self.starts.clear();
        self.entries.clear();
        self.misfit.clear();
        self.sigma.clear();
        self.owner.clear();
    }

    /// A'PA, A'Pv and v'Pv.
    pub(crate) fn normal_equations(&self, into: &mut Equations) {
        into.clear();
        into.cost = self.cost();
        for index in 0..self.len() {
            let weight = 1.0 / (self.sigma[index] * self.sigma[index]);
            let row = self.row(index);
            for &(c1, v1) in row {
                let scaled = v1 * weight;
                into.gradient[c1] += scaled * self.misfit[index];
                for &(c2, v2) in row {
                    into.matrix[(c1, c2)] += scaled * v2;
                }
            }
        }
    }
}

/// How many equations a kind of reading has.
fn equations(kind: &ReadingKind) -> usize {
    if matches!(kind, ReadingKind::Symmetry { .. }) {
        3
    } else {
        1
    }
}

fn modelled(writer: &mut Writer<'_>, kind: &ReadingKind, equation: usize) -> f64 {
    match *kind {
        ReadingKind::Tape { from, to, burnt_mm } => writer.tape(from, to, burnt_mm),
        ReadingKind::Height { target, setup } => writer.height(target, setup),
        ReadingKind::Plumb { from, to, setup } => writer.plumb(from, to, setup),
        ReadingKind::Offset { from, to, along } => writer.offset(from, to, along),
        ReadingKind::Symmetry { left, right } => writer.symmetry(left, right, equation),
        ReadingKind::AxisSymmetry { axis, p, q } => writer.axis_symmetry(axis, p, q),
        ReadingKind::Inclination { from, to, setup } => writer.inclination(from, to, setup),
        ReadingKind::Bearing {
            from,
            to,
            base_from,
            base_to,
            setup,
        } => writer.bearing((from, to), (base_from, base_to), setup),
        ReadingKind::FaceInclination {
            end,
            clock_rad,
            setup,
        } => writer.face_inclination(end, clock_rad, setup),
        ReadingKind::TwelveUp { end, setup } => writer.twelve_up(end, setup),
    }
}

/// All equations in use at `state`.
pub(crate) fn linearise(network: &Network, layout: &Layout, state: &State) -> Rows {
    let mut rows = Rows::default();
    linearise_into(network, layout, state, &mut rows);
    rows
}

/// All equations in use at `state`, into room that was used before.
pub(crate) fn linearise_into(network: &Network, layout: &Layout, state: &State, rows: &mut Rows) {
    rows.clear();
    let mut writer = Writer {
        network,
        layout,
        state,
        entries: core::mem::take(&mut rows.entries),
    };
    for (index, reading) in network.readings.iter().enumerate() {
        if reading.set_aside {
            continue;
        }
        for equation in 0..equations(&reading.kind) {
            let mut misfit = modelled(&mut writer, &reading.kind, equation) - reading.value;
            if reading.kind.is_angle() {
                misfit = math::wrap_to_pi(misfit);
            }
            rows.end(
                writer.entries.len(),
                misfit,
                reading.sigma,
                RowOwner::Reading(index),
            );
        }
    }
    rows.entries = writer.entries;
    for (floor, columns) in state.floors.iter().zip(&layout.floors) {
        if let Some(c) = columns.plumb {
            for k in 0..2 {
                rows.entries.push((c + k, 1.0 / TILT_LEVER_MM));
                rows.end(
                    rows.entries.len(),
                    floor.lean[k],
                    FLOOR_LEVEL_SIGMA_RAD,
                    RowOwner::LevelFloor,
                );
            }
        }
    }
}

/// Modelled values and derivatives of a reading that need not be in the network.
pub(crate) fn linearise_kind(
    network: &Network,
    layout: &Layout,
    state: &State,
    kind: &ReadingKind,
) -> Vec<(f64, Vec<(usize, f64)>)> {
    (0..equations(kind))
        .map(|equation| {
            let mut writer = Writer {
                network,
                layout,
                state,
                entries: Vec::with_capacity(32),
            };
            let value = modelled(&mut writer, kind, equation);
            (value, writer.entries)
        })
        .collect()
}

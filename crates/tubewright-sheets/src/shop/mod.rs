//! The shop drawing: the job from the side, from above and from behind, to one scale.
//!
//! The views stand in third-angle projection: the view from above over the view from the side, the
//! view from behind to its right, so that heights and lengths carry across the sheet.

mod furniture;
mod labels;
mod legend;
mod mesh_edges;
mod picture;
mod silhouette;
mod tubes;
mod view;

pub use view::ViewName;

use crate::drawing::{Drawing, Item, Lettering, Rect, Spot};
use crate::figure::Figure;
use crate::scene::Scene;
use furniture::{STRIP_MM, border, frame, heading, scale_bar};
use tubewright_geometry::{Bounds, Point, Solid};
use view::View;

/// Size of a sheet in mm, lying.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paper {
    /// Width in mm.
    pub width_mm: f64,
    /// Height in mm.
    pub height_mm: f64,
}

impl Paper {
    /// ISO 216 A3, lying.
    pub const A3: Self = Self {
        width_mm: 420.0,
        height_mm: 297.0,
    };
    /// ISO 216 A4, lying.
    pub const A4: Self = Self {
        width_mm: 297.0,
        height_mm: 210.0,
    };
    /// US Letter, lying (11 in by 8-1/2 in).
    pub const LETTER: Self = Self {
        width_mm: 279.4,
        height_mm: 215.9,
    };
    /// US Ledger, lying (17 in by 11 in).
    pub const LEDGER: Self = Self {
        width_mm: 431.8,
        height_mm: 279.4,
    };
}

/// Words of the title strip. All given by the caller; nothing is looked up.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct TitleBlock {
    /// Name of the build.
    pub build: String,
    /// What the sheet shows ("Run, three views").
    pub sheet_name: String,
    /// Hash of the plan that the sheet was drawn from, shortened as the caller likes.
    pub plan_hash: String,
    /// Date as it shall be printed.
    pub date: String,
    /// Page of pages; none for a single sheet.
    pub sheet: Option<String>,
    /// A line that must be read with the sheet ("Invented for demonstration: no such car exists").
    pub note: Option<String>,
}

/// Why there is no drawing.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum ShopError {
    /// Neither a piece nor a mark nor a bounded body.
    #[error(
        "there is nothing to draw yet: no run, no mark and no body with an extent; plan a run or enter a body first"
    )]
    NothingToDraw,
    /// A coordinate is not a number.
    #[error(
        "{what} has a coordinate that is not a finite number, so it has no place on the sheet; check what it was computed from"
    )]
    NotFinite {
        /// Which piece, body or mark.
        what: String,
    },
    /// No scale of the list brings the job onto the sheet.
    #[error(
        "the job is {length_mm:.0} mm long and does not fit a sheet {width_mm:.0} mm wide even at 1:{smallest:.0}; check for a far-off mark or piece, or take a larger sheet"
    )]
    PaperTooSmall {
        /// Length of what is to be drawn in mm of the car.
        length_mm: f64,
        /// Width of the sheet in mm.
        width_mm: f64,
        /// The smallest scale that was tried.
        smallest: f64,
    },
}

/// Reductions that a scale rule or a mental sum can follow (ISO 5455 and its usual neighbours).
const REDUCTIONS: [f64; 16] = [
    1.0, 2.0, 2.5, 4.0, 5.0, 7.5, 10.0, 12.5, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0,
];

/// How far round the runs the surroundings are drawn, in mm of the car.
const AROUND_MM: f64 = 450.0;

/// The three views with border, title strip, scale bar, legend and table of tight places.
///
/// Bends are drawn as polylines that miss the true curve by at most 0.02 mm on the paper. Of a mesh
/// only silhouettes, creases and borders are drawn, at most 3000 edges. A plane is drawn where it is
/// seen within 15° of edge-on.
///
/// # Errors
/// [`ShopError`] when there is nothing to draw, a coordinate is not finite, or the sheet is too
/// small.
pub fn three_views(scene: &Scene, block: &TitleBlock, paper: Paper) -> Result<Drawing, ShopError> {
    let extent = extent(scene)?;
    let size = extent.max - extent.min;
    let frame = frame(paper);
    // Room for headings and grid figures round each view, in mm of paper.
    let (left, top, between, right) = (12.0, 15.0, 17.0, 2.0);
    let room_w = frame.width() - left - between - right;
    let room_h = frame.height() - STRIP_MM - 2.0 * top - 14.0;
    let reduction = REDUCTIONS
        .into_iter()
        .find(|r| size.x / r + size.y / r <= room_w && size.y / r + size.z / r <= room_h)
        .ok_or(ShopError::PaperTooSmall {
            length_mm: size.x,
            width_mm: paper.width_mm,
            smallest: 100.0,
        })?;
    let scale = 1.0 / reduction;
    let scale_words = format!("1:{}", Figure(reduction));
    // What room is left over is shared out so that the sheet looks filled.
    let spare_w = (room_w - (size.x + size.y) * scale).max(0.0);
    let spare_h = (room_h - (size.y + size.z) * scale).max(0.0);
    let x0 = frame.min.x + left + 0.25 * spare_w;
    let x1 = x0 + size.x * scale + between + 0.5 * spare_w;
    let y_above = frame.min.y + top + 0.3 * spare_h;
    let y_side = y_above + size.y * scale + top + 0.4 * spare_h;
    let laid = |name: ViewName, at: Spot| lay(name, extent, scale, at);
    let views = [
        laid(ViewName::Above, Spot::new(x0, y_above)),
        laid(ViewName::Side, Spot::new(x0, y_side)),
        laid(ViewName::Behind, Spot::new(x1, y_side)),
    ];
    let mut drawing = Drawing::new(
        paper.width_mm,
        paper.height_mm,
        format!("{}: {}, scale {scale_words}", block.build, block.sheet_name),
    );
    let grid_mm = scene.unit.step_mm(scale, GRID_MM);
    for view in &views {
        picture::draw_view(&mut drawing, scene, view, grid_mm);
        drawing.push("headings", heading(view, &scale_words));
    }
    let beside = Rect {
        min: Spot::new(x1 - 8.0, y_above - 7.5),
        max: Spot::new(frame.max.x - 5.0, y_side - 16.0),
    };
    let (mut words, used) = legend::legend(scene, beside);
    let below = Rect {
        min: Spot::new(beside.min.x, beside.min.y + used + 3.0),
        max: beside.max,
    };
    words.extend(legend::tight_table(scene, below));
    drawing.push("legend", words);
    let bar = Spot::new(x0, frame.max.y - STRIP_MM - 8.5);
    let bar_mm = scene.unit.step_mm(scale, BAR_MM);
    let mut furniture = scale_bar(bar, scale, bar_mm, scene.unit);
    furniture.push(Item::text(
        bar + Spot::new(4.0 * bar_mm * scale + 10.0, 1.6),
        "Third-angle projection. Do not scale off a copy without checking the bar. \
         Figures on the cut cards go before this picture.",
        Lettering::plain(2.1).italic(),
    ));
    furniture.extend(border(paper, block, &scale_words, scene.unit.sign()));
    drawing.push("sheet", furniture);
    Ok(drawing)
}

/// What stands round a view that is drawn alone, mm of paper: left, above, right, below.
const ROUND_A_VIEW_MM: [f64; 4] = [14.0, 14.0, 5.0, 4.0];

/// One view alone, as large as `width_mm` of paper allows, without border: for the page.
///
/// # Errors
/// As [`three_views`].
pub fn one_view(scene: &Scene, name: ViewName, width_mm: f64) -> Result<Drawing, ShopError> {
    let (view, [width, height]) = alone(scene, name, width_mm)?;
    let mut drawing = Drawing::new(
        width,
        height,
        format!("{}: {}", scene.title, name.heading()),
    );
    let grid_mm = scene.unit.step_mm(view.scale, GRID_MM);
    picture::draw_view(&mut drawing, scene, &view, grid_mm);
    Ok(drawing)
}

/// How [`one_view`] lays the car on the paper: whoever points at a place on it can say where that is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LaidView {
    /// Width and height of the paper, mm.
    pub paper: [f64; 2],
    /// Where the car's origin lies on it: from the left, from above, mm.
    pub origin: [f64; 2],
    /// Paper mm per mm of the car.
    pub scale: f64,
}

/// Where [`one_view`] draws the car.
///
/// # Errors
/// As [`three_views`].
pub fn laid_view(scene: &Scene, name: ViewName, width_mm: f64) -> Result<LaidView, ShopError> {
    let (view, paper) = alone(scene, name, width_mm)?;
    Ok(LaidView {
        paper,
        origin: [view.origin.x, view.origin.y],
        scale: view.scale,
    })
}

/// A view that fills a paper of this width, and the paper's size.
fn alone(scene: &Scene, name: ViewName, width_mm: f64) -> Result<(View, [f64; 2]), ShopError> {
    let extent = extent(scene)?;
    let [left, top, _, foot] = ROUND_A_VIEW_MM;
    let scale = scale_in(extent, name, width_mm)?;
    let view = lay(name, extent, scale, Spot::new(left, top));
    let height_mm = top + view.window.height() + foot;
    Ok((view, [width_mm, height_mm]))
}

/// How large the views of a scene are on paper, without drawing them.
#[derive(Clone, Copy, Debug)]
pub struct ViewSizes {
    extent: Bounds,
}

impl ViewSizes {
    /// Of a scene.
    ///
    /// # Errors
    /// As [`three_views`].
    pub fn of(scene: &Scene) -> Result<Self, ShopError> {
        Ok(Self {
            extent: extent(scene)?,
        })
    }

    /// How high [`one_view`] is at this width, mm of paper.
    ///
    /// # Errors
    /// When the width is too small for any drawing.
    pub fn height_mm(&self, name: ViewName, width_mm: f64) -> Result<f64, ShopError> {
        let scale = self.scale(name, width_mm)?;
        let [_, top, _, foot] = ROUND_A_VIEW_MM;
        let view = lay(name, self.extent, scale, Spot::default());
        Ok(top + view.window.height() + foot)
    }

    /// The scale of [`one_view`] at this width: mm of paper for a mm of the car.
    ///
    /// # Errors
    /// When the width is too small for any drawing.
    pub fn scale(&self, name: ViewName, width_mm: f64) -> Result<f64, ShopError> {
        scale_in(self.extent, name, width_mm)
    }
}

/// The scale at which a view alone is `width_mm` wide with what stands round it.
fn scale_in(extent: Bounds, name: ViewName, width_mm: f64) -> Result<f64, ShopError> {
    let flat = lay(name, extent, 1.0, Spot::default());
    let [left, _, right, _] = ROUND_A_VIEW_MM;
    let room = width_mm - left - right;
    if room < 20.0 {
        return Err(ShopError::PaperTooSmall {
            length_mm: flat.window.width(),
            width_mm,
            smallest: 100.0,
        });
    }
    Ok(room / flat.window.width())
}

/// A view whose window's upper left corner lies at `at`.
fn lay(name: ViewName, extent: Bounds, scale: f64, at: Spot) -> View {
    let reach = |axis: tubewright_geometry::UnitVector| {
        let (a, b) = (
            axis.dot(extent.min.to_vector()),
            axis.dot(extent.max.to_vector()),
        );
        (a.min(b), a.max(b))
    };
    let ((r0, r1), (u0, u1)) = (reach(name.right()), reach(name.up()));
    View {
        name,
        scale,
        origin: Spot::new(at.x - r0 * scale, at.y + u1 * scale),
        window: Rect::new(at.x, at.y, (r1 - r0) * scale, (u1 - u0) * scale),
    }
}

/// Least step of the grid on paper, mm.
const GRID_MM: f64 = 15.0;
/// Least length of one field of the scale bar on paper, mm.
const BAR_MM: f64 = 10.0;

/// What is drawn: the runs and marks wholly, the bodies as far as they are near.
fn extent(scene: &Scene) -> Result<Bounds, ShopError> {
    let mut work = Bounds::EMPTY;
    for piece in scene.runs.iter().flat_map(|run| &run.pieces) {
        let own = piece
            .elements
            .iter()
            .map(tubewright_geometry::TubeElement::bounds)
            .chain(piece.outline.iter().filter_map(Solid::bounds))
            .chain([Bounds::of_points([
                piece.frame_in.origin,
                piece.frame_out.origin,
            ])])
            .fold(Bounds::EMPTY, Bounds::joined);
        finite(own, || format!("piece {}", piece.mark))?;
        work = work.joined(own);
    }
    for mark in &scene.marks {
        finite(Bounds::of_points([mark.at]), || {
            format!("mark {}", mark.name)
        })?;
        work = work.with_point(mark.at);
    }
    let mut around = Bounds::EMPTY;
    for body in &scene.bodies {
        if let Some(bounds) = body.solid.bounds() {
            finite(bounds, || format!("body {}", body.name))?;
            around = around.joined(bounds);
        }
    }
    let is_empty = |b: Bounds| b.min.x > b.max.x;
    let mut all = match (is_empty(work), is_empty(around)) {
        (true, true) => return Err(ShopError::NothingToDraw),
        (true, false) => around,
        (false, true) => work,
        (false, false) => {
            let near = work.grown(AROUND_MM);
            let pick = |lo: Point, hi: Point| Bounds { min: lo, max: hi };
            let clipped = pick(
                Point::new(
                    around.min.x.max(near.min.x),
                    around.min.y.max(near.min.y),
                    around.min.z.max(near.min.z),
                ),
                Point::new(
                    around.max.x.min(near.max.x),
                    around.max.y.min(near.max.y),
                    around.max.z.min(near.max.z),
                ),
            );
            if is_empty(clipped) {
                work
            } else {
                work.joined(clipped)
            }
        }
    };
    if let Some(z_mm) = scene.ground_z_mm {
        if !z_mm.is_finite() {
            return Err(ShopError::NotFinite {
                what: "the ground".to_owned(),
            });
        }
        all.min.z = all.min.z.min(z_mm - 20.0);
    }
    Ok(all.grown(25.0))
}

fn finite(bounds: Bounds, what: impl FnOnce() -> String) -> Result<(), ShopError> {
    if bounds.min.is_finite() && bounds.max.is_finite() {
        Ok(())
    } else {
        Err(ShopError::NotFinite { what: what() })
    }
}

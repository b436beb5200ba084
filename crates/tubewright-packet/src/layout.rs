//! Where everything stands on the typeset pages.

use typst::layout::{Frame, FrameItem, Point, Transform};
use typst_layout::PagedDocument;

/// A page with what stands on it, in the order of the engine.
#[derive(Clone, Debug, PartialEq)]
pub struct PageLayout {
    /// Width and height, mm.
    pub size_mm: [f64; 2],
    /// Texts and drawings.
    pub placed: Vec<Placed>,
}

/// A text or a drawing on a page.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The words; nothing for a drawing.
    pub text: Option<String>,
    /// From the left edge of the page, mm.
    pub left_mm: f64,
    /// Line of the text, or upper edge of the drawing, from the upper edge of the page, mm.
    pub top_mm: f64,
    /// How wide it is, mm.
    pub width_mm: f64,
    /// Size of the face, or height of the drawing, mm.
    pub height_mm: f64,
}

/// The pages of a document.
pub(crate) fn pages_of(document: &PagedDocument) -> Vec<PageLayout> {
    document
        .pages()
        .iter()
        .map(|page| {
            let mut placed = Vec::new();
            collect(&page.frame, Transform::identity(), &mut placed);
            PageLayout {
                size_mm: [page.frame.width().to_mm(), page.frame.height().to_mm()],
                placed,
            }
        })
        .collect()
}

/// Texts and drawings of a frame; `outer` leads from its coordinates to the page's.
fn collect(frame: &Frame, outer: Transform, placed: &mut Vec<Placed>) {
    for (at, item) in frame.items() {
        let moved = outer.pre_concat(Transform::translate(at.x, at.y));
        let corner = Point::zero().transform(moved);
        match item {
            FrameItem::Group(group) => {
                collect(&group.frame, moved.pre_concat(group.transform), placed);
            }
            FrameItem::Text(text) => placed.push(Placed {
                text: Some(text.text.to_string()),
                left_mm: corner.x.to_mm(),
                top_mm: corner.y.to_mm(),
                width_mm: text.width().to_mm(),
                height_mm: text.size.to_mm(),
            }),
            FrameItem::Image(_, size, _) => placed.push(Placed {
                text: None,
                left_mm: corner.x.to_mm(),
                top_mm: corner.y.to_mm(),
                width_mm: size.x.to_mm(),
                height_mm: size.y.to_mm(),
            }),
            FrameItem::Shape(..) | FrameItem::Link(..) | FrameItem::Tag(_) => {}
        }
    }
}

//! What the typesetting engine may see: one page design, one file of data, three faces. No disk, no
//! network, no clock.

use std::sync::LazyLock;
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::PdfOptions;

/// DejaVu Sans Condensed: upright, bold, slanted. It has ±, °, Ø and ×, and figures of one width.
const FACES: [&[u8]; 3] = [
    include_bytes!("../fonts/DejaVuSansCondensed.ttf"),
    include_bytes!("../fonts/DejaVuSansCondensed-Bold.ttf"),
    include_bytes!("../fonts/DejaVuSansCondensed-Oblique.ttf"),
];

/// What is the same for every packet.
struct Press {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
}

static PRESS: LazyLock<Press> = LazyLock::new(|| {
    let fonts: Vec<Font> = FACES
        .into_iter()
        .flat_map(|face| Font::iter(Bytes::new(face)))
        .collect();
    Press {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
    }
});

struct OnePacket {
    main: Source,
    data_id: FileId,
    data: Bytes,
}

impl World for OnePacket {
    fn library(&self) -> &LazyHash<Library> {
        &PRESS.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &PRESS.book
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() {
            Ok(self.main.clone())
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.data_id {
            Ok(self.data.clone())
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn font(&self, index: usize) -> Option<Font> {
        PRESS.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// The text with every letter that no face has spelt in Latin letters: a name in another script is then
/// still told from the next one, which empty boxes are not. Signs that JSON or a drawing would read as
/// their own become spaces.
fn printable(text: &str) -> String {
    let has_glyph = |c: char| {
        c.is_ascii()
            || c.is_control()
            || PRESS
                .fonts
                .iter()
                .any(|font| font.info().coverage.contains(u32::from(c)))
    };
    let mut out = String::with_capacity(text.len());
    let mut is_spelt = false;
    for c in text.chars() {
        if has_glyph(c) {
            // The space that ends a spelt syllable serves for the one that is written.
            if !(is_spelt && c == ' ' && out.ends_with(' ')) {
                if is_spelt && !c.is_alphanumeric() && out.ends_with(' ') {
                    out.pop();
                }
                out.push(c);
            }
            is_spelt = false;
            continue;
        }
        let spelt = deunicode::deunicode_char(c).unwrap_or("?");
        out.extend(spelt.chars().map(|letter| match letter {
            '"' | '\\' | '<' | '>' | '&' => ' ',
            plain => plain,
        }));
        is_spelt = true;
    }
    out
}

/// Sets the pages of `template`, which reads `packet.json`.
///
/// # Errors
/// The engine's own words.
pub(crate) fn compiled(template: &str, data: &str) -> Result<PagedDocument, String> {
    let id = |name: &str| -> Result<FileId, String> {
        let path = VirtualPath::new(name).map_err(|error| format!("{error:?}"))?;
        Ok(RootedPath::new(VirtualRoot::Project, path).intern())
    };
    let world = OnePacket {
        main: Source::new(id("packet.typ")?, template.to_owned()),
        data_id: id("packet.json")?,
        data: Bytes::from_string(printable(data)),
    };
    typst::compile(&world).output.map_err(|e| words(&e))
}

/// The same as the bytes of a PDF file.
///
/// # Errors
/// The engine's own words.
pub(crate) fn typeset(template: &str, data: &str) -> Result<Vec<u8>, String> {
    let document = compiled(template, data)?;
    let options = PdfOptions {
        ident: Smart::Custom("tubewright shop packet".to_owned()),
        creator: Smart::Custom(Some("tubewright".to_owned())),
        ..PdfOptions::default()
    };
    let bytes = typst_pdf::pdf(&document, &options).map_err(|e| words(&e));
    // What was memoised for this packet is of no use to the next.
    typst::comemo::evict(0);
    bytes
}

fn words(errors: &[SourceDiagnostic]) -> String {
    errors
        .iter()
        .map(|error| error.message.to_string())
        .collect::<Vec<_>>()
        .join("; ")
}

#[cfg(test)]
mod tests {
    use super::printable;

    #[test]
    fn what_has_no_glyph_is_spelt_and_all_else_stays() {
        for (name, printed) in [
            (
                "A left ± 3 mm, Ø57 × 1.5 “tank”",
                "A left ± 3 mm, Ø57 × 1.5 “tank”",
            ),
            ("Ρόδι, рама, شاسی", "Ρόδι, рама, شاسی"),
            ("塔 左", "Ta Zuo"),
            ("塔 右 to J4", "Ta You to J4"),
            ("\"出口\"", "\"Chu Kou\""),
            ("＜＆＂", " "),
        ] {
            let found = printable(name);
            assert_eq!(found.trim_end(), printed.trim_end(), "{name}");
        }
    }
}

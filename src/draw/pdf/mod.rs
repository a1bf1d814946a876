//! The one painter of PDF: pages at true scale, with what is cut, creased and glued in layers of their own, and the letters
//! that they use of the font.

mod layer;
mod letters;
mod paint;

use layer::Layer;
use letters::Letters;
use miniz_oxide::deflate::compress_to_vec_zlib;
use paint::{FONT, Painter, short};
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, Settings, TextStr};

use super::drawing::{Drawing, Spot};
use super::font::Font;
use super::pages::Page;
use super::pattern::Pattern;

/// Points in a millimetre: a point is 1/72 in (ISO 32000-1, 8.3.2.3).
const POINTS: f64 = 72.0 / 25.4;

/// What a page says, and its size in millimetres.
type Painted = (Spot, Vec<u8>);

/// Pages of patterns as a file: each layer can be switched off by itself.
#[must_use]
pub fn pdf(title: &str, patterns: &[Pattern], pages: &[Page], font: &Font) -> Vec<u8> {
    let mut letters = Letters::new(font);
    let painted = pages.iter().map(|page| {
        let mut painter = Painter::new(page.size[1], &mut letters);
        painter.pattern(page, patterns);
        (page.size, painter.finish())
    });
    let painted = painted.collect();
    file(title, &Layer::ALL, painted, &letters)
}

/// Pages to be read as a file: everything in the order in which it stands on them.
#[must_use]
pub fn print(title: &str, pages: &[Drawing], font: &Font) -> Vec<u8> {
    let mut letters = Letters::new(font);
    let painted = pages.iter().map(|page| {
        let mut painter = Painter::new(page.max[1], &mut letters);
        painter.read(page);
        (page.max, painter.finish())
    });
    let painted = painted.collect();
    file(title, &[], painted, &letters)
}

/// The file of these pages.
fn file(title: &str, layers: &[Layer], pages: Vec<Painted>, letters: &Letters) -> Vec<u8> {
    let mut pdf = Pdf::with_settings(Settings { pretty: false });
    let mut next = Ref::new(1);
    let [root, tree, info, font] = [0; 4].map(|_| next.bump());
    let layers: Vec<(Layer, Ref)> = layers.iter().map(|layer| (*layer, next.bump())).collect();
    let leaves: Vec<Ref> = pages.iter().map(|_| next.bump()).collect();

    let mut catalog = pdf.catalog(root);
    catalog.pages(tree);
    if !layers.is_empty() {
        let ids: Vec<Ref> = layers.iter().map(|(_, id)| *id).collect();
        Layer::list(&mut catalog, &ids);
    }
    catalog.finish();
    let count = i32::try_from(leaves.len()).unwrap_or(i32::MAX);
    pdf.pages(tree).count(count).kids(leaves.iter().copied());
    pdf.document_info(info).title(TextStr(title)).creator(TextStr("Snugfold"));
    for (layer, id) in &layers {
        layer.write(&mut pdf, *id);
    }
    for ((size, painted), leaf) in pages.into_iter().zip(leaves) {
        let content = next.bump();
        let [width, height] = size.map(|mm| short(mm * POINTS));
        let mut page = pdf.page(leaf);
        page.parent(tree).media_box(Rect::new(0.0, 0.0, width, height)).contents(content);
        let mut uses = page.resources();
        uses.fonts().pair(FONT, font);
        if !layers.is_empty() {
            let mut named = uses.insert(Name(b"Properties")).dict();
            for (layer, id) in &layers {
                named.pair(layer.key(), *id);
            }
        }
        uses.finish();
        page.finish();
        pdf.stream(content, &compressed(&painted)).filter(Filter::FlateDecode);
    }
    letters.write(&mut pdf, font, &mut next);
    pdf.finish()
}

/// As it stands in the file: half of the hardest pressing, which is nearly as small and quicker.
fn compressed(bytes: &[u8]) -> Vec<u8> {
    compress_to_vec_zlib(bytes, 6)
}

//! The letters of a file, and the part of the font that has them.

use std::collections::BTreeMap;

use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, Str};
use subsetter::{GlyphRemapper, subset};

use super::compressed;
use crate::draw::font::{Font, Glyph};

/// Thousandths of the height of the lettering, in which a PDF gives widths (ISO 32000-1, 9.2.4).
const PARTS: f64 = 1_000.0;

/// What the numbers of letters are called where they mean nothing but their place in the font (9.7.3).
const SYSTEM: SystemInfo = SystemInfo { registry: Str(b"Adobe"), ordering: Str(b"Identity"), supplement: 0 };

/// The letters that a file uses, each with a number of its own: two that look alike, such as a Latin and a Cyrillic А,
/// may share their shape in the font, and are still read back as what they are.
pub struct Letters<'a> {
    font: &'a Font,
    used: Vec<Glyph>,
    numbers: BTreeMap<char, u16>,
}

impl<'a> Letters<'a> {
    /// None so far.
    #[must_use]
    pub const fn new(font: &'a Font) -> Self {
        Self { font, used: Vec::new(), numbers: BTreeMap::new() }
    }

    /// What they are letters of.
    #[must_use]
    pub const fn font(&self) -> &'a Font {
        self.font
    }

    /// A run of words as the file says it: two bytes for each letter.
    pub fn codes(&mut self, words: &str) -> Vec<u8> {
        let mut codes = Vec::with_capacity(2 * words.len());
        for glyph in self.font.glyphs(words) {
            let number = *self.numbers.entry(glyph.letter).or_insert_with(|| {
                self.used.push(glyph);
                // Zero stands for no letter. A file cannot run out of numbers: the font has fewer letters than that.
                u16::try_from(self.used.len()).unwrap_or_default()
            });
            codes.extend(number.to_be_bytes());
        }
        codes
    }

    /// Writes the font with these letters as object `id`; further ones are numbered from `next`.
    pub fn write(&self, pdf: &mut Pdf, id: Ref, next: &mut Ref) {
        let [descendant, descriptor, program, shapes, unicode] = [0; 5].map(|_| next.bump());
        let mut part = GlyphRemapper::new();
        let ids: Vec<u16> = self.used.iter().map(|glyph| part.remap(glyph.id)).collect();
        // What cannot be parted is embedded whole, with the numbers that it has.
        let (file, ids) = match subset(self.font.file(), 0, &part) {
            Ok(file) => (file, ids),
            Err(_) => (self.font.file().to_vec(), self.used.iter().map(|glyph| glyph.id).collect()),
        };
        let name = format!("{}+{}", self.tag(), self.font.name);
        let name = Name(name.as_bytes());
        pdf.type0_font(id)
            .base_font(name)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(descendant)
            .to_unicode(unicode);

        let mut cid = pdf.cid_font(descendant);
        cid.subtype(CidFontType::Type2).base_font(name).system_info(SYSTEM).font_descriptor(descriptor);
        cid.default_width(0.0).cid_to_gid_map_stream(shapes);
        cid.widths().consecutive(1, self.used.iter().map(|glyph| (glyph.width * PARTS) as f32));
        cid.finish();

        let part = |share: f64| (share * PARTS) as f32;
        let [left, low, right, high] = self.font.bounds.map(part);
        pdf.font_descriptor(descriptor)
            .name(name)
            // Its letters are more than those of the Latin sets that readers of PDF know (9.8.2).
            .flags(FontFlags::SYMBOLIC)
            .bbox(Rect::new(left, low, right, high))
            .italic_angle(0.0)
            .ascent(part(self.font.above))
            .descent(part(self.font.below))
            .cap_height(part(self.font.capital))
            // No font says it, and a file must: about this is usual for an ordinary weight.
            .stem_v(80.0)
            .font_file2(program);

        let length = i32::try_from(file.len()).unwrap_or_default();
        pdf.stream(program, &compressed(&file)).filter(Filter::FlateDecode).pair(Name(b"Length1"), length);
        let shown: Vec<u8> = [0].into_iter().chain(ids).flat_map(u16::to_be_bytes).collect();
        pdf.stream(shapes, &compressed(&shown)).filter(Filter::FlateDecode);
        let mut map = UnicodeCmap::new(Name(b"Letters"), SYSTEM);
        for (number, glyph) in (1_u16..).zip(&self.used) {
            map.pair(number, glyph.letter);
        }
        pdf.cmap(unicode, &compressed(&map.finish())).filter(Filter::FlateDecode);
    }

    /// Six capitals that tell parts of one font from each other (9.6.4): from the letters, so that the same papers are
    /// the same file.
    fn tag(&self) -> String {
        // FNV-1a.
        let hash = self
            .numbers
            .keys()
            .flat_map(|letter| u32::from(*letter).to_le_bytes())
            .fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
        (0..6).map(|nth| char::from(b'A' + ((hash >> (8 * nth)) % 26) as u8)).collect()
    }
}

//! `Font`: the letters in which papers are set: which there are, how wide each is, and the file that has their shapes.
//!
//! It is an argument of whatever sets or writes pages. The page fetches the file (`web/lettering.rs`); it is no part of
//! the program.

use skrifa::instance::{LocationRef, Size};
use skrifa::string::StringId;
use skrifa::{FontRef, GlyphId, GlyphId16, MetadataProvider, Tag};
use subsetter::{GlyphRemapper, subset};
use unicode_normalization::UnicodeNormalization;

/// Stands for a letter that the font lacks.
pub const STAND_IN: char = '?';

/// A font that was read. Lengths are shares of the height of its lettering.
pub struct Font {
    file: Vec<u8>,
    /// In the order of their letters.
    glyphs: Vec<Glyph>,
    /// How wide the letters of plain English are, by their number: nearly all that is measured, over and over.
    plain: Vec<f64>,
    /// Its name in files (PostScript's).
    pub name: String,
    /// How high a capital is.
    pub capital: f64,
    /// How far letters reach above the foot of a line.
    pub above: f64,
    /// How far letters reach below it, which is less than nothing.
    pub below: f64,
    /// Left, lower, right and upper end of all letters laid over each other.
    pub bounds: [f64; 4],
}

/// A letter of a font.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glyph {
    /// The letter.
    pub letter: char,
    /// The number of its shape in the font's file.
    pub id: u16,
    /// How far it is from its beginning to that of the next letter.
    pub width: f64,
}

/// What was read is no font that pages can be set in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unreadable;

impl Font {
    /// Reads a TrueType file.
    ///
    /// # Errors
    /// Where it is none, or has no letters.
    pub fn read(file: Vec<u8>) -> Result<Self, Unreadable> {
        let font = FontRef::new(&file).map_err(|_| Unreadable)?;
        // In the font's own units, which are whole numbers.
        let whole = font.metrics(Size::unscaled(), LocationRef::default());
        let widths = font.glyph_metrics(Size::unscaled(), LocationRef::default());
        let unit = f64::from(whole.units_per_em);
        if whole.units_per_em == 0 {
            return Err(Unreadable);
        }
        let share = |units: f32| f64::from(units) / unit;
        let one = |(code, id): (u32, GlyphId)| {
            let (letter, short) = (char::from_u32(code)?, GlyphId16::try_from(id).ok()?);
            Some(Glyph { letter, id: short.to_u16(), width: share(widths.advance_width(id)?) })
        };
        let mut glyphs: Vec<Glyph> = font.charmap().mappings().filter_map(one).collect();
        glyphs.sort_by_key(|glyph| glyph.letter);
        glyphs.dedup_by_key(|glyph| glyph.letter);
        let bounds = whole.bounds.ok_or(Unreadable)?;
        // Its shapes are looked through now, so that a file which came in half is not found out by blank papers.
        let shapes: Vec<u16> = glyphs.iter().map(|glyph| glyph.id).collect();
        let whole_file = font.table_data(Tag::new(b"glyf")).is_some()
            && subset(&file, 0, &GlyphRemapper::new_from_glyphs(&shapes)).is_ok();
        if !whole_file || !glyphs.iter().any(|glyph| glyph.letter == STAND_IN) {
            return Err(Unreadable);
        }
        let named = font.localized_strings(StringId::POSTSCRIPT_NAME).english_or_first();
        // Names of a PDF have no characters but these.
        let name =
            named.map_or_else(String::new, |n| n.chars().filter(|c| c.is_ascii_alphanumeric() || *c == '-').collect());
        let mut font = Self {
            glyphs,
            plain: Vec::new(),
            name: if name.is_empty() { "Papers".to_owned() } else { name },
            capital: whole.cap_height.map_or(0.7, share),
            above: share(whole.ascent),
            below: share(whole.descent),
            bounds: [bounds.x_min, bounds.y_min, bounds.x_max, bounds.y_max].map(share),
            file,
        };
        font.plain =
            ('\0'..='\x7f').map(|letter| font.glyphs(letter.encode_utf8(&mut [0; 4])).map(|g| g.width).sum()).collect();
        Ok(font)
    }

    /// The file that it was read from.
    #[must_use]
    pub fn file(&self) -> &[u8] {
        &self.file
    }

    /// A letter, where the font has it.
    #[must_use]
    pub fn glyph(&self, letter: char) -> Option<Glyph> {
        let place = self.glyphs.binary_search_by_key(&letter, |glyph| glyph.letter).ok()?;
        self.glyphs.get(place).copied()
    }

    /// The letters of a run, with [`STAND_IN`] for each that the font lacks. What is written as a letter and a mark over
    /// it is one letter.
    pub fn glyphs(&self, words: &str) -> impl Iterator<Item = Glyph> {
        words.nfc().filter_map(|letter| self.glyph(letter).or_else(|| self.glyph(STAND_IN)))
    }

    /// How wide a run is.
    #[must_use]
    pub fn width(&self, words: &str) -> f64 {
        if words.is_ascii() {
            return words.bytes().filter_map(|letter| self.plain.get(usize::from(letter))).sum();
        }
        self.glyphs(words).map(|glyph| glyph.width).sum()
    }

    /// Whether it has all letters of a run.
    #[must_use]
    pub fn shows(&self, words: &str) -> bool {
        words.nfc().all(|letter| self.glyph(letter).is_some())
    }

    /// The letters of a run that it lacks, each once.
    #[must_use]
    pub fn lacks(&self, words: &str) -> Vec<char> {
        let mut all = Vec::new();
        for letter in words.nfc().filter(|letter| self.glyph(*letter).is_none()) {
            if !all.contains(&letter) {
                all.push(letter);
            }
        }
        all
    }
}

/// Other tests use its font.
#[cfg(test)]
pub mod tests {
    use super::*;

    /// The font of the page.
    pub fn papers() -> Font {
        Font::read(include_bytes!("../../style/font/papers.ttf").to_vec()).expect("it is a font")
    }

    #[test]
    fn letters_are_as_wide_as_the_file_says() {
        let font = papers();
        // Read with fonttools: of 2,000 units.
        for (letter, units) in [('0', 1160.0), ('i', 480.0), ('\u{a0}', 512.0), ('½', 1451.0)] {
            assert_eq!(font.width(&letter.to_string()), units / 2_000.0, "{letter}");
        }
        assert_eq!(font.width("礼"), font.width("?"));
        assert!((font.capital - 1433.0 / 2_000.0).abs() < 1e-9);
        assert_eq!(font.name, "SnugfoldPapers-Regular");
    }

    #[test]
    fn letters_of_many_languages_are_there_and_others_are_named() {
        let font = papers();
        let names = "Łukasz Zoë Őrs Şule Ирина Ελένη Đặng Ŵyn Ġorġ Þóra Љиљана Ґанна ½ ⅛ ⁄ – … × ° → “”‘’ ″ € №";
        assert_eq!(font.lacks(names), []);
        assert_eq!(font.lacks("礼 & 愛 礼\u{202e}"), ['礼', '愛', '\u{202e}']);
    }

    /// As keyboards that type marks by themselves give them, and names of files on some devices.
    #[test]
    fn a_letter_and_its_mark_are_one_letter() {
        let font = papers();
        for (apart, one) in [("Zoe\u{308}", "Zoë"), ("O\u{30b}rs", "Őrs"), ("\u{395}\u{301}", "Έ"), ("и\u{306}", "й")]
        {
            let letters = |words| font.glyphs(words).map(|glyph| glyph.letter).collect::<String>();
            assert_eq!(letters(apart), one);
            assert_eq!(font.width(apart), font.width(one));
        }
    }

    #[test]
    fn what_is_no_font_is_refused() {
        let good = papers().file;
        for size in [0, 4, 12, 200, good.len() / 4, good.len() / 2, good.len() * 9 / 10] {
            assert!(Font::read(good[..size].to_vec()).is_err(), "{size}");
        }
        assert!(Font::read(b"<!doctype html><title>Not found</title>".to_vec()).is_err());
    }
}

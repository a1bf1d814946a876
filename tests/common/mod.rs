//! What several tests share.
#![allow(dead_code, reason = "each test uses a part of it")]

pub mod dice;
pub mod drawn;
pub mod odd;
pub mod projects;
pub mod shelves;
pub mod table;
pub mod typical;

use std::sync::OnceLock;

use snugfold::draw::font::Font;

/// The font of papers, as the page fetches it.
pub fn font() -> &'static Font {
    static FONT: OnceLock<Font> = OnceLock::new();
    FONT.get_or_init(|| {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/style/font/papers.ttf");
        Font::read(std::fs::read(path).expect("the font is there")).expect("it is a font")
    })
}

/// How much is tried: `usual`, many times of it where `SNUGFOLD_TRIES` says so.
pub fn tries(usual: u32) -> u32 {
    let times = std::env::var("SNUGFOLD_TRIES").ok().and_then(|t| t.parse().ok());
    usual.saturating_mul(times.unwrap_or(1))
}

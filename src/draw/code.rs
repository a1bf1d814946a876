//! A link as a square code that a phone reads from paper (QR code, ISO/IEC 18004).

use qrcodegen::{QrCode, QrCodeEcc};

use super::drawing::{Area, Drawing, Fill, Mark};
use crate::project::request::Tint;

/// Light squares that stay free all round (ISO/IEC 18004: four).
const QUIET: i32 = 4;
const DARK: Tint = Tint(0x0000_0000);
const LIGHT: Tint = Tint(0x00ff_ffff);

/// How much of a code may be unreadable, at least.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spare {
    /// A seventh (level M): paper gets glue on it.
    Seventh,
    /// A fourteenth (level L): fewer squares, and so larger ones in the same place.
    Fourteenth,
}

/// `text` as a code of squares of 1 mm; nothing where it is too long to be one (about 2,300 characters).
#[must_use]
pub fn code(text: &str, title: &str, spare: Spare) -> Option<Drawing> {
    let level = match spare {
        Spare::Seventh => QrCodeEcc::Medium,
        Spare::Fourteenth => QrCodeEcc::Low,
    };
    let code = QrCode::encode_text(text, level).ok()?;
    let size = code.size();
    let mut d = Drawing { title: title.to_owned(), lettering: 1.0, ..Drawing::default() };
    let end = f64::from(size + QUIET);
    d.frame([f64::from(-QUIET); 2], [end; 2]);
    square(&mut d, [f64::from(-QUIET); 2], [end; 2], LIGHT);
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let run = (x..size).take_while(|&x| code.get_module(x, y)).count();
            let far = x + i32::try_from(run).unwrap_or(1);
            if run > 0 {
                square(&mut d, [f64::from(x), f64::from(y)], [f64::from(far), f64::from(y + 1)], DARK);
            }
            x = far + 1;
        }
    }
    Some(d)
}

fn square(d: &mut Drawing, [left, top]: [f64; 2], [right, bottom]: [f64; 2], tint: Tint) {
    let corners = vec![[left, top], [right, top], [right, bottom], [left, bottom]];
    d.marks.push(Mark::Area(Area { corners, fill: Fill::Card(tint, 0.0), panel: None }));
}

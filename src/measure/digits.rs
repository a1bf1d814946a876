//! Digits and signs of other keyboards, as the ones that numbers are read by.

use std::borrow::Cow;

/// `typed` with digits of other scripts, their decimal signs and full-width signs as plain ones: what an Arabic,
/// Persian, Indic or East Asian keyboard types for `4.25`. Other letters stay.
///
/// The digits are those that Unicode gives the value of a decimal digit (general category Nd) in the scripts whose
/// keyboards type them first; U+066B is the Arabic decimal separator.
///
/// ```
/// use snugfold::measure::digits::plain;
/// assert_eq!(plain("٤٫٢٥"), "4.25");
/// assert_eq!(plain("１０８ｍｍ"), "108mm");
/// assert_eq!(plain("4 1/4 in"), "4 1/4 in");
/// ```
#[must_use]
pub fn plain(typed: &str) -> Cow<'_, str> {
    if typed.is_ascii() {
        return Cow::Borrowed(typed);
    }
    Cow::Owned(typed.chars().map(sign).collect())
}

/// Where the ten digits of a script begin: Arabic, Persian and Urdu, Devanagari, Bengali, Thai.
const ZEROS: [u32; 5] = [0x0660, 0x06F0, 0x0966, 0x09E6, 0x0E50];

/// Full-width signs from `！` to `～` lie this far above the plain ones.
const FULL_WIDTH: u32 = 0xFEE0;

fn sign(c: char) -> char {
    let code = u32::from(c);
    let from_zero = ZEROS.iter().find_map(|zero| code.checked_sub(*zero).filter(|n| *n < 10));
    if let Some(digit) = from_zero.and_then(|n| char::from_digit(n, 10)) {
        return digit;
    }
    match c {
        '٫' => '.',
        '\u{3000}' => ' ',
        '！'..='～' => char::from_u32(code - FULL_WIDTH).unwrap_or(c),
        _ => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_digit_of_every_script() {
        for zero in ZEROS.into_iter().chain([0xFF10]) {
            let typed: String = (zero..zero + 10).filter_map(char::from_u32).collect();
            assert_eq!(plain(&typed), "0123456789", "{typed}");
        }
    }

    #[test]
    fn what_is_no_number_stays() {
        for typed in ["4¼ in", "4 1⁄4″", "10,8 cm", "−4", "Łukasz", "½"] {
            assert_eq!(plain(typed), typed);
        }
    }
}

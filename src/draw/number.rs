//! Numbers as drawings are written with.

/// Hundredths of a millimetre, without idle noughts.
#[must_use]
pub fn num(mm: f64) -> String {
    let hundredths = (mm * 100.0).round();
    if hundredths == 0.0 || !hundredths.is_finite() {
        return "0".to_owned();
    }
    // Written as whole numbers: the printing of decimals is much to download.
    let whole = hundredths as i64;
    let (sign, parts) = (if whole < 0 { "-" } else { "" }, whole.unsigned_abs());
    let text = format!("{sign}{}.{:02}", parts / 100, parts % 100);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_never_odd() {
        for (mm, expected) in [(0.0, "0"), (-0.001, "0"), (1.5, "1.5"), (-2.0, "-2"), (100.0, "100"), (f64::NAN, "0")] {
            assert_eq!(num(mm), expected);
        }
    }
}

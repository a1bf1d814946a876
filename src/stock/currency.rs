//! Currencies by their code (ISO 4217), and how many decimals their smallest coin is. Nothing is ever converted.

use crate::measure::digits;

/// Codes of currencies with two decimals that are paid with (ISO 4217, list one, written here from memory;
/// `tests/money.rs` holds it against a library that others keep).
const TWO: &str = "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY \
                   COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG \
                   HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP \
                   MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR \
                   SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD \
                   UYU UZS VED VES WST XCD XCG YER ZAR ZMW ZWG";
/// Those without decimals.
const NONE: &str = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF";
/// Those with three.
const THREE: &str = "BHD IQD JOD KWD LYD OMR TND";

/// How many decimals a currency's smallest coin is; nothing where no currency has this code.
///
/// ```
/// use snugfold::stock::currency::decimals;
/// assert_eq!([decimals("EUR"), decimals("JPY"), decimals("KWD"), decimals("XQZ")], [Some(2), Some(0), Some(3), None]);
/// ```
#[must_use]
pub fn decimals(code: &str) -> Option<usize> {
    let lists = [(NONE, 0), (TWO, 2), (THREE, 3)];
    lists.into_iter().find(|(list, _)| list.split(' ').any(|one| one == code)).map(|(_, decimals)| decimals)
}

/// Money as the maker writes it: a code or a sign, and the decimals of the smallest coin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Currency {
    /// A code, a sign, or nothing.
    pub mark: String,
    /// Decimals.
    pub decimals: usize,
}

/// What cannot be counted in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unknown {
    /// It looks like a code, and no currency has it.
    Code,
    /// It is neither a code nor a short sign.
    Long,
}

impl Default for Currency {
    /// Without a mark, in hundredths.
    fn default() -> Self {
        Self { mark: String::new(), decimals: 2 }
    }
}

impl Currency {
    /// From what was typed; with two decimals where it is no code.
    ///
    /// # Errors
    /// [`Unknown`] where it cannot be a currency: money is counted without a mark then.
    pub fn of(typed: &str) -> Result<Self, Unknown> {
        let mark = typed.trim();
        let code = mark.to_uppercase();
        if let Some(decimals) = decimals(&code) {
            return Ok(Self { mark: code, decimals });
        }
        if mark.len() == 3 && mark.bytes().all(|b| b.is_ascii_alphabetic()) {
            return Err(Unknown::Code);
        }
        // “kr”, “Kčs”, “R$”: signs are short.
        if mark.chars().count() > 4 || mark.chars().any(|c| c.is_control() || c.is_ascii_digit()) {
            return Err(Unknown::Long);
        }
        Ok(Self { mark: mark.to_owned(), decimals: 2 })
    }

    /// So many of the smallest coins, as they are written.
    ///
    /// ```
    /// use snugfold::stock::currency::Currency;
    /// let of = |mark, coins| Currency::of(mark).map(|c| c.show(coins));
    /// assert_eq!(of("£", 1_250), Ok("£12.50".into()));
    /// assert_eq!(of("eur", 5), Ok("0.05 EUR".into()));
    /// assert_eq!(of("JPY", 1_250), Ok("1250 JPY".into()));
    /// assert_eq!(of("KWD", 1_250), Ok("1.250 KWD".into()));
    /// ```
    #[must_use]
    pub fn show(&self, coins: u64) -> String {
        let number = self.number(coins);
        match self.mark.as_str() {
            "" => number,
            mark if mark.chars().all(char::is_alphabetic) => format!("{number} {mark}"),
            mark => format!("{mark}{number}"),
        }
    }

    /// So many of the smallest coins without a mark.
    #[must_use]
    pub fn number(&self, coins: u64) -> String {
        let digits = format!("{coins:0>width$}", width = self.decimals + 1);
        let (whole, part) = digits.split_at(digits.len() - self.decimals);
        if part.is_empty() { whole.to_owned() } else { format!("{whole}.{part}") }
    }

    /// What was typed, in the smallest coins; nothing where it is no such amount, or is split finer than coins are.
    ///
    /// ```
    /// use snugfold::stock::currency::Currency;
    /// let pounds = Currency::of("£").unwrap_or_default();
    /// assert_eq!([pounds.read("12"), pounds.read("£12,5"), pounds.read(".05")], [Some(1_200), Some(1_250), Some(5)]);
    /// assert_eq!([pounds.read("1.234"), pounds.read("-1"), pounds.read("")], [None; 3]);
    /// ```
    #[must_use]
    pub fn read(&self, typed: &str) -> Option<u32> {
        let typed = &*digits::plain(typed.trim());
        let bare = if self.mark.is_empty() { typed } else { typed.trim_start_matches(&*self.mark) };
        let bare = if self.mark.is_empty() { bare } else { bare.trim_end_matches(&*self.mark) }.trim();
        let (whole, part) = bare.split_once(['.', ',']).unwrap_or((bare, ""));
        let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
        if !digits(whole) || !digits(part) || part.len() > self.decimals || (whole.is_empty() && part.is_empty()) {
            return None;
        }
        format!("{whole}{part:0<width$}", width = self.decimals).parse().ok()
    }
}

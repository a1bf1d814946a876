//! Numbers and texts as bytes, written and read back.
//!
//! A number is LEB128: seven bits a byte, the lowest first, the top bit set on all bytes but the last. A text is the
//! number of its bytes and then its UTF-8. Each value that is read takes at least one byte, so that reading ends.

/// Why bytes that came whole cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// They end in the middle of something, say no number or no text, or go on behind the end.
    Broken,
    /// They hold something that this version has no meaning for.
    Unknown,
}

/// `mark` where something is so.
#[must_use]
pub const fn when(so: bool, mark: u64) -> u64 {
    if so { mark } else { 0 }
}

/// Bytes as they are written.
#[derive(Debug, Default)]
pub struct Writer {
    /// What is written so far.
    pub bytes: Vec<u8>,
}

impl Writer {
    /// Writes a number.
    pub fn number(&mut self, number: impl Into<u64>) {
        let mut rest = number.into();
        while rest >= 0x80 {
            self.bytes.push((rest & 0x7f) as u8 | 0x80);
            rest >>= 7;
        }
        self.bytes.push(rest as u8);
    }

    /// Writes how many of something there are.
    pub fn count(&mut self, count: usize) {
        self.number(count as u64);
    }

    /// Writes a text.
    pub fn text(&mut self, text: &str) {
        self.count(text.len());
        self.bytes.extend_from_slice(text.as_bytes());
    }
}

/// Bytes that are still to be read.
#[derive(Debug)]
pub struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    /// Reads from the first of `bytes`.
    #[must_use]
    pub const fn new(bytes: &'a [u8]) -> Self {
        Self { rest: bytes }
    }

    /// The next `count` bytes.
    ///
    /// # Errors
    /// [`Fault::Broken`] where there are not as many.
    pub fn take(&mut self, count: usize) -> Result<&'a [u8], Fault> {
        let (taken, rest) = self.rest.split_at_checked(count).ok_or(Fault::Broken)?;
        self.rest = rest;
        Ok(taken)
    }

    /// The next number.
    ///
    /// # Errors
    /// [`Fault::Broken`] where the bytes end before it does, or where it is larger than any that is written.
    pub fn number(&mut self) -> Result<u64, Fault> {
        let mut number = 0_u64;
        for (shift, (i, &byte)) in (0..64).step_by(7).zip(self.rest.iter().enumerate()) {
            let bits = u64::from(byte & 0x7f);
            if bits << shift >> shift != bits {
                return Err(Fault::Broken);
            }
            number |= bits << shift;
            if byte & 0x80 == 0 {
                self.rest = &self.rest[i + 1..];
                return Ok(number);
            }
        }
        Err(Fault::Broken)
    }

    /// The next number, as one of a narrower kind.
    ///
    /// # Errors
    /// [`Fault::Broken`] where it does not fit.
    pub fn narrow<T: TryFrom<u64>>(&mut self) -> Result<T, Fault> {
        T::try_from(self.number()?).map_err(|_| Fault::Broken)
    }

    /// The next number, where not more than `most` can be meant.
    ///
    /// # Errors
    /// [`Fault::Broken`] where it is larger.
    pub fn count(&mut self, most: usize) -> Result<usize, Fault> {
        self.narrow().and_then(|n| if n <= most { Ok(n) } else { Err(Fault::Broken) })
    }

    /// The next number, as marks of which only those in `known` have a meaning.
    ///
    /// # Errors
    /// [`Fault::Unknown`] where another is set.
    pub fn marks(&mut self, known: u64) -> Result<u64, Fault> {
        self.number().and_then(|m| if m & !known == 0 { Ok(m) } else { Err(Fault::Unknown) })
    }

    /// The next text.
    ///
    /// # Errors
    /// [`Fault::Broken`] where it is cut off or no text.
    pub fn text(&mut self) -> Result<&'a str, Fault> {
        let count = self.narrow()?;
        std::str::from_utf8(self.take(count)?).map_err(|_| Fault::Broken)
    }

    /// Says that nothing may follow.
    ///
    /// # Errors
    /// [`Fault::Broken`] where something does.
    pub const fn end(&self) -> Result<(), Fault> {
        if self.rest.is_empty() { Ok(()) } else { Err(Fault::Broken) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_back() {
        for number in [0, 1, 127, 128, 300, 16_383, 16_384, u64::from(u32::MAX), u64::MAX - 1, u64::MAX] {
            let mut writer = Writer::default();
            writer.number(number);
            let mut reader = Reader::new(&writer.bytes);
            assert_eq!((reader.number(), reader.end()), (Ok(number), Ok(())), "{number}");
        }
    }

    #[test]
    fn what_is_no_number_or_text_is_said() {
        let number = |bytes: &[u8]| Reader::new(bytes).number();
        assert_eq!(number(&[]), Err(Fault::Broken));
        assert_eq!(number(&[0x80]), Err(Fault::Broken));
        assert_eq!(number(&[0xff; 11]), Err(Fault::Broken));
        // 2⁶⁴ does not fit.
        assert_eq!(number(&[0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x02]), Err(Fault::Broken));
        assert_eq!(Reader::new(&[2, b'a']).text(), Err(Fault::Broken));
        assert_eq!(Reader::new(&[1, 0xff]).text(), Err(Fault::Broken));
        assert_eq!(Reader::new(&[5]).marks(0b11), Err(Fault::Unknown));
        assert_eq!(Reader::new(&[9]).count(8), Err(Fault::Broken));
    }
}

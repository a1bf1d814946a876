//! The key of a step: what it is, in sixteen characters, so that a tick stays on it.

use std::hash::{Hash, Hasher};

/// Fowler, Noll and Vo's hash, 64 bits, variant 1a; the same on every machine. Variants of what is hashed count by
/// their place: new ones are appended.
struct Fingerprint(u64);

impl Hasher for Fingerprint {
    fn write(&mut self, bytes: &[u8]) {
        self.0 = bytes.iter().fold(self.0, |h, b| (h ^ u64::from(*b)).wrapping_mul(0x0100_0000_01b3));
    }

    // Browser and bench count in words of different sizes.
    fn write_usize(&mut self, n: usize) {
        self.write(&(n as u64).to_le_bytes());
    }

    fn write_isize(&mut self, n: isize) {
        self.write(&(n as i64).to_le_bytes());
    }

    fn finish(&self) -> u64 {
        self.0
    }
}

/// The key of what is given, such as a place and an action.
///
/// (0xcbf29ce484222325 xor 0x61) × 0x100000001b3, modulo 2⁶⁴; the value that the hash's authors publish for "a":
///
/// ```
/// # use snugfold::make::key::key;
/// assert_eq!(key(&b'a'), "af63dc4c8601ec8c");
/// ```
#[must_use]
pub fn key(what: &impl Hash) -> String {
    let mut hash = Fingerprint(0xcbf2_9ce4_8422_2325);
    what.hash(&mut hash);
    format!("{:016x}", hash.finish())
}

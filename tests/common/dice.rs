//! Numbers that look thrown and are the same on every run, and bytes changed by them.

/// A seeded thrower (Steele, Lea and Flood's SplitMix64).
pub struct Dice(pub u64);

impl Dice {
    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.0 ^ self.0 >> 30).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ z >> 27).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ z >> 31
    }

    /// One of the numbers below `end`, or 0.
    pub fn below(&mut self, end: usize) -> usize {
        if end == 0 { 0 } else { (self.bits() % end as u64) as usize }
    }

    /// `bytes` with one to four changes; chunks of `other` may come in.
    pub fn changed(&mut self, bytes: &[u8], other: &[u8]) -> Vec<u8> {
        let mut bytes = bytes.to_vec();
        for _ in 0..=self.below(4) {
            self.change(&mut bytes, other);
        }
        bytes
    }

    fn change(&mut self, bytes: &mut Vec<u8>, other: &[u8]) {
        const ODD: [u8; 10] = [0, 1, 0x1f, 0x20, 0x3f, 0x7f, 0x80, 0xc3, 0xfe, 0xff];
        let at = self.below(bytes.len());
        match self.below(8) {
            0 if !bytes.is_empty() => bytes[at] ^= 1 << self.below(8),
            1 if !bytes.is_empty() => bytes[at] = ODD[self.below(ODD.len())],
            2 if !bytes.is_empty() => bytes[at] = self.bits() as u8,
            3 => bytes.insert(at, ODD[self.below(ODD.len())]),
            4 if !bytes.is_empty() => {
                bytes.remove(at);
            }
            5 => {
                let end = (at + self.below(12)).min(bytes.len());
                let again = bytes[at..end].to_vec();
                bytes.splice(at..at, again);
            }
            6 => bytes.truncate(at),
            _ => {
                let from = self.below(other.len());
                let to = (from + self.below(20)).min(other.len());
                let end = (at + self.below(20)).min(bytes.len());
                bytes.splice(at..end, other[from..to].iter().copied());
            }
        }
    }
}

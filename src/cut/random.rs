//! `Dice`: the search's own random numbers, from a fixed seed, the same on every device.

/// A xorshift generator with a multiplied output (Vigna 2016, `xorshift64*`); 64-bit state, never zero.
#[derive(Clone, Debug)]
pub struct Dice(u64);

impl Dice {
    /// The stream that belongs to this seed.
    #[must_use]
    pub const fn new(seed: u64) -> Self {
        // One step of splitmix64 spreads small seeds; zero is the one state that would stick.
        let mut z = seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^= z >> 31;
        Self(if z == 0 { 1 } else { z })
    }

    /// The next 32 bits.
    pub const fn next(&mut self) -> u32 {
        self.0 ^= self.0 >> 12;
        self.0 ^= self.0 << 25;
        self.0 ^= self.0 >> 27;
        (self.0.wrapping_mul(0x2545_f491_4f6c_dd1d) >> 32) as u32
    }

    /// A number from nothing up to, but not including, `end`; nothing if `end` is nothing. The bias is under `end` ÷ 2³².
    pub const fn below(&mut self, end: usize) -> usize {
        ((self.next() as u64 * end as u64) >> 32) as usize
    }

    /// True once in `times` on average; never for nothing.
    pub const fn one_in(&mut self, times: u32) -> bool {
        times > 0 && ((self.next() as u64 * times as u64) >> 32) == 0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stream_is_fixed_and_in_range() {
        let mut dice = Dice::new(7);
        let first: Vec<usize> = (0..8).map(|_| dice.below(10)).collect();
        let mut again = Dice::new(7);
        assert_eq!(first, (0..8).map(|_| again.below(10)).collect::<Vec<_>>());
        assert!(first.iter().all(|n| *n < 10));
        assert_eq!(dice.below(0), 0);
        assert!(!dice.one_in(0));
    }
}

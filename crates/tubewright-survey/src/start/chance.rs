//! A fixed stream of numbers for tie-breaking: equal input gives equal output on any machine.

/// Permuted congruential generator, 32 bits out of 64 (O'Neill 2014, PCG, from memory).
pub(crate) struct Chance(u64);

impl Chance {
    pub(crate) fn new(stream: u32) -> Self {
        let mut chance = Self(0x853c_49e6_748f_ea9b ^ (u64::from(stream) << 17));
        chance.next();
        chance
    }

    fn next(&mut self) -> u32 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let word = (self.0 >> 32) ^ (self.0 >> 13);
        #[expect(clippy::cast_possible_truncation, reason = "the low half is wanted")]
        let low = word as u32;
        low.rotate_right(u32::from((self.0 >> 59) as u8))
    }

    /// Between −1 and 1.
    pub(crate) fn signed(&mut self) -> f64 {
        f64::from(self.next()) / f64::from(u32::MAX) * 2.0 - 1.0
    }

    pub(crate) fn heads(&mut self) -> bool {
        self.next() & 1 == 1
    }
}

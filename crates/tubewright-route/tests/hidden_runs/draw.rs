//! Random numbers that are the same on every machine.

/// `SplitMix64` (Steele, Lea, Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014).
pub(super) struct Draw(u64);

impl Draw {
    pub(super) fn new(seed: u64, stream: u64) -> Self {
        let mut draw = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ stream);
        draw.next();
        draw
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// Between 0 and 1.
    pub(super) fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }

    pub(super) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.unit()
    }

    /// From `low` to `high`, both with.
    pub(super) fn count(&mut self, low: usize, high: usize) -> usize {
        low + (self.unit() * (high - low + 1) as f64) as usize
    }

    pub(super) fn chance(&mut self, share: f64) -> bool {
        self.unit() < share
    }

    pub(super) fn pick<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.count(0, list.len() - 1)]
    }

    pub(super) fn direction(&mut self) -> [f64; 3] {
        loop {
            let v = [0; 3].map(|_| self.between(-1.0, 1.0));
            let n = (v[0] * v[0] + v[1] * v[1] + v[2] * v[2]).sqrt();
            if n > 0.1 && n < 1.0 {
                return v.map(|x| x / n);
            }
        }
    }
}

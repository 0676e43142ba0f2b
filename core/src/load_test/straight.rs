//! The straight line through readings, by least squares of the load.

use super::Reading;

/// Load against height, `F = load − rate · (h − height)`, through the middle of its readings.
/// Bare numbers are SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Straight {
    count: f64,
    height: f64,
    load: f64,
    /// Load per deflection: the slope with its sign turned.
    pub(super) rate: f64,
    /// Σ (h − h̄)².
    spread: f64,
    /// Σ of the squares of what is left.
    pub(super) squares: f64,
}

impl Straight {
    /// Through readings, highest first; none where they are not at two heights.
    pub(super) fn through(readings: &[Reading]) -> Option<Self> {
        if readings.first()?.height <= readings.last()?.height {
            return None;
        }
        #[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
        let count = readings.len() as f64;
        let sum = |of: &dyn Fn(&Reading) -> f64| readings.iter().map(of).sum::<f64>();
        let height = sum(&|r| r.height.value) / count;
        let load = sum(&|r| r.load.value) / count;
        let spread = sum(&|r| (r.height.value - height) * (r.height.value - height));
        let joint = sum(&|r| (height - r.height.value) * (r.load.value - load));
        let line = Self { count, height, load, rate: joint / spread, spread, squares: 0.0 };
        Some(Self { squares: sum(&|r| line.off(*r) * line.off(*r)), ..line })
    }

    /// A reading's load less the line's.
    pub(super) fn off(&self, reading: Reading) -> f64 {
        reading.load.value - self.load - self.rate * (self.height - reading.height.value)
    }

    /// The height at which the line has no load.
    pub(super) fn free(&self) -> f64 {
        self.height + self.load / self.rate
    }

    /// The height at which two lines have one load.
    pub(super) fn crossing(&self, other: &Self) -> f64 {
        let at_zero = |line: &Self| line.load + line.rate * line.height;
        (at_zero(self) - at_zero(other)) / (self.rate - other.rate)
    }

    /// Readings beyond the two that any line passes through.
    pub(super) fn degrees(&self) -> f64 {
        self.count - 2.0
    }

    /// Variance of the rate for a variance of one load.
    pub(super) fn variance_of_rate(&self, of_load: f64) -> f64 {
        of_load / self.spread
    }

    /// Variance of the line's load at a height for a variance of one load.
    pub(super) fn variance_at(&self, height: f64, of_load: f64) -> f64 {
        let away = height - self.height;
        of_load * (1.0 / self.count + away * away / self.spread)
    }
}

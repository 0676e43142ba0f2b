//! How much lower a coil stands on the way back.

use super::{LoadTest, Reading};
use crate::quantity::Length;

/// What unloading readings show against the loading curve.
#[derive(Clone, Debug, PartialEq)]
pub struct Hysteresis {
    /// Every unloading reading whose load lies within those of the loading, as given.
    pub gaps: Vec<Gap>,
    /// The mean of the gaps.
    pub mean: Length,
    /// The widest of them.
    pub greatest: Gap,
}

/// One unloading reading against the loading curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// The unloading reading.
    pub reading: Reading,
    /// How much lower the coil stood than under the same load on the way down; below zero where it
    /// stood higher.
    pub lower: Length,
}

impl LoadTest {
    /// What is lost between loading and unloading: friction, and set where the coil was pressed past
    /// what its steel bears. The gap of a second test, after the first has set it, is friction alone.
    ///
    /// ```text
    /// gap_i = h(F_i) − h_i
    /// ```
    /// `h_i`, `F_i` height, m, and load, N, of an unloading reading · `h(F)` height on the loading
    /// curve, straight from reading to reading
    ///
    /// None where no unloading reading has a load within those of the loading.
    ///
    /// # Range
    /// As far as the loading readings go; nothing is taken beyond them. Friction of the press, and
    /// between the coils of a nest, is in it.
    ///
    /// # Source
    /// Derived: the definition.
    ///
    /// # Example
    /// ```
    /// use coilnest::load_test::{LoadTest, Reading};
    /// use coilnest::quantity::{Force, Length, unit::{millimeter, newton}};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let reading = |h, f| Reading { height: mm(h), load: Force::new::<newton>(f) };
    /// let down = vec![reading(190.0, 1000.0), reading(150.0, 5000.0)];
    /// let test = LoadTest::new(down, vec![reading(168.5, 3000.0)], None)?;
    /// let mean = test.hysteresis().map(|lost| lost.mean.get::<millimeter>());
    /// assert!((mean.unwrap_or_default() - 1.5).abs() < 1e-9); // 170 on the way down
    /// # Ok::<(), coilnest::load_test::LoadTestError>(())
    /// ```
    #[must_use]
    pub fn hysteresis(&self) -> Option<Hysteresis> {
        let down = super::downwards(self.loading.clone());
        let gaps: Vec<Gap> =
            self.unloading.iter().filter_map(|reading| gap(&down, *reading)).collect();
        let wider = |widest: Gap, next: Gap| if next.lower > widest.lower { next } else { widest };
        let greatest = gaps.iter().copied().reduce(wider)?;
        #[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
        let count = gaps.len() as f64;
        let sum = gaps.iter().fold(Length::default(), |sum, gap| sum + gap.lower);
        Some(Hysteresis { mean: sum / count, greatest, gaps })
    }
}

fn gap(down: &[Reading], reading: Reading) -> Option<Gap> {
    let on_the_way_down = down.iter().zip(down.iter().skip(1)).find_map(|(above, below)| {
        // Not a number where both loads are the same, and then nothing lies between.
        let share = (reading.load - above.load) / (below.load - above.load);
        let between = (0.0..=1.0).contains(&share.value);
        between.then(|| above.height - (above.height - below.height) * share)
    })?;
    Some(Gap { reading, lower: on_the_way_down - reading.height })
}

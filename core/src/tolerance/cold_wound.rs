//! What EN 15800 allows a new cold-wound spring to be off.

use super::{DiameterBand, Feature, Grade, NoTolerance, Winding, look_up};
use crate::coil::Diameters;
use crate::coil::ends::Turns;
use crate::quantity::unit::{millimeter, newton};
use crate::quantity::{Force, Length, SpringRate};
use crate::source::{Known, Source, Sourced};

/// Where [`ColdWound::load`] comes from.
pub const LOAD_SOURCE: Source =
    Source::new("EN 15800:2008", "permissible deviation of the load", Known::Memory);

/// Where [`ColdWound::free_height`] comes from.
pub const FREE_HEIGHT_SOURCE: Source =
    Source::new("EN 15800:2008", "permissible deviation of the free length", Known::Memory);

/// Where [`ColdWound::squareness`] comes from.
pub const SQUARENESS_SOURCE: Source =
    Source::new("EN 15800:2008", "permissible deviation e1 from square", Known::Memory);

/// Where [`ColdWound::parallelism`] comes from.
pub const PARALLELISM_SOURCE: Source =
    Source::new("EN 15800:2008", "permissible deviation e2 from parallel", Known::Memory);

/// A new cold-wound spring that EN 15800 speaks of.
///
/// # Range
/// Bar from 0.07 to 16 mm, mean diameter from 0.63 to 200 mm, free height up to 630 mm, two active
/// turns or more, index from 4 to 20.
///
/// # Example
/// ```
/// use coilnest::coil::{Diameters, ends::Turns};
/// use coilnest::quantity::{Force, Length, SpringRate, System};
/// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
/// use coilnest::say::Say;
/// use coilnest::tolerance::{ColdWound, Grade};
///
/// let (mm, turns) = (Length::new::<millimeter>, Turns::new(10.0, 2.0)?);
/// let coil = Diameters::from_mean(mm(2.0), mm(16.0))?;
/// let spring = ColdWound::new(coil, turns, mm(60.0))?;
///
/// let rate = SpringRate::new::<newton_per_millimeter>(4.9744);
/// let height = spring.free_height(Grade::Two, rate).value;
/// assert!((height.get::<millimeter>() - 1.34).abs() < 0.005); // derived
/// let load = spring.load(Grade::Two, Force::new::<newton>(100.0)).value;
/// assert!((load.get::<newton>() - 8.16).abs() < 0.005); // derived
/// assert!((spring.squareness(Grade::Two).value.get::<millimeter>() - 3.0).abs() < 1e-9);
///
/// let refusal = ColdWound::new(coil, turns, mm(700.0)).unwrap_err();
/// assert_eq!(
///     refusal.say(System::Metric).to_string(),
///     "the free height 700 mm lies outside 0 mm to 630 mm, which EN 15800 covers; agree the \
///      tolerance with the maker"
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ColdWound {
    coil: Diameters,
    turns: Turns,
    free: Length,
}

impl ColdWound {
    /// A spring within the standard's scope.
    ///
    /// # Errors
    /// [`NoTolerance::Size`] and [`NoTolerance::Number`] for the first that lies outside of it.
    pub fn new(coil: Diameters, turns: Turns, free: Length) -> Result<Self, NoTolerance> {
        let mm = Length::new::<millimeter>;
        for (what, size, least, most) in [
            ("the bar", coil.bar(), mm(0.07), mm(16.0)),
            ("the mean diameter", coil.mean(), mm(0.63), mm(200.0)),
            ("the free height", free, mm(0.0), mm(630.0)),
        ] {
            // A bound in one unit and the same size in another differ in the last bit.
            let slack = 1e-9 * size;
            if !(size + slack >= least && size - slack <= most) {
                return Err(NoTolerance::Size { what, size, least, most });
            }
        }
        for (what, number, least, most) in [
            ("the count of active turns", turns.active(), 2.0, None),
            ("the index", coil.index(), 4.0, Some(20.0)),
        ] {
            let slack = 1e-9 * number;
            if number + slack < least || most.is_some_and(|most| number - slack > most) {
                return Err(NoTolerance::Number { what, number, least, most });
            }
        }
        Ok(Self { coil, turns, free })
    }

    /// How far a load at a height may be off, as a half-width.
    ///
    /// ```text
    /// A = (a · f + 1.5 F/100) · q
    /// a = 65.92 · d^3.3 / D^1.6 · (−0.84 (C/10)³ + 3.781 (C/10)² − 4.244 (C/10) + 2.274)
    /// f = −1/(3 n²) + 8/(5 n) + 0.803        q = 0.63, 1 and 1.6 for grades 1, 2 and 3
    /// ```
    /// `d` bar, mm · `D` mean diameter, mm · `C` index · `n` active turns · `F` load, N · `a` in N
    ///
    /// # Source
    /// [`LOAD_SOURCE`].
    #[must_use]
    pub fn load(&self, grade: Grade, load: Force) -> Sourced<Force> {
        let value = Self::quality(grade) * (self.basic() + 0.015 * load.abs());
        Sourced { value, source: LOAD_SOURCE }
    }

    /// How far the free height may be off, as a half-width, where the maker is not left free to
    /// choose it.
    ///
    /// ```text
    /// A = a · f · q / k
    /// ```
    /// `k` rate, N/mm · the others as in [`ColdWound::load`]
    ///
    /// # Source
    /// [`FREE_HEIGHT_SOURCE`].
    #[must_use]
    pub fn free_height(&self, grade: Grade, rate: SpringRate) -> Sourced<Length> {
        Sourced { value: Self::quality(grade) * self.basic() / rate, source: FREE_HEIGHT_SOURCE }
    }

    /// How far the outside, mean or inside diameter may be off, as a half-width.
    ///
    /// # Errors
    /// [`NoTolerance::LookUp`] when the bands do not hold the coil's mean diameter.
    pub fn diameter(
        &self,
        grade: Grade,
        bands: &[DiameterBand],
    ) -> Result<Sourced<Length>, NoTolerance> {
        let found = bands.iter().find_map(|band| band.half_width(self.coil, grade));
        found.ok_or(look_up(Winding::Cold, Feature::Diameter))
    }

    /// How far the top of a coil with ground ends may lean from upright, e1.
    ///
    /// ```text
    /// e1 = 0.03 L0, 0.05 L0 and 0.08 L0 for grades 1, 2 and 3
    /// ```
    /// `L0` free height, mm
    ///
    /// # Source
    /// [`SQUARENESS_SOURCE`].
    #[must_use]
    pub fn squareness(&self, grade: Grade) -> Sourced<Length> {
        let value = grade.of([0.03, 0.05, 0.08]) * self.free;
        Sourced { value, source: SQUARENESS_SOURCE }
    }

    /// How far ground ends may be from parallel, across the outside diameter, e2.
    ///
    /// ```text
    /// e2 = 0.015 De, 0.03 De and 0.06 De for grades 1, 2 and 3
    /// ```
    /// `De` outside diameter, mm
    ///
    /// # Source
    /// [`PARALLELISM_SOURCE`].
    #[must_use]
    pub fn parallelism(&self, grade: Grade) -> Sourced<Length> {
        let value = grade.of([0.015, 0.03, 0.06]) * self.coil.outside();
        Sourced { value, source: PARALLELISM_SOURCE }
    }

    /// The part of the load's tolerance that does not depend on the load, `a · f`.
    fn basic(&self) -> Force {
        self.basis() * self.turns_factor()
    }

    /// `a` of [`ColdWound::load`], which the bar and the index make.
    #[must_use]
    pub fn basis(&self) -> Force {
        let (d, mean) = (self.coil.bar().get::<millimeter>(), self.coil.mean().get::<millimeter>());
        let w = self.coil.index() / 10.0;
        let shape = -0.84 * w * w * w + 3.781 * w * w - 4.244 * w + 2.274;
        Force::new::<newton>(65.92 * libm::pow(d, 3.3) / libm::pow(mean, 1.6) * shape)
    }

    /// `f` of [`ColdWound::load`], which the active turns make.
    #[must_use]
    pub fn turns_factor(&self) -> f64 {
        let n = self.turns.active();
        -1.0 / (3.0 * n * n) + 8.0 / (5.0 * n) + 0.803
    }

    /// `q` of [`ColdWound::load`], which the grade makes.
    #[must_use]
    pub fn quality(grade: Grade) -> f64 {
        grade.of([0.63, 1.0, 1.6])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spring(bar: f64, mean: f64, active: f64, free: f64) -> Result<ColdWound, NoTolerance> {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(bar), mm(mean)).unwrap();
        ColdWound::new(coil, Turns::new(active + 2.0, 2.0).unwrap(), mm(free))
    }

    #[test]
    fn the_scope_ends_where_it_says() {
        for (inside, outside, part) in [
            ((16.0, 100.0, 5.0, 300.0), (16.01, 100.0, 5.0, 300.0), "the bar 16.01 mm"),
            ((0.07, 0.7, 5.0, 30.0), (0.069, 0.7, 5.0, 30.0), "the bar 0.069 mm"),
            ((10.0, 200.0, 5.0, 300.0), (10.2, 200.1, 5.0, 300.0), "the mean diameter 200.1 mm"),
            ((2.0, 16.0, 5.0, 630.0), (2.0, 16.0, 5.0, 630.1), "the free height 630.1 mm"),
            ((2.0, 16.0, 2.0, 60.0), (2.0, 16.0, 1.9, 60.0), "the count of active turns 1.9"),
            ((2.0, 8.0, 5.0, 60.0), (2.0, 7.9, 5.0, 60.0), "the index 3.95 lies outside 4 to 20"),
            ((2.0, 40.0, 5.0, 60.0), (2.0, 40.2, 5.0, 60.0), "the index 20.1"),
        ] {
            let spring = |(d, mean, n, free)| spring(d, mean, n, free);
            assert!(spring(inside).is_ok(), "{part}");
            let sentence = spring(outside).unwrap_err().to_string();
            assert!(sentence.starts_with(part) && sentence.contains("EN 15800"), "{sentence}");
        }
        assert!(spring(2.0, 16.0, 5.0, f64::NAN).is_err());
    }

    #[test]
    fn a_coarser_grade_allows_more_of_everything() {
        let spring = spring(2.0, 16.0, 8.0, 60.0).unwrap();
        let rate = Force::new::<newton>(5.0) / Length::new::<millimeter>(1.0);
        let all = Grade::ALL.map(|grade| {
            [
                spring.load(grade, Force::new::<newton>(100.0)).value.value,
                spring.free_height(grade, rate).value.value,
                spring.squareness(grade).value.value,
                spring.parallelism(grade).value.value,
            ]
        });
        for (finer, coarser) in all.iter().zip(all.iter().skip(1)) {
            assert!(
                finer.iter().zip(coarser).all(|(finer, coarser)| 0.0 < *finer && finer < coarser)
            );
        }
    }

    #[test]
    fn a_diameter_is_looked_up_by_size_and_index() {
        let mm = Length::new::<millimeter>;
        let source = LOAD_SOURCE;
        let half_widths = [[1.0, 2.0, 3.0], [4.0, 5.0, 6.0], [7.0, 8.0, 9.0]].map(|it| it.map(mm));
        let band =
            |over, up_to| DiameterBand { over: mm(over), up_to: mm(up_to), half_widths, source };
        let bands = [band(10.0, 16.0)];
        let at = |bar, mean, grade| {
            spring(bar, mean, 5.0, 60.0).unwrap().diameter(grade, &bands).map(|it| it.value)
        };
        assert_eq!(at(2.0, 16.0, Grade::One), Ok(mm(1.0)));
        assert_eq!(at(1.5, 15.0, Grade::Two), Ok(mm(5.0)));
        assert_eq!(at(0.75, 15.0, Grade::Three), Ok(mm(9.0)));
        let nowhere = look_up(Winding::Cold, Feature::Diameter);
        assert_eq!(at(2.0, 16.1, Grade::One), Err(nowhere));
        assert_eq!(at(2.0, 10.0, Grade::One), Err(nowhere));
    }
}

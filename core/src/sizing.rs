//! From what a coil is needed for to drawings of it.
//!
//! A [`Need`] is a load at a height, a rate or a second load, the room, the steel and how the coil is
//! made. With a bar and a count of turns chosen, its mean diameter follows from the rate
//! ([`mean_for_rate`]), its free height from load and height, and all else from these. So every bar of a
//! list with every count of turns is one cell of a [`Map`], which fits or names the limit that it fails
//! worst. [`Sizing::designs`] rounds those that fit to drawings and puts each back through the analysis;
//! [`PairSizing`] does the same for two coils, one inside the other.
//!
//! What contradicts itself is told before any search, both sides named: [`NeedError`].
//!
//! It sizes for a load at rest or seldom changed. A load that comes and goes is a matter of
//! [`fatigue`](crate::coil::fatigue), and no drawing found here is one to make without the approval of
//! whoever answers for the vehicle: its maker's manual and the rules of the place go before it.
//!
//! # Example
//!
//! 3000 N at 150 mm and 60 N/mm, in a pocket of 110 mm:
//!
//! ```
//! use coilnest::coil::ends::Ends;
//! use coilnest::quantity::unit::{
//!     gigapascal, kilogram_per_cubic_meter, megapascal, millimeter, newton, newton_per_millimeter,
//! };
//! use coilnest::quantity::{Force, Length, MassDensity, Pressure, SpringRate};
//! use coilnest::sizing::{
//!     Allowed, Factor, Make, Metal, Need, Rank, Reserve, Room, Rounding, Sizing, Work, steps,
//! };
//!
//! let mm = Length::new::<millimeter>;
//! let allowed = |mpa, factor| Allowed::Stress { stress: Pressure::new::<megapascal>(mpa), factor };
//! let need = Need {
//!     work: Work::at_height(
//!         Force::new::<newton>(3000.0),
//!         mm(150.0),
//!         SpringRate::new::<newton_per_millimeter>(60.0),
//!     ),
//!     room: Room { pocket: Some(mm(110.0)), clearance: mm(2.0), ..Room::default() },
//!     reserve: Reserve::default(),
//!     make: Make::usual(Ends::ClosedGround),
//!     metal: Metal {
//!         shear_modulus: Pressure::new::<gigapascal>(81.5),
//!         poisson: 0.26,
//!         density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
//!         at_load: allowed(600.0, Factor::Bergstrasser),
//!         at_solid: Some(allowed(760.0, Factor::Uncorrected)),
//!     },
//! };
//! let bars = [10.0, 11.0, 12.0, 13.0, 14.0].map(mm);
//! let sizing = Sizing::new(need, &bars, &steps(3.0, 12.0, 0.25))?;
//!
//! let map = sizing.map();
//! assert!(map.cells().iter().any(|cell| cell.verdict.fits()));
//!
//! let sized = sizing.designs(&Rounding::METRIC, Rank::Mass);
//! let lightest = sized.designs.first().ok_or("none")?;
//! assert_eq!(lightest.design.coil.bar(), mm(10.0));
//! for why in &sized.refused {
//!     println!("{:?}: {}", why.bar, why.verdict.nearest);
//! }
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod contradiction;
mod design;
mod limit;
mod map;
mod need;
mod pair;
mod search;
mod series;

pub use crate::coil::stress::Factor;
pub use contradiction::{MOST_CELLS, NeedError, NeedField};
pub use design::{Design, MEAN, MEAN_SOURCE, mean_for_rate};
pub use limit::{Limit, LimitCheck, LimitSet};
pub use map::{Cell, Map};
pub use need::{
    Allowed, InnerCoil, Make, Metal, Need, Reserve, Room, Stiffness, USUAL_TOLERANCE, Work,
};
pub use pair::{Balance, HANDS, Pair, PairSizing, PairWhy, PairsSized};
pub use search::{Found, Rank, Rounding, Sized, Why};
pub use series::{Series, SeriesError};

use crate::drawing::{Drawing, Figures};
use crate::quantity::Length;
use design::{Bar, Rounded, Sizes};

/// A need that does not contradict itself, and the bars and turns to choose from.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    need: Need,
    bars: Vec<Bar>,
    turns: Vec<f64>,
}

impl Sizing {
    /// Bars to be wound, and counts of active turns.
    ///
    /// # Errors
    /// A [`NeedError`] for a number that is none, for two that contradict each other, for a room that
    /// no bar fits or in which none carries the load, and for more than [`MOST_CELLS`] coils to try.
    pub fn new(need: Need, bars: &[Length], turns: &[f64]) -> Result<Self, NeedError> {
        let cells = bars.len().saturating_mul(turns.len());
        let bars = checked(&need, bars, turns, cells)?;
        contradiction::strength(&need, &bars, 1.0)?;
        Ok(Self { need, bars, turns: turns.to_vec() })
    }

    /// What is needed.
    #[must_use]
    pub fn need(&self) -> &Need {
        &self.need
    }

    /// The counts of active turns to choose from.
    #[must_use]
    pub fn turns(&self) -> &[f64] {
        &self.turns
    }

    /// Puts any drawing through the analysis, and holds it against all that is asked: a drawing found
    /// here, one that was rounded by hand, or that of a coil that is there already.
    ///
    /// It is taken as it is meant to be; its ends, coiling and seating are those of the need.
    ///
    /// # Errors
    /// What it lacks.
    pub fn judge(&self, drawing: &Drawing) -> Result<(Design, LimitCheck), Figures> {
        let sizes = Sizes::of(drawing)?;
        Ok(self.judged(&Bar::of(&self.need, sizes.coil.bar()), sizes))
    }

    fn judged(&self, bar: &Bar, sizes: Sizes) -> (Design, LimitCheck) {
        let design = self.need.design(bar, sizes);
        (design, self.need.verdict(bar, &design, Rounded::Yes))
    }
}

/// Each number by itself, then against the others; the strength of the bars comes after.
fn checked(
    need: &Need,
    bars: &[Length],
    turns: &[f64],
    count: usize,
) -> Result<Vec<Bar>, NeedError> {
    contradiction::numbers(need)?;
    contradiction::choice(bars, turns, count)?;
    contradiction::heights(need)?;
    let bars: Vec<Bar> = bars.iter().map(|size| Bar::of(need, *size)).collect();
    contradiction::width(need, &bars)?;
    Ok(bars)
}

/// Counts of turns from one to another by a step; none where that makes no list.
///
/// ```
/// assert_eq!(coilnest::sizing::steps(4.0, 5.0, 0.25), [4.0, 4.25, 4.5, 4.75, 5.0]);
/// assert!(coilnest::sizing::steps(5.0, 4.0, 0.25).is_empty());
/// ```
#[must_use]
pub fn steps(from: f64, to: f64, step: f64) -> Vec<f64> {
    if !(step > 0.0 && from.is_finite() && (to - from) / step < 1e5) {
        return Vec::new();
    }
    (0_u32..=100_000)
        .map(|count| from + step * f64::from(count))
        .take_while(|turns| *turns <= to + 1e-9 * step)
        .collect()
}

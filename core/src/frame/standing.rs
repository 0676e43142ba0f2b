//! The frame when it is down again: heights that were taped, beside those that were worked out, and the
//! weight that they tell.
//!
//! ```text
//! d = y − h        χ² = dᵀ·V⁻¹·d        V = Σ q·qᵀ
//! ```
//! `y` heights as taped, `h` as worked out · `q` what one standard uncertainty of one independent cause of
//! doubt does to all of `d`: each coil, drawing, steel and tape by [`Frame::doubted`], each taped height, the tape
//!
//! Where χ² is greater than doubts alone make it five times in a hundred, something is not as it was
//! written. Of single causes the one that leaves the least χ² explains the heights best.

use super::{CoilDoubt, DoubtError, Frame, Place, Rest, Row, Weight, equilibrium};
use crate::order::InOrder;
use crate::propagation::Doubted;
use crate::quantity::{Force, Length, System, si};
use crate::say::{Nth, Say, says};
use crate::source::{Known, Source};
use crate::verdict;
use thiserror::Error;

/// Where the test comes from.
pub const SOURCE: Source = Source::new(
    "statistics",
    "generalised least squares, the sum of squares against its distribution",
    Known::Derived,
);

/// How often heights are questioned that only doubts set apart.
pub const FALSE_ALARM: f64 = 0.05;

/// The least number of heights that tell how a frame stands.
pub const LEAST_HEIGHTS: usize = 3;

/// The height of a nest between its seats as it was taped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taped {
    /// Which nest, counted from 0.
    pub nest: usize,
    /// Its height.
    pub height: Length,
    /// One standard uncertainty, without the tape's own error.
    pub doubt: Length,
}

/// A taped height beside the one that was worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Which nest, counted from 0.
    pub nest: usize,
    /// As worked out.
    pub expected: Doubted<Length>,
    /// As taped.
    pub taped: Doubted<Length>,
    /// Taped less worked out.
    pub difference: Doubted<Length>,
    /// Whether doubt explains the difference; over all heights one is wrongly said not to agree at most
    /// five times in a hundred.
    pub agrees: bool,
}

/// One thing that may be other than it was written, and by how much it would have to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cause {
    /// A nest stands higher by so much, or lower: a coil, a pad, a box that does not slide.
    Nest {
        /// Which nest, counted from 0.
        nest: usize,
        /// By how much it is thicker or longer than written.
        by: Doubted<Length>,
    },
    /// A height was read wrong.
    Reading {
        /// Of which nest, counted from 0.
        nest: usize,
        /// By how much it was read too high.
        by: Doubted<Length>,
    },
    /// The weight is another.
    Weight {
        /// By how much it is greater.
        by: Doubted<Force>,
    },
    /// The weight acts farther along the frame.
    Along {
        /// By how much.
        by: Doubted<Length>,
    },
    /// The weight acts farther across the frame.
    Across {
        /// By how much.
        by: Doubted<Length>,
    },
}

/// A cause, and what it leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Explained {
    /// The cause.
    pub cause: Cause,
    /// χ² that is left with it.
    pub left: f64,
    /// How often doubts alone leave as much.
    pub p: f64,
}

/// What taped heights tell.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Each height, as given.
    pub heights: Vec<Beside>,
    /// χ² of all differences.
    pub statistic: f64,
    /// How often doubts alone make it as great.
    pub p: f64,
    /// Single causes, the one that explains the differences best first.
    pub causes: Vec<Explained>,
}

impl Finding {
    /// Whether doubts explain all differences.
    #[must_use]
    pub fn agrees(&self) -> bool {
        self.p >= FALSE_ALARM
    }

    /// The cause that explains best, where the heights do not agree and it leaves no more than doubts
    /// explain; none where nothing explains them and they are to be read again.
    #[must_use]
    pub fn best(&self) -> Option<&Explained> {
        self.causes.first().filter(|best| !self.agrees() && best.p >= FALSE_ALARM)
    }
}

/// What heights tell of the weight.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// What each nest carries at its taped height.
    pub loads: Vec<Doubted<Force>>,
    /// All of it.
    pub weight: Doubted<Force>,
    /// Where it acts, along.
    pub along: Doubted<Length>,
    /// Where it acts, across.
    pub across: Doubted<Length>,
}

/// Why heights tell nothing. Nests are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum StandingError {
    /// Too few heights.
    Count {
        /// How many there are.
        count: usize,
    },
    /// A nest that is not there, or that has two heights.
    Nest {
        /// Which nest.
        nest: Nth,
    },
    /// A height that is none.
    Height {
        /// Which nest.
        nest: Nth,
        /// The height.
        height: Length,
        /// Its doubt.
        doubt: Length,
    },
    /// Nests that carry nothing at their heights.
    Loose,
    /// The doubts of the coils, or the frame itself.
    Doubt(#[from] DoubtError),
}

says! {
    StandingError through [Doubt] {
        Count { count } =>
            "taped heights of {count} nests", "heights of three nests at least",
            "tape the others too: with all of them the weight is found as well";
        Nest { nest } =>
            "a height of {nest}", "one height each of nests that are there", "see which it is of";
        Height { nest, height, doubt } =>
            "{nest} at a height of {height}, in doubt by {doubt}",
            "a height above zero and a doubt without sign", "tape it again";
        Loose =>
            "no nest that carries at these heights", "heights below the free ones",
            "see whether the frame was down";
    }
}

impl Frame {
    /// Holds taped heights against those worked out under a weight, and looks for the one cause that
    /// explains best where they do not agree.
    ///
    /// `tape` is one standard uncertainty of the tape's own error, the same in all heights. The heights
    /// were taped on another day and are of another length than the coils, so it is not taken to be that of
    /// the coils' readings.
    ///
    /// # Range
    /// While no doubt and no cause takes a nest over a bend of its load curve.
    ///
    /// # Errors
    /// [`StandingError`].
    ///
    /// # Source
    /// [`SOURCE`].
    ///
    /// # Example
    /// Four nests of 300 N/mm; a pad of 12 mm is missing under the first. The frame is rigid, so three
    /// quarters of it show there, a quarter at its neighbours, and a quarter the other way across from it:
    /// ```
    /// use coilnest::frame::standing::{Cause, Taped};
    /// use coilnest::frame::{CoilDoubt, Frame, Place, Support, Weight};
    /// use coilnest::nest::{Law, Member, Nest};
    /// use coilnest::quantity::{Force, Length, SpringRate};
    /// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
    ///
    /// let mm = Length::new::<millimeter>;
    /// let law = Law::linear(SpringRate::new::<newton_per_millimeter>(300.0))?;
    /// let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }])?;
    /// let corners = [(900.0, 500.0), (900.0, -500.0), (-900.0, 500.0), (-900.0, -500.0)];
    /// let support = |(x, y)| Support {
    ///     place: Place { along: mm(x), across: mm(y) },
    ///     nest: nest.clone(), stop: None, shim: mm(0.0), ground: mm(0.0),
    /// };
    /// let frame = Frame::new(corners.map(support).to_vec(), None)?;
    /// let weight = Weight { load: Force::new::<newton>(60_000.0), centre: Place::default() };
    /// let coil = CoilDoubt { free: mm(0.5), ..CoilDoubt::default() };
    /// let height = |nest, height| Taped { nest, height: mm(height), doubt: mm(0.5) };
    /// // All stand at 300 mm; without the pad at 291, 297, 297 and 303.
    /// let taped = [height(0, 291.0), height(1, 297.0), height(2, 297.0), height(3, 303.0)];
    /// let finding = frame.standing(weight, &vec![vec![coil]; 4], &taped, mm(0.4))?;
    /// assert!(!finding.agrees());
    /// match finding.best().map(|best| best.cause) {
    ///     Some(Cause::Nest { nest: 0, by }) => {
    ///         assert!((by.value.get::<millimeter>() + 12.0).abs() < 1e-6);
    ///     }
    ///     other => panic!("{other:?}"),
    /// }
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn standing(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
        taped: &[Taped],
        tape: Length,
    ) -> Result<Finding, StandingError> {
        self.are_heights(taped, LEAST_HEIGHTS)?;
        let (rest, settled) = self.at_rest(weight, doubts)?;
        let stands: Vec<f64> = settled.supports.iter().map(|at| at.height.value).collect();
        let at_taped = |all: &[f64]| -> Vec<f64> {
            taped.iter().map(|of| all.get(of.nest).copied().unwrap_or_default()).collect()
        };
        let expected = at_taped(&stands);
        let mut weights = Weights::of(taped);
        let mut computed = vec![0.0; taped.len()];
        for pushes in self.pushes(&stands, doubts) {
            let rises: Vec<f64> = self.answer(&rest, &pushes).map(|(_, rises)| rises).collect();
            let here = at_taped(&rises);
            for (variance, rise) in computed.iter_mut().zip(&here) {
                *variance += rise * rise;
            }
            weights.add(&here);
        }
        weights.add(&vec![tape.value; taped.len()]);
        let off: Vec<f64> =
            taped.iter().zip(&expected).map(|(of, stands)| of.height.value - stands).collect();
        let statistic = weights.between(&off, &off);
        let mut causes: Vec<Explained> = self
            .effects(&rest, weight, &settled_rates(self, &rest), taped)
            .into_iter()
            .filter_map(|(effect, cause)| weights.explains(&off, statistic, &effect, cause))
            .collect();
        causes.put_in_order(|one, other| one.left.total_cmp(&other.left));
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let one_of = FALSE_ALARM / taped.len() as f64;
        let heights = taped.iter().zip(&expected).zip(&off).zip(&computed);
        let heights = heights.map(|(((of, stands), off), variance)| {
            let by_tape = libm::hypot(of.doubt.value, tape.value);
            let doubt = libm::sqrt(variance + by_tape * by_tape);
            let p = if doubt > 0.0 { 2.0 * verdict::normal(-off.abs() / doubt) } else { 1.0 };
            Beside {
                nest: of.nest,
                expected: length(*stands, libm::sqrt(*variance)),
                taped: Doubted { value: of.height, doubt: si(by_tape) },
                difference: length(*off, doubt),
                agrees: p >= one_of,
            }
        });
        let heights = heights.collect();
        Ok(Finding { heights, statistic, p: above(taped.len(), statistic), causes })
    }

    /// What nests carry at their taped heights: their loads, the weight and where it acts.
    ///
    /// ```text
    /// F_i = F_i(h_i)      W = Σ F_i      x = Σ F_i·x_i / W      y = Σ F_i·y_i / W
    /// ```
    /// To first order in the doubts of the coils, the heights and the tape. The weight that was written
    /// is not asked.
    ///
    /// # Range
    /// While no doubt takes a nest over a bend of its load curve.
    ///
    /// # Errors
    /// [`StandingError`]: a height of every nest is needed.
    ///
    /// # Source
    /// [`frame::SOURCE`](super::SOURCE); doubts by [`propagation::SOURCE`](crate::propagation::SOURCE).
    ///
    /// # Example
    /// ```
    /// # use coilnest::frame::standing::Taped;
    /// # use coilnest::frame::{CoilDoubt, Frame, Place, Support};
    /// # use coilnest::nest::{Law, Member, Nest};
    /// # use coilnest::quantity::{Length, SpringRate};
    /// # use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
    /// # let mm = Length::new::<millimeter>;
    /// # let law = Law::linear(SpringRate::new::<newton_per_millimeter>(300.0))?;
    /// # let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }])?;
    /// # let corners = [(900.0, 500.0), (900.0, -500.0), (-900.0, 500.0), (-900.0, -500.0)];
    /// # let support = |(x, y)| Support {
    /// #     place: Place { along: mm(x), across: mm(y) },
    /// #     nest: nest.clone(), stop: None, shim: mm(0.0), ground: mm(0.0),
    /// # };
    /// # let frame = Frame::new(corners.map(support).to_vec(), None)?;
    /// // Four nests of 300 N/mm, 350 mm free; two stand at 300 mm and two at 310.
    /// let height = |nest, height| Taped { nest, height: mm(height), doubt: mm(0.5) };
    /// let taped = [height(0, 300.0), height(1, 300.0), height(2, 310.0), height(3, 310.0)];
    /// let weighed = frame.weigh(&vec![vec![CoilDoubt::default()]; 4], &taped, mm(0.0))?;
    /// assert!((weighed.weight.value.get::<newton>() - 54_000.0).abs() < 1e-6); // 2·15 + 2·12 kN
    /// assert!((weighed.weight.doubt.get::<newton>() - 300.0).abs() < 1e-6); // 300 · 0.5 · √4
    /// assert!((weighed.along.value.get::<millimeter>() - 100.0).abs() < 1e-9); // 900 · 6/54
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn weigh(
        &self,
        doubts: &[Vec<CoilDoubt>],
        taped: &[Taped],
        tape: Length,
    ) -> Result<Weighed, StandingError> {
        self.fit(doubts)?;
        self.are_heights(taped, self.supports.len())?;
        let mut by_nest: Vec<Taped> = taped.to_vec();
        by_nest.put_in_order(|one, other| one.nest.cmp(&other.nest));
        let heights: Vec<f64> = by_nest.iter().map(|of| of.height.value).collect();
        let at: Vec<_> =
            self.posts.iter().zip(&heights).map(|(post, height)| post.path.at(*height)).collect();
        let load: f64 = at.iter().map(|at| at.load).sum();
        if load <= 0.0 {
            return Err(StandingError::Loose);
        }
        let places = || self.supports.iter().map(|support| support.place);
        let mean = |of: fn(&Place) -> Length| {
            places().zip(&at).map(|(place, at)| of(&place).value * at.load).sum::<f64>() / load
        };
        let (x, y) = (mean(|place| place.along), mean(|place| place.across));
        let mut causes = self.pushes(&heights, doubts);
        causes.push(at.iter().map(|at| at.rate * tape.value).collect());
        let alone = by_nest.iter().zip(&at).enumerate().map(|(nest, (of, at))| {
            let push = at.rate * of.doubt.value;
            (0..self.posts.len()).map(|one| if one == nest { push } else { 0.0 }).collect()
        });
        causes.extend(alone.collect::<Vec<Vec<f64>>>());
        let mut variances = vec![0.0; self.posts.len()];
        let (mut of_weight, mut of_along, mut of_across) = (0.0, 0.0, 0.0);
        for cause in &causes {
            let (mut sum, mut along, mut across) = (0.0, 0.0, 0.0);
            for ((push, place), variance) in cause.iter().zip(places()).zip(&mut variances) {
                *variance += push * push;
                sum += push;
                along += push * (place.along.value - x) / load;
                across += push * (place.across.value - y) / load;
            }
            of_weight += sum * sum;
            of_along += along * along;
            of_across += across * across;
        }
        let loads = at.iter().zip(variances);
        Ok(Weighed {
            loads: loads.map(|(at, variance)| force(at.load, libm::sqrt(variance))).collect(),
            weight: force(load, libm::sqrt(of_weight)),
            along: length(x, libm::sqrt(of_along)),
            across: length(y, libm::sqrt(of_across)),
        })
    }

    /// Whether heights are of nests that are there, each once, and of enough of them.
    fn are_heights(&self, taped: &[Taped], least: usize) -> Result<(), StandingError> {
        let mut seen = vec![false; self.supports.len()];
        for of in taped {
            let (nest, height, doubt) = (Nth::of(of.nest), of.height, of.doubt);
            match seen.get_mut(of.nest) {
                Some(before) if !*before => *before = true,
                _ => return Err(StandingError::Nest { nest }),
            }
            let sound = height.value > 0.0 && height.value.is_finite() && doubt.value >= 0.0;
            if !sound || !doubt.value.is_finite() {
                return Err(StandingError::Height { nest, height, doubt });
            }
        }
        let count = taped.len();
        if count < least { Err(StandingError::Count { count }) } else { Ok(()) }
    }

    /// What one unit of each single cause does to the taped heights.
    fn effects(
        &self,
        rest: &Rest,
        weight: Weight,
        rates: &[f64],
        taped: &[Taped],
    ) -> Vec<(Vec<f64>, Cause)> {
        let rises = |force: &Row| -> Vec<f64> {
            let gives = rest.stiffness.solve(force);
            let rise = |of: &Taped| {
                self.posts.get(of.nest).map_or(0.0, |post| equilibrium::dot(&post.row, &gives))
            };
            taped.iter().map(rise).collect()
        };
        let nothing = length(0.0, 0.0);
        let mut effects = Vec::new();
        for (nest, (post, rate)) in self.posts.iter().zip(rates).enumerate() {
            let push = post.row.map(|part| part * rate);
            effects.push((rises(&push), Cause::Nest { nest, by: nothing }));
        }
        for of in taped {
            let here = taped.iter().map(|one| if one.nest == of.nest { 1.0 } else { 0.0 });
            effects.push((here.collect(), Cause::Reading { nest: of.nest, by: nothing }));
        }
        let warps = self.warp.is_some();
        let at = |centre: Place| self.extent.pull(centre, warps);
        let here = at(weight.centre);
        effects.push((rises(&here.map(|part| -part)), Cause::Weight { by: force(0.0, 0.0) }));
        let moved = |by: Place| {
            let Place { along, across } = weight.centre;
            let there = at(Place { along: along + by.along, across: across + by.across });
            rises(&equilibrium::along(&here, &there, -1.0).map(|part| part * weight.load.value))
        };
        let one = si(1.0);
        let (along, across) =
            (Place { along: one, ..Place::default() }, Place { across: one, ..Place::default() });
        effects.push((moved(along), Cause::Along { by: nothing }));
        effects.push((moved(across), Cause::Across { by: nothing }));
        effects
    }
}

/// The rate of each nest where a frame is at rest.
fn settled_rates(frame: &Frame, rest: &Rest) -> Vec<f64> {
    frame.posts.iter().map(|post| post.at(&rest.pose).1.rate).collect()
}

/// V⁻¹, put together cause by cause.
struct Weights {
    inverse: Vec<Vec<f64>>,
}

/// A height that nothing leaves in doubt is taken to be in doubt by a nanometre, so that V has an inverse.
const LEAST_DOUBT: f64 = 1e-9;

impl Weights {
    /// Of heights that are each in doubt by themselves.
    fn of(taped: &[Taped]) -> Self {
        let own = |at: usize, of: &Taped| {
            let doubt = of.doubt.value.max(LEAST_DOUBT);
            (0..taped.len())
                .map(|one| if one == at { 1.0 / (doubt * doubt) } else { 0.0 })
                .collect()
        };
        Self { inverse: taped.iter().enumerate().map(|(at, of)| own(at, of)).collect() }
    }

    fn times(&self, by: &[f64]) -> Vec<f64> {
        self.inverse.iter().map(|row| product(row, by)).collect()
    }

    fn between(&self, one: &[f64], other: &[f64]) -> f64 {
        product(&self.times(one), other)
    }

    /// With a cause of doubt more, by the formula of Sherman and Morrison.
    fn add(&mut self, cause: &[f64]) {
        let by = self.times(cause);
        let whole = 1.0 + product(&by, cause);
        for (row, one) in self.inverse.iter_mut().zip(&by) {
            for (of, other) in row.iter_mut().zip(&by) {
                *of -= one * other / whole;
            }
        }
    }

    /// How much of a cause explains differences best, and what it leaves; none of what shows nowhere.
    fn explains(
        &self,
        off: &[f64],
        statistic: f64,
        effect: &[f64],
        cause: Cause,
    ) -> Option<Explained> {
        let own = self.between(effect, effect);
        if !(own > 0.0 && own.is_finite()) {
            return None;
        }
        let shared = self.between(effect, off);
        let (size, doubt) = (shared / own, 1.0 / libm::sqrt(own));
        let cause = match cause {
            Cause::Nest { nest, .. } => Cause::Nest { nest, by: length(size, doubt) },
            Cause::Reading { nest, .. } => Cause::Reading { nest, by: length(size, doubt) },
            Cause::Weight { .. } => Cause::Weight { by: force(size, doubt) },
            Cause::Along { .. } => Cause::Along { by: length(size, doubt) },
            Cause::Across { .. } => Cause::Across { by: length(size, doubt) },
        };
        let left = (statistic - shared * size).max(0.0);
        Some(Explained { cause, left, p: above(off.len().saturating_sub(1), left) })
    }
}

fn product(one: &[f64], other: &[f64]) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

fn length(value: f64, doubt: f64) -> Doubted<Length> {
    Doubted { value: si(value), doubt: si(doubt) }
}

fn force(value: f64, doubt: f64) -> Doubted<Force> {
    Doubted { value: si(value), doubt: si(doubt) }
}

/// How often the sum of squares of so many normal errors is greater: the upper tail of χ².
///
/// ```text
/// even n:  e^(−x/2) · Σ (x/2)^k / k!                            k from 0 to n/2 − 1
/// odd n:   erfc(√(x/2)) + e^(−x/2) · Σ (x/2)^(k − 1/2) / Γ(k + 1/2)    k from 1 to (n − 1)/2
/// ```
///
/// # Source
/// The incomplete gamma function of a whole or half-whole number, integrated by parts.
///
/// # Example
/// ```
/// use coilnest::frame::standing::above;
///
/// // The usual tables: 5 in 100 above 3.841 of one, above 9.488 of four; half of the last digit is 1.5e-5.
/// assert!((above(1, 3.841) - 0.05).abs() < 1.5e-5 && (above(4, 9.488) - 0.05).abs() < 1.5e-5);
/// ```
#[must_use]
pub fn above(errors: usize, sum: f64) -> f64 {
    let half = 0.5 * sum.max(0.0);
    if errors == 0 {
        return if half > 0.0 { 0.0 } else { 1.0 };
    }
    let odd = errors % 2 == 1;
    let root = libm::sqrt(half);
    // The first term, and the k behind which each next is less.
    let (mut tail, mut term, mut k) = if odd {
        let first = libm::exp(-half) * root / (0.5 * libm::sqrt(core::f64::consts::PI));
        (libm::erfc(root), first, 1.5)
    } else {
        (0.0, libm::exp(-half), 1.0)
    };
    for _ in 0..errors / 2 {
        tail += term;
        term *= half / k;
        k += 1.0;
    }
    tail.min(1.0)
}

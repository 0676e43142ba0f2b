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

/// Where a height is taped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Spot {
    /// At a nest, counted from 0, between its seats.
    Nest(usize),
    /// Anywhere on the frame, from level ground on which every `ground` counts.
    Place(Place),
}

/// A height as it was taped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taped {
    /// Where.
    pub at: Spot,
    /// The height.
    pub height: Length,
    /// One standard uncertainty, without the tape's own error.
    pub doubt: Length,
}

/// A taped height beside the one that was worked out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beside {
    /// Where.
    pub at: Spot,
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
        /// Where.
        at: Spot,
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
            "heights taped at {count} of the nests", "one height each of three nests at least",
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
    /// use coilnest::frame::standing::{Cause, Spot, Taped};
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
    /// let height = |nest, height| Taped { at: Spot::Nest(nest), height: mm(height), doubt: mm(0.5) };
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
        let spots: Vec<Spot> = taped.iter().map(|of| of.at).collect();
        let Answers { rest, rows, expected, causes } = self.answers(weight, doubts, &spots)?;
        let mut weights = Weights::of(taped);
        for rises in &causes {
            weights.add(rises);
        }
        weights.add(&vec![tape.value; taped.len()]);
        let off: Vec<f64> = taped
            .iter()
            .zip(&expected)
            .map(|(of, stands)| of.height.value - stands.value.value)
            .collect();
        let statistic = weights.between(&off, &off);
        let mut causes: Vec<Explained> = self
            .effects(&rest, weight, &spots, &rows)
            .into_iter()
            .filter_map(|(effect, cause)| weights.explains(&off, statistic, &effect, cause))
            .collect();
        causes.put_in_order(|one, other| one.left.total_cmp(&other.left));
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let one_of = FALSE_ALARM / taped.len() as f64;
        let heights = taped.iter().zip(expected).zip(&off);
        let heights = heights.map(|((of, expected), off)| {
            let by_tape = libm::hypot(of.doubt.value, tape.value);
            let doubt = libm::hypot(expected.doubt.value, by_tape);
            let p = if doubt > 0.0 { 2.0 * verdict::normal(-off.abs() / doubt) } else { 1.0 };
            Beside {
                at: of.at,
                expected,
                taped: Doubted { value: of.height, doubt: si(by_tape) },
                difference: length(*off, doubt),
                agrees: p >= one_of,
            }
        });
        let heights = heights.collect();
        Ok(Finding { heights, statistic, p: above(taped.len(), statistic), causes })
    }

    /// How high the frame stands under a weight at each of several spots, with the doubt of its coils.
    ///
    /// ```text
    /// h = z + a·x + b·y + w·x·y
    /// ```
    ///
    /// # Range
    /// While no doubt takes a nest over a bend of its load curve.
    ///
    /// # Errors
    /// [`DoubtError`], in a [`StandingError`]; a nest that is not there.
    ///
    /// # Source
    /// [`frame::SOURCE`](super::SOURCE); doubts by [`propagation::SOURCE`](crate::propagation::SOURCE).
    ///
    /// # Example
    /// ```
    /// # use coilnest::frame::standing::Spot;
    /// # use coilnest::frame::{CoilDoubt, Frame, Place, Support, Weight};
    /// # use coilnest::nest::{Law, Member, Nest};
    /// # use coilnest::quantity::{Force, Length, SpringRate};
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
    /// // Four nests of 300 N/mm, 350 mm free; 60 kN act 90 mm nearer the one end: 16.5 and 13.5 kN a nest,
    /// // 295 and 305 mm, so that 900 mm farther out it stands at 290 mm.
    /// let centre = Place { along: mm(90.0), across: mm(0.0) };
    /// let weight = Weight { load: Force::new::<newton>(60_000.0), centre };
    /// let coupler = Spot::Place(Place { along: mm(1800.0), across: mm(0.0) });
    /// let stands = frame.stands(weight, &vec![vec![CoilDoubt::default()]; 4], &[Spot::Nest(0), coupler])?;
    /// let [nest, coupler] = [stands[0], stands[1]].map(|at| at.value.get::<millimeter>());
    /// assert!((nest - 295.0).abs() < 1e-9 && (coupler - 290.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn stands(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
        spots: &[Spot],
    ) -> Result<Vec<Doubted<Length>>, StandingError> {
        Ok(self.answers(weight, doubts, spots)?.expected)
    }

    /// The frame at rest, and what each cause of doubt does to the heights of some spots.
    fn answers(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
        spots: &[Spot],
    ) -> Result<Answers, StandingError> {
        let (rest, settled) = self.at_rest(weight, doubts)?;
        let stands: Vec<f64> = settled.supports.iter().map(|at| at.height.value).collect();
        let seen = |spot: &Spot| match *spot {
            Spot::Nest(nest) => {
                let post =
                    self.posts.get(nest).ok_or(StandingError::Nest { nest: Nth::of(nest) })?;
                Ok((post.row, post.at(&rest.pose).0))
            }
            Spot::Place(place) => {
                let row = self.extent.row(place, self.warp.is_some());
                Ok((row, equilibrium::dot(&row, &rest.pose)))
            }
        };
        let seen: Vec<(Row, f64)> = spots.iter().map(seen).collect::<Result<_, StandingError>>()?;
        let rows: Vec<Row> = seen.iter().map(|(row, _)| *row).collect();
        let pushes = self.pushes(&stands, doubts);
        let causes = pushes.iter().map(|pushes| rises(&rest, &rows, &self.sum_of(pushes)));
        let causes: Vec<Vec<f64>> = causes.collect();
        let expected = seen.iter().enumerate().map(|(at, (_, height))| {
            let here = causes.iter().filter_map(|rises| rises.get(at));
            length(*height, libm::sqrt(here.map(|rise| rise * rise).sum()))
        });
        Ok(Answers { expected: expected.collect(), rest, rows, causes })
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
    /// # use coilnest::frame::standing::{Spot, Taped};
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
    /// let height = |nest, height| Taped { at: Spot::Nest(nest), height: mm(height), doubt: mm(0.5) };
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
        let nests: Vec<Taped> =
            taped.iter().filter(|of| matches!(of.at, Spot::Nest(_))).copied().collect();
        self.are_heights(&nests, self.supports.len())?;
        let of_nest = |nest| nests.iter().find(|of| of.at == Spot::Nest(nest)).copied();
        let by_nest: Vec<Taped> = (0..self.posts.len()).filter_map(of_nest).collect();
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
        for (index, of) in taped.iter().enumerate() {
            let (height, doubt) = (of.height, of.doubt);
            let (nest, is_high) = match of.at {
                Spot::Nest(nest) => {
                    match seen.get_mut(nest) {
                        Some(before) if !*before => *before = true,
                        _ => return Err(StandingError::Nest { nest: Nth::of(nest) }),
                    }
                    (nest, height.value > 0.0)
                }
                Spot::Place(_) => (index, true),
            };
            let sound = is_high && height.value.is_finite() && doubt.value >= 0.0;
            if !sound || !doubt.value.is_finite() {
                return Err(StandingError::Height { nest: Nth::of(nest), height, doubt });
            }
        }
        let count = taped.len();
        if count < least { Err(StandingError::Count { count }) } else { Ok(()) }
    }

    /// What one unit of each single cause does to the heights of some spots.
    fn effects(
        &self,
        rest: &Rest,
        weight: Weight,
        spots: &[Spot],
        rows: &[Row],
    ) -> Vec<(Vec<f64>, Cause)> {
        let rises = |force: &Row| rises(rest, rows, force);
        let nothing = length(0.0, 0.0);
        let mut effects = Vec::new();
        for (nest, post) in self.posts.iter().enumerate() {
            let rate = post.at(&rest.pose).1.rate;
            let push = post.row.map(|part| part * rate);
            effects.push((rises(&push), Cause::Nest { nest, by: nothing }));
        }
        for (here, at) in spots.iter().enumerate() {
            let alone = (0..spots.len()).map(|one| if one == here { 1.0 } else { 0.0 });
            effects.push((alone.collect(), Cause::Reading { at: *at, by: nothing }));
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

    /// What the nests press on the frame together.
    pub(super) fn sum_of(&self, pushes: &[f64]) -> Row {
        let each = self.posts.iter().zip(pushes);
        each.fold([0.0; 4], |sum, (post, push)| equilibrium::along(&sum, &post.row, *push))
    }
}

/// A frame at rest, asked at some spots.
struct Answers {
    rest: Rest,
    /// By which each spot rises with the frame.
    rows: Vec<Row>,
    /// How high each is, with the doubt of the coils.
    expected: Vec<Doubted<Length>>,
    /// What one standard uncertainty of each cause of doubt does to all of them.
    causes: Vec<Vec<f64>>,
}

/// By how much spots rise under a force.
fn rises(rest: &Rest, rows: &[Row], force: &Row) -> Vec<f64> {
    let gives = rest.stiffness.solve(force);
    rows.iter().map(|row| equilibrium::dot(row, &gives)).collect()
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
            Cause::Reading { at, .. } => Cause::Reading { at, by: length(size, doubt) },
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

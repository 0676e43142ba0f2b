//! How far the loads under a frame can be trusted, from the doubts of the coils.

use super::path::Path;
use super::{Contact, Frame, FrameError, Post, Rest, Settled, Weight, equilibrium};
use crate::nest::Member;
use crate::propagation::{Doubted, RateDoubt, drawings};
use crate::quantity::{Force, Length, System, si};
use crate::say::{Nth, Say, says};
use core::f64::consts::TAU;
use oorandom::Rand64;
use thiserror::Error;

/// What is in doubt of one coil, each a standard uncertainty.
///
/// The tape's part is one error for all coils, and so is the steel's: a tape that reads long does so
/// for each. A drawing's part is one error for all coils of that drawing. The rest is each coil's own.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct CoilDoubt {
    /// Of its free height, what is its own.
    pub free: Length,
    /// Of its free height, what is the tape's.
    pub tape: Length,
    /// Of its rate, as a part of it.
    pub rate: RateDoubt,
}

/// A nest's load, share and height with their doubts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadDoubt {
    /// Its load.
    pub load: Doubted<Force>,
    /// The same as a part of the mean of all.
    pub share: Doubted<f64>,
    /// Its height.
    pub height: Doubted<Length>,
}

/// How a nest fares in sampled frames.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Scatter {
    /// Mean of its load, with the standard deviation.
    pub load: Doubted<Force>,
    /// The part of all samples in which it is loose.
    pub loose: f64,
    /// The part of all samples in which it is bottomed.
    pub bottomed: f64,
}

/// Why doubts cannot be carried to the loads. Supports and coils are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum DoubtError {
    /// The doubts are not one list for each nest.
    Nests {
        /// How many lists there are.
        found: usize,
        /// How many nests.
        expected: usize,
    },
    /// The doubts of a nest are not one for each of its coils.
    Coils {
        /// Which support.
        support: Nth,
        /// How many doubts there are.
        found: usize,
        /// How many coils.
        expected: usize,
    },
    /// A doubt of a free height that is below zero or not a number.
    Free {
        /// Which support.
        support: Nth,
        /// Which of its coils.
        coil: usize,
        /// " by the tape" where it is the tape's part.
        by: &'static str,
        /// The doubt.
        doubt: Length,
    },
    /// A doubt of a rate that is below zero or not a number.
    Rate {
        /// Which support.
        support: Nth,
        /// Which of its coils.
        coil: usize,
        /// " by the drawing" or " by the steel" where it is that part.
        by: &'static str,
        /// The doubt.
        doubt: f64,
    },
    /// Too few samples for a standard deviation.
    Trials {
        /// How many were asked for.
        trials: u32,
    },
    /// The frame does not stand.
    Frame(#[from] FrameError),
}

says! {
    DoubtError through [Frame] {
        Nests { found, expected } =>
            "doubts of {found} nests", "a list for all {expected}", "give each nest its list";
        Coils { support, found, expected } =>
            "{support}: doubts of {found} coils", "a doubt of all {expected}",
            "give each coil its own, 0 where it is exact";
        Free { support, coil, by, doubt } =>
            "{support}, coil {coil}: a doubt of its free height{by} of {doubt}", "zero or more",
            "give one standard uncertainty, without a sign";
        Rate { support, coil, by, doubt } =>
            "{support}, coil {coil}: a doubt of its rate{by} of {doubt}", "zero or more",
            "give one standard uncertainty, of a rate as a part of it";
        Trials { trials } =>
            "{trials} samples", "a number of two or more", "a thousand give a doubt to 2 %";
    }
}

impl Frame {
    /// Loads and heights with the doubt that the coils' readings leave, to first order.
    ///
    /// ```text
    /// δF_j = f_j − k_j · g_j·q'      q' = H⁻¹ · Σ f_i·g_i      H = Σ k_i·g_i·g_iᵀ
    /// f = Σ (k_m · δL0_m + F_m · δk_m/k_m)      over the coils m of a nest
    /// u_F² = Σ δF²       over all independent causes
    /// ```
    /// `f` what a cause adds to a nest's load at its height, N · `g` = (1, u, v, u·v), `q'` how the
    /// frame gives · `k`, `F` rate and load where it stands. Causes are each coil's own free height
    /// and rate, each drawing, which acts on all coils of it at once, and the tape and the steel, which
    /// act on all coils.
    ///
    /// The weight is taken as exact, so that the mean is too.
    ///
    /// # Range
    /// While no doubt takes a nest over a bend of its load curve; [`Frame::sampled`] knows no such
    /// limit.
    ///
    /// # Errors
    /// [`DoubtError`]: lists that do not fit the nests; a doubt out of range; [`FrameError`] where
    /// the frame does not stand.
    ///
    /// # Source
    /// [`propagation::SOURCE`](crate::propagation::SOURCE); the sensitivities are derived from the
    /// equilibrium.
    ///
    /// # Example
    /// ```
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
    ///     nest: nest.clone(),
    ///     stop: None,
    ///     shim: mm(0.0),
    ///     ground: mm(0.0),
    /// };
    /// let frame = Frame::new(corners.map(support).to_vec(), None)?;
    /// let weight = Weight { load: Force::new::<newton>(40_000.0), centre: Place::default() };
    ///
    /// // Each free height to 1 mm, of which the tape's part does not twist the frame.
    /// let coil = CoilDoubt { free: mm(0.8), tape: mm(0.6), ..CoilDoubt::default() };
    /// let doubted = frame.doubted(weight, &vec![vec![coil]; 4])?;
    /// // Of each coil, a quarter of k·u; of four, half as much: 300 · 0.8/2.
    /// assert!((doubted[0].load.doubt.get::<newton>() - 120.0).abs() < 1e-9);
    /// assert!((doubted[0].share.doubt - 0.012).abs() < 1e-12);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn doubted(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
    ) -> Result<Vec<LoadDoubt>, DoubtError> {
        let (rest, settled) = self.at_rest(weight, doubts)?;
        let heights: Vec<f64> = settled.supports.iter().map(|at| at.height.value).collect();
        let mut variances = vec![(0.0, 0.0); self.posts.len()];
        for pushes in self.pushes(&heights, doubts) {
            for (variance, (load, height)) in variances.iter_mut().zip(self.answer(&rest, &pushes))
            {
                *variance = (variance.0 + load * load, variance.1 + height * height);
            }
        }
        let with_doubt = settled.supports.iter().zip(variances);
        Ok(with_doubt
            .map(|(standing, (load, height))| {
                let doubt = si(libm::sqrt(load));
                LoadDoubt {
                    load: Doubted { value: standing.load, doubt },
                    share: Doubted { value: standing.share, doubt: (doubt / settled.mean).value },
                    height: Doubted { value: standing.height, doubt: si(libm::sqrt(height)) },
                }
            })
            .collect())
    }

    /// The scatter of the loads in frames whose coils differ by their doubts, sampled.
    ///
    /// Each sample draws a normal error for the tape, one for the steel, one for each drawing, and two
    /// for each coil, and settles that frame. A rate is multiplied by the exponential of its error, so that it stays
    /// above zero. The same seed gives the same scatter on every machine.
    ///
    /// # Errors
    /// As [`Frame::doubted`]; [`DoubtError::Trials`] below two samples; [`FrameError`] where a
    /// sample does not stand.
    ///
    /// # Source
    /// JCGM 101:2008, 5 and 7 (from memory).
    ///
    /// # Example
    /// ```
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
    /// # let weight = Weight { load: Force::new::<newton>(40_000.0), centre: Place::default() };
    /// let coil = CoilDoubt { free: mm(0.8), tape: mm(0.6), ..CoilDoubt::default() };
    /// let scatter = frame.sampled(weight, &vec![vec![coil]; 4], 1000, 7)?;
    /// assert!((scatter[0].load.doubt.get::<newton>() - 120.0).abs() < 10.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn sampled(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
        trials: u32,
        seed: u64,
    ) -> Result<Vec<Scatter>, DoubtError> {
        if trials < 2 {
            return Err(DoubtError::Trials { trials });
        }
        self.fit(doubts)?;
        self.check(weight)?;
        let start = self.rest(&self.posts, weight, None)?.pose;
        let mut chance = Chance(Rand64::new(u128::from(seed)));
        let mut posts = self.posts.clone();
        let mut tallies = vec![Tally::default(); posts.len()];
        let drawings = drawings(doubts.iter().flatten().map(|coil| &coil.rate));
        for trial in 1..=trials {
            let (tape, steel) = (chance.normal(), chance.normal());
            let shapes: Vec<(usize, f64)> =
                drawings.iter().map(|number| (*number, chance.normal())).collect();
            for ((post, support), doubts) in posts.iter_mut().zip(&self.supports).zip(doubts) {
                let mut coils = doubts.iter();
                post.path = Path::with(support, |_| {
                    let coil = coils.next().copied().unwrap_or_default();
                    let longer = coil.free.value * chance.normal() + coil.tape.value * tape;
                    let shaped =
                        shapes.iter().map(|(number, error)| coil.rate.of_drawing(*number) * error);
                    let stiffer = coil.rate.own * chance.normal()
                        + shaped.sum::<f64>()
                        + coil.rate.steel * steel;
                    (longer, libm::exp(stiffer))
                });
            }
            let rest = self.rest(&posts, weight, Some(start))?;
            let settled = self.settled(&posts, weight, &rest)?;
            for (tally, standing) in tallies.iter_mut().zip(&settled.supports) {
                tally.add(standing.load.value, standing.contact, f64::from(trial));
            }
        }
        Ok(tallies.iter().map(|tally| tally.scatter(f64::from(trials))).collect())
    }

    /// Where it comes to rest, with doubts that fit it.
    pub(super) fn at_rest(
        &self,
        weight: Weight,
        doubts: &[Vec<CoilDoubt>],
    ) -> Result<(Rest, Settled), DoubtError> {
        self.fit(doubts)?;
        self.check(weight)?;
        let rest = self.rest(&self.posts, weight, None)?;
        let settled = self.settled(&self.posts, weight, &rest)?;
        Ok((rest, settled))
    }

    /// Whether there is a doubt for each coil, and each is one.
    pub(super) fn fit(&self, doubts: &[Vec<CoilDoubt>]) -> Result<(), DoubtError> {
        let (found, expected) = (doubts.len(), self.supports.len());
        if found != expected {
            return Err(DoubtError::Nests { found, expected });
        }
        for ((coils, of), support) in doubts.iter().zip(&self.supports).zip((1..).map(Nth)) {
            let (found, expected) = (coils.len(), of.nest.members().len());
            if found != expected {
                return Err(DoubtError::Coils { support, found, expected });
            }
            for (of, coil) in coils.iter().zip(1..) {
                for (by, doubt) in [("", of.free), (" by the tape", of.tape)] {
                    if !(doubt.value >= 0.0 && doubt.value.is_finite()) {
                        return Err(DoubtError::Free { support, coil, by, doubt });
                    }
                }
                let rate = of.rate;
                for (by, doubt) in [
                    ("", rate.own),
                    (" by the drawing", rate.drawing.doubt),
                    (" by the steel", rate.steel),
                ] {
                    if !(doubt >= 0.0 && doubt.is_finite()) {
                        return Err(DoubtError::Rate { support, coil, by, doubt });
                    }
                }
            }
        }
        Ok(())
    }

    /// What each independent cause adds to the load of each nest at its height.
    pub(super) fn pushes(&self, heights: &[f64], doubts: &[Vec<CoilDoubt>]) -> Vec<Vec<f64>> {
        let count = self.posts.len();
        let (mut tape, mut steel) = (vec![0.0; count], vec![0.0; count]);
        let drawings = drawings(doubts.iter().flatten().map(|coil| &coil.rate));
        let mut shapes = vec![vec![0.0; count]; drawings.len()];
        let mut causes = Vec::with_capacity(count + drawings.len() + 2);
        let nests = heights.iter().copied().zip(&self.supports).zip(doubts);
        let common = tape.iter_mut().zip(&mut steel);
        for (index, (((height, support), coils), (tape, steel))) in nests.zip(common).enumerate() {
            // Past solid it is the load at solid that the coils change.
            let solid = support.nest.solid().map_or(height, |solid| solid.height.value);
            let mut own = 0.0;
            for (member, doubt) in support.nest.members().iter().zip(coils) {
                let (load, rate) = at(member, height.max(solid));
                for part in [rate * doubt.free.value, load * doubt.rate.own] {
                    own += part * part;
                }
                *tape += rate * doubt.tape.value;
                *steel += load * doubt.rate.steel;
                for (shape, number) in shapes.iter_mut().zip(&drawings) {
                    if let Some(here) = shape.get_mut(index) {
                        *here += load * doubt.rate.of_drawing(*number);
                    }
                }
            }
            let own = libm::sqrt(own);
            causes.push((0..count).map(|at| if at == index { own } else { 0.0 }).collect());
        }
        causes.extend(shapes);
        causes.extend([tape, steel]);
        causes
    }

    /// What pushes do to loads and heights once the frame has given way to them.
    pub(super) fn answer<'a>(
        &'a self,
        rest: &'a Rest,
        pushes: &'a [f64],
    ) -> impl Iterator<Item = (f64, f64)> + 'a {
        let gives = rest.stiffness.solve(&self.sum_of(pushes));
        self.posts.iter().zip(pushes).map(move |(post, push)| {
            let rises = equilibrium::dot(&post.row, &gives);
            (push - rate(post, rest) * rises, rises)
        })
    }
}

fn rate(post: &Post, rest: &Rest) -> f64 {
    post.at(&rest.pose).1.rate
}

/// Load and rate of a coil at a height; neither while it is loose.
fn at(member: &Member, height: f64) -> (f64, f64) {
    let deflection = member.touch_height() - si(height);
    if deflection.value > 0.0 {
        (member.law.load(deflection).value, member.law.rate_beyond(deflection).value)
    } else {
        (0.0, 0.0)
    }
}

/// Random numbers, the same for the same seed.
struct Chance(Rand64);

impl Chance {
    /// Normal, with mean 0 and standard deviation 1, by Box and Muller.
    fn normal(&mut self) -> f64 {
        // From 0 to below 1, turned round so that no logarithm of zero is taken.
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.0.rand_float()));
        radius * libm::cos(TAU * self.0.rand_float())
    }
}

/// Mean and squares of the loads so far, by Welford's way.
#[derive(Clone, Copy, Default)]
struct Tally {
    mean: f64,
    squares: f64,
    loose: f64,
    bottomed: f64,
}

impl Tally {
    fn add(&mut self, load: f64, contact: Contact, count: f64) {
        let off = load - self.mean;
        self.mean += off / count;
        self.squares += off * (load - self.mean);
        match contact {
            Contact::Loose => self.loose += 1.0,
            Contact::Carrying => {}
            Contact::Bottomed => self.bottomed += 1.0,
        }
    }

    fn scatter(&self, count: f64) -> Scatter {
        let deviation = libm::sqrt(self.squares / (count - 1.0));
        Scatter {
            load: Doubted { value: si(self.mean), doubt: si(deviation) },
            loose: self.loose / count,
            bottomed: self.bottomed / count,
        }
    }
}

//! A frame on rough track: a wheel in a dip, what it loses, and the dip at which a wheel lifts.
//!
//! Every answer here is a screening by statics and no acceptance test: see [`SCREENING`].

use super::beams::Bearing;
use super::equilibrium::{Post, Rest, along, dot};
use super::path::{Path, stop_of};
use super::{Frame, FrameError, Settled, Weight};
use crate::bounds::{self, OutOfBounds};
use crate::quantity::{Force, Length, System, si};
use crate::say::{Nth, Say, says};
use crate::source::{Known, Source, Sourced};
use thiserror::Error;

/// The unloading of a wheel on twisted track that a published test allows, ΔQ/Q0.
///
/// It is beside our figures to compare with, not to pass: see [`SCREENING`].
pub const TWIST_LIMIT: Sourced<f64> = Sourced {
    value: 0.6,
    source: Source::new("EN 14363", "safety against derailment on twisted track", Known::Memory),
};

/// What has to stand beside each figure of this module.
pub const SCREENING: &str = "A screening by statics, no acceptance test: it leaves out friction, play, \
     side forces and the twist of the body. Whether a vehicle may run is for its maker's manual, the \
     rules of the line and a test by those who answer for it.";

/// Why a frame cannot be set on track. Wheels and nests are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum TrackError {
    /// A wheel that carries a nest which the frame has not.
    NoSuchNest {
        /// Which wheel.
        wheel: usize,
        /// Which nest.
        support: Nth,
        /// How many there are.
        count: usize,
    },
    /// No such wheel.
    NoSuchWheel {
        /// Which wheel.
        wheel: usize,
        /// How many there are.
        count: usize,
    },
    /// No such nest to be stuck.
    NothingStuck {
        /// Which nest.
        support: Nth,
        /// How many there are.
        count: usize,
    },
    /// More of a rise or a dip than any track has.
    Rise(#[from] OutOfBounds),
    /// The frame does not stand.
    Frame(#[from] FrameError),
}

says! {
    TrackError through [Rise, Frame] {
        NoSuchNest { wheel, support, count } =>
            "wheel {wheel} carries {support}", "a nest from 1 to {count}",
            "number the nests as the frame has them";
        NoSuchWheel { wheel, count } =>
            "wheel {wheel} was asked for", "one from 1 to {count}", "choose one of these";
        NothingStuck { support, count } =>
            "{support} is to be stuck", "a nest from 1 to {count}", "choose one of these";
    }
}

/// A wheel on level track and on rough.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelLoad {
    /// What it carries on the ground as the frame has it, Q0.
    pub at_rest: Force,
    /// What it carries on the rough, Q.
    pub load: Force,
    /// ΔQ/Q0 = (Q0 − Q)/Q0: 1 where the wheel lifts, below zero where it gains; none where it carried
    /// nothing to begin with.
    pub unloading: Option<f64>,
}

/// The least dip at which a wheel lifts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lift {
    /// How deep it is.
    pub dip: Length,
    /// Which wheel lifts, from 0; not always the one in the dip.
    pub wheel: usize,
}

/// A frame on wheels that follow the track.
///
/// Loads are those that the nests bring; what the wheels and axles weigh themselves is left out, so
/// that the unloading comes out greater than with them.
///
/// # Example
/// Four nests of 300 N/mm under 40 kN; a dip of g takes kg/4 off the wheel in it:
/// ```
/// use coilnest::frame::beams::Bearing;
/// use coilnest::frame::track::Track;
/// use coilnest::frame::{Frame, Place, Support, Weight};
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
/// let track = Track::new(&frame, weight, (0..4).map(Bearing::under).collect())?;
/// let wheels = track.raised(0, mm(-40.0))?;
/// assert!((wheels[0].load.get::<newton>() - 7000.0).abs() < 1e-8);
/// assert!(wheels[0].unloading.is_some_and(|unloading| (unloading - 0.3).abs() < 1e-12));
/// let lift = track.least_dip(0)?.map(|lift| lift.dip.get::<millimeter>());
/// assert!(lift.is_some_and(|dip| (dip - 4.0 * 10_000.0 / 300.0).abs() < 1e-9));
///
/// // With the nest across stuck, it all goes through the nests that still give.
/// let stuck = track.stuck(1)?.raised(0, mm(-40.0))?;
/// assert!(stuck[0].load < wheels[0].load);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Track<'a> {
    frame: &'a Frame,
    weight: Weight,
    wheels: Vec<Bearing>,
    posts: Vec<Post>,
    level: Rest,
    at_rest: Settled,
}

/// How far past a bend of a load curve the next piece is looked at, in metres of dip.
const PAST_BEND: f64 = 1e-9;

/// A nest that rises by less than this part of the dip comes to no bend.
const RISING: f64 = 1e-9;

/// A walk passes few more pieces than there are bends in all nests.
const MOST_PIECES: usize = 10_000;

impl<'a> Track<'a> {
    /// A frame under a weight, on wheels each of which carries nests or parts of them.
    ///
    /// # Errors
    /// [`TrackError::NoSuchNest`]; [`FrameError`] where the frame does not stand.
    pub fn new(frame: &'a Frame, weight: Weight, wheels: Vec<Bearing>) -> Result<Self, TrackError> {
        let count = frame.supports.len();
        for (bearing, wheel) in wheels.iter().zip(1..) {
            let stray = bearing.parts().iter().find(|(support, _)| *support >= count);
            if let Some((support, _)) = stray {
                return Err(TrackError::NoSuchNest { wheel, support: Nth::of(*support), count });
            }
        }
        frame.check(weight)?;
        let posts = frame.posts.clone();
        let level = frame.rest(&posts, weight, None)?;
        let at_rest = frame.settled(&posts, weight, &level)?;
        Ok(Self { frame, weight, wheels, posts, level, at_rest })
    }

    /// The frame as it stands before any wheel is raised or dips.
    #[must_use]
    pub fn at_rest(&self) -> &Settled {
        &self.at_rest
    }

    /// The same with a nest, from 0, whose box is stuck at its present height.
    ///
    /// Its springs are replaced by a stop that bears the present load at the present height, as stiff
    /// as the nest past solid, so that nothing moves until the track does. It still only pushes.
    ///
    /// # Errors
    /// [`TrackError::NothingStuck`].
    pub fn stuck(&self, support: usize) -> Result<Self, TrackError> {
        let mut stuck = self.clone();
        let count = self.posts.len();
        let places = stuck.posts.iter_mut().zip(&self.frame.supports);
        let mut at = places.zip(&self.at_rest.supports).skip(support);
        let ((post, of), standing) =
            at.next().ok_or(TrackError::NothingStuck { support: Nth::of(support), count })?;
        post.path = Path::stuck(standing.height.value, standing.load.value, stop_of(of).value);
        stuck.level = self.frame.rest(&stuck.posts, self.weight, Some(self.level.pose))?;
        Ok(stuck)
    }

    /// Every wheel's load with one wheel, from 0, on a rise, or in a dip where it is below zero.
    ///
    /// # Range
    /// Rises within [`bounds::GROUND`].
    ///
    /// # Errors
    /// [`TrackError::NoSuchWheel`], [`TrackError::Rise`]; [`FrameError`] where the frame does not
    /// stand.
    ///
    /// # Source
    /// [`frame::SOURCE`](super::SOURCE).
    pub fn raised(&self, wheel: usize, rise: Length) -> Result<Vec<WheelLoad>, TrackError> {
        bounds::GROUND.check(rise)?;
        let lifts = self.lifts(wheel)?;
        let (posts, rest) = self.on(&lifts, rise.value, self.level.pose)?;
        self.frame.settled(&posts, self.weight, &rest)?;
        let loads = |rest: &Rest| rest.loads.iter().copied().map(si).collect::<Vec<_>>();
        let (before, after) = (loads(&self.level), loads(&rest));
        let compared = self.wheels.iter().map(|wheel| {
            let (at_rest, load) = (wheel.load(&before), wheel.load(&after));
            let unloading = (at_rest.value > 0.0).then(|| ((at_rest - load) / at_rest).value);
            WheelLoad { at_rest, load, unloading }
        });
        Ok(compared.collect())
    }

    /// The least dip under one wheel, from 0, at which a wheel lifts; none where no dip within
    /// [`bounds::GROUND`] lifts one.
    ///
    /// The loads against the dip are made of straight pieces. They are walked from bend to bend, and
    /// the lift is where a piece meets zero: nothing is searched for.
    ///
    /// # Errors
    /// [`TrackError::NoSuchWheel`]; [`FrameError`] where the frame does not stand.
    ///
    /// # Source
    /// [`frame::SOURCE`](super::SOURCE).
    pub fn least_dip(&self, wheel: usize) -> Result<Option<Lift>, TrackError> {
        let lifts = self.lifts(wheel)?;
        let deepest = bounds::GROUND.most().value;
        let (mut dip, mut pose) = (0.0, self.level.pose);
        for _ in 0..MOST_PIECES {
            if dip > deepest {
                return Ok(None);
            }
            let (posts, rest) = self.on(&lifts, -dip, pose)?;
            let piece = Piece::of(self.frame, &posts, &rest, &lifts);
            let next = self.first_lift(&rest.loads, &piece.loads);
            if let Some((further, wheel)) =
                next.filter(|(further, _)| *further <= piece.bend + PAST_BEND)
            {
                let dip = si(dip + further);
                return Ok((dip.value <= deepest).then_some(Lift { dip, wheel }));
            }
            dip += piece.bend + PAST_BEND;
            pose = rest.pose;
        }
        Err(FrameError::NotConverged { steps: MOST_PIECES }.into())
    }

    /// How far each nest rises per rise of a wheel.
    fn lifts(&self, wheel: usize) -> Result<Vec<f64>, TrackError> {
        let missing = TrackError::NoSuchWheel { wheel: wheel + 1, count: self.wheels.len() };
        let bearing = self.wheels.get(wheel).ok_or(missing)?;
        let part = |support| bearing.parts().iter().find(|(of, _)| *of == support);
        let lifts =
            (0..self.posts.len()).map(|support| part(support).map_or(0.0, |(_, part)| *part));
        Ok(lifts.collect())
    }

    /// The frame with the nests so far raised.
    fn on(
        &self,
        lifts: &[f64],
        rise: f64,
        start: [f64; 4],
    ) -> Result<(Vec<Post>, Rest), FrameError> {
        let mut posts = self.posts.clone();
        for (post, lift) in posts.iter_mut().zip(lifts) {
            post.offset += lift * rise;
        }
        let rest = self.frame.rest(&posts, self.weight, Some(start))?;
        Ok((posts, rest))
    }

    /// The wheel that is empty first, and how much further, at loads that change so per dip.
    fn first_lift(&self, loads: &[f64], per_dip: &[f64]) -> Option<(f64, usize)> {
        let of = |wheel: &Bearing, each: &[f64]| {
            let parts = wheel.parts().iter();
            parts.map(|(at, part)| part * each.get(*at).copied().unwrap_or_default()).sum::<f64>()
        };
        let empty = self.wheels.iter().enumerate().filter_map(|(index, wheel)| {
            let (load, change) = (of(wheel, loads), of(wheel, per_dip));
            if load <= 0.0 {
                Some((0.0, index))
            } else {
                (change < 0.0).then(|| (load / -change, index))
            }
        });
        empty.reduce(|first, next| if next.0 < first.0 { next } else { first })
    }
}

/// A stretch of deepening dip along which every load changes evenly.
struct Piece {
    /// What each nest's load gains per dip.
    loads: Vec<f64>,
    /// How much further the first nest comes to a bend of its load curve.
    bend: f64,
}

impl Piece {
    fn of(frame: &Frame, posts: &[Post], rest: &Rest, lifts: &[f64]) -> Self {
        let mut pull = [0.0; 4];
        let points: Vec<_> = posts.iter().map(|post| post.at(&rest.pose)).collect();
        for ((post, (_, at)), lift) in posts.iter().zip(&points).zip(lifts) {
            pull = along(&pull, &post.row, -at.rate * lift);
        }
        if frame.warp.is_none() {
            pull[3] = 0.0;
        }
        let gives = rest.stiffness.solve(&pull);
        let mut loads = Vec::with_capacity(posts.len());
        let mut bend = f64::INFINITY;
        for ((post, (height, at)), lift) in posts.iter().zip(&points).zip(lifts) {
            let rises = dot(&post.row, &gives) + lift;
            loads.push(-at.rate * rises);
            if rises.abs() > RISING {
                let end = if rises > 0.0 { at.above } else { at.below };
                bend = bend.min((end - height) / rises);
            }
        }
        Self { loads, bend }
    }
}

//! What is asked of a replacement, and why some of it cannot be asked together.

use super::limits::{Amount, Limits, Measure};
use super::requirement::Whose;
use crate::coil::buckling::Seating;
use crate::coil::ends::{Ends, TurnsError};
use crate::coil::gaps::Duty;
use crate::coil::{DiametersError, Hand};
use crate::drawing::{Allowable, Figure};
use crate::frame::FrameError;
use crate::nest::{LawError, NestError};
use crate::quantity::{Force, Length, SpringRate, System, write};
use thiserror::Error;

/// What is asked of a replacement. Whatever is left out follows from the original, as
/// [`Requirement`](super::Requirement) says of each.
#[derive(Clone, Debug, PartialEq)]
pub struct Asked {
    /// Bore of the pocket that the coil stands in.
    pub pocket: Option<Length>,
    /// Thickness of the post that it stands over.
    pub post: Option<Length>,
    /// Room that is to be left in the pocket and over the post, on the diameter.
    pub play: Length,
    /// Radial gap to be left to each neighbour when the inner of the two has grown to solid.
    pub gap: Option<Length>,
    /// Free height.
    pub free: Option<Limits<Length>>,
    /// Rate.
    pub rate: Option<Limits<SpringRate>>,
    /// Height at which it works. Without it nothing is asked at work.
    pub working: Option<Length>,
    /// Load at the working height.
    pub load: Option<Limits<Force>>,
    /// The greatest solid height.
    pub solid: Option<Length>,
    /// What stress it may have at work, and with which factor.
    pub stress_at_work: Option<Allowable>,
    /// What stress it may have at solid, and with which factor.
    pub stress_at_solid: Option<Allowable>,
    /// What must be left between the working height and solid.
    pub reserve: Option<Length>,
    /// Whether the load at work comes and goes, for the gaps between the turns.
    pub duty: Duty,
    /// How its ends are seated, for buckling.
    pub seating: Seating,
    /// The way it must be wound.
    pub hand: Option<Hand>,
    /// The form of the ends.
    pub ends: Option<Ends>,
    /// The two loads between which it works for long. Without them nothing is asked of its life.
    pub cycle: Option<(Force, Force)>,
    /// The least factor of safety between them.
    pub safety: Option<f64>,
    /// Height of the nest under its load. Without it nothing is asked of that height.
    pub nest_height: Option<Limits<Length>>,
    /// By which part of the mean the load of a nest under the frame may differ from it.
    pub deviation: Option<f64>,
}

impl Default for Asked {
    /// Nothing but what follows from the original; guided ends and a load that comes and goes.
    fn default() -> Self {
        Self {
            pocket: None,
            post: None,
            play: Length::default(),
            gap: None,
            free: None,
            rate: None,
            working: None,
            load: None,
            solid: None,
            stress_at_work: None,
            stress_at_solid: None,
            reserve: None,
            duty: Duty::Dynamic,
            seating: Seating::Guided,
            hand: None,
            ends: None,
            cycle: None,
            safety: None,
            nest_height: None,
            deviation: None,
        }
    }
}

/// Why nothing can be said of a replacement.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum ReplacementError {
    /// A number that is not one, or is not above nought where it must be.
    #[error(
        "{what} of {amount}; a number above zero was expected: measure it again, or leave it out"
    )]
    NotPositive {
        /// What it is.
        what: &'static str,
        /// The number.
        amount: Amount,
    },
    /// A number that is not one, or is below nought.
    #[error(
        "{what} of {amount}; zero or more was expected: give it without a sign, or leave it out"
    )]
    Negative {
        /// What it is.
        what: &'static str,
        /// The number.
        amount: Amount,
    },
    /// A least above a most.
    #[error(
        "{what} from {least} to {most}; the least first and the most second was expected: exchange the two"
    )]
    Crossed {
        /// What it is.
        what: &'static str,
        /// The least.
        least: Amount,
        /// The most.
        most: Amount,
    },
    /// A post that leaves no room in the pocket.
    #[error(
        "a post of {} in a pocket of {}, with {} of play at each; a post that leaves room for a coil was expected: see whether the two were exchanged",
        length(*.post), length(*.pocket), length(*.play)
    )]
    PostInPocket {
        /// The post.
        post: Length,
        /// The pocket.
        pocket: Length,
        /// The play.
        play: Length,
    },
    /// A solid height that is reached before the working height.
    #[error(
        "a solid height of up to {} is asked for, and a working height of {}; a solid height below the working height was expected: measure one of them again",
        length(*.solid), length(*.working)
    )]
    SolidAboveWorking {
        /// The most solid height asked for.
        solid: Length,
        /// The working height.
        working: Length,
    },
    /// A free height at which the coil carries nothing at work.
    #[error(
        "a free height of up to {} is asked for, and a working height of {}; a free height above the working height was expected: measure one of them again",
        length(*.free), length(*.working)
    )]
    FreeBelowWorking {
        /// The most free height asked for.
        free: Length,
        /// The working height.
        working: Length,
    },
    /// A reserve that is not there.
    #[error(
        "a reserve of {} is asked for below a working height of {}; a reserve less than the height was expected: measure one of them again",
        length(*.reserve), length(*.working)
    )]
    ReserveAboveWorking {
        /// The reserve.
        reserve: Length,
        /// The working height.
        working: Length,
    },
    /// Loads that are no cycle.
    #[error(
        "loads from {} to {}; the lesser must be 0 or more and the greater above it: give the two between which the coil works",
        load(*.least), load(*.greatest)
    )]
    Cycle {
        /// The lesser.
        least: Force,
        /// The greater.
        greatest: Force,
    },
    /// A hand that is asked for, and a neighbour of the same.
    #[error(
        "a coil wound to the {} is asked for, and {neighbour} is wound to the {} too; neighbours of opposite hands were expected: ask for the other hand",
        hand(*.asked), hand(*.asked)
    )]
    HandOfNeighbour {
        /// The hand.
        asked: Hand,
        /// Which neighbour.
        neighbour: Whose,
    },
    /// A figure of a spring that is not above nought.
    #[error(
        "{figure} of {whose} may be {amount}; a number above zero was expected: measure it again, or give a closer tolerance"
    )]
    Figure {
        /// Of which spring.
        whose: Whose,
        /// Which figure.
        figure: Figure,
        /// The least that it may be.
        amount: Amount,
    },
    /// A bar and a diameter that make no coil at the end of their tolerances.
    #[error("{whose}: {source}")]
    Coil {
        /// Which spring.
        whose: Whose,
        /// Why not.
        source: DiametersError,
    },
    /// Turns that make no coil at the end of their tolerances.
    #[error("{whose}: {source}")]
    Turns {
        /// Which spring.
        whose: Whose,
        /// Why not.
        source: TurnsError,
    },
    /// A spring that is solid at its free height.
    #[error(
        "{whose} may be solid at {}, and free at {}; a solid height below the free one was expected: measure the bar, the turns and the free height again",
        length(*.solid), length(*.free)
    )]
    SolidNotBelowFree {
        /// Which spring.
        whose: Whose,
        /// The most that its solid height may be.
        solid: Length,
        /// The least that its free height may be.
        free: Length,
    },
    /// A place that the nest under the frame does not have.
    #[error(
        "nest {support}, coil {place} is to be replaced; one of the {count} that are there was expected: count again from 1, the widest first"
    )]
    Place {
        /// Which support, from 1.
        support: usize,
        /// Which coil of its nest, from 1.
        place: usize,
        /// How many there are, of supports or of coils.
        count: usize,
    },
    /// A rate that makes no law.
    #[error(transparent)]
    Law(#[from] LawError),
    /// Coils that make no nest.
    #[error(transparent)]
    Nest(#[from] NestError),
    /// A frame that does not stand.
    #[error(transparent)]
    Frame(#[from] FrameError),
}

fn length(length: Length) -> String {
    write::<Length>(length, System::Metric)
}

fn load(load: Force) -> String {
    write::<Force>(load, System::Metric)
}

fn hand(hand: Hand) -> &'static str {
    match hand {
        Hand::Left => "left",
        Hand::Right => "right",
    }
}

impl Asked {
    /// Whether all of it can be asked together.
    pub(super) fn check(&self) -> Result<(), ReplacementError> {
        let lengths = [
            ("a pocket", self.pocket),
            ("a post", self.post),
            ("a working height", self.working),
            ("a solid height", self.solid),
        ];
        for (what, length) in lengths {
            positive(what, length.map(Amount::Length))?;
        }
        let stress = |allowable: Allowable| Amount::Stress(allowable.stress);
        positive("a stress at work", self.stress_at_work.map(stress))?;
        positive("a stress at solid", self.stress_at_solid.map(stress))?;
        positive("a factor of safety", self.safety.map(Amount::Number))?;
        not_negative("a play", Some(Amount::Length(self.play)))?;
        not_negative("a gap", self.gap.map(Amount::Length))?;
        not_negative("a reserve", self.reserve.map(Amount::Length))?;
        not_negative("a deviation", self.deviation.map(Amount::Number))?;
        ordered("a free height", self.free, Measure::Length, |length| length.value)?;
        ordered("a rate", self.rate, Measure::Rate, |rate| rate.value)?;
        ordered("a load", self.load, Measure::Load, |load| load.value)?;
        ordered("a height of the nest", self.nest_height, Measure::Length, |length| length.value)?;
        if let (Some(post), Some(pocket)) = (self.post, self.pocket)
            && post + self.play >= pocket - self.play
        {
            return Err(ReplacementError::PostInPocket { post, pocket, play: self.play });
        }
        if let Some((least, greatest)) = self.cycle
            && !(least.value >= 0.0 && greatest > least && greatest.value.is_finite())
        {
            return Err(ReplacementError::Cycle { least, greatest });
        }
        self.working.map_or(Ok(()), |working| self.check_at(working))
    }

    fn check_at(&self, working: Length) -> Result<(), ReplacementError> {
        if let Some(solid) = self.solid.filter(|solid| *solid >= working) {
            return Err(ReplacementError::SolidAboveWorking { solid, working });
        }
        if let Some(free) = self.free.and_then(|free| free.most).filter(|free| *free <= working) {
            return Err(ReplacementError::FreeBelowWorking { free, working });
        }
        match self.reserve.filter(|reserve| *reserve >= working) {
            Some(reserve) => Err(ReplacementError::ReserveAboveWorking { reserve, working }),
            None => Ok(()),
        }
    }
}

fn positive(what: &'static str, amount: Option<Amount>) -> Result<(), ReplacementError> {
    match amount.filter(|amount| !(amount.si() > 0.0 && amount.si().is_finite())) {
        Some(amount) => Err(ReplacementError::NotPositive { what, amount }),
        None => Ok(()),
    }
}

fn not_negative(what: &'static str, amount: Option<Amount>) -> Result<(), ReplacementError> {
    match amount.filter(|amount| !(amount.si() >= 0.0 && amount.si().is_finite())) {
        Some(amount) => Err(ReplacementError::Negative { what, amount }),
        None => Ok(()),
    }
}

fn ordered<Q: Copy>(
    what: &'static str,
    limits: Option<Limits<Q>>,
    measure: Measure,
    si: impl Fn(Q) -> f64,
) -> Result<(), ReplacementError> {
    let Some(limits) = limits else { return Ok(()) };
    let Limits { least, most } = limits.map(|limit| measure.of(si(limit)));
    not_negative(what, least)?;
    positive(what, most)?;
    match (least, most) {
        (Some(least), Some(most)) if least.si() > most.si() => {
            Err(ReplacementError::Crossed { what, least, most })
        }
        _ => Ok(()),
    }
}

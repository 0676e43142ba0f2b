//! What is asked of a replacement, and why some of it cannot be asked together.

use super::limits::{AllowedRange, Amount};
use super::requirement::Whose;
use crate::coil::Hand;
use crate::coil::buckling::Seating;
use crate::coil::ends::Ends;
use crate::coil::gaps::Duty;
use crate::drawing::{Allowable, Figure};
use crate::frame::FrameError;
use crate::nest::{LawError, NestError};
use crate::quantity::{Force, Length, SpringRate, System};
use crate::say::{InWords, Reader, Say, fields, says, words_by_display};
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
    pub free: Option<AllowedRange<Length>>,
    /// Rate.
    pub rate: Option<AllowedRange<SpringRate>>,
    /// Height at which it works. Without it nothing is asked at work.
    pub working: Option<Length>,
    /// Load at the working height.
    pub load: Option<AllowedRange<Force>>,
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
    pub nest_height: Option<AllowedRange<Length>>,
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

fields! {
    /// What can be asked of a replacement.
    AskedField {
        /// Bore of the pocket.
        Pocket = "a pocket",
        /// Thickness of the post.
        Post = "a post",
        /// Room in the pocket and over the post.
        Play = "a play",
        /// Room to a neighbour.
        Gap = "a gap",
        /// The least free height.
        FreeLeast = "a least free height",
        /// The greatest.
        FreeMost = "a greatest free height",
        /// The least rate.
        RateLeast = "a least rate",
        /// The greatest.
        RateMost = "a greatest rate",
        /// The working height.
        Working = "a working height",
        /// The least load there.
        LoadLeast = "a least load",
        /// The greatest.
        LoadMost = "a greatest load",
        /// The greatest solid height.
        Solid = "a solid height",
        /// The stress at work.
        StressAtWork = "a stress at work",
        /// The stress at solid.
        StressAtSolid = "a stress at solid",
        /// What is left to solid.
        Reserve = "a reserve",
        /// The factor of safety.
        Safety = "a factor of safety",
        /// The hand.
        Hand = "a hand",
        /// The least height of the nest.
        NestLeast = "a least height of the nest",
        /// The greatest.
        NestMost = "a greatest height of the nest",
        /// The load of the nest.
        NestLoad = "a load of the nest",
        /// How far the loads under the frame may be apart.
        Deviation = "a deviation",
    }
}

/// What has to change for a replacement to be judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ReplacementField {
    /// What is asked.
    Asked(AskedField),
    /// The loads between which it works.
    Cycle,
    /// A figure of a spring.
    Of(Whose, Figure),
    /// The tolerance of such a figure, or all of them.
    Tolerance(Whose, Option<Figure>),
    /// Nothing of it alone.
    Whole,
}

/// Why nothing can be said of a replacement.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum ReplacementError {
    /// A number that is not one, or is not above zero where it must be.
    NotPositive {
        /// What it is.
        asked: AskedField,
        /// The number.
        amount: Amount,
    },
    /// A number that is not one, or is below zero.
    Negative {
        /// What it is.
        asked: AskedField,
        /// The number.
        amount: Amount,
    },
    /// A least above a most.
    Crossed {
        /// What it is.
        asked: AskedField,
        /// The least.
        least: Amount,
        /// The most.
        most: Amount,
    },
    /// A post that leaves no room in the pocket.
    PostInPocket {
        /// The post.
        post: Length,
        /// The pocket.
        pocket: Length,
        /// The play.
        play: Length,
    },
    /// A solid height that is reached before the working height.
    SolidAboveWorking {
        /// The most solid height asked for.
        solid: Length,
        /// The working height.
        working: Length,
    },
    /// A free height at which the coil carries nothing at work.
    FreeBelowWorking {
        /// The most free height asked for.
        free: Length,
        /// The working height.
        working: Length,
    },
    /// A reserve that is not there.
    ReserveAboveWorking {
        /// The reserve.
        reserve: Length,
        /// The working height.
        working: Length,
    },
    /// Loads that are no cycle.
    Cycle {
        /// The lesser.
        least: Force,
        /// The greater.
        greatest: Force,
    },
    /// A hand that is asked for, and a neighbour of the same.
    HandOfNeighbour {
        /// The hand.
        asked: Hand,
        /// Which neighbour.
        neighbour: Whose,
    },
    /// A figure of a spring that is not above zero.
    Figure {
        /// Of which spring.
        whose: Whose,
        /// Which figure.
        figure: Figure,
        /// The least that it may be.
        amount: Amount,
    },
    /// A bar and a diameter that make no coil at the end of their tolerances.
    Coil {
        /// Which spring.
        whose: Whose,
    },
    /// Turns that make no coil at the end of their tolerances.
    Turns {
        /// Which spring.
        whose: Whose,
    },
    /// A spring that is solid at its free height.
    SolidNotBelowFree {
        /// Which spring.
        whose: Whose,
        /// The most that its solid height may be.
        solid: Length,
        /// The least that its free height may be.
        free: Length,
    },
    /// A place that the nest under the frame does not have.
    Place {
        /// Which support, from 1.
        support: usize,
        /// Which coil of its nest, from 1.
        place: usize,
        /// How many there are, of supports or of coils.
        count: usize,
    },
    /// A rate that makes no law.
    Law(#[from] LawError),
    /// Coils that make no nest.
    Nest(#[from] NestError),
    /// A frame that does not stand.
    Frame(#[from] FrameError),
}

says! {
    ReplacementError through [Law, Nest, Frame] {
        NotPositive { asked, amount } =>
            "{asked} of {amount}", "a number above zero", "measure it again, or leave it out";
        Negative { asked, amount } =>
            "{asked} of {amount}", "zero or more", "give it without a sign, or leave it out";
        Crossed { asked, least, most } =>
            "{asked} of {least}, above the most of {most}", "a least that is not above the most",
            "exchange the two";
        PostInPocket { post, pocket, play } =>
            "a post of {post} in a pocket of {pocket}, with {play} of play at each",
            "a post that leaves room for a coil", "see whether the two were exchanged";
        SolidAboveWorking { solid, working } =>
            "a solid height of up to {solid} is asked for, and a working height of {working}",
            "a solid height below the working height", "measure one of them again";
        FreeBelowWorking { free, working } =>
            "a free height of up to {free} is asked for, and a working height of {working}",
            "a free height above the working height", "measure one of them again";
        ReserveAboveWorking { reserve, working } =>
            "a reserve of {reserve} is asked for, and a working height of {working}",
            "a reserve less than that height", "measure one of them again";
        Cycle { least, greatest } =>
            "loads from {least} to {greatest}",
            "a lesser load of 0 or more and a greater one above it",
            "give the two between which the coil works";
        HandOfNeighbour { asked, neighbour } =>
            "a coil wound to the {asked} is asked for, and {neighbour} is wound that way too",
            "one of the opposite hand", "ask for the other hand";
        Figure { whose, figure, amount } =>
            "{figure} of {whose} may be as little as {amount}",
            "a number above zero at the end of its tolerance too",
            "measure it again, or give a closer tolerance";
        Coil { whose } =>
            "{whose} has no hole at the end of its tolerances", "a hole throughout",
            "give closer tolerances, or measure the bar and the diameter again";
        Turns { whose } =>
            "{whose} has no turns that deflect at the end of its tolerance",
            "a count that leaves some to deflect throughout", "give a closer tolerance";
        SolidNotBelowFree { whose, solid, free } =>
            "{whose} may be solid at {solid}, and free at {free}",
            "a solid height below the free one",
            "measure the bar, the turns and the free height again";
        Place { support, place, count } =>
            "nest {support}, coil {place} is to be replaced", "one of the {count} that are there",
            "count again from 1, the widest first";
    }
}

words_by_display!(Whose, Figure);

impl InWords for Hand {
    fn in_words(&self, _: Reader<'_>) -> String {
        let way = match self {
            Self::Left => "left",
            Self::Right => "right",
        };
        way.to_owned()
    }
}

impl ReplacementError {
    /// What has to change; of two that contradict each other, the first.
    #[must_use]
    pub fn field(&self) -> ReplacementField {
        use ReplacementField::{Asked, Cycle, Of, Tolerance, Whole};
        match *self {
            Self::NotPositive { asked, .. }
            | Self::Negative { asked, .. }
            | Self::Crossed { asked, .. } => Asked(asked),
            Self::PostInPocket { .. } => Asked(AskedField::Post),
            Self::SolidAboveWorking { .. } => Asked(AskedField::Solid),
            Self::FreeBelowWorking { .. } => Asked(AskedField::FreeMost),
            Self::ReserveAboveWorking { .. } => Asked(AskedField::Reserve),
            Self::HandOfNeighbour { .. } => Asked(AskedField::Hand),
            Self::Cycle { .. } => Cycle,
            Self::Figure { whose, figure, .. } => Of(whose, figure),
            Self::Coil { whose } => Tolerance(whose, None),
            Self::Turns { whose } => Tolerance(whose, Some(Figure::TotalTurns)),
            Self::SolidNotBelowFree { whose, .. } => Of(whose, Figure::FreeHeight),
            Self::Place { .. } | Self::Law(_) | Self::Nest(_) | Self::Frame(_) => Whole,
        }
    }
}

impl Asked {
    /// Whether all of it can be asked together.
    pub(super) fn check(&self) -> Result<(), ReplacementError> {
        use AskedField as Field;
        for (field, length) in [
            (Field::Pocket, self.pocket),
            (Field::Post, self.post),
            (Field::Working, self.working),
            (Field::Solid, self.solid),
        ] {
            positive(field, length.map(Amount::Length))?;
        }
        let stress = |allowable: Allowable| Amount::Stress(allowable.stress);
        positive(Field::StressAtWork, self.stress_at_work.map(stress))?;
        positive(Field::StressAtSolid, self.stress_at_solid.map(stress))?;
        positive(Field::Safety, self.safety.map(Amount::Number))?;
        not_negative(Field::Play, Some(Amount::Length(self.play)))?;
        not_negative(Field::Gap, self.gap.map(Amount::Length))?;
        not_negative(Field::Reserve, self.reserve.map(Amount::Length))?;
        not_negative(Field::Deviation, self.deviation.map(Amount::Number))?;
        for (fields, limits) in [
            ([Field::FreeLeast, Field::FreeMost], self.free.map(|of| of.map(Amount::Length))),
            ([Field::RateLeast, Field::RateMost], self.rate.map(|of| of.map(Amount::Rate))),
            ([Field::LoadLeast, Field::LoadMost], self.load.map(|of| of.map(Amount::Load))),
            (
                [Field::NestLeast, Field::NestMost],
                self.nest_height.map(|of| of.map(Amount::Length)),
            ),
        ] {
            ordered(fields, limits)?;
        }
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

fn positive(asked: AskedField, amount: Option<Amount>) -> Result<(), ReplacementError> {
    match amount.filter(|amount| !(amount.si() > 0.0 && amount.si().is_finite())) {
        Some(amount) => Err(ReplacementError::NotPositive { asked, amount }),
        None => Ok(()),
    }
}

fn not_negative(asked: AskedField, amount: Option<Amount>) -> Result<(), ReplacementError> {
    match amount.filter(|amount| !(amount.si() >= 0.0 && amount.si().is_finite())) {
        Some(amount) => Err(ReplacementError::Negative { asked, amount }),
        None => Ok(()),
    }
}

fn ordered(
    [asked, greatest]: [AskedField; 2],
    limits: Option<AllowedRange<Amount>>,
) -> Result<(), ReplacementError> {
    let Some(AllowedRange { least, most }) = limits else { return Ok(()) };
    not_negative(asked, least)?;
    positive(greatest, most)?;
    match (least, most) {
        (Some(least), Some(most)) if least.si() > most.si() => {
            Err(ReplacementError::Crossed { asked, least, most })
        }
        _ => Ok(()),
    }
}

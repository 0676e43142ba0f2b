//! One requirement with its verdict.

use super::Case;
use super::limits::{AllowedRange, Amount, Measure};
use super::offered::{self, OfferedRange};
use super::required::{self, Required};
use super::requirement::{Missing, Requirement, Whose, all};
use super::swap::Seated;
use crate::coil::Hand;
use crate::coil::ends::Ends;
use crate::drawing::{Figure, Range};
use crate::order::InOrder;
use crate::source::Source;

/// What is no figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// A hand.
    Hand(Hand),
    /// A form of the ends.
    Ends(Ends),
}

/// What a requirement asks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Wanted {
    /// A figure within limits.
    Within(AllowedRange<Amount>),
    /// A word.
    Word(Word),
}

/// What a candidate offers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Offered {
    /// A figure, over all its tolerances.
    Range(Range<Amount>),
    /// A word.
    Word(Word),
}

/// How a requirement is met.
#[derive(Clone, Debug, PartialEq)]
pub enum Compliance {
    /// By every spring within the tolerances.
    MetThroughout,
    /// By the nominal spring, not by every one within the tolerances.
    MetAtNominal,
    /// By the nominal spring, and by all within the tolerances that are given; but figures that it rests
    /// on have none, or it holds only as far as something that is not known.
    MetAsDrawn {
        /// Which.
        unstated: Vec<Missing>,
    },
    /// Not even by the nominal spring.
    NotMet,
    /// Figures are missing; [`Case::decision`] says what the one that is missing would have to be.
    CannotTell {
        /// Which. None where the frame does not stand at an end of the tolerances.
        missing: Vec<Missing>,
    },
}

/// What is left to the nearer limit, negative where it is passed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin {
    /// Of the nominal spring.
    pub nominal: Amount,
    /// Of the worst within the tolerances.
    pub worst: Amount,
}

/// One requirement, what is asked and offered, and the verdict.
#[derive(Clone, Debug, PartialEq)]
pub struct Line {
    /// What it is about.
    pub requirement: Requirement,
    /// What is asked; none where that cannot be told.
    pub wanted: Option<Wanted>,
    /// Who says so; none where it was given, or is the original's own word.
    pub source: Option<Source>,
    /// What is offered; none where that cannot be told.
    pub offered: Option<Offered>,
    /// The verdict.
    pub verdict: Compliance,
    /// What is left; none of a word, of a figure that cannot be told, or without a limit.
    pub margin: Option<Margin>,
    /// Why it is waived, where somebody says that it need not be met.
    pub waived: Option<String>,
}

/// Limits and figures that differ by less than this part are one.
const ROUNDING: f64 = 1e-12;

/// What is left above the least and below the most; none where there is no limit.
pub(super) fn room(limits: &AllowedRange<f64>, least: f64, most: f64) -> [Option<f64>; 2] {
    let left = |more: f64, less: f64| {
        let left = more - less;
        let larger = if more.abs() > less.abs() { more.abs() } else { less.abs() };
        if left.abs() <= ROUNDING * larger { 0.0 } else { left }
    };
    [limits.least.map(|limit| left(least, limit)), limits.most.map(|limit| left(limit, most))]
}

fn nearer(room: [Option<f64>; 2]) -> Option<f64> {
    room.into_iter().flatten().reduce(|one, other| if other < one { other } else { one })
}

/// Judges one requirement.
pub(super) fn judge(requirement: Requirement, case: &Case) -> Line {
    let line = match requirement.measure() {
        Some(measure) => of_figures(requirement, measure, case),
        None => of_words(requirement, case),
    };
    let waived = case.waived.iter().find(|(waived, _)| *waived == requirement);
    Line { waived: waived.map(|(_, why)| why.clone()), ..line }
}

fn of_figures(requirement: Requirement, measure: Measure, case: &Case) -> Line {
    let (required, offer) =
        (required::limits(requirement, case), offered::figure(requirement, case));
    compared(requirement, measure, required, offer)
}

/// What is asked of a figure against what is offered.
pub(super) fn compared(
    requirement: Requirement,
    measure: Measure,
    required: Result<Required, Vec<Missing>>,
    offer: Result<OfferedRange, Vec<Missing>>,
) -> Line {
    let amount = |si| measure.of(si);
    let mut line = Line {
        requirement,
        wanted: required.as_ref().ok().map(|required| Wanted::Within(required.limits.map(amount))),
        source: required.as_ref().ok().and_then(|required| required.source),
        offered: offer.as_ref().ok().map(|offer| Offered::Range(offer.range.map(amount))),
        verdict: Compliance::NotMet,
        margin: None,
        waived: None,
    };
    match all(required, offer) {
        Ok((required, offer)) => {
            let range = offer.range;
            let nominal = nearer(room(&required.limits, range.nominal(), range.nominal()));
            let worst = nearer(room(&required.limits, range.least(), range.most()));
            line.margin = nominal
                .zip(worst)
                .map(|(nominal, worst)| Margin { nominal: amount(nominal), worst: amount(worst) });
            let met = |room: Option<f64>| room.is_none_or(|room| room >= 0.0);
            let mut unstated = offer.unstated;
            unstated.extend(required.unstated);
            unstated.put_in_order(Ord::cmp);
            unstated.dedup();
            line.verdict = match (met(nominal), met(worst)) {
                (false, _) => Compliance::NotMet,
                (true, _) if !unstated.is_empty() => Compliance::MetAsDrawn { unstated },
                (true, false) => Compliance::MetAtNominal,
                (true, true) => Compliance::MetThroughout,
            };
        }
        Err(missing) => line.verdict = Compliance::CannotTell { missing },
    }
    line
}

fn of_words(requirement: Requirement, case: &Case) -> Line {
    let Case { original, candidate, asked, .. } = case;
    let hand = |whose, hand: Option<Hand>| {
        hand.map(Word::Hand).ok_or(Missing { whose, figure: Figure::Hand })
    };
    let ends = |whose, ends: Option<Ends>| {
        ends.map(Word::Ends).ok_or(Missing { whose, figure: Figure::Ends })
    };
    let beside = |neighbour: Option<(Whose, &Seated)>| {
        let (whose, seated) = neighbour?;
        Some(hand(whose, seated.spring.hand).map(other))
    };
    let neighbour = match requirement {
        Requirement::OuterHand => beside(case.outer_neighbour()),
        Requirement::InnerHand => beside(case.inner_neighbour()),
        _ => None,
    };
    let (wanted, offered) = if requirement == Requirement::Ends {
        let wanted = ends(Whose::Original, asked.ends.or(original.ends));
        (wanted, ends(Whose::Candidate, candidate.ends))
    } else {
        let own = || hand(Whose::Original, asked.hand.or(original.hand));
        (neighbour.unwrap_or_else(own), hand(Whose::Candidate, candidate.hand))
    };
    let verdict = match all(wanted.map_err(|it| vec![it]), offered.map_err(|it| vec![it])) {
        Ok((wanted, offered)) if wanted == offered => Compliance::MetThroughout,
        Ok(_) => Compliance::NotMet,
        Err(missing) => Compliance::CannotTell { missing },
    };
    Line {
        requirement,
        wanted: wanted.ok().map(Wanted::Word),
        source: None,
        offered: offered.ok().map(Offered::Word),
        verdict,
        margin: None,
        waived: None,
    }
}

/// The other hand.
pub(super) fn other(word: Word) -> Word {
    match word {
        Word::Hand(Hand::Left) => Word::Hand(Hand::Right),
        Word::Hand(Hand::Right) => Word::Hand(Hand::Left),
        Word::Ends(ends) => Word::Ends(ends),
    }
}

//! What the one figure that is missing would have to be.

use super::Case;
use super::limits::{AllowedRange, Amount, Measure};
use super::line::{Compliance, Line, Offered, Wanted, Word, other, room};
use super::requirement::{Missing, Requirement};
use super::{check, offered, required};
use crate::bounds;
use crate::coil::DiameterKind;
use crate::drawing::{Allowable, Figure, Given};
use crate::material::Against;
use crate::order::InOrder;
use crate::quantity::{Length, si};

/// What one missing figure would have to be for a requirement to be met throughout.
#[derive(Clone, Debug, PartialEq)]
pub enum Decision {
    /// A number within one of these spans (of a diameter the outside one, of a stress that may be borne
    /// the uncorrected one), taken as exact, the other figures keeping their tolerances.
    /// A side is open where the whole of the [bounds](crate::bounds) would do. Without a span no
    /// number would do.
    Within {
        /// The figure.
        missing: Missing,
        /// The numbers that would do, rising.
        spans: Vec<AllowedRange<Amount>>,
    },
    /// This word.
    Word {
        /// The figure.
        missing: Missing,
        /// What it would have to be.
        word: Word,
    },
}

/// How many numbers are tried, evenly in their logarithms, before the places between two of them
/// where the answer changes are halved.
const TRIED: u32 = 240;

/// The bounds of a figure that is a number, in SI units, and its kind.
fn numbers(figure: Figure) -> Option<(f64, f64, Measure)> {
    let length =
        |bound: &bounds::Bound<Length>| (bound.least().value, bound.most().value, Measure::Length);
    let (least, most, measure) = match figure {
        Figure::Bar => length(&bounds::BAR),
        Figure::Diameter => length(&bounds::COIL_DIAMETER),
        Figure::FreeHeight => length(&bounds::FREE_HEIGHT),
        Figure::SolidHeight => length(&bounds::SOLID_HEIGHT),
        Figure::TotalTurns => (bounds::TURNS.least(), bounds::TURNS.most(), Measure::Number),
        Figure::Rate => (bounds::RATE.least().value, bounds::RATE.most().value, Measure::Rate),
        Figure::ShearModulus | Figure::YoungsModulus => {
            (bounds::MODULUS.least().value, bounds::MODULUS.most().value, Measure::Stress)
        }
        Figure::AllowableStress | Figure::TensileStrength => {
            (LEAST_STRESS, bounds::STRESS.most().value, Measure::Stress)
        }
        Figure::Load => (LEAST_LOAD, bounds::LOAD.most().value, Measure::Load),
        Figure::DeadTurns | Figure::Ends | Figure::Hand | Figure::Steel | Figure::FatigueTests => {
            return None;
        }
    };
    Some((least, most, measure))
}

/// The least stress and load that are tried, Pa and N: their bounds begin at zero.
const LEAST_STRESS: f64 = 1e4;
const LEAST_LOAD: f64 = 1e-2;

/// Whether a requirement is met above its least and below its most; none where it cannot be told.
type Answer = Option<[bool; 2]>;

impl Case {
    /// What the figure or word that a line lacks would have to be; none where several are missing, or no
    /// number or word of one decides it.
    ///
    /// A figure is looked for over all that may be written of it, so this takes a thousand times as long
    /// as the line itself.
    #[must_use]
    pub fn decision(&self, line: &Line) -> Option<Decision> {
        let Compliance::CannotTell { missing } = &line.verdict else { return None };
        match line.requirement.measure() {
            Some(_) => by_figure(line.requirement, self, missing),
            None => by_word(line, missing),
        }
    }
}

fn by_word(line: &Line, missing: &[Missing]) -> Option<Decision> {
    let &[missing] = missing else { return None };
    let beside = matches!(line.requirement, Requirement::OuterHand | Requirement::InnerHand);
    let word = match (line.wanted, line.offered) {
        (None, Some(Offered::Word(word))) if beside => other(word),
        (Some(Wanted::Word(word)), None) | (None, Some(Offered::Word(word))) => word,
        _ => return None,
    };
    Some(Decision::Word { missing, word })
}

/// What the one missing figure would have to be; none where several are missing, or it is no number.
fn by_figure(requirement: Requirement, case: &Case, missing: &[Missing]) -> Option<Decision> {
    let &[missing] = missing else { return None };
    let (least, most, measure) = numbers(missing.figure)?;
    let mut trial = case.clone();
    let mut at = |si: f64| {
        put(&mut trial, missing, si)?;
        answer(requirement, &trial)
    };
    let mut edges = Vec::new();
    let mut told = false;
    let mut before = (least, at(least));
    for step in 1..=TRIED {
        let si = least * libm::pow(most / least, f64::from(step) / f64::from(TRIED));
        let now = (si, at(si));
        told |= now.1.is_some();
        edges.extend(changes(&mut at, before, now));
        before = now;
    }
    if !told {
        return None;
    }
    edges.put_in_order(|(one, _), (other, _)| one.total_cmp(other));
    let starts = core::iter::once(least).chain(edges.iter().map(|(_, above)| *above));
    let ends = edges.iter().map(|(below, _)| *below).chain([before.0]);
    let mut spans = Vec::new();
    for (start, end) in starts.zip(ends) {
        if start <= end && at(f64::midpoint(start, end)) == Some([true; 2]) {
            spans.push(AllowedRange {
                least: (start > least).then(|| measure.of(start)),
                most: (end < before.0).then(|| measure.of(end)),
            });
        }
    }
    Some(Decision::Within { missing, spans })
}

/// Neighbouring numbers between two others, where the answer, or either half of it, changes.
fn changes(
    at: &mut impl FnMut(f64) -> Answer,
    (below, answer_below): (f64, Answer),
    (above, answer_above): (f64, Answer),
) -> Vec<(f64, f64)> {
    let parts: [fn(Answer) -> bool; 3] = [
        |answer| answer.is_some(),
        |answer| answer.is_some_and(|[least, _]| least),
        |answer| answer.is_some_and(|[_, most]| most),
    ];
    let mut edges = Vec::new();
    for part in parts {
        let (start, end) = (part(answer_below), part(answer_above));
        if start == end {
            continue;
        }
        let (mut low, mut high) = (below, above);
        loop {
            let half = f64::midpoint(low, high);
            if half <= low || half >= high {
                break;
            }
            if part(at(half)) == start {
                low = half;
            } else {
                high = half;
            }
        }
        edges.push((low, high));
    }
    edges
}

fn answer(requirement: Requirement, case: &Case) -> Answer {
    let (required, offer) =
        (required::limits(requirement, case), offered::figure(requirement, case));
    let (required, offer) = (required.ok()?, offer.ok()?);
    Some(
        room(&required.limits, offer.range.nominal(), offer.range.nominal())
            .map(|room| room.is_none_or(|room| room >= 0.0)),
    )
}

/// Puts a number in the place of a missing figure; none where it makes no spring.
fn put(case: &mut Case, missing: Missing, value: f64) -> Option<()> {
    let length = si(value);
    let stress = si(value);
    if missing.figure == Figure::Load {
        case.nest.as_mut()?.load = Some(si(value));
        return Some(());
    }
    let spring = missing.whose.of(case)?;
    match missing.figure {
        Figure::Bar => spring.bar = Some(Given::exact(length)),
        Figure::Diameter => {
            // Which diameter would be measured is not known: the outside one is the easiest.
            spring.diameter = Some((DiameterKind::Outside, Given::exact(length)));
        }
        Figure::TotalTurns => spring.total_turns = Some(Given::exact(value)),
        Figure::FreeHeight => spring.free = Some(Given::exact(length)),
        Figure::SolidHeight => spring.solid = Some(Given::exact(length)),
        Figure::Rate => {
            spring.rate = Some(Given::exact(si(value)));
        }
        Figure::ShearModulus => spring.shear_modulus = Some(Given::exact(stress)),
        Figure::YoungsModulus => spring.youngs_modulus = Some(stress),
        Figure::AllowableStress => {
            spring.allowable = Some(Allowable { stress, against: Against::Plain });
        }
        Figure::TensileStrength => spring.tensile = Some(stress),
        Figure::DeadTurns
        | Figure::Ends
        | Figure::Hand
        | Figure::Steel
        | Figure::Load
        | Figure::FatigueTests => return None,
    }
    check::spring(missing.whose, spring).ok()
}

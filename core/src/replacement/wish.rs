//! What each requirement asks, as given or as it follows from the original.

use super::Case;
use super::asked::Asked;
use super::particulars::{Bearable, Figure, Particulars};
use super::point::{Point, both};
use super::range::Limits;
use super::requirement::{Missing, Requirement, Whose};
use crate::coil::Coiling;
use crate::coil::buckling;
use crate::coil::fatigue::Surface;
use crate::coil::gaps;
use crate::material::Presetting;
use crate::quantity::{Force, Length, Pressure};
use crate::source::{Known, Source, Sourced};
use crate::tolerance::{ColdWound, Grade};

/// What a requirement asks in SI units, and who says so; none where it was given.
pub(super) struct Wish {
    pub(super) limits: Limits<f64>,
    pub(super) source: Option<Source>,
}

/// By which part a free height may differ where no standard says.
const FREE_SHARE: f64 = 0.02;
/// By which part a rate or a load may differ where no standard says.
const LOAD_SHARE: f64 = 0.05;
/// The least factor of safety for a life without end.
const LEAST_SAFETY: f64 = 1.0;

const COMMON: Source = Source::new("", "", Known::CommonPractice);
const ORIGINAL: Source = Source::new("the original", "no worse than it", Known::CommonPractice);

impl Wish {
    fn by(limits: Limits<f64>, source: Source) -> Self {
        Self { limits, source: Some(source) }
    }

    fn within(nominal: f64, allowance: Sourced<f64>) -> Self {
        let limits = Limits::between(nominal - allowance.value, nominal + allowance.value);
        Self::by(limits, allowance.source)
    }

    /// At most so much, or as much as the original has.
    fn at_most(most: f64, source: Source, original: Option<f64>) -> Self {
        match original.filter(|original| *original > most) {
            Some(original) => Self::by(Limits::at_most(original), ORIGINAL),
            None => Self::by(Limits::at_most(most), source),
        }
    }

    /// At least so much, or as much as the original has.
    fn at_least(least: f64, source: Source, original: Option<f64>) -> Self {
        match original.filter(|original| *original < least) {
            Some(original) => Self::by(Limits::at_least(original), ORIGINAL),
            None => Self::by(Limits::at_least(least), source),
        }
    }
}

/// What a requirement that compares figures asks.
pub(super) fn limits(requirement: Requirement, case: &Case) -> Result<Wish, Vec<Missing>> {
    match given(requirement, &case.asked) {
        Some(limits) => Ok(Wish { limits, source: None }),
        None => by_original(requirement, case),
    }
}

/// As given.
fn given(requirement: Requirement, asked: &Asked) -> Option<Limits<f64>> {
    let bearable = |bearable: Bearable| Limits::at_most(bearable.stress.value);
    match requirement {
        Requirement::Pocket => {
            asked.pocket.map(|pocket| Limits::at_most((pocket - asked.play).value))
        }
        Requirement::Post => asked.post.map(|post| Limits::at_least((post + asked.play).value)),
        Requirement::OuterGap | Requirement::InnerGap => {
            asked.gap.map(|gap| Limits::at_least(gap.value))
        }
        Requirement::FreeHeight => asked.free.map(|free| free.map(|length| length.value)),
        Requirement::Rate => asked.rate.map(|rate| rate.map(|rate| rate.value)),
        Requirement::Load => asked.load.map(|load| load.map(|load| load.value)),
        Requirement::SolidHeight => asked.solid.map(|solid| Limits::at_most(solid.value)),
        Requirement::StressAtWork => asked.stress_at_work.map(bearable),
        Requirement::StressAtSolid => asked.stress_at_solid.map(bearable),
        Requirement::Reserve => asked.reserve.map(|reserve| Limits::at_least(reserve.value)),
        Requirement::Fatigue => asked.safety.map(Limits::at_least),
        Requirement::NestHeight => asked.nest_height.map(|nest| nest.map(|height| height.value)),
        Requirement::Deviation => asked.deviation.map(Limits::at_most),
        Requirement::Buckling
        | Requirement::OuterHand
        | Requirement::InnerHand
        | Requirement::Hand
        | Requirement::Ends => None,
    }
}

/// As it follows from the original.
fn by_original(requirement: Requirement, case: &Case) -> Result<Wish, Vec<Missing>> {
    let original = Point::nominal(&case.original);
    let own = |figure: Result<Length, Vec<Figure>>| {
        Whose::Original.lacks(figure).map(|length| length.value)
    };
    let working = case.asked.working.unwrap_or_default();
    Ok(match requirement {
        Requirement::Pocket => Wish::at_most(own(original.outside_at_solid())?, ORIGINAL, None),
        Requirement::Post => {
            Wish::at_least(own(original.coil().map(|coil| coil.inside()))?, ORIGINAL, None)
        }
        Requirement::OuterGap | Requirement::InnerGap => Wish::at_least(0.0, COMMON, None),
        Requirement::FreeHeight => {
            let free = Whose::Original.lacks(original.free())?;
            Wish::within(free.value, free_allowance(case, &original, free))
        }
        Requirement::Rate => {
            let rate = Whose::Original.lacks(original.rate())?.value;
            Wish::within(rate, Sourced { value: LOAD_SHARE * rate, source: COMMON })
        }
        Requirement::Load => {
            let load = Whose::Original.lacks(original.load(working))?;
            Wish::within(load.value, load_allowance(case, &original, load))
        }
        Requirement::SolidHeight => Wish::at_most(own(original.solid())?, ORIGINAL, None),
        Requirement::StressAtWork => {
            stress(case, |bearable| original.stress_at(working, bearable))?
        }
        Requirement::StressAtSolid => stress(case, |bearable| original.stress_at_solid(bearable))?,
        Requirement::Reserve => {
            let left = own(original.solid().map(|solid| working - solid))?;
            match least_gaps(case, &original) {
                Some(gaps) => Wish::at_least(gaps.value, gaps::SOURCE, Some(left)),
                None => Wish::at_least(left, ORIGINAL, None),
            }
        }
        Requirement::Buckling => {
            let poisson = case.original.poisson();
            let buckles =
                poisson.and_then(|ratio| original.buckling_height(case.asked.seating, ratio));
            let own = buckles.ok().map(|height| height.value);
            Wish::at_most(working.value, buckling::SOURCE, own)
        }
        Requirement::Fatigue => {
            let own = endurance(&case.original, case, &original).ok();
            Wish::at_least(LEAST_SAFETY, COMMON, own)
        }
        Requirement::NestHeight
        | Requirement::Deviation
        | Requirement::OuterHand
        | Requirement::InnerHand
        | Requirement::Hand
        | Requirement::Ends => return Err(Vec::new()),
    })
}

/// The stress that the candidate may bear, with the factor that it is to be compared with.
pub(super) fn bearable(case: &Case, given: Option<Bearable>) -> Result<Bearable, Vec<Missing>> {
    let presetting = case.candidate.presetting.unwrap_or(Presetting::AsWound);
    let own = || Whose::Candidate.lacks(case.candidate.bearable(presetting));
    given.map_or_else(own, Ok)
}

/// The factor of safety of a spring between the loads that are asked.
pub(super) fn endurance(of: &Particulars, case: &Case, point: &Point) -> Result<f64, Vec<Figure>> {
    let Some(cycle) = case.asked.cycle else { return Err(vec![Figure::FatigueTests]) };
    let strength = both(of.tensile(), of.bearable(Presetting::AsWound));
    let ((tensile, bearable), _) = both(strength, point.coil())?;
    let surface = of.surface.unwrap_or(Surface::Unpeened);
    point.endurance(cycle, tensile, bearable, surface)
}

/// What the candidate's steel bears or the original, being of the same steel, does.
fn stress(
    case: &Case,
    of_original: impl Fn(Bearable) -> Result<Pressure, Vec<Figure>>,
) -> Result<Wish, Vec<Missing>> {
    let bearable = bearable(case, None)?;
    let same = match (case.original.steel, case.candidate.steel) {
        (Some(original), Some(candidate)) => original.id() == candidate.id(),
        (None, None) => case.original.bearable == Some(bearable),
        _ => false,
    };
    let own = of_original(bearable).ok().filter(|_| same).map(|stress| stress.value);
    let most = bearable.stress.value;
    Ok(match own.filter(|own| *own > most) {
        Some(own) => Wish::at_most(own, ORIGINAL, None),
        None => Wish { limits: Limits::at_most(most), source: case.candidate.bearable_source() },
    })
}

fn free_allowance(case: &Case, original: &Point, free: Length) -> Sourced<f64> {
    match (cold_wound(&case.original, original), original.rate()) {
        (Some(cold), Ok(rate)) => {
            let allowance = cold.free_height(Grade::Two, rate);
            Sourced { value: allowance.value.value, source: allowance.source }
        }
        _ => Sourced { value: FREE_SHARE * free.value, source: COMMON },
    }
}

fn load_allowance(case: &Case, original: &Point, load: Force) -> Sourced<f64> {
    match cold_wound(&case.original, original) {
        Some(cold) => {
            let allowance = cold.load(Grade::Two, load);
            Sourced { value: allowance.value.value, source: allowance.source }
        }
        None => Sourced { value: LOAD_SHARE * load.value, source: COMMON },
    }
}

/// The original as EN 15800 speaks of it.
fn cold_wound(of: &Particulars, point: &Point) -> Option<ColdWound> {
    if of.coiling != Some(Coiling::Cold) {
        return None;
    }
    ColdWound::new(point.coil().ok()?, point.turns().ok()?, point.free?).ok()
}

fn least_gaps(case: &Case, original: &Point) -> Option<Length> {
    let (coil, turns) = (original.coil().ok()?, original.turns().ok()?);
    Some(gaps::least(coil, turns, case.original.coiling?, case.asked.duty))
}

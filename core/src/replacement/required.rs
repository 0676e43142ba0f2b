//! What each requirement asks, as given or as it follows from the original.

use super::Case;
use super::asked::Asked;
use super::limits::AllowedRange;
use super::requirement::{Missing, Requirement, Whose};
use crate::coil::Coiling;
use crate::coil::buckling;
use crate::coil::fatigue::Surface;
use crate::coil::gaps;
use crate::drawing::{
    Allowable, Drawing, Endured, Figure, Figures, Point, Range, both, over_tolerances,
};
use crate::material::Against;
use crate::quantity::{Length, si};
use crate::source::{Known, Source, Sourced};
use crate::tolerance::{ColdWound, Grade};

/// What is asked of a figure, in SI units, who says so where nobody gave it, and the figures whose
/// tolerances it would need to be surer.
pub(super) struct Required {
    pub(super) limits: AllowedRange<f64>,
    pub(super) source: Option<Source>,
    pub(super) unstated: Vec<Missing>,
}

pub(super) const FREE_SHARE: f64 = 0.02;
pub(super) const LOAD_SHARE: f64 = 0.05;
const LEAST_SAFETY: f64 = 1.0;

pub(super) const COMMON: Source = Source::new("", "", Known::CommonPractice);
pub(super) const ORIGINAL: Source =
    Source::new("the original's own", "no worse than it", Known::CommonPractice);
const OWN_RANGE: Source =
    Source::new("the original's own range", "over its tolerances", Known::CommonPractice);

impl Required {
    pub(super) fn by(limits: AllowedRange<f64>, source: Source) -> Self {
        Self { limits, source: Some(source), unstated: Vec::new() }
    }

    /// Limits of whoever asks.
    pub(super) fn given(limits: AllowedRange<f64>) -> Self {
        Self { limits, source: None, unstated: Vec::new() }
    }

    /// The original's own range, or a usual allowance about its figure where its tolerances are not
    /// given.
    pub(super) fn like(own: &Range<f64>, usual: impl FnOnce() -> Sourced<f64>) -> Self {
        if own.is_complete() {
            return Self::by(AllowedRange::between(own.least(), own.most()), OWN_RANGE);
        }
        let (nominal, usual) = (own.nominal(), usual());
        let limits = AllowedRange::between(nominal - usual.value, nominal + usual.value);
        Self { unstated: Whose::Original.figures(own.unstated()), ..Self::by(limits, usual.source) }
    }

    /// A most, but no less than the original has.
    fn at_most(most: f64, source: Source, original: Option<Range<f64>>) -> Self {
        match original.map(|own| own.most()).filter(|own| *own > most) {
            Some(own) => Self::by(AllowedRange::at_most(own), ORIGINAL),
            None => Self::by(AllowedRange::at_most(most), source),
        }
    }

    /// A least, but no more than the original has.
    fn at_least(least: f64, source: Source, original: Option<Range<f64>>) -> Self {
        match original.map(|own| own.least()).filter(|own| *own < least) {
            Some(own) => Self::by(AllowedRange::at_least(own), ORIGINAL),
            None => Self::by(AllowedRange::at_least(least), source),
        }
    }
}

/// The limits of a figure.
///
/// # Errors
/// What of the original, or of the candidate's steel, is missing for them.
pub(super) fn limits(requirement: Requirement, case: &Case) -> Result<Required, Vec<Missing>> {
    match given(requirement, &case.asked) {
        Some(limits) => Ok(Required::given(limits)),
        None => by_original(requirement, case),
    }
}

fn given(requirement: Requirement, asked: &Asked) -> Option<AllowedRange<f64>> {
    let allowable = |allowable: Allowable| AllowedRange::at_most(allowable.stress.value);
    match requirement {
        Requirement::Pocket => {
            asked.pocket.map(|pocket| AllowedRange::at_most((pocket - asked.play).value))
        }
        Requirement::Post => {
            asked.post.map(|post| AllowedRange::at_least((post + asked.play).value))
        }
        Requirement::OuterGap | Requirement::InnerGap => {
            asked.gap.map(|gap| AllowedRange::at_least(gap.value))
        }
        Requirement::FreeHeight => asked.free.map(|free| free.map(|length| length.value)),
        Requirement::Rate => asked.rate.map(|rate| rate.map(|rate| rate.value)),
        Requirement::Load => asked.load.map(|load| load.map(|load| load.value)),
        Requirement::SolidHeight => asked.solid.map(|solid| AllowedRange::at_most(solid.value)),
        Requirement::StressAtWork => asked.stress_at_work.map(allowable),
        Requirement::StressAtSolid => asked.stress_at_solid.map(allowable),
        Requirement::Reserve => asked.reserve.map(|reserve| AllowedRange::at_least(reserve.value)),
        Requirement::Fatigue => asked.safety.map(AllowedRange::at_least),
        Requirement::NestHeight => asked.nest_height.map(|nest| nest.map(|height| height.value)),
        Requirement::Deviation => asked.deviation.map(AllowedRange::at_most),
        Requirement::LoadAt(_)
        | Requirement::Buckling
        | Requirement::OuterHand
        | Requirement::InnerHand
        | Requirement::Hand
        | Requirement::Ends => None,
    }
}

fn by_original(requirement: Requirement, case: &Case) -> Result<Required, Vec<Missing>> {
    let original = &case.original;
    let own = |figure: &dyn Fn(&Point) -> Result<f64, Figures>| {
        Whose::Original.lacks(over_tolerances(original, figure))
    };
    let working = case.asked.working.unwrap_or_default();
    Ok(match requirement {
        Requirement::Pocket => {
            let outside = own(&|point| Ok(point.outside_at_solid()?.value))?;
            Required::by(AllowedRange::at_most(outside.most()), ORIGINAL)
        }
        Requirement::Post => {
            let inside = own(&|point| Ok(point.coil()?.inside().value))?;
            Required::by(AllowedRange::at_least(inside.least()), ORIGINAL)
        }
        Requirement::OuterGap | Requirement::InnerGap => {
            Required::by(AllowedRange::at_least(0.0), COMMON)
        }
        Requirement::FreeHeight => {
            let free = own(&|point| Ok(point.free()?.value))?;
            Required::like(&free, || free_allowance(original, free.nominal()))
        }
        Requirement::Rate => {
            let rate = own(&|point| Ok(point.rate()?.value))?;
            let usual = Sourced { value: LOAD_SHARE * rate.nominal(), source: COMMON };
            Required::like(&rate, || usual)
        }
        Requirement::Load => load(original, working)?,
        Requirement::LoadAt(place) => {
            let stated = original.loads.get(usize::from(place)).ok_or_else(Vec::new)?;
            load(original, stated.height)?
        }
        Requirement::SolidHeight => {
            let solid = own(&|point| Ok(point.solid()?.value))?;
            Required::by(AllowedRange::at_most(solid.most()), ORIGINAL)
        }
        Requirement::StressAtWork => stress(case, |against| {
            over_tolerances(original, |point| Ok(point.stress_at(working, against)?.value))
        })?,
        Requirement::StressAtSolid => stress(case, |against| {
            over_tolerances(original, |point| Ok(point.stress_at_solid(against)?.value))
        })?,
        Requirement::Reserve => {
            let left = own(&|point| Ok((working - point.solid()?).value))?;
            match least_gaps(case, original) {
                Some(gaps) => Required::at_least(gaps.value, gaps::SOURCE, Some(left)),
                None => Required::by(AllowedRange::at_least(left.least()), ORIGINAL),
            }
        }
        Requirement::Buckling => {
            let own = original.poisson().and_then(|ratio| {
                over_tolerances(original, |point| {
                    Ok(point.buckling_height(case.asked.seating, ratio)?.value)
                })
            });
            Required::at_most(working.value, buckling::SOURCE, own.ok())
        }
        Requirement::Fatigue => {
            let own =
                over_tolerances(original, |point| Ok(endurance(original, case, point)?.safety()));
            Required::at_least(LEAST_SAFETY, COMMON, own.ok())
        }
        Requirement::NestHeight
        | Requirement::Deviation
        | Requirement::OuterHand
        | Requirement::InnerHand
        | Requirement::Hand
        | Requirement::Ends => return Err(Vec::new()),
    })
}

fn load(original: &Drawing, height: Length) -> Result<Required, Vec<Missing>> {
    let load = Whose::Original.lacks(original.load(height))?.map(|load| load.value);
    Ok(Required::like(&load, || load_allowance(original, load.nominal())))
}

/// Which stress an allowable one is compared with: as asked, else as the candidate's steel has it, else
/// with the factor for the inside of the coil, which is never below the plain stress.
pub(super) fn against(case: &Case, given: Option<Allowable>) -> Against {
    let allowable = given.or_else(|| case.candidate.allowable().ok());
    allowable.map_or(Against::Wahl, |allowable| allowable.against)
}

/// The factor of safety for a life without end, by the strength of the metal as wound.
pub(super) fn endurance(of: &Drawing, case: &Case, point: &Point) -> Result<Endured, Figures> {
    let Some(cycle) = case.asked.cycle else { return Err(Figure::FatigueTests.into()) };
    let as_wound = Drawing { presetting: None, ..of.clone() };
    let strength = both(of.tensile(), as_wound.allowable());
    let ((tensile, allowable), _) = both(strength, point.coil())?;
    let surface = of.surface.unwrap_or(Surface::Unpeened);
    point.endurance(cycle, tensile, allowable, surface)
}

/// What the candidate's steel is allowed, or no more than the original has: in the same steel for sure,
/// in one that is not known as far as it is as drawn.
pub(super) fn stress(
    case: &Case,
    of_original: impl Fn(Against) -> Result<Range<f64>, Figures>,
) -> Result<Required, Vec<Missing>> {
    let Case { original, candidate, .. } = case;
    let of_one_steel = match (original.steel, candidate.steel) {
        (Some(original), Some(candidate)) => original.id() == candidate.id(),
        (None, None) => original.allowable.is_some() && original.allowable == candidate.allowable,
        _ => false,
    };
    if let Ok(allowable) = candidate.allowable() {
        let own = of_original(allowable.against).ok().filter(|_| of_one_steel);
        let most = allowable.stress.value;
        let required = Required::at_most(most, ORIGINAL, own);
        let by_steel = required.limits.most == Some(most);
        let source = if by_steel { candidate.allowable_source() } else { required.source };
        return Ok(Required { source, ..required });
    }
    let own = Whose::Original.lacks(of_original(against(case, None)));
    let unstated = match (original.steel, candidate.steel) {
        _ if of_one_steel => Vec::new(),
        (Some(_), None) => return Err(Whose::Candidate.figures(Figure::Steel.into())),
        (None, None) if original.allowable.is_none() => vec![
            Missing { whose: Whose::Original, figure: Figure::Steel },
            Missing { whose: Whose::Candidate, figure: Figure::Steel },
        ],
        _ => return Err(Whose::Candidate.figures(Figure::AllowableStress.into())),
    };
    Ok(Required { unstated, ..Required::by(AllowedRange::at_most(own?.most()), ORIGINAL) })
}

fn free_allowance(original: &Drawing, free: f64) -> Sourced<f64> {
    let point = Point::nominal(original);
    match (cold_wound(original, &point), point.rate()) {
        (Some(cold), Ok(rate)) => {
            let allowance = cold.free_height(Grade::Two, rate);
            Sourced { value: allowance.value.value, source: allowance.source }
        }
        _ => Sourced { value: FREE_SHARE * free, source: COMMON },
    }
}

fn load_allowance(original: &Drawing, value: f64) -> Sourced<f64> {
    match cold_wound(original, &Point::nominal(original)) {
        Some(cold) => {
            let allowance = cold.load(Grade::Two, si(value));
            Sourced { value: allowance.value.value, source: allowance.source }
        }
        None => Sourced { value: LOAD_SHARE * value, source: COMMON },
    }
}

fn cold_wound(of: &Drawing, point: &Point) -> Option<ColdWound> {
    if of.coiling != Some(Coiling::Cold) {
        return None;
    }
    ColdWound::new(point.coil().ok()?, point.turns().ok()?, point.free().ok()?).ok()
}

/// The least gaps between the turns of the candidate itself. Which apply hangs on its ends: an end that is
/// not known makes no gap smaller.
pub(super) fn own_gaps(case: &Case) -> Result<Required, Vec<Missing>> {
    let candidate = &case.candidate;
    let point = Point::nominal(candidate);
    let known = both(
        both(point.coil(), point.turns()).map(|_| ()),
        candidate.ends.ok_or(Figure::Ends.into()),
    );
    Whose::Candidate.lacks(known)?;
    let gaps = least_gaps(case, candidate);
    let gaps = Whose::Candidate.lacks(gaps.ok_or(Figure::Ends.into()))?;
    Ok(Required::by(AllowedRange::at_least(gaps.value), gaps::SOURCE))
}

fn least_gaps(case: &Case, original: &Drawing) -> Option<Length> {
    let point = Point::nominal(original);
    let (coil, turns) = (point.coil().ok()?, point.turns().ok()?);
    Some(gaps::least(coil, turns, original.coiling?, case.asked.duty))
}

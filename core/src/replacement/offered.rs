//! What the candidate offers to each requirement, over all that varies.

use super::requirement::{Missing, Requirement, Whose, all};
use super::{Case, required, swap};
use crate::drawing::{Drawing, Figures, Point, Range, both, over_tolerances};

/// A figure in SI units, and whose tolerances it would need to be surer.
pub(super) struct OfferedRange {
    pub(super) range: Range<f64>,
    pub(super) unstated: Vec<Missing>,
}

impl OfferedRange {
    pub(super) fn of(whose: Whose, range: Range<f64>) -> Self {
        Self { range, unstated: whose.figures(range.unstated()) }
    }

    /// From two figures that fall and rise independently of each other: the least lies where the one is
    /// least and the other most.
    fn difference(
        (more, whose_more): (Range<f64>, Whose),
        (less, whose_less): (Range<f64>, Whose),
        half: f64,
    ) -> Self {
        let apart = |more: f64, less: f64| (more - less) * half;
        let ends = [apart(more.least(), less.most()), apart(more.most(), less.least())];
        let mut unstated = whose_more.figures(more.unstated());
        unstated.extend(whose_less.figures(less.unstated()));
        let nominal = apart(more.nominal(), less.nominal());
        Self { range: Range::spanning(nominal, ends.into_iter()), unstated }
    }
}

/// The coil around and the coil within that a gap lies between, one of them the spring in question.
///
/// # Errors
/// Nothing is named where there is no such neighbour.
pub(super) fn neighbours<'a>(
    requirement: Requirement,
    case: &'a Case,
    spring: (Whose, &'a Drawing),
) -> Result<[(Whose, &'a Drawing); 2], Vec<Missing>> {
    let seated = |neighbour: Option<(Whose, &'a super::Seated)>| {
        neighbour.map(|(whose, seated)| (whose, &seated.spring)).ok_or_else(Vec::new)
    };
    Ok(match requirement {
        Requirement::OuterGap => [seated(case.outer_neighbour())?, spring],
        _ => [spring, seated(case.inner_neighbour())?],
    })
}

/// The radial gap of a coil within another, the inner one grown to solid and the other not.
pub(super) fn gap(
    (whose_outer, outer): (Whose, &Drawing),
    (whose_inner, inner): (Whose, &Drawing),
) -> Result<OfferedRange, Vec<Missing>> {
    let inside = whose_outer.lacks(outer.inside());
    let outside = whose_inner.lacks(inner.outside_at_solid());
    let (inside, outside) = all(inside, outside)?;
    let (inside, outside) = (inside.map(|it| it.value), outside.map(|it| it.value));
    Ok(OfferedRange::difference((inside, whose_outer), (outside, whose_inner), 0.5))
}

/// The figure, from the least to the most.
///
/// # Errors
/// What is missing for it.
pub(super) fn figure(requirement: Requirement, case: &Case) -> Result<OfferedRange, Vec<Missing>> {
    let candidate = &case.candidate;
    let over = |figure: &dyn Fn(&Point) -> Result<f64, Figures>| {
        let range = Whose::Candidate.lacks(over_tolerances(candidate, figure))?;
        Ok(OfferedRange::of(Whose::Candidate, range))
    };
    let load = |height| {
        let load = Whose::Candidate.lacks(candidate.load(height))?;
        Ok(OfferedRange::of(Whose::Candidate, load.map(|load| load.value)))
    };
    let working = case.asked.working.unwrap_or_default();
    match requirement {
        Requirement::Pocket => over(&|point| Ok(point.outside_at_solid()?.value)),
        Requirement::Post => over(&|point| Ok(point.coil()?.inside().value)),
        Requirement::OuterGap | Requirement::InnerGap => {
            let [outer, inner] = neighbours(requirement, case, (Whose::Candidate, candidate))?;
            gap(outer, inner)
        }
        Requirement::FreeHeight => over(&|point| Ok(point.free()?.value)),
        Requirement::Rate => over(&|point| Ok(point.rate()?.value)),
        Requirement::Load => load(working),
        Requirement::LoadAt(place) => {
            let stated = case.original.loads.get(usize::from(place)).ok_or_else(Vec::new)?;
            load(stated.height)
        }
        Requirement::SolidHeight => over(&|point| Ok(point.solid()?.value)),
        Requirement::StressAtWork => {
            let against = required::against(case, case.asked.stress_at_work);
            over(&|point| Ok(point.stress_at(working, against)?.value))
        }
        Requirement::StressAtSolid => {
            let against = required::against(case, case.asked.stress_at_solid);
            over(&|point| Ok(point.stress_at_solid(against)?.value))
        }
        Requirement::Reserve => over(&|point| Ok((working - point.solid()?).value)),
        Requirement::Buckling => {
            let poisson = Whose::Candidate.lacks(candidate.poisson());
            let own = over(&|point| Ok(both(point.coil(), point.free())?.1.value));
            let (poisson, _) = all(poisson, own)?;
            over(&|point| Ok(point.buckling_height(case.asked.seating, poisson)?.value))
        }
        Requirement::Fatigue => {
            over(&|point| Ok(required::endurance(candidate, case, point)?.safety()))
        }
        Requirement::NestHeight => swap::nest_height(case),
        Requirement::Deviation => swap::deviation(case),
        Requirement::OuterHand | Requirement::InnerHand | Requirement::Hand | Requirement::Ends => {
            Err(Vec::new())
        }
    }
}

//! What the candidate offers to each requirement, over all its tolerances.

use super::particulars::Figure;
use super::point::{Point, both};
use super::range::Range;
use super::requirement::{Missing, Requirement, Whose};
use super::{Case, corners, swap, wish};
use crate::nest::clearance;

/// What the candidate offers in SI units.
pub(super) fn figure(requirement: Requirement, case: &Case) -> Result<Range<f64>, Vec<Missing>> {
    let candidate = &case.candidate;
    let over = |figure: &dyn Fn(&Point) -> Result<f64, Vec<Figure>>| {
        Whose::Candidate.lacks(corners::range(candidate, figure))
    };
    let working = case.asked.working.unwrap_or_default();
    match requirement {
        Requirement::Pocket => over(&|point| Ok(point.outside_at_solid()?.value)),
        Requirement::Post => over(&|point| Ok(point.coil()?.inside().value)),
        Requirement::OuterGap => {
            let (whose, outer) = case.outer_neighbour().ok_or_else(Vec::new)?;
            let outer = whose.lacks(Point::nominal(&outer.spring).coil());
            let own = over(&|point| Ok(point.outside_at_solid()?.value));
            let (outer, _) = both(outer, own)?;
            over(&|point| Ok(clearance::radial_grown(outer, point.coil()?, point.growth()?).value))
        }
        Requirement::InnerGap => {
            let (whose, inner) = case.inner_neighbour().ok_or_else(Vec::new)?;
            let inner = Point::nominal(&inner.spring);
            let inner = whose.lacks(both(inner.coil(), inner.growth()));
            let own = over(&|point| Ok(point.coil()?.inside().value));
            let ((inner, growth), _) = both(inner, own)?;
            over(&|point| Ok(clearance::radial_grown(point.coil()?, inner, growth).value))
        }
        Requirement::FreeHeight => over(&|point| Ok(point.free()?.value)),
        Requirement::Rate => over(&|point| Ok(point.rate()?.value)),
        Requirement::Load => over(&|point| Ok(point.load(working)?.value)),
        Requirement::SolidHeight => over(&|point| Ok(point.solid()?.value)),
        Requirement::StressAtWork => {
            let bearable = wish::bearable(case, case.asked.stress_at_work)?;
            over(&|point| Ok(point.stress_at(working, bearable)?.value))
        }
        Requirement::StressAtSolid => {
            let bearable = wish::bearable(case, case.asked.stress_at_solid)?;
            over(&|point| Ok(point.stress_at_solid(bearable)?.value))
        }
        Requirement::Reserve => over(&|point| Ok((working - point.solid()?).value)),
        Requirement::Buckling => {
            let poisson = Whose::Candidate.lacks(candidate.poisson());
            let own = over(&|point| Ok(both(point.coil(), point.free())?.1.value));
            let (poisson, _) = both(poisson, own)?;
            over(&|point| Ok(point.buckling_height(case.asked.seating, poisson)?.value))
        }
        Requirement::Fatigue => over(&|point| wish::endurance(candidate, case, point)),
        Requirement::NestHeight => swap::nest_height(case),
        Requirement::Deviation => swap::deviation(case),
        Requirement::OuterHand | Requirement::InnerHand | Requirement::Hand | Requirement::Ends => {
            Err(Vec::new())
        }
    }
}

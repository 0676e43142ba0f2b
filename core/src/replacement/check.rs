//! Whether particulars make a spring at every end of their tolerances.

use super::Case;
use super::asked::{AskedField, ReplacementError};
use super::limits::Amount;
use super::requirement::Whose;
use crate::coil::DiameterKind;
use crate::coil::ends::Turns;
use crate::drawing::{Drawing, Figure, Given};
use crate::nest::NestError;

/// Whether a case can be judged.
pub(super) fn case(case: &Case) -> Result<(), ReplacementError> {
    case.asked.check()?;
    spring(Whose::Original, &case.original)?;
    spring(Whose::Candidate, &case.candidate)?;
    let Some(nest) = &case.nest else { return Ok(()) };
    for (place, seated) in nest.outer.iter().enumerate() {
        spring(Whose::Outer(place), &seated.spring)?;
    }
    for (place, seated) in nest.inner.iter().enumerate() {
        spring(Whose::Inner(place), &seated.spring)?;
    }
    let raises = nest.outer.iter().chain(&nest.inner).map(|seated| seated.raise);
    if raises.chain([nest.raise]).any(|raise| !raise.value.is_finite()) {
        return Err(ReplacementError::Nest(NestError::NotFinite { what: "raise" }));
    }
    if let Some(load) = nest.load
        && !(load.value >= 0.0 && load.value.is_finite())
    {
        return Err(ReplacementError::Negative {
            asked: AskedField::NestLoad,
            amount: Amount::Load(load),
        });
    }
    for (neighbour, hand) in [case.outer_neighbour(), case.inner_neighbour()]
        .into_iter()
        .flatten()
        .filter_map(|(whose, seated)| Some((whose, seated.spring.hand?)))
    {
        if let Some(asked) = case.asked.hand.filter(|asked| *asked == hand) {
            return Err(ReplacementError::HandOfNeighbour { asked, neighbour });
        }
    }
    Ok(())
}

/// Whether particulars make a spring, as far as they are known.
pub(super) fn spring(whose: Whose, of: &Drawing) -> Result<(), ReplacementError> {
    let above_zero = [
        (Figure::Bar, of.bar.map(|it| it.map(Amount::Length))),
        (Figure::Diameter, of.diameter.map(|(_, it)| it.map(Amount::Length))),
        (Figure::TotalTurns, of.total_turns.map(|it| it.map(Amount::Number))),
        (Figure::FreeHeight, of.free.map(|it| it.map(Amount::Length))),
        (Figure::SolidHeight, of.solid.map(|it| it.map(Amount::Length))),
        (Figure::Rate, of.rate.map(|it| it.map(Amount::Rate))),
        (Figure::ShearModulus, of.shear().map(|it| it.map(Amount::Stress))),
        (Figure::YoungsModulus, of.youngs_modulus.map(|it| Given::exact(Amount::Stress(it)))),
        (Figure::AllowableStress, of.allowable.map(|it| Given::exact(Amount::Stress(it.stress)))),
        (Figure::TensileStrength, of.tensile.map(|it| Given::exact(Amount::Stress(it)))),
    ];
    for (figure, given) in above_zero {
        let Some(range) = given.map(|given| given.range(figure)) else { continue };
        if !(range.least().si() > 0.0 && range.most().si().is_finite()) {
            let amount = range.least();
            return Err(ReplacementError::Figure { whose, figure, amount });
        }
    }
    if let (Some(bar), Some((across, diameter))) = (of.bar, of.diameter) {
        let (bar, diameter) = (bar.range(Figure::Bar), diameter.range(Figure::Diameter));
        // The hole is the least where the bar is thickest and the coil narrowest; an inside diameter
        // is the hole itself.
        let bar = if across == DiameterKind::Inside { bar.nominal() } else { bar.most() };
        across.coil(bar, diameter.least()).map_err(|_| ReplacementError::Coil { whose })?;
    }
    if let (Some(total), Some(dead)) = (of.total_turns, of.dead()) {
        let (total, dead) = (total.range(Figure::TotalTurns), dead.range(Figure::DeadTurns));
        Turns::new(total.least(), dead.most()).map_err(|_| ReplacementError::Turns { whose })?;
    }
    match (of.solid(), of.free()) {
        (Ok(solid), Ok(free)) if solid.most() >= free.least() => {
            let (solid, free) = (solid.most(), free.least());
            Err(ReplacementError::SolidNotBelowFree { whose, solid, free })
        }
        _ => Ok(()),
    }
}

//! Needs that no coil can meet, found before any search.

use super::design::Bar;
use super::need::{Allowed, Need, Stiffness};
use crate::coil::ends::LEAST_ACTIVE_TURNS;
use crate::material::StrengthError;
use crate::quantity::unit::degree;
use crate::quantity::{
    Angle, Force, Kind, Length, MassDensity, Modulus, Pressure, SpringRate, Stress, System, write,
    write_number,
};
use thiserror::Error;

/// The most cells of a map, or pairs times turns of a nested search.
pub const MOST_CELLS: usize = 1_000_000;

/// Why there is nothing to search for. Where two things contradict each other, both are named.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum NeedError {
    /// A load that is not above zero.
    #[error(
        "a {what} of {}; one above zero was expected: give what the coil carries, without a sign",
        metric::<Force>(*.load)
    )]
    Load {
        /// Which.
        what: &'static str,
        /// What was given.
        load: Force,
    },
    /// A length that is not above zero, or below zero where zero will do.
    #[error(
        "{what}: {}; {expected} was expected: see whether it was left out or has a sign too many",
        metric::<Length>(*.length)
    )]
    Length {
        /// Which.
        what: &'static str,
        /// What was given.
        length: Length,
        /// What was expected.
        expected: &'static str,
    },
    /// A rate that is not above zero.
    #[error(
        "a rate of {}; one above zero was expected: give the load that closes the coil by one unit of length",
        metric::<SpringRate>(*.rate)
    )]
    Rate {
        /// What was given.
        rate: SpringRate,
    },
    /// A tolerance or a share out of its range.
    #[error(
        "{what}: {}; a share from {} to {} was expected: 0.05 is a twentieth",
        write_number(*.share, 4), write_number(*.least, 4), write_number(*.most, 4)
    )]
    Share {
        /// Which.
        what: &'static str,
        /// What was given.
        share: f64,
        /// The least.
        least: f64,
        /// The most.
        most: f64,
    },
    /// Dead turns below zero, or not a number.
    #[error(
        "{} dead turns; a count from 0 up was expected: 2 is usual for closed ends",
        write_number(*.dead, 4)
    )]
    DeadTurns {
        /// What was given.
        dead: f64,
    },
    /// A stress that is not above zero.
    #[error(
        "{what}: {}; a stress above zero was expected: take it from the steel's table or its certificate",
        metric::<Stress>(*.stress)
    )]
    Stress {
        /// Which.
        what: &'static str,
        /// What was given.
        stress: Pressure,
    },
    /// Shear modulus or Poisson's ratio of no metal.
    #[error(
        "a shear modulus of {} with a Poisson's ratio of {}; one above zero with a ratio from 0 to 0.5 was expected: take both from the steel's table",
        metric::<Modulus>(*.shear_modulus), write_number(*.poisson, 4)
    )]
    Moduli {
        /// Shear modulus.
        shear_modulus: Pressure,
        /// Poisson's ratio.
        poisson: f64,
    },
    /// A density that is not above zero.
    #[error(
        "a density of {} kg/m³; one above zero was expected: that of spring steel is 7850 kg/m³",
        write_number(.density.value, 4)
    )]
    Density {
        /// What was given.
        density: MassDensity,
    },
    /// A range of the index that does not rise from 2.
    #[error(
        "an index from {} to {}; a range that rises from 2 or more was expected: 4 to 12 is usual",
        write_number(*.least, 4), write_number(*.most, 4)
    )]
    Index {
        /// The least.
        least: f64,
        /// The greatest.
        most: f64,
    },
    /// A greatest pitch angle that is not between zero and upright.
    #[error(
        "a greatest pitch angle of {}°; one above zero and below a right angle was expected: 7.5° is usual",
        write_number(.angle.get::<degree>(), 4)
    )]
    PitchAngle {
        /// What was given.
        angle: Angle,
    },
    /// No bars or no turns.
    #[error("no {what} to choose from; at least one was expected: give a list of sizes")]
    Nothing {
        /// Bars or turns.
        what: &'static str,
    },
    /// Turns that make no spring.
    #[error(
        "{} active turns to choose from; {} or more were expected: give turns that deflect",
        write_number(*.active, 4), write_number(LEAST_ACTIVE_TURNS, 4)
    )]
    Turns {
        /// The turns.
        active: f64,
    },
    /// More to try than [`MOST_CELLS`].
    #[error(
        "{bars} bars and {turns} turns make {count} coils to try; at most {MOST_CELLS} were expected: take fewer sizes or coarser steps"
    )]
    TooMany {
        /// How many bars.
        bars: usize,
        /// How many turns.
        turns: usize,
        /// How many coils.
        count: usize,
    },
    /// Two loads at one height.
    #[error(
        "both loads are at a height of {}; two heights were expected: give the second load where the coil stands lower or higher",
        metric::<Length>(*.height)
    )]
    SameHeight {
        /// The height.
        height: Length,
    },
    /// A second load without a first height.
    #[error(
        "a second load at a height of {}, but no height of the first; both or neither were expected: give the first height, or a rate",
        metric::<Length>(*.height)
    )]
    NoFirstHeight {
        /// The height of the second load.
        height: Length,
    },
    /// The greater load is at the greater height.
    #[error(
        "{} at a height of {} and {} at {}; the greater load at the lower height was expected: see whether the heights were exchanged",
        metric::<Force>(*.load), metric::<Length>(*.height), metric::<Force>(*.second), metric::<Length>(*.at)
    )]
    SecondLoad {
        /// The first load.
        load: Force,
        /// Its height.
        height: Length,
        /// The second load.
        second: Force,
        /// Its height.
        at: Length,
    },
    /// The greatest solid height is not below the lowest height at work.
    #[error(
        "a greatest solid height of {} and a lowest height at work of {}; the solid height below the other was expected: give the solid height that the room allows, or none",
        metric::<Length>(*.solid), metric::<Length>(*.lowest)
    )]
    SolidAboveWork {
        /// The greatest solid height.
        solid: Length,
        /// The lowest height at work.
        lowest: Length,
    },
    /// The reserve leaves no height for the bar.
    #[error(
        "a reserve of {} above solid and a lowest height at work of {}; a reserve well below that height was expected: take less of it",
        metric::<Length>(*.reserve), metric::<Length>(*.lowest)
    )]
    ReserveAboveWork {
        /// The reserve that is asked for.
        reserve: Length,
        /// The lowest height at work.
        lowest: Length,
    },
    /// The greatest free height is below the one that height, load and rate make.
    #[error(
        "a greatest free height of {}, but load and rate at that height make it {} at the least; as much as that was expected: allow more free height, or take a stiffer coil",
        metric::<Length>(*.most), metric::<Length>(*.free)
    )]
    FreeBelowWork {
        /// The greatest free height.
        most: Length,
        /// The least that comes of load, height and rate, with their tolerances.
        free: Length,
    },
    /// What stands inside is not narrower than what stands around.
    #[error(
        "{within} takes {} and {around} leaves {}, clearances counted; more room between them was expected: see whether they were exchanged",
        metric::<Length>(*.inner), metric::<Length>(*.outer)
    )]
    NoRoom {
        /// The post or the inner coil.
        within: &'static str,
        /// The diameter that it takes.
        inner: Length,
        /// The pocket or the outer coil.
        around: &'static str,
        /// The diameter that it leaves.
        outer: Length,
    },
    /// No bar of the list can be wound into the room.
    #[error(
        "the narrowest coil of the bars given, of a bar of {}, is {} across and {around} leaves {}; less was expected: take thinner bars, or a smaller least index",
        metric::<Length>(*.bar), metric::<Length>(*.outside), metric::<Length>(*.outer)
    )]
    NoBarFits {
        /// The bar of the narrowest coil.
        bar: Length,
        /// Its outside diameter.
        outside: Length,
        /// The pocket or the outer coil.
        around: &'static str,
        /// The diameter that it leaves.
        outer: Length,
    },
    /// The load is more than any bar bears in the room.
    #[error(
        "a load of {}, but in the room across the bars given bear {} at the most, wound of {}; no more than that was expected: give more room, thicker bars, a stronger steel, or share the load among more coils",
        metric::<Force>(*.load), metric::<Force>(*.most), metric::<Length>(*.bar)
    )]
    RoomCannotCarry {
        /// The load, less its tolerance.
        load: Force,
        /// The most that the best bar bears, whatever its turns; twice that for a pair.
        most: Force,
        /// That bar.
        bar: Length,
    },
    /// No strength is held for any of the bars.
    #[error("no bar given has a strength: {0}")]
    NoStrength(StrengthError),
}

fn metric<K: Kind>(value: K::Value) -> String {
    write::<K>(value, System::Metric)
}

fn above_zero(si: f64) -> bool {
    si > 0.0 && si.is_finite()
}

fn length(what: &'static str, length: Length) -> Result<(), NeedError> {
    let expected = "a length above zero";
    above_zero(length.value).then_some(()).ok_or(NeedError::Length { what, length, expected })
}

fn length_or_nought(what: &'static str, length: Length) -> Result<(), NeedError> {
    let expected = "a length of zero or more";
    let good = length.value >= 0.0 && length.value.is_finite();
    good.then_some(()).ok_or(NeedError::Length { what, length, expected })
}

/// A step in which sizes go, if there is one.
pub(super) fn step(what: &'static str, step: Option<Length>) -> Result<(), NeedError> {
    step.map_or(Ok(()), |step| length(what, step))
}

fn load(what: &'static str, load: Force) -> Result<(), NeedError> {
    above_zero(load.value).then_some(()).ok_or(NeedError::Load { what, load })
}

pub(super) fn share(what: &'static str, share: f64, most: f64) -> Result<(), NeedError> {
    let good = (0.0..=most).contains(&share);
    good.then_some(()).ok_or(NeedError::Share { what, share, least: 0.0, most })
}

/// Every number by itself.
pub(super) fn numbers(need: &Need) -> Result<(), NeedError> {
    let Need { work, room, reserve, make, metal } = need;
    load("load", work.load)?;
    share("the tolerance of the load", work.within, 1.0)?;
    if let Some(height) = work.height {
        length("the height at the load", height)?;
    }
    match work.stiffness {
        Stiffness::Rate { rate, within } => {
            if !above_zero(rate.value) {
                return Err(NeedError::Rate { rate });
            }
            share("the tolerance of the rate", within, 1.0)?;
        }
        Stiffness::SecondLoad { load: second, height, within } => {
            load("second load", second)?;
            length("the height at the second load", height)?;
            share("the tolerance of the second load", within, 1.0)?;
        }
    }
    for (what, given) in [
        ("the pocket", room.pocket),
        ("the post", room.post),
        ("the greatest solid height", room.solid),
        ("the greatest free height", room.free),
    ] {
        if let Some(given) = given {
            length(what, given)?;
        }
    }
    let growth = room.inner.map(|inner| inner.growth).unwrap_or_default();
    for (what, given) in [
        ("the clearance", room.clearance),
        ("the gap to a neighbour", room.gap.unwrap_or_default()),
        ("the growth of the inner coil", growth),
        ("the reserve to solid", reserve.length),
    ] {
        length_or_nought(what, given)?;
    }
    share("the reserve as a share of the deflection", reserve.share, 10.0)?;
    if !(0.0..1000.0).contains(&make.dead_turns) {
        return Err(NeedError::DeadTurns { dead: make.dead_turns });
    }
    let Some(most) = Some(make.most_index).filter(|most| most.is_finite()) else {
        return Err(NeedError::Index { least: make.least_index, most: make.most_index });
    };
    if !(make.least_index >= 2.0 && make.least_index < most) {
        return Err(NeedError::Index { least: make.least_index, most });
    }
    let angle = make.most_pitch_angle;
    if !(angle.value > 0.0 && angle.value < core::f64::consts::FRAC_PI_2) {
        return Err(NeedError::PitchAngle { angle });
    }
    if !(above_zero(metal.shear_modulus.value) && (0.0..=0.5).contains(&metal.poisson)) {
        let (shear_modulus, poisson) = (metal.shear_modulus, metal.poisson);
        return Err(NeedError::Moduli { shear_modulus, poisson });
    }
    if !above_zero(metal.density.value) {
        return Err(NeedError::Density { density: metal.density });
    }
    allowed("the stress allowed at load", Some(metal.at_load))?;
    allowed("the stress allowed at solid", metal.at_solid)
}

fn allowed(what: &'static str, allowed: Option<Allowed>) -> Result<(), NeedError> {
    match allowed {
        Some(Allowed::Stress { stress, .. }) if !above_zero(stress.value) => {
            Err(NeedError::Stress { what, stress })
        }
        Some(Allowed::Share { share, .. }) if !(share > 0.0 && share <= 1.0) => {
            Err(NeedError::Share { what, share, least: 0.0, most: 1.0 })
        }
        _ => Ok(()),
    }
}

/// Bars and turns to choose from.
pub(super) fn choice(bars: &[Length], turns: &[f64], count: usize) -> Result<(), NeedError> {
    for (what, empty) in [("bars", bars.is_empty()), ("counts of turns", turns.is_empty())] {
        if empty {
            return Err(NeedError::Nothing { what });
        }
    }
    for bar in bars {
        length("a bar to choose from", *bar)?;
    }
    let usable = |active: f64| active >= LEAST_ACTIVE_TURNS && active.is_finite();
    if let Some(active) = turns.iter().copied().find(|active| !usable(*active)) {
        return Err(NeedError::Turns { active });
    }
    if count > MOST_CELLS {
        return Err(NeedError::TooMany { bars: bars.len(), turns: turns.len(), count });
    }
    Ok(())
}

/// Loads, heights and reserve against each other.
pub(super) fn heights(need: &Need) -> Result<(), NeedError> {
    let Need { work, room, reserve, .. } = need;
    let mut within_of_rate = 0.0;
    match (work.stiffness, work.height) {
        (Stiffness::Rate { within, .. }, _) => within_of_rate = within,
        (Stiffness::SecondLoad { height, .. }, None) => {
            return Err(NeedError::NoFirstHeight { height });
        }
        (Stiffness::SecondLoad { load: second, height: at, .. }, Some(height)) => {
            if (at - height).abs() <= 1e-9 * height {
                return Err(NeedError::SameHeight { height });
            }
            if !above_zero(work.rate().value) {
                return Err(NeedError::SecondLoad { load: work.load, height, second, at });
            }
        }
    }
    let Some(lowest) = work.lowest() else { return Ok(()) };
    if let Some(solid) = room.solid.filter(|solid| *solid >= lowest) {
        return Err(NeedError::SolidAboveWork { solid, lowest });
    }
    let deflection = work.greatest() / work.rate();
    // The softest load and the stiffest rate that the tolerances admit ask for the least.
    let least_deflection = deflection * (1.0 - work.within) / (1.0 + within_of_rate);
    let least_reserve = reserve.length.max(reserve.share * least_deflection);
    if least_reserve >= lowest {
        return Err(NeedError::ReserveAboveWork { reserve: least_reserve, lowest });
    }
    // Of two loads, the rate of a drawing may lie further off than either; that is left to the search.
    if let (Some(most), Stiffness::Rate { .. }) = (room.free, work.stiffness) {
        let free = lowest + least_deflection;
        if most < free * (1.0 - 1e-9) {
            return Err(NeedError::FreeBelowWork { most, free });
        }
    }
    Ok(())
}

/// A diameter that bounds the room across, and what it is of.
#[derive(Clone, Copy)]
struct Bound {
    what: &'static str,
    diameter: Length,
}

/// Whether any of the bars can be wound into the room.
pub(super) fn width(need: &Need, bars: &[Bar]) -> Result<(), NeedError> {
    let (inner, outer) = bounds(need);
    let inside = inner.map(|bound| bound.diameter).unwrap_or_default();
    let Some(outer) = outer else { return Ok(()) };
    if let Some(inner) = inner.filter(|inner| inner.diameter >= outer.diameter) {
        return Err(NeedError::NoRoom {
            within: inner.what,
            inner: inner.diameter,
            around: outer.what,
            outer: outer.diameter,
        });
    }
    let narrowest = |bar: &Bar| (narrowest(need, bar.size, inside) + bar.size, bar.size);
    let least = bars.iter().map(narrowest).reduce(|a, b| if b.0 < a.0 { b } else { a });
    match least.filter(|(outside, _)| *outside > outer.diameter * (1.0 + 1e-9)) {
        None => Ok(()),
        Some((outside, bar)) => {
            let Bound { what: around, diameter: outer } = outer;
            Err(NeedError::NoBarFits { bar, outside, around, outer })
        }
    }
}

/// The most that any of the bars bears in the room across, whatever its turns, and that bar.
///
/// ```text
/// F = π · d² · τz / (8 · K · C)
/// ```
/// at the least index that room and making admit: from an index of 2 up, K·C rises with C.
///
/// Of a pair neither coil bears more than that, and both together no more than twice that.
pub(super) fn strength(need: &Need, bars: &[Bar], coils: f64) -> Result<(), NeedError> {
    let (inner, outer) = bounds(need);
    let inside = inner.map(|bound| bound.diameter).unwrap_or_default();
    let mut best: Option<(Force, Length)> = None;
    let mut refusal = None;
    for bar in bars {
        let (stress, factor) = match bar.at_load {
            Ok(allowed) => allowed,
            Err(error) => {
                refusal = refusal.or(Some(error));
                continue;
            }
        };
        let mean = narrowest(need, bar.size, inside);
        let fits = outer.is_none_or(|outer| mean + bar.size <= outer.diameter * (1.0 + 1e-9));
        let index = (mean / bar.size).value;
        if !(fits && index <= need.make.most_index * (1.0 + 1e-9)) {
            continue;
        }
        let area = core::f64::consts::PI * bar.size * bar.size;
        let most = coils * area * stress / (8.0 * factor.at(index) * index);
        if best.is_none_or(|(force, _)| most > force) {
            best = Some((most, bar.size));
        }
    }
    let load = need.work.greatest() * (1.0 - tolerance_of_greatest(need));
    match (best, refusal) {
        (Some((most, bar)), _) if load > most * (1.0 + 1e-9) => {
            Err(NeedError::RoomCannotCarry { load, most, bar })
        }
        (None, Some(refusal)) if bars.iter().all(|bar| bar.at_load.is_err()) => {
            Err(NeedError::NoStrength(refusal))
        }
        _ => Ok(()),
    }
}

/// What the load at the lowest height may be off.
fn tolerance_of_greatest(need: &Need) -> f64 {
    match need.work.stiffness {
        Stiffness::SecondLoad { load, within, .. } if load > need.work.load => within,
        _ if need.work.height.is_none() => 0.0,
        _ => need.work.within,
    }
}

/// The narrowest mean diameter of a bar over an inside bound.
fn narrowest(need: &Need, bar: Length, inside: Length) -> Length {
    (need.make.least_index * bar).max(inside + bar)
}

/// What bounds the coil from within and from without, growth left out.
fn bounds(need: &Need) -> (Option<Bound>, Option<Bound>) {
    let room = &need.room;
    // Where the usual gap is left, less than none never will be.
    let gap = 2.0 * room.gap.unwrap_or_default();
    let bound = |what, diameter| Bound { what, diameter };
    let post = room.post.map(|post| bound("the post", post + 2.0 * room.clearance));
    let inner =
        room.inner.map(|inner| bound("the inner coil", inner.coil.outside() + inner.growth + gap));
    let pocket = room.pocket.map(|pocket| bound("the pocket", pocket - 2.0 * room.clearance));
    let outer = room.outer.map(|outer| bound("the outer coil", outer.inside() - gap));
    let wider = |a: Bound, b: Bound| if a.diameter >= b.diameter { a } else { b };
    let narrower = |a: Bound, b: Bound| if a.diameter <= b.diameter { a } else { b };
    (post.into_iter().chain(inner).reduce(wider), pocket.into_iter().chain(outer).reduce(narrower))
}

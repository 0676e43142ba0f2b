//! Needs that no coil can meet, found before any search.

use super::design::Bar;
use super::need::{Allowed, Need, Stiffness};
use crate::coil::ends::LEAST_ACTIVE_TURNS;
use crate::material::StrengthError;
use crate::quantity::{Angle, Force, Length, MassDensity, Pressure, SpringRate, System};
use crate::say::{Say, fields, says};
use thiserror::Error;

/// The most cells of a map, or pairs times turns of a nested search.
pub const MOST_CELLS: usize = 1_000_000;

fields! {
    /// What a need says.
    NeedField {
        /// The load.
        Load = "the load",
        /// The height at which it is carried.
        Height = "the height at the load",
        /// By how much it may be off.
        LoadWithin = "the tolerance of the load",
        /// The rate.
        Rate = "the rate",
        /// By how much the rate may be off.
        RateWithin = "the tolerance of the rate",
        /// A second load in place of a rate.
        SecondLoad = "the second load",
        /// The height at which that is carried.
        SecondHeight = "the height at the second load",
        /// By how much the second load may be off.
        SecondWithin = "the tolerance of the second load",
        /// Bore of the pocket.
        Pocket = "the pocket",
        /// Thickness of the post.
        Post = "the post",
        /// The coil inside.
        InnerCoil = "the inner coil",
        /// The coil around.
        OuterCoil = "the outer coil",
        /// Room in the pocket and over the post.
        Clearance = "the clearance",
        /// Room to a neighbour.
        Gap = "the gap to a neighbour",
        /// What the inner coil grows by.
        Growth = "the growth of the inner coil",
        /// The greatest solid height.
        Solid = "the greatest solid height",
        /// The greatest free height.
        Free = "the greatest free height",
        /// What is left to solid.
        Reserve = "the reserve to solid",
        /// The same as a part of the deflection.
        ReserveShare = "the reserve as a share of the deflection",
        /// The dead turns.
        DeadTurns = "the dead turns",
        /// The range of the index.
        Index = "the index",
        /// The greatest pitch angle.
        PitchAngle = "the greatest pitch angle",
        /// What it is wound of.
        Metal = "the metal",
        /// The stress that it may have under the load.
        StressAtLoad = "the stress allowed at load",
        /// The stress that it may have at solid.
        StressAtSolid = "the stress allowed at solid",
        /// The bars to choose from.
        Bars = "bars",
        /// A bar to choose from.
        Bar = "a bar to choose from",
        /// The counts of turns to choose from.
        Turns = "counts of turns",
        /// The step in which mean diameters go.
        MeanStep = "the step of the mean diameter",
        /// The step in which free heights go.
        FreeStep = "the step of the free height",
        /// How far the solid heights of a pair may be apart.
        SolidApart = "the difference of the solid heights",
        /// How far their stresses may be apart.
        StressApart = "the difference of the stresses",
    }
}

/// Why there is nothing to search for. Where two things contradict each other, both are named.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum NeedError {
    /// A load that is not above zero.
    Load {
        /// Which.
        need: NeedField,
        /// What was given.
        load: Force,
    },
    /// A length that is not above zero.
    NotPositive {
        /// Which.
        need: NeedField,
        /// What was given.
        length: Length,
    },
    /// A length below zero where zero will do.
    Negative {
        /// Which.
        need: NeedField,
        /// What was given.
        length: Length,
    },
    /// A rate that is not above zero.
    Rate {
        /// What was given.
        rate: SpringRate,
    },
    /// A tolerance or a share out of its range.
    Share {
        /// Which.
        need: NeedField,
        /// What was given.
        share: f64,
        /// The least.
        least: f64,
        /// The most.
        most: f64,
    },
    /// Dead turns below zero, or not a number.
    DeadTurns {
        /// What was given.
        dead: f64,
    },
    /// A stress that is not above zero.
    Stress {
        /// Which.
        need: NeedField,
        /// What was given.
        stress: Pressure,
    },
    /// Shear modulus or Poisson's ratio of no metal.
    Moduli {
        /// Shear modulus.
        shear_modulus: Pressure,
        /// Poisson's ratio.
        poisson: f64,
    },
    /// A density that is not above zero.
    Density {
        /// What was given.
        density: MassDensity,
    },
    /// A range of the index that does not rise from 2.
    Index {
        /// The least.
        least: f64,
        /// The greatest.
        most: f64,
    },
    /// A greatest pitch angle that is not between zero and upright.
    PitchAngle {
        /// What was given.
        angle: Angle,
    },
    /// No bars or no turns.
    Nothing {
        /// Bars or turns.
        need: NeedField,
    },
    /// Turns that make no spring.
    Turns {
        /// The turns.
        active: f64,
        /// The fewest that make one.
        least: f64,
    },
    /// More to try than [`MOST_CELLS`].
    TooMany {
        /// How many bars.
        bars: usize,
        /// How many turns.
        turns: usize,
        /// How many coils.
        count: usize,
    },
    /// Two loads at one height.
    SameHeight {
        /// The height.
        height: Length,
    },
    /// A second load without a first height.
    NoFirstHeight {
        /// The height of the second load.
        height: Length,
    },
    /// The greater load is at the greater height.
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
    SolidAboveWork {
        /// The greatest solid height.
        solid: Length,
        /// The lowest height at work.
        lowest: Length,
    },
    /// The reserve leaves no height for the bar.
    ReserveAboveWork {
        /// The reserve that is asked for.
        reserve: Length,
        /// The lowest height at work.
        lowest: Length,
    },
    /// The greatest free height is below the one that height, load and rate make.
    FreeBelowWork {
        /// The greatest free height.
        most: Length,
        /// The least that comes of load, height and rate, with their tolerances.
        free: Length,
    },
    /// What stands inside is not narrower than what stands around.
    NoRoom {
        /// The post or the inner coil.
        within: NeedField,
        /// The diameter that it takes.
        inner: Length,
        /// The pocket or the outer coil.
        around: NeedField,
        /// The diameter that it leaves.
        outer: Length,
    },
    /// No bar of the list can be wound into the room.
    NoBarFits {
        /// The bar of the narrowest coil.
        bar: Length,
        /// Its outside diameter.
        outside: Length,
        /// The pocket or the outer coil.
        around: NeedField,
        /// The diameter that it leaves.
        outer: Length,
    },
    /// The load is more than any bar bears in the room.
    RoomCannotCarry {
        /// The load, less its tolerance.
        load: Force,
        /// The most that the best bar bears, whatever its turns; twice that for a pair.
        most: Force,
        /// That bar.
        bar: Length,
    },
    /// No strength is held for any of the bars.
    NoStrength(StrengthError),
}

says! {
    NeedError through [NoStrength] {
        Load { need, load } =>
            "{need} of {load}", "one above zero", "give what the coil carries, without a sign";
        NotPositive { need, length } =>
            "{need}: {length}", "a length above zero",
            "see whether it was left out or has a sign too many";
        Negative { need, length } =>
            "{need}: {length}", "a length of zero or more", "give it without a sign";
        Rate { rate } =>
            "a rate of {rate}", "one above zero",
            "give the load that closes the coil by one unit of length";
        Share { need, share, least, most } =>
            "{need}: {share}", "a share from {least} to {most}", "0.05 is a twentieth";
        DeadTurns { dead } =>
            "{dead} dead turns", "a count from 0 up", "2 is usual for closed ends";
        Stress { need, stress } =>
            "{need}: {stress}", "a stress above zero",
            "take it from the steel's table or its certificate";
        Moduli { shear_modulus, poisson } =>
            "a shear modulus of {shear_modulus} with a Poisson's ratio of {poisson}",
            "a modulus above zero with a ratio from 0 to 0.5", "take both from the steel's table";
        Density { density } =>
            "a density of {density}", "one above zero", "that of spring steel is 7850 kg/m³";
        Index { least, most } =>
            "an index from {least} to {most}", "a range that rises from 2 or more",
            "4 to 12 is usual";
        PitchAngle { angle } =>
            "a greatest pitch angle of {angle}", "one above zero and below a right angle",
            "7.5° is usual";
        Nothing { need } =>
            "no {need} to choose from", "at least one",
            "give a list of sizes, or take the steel's row for their size";
        Turns { active, least } =>
            "{active} active turns to choose from", "a count of {least} or more",
            "give turns that deflect";
        TooMany { bars, turns, count } =>
            "{bars} bars and {turns} turns, which make {count} coils to try",
            "a number of at most {MOST_CELLS}", "take fewer sizes or coarser steps";
        SameHeight { height } =>
            "both loads are at a height of {height}", "a second height",
            "give the second load where the coil stands lower or higher";
        NoFirstHeight { height } =>
            "a second load at a height of {height}, but no height of the first",
            "the height of the first load", "give it, or a rate";
        SecondLoad { load, height, second, at } =>
            "{load} at a height of {height} and {second} at {at}",
            "the greater load at the lower height", "see whether the heights were exchanged";
        SolidAboveWork { solid, lowest } =>
            "a greatest solid height of {solid} and a lowest height at work of {lowest}",
            "a solid height below the other", "give the solid height that the room allows, or none";
        ReserveAboveWork { reserve, lowest } =>
            "a height at work of {lowest}, of which {reserve} must be left to solid at that load and rate",
            "a height above what must be left", "give more height, or a stiffer coil";
        FreeBelowWork { most, free } =>
            "a greatest free height of {most}, but load, height and rate make it {free} at the least",
            "as much as that", "allow more free height, or take a stiffer coil";
        NoRoom { within, inner, around, outer } =>
            "{within} takes {inner} and {around} leaves {outer}, clearances counted",
            "more room between them", "see whether they were exchanged";
        NoBarFits { bar, outside, around, outer } =>
            "{around} leaves {outer}, and the narrowest coil, of a bar of {bar}, is {outside} across",
            "room for a coil of the bars to choose from",
            "take thinner bars, a smaller least index, or more room";
        RoomCannotCarry { load, most, bar } =>
            "a load of {load}, but in the room across the bars bear {most} at the most, wound of {bar}",
            "no more than that",
            "give more room, thicker bars or a stronger steel, or share the load among more coils";
    }
}

impl NeedError {
    /// What has to change; of two that contradict each other, the first.
    #[must_use]
    pub fn field(&self) -> NeedField {
        match *self {
            Self::Load { need, .. }
            | Self::NotPositive { need, .. }
            | Self::Negative { need, .. }
            | Self::Share { need, .. }
            | Self::Stress { need, .. }
            | Self::Nothing { need }
            | Self::NoRoom { within: need, .. }
            | Self::NoBarFits { around: need, .. } => need,
            Self::Rate { .. } => NeedField::Rate,
            Self::DeadTurns { .. } => NeedField::DeadTurns,
            Self::Moduli { .. } | Self::Density { .. } => NeedField::Metal,
            Self::Index { .. } => NeedField::Index,
            Self::PitchAngle { .. } => NeedField::PitchAngle,
            Self::Turns { .. } => NeedField::Turns,
            Self::TooMany { .. } => NeedField::Bars,
            Self::SameHeight { .. } => NeedField::SecondHeight,
            Self::SecondLoad { .. } => NeedField::SecondLoad,
            Self::NoFirstHeight { .. } | Self::ReserveAboveWork { .. } => NeedField::Height,
            Self::SolidAboveWork { .. } => NeedField::Solid,
            Self::FreeBelowWork { .. } => NeedField::Free,
            Self::RoomCannotCarry { .. } => NeedField::Load,
            Self::NoStrength(_) => NeedField::StressAtLoad,
        }
    }
}

fn above_zero(si: f64) -> bool {
    si > 0.0 && si.is_finite()
}

fn length(need: NeedField, length: Length) -> Result<(), NeedError> {
    above_zero(length.value).then_some(()).ok_or(NeedError::NotPositive { need, length })
}

fn length_or_zero(need: NeedField, length: Length) -> Result<(), NeedError> {
    let good = length.value >= 0.0 && length.value.is_finite();
    good.then_some(()).ok_or(NeedError::Negative { need, length })
}

/// A step in which sizes go, if there is one.
pub(super) fn step(need: NeedField, step: Option<Length>) -> Result<(), NeedError> {
    step.map_or(Ok(()), |step| length(need, step))
}

fn load(need: NeedField, load: Force) -> Result<(), NeedError> {
    above_zero(load.value).then_some(()).ok_or(NeedError::Load { need, load })
}

pub(super) fn share(need: NeedField, share: f64, most: f64) -> Result<(), NeedError> {
    let good = (0.0..=most).contains(&share);
    good.then_some(()).ok_or(NeedError::Share { need, share, least: 0.0, most })
}

/// Every number by itself.
pub(super) fn numbers(need: &Need) -> Result<(), NeedError> {
    let Need { work, room, reserve, make, metal } = need;
    load(NeedField::Load, work.load)?;
    share(NeedField::LoadWithin, work.within, 1.0)?;
    if let Some(height) = work.height {
        length(NeedField::Height, height)?;
    }
    match work.stiffness {
        Stiffness::Rate { rate, within } => {
            if !above_zero(rate.value) {
                return Err(NeedError::Rate { rate });
            }
            share(NeedField::RateWithin, within, 1.0)?;
        }
        Stiffness::SecondLoad { load: second, height, within } => {
            load(NeedField::SecondLoad, second)?;
            length(NeedField::SecondHeight, height)?;
            share(NeedField::SecondWithin, within, 1.0)?;
        }
    }
    for (field, given) in [
        (NeedField::Pocket, room.pocket),
        (NeedField::Post, room.post),
        (NeedField::Solid, room.solid),
        (NeedField::Free, room.free),
    ] {
        if let Some(given) = given {
            length(field, given)?;
        }
    }
    let growth = room.inner.map(|inner| inner.growth).unwrap_or_default();
    for (field, given) in [
        (NeedField::Clearance, room.clearance),
        (NeedField::Gap, room.gap.unwrap_or_default()),
        (NeedField::Growth, growth),
        (NeedField::Reserve, reserve.length),
    ] {
        length_or_zero(field, given)?;
    }
    share(NeedField::ReserveShare, reserve.share, 10.0)?;
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
    allowed(NeedField::StressAtLoad, Some(metal.at_load))?;
    allowed(NeedField::StressAtSolid, metal.at_solid)
}

fn allowed(need: NeedField, allowed: Option<Allowed>) -> Result<(), NeedError> {
    match allowed {
        Some(Allowed::Stress { stress, .. }) if !above_zero(stress.value) => {
            Err(NeedError::Stress { need, stress })
        }
        Some(Allowed::Share { share, .. }) if !(share > 0.0 && share <= 1.0) => {
            Err(NeedError::Share { need, share, least: 0.0, most: 1.0 })
        }
        _ => Ok(()),
    }
}

/// Bars and turns to choose from.
pub(super) fn choice(bars: &[Length], turns: &[f64], count: usize) -> Result<(), NeedError> {
    for (need, empty) in [(NeedField::Bars, bars.is_empty()), (NeedField::Turns, turns.is_empty())]
    {
        if empty {
            return Err(NeedError::Nothing { need });
        }
    }
    for bar in bars {
        length(NeedField::Bar, *bar)?;
    }
    let usable = |active: f64| active >= LEAST_ACTIVE_TURNS && active.is_finite();
    if let Some(active) = turns.iter().copied().find(|active| !usable(*active)) {
        return Err(NeedError::Turns { active, least: LEAST_ACTIVE_TURNS });
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
    what: NeedField,
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
    let post = room.post.map(|post| bound(NeedField::Post, post + 2.0 * room.clearance));
    let inner = room
        .inner
        .map(|inner| bound(NeedField::InnerCoil, inner.coil.outside() + inner.growth + gap));
    let pocket = room.pocket.map(|pocket| bound(NeedField::Pocket, pocket - 2.0 * room.clearance));
    let outer = room.outer.map(|outer| bound(NeedField::OuterCoil, outer.inside() - gap));
    let wider = |a: Bound, b: Bound| if a.diameter >= b.diameter { a } else { b };
    let narrower = |a: Bound, b: Bound| if a.diameter <= b.diameter { a } else { b };
    (post.into_iter().chain(inner).reduce(wider), pocket.into_iter().chain(outer).reduce(narrower))
}

//! One coil put through the analysis, and held against what is asked of it.

use super::limit::{Limit, LimitCheck};
use super::need::{Need, Room, Stiffness};
use crate::coil::ends::{Turns, TurnsError};
use crate::coil::solid::Solid;
use crate::coil::stress::Factor;
use crate::coil::{DiameterKind, Diameters, bar, buckling, gaps, growth, rate, solid, stress};
use crate::drawing::{Drawing, Figures, Given, Point, both};
use crate::formula::Formula;
use crate::material::StrengthError;
use crate::nest::clearance;
use crate::quantity::{Force, Length, Mass, Pressure, SpringRate};
use crate::source::{Known, Source};

/// The sizes of a coil, beside the [`Make`](super::Make) that it shares with all others.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Sizes {
    pub(super) coil: Diameters,
    pub(super) turns: Turns,
    pub(super) free: Length,
}

/// A coil of sizes that are exact, and what follows from them.
///
/// Its figures are those of its [drawing](Design::drawing). Where the free height is below the solid
/// one, as in a cell of a map that fails, the loads and stresses at solid are below zero.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Design {
    /// Bar and mean diameter.
    pub coil: Diameters,
    /// Total and dead turns.
    pub turns: Turns,
    /// Free height.
    pub free: Length,
    /// Rate, [`rate::rate`].
    pub rate: SpringRate,
    /// The height at which it stops: the greatest solid height of those who differ.
    pub solid: Length,
    /// The lowest height at work.
    pub lowest: Length,
    /// The load at that height.
    pub greatest_load: Force,
    /// The stress under that load, with the factor that the allowed one is meant with.
    pub stress_at_load: Pressure,
    /// The stress at solid, with the factor that the allowed one is meant with; plain where nothing is
    /// asked of it.
    pub stress_at_solid: Pressure,
    /// How much the outside diameter grows until the coil is solid, [`growth::at_solid`].
    pub growth: Length,
    /// Mass, [`bar::mass`].
    pub mass: Mass,
    /// Pitch of the free coil, [`solid::pitch`].
    pub pitch: Length,
}

impl Design {
    /// Its drawing, of the make and the metal that it was found for, every size exact.
    #[must_use]
    pub fn drawing(&self, need: &Need) -> Drawing {
        let ends = need.make.ends;
        Drawing {
            bar: Some(Given::exact(self.coil.bar())),
            diameter: Some((DiameterKind::Mean, Given::exact(self.coil.mean()))),
            total_turns: Some(Given::exact(self.turns.total())),
            dead_turns: Some(Given::exact(self.turns.dead())),
            ends: Some(ends),
            coiling: Some(need.make.coiling(self.coil.bar())),
            free: Some(Given::exact(self.free)),
            shear_modulus: Some(Given::exact(need.metal.shear_modulus)),
            ..Drawing::default()
        }
    }
}

impl Sizes {
    /// Those of a drawing as it is meant to be.
    pub(super) fn of(drawing: &Drawing) -> Result<Self, Figures> {
        let point = Point::nominal(drawing);
        let ((coil, turns), free) = both(both(point.coil(), point.turns()), point.free())?;
        Ok(Self { coil, turns, free })
    }
}

/// The mean diameter that gives a coil its rate.
///
/// ```text
/// D = ∛(G · d⁴ / (8 · k · n))
/// ```
/// `G` shear modulus, Pa · `d` bar, m · `k` rate, N/m · `n` active turns
///
/// With bar and turns chosen it follows, and all else from it: that is why a map has bars and turns
/// for its axes.
///
/// # Range
/// As [`rate::rate`]. No coil comes of it where it is not above the bar.
///
/// # Source
/// [`MEAN_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::quantity::{Length, Pressure, SpringRate};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
/// use coilnest::sizing::mean_for_rate;
///
/// let (mm, rate) = (Length::new::<millimeter>, SpringRate::new::<newton_per_millimeter>);
/// let mean = mean_for_rate(Pressure::new::<gigapascal>(80.0), mm(10.0), 5.0, rate(39.0625));
/// assert!((mean.get::<millimeter>() - 80.0).abs() < 1e-9); // ∛(80e9·1e-8/(8·39062.5·5))
/// ```
#[must_use]
pub fn mean_for_rate(
    shear_modulus: Pressure,
    bar: Length,
    active: f64,
    rate: SpringRate,
) -> Length {
    bar * libm::cbrt((shear_modulus * bar / (8.0 * active * rate)).value)
}

/// [`mean_for_rate`] in symbols.
pub const MEAN: Formula = Formula::new("{D} = ∛({G} · {d}⁴ / (8 · {k} · {n}))");

/// Where [`mean_for_rate`] comes from.
pub const MEAN_SOURCE: Source =
    Source::new("Machinery's Handbook, 31st ed.", "p. 318, table 4, solved for D", Known::Page);

/// What a bar may bear: the stress, and the factor of what is compared with it.
type Bearable = Result<(Pressure, Factor), StrengthError>;

/// A size of bar, and what it may bear at load and at solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Bar {
    pub(super) size: Length,
    pub(super) at_load: Bearable,
    pub(super) at_solid: Option<Bearable>,
}

impl Bar {
    pub(super) fn of(need: &Need, size: Length) -> Self {
        let at_load = need.metal.at_load.of(size);
        Self { size, at_load, at_solid: need.metal.at_solid.map(|allowed| allowed.of(size)) }
    }
}

/// Whether a coil has exactly the rate and the load that are needed, or those of a rounded drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Rounded {
    No,
    Yes,
}

impl Need {
    pub(super) fn turns(&self, active: f64) -> Result<Turns, TurnsError> {
        Turns::new(active + self.make.dead_turns, self.make.dead_turns)
    }

    /// The reserve to solid of a coil deflected so far.
    pub(super) fn least_way(&self, coil: Diameters, turns: Turns, deflection: Length) -> Length {
        let share = self.reserve.share * deflection;
        let gaps = self.gaps(coil, turns);
        self.reserve.length.max(share).max(gaps.unwrap_or_default())
    }

    fn gaps(&self, coil: Diameters, turns: Turns) -> Option<Length> {
        let coiling = self.make.coiling(coil.bar());
        self.reserve.duty.map(|duty| gaps::least(coil, turns, coiling, duty))
    }

    /// The lowest height at work of a coil that carries `load` there with a given free height.
    fn lowest(&self, free: Length, rate: SpringRate) -> Length {
        self.work.lowest().unwrap_or(free - self.work.load / rate)
    }

    /// What follows from sizes.
    pub(super) fn design(&self, bar: &Bar, sizes: Sizes) -> Design {
        let rate = rate::rate(self.metal.shear_modulus, sizes.coil, sizes.turns);
        self.design_down_to(bar, sizes, self.lowest(sizes.free, rate))
    }

    /// The same with the lowest height at work given.
    pub(super) fn design_down_to(&self, bar: &Bar, sizes: Sizes, lowest: Length) -> Design {
        let Sizes { coil, turns, free } = sizes;
        let rate = rate::rate(self.metal.shear_modulus, coil, turns);
        let solid = Solid::of(coil.bar(), turns, self.make.ends);
        let pitch = solid::pitch(free, coil.bar(), turns, self.make.ends);
        let greatest_load = rate * (free - lowest);
        let factor = |allowable: Option<Bearable>| match allowable {
            Some(Ok((_, factor))) => factor.at(coil.index()),
            _ => 1.0,
        };
        Design {
            coil,
            turns,
            free,
            rate,
            solid: solid.greatest,
            lowest,
            greatest_load,
            stress_at_load: factor(Some(bar.at_load)) * stress::uncorrected(greatest_load, coil),
            stress_at_solid: factor(bar.at_solid)
                * stress::uncorrected(rate * (free - solid.least), coil),
            growth: growth::at_solid(coil, pitch),
            mass: bar::mass(
                coil,
                bar::whole(coil, pitch, turns, Some(self.make.ends)),
                self.metal.density,
            ),
            pitch,
        }
    }

    /// How a coil stands to all that is asked of it.
    pub(super) fn verdict(&self, bar: &Bar, design: &Design, rounded: Rounded) -> LimitCheck {
        let of_coil = self.of_coil(bar, design, &self.room, rounded);
        match rounded {
            Rounded::No => of_coil,
            Rounded::Yes => {
                let Design { rate, free, .. } = *design;
                of_coil.and(self.of_work(rate, |height| rate * (free - height)))
            }
        }
    }

    /// How a rate and the load at any height stand to what is needed.
    pub(super) fn of_work(
        &self,
        rate: SpringRate,
        load_at: impl Fn(Length) -> Force,
    ) -> LimitCheck {
        let mut verdict = LimitCheck::none();
        let off = |found: f64, needed: f64| (found / needed - 1.0).abs();
        if let Some(height) = self.work.height {
            let off = off(load_at(height).value, self.work.load.value);
            verdict.take(Limit::Load, self.work.within - off);
        }
        match self.work.stiffness {
            Stiffness::Rate { rate: needed, within } => {
                verdict.take(Limit::Rate, within - off(rate.value, needed.value));
            }
            Stiffness::SecondLoad { load, height, within } => {
                let off = off(load_at(height).value, load.value);
                verdict.take(Limit::SecondLoad, within - off);
            }
        }
        verdict
    }

    /// How one coil stands to its bar, its room and its stresses.
    pub(super) fn of_coil(
        &self,
        bar: &Bar,
        design: &Design,
        room: &Room,
        rounded: Rounded,
    ) -> LimitCheck {
        let Design { coil, turns, free, solid, lowest, .. } = *design;
        let make = &self.make;
        let mut verdict = LimitCheck::none();
        verdict.at_least(Limit::LowIndex, coil.index(), make.least_index);
        verdict.at_most(Limit::HighIndex, coil.index(), make.most_index);
        let angle = bar::pitch_angle(coil, design.pitch);
        verdict.at_most(Limit::SteepPitch, angle.value, make.most_pitch_angle.value);
        across(&mut verdict, design, room);
        match bar.at_load {
            Ok((allowed, _)) => {
                verdict.at_most(Limit::StressAtLoad, design.stress_at_load.value, allowed.value);
            }
            Err(_) => verdict.take(Limit::Strength, NOTHING_HELD),
        }
        match bar.at_solid {
            Some(Ok((allowed, _))) => {
                verdict.at_most(Limit::StressAtSolid, design.stress_at_solid.value, allowed.value);
            }
            Some(Err(_)) => verdict.take(Limit::Strength, NOTHING_HELD),
            None => {}
        }
        if let Some(most) = room.solid {
            verdict.at_most(Limit::SolidHeight, solid.value, most.value);
        }
        // A coil that may choose its height takes just what its reserve asks for.
        if rounded == Rounded::Yes || self.work.height.is_some() {
            let of_lowest = |limit, least: Length, verdict: &mut LimitCheck| {
                verdict.take(limit, ((lowest - solid - least) / lowest).value);
            };
            let least = self.reserve.length.max(self.reserve.share * (free - lowest));
            of_lowest(Limit::Reserve, least, &mut verdict);
            if let Some(least) = self.gaps(coil, turns) {
                of_lowest(Limit::Gaps, least, &mut verdict);
            }
        }
        if let Some(most) = room.free {
            verdict.at_most(Limit::FreeHeight, free.value, most.value);
        }
        let buckles = buckling::deflection(coil, free, make.seating, self.metal.poisson);
        if let Some(buckles) = buckles {
            verdict.at_most(Limit::Buckles, (free - solid).value, buckles.value);
        }
        verdict
    }
}

/// The margin where no strength is held: nothing of what is asked for.
const NOTHING_HELD: f64 = -1.0;

/// The room across.
fn across(verdict: &mut LimitCheck, design: &Design, room: &Room) {
    let coil = design.coil;
    if let Some(pocket) = room.pocket {
        let needed = coil.outside() + design.growth + 2.0 * room.clearance;
        verdict.at_most(Limit::Pocket, needed.value, pocket.value);
    }
    if let Some(post) = room.post {
        verdict.at_least(Limit::Post, coil.inside().value, (post + 2.0 * room.clearance).value);
    }
    let mut between = |limit, outer: Diameters, inner: Diameters, growth: Length| {
        let grown = clearance::radial_grown(outer, inner, growth);
        let usual = || clearance::radial(outer, inner) - clearance::usual(outer, inner);
        let spare = room.gap.map_or_else(|| usual().min(grown), |gap| grown - gap);
        verdict.take(limit, (spare / coil.mean()).value);
    };
    if let Some(outer) = room.outer {
        between(Limit::OuterCoil, outer, coil, design.growth);
    }
    if let Some(inner) = room.inner {
        between(Limit::InnerCoil, coil, inner.coil, inner.growth);
    }
}

//! What an example of one coil starts from beyond its sizes: its seats, its steel, its loads.

use super::{Coil, Output, metres, need, no};
use crate::measure::Measure;
use coilnest::coil::buckling::{self, Seating};
use coilnest::coil::fatigue::{self, Criterion, Strength, Surface};
use coilnest::coil::gaps::{self, Duty};
use coilnest::coil::set;
use coilnest::coil::surge::{self, Kept};
use coilnest::coil::{Coiling, bar, lateral, solid};
use coilnest::material;
use coilnest::material::Against;
use coilnest::quantity::{Force, Length, MassDensity, Pressure, SpringRate, unit};
use serde::Deserialize;

/// A coil between seats.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Column {
    coil: Coil,
    youngs_modulus: Measure,
    seating: SeatingName,
    /// How far it is pressed.
    deflection: Option<Measure>,
}

/// How a coil is seated.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum SeatingName {
    Guided,
    Sliding,
}

/// A coil whose gaps or whose set are asked for.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Room {
    coil: Coil,
    coiling: Option<CoilingName>,
    #[serde(default)]
    dynamic: bool,
    load_at_solid: Option<Measure>,
    allowable: Option<Measure>,
}

/// How a coil is wound.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum CoilingName {
    Cold,
    Hot,
}

/// A coil that swings.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Surging {
    coil: Coil,
    density: Measure,
}

/// A coil between two loads.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Cycled {
    coil: Coil,
    least: Measure,
    greatest: Measure,
    tensile: Measure,
    torsional_yield: Measure,
    surface: SurfaceName,
}

/// What was done to the bar.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SurfaceName {
    /// Nothing.
    Unpeened,
    /// Shot peening.
    Peened,
}

impl Column {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let coil = self.coil.diameters()?;
        let seating = match self.seating {
            SeatingName::Guided => Seating::Guided,
            SeatingName::Sliding => Seating::Sliding,
        };
        let poisson = material::poisson(self.coil.shear_modulus()?, pascals(&self.youngs_modulus));
        Ok(match output {
            Output::StableFree => buckling::stable_free_height(coil, seating, poisson).value,
            Output::Slenderness => buckling::slenderness(coil, self.coil.free()?),
            Output::Buckles => {
                let at = buckling::deflection(coil, self.coil.free()?, seating, poisson);
                at.ok_or("it never buckles")?.value
            }
            Output::LateralOverAxial => {
                let axial = SpringRate::new::<unit::newton_per_meter>(1.0);
                let deflection = metres(need("deflection", self.deflection.as_ref())?);
                lateral::rate(axial, coil, self.coil.free()?, deflection, poisson)
                    .map_err(|error| error.to_string())?
                    .value
            }
            _ => return no(output),
        })
    }
}

impl Room {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let coil = self.coil.diameters()?;
        let load_at_solid = || {
            let load = need("load-at-solid", self.load_at_solid.as_ref())?;
            Ok::<_, String>(Force::new::<unit::newton>(load.si()))
        };
        let at = |load| {
            let allowable = pascals(need("allowable", self.allowable.as_ref())?);
            set::at_solid(coil, load, allowable, Against::Curvature)
                .map_err(|error| error.to_string())
        };
        Ok(match output {
            Output::LeastGaps => {
                let coiling = match need("coiling", self.coiling)? {
                    CoilingName::Cold => Coiling::Cold,
                    CoilingName::Hot => Coiling::Hot,
                };
                let duty = if self.dynamic { Duty::Dynamic } else { Duty::Static };
                gaps::least(coil, self.coil.turns()?, coiling, duty).value
            }
            Output::GapBetweenTurns => {
                let height = self.coil.free()? - self.coil.load()? / self.coil.rate()?;
                let (turns, ends) = (self.coil.turns()?, self.coil.ends()?);
                gaps::between_turns(height, coil.bar(), turns, ends).value
            }
            Output::ClashAllowance => gaps::clash_allowance(load_at_solid()?, self.coil.load()?),
            Output::SafetyAgainstSet => at(self.coil.load()?)?.safety(),
            _ => return no(output),
        })
    }
}

impl Surging {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let (coil, turns) = (self.coil.diameters()?, self.coil.turns()?);
        // Without a free height the turns are flat circles.
        let pitch = match self.coil.free() {
            Ok(free) => solid::pitch(free, coil.bar(), turns, self.coil.ends()?),
            Err(_) => Length::default(),
        };
        let density = MassDensity::new::<unit::kilogram_per_cubic_meter>(self.density.si());
        let active = bar::mass(coil, bar::length(coil, pitch, turns.active()), density);
        Ok(match output {
            Output::ActiveMass => active.value,
            Output::FirstFrequency => surge::first(self.coil.rate()?, active, Kept::Both).value,
            _ => return no(output),
        })
    }
}

impl Cycled {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let newtons = |load: &Measure| Force::new::<unit::newton>(load.si());
        let (least, greatest) = (newtons(&self.least), newtons(&self.greatest));
        let cycle = fatigue::Cycle::between(self.coil.diameters()?, least, greatest)
            .map_err(|error| error.to_string())?;
        let strength = Strength {
            tensile: pascals(&self.tensile),
            torsional_yield: pascals(&self.torsional_yield),
        };
        let by = |criterion| {
            fatigue::endurance(cycle, strength, self.surface.surface(), criterion)
                .map_err(|error| error.to_string())
        };
        Ok(match output {
            Output::StressAmplitude => cycle.amplitude().value,
            Output::StressMean => cycle.mean().value,
            Output::TorsionalUltimate => fatigue::torsional_ultimate(strength.tensile).value,
            Output::ReversedGoodman => by(Criterion::Goodman)?.reversed.value,
            Output::ReversedGerber => by(Criterion::Gerber)?.reversed.value,
            Output::AmplitudeGoodman => by(Criterion::Goodman)?.amplitude.value,
            Output::AmplitudeGerber => by(Criterion::Gerber)?.amplitude.value,
            Output::SafetyGoodman => by(Criterion::Goodman)?.safety,
            Output::SafetyGerber => by(Criterion::Gerber)?.safety,
            Output::SafetySines => by(Criterion::Sines)?.safety,
            _ => return no(output),
        })
    }
}

impl SurfaceName {
    fn surface(self) -> Surface {
        match self {
            Self::Unpeened => Surface::Unpeened,
            Self::Peened => Surface::Peened,
        }
    }

    pub(super) fn compute(self, output: Output) -> Result<f64, String> {
        let (amplitude, mean) = self.surface().endured();
        match output {
            Output::StressAmplitude => Ok(amplitude.value),
            Output::StressMean => Ok(mean.value),
            _ => no(output),
        }
    }
}

fn pascals(measure: &Measure) -> Pressure {
    Pressure::new::<unit::pascal>(measure.si())
}

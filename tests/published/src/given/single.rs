//! What an example of one coil starts from beyond its sizes: its seats, its steel, its loads.

use super::{Coil, Subject, no};
use crate::fields::Fields;
use crate::output::Output;
use coilnest::coil::buckling::{self, Seating};
use coilnest::coil::fatigue::{self, Criterion, Strength, Surface};
use coilnest::coil::gaps::{self, Duty};
use coilnest::coil::set;
use coilnest::coil::surge::{self, Kept};
use coilnest::coil::{Coiling, bar, lateral, solid};
use coilnest::material;
use coilnest::material::Against;
use coilnest::quantity::{Length, MassDensity, SpringRate, unit};

/// A coil between seats, and how far it is pressed.
pub(super) const COLUMN: Subject = Subject {
    name: "column",
    takes: &["coil", "youngs-modulus", "seating", "deflection"],
    compute: column,
};

/// A coil whose gaps or whose set are asked for.
pub(super) const ROOM: Subject = Subject {
    name: "room",
    takes: &["coil", "coiling", "dynamic", "load-at-solid", "allowable"],
    compute: room,
};

/// A coil that swings.
pub(super) const SURGING: Subject =
    Subject { name: "surging", takes: &["coil", "density"], compute: surging };

/// A coil between two loads.
pub(super) const CYCLED: Subject = Subject {
    name: "cycled",
    takes: &["coil", "least", "greatest", "tensile", "torsional-yield", "surface"],
    compute: cycled,
};

/// Springs that were tested to a life without end, and what was done to their wire.
pub(super) const ENDURED: Subject =
    Subject { name: "endured", takes: &["surface"], compute: endured };

fn column(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let part = Coil::of(given)?;
    let coil = part.diameters()?;
    let seatings = [("guided", Seating::Guided), ("sliding", Seating::Sliding)];
    let seating = given.word("seating", &seatings)?;
    let poisson = material::poisson(part.shear_modulus()?, given.pressure("youngs-modulus")?);
    Ok(vec![match output {
        Output::StableFree => buckling::stable_free_height(coil, seating, poisson).value,
        Output::Slenderness => buckling::slenderness(coil, part.free()?),
        Output::Buckles => {
            let at = buckling::deflection(coil, part.free()?, seating, poisson);
            at.ok_or("it never buckles")?.value
        }
        Output::LateralOverAxial => {
            let axial = SpringRate::new::<unit::newton_per_meter>(1.0);
            let deflection = given.length("deflection")?;
            lateral::rate(axial, coil, part.free()?, deflection, poisson)
                .map_err(|error| error.to_string())?
                .value
        }
        _ => return no(output),
    }])
}

fn room(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let part = Coil::of(given)?;
    let coil = part.diameters()?;
    Ok(vec![match output {
        Output::LeastGaps => {
            let coilings = [("cold", Coiling::Cold), ("hot", Coiling::Hot)];
            let duty = if given.flag("dynamic")? { Duty::Dynamic } else { Duty::Static };
            gaps::least(coil, part.turns()?, given.word("coiling", &coilings)?, duty).value
        }
        Output::GapBetweenTurns => {
            let height = part.free()? - part.load()? / part.rate()?;
            gaps::between_turns(height, coil.bar(), part.turns()?, part.ends()?).value
        }
        Output::ClashAllowance => {
            gaps::clash_allowance(given.force("load-at-solid")?, part.load()?)
        }
        Output::SafetyAgainstSet => {
            let allowable = given.pressure("allowable")?;
            let set = set::at_solid(coil, part.load()?, allowable, Against::Curvature);
            set.map_err(|error| error.to_string())?.safety()
        }
        _ => return no(output),
    }])
}

fn surging(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let part = Coil::of(given)?;
    let (coil, turns) = (part.diameters()?, part.turns()?);
    // Without a free height the turns are flat circles.
    let pitch = match part.free() {
        Ok(free) => solid::pitch(free, coil.bar(), turns, part.ends()?),
        Err(_) => Length::default(),
    };
    let density = given.measure("density")?.si();
    let density = MassDensity::new::<unit::kilogram_per_cubic_meter>(density);
    let active = bar::mass(coil, bar::length(coil, pitch, turns.active()), density);
    Ok(vec![match output {
        Output::ActiveMass => active.value,
        Output::FirstFrequency => surge::first(part.rate()?, active, Kept::Both).value,
        _ => return no(output),
    }])
}

fn cycled(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let coil = Coil::of(given)?.diameters()?;
    let (least, greatest) = (given.force("least")?, given.force("greatest")?);
    let cycle =
        fatigue::Cycle::between(coil, least, greatest).map_err(|error| error.to_string())?;
    let strength = Strength {
        tensile: given.pressure("tensile")?,
        torsional_yield: given.pressure("torsional-yield")?,
    };
    let surface = surface(given)?;
    let by = |criterion| {
        fatigue::endurance(cycle, strength, surface, criterion).map_err(|error| error.to_string())
    };
    Ok(vec![match output {
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
    }])
}

fn endured(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let (amplitude, mean) = surface(given)?.endured();
    match output {
        Output::StressAmplitude => Ok(vec![amplitude.value]),
        Output::StressMean => Ok(vec![mean.value]),
        _ => no(output),
    }
}

/// What was done to the wire.
fn surface(given: Fields<'_>) -> Result<Surface, String> {
    given.word("surface", &[("unpeened", Surface::Unpeened), ("peened", Surface::Peened)])
}

//! What a standard allows a new spring to be off.

use super::{Output, metres, need, no};
use crate::measure::Measure;
use coilnest::coil::Diameters;
use coilnest::coil::ends::Turns;
use coilnest::coil::rate;
use coilnest::quantity::{Force, Pressure, unit};
use coilnest::tolerance::{ColdWound, Grade};
use coilnest_tables::DIAMETERS;
use serde::Deserialize;

/// A grade of EN 15800, as documents number it.
#[derive(Clone, Copy, Debug, Deserialize)]
enum Numbered {
    #[serde(rename = "1")]
    One,
    #[serde(rename = "2")]
    Two,
    #[serde(rename = "3")]
    Three,
}

/// A cold-wound spring.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct NewSpring {
    bar: Measure,
    mean: Measure,
    active_turns: f64,
    free: Measure,
    grade: Numbered,
    shear_modulus: Option<Measure>,
    load: Option<Measure>,
}

impl NewSpring {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let coil = Diameters::from_mean(metres(&self.bar), metres(&self.mean))
            .map_err(|error| error.to_string())?;
        let turns = Turns::new(self.active_turns, 0.0).map_err(|error| error.to_string())?;
        let free = metres(&self.free);
        let spring = ColdWound::new(coil, turns, free).map_err(|error| error.to_string())?;
        let grade = match self.grade {
            Numbered::One => Grade::One,
            Numbered::Two => Grade::Two,
            Numbered::Three => Grade::Three,
        };
        let degrees = |rise: f64| rise.atan().to_degrees();
        Ok(match output {
            Output::LoadTolerance => {
                let load = need("load", self.load.as_ref())?.si();
                spring.load(grade, Force::new::<unit::newton>(load)).value.value
            }
            Output::FreeTolerance => {
                let modulus = need("shear-modulus", self.shear_modulus.as_ref())?.si();
                let rate = rate::rate(Pressure::new::<unit::pascal>(modulus), coil, turns);
                spring.free_height(grade, rate).value.value
            }
            Output::DiameterTolerance => {
                let half_width = spring.diameter(grade, DIAMETERS);
                half_width.map_err(|error| error.to_string())?.value.value
            }
            Output::Squareness => spring.squareness(grade).value.value,
            Output::Parallelism => spring.parallelism(grade).value.value,
            Output::SquarenessAngle => degrees((spring.squareness(grade).value / free).value),
            Output::ParallelismAngle => {
                degrees((spring.parallelism(grade).value / coil.outside()).value)
            }
            _ => return no(output),
        })
    }
}

//! What a standard allows a new spring to be off.

use super::{Subject, no};
use crate::fields::Fields;
use crate::output::Output;
use coilnest::coil::Diameters;
use coilnest::coil::ends::Turns;
use coilnest::coil::rate;
use coilnest::tolerance::{ColdWound, Grade};
use coilnest_tables::DIAMETERS;

/// A cold-wound spring, and the grade of EN 15800 that was ordered.
pub(super) const NEW_SPRING: Subject = Subject {
    name: "new-spring",
    takes: &["bar", "mean", "active-turns", "free", "grade", "shear-modulus", "load"],
    compute,
};

const GRADES: [(&str, Grade); 3] = [("1", Grade::One), ("2", Grade::Two), ("3", Grade::Three)];

fn compute(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let coil = Diameters::from_mean(given.length("bar")?, given.length("mean")?)
        .map_err(|error| error.to_string())?;
    let turns =
        Turns::new(given.number("active-turns")?, 0.0).map_err(|error| error.to_string())?;
    let free = given.length("free")?;
    let spring = ColdWound::new(coil, turns, free).map_err(|error| error.to_string())?;
    let grade = given.word("grade", &GRADES)?;
    let degrees = |rise: f64| rise.atan().to_degrees();
    Ok(vec![match output {
        Output::LoadTolerance => spring.load(grade, given.force("load")?).value.value,
        Output::FreeTolerance => {
            let rate = rate::rate(given.pressure("shear-modulus")?, coil, turns);
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
    }])
}

//! What tolerances leave of a rate and a load, enclosed by ball arithmetic: `data/ranges.json`.

use super::{Drawn, megapascals, mm};
use approx::relative_eq;
use coilnest::drawing::{self, Given};
use coilnest::quantity::unit::{newton, newton_per_millimeter};
use serde::Deserialize;
use std::fmt::Debug;

#[derive(Deserialize)]
struct Data {
    drawings: Vec<Drawing>,
}

/// Each size from its least to its most; of rate and load, the two numbers between which the least
/// lies, and the two between which the most.
#[derive(Deserialize)]
struct Drawing {
    across: Drawn,
    bar: [f64; 2],
    diameter: [f64; 2],
    total_turns: [f64; 2],
    dead_turns: [f64; 2],
    shear_modulus: [f64; 2],
    free: [f64; 2],
    height: f64,
    rate: [[f64; 2]; 2],
    load: [[f64; 2]; 2],
}

/// What it is meant to be makes no difference to the ends.
fn between<Q: Copy + Debug + PartialOrd>(
    [least, most]: [f64; 2],
    of: impl Fn(f64) -> Q,
) -> Given<Q> {
    let middle = of(f64::midpoint(least, most));
    Given::between(middle, Some(of(least)), Some(of(most))).unwrap()
}

/// The bounds are proven, so that only the twelve digits of the table stand between.
#[track_caller]
fn assert_within(found: f64, [least, most]: [f64; 2]) {
    let slack = 1e-11 * found;
    assert!(least - slack <= found && found <= most + slack, "{found}, not {least} to {most}");
    assert!(
        relative_eq!(most, least, max_relative = 2e-4),
        "bounds too wide to tell: {least} to {most}"
    );
}

#[test]
fn the_ends_of_a_range_lie_between_proven_bounds() {
    let data: Data = serde_json::from_str(include_str!("../../data/ranges.json")).unwrap();
    for drawing in &data.drawings {
        let toleranced = drawing::Drawing {
            bar: Some(between(drawing.bar, mm)),
            diameter: Some((drawing.across.into(), between(drawing.diameter, mm))),
            total_turns: Some(between(drawing.total_turns, |turns| turns)),
            dead_turns: Some(between(drawing.dead_turns, |turns| turns)),
            shear_modulus: Some(between(drawing.shear_modulus, megapascals)),
            free: Some(between(drawing.free, mm)),
            ..drawing::Drawing::default()
        };
        let rate = toleranced.rate().unwrap();
        assert_within(rate.least().get::<newton_per_millimeter>(), drawing.rate[0]);
        assert_within(rate.most().get::<newton_per_millimeter>(), drawing.rate[1]);
        let load = toleranced.load(mm(drawing.height)).unwrap();
        assert_within(load.least().get::<newton>(), drawing.load[0]);
        assert_within(load.most().get::<newton>(), drawing.load[1]);
    }
    assert_eq!(data.drawings.len(), 12);
}

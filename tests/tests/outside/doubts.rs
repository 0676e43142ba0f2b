//! Every ± of a rate, a load and a frame: `data/doubts.json`.

use super::{Coil, Drawn, assert_near, megapascals, mm, nest, newtons};
use coilnest::drawing::{Drawing, Given};
use coilnest::frame::{CoilDoubt, Frame, Place, Support, Weight};
use coilnest::propagation::{self, RateDoubt};
use coilnest::quantity::unit::{newton, newton_per_millimeter};
use serde::Deserialize;
use std::fmt::Debug;

/// Both sides carry doubts to first order, so they differ by rounding alone: the table has twelve digits.
const TOLERANCE: f64 = 1e-9;

#[derive(Deserialize)]
struct Data {
    springs: Vec<Spring>,
    frames: Vec<Framed>,
}

/// Each size with its standard uncertainty.
#[derive(Deserialize)]
struct Spring {
    across: Drawn,
    bar: [f64; 2],
    diameter: [f64; 2],
    total_turns: [f64; 2],
    dead_turns: [f64; 2],
    shear_modulus: [f64; 2],
    free: [f64; 2],
    height: f64,
    rate: [f64; 2],
    load: [f64; 2],
}

#[derive(Deserialize)]
struct Framed {
    weight: f64,
    x: f64,
    y: f64,
    tape: f64,
    steel: f64,
    nests: Vec<Under>,
    at_rest: Vec<AtRest>,
}

#[derive(Deserialize)]
struct Under {
    x: f64,
    y: f64,
    shim: f64,
    coils: Vec<Doubtful>,
}

#[derive(Deserialize)]
struct Doubtful {
    #[serde(flatten)]
    coil: Coil,
    own_free: f64,
    own_rate: f64,
}

#[derive(Deserialize)]
struct AtRest {
    load: [f64; 2],
    height: [f64; 2],
}

fn data() -> Data {
    serde_json::from_str(include_str!("../../data/doubts.json")).unwrap()
}

/// A standard uncertainty as the half-width of which it is.
fn within<Q>([value, doubt]: [f64; 2], of: impl Fn(f64) -> Q) -> Given<Q>
where
    Q: Copy + Debug + PartialOrd,
{
    let by = doubt * 3f64.sqrt();
    Given::between(of(value), Some(of(value - by)), Some(of(value + by))).unwrap()
}

#[test]
fn rate_and_load_have_the_doubt_that_two_libraries_give() {
    let springs = data().springs;
    for spring in &springs {
        let drawing = Drawing {
            bar: Some(within(spring.bar, mm)),
            diameter: Some((spring.across.into(), within(spring.diameter, mm))),
            total_turns: Some(within(spring.total_turns, |turns| turns)),
            dead_turns: Some(within(spring.dead_turns, |turns| turns)),
            shear_modulus: Some(within(spring.shear_modulus, megapascals)),
            free: Some(within(spring.free, mm)),
            ..Drawing::default()
        };
        let rate = propagation::rate(&drawing).unwrap();
        let load = propagation::load(&drawing, mm(spring.height)).unwrap();
        let [value, doubt] = spring.rate;
        assert_near(rate.value.get::<newton_per_millimeter>(), value, TOLERANCE, "rate");
        assert_near(
            rate.doubt.get::<newton_per_millimeter>(),
            doubt,
            TOLERANCE,
            "doubt of the rate",
        );
        let [value, doubt] = spring.load;
        assert_near(load.value.get::<newton>(), value, TOLERANCE, "load");
        assert_near(load.doubt.get::<newton>(), doubt, TOLERANCE, "doubt of the load");
    }
    assert_eq!(springs.len(), 40);
}

#[test]
fn nests_under_a_frame_have_the_doubt_that_a_library_carries_through_their_balance() {
    let frames = data().frames;
    for framed in &frames {
        let support = |under: &Under| Support {
            place: Place { along: mm(under.x), across: mm(under.y) },
            nest: nest(under.coils.iter().map(|one| &one.coil)),
            stop: None,
            shim: mm(under.shim),
            ground: mm(0.0),
        };
        let frame = Frame::new(framed.nests.iter().map(support).collect(), None).unwrap();
        let centre = Place { along: mm(framed.x), across: mm(framed.y) };
        let weight = Weight { load: newtons(framed.weight), centre };
        let doubt = |one: &Doubtful| CoilDoubt {
            free: mm(one.own_free),
            tape: mm(framed.tape),
            rate: RateDoubt { own: one.own_rate, steel: framed.steel, ..RateDoubt::default() },
        };
        let doubts: Vec<Vec<_>> =
            framed.nests.iter().map(|under| under.coils.iter().map(doubt).collect()).collect();
        let found = frame.doubted(weight, &doubts).unwrap();
        for (found, expected) in found.iter().zip(&framed.at_rest) {
            let [load, doubt] = expected.load;
            assert_near(found.load.value.value, load, TOLERANCE, "load");
            assert_near(found.load.doubt.value, doubt, TOLERANCE, "doubt of the load");
            let [height, doubt] = expected.height;
            assert_near(found.height.value.value * 1e3, height, TOLERANCE, "height");
            assert_near(found.height.doubt.value * 1e3, doubt, TOLERANCE, "doubt of the height");
        }
    }
    assert_eq!(frames.len(), 6);
}

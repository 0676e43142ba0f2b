//! Nests of three coils, and frames on them, as quadratic programs: `data/three-coil-nests.json`.

use super::{Coil, assert_near, mm, nest, newtons};
use coilnest::frame::{Contact, Frame, Place, Support, Weight};
use coilnest::quantity::unit::{millimeter, newton};
use serde::Deserialize;

/// The solver ends within 1e-9 of a balance.
const TOLERANCE: f64 = 1e-7;

#[derive(Deserialize)]
struct Data {
    nests: Vec<Alone>,
    frames: Vec<Framed>,
}

#[derive(Deserialize)]
struct Alone {
    coils: Vec<Coil>,
    points: Vec<Point>,
}

#[derive(Deserialize)]
struct Point {
    load: f64,
    height: f64,
    loads: Vec<f64>,
}

#[derive(Deserialize)]
struct Framed {
    weight: f64,
    x: f64,
    y: f64,
    nests: Vec<Under>,
    at_rest: Vec<AtRest>,
}

#[derive(Deserialize)]
struct Under {
    x: f64,
    y: f64,
    ground: f64,
    coils: Vec<Coil>,
}

#[derive(Deserialize)]
struct AtRest {
    height: f64,
    load: f64,
}

fn data() -> Data {
    serde_json::from_str(include_str!("../../data/three-coil-nests.json")).unwrap()
}

#[test]
fn three_coils_share_a_load_as_the_least_energy_has_it() {
    let (mut alone, mut past_solid) = (0, 0);
    for case in data().nests {
        let nest = nest(&case.coils);
        for point in &case.points {
            let state = nest.at_load(newtons(point.load)).unwrap();
            assert_near(state.height.get::<millimeter>(), point.height, TOLERANCE, "height");
            for (member, expected) in state.members.iter().zip(&point.loads) {
                let off = (member.load.get::<newton>() - expected).abs();
                assert!(off <= TOLERANCE * point.load, "{expected} N: {member:?}");
            }
            alone += usize::from(point.loads.iter().filter(|load| **load > 1e-3).count() == 1);
            past_solid += usize::from(state.stop_load.value > 0.0);
        }
    }
    // Of each kind, so that no branch goes unseen.
    assert!(alone > 5 && past_solid > 5, "{alone}, {past_solid}");
}

#[test]
fn frames_on_three_coils_rest_where_the_energy_is_least() {
    let mut loose = 0;
    let frames = data().frames;
    for framed in &frames {
        let support = |under: &Under| Support {
            place: Place { along: mm(under.x), across: mm(under.y) },
            nest: nest(&under.coils),
            stop: None,
            shim: mm(0.0),
            ground: mm(under.ground),
        };
        let frame = Frame::new(framed.nests.iter().map(support).collect(), None).unwrap();
        let centre = Place { along: mm(framed.x), across: mm(framed.y) };
        let settled = frame.settle(Weight { load: newtons(framed.weight), centre }).unwrap();
        for (found, expected) in settled.supports.iter().zip(&framed.at_rest) {
            let off = (found.load.get::<newton>() - expected.load).abs();
            assert!(off <= TOLERANCE * framed.weight, "{} N: {found:?}", expected.load);
            if !settled.rocks {
                assert_near(found.height.get::<millimeter>(), expected.height, TOLERANCE, "height");
            }
            loose += usize::from(found.contact == Contact::Loose);
        }
    }
    assert_eq!(frames.len(), 16);
    assert!(loose > 0);
}

//! Nests against heights and loads that were found without any formula of a nest: `data/nests.json`.

use coilnest::nest::{Law, Member, Nest, State};
use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
use coilnest::quantity::{Force, Length, SpringRate};
use serde::Deserialize;

/// Relative; the data hold ten digits.
const TOLERANCE: f64 = 1e-9;

#[derive(Deserialize)]
struct Data {
    nests: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    coils: Vec<Coil>,
    free_height: f64,
    solid_height: f64,
    load_at_solid: f64,
    solid_first: usize,
    at_height: Vec<Point>,
    at_load: Vec<Point>,
}

#[derive(Deserialize)]
struct Coil {
    free: f64,
    rate: f64,
    solid: f64,
    raise: f64,
    stiffer: Option<Stiffer>,
}

#[derive(Deserialize)]
struct Stiffer {
    from: f64,
    rate: f64,
}

#[derive(Deserialize)]
struct Point {
    height: f64,
    load: f64,
    loads: Vec<f64>,
    #[serde(default)]
    stop_load: f64,
    rate: f64,
    solid: bool,
    bend: bool,
}

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn build(coils: &[Coil]) -> Result<Nest, Box<dyn std::error::Error>> {
    let rate = SpringRate::new::<newton_per_millimeter>;
    let mut members = Vec::new();
    for coil in coils {
        let mut law = Law::linear(rate(coil.rate))?;
        if let Some(stiffer) = &coil.stiffer {
            law = law.then(mm(stiffer.from), rate(stiffer.rate))?;
        }
        members.push(Member {
            free: mm(coil.free),
            law,
            solid: Some(mm(coil.solid)),
            raise: mm(coil.raise),
        });
    }
    Ok(Nest::new(members)?)
}

fn near(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= TOLERANCE * expected.abs()
}

/// What differs between a state and a point of the data.
fn differences(state: &State, point: &Point) -> Vec<String> {
    let load = point.load - point.stop_load;
    let mut pairs = vec![
        ("height", state.height.get::<millimeter>(), point.height),
        ("load", state.load.get::<newton>(), load),
        ("stop load", state.stop_load.get::<newton>(), point.stop_load),
    ];
    if !point.bend {
        pairs.push(("rate", state.rate.get::<newton_per_millimeter>(), point.rate));
    }
    for (member, expected) in state.members.iter().zip(&point.loads) {
        pairs.push(("a coil's load", member.load.get::<newton>(), *expected));
    }
    let mut differences: Vec<String> = pairs
        .into_iter()
        .filter(|(_, found, expected)| !near(*found, *expected))
        .map(|(what, found, expected)| format!("{what}: {found}, not {expected}"))
        .collect();
    if state.solid != point.solid {
        differences.push(format!("solid: {}", state.solid));
    }
    if state.members.len() != point.loads.len() {
        differences.push(format!("{} coils", state.members.len()));
    }
    differences
}

#[test]
fn heights_and_loads_are_those_found_by_bisection() -> Result<(), Box<dyn std::error::Error>> {
    let data: Data = serde_json::from_str(include_str!("../data/nests.json"))?;
    let mut failures = Vec::new();
    let mut points = 0;
    for case in &data.nests {
        let nest = build(&case.coils)?;
        let solid = nest.solid().ok_or("no solid height")?;
        assert!(near(nest.free_height().get::<millimeter>(), case.free_height), "{}", case.name);
        assert!(near(solid.height.get::<millimeter>(), case.solid_height), "{}", case.name);
        assert_eq!(solid.member, case.solid_first, "{}", case.name);
        let at_solid = nest.at_height(solid.height)?.load.get::<newton>();
        assert!(near(at_solid, case.load_at_solid), "{}: {at_solid}", case.name);
        for point in &case.at_height {
            let state = nest.at_height(mm(point.height))?;
            let what = |difference| format!("{} at {} mm: {difference}", case.name, point.height);
            failures.extend(differences(&state, point).into_iter().map(what));
            points += 1;
        }
        for point in &case.at_load {
            let state = nest.at_load(Force::new::<newton>(point.load))?;
            let what = |difference| format!("{} under {} N: {difference}", case.name, point.load);
            failures.extend(differences(&state, point).into_iter().map(what));
            points += 1;
        }
    }
    assert_eq!(points, 50);
    assert!(failures.is_empty(), "\n{}", failures.join("\n"));
    Ok(())
}

#[test]
fn the_data_hold_a_case_of_each_kind() -> Result<(), serde_json::Error> {
    let data: Data = serde_json::from_str(include_str!("../data/nests.json"))?;
    let coils = || data.nests.iter().flat_map(|case| &case.coils);
    assert!(coils().any(|coil| coil.stiffer.is_some()));
    assert!(coils().any(|coil| coil.raise > 0.0) && coils().any(|coil| coil.raise < 0.0));
    assert!(data.nests.iter().any(|case| case.solid_first == 1));
    assert!(data.nests.iter().flat_map(|case| &case.at_load).any(|point| point.stop_load > 0.0));
    Ok(())
}

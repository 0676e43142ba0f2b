//! The least spread of nests made up of the coils of a bench, as a mixed-integer program:
//! `data/matching.json`.

use super::{mm, newtons};
use approx::abs_diff_eq;
use coilnest::frame::Place;
use coilnest::matching::{Coil, Role, matched};
use coilnest::quantity::unit::newton;
use serde::Deserialize;

#[derive(Deserialize)]
struct Data {
    benches: Vec<Bench>,
}

#[derive(Deserialize)]
struct Bench {
    /// Loads of the coils, role by role.
    roles: Vec<Vec<f64>>,
    nests: u32,
    spread: f64,
}

#[test]
fn no_choice_of_coils_is_more_even_than_ours() {
    let data: Data = serde_json::from_str(include_str!("../../data/matching.json")).unwrap();
    for bench in &data.benches {
        let role = |loads: &Vec<f64>| Role {
            name: "coil".into(),
            coils: loads.iter().map(|load| Coil::new(newtons(*load))).collect(),
            new: None,
        };
        let roles: Vec<Role> = bench.roles.iter().map(role).collect();
        let seat = |seat: u32| Place {
            along: mm(f64::from(seat / 2) * 900.0),
            across: mm(f64::from(seat % 2) * 1000.0),
        };
        let seats: Vec<Place> = (0..bench.nests).map(seat).collect();
        let found = matched(&roles, &seats).unwrap();
        let spread = found.reach.spread.get::<newton>();
        // Loads have one decimal, so that two spreads differ by 0.1 or not at all.
        assert!(
            abs_diff_eq!(spread, bench.spread, epsilon = 1e-6),
            "{spread} for {}",
            bench.spread
        );
        assert!(found.reach.exact());
    }
    assert_eq!(data.benches.len(), 17);
}

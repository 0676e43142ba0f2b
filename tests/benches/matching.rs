//! How long it takes to find which coil belongs in which seat, by how many nests and coils there are.

use coilnest::frame::Place;
use coilnest::matching::{Coil, Matching, MatchingError, Role, matched};
use coilnest::quantity::unit::{millimeter, newton};
use coilnest::quantity::{Force, Length};
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// Nests, coils of each role, roles.
type Size = (u32, u32, u32);

/// Invented: loads about a mean, as even as a linear congruence has them.
fn bench((nests, coils, roles): Size) -> (Vec<Role>, Vec<Place>) {
    let mut state = 20_261_125_u32;
    let mut even = || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state) / f64::from(u32::MAX)
    };
    let mut role = |number: u32| {
        let mean = 9000.0 / f64::from(number + 1);
        let mut load = || Force::new::<newton>(mean * (0.95 + 0.05 * (even() + even())));
        Role {
            name: format!("role {number}"),
            coils: (0..coils).map(|_| Coil::new(load())).collect(),
            new: Some(Force::new::<newton>(mean)),
        }
    };
    let mm = Length::new::<millimeter>;
    let seat = |number: u32| Place {
        along: mm(10.0 * f64::from(number / 2)),
        across: mm(1000.0 * f64::from(number % 2) - 500.0),
    };
    ((0..roles).map(&mut role).collect(), (0..nests).map(seat).collect())
}

#[divan::bench(
    args = [(8, 24, 2), (8, 24, 3), (8, 8, 3), (8, 24, 4), (200, 400, 2), (2000, 5000, 2), (5000, 5000, 2), (2000, 5000, 3)],
    sample_count = 5
)]
fn match_coils(bencher: Bencher<'_, '_>, size: Size) {
    let (roles, seats) = bench(size);
    bencher.bench_local(|| -> Result<Matching, MatchingError> {
        matched(black_box(&roles), black_box(&seats))
    });
}

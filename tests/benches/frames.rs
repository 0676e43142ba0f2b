//! How long a frame takes to settle, and a plan of shims to be found, by how many nests it stands on.

use coilnest::frame::shims::{Aim, Plan, ShimError, Stock};
use coilnest::frame::{Frame, FrameError, Place, Settled, Support, Weight};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{inch, millimeter, newton, newton_per_millimeter};
use coilnest::quantity::{Force, Length, SpringRate};
use divan::{Bencher, black_box};
use std::error::Error;

fn main() {
    divan::main();
}

/// Invented: pairs of nests of two coils, 1.2 m apart along and 1.6 m across, on uneven ground, with
/// the weight off the middle and, of more than four, the last pair high.
fn frame(nests: u32) -> Result<(Frame, Weight), Box<dyn Error>> {
    let (mm, rate) = (Length::new::<millimeter>, SpringRate::new::<newton_per_millimeter>);
    let coil = |free, of, solid| -> Result<Member, Box<dyn Error>> {
        Ok(Member {
            free: mm(free),
            law: Law::linear(rate(of))?,
            solid: Some(mm(solid)),
            raise: mm(0.0),
        })
    };
    let nest = Nest::new(vec![coil(254.0, 402.3, 160.0)?, coil(242.0, 187.6, 149.4)?])?;
    let mut supports = Vec::new();
    for number in 0..nests {
        let (pair, side) = (f64::from(number / 2), f64::from(number % 2));
        let high = if nests > 4 && number + 2 >= nests { 40.0 } else { 0.0 };
        supports.push(Support {
            place: Place { along: mm(1200.0 * pair), across: mm(1600.0 * side - 800.0) },
            nest: nest.clone(),
            stop: None,
            shim: mm(0.0),
            ground: mm(high + 3.0 * f64::from(number * 7 % 5)),
        });
    }
    let middle = 1200.0 * f64::from(nests / 2 - 1) / 2.0;
    let centre = Place { along: mm(middle + 85.0), across: mm(-40.0) };
    let load = Force::new::<newton>(15_000.0 * f64::from(nests));
    Ok((Frame::new(supports, None)?, Weight { load, centre }))
}

#[divan::bench(args = [4, 8, 20, 50, 100, 200])]
fn settle(bencher: Bencher<'_, '_>, nests: u32) {
    let Ok((frame, weight)) = frame(nests) else { return };
    bencher.bench_local(|| -> Result<Settled, FrameError> {
        black_box(&frame).settle(black_box(weight))
    });
}

/// 1/16, 1/8 and 1/4 in up to 1/2 in.
#[divan::bench(args = [4, 6, 8, 20, 50, 200])]
fn shims_for_loads(bencher: Bencher<'_, '_>, nests: u32) {
    shims(bencher, nests, Aim::Loads, 1.0 / 16.0, 0.5);
}

/// The same for a level frame.
#[divan::bench(args = [4, 6, 8, 20, 50, 200])]
fn shims_for_corners(bencher: Bencher<'_, '_>, nests: u32) {
    shims(bencher, nests, Aim::Corners, 1.0 / 16.0, 0.5);
}

/// By 1/64 in up to 2 in: 129 stacks under each of four nests.
#[divan::bench(args = [Aim::Loads, Aim::Corners])]
fn shims_of_many_thicknesses(bencher: Bencher<'_, '_>, aim: Aim) {
    shims(bencher, 4, aim, 1.0 / 64.0, 2.0);
}

/// From the thinnest, twice it and four times it.
fn shims(bencher: Bencher<'_, '_>, nests: u32, aim: Aim, thinnest: f64, largest: f64) {
    let Ok((frame, weight)) = frame(nests) else { return };
    let inches = Length::new::<inch>;
    let thicknesses = [thinnest, 2.0 * thinnest, 4.0 * thinnest].map(inches);
    let Ok(stock) = Stock::new(&thicknesses, inches(largest)) else { return };
    let may = vec![true; frame.supports().len()];
    bencher.bench_local(|| -> Result<Plan, ShimError> {
        black_box(&frame).shimmed(black_box(weight), &stock, &may, aim)
    });
}

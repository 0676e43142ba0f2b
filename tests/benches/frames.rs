//! How long a frame takes to settle, by how many nests it stands on.

use coilnest::frame::{Frame, FrameError, Place, Settled, Support, Weight};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
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

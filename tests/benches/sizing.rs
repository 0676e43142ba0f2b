//! How long it takes to map every bar with every count of turns, and to search for drawings and pairs.

use coilnest::coil::ends::Ends;
use coilnest::quantity::unit::{
    gigapascal, kilogram_per_cubic_meter, megapascal, millimeter, newton, newton_per_millimeter,
};
use coilnest::quantity::{Force, Length, MassDensity, Pressure, SpringRate};
use coilnest::sizing::{
    Allowed, Balance, Factor, Make, Metal, Need, NeedError, PairSizing, Rank, Reserve, Room,
    Rounding, Sizing, Work, steps,
};
use divan::{Bencher, black_box};

fn main() {
    divan::main();
}

/// Invented: 30 kN at 220 mm and 500 N/mm in a pocket of 220 mm.
fn need() -> Need {
    let mm = Length::new::<millimeter>;
    let stress = Pressure::new::<megapascal>(620.0);
    let allowed = Allowed::Stress { stress, factor: Factor::Bergstrasser };
    Need {
        work: Work::at_height(
            Force::new::<newton>(30_000.0),
            mm(220.0),
            SpringRate::new::<newton_per_millimeter>(500.0),
        ),
        room: Room {
            pocket: Some(mm(220.0)),
            post: Some(mm(40.0)),
            clearance: mm(2.0),
            gap: Some(mm(3.0)),
            ..Room::default()
        },
        reserve: Reserve::default(),
        make: Make::usual(Ends::TaperedGround),
        metal: Metal {
            shear_modulus: Pressure::new::<gigapascal>(78.5),
            poisson: 0.31,
            density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
            at_load: allowed,
            at_solid: Some(Allowed::Stress {
                stress: Pressure::new::<megapascal>(900.0),
                factor: Factor::Uncorrected,
            }),
        },
    }
}

/// So many bars from 10 mm up by a millimetre.
fn bars(count: u32) -> Vec<Length> {
    (0..count).map(|bar| Length::new::<millimeter>(10.0 + f64::from(bar))).collect()
}

fn sizing() -> Result<Sizing, NeedError> {
    Sizing::new(need(), &bars(60), &steps(2.0, 2.0 + 199.0 * 0.0625, 0.0625))
}

#[divan::bench]
fn map_of_60_bars_and_200_turns(bencher: Bencher<'_, '_>) {
    let Ok(sizing) = sizing() else { return };
    bencher.bench_local(|| black_box(&sizing).map());
}

#[divan::bench]
fn designs_of_60_bars_and_200_turns(bencher: Bencher<'_, '_>) {
    let Ok(sizing) = sizing() else { return };
    bencher.bench_local(|| black_box(&sizing).designs(&Rounding::METRIC, Rank::Mass));
}

#[divan::bench(args = [10, 20, 40])]
fn pairs_of_bars_and_50_turns(bencher: Bencher<'_, '_>, count: u32) {
    let turns = steps(2.0, 14.25, 0.25);
    let Ok(sizing) = PairSizing::new(need(), &bars(count), &turns, Balance::default()) else {
        return;
    };
    bencher.bench_local(|| black_box(&sizing).designs(&Rounding::METRIC, Rank::Mass));
}

//! Readings that a known spring made, and readings that no spring makes.

use super::*;
use crate::coil::Diameters;
use crate::coil::ends::Turns;
use crate::coil::rate;
use crate::quantity::unit::{gigapascal, millimeter, newton, newton_per_meter};
use crate::quantity::{Pressure, SpringRate};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn reading(height_mm: f64, newtons: f64) -> Reading {
    Reading { height: mm(height_mm), load: Force::new::<newton>(newtons) }
}

fn readings(pairs: &[(f64, f64)]) -> Vec<Reading> {
    pairs.iter().map(|(height, load)| reading(*height, *load)).collect()
}

fn loading(pairs: &[(f64, f64)]) -> Result<LoadTest, LoadTestError> {
    LoadTest::new(readings(pairs), vec![], None)
}

/// A coil of so much N/mm, to be read at shares of its free height, in any order.
fn any_press() -> impl Strategy<Value = (f64, f64, Vec<f64>)> {
    let shares = prop::collection::btree_set(40_u32..=95, 2..=12)
        .prop_map(|set| set.into_iter().map(|share| f64::from(share) / 100.0).collect::<Vec<_>>())
        .prop_shuffle();
    (100.0..600.0, 1.0..2000.0, shares)
}

proptest! {
    #[test]
    fn the_fit_is_the_spring_that_made_the_readings((free, rate, shares) in any_press()) {
        let points: Vec<_> = shares.iter().map(|share| (free * share, rate * free * (1.0 - share))).collect();
        let fit = loading(&points).unwrap().fit();
        prop_assert!((fit.rate.value / 1000.0 / rate - 1.0).abs() <= 1e-9);
        prop_assert!((fit.free.get::<millimeter>() / free - 1.0).abs() <= 1e-9);
        prop_assert_eq!(fit.closing, None);
        prop_assert_eq!(fit.rate_doubt.is_some(), points.len() > 2);
        prop_assert!(fit.scatter.is_none_or(|scatter| scatter.value <= 1e-9 * rate * free));
        prop_assert_eq!(fit.residuals.len(), points.len());
    }

    /// Wherever the coils close between the second reading and the last but one.
    #[test]
    fn the_closing_height_is_found(
        free in 100.0..600.0_f64, rate in 1.0..2000.0_f64, stiffer in 1.06..20.0_f64, count in 5..12_u32, place in 0.0..1.0_f64, stray in 0..12_u32
    ) {
        let step = free * 0.05;
        let height = |number: u32| free - step * f64::from(number + 1);
        let close: f64 = height(1) + (height(count - 2) - height(1)) * place;
        let points: Vec<_> = (0..count).map(|number| {
            // The order of the readings is of no matter.
            let height: f64 = height((number + stray) % count);
            (height, rate * (free - height) + rate * (stiffer - 1.0) * (close - height).max(0.0))
        }).collect();
        let fit = loading(&points).unwrap().fit();
        let closing = fit.closing.unwrap();
        prop_assert!((closing.height.get::<millimeter>() - close).abs() <= 1e-6 * free, "{close} {closing:?}");
        prop_assert!((closing.rate.value / 1000.0 / (rate * stiffer) - 1.0).abs() <= 1e-9);
        prop_assert!((fit.rate.value / 1000.0 / rate - 1.0).abs() <= 1e-9);
        prop_assert!((fit.free.get::<millimeter>() / free - 1.0).abs() <= 1e-9);
        prop_assert!(fit.residuals.iter().all(|residual| residual.off.value.abs() <= 1e-9 * rate * stiffer * free));
    }

    /// A curve that grows softer has no coils that close, however clear its bend.
    #[test]
    fn a_softer_lower_part_is_no_closing(softer in 0.1..0.95) {
        let points: Vec<_> = (1..=10).map(|number| {
            let down = f64::from(number) * 10.0;
            (200.0 - down, 100.0 * down - 100.0 * (1.0 - softer) * (down - 55.0).max(0.0))
        }).collect();
        prop_assert_eq!(loading(&points).unwrap().fit().closing, None);
    }

    #[test]
    fn the_turns_are_those_of_the_coil(bar in 1.0..50.0, index in 3.0..12.0, turns in 1.0..20.0) {
        let coil = Diameters::from_mean(mm(bar), mm(bar * index)).unwrap();
        let modulus = Pressure::new::<gigapascal>(78.5);
        let rate = rate::rate(modulus, coil, Turns::new(turns, 0.0).unwrap()).value / 1000.0;
        let fit = loading(&[(90.0, rate * 10.0), (70.0, rate * 30.0)]).unwrap().fit();
        prop_assert!((fit.active_turns(coil, modulus) / turns - 1.0).abs() < 1e-9);
    }
}

/// Worked by hand: h 90, 80, 70 mm, F 110, 190, 310 N. Means 80 mm and 203 1/3 N;
/// Σ(h − h̄)² = 200 mm², k = (10 · (−93 1/3) · (−1) + 10 · 106 2/3)/200 = 10 N/mm, L0 = 100 1/3 mm.
/// Residuals 6 2/3, −13 1/3, 6 2/3 N, sum of squares 266 2/3, one degree of freedom.
#[test]
fn three_readings_by_hand() {
    let fit = loading(&[(80.0, 190.0), (90.0, 110.0), (70.0, 310.0)]).unwrap().fit();
    assert_relative_eq!(fit.rate.value, 10_000.0, max_relative = 1e-12);
    assert_relative_eq!(fit.free.get::<millimeter>(), 100.0 + 1.0 / 3.0, max_relative = 1e-12);
    let squares: f64 = 800.0 / 3.0;
    let scatter = squares.sqrt();
    assert_relative_eq!(fit.scatter.unwrap().value, scatter, max_relative = 1e-12);
    let rate_doubt = scatter / 200f64.sqrt() * 1000.0;
    assert_relative_eq!(fit.rate_doubt.unwrap().value, rate_doubt, max_relative = 1e-12);
    let away: f64 = 20.0 + 1.0 / 3.0;
    let free_doubt = scatter / 10.0 * (1.0 / 3.0 + away * away / 200.0).sqrt();
    let found = fit.free_doubt.unwrap().get::<millimeter>();
    assert_relative_eq!(found, free_doubt, max_relative = 1e-12);
    let off: Vec<f64> = fit.residuals.iter().map(|residual| residual.off.value).collect();
    for (off, expected) in off.iter().zip([20.0 / 3.0, -40.0 / 3.0, 20.0 / 3.0]) {
        assert_relative_eq!(*off, expected, max_relative = 1e-9);
    }

    let drawing = Doubted {
        value: SpringRate::new::<newton_per_meter>(9000.0),
        doubt: SpringRate::new::<newton_per_meter>(500.0),
    };
    let difference = fit.rate_against(drawing);
    assert_relative_eq!(difference.by.value, 1000.0, max_relative = 1e-9);
    let both = (rate_doubt.powi(2) + 500.0 * 500.0).sqrt();
    assert_relative_eq!(difference.in_doubts.unwrap(), 1000.0 / both, max_relative = 1e-9);
    let tape = fit.free_against(Doubted { value: mm(102.0), doubt: mm(0.5) });
    assert_relative_eq!(tape.by.get::<millimeter>(), -5.0 / 3.0, max_relative = 1e-9);
    let both = (free_doubt.powi(2) + 0.25).sqrt();
    assert_relative_eq!(tape.in_doubts.unwrap(), -5.0 / 3.0 / both, max_relative = 1e-9);
}

#[test]
fn two_readings_leave_the_doubt_open() {
    let fit = loading(&[(90.0, 100.0), (70.0, 300.0)]).unwrap().fit();
    assert_eq!((fit.rate_doubt, fit.free_doubt, fit.scatter), (None, None, None));
    let difference = fit.free_against(Doubted { value: mm(101.0), doubt: mm(0.5) });
    assert_relative_eq!(difference.by.get::<millimeter>(), -1.0, max_relative = 1e-9);
    assert_eq!(difference.in_doubts, None);
}

#[test]
fn a_plate_that_stands_clear_does_not_bend_the_line() {
    let fit = loading(&[(140.0, 0.0), (100.0, 0.0), (90.0, 100.0), (70.0, 300.0)]).unwrap().fit();
    assert_relative_eq!(fit.free.get::<millimeter>(), 100.0, max_relative = 1e-12);
    assert_eq!(fit.residuals.len(), 2);
}

/// Half a newton of scatter on 10 N/mm; the curve is steeper from 62 mm on.
#[test]
fn scatter_leaves_a_doubt_on_the_closing_height() {
    let scatter = [0.4, -0.5, 0.3, -0.2, 0.1, -0.4, 0.5, -0.3, 0.2, -0.1];
    let points: Vec<_> = (0..)
        .zip(scatter)
        .map(|(number, off)| {
            let height = 90.0 - 5.0 * f64::from(number);
            (height, 10.0 * (100.0 - height) + 5.0 * (62.0 - height).max(0.0) + off)
        })
        .collect();
    let fit = loading(&points).unwrap().fit();
    let closing = fit.closing.unwrap();
    let (off, doubt) = (closing.height - mm(62.0), closing.height_doubt);
    assert!(off.abs() <= 3.0 * doubt && doubt > mm(0.02) && doubt < mm(0.3), "{closing:?}");
    assert!(closing.chance > 0.0 && closing.chance < 1e-4);
    assert_eq!(fit.residuals.len(), 10);
}

/// Four readings are as many as two lines have numbers: nothing is left to tell scatter by.
#[test]
fn four_readings_show_no_closing() {
    let fit = loading(&[(90.0, 100.0), (80.0, 200.0), (70.0, 400.0), (60.0, 600.0)]).unwrap().fit();
    assert_eq!(fit.closing, None);
}

/// The plate slips and all loads from 60 mm on are off by as much: two lines, but no coil closes
/// where they would cross.
#[test]
fn a_step_in_the_load_is_no_closing() {
    for (step, steeper) in [(200.0, 1.0), (-30.0, 1.0)] {
        let points: Vec<_> = (1..14)
            .map(|number| {
                let height = 98.0 - 5.0 * f64::from(number);
                let below = if height < 60.0 { step + steeper * (60.0 - height) } else { 0.0 };
                (height, 10.0 * (100.0 - height) + below)
            })
            .collect();
        assert_eq!(loading(&points).unwrap().fit().closing, None, "{step}");
    }
}

/// The first two readings show no rise. A line through them alone would have no free height.
#[test]
fn a_level_start_is_not_taken_for_the_spring() {
    let fit = loading(&[(90.0, 100.0), (80.0, 100.0), (70.0, 200.0), (60.0, 300.0), (50.0, 400.0)])
        .unwrap()
        .fit();
    assert_eq!(fit.closing, None);
    assert!(fit.rate.value > 0.0 && fit.free > mm(90.0) && fit.free < mm(110.0), "{fit:?}");
}

/// Three heights, each read twice, and twice as steep below the middle one: there is no way to part
/// them with two heights on either side, and the middle one is not counted on both.
#[test]
fn readings_at_one_height_stay_together() {
    let test = loading(&[
        (90.0, 100.0),
        (90.0, 101.0),
        (80.0, 201.0),
        (80.0, 202.0),
        (70.0, 401.0),
        (70.0, 402.0),
    ]);
    assert_eq!(test.unwrap().fit().closing, None);
}

#[test]
fn what_is_lost_on_the_way_back_is_read_off_the_loading_curve() {
    let down = readings(&[(140.0, 0.0), (100.0, 0.0), (90.0, 100.0), (70.0, 300.0)]);
    let up = readings(&[(99.0, 0.0), (88.0, 100.0), (79.0, 200.0), (60.0, 500.0)]);
    let lost = LoadTest::new(down, up, None).unwrap().hysteresis().unwrap();
    let gaps: Vec<f64> = lost.gaps.iter().map(|gap| gap.lower.get::<millimeter>()).collect();
    assert_eq!(gaps.len(), 3);
    for (gap, expected) in gaps.iter().zip([1.0, 2.0, 1.0]) {
        assert_relative_eq!(*gap, expected, max_relative = 1e-9);
    }
    assert_relative_eq!(lost.mean.get::<millimeter>(), 4.0 / 3.0, max_relative = 1e-9);
    assert_eq!(lost.greatest.reading, reading(88.0, 100.0));
    assert_eq!(loading(&[(90.0, 100.0), (70.0, 300.0)]).unwrap().hysteresis(), None);
}

#[test]
fn a_refusal_names_the_reading_what_was_expected_and_the_remedy() {
    let good = [(90.0, 100.0), (70.0, 300.0)];
    let refused = |pairs: &[(f64, f64)]| loading(pairs).unwrap_err().to_string();
    assert!(refused(&[]).starts_with("loading readings with a load: 0; a load at two heights"));
    assert!(
        refused(&[(90.0, 100.0)])
            .starts_with("loading readings with a load: 1; a load at two heights")
    );
    assert!(
        refused(&[(100.0, 0.0), (90.0, 100.0)])
            .starts_with("loading readings with a load: 1; a load at two heights")
    );
    assert!(
        refused(&[(90.0, 100.0), (90.0, 110.0)]).contains("all 2 loading readings are at 90 mm")
    );
    assert!(
        refused(&[(90.0, 100.0), (-70.0, 300.0)])
            .contains("loading reading 2 has a height of −70 mm")
    );
    assert!(
        refused(&[(90.0, -100.0), (70.0, 300.0)])
            .contains("reading 1 has a load of −100 N; zero or more")
    );
    assert!(refused(&[(90.0, f64::NAN), (70.0, 300.0)]).contains("load of – N"));
    assert!(refused(&[(f64::INFINITY, 1.0), (70.0, 300.0)]).contains("height of – mm"));
    assert!(refused(&[(90.0, 100.0), (70.0, 100.0)]).contains("the load is 100 N at every height"));
    assert_eq!(
        refused(&[(80.0, 250.0), (70.0, 200.0), (60.0, 300.0)]),
        "loading readings: 250 N at 80 mm, but only 200 N at 70 mm, which is lower; a load that rises as the height falls was expected: see whether the two were exchanged, or loading and unloading were mixed"
    );
    let late = [(90.0, 100.0), (80.0, 300.0), (70.0, 200.0), (60.0, 400.0)];
    assert!(refused(&late).contains("300 N at 80 mm, but only 200 N"));
    let unloading = LoadTest::new(readings(&good), readings(&[(80.0, 90.0), (60.0, 50.0)]), None);
    assert!(unloading.unwrap_err().to_string().starts_with("unloading readings: 90 N at 80 mm"));
    // Repeated at one height a load may be less than the one before it.
    assert!(loading(&[(90.0, 100.0), (90.0, 98.0), (70.0, 300.0)]).is_ok());

    let against = |free| {
        let tape = Doubted { value: mm(free), doubt: mm(0.5) };
        LoadTest::new(readings(&good), vec![], Some(tape))
    };
    assert_eq!(
        against(88.0).unwrap_err().to_string(),
        "loading reading 1 has a load of 100 N at 90 mm, above the free height of 88 mm; a height below it was expected: measure the free height again, or see whether the press showed that load empty"
    );
    // A millimetre above is within three of the tape's doubts.
    assert!(against(89.0).is_ok() && against(100.0).is_ok());
    let clear = LoadTest::new(
        readings(&[(120.0, 0.0), (90.0, 100.0), (70.0, 300.0)]),
        vec![],
        Some(Doubted::exact(mm(100.0))),
    );
    assert!(clear.is_ok());
}

/// NIST Statistical Reference Datasets, linear regression, Norris: 36 observations, x before y.
/// Data and certified values as quoted in the own checks of two public statistics packages.
#[rustfmt::skip]
const NORRIS: [(f64, f64); 36] = [
    (0.2, 0.1), (337.4, 338.8), (118.2, 118.1), (884.6, 888.0), (10.1, 9.2), (226.5, 228.1),
    (666.3, 668.5), (996.3, 998.5), (448.6, 449.1), (777.0, 778.9), (558.2, 559.2), (0.4, 0.3),
    (0.6, 0.1), (775.5, 778.1), (666.9, 668.8), (338.0, 339.3), (447.5, 448.9), (11.6, 10.8),
    (556.0, 557.7), (228.1, 228.3), (995.8, 998.0), (887.6, 888.8), (120.2, 119.6), (0.3, 0.3),
    (0.3, 0.6), (556.8, 557.6), (339.1, 339.3), (887.2, 888.0), (999.0, 998.5), (779.0, 778.9),
    (11.1, 10.2), (118.3, 117.6), (229.2, 228.9), (669.1, 668.4), (448.9, 449.2), (0.5, 0.2),
];

/// The line of a press test is that of least squares, to the digits that are certified.
#[test]
fn the_line_is_the_certified_one_of_a_reference_data_set() {
    let mut pairs = NORRIS;
    pairs.sort_by(|one, other| other.0.total_cmp(&one.0));
    let bare = |(x, y): (f64, f64)| Reading {
        height: Length::new::<crate::quantity::unit::meter>(x),
        load: Force::new::<newton>(y),
    };
    let line = straight::Straight::through(&pairs.map(bare)).unwrap();
    let of_load = line.squares / line.degrees();
    // The load falls with the height in a press, and rises here.
    assert_relative_eq!(-line.rate, 1.002_116_818_020_45, max_relative = 1e-13);
    let intercept = -line.off(bare((0.0, 0.0)));
    assert_relative_eq!(intercept, -0.262_323_073_774_029, max_relative = 1e-10);
    assert_relative_eq!(of_load.sqrt(), 0.884_796_396_144_373, max_relative = 1e-12);
    let rate_doubt = line.variance_of_rate(of_load).sqrt();
    assert_relative_eq!(rate_doubt, 0.429_796_848_199_937e-3, max_relative = 1e-12);
    let doubt_at_none = line.variance_at(0.0, of_load).sqrt();
    assert_relative_eq!(doubt_at_none, 0.232_818_234_301_152, max_relative = 1e-12);
}

//! Whole jobs and their whole reports.
//!
//! Every report is kept and compared. What matters most in each is worked out again here, in inches
//! and pounds and by hand, from the numbers of the job: the jobs are invented and their numbers
//! round, so that a pencil is enough for most.

use approx::{abs_diff_eq, assert_abs_diff_eq, relative_eq};
use coilnest::job::report::{NestReport, Report, StateReport, VerdictReport, Word};
use coilnest::job::{assess, file};
use coilnest_tables::TABLES;
use coilnest_tests::by_hand::{INCH, MM, POUND_FORCE, PSI, is, rate, some};
use coilnest_tests::{corpus, job_path};
use serde_json::json;
use statrs::distribution::{ContinuousCDF, Normal};

const FOOT_POUND: f64 = POUND_FORCE * 12.0 * INCH;

fn report(name: &str) -> Report {
    let kept = corpus::named(name).unwrap();
    assess(&file::open(&kept.text).unwrap(), &TABLES)
}

/// Height, load, and the load of every seat of a state, in inches and pounds.
#[track_caller]
fn stands(state: &StateReport, height: f64, load: f64, seats: &[f64]) {
    is(&state.height, height, INCH);
    is(&state.load, load, POUND_FORCE);
    assert_eq!(state.seats.len(), seats.len());
    for (seat, load) in state.seats.iter().zip(seats) {
        is(&seat.load, *load, POUND_FORCE);
        assert_eq!(seat.touching, *load > 0.0);
    }
}

/// Height, load and seat of every bend, in inches and pounds.
#[track_caller]
fn bends(nest: &NestReport, expected: &[(f64, f64, usize)]) {
    assert_eq!(nest.breakpoints.len(), expected.len());
    for (bend, (height, load, seat)) in nest.breakpoints.iter().zip(expected) {
        is(&bend.height, *height, INCH);
        is(&bend.load, *load, POUND_FORCE);
        assert_eq!(bend.seat, *seat);
    }
}

fn verdict(nest: &NestReport, seat: usize) -> &VerdictReport {
    nest.seats[seat].verdict.as_ref().expect("a verdict")
}

/// Φ by another library.
fn below(z: f64) -> f64 {
    Normal::standard().cdf(z)
}

#[track_caller]
fn chance(found: Option<f64>, expected: f64) {
    let found = found.expect("a probability");
    assert!(abs_diff_eq!(found, expected, epsilon = 1e-9), "{found} and not {expected}");
}

#[test]
fn every_job_has_the_report_that_is_kept() {
    let jobs = corpus::all().unwrap();
    let kept = |job: &corpus::KeptJob| corpus::keep(&job.report_path(), &job.report()?);
    let failures: Vec<String> = jobs.iter().filter_map(|job| kept(job).err()).collect();
    assert!(jobs.len() > 12, "{} jobs", jobs.len());
    assert!(failures.is_empty(), "{}", failures.join("\n"));
}

#[test]
fn the_demo() {
    let report = report("quarry-tramway");
    // 78.5 GPa; outer D = 7 3/4 − 1 1/16, n = 7 1/4 − 1 1/2; inner D = 5 1/8 − 11/16, n = 10 3/4 − 1 1/2.
    let shear = 78.5e9 / PSI;
    let outer = rate(shear, 1.0625, 6.6875, 5.75);
    let inner = rate(shear, 0.6875, 4.4375, 9.25);
    assert!((outer - 1054.67).abs() < 0.005 && (inner - 393.36).abs() < 0.005);
    is(some(report.coils[0].rate.as_ref()), outer, POUND_FORCE / INCH);
    is(some(report.coils[1].rate.as_ref()), inner, POUND_FORCE / INCH);
    // Lc = d (nt − 0.3): 1.0625 · 6.95 and 0.6875 · 10.45.
    is(some(report.coils[0].solid.as_ref()), 7.384_375, INCH);
    is(some(report.coils[1].solid.as_ref()), 7.184_375, INCH);

    let left = &report.nests[0];
    // 13 7/8 and 1/64 under it: the mean is 1/128 under. 13 7/16 and 1/64 over it: 1/128 over.
    let (a, b) = (13.875 - 1.0 / 128.0, 13.4375 + 1.0 / 128.0);
    is(some(left.seats[0].free.as_ref()), a, INCH);
    is(some(left.seats[1].free.as_ref()), b, INCH);
    let at = |height: f64| [outer * (a - height), inner * (b - height)];
    let stand = |state: &StateReport, height: f64| {
        stands(state, height, at(height).iter().sum(), &at(height));
    };
    stand(left.working.as_ref().unwrap(), 11.5);
    stand(&left.answers[0], 12.0);
    stand(&left.answers[1], 7.384_375);
    bends(
        left,
        &[(a, 0.0, 0), (b, outer * (a - b), 1), (7.384_375, at(7.384_375).iter().sum(), 0)],
    );
    // Both halves of a triangle, F s / 2.
    let energy = 0.5 * (outer * (a - 11.5).powi(2) + inner * (b - 11.5).powi(2)) / 12.0;
    is(some(left.stored_energy.as_ref()), energy, FOOT_POUND);

    // Two readings 1/64 apart, one with half-width 1/32 and one with 1/64; tape 0.7 mm, ends 1/64.
    let sixty_fourth = 1.0 / 64.0;
    let graduation = (2.0_f64.powi(2) + 1.0) / 3.0 / 2.0 * sixty_fourth * sixty_fourth;
    let tape = (0.7 / 25.4_f64).powi(2) / 3.0;
    // s² = (1/64)²/2, which is more than a place of 1/64 half-width is taken for, over m = 2.
    let places = sixty_fourth * sixty_fourth / 4.0;
    let u = (graduation + tape + places).sqrt();
    // What one coil does not share with the other adds up by squares: its reading, and half a turn of
    // its dead ones, for the two are of two drawings. Tape and steel (1.5 of 78.5 GPa) are the same
    // for both, and add up.
    let own = (graduation + places).sqrt();
    let [outer_load, inner_load] = at(11.5);
    let half = 0.5 / 3.0_f64.sqrt();
    let parts = [
        outer * own,
        inner * own,
        outer_load * half / 5.75,
        inner_load * half / 9.25,
        (outer + inner) * tape.sqrt(),
        (outer_load + inner_load) * 1.5 / 78.5,
    ];
    let expected = parts.iter().map(|part| part * part).sum::<f64>().sqrt();
    let doubt = left.working.as_ref().unwrap().load.doubt_si.unwrap() / POUND_FORCE;
    assert!(relative_eq!(doubt, expected, max_relative = 1e-9), "{doubt} and not {expected}");
    // Inner, left: 3/16 less 1/128 under the book, and so 7/128 below the least allowed.
    let inner_left = verdict(left, 1);
    assert_eq!(inner_left.word, Word::Short);
    chance(inner_left.p_short, below(7.0 / 128.0 / u));
    // Outer, left: 1/16 and 1/128 under the book, 7/128 above the least allowed.
    let outer_left = verdict(left, 0);
    assert_eq!(outer_left.word, Word::Good);
    chance(outer_left.p_in, below(7.0 / 128.0 / u) - below(-25.0 / 128.0 / u));
    is(some(left.seats[0].load_cost.as_ref()), -outer * 9.0 / 128.0, POUND_FORCE);
    // Inner, right: 1/128 below the least allowed.
    let inner_right = verdict(&report.nests[1], 1);
    assert_eq!(inner_right.word, Word::TooClose);
    chance(inner_right.p_short, below(1.0 / 128.0 / u));
    // Φ(z) = 0.95 at z = 1.6449.
    is(some(inner_right.would_settle.as_ref()), 1.0 / 128.0 / 1.644_853_627, INCH);
}

#[test]
fn three_coils() {
    let report = report("three-coils");
    // Outer: 11.2e6 · 1.25⁴ / (8 · 8³ · 6); middle: D = 4 3/4 + 3/4, n = 11 − 2; inner: n = 14 − 2.
    let rates =
        [rate(11.2e6, 1.25, 8.0, 6.0), rate(11.2e6, 0.75, 5.5, 9.0), rate(11.2e6, 0.5, 3.0, 12.0)];
    let free = [14.0, 13.5, 13.0];
    let at = |height: f64| -> Vec<f64> {
        rates.iter().zip(free).map(|(rate, free)| rate * (free - height).max(0.0)).collect()
    };
    let nest = &report.nests[0];
    let total = |height: f64| at(height).iter().sum::<f64>();
    for (state, height) in nest.answers.iter().zip([13.75, 13.25, 12.0, 14.0, 9.375]) {
        stands(state, height, total(height), &at(height));
    }
    // 1112.62 · 2 1/2 + 295.83 · 2 + 270.06 · 1 1/2 = 3778.3 lb.
    assert_abs_diff_eq!(total(11.5), 3778.3, epsilon = 0.05);
    stands(nest.working.as_ref().unwrap(), 11.5, total(11.5), &at(11.5));
    // Solid: 1 1/4 · 7.2 = 9; 1/2 · 14 = 7; of closed ends that are not ground the greater of the
    // textbook's 3/4 · 12 = 9 and EN 13906-1's 3/4 · 12 1/2 = 9 3/8 (from memory).
    is(some(nest.solid_height.as_ref()), 9.375, INCH);
    assert_eq!(nest.solid_first, Some(1));
    assert_eq!(nest.touch_order, [0, 1, 2]);
    bends(
        nest,
        &[(14.0, 0.0, 0), (13.5, total(13.5), 1), (13.0, total(13.0), 2), (9.375, total(9.375), 1)],
    );
    // (6 3/4 − 6 1/4) / 2 and (4 3/4 − 3 1/2) / 2, though the drawings stand in another order.
    let gaps: Vec<_> = nest.clearances.iter().map(|gap| (gap.outer, gap.inner)).collect();
    assert_eq!(gaps, [(0, 1), (1, 2)]);
    is(some(nest.clearances[0].radial_free.as_ref()), 0.25, INCH);
    is(some(nest.clearances[1].radial_free.as_ref()), 0.625, INCH);
}

#[test]
fn a_wider_coil_shorter_than_its_inner_one() {
    let report = report("wider-shorter");
    let nest = &report.nests[0];
    assert_eq!((nest.touch_order.as_slice(), nest.solid_first), ([1, 0].as_slice(), Some(1)));
    // Inner from 12 at 500, outer from 11 at 1200.
    bends(nest, &[(12.0, 0.0, 1), (11.0, 500.0, 0), (6.5, 8150.0, 1)]);
    stands(nest.working.as_ref().unwrap(), 10.0, 2200.0, &[1200.0, 1000.0]);
    stands(&nest.answers[0], 11.5, 250.0, &[0.0, 250.0]);
    // 400 / 500 = 0.8 below 12, still above 11; 850 past the bend / 1700 = 1/2 below 11.
    stands(&nest.answers[1], 11.2, 400.0, &[0.0, 400.0]);
    stands(&nest.answers[2], 10.5, 1350.0, &[600.0, 750.0]);
    stands(&nest.answers[3], 6.5, 8150.0, &[5400.0, 2750.0]);
    // The wider one is still the outer one: (5 − 4 5/8) / 2.
    assert_eq!((nest.clearances[0].outer, nest.clearances[0].inner), (0, 1));
    is(some(nest.clearances[0].radial_free.as_ref()), 0.1875, INCH);
    // With their rates given, nothing is worked out from a steel.
    assert!(report.notes.iter().all(|note| note.code != "steel-assumed"));
}

#[test]
fn a_coil_that_stands_loose() {
    let report = report("stands-loose");
    let nest = &report.nests[0];
    stands(nest.working.as_ref().unwrap(), 11.0, 1800.0, &[1800.0, 0.0]);
    is(some(nest.working.as_ref().unwrap().rate.as_ref()), 900.0, POUND_FORCE / INCH);
    stands(&nest.answers[0], 9.0, 4606.25, &[3600.0, 1006.25]);
    // Measured at 10 7/16, it is loose at its book figure.
    stands(&nest.answers[1], 10.5, 2250.0, &[2250.0, 0.0]);
    stands(&nest.answers[2], 14.0, 0.0, &[0.0, 0.0]);
    assert!(nest.answers[2].seats.iter().all(|seat| seat.share.is_none()), "no load to share");
    // 700 · 1/16 where it carries, and no share of a load in which it has no part.
    is(some(nest.seats[1].load_cost.as_ref()), -43.75, POUND_FORCE);
    assert_eq!(nest.seats[1].load_cost_share, None);
}

#[test]
fn raised_and_sunk_seats() {
    let report = report("raised-and-sunk");
    let [drawn, packed] = report.nests.as_slice() else { panic!("two nests") };
    stands(drawn.working.as_ref().unwrap(), 10.0, 2800.0, &[2000.0, 800.0]);
    stands(&drawn.answers[0], 8.0, 5600.0, &[4000.0, 1600.0]);
    // Outer 12 − 3/16 and solid at 8 − 3/16; inner 12 + 1/4 and solid at 7 1/2 + 1/4.
    assert_eq!(packed.touch_order, [1, 0]);
    bends(packed, &[(12.25, 0.0, 1), (11.8125, 175.0, 0), (7.8125, 5775.0, 0)]);
    stands(packed.working.as_ref().unwrap(), 10.0, 2712.5, &[1812.5, 900.0]);
    stands(&packed.answers[0], 12.125, 50.0, &[0.0, 50.0]);
    stands(&packed.answers[1], 7.8125, 5775.0, &[4000.0, 1775.0]);
    is(some(packed.answers[1].seats[1].to_solid.as_ref()), 0.0625, INCH);
}

#[test]
fn millimetres_with_a_comma() {
    let report = report("metric-comma");
    assert_eq!(report.problems, []);
    assert_eq!(report.keys, ["scant", "full"]);
    // N and mm: 78500 · 28.5⁴ / (8 · 175³ · 5.75) and 78500 · 17.5⁴ / (8 · 114³ · 9).
    let (outer, inner) = (rate(78_500.0, 28.5, 175.0, 5.75), rate(78_500.0, 17.5, 114.0, 9.0));
    is(some(report.coils[0].rate.as_ref()), outer, 1000.0);
    let nest = &report.nests[0];
    // (389.5 + 390.5 + 389.875 + 390) / 4; 376 and 380.
    let (a, b) = (389.968_75, 378.0);
    is(some(nest.seats[0].free.as_ref()), a, MM);
    is(some(nest.seats[1].free.as_ref()), b, MM);
    is(some(nest.seats[1].spread.as_ref()), 4.0, MM);
    let working = nest.working.as_ref().unwrap();
    is(&working.height, 320.5, MM);
    is(&working.load, outer * (a - 320.5) + inner * (b - 320.5), 1.0);
    // 30 kN, and twelve inches in a metric job.
    is(&nest.answers[0].height, (outer * a + inner * b - 30_000.0) / (outer + inner), MM);
    is(&nest.answers[1].height, 304.8, MM);
    // Class I over one metre from the hook: 0.1 + 0.1 + 0.1; u² of 376 and 380 is mostly s²/2 = 4.
    let u = (0.25_f64.powi(2) / 3.0 + 0.3_f64.powi(2) / 3.0 + 4.0).sqrt();
    let [outer, inner] = [verdict(nest, 0), verdict(nest, 1)];
    assert_eq!((outer.word, inner.word), (Word::Good, Word::TooClose));
    chance(inner.p_short, below(-0.5 / u));
    chance(inner.p_long, below(-5.0 / u));
    // Seven in a thousand is not nothing.
    assert!(inner.sentence.contains("under 1\u{a0}% likely long"), "{}", inner.sentence);
}

#[test]
fn a_rate_and_a_solid_height_from_the_book_go_first() {
    let report = report("given-rate-and-solid");
    let [drawn, booked] = report.coils.as_slice() else { panic!("two coils") };
    // 11.2e6 / (8 · 6³ · 6) = 1080.2469 lb/in, and 8 bars of an inch.
    let by_drawing = 11.2e6 / 10_368.0;
    is(some(drawn.rate.as_ref()), by_drawing, POUND_FORCE / INCH);
    is(some(drawn.solid.as_ref()), 8.0, INCH);
    assert_eq!((&drawn.rate_drawing, &drawn.solid_drawing), (&None, &None));
    is(some(booked.rate.as_ref()), 1100.0, POUND_FORCE / INCH);
    is(some(booked.rate_drawing.as_ref()), by_drawing, POUND_FORCE / INCH);
    is(some(booked.solid.as_ref()), 8.25, INCH);
    is(some(booked.solid_drawing.as_ref()), 8.0, INCH);
    // τ = 8 F D / (π d³) = 48 F / π, with F = k (13 − Lc), uncorrected.
    let stress = |load: f64| 48.0 * load / std::f64::consts::PI;
    is(some(drawn.stress_solid.as_ref()), stress(by_drawing * 5.0), PSI);
    is(some(booked.stress_solid.as_ref()), stress(1100.0 * 4.75), PSI);
    stands(report.nests[0].working.as_ref().unwrap(), 11.0, by_drawing * 2.0, &[by_drawing * 2.0]);
    stands(report.nests[1].working.as_ref().unwrap(), 11.0, 2200.0, &[2200.0]);
    stands(&report.nests[1].answers[0], 8.25, 5225.0, &[5225.0]);
}

#[test]
fn half_filled_sheets_give_what_follows() {
    let report = report("half-filled");
    assert_eq!(report.problems, []);
    let [height_only, no_solid, nothing, taped, one_of_two, coilless, empty] =
        report.nests.as_slice()
    else {
        panic!("seven nests")
    };
    assert_eq!(verdict(height_only, 0).word, Word::Good);
    assert_eq!((&height_only.working, &height_only.free_height), (&None, &None));
    stands(no_solid.working.as_ref().unwrap(), 11.0, 1000.0, &[1000.0]);
    assert_eq!(no_solid.solid_height, None);
    assert_eq!(nothing.seats[0].free, None);
    // 12 1/8 on the tape, 11.2e6 / (8 · 6³ · 6) lb/in.
    let load = 1.125 * 11.2e6 / 10_368.0;
    stands(taped.working.as_ref().unwrap(), 11.0, load, &[load]);
    assert_eq!(one_of_two.working, None);
    assert_eq!(verdict(coilless, 0).word, Word::None);
    assert!(empty.seats.is_empty());
    // Of what is missing every nest says so, at its own path.
    for (path, code) in [
        ("nests[0].seats[0]", "load-unknown"),
        ("nests[1].seats[0]", "solid-unknown"),
        ("nests[2].seats[0]", "load-unknown"),
        ("nests[4].seats[1]", "load-unknown"),
        ("nests[5].seats[0]", "coil-unknown"),
        ("nests[6]", "nest-empty"),
    ] {
        let said = report.notes.iter().any(|note| note.path == path && note.code == code);
        assert!(said, "{path}: {code}");
    }
}

#[test]
fn a_load_instead_of_a_height() {
    let report = report("working-load");
    let nest = &report.nests[0];
    // 750 at the bend at 13 1/2, then 4000 / 2000 = 2.
    let working = nest.working.as_ref().unwrap();
    stands(working, 11.5, 4750.0, &[3750.0, 1000.0]);
    // Each coil's 1/32 in /√3 counts by its part of the rate: 3/4 and 1/4.
    let u = 1.0 / 32.0 / 3.0_f64.sqrt();
    let expected = u * (0.75_f64.powi(2) + 0.25_f64.powi(2)).sqrt() * INCH;
    let doubt = working.height.doubt_si.unwrap();
    assert!(relative_eq!(doubt, expected, max_relative = 1e-9), "{doubt} and not {expected}");
    assert_eq!(working.load.doubt_si, None);
    stands(&nest.answers[0], 13.6, 600.0, &[600.0, 0.0]);
    stands(&nest.answers[1], 14.0, 0.0, &[0.0, 0.0]);
    let pounds = 10_000.0 / POUND_FORCE;
    let height = 13.5 - (pounds - 750.0) / 2000.0;
    stands(&nest.answers[2], height, pounds, &[1500.0 * (14.0 - height), 500.0 * (13.5 - height)]);
    // With both, the height is used.
    stands(report.nests[1].working.as_ref().unwrap(), 12.0, 3000.0, &[3000.0]);
    assert!(report.notes.iter().any(|note| note.code == "height-goes-first"));
}

#[test]
fn a_load_past_solid() {
    let report = report("past-solid");
    let nest = &report.nests[0];
    // Solid at 8 1/2, where the springs bear 3 1/2 · 1500.
    let working = nest.working.as_ref().unwrap();
    stands(working, 8.5, 8000.0, &[3500.0, 1750.0]);
    is(some(working.stop_load.as_ref()), 2750.0, POUND_FORCE);
    assert!(working.solid);
    let [solid, at_solid, just_borne, just_not] = nest.answers.as_slice() else {
        panic!("four answers and a problem")
    };
    for state in [solid, at_solid, just_borne] {
        stands(state, 8.5, 5250.0, &[3500.0, 1750.0]);
        assert_eq!(state.stop_load, None);
    }
    is(some(just_not.stop_load.as_ref()), 1.0, POUND_FORCE);
    let [problem] = report.problems.as_slice() else { panic!("one problem") };
    assert_eq!((problem.path.as_str(), &*problem.code), ("nests[0].ask[2]", "below-solid"));
}

#[test]
fn no_limits_no_verdict() {
    let report = report("no-limits");
    let nest = &report.nests[0];
    for seat in 0..2 {
        let verdict = verdict(nest, seat);
        assert_eq!((verdict.word, verdict.p_in), (Word::None, None));
    }
    // 3/16 · 800, of 1600; tape 1/32 in by the table up to 6 ft.
    is(some(nest.seats[0].deviation.as_ref()), -0.1875, INCH);
    is(some(nest.seats[0].load_cost.as_ref()), -150.0, POUND_FORCE);
    is(some(nest.seats[0].load_cost_share.as_ref()), -0.093_75, 1.0);
    // 150 at the bend at 9 13/16, then 1450 / 1600.
    stands(nest.working.as_ref().unwrap(), 8.906_25, 1600.0, &[725.0, 875.0]);
}

#[test]
fn limits_on_one_side() {
    let report = report("one-sided-limits");
    let nest = &report.nests[0];
    let words: Vec<Word> = (0..8).map(|seat| verdict(nest, seat).word).collect();
    assert_eq!(
        words,
        [
            Word::Short,
            Word::Good,
            Word::Long,
            Word::Good,
            Word::TooClose,
            Word::Good,
            Word::Good,
            Word::None
        ]
    );
    // Half-widths in sixty-fourths: graduation 2, tape 2, ends 1; 1/8 is eight of them.
    let u = (9.0_f64 / 3.0).sqrt();
    chance(verdict(nest, 0).p_short, below(8.0 / u));
    chance(verdict(nest, 4).p_in, 0.5);
    // Full: the mark and a sixty-fourth, half-width 1; three short of the most.
    let u = (6.0_f64 / 3.0).sqrt();
    chance(verdict(nest, 5).p_long, below(-3.0 / u));
    chance(verdict(nest, 6).p_short, below(-8.0 / 3.0_f64.sqrt()));
    assert_eq!(verdict(nest, 1).p_long, Some(0.0));
    // An allowance without a book figure limits nothing, and the report says so.
    let said = |path: &str| report.notes.iter().any(|note| note.path == path);
    assert!(said("coils[5].limits"));
}

/// Common practice, no source.
#[test]
fn one_on_the_mark_and_one_just_under_it_are_both_good() {
    let report = report("common-practice");
    let nest = &report.nests[0];
    assert_eq!((verdict(nest, 0).word, verdict(nest, 1).word), (Word::Good, Word::Good));
    // In millimetres: half a sixteenth or half of that, 0.7 of tape and a sixteenth for the one place; 1/8
    // either way, less 1/64.
    let sixty_fourth = 25.4 / 64.0;
    let place = 4.0 * sixty_fourth;
    let u = |half: f64| ((half * half + 0.49 + place * place) / 3.0).sqrt();
    chance(verdict(nest, 0).p_in, 1.0 - 2.0 * below(-8.0 * sixty_fourth / u(2.0 * sixty_fourth)));
    let under = verdict(nest, 1);
    let short = below(-7.0 * sixty_fourth / u(sixty_fourth));
    let found = under.p_short.unwrap();
    assert!(relative_eq!(found, short, max_relative = 1e-6), "{found} and not {short}");
    assert!(under.sentence.contains("99.6\u{a0}% sure"), "{}", under.sentence);
}

/// The coil that was found in a seat is judged beside the one that is fitted, and so is one that was set aside; neither
/// bears on the nest.
#[test]
fn what_was_found_and_what_is_set_aside_is_judged() {
    let kept = corpus::named("quarry-tramway").unwrap();
    let mut job = serde_json::from_str(&kept.text).unwrap();
    let short = json!({ "label": "7a", "readings": ["13 7/16", "13 7/16 full"] });
    job_path::put(&mut job, "nests[0].seats[1].found", Some(short.clone()));
    job_path::put(&mut job, "nests[0].seats[1].label", Some("9a".into()));
    job_path::put(&mut job, "nests[0].seats[1].readings", Some(json!(["13 5/8", "13 5/8"])));
    job_path::put(&mut job, "set_aside[0]", Some(short));
    job_path::put(&mut job, "set_aside[0].coil", Some("inner".into()));
    job_path::put(&mut job, "set_aside[0].reason", Some("short".into()));
    let report = assess(&file::from_value(job).unwrap(), &TABLES);
    let briefs = |verdict: &Option<VerdictReport>| {
        verdict.as_ref().map(|verdict| (verdict.word, verdict.brief.clone()))
    };
    let was = Some((Word::Short, "3/16 in under".to_owned()));
    let fitted = &report.nests[0].seats[1];
    assert_eq!(briefs(&fitted.verdict), Some((Word::Good, "on the book figure".to_owned())));
    let found = fitted.found.as_ref().unwrap();
    assert_eq!((found.label.as_deref(), briefs(&found.verdict)), (Some("7a"), was.clone()));
    let aside = &report.set_aside[0];
    assert_eq!((aside.reason.as_deref(), briefs(&aside.coil.verdict)), (Some("short"), was));
    assert!(report.nests[0].not_good.iter().all(|coil| !coil.contains("7a")));
}

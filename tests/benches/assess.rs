//! How long an answer takes: the whole of the demo job, and one nest of it at a height; the invented truck, alone
//! and with boxes, pads, two weights and taped heights; its frame, a wheel of it in a dip, and which coil of it
//! belongs where.

use coilnest::job::report::{DipReport, LevelReport, MatchReport, StateAnswer};
use coilnest::job::{HeldFrame, Job, Report, assess, file, level, matching, nest_state};
use coilnest_tables::TABLES;
use divan::{Bencher, black_box};

const DEMO: &str = include_str!("../../web/demo/quarry-tramway.json");

const TRUCK: &str = include_str!("../jobs/whole-truck.job.json");

/// The same with boxes in their guides, pads, a light and a loaded weight, couplers and taped heights.
const TRUCK_AGAIN: &str = include_str!("../jobs/truck-again.job.json");

fn main() {
    divan::main();
}

fn demo() -> Job {
    file::open(DEMO).unwrap_or_default()
}

#[divan::bench]
fn assess_demo(bencher: Bencher<'_, '_>) {
    let job = demo();
    bencher.bench_local(|| -> Report { assess(black_box(&job), &TABLES) });
}

#[divan::bench]
fn nest_state_demo(bencher: Bencher<'_, '_>) {
    let job = demo();
    bencher.bench_local(|| -> StateAnswer {
        nest_state(black_box(&job), &TABLES, "A left", black_box("12 3/16 in"))
    });
}

#[divan::bench]
fn assess_truck(bencher: Bencher<'_, '_>) {
    let job = file::open(TRUCK).unwrap_or_default();
    bencher.bench_local(|| -> Report { assess(black_box(&job), &TABLES) });
}

#[divan::bench]
fn assess_truck_again(bencher: Bencher<'_, '_>) {
    let job = file::open(TRUCK_AGAIN).unwrap_or_default();
    bencher.bench_local(|| -> Report { assess(black_box(&job), &TABLES) });
}

#[divan::bench]
fn level_truck(bencher: Bencher<'_, '_>) {
    let job = file::open(TRUCK).unwrap_or_default();
    bencher.bench_local(|| -> LevelReport { level(black_box(&job), &TABLES) });
}

#[divan::bench]
fn dip_truck(bencher: Bencher<'_, '_>) {
    let job = file::open(TRUCK).unwrap_or_default();
    let frame = HeldFrame::of(&job, &TABLES);
    bencher.bench_local(|| -> DipReport { frame.dip("A left", black_box("1/2 in"), "B left") });
}

#[divan::bench]
fn matching_truck(bencher: Bencher<'_, '_>) {
    let job = file::open(TRUCK).unwrap_or_default();
    bencher.bench_local(|| -> MatchReport { matching(black_box(&job), &TABLES) });
}

#[divan::bench]
fn open_demo(bencher: Bencher<'_, '_>) {
    bencher.bench_local(|| file::open(black_box(DEMO)));
}

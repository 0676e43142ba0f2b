//! How long an answer takes: the whole of the demo job, and one nest of it at a height.

use coilnest::job::{Job, Report, assess, file, nest_state, report::StateAnswer};
use coilnest_tables::TABLES;
use divan::{Bencher, black_box};

const DEMO: &str = include_str!("../../web/demo/quarry-tramway.json");

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
fn open_demo(bencher: Bencher<'_, '_>) {
    bencher.bench_local(|| file::open(black_box(DEMO)));
}

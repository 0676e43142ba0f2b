//! How the cost of a report grows with the nests of a job, and with the coils of a nest.

use coilnest::job::{Job, Report, assess, file};
use coilnest_tables::TABLES;
use divan::{Bencher, black_box};
use serde_json::{Value, json};

fn main() {
    divan::main();
}

/// Invented: a book of one outer and one inner coil, and nests of both.
fn nests(count: u32) -> Job {
    let seats = json!([
        { "coil": "outer", "readings": ["13 7/8", "13 7/8 scant"] },
        { "coil": "inner", "readings": ["13 9/16", "13 5/8 scant"] },
    ]);
    let nest = |number| json!({ "id": format!("nest {number}"), "seats": seats });
    let outer = coil("outer", "1 1/16", "7 3/4", "7 1/4");
    let inner = coil("inner", "11/16", "5 1/8", "10 3/4");
    let nests: Vec<Value> = (0..count).map(nest).collect();
    job(&[outer, inner], &nests)
}

/// Invented: so many coils, each of a drawing of its own, in one nest.
fn coils(count: u32) -> Job {
    let name = |number| format!("coil {number}");
    let drawn = |number| coil(&name(number), "1 1/16", "7 3/4", "7 1/4");
    let seat = |number| json!({ "coil": name(number), "readings": ["13 7/8"] });
    let seats: Vec<Value> = (0..count).map(seat).collect();
    let drawn: Vec<Value> = (0..count).map(drawn).collect();
    job(&drawn, &[json!({ "id": "nest", "seats": seats })])
}

fn coil(id: &str, bar: &str, outside: &str, turns: &str) -> Value {
    json!({
        "id": id, "bar": bar, "outside": outside, "turns": turns, "ends": "tapered-ground",
        "steel": "unknown-hot-wound", "free": "13 15/16", "limits": { "under": "1/8", "over": "1/8" },
    })
}

fn job(coils: &[Value], nests: &[Value]) -> Job {
    let job =
        json!({ "format": "coilnest-job/1", "system": "inch", "coils": coils, "nests": nests });
    file::open(&job.to_string()).unwrap_or_default()
}

#[divan::bench(args = [1, 10, 100, 1000], sample_count = 20)]
fn assess_nests(bencher: Bencher<'_, '_>, count: u32) {
    let job = nests(count);
    bencher.bench_local(|| -> Report { assess(black_box(&job), &TABLES) });
}

#[divan::bench(args = [1, 10, 100, 1000], sample_count = 3)]
fn assess_coils_of_one_nest(bencher: Bencher<'_, '_>, count: u32) {
    let job = coils(count);
    bencher.bench_local(|| -> Report { assess(black_box(&job), &TABLES) });
}

//! The load of a nest beside a loop in C and whole columns in `NumPy`: the same sums, side by side.
//!
//! Builds `tests/peers/nest.c` with `cc`, runs `tests/peers/nest.py` with `python3` (or what `PYTHON`
//! names), and prints a table. What is not there is left out, with a line that says so.

use coilnest::nest::{Law, Member, Nest, NestError, State};
use coilnest::quantity::unit::{meter, millimeter, newton_per_meter};
use coilnest::quantity::{Force, Length, SpringRate};
use std::collections::BTreeMap;
use std::error::Error;
use std::hint::black_box;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

/// Nanoseconds of each work, and the sum of the loads.
type Times = BTreeMap<String, f64>;

const SUM: &str = "sum";

fn main() -> Result<(), Box<dyn Error>> {
    let peers = Path::new(env!("CARGO_MANIFEST_DIR")).join("peers");
    let built = Path::new(env!("CARGO_TARGET_TMPDIR")).join("nest");
    let mut cc = Command::new("cc");
    cc.args(["-O3", "-o"]).arg(&built).arg(peers.join("nest.c"));
    let c = told(&mut cc).and_then(|_| told(&mut Command::new(&built)));
    let python = std::env::var("PYTHON").unwrap_or_else(|_| "python3".to_owned());
    let numpy = told(Command::new(python).arg(peers.join("nest.py")));
    let (c, numpy) = (heard("C", c), heard("NumPy", numpy));

    let ours = ours()?;
    println!(
        "{:<34} {:>10} {:>10} {:>8} {:>10} {:>8}",
        "ns", "coilnest", "C", "times C", "NumPy", "times"
    );
    for (work, took) in ours.iter().filter(|(work, _)| *work != SUM) {
        let as_c = if work.starts_with("state") { "state" } else { work };
        let (in_c, in_numpy) = (c.get(as_c), numpy.get(work));
        println!("{work:<34} {took:>10.3} {} {}", beside(*took, in_c), beside(*took, in_numpy));
    }
    for (name, times) in [("C", &c), ("NumPy", &numpy)] {
        if let (Some(theirs), Some(own)) = (times.get(SUM), ours.get(SUM))
            && (theirs - own).abs() > 1e-12 * own
        {
            return Err(format!("{name} has other loads: {theirs} N in all, not {own} N").into());
        }
    }
    Ok(())
}

/// What it took there, and how many times that ours is.
fn beside(own: f64, theirs: Option<&f64>) -> String {
    theirs.map_or_else(
        || format!("{:>10} {:>8}", "", ""),
        |ns| format!("{ns:>10.3} {:>8.2}", own / ns),
    )
}

/// What a program prints, or why it could not run.
fn told(command: &mut Command) -> Result<String, String> {
    let output = command.output().map_err(|error| format!("{command:?}: {error}"))?;
    if output.status.success() {
        return Ok(String::from_utf8_lossy(&output.stdout).into_owned());
    }
    let said = String::from_utf8_lossy(&output.stderr);
    Err(said.lines().last().unwrap_or("it failed without a word").to_owned())
}

fn heard(name: &str, told: Result<String, String>) -> Times {
    let told = told.unwrap_or_else(|why| {
        println!("{name} is left out: {why}");
        String::new()
    });
    let line = |line: &str| {
        let (work, ns) = line.split_once(", ")?;
        Some((work.to_owned(), ns.parse().ok()?))
    };
    told.lines().filter_map(line).collect()
}

/// Ours, in the order and with the counts of the others.
fn ours() -> Result<Times, Box<dyn Error>> {
    let heights: Vec<Length> =
        (0..10_000).map(|number| Length::new::<meter>(0.2 + 1e-5 * f64::from(number))).collect();
    let few = heights.get(..1000).unwrap_or_default();
    let nest = Nest::new(vec![coil(0.3, 160.0, 400e3)?, coil(0.29, 150.0, 190e3)?])?;
    let mut loads: Vec<Force> = Vec::new();
    let mut state = State::default();
    let mut times = Times::new();
    let mut put = |work: &str, ns: f64| times.insert(work.to_owned(), ns);

    put(
        "one call",
        quickest(2000, 1000.0, || {
            few.iter().try_for_each(|height| {
                nest.load_at(*height).map(|load| assert!(black_box(load).value >= 0.0))
            })
        })?,
    );
    put("slice", quickest(2000, 1e4, || nest.loads_at(black_box(&heights), &mut loads))?);
    put(SUM, loads.iter().map(|load| load.value).sum());
    put(
        "state, into one that is there",
        quickest(2000, 1000.0, || {
            few.iter().try_for_each(|height| nest.at_height_into(*height, black_box(&mut state)))
        })?,
    );
    put(
        "state, a new one",
        quickest(2000, 1000.0, || {
            few.iter()
                .try_for_each(|height| nest.at_height(*height).map(|state| drop(black_box(state))))
        })?,
    );
    for (count, rounds) in [(1, 500), (10, 500), (100, 500), (1000, 20), (10_000, 20)] {
        let coils = (0..count).map(|number| coil(0.3 - 1e-6 * f64::from(number), 150.0, 1e3));
        let nest = Nest::new(coils.collect::<Result<_, _>>()?)?;
        let took = quickest(rounds, 1000.0, || nest.loads_at(black_box(few), &mut loads))?;
        put(&format!("coils {count}"), took);
    }
    Ok(times)
}

/// Metres, millimetres, newtons a metre.
fn coil(free: f64, solid: f64, rate: f64) -> Result<Member, Box<dyn Error>> {
    Ok(Member {
        free: Length::new::<meter>(free),
        law: Law::linear(SpringRate::new::<newton_per_meter>(rate))?,
        solid: Some(Length::new::<millimeter>(solid)),
        raise: Length::default(),
    })
}

/// The quickest of many rounds, a call: what else the machine does can only add to it.
fn quickest(
    rounds: u32,
    calls: f64,
    mut work: impl FnMut() -> Result<(), NestError>,
) -> Result<f64, NestError> {
    let mut best = f64::INFINITY;
    for _ in 0..rounds {
        let start = Instant::now();
        work()?;
        best = best.min(start.elapsed().as_secs_f64() * 1e9 / calls);
    }
    Ok(best)
}

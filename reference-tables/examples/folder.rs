//! A folder of jobs in, a table of coils out, on all processors at once.
//!
//! ```sh
//! cargo run --release -p coilnest-tables --example folder -- DIR > coils.csv
//! ```

use coilnest::job::{Report, assess, file};
use coilnest_tables::TABLES;
use std::path::{Path, PathBuf};
use std::{env, error::Error, fs, io, thread};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = env::args().nth(1).ok_or("which folder?")?;
    print!("nest,coil,label,free,verdict\n{}", table(Path::new(&folder))?);
    Ok(())
}

/// Jobs do not know of each other, so each processor takes its share of them.
fn table(folder: &Path) -> io::Result<String> {
    let mut jobs: Vec<PathBuf> =
        fs::read_dir(folder)?.map(|entry| Ok(entry?.path())).collect::<io::Result<_>>()?;
    jobs.sort();
    let share = jobs.len().div_ceil(thread::available_parallelism()?.get()).max(1);
    thread::scope(|scope| {
        let start = |some| scope.spawn(move || rows(some));
        let running: Vec<_> = jobs.chunks(share).map(start).collect();
        let done = running.into_iter().map(|share| share.join().unwrap_or_default());
        Ok(done.collect())
    })
}

/// The coils of some jobs, a line each. A file that is no job gives none, and is named.
fn rows(jobs: &[PathBuf]) -> String {
    let read = |path: &PathBuf| {
        let text = fs::read_to_string(path).map_err(|error| error.to_string())?;
        file::open(&text).map_err(|problem| problem.message)
    };
    let mut rows = String::new();
    for path in jobs {
        match read(path) {
            Ok(job) => rows.extend(lines(&assess(&job, &TABLES))),
            Err(why) => eprintln!("{}: {why}", path.display()),
        }
    }
    rows
}

fn lines(report: &Report) -> Vec<String> {
    let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let seats =
        report.nests.iter().flat_map(|nest| nest.seats.iter().map(move |seat| (nest, seat)));
    let line = seats.map(|(nest, seat)| {
        let label = seat.label.as_deref().unwrap_or_default();
        let free = seat.free.as_ref().map_or("", |free| &free.text);
        let verdict = seat.verdict.as_ref().map_or("", |verdict| &verdict.title);
        [&nest.id, &seat.name, label, free, verdict].map(quoted).join(",") + "\n"
    });
    line.collect()
}

#[test]
fn every_coil_of_the_kept_jobs_has_a_line() -> Result<(), Box<dyn Error>> {
    let table = table(Path::new("../tests/jobs"))?;
    assert!(table.contains("\"Nest\",\"Outer\",\"\",\"15 11/16 in\",\"Good\"\n"), "{table}");
    assert!(table.lines().count() > 30, "{table}");
    assert!(table.lines().all(|line| line.matches("\",\"").count() == 4), "{table}");
    Ok(())
}

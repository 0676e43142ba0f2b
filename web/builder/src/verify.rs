//! `cargo verify`: every check there is, one after the other, going on after a failure, with the whole told at the end.

mod provisions;
mod steps;
mod tally;

use std::fmt;
use std::time::{Duration, Instant};

use anyhow::{Error, Result, bail};

use crate::table::{Align, Table};
use provisions::Provisions;
use steps::{STEPS, Step};
pub(crate) use tally::Tally;

/// Why a step checked nothing, where that alone does not fail the whole.
#[derive(Debug)]
pub(crate) struct NotChecked(pub(crate) String);

impl fmt::Display for NotChecked {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "not checked: {}", self.0)
    }
}

impl std::error::Error for NotChecked {}

struct Outcome {
    step: &'static str,
    /// What was counted, or why the step could not run.
    ended: Result<Tally>,
    took: Duration,
}

pub(crate) fn list_steps() {
    for step in STEPS {
        println!("{}", step.name);
    }
}

/// Runs the named steps, or all when none is named, and tells whether every check passed.
pub(crate) fn verify(names: &[String]) -> Result<bool> {
    let provisions = Provisions::default();
    let outcomes: Vec<Outcome> =
        choose(names)?.into_iter().map(|step| take(step, &provisions)).collect();
    println!("\n{}\n", table(&outcomes));
    let total: Tally = outcomes.iter().map(counted).sum();
    println!("{}", closing(&outcomes));
    Ok(total.failed == 0)
}

fn choose(names: &[String]) -> Result<Vec<&'static Step>> {
    if names.is_empty() {
        return Ok(STEPS.iter().collect());
    }
    let named = names.iter().map(|name| match STEPS.iter().find(|step| step.name == name) {
        Some(step) => Ok(step),
        None => bail!("there is no step `{name}`; `cargo verify --list` names them"),
    });
    named.collect()
}

fn take(step: &'static Step, provisions: &Provisions) -> Outcome {
    println!("\n== {}: {}", step.name, step.about);
    let started = Instant::now();
    let ended = (step.run)(provisions);
    let outcome = Outcome { step: step.name, ended, took: started.elapsed() };
    println!("== {}: {}, {}", outcome.step, result(&outcome), seconds(outcome.took));
    outcome
}

impl Outcome {
    fn is_unchecked(&self) -> bool {
        self.ended.as_ref().is_err_and(Error::is::<NotChecked>)
    }
}

/// A step that could not run is a check that failed; one that checked nothing was skipped.
fn counted(outcome: &Outcome) -> Tally {
    match &outcome.ended {
        Ok(tally) => *tally,
        Err(_) if outcome.is_unchecked() => Tally { skipped: 1, ..Tally::default() },
        Err(_) => Tally::of_one(false),
    }
}

/// The last line: what was counted, and the steps that checked nothing.
fn closing(outcomes: &[Outcome]) -> String {
    let Tally { passed, failed, .. } = outcomes.iter().map(counted).sum();
    let counts = format!("{passed} passed, {failed} failed");
    let unchecked = outcomes.iter().filter(|outcome| outcome.is_unchecked());
    let unchecked: Vec<&str> = unchecked.map(|outcome| outcome.step).collect();
    if unchecked.is_empty() {
        return counts;
    }
    format!("{counts}, not checked: {}", unchecked.join(", "))
}

fn result(outcome: &Outcome) -> String {
    match &outcome.ended {
        Ok(tally) if tally.failed == 0 => "passed".to_owned(),
        Ok(_) => "FAILED".to_owned(),
        Err(reason) if outcome.is_unchecked() => reason.to_string(),
        Err(reason) => format!("COULD NOT RUN: {reason:#}"),
    }
}

fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}

fn table(outcomes: &[Outcome]) -> Table {
    let mut table = Table::new([
        ("step", Align::Left),
        ("passed", Align::Right),
        ("failed", Align::Right),
        ("skipped", Align::Right),
        ("time", Align::Right),
        ("result", Align::Left),
    ]);
    for outcome in outcomes {
        let Tally { passed, failed, skipped } = counted(outcome);
        let counts = [passed, failed, skipped].map(|count| count.to_string());
        let cells = [outcome.step.to_owned()].into_iter().chain(counts);
        table.row(cells.chain([seconds(outcome.took), result(outcome)]));
    }
    table
}

#[cfg(test)]
mod tests {
    use super::*;
    use anyhow::anyhow;

    fn outcome(step: &'static str, ended: Result<Tally>) -> Outcome {
        Outcome { step, ended, took: Duration::from_millis(1_250) }
    }

    #[test]
    fn the_table_tells_failed_from_could_not_run() {
        let outcomes = [
            outcome("tests", Ok(Tally { passed: 40, failed: 0, skipped: 1 })),
            outcome("lint", Ok(Tally::of_one(false))),
            outcome("page-tests", Err(anyhow!("Chromium is not installed"))),
            outcome("advisories", Err(NotChecked("no copy is named".to_owned()).into())),
        ];
        let expected = "\
step        passed  failed  skipped   time  result
tests           40       0        1  1.2 s  passed
lint             0       1        0  1.2 s  FAILED
page-tests       0       1        0  1.2 s  COULD NOT RUN: Chromium is not installed
advisories       0       0        1  1.2 s  not checked: no copy is named";
        assert_eq!(table(&outcomes).to_string(), expected);
        assert_eq!(closing(&outcomes), "40 passed, 2 failed, not checked: advisories");
        assert_eq!(closing(&outcomes[..2]), "40 passed, 1 failed");
    }

    #[test]
    fn steps_are_chosen_by_name() {
        assert_eq!(choose(&[]).unwrap().len(), STEPS.len());
        let chosen = choose(&["tidy".to_owned(), "format".to_owned()]).unwrap();
        assert_eq!(chosen.iter().map(|step| step.name).collect::<Vec<_>>(), ["tidy", "format"]);
        assert!(choose(&["tidiness".to_owned()]).is_err());
    }

    #[test]
    fn no_two_steps_share_a_name() {
        let mut names: Vec<&str> = STEPS.iter().map(|step| step.name).collect();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), STEPS.len());
    }
}

//! All that the kept jobs give, each with its workings apart.

use crate::corpus::{self, KeptJob, LevelAnswers, ReplaceAnswers};
use coilnest::job::report::Workings;
use coilnest::job::{assess, coil_sheet, file};
use coilnest::quantity::System;
use coilnest_tables::TABLES;
use serde::Serialize;
use serde_json::Value;

/// A report, an answer or a coil's sheet, its workings apart.
#[derive(Clone, Debug)]
pub struct Answer {
    /// The job, and what of it.
    pub name: String,
    /// The job's system.
    pub system: System,
    /// What it says.
    pub parts: Value,
    /// How its figures came about.
    pub workings: Workings,
}

/// Every report and every sheet of every kept job, and the answers of those that have a frame, a
/// replacement or a need.
///
/// # Errors
/// A sentence when a job cannot be read.
pub fn all() -> Result<Vec<Answer>, String> {
    let mut all = Vec::new();
    for KeptJob { name, text } in corpus::all()? {
        let job = file::open(&text).map_err(|problem| problem.message)?;
        let metric = text.contains("\"system\": \"metric\"");
        let system = if metric { System::Metric } else { System::Inch };
        let mut report = assess(&job, &TABLES);
        let workings = std::mem::take(&mut report.workings);
        let parts = value(&report)?;
        all.push(Answer { name: name.clone(), system, parts, workings });
        if report.frame.is_some() {
            let LevelAnswers { mut level, mut matching, mut dip } = LevelAnswers::of(&job);
            let workings = [&mut level.workings, &mut matching.workings, &mut dip.workings];
            let workings = workings.map(std::mem::take);
            let parts = [value(level)?, value(matching)?, value(dip)?];
            for ((parts, workings), of) in
                parts.into_iter().zip(workings).zip(["level", "coils", "dip"])
            {
                all.push(Answer { name: format!("{name}, {of}"), system, parts, workings });
            }
        }
        if let Some(ReplaceAnswers { replace: mut swap, mut size }) = ReplaceAnswers::of(&job) {
            let workings = [&mut swap.workings, &mut size.workings].map(std::mem::take);
            let parts = [value(swap)?, value(size)?];
            for ((parts, workings), of) in parts.into_iter().zip(workings).zip(["replace", "size"])
            {
                all.push(Answer { name: format!("{name}, {of}"), system, parts, workings });
            }
        }
        for coil in report.coils.iter().filter(|coil| !coil.id.is_empty()) {
            let answer = coil_sheet(&job, &TABLES, &coil.id);
            let parts = value(answer.sheet)?;
            let name = format!("{name}, {}", coil.id);
            all.push(Answer { name, system, parts, workings: answer.workings });
        }
    }
    Ok(all)
}

fn value(of: impl Serialize) -> Result<Value, String> {
    serde_json::to_value(of).map_err(|error| error.to_string())
}

//! The jobs that are kept with their reports, and how a kept text is compared.
//!
//! A kept text is written anew when the environment says `COILNEST_BLESS=1`; what it then says is
//! for a person to read before it is kept.

use crate::kept;
use coilnest::job::report::{
    DipReport, LevelReport, MatchReport, ReplaceReport, SheetAnswer, SizingReport,
};
use coilnest::job::{HeldFrame, Job, assess, coil_sheet, file, level, matching, replace, size};
use coilnest_tables::TABLES;
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// A job that is kept with its report and the sheets of its coils.
#[derive(Clone, Debug)]
pub struct KeptJob {
    /// What it is about, in its file's name.
    pub name: String,
    /// The text of its file.
    pub text: String,
}

/// The invented job of the page, and every job of `jobs/`, by name.
///
/// # Errors
/// A sentence that names the file.
pub fn all() -> Result<Vec<KeptJob>, String> {
    let mut paths = vec![folder("../web/demo/quarry-tramway.json")];
    let entries = std::fs::read_dir(folder("jobs")).map_err(|error| error.to_string())?;
    for entry in entries {
        let path = entry.map_err(|error| error.to_string())?.path();
        if path.to_string_lossy().ends_with(".job.json") {
            paths.push(path);
        }
    }
    paths.sort();
    paths.iter().map(|path| KeptJob::read(path)).collect()
}

/// One job of them.
///
/// # Errors
/// A sentence when there is none of that name.
pub fn named(name: &str) -> Result<KeptJob, String> {
    let found = all()?.into_iter().find(|job| job.name == name);
    found.ok_or_else(|| format!("no job is called {name}"))
}

impl KeptJob {
    fn read(path: &Path) -> Result<Self, String> {
        let text = std::fs::read_to_string(path)
            .map_err(|error| format!("{}: {error}", path.display()))?;
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        let name = name.split('.').next().unwrap_or_default().to_owned();
        Ok(Self { name, text })
    }

    /// Where its report is kept.
    #[must_use]
    pub fn report_path(&self) -> PathBuf {
        folder("jobs").join(&self.name).with_extension("report.txt")
    }

    /// The text of its report as it comes out now.
    ///
    /// # Errors
    /// A sentence when the job cannot be opened.
    pub fn report(&self) -> Result<String, String> {
        let job = file::open(&self.text).map_err(|problem| problem.message)?;
        lines(&assess(&job, &TABLES))
    }

    /// Where the drawing sheets of its coils are kept.
    #[must_use]
    pub fn sheets_path(&self) -> PathBuf {
        folder("jobs").join(&self.name).with_extension("sheet.txt")
    }

    /// The text of the drawing sheets of its coils, by their names, as they come out now.
    ///
    /// # Errors
    /// A sentence when the job cannot be opened.
    pub fn sheets(&self) -> Result<String, String> {
        let job = file::open(&self.text).map_err(|problem| problem.message)?;
        let coils = assess(&job, &TABLES).coils.into_iter().map(|coil| coil.id);
        let sheets: BTreeMap<String, SheetAnswer> =
            coils.map(|id| (id.clone(), coil_sheet(&job, &TABLES, &id))).collect();
        lines(&sheets)
    }
}

impl KeptJob {
    /// Where the answers of its frame are kept.
    #[must_use]
    pub fn level_path(&self) -> PathBuf {
        folder("jobs").join(&self.name).with_extension("level.txt")
    }

    /// The text of what its frame is asked, as it comes out now; none where it has no frame.
    ///
    /// # Errors
    /// A sentence when the job cannot be opened.
    pub fn level(&self) -> Result<Option<String>, String> {
        let job = file::open(&self.text).map_err(|problem| problem.message)?;
        let answers = LevelAnswers::of(&job);
        if answers.level.frame.is_some() { lines(&answers).map(Some) } else { Ok(None) }
    }
}

impl KeptJob {
    /// Where the answers of its replacement and its need are kept.
    #[must_use]
    pub fn replace_path(&self) -> PathBuf {
        folder("jobs").join(&self.name).with_extension("replace.txt")
    }

    /// The text of what may replace a coil of it, and of the drawings for its need, as they come out
    /// now; none where it asks for neither.
    ///
    /// # Errors
    /// A sentence when the job cannot be opened.
    pub fn replace(&self) -> Result<Option<String>, String> {
        let job = file::open(&self.text).map_err(|problem| problem.message)?;
        ReplaceAnswers::of(&job).map(|answers| lines(&answers)).transpose()
    }
}

/// What may replace a coil of a job, and the drawings for its need.
#[derive(Clone, Debug, Serialize)]
pub struct ReplaceAnswers {
    /// What may replace a coil.
    pub replace: ReplaceReport,
    /// Drawings for the need.
    pub size: SizingReport,
}

impl ReplaceAnswers {
    /// Of a job that asks for one of them.
    #[must_use]
    pub fn of(job: &Job) -> Option<Self> {
        let asked = !(job.replace.is_absent() && job.need.is_absent());
        asked.then(|| Self { replace: replace(job, &TABLES), size: size(job, &TABLES) })
    }
}

/// What a frame is asked: how it stands, which coil belongs where, and what its wheels keep when the
/// first is in a dip of [`DIP`] while the last nest is stuck.
#[derive(Clone, Debug, Serialize)]
pub struct LevelAnswers {
    /// How it stands.
    pub level: LevelReport,
    /// Which coil belongs where.
    pub matching: MatchReport,
    /// A wheel in a dip.
    pub dip: DipReport,
}

/// The dip that is asked for.
pub const DIP: &str = "1/2 in";

impl LevelAnswers {
    /// Of a job.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        let level = level(job, &TABLES);
        let wheel = level.wheels.first().map_or("", |wheel| wheel.name.as_str());
        let nests = level.plan.as_ref().map_or(&[][..], |plan| &plan.nests);
        let stuck = nests.last().map_or("", |nest| nest.nest.as_str());
        let dip = HeldFrame::of(job, &TABLES).dip(wheel, DIP, stuck);
        Self { matching: matching(job, &TABLES), dip, level }
    }
}

fn lines(value: &impl Serialize) -> Result<String, String> {
    kept::lines(&serde_json::to_string(value).map_err(|error| error.to_string())?)
}

/// Compares a text with the kept one, or keeps it when that is asked for.
///
/// # Errors
/// A sentence that names the first line that differs.
pub fn keep(path: &Path, text: &str) -> Result<(), String> {
    if std::env::var_os("COILNEST_BLESS").is_some() {
        return std::fs::write(path, text).map_err(|error| error.to_string());
    }
    let kept = std::fs::read_to_string(path)
        .map_err(|error| format!("{}: {error}; COILNEST_BLESS=1 writes it", path.display()))?;
    if kept == text {
        return Ok(());
    }
    let same = kept.lines().zip(text.lines()).take_while(|(kept, now)| kept == now).count();
    let line = |text: &str| text.lines().nth(same).unwrap_or("(the end)").trim().to_owned();
    Err(format!(
        "{}, line {}: {:?} is kept, {:?} comes out; COILNEST_BLESS=1 keeps what comes out",
        path.display(),
        same + 1,
        line(&kept),
        line(text)
    ))
}

/// A folder or file of this crate.
#[must_use]
pub fn folder(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// Every object of a report that is a figure.
#[must_use]
pub fn figures(value: &Value) -> Vec<&Value> {
    let inner: Vec<&Value> = match value {
        Value::Object(object) => object.values().collect(),
        Value::Array(items) => items.iter().collect(),
        _ => Vec::new(),
    };
    let own = (value.get("si").is_some()).then_some(value);
    own.into_iter().chain(inner.into_iter().flat_map(figures)).collect()
}

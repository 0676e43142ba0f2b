//! A frame that is asked again and again, as under a dragged mark.

use super::super::answer;
use super::super::context::Context;
use super::super::figures::Format;
use super::super::file;
use super::super::frame::{self, FrameSpec, LoadedFrame};
use super::super::input::Job;
use super::super::problem::Path;
use super::super::report::{DipReport, LevelReport, Problem};
use super::wheels::Wheels;
use super::{dip, loaded, plan};
use crate::bounds;
use crate::frame::Place;
use crate::quantity::Length;
use crate::reading::Reading;
use crate::tables::Tables;

/// The frame of a job, read once, and then asked for one dip after another, or for one centre of weight
/// after another.
///
/// # Example
/// ```
/// use coilnest::job::{HeldFrame, file};
/// use coilnest::tables::Tables;
///
/// let tables = Tables::NONE;
/// let corner = |id: &str| {
///     format!(r#"{{ "id": "{id}", "seats": [{{ "coil": "only", "readings": ["12"] }}] }}"#)
/// };
/// let place = |id: &str, along: &str, across: &str| {
///     format!(r#"{{ "nest": "{id}", "along": "{along}", "across": "{across}" }}"#)
/// };
/// let job = file::open(&format!(
///     r#"{{
///         "format": "coilnest-job/1",
///         "tape": {{ "graduation": "1/16 in", "error": "0" }},
///         "coils": [{{ "id": "only", "free": "12", "rate": "1000" }}],
///         "nests": [{}, {}, {}, {}],
///         "frame": {{ "weight": "8000", "supports": [{}, {}, {}, {}] }}
///     }}"#,
///     corner("A left"), corner("A right"), corner("B left"), corner("B right"),
///     place("A left", "36", "36"), place("A right", "36", "-36"),
///     place("B left", "-36", "36"), place("B right", "-36", "-36"),
/// ))?;
/// let frame = HeldFrame::of(&job, &tables);
/// // A quarter of 2 in at 1000 lb/in is lost, of 2000 lb.
/// let kept = frame.dip("A left", "2 in", "").wheels.into_iter().next().and_then(|at| at.kept);
/// assert_eq!(kept.map(|kept| kept.text), Some("75 %".to_owned()));
/// # Ok::<(), Box<coilnest::job::report::Problem>>(())
/// ```
pub struct HeldFrame<'a> {
    tables: &'a Tables<'a>,
    format: Format,
    /// Or what the frame lacks.
    read: Result<OnWheels, Box<Problem>>,
}

pub(super) struct OnWheels {
    pub(super) written: FrameSpec,
    pub(super) loaded: LoadedFrame,
    pub(super) wheels: Wheels,
}

impl OnWheels {
    /// Of a job, or the first thing that keeps its frame from standing.
    fn of(job: &Job, tables: &Tables<'_>, format: Format) -> Result<Self, Box<Problem>> {
        let mut context = Context::new(tables, format);
        let Some((_, written, loaded)) = loaded(&mut context, job) else {
            return Err(Box::new(lacking(context)));
        };
        let wheels = Wheels::of(&mut Context::new(tables, format), &written, &loaded);
        Ok(Self { written, loaded, wheels })
    }
}

impl<'a> HeldFrame<'a> {
    /// Of a job.
    #[must_use]
    pub fn of(job: &Job, tables: &'a Tables<'a>) -> Self {
        let format = answer::format(job);
        let read = match file::refused_format(job) {
            Some(problem) => Err(Box::new(problem)),
            None => OnWheels::of(job, tables, format),
        };
        Self { tables, format, read }
    }

    /// What each wheel keeps with one of them, by its name, in a dip so deep, or on a rise where that
    /// is below zero; the same with the box of a nest stuck, where one is named.
    #[must_use]
    pub fn dip(&self, wheel: &str, depth: &str, stuck: &str) -> DipReport {
        let mut context = Context::new(self.tables, self.format);
        let asked = dip::Asked { wheel, depth, stuck };
        match &self.read {
            Ok(on) => dip::report(&mut context, on, asked),
            Err(problem) => {
                DipReport { problem: Some(problem.as_ref().clone()), ..DipReport::default() }
            }
        }
    }

    /// How the frame stands with its weight at another place: its plan and its nests, without workings,
    /// shims and wheels.
    #[must_use]
    pub fn weighed_at(&self, along: &str, across: &str) -> LevelReport {
        let mut context = Context::new(self.tables, self.format);
        let mut report = LevelReport::default();
        let stands = match &self.read {
            Ok(on) => self.centre(along, across).map(|centre| {
                let loaded = on.loaded.weighed_at(centre);
                let (settled, stands) = frame::settle(&mut context, &on.written, &loaded)?;
                let plan = plan(context.system(), &on.written, &loaded, settled.as_ref());
                Some((plan, stands))
            }),
            Err(problem) => Err(problem.clone()),
        };
        match stands {
            Ok(stands) => (report.plan, report.frame) = stands.unzip(),
            Err(problem) => context.problem(*problem),
        }
        report.problems = context.problems;
        report
    }

    fn centre(&self, along: &str, across: &str) -> Result<Place, Box<Problem>> {
        let at = frame::path().field("centre");
        let read = |name: &str, text: &str| -> Result<Length, Box<Problem>> {
            let read = Reading::parse(text, self.format.system, &bounds::POSITION);
            let refused = |refusal| Problem::refused(&at.field(name), &refusal);
            Ok(read.map_err(refused)?.length())
        };
        Ok(Place { along: read("along", along)?, across: read("across", across)? })
    }
}

/// What a frame lacks, by what was said when it was read.
fn lacking(context: Context<'_>) -> Problem {
    let (problems, notes, _) = context.findings();
    problems.into_iter().next().unwrap_or_else(|| {
        let at = notes.iter().find(|note| note.path.starts_with(frame::path().text()));
        let why = at.map_or(NO_FRAME, |note| &note.text);
        let path = at.map_or_else(frame::path, |note| Path::of(&note.path));
        Problem::new(&path, "no-frame", "", "a frame on its nests, with its weight", why, "")
    })
}

const NO_FRAME: &str = "This job has no frame that stands on its nests: its weight and where each nest stands are \
    needed, and in each nest coils that are known.";

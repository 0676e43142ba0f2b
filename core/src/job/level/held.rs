//! A frame that is asked again and again, as under a dragged mark.

use super::super::answer;
use super::super::desk::Desk;
use super::super::figures::Pen;
use super::super::file;
use super::super::frame::{self, Laden, Written};
use super::super::input::Job;
use super::super::problem::Path;
use super::super::report::{DipReport, LevelReport, Problem};
use super::wheels::Wheels;
use super::{dip, laden, plan};
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
/// let tables = Tables { steels: &[], diameters: &[], sizes: &[], tape_classes: &[] };
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
    pen: Pen,
    /// Or what the frame lacks.
    read: Result<OnWheels, Box<Problem>>,
}

pub(super) struct OnWheels {
    pub(super) written: Written,
    pub(super) laden: Laden,
    pub(super) wheels: Wheels,
}

impl OnWheels {
    /// Of a job, or the first thing that keeps its frame from standing.
    fn of(job: &Job, tables: &Tables<'_>, pen: Pen) -> Result<Self, Box<Problem>> {
        let mut desk = Desk::new(tables, pen);
        let Some((written, laden)) = laden(&mut desk, job) else {
            return Err(Box::new(lacking(desk)));
        };
        let wheels = Wheels::of(&mut Desk::new(tables, pen), &written, &laden);
        Ok(Self { written, laden, wheels })
    }
}

impl<'a> HeldFrame<'a> {
    /// Of a job.
    #[must_use]
    pub fn of(job: &Job, tables: &'a Tables<'a>) -> Self {
        let pen = answer::pen(job);
        let read = match file::refused_format(job) {
            Some(problem) => Err(Box::new(problem)),
            None => OnWheels::of(job, tables, pen),
        };
        Self { tables, pen, read }
    }

    /// What each wheel keeps with one of them, by its name, in a dip so deep, or on a rise where that
    /// is below zero; the same with the box of a nest stuck, where one is named.
    #[must_use]
    pub fn dip(&self, wheel: &str, depth: &str, stuck: &str) -> DipReport {
        let mut desk = Desk::new(self.tables, self.pen);
        let asked = dip::Asked { wheel, depth, stuck };
        match &self.read {
            Ok(on) => dip::report(&mut desk, on, asked),
            Err(problem) => {
                DipReport { problem: Some(problem.as_ref().clone()), ..DipReport::default() }
            }
        }
    }

    /// How the frame stands with its weight at another place: its plan and its nests, without workings,
    /// shims and wheels.
    #[must_use]
    pub fn weighed_at(&self, along: &str, across: &str) -> LevelReport {
        let mut desk = Desk::new(self.tables, self.pen);
        let mut report = LevelReport::default();
        let stands = match &self.read {
            Ok(on) => self.centre(along, across).map(|centre| {
                let laden = on.laden.weighed_at(centre);
                let (settled, stands) = frame::settle(&mut desk, &on.written, &laden)?;
                let plan = plan(desk.system(), &on.written, &laden, settled.as_ref());
                Some((plan, stands))
            }),
            Err(problem) => Err(problem.clone()),
        };
        match stands {
            Ok(stands) => (report.plan, report.frame) = stands.unzip(),
            Err(problem) => desk.problem(*problem),
        }
        report.problems = desk.problems;
        report
    }

    fn centre(&self, along: &str, across: &str) -> Result<Place, Box<Problem>> {
        let at = frame::path().field("centre");
        let read = |name: &str, text: &str| -> Result<Length, Box<Problem>> {
            let read = Reading::parse(text, self.pen.system, &bounds::POSITION);
            let refused = |refusal| Problem::refused(&at.field(name), &refusal);
            Ok(read.map_err(refused)?.length())
        };
        Ok(Place { along: read("along", along)?, across: read("across", across)? })
    }
}

/// What a frame lacks, by what was said when it was read.
fn lacking(desk: Desk<'_>) -> Problem {
    let (problems, notes, _) = desk.told();
    problems.into_iter().next().unwrap_or_else(|| {
        let at = notes.iter().find(|note| note.path.starts_with(frame::path().text()));
        let why = at.map_or(NO_FRAME, |note| &note.text);
        let path = at.map_or_else(frame::path, |note| Path::of(&note.path));
        Problem::new(&path, "no-frame", "", "a frame on its nests, with its weight", why, "")
    })
}

const NO_FRAME: &str = "This job has no frame that stands on its nests: its weight and where each nest stands are \
    needed, and in each nest coils that are known.";

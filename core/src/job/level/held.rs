//! A frame that is asked again and again, as under a dragged mark.

use super::super::assess;
use super::super::desk::Desk;
use super::super::figures::Pen;
use super::super::file;
use super::super::frame::{self, Laden, Written};
use super::super::input::Job;
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
    /// None of a job whose frame lacks something, which is told elsewhere.
    read: Result<Option<OnWheels>, Box<Problem>>,
}

pub(super) struct OnWheels {
    pub(super) written: Written,
    pub(super) laden: Laden,
    pub(super) wheels: Wheels,
}

impl<'a> HeldFrame<'a> {
    /// Of a job.
    #[must_use]
    pub fn of(job: &Job, tables: &'a Tables<'a>) -> Self {
        let pen = assess::pen(job);
        let read = match file::refused_format(job) {
            Some(problem) => Err(Box::new(problem)),
            None => Ok(laden(&mut Desk::new(tables, pen), job).map(|(written, laden)| {
                let wheels = Wheels::of(&mut Desk::new(tables, pen), &written, &laden);
                OnWheels { written, laden, wheels }
            })),
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
            Ok(Some(on)) => dip::report(&mut desk, on, asked),
            Ok(None) => DipReport::default(),
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
            Ok(Some(on)) => self.centre(along, across).map(|centre| {
                let laden = on.laden.weighed_at(centre);
                let (settled, stands) = frame::settle(&mut desk, &on.written, &laden)?;
                let plan = plan(desk.system(), &on.written, &laden, settled.as_ref());
                Some((plan, stands))
            }),
            Ok(None) => Ok(None),
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

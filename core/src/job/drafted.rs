//! The drawings and nests of a job, as read, before anything is worked out of them.

use super::coil::Coil;
use super::context::Context;
use super::drawing;
use super::frame::Named;
use super::input::{Drawing, Job, NestEntry, Seat};
use super::labels::Marked;
use super::nest::{ComputedNest, Seated};
use super::problem::Path;
use super::report::{CoilReport, Problem, SeatReport};
use super::seat::{self, ByDrawing, Instrument, Judged, Location};
use super::stack::NestStack;
use super::taped::Taped;
use std::rc::Rc;

/// How much of coils and seats is read, and how much is said of it.
struct Depth {
    read: fn(&mut Context<'_>, &Path, usize, &Drawing) -> Coil,
    draw: fn(&mut Context<'_>, &Coil) -> CoilReport,
    /// What is said of a coil beyond the tape; none where no coil has a report.
    judged: Option<&'static ByDrawing>,
}

const WHOLE: Depth = Depth { read: Coil::read, draw: drawing::report, judged: Some(&seat::DRAWN) };

/// What is said of one nest, and of the drawings only once it is known whose they are.
const OF_NEST: Depth = Depth { draw: |_, _| CoilReport::default(), ..WHOLE };

/// What stands there, and no report of it.
const STANDING: Depth =
    Depth { read: Coil::read, draw: |_, _| CoilReport::default(), judged: None };

const BY_TAPE: Depth =
    Depth { read: Coil::of_book, draw: |_, _| CoilReport::default(), judged: Some(&seat::BY_TAPE) };

/// Drawings and nests of a job.
pub(crate) struct Bench<'j> {
    pub(crate) instrument: Instrument,
    pub(crate) coils: Vec<(Rc<Coil>, CoilReport)>,
    pub(crate) nests: Vec<Drafted<'j>>,
}

/// A nest, as read, before anything is worked out of it.
pub(crate) struct Drafted<'j> {
    pub(crate) at: Path,
    pub(crate) id: String,
    pub(crate) entry: &'j NestEntry,
    pub(crate) seats: Vec<Seated>,
    pub(crate) reports: Vec<SeatReport>,
}

impl Drafted<'_> {
    /// The word that the coil in a seat shares with those from which it may not part.
    pub(crate) fn pair(&self, seat: usize) -> &str {
        let seats = self.entry.seats.given().and_then(|seats| seats.0.get(seat)?.given());
        seats.map_or("", |seat| seat.pair.written())
    }

    /// How many seats the job has for it, those that are no seats among them.
    pub(crate) fn written_seats(&self) -> usize {
        self.entry.seats.given().map_or(0, |seats| seats.0.len())
    }

    /// The nest with all its coils, where their loads are known.
    pub(crate) fn computed(&self, context: &mut Context<'_>) -> Option<ComputedNest> {
        if self.seats.is_empty() { None } else { ComputedNest::new(context, &self.at, &self.seats) }
    }
}

impl<'j> Bench<'j> {
    pub(crate) fn read(context: &mut Context<'_>, job: &'j Job) -> Self {
        Self::read_by(context, job, &WHOLE, None)
    }

    /// The same with reports of the coils in one nest alone, by its name, and of no drawing.
    pub(crate) fn of_nest(context: &mut Context<'_>, job: &'j Job, nest: &str) -> Self {
        Self::read_by(context, job, &OF_NEST, Some(nest))
    }

    /// The same without a report of any coil or seat: what stands there, and no more.
    pub(crate) fn stands(context: &mut Context<'_>, job: &'j Job) -> Self {
        Self::read_by(context, job, &STANDING, None)
    }

    /// What a tape says of the coils in their seats.
    pub(crate) fn by_tape(context: &mut Context<'_>, job: &'j Job) -> Self {
        Self::read_by(context, job, &BY_TAPE, None)
    }

    /// Of all nests, or of `only` one, in so much depth; of the others what stands there.
    fn read_by(context: &mut Context<'_>, job: &'j Job, by: &Depth, only: Option<&str>) -> Self {
        let instrument = Instrument::assess(context, job);
        let mut bench = Self { instrument, coils: Vec::new(), nests: Vec::new() };
        let top = Path::default();
        for (index, (at, item)) in context.list(&top, job.coils()).enumerate() {
            let Some((at, drawing)) = context.object(&at, item) else { continue };
            let drawn = (by.read)(context, &at, index, drawing);
            let report = (by.draw)(context, &drawn);
            let before = bench.coils.iter().map(|(coil, _)| &coil.id);
            named_once(context, &at, &drawn.id, before, "a coil");
            bench.coils.push((Rc::new(drawn), report));
        }
        for (at, item) in context.list(&top, job.nests()) {
            let Some((at, nest)) = context.object(&at, item) else { continue };
            let drafted = bench.draft(context, at, nest, (by, only));
            let before = bench.nests.iter().map(|nest| &nest.id);
            named_once(context, &drafted.at, &drafted.id, before, "a nest");
            bench.nests.push(drafted);
        }
        bench
    }

    pub(crate) fn coil_names(&self) -> Vec<String> {
        self.coils.iter().map(|(drawn, _)| drawn.id.clone()).collect()
    }

    pub(crate) fn nest_names(&self) -> Vec<String> {
        self.nests.iter().map(|nest| nest.id.clone()).collect()
    }

    /// The drawing of a name.
    pub(crate) fn coil(&self, name: &str) -> Option<&Rc<Coil>> {
        self.coils.iter().map(|(drawn, _)| drawn).find(|drawn| drawn.id == name)
    }

    /// The nests by name, each as worked out.
    pub(crate) fn named<'a>(
        &'a self,
        computed: &'a [Option<ComputedNest>],
        stacks: &'a [NestStack],
    ) -> Vec<Named<'a>> {
        let nests = self.nests.iter().zip(computed).zip(stacks);
        nests
            .map(|((nest, computed), of)| Named {
                id: &nest.id,
                computed: computed.as_ref(),
                stack: &of.stack,
            })
            .collect()
    }

    /// The labels of the coils in their seats.
    pub(crate) fn marked(&self) -> impl Iterator<Item = Marked<'_>> {
        self.nests.iter().flat_map(|nest| {
            nest.seats.iter().enumerate().map(move |(index, seat)| Marked {
                at: nest.at.field("seats").item(index),
                coil: &seat.coil.id,
                label: seat.label.as_deref().unwrap_or_default(),
            })
        })
    }

    fn draft(
        &self,
        context: &mut Context<'_>,
        at: Path,
        entry: &'j NestEntry,
        (by, only): (&Depth, Option<&str>),
    ) -> Drafted<'j> {
        let id = context.text(&at, entry.id()).unwrap_or_default().to_owned();
        let by = if only.is_none_or(|only| only == id) { by } else { &STANDING };
        let (mut seats, mut reports) = (Vec::new(), Vec::new());
        for (here, item) in context.list(&at, entry.seats()) {
            let Some((here, seat)) = context.object(&here, item) else { continue };
            let (seated, report) = self.seated(context, &here, seat, by);
            seats.push(seated);
            reports.push(report);
        }
        if seats.is_empty() {
            context.note(&at, "nest-empty", "No coil stands in this nest yet.");
        }
        Drafted { at, id, entry, seats, reports }
    }

    fn seated(
        &self,
        context: &mut Context<'_>,
        at: &Path,
        seat: &Seat,
        by: &Depth,
    ) -> (Seated, SeatReport) {
        let name = context.text(at, seat.coil());
        let drawn = match (name, name.and_then(|name| self.coil(name))) {
            (_, Some(drawn)) => drawn.clone(),
            (Some(name), None) => {
                context.known(&seat.coil().path(at), name, &self.coil_names(), "no-such-coil");
                Rc::default()
            }
            (None, None) => {
                context.note(
                    at,
                    "coil-unknown",
                    "The seat does not say which coil it should hold.",
                );
                Rc::default()
            }
        };
        let taped = Taped::read(context, at, &seat.into(), self.instrument.graduation);
        let raise = context.read(at, seat.raise()).unwrap_or_default();
        let (standing, mut report) = if let Some(by) = by.judged {
            let taped = (&taped, &self.instrument);
            seat::judge(context, at, &drawn, taped, Location::InANest, by)
        } else {
            let judged = Judged::of(&taped, &drawn, &self.instrument);
            (judged.standing(&drawn), SeatReport::default())
        };
        report.found = by.judged.and_then(|by| self.found(context, at, seat, &drawn, by));
        report.label = context.text(at, seat.label()).map(str::to_owned);
        context.read(at, seat.pair());
        let label = report.label.clone();
        (Seated { coil: drawn, standing, raise, label }, report)
    }

    /// The coil that was found in a seat before the one that is there.
    fn found(
        &self,
        context: &mut Context<'_>,
        at: &Path,
        seat: &Seat,
        drawn: &Coil,
        by: &ByDrawing,
    ) -> Option<Box<SeatReport>> {
        let (at, found) = context.object(at, seat.found())?;
        let taped = Taped::read(context, &at, &found.into(), self.instrument.graduation);
        let taped = (&taped, &self.instrument);
        let (_, mut report) = seat::judge(context, &at, drawn, taped, Location::Apart, by);
        report.label = context.text(&at, found.label()).map(str::to_owned);
        Some(Box::new(report))
    }
}

fn named_once<'n>(
    context: &mut Context<'_>,
    at: &Path,
    id: &str,
    mut before: impl Iterator<Item = &'n String>,
    what: &str,
) {
    let path = at.field("id");
    if id.is_empty() {
        let why = format!("{what} needs a name by which the rest of the job can mean it");
        context.problem(Problem::new(&path, "name-missing", "", "a name", &why, "outer"));
    } else if before.any(|known| known == id) {
        let why = format!("{what} of this name stands further up");
        let example = format!("{id} 2");
        context.problem(Problem::new(&path, "name-twice", id, "a name of its own", &why, &example));
    }
}

//! The whole of an assessment, from the fields of a job to its report.

use super::coil::Coil;
use super::desk::Desk;
use super::entry::Entry;
use super::figures::{Pen, axes};
use super::file;
use super::formulas::COST_OF_LOAD;
use super::frame::Named;
use super::input::{Drawing, Job, NestEntry, Record, Seat};
use super::labels::{self, Marked};
use super::nest::{self, Reckoned, Seated};
use super::pool::Lying;
use super::problem::Path;
use super::report::{
    CoilReport, FrameReport, NestReport, Note, Problem, Report, SeatReport, StateAnswer, Tally,
    TapeReport, TapedNest, Workings,
};
use super::seat::{self, Gear, Judged, Standing};
use super::taped::Taped;
use super::{cautions, cut};
use super::{drawing, frame, pool, replace, sizing};
use crate::bounds;
use crate::formula::Value;
use crate::quantity::{self, Length, Share, System};
use crate::reading::Step;
use crate::tables::Tables;
use std::rc::Rc;

/// Everything that follows from a job.
///
/// A pure function of its arguments: the same job and tables give the same report, on every
/// machine.
#[must_use]
pub fn assess(job: &Job, tables: &Tables<'_>) -> Report {
    let mut desk = Desk::new(tables, pen(job));
    let axes = axes(desk.pen.system);
    let mut report = Report { cautions: cautions::all(), axes, ..Report::default() };
    desk.problems.extend(file::format_problem(job));
    if file::refused_format(job).is_none() {
        fill(&mut desk, job, &mut report);
    }
    (report.problems, report.notes, report.workings) = desk.told();
    report
}

/// What a tape says of the coils of a job, held against their book figures and limits: what a page needs
/// while they are measured. All else that is written of them, of nests, frame and bench, is not looked at.
#[must_use]
pub fn judge(job: &Job, tables: &Tables<'_>) -> TapeReport {
    let mut desk = Desk::new(tables, pen(job));
    let mut report = TapeReport { cautions: cautions::measure(), ..TapeReport::default() };
    desk.problems.extend(file::format_problem(job));
    if file::refused_format(job).is_none() {
        header(&mut desk, job);
        let bench = Bench::read_by(&mut desk, job, &BY_TAPE);
        labels::once(&mut desk, &bench.marked_with(&[]));
        report.tally = Tally::of(bench.nests.iter().flat_map(|nest| &nest.reports));
        report.keys = keys(bench.gear.marked, bench.gear.graduation);
        let nests = bench.nests.into_iter();
        report.nests = nests.map(|nest| TapedNest { id: nest.id, seats: nest.reports }).collect();
    }
    (report.problems, report.notes, report.workings) = desk.told();
    report
}

/// Reads what stands beside coils and nests, and settles the frame.
fn beside(
    desk: &mut Desk<'_>,
    job: &Job,
    bench: &Bench<'_>,
    nests: &[Option<Reckoned>],
) -> Option<FrameReport> {
    let written = frame::read(desk, job, &bench.nest_names());
    let stands = written.and_then(|written| frame::assess(desk, &written, &bench.named(nests)));
    let lying = pool::read(desk, job, bench);
    labels::once(desk, &bench.marked_with(&lying));
    pool::uses(desk, job);
    replace::read(desk, job, bench);
    sizing::read(desk, job);
    stands
}

fn fill(desk: &mut Desk<'_>, job: &Job, report: &mut Report) {
    header(desk, job);
    record(desk, &job.record);
    let bench = Bench::read(desk, job);
    let mut nests = Vec::with_capacity(bench.nests.len());
    for drafted in &bench.nests {
        let reckoned = drafted.reckoned(desk);
        report.nests.push(nest_report(desk, drafted, reckoned.as_ref()));
        nests.push(reckoned);
    }
    report.tally = Tally::of(report.nests.iter().flat_map(|nest| &nest.seats));
    report.frame = beside(desk, job, &bench, &nests);
    report.keys = keys(bench.gear.marked, bench.gear.graduation);
    report.coils = bench.coils.into_iter().map(|(_, report)| report).collect();
}

fn header(desk: &mut Desk<'_>, job: &Job) {
    let top = Path::default();
    desk.text(&top, "title", &job.title);
    desk.word(&top, "system", &job.system, &[("inch", System::Inch), ("metric", System::Metric)]);
}

pub(super) fn pen(job: &Job) -> Pen {
    let system = file::system_of(job);
    let said = job.tape.given().and_then(|tape| tape.graduation.given());
    let graduation = said
        .and_then(|text| crate::reading::Reading::parse(&text.0, system, &bounds::GRADUATION).ok());
    let graduation =
        graduation.map_or_else(|| seat::usual_graduation(system), |reading| reading.length());
    Pen { system, step: Step::of(graduation) }
}

fn record(desk: &mut Desk<'_>, entry: &Entry<Record>) {
    let at = Path::of("record");
    let Some(record) = desk.object(&at, entry) else { return };
    let Record { vehicle, place, by, notes, .. } = record;
    for (field, entry) in [("vehicle", vehicle), ("place", place), ("by", by), ("notes", notes)] {
        desk.text(&at, field, entry);
    }
    if let Some(date) = desk.text(&at, "date", &record.date)
        && !is_date(date)
    {
        let why = "this is no date of the calendar, written year first";
        desk.problem(Problem::new(
            &at.field("date"),
            "bad-date",
            date,
            "a date",
            why,
            "2026-05-02",
        ));
    }
}

fn is_date(text: &str) -> bool {
    let mut parts = text.split('-').map(|part| (part.len(), part.parse::<u32>().ok()));
    let (Some((4, Some(year))), Some((2, Some(month))), Some((2, Some(day))), None) =
        (parts.next(), parts.next(), parts.next(), parts.next())
    else {
        return false;
    };
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1..=days).contains(&day)
}

/// The fractions of an inch that a key row offers, and the leaning words.
fn keys(system: System, graduation: Length) -> Vec<&'static str> {
    const EIGHTHS: [&str; 7] = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];
    const SIXTEENTHS: [&str; 15] = [
        "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4",
        "13/16", "7/8", "15/16",
    ];
    let fractions: &[&str] = match (system, Step::of(graduation)) {
        (System::Metric, _) => &[],
        (System::Inch, Step::Eighth) => &EIGHTHS,
        (System::Inch, _) => &SIXTEENTHS,
    };
    fractions.iter().copied().chain(["scant", "full"]).collect()
}

/// What is made of a coil that is there.
type Judge = fn(&mut Desk<'_>, &Path, &Coil, &Taped, &Gear) -> (Standing, SeatReport);

/// How much of coils and seats is read, and how much is said of it.
struct Depth {
    read: fn(&mut Desk<'_>, &Path, usize, &Drawing) -> Coil,
    draw: fn(&mut Desk<'_>, &Coil) -> CoilReport,
    judge: Judge,
}

const WHOLE: Depth = Depth { read: Coil::read, draw: drawing::report, judge: seat::assess };

/// What stands there, and no report of it.
const STANDING: Depth = Depth {
    read: Coil::read,
    draw: |_, _| CoilReport::default(),
    judge: |_, _, drawn, taped, gear| {
        (Judged::of(taped, drawn, gear).standing(drawn), SeatReport::default())
    },
};

const BY_TAPE: Depth =
    Depth { read: Coil::of_book, draw: |_, _| CoilReport::default(), judge: seat::by_tape };

/// Drawings and nests of a job, as read, before anything is worked out of them.
pub(crate) struct Bench<'j> {
    pub(crate) gear: Gear,
    coils: Vec<(Rc<Coil>, CoilReport)>,
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
    pub(crate) fn reckoned(&self, desk: &mut Desk<'_>) -> Option<Reckoned> {
        if self.seats.is_empty() { None } else { Reckoned::new(desk, &self.at, &self.seats) }
    }
}

impl<'j> Bench<'j> {
    pub(crate) fn read(desk: &mut Desk<'_>, job: &'j Job) -> Self {
        Self::read_by(desk, job, &WHOLE)
    }

    /// The same without a report of any coil or seat: what stands there, and no more.
    pub(crate) fn stands(desk: &mut Desk<'_>, job: &'j Job) -> Self {
        Self::read_by(desk, job, &STANDING)
    }

    fn read_by(desk: &mut Desk<'_>, job: &'j Job, by: &Depth) -> Self {
        let gear = Gear::assess(desk, &job.tape, &job.decision_level);
        let mut bench = Self { gear, coils: Vec::new(), nests: Vec::new() };
        let at = Path::of("coils");
        for (index, entry) in desk.list(&at, &job.coils).iter().enumerate() {
            let at = at.item(index);
            let Some(drawing) = desk.object(&at, entry) else { continue };
            let drawn = (by.read)(desk, &at, index, drawing);
            let report = (by.draw)(desk, &drawn);
            named_once(desk, &at, &drawn.id, &bench.coil_names(), "a coil");
            bench.coils.push((Rc::new(drawn), report));
        }
        let at = Path::of("nests");
        for (index, entry) in desk.list(&at, &job.nests).iter().enumerate() {
            let at = at.item(index);
            let Some(nest) = desk.object(&at, entry) else { continue };
            let drafted = bench.draft(desk, at, nest, by.judge);
            named_once(desk, &drafted.at, &drafted.id, &bench.nest_names(), "a nest");
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

    /// The nests by name, with what they were reckoned to.
    pub(crate) fn named<'a>(&'a self, reckoned: &'a [Option<Reckoned>]) -> Vec<Named<'a>> {
        let nests = self.nests.iter().zip(reckoned);
        nests.map(|(nest, reckoned)| Named { id: &nest.id, reckoned: reckoned.as_ref() }).collect()
    }

    /// The labels of the coils in their seats and of others.
    pub(crate) fn marked_with<'a>(&'a self, lying: &'a [Lying<'_>]) -> Vec<Marked<'a>> {
        let seats = self.nests.iter().flat_map(|nest| {
            nest.seats.iter().enumerate().map(move |(index, seat)| Marked {
                at: nest.at.field("seats").item(index),
                coil: &seat.coil.id,
                label: seat.label.as_deref().unwrap_or_default(),
            })
        });
        seats.chain(lying.iter().map(Lying::marked)).collect()
    }

    fn draft(
        &self,
        desk: &mut Desk<'_>,
        at: Path,
        entry: &'j NestEntry,
        judge: Judge,
    ) -> Drafted<'j> {
        let id = desk.text(&at, "id", &entry.id).unwrap_or_default().to_owned();
        let (mut seats, mut reports) = (Vec::new(), Vec::new());
        let list = at.field("seats");
        for (index, seat) in desk.list(&list, &entry.seats).iter().enumerate() {
            let here = list.item(index);
            let Some(seat) = desk.object(&here, seat) else { continue };
            let (seated, report) = self.sit(desk, &here, seat, judge);
            seats.push(seated);
            reports.push(report);
        }
        if seats.is_empty() {
            desk.note(&at, "nest-empty", "No coil stands in this nest yet.");
        }
        Drafted { at, id, entry, seats, reports }
    }

    fn sit(
        &self,
        desk: &mut Desk<'_>,
        at: &Path,
        seat: &Seat,
        judge: Judge,
    ) -> (Seated, SeatReport) {
        let name = desk.text(at, "coil", &seat.coil);
        let drawn = match (name, name.and_then(|name| self.coil(name))) {
            (_, Some(drawn)) => drawn.clone(),
            (Some(name), None) => {
                desk.known(&at.field("coil"), name, &self.coil_names(), "no-such-coil");
                Rc::default()
            }
            (None, None) => {
                desk.note(at, "coil-unknown", "The seat does not say which coil it should hold.");
                Rc::default()
            }
        };
        let taped = Taped::read(desk, at, &seat.into(), self.gear.graduation);
        let raise = desk.length(at, "raise", &seat.raise, &bounds::RAISE).unwrap_or_default();
        let (standing, mut report) = judge(desk, at, &drawn, &taped, &self.gear);
        report.label = desk.text(at, "label", &seat.label).map(str::to_owned);
        desk.text(at, "pair", &seat.pair);
        let label = report.label.clone();
        (Seated { coil: drawn, standing, raise, label }, report)
    }
}

fn named_once(desk: &mut Desk<'_>, at: &Path, id: &str, before: &[String], what: &str) {
    let path = at.field("id");
    if id.is_empty() {
        let why = format!("{what} needs a name by which the rest of the job can mean it");
        desk.problem(Problem::new(&path, "name-missing", "", "a name", &why, "outer"));
    } else if before.iter().any(|known| known == id) {
        let why = format!("{what} of this name stands further up");
        let example = format!("{id} 2");
        desk.problem(Problem::new(&path, "name-twice", id, "a name of its own", &why, &example));
    }
}

fn nest_report(
    desk: &mut Desk<'_>,
    drafted: &Drafted<'_>,
    reckoned: Option<&Reckoned>,
) -> NestReport {
    let mut report = NestReport {
        id: drafted.id.clone(),
        seats: drafted.reports.clone(),
        not_good: drafted.seats.iter().filter_map(Seated::not_good).collect(),
        ..NestReport::default()
    };
    let (at, entry) = (&drafted.at, drafted.entry);
    let height = desk.length(at, "working_height", &entry.working_height, &bounds::HEIGHT);
    let load = desk.quantity(at, "working_load", &entry.working_load, &bounds::LOAD);
    if height.is_some() && load.is_some() {
        desk.note(
            &at.field("working_load"),
            "height-goes-first",
            "Both a working height and a working load are given: the height is used.",
        );
    }
    let (field, text) = match (height, load) {
        (Some(_), _) => ("working_height", entry.working_height.given()),
        (None, Some(_)) => ("working_load", entry.working_load.given()),
        (None, None) => ("working_height", None),
    };
    if let Some(text) = text {
        let spelt = match field {
            "working_load" => quantity::spell_unit(&text.0, desk.system(), &bounds::LOAD),
            _ => None,
        };
        let question = spelt.as_deref().unwrap_or(&text.0);
        if let Some((state, working)) =
            nest::ask(desk, &at.field(field), reckoned, question, Some(&text.0))
        {
            report.stored_energy = Some(nest::stored_energy(desk, &state));
            report.working = Some(working);
        }
    }
    let list = at.field("ask");
    for (index, asked) in desk.list(&list, &entry.ask).iter().enumerate() {
        let here = list.item(index);
        let Some(text) = desk.text(&here, "", asked) else { continue };
        let answer = nest::ask(desk, &here, reckoned, text, Some(text));
        report.answers.extend(answer.map(|(_, report)| report));
    }
    report.clearances = nest::clearances(desk, &drafted.seats);
    if let Some(reckoned) = reckoned {
        nest::assess(desk, reckoned, &mut report);
    }
    load_cost_shares(desk, &mut report);
    report
}

fn load_cost_shares(desk: &mut Desk<'_>, report: &mut NestReport) {
    let Some(working) = &report.working else { return };
    let total = &working.load;
    for (seat, state) in report.seats.iter_mut().zip(&working.seats) {
        // A coil that is loose there costs nothing there.
        if let (Some(cost), true) = (&seat.load_cost, state.touching) {
            let share = cost.si / total.si;
            let mut figure = desk.pen.figure::<Share>(share);
            figure.text = format!("{} %", quantity::write_fixed(share * 100.0, 1));
            let source = "at the working height of the nest";
            let values: [Value<'_>; 2] = [("ΔF", &cost.text), ("F", &total.text)];
            seat.load_cost_share = Some(desk.ledger.work(figure, COST_OF_LOAD, &values, &source));
        }
    }
}

/// A nest of a job at a height, or under a load, that is asked for; with its half-section.
#[must_use]
pub fn nest_state(job: &Job, tables: &Tables<'_>, nest_id: &str, text: &str) -> StateAnswer {
    if let Some(problem) = file::refused_format(job) {
        return StateAnswer { problem: Some(problem), ..StateAnswer::default() };
    }
    let mut reading = Desk::new(tables, pen(job));
    let bench = Bench::stands(&mut reading, job);
    let mut desk = Desk::new(tables, reading.pen);
    let path = Path::default();
    let Some(drafted) = bench.nests.iter().find(|nest| nest.id == nest_id) else {
        let names = bench.nest_names();
        desk.known(&path, nest_id, &names, "no-such-nest");
        return StateAnswer { problem: desk.problems.into_iter().next(), ..StateAnswer::default() };
    };
    let before = reading.problems.len();
    let reckoned = Reckoned::new(&mut reading, &drafted.at, &drafted.seats);
    let answer = nest::ask(&mut desk, &path, reckoned.as_ref(), text, Some(text));
    let section = reckoned.as_ref().zip(answer.as_ref());
    let section = section.map(|(reckoned, (state, _))| cut::nest(reckoned, state, desk.system()));
    let missing = || {
        let contradiction = reading.problems.get(before..).and_then(<[Problem]>::first).cloned();
        contradiction.or_else(|| {
            let silent = |code| code == "load-unknown" || code == "nest-empty";
            let here = |note: &&Note| note.path.starts_with(drafted.at.text()) && silent(note.code);
            let note = reading.notes.iter().find(here)?;
            let expected = "a nest whose every coil is known";
            Some(Problem::new(&path, note.code, "", expected, &note.text, ""))
        })
    };
    StateAnswer {
        problem: desk
            .problems
            .into_iter()
            .next()
            .or_else(|| if answer.is_none() { missing() } else { None }),
        state: answer.map(|(_, report)| report),
        section,
        workings: Workings(desk.ledger.entries),
    }
}

/// What a strip of tape needs to know of one reading.
pub(crate) struct Gauged {
    pub(crate) system: System,
    /// The system that the tape is marked in.
    pub(crate) marked: System,
    pub(crate) graduation: Length,
    pub(crate) text: Option<String>,
    pub(crate) book: Option<Length>,
    pub(crate) least: Option<Length>,
    pub(crate) most: Option<Length>,
}

/// Looks up a reading by its path; the field may be empty, or one past the last.
pub(crate) fn gauge(job: &Job, tables: &Tables<'_>, path: &str) -> Option<Gauged> {
    let mut numbers =
        path.split(|c: char| !c.is_ascii_digit()).filter_map(|part| part.parse::<usize>().ok());
    let (nest, seat, reading) = (numbers.next()?, numbers.next()?, numbers.next()?);
    if path != format!("nests[{nest}].seats[{seat}].readings[{reading}]") {
        return None;
    }
    let mut desk = Desk::new(tables, pen(job));
    let gear = Gear::assess(&mut desk, &job.tape, &job.decision_level);
    let seats = &job.nests.given()?.0.get(nest)?.given()?.seats;
    let seat = seats.given()?.0.get(seat)?.given()?;
    let text = seat.readings.given().and_then(|readings| readings.0.get(reading)?.given());
    let name = seat.coil.given().map(|name| name.0.trim());
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let same = |drawing: &&Drawing| drawing.id.given().map(|id| id.0.trim()) == name;
    let drawing = drawings.iter().filter_map(Entry::given).find(same);
    let drawn = drawing.map(|drawing| Coil::of_book(&mut desk, &Path::default(), 0, drawing));
    let limits = drawn.as_ref().and_then(|drawn| drawn.limits);
    Some(Gauged {
        system: desk.system(),
        marked: gear.marked,
        graduation: gear.graduation,
        text: text.map(|text| text.0.clone()),
        book: drawn.and_then(|drawn| drawn.free()),
        least: limits.and_then(|limits| limits.least()),
        most: limits.and_then(|limits| limits.most()),
    })
}

//! The whole of an assessment, from the fields of a job to its report.

use super::answer::{answered, format};
use super::coil::Coil;
use super::context::Context;
use super::drafted::{Bench, Drafted};
use super::entry::{Entry, Text};
use super::field::Rows;
use super::figures::axes;
use super::formulas::COST_OF_LOAD;
use super::input::{Drawing, Job};
use super::nest::{self, ComputedNest, Seated};
use super::pool::Lying;
use super::problem::Path;
use super::report::{
    NestReport, Note, Phrase, Problem, Report, StateAnswer, Tally, TapeReport, TapedNest, Workings,
};
use super::seat::{self, Instrument};
use super::stack::NestStack;
use super::{
    cautions, cut, drawing, file, frame, guides, labels, loads, pool, replace, since, sizing,
    stack, standing,
};
use crate::formula::Value;
use crate::quantity::{self, Length, Share, System};
use crate::reading::Step;
use crate::tables::Tables;

/// Everything that follows from a job.
///
/// A pure function of its arguments: the same job and tables give the same report, on every
/// machine.
#[must_use]
pub fn assess(job: &Job, tables: &Tables<'_>) -> Report {
    let axes = axes(file::system_of(job));
    let mut report = Report { cautions: cautions::all(), axes, ..Report::default() };
    (report.problems, report.notes, report.workings) = answered(job, tables, |context| {
        context.problems.extend(file::format_problem(job));
        fill(context, job, &mut report);
    });
    report
}

/// The same for one nest, by its name, as a report that has no other: for a job of so many nests that the
/// report of all is long.
///
/// It has the drawings of its coils, and how these figures came about. All that lies beside the nest is left
/// out, and with it what hangs on the frame, `standing`; problems and notes are those of the nest and of all
/// drawings.
///
/// # Example
/// ```
/// use coilnest::job::{assess_nest, file};
/// use coilnest::tables::Tables;
///
/// let job = file::open(
///     r#"{ "format": "coilnest-job/1", "system": "inch",
///          "tape": { "graduation": "1/16 in", "error": "0" },
///          "coils": [{ "id": "outer", "free": "13 15/16", "limits": { "under": "1/8", "over": "1/8" } }],
///          "nests": [{ "id": "A left", "seats": [{ "coil": "outer", "readings": ["13 7/8"] }] },
///                    { "id": "A right", "seats": [{ "coil": "outer", "readings": ["13 5/8", "13 11/16"] }] }] }"#,
/// )?;
/// let report = assess_nest(&job, &Tables::NONE, "A right");
/// assert_eq!(report.nests.len(), 1);
/// assert_eq!(report.nests[0].id, "A right");
/// assert_eq!(report.tally.short, 1);
/// # Ok::<(), Box<coilnest::job::report::Problem>>(())
/// ```
#[must_use]
pub fn assess_nest(job: &Job, tables: &Tables<'_>, nest_id: &str) -> Report {
    let axes = axes(file::system_of(job));
    let mut report = Report { cautions: cautions::all(), axes, ..Report::default() };
    (report.problems, report.notes, report.workings) = answered(job, tables, |context| {
        let bench = Bench::of_nest(context, job, nest_id);
        labels::once(context, bench.marked());
        if let Some(drafted) = bench.nests.iter().find(|nest| nest.id == nest_id) {
            alone(context, &bench, drafted, &mut report);
        } else {
            context.known(&Path::default(), nest_id, &bench.nest_names(), "no-such-nest");
        }
    });
    report
}

/// Fills the report of one nest.
fn alone(context: &mut Context<'_>, bench: &Bench<'_>, drafted: &Drafted<'_>, report: &mut Report) {
    let computed = drafted.computed(context);
    let mut nest = nest_report(context, drafted, computed.as_ref());
    nest.guides = guides::assess(context, &drafted.at, drafted.entry, &bench.instrument);
    let stack = stack::read(context, &drafted.at, drafted.entry);
    stacked(context, &stack, computed.as_ref(), &mut nest);
    report.tally = Tally::of(nest.seats.iter());
    report.keys = keys(bench.instrument.marked, bench.instrument.graduation);
    report.nests = vec![nest];
    for (coil, _) in &bench.coils {
        if drafted.seats.iter().any(|seat| seat.coil.id == coil.id) {
            report.coils.push(drawing::report(context, coil));
        }
    }
    let elsewhere = |path: &str| {
        let rest = path.strip_prefix(drafted.at.text());
        path.starts_with("nests[")
            && !rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
    };
    context.problems.retain(|problem| !elsewhere(&problem.path));
    context.notes.retain(|note| !elsewhere(&note.path));
}

/// What lies over and under a nest.
fn stacked(
    context: &mut Context<'_>,
    of: &NestStack,
    computed: Option<&ComputedNest>,
    nest: &mut NestReport,
) {
    let at_work = stack::at_work(computed, nest.working.as_ref());
    nest.stack = stack::assess(context, of, &nest.id, at_work);
    nest.stack_height = nest.stack.as_ref().and_then(|stack| stack.height.clone());
}

/// What a tape says of the coils of a job, held against their book figures and limits: what a page needs
/// while they are measured. All else that is written of them, of nests, frame and bench, is not looked at.
#[must_use]
pub fn judge(job: &Job, tables: &Tables<'_>) -> TapeReport {
    let mut report = TapeReport { cautions: cautions::measure(), ..TapeReport::default() };
    (report.problems, report.notes, report.workings) = answered(job, tables, |context| {
        context.problems.extend(file::format_problem(job));
        header(context, job);
        let bench = Bench::by_tape(context, job);
        labels::once(context, bench.marked());
        report.set_aside = pool::set_aside(context, job, &bench, &seat::BY_TAPE);
        report.tally = Tally::of(bench.nests.iter().flat_map(|nest| &nest.reports));
        report.keys = keys(bench.instrument.marked, bench.instrument.graduation);
        let nests = bench.nests.into_iter();
        report.nests = nests.map(|nest| TapedNest { id: nest.id, seats: nest.reports }).collect();
    });
    report
}

/// Reads what stands beside coils and nests, clears the boxes, and settles the frame.
fn beside(
    context: &mut Context<'_>,
    job: &Job,
    bench: &Bench<'_>,
    nests: &[Option<ComputedNest>],
    report: &mut Report,
) {
    for (drafted, nest) in bench.nests.iter().zip(&mut report.nests) {
        nest.guides = guides::assess(context, &drafted.at, drafted.entry, &bench.instrument);
    }
    let stacks = stack::all(context, bench);
    for ((of, computed), nest) in stacks.iter().zip(nests).zip(&mut report.nests) {
        stacked(context, of, computed.as_ref(), nest);
    }
    let taped = standing::read(context, bench);
    if let Some(written) = frame::read(context, job, &bench.nest_names())
        && let Some(loaded) = written.loaded(context, &bench.named(nests, &stacks))
    {
        let taped = written.taped(taped);
        if let Some(stood) = loads::assess(context, &written, &loaded, &bench.instrument, &taped) {
            let heights = stood.report.standing.iter().flat_map(|standing| &standing.heights);
            for height in heights {
                let nest = report.nests.iter_mut().find(|nest| nest.id == height.of);
                if let Some(nest) = nest {
                    nest.standing = Some(height.clone());
                }
            }
            report.frame = Some(stood.report);
        }
    }
    let lying = pool::read(context, job, bench);
    labels::once(context, bench.marked().chain(lying.iter().map(Lying::marked)));
    pool::uses(context, job);
    replace::read(context, job, bench);
    sizing::read(context, job);
    since::read(context, job);
}

fn fill(context: &mut Context<'_>, job: &Job, report: &mut Report) {
    header(context, job);
    if let Some((at, record)) = context.object(&Path::default(), job.record()) {
        record.visit(&at, context);
    }
    let bench = Bench::read(context, job);
    let mut nests = Vec::with_capacity(bench.nests.len());
    for drafted in &bench.nests {
        let computed = drafted.computed(context);
        report.nests.push(nest_report(context, drafted, computed.as_ref()));
        nests.push(computed);
    }
    report.set_aside = pool::set_aside(context, job, &bench, &seat::DRAWN);
    report.tally = Tally::of(report.nests.iter().flat_map(|nest| &nest.seats));
    beside(context, job, &bench, &nests, report);
    report.keys = keys(bench.instrument.marked, bench.instrument.graduation);
    report.coils = bench.coils.into_iter().map(|(_, report)| report).collect();
}

fn header(context: &mut Context<'_>, job: &Job) {
    let top = Path::default();
    context.read(&top, job.title());
    context.read(&top, job.system());
}

/// The fractions of an inch that a key row offers, and the leaning words.
fn keys(system: System, graduation: Length) -> Vec<Phrase> {
    const EIGHTHS: [&str; 7] = ["1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"];
    const SIXTEENTHS: [&str; 15] = [
        "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "11/16", "3/4",
        "13/16", "7/8", "15/16",
    ];
    let fractions: &[&'static str] = match (system, Step::of(graduation)) {
        (System::Metric, _) => &[],
        (System::Inch, Step::Eighth) => &EIGHTHS,
        (System::Inch, _) => &SIXTEENTHS,
    };
    fractions.iter().copied().chain(["scant", "full"]).map(Into::into).collect()
}

fn nest_report(
    context: &mut Context<'_>,
    drafted: &Drafted<'_>,
    computed: Option<&ComputedNest>,
) -> NestReport {
    let mut report = NestReport {
        id: drafted.id.clone(),
        seats: drafted.reports.clone(),
        not_good: drafted.seats.iter().filter_map(Seated::not_good).collect(),
        ..NestReport::default()
    };
    let (at, entry) = (&drafted.at, drafted.entry);
    let height = context.read(at, entry.working_height());
    let load = context.read(at, entry.working_load());
    if height.is_some() && load.is_some() {
        context.note(
            &entry.working_load().path(at),
            "height-goes-first",
            "Both a working height and a working load are given: the height is used.",
        );
    }
    let asked = match (height, load) {
        (Some(_), _) => {
            let field = entry.working_height();
            Some((field.path(at), field.entry.given(), None))
        }
        (None, Some(_)) => {
            let field = entry.working_load();
            Some((field.path(at), field.entry.given(), field.spelt(context.system())))
        }
        (None, None) => None,
    };
    if let Some((at, Some(Text(text)), spelt)) = asked {
        let question = spelt.as_deref().unwrap_or(text);
        if let Some((state, working)) = nest::ask(context, &at, computed, question, Some(text)) {
            report.stored_energy = Some(nest::stored_energy(context, &state));
            report.working = Some(working);
        }
    }
    for (here, asked) in context.list(at, entry.ask()) {
        let Some(text) = context.text(&here, asked) else { continue };
        let answer = nest::ask(context, &here, computed, text, Some(text));
        report.answers.extend(answer.map(|(_, report)| report));
    }
    report.clearances = nest::clearances(context, &drafted.seats);
    if let Some(computed) = computed {
        nest::assess(context, computed, &mut report);
    }
    load_cost_shares(context, &mut report);
    report
}

fn load_cost_shares(context: &mut Context<'_>, report: &mut NestReport) {
    let Some(working) = &report.working else { return };
    let total = &working.load;
    for (seat, state) in report.seats.iter_mut().zip(&working.seats) {
        // A coil that is loose there costs nothing there.
        if let (Some(cost), true) = (&seat.load_cost, state.touching) {
            let share = cost.si / total.si;
            let mut figure = context.format.figure::<Share>(share);
            figure.text = format!("{} %", quantity::write_fixed(share * 100.0, 1));
            let source = "at the working height of the nest";
            let values: [Value<'_>; 2] = [("ΔF", &cost.text), ("F", &total.text)];
            seat.load_cost_share = Some(context.ledger.work(figure, COST_OF_LOAD, &values, source));
        }
    }
}

/// A nest of a job at a height, or under a load, that is asked for; with its half-section.
#[must_use]
pub fn nest_state(job: &Job, tables: &Tables<'_>, nest_id: &str, text: &str) -> StateAnswer {
    if let Some(problem) = file::refused_format(job) {
        return StateAnswer { problem: Some(problem), ..StateAnswer::default() };
    }
    let mut reading = Context::new(tables, format(job));
    let bench = Bench::stands(&mut reading, job);
    let mut context = Context::new(tables, reading.format);
    let path = Path::default();
    let Some(drafted) = bench.nests.iter().find(|nest| nest.id == nest_id) else {
        let names = bench.nest_names();
        context.known(&path, nest_id, &names, "no-such-nest");
        return StateAnswer {
            problem: context.problems.into_iter().next(),
            ..StateAnswer::default()
        };
    };
    let before = reading.problems.len();
    let computed = ComputedNest::new(&mut reading, &drafted.at, &drafted.seats);
    let answer = nest::ask(&mut context, &path, computed.as_ref(), text, Some(text));
    let section = computed.as_ref().zip(answer.as_ref());
    let section =
        section.map(|(computed, (state, _))| cut::nest(computed, state, context.system()));
    let missing = || {
        let contradiction = reading.problems.get(before..).and_then(<[Problem]>::first).cloned();
        contradiction.or_else(|| {
            let silent = |code: &str| code == "load-unknown" || code == "nest-empty";
            let here =
                |note: &&Note| note.path.starts_with(drafted.at.text()) && silent(&note.code);
            let note = reading.notes.iter().find(here)?;
            let expected = "a nest whose every coil is known";
            let problem = Problem::new(&path, "", "", expected, &note.text, "");
            Some(Problem { code: note.code.clone(), ..problem })
        })
    };
    StateAnswer {
        problem: context
            .problems
            .into_iter()
            .next()
            .or_else(|| if answer.is_none() { missing() } else { None }),
        state: answer.map(|(_, report)| report),
        section,
        workings: Workings(context.ledger.entries),
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
    let mut context = Context::new(tables, format(job));
    let instrument = Instrument::assess(&mut context, job);
    let seats = &job.nests.given()?.0.get(nest)?.given()?.seats;
    let seat = seats.given()?.0.get(seat)?.given()?;
    let text = seat.readings.given().and_then(|readings| readings.0.get(reading)?.given());
    let name = seat.coil.given().map(|name| name.0.trim());
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let same = |drawing: &&Drawing| drawing.id.given().map(|id| id.0.trim()) == name;
    let drawing = drawings.iter().filter_map(Entry::given).find(same);
    let drawn = drawing.map(|drawing| Coil::of_book(&mut context, &Path::default(), 0, drawing));
    let limits = drawn.as_ref().and_then(|drawn| drawn.limits);
    Some(Gauged {
        system: context.system(),
        marked: instrument.marked,
        graduation: instrument.graduation,
        text: text.map(|text| text.0.clone()),
        book: drawn.and_then(|drawn| drawn.free()),
        least: limits.and_then(|limits| limits.least()),
        most: limits.and_then(|limits| limits.most()),
    })
}

//! What may replace a coil: read for every report, judged when it is asked for.

mod field;
mod line;
mod order;
mod place;
mod quoted;
mod spring;
mod swap;
mod together;
mod waived;
mod words;

use super::answer::answered;
use super::choices::Reach;
use super::context::Context;
use super::drafted::Bench;
use super::field::{Field, Reads, Rows, Visitor};
use super::figures::{Format, sentence, text};
use super::input::{Job, Replace};
use super::problem::Path;
use super::report::{CandidateReport, LineReport, Met, OrderReport, Problem, ReplaceReport};
use super::{cautions, coil};
use crate::coil::buckling::Seating;
use crate::drawing::{Allowable, Contradiction};
use crate::quantity::{self, Pressure};
use crate::replacement::{
    AllowedRange, Asked, Case, Judgement, Line, OrderDetail, OrderDetails, ReplacementError, Whose,
};
use crate::tables::Tables;
use field::Fields;
use order::Letter;
use place::{FrameAround, NestAround};
use spring::Spring;
use swap::Subject;
use waived::Waived;

/// What may replace a coil of a job, requirement by requirement, and what to write to a spring maker.
#[must_use]
pub fn replace(job: &Job, tables: &Tables<'_>) -> ReplaceReport {
    let mut report = ReplaceReport { cautions: cautions::replace(), ..ReplaceReport::default() };
    (report.problems, report.notes, report.workings) =
        answered(job, tables, |context| fill(context, job, &mut report));
    report
}

/// What a job says of a replacement.
pub(crate) struct ReplacementSpec {
    original: Option<String>,
    nest: Option<String>,
    /// Which seat of the nest alone is meant, the first being 0.
    seat: Option<usize>,
    waived: Waived,
    /// Which nests the candidates replace where they are one nest.
    together: Option<Reach>,
    /// Each with its place in the job's list.
    candidates: Vec<(usize, Spring)>,
    /// As far as it does not follow from where the original stands.
    asked: Asked,
    details: OrderDetails,
}

/// Where the fields of a replacement stand.
fn path() -> Path {
    Path::of("replace")
}

/// Reads what a job says of a replacement, before anything is worked out of it.
pub(crate) fn read(
    context: &mut Context<'_>,
    job: &Job,
    bench: &Bench<'_>,
) -> Option<ReplacementSpec> {
    let coils = job.coils.given().map_or(&[][..], |coils| &coils.0);
    for (index, coil) in coils.iter().enumerate() {
        if let Some(drawing) = coil.given() {
            waived::read(context, &Path::of("coils").item(index), drawing.waived());
        }
    }
    let (at, entry) = context.object(&Path::default(), job.replace())?;
    let original = context.text(&at, entry.original()).map(str::to_owned);
    if let Some(name) = &original {
        context.known(&entry.original().path(&at), name, &bench.coil_names(), "no-such-coil");
    }
    let nest = context.text(&at, entry.nest()).map(str::to_owned);
    if let Some(name) = &nest {
        context.known(&entry.nest().path(&at), name, &bench.nest_names(), "no-such-nest");
    }
    let seat = context.read(&at, entry.seat());
    let seat = seat.and_then(|seat| usize::try_from(seat).ok()?.checked_sub(1));
    if seat.is_some() && nest.is_none() {
        let text = "A seat is named but no nest: all seats that hold the original are meant.";
        context.note(&entry.seat().path(&at), "seat-without-nest", text);
    }
    let together = context.read(&at, entry.together()).flatten();
    if together.is_some() && seat.is_some() {
        let why = "all coils of the nest are replaced together: to judge a coil for this seat alone, have the candidates judged each by itself";
        context.problem(Problem::new(
            &entry.seat().path(&at),
            "seat-with-together",
            entry.seat.written(),
            "no seat",
            why,
            "",
        ));
    }
    let waived = waived::read(context, &at, entry.waived());
    let candidates = context.list(&at, entry.candidates()).enumerate();
    let candidates: Vec<(usize, Spring)> = candidates
        .filter_map(|(index, (at, item))| {
            let (at, drawing) = context.object(&at, item)?;
            Some((index, Spring::read(context, &at, drawing)))
        })
        .collect();
    if original.is_none() && !candidates.is_empty() {
        let text = "The drawing that is to be replaced is not named.";
        context.note(&entry.original().path(&at), "original-unknown", text);
    }
    let asked = asked(context, &at, entry);
    let details = details(context, &at, entry);
    let seat = seat.filter(|_| nest.is_some() && together.is_none());
    Some(ReplacementSpec { original, nest, seat, waived, together, candidates, asked, details })
}

fn asked(context: &mut Context<'_>, at: &Path, entry: &Replace) -> Asked {
    let Some((at, entry)) = context.object(at, entry.asked()) else { return Asked::default() };
    let against = coil::stress_factor(context, &at, entry.stress_factor());
    let allowable = |stress: Option<Pressure>| Some(Allowable { stress: stress?, against });
    Asked {
        pocket: context.read(&at, entry.pocket()),
        post: context.read(&at, entry.post()),
        play: context.read(&at, entry.play()).unwrap_or_default(),
        gap: context.read(&at, entry.gap()),
        free: limits([context.read(&at, entry.free_least()), context.read(&at, entry.free_most())]),
        rate: limits([context.read(&at, entry.rate_least()), context.read(&at, entry.rate_most())]),
        working: context.read(&at, entry.height()),
        load: limits([context.read(&at, entry.load_least()), context.read(&at, entry.load_most())]),
        solid: context.read(&at, entry.solid()),
        stress_at_work: allowable(context.read(&at, entry.stress())),
        stress_at_solid: allowable(context.read(&at, entry.stress_solid())),
        reserve: context.read(&at, entry.reserve()),
        safety: context.read(&at, entry.safety()),
        deviation: context.read(&at, entry.deviation()),
        ..Asked::default()
    }
}

fn limits<Q>([least, most]: [Option<Q>; 2]) -> Option<AllowedRange<Q>> {
    (least.is_some() || most.is_some()).then_some(AllowedRange { least, most })
}

fn details(context: &mut Context<'_>, at: &Path, entry: &Replace) -> OrderDetails {
    let Some((at, order)) = context.object(at, entry.order()) else {
        return OrderDetails::default();
    };
    let quantity = context.read(&at, order.quantity());
    let mut detailed = Wished { context, said: Vec::new() };
    order.visit(&at, &mut detailed);
    OrderDetails::of(quantity, detailed.said)
}

/// What is said of an order, as far as it was looked at.
struct Wished<'d, 't> {
    context: &'d mut Context<'t>,
    said: Vec<(OrderDetail, String)>,
}

impl Visitor for Wished<'_, '_> {
    fn text<K: Reads>(&mut self, at: &Path, field: Field<'_, K>) {
        if let Some(detail) = words::detail_coded(field.name)
            && let Some(text) = self.context.text(at, field)
        {
            self.said.push((detail, text.to_owned()));
        }
    }
}

/// All that candidates are judged with.
struct Ground<'a> {
    written: &'a ReplacementSpec,
    original: &'a Spring,
    asked: Asked,
    /// Where the loads between which it works are written.
    cycle_at: Path,
    standing: Option<NestAround>,
    frame_around: Option<FrameAround>,
}

fn fill(context: &mut Context<'_>, job: &Job, report: &mut ReplaceReport) {
    // What is wrong with coils and nests is said elsewhere.
    let mut aside = Context::new(context.tables, context.format);
    let bench = Bench::stands(&mut aside, job);
    let springs = spring::all(&mut aside, job);
    let Some(written) = read(context, job, &bench) else { return };
    let named = |name: &String| springs.iter().find(|spring| spring.id == *name);
    let Some(original) = written.original.as_ref().and_then(named) else { return };
    report.original = Some(original.name.clone());
    let standing = place::standing(context, &bench, &written, &springs, original);
    let frame_around =
        place::frame_around(&mut aside, job, &bench, &written, original, standing.as_ref());
    let ground = ground(context, &written, original, standing, frame_around);
    let letter = Letter::of(job);
    report.order = Some(letter.of_original(context.format, &ground));
    if let Some(nest) = together::nest(context, &ground) {
        let judged = nest.report(context);
        report.candidates = nest.offers(context.format, &letter, &ground, &judged);
        report.together = Some(judged);
        return;
    }
    for (index, candidate) in &written.candidates {
        let one = judged(context, &ground, &letter, *index, candidate);
        report.candidates.push(one);
    }
    if written.candidates.is_empty() {
        // What is asked may contradict itself before anything is offered.
        let nominal = || original.drawing.clone();
        if let Err(error) = Case::new(nominal(), nominal(), ground.asked).judge() {
            let fields = Fields::alone(&original.at, &ground.cycle_at);
            context.problem(fields.problem(context.system(), &error));
        }
    }
}

fn ground<'a>(
    context: &mut Context<'_>,
    written: &'a ReplacementSpec,
    original: &'a Spring,
    standing: Option<NestAround>,
    frame_around: Option<FrameAround>,
) -> Ground<'a> {
    let candidates = || written.candidates.iter().map(|(_, spring)| spring);
    let at_work = core::iter::once(original).chain(candidates());
    let cycle = at_work.clone().find_map(|spring| Some((spring.loads?, &spring.at)));
    let seating = at_work.clone().find_map(|spring| spring.seating);
    let height = standing.as_ref().and_then(|standing| standing.height);
    let working = written.asked.working.or(height);
    if working.is_none() && !written.candidates.is_empty() {
        let text = "No height at work is given, here or for the nest: loads, stress and what is left before solid are not compared there.";
        context.note(&path().field("asked").field("height"), "work-unknown", text);
    }
    let asked = Asked {
        working,
        cycle: cycle.map(|(loads, _)| loads),
        seating: seating.unwrap_or(Seating::Guided),
        ..written.asked.clone()
    };
    let cycle_at = cycle.map_or_else(path, |(_, at)| at.field("duty").field("least"));
    Ground { written, original, asked, cycle_at, standing, frame_around }
}

fn judged(
    context: &mut Context<'_>,
    ground: &Ground<'_>,
    letter: &Letter,
    index: usize,
    candidate: &Spring,
) -> CandidateReport {
    let format = context.format;
    let case = Case {
        original: ground.original.drawing.clone(),
        candidate: candidate.drawing.clone(),
        asked: ground.asked.clone(),
        nest: ground.standing.as_ref().map(|standing| standing.around.clone()),
        frame: ground.frame_around.as_ref().and_then(FrameAround::coils),
        waived: candidate.waived.iter().chain(&ground.written.waived).cloned().collect(),
    };
    let mut report = CandidateReport {
        name: candidate.name.clone(),
        index,
        met: None,
        title: words::overall(Met::CannotTell).into(),
        sentence: String::new(),
        lines: Vec::new(),
        nest: None,
        frame: None,
        order: OrderReport::default(),
    };
    let found = match case.judge() {
        Err(ReplacementError::Frame(error)) => {
            let why = ground
                .frame_around
                .as_ref()
                .map(|frame_around| frame_around.refused(format, &error));
            let text = text!("{}: {}.", candidate.name, why.unwrap_or_default());
            context.note(&candidate.at, "swap-unknown", text);
            Case { frame: None, ..case.clone() }.judge()
        }
        found => found,
    };
    match found {
        Ok(judgement) => fill_in(context, ground, candidate, &case, &judgement, &mut report),
        Err(error) => {
            let fields = Fields {
                original: &ground.original.at,
                candidate: &candidate.at,
                cycle: &ground.cycle_at,
                neighbours: ground.standing.as_ref(),
                nest: (&[], &[]),
            };
            let problem = fields.problem(format.system, &error);
            report.sentence = sentence(&text!("Nothing can be said of it: {}", problem.message));
            context.problem_once(problem);
        }
    }
    report.order = letter.of_candidate(format, ground, candidate, &case, &report);
    report
}

fn fill_in(
    context: &mut Context<'_>,
    ground: &Ground<'_>,
    candidate: &Spring,
    case: &Case,
    judgement: &Judgement,
    report: &mut CandidateReport,
) {
    let met = words::whole(judgement.overall);
    report.met = Some(met);
    report.title = words::overall(met).into();
    let index = report.index;
    let after = judgement.frame.as_ref().and_then(|frame| frame.after.as_ref().ok());
    let said = judgement.lines.iter().map(|one| {
        let waived_for = waived::waived_for(one.requirement, &candidate.waived, waived::FOR_ALL);
        line::report(
            context,
            line::Within { case, after, stop: None },
            one,
            (Some(index), waived_for),
        )
    });
    report.lines = said.collect();
    report.sentence =
        decides(context.format, met, &judgement.lines, &judgement.contradictions, &report.lines);
    let spring = |whose: Whose| match whose {
        Whose::Original => ground.original,
        _ => candidate,
    };
    for (whose, contradiction) in &judgement.contradictions {
        contradicts(context, &spring(*whose).at, contradiction);
    }
    if let Some((standing, swap)) = ground.standing.as_ref().zip(judgement.nest.as_ref()) {
        report.nest = swap::nest(context, standing, ground.original, candidate, swap);
    }
    if let Some((frame_around, swap)) = ground.frame_around.as_ref().zip(judgement.frame.as_ref()) {
        let places = if ground.written.seat.is_some() {
            "With it in the one seat that is named"
        } else {
            "With it in every place of the original"
        };
        let subject = Subject { name: &candidate.name, at: candidate.at.clone() };
        report.frame = Some(swap::frame(context, &subject, frame_around, places, swap));
    }
}

/// What it comes to, and which lines decide it.
fn decides(
    format: Format,
    met: Met,
    judged: &[Line],
    contradictions: &[(Whose, Contradiction)],
    said: &[LineReport],
) -> String {
    let named = |is: fn(&LineReport, Met) -> bool, met| {
        let lines = said.iter().filter(move |line| is(line, met));
        quantity::joined(lines.map(|line| words::within(&line.name)), "; ")
    };
    let open = |met| named(|line, met| line.waived.is_none() && line.met == met, met);
    let sentence = match met {
        Met::Throughout => text!(
            "All {} requirements are met by every spring within its tolerances.",
            said.iter().filter(|line| line.waived.is_none()).count()
        ),
        Met::AtNominal => text!(
            "All is met as it is drawn, but not by every spring within its tolerances: {}.",
            open(Met::AtNominal)
        ),
        Met::AsDrawn => text!(
            "All is met as it is drawn; more cannot be said while these are not given: {}.",
            words::unstated(judged)
        ),
        Met::NotMet => text!("Not met: {}.", open(Met::NotMet)),
        Met::CannotTell if open(Met::CannotTell).is_empty() => String::new(),
        Met::CannotTell => text!(
            "Nothing that is known speaks against it. Cannot be said: {}. Not known: {}.",
            open(Met::CannotTell),
            words::wanting(judged)
        ),
    };
    let contradictions = contradictions.iter().map(|(whose, of)| {
        text!(
            "{} contradicts itself: {}. Ask which is right.",
            words::capital(&whose.to_string()),
            words::contradiction(format, of)
        )
    });
    let waived = said.iter().filter(|line| line.met != Met::Throughout).filter_map(|line| {
        Some(text!("{} (for {})", words::within(&line.name), line.waived_for.as_ref()?))
    });
    let waived: Vec<String> = waived.collect();
    let waived =
        (!waived.is_empty()).then(|| text!("Waived: {}.", quantity::joined(waived.iter(), "; ")));
    let all: Vec<String> = Some(sentence)
        .filter(|sentence| !sentence.is_empty())
        .into_iter()
        .chain(contradictions)
        .chain(waived)
        .collect();
    all.join(" ")
}

/// What is stated and the sizes cannot give, at the field that states it.
fn contradicts(context: &mut Context<'_>, spring: &Path, contradiction: &Contradiction) {
    let at = spring.field(match contradiction {
        Contradiction::Rate { .. } => "rate",
        Contradiction::SolidHeight { .. } => "solid",
        Contradiction::Load { .. } => "loads",
    });
    let read = words::stated(context.format, contradiction);
    let why = words::contradiction(context.format, contradiction);
    let expected = "a figure that the sizes can give within their tolerances";
    context.problem_once(Problem::new(&at, "contradicts-sizes", &read, expected, &why, ""));
}

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
use super::desk::Desk;
use super::drafted::Bench;
use super::field::{Field, Reads, Rows, Visitor};
use super::figures::{Pen, sentence, text};
use super::input::{Job, Replace};
use super::problem::Path;
use super::report::{CandidateReport, LineReport, Met, OrderReport, Problem, ReplaceReport};
use super::{cautions, coil};
use crate::coil::buckling::Seating;
use crate::drawing::{Allowable, Contradiction};
use crate::quantity::{self, Pressure};
use crate::replacement::{
    Asked, Case, Judgement, Limits, Line, ReplacementError, Whose, Wish, Wishes,
};
use crate::tables::Tables;
use field::Fields;
use order::Letter;
use place::{Beneath, Standing};
use spring::Spring;
use swap::Subject;
use waived::Waived;

/// What may replace a coil of a job, requirement by requirement, and what to write to a spring maker.
#[must_use]
pub fn replace(job: &Job, tables: &Tables<'_>) -> ReplaceReport {
    let mut report = ReplaceReport { cautions: cautions::replace(), ..ReplaceReport::default() };
    (report.problems, report.notes, report.workings) =
        answered(job, tables, |desk| fill(desk, job, &mut report));
    report
}

/// What a job says of a replacement.
pub(crate) struct Written {
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
    wishes: Wishes,
}

/// Where the fields of a replacement stand.
fn path() -> Path {
    Path::of("replace")
}

/// Reads what a job says of a replacement, of which nothing is reckoned yet.
pub(crate) fn read(desk: &mut Desk<'_>, job: &Job, bench: &Bench<'_>) -> Option<Written> {
    let coils = job.coils.given().map_or(&[][..], |coils| &coils.0);
    for (index, coil) in coils.iter().enumerate() {
        if let Some(drawing) = coil.given() {
            waived::read(desk, &Path::of("coils").item(index), drawing.waived());
        }
    }
    let (at, entry) = desk.object(&Path::default(), job.replace())?;
    let original = desk.text(&at, entry.original()).map(str::to_owned);
    if let Some(name) = &original {
        desk.known(&entry.original().path(&at), name, &bench.coil_names(), "no-such-coil");
    }
    let nest = desk.text(&at, entry.nest()).map(str::to_owned);
    if let Some(name) = &nest {
        desk.known(&entry.nest().path(&at), name, &bench.nest_names(), "no-such-nest");
    }
    let seat = desk.read(&at, entry.seat());
    let seat = seat.and_then(|seat| usize::try_from(seat).ok()?.checked_sub(1));
    if seat.is_some() && nest.is_none() {
        let text = "A seat is named but no nest: all seats that hold the original are meant.";
        desk.note(&entry.seat().path(&at), "seat-without-nest", text);
    }
    let together = desk.read(&at, entry.together()).flatten();
    if together.is_some() && seat.is_some() {
        let why = "all coils of the nest are replaced together: to judge a coil for this seat alone, have the candidates judged each by itself";
        desk.problem(Problem::new(
            &entry.seat().path(&at),
            "seat-with-together",
            entry.seat.written(),
            "no seat",
            why,
            "",
        ));
    }
    let waived = waived::read(desk, &at, entry.waived());
    let candidates = desk.list(&at, entry.candidates()).enumerate();
    let candidates: Vec<(usize, Spring)> = candidates
        .filter_map(|(index, (at, item))| {
            let (at, drawing) = desk.object(&at, item)?;
            Some((index, Spring::read(desk, &at, drawing)))
        })
        .collect();
    if original.is_none() && !candidates.is_empty() {
        let text = "The drawing that is to be replaced is not named.";
        desk.note(&entry.original().path(&at), "original-unknown", text);
    }
    let asked = asked(desk, &at, entry);
    let wishes = wishes(desk, &at, entry);
    let seat = seat.filter(|_| nest.is_some() && together.is_none());
    Some(Written { original, nest, seat, waived, together, candidates, asked, wishes })
}

fn asked(desk: &mut Desk<'_>, at: &Path, entry: &Replace) -> Asked {
    let Some((at, entry)) = desk.object(at, entry.asked()) else { return Asked::default() };
    let against = coil::stress_factor(desk, &at, entry.stress_factor());
    let allowable = |stress: Option<Pressure>| Some(Allowable { stress: stress?, against });
    Asked {
        pocket: desk.read(&at, entry.pocket()),
        post: desk.read(&at, entry.post()),
        play: desk.read(&at, entry.play()).unwrap_or_default(),
        gap: desk.read(&at, entry.gap()),
        free: limits([desk.read(&at, entry.free_least()), desk.read(&at, entry.free_most())]),
        rate: limits([desk.read(&at, entry.rate_least()), desk.read(&at, entry.rate_most())]),
        working: desk.read(&at, entry.height()),
        load: limits([desk.read(&at, entry.load_least()), desk.read(&at, entry.load_most())]),
        solid: desk.read(&at, entry.solid()),
        stress_at_work: allowable(desk.read(&at, entry.stress())),
        stress_at_solid: allowable(desk.read(&at, entry.stress_solid())),
        reserve: desk.read(&at, entry.reserve()),
        safety: desk.read(&at, entry.safety()),
        deviation: desk.read(&at, entry.deviation()),
        ..Asked::default()
    }
}

fn limits<Q>([least, most]: [Option<Q>; 2]) -> Option<Limits<Q>> {
    (least.is_some() || most.is_some()).then_some(Limits { least, most })
}

fn wishes(desk: &mut Desk<'_>, at: &Path, entry: &Replace) -> Wishes {
    let Some((at, order)) = desk.object(at, entry.order()) else { return Wishes::default() };
    let quantity = desk.read(&at, order.quantity());
    let mut wished = Wished { desk, said: Vec::new() };
    order.visit(&at, &mut wished);
    Wishes::of(quantity, wished.said)
}

/// What is said of an order, as far as it was looked at.
struct Wished<'d, 't> {
    desk: &'d mut Desk<'t>,
    said: Vec<(Wish, String)>,
}

impl Visitor for Wished<'_, '_> {
    fn text<K: Reads>(&mut self, at: &Path, field: Field<'_, K>) {
        if let Some(wish) = words::wish_coded(field.name)
            && let Some(text) = self.desk.text(at, field)
        {
            self.said.push((wish, text.to_owned()));
        }
    }
}

/// All that candidates are judged with.
struct Ground<'a> {
    written: &'a Written,
    original: &'a Spring,
    asked: Asked,
    /// Where the loads between which it works are written.
    cycle_at: Path,
    standing: Option<Standing>,
    beneath: Option<Beneath>,
}

fn fill(desk: &mut Desk<'_>, job: &Job, report: &mut ReplaceReport) {
    // What is wrong with coils and nests is said elsewhere.
    let mut aside = Desk::new(desk.tables, desk.pen);
    let bench = Bench::stands(&mut aside, job);
    let springs = spring::all(&mut aside, job);
    let Some(written) = read(desk, job, &bench) else { return };
    let named = |name: &String| springs.iter().find(|spring| spring.id == *name);
    let Some(original) = written.original.as_ref().and_then(named) else { return };
    report.original = Some(original.name.clone());
    let standing = place::standing(desk, &bench, &written, &springs, original);
    let beneath = place::beneath(&mut aside, job, &bench, &written, original, standing.as_ref());
    let ground = ground(desk, &written, original, standing, beneath);
    let letter = Letter::of(job);
    report.order = Some(letter.of_original(desk.pen, &ground));
    if let Some(nest) = together::nest(desk, &ground) {
        let judged = nest.report(desk);
        report.candidates = nest.offers(desk.pen, &letter, &ground, &judged);
        report.together = Some(judged);
        return;
    }
    for (index, candidate) in &written.candidates {
        let one = judged(desk, &ground, &letter, *index, candidate);
        report.candidates.push(one);
    }
    if written.candidates.is_empty() {
        // What is asked may contradict itself before anything is offered.
        let nominal = || original.drawing.clone();
        if let Err(error) = Case::new(nominal(), nominal(), ground.asked).judge() {
            let fields = Fields::alone(&original.at, &ground.cycle_at);
            desk.problem(fields.problem(desk.system(), &error));
        }
    }
}

fn ground<'a>(
    desk: &mut Desk<'_>,
    written: &'a Written,
    original: &'a Spring,
    standing: Option<Standing>,
    beneath: Option<Beneath>,
) -> Ground<'a> {
    let candidates = || written.candidates.iter().map(|(_, spring)| spring);
    let at_work = core::iter::once(original).chain(candidates());
    let cycle = at_work.clone().find_map(|spring| Some((spring.loads?, &spring.at)));
    let seating = at_work.clone().find_map(|spring| spring.seating);
    let height = standing.as_ref().and_then(|standing| standing.height);
    let working = written.asked.working.or(height);
    if working.is_none() && !written.candidates.is_empty() {
        let text = "No height at work is given, here or of the nest: nothing is asked of loads, stress and reserve there.";
        desk.note(&path().field("asked").field("height"), "work-unknown", text);
    }
    let asked = Asked {
        working,
        cycle: cycle.map(|(loads, _)| loads),
        seating: seating.unwrap_or(Seating::Guided),
        ..written.asked.clone()
    };
    let cycle_at = cycle.map_or_else(path, |(_, at)| at.field("duty").field("least"));
    Ground { written, original, asked, cycle_at, standing, beneath }
}

fn judged(
    desk: &mut Desk<'_>,
    ground: &Ground<'_>,
    letter: &Letter,
    index: usize,
    candidate: &Spring,
) -> CandidateReport {
    let pen = desk.pen;
    let case = Case {
        original: ground.original.drawing.clone(),
        candidate: candidate.drawing.clone(),
        asked: ground.asked.clone(),
        nest: ground.standing.as_ref().map(|standing| standing.around.clone()),
        frame: ground.beneath.as_ref().and_then(Beneath::coils),
        waived: candidate.waived.iter().chain(&ground.written.waived).cloned().collect(),
    };
    let mut report = CandidateReport {
        name: candidate.name.clone(),
        index,
        met: None,
        title: words::overall(Met::CannotTell),
        sentence: String::new(),
        lines: Vec::new(),
        nest: None,
        frame: None,
        order: OrderReport::default(),
    };
    let found = match case.judge() {
        Err(ReplacementError::Frame(error)) => {
            let why = ground.beneath.as_ref().map(|beneath| beneath.refused(pen, &error));
            let text = text!("{}: {}.", candidate.name, why.unwrap_or_default());
            desk.note(&candidate.at, "swap-unknown", text);
            Case { frame: None, ..case.clone() }.judge()
        }
        found => found,
    };
    match found {
        Ok(judgement) => fill_in(desk, ground, candidate, &case, &judgement, &mut report),
        Err(error) => {
            let fields = Fields {
                original: &ground.original.at,
                candidate: &candidate.at,
                cycle: &ground.cycle_at,
                neighbours: ground.standing.as_ref(),
                nest: (&[], &[]),
            };
            let problem = fields.problem(pen.system, &error);
            report.sentence = sentence(&text!("Nothing can be said of it: {}", problem.message));
            desk.problem_once(problem);
        }
    }
    report.order = letter.of_candidate(pen, ground, candidate, &case, &report);
    report
}

fn fill_in(
    desk: &mut Desk<'_>,
    ground: &Ground<'_>,
    candidate: &Spring,
    case: &Case,
    judgement: &Judgement,
    report: &mut CandidateReport,
) {
    let met = words::whole(judgement.overall);
    report.met = Some(met);
    report.title = words::overall(met);
    let index = report.index;
    let after = judgement.frame.as_ref().and_then(|frame| frame.after.as_ref().ok());
    let said = judgement.lines.iter().map(|one| {
        let waived_for = waived::waived_for(one.requirement, &candidate.waived, waived::FOR_ALL);
        line::report(desk, line::Within { case, after, stop: None }, one, (Some(index), waived_for))
    });
    report.lines = said.collect();
    report.sentence =
        decides(desk.pen, met, &judgement.lines, &judgement.contradictions, &report.lines);
    let spring = |whose: Whose| match whose {
        Whose::Original => ground.original,
        _ => candidate,
    };
    for (whose, contradiction) in &judgement.contradictions {
        contradicts(desk, &spring(*whose).at, contradiction);
    }
    if let Some((standing, swap)) = ground.standing.as_ref().zip(judgement.nest.as_ref()) {
        report.nest = swap::nest(desk, standing, ground.original, candidate, swap);
    }
    if let Some((beneath, swap)) = ground.beneath.as_ref().zip(judgement.frame.as_ref()) {
        let places = if ground.written.seat.is_some() {
            "With it in the one seat that is named"
        } else {
            "With it in every place of the original"
        };
        let subject = Subject { name: &candidate.name, at: candidate.at.clone() };
        report.frame = Some(swap::frame(desk, &subject, beneath, places, swap));
    }
}

/// What it comes to, and which lines decide it.
fn decides(
    pen: Pen,
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
            words::untold(judged)
        ),
        Met::NotMet => text!("Not met: {}.", open(Met::NotMet)),
        Met::CannotTell if open(Met::CannotTell).is_empty() => String::new(),
        Met::CannotTell => text!(
            "Nothing that is known speaks against it. Cannot be told: {}. Not known: {}.",
            open(Met::CannotTell),
            words::wanting(judged)
        ),
    };
    let contradictions = contradictions.iter().map(|(whose, of)| {
        text!(
            "{} contradicts itself: {}. Ask which holds.",
            words::capital(&whose.to_string()),
            words::contradiction(pen, of)
        )
    });
    let waived = said
        .iter()
        .filter(|line| line.met != Met::Throughout)
        .filter_map(|line| Some(text!("{} (for {})", words::within(&line.name), line.waived_for?)));
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
fn contradicts(desk: &mut Desk<'_>, spring: &Path, contradiction: &Contradiction) {
    let at = spring.field(match contradiction {
        Contradiction::Rate { .. } => "rate",
        Contradiction::SolidHeight { .. } => "solid",
        Contradiction::Load { .. } => "loads",
    });
    let read = words::stated(desk.pen, contradiction);
    let why = words::contradiction(desk.pen, contradiction);
    let expected = "a figure that the sizes can give within their tolerances";
    desk.problem_once(Problem::new(&at, "contradicts-sizes", &read, expected, &why, ""));
}

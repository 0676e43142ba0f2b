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
use super::desk::Desk;
use super::drafted::Bench;
use super::entry::{Entry, Text, Texts};
use super::figures::{Pen, sentence, text};
use super::input::{Asked as AskedEntry, Drawing, Job, OrderTexts, Replace};
use super::problem::Path;
use super::report::{CandidateReport, LineReport, Met, OrderReport, Problem, ReplaceReport};
use super::{cautions, coil};
use crate::bounds::{self, Bound};
use crate::coil::buckling::Seating;
use crate::drawing::{Allowable, Contradiction};
use crate::quantity::{self, Length};
use crate::replacement::{Asked, Case, Judgement, Limits, Line, ReplacementError, Whose, Wishes};
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
    /// Each with its place in the job's list; none until they are judged.
    candidates: Vec<(usize, Spring)>,
    /// As far as it does not follow from where the original stands.
    asked: Asked,
    wishes: Wishes,
}

/// Which nests are replaced by one nest.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reach {
    /// Every nest of the same coils.
    Alike,
    /// The nest that is named.
    ThisNest,
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
            waivers(desk, &Path::of("coils").item(index), drawing);
        }
    }
    let at = path();
    let entry = desk.object(&at, &job.replace)?;
    let original = desk.text(&at, "original", &entry.original).map(str::to_owned);
    if let Some(name) = &original {
        desk.known(&at.field("original"), name, &bench.coil_names(), "no-such-coil");
    }
    let nest = desk.text(&at, "nest", &entry.nest).map(str::to_owned);
    if let Some(name) = &nest {
        desk.known(&at.field("nest"), name, &bench.nest_names(), "no-such-nest");
    }
    let seat = count(desk, &at, "seat", &entry.seat);
    let seat = seat.and_then(|seat| usize::try_from(seat).ok()?.checked_sub(1));
    if seat.is_some() && nest.is_none() {
        let text = "A seat is named but no nest: all seats that hold the original are meant.";
        desk.note(&at.field("seat"), "seat-without-nest", text);
    }
    let reach = [("yes", Some(Reach::Alike)), ("this-nest", Some(Reach::ThisNest)), ("no", None)];
    let together = desk.word(&at, "together", &entry.together, &reach).flatten();
    if together.is_some() && seat.is_some() {
        let why = "all coils of the nest are replaced together: to judge a coil for this seat alone, have the candidates judged each by itself";
        desk.problem(Problem::new(
            &at.field("seat"),
            "seat-with-together",
            entry.seat.written(),
            "no seat",
            why,
            "",
        ));
    }
    let waived = waived::read(desk, &at.field("waived"), &entry.waived);
    let offered = offered(desk, entry);
    for (at, _, drawing) in &offered {
        spring::told(desk, at, drawing);
        waivers(desk, at, drawing);
    }
    if original.is_none() && !offered.is_empty() {
        let text = "The drawing that is to be replaced is not named.";
        desk.note(&at.field("original"), "original-unknown", text);
    }
    let asked = asked(desk, &at.field("asked"), &entry.asked);
    let wishes = wishes(desk, &at.field("order"), &entry.order);
    let seat = seat.filter(|_| nest.is_some() && together.is_none());
    let candidates = Vec::new();
    Some(Written { original, nest, seat, waived, together, candidates, asked, wishes })
}

/// Says what is wrong with the waivers of a drawing.
fn waivers(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) {
    waived::read(desk, &at.field("waived"), &drawing.waived);
}

/// The candidates' drawings, each with its path and its place in the list.
fn offered<'j>(desk: &mut Desk<'_>, entry: &'j Replace) -> Vec<(Path, usize, &'j Drawing)> {
    let at = path().field("candidates");
    let mut found = Vec::new();
    for (index, drawing) in desk.list(&at, &entry.candidates).iter().enumerate() {
        let at = at.item(index);
        let Some(drawing) = desk.object(&at, drawing) else { continue };
        found.push((at, index, drawing));
    }
    found
}

/// The candidates themselves; what is wrong with them is said when they are read.
fn candidates(aside: &mut Desk<'_>, job: &Job) -> Vec<(usize, Spring)> {
    let Some(entry) = job.replace.given() else { return Vec::new() };
    let offered = offered(aside, entry).into_iter();
    offered.map(|(at, index, drawing)| (index, Spring::read(aside, &at, drawing))).collect()
}

fn asked(desk: &mut Desk<'_>, at: &Path, entry: &Entry<AskedEntry>) -> Asked {
    let Some(entry) = desk.object(at, entry) else { return Asked::default() };
    let mut length = |field, entry: &Entry<Text>, bound: &'static Bound<Length>| {
        desk.length(at, field, entry, bound)
    };
    let pocket = length("pocket", &entry.pocket, &bounds::COIL_DIAMETER);
    let post = length("post", &entry.post, &bounds::COIL_DIAMETER);
    let play = length("play", &entry.play, &bounds::CLEARANCE).unwrap_or_default();
    let gap = length("gap", &entry.gap, &bounds::CLEARANCE);
    let free = [
        length("free_least", &entry.free_least, &bounds::FREE_HEIGHT),
        length("free_most", &entry.free_most, &bounds::FREE_HEIGHT),
    ];
    let working = length("height", &entry.height, &bounds::HEIGHT);
    let solid = length("solid", &entry.solid, &bounds::SOLID_HEIGHT);
    let reserve = length("reserve", &entry.reserve, &bounds::RESERVE);
    let rate = [
        desk.quantity(at, "rate_least", &entry.rate_least, &bounds::RATE),
        desk.quantity(at, "rate_most", &entry.rate_most, &bounds::RATE),
    ];
    let load = [
        desk.quantity(at, "load_least", &entry.load_least, &bounds::LOAD),
        desk.quantity(at, "load_most", &entry.load_most, &bounds::LOAD),
    ];
    let against = coil::stress_factor(desk, at, &entry.stress_factor);
    let mut stress = |field, entry: &Entry<Text>| {
        let stress = desk.quantity(at, field, entry, &bounds::STRESS)?;
        Some(Allowable { stress, against })
    };
    let stress_at_work = stress("stress", &entry.stress);
    let stress_at_solid = stress("stress_solid", &entry.stress_solid);
    Asked {
        pocket,
        post,
        play,
        gap,
        free: limits(free),
        rate: limits(rate),
        working,
        load: limits(load),
        solid,
        stress_at_work,
        stress_at_solid,
        reserve,
        safety: desk.quantity(at, "safety", &entry.safety, &bounds::SAFETY),
        deviation: desk.quantity(at, "deviation", &entry.deviation, &bounds::WITHIN),
        ..Asked::default()
    }
}

fn limits<Q>([least, most]: [Option<Q>; 2]) -> Option<Limits<Q>> {
    (least.is_some() || most.is_some()).then_some(Limits { least, most })
}

fn wishes(desk: &mut Desk<'_>, at: &Path, entry: &Entry<OrderTexts>) -> Wishes {
    let Some(OrderTexts(Texts(texts))) = desk.object(at, entry) else { return Wishes::default() };
    let (mut quantity, mut said) = (None, Vec::new());
    for (field, entry) in texts {
        if field == "quantity" {
            quantity = count(desk, at, field, entry);
        } else if let Some(wish) = words::wish_coded(field)
            && let Some(text) = desk.text(at, field, entry)
        {
            said.push((wish, text.to_owned()));
        }
    }
    Wishes::of(quantity, said)
}

fn count(desk: &mut Desk<'_>, at: &Path, field: &str, entry: &Entry<Text>) -> Option<u32> {
    let count = desk.quantity(at, field, entry, &bounds::COUNT)?;
    let whole = quantity::write_number(count, 7).replace('\u{202f}', "").parse().ok();
    if whole.is_none() {
        let why = "so many pieces cannot be made";
        let read = entry.written();
        desk.problem(Problem::new(
            &at.field(field),
            "not-whole",
            read,
            "a whole number",
            why,
            bounds::COUNT.example(desk.system()),
        ));
    }
    whole
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
    let mut reading = Desk::new(desk.tables, desk.pen);
    let written = read(&mut reading, job, &bench);
    desk.take(reading);
    let Some(written) = written else { return };
    let written = Written { candidates: candidates(&mut aside, job), ..written };
    let named = |name: &String| springs.iter().find(|spring| spring.id == *name);
    let Some(original) = written.original.as_ref().and_then(named) else { return };
    report.original = Some(original.name.clone());
    let standing = place::standing(desk, &mut aside, &bench, &written, &springs, original);
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
        line::report(desk, (case, after), one, (Some(index), waived_for))
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

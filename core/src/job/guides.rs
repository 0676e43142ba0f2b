//! The boxes of a nest in their guides: what the tape said, the clearance, its verdict, and a liner.

use super::context::Context;
use super::field::{Field, Many, Taped};
use super::figures::{Format, text};
use super::formulas::{CLEARANCE_LEAST, NEW_LINER, PINCH, TAPER, letter};
use super::input::{GuideEntry, NestEntry};
use super::problem::Path;
use super::report::{Figure, GuidesDrawing, GuidesReport, GuidesWord, Problem, StockLiners};
use super::seat::Instrument;
use crate::formula::{Formula, Value};
use crate::guides::{
    self, CLEARANCE, Choice, ClearanceVerdict, Guides, GuidesError, ONE_SIDE, Part, Renewed, Size,
    Word,
};
use crate::quantity::{self, Length, System, si};
use crate::reading::Reading;
use crate::say::Say;
use crate::verdict::{self, Limits, LimitsError};

/// What regulations print of the play of a wheel set across, which is no limit of this box.
const YARDSTICK: &str = "As a yardstick only, for the lateral motion of a pair of wheels in all: not over 1 in on axles without \
    power, 3/4 in on powered ones (49 CFR 229.63, read). For steam locomotives see 49 CFR 230.105. The \
    limits of this box are those of its maker.";

/// What a gauge and its readings are worth.
struct Gauge<'g> {
    instrument: &'g Instrument,
    /// Marks and error of the gauge, where it is not the job's tape.
    own: Option<(Length, Length)>,
}

impl Gauge<'_> {
    fn read(
        context: &mut Context<'_>,
        at: &Path,
        entry: &GuideEntry,
        instrument: &Instrument,
    ) -> Option<(Length, Length)> {
        let marks = context.read(at, entry.graduation());
        let error = context.read(at, entry.error());
        match (marks, error) {
            (None, None) => None,
            // A gauge is right to a mark (common practice, no source).
            (Some(marks), error) => Some((marks, error.unwrap_or(marks))),
            (None, Some(error)) => Some((instrument.graduation, error)),
        }
    }

    /// What the readings of a list say, top to bottom.
    fn sizes(
        &self,
        context: &mut Context<'_>,
        at: &Path,
        list: Field<'_, Many<Taped>>,
    ) -> Vec<Size> {
        let size = |reading: &Reading| {
            let usual = || self.instrument.error_at(reading.length()).unwrap_or_default();
            let (marks, error) = self.own.unwrap_or_else(|| (self.instrument.graduation, usual()));
            Size::read(reading.interval(marks), error)
        };
        context.each(at, list).iter().map(size).collect()
    }
}

/// The guides of a nest.
pub(crate) fn assess(
    context: &mut Context<'_>,
    at: &Path,
    nest: &NestEntry,
    instrument: &Instrument,
) -> Vec<GuidesReport> {
    let boxes = context.objects(at, nest.guides());
    boxes.iter().map(|(here, entry)| one(context, here, entry, instrument)).collect()
}

/// One box; where its sizes say nothing, its name alone.
fn one(
    context: &mut Context<'_>,
    at: &Path,
    entry: &GuideEntry,
    instrument: &Instrument,
) -> GuidesReport {
    let across = context.read(at, entry.across());
    let across = across.unwrap_or(false);
    let name = context.text(at, entry.name());
    let mut report = GuidesReport {
        name: name.unwrap_or(if across { "Box, across" } else { "Box, along" }).to_owned(),
        across,
        yardstick: across.then_some(YARDSTICK.into()),
        ..GuidesReport::default()
    };
    let before = context.problems.len();
    let gauge = Gauge { instrument, own: Gauge::read(context, at, entry, instrument) };
    let opening = gauge.sizes(context, at, entry.opening());
    let widths = gauge.sizes(context, at, entry.r#box());
    let mut liners = [Vec::new(), Vec::new()];
    let given: Vec<_> = context.list(at, entry.liners()).collect();
    let sides = given.len();
    for ((here, list), liner) in given.into_iter().zip(&mut liners) {
        *liner = gauge.sizes(context, &here, list);
    }
    if sides > 2 {
        let read = text!("{sides}");
        let why = "a box has guides on two sides: one list of thicknesses for each was expected";
        let expected = "one or two lists";
        let list = at.field("liners");
        context.problem(Problem::new(&list, "too-many-sides", &read, expected, why, ""));
    }
    let limits = limits(context, at, entry);
    let is_sound = context.problems.len() == before;
    let stock = gauge.sizes(context, at, entry.stock());
    if !is_sound {
        "What is wrong with its sizes has to be put right first.".clone_into(&mut report.sentence);
        return report;
    }
    if opening.is_empty() || widths.is_empty() {
        let text = text!(
            "{}: the opening between the guides and the width of the box are both needed.",
            report.name
        );
        report.sentence.clone_from(&text);
        context.note(at, "guides-unknown", text);
        return report;
    }
    match Guides::new(opening, widths, liners) {
        Ok(guides) => {
            let wanted = Wanted { limits, stock, level: instrument.level };
            fill(context, at, &mut report, &guides, &wanted);
        }
        Err(error) => {
            let problem = refused(context.format, at, &error);
            "Its clearance is not known until its sizes go together."
                .clone_into(&mut report.sentence);
            context.problem(problem);
        }
    }
    report
}

fn limits(context: &mut Context<'_>, at: &Path, entry: &GuideEntry) -> Option<Limits> {
    let least = context.read(at, entry.least());
    let most = context.read(at, entry.most());
    Limits::new(least, most)
        .map_err(|error| {
            if let LimitsError::Crossed { .. } = error {
                let message = error.say(context.system());
                context.problem(Problem::said(
                    &at.field("least"),
                    "limits-crossed",
                    &message,
                    "1/16",
                ));
            }
        })
        .ok()
}

fn refused(format: Format, at: &Path, error: &GuidesError) -> Problem {
    let path = |part: Part| match part {
        Part::Opening => at.field("opening"),
        Part::Box => at.field("box"),
        Part::Liner(side) => at.field("liners").item(side),
    };
    let (part, code) = match *error {
        GuidesError::Count { part, .. } => (part, "too-many-heights"),
        GuidesError::HeightsDiffer { part, .. } => (part, "heights-differ"),
        GuidesError::Size { part, .. } => (part, "no-thickness"),
    };
    Problem::said(&path(part), code, &error.say(format.system), "")
}

/// What a clearance is held against, and what there is to cure it.
struct Wanted {
    limits: Option<Limits>,
    stock: Vec<Size>,
    level: f64,
}

fn fill(
    context: &mut Context<'_>,
    at: &Path,
    report: &mut GuidesReport,
    guides: &Guides,
    wanted: &Wanted,
) {
    let format = context.format;
    let clear = guides.clearances();
    report.at = clear.iter().enumerate().map(|(at, _)| clearance(context, guides, at)).collect();
    let least = guides.least();
    let said: Vec<_> = clear.iter().map(|at| format.decimal(at.value)).collect();
    let figure = figure(format, least);
    report.least = Some(context.ledger.sum(
        figure,
        CLEARANCE_LEAST,
        said.iter().map(|at| [("cl", at as _)]),
        &guides::SOURCE,
    ));
    report.sides = [0, 1].map(|side| one_side(context, guides, side)).to_vec();
    report.taper = guides.taper().map(|taper| differs(context, guides, taper, TAPER));
    report.pinch = guides.pinch().map(|pinch| differs(context, guides, pinch, PINCH));
    report.drawing = Some(drawing(format.system, guides));
    if is_exchanged(guides, wanted.level) {
        let (opening, width) =
            (format.fine_text(guides.opening(0).value), format.fine_text(guides.widest().value));
        let why = text!(
            "the box, {width}, is wider than the opening at every height; see whether the two were exchanged"
        );
        let expected = "an opening wider than its box";
        let problem =
            Problem::new(&at.field("opening"), "opening-under-box", &opening, expected, &why, "");
        report.sentence =
            text!("The box is wider than its opening at every height: read both again.");
        context.problem(problem);
        return;
    }
    let verdict = guides.judge(wanted.limits, wanted.level);
    if verdict.word == Word::Seized && clear.iter().all(|at| at.value.value < 0.0) {
        let why =
            "these liners are thicker than what the box leaves of the opening, at every height";
        let read = quantity::joined(
            [0, 1].map(|side| format.fine_text(guides.liner(side, 0).value)).iter(),
            " and ",
        );
        let expected = "liners that leave the box some clearance";
        context.problem(Problem::new(
            &at.field("liners"),
            "liners-too-thick",
            &read,
            expected,
            why,
            "",
        ));
    }
    let (word, title) = match verdict.word {
        Word::Free => (GuidesWord::Free, "Free"),
        Word::Tight => (GuidesWord::Tight, "Tight"),
        Word::Loose => (GuidesWord::Loose, "Loose"),
        Word::TooClose => (GuidesWord::TooClose, "Too close to call"),
        Word::Seized => (GuidesWord::Seized, "Seized"),
        Word::NoLimit => (GuidesWord::None, "No limit given"),
    };
    (report.word, report.title) = (Some(word), title.into());
    report.p_within = verdict.p_in;
    report.sentence = text!(
        "{}{}",
        said_of(format, guides, &verdict, wanted),
        shape(format, guides, wanted.level)
    );
    if let Some(limits) = wanted.limits {
        new_liners(context, report, guides, limits);
        let needs = !matches!(verdict.word, Word::Free);
        if needs && !wanted.stock.is_empty() {
            let choice = guides.from_stock(&wanted.stock, limits, wanted.level);
            report.from_stock = Some(from_stock(context, choice, &wanted.stock));
        }
    }
}

/// Whether the box is surely wider than the bare opening wherever that was measured.
fn is_exchanged(guides: &Guides, level: f64) -> bool {
    let width = guides.widest();
    (0..guides.heights()).all(|height| {
        let opening = guides.opening(height);
        let doubt = si(libm::hypot(opening.doubt.value, width.doubt.value));
        let none = Limits::new(Some(Length::default()), None);
        none.is_ok_and(|none| {
            verdict::judge(opening.value - width.value, doubt, none, level).p_short >= level
        })
    })
}

/// The name of a height.
fn height_name(heights: usize, height: usize) -> &'static str {
    match (heights, height) {
        (1, _) => "all over",
        (2, 0) => "at the upper height",
        (2, _) => "at the lower height",
        (_, 0) => "at the top",
        (_, 1) => "in the middle",
        _ => "at the bottom",
    }
}

fn figure(format: Format, size: Size) -> Figure {
    format.fine(size.value).give_or_take(format, size.doubt)
}

fn clearance(context: &mut Context<'_>, guides: &Guides, height: usize) -> Figure {
    let format = context.format;
    let sizes =
        [guides.opening(height), guides.liner(0, height), guides.liner(1, height), guides.widest()];
    let [a, l1, l2, b] = sizes.map(|size| format.decimal(size.value));
    let values: [Value<'_>; 4] = [("A", &a), ("l1", &l1), ("l2", &l2), ("B", &b)];
    let size = guides.clearances().get(height).copied().unwrap_or_default();
    context.ledger.work(figure(format, size), CLEARANCE, &values, &guides::SOURCE)
}

/// The least clearance on a side, with the box in the middle, at the height where it is least.
fn one_side(context: &mut Context<'_>, guides: &Guides, side: usize) -> Figure {
    let format = context.format;
    let [first, second] = guides.sides();
    let size = if side == 0 { first } else { second };
    let room =
        |height: &usize| guides.opening(*height).value / 2.0 - guides.liner(side, *height).value;
    let least = |one: usize, other: usize| if room(&other) < room(&one) { other } else { one };
    let height = (0..guides.heights()).reduce(least).unwrap_or_default();
    let sizes = [guides.opening(height), guides.widest(), guides.liner(side, height)];
    let [a, b, l] = sizes.map(|size| format.decimal(size.value));
    let values: [Value<'_>; 3] = [("A", &a), ("B", &b), ("l1", &l)];
    context.ledger.work(figure(format, size), ONE_SIDE, &values, &guides::SOURCE)
}

fn differs(context: &mut Context<'_>, guides: &Guides, size: Size, formula: Formula) -> Figure {
    let format = context.format;
    let clear = guides.clearances();
    let (first, last) = (clear.first(), clear.last());
    let [top, bottom] = [first, last].map(|at| at.map(|at| at.value).unwrap_or_default());
    let middle = clear.get(1).map(|at| at.value).unwrap_or_default();
    let [top, bottom, middle] = [top, bottom, middle].map(|length| format.decimal(length));
    let values: [Value<'_>; 3] = [("c1", &top), ("c2", &middle), ("c3", &bottom)];
    context.ledger.work(figure(format, size), formula, &values, &guides::SOURCE)
}

/// `It has 1/32 in in the middle; the least allowed is 1/16 in.`
fn said_of(format: Format, guides: &Guides, verdict: &ClearanceVerdict, wanted: &Wanted) -> String {
    let clear = guides.clearances();
    let least = guides.least();
    let named = |wanted: Length| {
        let height = clear.iter().position(|at| (at.value - wanted).value.abs() < 1e-12);
        height_name(clear.len(), height.unwrap_or_default())
    };
    let size = format.fine_text(least.value.abs());
    let most = clear.iter().map(|at| at.value).reduce(|a, b| if b > a { b } else { a });
    let most = most.unwrap_or_default();
    let place = if (most - least.value).value < 1e-12 {
        "all over".to_owned()
    } else {
        text!("{}, where it has least", named(least.value))
    };
    let limit =
        |limit: Option<Length>| limit.map_or_else(String::new, |limit| format.fine_text(limit));
    let allowed =
        wanted.limits.map_or_else(String::new, |limits| match (limits.least(), limits.most()) {
            (Some(least), Some(most)) => {
                text!("the limits are {} and {}", format.fine_text(least), format.fine_text(most))
            }
            (Some(least), None) => text!("the least allowed is {}", format.fine_text(least)),
            (None, most) => text!("the most allowed is {}", limit(most)),
        });
    match verdict.word {
        Word::Free => text!("It slides: {size} clear {place}; {allowed}."),
        Word::Tight => text!("It has {size} clear {place}; {allowed}."),
        Word::Loose => text!(
            "It has {} clear {}, where it has most; {allowed}.",
            format.fine_text(most),
            named(most)
        ),
        Word::Seized => text!(
            "It does not slide: {} the box is {size} wider than what guides and liners leave.",
            named(least.value)
        ),
        Word::NoLimit => text!("It has {size} clear {place}. Look up the limits in the manual."),
        Word::TooClose if verdict.on_limit => text!(
            "It has {size} clear {place}; {allowed}. It stands on a limit, and no gauge settles that."
        ),
        Word::TooClose => text!(
            "It has {size} clear {place}; {allowed}. Measure it finer, with callipers or feelers, and say how fine their marks are."
        ),
    }
}

/// What its way is like from top to bottom, where the readings show it.
fn shape(format: Format, guides: &Guides, level: f64) -> String {
    let shows = |size: &Size| {
        let none = Limits::new(Some(Length::default()), None);
        none.is_ok_and(|none| {
            verdict::judge(size.value.abs(), size.doubt, none, level).p_in >= level
        }) && size.value.abs().value > 1e-9
    };
    if let Some(pinch) = guides.pinch().filter(|pinch| pinch.value.value > 0.0 && shows(pinch)) {
        return text!(
            " Its way is pinched: {} narrower in the middle than at the ends.",
            format.fine_text(pinch.value)
        );
    }
    match guides.taper().filter(shows) {
        Some(taper) => {
            let wide = if taper.value.value > 0.0 { "top" } else { "bottom" };
            text!(" Its way tapers: {} wider at the {wide}.", format.fine_text(taper.value.abs()))
        }
        None => String::new(),
    }
}

/// How thick new liners are to be: two alike, and one for each side.
fn new_liners(
    context: &mut Context<'_>,
    report: &mut GuidesReport,
    guides: &Guides,
    limits: Limits,
) {
    let format = context.format;
    let mut figure = |renewed: Renewed| {
        let wanted = guides.wanted(renewed, limits)?;
        let [least, most] = [wanted.least, wanted.most].map(Option::unwrap_or_default);
        let values: [Value<'_>; 2] =
            [("ll", &format.decimal(least)), ("lh", &format.decimal(most))];
        let formula = match (wanted.least, wanted.most) {
            (Some(_), Some(_)) => NEW_LINER,
            (Some(_), None) => letter!("ll").0,
            _ => letter!("lh").0,
        };
        let figure = format.fine(wanted.aim()?);
        Some(context.ledger.work(figure, formula, &values, &guides::SOURCE))
    };
    report.liner = figure(Renewed::Both);
    report.first_liner = figure(Renewed::One(0));
    report.second_liner = figure(Renewed::One(1));
}

fn from_stock(context: &mut Context<'_>, choice: Option<Choice>, stock: &[Size]) -> StockLiners {
    let format = context.format;
    let Some(choice) = choice else {
        let sentence = "No liner of the stock brings it right, alone or with another.".to_owned();
        return StockLiners { first: None, second: None, clearance: None, surely: false, sentence };
    };
    let liner = |side: Option<usize>| Some(format.fine_text(stock.get(side?)?.value));
    let liners = choice.liners.map(liner);
    let surely = choice.verdict.word == Word::Free;
    let what = match &liners {
        [Some(first), Some(second)] if first == second => {
            text!("Two new liners of {}, one on each side,", first)
        }
        [Some(first), Some(second)] => {
            text!("New liners of {} on the first side and {} on the second", first, second)
        }
        [Some(first), None] => text!("One new liner of {} on the first side", first),
        [None, Some(second)] => text!("One new liner of {} on the second side", second),
        [None, None] => String::new(),
    };
    let many = liners.iter().all(Option::is_some);
    let clear = format.fine_text(choice.clearance.value);
    let sentence = if surely {
        text!(
            "{what} {} it right: {clear} clear at the least.",
            if many { "bring" } else { "brings" }
        )
    } else {
        text!(
            "{what} {} nearest, with {clear} clear at the least; too close to call.",
            if many { "come" } else { "comes" }
        )
    };
    let clearance = Some(clear);
    let [first, second] = liners;
    StockLiners { first, second, clearance, surely, sentence }
}

/// How much of the width of the picture the widest clearance takes.
const DRAWN: f64 = 0.12;

/// Box and guides, each face by its distance from the middle of the opening.
fn drawing(system: System, guides: &Guides) -> GuidesDrawing {
    let shown = |length: Length| quantity::shown::<Length>(length, system).0;
    let heights = 0..guides.heights();
    let face = |side: usize| -> Vec<f64> {
        heights
            .clone()
            .map(|height| {
                shown(guides.opening(height).value / 2.0 - guides.liner(side, height).value)
            })
            .collect()
    };
    let liner = |side: usize| -> Vec<f64> {
        heights.clone().map(|height| shown(guides.liner(side, height).value)).collect()
    };
    let width = shown(guides.widest().value);
    let clear = guides.clearances();
    let widest = clear.iter().map(|at| at.value.value.abs()).fold(0.0, f64::max);
    let widest = shown(si(widest));
    let least = guides.least().value;
    let binds = clear.iter().position(|at| (at.value - least).value.abs() < 1e-12);
    // A round number of times, so that it can be said.
    let times = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0];
    let fits = |times: &&f64| *times * widest <= DRAWN * width;
    let exaggerated = times.iter().rev().find(fits).copied().unwrap_or(1.0);
    let drawn = if exaggerated > 1.0 {
        text!(
            "To scale, but for the clearances: they are drawn {} times as wide.",
            quantity::write_fixed(exaggerated, 0)
        )
    } else {
        "To scale.".to_owned()
    };
    GuidesDrawing {
        width,
        faces: vec![face(0), face(1)],
        liners: vec![liner(0), liner(1)],
        binds: binds.unwrap_or_default(),
        exaggerated,
        drawn,
    }
}

//! A coil that is there: what the tape said of it, and what that makes of it.

use super::desk::Desk;
use super::drawing::Facts;
use super::entry::{Entry, List, Text};
use super::figures::{Pen, sum, text};
use super::input::TapeUsed;
use super::problem::Path;
use super::report::{Figure, Problem, SeatReport, VerdictReport, Word};
use super::sentence;
use crate::bounds;
use crate::coil::Coiling;
use crate::measured::{self, Measured, Tape, TapeClass};
use crate::quantity::{self, Force, Length, System, unit};
use crate::reading::{Interval, Reading};
use crate::tolerance::{ColdWound, Grade};
use crate::verdict::{self, judge};

/// What a job was measured with, as far as it does not depend on the length measured.
#[derive(Clone, Debug)]
pub(crate) struct Gear {
    pub(crate) graduation: Length,
    /// The system that the tape is marked in.
    pub(crate) marked: System,
    class: Option<TapeClass>,
    stated: Option<Length>,
    ends: Length,
    pub(crate) level: f64,
}

impl Gear {
    /// Reads the tape of a job, and says what it took where the job is silent.
    pub(crate) fn assess(
        desk: &mut Desk<'_>,
        entry: &Entry<TapeUsed>,
        level: &Entry<Text>,
    ) -> Self {
        let at = Path::of("tape");
        let absent = TapeUsed::default();
        let tape = desk.object(&at, entry).unwrap_or(&absent);
        let graduation = desk.reading(&at, "graduation", &tape.graduation, &bounds::GRADUATION);
        if tape.graduation.written().is_empty() {
            let usual = desk.pen.fine_text(usual_graduation(desk.system()));
            let text = text!("Nothing is said of the tape's graduation; reckoned as {usual}.");
            desk.note(&at.field("graduation"), "graduation-assumed", text);
        }
        let stated = desk.length(&at, "error", &tape.error, &bounds::TAPE_ERROR);
        let ends = desk.length(&at, "ends_error", &tape.ends_error, &bounds::TAPE_ERROR);
        let words: Vec<(&'static str, TapeClass)> =
            desk.tables.tape_classes.iter().map(|class| (class.id(), *class)).collect();
        let named = desk.word(&at, "class", &tape.class, &words);
        let class = named.or_else(|| desk.tables.tape_classes.first().copied());
        if let (None, None, Some(class)) = (named, stated, class) {
            let text = text!("Nothing is said of the tape's error; reckoned as {}.", class.name());
            desk.note(&at.field("class"), "tape-class-assumed", text);
        }
        let level = desk.quantity(&Path::default(), "decision_level", level, &bounds::LEVEL);
        Self {
            graduation: graduation
                .map_or_else(|| usual_graduation(desk.system()), |graduation| graduation.length()),
            marked: graduation.map_or_else(|| desk.system(), |graduation| graduation.system()),
            class,
            stated,
            ends: ends.unwrap_or_default(),
            level: level.unwrap_or(verdict::USUAL_LEVEL),
        }
    }

    fn error_at(&self, length: Length) -> Option<Length> {
        match (self.stated, self.class) {
            (Some(stated), _) => Some(stated),
            (None, Some(class)) => class.permissible_error(length),
            (None, None) => Some(Length::default()),
        }
    }

    fn source(&self) -> String {
        match (self.stated, self.class) {
            (None, Some(class)) => text!("{}; tape: {}", measured::SOURCE, class.source()),
            _ => text!("{}; tape error as stated", measured::SOURCE),
        }
    }
}

/// The graduation of a tape that a job says nothing of.
pub(crate) fn usual_graduation(system: System) -> Length {
    match system {
        System::Inch => Length::new::<unit::inch>(1.0 / 16.0),
        System::Metric => Length::new::<unit::millimeter>(1.0),
    }
}

/// A coil as it stands in its seat.
#[derive(Clone, Debug, Default)]
pub(crate) struct Standing {
    /// Free height as measured, else the book's.
    pub(crate) free: Option<Length>,
    /// Standard uncertainty that is this coil's own.
    pub(crate) own_doubt: Length,
    /// Standard uncertainty that it shares with all that the tape measured.
    pub(crate) tape_doubt: Length,
}

impl Standing {
    fn by_the_book(facts: &Facts) -> Self {
        Self { free: facts.free, ..Self::default() }
    }

    fn of(measured: &Measured) -> Self {
        Self {
            free: Some(measured.mean),
            own_doubt: measured.own_doubt(),
            tape_doubt: measured.tape_doubt,
        }
    }
}

/// The readings of a coil, as intervals and as they are written.
pub(crate) fn readings(
    desk: &mut Desk<'_>,
    at: &Path,
    entry: &Entry<List<Text>>,
    graduation: Length,
) -> Vec<Interval> {
    let at = at.field("readings");
    let mut intervals = Vec::new();
    for (index, entry) in desk.list(&at, entry).iter().enumerate() {
        let reading = desk.reading(&at.item(index), "", entry, &bounds::READING);
        intervals.extend(reading.map(|reading: Reading| reading.interval(graduation)));
    }
    intervals
}

/// How a coil stands by its readings, else by its book figure, and nothing said of it.
pub(crate) fn stand(
    desk: &mut Desk<'_>,
    at: &Path,
    facts: &Facts,
    intervals: &[Interval],
    gear: &Gear,
) -> Standing {
    let measured = measure(desk, at, intervals, gear);
    measured.map_or_else(|| Standing::by_the_book(facts), |measured| Standing::of(&measured))
}

/// Judges a coil by its readings, its drawing's limits and the tape.
pub(crate) fn assess(
    desk: &mut Desk<'_>,
    at: &Path,
    facts: &Facts,
    intervals: &[Interval],
    gear: &Gear,
) -> (Standing, SeatReport) {
    let pen = desk.pen;
    let mut report =
        SeatReport { coil: facts.id.clone(), name: facts.name.clone(), ..SeatReport::default() };
    report.book = facts.free.map(|book| {
        let figure = pen.height(book);
        let with = figure.text.clone();
        desk.ledger.show(figure, "L0", with, &"the book's free height")
    });
    let Some(measured) = measure(desk, at, intervals, gear) else {
        if facts.free.is_some() {
            let text = text!("{} is not measured: it is reckoned at its book figure.", facts.name);
            desk.note(at, "not-measured", text);
        }
        report.free.clone_from(&report.book);
        return (Standing::by_the_book(facts), report);
    };
    report.measured = true;
    let doubt = measured.doubt();
    report.free = Some(free_height(desk, intervals, &measured, gear));
    if intervals.len() > 1 {
        let figure = pen.fine(measured.spread);
        let at = intervals.iter().map(Interval::estimate);
        let least = at.clone().reduce(|a, b| if b < a { b } else { a }).unwrap_or_default();
        let with = text!("{} − {}", pen.decimal(least + measured.spread), pen.decimal(least));
        report.spread =
            Some(desk.ledger.show(figure, "spread = greatest − least", with, &"definition"));
        if let Some(coil) = facts.diameters {
            let figure = Pen::angle(measured.out_of_square(coil.outside()));
            let with = text!("{} / {}", pen.decimal(measured.spread), pen.decimal(coil.outside()));
            report.out_of_square = Some(desk.ledger.show(
                figure,
                "tan φ = spread / De",
                with,
                &"geometry of tilted ends",
            ));
        }
    }
    if let Some(book) = facts.free {
        let figure = pen.fine(measured.mean - book).give_or_take(pen, doubt);
        let with = text!("{} − {}", pen.decimal(measured.mean), pen.decimal(book));
        report.deviation = Some(desk.ledger.show(figure, "ΔL = y − L0", with, &"definition"));
    }
    if let (Some(book), Some(rate)) = (facts.free, facts.rate) {
        let deviation = measured.mean - book;
        let cost: Force = rate.value * deviation;
        let figure = pen.doubted::<Force>(cost, (rate.value * doubt).value);
        let with =
            text!("{} · {}", pen.say::<quantity::SpringRate>(rate.value), pen.decimal(deviation));
        let source = "statics; at any height at which the coil carries";
        report.load_cost = Some(desk.ledger.show(figure, "ΔF = k · (y − L0)", with, &source));
    }
    report.verdict = Some(verdict_of(desk, facts, intervals, &measured, gear, &report));
    (Standing::of(&measured), report)
}

fn measure(
    desk: &mut Desk<'_>,
    at: &Path,
    intervals: &[Interval],
    gear: &Gear,
) -> Option<Measured> {
    let longest =
        intervals.iter().map(Interval::estimate).reduce(|a, b| if b > a { b } else { a })?;
    let Some(error) = gear.error_at(longest) else {
        let read = desk.pen.decimal(longest).to_string();
        let why = "the class of the tape says nothing of a length like this";
        let expected = "a length that the tape's class covers, or the tape's error stated";
        desk.problem(Problem::new(
            &at.field("readings"),
            "outside-table",
            &read,
            expected,
            why,
            "1/16 in",
        ));
        return None;
    };
    measured::measure(intervals, Tape { error, ends: gear.ends }).ok()
}

fn free_height(
    desk: &mut Desk<'_>,
    intervals: &[Interval],
    measured: &Measured,
    gear: &Gear,
) -> Figure {
    let pen = desk.pen;
    let mid = sum(intervals.iter().map(|reading| pen.decimal(reading.estimate())));
    let parts = [
        ("graduation", measured.reading_doubt),
        ("tape", measured.tape_doubt),
        ("ends", measured.ends_doubt),
        ("scatter", measured.repeat_doubt),
    ];
    let parts = parts.map(|(part, u)| text!("{part} {}", pen.decimal(u)));
    let parts = quantity::joined(parts.iter(), ", ");
    let with = text!("({}) / {}; u from {parts}", mid, intervals.len());
    let formula = "y = Σ x / m,  u² = Σ uᵢ²/m² + (e/√3)² + (q/√3)² + s²/m";
    let result = text!("{}, u = {}", pen.decimal(measured.mean), pen.decimal(measured.doubt()));
    let mut figure = pen.height(measured.mean).give_or_take(pen, measured.doubt());
    figure.working = Some(desk.ledger.file(formula, with, result, gear.source()));
    figure
}

fn verdict_of(
    desk: &mut Desk<'_>,
    facts: &Facts,
    intervals: &[Interval],
    measured: &Measured,
    gear: &Gear,
    seat: &SeatReport,
) -> VerdictReport {
    let pen = desk.pen;
    let deviation = facts.free.map(|book| measured.mean - book);
    let cost = seat.load_cost.as_ref();
    let Some(limits) = facts.limits else {
        return VerdictReport {
            word: Word::None,
            title: "No limit given",
            p_in: None,
            p_short: None,
            p_long: None,
            sentence: sentence::without_limit(pen, deviation, cost, &allowance(pen, facts)),
            would_settle: None,
            least: None,
            most: None,
            working: None,
        };
    };
    let verdict = judge(measured.mean, measured.doubt(), limits, gear.level);
    let limit = |limit: Option<Length>, symbol: &'static str, desk: &mut Desk<'_>| {
        limit.map(|limit| {
            let figure = pen.height(limit);
            let with = figure.text.clone();
            desk.ledger.show(figure, symbol, with, &"limit of the book")
        })
    };
    let would_settle = verdict.would_settle.map(|settling| {
        let figure = pen.fine(settling);
        let with =
            text!("y = {}, level {}", pen.decimal(measured.mean), sentence::percent(gear.level));
        let result = pen.rough(settling).to_string();
        let formula = "the largest u at which one probability reaches the level";
        let source = verdict::SOURCE.to_string();
        let working = desk.ledger.file(formula, with, result.clone(), source);
        Figure { text: result, working: Some(working), ..figure }
    });
    let ends = |limit: Option<Length>| {
        limit.map_or("open".to_owned(), |limit| pen.decimal(limit).to_string())
    };
    let with = text!(
        "y = {}, u = {}, TL = {}, TU = {}",
        pen.decimal(measured.mean),
        pen.decimal(measured.doubt()),
        ends(limits.least()),
        ends(limits.most())
    );
    let result = text!(
        "within {}, short {}, long {}",
        sentence::percent(verdict.p_in),
        sentence::percent(verdict.p_short),
        sentence::percent(verdict.p_long)
    );
    let formula = "p short = Φ((TL − y)/u),  p long = 1 − Φ((TU − y)/u),  p within = the rest";
    let working = desk.ledger.file(formula, with, result, verdict::SOURCE.to_string());
    let (word, title) = match verdict.word {
        verdict::Word::Good => (Word::Good, "Good"),
        verdict::Word::Short => (Word::Short, "Short"),
        verdict::Word::Long => (Word::Long, "Long"),
        verdict::Word::TooClose => (Word::TooClose, "Too close to call"),
    };
    VerdictReport {
        word,
        title,
        p_in: Some(verdict.p_in),
        p_short: Some(verdict.p_short),
        p_long: Some(verdict.p_long),
        sentence: sentence::with_limits(
            pen,
            &verdict,
            limits,
            facts.free,
            deviation,
            cost,
            settling_graduation(&verdict, intervals, measured, desk.system()),
        ),
        would_settle,
        least: limit(limits.least(), "TL", desk),
        most: limit(limits.most(), "TU", desk),
        working: Some(working),
    }
}

/// What the standards allow a new spring, where its drawing says enough.
fn allowance(pen: Pen, facts: &Facts) -> String {
    let (Some(coil), Some(turns), Some(free), Some(rate)) =
        (facts.diameters, facts.turns, facts.free, facts.rate)
    else {
        return String::new();
    };
    if Coiling::of(coil, facts.ends) == Coiling::Hot {
        return " What a new hot-wound spring may be off stands in ISO 11891, to be looked up there.".into();
    }
    ColdWound::new(coil, turns, free).map_or_else(|_| String::new(), |spring| {
        let half_width = pen.rough(spring.free_height(Grade::Two, rate.value).value);
        text!(" A new cold-coiled spring of this size may be {half_width} off either way by EN 15800, grade 2.")
    })
}

/// The coarsest finer graduation that would settle the verdict on this tape, if any would.
fn settling_graduation(
    verdict: &verdict::Verdict,
    intervals: &[Interval],
    measured: &Measured,
    system: System,
) -> Option<Length> {
    let settling = verdict.would_settle?;
    let steps = match system {
        System::Inch => [1.0 / 16.0, 1.0 / 32.0, 1.0 / 64.0].map(Length::new::<unit::inch>),
        System::Metric => [1.0, 0.5, 0.1].map(Length::new::<unit::millimeter>),
    };
    #[expect(clippy::cast_precision_loss, reason = "nobody takes 2⁵² readings of one coil")]
    let count = intervals.len() as f64;
    steps.into_iter().find(|step| {
        let reading_doubt = measured::uniform(*step / 2.0) / libm::sqrt(count);
        reading_doubt < measured.reading_doubt
            && Measured { reading_doubt, ..*measured }.doubt() <= settling
    })
}

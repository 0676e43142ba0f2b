//! A coil that is there: what the tape said of it, and what that makes of it.

use super::coil::Coil;
use super::context::Context;
use super::drawing::as_given;
use super::figures::{Format, text};
use super::formulas::{
    ABOVE, BELOW, BETWEEN, DEVIATION, LEAST, LOAD_COST, MEASURED, MOST, SETTLES, SPREAD, TILT,
    letter,
};
use super::input::{Job, TapeUsed};
use super::problem::Path;
use super::report::{Figure, Problem, SeatReport, VerdictReport, Word};
use super::slips::Weighed;
use super::taped::Taped;
use super::{sentence, settle};
use crate::coil::Coiling;
use crate::formula::{Formula, Value};
use crate::measured::{self, Measured, Tape, TapeClass};
use crate::quantity::{self, Force, Length, System, unit};
use crate::reading::Interval;
use crate::tolerance::{ColdWound, Grade};
use crate::verdict::{self, Limits, Verdict, judge_measured};

/// What a job was measured with, as far as it does not depend on the length measured.
#[derive(Clone, Debug)]
pub(crate) struct Instrument {
    pub(crate) graduation: Length,
    /// The system that the tape is marked in.
    pub(crate) marked: System,
    classes: Vec<TapeClass>,
    class: Option<TapeClass>,
    stated: Option<Length>,
    /// Half-width of how far one place round a coil may stand off its height.
    pub(crate) place: Length,
    pub(crate) level: f64,
}

/// A length at which a tape of which nothing is said is named: that of the coils it mostly measures.
fn about_a_coil() -> Length {
    Length::new::<unit::meter>(0.4)
}

impl Instrument {
    /// Reads the tape of a job, and says what it took where the job is silent.
    pub(crate) fn assess(context: &mut Context<'_>, job: &Job) -> Self {
        let top = Path::default();
        let absent = TapeUsed::default();
        let tape = context.object(&top, job.tape()).map_or(&absent, |(_, tape)| tape);
        let at = job.tape().path(&top);
        let graduation = context.read(&at, tape.graduation());
        if tape.graduation.written().is_empty() {
            let usual = context.format.fine_text(usual_graduation(context.system()));
            let text = text!("The graduation of the tape is not given: {usual} is taken.");
            context.note(&tape.graduation().path(&at), "graduation-assumed", text);
        }
        let stated = context.read(&at, tape.error());
        let place = context.read(&at, tape.ends_error());
        let usual_place = measured::usual_place(context.system());
        if tape.ends_error.written().is_empty() {
            let usual = context.format.fine_text(usual_place);
            let text = text!(
                "How far one place round a coil may be off is not given: up to {usual} is taken."
            );
            context.note(&tape.ends_error().path(&at), "places-assumed", text);
        }
        let class = context.read(&at, tape.class());
        let level = context.read(&top, job.decision_level());
        let instrument = Self {
            graduation: graduation.map_or_else(
                || usual_graduation(context.system()),
                |graduation| graduation.length(),
            ),
            marked: graduation.map_or_else(|| context.system(), |graduation| graduation.system()),
            classes: context.tables.tape_classes.to_vec(),
            class,
            stated,
            place: place.unwrap_or(usual_place),
            level: level.unwrap_or(verdict::USUAL_LEVEL),
        };
        if let (None, None, Some(class)) = (class, stated, instrument.class_at(about_a_coil())) {
            let text = text!(
                "The error of the tape is not given: {}, the wider of the usual classes, is taken.",
                class.name()
            );
            context.note(&tape.class().path(&at), "tape-class-assumed", text);
        }
        instrument
    }

    /// The class that was named, else the widest of those usual for such a tape.
    fn class_at(&self, length: Length) -> Option<TapeClass> {
        self.class.or_else(|| measured::widest_usual(&self.classes, self.marked, length))
    }

    /// How far the tape may be wrong; none where its class does not say.
    pub(crate) fn error_at(&self, length: Length) -> Option<Length> {
        if self.stated.is_some() || self.classes.is_empty() {
            return Some(self.stated.unwrap_or_default());
        }
        self.class_at(length)?.permissible_error(length)
    }

    /// The class that permits least at a length, by its name.
    pub(crate) fn best_class(&self, length: Length) -> Option<(&'static str, Length)> {
        let classes = self.classes.iter();
        let classes =
            classes.filter_map(|class| Some((class.name(), class.permissible_error(length)?)));
        classes.reduce(|best, one| if one.1 < best.1 { one } else { best })
    }

    /// What readings come to; none where there is none, or the tape's class says nothing of their length.
    pub(crate) fn measured(&self, intervals: &[Interval]) -> Option<Measured> {
        let error = self.error_at(longest(intervals)?)?;
        measured::measure(intervals, Tape { error, place: self.place }).ok()
    }

    fn source(&self) -> String {
        match (self.stated, self.class_at(about_a_coil())) {
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

fn longest(intervals: &[Interval]) -> Option<Length> {
    intervals.iter().map(Interval::estimate).reduce(|a, b| if b > a { b } else { a })
}

/// A coil as it stands in its seat.
#[derive(Clone, Debug, Default)]
pub(crate) struct CoilState {
    /// Free height as measured, else the book's.
    pub(crate) free: Option<Length>,
    /// Standard uncertainty that is this coil's own.
    pub(crate) own_doubt: Length,
    /// Standard uncertainty that it shares with all that the tape measured.
    pub(crate) tape_doubt: Length,
    /// Why it should not go back as it is: `short`.
    pub(crate) not_good: Option<String>,
}

/// What is ruled of a coil.
#[derive(Clone, Copy, Debug)]
enum Ruling {
    /// It is scrap by its condition.
    Scrap,
    /// The readings that can be used say so, if any can, but others must be read again first.
    ReadAgain(Option<Verdict>),
    /// The book has no limit.
    NoLimit,
    /// By its limits.
    By(Verdict, Limits),
}

/// A coil that is judged by all that is written of it.
pub(crate) struct Judged<'t> {
    taped: &'t Taped,
    weighed: Weighed<'t>,
    intervals: Vec<Interval>,
    pub(crate) measured: Option<Measured>,
    ruling: Option<Ruling>,
}

impl<'t> Judged<'t> {
    pub(crate) fn of(taped: &'t Taped, drawn: &Coil, instrument: &Instrument) -> Self {
        let weighed = Weighed::of(taped, drawn, instrument);
        let intervals = weighed.intervals();
        let measured = instrument.measured(&intervals);
        let is_whole = intervals.len() == taped.written();
        let verdict = measured.zip(drawn.limits).map(|(measured, limits)| {
            (judge_measured(&measured, limits, instrument.level), limits)
        });
        let ruling = match (verdict, measured) {
            _ if taped.flaw.is_some() => Some(Ruling::Scrap),
            (Some((verdict, _)), _) if !is_whole && !is_refused(verdict.word) => {
                Some(Ruling::ReadAgain(Some(verdict)))
            }
            (Some((verdict, limits)), _) => Some(Ruling::By(verdict, limits)),
            (None, Some(_)) => Some(Ruling::NoLimit),
            (None, None) => (!weighed.questioned.is_empty()).then_some(Ruling::ReadAgain(None)),
        };
        Self { taped, weighed, intervals, measured, ruling }
    }

    /// How it stands: by its readings, else by its book figure.
    pub(crate) fn standing(&self, drawn: &Coil) -> CoilState {
        let not_good = match self.ruling {
            Some(Ruling::Scrap) => {
                Some(text!("scrap, {}", self.taped.flaw.as_deref().unwrap_or_default()))
            }
            Some(Ruling::ReadAgain(_)) => Some("to be read again".to_owned()),
            Some(Ruling::By(verdict, _)) => match verdict.word {
                verdict::Word::Good => None,
                verdict::Word::Short => Some("short".to_owned()),
                verdict::Word::Long => Some("long".to_owned()),
                verdict::Word::TooClose => Some("too close to call".to_owned()),
            },
            Some(Ruling::NoLimit) | None => None,
        };
        self.measured.map_or_else(
            || CoilState { free: drawn.free(), not_good: not_good.clone(), ..CoilState::default() },
            |measured| CoilState {
                free: Some(measured.mean),
                own_doubt: measured.own_doubt(),
                tape_doubt: measured.tape_doubt,
                not_good: not_good.clone(),
            },
        )
    }

    /// Names what must be read again, at its readings.
    fn note(&self, context: &mut Context<'_>, at: &Path) {
        for questioned in &self.weighed.questioned {
            let text = questioned.sentence(context.format);
            context.note(&questioned.taken.at, "reading-questioned", text);
        }
        if let (None, Some(longest)) = (self.measured, longest(&self.intervals)) {
            let read = context.format.decimal(longest).to_string();
            let why = "the class of the tape says nothing of a length like this";
            let expected = "a length that the tape's class covers, or the tape's error stated";
            let at = at.field("readings");
            context.problem(Problem::new(&at, "outside-table", &read, expected, why, "1/16 in"));
        }
    }

    /// Says at a coil that a nest stands on by what its height is, where no reading says it.
    fn note_unmeasured(&self, context: &mut Context<'_>, at: &Path, drawn: &Coil) {
        if self.intervals.is_empty() && drawn.free().is_some() {
            let text = text!("{} is not measured: its book figure is taken.", drawn.name);
            context.note(at, "not-measured", text);
        }
    }
}

/// Whether a coil is set aside by that word alone.
fn is_refused(word: verdict::Word) -> bool {
    matches!(word, verdict::Word::Short | verdict::Word::Long)
}

/// What a drawing adds to what a tape says.
pub(crate) struct ByDrawing {
    figures: fn(&mut Context<'_>, &mut SeatReport, &Measured, &Coil),
    allowance: fn(Format, &Coil) -> String,
}

pub(crate) const DRAWN: ByDrawing = ByDrawing { figures: drawn_figures, allowance };

/// By book figure and limits alone, whatever else the drawing says.
pub(crate) const BY_TAPE: ByDrawing =
    ByDrawing { figures: |_, _, _, _| {}, allowance: |_, _| String::new() };

/// Where a coil lies that is judged.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Location {
    InANest,
    Apart,
}

/// What a coil is judged to be, with all that its report says of it.
pub(crate) fn judge(
    context: &mut Context<'_>,
    at: &Path,
    drawn: &Coil,
    (taped, instrument): (&Taped, &Instrument),
    location: Location,
    by: &ByDrawing,
) -> (CoilState, SeatReport) {
    let format = context.format;
    let judged = Judged::of(taped, drawn, instrument);
    judged.note(context, at);
    if location == Location::InANest {
        judged.note_unmeasured(context, at, drawn);
    }
    let mut report = SeatReport {
        coil: drawn.id.clone(),
        name: drawn.name.clone(),
        condition: taped.flaw.clone(),
        ..SeatReport::default()
    };
    report.book = drawn.free().map(|book| {
        as_given::<Length>(context, format.height(book), letter!("L0"), "the book's free height")
    });
    report.free.clone_from(&report.book);
    if let Some(measured) = judged.measured {
        taped_figures(context, &mut report, &judged.intervals, &measured, drawn, instrument);
        (by.figures)(context, &mut report, &measured, drawn);
    }
    let allowed = (by.allowance)(format, drawn);
    report.verdict = judged
        .ruling
        .map(|ruling| verdict_of(context, drawn, &judged, ruling, instrument, &report, &allowed));
    (judged.standing(drawn), report)
}

/// What the tape said.
fn taped_figures(
    context: &mut Context<'_>,
    report: &mut SeatReport,
    intervals: &[Interval],
    measured: &Measured,
    drawn: &Coil,
    instrument: &Instrument,
) {
    let format = context.format;
    report.measured = true;
    let doubt = measured.doubt();
    report.free = Some(free_height(context, intervals, measured, instrument));
    if intervals.len() > 1 {
        let figure = format.fine(measured.spread);
        let at = intervals.iter().map(Interval::estimate);
        let least = at.clone().reduce(|a, b| if b < a { b } else { a }).unwrap_or_default();
        let values: [Value<'_>; 2] =
            [("r1", &format.decimal(least)), ("r2", &format.decimal(least + measured.spread))];
        report.spread = Some(context.ledger.work(figure, SPREAD, &values, "definition"));
    }
    if let Some(book) = drawn.free() {
        let figure = format.fine(measured.mean - book).give_or_take(format, doubt);
        let values: [Value<'_>; 2] =
            [("Lm", &format.decimal(measured.mean)), ("L0", &format.decimal(book))];
        report.deviation = Some(context.ledger.work(figure, DEVIATION, &values, "definition"));
    }
}

/// How far its ends are out of square, and what it costs in load.
fn drawn_figures(
    context: &mut Context<'_>,
    report: &mut SeatReport,
    measured: &Measured,
    drawn: &Coil,
) {
    let (format, doubt) = (context.format, measured.doubt());
    if let (Some(_), Some(coil)) = (&report.spread, drawn.diameters()) {
        let figure = Format::angle(measured.out_of_square(coil.outside()));
        let values: [Value<'_>; 2] =
            [("S", &format.decimal(measured.spread)), ("De", &format.decimal(coil.outside()))];
        let source = "geometry of tilted ends";
        report.out_of_square = Some(context.ledger.work(figure, TILT, &values, source));
    }
    if let (Some(book), Some(rate)) = (drawn.free(), drawn.rate) {
        let deviation = measured.mean - book;
        let cost: Force = rate.value * deviation;
        let figure = format.doubted::<Force>(cost, (rate.value * doubt).value);
        let values: [Value<'_>; 3] = [
            ("k", &format.say::<quantity::SpringRate>(rate.value)),
            ("Lm", &format.decimal(measured.mean)),
            ("L0", &format.decimal(book)),
        ];
        let source = "statics; at any height at which the coil carries";
        report.load_cost = Some(context.ledger.work(figure, LOAD_COST, &values, source));
    }
}

fn free_height(
    context: &mut Context<'_>,
    intervals: &[Interval],
    measured: &Measured,
    instrument: &Instrument,
) -> Figure {
    let format = context.format;
    let readings: Vec<_> =
        intervals.iter().map(|reading| format.decimal(reading.estimate())).collect();
    let terms = readings.iter().map(|reading| [("r", reading as _)]);
    let values: [Value<'_>; 4] = [
        ("N", &intervals.len()),
        ("ur", &format.decimal(measured.reading_doubt)),
        ("ut", &format.decimal(measured.tape_doubt)),
        ("up", &format.decimal(measured.place_doubt())),
    ];
    let put = MEASURED.put_sum(&values, terms);
    let result =
        text!("{}, u = {}", format.decimal(measured.mean), format.decimal(measured.doubt()));
    let mut figure = format.height(measured.mean).give_or_take(format, measured.doubt());
    figure.working = Some(context.ledger.file(put, result, instrument.source()));
    figure
}

fn verdict_of(
    context: &mut Context<'_>,
    drawn: &Coil,
    judged: &Judged<'_>,
    ruling: Ruling,
    instrument: &Instrument,
    seat: &SeatReport,
    allowance: &str,
) -> VerdictReport {
    let format = context.format;
    let off = sentence::Off {
        deviation: judged.measured.zip(drawn.free()).map(|(measured, book)| measured.mean - book),
        cost: seat.load_cost.as_ref(),
    };
    let limit = |limit: Option<Length>, formula, sign, context: &mut Context<'_>| {
        limit.map(|limit| {
            let figure = format.height(limit);
            let said = format.decimal(limit);
            context.ledger.work(figure, formula, &[(sign, &said)], "limit of the book")
        })
    };
    let remarks = remarks(format, judged, instrument);
    let mut report = VerdictReport {
        word: Word::None,
        title: "No limit given".into(),
        brief: brief(format, judged, ruling, off.deviation),
        p_in: None,
        p_short: None,
        p_long: None,
        places: judged.intervals.len(),
        sentence: String::new(),
        would_settle: None,
        least: limit(drawn.limits.and_then(|limits| limits.least()), LEAST, "TL", context),
        most: limit(drawn.limits.and_then(|limits| limits.most()), MOST, "TU", context),
        working: None,
    };
    let decided = match ruling {
        Ruling::By(verdict, limits) => judged.measured.map(|measured| (verdict, limits, measured)),
        Ruling::ReadAgain(Some(verdict)) => {
            drawn.limits.zip(judged.measured).map(|(limits, measured)| (verdict, limits, measured))
        }
        _ => None,
    };
    if let Some((verdict, limits, measured)) = decided {
        (report.p_in, report.p_short, report.p_long) =
            (Some(verdict.p_in), Some(verdict.p_short), Some(verdict.p_long));
        report.working = Some(weighed(context, &verdict, limits, &measured));
        let settling = verdict.would_settle.filter(|settling| settling.value > 0.0);
        report.would_settle =
            settling.map(|settling| would_settle(context, settling, &measured, instrument));
    }
    let (word, title, sentence) = match ruling {
        Ruling::Scrap => {
            let flaw = judged.taped.flaw.as_deref().unwrap_or_default();
            (Word::Scrap, "Scrap", sentence::scrap(flaw))
        }
        Ruling::ReadAgain(verdict) => {
            let said = sentence::read_again(format, verdict.zip(drawn.limits), drawn.free(), &off);
            (Word::TooClose, "Read again", text!("{said}{remarks}"))
        }
        Ruling::NoLimit => {
            let said = sentence::without_limit(format, &off, allowance);
            (Word::None, "No limit given", text!("{said}{remarks}"))
        }
        Ruling::By(verdict, limits) => {
            let settle = judged
                .measured
                .filter(|_| verdict.word == verdict::Word::TooClose)
                .map(|measured| settle::sentence(&measured, limits, instrument));
            let said = sentence::Said { verdict: &verdict, limits, book: drawn.free(), off };
            let said = said.sentence(format, &remarks, settle.as_deref());
            let (word, title) = match verdict.word {
                verdict::Word::Good => (Word::Good, "Good"),
                verdict::Word::Short => (Word::Short, "Short"),
                verdict::Word::Long => (Word::Long, "Long"),
                verdict::Word::TooClose => (Word::TooClose, "Too close to call"),
            };
            (word, title, said)
        }
    };
    (report.word, report.title, report.sentence) = (word, title.into(), sentence);
    report
}

/// What of a verdict stands in one line of a list.
fn brief(format: Format, judged: &Judged<'_>, ruling: Ruling, deviation: Option<Length>) -> String {
    let is_open = |verdict: Verdict| verdict.word == verdict::Word::TooClose;
    match ruling {
        Ruling::Scrap => judged.taped.flaw.clone().unwrap_or_default(),
        Ruling::ReadAgain(_) => sentence::unused(judged.taped.written() - judged.intervals.len()),
        Ruling::By(verdict, _) if is_open(verdict) && judged.intervals.len() == 1 => {
            "one place only".to_owned()
        }
        Ruling::By(..) | Ruling::NoLimit => sentence::off_the_book(format, deviation),
    }
}

/// Files how the probabilities of a verdict came about.
fn weighed(
    context: &mut Context<'_>,
    verdict: &Verdict,
    limits: Limits,
    measured: &Measured,
) -> String {
    let format = context.format;
    let end = |limit: Option<Length>| format.decimal(limit.unwrap_or_default());
    let values: [Value<'_>; 4] = [
        ("Lm", &format.decimal(measured.mean)),
        ("u", &format.decimal(measured.doubt())),
        ("TL", &end(limits.least())),
        ("TU", &end(limits.most())),
    ];
    let formula = match (limits.least(), limits.most()) {
        (Some(_), Some(_)) => BETWEEN,
        (Some(_), None) => ABOVE,
        _ => BELOW,
    };
    let result = text!(
        "within {}, short {}, long {}",
        sentence::percent(verdict.p_in),
        sentence::percent(verdict.p_short),
        sentence::percent(verdict.p_long)
    );
    context.ledger.file(formula.put(&values), result, &verdict::SOURCE)
}

fn would_settle(
    context: &mut Context<'_>,
    settling: Length,
    measured: &Measured,
    instrument: &Instrument,
) -> Figure {
    let format = context.format;
    let figure = format.fine(settling);
    let level = sentence::percent(instrument.level);
    let with = text!("Lm = {}, level {level}", format.decimal(measured.mean));
    let result = format.rough(settling).to_string();
    let put = Formula::put_words(SETTLES, with);
    let working = context.ledger.file(put, result.clone(), &verdict::SOURCE);
    Figure { text: result, working: Some(working), ..figure }
}

/// What is to be said of the readings themselves.
fn remarks(format: Format, judged: &Judged<'_>, instrument: &Instrument) -> String {
    let mut remarks = String::new();
    let (kept, written) = (judged.intervals.len(), judged.taped.written());
    if kept < written && kept > 0 {
        remarks += &sentence::from_some(kept, written);
    }
    if kept == 1 {
        remarks += " One place only: turn the coil and read again.";
    }
    if let Some(measured) = judged.measured {
        remarks += &sentence::stands(format, &judged.weighed.kept, &measured, instrument.place);
    }
    remarks
}

/// What the standards allow a new spring, where its drawing says enough.
fn allowance(format: Format, drawn: &Coil) -> String {
    let (Some(coil), Some(turns), Some(free), Some(rate)) =
        (drawn.diameters(), drawn.turns(), drawn.free(), drawn.rate)
    else {
        return String::new();
    };
    if drawn.drawing.coiling == Some(Coiling::Hot) {
        return " What a new hot-wound spring may be off stands in ISO 11891, to be looked up there.".into();
    }
    ColdWound::new(coil, turns, free).map_or_else(|_| String::new(), |spring| {
        let half_width = format.rough(spring.free_height(Grade::Two, rate.value).value);
        text!(" A new cold-coiled spring of this size may be {half_width} off either way by EN 15800, grade 2.")
    })
}

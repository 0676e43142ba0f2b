//! What follows from a job, as it is handed out: figures with their text, their doubt and their
//! working.
//!
//! With the feature `serde`, each report that was kept as JSON is read back equal to the one that was written, every
//! number to the last bit. Fields that a later version adds are passed over; a word that is not in its list here is an
//! error that names it.
//!
//! # Example
//! ```
//! use coilnest::job::{Report, assess, file};
//! use coilnest::tables::Tables;
//!
//! let job = file::open(r#"{
//!     "format": "coilnest-job/1",
//!     "coils": [{ "id": "outer", "free": "15 11/16", "limits": { "under": "1/8", "over": "1/8" } }],
//!     "nests": [{ "id": "A left", "seats": [{ "coil": "outer", "readings": ["15 5/8", "15 11/16"] }] }]
//! }"#).map_err(|problem| problem.message)?;
//! let report = assess(&job, &Tables::NONE);
//! let kept = serde_json::to_string(&report)?;
//! let read: Report = serde_json::from_str(&kept)?;
//! assert_eq!(read, report);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use super::input::Job;
use serde::Serialize;

/// One struct of a report; what could not be computed is left out.
macro_rules! record {
    ($(#[$about:meta])* $name:ident { $($(#[$doc:meta])* $field:ident: $kind:ty,)* }) => {
        #[serde_with::skip_serializing_none]
        $(#[$about])*
        #[derive(Clone, Debug, PartialEq, Serialize)]
        #[cfg_attr(feature = "serde", derive(serde::Deserialize))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub struct $name {
            $(
                $(#[$doc])*
                pub $field: $kind,
            )*
        }
    };
}

/// One closed set of words of a report.
macro_rules! words {
    ($(#[doc = $about:literal])* $name:ident { $($(#[doc = $doc:literal])* $word:ident,)* }) => {
        $(#[doc = $about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
        #[cfg_attr(feature = "serde", derive(serde::Deserialize))]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(rename_all = "kebab-case")]
        pub enum $name {
            $($(#[doc = $doc])* $word,)*
        }
    };
}

mod coil_table;
mod guides;
mod level;
mod phrase;
#[cfg(feature = "serde")]
mod read;
mod replace;
mod sheet;
mod since;
mod stack;
mod workings;
pub use coil_table::{CoilRows, RefusedLine};
pub use guides::{GuidesDrawing, GuidesReport, GuidesWord, StockLiners};
pub use level::{
    DipReport, DippedWheel, Dips, FrameEnds, FrameReport, FrameStanding, FrameState, LevelReport,
    MatchReport, MatchedNest, MatchedSeat, NestStanding, Plan, PlanNest, PointReport, PointWord,
    ShimReport, ShimStep, Sided, StandingWord, StuckReport, SupportReport, SupportState, Weighed,
    Wheel,
};
pub use phrase::Phrase;
pub use replace::{
    CandidateReport, DesignPlace, DesignReport, FrameSwapReport, LineReport, Met, NestSwapReport,
    OrderItem, OrderReport, OrderVerdict, PairReport, RefusedBar, ReplaceReport, SizingMap,
    SizingReport, SwappedCoil, TogetherReport,
};
pub use sheet::{
    Allowance, Buckling, Doubt, DutyState, EndsReport, EndsStage, Fatigue, Press, PressRow, Safety,
    Sheet, SheetAnswer, Standing, SteelRow, Trust,
};
pub use since::{SinceCoil, SinceReport, SinceWord};
pub use stack::{LayerReport, StackPart, StackPartKind, StackReport};
pub(crate) use workings::{Cited, Working};
pub use workings::{Letters, WorkingEntry, Workings};

words! {
    /// Where on the page a caution binds.
    Section {
        /// Measuring.
        Measure,
        /// Handling a nest.
        Nest,
        /// Levelling a frame.
        Level,
        /// Replacing a coil.
        Replace,
        /// Everywhere.
        All,
    }
}

words! {
    /// The word of a verdict.
    Word {
        /// Within the limits.
        Good,
        /// Below the least allowed.
        Short,
        /// Above the most allowed.
        Long,
        /// Not sure enough.
        TooClose,
        /// Not sound, whatever the tape says.
        Scrap,
        /// The book has no limit.
        None,
    }
}

words! {
    /// What happens at a bend of the load curve.
    EventWord {
        /// A coil begins to carry.
        Touches,
        /// A coil's rate changes.
        Stage,
        /// The nest is solid.
        Solid,
    }
}

words! {
    /// How two neighbours are wound.
    HandsWord {
        /// Opposite ways.
        Opposite,
        /// The same way.
        Same,
        /// Not known.
        Unknown,
    }
}

record! {
    /// A figure: its value, its text, how far to trust it, and where its working stands.
    #[derive(Default)]
    Figure {
        /// The value in SI units.
        si: f64,
        /// The SI unit, `1` for a plain number.
        unit: Phrase,
        /// The value as a person reads it, with its unit.
        text: String,
        /// One standard uncertainty, in SI units.
        doubt_si: Option<f64>,
        /// The same as a person reads it.
        doubt_text: Option<String>,
        /// Key of its working.
        working: Option<String>,
    }
}

record! {
    /// Something in the job that cannot be used, and where it stands.
    Problem {
        /// Path of the field.
        path: String,
        /// Stable code; the list stands in the docs of `problem`.
        code: Phrase,
        /// What the field holds.
        read: String,
        /// What was expected.
        expected: String,
        /// A sentence for the person who wrote it.
        message: String,
        /// Text that would be right.
        example: String,
        /// Where in `read` it goes wrong, in characters from 0.
        position: Option<usize>,
    }
}

record! {
    /// What was assumed, or could not be computed and why.
    ///
    /// | code | what it means |
    /// | --- | --- |
    /// | `graduation-assumed`, `tape-class-assumed`, `places-assumed`, `steel-assumed` | the job does not say, the usual is taken |
    /// | `reading-questioned` | a reading that no doubt explains: no verdict rests on it |
    /// | `label-twice` | one label on two coils of a kind |
    /// | `too-close-left-out` | coils too close to call are not put into seats unless the job says so |
    /// | `height-goes-first` | of a working height and a working load the height is used |
    /// | `dead-turns-doubt` | what is not known of the dead turns outweighs all else in the rate |
    /// | `limits-without-book` | a limit under or over a book figure that is not given |
    /// | `coil-unknown`, `nest-empty`, `not-measured` | a seat without its coil, a nest without seats, a coil without readings |
    /// | `load-unknown`, `solid-unknown` | a nest lacks what its load, or its stop, follows from |
    /// | `layer-unknown` | a pad, plate or shim without its thickness |
    /// | `guides-unknown` | a box without its width, or without the opening between its guides |
    /// | `stack-unknown` | how thick a stack of shims may be is not given |
    /// | `nests-differ`, `height-unknown` | nests among which no coil can be exchanged, or no height to compare them at |
    /// | `original-unknown`, `work-unknown` | a replacement without the drawing that is replaced, or without a height at work |
    /// | `swap-unknown` | what a replacement does to its nest or frame cannot be told |
    /// | `together-without-nest`, `order-unknown`, `raise-unknown` | a nest for a nest without one, or whose coils' places or seats are not known |
    /// | `seat-without-nest`, `waived-without-reason` | one seat is named but no nest; a requirement is waived without a reason |
    /// | `need-unknown` | a need lacks its load, its rate or its steel |
    /// | `ends-assumed`, `solid-stress-unknown` | a need does not say what ends, or what may be borne at solid |
    /// | `strength-unknown` | no stress that the steel may bear is held or given |
    /// | `weight-unknown`, `support-unknown`, `place-unknown` | a frame lacks its weight, a support its nest or its place |
    Note {
        /// Path of the field or part.
        path: String,
        /// Stable code; the list stands above.
        code: Phrase,
        /// A sentence.
        text: String,
    }
}

record! {
    /// What can hurt somebody at this work.
    Caution {
        /// Stable code.
        code: Phrase,
        /// The caution.
        text: Phrase,
        /// Where it comes from.
        source: Phrase,
        /// Where on the page it binds.
        section: Section,
    }
}

record! {
    /// What follows from a drawing.
    #[derive(Default)]
    CoilReport {
        /// The drawing.
        id: String,
        /// Its name for people.
        name: String,
        /// Spring index.
        index: Option<Figure>,
        /// Turns that deflect.
        active_turns: Option<Figure>,
        /// Pitch of the free coil.
        pitch: Option<Figure>,
        /// Rate that is used: the book's, else the drawing's.
        rate: Option<Figure>,
        /// Rate by the drawing, where the book's overrides it.
        rate_drawing: Option<Figure>,
        /// Rate with the helix's own stiffness taken in.
        rate_corrected: Option<Figure>,
        /// Solid height that is used.
        solid: Option<Figure>,
        /// Solid height by the drawing, where the book's overrides it.
        solid_drawing: Option<Figure>,
        /// Uncorrected stress at solid, from the book's free height.
        stress_solid: Option<Figure>,
        /// Wahl's factor.
        wahl: Option<Figure>,
        /// Bergsträsser's factor.
        bergstrasser: Option<Figure>,
    }
}

record! {
    /// What follows for a nest.
    #[derive(Default)]
    NestReport {
        /// The nest.
        id: String,
        /// Its coils.
        seats: Vec<SeatReport>,
        /// Its coils that are not good and why, `7 (Outer): short`: what follows for the nest holds with them.
        not_good: Vec<String>,
        /// By what its loads and heights are: the readings, or the drawings.
        heights_by: Option<Phrase>,
        /// Height at which it begins to carry.
        free_height: Option<Figure>,
        /// Seats in the order in which they begin to carry.
        touch_order: Vec<usize>,
        /// Seat that goes solid first.
        solid_first: Option<usize>,
        /// Height at which the nest is solid.
        solid_height: Option<Figure>,
        /// Load of its springs then.
        solid_load: Option<Figure>,
        /// Bends of the load curve, from free to solid.
        breakpoints: Vec<BreakpointReport>,
        /// At the working height or load.
        working: Option<StateReport>,
        /// At what was asked.
        answers: Vec<StateReport>,
        /// Room between neighbours.
        clearances: Vec<ClearanceReport>,
        /// How well the coils share the work: index and stress at solid beside each other.
        balance: Option<String>,
        /// Heights that the nest can take.
        slider: Option<Slider>,
        /// Energy that the nest holds at the working point.
        stored_energy: Option<Figure>,
        /// What lies over and under it.
        stack: Option<StackReport>,
        /// Height from its lower seat to the frame, at its working point.
        stack_height: Option<Figure>,
        /// Its height as taped when the truck stood again, beside the one worked out.
        standing: Option<NestStanding>,
        /// Its boxes in their guides.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        guides: Vec<GuidesReport>,
    }
}

record! {
    /// What follows for a coil that is there.
    #[derive(Default)]
    SeatReport {
        /// Its drawing.
        coil: String,
        /// The drawing's name.
        name: String,
        /// The mark painted on it.
        label: Option<String>,
        /// Free height from the book.
        book: Option<Figure>,
        /// Free height as measured, else the book's.
        free: Option<Figure>,
        /// Whether it was measured.
        measured: bool,
        /// What is wrong with it to the eye.
        condition: Option<String>,
        /// Measured less book.
        deviation: Option<Figure>,
        /// Greatest reading less the smallest.
        spread: Option<Figure>,
        /// Angle of the ends that the spread amounts to.
        out_of_square: Option<Figure>,
        /// The verdict.
        verdict: Option<VerdictReport>,
        /// Load lost (negative) or gained at any height where the coil carries.
        load_cost: Option<Figure>,
        /// The same as a share of the nest's load at the working point.
        load_cost_share: Option<Figure>,
        /// The coil that was found in its place, where it is fitted for another.
        found: Option<Box<SeatReport>>,
    }
}

record! {
    /// A coil that does not go back.
    AsideReport {
        /// The coil.
        coil: SeatReport,
        /// Why it was set aside.
        reason: Option<String>,
    }
}

record! {
    /// A verdict.
    VerdictReport {
        /// The verdict.
        word: Word,
        /// The verdict as a person reads it.
        title: Phrase,
        /// What of it stands in one line of a list: how far off the coil is, or what is to be done first.
        brief: String,
        /// Probability of lying within the limits.
        p_in: Option<f64>,
        /// Probability of being short.
        p_short: Option<f64>,
        /// Probability of being long.
        p_long: Option<f64>,
        /// At how many places round the coil it was read, those left out that cannot be used.
        places: usize,
        /// What it says, how sure, and what would settle it.
        sentence: String,
        /// Standard uncertainty that would settle it.
        would_settle: Option<Figure>,
        /// Least allowed.
        least: Option<Figure>,
        /// Most allowed.
        most: Option<Figure>,
        /// Key of its working.
        working: Option<String>,
    }
}

record! {
    /// A bend of the load curve.
    BreakpointReport {
        /// Height.
        height: Figure,
        /// Load there.
        load: Figure,
        /// Rate from there on down.
        rate: Figure,
        /// What happens.
        event: EventWord,
        /// To which seat.
        seat: usize,
        /// Load of each seat there, in newtons.
        stack: Vec<f64>,
    }
}

record! {
    /// A nest at a height.
    StateReport {
        /// What was asked, as written.
        asked: Option<String>,
        /// Height.
        height: Figure,
        /// Load.
        load: Figure,
        /// Load beyond what the springs bear, carried turn on turn.
        stop_load: Option<Figure>,
        /// Rate there.
        rate: Option<Figure>,
        /// Whether it is solid.
        solid: bool,
        /// Its coils.
        seats: Vec<SeatState>,
    }
}

record! {
    /// A coil of a nest at a height.
    SeatState {
        /// Its load.
        load: Figure,
        /// Its share of the nest's load.
        share: Option<Figure>,
        /// Uncorrected stress.
        stress: Option<Figure>,
        /// Stress at the inside of the coil, by Bergsträsser's factor.
        stress_corrected: Option<Figure>,
        /// What is left before it is solid.
        to_solid: Option<Figure>,
        /// Whether it carries.
        touching: bool,
    }
}

record! {
    /// Room between a coil and the one inside it.
    ClearanceReport {
        /// Seat of the outer coil.
        outer: usize,
        /// Seat of the inner coil.
        inner: usize,
        /// Radial gap, both free.
        radial_free: Option<Figure>,
        /// Radial gap with the inner coil grown as at solid.
        radial_solid: Option<Figure>,
        /// Radial gap by textbook practice.
        usual: Option<Figure>,
        /// Whether they are wound opposite ways.
        hands: HandsWord,
        /// Whether the inner coil stays clear.
        fits: Option<bool>,
        /// What it amounts to.
        sentence: String,
    }
}

record! {
    /// Heights that a nest can take, in a unit of the page.
    Slider {
        /// Solid height, or the working height's surroundings where it is not known.
        least: f64,
        /// A little above the free height.
        most: f64,
        /// Step.
        step: f64,
        /// Where to begin.
        start: f64,
        /// Unit.
        unit: Phrase,
    }
}

record! {
    /// Everything that follows from a job.
    #[derive(Default)]
    Report {
        /// What cannot be used, and where it stands.
        problems: Vec<Problem>,
        /// What was assumed, or left out and why.
        notes: Vec<Note>,
        /// What can hurt somebody at this work.
        cautions: Vec<Caution>,
        /// The drawings.
        coils: Vec<CoilReport>,
        /// The nests.
        nests: Vec<NestReport>,
        /// Coils that do not go back, in the order of the job.
        set_aside: Vec<AsideReport>,
        /// How many of their coils have which verdict.
        tally: Tally,
        /// The frame on them, where the job has one and all that it needs.
        frame: Option<FrameReport>,
        /// Keys for the fractions of this job's tape.
        keys: Vec<Phrase>,
        /// Units for scales and axes.
        axes: Axes,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// How many coils have which verdict.
    #[derive(Default)]
    Tally {
        /// Within the limits.
        good: usize,
        /// Below the least allowed.
        short: usize,
        /// Above the most allowed.
        long: usize,
        /// Not sure enough, or to be read again.
        #[serde(rename = "too-close")]
        too_close: usize,
        /// Not sound.
        scrap: usize,
        /// Without a limit.
        none: usize,
    }
}

impl Tally {
    /// Of some coils; those without any verdict are not counted.
    pub(crate) fn of<'s>(seats: impl Iterator<Item = &'s SeatReport>) -> Self {
        let mut tally = Self::default();
        for verdict in seats.filter_map(|seat| seat.verdict.as_ref()) {
            *match verdict.word {
                Word::Good => &mut tally.good,
                Word::Short => &mut tally.short,
                Word::Long => &mut tally.long,
                Word::TooClose => &mut tally.too_close,
                Word::Scrap => &mut tally.scrap,
                Word::None => &mut tally.none,
            } += 1;
        }
        tally
    }
}

record! {
    /// What a tape says of the coils of a job.
    #[derive(Default)]
    TapeReport {
        /// What cannot be used.
        problems: Vec<Problem>,
        /// What was assumed, or could not be computed.
        notes: Vec<Note>,
        /// What can hurt somebody.
        cautions: Vec<Caution>,
        /// How many coils are what.
        tally: Tally,
        /// The nests.
        nests: Vec<TapedNest>,
        /// Coils that do not go back, in the order of the job.
        set_aside: Vec<AsideReport>,
        /// What a key row offers.
        keys: Vec<Phrase>,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// The coils of a nest as the tape has them.
    TapedNest {
        /// The nest.
        id: String,
        /// Its coils.
        seats: Vec<SeatReport>,
    }
}

record! {
    /// The units in which a drawing of a job's figures has its axes.
    #[derive(Default)]
    Axes {
        /// Of heights.
        length: Axis,
        /// Of loads.
        force: Axis,
    }
}

record! {
    /// The unit of an axis.
    #[derive(Default)]
    Axis {
        /// The unit.
        unit: Phrase,
        /// One of it in SI units.
        scale: f64,
    }
}

record! {
    /// A nest at a height that was asked for.
    #[derive(Default)]
    StateAnswer {
        /// The nest there.
        state: Option<StateReport>,
        /// Why there is none.
        problem: Option<Problem>,
        /// Its half-section.
        section: Option<Cut>,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// A nest in section, heights from the lower seat up.
    Cut {
        /// Unit of every number.
        unit: Phrase,
        /// Height between the seats.
        height: f64,
        /// Largest outside diameter.
        width: f64,
        /// Its coils.
        seats: Vec<SeatCut>,
    }
}

record! {
    /// A coil in section.
    SeatCut {
        /// Seat.
        seat: usize,
        /// Bar.
        bar: f64,
        /// Mean diameter.
        mean: f64,
        /// Where it stands.
        bottom: f64,
        /// Where it ends.
        top: f64,
        /// Heights of the bar's centre on the left.
        left: Vec<f64>,
        /// Heights of the bar's centre on the right.
        right: Vec<f64>,
        /// Whether the ends are ground, and so cut by the seats.
        ground: bool,
        /// `left` or `right`.
        hand: Option<Phrase>,
        /// Whether it carries.
        touching: bool,
        /// Whether it is solid.
        solid: bool,
    }
}

record! {
    /// The tape as it stands at a reading.
    TapeStrip {
        /// Unit of every number.
        unit: Phrase,
        /// Left end.
        from: f64,
        /// Right end.
        to: f64,
        /// Graduations.
        marks: Vec<TapeMark>,
        /// Book figure.
        book: Option<f64>,
        /// Least allowed.
        least: Option<f64>,
        /// Most allowed.
        most: Option<f64>,
        /// What was read.
        reading: Option<TapeReading>,
        /// Every place at which the mark can stand.
        stops: Vec<TapeStop>,
        /// Index of the stop at which it stands.
        current: Option<usize>,
        /// The strip in words.
        name: String,
    }
}

record! {
    /// How likely each free height of a coil is by its readings.
    Bell {
        /// Unit of every height.
        unit: Phrase,
        /// The likeliest height.
        mean: f64,
        /// Heights from low to high, each with how likely it is, the likeliest as one.
        points: Vec<[f64; 2]>,
        /// Least allowed.
        #[serde(skip_serializing_if = "Option::is_none")]
        least: Option<f64>,
        /// Most allowed.
        #[serde(skip_serializing_if = "Option::is_none")]
        most: Option<f64>,
    }
}

record! {
    /// A graduation.
    TapeMark {
        /// Where.
        at: f64,
        /// 0 for the longest.
        rank: u8,
        /// Figure printed beside it.
        label: Option<String>,
    }
}

record! {
    /// What a reading says.
    TapeReading {
        /// Its mark.
        at: f64,
        /// The least it can mean.
        low: f64,
        /// The most it can mean.
        high: f64,
    }
}

record! {
    /// A place at which the mark can stand, and the text for it.
    TapeStop {
        /// Where.
        at: f64,
        /// What to write.
        text: String,
    }
}

record! {
    /// A job file that was opened.
    Opened {
        /// The job.
        job: Option<Job>,
        /// Why there is none.
        problem: Option<Problem>,
    }
}

record! {
    /// A text to write at a path of a job.
    Edit {
        /// Path of the field.
        path: String,
        /// What to write there.
        text: String,
    }
}

record! {
    /// One of several words for a field.
    Choice {
        /// The word.
        id: Phrase,
        /// Its name for people.
        name: Phrase,
        /// What it stands for, and its source.
        note: Option<String>,
    }
}

record! {
    /// The words that some fields take by the tables.
    #[derive(Default)]
    Choices {
        /// Forms of ends.
        ends: Vec<Choice>,
        /// Those of which a need has drawings: they say how many turns are dead.
        need_ends: Vec<Choice>,
        /// Steels.
        steels: Vec<Choice>,
        /// Tape classes.
        tape_classes: Vec<Choice>,
    }
}

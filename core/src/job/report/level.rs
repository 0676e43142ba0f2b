//! What follows for a frame on its nests, as it is handed out.

use super::{
    Axes, Caution, Edit, Figure, Note, Phrase, Problem, SeatReport, StackReport, Workings,
};
use serde::Serialize;

words! {
    /// Whether a frame stands.
    FrameState {
        /// It has come to rest.
        Settled,
        /// The weight is not within the nests.
        Tips,
    }
}

words! {
    /// Whether a nest bears.
    SupportState {
        /// It carries nothing.
        Loose,
        /// Its springs carry.
        Carrying,
        /// Its turns lie on each other.
        Bottomed,
    }
}

record! {
    /// What the four sides of a frame are called, after the nests there: `A left and A right`.
    FrameEnds {
        /// Where along counts up.
        ahead: String,
        /// Where along counts down.
        behind: String,
        /// Where across counts up.
        left: String,
        /// Where across counts down.
        right: String,
    }
}

record! {
    /// A frame on its nests.
    FrameReport {
        /// What its weight is called; empty of the one that is written for the frame.
        name: String,
        /// Its weight.
        weight: Figure,
        /// Whether it stands.
        state: FrameState,
        /// How it stands, in a sentence.
        sentence: String,
        /// How much higher it stands at the nest nearest the A end than at the farthest.
        lean_along: Option<Figure>,
        /// How much higher it stands at the nest farthest left than at the farthest right.
        lean_across: Option<Figure>,
        /// What its sides are called.
        ends: Option<FrameEnds>,
        /// The two leans, then load and height of one diagonal, each in words, where they are known.
        sides: Vec<Sided>,
        /// Load of the nests on that diagonal less that of the others.
        diagonal: Option<Figure>,
        /// Mean height of the nests of that diagonal less that of the others'.
        diagonal_height: Option<Figure>,
        /// How far warping lifts the corners of that diagonal; none of a rigid frame.
        warp: Option<Figure>,
        /// Mean load of all nests.
        mean: Option<Figure>,
        /// Whether the nests that carry leave it free to rock: heights are then one of many.
        rocks: bool,
        /// Coils under it that are not good and why, `A left, 7 (Outer): short`: what follows holds with them.
        not_good: Vec<String>,
        /// The nests, in the order of the job; none where it does not stand.
        supports: Vec<SupportReport>,
        /// Its points whose height counts.
        points: Vec<PointReport>,
        /// What the heights tell that were taped when the truck stood again.
        standing: Option<FrameStanding>,
        /// The weight that they tell, where every nest was taped.
        weighed: Option<Weighed>,
        /// The same under each weight of the list; those have no such list.
        weights: Vec<FrameReport>,
    }
}

words! {
    /// Whether a point of a frame is within its limits.
    PointWord {
        /// It is.
        Within,
        /// It stands below the least.
        Low,
        /// It stands above the most.
        High,
        /// Not sure enough.
        TooClose,
        /// There is no limit.
        None,
    }
}

record! {
    /// A point of a frame whose height counts.
    PointReport {
        /// What it is called.
        name: String,
        /// How high it stands.
        height: Figure,
        /// The least that is allowed.
        least: Option<String>,
        /// The most.
        most: Option<String>,
        /// The word.
        word: PointWord,
        /// The word as a person reads it.
        title: Phrase,
        /// Probability that it is within its limits.
        p_within: Option<f64>,
    }
}

words! {
    /// What taped heights tell of a frame.
    StandingWord {
        /// Doubts explain all differences.
        Agrees,
        /// One cause explains them.
        OneCause,
        /// No single cause does.
        Unexplained,
    }
}

record! {
    /// What taped heights tell of a frame.
    FrameStanding {
        /// The word.
        word: StandingWord,
        /// The one cause that explains them best.
        cause: Option<String>,
        /// The same in a sentence or two.
        sentence: String,
        /// Each height that was taped.
        heights: Vec<NestStanding>,
    }
}

record! {
    /// A taped height beside the one that was worked out.
    NestStanding {
        /// Of which nest or point.
        of: String,
        /// As worked out, with its shim.
        #[serde(rename = "reckoned")]
        computed: Figure,
        /// As taped.
        taped: Figure,
        /// Taped less worked out.
        difference: Figure,
        /// Whether doubt explains the difference.
        agrees: bool,
    }
}

record! {
    /// The weight that taped heights tell.
    Weighed {
        /// All of it.
        weight: Figure,
        /// Where it acts, towards the A end.
        along: Figure,
        /// Where it acts, to the left.
        across: Figure,
        /// What each nest carries, in the order of the frame.
        loads: Vec<Figure>,
        /// The weight beside the one that was written.
        sentence: String,
    }
}

record! {
    /// A signed figure in words, for a reader: `Lower at A left and A right by`, `9/64 in`.
    Sided {
        /// Which side it is of.
        name: String,
        /// How much, without a sign.
        text: String,
    }
}

impl Sided {
    /// Of a figure, with its name where it is above zero and where it is below.
    pub(crate) fn of(figure: &Figure, [above, below]: [String; 2]) -> Self {
        let text = figure.text.trim_start_matches('−').to_owned();
        Self { name: if figure.si < 0.0 { below } else { above }, text }
    }
}

record! {
    /// A nest under the settled frame.
    SupportReport {
        /// Which nest.
        nest: String,
        /// Height between its seats.
        height: Figure,
        /// What is left of it until the nest is solid; below zero where it is pressed past that.
        to_solid: Option<Figure>,
        /// What it carries.
        load: Figure,
        /// The same as a part of the mean of all nests.
        share: Figure,
        /// Whether it bears.
        state: SupportState,
        /// Its share in a sentence.
        sentence: String,
    }
}

record! {
    /// Everything about a frame, its shims and its wheels.
    #[derive(Default)]
    LevelReport {
        /// How it stands.
        frame: Option<FrameReport>,
        /// Its plan, to be drawn.
        plan: Option<Plan>,
        /// The same under each weight of the list.
        plans: Vec<Plan>,
        /// What lies over and under its nests, of those that have anything.
        stacks: Vec<StackReport>,
        /// The shims that even it out.
        shims: Option<ShimReport>,
        /// What stands on the track: wheels, or the boxes where no axles are given.
        wheels: Vec<Wheel>,
        /// How deep a dip can be tried.
        dips: Option<Dips>,
        /// Nests with a box that does not slide.
        seized: Vec<String>,
        /// What of frame and nests cannot be used, and where it stands.
        problems: Vec<Problem>,
        /// What was assumed, or left out and why.
        notes: Vec<Note>,
        /// What can hurt somebody at this work.
        cautions: Vec<Caution>,
        /// Units for scales.
        axes: Axes,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// The plan of a frame, along to the A end, across to the left.
    Plan {
        /// Unit of every length.
        unit: Phrase,
        /// Where the weight acts, along.
        centre_along: f64,
        /// Where the weight acts, across.
        centre_across: f64,
        /// The nests.
        nests: Vec<PlanNest>,
        /// Rise per length along, of the settled frame.
        slope_along: f64,
        /// Rise per length across, of the settled frame.
        slope_across: f64,
    }
}

record! {
    /// A nest on the plan.
    PlanNest {
        /// Which nest.
        nest: String,
        /// Index of its support in the job.
        support: usize,
        /// Where it stands, along.
        along: f64,
        /// Where it stands, across.
        across: f64,
        /// Radius of a circle whose area is as its load, as a part of that of the mean load.
        radius: f64,
    }
}

record! {
    /// Which shims even a frame out, and how far.
    ShimReport {
        /// What was aimed at: `loads` or `level`.
        aim: Phrase,
        /// Coils under the frame that are not good and why: the plan is made for them.
        not_good: Vec<String>,
        /// What the greatest deviation is, in words.
        what: Phrase,
        /// Greatest deviation as the frame stands.
        before: Figure,
        /// Greatest deviation with the plan.
        after: Figure,
        /// How far the readings leave a nest's share in doubt.
        doubt: Option<Figure>,
        /// Whether the plan gains more than the readings can tell.
        told: bool,
        /// What to do, in this order.
        steps: Vec<ShimStep>,
        /// What remains, and why it is no better.
        remains: String,
        /// Whether no plan with these shims is better.
        exact: bool,
        /// How much better a plan could still be.
        gap: Option<Figure>,
        /// The nests with the plan.
        supports: Vec<SupportReport>,
        /// How much higher the frame then stands at the A end.
        lean_along: Figure,
        /// How much higher the frame then stands on the left.
        lean_across: Figure,
        /// The two leans in words.
        sides: Vec<Sided>,
        /// What to write into the job once it is done.
        edits: Vec<Edit>,
    }
}

record! {
    /// One thing to do with shims.
    ShimStep {
        /// Which nest.
        nest: String,
        /// What to do there: `take out 1/8 in, put in 1/4 in and 1/16 in`.
        text: String,
        /// What that nest's load gains by it.
        gains: Figure,
        /// Greatest deviation after it.
        after: Figure,
        /// Whether it gains less than the readings can tell.
        within_doubt: bool,
    }
}

record! {
    /// A wheel on level track, or a box.
    Wheel {
        /// Its name.
        name: String,
        /// What it carries.
        load: Figure,
    }
}

record! {
    /// How deep a dip can be tried.
    Dips {
        /// The deepest, in the unit.
        most: f64,
        /// Step.
        step: f64,
        /// Unit.
        unit: Phrase,
    }
}

record! {
    /// A wheel in a dip.
    #[derive(Default)]
    DipReport {
        /// How deep it is.
        dip: Option<Figure>,
        /// Coils under the frame that are not good and why: the loads are theirs.
        not_good: Vec<String>,
        /// What each wheel keeps.
        wheels: Vec<DippedWheel>,
        /// The greatest unloading in a sentence.
        sentence: String,
        /// The same with one box stuck.
        stuck: Option<StuckReport>,
        /// The least dip at which a wheel lifts, and which.
        lifts: Option<Figure>,
        /// The same in a sentence.
        lifts_sentence: String,
        /// What a published test allows to be lost.
        limit: Option<Figure>,
        /// That this is a screening.
        screening: Phrase,
        /// Why there is no answer.
        problem: Option<Problem>,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// A dip with a box stuck at its height.
    StuckReport {
        /// Which nest's.
        nest: String,
        /// What each wheel keeps.
        wheels: Vec<DippedWheel>,
        /// The greatest unloading in a sentence.
        sentence: String,
        /// The least dip at which a wheel lifts.
        lifts: Option<Figure>,
    }
}

record! {
    /// What a wheel keeps.
    DippedWheel {
        /// Its name.
        name: String,
        /// What it carries on level track.
        at_rest: Figure,
        /// What it carries now.
        load: Figure,
        /// The same as a part of what it carries on level track.
        kept: Option<Figure>,
        /// Whether it loses more than the published limit.
        over: bool,
    }
}

record! {
    /// Which coil belongs in which seat.
    #[derive(Default)]
    MatchReport {
        /// The coils on the bench, in the order of the job.
        bench: Vec<SeatReport>,
        /// The nests with their coils.
        nests: Vec<MatchedNest>,
        /// Height at which loads are compared.
        height: Option<Figure>,
        /// Greatest load less the least at that height, as the coils are placed now.
        before: Option<Figure>,
        /// The same as they would be placed.
        after: Option<Figure>,
        /// How much better another placing could still be; none where this is the best.
        gap: Option<Figure>,
        /// What to do, in sentences.
        moves: Vec<String>,
        /// What it comes to, and what one new coil would buy.
        sentences: Vec<String>,
        /// Marks of the coils left over.
        left_over: Vec<String>,
        /// Coils that are not used, and why: `7 (Outer): short`.
        set_aside: Vec<String>,
        /// Coils that are used though they are not good, and why.
        not_good: Vec<String>,
        /// What of bench and nests cannot be used, and where it stands.
        problems: Vec<Problem>,
        /// What was assumed, or left out and why.
        notes: Vec<Note>,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// A nest with the coils that belong in it.
    MatchedNest {
        /// Which nest.
        nest: String,
        /// What it would carry at the height of comparison.
        load: Figure,
        /// The coils, in the order of its seats.
        seats: Vec<MatchedSeat>,
    }
}

record! {
    /// A coil that belongs in a seat.
    MatchedSeat {
        /// Its drawing's name.
        name: String,
        /// The mark painted on it.
        label: String,
        /// Path of where it is now: `nests[0].seats[1]` or `bench[3]`.
        from: String,
        /// Whether it is there already.
        stays: bool,
    }
}

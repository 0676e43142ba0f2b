//! What follows for a replacement, an order and a need, as it is handed out.

use super::{Axes, Caution, Figure, Note, Phrase, Problem, Workings};
use crate::job::input::Drawing;
use serde::Serialize;

words! {
    /// How a requirement is met, or all of them together.
    Met {
        /// By every spring within the tolerances.
        Throughout,
        /// By the nominal spring, not by every one within the tolerances.
        AtNominal,
        /// As drawn, but tolerances or something else that it rests on are not given.
        AsDrawn,
        /// Not even by the nominal spring.
        NotMet,
        /// Figures are missing.
        CannotTell,
    }
}

record! {
    /// What may replace a coil, and what to write to a spring maker.
    #[derive(Default)]
    ReplaceReport {
        /// Name of the drawing that is to be replaced.
        original: Option<String>,
        /// The springs that may replace it, in the order of the job.
        candidates: Vec<CandidateReport>,
        /// All of them as one nest for the whole nest, where that is asked.
        together: Option<TogetherReport>,
        /// The order of the original as it was.
        order: Option<OrderReport>,
        /// What of it cannot be used, and where it stands.
        problems: Vec<Problem>,
        /// What was assumed, or left out and why.
        notes: Vec<Note>,
        /// What can hurt somebody at this work.
        cautions: Vec<Caution>,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// A spring that may replace another.
    CandidateReport {
        /// Its name.
        name: String,
        /// Its place in the job's list.
        index: usize,
        /// Whether it is a true replacement; none where nothing can be said of it.
        met: Option<Met>,
        /// The same as a person reads it.
        title: Phrase,
        /// What it comes to, in a sentence.
        sentence: String,
        /// Requirement by requirement.
        lines: Vec<LineReport>,
        /// What it does to its nest.
        nest: Option<NestSwapReport>,
        /// What it does to the frame.
        frame: Option<FrameSwapReport>,
        /// What to write to a spring maker.
        order: OrderReport,
    }
}

record! {
    /// Several springs as one nest.
    TogetherReport {
        /// Which nest they replace.
        nest: String,
        /// The coils that are there, the widest first.
        there: Vec<String>,
        /// Those that are offered, the widest first.
        offered: Vec<String>,
        /// Whether they are a true replacement; none where nothing can be said of them.
        met: Option<Met>,
        /// The same as a person reads it.
        title: Phrase,
        /// What it comes to, in a sentence.
        sentence: String,
        /// Requirement by requirement, first of the nest, then coil by coil.
        lines: Vec<LineReport>,
        /// What they do to the nest.
        swap: Option<NestSwapReport>,
        /// What they do to the frame.
        frame: Option<FrameSwapReport>,
    }
}

record! {
    /// A requirement.
    LineReport {
        /// What it is about, in a word that stays: `rate`.
        code: Phrase,
        /// The same for people.
        name: String,
        /// What is asked.
        asked: String,
        /// What is offered.
        offered: String,
        /// The same as drawn in SI units, where it is a number.
        offered_si: Option<f64>,
        /// How it is met.
        met: Met,
        /// The same as a person reads it.
        title: Phrase,
        /// Why, in a sentence.
        why: String,
        /// Place of the candidate that it is asked of in the job's list; none where a nest is.
        candidate: Option<usize>,
        /// Why it need not be met, where it is waived.
        waived: Option<String>,
        /// For whom it is waived: `this candidate alone`.
        waived_for: Option<Phrase>,
        /// Key of its working.
        working: Option<String>,
    }
}

record! {
    /// A nest before and after.
    NestSwapReport {
        /// Which nest.
        nest: String,
        /// What it amounts to.
        sentence: String,
        /// Its coils that were not found good, and why.
        not_good: Vec<String>,
        /// Height under its load, with the original.
        height_before: Figure,
        /// The same with the candidate.
        height_after: Figure,
        /// Its coils, the widest first.
        coils: Vec<SwappedCoil>,
        /// The coil that stops it, with the original: its name, and whether it is the original.
        stopped_by: Option<String>,
        /// The coils that may stop it, with the candidate: their names, and which is the candidate.
        stops: Vec<String>,
    }
}

record! {
    /// A coil of a nest before and after.
    SwappedCoil {
        /// Its name, with the original; that of the candidate where no coil stood in its place.
        name: String,
        /// Name of the candidate, where it takes the place of this coil.
        replaced_by: Option<String>,
        /// Its share of the nest's load, with the original.
        share_before: Option<Figure>,
        /// The same with the candidate.
        share_after: Option<Figure>,
        /// Its stress, with the original.
        stress_before: Option<Figure>,
        /// The same with the candidate.
        stress_after: Option<Figure>,
    }
}

record! {
    /// A frame before and after.
    FrameSwapReport {
        /// What it amounts to.
        sentence: String,
        /// Coils under it that were not found good, and why.
        not_good: Vec<String>,
        /// The greatest part of the mean by which a load differs from it, with the original.
        before: Figure,
        /// The same with the candidate.
        after: Option<Figure>,
    }
}

record! {
    /// What to write to a spring maker.
    #[derive(Default)]
    OrderReport {
        /// What is ordered.
        title: String,
        /// The verdict on what is ordered; none of the original as it was.
        verdict: Option<OrderVerdict>,
        /// Item by item.
        items: Vec<OrderItem>,
        /// What has to be settled first; what is asked of several items stands together.
        questions: Vec<String>,
        /// What is left out because nobody asks for it.
        left_out: Option<String>,
        /// Whose approval it is subject to.
        subject: Phrase,
        /// The whole as plain text.
        text: String,
    }
}

record! {
    /// The verdict on a spring that is to be ordered.
    OrderVerdict {
        /// Whether it is a replacement; none where nothing can be said of it.
        met: Option<Met>,
        /// The same as a person reads it.
        title: Phrase,
        /// What it comes to, in a sentence.
        sentence: String,
        /// What is waived, each with the reason.
        waived: Vec<String>,
        /// Why it is not to be ordered or signed for as it is.
        refused: Option<Phrase>,
    }
}

record! {
    /// An item of an order.
    OrderItem {
        /// What it is.
        name: String,
        /// What is offered, with its tolerance.
        offered: Option<String>,
        /// What is asked, with its limits.
        asked: Option<String>,
        /// What has to be settled first.
        question: Option<String>,
    }
}

record! {
    /// Drawings for a need.
    #[derive(Default)]
    SizingReport {
        /// Drawings that meet it, the best first.
        designs: Vec<DesignReport>,
        /// Pairs of drawings that meet it, one inside the other, the best first.
        pairs: Vec<PairReport>,
        /// Bars of which none meets it, and why.
        refused: Vec<RefusedBar>,
        /// Every bar with every count of turns.
        map: Option<SizingMap>,
        /// What it comes to, in a sentence.
        sentence: String,
        /// What of the need cannot be used, and where it stands.
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
    /// A drawing that meets a need.
    DesignReport {
        /// The drawing, as a job holds it.
        drawing: Drawing,
        /// Bar.
        bar: Figure,
        /// Mean diameter.
        mean: Figure,
        /// Outside diameter.
        outside: Figure,
        /// Total turns.
        turns: Figure,
        /// Free height.
        free: Figure,
        /// Solid height.
        solid: Figure,
        /// Rate.
        rate: Figure,
        /// Load at the height that was asked for.
        load: Figure,
        /// Stress at the greatest load.
        stress: Figure,
        /// Stress at solid.
        stress_solid: Figure,
        /// Mass.
        mass: Figure,
        /// Which limit it is nearest to, and how near.
        nearest: String,
    }
}

record! {
    /// A coil inside another that together meet a need.
    PairReport {
        /// The outer one.
        outer: DesignReport,
        /// The inner one.
        inner: DesignReport,
        /// The outer one's share of the load.
        share: Figure,
        /// Mass of both.
        mass: Figure,
        /// How near their stresses and solid heights are, in a sentence.
        sentence: String,
    }
}

record! {
    /// A bar of which no coil meets a need.
    RefusedBar {
        /// The bar.
        bar: String,
        /// Why.
        why: String,
    }
}

record! {
    /// Every bar with every count of turns.
    SizingMap {
        /// The bars, as a person reads them.
        bars: Vec<String>,
        /// The counts of active turns.
        turns: Vec<f64>,
        /// The limits that stand against some of them, each a short name.
        limits: Vec<String>,
        /// Bar by bar, the turns of each together: 0 where the coil meets the need, else the place of
        /// the limit that it fails worst, counted from 1.
        cells: Vec<usize>,
        /// Where each design lies.
        designs: Vec<DesignPlace>,
    }
}

record! {
    /// Where a design lies in a map.
    DesignPlace {
        /// Place of its bar in the list of bars.
        bar: usize,
        /// Place of its count of active turns in the list of turns.
        turns: usize,
    }
}

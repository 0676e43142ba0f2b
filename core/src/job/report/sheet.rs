//! The drawing sheet of a coil, as it is handed out.

use super::{Axes, CoilReport, Cut, Figure, Phrase, Problem, Workings};
use serde::Serialize;

record! {
    /// All that follows from the drawing of a coil.
    #[derive(Default)]
    Sheet {
        /// What nests go by.
        coil: CoilReport,
        /// Units for scales and axes.
        axes: Axes,
        /// The free coil in section.
        section: Option<Cut>,
        /// Free height from the book.
        free: Option<Figure>,
        /// The least solid height that an authority gives, for the stress at solid, where it is below
        /// the one that the coil is taken to stop at.
        solid_least: Option<Figure>,
        /// Free height less solid height.
        travel: Option<Figure>,
        /// Bar diameter.
        bar: Option<Figure>,
        /// Mean diameter.
        mean: Option<Figure>,
        /// Outside diameter.
        outside: Option<Figure>,
        /// Inside diameter.
        inside: Option<Figure>,
        /// Pitch angle of the free coil.
        pitch_angle: Option<Figure>,
        /// Length of the bar along the helix, dead turns and all.
        bar_length: Option<Figure>,
        /// Mass of the coil.
        mass: Option<Figure>,
        /// Growth of the diameter at solid, ends held.
        growth_held: Option<Figure>,
        /// Growth of the diameter at solid, ends free to turn.
        growth_free: Option<Figure>,
        /// What its ends do between plates, beside the textbook's count.
        ends: Option<EndsReport>,
        /// Sum of the least gaps between the active turns: for a load at rest, and more where two
        /// loads are given.
        least_gaps: Option<Figure>,
        /// Solid height and the least gaps: the lowest height to work at.
        least_height: Option<Figure>,
        /// Sideways rate at half the travel.
        lateral_rate: Option<Figure>,
        /// First frequency at which it swings within itself, both ends kept.
        surge: Option<Figure>,
        /// Whether it bends aside as a column.
        buckling: Option<Buckling>,
        /// Its steel, as the tables have it.
        steel: Option<SteelRow>,
        /// What its steel bears, and how near to that it comes at solid.
        standing: Option<Standing>,
        /// The two loads that it works between.
        duty: Vec<DutyState>,
        /// How long it lasts between them.
        fatigue: Option<Fatigue>,
        /// How far its rate can be trusted.
        trust: Option<Trust>,
        /// What standards allow a new coil of this drawing.
        new_spring: Vec<Allowance>,
        /// What a press showed.
        press: Option<Press>,
        /// What is unusual about its proportions.
        remarks: Vec<String>,
    }
}

record! {
    /// What the ends do between plates: how the dead turns grow with the load.
    EndsReport {
        /// From light to near solid.
        stages: Vec<EndsStage>,
        /// Where that leaves the count and its ±, and what settles it.
        sentence: String,
    }
}

record! {
    /// A part of the travel.
    EndsStage {
        /// Which.
        name: Phrase,
        /// Dead turns, from the least to the most of the computed springs.
        dead: Figure,
        /// The rate with the least of them.
        least: Figure,
        /// The rate with the most of them.
        most: Figure,
    }
}

record! {
    /// A coil as a column.
    Buckling {
        /// Free height over mean diameter.
        slenderness: Figure,
        /// The greatest free height that never bends aside, its ends kept so.
        stable_free: Figure,
        /// The height at which it bends aside.
        height: Option<Figure>,
        /// What it amounts to.
        sentence: String,
    }
}

record! {
    /// A steel of the tables.
    SteelRow {
        /// Its word in a job file.
        id: Phrase,
        /// Its name for people.
        name: Phrase,
        /// Where its row stands.
        row: Option<Phrase>,
        /// Shear modulus.
        shear_modulus: Figure,
        /// Young's modulus.
        youngs_modulus: Figure,
        /// Density.
        density: Option<Figure>,
    }
}

record! {
    /// A coil at solid beside what its steel bears.
    Standing {
        /// Tensile strength of the steel in this size.
        tensile: Option<Figure>,
        /// The stress that may be borne at rest.
        allowable: Option<Figure>,
        /// The stress at solid that it is compared with, by the factor that the allowable one is meant
        /// with; its working names the factor.
        stress: Option<Figure>,
        /// That factor by its name; it is behind `allowable` and `stress`.
        factor: Option<Phrase>,
        /// What is left of the allowable stress.
        reserve: Option<Figure>,
        /// Whether a new coil, of wire that has the least strength, takes a set when it is closed. Of a
        /// coil in service it says nothing.
        sets: Option<bool>,
        /// What it amounts to, or why it cannot be told.
        sentence: String,
    }
}

record! {
    /// A coil under one of its two loads.
    DutyState {
        /// The load.
        load: Figure,
        /// The height there.
        height: Figure,
        /// Uncorrected stress.
        stress: Figure,
        /// Stress at the inside of the coil, by Bergsträsser's factor.
        stress_corrected: Figure,
        /// Growth of the outside diameter, the larger of held and free ends.
        growth: Option<Figure>,
        /// Room between two turns.
        gap: Option<Figure>,
    }
}

record! {
    /// A coil between two loads.
    Fatigue {
        /// Half the range of stress, with Bergsträsser's factor.
        amplitude: Option<Figure>,
        /// Its middle, with Bergsträsser's factor.
        mean: Option<Figure>,
        /// The factor of safety by each criterion.
        safety: Vec<Safety>,
        /// What it amounts to, or why it cannot be told.
        sentence: String,
    }
}

record! {
    /// A factor of safety.
    Safety {
        /// Whose criterion.
        name: Phrase,
        /// The factor.
        factor: Figure,
    }
}

record! {
    /// How far a rate can be trusted.
    Trust {
        /// The rate with its doubt, by root sum of squares.
        rate: Option<Figure>,
        /// The least that it can be within the tolerances.
        least: Option<Figure>,
        /// The most.
        most: Option<Figure>,
        /// What each number has to do with the doubt.
        parts: Vec<Doubt>,
        /// Which measurement is worth making better, or which tolerances leave no coil.
        sentence: String,
    }
}

record! {
    /// What one number has to do with the doubt of a rate.
    Doubt {
        /// The number.
        name: String,
        /// Its own doubt.
        own: String,
        /// By how many per cent the rate changes where the number changes by one.
        sensitivity: Figure,
        /// The doubt that the rate would have from it alone.
        doubt: Figure,
        /// Its share of the variance.
        share: Figure,
    }
}

record! {
    /// How far a standard lets a new coil be off.
    Allowance {
        /// In what.
        name: String,
        /// Half-width, in the middle grade.
        half_width: Option<Figure>,
        /// Why there is none, and where to look.
        sentence: Option<String>,
    }
}

record! {
    /// What a press showed.
    #[derive(Default)]
    Press {
        /// Rate, by least squares.
        rate: Option<Figure>,
        /// Free height that the line through the readings comes to.
        free: Option<Figure>,
        /// Active turns that the rate implies.
        active_turns: Option<Figure>,
        /// Scatter of the readings about the line.
        scatter: Option<Figure>,
        /// Height at which turns begin to close.
        closing: Option<Figure>,
        /// Rate below it.
        closed_rate: Option<Figure>,
        /// How much lower the coil stood at one load on the way back.
        hysteresis: Option<Figure>,
        /// The readings of the way down, with what each is off the line.
        rows: Vec<PressRow>,
        /// What it amounts to, or why there is no line.
        sentences: Vec<String>,
    }
}

record! {
    /// A reading on a press beside the line.
    PressRow {
        /// Height.
        height: Figure,
        /// Load.
        load: Figure,
        /// Load less that of the line.
        off: Figure,
    }
}

record! {
    /// The drawing sheet of a coil that was asked for.
    #[derive(Default)]
    SheetAnswer {
        /// The sheet.
        sheet: Option<Sheet>,
        /// Why there is none.
        problem: Option<Problem>,
        /// How each figure came about.
        workings: Workings,
    }
}

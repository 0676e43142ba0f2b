//! The drawing sheet of a coil, as it is handed out.

use super::{Axes, CoilReport, Cut, Figure, Problem, Workings};
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
        #[serde(skip_serializing_if = "Option::is_none")]
        section: Option<Cut>,
        /// Free height from the book.
        #[serde(skip_serializing_if = "Option::is_none")]
        free: Option<Figure>,
        /// The least solid height that an authority gives, for the stress at solid, where it is below
        /// the one that the coil is taken to stop at.
        #[serde(skip_serializing_if = "Option::is_none")]
        solid_least: Option<Figure>,
        /// Free height less solid height.
        #[serde(skip_serializing_if = "Option::is_none")]
        travel: Option<Figure>,
        /// Bar diameter.
        #[serde(skip_serializing_if = "Option::is_none")]
        bar: Option<Figure>,
        /// Mean diameter.
        #[serde(skip_serializing_if = "Option::is_none")]
        mean: Option<Figure>,
        /// Outside diameter.
        #[serde(skip_serializing_if = "Option::is_none")]
        outside: Option<Figure>,
        /// Inside diameter.
        #[serde(skip_serializing_if = "Option::is_none")]
        inside: Option<Figure>,
        /// Pitch angle of the free coil.
        #[serde(skip_serializing_if = "Option::is_none")]
        pitch_angle: Option<Figure>,
        /// Length of the bar along the helix, dead turns and all.
        #[serde(skip_serializing_if = "Option::is_none")]
        bar_length: Option<Figure>,
        /// Mass of the coil.
        #[serde(skip_serializing_if = "Option::is_none")]
        mass: Option<Figure>,
        /// Growth of the diameter at solid, ends held.
        #[serde(skip_serializing_if = "Option::is_none")]
        growth_held: Option<Figure>,
        /// Growth of the diameter at solid, ends free to turn.
        #[serde(skip_serializing_if = "Option::is_none")]
        growth_free: Option<Figure>,
        /// What its ends do between plates, beside the textbook's count.
        #[serde(skip_serializing_if = "Option::is_none")]
        ends: Option<EndsReport>,
        /// Sum of the least gaps between the active turns: for a load at rest, and more where two
        /// loads are given.
        #[serde(skip_serializing_if = "Option::is_none")]
        least_gaps: Option<Figure>,
        /// Solid height and the least gaps: the lowest height to work at.
        #[serde(skip_serializing_if = "Option::is_none")]
        least_height: Option<Figure>,
        /// Sideways rate at half the travel.
        #[serde(skip_serializing_if = "Option::is_none")]
        lateral_rate: Option<Figure>,
        /// First frequency at which it swings within itself, both ends kept.
        #[serde(skip_serializing_if = "Option::is_none")]
        surge: Option<Figure>,
        /// Whether it bends aside as a column.
        #[serde(skip_serializing_if = "Option::is_none")]
        buckling: Option<Buckling>,
        /// Its steel, as the tables have it.
        #[serde(skip_serializing_if = "Option::is_none")]
        steel: Option<SteelRow>,
        /// What its steel bears, and how near to that it comes at solid.
        #[serde(skip_serializing_if = "Option::is_none")]
        standing: Option<Standing>,
        /// The two loads that it works between.
        duty: Vec<DutyState>,
        /// How long it lasts between them.
        #[serde(skip_serializing_if = "Option::is_none")]
        fatigue: Option<Fatigue>,
        /// How far its rate can be trusted.
        #[serde(skip_serializing_if = "Option::is_none")]
        trust: Option<Trust>,
        /// What standards allow a new coil of this drawing.
        new_spring: Vec<Allowance>,
        /// What a press showed.
        #[serde(skip_serializing_if = "Option::is_none")]
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
        name: &'static str,
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
        #[serde(skip_serializing_if = "Option::is_none")]
        height: Option<Figure>,
        /// What it amounts to.
        sentence: String,
    }
}

record! {
    /// A steel of the tables.
    SteelRow {
        /// Its word in a job file.
        id: &'static str,
        /// Its name for people.
        name: &'static str,
        /// Where its row stands.
        #[serde(skip_serializing_if = "Option::is_none")]
        row: Option<&'static str>,
        /// Shear modulus.
        shear_modulus: Figure,
        /// Young's modulus.
        youngs_modulus: Figure,
        /// Density.
        #[serde(skip_serializing_if = "Option::is_none")]
        density: Option<Figure>,
    }
}

record! {
    /// A coil at solid beside what its steel bears.
    Standing {
        /// Tensile strength of the steel in this size.
        #[serde(skip_serializing_if = "Option::is_none")]
        tensile: Option<Figure>,
        /// The stress that may be borne at rest.
        #[serde(skip_serializing_if = "Option::is_none")]
        allowable: Option<Figure>,
        /// The stress at solid that it is compared with, by the factor that the allowable one is meant
        /// with; its working names the factor.
        #[serde(skip_serializing_if = "Option::is_none")]
        stress: Option<Figure>,
        /// That factor by its name; it is behind `allowable` and `stress`.
        #[serde(skip_serializing_if = "Option::is_none")]
        factor: Option<&'static str>,
        /// What is left of the allowable stress.
        #[serde(skip_serializing_if = "Option::is_none")]
        reserve: Option<Figure>,
        /// Whether a new coil, of wire that has the least strength, takes a set when it is closed. Of a
        /// coil in service it says nothing.
        #[serde(skip_serializing_if = "Option::is_none")]
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
        #[serde(skip_serializing_if = "Option::is_none")]
        growth: Option<Figure>,
        /// Room between two turns.
        #[serde(skip_serializing_if = "Option::is_none")]
        gap: Option<Figure>,
    }
}

record! {
    /// A coil between two loads.
    Fatigue {
        /// Half the range of stress, with Bergsträsser's factor.
        #[serde(skip_serializing_if = "Option::is_none")]
        amplitude: Option<Figure>,
        /// Its middle, with Bergsträsser's factor.
        #[serde(skip_serializing_if = "Option::is_none")]
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
        name: &'static str,
        /// The factor.
        factor: Figure,
    }
}

record! {
    /// How far a rate can be trusted.
    Trust {
        /// The rate with its doubt, by root sum of squares.
        #[serde(skip_serializing_if = "Option::is_none")]
        rate: Option<Figure>,
        /// The least that it can be within the tolerances.
        #[serde(skip_serializing_if = "Option::is_none")]
        least: Option<Figure>,
        /// The most.
        #[serde(skip_serializing_if = "Option::is_none")]
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
        #[serde(skip_serializing_if = "Option::is_none")]
        half_width: Option<Figure>,
        /// Why there is none, and where to look.
        #[serde(skip_serializing_if = "Option::is_none")]
        sentence: Option<String>,
    }
}

record! {
    /// What a press showed.
    #[derive(Default)]
    Press {
        /// Rate, by least squares.
        #[serde(skip_serializing_if = "Option::is_none")]
        rate: Option<Figure>,
        /// Free height that the line through the readings comes to.
        #[serde(skip_serializing_if = "Option::is_none")]
        free: Option<Figure>,
        /// Active turns that the rate implies.
        #[serde(skip_serializing_if = "Option::is_none")]
        active_turns: Option<Figure>,
        /// Scatter of the readings about the line.
        #[serde(skip_serializing_if = "Option::is_none")]
        scatter: Option<Figure>,
        /// Height at which turns begin to close.
        #[serde(skip_serializing_if = "Option::is_none")]
        closing: Option<Figure>,
        /// Rate below it.
        #[serde(skip_serializing_if = "Option::is_none")]
        closed_rate: Option<Figure>,
        /// How much lower the coil stood at one load on the way back.
        #[serde(skip_serializing_if = "Option::is_none")]
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
        #[serde(skip_serializing_if = "Option::is_none")]
        sheet: Option<Sheet>,
        /// Why there is none.
        #[serde(skip_serializing_if = "Option::is_none")]
        problem: Option<Problem>,
        /// How each figure came about.
        workings: Workings,
    }
}

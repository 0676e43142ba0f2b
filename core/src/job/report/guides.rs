//! Boxes in their guides.

use super::{Figure, Phrase};
use serde::Serialize;

words! {
    /// The word of a box in its guides.
    GuidesWord {
        /// Its clearance is within the limits.
        Free,
        /// It has less than the least.
        Tight,
        /// It has more than the most.
        Loose,
        /// Not sure enough.
        TooClose,
        /// It has none.
        Seized,
        /// There is no limit, or it is not known.
        None,
    }
}

record! {
    /// What follows for a box in its guides.
    #[derive(Default)]
    GuidesReport {
        /// What the box is called.
        name: String,
        /// Whether the guides keep it across the frame.
        across: bool,
        /// The clearance in all at each height, top to bottom.
        at: Vec<Figure>,
        /// The least of them.
        least: Option<Figure>,
        /// The least on the one side and on the other, with the box in the middle of the opening.
        sides: Vec<Figure>,
        /// How much more there is at the top than at the bottom.
        taper: Option<Figure>,
        /// How much narrower the way is in the middle than at its ends.
        pinch: Option<Figure>,
        /// The word; none where the sizes do not say.
        word: Option<GuidesWord>,
        /// The word as a person reads it.
        title: Phrase,
        /// Probability that the clearance is within the limits at every height.
        p_within: Option<f64>,
        /// What it amounts to, in a sentence or two.
        sentence: String,
        /// How thick two new liners of one thickness are to be.
        liner: Option<Figure>,
        /// How thick a new liner is to be on the first side alone.
        first_liner: Option<Figure>,
        /// The same of the second side.
        second_liner: Option<Figure>,
        /// What the stock has for it, where it is not free.
        from_stock: Option<StockLiners>,
        /// What a regulation prints beside it, which is no limit.
        yardstick: Option<Phrase>,
        /// How it is drawn.
        drawing: Option<GuidesDrawing>,
    }
}

record! {
    /// Liners of the stock that bring a box right.
    StockLiners {
        /// The new liner of the first side; none where the old one stays. Where none of the stock does it there is
        /// none on the second side either.
        first: Option<String>,
        /// The same of the second side.
        second: Option<String>,
        /// The least clearance with them.
        clearance: Option<String>,
        /// Whether the box would be called free with them.
        surely: bool,
        /// What to put where, in a sentence.
        sentence: String,
    }
}

record! {
    /// A box between its guides, in the unit of the job.
    GuidesDrawing {
        /// Greatest width of the box.
        width: f64,
        /// Of the one side and of the other, how far the face of the liner is from the middle of the
        /// opening, at each height.
        faces: Vec<Vec<f64>>,
        /// Of each side the thickness of the liner at each height.
        liners: Vec<Vec<f64>>,
        /// The height at which the box has least, counted from the top.
        binds: usize,
        /// How many times as wide clearances are drawn.
        exaggerated: f64,
        /// The same as a person reads it.
        drawn: String,
    }
}

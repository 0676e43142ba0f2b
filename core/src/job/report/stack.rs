//! What lies over and under a nest.

use super::Figure;
use serde::Serialize;

record! {
    /// What lies over and under a nest.
    StackReport {
        /// Of which nest.
        nest: String,
        /// Its layers, in the order of the job.
        layers: Vec<LayerReport>,
        /// All of it without load.
        thickness: Figure,
        /// Height from the lower seat to the frame: under the frame, or at the working point of the nest.
        height: Option<Figure>,
        /// All that lies there between frame and lower seat, top to bottom, as thick as it is under load.
        parts: Vec<StackPart>,
        /// What it amounts to, in a sentence.
        sentence: String,
    }
}

words! {
    /// What lies between frame and lower seat.
    StackPartKind {
        /// A pad, plate or shim of the stack.
        Layer,
        /// The nest.
        Nest,
        /// The shim that levels the frame.
        Shim,
    }
}

record! {
    /// One of the parts between frame and lower seat.
    StackPart {
        /// What it is.
        name: String,
        /// Its kind.
        kind: StackPartKind,
        /// How thick it is.
        thickness: String,
        /// The same as a part of all of them, to be drawn.
        part: f64,
    }
}

record! {
    /// A pad, plate or shim.
    LayerReport {
        /// What it is.
        name: String,
        /// Whether it lies over the nest.
        above: bool,
        /// Its thickness without load.
        thickness: Option<Figure>,
        /// By how much it is thinner than new.
        lost: Option<Figure>,
        /// What its nest would carry more under the frame with a new one.
        load: Option<Figure>,
        /// What that does, in a sentence or two; empty of one that is as new.
        sentence: String,
    }
}

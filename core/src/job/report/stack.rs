//! What lies over and under a nest.

use super::Figure;
use serde::Serialize;

record! {
    /// What lies over and under a nest.
    StackReport {
        /// Its layers, in the order of the job.
        layers: Vec<LayerReport>,
        /// All of it without load.
        thickness: Figure,
        /// Height from the lower seat to the frame, at the working point of the nest.
        height: Option<Figure>,
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

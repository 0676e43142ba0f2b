//! What the coils of a truck have lost since an earlier job, as it is handed out.

use super::{Figure, Phrase, Workings};
use serde::Serialize;

words! {
    /// What two measurements of a coil say of it.
    SinceWord {
        /// It is shorter than it was.
        Lost,
        /// It is taller than it was.
        Gained,
        /// The difference is no more than the tapes can tell.
        WithinDoubt,
    }
}

record! {
    /// What the coils have lost since an earlier job.
    #[derive(Default)]
    SinceReport {
        /// When the earlier job was: its date, else its title.
        when: String,
        /// The coils that were measured both times, by their labels.
        coils: Vec<SinceCoil>,
        /// Coils that cannot be compared, and why: a line for each reason.
        left_out: Vec<String>,
        /// What it comes to, in a sentence.
        sentence: String,
        /// How each figure came about.
        workings: Workings,
    }
}

record! {
    /// A coil then and now.
    SinceCoil {
        /// The mark painted on it.
        label: String,
        /// Its drawing's name.
        name: String,
        /// Free height as it was measured then.
        then: Figure,
        /// The same now.
        now: Figure,
        /// Now less then.
        change: Figure,
        /// What that amounts to.
        word: SinceWord,
        /// The same as a person reads it.
        title: Phrase,
        /// What it says, in a sentence.
        sentence: String,
    }
}

//! What a piece of a table of coils came to, as it is handed out.

use super::Problem;
use crate::job::input::BenchCoil;
use serde::Serialize;

record! {
    /// What a piece of a table of coils came to.
    #[derive(Default)]
    CoilRows {
        /// The coils of the good lines, for the bench of the job.
        rows: Vec<BenchCoil>,
        /// The other lines, in their order.
        refused: Vec<RefusedLine>,
        /// How the columns were taken, one sentence each.
        remarks: Vec<String>,
        /// How much of the piece was read, in UTF-16 code units, as the length of a string in
        /// JavaScript: the next piece begins there.
        consumed: usize,
        /// Number of the line that begins there, the first of the table being 1.
        next_line: usize,
        /// The line that names the columns, as soon as it is known: for the next piece, and to stand
        /// above refused lines when they are mended and read again.
        header: Option<String>,
        /// Whether nothing is read from there on: the last refused line says why.
        stopped: bool,
    }
}

record! {
    /// A line that was not taken.
    RefusedLine {
        /// Its number.
        line: usize,
        /// All of it, as it was.
        text: String,
        /// What is wrong with it, at `line 3` or `line 3, column 2`.
        problems: Vec<Problem>,
    }
}

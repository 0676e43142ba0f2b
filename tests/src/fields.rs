//! Every text of a job with what it takes, and texts for each: that will do, and just beside what will do.

use coilnest::job::Job;
use coilnest::job::rows::{Listed, Range, Row, Takes};

/// A text of a job: where it stands, `[]` behind a list and `*` for any name, and what it takes.
#[derive(Clone, Debug)]
pub struct Leaf {
    /// Its path.
    pub path: String,
    /// What may stand there.
    pub takes: Takes,
}

/// Every text of a job.
#[must_use]
pub fn leaves() -> Vec<Leaf> {
    let mut leaves = Vec::new();
    gather("", &Job::rows(), &mut leaves);
    leaves
}

fn gather(at: &str, rows: &[Row], leaves: &mut Vec<Leaf>) {
    let dot = if at.is_empty() { "" } else { "." };
    for row in rows {
        place(format!("{at}{dot}{}", row.name), &row.takes, leaves);
    }
}

fn place(path: String, takes: &Takes, leaves: &mut Vec<Leaf>) {
    match takes {
        Takes::Object { rows, .. } => gather(&path, &rows(), leaves),
        Takes::List(items) => place(format!("{path}[]"), items, leaves),
        Takes::ByName => leaves.push(Leaf { path: format!("{path}.*"), takes: Takes::Text }),
        Takes::Whole => {}
        text => leaves.push(Leaf { path, takes: text.clone() }),
    }
}

impl Leaf {
    /// Whether a bare number would mean something else in the other system.
    #[must_use]
    pub fn has_unit(&self) -> bool {
        let differs = |range: &Range| range.sentence[0] != range.sentence[1];
        match &self.takes {
            Takes::Quantity(range) | Takes::Tolerance(range) => differs(range),
            Takes::HeightOrLoad(_) => true,
            _ => false,
        }
    }

    /// Texts that will do in a job of inches.
    #[must_use]
    pub fn valid(&self) -> Vec<String> {
        match &self.takes {
            Takes::Text => ["outer", "A left", "2026-05-02", "7"].map(str::to_owned).to_vec(),
            Takes::OfTables("steels") => vec!["en-10089".to_owned()],
            Takes::OfTables(_) => vec!["II".to_owned()],
            Takes::Count(_) => vec!["1".to_owned(), "2".to_owned(), "40".to_owned()],
            Takes::HeightOrLoad([height, load]) => {
                let words = ["solid", "free"].map(str::to_owned);
                within(height).into_iter().chain(within(load)).chain(words).collect()
            }
            Takes::Quantity(range) => within(range),
            Takes::Doubted(range) => {
                let doubted = |text: String| [format!("{text} ± {}", range.example[0]), text];
                within(range).into_iter().flat_map(doubted).collect()
            }
            Takes::Tolerance(range) => {
                let each = |text: String| [format!("± {text}"), format!("+{text} -0"), text];
                within(range).into_iter().flat_map(each).collect()
            }
            other => other.examples().into_iter().map(str::to_owned).collect(),
        }
    }

    /// Texts just beside what will do, some of them still within it.
    #[must_use]
    pub fn beside(&self) -> Vec<String> {
        match &self.takes {
            Takes::Quantity(range) | Takes::Count(range) => {
                let ends = [&range.least[0], &range.most[0]];
                let minus = ends.map(|end| format!("-{}", end.trim_start_matches('−')));
                minus.into_iter().chain(ends.map(|end| grown(end))).collect()
            }
            Takes::Tolerance(_) => vec!["+1".to_owned(), "-1/2".to_owned(), "+ -0".to_owned()],
            Takes::Doubted(_) => vec!["± 1".to_owned(), "1 ±".to_owned(), "1 +/- 9".to_owned()],
            Takes::Words { words, .. } => words
                .iter()
                .flat_map(|(word, _)| [format!("{word}s"), word.to_uppercase()])
                .collect(),
            Takes::Date => ["2026-02-30", "2024-02-29", "02.05.2026"].map(str::to_owned).to_vec(),
            _ => vec![String::new()],
        }
    }
}

/// The least, the most and the examples.
fn within(range: &Range) -> Vec<String> {
    let own = [range.least[0].clone(), range.most[0].clone(), range.example[0].to_owned()];
    let there = [range.least[1].clone(), range.most[1].clone()];
    own.into_iter().chain(there).collect()
}

/// The same with one more digit in front of its number.
fn grown(text: &str) -> String {
    let (sign, rest) = text.split_at(text.find(|c: char| c.is_ascii_digit()).unwrap_or_default());
    format!("{sign}9{rest}")
}

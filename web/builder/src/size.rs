//! What the page weighs: each file as it is and as a host sends it, and what it may weigh.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::programs::say;
use crate::shipped;
use crate::table::{Align, Table};

/// The most that a part of the page may weigh, in bytes, as sent.
struct Budget {
    part: &'static str,
    most: usize,
    holds: fn(&Weight) -> bool,
}

/// The aim is 125 000 for the first look and 500 000 for the engines.
const BUDGETS: [Budget; 3] = [
    Budget { part: "first look", most: 122_500, holds: |weight| !weight.later },
    Budget { part: "engines", most: 488_000, holds: Weight::is_engine },
    Budget { part: "everything", most: 673_500, holds: |_| true },
];

struct Weight {
    file: PathBuf,
    raw: usize,
    sent: usize,
    /// Whether a first look does without it.
    later: bool,
}

impl Weight {
    fn is_engine(&self) -> bool {
        self.file.extension().is_some_and(|extension| extension == "wasm")
    }
}

/// Prints the files of a folder with their sizes, and tells whether each part is within its budget.
pub(crate) fn print_within_budget(folder: &Path, later: &BTreeSet<PathBuf>) -> Result<bool> {
    say("Weighing the page");
    let mut weights = Vec::new();
    weigh(folder, folder, &mut weights)
        .with_context(|| format!("cannot weigh {}", folder.display()))?;
    for weight in &mut weights {
        weight.later = later.contains(&weight.file);
    }
    weights.sort_by(|a, b| {
        let heavier = || b.sent.cmp(&a.sent).then_with(|| a.file.cmp(&b.file));
        a.later.cmp(&b.later).then_with(heavier)
    });
    println!("{}", table(&weights));
    for budget in &BUDGETS {
        println!("{}", judgement(budget, &weights));
    }
    Ok(BUDGETS.iter().all(|budget| budget.sent(&weights) <= budget.most))
}

impl Budget {
    fn sent(&self, weights: &[Weight]) -> usize {
        weights.iter().filter(|weight| (self.holds)(weight)).map(|weight| weight.sent).sum()
    }
}

fn weigh(folder: &Path, base: &Path, weights: &mut Vec<Weight>) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        // No page fetches it.
        if path == base.join(shipped::FILE) {
            continue;
        }
        if path.is_dir() {
            weigh(&path, base, weights)?;
        } else {
            let bytes = fs::read(&path)?;
            weights.push(Weight {
                file: path.strip_prefix(base)?.to_owned(),
                raw: bytes.len(),
                sent: brotli_size(&bytes)?,
                later: false,
            });
        }
    }
    Ok(())
}

fn brotli_size(bytes: &[u8]) -> Result<usize> {
    let mut packed = Vec::new();
    let strongest = brotli::enc::BrotliEncoderParams::default();
    brotli::BrotliCompress(&mut &*bytes, &mut packed, &strongest)?;
    Ok(packed.len())
}

fn table(weights: &[Weight]) -> Table {
    let mut table =
        Table::new([("file", Align::Left), ("raw", Align::Right), ("brotli", Align::Right)]);
    for weight in weights {
        table.row([
            weight.file.display().to_string(),
            weight.raw.to_string(),
            weight.sent.to_string(),
        ]);
    }
    for budget in &BUDGETS {
        let raw: usize =
            weights.iter().filter(|weight| (budget.holds)(weight)).map(|weight| weight.raw).sum();
        table.row([budget.part.to_owned(), raw.to_string(), budget.sent(weights).to_string()]);
    }
    table
}

fn judgement(budget: &Budget, weights: &[Weight]) -> String {
    let Budget { part, most, .. } = budget;
    let sent = budget.sent(weights);
    match sent.checked_sub(*most) {
        None | Some(0) => format!("{part}: within {most} bytes, {} to spare", most - sent),
        Some(over) => format!("{part}: over {most} bytes by {over}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files() -> [Weight; 4] {
        let files = [
            ("index.html", 400, 210, false),
            ("engine.wasm", 90_000, 30_000, false),
            ("whole.wasm", 900_000, 200_000, true),
            ("Level.js", 1_000, 500, true),
        ];
        files.map(|(file, raw, sent, later)| Weight { file: file.into(), raw, sent, later })
    }

    #[test]
    fn a_budget_itself_is_within_and_a_byte_more_is_over() {
        let judged =
            |most| judgement(&Budget { part: "engines", most, holds: Weight::is_engine }, &files());
        assert_eq!(judged(230_500), "engines: within 230500 bytes, 500 to spare");
        assert_eq!(judged(230_000), "engines: within 230000 bytes, 0 to spare");
        assert_eq!(judged(229_999), "engines: over 229999 bytes by 1");
    }

    #[test]
    fn the_table_ends_with_the_sum_of_each_part() {
        let table = table(&files()).to_string();
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines[lines.len() - 3], "first look    90400   30210");
        assert_eq!(lines[lines.len() - 2], "engines      990000  230000");
        assert_eq!(lines[lines.len() - 1], "everything   991400  230710");
    }

    #[test]
    fn the_list_of_what_ships_is_not_weighed() {
        let folder = std::env::temp_dir().join(format!("coilnest-weigh-{}", std::process::id()));
        fs::create_dir_all(&folder).unwrap();
        for file in ["index.html", shipped::FILE] {
            fs::write(folder.join(file), "coil").unwrap();
        }
        let mut weights = Vec::new();
        weigh(&folder, &folder, &mut weights).unwrap();
        let files: Vec<&Path> = weights.iter().map(|weight| weight.file.as_path()).collect();
        assert_eq!(files, [Path::new("index.html")]);
        fs::remove_dir_all(folder).unwrap();
    }

    #[test]
    fn repetition_packs_and_the_same_bytes_pack_alike() {
        let text = b"coil ".repeat(2_000);
        let packed = brotli_size(&text).unwrap();
        assert!(packed < 100, "{packed}");
        assert_eq!(packed, brotli_size(&text).unwrap());
    }
}

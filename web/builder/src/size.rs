//! What the page weighs: each file as it is and as a host sends it, and the budget for the whole.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::programs::say;
use crate::table::{Align, Table};

/// The most that a first look at the page may weigh, in bytes, as sent.
pub(crate) const BUDGET: usize = 172_000;

struct Weight {
    file: PathBuf,
    raw: usize,
    sent: usize,
    /// Whether it is fetched only when it is asked for.
    later: bool,
}

/// Prints the files of a folder with their sizes, and tells whether a first look is within the budget.
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
    let sent = weights.iter().filter(|weight| !weight.later).map(|weight| weight.sent).sum();
    println!("{}", judgement(sent));
    Ok(sent <= BUDGET)
}

fn weigh(folder: &Path, base: &Path, weights: &mut Vec<Weight>) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
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
    for (name, later) in [("first look", false), ("when asked for", true)] {
        let of = || weights.iter().filter(|weight| weight.later == later);
        let raw: usize = of().map(|weight| weight.raw).sum();
        let sent: usize = of().map(|weight| weight.sent).sum();
        table.row([name.to_owned(), raw.to_string(), sent.to_string()]);
    }
    table
}

fn judgement(sent: usize) -> String {
    match sent.checked_sub(BUDGET) {
        None | Some(0) => {
            format!("Within the budget of {BUDGET} bytes, {} to spare", BUDGET - sent)
        }
        Some(over) => format!("Over the budget of {BUDGET} bytes by {over}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_budget_itself_is_within_and_a_byte_more_is_over() {
        assert_eq!(judgement(171_000), "Within the budget of 172000 bytes, 1000 to spare");
        assert_eq!(judgement(BUDGET), "Within the budget of 172000 bytes, 0 to spare");
        assert_eq!(judgement(BUDGET + 1), "Over the budget of 172000 bytes by 1");
    }

    #[test]
    fn the_table_ends_with_both_sums() {
        let files = [
            ("index.html", 400, 210, false),
            ("engine.wasm", 90_000, 30_000, false),
            ("sheets.wasm", 1_000, 500, true),
        ];
        let weights =
            files.map(|(file, raw, sent, later)| Weight { file: file.into(), raw, sent, later });
        let table = table(&weights).to_string();
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines[lines.len() - 2], "first look      90400   30210");
        assert_eq!(lines[lines.len() - 1], "when asked for   1000     500");
    }

    #[test]
    fn repetition_packs_and_the_same_bytes_pack_alike() {
        let text = b"coil ".repeat(2_000);
        let packed = brotli_size(&text).unwrap();
        assert!(packed < 100, "{packed}");
        assert_eq!(packed, brotli_size(&text).unwrap());
    }
}

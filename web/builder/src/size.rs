//! What the page weighs: each file as it is and as a host sends it, and the budget for the whole.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::programs::say;
use crate::table::{Align, Table};

/// The most that the whole page may weigh, in bytes, as sent.
pub(crate) const BUDGET: usize = 150_000;

struct Weight {
    file: PathBuf,
    raw: usize,
    sent: usize,
}

/// Prints the files of a folder with their sizes, and tells whether the whole is within the budget.
pub(crate) fn print_within_budget(folder: &Path) -> Result<bool> {
    say("Weighing the page");
    let mut weights = Vec::new();
    weigh(folder, folder, &mut weights)
        .with_context(|| format!("cannot weigh {}", folder.display()))?;
    weights.sort_by(|a, b| b.sent.cmp(&a.sent).then_with(|| a.file.cmp(&b.file)));
    println!("{}", table(&weights));
    let sent = weights.iter().map(|weight| weight.sent).sum();
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
    let raw: usize = weights.iter().map(|weight| weight.raw).sum();
    let sent: usize = weights.iter().map(|weight| weight.sent).sum();
    table.row(["total".to_owned(), raw.to_string(), sent.to_string()]);
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
        assert_eq!(judgement(149_000), "Within the budget of 150000 bytes, 1000 to spare");
        assert_eq!(judgement(BUDGET), "Within the budget of 150000 bytes, 0 to spare");
        assert_eq!(judgement(BUDGET + 1), "Over the budget of 150000 bytes by 1");
    }

    #[test]
    fn the_table_ends_with_the_total() {
        let weights = [("index.html", 400, 210), ("engine.wasm", 90_000, 30_000)]
            .map(|(file, raw, sent)| Weight { file: file.into(), raw, sent });
        let table = table(&weights).to_string();
        assert_eq!(table.lines().last().unwrap(), "total        90400   30210");
    }

    #[test]
    fn repetition_packs_and_the_same_bytes_pack_alike() {
        let text = b"coil ".repeat(2_000);
        let packed = brotli_size(&text).unwrap();
        assert!(packed < 100, "{packed}");
        assert_eq!(packed, brotli_size(&text).unwrap());
    }
}

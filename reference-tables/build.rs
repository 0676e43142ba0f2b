//! Makes the tables typed constants, and fails the build with a plain sentence on a row that lacks something.

#[path = "build/constants.rs"]
mod constants;
#[path = "build/rows.rs"]
mod rows;

use std::path::Path;
use std::{env, fs};

fn main() {
    if let Err(sentence) = build() {
        println!("cargo::error={}", sentence.replace('\n', " "));
    }
}

fn build() -> Result<(), String> {
    for watched in ["build.rs", "build", "sources.toml", "sizes", "steels", "tapes", "tolerances"] {
        println!("cargo::rerun-if-changed={watched}");
    }
    let sources = rows::sources(&read(Path::new("sources.toml"))?)?;
    let mut all = Vec::new();
    for name in ["sizes", "steels", "tapes", "tolerances"] {
        all.extend(folder(name, &sources)?);
    }
    rows::consistent(&all)?;
    let steels = all.iter().filter(|row| matches!(row.values, rows::Values::Steel(_)));
    let text = constants::constants(&all, &rows::ordered(steels.collect())?);
    let out = env::var("OUT_DIR").map_err(|error| format!("OUT_DIR: {error}"))?;
    let out = Path::new(&out).join("constants.rs");
    fs::write(&out, text).map_err(|error| format!("{}: {error}", out.display()))
}

/// Every row of a folder's files.
fn folder(name: &str, sources: &rows::Sources) -> Result<Vec<rows::Row>, String> {
    let entries = fs::read_dir(name).map_err(|error| format!("{name}: {error}"))?;
    let mut files = entries
        .map(|entry| entry.map(|entry| entry.file_name().to_string_lossy().into_owned()))
        .collect::<Result<Vec<String>, _>>()
        .map_err(|error| format!("{name}: {error}"))?;
    files.sort();
    let mut all = Vec::new();
    for file in files {
        let path = format!("{name}/{file}");
        all.extend(rows::rows(&path, &read(Path::new(&path))?, sources)?);
    }
    Ok(all)
}

fn read(path: &Path) -> Result<String, String> {
    fs::read_to_string(path).map_err(|error| format!("{}: {error}", path.display()))
}

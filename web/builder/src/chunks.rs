//! Which files of a bundle a first look at the page does not fetch, by the list that Vite leaves of them.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde::Deserialize;

/// A file that Vite made, and what it needs or may fetch.
#[derive(Deserialize)]
#[serde(rename_all = "camelCase")]
struct Chunk {
    file: PathBuf,
    #[serde(default)]
    is_entry: bool,
    #[serde(default)]
    is_dynamic_entry: bool,
    #[serde(default)]
    imports: Vec<String>,
    #[serde(default)]
    css: Vec<PathBuf>,
    #[serde(default)]
    assets: Vec<PathBuf>,
}

type Chunks = BTreeMap<String, Chunk>;

/// Takes Vite's list out of a bundle; gives the files that are fetched when they are asked for.
pub(crate) fn take_later(bundle: &Path) -> Result<BTreeSet<PathBuf>> {
    let folder = bundle.join(".vite");
    let list = folder.join("manifest.json");
    let text = fs::read_to_string(&list)
        .with_context(|| format!("the bundle has no list of its files, {}", list.display()))?;
    fs::remove_dir_all(&folder)?;
    let chunks: Chunks = serde_json::from_str(&text).context("the list of the bundle's files")?;
    Ok(later(&chunks))
}

/// Keeps the files for use without the network, once all of them are there.
const WORKER: &str = "sw.js";

/// What some chunk that is fetched later needs, and the document does not; and the worker.
fn later(chunks: &Chunks) -> BTreeSet<PathBuf> {
    let first = needed(chunks, |chunk| chunk.is_entry);
    let later = needed(chunks, |chunk| chunk.is_dynamic_entry);
    later.difference(&first).copied().chain([Path::new(WORKER)]).map(PathBuf::from).collect()
}

/// The files of some chunks and of all that they import.
fn needed(chunks: &Chunks, begin: impl Fn(&Chunk) -> bool) -> BTreeSet<&Path> {
    let mut files = BTreeSet::new();
    let mut open: Vec<&Chunk> = chunks.values().filter(|chunk| begin(chunk)).collect();
    while let Some(chunk) = open.pop() {
        if files.insert(chunk.file.as_path()) {
            files.extend(chunk.css.iter().chain(&chunk.assets).map(PathBuf::as_path));
            open.extend(chunk.imports.iter().filter_map(|name| chunks.get(name)));
        }
    }
    files
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_only_a_later_chunk_needs_is_later() {
        let list = r#"{
            "a.wasm": { "file": "a.wasm" },
            "b.wasm": { "file": "b.wasm" },
            "style.css": { "file": "style.css" },
            "_shared.js": { "file": "shared.js", "css": ["shared.css"], "assets": ["a.wasm"] },
            "index.html": {
                "file": "index.js", "isEntry": true, "imports": ["_shared.js"], "css": ["index.css"],
                "dynamicImports": ["Sheet.svelte"]
            },
            "Sheet.svelte": {
                "file": "Sheet.js", "isDynamicEntry": true, "imports": ["_shared.js"],
                "css": ["Sheet.css"], "assets": ["b.wasm"]
            }
        }"#;
        let chunks: Chunks = serde_json::from_str(list).unwrap();
        let expected = ["Sheet.css", "Sheet.js", "b.wasm", "sw.js"].map(PathBuf::from);
        assert_eq!(later(&chunks), BTreeSet::from(expected));
    }
}

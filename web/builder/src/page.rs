//! `cargo page`: the engine, then the bundle, then either the page on this machine or a folder for a static host.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use anyhow::Result;

use crate::programs::say;
use crate::wasm::Toolchain;
use crate::{bundle, engine, serve, size};

/// Only the engine, for those who work on the page with Vite's own server.
pub(crate) fn build_engine() -> Result<()> {
    engine::build(&Toolchain::find()?)
}

pub(crate) fn serve(port: Option<u16>) -> Result<()> {
    build()?;
    serve::serve(port)
}

/// Builds into a folder, prints what it weighs, and tells whether that is within the budget.
pub(crate) fn deliver(into: &Path) -> Result<bool> {
    let into = std::path::absolute(into)?;
    let later = build()?;
    bundle::copy(&bundle::built(), &into)?;
    say(&format!("The page is in {}; any static host can serve it, from any path", into.display()));
    size::print_within_budget(&into, &later)
}

/// Gives the files that a first look at the page does not fetch.
fn build() -> Result<BTreeSet<PathBuf>> {
    bundle::check_node()?;
    build_engine()?;
    bundle::install_packages()?;
    bundle::build()
}

//! The engine of the page: `coilnest-web` compiled for wasm32, with its JavaScript bindings.

use std::path::PathBuf;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::programs::{root, run, say};
use crate::wasm::{TARGET, Toolchain};

const PACKAGE: &str = "coilnest-web";
const MODULE: &str = "coilnest_web";
const PROFILE: &str = "wasm";

/// Where the page looks for its engine.
fn folder() -> PathBuf {
    root().join("target").join("engine")
}

/// Compiles the engine and writes its module, bindings and types into `target/engine`.
pub(crate) fn build(toolchain: &Toolchain) -> Result<()> {
    say("Compiling the engine for wasm32");
    let mut cargo = toolchain.cargo()?;
    cargo.args(["build", "--locked", "--package", PACKAGE, "--lib"]);
    run(cargo.args(["--profile", PROFILE, "--target", TARGET]))?;

    let compiled = toolchain.target_dir.join(TARGET).join(PROFILE).join(MODULE);
    Bindgen::new()
        .input_path(compiled.with_extension("wasm"))
        .web(true)?
        // The page gives the module's address itself; a default would make the bundler keep a second copy.
        .omit_default_module_path(true)
        .typescript(true)
        .remove_name_section(true)
        .generate(folder())
        .context("cannot write the engine's bindings")
}

/// The engine's tests, ready to be run by the test runner that the environment names.
pub(crate) fn test_words() -> [&'static str; 7] {
    ["test", "--locked", "--package", PACKAGE, "--tests", "--target", TARGET]
}

//! The engines of the page: `coilnest-web` compiled for wasm32, with its JavaScript bindings.

use std::fs;
use std::path::PathBuf;
use std::process::Command;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::alike;
use crate::programs::{cargo, root, run, say};
use crate::wasm::{TARGET, Toolchain};

const PACKAGE: &str = "coilnest-web";
const PROFILE: &str = "wasm";

/// An engine, by the features that make it.
#[derive(Clone, Copy)]
struct Engine {
    features: &'static str,
    module: &'static str,
    /// Words for the compiler.
    words: &'static [&'static str],
}

/// What makes a loop quicker is longer than the loop, and no two are alike after it.
const LOOPS_AS_WRITTEN: &str = "-Cllvm-args=-disable-lsr -disable-machine-licm -enable-pre=false";

/// Small functions that differ by a type alone pack to next to nothing where each is kept; put into their callers
/// they do not. So an instruction that is copied into a caller counts two hundred times what it usually does.
const KEPT_APART: &str = "-Cllvm-args=-inline-instr-cost=1000";

/// What the page starts with.
const FIRST: Engine =
    Engine { features: "", module: "coilnest_measure", words: &[LOOPS_AS_WRITTEN] };

/// What the page fetches when it has nothing else to do, and what other programs take.
const WHOLE: Engine =
    Engine { features: "whole", module: "coilnest_web", words: &[LOOPS_AS_WRITTEN, KEPT_APART] };

/// Where the page and the package look for their engines.
pub(crate) fn folder() -> PathBuf {
    root().join("target").join("engine")
}

/// Compiles the engines and writes their modules, bindings and types into `target/engine`.
pub(crate) fn build(toolchain: &Toolchain) -> Result<()> {
    compile(toolchain, FIRST)?;
    build_whole(toolchain)
}

/// The same of the whole engine alone.
pub(crate) fn build_whole(toolchain: &Toolchain) -> Result<()> {
    compile(toolchain, WHOLE)
}

fn compile(toolchain: &Toolchain, engine: Engine) -> Result<()> {
    say(&format!("Compiling the engine {} for wasm32", engine.module));
    let mut cargo = toolchain.cargo()?;
    // As a library for other crates too, the engine would not be optimised as one piece.
    cargo.args(["rustc", "--locked", "--package", PACKAGE, "--lib", "--crate-type", "cdylib"]);
    cargo.args(["--no-default-features", "--features", engine.features]);
    cargo.args(["--profile", PROFILE, "--target", TARGET, "--"]);
    run(cargo.args(engine.words))?;

    let compiled = toolchain.target_dir.join(TARGET).join(PROFILE).join("coilnest_web.wasm");
    Bindgen::new()
        .input_path(compiled)
        .out_name(engine.module)
        .web(true)?
        // The page gives the module's address itself; a default would make the bundler keep a second copy.
        .omit_default_module_path(true)
        .typescript(true)
        .remove_name_section(true)
        .remove_producers_section(true)
        // An engine that fell can be started anew.
        .reset_state_function(true)
        .generate(folder())
        .context("cannot write the engine's bindings")?;

    let written = folder().join(format!("{}_bg.wasm", engine.module));
    let module =
        fs::read(&written).with_context(|| format!("cannot read {}", written.display()))?;
    fs::write(&written, alike::side_by_side(&module)?)
        .with_context(|| format!("cannot write {}", written.display()))
}

/// Tells of each crate that is compiled into the whole engine, in a line with its name, its version and its licence.
pub(crate) fn crates_inside() -> Command {
    let mut tree = cargo();
    tree.args(["tree", "--locked", "--package", PACKAGE, "--target", TARGET]);
    tree.args(["--no-default-features", "--features", WHOLE.features]);
    tree.args(["--edges", "normal,no-proc-macro", "--no-dedupe"]);
    tree.args(["--prefix", "none", "--format", "{p}\t{l}"]);
    tree
}

/// The engine's tests, ready to be run by the test runner that the environment names. They are few: to make the engine
/// quick would take longer than they do.
pub(crate) fn test_words() -> [&'static str; 10] {
    [
        "test",
        "--locked",
        "--package",
        PACKAGE,
        "--all-features",
        "--tests",
        "--target",
        TARGET,
        "--config",
        "profile.dev.package.coilnest.opt-level=0",
    ]
}

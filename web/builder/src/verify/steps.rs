//! The steps of `cargo verify`, in the order they run: the quick ones first.

use std::process::Command;

use anyhow::Result;

use super::provisions::Provisions;
use super::tally::Tally;
use crate::bundle::{self, npm};
use crate::programs::{cargo, run, say, succeeds, watch};
use crate::{advisories, engine, licences, package, size, tidy, wasm};

pub(crate) struct Step {
    pub(crate) name: &'static str,
    pub(crate) about: &'static str,
    /// An error means that the step could not run, and `NotChecked` that it need not.
    pub(crate) run: fn(&Provisions) -> Result<Tally>,
}

pub(crate) const STEPS: &[Step] = &[
    Step { name: "format", about: "Rust is laid out by rustfmt", run: |_| format() },
    Step { name: "tidy", about: "the rules of this repository", run: |_| tidy::check() },
    Step {
        name: "licences",
        about: "every package's licence is on the list",
        run: |_| licences::check(),
    },
    Step {
        name: "advisories",
        about: "no locked package has a known weakness, by a kept copy of advisories",
        run: |_| advisories::check(),
    },
    Step { name: "clippy", about: "Rust without a warning", run: |_| clippy() },
    Step { name: "tests", about: "Rust's tests", run: |_| tests() },
    Step { name: "doc-tests", about: "the examples in the documentation", run: |_| doc_tests() },
    Step { name: "docs", about: "documentation without a warning", run: |_| docs() },
    Step { name: "wasm-tests", about: "the engine in headless Chromium", run: wasm_tests },
    Step { name: "page", about: "the page is built and within its budget", run: page },
    Step { name: "generated", about: "generated files are up to date", run: generated },
    Step { name: "svelte-check", about: "the page's types", run: svelte_check },
    Step { name: "lint", about: "the page's style", run: lint },
    Step { name: "page-tests", about: "the page in Chromium", run: page_tests },
];

/// The feature and the program of this crate that run the engine's tests.
const RUNNER: &str = "wasm-test-runner";

fn format() -> Result<Tally> {
    one_check(cargo().args(["fmt", "--all", "--check"]))
}

fn clippy() -> Result<Tally> {
    let mut clippy = cargo();
    clippy.args(["clippy", "--workspace", "--all-targets", "--all-features", "--locked"]);
    one_check(clippy.args(["--", "-D", "warnings"]))
}

fn tests() -> Result<Tally> {
    cargo_test(cargo().args([
        "test",
        "--workspace",
        "--locked",
        "--no-fail-fast",
        "--tests",
        "--examples",
    ]))
}

fn doc_tests() -> Result<Tally> {
    cargo_test(cargo().args(["test", "--workspace", "--locked", "--no-fail-fast", "--doc"]))
}

fn docs() -> Result<Tally> {
    let mut doc = cargo();
    doc.env("RUSTDOCFLAGS", "-D warnings");
    one_check(doc.args(["doc", "--no-deps", "--workspace", "--locked"]))
}

fn wasm_tests(provisions: &Provisions) -> Result<Tally> {
    let toolchain = provisions.toolchain()?;
    let browser = provisions.browser()?;
    say("Compiling the runner of the engine's tests");
    let mut build = cargo();
    build.args(["build", "--locked", "--package", "coilnest-builder"]);
    run(build.args(["--features", RUNNER, "--bin", RUNNER]))?;

    let target_dir = wasm::target_dir()?;
    let capabilities = target_dir.join("webdriver.json");
    browser.write_capabilities(&capabilities)?;
    let mut test = toolchain.cargo()?;
    test.args(engine::test_words())
        .env("CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER", target_dir.join("debug").join(RUNNER))
        .env("WASM_BINDGEN_USE_BROWSER", "1")
        .env("WASM_BINDGEN_TEST_TIMEOUT", "120")
        .env("WASM_BINDGEN_TEST_WEBDRIVER_JSON", capabilities)
        .env("CHROMEDRIVER", &browser.driver);
    cargo_test(&mut test)
}

fn page(provisions: &Provisions) -> Result<Tally> {
    let later = provisions.bundle()?;
    Ok(Tally::of_one(size::print_within_budget(&bundle::built(), later)?))
}

fn generated(provisions: &Provisions) -> Result<Tally> {
    provisions.packages()?;
    one_check(npm().args(["run", "--silent", "types:check"]))
}

fn svelte_check(provisions: &Provisions) -> Result<Tally> {
    provisions.engine()?;
    provisions.packages()?;
    one_check(npm().args(["run", "--silent", "check"]))
}

fn lint(provisions: &Provisions) -> Result<Tally> {
    provisions.engine()?;
    provisions.packages()?;
    one_check(npm().args(["run", "--silent", "lint"]))
}

fn page_tests(provisions: &Provisions) -> Result<Tally> {
    provisions.bundle()?;
    package::write()?;
    let browser = provisions.browser()?;
    let mut playwright = npm();
    playwright.args(["run", "--silent", "test:page"]).env("CHROMIUM", &browser.shell);
    let (status, printed) = watch(&mut playwright)?;
    Ok(Tally::of_playwright(&printed).with_ending(status.success()))
}

fn one_check(command: &mut Command) -> Result<Tally> {
    Ok(Tally::of_one(succeeds(command)?))
}

fn cargo_test(command: &mut Command) -> Result<Tally> {
    let (status, printed) = watch(command)?;
    Ok(Tally::of_cargo_test(&printed).with_ending(status.success()))
}

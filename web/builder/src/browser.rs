//! The browser that the checks drive: Debian's Chromium, its driver, and the tools that read a printed page.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use serde_json::json;

use crate::debian;
use crate::programs::find;

/// What the checks start, and the package that brings it.
const NEEDED: [(&str, &str); 3] =
    [("chromium", "chromium"), ("chromedriver", "chromium-driver"), ("pdftotext", "poppler-utils")];
/// Chromium without what draws a window: its package, and its program. It turns pages in two thirds of the time.
const SHELL: &str = "chromium-headless-shell";
/// A machine without any font would draw boxes for letters.
const FONT: &str = "fonts-dejavu-core";

const FLAGS: [&str; 9] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

pub(crate) struct Browser {
    pub(crate) chromium: PathBuf,
    pub(crate) driver: PathBuf,
    /// What the page's tests start: the shell where it can be had, else Chromium itself.
    pub(crate) shell: PathBuf,
}

impl Browser {
    /// Finds the browser and its tools, or installs what is missing.
    pub(crate) fn find_or_install() -> Result<Self> {
        let missing = NEEDED.iter().filter(|(name, _)| locate(name).is_none());
        let packages: Vec<&str> = missing.map(|(_, package)| *package).collect();
        if !packages.is_empty() {
            debian::install(&[packages.as_slice(), &[FONT]].concat())?;
        }
        let chromium = locate("chromium").context("Chromium is not installed")?;
        Ok(Self {
            shell: shell().unwrap_or_else(|| chromium.clone()),
            chromium,
            driver: locate("chromedriver").context("Chromium's driver is not installed")?,
        })
    }

    /// Writes how the driver is to start the browser.
    pub(crate) fn write_capabilities(&self, file: &Path) -> Result<()> {
        let options = json!({ "binary": self.chromium, "args": FLAGS });
        let text = json!({ "goog:chromeOptions": options }).to_string();
        fs::write(file, text).with_context(|| format!("cannot write {}", file.display()))
    }
}

/// The shell of Chromium, unless the environment names a browser for all of it.
fn shell() -> Option<PathBuf> {
    if std::env::var_os("CHROMIUM").is_some() {
        return None;
    }
    find(SHELL).or_else(|| {
        debian::install(&[SHELL]).ok()?;
        find(SHELL)
    })
}

/// A program named by the environment (CHROMIUM, CHROMEDRIVER), or else found on the path.
fn locate(name: &str) -> Option<PathBuf> {
    let named = std::env::var_os(name.to_uppercase()).map(PathBuf::from);
    named.filter(|path| path.is_file()).or_else(|| find(name))
}

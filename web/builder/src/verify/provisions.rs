//! What the steps need beyond Rust, each got once, when the first step asks for it.

use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::path::PathBuf;

use anyhow::{Error, Result};

use crate::browser::Browser;
use crate::wasm::Toolchain;
use crate::{bundle, engine};

type Once<T> = OnceCell<Result<T, String>>;

#[derive(Default)]
pub(crate) struct Provisions {
    toolchain: Once<Toolchain>,
    engine: Once<()>,
    packages: Once<()>,
    bundle: Once<BTreeSet<PathBuf>>,
    browser: Once<Browser>,
}

impl Provisions {
    pub(crate) fn toolchain(&self) -> Result<&Toolchain> {
        once(&self.toolchain, Toolchain::find)
    }

    pub(crate) fn engine(&self) -> Result<()> {
        once(&self.engine, || engine::build(self.toolchain()?)).copied()
    }

    pub(crate) fn packages(&self) -> Result<()> {
        once(&self.packages, || {
            bundle::check_node()?;
            bundle::install_packages()
        })
        .copied()
    }

    /// Gives the files that a first look at the page does not fetch.
    pub(crate) fn bundle(&self) -> Result<&BTreeSet<PathBuf>> {
        once(&self.bundle, || {
            self.engine()?;
            self.packages()?;
            bundle::build()
        })
    }

    pub(crate) fn browser(&self) -> Result<&Browser> {
        once(&self.browser, Browser::find_or_install)
    }
}

/// A second asker is told the same, without a second attempt.
fn once<T>(cell: &Once<T>, get: impl FnOnce() -> Result<T>) -> Result<&T> {
    let got = cell.get_or_init(|| get().map_err(|trouble| format!("{trouble:#}")));
    got.as_ref().map_err(|trouble| Error::msg(trouble.clone()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use anyhow::anyhow;

    #[test]
    fn what_cannot_be_got_is_tried_once_and_told_each_time() {
        let cell: Once<()> = OnceCell::new();
        let trouble = once(&cell, || Err(anyhow!("no apt-get").context("no browser")));
        assert_eq!(trouble.unwrap_err().to_string(), "no browser: no apt-get");
        let again = once(&cell, || Ok(()));
        assert_eq!(again.unwrap_err().to_string(), "no browser: no apt-get");
    }
}

//! The page's files: its npm packages, Vite's bundle, and the bundle's way into a folder of one's own.

use std::collections::BTreeSet;
use std::ffi::OsString;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::SystemTime;

use anyhow::{Context, Result, bail};

use crate::programs::{output, program, root, run, say};
use crate::{chunks, shipped};

/// The room of the page.
pub(crate) fn www() -> PathBuf {
    root().join("www")
}

/// Where Vite puts the bundle.
pub(crate) fn built() -> PathBuf {
    www().join("dist")
}

pub(crate) fn npm() -> Command {
    let mut npm = program(if cfg!(windows) { "npm.cmd" } else { "npm" });
    npm.current_dir(www());
    npm
}

pub(crate) fn node() -> Command {
    let mut node = program("node");
    node.current_dir(www());
    node
}

/// The least version of Node.js that the page's tools run on.
const NODE: (u32, u32) = (20, 19);

/// Refuses early on a machine that could not bundle the page.
pub(crate) fn check_node() -> Result<()> {
    let printed = output(node().arg("--version"))?;
    if version(&printed).is_none_or(|found| found < NODE) {
        let (major, minor) = NODE;
        bail!("Node.js here is {}: install {major}.{minor} or newer", printed.trim());
    }
    output(npm().arg("--version")).map(|_| ())
}

fn version(printed: &str) -> Option<(u32, u32)> {
    let mut numbers = printed.trim().strip_prefix('v')?.split('.').map(str::parse);
    Some((numbers.next()?.ok()?, numbers.next()?.ok()?))
}

/// Installs the page's npm packages when they are missing or older than the lock.
pub(crate) fn install_packages() -> Result<()> {
    let locked = changed(&www().join("package-lock.json"))
        .context("www/package-lock.json cannot be read: restore it from the repository")?;
    match changed(&www().join("node_modules").join(".package-lock.json")) {
        Ok(installed) if installed >= locked => Ok(()),
        _ => {
            say("Installing the page's npm packages");
            run(npm().args(["ci", "--no-audit", "--no-fund"]))
        }
    }
}

fn changed(file: &Path) -> Result<SystemTime> {
    Ok(fs::metadata(file)?.modified()?)
}

/// Bundles the page and its engines into `www/dist`, with the list of what ships; gives the files that a first look does not fetch.
pub(crate) fn build() -> Result<BTreeSet<PathBuf>> {
    say("Bundling the page");
    run(node().args(["node_modules/vite/bin/vite.js", "build", "--logLevel=warn"]))?;
    shipped::write_with_page(&built())?;
    chunks::take_later(&built())
}

/// Copies a bundle into a folder, in place of an earlier bundle, but never in place of anything else.
pub(crate) fn copy(bundle: &Path, folder: &Path) -> Result<()> {
    fs::create_dir_all(folder).with_context(|| format!("cannot make {}", folder.display()))?;
    let (bundle, folder) = (bundle.canonicalize()?, folder.canonicalize()?);
    if folder == bundle {
        return Ok(());
    }
    if folder.starts_with(&bundle) {
        bail!("{} is inside the bundle itself: give a folder elsewhere", folder.display());
    }
    let present = names_in(&folder)?;
    if let Some(stranger) = present.difference(&names_in(&bundle)?).next() {
        bail!(
            "{} holds {}, which is no part of the page: give a new or an empty folder",
            folder.display(),
            stranger.display()
        );
    }
    for name in present {
        remove(&folder.join(name))?;
    }
    copy_all(&bundle, &folder)
}

fn names_in(folder: &Path) -> Result<BTreeSet<OsString>> {
    fs::read_dir(folder)?.map(|entry| Ok(entry?.file_name())).collect()
}

fn remove(path: &Path) -> Result<()> {
    if path.is_dir() && !path.is_symlink() {
        fs::remove_dir_all(path)?;
    } else {
        fs::remove_file(path)?;
    }
    Ok(())
}

/// Copies a folder and all that is in it.
pub(crate) fn copy_all(from: &Path, to: &Path) -> Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy_all(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn versions_of_node_are_read_and_compared() {
        assert_eq!(version("v20.20.2\n"), Some((20, 20)));
        assert_eq!(version("20.20.2"), None);
        assert!(version("v18.19.1").is_some_and(|found| found < NODE));
        assert!(version("v22.0.0").is_some_and(|found| found > NODE));
    }

    /// A folder of this test alone, with a bundle of two files in it.
    fn bundle_of(test: &str) -> (PathBuf, PathBuf) {
        let place = std::env::temp_dir().join(format!("coilnest-{test}-{}", std::process::id()));
        let bundle = place.join("dist");
        fs::create_dir_all(bundle.join("assets")).unwrap();
        fs::write(bundle.join("index.html"), "new").unwrap();
        fs::write(bundle.join("assets").join("new.js"), "").unwrap();
        (place, bundle)
    }

    #[test]
    fn a_bundle_takes_the_place_of_an_earlier_one() {
        let (place, bundle) = bundle_of("replace");
        let folder = place.join("site");
        fs::create_dir_all(folder.join("assets")).unwrap();
        fs::write(folder.join("assets").join("old.js"), "").unwrap();

        copy(&bundle, &folder).unwrap();
        assert_eq!(fs::read_to_string(folder.join("index.html")).unwrap(), "new");
        assert_eq!(names_in(&folder.join("assets")).unwrap(), BTreeSet::from(["new.js".into()]));

        copy(&bundle, &bundle).unwrap();
        assert!(bundle.join("index.html").is_file());
        fs::remove_dir_all(place).unwrap();
    }

    #[test]
    fn nothing_but_an_earlier_bundle_is_replaced() {
        let (place, bundle) = bundle_of("refuse");
        let folder = place.join("site");
        fs::create_dir_all(&folder).unwrap();
        fs::write(folder.join("index.html"), "old").unwrap();
        fs::write(folder.join("letters.txt"), "dear").unwrap();

        let refusal = copy(&bundle, &folder).unwrap_err().to_string();
        assert!(refusal.contains("letters.txt"), "{refusal}");
        assert_eq!(fs::read_to_string(folder.join("index.html")).unwrap(), "old");
        assert!(copy(&bundle, &bundle.join("assets").join("deeper")).is_err());
        fs::remove_dir_all(place).unwrap();
    }
}

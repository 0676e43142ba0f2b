//! The two lock files: what is used to build, check or ship, in which version, and with which checksum.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use serde::Deserialize;
use serde::de::DeserializeOwned;

use crate::bundle::www;
use crate::programs::root;

/// A crate of the workspace has neither source nor checksum.
#[derive(Deserialize)]
pub(crate) struct Crate {
    pub(crate) name: String,
    pub(crate) version: String,
    pub(crate) source: Option<String>,
    /// SHA-256 in hexadecimal.
    pub(crate) checksum: Option<String>,
}

pub(crate) struct NpmPackage {
    pub(crate) name: String,
    pub(crate) version: String,
    pub(crate) licence: Option<String>,
    /// As `sha512-` and the sum in base64.
    pub(crate) integrity: Option<String>,
}

pub(crate) fn crates() -> Result<Vec<Crate>> {
    #[derive(Deserialize)]
    struct Lock {
        package: Vec<Crate>,
    }
    let lock: Lock = read(&root().join("Cargo.lock"), |text| Ok(toml::from_str(text)?))?;
    Ok(lock.package)
}

/// The npm packages by the folder that they are installed in.
pub(crate) fn npm_packages() -> Result<BTreeMap<String, NpmPackage>> {
    read(&www().join("package-lock.json"), npm_packages_of)
}

fn npm_packages_of(text: &str) -> Result<BTreeMap<String, NpmPackage>> {
    #[derive(Deserialize)]
    struct Lock {
        packages: BTreeMap<String, Locked>,
    }
    #[derive(Deserialize)]
    struct Locked {
        /// Only where it is not that of the folder.
        name: Option<String>,
        version: String,
        license: Option<String>,
        integrity: Option<String>,
    }
    let lock: Lock = serde_json::from_str(text)?;
    // The entry without a folder is the page itself.
    let packages = lock.packages.into_iter().filter(|(folder, _)| !folder.is_empty());
    let packages = packages.map(|(folder, Locked { name, version, license, integrity })| {
        let after = folder.rsplit("node_modules/").next().unwrap_or(&folder);
        let name = name.unwrap_or_else(|| after.to_owned());
        (folder, NpmPackage { name, version, licence: license, integrity })
    });
    Ok(packages.collect())
}

fn read<T>(file: &Path, parse: impl Fn(&str) -> Result<T>) -> Result<T> {
    let complaint = || format!("cannot read {}", file.display());
    parse(&fs::read_to_string(file).with_context(complaint)?).with_context(complaint)
}

/// What `deny.toml` says.
pub(crate) fn policy<T: DeserializeOwned>() -> Result<T> {
    read(&root().join("deny.toml"), |text| Ok(toml::from_str(text)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_npm_package_has_the_name_of_its_folder_or_its_own() {
        let text = r#"{ "packages": {
            "": { "version": "0.1.0" },
            "node_modules/a/node_modules/@scope/b": { "version": "2.0.0", "license": "MIT" },
            "node_modules/c": { "name": "d", "version": "3.0.0", "integrity": "sha512-AA==" }
        } }"#;
        let packages = npm_packages_of(text).unwrap();
        let names: Vec<&str> = packages.values().map(|package| package.name.as_str()).collect();
        assert_eq!(names, ["@scope/b", "d"]);
    }

    #[test]
    fn only_crates_of_the_workspace_are_without_source_and_checksum() {
        let crates = crates().unwrap();
        for locked in &crates {
            assert_eq!(locked.source.is_none(), locked.name.starts_with("coilnest"));
            assert_eq!(locked.source.is_some(), locked.checksum.is_some(), "{}", locked.name);
        }
        assert!(crates.iter().any(|locked| locked.name == "serde"));
    }
}

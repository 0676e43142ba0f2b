//! The licences of every package that is used, against the list in `deny.toml`: none new, and none that is out of use.

use std::collections::BTreeSet;

use anyhow::Result;
use serde::Deserialize;
use spdx::{Expression, ParseMode};

use crate::locks;
use crate::programs::{cargo, output};
use crate::verify::Tally;

struct Package {
    name: String,
    licence: Option<String>,
}

pub(crate) fn check() -> Result<Tally> {
    let mut packages = crates()?;
    packages.extend(npm_packages()?);
    let complaints = compare(&allowed()?, &packages);
    for complaint in &complaints {
        println!("{complaint}");
    }
    println!("{} packages looked at", packages.len());
    Ok(Tally::of_one(complaints.is_empty()))
}

fn allowed() -> Result<Vec<String>> {
    #[derive(Deserialize)]
    struct Deny {
        licenses: Licenses,
    }
    #[derive(Deserialize)]
    struct Licenses {
        allow: Vec<String>,
    }
    let deny: Deny = locks::policy()?;
    Ok(deny.licenses.allow)
}

fn crates() -> Result<Vec<Package>> {
    #[derive(Deserialize)]
    struct Metadata {
        packages: Vec<Crate>,
    }
    #[derive(Deserialize)]
    struct Crate {
        name: String,
        license: Option<String>,
    }
    let words = ["metadata", "--format-version=1", "--locked", "--all-features"];
    let metadata: Metadata = serde_json::from_str(&output(cargo().args(words))?)?;
    let packages = metadata.packages.into_iter();
    Ok(packages.map(|Crate { name, license }| Package { name, licence: license }).collect())
}

fn npm_packages() -> Result<impl Iterator<Item = Package>> {
    let packages = locks::npm_packages()?.into_iter();
    Ok(packages.map(|(folder, locked)| Package { name: folder, licence: locked.licence }))
}

/// One sentence for each package whose licence is not allowed, and for each allowed licence that no package names.
fn compare(allowed: &[String], packages: &[Package]) -> Vec<String> {
    let mut complaints = Vec::new();
    let mut named = BTreeSet::new();
    for Package { name, licence } in packages {
        let Some(licence) = licence else {
            complaints.push(format!("{name} names no licence"));
            continue;
        };
        let Ok(expression) = Expression::parse_mode(licence, ParseMode::LAX) else {
            complaints.push(format!("{name} has a licence that cannot be read: {licence}"));
            continue;
        };
        named.extend(expression.requirements().map(|required| required.req.to_string()));
        if !expression.evaluate(|required| allowed.contains(&required.to_string())) {
            complaints
                .push(format!("{name} has a licence that deny.toml does not allow: {licence}"));
        }
    }
    let vanished = allowed.iter().filter(|licence| !named.contains(*licence));
    complaints.extend(vanished.map(|licence| {
        format!("deny.toml allows {licence}, which no package names: take it off the list")
    }));
    complaints
}

#[cfg(test)]
mod tests {
    use super::*;

    fn complaints(allowed: &[&str], licences: &[Option<&str>]) -> Vec<String> {
        let allowed: Vec<String> = allowed.iter().map(|&licence| licence.to_owned()).collect();
        let packages = licences.iter().map(|licence| Package {
            name: "some-package".to_owned(),
            licence: licence.map(str::to_owned),
        });
        compare(&allowed, &packages.collect::<Vec<_>>())
    }

    #[test]
    fn what_is_allowed_and_used_is_no_matter() {
        let used = [Some("MIT OR Apache-2.0"), Some("MIT/Apache-2.0"), Some("(MIT AND Zlib)")];
        assert_eq!(complaints(&["MIT", "Apache-2.0", "Zlib"], &used), [""; 0]);
        assert_eq!(complaints(&["MIT"], &[Some("MIT OR LGPL-2.1-or-later")]), [""; 0]);
    }

    #[test]
    fn a_new_licence_is_reported() {
        let found = complaints(&["MIT"], &[Some("MIT"), Some("MIT AND GPL-3.0-only")]);
        assert_eq!(found.len(), 1);
        assert!(found[0].contains("does not allow: MIT AND GPL-3.0-only"));
    }

    #[test]
    fn a_licence_with_an_exception_is_another_licence() {
        let used = [Some("Apache-2.0"), Some("Apache-2.0 WITH LLVM-exception")];
        assert_eq!(complaints(&["Apache-2.0"], &used).len(), 1);
        assert_eq!(complaints(&["Apache-2.0", "Apache-2.0 WITH LLVM-exception"], &used).len(), 0);
    }

    #[test]
    fn a_licence_out_of_use_is_reported() {
        let found = complaints(&["MIT", "Zlib"], &[Some("MIT")]);
        assert_eq!(found, ["deny.toml allows Zlib, which no package names: take it off the list"]);
    }

    #[test]
    fn a_package_without_a_readable_licence_is_reported() {
        let found = complaints(&["MIT"], &[Some("MIT"), None, Some("see the file")]);
        assert_eq!(found.len(), 2);
    }
}

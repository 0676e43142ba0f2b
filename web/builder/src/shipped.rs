//! The list of what ships: every crate in the engine and every npm package in the page, as `CycloneDX` 1.6 (ECMA-424).

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde::Serialize;
use spdx::Expression;

use crate::engine;
use crate::locks::{self, NpmPackage};
use crate::programs::output;

/// Its name in a built folder; nothing that is built fetches it.
pub(crate) const FILE: &str = "sbom.cdx.json";

/// Neither time nor serial number: the same sources give the same list.
#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct List {
    #[serde(rename = "$schema")]
    schema: &'static str,
    bom_format: &'static str,
    spec_version: &'static str,
    version: u32,
    metadata: Metadata,
    components: Vec<Component>,
}

#[derive(Serialize)]
struct Metadata {
    component: Component,
}

#[derive(Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
struct Component {
    r#type: &'static str,
    #[serde(rename = "bom-ref")]
    reference: String,
    name: String,
    version: String,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    hashes: Vec<Hash>,
    licenses: [Licence; 1],
    /// Its address in a registry; what is of this workspace alone has none.
    #[serde(skip_serializing_if = "Option::is_none")]
    purl: Option<String>,
}

#[derive(Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
struct Hash {
    alg: &'static str,
    content: String,
}

#[derive(Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
struct Licence {
    expression: String,
}

/// Writes the list into the page's built folder, from the list of packages that Vite left there.
pub(crate) fn write_with_page(built: &Path) -> Result<()> {
    let file = built.join(".vite").join("packages.json");
    let text = fs::read_to_string(&file)
        .with_context(|| format!("the bundle has no list of its packages, {}", file.display()))?;
    let folders: BTreeSet<String> =
        serde_json::from_str(&text).context("the list of the bundle's packages")?;
    let mut components = crates()?;
    components.extend(npm_packages(&folders)?);
    write(built, "application", "coilnest-page", components)
}

/// Writes the list into the folder of the npm package, which has the engine alone.
pub(crate) fn write_with_package(package: &Path) -> Result<()> {
    write(package, "library", "coilnest", crates()?)
}

fn write(
    folder: &Path,
    kind: &'static str,
    name: &str,
    components: BTreeSet<Component>,
) -> Result<()> {
    let whole = Component {
        r#type: kind,
        reference: name.to_owned(),
        name: name.to_owned(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        hashes: Vec::new(),
        licenses: [licence(Some(env!("CARGO_PKG_LICENSE")))?],
        purl: None,
    };
    let list = List {
        schema: "http://cyclonedx.org/schema/bom-1.6.schema.json",
        bom_format: "CycloneDX",
        spec_version: "1.6",
        version: 1,
        metadata: Metadata { component: whole },
        components: components.into_iter().collect(),
    };
    let text = serde_json::to_string_pretty(&list)? + "\n";
    fs::write(folder.join(FILE), text).with_context(|| format!("cannot write {FILE}"))
}

/// What cargo compiles into the whole engine: nothing that only builds, expands macros or tests.
fn crates() -> Result<BTreeSet<Component>> {
    let locked = locks::crates()?;
    let printed = output(&mut engine::crates_inside())?;
    printed.lines().map(|line| crate_of(line, &locked)).collect()
}

/// A line is `serde v1.0.0`, for a crate of the workspace with its folder, a tab, and its licence.
fn crate_of(line: &str, locked: &[locks::Crate]) -> Result<Component> {
    let (package, terms) = line.split_once('\t').unwrap_or((line, ""));
    let mut words = package.split(' ');
    let (Some(name), Some(version)) =
        (words.next(), words.next().and_then(|version| version.strip_prefix('v')))
    else {
        bail!("cargo tells of a crate in words that are not known here: {line}");
    };
    let Some(lock) = locked.iter().find(|lock| lock.name == name && lock.version == version) else {
        bail!("{name} {version} is not in Cargo.lock");
    };
    let checksum = lock.checksum.iter();
    let purl = format!("pkg:cargo/{}@{}", encoded(name), encoded(version));
    Ok(Component {
        r#type: "library",
        reference: purl.clone(),
        name: name.to_owned(),
        version: version.to_owned(),
        hashes: checksum.map(|sum| Hash { alg: "SHA-256", content: sum.clone() }).collect(),
        licenses: [licence(Some(terms)).with_context(|| format!("{name} {version}"))?],
        purl: lock.source.is_some().then_some(purl),
    })
}

fn npm_packages(folders: &BTreeSet<String>) -> Result<BTreeSet<Component>> {
    let locked = locks::npm_packages()?;
    let packages = folders.iter().map(|folder| match locked.get(folder) {
        Some(package) => npm_package(package).with_context(|| folder.clone()),
        None => bail!("the page holds {folder}, which is not in www/package-lock.json"),
    });
    packages.collect()
}

fn npm_package(package: &NpmPackage) -> Result<Component> {
    let NpmPackage { name, version, licence: terms, integrity } = package;
    let path: Vec<String> = name.split('/').map(encoded).collect();
    let purl = format!("pkg:npm/{}@{}", path.join("/"), encoded(version));
    let sums = integrity.iter().flat_map(|sums| sums.split(' '));
    Ok(Component {
        r#type: "library",
        reference: purl.clone(),
        name: name.clone(),
        version: version.clone(),
        hashes: sums.map(hash).collect::<Result<_>>()?,
        licenses: [licence(terms.as_deref())?],
        purl: Some(purl),
    })
}

/// A checksum as npm writes it: its kind, and the sum in base64.
fn hash(integrity: &str) -> Result<Hash> {
    let (alg, sum) = match integrity.split_once('-') {
        Some(("sha512", sum)) => ("SHA-512", sum),
        Some(("sha384", sum)) => ("SHA-384", sum),
        Some(("sha256", sum)) => ("SHA-256", sum),
        Some(("sha1", sum)) => ("SHA-1", sum),
        _ => bail!("a checksum of a kind that is not known: {integrity}"),
    };
    let bytes =
        STANDARD.decode(sum).with_context(|| format!("a checksum that is damaged: {integrity}"))?;
    let content = bytes.iter().fold(String::new(), |hex, byte| hex + &format!("{byte:02x}"));
    Ok(Hash { alg, content })
}

/// The terms as an expression of SPDX: older crates write `/` for `OR`.
fn licence(terms: Option<&str>) -> Result<Licence> {
    let Some(terms) = terms.filter(|terms| !terms.is_empty()) else { bail!("names no licence") };
    let complaint = || format!("a licence that cannot be read: {terms}");
    let standing = Expression::canonicalize(terms).with_context(complaint)?;
    let expression = standing.unwrap_or_else(|| terms.to_owned());
    Expression::parse(&expression).with_context(complaint)?;
    Ok(Licence { expression })
}

/// A part of a package address (purl): what has a meaning there is written by its code.
fn encoded(part: &str) -> String {
    let bytes = part.bytes().map(|byte| match byte {
        b'.' | b'-' | b'_' | b'~' => char::from(byte).to_string(),
        _ if byte.is_ascii_alphanumeric() => char::from(byte).to_string(),
        _ => format!("%{byte:02X}"),
    });
    bytes.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(components: &BTreeSet<Component>) -> BTreeSet<&str> {
        components.iter().map(|component| component.name.as_str()).collect()
    }

    #[test]
    fn every_crate_in_the_engine_is_locked_and_has_the_checksum_of_the_lock() {
        let locked = locks::crates().unwrap();
        let listed = crates().unwrap();
        for Component { name, version, hashes, purl, .. } in &listed {
            let lock = locked.iter().find(|lock| lock.name == *name && lock.version == *version);
            let checksum = lock.unwrap().checksum.as_deref();
            assert_eq!(hashes.first().map(|hash| hash.content.as_str()), checksum, "{name}");
            assert_eq!(purl.is_none(), name.starts_with("coilnest"), "{name}");
        }
        for inside in ["coilnest", "coilnest-published", "serde_json", "uom", "talc"] {
            assert!(names(&listed).contains(inside), "{inside} is missing");
        }
    }

    #[test]
    fn what_only_builds_expands_or_tests_is_no_part_of_the_engine() {
        let listed = crates().unwrap();
        // Of a test, of the page's builder, of a build script, of a macro, and of a feature that no engine has.
        for other in ["proptest", "coilnest-builder", "toml", "serde_derive", "syn", "schemars"] {
            let locked = locks::crates().unwrap();
            assert!(locked.iter().any(|lock| lock.name == other), "{other} is not even locked");
            assert!(!names(&listed).contains(other), "{other} is listed");
        }
    }

    #[test]
    fn an_npm_package_is_listed_with_the_sum_of_the_lock_in_hexadecimal() {
        let package = NpmPackage {
            name: "@scope/name".to_owned(),
            version: "1.0.0+b".to_owned(),
            licence: Some("MIT/Apache-2.0".to_owned()),
            integrity: Some("sha512-AP+g".to_owned()),
        };
        let listed = npm_package(&package).unwrap();
        assert_eq!(listed.purl.as_deref(), Some("pkg:npm/%40scope/name@1.0.0%2Bb"));
        assert_eq!(listed.licenses[0].expression, "MIT OR Apache-2.0");
        assert_eq!(listed.hashes, [Hash { alg: "SHA-512", content: "00ffa0".to_owned() }]);
    }

    #[test]
    fn what_is_not_in_a_lock_or_has_no_licence_is_refused() {
        let strange = BTreeSet::from(["node_modules/no-such-package".to_owned()]);
        let trouble = npm_packages(&strange).unwrap_err().to_string();
        assert!(trouble.contains("no-such-package"), "{trouble}");
        let trouble = crate_of("no-such-crate v1.0.0\tMIT", &[]).unwrap_err().to_string();
        assert!(trouble.contains("no-such-crate 1.0.0 is not in Cargo.lock"), "{trouble}");
        assert!(licence(None).is_err());
        assert!(licence(Some("")).is_err());
        assert!(licence(Some("see the file")).is_err());
        assert!(licence(Some("MIT OR")).is_err());
        assert!(hash("md5-AA==").is_err());
        assert!(hash("sha512-A").is_err());
    }
}

//! Both lock files against a kept copy of advisories: folders of records in the Open Source Vulnerability format (OSV).

mod record;

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Error, Result};
use semver::Version;
use serde::Deserialize;

use crate::locks;
use crate::verify::{NotChecked, Tally};
use record::{Record, Standing};

/// Names the folders, put together as those of `PATH` are.
const FOLDERS: &str = "COILNEST_ADVISORIES";

/// What the format calls those who publish the packages of each lock. The first is a name of a host too, which `tidy` keeps out of the sources.
const ECOSYSTEMS: [(&str, &str); 2] =
    [(concat!("crates", ".io"), "Cargo.lock"), ("npm", "www/package-lock.json")];

pub(crate) fn check() -> Result<Tally> {
    let Some(folders) = std::env::var_os(FOLDERS).filter(|folders| !folders.is_empty()) else {
        let reason = format!("{FOLDERS} names no kept copy; see *Advisories* in DEVELOPERS.md");
        return Err(NotChecked(reason).into());
    };
    let mut search = Search { locked: locked()?, ignored: ignored()?, ..Search::default() };
    let records = records_in(&folders)?;
    for file in &records {
        search.look_into(&file.display().to_string(), &fs::read(file)?);
    }
    for line in search.complaints.iter().chain(&search.idle()) {
        println!("{line}");
    }
    println!("{} packages held against {} records", search.locked.len(), records.len());
    search.judge()
}

/// A package of a lock file.
struct Locked {
    ecosystem: &'static str,
    name: String,
    version: Version,
}

/// Every package of both locks but those of the workspace, which nobody has published.
fn locked() -> Result<Vec<Locked>> {
    let [(crates, _), (npm, _)] = ECOSYSTEMS;
    let published = locks::crates()?.into_iter().filter(|locked| locked.source.is_some());
    let published = published.map(|locked| (crates, locked.name, locked.version));
    let packages = locks::npm_packages()?.into_values();
    let packages = packages.map(|package| (npm, package.name, package.version));
    let all = published.chain(packages).map(|(ecosystem, name, version)| {
        let version = version.parse().with_context(|| format!("{name} {version}"))?;
        Ok(Locked { ecosystem, name, version })
    });
    all.collect()
}

/// An advisory that is known and borne, in the form of cargo-deny; here the reason must be given.
#[derive(Deserialize)]
struct Ignored {
    id: String,
    reason: String,
}

fn ignored() -> Result<Vec<Ignored>> {
    #[derive(Deserialize)]
    struct Deny {
        advisories: Advisories,
    }
    #[derive(Deserialize)]
    struct Advisories {
        ignore: Vec<Ignored>,
    }
    let deny: Deny = locks::policy()?;
    Ok(deny.advisories.ignore)
}

fn records_in(folders: &OsStr) -> Result<Vec<PathBuf>> {
    let mut records = Vec::new();
    for folder in std::env::split_paths(folders) {
        gather(&folder, &mut records)?;
    }
    Ok(records)
}

/// The `.json` files of a folder and of those in it.
fn gather(folder: &Path, records: &mut Vec<PathBuf>) -> Result<()> {
    let entries = fs::read_dir(folder);
    for entry in entries.with_context(|| format!("cannot read {}", folder.display()))? {
        let path = entry?.path();
        if path.is_dir() {
            gather(&path, records)?;
        } else if path.extension().is_some_and(|extension| extension == "json") {
            records.push(path);
        }
    }
    Ok(())
}

#[derive(Default)]
struct Search {
    locked: Vec<Locked>,
    ignored: Vec<Ignored>,
    /// A line for each advisory about a locked version, and for each record that could not be read.
    complaints: Vec<String>,
    /// The ignored ones that were met.
    met: BTreeSet<String>,
    /// The ecosystems that the copy has records of.
    known: BTreeSet<String>,
}

impl Search {
    fn look_into(&mut self, file: &str, text: &[u8]) {
        let unread = |trouble: &Error| format!("{file} cannot be read: {trouble:#}");
        match Record::read(text).and_then(|record| self.compare(&record)) {
            Ok(mut hits) => self.complaints.append(&mut hits),
            Err(trouble) => self.complaints.push(unread(&trouble)),
        }
    }

    /// A line for each locked version that the record is about.
    fn compare(&mut self, record: &Record) -> Result<Vec<String>> {
        let mut hits = Vec::new();
        for affected in record.affected() {
            let Some(package) = &affected.package else { continue };
            self.known.insert(package.ecosystem.clone());
            let is_meant = |locked: &&Locked| {
                locked.ecosystem == package.ecosystem && locked.name == package.name
            };
            for Locked { name, version, .. } in self.locked.iter().filter(is_meant) {
                let Standing::Affected { fixed } = affected.standing(version)? else { continue };
                if let Some(ignored) = self.ignored.iter().find(|it| record.goes_by(&it.id)) {
                    self.met.insert(ignored.id.clone());
                    continue;
                }
                let cure = fixed.map_or("no later version is named as cured".to_owned(), |fixed| {
                    format!("cured in {fixed}")
                });
                hits.push(format!("{name} {version}: {}, {}; {cure}", record.id, record.summary()));
            }
        }
        Ok(hits)
    }

    /// A line for each ignored advisory: why it is, or that it need not be.
    fn idle(&self) -> Vec<String> {
        let lines = self.ignored.iter().map(|Ignored { id, reason }| {
            if self.met.contains(id) {
                format!("{id} is ignored: {reason}")
            } else {
                format!("deny.toml ignores {id}, which this copy does not have of a locked version")
            }
        });
        lines.collect()
    }

    /// Where the copy has no record for one of the locks, nothing was found and nothing was checked.
    fn judge(&self) -> Result<Tally> {
        let unknown = ECOSYSTEMS.iter().filter(|(ecosystem, _)| !self.known.contains(*ecosystem));
        let locks: Vec<&str> = unknown.map(|(_, lock)| *lock).collect();
        if self.complaints.is_empty() && !locks.is_empty() {
            let reason = format!("the kept copy has no record for {}", locks.join(" and "));
            return Err(NotChecked(reason).into());
        }
        Ok(Tally::of_one(self.complaints.is_empty()))
    }
}

/// All packages and records here are invented.
#[cfg(test)]
mod tests {
    use super::*;

    fn search() -> Search {
        let locked = ECOSYSTEMS.map(|(ecosystem, _)| Locked {
            ecosystem,
            name: "winding".to_owned(),
            version: Version::new(1, 4, 1),
        });
        Search { locked: Vec::from(locked), ..Search::default() }
    }

    /// A record about the versions of one ecosystem from 1.2.0 to before 1.4.2, with more to say.
    fn record(ecosystem: &str, more: &str) -> String {
        format!(
            r#"{{ "id": "INVENTED-1", "summary": "Overflows the bench", {more} "affected": [{{
                "package": {{ "ecosystem": "{ecosystem}", "name": "winding" }},
                "ranges": [{{ "type": "SEMVER", "events": [{{ "introduced": "1.2.0" }}, {{ "fixed": "1.4.2" }}] }}]
            }}] }}"#
        )
    }

    fn looked_into(search: &mut Search, records: &[String]) {
        for record in records {
            search.look_into("invented.json", record.as_bytes());
        }
    }

    fn both(more: &str) -> [String; 2] {
        ECOSYSTEMS.map(|(ecosystem, _)| record(ecosystem, more))
    }

    #[test]
    fn a_hit_names_package_version_advisory_summary_and_cure_and_fails() {
        let mut search = search();
        looked_into(&mut search, &both(""));
        let line = "winding 1.4.1: INVENTED-1, Overflows the bench; cured in 1.4.2";
        assert_eq!(search.complaints, [line, line]);
        assert_eq!(search.judge().unwrap(), Tally::of_one(false));
    }

    #[test]
    fn what_is_withdrawn_or_of_other_packages_is_no_hit() {
        let mut search = search();
        let [crates, npm] = both("");
        let records = [
            record("npm", r#""withdrawn": "2026-01-01T00:00:00Z","#),
            record("Packagist", ""),
            crates.replace("winding", "unwinding"),
            npm.replace("winding", "unwinding"),
        ];
        looked_into(&mut search, &records);
        assert_eq!(search.complaints, [""; 0]);
        assert_eq!(search.judge().unwrap(), Tally::of_one(true));
    }

    #[test]
    fn a_record_that_cannot_be_read_is_named_and_fails() {
        let mut search = search();
        let [whole, _] = both("");
        let odd = whole.replace("SEMVER", "CALENDAR");
        looked_into(&mut search, &["{}".to_owned(), whole[..40].to_owned(), odd]);
        assert_eq!(search.complaints.len(), 3);
        for complaint in &search.complaints {
            assert!(complaint.starts_with("invented.json cannot be read: "), "{complaint}");
        }
        assert_eq!(search.judge().unwrap(), Tally::of_one(false));
    }

    #[test]
    fn a_copy_without_records_for_a_lock_has_not_checked_it() {
        let mut search = search();
        let unchecked = |search: &Search| search.judge().unwrap_err().to_string();
        assert!(unchecked(&search).ends_with("Cargo.lock and www/package-lock.json"));
        looked_into(&mut search, &[record("npm", "").replace("winding", "unwinding")]);
        assert!(unchecked(&search).ends_with("no record for Cargo.lock"));
        assert!(search.judge().unwrap_err().is::<NotChecked>());
    }

    #[test]
    fn what_is_ignored_by_any_of_its_names_is_told_with_the_reason() {
        let mut search = search();
        let ignored = [("INVENTED-2", "never called here"), ("INVENTED-3", "gone")];
        search.ignored = ignored
            .map(|(id, reason)| Ignored { id: id.to_owned(), reason: reason.to_owned() })
            .into();
        looked_into(&mut search, &both(r#""aliases": ["INVENTED-2"],"#));
        assert_eq!(search.judge().unwrap(), Tally::of_one(true));
        let told = search.idle();
        assert_eq!(told[0], "INVENTED-2 is ignored: never called here");
        assert!(told[1].starts_with("deny.toml ignores INVENTED-3, which"), "{told:?}");
    }

    #[test]
    fn both_locks_are_read_without_the_workspace_and_an_ignored_advisory_has_its_reason() {
        let locked = locked().unwrap();
        for (ecosystem, name) in [(ECOSYSTEMS[0].0, "serde"), (ECOSYSTEMS[1].0, "svelte")] {
            assert!(locked.iter().any(|it| it.ecosystem == ecosystem && it.name == name), "{name}");
        }
        assert!(!locked.iter().any(|it| it.name.starts_with("coilnest")));
        assert!(ignored().is_ok());
    }

    #[test]
    fn the_records_of_all_folders_are_found_and_a_folder_that_is_not_there_is_told() {
        let place =
            std::env::temp_dir().join(format!("coilnest-advisories-{}", std::process::id()));
        let folders = ["one/deeper", "two"].map(|name| place.join(name));
        for folder in &folders {
            fs::create_dir_all(folder).unwrap();
            fs::write(folder.join("invented.json"), "{}").unwrap();
            fs::write(folder.join("README.md"), "").unwrap();
        }
        let named = std::env::join_paths([place.join("one"), place.join("two")]).unwrap();
        assert_eq!(records_in(&named).unwrap().len(), 2);
        let trouble = records_in(place.join("three").as_os_str()).unwrap_err().to_string();
        assert!(trouble.contains("three"), "{trouble}");
        fs::remove_dir_all(place).unwrap();
    }
}

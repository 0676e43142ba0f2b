//! One advisory in the Open Source Vulnerability format, and whether it is about a version of a package.

use std::cmp::Ordering;

use anyhow::{Context, Result, bail};
use semver::Version;
use serde::Deserialize;

/// What is read of a record. The format lets a list be `null`.
#[derive(Deserialize)]
pub(super) struct Record {
    pub(super) id: String,
    summary: Option<String>,
    details: Option<String>,
    aliases: Option<Vec<String>>,
    withdrawn: Option<String>,
    affected: Option<Vec<Affected>>,
}

#[derive(Deserialize)]
pub(super) struct Affected {
    /// Without one, only commits of a repository are named.
    pub(super) package: Option<Package>,
    ranges: Option<Vec<Range>>,
    versions: Option<Vec<String>>,
}

#[derive(Deserialize)]
pub(super) struct Package {
    pub(super) ecosystem: String,
    pub(super) name: String,
}

#[derive(Deserialize)]
struct Range {
    r#type: String,
    events: Vec<Event>,
}

#[derive(Clone, Deserialize)]
#[serde(rename_all = "snake_case")]
enum Event {
    Introduced(String),
    Fixed(String),
    LastAffected(String),
    Limit(String),
}

/// Where a version stands to an advisory.
#[derive(Debug, PartialEq)]
pub(super) enum Standing {
    Clear,
    Affected { fixed: Option<Version> },
}

impl Record {
    pub(super) fn read(text: &[u8]) -> Result<Self> {
        Ok(serde_json::from_slice(text)?)
    }

    /// What it says of packages; a record that was withdrawn says nothing more.
    pub(super) fn affected(&self) -> impl Iterator<Item = &Affected> {
        self.affected.iter().flatten().filter(|_| self.withdrawn.is_none())
    }

    pub(super) fn goes_by(&self, id: &str) -> bool {
        self.id == id || self.aliases.iter().flatten().any(|alias| alias == id)
    }

    /// Its summary, or the first line of its story.
    pub(super) fn summary(&self) -> &str {
        let texts = [&self.summary, &self.details].into_iter().flatten();
        texts.flat_map(|text| text.lines()).find(|line| !line.is_empty()).unwrap_or("no summary")
    }
}

impl Affected {
    /// By the evaluation that the format describes: a version that is listed, or that lies in a range.
    pub(super) fn standing(&self, version: &Version) -> Result<Standing> {
        let ranges = self.ranges.iter().flatten().filter(|range| range.r#type != "GIT");
        let ranges: Vec<Vec<Step>> = ranges.map(Range::steps).collect::<Result<_>>()?;
        let written = version.to_string();
        let is_listed = self.versions.iter().flatten().any(|listed| *listed == written);
        if !is_listed && !ranges.iter().any(|steps| holds(steps, version)) {
            return Ok(Standing::Clear);
        }
        let fixes = ranges.into_iter().flatten().filter(|step| step.turn == Turn::Fixed);
        let later = fixes.map(|step| step.at).filter(|fix| fix.cmp_precedence(version).is_gt());
        Ok(Standing::Affected { fixed: later.min_by(Version::cmp_precedence) })
    }
}

/// What changes at a version, in the order of what is said of one and the same.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Turn {
    Fixed,
    Introduced,
    LastAffected,
    Limit,
}

struct Step {
    at: Version,
    turn: Turn,
}

impl Step {
    fn order(&self, other: &Self) -> Ordering {
        self.at.cmp_precedence(&other.at).then(self.turn.cmp(&other.turn))
    }
}

impl Range {
    /// The steps from the lowest version on.
    fn steps(&self) -> Result<Vec<Step>> {
        if !["SEMVER", "ECOSYSTEM"].contains(&self.r#type.as_str()) {
            bail!("a range of the type `{}`, which is not known here", self.r#type);
        }
        let steps = self.events.iter().filter_map(|event| event.step().transpose());
        let mut steps: Vec<Step> = steps.collect::<Result<_>>()?;
        steps.sort_by(Step::order);
        Ok(steps)
    }
}

impl Event {
    /// None where a limit is no limit.
    fn step(&self) -> Result<Option<Step>> {
        let (turn, at) = match self {
            Self::Introduced(at) if at == "0" => (Turn::Introduced, "0.0.0-0"),
            Self::Limit(at) if at == "*" => return Ok(None),
            Self::Introduced(at) => (Turn::Introduced, at.as_str()),
            Self::Fixed(at) => (Turn::Fixed, at.as_str()),
            Self::LastAffected(at) => (Turn::LastAffected, at.as_str()),
            Self::Limit(at) => (Turn::Limit, at.as_str()),
        };
        let at = at.parse().with_context(|| format!("`{at}` is no version like 1.2.3"))?;
        Ok(Some(Step { at, turn }))
    }
}

fn holds(steps: &[Step], version: &Version) -> bool {
    let mut limits = steps.iter().filter(|step| step.turn == Turn::Limit).peekable();
    if limits.peek().is_some() && !limits.any(|limit| version.cmp_precedence(&limit.at).is_lt()) {
        return false;
    }
    steps.iter().fold(false, |inside, step| {
        let there = version.cmp_precedence(&step.at);
        match step.turn {
            Turn::Introduced if there.is_ge() => true,
            Turn::Fixed if there.is_ge() => false,
            Turn::LastAffected if there.is_gt() => false,
            _ => inside,
        }
    })
}

/// All records here are invented.
#[cfg(test)]
mod tests {
    use super::*;

    fn standing(affected: &str, version: &str) -> Standing {
        let affected: Affected = serde_json::from_str(affected).unwrap();
        affected.standing(&version.parse().unwrap()).unwrap()
    }

    fn affected(fixed: Option<&str>) -> Standing {
        Standing::Affected { fixed: fixed.map(|fixed| fixed.parse().unwrap()) }
    }

    /// The versions of a list that an entry with these ranges is about.
    fn inside<'a>(ranges: &str, versions: &[&'a str]) -> Vec<&'a str> {
        let entry = format!(r#"{{ "ranges": [{ranges}] }}"#);
        let is_inside = |version: &&&str| standing(&entry, version) != Standing::Clear;
        versions.iter().filter(is_inside).copied().collect()
    }

    #[test]
    fn a_range_reaches_from_its_first_version_to_before_the_fixed_one() {
        let range =
            r#"{ "type": "SEMVER", "events": [{ "introduced": "1.2.0" }, { "fixed": "1.4.2" }] }"#;
        let versions = ["1.1.9", "1.2.0", "1.4.1", "1.4.2", "1.10.0", "2.0.0"];
        assert_eq!(inside(range, &versions), ["1.2.0", "1.4.1"]);
        let entry = format!(r#"{{ "ranges": [{range}] }}"#);
        assert_eq!(standing(&entry, "1.4.1"), affected(Some("1.4.2")));
        assert_eq!(standing(&entry, "1.4.2"), Standing::Clear);
    }

    #[test]
    fn the_last_affected_version_is_affected_and_has_no_fixed_one() {
        let range = r#"{ "type": "ECOSYSTEM", "events": [{ "last_affected": "1.4.2" }, { "introduced": "0" }] }"#;
        assert_eq!(inside(range, &["0.0.0", "1.4.2", "1.4.3"]), ["0.0.0", "1.4.2"]);
        assert_eq!(standing(&format!(r#"{{ "ranges": [{range}] }}"#), "1.4.2"), affected(None));
    }

    #[test]
    fn each_range_and_each_pair_of_a_range_counts_and_the_nearest_later_fix_is_named() {
        let pairs = r#"{ "type": "SEMVER", "events": [
            { "introduced": "2.0.0" }, { "fixed": "2.3.1" }, { "introduced": "0.0.0-0" }, { "fixed": "1.0.5" }
        ] }"#;
        let other =
            r#"{ "type": "SEMVER", "events": [{ "introduced": "3.0.0" }, { "fixed": "3.0.1" }] }"#;
        let ranges = format!("{pairs}, {other}");
        let versions = ["1.0.4", "1.0.5", "1.9.9", "2.0.0", "2.3.1", "3.0.0", "3.0.1"];
        assert_eq!(inside(&ranges, &versions), ["1.0.4", "2.0.0", "3.0.0"]);
        let entry = format!(r#"{{ "ranges": [{ranges}] }}"#);
        assert_eq!(standing(&entry, "2.1.0"), affected(Some("2.3.1")));
    }

    #[test]
    fn a_version_before_a_release_stands_before_it_and_a_build_does_not_matter() {
        let range =
            r#"{ "type": "SEMVER", "events": [{ "introduced": "1.0.0" }, { "fixed": "2.0.0" }] }"#;
        let versions = ["1.0.0-rc.1", "1.0.0", "2.0.0-alpha", "2.0.0", "2.0.0+b"];
        assert_eq!(inside(range, &versions), ["1.0.0", "2.0.0-alpha"]);
        let range = r#"{ "type": "SEMVER", "events": [{ "introduced": "0" }, { "last_affected": "2.0.0" }] }"#;
        assert_eq!(inside(range, &["2.0.0", "2.0.0+b", "2.0.1-0"]), ["2.0.0", "2.0.0+b"]);
        let range = r#"{ "type": "SEMVER", "events": [{ "introduced": "0" }, { "fixed": "2.0.0-rc.10" }] }"#;
        assert_eq!(inside(range, &["2.0.0-rc.9", "2.0.0-rc.10", "2.0.0"]), ["2.0.0-rc.9"]);
    }

    #[test]
    fn a_version_that_is_listed_is_affected_without_a_range() {
        let entry = r#"{ "ranges": null, "versions": ["1.0.1", "1.0.3"] }"#;
        assert_eq!(standing(entry, "1.0.3"), affected(None));
        assert_eq!(standing(entry, "1.0.2"), Standing::Clear);
    }

    #[test]
    fn a_range_is_bounded_by_its_limit_and_one_of_commits_is_no_range_of_versions() {
        let range =
            r#"{ "type": "SEMVER", "events": [{ "introduced": "1.0.0" }, { "limit": "2.0.0" }] }"#;
        assert_eq!(inside(range, &["1.9.0", "2.0.0"]), ["1.9.0"]);
        let range = range.replace("2.0.0", "*");
        assert_eq!(inside(&range, &["1.9.0", "2.0.0"]), ["1.9.0", "2.0.0"]);
        let commits =
            r#"{ "type": "GIT", "events": [{ "introduced": "0" }, { "fixed": "c0ffee" }] }"#;
        assert_eq!(inside(commits, &["1.0.0"]), [""; 0]);
    }

    #[test]
    fn a_range_that_cannot_be_read_is_an_error_and_not_a_clear_version() {
        let version = Version::new(1, 0, 0);
        let ranges = [
            r#"{ "type": "SEMVER", "events": [{ "introduced": "one" }] }"#,
            r#"{ "type": "CALENDAR", "events": [] }"#,
        ];
        for range in ranges {
            let entry: Affected =
                serde_json::from_str(&format!(r#"{{ "ranges": [{range}] }}"#)).unwrap();
            assert!(entry.standing(&version).is_err(), "{range}");
        }
    }
}

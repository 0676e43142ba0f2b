//! Every working of every kept job, worked out by another library from what it says was put in.

mod expression;

use coilnest::formula::{AND, Formula, RESULTS, SYMBOLS, meaning};
use coilnest::job::report::{Phrase, WorkingEntry, Workings};
use coilnest::job::{file, replace};
use coilnest_tables::TABLES;
use coilnest_tests::{answers, corpus, job_path};
use expression::worked;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// What a report says that has a working: its numbers, in the order of the working's statements.
fn with_workings(value: &Value) -> Vec<(&Value, Vec<f64>)> {
    let inner: Vec<&Value> = match value {
        Value::Object(object) => object.values().collect(),
        Value::Array(items) => items.iter().collect(),
        _ => Vec::new(),
    };
    let numbers =
        |names: &[&str]| names.iter().filter_map(|name| value[*name].as_f64()).collect::<Vec<_>>();
    let own = value.get("working").filter(|working| working.is_string()).map(|_| {
        let figure = numbers(&["si", "doubt_si"]);
        (
            value,
            if figure.is_empty() { numbers(&["p_short", "p_long", "offered_si"]) } else { figure },
        )
    });
    own.into_iter().chain(inner.into_iter().flat_map(with_workings)).collect()
}

/// What no expression gives, and why. In the order of their letters.
const IN_WORDS: [&str; 4] = [
    // Found by a search, as u stands in both probabilities.
    "the largest u with which one of the probabilities reaches the level",
    // Likewise, from bend to bend of the nests' load curves.
    "the least dip at which a wheel carries nothing",
    // The loads of many nests at once, of which some may be loose or solid.
    "the loads of the nests and the weight in balance",
    // A sum over all readings, with a search for the height at which two lines meet.
    "the straight line with the least sum of squares, or two that meet",
];

/// A number without the range that stands in brackets behind it.
fn nominal(number: &str) -> &str {
    number.split_once(" (").filter(|(_, range)| range.contains(" to ")).map_or(number, |(of, _)| of)
}

/// What of a working is not as its figure says.
fn wrong(working: &WorkingEntry, numbers: &[f64], mass: bool) -> Option<String> {
    let letters: Vec<String> =
        working.letters.0.iter().map(|(_, number)| nominal(number).to_owned()).collect();
    working.with.split(AND).zip(numbers).find_map(|(with, number)| {
        match worked(with, &letters, mass) {
            Ok((value, off)) if (value - number).abs() <= off * 1.001 + 1e-9 * number.abs() => None,
            Ok((value, off)) => Some(format!(
                "{with} gives {value:e}, off by {off:e} at most; the figure is {number:e}"
            )),
            Err(why) => Some(why),
        }
    })
}

/// Every working, with its formula as numbers are put into it.
fn each(workings: &Workings) -> impl Iterator<Item = (Formula, WorkingEntry)> {
    let keyed = workings.iter().zip((1..).map(|number| format!("w{number}")));
    keyed.map(|(working, key)| (workings.formula(&key).unwrap(), working))
}

/// A letter as the table of them has it.
fn sign(letter: &Phrase) -> &'static str {
    SYMBOLS.iter().find(|symbol| *letter == symbol.sign).unwrap().sign
}

/// The letters and their numbers are those that are put in.
#[test]
fn letters_have_the_numbers_that_are_put_in() {
    let mut checked = 0;
    for answer in answers::all().unwrap() {
        for (formula, WorkingEntry { with, letters, .. }) in each(&answer.workings) {
            if formula.is_in_words() || letters.0.iter().any(|(_, number)| number.is_empty()) {
                continue;
            }
            let plain: Vec<_> =
                letters.0.iter().map(|(letter, of)| (sign(letter), nominal(of))).collect();
            let values: Vec<_> = plain.iter().map(|(sign, number)| (*sign, number as _)).collect();
            assert_eq!(formula.put(&values).with(), with, "{formula}");
            checked += 1;
        }
    }
    assert!(checked > 2000, "{checked}");
}

/// What is put in gives the figure, but for the digits that were left away.
#[test]
fn what_is_put_in_gives_the_figure() {
    let (mut checked, mut in_words) = (0, BTreeMap::<String, usize>::new());
    let mut all = BTreeSet::new();
    for answer in answers::all().unwrap() {
        for (figure, numbers) in with_workings(&answer.parts) {
            let key = figure["working"].as_str().unwrap();
            let Some(working) = answer.workings.get(key) else { continue };
            if answer.workings.formula(key).unwrap().is_in_words() {
                *in_words.entry(working.formula.clone()).or_default() += 1;
                continue;
            }
            checked += 1;
            let mass = figure["unit"] == "kg";
            let wrong = wrong(&working, &numbers, mass);
            all.extend(wrong.map(|why| format!("{}: {why} ({})", working.formula, answer.name)));
        }
    }
    let few: Vec<_> = all.iter().take(30).collect();
    assert!(all.is_empty(), "{} of {checked} wrong: {few:#?}", all.len());
    assert!(checked > 2500, "{checked}");
    let kinds: Vec<&str> = in_words.keys().map(String::as_str).collect();
    assert_eq!(kinds, IN_WORDS);
}

/// The lines of Replace where the kept job has none of them: loads that come and go, a coil that buckles,
/// one that is not pressed, figures that are stated, nests for nests, and a frame.
#[test]
fn every_line_of_replace_is_worked_out() {
    let wire = json!({ "id": "wire", "name": "Wire", "bar": "0.2", "outside": "1.6", "turns": "12",
        "ends": "closed-ground", "free": "6", "steel": "shigley-music-a228-over-0.125",
        "tolerances": { "bar": "0.002", "free": "1/16" } });
    let cycle = |least: &str, most: &str| json!({ "least": least, "most": most });
    let candidate = |of: &Value, field: &str, value: Value| {
        let mut candidate = of.clone();
        candidate[field] = value;
        json!([candidate])
    };
    let outer = json!({ "id": "o", "name": "O", "bar": "1", "outside": "6", "turns": "7 1/2",
        "ends": "tapered-ground", "free": "13", "steel": "en-10089" });
    let inner = json!({ "id": "i", "name": "I", "bar": "5/8", "outside": "3 3/8", "turns": "11 1/2",
        "ends": "tapered-ground", "free": "12 3/4", "steel": "en-10089" });
    let both = json!([outer, inner]);
    let height = "replace.asked.height";
    let candidates = "replace.candidates";
    let stated =
        json!([{ "height": "11", "load": "3800 lb" }, { "height": "10", "load": "5700 lb" }]);
    let variants: Vec<Vec<(&str, Value)>> = vec![
        vec![(candidates, candidate(&wire, "duty", cycle("20", "60")))],
        vec![(candidates, candidate(&wire, "duty", cycle("100", "220")))],
        vec![(candidates, candidate(&wire, "free", json!("14")))],
        vec![(height, json!("13 1/4"))],
        vec![(candidates, candidate(&outer, "solid", json!("7 3/8")))],
        vec![(candidates, candidate(&outer, "rate", json!("1900 lb/in")))],
        vec![("coils[0].loads", stated.clone()), (candidates, json!([outer]))],
        vec![("coils[0].loads", stated.clone()), (candidates, candidate(&outer, "loads", stated))],
        vec![("replace.original", json!("inner")), (candidates, json!([inner]))],
        vec![(candidates, both.clone()), ("replace.together", json!("yes"))],
        vec![(candidates, json!([outer])), ("replace.together", json!("this-nest"))],
        vec![
            (candidates, both.clone()),
            ("replace.together", json!("yes")),
            (height, json!("12 7/8")),
        ],
        vec![(candidates, both), ("replace.together", json!("yes")), (height, json!("7 1/4"))],
    ];
    let kept: Value = serde_json::from_str(&corpus::named("replace").unwrap().text).unwrap();
    let of_variant = |variant: Vec<(&str, Value)>| {
        let mut job = kept.clone();
        for (path, value) in variant {
            job_path::put(&mut job, path, Some(value));
        }
        job
    };
    let framed = |together: &str| {
        let coil = |id: &str, rate: &str| json!({ "id": id, "name": id, "rate": rate, "free": "350", "solid": "150" });
        let places = [
            ("A", "900", "500"),
            ("B", "900", "-500"),
            ("C", "-900", "500"),
            ("D", "-900", "-500"),
        ];
        let nest =
            |(id, _, _)| json!({ "id": id, "seats": [{ "coil": "one", "readings": ["350"] }] });
        let support =
            |(nest, along, across)| json!({ "nest": nest, "along": along, "across": across });
        let asked = json!({ "height": "320", "deviation": "0.04" });
        json!({
            "format": "coilnest-job/1", "system": "metric", "coils": [coil("one", "340")],
            "nests": places.map(nest),
            "frame": { "weight": "40 000 N", "centre": { "along": "60", "across": "0" }, "supports": places.map(support) },
            "replace": { "original": "one", "together": together, "candidates": [coil("two", "420")], "asked": asked },
        })
    };
    let jobs = variants.into_iter().map(of_variant).chain([framed("no"), framed("this-nest")]);
    let (mut codes, mut all) = (BTreeSet::new(), BTreeSet::new());
    for job in jobs {
        let mut report = replace(&file::from_value(job).unwrap(), &TABLES);
        let workings = std::mem::take(&mut report.workings);
        let parts = serde_json::to_value(&report).unwrap();
        for (figure, numbers) in with_workings(&parts) {
            let key = figure["working"].as_str().unwrap();
            let Some(working) = workings.get(key) else { continue };
            assert!(!workings.formula(key).unwrap().is_in_words(), "{}", working.formula);
            codes.extend(figure["code"].as_str().map(str::to_owned));
            let wrong = wrong(&working, &numbers, false);
            all.extend(wrong.map(|why| format!("{}: {why}", working.formula)));
        }
    }
    assert!(all.is_empty(), "{all:#?}");
    let expected = [
        "buckling",
        "deviation",
        "fatigue",
        "free-height",
        "inner-gap",
        "load",
        "load-at-first",
        "load-at-second",
        "outer-gap",
        "pocket",
        "post",
        "rate",
        "reserve",
        "solid-height",
        "stress-at-solid",
        "stress-at-work",
    ];
    assert_eq!(codes.iter().map(String::as_str).collect::<Vec<_>>(), expected);
}

/// What is computed has a name: that of the letter, or of the word, with which the formula begins.
#[test]
fn each_working_says_what_is_computed() {
    let mut used = BTreeSet::new();
    for answer in answers::all().unwrap() {
        for (formula, WorkingEntry { formula: said, .. }) in each(&answer.workings) {
            let result = said.split([' ', ';']).next().unwrap_or_default().to_owned();
            let known = formula.is_in_words() || !meaning(&result).is_empty();
            assert!(known, "{result} of {said} stands in no table");
            used.insert(result);
        }
    }
    let idle = RESULTS.iter().map(|result| result.sign).filter(|sign| !used.contains(*sign));
    assert_eq!(idle.collect::<Vec<_>>(), [""; 0]);
}

/// One meaning a letter, and one letter a meaning.
#[test]
fn letters_have_one_meaning() {
    let all = || SYMBOLS.iter().chain(RESULTS);
    let signs: BTreeSet<_> = all().map(|symbol| symbol.sign).collect();
    let names: BTreeSet<_> = all().map(|symbol| symbol.name).collect();
    assert_eq!((signs.len(), names.len()), (all().count(), all().count()));
}

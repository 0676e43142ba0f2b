//! Every working of every kept job, worked out by another library from what it says was put in.

#![cfg(test)]

#[path = "workings/expression.rs"]
mod expression;

use coilnest::formula::{AND, SYMBOLS};
use coilnest::job::report::WorkingEntry;
use coilnest_tests::answers;
use expression::worked;
use serde_json::Value;
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

/// What of a working is not as its figure says.
fn wrong(working: &WorkingEntry, numbers: &[f64], mass: bool) -> Option<String> {
    // What stands in brackets behind a number is its range.
    let nominal = |number: &String| number.split(" (").next().unwrap_or_default().to_owned();
    let letters: Vec<String> =
        working.letters.0.iter().map(|(_, number)| nominal(number)).collect();
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

/// The letters and their numbers are those that are put in.
#[test]
fn letters_have_the_numbers_that_are_put_in() {
    let mut checked = 0;
    for answer in answers::all().unwrap() {
        for WorkingEntry { formula, with, letters, .. } in &answer.workings.0 {
            if formula.is_in_words() || letters.0.iter().any(|(_, number)| number.is_empty()) {
                continue;
            }
            let values = letters.0.iter().map(|(sign, number)| (*sign, number as _));
            assert_eq!(formula.put(&values.collect::<Vec<_>>()).with, *with, "{formula}");
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
            let Some(working) = answer.workings.get(figure["working"].as_str().unwrap()) else {
                continue;
            };
            if working.formula.is_in_words() {
                *in_words.entry(working.formula.to_string()).or_default() += 1;
                continue;
            }
            checked += 1;
            let mass = figure["unit"] == "kg";
            let wrong = wrong(working, &numbers, mass);
            all.extend(wrong.map(|why| format!("{}: {why} ({})", working.formula, answer.name)));
        }
    }
    let few: Vec<_> = all.iter().take(30).collect();
    assert!(all.is_empty(), "{} of {checked} wrong: {few:#?}", all.len());
    assert!(checked > 4000, "{checked}");
    let kinds: Vec<&str> = in_words.keys().map(String::as_str).collect();
    assert_eq!(kinds, IN_WORDS);
}

/// One meaning a letter, and one letter a meaning.
#[test]
fn letters_have_one_meaning() {
    let signs: BTreeSet<_> = SYMBOLS.iter().map(|symbol| symbol.sign).collect();
    let names: BTreeSet<_> = SYMBOLS.iter().map(|symbol| symbol.name).collect();
    assert_eq!((signs.len(), names.len()), (SYMBOLS.len(), SYMBOLS.len()));
}

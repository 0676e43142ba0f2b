//! Every working of every kept job, worked out by another library from what it says was put in.

#![cfg(test)]

#[path = "workings/expression.rs"]
mod expression;

use coilnest::formula::SYMBOLS;
use coilnest_tests::answers::{self, Answer};
use coilnest_tests::corpus;
use expression::worked;
use std::collections::{BTreeMap, BTreeSet};

/// What is put in gives the figure, but for the digits that were left away.
#[test]
fn what_is_put_in_gives_the_figure() {
    let (mut checked, mut in_words) = (0, BTreeMap::<String, usize>::new());
    let mut wrong = BTreeSet::new();
    for Answer { name, parts, workings, .. } in answers::all().unwrap() {
        for figure in corpus::figures(&parts) {
            let working = workings.get(figure["working"].as_str().unwrap()).unwrap();
            if working.formula.is_in_words() {
                *in_words.entry(working.formula.to_string()).or_default() += 1;
                continue;
            }
            checked += 1;
            let si = figure["si"].as_f64().unwrap();
            let mass = figure["unit"] == "kg";
            let letters: Vec<String> =
                working.letters.0.iter().map(|(_, number)| number.clone()).collect();
            match worked(&working.with, &letters, mass) {
                Ok((value, off)) if (value - si).abs() <= off * 1.001 + 1e-9 * si.abs() => {}
                Ok((value, off)) => {
                    wrong.insert(format!(
                        "{}: {} gives {value:e}, off by {off:e} at most; the figure is {si:e} ({name})",
                        working.formula, working.with
                    ));
                }
                Err(why) => {
                    wrong.insert(format!("{}: {why} ({name})", working.formula));
                }
            }
        }
    }
    let few: Vec<_> = wrong.iter().take(30).collect();
    assert!(wrong.is_empty(), "{} of {checked} wrong: {few:#?}", wrong.len());
    println!("{checked} checked, in words: {in_words:#?}");
}

/// One meaning a letter, and one letter a meaning.
#[test]
fn letters_have_one_meaning() {
    let signs: BTreeSet<_> = SYMBOLS.iter().map(|symbol| symbol.sign).collect();
    let names: BTreeSet<_> = SYMBOLS.iter().map(|symbol| symbol.name).collect();
    assert_eq!((signs.len(), names.len()), (SYMBOLS.len(), SYMBOLS.len()));
}

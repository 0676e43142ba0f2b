//! Readings in words: what has one meaning reads as its figures, the rest is refused at its place.

use super::read;
use crate::quantity::System;
use crate::reading::{press, spell_unit};
use proptest::prelude::*;

const ONES: [&str; 20] = [
    "",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 10] =
    ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// A whole number as a person says it, tens and ones joined by a dash.
fn whole(number: usize) -> String {
    let rest = match number % 100 {
        small @ 0..20 => ONES[small].to_owned(),
        round if round % 10 == 0 => TENS[round / 10].to_owned(),
        large => format!("{}-{}", TENS[large / 10], ONES[large % 10]),
    };
    match (number / 100, rest.as_str()) {
        (0, _) => rest,
        (hundreds, "") => format!("{} hundred", ONES[hundreds]),
        (hundreds, _) => format!("{} hundred and {rest}", ONES[hundreds]),
    }
}

/// So many parts of an inch, the parts by their name.
fn part(count: usize, parts: usize) -> String {
    let name = match parts {
        2 => "half",
        4 => "quarter",
        8 => "eighth",
        16 => "sixteenth",
        32 => "thirty-second",
        _ => "sixty-fourth",
    };
    match count {
        1 => format!("a {name}"),
        _ => format!("{} {name}s", whole(count)),
    }
}

proptest! {
    /// Any sixty-fourth up to ten feet, said in words with any lean, reads as the figures do.
    #[test]
    fn what_is_said_reads_as_what_is_written(n in 1_usize..=120 * 64, lean in 0_usize..3) {
        let (inches, mut count, mut parts) = (n / 64, n % 64, 64);
        while count > 0 && count % 2 == 0 {
            (count, parts) = (count / 2, parts / 2);
        }
        let (said, written) = match (inches, count) {
            (_, 0) => (whole(inches), inches.to_string()),
            (0, _) => (part(count, parts), format!("{count}/{parts}")),
            _ => (
                format!("{} and {}", whole(inches), part(count, parts)),
                format!("{inches} {count}/{parts}"),
            ),
        };
        let lean = ["", " scant", " full"][lean];
        let inch = System::Inch;
        let spoken = format!("{said}{lean}");
        prop_assert_eq!(
            read(&spoken, inch).map_err(|refusal| refusal.to_string()),
            read(&format!("{written}{lean}"), inch).map_err(|refusal| refusal.to_string()),
            "{}", spoken
        );
    }
}

/// What was said, and what it is.
const SAID: [(&str, &str); 21] = [
    ("thirteen and seven eighths scant", "13 7/8 in scant"),
    ("Thirteen And Seven Eighths", "13 7/8 in"),
    ("13 and 7/8", "13 7/8 in"),
    ("13 and ⅞", "13 7/8 in"),
    ("13 and seven eighths", "13 7/8 in"),
    ("13 7 eighths", "13 7/8 in"),
    ("thirteen 7/8", "13 7/8 in"),
    ("thirteen seven sixteenths", "13 7/16 in"),
    ("thirteen sixteenths", "13/16 in"),
    ("thirteen and a half", "13 1/2 in"),
    ("thirteen and an eighth full", "13 1/8 in full"),
    ("three quarters", "3/4 in"),
    ("a half", "1/2 in"),
    ("a hair under 14", "14 in scant"),
    ("a touch over fourteen", "14 in full"),
    ("fourteen inches", "14 in"),
    ("thirty-one thirty seconds", "31/32 in"),
    ("thirteen and twenty seven sixty fourths", "13 27/64 in"),
    ("one hundred and twelve", "112 in"),
    ("one hundred and seven eighths", "100 7/8 in"),
    ("three hundred and fifty-four mm", "354 mm"),
];

#[test]
fn a_telephone_writes_what_it_is_told() {
    for (said, figures) in SAID {
        let reading = read(said, System::Inch).map_err(|refusal| refusal.to_string());
        assert_eq!(reading.map(|reading| reading.to_string()), Ok((*figures).to_owned()), "{said}");
    }
}

#[test]
fn what_has_two_meanings_is_refused_at_its_place() {
    for (said, code, position) in [
        ("twenty seven sixteenths", "two-numbers", 7),
        ("thirty one thirty seconds", "two-numbers", 7),
        ("thirteen seven", "two-numbers", 9),
        ("thirteen fourteen fifteen", "two-numbers", 9),
        ("13 and 7", "two-numbers", 7),
        ("thirteen and", "unknown-unit", 3),
        ("thirteen or fourteen", "unknown-unit", 3),
        ("seventeen sixteenths", "fraction-above-one", 0),
        ("about fifteen", "stray-text", 0),
        ("a hair", "no-number", 0),
        ("thirteen short", "verdict-word", 3),
    ] {
        let refusal = read(said, System::Inch).expect_err(said);
        assert_eq!((refusal.code(), refusal.position()), (code, position), "{said}: {refusal}");
    }
}

#[test]
fn a_key_and_a_change_of_units_put_it_into_figures() {
    assert_eq!(press("thirteen", "7/8"), "13 7/8");
    assert_eq!(press("thirteen and a half", "scant"), "13 1/2 scant");
    assert_eq!(press("thirteen fourteen", "scant"), "thirteen fourteen");
    let spelt = spell_unit("thirteen and a half", System::Inch);
    assert_eq!(spelt.as_deref(), Some("13 1/2 in"));
}

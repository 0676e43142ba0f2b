//! What is read, and what is refused, a line each.

use super::*;

/// System, text, and the canonical text of what was read.
const READINGS: &str = r#"
# inches and fractions
inch   | 15 3/8 | 15 3/8 in
inch   | 15-3/8 | 15 3/8 in
inch   | 15 3/8" | 15 3/8 in
inch   | 15-3/8" | 15 3/8 in
inch   | 15 3/8 in | 15 3/8 in
metric | 15 3/8 in | 15 3/8 in
inch   | 15 3/8in. | 15 3/8 in
inch   | 15 3/8 INCHES | 15 3/8 in
inch   | 15 3/8 Inch | 15 3/8 in
inch   | 15 - 3/8 | 15 3/8 in
inch   | 15 3 / 8 | 15 3/8 in
inch   | +15 3/8 | 15 3/8 in
inch   | 3/8 | 3/8 in
inch   | 15 | 15 in
inch   | 15 0/8 | 15 in
inch   | 15 6/16 | 15 3/8 in
inch   | 015 3/8 | 15 3/8 in
inch   | 1/64 | 1/64 in
inch   | 15 63/64 | 15 63/64 in
# feet
inch   | 1' 3 3/8" | 15 3/8 in
inch   | 1'3" | 15 in
inch   | 1'-3 3/8" | 15 3/8 in
inch   | 1 ft 3 3/8 in | 15 3/8 in
metric | 1ft3in | 15 in
metric | 1' 3 | 15 in
metric | 1' 3/8 | 12 3/8 in
inch   | 1 foot | 12 in
inch   | 2 feet | 24 in
inch   | 1.5 ft. | 18 in
inch   | 1' 3.5" | 15 1/2 in
inch   | 1' 11 63/64" | 23 63/64 in
# one-character and raised fractions
inch   | 15⅜ | 15 3/8 in
inch   | 15 ⅜ | 15 3/8 in
inch   | ⅜ | 3/8 in
inch   | 15-⅜ | 15 3/8 in
inch   | 15 ³⁄₈ | 15 3/8 in
inch   | 15³⁄₈ | 15 3/8 in
inch   | 15 ³/₈″ | 15 3/8 in
inch   | 15 ¹¹⁄₁₆ | 15 11/16 in
inch   | 15 3⁄8 | 15 3/8 in
# typographic dashes, primes, quotes, blanks
inch   | 15–3/8” | 15 3/8 in
inch   | 15‑3/8″ | 15 3/8 in
inch   | 1′ 3 3/8″ | 15 3/8 in
inch   | 1’ 3'' | 15 in
inch   | 15 3/8 | 15 3/8 in
# decimals
inch   | 15.375 | 15 3/8 in
inch   | .375 | 3/8 in
inch   | 15.38 | 15.38 in
inch   | 15,38 | 15.38 in
inch   | 0,398 in | 0.398 in
inch   | 15.3750000000000000000 | 15 3/8 in
inch   | 13.93749999999999 | 13.93749999999999 in
# metric
metric | 398 | 398 mm
inch   | 398 mm | 398 mm
inch   | 398MM | 398 mm
inch   | 39.8 cm | 398 mm
inch   | 0.398 m | 398 mm
metric | 0,398 m | 398 mm
inch   | 398,5 mm | 398.5 mm
metric | 390,5 | 390.5 mm
metric | 390.5 mm | 390.5 mm
metric | 390.500 | 390.5 mm
inch   | 398 millimetres | 398 mm
inch   | 398 millimeter | 398 mm
inch   | 1 200 mm | 1200 mm
metric | 1 200,5 | 1200.5 mm
inch   | 353.61234567890123 mm | 353.61234567890123 mm
# leans
inch   | 15 3/8 scant | 15 3/8 in scant
inch   | 15 3/8 shy | 15 3/8 in scant
inch   | 15 3/8 light | 15 3/8 in scant
inch   | 15 3/8 weak | 15 3/8 in scant
inch   | 15 3/8 minus | 15 3/8 in scant
inch   | 15 3/8 just under | 15 3/8 in scant
inch   | just under 15 3/8 | 15 3/8 in scant
inch   | Just Over 15 3/8" | 15 3/8 in full
inch   | scant 15 3/8 | 15 3/8 in scant
inch   | 15 3/8- | 15 3/8 in scant
inch   | 15 3/8 - | 15 3/8 in scant
inch   | 15 3/8− | 15 3/8 in scant
inch   | 15- | 15 in scant
inch   | 15-3/8- | 15 3/8 in scant
inch   | 15 3/8-" | 15 3/8 in scant
inch   | 15 3/8"- | 15 3/8 in scant
inch   | 15 3/8 in - | 15 3/8 in scant
inch   | 1'- | 12 in scant
inch   | 15⅜+ | 15 3/8 in full
inch   | 15 3/8 full | 15 3/8 in full
inch   | 15 3/8 HEAVY | 15 3/8 in full
inch   | 15 3/8 strong | 15 3/8 in full
inch   | 15 3/8 proud | 15 3/8 in full
inch   | 15 3/8 plus | 15 3/8 in full
inch   | 15 3/8 in full | 15 3/8 in full
inch   | 15 3/8 full in. | 15 3/8 in full
inch   | 1' 3 3/8 scant" | 15 3/8 in scant
metric | 390 - | 390 mm scant
inch   | 390 mm full | 390 mm full
inch   | 390 full mm | 390 mm full
"#;

/// System, text, code, position, and the sentence after the text itself.
const REFUSALS: &str = r#"
inch   | scant | no-number | 0 | there is no number in it
inch   | " | no-number | 0 | there is no number in it
inch   | 15 3/ | unfinished | 4 | a number is missing after “/”
inch   | 15. | unfinished | 2 | a number is missing after “.”
inch   | 15. in | unfinished | 2 | a number is missing after “.”
inch   | about 15 | stray-text | 0 | “about” has no place here
inch   | 15 3/8 in or so | stray-text | 10 | “or” has no place here
inch   | 15 in 3/8 | stray-text | 6 | “3” has no place here
inch   | minus 15 | stray-text | 0 | “minus” has no place here
inch   | 15.3.8 | stray-text | 4 | “.” has no place here
inch   | 3/8/2 | stray-text | 3 | “/” has no place here
inch   | 15 + 3/8 | stray-text | 5 | “3” has no place here
inch   | --15 | stray-text | 1 | “-” has no place here
inch   | 15 just about | stray-text | 3 | “just” has no place here
inch   | 15 ± 1/8 | stray-text | 3 | “±” has no place here
inch   | 15 ₈ | stray-text | 3 | “₈” has no place here
inch   | 15 ³ | stray-text | 3 | “³” has no place here
inch   | 1e3 mm | unknown-unit | 1 | “e3 mm” is no unit known here; write in, ft, mm, cm or m
inch   | 13 5 | two-numbers | 3 | two numbers, 13 and 5, with nothing to join them
inch   | 13-5 | two-numbers | 3 | two numbers, 13 and 5, with nothing to join them
inch   | 13 500 | two-numbers | 3 | two numbers, 13 and 500, with nothing to join them
metric | 1 200 in | two-numbers | 2 | two numbers, 1 and 200, with nothing to join them
metric | 1 200 cm | two-numbers | 2 | two numbers, 1 and 200, with nothing to join them
metric | 1  200 mm | two-numbers | 3 | two numbers, 1 and 200, with nothing to join them
inch   | 13 17/16 | fraction-above-one | 3 | the fraction is more than a whole; did you mean 14 1/16?
inch   | 13 8/8 | fraction-above-one | 3 | the fraction is no less than a whole; did you mean 14?
inch   | 17/16 | fraction-above-one | 0 | the fraction is more than a whole; did you mean 1 1/16?
inch   | 13 3/0 | zero-denominator | 5 | the fraction has a 0 under its stroke
inch   | 1/3 | denominator | 0 | no tape divides an inch into 3; the nearest sixty-fourth is 21/64
inch   | 15 ⅓ | denominator | 3 | no tape divides an inch into 3; the nearest sixty-fourth is 15 21/64
inch   | 15 99/100 | denominator | 3 | no tape divides an inch into 100; the nearest sixty-fourth is 15 63/64
inch   | 15 199/200 | denominator | 3 | no tape divides an inch into 200; the nearest sixty-fourth is 16
inch   | 1/128 | denominator | 0 | no tape divides an inch into 128; the nearest sixty-fourth is 1/64
inch   | 15.5 3/8 | fraction-and-decimal | 5 | a decimal and a fraction in one number
metric | 15 3/8 | fraction-in-metric | 3 | a fraction of what? for inches write 15 3/8 in
metric | ⅜ | fraction-in-metric | 0 | a fraction of what? for inches write 3/8 in
inch   | 15 3/8 mm | fraction-in-metric | 3 | a fraction of what? millimetres are written as decimals
inch   | 1' 3 cm | mixed-units | 5 | ft and cm do not go together
inch   | 15 in mm | mixed-units | 6 | in and mm do not go together
inch   | 398 mm" | mixed-units | 6 | mm and in do not go together
inch   | 1.5' 3" | broken-feet | 0 | feet are whole, and inches follow; alone they may have a decimal
inch   | 1 1/2 ft | broken-feet | 2 | feet are whole, and inches follow; alone they may have a decimal
inch   | 1' 12" | inches-over-foot | 3 | after feet there are less than twelve inches
inch   | -15 | negative | 0 | it cannot be below zero
inch   | 1,200 mm | comma-ambiguous | 1 | the comma can be read two ways; write 1 200 mm or 1.200 mm
metric | 390,500 | comma-ambiguous | 3 | the comma can be read two ways; write 390.500
inch   | 15,375 | comma-ambiguous | 2 | the comma can be read two ways; write 15.375
inch   | just under 1' 3,375" | comma-ambiguous | 15 | the comma can be read two ways; write just under 1' 3.375"
inch   | 15 3/8 scant full | two-leans | 13 | “full” after “scant”: say only once to which side of the mark
inch   | 15 3/8- shy | two-leans | 8 | “shy” after “-”: say only once to which side of the mark
inch   | just under 15 - | two-leans | 14 | “-” after “just under”: say only once to which side of the mark
inch   | 15 3/8 short | verdict-word | 7 | “short” is for the verdict to say; for just beside the mark write scant
inch   | long 15 | verdict-word | 0 | “long” is for the verdict to say; for just beside the mark write full
inch   | 15 furlongs | unknown-unit | 3 | “furlongs” is no unit known here; write in, ft, mm, cm or m
inch   | 5000 lb | wrong-unit | 5 | “lb” is a unit of force; write in, ft, mm, cm or m
inch   | 1500 lb/in | wrong-unit | 5 | “lb/in” is a unit of rate; write in, ft, mm, cm or m
inch   | 999999999999999 mm | too-many-digits | 0 | too many digits; fourteen before the point and twenty behind it are kept
inch   | 1.123456789012345678901 | too-many-digits | 0 | too many digits; fourteen before the point and twenty behind it are kept
inch   | 15 1234567890/64 | too-many-digits | 3 | too many digits; fourteen before the point and twenty behind it are kept
inch   | 0 | too-small | 0 | a reading is at least 1/64 in
metric | 0.1 | too-small | 0 | a reading is at least 0.3969 mm
inch   | 138 | too-large | 0 | a reading is at most 120 in
metric | 20 ft | too-large | 0 | a reading is at most 3 048 mm
inch   | ١٥ | no-number | 0 | there is no number in it
inch   | 15 🙂 3/8 | stray-text | 3 | “🙂” has no place here
"#;

/// The cells of a table, in which `#` begins a heading.
fn rows(table: &str) -> impl Iterator<Item = Vec<&str>> {
    table
        .lines()
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .map(|line| line.split(" | ").map(str::trim).collect())
}

fn system(cell: &str) -> System {
    match cell {
        "inch" => System::Inch,
        "metric" => System::Metric,
        other => panic!("no system is called {other}"),
    }
}

#[test]
fn readings() {
    let mut count = 0;
    for row in rows(READINGS) {
        let [job, text, canonical] = row[..] else { panic!("{row:?}") };
        let reading = read(text, system(job)).unwrap_or_else(|refusal| panic!("{refusal}"));
        assert_eq!(reading.to_string(), canonical, "{text:?}");
        count += 1;
    }
    assert_eq!(count, 97);
}

#[test]
fn refusals() {
    let mut count = 0;
    for row in rows(REFUSALS) {
        let [job, text, code, position, sentence] = row[..] else { panic!("{row:?}") };
        let refusal = read(text, system(job)).expect_err(text);
        assert_eq!(
            (refusal.code(), refusal.position().to_string(), refusal.to_string()),
            (code, position.to_owned(), format!("{text} — {sentence}"))
        );
        count += 1;
    }
    assert_eq!(count, 65);
}

#[test]
fn blanks_around_a_text_do_not_matter() {
    assert_eq!(read("  15  3/8\u{a0} ", System::Inch), read("15 3/8", System::Inch));
    for text in ["", " \u{a0}"] {
        let refusal = read(text, System::Inch).expect_err("nothing");
        assert_eq!((refusal.code(), refusal.position()), ("empty", 0));
        assert_eq!(refusal.to_string(), "nothing is written here");
    }
    let refusal = read(" \u{2212} 3/8", System::Inch).expect_err("below zero");
    assert_eq!((refusal.code(), refusal.position()), ("negative", 1));
    assert_eq!(refusal.to_string(), "\u{2212} 3/8 — it cannot be below zero");
}

/// What is offered in place of a refused text reads, and reads as meant.
#[test]
fn examples_are_readings() {
    use System::{Inch, Metric};
    for (text, system, example) in [
        ("13 17/16", Inch, "14 1/16"),
        ("13 8/8", Inch, "14"),
        ("13-17/16\" scant", Metric, "14 1/16\" scant"),
        ("1' 3 1/3", Metric, "1' 3 21/64"),
        ("15 3/8 full", Metric, "15 3/8 in full"),
        ("15 1/3", Inch, "15 21/64"),
        ("15 3/8", Metric, "15 3/8 in"),
        ("15 1/3", Metric, "15 21/64 in"),
        ("1,200 mm", Inch, "1 200 mm"),
        ("15,375\"", Inch, "15.375\""),
        ("", Inch, "13 7/8"),
        ("", Metric, "352.5"),
        ("nonsense", Metric, "352.5"),
    ] {
        let refusal = read(text, system).expect_err(text);
        assert_eq!(refusal.example(), example, "{text:?}");
        assert!(read(example, system).is_ok(), "{example:?}");
    }
}

#[test]
fn a_long_text_is_refused_and_quoted_short() {
    let text = "15 3/8 ".repeat(100_000);
    let refusal = read(&text, System::Inch).expect_err("a hundred thousand readings");
    assert_eq!((refusal.code(), refusal.position()), ("stray-text", 7));
    assert!(refusal.to_string().chars().count() < 200);
}

//! What the trade does, in figures that no document gives: common practice, no source.

use coilnest::bounds;
use coilnest::measured::{Measured, Tape, measure, usual_place};
use coilnest::quantity::unit::{inch, millimeter};
use coilnest::quantity::{Refusal, System};
use coilnest::reading::Reading;
use coilnest::verdict::{Limits, Verdict, Word, judge, judge_measured, normal};
use coilnest_tables::TABLES;
use std::error::Error;

/// A coil's one reading by a class II tape in sixteenths, at a place that may stand a sixteenth off,
/// against its book figure and an eighth either way.
fn bench(book: &str, reading: &str) -> Result<(Measured, Verdict), Box<dyn Error>> {
    let parse =
        |text, bound| -> Result<Reading, Refusal> { Reading::parse(text, System::Inch, bound) };
    let graduation = parse("1/16", &bounds::GRADUATION)?.length();
    let allowed = parse("1/8", &bounds::LIMIT)?.length();
    let book = parse(book, &bounds::FREE_HEIGHT)?.length();
    let interval = parse(reading, &bounds::READING)?.interval(graduation);
    let class = TABLES.tape_class("II").ok_or("no tape class")?;
    let error = class.permissible_error(interval.estimate()).ok_or("a length beyond the class")?;
    let tape = Tape { error, place: usual_place(System::Inch) };
    let measured = measure(&[interval], tape)?;
    let limits = Limits::new(Some(book - allowed), Some(book + allowed))?;
    let whole = judge(measured.mean, measured.doubt(), limits, 0.95);
    let verdict = judge_measured(&measured, limits, 0.95);
    assert_eq!((verdict.p_in, verdict.p_short), (whole.p_in, whole.p_short));
    Ok((measured, verdict))
}

/// Two coils of a nest, 15 11/16 and 15 15/16 in by the book, an eighth either way: the one on its
/// mark and the other just under it are both good, and the second as surely as its sum says.
///
/// The second stands at an estimate 1/64 in under the book, u² = (1/64 in)²/3 + (0.7 mm)²/3 +
/// (1/16 in)²/3, so that the lower limit is 7/64 in away and the upper 9/64.
#[test]
fn a_coil_on_the_mark_and_one_just_under_it_are_both_good() -> Result<(), Box<dyn Error>> {
    let (outer, on_the_mark) = bench("15 11/16", "15 11/16")?;
    let (inner, just_under) = bench("15 15/16", "15 15/16 scant")?;
    assert_eq!((on_the_mark.word, just_under.word), (Word::Good, Word::Good));

    let mm_per_64th = 25.4 / 64.0;
    let place_mm: f64 = 25.4 / 16.0;
    let doubt = |half_width_mm: f64| {
        ((half_width_mm.powi(2) + 0.7_f64.powi(2) + place_mm.powi(2)) / 3.0).sqrt()
    };
    let near = |found: f64, expected: f64| (found - expected).abs() <= 1e-9 * expected;
    assert!(near(outer.mean.get::<inch>(), 15.6875) && near(inner.mean.get::<inch>(), 15.921_875));
    assert!(near(outer.doubt().get::<millimeter>(), doubt(2.0 * mm_per_64th)), "{outer:?}");
    assert!(near(inner.doubt().get::<millimeter>(), doubt(mm_per_64th)), "{inner:?}");

    let short = normal(-7.0 * mm_per_64th / doubt(mm_per_64th));
    let long = normal(-9.0 * mm_per_64th / doubt(mm_per_64th));
    // 2.70 and 3.48 standard uncertainties: 3.4 in a thousand, and 2.5 in ten thousand.
    assert!((short - 3.4e-3).abs() < 1e-4 && (long - 2.5e-4).abs() < 1e-5, "{short} {long}");
    let off = |found: f64, expected: f64| (found - expected).abs() <= 1e-6 * expected;
    assert!(off(just_under.p_short, short) && off(just_under.p_long, long), "{just_under:?}");
    assert!(near(just_under.p_in, 1.0 - short - long));
    Ok(())
}

/// The second of them read an eighth and less under the book, or over it: told apart as far as one
/// place tells.
#[test]
fn near_the_limit_one_place_does_not_tell() -> Result<(), Box<dyn Error>> {
    for (reading, word) in [
        ("15 13/16", Word::TooClose),
        ("15 13/16 full", Word::TooClose),
        ("15 7/8", Word::TooClose),
        ("15 7/8 full", Word::TooClose),
        ("15 15/16 scant", Word::Good),
        ("15 3/4", Word::TooClose),
        ("15 11/16", Word::Short),
        ("16 1/8 full", Word::Long),
    ] {
        assert_eq!(bench("15 15/16", reading)?.1.word, word, "{reading}");
    }
    Ok(())
}

/// The same as a job whose tape says no more than its class: good both, and it is said that one place
/// was read.
#[test]
fn the_page_says_that_one_place_was_read() -> Result<(), Box<dyn Error>> {
    let job = coilnest::job::file::open(
        r#"{
            "format": "coilnest-job/1",
            "tape": { "graduation": "1/16", "class": "II" },
            "coils": [
                { "id": "outer", "free": "15 11/16", "limits": { "under": "1/8", "over": "1/8" } },
                { "id": "inner", "free": "15 15/16", "limits": { "under": "1/8", "over": "1/8" } }
            ],
            "nests": [{ "id": "A left", "seats": [
                { "coil": "outer", "readings": ["15 11/16"] },
                { "coil": "inner", "readings": ["15 15/16 scant"] }
            ] }]
        }"#,
    )
    .map_err(|problem| problem.message)?;
    let report = coilnest::job::assess(&job, &TABLES);
    let verdicts: Vec<_> = report
        .nests
        .iter()
        .flat_map(|nest| &nest.seats)
        .filter_map(|seat| seat.verdict.as_ref())
        .collect();
    assert_eq!(verdicts.len(), 2);
    for verdict in verdicts {
        assert_eq!((&*verdict.title, verdict.places), ("Good", 1));
        let says = "One place only: turn the coil and read again.";
        assert!(verdict.sentence.contains(says), "{}", verdict.sentence);
    }
    Ok(())
}

//! What the trade does, in figures that no document gives: common practice, no source.

use coilnest::bounds;
use coilnest::measured::{Measured, Tape, measure};
use coilnest::quantity::unit::{inch, millimeter};
use coilnest::quantity::{Length, Refusal, System};
use coilnest::reading::Reading;
use coilnest::verdict::{Limits, Verdict, Word, judge, normal};
use coilnest_tables::TABLES;
use std::error::Error;

/// A coil's one reading by a class II tape in sixteenths, its ends met squarely, against its book
/// figure and an eighth either way.
fn bench(book: &str, reading: &str) -> Result<(Measured, Verdict), Box<dyn Error>> {
    let parse =
        |text, bound| -> Result<Reading, Refusal> { Reading::parse(text, System::Inch, bound) };
    let graduation = parse("1/16", &bounds::GRADUATION)?.length();
    let allowed = parse("1/8", &bounds::LIMIT)?.length();
    let book = parse(book, &bounds::FREE_HEIGHT)?.length();
    let interval = parse(reading, &bounds::READING)?.interval(graduation);
    let class = TABLES.tape_classes.first().ok_or("no tape class")?;
    let error = class.permissible_error(interval.estimate()).ok_or("a length beyond the class")?;
    let measured = measure(&[interval], Tape { error, ends: Length::default() })?;
    let limits = Limits::new(Some(book - allowed), Some(book + allowed))?;
    Ok((measured, judge(measured.mean, measured.doubt(), limits, 0.95)))
}

/// Two coils of a nest, 15 11/16 and 15 15/16 in by the book, an eighth either way: the one on its
/// mark and the other just under it are both good, and the second as surely as its sum says.
///
/// The second stands half a sixty-fourth of doubt lower: estimate 1/64 in under the book, u² =
/// (1/64 in)²/3 + (0.7 mm)²/3, so that the lower limit is 7/64 in away and the upper 9/64.
#[test]
fn a_coil_on_the_mark_and_one_just_under_it_are_both_good() -> Result<(), Box<dyn Error>> {
    let (outer, on_the_mark) = bench("15 11/16", "15 11/16")?;
    let (inner, just_under) = bench("15 15/16", "15 15/16 scant")?;
    assert_eq!((on_the_mark.word, just_under.word), (Word::Good, Word::Good));

    let mm_per_64th = 25.4 / 64.0;
    let doubt = |half_width_mm: f64| ((half_width_mm.powi(2) + 0.7_f64.powi(2)) / 3.0).sqrt();
    let near = |found: f64, expected: f64| (found - expected).abs() <= 1e-9 * expected;
    assert!(near(outer.mean.get::<inch>(), 15.6875) && near(inner.mean.get::<inch>(), 15.921_875));
    assert!(near(outer.doubt().get::<millimeter>(), doubt(2.0 * mm_per_64th)), "{outer:?}");
    assert!(near(inner.doubt().get::<millimeter>(), doubt(mm_per_64th)), "{inner:?}");

    let short = normal(-7.0 * mm_per_64th / doubt(mm_per_64th));
    let long = normal(-9.0 * mm_per_64th / doubt(mm_per_64th));
    // 5.98 and 7.69 standard uncertainties: about one in a thousand million, and nothing.
    assert!(short > 1e-9 && short < 1.3e-9, "{short}");
    let off = |found: f64, expected: f64| (found - expected).abs() <= 1e-6 * expected;
    assert!(off(just_under.p_short, short) && off(just_under.p_long, long), "{just_under:?}");
    assert!(near(just_under.p_in, 1.0 - short - long));
    Ok(())
}

/// The same two a sixteenth and more under the book: nearer to the limit, and told apart.
#[test]
fn a_scant_reading_at_the_limit_is_short_or_too_close() -> Result<(), Box<dyn Error>> {
    for (reading, word) in [
        ("15 13/16", Word::TooClose),
        ("15 13/16 full", Word::TooClose),
        ("15 7/8", Word::Good),
        ("15 3/4", Word::Short),
        ("16 1/8 full", Word::Long),
    ] {
        assert_eq!(bench("15 15/16", reading)?.1.word, word, "{reading}");
    }
    Ok(())
}

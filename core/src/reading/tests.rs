//! Every sixty-fourth there and back, the arithmetic's bounds, intervals, texts and keys.

use super::*;
use crate::bounds::{self, READING};
use crate::quantity::unit::{inch, millimeter};
use approx::{abs_diff_eq, assert_abs_diff_eq};

mod random;
mod spoken;
mod tables;

fn read(text: &str, system: System) -> Result<Reading, Refusal> {
    Reading::parse(text, system, &READING)
}

#[test]
fn the_sign_is_for_bounds_below_zero() {
    for (text, canonical) in [
        ("-3/16", "−3/16 in"),
        ("−3/16 scant", "−3/16 in scant"),
        ("- 5 mm", "−5 mm"),
        ("+3/16", "3/16 in"),
        ("-0", "0 in"),
        ("0", "0 in"),
    ] {
        let reading = Reading::parse(text, System::Inch, &bounds::RAISE).unwrap();
        assert_eq!(reading.to_string(), canonical, "{text:?}");
        let again = Reading::parse(canonical, System::Inch, &bounds::RAISE).unwrap();
        assert_eq!(again, reading, "{text:?}");
    }
    let refusal = Reading::parse("-25", System::Inch, &bounds::RAISE).unwrap_err();
    assert_eq!(refusal.to_string(), "-25 — a raised seat is at least −24 in");
    assert_eq!(refusal.expected(), "a raised seat between −24 in and 24 in");
}

/// Text → value → text over every sixty-fourth from 1/64 to 40 in and every lean, in the forms that
/// the crate writes and the commonest that people do.
#[test]
fn every_sixty_fourth_reads_back() {
    for n in 1_u32..=40 * 64 {
        let exact = Millimetres::new(127 * n, 320_u16);
        let text = {
            let (whole, mut rest, mut parts) = (n / 64, n % 64, 64);
            while rest > 0 && rest.is_multiple_of(2) {
                (rest, parts) = (rest / 2, parts / 2);
            }
            match (whole, rest) {
                (_, 0) => format!("{whole}"),
                (0, _) => format!("{rest}/{parts}"),
                _ => format!("{whole} {rest}/{parts}"),
            }
        };
        for (word, lean) in [("", Lean::Plain), (" scant", Lean::Scant), (" full", Lean::Full)] {
            let canonical = format!("{text} in{word}");
            for written in [
                format!("{text}{word}"),
                format!("{}\"{word}", text.replace(' ', "-")),
                canonical.clone(),
            ] {
                let reading = read(&written, System::Inch).expect(&written);
                assert_eq!(reading.mark(), exact, "{written}");
                assert_eq!(reading.lean(), lean, "{written}");
                assert_eq!(reading.to_string(), canonical);
            }
        }
        // Through floating point too.
        let length = read(&text, System::Inch).expect(&text).length();
        assert_eq!(write_inch(length, Step::SixtyFourth), format!("{text} in"));
        assert_abs_diff_eq!(
            length.value,
            f64::from(n) * 127.0 / 320_000.0,
            epsilon = f64::EPSILON * length.value
        );
    }
}

/// Every tenth of a millimetre to a metre, by way of both the exact value and the float.
#[test]
fn every_tenth_of_a_millimetre_reads_back() {
    for tenths in 4_u32..=10_000 {
        let text = match tenths % 10 {
            0 => format!("{} mm", tenths / 10),
            tenth => format!("{}.{tenth} mm", tenths / 10),
        };
        let reading = read(&text, System::Inch).expect(&text);
        assert_eq!(reading.mark(), Millimetres::new(tenths, 10_u8));
        assert_eq!(reading.to_string(), text);
        assert_eq!(write_mm(reading.length(), 1).replace('\u{202f}', ""), text);
    }
}

/// The reading in a text, whatever the bound; nothing if the arithmetic overflowed.
fn written(text: &str) -> Option<Reading> {
    let parts = grammar::parse(text).expect(text);
    parts.reading(text, System::Inch).ok()
}

/// The longest numbers that the scanner lets pass, in every unit, against arithmetic that cannot
/// wrap: the checked operations of the crate never come back empty, and the value is right.
#[test]
fn nothing_overflows_at_the_bounds() {
    let nines = "9".repeat(14);
    let behind = "9".repeat(20);
    for unit in ["mm", "cm", "m", "in", "ft", "'"] {
        for number in [
            nines.clone(),
            format!("{nines}.{behind}"),
            format!("0.{behind}"),
            format!("{nines}.{}1", "0".repeat(19)),
        ] {
            let text = format!("{number} {unit}");
            let reading = written(&text).unwrap_or_else(|| panic!("{text} overflowed"));
            let size = match unit {
                "mm" => 0.001,
                "cm" => 0.01,
                "m" => 1.0,
                "in" => 0.0254,
                _ => 0.3048,
            };
            let nearest = number.parse::<f64>().unwrap() * size;
            assert!(
                abs_diff_eq!(
                    reading.length().value,
                    nearest,
                    epsilon = 4.0 * f64::EPSILON * nearest
                ),
                "{text}: {} is not {nearest}",
                reading.length().value
            );
        }
    }
    for text in [
        format!("{nines}' 11.{behind}\""),
        format!("{nines}' 11 63/64\""),
        format!("{nines} 63/64"),
        format!("{nines}-63/64\" full"),
    ] {
        assert!(written(&text).is_some(), "{text} overflowed");
    }
    // The widest of them, digit for digit: 99 999 999 999 999 ft 11.999… in.
    let widest = written(&format!("{nines}' 11.{behind}\"")).unwrap();
    assert_eq!(widest.to_string(), format!("11{nines}.{behind} in"));
}

#[test]
fn what_a_reading_says() {
    let sixteenth = Step::Sixteenth.length();
    for (text, least, most) in [
        ("15 3/8", 15.375 - 0.031_25, 15.375 + 0.031_25),
        ("15 3/8 scant", 15.375 - 0.031_25, 15.375),
        ("15 3/8 full", 15.375, 15.375 + 0.031_25),
        ("-1/8", -0.125 - 0.031_25, -0.125 + 0.031_25),
        ("-1/8 scant", -0.125, -0.125 + 0.031_25),
        ("-1/8 full", -0.125 - 0.031_25, -0.125),
        ("0 scant", -0.031_25, 0.0),
    ] {
        let says =
            Reading::parse(text, System::Inch, &bounds::POSITION).unwrap().interval(sixteenth);
        for (found, inches) in [
            (says.least(), least),
            (says.most(), most),
            (says.estimate(), f64::midpoint(least, most)),
            (says.half_width(), (most - least) / 2.0),
        ] {
            approx::assert_abs_diff_eq!(found.get::<inch>(), inches, epsilon = 1e-12);
        }
    }
}

/// Arithmetic from JCGM 100:2008, 4.3.7 (u = a/√3), done by hand: half a sixteenth either side is
/// 0.4583 mm, a quarter of one 0.2291 mm.
#[test]
fn standard_uncertainty_of_a_sixteenth() {
    for (text, millimetres) in [("15 3/8", 0.458_3), ("15 3/8 scant", 0.229_1)] {
        let says = read(text, System::Inch).unwrap().interval(Step::Sixteenth.length());
        approx::assert_abs_diff_eq!(
            says.standard_uncertainty().get::<millimeter>(),
            millimetres,
            epsilon = 5e-5
        );
    }
}

#[test]
fn lengths_to_text() {
    for (inches, step, text) in [
        (0.0, Step::Sixteenth, "0 in"),
        (-0.0, Step::Sixteenth, "0 in"),
        (13.875, Step::Sixteenth, "13 7/8 in"),
        (13.875, Step::Eighth, "13 7/8 in"),
        (13.86, Step::Sixteenth, "13 7/8 in scant"),
        (13.89, Step::Sixteenth, "13 7/8 in full"),
        (13.999, Step::Sixteenth, "14 in"),
        (13.98, Step::Eighth, "14 in scant"),
        (0.02, Step::Sixteenth, "0 in full"),
        (-0.02, Step::Sixteenth, "0 in scant"),
        (-0.001, Step::Sixteenth, "0 in"),
        (-0.125, Step::Sixteenth, "−1/8 in"),
        (-0.11, Step::Sixteenth, "−1/8 in scant"),
        (-0.14, Step::Sixteenth, "−1/8 in full"),
        // Midway goes to the even mark.
        (1.0 / 32.0, Step::Sixteenth, "0 in full"),
        (3.0 / 32.0, Step::Sixteenth, "1/8 in scant"),
        (f64::NAN, Step::Sixteenth, "–"),
        (f64::INFINITY, Step::Sixteenth, "–"),
    ] {
        assert_eq!(write_inch(Length::new::<inch>(inches), step), text, "{inches}");
    }
}

#[test]
fn keys() {
    for (text, key, pressed) in [
        ("", "3/8", "3/8"),
        ("  ", "3/8", "3/8"),
        ("15", "3/8", "15 3/8"),
        ("15 ", "3/8", "15 3/8 "),
        ("15 3/8", "1/2", "15 1/2"),
        ("15 3/8", "3/8", "15 3/8"),
        ("15-3/8\"", "1/2", "15 1/2\""),
        ("15⅜", "1/2", "15 1/2"),
        ("15.375", "1/2", "15 1/2"),
        (".375", "1/2", "1/2"),
        ("3/8", "1/2", "1/2"),
        ("15 in", "3/8", "15 3/8 in"),
        ("15 scant", "3/8", "15 3/8 scant"),
        ("1'", "3/8", "1' 3/8"),
        ("1' 3\"", "3/8", "1' 3 3/8\""),
        ("1.5 ft", "3/8", "1.5 ft"),
        ("", "scant", ""),
        ("15 3/8", "scant", "15 3/8 scant"),
        ("15 3/8 in", "scant", "15 3/8 in scant"),
        ("15 3/8 scant", "scant", "15 3/8"),
        ("15 3/8 scant", "full", "15 3/8 full"),
        ("15 3/8 scant in", "scant", "15 3/8 in"),
        ("15 3/8-", "scant", "15 3/8"),
        ("15 3/8-\"", "full", "15 3/8\" full"),
        ("just under 15", "scant", "15"),
        ("15 3/8 shy", "full", "15 3/8 full"),
        ("390", "full", "390 full"),
        // The key can have no meaning here: nothing typed is lost.
        ("15 3/", "3/8", "15 3/"),
        ("hello", "3/8", "hello"),
        ("hello", "scant", "hello"),
        ("390 mm", "3/8", "390 mm"),
        ("15", "1/3", "15"),
        ("15", "9/8", "15"),
        ("15", "7", "15"),
        ("15", "", "15"),
    ] {
        assert_eq!(press(text, key), pressed, "{text:?} and {key:?}");
    }
}

#[test]
fn units_spelt_out() {
    use System::{Inch, Metric};
    for (text, system, spelt) in [
        ("13 15/16", Inch, Some("13 15/16 in")),
        ("13 7/8 scant", Inch, Some("13 7/8 in scant")),
        ("13 7/8-", Inch, Some("13 7/8 in-")),
        ("13scant", Inch, Some("13 in scant")),
        ("just over 13", Inch, Some("just over 13 in")),
        ("390", Metric, Some("390 mm")),
        ("390,5 -", Metric, Some("390,5 mm -")),
        // Out of bounds is no reason to lose the meaning.
        ("5000", Inch, Some("5000 in")),
        ("-3/16", Inch, Some("-3/16 in")),
        ("13 7/8 in", Inch, None),
        ("1' 3", Inch, None),
        ("390 mm", Inch, None),
        ("13 7/8", Metric, None),
        ("hello", Inch, None),
        ("", Inch, None),
    ] {
        assert_eq!(spell_unit(text, system).as_deref(), spelt, "{text:?}");
        if let Some(spelt) = spelt {
            let parts = |text| grammar::parse(text).unwrap().reading(text, system).unwrap();
            assert_eq!(parts(text), parts(spelt), "{text:?}");
        }
    }
}

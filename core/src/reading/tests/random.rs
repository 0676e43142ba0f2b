//! Random texts and lengths: nothing panics, nothing accepted is nonsense.

use super::*;
use crate::quantity::unit::meter;
use proptest::prelude::*;

/// What is accepted is no nonsense: it has a figure in it, lies within the bound, and its canonical
/// text is read as the very same reading in either system and with either comma.
fn accepted_makes_sense(text: &str, system: System) {
    let Ok(reading) = read(text, system) else {
        return;
    };
    assert!(text.chars().any(char::is_numeric), "{text:?}");
    assert!(READING.check(reading.length()).is_ok(), "{text:?}");
    let canonical = reading.to_string();
    for system in [System::Inch, System::Metric] {
        assert_eq!(read(&canonical, system).as_ref(), Ok(&reading), "{text:?}");
    }
    if let Some(spelt) = spell_unit(text, system) {
        assert_eq!(read(&spelt, system).as_ref(), Ok(&reading), "{text:?} → {spelt:?}");
    }
    for key in ["3/8", "scant", "full"] {
        let pressed = press(text, key);
        assert!(grammar::parse(&pressed).is_ok(), "{text:?} + {key} → {pressed:?}");
    }
}

/// A refusal can be shown: its place is in the text, its words are there.
fn refused_is_explained(text: &str, system: System) {
    let Err(refusal) = read(text, system) else {
        return;
    };
    assert!(refusal.position() <= text.chars().count(), "{text:?}");
    assert!(!refusal.to_string().is_empty() && !refusal.code().is_empty());
    // What is offered may have a further fault, but not the same one: two commas apart.
    let meant = refusal.example();
    let again = read(meant, system).map_or_else(|again| again.code(), |_| "");
    assert!(again != refusal.code() || again == "comma-ambiguous", "{text:?}: {meant:?}");
    if !text.trim().is_empty() && grammar::parse(text).is_err() {
        for key in ["3/8", "scant"] {
            assert_eq!(press(text, key), text, "{key}");
        }
    }
}

/// Texts of the grammar's own pieces: most are nearly readings.
fn near_readings() -> impl Strategy<Value = String> {
    let pieces = [
        "1", "3", "15", "8", "16", "64", "200", "0", "375", " ", " ", " ", "/", "/", "-", "−", "+",
        ".", ",", "'", "\"", "″", "in", "ft", "mm", "cm", "m", "scant", "full", "just", "under",
        "over", "⅜", "⅓", "³", "⁄", "₈", "\u{202f}", "short", "lb", "x",
    ];
    prop::collection::vec(prop::sample::select(pieces.to_vec()), 0..10)
        .prop_map(|pieces| pieces.concat())
}

fn systems() -> impl Strategy<Value = System> {
    prop::sample::select(vec![System::Inch, System::Metric])
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4_000))]

    #[test]
    fn any_text(text in "\\PC{0,24}", system in systems()) {
        accepted_makes_sense(&text, system);
        refused_is_explained(&text, system);
    }

    #[test]
    fn any_near_reading(text in near_readings(), system in systems()) {
        accepted_makes_sense(&text, system);
        refused_is_explained(&text, system);
    }

    #[test]
    fn any_mark_and_lean(n in 1_u32..7680, word in "( scant| full|-|\\+| in| in full)?") {
        let text = format!("{} {}/64{word}", n / 64, n % 64);
        prop_assert!(read(&text, System::Inch).is_ok(), "{text}");
        accepted_makes_sense(&text, System::Inch);
    }

    /// The text of a length holds the length, in the step it is written to.
    #[test]
    fn written_lengths_hold_what_was_written(
        metres in READING.any_si(),
        step in prop::sample::select(Step::ALL.to_vec()),
    ) {
        let length = Length::new::<meter>(metres);
        let text = write_inch(length, step);
        let reading = Reading::parse(&text, System::Metric, &bounds::POSITION).unwrap();
        let says = reading.interval(step.length());
        // A picometre: what rounding may cost, and the blur that finds what is midway.
        let hair = Length::new::<meter>(1e-12);
        prop_assert!(says.least() - hair <= length && length <= says.most() + hair, "{text}");
        prop_assert!(
            (reading.length() - length).abs() <= step.length() / 2.0 + hair,
            "{text} is off"
        );
        // The estimate of what was read is written the same again, so that nothing drifts.
        prop_assert_eq!(write_inch(says.estimate(), step), text);
    }
}

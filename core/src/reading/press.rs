//! One key of the tape's key row pressed on a field, and bare readings given their unit.

use super::Lean;
use super::grammar::{Leaning, Measure, ParsedReading, parse};
use super::spoken::figures;
use crate::quantity::System;
use std::ops::Range;

/// The text of a field after one key: a fraction such as `3/8`, or `scant` or `full`.
///
/// A fraction takes the place of the fraction that is there, and the rest stays. A lean is put on,
/// swapped, or taken off when it is there already. A text in which the key can have no meaning is
/// left as it is, so that nothing typed is ever lost.
///
/// ```
/// use coilnest::reading::press;
///
/// assert_eq!(press("", "3/8"), "3/8");
/// assert_eq!(press("15", "3/8"), "15 3/8");
/// assert_eq!(press("15 3/8\"", "1/2"), "15 1/2\"");
/// assert_eq!(press("15 1/2", "scant"), "15 1/2 scant");
/// assert_eq!(press("15 1/2 scant", "full"), "15 1/2 full");
/// assert_eq!(press("15 1/2 full", "full"), "15 1/2");
/// assert_eq!(press("390 mm", "3/8"), "390 mm");
/// ```
#[must_use]
pub fn press(text: &str, key: &str) -> String {
    let key = key.trim();
    let said = figures(text).unwrap_or(text.into());
    let pressed = match key {
        "scant" => press_lean(&said, Lean::Scant),
        "full" => press_lean(&said, Lean::Full),
        _ => press_fraction(&said, key),
    };
    pressed.filter(|pressed| parse(pressed).is_ok()).unwrap_or_else(|| text.to_owned())
}

/// A bare reading with its unit spelt out; nothing if it has one, or is no reading.
///
/// ```
/// use coilnest::quantity::System;
/// use coilnest::reading::spell_unit;
///
/// assert_eq!(spell_unit("13 7/8 scant", System::Inch).as_deref(), Some("13 7/8 in scant"));
/// assert_eq!(spell_unit("390,5", System::Metric).as_deref(), Some("390,5 mm"));
/// assert_eq!(spell_unit("390 mm", System::Inch), None);
/// ```
#[must_use]
pub fn spell_unit(text: &str, system: System) -> Option<String> {
    let said = figures(text).ok()?;
    let text = said.as_ref();
    let written = parse(text).ok()?;
    written.reading(text, system).ok()?;
    let number = written.main.filter(|_| written.unit.is_none())?;
    let unit = system.measure().text();
    let end = number.span.end;
    let is_glued = text.get(end..)?.starts_with(|c: char| c.is_ascii_alphabetic());
    let gap = if is_glued { " " } else { "" };
    splice(text, end..end, &format!(" {unit}{gap}"))
}

/// The system whose unit is written with a reading; none where it is bare or no reading.
///
/// ```
/// use coilnest::quantity::System;
/// use coilnest::reading::written_in;
///
/// assert_eq!(written_in("28 mm"), Some(System::Metric));
/// assert_eq!(written_in("1 1/16\""), Some(System::Inch));
/// assert_eq!(written_in("1 1/16"), None);
/// ```
#[must_use]
pub fn written_in(text: &str) -> Option<System> {
    let written = parse(&figures(text).ok()?).ok()?;
    written.unit.map(Measure::system).or(written.feet.map(|_| System::Inch))
}

fn press_fraction(text: &str, key: &str) -> Option<String> {
    let fraction = parse(key).ok().filter(is_bare_fraction)?;
    fraction.reading(key, System::Inch).ok()?;
    if text.trim().is_empty() {
        return Some(key.to_owned());
    }
    let written = parse(text).ok()?;
    if written.unit.is_some_and(|unit| unit.system() == System::Metric) {
        return None;
    }
    match (written.main, written.feet) {
        (Some(number), _) if number.whole.is_empty() => splice(text, number.span, key),
        (Some(number), _) => splice(text, number.whole.end..number.span.end, &format!(" {key}")),
        (None, Some(feet)) if feet.decimals == 0 && written.lean.is_none() => {
            Some(format!("{} {key}", text.trim_end()))
        }
        (None, _) => None,
    }
}

fn is_bare_fraction(written: &ParsedReading) -> bool {
    written.unit.is_none()
        && written.lean.is_none()
        && written.negative.is_none()
        && written
            .main
            .as_ref()
            .is_some_and(|number| number.fraction.is_some() && number.whole.is_empty())
}

fn press_lean(text: &str, lean: Lean) -> Option<String> {
    let written = parse(text).ok()?;
    match written.lean {
        None => Some(format!("{} {lean}", text.trim_end())),
        Some(there) => {
            let without = take_off(text, &there)?;
            if there.lean == lean { Some(without) } else { Some(format!("{without} {lean}")) }
        }
    }
}

/// The text without its lean and without the blanks that parted it from the rest.
fn take_off(text: &str, leaning: &Leaning) -> Option<String> {
    let before = text.get(..leaning.span.start)?.trim_end();
    let after = text.get(leaning.span.end..)?;
    let without =
        if before.is_empty() { after.trim_start().to_owned() } else { format!("{before}{after}") };
    Some(without.trim_end().to_owned())
}

fn splice(text: &str, bytes: Range<usize>, with: &str) -> Option<String> {
    let before = text.get(..bytes.start)?;
    let after = text.get(bytes.end..)?;
    Some(format!("{before}{with}{after}"))
}

//! How far a figure may be off, as drawings and makers write it.
//!
//! ```text
//! 0.5      ± 0.5      +/- 0.5      either way by so much
//! +1.5 -0  +1.5 / −0.5  -0 +1.5    up by so much, down by so much
//! 5 %      +10 -5 %                parts of the figure itself, of a rate, a load or the turns
//! ```

use super::field::Spot;
use super::report::Problem;
use crate::drawing::Given;
use core::fmt;
use core::ops::{Add, Mul, Sub};

/// What a figure may be less and more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Tolerance<Q> {
    pub(crate) less: Off<Q>,
    pub(crate) more: Off<Q>,
}

/// An amount, or a part of the figure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Off<Q> {
    By(Q),
    Part(f64),
}

impl<Q: Copy + Mul<f64, Output = Q>> Off<Q> {
    pub(crate) fn of(self, nominal: Q) -> Q {
        match self {
            Self::By(amount) => amount,
            Self::Part(part) => nominal * part,
        }
    }
}

impl<Q> Tolerance<Q>
where
    Q: Copy + fmt::Debug + PartialOrd + Add<Output = Q> + Sub<Output = Q> + Mul<f64, Output = Q>,
{
    /// A figure within its tolerance; as drawn where none is given.
    pub(crate) fn given(of: Option<Self>, nominal: Q) -> Given<Q> {
        let within =
            of.and_then(|of| Given::around(nominal, of.less.of(nominal), of.more.of(nominal)).ok());
        within.unwrap_or(Given::as_drawn(nominal))
    }
}

/// A tolerance as it is written: one part, or one for each way.
enum Parts<'t> {
    Both(&'t str),
    Each { less: &'t str, more: &'t str },
}

impl<'t> Parts<'t> {
    /// None where only one way is written, or one way twice.
    fn of(text: &'t str) -> Option<Self> {
        let text = text.trim();
        let even = ["±", "+/-", "+/−", "+-"].iter().find_map(|sign| text.strip_prefix(sign));
        if let Some(even) = even {
            return Some(Self::Both(even.trim()));
        }
        let Some(up_first) = sign_of(text) else { return Some(Self::Both(text)) };
        let body = text.trim_start_matches(is_sign);
        let (first, second) = body.split_at(body.find(is_sign)?);
        let up_second = sign_of(second)?;
        let first = first.trim().trim_end_matches(['/', ',', ';']).trim();
        let second = second.trim_start_matches(is_sign).trim();
        match (up_first, up_second) {
            (true, false) => Some(Self::Each { more: first, less: second }),
            (false, true) => Some(Self::Each { more: second, less: first }),
            _ => None,
        }
    }

    /// Each way with its unit: what only the second has holds for both.
    fn with_unit(self) -> [String; 2] {
        match self {
            Self::Both(text) => [text.to_owned(), text.to_owned()],
            Self::Each { less, more } => {
                let unit = |text: &str| {
                    let unit = text.trim_start_matches(|c: char| {
                        c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | ' ' | '\u{202f}')
                    });
                    unit.to_owned()
                };
                let spelt = |text: &str, other: &str| {
                    if unit(text).is_empty() {
                        format!("{text} {}", unit(other)).trim().to_owned()
                    } else {
                        text.to_owned()
                    }
                };
                [spelt(less, more), spelt(more, less)]
            }
        }
    }
}

fn is_sign(c: char) -> bool {
    matches!(c, '+' | '-' | '−')
}

/// Whether a text begins with a plus; none where it begins with no sign.
fn sign_of(text: &str) -> Option<bool> {
    text.chars().next().filter(|c| is_sign(*c)).map(|sign| sign == '+')
}

/// Both ways of what is written, each read as `one` reads it.
pub(crate) fn read<Q: Copy>(
    text: &str,
    spot: &Spot<'_>,
    example: &str,
    one: impl Fn(&str) -> Result<Off<Q>, Box<Problem>>,
) -> Result<Tolerance<Q>, Box<Problem>> {
    let parts = Parts::of(text).ok_or_else(|| {
        let expected = "a tolerance either way, or one up and one down";
        let why = "only one way of the two is written: write a 0 where it may not be off";
        spot.refused("one-sided", text, expected, why, example)
    })?;
    let [less, more] = parts.with_unit();
    let less_by = one(less.trim())?;
    let more_by = if more == less { less_by } else { one(more.trim())? };
    Ok(Tolerance { less: less_by, more: more_by })
}

/// The same text with its units spelt out, where a bare number would mean something else in the other
/// system.
pub(super) fn spell(text: &str, unit: impl Fn(&str) -> Option<String>) -> Option<String> {
    match Parts::of(text)? {
        Parts::Both(only) => {
            let (sign, _) = text.split_at_checked(text.find(only)?)?;
            Some(format!("{sign}{}", unit(only)?))
        }
        parts @ Parts::Each { .. } => {
            let [less, more] = parts.with_unit();
            let spelt = |text: &str| unit(text).unwrap_or_else(|| text.to_owned());
            let changed = unit(&less).is_some() || unit(&more).is_some();
            changed.then(|| format!("+{} -{}", spelt(&more), spelt(&less)))
        }
    }
}

/// Whether any part of a tolerance is such.
pub(super) fn any_part(text: &str, is: impl Fn(&str) -> bool) -> bool {
    Parts::of(text).is_some_and(|parts| parts.with_unit().iter().any(|part| is(part)))
}

/// A tolerance with its signs, as it is put behind a figure.
pub(super) fn signed(text: &str) -> String {
    if text.starts_with(['±', '+', '-', '−']) { text.to_owned() } else { format!("± {text}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds;
    use crate::job::field::{AmountTolerance, LengthTolerance, Reads};
    use crate::quantity::System;

    fn ways(text: &str) -> Option<[String; 2]> {
        Parts::of(text).map(Parts::with_unit)
    }

    #[test]
    fn a_tolerance_is_read_as_makers_write_it() {
        let both = |less: &str, more: &str| Some([less.to_owned(), more.to_owned()]);
        for (text, expected) in [
            ("0.5", both("0.5", "0.5")),
            ("± 1/16", both("1/16", "1/16")),
            ("+/- 0.5 mm", both("0.5 mm", "0.5 mm")),
            ("+1.5 -0", both("0", "1.5")),
            ("+1.5 −0 mm", both("0 mm", "1.5 mm")),
            ("+1.5 mm / -0", both("0 mm", "1.5 mm")),
            ("-0 +1/16 in", both("0 in", "1/16 in")),
            ("+10 -5 %", both("5 %", "10 %")),
            ("+1.5", None),
            ("-0.5", None),
            ("+1 +2", None),
        ] {
            assert_eq!(ways(text), expected, "{text}");
        }
    }

    #[test]
    fn a_change_of_system_keeps_what_is_meant() {
        let spelt = |text| LengthTolerance(&bounds::TOLERANCE).spell_unit(text, System::Metric);
        assert_eq!(spelt("0.5").as_deref(), Some("0.5 mm"));
        assert_eq!(spelt("± 0.5").as_deref(), Some("± 0.5 mm"));
        assert_eq!(spelt("+1.5 -0").as_deref(), Some("+1.5 mm -0 mm"));
        assert_eq!(spelt("+1.5 -0 mm"), None);
        let rate = AmountTolerance(&bounds::RATE_TOLERANCE);
        assert_eq!(rate.spell_unit("+10 -5 %", System::Metric), None);
    }
}

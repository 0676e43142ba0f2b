//! Numbers with units as documents print them.
//!
//! The factors stand here again, from NIST Special Publication 811, so that nothing is checked by
//! the code under test.

use coilnest::quantity::{write_fixed, write_number};
use std::iter::repeat_n;

/// A printed number: its value, its unit, and what one unit of its last digit is worth.
///
/// # Example
/// ```
/// use coilnest_published::Measure;
///
/// let rate = Measure::read("1.314 N/mm")?;
/// assert!((rate.si() - 1314.0).abs() < 1e-9);
/// assert!((rate.last_digit - 0.001).abs() < 1e-15);
/// # Ok::<(), String>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Measure<'a> {
    /// As printed.
    pub text: &'a str,
    /// The number, in its own unit.
    pub number: f64,
    /// One of the unit in SI.
    pub unit_si: f64,
    /// One unit of the last digit, in the number's own unit; none of a fraction, which is exact.
    pub last_digit: f64,
    unit: &'a str,
    /// Digits after the point, of a decimal.
    decimals: Option<usize>,
}

const INCH: f64 = 0.025_4;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = 4.448_221_615_260_5;
const PSI: f64 = POUND_FORCE / (INCH * INCH);

/// The units that documents print, each in SI.
const UNITS: &[(&str, f64)] = &[
    ("", 1.0),
    ("%", 0.01),
    ("mm", 1e-3),
    ("cm", 1e-2),
    ("m", 1.0),
    ("in", INCH),
    ("ft", 12.0 * INCH),
    ("N", 1.0),
    ("kN", 1e3),
    ("lbf", POUND_FORCE),
    ("N/mm", 1e3),
    ("N/m", 1.0),
    ("lbf/in", POUND_FORCE / INCH),
    ("Pa", 1.0),
    ("MPa", 1e6),
    ("N/mm²", 1e6),
    ("GPa", 1e9),
    ("psi", PSI),
    ("kpsi", 1e3 * PSI),
    ("Mpsi", 1e6 * PSI),
    ("kg", 1.0),
    ("lb", POUND),
    ("kg/m³", 1.0),
    ("kg/dm³", 1e3),
    ("lb/in³", POUND / (INCH * INCH * INCH)),
    ("Hz", 1.0),
];

/// What keeps the thousands apart in a number of the calculation.
const GROUP: char = '\u{202f}';

impl<'a> Measure<'a> {
    /// Reads `1.314 N/mm`, `86 450 psi`, `1/32 in` or a bare number.
    ///
    /// # Errors
    /// A sentence when there is no number, or no such unit.
    pub fn read(text: &'a str) -> Result<Self, String> {
        let text = text.trim();
        let is_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '−' | '/' | ' ');
        let end = text.find(|c| !is_number(c)).unwrap_or(text.len());
        let (digits, unit) = text.split_at(end);
        let digits: String = digits.trim().replace('−', "-").replace(' ', "");
        let unit_si = UNITS.iter().find(|(name, _)| *name == unit).map(|(_, si)| *si);
        let unit_si = unit_si.ok_or_else(|| format!("{text:?}: no unit {unit:?}"))?;
        let number = match digits.split_once('/') {
            Some((above, below)) => number_of(above, text)? / number_of(below, text)?,
            None => number_of(&digits, text)?,
        };
        let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let decimals = (!digits.contains('/')).then_some(decimals);
        let last_digit = match decimals {
            Some(decimals) => 1.0 / ten_to(decimals),
            None => 0.0,
        };
        Ok(Self { text, number, unit_si, last_digit, unit, decimals })
    }

    /// The value in SI units.
    #[must_use]
    pub fn si(&self) -> f64 {
        self.number * self.unit_si
    }

    /// Another number of the same unit, with as many digits and with the thousands set apart as here.
    #[must_use]
    pub fn like(&self, number: f64) -> String {
        let digits = match self.decimals {
            Some(decimals) => with_decimals(write_fixed(number, decimals), decimals),
            None => significant(number, 6),
        };
        let apart = self.text.trim_end_matches(self.unit).trim().contains(' ');
        self.with_unit(&digits.replace(GROUP, if apart { " " } else { "" }))
    }

    /// A difference or a tolerance in this unit, to two digits.
    #[must_use]
    pub fn small(&self, number: f64) -> String {
        self.with_unit(&significant(number, 2))
    }

    fn with_unit(&self, digits: &str) -> String {
        if self.unit.is_empty() { digits.into() } else { format!("{digits} {}", self.unit) }
    }
}

/// A number with zeros to its last decimal.
fn with_decimals(mut written: String, decimals: usize) -> String {
    let held = written.find('.').map_or(0, |point| written.len() - point - 1);
    if held == 0 && decimals > 0 {
        written.push('.');
    }
    written.extend(repeat_n('0', decimals.saturating_sub(held)));
    written
}

/// A number to some digits without idle zeros; as a power of ten where it would begin with many.
fn significant(number: f64, digits: usize) -> String {
    let (mut mantissa, mut exponent) = (number, 0_i32);
    while (10.0..f64::INFINITY).contains(&mantissa.abs()) {
        mantissa /= 10.0;
        exponent += 1;
    }
    while mantissa != 0.0 && mantissa.abs() < 1.0 {
        mantissa *= 10.0;
        exponent -= 1;
    }
    if exponent < -4 {
        let raised: String = exponent.to_string().chars().map(superscript).collect();
        return format!("{} × 10{raised}", write_number(mantissa, digits));
    }
    let decimals = i32::try_from(digits).unwrap_or_default() - 1 - exponent;
    write_fixed(number, usize::try_from(decimals).unwrap_or_default()).replace(GROUP, "")
}

fn superscript(sign: char) -> char {
    match sign {
        '-' => '⁻',
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        digit => {
            digit.to_digit(10).and_then(|digit| char::from_u32('⁰' as u32 + digit)).unwrap_or(digit)
        }
    }
}

/// A decimal as it stands, with one rounding: both sides of the division are held exactly. The parser of the
/// standard library would bring a table of powers of five as large as all the documents.
fn number_of(digits: &str, text: &str) -> Result<f64, String> {
    let (sign, bare) = digits.strip_prefix('-').map_or((1.0, digits), |bare| (-1.0, bare));
    let (whole, decimals) = bare.split_once('.').unwrap_or((bare, ""));
    let digits = format!("{whole}{decimals}");
    let (above, below) = digits.split_at(digits.len().saturating_sub(9));
    let part = |digits: &str| if digits.is_empty() { Some(0) } else { digits.parse::<u32>().ok() };
    let held = part(above).zip(part(below)).filter(|(above, _)| *above < 9_000_000);
    let is_held = !digits.is_empty() && decimals.len() <= 22;
    let number =
        held.filter(|_| is_held).map(|(above, below)| f64::from(above) * 1e9 + f64::from(below));
    let number = number.ok_or_else(|| format!("{text:?} begins with no number"))?;
    Ok(sign * number / ten_to(decimals.len()))
}

/// Exact up to the 22nd power.
fn ten_to(power: usize) -> f64 {
    (0..power).fold(1.0, |raised, _| raised * 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_is_written_like_the_printed_one() {
        for (printed, number, like) in [
            ("106 750 psi", 106_843.2, "106 843 psi"),
            ("1.50 N/mm", 1.0 / 3.0, "0.33 N/mm"),
            ("1/32 in", 0.031_25, "0.03125 in"),
            ("12", 12.4, "12"),
            ("2 %", 3.0, "3 %"),
            ("1 000.5 N", 1_234_567.89, "1 234 567.9 N"),
        ] {
            assert_eq!(Measure::read(printed).unwrap().like(number), like, "{printed}");
        }
    }

    #[test]
    fn a_small_number_keeps_two_digits() {
        let newton = Measure::read("1 N").unwrap();
        for (number, text) in [
            (0.0, "0 N"),
            (-0.046_51, "−0.047 N"),
            (0.05, "0.05 N"),
            (93.2, "93 N"),
            (1234.0, "1234 N"),
            (8.7e-8, "8.7 × 10⁻⁸ N"),
            (-5e-13, "−5 × 10⁻¹³ N"),
        ] {
            assert_eq!(newton.small(number), text);
        }
    }
}

//! Numbers with units as documents print them.
//!
//! The factors stand here again, from NIST Special Publication 811, so that nothing is checked by
//! the code under test.

use serde::Deserialize;

/// A printed number: its value, its unit, and what one unit of its last digit is worth.
///
/// # Example
/// ```
/// use coilnest_tests::measure::Measure;
///
/// let rate = Measure::read("1.314 N/mm")?;
/// assert!((rate.si() - 1314.0).abs() < 1e-9);
/// assert!((rate.last_digit - 0.001).abs() < 1e-15);
/// # Ok::<(), String>(())
/// ```
#[derive(Clone, Debug, Deserialize, PartialEq)]
#[serde(try_from = "String")]
pub struct Measure {
    /// As printed.
    pub text: String,
    /// The number, in its own unit.
    pub number: f64,
    /// One of the unit in SI.
    pub unit_si: f64,
    /// One unit of the last digit, in the number's own unit.
    pub last_digit: f64,
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

impl Measure {
    /// Reads `1.314 N/mm`, `86 450 psi`, `1/32 in` or a bare number.
    ///
    /// # Errors
    /// A sentence when there is no number, or no such unit.
    pub fn read(text: &str) -> Result<Self, String> {
        let text = text.trim();
        let is_number = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '−' | '/' | ' ');
        let end = text.find(|c| !is_number(c)).unwrap_or(text.len());
        let (digits, unit) = text.split_at(end);
        let digits: String = digits.trim().replace('−', "-").replace(' ', "");
        let unit_si = UNITS.iter().find(|(name, _)| *name == unit).map(|(_, si)| *si);
        let unit_si = unit_si.ok_or_else(|| format!("{text:?}: no unit {unit:?}"))?;
        let number = match digits.split_once('/') {
            Some((above, below)) => number(above, text)? / number(below, text)?,
            None => number(&digits, text)?,
        };
        let decimals = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
        let decimals = i32::try_from(decimals).map_err(|error| error.to_string())?;
        // A printed fraction is exact.
        let last_digit = if digits.contains('/') { 0.0 } else { 10f64.powi(-decimals) };
        Ok(Self { text: text.into(), number, unit_si, last_digit })
    }

    /// The value in SI units.
    #[must_use]
    pub fn si(&self) -> f64 {
        self.number * self.unit_si
    }
}

fn number(digits: &str, text: &str) -> Result<f64, String> {
    digits.parse().map_err(|error| format!("{text:?}: {error}"))
}

impl TryFrom<String> for Measure {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        Self::read(&text)
    }
}

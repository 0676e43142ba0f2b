//! Numbers to text: significant digits, thousands grouped, the same digits on every platform.

use super::{Kind, Length, Mixed, System, Table, unit};
use std::fmt::{self, Write};

/// Parts the thousands of a number: the narrow no-break space.
const GROUP: &str = "\u{202f}";

/// A quantity as text in the unit of the system: `5 720 lb`, `272.3 N/mm`, `58 000 psi`.
///
/// Rates, masses and moduli show four significant digits, forces four from a thousand on and three
/// below, stresses and energies three.
/// A zero at the end of a decimal is left out, a minus is the typographic one.
///
/// ```
/// use coilnest::quantity::{Force, SpringRate, System, unit, write};
///
/// let load = Force::new::<unit::pound_force>(5720.0);
/// assert_eq!(write::<Force>(load, System::Inch), "5\u{202f}720 lb");
/// assert_eq!(write::<Force>(load, System::Metric), "25\u{202f}440 N");
///
/// let rate = SpringRate::new::<unit::pound_force_per_inch>(1555.0);
/// assert_eq!(write::<SpringRate>(rate, System::Metric), "272.3 N/mm");
/// ```
#[must_use]
pub fn write<K: Kind>(value: K::Value, system: System) -> String {
    K::TABLE.write(K::si(value), system)
}

/// The number and the unit that [`write()`] shows, unrounded, for scales and axes.
///
/// ```
/// use coilnest::quantity::{Force, System, shown, unit};
///
/// let (number, unit) = shown::<Force>(Force::new::<unit::kilonewton>(2.0), System::Metric);
/// assert_eq!((number, unit), (2000.0, "N"));
/// ```
#[must_use]
pub fn shown<K: Kind>(value: K::Value, system: System) -> (f64, &'static str) {
    K::TABLE.shown(K::si(value), system)
}

impl Table {
    pub(crate) fn write(&self, si: f64, system: System) -> String {
        written(self.say(si, system))
    }

    pub(crate) fn say(&self, si: f64, system: System) -> Said {
        let (number, unit) = self.shown(si, system);
        let significant =
            if number.abs() < 1000.0 { self.below_thousand } else { self.significant };
        Said { digits: Digits::significant(number, significant), unit }
    }

    pub(crate) fn shown(&self, si: f64, system: System) -> (f64, &'static str) {
        self.own(system).map_or((si, ""), |unit| (si / unit.si, unit.text))
    }
}

/// A plain number to so many significant digits: `7.29`, `24 500`, `−0.0625`.
///
/// What is not finite has no digits and is written `–`.
///
/// ```
/// use coilnest::quantity::write_number;
///
/// assert_eq!(write_number(7.294_1, 3), "7.29");
/// assert_eq!(write_number(24_496.0, 3), "24\u{202f}500");
/// assert_eq!(write_number(-0.062_5, 4), "−0.0625");
/// ```
#[must_use]
pub fn write_number(value: f64, significant: usize) -> String {
    written(Digits::significant(value, significant))
}

/// A plain number to so many decimals at most: `353.6`, `1 200`.
///
/// ```
/// use coilnest::quantity::write_fixed;
///
/// assert_eq!(write_fixed(353.61, 1), "353.6");
/// assert_eq!(write_fixed(1200.0, 1), "1\u{202f}200");
/// ```
#[must_use]
pub fn write_fixed(value: f64, decimals: usize) -> String {
    written(Digits::fixed(value, decimals))
}

/// A length as the fraction of an inch that it is, where it lies on a mark of sixty-fourths.
pub(crate) fn tape_mark(length: Length) -> Option<String> {
    let parts = length.get::<unit::inch>() * 64.0;
    let marks = libm::round(parts.abs());
    // Whole, and few enough of them for the type.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    let whole = marks as u128;
    let sign = if parts < 0.0 && whole > 0 { "−" } else { "" };
    ((parts.abs() - marks).abs() < 1e-6)
        .then(|| written(format_args!("{sign}{} in", Mixed::new(whole, 64))))
}

/// A number with the digits that are shown of it, to be written where a text is put together.
///
/// Whole-number arithmetic: several times quicker than the formatting of floats, a fifth of its
/// size in the page, and half is always rounded up.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Digits {
    value: f64,
    /// Rounded to so many decimals, or to tens, hundreds … where they are negative.
    decimals: i32,
    round: Round,
}

/// Which way a number is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(not(feature = "job"), expect(dead_code, reason = "only a report rounds to one side"))]
enum Round {
    Nearest,
    Down,
    Up,
}

impl Round {
    /// A number without its sign; what is off by rounding alone is not rounded on.
    fn of(self, scaled: f64, negative: bool) -> f64 {
        let nearest = libm::round(scaled);
        let off = (scaled - nearest).abs() <= 1e-9 * scaled;
        match (self, negative) {
            (Self::Nearest, _) => nearest,
            _ if off => nearest,
            (Self::Down, false) | (Self::Up, true) => libm::floor(scaled),
            (Self::Down, true) | (Self::Up, false) => libm::ceil(scaled),
        }
    }
}

impl Digits {
    pub(crate) fn significant(value: f64, significant: usize) -> Self {
        let mut leading = 0;
        let mut size = value.abs();
        while size >= 10.0 && size.is_finite() {
            size /= 10.0;
            leading += 1;
        }
        while size < 1.0 && size > 0.0 {
            size *= 10.0;
            leading -= 1;
        }
        let significant = i32::try_from(significant.clamp(1, 15)).unwrap_or(15);
        Self { value, decimals: significant - 1 - leading, round: Round::Nearest }
    }

    pub(crate) fn fixed(value: f64, decimals: usize) -> Self {
        let decimals = i32::try_from(decimals).unwrap_or(15).min(15);
        Self { value, decimals, round: Round::Nearest }
    }

    /// The same, never above the number.
    #[cfg(feature = "job")]
    pub(crate) fn down(self) -> Self {
        Self { round: Round::Down, ..self }
    }

    /// The same, never below the number.
    #[cfg(feature = "job")]
    pub(crate) fn up(self) -> Self {
        Self { round: Round::Up, ..self }
    }
}

impl fmt::Display for Digits {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { value, decimals, round } = *self;
        if !value.is_finite() {
            return f.write_char('–');
        }
        let power = (0..decimals.abs()).fold(1.0, |power, _| power * 10.0);
        let scaled = if decimals < 0 { value.abs() / power } else { value.abs() * power };
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "not negative, and at most fifteen digits"
        )]
        let mut digits = round.of(scaled, value < 0.0) as u64;
        let (mut places, zeros) = match u32::try_from(decimals) {
            Ok(places) => (places, 0),
            Err(_) => (0, if digits == 0 { 0 } else { decimals.unsigned_abs() }),
        };
        while places > 0 && digits.is_multiple_of(10) {
            digits /= 10;
            places -= 1;
        }
        // Twenty digits are the most that the type holds.
        let mut ascii = [b'0'; 20];
        let own = digits.checked_ilog10().unwrap_or(0) + 1;
        for digit in ascii.iter_mut().rev().take(own as usize) {
            *digit += (digits % 10) as u8;
            digits /= 10;
        }
        let ahead = (places + 1).saturating_sub(own);
        let own_ascii = ascii.get(20 - own as usize..).unwrap_or_default();
        let mut shown = Gathered { to: f, text: [0; 32], length: 0 };
        if value < 0.0 && own_ascii != b"0" {
            shown.add("−".as_bytes())?;
        }
        let count = ahead + own + zeros;
        for nth in 0..count {
            let digit = nth.checked_sub(ahead).and_then(|nth| own_ascii.get(nth as usize));
            shown.add(&[*digit.unwrap_or(&b'0')])?;
            // Places are counted from the point: above zero to its left, below it to its right.
            let place = i64::from(count - 1 - nth) - i64::from(places);
            if place > 0 && place % 3 == 0 {
                shown.add(GROUP.as_bytes())?;
            }
            if place == 0 && places > 0 {
                shown.add(b".")?;
            }
        }
        shown.hand_over()
    }
}

/// Short pieces of a text on their way: a formatter takes one long piece quicker than many short ones.
struct Gathered<'f, 'b> {
    to: &'f mut fmt::Formatter<'b>,
    text: [u8; 32],
    length: usize,
}

impl Gathered<'_, '_> {
    fn add(&mut self, piece: &[u8]) -> fmt::Result {
        if self.length + piece.len() > self.text.len() {
            self.hand_over()?;
        }
        let room = self.text.get_mut(self.length..).unwrap_or_default();
        for (to, from) in room.iter_mut().zip(piece) {
            *to = *from;
        }
        self.length += piece.len();
        Ok(())
    }

    fn hand_over(&mut self) -> fmt::Result {
        let text = self.text.get(..self.length).unwrap_or_default();
        self.length = 0;
        self.to.write_str(str::from_utf8(text).map_err(|_| fmt::Error)?)
    }
}

/// Terms with a joint between each two: `lb, kip, N`.
///
/// One way for every list: that of the standard library comes once for each kind and each joint.
pub(crate) fn joined(terms: impl Iterator<Item = impl fmt::Display>, joint: &str) -> String {
    let mut text = String::with_capacity(64);
    for (index, term) in terms.enumerate() {
        let before = if index > 0 { joint } else { "" };
        // A string takes whatever is written to it.
        let _ = write!(text, "{before}{term}");
    }
    text
}

/// The text, with room for any number and unit from the start.
fn written(shown: impl fmt::Display) -> String {
    let mut text = String::with_capacity(24);
    // A string takes whatever is written to it.
    let _ = write!(text, "{shown}");
    text
}

/// A number and its unit, to be written where a text is put together.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Said {
    pub(crate) digits: Digits,
    pub(crate) unit: &'static str,
}

impl fmt::Display for Said {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.digits, f)?;
        if !self.unit.is_empty() {
            f.write_char(' ')?;
            f.write_str(self.unit)?;
        }
        Ok(())
    }
}

/// A quantity as [`write()`] shows it, to be written where a text is put together.
#[cfg(feature = "job")]
pub(crate) fn say<K: Kind>(value: K::Value, system: System) -> Said {
    K::TABLE.say(K::si(value), system)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{
        Energy, Force, Length, Mass, MassDensity, Modulus, Pressure, Share, SpringRate, Stress,
        Turns, unit,
    };

    #[test]
    fn numbers_to_significant_digits() {
        for (value, significant, text) in [
            (0.0, 4, "0"),
            (-0.0, 4, "0"),
            (5720.0, 4, "5 720"),
            (25_443.8, 4, "25 440"),
            (99_996.0, 4, "100 000"),
            (999.96, 4, "1 000"),
            (0.999_96, 4, "1"),
            (272.325, 4, "272.3"),
            (12.50, 4, "12.5"),
            (0.062_5, 4, "0.0625"),
            (0.000_123_456, 3, "0.000123"),
            (1.234e-22, 3, "0.000000000000000000000123"),
            (1.234e21, 3, "1 230 000 000 000 000 000 000"),
            (-1555.2, 4, "−1 555"),
            (11_200_000.0, 4, "11 200 000"),
            (1.5, 1, "2"),
            (7.0, 0, "7"),
            (f64::NAN, 4, "–"),
            (f64::NEG_INFINITY, 4, "–"),
        ] {
            assert_eq!(
                write_number(value, significant).replace(GROUP, " "),
                text,
                "{value} to {significant}"
            );
        }
    }

    #[test]
    fn numbers_to_fixed_decimals() {
        for (value, decimals, text) in [
            (353.61, 1, "353.6"),
            (390.0, 1, "390"),
            (-0.04, 1, "0"),
            (-0.06, 1, "−0.1"),
            (1200.04, 2, "1 200.04"),
            (f64::INFINITY, 1, "–"),
        ] {
            assert_eq!(write_fixed(value, decimals).replace(GROUP, " "), text);
        }
    }

    #[test]
    fn each_kind_in_both_systems() {
        let texts = |inch: String, metric: String| {
            (inch.replace(GROUP, " ").clone(), metric.replace(GROUP, " ").clone())
        };
        macro_rules! both {
            ($kind:ty, $value:expr, $inch:literal, $metric:literal) => {
                assert_eq!(
                    texts(
                        write::<$kind>($value, System::Inch),
                        write::<$kind>($value, System::Metric)
                    ),
                    ($inch.to_owned(), $metric.to_owned())
                );
            };
        }
        both!(Force, Force::new::<unit::pound_force>(5720.0), "5 720 lb", "25 440 N");
        both!(
            SpringRate,
            SpringRate::new::<unit::pound_force_per_inch>(1555.0),
            "1 555 lb/in",
            "272.3 N/mm"
        );
        both!(Stress, Pressure::new::<unit::megapascal>(400.0), "58 000 psi", "400 MPa");
        both!(Modulus, Pressure::new::<unit::megapascal>(78_500.0), "11 390 000 psi", "78 500 MPa");
        both!(Length, Length::new::<unit::inch>(2.5), "2.5 in", "63.5 mm");
        both!(Mass, Mass::new::<unit::pound>(41.0), "41 lb", "18.6 kg");
        both!(
            MassDensity,
            MassDensity::new::<unit::kilogram_per_cubic_meter>(7850.0),
            "0.2836 lb/in³",
            "7 850 kg/m³"
        );
        both!(Energy, Energy::new::<unit::joule>(1000.0), "738 ft·lb", "1 000 J");
        both!(Turns, 7.25, "7.25", "7.25");
        both!(Share, 0.95, "95 %", "95 %");
    }
}

//! Text to load, rate, stress, modulus, turns and share.
//!
//! ```text
//! quantity = ["+"] number [power] [unit]
//! power    = "e" ["+" | "-"] digits | "×" "10" raised figures
//! ```
//!
//! The number is that of the shared grammar (see the source of `scan`): `5000`, `24 500`, `0,5`,
//! `7 1/4`. Only turns may have a fraction.

use super::System;
use super::bound::{Bound, Row, Side};
use super::kind::{Numbers, Readable, Table, Unit, is_unclear, owner_of};
use super::number::Number;
use super::refusal::{Fault, Reason, Refusal, shorten};
use super::scan::{Mark, Scanner, some_number};

/// Reads a quantity; a bare number takes the unit of the system.
///
/// `lb` and `kg` of a load are pounds and kilograms of force, as the trade writes them. Blanks may
/// part thousands. Case does not matter, except where it would make a milli of a mega.
///
/// ```
/// use approx::assert_relative_eq;
/// use coilnest::bounds;
/// use coilnest::quantity::{System, read, unit};
///
/// let rate = read("272,3", System::Metric, &bounds::RATE)?;
/// assert_relative_eq!(rate.get::<unit::newton_per_millimeter>(), 272.3, max_relative = 1e-15);
///
/// let modulus = read("11.2e6 psi", System::Metric, &bounds::MODULUS)?;
/// assert_relative_eq!(
///     modulus.get::<unit::million_pound_force_per_square_inch>(), 11.2, max_relative = 1e-15
/// );
///
/// assert_relative_eq!(read("7 1/4", System::Inch, &bounds::TURNS)?, 7.25);
/// assert_relative_eq!(read("95 %", System::Inch, &bounds::LEVEL)?, 0.95);
/// # Ok::<(), coilnest::quantity::Refusal>(())
/// ```
///
/// # Errors
///
/// A [`Refusal`] that names the place, if the text is no such quantity or is out of bounds.
pub fn read<K: Readable>(
    text: &str,
    system: System,
    bound: &'static Bound<K>,
) -> Result<K::Value, Refusal> {
    let refuse = |fault| Refusal::new(text, fault, &bound.row, system);
    let written = parse(text, K::TABLE).map_err(refuse)?;
    let si = written.si(K::TABLE, system);
    within(&bound.row, si, written.number.span.start, system).map_err(refuse)?;
    Ok(K::from_si(si))
}

/// The same text with its unit spelt out, if it is a bare number that would mean something else in
/// the other system.
///
/// ```
/// use coilnest::{bounds, quantity::{System, spell_unit}};
///
/// assert_eq!(spell_unit("5000", System::Inch, &bounds::LOAD).as_deref(), Some("5000 lb"));
/// assert_eq!(spell_unit("5000 N", System::Inch, &bounds::LOAD), None);
/// assert_eq!(spell_unit("7 1/4", System::Inch, &bounds::TURNS), None);
/// ```
#[must_use]
pub fn spell_unit<K: Readable>(
    text: &str,
    system: System,
    _bound: &'static Bound<K>,
) -> Option<String> {
    let written = parse(text, K::TABLE).ok()?;
    let inch = K::TABLE.own(System::Inch)?;
    let metric = K::TABLE.own(System::Metric)?;
    if written.unit.is_some() || inch.text == metric.text {
        return None;
    }
    let own = K::TABLE.own(system)?;
    Some(format!("{} {}", text.trim(), own.text))
}

/// The system whose unit is written with a quantity; none where it is bare, of both, or no quantity.
///
/// ```
/// use coilnest::{bounds, quantity::{System, written_in}};
///
/// assert_eq!(written_in("35 N/mm", &bounds::RATE), Some(System::Metric));
/// assert_eq!(written_in("35", &bounds::RATE), None);
/// ```
#[must_use]
pub fn written_in<K: Readable>(text: &str, _bound: &'static Bound<K>) -> Option<System> {
    K::TABLE.system(parse(text, K::TABLE).ok()?.unit?)
}

/// Refuses what lies outside the bound.
pub(crate) fn within(row: &Row, si: f64, at: usize, system: System) -> Result<(), Fault> {
    let name = row.name();
    let reason = match row.side(si) {
        Side::Within => return Ok(()),
        Side::Below => Reason::TooSmall { name, least: row.least(system) },
        Side::Above => Reason::TooLarge { name, most: row.most(system) },
    };
    Err(Fault::new(at, reason))
}

/// The fault of a unit that does not belong to the table.
pub(crate) fn not_a_unit(written: &str, at: usize, table: &Table) -> Fault {
    let found = shorten(written);
    let units = table.units();
    let reason = if is_unclear(written) {
        Reason::UnitUnclear { found, units }
    } else if let Some(owner) = owner_of(written) {
        Reason::WrongUnit { found, kind: owner.name, units }
    } else {
        Reason::UnknownUnit { found, units }
    };
    Fault::new(at, reason)
}

/// A quantity as written, before it is weighed against a bound.
struct Quantity {
    number: Number,
    power: i32,
    unit: Option<&'static Unit>,
}

impl Quantity {
    fn si(&self, table: &Table, system: System) -> f64 {
        let number = self.number.value(self.power);
        match self.unit.or_else(|| table.own(system)) {
            None => number,
            Some(_) if self.unit.is_none() && table.numbers == Numbers::Part && number <= 1.0 => {
                number
            }
            Some(unit) => number * unit.si,
        }
    }
}

fn parse(text: &str, table: &Table) -> Result<Quantity, Fault> {
    let mut scanner = Scanner::new(text);
    some_number(text, &scanner)?;
    scanner.skip_blanks();
    if scanner.mark() == Some(Mark::Minus) {
        return Err(Fault::new(scanner.at(), Reason::Negative));
    }
    if scanner.take(Mark::Plus).is_some() {
        scanner.skip_blanks();
    }
    if !scanner.number_follows() {
        return Err(scanner.stray());
    }
    let number = scanner.number()?;
    if number.fraction.is_some() && table.numbers != Numbers::Mixed {
        return Err(Fault::new(
            number.fraction_at,
            Reason::StrayText {
                found: shorten(text.get(number.fraction_at..number.span.end).unwrap_or("")),
            },
        ));
    }
    number.proper(text)?;
    let power = power(&mut scanner)?;
    scanner.skip_blanks();
    let unit = unit(&scanner, table)?;
    Ok(Quantity { number, power, unit })
}

/// The power of ten behind a number; 0 if there is none.
fn power(scanner: &mut Scanner<'_>) -> Result<i32, Fault> {
    let sign = match scanner.peek() {
        Some(token) if token.mark == Mark::Word && token.text.eq_ignore_ascii_case("e") => {
            scanner.step();
            if scanner.take(Mark::Minus).is_some() {
                -1
            } else {
                scanner.take(Mark::Plus);
                1
            }
        }
        _ => return scanner.times_ten_to(),
    };
    let at = scanner.at();
    let Some(digits) = scanner.take(Mark::Digits) else {
        return Err(Fault::new(at, Reason::Unfinished { after: "e".to_owned() }));
    };
    match digits.text.parse::<i32>() {
        Ok(power) if digits.text.len() <= 2 => Ok(sign * power),
        _ => Err(Fault::new(at, Reason::TooManyDigits)),
    }
}

/// The unit that makes up the rest of the text.
fn unit(scanner: &Scanner<'_>, table: &Table) -> Result<Option<&'static Unit>, Fault> {
    let rest = scanner.rest().trim_end();
    if rest.is_empty() {
        return Ok(None);
    }
    if !is_unclear(rest)
        && let Some(unit) = table.find(rest)
    {
        return Ok(Some(unit));
    }
    if rest.starts_with(|c: char| c.is_alphabetic() || c == '%') {
        Err(not_a_unit(rest, scanner.at(), table))
    } else {
        Err(scanner.stray())
    }
}

#[cfg(test)]
mod tests;

//! Text to reading: the grammar of the module, and what the parts must be to make a length.

use super::{Lean, Millimetres, Reading};
use crate::quantity::{
    Fault, Kind, Length, Mark, Mixed, Number, Reason, Scanner, System, not_a_unit, shorten,
    some_number,
};
use fraction::{CheckedAdd, CheckedMul, Zero};
use std::ops::Range;

/// A reading as it stands in the text, before the job's system and the field's bound are known.
#[derive(Debug)]
pub(super) struct ParsedReading {
    /// Where a minus stands.
    pub(super) negative: Option<usize>,
    pub(super) feet: Option<Number>,
    /// The number that is not feet.
    pub(super) main: Option<Number>,
    pub(super) unit: Option<Measure>,
    pub(super) lean: Option<Leaning>,
}

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Measure {
    Inch,
    Foot,
    Millimetre,
    Centimetre,
    Metre,
}

/// A lean and where it stands, in bytes.
#[derive(Clone, Debug)]
pub(super) struct Leaning {
    pub(super) lean: Lean,
    pub(super) span: Range<usize>,
}

impl Measure {
    fn named(text: &str) -> Option<Self> {
        Some(match Length::TABLE.find(text)?.text {
            "in" => Self::Inch,
            "ft" => Self::Foot,
            "cm" => Self::Centimetre,
            "m" => Self::Metre,
            _ => Self::Millimetre,
        })
    }

    pub(super) fn system(self) -> System {
        match self {
            Self::Inch | Self::Foot => System::Inch,
            Self::Millimetre | Self::Centimetre | Self::Metre => System::Metric,
        }
    }

    /// The unit in millimetres, exact.
    fn size(self) -> Millimetres {
        match self {
            Self::Inch => Millimetres::new(127_u8, 5_u8),
            Self::Foot => Millimetres::new(1524_u16, 5_u8),
            Self::Millimetre => Millimetres::from(1_u8),
            Self::Centimetre => Millimetres::from(10_u8),
            Self::Metre => Millimetres::from(1000_u16),
        }
    }

    pub(super) fn text(self) -> &'static str {
        match self {
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
        }
    }
}

impl System {
    /// The unit of a bare length.
    pub(super) fn measure(self) -> Measure {
        match self {
            Self::Inch => Measure::Inch,
            Self::Metric => Measure::Millimetre,
        }
    }
}

/// An inch, exact.
pub(super) fn inch() -> Millimetres {
    Measure::Inch.size()
}

/// Reads the parts of a text.
pub(super) fn parse(text: &str) -> Result<ParsedReading, Fault> {
    let mut scanner = Scanner::new(text);
    some_number(text, &scanner)?;
    let mut written =
        ParsedReading { negative: None, feet: None, main: None, unit: None, lean: None };
    scanner.skip_blanks();
    while !is_sign_word(&scanner) && lean_word(&mut scanner, &mut written)? {}
    if scanner.mark() == Some(Mark::Minus) {
        written.negative = Some(scanner.at());
        scanner.step();
    } else {
        scanner.take(Mark::Plus);
    }
    scanner.skip_blanks();
    if !scanner.number_follows() {
        return Err(out_of_place(&scanner));
    }
    let number = scanner.number()?;
    written.unit = unit(&mut scanner, &mut written)?;
    if written.unit == Some(Measure::Foot) {
        written.main = inches_after(&number, &mut scanner, &mut written)?;
        written.feet = Some(number);
    } else {
        written.main = Some(number);
    }
    leans(&mut scanner, &mut written)?;
    match scanner.peek() {
        None => Ok(written),
        Some(_) => Err(left_over(&mut scanner, &written)),
    }
}

/// The inches after feet, with or without their unit, if there are any.
fn inches_after(
    feet: &Number,
    scanner: &mut Scanner<'_>,
    written: &mut ParsedReading,
) -> Result<Option<Number>, Fault> {
    if feet.fraction.is_some() {
        return Err(Fault::new(feet.fraction_at, Reason::BrokenFeet));
    }
    if let Some(ahead) = scanner.joined_number_follows() {
        scanner.step_by(ahead);
    }
    scanner.skip_blanks();
    if !scanner.number_follows() {
        return Ok(None);
    }
    if feet.decimals > 0 {
        return Err(Fault::new(feet.span.start, Reason::BrokenFeet));
    }
    let inches = scanner.number()?;
    scanner.skip_blanks();
    let at = scanner.at();
    match unit(scanner, written)? {
        None | Some(Measure::Inch) => Ok(Some(inches)),
        Some(other) => Err(Fault::new(
            at,
            Reason::MixedUnits {
                first: Measure::Foot.text().to_owned(),
                second: other.text().to_owned(),
            },
        )),
    }
}

/// A unit if one follows, and any lean before it.
fn unit(scanner: &mut Scanner<'_>, written: &mut ParsedReading) -> Result<Option<Measure>, Fault> {
    leans(scanner, written)?;
    let measure = measure(scanner);
    if measure.is_some() {
        let is_word = scanner.mark() == Some(Mark::Word);
        scanner.step();
        if is_word {
            scanner.take(Mark::Point);
        }
    }
    Ok(measure)
}

/// The unit that stands here.
fn measure(scanner: &Scanner<'_>) -> Option<Measure> {
    let token = scanner.peek()?;
    match token.mark {
        Mark::Inch => Some(Measure::Inch),
        Mark::Foot => Some(Measure::Foot),
        Mark::Word => Measure::named(token.text),
        _ => None,
    }
}

/// Takes the blanks and the leaning words and signs that follow.
fn leans(scanner: &mut Scanner<'_>, written: &mut ParsedReading) -> Result<(), Fault> {
    loop {
        scanner.skip_blanks();
        let sign = match scanner.mark() {
            Some(Mark::Minus) if scanner.joined_number_follows().is_none() => Some(Lean::Scant),
            Some(Mark::Plus) => Some(Lean::Full),
            _ => None,
        };
        if let Some(lean) = sign {
            let from = scanner.at();
            scanner.step();
            written.add_lean(lean, scanner, from)?;
        } else if !lean_word(scanner, written)? {
            return Ok(());
        }
    }
}

/// "Minus" and "plus", which lean behind a number and would be its sign before it.
fn is_sign_word(scanner: &Scanner<'_>) -> bool {
    scanner.peek().is_some_and(|word| {
        word.text.eq_ignore_ascii_case("minus") || word.text.eq_ignore_ascii_case("plus")
    })
}

/// Takes a leaning word and the blanks behind it; whether there was one.
fn lean_word(scanner: &mut Scanner<'_>, written: &mut ParsedReading) -> Result<bool, Fault> {
    let Some(word) = scanner.peek().filter(|token| token.mark == Mark::Word) else {
        return Ok(false);
    };
    let is = |known: &str| word.text.eq_ignore_ascii_case(known);
    let lean = if ["scant", "shy", "light", "weak", "minus"].into_iter().any(is) {
        scanner.step();
        Lean::Scant
    } else if ["full", "heavy", "strong", "plus", "proud"].into_iter().any(is) {
        scanner.step();
        Lean::Full
    } else if is("just") {
        scanner.step();
        scanner.skip_blanks();
        let side = scanner.peek().map_or("", |token| token.text);
        let lean = if side.eq_ignore_ascii_case("under") {
            Lean::Scant
        } else if side.eq_ignore_ascii_case("over") {
            Lean::Full
        } else {
            return Err(Fault::new(word.from, Reason::StrayText { found: word.text.to_owned() }));
        };
        scanner.step();
        lean
    } else {
        return Ok(false);
    };
    written.add_lean(lean, scanner, word.from)?;
    scanner.skip_blanks();
    Ok(true)
}

impl ParsedReading {
    /// Notes the lean that begins at `from` and ends where the scanner stands.
    fn add_lean(&mut self, lean: Lean, scanner: &Scanner<'_>, from: usize) -> Result<(), Fault> {
        let span = from..scanner.end();
        match &self.lean {
            None => {
                self.lean = Some(Leaning { lean, span });
                Ok(())
            }
            Some(first) => Err(Fault::new(
                from,
                Reason::TwoLeans {
                    first: shorten(scanner.slice(first.span.clone())),
                    second: shorten(scanner.slice(span)),
                },
            )),
        }
    }

    /// The reading that the parts make in a job of this system, whatever the field.
    pub(super) fn reading(&self, text: &str, system: System) -> Result<Reading, Fault> {
        let feet = self.feet.as_ref().map(|feet| Measure::Foot.of(feet, text)).transpose()?;
        let measure = match self.unit {
            Some(Measure::Foot) => Measure::Inch,
            Some(measure) => measure,
            None => system.measure(),
        };
        let main = match &self.main {
            Some(number) if measure.system() == System::Metric && number.fraction.is_some() => {
                let inches = format!("{} in", nearest(number));
                let meant = self.unit.is_none().then(|| number.replaced(text, inches));
                return Err(Fault::new(number.fraction_at, Reason::FractionInMetric { meant }));
            }
            Some(number) => measure.of(number, text)?,
            None => Millimetres::zero(),
        };
        let at = self.main.as_ref().map_or(0, |number| number.span.start);
        if feet.is_some() && main >= Measure::Foot.size() {
            return Err(Fault::new(at, Reason::InchesOverFoot));
        }
        let size = match feet {
            Some(feet) => feet.checked_add(&main).ok_or(Fault::new(at, Reason::TooManyDigits))?,
            None => main,
        };
        let mark = if self.negative.is_some() && !size.is_zero() { -size } else { size };
        Ok(Reading {
            mark,
            lean: self.lean.as_ref().map_or(Lean::Plain, |leaning| leaning.lean),
            system: measure.system(),
        })
    }

    /// Where its first number begins.
    pub(super) fn at(&self) -> usize {
        self.feet.as_ref().or(self.main.as_ref()).map_or(0, |number| number.span.start)
    }
}

impl Measure {
    /// So many of this unit.
    fn of(self, number: &Number, text: &str) -> Result<Millimetres, Fault> {
        if let Some(second) = number.second_group.filter(|_| self != Self::Millimetre) {
            let part = |range| shorten(text.get(range).unwrap_or(""));
            return Err(Fault::new(
                second,
                Reason::TwoNumbers {
                    first: part(number.span.start..second),
                    second: part(second..number.span.end),
                },
            ));
        }
        if let Some((_, parts)) = number.fraction {
            if !(parts.is_power_of_two() && parts <= 64) {
                let meant = number.replaced(text, nearest(number));
                return Err(Fault::new(number.fraction_at, Reason::Denominator { parts, meant }));
            }
            number.proper(text)?;
        }
        exact(number)
            .and_then(|count| count.checked_mul(&self.size()))
            .ok_or(Fault::new(number.span.start, Reason::TooManyDigits))
    }
}

/// The number as a rational; nothing if it had too many digits, which the scanner does not let pass.
fn exact(number: &Number) -> Option<Millimetres> {
    let scale = 10_u128.checked_pow(number.decimals)?;
    let (numerator, denominator) = number.fraction.unwrap_or((0, 1));
    let decimal = Millimetres::new(number.mantissa, scale);
    // Most readings have no fraction or no decimals: nothing is to be put over one denominator.
    if numerator == 0 {
        return Some(decimal);
    }
    decimal.checked_add(&Millimetres::new(numerator, denominator))
}

/// The nearest sixty-fourth, never zero.
fn nearest(number: &Number) -> Mixed {
    let (numerator, denominator) = number.fraction.unwrap_or((0, 1));
    let (numerator, denominator) = (u128::from(numerator), u128::from(denominator));
    let part = (numerator * 128 + denominator) / (denominator * 2);
    Mixed::new((number.mantissa * 64 + part).max(1), 64)
}

/// The fault of what stands where a number should.
fn out_of_place(scanner: &Scanner<'_>) -> Fault {
    verdict_word(scanner).unwrap_or_else(|| scanner.stray())
}

/// The fault of what is left when the reading is complete.
fn left_over(scanner: &mut Scanner<'_>, written: &ParsedReading) -> Fault {
    if let Some(fault) = verdict_word(scanner) {
        return fault;
    }
    let at = scanner.at();
    match (written.unit, measure(scanner), scanner.mark()) {
        (Some(first), Some(second), _) => Fault::new(
            at,
            Reason::MixedUnits { first: first.text().to_owned(), second: second.text().to_owned() },
        ),
        (None, _, Some(Mark::Word)) => not_a_unit(scanner.rest().trim_end(), at, Length::TABLE),
        _ => scanner.stray(),
    }
}

/// "Short" and "long" are what the verdict says.
fn verdict_word(scanner: &Scanner<'_>) -> Option<Fault> {
    let word = scanner.peek()?;
    let instead = if word.text.eq_ignore_ascii_case("short") {
        "scant"
    } else if word.text.eq_ignore_ascii_case("long") {
        "full"
    } else {
        return None;
    };
    Some(Fault::new(word.from, Reason::VerdictWord { found: word.text.to_owned(), instead }))
}

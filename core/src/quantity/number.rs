//! The grammar of numbers that readings and quantities share, and their exact value.
//!
//! ```text
//! number   = decimal | whole [joint fraction] | fraction
//! decimal  = grouped ("." | ",") digits | ("." | ",") digits
//! whole    = grouped
//! grouped  = digits { one blank, three digits }
//! joint    = blanks | [blanks] "-" [blanks] | nothing, before ⅜ and ³⁄₈
//! fraction = digits "/" digits | "⅜" | "³⁄₈"
//! ```
//!
//! A comma before exactly three digits is refused where it could part thousands just as well.

use super::refusal::{Fault, Reason, shorten};
use super::scan::{Mark, Scanner, Token};
use fraction::{GenericFraction, ToPrimitive};
use std::fmt::{self, Display, Formatter};
use std::ops::Range;

/// A number as it was written, exact.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Number {
    /// The whole or decimal part is `mantissa` / 10^`decimals`.
    pub(crate) mantissa: u128,
    pub(crate) decimals: u32,
    /// Numerator and denominator, the latter not zero.
    pub(crate) fraction: Option<(u64, u64)>,
    pub(crate) span: Range<usize>,
    /// The bytes of the digits before any decimal or fraction.
    pub(crate) whole: Range<usize>,
    /// Where the fraction begins.
    pub(crate) fraction_at: usize,
    /// Where the second group of digits begins, if thousands are parted.
    pub(crate) second_group: Option<usize>,
}

const MOST_WHOLE_DIGITS: usize = 14;
const MOST_DECIMALS: usize = 20;

/// The float nearest to `mantissa` · 10^`places`.
fn decimal(mantissa: u128, places: i32) -> f64 {
    let power = 10_u128.checked_pow(places.unsigned_abs());
    match power {
        Some(power) if places < 0 => {
            GenericFraction::<u128>::new(mantissa, power).to_f64().unwrap_or(f64::NAN)
        }
        // Beyond 2⁵³ the conversion rounds, to the nearest.
        #[expect(clippy::cast_precision_loss, reason = "the nearest float is what is wanted")]
        Some(power) => mantissa.checked_mul(power).map_or(f64::INFINITY, |value| value as f64),
        None if places < 0 || mantissa == 0 => 0.0,
        None => f64::INFINITY,
    }
}

impl Number {
    /// The same value as a whole and a proper fraction in lowest terms: `14 1/16`.
    fn as_mixed(&self) -> Mixed {
        let (numerator, denominator) = self.fraction.unwrap_or((0, 1));
        let denominator = u128::from(denominator);
        Mixed::new(self.mantissa * denominator + u128::from(numerator), denominator)
    }

    /// The nearest value of a float, times ten to a power.
    pub(crate) fn value(&self, power: i32) -> f64 {
        let decimal = decimal(self.mantissa, power.saturating_sub_unsigned(self.decimals));
        match self.fraction {
            Some((numerator, denominator)) => {
                // Both have at most nine digits, so neither is rounded.
                #[allow(clippy::cast_precision_loss)]
                let part = numerator as f64 / denominator as f64;
                decimal + part
            }
            None => decimal,
        }
    }

    /// The text with another number in the place of this one.
    pub(crate) fn replaced(&self, text: &str, number: impl Display) -> String {
        let before = text.get(..self.span.start).unwrap_or("");
        let after = text.get(self.span.end..).unwrap_or("");
        shorten(&format!("{before}{number}{after}"))
    }

    /// Refuses a fraction of one or more.
    pub(crate) fn proper(&self, text: &str) -> Result<(), Fault> {
        match self.fraction {
            Some((numerator, denominator)) if numerator >= denominator => Err(Fault::new(
                self.fraction_at,
                Reason::FractionAboveOne {
                    is_whole: numerator == denominator,
                    meant: self.replaced(text, self.as_mixed()),
                },
            )),
            _ => Ok(()),
        }
    }
}

/// A whole and a fraction in lowest terms, to be written where a text is put together: `14 1/16`,
/// `3/8`, `15`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Mixed {
    whole: u128,
    rest: u128,
    parts: u128,
}

impl Mixed {
    pub(crate) fn new(numerator: u128, denominator: u128) -> Self {
        let denominator = denominator.max(1);
        let (whole, rest) = (numerator / denominator, numerator % denominator);
        let common = common_divisor(rest, denominator);
        Self { whole, rest: rest / common, parts: denominator / common }
    }
}

impl Display for Mixed {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        let Self { whole, rest, parts } = self;
        match (whole, rest) {
            (whole, 0) => write!(f, "{whole}"),
            (0, rest) => write!(f, "{rest}/{parts}"),
            (whole, rest) => write!(f, "{whole} {rest}/{parts}"),
        }
    }
}

/// The greatest common divisor; 1 for two zeros, so that it can be divided by.
fn common_divisor(a: u128, b: u128) -> u128 {
    let (mut a, mut b) = (a, b);
    while b != 0 {
        (a, b) = (b, a % b);
    }
    a.max(1)
}

impl<'t> Scanner<'t> {
    /// Whether a number begins here.
    pub(crate) fn number_follows(&self) -> bool {
        self.number_follows_at(0)
    }

    fn number_follows_at(&self, ahead: usize) -> bool {
        match self.mark_at(ahead) {
            Some(Mark::Digits) => true,
            Some(Mark::Point | Mark::Comma) => self.mark_at(ahead + 1) == Some(Mark::Digits),
            _ => self.fraction_follows(ahead),
        }
    }

    /// How far ahead a number is that follows a dash, if one does, blanks aside.
    pub(crate) fn joined_number_follows(&self) -> Option<usize> {
        let dash = self.past_blanks(0);
        (self.mark_at(dash) == Some(Mark::Minus))
            .then(|| self.past_blanks(dash + 1))
            .filter(|&ahead| self.number_follows_at(ahead))
    }

    /// Reads one number, which must begin here.
    pub(crate) fn number(&mut self) -> Result<Number, Fault> {
        let from = self.at();
        if self.fraction_follows(0) {
            let fraction_at = from;
            let fraction = self.fraction()?;
            return Ok(Number {
                mantissa: 0,
                decimals: 0,
                fraction: Some(fraction),
                span: from..self.end(),
                whole: from..from,
                fraction_at,
                second_group: None,
            });
        }
        let (groups, second_group) = self.groups();
        let whole = from..self.end().max(from);
        let decimals = self.decimals(&groups)?;
        let mut number = Number {
            mantissa: mantissa(&groups, decimals).ok_or_else(|| too_many(from))?,
            decimals: u32::try_from(decimals.len()).unwrap_or(u32::MAX),
            fraction: None,
            span: from..self.end(),
            whole,
            fraction_at: from,
            second_group,
        };
        if let Some(ahead) = self.joined_fraction() {
            self.step_by(ahead);
            number.fraction_at = self.at();
            if !decimals.is_empty() {
                return Err(Fault::new(self.at(), Reason::FractionAndDecimal));
            }
            number.fraction = Some(self.fraction()?);
        } else if let Some(ahead) = self.second_number() {
            return Err(self.two_numbers(&number, ahead));
        }
        number.span.end = self.end();
        Ok(number)
    }

    /// The power in `× 10⁶`; 0 if nothing of the kind follows.
    pub(crate) fn times_ten_to(&mut self) -> Result<i32, Fault> {
        let times = self.past_blanks(0);
        let ten = self.past_blanks(times + 1);
        let is_power = self.peek_at(times).is_some_and(|token| token.text == "×")
            && self.peek_at(ten).is_some_and(|token| token.text == "10");
        match self.mark_at(ten + 1) {
            Some(Mark::Raised(power)) if is_power => {
                self.step_by(ten + 1);
                let at = self.at();
                self.step();
                i32::try_from(power).ok().filter(|&power| power < 100).ok_or_else(|| too_many(at))
            }
            _ => Ok(0),
        }
    }

    /// Digits, thousands parted by one blank each; and where the second group begins.
    fn groups(&mut self) -> (String, Option<usize>) {
        let mut digits = String::new();
        let mut second = None;
        if let Some(token) = self.take(Mark::Digits) {
            digits.push_str(token.text);
            let leads = token.text.len() <= 3 && !token.text.starts_with('0');
            while leads && self.group_follows() {
                self.step();
                second = second.or(Some(self.at()));
                digits.push_str(self.peek().map_or("", |token| token.text));
                self.step();
            }
        }
        (digits, second)
    }

    /// One blank and three digits that are no numerator.
    fn group_follows(&self) -> bool {
        self.peek()
            .is_some_and(|blank| blank.mark == Mark::Blank && blank.text.chars().count() == 1)
            && self
                .peek_at(1)
                .is_some_and(|digits| digits.mark == Mark::Digits && digits.text.len() == 3)
            && !self.fraction_follows(1)
    }

    /// What stands behind a decimal point or comma; nothing if there is none.
    fn decimals(&mut self, whole: &str) -> Result<&'t str, Fault> {
        let Some(point) =
            self.peek().filter(|token| matches!(token.mark, Mark::Point | Mark::Comma))
        else {
            return Ok("");
        };
        self.step();
        let Some(digits) = self.take(Mark::Digits) else {
            return Err(Fault::new(
                point.from,
                Reason::Unfinished { after: point.text.to_owned() },
            ));
        };
        if point.mark == Mark::Comma && digits.text.len() == 3 {
            self.refuse_ambiguous_comma(point, whole, digits.text)?;
        }
        match self.peek() {
            Some(Token { mark: Mark::Point | Mark::Comma | Mark::Digits, .. }) => Err(self.stray()),
            _ => Ok(digits.text),
        }
    }

    /// A comma before three digits parts thousands if one to three digits stand before it, the
    /// first of them not a zero.
    fn refuse_ambiguous_comma(
        &self,
        comma: Token<'t>,
        whole: &str,
        behind: &str,
    ) -> Result<(), Fault> {
        if whole.is_empty() || whole.len() > 3 || whole.starts_with('0') {
            return Ok(());
        }
        let before = self.slice(0..comma.from - whole.len()).trim_start();
        let mut grouped = format!("{whole} {behind}");
        let mut rest = self.rest();
        while let Some((group, after)) = rest.strip_prefix(',').map(split_digits)
            && group.len() == 3
        {
            grouped = format!("{grouped} {group}");
            rest = after;
        }
        let goes_on = rest.starts_with([',', '.']);
        let rest = shorten(rest);
        let gap = if rest.starts_with(|c: char| c.is_ascii_alphabetic()) { " " } else { "" };
        // Whoever goes on with a further group or with a point has parted thousands.
        let is_decimal = !goes_on && grouped.len() == whole.len() + 4;
        let decimal = is_decimal.then(|| format!("{before}{whole}.{behind}{gap}{rest}"));
        Err(Fault::new(
            comma.from,
            Reason::CommaAmbiguous { meant: format!("{before}{grouped}{gap}{rest}"), or: decimal },
        ))
    }

    /// Whether a fraction begins so many tokens ahead.
    fn fraction_follows(&self, ahead: usize) -> bool {
        match self.mark_at(ahead) {
            Some(Mark::Vulgar(..)) => true,
            Some(Mark::Digits | Mark::Raised(_)) => {
                self.mark_at(self.past_blanks(ahead + 1)) == Some(Mark::Stroke)
            }
            _ => false,
        }
    }

    /// How far ahead a fraction is that belongs to the whole just read.
    fn joined_fraction(&self) -> Option<usize> {
        let near = self.past_blanks(0);
        if self.fraction_follows(near) {
            return Some(near);
        }
        self.joined_number_follows().filter(|&ahead| self.fraction_follows(ahead))
    }

    /// How far ahead a number is that follows with no fraction.
    fn second_number(&self) -> Option<usize> {
        let near = self.past_blanks(0);
        if self.mark_at(near) == Some(Mark::Digits) {
            return Some(near);
        }
        self.joined_number_follows()
    }

    fn two_numbers(&self, first: &Number, ahead: usize) -> Fault {
        let second = self.peek_at(ahead);
        Fault::new(
            second.map_or(first.span.end, |token| token.from),
            Reason::TwoNumbers {
                first: shorten(self.slice(first.span.clone())),
                second: shorten(second.map_or("", |token| token.text)),
            },
        )
    }

    /// The numerator and denominator of a fraction that begins here.
    fn fraction(&mut self) -> Result<(u64, u64), Fault> {
        let at = self.at();
        let numerator = match self.peek() {
            Some(Token { mark: Mark::Vulgar(numerator, denominator), .. }) => {
                self.step();
                return Ok((numerator, denominator));
            }
            Some(Token { mark: Mark::Raised(value), .. }) => value,
            token => small(token).ok_or_else(|| too_many(at))?,
        };
        self.step();
        self.skip_blanks();
        let Some(stroke) = self.take(Mark::Stroke) else {
            return Err(self.stray());
        };
        self.skip_blanks();
        let denominator_at = self.at();
        let denominator = match self.peek() {
            Some(Token { mark: Mark::Lowered(value), .. }) => value,
            token @ Some(Token { mark: Mark::Digits, .. }) => {
                small(token).ok_or_else(|| too_many(denominator_at))?
            }
            _ => {
                return Err(Fault::new(stroke.from, Reason::Unfinished { after: "/".to_owned() }));
            }
        };
        self.step();
        if denominator == 0 {
            return Err(Fault::new(denominator_at, Reason::ZeroDenominator));
        }
        Ok((numerator, denominator))
    }
}

fn too_many(at: usize) -> Fault {
    Fault::new(at, Reason::TooManyDigits)
}

/// A numerator or denominator of at most nine digits.
fn small(token: Option<Token<'_>>) -> Option<u64> {
    let text = token?.text;
    (text.len() <= 9).then(|| text.parse().ok()).flatten()
}

fn mantissa(whole: &str, decimals: &str) -> Option<u128> {
    let whole = whole.trim_start_matches('0');
    if whole.len() > MOST_WHOLE_DIGITS || decimals.len() > MOST_DECIMALS {
        return None;
    }
    let mut digits = whole.chars().chain(decimals.chars());
    digits.try_fold(0, |value: u128, digit| Some(value * 10 + u128::from(digit.to_digit(10)?)))
}

/// The leading ASCII digits of a text, and what follows.
fn split_digits(text: &str) -> (&str, &str) {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    text.split_at_checked(end).unwrap_or((text, ""))
}

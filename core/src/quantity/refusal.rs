//! Why a text was refused: one closed set of reasons, with the place, a sentence and an example.

use super::System;
use super::bound::Row;

/// A text that was refused: what was read, where it went wrong, why, and what would do.
///
/// [`Display`](std::fmt::Display) gives the whole sentence for the field:
///
/// ```
/// use coilnest::{bounds, quantity::System, reading::Reading};
///
/// let refusal = Reading::parse("13 17/16", System::Inch, &bounds::READING).unwrap_err();
/// assert_eq!(refusal.code(), "fraction-above-one");
/// assert_eq!(refusal.position(), 3);
/// assert_eq!(refusal.example(), "14 1/16");
/// assert_eq!(refusal.expected(), "a reading between 1/64 in and 120 in");
/// assert_eq!(
///     refusal.to_string(),
///     "13 17/16 — the fraction is more than a whole; did you mean 14 1/16?"
/// );
/// ```
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}{reason}", quoted(.read))]
pub struct Refusal {
    read: String,
    position: usize,
    reason: Reason,
    row: &'static Row,
    system: System,
}

impl Refusal {
    pub(crate) fn new(text: &str, fault: Fault, row: &'static Row, system: System) -> Self {
        let before = text.get(..fault.at).unwrap_or(text);
        Self {
            read: shorten(text),
            position: before.chars().count(),
            reason: fault.reason,
            row,
            system,
        }
    }

    /// The stable name of the reason; [`Reason::code`] lists them.
    #[must_use]
    pub fn code(&self) -> &'static str {
        self.reason.code()
    }

    /// The reason itself.
    #[must_use]
    pub fn reason(&self) -> &Reason {
        &self.reason
    }

    /// What was read, without blanks around it and cut short after forty characters.
    #[must_use]
    pub fn read(&self) -> &str {
        &self.read
    }

    /// Where it went wrong: the number of characters of the text before that place.
    #[must_use]
    pub fn position(&self) -> usize {
        self.position
    }

    /// What the field takes: "a reading between 1/64 in and 120 in".
    #[must_use]
    pub fn expected(&self) -> String {
        self.row.sentence(self.system)
    }

    /// A text that would do: what was meant where that can be told, else any such quantity.
    #[must_use]
    pub fn example(&self) -> &str {
        match &self.reason {
            Reason::FractionAboveOne { meant, .. }
            | Reason::Denominator { meant, .. }
            | Reason::FractionInMetric { meant: Some(meant) }
            | Reason::CommaAmbiguous { meant, .. } => meant,
            _ => self.row.example(self.system),
        }
    }
}

/// Why a text was refused. The offending part is carried along.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum Reason {
    /// Nothing, or nothing but blanks.
    #[error("nothing is written here")]
    Empty,
    /// Words or marks without a number.
    #[error("there is no number in it")]
    NoNumber,
    /// A number breaks off after a stroke, a point or a comma.
    #[error("a number is missing after \u{201c}{after}\u{201d}")]
    Unfinished {
        /// The mark after which it breaks off.
        after: String,
    },
    /// Something that is no part of such a quantity.
    #[error("\u{201c}{found}\u{201d} has no place here")]
    StrayText {
        /// What was found.
        found: String,
    },
    /// Two numbers side by side with no fraction.
    #[error("two numbers, {first} and {second}, with nothing to join them")]
    TwoNumbers {
        /// The first number.
        first: String,
        /// The second number.
        second: String,
    },
    /// A fraction of one or more.
    #[error("the fraction is {} than a whole; did you mean {meant}?", if *.is_whole { "no less" } else { "more" })]
    FractionAboveOne {
        /// Whether it is just one whole.
        is_whole: bool,
        /// The same value with a proper fraction.
        meant: String,
    },
    /// A fraction over zero.
    #[error("the fraction has a 0 under its stroke")]
    ZeroDenominator,
    /// An inch divided other than by halving.
    #[error("no tape divides an inch into {parts}; the nearest sixty-fourth is {meant}")]
    Denominator {
        /// The denominator found.
        parts: u64,
        /// The nearest sixty-fourth.
        meant: String,
    },
    /// A decimal and a fraction in one number.
    #[error("a decimal and a fraction in one number")]
    FractionAndDecimal,
    /// A fraction with no inches to be a fraction of.
    #[error(
        "a fraction of what? {}",
        .meant.as_ref().map_or("millimetres are written as decimals".to_owned(), |m| format!("for inches write {m}"))
    )]
    FractionInMetric {
        /// The same in inches, where that can be what was meant.
        meant: Option<String>,
    },
    /// Units that do not go together.
    #[error("{first} and {second} do not go together")]
    MixedUnits {
        /// The first unit.
        first: String,
        /// The second unit.
        second: String,
    },
    /// Feet with a fraction, or with a decimal and then inches.
    #[error("feet are whole, and inches follow; alone they may have a decimal")]
    BrokenFeet,
    /// Twelve inches or more after feet.
    #[error("after feet there are less than twelve inches")]
    InchesOverFoot,
    /// A minus where nothing can be negative.
    #[error("it cannot be below zero")]
    Negative,
    /// A comma that may part thousands or start a decimal.
    #[error(
        "the comma can be read two ways; write {meant}{}",
        .or.as_ref().map_or(String::new(), |or| format!(" or {or}"))
    )]
    CommaAmbiguous {
        /// With the thousands parted by a space, or with a point where only that makes sense.
        meant: String,
        /// With a point, where both make sense.
        or: Option<String>,
    },
    /// More than one word or sign that says just under or just over.
    #[error(
        "\u{201c}{second}\u{201d} after \u{201c}{first}\u{201d}: say only once to which side of the mark"
    )]
    TwoLeans {
        /// The first.
        first: String,
        /// The second.
        second: String,
    },
    /// A word of the verdict where a leaning word was wanted.
    #[error(
        "\u{201c}{found}\u{201d} is for the verdict to say; for just beside the mark write {instead}"
    )]
    VerdictWord {
        /// The word found.
        found: String,
        /// The leaning word.
        instead: &'static str,
    },
    /// A unit that is not known.
    #[error("\u{201c}{found}\u{201d} is no unit known here; write {units}")]
    UnknownUnit {
        /// The unit found.
        found: String,
        /// The units that are.
        units: String,
    },
    /// A unit of something else.
    #[error("\u{201c}{found}\u{201d} is a unit of {kind}; write {units}")]
    WrongUnit {
        /// The unit found.
        found: String,
        /// What it is a unit of.
        kind: &'static str,
        /// The units that fit.
        units: String,
    },
    /// A unit whose capital or small letter makes it a thousand million times another.
    #[error("\u{201c}{found}\u{201d} can be milli or mega; write {units}")]
    UnitUnclear {
        /// The unit found.
        found: String,
        /// The units that are clear.
        units: String,
    },
    /// More decimals than can be carried exactly.
    #[error("too many digits; fourteen before the point and twenty behind it are kept")]
    TooManyDigits,
    /// Below the least.
    #[error("{name} is at least {least}")]
    TooSmall {
        /// The quantity's name in words.
        name: &'static str,
        /// The least.
        least: String,
    },
    /// Above the most.
    #[error("{name} is at most {most}")]
    TooLarge {
        /// The quantity's name in words.
        name: &'static str,
        /// The most.
        most: String,
    },
}

impl Reason {
    /// Its stable name in kebab case, the variant's own: `empty`, `no-number`, `unfinished`,
    /// `stray-text`, `two-numbers`, `fraction-above-one`, `zero-denominator`, `denominator`,
    /// `fraction-and-decimal`, `fraction-in-metric`, `mixed-units`, `broken-feet`,
    /// `inches-over-foot`, `negative`, `comma-ambiguous`, `two-leans`, `verdict-word`,
    /// `unknown-unit`, `wrong-unit`, `unit-unclear`, `too-many-digits`, `too-small`, `too-large`.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Self::Empty => "empty",
            Self::NoNumber => "no-number",
            Self::Unfinished { .. } => "unfinished",
            Self::StrayText { .. } => "stray-text",
            Self::TwoNumbers { .. } => "two-numbers",
            Self::FractionAboveOne { .. } => "fraction-above-one",
            Self::ZeroDenominator => "zero-denominator",
            Self::Denominator { .. } => "denominator",
            Self::FractionAndDecimal => "fraction-and-decimal",
            Self::FractionInMetric { .. } => "fraction-in-metric",
            Self::MixedUnits { .. } => "mixed-units",
            Self::BrokenFeet => "broken-feet",
            Self::InchesOverFoot => "inches-over-foot",
            Self::Negative => "negative",
            Self::CommaAmbiguous { .. } => "comma-ambiguous",
            Self::TwoLeans { .. } => "two-leans",
            Self::VerdictWord { .. } => "verdict-word",
            Self::UnknownUnit { .. } => "unknown-unit",
            Self::WrongUnit { .. } => "wrong-unit",
            Self::UnitUnclear { .. } => "unit-unclear",
            Self::TooManyDigits => "too-many-digits",
            Self::TooSmall { .. } => "too-small",
            Self::TooLarge { .. } => "too-large",
        }
    }
}

/// A reason and the byte of the text where it shows, before the field is known.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Fault {
    pub(crate) at: usize,
    pub(crate) reason: Reason,
}

impl Fault {
    pub(crate) fn new(at: usize, reason: Reason) -> Self {
        Self { at, reason }
    }
}

/// The text without blanks around it, cut short where it is long.
pub(crate) fn shorten(text: &str) -> String {
    const MOST: usize = 40;
    let text = text.trim();
    if text.chars().count() <= MOST {
        text.to_owned()
    } else {
        text.chars().take(MOST).chain(['…']).collect()
    }
}

fn quoted(read: &str) -> String {
    if read.is_empty() { String::new() } else { format!("{read} — ") }
}

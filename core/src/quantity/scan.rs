//! A written text as tokens: blanks, dashes, strokes and primes in all their typographic forms.

use super::refusal::{Fault, Reason, shorten};
use std::iter::Peekable;
use std::ops::Range;
use std::str::CharIndices;

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    Digits,
    /// Raised figures, and their value.
    Raised(u64),
    /// Lowered figures, and their value.
    Lowered(u64),
    /// A fraction that is one character.
    Vulgar(u64, u64),
    Point,
    Comma,
    Stroke,
    Minus,
    Plus,
    Foot,
    Inch,
    Word,
    Blank,
    Other,
}

/// A piece of the text and where it begins, in bytes.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Token<'t> {
    pub(crate) mark: Mark,
    pub(crate) text: &'t str,
    pub(crate) from: usize,
}

impl Token<'_> {
    pub(crate) fn to(&self) -> usize {
        self.from + self.text.len()
    }
}

/// Walks over the tokens of a text.
#[derive(Debug)]
pub(crate) struct Scanner<'t> {
    text: &'t str,
    tokens: Vec<Token<'t>>,
    next: usize,
}

impl<'t> Scanner<'t> {
    pub(crate) fn new(text: &'t str) -> Self {
        Self { text, tokens: tokens(text), next: 0 }
    }

    pub(crate) fn has_number(&self) -> bool {
        self.tokens
            .iter()
            .any(|token| matches!(token.mark, Mark::Digits | Mark::Vulgar(..) | Mark::Raised(_)))
    }

    /// The byte where the next token begins.
    pub(crate) fn at(&self) -> usize {
        self.peek().map_or(self.text.len(), |token| token.from)
    }

    /// A piece of the text.
    pub(crate) fn slice(&self, bytes: Range<usize>) -> &'t str {
        self.text.get(bytes).unwrap_or("")
    }

    /// The text from the next token on.
    pub(crate) fn rest(&self) -> &'t str {
        self.text.get(self.at()..).unwrap_or("")
    }

    pub(crate) fn peek(&self) -> Option<Token<'t>> {
        self.peek_at(0)
    }

    pub(super) fn peek_at(&self, ahead: usize) -> Option<Token<'t>> {
        self.tokens.get(self.next + ahead).copied()
    }

    pub(super) fn mark_at(&self, ahead: usize) -> Option<Mark> {
        self.peek_at(ahead).map(|token| token.mark)
    }

    pub(crate) fn mark(&self) -> Option<Mark> {
        self.mark_at(0)
    }

    pub(crate) fn step(&mut self) {
        self.next += 1;
    }

    pub(crate) fn skip_blanks(&mut self) {
        while self.mark() == Some(Mark::Blank) {
            self.step();
        }
    }

    /// The first token from so many ahead that is no blank: how far ahead it is.
    pub(super) fn past_blanks(&self, from: usize) -> usize {
        let mut ahead = from;
        while self.mark_at(ahead) == Some(Mark::Blank) {
            ahead += 1;
        }
        ahead
    }

    pub(crate) fn take(&mut self, mark: Mark) -> Option<Token<'t>> {
        let token = self.peek().filter(|token| token.mark == mark)?;
        self.step();
        Some(token)
    }

    /// The fault of a piece that has no place, or of a text that ends too soon.
    pub(crate) fn stray(&self) -> Fault {
        Fault::new(
            self.at(),
            Reason::StrayText { found: shorten(self.peek().map_or("", |token| token.text)) },
        )
    }

    pub(crate) fn step_by(&mut self, tokens: usize) {
        self.next += tokens;
    }

    /// The end of the token before, in bytes.
    pub(crate) fn end(&self) -> usize {
        self.next.checked_sub(1).and_then(|last| self.tokens.get(last)).map_or(0, Token::to)
    }
}

/// Refuses a text with nothing in it, or with no number.
pub(crate) fn some_number(text: &str, scanner: &Scanner<'_>) -> Result<(), Fault> {
    if text.trim().is_empty() {
        Err(Fault::new(0, Reason::Empty))
    } else if scanner.has_number() {
        Ok(())
    } else {
        Err(Fault::new(0, Reason::NoNumber))
    }
}

fn tokens(text: &str) -> Vec<Token<'_>> {
    let mut tokens = Vec::with_capacity(8);
    let mut chars = text.char_indices().peekable();
    while let Some((from, first)) = chars.next() {
        let mark = mark(first, &mut chars);
        let to = chars.peek().map_or(text.len(), |&(next, _)| next);
        tokens.push(Token { mark, text: text.get(from..to).unwrap_or(""), from });
    }
    tokens
}

/// The mark that begins with a character; takes the characters that belong to it.
fn mark(first: char, chars: &mut Peekable<CharIndices<'_>>) -> Mark {
    match first {
        '0'..='9' => {
            while chars.next_if(|(_, c)| c.is_ascii_digit()).is_some() {}
            Mark::Digits
        }
        'a'..='z' | 'A'..='Z' => {
            while chars.next_if(|(_, c)| c.is_ascii_alphabetic()).is_some() {}
            Mark::Word
        }
        '.' => Mark::Point,
        ',' => Mark::Comma,
        '/' | '⁄' | '∕' => Mark::Stroke,
        '-' | '‐' | '‑' | '‒' | '–' | '—' | '−' => Mark::Minus,
        '+' => Mark::Plus,
        '"' | '″' | '”' | '“' | '‟' | 'ʺ' | '＂' => Mark::Inch,
        '\'' | '′' | '’' | '‘' | 'ʹ' | 'ʼ' | '´' | '`' => {
            if chars.next_if(|&(_, c)| c == first).is_some() { Mark::Inch } else { Mark::Foot }
        }
        _ if first.is_whitespace() => {
            while chars.next_if(|(_, c)| c.is_whitespace()).is_some() {}
            Mark::Blank
        }
        _ => {
            if let Some((numerator, denominator)) = vulgar(first) {
                Mark::Vulgar(numerator, denominator)
            } else if let Some(digit) = raised(first) {
                Mark::Raised(figures(digit, chars, raised))
            } else if let Some(digit) = lowered(first) {
                Mark::Lowered(figures(digit, chars, lowered))
            } else {
                Mark::Other
            }
        }
    }
}

/// The value of raised or lowered figures; of absurdly many, something too great for any use.
fn figures(
    first: u64,
    chars: &mut Peekable<CharIndices<'_>>,
    digit: fn(char) -> Option<u64>,
) -> u64 {
    let mut value = first;
    while let Some(next) = chars.peek().and_then(|&(_, c)| digit(c)) {
        chars.next();
        value = value.saturating_mul(10).saturating_add(next).min(999_999_999);
    }
    value
}

fn raised(c: char) -> Option<u64> {
    "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().zip(0..).find(|&(known, _)| known == c).map(|(_, value)| value)
}

fn lowered(c: char) -> Option<u64> {
    "₀₁₂₃₄₅₆₇₈₉".chars().zip(0..).find(|&(known, _)| known == c).map(|(_, value)| value)
}

fn vulgar(c: char) -> Option<(u64, u64)> {
    Some(match c {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

//! Numbers in words, as a telephone writes what it is told: `thirteen and seven eighths scant` becomes
//! `13 7/8 scant` before the grammar reads it.
//!
//! Only what has one meaning is taken. `twenty seven sixteenths` is 27/16 or 20 7/16, and is refused;
//! `twenty and seven sixteenths` and `thirteen seven sixteenths` have one meaning each. A word that is no part of a
//! number stays where it is, for the grammar to refuse.

use crate::quantity::{Fault, Mark, Reason, Scanner, Token};
use std::borrow::Cow;

const UNITS: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 8] =
    ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];
/// What an inch is parted into, each with its plural; those of two words stand in [`part`].
const PARTS: [(&str, &str, u64); 4] = [
    ("half", "halves", 2),
    ("quarter", "quarters", 4),
    ("eighth", "eighths", 8),
    ("sixteenth", "sixteenths", 16),
];
/// So little that it is no more than a lean.
const LITTLE: [&str; 6] = ["hair", "touch", "shade", "whisker", "bit", "little"];

/// The text with its number words in figures; the same where it has none.
pub(super) fn figures(text: &str) -> Result<Cow<'_, str>, Fault> {
    if !text.bytes().any(|byte| byte.is_ascii_alphabetic()) {
        return Ok(Cow::Borrowed(text));
    }
    let tokens = tokens(text);
    if !tokens.iter().any(|token| token.mark == Mark::Word && is_ours(token.text)) {
        return Ok(Cow::Borrowed(text));
    }
    let mut out = String::new();
    let mut reader = Reader { text, tokens: &tokens, next: 0 };
    let (mut after_number, mut end) = (false, 0);
    while let Some(token) = reader.peek(0) {
        let piece = reader.piece(after_number)?;
        let is_ours = piece.is_some();
        let (piece, is_number) = piece.unwrap_or_else(|| {
            reader.next += 1;
            (token.text.to_owned(), token.mark == Mark::Digits)
        });
        if piece.is_empty() {
            continue;
        }
        if !out.is_empty() && (is_ours || token.from > end) {
            out.push(' ');
        }
        out += &piece;
        after_number = is_number;
        end = if is_ours { 0 } else { token.to() };
    }
    Ok(Cow::Owned(out))
}

/// The tokens but blanks, and but dashes that join two words.
fn tokens(text: &str) -> Vec<Token<'_>> {
    let mut scanner = Scanner::new(text);
    let mut tokens: Vec<Token<'_>> = Vec::new();
    while let Some(token) = scanner.peek() {
        scanner.step();
        let after_word = tokens
            .last()
            .is_some_and(|before| before.mark == Mark::Word && before.to() == token.from);
        let joins = token.mark == Mark::Minus && after_word && scanner.mark() == Some(Mark::Word);
        if token.mark != Mark::Blank && !joins {
            tokens.push(token);
        }
    }
    tokens
}

fn is_dash(between: &str) -> bool {
    Scanner::new(between).mark() == Some(Mark::Minus)
}

fn is_ours(word: &str) -> bool {
    let is = |known: &str| word.eq_ignore_ascii_case(known);
    UNITS.iter().chain(&TENS).chain(&LITTLE).any(|known| is(known))
        || PARTS.iter().any(|(one, many, _)| is(one) || is(many))
        || ["and", "hundred"].into_iter().any(is)
}

struct Reader<'t> {
    text: &'t str,
    tokens: &'t [Token<'t>],
    next: usize,
}

/// A number that was read, and how many tokens it took.
struct Count {
    value: u64,
    taken: usize,
    /// Tens and ones with a blank between them, which in front of a part may be two numbers.
    loose: bool,
}

impl<'t> Reader<'t> {
    fn peek(&self, ahead: usize) -> Option<Token<'t>> {
        self.tokens.get(self.next + ahead).copied()
    }

    fn is(&self, ahead: usize, word: &str) -> bool {
        self.peek(ahead).is_some_and(|token| token.text.eq_ignore_ascii_case(word))
    }

    /// Whether a dash joins what stands so many ahead to what follows.
    fn dashed(&self, ahead: usize) -> bool {
        let pair = self.peek(ahead).zip(self.peek(ahead + 1));
        pair.is_some_and(|(one, next)| self.text.get(one.to()..next.from).is_some_and(is_dash))
    }

    fn place(&self, ahead: usize, words: &[&str]) -> Option<u64> {
        (0..).zip(words).find(|(_, word)| self.is(ahead, word)).map(|(place, _)| place)
    }

    /// What stands next in figures, and whether it is a number; nothing where it is to stay as it is.
    fn piece(&mut self, after_number: bool) -> Result<Option<(String, bool)>, Fault> {
        let an = usize::from(self.is(0, "a") || self.is(0, "an"));
        if self.place(an, &LITTLE).is_some() {
            let lean = match () {
                () if self.is(an + 1, "under") || self.is(an + 1, "shy") => "scant",
                () if self.is(an + 1, "over") => "full",
                () => return Ok(None),
            };
            self.next += an + 2;
            return Ok(Some((lean.to_owned(), false)));
        }
        if self.is(0, "and") {
            let drops = after_number && self.is_broken(1);
            let second = self.count(1).zip(self.peek(1)).filter(|_| after_number && !drops);
            if let Some((second, token)) = second {
                let before = self.next.checked_sub(1).and_then(|before| self.tokens.get(before));
                let first = before.map_or("", |before| before.text).to_owned();
                let second = second.value.to_string();
                return Err(Fault::new(token.from, Reason::TwoNumbers { first, second }));
            }
            self.next += usize::from(drops);
            return Ok(drops.then(|| (String::new(), false)));
        }
        if let Some((parts, taken)) = self.part(an) {
            self.next += an + taken;
            return Ok(Some((format!("1/{parts}"), true)));
        }
        let Some(count) = self.count(0) else { return Ok(None) };
        let Some(first) = self.peek(0) else { return Ok(None) };
        let part = self.part(count.taken);
        let fault = |first: u64, second: u64| {
            let [first, second] = [first, second].map(|number| number.to_string());
            let at = self.peek(count.taken.max(2) - 1).map_or(0, |token| token.from);
            Fault::new(at, Reason::TwoNumbers { first, second })
        };
        match part {
            Some((parts, taken)) => {
                if count.loose && !after_number {
                    return Err(fault(count.value / 10 * 10, count.value % 10));
                }
                self.next += count.taken + taken;
                Ok(Some((format!("{}/{parts}", count.value), true)))
            }
            None if first.mark == Mark::Digits => Ok(None),
            None => {
                let second = self.count(count.taken);
                let second =
                    second.filter(|second| self.part(count.taken + second.taken).is_none());
                if let Some(second) = second.filter(|_| !self.is_stroke(count.taken + 1)) {
                    return Err(fault(count.value, second.value));
                }
                self.next += count.taken;
                Ok(Some((count.value.to_string(), true)))
            }
        }
    }

    /// Whether a fraction stands so many ahead, in words or in figures.
    fn is_broken(&self, ahead: usize) -> bool {
        let an = usize::from(self.is(ahead, "a") || self.is(ahead, "an"));
        let counted =
            self.count(ahead).is_some_and(|count| self.part(ahead + count.taken).is_some());
        let vulgar = self.peek(ahead).is_some_and(|token| matches!(token.mark, Mark::Vulgar(..)));
        counted || vulgar || self.part(ahead + an).is_some() || self.is_stroke(ahead + 1)
    }

    fn is_stroke(&self, ahead: usize) -> bool {
        self.peek(ahead).is_some_and(|token| token.mark == Mark::Stroke)
    }

    /// The part of an inch that is named so many ahead.
    fn part(&self, ahead: usize) -> Option<(u64, usize)> {
        let either = |ahead, one: &str, many: &str| self.is(ahead, one) || self.is(ahead, many);
        let known = PARTS.iter().find(|(one, many, _)| either(ahead, one, many));
        if let Some((_, _, parts)) = known {
            return Some((*parts, 1));
        }
        let two = [("thirty", "second", "seconds", 32), ("sixty", "fourth", "fourths", 64)];
        let found = two
            .iter()
            .find(|(tens, one, many, _)| self.is(ahead, tens) && either(ahead + 1, one, many));
        found.map(|(.., parts)| (*parts, 2))
    }

    /// The whole number that stands so many ahead.
    fn count(&self, ahead: usize) -> Option<Count> {
        if self.part(ahead).is_some() {
            return None;
        }
        let token = self.peek(ahead)?;
        if token.mark == Mark::Digits {
            let glued = [self.is_stroke(ahead + 1), ahead > 0 && self.is_stroke(ahead - 1)];
            let value = token.text.parse().ok()?;
            return (!glued.contains(&true)).then_some(Count { value, taken: 1, loose: false });
        }
        let one = self.place(ahead, &UNITS);
        if let Some(hundreds) = one.filter(|_| self.is(ahead + 1, "hundred")) {
            let and = usize::from(self.is(ahead + 2, "and"));
            let rest = self.under_hundred(ahead + 2 + and);
            let rest = rest.filter(|rest| self.part(ahead + 2 + and + rest.taken).is_none());
            let (value, taken) = rest.map_or((0, 0), |rest| (rest.value, and + rest.taken));
            return Some(Count { value: hundreds * 100 + value, taken: 2 + taken, loose: false });
        }
        self.under_hundred(ahead)
    }

    fn under_hundred(&self, ahead: usize) -> Option<Count> {
        if let Some(value) = self.place(ahead, &UNITS) {
            return Some(Count { value, taken: 1, loose: false });
        }
        let value = (self.place(ahead, &TENS)? + 2) * 10;
        match self.place(ahead + 1, &UNITS).filter(|one| (1..10).contains(one)) {
            Some(one) => {
                let loose = !self.dashed(ahead);
                Some(Count { value: value + one, taken: 2, loose })
            }
            None => Some(Count { value, taken: 1, loose: false }),
        }
    }
}

//! The plain sentence under a verdict: how far off, how sure, what it costs, what would settle it.

use super::figures::{Format, text};
use super::report::Figure;
use super::taped::Taken;
use crate::measured::Measured;
use crate::quantity::{self, Length};
use crate::verdict::{Limits, Verdict, Word};

/// A probability as a person says it, never rounded to a certainty that is not there.
pub(crate) fn percent(p: f64) -> String {
    match p {
        p if p <= 0.0 => "0\u{a0}%".into(),
        p if p < 0.001 => "under 0.1\u{a0}%".into(),
        p if p < 0.01 => "under 1\u{a0}%".into(),
        p if p > 0.999 => "over 99.9\u{a0}%".into(),
        p if p > 0.99 => {
            format!("{}\u{a0}%", quantity::write_fixed(libm::floor(p * 1000.0) / 10.0, 1))
        }
        p => format!("{}\u{a0}%", quantity::write_fixed(libm::floor(p * 100.0), 0)),
    }
}

/// Whether two heights are one on paper: a deviation of no more than half a sixty-fourth of an inch.
fn on_the_figure(deviation: Length) -> bool {
    deviation.value.abs() < 0.000_199
}

fn deviation_of(format: Format, deviation: Option<Length>) -> String {
    let Some(deviation) = deviation else { return String::new() };
    if on_the_figure(deviation) {
        return "On the book figure".into();
    }
    let size = format.fine_text(deviation.abs());
    let side = if deviation.value < 0.0 { "under" } else { "over" };
    format!("{size} {side} the book figure")
}

/// The same in a line of a list: `1/16 in under`.
pub(crate) fn off_the_book(format: Format, deviation: Option<Length>) -> String {
    let whole = deviation_of(format, deviation);
    let off = deviation.filter(|deviation| !on_the_figure(*deviation));
    off.map_or_else(|| whole.to_ascii_lowercase(), |_| whole.replace(" the book figure", ""))
}

/// How many readings no verdict rests on.
pub(crate) fn unused(count: usize) -> String {
    let readings = if count == 1 { "reading" } else { "readings" };
    text!("{count} {readings} in doubt")
}

fn limit_of(format: Format, limits: Limits, book: Option<Length>) -> String {
    let write = |length: Length| format.fine_text(length);
    match (limits.least(), limits.most(), book) {
        (Some(least), Some(most), Some(book)) if (most + least - book * 2.0).value.abs() < 1e-9 => {
            format!("the limit is ± {}", write(most - book))
        }
        (Some(least), Some(most), _) => {
            format!("the limits are {} and {}", write(least), write(most))
        }
        (Some(least), None, _) => format!("the least is {}", write(least)),
        (None, Some(most), _) => format!("the most is {}", write(most)),
        (None, None, _) => String::new(),
    }
}

/// How far a coil is off its book figure, and what that costs.
#[derive(Clone, Copy)]
pub(crate) struct Off<'a> {
    pub(crate) deviation: Option<Length>,
    pub(crate) cost: Option<&'a Figure>,
}

impl Off<'_> {
    fn cost(&self) -> String {
        let Some(cost) = self.cost.filter(|cost| cost.si.abs() >= 1.0) else {
            return String::new();
        };
        let size = cost.text.trim_start_matches('−');
        let side = if cost.si < 0.0 { "less" } else { "more" };
        text!(" Pressed to any height, it carries {size} {side} than the book's coil.")
    }
}

/// Where the book gives no limit.
pub(crate) fn without_limit(format: Format, off: &Off<'_>, allowance: &str) -> String {
    let deviation = deviation_of(format, off.deviation);
    let opening = if deviation.is_empty() { String::new() } else { text!("{deviation}. ") };
    text!("{opening}The book has no limit here, so there is no verdict.{}{allowance}", off.cost())
}

/// Of a coil that is not sound.
pub(crate) fn scrap(flaw: &str) -> String {
    text!(
        "{}: scrap, whatever the tape says. Mark it so that it does not go back; it is not welded, heated or straightened.",
        capital(flaw)
    )
}

/// Where some reading has to be read again before anything is decided.
pub(crate) fn read_again(
    format: Format,
    verdict: Option<(Verdict, Limits)>,
    book: Option<Length>,
    off: &Off<'_>,
) -> String {
    match verdict {
        None => "No reading is left to go by: read it again, or confirm it.".to_owned(),
        Some((verdict, limits)) => {
            let is = match verdict.word {
                Word::Good => text!("good, {} sure", percent(verdict.p_in)),
                _ => "too close to call".to_owned(),
            };
            let opening = opening(format, limits, book, off);
            text!(
                "{opening}. By the readings that can be used it is {is}. There is no verdict before the rest is read again."
            )
        }
    }
}

/// How many readings a verdict rests on.
pub(crate) fn from_some(kept: usize, written: usize) -> String {
    const NUMBERS: [&str; 5] = ["none", "one", "two", "three", "four"];
    let say = |count: usize| {
        NUMBERS.get(count).map_or_else(|| count.to_string(), |word| (*word).to_owned())
    };
    text!(" This is from {} of {} readings.", say(kept), say(written))
}

/// How a coil stands by readings that differ more than its ends and the tape's marks explain.
pub(crate) fn stands(
    format: Format,
    kept: &[&Taken],
    measured: &Measured,
    place: Length,
) -> String {
    let widest = kept.iter().map(|taken| taken.said.half_width());
    let widest = widest.fold(Length::default(), |a, b| if b > a { b } else { a });
    let explained = (place + widest) * 2.0 * (1.0 + 1e-9);
    if measured.spread <= explained {
        return String::new();
    }
    let at = |place: usize| {
        let taken = kept.iter().find(|taken| taken.place == place)?;
        Some(taken.said.estimate())
    };
    let (Some(one), Some(two), Some(three), Some(four), 4) =
        (at(1), at(2), at(3), at(4), kept.len())
    else {
        return text!(
            " The places differ by {}: see that the coil stands flat and its ends are square, and read again.",
            format.fine_text(measured.spread)
        );
    };
    let rock = (one + three - two - four) / 2.0;
    let tilts = [(one - three, "1 and 3"), (two - four, "2 and 4")];
    let mut said = String::new();
    if rock.abs() > explained {
        let side = if rock.value < 0.0 { "under" } else { "over" };
        said += &text!(
            " It rocks: places 1 and 3 stand {} {side} places 2 and 4. See that plate and ends are flat, and read again.",
            format.fine_text(rock.abs())
        );
    }
    for (tilt, which) in tilts {
        if tilt.abs() > explained {
            said += &text!(
                " Its ends are out of square: places {which} differ by {}.",
                format.fine_text(tilt.abs())
            );
        }
    }
    said
}

/// What a sentence under a verdict is made of.
pub(crate) struct Said<'a> {
    pub(crate) verdict: &'a Verdict,
    pub(crate) limits: Limits,
    pub(crate) book: Option<Length>,
    pub(crate) off: Off<'a>,
}

impl Said<'_> {
    /// With remarks on the readings, and what would settle it.
    pub(crate) fn sentence(&self, format: Format, remarks: &str, settle: Option<&str>) -> String {
        let Self { verdict, limits, book, off } = self;
        let sure = |p: f64| text!("{} sure", capital(&percent(p)));
        let rest = match verdict.word {
            Word::Good => text!("{}.{remarks}", sure(verdict.p_in)),
            Word::Short => text!(
                "{}. The coil has taken a set, or is not the coil of the book: set it aside.{remarks}",
                sure(verdict.p_short)
            ),
            Word::Long => text!(
                "{}. It is not the coil of the book, or something lies under it: set it aside.{remarks}",
                sure(verdict.p_long)
            ),
            Word::TooClose => text!(
                "{} likely within the limits, {} likely short, {} likely long.{remarks} {}",
                percent(verdict.p_in),
                percent(verdict.p_short),
                percent(verdict.p_long),
                settle.unwrap_or_default()
            ),
        };
        text!("{}. {rest}{}", opening(format, *limits, *book, off), off.cost())
    }
}

fn opening(format: Format, limits: Limits, book: Option<Length>, off: &Off<'_>) -> String {
    let deviation = deviation_of(format, off.deviation);
    let limit = limit_of(format, limits, book);
    if deviation.is_empty() { capital(&limit) } else { text!("{deviation}; {limit}") }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        std::iter::once(first.to_ascii_uppercase()).chain(letters).collect()
    })
}

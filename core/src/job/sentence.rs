//! The plain sentence under a verdict: how far off, how sure, what it costs, what would settle it.

use super::figures::Pen;
use super::report::Figure;
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

/// Whether two heights are one on paper: a deviation below half a sixty-fourth of an inch.
fn on_the_figure(deviation: Length) -> bool {
    deviation.value.abs() < 0.000_198
}

fn deviation_of(pen: Pen, deviation: Option<Length>) -> String {
    let Some(deviation) = deviation else { return String::new() };
    if on_the_figure(deviation) {
        return "On the book figure".into();
    }
    let size = pen.fine_text(deviation.abs());
    let side = if deviation.value < 0.0 { "under" } else { "over" };
    format!("{size} {side} the book figure")
}

fn limit_of(pen: Pen, limits: Limits, book: Option<Length>) -> String {
    let write = |length: Length| pen.fine_text(length);
    match (limits.least(), limits.most(), book) {
        (Some(least), Some(most), Some(book)) if (most + least - book * 2.0).value.abs() < 1e-9 => {
            format!("the limit is {} either way", write(most - book))
        }
        (Some(least), Some(most), _) => {
            format!("the limits are {} and {}", write(least), write(most))
        }
        (Some(least), None, _) => format!("the least is {}", write(least)),
        (None, Some(most), _) => format!("the most is {}", write(most)),
        (None, None, _) => String::new(),
    }
}

fn cost_of(cost: Option<&Figure>) -> String {
    match cost {
        Some(cost) if cost.si.abs() >= 1.0 => {
            let size = cost.text.trim_start_matches('−');
            if cost.si < 0.0 {
                format!(
                    " It carries {size} less than the book's coil at any height where it carries."
                )
            } else {
                format!(
                    " It carries {size} more than the book's coil at any height where it carries."
                )
            }
        }
        _ => String::new(),
    }
}

/// Where the book gives no limit.
pub(crate) fn without_limit(
    pen: Pen,
    deviation: Option<Length>,
    cost: Option<&Figure>,
    allowance: &str,
) -> String {
    let off = deviation_of(pen, deviation);
    let opening = if off.is_empty() { String::new() } else { format!("{off}. ") };
    format!(
        "{opening}The book has no limit here, so there is no verdict.{}{allowance}",
        cost_of(cost)
    )
}

/// Where it does.
pub(crate) fn with_limits(
    pen: Pen,
    verdict: &Verdict,
    limits: Limits,
    book: Option<Length>,
    deviation: Option<Length>,
    cost: Option<&Figure>,
    settling: Option<Length>,
) -> String {
    let off = deviation_of(pen, deviation);
    let limit = limit_of(pen, limits, book);
    let opening = match (off.is_empty(), limit) {
        (true, limit) => capital(&limit),
        (false, limit) => format!("{off}; {limit}"),
    };
    let sure = |p: f64| format!("{} sure", capital(&percent(p)));
    let rest = match verdict.word {
        Word::Good => format!(" {}.", sure(verdict.p_in)),
        Word::Short => format!(
            " {}. The coil has taken a set, or is not the coil of the book: set it aside.",
            sure(verdict.p_short)
        ),
        Word::Long => format!(
            " {}. It is not the coil of the book, or something lies under it: set it aside.",
            sure(verdict.p_long)
        ),
        Word::TooClose => format!(" {}", unsettled(pen, verdict, settling)),
    };
    format!("{opening}.{rest}{}", cost_of(cost))
}

fn unsettled(pen: Pen, verdict: &Verdict, settling: Option<Length>) -> String {
    let odds = format!(
        "Within the limits with {}, short with {}, long with {}.",
        percent(verdict.p_in),
        percent(verdict.p_short),
        percent(verdict.p_long)
    );
    let cure = match (settling, verdict.would_settle) {
        (Some(step), _) => {
            let step = pen.fine_text(step);
            format!("If it still reads the same, a reading to {step} would settle it.")
        }
        (None, Some(doubt)) => format!(
            "A finer reading with this tape would not settle it; a doubt of {} or less would.",
            pen.rough(doubt)
        ),
        (None, None) => "It stands on the limit: no finer reading would settle it.".into(),
    };
    format!("{odds} {cure}")
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        std::iter::once(first.to_ascii_uppercase()).chain(letters).collect()
    })
}

//! Requirements, figures and verdicts as people say them, in the system of the job.

use crate::coil::Hand;
use crate::job::choices::ends_name;
use crate::job::figures::{Pen, text};
use crate::job::report::Met;
use crate::quantity::{self, Digits, Force, Length, Said, SpringRate, Stress};
use crate::replacement::{
    Amount, Decision, Figure, Judgement, Limits, Missing, Range, Requirement, Verdict, Word,
};

/// The stable word of a requirement, and its name.
pub(super) fn requirement(of: Requirement) -> (&'static str, &'static str) {
    match of {
        Requirement::Pocket => ("pocket", "Outside at solid"),
        Requirement::Post => ("post", "Inside"),
        Requirement::OuterGap => ("outer-gap", "Gap to the coil around it"),
        Requirement::InnerGap => ("inner-gap", "Gap to the coil within it"),
        Requirement::OuterHand => ("outer-hand", "Hand beside the coil around it"),
        Requirement::InnerHand => ("inner-hand", "Hand beside the coil within it"),
        Requirement::FreeHeight => ("free-height", "Free height"),
        Requirement::Rate => ("rate", "Rate"),
        Requirement::Load => ("load", "Load at work"),
        Requirement::SolidHeight => ("solid-height", "Solid height"),
        Requirement::StressAtWork => ("stress-at-work", "Stress at work"),
        Requirement::StressAtSolid => ("stress-at-solid", "Stress at solid"),
        Requirement::Reserve => ("reserve", "Way left to solid at work"),
        Requirement::Buckling => ("buckling", "Height at which it buckles"),
        Requirement::Hand => ("hand", "Hand"),
        Requirement::Ends => ("ends", "Ends"),
        Requirement::Fatigue => ("fatigue", "Factor of safety between its two loads"),
        Requirement::NestHeight => ("nest-height", "Height of the nest"),
        Requirement::Deviation => ("deviation", "Loads under the frame apart"),
    }
}

pub(super) fn overall(met: Met) -> &'static str {
    match met {
        Met::Throughout => "A true replacement",
        Met::AtNominal => "Only at nominal",
        Met::NotMet => "No replacement",
        Met::CannotTell => "Cannot be told",
    }
}

pub(super) fn met(of: &Verdict) -> (Met, &'static str) {
    match of {
        Verdict::MetThroughout => (Met::Throughout, "Met throughout"),
        Verdict::MetAtNominal => (Met::AtNominal, "Met at nominal only"),
        Verdict::NotMet => (Met::NotMet, "Not met"),
        Verdict::CannotTell { .. } => (Met::CannotTell, "Cannot be told"),
    }
}

/// A name within a sentence.
pub(super) fn within(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().into_iter().flat_map(char::to_lowercase);
    first.chain(letters).collect()
}

/// An amount with the digits that a comparison needs.
pub(super) fn amount(pen: Pen, of: Amount) -> Said {
    match of {
        Amount::Length(length) => pen.decimal(length),
        Amount::Load(load) => pen.say::<Force>(load),
        Amount::Rate(rate) => pen.say::<SpringRate>(rate),
        Amount::Stress(stress) => pen.say::<Stress>(stress),
        Amount::Number(number) => Said { digits: Digits::significant(number, 4), unit: "" },
    }
}

/// An amount of a requirement, where a number may be a part of something.
pub(super) fn of(pen: Pen, requirement: Requirement, of: Amount) -> Said {
    match (requirement, of) {
        (Requirement::Deviation, Amount::Number(part)) => {
            Said { digits: Digits::significant(part * 100.0, 3), unit: "%" }
        }
        _ => amount(pen, of),
    }
}

/// What is left to a limit: three digits do.
pub(super) fn margin(pen: Pen, requirement: Requirement, left: Amount) -> Said {
    match left {
        Amount::Length(length) => {
            let (number, unit) = quantity::shown::<Length>(length, pen.system);
            Said { digits: Digits::significant(number, 3), unit }
        }
        _ => of(pen, requirement, left),
    }
}

/// `26.9 lb/in (26.1 to 27.7)`, or the number alone where it has no tolerance.
pub(super) fn range(said: impl Fn(Amount) -> Said, of: &Range<Amount>) -> String {
    let nominal = said(of.nominal());
    let (least, most) = (said(of.least()).digits.to_string(), said(of.most()).digits.to_string());
    if least == most { nominal.to_string() } else { text!("{nominal} ({least} to {most})") }
}

/// `26 to 28 lb/in`, `26 lb/in or more`.
pub(super) fn limits(said: impl Fn(Amount) -> Said, of: &Limits<Amount>) -> String {
    match (of.least.map(&said), of.most.map(&said)) {
        (Some(least), Some(most)) => text!("{} to {most}", least.digits),
        (Some(least), None) => text!("{least} or more"),
        (None, Some(most)) => text!("{most} or less"),
        (None, None) => "any".to_owned(),
    }
}

pub(super) fn hand(of: Hand) -> &'static str {
    match of {
        Hand::Left => "Left",
        Hand::Right => "Right",
    }
}

pub(super) fn word(of: Word) -> &'static str {
    match of {
        Word::Hand(of) => hand(of),
        Word::Ends(ends) => ends_name(ends),
    }
}

/// All that some line lacks, each named once.
pub(super) fn wanting(judgement: &Judgement) -> String {
    let mut all: Vec<Missing> = Vec::new();
    for line in &judgement.lines {
        if let Verdict::CannotTell { missing, .. } = &line.verdict {
            all.extend(
                missing.iter().filter(|one| !all.contains(one)).copied().collect::<Vec<_>>(),
            );
        }
    }
    all.sort_unstable();
    all.dedup();
    list(&all)
}

/// `the bar and the hand of the candidate`, each in full.
pub(super) fn list(missing: &[Missing]) -> String {
    if missing.is_empty() {
        return "a frame that stands at every end of the tolerances".to_owned();
    }
    quantity::joined(missing.iter(), ", ")
}

/// What would decide a line that cannot be told.
pub(super) fn decision(pen: Pen, of: &Decision) -> String {
    match of {
        Decision::Within { missing, spans } if spans.is_empty() => {
            text!("Whatever it were, {missing} would not do.")
        }
        Decision::Within { missing, spans } => {
            let said = |of: Amount| amount(pen, of);
            let outside = if missing.figure == Figure::Diameter { ", outside," } else { "" };
            if spans.iter().all(|span| span.least.is_none() && span.most.is_none()) {
                return text!("Whatever it were, {missing} would do.");
            }
            let spans = quantity::joined(spans.iter().map(|span| limits(said, span)), ", or ");
            text!("It would be met if {missing}{outside} were {spans}.")
        }
        Decision::Word { missing, word: would_be } => {
            text!("It would be met if {missing} were: {}.", within(word(*would_be)))
        }
    }
}

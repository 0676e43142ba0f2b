//! Requirements, figures and verdicts as people say them, in the system of the job.

use crate::coil::Hand;
use crate::drawing::{Contradiction, Figure, Range};
use crate::job::choices::ends_name;
use crate::job::figures::{Format, text};
use crate::job::report::Met;
use crate::order::InOrder;
use crate::quantity::{self, Digits, Force, Length, Said, SpringRate, Stress};
use crate::replacement::{
    AllowedRange, Amount, Compliance, Decision, Line, Missing, OrderDetail, Overall, Requirement,
    Whose, Word,
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
        Requirement::LoadAt(0) => ("load-at-first", "Load at the first stated height"),
        Requirement::LoadAt(1) => ("load-at-second", "Load at the second stated height"),
        Requirement::LoadAt(_) => ("load-at-further", "Load at a further stated height"),
        Requirement::SolidHeight => ("solid-height", "Solid height"),
        Requirement::StressAtWork => ("stress-at-work", "Stress at work"),
        Requirement::StressAtSolid => ("stress-at-solid", "Stress at solid"),
        Requirement::Reserve => ("reserve", "Left before solid at work"),
        Requirement::Buckling => ("buckling", "Height at which it buckles"),
        Requirement::Hand => ("hand", "Hand"),
        Requirement::Ends => ("ends", "Ends"),
        Requirement::Fatigue => ("fatigue", "Factor of safety between its two loads"),
        Requirement::NestHeight => ("nest-height", "Height of the nest"),
        Requirement::Deviation => ("deviation", "Loads under the frame apart"),
    }
}

/// The requirement of a code.
pub(super) fn coded(code: &str) -> Option<Requirement> {
    Requirement::ALL.into_iter().find(|of| requirement(*of).0 == code)
}

/// Every code.
pub(super) fn codes() -> impl Iterator<Item = &'static str> {
    Requirement::ALL.into_iter().map(|of| requirement(of).0)
}

/// The field of a detail, its name, and what is asked where nobody says.
pub(super) const fn detail(of: OrderDetail) -> (&'static str, &'static str, &'static str) {
    match of {
        OrderDetail::PartNumber => {
            ("part_number", "Part number", "Under which part number is it ordered?")
        }
        OrderDetail::Drawing => ("drawing", "Drawing", "Which drawing holds?"),
        OrderDetail::Revision => ("revision", "Revision", "Which revision of the drawing holds?"),
        OrderDetail::Grade => ("grade", "Grade of tolerance", "Which grade of tolerance holds?"),
        OrderDetail::Adjustable => (
            "adjustable",
            "Left to the maker",
            "Which size may the maker adjust, so that the others come out?",
        ),
        OrderDetail::Peening => ("peening", "Shot peening", "Is it to be shot peened?"),
        OrderDetail::SetRemoval => {
            ("set_removal", "Set removal", "Is its set to be taken out when it is made?")
        }
        OrderDetail::Finish => ("finish", "Finish", "How is it to be finished?"),
        OrderDetail::Hardness => ("hardness", "Hardness", "How hard is it to be?"),
        OrderDetail::Decarburised => {
            ("decarburised", "Decarburised depth", "How deep may the carbon be lost?")
        }
        OrderDetail::CrackTest => {
            ("crack_test", "Crack test", "How is it to be looked over for cracks?")
        }
        OrderDetail::Inspection => ("inspection", "Inspection", "How is it to be inspected?"),
        OrderDetail::Test => ("test", "Test", "How is it to be tested?"),
        OrderDetail::Certificate => {
            ("certificate", "Certificate", "What paper is to come with it?")
        }
        OrderDetail::Marking => ("marking", "Marking", "How is it to be marked?"),
        OrderDetail::Packaging => {
            ("packaging", "Packaging and loading", "How is it to be packed and loaded?")
        }
        OrderDetail::EndUse => (
            "end_use",
            "End use",
            "What is it used for, how often does it move, and how hot or cold does it get?",
        ),
    }
}

/// The detail of a field.
pub(super) fn detail_coded(field: &str) -> Option<OrderDetail> {
    OrderDetail::ALL.into_iter().find(|of| detail(*of).0 == field)
}

pub(super) fn overall(met: Met) -> &'static str {
    match met {
        Met::Throughout => "A true replacement",
        Met::AtNominal => "Only at nominal",
        Met::AsDrawn => "As drawn; tolerances not given",
        Met::NotMet => "No replacement",
        Met::CannotTell => "Cannot be said",
    }
}

pub(super) fn whole(of: Overall) -> Met {
    match of {
        Overall::True => Met::Throughout,
        Overall::AtNominal => Met::AtNominal,
        Overall::AsDrawn => Met::AsDrawn,
        Overall::No => Met::NotMet,
        Overall::CannotTell => Met::CannotTell,
    }
}

pub(super) fn met(of: &Compliance) -> (Met, &'static str) {
    match of {
        Compliance::MetThroughout => (Met::Throughout, "Met throughout"),
        Compliance::MetAtNominal => (Met::AtNominal, "Met at nominal only"),
        Compliance::MetAsDrawn { .. } => (Met::AsDrawn, "Met as drawn"),
        Compliance::NotMet => (Met::NotMet, "Not met"),
        Compliance::CannotTell { .. } => (Met::CannotTell, "Cannot be said"),
    }
}

/// A name within a sentence.
pub(super) fn within(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().into_iter().flat_map(char::to_lowercase);
    first.chain(letters).collect()
}

/// An amount with the digits that a comparison needs.
pub(super) fn amount(format: Format, of: Amount) -> Said {
    match of {
        Amount::Length(length) => format.decimal(length),
        Amount::Load(load) => format.say::<Force>(load),
        Amount::Rate(rate) => format.say::<SpringRate>(rate),
        Amount::Stress(stress) => format.say::<Stress>(stress),
        Amount::Number(number) => Said { digits: Digits::significant(number, 4), unit: "" },
    }
}

/// An amount of a requirement, where a number may be a part of something.
pub(super) fn of(format: Format, requirement: Requirement, of: Amount) -> Said {
    match (requirement, of) {
        (Requirement::Deviation, Amount::Number(part)) => {
            Said { digits: Digits::significant(part * 100.0, 3), unit: "%" }
        }
        _ => amount(format, of),
    }
}

/// What is left to a limit: three digits do.
pub(super) fn margin(format: Format, requirement: Requirement, left: Amount) -> Said {
    match left {
        Amount::Length(length) => {
            let (number, unit) = quantity::shown::<Length>(length, format.system);
            Said { digits: Digits::significant(number, 3), unit }
        }
        _ => of(format, requirement, left),
    }
}

/// `26.9 lb/in (26.1 to 27.7)`, or the number alone where it has no tolerance.
pub(super) fn range(said: impl Fn(Amount) -> Said, of: &Range<Amount>) -> String {
    let nominal = said(of.nominal());
    let least = said(of.least()).digits.down().to_string();
    let most = said(of.most()).digits.up().to_string();
    if of.least().si() < of.most().si() {
        text!("{nominal} ({least} to {most})")
    } else {
        nominal.to_string()
    }
}

/// `26 to 28 lb/in`, `26 lb/in or more`.
pub(super) fn limits(said: impl Fn(Amount) -> Said, of: &AllowedRange<Amount>) -> String {
    let least = of.least.map(|least| {
        let said = said(least);
        Said { digits: said.digits.up(), ..said }
    });
    let most = of.most.map(|most| {
        let said = said(most);
        Said { digits: said.digits.down(), ..said }
    });
    match (least, most) {
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
pub(super) fn wanting(lines: &[Line]) -> String {
    let mut all: Vec<Missing> = Vec::new();
    for line in lines {
        if let Compliance::CannotTell { missing, .. } = &line.verdict {
            all.extend(
                missing.iter().filter(|one| !all.contains(one)).copied().collect::<Vec<_>>(),
            );
        }
    }
    all.put_in_order(Ord::cmp);
    all.dedup();
    list(&all)
}

/// The figures whose tolerances are not given, of all lines.
pub(super) fn unstated(lines: &[Line]) -> String {
    let mut all: Vec<Missing> = lines
        .iter()
        .filter(|line| line.waived.is_none())
        .filter_map(|line| match &line.verdict {
            Compliance::MetAsDrawn { unstated } => Some(unstated.iter().copied()),
            _ => None,
        })
        .flatten()
        .collect();
    all.put_in_order(Ord::cmp);
    all.dedup();
    list(&all)
}

/// `the bar and the hand of the candidate`, each in full.
pub(super) fn list(missing: &[Missing]) -> String {
    if missing.is_empty() {
        return "a frame that stands at every end of the tolerances".to_owned();
    }
    let mut owners: Vec<Whose> = missing.iter().map(|one| one.whose).collect();
    owners.dedup();
    let of = owners.into_iter().map(|whose| {
        let his = missing.iter().filter(|one| one.whose == whose).map(|one| one.figure);
        text!("{} of {whose}", quantity::joined(his, ", "))
    });
    quantity::joined(of, "; ")
}

/// What would decide a line that cannot be told.
pub(super) fn decision(format: Format, of: &Decision) -> String {
    match of {
        Decision::Within { missing, spans } if spans.is_empty() => {
            text!("No value of {missing} would do, even as drawn.")
        }
        Decision::Within { missing, spans } => {
            let said = |of: Amount| amount(format, of);
            let outside = if missing.figure == Figure::Diameter { ", outside," } else { "" };
            if spans.iter().all(|span| span.least.is_none() && span.most.is_none()) {
                return text!("Any value of {missing} would do.");
            }
            let spans = quantity::joined(spans.iter().map(|span| limits(said, span)), ", or ");
            text!("As drawn it would be met if {missing}{outside} were {spans}.")
        }
        Decision::Word { missing, word: would_be } => {
            text!("It would be met if {missing} were: {}.", within(word(*would_be)))
        }
    }
}

/// A text with a capital at its front.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().into_iter().flat_map(char::to_uppercase);
    first.chain(letters).collect()
}

/// The figure that is stated.
pub(super) fn stated(format: Format, of: &Contradiction) -> String {
    match of {
        Contradiction::Rate { stated, .. } => format.say::<SpringRate>(*stated).to_string(),
        Contradiction::SolidHeight { stated, .. } => format.decimal(*stated).to_string(),
        Contradiction::Load { stated, .. } => format.say::<Force>(*stated).to_string(),
    }
}

/// What is stated and the sizes cannot give.
pub(super) fn contradiction(format: Format, of: &Contradiction) -> String {
    let said = |of: Amount| amount(format, of);
    match of {
        Contradiction::Rate { stated, drawn } => text!(
            "the stated rate of {} does not go with the sizes, which give {}",
            format.say::<SpringRate>(*stated),
            range(said, &drawn.map(Amount::Rate))
        ),
        Contradiction::SolidHeight { stated, drawn } => text!(
            "the stated solid height of {} does not go with the sizes, which give {}",
            format.decimal(*stated),
            range(said, &drawn.map(Amount::Length))
        ),
        Contradiction::Load { height, stated, drawn } => text!(
            "the stated load of {} at {} does not go with rate and free height, which give {}",
            format.say::<Force>(*stated),
            format.decimal(*height),
            range(said, &drawn.map(Amount::Load))
        ),
    }
}

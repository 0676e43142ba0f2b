//! One requirement: what is asked and offered, the verdict, why, and how the figure came about.

use super::{waived, words};
use crate::coil::fatigue::Criterion;
use crate::coil::{buckling, fatigue, growth, rate, set, solid};
use crate::drawing::{Drawing, Endured, Figure, Nearer, Point, Range, SOURCE};
use crate::formula::{Formula, Put};
use crate::frame::{self, Settled, SettledSupport};
use crate::job::context::Context;
use crate::job::drawing::GEOMETRY;
use crate::job::figures::{Format, sentence, text};
use crate::job::formulas::{
    ABOVE_MEAN, BELOW_MEAN, GAP_AT_SOLID, INSIDE, Letter, OUTSIDE_AT_SOLID, TO_SOLID, letter,
};
use crate::job::report::LineReport;
use crate::material::Against;
use crate::quantity::{self, Force, Length, Modulus, Pressure, Stress};
use crate::replacement::{
    Amount, Case, Compliance, Line, Margin, Missing, Offered, Requirement, Seated, Wanted,
};
use std::fmt::Display;

const UNKNOWN: &str = "not known";

/// A line of a candidate by its place, or of a nest, and for whom it would be waived.
pub(super) type Of = (Option<usize>, &'static str);

/// A case, and what of its nest and frame its figures take besides.
#[derive(Clone, Copy)]
pub(super) struct Within<'c> {
    pub(super) case: &'c Case,
    /// The frame with the candidate.
    pub(super) after: Option<&'c Settled>,
    /// The height at which the other coils of a nest that is replaced stop this one.
    pub(super) stop: Option<Length>,
}

impl<'c> Within<'c> {
    pub(super) fn alone(case: &'c Case) -> Self {
        Self { case, after: None, stop: None }
    }

    /// As one of the coils of a nest that is replaced.
    pub(super) fn nest(case: &'c Case) -> Self {
        let nest = case.nest.iter();
        let others = nest.flat_map(|nest| {
            let stop =
                |of: &Seated| Some(Point::nominal(&of.spring).least_solid().ok()? + of.raise);
            let stops = nest.outer.iter().chain(&nest.inner).filter_map(stop);
            stops.map(|stop| stop - nest.raise)
        });
        Self { stop: others.reduce(Length::max), ..Self::alone(case) }
    }
}

pub(super) fn report(
    context: &mut Context<'_>,
    within: Within<'_>,
    line: &Line,
    (candidate, waived_for): Of,
) -> LineReport {
    let (format, case) = (context.format, within.case);
    let requirement = line.requirement;
    let (code, name) = words::requirement(requirement);
    let said = |amount| words::of(format, requirement, amount);
    let asked = match &line.wanted {
        Some(Wanted::Within(limits)) => words::limits(said, limits),
        Some(Wanted::Word(word)) => words::word(*word).to_owned(),
        None => UNKNOWN.to_owned(),
    };
    let offered = match &line.offered {
        Some(Offered::Range(range)) if never(requirement, range) => "never".to_owned(),
        Some(Offered::Range(range)) => words::range(said, range),
        Some(Offered::Word(word)) => words::word(*word).to_owned(),
        None => UNKNOWN.to_owned(),
    };
    let (met, title) = words::met(&line.verdict);
    let range = match &line.offered {
        Some(Offered::Range(range)) => Some(range),
        _ => None,
    };
    let working = range.and_then(|range| {
        let working = Working::of(format, within, requirement, range)?;
        Some(working.file(context, range, &offered))
    });
    let offered_si =
        range.filter(|range| !never(requirement, range)).map(|range| range.nominal().si());
    let why = text!("{}{}", why(format, case, line), both_stresses(format, case, line));
    let name = match stressed(case, requirement) {
        Some(against) => text!("{name}, {}", set::meant(against).name()),
        None => name.to_owned(),
    };
    let waived = line.waived.clone();
    let waived_for = waived.is_some().then_some(waived_for);
    LineReport {
        code: code.into(),
        name,
        asked,
        offered,
        offered_si,
        met,
        title: title.into(),
        why,
        candidate,
        waived,
        waived_for: waived_for.map(Into::into),
        working,
    }
}

/// A line of a whole nest, whose figure is put together from those of its coils.
pub(super) fn of_nest(
    context: &mut Context<'_>,
    case: &Case,
    line: &Line,
    working: Option<(Put, String)>,
) -> LineReport {
    let bare = Line { offered: None, ..line.clone() };
    let format = context.format;
    let report = report(context, Within::alone(case), &bare, (None, waived::FOR_NEST));
    let said = |amount| words::of(format, line.requirement, amount);
    let Some(Offered::Range(range)) = &line.offered else { return report };
    let offered = words::range(said, range);
    let working = working.map(|(put, source)| context.ledger.file(put, offered.clone(), source));
    LineReport { offered, working, offered_si: Some(range.nominal().si()), ..report }
}

/// With which factor the stress of a line is meant.
fn stressed(case: &Case, requirement: Requirement) -> Option<Against> {
    let given = match requirement {
        Requirement::StressAtWork => case.asked.stress_at_work,
        Requirement::StressAtSolid => case.asked.stress_at_solid,
        _ => return None,
    };
    Some(case.stress_against(given))
}

/// A stress with and without the factor for the inside of the coil, so that neither is taken for the
/// other.
fn both_stresses(format: Format, case: &Case, line: &Line) -> String {
    let Some(against) = stressed(case, line.requirement) else { return String::new() };
    let of = |against| {
        let candidate = &case.candidate;
        let stress = match line.requirement {
            Requirement::StressAtWork => candidate.stress_at(case.asked.working?, against),
            _ => candidate.stress_at_solid(against),
        };
        Some(text!(
            "{} {}",
            format.say::<Stress>(stress.ok()?.nominal()),
            set::meant(against).name()
        ))
    };
    let others = [Against::Plain, Against::Wahl].into_iter().filter(|other| *other != against);
    let others: Vec<String> = others.filter_map(of).collect();
    if others.is_empty() {
        String::new()
    } else {
        text!(" The same stress: {}.", quantity::joined(others.iter(), ", "))
    }
}

/// Whether a coil buckles at no height: the height at which it does is then zero.
fn never(requirement: Requirement, range: &Range<Amount>) -> bool {
    requirement == Requirement::Buckling && range.most().si() <= 0.0
}

/// The margin in words, or what is missing; and whose limit it is.
fn why(format: Format, case: &Case, line: &Line) -> String {
    let whose = match (line.wanted, line.source) {
        (Some(Wanted::Within(_)), Some(source)) => match line.requirement {
            Requirement::FreeHeight
            | Requirement::Rate
            | Requirement::Load
            | Requirement::LoadAt(_) => {
                text!(" The limits, about the original's own figure: {}.", source.cited())
            }
            _ => text!(" The limit: {}.", source.cited()),
        },
        (Some(Wanted::Within(_)), None) => " The limit is as it was given.".to_owned(),
        _ => String::new(),
    };
    if let Some(Offered::Range(range)) = &line.offered
        && never(line.requirement, range)
    {
        return text!("It does not buckle before it is solid.{whose}");
    }
    match (&line.verdict, line.margin) {
        (Compliance::CannotTell { missing }, _) => {
            let lacking = sentence(&text!("not known: {}", words::list(missing)));
            let decided =
                case.decision(line).map_or_else(String::new, |by| words::decision(format, &by));
            let joint = if decided.is_empty() { "" } else { " " };
            text!("{lacking}{joint}{decided}{whose}")
        }
        (Compliance::MetAsDrawn { unstated }, margin) => {
            let spare = margin.map_or_else(String::new, |margin| {
                let size = words::margin(format, line.requirement, margin.nominal);
                text!("As drawn it has {size} to spare. ")
            });
            text!("{spare}{}{whose}", not_given(unstated))
        }
        (verdict, Some(margin)) => {
            text!("{}{whose}", by_margin(format, line.requirement, verdict, margin))
        }
        (Compliance::NotMet, None) => "It is not what is asked.".to_owned(),
        (_, None) => "As asked.".to_owned(),
    }
}

/// What would have to be known for more than that it is met as drawn.
fn not_given(unstated: &[Missing]) -> String {
    let is_steel = |one: &&Missing| one.figure == Figure::Steel;
    let steels: Vec<Missing> = unstated.iter().filter(is_steel).copied().collect();
    let sizes: Vec<Missing> = unstated.iter().filter(|one| !is_steel(one)).copied().collect();
    let mut said = Vec::new();
    if !sizes.is_empty() {
        said.push(text!("No tolerance is given: {}.", words::list(&sizes)));
    }
    if !steels.is_empty() {
        said.push(text!(
            "It holds if the steel is no weaker than the original's; not known: {}.",
            words::list(&steels)
        ));
    }
    said.join(" ")
}

fn by_margin(
    format: Format,
    requirement: Requirement,
    verdict: &Compliance,
    margin: Margin,
) -> String {
    let size = |amount: Amount| {
        let si = amount.si().abs();
        words::margin(format, requirement, amount.with(si)).to_string()
    };
    let (nominal, worst) = (size(margin.nominal), size(margin.worst));
    let exact = margin.nominal == margin.worst;
    match verdict {
        Compliance::MetThroughout if exact => text!("Met with {nominal} to spare."),
        Compliance::MetThroughout => {
            text!("Met with {nominal} to spare as drawn, {worst} at the worst of its tolerances.")
        }
        Compliance::MetAtNominal => text!(
            "As drawn it has {nominal} to spare, but at the worst of its tolerances it is {worst} past the limit."
        ),
        _ if exact => text!("It is {nominal} past the limit."),
        _ => text!(
            "It is {nominal} past the limit as drawn, {worst} at the worst of its tolerances."
        ),
    }
}

/// A letter and its number, with its range where it has one.
pub(super) type Input = (&'static str, String);

/// How a figure of the candidate came about: the formula, what is put in, and who says so.
struct Working {
    formula: Formula,
    inputs: Vec<Input>,
    source: String,
    /// What stands in place of what is offered.
    result: Option<String>,
}

impl Working {
    fn of(
        format: Format,
        Within { case, after, stop }: Within<'_>,
        requirement: Requirement,
        range: &Range<Amount>,
    ) -> Option<Self> {
        let of = &case.candidate;
        let (formula, own, source) = match requirement {
            Requirement::Pocket => (OUTSIDE_AT_SOLID, Vec::new(), growth_source()),
            Requirement::Post => (INSIDE, Vec::new(), GEOMETRY.to_owned()),
            Requirement::OuterGap | Requirement::InnerGap => {
                let nest = case.nest.as_ref()?;
                let (outer, inner) = if requirement == Requirement::OuterGap {
                    (&nest.outer.last()?.spring, of)
                } else {
                    (of, &nest.inner.first()?.spring)
                };
                let letters = [("Di", outer), ("De", inner), ("ΔD", inner)];
                let found = letters.map(|(sign, of)| Some((sign, value(format, of, sign)?)));
                (GAP_AT_SOLID, found.into_iter().flatten().collect(), growth_source())
            }
            Requirement::FreeHeight => {
                (letter!("L0").0, Vec::new(), "as its drawing has it".to_owned())
            }
            Requirement::Rate if of.stated_rate().is_some() => given(letter!("k").0),
            Requirement::Rate => (rate::FORMULA, Vec::new(), rate::SOURCE.to_string()),
            Requirement::Load => load(format, of, case.asked.working?, range),
            Requirement::LoadAt(place) => {
                let at = case.original.loads.get(usize::from(place))?;
                load(format, of, at.height, range)
            }
            Requirement::SolidHeight => solid_rule(of)?,
            Requirement::Reserve => {
                (TO_SOLID, vec![at(format, case.asked.working?)], solid_rule(of)?.2)
            }
            Requirement::StressAtWork | Requirement::StressAtSolid => {
                let height = if requirement == Requirement::StressAtWork {
                    case.asked.working?
                } else {
                    let own = Point::nominal(of).least_solid().ok()?;
                    stop.map_or(own, |stop| own.max(stop))
                };
                let factor = set::meant(stressed(case, requirement)?);
                let times = factor.at(of.nominal_coil()?.index());
                let inputs =
                    vec![at(format, height), (factor.sign(), quantity::write_number(times, 5))];
                if range.nominal().si() > 0.0 {
                    (factor.formula_at_height(), inputs, factor.source().to_string())
                } else {
                    not_pressed(letter!("τ"), format.say::<Stress>(Pressure::default()))
                }
            }
            Requirement::Buckling => return buckling(format, case, range),
            Requirement::Fatigue => fatigue(format, case)?,
            Requirement::Deviation => furthest(format, after?),
            Requirement::NestHeight
            | Requirement::OuterHand
            | Requirement::InnerHand
            | Requirement::Hand
            | Requirement::Ends => return None,
        };
        let known: Vec<&str> = own.iter().map(|(sign, _)| *sign).collect();
        let others = formula.letters().filter(|sign| !known.contains(sign));
        let others = others.filter_map(|sign| Some((sign, value(format, of, sign)?)));
        let inputs = others.chain(own.iter().cloned()).collect();
        Some(Self { formula, inputs, source, result: None })
    }

    fn file(self, context: &mut Context<'_>, range: &Range<Amount>, offered: &str) -> String {
        let Self { formula, inputs, source, result } = self;
        let wide = range.least().si() < range.most().si();
        let source = if wide { text!("{source}; the range: {SOURCE}") } else { source };
        let result = result.unwrap_or_else(|| offered.to_owned());
        context.ledger.file(put(formula, &inputs), result, source)
    }
}

/// The formula with its numbers, each letter with its range.
pub(super) fn put(formula: Formula, inputs: &[Input]) -> Put {
    let mut put = formula.put(&[]);
    for (sign, of) in inputs {
        put.add_ranged(sign, of, nominal(of).len());
    }
    put
}

/// A number without the range behind it.
pub(super) fn nominal(of: &str) -> &str {
    of.split(" (").next().unwrap_or(of)
}

type Found = (Formula, Vec<Input>, String);

/// The number of a letter that a drawing has, with its range.
pub(super) fn value(format: Format, of: &Drawing, sign: &str) -> Option<String> {
    let said = |range: Range<Amount>| words::range(|amount| words::amount(format, amount), &range);
    let length = |range: Result<Range<Length>, _>| Some(said(range.ok()?.map(Amount::Length)));
    match sign {
        "d" => length(Ok(of.bar?.range(Figure::Bar))),
        "D" => length(of.mean()),
        "De" => length(of.outside()),
        "Di" => length(of.inside()),
        "L0" => length(of.free()),
        "Lc" => length(of.solid()),
        "ΔD" => Some(format.decimal(Point::nominal(of).growth().ok()?).to_string()),
        "nt" => Some(said(of.total_turns?.range(Figure::TotalTurns).map(Amount::Number))),
        "n" => Some(said(of.active_turns().ok()?.map(Amount::Number))),
        "k" => Some(said(of.rate().ok()?.map(Amount::Rate))),
        "G" => Some(format.say::<Modulus>(of.shear()?.nominal()).to_string()),
        _ => None,
    }
}

fn at(format: Format, height: Length) -> Input {
    ("L", format.decimal(height).to_string())
}

fn given(formula: Formula) -> Found {
    (formula, Vec::new(), "as given".to_owned())
}

/// What a coil has that stands free.
fn not_pressed((formula, sign): Letter, nothing: impl Display) -> Found {
    (formula, vec![(sign, nothing.to_string())], "the coil is not pressed there".to_owned())
}

/// The load at a height: as stated there, else by rate and free height.
fn load(format: Format, of: &Drawing, height: Length, range: &Range<Amount>) -> Found {
    let (formula, sign) = letter!("F");
    if of.loads.iter().any(|stated| (stated.height - height).abs().value < 1e-9) {
        let stated = words::range(|amount| words::amount(format, amount), range);
        (formula, vec![(sign, stated)], "as given".to_owned())
    } else if range.nominal().si() > 0.0 {
        (rate::LOAD, vec![at(format, height)], rate::SOURCE.to_string())
    } else {
        not_pressed(letter!("F"), format.say::<Force>(Force::default()))
    }
}

fn growth_source() -> String {
    text!("{}; {}", growth::HELD_SOURCE, growth::FREE_ROD_SOURCE)
}

fn solid_rule(of: &Drawing) -> Option<Found> {
    if of.solid.is_some() {
        return Some(given(letter!("Lc").0));
    }
    let (_, stop) = solid::stops(of.bar?.nominal(), Point::nominal(of).turns().ok()?, of.ends?);
    Some((stop.rule.formula, Vec::new(), stop.rule.source.to_string()))
}

/// The height at which it buckles, or the free height up to which it never does.
fn buckling(format: Format, case: &Case, range: &Range<Amount>) -> Option<Working> {
    let of = &case.candidate;
    let (coil, poisson) = (of.nominal_coil()?, of.poisson().ok()?);
    let seating = case.asked.seating;
    let inputs = vec![
        ("L0", value(format, of, "L0")?),
        ("D", value(format, of, "D")?),
        ("ν", quantity::write_number(seating.coefficient(), 5)),
        ("γ", quantity::write_number(buckling::shear_over_youngs(poisson), 5)),
    ];
    let (formula, result) = if never(Requirement::Buckling, range) {
        let stable = buckling::stable_free_height(coil, seating, poisson);
        (buckling::STABLE, Some(text!("{}; below that it never does", format.decimal(stable))))
    } else {
        (buckling::HEIGHT, None)
    };
    Some(Working { formula, inputs, source: buckling::SOURCE.to_string(), result })
}

/// The lesser of Goodman's factor of safety and that against yielding.
fn fatigue(format: Format, case: &Case) -> Option<Found> {
    let Endured { cycle, by } = case.endured()?;
    let stress = |sign, of| (sign, format.exact::<Stress>(of).to_string());
    let mut inputs = vec![stress("τa", cycle.amplitude()), stress("τm", cycle.mean())];
    let formula = match by {
        Nearer::Goodman { reversed, ultimate, .. } => {
            inputs.extend([stress("Sse", reversed), stress("Ssu", ultimate)]);
            Criterion::Goodman.formula()
        }
        Nearer::Yield(strength) => {
            inputs.push(stress("Ssy", strength));
            fatigue::YIELD
        }
    };
    Some((formula, inputs, text!("{}, which is nearer here than the other", fatigue::SOURCE)))
}

/// The nest under the frame whose load is furthest from the mean.
pub(super) fn furthest(format: Format, settled: &Settled) -> Found {
    let off = |at: &SettledSupport| (at.share - 1.0).abs();
    let most = settled.supports.iter().max_by(|one, other| off(one).total_cmp(&off(other)));
    let load = most.map_or(settled.mean, |at| at.load);
    let formula = if load < settled.mean { BELOW_MEAN } else { ABOVE_MEAN };
    let force = |sign, of| (sign, format.exact::<Force>(of).to_string());
    let inputs = vec![force("F", load), force("Fm", settled.mean)];
    (formula, inputs, text!("of the nest furthest from the mean; {}", frame::SOURCE))
}

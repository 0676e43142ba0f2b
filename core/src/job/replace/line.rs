//! One requirement: what is asked and offered, the verdict, why, and how the figure came about.

use super::{waived, words};
use crate::coil::Across;
use crate::coil::ends::Ends;
use crate::coil::{buckling, fatigue, growth, rate, set, solid, stress};
use crate::drawing::{Drawing, Figure, Given, Range, SOURCE};
use crate::frame;
use crate::job::desk::Desk;
use crate::job::drawing::GEOMETRY;
use crate::job::figures::{Pen, sentence, text};
use crate::job::report::LineReport;
use crate::material::Against;
use crate::nest;
use crate::quantity::{self, Force, Length, Modulus, Stress};
use crate::replacement::{
    Amount, Case, Line, Margin, Missing, Offered, Requirement, Verdict, Wanted,
};

const UNKNOWN: &str = "not known";

/// A line of a candidate by its place, or of a nest, and for whom it would be waived.
pub(super) type Of = (Option<usize>, &'static str);

pub(super) fn report(
    desk: &mut Desk<'_>,
    case: &Case,
    line: &Line,
    (candidate, waived_for): Of,
) -> LineReport {
    let pen = desk.pen;
    let requirement = line.requirement;
    let (code, name) = words::requirement(requirement);
    let said = |amount| words::of(pen, requirement, amount);
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
    let working = match &line.offered {
        Some(Offered::Range(range)) => Some(file(desk, case, line, range, offered.clone())),
        _ => None,
    };
    let why = text!("{}{}", why(pen, case, line), both_stresses(pen, case, line));
    let name = match stressed(case, requirement) {
        Some(against) => text!("{name}, {}", set::meant(against).name()),
        None => name.to_owned(),
    };
    let waived = line.waived.clone();
    let waived_for = waived.is_some().then_some(waived_for);
    LineReport {
        code,
        name,
        asked,
        offered,
        met,
        title,
        why,
        candidate,
        waived,
        waived_for,
        working,
    }
}

/// A line of a whole nest, whose figure is put together from those of its coils.
pub(super) fn of_nest(
    desk: &mut Desk<'_>,
    case: &Case,
    line: &Line,
    (formula, source): (&'static str, String),
    with: String,
) -> LineReport {
    let bare = Line { offered: None, ..line.clone() };
    let pen = desk.pen;
    let report = report(desk, case, &bare, (None, waived::FOR_NEST));
    let said = |amount| words::of(pen, line.requirement, amount);
    let Some(Offered::Range(range)) = &line.offered else { return report };
    let offered = words::range(said, range);
    let working = Some(desk.ledger.file_words(formula, with, offered.clone(), source));
    LineReport { offered, working, ..report }
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
fn both_stresses(pen: Pen, case: &Case, line: &Line) -> String {
    let Some(against) = stressed(case, line.requirement) else { return String::new() };
    let of = |against| {
        let candidate = &case.candidate;
        let stress = match line.requirement {
            Requirement::StressAtWork => candidate.stress_at(case.asked.working?, against),
            _ => candidate.stress_at_solid(against),
        };
        Some(text!("{} {}", pen.say::<Stress>(stress.ok()?.nominal()), set::meant(against).name()))
    };
    let others = [Against::Plain, Against::Wahl].into_iter().filter(|other| *other != against);
    let others: Vec<String> = others.filter_map(of).collect();
    if others.is_empty() {
        String::new()
    } else {
        text!(" The same stress: {}.", quantity::joined(others.iter(), ", "))
    }
}

/// Whether a coil buckles at no height: the height at which it does is then nought.
fn never(requirement: Requirement, range: &Range<Amount>) -> bool {
    requirement == Requirement::Buckling && range.most().si() <= 0.0
}

/// The margin in words, or what is missing; and whose limit it is.
fn why(pen: Pen, case: &Case, line: &Line) -> String {
    let whose = match (line.wanted, line.source) {
        (Some(Wanted::Within(_)), Some(source)) => match line.requirement {
            Requirement::FreeHeight
            | Requirement::Rate
            | Requirement::Load
            | Requirement::LoadAt(_) => {
                text!(" The limits lie about the original's own figure: {source}.")
            }
            _ => text!(" The limit: {source}."),
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
        (Verdict::CannotTell { missing }, _) => {
            let lacking = sentence(&text!("not known: {}", words::list(missing)));
            let decided =
                case.decision(line).map_or_else(String::new, |by| words::decision(pen, &by));
            let joint = if decided.is_empty() { "" } else { " " };
            text!("{lacking}{joint}{decided}{whose}")
        }
        (Verdict::MetAsDrawn { untold }, margin) => {
            let spare = margin.map_or_else(String::new, |margin| {
                let size = words::margin(pen, line.requirement, margin.nominal);
                text!("As drawn it has {size} to spare. ")
            });
            text!("{spare}{}{whose}", not_given(untold))
        }
        (verdict, Some(margin)) => {
            text!("{}{whose}", by_margin(pen, line.requirement, verdict, margin))
        }
        (Verdict::NotMet, None) => "It is not what is asked.".to_owned(),
        (_, None) => "As asked.".to_owned(),
    }
}

/// What would have to be known for more than that it is met as drawn.
fn not_given(untold: &[Missing]) -> String {
    let is_steel = |one: &&Missing| one.figure == Figure::Steel;
    let steels: Vec<Missing> = untold.iter().filter(is_steel).copied().collect();
    let sizes: Vec<Missing> = untold.iter().filter(|one| !is_steel(one)).copied().collect();
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

fn by_margin(pen: Pen, requirement: Requirement, verdict: &Verdict, margin: Margin) -> String {
    let size = |amount: Amount| {
        let si = amount.si().abs();
        words::margin(pen, requirement, amount.with(si)).to_string()
    };
    let (nominal, worst) = (size(margin.nominal), size(margin.worst));
    let exact = margin.nominal == margin.worst;
    match verdict {
        Verdict::MetThroughout if exact => text!("Met with {nominal} to spare."),
        Verdict::MetThroughout => {
            text!("Met with {nominal} to spare as drawn, {worst} at the worst of its tolerances.")
        }
        Verdict::MetAtNominal => text!(
            "As drawn it has {nominal} to spare, but at the worst of its tolerances it is {worst} past the limit."
        ),
        _ if exact => text!("It is {nominal} past the limit."),
        _ => text!(
            "It is {nominal} past the limit as drawn, {worst} at the worst of its tolerances."
        ),
    }
}

/// Files how a figure of the candidate came about.
fn file(
    desk: &mut Desk<'_>,
    case: &Case,
    line: &Line,
    range: &Range<Amount>,
    result: String,
) -> String {
    let (formula, source) = rule(line.requirement, &case.candidate);
    let with = quantity::joined(inputs(desk.pen, line.requirement, case).iter(), ", ");
    let with = if with.is_empty() { result.clone() } else { with };
    let wide = range.least().si() < range.most().si();
    let source = if wide { text!("{source}; the range: {SOURCE}") } else { source };
    desk.ledger.file_words(formula, with, result, source)
}

/// The formula of a requirement's figure, and who says so.
fn rule(requirement: Requirement, of: &Drawing) -> (&'static str, String) {
    match requirement {
        Requirement::Pocket => ("De = D + d + ΔDe", growth_source()),
        Requirement::Post => ("Di = D − d", GEOMETRY.to_owned()),
        Requirement::OuterGap | Requirement::InnerGap => {
            ("gap = (Di − De) / 2 − ΔDe / 2", growth_source())
        }
        Requirement::FreeHeight => ("L0", "as its drawing has it".to_owned()),
        Requirement::Rate if of.rate.is_some() => ("k", "as given".to_owned()),
        Requirement::Rate => ("k = G · d⁴ / (8 · D³ · n)", rate::SOURCE.to_string()),
        Requirement::Load | Requirement::LoadAt(_) => {
            ("F = k · (L0 − h)", rate::SOURCE.to_string())
        }
        Requirement::SolidHeight => solid_rule(of),
        Requirement::Reserve => ("h − Lc", solid_rule(of).1),
        Requirement::StressAtWork => {
            ("τ = K · 8 · k · (L0 − h) · D / (π · d³)", stress::SOURCE.to_string())
        }
        Requirement::StressAtSolid => {
            ("τc = K · 8 · k · (L0 − Lc) · D / (π · d³)", stress::SOURCE.to_string())
        }
        Requirement::Buckling => ("LK = L0 − sK", buckling::SOURCE.to_string()),
        Requirement::Fatigue => (
            "the lesser of Goodman's factor and that against yielding",
            fatigue::SOURCE.to_string(),
        ),
        Requirement::NestHeight => ("Σ F(h) = F", nest::SOURCE.to_string()),
        Requirement::Deviation => ("max |F / mean F − 1|", frame::SOURCE.to_string()),
        Requirement::OuterHand | Requirement::InnerHand | Requirement::Hand | Requirement::Ends => {
            ("", String::new())
        }
    }
}

fn growth_source() -> String {
    text!("{}; {}", growth::HELD_SOURCE, growth::FREE_ROD_SOURCE)
}

fn solid_rule(of: &Drawing) -> (&'static str, String) {
    match (of.solid, of.ends) {
        (Some(_), _) | (None, None) => ("Lc", "as given".to_owned()),
        (None, Some(ends)) => {
            let formula = match ends {
                Ends::Open | Ends::Closed => "Lc = d · (nt + 1)",
                Ends::OpenGround | Ends::ClosedGround => "Lc = d · nt",
                Ends::TaperedGround => "Lc = d · (nt − 0.3)",
            };
            (formula, solid::source(ends).to_string())
        }
    }
}

/// The numbers that are put in.
fn inputs(pen: Pen, requirement: Requirement, case: &Case) -> Vec<String> {
    let of = &case.candidate;
    let put = |symbol: &str, value: Option<Range<Amount>>| {
        let said = |amount| words::amount(pen, amount);
        value.map(|value| text!("{symbol} = {}", words::range(said, &value)))
    };
    let length = |given: Option<Given<Length>>, figure| {
        given.map(|given| given.range(figure).map(Amount::Length))
    };
    let bar = || put("d", length(of.bar, Figure::Bar));
    let diameter = || {
        let (across, size) = of.diameter?;
        let symbol = match across {
            Across::Mean => "D",
            Across::Outside => "De",
            Across::Inside => "Di",
        };
        put(symbol, length(Some(size), Figure::Diameter))
    };
    let turns = || {
        put("nt", of.total_turns.map(|turns| turns.range(Figure::TotalTurns).map(Amount::Number)))
    };
    let active = || put("n", of.active_turns().ok().map(|turns| turns.map(Amount::Number)));
    let free = || put("L0", length(of.free, Figure::FreeHeight));
    let rate = || put("k", of.rate().ok().map(|rate| rate.map(Amount::Rate)));
    let solid = || put("Lc", of.solid().ok().map(|solid| solid.map(Amount::Length)));
    let shear = || {
        let shear = of.shear_modulus?.nominal();
        Some(text!("G = {}", pen.say::<Modulus>(shear)))
    };
    let height = || put("h", case.asked.working.map(|at| Range::exact(Amount::Length(at))));
    let factor = || {
        let coil = of.nominal_coil()?;
        let factor = set::factor(stressed(case, requirement)?, coil.index());
        Some(text!("K = {}", quantity::write_number(factor, 4)))
    };
    let cycle = || {
        let (least, most) = case.asked.cycle?;
        Some(text!("F1 = {}, F2 = {}", pen.say::<Force>(least), pen.say::<Force>(most)))
    };
    let all: Vec<Option<String>> = match requirement {
        Requirement::Pocket | Requirement::OuterGap => vec![bar(), diameter(), turns(), free()],
        Requirement::Post | Requirement::InnerGap => vec![bar(), diameter()],
        Requirement::FreeHeight => vec![free()],
        Requirement::Rate if of.rate.is_some() => vec![rate()],
        Requirement::Rate => vec![shear(), bar(), diameter(), active()],
        Requirement::Load => vec![rate(), free(), height()],
        Requirement::LoadAt(place) => {
            let at = case.original.loads.get(usize::from(place));
            let at = at.map(|at| Range::exact(Amount::Length(at.height)));
            vec![rate(), free(), put("h", at)]
        }
        Requirement::SolidHeight if of.solid.is_some() => vec![solid()],
        Requirement::SolidHeight => vec![bar(), turns()],
        Requirement::Reserve => vec![height(), solid()],
        Requirement::StressAtWork => vec![factor(), rate(), free(), height(), bar(), diameter()],
        Requirement::StressAtSolid => vec![factor(), rate(), free(), solid(), bar(), diameter()],
        Requirement::Buckling => vec![bar(), diameter(), free()],
        Requirement::Fatigue => vec![cycle(), bar(), diameter()],
        Requirement::NestHeight | Requirement::Deviation => vec![rate(), free(), solid()],
        Requirement::OuterHand | Requirement::InnerHand | Requirement::Hand | Requirement::Ends => {
            Vec::new()
        }
    };
    all.into_iter().flatten().collect()
}

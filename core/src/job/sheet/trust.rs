//! How far the rate of a drawing, or of a sample, can be trusted, and what would narrow it.

use crate::coil::ends::LEAST_ACTIVE_TURNS;
use crate::drawing::{self, Drawing, Figure as Asked, Figures, Range};
use crate::job::coil::Coil;
use crate::job::desk::Desk;
use crate::job::figures::{Pen, text};
use crate::job::report::{Doubt, Figure, Trust};
use crate::propagation::{self, Budget, Part};
use crate::quantity::{self, Length, SpringRate};

/// None where the drawing gives no rate.
pub(super) fn of(desk: &mut Desk<'_>, drawn: &Coil) -> Option<Trust> {
    let drawing = &drawn.drawing;
    let budget = propagation::drawn_rate(drawing).ok()?;
    let pen = desk.pen;
    let extremes = match drawing.drawn_rate() {
        Ok(extremes) => extremes,
        Err(fails) => {
            return Some(Trust {
                rate: None,
                least: None,
                most: None,
                parts: Vec::new(),
                sentence: no_coil(pen, drawing, fails)?,
            });
        }
    };
    let figure = pen.doubted::<SpringRate>(budget.value, budget.doubt.value);
    let with = parts_text(pen, &budget);
    let rate = desk.ledger.show(figure, "u² = Σ (∂R/∂x · u(x))²", with, &propagation::SOURCE);
    let mut corner = |rate, which: &'static str| {
        let figure = pen.figure::<SpringRate>(rate);
        let with = "every number at the end of its tolerance that goes that way".to_owned();
        desk.ledger.show(figure, which, with, &drawing::SOURCE)
    };
    let least = corner(extremes.least(), "R of the softest corner");
    let most = corner(extremes.most(), "R of the stiffest corner");
    let mut parts = Vec::new();
    for part in budget.parts.iter().filter(|part| part.share > 0.0) {
        parts.push(doubt(desk, part, drawing)?);
    }
    let sentence = text!("{}{}", sentence(pen, &budget), untold(extremes.untold()));
    Some(Trust { rate: Some(rate), least: Some(least), most: Some(most), parts, sentence })
}

/// Whether what is not known of the dead turns outweighs all else together.
pub(super) fn ends_outweigh(drawn: &Coil) -> bool {
    let budget = propagation::drawn_rate(&drawn.drawing).ok();
    let largest = budget.and_then(|budget| budget.largest());
    largest.is_some_and(|part| part.input == Asked::DeadTurns && part.share > 0.5)
}

/// Which figures are without a tolerance, so that nothing of the ± is theirs.
fn untold(figures: Figures) -> String {
    if figures.is_empty() {
        return String::new();
    }
    let named = quantity::joined(figures.iter(), ", ");
    text!(" No tolerance is given of {named}: that counts as exact.")
}

/// Which tolerances leave no coil, in the units of the job.
fn no_coil(pen: Pen, of: &Drawing, fails: Figures) -> Option<String> {
    let count = |turns: f64| quantity::write_number(turns, 4);
    if fails.contains(Asked::TotalTurns) {
        return Some(text!(
            "As few as {} turns less up to {} dead ones may leave fewer than {} at work. Count again, or write only by how much the count may be off.",
            count(of.total_turns?.range(Asked::TotalTurns).least()),
            count(of.dead()?.range(Asked::DeadTurns).most()),
            count(LEAST_ACTIVE_TURNS)
        ));
    }
    let size = |size: Range<Length>| {
        text!("between {} and {}", pen.decimal(size.least()), pen.decimal(size.most()))
    };
    Some(text!(
        "A bar {} in a diameter {} may be no coil at all: tolerances that leave a bar, and a hole inside the coil, were expected. Write only by how much each size may be off.",
        size(of.bar?.range(Asked::Bar)),
        size(of.diameter?.1.range(Asked::Diameter))
    ))
}

fn parts_text(pen: Pen, budget: &Budget<SpringRate>) -> String {
    let parts = budget.parts.iter().filter(|part| part.share > 0.0);
    let parts: Vec<String> =
        parts.map(|part| text!("({})²", pen.say::<SpringRate>(part.doubt))).collect();
    if parts.is_empty() { "nothing is in doubt".to_owned() } else { parts.join(" + ") }
}

fn doubt(desk: &mut Desk<'_>, part: &Part<SpringRate>, of: &Drawing) -> Option<Doubt> {
    let pen = desk.pen;
    let length = |doubt: Length| pen.rough(doubt).to_string();
    let turns = |doubt: f64| quantity::write_number(doubt, 2);
    let (name, own) = match part.input {
        Asked::Bar => ("Bar", length(of.bar?.doubt())),
        Asked::Diameter => ("Diameter", length(of.diameter?.1.doubt())),
        Asked::TotalTurns => ("Turns in all", turns(of.total_turns?.doubt())),
        Asked::DeadTurns => ("Dead turns", turns(of.dead()?.doubt())),
        _ => {
            let shear = of.shear()?;
            ("Shear modulus", Pen::percent((shear.doubt() / shear.nominal()).value, 1).text)
        }
    };
    let source = &propagation::SOURCE;
    let sensitivity = Pen::number(part.sensitivity, 3);
    let with = text!("of {name}").to_lowercase();
    let sensitivity = desk.ledger.show(sensitivity, "∂R/∂x · x/R", with.clone(), source);
    let text = pen.doubt::<SpringRate>(part.doubt).to_string();
    let figure = Figure { text, ..pen.figure::<SpringRate>(part.doubt) };
    let doubt = desk.ledger.show(figure, "∂R/∂x · u(x)", text!("u = {own}"), source);
    let share =
        desk.ledger.show(Pen::percent(part.share, 0), "share of the variance", with, source);
    Some(Doubt { name: name.to_owned(), own: text!("± {own}"), sensitivity, doubt, share })
}

fn sentence(pen: Pen, budget: &Budget<SpringRate>) -> String {
    let Some(largest) = budget.largest() else {
        return "Nothing is in doubt that this rate rests on, or nobody has said how well it is known."
            .to_owned();
    };
    let left = |input| pen.doubt::<SpringRate>(budget.doubt_left(input, 0.5));
    let mut said = match budget.worth_measuring() {
        Some(part) => text!(
            "Of what caliper, tape and counting give, {} is worth measuring better: half its doubt would leave ± {} of ± {}.",
            part.input,
            left(part.input),
            pen.doubt::<SpringRate>(budget.doubt)
        ),
        None => "Write below how well each size is known, and this tells which is worth measuring better.".to_owned(),
    };
    if !largest.input.measured() {
        let share = quantity::write_fixed(largest.share * 100.0, 0);
        let more = text!(
            " Most of the doubt, {share} %, comes of {}: only a press makes up for that.",
            largest.input
        );
        said.push_str(&more);
    }
    said
}

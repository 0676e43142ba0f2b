//! How far the rate of a drawing, or of a sample, can be trusted, and what would narrow it.

use crate::coil::ends::{DeadTurnsDoubt, TurnsError};
use crate::job::desk::Desk;
use crate::job::drawing::Drawn;
use crate::job::figures::{Pen, text};
use crate::job::report::{Doubt, Figure, Trust};
use crate::job::service::Service;
use crate::job::tolerance::Tolerance;
use crate::propagation::corners::{self, Between, Toleranced};
use crate::propagation::{self, Budget, Input, Part, PropagationError, Sample};
use crate::quantity::{self, Length, SpringRate};
use core::ops::{Add, Mul, Sub};

/// None where the drawing gives no rate.
pub(super) fn of(desk: &mut Desk<'_>, drawn: &Drawn, service: &Service) -> Option<Trust> {
    let toleranced = toleranced(drawn, service)?;
    let sample = toleranced.sample();
    let budget = propagation::rate(&sample).ok()?;
    let pen = desk.pen;
    let extremes = match corners::rate(&toleranced) {
        Ok(extremes) => extremes,
        Err(error) => {
            return Some(Trust {
                rate: None,
                least: None,
                most: None,
                parts: Vec::new(),
                sentence: no_coil(pen, &toleranced, &error),
            });
        }
    };
    let figure = pen.doubted::<SpringRate>(budget.value, budget.doubt.value);
    let with = parts_text(pen, &budget);
    let rate = desk.ledger.show(figure, "u² = Σ (∂R/∂x · u(x))²", with, &propagation::SOURCE);
    let mut corner = |rate, which: &'static str| {
        let figure = pen.figure::<SpringRate>(rate);
        let with = "every number at the end of its tolerance that goes that way".to_owned();
        desk.ledger.show(figure, which, with, &corners::SOURCE)
    };
    let least = corner(extremes.least(), "R of the softest corner");
    let most = corner(extremes.most(), "R of the stiffest corner");
    let mut parts = Vec::new();
    for part in budget.parts.iter().filter(|part| part.share > 0.0) {
        parts.push(doubt(desk, part, &sample));
    }
    Some(Trust {
        rate: Some(rate),
        least: Some(least),
        most: Some(most),
        parts,
        sentence: sentence(pen, &budget),
    })
}

/// Whether what is not known of the dead turns outweighs all else together.
pub(super) fn ends_outweigh(drawn: &Drawn, service: &Service) -> bool {
    let budget = toleranced(drawn, service).and_then(|it| propagation::rate(&it.sample()).ok());
    let largest = budget.and_then(|budget| budget.largest());
    largest.is_some_and(|part| part.input == Input::DeadTurns && part.share > 0.5)
}

/// Which tolerances leave no coil, in the units of the job.
fn no_coil(pen: Pen, within: &Toleranced, error: &PropagationError) -> String {
    let count = |turns: f64| quantity::write_number(turns, 4);
    let size = |size: Between<Length>| {
        text!("between {} and {}", pen.decimal(size.least()), pen.decimal(size.most()))
    };
    if let PropagationError::Turns(TurnsError::TooFew { least, .. }) = error {
        return text!(
            "As few as {} turns less up to {} dead ones may leave fewer than {} at work. Count again, or write only by how much the count may be off.",
            count(within.total_turns.least()),
            count(within.dead_turns.most()),
            count(*least)
        );
    }
    text!(
        "A bar {} in a diameter {} may be no coil at all: tolerances that leave a bar, and a hole inside the coil, were expected. Write only by how much each size may be off.",
        size(within.bar),
        size(within.diameter)
    )
}

fn toleranced(drawn: &Drawn, service: &Service) -> Option<Toleranced> {
    let facts = &drawn.facts;
    let (coil, turns, across, moduli) =
        (facts.diameters?, facts.turns?, drawn.across?, drawn.moduli.as_ref()?);
    let diameter = match across {
        propagation::Across::Outside => coil.outside(),
        propagation::Across::Mean => coil.mean(),
        propagation::Across::Inside => coil.inside(),
    };
    let spread = |value: f64, by: f64| Between::around(value, by, by).ok();
    let shear = moduli.shear;
    // The half-width of which the steel's standard uncertainty is a √3rd.
    let by = shear * (moduli.doubt * libm::sqrt(3.0));
    let tolerances = service.tolerances;
    let dead_turns = drawn.dead_turns.map_or(0.0, DeadTurnsDoubt::half_width);
    Some(Toleranced {
        bar: within(coil.bar(), tolerances.bar)?,
        across,
        diameter: within(diameter, tolerances.diameter)?,
        total_turns: within(turns.total(), tolerances.turns)?,
        dead_turns: spread(turns.dead(), dead_turns.min(turns.dead()))?,
        shear_modulus: Between::around(shear, by, by).ok()?,
        // Loads go by it, the rate does not.
        free: within(facts.free.unwrap_or(coil.mean()), tolerances.free)?,
    })
}

/// A size between the ends of its tolerance; exact where none is given.
fn within<Q>(nominal: Q, tolerance: Option<Tolerance<Q>>) -> Option<Between<Q>>
where
    Q: Copy
        + core::fmt::Debug
        + PartialOrd
        + Add<Output = Q>
        + Sub<Output = Q>
        + Mul<f64, Output = Q>,
{
    let given = Tolerance::given(tolerance, nominal);
    let (least, most) = (given.least().unwrap_or(nominal), given.most().unwrap_or(nominal));
    Between::new(least, most).ok()
}

fn parts_text(pen: Pen, budget: &Budget<SpringRate>) -> String {
    let parts = budget.parts.iter().filter(|part| part.share > 0.0);
    let parts: Vec<String> =
        parts.map(|part| text!("({})²", pen.say::<SpringRate>(part.doubt))).collect();
    if parts.is_empty() { "nothing is in doubt".to_owned() } else { parts.join(" + ") }
}

fn doubt(desk: &mut Desk<'_>, part: &Part<SpringRate>, sample: &Sample) -> Doubt {
    let pen = desk.pen;
    let (name, own) = match part.input {
        Input::Bar => ("Bar", pen.rough(sample.bar.doubt).to_string()),
        Input::Diameter => ("Diameter", pen.rough(sample.diameter.doubt).to_string()),
        Input::TotalTurns => ("Turns in all", quantity::write_number(sample.total_turns.doubt, 2)),
        Input::DeadTurns => ("Dead turns", quantity::write_number(sample.dead_turns.doubt, 2)),
        Input::ShearModulus => {
            let share = (sample.shear_modulus.doubt / sample.shear_modulus.value).value;
            ("Shear modulus", Pen::percent(share, 1).text)
        }
        Input::FreeHeight => ("Free height", pen.rough(sample.free.doubt).to_string()),
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
    Doubt { name: name.to_owned(), own: text!("± {own}"), sensitivity, doubt, share }
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

//! How far the rate of a drawing, or of a sample, can be trusted, and what would narrow it.

use crate::coil::ends::LEAST_ACTIVE_TURNS;
use crate::coil::rate::FORMULA_OF_ALL_TURNS;
use crate::drawing::{self, Drawing, Figure as Asked, Figures, Given, Range};
use crate::formula::Value;
use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::figures::{Format, text};
use crate::job::formulas::{PART_OF_DOUBT, RATE_AND_DOUBT, SHARE_OF_VARIANCE};
use crate::job::report::{Doubt, Figure, Trust};
use crate::propagation::{self, Budget, Part};
use crate::quantity::{self, Length, Modulus, Said, SpringRate};
use std::fmt::Display;

/// None where the drawing gives no rate.
pub(super) fn of(context: &mut Context<'_>, drawn: &Coil) -> Option<Trust> {
    let drawing = &drawn.drawing;
    let budget = propagation::drawn_rate(drawing).ok()?;
    let format = context.format;
    let extremes = match drawing.drawn_rate() {
        Ok(extremes) => extremes,
        Err(fails) => {
            return Some(Trust {
                rate: None,
                least: None,
                most: None,
                parts: Vec::new(),
                sentence: no_coil(format, drawing, fails)?,
            });
        }
    };
    let figure = format.doubted::<SpringRate>(budget.value, budget.doubt.value);
    let parts = budget.parts.iter().filter(|part| part.share > 0.0);
    let parts: Vec<Said> = parts.map(|part| format.exact::<SpringRate>(part.doubt)).collect();
    let put = RATE_AND_DOUBT.put_sum(
        &corner(format, drawing, End::Nominal, End::Nominal)?.values(),
        parts.iter().map(|part| [("ui", part as _)]),
    );
    let rate = context.ledger.put(figure, put, &propagation::SOURCE);
    let mut end = |rate, corner: Corner| {
        let figure = format.figure::<SpringRate>(rate);
        context.ledger.work(figure, FORMULA_OF_ALL_TURNS, &corner.values(), &drawing::SOURCE)
    };
    let least = end(extremes.least(), corner(format, drawing, End::Least, End::Most)?);
    let most = end(extremes.most(), corner(format, drawing, End::Most, End::Least)?);
    let mut parts = Vec::new();
    for part in budget.parts.iter().filter(|part| part.share > 0.0) {
        parts.push(doubt(context, part, &budget, drawing)?);
    }
    let sentence = text!("{}{}", sentence(format, &budget), unstated(extremes.unstated()));
    Some(Trust { rate: Some(rate), least: Some(least), most: Some(most), parts, sentence })
}

/// Whether what is not known of the dead turns outweighs all else together.
pub(super) fn ends_outweigh(drawn: &Coil) -> bool {
    let budget = propagation::drawn_rate(&drawn.drawing).ok();
    let largest = budget.and_then(|budget| budget.largest());
    largest.is_some_and(|part| part.input == Asked::DeadTurns && part.share > 0.5)
}

/// Which figures are without a tolerance, so that nothing of the ± is theirs.
fn unstated(figures: Figures) -> String {
    if figures.is_empty() {
        return String::new();
    }
    let named = quantity::joined(figures.iter(), ", ");
    text!(" No tolerance is given for {named}: taken as exact.")
}

/// Which tolerances leave no coil, in the units of the job.
fn no_coil(format: Format, of: &Drawing, fails: Figures) -> Option<String> {
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
        text!("between {} and {}", format.decimal(size.least()), format.decimal(size.most()))
    };
    Some(text!(
        "A bar {} in a diameter {} may be no coil at all: tolerances that leave a bar, and a hole inside the coil, were expected. Write only by how much each size may be off.",
        size(of.bar?.range(Asked::Bar)),
        size(of.diameter?.1.range(Asked::Diameter))
    ))
}

/// What a rate is worked out from, with its tolerances at one end.
struct Corner {
    shear: Said,
    bar: Said,
    mean: Said,
    total: String,
    dead: String,
}

impl Corner {
    fn values(&self) -> [Value<'_>; 5] {
        [
            ("G", &self.shear),
            ("d", &self.bar),
            ("D", &self.mean),
            ("nt", &self.total),
            ("nd", &self.dead),
        ]
    }
}

/// An end of a range.
#[derive(Clone, Copy)]
enum End {
    Least,
    Nominal,
    Most,
}

impl End {
    fn of<Q: Copy>(self, range: Range<Q>) -> Q {
        match self {
            Self::Least => range.least(),
            Self::Nominal => range.nominal(),
            Self::Most => range.most(),
        }
    }
}

/// What stiffens a coil at one end of its range, and what softens it at the other.
fn corner(format: Format, of: &Drawing, stiffening: End, softening: End) -> Option<Corner> {
    let bar = stiffening.of(of.bar?.range(Asked::Bar));
    let (across, diameter) = of.diameter?;
    let coil = across.coil(bar, softening.of(diameter.range(Asked::Diameter))).ok()?;
    let turns = |turns: f64| quantity::write_number(turns, 7);
    Some(Corner {
        shear: format.exact::<Modulus>(stiffening.of(of.shear()?.range(Asked::ShearModulus))),
        bar: format.decimal(bar),
        mean: format.decimal(coil.mean()),
        total: turns(softening.of(of.total_turns?.range(Asked::TotalTurns))),
        dead: turns(stiffening.of(of.dead()?.range(Asked::DeadTurns))),
    })
}

fn doubt(
    context: &mut Context<'_>,
    part: &Part<SpringRate>,
    budget: &Budget<SpringRate>,
    of: &Drawing,
) -> Option<Doubt> {
    let format = context.format;
    let length = |given: Given<Length>| {
        (format.rough(given.doubt()).to_string(), (given.doubt() / given.nominal()).value)
    };
    let turns = |given: Given<f64>| {
        (quantity::write_number(given.doubt(), 2), given.doubt() / given.nominal())
    };
    let (name, (own, relative)) = match part.input {
        Asked::Bar => ("Bar", length(of.bar?)),
        Asked::Diameter => ("Diameter", length(of.diameter?.1)),
        Asked::TotalTurns => ("Turns in all", turns(of.total_turns?)),
        Asked::DeadTurns => ("Dead turns", turns(of.dead()?)),
        _ => {
            let shear = of.shear()?;
            let relative = (shear.doubt() / shear.nominal()).value;
            ("Shear modulus", (Format::percent(relative, 1).text, relative))
        }
    };
    let source = &propagation::SOURCE;
    let values = corner(format, of, End::Nominal, End::Nominal)?;
    let diameter = format.decimal(of.diameter?.1.nominal());
    let [d, mean, nt, nd] =
        [&values.bar as &dyn Display, &values.mean, &values.total, &values.dead];
    let sensitivity = context.ledger.work(
        Format::number(part.sensitivity, 3),
        propagation::sensitivity(part.input, of.diameter?.0),
        &[("d", d), ("D", mean), ("Dx", &diameter), ("nt", nt), ("nd", nd)],
        source,
    );
    let text = format.doubt::<SpringRate>(part.doubt).to_string();
    let figure = Figure { text, ..format.figure::<SpringRate>(part.doubt) };
    let doubt = context.ledger.work(
        figure,
        PART_OF_DOUBT,
        &[
            ("sx", &quantity::write_number(part.sensitivity.abs(), 5)),
            ("ux", &quantity::write_number(relative, 5)),
            ("k", &format.exact::<SpringRate>(budget.value)),
        ],
        source,
    );
    let share = context.ledger.work(
        Format::percent(part.share, 0),
        SHARE_OF_VARIANCE,
        &[
            ("ui", &format.exact::<SpringRate>(part.doubt)),
            ("u", &format.exact::<SpringRate>(budget.doubt)),
        ],
        source,
    );
    Some(Doubt { name: name.to_owned(), own: text!("± {own}"), sensitivity, doubt, share })
}

fn sentence(format: Format, budget: &Budget<SpringRate>) -> String {
    let Some(largest) = budget.largest() else {
        return "No doubt is given for any size that this rate rests on.".to_owned();
    };
    let left = |input| format.doubt::<SpringRate>(budget.doubt_left(input, 0.5));
    let mut said = match budget.worth_measuring() {
        Some(part) => text!(
            "Of the sizes that can be measured, {} is worth measuring better: with half its doubt, ± {} would be left of ± {}.",
            part.input,
            left(part.input),
            format.doubt::<SpringRate>(budget.doubt)
        ),
        None => "Write below how well each size is known. Then it says here which is worth measuring better.".to_owned(),
    };
    if !largest.input.measured() {
        let share = quantity::write_fixed(largest.share * 100.0, 0);
        let more = text!(
            " Most of the doubt, {share} %, comes from {}: only a press test settles that.",
            largest.input
        );
        said.push_str(&more);
    }
    said
}

//! What follows from the drawing of a coil, as far as the drawing goes.

use super::coil::Coil;
use super::context::Context;
use super::figures::{Format, text};
use super::formulas::{ACTIVE_TURNS, INDEX, Letter, letter};
use super::report::{Cited, CoilReport, Figure};
use crate::coil::ends::Turns;
use crate::coil::solid::{self, Stop};
use crate::coil::stress::Factor;
use crate::coil::{Diameters, rate, stress};
use crate::propagation;
use crate::quantity::{self, Kind, Length, Modulus, SpringRate, Stress};

/// The source of what is plain geometry.
pub(crate) const GEOMETRY: &str = "geometry of the coil";

/// Reports what follows from a drawing.
pub(crate) fn report(context: &mut Context<'_>, coil: &Coil) -> CoilReport {
    let (id, name) = (coil.id.clone(), coil.name.clone());
    let mut report = CoilReport { id, name, ..CoilReport::default() };
    index_and_factors(context, &mut report, coil);
    turns(context, &mut report, coil);
    solid_height(context, &mut report, coil);
    rates(context, &mut report, coil);
    helix(context, &mut report, coil);
    stress_at_solid(context, &mut report, coil);
    report
}

/// A figure that nothing is worked out for.
pub(crate) fn as_given<K: Kind>(
    context: &mut Context<'_>,
    figure: Figure,
    (formula, sign): Letter,
    whose: impl Into<Cited>,
) -> Figure {
    let given = context.format.exact::<K>(K::from_si(figure.si));
    context.ledger.work(figure, formula, &[(sign, &given)], whose)
}

fn index_and_factors(context: &mut Context<'_>, report: &mut CoilReport, coil: &Coil) {
    let Some(coil) = coil.diameters() else { return };
    let format = context.format;
    report.index = Some(context.ledger.work(
        Format::number(coil.index(), 3),
        INDEX,
        &[("D", &format.decimal(coil.mean())), ("d", &format.decimal(coil.bar()))],
        GEOMETRY,
    ));
    let index = quantity::write_number(coil.index(), 5);
    report.wahl = Some(context.ledger.work(
        Format::number(stress::wahl(coil.index()), 4),
        stress::WAHL,
        &[("C", &index)],
        &stress::WAHL_SOURCE,
    ));
    report.bergstrasser = Some(context.ledger.work(
        Format::number(stress::bergstrasser(coil.index()), 4),
        stress::BERGSTRASSER,
        &[("C", &index)],
        &stress::BERGSTRASSER_SOURCE,
    ));
}

fn turns(context: &mut Context<'_>, report: &mut CoilReport, coil: &Coil) {
    let (Some(turns), Some(dead)) = (coil.turns(), coil.drawing.dead()) else { return };
    let figure = context.format.doubted::<quantity::Turns>(turns.active(), dead.doubt());
    let number = |turns| quantity::write_number(turns, 4);
    let source = match coil.drawing.ends {
        Some(ends) if dead.doubt() > 0.0 => text!(
            "{}; a doubt of {} turn as a uniform half-width, from what ends do between plates",
            ends.source(),
            number(dead.half_width())
        ),
        _ => "turns as given".into(),
    };
    report.active_turns = Some(context.ledger.work(
        figure,
        ACTIVE_TURNS,
        &[("nt", &number(turns.total())), ("nd", &number(turns.dead()))],
        source,
    ));
}

fn solid_height(context: &mut Context<'_>, report: &mut CoilReport, of: &Coil) {
    let drawn = match (of.drawing.bar, of.turns(), of.drawing.ends) {
        (Some(bar), Some(turns), Some(ends)) => {
            let (_, greatest) = solid::stops(bar.nominal(), turns, ends);
            Some(show_stop(context, bar.nominal(), turns, greatest))
        }
        _ => None,
    };
    let Some(given) = of.drawing.solid else {
        report.solid = drawn;
        return;
    };
    let figure = context.format.height(given.nominal());
    report.solid =
        Some(as_given::<Length>(context, figure, letter!("Lc"), "the book's solid height"));
    report.solid_drawing = drawn;
}

/// A solid height by an authority's rule.
pub(crate) fn show_stop(
    context: &mut Context<'_>,
    bar: Length,
    turns: Turns,
    stop: Stop,
) -> Figure {
    let format = context.format;
    context.ledger.work(
        format.height(stop.height),
        stop.rule.formula,
        &[("d", &format.decimal(bar)), ("nt", &quantity::write_number(turns.total(), 4))],
        &stop.rule.source,
    )
}

fn rates(context: &mut Context<'_>, report: &mut CoilReport, of: &Coil) {
    let format = context.format;
    let budget = propagation::drawn_rate(&of.drawing).ok();
    let drawn = match (of.diameters(), of.turns(), of.shear(), budget) {
        (Some(coil), Some(turns), Some(shear), Some(budget)) => {
            let figure = format.doubted::<SpringRate>(budget.value, budget.doubt.value);
            let source = text!("{}; {}", rate::SOURCE, of.modulus.0);
            Some(context.ledger.work(
                figure,
                rate::FORMULA,
                &[
                    ("G", &format.say::<Modulus>(shear)),
                    ("d", &format.decimal(coil.bar())),
                    ("D", &format.decimal(coil.mean())),
                    ("n", &quantity::write_number(turns.active(), 4)),
                ],
                source,
            ))
        }
        _ => None,
    };
    if let (Some(rate), Some(stated)) = (of.rate, of.drawing.stated_rate()) {
        let figure = format.doubted::<SpringRate>(rate.value, rate.doubt().value);
        let whose = match of.drawing.rate {
            Some(_) => "the book's rate",
            None => "the loads that are stated at two heights",
        };
        let known = match rate.doubt().value > 0.0 {
            _ if stated.is_complete() => "",
            true => "; as no tolerance of it is given, it is doubted as by its sizes",
            false => "; no tolerance of it is given: it counts as exact",
        };
        let whose = text!("{whose}{known}");
        report.rate = Some(as_given::<SpringRate>(context, figure, letter!("k"), whose));
        report.rate_drawing = drawn;
        return;
    }
    report.rate = drawn;
}

fn helix(context: &mut Context<'_>, report: &mut CoilReport, of: &Coil) {
    let (Some(coil), Some(turns), Some(free), Some(pitch)) =
        (of.diameters(), of.turns(), of.free(), of.pitch())
    else {
        return;
    };
    let format = context.format;
    let source = of.drawing.ends.map_or(solid::PITCH_FROM_SOLID_SOURCE, solid::pitch_source);
    let solid = of.solid().map_or(Length::default(), |solid| solid.greatest);
    report.pitch = Some(context.ledger.work(
        format.fine(pitch),
        solid::pitch_formula(of.drawing.ends),
        &[
            ("L0", &format.decimal(free)),
            ("Lc", &format.decimal(solid)),
            ("d", &format.decimal(coil.bar())),
            ("n", &quantity::write_number(turns.active(), 4)),
        ],
        &source,
    ));

    let (Some(shear), Ok(poisson)) = (of.shear(), of.drawing.poisson()) else { return };
    let plain = rate::rate(shear, coil, turns);
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    let corrected = rate::corrected(plain, coil, pitch, poisson, of.ends_turn);
    report.rate_corrected = Some(context.ledger.work(
        format.figure::<SpringRate>(corrected),
        rate::corrected_formula(of.ends_turn),
        &[
            ("k0", &format.say::<SpringRate>(plain)),
            ("C", &quantity::write_number(coil.index(), 4)),
            ("μ", &quantity::write_number(poisson, 3)),
            ("tα", &quantity::write_number(tangent, 4)),
        ],
        &rate::CORRECTED_SOURCE,
    ));
}

fn stress_at_solid(context: &mut Context<'_>, report: &mut CoilReport, of: &Coil) {
    let (Some(coil), Some(rate), Some(free), Some(solid)) =
        (of.diameters(), of.rate, of.free(), of.solid())
    else {
        return;
    };
    let pressed = Pressed { rate: rate.value, free, to: solid.least };
    report.stress_solid = Some(show_stress_at(context, coil, pressed, Factor::Uncorrected));
}

/// A coil pressed to a height.
#[derive(Clone, Copy)]
pub(crate) struct Pressed {
    pub(crate) rate: SpringRate,
    pub(crate) free: Length,
    pub(crate) to: Length,
}

/// The stress of a coil at a height.
pub(crate) fn show_stress_at(
    context: &mut Context<'_>,
    coil: Diameters,
    Pressed { rate, free, to }: Pressed,
    factor: Factor,
) -> Figure {
    let format = context.format;
    let times = factor.at(coil.index());
    context.ledger.work(
        format.figure::<Stress>(stress::uncorrected(rate * (free - to), coil) * times),
        factor.formula_at_height(),
        &[
            (factor.sign(), &quantity::write_number(times, 5)),
            ("k", &format.say::<SpringRate>(rate)),
            ("L0", &format.decimal(free)),
            ("L", &format.decimal(to)),
            ("D", &format.decimal(coil.mean())),
            ("d", &format.decimal(coil.bar())),
        ],
        &factor.source(),
    )
}

/// The stress of a coil under a load.
pub(crate) fn show_stress(
    context: &mut Context<'_>,
    coil: Diameters,
    load: quantity::Force,
    factor: Factor,
) -> Figure {
    let format = context.format;
    let times = factor.at(coil.index());
    context.ledger.work(
        format.figure::<Stress>(stress::uncorrected(load, coil) * times),
        factor.formula(),
        &[
            (factor.sign(), &quantity::write_number(times, 5)),
            ("F", &format.say::<quantity::Force>(load)),
            ("D", &format.decimal(coil.mean())),
            ("d", &format.decimal(coil.bar())),
        ],
        &factor.source(),
    )
}

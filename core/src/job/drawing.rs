//! What follows from the drawing of a coil, as far as the drawing goes.

use super::coil::Coil;
use super::desk::Desk;
use super::figures::{Pen, text};
use super::formulas::{ACTIVE_TURNS, INDEX, Letter, letter};
use super::report::{CoilReport, Figure};
use crate::coil::ends::Turns;
use crate::coil::solid::{self, Stop};
use crate::coil::stress::Factor;
use crate::coil::{Diameters, rate, stress};
use crate::propagation;
use crate::quantity::{self, Kind, Length, Modulus, SpringRate, Stress};

/// The source of what is plain geometry.
pub(crate) const GEOMETRY: &str = "geometry of the coil";

/// Reports what follows from a drawing.
pub(crate) fn report(desk: &mut Desk<'_>, coil: &Coil) -> CoilReport {
    let (id, name) = (coil.id.clone(), coil.name.clone());
    let mut report = CoilReport { id, name, ..CoilReport::default() };
    index_and_factors(desk, &mut report, coil);
    turns(desk, &mut report, coil);
    solid_height(desk, &mut report, coil);
    rates(desk, &mut report, coil);
    helix(desk, &mut report, coil);
    stress_at_solid(desk, &mut report, coil);
    report
}

/// A figure that nothing is worked out for.
pub(crate) fn as_given<K: Kind>(
    desk: &mut Desk<'_>,
    figure: Figure,
    (formula, sign): Letter,
    whose: &str,
) -> Figure {
    let given = desk.pen.exact::<K>(K::from_si(figure.si));
    desk.ledger.work(figure, formula, &[(sign, &given)], &whose)
}

fn index_and_factors(desk: &mut Desk<'_>, report: &mut CoilReport, coil: &Coil) {
    let Some(coil) = coil.diameters() else { return };
    let pen = desk.pen;
    report.index = Some(desk.ledger.work(
        Pen::number(coil.index(), 3),
        INDEX,
        &[("D", &pen.decimal(coil.mean())), ("d", &pen.decimal(coil.bar()))],
        &GEOMETRY,
    ));
    let index = quantity::write_number(coil.index(), 5);
    report.wahl = Some(desk.ledger.work(
        Pen::number(stress::wahl(coil.index()), 4),
        stress::WAHL,
        &[("C", &index)],
        &stress::WAHL_SOURCE,
    ));
    report.bergstrasser = Some(desk.ledger.work(
        Pen::number(stress::bergstrasser(coil.index()), 4),
        stress::BERGSTRASSER,
        &[("C", &index)],
        &stress::BERGSTRASSER_SOURCE,
    ));
}

fn turns(desk: &mut Desk<'_>, report: &mut CoilReport, coil: &Coil) {
    let (Some(turns), Some(dead)) = (coil.turns(), coil.drawing.dead()) else { return };
    let figure = desk.pen.doubted::<quantity::Turns>(turns.active(), dead.doubt());
    let number = |turns| quantity::write_number(turns, 4);
    let source = match coil.drawing.ends {
        Some(ends) if dead.doubt() > 0.0 => text!(
            "{}; a doubt of {} turn as a uniform half-width, from what ends do between plates",
            ends.source(),
            number(dead.half_width())
        ),
        _ => "turns as given".into(),
    };
    report.active_turns = Some(desk.ledger.work(
        figure,
        ACTIVE_TURNS,
        &[("nt", &number(turns.total())), ("nd", &number(turns.dead()))],
        &source,
    ));
}

fn solid_height(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let drawn = match (of.drawing.bar, of.turns(), of.drawing.ends) {
        (Some(bar), Some(turns), Some(ends)) => {
            let (_, greatest) = solid::stops(bar.nominal(), turns, ends);
            Some(show_stop(desk, bar.nominal(), turns, greatest))
        }
        _ => None,
    };
    let Some(given) = of.drawing.solid else {
        report.solid = drawn;
        return;
    };
    let figure = desk.pen.height(given.nominal());
    report.solid = Some(as_given::<Length>(desk, figure, letter!("Lc"), "the book's solid height"));
    report.solid_drawing = drawn;
}

/// A solid height by an authority's rule.
pub(crate) fn show_stop(desk: &mut Desk<'_>, bar: Length, turns: Turns, stop: Stop) -> Figure {
    let pen = desk.pen;
    desk.ledger.work(
        pen.height(stop.height),
        stop.rule.formula,
        &[("d", &pen.decimal(bar)), ("nt", &quantity::write_number(turns.total(), 4))],
        &stop.rule.source,
    )
}

fn rates(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let pen = desk.pen;
    let budget = propagation::drawn_rate(&of.drawing).ok();
    let drawn = match (of.diameters(), of.turns(), of.shear(), budget) {
        (Some(coil), Some(turns), Some(shear), Some(budget)) => {
            let figure = pen.doubted::<SpringRate>(budget.value, budget.doubt.value);
            let source = text!("{}; {}", rate::SOURCE, of.modulus.0);
            Some(desk.ledger.work(
                figure,
                rate::FORMULA,
                &[
                    ("G", &pen.say::<Modulus>(shear)),
                    ("d", &pen.decimal(coil.bar())),
                    ("D", &pen.decimal(coil.mean())),
                    ("n", &quantity::write_number(turns.active(), 4)),
                ],
                &source,
            ))
        }
        _ => None,
    };
    if let (Some(rate), Some(stated)) = (of.rate, of.drawing.stated_rate()) {
        let figure = pen.doubted::<SpringRate>(rate.value, rate.doubt().value);
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
        report.rate = Some(as_given::<SpringRate>(desk, figure, letter!("k"), &whose));
        report.rate_drawing = drawn;
        return;
    }
    report.rate = drawn;
}

fn helix(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let (Some(coil), Some(turns), Some(free), Some(pitch)) =
        (of.diameters(), of.turns(), of.free(), of.pitch())
    else {
        return;
    };
    let pen = desk.pen;
    let source = of.drawing.ends.map_or(solid::PITCH_FROM_SOLID_SOURCE, solid::pitch_source);
    let solid = of.solid().map_or(Length::default(), |solid| solid.greatest);
    report.pitch = Some(desk.ledger.work(
        pen.fine(pitch),
        solid::pitch_formula(of.drawing.ends),
        &[
            ("L0", &pen.decimal(free)),
            ("Lc", &pen.decimal(solid)),
            ("d", &pen.decimal(coil.bar())),
            ("n", &quantity::write_number(turns.active(), 4)),
        ],
        &source,
    ));

    let (Some(shear), Ok(poisson)) = (of.shear(), of.drawing.poisson()) else { return };
    let plain = rate::rate(shear, coil, turns);
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    let corrected = rate::corrected(plain, coil, pitch, poisson, of.ends_turn);
    report.rate_corrected = Some(desk.ledger.work(
        pen.figure::<SpringRate>(corrected),
        rate::corrected_formula(of.ends_turn),
        &[
            ("k0", &pen.say::<SpringRate>(plain)),
            ("C", &quantity::write_number(coil.index(), 4)),
            ("μ", &quantity::write_number(poisson, 3)),
            ("tα", &quantity::write_number(tangent, 4)),
        ],
        &rate::CORRECTED_SOURCE,
    ));
}

fn stress_at_solid(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let (Some(coil), Some(rate), Some(free), Some(solid)) =
        (of.diameters(), of.rate, of.free(), of.solid())
    else {
        return;
    };
    let pressed = Pressed { rate: rate.value, free, to: solid.least };
    report.stress_solid = Some(show_stress_at(desk, coil, pressed, Factor::Uncorrected));
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
    desk: &mut Desk<'_>,
    coil: Diameters,
    Pressed { rate, free, to }: Pressed,
    factor: Factor,
) -> Figure {
    let pen = desk.pen;
    let times = factor.at(coil.index());
    desk.ledger.work(
        pen.figure::<Stress>(stress::uncorrected(rate * (free - to), coil) * times),
        factor.formula_at_height(),
        &[
            (factor.sign(), &quantity::write_number(times, 5)),
            ("k", &pen.say::<SpringRate>(rate)),
            ("L0", &pen.decimal(free)),
            ("L", &pen.decimal(to)),
            ("D", &pen.decimal(coil.mean())),
            ("d", &pen.decimal(coil.bar())),
        ],
        &factor.source(),
    )
}

/// The stress of a coil under a load.
pub(crate) fn show_stress(
    desk: &mut Desk<'_>,
    coil: Diameters,
    load: quantity::Force,
    factor: Factor,
) -> Figure {
    let pen = desk.pen;
    let times = factor.at(coil.index());
    desk.ledger.work(
        pen.figure::<Stress>(stress::uncorrected(load, coil) * times),
        factor.formula(),
        &[
            (factor.sign(), &quantity::write_number(times, 5)),
            ("F", &pen.say::<quantity::Force>(load)),
            ("D", &pen.decimal(coil.mean())),
            ("d", &pen.decimal(coil.bar())),
        ],
        &factor.source(),
    )
}

//! What follows from the drawing of a coil, as far as the drawing goes.

use super::coil::Coil;
use super::desk::Desk;
use super::figures::{Pen, text};
use super::report::{CoilReport, Figure};
use crate::coil::ends::{Ends, Turns};
use crate::coil::solid::{self, Stop};
use crate::coil::stress::Factor;
use crate::coil::{Diameters, EndsTurn, rate, stress};
use crate::propagation;
use crate::quantity::{self, Length, Modulus, SpringRate, Stress};

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

pub(crate) fn as_given(
    desk: &mut Desk<'_>,
    figure: Figure,
    symbol: &'static str,
    whose: &str,
) -> Figure {
    let with = figure.text.clone();
    desk.ledger.show(figure, symbol, with, &whose)
}

fn index_and_factors(desk: &mut Desk<'_>, report: &mut CoilReport, coil: &Coil) {
    let Some(coil) = coil.diameters() else { return };
    let pen = desk.pen;
    let with = text!("{} / {}", pen.decimal(coil.mean()), pen.decimal(coil.bar()));
    let figure = Pen::number(coil.index(), 3);
    report.index = Some(desk.ledger.show(figure, "C = D / d", with, &GEOMETRY));
    let index = quantity::write_number(coil.index(), 5);
    report.wahl = Some(desk.ledger.show(
        Pen::number(stress::wahl(coil.index()), 4),
        "K = (4 C − 1) / (4 C − 4) + 0.615 / C",
        text!("C = {index}"),
        &stress::WAHL_SOURCE,
    ));
    report.bergstrasser = Some(desk.ledger.show(
        Pen::number(stress::bergstrasser(coil.index()), 4),
        "K = (4 C + 2) / (4 C − 3)",
        text!("C = {index}"),
        &stress::BERGSTRASSER_SOURCE,
    ));
}

fn turns(desk: &mut Desk<'_>, report: &mut CoilReport, coil: &Coil) {
    let (Some(turns), Some(dead)) = (coil.turns(), coil.drawing.dead()) else { return };
    let figure = desk.pen.doubted::<quantity::Turns>(turns.active(), dead.doubt());
    let number = |turns| quantity::write_number(turns, 4);
    let with = text!("{} − {}", number(turns.total()), number(turns.dead()));
    let source = match coil.drawing.ends {
        Some(ends) if dead.doubt() > 0.0 => text!(
            "{}; a doubt of {} turn as a uniform half-width, from what ends do between plates",
            ends.source(),
            number(dead.half_width())
        ),
        _ => "turns as given".into(),
    };
    report.active_turns = Some(desk.ledger.show(figure, "n = nt − dead turns", with, &source));
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
    report.solid = Some(as_given(desk, figure, "Lc", "the book's solid height"));
    report.solid_drawing = drawn;
}

/// A solid height by an authority's rule.
pub(crate) fn show_stop(desk: &mut Desk<'_>, bar: Length, turns: Turns, stop: Stop) -> Figure {
    let bars = quantity::write_number(stop.rule.bars(turns), 4);
    let with = text!("{} · {bars}", desk.pen.decimal(bar));
    let figure = desk.pen.height(stop.height);
    desk.ledger.show(figure, stop.rule.formula, with, &stop.rule.source)
}

fn rates(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let pen = desk.pen;
    let budget = propagation::drawn_rate(&of.drawing).ok();
    let drawn = match (of.diameters(), of.turns(), of.shear(), budget) {
        (Some(coil), Some(turns), Some(shear), Some(budget)) => {
            let with = text!(
                "{} · ({})⁴ / (8 · ({})³ · {})",
                pen.say::<Modulus>(shear),
                pen.decimal(coil.bar()),
                pen.decimal(coil.mean()),
                quantity::write_number(turns.active(), 4),
            );
            let figure = pen.doubted::<SpringRate>(budget.value, budget.doubt.value);
            let source = text!("{}; {}", rate::SOURCE, of.modulus.0);
            Some(desk.ledger.show(figure, "k = G · d⁴ / (8 · D³ · n)", with, &source))
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
        report.rate = Some(as_given(desk, figure, "k", &text!("{whose}{known}")));
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
    let lengths = text!(
        "L0 = {}, d = {}, n = {}",
        pen.decimal(free),
        pen.decimal(coil.bar()),
        quantity::write_number(turns.active(), 4)
    );
    let formula = match of.drawing.ends {
        Some(Ends::Open) => "p = (L0 − d) / n",
        Some(Ends::OpenGround) => "p = L0 / (n + 1)",
        Some(Ends::Closed) => "p = (L0 − 3 d) / n",
        Some(Ends::ClosedGround) => "p = (L0 − 2 d) / n",
        Some(Ends::TaperedGround) | None => "p = (L0 − Lc) / n + d",
    };
    report.pitch = Some(desk.ledger.show(pen.fine(pitch), formula, lengths, &source));

    let (Some(shear), Ok(poisson)) = (of.shear(), of.drawing.poisson()) else { return };
    let plain = rate::rate(shear, coil, turns);
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    let corrected = rate::corrected(plain, coil, pitch, poisson, of.ends_turn);
    let formula = match of.ends_turn {
        EndsTurn::Held => "k = k0 / (1 − 3/(16 C²) + (1/2 − ν) tan² α)",
        EndsTurn::Free => "k = k0 / (1 − 3/(16 C²) + (1 − ν)/(2 (1 + ν)) tan² α)",
    };
    let with = text!(
        "k0 = {}, C = {}, ν = {}, tan α = {}",
        pen.say::<SpringRate>(plain),
        quantity::write_number(coil.index(), 4),
        quantity::write_number(poisson, 3),
        quantity::write_number(tangent, 4),
    );
    report.rate_corrected = Some(desk.ledger.show(
        pen.figure::<SpringRate>(corrected),
        formula,
        with,
        &rate::CORRECTED_SOURCE,
    ));
}

fn stress_at_solid(desk: &mut Desk<'_>, report: &mut CoilReport, of: &Coil) {
    let (Some(coil), Some(rate), Some(free), Some(solid)) =
        (of.diameters(), of.rate, of.free(), of.solid())
    else {
        return;
    };
    let closes = rate.value * (free - solid.least);
    let from = closing_load(desk.pen, rate.value, free, solid.least);
    report.stress_solid = Some(show_stress(desk, coil, closes, Factor::Uncorrected, &from));
}

/// Where the load at solid comes from, for the working of a stress.
pub(crate) fn closing_load(pen: Pen, rate: SpringRate, free: Length, solid: Length) -> String {
    let rate = pen.say::<SpringRate>(rate);
    text!("; F = k · (L0 − Lc) = {rate} · ({} − {})", pen.decimal(free), pen.decimal(solid))
}

/// A stress at a load, times a factor that its working names and puts in.
pub(crate) fn show_stress(
    desk: &mut Desk<'_>,
    coil: Diameters,
    load: quantity::Force,
    factor: Factor,
    from: &str,
) -> Figure {
    let pen = desk.pen;
    let times = factor.at(coil.index());
    let figure = pen.figure::<Stress>(stress::uncorrected(load, coil) * times);
    let times =
        if times > 1.0 { text!("{} · ", quantity::write_number(times, 4)) } else { String::new() };
    let with = text!(
        "{times}8 · {} · {} / (π · ({})³){from}",
        pen.say::<quantity::Force>(load),
        pen.decimal(coil.mean()),
        pen.decimal(coil.bar())
    );
    desk.ledger.show(figure, factor.formula(), with, &factor.source())
}

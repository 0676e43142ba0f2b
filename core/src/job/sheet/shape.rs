//! Sizes, pitch, growth, bar and mass.

use crate::coil::DiameterKind;
use crate::coil::ends::Ends;
use crate::coil::{Diameters, bar, gaps, growth, solid};
use crate::formula::Value;
use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::drawing::{GEOMETRY, as_given, show_stop};
use crate::job::figures::{Format, text};
use crate::job::formulas::{self, letter};
use crate::job::report::Sheet;
use crate::quantity::{self, Length, Mass};

pub(super) fn fill(context: &mut Context<'_>, sheet: &mut Sheet, drawn: &Coil) {
    let format = context.format;
    if let Some(free) = drawn.free() {
        sheet.free = Some(as_given::<Length>(
            context,
            format.height(free),
            letter!("L0"),
            "the book's free height",
        ));
    }
    // A solid height that the book gives stands alone; where authorities differ, both are shown.
    if let (Some(bar), Some(turns), Some(ends), Some(solid)) =
        (drawn.drawing.bar, drawn.turns(), drawn.drawing.ends, drawn.solid())
        && solid.least < solid.greatest
    {
        let (least, _) = solid::stops(bar.nominal(), turns, ends);
        sheet.solid_least = Some(show_stop(context, bar.nominal(), turns, least));
    }
    if let (Some(free), Some(solid)) = (drawn.free(), drawn.solid()) {
        sheet.travel = Some(context.ledger.work(
            format.height(free - solid.greatest),
            formulas::TRAVEL,
            &[("L0", &format.decimal(free)), ("Lc", &format.decimal(solid.greatest))],
            "definition",
        ));
    }
    if let Some(coil) = drawn.diameters() {
        let given = drawn.drawing.diameter.map(|(across, _)| across);
        diameters(context, sheet, coil, given);
        helix(context, sheet, drawn, coil);
        let duty = drawn.duty.map_or(gaps::Duty::Static, |_| gaps::Duty::Dynamic);
        least_gaps(context, sheet, drawn, coil, duty);
    }
}

fn diameters(
    context: &mut Context<'_>,
    sheet: &mut Sheet,
    coil: Diameters,
    given: Option<DiameterKind>,
) {
    let format = context.format;
    sheet.bar =
        Some(as_given::<Length>(context, format.size(coil.bar()), letter!("d"), "the drawing"));
    let [bar, mean, outside, inside] =
        [coil.bar(), coil.mean(), coil.outside(), coil.inside()].map(|size| format.decimal(size));
    let sizes: [Value<'_>; 4] = [("d", &bar), ("D", &mean), ("De", &outside), ("Di", &inside)];
    let mut show = |across, letter, size, formula| {
        let figure = format.size(size);
        Some(if given == Some(across) {
            as_given::<Length>(context, figure, letter, "the drawing")
        } else {
            context.ledger.work(figure, formula, &sizes, GEOMETRY)
        })
    };
    let from = if given == Some(DiameterKind::Inside) {
        formulas::MEAN_OF_INSIDE
    } else {
        formulas::MEAN_OF_OUTSIDE
    };
    sheet.mean = show(DiameterKind::Mean, letter!("D"), coil.mean(), from);
    sheet.outside = show(DiameterKind::Outside, letter!("De"), coil.outside(), formulas::OUTSIDE);
    sheet.inside = show(DiameterKind::Inside, letter!("Di"), coil.inside(), formulas::INSIDE);
}

fn helix(context: &mut Context<'_>, sheet: &mut Sheet, drawn: &Coil, coil: Diameters) {
    let Some(pitch) = drawn.pitch() else { return };
    let format = context.format;
    let [p, d, mean] = [pitch, coil.bar(), coil.mean()].map(|size| format.decimal(size));
    let sizes: [Value<'_>; 3] = [("p", &p), ("d", &d), ("D", &mean)];
    sheet.pitch_angle = Some(context.ledger.work(
        Format::angle(bar::pitch_angle(coil, pitch)),
        bar::PITCH_ANGLE,
        &sizes,
        "geometry of the helix",
    ));
    sheet.growth_held = Some(context.ledger.work(
        format.fine(growth::held(coil, pitch, coil.bar())),
        growth::HELD,
        &sizes,
        &growth::HELD_SOURCE,
    ));
    sheet.growth_free = Some(context.ledger.work(
        format.fine(growth::free_at_solid(coil, pitch)),
        growth::FREE,
        &sizes,
        &growth::FREE_SOURCE,
    ));
    let Some(turns) = drawn.turns() else { return };
    let length = bar::whole(coil, pitch, turns, drawn.drawing.ends);
    let counted = |turns| quantity::write_number(turns, 4);
    let open = drawn.drawing.ends == Some(Ends::OpenGround);
    let formula = if open { bar::LENGTH_OPEN_GROUND } else { bar::LENGTH };
    let [nt, n] = [turns.total(), turns.active()].map(counted);
    sheet.bar_length = Some(context.ledger.work(
        format.height(length),
        formula,
        &[("nt", &nt), ("n", &n), ("D", &mean), ("p", &p), ("d", &d)],
        &bar::SOURCE,
    ));
    let steel = drawn.steel;
    if let Some((steel, density)) = steel.and_then(|steel| Some((steel, steel.density()?))) {
        let figure = format.figure::<Mass>(bar::mass(coil, length, density.value));
        let source = text!("{}; density: {}", bar::SOURCE, density.source);
        let figure = context.ledger.work(
            figure,
            bar::MASS,
            &[
                ("ρ", &format.say::<quantity::MassDensity>(density.value)),
                ("d", &d),
                ("l", &format.decimal(length)),
            ],
            source,
        );
        sheet.mass = Some(context.ledger.cite(figure, steel.row()));
    }
}

/// Between two loads that come again and again, the standard asks for more.
fn least_gaps(
    context: &mut Context<'_>,
    sheet: &mut Sheet,
    drawn: &Coil,
    coil: Diameters,
    duty: gaps::Duty,
) {
    let (Some(turns), Some(coiling)) = (drawn.turns(), drawn.drawing.coiling) else { return };
    let format = context.format;
    let gap: Length = gaps::least(coil, turns, coiling, duty);
    let [d, mean] = [coil.bar(), coil.mean()].map(|size| format.decimal(size));
    let n = quantity::write_number(turns.active(), 4);
    sheet.least_gaps = Some(context.ledger.work(
        format.fine(gap),
        gaps::formula(coiling, duty),
        &[("n", &n), ("D", &mean), ("d", &d)],
        &gaps::SOURCE,
    ));
    if let Some(solid) = drawn.solid() {
        sheet.least_height = Some(context.ledger.work(
            format.height(gaps::least_height(solid.greatest, gap)),
            gaps::LEAST_HEIGHT,
            &[("Lc", &format.decimal(solid.greatest)), ("Sa", &format.decimal(gap))],
            &gaps::SOURCE,
        ));
    }
}

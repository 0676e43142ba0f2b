//! Sizes, pitch, growth, bar and mass.

use crate::coil::Across;
use crate::coil::ends::Ends;
use crate::coil::{Coiling, Diameters, bar, gaps, growth, solid};
use crate::job::coil::Coil;
use crate::job::desk::Desk;
use crate::job::drawing::{GEOMETRY, as_given, show_stop};
use crate::job::figures::{Pen, text};
use crate::job::report::Sheet;
use crate::quantity::{self, Length, Mass};

pub(super) fn fill(desk: &mut Desk<'_>, sheet: &mut Sheet, drawn: &Coil) {
    let pen = desk.pen;
    if let Some(free) = drawn.free() {
        sheet.free = Some(as_given(desk, pen.height(free), "L0", "the book's free height"));
    }
    // A solid height that the book gives stands alone; where authorities differ, both are shown.
    if let (Some(bar), Some(turns), Some(ends), Some(solid)) =
        (drawn.drawing.bar, drawn.turns(), drawn.drawing.ends, drawn.solid())
        && solid.least < solid.greatest
    {
        let (least, _) = solid::stops(bar.nominal(), turns, ends);
        sheet.solid_least = Some(show_stop(desk, bar.nominal(), turns, least));
    }
    if let (Some(free), Some(solid)) = (drawn.free(), drawn.solid()) {
        let with = text!("{} − {}", pen.decimal(free), pen.decimal(solid.greatest));
        let figure = pen.height(free - solid.greatest);
        sheet.travel = Some(desk.ledger.show(figure, "travel = L0 − Lc", with, &"definition"));
    }
    if let Some(coil) = drawn.diameters() {
        let given = drawn.drawing.diameter.map(|(across, _)| across);
        diameters(desk, sheet, coil, given);
        helix(desk, sheet, drawn, coil);
        let duty = drawn.duty.map_or(gaps::Duty::Static, |_| gaps::Duty::Dynamic);
        least_gaps(desk, sheet, drawn, coil, duty);
    }
}

fn diameters(desk: &mut Desk<'_>, sheet: &mut Sheet, coil: Diameters, given: Option<Across>) {
    let pen = desk.pen;
    sheet.bar = Some(as_given(desk, pen.size(coil.bar()), "d", "the drawing"));
    let [bar, mean, outside, inside] =
        [coil.bar(), coil.mean(), coil.outside(), coil.inside()].map(|size| pen.decimal(size));
    let mut show = |across, symbol, size, formula, with| {
        let figure = pen.size(size);
        Some(if given == Some(across) {
            as_given(desk, figure, symbol, "the drawing")
        } else {
            desk.ledger.show(figure, formula, with, &GEOMETRY)
        })
    };
    let (formula, with) = match given {
        Some(Across::Inside) => ("D = Di + d", text!("{inside} + {bar}")),
        _ => ("D = De − d", text!("{outside} − {bar}")),
    };
    sheet.mean = show(Across::Mean, "D", coil.mean(), formula, with);
    let with = text!("{mean} + {bar}");
    sheet.outside = show(Across::Outside, "De", coil.outside(), "De = D + d", with);
    let with = text!("{mean} − {bar}");
    sheet.inside = show(Across::Inside, "Di", coil.inside(), "Di = D − d", with);
}

fn helix(desk: &mut Desk<'_>, sheet: &mut Sheet, drawn: &Coil, coil: Diameters) {
    let Some(pitch) = drawn.pitch() else { return };
    let pen = desk.pen;
    let [p, d, mean] = [pitch, coil.bar(), coil.mean()].map(|size| pen.decimal(size));
    sheet.pitch_angle = Some(desk.ledger.show(
        Pen::angle(bar::pitch_angle(coil, pitch)),
        "tan α = p / (π · D)",
        text!("{p} / (π · {mean})"),
        &"geometry of the helix",
    ));
    sheet.growth_held = Some(desk.ledger.show(
        pen.fine(growth::held(coil, pitch, coil.bar())),
        "ΔD = √(D² + (p² − d²)/π²) − D",
        text!("√(({mean})² + (({p})² − ({d})²)/π²) − {mean}"),
        &growth::HELD_SOURCE,
    ));
    sheet.growth_free = Some(desk.ledger.show(
        pen.fine(growth::free_at_solid(coil, pitch)),
        "ΔDe = 0.1 · (p² − 0.8 p d − 0.2 d²) / D",
        text!("p = {p}, d = {d}, D = {mean}"),
        &growth::FREE_SOURCE,
    ));
    let Some(turns) = drawn.turns() else { return };
    let length = bar::whole(coil, pitch, turns, drawn.drawing.ends);
    let counted = |turns| quantity::write_number(turns, 4);
    let (formula, with) = if drawn.drawing.ends == Some(Ends::OpenGround) {
        let nt = counted(turns.total());
        ("l = nt · √((π · D)² + p²)", text!("{nt} · √((π · {mean})² + ({p})²)"))
    } else {
        let [n, dead] = [turns.active(), turns.dead()].map(counted);
        (
            "l = n · √((π · D)² + p²) + (nt − n) · √((π · D)² + d²)",
            text!("{n} · √((π · {mean})² + ({p})²) + {dead} · √((π · {mean})² + ({d})²)"),
        )
    };
    sheet.bar_length = Some(desk.ledger.show(pen.height(length), formula, with, &bar::SOURCE));
    let steel = drawn.steel;
    if let Some((steel, density)) = steel.and_then(|steel| Some((steel, steel.density()?))) {
        let with = text!(
            "{} · π/4 · ({d})² · {}",
            pen.say::<quantity::MassDensity>(density.value),
            pen.decimal(length)
        );
        let figure = pen.figure::<Mass>(bar::mass(coil, length, density.value));
        let source = text!("{}; density: {}", bar::SOURCE, density.source);
        let figure = desk.ledger.show(figure, "m = ρ · π/4 · d² · l", with, &source);
        sheet.mass = Some(desk.ledger.cite(figure, steel.row()));
    }
}

/// Between two loads that come again and again, the standard asks for more.
fn least_gaps(
    desk: &mut Desk<'_>,
    sheet: &mut Sheet,
    drawn: &Coil,
    coil: Diameters,
    duty: gaps::Duty,
) {
    let (Some(turns), Some(coiling)) = (drawn.turns(), drawn.drawing.coiling) else { return };
    let pen = desk.pen;
    let gap: Length = gaps::least(coil, turns, coiling, duty);
    let [d, mean] = [coil.bar(), coil.mean()].map(|size| pen.decimal(size));
    let n = quantity::write_number(turns.active(), 4);
    let cold = text!("{n} · (0.0015 · ({mean})²/{d} + 0.1 · {d})");
    let hot = text!("0.02 · {n} · ({mean} + {d})");
    let (formula, with) = match (coiling, duty) {
        (Coiling::Cold, gaps::Duty::Static) => ("Sa = n · (0.0015 · D²/d + 0.1 · d)", cold),
        (Coiling::Cold, gaps::Duty::Dynamic) => {
            ("Sa = 1.5 · n · (0.0015 · D²/d + 0.1 · d)", text!("1.5 · {cold}"))
        }
        (Coiling::Hot, gaps::Duty::Static) => ("Sa = 0.02 · n · (D + d)", hot),
        (Coiling::Hot, gaps::Duty::Dynamic) => ("Sa = 2 · 0.02 · n · (D + d)", text!("2 · {hot}")),
    };
    sheet.least_gaps = Some(desk.ledger.show(pen.fine(gap), formula, with, &gaps::SOURCE));
    if let Some(solid) = drawn.solid() {
        let with = text!("{} + {}", pen.decimal(solid.greatest), pen.decimal(gap));
        let figure = pen.height(gaps::least_height(solid.greatest, gap));
        sheet.least_height = Some(desk.ledger.show(figure, "Ln = Lc + Sa", with, &gaps::SOURCE));
    }
}

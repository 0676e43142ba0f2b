//! Whether a coil bends aside, how stiff it is sideways, and how fast it swings within itself.

use super::Whole;
use crate::coil::buckling::Seating;
use crate::coil::solid::Solid;
use crate::coil::{bar, buckling, lateral, surge};
use crate::job::desk::Desk;
use crate::job::figures::{Pen, text};
use crate::job::report::{Buckling, Sheet};
use crate::quantity::{self, Mass, SpringRate};

pub(super) fn fill(desk: &mut Desk<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    if let Ok(poisson) = whole.drawn.drawing.poisson() {
        sheet.buckling = Some(column(desk, whole, poisson));
        lateral_rate(desk, sheet, whole, poisson);
    }
    first_frequency(desk, sheet, whole);
}

fn column(desk: &mut Desk<'_>, whole: &Whole<'_>, poisson: f64) -> Buckling {
    let pen = desk.pen;
    let Whole { coil, free, solid: Solid { greatest: solid, .. }, .. } = *whole;
    let seating = whole.drawn.seating.unwrap_or(Seating::Guided);
    let nu = quantity::write_number(seating.coefficient(), 3);
    let ratio = quantity::write_number(poisson, 3);
    let [l0, mean] = [free, coil.mean()].map(|size| pen.decimal(size));
    let slenderness = desk.ledger.show(
        Pen::number(buckling::slenderness(coil, free), 3),
        "λ = L0 / D",
        text!("{l0} / {mean}"),
        &"definition",
    );
    let stable = buckling::stable_free_height(coil, seating, poisson);
    let stable_free = desk.ledger.show(
        pen.height(stable),
        "L0 = (π · D/ν) · √((1 − γ)/(0.5 + γ)), γ = 1/(2 (1 + μ))",
        text!("D = {mean}, ν = {nu}, μ = {ratio}"),
        &buckling::SOURCE,
    );
    let at = buckling::deflection(coil, free, seating, poisson).map(|deflection| free - deflection);
    let height = at.filter(|height| *height > solid);
    let kept = kept(seating);
    let sentence = match height {
        None => text!("With {kept} it does not bend aside before it is solid."),
        Some(height) => text!(
            "With {kept} it bends aside at {}: guide it inside or outside, or keep it higher.",
            pen.height(height).text
        ),
    };
    let height = height.map(|height| {
        desk.ledger.show(
            pen.height(height),
            "Lk = L0 − L0 · 0.5/(1 − γ) · (1 − √(1 − (1 − γ)/(0.5 + γ) · (π · D/(ν · L0))²))",
            text!("L0 = {l0}, D = {mean}, ν = {nu}, μ = {ratio}"),
            &buckling::SOURCE,
        )
    });
    Buckling { slenderness, stable_free, height, sentence }
}

fn kept(seating: Seating) -> &'static str {
    match seating {
        Seating::Guided => "both ends squarely on plates that stay parallel",
        Seating::OnePivoted => "one end squarely on its plate and the other on a pivot",
        Seating::BothPivoted => "both ends on pivots",
        Seating::Sliding => "its ends on parallel plates that may slide sideways",
        Seating::OneFree => "one end fixed and the other free",
    }
}

fn lateral_rate(desk: &mut Desk<'_>, sheet: &mut Sheet, whole: &Whole<'_>, poisson: f64) {
    let pen = desk.pen;
    let half = (whole.free - whole.solid.greatest) * 0.5;
    let Ok(rate) = lateral::rate(whole.rate, whole.coil, whole.free, half, poisson) else { return };
    // A column past its bending point has no sideways rate.
    if rate.value <= 0.0 {
        return;
    }
    let with = text!(
        "R = {}, s = {}, L0 = {}, D = {}, μ = {}",
        pen.say::<SpringRate>(whole.rate),
        pen.decimal(half),
        pen.decimal(whole.free),
        pen.decimal(whole.coil.mean()),
        quantity::write_number(poisson, 3)
    );
    sheet.lateral_rate = Some(desk.ledger.show(
        pen.figure::<SpringRate>(rate),
        "RQ = R · ξ / (ξ − 1 + a · tan(λ ξ a) / (λ · (½ + γ))), a = √((½ + γ) · (γ + (1 − ξ)/ξ)), ξ = s/L0, λ = L0/D",
        with,
        &lateral::SOURCE,
    ));
}

fn first_frequency(desk: &mut Desk<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    let steel = whole.drawn.steel;
    let (Some(density), Some(pitch)) =
        (steel.and_then(|steel| steel.density()), whole.drawn.pitch())
    else {
        return;
    };
    let pen = desk.pen;
    let length = bar::length(whole.coil, pitch, whole.turns.active());
    let mass = bar::mass(whole.coil, length, density.value);
    let with = text!("½ · √({} / {})", pen.say::<SpringRate>(whole.rate), pen.say::<Mass>(mass));
    let figure = desk.ledger.show(
        Pen::frequency(surge::first(whole.rate, mass, surge::Kept::Both)),
        "f = ½ · √(R / m), m of the active turns",
        with,
        &surge::SOURCE,
    );
    sheet.surge = Some(desk.ledger.cite(figure, steel.and_then(|steel| steel.row())));
}

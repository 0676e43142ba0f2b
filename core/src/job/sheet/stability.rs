//! Whether a coil bends aside, how stiff it is sideways, and how fast it swings within itself.

use super::Whole;
use crate::coil::buckling::Seating;
use crate::coil::solid::Solid;
use crate::coil::{bar, buckling, lateral, surge};
use crate::formula::Value;
use crate::job::context::Context;
use crate::job::figures::{Format, text};
use crate::job::report::{Buckling, Sheet};

use crate::quantity::{self, Mass, SpringRate, System};

pub(super) fn fill(context: &mut Context<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    if let Ok(poisson) = whole.drawn.drawing.poisson() {
        sheet.buckling = Some(column(context, whole, poisson));
        lateral_rate(context, sheet, whole, poisson);
    }
    first_frequency(context, sheet, whole);
}

fn column(context: &mut Context<'_>, whole: &Whole<'_>, poisson: f64) -> Buckling {
    let format = context.format;
    let Whole { coil, free, solid: Solid { greatest: solid, .. }, .. } = *whole;
    let seating = whole.drawn.seating.unwrap_or(Seating::Guided);
    let nu = quantity::write_number(seating.coefficient(), 5);
    let gamma = quantity::write_number(buckling::shear_over_youngs(poisson), 5);
    let [l0, mean] = [free, coil.mean()].map(|size| format.decimal(size));
    let values: [Value<'_>; 4] = [("L0", &l0), ("D", &mean), ("ν", &nu), ("γ", &gamma)];
    let slenderness = context.ledger.work(
        Format::number(buckling::slenderness(coil, free), 3),
        buckling::SLENDERNESS,
        &values,
        "definition",
    );
    let stable = buckling::stable_free_height(coil, seating, poisson);
    let stable_free =
        context.ledger.work(format.height(stable), buckling::STABLE, &values, &buckling::SOURCE);
    let at = buckling::deflection(coil, free, seating, poisson).map(|deflection| free - deflection);
    let height = at.filter(|height| *height > solid);
    let kept = kept(seating);
    let sentence = match height {
        None => text!("With {kept} it does not bend aside before it is solid."),
        Some(height) => text!(
            "With {kept} it bends aside at {}: guide it inside or outside, or keep it higher.",
            format.height(height).text
        ),
    };
    let height = height.map(|height| {
        context.ledger.work(format.height(height), buckling::HEIGHT, &values, &buckling::SOURCE)
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

fn lateral_rate(context: &mut Context<'_>, sheet: &mut Sheet, whole: &Whole<'_>, poisson: f64) {
    let format = context.format;
    let half = (whole.free - whole.solid.greatest) * 0.5;
    let Ok(rate) = lateral::rate(whole.rate, whole.coil, whole.free, half, poisson) else { return };
    // A column past its bending point has no sideways rate.
    if rate.value <= 0.0 {
        return;
    }
    let pressed = (half / whole.free).value;
    let [xi, eta, lambda, gamma] = [
        pressed,
        lateral::bend(pressed, poisson),
        buckling::slenderness(whole.coil, whole.free),
        buckling::shear_over_youngs(poisson),
    ]
    .map(|number| quantity::write_number(number, 7));
    sheet.lateral_rate = Some(context.ledger.work(
        format.figure::<SpringRate>(rate),
        lateral::FORMULA,
        &[
            ("k", &format.say::<SpringRate>(whole.rate)),
            ("ξ", &xi),
            ("η", &eta),
            ("λ", &lambda),
            ("γ", &gamma),
        ],
        &lateral::SOURCE,
    ));
}

fn first_frequency(context: &mut Context<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    let steel = whole.drawn.steel;
    let (Some(density), Some(pitch)) =
        (steel.and_then(|steel| steel.density()), whole.drawn.pitch())
    else {
        return;
    };
    let format = context.format;
    let length = bar::length(whole.coil, pitch, whole.turns.active());
    let mass = bar::mass(whole.coil, length, density.value);
    // Of pounds and pounds to the inch it takes gravity to make a frequency.
    let formula = match format.system {
        System::Inch => surge::FIRST_IN_POUNDS,
        System::Metric => surge::FIRST,
    };
    let figure = context.ledger.work(
        Format::frequency(surge::first(whole.rate, mass, surge::Kept::Both)),
        formula,
        &[
            ("k", &format.say::<SpringRate>(whole.rate)),
            ("g0", &"386.09 in/s²"),
            ("ma", &format.say::<Mass>(mass)),
        ],
        &surge::SOURCE,
    );
    sheet.surge = Some(context.ledger.cite(figure, steel.and_then(|steel| steel.row())));
}

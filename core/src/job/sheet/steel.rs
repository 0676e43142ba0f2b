//! The steel of a coil, as the tables have it.

use crate::formula::Formula;
use crate::job::coil::Coil;
use crate::job::desk::Desk;
use crate::job::figures::Shown;
use crate::job::formulas;
use crate::job::report::{Figure, SteelRow};
use crate::quantity::{MassDensity, Modulus};
use crate::source::Sourced;

pub(super) fn row(desk: &mut Desk<'_>, drawn: &Coil) -> Option<SteelRow> {
    let steel = drawn.steel?;
    let row = steel.row();
    let doubt = steel.shear_doubt().map_or(0.0, |doubt| doubt.value.value);
    Some(SteelRow {
        id: steel.id(),
        name: steel.name(),
        row,
        shear_modulus: tabled::<Modulus>(
            desk,
            row,
            formulas::SHEAR_MODULUS,
            steel.shear_modulus(),
            doubt,
        ),
        youngs_modulus: tabled::<Modulus>(
            desk,
            row,
            formulas::YOUNGS_MODULUS,
            steel.youngs_modulus(),
            0.0,
        ),
        density: steel
            .density()
            .map(|density| tabled::<MassDensity>(desk, row, formulas::DENSITY, density, 0.0)),
    })
}

fn tabled<K: Shown>(
    desk: &mut Desk<'_>,
    row: Option<&'static str>,
    (formula, sign): (Formula, &'static str),
    number: Sourced<K::Value>,
    doubt: f64,
) -> Figure {
    let figure = desk.pen.doubted::<K>(number.value, doubt);
    let by_table = figure.text.clone();
    let figure = desk.ledger.work(figure, formula, &[(sign, &by_table)], &number.source);
    desk.ledger.cite(figure, row)
}

//! The steel of a coil, as the tables have it.

use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::figures::Shown;
use crate::job::formulas::{Letter, letter};
use crate::job::report::{Figure, SteelRow};
use crate::quantity::{MassDensity, Modulus};
use crate::source::Sourced;

pub(super) fn row(context: &mut Context<'_>, drawn: &Coil) -> Option<SteelRow> {
    let steel = drawn.steel?;
    let row = steel.row();
    let doubt = steel.shear_doubt().map_or(0.0, |doubt| doubt.value.value);
    Some(SteelRow {
        id: steel.id().into(),
        name: steel.name().into(),
        row: row.map(Into::into),
        shear_modulus: tabled::<Modulus>(context, row, letter!("G"), steel.shear_modulus(), doubt),
        youngs_modulus: tabled::<Modulus>(context, row, letter!("E"), steel.youngs_modulus(), 0.0),
        density: steel
            .density()
            .map(|density| tabled::<MassDensity>(context, row, letter!("ρ"), density, 0.0)),
    })
}

fn tabled<K: Shown>(
    context: &mut Context<'_>,
    row: Option<&'static str>,
    (formula, sign): Letter,
    number: Sourced<K::Value>,
    doubt: f64,
) -> Figure {
    let figure = context.format.doubted::<K>(number.value, doubt);
    let by_table = context.format.exact::<K>(number.value);
    let figure = context.ledger.work(figure, formula, &[(sign, &by_table)], &number.source);
    context.ledger.cite(figure, row)
}

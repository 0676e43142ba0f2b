//! The steel of a coil, as the tables have it.

use crate::job::desk::Desk;
use crate::job::drawing::Drawn;
use crate::job::figures::Shown;
use crate::job::report::{Figure, SteelRow};
use crate::quantity::{MassDensity, Modulus};
use crate::source::Sourced;

pub(super) fn row(desk: &mut Desk<'_>, drawn: &Drawn) -> Option<SteelRow> {
    let steel = drawn.moduli.as_ref()?.steel?;
    let shear = steel.shear_modulus();
    let doubt = steel.shear_doubt().map_or(0.0, |doubt| doubt.value.value);
    let figure = desk.pen.doubted::<Modulus>(shear.value, doubt);
    let with = figure.text.clone();
    Some(SteelRow {
        id: steel.id(),
        name: steel.name(),
        row: steel.row(),
        shear_modulus: desk.ledger.show(figure, "G", with, &shear.source),
        youngs_modulus: tabled::<Modulus>(desk, "E", steel.youngs_modulus()),
        density: steel.density().map(|density| tabled::<MassDensity>(desk, "ρ", density)),
    })
}

fn tabled<K: Shown>(
    desk: &mut Desk<'_>,
    symbol: &'static str,
    number: Sourced<K::Value>,
) -> Figure {
    let figure = desk.pen.figure::<K>(number.value);
    let with = figure.text.clone();
    desk.ledger.show(figure, symbol, with, &number.source)
}

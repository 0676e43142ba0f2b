//! Figures as a maker writes them, where that is in other units than the job's.

use crate::job::context::Context;
use crate::job::field::{Field, Reads};
use crate::job::figures::text;
use crate::job::input::{Drawing, LoadEntry};
use crate::job::tolerance;
use crate::quantity::{Length, System};
use crate::reading;

/// The figures of a drawing that are written in the units of the other system, each with its tolerance.
#[derive(Clone, Debug, Default)]
pub(super) struct Quoted {
    pub(super) bar: Option<String>,
    pub(super) diameter: Option<String>,
    pub(super) free: Option<String>,
    pub(super) solid: Option<String>,
    pub(super) rate: Option<String>,
    /// Each at its height.
    loads: Vec<(Length, String)>,
}

impl Quoted {
    pub(super) fn of(context: &Context<'_>, drawing: &Drawing) -> Self {
        let system = context.system();
        let within = drawing.tolerances.given().cloned().unwrap_or_default();
        let sizes = [drawing.outside(), drawing.mean(), drawing.inside()];
        let loads = drawing.loads.given().map_or(&[][..], |loads| loads.0.as_slice());
        Self {
            bar: quote(drawing.bar(), within.bar(), system),
            diameter: sizes.into_iter().find_map(|size| quote(size, within.diameter(), system)),
            free: quote(drawing.free(), within.free(), system),
            solid: quote(drawing.solid(), within.solid(), system),
            rate: quote(drawing.rate(), within.rate(), system),
            loads: loads.iter().filter_map(|row| load(context, row.given()?)).collect(),
        }
    }

    /// The load at a height.
    pub(super) fn load(&self, at: Length) -> Option<&String> {
        let same = |height: Length| (height - at).abs().value < 1e-9;
        self.loads.iter().find(|(height, _)| same(*height)).map(|(_, text)| text)
    }
}

fn load(context: &Context<'_>, row: &LoadEntry) -> Option<(Length, String)> {
    let system = context.system();
    let at = row.height().value(system)?;
    let quoted = quote(row.load(), row.tolerance(), system);
    let height = row.height().written();
    if reading::written_in(height).is_none_or(|of| of == system) {
        return Some((at, quoted?));
    }
    let load = quoted.unwrap_or_else(|| with_unit(row.load(), system));
    Some((at, text!("{load} at {height}")))
}

/// A figure with its tolerance, where one of them is in a unit of the other system; both with the unit
/// spelt out where they are bare.
fn quote<K: Reads, T: Reads>(
    figure: Field<'_, K>,
    tolerance: Field<'_, T>,
    system: System,
) -> Option<String> {
    let is_other = |part: &str| figure.kind.written_in(part).is_some_and(|of| of != system);
    if !is_other(figure.written()) && !tolerance::any_part(tolerance.written(), is_other) {
        return None;
    }
    let figure = with_unit(figure, system);
    if tolerance.written().is_empty() {
        return Some(figure);
    }
    Some(text!("{figure} {}", tolerance::signed(&with_unit(tolerance, system))))
}

fn with_unit<K: Reads>(field: Field<'_, K>, system: System) -> String {
    field.spelt(system).unwrap_or_else(|| field.written().to_owned())
}

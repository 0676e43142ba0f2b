//! Figures as a maker writes them, where that is in other units than the job's.

use crate::bounds::{self, Bound};
use crate::job::desk::Desk;
use crate::job::entry::{Entry, Text};
use crate::job::figures::text;
use crate::job::input::{Drawing, LoadEntry};
use crate::job::problem::Path;
use crate::job::tolerance;
use crate::quantity::{self, Length, System, Written};
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
    pub(super) fn of(desk: &Desk<'_>, drawing: &Drawing) -> Self {
        let system = desk.system();
        let within = drawing.tolerances.given().cloned().unwrap_or_default();
        let length = |figure: &Entry<Text>, tolerance: &Entry<Text>| {
            let is_other = |text: &str| reading::written_in(text).is_some_and(|of| of != system);
            let spelt = [
                reading::spell_unit(figure.written(), system),
                tolerance::spell_length(tolerance.written(), system),
            ];
            quote(figure, tolerance, spelt, is_other)
        };
        let sizes = [&drawing.outside, &drawing.mean, &drawing.inside];
        Self {
            bar: length(&drawing.bar, &within.bar),
            diameter: sizes.into_iter().find_map(|size| length(size, &within.diameter)),
            free: length(&drawing.free, &within.free),
            solid: length(&drawing.solid, &within.solid),
            rate: other(&drawing.rate, &within.rate, system, &bounds::RATE),
            loads: drawing.loads.given().map_or_else(Vec::new, |loads| {
                loads.0.iter().filter_map(|row| load(desk, row.given()?)).collect()
            }),
        }
    }

    /// The load at a height.
    pub(super) fn load(&self, at: Length) -> Option<&String> {
        let same = |height: Length| (height - at).abs().value < 1e-9;
        self.loads.iter().find(|(height, _)| same(*height)).map(|(_, text)| text)
    }
}

fn load(desk: &Desk<'_>, row: &LoadEntry) -> Option<(Length, String)> {
    let system = desk.system();
    let height = row.height.written();
    // What is wrong with it is said elsewhere.
    let mut again = Desk::new(desk.tables, desk.pen);
    let at = again.length(&Path::of(""), "", &row.height, &bounds::HEIGHT)?;
    let load = other(&row.load, &row.tolerance, system, &bounds::LOAD);
    if reading::written_in(height).is_none_or(|of| of == system) {
        return Some((at, load?));
    }
    let spelt = quantity::spell_unit(row.load.written(), system, &bounds::LOAD);
    let load = load.or(spelt).unwrap_or_else(|| row.load.written().to_owned());
    Some((at, text!("{load} at {height}")))
}

fn other<K: Written>(
    figure: &Entry<Text>,
    tolerance: &Entry<Text>,
    system: System,
    bound: &'static Bound<K>,
) -> Option<String> {
    let is_other = |text: &str| quantity::written_in(text, bound).is_some_and(|of| of != system);
    let spelt = [
        quantity::spell_unit(figure.written(), system, bound),
        tolerance::spell_quantity(tolerance.written(), system, bound),
    ];
    quote(figure, tolerance, spelt, is_other)
}

/// A figure with its tolerance, where one of them is in a unit of the other system; both with the unit
/// spelt out where they are bare.
fn quote(
    figure: &Entry<Text>,
    tolerance: &Entry<Text>,
    [figure_spelt, tolerance_spelt]: [Option<String>; 2],
    is_other: impl Fn(&str) -> bool,
) -> Option<String> {
    let (figure, tolerance) = (figure.written(), tolerance.written());
    if !is_other(figure) && !tolerance::any_part(tolerance, &is_other) {
        return None;
    }
    let figure = figure_spelt.unwrap_or_else(|| figure.to_owned());
    if tolerance.is_empty() {
        return Some(figure);
    }
    let tolerance = tolerance_spelt.unwrap_or_else(|| tolerance.to_owned());
    Some(text!("{figure} {}", tolerance::signed(&tolerance)))
}

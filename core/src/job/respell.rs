//! A change of system that changes no meaning: every bare number gets its unit spelt out first.

use super::entry::{Expected, Text};
use super::problem::Path;
use super::report::Edit;
use super::tolerance;
use crate::bounds;
use crate::quantity::{self, System};
use crate::reading;
use serde_json::Value;

/// What a field of a job is a quantity of, as far as its unit goes.
#[derive(Clone, Copy)]
enum Of {
    Length,
    Load,
    Rate,
    Modulus,
    Stress,
    Warp,
    LengthTolerance,
    LoadTolerance,
    RateTolerance,
}

/// Where drawings stand in a job.
const DRAWINGS: [&str; 2] = ["coils[]", "replace.candidates[]"];

/// Every field of a drawing that a bare number may stand in, `[]` behind a list.
const OF_A_DRAWING: [(&str, Of); 25] = [
    ("bar", Of::Length),
    ("outside", Of::Length),
    ("mean", Of::Length),
    ("inside", Of::Length),
    ("solid", Of::Length),
    ("free", Of::Length),
    ("rate", Of::Rate),
    ("shear_modulus", Of::Modulus),
    ("youngs_modulus", Of::Modulus),
    ("limits.under", Of::Length),
    ("limits.over", Of::Length),
    ("limits.least", Of::Length),
    ("limits.most", Of::Length),
    ("press_test[].height", Of::Length),
    ("press_test[].load", Of::Load),
    ("tolerances.bar", Of::LengthTolerance),
    ("tolerances.diameter", Of::LengthTolerance),
    ("tolerances.free", Of::LengthTolerance),
    ("duty.least", Of::Load),
    ("duty.most", Of::Load),
    ("tolerances.rate", Of::RateTolerance),
    ("tolerances.solid", Of::LengthTolerance),
    ("loads[].height", Of::Length),
    ("loads[].load", Of::Load),
    ("loads[].tolerance", Of::LoadTolerance),
];

/// Every other such field.
const FIELDS: [(&str, Of); 52] = [
    ("tape.graduation", Of::Length),
    ("tape.error", Of::Length),
    ("tape.ends_error", Of::Length),
    ("nests[].working_height", Of::Length),
    ("nests[].working_load", Of::Load),
    ("nests[].ask[]", Of::Length),
    ("nests[].seats[].raise", Of::Length),
    ("nests[].seats[].readings[]", Of::Length),
    ("nests[].seats[].confirmed", Of::Length),
    ("frame.weight", Of::Load),
    ("frame.centre.along", Of::Length),
    ("frame.centre.across", Of::Length),
    ("frame.warp_stiffness", Of::Warp),
    ("frame.stop_stiffness", Of::Rate),
    ("frame.largest_stack", Of::Length),
    ("frame.shim_stock[]", Of::Length),
    ("frame.wheels_apart", Of::Length),
    ("frame.beams[].boxes[]", Of::Length),
    ("frame.supports[].along", Of::Length),
    ("frame.supports[].across", Of::Length),
    ("frame.supports[].shim", Of::Length),
    ("frame.supports[].ground", Of::Length),
    ("bench[].readings[]", Of::Length),
    ("bench[].confirmed", Of::Length),
    ("replace.asked.pocket", Of::Length),
    ("replace.asked.post", Of::Length),
    ("replace.asked.play", Of::Length),
    ("replace.asked.gap", Of::Length),
    ("replace.asked.free_least", Of::Length),
    ("replace.asked.free_most", Of::Length),
    ("replace.asked.rate_least", Of::Rate),
    ("replace.asked.rate_most", Of::Rate),
    ("replace.asked.height", Of::Length),
    ("replace.asked.load_least", Of::Load),
    ("replace.asked.load_most", Of::Load),
    ("replace.asked.solid", Of::Length),
    ("replace.asked.stress", Of::Stress),
    ("replace.asked.stress_solid", Of::Stress),
    ("replace.asked.reserve", Of::Length),
    ("need.load", Of::Load),
    ("need.height", Of::Length),
    ("need.rate", Of::Rate),
    ("need.second_load", Of::Load),
    ("need.second_height", Of::Length),
    ("need.pocket", Of::Length),
    ("need.post", Of::Length),
    ("need.clearance", Of::Length),
    ("need.solid", Of::Length),
    ("need.free", Of::Length),
    ("need.stress", Of::Stress),
    ("need.stress_solid", Of::Stress),
    ("need.bars[]", Of::Length),
];

/// The texts to write before a job goes over to another system, so that everything means what it
/// meant; none where it is in that system already.
///
/// # Example
/// ```
/// use coilnest::job::respell::respell;
/// use coilnest::quantity::System;
///
/// let job = serde_json::json!({ "system": "inch", "coils": [{ "free": "13 15/16", "bar": "27 mm" }] });
/// let edits = respell(&job, System::Metric);
/// assert_eq!((edits.len(), edits[0].path.as_str()), (1, "coils[0].free"));
/// assert_eq!(edits[0].text, "13 15/16 in");
/// assert!(respell(&job, System::Inch).is_empty());
/// ```
#[must_use]
pub fn respell(job: &Value, to: System) -> Vec<Edit> {
    let from = match job.get("system").and_then(Value::as_str) {
        Some(word) if word.trim().eq_ignore_ascii_case("metric") => System::Metric,
        _ => System::Inch,
    };
    let mut edits = Vec::new();
    if from != to {
        for (field, of) in rows() {
            visit(job, &field, &Path::default(), &mut |path, text| {
                let spelt = spelt(text, of, from);
                edits.extend(spelt.map(|text| Edit { path: path.text().to_owned(), text }));
            });
        }
    }
    edits
}

/// Every field of a job that a bare number of some unit may stand in, `[]` behind a list.
///
/// ```
/// assert!(coilnest::job::respell::fields().any(|field| field == "nests[].seats[].raise"));
/// ```
pub fn fields() -> impl Iterator<Item = String> {
    rows().map(|(field, _)| field)
}

fn rows() -> impl Iterator<Item = (String, Of)> {
    let drawn = DRAWINGS
        .iter()
        .flat_map(|at| OF_A_DRAWING.iter().map(move |(field, of)| (format!("{at}.{field}"), *of)));
    drawn.chain(FIELDS.iter().map(|(field, of)| ((*field).to_owned(), *of)))
}

fn spelt(text: &str, of: Of, from: System) -> Option<String> {
    match of {
        Of::Length => reading::spell_unit(text, from),
        Of::Load => quantity::spell_unit(text, from, &bounds::LOAD),
        Of::Rate => quantity::spell_unit(text, from, &bounds::RATE),
        Of::Modulus => quantity::spell_unit(text, from, &bounds::MODULUS),
        Of::Stress => quantity::spell_unit(text, from, &bounds::STRESS),
        Of::Warp => quantity::spell_unit(text, from, &bounds::WARP_STIFFNESS),
        Of::LengthTolerance => tolerance::spell_length(text, from),
        Of::LoadTolerance => tolerance::spell_quantity(text, from, &bounds::LOAD_TOLERANCE),
        Of::RateTolerance => tolerance::spell_quantity(text, from, &bounds::RATE_TOLERANCE),
    }
}

/// Every text that stands where a pattern points.
fn visit(value: &Value, pattern: &str, at: &Path, found: &mut dyn FnMut(&Path, &str)) {
    if pattern.is_empty() {
        if let Ok(Text(text)) = Text::from_value(value.clone()) {
            found(at, &text);
        }
        return;
    }
    let (step, rest) = pattern.split_once('.').unwrap_or((pattern, ""));
    let (field, is_list) = step.strip_suffix("[]").map_or((step, false), |field| (field, true));
    let Some(value) = value.get(field) else { return };
    let at = at.field(field);
    if is_list {
        for (index, item) in value.as_array().into_iter().flatten().enumerate() {
            visit(item, rest, &at.item(index), found);
        }
    } else {
        visit(value, rest, &at, found);
    }
}

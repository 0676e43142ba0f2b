//! Writes checked rows as constants of the calculation's types.

use crate::rows::{Citation, Known, Row, Value, Values};

/// The source text of the constants: steels, tape classes and the index of rows.
pub(crate) fn constants(steels: &[Row], tapes: &[Row]) -> String {
    let rows = steels
        .iter()
        .chain(tapes)
        .map(|row| format!("    Row {{ id: {:?}, file: {:?} }},\n", row.id, row.file));
    format!(
        "/// Every row: its id and the file that it stands in.\npub const ROWS: &[Row] = &[\n{}];\n\
         /// Steels, the one for a job that names none first.\npub const STEELS: &[Steel] = &[\n{}];\n\
         /// Tape classes, the one for a job that names none first.\npub const TAPE_CLASSES: &[TapeClass] = &[\n{}];\n",
        rows.collect::<String>(),
        steels.iter().map(constant).collect::<String>(),
        tapes.iter().map(constant).collect::<String>(),
    )
}

fn constant(row: &Row) -> String {
    let (id, name, source) = (&row.id, &row.name, source(&row.citation));
    match &row.values {
        Values::Steel { shear_modulus, youngs_modulus, shear_doubt, density } => {
            let sourced = |kind: &str, value: &Value| {
                format!("Sourced {{ value: {}, source: {source} }}", quantity(kind, value))
            };
            let (g, e) = (sourced("pressure", shear_modulus), sourced("pressure", youngs_modulus));
            let doubt =
                shear_doubt.map(|it| format!(".with_shear_doubt({})", sourced("pressure", &it)));
            let density = density.map(|it| format!(".with_density({})", sourced("density", &it)));
            format!(
                "    accepted(&Steel::new({id:?}, {name:?}, {g}, {e})){}{},\n",
                doubt.unwrap_or_default(),
                density.unwrap_or_default()
            )
        }
        Values::PerMetre { fixed, per_metre, end } => {
            let [fixed, per_metre, end] =
                [fixed, per_metre, end].map(|value| quantity("length", value));
            let rule = format!(
                "ErrorRule::PerMetre {{ fixed: {fixed}, per_metre: {per_metre}, end: {end} }}"
            );
            format!("    TapeClass::new({id:?}, {name:?}, {rule}, {source}),\n")
        }
        Values::Steps(steps) => {
            let steps = steps.iter().map(|(up_to, error)| {
                format!("({}, {}), ", quantity("length", up_to), quantity("length", error))
            });
            let rule = format!("ErrorRule::Steps(&[{}])", steps.collect::<String>());
            format!("    TapeClass::new({id:?}, {name:?}, {rule}, {source}),\n")
        }
    }
}

fn quantity(kind: &str, value: &Value) -> String {
    format!("{kind}({:e} * si::{})", value.number, value.unit.constant)
}

fn source(citation: &Citation) -> String {
    let known = match &citation.known {
        Known::Page => "Known::Page".into(),
        Known::QuotedIn(text) => format!("Known::QuotedIn({text:?})"),
        Known::Memory => "Known::Memory".into(),
        Known::CommonPractice => "Known::CommonPractice".into(),
        Known::Derived => "Known::Derived".into(),
    };
    format!("Source::new({:?}, {:?}, {known})", citation.cite, citation.place)
}

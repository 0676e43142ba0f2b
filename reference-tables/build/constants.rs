//! Writes checked rows as constants of the calculation's types.

use crate::rows::{
    Band, Citation, ErrorRule, Known, Law, Row, Shares, Span, Steel, Strength, Value, Values,
};

/// The source text of the constants: one list for each subject, and the index of rows.
///
/// Of steels the one for a job that names none stands first.
pub(crate) fn constants(rows: &[Row], steels: &[&Row]) -> String {
    let named: String = rows.iter().filter_map(named).collect();
    let others = rows.iter().filter(|row| !matches!(row.values, Values::Steel(_)));
    let index = steels.iter().copied().chain(others);
    let index = index.map(|row| format!("Row {{ id: {:?}, file: {:?} }},\n", row.id, row.file));
    let strengths = rows.iter().filter(|row| matches!(row.values, Values::Strength(_)));
    [
        named,
        list("Every row: its id and the file that it stands in.", "ROWS: &[Row]", index),
        list(
            "Steels, the one for a job that names none first.",
            "STEELS: &[Steel]",
            steels.iter().map(|row| steel(row) + &beyond_moduli(row) + ",\n"),
        ),
        list(
            "Strengths by size of bar, of all steels and authorities.",
            "STRENGTHS: &[Strength]",
            strengths.map(|row| constant_name(&row.id) + ", "),
        ),
        list("Tape classes.", "TAPE_CLASSES: &[TapeClass]", rows.iter().map(tape)),
        list(
            "By how much the diameter of a new cold-wound coil may be off.",
            "DIAMETERS: &[DiameterBand]",
            rows.iter().map(diameters),
        ),
        list(
            "Sizes in which bar and wire are to be had, one list for each authority.",
            "SIZES: &[Series]",
            rows.iter().map(sizes),
        ),
    ]
    .concat()
}

fn list(about: &str, head: &str, entries: impl Iterator<Item = String>) -> String {
    format!("/// {about}\npub const {head} = &[\n{}];\n", entries.collect::<String>())
}

/// A row that other rows name, as a constant of its own.
fn named(row: &Row) -> Option<String> {
    match &row.values {
        Values::Strength(strength) => Some(self::strength(row, strength)),
        Values::Shares(shares) => Some(self::shares(row, shares)),
        Values::Density { density, citation } => Some(format!(
            "const {}: Sourced<MassDensity> = {};\n",
            constant_name(&row.id),
            sourced("density", density, citation)
        )),
        _ => None,
    }
}

fn steel(row: &Row) -> String {
    let Values::Steel(steel) = &row.values else { return String::new() };
    let Steel { shear_modulus, youngs_modulus, shear_doubt, sizes, citation, .. } = &**steel;
    let pressure = |value: &Value| sourced("pressure", value, citation);
    let (g, e) = (pressure(shear_modulus), pressure(youngs_modulus));
    let doubt = shear_doubt.map(|it| format!(".with_shear_doubt({})", pressure(&it)));
    let sizes = sizes.map(|(over, up_to)| {
        format!(".with_sizes({}, {})", quantity("length", &over), quantity("length", &up_to))
    });
    format!(
        "accepted(&Steel::new({:?}, {:?}, {g}, {e})){}{}",
        row.id,
        row.name,
        doubt.unwrap_or_default(),
        sizes.unwrap_or_default(),
    )
}

fn sourced(kind: &str, value: &Value, citation: &Citation) -> String {
    format!("Sourced {{ value: {}, source: {} }}", quantity(kind, value), source(citation))
}

fn beyond_moduli(row: &Row) -> String {
    let Values::Steel(steel) = &row.values else { return String::new() };
    let density = steel.density.as_ref().map(|id| format!(".with_density({})", constant_name(id)));
    let strengths: Vec<String> = steel.strengths.iter().map(|id| constant_name(id)).collect();
    let place = format!("{}, row {}", row.file, row.id);
    format!(
        "{}.with_strengths(const {{ &[{}] }}).with_row({place:?})",
        density.unwrap_or_default(),
        strengths.join(", ")
    )
}

fn strength(row: &Row, strength: &Strength) -> String {
    let document =
        format!("Strength::look_up({:?}, {:?}, {:?})", row.id, row.name, strength.look_up);
    let by_size = match &strength.by_size {
        None => document,
        Some((spans, citation)) => {
            let spans: String = spans.iter().map(span).collect();
            let source = source(citation);
            format!("ruled({document}.with_spans(const {{ &[{spans}] }}, {source}))")
        }
    };
    let shares = strength.allowable.as_ref();
    let shares = shares.map(|id| format!(".with_shares({})", constant_name(id)));
    let name = constant_name(&row.id);
    format!("const {name}: Strength = {by_size}{};\n", shares.unwrap_or_default())
}

fn span(span: &Span) -> String {
    let [from, to, unit] = [span.from, span.to, span.unit].map(|it| quantity("length", &it));
    let coefficient = quantity("pressure", &span.coefficient);
    let law = match &span.law {
        Law::Exponent(exponent) => format!(
            "Law::Power {{ coefficient: {coefficient}, unit: {unit}, exponent: {exponent:e} }}"
        ),
        Law::Fall(fall) => format!(
            "Law::Logarithm {{ coefficient: {coefficient}, fall: {}, unit: {unit} }}",
            quantity("pressure", fall)
        ),
    };
    format!("ruled(Span::new({from}, {to}, {law})), ")
}

fn shares(row: &Row, shares: &Shares) -> String {
    let (share, against) = shares.as_wound;
    let source = source(&shares.citation);
    let mut text = format!("ruled(Shares::new({share:e}, Against::{against}, {source}))");
    if let Some((share, against)) = shares.set_removed {
        text = format!("ruled({text}.with_set_removed({share:e}, Against::{against}))");
    }
    format!("const {}: Shares = {text};\n", constant_name(&row.id))
}

fn tape(row: &Row) -> String {
    let Values::Tape { rule, usual, citation } = &row.values else { return String::new() };
    let rule = match rule {
        ErrorRule::PerMetre { fixed, per_metre, end } => {
            let [fixed, per_metre, end] =
                [fixed, per_metre, end].map(|value| quantity("length", value));
            format!("ErrorRule::PerMetre {{ fixed: {fixed}, per_metre: {per_metre}, end: {end} }}")
        }
        ErrorRule::Steps(steps) => {
            let steps = steps.iter().map(|(up_to, error)| {
                format!("({}, {}), ", quantity("length", up_to), quantity("length", error))
            });
            format!("ErrorRule::Steps(&[{}])", steps.collect::<String>())
        }
    };
    let usual: Vec<String> = usual.iter().map(|system| format!("System::{system}")).collect();
    let usual = usual.join(", ");
    let (id, name, source) = (&row.id, &row.name, source(citation));
    format!("TapeClass::new({id:?}, {name:?}, {rule}, {source}).usual_for(&[{usual}]),\n")
}

fn diameters(row: &Row) -> String {
    let Values::Diameters { bands, citation } = &row.values else { return String::new() };
    let source = source(citation);
    let bands = bands.iter().map(|Band { over, up_to, grades }| {
        let [over, up_to] = [over, up_to].map(|value| quantity("length", value));
        let grades = grades.map(|by_index| {
            format!("[{}]", by_index.map(|value| quantity("length", &value)).join(", "))
        });
        let grades = grades.join(", ");
        format!(
            "DiameterBand {{ over: {over}, up_to: {up_to}, half_widths: [{grades}], source: {source} }},\n"
        )
    });
    bands.collect()
}

fn sizes(row: &Row) -> String {
    let Values::Sizes { sizes, citation } = &row.values else { return String::new() };
    let sizes: Vec<String> = sizes.iter().map(|size| quantity("length", size)).collect();
    let (sizes, source) = (sizes.join(", "), source(citation));
    let (id, name) = (&row.id, &row.name);
    format!("listed(Series::new({id:?}, {name:?}, const {{ &[{sizes}] }}, {source})),\n")
}

fn quantity(kind: &str, value: &Value) -> String {
    format!("{kind}({:e} * si::{})", value.number, value.unit.constant)
}

/// The name of the constant of a row that other rows name.
fn constant_name(id: &str) -> String {
    let letters = id.chars().map(|c| match c {
        'a'..='z' | '0'..='9' => c.to_ascii_uppercase().to_string(),
        '-' => "_".to_owned(),
        // Two ids that differ stay different.
        other => format!("_X{:X}_", u32::from(other)),
    });
    format!("ROW_{}", letters.collect::<String>())
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

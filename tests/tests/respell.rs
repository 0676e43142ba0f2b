//! A job that goes over to the other system means what it meant, in every field that a quantity can
//! stand in.
//!
//! Which fields those are follows from their rows. A new one fails here until something shows that a job means
//! the same in both systems: until its quantity stands bare in `tests/data/every-quantity.json`.

use coilnest::job::respell::respell;
use coilnest::job::{HeldFrame, assess, coil_sheet, file, level, matching, replace, size};
use coilnest::quantity::System;
use coilnest_tables::TABLES;
use coilnest_tests::fields::{Leaf, leaves};
use coilnest_tests::{corpus, job_path, schema};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeSet;

/// What stands in the place of other fields of the job with every quantity.
const INSTEAD: [&[(&str, Option<&str>)]; 4] = [
    &[
        ("replace.original", Some("inner")),
        ("replace.asked", None),
        ("frame.weight", Some("60 000")),
    ],
    &[
        ("need.rate", None),
        ("need.second_load", Some("1500")),
        ("need.second_height", Some("12")),
        ("need.pair", None),
        ("need.free", None),
    ],
    &[
        ("frame.warp_stiffness", None),
        ("frame.beams[0].name", Some("left")),
        ("frame.beams[0].nests[0]", Some("A left")),
        ("frame.beams[0].nests[1]", Some("B left")),
        ("frame.beams[0].boxes[0]", Some("40")),
        ("frame.beams[0].boxes[1]", Some("-40")),
        ("frame.beams[1].name", Some("right")),
        ("frame.beams[1].nests[0]", Some("A right")),
        ("frame.beams[1].nests[1]", Some("B right")),
        ("frame.beams[1].boxes[0]", Some("40")),
        ("frame.beams[1].boxes[1]", Some("-40")),
    ],
    &[
        ("frame.apart.along", Some("72")),
        ("frame.apart.across", Some("56")),
        ("frame.supports[0].along", None),
        ("frame.supports[0].across", None),
        ("frame.supports[1].along", None),
        ("frame.supports[1].across", None),
        ("frame.supports[2].along", None),
        ("frame.supports[2].across", None),
        ("frame.supports[3].along", None),
        ("frame.supports[3].across", None),
    ],
];

/// Jobs in which together every quantity stands bare.
fn jobs() -> Vec<Value> {
    let text = std::fs::read_to_string(corpus::folder("data/every-quantity.json")).unwrap();
    let first: Value = serde_json::from_str(&text).unwrap();
    let others = INSTEAD.map(|changes| {
        let mut job = first.clone();
        for (path, text) in changes {
            job_path::put(&mut job, path, text.map(Value::from));
        }
        job
    });
    std::iter::once(first).chain(others).collect()
}

/// The texts that a bare number with a unit may stand in.
fn quantities() -> Vec<String> {
    leaves().into_iter().filter(Leaf::has_unit).map(|leaf| leaf.path).collect()
}

/// A field has its row or it is none: reading, unit and schema come of it. So the schema has every row.
#[test]
fn every_row_is_a_text_of_the_schema() {
    let rows: BTreeSet<String> = leaves().into_iter().map(|leaf| leaf.path).collect();
    assert_eq!(rows, texts_of_the_schema());
    assert!(quantities().len() > 100 && rows.len() > 180, "{}", rows.len());
}

#[test]
fn every_quantity_keeps_its_meaning() {
    for (index, job) in jobs().iter().enumerate() {
        let there = switched(job, System::Metric, |_| true);
        same(&meaning(job), &meaning(&there)).unwrap_or_else(|why| panic!("job {index}: {why}"));
        let back = switched(&there, System::Inch, |_| true);
        same(&meaning(job), &meaning(&back)).unwrap_or_else(|why| panic!("job {index}: {why}"));
    }
}

/// So the comparison above looks at every field: left bare, any one of them means something else.
#[test]
fn left_bare_a_quantity_changes_its_meaning() {
    let jobs: Vec<(Value, Vec<Fact>)> =
        jobs().into_iter().map(|job| (job.clone(), meaning(&job))).collect();
    let unseen: Vec<String> = quantities()
        .into_iter()
        .filter(|field| {
            jobs.iter().all(|(job, meant)| {
                let there = switched(job, System::Metric, |edited| edited != field);
                let whole = switched(job, System::Metric, |_| true);
                there == whole || same(meant, &meaning(&there)).is_ok()
            })
        })
        .collect();
    assert!(unseen.is_empty(), "nothing shows of {unseen:?}");
}

/// What a job leaves open is taken as is usual in its system, so it is filled in first.
#[test]
fn every_kept_job_keeps_its_meaning() {
    const OPEN: [(&str, &str, &str); 4] = [
        ("tape", "graduation", "1/16 in"),
        ("tape", "ends_error", "1/32 in"),
        ("tape", "class", "II"),
        ("need", "bars[0]", "1 in"),
    ];
    for kept in corpus::all().unwrap() {
        let mut job: Value = serde_json::from_str(&kept.text).unwrap();
        for (of, field, text) in OPEN {
            let is_open = job[of].pointer(&format!("/{}", field.replace("[0]", ""))).is_none();
            if is_open && (of == "tape" || !job[of].is_null()) {
                job_path::put(&mut job, &format!("{of}.{field}"), Some(text.into()));
            }
        }
        let to = if job["system"] == "metric" { System::Inch } else { System::Metric };
        same(&meaning(&job), &meaning(&switched(&job, to, |_| true)))
            .unwrap_or_else(|why| panic!("{}: {why}", kept.name));
    }
}

/// Every text of a job, `[]` behind a list and `*` where any name may stand.
fn texts_of_the_schema() -> BTreeSet<String> {
    let files = schema::all();
    let file = files.iter().find(|file| file.name == "job.schema.json").unwrap();
    let schema: Value = serde_json::from_str(&file.text).unwrap();
    let mut texts = BTreeSet::new();
    gather(&schema, &schema, "", &mut texts);
    texts
}

fn gather(root: &Value, schema: &Value, at: &str, texts: &mut BTreeSet<String>) {
    let all_of = schema["allOf"].as_array().into_iter().flatten();
    let named = schema["$ref"].as_str().and_then(|name| root.pointer(name.strip_prefix('#')?));
    all_of.chain(named).for_each(|schema| gather(root, schema, at, texts));
    if schema["type"] == "string" {
        texts.insert(at.to_owned());
    }
    let dot = if at.is_empty() { "" } else { "." };
    let named = schema["properties"].as_object().into_iter().flatten();
    let named = named.map(|(name, schema)| (format!("{at}{dot}{name}"), schema));
    let listed = [(format!("{at}[]"), &schema["items"])];
    let any = [(format!("{at}{dot}*"), &schema["additionalProperties"])];
    let inner = named.chain(listed).chain(any).filter(|(_, schema)| schema.is_object());
    for (at, schema) in inner {
        gather(root, schema, &at, texts);
    }
}

/// A job in another system, with such of the edits as are wanted by the pattern of their field.
fn switched(job: &Value, to: System, is_wanted: impl Fn(&str) -> bool) -> Value {
    let mut switched = job.clone();
    let taken = file::from_value(job.clone()).unwrap();
    for edit in respell(&taken, to).into_iter().filter(|edit| is_wanted(&pattern(&edit.path))) {
        job_path::put(&mut switched, &edit.path, Some(edit.text.into()));
    }
    let word = if to == System::Metric { "metric" } else { "inch" };
    job_path::put(&mut switched, "system", Some(word.into()));
    switched
}

fn pattern(path: &str) -> String {
    let steps = path.split('[').map(|step| step.trim_start_matches(|c: char| c.is_ascii_digit()));
    steps.collect::<Vec<_>>().join("[")
}

/// Something that an answer says whatever system it is written in.
#[derive(Clone, Debug)]
struct Fact {
    path: String,
    said: Value,
    /// How far a number may be off, as a share of itself.
    within: f64,
}

/// The fields of an answer that say the same in either system: values in SI units, chances, codes.
const FACTS: [&str; 11] = [
    "si", "doubt_si", "p_in", "p_short", "p_long", "word", "code", "path", "met", "state",
    "verdict",
];

/// What the digits of the units themselves leave over.
const EXACT: f64 = 1e-9;
/// The sizes of a drawing that is sought are rounded to 1/64 in or to 0.1 mm, and the rate goes with
/// the fourth power of one of them.
const ROUNDED: f64 = 0.03;

/// All that follows from a job.
fn meaning(job: &Value) -> Vec<Fact> {
    let job = file::from_value(job.clone()).unwrap();
    let report = assess(&job, &TABLES);
    let dip = HeldFrame::of(&job, &TABLES).dip("A left", "1/2 in", "");
    let mut facts = Vec::new();
    gather_facts("report", EXACT, &value(&report), &mut facts);
    for coil in &report.coils {
        let sheet = coil_sheet(&job, &TABLES, &coil.id);
        gather_facts(&format!("sheet {}", coil.id), EXACT, &value(&sheet), &mut facts);
    }
    gather_facts("level", EXACT, &value(&level(&job, &TABLES)), &mut facts);
    gather_facts("dip", EXACT, &value(&dip), &mut facts);
    gather_facts("matching", EXACT, &value(&matching(&job, &TABLES)), &mut facts);
    gather_facts("replace", EXACT, &value(&replace(&job, &TABLES)), &mut facts);
    gather_facts("size", ROUNDED, &value(&size(&job, &TABLES)), &mut facts);
    facts
}

fn value(answer: &impl Serialize) -> Value {
    serde_json::to_value(answer).unwrap()
}

fn gather_facts(path: &str, within: f64, value: &Value, facts: &mut Vec<Fact>) {
    match value {
        Value::Object(fields) => {
            for (name, value) in fields {
                let path = format!("{path}.{name}");
                if FACTS.contains(&name.as_str()) && !value.is_object() {
                    facts.push(Fact { path, said: value.clone(), within });
                } else {
                    gather_facts(&path, within, value, facts);
                }
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                gather_facts(&format!("{path}[{index}]"), within, item, facts);
            }
        }
        _ => {}
    }
}

fn same(before: &[Fact], after: &[Fact]) -> Result<(), String> {
    for (before, after) in before.iter().zip(after) {
        let agrees = match (before.said.as_f64(), after.said.as_f64()) {
            (Some(a), Some(b)) => (a - b).abs() <= before.within * a.abs().max(b.abs()) + EXACT,
            _ => before.said == after.said,
        };
        if before.path != after.path || !agrees {
            return Err(format!("{before:?} and not {after:?}"));
        }
    }
    let (before, after) = (before.len(), after.len());
    if before == after { Ok(()) } else { Err(format!("{before} facts and not {after}")) }
}

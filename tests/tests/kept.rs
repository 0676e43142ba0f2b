//! The lines of a report: their form, and that nothing of the report is missing from them.

use coilnest::job::{assess, file};
use coilnest_tables::TABLES;
use coilnest_tests::kept::lines;
use coilnest_tests::{corpus, job_path};
use serde_json::{Value, json};

/// The report of a job that has a nest, coils, a verdict and notes.
fn report() -> Value {
    let job = file::open(&corpus::named("one-sided-limits").unwrap().text).unwrap();
    serde_json::to_value(assess(&job, &TABLES)).unwrap()
}

fn lines_of(report: &Value) -> String {
    lines(&report.to_string()).unwrap()
}

#[test]
fn a_line_is_a_path_a_figure_and_its_working() {
    let text = r#"{
        "keys": ["1/2", "full"],
        "nests": [{
            "id": "A left",
            "load": { "si": 9600.0, "unit": "N", "text": "9.6 kN", "doubt_si": 1e-7, "doubt_text": "± 0", "working": "w2" },
            "share": { "si": 0.5, "unit": "1", "text": "50 %", "working": "w1" },
            "seats": [{ "coil": "outer", "places": 2 }, { "coil": "outer", "places": 1 }],
            "verdict": { "word": "good", "sentence": "A sentence that is longer than forty characters.", "working": "w3" },
            "order": { "text": "Steel: any\n\nTurns: as many as there are now" }
        }],
        "workings": {
            "w1": { "formula": "F / W", "with": "1 / 2", "result": "50 %", "source": "definition" },
            "w2": { "formula": "k · s", "with": "2 · 3", "result": "9600 N", "source": "statics", "row": "a row" },
            "w3": { "formula": "p", "with": "u = 1", "result": "99 %", "source": "JCGM 106" },
            "w4": { "formula": "x", "with": "y", "result": "z", "source": "nobody" }
        }
    }"#;
    let expected = r#"all | keys ["1/2", "full"]
nests[A left] | id "A left"
nests[A left].load | 9.6 kN ± 0 | 9600 ± 1e-7 N | k · s | 2 · 3 | = 9600 N | statics | a row
nests[A left].share | 50 % | 0.5 | F / W | 1 / 2 | definition
nests[A left].seats[0] | coil "outer", places 2
nests[A left].seats[1] | coil "outer", places 1
nests[A left].verdict | word "good"
nests[A left].verdict.sentence | A sentence that is longer than forty characters.
nests[A left].verdict.working | p | u = 1 | = 99 % | JCGM 106
nests[A left].order.text | Steel: any
nests[A left].order.text |
nests[A left].order.text | Turns: as many as there are now
workings | x | y | = z | nobody
"#;
    assert_eq!(lines(text).unwrap(), expected);
    assert!(lines("{").is_err());
}

#[test]
fn every_value_of_a_report_shows() {
    let report = report();
    let before = lines_of(&report);
    let mut changed = 0;
    // What a letter stands for shows as it is put in.
    for path in job_path::all(&report).into_iter().filter(|path| !path.contains(".letters")) {
        let pointer = format!("/{}", path.replace('[', "/").replace(']', "").replace('.', "/"));
        let mut other = report.clone();
        let value = other.pointer_mut(&pointer).unwrap();
        *value = match &*value {
            Value::Number(number) => {
                let number = number.as_f64().unwrap();
                json!(if number == 0.0 { 1e-300 } else { number * (1.0 + 2.0 * f64::EPSILON) })
            }
            Value::String(text) => json!(format!("{text}.")),
            Value::Bool(value) => json!(!value),
            Value::Null | Value::Array(_) | Value::Object(_) => continue,
        };
        assert_ne!(lines_of(&other), before, "{path}");
        changed += 1;
    }
    assert!(changed > 300, "{changed} values");
}

#[test]
fn the_keys_of_workings_do_not_show() {
    let report = report();
    let mut renumbered = report.clone();
    renumber(&mut renumbered);
    assert_ne!(report, renumbered);
    assert_eq!(lines_of(&report), lines_of(&renumbered));
}

fn renumber(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            if let Some(Value::String(key)) = fields.get_mut("working") {
                key.insert(0, 'x');
            }
            if let Some(Value::Object(workings)) = fields.get_mut("workings") {
                let old = std::mem::take(workings).into_iter();
                workings.extend(old.map(|(key, working)| (format!("x{key}"), working)));
            }
            fields.values_mut().for_each(renumber);
        }
        Value::Array(items) => items.iter_mut().for_each(renumber),
        _ => {}
    }
}

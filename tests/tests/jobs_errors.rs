//! Jobs with slips of the pen: every one is a problem at its field, and nothing else is lost.

use coilnest::job::{assess, coil_sheet, file};
use coilnest::measured::{ErrorRule, TapeClass};
use coilnest::quantity::{Length, si};
use coilnest::source::{Known, Source};
use coilnest_tables::TABLES;
use coilnest_tests::{corpus, job_path};
use serde::Deserialize;
use serde_json::{Map, Value};
use std::collections::BTreeSet;
use std::fmt::Write;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Slips {
    slip: Vec<Slip>,
}

/// What is written in a field, nothing where it is taken away, and the problem that follows.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Slip {
    path: String,
    value: Option<Value>,
    code: String,
    at: Option<String>,
}

fn slips() -> Vec<Slip> {
    let text = std::fs::read_to_string(corpus::folder("errors/slips.toml")).unwrap();
    toml::from_str::<Slips>(&text).unwrap().slip
}

fn sheet() -> Value {
    let text = std::fs::read_to_string(corpus::folder("errors/job.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn problems(job: &Value) -> Vec<coilnest::job::report::Problem> {
    assess(&file::from_value(job.clone()).unwrap(), &TABLES).problems
}

/// Every coil that a job names has its sheet, whatever else is wrong with the job, as far as the
/// drawing goes.
#[track_caller]
fn every_coil_has_a_sheet(job: &Value) {
    let taken = file::from_value(job.clone()).unwrap();
    for coil in assess(&taken, &TABLES).coils.iter().filter(|coil| !coil.id.is_empty()) {
        let answer = coil_sheet(&taken, &TABLES, &coil.id);
        let sheet = answer.sheet.unwrap_or_else(|| panic!("{}: {:?}", coil.id, answer.problem));
        assert_eq!(sheet.coil.id, coil.id);
        assert_eq!(sheet.coil.rate.as_ref().map(|rate| rate.si), coil.rate.as_ref().map(|r| r.si));
    }
}

#[test]
fn the_sheet_without_slips_only_lacks_its_format() {
    let problems = problems(&sheet());
    let codes: Vec<_> = problems.iter().map(|problem| &*problem.code).collect();
    assert_eq!(codes, ["format-missing"]);
}

#[test]
fn every_slip_on_one_sheet_is_one_problem_at_its_field() {
    let mut job = sheet();
    let slips = slips();
    for slip in &slips {
        job_path::put(&mut job, &slip.path, slip.value.clone());
    }
    every_coil_has_a_sheet(&job);
    let problems = problems(&job);
    let mut found: Vec<_> =
        problems.iter().map(|problem| (problem.path.clone(), problem.code.to_string())).collect();
    let mut expected: Vec<_> = slips
        .iter()
        .map(|slip| (slip.at.clone().unwrap_or(slip.path.clone()), slip.code.clone()))
        .collect();
    found.sort();
    expected.sort();
    assert_eq!(found, expected);
    assert!(slips.len() >= 40, "{} slips", slips.len());

    let mut text = String::new();
    for problem in &problems {
        writeln!(text, "{} [{}]\n  {}", problem.path, problem.code, problem.message).unwrap();
        write!(text, "  expected: {}", problem.expected).unwrap();
        if !problem.example.is_empty() {
            write!(text, "; example: {}", problem.example).unwrap();
        }
        writeln!(text).unwrap();
    }
    corpus::keep(&corpus::folder("errors/all.txt"), &text).unwrap();
}

/// Alone on the sheet it is found as well, so that none hides behind another.
#[test]
fn every_slip_alone_is_found() {
    for slip in slips() {
        let mut job = sheet();
        job_path::put(&mut job, &slip.path, slip.value.clone());
        every_coil_has_a_sheet(&job);
        let at = slip.at.unwrap_or(slip.path);
        let problems = problems(&job);
        let found = problems.iter().any(|problem| problem.path == at && problem.code == slip.code);
        assert!(found, "{at} [{}]: {problems:#?}", slip.code);
    }
}

/// Every field that the schema of a job has, by the path of its first item, with the code of what is
/// found where an object (in a text) or a text (elsewhere) stands in it.
fn fields(schema: &Value, kind: &Value, path: &str) -> Vec<(String, &'static str)> {
    let kind = kind.get("allOf").map_or(kind, |all| &all[0]);
    let kind = match kind["$ref"].as_str() {
        Some(reference) => schema.pointer(&reference[1..]).expect("a definition"),
        None => kind,
    };
    match kind["type"].as_str() {
        // Texts by any name.
        Some("object") if kind.get("properties").is_none() => {
            vec![(path.to_owned(), "not-object")]
        }
        Some("object") => {
            let dot = if path.is_empty() { "" } else { "." };
            let inside = kind["properties"].as_object().expect("fields").iter();
            let inside =
                inside.flat_map(|(name, kind)| fields(schema, kind, &format!("{path}{dot}{name}")));
            [(path.to_owned(), "not-object")].into_iter().chain(inside).collect()
        }
        Some("array") => {
            let inside = fields(schema, &kind["items"], &format!("{path}[0]"));
            [(path.to_owned(), "not-list")].into_iter().chain(inside).collect()
        }
        Some("string") => vec![(path.to_owned(), "not-text")],
        other => panic!("{path}: {other:?}"),
    }
}

/// No field is passed over: each is read, and what cannot be in it is a problem at its own path.
#[test]
fn every_field_of_the_schema_is_read() {
    let [schema, ..] = coilnest_tests::schema::all().map(|schema| schema.text);
    let schema: Value = serde_json::from_str(&schema).unwrap();
    let fields = fields(&schema, &schema, "");
    assert!(fields.len() > 80, "{} fields", fields.len());
    for (path, code) in fields {
        if path.is_empty() || path == "format" {
            continue;
        }
        let mut job = sheet();
        let odd = if code == "not-text" { Value::Object(Map::new()) } else { "text".into() };
        job_path::put(&mut job, &path, Some(odd));
        every_coil_has_a_sheet(&job);
        let problems = problems(&job);
        let found = problems.iter().any(|problem| problem.path == path && problem.code == code);
        assert!(found, "{path} [{code}]: {problems:#?}");
    }
}

/// The codes in the docs of `problem` and of `Reason::code`, but those of no field: they are met by
/// the other checks here, by those of a table of coils, of a held frame and of the engine, and an empty
/// field is not a wrong one.
fn documented() -> BTreeSet<String> {
    let docs = include_str!("../../core/src/job/problem.rs");
    let docs = docs.split_once("[table of coils]").map_or(docs, |(job, _)| job).lines();
    let rows = docs.filter_map(|line| line.strip_prefix("//! | `")?.split(" | ").next());
    let reasons = include_str!("../../core/src/quantity/refusal.rs")
        .split_once("variant's own:")
        .and_then(|(_, docs)| docs.split_once("pub fn code"))
        .map_or("", |(docs, _)| docs);
    let codes = rows.chain([reasons]).flat_map(|codes| codes.split(|c: char| !code_letter(c)));
    let elsewhere = [
        ["", "must", "use", "empty", "format-unknown"],
        ["format-newer", "outside-table", "no-frame", "holds-itself", "too-many-values"],
    ]
    .concat();
    codes.filter(|code| !elsewhere.contains(code)).map(str::to_owned).collect()
}

fn code_letter(letter: char) -> bool {
    letter.is_ascii_lowercase() || letter == '-'
}

/// The codes of `errors/frames.toml` and `errors/replacement.toml`, which other tests meet: problems, or
/// else notes.
fn of_cases(notes: bool) -> Vec<String> {
    let of_file = |file| {
        let text = std::fs::read_to_string(corpus::folder(file)).unwrap();
        let cases = toml::from_str::<toml::Table>(&text).unwrap();
        let cases = cases["case"].as_array().unwrap().iter();
        let of_kind = cases.filter(|case| case.get("note").is_some() == notes);
        of_kind.map(|case| case["code"].as_str().unwrap().to_owned()).collect::<Vec<_>>()
    };
    ["errors/frames.toml", "errors/replacement.toml"].into_iter().flat_map(of_file).collect()
}

#[test]
fn every_documented_code_is_met_and_every_met_code_is_documented() {
    let slips = slips().into_iter().map(|slip| slip.code);
    let met: BTreeSet<String> = slips.chain(of_cases(false)).collect();
    let documented = documented();
    assert!(documented.len() > 30, "{documented:?}");
    assert_eq!(met, documented);
}

/// The notes in the docs of `Note` are those of the kept jobs and of a few that lack something.
#[test]
fn every_documented_note_is_met_and_every_met_note_is_documented() {
    let docs = include_str!("../../core/src/job/report.rs").lines();
    let rows = docs.filter_map(|line| line.trim().strip_prefix("/// | `")?.split(" | ").next());
    let documented: BTreeSet<&str> = rows
        .flat_map(|codes| codes.split(|c: char| !code_letter(c)))
        .filter(|code| !code.is_empty())
        .collect();
    let coil = r#"{ "id": "a", "limits": { "under": "1/8" }, "bar": "1", "outside": "7", "turns": "8", "ends": "closed" }"#;
    let lacking = [
        format!(r#"{{ "format": "coilnest-job/1", "coils": [{coil}], "nests": [{{ "id": "b" }}] }}"#),
        r#"{ "nests": [{ "id": "b", "working_height": "9", "working_load": "9 lb", "seats": [{}] }] }"#.into(),
        r#"{ "coils": [{ "id": "a", "free": "14" }], "nests": [{ "id": "b", "seats": [
            { "coil": "a", "label": "1", "readings": ["12"] }, { "coil": "a", "label": "1" }
        ] }] }"#.into(),
    ];
    let jobs = lacking.iter().map(|text| file::from_value(serde_json::from_str(text).unwrap()));
    let kept = corpus::all().unwrap().into_iter().map(|job| file::open(&job.text));
    let reports = jobs.chain(kept).map(|job| assess(&job.unwrap(), &TABLES));
    let met = reports.flat_map(|report| report.notes).map(|note| note.code.to_string());
    let met: BTreeSet<String> = met.chain(of_cases(true)).collect();
    assert_eq!(met, documented.into_iter().map(str::to_owned).collect());
}

#[test]
fn a_file_of_another_format_is_left_alone() {
    for (format, code) in [
        ("\"coilnest-job/2\"", "format-newer"),
        ("\"coilnest-job/4000000000\"", "format-newer"),
        ("\"coilnest-job/0\"", "format-unknown"),
        ("\"coilnest-job/x\"", "format-unknown"),
        ("\"something\"", "format-unknown"),
        ("7", "format-unknown"),
        ("{}", "format-unknown"),
    ] {
        let refused = file::open(&format!("{{\"format\": {format}}}")).unwrap_err();
        assert_eq!((refused.path.as_str(), &*refused.code), ("format", code), "{format}");
    }
    assert_eq!(file::open("{}").unwrap_err().code, "format-missing");
    for text in ["", "[]", "null", "7", "\"job\"", "{", "{\"format\":", "\u{feff}{}"] {
        assert_eq!(file::open(text).unwrap_err().code, "not-object", "{text:?}");
    }
    for (text, read) in [
        ("[1, 2]", "a list"),
        ("null", "nothing"),
        ("7", "a number"),
        ("\"job\"", "a text"),
        ("true", "true or false"),
    ] {
        let problem = file::open(text).unwrap_err();
        assert_eq!(problem.read, read);
        assert!(problem.message.starts_with(read), "{}", problem.message);
        assert!(problem.message.contains(&problem.example), "{}", problem.message);
    }
}

/// No tape of the tables ends before the longest reading, so this one is made up.
#[test]
fn a_length_beyond_the_tape_class_is_a_problem() {
    let metre = |value| si(value);
    let steps = [(metre(0.2), metre(0.001))];
    let source = Source::new("invented", "for this check", Known::Derived);
    let steps: &'static [(Length, Length)] = Box::leak(Box::new(steps));
    let classes = [TapeClass::new("short", "Short tape", ErrorRule::Steps(steps), source)];
    let mut tables = TABLES;
    tables.tape_classes = &classes;
    let job =
        file::open(&corpus::named("common-practice").unwrap().text.replace("\"II\"", "\"short\""));
    let report = assess(&job.unwrap(), &tables);
    let found: Vec<_> =
        report.problems.iter().map(|problem| (problem.path.as_str(), &*problem.code)).collect();
    assert_eq!(
        found,
        [
            ("nests[0].seats[0].readings", "outside-table"),
            ("nests[0].seats[1].readings", "outside-table")
        ]
    );
    assert!(report.nests[0].seats.iter().all(|seat| !seat.measured && seat.verdict.is_none()));
}

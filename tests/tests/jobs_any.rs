//! Jobs of any content: nothing panics, nothing is lost, and what does not depend on a field stays.

use coilnest::job::rows::Takes;
use coilnest::job::{
    assess, coil_sheet, file, nest_state, report::Report, respell::respell, strip,
};
use coilnest::quantity::System;
use coilnest_tables::TABLES;
use coilnest_tests::fields::leaves;
use coilnest_tests::read_back::is_same;
use coilnest_tests::{corpus, job_path};
use proptest::prelude::*;
use serde_json::{Map, Value, json};

fn demo() -> Value {
    serde_json::from_str(&corpus::named("quarry-tramway").unwrap().text).unwrap()
}

fn report(job: &Value) -> Report {
    assess(&file::from_value(job.clone()).unwrap(), &TABLES)
}

/// Any JSON value, some of it like what a field holds.
fn any_value() -> impl Strategy<Value = Value> {
    let text = prop_oneof![
        "[0-9]{1,3}( [0-9]{1,2}/[0-9]{1,2})?( (in|mm|lb|scant|full|ft|N|psi))?",
        "[ -~½⅜°′″−\u{202f}]{0,12}",
        Just("solid".to_owned()),
        Just("1e308".to_owned()),
        Just("9".repeat(400)),
    ];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::Bool),
        any::<i32>().prop_map(Value::from),
        any::<i32>().prop_map(|parts| Value::from(f64::from(parts) / 64.0)),
        text.prop_map(Value::String),
    ];
    leaf.prop_recursive(3, 12, 3, |inner| {
        prop_oneof![
            prop::collection::vec(inner.clone(), 0..3).prop_map(Value::Array),
            prop::collection::vec(("[a-z_]{1,8}", inner), 0..3)
                .prop_map(|fields| Value::Object(fields.into_iter().collect::<Map<_, _>>())),
        ]
    })
}

/// Any field of the demo, or any text of any job, with what may be put there: something of its own kind, just
/// beside it, or anything.
fn any_change() -> impl Strategy<Value = (String, Value)> {
    let written = prop::sample::select(job_path::all(&demo()));
    let unknown = Just("something.nobody[1].knows".to_owned());
    let anything = (prop_oneof![9 => written, 1 => unknown], any_value());
    let of_its_kind =
        (prop::sample::select(leaves()), any::<[bool; 4]>()).prop_flat_map(|(leaf, second)| {
            let path = second.iter().fold(leaf.path.replace('*', "rate"), |path, second| {
                path.replacen("[]", &format!("[{}]", u8::from(*second)), 1)
            });
            let texts = [leaf.valid(), leaf.beside()].concat();
            let text = prop::sample::select(texts).prop_map(Value::String);
            (Just(path), prop_oneof![3 => text, 1 => any_value()])
        });
    prop_oneof![anything, of_its_kind]
}

fn any_job() -> impl Strategy<Value = Value> {
    prop::collection::vec(any_change(), 1..8).prop_map(|changes| {
        let mut job = demo();
        for (path, value) in changes {
            job_path::put(&mut job, &path, Some(value));
        }
        job
    })
}

/// What a row says will do is taken, and something else than a text never is.
#[test]
fn every_field_takes_what_its_row_says() {
    for leaf in leaves().into_iter().filter(|leaf| leaf.path != "format") {
        let path = leaf.path.replace("[]", "[0]").replace('*', "rate");
        let problem = |value: Value| {
            let mut job = json!({ "format": "coilnest-job/1" });
            job_path::put(&mut job, &path, Some(value));
            let found = report(&job).problems.into_iter().find(|problem| problem.path == path);
            found.map(|problem| problem.code)
        };
        for text in leaf.valid() {
            let code = problem(json!(text));
            let code = code.as_deref();
            let is_name = matches!(code, Some("no-such-coil" | "no-such-nest" | "name-twice"));
            let is_sized = matches!(code, Some("too-few-turns" | "solid-not-below-free"));
            assert!(code.is_none() || is_name || is_sized, "{path}: {text} gives {code:?}");
        }
        // Where a list lacks its height, nothing is read of the load; where nothing is asked, of no answer.
        assert_eq!(problem(json!({})).as_deref(), Some("not-text"), "{path}");
    }
}

/// Just beside what will do there is for every kind something that is refused, at its field.
#[test]
fn every_kind_refuses_something() {
    for leaf in leaves().into_iter().filter(|leaf| !matches!(leaf.takes, Takes::Text)) {
        let path = leaf.path.replace("[]", "[0]").replace('*', "rate");
        let refused = leaf.beside().into_iter().any(|text| {
            let mut job = json!({ "format": "coilnest-job/1" });
            job_path::put(&mut job, &path, Some(json!(text)));
            report(&job).problems.iter().any(|problem| problem.path == path)
        });
        let any_will_do = matches!(
            leaf.takes,
            Takes::Words { others: true, .. } | Takes::OfTables(_) | Takes::HeightOrLoad(_)
        );
        assert!(refused || any_will_do, "{path}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Every answer comes, and comes out the same again.
    #[test]
    fn any_job_is_answered(job in any_job()) {
        let taken = file::from_value(job.clone()).unwrap();
        let first = assess(&taken, &TABLES);
        prop_assert_eq!(&first, &assess(&taken, &TABLES));
        prop_assert_eq!(is_same(&first), Ok(()));
        for height in ["11 1/2", "5000 lb", "solid", "", "nonsense"] {
            let state = nest_state(&taken, &TABLES, "A left", height);
            prop_assert!(state.state.is_some() || state.problem.is_some() || height.is_empty());
            prop_assert_eq!(is_same(&state), Ok(()));
        }
        let strip = strip::strip(&taken, &TABLES, "nests[0].seats[1].readings[0]");
        prop_assert_eq!(is_same(&strip), Ok(()));
        for coil in ["outer", "inner", ""] {
            let answer = coil_sheet(&taken, &TABLES, coil);
            prop_assert_eq!(&answer, &coil_sheet(&taken, &TABLES, coil));
            prop_assert_eq!(is_same(&answer), Ok(()));
            prop_assert!(answer.sheet.is_some() != answer.problem.is_some());
            for figure in corpus::figures(&serde_json::to_value(&answer.sheet).unwrap()) {
                prop_assert!(figure["si"].as_f64().is_some_and(f64::is_finite), "{}", figure);
            }
        }
        for system in [System::Inch, System::Metric] {
            let mut switched = job.clone();
            for edit in respell(&taken, system) {
                job_path::put(&mut switched, &edit.path, Some(edit.text.into()));
            }
            let _ = assess(&file::from_value(switched).unwrap(), &TABLES);
        }
        for figure in corpus::figures(&serde_json::to_value(&first).unwrap()) {
            prop_assert!(figure["si"].as_f64().is_some_and(f64::is_finite), "{}", figure);
        }
    }

    /// What a file holds is there again after it was saved, odd or not; only null is left out.
    #[test]
    fn what_is_saved_is_what_was_opened(job in any_job()) {
        let mut kept = job.clone();
        let taken = file::from_value(job).unwrap();
        let saved: Value = serde_json::from_str(&file::save(&taken)).unwrap();
        without_null_fields(&mut kept);
        let mut again = saved.clone();
        without_null_fields(&mut again);
        as_texts(&mut kept, &again);
        prop_assert_eq!(kept, again);
        prop_assert_eq!(file::from_value(saved).unwrap(), taken);
    }
}

fn without_null_fields(value: &mut Value) {
    match value {
        Value::Object(object) => {
            object.retain(|_, value| !value.is_null());
            object.values_mut().for_each(without_null_fields);
        }
        Value::Array(items) => items.iter_mut().for_each(without_null_fields),
        _ => {}
    }
}

/// A bare number in the place of a text is saved as that text.
fn as_texts(kept: &mut Value, again: &Value) {
    match (&mut *kept, again) {
        (Value::Number(number), Value::String(text))
            if text.parse() == Ok(number.as_f64().unwrap()) =>
        {
            *kept = again.clone();
        }
        (Value::Object(kept), Value::Object(again)) => {
            for (name, value) in kept {
                as_texts(value, &again[name]);
            }
        }
        (Value::Array(kept), Value::Array(again)) => {
            kept.iter_mut().zip(again).for_each(|(kept, again)| as_texts(kept, again));
        }
        _ => {}
    }
}

#[test]
fn unknown_fields_and_odd_values_are_kept() {
    let text = r#"{
  "format": "coilnest-job/1",
  "title": { "odd": [1, 2.5, -3e8] },
  "coils": [
    {
      "id": "outer",
      "bar": false,
      "colour": "grey"
    },
    7
  ],
  "nests": "none",
  "weather": {
    "rain": 0.125
  }
}
"#;
    let before: Value = serde_json::from_str(text).unwrap();
    let after: Value = serde_json::from_str(&file::save(&file::open(text).unwrap())).unwrap();
    assert_eq!(before, after);
}

/// The demo without one of its fields, for every field: what else the report says stands, unless it
/// follows from that field.
#[test]
fn every_field_of_the_demo_can_be_missing() {
    let whole = report(&demo());
    for path in job_path::all(&demo()) {
        let mut job = demo();
        job_path::put(&mut job, &path, None);
        let without = report(&job);
        let at = |list: &str| path.starts_with(list);
        // A missing item leaves a gap that is no coil, nest or reading.
        if path.ends_with(']') || path == "coils" || path == "nests" {
            continue;
        }
        let shared = ["system", "tape", "decision_level", "coils"].iter().any(|part| at(part));
        for (index, nest) in whole.nests.iter().enumerate() {
            if !shared && !at(&format!("nests[{index}]")) {
                assert_eq!(without_keys(nest), without_keys(&without.nests[index]), "{path}");
            }
        }
        for (index, coil) in whole.coils.iter().enumerate() {
            if !["system", "tape"].iter().any(|part| at(part)) && !at(&format!("coils[{index}]")) {
                assert_eq!(without_keys(coil), without_keys(&without.coils[index]), "{path}");
            }
        }
    }
}

/// Part of a report without the numbers of its workings, which count on through the report.
fn without_keys(part: &impl serde::Serialize) -> Value {
    fn strip(value: &mut Value) {
        match value {
            Value::Object(object) => {
                object
                    .remove("working")
                    .filter(Value::is_object)
                    .map(|state| object.insert("working".into(), state));
                object.values_mut().for_each(strip);
            }
            Value::Array(items) => items.iter_mut().for_each(strip),
            _ => {}
        }
    }
    let mut value = serde_json::to_value(part).unwrap();
    strip(&mut value);
    value
}

/// The figures of the outer coil's sheet, what nests go by among them.
fn sheet(job: &Value) -> Value {
    let job = file::from_value(job.clone()).unwrap();
    let mut sheet = without_keys(&coil_sheet(&job, &TABLES, "outer").sheet.unwrap());
    let mut coil = sheet.as_object_mut().unwrap().remove("coil").unwrap();
    sheet.as_object_mut().unwrap().append(coil.as_object_mut().unwrap());
    // Drawings and lists are there even where nothing is in them.
    let apart = ["section", "axes", "duty", "new_spring", "remarks"];
    sheet.as_object_mut().unwrap().retain(|name, _| !apart.contains(&name.as_str()));
    sheet
}

/// What a coil's own figures need of its drawing, by hand: without a field just those are gone.
#[test]
fn a_coil_without_a_field_loses_what_needs_it() {
    let whole = sheet(&demo());
    let names =
        |value: &Value| -> Vec<String> { value.as_object().unwrap().keys().cloned().collect() };
    let sizes = ["bar", "bergstrasser", "index", "inside", "mean", "outside", "wahl"];
    let helix = [
        "bar_length",
        "growth_free",
        "growth_held",
        "mass",
        "pitch",
        "pitch_angle",
        "rate_corrected",
        "surge",
    ];
    let of_loads = ["buckling", "lateral_rate", "standing", "stress_solid", "travel"];
    let of_turns = ["ends", "least_gaps", "least_height", "rate", "solid", "solid_least", "trust"];
    for (field, gone) in [
        ("bar", [&sizes[..], &helix, &of_loads, &of_turns].concat()),
        (
            "outside",
            [
                &sizes[..],
                &helix,
                &of_loads[..4],
                &["ends", "least_gaps", "least_height", "rate", "trust"],
            ]
            .concat(),
        ),
        ("turns", [&["active_turns"][..], &helix, &of_loads, &of_turns].concat()),
        ("ends", [&["active_turns"][..], &helix, &of_loads, &of_turns].concat()),
        ("free", [&["free"][..], &helix, &of_loads].concat()),
        ("hand", vec![]),
        ("limits", vec![]),
        ("steel", vec![]),
        ("ends_turn", vec![]),
        ("name", vec![]),
    ] {
        let mut job = demo();
        job_path::put(&mut job, &format!("coils[0].{field}"), None);
        let left = sheet(&job);
        let mut expected: Vec<String> = names(&whole);
        expected.retain(|name| !gone.contains(&name.as_str()));
        assert_eq!(names(&left), expected, "{field}");
        for name in expected.iter().filter(|name| *name != "name") {
            assert_eq!(left[name], whole[name], "{field}: {name}");
        }
    }
}

/// The demo's drawings have no duty, tolerances or press test; these coils have all that a sheet is of.
#[test]
fn every_field_of_a_full_sheet_can_hold_anything() {
    let odd = [
        Value::Null,
        json!({}),
        json!([]),
        json!(0),
        json!(-1),
        json!(1e308),
        json!("0"),
        json!("1/64"),
        json!("1e-30"),
        json!("119 in"),
        json!("9".repeat(400)),
        json!("open"),
        json!("one-free"),
    ];
    for (name, coil) in [("cold-wound", "return"), ("hot-wound", "bolster")] {
        let whole: Value = serde_json::from_str(&corpus::named(name).unwrap().text).unwrap();
        let paths = job_path::all(&whole);
        assert!(paths.iter().filter(|path| path.starts_with("coils[0].")).count() > 25, "{name}");
        for (path, value) in paths.iter().flat_map(|path| odd.iter().map(move |odd| (path, odd))) {
            let mut job = whole.clone();
            job_path::put(&mut job, path, Some(value.clone()));
            let answer = coil_sheet(&file::from_value(job).unwrap(), &TABLES, coil);
            assert!(answer.sheet.is_some() != answer.problem.is_some(), "{name}, {path}: {value}");
            for figure in corpus::figures(&serde_json::to_value(&answer.sheet).unwrap()) {
                let finite = figure["si"].as_f64().is_some_and(f64::is_finite);
                assert!(finite, "{name}, {path}: {value} gives {figure}");
            }
        }
    }
}

#[test]
fn a_job_of_nothing_is_answered() {
    for job in [json!({}), json!({"coils": [null], "nests": [null, {"seats": [null]}]})] {
        let report = report(&job);
        let codes: Vec<_> = report.problems.iter().map(|problem| &*problem.code).collect();
        assert!(codes.contains(&"format-missing"), "{codes:?}");
        assert!(!report.cautions.is_empty());
    }
}

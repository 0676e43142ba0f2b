//! The engine in a browser: the same reports as natively, and an answer to everything.

#![cfg(test)]

#[path = "../../tests/src/kept.rs"]
#[expect(unreachable_pub, reason = "it is the module of another crate")]
mod kept;

use coilnest_web as engine;
use include_dir::{Dir, include_dir};
use js_sys::{Array, Function, JSON, Object, Reflect};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeSet;
use wasm_bindgen::prelude::*;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

static JOBS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/../tests/jobs");
static DEMOS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/demo");
/// What the kept answers of a frame were asked.
const DIP: &str = "1/2 in";

fn text(value: &JsValue) -> String {
    JSON::stringify(value).unwrap().into()
}

fn parsed(text: &str) -> JsValue {
    JSON::parse(text).unwrap()
}

fn get(value: &JsValue, field: &str) -> JsValue {
    Reflect::get(value, &field.into()).unwrap()
}

fn js(text: &str) -> JsValue {
    text.into()
}

/// Something made by JavaScript itself.
fn made(body: &str) -> JsValue {
    Function::new_no_args(body).call0(&JsValue::NULL).unwrap()
}

/// Every job that is kept, with its name and the lines of the report that native code gave.
fn jobs() -> Vec<(String, &'static str, &'static str)> {
    let reports = JOBS.files().filter_map(|file| {
        let name = file.path().to_str()?.strip_suffix(".report.txt")?;
        Some((name.to_owned(), file.contents_utf8()?))
    });
    let with_job = |(name, report): (String, &'static str)| {
        let demo = || DEMOS.get_file(format!("{name}.json"));
        let file = JOBS.get_file(format!("{name}.job.json")).or_else(demo);
        let job = file.and_then(|file| file.contents_utf8()).unwrap();
        (name, job, report)
    };
    reports.map(with_job).collect()
}

/// The lines of an answer.
fn lines(answer: &JsValue) -> String {
    kept::lines(&text(answer)).unwrap()
}

/// The lines of several answers, each by its name.
fn lines_of(answers: &[(impl AsRef<str>, JsValue)]) -> String {
    let fields: Vec<String> = answers
        .iter()
        .map(|(name, answer)| format!("{}:{}", Value::from(name.as_ref()), text(answer)))
        .collect();
    kept::lines(&format!("{{{}}}", fields.join(","))).unwrap()
}

/// What native code answered of a job, where it was asked.
fn kept_lines(name: &str, kind: &str) -> Option<&'static str> {
    JOBS.get_file(format!("{name}.{kind}.txt"))?.contents_utf8()
}

/// Natively `judge` is held to the report of each job (`tests/tests/judge.rs`).
#[wasm_bindgen_test]
fn every_job_is_judged_by_the_tape_alone() {
    for (name, job, _) in jobs() {
        let (whole, taped) = (engine::assess(&job.into()), engine::judge(&job.into()));
        assert_eq!(text(&get(&taped, "tally")), text(&get(&whole, "tally")), "{name}");
        assert_eq!(text(&get(&taped, "keys")), text(&get(&whole, "keys")), "{name}");
    }
}

#[wasm_bindgen_test]
fn every_job_has_the_report_that_native_code_gives() {
    let jobs = jobs();
    assert!(jobs.len() > 12, "{} jobs", jobs.len());
    for (name, job, report) in jobs {
        assert!(lines(&engine::assess(&job.into())) == report, "{name}, from its text");
        assert!(lines(&engine::assess(&parsed(job))) == report, "{name}, from its object");
    }
}

#[wasm_bindgen_test]
fn every_coil_has_the_sheet_that_native_code_gives() {
    let mut seen = 0;
    for (name, job, _) in jobs() {
        let coils = Array::from(&get(&engine::assess(&job.into()), "coils"));
        let ids: BTreeSet<String> =
            coils.iter().map(|coil| get(&coil, "id").as_string().unwrap()).collect();
        for job in [job.into(), parsed(job)] {
            let sheet = |id: &String| (id.clone(), engine::coil_sheet(&job, &js(id)));
            let sheets: Vec<(String, JsValue)> = ids.iter().map(sheet).collect();
            assert!(kept_lines(&name, "sheet") == Some(&lines_of(&sheets)), "{name}");
        }
        seen += ids.len();
    }
    assert!(seen > 20, "{seen} coils");
}

#[wasm_bindgen_test]
fn every_frame_has_the_answers_that_native_code_gives() {
    let mut seen = 0;
    for (name, job, _) in jobs() {
        let Some(kept) = kept_lines(&name, "level") else { continue };
        let job = parsed(job);
        let level = engine::level(&job);
        let first = Array::from(&get(&level, "wheels")).get(0);
        let last = Array::from(&get(&get(&level, "plan"), "nests")).pop();
        let name_of = |value: &JsValue, field: &str| get(value, field).as_string().unwrap();
        let dip = engine::HeldFrame::new(&job).dip(
            &js(&name_of(&first, "name")),
            &js(DIP),
            &js(&name_of(&last, "nest")),
        );
        let answers = [
            ("level", level),
            ("matching", engine::matching(&job, &JsValue::UNDEFINED)),
            ("dip", dip),
        ];
        assert!(lines_of(&answers) == kept, "{name}");
        seen += 1;
    }
    assert!(seen >= 2, "{seen} frames");
}

#[wasm_bindgen_test]
fn every_replacement_has_the_answers_that_native_code_gives() {
    let mut seen = 0;
    for (name, job, _) in jobs() {
        let Some(kept) = kept_lines(&name, "replace") else { continue };
        let job = parsed(job);
        let answers =
            [("replace", engine::replace(&job)), ("size", engine::size(&job, &JsValue::UNDEFINED))];
        assert!(lines_of(&answers) == kept, "{name}");
        seen += 1;
    }
    assert!(seen >= 1, "{seen} jobs");
}

#[wasm_bindgen_test]
fn a_dip_is_asked_for_anything() {
    let frame = engine::HeldFrame::new(&engine::demo());
    let code = |wheel: &str, depth: &str, stuck: &str| {
        let problem = get(&frame.dip(&js(wheel), &js(depth), &js(stuck)), "problem");
        if problem.is_undefined() { None } else { get(&problem, "code").as_string() }
    };
    assert_eq!(code("A left", "1/2 in", ""), None);
    assert_eq!(code("A left", "-1/2 in", "B right"), None);
    assert_eq!(code("A left", "deep", "").as_deref(), Some("no-number"));
    assert_eq!(code("A left", "9 ft", "").as_deref(), Some("too-large"));
    assert_eq!(code("a left", "1 in", "").as_deref(), Some("no-such-wheel"));
    assert_eq!(code("A left", "1 in", "Z").as_deref(), Some("no-such-wheel"));
}

/// Asked before there is a frame, it says what is lacking.
#[wasm_bindgen_test]
fn a_frame_that_does_not_stand_says_what_it_lacks() {
    let code = |job: &str| {
        let frame = engine::HeldFrame::new(&parsed(job));
        let dip = get(&frame.dip(&js("A left"), &js("1/2 in"), &js("")), "problem");
        let problems = get(&frame.weighed_at(&js("1 in"), &js("1 in")), "problems");
        assert_eq!(text(&dip), text(&Array::from(&problems).get(0)), "{job}");
        (get(&dip, "code").as_string().unwrap(), get(&dip, "path").as_string().unwrap())
    };
    let told = |code: &str, path: &str| (code.to_owned(), path.to_owned());
    assert_eq!(code(r#"{"format":"coilnest-job/1"}"#), told("no-frame", "frame"));
    let weightless = r#"{"format":"coilnest-job/1","frame":{"supports":[{"nest":"A"}]}}"#;
    assert_eq!(code(weightless).1.split('[').next(), Some("frame.supports"));
    let heavy = r#"{"format":"coilnest-job/1","frame":{"weight":"1 fathom"}}"#;
    assert_eq!(code(heavy).1, "frame.weight");
}

/// A reference that is left behind at each refusal would fill the memory in the end.
#[wasm_bindgen_test]
fn nothing_is_left_behind() {
    let odd = made("return { get title() { throw new Error('no') } }");
    let round = || {
        for value in [&js("{"), &odd, &JsValue::NULL] {
            let _ = (engine::assess(value), engine::judge(value));
            let _ = (engine::open(value), engine::save(value));
        }
    };
    round();
    let before = wasm_bindgen::externref_heap_live_count();
    for _ in 0..500 {
        round();
    }
    assert!(wasm_bindgen::externref_heap_live_count() <= before + 8);
}

#[wasm_bindgen_test]
fn a_job_that_no_file_can_hold_is_refused_where_it_ends() {
    let refused = |body: &str| {
        let problem = Array::from(&get(&engine::assess(&made(body)), "problems")).get(0);
        ["code", "path"].map(|field| get(&problem, field).as_string().unwrap_or_default())
    };
    let own =
        "const job = { format: 'coilnest-job/1', coils: [{}] }; job.coils[0].bar = job; return job";
    assert_eq!(refused(own), ["holds-itself", "coils[0].bar"]);
    let shared = "let one = { bar: '1' };\
        for (let i = 0; i < 28; i++) { const held = one; one = { a: held, b: held, toJSON: () => ({ a: held, b: held }) } }\
        return { coils: one }";
    let begun = js_sys::Date::now();
    let [code, path] = refused(shared);
    assert_eq!(code, "too-many-values");
    assert!(path.starts_with("coils.a.a") || path.starts_with("coils.b"), "{path}");
    let _ = engine::save(&made(shared));
    let _ = engine::switch_system(&made(shared), &js("metric"));
    assert!(js_sys::Date::now() - begun < 5000.0);
}

#[wasm_bindgen_test]
fn another_system_changes_a_copy_alone() {
    for body in [
        "const job = { format: 'coilnest-job/1', coils: [{ free: '12' }] }; return job",
        "const job = { format: 'coilnest-job/1', coils: [{ free: '12' }] }; job.self = job; return job",
    ] {
        let job = made(body);
        let _ = engine::switch_system(&job, &js("metric"));
        assert!(get(&job, "system").is_undefined(), "{body}");
        assert_eq!(
            get(&Array::from(&get(&job, "coils")).get(0), "free").as_string().as_deref(),
            Some("12")
        );
    }
}

#[wasm_bindgen_test]
fn a_table_of_coils_is_read_and_written() {
    let truck = engine::demo();
    let table = engine::coil_table(&truck);
    let bare = parsed(&text(&truck));
    Reflect::set(&bare, &"bench".into(), &Array::new()).unwrap();
    let read =
        engine::coil_rows(&bare, &js(&table), &1.into(), &js(""), &true.into(), &1000.into());
    assert_eq!(text(&get(&read, "rows")), text(&get(&truck, "bench")));
    assert_eq!(Array::from(&get(&read, "refused")).length(), 0);
    let broken = engine::coil_rows(
        &bare,
        &js("1,outer,13\n2,outer,13 17/16\n3,outer,13"),
        &1.into(),
        &js(""),
        &true.into(),
        &9.into(),
    );
    assert_eq!(Array::from(&get(&broken, "rows")).length(), 2);
    assert_eq!(Array::from(&get(&broken, "refused")).length(), 1);
}

#[wasm_bindgen_test]
fn a_sheet_is_asked_for_anything() {
    let demo = engine::demo();
    for coil in ["", "Outer", "outer ", "\u{1f529}", "coils[0]", "__proto__"] {
        let answer = engine::coil_sheet(&demo, &js(coil));
        assert!(get(&answer, "sheet").is_undefined(), "{coil}");
        let code = get(&get(&answer, "problem"), "code").as_string();
        assert_eq!(code.as_deref(), Some("no-such-coil"), "{coil}");
    }
    let odd = r#"{"coils":[{"id":"a","bar":[],"tolerances":7,"duty":{"least":{}},"press_test":[null,4,{"height":"x"}]}]}"#;
    let answer = engine::coil_sheet(&parsed(odd), &js("a"));
    assert!(get(&answer, "sheet").is_object() && get(&answer, "workings").is_object());
}

/// Field by field, where the engine goes by one text.
#[wasm_bindgen_test]
fn a_report_is_the_object_that_serde_makes_of_it() {
    let fields = serde_wasm_bindgen::Serializer::json_compatible();
    for (name, job, _) in jobs() {
        let read = coilnest::job::file::open(job).unwrap();
        let report = coilnest::job::assess(&read, &coilnest_tables::TABLES);
        let made = report.serialize(&fields).unwrap();
        assert!(text(&engine::assess(&job.into())) == text(&made), "{name}");
    }
}

#[wasm_bindgen_test]
fn a_job_of_any_kind_gets_a_report() {
    let deep = format!("{}{}", "[".repeat(5000), "]".repeat(5000));
    let values = [
        JsValue::UNDEFINED,
        JsValue::NULL,
        7.into(),
        f64::NAN.into(),
        true.into(),
        "".into(),
        "{".into(),
        "nonsense".into(),
        "x".repeat(5_000_000).into(),
        deep.as_str().into(),
        parsed(&deep),
        Array::new().into(),
        Object::new().into(),
        made("return () => 7"),
        made("return Symbol('job')"),
        made("return 10n"),
        made("return new Date(NaN)"),
        made("const job = {}; job.self = job; return job"),
        made("const job = {}; job.one = job; job.other = [job, job]; return job"),
        made("return { get title() { throw new Error('no') } }"),
        made("return { toJSON() { throw new Error('no') } }"),
        made("return new Proxy({}, { ownKeys() { throw new Error('no') } })"),
        made("const { proxy, revoke } = Proxy.revocable({}, {}); revoke(); return proxy"),
        made("return Object.create(null)"),
        made("return { title: '\\ud800', coils: [{ id: '\\udfff' }] }"),
        made("return { coils: new Array(1000).fill({ bar: Infinity, free: undefined }) }"),
    ];
    for (index, value) in values.iter().enumerate() {
        let report = engine::assess(value);
        for list in ["problems", "notes", "cautions", "coils", "nests", "keys"] {
            assert!(get(&report, list).is_array(), "value {index}: {list}");
        }
        assert!(Array::from(&get(&report, "problems")).length() > 0, "value {index}");
        let nest = engine::assess_nest(value, &js("A left"));
        assert!(Array::from(&get(&nest, "problems")).length() > 0, "value {index}");
        let state = engine::nest_state(value, &js("A left"), &js("11 1/2"));
        assert!(get(&state, "problem").is_object(), "value {index}");
        assert!(
            engine::tape(value, &js("nests[0].seats[0].readings[0]")).is_undefined(),
            "{index}"
        );
        let sheet = engine::coil_sheet(value, &js("outer"));
        assert!(get(&sheet, "problem").is_object(), "value {index}");
        assert!(get(&engine::level(value), "frame").is_undefined(), "value {index}");
        let frame = engine::HeldFrame::new(value);
        assert!(
            get(&frame.dip(&js("A left"), &js("1 in"), &js("")), "wheels").is_array(),
            "value {index}"
        );
        assert!(
            get(&frame.weighed_at(&js("1 in"), &js("1 in")), "frame").is_undefined(),
            "value {index}"
        );
        assert!(
            get(&engine::matching(value, &JsValue::UNDEFINED), "bench").is_array(),
            "value {index}"
        );
        assert!(get(&engine::replace(value), "candidates").is_array(), "value {index}");
        assert!(
            get(&engine::size(value, &JsValue::UNDEFINED), "designs").is_array(),
            "value {index}"
        );
        let rows = engine::coil_rows(
            value,
            &js("1,outer,13"),
            &1.into(),
            &js(""),
            &true.into(),
            &10.into(),
        );
        assert!(get(&rows, "rows").is_array(), "value {index}");
        let _ = engine::coil_table(value);
        let _ = engine::switch_system(value, &js("metric"));
        let _ = engine::save(value);
    }
}

#[wasm_bindgen_test]
fn a_nest_is_asked_anything() {
    let demo = engine::demo();
    let code = |nest: &str, asked: &str| {
        let answer = engine::nest_state(&demo, &js(nest), &js(asked));
        assert!(get(&answer, "workings").is_object());
        let problem = get(&answer, "problem");
        if problem.is_undefined() { None } else { get(&problem, "code").as_string() }
    };
    assert_eq!(code("A left", "solid"), None);
    assert_eq!(code("A left", "free"), None);
    assert_eq!(code("A left", "11 1/2 in"), None);
    assert_eq!(code("A left", "5000 lb"), None);
    assert_eq!(code("A left", "1 in").as_deref(), Some("below-solid"));
    assert_eq!(code("A left", "").as_deref(), Some("empty"));
    assert_eq!(code("A left", "12 psi").as_deref(), Some("wrong-unit"));
    assert_eq!(code("Z", "solid").as_deref(), Some("no-such-nest"));
    assert_eq!(code("", "").as_deref(), Some("no-such-nest"));
    let solid = engine::nest_state(&demo, &js("A left"), &js("solid"));
    assert_eq!(get(&get(&solid, "state"), "solid").as_bool(), Some(true));
    assert!(get(&solid, "section").is_object());
    // A blank job's nest says what is missing.
    let blank = engine::nest_state(&engine::blank(), &js("Nest 1"), &js("12"));
    assert_eq!(get(&get(&blank, "problem"), "code").as_string().as_deref(), Some("load-unknown"));
}

#[wasm_bindgen_test]
fn a_tape_is_there_where_a_reading_can_be() {
    let demo = engine::demo();
    for path in ["nests[0].seats[0].readings[0]", "nests[1].seats[1].readings[2]"] {
        let strip = engine::tape(&demo, &js(path));
        assert!(Array::from(&get(&strip, "stops")).length() > 10, "{path}");
    }
    for path in [
        "",
        "nests",
        "nests[0]",
        "nests[9].seats[0].readings[0]",
        "nests[0].seats[9].readings[0]",
        "nests[0].seats[0].readings[99999999999999999999]",
        "nests[-1].seats[0].readings[0]",
        "nests[0].seats[0].readings[0].more",
        "coils[0].free",
        "\u{1f529}[0][0][0]",
    ] {
        assert!(engine::tape(&demo, &js(path)).is_undefined(), "{path}");
    }
}

#[wasm_bindgen_test]
fn keys_of_the_tape_write_a_reading() {
    for (before, key, after) in [
        ("15", "3/8", "15 3/8"),
        ("15 3/8", "1/2", "15 1/2"),
        ("15 1/2", "scant", "15 1/2 scant"),
        ("15 1/2 scant", "scant", "15 1/2"),
    ] {
        assert_eq!(engine::press(&js(before), &js(key)), after);
    }
    for key in ["", "nonsense", "\u{1f529}", "1/0"] {
        let _ = engine::press(&js("15 3/8"), &js(key));
        let _ = engine::press(&js(""), &js(key));
    }
}

#[wasm_bindgen_test]
fn a_job_in_the_other_system_means_the_same() {
    let demo = engine::demo();
    let there = engine::switch_system(&demo, &js("metric"));
    assert_eq!(get(&there, "system").as_string().as_deref(), Some("metric"));
    let si = |job: &JsValue| {
        let nests = Array::from(&get(&engine::assess(job), "nests"));
        get(&get(&get(&nests.get(0), "working"), "load"), "si").as_f64().unwrap()
    };
    assert!((si(&there) - si(&demo)).abs() < 1e-9 * si(&demo));
    let back = engine::switch_system(&there, &js("inch"));
    assert!((si(&back) - si(&demo)).abs() < 1e-9 * si(&demo));
    for odd in ["", "imperial", "\u{1f529}"] {
        assert!(engine::switch_system(&demo, &js(odd)).is_object());
    }
}

#[wasm_bindgen_test]
fn files_are_opened_and_saved() {
    let opened = engine::open(&js(&engine::save(&engine::demo())));
    assert!(get(&opened, "problem").is_undefined());
    let job = get(&opened, "job");
    assert_eq!(text(&job), text(&engine::demo()));
    assert_eq!(text(&get(&engine::open(&js(&engine::save(&job))), "job")), text(&job));

    let code = |file: &str| {
        let opened = engine::open(&js(file));
        assert!(get(&opened, "job").is_undefined(), "{file}");
        get(&get(&opened, "problem"), "code").as_string().unwrap()
    };
    assert_eq!(code(r#"{"format": "coilnest-job/2"}"#), "format-newer");
    assert_eq!(code(r#"{"format": "something"}"#), "format-unknown");
    assert_eq!(code("{}"), "format-missing");
    for file in ["", "{", "[]", "null", "7", "\u{feff}"] {
        assert_eq!(code(file), "not-object", "{file}");
    }
    // Fields of a later hand, and what should not be in a field, stay as they are.
    let odd = r#"{"format":"coilnest-job/1","title":{"odd":[1,2.5,"x"]},"coils":[{"id":"outer","colour":"grey"},7],"weather":{"rain":0.1}}"#;
    let kept = get(&engine::open(&js(&engine::save(&parsed(odd)))), "job");
    for field in ["format", "title", "coils", "weather"] {
        assert_eq!(text(&get(&kept, field)), text(&get(&parsed(odd), field)), "{field}");
    }
}

#[wasm_bindgen_test]
fn the_engine_describes_itself() {
    assert_eq!(engine::version(), env!("CARGO_PKG_VERSION"));
    let choices = engine::choices(&"inch".into());
    let measured = engine::measure_choices();
    assert_eq!(text(&get(&measured, "tape_classes")), text(&get(&choices, "tape_classes")));
    for list in ["ends", "need_ends", "steels", "tape_classes"] {
        assert!(Array::from(&get(&choices, list)).length() > 1, "{list}");
    }
}

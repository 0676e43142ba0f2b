//! What is reported of a job is read back from its text: the same report, and written the same again.

use coilnest::job::coil_table::{Piece, coil_csv, coil_rows};
use coilnest::job::report::{Figure, Letters, Opened, WorkingEntry, Workings};
use coilnest::job::respell::respell;
use coilnest::job::spreadsheet::{Decimals, spreadsheets};
use coilnest::job::{
    HeldFrame, Job, Report, assess, assess_nest, bell, choices, coil_sheet, file, judge, matching,
    measure_choices, nest_state, replace, since, size, strip::strip,
};
use coilnest::quantity::System;
use coilnest_tables::TABLES;
use coilnest_tests::corpus::{self, DIP, LevelAnswers};
use coilnest_tests::read_back::is_same;
use serde_json::{Value, json};

fn opened(name: &str) -> Job {
    file::open(&corpus::named(name).unwrap().text).unwrap()
}

fn report() -> Report {
    assess(&opened("whole-truck"), &TABLES)
}

/// All that is answered of a job, read back; how many answers there were.
fn all_of(job: &Job) -> Result<usize, String> {
    let mut read = 0;
    macro_rules! same {
        ($($report:expr),* $(,)?) => {
            $(is_same(&$report).map_err(|why| format!("{}: {why}", stringify!($report)))?; read += 1;)*
        };
    }
    let whole = assess(job, &TABLES);
    let LevelAnswers { level: frame, dip, .. } = LevelAnswers::of(job);
    let held = HeldFrame::of(job, &TABLES);
    same!(
        job.clone(),
        whole,
        judge(job, &TABLES),
        frame,
        dip,
        held.dip("", DIP, ""),
        held.weighed_at("1 in", "-1 in"),
        matching(job, &TABLES),
        replace(job, &TABLES),
        size(job, &TABLES),
        since(job, &TABLES),
        coil_rows(job, &Piece::whole(&coil_csv(job))),
        coil_rows(job, &Piece::whole("label,role,reading 1\n17,nobody,13 7/8\n18,,1")),
        spreadsheets(job, &TABLES, Decimals::Comma),
        Opened { job: Some(job.clone()), problem: None },
        coil_sheet(job, &TABLES, "nobody"),
    );
    for system in [System::Inch, System::Metric] {
        same!(respell(job, system), choices(&TABLES, system));
    }
    for coil in &whole.coils {
        same!(coil_sheet(job, &TABLES, &coil.id));
    }
    for (n, nest) in whole.nests.iter().enumerate() {
        same!(assess_nest(job, &TABLES, &nest.id));
        for asked in ["11 1/2 in", "5000 lb", "nonsense"] {
            same!(nest_state(job, &TABLES, &nest.id, asked));
        }
        for s in 0..nest.seats.len() {
            let seat = format!("nests[{n}].seats[{s}]");
            same!(bell(job, &TABLES, &seat), strip(job, &TABLES, &format!("{seat}.readings[0]")));
        }
    }
    Ok(read)
}

#[test]
fn every_report_of_every_kept_job_is_read_back() {
    let mut read = 0;
    for kept in corpus::all().unwrap() {
        let job = file::open(&kept.text).unwrap();
        read += all_of(&job).unwrap_or_else(|why| panic!("{}: {why}", kept.name));
    }
    is_same(&measure_choices(&TABLES)).unwrap();
    let problem = file::open("{").unwrap_err();
    is_same(&Opened { job: None, problem: Some(*problem) }).unwrap();
    assert!(read > 800, "{read}");
}

/// What a later version adds is passed over, wherever it stands.
#[test]
fn a_field_that_is_not_known_is_passed_over() {
    fn add(value: &mut Value) {
        match value {
            Value::Object(fields) => {
                // The keys of workings are no fields.
                let parts = fields.iter_mut().filter(|(name, _)| *name != "workings");
                parts.for_each(|(_, part)| add(part));
                fields.insert("of_a_later_version".to_owned(), json!([{ "si": 1 }]));
            }
            Value::Array(items) => items.iter_mut().for_each(add),
            _ => {}
        }
    }
    let mut report = report();
    report.workings = Workings::default();
    let mut later = serde_json::to_value(&report).unwrap();
    add(&mut later);
    assert_eq!(later["nests"][0]["seats"][0]["of_a_later_version"][0]["si"], 1);
    assert_eq!(serde_json::from_value::<Report>(later).unwrap(), report);
}

/// A code, a unit or a title that is new is taken; a word of a closed list is refused by its name.
#[test]
fn a_word_that_is_not_known_is_named() {
    let mut later = serde_json::to_value(report()).unwrap();
    later["nests"][0]["seats"][0]["free"]["unit"] = json!("furlong");
    later["cautions"][0]["code"] = json!("of-a-later-version");
    let read: Report = serde_json::from_value(later.clone()).unwrap();
    assert_eq!(read.nests[0].seats[0].free.as_ref().unwrap().unit, "furlong");
    assert_eq!(read.cautions[0].code, "of-a-later-version");
    later["nests"][0]["seats"][0]["verdict"]["word"] = json!("perhaps");
    let refused = serde_json::from_value::<Report>(later).unwrap_err().to_string();
    assert!(refused.contains("unknown variant `perhaps`"), "{refused}");
    assert!(refused.contains("`too-close`"), "{refused}");
}

#[test]
fn a_report_without_what_it_must_have_is_refused_by_the_field() {
    let mut half = serde_json::to_value(report()).unwrap();
    half["nests"][0]["seats"][0]["free"].as_object_mut().unwrap().remove("si");
    let refused = serde_json::from_value::<Report>(half).unwrap_err().to_string();
    assert!(refused.contains("missing field `si`"), "{refused}");
    assert!(serde_json::from_str::<Report>("[]").is_err());
    let refused = serde_json::from_value::<Job>(json!("a job")).unwrap_err().to_string();
    assert_eq!(refused, "an object was expected");
}

/// Objects of other programs have their keys in any order, as `w1`, `w10`, `w2`: figures still find their workings.
#[test]
fn workings_are_read_in_any_order() {
    let report = report();
    assert!(report.workings.iter().len() > 20);
    let shuffled: Value = serde_json::to_value(&report.workings).unwrap();
    let read: Workings = serde_json::from_value(shuffled).unwrap();
    for (number, whole) in (1..).zip(report.workings.iter()) {
        let key = format!("w{number}");
        let entry = read.get(&key).unwrap();
        assert_eq!(entry.formula, whole.formula, "{key}");
        assert_eq!(entry.result, whole.result, "{key}");
        assert!(report.workings.formula(&key).is_some() && read.formula(&key).is_none());
    }
}

#[test]
fn workings_with_a_gap_are_refused() {
    let text = serde_json::to_string(&report().workings).unwrap();
    let refused = |text: &str| serde_json::from_str::<Workings>(text).unwrap_err().to_string();
    let gap = refused(&text.replacen("\"w7\":", "\"w700\":", 1));
    assert!(gap.contains("`w7` is missing"), "{gap}");
    let twice = refused(&text.replacen("\"w7\":", "\"w6\":", 1));
    assert!(twice.contains("stands twice"), "{twice}");
    let odd = refused(&text.replacen("\"w7\":", "\"v7\":", 1));
    assert!(odd.contains("unknown field `v7`"), "{odd}");
}

/// Letters are in the order of the formula, which is not that of the alphabet.
#[test]
fn letters_keep_the_order_of_the_text() {
    let text = r#"{"formula":"k = G / D","with":"2 / 1","letters":{"G":"2","D":"1"},"result":"2","source":"nobody"}"#;
    let read: WorkingEntry = serde_json::from_str(text).unwrap();
    let signs: Vec<&str> = read.letters.0.iter().map(|(sign, _)| &**sign).collect();
    assert_eq!(signs, ["G", "D"]);
    is_same(&read).unwrap();
    let without: WorkingEntry =
        serde_json::from_str(&text.replace(r#""letters":{"G":"2","D":"1"},"#, "")).unwrap();
    assert_eq!(without.letters, Letters::default());
}

/// To the last bit: a number is written with as many digits as it takes.
#[test]
fn numbers_are_read_to_the_last_bit() {
    let mut random = oorandom::Rand64::new(20_261_128);
    for _ in 0..20_000 {
        let number = f64::from_bits(random.rand_u64());
        if number.is_finite() {
            let figure = Figure { si: number, ..Figure::default() };
            let text = serde_json::to_string(&figure).unwrap();
            let read: Figure = serde_json::from_str(&text).unwrap();
            assert_eq!(read.si.to_bits(), number.to_bits(), "{text}");
        }
    }
}

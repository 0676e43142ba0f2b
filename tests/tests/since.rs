//! A truck beside an earlier job of it: by label, what each coil has lost, and never more than the tapes
//! can tell.

use coilnest::change::{Estimate, Word, change};
use coilnest::job::report::{SinceReport, SinceWord};
use coilnest::job::{file, since};
use coilnest::quantity::{Length, unit::millimeter};
use coilnest_tables::TABLES;
use coilnest_tests::corpus;
use coilnest_tests::job_path::put;
use proptest::prelude::*;
use serde_json::{Value, json};

fn truck() -> Value {
    let text = std::fs::read_to_string(corpus::folder("jobs/whole-truck.job.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

/// A job of one coil of a label, read so at two places.
fn one(label: &str, readings: [&str; 2], graduation: &str) -> Value {
    json!({
        "format": "coilnest-job/1",
        "tape": { "graduation": graduation, "error": "1/32", "ends_error": "1/32" },
        "coils": [{ "id": "outer", "name": "Outer", "free": "13 15/16" }],
        "nests": [{ "id": "A", "seats": [{ "coil": "outer", "label": label, "readings": readings }] }]
    })
}

fn compared(now: &Value, earlier: &Value) -> SinceReport {
    let mut job = now.clone();
    put(&mut job, "earlier", Some(earlier.clone()));
    since(&file::from_value(job).unwrap(), &TABLES)
}

#[test]
fn without_an_earlier_job_nothing_is_compared() {
    let job = file::from_value(truck()).unwrap();
    assert_eq!(since(&job, &TABLES), SinceReport::default());
}

#[test]
fn the_same_readings_have_lost_nothing() {
    let report = compared(&truck(), &truck());
    assert!(report.coils.len() >= 8, "{report:?}");
    for coil in &report.coils {
        assert_eq!(coil.change.si.to_bits(), 0.0f64.to_bits(), "{coil:?}");
        assert_eq!(coil.word, SinceWord::WithinDoubt, "{coil:?}");
    }
}

#[test]
fn what_was_lost_is_said_with_its_doubt() {
    let then = one("7", ["13 15/16", "13 15/16"], "1/16");
    let now = one("7", ["13 9/16", "13 9/16"], "1/16");
    let report = compared(&now, &then);
    let [coil] = report.coils.as_slice() else { panic!("{report:?}") };
    assert_eq!(coil.word, SinceWord::Lost);
    assert_eq!(coil.change.text, "−3/8 in");
    // Either measurement: (1/32 + 1/32) / √12 by the marks, 1/32 / √3 by the tape, the same / √2 by two
    // places; the two of them by squares.
    let (mark, tape) = (1.0 / 32.0 / 3f64.sqrt(), 1.0 / 32.0 / 3f64.sqrt());
    let each = (mark * mark + tape * tape + tape * tape / 2.0).sqrt();
    let expected = (2.0 * each * each).sqrt() * 0.0254;
    let doubt = coil.change.doubt_si.unwrap();
    assert!((doubt - expected).abs() < 1e-12, "{doubt} and not {expected}");
    assert_eq!(coil.sentence, "3/8 in ± 3/64 in shorter than it was.");
    assert!(report.sentence.starts_with("1 shorter than "), "{}", report.sentence);

    let back = compared(&then, &now);
    assert_eq!(back.coils[0].word, SinceWord::Gained);
    assert_eq!(back.coils[0].change.text, "3/8 in");
}

#[test]
fn a_job_in_millimetres_is_compared_with_one_in_inches() {
    let mut then = one("7", ["354", "354"], "1");
    put(&mut then, "system", Some("metric".into()));
    put(&mut then, "tape.error", Some("0.8".into()));
    put(&mut then, "tape.ends_error", Some("0.8".into()));
    put(&mut then, "coils[0].free", Some("354".into()));
    let report = compared(&one("7", ["13 15/16", "13 15/16"], "1/16"), &then);
    let off = 13.9375 * 0.0254 - 0.354;
    assert!((report.coils[0].change.si - off).abs() < 1e-12, "{report:?}");
    assert_eq!(report.coils[0].word, SinceWord::WithinDoubt);
}

#[test]
fn a_coil_that_cannot_be_compared_says_why() {
    let now = one("7", ["13 15/16", "13 15/16"], "1/16");
    let seat = |label: &str, readings: Value| json!({ "coil": "outer", "label": label, "readings": readings });
    let with = |seats: Value| {
        let mut job = now.clone();
        put(&mut job, "nests[0].seats", Some(seats));
        job
    };
    let read = json!(["13 15/16"]);
    for (then, after, why) in [
        (now.clone(), with(json!([seat("8", read.clone())])), "8 (Outer): not in the earlier job"),
        (now.clone(), with(json!([seat("8", read.clone())])), "7 (Outer): not in this job"),
        (now.clone(), with(json!([seat("7", json!([]))])), "7 (Outer): not measured yet"),
        (with(json!([seat("7", json!([]))])), now.clone(), "7 (Outer): not measured then"),
        (
            now.clone(),
            with(json!([seat("7", read.clone()), seat("7", read.clone())])),
            "7 (Outer): its label stands twice in this job",
        ),
        (
            with(json!([seat("7", read.clone()), seat("7", read)])),
            now.clone(),
            "7 (Outer): its label stands twice in the earlier job",
        ),
        (
            now.clone(),
            with(json!([seat("7", json!(["13 15/16", "14 15/16"]))])),
            "7 (Outer): one of its readings is to be read again first",
        ),
    ] {
        let report = compared(&after, &then);
        assert!(report.left_out.iter().any(|line| line == why), "{why}: {report:?}");
        assert!(report.coils.is_empty(), "{report:?}");
    }
}

#[test]
fn coils_that_are_left_out_for_one_reason_stand_in_one_line() {
    let then = one("7", ["13 15/16", "13 15/16"], "1/16");
    let seat = |label: &str| json!({ "coil": "outer", "label": label, "readings": ["13 15/16"] });
    let mut now = then.clone();
    put(&mut now, "nests[0].seats", Some(json!([seat("8"), seat("9")])));
    let report = compared(&now, &then);
    let lines = ["8 (Outer), 9 (Outer): not in the earlier job", "7 (Outer): not in this job"];
    assert_eq!(report.left_out, lines);
}

#[test]
fn an_earlier_job_of_a_later_version_is_a_problem_at_its_field() {
    let mut job = one("7", ["13 15/16", "13 15/16"], "1/16");
    put(&mut job, "earlier", Some(json!({ "format": "coilnest-job/2" })));
    let report = coilnest::job::assess(&file::from_value(job).unwrap(), &TABLES);
    assert!(report.problems.iter().any(|p| p.path == "earlier.format" && p.code == "format-newer"));
}

/// Sixty-fourths of an inch, as a reading.
fn reading(parts: u32) -> String {
    format!("{} {}/64", parts / 64, parts % 64)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]
    #[test]
    fn a_coarser_tape_is_never_surer(then in 860u32..920, now in 860u32..920, coarser in 0usize..2) {
        let job = |parts: u32, graduation: &str| {
            let text = reading(parts);
            one("7", [&text, &text], graduation)
        };
        let known = compared(&job(now, "1/64"), &job(then, "1/64"));
        let graduation = ["1/32", "1/16"][coarser];
        // The same estimate, known less well.
        let less = compared(&job(now, "1/64"), &job(then, graduation));
        let (known, less) = (&known.coils[0], &less.coils[0]);
        prop_assert!(less.change.doubt_si >= known.change.doubt_si);
        if (less.change.si - known.change.si).abs() < 1e-15 {
            prop_assert!(less.word == known.word || less.word == SinceWord::WithinDoubt);
        }
    }
}

fn taped(length: f64, doubt: f64) -> Estimate {
    let mm = Length::new::<millimeter>;
    Estimate { length: mm(length), doubt: mm(doubt) }
}

prop_compose! {
    fn estimate()(length in 50.0..900.0, doubt in 0.0..20.0) -> Estimate {
        taped(length, doubt)
    }
}

proptest! {
    #[test]
    fn the_same_estimate_again_has_lost_nothing(one in estimate(), level in 0.5001..0.999) {
        let same = change(one, one, level);
        prop_assert_eq!(same.by.value.to_bits(), 0.0f64.to_bits());
        prop_assert_eq!(same.word, Word::WithinDoubt);
    }

    #[test]
    fn what_one_way_is_lost_is_gained_the_other(
        before in estimate(), after in estimate(), level in 0.5001..0.999,
    ) {
        let (there, back) = (change(before, after, level), change(after, before, level));
        prop_assert_eq!(there.doubt, back.doubt);
        prop_assert_eq!(there.by, -back.by);
        let mirrored = match there.word {
            Word::Lost => Word::Gained,
            Word::Gained => Word::Lost,
            Word::WithinDoubt => Word::WithinDoubt,
        };
        prop_assert_eq!(back.word, mirrored);
    }

    #[test]
    fn knowing_less_is_never_surer(
        before in estimate(), after in estimate(), more in 0.0..20.0, level in 0.5001..0.999,
    ) {
        let known = change(before, after, level);
        let vaguer = Estimate { doubt: before.doubt + taped(0.0, more).doubt, ..before };
        let less = change(vaguer, after, level);
        prop_assert!(less.doubt >= known.doubt);
        prop_assert!(less.word == known.word || less.word == Word::WithinDoubt);
        prop_assert!((less.p_lost - 0.5).abs() <= (known.p_lost - 0.5).abs() + 1e-12);
    }
}

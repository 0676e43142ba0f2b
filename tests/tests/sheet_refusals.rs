//! What a drawing sheet refuses or warns of: one bad thing each, and the sentence that must come, with the
//! value, the bound and the remedy in the units of the job.

use coilnest::job::report::Sheet;
use coilnest::job::{coil_sheet, file};
use coilnest_tables::TABLES;
use coilnest_tests::{corpus, job_path};
use serde_json::{Value, json};

/// The sheet of a kept job's coil, with other fields.
fn with(job: &str, coil: &str, changes: &Value) -> Sheet {
    let mut job: Value = serde_json::from_str(&corpus::named(job).unwrap().text).unwrap();
    for (field, value) in changes.as_object().unwrap() {
        job_path::put(&mut job, &format!("coils[0].{field}"), Some(value.clone()));
    }
    coil_sheet(&file::from_value(job).unwrap(), &TABLES, coil).sheet.unwrap()
}

fn cold(changes: &Value) -> Sheet {
    with("cold-wound", "return", changes)
}

fn hot(changes: &Value) -> Sheet {
    with("hot-wound", "bolster", changes)
}

#[track_caller]
fn says(sentence: &str, expected: &str) {
    assert_eq!(sentence.replace(['\u{a0}', '\u{202f}'], " "), expected);
}

#[track_caller]
fn fatigue(sheet: &Sheet, expected: &str) {
    let fatigue = sheet.fatigue.as_ref().expect("a life, or why there is none");
    assert!(fatigue.safety.is_empty(), "{:?}", fatigue.safety);
    says(&fatigue.sentence, expected);
}

#[track_caller]
fn standing(sheet: &Sheet, expected: &str) {
    says(&sheet.standing.as_ref().expect("its standing").sentence, expected);
}

#[track_caller]
fn press(sheet: &Sheet, expected: &str) {
    let press = sheet.press.as_ref().expect("a press test");
    assert_eq!((&press.rate, press.rows.len(), press.sentences.len()), (&None, 0, 1));
    says(&press.sentences[0], expected);
}

#[track_caller]
fn trust(sheet: &Sheet, expected: &str) {
    let trust = sheet.trust.as_ref().expect("a doubt, or why there is none");
    assert_eq!((&trust.rate, &trust.least, &trust.most), (&None, &None, &None));
    says(&trust.sentence, expected);
}

#[test]
fn loads_past_solid() {
    let past = "2 500 N is more than the 2 280 N that close it solid: give loads below that.";
    for duty in [json!(["400", "2500"]), json!(["2500", "400"]), json!(["2500", "2500"])] {
        let sheet = cold(&json!({"duty": {"least": duty[0], "most": duty[1]}}));
        fatigue(&sheet, past);
        assert!(sheet.duty.is_empty(), "{duty}: a height below solid");
    }
    fatigue(
        &hot(&json!({"duty": {"least": "2000", "most": "10 000 lb"}})),
        "10 000 lb is more than the 9 657 lb that close it solid: give loads below that.",
    );
}

#[test]
fn loads_exchanged() {
    fatigue(
        &cold(&json!({"duty": {"least": "1200", "most": "400"}})),
        "Loads from 1 200 N to 400 N; a lesser load of 0 or more and a greater one above it was expected: give the two between which the coil works.",
    );
}

#[test]
fn a_bar_thicker_than_the_tests() {
    let bar = json!({"bar": "10", "free": "175", "duty": {"least": "400", "most": "1200"}});
    fatigue(
        &cold(&bar),
        "A bar of 10 mm; one up to 9.525 mm was expected: no thicker wire was tested; ask the maker for a diagram of the coil's own size.",
    );
    fatigue(
        &hot(&json!({})),
        "A bar of 1 1/4 in; one up to 3/8 in was expected: no thicker wire was tested; ask the maker for a diagram of the coil's own size.",
    );
}

#[test]
fn a_range_that_does_not_last() {
    let sheet = cold(&json!({"duty": {"least": "0", "most": "1700"}}));
    let fatigue = sheet.fatigue.unwrap();
    assert!(fatigue.safety.iter().any(|safety| safety.factor.si < 1.0), "{:?}", fatigue.safety);
    says(
        &fatigue.sentence,
        "A factor below 1 does not last: bring the two loads nearer to each other or take a thicker bar.",
    );
}

#[test]
fn a_strength_that_is_not_held() {
    // Shigley holds A229 up to half an inch.
    standing(
        &hot(&json!({"steel": "mh-oil-tempered"})),
        "A bar of 1 1/4 in lies outside 0.02 in to 1/2 in, the sizes for which a strength of oil-tempered wire A229 (Shigley) is held here; look it up in ASTM A229.",
    );
    standing(
        &cold(&json!({"bar": "22", "mean": "150", "free": "400"})),
        "A bar of 22 mm lies outside 0.3 mm to 20 mm, the sizes for which a strength of patented wire EN 10270-1, grade SM or DM is held here; look it up in EN 10270-1.",
    );
    standing(
        &hot(&json!({"steel": "mh-silicon-manganese"})),
        "No strength of hot-wound, hardened and tempered bar is held here; look it up in ASTM A125 and the steel's own specification, ASTM A689: what it bears depends on the hardness ordered.",
    );
}

#[test]
fn a_coil_that_sets() {
    let sheet = cold(&json!({"free": "190"}));
    assert_eq!(sheet.standing.as_ref().unwrap().sets, Some(true));
    // 735/792 of 98 mm under 190.
    standing(
        &sheet,
        "A new coil of this drawing, of wire no stronger than the least of the table, takes a set when it is closed solid: the stress at solid, uncorrected, is 792 MPa, above the 735 MPa that such wire bears. Do not press it below 99.1 mm.",
    );
}

#[test]
fn ends_are_told_as_far_as_they_were_computed() {
    let said = |changes| hot(&changes).ends.map(|ends| ends.sentence).unwrap_or_default();
    let known = said(json!({"dead_turns": "1.5 ± 1/16"}));
    assert!(
        known.contains(
            "The 1.5 ± 0.0625 taken here does not hold when light and at work and near solid."
        ),
        "{known}"
    );
    assert!(!known.contains("outweighs") && known.ends_with("A press test settles it."), "{known}");
    let given = said(json!({"active_turns": "7"}));
    assert!(given.contains("The 1.5, taken as exact here, does not hold"), "{given}");
    let closed = said(json!({"ends": "closed-ground"}));
    assert!(closed.contains("The 2 ± 0.5 taken here does not hold near solid."), "{closed}");
    assert!(!closed.contains("tapered"), "{closed}");
    for ends in ["open", "open-ground", "closed"] {
        assert_eq!(hot(&json!({"ends": ends})).ends, None, "{ends}");
    }
}

#[test]
fn a_slender_coil_that_bends_aside() {
    let sheet = hot(&json!({"free": "24", "seating": "both-pivoted"}));
    let buckling = sheet.buckling.unwrap();
    assert!(buckling.height.is_some());
    let height = &buckling.height.unwrap().text;
    says(
        &buckling.sentence,
        &format!(
            "With both ends on pivots it bends aside at {height}: guide it inside or outside, or keep it higher."
        ),
    );
    for (word, kept) in [
        ("one-pivoted", "With one end squarely on its plate and the other on a pivot it "),
        ("one-free", "With one end fixed and the other free it bends aside at "),
    ] {
        let said = hot(&json!({"seating": word})).buckling.unwrap().sentence;
        assert!(said.starts_with(kept), "{said}");
    }
}

#[test]
fn readings_that_make_no_line() {
    let test = |rows: &[[&str; 3]]| {
        let points = rows.iter().map(|[height, load, way]| {
            let mut point = json!({"height": height, "load": load});
            if !way.is_empty() {
                point["way"] = (*way).into();
            }
            point
        });
        json!({"press_test": points.collect::<Vec<_>>()})
    };
    press(
        &hot(&test(&[["13", "4080", ""], ["12", "2000", ""]])),
        "Loading readings: 4 080 lb at 13 in, but only 2 000 lb at 12 in, which is lower; a load that rises as the height falls was expected: see whether the two were exchanged, or loading and unloading were mixed.",
    );
    press(
        &cold(&test(&[["120", "1400", ""], ["120", "1410", ""]])),
        "All 2 loading readings are at 120 mm; a reading at a second height was expected: press to another height and read again.",
    );
    let few = |count: u8| {
        format!(
            "Loading readings with a load: {count}; a load at two heights or more was expected: press further and read again."
        )
    };
    press(&cold(&test(&[["120", "1400", ""]])), &few(1));
    press(&cold(&test(&[["120", "1400", "unloading"], ["130", "1100", "unloading"]])), &few(0));
    press(&cold(&test(&[["120", "1400", ""], ["170", "0", ""]])), &few(1));
    press(
        &hot(&test(&[["13", "4080", ""], ["12", "4080", ""]])),
        "The load is 4 080 lb at every height; one that rises as the height falls was expected: see whether the press follows the coil.",
    );
    // A load below zero is refused where it is written, and no reading.
    press(&cold(&test(&[["120", "1400", ""], ["110", "-1730", ""]])), &few(1));
}

#[test]
fn tolerances_that_leave_no_coil() {
    let coil = "may be no coil at all: tolerances that leave a bar, and a hole inside the coil, were expected. Write only by how much each size may be off.";
    trust(
        &cold(&json!({"tolerances": {"bar": "8"}})),
        &format!("A bar between 0 mm and 16 mm in a diameter between 52 mm and 52 mm {coil}"),
    );
    trust(
        &cold(&json!({"tolerances": {"diameter": "45"}})),
        &format!("A bar between 8 mm and 8 mm in a diameter between 7 mm and 97 mm {coil}"),
    );
    trust(
        &hot(&json!({"turns": "4", "tolerances": {"turns": "3"}})),
        "As few as 1 turns less up to 2 dead ones may leave fewer than 0.5 at work. Count again, or write only by how much the count may be off.",
    );
    // What the tolerances have no part in stands.
    assert!(cold(&json!({"tolerances": {"bar": "8"}})).coil.rate.is_some());
}

#[test]
fn an_index_that_is_seldom_wound() {
    let source = "(Shigley's Mechanical Engineering Design, 10th ed., recommended range of the index, 4 to 12 (from memory)).";
    for (outside, sentence) in [
        (
            "4 3/4",
            "An index of 2.8, below the usual 4: hard to wind, and stressed high inside the coil; measure bar and diameter again",
        ),
        (
            "20",
            "An index of 15, above the usual 12: it tangles, bends aside and varies in size; measure bar and diameter again",
        ),
    ] {
        let remarks = hot(&json!({"outside": outside})).remarks;
        says(&remarks[0], &format!("{sentence} {source}"));
    }
    // Sizes in the units of the job.
    let remarks = hot(&json!({"bar": "1/4", "outside": "2"})).remarks;
    says(
        &remarks[0],
        "A bar of 0.25 in, under the 0.315 in from which bars are wound hot: wound cold it is another steel (EN 13906-1:2013, scope (from memory)).",
    );
}

#[test]
fn a_coil_that_the_job_does_not_have() {
    let job = file::open(&corpus::named("hot-wound").unwrap().text).unwrap();
    let answer = coil_sheet(&job, &TABLES, "outer");
    let problem = answer.problem.unwrap();
    assert_eq!((answer.sheet.is_none(), &*problem.code), (true, "no-such-coil"));
    says(&problem.expected, "one of bolster");
}

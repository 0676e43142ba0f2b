//! What may replace a coil of a job, the order, and drawings for a need.
//!
//! The answers are kept and compared; what matters most is worked out again here, in inches and pounds
//! and by hand, from the numbers of the job, which are invented.

#![cfg(test)]

use coilnest::coil::ends::DEAD_TURNS_DOUBT;
use coilnest::job::report::{CandidateReport, Choice, Met, OrderReport, ReplaceReport, Workings};
use coilnest::job::{Job, assess, choices, coil_sheet, file, replace, size};
use coilnest_tables::TABLES;
use coilnest_tests::by_hand::{INCH, MM, POUND_FORCE, PSI, is, rate, some};
use coilnest_tests::{corpus, job_path};
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;

fn sound() -> Value {
    serde_json::from_str(&corpus::named("replace").unwrap().text).unwrap()
}

fn with(written: &[(&str, Value)]) -> Job {
    let mut value = sound();
    for (path, new) in written {
        job_path::put(&mut value, path, Some(new.clone()).filter(|new| !new.is_null()));
    }
    file::from_value(value).unwrap()
}

fn answer(written: &[(&str, Value)]) -> ReplaceReport {
    replace(&with(written), &TABLES)
}

/// What is offered of a requirement, without the narrow gaps of its numbers.
fn offered(candidate: &CandidateReport, code: &str) -> String {
    let line = candidate.lines.iter().find(|line| line.code == code).expect("a line");
    line.offered.replace('\u{202f}', "")
}

fn met(candidate: &CandidateReport, code: &str) -> Met {
    candidate.lines.iter().find(|line| line.code == code).expect("a line").met
}

#[test]
fn every_job_has_the_answers_that_are_kept() {
    let mut seen = 0;
    for job in corpus::all().unwrap() {
        let Some(text) = job.replace().unwrap() else { continue };
        corpus::keep(&job.replace_path(), &text).unwrap();
        seen += 1;
    }
    assert!(seen >= 1, "{seen} jobs");
}

#[test]
fn the_main_figures_by_hand() {
    let report = answer(&[]);
    assert!(report.problems.is_empty(), "{:?}", report.problems);
    let [one, two] = report.candidates.as_slice() else { panic!("two offers") };
    // 78.5 GPa; D = 6 − 1 and 3 3/8 − 5/8, n = 7 1/2 − 1 1/2 and 11 1/2 − 1 1/2; the second offer 6 1/4 −
    // 1 1/16 and 8 1/2 − 1 1/2.
    let shear = 78.5e9 / PSI;
    let (outer, inner) = (rate(shear, 1.0, 5.0, 6.0), rate(shear, 0.625, 2.75, 10.0));
    let second = rate(shear, 1.0625, 5.1875, 7.0);
    assert!(offered(two, "rate").starts_with(&format!("{second:.0} lb/in (")));
    assert!(offered(two, "load").starts_with(&format!("{:.0} lb (", 2.0 * second)));
    assert!(offered(one, "rate").starts_with(&format!("{outer:.0} lb/in (")));
    // Its bar 0.003 either way, its outside 1/64, its turns 1/32, its dead turns as its ends leave them:
    // the softest and the stiffest, rounded outward.
    let (more, less) = (6.0 + 1.0 / 32.0 + DEAD_TURNS_DOUBT, 6.0 - 1.0 / 32.0 - DEAD_TURNS_DOUBT);
    let softest = rate(shear, 0.997, 6.0 + 1.0 / 64.0 - 0.997, more).floor();
    let stiffest = rate(shear, 1.003, 6.0 - 1.0 / 64.0 - 1.003, less).ceil();
    assert!(offered(one, "rate").ends_with(&format!("({softest:.0} to {stiffest:.0})")));
    // d (nt − 0.3).
    assert_eq!(offered(two, "solid-height"), "8.7125 in");
    assert_eq!(offered(two, "reserve"), "2.2875 in");
    assert_eq!(offered(two, "post"), "4.125 in");
    // 6 1/2 less 1/16 of play.
    assert_eq!(two.lines[0].asked, "6.4375 in or less");

    // Its rate and load hang on tolerances of the original that nobody gave.
    assert_eq!((one.met, one.title), (Some(Met::AsDrawn), "As drawn; tolerances not given"));
    assert_eq!((two.met, two.title), (Some(Met::NotMet), "No replacement"));
    for (code, expected) in [
        ("solid-height", Met::NotMet),
        ("hand", Met::NotMet),
        ("inner-hand", Met::NotMet),
        ("rate", Met::AsDrawn),
        ("free-height", Met::AsDrawn),
    ] {
        assert_eq!(met(two, code), expected, "{code}");
    }

    // All three are 13 in free; under what bore at 11 in with the original.
    let load = 2.0 * (outer + inner);
    let nest = two.nest.as_ref().unwrap();
    is(&nest.height_before, 11.0, INCH);
    is(&nest.height_after, 13.0 - load / (second + inner), INCH);
    is(&nest.coils[0].share_before, outer / (outer + inner), 1.0);
    is(&nest.coils[0].share_after, second / (second + inner), 1.0);
    let stress =
        |load: f64, mean: f64, bar: f64| 8.0 * load * mean / (std::f64::consts::PI * bar.powi(3));
    is(some(nest.coils[0].stress_before.as_ref()), stress(2.0 * outer, 5.0, 1.0), PSI);
    let carried = load * second / (second + inner);
    is(some(nest.coils[0].stress_after.as_ref()), stress(carried, 5.1875, 1.0625), PSI);
    // 8 1/2 − 0.3 bars of 1 1/16 make 8.71 in, 11 1/2 − 0.3 of 5/8 make 7 in, 7 1/2 − 0.3 of 1 make 7.2 in.
    assert_eq!(nest.stopped_by.as_deref(), Some("Outer coil, the original"));
    assert_eq!(nest.stops, ["Offer B, the candidate"]);
    let named: Vec<_> =
        nest.coils.iter().map(|coil| (coil.name.as_str(), coil.replaced_by.as_deref())).collect();
    assert_eq!(named, [("Outer coil", Some("Offer B")), ("Inner coil", None)]);
}

/// Tolerances and all, a spring may stand in for itself; without them it is one as drawn, and no better.
#[test]
fn a_spring_is_a_true_replacement_for_itself() {
    let whole = json!({ "bar": "1/64", "diameter": "1/32", "turns": "1/8", "free": "+1/8 -1/16" });
    let met = |tolerances: &Value| {
        let mut drawing = sound()["coils"][0].clone();
        drawing["tolerances"] = tolerances.clone();
        let report = answer(&[
            ("coils[0].tolerances", tolerances.clone()),
            ("coils[1].tolerances", whole.clone()),
            ("replace.candidates", json!([drawing])),
            ("replace.asked", json!({ "stress": "100 000 psi", "stress_solid": "250 000 psi" })),
        ]);
        let own = &report.candidates[0];
        assert!(own.lines.len() >= 13, "{:#?}", own.lines);
        let nest = own.nest.as_ref().unwrap();
        assert_eq!(nest.height_before.si.to_bits(), nest.height_after.si.to_bits());
        (own.met, own.sentence.clone())
    };
    let (best, sentence) = met(&whole);
    assert_eq!(best, Some(Met::Throughout), "{sentence}");
    for missing in ["bar", "diameter", "turns", "free"] {
        let mut without = whole.clone();
        without.as_object_mut().unwrap().remove(missing);
        let (known_less, sentence) = met(&without);
        assert_eq!(known_less, Some(Met::AsDrawn), "{missing}: {sentence}");
    }
    assert_eq!(met(&json!({})).0, Some(Met::AsDrawn));
}

/// The frame of another job: the wheels of a coil that is put in everywhere.
#[test]
fn a_frame_is_weighed_before_and_after() {
    let kept = corpus::named("whole-truck").unwrap();
    let mut value: Value = serde_json::from_str(&kept.text).unwrap();
    let drawing = value["coils"][0].clone();
    let original = drawing["id"].clone();
    value["replace"] = json!({ "original": original, "candidates": [drawing] });
    let report = replace(&file::from_value(value).unwrap(), &TABLES);
    let frame = report.candidates[0].frame.as_ref().expect("a frame");
    assert!(frame.before.si > 0.0 && frame.after.as_ref().is_some_and(|after| after.si >= 0.0));
}

/// Four nests of 340 N/mm, one of which gets 420 N/mm: two corners carry 10 000 N + t and two 10 000 N − t,
/// and the frame stays flat, (10 000 + t)·(1/420 + 1/340) = 2·(10 000 − t)/340, so that t is 500 N.
#[test]
fn a_stiffer_coil_in_one_nest_moves_the_loads_of_a_frame() {
    let book = |id: &str, rate: &str| json!({ "id": id, "name": id, "rate": rate, "free": "350", "solid": "150" });
    let nest = |id: &str, coil: &str| json!({ "id": id, "seats": [{ "coil": coil, "readings": ["350"] }] });
    let support = |nest: &str, along: &str, across: &str| json!({ "nest": nest, "along": along, "across": across });
    let job = json!({
        "format": "coilnest-job/1",
        "system": "metric",
        "coils": [book("one", "340"), book("other", "340")],
        "nests": [nest("A left", "one"), nest("A right", "other"), nest("B left", "other"), nest("B right", "other")],
        "frame": { "weight": "40 000 N", "supports": [
            support("A left", "900", "500"), support("A right", "900", "-500"),
            support("B left", "-900", "500"), support("B right", "-900", "-500"),
        ] },
        "replace": { "original": "one", "candidates": [book("stiffer", "420")] },
    });
    let report = replace(&file::from_value(job).unwrap(), &TABLES);
    assert!(report.problems.is_empty(), "{:?}", report.problems);
    let frame = report.candidates[0].frame.as_ref().expect("a frame");
    assert!(frame.before.si.abs() < 1e-9, "{:?}", frame.before);
    is(some(frame.after.as_ref()), 0.05, 1.0);
    // The coils that stay are read, the candidate is not: the sentence says so.
    assert!(frame.sentence.contains("by its drawing"), "{}", frame.sentence);
    let key = some(frame.after.as_ref()).working.as_deref().unwrap();
    let Workings(entries) = &report.workings;
    let place: usize = key.trim_start_matches('w').parse().unwrap();
    let with = entries[place - 1].with.replace('\u{202f}', " ");
    assert_eq!(with, "10 500 N; 9 500 N; 9 500 N; 10 500 N");
}

/// Its rate may be 5 % off: what the frame makes of it is a range, its ends rounded outward.
#[test]
fn a_frame_answers_with_a_range() {
    let book = |id: &str, rate: &str| json!({ "id": id, "name": id, "rate": rate, "free": "350", "solid": "150" });
    let nest = |id: &str, coil: &str| json!({ "id": id, "seats": [{ "coil": coil, "readings": ["350"] }] });
    let support = |nest: &str, along: &str, across: &str| json!({ "nest": nest, "along": along, "across": across });
    let mut offer = book("stiffer", "420");
    offer["tolerances"] = json!({ "rate": "5 %", "free": "0", "solid": "0" });
    let job = json!({
        "format": "coilnest-job/1",
        "system": "metric",
        "coils": [book("one", "340"), book("other", "340")],
        "nests": [nest("A left", "one"), nest("A right", "other"), nest("B left", "other"), nest("B right", "other")],
        "frame": { "weight": "40 000 N", "supports": [
            support("A left", "900", "500"), support("A right", "900", "-500"),
            support("B left", "-900", "500"), support("B right", "-900", "-500"),
        ] },
        "replace": { "original": "one", "candidates": [offer] },
    });
    let report = replace(&file::from_value(job).unwrap(), &TABLES);
    let after = some(report.candidates[0].frame.as_ref().unwrap().after.as_ref());
    // t = 10 000 (1/340 − 1/k) / (3/340 + 1/k): at 399 N/mm 3.84 %, at 441 N/mm 6.03 %.
    let off = |k: f64| (1.0 / 340.0 - 1.0 / k) / (3.0 / 340.0 + 1.0 / k) * 100.0;
    let (least, most) = ((off(399.0) * 100.0).floor() / 100.0, (off(441.0) * 100.0).ceil() / 100.0);
    assert_eq!(after.text, format!("5 % ({least} to {most})"));
}

/// The same nest has one load by the drawings and another by the readings: both say which.
#[test]
fn it_is_said_by_what_a_nest_has_its_loads() {
    let by = |job: &Job| assess(job, &TABLES).nests[0].heights_by;
    let swap = |job: &Job| replace(job, &TABLES).candidates[0].nest.clone().unwrap().sentence;
    let unread = with(&[
        ("nests[0].seats[0].readings", json!([])),
        ("nests[0].seats[1].readings", json!([])),
    ]);
    assert!(by(&unread).is_some_and(|by| by.starts_with("By the drawings")));
    assert!(swap(&unread).starts_with("By the drawings") && !swap(&unread).contains("readings"));
    let read = with(&[
        ("nests[0].seats[0].readings", json!(["12 7/8"])),
        ("nests[0].seats[1].readings", json!(["12 7/8"])),
    ]);
    assert_eq!(by(&read), Some("By the readings."));
    assert!(swap(&read).contains("by the readings of the coils that are there"), "{}", swap(&read));
}

/// Two offers that are refused one by one, the hand of each being that of the old neighbour, are one
/// nest that is judged beside itself.
#[test]
fn a_nest_for_a_nest() {
    let mut outer = sound()["coils"][0].clone();
    let mut inner = sound()["coils"][1].clone();
    let other = |hand: &Value| json!(if hand == "right" { "left" } else { "right" });
    for (coil, name) in [(&mut outer, "Wide"), (&mut inner, "Narrow")] {
        coil["hand"] = other(&coil["hand"]);
        coil["name"] = json!(name);
        coil["id"] = json!(name);
    }
    // The narrow one stands first in the list: each still goes to its place.
    let candidates = ("replace.candidates", json!([inner, outer]));
    let alone = answer(std::slice::from_ref(&candidates));
    assert!(alone.together.is_none());
    assert!(alone.candidates.iter().all(|one| one.met == Some(Met::NotMet)), "{alone:#?}");
    // What was asked of the outer coil's stress is less than the inner one bears.
    let stress = ("replace.asked.stress_solid", json!("200 000 psi"));
    let report = answer(&[candidates.clone(), ("replace.together", json!("yes")), stress]);
    assert!(report.problems.is_empty(), "{:?}", report.problems);
    assert!(report.candidates.iter().all(|one| one.met.is_none() && one.lines.is_empty()));
    let nest = report.together.expect("a nest");
    assert_eq!(nest.offered, ["Wide", "Narrow"]);
    assert_ne!(nest.met, Some(Met::NotMet), "{nest:#?}");
    let line = |name: &str| nest.lines.iter().find(|line| line.name == name).expect(name);
    assert_eq!(line("Hand beside the coil within it: Wide").met, Met::Throughout);
    // 78.5 GPa on 1 in at 5 in with 6 turns and 5/8 in at 2 3/4 in with 10, both 13 in free, at 11 in.
    let shear = 78.5e9 / PSI;
    let both = rate(shear, 1.0, 5.0, 6.0) + rate(shear, 0.625, 2.75, 10.0);
    let offered = line("Load at work: the nest").offered.replace('\u{202f}', "");
    assert!(offered.starts_with(&format!("{:.0} lb (", 2.0 * both)), "{offered}");
    assert!(!nest.sentence.contains("that is offered"), "{}", nest.sentence);

    let unknown = answer(&[candidates, ("replace.together", json!("yes")), ("nests", json!([]))]);
    assert!(unknown.together.is_none());
    assert!(unknown.notes.iter().any(|note| note.code == "together-without-nest"));
}

/// A candidate has a sheet like any coil, by its place.
#[test]
fn a_candidate_has_a_drawing_sheet() {
    let job = with(&[]);
    let sheet = coil_sheet(&job, &TABLES, "replace.candidates[1]").sheet.expect("a sheet");
    let line = answer(&[]).candidates[1].lines.iter().find(|line| line.code == "rate").cloned();
    let rate = some(sheet.coil.rate.as_ref()).text.clone();
    assert!(line.is_some_and(|line| line.offered.starts_with(&rate)), "{rate}");
    let none = coil_sheet(&job, &TABLES, "replace.candidates[7]");
    assert_eq!(none.problem.map(|problem| problem.code), Some("no-such-coil"));
}

/// Every form of ends that is offered for a need is taken; the one without dead turns is not offered.
#[test]
fn the_ends_offered_for_a_need_are_those_it_takes() {
    let offered = choices(&TABLES);
    let taken = |id: &str| {
        let report = size(&with(&[("need.ends", json!(id))]), &TABLES);
        report.problems.iter().all(|problem| problem.path != "need.ends")
    };
    let ids = |of: &[Choice]| of.iter().map(|choice| choice.id).collect::<Vec<_>>();
    let all = ids(&offered.ends);
    let those: Vec<_> = all.iter().copied().filter(|id| taken(id)).collect();
    assert_eq!(ids(&offered.need_ends), those);
    assert!(those.len() < all.len());
}

/// What one missing figure would have to be is found by putting it in: the drawing with it is met.
#[test]
fn what_is_missing_is_named_with_what_would_decide_it() {
    let report = answer(&[("replace.candidates[1].hand", Value::Null)]);
    let line = report.candidates[1].lines.iter().find(|line| line.code == "hand").unwrap();
    assert_eq!(line.met, Met::CannotTell);
    assert!(line.why.contains("if the hand of the candidate were: right"), "{}", line.why);
    let report = answer(&[
        ("replace.candidates[0].turns", Value::Null),
        ("replace.candidates[0].tolerances", Value::Null),
    ]);
    let one = &report.candidates[0];
    assert_eq!(one.met, Some(Met::CannotTell), "{:#?}", one.lines);
    let line = one.lines.iter().find(|line| line.code == "rate").unwrap();
    assert!(line.why.contains("the total turns of the candidate"), "{}", line.why);
    // R within 5 % of that of 6 active turns: 6/1.05 + 1.5 and 6/0.95 + 1.5 turns in all.
    assert!(line.why.contains("7.215 to 7.815"), "{}", line.why);
}

fn every_item_is_in_its_text(order: &OrderReport) {
    for item in order.items.iter().filter(|item| !item.open) {
        let line = order.text.lines().find(|line| line.starts_with(&format!("{}:", item.name)));
        assert!(line.is_some_and(|line| line.ends_with(&item.text)), "{item:?}\n{}", order.text);
    }
    for item in order.items.iter().filter(|item| item.open) {
        assert!(order.questions.contains(&item.text), "{item:?}");
        assert!(!order.text.contains(&format!("{}:", item.name)), "{item:?}\n{}", order.text);
    }
    for question in &order.questions {
        assert!(order.text.contains(question), "{question}\n{}", order.text);
    }
}

#[test]
fn an_order_says_what_is_known_and_asks_for_the_rest() {
    let report = answer(&[]);
    let order = report.order.as_ref().unwrap();
    let all = report.candidates.iter().map(|candidate| &candidate.order).chain([order]);
    for order in all {
        every_item_is_in_its_text(order);
        assert!(order.questions.iter().any(|asked| asked == "How is it to be marked?"));
        assert!(!order.text.contains("How many are wanted?"));
        assert!(order.text.contains("Vehicle: Spoil wagon 7") && order.text.contains("2026-05-16"));
        assert!(order.subject.starts_with("Subject to the approval of the vehicle's maker"));
        assert!(order.text.ends_with(&format!("\n\n{}\n", order.subject)), "{}", order.text);
    }
    let unknown = answer(&[
        ("replace.candidates[1].ends", Value::Null),
        ("coils[0].ends", Value::Null),
        ("coils[0].turns", Value::Null),
        ("coils[0].hand", Value::Null),
        ("replace.candidates[1].hand", Value::Null),
    ]);
    let order = &unknown.candidates[1].order;
    every_item_is_in_its_text(order);
    for asked in ["What form have its ends?", "Which way is it to be wound?", "What is its rate?"] {
        assert!(order.questions.iter().any(|question| question == asked), "{:?}", order.questions);
    }
}

/// A design is a drawing of the job like any other: read back it has the rate, the free and the solid
/// height that it was found with, and the rate that was asked for.
#[test]
fn a_design_reads_back() {
    let metric = json!({
        "load": "12 000 N", "height": "280", "rate": "250 N/mm", "pocket": "165", "clearance": "1.5",
        "steel": "en-10089", "ends": "tapered-ground", "stress": "560 MPa", "stress_solid": "900 MPa",
        "pair": "yes", "rank": "stress",
    });
    let mut seen = 0;
    for (system, need, asked) in [
        ("inch", sound()["need"].clone(), 1500.0 * POUND_FORCE / INCH),
        ("metric", metric, 250.0 / MM),
    ] {
        let job = json!({ "format": "coilnest-job/1", "system": system, "need": need });
        let report = size(&file::from_value(job).unwrap(), &TABLES);
        assert!(report.problems.is_empty() && report.notes.is_empty(), "{report:#?}");
        assert!(!report.designs.is_empty() && !report.pairs.is_empty(), "{}", report.sentence);
        let pairs = report.pairs.iter().map(|pair| {
            let both = (pair.outer.rate.si + pair.inner.rate.si) / asked;
            assert!((both - 1.0).abs() <= 0.05, "{pair:?}");
            [&pair.outer, &pair.inner]
        });
        for design in &report.designs {
            assert!((design.rate.si / asked - 1.0).abs() <= 0.05, "{design:?}");
        }
        for design in report.designs.iter().chain(pairs.flatten()) {
            let mut drawing = serde_json::to_value(&design.drawing).unwrap();
            drawing["id"] = json!("drawn");
            let job = json!({ "format": "coilnest-job/1", "system": system, "coils": [drawing] });
            let read = assess(&file::from_value(job).unwrap(), &TABLES);
            assert!(read.problems.is_empty(), "{:?}", read.problems);
            let coil = &read.coils[0];
            for (read, found) in
                [(coil.rate.as_ref(), &design.rate), (coil.solid.as_ref(), &design.solid)]
            {
                let off = some(read).si / found.si - 1.0;
                assert!(
                    off.abs() < 1e-9,
                    "{} and {}: {:?}",
                    some(read).si,
                    found.si,
                    design.drawing
                );
            }
            seen += 1;
        }
    }
    assert!(seen > 20, "{seen} drawings");
}

#[test]
fn a_map_has_a_cell_for_each_bar_with_each_count_of_turns() {
    let report = size(&with(&[]), &TABLES);
    let map = report.map.as_ref().unwrap();
    assert_eq!(map.cells.len(), map.bars.len() * map.turns.len());
    assert!(map.cells.iter().all(|cell| *cell <= map.limits.len()));
    assert_eq!(map.designs.len(), report.designs.len());
    for (place, design) in map.designs.iter().zip(&report.designs) {
        assert_eq!(map.bars[place.bar], design.bar.text);
        assert_eq!(map.cells[place.bar * map.turns.len() + place.turns], 0);
        // A quarter turn is a step of the map, and 1 1/2 of tapered ends are dead.
        let off = map.turns[place.turns] + 1.5 - design.turns.si;
        assert!(off.abs() <= 0.125 + 1e-9, "{off}");
    }
    for refused in &report.refused {
        assert!(refused.why.ends_with('.') && map.bars.contains(&refused.bar), "{refused:?}");
    }
    assert_eq!(report.refused.len() + report.designs.len(), map.bars.len());
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Wrong {
    case: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    of: String,
    written: BTreeMap<String, toml::Value>,
    at: String,
    code: String,
    #[serde(default)]
    note: bool,
}

#[test]
fn what_contradicts_itself_is_a_problem_at_its_field() {
    let text = std::fs::read_to_string(corpus::folder("errors/replacement.toml")).unwrap();
    let cases = toml::from_str::<Wrong>(&text).unwrap().case;
    let mut said = String::new();
    for case in &cases {
        let mut value = sound();
        for (path, text) in &case.written {
            let text = serde_json::to_value(text).unwrap();
            job_path::put(&mut value, path, Some(text).filter(|text| text != "-"));
        }
        let job = file::from_value(value).unwrap();
        let (problems, notes) = if case.of == "size" {
            let report = size(&job, &TABLES);
            (report.problems, report.notes)
        } else {
            let report = replace(&job, &TABLES);
            (report.problems, report.notes)
        };
        let (at, code) = (case.at.as_str(), case.code.as_str());
        let message = if case.note {
            let found = notes.iter().find(|note| note.path == at && note.code == code);
            found.map(|note| note.text.clone())
        } else {
            assert_eq!(problems.len(), 1, "{at} [{code}]: {problems:#?}");
            let found = problems.iter().find(|one| one.path == at && one.code == code);
            found.map(|one| format!("{}\n  expected: {}", one.message, one.expected))
        };
        let message = message.unwrap_or_else(|| panic!("{at} [{code}]: {problems:#?} {notes:#?}"));
        writeln!(said, "{at} [{code}]\n  {message}").unwrap();
    }
    assert!(cases.len() > 30);
    corpus::keep(&corpus::folder("errors/replacement.txt"), &said).unwrap();
}

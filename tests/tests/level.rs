//! A job's frame, from its texts to its report: against equilibria found elsewhere
//! (`data/frames.json`), against a pencil, and with all that can be wrong with it.

use approx::{abs_diff_eq, relative_eq};
use coilnest::job::report::{FrameReport, FrameState, LevelReport, Problem, SupportState};
use coilnest::job::{HeldFrame, Job, assess, file, level, matching};
use coilnest_tables::TABLES;
use coilnest_tests::by_hand::{INCH, MM, POUND_FORCE, is, some};
use coilnest_tests::{corpus, job_path};
use serde::Deserialize;
use serde_json::{Value, json};
use std::fmt::Write;

fn job(value: &Value) -> Job {
    file::from_value(value.clone()).unwrap()
}

fn frame(value: &Value) -> FrameReport {
    let report = assess(&job(value), &TABLES);
    report.frame.unwrap_or_else(|| panic!("{:#?} {:#?}", report.problems, report.notes))
}

/// Invented: four nests of one coil of 1000 lb/in, 12 in high but for A left's, under 8000 lb.
fn four_corners() -> Value {
    serde_json::from_str(&corpus::named("four-corners").unwrap().text).unwrap()
}

fn with(changes: &[(&str, Value)]) -> Value {
    let mut job = four_corners();
    for (path, value) in changes {
        job_path::put(&mut job, path, Some(value.clone()));
    }
    job
}

#[derive(Deserialize)]
struct Data {
    frames: Vec<Value>,
}

/// The equilibria found elsewhere, written as a job: every number goes through its text.
fn written(case: &Value) -> Value {
    let mm = |value: f64| format!("{value} mm");
    let number = |value: &Value| value.as_f64().unwrap();
    let (mut coils, mut nests, mut supports, mut stop) = (vec![], vec![], vec![], None);
    for (index, nest) in case["nests"].as_array().unwrap().iter().enumerate() {
        let mut seats = vec![];
        let mut rates = vec![];
        for (at, coil) in nest["coils"].as_array().unwrap().iter().enumerate() {
            let id = format!("coil {index} {at}");
            rates.push((number(&coil["rate"]), number(&coil["past_solid"])));
            coils.push(json!({
                "id": id, "rate": format!("{} N/mm", coil["rate"]),
                "free": mm(number(&coil["free"])), "solid": mm(number(&coil["solid"])),
            }));
            seats.push(json!({ "coil": id, "raise": mm(number(&coil["raised"])) }));
        }
        let at_rest = case["at_rest"][index]["coils"].as_array().unwrap();
        if at_rest.iter().any(|coil| coil["solid"] == json!(true)) {
            let past = rates.iter().zip(at_rest).map(|((rate, past), coil)| {
                if coil["solid"] == json!(true) { *past } else { *rate }
            });
            stop = Some(format!("{} N/mm", past.sum::<f64>()));
        }
        let ground = number(&nest["lower"]) - number(&nest["upper"]);
        nests.push(json!({ "id": format!("nest {index}"), "seats": seats }));
        supports.push(json!({
            "nest": format!("nest {index}"), "ground": mm(ground),
            "along": mm(number(&nest["x"])), "across": mm(number(&nest["y"])),
        }));
    }
    json!({
        "format": "coilnest-job/1", "system": "metric", "coils": coils, "nests": nests,
        "frame": {
            "weight": format!("{} N", case["weight"]), "stop_stiffness": stop.unwrap_or_default(),
            "centre": { "along": mm(number(&case["x"])), "across": mm(number(&case["y"])) },
            "supports": supports,
        },
    })
}

#[test]
fn a_job_gives_the_loads_and_heights_of_exact_rationals() {
    let data: Data = serde_json::from_str(include_str!("../data/frames.json")).unwrap();
    let mut bottomed = 0;
    for case in &data.frames {
        let frame = frame(&written(case));
        assert_eq!(frame.supports.len(), case["at_rest"].as_array().unwrap().len());
        for (found, expected) in frame.supports.iter().zip(case["at_rest"].as_array().unwrap()) {
            let close = |found: f64, expected: &Value| {
                let expected = expected.as_f64().unwrap();
                assert!(
                    relative_eq!(found, expected, max_relative = 1e-8),
                    "{}: {found}",
                    case["name"]
                );
            };
            close(found.load.si, &expected["load"]);
            close(found.height.si / MM, &expected["height"]);
            bottomed += usize::from(found.state == SupportState::Bottomed);
        }
    }
    assert_eq!((data.frames.len(), bottomed), (4, 1));
}

#[test]
fn every_frame_has_the_answers_that_are_kept() {
    let jobs = corpus::all().unwrap();
    let mut seen = 0;
    for job in &jobs {
        if let Some(text) = job.level().unwrap() {
            corpus::keep(&job.level_path(), &text).unwrap();
            seen += 1;
        }
    }
    assert!(seen >= 2, "{seen} frames");
}

/// A left is 1/8 in low: kδ/4 = 1000 · 0.125 / 4 = 31.25 lb goes from its diagonal to the other.
/// What is left of the 1/8 is a lean: each nest's height is 12 (or 11.875) less its load over its rate.
#[test]
fn a_low_corner_moves_each_load_by_a_quarter() {
    let frame = frame(&four_corners());
    assert_eq!(frame.state, FrameState::Settled);
    let expected = [
        ("A left", 1968.75, 11.875 - 1.96875),
        ("A right", 2031.25, 12.0 - 2.03125),
        ("B left", 2031.25, 12.0 - 2.03125),
        ("B right", 1968.75, 12.0 - 1.96875),
    ];
    for (found, (nest, load, height)) in frame.supports.iter().zip(expected) {
        assert_eq!((found.nest.as_str(), found.state), (nest, SupportState::Carrying));
        is(&found.load, load, POUND_FORCE);
        is(&found.height, height, INCH);
        is(&found.share, load / 2000.0, 1.0);
    }
    is(some(frame.mean.as_ref()), 2000.0, POUND_FORCE);
    is(some(frame.diagonal.as_ref()), -125.0, POUND_FORCE);
    is(some(frame.diagonal_height.as_ref()), 0.0, INCH);
    // Both A nests are on the average 1/16 lower than both B nests, and both left ones than both right.
    is(some(frame.lean_along.as_ref()), -0.0625, INCH);
    is(some(frame.lean_across.as_ref()), -0.0625, INCH);
    assert_eq!(
        frame.sentence,
        "The frame is lower at A left and A right by 1/16 in over 72 in, and lower at A left and B left by 1/16 in over 56 in. A left carries 1.56 % less than the mean, ± 0.01 %."
    );
    assert_eq!(frame.supports[1].sentence, "A right carries 1.56 % more than the mean, ± 0.01 %.");
}

/// Shims under both nests of a side move no load; under two of a diagonal k t/2.
#[test]
fn shims_go_as_statics_has_it() {
    let even = ("nests[0].seats[0].readings[0]", json!("12"));
    for (changes, loads) in [
        (vec![], [2000.0; 4]),
        (vec![(0, "1/4"), (2, "1/4")], [2000.0; 4]),
        (vec![(0, "1/4"), (3, "1/4")], [2125.0, 1875.0, 1875.0, 2125.0]),
        (vec![(1, "1/4")], [1937.5, 2062.5, 2062.5, 1937.5]),
    ] {
        let paths: Vec<String> =
            changes.iter().map(|(at, _)| format!("frame.supports[{at}].shim")).collect();
        let shims = paths.iter().zip(&changes);
        let shims = shims.map(|(path, (_, shim))| (path.as_str(), json!(shim)));
        let frame = frame(&with(&[even.clone()].into_iter().chain(shims).collect::<Vec<_>>()));
        for (support, load) in frame.supports.iter().zip(loads) {
            is(&support.load, load, POUND_FORCE);
        }
    }
}

/// The tape's doubt: readings in sixteenths leave each coil ± 1/16/√12 in of its own, and four such
/// coils leave each load with half of k times that, for the twist is a quarter of four readings'.
#[test]
fn the_doubt_of_the_readings_reaches_the_shares() {
    let frame = frame(&with(&[(
        "tape",
        json!({ "graduation": "1/16", "error": "1/8", "ends_error": "0" }),
    )]));
    let own = 0.0625 / 12_f64.sqrt();
    for support in &frame.supports {
        let doubt = support.load.doubt_si.unwrap() / POUND_FORCE;
        assert!(abs_diff_eq!(doubt, 1000.0 * own / 2.0, epsilon = 1e-9), "{doubt}");
        let share = support.share.doubt_si.unwrap();
        assert!(abs_diff_eq!(share, doubt / 2000.0, epsilon = 1e-12), "{share}");
        // The tape's own error lifts all four alike, and leaves the loads alone but not the heights:
        // u² = (own/2)² + (own²)·3/4 + e²/3 of a height, since a load of doubt k·own/2 is a height.
        let height = support.height.doubt_si.unwrap() / INCH;
        let expected = (own * own * 0.75 + 0.125 * 0.125 / 3.0_f64).sqrt();
        assert!(abs_diff_eq!(height, expected, epsilon = 1e-9), "{height} and not {expected}");
    }
    assert_eq!(frame.supports[0].sentence, "A left carries 1.6 % less than the mean, ± 0.5 %.");
}

/// A dip of g takes k g/4 off the wheel in it and off the one across the diagonal.
#[test]
fn a_dipped_wheel_loses_a_quarter_of_rate_times_dip() {
    let job = job(&with(&[("nests[0].seats[0].readings[0]", json!("12"))]));
    let frame = HeldFrame::of(&job, &TABLES);
    let report = frame.dip("A left", "2", "");
    assert_eq!(report.problem, None);
    for (wheel, (name, load)) in report.wheels.iter().zip([
        ("A left", 1500.0),
        ("A right", 2500.0),
        ("B left", 2500.0),
        ("B right", 1500.0),
    ]) {
        assert_eq!((wheel.name.as_str(), wheel.over), (name, false));
        is(&wheel.at_rest, 2000.0, POUND_FORCE);
        is(&wheel.load, load, POUND_FORCE);
        is(some(wheel.kept.as_ref()), load / 2000.0, 1.0);
    }
    // All of 2000 lb at k/4 per inch.
    is(some(report.lifts.as_ref()), 8.0, INCH);
    let deep = frame.dip("A left", "5", "");
    assert_eq!(deep.wheels.iter().filter(|wheel| wheel.over).count(), 2);
    assert!(deep.screening.contains("no acceptance test"));
    is(some(deep.limit.as_ref()), 0.6, 1.0);
    let rise = frame.dip("A left", "-2", "");
    is(&rise.wheels[0].load, 2500.0, POUND_FORCE);
    // With the nest across stuck, the frame turns about it and the two nests beside: the dip is taken
    // up by three springs and the stop, so that more is lost than with all free.
    let stuck = frame.dip("A left", "2", "B right").stuck.unwrap();
    assert!(stuck.wheels[0].load.si < report.wheels[0].load.si);
}

/// Whoever deepens the dip sees the wheel lift, with all boxes free: the slider goes beyond it.
#[test]
fn the_deepest_dip_offered_lifts_a_wheel() {
    let truck: Value = serde_json::from_str(include_str!("../jobs/whole-truck.job.json")).unwrap();
    let truck = job(&truck);
    let report = level(&truck, &TABLES);
    let most = report.dips.unwrap().most;
    let held = HeldFrame::of(&truck, &TABLES);
    for wheel in &report.wheels {
        let lifts = held.dip(&wheel.name, "1", "").lifts.unwrap().si / INCH;
        assert!(lifts < most && most < 2.0 * lifts, "{}: {lifts} of {most}", wheel.name);
    }
}

/// A frame that is held and weighed elsewhere stands as the job does with that centre written into it.
#[test]
fn a_held_frame_stands_as_the_job_with_that_centre() {
    let truck = include_str!("../jobs/whole-truck.job.json");
    let mut written: Value = serde_json::from_str(truck).unwrap();
    let held = HeldFrame::of(&job(&written), &TABLES);
    let mut seen = Vec::new();
    for (along, across) in
        [("0", "0"), ("3 1/2", "-2"), ("-40 mm", "5 in"), ("14", "0"), ("90", "0")]
    {
        written["frame"]["centre"] = json!({ "along": along, "across": across });
        let told = level(&job(&written), &TABLES);
        let found = held.weighed_at(along, across);
        let shown = |report: &LevelReport| {
            serde_json::to_value((&report.plan, &report.frame, &report.problems)).unwrap()
        };
        assert_eq!(shown(&found), shown(&told), "{along}, {across}");
        seen.extend(told.frame.map(|frame| frame.state));
    }
    assert!(seen.contains(&FrameState::Settled) && seen.contains(&FrameState::Tips), "{seen:?}");
    let refused = held.weighed_at("here", "0").problems;
    assert_eq!(refused.len(), 1);
    assert_eq!(refused[0].path, "frame.centre.along");
}

/// Beams from box to box: a nest a quarter of the way gives three quarters to the near box.
#[test]
fn beams_share_their_nests_by_the_lever() {
    let job = job(&with(&[
        ("nests[0].seats[0].readings[0]", json!("12")),
        (
            "frame.beams",
            json!([
                { "name": "Left beam", "nests": ["A left", "B left"], "boxes": ["60", "-60"] },
            ]),
        ),
    ]));
    let wheels = level(&job, &TABLES).wheels;
    let names: Vec<&str> = wheels.iter().map(|wheel| wheel.name.as_str()).collect();
    assert_eq!(names, ["Left beam, A end", "Left beam, B end", "A right", "B right"]);
    // Nests at ±36 of ±60: 0.8 of the near one and 0.2 of the far, which carry alike.
    for wheel in &wheels {
        is(&wheel.load, 2000.0, POUND_FORCE);
    }
    // A dip under the A box lowers A left by 0.8 and B left by 0.2 of it: a twist of 0.6.
    let report = HeldFrame::of(&job, &TABLES).dip("Left beam, A end", "2", "");
    is(&report.wheels[2].load, 2000.0 + 1000.0 * 2.0 * 0.6 / 4.0, POUND_FORCE);
}

/// A left is 1/8 in low, which is kδ/4 = 1.5625 % of 2000 lb. One 1/8 there evens it out wholly, one
/// piece; level needs the same.
#[test]
fn the_shim_goes_where_the_coil_is_short() {
    for (aim, before) in [("loads", 0.015_625), ("level", 0.0625 * INCH)] {
        let report = level(&job(&with(&[("frame.shims_for", json!(aim))])), &TABLES);
        let shims = report.shims.unwrap();
        assert_eq!((&*shims.aim, shims.exact, shims.steps.len()), (aim, true, 1));
        is(&shims.before, before, 1.0);
        is(&shims.after, 0.0, 1.0);
        let step = &shims.steps[0];
        assert_eq!((step.nest.as_str(), step.text.as_str()), ("A left", "put in one 1/8 in"));
        is(&step.gains, 31.25, POUND_FORCE);
        let [edit] = shims.edits.as_slice() else { panic!("{:?}", shims.edits) };
        assert_eq!((edit.path.as_str(), edit.text.as_str()), ("frame.supports[0].shim", "1/8 in"));
        assert_eq!(shims.remains, "It is as even as can be.");
        for support in &shims.supports {
            is(&support.load, 2000.0, POUND_FORCE);
        }
        // Done, it asks for nothing more.
        let done = level(&job(&with(&[(edit.path.as_str(), json!(edit.text))])), &TABLES);
        let frame = done.frame.unwrap();
        is(some(frame.lean_along.as_ref()), 0.0, INCH);
        assert!(done.shims.unwrap().steps.is_empty());
    }
}

/// Where A left may not be shimmed, the other diagonal cannot help; both of its own can, but not the
/// one that is barred: B right alone lifts its diagonal as well, by 1/8.
#[test]
fn a_barred_nest_is_left_alone() {
    let barred = with(&[("frame.supports[0].shimmable", json!("no"))]);
    let shims = level(&job(&barred), &TABLES).shims.unwrap();
    assert_eq!(shims.steps.len(), 1);
    assert_eq!(shims.steps[0].nest, "B right");
    is(&shims.after, 0.0, 1.0);
    is(&shims.lean_along, -0.125, INCH);
}

/// Four nests of two coils that can be made alike by exchanging two: outers of 12 and 12 1/8 with
/// inners of 10 1/8 and 10, at equal rates.
#[test]
fn coils_are_exchanged_until_the_nests_are_alike() {
    let coil = |id: &str, free: &str| {
        json!({ "id": id, "name": id, "rate": "500 lb/in", "free": free,
        "limits": { "under": "1/4", "over": "1/4" } })
    };
    let nest = |id: &str, outer: &str, inner: &str| {
        json!({ "id": id, "seats": [
        { "coil": "outer", "label": format!("{id} o"), "readings": [outer] },
        { "coil": "inner", "label": format!("{id} i"), "readings": [inner] },
    ] })
    };
    let mut value = with(&[
        ("coils", json!([coil("outer", "12"), coil("inner", "10")])),
        (
            "nests",
            json!([
                nest("A left", "12 1/8", "10 1/8"),
                nest("A right", "12", "10"),
                nest("B left", "12 1/8", "10"),
                nest("B right", "12", "10 1/8"),
            ]),
        ),
        ("frame.weight", json!("16000 lb")),
    ]);
    let report = matching(&job(&value), &TABLES);
    // 500 lb/in of 1/8 in twice: 125 lb between A left and A right.
    is(some(report.before.as_ref()), 125.0, POUND_FORCE);
    assert!(some(report.after.as_ref()).si.abs() < 1e-6, "{:?}", report.after);
    assert_eq!(report.gap, None);
    assert_eq!(report.moves.len(), 2, "{:?}", report.moves);
    assert_eq!(report.left_over, Vec::<String>::new());
    // Kept together, the coils of A left cannot part, and nests only change places: with the heavy nest
    // and the light one on one side, the frame stands level across.
    for seat in [0, 1] {
        let path = format!("nests[0].seats[{seat}].pair");
        job_path::put(&mut value, &path, Some(json!("pair")));
    }
    let kept = matching(&job(&value), &TABLES);
    is(some(kept.after.as_ref()), 125.0, POUND_FORCE);
    let from: Vec<Vec<&str>> = kept
        .nests
        .iter()
        .map(|nest| nest.seats.iter().map(|seat| &seat.from[..8]).collect())
        .collect();
    assert!(from.iter().all(|seats| seats[0] == seats[1]), "{from:?}");
    let loads: Vec<f64> = kept.nests.iter().map(|nest| nest.load.si).collect();
    assert!(abs_diff_eq!(loads[0] + loads[2] - loads[1], loads[3], epsilon = 1e-6), "{loads:?}");
    // A long pair on the bench does not help; a short coil there is set aside.
    job_path::put(
        &mut value,
        "bench",
        Some(json!([
            { "label": "9", "coil": "outer", "readings": ["11 1/2", "11 1/2"] },
        ])),
    );
    let aside = matching(&job(&value), &TABLES);
    assert_eq!(aside.set_aside, ["9 (outer): short"]);
    is(some(aside.after.as_ref()), 125.0, POUND_FORCE);
}

/// What is wrong with a frame, and where that is said.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Wrong {
    case: Vec<Case>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// What is written at which paths.
    written: toml::Table,
    at: String,
    code: String,
    /// Whether it is a note that something is missing.
    #[serde(default)]
    note: bool,
    /// Whether the frame is reported all the same.
    #[serde(default)]
    stands: bool,
    /// Whether it is asked which coil belongs where.
    #[serde(default)]
    coils: bool,
}

#[test]
fn whatever_is_wrong_with_a_frame_is_said_at_its_field() {
    let text = std::fs::read_to_string(corpus::folder("errors/frames.toml")).unwrap();
    let cases = toml::from_str::<Wrong>(&text).unwrap().case;
    let mut said = String::new();
    let sound = level(&job(&four_corners()), &TABLES);
    assert!(sound.problems.is_empty() && sound.notes.is_empty(), "{sound:#?}");
    for case in &cases {
        let mut value = four_corners();
        for (path, text) in &case.written {
            let text = serde_json::to_value(text).unwrap();
            job_path::put(&mut value, path, Some(text).filter(|text| text != "-"));
        }
        let job = job(&value);
        let (problems, notes) = if case.coils {
            let report = matching(&job, &TABLES);
            (report.problems, report.notes)
        } else {
            let report = level(&job, &TABLES);
            assert_eq!(report.frame.is_some(), case.stands, "{}: {report:#?}", case.code);
            let whole = assess(&job, &TABLES);
            assert_eq!(whole.frame.is_some(), case.stands, "{}", case.code);
            assert_eq!(whole.nests.len(), 4, "{}: the nests stand", case.code);
            (report.problems, report.notes)
        };
        let at = case.at.as_str();
        let message = if case.note {
            let found = notes.iter().find(|note| note.path == at && note.code == case.code);
            found.map(|note| note.text.clone())
        } else {
            assert_eq!(problems.len(), 1, "{}: {problems:#?}", case.code);
            let found = problems.iter().find(|one| one.path == at && one.code == case.code);
            found.map(|Problem { message, expected, example, .. }| {
                let example = Some(example).filter(|example| !example.is_empty());
                let example = example.map_or(String::new(), |text| format!("; example: {text}"));
                format!("{message}\n  expected: {expected}{example}")
            })
        };
        let message =
            message.unwrap_or_else(|| panic!("{at} [{}]: {problems:#?} {notes:#?}", case.code));
        writeln!(said, "{at} [{}]\n  {message}", case.code).unwrap();
    }
    assert!(cases.len() > 12);
    corpus::keep(&corpus::folder("errors/frames.txt"), &said).unwrap();
}

/// The same frame, its nests told by two distances in place of eight.
#[test]
fn two_distances_say_where_four_nests_stand() {
    let mut job = four_corners();
    let before = frame(&job);
    for at in 0..4 {
        for way in ["along", "across"] {
            job_path::put(&mut job, &format!("frame.supports[{at}].{way}"), None);
        }
    }
    job_path::put(&mut job, "frame.apart", Some(json!({ "along": "72", "across": "56" })));
    let after = frame(&job);
    assert_eq!((after.supports, after.sentence), (before.supports, before.sentence));
    assert_eq!(after.sides[2].name, "A left and B right carry less by");

    let Some(supports) = job["frame"]["supports"].as_array_mut() else { panic!("no supports") };
    supports.truncate(3);
    let problems = assess(&self::job(&job), &TABLES).problems;
    let found = problems.iter().find(|problem| problem.path == "frame.apart").unwrap();
    assert_eq!((&*found.code, found.read.as_str()), ("apart-of-four", "3"));
}

/// A quarter of an inch lower at one end and higher at the other, 36 in from the middle: of 1000 lb/in a nest,
/// 4 · 250 lb · 36 in over 8000 lb, or 4 1/2 in.
#[test]
fn an_end_is_called_after_its_nests_when_the_weight_is_nearer_to_it() {
    let mut job: Value =
        serde_json::from_str(&corpus::named("stands-again").unwrap().text).unwrap();
    let heights = ["11 23/32", "11 25/32", "12 9/32", "12 11/32"];
    for (nest, (name, height)) in ["One", "Two", "Three", "Four"].iter().zip(heights).enumerate() {
        job["nests"][nest]["id"] = json!(name);
        job["nests"][nest]["standing"] = json!(height);
        job["frame"]["supports"][nest]["nest"] = json!(name);
    }
    let found = frame(&job).standing.unwrap();
    let cause = found.cause.unwrap();
    assert_eq!(cause, "the weight acts 4 1/2 in nearer to One and Two than written");
}

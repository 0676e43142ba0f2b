//! The ± of a coil: one figure by one rule wherever it is shown, and never smaller for knowing less.

use approx::relative_eq;
use coilnest::job::report::{Figure, Report, SheetAnswer, Trust};
use coilnest::job::{assess, coil_sheet, file};
use coilnest_tables::TABLES;
use coilnest_tests::corpus;
use oorandom::Rand32;
use serde_json::{Map, Value, json};

fn report(job: &str) -> Report {
    assess(&file::open(job).unwrap(), &TABLES)
}

fn trust(job: &str, coil: &str) -> Option<Trust> {
    let SheetAnswer { sheet, .. } = coil_sheet(&file::open(job).unwrap(), &TABLES, coil);
    sheet.unwrap().trust
}

fn doubt(figure: &Figure) -> f64 {
    figure.doubt_si.unwrap_or_default()
}

#[track_caller]
fn assert_close(found: f64, expected: f64, what: &str) {
    assert!(relative_eq!(found, expected, max_relative = 1e-9), "{what}: {found}, not {expected}");
}

/// The rate by the sizes, whether or not a stated one goes before it.
#[test]
fn nest_and_sheet_have_one_doubt_of_a_coil() {
    let mut compared = 0;
    for job in corpus::all().unwrap() {
        for coil in &report(&job.text).coils {
            let Some(trust) = trust(&job.text, &coil.id) else { continue };
            let in_nest = coil.rate_drawing.as_ref().or(coil.rate.as_ref()).unwrap();
            let on_sheet = trust.rate.unwrap();
            let what = format!("{}, {}", job.name, coil.id);
            assert_close(doubt(&on_sheet), doubt(in_nest), &what);
            assert_close(on_sheet.si, in_nest.si, &what);
            compared += 1;
        }
    }
    assert!(compared >= 15, "{compared}");
}

/// A coil under a frame on four nests, one of them a little low, with the weight off the middle.
fn job(coil: &Map<String, Value>) -> String {
    let nests = [("A left", "349"), ("A right", "350"), ("B left", "350"), ("B right", "350")];
    let nest = |(id, free): (&str, &str)| {
        let seat = json!({ "coil": "coil", "readings": [free, free] });
        json!({ "id": id, "working_height": "300", "seats": [seat] })
    };
    let support = |(nest, along, across): (&str, &str, &str)| json!({ "nest": nest, "along": along, "across": across });
    let supports = [
        ("A left", "900", "700"),
        ("A right", "900", "-700"),
        ("B left", "-900", "700"),
        ("B right", "-900", "-700"),
    ];
    json!({
        "format": "coilnest-job/1",
        "system": "metric",
        "tape": { "graduation": "1 mm", "class": "II" },
        "coils": [coil],
        "nests": nests.map(nest),
        "frame": {
            "weight": "30 kN",
            "centre": { "along": "120", "across": "40" },
            "supports": supports.map(support),
        },
    })
    .to_string()
}

fn coil(fields: Value) -> Map<String, Value> {
    let mut coil = json!({
        "id": "coil", "name": "Coil", "free": "350", "bar": "20", "outside": "130", "turns": "7",
        "ends": "closed-ground", "steel": "en-10089",
    });
    let (Value::Object(coil), Value::Object(fields)) = (&mut coil, fields) else { panic!() };
    coil.extend(fields);
    coil.clone()
}

/// A half-width, uniform, on the rate of a book.
#[test]
fn a_stated_rate_has_the_doubt_of_its_tolerance() {
    let stated = coil(json!({ "rate": "200 N/mm", "tolerances": { "rate": "5 %" } }));
    let rate = report(&job(&stated)).coils[0].rate.clone().unwrap();
    assert_close(doubt(&rate), 200e3 * 0.05 / 3f64.sqrt(), "rate");
}

/// What is given each way differently is doubted by the greater of the two: nobody is surer for a
/// figure that may be off one way only.
#[test]
fn an_uneven_tolerance_is_doubted_by_its_greater_side() {
    let of = |tolerance: &str| {
        doubt(
            report(&job(&coil(json!({ "tolerances": { "bar": tolerance } })))).coils[0]
                .rate
                .as_ref()
                .unwrap(),
        )
    };
    assert_close(of("+0.3 -0"), of("0.3"), "up");
    assert_close(of("+0.1 -0.3"), of("0.3"), "down");
    assert!(of("0.3") > 1.0001 * of("0"));
}

/// Half a turn may lie dead where none does by the usual count.
#[test]
fn open_ends_are_in_doubt_on_the_sheet_too() {
    let open = job(&coil(json!({ "ends": "open" })));
    let trust = trust(&open, "coil").unwrap();
    assert!(trust.parts.iter().any(|part| part.name == "Dead turns"), "{:?}", trust.parts);
    let in_nest = report(&open).coils[0].rate.clone().unwrap();
    assert_close(doubt(&trust.rate.unwrap()), doubt(&in_nest), "open ends");
}

/// Of a few turns so many may lie dead that the doubt of the rate is more than the rate.
#[test]
fn a_doubt_that_outweighs_the_rate_spreads_to_the_frame() {
    let supports = |dead: &str| {
        let few = coil(json!({ "turns": "3", "dead_turns": dead, "readings": [] }));
        let report = report(&job(&few));
        let of_rate = report.coils[0].rate.clone().unwrap();
        (doubt(&of_rate) / of_rate.si, report.frame.unwrap().supports)
    };
    let (_, known) = supports("2 ± 1/2");
    let (relative, unknown) = supports("2 ± 3");
    assert!(relative > 1.0, "{relative}");
    for (known, unknown) in known.iter().zip(&unknown) {
        assert!(
            doubt(&known.load) > 0.0 && doubt(&unknown.load) >= doubt(&known.load),
            "{}",
            known.nest
        );
        assert!(doubt(&unknown.height) > doubt(&known.height), "{}", known.nest);
        assert!(unknown.height.doubt_text.is_some());
    }
}

/// Every ± that rests on the coil, each as a part of its figure, and whether the sheet says that a
/// tolerance that nobody gave counts as exact.
struct Known {
    doubts: Vec<(String, f64)>,
    says_exact: bool,
}

fn known(coil: &Map<String, Value>) -> Known {
    let job = job(coil);
    let report = report(&job);
    let trust = trust(&job, "coil");
    let mut doubts = Vec::new();
    let mut take = |name: String, figure: Option<&Figure>| {
        doubts.extend(figure.map(|figure| (name, doubt(figure) / figure.si.abs())));
    };
    let of = &report.coils[0];
    take("rate".into(), of.rate.as_ref());
    take("rate by the sizes".into(), of.rate_drawing.as_ref());
    take("rate on the sheet".into(), trust.as_ref().and_then(|trust| trust.rate.as_ref()));
    for nest in &report.nests {
        take(format!("load of {}", nest.id), nest.working.as_ref().map(|state| &state.load));
    }
    for support in report.frame.iter().flat_map(|frame| &frame.supports) {
        take(format!("frame on {}", support.nest), Some(&support.load));
        take(format!("height of {}", support.nest), Some(&support.height));
    }
    let exact = |trust: &Trust| trust.sentence.contains("taken as exact");
    let stated = of.rate.as_ref().and_then(|rate| report.workings.get(rate.working.as_ref()?));
    let stated_exact = stated.is_some_and(|working| working.source.contains("counts as exact"));
    Known { doubts, says_exact: stated_exact || trust.as_ref().is_some_and(exact) }
}

/// The usual dead turns, so that a count that is left out is the same count, less well known.
const ENDS: [(&str, f64); 4] =
    [("closed-ground", 2.0), ("tapered-ground", 1.5), ("open-ground", 1.0), ("open", 0.0)];

fn any_coil(dice: &mut Rand32) -> Map<String, Value> {
    let (ends, dead) = ENDS[dice.rand_range(0..4) as usize];
    let mut one_in = |sides: u32| dice.rand_range(0..sides) == 0;
    let (stated, tells_dead, told) = (one_in(3), one_in(2), one_in(2));
    let given: Vec<bool> = (0..4).map(|_| told || !one_in(3)).collect();
    let mut share = || f64::from(dice.rand_float());
    let (bar, index, active) = (14.0 + 16.0 * share(), 4.0 + 5.0 * share(), 3.0 + 6.0 * share());
    let tolerance =
        |given: bool, most: f64, share: f64| given.then(|| format!("{:.3}", most * share));
    let tolerances = json!({
        "bar": tolerance(given[0], 0.4, share()),
        "diameter": tolerance(given[1], 2.0, share()),
        "turns": tolerance(given[2], 0.25, share()),
        "rate": tolerance(stated && given[3], 8.0, share()).map(|percent| format!("{percent} %")),
    });
    let (turns, mean) = (active + dead, bar * index);
    // 78.5 GPa, so that what is stated and what the sizes give go together.
    let rate = 78_500.0 * bar.powi(4) / (8.0 * mean.powi(3) * active);
    coil(json!({
        "bar": format!("{bar:.2}"),
        "outside": format!("{:.2}", mean + bar),
        "turns": format!("{turns:.3}"),
        "ends": ends,
        "dead_turns": tells_dead.then(|| format!("{dead} ± {:.3}", 0.5 * share())),
        "rate": stated.then(|| format!("{rate:.2} N/mm")),
        "tolerances": tolerances,
    }))
}

/// Every way to know less of a coil by one figure.
fn less_known(coil: &Map<String, Value>) -> Vec<(String, Map<String, Value>)> {
    let mut less = Vec::new();
    let with = |field: &str, value: Value| {
        let mut coil = coil.clone();
        coil.insert(field.to_owned(), value);
        coil
    };
    for field in ["bar", "outside", "turns", "ends", "dead_turns", "rate", "steel"] {
        less.push((format!("without {field}"), with(field, Value::Null)));
    }
    let tolerances = coil["tolerances"].as_object().unwrap();
    for (field, value) in tolerances.iter().filter(|(_, value)| !value.is_null()) {
        let text = value.as_str().unwrap();
        let number: f64 = text.trim_end_matches(" %").parse().unwrap();
        let unit = if text.ends_with('%') { " %" } else { "" };
        for changed in [
            Value::Null,
            json!(format!("{:.4}{unit}", 1.3 * number)),
            json!(format!("+{:.4} -{number:.4}{unit}", 1.5 * number)),
        ] {
            let mut tolerances = tolerances.clone();
            tolerances.insert(field.clone(), changed.clone());
            less.push((
                format!("{field} within {changed}"),
                with("tolerances", Value::Object(tolerances)),
            ));
        }
    }
    if let Some((dead, by)) = coil["dead_turns"].as_str().and_then(|text| text.split_once(" ± ")) {
        let wider = 0.1 + 2.0 * by.parse::<f64>().unwrap();
        less.push((
            format!("dead turns ± {wider}"),
            with("dead_turns", json!(format!("{dead} ± {wider:.3}"))),
        ));
    }
    less
}

#[test]
fn knowing_less_never_makes_a_doubt_smaller() {
    let mut dice = Rand32::new(11);
    let (mut compared, mut grew) = (0, 0);
    for _ in 0..150 {
        let coil = any_coil(&mut dice);
        let before = known(&coil);
        for (how, coil_less) in less_known(&coil) {
            let after = known(&coil_less);
            if after.says_exact {
                continue;
            }
            for (name, less) in &before.doubts {
                // A figure that is gone is not known at all.
                let Some((_, now)) = after.doubts.iter().find(|(found, _)| found == name) else {
                    continue;
                };
                // Loads under a frame hang on the rate itself, not on its doubt alone.
                let moved =
                    how.starts_with("without") && name != "rate" && !name.starts_with("rate ");
                if moved {
                    continue;
                }
                assert!(*now >= less * (1.0 - 1e-6), "{how}: {name} {now}, was {less}\n{coil:?}");
                compared += 1;
                grew += u32::from(*now > less * 1.0001);
            }
        }
    }
    assert!(compared > 5000 && grew > 1000, "{compared}, {grew}");
}

//! What holds between the figures of any report, on every job that is kept.

use approx::{abs_diff_eq, relative_eq};
use coilnest::bounds;
use coilnest::job::report::{Report, StateReport};
use coilnest::job::{assess, file};
use coilnest::quantity::System;
use coilnest::reading::Reading;
use coilnest_tables::TABLES;
use coilnest_tests::answers::{self, Answer};
use coilnest_tests::corpus;
use serde_json::Value;
use std::collections::BTreeSet;

fn reports() -> Vec<(String, System, Report)> {
    let of = |kept: corpus::KeptJob| {
        let job = file::open(&kept.text).unwrap();
        let metric = kept.text.contains("\"system\": \"metric\"");
        let system = if metric { System::Metric } else { System::Inch };
        (kept.name, system, assess(&job, &TABLES))
    };
    corpus::all().unwrap().into_iter().map(of).collect()
}

/// Every text under the name `working`, a verdict's among them.
fn keys(value: &Value) -> Vec<&str> {
    let own = value.get("working").and_then(Value::as_str);
    let inner: Vec<&Value> = match value {
        Value::Object(object) => object.values().collect(),
        Value::Array(items) => items.iter().collect(),
        _ => Vec::new(),
    };
    own.into_iter().chain(inner.into_iter().flat_map(keys)).collect()
}

#[test]
fn every_figure_has_its_working_and_every_working_its_figure() {
    for Answer { name, parts, workings, .. } in answers::all().unwrap() {
        for figure in corpus::figures(&parts) {
            let key = figure["working"].as_str();
            let key = key.unwrap_or_else(|| panic!("{name}: no working of {figure}"));
            let working = workings.get(key).unwrap();
            for part in [&working.with, &working.result, &working.source] {
                assert!(!part.trim().is_empty(), "{name}, {key}: {working:?}");
            }
            assert!(!working.formula.is_empty(), "{name}, {key}: {working:?}");
        }
        let used: BTreeSet<String> = keys(&parts).into_iter().map(str::to_owned).collect();
        let filed: BTreeSet<String> =
            (1..=workings.iter().len()).map(|number| format!("w{number}")).collect();
        assert_eq!(used, filed, "{name}");
    }
}

/// A working's result is what the figure says, or the exact value where the figure is a fraction.
#[test]
fn a_working_ends_in_its_figure() {
    for Answer { name, parts, workings, .. } in answers::all().unwrap() {
        for figure in corpus::figures(&parts) {
            let result = &workings.get(figure["working"].as_str().unwrap()).unwrap().result;
            let text = figure["text"].as_str().unwrap();
            let says = result.starts_with(text) || result.contains(", u = ");
            assert!(says, "{name}: {text} and {result}");
        }
    }
}

fn states(report: &Report) -> impl Iterator<Item = &StateReport> {
    report.nests.iter().flat_map(|nest| nest.working.iter().chain(&nest.answers))
}

#[test]
fn loads_sum_up_and_shares_are_of_the_whole() {
    let mut seen = 0;
    for (name, _, report) in reports() {
        for state in states(&report) {
            let springs: f64 = state.seats.iter().map(|seat| seat.load.si).sum();
            let stop = state.stop_load.as_ref().map_or(0.0, |stop| stop.si);
            let load = state.load.si;
            assert!(relative_eq!(springs + stop, load, max_relative = 1e-9), "{name}: {state:?}");
            let shares: Vec<f64> =
                state.seats.iter().filter_map(|seat| Some(seat.share.as_ref()?.si)).collect();
            if springs > 0.0 {
                assert_eq!(shares.len(), state.seats.len(), "{name}");
                assert!(
                    abs_diff_eq!(shares.iter().sum::<f64>(), 1.0, epsilon = 1e-12),
                    "{name}: {shares:?}"
                );
                seen += 1;
            } else {
                assert_eq!(shares, [0.0; 0], "{name}");
            }
        }
    }
    assert!(seen > 30, "{seen} states");
}

#[test]
fn the_load_curve_only_rises() {
    for (name, _, report) in reports() {
        for nest in &report.nests {
            for (above, below) in nest.breakpoints.iter().zip(nest.breakpoints.iter().skip(1)) {
                assert!(above.height.si >= below.height.si, "{name}");
                assert!(above.load.si <= below.load.si, "{name}");
                assert!(above.rate.si <= below.rate.si, "{name}");
                // Between two bends it is straight.
                let straight = above.load.si + above.rate.si * (above.height.si - below.height.si);
                assert!(
                    abs_diff_eq!(straight, below.load.si, epsilon = 1e-9 * straight.max(1.0)),
                    "{name}"
                );
            }
            for bend in &nest.breakpoints {
                let sum: f64 = bend.stack.iter().sum();
                assert!(abs_diff_eq!(sum, bend.load.si, epsilon = 1e-9 * sum.max(1.0)), "{name}");
            }
            if let (Some(free), Some(first)) = (&nest.free_height, nest.breakpoints.first()) {
                assert!(abs_diff_eq!(free.si, first.height.si, epsilon = 1e-15), "{name}");
                assert_eq!(Some(&first.seat), nest.touch_order.first(), "{name}");
            }
            if let (Some(solid), Some(last)) = (&nest.solid_height, nest.breakpoints.last()) {
                assert!(abs_diff_eq!(solid.si, last.height.si, epsilon = 1e-15), "{name}");
                assert_eq!(Some(last.seat), nest.solid_first, "{name}");
            }
        }
    }
}

/// A length's text is one that the tape's reader takes, and reads back as near as its step says.
#[test]
fn lengths_read_back() {
    let mut seen = 0;
    for Answer { name, system, parts, .. } in answers::all().unwrap() {
        for figure in corpus::figures(&parts) {
            let text = figure["text"].as_str().unwrap();
            if figure["unit"] != "m" {
                continue;
            }
            let read = Reading::parse(text, system, &bounds::POSITION)
                .unwrap_or_else(|refusal| panic!("{name}: {refusal}"));
            let off = (read.length().value - figure["si"].as_f64().unwrap()).abs();
            // Half a sixteenth, or half a tenth of a millimetre.
            let step = if system == System::Metric { 0.000_1 } else { 0.0254 / 16.0 };
            assert!(off <= step / 2.0 + 1e-12, "{name}: {text} is {off} m off");
            seen += 1;
        }
    }
    assert!(seen > 200, "{seen} lengths");
}

#[test]
fn the_three_probabilities_of_a_verdict_are_one() {
    for (name, _, report) in reports() {
        let seats = report.nests.iter().flat_map(|nest| &nest.seats);
        for verdict in seats.filter_map(|seat| seat.verdict.as_ref()) {
            let parts = [verdict.p_in, verdict.p_short, verdict.p_long];
            if let [Some(inside), Some(short), Some(long)] = parts {
                assert!(
                    abs_diff_eq!(inside + short + long, 1.0, epsilon = 1e-12),
                    "{name}: {verdict:?}"
                );
            }
        }
    }
}

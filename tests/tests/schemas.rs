//! The schemas that are checked in are those of the Rust types.

use coilnest_tests::schema;
use serde_json::Value;

#[test]
fn checked_in_schemas_are_up_to_date() {
    for schema in schema::all() {
        let kept = std::fs::read_to_string(schema.path()).unwrap_or_default();
        assert!(
            kept == schema.text,
            "{} differs from the types: run `cargo run -p coilnest-tests --bin schemas`, and then `npm run types` in www",
            schema.name
        );
    }
}

/// What may be left out is not required, and nothing may be null.
#[test]
fn what_may_be_missing_is_not_required() {
    let [job, report, ..] = schema::all().map(|schema| schema.text);
    assert!(!job.contains("null") && !report.contains("null"));
    let report: Value = serde_json::from_str(&report).unwrap();
    assert_eq!(report["$defs"]["Figure"]["required"], serde_json::json!(["si", "unit", "text"]));
    assert!(report["$defs"]["StateAnswer"]["required"] == serde_json::json!(["workings"]));
    let job: Value = serde_json::from_str(&job).unwrap();
    assert_eq!(job["required"], serde_json::json!(["format"]));
    assert_eq!(job["$defs"]["Seat"].get("required"), None);
}

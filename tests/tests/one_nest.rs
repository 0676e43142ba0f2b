//! The report of one nest says what the report of the whole job says of it.

use coilnest::job::{Job, assess, assess_nest, file};
use coilnest_tables::TABLES;
use coilnest_tests::corpus;
use serde_json::{Value, json};
use std::error::Error;

/// A part of a report with each working in the place of its key, and without what hangs on the frame.
fn told(part: &Value, workings: &Value) -> Value {
    match part {
        Value::Array(items) => items.iter().map(|item| told(item, workings)).collect(),
        Value::Object(fields) => {
            let kept = fields.iter().filter(|(name, _)| *name != "standing");
            let field = |(name, held): (&String, &Value)| {
                let key = held.as_str().filter(|_| name == "working");
                let told = key.map_or_else(|| told(held, workings), |key| workings[key].clone());
                (name.clone(), told)
            };
            Value::Object(kept.map(field).collect())
        }
        plain => plain.clone(),
    }
}

/// Of problems or notes, those that are of no other nest than that of a place.
fn of_nest(all: &Value, at: usize) -> Vec<&Value> {
    let here = format!("nests[{at}]");
    let is_elsewhere = |path: &str| {
        let rest = path.strip_prefix(here.as_str());
        path.starts_with("nests[")
            && rest.is_none_or(|rest| !rest.is_empty() && !rest.starts_with('.'))
    };
    let each = all.as_array().into_iter().flatten();
    each.filter(|one| one["path"].as_str().is_some_and(|path| !is_elsewhere(path))).collect()
}

#[test]
fn one_nest_is_told_as_among_all() -> Result<(), Box<dyn Error>> {
    let (mut looked, mut clear) = (0, 0);
    for kept in corpus::all()? {
        let name = &kept.name;
        let Ok(job) = file::open(&kept.text) else { continue };
        let whole = serde_json::to_value(assess(&job, &TABLES))?;
        let nests = whole["nests"].as_array().ok_or("no nests")?;
        for (at, nest) in nests.iter().enumerate() {
            let id = nest["id"].as_str().ok_or("no name")?;
            if nests.iter().filter(|other| other["id"] == nest["id"]).count() > 1 {
                continue;
            }
            let alone = serde_json::to_value(assess_nest(&job, &TABLES, id))?;
            let (one, all) = (&alone["workings"], &whole["workings"]);
            assert_eq!(told(&alone["nests"], one), told(&json!([nest]), all), "{name}, {id}");
            for coil in alone["coils"].as_array().ok_or("no coils")? {
                let same = |other: &&Value| other["id"] == coil["id"];
                let among = whole["coils"].as_array().and_then(|all| all.iter().find(same));
                assert_eq!(
                    Some(told(coil, one)),
                    among.map(|coil| told(coil, all)),
                    "{name}, {id}"
                );
            }
            // What lies beside nests and drawings is not looked at.
            let beside = |one: &&Value| {
                one["path"]
                    .as_str()
                    .is_some_and(|path| path.starts_with("nests") || path.starts_with("coils"))
            };
            for found in ["problems", "notes"] {
                let here: Vec<_> = of_nest(&whole[found], at).into_iter().filter(beside).collect();
                let said: Vec<_> = of_nest(&alone[found], at).into_iter().filter(beside).collect();
                let mut missing = here.iter().filter(|one| !said.contains(one));
                assert_eq!(missing.next(), None, "{name}, {id}: {found}");
                let mut more = said.iter().filter(|one| !here.contains(one));
                assert_eq!(more.next(), None, "{name}, {id}: {found}");
                let elsewhere = alone[found].as_array().map_or(0, Vec::len);
                assert_eq!(of_nest(&alone[found], at).len(), elsewhere, "{name}, {id}: {found}");
                clear += usize::from(here.is_empty());
            }
            looked += 1;
        }
    }
    assert!(looked > 20, "{looked} nests");
    assert!(clear < 2 * looked, "no nest has a problem or a note");
    Ok(())
}

/// Invented: the first nest of a job so many times, each nest and coil with a name of its own.
fn many(job: &Value, count: usize) -> Result<Job, Box<dyn Error>> {
    let mut job = job.clone();
    let first = job["nests"][0].clone();
    let nest = |number: usize| {
        let mut nest = first.clone();
        nest["id"] = json!(format!("nest {number}"));
        for seat in nest["seats"].as_array_mut().into_iter().flatten() {
            seat["label"] = json!(format!("{number} {}", seat["coil"]));
        }
        nest
    };
    job["nests"] = (0..count).map(nest).collect();
    Ok(file::open(&job.to_string()).map_err(|problem| problem.message)?)
}

#[test]
fn a_report_of_one_nest_is_no_longer_for_all_the_others() -> Result<(), Box<dyn Error>> {
    let text = include_str!("../jobs/whole-truck.job.json");
    let mut truck: Value = serde_json::from_str(text)?;
    truck["frame"] = json!({});
    let length = |count: usize| -> Result<usize, Box<dyn Error>> {
        let report = assess_nest(&many(&truck, count)?, &TABLES, "nest 0");
        Ok(serde_json::to_string(&report)?.len())
    };
    let (one, hundred) = (length(1)?, length(100)?);
    assert!(one > 5_000, "{one} bytes");
    assert_eq!(hundred, one);
    Ok(())
}

#[test]
fn a_nest_that_is_not_there_is_asked_for_by_the_names_that_are() -> Result<(), Box<dyn Error>> {
    let job = file::open(include_str!("../jobs/whole-truck.job.json"))
        .map_err(|problem| problem.message)?;
    let report = assess_nest(&job, &TABLES, "C left");
    assert!(report.nests.is_empty());
    let problem = report.problems.iter().find(|problem| problem.code == "no-such-nest");
    assert!(problem.is_some_and(|problem| problem.expected.contains("A left")), "{problem:?}");
    Ok(())
}

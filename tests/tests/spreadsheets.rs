//! A job as tables: another reader of comma-separated text finds every figure of the report in them, and
//! nothing that a spreadsheet would work out.

use coilnest::job::spreadsheet::{Decimals, Spreadsheets, spreadsheets};
use coilnest::job::{assess, file, level};
use coilnest_tables::TABLES;
use coilnest_tests::{corpus, job_path};
use csv::{ReaderBuilder, StringRecord};
use serde_json::{Value, json};

fn of(job: &Value, decimals: Decimals) -> Spreadsheets {
    spreadsheets(&file::from_value(job.clone()).unwrap(), &TABLES, decimals)
}

fn truck() -> Value {
    serde_json::from_str(&corpus::named("whole-truck").unwrap().text).unwrap()
}

/// The same truck down again, with boxes, pads, two weights and taped heights.
fn truck_again() -> Value {
    serde_json::from_str(&corpus::named("truck-again").unwrap().text).unwrap()
}

/// The names of the columns, and the lines.
fn read(text: &str, separator: u8) -> (Vec<String>, Vec<StringRecord>) {
    let text = text.strip_prefix('\u{feff}').expect("a byte order mark");
    assert!(text.lines().count() == text.matches("\r\n").count());
    let mut reader = ReaderBuilder::new().delimiter(separator).from_reader(text.as_bytes());
    let names = reader.headers().unwrap().iter().map(str::to_owned).collect();
    (names, reader.records().map(Result::unwrap).collect())
}

fn cell<'l>(names: &[String], line: &'l StringRecord, name: &str) -> &'l str {
    let place = names.iter().position(|one| one == name);
    line.get(place.unwrap_or_else(|| panic!("{name} in {names:?}"))).unwrap()
}

#[test]
fn every_coil_stands_in_the_table_with_its_figures() {
    let job = truck();
    let report = assess(&file::from_value(job.clone()).unwrap(), &TABLES);
    let (names, lines) = read(&of(&job, Decimals::Point).coils, b',');
    let seats: Vec<_> = report.nests.iter().flat_map(|nest| &nest.seats).collect();
    assert_eq!(lines.len(), seats.len());
    assert!(lines.len() >= 8);
    for (seat, line) in seats.iter().zip(&lines) {
        let at = |name: &str| cell(&names, line, name);
        let free = seat.free.as_ref().unwrap();
        assert_eq!(at("label"), seat.label.clone().unwrap_or_default());
        assert_eq!(at("measured"), free.text.replace('\u{202f}', " "));
        let inches: f64 = at("measured, in").parse().unwrap();
        assert!((inches * 0.0254 - free.si).abs() < 0.00005 * 0.0254 + 1e-12, "{inches}");
        let verdict = seat.verdict.as_ref().unwrap();
        assert_eq!(verdict.title, at("verdict"));
        assert_eq!(at("in words"), verdict.sentence.replace(['\u{202f}', '\u{a0}'], " "));
        let sure: f64 = at("sure, %").parse().unwrap();
        assert!(
            sure <= 100.0
                * verdict.p_in.unwrap().max(verdict.p_short.unwrap()).max(verdict.p_long.unwrap())
        );
    }
    let written = job["nests"][0]["seats"][0]["readings"][0].as_str().unwrap();
    assert_eq!(cell(&names, &lines[0], "reading 1"), written);
}

#[test]
fn nests_and_frame_carry_what_the_report_says() {
    let job = truck();
    let read_job = file::from_value(job.clone()).unwrap();
    let report = assess(&read_job, &TABLES);
    let sheets = of(&job, Decimals::Point);
    let (names, lines) = read(&sheets.nests, b',');
    let states: Vec<_> =
        report.nests.iter().flat_map(|nest| nest.working.iter().chain(&nest.answers)).collect();
    assert_eq!(lines.len(), states.len());
    for (state, line) in states.iter().zip(&lines) {
        let pounds: f64 = cell(&names, line, "load, lb").parse().unwrap();
        assert!((pounds * 4.448_221_615_260_5 - state.load.si).abs() < 0.25, "{pounds}");
    }
    let frame = level(&read_job, &TABLES).frame.unwrap();
    let (names, lines) = read(&sheets.frame, b',');
    assert_eq!(lines.len(), frame.supports.len());
    for (support, line) in frame.supports.iter().zip(&lines) {
        assert_eq!(cell(&names, line, "nest"), support.nest);
        let percent: f64 = cell(&names, line, "part of the mean load, %").parse().unwrap();
        assert!((percent / 100.0 - support.share.si).abs() < 0.000_51, "{percent}");
    }
    assert!(names.iter().any(|name| name == "shims"), "{names:?}");
}

#[test]
fn boxes_pads_and_heights_stand_in_tables_of_their_own() {
    let job = truck_again();
    let read_job = file::from_value(job.clone()).unwrap();
    let (report, level) = (assess(&read_job, &TABLES), level(&read_job, &TABLES));
    let sheets = of(&job, Decimals::Point);
    let inches = |text: &str, si: f64| {
        let inches: f64 = text.parse().unwrap();
        assert!((inches * 0.0254 - si).abs() < 0.00005 * 0.0254 + 1e-12, "{inches} {si}");
    };

    let (names, lines) = read(&sheets.boxes, b',');
    let boxes =
        || report.nests.iter().flat_map(|nest| nest.guides.iter().map(move |of| (nest, of)));
    assert_eq!(lines.len(), boxes().count());
    for ((nest, guides), line) in boxes().zip(&lines) {
        let at = |name: &str| cell(&names, line, name);
        assert_eq!((at("nest"), at("box")), (nest.id.as_str(), guides.name.as_str()));
        assert_eq!(guides.title, at("verdict"));
        for (name, clear) in ["top", "middle", "bottom"].into_iter().zip(&guides.at) {
            inches(at(&format!("clear, {name}, in")), clear.si);
        }
        inches(at("clear at the least, in"), guides.least.as_ref().unwrap().si);
    }
    assert_eq!(cell(&names, &lines[0], "least"), "'1/32");

    let (names, lines) = read(&sheets.frame, b',');
    for (stack, line) in level.stacks.iter().zip(&lines) {
        inches(cell(&names, line, "pads, plates and shims, in"), stack.thickness.si);
        inches(cell(&names, line, "lower seat to frame, in"), stack.height.as_ref().unwrap().si);
    }
    assert!(cell(&names, &lines[2], "pads in words").contains("worn by 1/8 in"));

    let frame = level.frame.unwrap();
    let (names, lines) = read(&sheets.standing, b',');
    let under = |name: &str| frame.weights.iter().find(|under| under.name == name).unwrap();
    // Four nests and two couplers, light and loaded.
    assert_eq!(lines.len(), 12);
    let mut taped = 0;
    for line in &lines {
        let at = |name: &str| cell(&names, line, name);
        let under = under(at("under"));
        let heights = &under.standing.as_ref().unwrap().heights;
        if let Some(height) = heights.iter().find(|height| height.of == at("at")) {
            inches(at("taped, in"), height.taped.si);
            inches(at("worked out, in"), height.computed.si);
            inches(at("difference, in"), height.difference.si);
            assert_eq!(at("agrees"), if height.agrees { "yes" } else { "no" });
            taped += 1;
        }
        if let Some(point) = under.points.iter().find(|point| point.name == at("at")) {
            assert_eq!((at("verdict"), at("load, lb")), (&*point.title, ""));
            inches(at("worked out, in"), point.height.si);
        }
        if let Some(nest) = under.supports.iter().position(|nest| nest.nest == at("at")) {
            let pounds: f64 = at("load by the heights taped, lb").parse().unwrap();
            let load = &under.weighed.as_ref().unwrap().loads[nest];
            assert!((pounds * 4.448_221_615_260_5 - load.si).abs() < 0.25, "{pounds}");
            inches(at("left before solid, in"), under.supports[nest].to_solid.as_ref().unwrap().si);
        }
    }
    assert_eq!(taped, 9);
    let none = of(&truck(), Decimals::Point);
    assert_eq!((none.boxes, none.standing), (String::new(), String::new()));
}

#[test]
fn where_a_comma_is_decimal_semicolons_part_the_columns() {
    let (point, comma) = (of(&truck_again(), Decimals::Point), of(&truck_again(), Decimals::Comma));
    for (point, comma) in [
        (point.coils, comma.coils),
        (point.nests, comma.nests),
        (point.boxes, comma.boxes),
        (point.frame, comma.frame),
        (point.standing, comma.standing),
    ] {
        let ((names, lines), (same, others)) = (read(&point, b','), read(&comma, b';'));
        assert_eq!(names, same);
        assert_eq!(lines.len(), others.len());
        for (line, other) in lines.iter().zip(&others) {
            for (cell, there) in line.iter().zip(other) {
                let expected = if cell.parse::<f64>().is_ok() {
                    cell.replace('.', ",")
                } else {
                    cell.to_owned()
                };
                assert_eq!(there, expected);
            }
        }
    }
}

#[test]
fn no_cell_is_a_formula_or_a_day() {
    let mut job = truck_again();
    for (path, text) in [
        ("nests[0].id", "=HYPERLINK(\"x\")"),
        ("nests[0].seats[0].label", "7/8"),
        ("nests[0].seats[1].label", "@SUM(A1)"),
        ("coils[0].name", "+cmd|x"),
        ("nests[1].seats[0].condition", "-2+3"),
        ("frame.supports[0].nest", "=HYPERLINK(\"x\")"),
        ("nests[0].guides[0].name", "=1+1"),
        ("frame.points[0].name", "@SUM(A1)"),
    ] {
        job_path::put(&mut job, path, Some(json!(text)));
    }
    let sheets = of(&job, Decimals::Point);
    for text in [sheets.coils, sheets.nests, sheets.boxes, sheets.standing] {
        let (_, lines) = read(&text, b',');
        for cell in lines.iter().flat_map(StringRecord::iter) {
            let is_number = cell.parse::<f64>().is_ok();
            let is_signed_text = cell.starts_with('−');
            assert!(
                is_number
                    || is_signed_text
                    || !cell.starts_with(['=', '+', '-', '@'])
                    || cell.ends_with(" in"),
                "{cell}"
            );
            assert_ne!(cell, "7/8");
        }
        assert!(text.contains("'=HYPERLINK"));
    }
}

#[test]
fn without_a_frame_there_is_no_table_of_it() {
    let mut job = truck();
    job_path::put(&mut job, "frame", None);
    assert_eq!(of(&job, Decimals::Point).frame, "");
}

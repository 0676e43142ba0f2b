//! Verdicts that say no more than is known: what was found to say more, and that knowing less is never
//! better. The coils are invented.

use approx::{abs_diff_eq, assert_abs_diff_eq};
use coilnest::bounds;
use coilnest::job::report::{MatchReport, Report, VerdictReport, Word};
use coilnest::job::{HeldFrame, Job, assess, coil_table, file, level, matching};
use coilnest::measured::{Measured, Tape, measure};
use coilnest::quantity::unit::inch;
use coilnest::quantity::{Length, System};
use coilnest::reading::{Interval, Reading};
use coilnest::verdict::{self, Limits, judge_measured};
use coilnest_tables::TABLES;
use proptest::prelude::*;
use serde_json::{Value, json};

fn opened(job: &Value) -> Job {
    file::open(&job.to_string()).unwrap()
}

/// One coil in one seat, an eighth either way, with a class II tape in sixteenths.
fn one_coil(book: &str, seat: &Value) -> Value {
    let mut seat = seat.clone();
    seat["coil"] = json!("outer");
    json!({
        "format": "coilnest-job/1",
        "tape": { "graduation": "1/16", "class": "II" },
        "coils": [{
            "id": "outer", "name": "Outer", "free": book, "rate": "1000 lb/in", "solid": "8",
            "limits": { "under": "1/8", "over": "1/8" }
        }],
        "nests": [{ "id": "A left", "seats": [seat] }]
    })
}

fn report(book: &str, seat: &Value) -> Report {
    assess(&opened(&one_coil(book, seat)), &TABLES)
}

fn taped(book: &str, readings: &[&str]) -> (Report, VerdictReport) {
    let report = report(book, &json!({ "readings": readings }));
    let verdict = report.nests[0].seats[0].verdict.clone().unwrap();
    (report, verdict)
}

/// The text of the notes of a code, with their paths.
fn notes<'r>(report: &'r Report, code: &str) -> Vec<(&'r str, &'r str)> {
    let notes = report.notes.iter().filter(|note| note.code == code);
    notes.map(|note| (note.path.as_str(), note.text.as_str())).collect()
}

#[test]
fn repeating_a_reading_makes_it_no_surer_than_its_mark() {
    let (_, one) = taped("13 31/32", &["13 7/8"]);
    let (_, four) = taped("13 31/32", &["13 7/8"; 4]);
    assert_eq!((one.word, four.word), (Word::TooClose, Word::TooClose));
    // 1/32 in above the limit; u² = (1/32)²/3 + (0.7 mm)²/3 + (1/16)²/3/4.
    let u = ((1.0_f64 / 32.0).powi(2) + (0.7_f64 / 25.4).powi(2) + 1.0 / 1024.0).sqrt()
        / 3.0_f64.sqrt();
    let expected = verdict::normal(1.0 / 32.0 / u) - verdict::normal(-7.0 / 32.0 / u);
    assert!(abs_diff_eq!(four.p_in.unwrap(), expected, epsilon = 1e-9), "{four:?}");
    assert!(four.p_in.unwrap() < 0.86, "{four:?}");
}

#[test]
fn one_place_is_worth_one_place() {
    let (_, one) = taped("13 15/16", &["13 15/16"]);
    assert_eq!((&*one.title, one.places), ("Good", 1));
    assert!(one.sentence.contains("One place only: turn the coil and read again."), "{one:?}");
    // 2.88 standard uncertainties on either side.
    assert!(abs_diff_eq!(one.p_in.unwrap(), 0.996, epsilon = 5e-4), "{one:?}");
    let (_, two) = taped("13 15/16", &["13 15/16", "13 7/8 full"]);
    assert_eq!(two.places, 2);
    assert!(!two.sentence.contains("One place only"), "{two:?}");
}

/// 8 in less 1/8 in is 7 7/8 in, whatever the floats make of it.
#[test]
fn on_the_limit_no_tape_settles_it() {
    for book in (1..=64 * 12).map(|parts| 512 + parts) {
        let reading = |parts: u32| format!("{} {}/64", parts / 64, parts % 64);
        for read in [book - 8, book + 8] {
            let (_, verdict) = taped(&reading(book), &[&reading(read)]);
            assert_eq!((verdict.word, verdict.would_settle.as_ref()), (Word::TooClose, None));
            assert!(
                verdict.sentence.contains("It stands on the limit: no tape settles it."),
                "{verdict:?}"
            );
        }
    }
}

#[test]
fn a_slip_is_named_at_its_reading_and_no_verdict_leans_on_it() {
    for (slip, likely) in [("13 1/2", "15 1/2 in"), ("51 3/16", "15 3/16 in")] {
        let (report, verdict) = taped("15 1/4", &["15 3/16", slip]);
        let found = notes(&report, "reading-questioned");
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(found[0].0, "nests[0].seats[0].readings[1]");
        assert!(found[0].1.starts_with(slip) && found[0].1.contains(likely), "{found:?}");
        assert_eq!((verdict.word, &*verdict.title), (Word::TooClose, "Read again"));
        assert!(verdict.sentence.contains("from one of two readings"), "{verdict:?}");
        assert_eq!(report.nests[0].not_good, ["Outer: to be read again"]);
        // The mean is that of the other reading, and nothing but it.
        let free = report.nests[0].seats[0].free.as_ref().unwrap();
        assert!(abs_diff_eq!(free.si / 0.0254, 15.1875, epsilon = 1e-9), "{free:?}");
        // Read again and confirmed, it counts, and the coil does not look good.
        let confirmed = json!({ "readings": ["15 3/16", slip], "confirmed": slip });
        let report = self::report("15 1/4", &confirmed);
        assert_eq!(notes(&report, "reading-questioned"), []);
        assert_ne!(report.nests[0].seats[0].verdict.as_ref().unwrap().word, Word::Good);
    }
}

/// A lone reading has only the book to agree with, two that agree have each other.
#[test]
fn a_coil_that_is_far_off_at_two_places_is_far_off() {
    let (report, verdict) = taped("15 1/4", &["14 1/4"]);
    assert_eq!((&*verdict.title, verdict.p_in), ("Read again", None));
    assert_eq!(notes(&report, "reading-questioned").len(), 1);
    let confirmed = json!({ "readings": ["14 1/4"], "confirmed": "14 1/4" });
    let report = self::report("15 1/4", &confirmed);
    assert_eq!(report.nests[0].seats[0].verdict.as_ref().unwrap().word, Word::Short);
    let (report, verdict) = taped("15 1/4", &["14 1/4", "14 5/16"]);
    assert_eq!((verdict.word, notes(&report, "reading-questioned")), (Word::Short, vec![]));
}

/// A slip in millimetres: a centimetre, and two digits that changed places.
#[test]
fn a_slip_in_millimetres_is_named() {
    for (slip, likely) in [("363", "353 mm"), ("533", "353 mm")] {
        let job = json!({
            "format": "coilnest-job/1", "system": "metric",
            "tape": { "graduation": "1", "class": "II" },
            "coils": [{ "id": "a", "free": "354", "limits": { "under": "3", "over": "3" } }],
            "nests": [{ "id": "A", "seats": [{ "coil": "a", "readings": ["353", slip, "353"] }] }]
        });
        let report = assess(&opened(&job), &TABLES);
        let found = notes(&report, "reading-questioned");
        assert!(found.len() == 1 && found[0].1.contains(likely), "{found:?}");
        assert_eq!(found[0].0, "nests[0].seats[0].readings[1]");
    }
}

#[test]
fn an_unreadable_reading_leaves_no_plain_good() {
    let (report, verdict) = taped("13 15/16", &["13 15/16", "13 17/16"]);
    assert_eq!(report.problems.len(), 1);
    assert_eq!((verdict.word, &*verdict.title), (Word::TooClose, "Read again"));
    assert!(verdict.sentence.contains("from one of two readings"), "{verdict:?}");
    // What is short by what can be read stays short.
    let (_, verdict) = taped("13 15/16", &["13 5/8", "13 5/8", "13 17/16"]);
    assert_eq!(verdict.word, Word::Short);
    assert!(verdict.sentence.contains("from two of three readings"), "{verdict:?}");
}

#[test]
fn rock_and_tilt_get_a_word() {
    let (_, rocks) = taped("13 7/8", &["13 3/4", "14", "13 3/4", "14"]);
    assert!(
        rocks.sentence.contains("It rocks: places 1 and 3 stand 1/4 in under places 2 and 4."),
        "{rocks:?}"
    );
    let (_, tilts) = taped("13 7/8", &["13 3/4", "13 7/8", "14", "13 7/8"]);
    assert!(
        tilts.sentence.contains("Its ends are out of square: places 1 and 3 differ by 1/4 in."),
        "{tilts:?}"
    );
    assert!(!tilts.sentence.contains("rocks"), "{tilts:?}");
    let (_, steady) = taped("13 7/8", &["13 13/16", "13 7/8", "13 15/16", "13 7/8"]);
    assert!(!steady.sentence.contains("rocks") && !steady.sentence.contains("square"));
}

#[test]
fn a_label_on_two_coils_is_noted_at_both() {
    let mut job = one_coil("13 15/16", &json!({ "label": "7", "readings": ["13 15/16"] }));
    job["bench"] = json!([
        { "label": "7", "coil": "outer", "readings": ["13 15/16"] },
        { "label": "8", "coil": "outer", "readings": ["13 15/16"] }
    ]);
    let report = assess(&opened(&job), &TABLES);
    let at: Vec<&str> = notes(&report, "label-twice").iter().map(|(path, _)| *path).collect();
    assert_eq!(at, ["nests[0].seats[0].label", "bench[0].label"]);
}

/// The steps of a shop, each where it is the first that would settle it.
#[test]
fn what_would_settle_it_is_a_step_of_the_shop() {
    let one = &["13 7/8"][..];
    for (book, readings, says) in [
        ("13.91", one, "The same reading at the place opposite would settle it."),
        ("13.92", one, "The same at four places round the coil would settle it."),
        ("13.92", &["13 7/8"; 2], "The same at four places round the coil would settle it."),
        (
            "13 15/16",
            one,
            "The same at four places round the coil, with a rule in thirty-seconds, would settle it.",
        ),
        (
            "13 15/16",
            &["13 7/8"; 4],
            "It depends on where between two marks the end lies. The same readings, with a rule in thirty-seconds, would settle it.",
        ),
        (
            "13.945",
            &["13 7/8"; 4],
            "The same readings, with a rule in sixty-fourths, would settle it.",
        ),
        (
            "13 61/64",
            one,
            "with a rule in sixty-fourths and a better tape (EU class I), would settle it.",
        ),
        ("13.965", one, "A height gauge on a flat plate, at four places, would settle it."),
        (
            "13.992",
            one,
            "It is so near the limit that neither a tape nor a height gauge settles it",
        ),
    ] {
        let (_, verdict) = taped(book, readings);
        assert_eq!(verdict.word, Word::TooClose, "{verdict:?}");
        assert!(verdict.sentence.contains(says), "{book} {readings:?}: {}", verdict.sentence);
        let said = verdict.sentence.replace("under 0.1", "");
        assert!(!said.contains("0."), "{}", verdict.sentence);
    }
}

/// A frame on three nests, each with one measured coil and one more on the bench.
fn truck(seats: [Value; 3], bench: &Value) -> Value {
    let mut job = one_coil("13 15/16", &json!({}));
    let names = ["A left", "A right", "B"];
    let nest = |(name, seat): (&&str, Value)| {
        let mut seat = seat;
        seat["coil"] = json!("outer");
        json!({ "id": name, "working_height": "12", "seats": [seat] })
    };
    job["nests"] = names.iter().zip(seats).map(nest).collect();
    job["bench"] = bench.clone();
    let place = |nest, along, across| json!({ "nest": nest, "along": along, "across": across });
    job["frame"] = json!({
        "weight": "5000 lb", "shim_stock": ["1/8"], "largest_stack": "1/2",
        "supports": [place("A left", "36", "28"), place("A right", "36", "-28"), place("B", "-36", "0")]
    });
    job
}

const GOOD: &str = "13 15/16";

fn sound(label: &str) -> Value {
    json!({ "label": label, "readings": [GOOD, GOOD] })
}

/// Whatever its readings say, in the seat, under the frame, with shims, in a dip and among those matched.
#[test]
fn what_is_not_sound_is_scrap_everywhere() {
    for flaw in ["cracked", "broken", "Pitted", "bent at the end"] {
        let mut second = sound("8");
        second["condition"] = json!(flaw);
        let bench = json!([{ "label": "9", "coil": "outer", "readings": [GOOD], "condition": flaw },
            { "label": "10", "coil": "outer", "readings": [GOOD, GOOD] }]);
        let job = opened(&truck([sound("7"), second, sound("6")], &bench));
        let report = assess(&job, &TABLES);
        let verdict = report.nests[1].seats[0].verdict.as_ref().unwrap();
        assert_eq!((verdict.word, &*verdict.title), (Word::Scrap, "Scrap"));
        assert_eq!(verdict.p_in, None);
        let names = format!("8 (Outer): scrap, {flaw}");
        assert_eq!(report.nests[1].not_good, [names.as_str()]);
        assert_eq!(report.nests[0].not_good, Vec::<String>::new());
        let under = [format!("A right, {names}")];
        assert_eq!(report.frame.as_ref().unwrap().not_good, under);
        let levelled = level(&job, &TABLES);
        assert_eq!(levelled.shims.unwrap().not_good, under);
        let dip = HeldFrame::of(&job, &TABLES).dip("A right", "1/2", "");
        assert_eq!((dip.problem, dip.not_good), (None, under.to_vec()));
        let matched = matching(&job, &TABLES);
        assert_eq!(matched.set_aside, [names, format!("9 (Outer): scrap, {flaw}")]);
        assert_eq!(matched.problems, []);
        assert!(matched.moves.iter().any(|said| said.contains("10 (Outer) from the bench")));
        assert_eq!((report.tally.good, report.tally.scrap), (2, 1));
    }
    for word in ["", "sound", "Sound"] {
        let seat = json!({ "readings": [GOOD, GOOD], "condition": word });
        let verdict = report(GOOD, &seat).nests[0].seats[0].verdict.clone().unwrap();
        assert_eq!(verdict.word, Word::Good);
    }
    // Before it is measured, too.
    let report = report(GOOD, &json!({ "condition": "cracked" }));
    assert_eq!(report.nests[0].seats[0].verdict.as_ref().unwrap().word, Word::Scrap);
}

/// Each word that is not good, where the load of its seat is used.
#[test]
fn a_coil_that_is_not_good_is_named_where_its_load_is_used() {
    for (readings, why) in [
        (&["13 5/8", "13 5/8"][..], "short"),
        (&["14 1/4", "14 1/4"], "long"),
        (&["13 13/16"], "too close to call"),
        (&["13 15/16", "12 15/16"], "to be read again"),
    ] {
        let second = json!({ "label": "8", "readings": readings });
        let job = opened(&truck([sound("7"), second, sound("6")], &json!([])));
        let report = assess(&job, &TABLES);
        assert_eq!(report.nests[1].not_good, [format!("8 (Outer): {why}")]);
        let under = [format!("A right, 8 (Outer): {why}")];
        assert_eq!(report.frame.unwrap().not_good, under);
        assert_eq!(level(&job, &TABLES).shims.unwrap().not_good, under);
        let dip = HeldFrame::of(&job, &TABLES).dip("A right", "1/2", "");
        assert_eq!(dip.not_good, under);
    }
}

/// One that is too close to call stays out of every seat until the job says otherwise.
#[test]
fn matching_asks_before_it_uses_one_that_is_too_close() {
    let close = json!({ "label": "8", "readings": ["13 13/16"] });
    let mut job = truck([sound("7"), close, sound("6")], &json!([]));
    let matched = |job: &Value| -> MatchReport { matching(&opened(job), &TABLES) };
    let asks = matched(&job);
    assert_eq!(asks.set_aside, ["8 (Outer): too close to call"]);
    assert_eq!(asks.problems[0].code, "coils-lacking");
    let note = asks.notes.iter().find(|note| note.code == "too-close-left-out").unwrap();
    assert!(note.text.contains("8 (Outer)"), "{note:?}");
    job["use_too_close"] = json!("yes");
    let uses = matched(&job);
    assert_eq!((uses.set_aside, uses.problems), (vec![], vec![]));
    assert_eq!(uses.not_good.len(), 1, "{:?}", uses.not_good);
    assert!(uses.not_good[0].ends_with("8 (Outer): too close to call"));
    assert!(uses.notes.iter().all(|note| note.code != "too-close-left-out"));
}

#[test]
fn a_table_of_coils_has_a_column_for_their_condition() {
    let mut job = one_coil(GOOD, &json!({}));
    job["bench"] = json!([
        { "label": "1", "coil": "outer", "readings": [GOOD], "condition": "pitted, badly" },
        { "label": "2", "coil": "outer", "readings": [GOOD] }
    ]);
    let written = coil_table::coil_csv(&opened(&job));
    assert_eq!(
        written,
        "label,role,condition,reading 1\r\n1,outer,\"pitted, badly\",13 15/16\r\n2,outer,,13 15/16\r\n"
    );
    let empty = opened(&one_coil(GOOD, &json!({})));
    let read = coil_table::coil_rows(&empty, &coil_table::Piece::whole(&written));
    assert_eq!((read.refused.len(), read.remarks.len()), (0, 0));
    assert_eq!(serde_json::to_value(&read.rows).unwrap(), job["bench"]);
}

/// Of a tape of which nothing is said, the wider of the usual classes; of the ends, a sixteenth.
#[test]
fn what_is_not_said_is_taken_at_its_widest() {
    let doubt = |tape: Value| {
        let mut job = one_coil(GOOD, &json!({ "readings": [GOOD] }));
        job["tape"] = tape;
        let report = assess(&opened(&job), &TABLES);
        report.nests[0].seats[0].free.as_ref().unwrap().doubt_si.unwrap()
    };
    let silent = doubt(json!({}));
    let same = |told: Value| assert_abs_diff_eq!(doubt(told), silent, epsilon = 1e-12);
    same(json!({ "graduation": "1/16", "class": "US", "ends_error": "1/16" }));
    assert!(silent > doubt(json!({ "graduation": "1/16", "class": "II" })));
    assert!(silent > doubt(json!({ "graduation": "1/16", "ends_error": "1/64" })));
}

fn interval(parts: u32, step: u32) -> Interval {
    let text = format!("{} {}/64", parts / 64, parts % 64);
    let graduation = Length::new::<inch>(f64::from(step) / 64.0);
    Reading::parse(&text, System::Inch, &bounds::READING).unwrap().interval(graduation)
}

/// A coil about 14 in high, read in sixty-fourths off its book figure.
#[derive(Clone, Debug)]
struct Case {
    off: Vec<i32>,
    under: f64,
    over: f64,
    step: u32,
    error: f64,
    place: f64,
    level: f64,
}

impl Case {
    fn any() -> impl Strategy<Value = Self> {
        (
            prop::collection::vec(-24..=24_i32, 1..5),
            (0.0..0.5, 0.0..0.5),
            prop::sample::select(vec![1_u32, 2, 4, 8]),
            (0.0..0.08, 0.0..0.1, 0.5..0.999),
        )
            .prop_map(|(off, (under, over), step, (error, place, level))| Self {
                off,
                under,
                over,
                step,
                error,
                place,
                level,
            })
    }

    fn measured(&self) -> Measured {
        let readings: Vec<Interval> = self
            .off
            .iter()
            .map(|off| interval((64 * 14_u32).checked_add_signed(*off).unwrap(), self.step))
            .collect();
        let inches = Length::new::<inch>;
        measure(&readings, Tape { error: inches(self.error), place: inches(self.place) }).unwrap()
    }

    fn is_good(&self) -> bool {
        let measured = self.measured();
        let inches = Length::new::<inch>;
        let limits =
            Limits::new(Some(inches(14.0 - self.under)), Some(inches(14.0 + self.over))).unwrap();
        let verdict = judge_measured(&measured, limits, self.level);
        verdict.word == verdict::Word::Good
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100_000))]

    /// The same readings with a wider tape, ends that are less square, coarser marks, or a verdict that
    /// has to be surer: what was not good does not become so.
    #[test]
    fn widening_what_is_in_doubt_makes_nothing_good(
        case in Case::any(), by in 1.0..3.0, coarser in 1..3_u32, which in 0..4_usize,
    ) {
        let mut wider = case.clone();
        match which {
            0 => wider.error *= by,
            1 => wider.place *= by,
            2 => wider.step *= coarser,
            _ => wider.level += (1.0 - wider.level) * (1.0 - 1.0 / by),
        }
        prop_assert!(case.is_good() || !wider.is_good(), "{case:?}");
        prop_assert!(wider.measured().doubt() >= case.measured().doubt() * (1.0 - 1e-12));
    }

    /// Places that read one mark: with one of them left out, what was not good does not become so.
    #[test]
    fn dropping_a_place_makes_nothing_good(case in Case::any(), places in 2..6_usize) {
        let more = Case { off: vec![case.off[0]; places], ..case };
        let fewer = Case { off: more.off[1..].to_vec(), ..more.clone() };
        prop_assert!(more.is_good() || !fewer.is_good(), "{more:?}");
        prop_assert!(fewer.measured().doubt() >= more.measured().doubt() * (1.0 - 1e-12));
    }

    /// Places that differ by no more than their ends explain: with one left out, the doubt is no less.
    #[test]
    fn dropping_a_place_that_agrees_leaves_no_less_doubt(
        case in Case::any(), second in -24..=24_i32, dropped in 0..4_usize,
    ) {
        // Sixty-fourths: of two readings so far apart s² is q²/3, of more it is less.
        #[expect(clippy::cast_possible_truncation, reason = "a few sixty-fourths")]
        let explained = (case.place * 64.0 * (2.0_f64 / 3.0).sqrt() / 2.0) as i32;
        let first = case.off[0];
        let agreeing = case.off.iter().chain([&second]).map(|off| {
            first + (off - first).clamp(-explained, explained)
        });
        let more = Case { off: agreeing.collect(), ..case };
        let mut fewer = more.clone();
        fewer.off.remove(dropped % more.off.len());
        prop_assert!(fewer.measured().doubt() >= more.measured().doubt() * (1.0 - 1e-12), "{more:?}");
    }

    /// One reading, written down again and again, is never surer than it is alone where its ends are
    /// perfect: neither mark nor tape is averaged away.
    #[test]
    fn repeating_a_reading_is_never_surer_than_its_mark_and_tape(case in Case::any(), times in 2..50_usize) {
        let alone = Case { off: vec![case.off[0]], place: 0.0, ..case.clone() };
        let repeated = Case { off: vec![case.off[0]; times], ..case };
        prop_assert!(alone.is_good() || !repeated.is_good(), "{repeated:?}");
        prop_assert!(repeated.measured().doubt() >= alone.measured().doubt() * (1.0 - 1e-12));
    }
}

/// What of a job is left out, or spoilt.
#[derive(Clone, Copy, Debug)]
enum Less {
    Class,
    Ends,
    Graduation,
    AReading,
    Spoilt(&'static str),
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(20_000))]

    /// Whole jobs: a coil that is not good does not become so when its job says less, a reading cannot be
    /// read, or the coil turns out to be cracked.
    #[test]
    fn a_job_that_says_less_makes_nothing_good(
        off in -20..=20_i32,
        places in 1..5_usize,
        class in prop::sample::select(vec!["I", "II", "US"]),
        ends in prop::sample::select(vec!["0", "1/64", "1/32", "1/16"]),
        graduation in prop::sample::select(vec!["1/64", "1/32", "1/16"]),
        less in prop::sample::select(vec![
            Less::Class, Less::Ends, Less::Graduation, Less::AReading, Less::Spoilt("13 17/16"),
            Less::Spoilt("cracked"),
        ]),
    ) {
        let parts = (64 * 14_u32).checked_add_signed(off).unwrap();
        let reading = format!("{} {}/64", parts / 64, parts % 64);
        let mut job = one_coil("14", &json!({ "readings": vec![reading; places] }));
        job["tape"] = json!({ "graduation": graduation, "class": class, "ends_error": ends });
        let title = |job: &Value| {
            let report = assess(&opened(job), &TABLES);
            report.nests[0].seats[0].verdict.as_ref().map(|verdict| verdict.title.clone())
        };
        let before = title(&job);
        let seat = |job: &mut Value, field: &str, value: Value| job["nests"][0]["seats"][0][field] = value;
        match less {
            Less::Class => job["tape"]["class"] = json!(""),
            Less::Ends => job["tape"]["ends_error"] = json!(""),
            Less::Graduation => job["tape"]["graduation"] = json!(""),
            Less::AReading => {
                let fewer: Vec<_> = job["nests"][0]["seats"][0]["readings"].as_array().unwrap()[1..].to_vec();
                seat(&mut job, "readings", json!(fewer));
            }
            Less::Spoilt("cracked") => seat(&mut job, "condition", json!("cracked")),
            Less::Spoilt(text) => job["nests"][0]["seats"][0]["readings"][0] = json!(text),
        }
        let after = title(&job);
        let (before, after) = (before.as_deref(), after.as_deref());
        prop_assert!(before == Some("Good") || after != Some("Good"), "{before:?} {after:?}");
        if let Less::Spoilt(_) = less {
            prop_assert_ne!(after, Some("Good"));
        }
    }
}

//! Tables of coils: every slip is told at its line and column, every other line is kept, and how the
//! text comes in pieces makes no difference.

use coilnest::job::coil_table::{
    LONGEST_LINE, MOST_COILS, MOST_READINGS, Piece, coil_csv, coil_rows,
};
use coilnest::job::input::BenchCoil;
use coilnest::job::report::{CoilRows, Problem};
use coilnest::job::{Entry, Job, List, Text, file};
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::time::{Duration, Instant};

fn job(system: &str) -> Job {
    let text = r#"{ "format": "coilnest-job/1", "system": "SYSTEM", "coils": [
        { "id": "outer", "name": "Outer coil" },
        { "id": "inner", "name": "Inner, right-hand" },
        { "id": "Inner", "name": "Small \"dark\" one" }
    ], "bench": [{ "label": "40", "coil": "outer", "readings": ["13 7/8"] }] }"#;
    file::open(&text.replace("SYSTEM", system)).unwrap()
}

fn whole(job: &Job, text: &str) -> CoilRows {
    coil_rows(job, &Piece::whole(text))
}

/// A row as label, coil and readings.
fn row(coil: &BenchCoil) -> Vec<String> {
    let readings = coil.readings.given().into_iter().flat_map(|readings| &readings.0);
    let texts = [&coil.label, &coil.coil].into_iter().chain(readings);
    texts.map(|text| text.given().unwrap().0.clone()).collect()
}

fn rows(read: &CoilRows) -> Vec<Vec<String>> {
    read.rows.iter().map(row).collect()
}

fn problems(read: &CoilRows) -> Vec<&Problem> {
    read.refused.iter().flat_map(|line| &line.problems).collect()
}

fn coil(label: &str, coil: &str, readings: &[&str]) -> BenchCoil {
    let readings = List(readings.iter().map(|text| Entry::from(*text)).collect());
    BenchCoil {
        label: label.into(),
        coil: coil.into(),
        readings: readings.into(),
        ..BenchCoil::default()
    }
}

/// Puts rows on the bench of a job.
fn put(job: &mut Job, rows: Vec<BenchCoil>) {
    let mut bench = job.bench.given().map_or_else(Vec::new, |bench| bench.0.clone());
    bench.extend(rows.into_iter().map(Entry::Given));
    job.bench = Entry::Given(List(bench));
}

/// One line under a first line that names label, role, readings and notes, and what is said of it: path, code,
/// message, expected, example.
const SLIPS: [(&str, [&str; 5]); 22] = [
    (
        "17,outer,13 17/16,,",
        [
            "line 2, column 3",
            "fraction-above-one",
            "13 17/16 — the fraction is more than a whole; did you mean 14 1/16?",
            "a reading between 1/64 in and 120 in",
            "14 1/16",
        ],
    ),
    (
        "17,outer,13 7/8,long",
        [
            "line 2, column 4",
            "no-number",
            "long — there is no number in it",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17,outer,138",
        [
            "line 2, column 3",
            "too-large",
            "138 — a reading is at most 120 in",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17,outer,\"13,875\"",
        [
            "line 2, column 3",
            "comma-ambiguous",
            "13,875 — the comma can be read two ways; write 13.875",
            "a reading between 1/64 in and 120 in",
            "13.875",
        ],
    ),
    (
        "17,middle,13 7/8",
        [
            "line 2, column 2",
            "no-such-coil",
            "middle — this job has none of that name",
            "one of outer, inner, Inner",
            "outer",
        ],
    ),
    (
        "17,INNER,13 7/8",
        [
            "line 2, column 2",
            "coil-ambiguous",
            "INNER — more than one coil of the job is called so",
            "one of inner, Inner",
            "inner",
        ],
    ),
    (
        "17,,13 7/8",
        [
            "line 2, column 2",
            "coil-missing",
            "the role can only be left empty where the job has one drawing",
            "one of outer, inner, Inner",
            "outer",
        ],
    ),
    (
        ",outer,13 7/8",
        [
            "line 2, column 1",
            "label-missing",
            "without its label the coil cannot be found again on the bench",
            "the mark painted on the coil",
            "17",
        ],
    ),
    (
        "40,Outer coil,13 7/8",
        [
            "line 2, column 1",
            "label-twice",
            "40 — a coil of this label and role stands further up, or on the bench",
            "a label of its own among the coils of its role",
            "40 b",
        ],
    ),
    (
        "17,outer",
        [
            "line 2",
            "readings-missing",
            "no reading stands on this line",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17,outer,,,rusty",
        [
            "line 2",
            "readings-missing",
            "no reading stands on this line",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17,outer,13 7/8,353,,",
        [
            "line 2, column 4",
            "too-large",
            "353 — a reading is at most 120 in",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17,outer,13 7/8,6",
        [
            "line 2",
            "readings-apart",
            "13 7/8 and 6 — these are not of one coil; between commas a decimal comma needs quotes",
            "readings of one coil, none of them over twice another",
            "\"353,6\"",
        ],
    ),
    (
        "17,outer,13 7/8,,rusty,13 7/8",
        [
            "line 2, column 6",
            "too-many-columns",
            "13 7/8 — no column is named for this",
            "the 5 columns that are named",
            "17,outer,13 7/8",
        ],
    ),
    (
        "17,\"outer,13 7/8",
        [
            "line 2, column 2",
            "bad-quotes",
            "17,\"outer,13 7/8 — the quotes that open in this column are not closed on this line",
            "quotes round a whole field, and doubled within it",
            "\"353,6\"",
        ],
    ),
    (
        "17,outer,\"13 7/8\"\"",
        [
            "line 2, column 3",
            "bad-quotes",
            "17,outer,\"13 7/8\"\" — the quotes that open in this column are not closed on this line",
            "quotes round a whole field, and doubled within it",
            "\"353,6\"",
        ],
    ),
    (
        "\"17\" a,outer,13 7/8",
        [
            "line 2, column 1",
            "bad-quotes",
            "\"17\" a,outer,13 7/8 — something follows the closing quotes in this column",
            "quotes round a whole field, and doubled within it",
            "\"353,6\"",
        ],
    ),
    (
        "17\u{0},outer,13 7/8",
        [
            "line 2, column 1",
            "bad-character",
            "U+0000 — this character cannot be read",
            "letters, figures and signs, in a text saved as UTF-8",
            "17,outer,13 7/8",
        ],
    ),
    (
        "17,outer,13\u{fffd}",
        [
            "line 2, column 3",
            "bad-character",
            "U+FFFD — this character cannot be read",
            "letters, figures and signs, in a text saved as UTF-8",
            "17,outer,13 7/8",
        ],
    ),
    (
        "17,outer,13 7/8,,\u{1b}[0m",
        [
            "line 2, column 5",
            "bad-character",
            "U+001B — this character cannot be read",
            "letters, figures and signs, in a text saved as UTF-8",
            "17,outer,13 7/8",
        ],
    ),
    (
        "17,outer,13 7/",
        [
            "line 2, column 3",
            "unfinished",
            "13 7/ — a number is missing after “/”",
            "a reading between 1/64 in and 120 in",
            "13 7/8",
        ],
    ),
    (
        "17;outer;13 7/8",
        [
            "line 2, column 2",
            "coil-missing",
            "the role can only be left empty where the job has one drawing",
            "one of outer, inner, Inner",
            "outer",
        ],
    ),
];

fn said(problem: &Problem) -> [&str; 5] {
    [&problem.path, &problem.code, &problem.message, &problem.expected, &problem.example]
}

#[test]
fn every_slip_is_told_at_its_place_and_the_other_lines_stand() {
    let job = job("inch");
    for (line, expected) in SLIPS {
        let text = format!("label,role,reading 1,reading 2,notes\n{line}\n18,outer,13 7/8\n");
        let read = whole(&job, &text);
        let found = problems(&read);
        assert_eq!(said(found.first().unwrap_or_else(|| panic!("{line}"))), expected, "{line}");
        assert_eq!((read.refused[0].line, read.refused[0].text.as_str()), (2, line));
        assert_eq!(rows(&read), [["18", "outer", "13 7/8"]], "{line}");
        assert_eq!((read.consumed, read.next_line), (text.encode_utf16().count(), 4));
    }
}

#[test]
fn a_line_has_all_its_problems_at_once() {
    let read = whole(&job("inch"), "label,role,readings\n,middle,13 7/,12 1/3\n40,outer,x");
    let found: Vec<_> = problems(&read).into_iter().map(|p| (p.path.as_str(), &*p.code)).collect();
    assert_eq!(
        found,
        [
            ("line 2, column 1", "label-missing"),
            ("line 2, column 2", "no-such-coil"),
            ("line 2, column 3", "unfinished"),
            ("line 2, column 4", "denominator"),
            ("line 3, column 1", "label-twice"),
            ("line 3, column 3", "no-number"),
        ]
    );
    assert!(read.rows.is_empty());
}

/// What keeps a table from being read on.
#[test]
fn tables_that_stop() {
    let mut full = job("inch");
    let on_bench = |number: usize| coil(&format!("x{number}"), "outer", &["13 7/8"]);
    put(&mut full, (0..MOST_COILS - 2).map(on_bench).collect());
    let text = "17,outer,13\n18,outer,13\n19,outer,13\n";
    let read = whole(&full, text);
    assert_eq!((rows(&read).len(), read.consumed, read.next_line, read.stopped), (1, 12, 2, true));
    let expected = [
        "line 2",
        "bench-full",
        "the bench is full; nothing is read from this line on",
        "at most 20000 coils on a bench",
        "",
    ];
    assert_eq!(said(problems(&read)[0]), expected);
    assert_eq!(read.refused.len(), 1);

    for (text, lacks) in
        [("lable,role,reading 1\n17,outer,13", "label"), ("mark;coil;height\n", "readings")]
    {
        let read = whole(&job("inch"), text);
        let header = text.lines().next().unwrap();
        let message = format!("{header} — no column is named {lacks}, so nothing is read below");
        let expected = [
            "line 1",
            "column-missing",
            &message,
            "columns named label, role and readings",
            "label,role,reading 1,reading 2",
        ];
        assert_eq!(said(problems(&read)[0]), expected);
        assert_eq!((read.consumed, read.next_line, read.stopped, read.rows.len()), (0, 1, true, 0));
    }
}

#[test]
fn bounds_of_a_line() {
    let job = job("metric");
    let readings = |count| vec!["353,6"; count].join(";");
    let line = format!("17;outer;{}", readings(MOST_READINGS));
    assert_eq!(whole(&job, &line).rows.len(), 1);
    let read = whole(&job, &format!("{line};353,6\n18;outer;353,6"));
    let expected = [
        "line 1, column 53",
        "too-many-readings",
        "353,6 — this is reading 51",
        "at most 50 readings of a coil",
        "17,outer,13 7/8",
    ];
    assert_eq!((said(problems(&read)[0]), read.rows.len()), (expected, 1));

    let label = "½".repeat(LONGEST_LINE - 9);
    assert_eq!(whole(&job, &format!("{label};outer;99")).rows.len(), 1);
    let read = whole(&job, &format!("{label};outer;999\n18;outer;353,6"));
    let message = format!("{}… — this line is longer", "½".repeat(40));
    let expected = [
        "line 1",
        "line-too-long",
        &message,
        "a line of at most 4000 characters",
        "17,outer,13 7/8",
    ];
    assert_eq!((said(problems(&read)[0]), read.rows.len()), (expected, 1));
}

#[test]
fn a_title_above_the_table_is_told_and_the_rest_stands() {
    let read = whole(&job("inch"), "Bench of 2 May\n\nNr;Kind;Height\n17;outer;13 7/8\n");
    let found: Vec<_> = problems(&read).into_iter().map(said).collect();
    let rest = [
        "a line that names the columns, or a coil: label, role, readings",
        "label,role,reading 1,reading 2",
    ];
    let message = |line: &str| format!("{line} — this names no columns and is no coil");
    let (first, third) = (message("Bench of 2 May"), message("Nr;Kind;Height"));
    assert_eq!(
        found,
        [
            ["line 1", "header-unknown", &first, rest[0], rest[1]],
            ["line 3", "header-unknown", &third, rest[0], rest[1]],
        ]
    );
    assert_eq!(rows(&read), [["17", "outer", "13 7/8"]]);
    assert_eq!(
        read.remarks,
        ["No line names the columns: they are taken as label, role, readings."]
    );
    assert_eq!(read.header.as_deref(), Some("label;role;readings"));
}

#[test]
fn separators_and_columns() {
    let metric = job("metric");
    for text in [
        "17;outer;353,6;354,2",
        "\u{feff}17;outer;353,6;354,2;;\r\n",
        "17\touter\t353,6\t354,2\r",
        "17,outer,\"353,6\",\"354,2\"\n",
        "\n ;;\nlabel;role;readings\n17;Outer Coil;353,6;354,2",
        "Reading 1 ; notes;MARK;Reading 2;Coil\r\n353,6;rusty; 17 ;354,2;OUTER\r\n",
        "Drawing\tLabel\treading\t\t\nouter\t17\t353,6\t\t354,2",
    ] {
        let read = whole(&metric, text);
        assert_eq!(rows(&read), [["17", "outer", "353,6", "354,2"]], "{text:?} {:?}", read.refused);
        assert!(read.refused.is_empty());
        assert_eq!(read.consumed, text.encode_utf16().count());
    }
    let read =
        whole(&metric, "nr;label;notes;mark;role;readings;;\n1;17;rusty;x;outer;353,6;;;354\n");
    assert_eq!(rows(&read), [["17", "outer", "353,6", "354"]]);
    assert_eq!(
        read.remarks,
        [
            "Column 1, “nr”, is left out: it is none of label, role, condition and readings.",
            "Column 3, “notes”, is left out: it is none of label, role, condition and readings.",
            "Column 4, “mark”, is left out: another stands before it.",
        ]
    );
    let inch_marks = "17,outer,13 7/8\",\"13 15/16\"\"\",1' 1 7/8\"";
    let read = whole(&job("inch"), inch_marks);
    assert_eq!(rows(&read), [["17", "outer", "13 7/8\"", "13 15/16\"", "1' 1 7/8\""]]);
}

/// A metric table that was saved between commas, its decimal commas without quotes.
#[test]
fn a_decimal_comma_between_commas_is_not_taken_for_two_readings() {
    let read = whole(&job("metric"), "label,role,reading\n17,outer,353,6\n18,outer,\"353,6\"\n");
    let codes: Vec<_> = problems(&read).into_iter().map(|problem| &*problem.code).collect();
    assert_eq!((codes, rows(&read).len()), (vec!["readings-apart"], 1));
}

#[test]
fn in_a_job_of_one_drawing_the_role_may_be_left_out() {
    let job = r#"{ "format": "coilnest-job/1", "coils": [{ "id": "outer" }, { "name": "none" }] }"#;
    let job = file::open(job).unwrap();
    let read = whole(&job, "17,,13 7/8\n18,outer,13\n");
    assert_eq!(rows(&read), [["17", "outer", "13 7/8"], ["18", "outer", "13"]]);
    assert_eq!(rows(&whole(&job, "label,reading\n17,13 7/8")), [["17", "outer", "13 7/8"]]);
}

#[test]
fn a_broken_line_in_the_middle_costs_one_line() {
    let job = job("inch");
    let line = |number| match number {
        500 => "500,outer,\"13 7/8\r\n".to_owned(),
        _ => format!("n{number},outer,13 7/8,13 15/16\r\n"),
    };
    let text = "label,role,readings\r\n".to_owned() + &(0..1000).map(line).collect::<String>();
    let read = whole(&job, &text);
    assert_eq!((read.rows.len(), read.refused.len()), (999, 1));
    assert_eq!((read.refused[0].line, read.refused[0].text.as_str()), (502, "500,outer,\"13 7/8"));
}

/// Refused lines below the line that names the columns are a table of their own.
#[test]
fn refused_lines_can_be_mended_and_read_again() {
    let mut job = job("inch");
    for text in
        ["reading 1;label;role\n13 7/;17;outer\n13;18;outer\n", "17;outer;13 7/\n18;outer;13\n"]
    {
        let read = whole(&job, text);
        let refused = read.refused.iter().map(|line| line.text.as_str());
        let again: Vec<&str> = read.header.as_deref().into_iter().chain(refused).collect();
        assert_eq!(again.len(), 2);
        put(&mut job, read.rows);
        let mended = whole(&job, &again.join("\n").replace("13 7/", "13 7/8"));
        assert_eq!(rows(&mended), [["17", "outer", "13 7/8"]], "{:?}", mended.refused);
        job.bench = Entry::Absent;
    }
}

/// The codes in the docs of `problem` that only a table of coils can have.
#[test]
fn every_documented_code_is_met_and_every_met_code_is_documented() {
    let docs = include_str!("../../core/src/job/problem.rs");
    let (_, docs) = docs.split_once("[table of coils]").unwrap();
    let rows = docs.lines().filter_map(|line| line.strip_prefix("//! | `")?.split(" | ").next());
    let letter = |c: char| c.is_ascii_lowercase() || c == '-';
    let documented: BTreeSet<&str> = rows
        .flat_map(|codes| codes.split(move |c| !letter(c)))
        .filter(|code| !code.is_empty())
        .collect();
    let of_readings =
        ["fraction-above-one", "no-number", "too-large", "comma-ambiguous", "unfinished"];
    let elsewhere =
        ["header-unknown", "column-missing", "bench-full", "line-too-long", "too-many-readings"];
    let met: BTreeSet<&str> = SLIPS
        .iter()
        .map(|(_, said)| said[1])
        .filter(|code| !of_readings.contains(code) && *code != "no-such-coil")
        .chain(elsewhere)
        .collect();
    assert_eq!(met, documented);
}

const LINES: usize = 10_000;

#[test]
fn ten_thousand_lines_within_a_second() {
    let line = |number| format!("n{number},Outer coil,13 7/8 scant,13 15/16,13 7/8,13 7/8 full\n");
    let text: String = (0..LINES).map(line).collect();
    let job = job("inch");
    let before = Instant::now();
    let read = whole(&job, &text);
    let took = before.elapsed();
    assert_eq!((read.rows.len(), read.refused.len()), (LINES, 0));
    assert!(took < Duration::from_secs(1), "{took:?}");
}

/// Where a text of so many UTF-16 code units ends in bytes.
fn bytes(text: &str, units: usize) -> usize {
    let mut left = units;
    let fits = |c: &char| {
        let fits = left >= c.len_utf16();
        left -= if fits { c.len_utf16() } else { left };
        fits
    };
    text.chars().take_while(fits).map(char::len_utf8).sum()
}

/// Reads a table as a page does: a slice of so many units at a time, longer where a line does not
/// end in it, and so many lines a call.
fn in_pieces(job: &Job, text: &str, units: usize, most: usize) -> CoilRows {
    let mut job = job.clone();
    let mut all = CoilRows { next_line: 1, ..CoilRows::default() };
    let (mut at, mut size) = (0, units);
    while at < text.len() && !all.stopped {
        let rest = &text[at..];
        let slice = &rest[..bytes(rest, size)];
        let last = slice.len() == rest.len();
        let header = all.header.clone();
        let piece =
            Piece { text: slice, line: all.next_line, header: header.as_deref(), last, most };
        let read = coil_rows(&job, &piece);
        assert!(read.consumed > 0 || read.stopped || !last, "no way on at byte {at} of {text:?}");
        size = if read.consumed == 0 { size * 2 } else { units };
        at += bytes(rest, read.consumed);
        all = CoilRows {
            rows: [all.rows, read.rows.clone()].concat(),
            refused: [all.refused, read.refused].concat(),
            remarks: [all.remarks, read.remarks].concat(),
            consumed: all.consumed + read.consumed,
            ..read
        };
        put(&mut job, read.rows);
    }
    all
}

/// Lines like those of a bench, with slips, and parts of them broken in every way.
fn any_table() -> impl Strategy<Value = String> {
    let field = prop_oneof![
        4 => "1[34]( [1-7]/8)?( (scant|full))?",
        2 => "35[0-9],[0-9]",
        2 => prop::sample::select(vec!["outer", "Outer coil", "inner", "INNER", "", "40", "17", "18"]).prop_map(str::to_owned),
        1 => prop::sample::select(vec!["label", "role", "reading 1", "readings", "notes"]).prop_map(str::to_owned),
        1 => "\"[a-z,;\"\"]{0,4}\"?",
        1 => "[ -~½😀\u{0}]{0,5}",
    ];
    let sign = prop::sample::select(vec![",", ",", ";", "\t"]);
    let end = prop::sample::select(vec!["\n", "\r\n", "\r", "\n\n", "\u{feff}"]);
    let line = (prop::collection::vec(field, 0..6), sign, end)
        .prop_map(|(fields, sign, end)| fields.join(sign) + end);
    let header = prop::sample::select(vec![
        "",
        "label,role,readings\n",
        "\u{feff}Label;Role;Reading 1;notes\r\n",
        "readings\tlabel\r",
        "title\n\nrole,x,mark,reading\n",
        "role,reading\n",
    ]);
    (header, prop::collection::vec(line, 0..12))
        .prop_map(|(header, lines)| header.to_owned() + &lines.concat())
}

fn any_bench() -> impl Strategy<Value = Vec<BenchCoil>> {
    let label = "[!-~½€]([ -~½€]{0,6}[!-~½€])?";
    let role = prop::sample::select(vec!["outer", "inner", "Inner"]);
    let reading = prop_oneof![
        "1[34]( [1-7]/8)?\"?( (scant|full))?",
        "35[0-9],[0-9] mm",
        Just("1' 1 7/8\"".to_owned()),
    ];
    let coil =
        (label, role, prop::collection::vec(reading, 1..6)).prop_map(|(label, role, readings)| {
            let readings: Vec<&str> = readings.iter().map(String::as_str).collect();
            coil(&label, role, &readings)
        });
    prop::collection::vec(coil, 0..12).prop_map(|mut coils| {
        let mut known = BTreeSet::new();
        coils.retain(|coil| known.insert(row(coil)[..2].to_vec()));
        coils
    })
}

/// A cell as other programs read it: an apostrophe stands before what a spreadsheet would work out.
fn as_shown(cell: &str) -> String {
    let mut bare = cell.trim_start_matches('\'').chars();
    let sign = bare.next();
    let number = bare.as_str();
    let is_number = number.starts_with(|c: char| c.is_ascii_digit())
        && !number.contains(|c: char| !c.is_ascii_digit() && !" /.".contains(c));
    let worked_out = match sign {
        Some('=' | '@') => true,
        Some('+' | '-') => !is_number,
        _ => false,
    };
    if worked_out { format!("'{cell}") } else { cell.to_owned() }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn pieces_of_every_size_are_as_one(text in any_table(), units in 1_usize..200, most in 1_usize..9) {
        for system in ["inch", "metric"] {
            let job = job(system);
            let read = whole(&job, &text);
            prop_assert_eq!(&in_pieces(&job, &text, units, most), &read);
            // Nothing is lost: a line is blank, names the columns, or is kept.
            let lines = read.rows.len() + read.refused.len();
            prop_assert!(read.stopped || lines + 1 >= filled(&text), "{read:?}");
        }
    }

    #[test]
    fn nothing_panics(bytes in prop::collection::vec(any::<u8>(), 0..300), text in any::<String>()) {
        for text in [String::from_utf8_lossy(&bytes).into_owned(), text] {
            let read = whole(&job("inch"), &text);
            prop_assert!(read.stopped || read.consumed == text.encode_utf16().count());
            let header = Some(text.as_str());
            let piece = Piece { text: "17,outer,353\n", line: usize::MAX, header, last: false, most: 0 };
            prop_assert_eq!(coil_rows(&job("metric"), &piece).consumed, 13);
        }
    }

    #[test]
    fn a_bench_goes_out_and_comes_back(coils in any_bench()) {
        let mut there = job("inch");
        there.bench = Entry::Absent;
        let mut empty = there.clone();
        put(&mut there, coils.clone());
        let text = coil_csv(&there);
        let read = whole(&empty, &text);
        prop_assert_eq!((&read.rows, &read.refused), (&coils, &vec![]));
        put(&mut empty, read.rows);
        prop_assert_eq!(coil_csv(&empty), text);
    }

    /// Another library's reader and writer of such tables, with every separator and way of quoting.
    #[test]
    fn others_read_and_write_the_same(coils in any_bench(), sign in prop::sample::select(vec![b',', b';', b'\t']), always: bool) {
        let mut job = job("inch");
        job.bench = Entry::Absent;
        put(&mut job, coils.clone());
        let expected: Vec<Vec<String>> = coils.iter().map(row).collect();
        let text = coil_csv(&job);
        let mut reader = csv::ReaderBuilder::new().flexible(true).from_reader(text.as_bytes());
        let theirs: Vec<Vec<String>> = reader
            .records()
            .map(|record| record.unwrap().iter().map(str::to_owned).collect())
            .collect();
        let shown: Vec<Vec<String>> =
            expected.iter().map(|row| row.iter().map(|cell| as_shown(cell)).collect()).collect();
        prop_assert_eq!(&theirs, &shown);

        let quotes = if always { csv::QuoteStyle::Always } else { csv::QuoteStyle::Necessary };
        let mut writer = csv::WriterBuilder::new()
            .delimiter(sign)
            .quote_style(quotes)
            .flexible(true)
            .from_writer(Vec::new());
        writer.write_record(["label", "role", "readings"]).unwrap();
        for row in &expected {
            writer.write_record(row.iter().map(|cell| as_shown(cell))).unwrap();
        }
        let text = String::from_utf8(writer.into_inner().unwrap()).unwrap();
        job.bench = Entry::Absent;
        let read = whole(&job, &text);
        prop_assert!(read.refused.is_empty(), "{:?}", read.refused);
        prop_assert_eq!(rows(&read), expected);
    }
}

/// How many lines of a table hold more than blanks and separators.
fn filled(text: &str) -> usize {
    let nothing = |c: char| c.is_whitespace() || [',', ';', '"', '\u{feff}'].contains(&c);
    text.split(['\r', '\n']).filter(|line| !line.trim_matches(nothing).is_empty()).count()
}

/// What is no text is left out, and so is what is no coil.
#[test]
fn odd_things_on_the_bench_are_written_as_far_as_they_are_text() {
    let job = r#"{ "format": "coilnest-job/1", "bench": [7, {}, { "label": ["x"], "coil": "a;b", "readings": [13.5, null, "\""] }] }"#;
    let text = coil_csv(&file::open(job).unwrap());
    assert_eq!(
        text,
        "label,role,reading 1,reading 2,reading 3\r\n,\r\n,\"a;b\",13.5,,\"\"\"\"\r\n"
    );
    assert_eq!(coil_csv(&Job::default()), "label,role,reading 1\r\n");
    let text = Text("x".into());
    assert_eq!(
        coil_csv(&Job { title: Entry::Given(text), ..Job::default() }),
        coil_csv(&Job::default())
    );
}

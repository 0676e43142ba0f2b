//! What documents say, and what coilnest computes: apart by what each value is worth as a check.

use coilnest_published::{Checks, Known, Rank, Standing, run, run_on};
use serde_json::Value;
use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

/// Every value of a rank agrees, or is known to deviate.
fn agree(rank: Rank) {
    let checks = run();
    assert_eq!(checks.unread, None);
    let count = checks.counts.iter().find(|count| count.rank == rank).unwrap();
    println!("{}: {} values, {} agree", count.name, count.values, count.agree);
    let mut differ = String::new();
    for document in &checks.documents {
        for case in &document.cases {
            assert!(!case.values.is_empty(), "{}: {}", document.title, case.name);
            assert!(!case.given.is_empty(), "{}: {}", document.title, case.name);
            let of_rank = case.values.iter().filter(|value| value.rank == rank);
            for value in of_rank.filter(|value| value.standing == Standing::Differs) {
                let (title, place, name) = (&document.title, &case.place, &case.name);
                writeln!(differ, "{title}, {place}, {name}: {value:#?}").unwrap();
            }
        }
    }
    assert!(differ.is_empty(), "\n{differ}");
}

#[test]
fn printed_and_independent_values_agree() {
    agree(Rank::Independent);
}

#[test]
fn printed_values_that_test_little_agree() {
    agree(Rank::Weak);
}

#[test]
fn values_from_memory_agree() {
    agree(Rank::Recalled);
}

#[test]
fn outputs_of_programs_agree() {
    agree(Rank::Program);
}

#[test]
fn derived_values_agree() {
    agree(Rank::Derived);
}

#[test]
fn the_counts_add_up() {
    let checks = run();
    let values: usize = checks.counts.iter().map(|count| count.values).sum();
    assert_eq!(values, checks.agree + checks.deviate + checks.differ);
    let agree: usize = checks.counts.iter().map(|count| count.agree).sum();
    assert_eq!(agree, checks.agree);
    assert_eq!(checks.counts.len(), Rank::ALL.len());
}

/// What a reader is told is what is counted.
#[test]
fn the_document_of_checks_says_these_counts() {
    let readme = Path::new(env!("CARGO_MANIFEST_DIR")).join("README.md");
    let readme = std::fs::read_to_string(readme).unwrap();
    for count in run().counts {
        let row = format!("| {} | {} | {} |", count.name, count.values, count.documents);
        assert!(readme.contains(&row), "tests/README.md has no row {row:?}");
    }
}

/// No value from memory or of a program's making passes for a printed one.
#[test]
fn a_rank_goes_with_how_a_value_is_known() {
    for (rank, page, quoted, output, memory) in [
        (Rank::Independent, true, true, false, false),
        (Rank::Weak, true, true, false, false),
        (Rank::Recalled, false, false, false, true),
        (Rank::Program, false, false, true, false),
        (Rank::Derived, true, true, false, true),
    ] {
        for (text, fits) in [
            ("page", page),
            ("quoted in a book", quoted),
            ("output of a program", output),
            ("memory", memory),
        ] {
            let known = Known::read(text).unwrap();
            assert_eq!(rank.goes_with(known).is_ok(), fits, "{rank:?}, {text}");
        }
    }
    for text in ["hearsay", "derived", "quoted in ", "output of "] {
        assert!(Known::read(text).is_err(), "{text}");
    }
}

/// As the page tells them apart.
#[test]
fn documents_and_their_cases_have_names_of_their_own() {
    let documents = run().documents;
    let titles: BTreeSet<_> = documents.iter().map(|document| &document.title).collect();
    assert_eq!(titles.len(), documents.len());
    for document in &documents {
        let cases: BTreeSet<_> =
            document.cases.iter().map(|case| (&case.place, &case.name)).collect();
        assert_eq!(cases.len(), document.cases.len(), "{}", document.title);
    }
}

/// What a browser must give as well, a line for each case.
#[test]
fn recomputed_values_are_kept() {
    let mut lines = String::new();
    for document in run().documents {
        for case in document.cases {
            let case = serde_json::to_string(&case).unwrap();
            writeln!(lines, "{}\t{case}", document.title).unwrap();
        }
    }
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("published/recomputed.txt");
    if std::env::var_os("COILNEST_BLESS").is_some() {
        std::fs::write(&path, &lines).unwrap();
    }
    let kept = std::fs::read_to_string(path).unwrap_or_default();
    for (kept, now) in kept.lines().zip(lines.lines()) {
        assert_eq!(kept, now, "run with COILNEST_BLESS=1 if this is as it should be");
    }
    assert_eq!(kept.lines().count(), lines.lines().count(), "cases");
}

/// The comparison itself, on one coil of rate 39.0625 N/mm by hand: 80e9 · 1e-8 / (8 · 5.12e-4 · 5).
fn checks_of(printed: &str) -> Result<Checks, String> {
    let text = format!(
        "title = 'A book'\n[[case]]\nname = 'a coil'\nplace = 'p. 1'\nknown = 'page'\nrank = 'independent'\nweak = ['index']\n\
         given.coil = {{ bar = '10 mm', mean = '80 mm', active-turns = 5.0, shear-modulus = '80 GPa' }}\n\
         [case.printed]\n{printed}"
    );
    checks_in(&text)
}

/// What comes of one document, or why it cannot be read.
fn checks_in(document: &str) -> Result<Checks, String> {
    let document: Value = toml::from_str(document).map_err(|error| error.to_string())?;
    let checks = run_on(&Value::Array(vec![document]));
    checks.unread.clone().map_or(Ok(checks), Err)
}

#[test]
fn a_digit_too_far_fails() {
    for (printed, agrees) in [
        ("rate = '39.1 N/mm'", true),
        ("rate = '39.0 N/mm'", false),
        ("rate = '39.06 N/mm'", true),
        ("rate = '39.07 N/mm'", false),
        ("rate = { text = '39.0 N/mm', within = '0.2 %', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '0.1 %', because = 'a reason' }", false),
        ("rate = { text = '39.0 N/mm', within = '0.1 N/mm', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '1 last digits', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '0.2 %', because = ' ' }", false),
        ("rate = { text = '39.1 N/mm', because = 'nothing to note' }", false),
        ("solid = '60 mm'", false),
        ("loads = ['1 N']", false),
        ("loads = []", false),
    ] {
        let checks = checks_of(printed).unwrap();
        let counts = (checks.agree, checks.deviate, checks.differ);
        let expected = if agrees { (1, 0, 0) } else { (0, 0, 1) };
        assert_eq!(counts, expected, "{printed}: {checks:?}");
    }
}

#[test]
fn a_known_deviation_is_counted_and_fails_once_it_agrees() {
    let still =
        "index = '8'\nrate = { text = '38.0 N/mm', deviates = true, because = 'a misprint' }";
    let checks = checks_of(still).unwrap();
    assert_eq!((checks.agree, checks.deviate, checks.differ), (1, 1, 0), "{checks:?}");
    let deviating = checks.documents[0].values().last().unwrap();
    assert_eq!(deviating.because.as_deref(), Some("a misprint"));
    let checks = checks_of(&still.replace("38.0", "39.1")).unwrap();
    assert_eq!((checks.agree, checks.deviate, checks.differ), (1, 0, 1), "{checks:?}");
    let agreeing = checks.documents[0].values().last().unwrap();
    assert_eq!(agreeing.failure.as_deref(), Some("agrees now, and was listed as deviating"));
}

#[test]
fn a_weak_value_of_an_independent_case_is_counted_as_weak() {
    let checks = checks_of("index = '8'\nrate = '39.1 N/mm'").unwrap();
    let counts: Vec<_> =
        checks.counts.iter().map(|count| (count.rank, count.values, count.documents)).collect();
    assert_eq!(counts, [(Rank::Independent, 1, 1), (Rank::Weak, 1, 1)]);
}

#[test]
fn ours_is_written_like_the_print() {
    let checks =
        checks_of("rate = { text = '38.9 N/mm', within = '0.5 %', because = 'a reason' }").unwrap();
    let value = checks.documents[0].values().next().unwrap();
    let texts = [&value.ours, &value.difference, &value.tolerance].map(|text| text.as_deref());
    assert_eq!(texts, [Some("39.1 N/mm"), Some("0.16 N/mm"), Some("0.5 %")]);
    assert!(value.unrounded.as_deref().unwrap().starts_with("39.062"));
    assert_eq!((value.name.as_str(), value.printed.as_str()), ("rate", "38.9 N/mm"));
}

#[test]
fn a_case_says_its_rank_how_it_is_known_and_in_which_unit() {
    assert!(checks_of("rate = '39.1 furlongs'").is_err());
    assert!(checks_of("colour = '39.1 N/mm'").is_err());
    let text = "title = 'A book'\n[[case]]\nname = 'a'\nplace = 'p. 1'\nknown = 'hearsay'\nrank = 'weak'\n\
                given.unit = { one = 'inch' }\nprinted = { in-si = '0.0254 m' }";
    let page = text.replace("hearsay", "page");
    assert_eq!(checks_in(&page).map(|checks| checks.agree), Ok(1));
    for (written, instead, sentence) in [
        ("'page'", "'hearsay'", "known = \"hearsay\""),
        ("known = 'page'\n", "", "known is not given"),
        ("place = 'p. 1'\n", "", "place is not given"),
        ("rank = 'weak'\n", "", "rank is not given"),
        ("'weak'", "'good'", "rank = \"good\""),
        ("given.unit", "given.colour", "no subject \"colour\""),
        ("one = 'inch'", "one = 'inch', two = 'inches'", "two is no field here"),
    ] {
        let unread = checks_in(&page.replace(written, instead)).unwrap_err();
        assert!(unread.starts_with(&format!("A book: {sentence}")), "{unread}");
    }
    for (written, instead) in [("inch", "ell"), ("one = 'inch'", "")] {
        assert_eq!(checks_in(&page.replace(written, instead)).map(|checks| checks.differ), Ok(1));
    }
}

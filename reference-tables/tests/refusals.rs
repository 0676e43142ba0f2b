//! The build refuses a row that lacks something, and says which row of which file.

#[path = "../build/constants.rs"]
mod constants;
#[path = "../build/rows.rs"]
mod rows;

use rows::{Row, Sources};

const STEEL: &str = r#"[[steel]]
id = "a"
default = true
name = "A steel"
source = "book"
place = "p. 1"
known = "page"
shear-modulus = "78.5 GPa"
youngs-modulus = "206 GPa"
"#;

const TAPE: &str = r#"[[tape]]
id = "b"
name = "A tape"
source = "book"
place = "p. 2"
known = "quoted in another book"
fixed = "0.3 mm"
per-metre = "0.2 mm"
end = "0.2 mm"
"#;

const STEPS: &str = r#"[[tape]]
id = "c"
name = "Another tape"
source = "book"
place = "p. 3"
known = "memory"
steps = [{ up-to = "6 ft", error = "1/32 in" }, { up-to = "30 ft", error = "1/16 in" }]
"#;

fn read(text: &str) -> Result<Vec<Row>, String> {
    rows::rows("x/book.toml", text, &Sources::from([("book".into(), "A book, 1st ed.".into())]))
}

fn refusal(text: &str) -> String {
    match read(text) {
        Ok(rows) => format!("accepted: {rows:?}"),
        Err(sentence) => sentence,
    }
}

#[test]
fn whole_rows_are_accepted() {
    let rows = read(&[STEEL, TAPE, STEPS].concat()).unwrap();
    assert_eq!(rows.len(), 3);
    let text = constants::constants(&rows[..1], &rows[1..]);
    for part in [
        r#"Row { id: "a", file: "x/book.toml" }"#,
        r"pressure(7.85e1 * si::GIGAPASCAL)",
        r#"Source::new("A book, 1st ed.", "p. 2", Known::QuotedIn("another book"))"#,
        r"(length(6e0 * si::FOOT), length(3.125e-2 * si::INCH))",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
}

#[test]
fn a_row_without_any_one_of_its_fields_is_refused_by_file_and_row() {
    for row in [STEEL, TAPE, STEPS] {
        let lines: Vec<&str> = row.lines().collect();
        let fields =
            lines.iter().enumerate().skip(1).filter(|(_, line)| !line.starts_with("default"));
        for (left_out, line) in fields {
            let rest = lines.iter().enumerate().filter(|(index, _)| *index != left_out);
            let rest: Vec<&str> = rest.map(|(_, line)| *line).collect();
            let id = lines[1].split('"').nth(1).filter(|_| left_out != 1).unwrap_or("no id");
            let field = line.split(' ').next().unwrap();
            // A tape without steps wants the errors of the other kind.
            let field = if field == "steps" { "fixed" } else { field };
            assert_eq!(refusal(&rest.join("\n")), format!("x/book.toml, row 1 ({id}): no {field}"));
        }
    }
}

#[test]
fn a_value_says_what_is_wrong_with_it() {
    for (from, to, part) in [
        (
            "78.5 GPa",
            "78.5",
            "shear-modulus = \"78.5\": no unit; a number and one of GPa, N/mm², psi was expected",
        ),
        ("78.5 GPa", "78.5 mm", "not a unit of this value"),
        ("78.5 GPa", "many GPa", "not a number above zero"),
        ("78.5 GPa", "-1 GPa", "not a number above zero"),
        ("78.5 GPa", "inf GPa", "not a number above zero"),
        ("\"page\"", "\"somewhere\"", "known = \"somewhere\""),
        ("\"page\"", "\"quoted in \"", "known = \"quoted in \""),
        ("\"p. 1\"", "\" \"", "no place"),
        ("\"book\"", "\"leaflet\"", "source \"leaflet\" is not in sources.toml"),
        ("id = \"a\"", "id = \"a\"\ncolour = \"red\"", "unknown field `colour`"),
        ("id = \"a\"", "id = \"a\"\nfixed = \"1 mm\"", "a steel with the errors of a tape"),
        ("[[steel]]", "", "unknown field"),
    ] {
        let sentence = refusal(&STEEL.replacen(from, to, 1));
        assert!(sentence.starts_with("x/book.toml") && sentence.contains(part), "{sentence}");
    }
    for (from, to, part) in [
        ("\"6 ft\"", "\"31 ft\"", "steps that do not rise"),
        ("\"6 ft\"", "\"6\"", "up-to = \"6\": no unit"),
        (", error = \"1/32 in\"", "", "no error"),
        ("\"1/32 in\"", "\"1/0 in\"", "not a number above zero"),
        ("id =", "fixed = \"1 mm\"\nid =", "steps and an error per metre"),
        ("id =", "density = \"1 kg/m³\"\nid =", "a tape with the moduli of a steel"),
    ] {
        let sentence = refusal(&STEPS.replacen(from, to, 1));
        assert!(
            sentence.starts_with("x/book.toml, row 1 (c)") && sentence.contains(part),
            "{sentence}"
        );
    }
    assert_eq!(refusal("# nothing"), "x/book.toml: no row");
}

#[test]
fn one_default_and_no_id_twice() {
    let other = STEEL.replace("id = \"a\"", "id = \"z\"");
    let plain = other.replace("default = true\n", "");
    let order = |text: String| rows::ordered(read(&text)?);
    let ids = |rows: Vec<Row>| rows.into_iter().map(|row| row.id).collect::<Vec<_>>();
    assert_eq!(order([&plain, STEEL].concat()).map(ids), Ok(vec!["a".to_owned(), "z".to_owned()]));
    let refused = |text: String| order(text).map(ids).unwrap_err();
    assert_eq!(
        refused([&other, STEEL].concat()),
        "2 default rows, one was expected, in x/book.toml, x/book.toml"
    );
    assert_eq!(refused(plain), "0 default rows, one was expected, in x/book.toml");
    assert_eq!(refused([STEEL, STEEL].concat()), "x/book.toml: \"a\" stands in x/book.toml too");
}

#[test]
fn a_source_needs_its_title_and_publisher() {
    let whole = "[[source]]\nid = \"b\"\ncite = \"B\"\ntitle = \"Book\"\npublisher = \"P\"\n";
    assert_eq!(rows::sources(whole).map(|all| all.len()), Ok(1));
    for field in ["id", "cite", "title", "publisher"] {
        let rest: Vec<&str> = whole.lines().filter(|line| !line.starts_with(field)).collect();
        let sentence = rows::sources(&rest.join("\n")).unwrap_err();
        assert!(sentence.contains(&format!("missing field `{field}`")), "{sentence}");
    }
    assert!(rows::sources(&whole.repeat(2)).unwrap_err().contains("\"b\" stands there twice"));
}

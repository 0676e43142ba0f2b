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
density = "r"
strengths = []
"#;

const DENSITY: &str = r#"[[density]]
id = "r"
name = "Iron"
source = "book"
place = "p. 8"
known = "memory"
density = "0.284 lb/in³"
"#;

const STRENGTH: &str = r#"[[strength]]
id = "s-1"
name = "a wire"
look-up = "another book"
source = "book"
place = "p. 4"
known = "derived"
allowable = "h"
sizes = [
    { from = "1 mm", to = "3 mm", coefficient = "2000 MPa", unit = "1 mm", exponent = "0.2" },
    { from = "3 mm", to = "9 mm", coefficient = "1980 N/mm²", unit = "1 mm", fall = "740 N/mm²" },
]
"#;

const SHARES: &str = r#"[[allowable]]
id = "h"
name = "Wire of all kinds"
source = "book"
place = "p. 5"
known = "page"
as-wound = "45 %"
as-wound-against = "curvature"
"#;

const TAPE: &str = r#"[[tape]]
id = "b"
name = "A tape"
usual = ["metric"]
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
usual = []
source = "book"
place = "p. 3"
known = "memory"
steps = [{ up-to = "6 ft", error = "1/32 in" }, { up-to = "30 ft", error = "1/16 in" }]
"#;

const DIAMETERS: &str = r#"[[diameters]]
id = "d"
name = "Diameters"
source = "book"
place = "p. 6"
known = "page"
bands = [{ over = "1 mm", up-to = "2 mm", grade-1 = ["1 mm", "2 mm", "3 mm"], grade-2 = ["4 mm", "5 mm", "6 mm"], grade-3 = ["7 mm", "8 mm", "9 mm"] }]
"#;

const SIZES: &str = r#"[[sizes]]
id = "e"
name = "Bars"
source = "book"
place = "p. 7"
known = "common practice"
sizes = ["1/2 in", "9/16 in"]
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
    let steel = STEEL.replace("[]", r#"["s-1"]"#);
    let rows =
        read(&[&steel, DENSITY, STRENGTH, SHARES, TAPE, STEPS, DIAMETERS, SIZES].concat()).unwrap();
    assert_eq!(rows.len(), 8);
    assert_eq!(rows::consistent(&rows), Ok(()));
    let named = |id: &str| rows.iter().find(|row| row.id == id).unwrap();
    let text = constants::constants(&rows, &[named("a")]);
    for part in [
        r#"Row { id: "a", file: "x/book.toml" }"#,
        r"pressure(7.85e1 * si::GIGAPASCAL)",
        r".with_strengths(const { &[ROW_S_1] })",
        r"const ROW_R: Sourced<MassDensity> = Sourced { value: density(2.84e-1 * si::LB_PER_IN3)",
        r".with_density(ROW_R)",
        r#".with_row("x/book.toml, row a")"#,
        r#"Source::new("A book, 1st ed.", "p. 2", Known::QuotedIn("another book"))"#,
        r"(length(6e0 * si::FOOT), length(3.125e-2 * si::INCH))",
        r#"const ROW_S_1: Strength = ruled(Strength::look_up("s-1", "a wire", "another book")"#,
        r"Law::Power { coefficient: pressure(2e3 * si::NEWTON_PER_MM2), unit: length(1e0 * si::MILLIMETRE), exponent: 2e-1 }",
        r"fall: pressure(7.4e2 * si::NEWTON_PER_MM2)",
        r".with_shares(ROW_H)",
        r"ruled(Shares::new(4.5e-1, Against::Curvature, ",
        r"DiameterBand { over: length(1e0 * si::MILLIMETRE)",
        r"const { &[length(5e-1 * si::INCH), length(5.625e-1 * si::INCH)] }",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
}

fn optional(subject: &str, field: &str) -> bool {
    matches!((subject, field), (_, "default" | "allowable") | ("steel", "density"))
}

#[test]
fn a_row_without_any_one_of_its_fields_is_refused_by_file_and_row() {
    for row in [STEEL, DENSITY, STRENGTH, SHARES, TAPE, STEPS, DIAMETERS, SIZES] {
        let subject = row.split(['[', ']']).nth(2).unwrap();
        let table: toml::Table = row.parse().unwrap();
        let whole = table[subject][0].as_table().unwrap();
        for field in whole.keys().filter(|field| !optional(subject, field)) {
            let mut rest = whole.clone();
            rest.remove(field);
            let id = if field == "id" { "no id" } else { whole["id"].as_str().unwrap() };
            let expected = match field.as_str() {
                // A tape without steps wants the errors of the other kind.
                "steps" => "no fixed".to_owned(),
                // A strength without sizes only says where to look, and then nothing is cited.
                "sizes" if subject == "strength" => "unknown field `allowable`".to_owned(),
                field => format!("no {field}"),
            };
            let rest =
                toml::Table::from_iter([(subject.to_owned(), toml::Value::from(vec![rest]))]);
            assert_eq!(
                refusal(&rest.to_string()),
                format!("x/book.toml, {subject} 1 ({id}): {expected}")
            );
        }
    }
}

#[test]
fn a_strength_that_is_not_held_names_its_document_alone() {
    let row = "[[strength]]\nid = \"u\"\nname = \"bar\"\nlook-up = \"a standard\"\n";
    assert!(read(row).is_ok());
    assert!(refusal(&row.replace("look-up", "source")).ends_with("(u): no look-up"));
    assert!(refusal(&format!("{row}known = \"page\"")).ends_with("unknown field `known`"));
}

#[test]
fn a_value_says_what_is_wrong_with_it() {
    let refused = |row: &str, at: &str, from: &str, to: &str, part: &str| {
        assert!(row.contains(from), "{from} is not in the row");
        let sentence = refusal(&row.replacen(from, to, 1));
        assert!(sentence.starts_with(at) && sentence.contains(part), "{sentence}");
    };
    for (from, to, part) in [
        (
            "78.5 GPa",
            "78.5",
            "shear-modulus = \"78.5\": no unit; a number and one of GPa, MPa, N/mm², psi was expected",
        ),
        ("78.5 GPa", "78.5 mm", "not a unit of this value"),
        ("78.5 GPa", "many GPa", "not a number above zero"),
        ("78.5 GPa", "-1 GPa", "not a number above zero"),
        ("78.5 GPa", "inf GPa", "not a number above zero"),
        ("\"78.5 GPa\"", "78.5", "shear-modulus = 78.5: a text was expected"),
        ("\"page\"", "\"somewhere\"", "known = \"somewhere\""),
        ("\"page\"", "\"quoted in \"", "known = \"quoted in \""),
        ("\"p. 1\"", "\" \"", "no place"),
        ("\"book\"", "\"leaflet\"", "source \"leaflet\" is not in sources.toml"),
        ("true", "\"yes\"", "default = \"yes\": true or false was expected"),
        ("[]", "[]\nover = \"1 in\"", "no up-to"),
        ("[]", "[]\nover = \"1 in\"\nup-to = \"1 in\"", "sizes that do not rise in one unit"),
        ("[]", "[]\nover = \"1 in\"\nup-to = \"30 mm\"", "sizes that do not rise in one unit"),
        ("[]", "\"s-1\"", "strengths: a list of texts was expected"),
        ("id = \"a\"", "id = \"a\"\ncolour = \"red\"", "unknown field `colour`"),
        ("id = \"a\"", "id = \"a\"\nfixed = \"1 mm\"", "unknown field `fixed`"),
        ("[[steel]]", "[[alloy]]", "no such subject"),
    ] {
        refused(STEEL, "x/book.toml", from, to, part);
    }
    refused(STEEL, "x/book.toml: ", "[[steel]]", "", "invalid type");
    for (from, to, part) in [
        ("usual = []", "usual = [\"yard\"]", "usual: \"yard\" is neither"),
        ("\"6 ft\"", "\"31 ft\"", "steps that do not rise"),
        ("\"6 ft\"", "\"6\"", "up-to = \"6\": no unit"),
        (", error = \"1/32 in\"", "", "no error"),
        ("\"1/32 in\"", "\"1/0 in\"", "not a number above zero"),
        ("id =", "fixed = \"1 mm\"\nid =", "unknown field `fixed`"),
        ("id =", "density = \"1 kg/dm³\"\nid =", "unknown field `density`"),
    ] {
        refused(STEPS, "x/book.toml, tape 1 (c)", from, to, part);
    }
    for (from, to, part) in [
        ("\"0.2\"", "\"0.2 mm\"", "exponent = \"0.2 mm\": not a unit of this value; a number was"),
        ("\"0.2\"", "\"-0.2\"", "not a number above zero"),
        (", exponent = \"0.2\"", "", "no exponent"),
        (", unit = \"1 mm\"", "", "no unit"),
        ("from = \"1 mm\", ", "", "no from"),
        ("fall = ", "exponent = \"0.1\", fall = ", "unknown field `exponent`"),
    ] {
        refused(STRENGTH, "x/book.toml, strength 1 (s-1)", from, to, part);
    }
    for (from, to, part) in [
        ("45 %", "0.45", "as-wound = \"0.45\": no unit; a number and one of % was expected"),
        ("curvature", "wahl", "one of plain, direct shear, curvature was expected"),
        ("known", "set-removed = \"60 %\"\nknown", "no set-removed-against"),
    ] {
        refused(SHARES, "x/book.toml, allowable 1 (h)", from, to, part);
    }
    for (from, to, part) in [
        ("up-to = \"2 mm\"", "up-to = \"1 mm\"", "sizes that do not rise in one unit"),
        (
            "bands = [",
            "bands = [{ over = \"1 mm\", up-to = \"1.5 mm\", grade-1 = [\"1 mm\", \"2 mm\", \"3 mm\"], grade-2 = [\"4 mm\", \"5 mm\", \"6 mm\"], grade-3 = [\"7 mm\", \"8 mm\", \"9 mm\"] }, ",
            "bands that do not adjoin",
        ),
        ("\"3 mm\"]", "]", "grade-1: three values were expected"),
        ("\"5 mm\"", "\"5\"", "grade-2 = \"5\": no unit"),
        ("grade-3 = [\"7 mm\", \"8 mm\", \"9 mm\"]", "", "no grade-3"),
    ] {
        refused(DIAMETERS, "x/book.toml, diameters 1 (d)", from, to, part);
    }
    for (from, to, part) in [
        ("\"9/16 in\"", "\"1/2 in\"", "sizes that do not rise in one unit"),
        ("\"9/16 in\"", "\"16 mm\"", "sizes that do not rise in one unit"),
        ("\"9/16 in\"", "\"9/16\"", "sizes = \"9/16\": no unit"),
        ("\"1/2 in\", \"9/16 in\"", "", "sizes that do not rise in one unit"),
    ] {
        refused(SIZES, "x/book.toml, sizes 1 (e)", from, to, part);
    }
    assert_eq!(refusal("# nothing"), "x/book.toml: no row");
}

#[test]
fn one_default_no_id_twice_and_no_row_that_is_not_there() {
    let other = STEEL.replace("id = \"a\"", "id = \"z\"");
    let plain = other.replace("default = true\n", "");
    let order = |text: &str| {
        let rows = read(text)?;
        let ids = |rows: Vec<&Row>| rows.into_iter().map(|row| row.id.clone()).collect::<Vec<_>>();
        rows::ordered(rows.iter().collect()).map(ids)
    };
    assert_eq!(order(&[&plain, STEEL].concat()), Ok(vec!["a".to_owned(), "z".to_owned()]));
    assert_eq!(
        order(&[&other, STEEL].concat()).unwrap_err(),
        "2 default rows, one was expected, in x/book.toml, x/book.toml"
    );
    assert_eq!(order(&plain).unwrap_err(), "0 default rows, one was expected, in x/book.toml");
    let inconsistent =
        |text: &[&str]| rows::consistent(&read(&text.concat()).unwrap()).unwrap_err();
    assert_eq!(inconsistent(&[STEEL, STEEL]), "x/book.toml: \"a\" stands in x/book.toml too");
    assert_eq!(
        inconsistent(&[&TAPE.replace("\"b\"", "\"a\""), STEEL]),
        "x/book.toml: \"a\" stands in x/book.toml too"
    );
    assert_eq!(inconsistent(&[STRENGTH]), "x/book.toml: \"s-1\" names no allowable \"h\"");
    let steel = STEEL.replace("[]", "[\"h\"]");
    assert_eq!(inconsistent(&[&steel, SHARES]), "x/book.toml: \"a\" names no density \"r\"");
    assert_eq!(
        inconsistent(&[&steel, SHARES, DENSITY]),
        "x/book.toml: \"a\" names no strength \"h\""
    );
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

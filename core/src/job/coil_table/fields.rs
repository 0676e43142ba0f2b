//! Lines and fields of comma-separated text, by RFC 4180, with two other separators; no field runs
//! over a line end.

/// What may stand between two columns, the rarest within a field first.
const SEPARATORS: [char; 3] = ['\t', ';', ','];

/// Quotes with which a line cannot be told apart into fields.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct BadQuotes {
    /// Index of the field.
    pub(super) index: usize,
    /// Whether they are not closed; else something follows the closing one.
    pub(super) open: bool,
}

/// The first line of a text, and how long it is with its end; none where that end is not there yet.
pub(super) fn first_line(text: &str, last: bool) -> Option<(&str, usize)> {
    let Some((line, end)) = text.find(['\r', '\n']).map(|end| text.split_at(end)) else {
        return (last && !text.is_empty()).then_some((text, text.len()));
    };
    let ending = if end.starts_with("\r\n") { 2 } else { 1 };
    // Half of a CRLF may be all that is there.
    (last || end != "\r").then_some((line, line.len() + ending))
}

/// The first separator that parts a line; a comma where none does.
pub(super) fn separator(line: &str) -> char {
    let parts = |separator: &char| match all(line, *separator) {
        Ok(fields) => fields.len() > 1,
        Err(bad) => bad.index > 0,
    };
    SEPARATORS.into_iter().find(parts).unwrap_or(',')
}

/// The fields of a line without blanks round them, and without the empty ones at its end.
pub(super) fn split(line: &str, separator: char) -> Result<Vec<String>, BadQuotes> {
    let mut fields = all(line, separator)?;
    while fields.last().is_some_and(String::is_empty) {
        fields.pop();
    }
    Ok(fields)
}

fn all(line: &str, separator: char) -> Result<Vec<String>, BadQuotes> {
    let mut fields = Vec::new();
    let mut rest = Some(line);
    while let Some(text) = rest {
        let is_blank = |c: char| c.is_whitespace() && c != separator;
        let text = text.trim_start_matches(is_blank);
        let (field, behind) = match text.strip_prefix('"') {
            Some(quoted) => {
                let bad = |open| BadQuotes { index: fields.len(), open };
                let (field, behind) = unquoted(quoted).ok_or(bad(true))?;
                let behind = behind.trim_start_matches(is_blank);
                match behind.strip_prefix(separator) {
                    None if !behind.is_empty() => return Err(bad(false)),
                    next => (field, next),
                }
            }
            None => match text.split_once(separator) {
                Some((field, next)) => (field.to_owned(), Some(next)),
                None => (text.to_owned(), None),
            },
        };
        fields.push(bare(field.trim()).trim().to_owned());
        rest = behind;
    }
    Ok(fields)
}

/// A field whose opening quote is taken off, and what stands behind its closing one.
fn unquoted(text: &str) -> Option<(String, &str)> {
    let mut field = String::new();
    let mut rest = text;
    loop {
        let (before, behind) = rest.split_once('"')?;
        field.push_str(before);
        let Some(next) = behind.strip_prefix('"') else { return Some((field, behind)) };
        field.push('"');
        rest = next;
    }
}

/// What a spreadsheet takes for the beginning of a formula, blanks before it aside.
const FORMULA: [char; 4] = ['=', '+', '-', '@'];

/// Whether a spreadsheet could take a field for a formula; a signed number or fraction is none.
fn is_formula(field: &str) -> bool {
    let number = field.strip_prefix(['+', '-']).unwrap_or_default();
    let is_number = number.starts_with(|c: char| c.is_ascii_digit())
        && number.chars().all(|c| c.is_ascii_digit() || matches!(c, ' ' | '/' | '.'));
    field.starts_with(FORMULA) && !is_number
}

/// A field without the apostrophe that keeps a spreadsheet from taking it for a formula.
fn bare(field: &str) -> &str {
    let is_kept = |bare: &&str| is_formula(bare.trim_start_matches('\''));
    field.strip_prefix('\'').filter(is_kept).unwrap_or(field)
}

/// A field as it is written between commas: a spreadsheet shows it, and works nothing out of it.
pub(super) fn quoted(field: &str) -> String {
    guarded(field, is_formula)
}

/// The same for a table that only a spreadsheet reads: there `7/8` and `7-8` would be days, and `7e2` a
/// number.
pub(in crate::job) fn plain(field: &str) -> String {
    guarded(field, |field| is_formula(field) || is_taken_for_another(field))
}

/// Whether a spreadsheet would make a day or a power of ten of a mark or a fraction.
fn is_taken_for_another(field: &str) -> bool {
    let is_digits = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_digit());
    let parts: Vec<&str> = field.split(['/', '-', 'e', 'E']).collect();
    matches!(parts.len(), 2 | 3) && parts.into_iter().all(is_digits)
}

fn guarded(field: &str, is_guarded: impl Fn(&str) -> bool) -> String {
    let field = field.trim();
    let guard = if is_guarded(field.trim_start_matches('\'')) { "'" } else { "" };
    let field = format!("{guard}{field}");
    if field.contains(['"', '\r', '\n']) || SEPARATORS.iter().any(|sign| field.contains(*sign)) {
        format!("\"{}\"", field.replace('"', "\"\""))
    } else {
        field
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn lines() {
        for (text, last, line) in [
            ("", true, None),
            ("", false, None),
            ("a", true, Some(("a", 1))),
            ("a", false, None),
            ("a\nb", false, Some(("a", 2))),
            ("a\r\nb", false, Some(("a", 3))),
            ("a\rb", false, Some(("a", 2))),
            ("a\r", false, None),
            ("a\r", true, Some(("a", 2))),
            ("\n\n", false, Some(("", 1))),
        ] {
            assert_eq!(first_line(text, last), line, "{text:?}");
        }
    }

    #[test]
    fn separators() {
        for (line, sign) in [
            ("label,role,reading", ','),
            ("label;role;reading", ';'),
            ("label\trole\treading", '\t'),
            ("17;outer;353,6;354,2", ';'),
            ("17\touter; dark\t353,6", '\t'),
            ("\"17;a\",outer", ','),
            ("\"17,a\";outer", ';'),
            ("17;\"outer;353,6", ';'),
            ("\"17;outer,353", ','),
            ("17", ','),
            (" ;;", ';'),
            ("", ','),
        ] {
            assert_eq!(separator(line), sign, "{line:?}");
        }
    }

    #[test]
    fn fields() {
        let good = |line: &str, expected: &[&str]| {
            assert_eq!(split(line, ',').unwrap(), expected, "{line:?}");
        };
        good("17,outer,13 7/8", &["17", "outer", "13 7/8"]);
        good(" 17 ,\touter\u{a0}, 13 7/8 ", &["17", "outer", "13 7/8"]);
        good("17,,13 7/8,,, ", &["17", "", "13 7/8"]);
        good(",,, ,", &[]);
        good("", &[]);
        good("\"17, the \"\"red\"\" one\",outer", &["17, the \"red\" one", "outer"]);
        good("17, \"outer\" ,\"\"", &["17", "outer"]);
        good("17,outer,13 7/8\",13 15/16\"", &["17", "outer", "13 7/8\"", "13 15/16\""]);
        let bad = |line: &str, index, open| {
            assert_eq!(split(line, ','), Err(BadQuotes { index, open }), "{line:?}");
        };
        bad("\"17,outer,13 7/8", 0, true);
        bad("17,outer,\"", 2, true);
        bad("17,outer,\"13 7/8\"\"", 2, true);
        bad("17,\"outer\" coil,13 7/8", 1, false);
    }

    #[test]
    fn no_field_is_a_formula_to_a_spreadsheet() {
        for (field, written) in [
            ("=1+1", "'=1+1"),
            ("=HYPERLINK(\"x\")", "\"'=HYPERLINK(\"\"x\"\")\""),
            ("@SUM", "'@SUM"),
            ("+A1", "'+A1"),
            ("-A1", "'-A1"),
            ("-2+3", "'-2+3"),
            ("'=1", "''=1"),
            ("\t=1", "'=1"),
            ("\r=1", "'=1"),
            ("-3", "-3"),
            ("-1/8", "-1/8"),
            ("+13 7/8", "+13 7/8"),
            ("-353.6", "-353.6"),
            ("13 7/8", "13 7/8"),
            ("'tis", "'tis"),
        ] {
            assert_eq!(quoted(field), written, "{field:?}");
        }
    }

    #[test]
    fn no_mark_or_fraction_becomes_a_day() {
        for (field, written) in [
            ("7/8", "'7/8"),
            ("7-8", "'7-8"),
            ("7-8-9", "'7-8-9"),
            ("7e2", "'7e2"),
            ("=1", "'=1"),
            ("7a", "7a"),
            ("7", "7"),
            ("13 7/8 in", "13 7/8 in"),
            ("-1/8 in", "'-1/8 in"),
            ("a-b", "a-b"),
            ("7-", "7-"),
        ] {
            assert_eq!(plain(field), written, "{field:?}");
        }
    }

    proptest! {
        #[test]
        fn what_is_quoted_is_read_again(fields in prop::collection::vec("[ -~½″€\t]{0,9}", 0..6)) {
            let line: Vec<String> = fields.iter().map(|field| quoted(field)).collect();
            let mut fields: Vec<&str> = fields.iter().map(|field| field.trim()).collect();
            while fields.last().is_some_and(|field| field.is_empty()) {
                fields.pop();
            }
            prop_assert_eq!(split(&line.join(","), ',').unwrap(), fields);
        }
    }
}

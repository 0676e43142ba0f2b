//! What a working puts in, worked out by another library's reader of expressions.

use approx::{abs_diff_eq, relative_eq};
use exmex::{Express, FlatEx, FloatOpsFactory, MakeOperators, Operator};
use statrs::distribution::{ContinuousCDF, Normal};

/// The other library's operators, and the normal distribution.
#[derive(Clone, Debug)]
struct Operators;

impl MakeOperators<f64> for Operators {
    fn make<'a>() -> Vec<Operator<'a, f64>> {
        let mut all = FloatOpsFactory::<f64>::make();
        all.push(Operator::make_unary("phi", |x| Normal::standard().cdf(x)));
        all
    }
}

/// Units as workings write them, in SI units; longer ones first. Pounds are forces but for a mass.
const UNITS: [(&str, f64); 20] = [
    ("rad", 1.0),
    ("lb/in³", POUND / (INCH * INCH * INCH)),
    ("lb/in", POUND_FORCE / INCH),
    ("ft·lb", 12.0 * INCH * POUND_FORCE),
    ("in/s²", INCH),
    ("kg/m³", 1.0),
    ("N/mm", 1e3),
    ("N/m", 1.0),
    ("psi", POUND_FORCE / (INCH * INCH)),
    ("MPa", 1e6),
    ("GPa", 1e9),
    ("lb", POUND_FORCE),
    ("in", INCH),
    ("mm", 1e-3),
    ("kN", 1e3),
    ("kg", 1.0),
    ("kJ", 1e3),
    ("N", 1.0),
    ("J", 1.0),
    ("%", 1e-2),
];
const INCH: f64 = 0.0254;
const POUND: f64 = 0.453_592_37;
const POUND_FORCE: f64 = POUND * 9.806_65;

/// A part of what was put in.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    /// A number in SI units, and half a unit of its last digit there. Without a unit it is exact.
    Number {
        value: f64,
        half: f64,
    },
    Other(String),
}

/// What a text put in gives, and how far the digits that were left away may move it.
///
/// # Errors
/// What is no expression.
pub(crate) fn worked(with: &str, rounded: &[String], mass: bool) -> Result<(f64, f64), String> {
    let tokens = tokens(with, rounded, mass);
    let value = evaluate(&tokens)?;
    let mut off = 0.0;
    for index in 0..tokens.len() {
        if let Token::Number { value: of, half } = tokens[index]
            && half > 0.0
        {
            let mut moved = tokens.clone();
            moved[index] = Token::Number { value: of + half, half };
            let up = evaluate(&moved)?;
            moved[index] = Token::Number { value: of - half, half };
            off += (up - value).abs().max((evaluate(&moved)? - value).abs());
        }
    }
    Ok((value, off))
}

fn evaluate(tokens: &[Token]) -> Result<f64, String> {
    let text: String = tokens
        .iter()
        .map(|token| match token {
            Token::Number { value, .. } if *value < 0.0 => format!("({value})"),
            Token::Number { value, .. } => value.to_string(),
            Token::Other(text) => text.clone(),
        })
        .collect();
    let parsed = FlatEx::<f64, Operators>::parse(&text).map_err(|why| format!("{text}: {why}"))?;
    if !parsed.var_names().is_empty() {
        return Err(format!("{text}: nothing was put in for {:?}", parsed.var_names()));
    }
    parsed.eval(&[]).map_err(|why| format!("{text}: {why}"))
}

/// The numbers with their units, and what stands between them in the other library's spelling.
fn tokens(with: &str, rounded: &[String], mass: bool) -> Vec<Token> {
    let with = one_by_one(&with.replace('\u{202f}', ""));
    let mut rest = with.as_str();
    let mut all = Vec::new();
    while let Some(first) = rest.chars().next() {
        if first.is_ascii_digit() {
            let (token, after) = number(rest, rounded, mass);
            all.push(token);
            rest = after;
            continue;
        }
        let spelt = [
            ("√(", "sqrt("),
            ("∛(", "cbrt("),
            ("Φ(", "phi("),
            ("²", "^2"),
            ("³", "^3"),
            ("⁴", "^4"),
            ("·", "*"),
            ("−", "-"),
            ("½", "0.5"),
        ];
        let found = spelt.iter().find(|(ours, _)| rest.starts_with(ours));
        let (ours, theirs) = found.map_or_else(
            || (first.len_utf8(), first.to_string()),
            |(ours, theirs)| (ours.len(), (*theirs).to_owned()),
        );
        all.push(Token::Other(theirs));
        rest = &rest[ours..];
    }
    all
}

/// The greatest of many as the greatest of two, and so on, and the least likewise: the other library knows
/// them of two alone.
fn one_by_one(with: &str) -> String {
    by_twos(&by_twos(with, "max"), "min")
}

fn by_twos(with: &str, name: &str) -> String {
    let call = format!("{name}(");
    let Some((before, rest)) = with.split_once(&call) else { return with.to_owned() };
    let mut depth = 1;
    let end = rest.find(|c| {
        depth += i32::from(c == '(') - i32::from(c == ')');
        depth == 0
    });
    let (all, after) = rest.split_at(end.unwrap_or(rest.len()));
    let nested = all
        .split(", ")
        .map(str::to_owned)
        .reduce(|one, other| format!("{call}({one}), ({other}))"));
    let nested = nested.unwrap_or_default().replace(&call, "\u{1}(");
    by_twos(&format!("{before}({nested}){}", &after[after.len().min(1)..]), name)
        .replace('\u{1}', name)
}

/// `13 7/8 in`, `0.3 mm`, `7`: a number with its unit, and what follows.
fn number<'t>(text: &'t str, rounded: &[String], mass: bool) -> (Token, &'t str) {
    let end =
        |text: &str| text.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(text.len());
    let (whole, mut after) = text.split_at(end(text));
    let mut value: f64 = whole.parse().unwrap_or(f64::NAN);
    let mut fraction = false;
    if let Some(part) = after.strip_prefix(' ').or(Some(after)) {
        let (upper, rest) = part.split_at(end(part));
        if after.starts_with('/') {
            let lower = &after[1..];
            let (lower, rest) = lower.split_at(end(lower));
            if let Ok(lower) = lower.parse::<f64>() {
                (value, after, fraction) = (value / lower, rest, true);
            }
        } else if let (Ok(upper), Some(lower)) = (upper.parse::<f64>(), rest.strip_prefix('/')) {
            let (lower, rest) = lower.split_at(end(lower));
            if let Ok(lower) = lower.parse::<f64>() {
                (value, after, fraction) = (value + upper / lower, rest, true);
            }
        }
    }
    let unit = UNITS.iter().find_map(|(unit, si)| {
        let rest = after.trim_start_matches(' ').strip_prefix(unit)?;
        let whole = !rest.starts_with(|c: char| c.is_alphanumeric() || c == '/');
        whole.then_some((*unit, *si, rest))
    });
    let half = if fraction { 0.0 } else { 0.5 * last_place(whole) };
    if let Some((unit, si, rest)) = unit {
        let si = if mass && unit == "lb" { POUND } else { si };
        return (Token::Number { value: value * si, half: half * si }, rest);
    }
    let half = if rounded.iter().any(|number| number == whole) { half } else { 0.0 };
    (Token::Number { value, half }, after)
}

/// One of the last digit that is certain: of a whole number four digits are, what follows in zeros is
/// not.
fn last_place(number: &str) -> f64 {
    let decimals = number.split_once('.').map(|(_, decimals)| decimals.len());
    let zeros = number.len() - number.trim_end_matches('0').len();
    let beyond = number.len().saturating_sub(4).min(zeros);
    let power = |places| i32::try_from(places).unwrap_or(0);
    decimals.map_or(10_f64.powi(power(beyond)), |decimals| 0.1_f64.powi(power(decimals)))
}

#[test]
fn what_is_put_in_is_read() {
    for (with, value) in [
        (
            "8 · 1 lb · 2 in / (π · (1 in)³)",
            8.0 * POUND_FORCE * 2.0 / (std::f64::consts::PI * INCH * INCH),
        ),
        ("13 7/8 in − 1 1/2 in", 12.375 * INCH),
        ("1/2 in", 0.5 * INCH),
        (
            "11\u{202f}390\u{202f}000 psi · (0.625 in)⁴ / (8 · (2.75 in)³ · (11.5 − 1.5))",
            182_939.894_58,
        ),
        ("max(0, 3 mm − 4 mm)", 0.0),
        ("(−2)² + √(9) + Φ(0)", 7.5),
        ("max(1 in + 1 in, 1 in, 3 in) / 1 in", 3.0),
        ("min(2 mm, (−1 mm), 3 mm) / 1 mm + max(0, 1)", 0.0),
        ("98 %", 0.98),
    ] {
        let (found, _) = worked(with, &[], false).unwrap();
        assert!(relative_eq!(found, value, max_relative = 1e-5), "{with}: {found} and {value}");
    }
    assert!(worked("k · 3", &[], false).is_err());
    // One unit of 0.625 counts four times, of 2.75 thrice.
    let (of, off) = worked("(0.625 in)⁴ / (2.75 in)³", &[], false).unwrap();
    assert!(
        abs_diff_eq!(off / of, (4.0 * 0.0005 / 0.625 + 3.0 * 0.005 / 2.75), epsilon = 1e-4),
        "{}",
        off / of
    );
}

//! Formulas as data: one template gives a formula in symbols, and the same with the numbers put in.
//!
//! Every letter stands in [`SYMBOLS`] with what it means, one meaning a letter, and a template with a
//! letter that is not there does not compile. So a formula that is shown cannot drift from its legend,
//! and a reader can work through what was put in.

use core::fmt::{self, Display, Write};
use core::ops::Range;

/// A letter of a formula, and what it stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// The letter, with its index: `L0`.
    pub sign: &'static str,
    /// What it is, in words.
    pub name: &'static str,
}

const fn symbol(sign: &'static str, name: &'static str) -> Symbol {
    Symbol { sign, name }
}

/// Every letter that formulas are written with.
pub const SYMBOLS: &[Symbol] = &[
    symbol("A", "opening between the guides"),
    symbol("AD", "tolerance of the diameter, either way"),
    symbol("AF", "tolerance of the load, either way"),
    symbol("AL", "tolerance of the free height, either way"),
    symbol("B", "greatest width of the box"),
    symbol("C", "index, D / d"),
    symbol("D", "mean diameter of the coil"),
    symbol("De", "outside diameter of the coil"),
    symbol("Di", "inside diameter of the coil"),
    symbol("E", "Young's modulus"),
    symbol("F", "load"),
    symbol("F1", "the first load"),
    symbol("F2", "the second load"),
    symbol("FN", "load of the nest"),
    symbol("Fc", "load of the coil"),
    symbol("Fm", "mean load of the nests"),
    symbol("G", "shear modulus"),
    symbol("H", "height from the lower seat to the frame"),
    symbol("KB", "Bergsträsser's factor"),
    symbol("KS", "factor of direct shear"),
    symbol("KW", "Wahl's factor"),
    symbol("L", "height of the coil under the load"),
    symbol("L0", "free height of the coil"),
    symbol("L1", "free height as it was measured before"),
    symbol("L2", "free height as it is measured now"),
    symbol("Lc", "solid height of the coil"),
    symbol("Lk", "height at which the coil bends aside"),
    symbol("Lm", "free height as measured"),
    symbol("Ln", "least height at work"),
    symbol("N", "how many"),
    symbol("Q", "load of the wheel"),
    symbol("Q0", "load of the wheel on level track"),
    symbol("Rm", "tensile strength of the bar"),
    symbol("S", "highest reading less the lowest"),
    symbol("Sa", "sum of the least gaps between turns"),
    symbol("Sse", "shear stress that is endured when it is reversed"),
    symbol("Ssu", "ultimate shear strength"),
    symbol("Ssy", "yield strength in torsion"),
    symbol("T", "thickness of what lies over and under the nest"),
    symbol("TL", "least limit of the book"),
    symbol("TU", "greatest limit of the book"),
    symbol("U", "energy that is stored"),
    symbol("W", "weight on the frame"),
    symbol("Dx", "the diameter that is given"),
    symbol("X", "reach of the nests along the frame"),
    symbol("Y", "reach of the nests across the frame"),
    symbol("a", "rise along the frame per length"),
    symbol("aF", "basis of the tolerance of the load"),
    symbol("b", "rise across the frame per length"),
    symbol("c", "part of a nest's load that the wheel carries"),
    symbol("c1", "clearance at the top"),
    symbol("c2", "clearance in the middle"),
    symbol("c3", "clearance at the bottom"),
    symbol("cl", "clearance in all"),
    symbol("cs", "clearance on one side"),
    symbol("d", "diameter of the bar"),
    symbol("d1", "bar of the wider coil"),
    symbol("d2", "bar of the narrower coil"),
    symbol("e", "gap between the coils, free"),
    symbol("e1", "tolerance of squareness"),
    symbol("e2", "tolerance of parallelism"),
    symbol("f", "first frequency"),
    symbol("g", "rise of the ground; a dip is negative"),
    symbol("g0", "acceleration of gravity"),
    symbol("h", "height of the nest"),
    symbol("h1", "the first mean height"),
    symbol("h2", "the second mean height"),
    symbol("ha", "what is added to the height of the frame for a point of it"),
    symbol("hc", "height of the nest when it is solid"),
    symbol("hp", "height of the point"),
    symbol("hs", "height from the lower seat to the frame as worked out"),
    symbol("hy", "the same as taped"),
    symbol("j", "share of the tensile strength that is allowed"),
    symbol("k", "rate"),
    symbol("k0", "rate by the textbook"),
    symbol("kF", "factor of the active turns"),
    symbol("kQ", "rate sideways"),
    symbol("l", "length of the bar"),
    symbol("l1", "liner of the one side"),
    symbol("l2", "liner of the other side"),
    symbol("lh", "the most that new liners may be thick"),
    symbol("ll", "the least that new liners may be thick"),
    symbol("m", "mass of the bar"),
    symbol("ma", "mass of the active turns"),
    symbol("n", "active turns"),
    symbol("nd", "dead turns"),
    symbol("nf", "factor of safety against fatigue"),
    symbol("nt", "turns in all, tip to tip"),
    symbol("o", "packing under the coil, less packing left out"),
    symbol("p", "pitch of the free coil"),
    symbol("p1", "pitch at the height under load"),
    symbol("q", "factor of the grade"),
    symbol("r", "reading"),
    symbol("r1", "least reading"),
    symbol("r2", "greatest reading"),
    symbol("rb", "least that any choice can reach"),
    symbol("rl", "difference that is left"),
    symbol("s", "deflection"),
    symbol("sF", "scatter of the loads about the line"),
    symbol("sk", "per cent by which the rate changes where the size changes by one per cent"),
    symbol("sq", "by how much the stack is squeezed"),
    symbol("sx", "sensitivity, without its sign"),
    symbol("t", "shim"),
    symbol("tn", "thickness of the layer when new"),
    symbol("tp", "thickness of the layer without load"),
    symbol("tα", "slope of the turns, p / (π · D)"),
    symbol("u", "standard uncertainty"),
    symbol("u1", "standard uncertainty of what was measured before"),
    symbol("u2", "standard uncertainty of what is measured now"),
    symbol("ui", "uncertainty by one of the sizes"),
    symbol("up", "uncertainty by the places round the coil"),
    symbol("ur", "uncertainty by the marks of the tape"),
    symbol("ut", "uncertainty by the tape's own error"),
    symbol("ux", "uncertainty of the size, as a part of it"),
    symbol("w", "twist of the frame"),
    symbol("x", "place along the frame"),
    symbol("xc", "place of the weight along the frame"),
    symbol("xm", "middle of the nests along the frame"),
    symbol("y", "place across the frame"),
    symbol("yc", "place of the weight across the frame"),
    symbol("ym", "middle of the nests across the frame"),
    symbol("z", "height of the frame at the middle of the nests"),
    symbol("ΔD", "growth of the diameter"),
    symbol("ΔF", "difference of loads"),
    symbol("Δl", "free height as it is now, less what it was"),
    symbol("ΔL", "free height as measured, less the book figure"),
    symbol("ΔQ/Q0", "part of its load that the wheel loses"),
    symbol("Δh", "difference of heights"),
    symbol("α", "angle of the free coil's turns"),
    symbol("α1", "angle of the pressed coil's turns"),
    symbol("β", "stiffness in twist over that in bending, 1 / (1 + Poisson's ratio)"),
    symbol("γ", "shear modulus over Young's modulus"),
    symbol("η", "√((0.5 + γ) · (γ + (1 − ξ) / ξ))"),
    symbol("λ", "slenderness, L0 / D"),
    symbol("μ", "Poisson's ratio"),
    symbol("ν", "seating coefficient"),
    symbol("ξ", "part of the free height by which the coil is pressed"),
    symbol("ρ", "density"),
    symbol("τ", "stress in the bar, uncorrected"),
    symbol("τa", "amplitude of the stress"),
    symbol("τc", "stress at solid"),
    symbol("τk", "stress at the inside of the coil"),
    symbol("τm", "mean stress"),
    symbol("τz", "allowable stress at solid"),
];

/// Results that have a word, or a sign of their own, in place of a letter of [`SYMBOLS`], and what is
/// computed there.
pub const RESULTS: &[Symbol] = &[
    symbol("share", "share of the whole"),
    symbol("left", "height that is left before solid"),
    symbol("gap", "gap that is left between two things"),
    symbol("travel", "travel from free to solid"),
    symbol("reserve", "reserve to the allowable stress"),
    symbol("rise", "how much higher one end of the frame stands than the other"),
    symbol("kept", "part of its load on level track that the wheel keeps"),
    symbol("short", "how likely the coil is short, and how likely it is long"),
    symbol("taper", "clearance at the top less that at the bottom"),
    symbol("pinch", "how much narrower the way is in the middle than at its ends"),
    symbol("liner", "thickness of a new liner"),
    symbol("lost", "by how much the layer is thinner than new"),
    symbol("φ", "angle by which the ends are out of square"),
];

/// What a letter stands for, or what a formula gives that has a word of [`RESULTS`] on its left; empty
/// for one that is in neither table.
#[must_use]
pub fn meaning(sign: &str) -> &'static str {
    let known = SYMBOLS.iter().chain(RESULTS);
    known.into_iter().find(|symbol| symbol.sign == sign).map_or("", |symbol| symbol.name)
}

/// A formula: what it gives, ` = `, and how, each letter in braces. A part in brackets is a term of a
/// sum, and is put in once for each.
///
/// # Example
/// ```
/// use coilnest::coil::rate;
///
/// assert_eq!(rate::FORMULA.to_string(), "k = G · d⁴ / (8 · D³ · n)");
/// let put = rate::FORMULA.put(&[("G", &"80 GPa"), ("d", &"10 mm"), ("D", &"80 mm"), ("n", &5)]);
/// assert_eq!(put.with(), "80 GPa · (10 mm)⁴ / (8 · (80 mm)³ · 5)");
/// assert_eq!(put.letters()[3], ("n", "5"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Formula {
    template: &'static str,
    in_words: bool,
}

/// A letter and its number.
pub type Value<'v> = (&'static str, &'v dyn Display);

/// A formula with its numbers, which are put in when they are asked for: most are never looked at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Put {
    formula: Formula,
    /// The numbers as text, one behind the other.
    text: String,
    numbers: Vec<Number>,
    /// How many terms its sums have.
    terms: usize,
}

/// Where the number of a letter stands.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Number {
    sign: &'static str,
    /// The term of a sum that it belongs to, from 1; 0 for what all of them have.
    term: usize,
    /// The bytes of it that are put in; what stands behind them tells its range.
    put_in: Range<usize>,
    end: usize,
}

impl Formula {
    /// A template. What it is made from must be a `const`, so that a letter that is not in [`SYMBOLS`]
    /// is found where it is compiled.
    pub(crate) const fn new(template: &'static str) -> Self {
        assert!(is_spelt(template.as_bytes()), "a letter of the formula is not in SYMBOLS");
        Self { template, in_words: false }
    }

    /// Whether it says in words how the result is found, so that there is nothing to work out.
    #[must_use]
    pub const fn is_in_words(self) -> bool {
        self.in_words
    }

    /// The formula with its numbers.
    #[must_use]
    pub fn put(self, values: &[Value<'_>]) -> Put {
        let mut put = Put::new(self, values.len());
        put.add(0, values);
        put
    }

    /// The formula of a sum with its numbers: those that every term has, and those of each term.
    #[must_use]
    pub fn put_sum<'v, T: AsRef<[Value<'v>]>>(
        self,
        values: &[Value<'_>],
        terms: impl Iterator<Item = T>,
    ) -> Put {
        let mut put = Put::new(self, values.len() + 2 * terms.size_hint().0);
        put.add(0, values);
        for term in terms {
            put.terms += 1;
            put.add(put.terms, term.as_ref());
        }
        put
    }

    /// What is no expression, and what it is found from.
    #[cfg(feature = "job")]
    pub(crate) const fn put_words(said: &'static str, with: String) -> Put {
        let formula = Self { template: said, in_words: true };
        Put { formula, text: with, numbers: Vec::new(), terms: 0 }
    }

    /// Its letters, as often as they stand in it.
    pub(crate) fn letters(self) -> impl Iterator<Item = &'static str> {
        self.template.split('{').skip(1).filter_map(|rest| rest.split('}').next())
    }
}

impl Put {
    fn new(formula: Formula, numbers: usize) -> Self {
        let text = String::with_capacity(16 * numbers);
        Self { formula, text, numbers: Vec::with_capacity(numbers), terms: 0 }
    }

    fn add(&mut self, term: usize, values: &[Value<'_>]) {
        for (sign, value) in values {
            let start = self.text.len();
            // A string takes whatever is written to it.
            let _ = write!(self.text, "{value}");
            let end = self.text.len();
            self.numbers.push(Number { sign, term, put_in: start..end, end });
        }
    }

    /// Adds a letter's number, of which only the start is put in: its range stands behind it.
    #[cfg(feature = "job")]
    pub(crate) fn add_ranged(&mut self, sign: &'static str, number: &str, put_in: usize) {
        self.add(0, &[(sign, &number)]);
        if let Some(last) = self.numbers.last_mut() {
            last.put_in.end = (last.put_in.start + put_in).min(last.end);
        }
    }

    /// The formula.
    #[must_use]
    pub const fn formula(&self) -> Formula {
        self.formula
    }

    /// How the result is worked out, the numbers in place of the letters.
    #[must_use]
    pub fn with(&self) -> String {
        if self.formula.in_words {
            return self.text.clone();
        }
        let mut with = String::with_capacity(self.formula.template.len() + self.text.len());
        for (index, statement) in self.formula.template.split(';').enumerate() {
            with.push_str(if index > 0 { AND } else { "" });
            self.statement(statement.trim_start(), &mut with);
        }
        with
    }

    /// Each letter and its number, in the order of the formula; empty where it has one for each term.
    #[must_use]
    pub fn letters(&self) -> Vec<(&'static str, &str)> {
        let mut letters: Vec<(&'static str, &str)> = Vec::new();
        let signs = self.formula.letters().filter(|_| !self.formula.in_words);
        for number in signs.filter_map(|sign| self.number(sign, 1)) {
            if letters.iter().all(|(known, _)| *known != number.sign) {
                let start = number.put_in.start;
                let text = self.text.get(start..number.end).filter(|_| number.term == 0);
                letters.push((number.sign, text.unwrap_or_default()));
            }
        }
        letters
    }

    /// The number of a letter in a term; a term's own goes before the one that all have.
    fn number(&self, sign: &str, term: usize) -> Option<&Number> {
        let of = |term| self.numbers.iter().find(|it| it.term == term && it.sign == sign);
        if term == 0 { of(0) } else { of(term).or_else(|| of(0)) }
    }

    /// Adds how a statement's result is worked out.
    fn statement(&self, statement: &'static str, with: &mut String) {
        let mut rest = statement.split_once('=').map_or(statement, |(_, how)| how.trim_start());
        while let Some((before, (term, after))) =
            rest.split_once('[').and_then(|(before, rest)| Some((before, rest.split_once(']')?)))
        {
            let sum = before.trim_end().strip_suffix('Σ');
            let start = sum.unwrap_or(before);
            self.part(start, 0, with);
            let joint = if sum.is_some() { " + " } else { ", " };
            // A sum that stands alone needs no brackets.
            let alone = start.is_empty() && after.is_empty();
            let many = self.terms != 1 && !alone && sum.is_some();
            with.push_str(if many { "(" } else { "" });
            for own in 1..=self.terms {
                with.push_str(if own > 1 { joint } else { "" });
                self.part(term, own, with);
            }
            with.push_str(if self.terms == 0 { "0" } else { "" });
            with.push_str(if many { ")" } else { "" });
            rest = after;
        }
        self.part(rest, 0, with);
    }

    /// Adds a part of a template with the numbers of a term.
    fn part(&self, template: &str, term: usize, with: &mut String) {
        let mut rest = template;
        while let Some((before, after)) = rest.split_once('{') {
            with.push_str(before);
            let Some((sign, after)) = after.split_once('}') else { break };
            let number = self.number(sign, term);
            match number.and_then(|number| self.text.get(number.put_in.clone())) {
                None => with.push_str(sign),
                Some(text) => {
                    let parted = text.contains(' ') && after.starts_with(POWERS);
                    let brackets = text.starts_with('−') || parted;
                    with.push_str(if brackets { "(" } else { "" });
                    with.push_str(text);
                    with.push_str(if brackets { ")" } else { "" });
                }
            }
            rest = after;
        }
        with.push_str(rest);
    }
}

/// What stands between a result and its standard uncertainty, or between two results.
pub const AND: &str = ";  ";

/// What stands behind a number that is raised to a power.
const POWERS: [char; 3] = ['²', '³', '⁴'];

impl Display for Formula {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.template.split(['{', '}', '[', ']']).try_for_each(|part| f.write_str(part))
    }
}

/// Whether every letter in braces is one of [`SYMBOLS`].
const fn is_spelt(template: &[u8]) -> bool {
    let mut rest = template;
    while let [first, after @ ..] = rest {
        rest = after;
        if *first == b'{' {
            match known_start(after) {
                None => return false,
                Some(after) => rest = after,
            }
        }
    }
    true
}

/// What follows a letter of [`SYMBOLS`] and its brace.
const fn known_start(text: &[u8]) -> Option<&[u8]> {
    let mut symbols = SYMBOLS;
    while let [symbol, others @ ..] = symbols {
        symbols = others;
        if let Some([b'}', after @ ..]) = after(text, symbol.sign.as_bytes()) {
            return Some(after);
        }
    }
    None
}

/// What follows a start.
const fn after<'t>(text: &'t [u8], start: &[u8]) -> Option<&'t [u8]> {
    let (mut text, mut start) = (text, start);
    loop {
        match (text, start) {
            (rest, []) => return Some(rest),
            ([one, text_rest @ ..], [other, start_rest @ ..]) if *one == *other => {
                (text, start) = (text_rest, start_rest);
            }
            _ => return None,
        }
    }
}

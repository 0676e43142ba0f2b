//! The kinds of quantity that are written: for each, its units, their spellings, the digits shown.

use super::unit::{FOOT_M, INCH_M, KILOGRAM_FORCE_N, POUND_FORCE_N, POUND_KG};
use super::{
    Energy, Force, Length, Mass, MassDensity, Pressure, SpringRate, System, WarpStiffness, unit,
};
use std::fmt;

/// A kind of quantity: what type it is in the code, and how it is written.
///
/// Most kinds are the type itself. [`Stress`] and [`Modulus`] are both a pressure, written with
/// different care; [`Turns`] and [`Share`] are both a plain number.
///
/// ```
/// use coilnest::quantity::{Modulus, Pressure, Stress, System, unit, write};
///
/// let value = Pressure::new::<unit::megapascal>(81_370.0);
/// assert_eq!(write::<Modulus>(value, System::Metric), "81\u{202f}370 MPa");
/// assert_eq!(write::<Stress>(value, System::Metric), "81\u{202f}400 MPa");
/// ```
pub trait Kind {
    /// The type of its values.
    type Value: Copy;

    /// How it is written.
    const TABLE: &'static Table;

    /// The value of so many SI units.
    fn from_si(si: f64) -> Self::Value;

    /// The number of SI units in a value.
    fn si(value: Self::Value) -> f64;
}

/// How one kind of quantity is written: the units of both systems and the digits shown.
#[derive(PartialEq)]
pub struct Table {
    /// What the kind is called in a sentence.
    pub(crate) name: &'static str,
    /// Inch-pound units; the first is the unit of a bare number and of what is shown.
    inch: &'static [Unit],
    /// Metric units, likewise.
    metric: &'static [Unit],
    /// Significant digits shown.
    pub(crate) significant: usize,
    /// Significant digits shown of a number below a thousand.
    pub(crate) below_thousand: usize,
    /// What a number of it may be beside a decimal.
    pub(crate) numbers: Numbers,
}

impl fmt::Debug for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Table({})", self.name)
    }
}

/// What numbers a kind takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Numbers {
    /// Decimals only.
    Decimal,
    /// Also a whole and a fraction, `7 1/4`.
    Mixed,
    /// Decimals, and a bare number up to 1 is the part itself, not so many per cent.
    Part,
}

/// A kind whose text [`read`](super::read) takes. Lengths are not among them: they are
/// [readings](crate::reading::Reading), exact and with a lean.
pub trait Readable: Kind + Copy {}

/// A unit, its spellings, and its size.
#[derive(PartialEq)]
pub(crate) struct Unit {
    /// As it is shown.
    pub(crate) text: &'static str,
    /// Further spellings, folded as [`fold`] does.
    also: &'static [&'static str],
    /// One of it in SI units.
    pub(crate) si: f64,
}

impl Table {
    /// The unit that a bare number takes, and that is shown.
    pub(crate) fn own(&self, system: System) -> Option<&'static Unit> {
        match system {
            System::Inch => self.inch.first(),
            System::Metric => self.metric.first(),
        }
    }

    /// The system that a unit belongs to, where it is one alone.
    pub(crate) fn system(&self, unit: &Unit) -> Option<System> {
        match (self.inch.contains(unit), self.metric.contains(unit)) {
            (true, false) => Some(System::Inch),
            (false, true) => Some(System::Metric),
            _ => None,
        }
    }

    /// The unit that is written so.
    pub(crate) fn find(&self, written: &str) -> Option<&'static Unit> {
        let folded = fold(written);
        self.inch.iter().chain(self.metric).find(|unit| {
            !folded.is_empty()
                && (fold(unit.text) == folded || unit.also.contains(&folded.as_str()))
        })
    }

    /// The units that are understood, for a sentence: "lb, kip, N, kN or kgf".
    pub(crate) fn units(&self) -> String {
        let mut texts: Vec<&str> = Vec::new();
        for unit in self.inch.iter().chain(self.metric) {
            if !unit.text.is_empty() && !texts.contains(&unit.text) {
                texts.push(unit.text);
            }
        }
        match texts.split_last() {
            None => "a plain number".to_owned(),
            Some((only, [])) => (*only).to_owned(),
            Some((last, others)) => format!("{} or {last}", super::joined(others.iter(), ", ")),
        }
    }
}

/// The kind of quantity, if any, that has a unit written so.
pub(crate) fn owner_of(written: &str) -> Option<&'static Table> {
    [&LENGTH, &FORCE, &RATE, &STRESS, &MASS, &ENERGY, &DENSITY, &WARP, &SHARE, &TURNS]
        .into_iter()
        .find(|table| table.find(written).is_some())
}

/// Whether the case of a unit's letters says something other than what can be meant: a milli for
/// a mega or the other way round.
pub(crate) fn is_unclear(written: &str) -> bool {
    let bare: String = written.chars().filter(|c| !c.is_whitespace()).collect();
    let folded = fold(written);
    folded == "mn" || folded.starts_with("mn/") || bare.starts_with("mPa")
}

/// A unit's text without what people vary: case, spaces, the full stop of an abbreviation, raised
/// figures, a point for multiplication, "per" for a stroke.
fn fold(written: &str) -> String {
    let mut folded = String::new();
    let mut after_letter = false;
    let mut chars = written.chars().filter(|c| !c.is_whitespace()).peekable();
    while let Some(c) = chars.next() {
        let before_letter = chars.peek().is_some_and(char::is_ascii_alphabetic);
        match c {
            '.' if after_letter => {}
            '·' | '⋅' if after_letter && before_letter => {}
            '²' => folded.push('2'),
            '³' => folded.push('3'),
            '⁄' | '∕' => folded.push('/'),
            _ => folded.push(c.to_ascii_lowercase()),
        }
        after_letter = c.is_ascii_alphabetic();
    }
    let per =
        (0..folded.len()).find(|at| folded.get(*at..).is_some_and(|rest| rest.starts_with("per")));
    if let Some(at) = per {
        folded.replace_range(at..at + "per".len(), "/");
    }
    folded
}

const fn u(text: &'static str, si: f64, also: &'static [&'static str]) -> Unit {
    Unit { text, also, si }
}

static LENGTH: Table = Table {
    name: "length",
    inch: &[u("in", INCH_M, &["inch", "inches", "ins"]), u("ft", FOOT_M, &["foot", "feet"])],
    metric: &[
        u("mm", 0.001, &["millimetre", "millimetres", "millimeter", "millimeters"]),
        u("cm", 0.01, &["centimetre", "centimetres", "centimeter", "centimeters"]),
        u("m", 1.0, &["metre", "metres", "meter", "meters"]),
    ],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Decimal,
};

static FORCE: Table = Table {
    name: "force",
    inch: &[
        u("lb", POUND_FORCE_N, &["lbs", "lbf", "lbsf", "pound", "pounds"]),
        u("kip", 1000.0 * POUND_FORCE_N, &["kips", "klb", "klbf"]),
    ],
    metric: &[
        u("N", 1.0, &["newton", "newtons"]),
        u("kN", 1000.0, &["kilonewton", "kilonewtons"]),
        u("kgf", KILOGRAM_FORCE_N, &["kg", "kgs", "kp"]),
    ],
    significant: 4,
    below_thousand: 3,
    numbers: Numbers::Decimal,
};

static RATE: Table = Table {
    name: "rate",
    inch: &[u(
        "lb/in",
        POUND_FORCE_N / INCH_M,
        &["lbs/in", "lbf/in", "lb/inch", "lbs/inch", "lbf/inch", "pounds/inch"],
    )],
    metric: &[
        u("N/mm", 1000.0, &[]),
        u("kN/m", 1000.0, &[]),
        u("N/m", 1.0, &[]),
        u("kN/mm", 1.0e6, &[]),
        u("kgf/mm", 1000.0 * KILOGRAM_FORCE_N, &["kg/mm"]),
    ],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Decimal,
};

const PSI_PA: f64 = POUND_FORCE_N / (INCH_M * INCH_M);

const PRESSURES_INCH: &[Unit] = &[
    u("psi", PSI_PA, &["lb/in2", "lbf/in2", "lbs/in2", "lb/sqin", "lbf/sqin"]),
    u("ksi", 1.0e3 * PSI_PA, &["kpsi"]),
    u("Mpsi", 1.0e6 * PSI_PA, &["msi"]),
];

const PRESSURES_METRIC: &[Unit] = &[
    u("MPa", 1.0e6, &[]),
    u("N/mm²", 1.0e6, &[]),
    u("GPa", 1.0e9, &[]),
    u("kN/mm²", 1.0e9, &[]),
    u("kgf/mm²", 1.0e6 * KILOGRAM_FORCE_N, &["kg/mm2"]),
];

static STRESS: Table = Table {
    name: "stress",
    inch: PRESSURES_INCH,
    metric: PRESSURES_METRIC,
    significant: 3,
    below_thousand: 3,
    numbers: Numbers::Decimal,
};

static MODULUS: Table = Table {
    name: "modulus",
    inch: PRESSURES_INCH,
    metric: PRESSURES_METRIC,
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Decimal,
};

static MASS: Table = Table {
    name: "mass",
    inch: &[u("lb", POUND_KG, &["lbs", "pound", "pounds"])],
    metric: &[u("kg", 1.0, &["kilogram", "kilograms"])],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Decimal,
};

static DENSITY: Table = Table {
    name: "density",
    inch: &[u("lb/in³", POUND_KG / (INCH_M * INCH_M * INCH_M), &[])],
    metric: &[u("kg/m³", 1.0, &[])],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Decimal,
};

static ENERGY: Table = Table {
    name: "energy",
    inch: &[u("ft·lb", POUND_FORCE_N * FOOT_M, &["ftlbf", "ftlbs"])],
    metric: &[u("J", 1.0, &["joule", "joules"])],
    significant: 3,
    below_thousand: 3,
    numbers: Numbers::Decimal,
};

static WARP: Table = Table {
    name: "warp stiffness",
    inch: &[u("lb·in³", POUND_FORCE_N * INCH_M * INCH_M * INCH_M, &["lbfin3", "lbsin3"])],
    metric: &[u("N·m³", 1.0, &[]), u("kN·m³", 1000.0, &[])],
    significant: 3,
    below_thousand: 3,
    numbers: Numbers::Decimal,
};

static TURNS: Table = Table {
    name: "number of turns",
    inch: &[u("", 1.0, &["turn", "turns", "coil", "coils"])],
    metric: &[u("", 1.0, &["turn", "turns", "coil", "coils"])],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Mixed,
};

static SHARE: Table = Table {
    name: "share",
    inch: &[u("%", 0.01, &["/cent"])],
    metric: &[u("%", 0.01, &["/cent"])],
    significant: 4,
    below_thousand: 4,
    numbers: Numbers::Part,
};

impl Readable for Force {}
impl Readable for SpringRate {}
impl Readable for Stress {}
impl Readable for Modulus {}
impl Readable for WarpStiffness {}
impl Readable for Turns {}
impl Readable for Share {}

/// A stress, shown to three digits.
#[derive(Clone, Copy, Debug)]
pub struct Stress;

/// A modulus of elasticity, shown to four digits.
#[derive(Clone, Copy, Debug)]
pub struct Modulus;

/// A number of turns: a decimal, or a whole and a fraction (`7 1/4`).
#[derive(Clone, Copy, Debug)]
pub struct Turns;

/// A part of a whole, written in per cent (`95 %` is 0.95).
#[derive(Clone, Copy, Debug)]
pub struct Share;

macro_rules! kinds {
    ($($kind:ty: $value:ty, $si:ty, $table:ident;)+) => {$(
        impl Kind for $kind {
            type Value = $value;
            const TABLE: &'static Table = &$table;

            fn from_si(si: f64) -> $value {
                <$value>::new::<$si>(si)
            }

            fn si(value: $value) -> f64 {
                value.value
            }
        }
    )+};
}

kinds! {
    Length: Length, unit::meter, LENGTH;
    Force: Force, unit::newton, FORCE;
    SpringRate: SpringRate, unit::newton_per_meter, RATE;
    Stress: Pressure, unit::pascal, STRESS;
    Modulus: Pressure, unit::pascal, MODULUS;
    Mass: Mass, unit::kilogram, MASS;
    MassDensity: MassDensity, unit::kilogram_per_cubic_meter, DENSITY;
    Energy: Energy, unit::joule, ENERGY;
}

impl Kind for WarpStiffness {
    type Value = WarpStiffness;
    const TABLE: &'static Table = &WARP;

    fn from_si(value: f64) -> WarpStiffness {
        super::si(value)
    }

    fn si(value: WarpStiffness) -> f64 {
        value.value
    }
}

impl Kind for Turns {
    type Value = f64;
    const TABLE: &'static Table = &TURNS;

    fn from_si(si: f64) -> f64 {
        si
    }

    fn si(value: f64) -> f64 {
        value
    }
}

impl Kind for Share {
    type Value = f64;
    const TABLE: &'static Table = &SHARE;

    fn from_si(si: f64) -> f64 {
        si
    }

    fn si(value: f64) -> f64 {
        value
    }
}

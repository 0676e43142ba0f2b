//! Steels, sizes of bar and wire, tape classes and tolerances for [`coilnest`], each number with its source.
//!
//! The rows stand in TOML files beside this crate, one file for each source; its `README.md` says
//! what each covers. The build reads them, refuses a row without source, place, unit or how it is
//! known, and makes the rest constants. A row that [`Steel::new`] refuses does not compile.
//!
//! # Example
//! ```
//! use coilnest::quantity::unit::gigapascal;
//! use coilnest_tables::TABLES;
//!
//! let steel = TABLES.steel("en-10089").ok_or("no such row")?;
//! let modulus = steel.shear_modulus();
//! assert!((modulus.value.get::<gigapascal>() - 78.5).abs() < 1e-9);
//! assert_eq!(
//!     modulus.source.to_string(),
//!     "EN 13906-1:2013, table of materials, EN 10089 steels at 20 °C (from memory)"
//! );
//! assert_eq!(steel.row(), Some("steels/en-13906-1.toml, row en-10089"));
//! # Ok::<(), &str>(())
//! ```
//!
//! Strength goes by the size of the bar; where no number is known well enough, the answer says where
//! to look it up:
//!
//! ```
//! use coilnest::material::Presetting;
//! use coilnest::quantity::{Length, System, unit::{inch, megapascal, millimeter}};
//! use coilnest::say::Say;
//! use coilnest_tables::TABLES;
//!
//! let music = TABLES.steel("shigley-music-a228-over-0.125").ok_or("no such row")?;
//! let bar = Length::new::<millimeter>(5.0);
//! assert!((music.strength(bar)?.value.get::<megapascal>() - 1750.8).abs() < 0.1);
//! let allowed = music.allowable_static(bar, Presetting::AsWound)?;
//! assert!((allowed.stress.value.get::<megapascal>() - 787.8).abs() < 0.1); // 45 %
//!
//! let refusal = music.strength(Length::new::<inch>(0.75)).unwrap_err();
//! assert_eq!(
//!     refusal.say(System::Inch).to_string(),
//!     "a bar of 3/4 in lies outside 0.004 in to 0.256 in, the sizes for which a strength of music \
//!      wire A228 (Shigley) is held here; look it up in ASTM A228"
//! );
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

use coilnest::material::{Against, Law, MaterialError, RuleError, Shares, Span, Steel, Strength};
use coilnest::measured::{ErrorRule, TapeClass};
use coilnest::quantity::{Length, MassDensity, Pressure, System};
use coilnest::sizing::{Series, SeriesError};
use coilnest::source::{Known, Source, Sourced};
use coilnest::tables::Tables;
use coilnest::tolerance::DiameterBand;
use core::fmt;
use core::marker::PhantomData;

include!(concat!(env!("OUT_DIR"), "/constants.rs"));

/// All tables, as an assessment takes them.
pub const TABLES: Tables<'static> = {
    let mut tables = TAPE_TABLES;
    (tables.steels, tables.diameters, tables.sizes) = (STEELS, DIAMETERS, SIZES);
    tables
};

/// The tables of what asks for no steel.
pub const TAPE_TABLES: Tables<'static> = {
    let mut tables = Tables::NONE;
    tables.tape_classes = TAPE_CLASSES;
    tables
};

/// Where a row stands, for whoever wants to read it there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// The row's id, which a job file may name.
    pub id: &'static str,
    /// Its file, from the folder of this crate.
    pub file: &'static str,
}

/// As [`Steel::row`] has it: `steels/en-13906-1.toml, row en-10089`.
impl fmt::Display for Row {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, row {}", self.file, self.id)
    }
}

/// The row of that id, of whatever subject.
///
/// ```
/// let row = coilnest_tables::row("shigley-a228").ok_or("no such row")?;
/// assert_eq!(row.to_string(), "steels/shigley-10.toml, row shigley-a228");
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn row(id: &str) -> Option<Row> {
    ROWS.iter().find(|row| row.id == id).copied()
}

/// The strength of that id: what one authority says of one steel.
///
/// ```
/// use coilnest::quantity::{Length, unit::{megapascal, millimeter}};
///
/// let strength = coilnest_tables::strength("norton-a229").ok_or("no such row")?;
/// let tensile = strength.tensile(Length::new::<millimeter>(15.0))?;
/// assert!((tensile.value.get::<megapascal>() - 1114.7).abs() < 0.1); // 1831.2 / 15^0.1833
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn strength(id: &str) -> Option<&'static Strength> {
    STRENGTHS.iter().find(|strength| strength.id() == id)
}

/// The sizes of that id: what one authority lists.
///
/// ```
/// let series = coilnest_tables::sizes("iso-3-r20").ok_or("no such row")?;
/// assert_eq!(series.source().to_string(), "ISO 3:1973, series R 20 (from memory)");
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn sizes(id: &str) -> Option<&'static Series> {
    SIZES.iter().find(|series| series.id() == id)
}

/// One of each unit of the tables in SI.
mod si {
    use coilnest::quantity::unit::{FOOT_M, INCH_M, POUND_FORCE_N, POUND_KG};

    pub(super) const GIGAPASCAL: f64 = 1e9;
    pub(super) const NEWTON_PER_MM2: f64 = 1e6;
    pub(super) const PSI: f64 = POUND_FORCE_N / (INCH_M * INCH_M);
    pub(super) const MILLIMETRE: f64 = 1e-3;
    pub(super) const INCH: f64 = INCH_M;
    pub(super) const FOOT: f64 = FOOT_M;
    pub(super) const KG_PER_DM3: f64 = 1e3;
    pub(super) const LB_PER_IN3: f64 = POUND_KG / (INCH_M * INCH_M * INCH_M);
}

const fn pressure(value: f64) -> Pressure {
    Pressure { dimension: PhantomData, units: PhantomData, value }
}

const fn density(value: f64) -> MassDensity {
    MassDensity { dimension: PhantomData, units: PhantomData, value }
}

const fn length(value: f64) -> Length {
    Length { dimension: PhantomData, units: PhantomData, value }
}

#[expect(
    clippy::panic,
    reason = "runs while this crate is compiled: a row that is no material does not build"
)]
const fn accepted(steel: &Result<Steel, MaterialError>) -> Steel {
    match steel {
        Ok(steel) => *steel,
        Err(MaterialError::Poisson { .. }) => {
            panic!("these moduli give no Poisson's ratio from 0 to 0.5")
        }
        Err(_) => panic!("a modulus that is not above zero"),
    }
}

#[expect(
    clippy::panic,
    reason = "runs while this crate is compiled: a row that is no strength does not build"
)]
const fn ruled<T: Copy>(rule: Result<T, RuleError>) -> T {
    match rule {
        Ok(rule) => rule,
        Err(RuleError::Sizes) => panic!("sizes that do not rise from above zero"),
        Err(RuleError::Law) => panic!("a strength that does not fall, or falls to nothing"),
        Err(RuleError::Gap) => panic!("a span that does not begin where the one before it ends"),
        Err(_) => panic!("a share of the tensile strength that is not between 0 and 1"),
    }
}

#[expect(
    clippy::panic,
    reason = "runs while this crate is compiled: sizes that do not rise do not build"
)]
const fn listed(series: Result<Series, SeriesError>) -> Series {
    match series {
        Ok(series) => series,
        Err(_) => panic!("sizes that do not rise from above zero"),
    }
}

//! Steels and tape classes for [`coilnest`], each number with its source.
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
//! # Ok::<(), &str>(())
//! ```

use coilnest::material::{MaterialError, Steel};
use coilnest::measured::{ErrorRule, TapeClass};
use coilnest::quantity::{Length, MassDensity, Pressure};
use coilnest::source::{Known, Source, Sourced};
use coilnest::tables::Tables;
use core::marker::PhantomData;

include!(concat!(env!("OUT_DIR"), "/constants.rs"));

/// All tables, as an assessment takes them.
pub const TABLES: Tables<'static> = Tables { steels: STEELS, tape_classes: TAPE_CLASSES };

/// Where a row stands, for whoever wants to read it there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// The row's id, which a job file may name.
    pub id: &'static str,
    /// Its file, from the folder of this crate.
    pub file: &'static str,
}

/// One of each unit of the tables in SI.
mod si {
    use coilnest::quantity::unit::{FOOT_M, INCH_M, POUND_FORCE_N};

    pub(super) const GIGAPASCAL: f64 = 1e9;
    pub(super) const NEWTON_PER_MM2: f64 = 1e6;
    pub(super) const PSI: f64 = POUND_FORCE_N / (INCH_M * INCH_M);
    pub(super) const MILLIMETRE: f64 = 1e-3;
    pub(super) const INCH: f64 = INCH_M;
    pub(super) const FOOT: f64 = FOOT_M;
    pub(super) const KG_PER_M3: f64 = 1.0;
    pub(super) const KG_PER_DM3: f64 = 1e3;
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

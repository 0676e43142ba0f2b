//! The reference data that an assessment is handed: this crate has none of its own.

use crate::material::Steel;
use crate::measured::TapeClass;
use crate::sizing::Series;
use crate::tolerance::DiameterBand;

/// Steels, sizes and tape classes to look names up in.
///
/// # Example
/// ```
/// use coilnest::measured::TapeClass;
/// use coilnest::tables::Tables;
///
/// const CLASSES: &[TapeClass] = &[];
/// const OF_THE_SHOP: Tables<'_> = {
///     let mut tables = Tables::NONE;
///     tables.tape_classes = CLASSES;
///     tables
/// };
/// assert!(OF_THE_SHOP.tape_class("II").is_none());
/// ```
#[derive(Clone, Copy, Debug, Default)]
#[non_exhaustive]
pub struct Tables<'a> {
    /// Steels; the first is taken, and said to be, where a job names none.
    pub steels: &'a [Steel],
    /// By how much the diameter of a new cold-wound coil may be off.
    pub diameters: &'a [DiameterBand],
    /// Sizes of bar and wire to choose from, where a job lists none.
    pub sizes: &'a [Series],
    /// Tape classes; of those usual in its system the widest is taken, and said to be, where a job names
    /// none.
    pub tape_classes: &'a [TapeClass],
}

impl Tables<'_> {
    /// Tables without a row, to be filled.
    pub const NONE: Self = Self { steels: &[], diameters: &[], sizes: &[], tape_classes: &[] };

    /// The steel of that name in a job file.
    #[must_use]
    pub fn steel(&self, id: &str) -> Option<&Steel> {
        self.steels.iter().find(|steel| steel.id() == id)
    }

    /// The list of sizes of that name.
    #[must_use]
    pub fn series(&self, id: &str) -> Option<&Series> {
        self.sizes.iter().find(|series| series.id() == id)
    }

    /// The tape class of that name in a job file.
    #[must_use]
    pub fn tape_class(&self, id: &str) -> Option<&TapeClass> {
        self.tape_classes.iter().find(|class| class.id().eq_ignore_ascii_case(id))
    }
}

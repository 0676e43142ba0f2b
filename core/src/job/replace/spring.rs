//! A drawing as a replacement knows it: every figure that it gives, with its tolerance.

use super::quoted::Quoted;
use super::waived::{self, Waived};
use crate::coil::buckling::Seating;
use crate::drawing as core_drawing;
use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::entry::Entry;
use crate::job::input::{Drawing, Job};
use crate::job::problem::Path;
use crate::quantity::{Force, Length};
use crate::replacement::AllowedRange;

/// What is known of one spring.
#[derive(Clone, Debug)]
pub(super) struct Spring {
    pub(super) id: String,
    pub(super) name: String,
    /// Where its drawing stands.
    pub(super) at: Path,
    /// What its drawing says, tolerances and all.
    pub(super) drawing: core_drawing::Drawing,
    /// Limits on its free height by its book.
    pub(super) free_limits: Option<AllowedRange<Length>>,
    /// The loads between which it works.
    pub(super) loads: Option<(Force, Force)>,
    pub(super) seating: Option<Seating>,
    /// Whether its turns in all are given, and not only those that deflect.
    pub(super) total_told: bool,
    /// Requirements that it alone need not meet.
    pub(super) waived: Waived,
    /// Its figures as they are written in the units of the other system.
    pub(super) quoted: Quoted,
}

/// The drawings of a job, those that are none left out.
pub(super) fn all(context: &mut Context<'_>, job: &Job) -> Vec<Spring> {
    let at = Path::of("coils");
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let given = drawings.iter().map(Entry::given).enumerate();
    given
        .filter_map(|(index, drawing)| Some(Spring::read(context, &at.item(index), drawing?)))
        .collect()
}

impl Spring {
    /// Reads a drawing.
    pub(super) fn read(context: &mut Context<'_>, at: &Path, drawing: &Drawing) -> Self {
        let coil = Coil::read(context, at, 0, drawing);
        let written = |entry: &Entry<_>| !Entry::written(entry).is_empty();
        let limits = coil.limits;
        Self {
            id: coil.id,
            name: if coil.name.is_empty() { at.text().to_owned() } else { coil.name },
            at: at.clone(),
            free_limits: limits
                .map(|limits| AllowedRange { least: limits.least(), most: limits.most() }),
            loads: coil.duty,
            seating: coil.seating,
            total_told: written(&drawing.turns)
                || written(&drawing.dead_turns)
                || coil.drawing.ends.is_some(),
            waived: waived::read(context, at, drawing.waived()),
            drawing: coil.drawing,
            quoted: Quoted::of(context, drawing),
        }
    }
}

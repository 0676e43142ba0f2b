//! A drawing as a replacement knows it: every figure that it gives, with its tolerance.

use crate::bounds;
use crate::coil::Coiling;
use crate::coil::buckling::Seating;
use crate::job::desk::Desk;
use crate::job::drawing::{self, Drawn};
use crate::job::entry::Entry;
use crate::job::input::{Drawing, Job};
use crate::job::problem::Path;
use crate::job::service::{self, HalfWidths};
use crate::material::Steel;
use crate::propagation::Across;
use crate::quantity::{Force, Length};
use crate::replacement::{Limits, Particulars, Range};
use core::ops::{Add, Sub};

/// What is known of one spring.
#[derive(Clone, Debug)]
pub(super) struct Spring {
    pub(super) id: String,
    pub(super) name: String,
    /// Where its drawing stands.
    pub(super) at: Path,
    /// As it may be made, within its tolerances.
    pub(super) made: Particulars,
    /// As it is meant to be.
    pub(super) nominal: Particulars,
    /// Limits on its free height by its book.
    pub(super) free_limits: Option<Limits<Length>>,
    /// The loads between which it works.
    pub(super) loads: Option<(Force, Force)>,
    pub(super) seating: Option<Seating>,
    /// Whether its turns in all are told, and not only those that deflect.
    pub(super) total_told: bool,
}

/// The drawings of a job, those that are none left out.
pub(super) fn all(desk: &mut Desk<'_>, job: &Job) -> Vec<Spring> {
    let at = Path::of("coils");
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let given = drawings.iter().map(Entry::given).enumerate();
    given
        .filter_map(|(index, drawing)| Some(Spring::read(desk, &at.item(index), drawing?)))
        .collect()
}

impl Spring {
    /// Reads a drawing.
    pub(super) fn read(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Self {
        let mut reading = Desk::new(desk.tables, desk.pen);
        let drawn = drawing::assess(&mut reading, at, 0, drawing);
        let service = service::read(&mut reading, at, drawing);
        desk.take(reading);
        let written = |entry: &Entry<_>| !Entry::written(entry).is_empty();
        let mut made = as_drawn(desk, at, drawing, &drawn);
        let nominal = Particulars {
            presetting: written(&drawing.set_removed).then_some(service.presetting),
            surface: drawing
                .duty
                .given()
                .is_some_and(|duty| written(&duty.surface))
                .then_some(service.surface),
            ..made.clone()
        };
        made.clone_from(&nominal);
        let facts = &drawn.facts;
        tolerate(&mut made, &service.tolerances);
        let limits = facts.limits;
        if let (Some(free), Some(limits), None) = (facts.free, limits, service.tolerances.free) {
            let (least, most) = (limits.least().unwrap_or(free), limits.most().unwrap_or(free));
            made.free = Range::around(free, free - least, most - free).ok().or(made.free);
        }
        Self {
            id: facts.id.clone(),
            name: if facts.name.is_empty() { at.text().to_owned() } else { facts.name.clone() },
            at: at.clone(),
            made,
            nominal,
            free_limits: limits.map(|limits| Limits { least: limits.least(), most: limits.most() }),
            loads: service.loads,
            seating: written(&drawing.seating).then_some(service.seating),
            total_told: written(&drawing.turns)
                || written(&drawing.dead_turns)
                || facts.ends.is_some(),
        }
    }
}

/// The figures that a drawing gives, also where others are missing that would make them of use.
fn as_drawn(desk: &Desk<'_>, at: &Path, drawing: &Drawing, drawn: &Drawn) -> Particulars {
    // What is wrong with them is told already.
    let mut again = Desk::new(desk.tables, desk.pen);
    let facts = &drawn.facts;
    let bar = again.length(at, "bar", &drawing.bar, &bounds::BAR);
    let sizes = [
        (Across::Outside, &drawing.outside),
        (Across::Mean, &drawing.mean),
        (Across::Inside, &drawing.inside),
    ];
    let diameter = sizes.into_iter().find_map(|(across, entry)| {
        let taken = drawn.across.is_none_or(|taken| taken == across);
        let size = again.length(at, "", entry, &bounds::COIL_DIAMETER).filter(|_| taken)?;
        Some((across, Range::exact(size)))
    });
    let makes_no_coil = facts.diameters.is_none() && bar.is_some();
    let total = again.quantity(at, "turns", &drawing.turns, &bounds::TURNS);
    let alone = facts.ends.is_none() && drawing.dead_turns.written().is_empty();
    let total = facts.turns.map(|turns| turns.total()).or(total.filter(|_| alone));
    // The first row stands for a steel that is not known: it lends its modulus, but names nothing.
    let unknown = desk.tables.steels.first().map(Steel::id);
    let named = desk.tables.steel(drawing.steel.written()).copied();
    let named = named.filter(|steel| Some(steel.id()) != unknown);
    let exact = |length: Option<Length>| length.map(Range::exact);
    Particulars {
        bar: exact(bar),
        diameter: diameter.filter(|_| !makes_no_coil),
        total_turns: total.map(Range::exact),
        dead_turns: facts.turns.map(|turns| Range::exact(turns.dead())),
        ends: facts.ends,
        hand: facts.hand,
        coiling: facts.diameters.map(|coil| Coiling::of(coil, facts.ends)),
        free: exact(facts.free),
        solid: exact(again.length(at, "solid", &drawing.solid, &bounds::SOLID_HEIGHT)),
        rate: again.quantity(at, "rate", &drawing.rate, &bounds::RATE).map(Range::exact),
        shear_modulus: drawn.moduli.as_ref().map(|moduli| Range::exact(moduli.shear)),
        youngs_modulus: drawn.moduli.as_ref().and_then(|moduli| moduli.youngs),
        steel: named,
        ..Particulars::default()
    }
}

fn tolerate(made: &mut Particulars, by: &HalfWidths) {
    made.bar = made.bar.map(|bar| wide(bar, by.bar));
    made.diameter = made.diameter.map(|(across, size)| (across, wide(size, by.diameter)));
    made.total_turns = made.total_turns.map(|turns| wide(turns, by.turns));
    made.free = made.free.map(|free| wide(free, by.free));
}

fn wide<Q>(range: Range<Q>, by: Option<Q>) -> Range<Q>
where
    Q: Copy + core::fmt::Debug + PartialOrd + Add<Output = Q> + Sub<Output = Q>,
{
    let around = by.and_then(|by| Range::around(range.nominal(), by, by).ok());
    around.unwrap_or(range)
}

//! A drawing as a replacement knows it: every figure that it gives, with its tolerance.

use super::quoted::Quoted;
use super::waived::{self, Waived};
use crate::bounds;
use crate::coil::Coiling;
use crate::coil::buckling::Seating;
use crate::coil::ends::DeadTurnsDoubt;
use crate::drawing::{self as core_drawing, Given};
use crate::job::desk::Desk;
use crate::job::drawing::{self, Drawn};
use crate::job::entry::Entry;
use crate::job::input::{Drawing, Job};
use crate::job::problem::Path;
use crate::job::service::{self, Service};
use crate::job::tolerance::Tolerance;
use crate::material::Steel;
use crate::propagation::Across;
use crate::quantity::{Force, Length, Pressure};
use crate::replacement::Limits;

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
    pub(super) free_limits: Option<Limits<Length>>,
    /// The loads between which it works.
    pub(super) loads: Option<(Force, Force)>,
    pub(super) seating: Option<Seating>,
    /// Whether its turns in all are told, and not only those that deflect.
    pub(super) total_told: bool,
    /// Requirements that it alone need not meet.
    pub(super) waived: Waived,
    /// Its figures as they are written in the units of the other system.
    pub(super) quoted: Quoted,
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

/// Says what is wrong with a drawing, of which nothing is reckoned yet.
pub(super) fn told(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) {
    let mut reading = Desk::new(desk.tables, desk.pen);
    drawing::assess(&mut reading, at, 0, drawing);
    service::read(&mut reading, at, drawing);
    desk.take(reading);
}

impl Spring {
    /// Reads a drawing.
    pub(super) fn read(desk: &mut Desk<'_>, at: &Path, drawing: &Drawing) -> Self {
        let mut reading = Desk::new(desk.tables, desk.pen);
        let drawn = drawing::assess(&mut reading, at, 0, drawing);
        let service = service::read(&mut reading, at, drawing);
        desk.take(reading);
        let written = |entry: &Entry<_>| !Entry::written(entry).is_empty();
        let mut known = as_drawn(desk, at, drawing, &drawn, &service);
        known.presetting = written(&drawing.set_removed).then_some(service.presetting);
        known.surface = drawing
            .duty
            .given()
            .is_some_and(|duty| written(&duty.surface))
            .then_some(service.surface);
        let facts = &drawn.facts;
        let limits = facts.limits;
        if let (Some(free), Some(limits), None) = (facts.free, limits, service.tolerances.free) {
            let given = Given::between(free, limits.least(), limits.most()).ok();
            known.free = given.or(known.free);
        }
        Self {
            id: facts.id.clone(),
            name: if facts.name.is_empty() { at.text().to_owned() } else { facts.name.clone() },
            at: at.clone(),
            drawing: known,
            free_limits: limits.map(|limits| Limits { least: limits.least(), most: limits.most() }),
            loads: service.loads,
            seating: written(&drawing.seating).then_some(service.seating),
            total_told: written(&drawing.turns)
                || written(&drawing.dead_turns)
                || facts.ends.is_some(),
            waived: waived::read(desk, &at.field("waived"), &drawing.waived),
            quoted: Quoted::of(desk, drawing),
        }
    }
}

/// The figures that a drawing gives, also where others are missing that would make them of use.
fn as_drawn(
    desk: &Desk<'_>,
    at: &Path,
    drawing: &Drawing,
    drawn: &Drawn,
    service: &Service,
) -> core_drawing::Drawing {
    // What is wrong with them is said already.
    let mut again = Desk::new(desk.tables, desk.pen);
    let (facts, within) = (&drawn.facts, &service.tolerances);
    let bar = again.length(at, "bar", &drawing.bar, &bounds::BAR);
    let sizes = [
        (Across::Outside, &drawing.outside),
        (Across::Mean, &drawing.mean),
        (Across::Inside, &drawing.inside),
    ];
    let diameter = sizes.into_iter().find_map(|(across, entry)| {
        let taken = drawn.across.is_none_or(|taken| taken == across);
        let size = again.length(at, "", entry, &bounds::COIL_DIAMETER).filter(|_| taken)?;
        Some((across, Tolerance::given(within.diameter, size)))
    });
    let makes_no_coil = facts.diameters.is_none() && bar.is_some();
    let total = again.quantity(at, "turns", &drawing.turns, &bounds::TURNS);
    let alone = facts.ends.is_none() && drawing.dead_turns.written().is_empty();
    let total = facts.turns.map(|turns| turns.total()).or(total.filter(|_| alone));
    let dead = |turns: f64| {
        let doubt = drawn.dead_turns.map_or(0.0, DeadTurnsDoubt::half_width);
        Given::around(turns, doubt.min(turns), doubt).unwrap_or(Given::exact(turns))
    };
    // Those of its ends are no statement of their own.
    let dead_told =
        !drawing.dead_turns.written().is_empty() || !drawing.active_turns.written().is_empty();
    // The first row stands for a steel that is not known: it lends its modulus, but names nothing.
    let unknown = desk.tables.steels.first().map(Steel::id);
    let named = desk.tables.steel(drawing.steel.written()).copied();
    let named = named.filter(|steel| Some(steel.id()) != unknown);
    let length = |tolerance, size: Option<Length>| Some(Tolerance::given(tolerance, size?));
    let solid = again.length(at, "solid", &drawing.solid, &bounds::SOLID_HEIGHT);
    let rate = again.quantity(at, "rate", &drawing.rate, &bounds::RATE);
    let moduli = drawn.moduli.as_ref();
    core_drawing::Drawing {
        bar: length(within.bar, bar),
        diameter: diameter.filter(|_| !makes_no_coil),
        total_turns: total.map(|total| Tolerance::given(within.turns, total)),
        dead_turns: facts.turns.filter(|_| dead_told).map(|turns| dead(turns.dead())),
        ends: facts.ends,
        hand: facts.hand,
        coiling: facts.diameters.map(|coil| Coiling::of(coil, facts.ends)),
        free: length(within.free, facts.free),
        solid: length(within.solid, solid),
        rate: rate.map(|rate| Tolerance::given(within.rate, rate)),
        loads: service.stated.clone(),
        shear_modulus: moduli.map(|moduli| within_doubt(moduli.shear, moduli.doubt)),
        youngs_modulus: moduli.and_then(|moduli| moduli.youngs),
        steel: named,
        ..core_drawing::Drawing::default()
    }
}

/// A modulus within its doubt: one standard uncertainty, relative, is a uniform half-width over √3.
fn within_doubt(modulus: Pressure, doubt: f64) -> Given<Pressure> {
    let half_width = modulus * (doubt * libm::sqrt(3.0));
    Given::around(modulus, half_width, half_width).unwrap_or(Given::exact(modulus))
}

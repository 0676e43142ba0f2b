//! Where the original stands: its nest, and the frame on that nest and others.

use super::spring::Spring;
use super::{Reach, ReplacementSpec, path};
use crate::drawing::Drawing;
use crate::frame::{Frame, FrameError, Weight};
use crate::job::context::Context;
use crate::job::drafted::{Bench, Drafted};
use crate::job::figures::{Format, text};
use crate::job::frame::{self, FrameSpec, LoadedFrame};
use crate::job::input::Job;
use crate::job::nest::{ComputedNest, Seated as JobSeat};
use crate::job::stack;
use crate::order::InOrder;
use crate::quantity::Length;
use crate::replacement::{Around, Seated, UnderFrame};

/// The nest that the original stands in.
pub(super) struct NestAround {
    pub(super) nest: String,
    pub(super) around: Around,
    /// The coils by name, the widest first, none in the place of the original.
    pub(super) names: Vec<Option<String>>,
    /// The drawings of the coils around it and within it.
    pub(super) outer: Vec<crate::job::problem::Path>,
    pub(super) inner: Vec<crate::job::problem::Path>,
    /// Whether the readings of its coils make it stand otherwise than by the drawings.
    pub(super) read: bool,
    /// Its coils that were not found good, and why.
    pub(super) not_good: Vec<String>,
    /// Its height at work, where the job gives it.
    pub(super) height: Option<Length>,
}

/// The nest that is named, else the first that holds the original.
pub(super) fn standing(
    context: &mut Context<'_>,
    bench: &Bench<'_>,
    written: &ReplacementSpec,
    springs: &[Spring],
    original: &Spring,
) -> Option<NestAround> {
    let holds = |nest: &&Drafted<'_>| {
        places(&nest.seats, original).any(|place| meant(written, nest, place))
    };
    let Some(name) = &written.nest else {
        let nest = bench.nests.iter().find(holds)?;
        return Some(around(context, nest, written, springs, original));
    };
    let nest = bench.nests.iter().find(|nest| nest.id == *name)?;
    if !holds(&nest) {
        let text = text!(
            "No seat of {name} holds {}: what becomes of the nest cannot be worked out.",
            original.name
        );
        context.note(&path().field("nest"), "swap-unknown", text);
        return None;
    }
    Some(around(context, nest, written, springs, original))
}

/// Whether a seat is among those that are to be replaced: all, unless one of one nest is named.
fn meant(written: &ReplacementSpec, nest: &Drafted<'_>, place: usize) -> bool {
    written.seat.is_none_or(|seat| written.nest.as_ref() == Some(&nest.id) && place == seat)
}

/// The seats that hold the original.
fn places<'s>(seats: &'s [JobSeat], original: &'s Spring) -> impl Iterator<Item = usize> + 's {
    let held = move |seat: &JobSeat| !original.id.is_empty() && seat.coil.id == original.id;
    seats.iter().enumerate().filter_map(move |(place, seat)| held(seat).then_some(place))
}

fn around(
    context: &Context<'_>,
    nest: &Drafted<'_>,
    written: &ReplacementSpec,
    springs: &[Spring],
    original: &Spring,
) -> NestAround {
    let own = places(&nest.seats, original).find(|place| meant(written, nest, *place));
    let mut seats: Vec<(usize, &JobSeat)> = nest.seats.iter().enumerate().collect();
    // The widest first, where all are known; else as they stand in the job.
    let mean = |seat: &JobSeat| seat.coil.diameters().map(|coil| coil.mean().value);
    if seats.iter().all(|(_, seat)| mean(seat).is_some()) {
        seats.put_in_order(|(_, one), (_, other)| {
            mean(other).unwrap_or_default().total_cmp(&mean(one).unwrap_or_default())
        });
    }
    let mut found = NestAround {
        nest: nest.id.clone(),
        around: Around::default(),
        names: Vec::new(),
        outer: Vec::new(),
        inner: Vec::new(),
        read: nest.seats.iter().any(|seat| seat.standing.free != seat.coil.free()),
        not_good: nest.seats.iter().filter_map(JobSeat::not_good).collect(),
        height: None,
    };
    let mut past = false;
    for (place, seat) in seats {
        if Some(place) == own {
            found.around.raise = seat.raise;
            found.names.push(None);
            past = true;
            continue;
        }
        let spring = springs.iter().find(|spring| spring.id == seat.coil.id);
        let nominal = spring.map_or_else(Drawing::default, |spring| spring.drawing.clone());
        let at = spring.map_or_else(|| nest.at.clone(), |spring| spring.at.clone());
        let seated = Seated { spring: nominal, raise: seat.raise };
        found.names.push(Some(seat.coil.name.clone()));
        if past {
            found.around.inner.push(seated);
            found.inner.push(at);
        } else {
            found.around.outer.push(seated);
            found.outer.push(at);
        }
    }
    let entry = nest.entry;
    found.height = entry.working_height().value(context.system());
    if found.height.is_none() {
        found.around.load = entry.working_load().value(context.system());
    }
    found
}

/// The frame of a job, where it stands and has what is replaced under it.
pub(super) struct FrameAround {
    frame: Frame,
    weight: Weight,
    /// The seats of the original, by support and place.
    coils: Vec<(usize, usize)>,
    /// The nests that are replaced as a whole, by support.
    nests: Vec<usize>,
    /// Coils under it that were not found good, and why.
    pub(super) not_good: Vec<String>,
    written: FrameSpec,
}

impl FrameAround {
    /// Why the frame does not stand with a candidate.
    pub(super) fn refused(&self, format: Format, error: &FrameError) -> String {
        self.written.refused(format, &frame::path(), error).message
    }

    /// With the original in its seats.
    pub(super) fn coils(&self) -> Option<UnderFrame> {
        self.under(&self.coils)
    }

    /// With the nests that are replaced.
    pub(super) fn nests(&self) -> Option<UnderFrame<usize>> {
        self.under(&self.nests)
    }

    fn under<Replaced: Clone>(&self, replaced: &[Replaced]) -> Option<UnderFrame<Replaced>> {
        (!replaced.is_empty()).then(|| UnderFrame {
            supports: self.frame.supports().to_vec(),
            warp: self.frame.warp(),
            replaced: replaced.to_vec(),
            weight: self.weight,
        })
    }
}

/// The frame with the seats of the original's drawing, and the nests like the one it stands in, under it.
pub(super) fn frame_around(
    aside: &mut Context<'_>,
    job: &Job,
    bench: &Bench<'_>,
    asked: &ReplacementSpec,
    original: &Spring,
    standing: Option<&NestAround>,
) -> Option<FrameAround> {
    let computed: Vec<Option<ComputedNest>> =
        bench.nests.iter().map(|nest| nest.computed(aside)).collect();
    let written = frame::read(aside, job, &bench.nest_names())?;
    let stacks = stack::rigid(aside, bench);
    let named = bench.named(&computed, &stacks);
    let LoadedFrame { frame, weight, not_good, .. } = written.loaded(aside, &named)?;
    frame.settle(weight).ok()?;
    let drafted = |id: &str| bench.nests.iter().find(|nest| nest.id == id);
    let like = standing.and_then(|standing| drafted(&standing.nest));
    let is_replaced = |nest: &Drafted<'_>| match (like, asked.together) {
        (Some(like), Some(Reach::ThisNest)) => nest.id == like.id,
        (Some(like), _) => coils_of(nest) == coils_of(like),
        (None, _) => false,
    };
    let (mut coils, mut nests) = (Vec::new(), Vec::new());
    for (support, of) in written.supports.iter().enumerate() {
        let Some(nest) = drafted(&of.nest) else { continue };
        let swapped = places(&nest.seats, original).filter(|place| meant(asked, nest, *place));
        coils.extend(swapped.map(|place| (support, place)));
        nests.extend(is_replaced(nest).then_some(support));
    }
    Some(FrameAround { frame, weight, coils, nests, not_good, written })
}

/// The drawings of a nest's coils, in an order that does not hang on that of its seats.
fn coils_of<'n>(nest: &'n Drafted<'_>) -> Vec<&'n str> {
    let mut ids: Vec<&str> = nest.seats.iter().map(|seat| seat.coil.id.as_str()).collect();
    ids.put_in_order(Ord::cmp);
    ids
}

//! The nest and the frame before and after.

use super::place::{FrameAround, NestAround};
use super::spring::Spring;
use super::{line, words};
use crate::coil::stress::Factor;
use crate::drawing::Range;
use crate::formula::Put;
use crate::frame::Settled;
use crate::job::context::Context;
use crate::job::drawing::show_stress;
use crate::job::figures::{Format, text};
use crate::job::formulas::{NEST_FREE, NEST_HEIGHT, NEST_SOLID, OF_NEST};
use crate::job::problem::Path;
use crate::job::report::{Figure, FrameSwapReport, NestSwapReport, SwappedCoil};
use crate::nest;
use crate::quantity::{self, Force, Length, SpringRate};
use crate::replacement::{
    Amount, CoilStanding, FrameSwap, Missing, NestStanding, NestSwap, Requirement, WholeSwap,
};

/// Of whom a note speaks, and where he stands.
pub(super) struct Subject<'a> {
    pub(super) name: &'a str,
    pub(super) at: Path,
}

/// A coil's place in a nest, before and after.
struct Place<'a> {
    name: String,
    replaced_by: Option<String>,
    before: Option<&'a CoilStanding>,
    after: Option<&'a CoilStanding>,
    /// Its share afterwards, over the tolerances of all coils.
    share: Option<Range<f64>>,
}

/// What becomes of the nest; a note where that cannot be told.
pub(super) fn nest(
    context: &mut Context<'_>,
    standing: &NestAround,
    original: &Spring,
    candidate: &Spring,
    swap: &NestSwap,
) -> Option<NestSwapReport> {
    let subject = Subject { name: &candidate.name, at: candidate.at.clone() };
    let (before, after) = both(context, &subject, &swap.before, &swap.after)?;
    let own = standing.around.outer.len();
    let neighbour = |place: usize| standing.names.get(place).and_then(Option::as_ref).cloned();
    let coils = before.coils.iter().zip(&after.coils).enumerate();
    let places = coils.map(|(place, (was, is))| Place {
        name: neighbour(place).unwrap_or_else(|| original.name.clone()),
        replaced_by: (place == own).then(|| candidate.name.clone()),
        before: Some(was),
        after: Some(is),
        share: swap.share.as_ref().ok().filter(|_| place == own).copied(),
    });
    let mut report = table(context, standing, (before, after), swap.height.as_ref().ok(), places);
    if let Some((was, is)) = report
        .coils
        .get(own)
        .and_then(|coil| Some((coil.share_before.as_ref()?, coil.share_after.as_ref()?)))
    {
        let shares = text!(" It carries {} of that instead of {}.", is.text, was.text);
        report.sentence.push_str(&shares);
    }
    report.sentence.push_str(read_elsewhere(standing));
    report.stopped_by =
        swap.stopped_by.as_ref().ok().map(|place| {
            neighbour(*place).unwrap_or_else(|| text!("{}, the original", original.name))
        });
    let stops = swap.stops.iter().flatten().map(|place| {
        neighbour(*place).unwrap_or_else(|| text!("{}, the candidate", candidate.name))
    });
    report.stops = stops.collect();
    Some(report)
}

/// What becomes of a nest of which every coil is replaced.
pub(super) fn whole(
    context: &mut Context<'_>,
    standing: &NestAround,
    subject: &Subject<'_>,
    (there, offered): (&[String], &[String]),
    swap: &WholeSwap,
) -> Option<NestSwapReport> {
    let (before, after) = both(context, subject, &swap.before, &swap.after)?;
    let share = |place| swap.shares.as_ref().ok()?.get(place).copied();
    let is = |place, name: &String| Place {
        name: name.clone(),
        replaced_by: None,
        before: None,
        after: after.coils.get(place),
        share: share(place),
    };
    let was = |place, name: &String| Place {
        name: name.clone(),
        replaced_by: None,
        before: before.coils.get(place),
        after: None,
        share: None,
    };
    let old = there.iter().enumerate().map(|(place, name)| was(place, name));
    let new = offered.iter().enumerate().map(|(place, name)| is(place, name));
    let places: Vec<Place<'_>> = if there.len() == offered.len() {
        let pairs = old.zip(new);
        pairs
            .map(|(old, new)| Place {
                replaced_by: Some(new.name),
                before: old.before,
                name: old.name,
                ..new
            })
            .collect()
    } else {
        old.chain(new).collect()
    };
    let mut report =
        table(context, standing, (before, after), swap.height.as_ref().ok(), places.into_iter());
    let shares = report.coils.iter().filter_map(|coil| {
        let name = coil.replaced_by.as_ref().unwrap_or(&coil.name);
        Some(text!("{name} {}", coil.share_after.as_ref()?.text))
    });
    let shares = text!(" Their shares of that: {}.", quantity::joined(shares, ", "));
    report.sentence.push_str(&shares);
    report.sentence.push_str(read_elsewhere(standing));
    report.stopped_by = swap.stopped_by.as_ref().ok().and_then(|place| there.get(*place)).cloned();
    let stops = swap.stops.iter().flatten().filter_map(|place| offered.get(*place));
    report.stops = stops.cloned().collect();
    Some(report)
}

/// Before and after; a note where either cannot be told.
fn both<'s>(
    context: &mut Context<'_>,
    subject: &Subject<'_>,
    before: &'s Result<NestStanding, Vec<Missing>>,
    after: &'s Result<NestStanding, Vec<Missing>>,
) -> Option<(&'s NestStanding, &'s NestStanding)> {
    match (before, after) {
        (Ok(before), Ok(after)) => Some((before, after)),
        (Err(missing), _) | (_, Err(missing)) => {
            unknown(context, subject, "the nest", missing);
            None
        }
    }
}

/// Its heights and coils before and after; which of them stops it is not in it yet.
fn table<'s>(
    context: &mut Context<'_>,
    standing: &NestAround,
    (before, after): (&NestStanding, &NestStanding),
    height: Option<&Range<Length>>,
    places: impl Iterator<Item = Place<'s>>,
) -> NestSwapReport {
    let format = context.format;
    let load = before.coils.iter().fold(before.stop_load, |sum, coil| sum + coil.load);
    let mut stands = |of: &NestStanding| {
        let put = height_put(format, of, load);
        context.ledger.put(format.height(of.height), put, &nest::SOURCE)
    };
    let (height_before, height_after) = (stands(before), stands(after));
    let coils = places.map(|place| coil(context, load, place)).collect();
    let said = |of| words::amount(format, of);
    let stands = match height {
        Some(range) => words::range(said, &range.map(Amount::Length)),
        None => format.decimal(after.height).to_string(),
    };
    let sentence = text!(
        "By the drawings: under {} the nest stands at {stands} instead of {}.",
        format.say::<Force>(load),
        format.decimal(before.height)
    );
    NestSwapReport {
        nest: standing.nest.clone(),
        sentence,
        not_good: standing.not_good.clone(),
        height_before,
        height_after,
        coils,
        stopped_by: None,
        stops: Vec::new(),
    }
}

/// The height of a nest: free, solid, or where its coils carry the load.
pub(super) fn height_put(format: Format, of: &NestStanding, load: Force) -> Put {
    let coils = || of.coils.iter();
    let decimal = |length: Length| format.decimal(length);
    let carrying = coils().filter(|coil| coil.load.value > 0.0);
    let carrying: Vec<_> = carrying
        .map(|coil| (format.say::<SpringRate>(coil.rate), decimal(coil.free), decimal(coil.raise)))
        .collect();
    if of.stop_load.value > 0.0 {
        let solid = coils().filter_map(|coil| Some((decimal(coil.solid?), decimal(coil.raise))));
        let solid: Vec<_> = solid.collect();
        let terms = solid.iter().map(|(solid, raise)| [("Lc", solid as _), ("o", raise as _)]);
        NEST_SOLID.put_sum(&[], terms)
    } else if carrying.is_empty() {
        let free: Vec<_> = coils().map(|coil| (decimal(coil.free), decimal(coil.raise))).collect();
        let terms = free.iter().map(|(free, raise)| [("L0", free as _), ("o", raise as _)]);
        NEST_FREE.put_sum(&[], terms)
    } else {
        let terms = carrying
            .iter()
            .map(|(rate, free, raise)| [("k", rate as _), ("L0", free as _), ("o", raise as _)]);
        NEST_HEIGHT.put_sum(&[("F", &format.say::<Force>(load))], terms)
    }
}

fn coil(context: &mut Context<'_>, load: Force, place: Place<'_>) -> SwappedCoil {
    let format = context.format;
    let mut share = |of: &CoilStanding, range: Option<&Range<f64>>| {
        let mut figure = Format::percent(of.share, 0);
        if let Some(range) = range {
            let said = |part| words::of(format, Requirement::Deviation, part);
            figure.text = words::range(said, &range.map(Amount::Number));
        }
        if load.value <= 0.0 {
            return figure;
        }
        let [own, all] = [of.load, load].map(|load| format.say::<Force>(load));
        context.ledger.work(figure, OF_NEST, &[("Fc", &own), ("FN", &all)], "definition")
    };
    let share_before = place.before.map(|of| share(of, None));
    let share_after = place.after.map(|of| share(of, place.share.as_ref()));
    let mut stressed = |of: &CoilStanding| -> Option<Figure> {
        Some(show_stress(context, of.coil?, of.load, Factor::Uncorrected))
    };
    SwappedCoil {
        name: place.name,
        replaced_by: place.replaced_by,
        share_before,
        share_after,
        stress_before: place.before.and_then(&mut stressed),
        stress_after: place.after.and_then(&mut stressed),
    }
}

/// What becomes of the frame with it in these places.
pub(super) fn frame(
    context: &mut Context<'_>,
    subject: &Subject<'_>,
    frame_around: &FrameAround,
    places: &str,
    swap: &FrameSwap,
) -> FrameSwapReport {
    let before = deviation(context, Format::percent(swap.deviation_before, 1), &swap.before);
    let not_good = frame_around.not_good.clone();
    let settled = match &swap.after {
        Ok(settled) => settled,
        Err(missing) => {
            unknown(context, subject, "the frame", missing);
            let sentence = text!("The load furthest from the mean is {} off now.", before.text);
            return FrameSwapReport { sentence, not_good, before, after: None };
        }
    };
    let off = FrameSwap::greatest_deviation(settled);
    let mut figure = Format::percent(off, 1);
    if let Ok(range) = &swap.deviation_after {
        let said = |part| words::of(context.format, Requirement::Deviation, part);
        figure.text = words::range(said, &range.map(Amount::Number));
    }
    let after = deviation(context, figure, settled);
    let sentence = text!(
        "{places} the load furthest from the mean is {} off instead of {}. What is offered is taken by its drawing, the coils that stay by their readings where they were read.",
        after.text,
        before.text
    );
    FrameSwapReport { sentence, not_good, before, after: Some(after) }
}

/// Where the same nest has other loads, and why.
fn read_elsewhere(standing: &NestAround) -> &'static str {
    if standing.read {
        " The section Nest goes by the readings of the coils that are there, and so shows another load."
    } else {
        ""
    }
}

/// How far the load furthest from the mean is off.
fn deviation(context: &mut Context<'_>, figure: Figure, settled: &Settled) -> Figure {
    let (formula, inputs, source) = line::furthest(context.format, settled);
    context.ledger.put(figure, line::put(formula, &inputs), source)
}

fn unknown(context: &mut Context<'_>, subject: &Subject<'_>, what: &str, missing: &[Missing]) {
    let text = text!(
        "{}: what becomes of {what} cannot be worked out without {}.",
        subject.name,
        words::list(missing)
    );
    context.note(&subject.at, "swap-unknown", text);
}

//! The nest and the frame before and after.

use super::place::Standing;
use super::spring::Spring;
use super::words;
use crate::coil::stress;
use crate::frame;
use crate::job::desk::Desk;
use crate::job::figures::{Pen, text};
use crate::job::report::{FrameSwapReport, NestSwapReport, SwappedCoil};
use crate::nest;
use crate::quantity::{self, Force, Stress};
use crate::replacement::{
    Amount, CoilStanding, FrameSwap, Missing, NestStanding, NestSwap, Requirement,
};

/// What becomes of the nest; a note where that cannot be told.
pub(super) fn nest(
    desk: &mut Desk<'_>,
    standing: &Standing,
    original: &Spring,
    candidate: &Spring,
    swap: &NestSwap,
) -> Option<NestSwapReport> {
    let (before, after) = match (&swap.before, &swap.after) {
        (Ok(before), Ok(after)) => (before, after),
        (Err(missing), _) | (_, Err(missing)) => {
            unknown(desk, candidate, "the nest", missing);
            return None;
        }
    };
    let pen = desk.pen;
    let load = before.coils.iter().fold(before.stop_load, |sum, coil| sum + coil.load);
    let formula = "h where Σ R · (L0 + o − h) = F";
    let mut height = |of: &NestStanding| {
        let with = text!("F = {}", pen.say::<Force>(load));
        desk.ledger.show(pen.height(of.height), formula, with, &nest::SOURCE)
    };
    let (height_before, height_after) = (height(before), height(after));
    let own = standing.around.outer.len();
    let neighbour = |place: usize| standing.names.get(place).and_then(Option::as_ref).cloned();
    let mut coils = Vec::new();
    for (place, (was, is)) in before.coils.iter().zip(&after.coils).enumerate() {
        let mut share = |of: &CoilStanding| {
            let figure = Pen::percent(of.share, 0);
            let with = text!("{} / {}", pen.say::<Force>(of.load), pen.say::<Force>(load));
            desk.ledger.show(figure, "share = F of the coil / F", with, &"definition")
        };
        let (share_before, share_after) = (share(was), share(is));
        let mut stressed = |of: &CoilStanding| {
            let figure = pen.figure::<Stress>(of.stress?);
            let with = text!("F = {}", pen.say::<Force>(of.load));
            let formula = "τ = 8 · F · D / (π · d³)";
            Some(desk.ledger.show(figure, formula, with, &stress::SOURCE))
        };
        let (stress_before, stress_after) = (stressed(was), stressed(is));
        coils.push(SwappedCoil {
            name: neighbour(place).unwrap_or_else(|| original.name.clone()),
            replaced_by: (place == own).then(|| candidate.name.clone()),
            share_before,
            share_after,
            stress_before,
            stress_after,
        });
    }
    let shares = coils.get(own).map_or_else(String::new, |coil| {
        text!(
            " It carries {} of that instead of {}.",
            coil.share_after.text,
            coil.share_before.text
        )
    });
    let said = |of| words::amount(pen, of);
    let stands = match &swap.height {
        Ok(range) => words::range(said, &range.map(Amount::Length)),
        Err(_) => pen.decimal(after.height).to_string(),
    };
    let sentence = text!(
        "By the drawings: under {} the nest stands at {stands} instead of {}.{shares}{}",
        pen.say::<Force>(load),
        pen.decimal(before.height),
        read_elsewhere(standing)
    );
    let stopped_by =
        swap.stopped_by.as_ref().ok().map(|place| {
            neighbour(*place).unwrap_or_else(|| text!("{}, the original", original.name))
        });
    let stops = swap.stops.iter().flatten().map(|place| {
        neighbour(*place).unwrap_or_else(|| text!("{}, the candidate", candidate.name))
    });
    Some(NestSwapReport {
        nest: standing.nest.clone(),
        sentence,
        height_before,
        height_after,
        coils,
        stopped_by,
        stops: stops.collect(),
    })
}

/// What becomes of the frame.
pub(super) fn frame(
    desk: &mut Desk<'_>,
    candidate: &Spring,
    swap: &FrameSwap,
    one_seat: bool,
) -> FrameSwapReport {
    let before_loads = loads(desk.pen, swap.before.supports.iter().map(|at| at.load));
    let formula = "max |F / mean F − 1|";
    let figure = Pen::percent(swap.deviation_before, 1);
    let before = desk.ledger.show(figure, formula, before_loads, &frame::SOURCE);
    let settled = match &swap.after {
        Ok(settled) => settled,
        Err(missing) => {
            unknown(desk, candidate, "the frame", missing);
            let sentence = text!("The load furthest from the mean is {} off now.", before.text);
            return FrameSwapReport { sentence, before, after: None };
        }
    };
    let off = settled.supports.iter().map(|at| (at.share - 1.0).abs()).fold(0.0, f64::max);
    let with = loads(desk.pen, settled.supports.iter().map(|at| at.load));
    let mut figure = Pen::percent(off, 1);
    if let Ok(range) = &swap.deviation_after {
        let said = |part| words::of(desk.pen, Requirement::Deviation, part);
        figure.text = words::range(said, &range.map(Amount::Number));
    }
    let after = desk.ledger.show(figure, formula, with, &frame::SOURCE);
    let places =
        if one_seat { "in the one seat that is named" } else { "in every place of the original" };
    let sentence = text!(
        "With it {places} the load furthest from the mean is {} off instead of {}. The candidate is taken by its drawing, the coils that stay by their readings where they were read.",
        after.text,
        before.text
    );
    FrameSwapReport { sentence, before, after: Some(after) }
}

/// Where the same nest has other loads, and why.
fn read_elsewhere(standing: &Standing) -> &'static str {
    if standing.read {
        " Nest has it by the readings of the coils that are there, and so at another load."
    } else {
        ""
    }
}

fn loads(pen: Pen, loads: impl Iterator<Item = Force>) -> String {
    quantity::joined(loads.map(|load| pen.say::<Force>(load)), "; ")
}

fn unknown(desk: &mut Desk<'_>, candidate: &Spring, what: &str, missing: &[Missing]) {
    let text = text!(
        "{}: what becomes of {what} cannot be told for want of {}.",
        candidate.name,
        words::list(missing)
    );
    desk.note(&candidate.at, "swap-unknown", text);
}

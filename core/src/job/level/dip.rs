//! A wheel in a dip or on a rise, with all boxes free and with one stuck.

use super::super::context::Context;
use super::super::figures::{Format, text};
use super::super::formulas::{AT_REST, DIP, KEPT, LIFTS, TWIST};
use super::super::frame;
use super::super::problem::Path;
use super::super::report::{DipReport, DippedWheel, Figure, Problem, StuckReport, Workings};
use super::held::OnWheels;
use super::wheels::Wheels;
use crate::bounds;
use crate::frame::track::{SCREENING, TWIST_LIMIT, Track, TrackError, WheelLoad};
use crate::frame::{self as statics};
use crate::quantity::{self, Force, Length};
use crate::reading::Reading;
use crate::say::{Reader, Say};
use std::mem::take;

/// A wheel by its name, how deep its dip is, and the nest whose box is stuck, if any.
#[derive(Clone, Copy)]
pub(super) struct Asked<'a> {
    pub(super) wheel: &'a str,
    pub(super) depth: &'a str,
    pub(super) stuck: &'a str,
}

pub(super) fn report(context: &mut Context<'_>, on: &OnWheels, asked: Asked<'_>) -> DipReport {
    let mut report = DipReport { screening: SCREENING.into(), ..DipReport::default() };
    report.problem = fill(context, &mut report, on, asked).err().map(|problem| *problem);
    report.workings = Workings(take(&mut context.ledger.entries));
    report
}

fn fill(
    context: &mut Context<'_>,
    report: &mut DipReport,
    OnWheels { written, loaded, wheels }: &OnWheels,
    asked: Asked<'_>,
) -> Result<(), Box<Problem>> {
    let format = context.format;
    let top = Path::default();
    let depth = Reading::parse(asked.depth, format.system, &bounds::GROUND)
        .map_err(|refusal| Problem::refused(&top, &refusal))?
        .length();
    let index = one_of(wheels.names(), asked.wheel, "a wheel of the frame")?;
    let names = written.names();
    let refused = |error: TrackError| {
        let reader = Reader { system: format.system, nests: &names };
        Problem::said(&frame::path().field("supports"), "restless", &error.say_to(reader), "")
    };
    let track = Track::new(&loaded.frame, loaded.weight, wheels.bearings()).map_err(refused)?;
    report.not_good.clone_from(&loaded.not_good);
    report.dip = Some(context.ledger.work(
        format.fine(depth),
        DIP,
        &[("g", &format.decimal(depth))],
        "as asked",
    ));
    report.limit = Some(limit(context));
    let side = Side { depth, name: asked.wheel };
    let kept = track.raised(index, -depth).map_err(refused)?;
    (report.wheels, report.sentence) = rows(context, wheels, &kept, side);
    if let Some(lift) = track.least_dip(index).ok().flatten() {
        let which = wheels.names().nth(lift.wheel).unwrap_or_default();
        report.lifts_sentence = text!(
            "{which} lifts at a dip of {} under {}.",
            format.fine_text(lift.dip),
            asked.wheel
        );
        report.lifts = Some(lifts(context, lift.dip));
    } else {
        report.lifts_sentence = text!("No dip under {} lifts a wheel.", asked.wheel);
    }
    if !asked.stuck.is_empty() {
        let names = written.supports.iter().map(|support| support.nest.as_str());
        let nest = one_of(names, asked.stuck, "a nest of the frame")?;
        let track = track.stuck(nest).map_err(refused)?;
        let kept = track.raised(index, -depth).map_err(refused)?;
        let (rows, sentence) = rows(context, wheels, &kept, side);
        let lift = track.least_dip(index).ok().flatten();
        report.stuck = Some(StuckReport {
            nest: asked.stuck.to_owned(),
            wheels: rows,
            sentence,
            lifts: lift.map(|lift| lifts(context, lift.dip)),
        });
    }
    Ok(())
}

/// Where a name stands among those that there are.
fn one_of<'a>(
    mut names: impl Iterator<Item = &'a str> + Clone,
    name: &str,
    expected: &str,
) -> Result<usize, Box<Problem>> {
    let known = names.clone();
    names.position(|one| one == name).ok_or_else(|| {
        let expected = text!("{expected}: {}", quantity::joined(known, ", "));
        let why = "the frame has none of that name";
        Box::new(Problem::new(&Path::default(), "no-such-wheel", name, &expected, why, ""))
    })
}

fn limit(context: &mut Context<'_>) -> Figure {
    let figure = Format::percent(TWIST_LIMIT.value, 0);
    let most = figure.text.clone();
    context.ledger.work(figure, TWIST, &[("ΔQ/Q0", &most)], &TWIST_LIMIT.source)
}

fn lifts(context: &mut Context<'_>, dip: Length) -> Figure {
    let figure = context.format.fine(dip);
    let with = "walked from bend to bend of the nests' load curves".to_owned();
    context.ledger.show(figure, LIFTS, with, &statics::SOURCE)
}

#[derive(Clone, Copy)]
struct Side<'a> {
    depth: Length,
    name: &'a str,
}

/// What each wheel keeps, and which loses most.
fn rows(
    context: &mut Context<'_>,
    wheels: &Wheels,
    loads: &[WheelLoad],
    side: Side<'_>,
) -> (Vec<DippedWheel>, String) {
    let format = context.format;
    let mut worst: Option<(&str, f64)> = None;
    let rows = wheels.names().zip(loads).map(|(name, wheel)| {
        let kept = wheel.unloading.map(|unloading| {
            if worst.is_none_or(|(_, most)| unloading > most) {
                worst = Some((name, unloading));
            }
            let (load, at_rest) =
                (format.say::<Force>(wheel.load), format.say::<Force>(wheel.at_rest));
            let figure = Format::percent(1.0 - unloading, 0);
            context.ledger.work(figure, KEPT, &[("Q", &load), ("Q0", &at_rest)], &statics::SOURCE)
        });
        let mut load = |force: Force, on: &str| {
            let figure = format.figure::<Force>(force);
            context.ledger.show(figure, AT_REST, text!("{name}, {on}"), &statics::SOURCE)
        };
        DippedWheel {
            name: name.to_owned(),
            at_rest: load(wheel.at_rest, "on level track"),
            load: load(wheel.load, "on the rough"),
            kept,
            over: wheel.unloading.is_some_and(|unloading| unloading > TWIST_LIMIT.value),
        }
    });
    let rows = rows.collect();
    let on = if side.depth.value < 0.0 { "rise" } else { "dip" };
    let size = format.fine_text(side.depth.abs());
    let sentence = match worst {
        Some((name, lost)) if lost >= 1.0 - 1e-12 => {
            text!("With a {on} of {size} under {}, {name} lifts off the track.", side.name)
        }
        Some((name, lost)) => text!(
            "With a {on} of {size} under {}, {name} loses most: {} of what it carries on level track.",
            side.name,
            Format::percent(lost, 0).text
        ),
        None => String::new(),
    };
    (rows, sentence)
}

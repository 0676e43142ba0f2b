//! What is asked of a frame beyond how it stands: its plan, its shims, its wheels on rough track.

mod dip;
mod held;
mod shims;
mod wheels;

pub use held::HeldFrame;

use super::answer::answered;
use super::context::Context;
use super::drafted::Bench;
use super::figures::axes;
use super::frame::{FrameSpec, LoadedFrame};
use super::input::Job;
use super::nest::ComputedNest;
use super::report::{Dips, GuidesWord, LevelReport, Plan, PlanNest, StackReport};
use super::{cautions, file, frame, guides, loads, stack, standing};
use crate::frame::track::Track;
use crate::frame::{Place, Settled};
use crate::quantity::{self, Length, System};
use crate::tables::Tables;
use wheels::Wheels;

/// Everything about the frame of a job: how it stands, what evens it out, what its wheels carry.
#[must_use]
pub fn level(job: &Job, tables: &Tables<'_>) -> LevelReport {
    let axes = axes(file::system_of(job));
    let mut report = LevelReport { cautions: cautions::level(), axes, ..LevelReport::default() };
    (report.problems, report.notes, report.workings) =
        answered(job, tables, |context| fill(context, job, &mut report));
    report
}

fn fill(context: &mut Context<'_>, job: &Job, report: &mut LevelReport) {
    let Some((bench, written, loaded)) = loaded(context, job) else { return };
    let taped =
        written.taped(standing::read(&mut Context::new(context.tables, context.format), &bench));
    let Some(stood) = loads::assess(context, &written, &loaded, &bench.instrument, &taped) else {
        return;
    };
    let (settled, stands) = (stood.settled, stood.report);
    let plans = stood.each.iter();
    report.plans = plans
        .map(|under| plan(context.system(), &written, &under.loaded, under.settled.as_ref()))
        .collect();
    report.plan = Some(plan(context.system(), &written, &loaded, settled.as_ref()));
    if let Some(settled) = settled {
        let wheels = Wheels::of(context, &written, &loaded);
        report.wheels = wheels.at_rest(context, &settled);
        report.dips = Some(dips(context.system(), &loaded, &wheels));
        report.shims = shims::plan(context, &written, &loaded, &stands);
        report.seized = seized(context, &bench);
        report.stacks = stacks(context, &bench, (&written, &loaded), &settled);
    }
    report.frame = Some(stands);
}

/// The frame of a job with its nests, where it has all that it needs.
fn loaded<'j>(
    context: &mut Context<'_>,
    job: &'j Job,
) -> Option<(Bench<'j>, FrameSpec, LoadedFrame)> {
    // What is wrong with coils and nests is said elsewhere.
    let mut aside = Context::new(context.tables, context.format);
    let bench = Bench::stands(&mut aside, job);
    let computed: Vec<Option<ComputedNest>> =
        bench.nests.iter().map(|nest| nest.computed(&mut aside)).collect();
    let written = frame::read(context, job, &bench.nest_names())?;
    let stacks = stack::all(&mut aside, &bench);
    let loaded = written.loaded(context, &bench.named(&computed, &stacks))?;
    Some((bench, written, loaded))
}

/// What lies over and under each nest that has anything there, as it is under the frame.
fn stacks(
    context: &mut Context<'_>,
    bench: &Bench<'_>,
    (written, loaded): (&FrameSpec, &LoadedFrame),
    settled: &Settled,
) -> Vec<StackReport> {
    let all = stack::all(context, bench);
    let nests = bench.nests.iter().zip(&all).filter_map(|(nest, of)| {
        let stands = stack::at_rest(written, loaded, settled, &nest.id);
        let mut report = stack::assess(context, of, &nest.id, stands)?;
        stack::as_new(context, of, (written, loaded), &mut report);
        Some(report)
    });
    nests.collect()
}

/// Nests with a box that does not slide, which may be the stuck one in a dip.
fn seized(context: &Context<'_>, bench: &Bench<'_>) -> Vec<String> {
    let mut aside = Context::new(context.tables, context.format);
    let nests = bench.nests.iter().filter(|nest| {
        let guides = guides::assess(&mut aside, &nest.at, nest.entry, &bench.instrument);
        guides.iter().any(|guides| guides.word == Some(GuidesWord::Seized))
    });
    nests.map(|nest| nest.id.clone()).collect()
}

fn plan(
    system: System,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    settled: Option<&Settled>,
) -> Plan {
    let shown = |length: Length| quantity::shown::<Length>(length, system).0;
    let unit = quantity::shown::<Length>(Length::default(), system).1;
    let share = |index: usize| {
        settled.and_then(|settled| settled.supports.get(index)).map_or(1.0, |at| at.share)
    };
    let nests = written.supports.iter().zip(loaded.frame.supports()).enumerate();
    let nests = nests.map(|(index, (written, support))| PlanNest {
        nest: written.nest.clone(),
        support: written.index,
        along: shown(support.place.along),
        across: shown(support.place.across),
        radius: libm::sqrt(share(index)),
    });
    let Place { along, across } = loaded.weight.centre;
    Plan {
        unit: unit.into(),
        centre_along: shown(along),
        centre_across: shown(across),
        nests: nests.collect(),
        slope_along: settled.map_or(0.0, |settled| settled.slope_along),
        slope_across: settled.map_or(0.0, |settled| settled.slope_across),
    }
}

/// As deep as a dip under each wheel that lifts some wheel, and a little deeper, but no deeper than a foot.
fn dips(system: System, loaded: &LoadedFrame, wheels: &Wheels) -> Dips {
    let (whole, step, unit, usual, most) = match system {
        System::Inch => (1.0, 1.0 / 16.0, "in", 4.0, 12.0),
        System::Metric => (10.0, 1.0, "mm", 100.0, 300.0),
    };
    let track = Track::new(&loaded.frame, loaded.weight, wheels.bearings());
    let lifts = track.map(|track| {
        let lifts = (0..wheels.count()).map(|wheel| track.least_dip(wheel).ok().flatten());
        lifts
            .map(|lift| lift.map_or(usual, |lift| quantity::shown::<Length>(lift.dip, system).0))
            .fold(0.0, f64::max)
    });
    let deepest = libm::ceil(lifts.unwrap_or(usual) * 1.25 / whole) * whole;
    Dips { most: deepest.clamp(whole, most), step, unit: unit.into() }
}

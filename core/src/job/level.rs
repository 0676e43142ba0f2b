//! What is asked of a frame beyond how it stands: its plan, its shims, its wheels on rough track.

mod dip;
mod held;
mod shims;
mod wheels;

pub use held::HeldFrame;

use super::answer::answered;
use super::desk::Desk;
use super::drafted::Bench;
use super::figures::axes;
use super::frame::{self, Laden, Written};
use super::input::Job;
use super::nest::Reckoned;
use super::report::{Dips, LevelReport, Plan, PlanNest};
use super::{cautions, file};
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
        answered(job, tables, |desk| fill(desk, job, &mut report));
    report
}

fn fill(desk: &mut Desk<'_>, job: &Job, report: &mut LevelReport) {
    let Some((written, laden)) = laden(desk, job) else { return };
    let Some((settled, stands)) = frame::settle(desk, &written, &laden) else { return };
    report.plan = Some(plan(desk.system(), &written, &laden, settled.as_ref()));
    if let Some(settled) = settled {
        let wheels = Wheels::of(desk, &written, &laden);
        report.wheels = wheels.at_rest(desk, &settled);
        report.dips = Some(dips(desk.system(), &laden, &wheels));
        report.shims = shims::plan(desk, &written, &laden, &stands);
    }
    report.frame = Some(stands);
}

/// The frame of a job with its nests, where it has all that it needs.
fn laden(desk: &mut Desk<'_>, job: &Job) -> Option<(Written, Laden)> {
    // What is wrong with coils and nests is said elsewhere.
    let mut aside = Desk::new(desk.tables, desk.pen);
    let bench = Bench::stands(&mut aside, job);
    let reckoned: Vec<Option<Reckoned>> =
        bench.nests.iter().map(|nest| nest.reckoned(&mut aside)).collect();
    let written = frame::read(desk, job, &bench.nest_names())?;
    let laden = written.laden(desk, &bench.named(&reckoned))?;
    Some((written, laden))
}

fn plan(system: System, written: &Written, laden: &Laden, settled: Option<&Settled>) -> Plan {
    let shown = |length: Length| quantity::shown::<Length>(length, system).0;
    let unit = quantity::shown::<Length>(Length::default(), system).1;
    let share = |index: usize| {
        settled.and_then(|settled| settled.supports.get(index)).map_or(1.0, |at| at.share)
    };
    let nests = written.supports.iter().zip(laden.frame.supports()).enumerate();
    let nests = nests.map(|(index, (written, support))| PlanNest {
        nest: written.nest.clone(),
        support: written.index,
        along: shown(support.place.along),
        across: shown(support.place.across),
        radius: libm::sqrt(share(index)),
    });
    let Place { along, across } = laden.weight.centre;
    Plan {
        unit,
        centre_along: shown(along),
        centre_across: shown(across),
        nests: nests.collect(),
        slope_along: settled.map_or(0.0, |settled| settled.slope_along),
        slope_across: settled.map_or(0.0, |settled| settled.slope_across),
    }
}

/// As deep as a dip under each wheel that lifts some wheel, and a little deeper, but no deeper than a foot.
fn dips(system: System, laden: &Laden, wheels: &Wheels) -> Dips {
    let (whole, step, unit, usual, most) = match system {
        System::Inch => (1.0, 1.0 / 16.0, "in", 4.0, 12.0),
        System::Metric => (10.0, 1.0, "mm", 100.0, 300.0),
    };
    let track = Track::new(&laden.frame, laden.weight, wheels.bearings());
    let lifts = track.map(|track| {
        let lifts = (0..wheels.count()).map(|wheel| track.least_dip(wheel).ok().flatten());
        lifts
            .map(|lift| lift.map_or(usual, |lift| quantity::shown::<Length>(lift.dip, system).0))
            .fold(0.0, f64::max)
    });
    let deepest = libm::ceil(lifts.unwrap_or(usual) * 1.25 / whole) * whole;
    Dips { most: deepest.clamp(whole, most), step, unit }
}

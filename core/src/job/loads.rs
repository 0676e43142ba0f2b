//! The weights that a frame is held under, and how it stands under each: at rest, at its points, and beside
//! the heights that were taped.

use super::context::Context;
use super::frame::{self, FrameSpec, LoadedFrame};
use super::input::Frame as FrameEntry;
use super::points;
use super::problem::Path;
use super::report::{FrameReport, Problem};
use super::seat::Instrument;
use super::standing::{self, TapedAt};
use crate::frame::{Place, Settled, Weight};
use crate::quantity::Force;

/// One of several weights, as it is written.
pub(crate) struct Load {
    at: Path,
    name: String,
    pub(crate) weight: Option<Force>,
    pub(crate) centre: Option<Place>,
    taped: Vec<TapedAt>,
}

/// Reads the weights of a list; the first goes without what stands for it in the frame.
pub(crate) fn read(context: &mut Context<'_>, at: &Path, entry: &FrameEntry) -> Vec<Load> {
    let mut loads: Vec<Load> = Vec::new();
    for ((at, entry), nth) in context.objects(at, entry.weights()).into_iter().zip(1..) {
        let name = context.text(&at, entry.name());
        let name = name.map_or_else(|| format!("Weight {nth}"), str::to_owned);
        if loads.iter().any(|before| before.name == name) {
            let (here, why) = (at.field("name"), "a weight of this name stands further up");
            let example = format!("{name} {nth}");
            let own = "a name of its own";
            context.problem(Problem::new(&here, "name-twice", &name, own, why, &example));
        }
        let weight = context.read(&at, entry.weight());
        let centre = frame::centre(context, &at, entry.centre());
        let mut taped = Vec::new();
        for (here, item) in context.list(&at, entry.standing()) {
            let Some((at, entry)) = context.object(&here, item) else { continue };
            let of = context.text(&at, entry.at()).unwrap_or_default().to_owned();
            let field = entry.height();
            let Some(reading) = context.read(&at, field) else { continue };
            taped.push(TapedAt { at: at.field("height"), place: at.field("at"), of, reading });
        }
        loads.push(Load { at, name, weight, centre, taped });
    }
    loads
}

/// How a frame stands under a weight, where it comes to rest.
pub(crate) struct Under {
    pub(crate) loaded: LoadedFrame,
    pub(crate) settled: Option<Settled>,
}

/// A frame under its weight, and under each of a list of them.
pub(crate) struct Stood {
    pub(crate) report: FrameReport,
    pub(crate) settled: Option<Settled>,
    /// Of each weight that the report has.
    pub(crate) each: Vec<Under>,
}

/// How a frame stands, under its weight and under each of its list.
pub(crate) fn assess(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    instrument: &Instrument,
    taped: &[TapedAt],
) -> Option<Stood> {
    let (settled, mut report) = under(context, written, loaded, instrument, taped)?;
    let mut each = Vec::new();
    for load in &written.loads {
        let Some(weight) = load.weight else {
            let text = format!("{}: without its weight nothing is known of its loads.", load.name);
            context.note(&load.at.field("weight"), "weight-unknown", text);
            continue;
        };
        let weight = Weight { load: weight, centre: load.centre.unwrap_or_default() };
        let name = load.name.clone();
        if weight == loaded.weight && load.taped.is_empty() {
            let same = FrameReport { name, weights: Vec::new(), ..report.clone() };
            report.weights.push(same);
            each.push(Under { loaded: loaded.clone(), settled: settled.clone() });
            continue;
        }
        let loaded = loaded.under(weight, &load.at);
        if let Some((settled, under)) = under(context, written, &loaded, instrument, &load.taped) {
            report.weights.push(FrameReport { name, ..under });
            each.push(Under { loaded, settled });
        }
    }
    Some(Stood { report, settled, each })
}

fn under(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    instrument: &Instrument,
    taped: &[TapedAt],
) -> Option<(Option<Settled>, FrameReport)> {
    let (settled, mut report) = frame::settle(context, written, loaded)?;
    if let Some(settled) = &settled {
        report.points = points::assess(context, written, loaded, settled, instrument.level);
        if let Some(found) = standing::assess(context, taped, written, loaded, instrument) {
            (report.standing, report.weighed) = (Some(found.standing), found.weighed);
        }
    }
    Some((settled, report))
}

//! What lies over and under the nests of a job: pads, plates and shims, and what a worn one does.

use super::context::Context;
use super::drafted::Bench;
use super::figures::{self, Format, text};
use super::formulas::{LOST, SHIMMED_HEIGHT, WITH_NEW, letter};
use super::frame::{FrameSpec, LoadedFrame};
use super::input::{LayerEntry, NestEntry};
use super::nest::ComputedNest;
use super::problem::Path;
use super::report::{Figure, LayerReport, StackPart, StackPartKind, StackReport, StateReport};
use crate::formula::Value;
use crate::frame::{Frame, Settled, Support};
use crate::quantity::{Force, Length, SpringRate, si};
use crate::say::Say;
use crate::stack::{self, Layer, Stack};

/// The stack of a nest, as it is written.
#[derive(Default)]
pub(crate) struct NestStack {
    pub(crate) stack: Stack,
    layers: Vec<Laid>,
}

/// A layer, as far as it is written.
struct Laid {
    name: String,
    above: bool,
    /// As measured; none of a missing one.
    thickness: Option<Length>,
    /// By how much it is thinner than new.
    lost: Option<Length>,
    /// Load per length by which it is squeezed.
    squeeze: Option<SpringRate>,
}

/// The stacks of all nests.
pub(crate) fn all(context: &mut Context<'_>, bench: &Bench<'_>) -> Vec<NestStack> {
    bench.nests.iter().map(|nest| read(context, &nest.at, nest.entry)).collect()
}

/// The stacks of all nests, of which what is wrong is said elsewhere; as they are where coils are exchanged,
/// in which no layer gives.
pub(crate) fn rigid(context: &Context<'_>, bench: &Bench<'_>) -> Vec<NestStack> {
    let mut aside = Context::new(context.tables, context.format);
    let all = all(&mut aside, bench).into_iter();
    all.map(|nest_stack| NestStack { stack: nest_stack.stack.rigid(), ..nest_stack }).collect()
}

/// Reads the stack of a nest; a layer that cannot be used is left out of it.
pub(crate) fn read(context: &mut Context<'_>, at: &Path, nest: &NestEntry) -> NestStack {
    let (mut layers, mut laid) = (Vec::new(), Vec::new());
    for (here, entry) in context.objects(at, nest.stack()) {
        let (layer, of) = one(context, &here, &entry);
        layers.extend(layer);
        laid.push(of);
    }
    NestStack { stack: Stack::new(layers).unwrap_or_default(), layers: laid }
}

fn one(context: &mut Context<'_>, at: &Path, entry: &LayerEntry) -> (Option<Layer>, Laid) {
    let name = context.text(at, entry.name()).unwrap_or("A layer").to_owned();
    let above = context.read(at, entry.at());
    let missing = context.read(at, entry.missing());
    let missing = missing.unwrap_or(false);
    let thickness = context.read(at, entry.thickness());
    let new = context.read(at, entry.when_new());
    let squeeze = context.read(at, entry.squeeze());
    let thickness = thickness.filter(|_| !missing);
    if thickness.is_none() && !missing {
        let text = text!("{name}: without its thickness it is left out of the stack.");
        context.note(at, "layer-unknown", text);
    }
    let left = if missing { Some(Length::default()) } else { thickness };
    let lost = new.zip(left).map(|(new, left)| new - left);
    let lost = lost.filter(|lost| lost.value > 1e-9);
    let layer = thickness.map(|thickness| Layer { thickness, squeeze });
    (layer, Laid { name, above: above.unwrap_or(false), thickness, lost, squeeze })
}

/// A nest as it stands in the way from its lower seat to the frame.
#[derive(Clone, Copy)]
pub(crate) struct InPlace {
    pub(crate) height: Length,
    pub(crate) load: Force,
    pub(crate) shim: Length,
}

/// What follows for the stack of a nest, at its working point or in another place; none where there is none.
pub(crate) fn assess(
    context: &mut Context<'_>,
    nest_stack: &NestStack,
    nest: &str,
    stands: Option<InPlace>,
) -> Option<StackReport> {
    if nest_stack.layers.is_empty() {
        return None;
    }
    let format = context.format;
    let stack = &nest_stack.stack;
    let layers = nest_stack.layers.iter().map(|laid| layer(context, laid)).collect();
    let said: Vec<_> = stack.layers().iter().map(|layer| format.decimal(layer.thickness)).collect();
    let terms = said.iter().map(|thickness| [("tp", thickness as _)]);
    let figure = format.fine(stack.thickness());
    let thickness = context.ledger.sum(figure, stack::THICKNESS, terms, &stack::SOURCE);
    let (mut report_height, mut all, mut sentence) = (None, Vec::new(), String::new());
    if let Some(stands) = stands {
        match stack.under(stands.load) {
            Ok(under) => {
                let height = height(context, stack, stands, under);
                sentence = text!(
                    "From its lower seat to the frame {nest} stands {} high, of which {} are pads, plates and shims.",
                    height.text,
                    format.fine_text(under + stands.shim)
                );
                report_height = Some(height);
                all = parts(format, nest_stack, nest, stands);
            }
            Err(error) => sentence = figures::sentence(&error.say(format.system).to_string()),
        }
    }
    let nest = nest.to_owned();
    Some(StackReport { nest, layers, thickness, height: report_height, parts: all, sentence })
}

/// Where a nest stands at its working point.
pub(crate) fn at_work(
    computed: Option<&ComputedNest>,
    working: Option<&StateReport>,
) -> Option<InPlace> {
    let state = computed?.nest.at_load(si(working?.load.si)).ok()?;
    let load = state.load + state.stop_load;
    Some(InPlace { height: state.height, load, shim: Length::default() })
}

/// Where a nest stands under a frame.
pub(crate) fn at_rest(
    written: &FrameSpec,
    loaded: &LoadedFrame,
    settled: &Settled,
    nest: &str,
) -> Option<InPlace> {
    let index = written.supports.iter().position(|support| support.nest == nest)?;
    let (at, stack) = (settled.supports.get(index)?, loaded.stacks.get(index)?);
    let shim = loaded.frame.supports().get(index)?.shim;
    Some(InPlace { height: at.height + stack.squeezed(at.load), load: at.load, shim })
}

fn height(context: &mut Context<'_>, stack: &Stack, stands: InPlace, under: Length) -> Figure {
    let format = context.format;
    let (h, thickness) = (format.decimal(stands.height), format.decimal(stack.thickness()));
    let squeezed = format.decimal(stack.squeezed(stands.load));
    let shim = format.decimal(stands.shim);
    let values: [Value<'_>; 4] = [("h", &h), ("T", &thickness), ("sq", &squeezed), ("t", &shim)];
    let shimmed = stands.shim.value > 0.0;
    let formula = if shimmed { SHIMMED_HEIGHT } else { stack::HEIGHT };
    let figure = format.height(stands.height + under + stands.shim);
    context.ledger.work(figure, formula, &values, &stack::SOURCE)
}

/// All that lies between frame and lower seat, top to bottom. The shim is drawn under the nest.
fn parts(format: Format, nest_stack: &NestStack, nest: &str, stands: InPlace) -> Vec<StackPart> {
    let layers = |above: bool| {
        let there = nest_stack.layers.iter().filter(move |laid| laid.above == above);
        there.filter_map(move |laid| {
            let give = laid.squeeze.map(|squeeze| stands.load / squeeze).unwrap_or_default();
            let thickness = laid.thickness? - give;
            Some((StackPartKind::Layer, laid.name.as_str(), thickness))
        })
    };
    let shim = (stands.shim.value > 0.0).then_some((StackPartKind::Shim, "Shim", stands.shim));
    let nest = (StackPartKind::Nest, nest, stands.height);
    let all = layers(true).chain([nest]).chain(shim).chain(layers(false));
    let all: Vec<_> = all.collect();
    let whole: Length = all.iter().map(|(_, _, thickness)| *thickness).sum();
    let part = |(kind, name, thickness): (StackPartKind, &str, Length)| StackPart {
        name: name.to_owned(),
        thickness: match kind {
            StackPartKind::Nest => format.height(thickness).text,
            _ => format.fine_text(thickness),
        },
        kind,
        part: (thickness / whole).value,
    };
    all.into_iter().map(part).collect()
}

fn layer(context: &mut Context<'_>, laid: &Laid) -> LayerReport {
    let format = context.format;
    let (formula, sign) = letter!("tp");
    let thickness = laid.thickness.map(|thickness| {
        let said = format.decimal(thickness);
        context.ledger.work(format.fine(thickness), formula, &[(sign, &said)], "as measured")
    });
    let lost = laid.lost.map(|lost| {
        let (new, left) =
            (lost + laid.thickness.unwrap_or_default(), laid.thickness.unwrap_or_default());
        let values: [Value<'_>; 2] = [("tn", &format.decimal(new)), ("tp", &format.decimal(left))];
        context.ledger.work(format.fine(lost), LOST, &values, &stack::SOURCE)
    });
    let sentence = match (&lost, laid.thickness) {
        (Some(lost), None) => text!(
            "{} is missing: the frame stands {} lower there at the same load, as without a shim of {}.",
            laid.name,
            lost.text,
            lost.text
        ),
        (Some(lost), Some(_)) => text!(
            "{} is worn by {}: the frame stands that much lower there at the same load, as without a shim of {}.",
            laid.name,
            lost.text,
            lost.text
        ),
        _ => String::new(),
    };
    LayerReport {
        name: laid.name.clone(),
        above: laid.above,
        thickness,
        lost,
        load: None,
        sentence,
    }
}

/// Adds what each worn or missing layer does to the load of its nest under the frame.
pub(crate) fn as_new(
    context: &mut Context<'_>,
    nest_stack: &NestStack,
    (written, loaded): (&FrameSpec, &LoadedFrame),
    report: &mut StackReport,
) {
    if nest_stack.layers.iter().all(|laid| laid.lost.is_none()) {
        return;
    }
    let nest = &report.nest;
    let Some(index) = written.supports.iter().position(|support| support.nest == *nest) else {
        return;
    };
    let load = |frame: &Frame| {
        let settled = frame.settle(loaded.weight).ok()?;
        settled.supports.get(index).map(|at| at.load)
    };
    let Some(now) = load(&loaded.frame) else { return };
    let format = context.format;
    for (laid, layer) in nest_stack.layers.iter().zip(&mut report.layers) {
        let Some(lost) = laid.lost else { continue };
        let raised = |(at, support): (usize, &Support)| Support {
            ground: support.ground + if at == index { lost } else { Length::default() },
            ..support.clone()
        };
        let supports = loaded.frame.supports().iter().enumerate().map(raised).collect();
        let as_new = Frame::new(supports, loaded.frame.warp()).ok();
        let Some(new) = as_new.as_ref().and_then(load) else { continue };
        let values: [Value<'_>; 2] =
            [("F2", &format.exact::<Force>(new)), ("F1", &format.exact::<Force>(now))];
        let figure = format.figure::<Force>(new - now);
        let figure = context.ledger.work(figure, WITH_NEW, &values, &crate::frame::SOURCE);
        let side = if (new - now).value < 0.0 { "less" } else { "more" };
        let size = format.say::<Force>((new - now).abs());
        layer.sentence += &text!(
            " With a new one, or a shim of {} more, {nest} would carry {size} {side}.",
            format.fine_text(lost)
        );
        layer.load = Some(figure);
    }
}

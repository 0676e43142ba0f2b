//! The shims that even a frame out, as steps to do and texts to write.

use super::super::context::Context;
use super::super::figures::{Format, text};
use super::super::formulas::{AT_REST, BEYOND_BOUND, DOUBT};
use super::super::frame::{self, FrameSpec, LoadedFrame};
use super::super::problem::Path;
use super::super::report::{
    Edit, Figure, FrameReport, Problem, ShimReport, ShimStep, SupportReport,
};
use crate::bounds;
use crate::formula::Value;
use crate::frame::shims::{
    Aim, Deviation, Evenness, Packing, Plan, Remainder, Remains, ShimError, Stack, Stock,
};
use crate::frame::{Frame, SOURCE, Support};
use crate::propagation;
use crate::quantity::{self, Force, Length};
use crate::say::Say;

/// The plan, where a job says what shims there are.
pub(super) fn plan(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    stands: &FrameReport,
) -> Option<ShimReport> {
    if written.stock.is_empty() {
        return None;
    }
    let at = frame::path();
    let Some(largest) = written.largest_stack else {
        let text = "How thick a stack of shims may be is not given: without it no plan is made.";
        context.note(&at.field("largest_stack"), "stack-unknown", text);
        return None;
    };
    let may: Vec<bool> = written.supports.iter().map(|support| support.shimmable).collect();
    let stock = Stock::new(&written.stock, largest);
    let planned =
        stock.and_then(|stock| loaded.frame.shimmed(loaded.weight, &stock, &may, written.aim));
    match planned {
        Ok(plan) => Some(report(context, written, loaded, stands, &plan)),
        Err(error) => {
            context.problem(refused(context.format, &at, &error));
            None
        }
    }
}

fn refused(format: Format, at: &Path, error: &ShimError) -> Problem {
    let (field, code, example) = match *error {
        ShimError::Thickness { .. } => {
            ("shim_stock", "no-thickness", bounds::SHIM.example(format.system).to_owned())
        }
        ShimError::Largest { thinnest, .. } => {
            ("largest_stack", "stack-too-thin", format.fine_text(thinnest))
        }
        ShimError::Stacks { .. } => ("largest_stack", "too-many-stacks", String::new()),
        _ => ("shim_stock", "shims-refused", String::new()),
    };
    Problem::said(&at.field(field), code, &error.say(format.system), &example)
}

fn report(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    stands: &FrameReport,
    plan: &Plan,
) -> ShimReport {
    let format = context.format;
    let aim = written.aim;
    let doubt = match aim {
        Aim::Loads => doubt_of(context, &stands.supports, |support| &support.share),
        Aim::Corners => doubt_of(context, &stands.supports, |support| &support.height),
    };
    let told = doubt.as_ref().map_or(0.0, |doubt| doubt.si);
    let mut left = size(plan.before.evenness.of(aim));
    let steps = plan.steps.iter().map(|step| {
        let gained = left - size(step.evenness.of(aim));
        left = size(step.evenness.of(aim));
        let nest = written.supports.get(step.support).map_or("", |support| support.nest.as_str());
        let gains = format.figure::<Force>(step.gains);
        let with =
            text!("the frame settled before and after, {nest} with {}", stack(format, &step.stack));
        ShimStep {
            nest: nest.to_owned(),
            text: to_do(format, step.before, &step.stack),
            gains: context.ledger.show(gains, AT_REST, with, &SOURCE),
            after: deviation(context, step.evenness, aim),
            within_doubt: told > 0.0 && gained < told,
        }
    });
    let steps: Vec<ShimStep> = steps.collect();
    let (supports, [lean_along, lean_across]) = after(context, written, loaded, plan);
    let before = deviation(context, plan.before.evenness, aim);
    let after = deviation(context, plan.after.evenness, aim);
    let gap = (!plan.exact).then(|| {
        let (left, bound) = (after.text.clone(), shown(format, plan.bound).text);
        let values: [Value<'_>; 2] = [("rl", &left), ("rb", &bound)];
        context.ledger.work(shown(format, plan.gap), BEYOND_BOUND, &values, &SOURCE)
    });
    let edits = plan.under.iter().zip(&written.supports);
    let edits = edits.filter(|(under, _)| under.change.value != 0.0).map(|(under, support)| Edit {
        path: frame::support_path(support.index).field("shim").text().to_owned(),
        text: format.size(under.thickness).text,
    });
    ShimReport {
        not_good: loaded.not_good.clone(),
        aim: match aim {
            Aim::Loads => "loads".into(),
            Aim::Corners => "level".into(),
        },
        what: match aim {
            Aim::Loads => "Farthest from the mean load".into(),
            Aim::Corners => "Farthest from level".into(),
        },
        told: size(plan.before.evenness.of(aim)) - size(plan.after.evenness.of(aim)) > told,
        remains: remains(&plan.remainder, &after, &steps, told, size(plan.after.evenness.of(aim))),
        before,
        after,
        doubt,
        steps,
        exact: plan.exact,
        gap,
        supports,
        sides: frame::lower_sides(loaded, [&lean_along, &lean_across]),
        lean_along,
        lean_across,
        edits: edits.collect(),
    }
}

/// The greatest doubt that the readings leave, as a figure of its own.
fn doubt_of(
    context: &mut Context<'_>,
    supports: &[SupportReport],
    of: impl Fn(&SupportReport) -> &Figure,
) -> Option<Figure> {
    let doubted = supports.iter().map(of).filter(|figure| figure.doubt_si.is_some());
    let most = doubted.reduce(|most, one| if one.doubt_si > most.doubt_si { one } else { most })?;
    let (si, text) = (most.doubt_si?, most.doubt_text.clone()?);
    let figure = Figure { si, text: text.clone(), unit: most.unit.clone(), ..Figure::default() };
    let greatest = text.trim_start_matches("± ");
    Some(context.ledger.work(figure, DOUBT, &[("u", &greatest)], &propagation::SOURCE))
}

fn size(deviation: Deviation) -> f64 {
    match deviation {
        Deviation::Load(part) => part,
        Deviation::Height(height) => height.value,
    }
}

fn shown(format: Format, deviation: Deviation) -> Figure {
    match deviation {
        Deviation::Load(part) => Format::percent(part, 1),
        Deviation::Height(height) => format.fine(height),
    }
}

fn deviation(context: &mut Context<'_>, evenness: Evenness, aim: Aim) -> Figure {
    let format = context.format;
    let figure = shown(format, evenness.of(aim));
    let with = match aim {
        Aim::Loads => "the nest whose load is farthest from the mean",
        Aim::Corners => "the nest at which the frame is farthest from its mean height",
    };
    context.ledger.show(figure, AT_REST, with.to_owned(), &SOURCE)
}

/// `one 1/4 and two 1/16 in`.
fn stack(format: Format, stack: &Stack) -> String {
    let mut counted: Vec<(Length, usize)> = Vec::new();
    for piece in &stack.pieces {
        match counted.last_mut() {
            Some((thickness, count)) if thickness == piece => *count += 1,
            _ => counted.push((*piece, 1)),
        }
    }
    let words = ["no", "one", "two", "three", "four", "five", "six"];
    let pieces = counted.iter().map(|(thickness, count)| {
        let many = words.get(*count).map_or_else(|| count.to_string(), |word| (*word).to_owned());
        text!("{many} {}", format.size(*thickness).text)
    });
    quantity::joined(pieces, " and ")
}

/// `take out 1/8 in, put in one 1/4 in`.
fn to_do(format: Format, before: Length, laid: &Stack) -> String {
    let out = (before.value > 0.0).then(|| text!("take out {}", format.size(before).text));
    let put = (!laid.pieces.is_empty()).then(|| text!("put in {}", stack(format, laid)));
    let todo: Vec<String> = out.into_iter().chain(put).collect();
    quantity::joined(todo.iter(), ", ")
}

/// The frame with the plan carried out.
fn after(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    plan: &Plan,
) -> (Vec<SupportReport>, [Figure; 2]) {
    let supports = loaded.frame.supports().iter().zip(&plan.under);
    let supports = supports.map(|(support, under)| Support {
        shim: match under.packing {
            Packing::Kept => support.shim,
            Packing::Laid(_) => under.thickness,
        },
        ..support.clone()
    });
    let settled = &plan.after.settled;
    let frame = Frame::new(supports.collect(), loaded.frame.warp());
    let frame = frame.as_ref().unwrap_or(&loaded.frame);
    let reports = frame::supports(context, written, loaded, frame, settled);
    (reports, frame::leans(context, frame, settled))
}

/// What is left, why, and whether the last steps are worth their while.
fn remains(
    remainder: &Remainder,
    after: &Figure,
    steps: &[ShimStep],
    told: f64,
    left: f64,
) -> String {
    let left_is = text!("{} is left", after.text);
    let why = match remainder.chief {
        Remains::Nothing => "It is as even as can be.".to_owned(),
        Remains::Stock => text!("{left_is}: finer shims would do better."),
        Remains::Stack => text!("{left_is}: a thicker stack would do better."),
        Remains::Place => text!("{left_is}: shims where none may go would do better."),
        Remains::Frame => {
            text!("{left_is}: with the weight where it acts no shims make it more even.")
        }
    };
    let idle = steps.iter().rev().take_while(|step| step.within_doubt).count();
    let idle = match (idle, steps.len()) {
        (0, 0) if told > 0.0 && left < told => {
            " What is left is smaller than the doubt of the readings.".to_owned()
        }
        (0, _) => String::new(),
        (idle, all) if idle == all => {
            " All of it is smaller than the doubt of the readings: measure finer before you shim."
                .to_owned()
        }
        (1, _) => " The last step gains less than the doubt of the readings.".to_owned(),
        (idle, _) => text!(" The last {idle} steps each gain less than the doubt of the readings."),
    };
    text!("{why}{idle}")
}

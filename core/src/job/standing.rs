//! The truck when it is down again: heights that were taped at its nests, beside those worked out, and the
//! weight that they tell.

use super::context::Context;
use super::drafted::Bench;
use super::figures::{Format, text};
use super::formulas::{
    CENTRE_ACROSS, CENTRE_ALONG, LOAD_OF_COILS, OFF_TAPED, SUM_OF_LOADS, letter,
};
use super::frame::{LoadedFrame, FrameSpec};
use super::problem::Path;
use super::report::{Figure, FrameStanding, NestStanding, Problem, StandingWord, Weighed};
use super::seat::Instrument;
use crate::formula::Value;
use crate::frame::standing::{self, Beside, Cause, Explained, Finding, StandingError, Taped};
use crate::measured::Measured;
use crate::propagation::Doubted;
use crate::quantity::{self, Force, Length, SpringRate};
use crate::say::{Reader, Say};

/// A height that was taped at a nest, from its lower seat to the frame.
pub(crate) struct TapedNest {
    at: Path,
    nest: String,
    taped: Measured,
}

/// Reads the heights that were taped.
pub(crate) fn read(context: &mut Context<'_>, bench: &Bench<'_>) -> Vec<TapedNest> {
    let mut heights = Vec::new();
    for drafted in &bench.nests {
        let Some(reading) = context.read(&drafted.at, drafted.entry.standing()) else {
            continue;
        };
        if let Some(taped) = measured(&bench.instrument, &reading) {
            let at = drafted.at.field("standing");
            heights.push(TapedNest { at, nest: drafted.id.clone(), taped });
        }
    }
    heights
}

fn measured(instrument: &Instrument, reading: &crate::reading::Reading) -> Option<Measured> {
    instrument.measured(&[reading.interval(instrument.graduation)])
}

/// What taped heights tell of a frame.
pub(crate) struct Told {
    pub(crate) standing: FrameStanding,
    /// Where every nest was taped.
    pub(crate) weighed: Option<Weighed>,
}

/// Holds taped heights against those worked out under the weight that was written.
pub(crate) fn assess(
    context: &mut Context<'_>,
    heights: &[TapedNest],
    written: &FrameSpec,
    loaded: &LoadedFrame,
) -> Option<Told> {
    let supports = loaded.frame.supports().iter().zip(&loaded.stacks);
    let supports = supports.zip(&written.supports).enumerate();
    let mut taped = Vec::new();
    let mut names = Vec::new();
    for (index, ((support, stack), written)) in supports {
        let Some(at) = heights.iter().find(|of| of.nest == written.nest) else { continue };
        let over = support.shim + stack.thickness();
        let height = at.taped.mean - over;
        taped.push(Taped { nest: index, height, doubt: at.taped.own_doubt() });
        names.push((at, over));
    }
    let first = names.first()?.0;
    // One tape, and heights of one length: its error is that of the first.
    let tape = first.taped.tape_doubt;
    match loaded.frame.standing(loaded.weight, loaded.coil_doubts(), &taped, tape) {
        Ok(finding) => {
            let nest = |index: usize| {
                written.supports.get(index).map_or("", |support| support.nest.as_str())
            };
            let heights = finding.heights.iter().zip(&names);
            let heights =
                heights.map(|(beside, (at, shim))| nest_standing(context, &at.nest, beside, *shim));
            let heights = heights.collect();
            let standing = FrameStanding { heights, ..found(context.format, &finding, &nest) };
            let mut by_nest: Vec<_> = taped.iter().map(|of| (of.nest, of.height)).collect();
            by_nest.sort_by_key(|(nest, _)| *nest);
            let by_nest: Vec<Length> = by_nest.into_iter().map(|(_, height)| height).collect();
            let weighed = loaded.frame.weigh(loaded.coil_doubts(), &taped, tape);
            let weighed = weighed.ok().map(|weighed| {
                let mut weighed = weighed_of(context, &weighed, &by_nest, loaded);
                if !finding.agrees() {
                    weighed.sentence +=
                        " First put right what does not agree: until then this is no weight.";
                }
                weighed
            });
            Some(Told { standing, weighed })
        }
        Err(error) => {
            let names: Vec<&str> =
                written.supports.iter().map(|support| support.nest.as_str()).collect();
            let reader = Reader { system: context.system(), nests: &names };
            if let Some(problem) = refused(reader, first, &error) {
                context.problem(problem);
            }
            None
        }
    }
}

/// What of the error is for the heights to cure; the rest is said where the frame is.
fn refused(reader: Reader<'_>, first: &TapedNest, error: &StandingError) -> Option<Problem> {
    let code = match error {
        StandingError::Count { .. } => "too-few-heights",
        StandingError::Height { .. } => "no-height",
        _ => return None,
    };
    Some(Problem::said(&first.at, code, &error.say_to(reader), ""))
}

fn nest_standing(context: &mut Context<'_>, nest: &str, beside: &Beside, shim: Length) -> NestStanding {
    let format = context.format;
    let height =
        |height: Doubted<Length>| format.height(height.value + shim).give_or_take(format, height.doubt);
    let said = |height: Length| format.decimal(height + shim);
    let (expected, taped) = (said(beside.expected.value), said(beside.taped.value));
    let values: [Value<'_>; 2] = [("hy", &taped), ("hs", &expected)];
    let off = format.fine(beside.difference.value).give_or_take(format, beside.difference.doubt);
    let (formula, sign) = letter!("hs");
    NestStanding {
        nest: nest.to_owned(),
        computed: context.ledger.work(
            height(beside.expected),
            formula,
            &[(sign, &expected)],
            &"height of the nest under the frame, with its shim",
        ),
        taped: height(beside.taped),
        difference: context.ledger.work(off, OFF_TAPED, &values, &standing::SOURCE),
        agrees: beside.agrees,
    }
}

/// A second cause is named where it leaves no more than this over the first: two standard uncertainties.
const NEARLY: f64 = 4.0;

fn found<'n>(format: Format, finding: &Finding, nest: &impl Fn(usize) -> &'n str) -> FrameStanding {
    let count = finding.heights.len();
    if finding.agrees() {
        let sentence =
            text!("All {count} heights agree with those worked out, within their doubts.");
        return FrameStanding {
            word: StandingWord::Agrees,
            cause: None,
            sentence,
            heights: Vec::new(),
        };
    }
    let Some(best) = finding.best() else {
        let sentence = "The heights do not agree with those worked out, and no single cause explains them: read them again.";
        return FrameStanding {
            word: StandingWord::Unexplained,
            cause: None,
            sentence: sentence.to_owned(),
            heights: Vec::new(),
        };
    };
    let cause = cause_of(format, best, nest);
    let next = finding.causes.get(1).filter(|next| next.left - best.left < NEARLY);
    let next = next
        .map_or_else(String::new, |next| text!(" Nearly as well: {}.", cause_of(format, next, nest)));
    let advice = match best.cause {
        Cause::Nest { by, .. } if by.value.value < 0.0 => {
            " Look for a pad or shim that is worn or left out, or a coil that has set."
        }
        Cause::Nest { .. } => {
            " Look for a box that sticks, a pad or shim too many, or a longer coil."
        }
        Cause::Reading { .. } => " Read it again.",
        Cause::Weight { .. } | Cause::Along { .. } | Cause::Across { .. } => "",
    };
    let sentence = text!(
        "The heights do not agree with those worked out. What explains them best: {cause}.{advice}{next}"
    );
    FrameStanding {
        word: StandingWord::OneCause,
        cause: Some(cause),
        sentence,
        heights: Vec::new(),
    }
}

/// `3/8 in is missing at A left`.
fn cause_of<'n>(format: Format, explained: &Explained, nest: &impl Fn(usize) -> &'n str) -> String {
    let size = |by: Doubted<Length>| format.fine_text(by.value.abs());
    let is_less = |by: Doubted<Length>| by.value.value < 0.0;
    match explained.cause {
        Cause::Nest { nest: at, by } if is_less(by) => {
            text!("{} stands as if {} were missing there", nest(at), size(by))
        }
        Cause::Nest { nest: at, by } => {
            text!("{} stands as if {} too much were there", nest(at), size(by))
        }
        Cause::Reading { nest: at, by } => {
            let side = if is_less(by) { "low" } else { "high" };
            text!("the height of {} was read {} too {side}", nest(at), size(by))
        }
        Cause::Weight { by } => {
            let side = if by.value.value < 0.0 { "less" } else { "more" };
            text!("the weight is {} {side} than written", format.say::<Force>(by.value.abs()))
        }
        Cause::Along { by } => {
            let side = if is_less(by) { "B" } else { "A" };
            text!("the weight acts {} nearer the {side} end than written", size(by))
        }
        Cause::Across { by } => {
            let side = if is_less(by) { "right" } else { "left" };
            text!("the weight acts {} farther {side} than written", size(by))
        }
    }
}

fn weighed_of(
    context: &mut Context<'_>,
    weighed: &standing::Weighed,
    heights: &[Length],
    loaded: &LoadedFrame,
) -> Weighed {
    let format = context.format;
    let supports = loaded.frame.supports();
    let mut loads: Vec<Figure> = Vec::new();
    for ((load, support), taped) in weighed.loads.iter().zip(supports).zip(heights) {
        let figure = format.doubted::<Force>(load.value, load.doubt.value);
        let nest = &support.nest;
        if nest.solid().is_some_and(|solid| *taped < solid.height) {
            // It stands on its turns, and what those bear no expression gives.
            loads.push(figure);
            continue;
        }
        let coils: Vec<_> = nest
            .members()
            .iter()
            .map(|coil| {
                let rate = format.exact::<SpringRate>(coil.law.rate_beyond(Length::default()));
                (rate, format.decimal(coil.free), format.decimal(coil.raise))
            })
            .collect();
        let terms = coils
            .iter()
            .map(|(rate, free, raise)| [("k", rate as _), ("L0", free as _), ("o", raise as _)]);
        let put = LOAD_OF_COILS.put_sum(&[("h", &format.decimal(*taped))], terms);
        loads.push(context.ledger.put(figure, LOAD_OF_COILS, put, &crate::nest::SOURCE));
    }
    let said: Vec<_> = weighed.loads.iter().map(|load| format.exact::<Force>(load.value)).collect();
    let weight = weighed.weight;
    let figure = format.doubted::<Force>(weight.value, weight.doubt.value);
    let terms = said.iter().map(|load| [("F", load as _)]);
    let weight_figure = context.ledger.sum(figure, SUM_OF_LOADS, terms, &crate::frame::SOURCE);
    let all = format.exact::<Force>(weight.value);
    let mut centre = |at: Doubted<Length>,
                      formula,
                      sign: &'static str,
                      of: fn(&crate::frame::Place) -> Length| {
        let places: Vec<_> =
            supports.iter().map(|support| format.decimal(of(&support.place))).collect();
        let terms =
            said.iter().zip(&places).map(|(load, place)| [("F", load as _), (sign, place as _)]);
        let put = crate::formula::Formula::put_sum(formula, &[("W", &all)], terms);
        let figure = format.fine(at.value).give_or_take(format, at.doubt);
        context.ledger.put(figure, formula, put, &crate::frame::SOURCE)
    };
    let along = centre(weighed.along, CENTRE_ALONG, "x", |place| place.along);
    let across = centre(weighed.across, CENTRE_ACROSS, "y", |place| place.across);
    let part = (weight.doubt / weight.value).value;
    let percent = quantity::write_fixed(part * 100.0, usize::from(part < 0.01));
    let off = (weight.value - loaded.weight.load).value / weight.doubt.value;
    let beside = if off.abs() <= 2.0 {
        text!(
            "; these heights cannot tell it better than ± {percent} %, and within that it is what was written."
        )
    } else {
        let side = if off < 0.0 { "less" } else { "more" };
        text!(
            ", {side} than the {} that were written by more than ± {percent} %.",
            format.say::<Force>(loaded.weight.load)
        )
    };
    let sentence = text!("By these heights the nests carry {}{beside}", weight_figure.text);
    Weighed { weight: weight_figure, along, across, loads, sentence }
}

//! The truck when it is down again: heights that were taped at its nests, beside those worked out, and the
//! weight that they tell.

use super::context::Context;
use super::drafted::Bench;
use super::figures::{Format, text};
use super::formulas::{
    CENTRE_ACROSS, CENTRE_ALONG, LOAD_OF_COILS, OFF_TAPED, SUM_OF_LOADS, letter,
};
use super::frame::{FrameSpec, LoadedFrame};
use super::problem::Path;
use super::report::{
    Figure, FrameEnds, FrameStanding, NestStanding, Problem, StandingWord, Weighed,
};
use super::seat::Instrument;
use crate::formula::Value;
use crate::frame::standing::{self, Beside, Cause, Explained, Finding, Spot, StandingError, Taped};
use crate::propagation::Doubted;
use crate::quantity::{self, Force, Length, SpringRate};
use crate::reading::Reading;
use crate::say::{Reader, Say};

/// A height that was taped, from the lower seat of a nest to the frame, or of a point of the frame.
#[derive(Clone)]
pub(crate) struct TapedAt {
    pub(crate) at: Path,
    /// Where it is written what it is the height of.
    pub(crate) place: Path,
    /// The name of that.
    pub(crate) of: String,
    pub(crate) reading: Reading,
}

/// Reads the heights that were taped at nests.
pub(crate) fn read(context: &mut Context<'_>, bench: &Bench<'_>) -> Vec<TapedAt> {
    let mut heights = Vec::new();
    for drafted in &bench.nests {
        let Some(reading) = context.read(&drafted.at, drafted.entry.standing()) else {
            continue;
        };
        let at = drafted.at.field("standing");
        heights.push(TapedAt { place: at.clone(), at, of: drafted.id.clone(), reading });
    }
    heights
}

/// A taped height of something that is there.
struct Seen {
    of: String,
    /// By how much what was taped is more than the nest, or the frame, has there.
    over: Length,
}

/// What people call where a height was taped, and the sides of the frame.
struct Called<'n> {
    spot: &'n dyn Fn(Spot) -> String,
    ends: FrameEnds,
}

/// What taped heights tell of a frame.
pub(crate) struct StandingFindings {
    pub(crate) standing: FrameStanding,
    /// Where every nest was taped.
    pub(crate) weighed: Option<Weighed>,
}

/// Holds taped heights against those worked out under the weight of a frame.
pub(crate) fn assess(
    context: &mut Context<'_>,
    heights: &[TapedAt],
    written: &FrameSpec,
    loaded: &LoadedFrame,
    instrument: &Instrument,
) -> Option<StandingFindings> {
    let (mut taped, mut seen, mut tape) = (Vec::new(), Vec::new(), Length::default());
    for height in heights {
        let Some((at, over)) = spot(context, height, written, loaded) else { continue };
        let interval = height.reading.interval(instrument.graduation);
        let Some(measured) = instrument.measured(&[interval]) else { continue };
        // One tape: its error is that of the longest height.
        tape = if measured.tape_doubt > tape { measured.tape_doubt } else { tape };
        taped.push(Taped { at, height: measured.mean - over, doubt: measured.own_doubt() });
        seen.push(Seen { of: height.of.clone(), over });
    }
    let first = heights.first().filter(|_| !taped.is_empty())?;
    match loaded.frame.standing(loaded.weight, loaded.coil_doubts(), &taped, tape) {
        Ok(finding) => {
            let names = written.names();
            let spot = |at: Spot| match at {
                Spot::Nest(nest) => names.get(nest).copied().unwrap_or_default().to_owned(),
                Spot::Place(_) => {
                    let at = taped.iter().position(|of| of.at == at);
                    at.and_then(|at| seen.get(at)).map_or_else(String::new, |seen| seen.of.clone())
                }
            };
            let called = Called { spot: &spot, ends: loaded.ends() };
            let heights = finding.heights.iter().zip(&seen);
            let heights = heights.map(|(beside, seen)| beside_taped(context, seen, beside));
            let heights = heights.collect();
            let standing = found(context.format, &finding, &called, heights);
            let weighed = loaded.frame.weigh(loaded.coil_doubts(), &taped, tape);
            let weighed = weighed.ok().map(|weighed| {
                let of_nest = |nest| taped.iter().find(|of| of.at == Spot::Nest(nest));
                let by_nest: Vec<Length> =
                    (0..names.len()).filter_map(of_nest).map(|of| of.height).collect();
                let mut weighed = weighed_of(context, &weighed, &by_nest, loaded);
                if !finding.agrees() {
                    weighed.sentence +=
                        " First put right what does not agree: until then this is no weight.";
                }
                weighed
            });
            Some(StandingFindings { standing, weighed })
        }
        Err(error) => {
            let reader = Reader { system: context.system(), nests: &written.names() };
            if let Some(problem) = refused(reader, first, &error) {
                context.problem(problem);
            }
            None
        }
    }
}

/// Where a height was taped, and by how much it is more than what nest or frame has there.
fn spot(
    context: &mut Context<'_>,
    height: &TapedAt,
    written: &FrameSpec,
    loaded: &LoadedFrame,
) -> Option<(Spot, Length)> {
    let supports = loaded.frame.supports().iter().zip(&loaded.stacks).zip(&written.supports);
    let mut supports = supports.enumerate();
    if let Some((nest, ((support, stack), _))) =
        supports.find(|(_, (_, written))| written.nest == height.of)
    {
        return Some((Spot::Nest(nest), support.shim + stack.thickness()));
    }
    if let Some(point) = written.points.iter().find(|point| point.name == height.of) {
        return Some((Spot::Place(point.place), point.added));
    }
    // A nest that is not under the frame has nothing to be held against.
    if height.place != height.at {
        let points = written.points.iter().map(|point| point.name.clone());
        let known = written.names().into_iter().map(str::to_owned).chain(points);
        let known: Vec<String> = known.collect();
        context.known(&height.place, &height.of, &known, "no-such-place");
    }
    None
}

/// What of the error is for the heights to cure; the rest is said where the frame is.
fn refused(reader: Reader<'_>, first: &TapedAt, error: &StandingError) -> Option<Problem> {
    let code = match error {
        StandingError::Count { .. } => "too-few-heights",
        StandingError::Height { .. } => "no-height",
        _ => return None,
    };
    Some(Problem::said(&first.at, code, &error.say_to(reader), ""))
}

fn beside_taped(context: &mut Context<'_>, seen: &Seen, beside: &Beside) -> NestStanding {
    let format = context.format;
    let height = |height: Doubted<Length>| {
        format.height(height.value + seen.over).give_or_take(format, height.doubt)
    };
    let said = |height: Length| format.decimal(height + seen.over);
    let (expected, taped) = (said(beside.expected.value), said(beside.taped.value));
    let values: [Value<'_>; 2] = [("hy", &taped), ("hs", &expected)];
    let off = format.fine(beside.difference.value).give_or_take(format, beside.difference.doubt);
    let (formula, sign) = letter!("hs");
    NestStanding {
        of: seen.of.clone(),
        computed: context.ledger.work(
            height(beside.expected),
            formula,
            &[(sign, &expected)],
            "height under the frame, with all that lies there",
        ),
        taped: context.ledger.work(
            height(beside.taped),
            letter!("hy").0,
            &[("hy", &taped)],
            "as taped",
        ),
        difference: context.ledger.work(off, OFF_TAPED, &values, &standing::SOURCE),
        agrees: beside.agrees,
    }
}

/// A second cause is named where it leaves no more than this over the first: two standard uncertainties.
const NEARLY: f64 = 4.0;

fn found(
    format: Format,
    finding: &Finding,
    called: &Called<'_>,
    heights: Vec<NestStanding>,
) -> FrameStanding {
    let (word, cause, sentence) = if finding.agrees() {
        let count = heights.len();
        let sentence =
            text!("All {count} heights agree with those worked out, within their doubts.");
        (StandingWord::Agrees, None, sentence)
    } else if let Some(best) = finding.best() {
        let cause = cause_of(format, best, called);
        let next = finding.causes.get(1).filter(|next| next.left - best.left < NEARLY);
        let next = next.map_or_else(String::new, |next| {
            text!(" Nearly as well: {}.", cause_of(format, next, called))
        });
        let advice = advice(&best.cause);
        let sentence = text!(
            "The heights do not agree with those worked out. What explains them best: {cause}.{advice}{next}"
        );
        (StandingWord::OneCause, Some(cause), sentence)
    } else {
        let sentence = "The heights do not agree with those worked out, and no single cause explains them: read them again.";
        (StandingWord::Unexplained, None, sentence.to_owned())
    };
    FrameStanding { word, cause, sentence, heights }
}

/// What to look for first.
fn advice(cause: &Cause) -> &'static str {
    match cause {
        Cause::Nest { by, .. } if by.value.value < 0.0 => {
            " Look for a pad or shim that is worn or left out, or a coil that has set."
        }
        Cause::Nest { .. } => {
            " Look for a box that sticks, a pad or shim too many, or a longer coil."
        }
        Cause::Reading { .. } => " Read it again.",
        Cause::Weight { .. } | Cause::Along { .. } | Cause::Across { .. } => "",
    }
}

/// `3/8 in is missing at A left`.
fn cause_of(format: Format, explained: &Explained, called: &Called<'_>) -> String {
    let Called { spot: name, ends } = called;
    let size = |by: Doubted<Length>| format.fine_text(by.value.abs());
    let is_less = |by: Doubted<Length>| by.value.value < 0.0;
    match explained.cause {
        Cause::Nest { nest: at, by } if is_less(by) => {
            text!("{} stands as if {} were missing there", name(Spot::Nest(at)), size(by))
        }
        Cause::Nest { nest: at, by } => {
            text!("{} stands as if {} too much were there", name(Spot::Nest(at)), size(by))
        }
        Cause::Reading { at, by } => {
            let side = if is_less(by) { "low" } else { "high" };
            text!("the height of {} was read {} too {side}", name(at), size(by))
        }
        Cause::Weight { by } => {
            let side = if by.value.value < 0.0 { "less" } else { "more" };
            text!("the weight is {} {side} than written", format.say::<Force>(by.value.abs()))
        }
        Cause::Along { by } => {
            let side = if is_less(by) { &ends.behind } else { &ends.ahead };
            text!("the weight acts {} nearer to {side} than written", size(by))
        }
        Cause::Across { by } => {
            let side = if is_less(by) { &ends.right } else { &ends.left };
            text!("the weight acts {} nearer to {side} than written", size(by))
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
        loads.push(context.ledger.put(figure, put, &crate::nest::SOURCE));
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
        context.ledger.put(figure, put, &crate::frame::SOURCE)
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

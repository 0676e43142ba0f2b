//! The frame of a job: what is written of it, how it comes to rest on the nests, what each carries.

use super::context::Context;
use super::field::{Field, Object};
use super::figures::{DOUBT_NOT_KNOWN, Format, sentence, text};
use super::formulas::{
    AT_REST, DIAGONAL, DIAGONAL_HEIGHT, LEFT_TO_SOLID, MEAN_LOAD, OF_MEAN, RISE_ACROSS, RISE_ALONG,
    WARPED, letter,
};
use super::input::{Beam, Centre, Frame as FrameEntry, Job, Support as SupportEntry};
use super::loads::{self, Load};
use super::nest::{ComputedNest, Seated};
use super::points::{self, Point};
use super::problem::Path;
use super::report::{
    Figure, FrameEnds, FrameReport, FrameState, Problem, Sided, SupportReport, SupportState,
};
use super::standing::TapedAt;
use crate::bounds;
use crate::formula::Value;
use crate::frame::shims::Aim;
use crate::frame::{
    self, Contact, Frame, FrameError, LoadDoubt, Place, Settled, SettledSupport, Support, Weight,
};
use crate::propagation::Doubted;
use crate::quantity::{self, Force, Length, SpringRate, System, WarpStiffness, unit};
use crate::say::{Nth, Reader, Say};
use crate::stack::Stack;
use std::cmp::Ordering;

/// What a job says of its frame.
pub(crate) struct FrameSpec {
    /// Whether all that its rest depends on could be read.
    sound: bool,
    weight: Option<Force>,
    centre: Place,
    warp: Option<WarpStiffness>,
    stop: Option<SpringRate>,
    pub(crate) supports: Vec<SupportSpec>,
    /// The list of its weights.
    pub(crate) loads: Vec<Load>,
    pub(crate) points: Vec<Point>,
    pub(crate) stock: Vec<Length>,
    pub(crate) largest_stack: Option<Length>,
    pub(crate) aim: Aim,
    pub(crate) beams: Vec<BeamSpec>,
    pub(crate) wheels_apart: Option<Length>,
}

/// What it says of one support.
pub(crate) struct SupportSpec {
    /// Its place in the job's list.
    pub(crate) index: usize,
    pub(crate) nest: String,
    along: Option<Length>,
    across: Option<Length>,
    shim: Length,
    ground: Length,
    pub(crate) shimmable: bool,
}

/// What it says of one beam.
pub(crate) struct BeamSpec {
    pub(crate) at: Path,
    pub(crate) name: String,
    pub(crate) nests: Vec<String>,
    pub(crate) boxes: Vec<Length>,
}

/// A nest of the job by its name, as far as its loads are known.
pub(crate) struct Named<'a> {
    pub(crate) id: &'a str,
    pub(crate) computed: Option<&'a ComputedNest>,
    /// What lies over and under it.
    pub(crate) stack: &'a Stack,
}

/// A frame that has what it needs.
#[derive(Clone)]
pub(crate) struct LoadedFrame {
    /// Where its weight is written.
    at: Path,
    pub(crate) frame: Frame,
    pub(crate) weight: Weight,
    doubts: Vec<Vec<frame::CoilDoubt>>,
    /// What lies over and under each nest.
    pub(crate) stacks: Vec<Stack>,
    /// Coils under it that are not good, and why.
    pub(crate) not_good: Vec<String>,
    /// The names of its nests.
    names: Vec<String>,
}

/// Where the fields of a frame stand.
pub(crate) fn path() -> Path {
    Path::of("frame")
}

/// Where the fields of a support stand.
pub(crate) fn support_path(index: usize) -> Path {
    path().field("supports").item(index)
}

/// Reads the frame of a job.
pub(crate) fn read(context: &mut Context<'_>, job: &Job, nests: &[String]) -> Option<FrameSpec> {
    let (at, entry) = context.object(&Path::default(), job.frame())?;
    let before = context.problems.len();
    let weight = context.read(&at, entry.weight());
    let warp = context.read(&at, entry.warp_stiffness());
    let stop = context.read(&at, entry.stop_stiffness());
    let centre = centre(context, &at, entry.centre());
    let supports = context.list(&at, entry.supports()).enumerate();
    let supports = supports.filter_map(|(index, (at, item))| {
        let (at, entry) = context.object(&at, item)?;
        Some(support(context, &at, index, entry, nests))
    });
    let mut supports: Vec<SupportSpec> = supports.collect();
    spread(context, &at, entry, &mut supports);
    let sound = context.problems.len() == before;
    let mut loads = loads::read(context, &at, entry);
    let mut main = (weight, centre);
    if let Some(first) = loads.first_mut() {
        (first.weight, first.centre) = (first.weight.or(weight), first.centre.or(centre));
        main = (weight.or(first.weight), centre.or(first.centre));
    }
    let points = points::read(context, &at, entry);
    let stock = context.each(&at, entry.shim_stock());
    let largest_stack = context.read(&at, entry.largest_stack());
    let aim = context.read(&at, entry.shims_for()).unwrap_or(Aim::Loads);
    let wheels_apart = context.read(&at, entry.wheels_apart());
    let beams = context.list(&at, entry.beams()).filter_map(|(at, item)| {
        let (at, entry) = context.object(&at, item)?;
        Some(beam(context, at, entry, nests))
    });
    let beams = beams.collect();
    Some(FrameSpec {
        sound,
        weight: main.0,
        centre: main.1.unwrap_or_default(),
        warp,
        stop,
        supports,
        loads,
        points,
        stock,
        largest_stack,
        aim,
        wheels_apart,
        beams,
    })
}

/// Where a weight acts.
pub(crate) fn centre(
    context: &mut Context<'_>,
    at: &Path,
    field: Field<'_, Object<Centre>>,
) -> Option<Place> {
    let (at, centre) = context.object(at, field)?;
    let along = context.read(&at, centre.along());
    let across = context.read(&at, centre.across());
    (along.is_some() || across.is_some())
        .then(|| Place { along: along.unwrap_or_default(), across: across.unwrap_or_default() })
}

/// Sets four nests so far apart as is written, where none of them has a place of its own: the first two at
/// one end, left and right, the others behind them.
fn spread(context: &mut Context<'_>, at: &Path, entry: &FrameEntry, supports: &mut [SupportSpec]) {
    let Some((at, apart)) = context.object(at, entry.apart()) else { return };
    let along = context.read(&at, apart.along());
    let across = context.read(&at, apart.across());
    if along.is_none() && across.is_none() {
        return;
    }
    let [a, b, c, d] = supports else {
        let read = text!("{}", supports.len());
        let why = "two distances say where four nests stand, and no other number of them";
        let expected = "four nests, or a place of each";
        context.problem(Problem::new(&at, "apart-of-four", &read, expected, why, ""));
        return;
    };
    let halves = |apart: Option<Length>| apart.map(|apart| apart / 2.0);
    for (support, ahead, left) in
        [(a, true, true), (b, true, false), (c, false, true), (d, false, false)]
    {
        let side = |half: Length, plus: bool| if plus { half } else { -half };
        support.along = support.along.or(halves(along).map(|half| side(half, ahead)));
        support.across = support.across.or(halves(across).map(|half| side(half, left)));
    }
}

fn support(
    context: &mut Context<'_>,
    at: &Path,
    index: usize,
    entry: &SupportEntry,
    nests: &[String],
) -> SupportSpec {
    let nest = context.text(at, entry.nest()).unwrap_or_default();
    if !nest.is_empty() {
        context.known(&entry.nest().path(at), nest, nests, "no-such-nest");
    }
    SupportSpec {
        index,
        nest: nest.to_owned(),
        along: context.read(at, entry.along()),
        across: context.read(at, entry.across()),
        shim: context.read(at, entry.shim()).unwrap_or_default(),
        ground: context.read(at, entry.ground()).unwrap_or_default(),
        shimmable: context.read(at, entry.shimmable()).unwrap_or(true),
    }
}

fn beam(context: &mut Context<'_>, at: Path, entry: &Beam, known: &[String]) -> BeamSpec {
    let name = context.text(&at, entry.name()).unwrap_or_default().to_owned();
    let mut nests = Vec::new();
    for (here, item) in context.list(&at, entry.nests()) {
        if let Some(nest) = context.text(&here, item) {
            context.known(&here, nest, known, "no-such-nest");
            nests.push(nest.to_owned());
        }
    }
    let boxes = context.each(&at, entry.boxes());
    BeamSpec { at, name, nests, boxes }
}

impl FrameSpec {
    /// The frame with its nests, or what is missing of it.
    pub(crate) fn loaded(
        &self,
        context: &mut Context<'_>,
        nests: &[Named<'_>],
    ) -> Option<LoadedFrame> {
        let at = path();
        if self.supports.is_empty() && self.weight.is_none() {
            return None;
        }
        let mut whole = self.sound;
        let (mut supports, mut doubts, mut stacks) = (Vec::new(), Vec::new(), Vec::new());
        let (mut not_good, mut names) = (Vec::new(), Vec::new());
        for written in &self.supports {
            match written.standing(context, nests, self.stop) {
                Some((support, computed, stack)) => {
                    stacks.push(stack.clone());
                    supports.push(support);
                    doubts.push(computed.doubts());
                    names.push(written.nest.clone());
                    let coils = computed.seats.iter().filter_map(Seated::not_good);
                    not_good.extend(coils.map(|coil| text!("{}, {coil}", written.nest)));
                }
                None => whole = false,
            }
        }
        let Some(load) = self.weight else {
            if self.sound {
                let text = "The weight is not given: without it no load is known.";
                context.note(&at.field("weight"), "weight-unknown", text);
            }
            return None;
        };
        if !whole {
            return None;
        }
        let weight = Weight { load, centre: self.centre };
        match Frame::new(supports, self.warp) {
            Ok(frame) => Some(LoadedFrame { at, frame, weight, doubts, stacks, not_good, names }),
            Err(error) => {
                context.problem(self.refused(context.format, &at, &error));
                None
            }
        }
    }

    /// The names of the nests under it, in their order.
    pub(crate) fn names(&self) -> Vec<&str> {
        self.supports.iter().map(|support| support.nest.as_str()).collect()
    }

    /// Heights that were taped under its own weight: those of nests, and those of its points.
    pub(crate) fn taped(&self, mut of_nests: Vec<TapedAt>) -> Vec<TapedAt> {
        of_nests.extend(self.points.iter().filter_map(|point| point.taped.clone()));
        of_nests
    }

    /// Why the frame does not stand, at the field that has to change.
    pub(crate) fn refused(&self, format: Format, weighed: &Path, error: &FrameError) -> Problem {
        let at = path();
        let support = |Nth(counted): Nth| {
            let support = counted.checked_sub(1).and_then(|index| self.supports.get(index));
            support_path(support.map_or(0, |support| support.index))
        };
        let (at, code, example) = match *error {
            FrameError::Count { .. } => (at.field("supports"), "too-few-supports", ""),
            FrameError::SamePlace { second, .. } => {
                (support(second).field("along"), "same-place", "")
            }
            FrameError::InLine { .. } => (at.field("supports"), "in-line", ""),
            FrameError::Weight { .. } => {
                (weighed.field("weight"), "no-weight", bounds::LOAD.example(format.system))
            }
            FrameError::Tips { .. } => (weighed.field("centre"), "tips", "0"),
            FrameError::Crushed { support: which, .. } => (support(which), "crushed", ""),
            FrameError::Warp { .. } | FrameError::Slack { .. } => {
                let example = bounds::WARP_STIFFNESS.example(format.system);
                (at.field("warp_stiffness"), "slack", example)
            }
            _ => (at.field("supports"), "restless", ""),
        };
        let reader = Reader { system: format.system, nests: &self.names() };
        Problem::said(&at, code, &error.say_to(reader), example)
    }
}

impl SupportSpec {
    /// The support and its nest, or what is missing of it.
    fn standing<'n>(
        &self,
        context: &mut Context<'_>,
        nests: &[Named<'n>],
        stop: Option<SpringRate>,
    ) -> Option<(Support, &'n ComputedNest, &'n Stack)> {
        let at = support_path(self.index);
        if self.nest.is_empty() {
            let text = "The support does not say which nest stands there.";
            context.note(&at, "support-unknown", text);
            return None;
        }
        let nest = nests.iter().find(|nest| nest.id == self.nest)?;
        let (Some(along), Some(across)) = (self.along, self.across) else {
            let text = text!("Where {} stands along and across is not given.", self.nest);
            context.note(&at, "place-unknown", text);
            return None;
        };
        let Some(computed) = nest.computed else {
            let text = text!(
                "{}: the loads of this nest are not known, so those of the frame cannot be worked out.",
                self.nest
            );
            context.note(&at, "load-unknown", text);
            return None;
        };
        let support = Support {
            place: Place { along, across },
            nest: nest.stack.over(&computed.nest).ok()?,
            stop,
            shim: self.shim,
            ground: self.ground + nest.stack.thickness(),
        };
        Some((support, computed, nest.stack))
    }
}

impl LoadedFrame {
    /// What the nests on one side are called together; none where they are too many to be named.
    fn named(&self, is_there: impl Fn(Place) -> bool) -> Option<String> {
        const MOST: usize = 3;
        let nests = self.frame.supports().iter().zip(&self.names);
        let names: Vec<&String> =
            nests.filter(|(of, _)| is_there(of.place)).map(|(_, name)| name).collect();
        (!names.is_empty() && names.len() <= MOST).then(|| quantity::joined(names.iter(), " and "))
    }

    /// What its four sides are called, after the nests there.
    pub(crate) fn ends(&self) -> FrameEnds {
        let middle = self.frame.middle();
        let call = |is_there: &dyn Fn(Place) -> bool, else_called: &str| {
            self.named(is_there).unwrap_or_else(|| else_called.to_owned())
        };
        FrameEnds {
            ahead: call(&|at| at.along > middle.along, "the end where along is greatest"),
            behind: call(&|at| at.along < middle.along, "the end where along is least"),
            left: call(&|at| at.across > middle.across, "the side where across is greatest"),
            right: call(&|at| at.across < middle.across, "the side where across is least"),
        }
    }

    /// The same with its weight at another place.
    pub(crate) fn weighed_at(&self, centre: Place) -> Self {
        self.under(Weight { centre, ..self.weight }, &self.at)
    }

    /// The same under another weight, which is written elsewhere.
    pub(crate) fn under(&self, weight: Weight, at: &Path) -> Self {
        Self { weight, at: at.clone(), ..self.clone() }
    }

    /// What is in doubt of each coil of each nest.
    pub(crate) fn coil_doubts(&self) -> &[Vec<frame::CoilDoubt>] {
        &self.doubts
    }

    /// Loads, shares and heights with their doubts, for a frame that stands so: without end where they
    /// cannot be had.
    pub(crate) fn doubts(&self, frame: &Frame, settled: &Settled) -> Vec<LoadDoubt> {
        frame.doubted(self.weight, &self.doubts).unwrap_or_else(|_| {
            let unknown = |standing: &SettledSupport| LoadDoubt {
                load: Doubted { value: standing.load, doubt: standing.load * f64::INFINITY },
                share: Doubted { value: standing.share, doubt: f64::INFINITY },
                height: Doubted { value: standing.height, doubt: standing.height * f64::INFINITY },
            };
            settled.supports.iter().map(unknown).collect()
        })
    }
}

/// How a frame stands, with the frame at rest; none but a report where it tips.
pub(crate) fn settle(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
) -> Option<(Option<Settled>, FrameReport)> {
    match loaded.frame.settle(loaded.weight) {
        Ok(settled) => {
            let report = report(context, written, loaded, &settled);
            Some((Some(settled), report))
        }
        Err(error) => {
            let problem = written.refused(context.format, &loaded.at, &error);
            let tips = matches!(error, FrameError::Tips { .. });
            let report = tips.then(|| tipped(context, &problem.message, loaded));
            context.problem(problem);
            report.map(|report| (None, report))
        }
    }
}

/// The weight as it is written.
fn weighs(context: &mut Context<'_>, loaded: &LoadedFrame) -> Figure {
    let format = context.format;
    let weight = format.figure::<Force>(loaded.weight.load);
    let (formula, sign) = letter!("W");
    let said = format.exact::<Force>(loaded.weight.load);
    context.ledger.work(weight, formula, &[(sign, &said)], "as written")
}

fn tipped(context: &mut Context<'_>, why: &str, loaded: &LoadedFrame) -> FrameReport {
    FrameReport {
        name: String::new(),
        weight: weighs(context, loaded),
        state: FrameState::Tips,
        sentence: sentence(why),
        lean_along: None,
        lean_across: None,
        ends: None,
        sides: Vec::new(),
        diagonal: None,
        diagonal_height: None,
        warp: None,
        mean: None,
        rocks: false,
        not_good: loaded.not_good.clone(),
        supports: Vec::new(),
        points: Vec::new(),
        standing: None,
        weighed: None,
        weights: Vec::new(),
    }
}

fn report(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    settled: &Settled,
) -> FrameReport {
    let format = context.format;
    let supports = supports(context, written, loaded, &loaded.frame, settled);
    let [along, across] = leans(context, &loaded.frame, settled);
    let diagonal = settled.diagonal.map(|diagonal| {
        let of = diagonals(format, loaded, settled);
        let values: [Value<'_>; 2] = [("F1", &of.loads[0]), ("F2", &of.loads[1])];
        let load = format.figure::<Force>(diagonal.load);
        let load = context.ledger.work(load, DIAGONAL, &values, &frame::SOURCE);
        let values: [Value<'_>; 2] = [("h1", &of.heights[0]), ("h2", &of.heights[1])];
        let height = format.fine(diagonal.height);
        let height = context.ledger.work(height, DIAGONAL_HEIGHT, &values, &frame::SOURCE);
        (load, height)
    });
    let warp = (settled.warp.value != 0.0).then(|| {
        let [x, y] = [reach(&loaded.frame, |at| at.along), reach(&loaded.frame, |at| at.across)];
        let w = warp_said(format, settled.twist);
        let values: [Value<'_>; 3] =
            [("w", &w), ("X", &format.decimal(x)), ("Y", &format.decimal(y))];
        context.ledger.work(format.fine(settled.warp), WARPED, &values, &frame::SOURCE)
    });
    let mean = {
        let (weight, nests) = (format.say::<Force>(loaded.weight.load), settled.supports.len());
        let values: [Value<'_>; 2] = [("W", &weight), ("N", &nests)];
        context.ledger.work(format.figure::<Force>(settled.mean), MEAN_LOAD, &values, "definition")
    };
    let mut sides = lower_sides(loaded, [&along, &across]);
    if let Some((load, height)) = &diagonal {
        let nests = diagonal_nests(loaded);
        let names = [text!("{nests} carry more by"), text!("{nests} carry less by")];
        sides.push(Sided::of(load, names));
        sides
            .push(Sided::of(height, ["and stand higher by", "and stand lower by"].map(Into::into)));
    }
    let (diagonal, diagonal_height) = diagonal.unzip();
    FrameReport {
        name: String::new(),
        weight: weighs(context, loaded),
        state: FrameState::Settled,
        sentence: stance(format, loaded, settled, &supports),
        lean_along: Some(along),
        lean_across: Some(across),
        ends: Some(loaded.ends()),
        sides,
        diagonal,
        diagonal_height,
        warp,
        mean: Some(mean),
        rocks: settled.rocks,
        not_good: loaded.not_good.clone(),
        supports,
        points: Vec::new(),
        standing: None,
        weighed: None,
        weights: Vec::new(),
    }
}

/// The two diagonals of a frame: the sum of the loads and the mean of the heights of each.
struct Diagonals {
    loads: [String; 2],
    heights: [String; 2],
}

/// On which diagonal a place lies: that of the places ahead on the left and behind on the right, or the other.
fn side(loaded: &LoadedFrame, place: Place) -> Option<Ordering> {
    let middle = loaded.frame.middle();
    ((place.along - middle.along) * (place.across - middle.across)).value.partial_cmp(&0.0)
}

/// The names of the nests on the first diagonal.
fn diagonal_nests(loaded: &LoadedFrame) -> String {
    let on = |place: Place| side(loaded, place) == Some(Ordering::Greater);
    loaded.named(on).unwrap_or_else(|| "one diagonal".to_owned())
}

fn diagonals(format: Format, loaded: &LoadedFrame, settled: &Settled) -> Diagonals {
    let on = |way: Ordering| {
        let nests = loaded.frame.supports().iter().zip(&settled.supports);
        nests
            .filter(move |(of, _)| side(loaded, of.place) == Some(way))
            .map(|(_, standing)| standing)
    };
    let ways = [Ordering::Greater, Ordering::Less];
    Diagonals {
        loads: ways.map(|way| {
            let loads = on(way).map(|standing| format.say::<Force>(standing.load));
            text!("({})", quantity::joined(loads, " + "))
        }),
        heights: ways.map(|way| {
            let heights = on(way).map(|standing| format.decimal(standing.height));
            text!("({}) / {}", quantity::joined(heights, " + "), on(way).count())
        }),
    }
}

/// A twist per area.
pub(crate) fn warp_said(format: Format, twist: f64) -> String {
    match format.system {
        System::Inch => {
            text!("{}/in", quantity::write_number(twist * Length::new::<unit::inch>(1.0).value, 7))
        }
        System::Metric => text!("{}/mm", quantity::write_number(twist * 1e-3, 7)),
    }
}

/// The rise of a settled frame from end to end of its nests, along and across.
pub(crate) fn leans(context: &mut Context<'_>, frame: &Frame, settled: &Settled) -> [Figure; 2] {
    let format = context.format;
    let slopes = [settled.slope_along, settled.slope_across];
    let [a, b] = slopes.map(|slope| quantity::write_number(slope, 4));
    let x = format.decimal(reach(frame, |at| at.along));
    let y = format.decimal(reach(frame, |at| at.across));
    let mut lean = |lean: Length, formula, values: [Value<'_>; 2]| {
        context.ledger.work(format.fine(lean), formula, &values, &frame::SOURCE)
    };
    [
        lean(settled.lean_along, RISE_ALONG, [("a", &a), ("X", &x)]),
        lean(settled.lean_across, RISE_ACROSS, [("b", &b), ("Y", &y)]),
    ]
}

/// Which sides of a frame are the lower ones, of its lean along and across.
pub(crate) fn lower_sides(loaded: &LoadedFrame, leans: [&Figure; 2]) -> Vec<Sided> {
    let FrameEnds { ahead, behind, left, right } = loaded.ends();
    let sides = [[behind, ahead], [right, left]];
    let lower = |side: String| text!("Lower at {side} by");
    leans.into_iter().zip(sides).map(|(lean, at)| Sided::of(lean, at.map(lower))).collect()
}

/// How far the nests of a frame reach.
fn reach(frame: &Frame, of: fn(&Place) -> Length) -> Length {
    let places = || frame.supports().iter().map(|support| of(&support.place));
    let most = places().reduce(|one, other| if other > one { other } else { one });
    let least = places().reduce(|one, other| if other < one { other } else { one });
    most.unwrap_or_default() - least.unwrap_or_default()
}

/// What each nest of a frame carries, in the order of the job.
pub(crate) fn supports(
    context: &mut Context<'_>,
    written: &FrameSpec,
    loaded: &LoadedFrame,
    frame: &Frame,
    settled: &Settled,
) -> Vec<SupportReport> {
    let format = context.format;
    let doubts = loaded.doubts(frame, settled);
    let [a, b] =
        [settled.slope_along, settled.slope_across].map(|slope| quantity::write_number(slope, 7));
    let w = warp_said(format, settled.twist);
    let middle = format.decimal(settled.middle);
    let stacks = loaded.stacks.iter().zip(&doubts);
    let nests = written.supports.iter().zip(frame.supports()).zip(&settled.supports).zip(stacks);
    let reports = nests.map(|(((written, support), standing), (stack, doubt))| {
        let squeezed = stack.squeezed(standing.load);
        let stands = standing.height + squeezed;
        let load = format.doubted::<Force>(standing.load, doubt.load.doubt.value);
        let with = text!(
            "{} in all, on this nest at {}",
            format.say::<Force>(loaded.weight.load),
            format.decimal(stands)
        );
        let load = context.ledger.show(load, AT_REST, with, &frame::SOURCE);
        let height = format.height(stands).give_or_take(format, doubt.height.doubt);
        let values: [Value<'_>; 12] = [
            ("z", &middle),
            ("a", &a),
            ("x", &format.decimal(support.place.along)),
            ("xm", &format.decimal(frame.middle().along)),
            ("b", &b),
            ("y", &format.decimal(support.place.across)),
            ("ym", &format.decimal(frame.middle().across)),
            ("w", &w),
            ("g", &format.decimal(support.ground - stack.thickness())),
            ("T", &format.decimal(stack.thickness())),
            ("sq", &format.decimal(squeezed)),
            ("t", &format.decimal(support.shim)),
        ];
        let formula = match (frame.warp().is_some(), stack.layers().is_empty()) {
            (false, true) => frame::HEIGHT,
            (true, true) => frame::HEIGHT_WARPED,
            (false, false) => frame::HEIGHT_STACKED,
            (true, false) => frame::HEIGHT_STACKED_WARPED,
        };
        let height = context.ledger.work(height, formula, &values, &frame::SOURCE);
        let decimals = decimals(doubt.share.doubt);
        let mut share = Format::percent(standing.share, decimals);
        let off = Format::percent(doubt.share.doubt, decimals).text;
        if !doubt.share.doubt.is_finite() {
            share.doubt_text = Some(DOUBT_NOT_KNOWN.to_owned());
        } else if !is_zero(&off) {
            share.doubt_si = Some(doubt.share.doubt);
            share.doubt_text = Some(text!("± {off}"));
        }
        let values: [Value<'_>; 2] = [
            ("F", &format.say::<Force>(standing.load)),
            ("Fm", &format.say::<Force>(settled.mean)),
        ];
        let share = context.ledger.work(share, OF_MEAN, &values, &frame::SOURCE);
        SupportReport {
            nest: written.nest.clone(),
            sentence: carries(&written.nest, standing, &share, decimals),
            height,
            to_solid: to_solid(context, support, standing, squeezed),
            load,
            share,
            state: match standing.contact {
                Contact::Loose => SupportState::Loose,
                Contact::Carrying => SupportState::Carrying,
                Contact::Bottomed => SupportState::Bottomed,
            },
        }
    });
    reports.collect()
}

/// What is left of the height of a nest until it is solid, above zero while its springs carry.
fn to_solid(
    context: &mut Context<'_>,
    support: &Support,
    standing: &SettledSupport,
    squeezed: Length,
) -> Option<Figure> {
    let solid = support.nest.solid()?;
    let left = standing.height - solid.height;
    let format = context.format;
    let stands = standing.height + squeezed;
    let values: [Value<'_>; 2] =
        [("h", &format.decimal(stands)), ("hc", &format.decimal(stands - left))];
    Some(context.ledger.work(format.fine(left), LEFT_TO_SOLID, &values, "definition"))
}

/// So many that one standard uncertainty of a share shows, and no more.
pub(crate) fn decimals(doubt: f64) -> usize {
    match doubt {
        doubt if doubt >= 0.0095 || doubt <= 0.0 => 0,
        doubt if doubt >= 0.000_95 => 1,
        _ => 2,
    }
}

/// `A left carries 6 % more than the mean, ± 2 %.`
fn carries(nest: &str, standing: &SettledSupport, share: &Figure, decimals: usize) -> String {
    let off = Format::percent((standing.share - 1.0).abs(), decimals).text;
    let side = match standing.contact {
        Contact::Loose => return text!("{nest} carries nothing: it is off its seat."),
        _ if is_zero(&off) => "just the mean".to_owned(),
        _ if standing.share > 1.0 => text!("{off} more than the mean"),
        _ => text!("{off} less than the mean"),
    };
    let doubt = share.doubt_text.as_ref().map_or_else(String::new, |doubt| text!(", {doubt}"));
    let solid = if standing.contact == Contact::Bottomed { " It is pressed solid." } else { "" };
    text!("{nest} carries {side}{doubt}.{solid}")
}

/// Whether nothing is left of a figure as it is written.
fn is_zero(text: &str) -> bool {
    !text.contains(|c: char| c.is_ascii_digit() && c != '0')
}

/// Which way the frame leans, and who carries most.
fn stance(
    format: Format,
    loaded: &LoadedFrame,
    settled: &Settled,
    supports: &[SupportReport],
) -> String {
    let ends = loaded.ends();
    let way = |lean: Length, of: fn(&Place) -> Length, up: &str, down: &str| {
        let size = format.fine_text(lean.abs());
        if is_zero(&size) {
            return None;
        }
        let over = format.fine_text(reach(&loaded.frame, of));
        Some(text!("lower at {} by {size} over {over}", if lean.value > 0.0 { down } else { up }))
    };
    let along = way(settled.lean_along, |at| at.along, &ends.ahead, &ends.behind);
    let across = way(settled.lean_across, |at| at.across, &ends.left, &ends.right);
    let leans: Vec<String> = along.into_iter().chain(across).collect();
    let lean = if leans.is_empty() {
        "The frame stands level.".to_owned()
    } else {
        text!("The frame is {}.", quantity::joined(leans.iter(), ", and "))
    };
    let most = supports.iter().reduce(|most, one| {
        let greater = (one.share.si - 1.0).abs() > (most.share.si - 1.0).abs();
        if greater { one } else { most }
    });
    let rocks = if settled.rocks {
        " It is free to rock: the heights shown are one way to stand among many."
    } else {
        ""
    };
    most.map_or_else(String::new, |most| text!("{lean} {}{rocks}", most.sentence))
}

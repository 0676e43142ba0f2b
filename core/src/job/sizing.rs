//! Drawings for a need: read for every report, searched for when it is asked for.

mod design;
mod words;

use super::answer::answered;
use super::context::Context;
use super::figures::{axes, sentence, text};
use super::input::Job;
use super::problem::Path;
use super::report::{DesignPlace, Problem, RefusedBar, SizingMap, SizingReport};
use super::{cautions, coil, file};
use crate::coil::ends::Ends;
use crate::coil::set;
use crate::material::{Against, Presetting, Steel};
use crate::order::InOrder;
use crate::quantity::{Force, Length, MassDensity, Pressure, SpringRate, System, si};
use crate::say::Say;
use crate::sizing::{
    Allowed, Balance, Limit, Make, Metal, Need, NeedError, NeedField, PairSizing, Rank, Reserve,
    Room, Rounding, Sized, Sizing, Stiffness, USUAL_TOLERANCE, Work, steps,
};
use crate::tables::Tables;
use design::Drawer;

/// Drawings of coils, and of pairs of coils, for what a job needs.
#[must_use]
pub fn size(job: &Job, tables: &Tables<'_>) -> SizingReport {
    size_with_progress(job, tables, &mut |_| {})
}

/// What [`size`] gives, telling a listener from time to time which part is done, from 0 to 1: the pairs of bars take
/// the time.
#[must_use]
pub fn size_with_progress(
    job: &Job,
    tables: &Tables<'_>,
    progress: &mut dyn FnMut(f64),
) -> SizingReport {
    let axes = axes(file::system_of(job));
    let mut report =
        SizingReport { cautions: cautions::replace(), axes, ..SizingReport::default() };
    (report.problems, report.notes, report.workings) =
        answered(job, tables, |context| fill(context, job, &mut report, progress));
    report
}

/// What a job says of a need.
pub(crate) struct SizingSpec {
    /// Whether all that is written could be read.
    sound: bool,
    load: Option<Force>,
    height: Option<Length>,
    rate: Option<SpringRate>,
    second: (Option<Force>, Option<Length>),
    within: f64,
    room: Room,
    steel: Option<Steel>,
    ends: Option<Ends>,
    stress: Option<Pressure>,
    stress_solid: Option<Pressure>,
    stress_factor: Against,
    bars: Vec<Length>,
    pair: bool,
    rank: Rank,
}

/// Where the fields of a need stand.
fn path() -> Path {
    Path::of("need")
}

/// Reads what a job needs.
pub(crate) fn read(context: &mut Context<'_>, job: &Job) -> Option<SizingSpec> {
    let (at, entry) = context.object(&Path::default(), job.need())?;
    let before = context.problems.len();
    let clearance = context.read(&at, entry.clearance());
    let room = Room {
        pocket: context.read(&at, entry.pocket()),
        post: context.read(&at, entry.post()),
        clearance: clearance.unwrap_or_default(),
        gap: clearance,
        solid: context.read(&at, entry.solid()),
        free: context.read(&at, entry.free()),
        ..Room::default()
    };
    let written = SizingSpec {
        sound: true,
        load: context.read(&at, entry.load()),
        height: context.read(&at, entry.height()),
        rate: context.read(&at, entry.rate()),
        second: (context.read(&at, entry.second_load()), context.read(&at, entry.second_height())),
        within: context.read(&at, entry.within()).unwrap_or(USUAL_TOLERANCE),
        room,
        steel: context.read(&at, entry.steel()),
        ends: context.read(&at, entry.ends()),
        stress: context.read(&at, entry.stress()),
        stress_solid: context.read(&at, entry.stress_solid()),
        stress_factor: coil::stress_factor(context, &at, entry.stress_factor()),
        bars: context.each(&at, entry.bars()),
        pair: context.read(&at, entry.pair()).unwrap_or(false),
        rank: context.read(&at, entry.rank()).unwrap_or_default(),
    };
    Some(SizingSpec { sound: context.problems.len() == before, ..written })
}

/// A need with the bars to choose from.
struct Wanted {
    need: Need,
    steel: Steel,
    bars: Vec<Length>,
    /// Whether the bars are those of the tables.
    of_tables: bool,
    refused: Vec<RefusedBar>,
}

fn fill(
    context: &mut Context<'_>,
    job: &Job,
    report: &mut SizingReport,
    progress: &mut dyn FnMut(f64),
) {
    let Some(written) = read(context, job) else { return };
    let Some(wanted) = wanted(context, &written) else { return };
    report.refused.clone_from(&wanted.refused);
    let turns = steps(LEAST_TURNS, MOST_TURNS, STEP);
    if let Some(single) = singles(context, &written, &wanted, &turns, report) {
        report.sentence = single;
    }
    if written.pair {
        let sentence = pairs(context, &written, &wanted, report, progress);
        report.sentence = if report.sentence.is_empty() {
            sentence
        } else {
            text!("{} {sentence}", report.sentence)
        };
    }
}

/// The active turns to choose from.
const LEAST_TURNS: f64 = 2.0;
const MOST_TURNS: f64 = 20.0;
const STEP: f64 = 0.25;
/// Those of pairs, which are many more.
const STEP_OF_PAIRS: f64 = 0.5;
/// Bars of the tables that are shown on either side of those that do.
const BESIDE: usize = 3;
/// At most so many pairs are listed.
const MOST_PAIRS: usize = 12;

fn rounding(system: System) -> Rounding {
    match system {
        System::Inch => Rounding::INCH,
        System::Metric => Rounding::METRIC,
    }
}

/// The need, or notes of what it lacks.
fn wanted(context: &mut Context<'_>, written: &SizingSpec) -> Option<Wanted> {
    let at = path();
    let mut lacks = |field: &str, text: &str| context.note(&at.field(field), "need-unknown", text);
    if written.load.is_none() {
        lacks("load", "What the coil has to carry is not given.");
    }
    let (second_load, second_height) = written.second;
    let stiffness = match (written.rate, second_load, second_height) {
        (Some(rate), _, _) => Some(Stiffness::Rate { rate, within: written.within }),
        (None, Some(load), Some(height)) => {
            Some(Stiffness::SecondLoad { load, height, within: written.within })
        }
        _ => None,
    };
    if stiffness.is_none() {
        lacks("rate", "Neither a rate nor a second load with its height is given.");
    }
    if written.steel.is_none() {
        lacks("steel", "Of which steel the coil is to be wound is not given.");
    }
    let (Some(load), Some(stiffness), Some(steel), true) =
        (written.load, stiffness, written.steel, written.sound)
    else {
        return None;
    };
    let ends = written.ends.unwrap_or_else(|| {
        let text = "The form of the ends is not given: closed and ground is taken.";
        context.note(&at.field("ends"), "ends-assumed", text);
        Ends::ClosedGround
    });
    let mut refused = Vec::new();
    let of_tables = written.bars.is_empty();
    let listed = if of_tables { listed(context, ends) } else { written.bars.clone() };
    let mut bars = Vec::new();
    for bar in listed {
        match steel.fits(bar) {
            Ok(()) => bars.push(bar),
            Err(error) if !of_tables => refused.push(RefusedBar {
                bar: context.format.size(bar).text,
                why: sentence(&error.say(context.system()).to_string()),
            }),
            Err(_) => {}
        }
    }
    bars.put_in_order(|one, other| one.value.total_cmp(&other.value));
    bars.dedup();
    let metal = metal(context, written, &steel, &bars)?;
    let work = Work { load, height: written.height, within: written.within, stiffness };
    let make = Make::usual(ends);
    let need = Need { work, room: written.room, reserve: Reserve::default(), make, metal };
    Some(Wanted { need, steel, bars, of_tables, refused })
}

/// Bars of the tables: round bar for coils wound hot; else wire, and round bar where wire ends.
fn listed(context: &Context<'_>, ends: Ends) -> Vec<Length> {
    let series = |id: &str| context.tables.series(id).map_or(&[][..], |series| series.sizes());
    let round = match context.system() {
        System::Inch => series("round-bar-inch"),
        System::Metric => series("round-bar-metric"),
    };
    if ends == Ends::TaperedGround {
        return round.to_vec();
    }
    let wire = series("en-10270-1-wire");
    match context.system() {
        System::Inch => {
            let thin = round.first().copied().unwrap_or_default();
            wire.iter().filter(|size| **size < thin).chain(round).copied().collect()
        }
        System::Metric => {
            let thick = wire.last().copied().unwrap_or_default();
            wire.iter().chain(round.iter().filter(|size| **size > thick)).copied().collect()
        }
    }
}

/// What the steel bears, as it is given or as the tables have it.
fn metal(
    context: &mut Context<'_>,
    written: &SizingSpec,
    steel: &Steel,
    bars: &[Length],
) -> Option<Metal> {
    let at = path();
    let factor = set::meant(written.stress_factor);
    let stated = |stress| Allowed::Stress { stress, factor };
    let strength = steel.strengths().first().copied();
    let row = strength.map(|strength| Allowed::Row { strength, presetting: Presetting::AsWound });
    let known = row.filter(|row| bars.iter().any(|bar| row.of(*bar).is_ok()));
    let Some(at_load) = written.stress.map(stated).or(known) else {
        let error =
            bars.first().and_then(|bar| steel.allowable_static(*bar, Presetting::AsWound).err());
        let why = error
            .map_or_else(String::new, |error| sentence(&error.say(context.system()).to_string()));
        let text = text!("{why} Give the greatest stress that it may have under the load.");
        context.note(&at.field("stress"), "strength-unknown", text.trim());
        return None;
    };
    let at_solid = written.stress_solid.map(stated).or(known);
    if at_solid.is_none() {
        let text = "No stress is given that the steel bears at solid, and none is held here: the stress at solid is not limited.";
        context.note(&at.field("stress_solid"), "solid-stress-unknown", text);
    }
    Some(Metal {
        shear_modulus: steel.shear_modulus().value,
        poisson: steel.poisson(),
        density: steel.density().map_or(USUAL_DENSITY, |density| density.value),
        at_load,
        at_solid,
    })
}

/// That of spring steel, kg/m³; common practice, no source.
const USUAL_DENSITY: MassDensity = si(7850.0);

/// One coil for the need: the sentence of what came of it; none where the need contradicts itself.
fn singles(
    context: &mut Context<'_>,
    written: &SizingSpec,
    wanted: &Wanted,
    turns: &[f64],
    report: &mut SizingReport,
) -> Option<String> {
    let whole = sought(context, wanted, &wanted.bars, turns, written.pair)?;
    let rounding = rounding(context.system());
    let sized = whole.designs(&rounding, written.rank);
    let shown = near(&wanted.bars, &sized, wanted.of_tables);
    let sizing = Sizing::new(wanted.need, &shown, turns).unwrap_or(whole);
    let drawer = Drawer { need: &wanted.need, steel: wanted.steel };
    report.map = Some(map(context, &sizing, &shown, &sized));
    for found in &sized.designs {
        let report_of = drawer.report(context, &found.design, &found.verdict, None);
        report.designs.push(report_of);
    }
    for why in sized.refused.iter().filter(|why| shown.contains(&why.bar)) {
        report.refused.push(RefusedBar {
            bar: context.format.size(why.bar).text,
            why: sentence(&text!(
                "with {} active turns, the nearest, {}",
                words::turns(why.active),
                why.verdict.nearest
            )),
        });
    }
    let count = wanted.bars.len();
    Some(match report.designs.first() {
        Some(best) => text!(
            "Of the {count} bars {} give a coil that does; the {} is of {}.",
            report.designs.len(),
            words::best(written.rank),
            best.bar.text
        ),
        None => text!("None of the {count} bars gives a coil that does.{}", most_often(&sized)),
    })
}

/// What keeps most bars from it.
fn most_often(sized: &Sized) -> String {
    let count =
        |limit: Limit| sized.refused.iter().filter(|why| why.verdict.nearest == limit).count();
    let most = Limit::ALL
        .into_iter()
        .reduce(|most, limit| if count(limit) > count(most) { limit } else { most });
    most.filter(|limit| count(*limit) > 0)
        .map_or_else(String::new, |limit| text!(" For most, {}.", limit.sentence()))
}

/// The sizing, or the problem of what contradicts itself. A pair may do where no single coil does.
fn sought(
    context: &mut Context<'_>,
    wanted: &Wanted,
    bars: &[Length],
    turns: &[f64],
    pair: bool,
) -> Option<Sizing> {
    match Sizing::new(wanted.need, bars, turns) {
        Ok(sizing) => Some(sizing),
        Err(NeedError::RoomCannotCarry { .. }) if pair => None,
        Err(error) => {
            context.problem(refused(context.system(), &error));
            None
        }
    }
}

/// A need that no coil can meet, at the field that has to change.
fn refused(system: System, error: &NeedError) -> Problem {
    let field = match error.field() {
        NeedField::Load => "load",
        NeedField::Height => "height",
        NeedField::Rate => "rate",
        NeedField::SecondLoad => "second_load",
        NeedField::SecondHeight => "second_height",
        NeedField::LoadWithin | NeedField::RateWithin | NeedField::SecondWithin => "within",
        NeedField::Pocket => "pocket",
        NeedField::Post => "post",
        NeedField::Clearance | NeedField::Gap => "clearance",
        NeedField::Solid => "solid",
        NeedField::Free => "free",
        NeedField::Metal => "steel",
        NeedField::StressAtLoad => "stress",
        NeedField::StressAtSolid => "stress_solid",
        NeedField::Bars | NeedField::Bar => "bars",
        _ => "",
    };
    Problem::said(&path().field(field), "contradiction", &error.say(system), "")
}

/// The bars that do, with a few on either side; all of them where somebody chose them or none does.
fn near(bars: &[Length], sized: &Sized, of_tables: bool) -> Vec<Length> {
    let fits = |bar: &Length| sized.designs.iter().any(|found| found.design.coil.bar() == *bar);
    let first = bars.iter().position(fits);
    let last = bars.iter().rposition(fits);
    match (first, last) {
        (Some(first), Some(last)) if of_tables => {
            let from = first.saturating_sub(BESIDE);
            bars.iter().skip(from).take(last + BESIDE + 1 - from).copied().collect()
        }
        _ => bars.to_vec(),
    }
}

fn map(context: &Context<'_>, sizing: &Sizing, bars: &[Length], sized: &Sized) -> SizingMap {
    let map = sizing.map();
    let against: Vec<Option<Limit>> = map.cells().iter().map(|cell| cell.verdict.limit()).collect();
    let limits: Vec<Limit> =
        Limit::ALL.into_iter().filter(|limit| against.contains(&Some(*limit))).collect();
    let place = |limit: &Option<Limit>| {
        let found = limit.and_then(|limit| limits.iter().position(|known| *known == limit));
        found.map_or(0, |place| place + 1)
    };
    let nearest = |active: f64| {
        let off = |turns: &f64| (turns - active).abs();
        let turns = sizing.turns().iter().enumerate();
        turns.min_by(|(_, one), (_, other)| off(one).total_cmp(&off(other))).map(|(place, _)| place)
    };
    let designs = sized.designs.iter().filter_map(|found| {
        let design = found.design;
        let bar = bars.iter().position(|bar| *bar == design.coil.bar())?;
        Some(DesignPlace { bar, turns: nearest(design.turns.active())? })
    });
    SizingMap {
        bars: bars.iter().map(|bar| context.format.size(*bar).text).collect(),
        turns: sizing.turns().to_vec(),
        limits: limits.iter().map(|limit| words::limit(*limit).to_owned()).collect(),
        cells: against.iter().map(place).collect(),
        designs: designs.collect(),
    }
}

/// Two coils for the need, and the sentence of what came of it.
fn pairs(
    context: &mut Context<'_>,
    written: &SizingSpec,
    wanted: &Wanted,
    report: &mut SizingReport,
    progress: &mut dyn FnMut(f64),
) -> String {
    let turns = steps(LEAST_TURNS, MOST_TURNS, STEP_OF_PAIRS);
    let sizing = match PairSizing::new(wanted.need, &wanted.bars, &turns, Balance::default()) {
        Ok(sizing) => sizing,
        Err(error) => {
            context.problem_once(refused(context.system(), &error));
            return String::new();
        }
    };
    let rounding = rounding(context.system());
    let found = sizing.designs_with_progress(&rounding, written.rank, progress);
    let drawer = Drawer { need: &wanted.need, steel: wanted.steel };
    for pair in found.pairs.iter().take(MOST_PAIRS) {
        let pair = drawer.pair(context, pair);
        report.pairs.push(pair);
    }
    let count = found.pairs.len();
    match report.pairs.first() {
        Some(best) => text!(
            "Of the {} pairs of bars {count} give two coils that do together; the {} is of {} with {} inside.{}",
            count + found.refused.len(),
            words::best(written.rank),
            best.outer.bar.text,
            best.inner.bar.text,
            if count > MOST_PAIRS {
                text!(" The best {MOST_PAIRS} are shown.")
            } else {
                String::new()
            }
        ),
        None => text!(
            "None of the {} pairs of bars gives two coils that do together.",
            found.refused.len()
        ),
    }
}

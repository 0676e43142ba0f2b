//! What the ends of whole springs do between plates, and how low they get: the bands of
//! `coil::plates` and the authorities of `coil::solid` against computed springs, `data/closed-ends.csv`
//! and `data/tapered-ends.csv`, which say how they were made.

use coilnest::coil::ends::{DEAD_TURNS_DOUBT, Ends, Turns};
use coilnest::coil::plates::{self, Band, Stage};
use coilnest::coil::solid::{self, Solid};
use coilnest::quantity::Length;
use coilnest::quantity::unit::millimeter;
use serde::Deserialize;

const CLOSED: &str = include_str!("../data/closed-ends.csv");
const TAPERED: &str = include_str!("../data/tapered-ends.csv");
const ASIDE: &str = include_str!("../data/tapered-ends-aside.csv");

const BAR_MM: f64 = 10.0;

#[derive(Deserialize)]
struct ClosedRow {
    turns: f64,
    closed: f64,
    run_out: f64,
    light: f64,
    work: f64,
    solid: f64,
    rod_light: f64,
    rod_work: f64,
    rod_solid: f64,
}

#[derive(Deserialize)]
struct TaperedRow {
    turns: f64,
    taper: f64,
    seat: f64,
    closed: f64,
    gap: f64,
    run_out: f64,
    light: f64,
    work: f64,
    solid: f64,
    stack: f64,
    found: f64,
    as_drawn: String,
}

#[derive(Deserialize)]
struct AsideRow {
    taper: f64,
    light_least: f64,
    light_most: f64,
    work_least: f64,
    work_most: f64,
    solid_least: f64,
    solid_most: f64,
    above_least: f64,
    above_most: f64,
}

fn rows<R: for<'r> Deserialize<'r>>(text: &str) -> Vec<R> {
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
    reader.deserialize().collect::<Result<_, _>>().unwrap()
}

/// One turn closed, the tip just touching, all else as the band says of itself.
fn usual(row: &TaperedRow) -> bool {
    let whole = |value: f64, usual: f64| (value - usual).abs() < 1e-9;
    whole(row.closed, 1.0)
        && whole(row.gap, 0.0)
        && whole(row.run_out, 0.25)
        && whole(row.seat, 0.75)
        && row.as_drawn == "yes"
}

fn band(ends: Ends, stage: Stage) -> Band {
    plates::dead_turns(ends, stage).unwrap()
}

#[track_caller]
fn covers(band: Band, dead: f64, what: &str) {
    assert!(band.least <= dead && dead <= band.most, "{what}: {dead} outside {band:?}");
}

/// No wider than it has to be: to a tenth of a turn, beyond what the rows span.
#[track_caller]
fn is_tight(band: Band, spans: &[f64], slack: f64) {
    let least = spans.iter().copied().fold(f64::INFINITY, f64::min);
    let most = spans.iter().copied().fold(0.0, f64::max);
    assert!(least - band.least <= slack && band.most - most <= slack, "{least}, {most}: {band:?}");
}

#[test]
fn the_band_of_closed_ends_covers_solids_and_rod() {
    let all = rows::<ClosedRow>(CLOSED);
    assert_eq!(all.len(), 13);
    let usual: Vec<&ClosedRow> = all
        .iter()
        .filter(|row| (row.closed - 1.0).abs() < 1e-9 && (row.run_out - 0.25).abs() < 1e-9)
        .collect();
    assert_eq!(usual.len(), 9);
    let mut spans = [Vec::new(), Vec::new(), Vec::new()];
    for row in usual {
        let found =
            [[row.light, row.rod_light], [row.work, row.rod_work], [row.solid, row.rod_solid]];
        for ((stage, dead), span) in Stage::ALL.into_iter().zip(found).zip(&mut spans) {
            for dead in dead {
                covers(band(Ends::ClosedGround, stage), dead, &format!("{} turns", row.turns));
                span.push(dead);
            }
        }
    }
    for (stage, span) in Stage::ALL.into_iter().zip(&spans) {
        is_tight(band(Ends::ClosedGround, stage), span, 0.13);
    }
}

/// The rod stands for the solids, which is all that the tapered ends rest on: no further off than the
/// file says.
#[test]
fn the_rod_follows_the_solids() {
    for row in rows::<ClosedRow>(CLOSED) {
        for (off, allowed) in [
            (row.rod_light - row.light, 0.09),
            (row.rod_work - row.work, 0.11),
            (row.rod_solid - row.solid, 0.14),
        ] {
            assert!(off.abs() <= allowed + 5e-4, "{} turns: {off}", row.turns);
        }
    }
}

#[test]
fn the_band_of_tapered_ends_covers_every_taper_of_three_quarters_and_more() {
    let all = rows::<TaperedRow>(TAPERED);
    assert_eq!(all.len(), 103);
    let mut spans = [Vec::new(), Vec::new(), Vec::new()];
    let mut aside = 0;
    for row in all.iter().filter(|row| usual(row) && row.taper >= 0.75) {
        for ((stage, dead), span) in
            Stage::ALL.into_iter().zip([row.light, row.work, row.solid]).zip(&mut spans)
        {
            covers(band(Ends::TaperedGround, stage), dead, &format!("{} turns", row.turns));
            span.push(dead);
        }
    }
    assert!(spans[0].len() > 50, "{}", spans[0].len());
    // Of another kind of taper only the span is kept.
    for row in rows::<AsideRow>(ASIDE).iter().filter(|row| row.taper >= 0.75) {
        for ((stage, dead), span) in Stage::ALL
            .into_iter()
            .zip([
                [row.light_least, row.light_most],
                [row.work_least, row.work_most],
                [row.solid_least, row.solid_most],
            ])
            .zip(&mut spans)
        {
            for dead in dead {
                covers(band(Ends::TaperedGround, stage), dead, "aside");
                span.push(dead);
            }
        }
        aside += 1;
    }
    assert_eq!(aside, 1);
    for (stage, span) in Stage::ALL.into_iter().zip(&spans) {
        is_tight(band(Ends::TaperedGround, stage), span, 0.1);
    }
}

#[test]
fn a_half_turn_taper_has_a_band_of_its_own() {
    let rows_of = rows::<TaperedRow>(TAPERED);
    let half = rows_of.iter().filter(|row| usual(row) && row.taper < 0.75);
    let mut found: Vec<[f64; 3]> = half.map(|row| [row.light, row.work, row.solid]).collect();
    assert!(found.len() > 10, "{}", found.len());
    for row in rows::<AsideRow>(ASIDE).iter().filter(|row| row.taper < 0.75) {
        found.push([row.light_least, row.work_least, row.solid_least]);
        found.push([row.light_most, row.work_most, row.solid_most]);
    }
    for dead in found {
        for (stage, dead) in Stage::ALL.into_iter().zip(dead) {
            covers(plates::half_turn_taper(stage), dead, "half a turn");
        }
    }
}

#[test]
fn an_open_tip_leaves_fewer_dead_when_light() {
    let all = rows::<TaperedRow>(TAPERED);
    let open: Vec<&TaperedRow> = all.iter().filter(|row| (row.gap - 0.05).abs() < 1e-9).collect();
    assert_eq!(open.len(), 2);
    for row in open {
        covers(plates::OPEN_TIP_LIGHT, row.light, "open tip");
    }
}

/// Where the textbook's count stands: within its ± while the coil is light, and out of it near solid.
/// So no single count is right for a whole curve.
#[test]
fn the_textbooks_count_is_the_light_end_and_leaves_its_doubt_near_solid() {
    for ends in [Ends::ClosedGround, Ends::TaperedGround] {
        let count = ends.dead_turns();
        let [light, work, solid] = Stage::ALL.map(|stage| band(ends, stage));
        assert!(count - DEAD_TURNS_DOUBT <= light.least, "{ends:?}");
        assert!(light.most <= count + DEAD_TURNS_DOUBT, "{ends:?}");
        assert!(count + DEAD_TURNS_DOUBT < solid.least, "{ends:?}");
        assert!(light.most < work.most && work.most < solid.most, "{ends:?}");
    }
    // Closed and ground: two lies at work's lower end. Tapered: one and a half is below all of it.
    covers(band(Ends::ClosedGround, Stage::AtWork), 2.0, "closed");
    assert!(band(Ends::TaperedGround, Stage::AtWork).least > 1.5);
    covers(band(Ends::TaperedGround, Stage::Light), 1.5, "tapered");
}

/// Where a computed coil is solid, beside what the authorities say of tapered ends.
#[test]
fn tapered_ends_stand_solid_where_the_documentation_says() {
    let mm = Length::new::<millimeter>;
    let mut long = Vec::new();
    let mut short = Vec::new();
    for row in rows::<TaperedRow>(TAPERED).iter().filter(|row| usual(row)) {
        let turns = Turns::new(row.turns, Ends::TaperedGround.dead_turns()).unwrap();
        let solid = Solid::of(mm(BAR_MM), turns, Ends::TaperedGround);
        let above = row.found / BAR_MM - row.turns;
        if row.taper >= 0.75 {
            // Never as high as EN 13906-1 admits, so that no nest stops before it is said to.
            assert!(row.found < solid.greatest.get::<millimeter>(), "{}", row.turns);
            long.push(above);
        } else {
            assert!(row.found > solid.least.get::<millimeter>(), "{}", row.turns);
            short.push(above);
        }
        assert!(row.found > row.stack - 0.1 * BAR_MM, "{}", row.turns);
    }
    for row in rows::<AsideRow>(ASIDE) {
        let kind = if row.taper >= 0.75 { &mut long } else { &mut short };
        kind.extend([row.above_least, row.above_most]);
    }
    let ends = |all: &[f64]| {
        let least = all.iter().copied().fold(f64::INFINITY, f64::min);
        [least, all.iter().copied().fold(f64::NEG_INFINITY, f64::max)].map(|it| format!("{it:.2}"))
    };
    assert_eq!(ends(&long), ["-0.73", "-0.34"]);
    assert_eq!(ends(&short), ["-0.18", "0.04"]);
    assert!((solid::bars_over_turns(Ends::TaperedGround) + 0.3).abs() < 1e-12);
}

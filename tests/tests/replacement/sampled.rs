//! "Met throughout" and the ends of every range, against springs sampled within the tolerances and
//! put through the ordinary formulas.

use super::springs::{FIGURES, HalfWidths, Setting, Spring, middle, mm, setting};
use coilnest::coil::DiameterKind;
use coilnest::coil::buckling::Seating;
use coilnest::coil::ends::Ends;
use coilnest::drawing::{Allowable, Range};
use coilnest::quantity::si;
use coilnest::replacement::{
    AllowedRange, Amount, Around, Asked, Case, Compliance, Judgement, Offered, Requirement, Wanted,
};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};
use std::error::Error;

/// Half-widths as a drawing has them.
const HALF: HalfWidths =
    HalfWidths { bar: 0.08, diameter: 0.8, turns: 0.125, dead: 0.25, shear: 1.0, free: 2.0 };

/// From 0 to 1, one time in three on either end.
fn place(chance: &mut TestRng) -> f64 {
    (3.0 * (f64::from(chance.next_u32()) / f64::from(u32::MAX)) - 1.0).clamp(0.0, 1.0)
}

fn sampled(spring: Spring, half: HalfWidths, mut place: impl FnMut() -> f64) -> Spring {
    let mut off = |middle: f64, half: f64| middle + half * (2.0 * place() - 1.0);
    Spring {
        bar: off(spring.bar, half.bar),
        diameter: off(spring.diameter, half.diameter),
        turns: off(spring.turns, half.turns),
        dead: off(spring.dead, half.dead),
        shear: off(spring.shear, half.shear),
        free: off(spring.free, half.free),
        ..spring
    }
}

fn case(spring: Spring, half: HalfWidths, setting: &Setting) -> Case {
    let original = middle(DiameterKind::Mean).exact();
    let asked = Asked {
        working: Some(setting.working),
        cycle: Some(setting.cycle),
        seating: Seating::BothPivoted,
        nest_height: Some(AllowedRange::at_least(mm(1.0))),
        ..Asked::default()
    };
    let nest = Around {
        outer: vec![setting.outer.seated()],
        inner: vec![setting.inner.seated()],
        raise: mm(0.0),
        load: Some(setting.nest_load),
    };
    Case { nest: Some(nest), ..Case::new(original, spring.within(half), asked) }
}

fn range(judged: &Judgement, requirement: Requirement) -> Range<Amount> {
    match judged.line(requirement).and_then(|line| line.offered) {
        Some(Offered::Range(range)) => range,
        other => panic!("{requirement:?}: {other:?}"),
    }
}

/// Springs of each diameter that a drawing may give; a tall one that buckles; one whose stress at solid
/// turns round within the tolerance of the bar, its solid height being about half the free one; and one
/// with open ends.
fn springs() -> Vec<(Spring, HalfWidths)> {
    let plain = [DiameterKind::Mean, DiameterKind::Outside, DiameterKind::Inside];
    let mut springs: Vec<_> = plain.map(|across| (middle(across), HALF)).into();
    let tall = Spring { free: 290.0, turns: 12.0, ..middle(DiameterKind::Mean) };
    springs.push((tall, HALF));
    for across in plain {
        // Where the slope of the most stress is zero at 8 mm, found by halving, apart from this code.
        let free = match across {
            DiameterKind::Mean => 129.37,
            DiameterKind::Outside => 117.29,
            DiameterKind::Inside => 149.50,
        };
        springs.push((Spring { free, ..middle(across) }, HALF));
    }
    let open = Spring { ends: Ends::Open, dead: 0.0, turns: 7.5, ..middle(DiameterKind::Outside) };
    springs.push((open, HalfWidths { dead: 0.0, ..HALF }));
    springs
}

/// Limits that the ends of the ranges just meet.
fn just(judged: &Judgement, asked: &Asked) -> Asked {
    let within = |requirement| {
        let range = range(judged, requirement);
        let hair = |si: f64| 1e-9 * si.abs();
        let (least, most) = (range.least().si(), range.most().si());
        (least - hair(least), most + hair(most))
    };
    let length = |value| si(value);
    let most_stress = |requirement| {
        let stress = si(within(requirement).1);
        Some(Allowable { stress, ..super::springs::allowable() })
    };
    let lengths = |requirement| {
        let (least, most) = within(requirement);
        Some(AllowedRange::between(length(least), length(most)))
    };
    let (softest, stiffest) = within(Requirement::Rate);
    let rate = |value| si(value);
    let (lightest, heaviest) = within(Requirement::Load);
    let load = |value| si(value);
    let gap = within(Requirement::OuterGap).0.min(within(Requirement::InnerGap).0);
    Asked {
        pocket: Some(length(within(Requirement::Pocket).1)),
        post: Some(length(within(Requirement::Post).0)),
        gap: Some(length(gap)),
        free: lengths(Requirement::FreeHeight),
        rate: Some(AllowedRange::between(rate(softest), rate(stiffest))),
        load: Some(AllowedRange::between(load(lightest), load(heaviest))),
        solid: Some(length(within(Requirement::SolidHeight).1)),
        reserve: Some(length(within(Requirement::Reserve).0)),
        stress_at_work: most_stress(Requirement::StressAtWork),
        stress_at_solid: most_stress(Requirement::StressAtSolid),
        safety: Some(within(Requirement::Fatigue).0),
        nest_height: lengths(Requirement::NestHeight),
        ..asked.clone()
    }
}

fn meets(limits: AllowedRange<Amount>, si: f64) -> bool {
    limits.least.is_none_or(|least| si >= least.si())
        && limits.most.is_none_or(|most| si <= most.si())
}

/// The limits are those that the ranges only just keep, so that any spring beyond a range breaks one.
#[test]
fn met_throughout_is_met_by_every_sampled_spring() -> Result<(), Box<dyn Error>> {
    let setting = Setting { working: mm(100.0), ..setting() };
    let mut chance = TestRng::deterministic_rng(RngAlgorithm::ChaCha);
    let mut buckled = 0_u32;
    for (spring, half) in springs() {
        let mut case = case(spring, half, &setting);
        case.asked = just(&case.judge()?, &case.asked);
        let judged = case.judge()?;
        let mut met = Vec::new();
        for requirement in FIGURES {
            let line = judged.line(requirement).ok_or("a line")?;
            let Some(Wanted::Within(limits)) = line.wanted else { return Err("limits".into()) };
            // Nobody can ask for another height of buckling than the working one.
            if requirement != Requirement::Buckling {
                assert_eq!(
                    line.verdict,
                    Compliance::MetThroughout,
                    "{requirement:?} of {spring:?}"
                );
            }
            if line.verdict == Compliance::MetThroughout {
                met.push((requirement, limits));
            }
        }
        let share = judged.nest.ok_or("a nest")?.share.map_err(|_| "a share")?;
        for _ in 0..10_000 {
            let sample = sampled(spring, half, || place(&mut chance));
            let own = sample.share(&setting);
            let slack = 1e-12;
            assert!(share.least() - slack <= own && own <= share.most() + slack, "{own} {share:?}");
            for (requirement, limits) in &met {
                let si = sample.offers(*requirement, &setting);
                assert!(meets(*limits, si), "{requirement:?} is {si} of {sample:?}: {limits:?}");
            }
            buckled += u32::from(sample.offers(Requirement::Buckling, &setting) > 0.0);
        }
    }
    // The tall ones do buckle, and others do not.
    assert!((1000..70_000).contains(&buckled), "{buckled}");
    Ok(())
}

/// All corners, the bar in steps between its ends: each end of each range is there, within a part in
/// 10⁹, and none of them is beyond.
#[test]
fn the_ends_of_a_range_are_those_of_a_corner() -> Result<(), Box<dyn Error>> {
    let setting = Setting { working: mm(100.0), ..setting() };
    let mut turned = 0;
    for (spring, half) in springs() {
        let judged = case(spring, half, &setting).judge()?;
        for requirement in FIGURES {
            let range = range(&judged, requirement);
            let (least, most) = (range.least().si(), range.most().si());
            let (mut found_least, mut found_most) = (f64::INFINITY, f64::NEG_INFINITY);
            let mut inside = false;
            for corner in 0_u32..32 {
                let steps = if requirement == Requirement::StressAtSolid { 2000 } else { 20 };
                for step in 0..=steps {
                    let mut input = 0;
                    let sample = sampled(spring, half, || {
                        input += 1;
                        match input {
                            1 => f64::from(step) / f64::from(steps),
                            _ => f64::from(corner >> (input - 2) & 1),
                        }
                    });
                    let si = sample.offers(requirement, &setting);
                    found_least = found_least.min(si);
                    if si > found_most {
                        (found_most, inside) = (si, step != 0 && step != steps);
                    }
                }
            }
            turned += u32::from(inside && requirement == Requirement::StressAtSolid);
            let near = |found: f64, end: f64| (found - end).abs() <= 1e-9 * end.abs().max(1e-3);
            assert!(
                near(found_least, least),
                "{requirement:?}: {found_least} and {least}, {spring:?}"
            );
            assert!(near(found_most, most), "{requirement:?}: {found_most} and {most}, {spring:?}");
        }
    }
    // The most stress at solid was between the ends of the bar for some.
    assert!(turned >= 2, "{turned}");
    Ok(())
}

//! A whole nest for a whole nest: by hand, a nest for itself, and knowing less.

use super::less::{Dice, Left, Sizes, less, rank, rank_of_all};
use super::springs::{gpa, mm, mpa, newtons};
use approx::{abs_diff_eq, relative_eq};
use coilnest::coil::ends::Ends;
use coilnest::coil::{Coiling, DiameterKind, Hand};
use coilnest::drawing::{Allowable, Drawing, Given, LoadPoint};
use coilnest::frame::{Place, Support, Weight};
use coilnest::material::Against;
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::si;
use coilnest::replacement::{
    AllowedRange, Asked, Compliance, NestCase, NestCoil, NestJudgement, NestLine, Offered, Overall,
    ReplacementError, Requirement as R, Seated, UnderFrame, Whose,
};
use oorandom::Rand64;

/// Open ends, so that all turns are active and the solid height is a bar more than they.
fn coil(bar: f64, mean: f64, turns: f64, free: f64, hand: Hand) -> Drawing {
    Drawing {
        bar: Some(Given::exact(mm(bar))),
        diameter: Some((DiameterKind::Mean, Given::exact(mm(mean)))),
        total_turns: Some(Given::exact(turns)),
        dead_turns: Some(Given::exact(0.0)),
        ends: Some(Ends::Open),
        hand: Some(hand),
        free: Some(Given::exact(mm(free))),
        shear_modulus: Some(Given::exact(gpa(80.0))),
        youngs_modulus: Some(gpa(206.0)),
        allowable: Some(Allowable { stress: mpa(2000.0), against: Against::Plain }),
        ..Drawing::default()
    }
}

fn seated(spring: Drawing) -> Seated {
    Seated { spring, raise: mm(0.0) }
}

fn offered(spring: Drawing) -> NestCoil {
    NestCoil { seated: seated(spring), cycle: None, waived: Vec::new() }
}

/// 20 mm on 120 mm with 6 turns, 250 mm free; 12 mm on 70 mm with 10 turns, 240 mm free.
fn there() -> [Drawing; 2] {
    [coil(20.0, 120.0, 6.0, 250.0, Hand::Right), coil(12.0, 70.0, 10.0, 240.0, Hand::Left)]
}

fn case(springs: impl IntoIterator<Item = Drawing>) -> NestCase {
    NestCase {
        there: there().map(seated).to_vec(),
        offered: springs.into_iter().map(offered).collect(),
        asked: Asked { working: Some(mm(200.0)), ..Asked::default() },
        load: None,
        frame: None,
        waived: Vec::new(),
    }
}

fn line(judged: &NestJudgement, place: Option<usize>, requirement: R) -> &NestLine {
    let mut lines = judged.lines.iter();
    lines.find(|one| one.place == place && one.line.requirement == requirement).expect("a line")
}

fn nominal(judged: &NestJudgement, place: Option<usize>, requirement: R) -> f64 {
    match line(judged, place, requirement).line.offered {
        Some(Offered::Range(range)) => range.nominal().si(),
        ref other => panic!("{other:?}"),
    }
}

#[test]
fn a_nest_by_hand() {
    // Two coils of thicker bar: 21 mm on 120 mm with 6 1/2 turns, 252 mm free; 12.5 on 70 mm with 10 turns.
    let outer = coil(21.0, 120.0, 6.5, 252.0, Hand::Right);
    let inner = coil(12.5, 70.0, 10.0, 238.0, Hand::Left);
    let judged = case([outer, inner]).judge().unwrap();
    let rate = |d: f64, mean: f64, n: f64| 80e3 * d.powi(4) / (8.0 * mean.powi(3) * n);
    let (wide, narrow) = (rate(21.0, 120.0, 6.5), rate(12.5, 70.0, 10.0));
    let close = |found: f64, expected: f64| {
        assert!(relative_eq!(found, expected, max_relative = 1e-9), "{found} {expected}");
    };
    close(nominal(&judged, None, R::Rate), (wide + narrow) * 1e3);
    let load = wide * 52.0 + narrow * 38.0;
    close(nominal(&judged, None, R::Load), load);
    // (6.5 + 1)·21 = 157.5 against (10 + 1)·12.5 = 137.5 mm: the outer one stops it.
    close(nominal(&judged, None, R::SolidHeight), 0.1575);
    close(nominal(&judged, Some(0), R::Reserve), 0.0425);
    close(nominal(&judged, Some(1), R::Reserve), 0.0625);
    close(nominal(&judged, None, R::FreeHeight), 0.252);
    // 8 F D/(π d³) of each: the inner one is pressed to 157.5 mm and no further.
    let stress = |load: f64, mean: f64, d: f64| {
        8.0 * load * mean / (core::f64::consts::PI * d.powi(3)) * 1e6
    };
    close(nominal(&judged, Some(0), R::StressAtWork), stress(wide * 52.0, 120.0, 21.0));
    close(nominal(&judged, Some(1), R::StressAtWork), stress(narrow * 38.0, 70.0, 12.5));
    close(nominal(&judged, Some(0), R::StressAtSolid), stress(wide * 94.5, 120.0, 21.0));
    close(nominal(&judged, Some(1), R::StressAtSolid), stress(narrow * 80.5, 70.0, 12.5));
    // The nest that is there stops at 140 mm: earlier than this one would not do.
    assert_eq!(line(&judged, None, R::SolidHeight).line.verdict, Compliance::NotMet);
    assert_eq!(judged.overall, Overall::No);
    // 120 − 21 − (70 + 12.5) = 16.5 mm on the diameter, less what the inner one grows.
    let gap = nominal(&judged, Some(0), R::InnerGap) * 1e3;
    assert!((7.5..8.25).contains(&gap), "{gap}");
}

fn rate(bar: f64, mean: f64, turns: f64) -> f64 {
    80e3 * bar.powi(4) / (8.0 * mean.powi(3) * turns)
}

/// Each coil's share of the load that the nest had at 200 mm, before and after, both coils in contact:
/// k₁(L₁ − h) + k₂(L₂ − h) = F.
#[test]
fn each_coil_has_its_share_before_and_after() {
    let pair =
        [coil(21.0, 120.0, 6.5, 252.0, Hand::Right), coil(12.5, 70.0, 10.0, 238.0, Hand::Left)];
    let judged = case(pair).judge().unwrap();
    let close = |found: f64, expected: f64| {
        assert!(relative_eq!(found, expected, max_relative = 1e-9), "{found} {expected}");
    };
    let (outer, inner) = (rate(20.0, 120.0, 6.0) * 50.0, rate(12.0, 70.0, 10.0) * 40.0);
    let load = outer + inner;
    let before = judged.swap.before.unwrap();
    close(before.height.value, 0.2);
    close(before.coils[0].share, outer / load);
    close(before.coils[1].share, inner / load);
    let (wide, narrow) = (rate(21.0, 120.0, 6.5), rate(12.5, 70.0, 10.0));
    let height = (wide * 252.0 + narrow * 238.0 - load) / (wide + narrow);
    let after = judged.swap.after.unwrap();
    close(after.height.value * 1e3, height);
    close(after.coils[0].share, wide * (252.0 - height) / load);
    close(after.coils[1].share, narrow * (238.0 - height) / load);
    let shares = judged.swap.shares.unwrap();
    close(shares[1].nominal(), narrow * (238.0 - height) / load);
    assert_eq!((judged.swap.stopped_by, judged.swap.stops), (Ok(0), Ok(vec![0])));
}

/// Four nests alike under a weight in their middle. In one of them both coils become 10 mm longer, which
/// puts a quarter of (k₁ + k₂)·10 on two of them and takes it off the others, by rigid statics. With 4 mm
/// either way that is from 6 to 14 mm.
#[test]
fn a_frame_stands_on_a_nest_that_is_replaced() {
    let [outer, inner] = there();
    let longer = |spring: Drawing| {
        let free = spring.free.unwrap().nominal() + mm(10.0);
        Drawing { free: Some(Given::around(free, mm(4.0), mm(4.0)).unwrap()), ..spring }
    };
    let per_mm = |rate: f64| si(rate * 1e3);
    let (wide, narrow) = (rate(20.0, 120.0, 6.0), rate(12.0, 70.0, 10.0));
    let member = |rate: f64, free: f64| Member {
        free: mm(free),
        law: Law::linear(per_mm(rate)).unwrap(),
        solid: None,
        raise: mm(0.0),
    };
    let corner = |(along, across)| Support {
        place: Place { along: mm(along), across: mm(across) },
        nest: Nest::new(vec![member(wide, 250.0), member(narrow, 240.0)]).unwrap(),
        stop: None,
        shim: mm(0.0),
        ground: mm(0.0),
    };
    let each = wide * 50.0 + narrow * 40.0;
    let corners = [(900.0, 500.0), (900.0, -500.0), (-900.0, 500.0), (-900.0, -500.0)];
    let under = UnderFrame {
        supports: corners.map(corner).to_vec(),
        warp: None,
        replaced: vec![0],
        weight: Weight { load: newtons(4.0 * each), centre: Place::default() },
    };
    let mut case = case([longer(outer), longer(inner)]);
    case.frame = Some(under);
    case.asked.deviation = Some((wide + narrow) * 12.0 / 4.0 / each);
    let judged = case.judge().unwrap();
    let frame = judged.frame.as_ref().unwrap();
    assert!(frame.deviation_before < 1e-12);
    let off = |longer: f64| (wide + narrow) * longer / 4.0 / each;
    let range = frame.deviation_after.as_ref().unwrap();
    for (found, expected) in
        [(range.least(), off(6.0)), (range.nominal(), off(10.0)), (range.most(), off(14.0))]
    {
        assert!(abs_diff_eq!(found, expected, epsilon = 1e-9), "{found} and not {expected}");
    }
    assert_eq!(line(&judged, None, R::Deviation).line.verdict, Compliance::MetAtNominal);
    case.frame.as_mut().unwrap().replaced = vec![4];
    assert!(matches!(case.judge(), Err(ReplacementError::Place { support: 5, count: 4, .. })));
}

/// EN 13906-1 asks gaps of each coil: 1.5 · (0.0015 D²/d + 0.1 d) n, cold wound under a load that comes and
/// goes. Here that is 27.7 mm of the outer coil and 27.2 mm of the inner one.
#[test]
fn each_coil_keeps_its_own_gaps() {
    let cold = |spring: Drawing| Drawing { coiling: Some(Coiling::Cold), ..spring };
    let [outer, inner] = there().map(cold);
    let of = |offered: Vec<Drawing>, there: Vec<Drawing>| {
        let mut case = case(offered);
        case.there = there.into_iter().map(seated).collect();
        case.judge().unwrap()
    };
    let verdict =
        |judged: &NestJudgement, place| line(judged, place, R::Reserve).line.verdict.clone();
    // Solid at 150 and not at 140 mm, so that 50 of 60 mm are left: more than is asked.
    let later = Drawing { total_turns: Some(Given::exact(6.5)), ..outer.clone() };
    let judged = of(vec![later, inner.clone()], vec![outer.clone(), inner.clone()]);
    assert_eq!(verdict(&judged, Some(0)), Compliance::MetThroughout);
    // 15 turns of 12 mm are solid at 192 mm.
    let tight = Drawing { total_turns: Some(Given::exact(15.0)), ..inner.clone() };
    let judged = of(vec![outer.clone(), tight.clone()], vec![outer.clone(), inner.clone()]);
    assert_eq!(verdict(&judged, Some(0)), Compliance::MetThroughout);
    assert_eq!(verdict(&judged, Some(1)), Compliance::NotMet);
    // Where no coil stood in their places, their own turns ask for it.
    let judged = of(vec![outer.clone(), tight], vec![outer.clone()]);
    assert_eq!(verdict(&judged, Some(0)), Compliance::MetThroughout);
    assert_eq!(verdict(&judged, Some(1)), Compliance::NotMet);
    let unknown = Drawing { ends: None, solid: Some(Given::exact(mm(132.0))), ..inner.clone() };
    let judged = of(vec![outer.clone(), unknown], vec![outer.clone()]);
    assert!(matches!(verdict(&judged, Some(1)), Compliance::CannotTell { .. }));
    // What is given is asked of the nest.
    let mut given = case([outer, inner]);
    given.asked.reserve = Some(mm(61.0));
    let judged = given.judge().unwrap();
    assert_eq!(verdict(&judged, None), Compliance::NotMet);
    assert_eq!(judged.lines.iter().filter(|one| one.line.requirement == R::Reserve).count(), 1);
}

/// Of three coils the one that is solid first stops the others: 20 mm with 6 turns at 140 mm, 12 mm with 10 at
/// 132 mm, 7 mm with 12 at 91 mm.
#[test]
fn the_highest_of_the_others_stops_a_coil() {
    let [outer, middle] = there();
    let inner = coil(7.0, 40.0, 12.0, 230.0, Hand::Right);
    let judged = case([outer, middle, inner]).judge().unwrap();
    let stress =
        8.0 * rate(7.0, 40.0, 12.0) * 90.0 * 40.0 / (core::f64::consts::PI * 7.0_f64.powi(3));
    let found = nominal(&judged, Some(2), R::StressAtSolid) / 1e6;
    assert!(relative_eq!(found, stress, max_relative = 1e-9), "{found} {stress}");
}

/// A load that is stated of a coil that is there is asked of the nest at that height.
#[test]
fn a_stated_load_is_asked_of_the_nest() {
    let mut case = case(there());
    let stated = LoadPoint { height: mm(220.0), load: Given::as_drawn(newtons(4630.0)) };
    case.there[0].spring.loads = vec![stated];
    let judged = case.judge().unwrap();
    let load = rate(20.0, 120.0, 6.0) * 30.0 + rate(12.0, 70.0, 10.0) * 20.0;
    let found = nominal(&judged, None, R::LoadAt(0));
    assert!(relative_eq!(found, load, max_relative = 1e-9), "{found} {load}");
}

/// A waiver is for all of the nest, or for one coil of it.
#[test]
fn one_coil_is_waived_or_all_are() {
    let [outer, inner] = there();
    let weak = Some(Allowable { stress: mpa(10.0), against: Against::Plain });
    let weak = |spring: Drawing| Drawing { allowable: weak, ..spring };
    let waived = vec![(R::StressAtSolid, "never pressed solid".to_owned())];
    let waives = |case: &NestCase| {
        let judged = case.judge().unwrap();
        [0, 1].map(|place| line(&judged, Some(place), R::StressAtSolid).line.waived.is_some())
    };
    let mut case = case([weak(outer), weak(inner)]);
    assert_eq!(waives(&case), [false, false]);
    case.offered[1].waived = waived.clone();
    assert_eq!(waives(&case), [false, true]);
    case.waived = waived;
    assert_eq!(waives(&case), [true, true]);
}

/// One by one each is refused beside the old neighbour; as one nest they are judged beside each other.
#[test]
fn a_pair_is_judged_beside_itself() {
    let pair =
        [coil(20.0, 118.0, 6.0, 250.0, Hand::Left), coil(12.0, 70.0, 10.0, 240.0, Hand::Right)];
    let judged = case(pair.clone()).judge().unwrap();
    assert_eq!(line(&judged, Some(0), R::InnerHand).line.verdict, Compliance::MetThroughout);
    let same = [Drawing { hand: Some(Hand::Right), ..pair[0].clone() }, pair[1].clone()];
    let judged = case(same).judge().unwrap();
    assert_eq!(line(&judged, Some(0), R::InnerHand).line.verdict, Compliance::NotMet);
}

#[test]
fn a_nest_is_a_true_replacement_for_itself_tolerances_and_all() {
    let vague = |spring: Drawing| {
        let around = |nominal, by| Some(Given::around(mm(nominal), mm(by), mm(by)).unwrap());
        let free = spring.free.map(|free| free.nominal().value * 1e3).unwrap();
        let bar = spring.bar.map(|bar| bar.nominal().value * 1e3).unwrap();
        Drawing { free: around(free, 2.0), bar: around(bar, 0.1), ..spring }
    };
    for springs in [there(), there().map(vague)] {
        let mut case = case(springs.clone());
        case.there = springs.map(seated).to_vec();
        let judged = case.judge().unwrap();
        assert_eq!(judged.overall, Overall::True, "{judged:#?}");
    }
}

#[test]
fn a_tolerance_that_is_not_given_is_named_with_its_coil() {
    let [outer, inner] = there();
    let inner = Drawing { free: Some(Given::as_drawn(mm(240.0))), ..inner };
    let judged = case([outer, inner]).judge().unwrap();
    let Compliance::MetAsDrawn { unstated } = &line(&judged, None, R::Load).line.verdict else {
        panic!("{judged:#?}")
    };
    assert_eq!(unstated.iter().map(|one| one.whose).collect::<Vec<_>>(), [Whose::Offered(1)]);
    assert_eq!(judged.overall, Overall::AsDrawn);
    let without = case([there()[0].clone(), Drawing { bar: None, ..there()[1].clone() }]);
    assert_eq!(without.judge().unwrap().overall, Overall::CannotTell);
}

#[test]
fn one_coil_for_two_and_none_at_all() {
    let one = coil(24.0, 120.0, 5.0, 250.0, Hand::Right);
    let judged = case([one]).judge().unwrap();
    assert!(judged.lines.iter().all(|one| one.line.requirement != R::InnerGap));
    // Its inside is wider than that of the coil within: it goes over the post.
    assert_eq!(line(&judged, None, R::Post).line.verdict, Compliance::MetThroughout);
    assert!(matches!(case([]).judge(), Err(ReplacementError::Nest(_))));
}

fn any_nest(dice: &mut Dice) -> NestCase {
    let sizes = Sizes::any(dice);
    let near = if dice.often() { sizes.near(dice) } else { Sizes { ..sizes } };
    let scale = 0.75 * (sizes.index - 1.0) / (sizes.index + 1.0);
    let nest = |dice: &mut Dice, of: &Sizes| [of.drawing(dice), of.scaled(scale).drawing(dice)];
    let mut there = nest(dice, &sizes).map(seated).to_vec();
    if !dice.often() {
        there.pop();
    }
    let pair = nest(dice, &near).map(offered);
    let working = mm(sizes.free * dice.between(0.72, 0.95));
    let load = newtons(0.1 * sizes.rate() * sizes.bar);
    let around = |value: f64| AllowedRange::between(value * 0.8, value * 1.2);
    let asked = Asked {
        working: dice.maybe(working),
        free: dice.maybe(around(sizes.free).map(mm)),
        load: dice.maybe(AllowedRange::at_least(load)),
        gap: dice.maybe(mm(0.0)),
        nest_height: dice.maybe(AllowedRange::between(working * 0.9, working * 1.1)),
        ..Asked::default()
    };
    NestCase { there, offered: pair.to_vec(), asked, load: None, frame: None, waived: Vec::new() }
}

#[test]
fn knowing_less_of_a_nest_is_never_better() {
    let mut dice = Dice(Rand64::new(0x7e57));
    let (mut judged, mut worse, mut met) = (0_u32, 0_u32, [0_u32; 4]);
    while judged < 40_000 {
        let case = any_nest(&mut dice);
        let Ok(before) = case.judge() else { continue };
        let mut known_less = case.clone();
        let place = usize::from(dice.often());
        let left = less(&mut dice, &mut known_less.offered[place].seated.spring);
        let Ok(after) = known_less.judge() else { continue };
        judged += 1;
        if !before.contradictions.is_empty() {
            continue;
        }
        for (before, after) in before.lines.iter().zip(&after.lines) {
            assert_eq!(before.place, after.place);
            assert_eq!(before.line.requirement, after.line.requirement);
            let (was, is) = (rank(&before.line.verdict), rank(&after.line.verdict));
            met[usize::from(was)] += 1;
            worse += u32::from(is < was);
            let better = if left == Left::Statement && was == 0 { is == 3 } else { is > was };
            assert!(!better, "{before:#?}\n{after:#?}\n{case:#?}\n{known_less:#?}");
        }
        let (was, is) = (rank_of_all(before.overall), rank_of_all(after.overall));
        let better = if left == Left::Statement && was == 0 { is == 3 } else { is > was };
        assert!(!better, "{:?} {:?}", before.overall, after.overall);
    }
    assert!(met.iter().all(|seen| *seen > 4000) && worse > 10_000, "{met:?} {worse}");
}

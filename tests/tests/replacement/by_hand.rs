//! Published nests, and sums by hand.

use super::springs::{HalfWidths, Spring, middle, mm, mpa, newtons, per_mm, setting};
use approx::{abs_diff_eq, assert_abs_diff_eq, relative_eq};
use coilnest::coil::DiameterKind;
use coilnest::coil::ends::Ends;
use coilnest::coil::{Diameters, Hand, stress};
use coilnest::drawing::{Drawing, Figure, Given};
use coilnest::frame::{Place, Support, Weight};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{megapascal, millimeter, newton, newton_per_millimeter};
use coilnest::replacement::{
    AllowedRange, Around, Asked, Case, Compliance, Judgement, Line, Missing, Offered, Overall,
    Requirement, Seated, UnderFrame, Wanted, Whose,
};
use coilnest_tables::TABLES;
use std::error::Error;

/// A coil of one of the published nests: open ends, so that all turns are active.
#[derive(Clone, Copy)]
struct Printed {
    bar: f64,
    mean: f64,
    turns: f64,
    free: f64,
}

impl Printed {
    fn particulars(self, hand: Hand) -> Drawing {
        Drawing {
            bar: Some(Given::exact(mm(self.bar))),
            diameter: Some((DiameterKind::Mean, Given::exact(mm(self.mean)))),
            total_turns: Some(Given::exact(self.turns)),
            ends: Some(Ends::Open),
            hand: Some(hand),
            free: Some(Given::exact(mm(self.free))),
            shear_modulus: Some(Given::exact(mpa(81_370.0))),
            ..Drawing::default()
        }
    }

    fn seated(self, hand: Hand) -> Seated {
        Seated { spring: self.particulars(hand), raise: mm(0.0) }
    }

    /// k = G d⁴/(8 D³ n), N/mm.
    fn rate(self) -> f64 {
        81_370.0 * self.bar.powi(4) / (8.0 * self.mean.powi(3) * self.turns)
    }

    fn wahl(self) -> f64 {
        stress::wahl(self.mean / self.bar)
    }
}

/// The outer coil replaced by another, the inner one staying.
fn outer_swapped(
    [outer, inner]: [Printed; 2],
    by: Printed,
    load: f64,
) -> Result<Judgement, Box<dyn Error>> {
    let case =
        Case::new(outer.particulars(Hand::Right), by.particulars(Hand::Right), Asked::default());
    let nest = Around {
        outer: vec![],
        inner: vec![inner.seated(Hand::Left)],
        raise: mm(0.0),
        load: Some(newtons(load)),
    };
    Ok(Case { nest: Some(nest), ..case }.judge()?)
}

/// The same with the inner one.
fn inner_swapped(
    [outer, inner]: [Printed; 2],
    by: Printed,
    load: f64,
) -> Result<Judgement, Box<dyn Error>> {
    let case =
        Case::new(inner.particulars(Hand::Left), by.particulars(Hand::Left), Asked::default());
    let nest = Around {
        outer: vec![outer.seated(Hand::Right)],
        inner: vec![],
        raise: mm(0.0),
        load: Some(newtons(load)),
    };
    Ok(Case { nest: Some(nest), ..case }.judge()?)
}

/// Half of the last digit printed.
fn printed(found: f64, printed: f64) {
    assert!(abs_diff_eq!(found, printed, epsilon = 0.500_001e-6), "{found} and not {printed}");
}

const N1: [Printed; 2] = [
    Printed { bar: 10.0, mean: 80.0, turns: 8.0, free: 200.0 },
    Printed { bar: 8.0, mean: 64.0, turns: 12.0, free: 200.0 },
];
const N2: [Printed; 2] = [
    Printed { bar: 6.0, mean: 36.0, turns: 10.0, free: 200.0 },
    Printed { bar: 5.0, mean: 30.0, turns: 8.0, free: 185.0 },
];

/// Bhandari, Design of Machine Elements, examples 10.18 and 10.19, as quoted in the open textbook
/// companion of the chapter (loads, deflections, stresses with Wahl's factor); the rates are recomputed
/// from its inputs, to the digits of those. Neither book nor companion gives a free height, but for
/// their difference: 200 mm stands for the longer.
///
/// The inner coil of either does not go into the outer one: its outside diameter is above the other's
/// inside one, 72 above 70 and 35 above 30 mm. The lines about the gap say so; the sums do not mind.
#[test]
fn a_published_nest_stays_what_it_is_when_a_coil_is_swapped_for_itself()
-> Result<(), Box<dyn Error>> {
    let n1 = ([1_304.347_826, 695.652_174], [52.526_569, 52.526_569], [314.616_701, 262.180_584]);
    let n2 = ([706.021_471, 293.978_529], [24.988_839, 9.988_839], [375.305_136, 225.032_219]);
    let rates = [[24.832_153, 13.243_815], [28.253_472, 29.430_700]];
    for ((nest, load, figures), rates) in
        [(N1, 2000.0, n1), (N2, 1000.0, n2)].into_iter().zip(rates)
    {
        let [outer, inner] = nest;
        for (judged, gap) in [
            (outer_swapped(nest, outer, load)?, Requirement::InnerGap),
            (inner_swapped(nest, inner, load)?, Requirement::OuterGap),
        ] {
            let swap = judged.nest.as_ref().ok_or("a nest")?;
            for standing in [&swap.before, &swap.after] {
                let standing = standing.as_ref().map_err(|_| "told")?;
                let (loads, deflections, stresses) = figures;
                for (place, coil) in nest.iter().enumerate() {
                    let stands = standing.coils[place];
                    printed(stands.load.get::<newton>(), loads[place]);
                    printed(coil.free - standing.height.get::<millimeter>(), deflections[place]);
                    let plain = stands.stress.ok_or("a stress")?.get::<megapascal>();
                    printed(coil.wahl() * plain, stresses[place]);
                    assert_abs_diff_eq!(stands.share, loads[place] / load, epsilon = 1e-9);
                }
            }
            for (coil, rate) in nest.iter().zip(rates) {
                let found = coil.particulars(Hand::Left).rate().map_err(|_| "a rate")?;
                printed(found.nominal().get::<newton_per_millimeter>(), rate);
            }
            assert_eq!(judged.line(gap).ok_or("a line")?.verdict, Compliance::NotMet);
            // The inner coil of the first has more bars on each other, 13·8 mm against 9·10; the outer of
            // the second 11·6 against 9·5.
            let first = usize::from(nest[0].bar > 9.0);
            assert_eq!((swap.stopped_by.clone(), swap.stops.clone()), (Ok(first), Ok(vec![first])));
        }
    }
    Ok(())
}

/// With other coils the shares follow from the rates: where both touch, s = (P + k2·Δ)/(k1 + k2).
#[test]
fn the_shares_after_a_swap_are_those_by_hand() -> Result<(), Box<dyn Error>> {
    // 11 mm on 80 mm in the first nest: k = 81370·11⁴/(8·80³·8) = 36.357 N/mm.
    let by = Printed { bar: 11.0, ..N1[0] };
    assert_abs_diff_eq!(by.rate(), 36.357, epsilon = 5e-4);
    let judged = outer_swapped(N1, by, 2000.0)?;
    let swap = judged.nest.ok_or("a nest")?;
    let after = swap.after.map_err(|_| "told")?;
    let (outer, inner) = (by.rate(), N1[1].rate());
    let deflection = 2000.0 / (outer + inner);
    assert_abs_diff_eq!(after.height.get::<millimeter>(), (200.0 - deflection), epsilon = 1e-9);
    assert_abs_diff_eq!(after.coils[0].share, outer / (outer + inner), epsilon = 1e-12);
    assert_abs_diff_eq!(after.coils[1].load.get::<newton>(), inner * deflection, epsilon = 1e-9);
    // An inner coil in the second that is 25 and not 15 mm shorter: 1000 = k1·s + k2·(s − 25).
    let by = Printed { free: 175.0, ..N2[1] };
    let judged = inner_swapped(N2, by, 1000.0)?;
    let swap = judged.nest.as_ref().ok_or("a nest")?;
    let after = swap.after.as_ref().map_err(|_| "told")?;
    let (outer, inner) = (N2[0].rate(), by.rate());
    let deflection = (1000.0 + 25.0 * inner) / (outer + inner);
    assert_abs_diff_eq!(200.0 - after.height.get::<millimeter>(), deflection, epsilon = 1e-9);
    assert_abs_diff_eq!(
        after.coils[1].load.get::<newton>(),
        inner * (deflection - 25.0),
        epsilon = 1e-9
    );
    assert_eq!(judged.overall, Overall::No);
    Ok(())
}

/// Where the load is not given it is that of the nest with the original at the working height.
#[test]
fn the_load_of_a_nest_follows_from_its_working_height() -> Result<(), Box<dyn Error>> {
    let [outer, inner] = N1;
    let by = Printed { bar: 10.1, ..outer };
    let asked = Asked { working: Some(mm(160.0)), ..Asked::default() };
    let mut case = Case::new(outer.particulars(Hand::Right), by.particulars(Hand::Right), asked);
    case.nest = Some(Around { inner: vec![inner.seated(Hand::Left)], ..Around::default() });
    let swap = case.judge()?.nest.ok_or("a nest")?;
    let (before, after) = (swap.before.map_err(|_| "told")?, swap.after.map_err(|_| "told")?);
    assert_abs_diff_eq!(before.height.get::<millimeter>(), 160.0, epsilon = 1e-9);
    let load = 40.0 * (outer.rate() + inner.rate());
    let height = 200.0 - load / (by.rate() + inner.rate());
    assert_abs_diff_eq!(after.height.get::<millimeter>(), height, epsilon = 1e-9);
    case.asked.working = None;
    let lacks = vec![Missing { whose: Whose::Nest, figure: Figure::Load }];
    assert_eq!(case.judge()?.nest.ok_or("a nest")?.after, Err(lacks));
    Ok(())
}

/// A thicker coil stops the nest instead of its neighbour, and with a tolerance either may.
#[test]
fn the_coil_that_stops_the_nest_may_change() -> Result<(), Box<dyn Error>> {
    let [outer, inner] = N1;
    // 13·8 = 104 mm of the inner against 9 bars of the outer.
    for (bar, half, stops) in
        [(11.0, 0.0, vec![1]), (12.0, 0.0, vec![0]), (11.5, 0.1, vec![0, 1]), (11.5, 0.05, vec![1])]
    {
        let by = Printed { bar, ..outer };
        let mut case = Case::new(
            outer.particulars(Hand::Right),
            by.particulars(Hand::Right),
            Asked::default(),
        );
        case.candidate.bar = Some(Given::around(mm(bar), mm(half), mm(half))?);
        case.nest = Some(Around {
            inner: vec![inner.seated(Hand::Left)],
            load: Some(newtons(500.0)),
            ..Around::default()
        });
        let swap = case.judge()?.nest.ok_or("a nest")?;
        assert_eq!(swap.stopped_by, Ok(1));
        assert_eq!(swap.stops, Ok(stops), "{bar} ± {half}");
    }
    Ok(())
}

/// What is waived does not count, and what contradicts itself is no true replacement, whatever else is met.
#[test]
fn a_waiver_and_a_contradiction_decide_the_whole() {
    let spring =
        Printed { bar: 10.0, mean: 80.0, turns: 8.0, free: 200.0 }.particulars(Hand::Right);
    let spring = Drawing { allowable: Some(super::springs::allowable()), ..spring };
    let mut case = Case::new(spring.clone(), spring.clone(), Asked::default());
    assert_eq!(case.judge().unwrap().overall, Overall::True);
    case.candidate.hand = Some(Hand::Left);
    assert_eq!(case.judge().unwrap().overall, Overall::No);
    case.waived = vec![(Requirement::Hand, "stands alone".to_owned())];
    assert_eq!(case.judge().unwrap().overall, Overall::True);

    let stated = Drawing { rate: Some(Given::exact(per_mm(1000.0))), ..spring };
    let case = Case::new(stated.clone(), stated, Asked::default());
    let judged = case.judge().unwrap();
    assert!(
        judged.lines.iter().all(|line| line.verdict == Compliance::MetThroughout),
        "{judged:#?}"
    );
    assert_eq!(judged.overall, Overall::CannotTell);
}

/// The gap hangs on both coils: an inside of 100 ± 0.5 mm around an outside of 80 ± 0.3 mm leaves from 9.6 to
/// 10.4 mm, less what the inner coil grows; and it is no surer than the neighbour's size.
#[test]
fn the_neighbour_has_tolerances_too() {
    let sized = |across, size: f64, off: f64| Drawing {
        bar: Some(Given::exact(mm(10.0))),
        diameter: Some((across, Given::around(mm(size), mm(off), mm(off)).unwrap())),
        total_turns: Some(Given::exact(8.0)),
        dead_turns: Some(Given::exact(0.0)),
        ends: Some(Ends::Open),
        free: Some(Given::exact(mm(100.0))),
        solid: Some(Given::exact(mm(90.0))),
        ..Drawing::default()
    };
    let gap = |off: Option<f64>| {
        let outer = sized(DiameterKind::Inside, 100.0, 0.5);
        let mut inner = sized(DiameterKind::Outside, 80.0, off.unwrap_or_default());
        if off.is_none() {
            inner.diameter = Some((DiameterKind::Outside, Given::as_drawn(mm(80.0))));
        }
        let mut case = Case::new(outer.clone(), outer, Asked::default());
        let seated = Seated { spring: inner, raise: mm(0.0) };
        case.nest =
            Some(Around { inner: vec![seated], load: Some(newtons(1.0)), ..Around::default() });
        case.judge().unwrap().line(Requirement::InnerGap).cloned().unwrap()
    };
    let range = |line: &Line| match line.offered {
        Some(Offered::Range(range)) => range.map(|gap| gap.si() * 1e3),
        ref other => panic!("{other:?}"),
    };
    let line = gap(Some(0.3));
    let found = range(&line);
    let (down, up) = (found.nominal() - found.least(), found.most() - found.nominal());
    assert!((down - 0.4).abs() < 1e-3 && (up - 0.4).abs() < 1e-3, "{found:?}");
    assert_eq!(line.verdict, Compliance::MetThroughout);
    assert!(
        matches!(gap(None).verdict, Compliance::MetAsDrawn { unstated } if unstated[0].whose == Whose::Inner(0))
    );
}

/// Four equal nests of one rate in N/mm, each 350 mm high when free, under 40 000 N in their middle.
fn four_equal(rate: f64) -> Result<UnderFrame, Box<dyn Error>> {
    let law = Law::linear(per_mm(rate))?;
    let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }])?;
    let corner = |(along, across)| Support {
        place: Place { along: mm(along), across: mm(across) },
        nest: nest.clone(),
        stop: None,
        shim: mm(0.0),
        ground: mm(0.0),
    };
    let corners = [(900.0, 500.0), (900.0, -500.0), (-900.0, 500.0), (-900.0, -500.0)];
    let weight = Weight { load: newtons(40_000.0), centre: Place::default() };
    Ok(UnderFrame {
        supports: corners.map(corner).to_vec(),
        warp: None,
        replaced: vec![(0, 0)],
        weight,
    })
}

/// A spring of which rate in N/mm and free height in mm are known, and that it is solid at 100 mm.
fn of_book(rate: f64, free: f64) -> Drawing {
    Drawing {
        rate: Some(Given::exact(per_mm(rate))),
        free: Some(Given::exact(mm(free))),
        solid: Some(Given::exact(mm(100.0))),
        ..Drawing::default()
    }
}

/// The first coil of [`four_equal`] replaced: the loads after it, and the greatest deviation over the
/// candidate's tolerances.
fn under_four(
    rate: f64,
    candidate: Drawing,
    loads: [f64; 4],
    deviation: [f64; 3],
) -> Result<(), Box<dyn Error>> {
    let mut case = Case::new(of_book(rate, 350.0), candidate, Asked::default());
    case.frame = Some(four_equal(rate)?);
    case.asked.deviation = Some(0.08);
    let judged = case.judge()?;
    let swap = judged.frame.as_ref().ok_or("a frame")?;
    assert!(swap.deviation_before < 1e-12);
    for support in &swap.before.supports {
        assert_abs_diff_eq!(support.load.get::<newton>(), 10_000.0, epsilon = 1e-6);
    }
    let after = swap.after.as_ref().map_err(|_| "told")?;
    for (support, load) in after.supports.iter().zip(loads) {
        assert!(abs_diff_eq!(support.load.get::<newton>(), load, epsilon = 1e-6), "{after:?}");
    }
    let found = swap.deviation_after.as_ref().map_err(|_| "told")?;
    for (found, expected) in
        [found.least(), found.nominal(), found.most()].into_iter().zip(deviation)
    {
        assert!(abs_diff_eq!(found, expected, epsilon = 1e-9), "{found} and not {expected}");
    }
    let line = judged.line(Requirement::Deviation).ok_or("a line")?;
    assert_eq!(line.verdict, Compliance::MetAtNominal);
    Ok(())
}

/// Nests of 300 N/mm: one coil 10 mm longer puts 300·10/4 = 750 N on two of them and takes it off the
/// others, by rigid statics; 750/10 000 is 7.5 %. With 6, 10 and 14 mm it is 4.5, 7.5 and 10.5 %.
#[test]
fn a_longer_coil_under_a_frame_moves_its_loads() -> Result<(), Box<dyn Error>> {
    let mut candidate = of_book(300.0, 360.0);
    candidate.free = Some(Given::around(mm(360.0), mm(4.0), mm(4.0))?);
    let loads = [10_750.0, 9_250.0, 9_250.0, 10_750.0];
    under_four(300.0, candidate, loads, [0.045, 0.075, 0.105])
}

/// A stiffer coil gives way less, and its nest carries more: by symmetry two corners carry 10 000 N + t
/// and two 10 000 N − t, and the frame stays flat, (10 000 + t)·(1/k₁ + 1/k) = 2·(10 000 − t)/k, so that
/// t = 10 000·(1 − r)/(3 + r) with r = k/k₁. 420 beside 340 N/mm: r = 17/21 and t = 500 N, which is 5 %.
/// From 340 N/mm, where nothing moves, to 340·11/7, where r = 7/11 and t = 1000 N.
#[test]
fn a_stiffer_coil_under_a_frame_moves_its_loads() -> Result<(), Box<dyn Error>> {
    let mut candidate = of_book(420.0, 350.0);
    let most = 340.0 * 11.0 / 7.0;
    candidate.rate = Some(Given::around(per_mm(420.0), per_mm(80.0), per_mm(most - 420.0))?);
    let loads = [10_500.0, 9_500.0, 9_500.0, 10_500.0];
    under_four(340.0, candidate, loads, [0.0, 0.05, 0.1])
}

/// A candidate of which everything is known, against an original and its setting: figures by hand, as
/// they are written in the lines.
#[test]
fn limits_and_margins_are_those_by_hand() -> Result<(), Box<dyn Error>> {
    let original = middle(DiameterKind::Outside);
    let candidate = Spring { bar: 8.1, free: 162.0, ..original };
    let asked = Asked {
        pocket: Some(mm(70.0)),
        post: Some(mm(50.0)),
        play: mm(1.0),
        working: Some(setting().working),
        rate: Some(AllowedRange::between(per_mm(27.0), per_mm(28.0))),
        ..Asked::default()
    };
    let judged = Case::new(original.as_drawn(), candidate.exact(), asked).judge()?;
    let margin = |requirement: Requirement| {
        judged.line(requirement).and_then(|line| line.margin).map(|margin| margin.nominal.si())
    };
    let near = |found: Option<f64>, expected: f64| {
        assert!(found.is_some_and(|found| (found - expected).abs() < 1e-9), "{found:?} {expected}");
    };
    // 68 − 2·8.1 = 51.8 over 50 + 1.
    near(margin(Requirement::Post), 0.8e-3);
    // 9·8.1 = 72.9 against 72 mm.
    near(margin(Requirement::SolidHeight), -0.9e-3);
    // 79 000·8.1⁴/(8·59.9³·7) N/mm; the nearer limit is 28.
    let rate = 79_000.0 * 8.1_f64.powi(4) / (8.0 * 59.9_f64.powi(3) * 7.0);
    let room = (rate - 27.0).min(28.0 - rate) * 1e3;
    assert!(margin(Requirement::Rate).is_some_and(|found| (found - room).abs() < 1e-6));
    // 2 % of 160 mm, no standard being asked of a coil of which nobody says how it is wound.
    near(margin(Requirement::FreeHeight), 3.2e-3 - 2e-3);
    // 125 − 72.9, and the original leaves 53 mm: fewer is asked only where a standard says so.
    near(margin(Requirement::Reserve), -0.9e-3);
    Ok(())
}

/// A pocket is given and the candidate's bar is not: nothing but the bar is named, and the post decides
/// it by De − 2 d.
#[test]
fn the_bar_that_goes_over_the_post() -> Result<(), Box<dyn Error>> {
    let original = middle(DiameterKind::Outside).exact();
    let mut candidate = original.clone();
    candidate.bar = None;
    candidate.diameter = Some((DiameterKind::Outside, Given::around(mm(68.0), mm(0.4), mm(0.4))?));
    let asked = Asked { post: Some(mm(51.0)), ..Asked::default() };
    let case = Case::new(original, candidate, asked);
    let judged = case.judge()?;
    let line = judged.line(Requirement::Post).ok_or("a line")?;
    let Compliance::CannotTell { missing } = &line.verdict else {
        return Err("undecided".into());
    };
    let decision = case.decision(line).ok_or("a decision")?;
    let bar = Missing { whose: Whose::Candidate, figure: Figure::Bar };
    assert_eq!(missing, &[bar]);
    assert_eq!(bar.to_string(), "the bar of the candidate");
    let coilnest::replacement::Decision::Within { spans, .. } = decision else {
        return Err("a number".into());
    };
    // (68 − 51)/2, as drawn.
    assert_eq!(spans.len(), 1);
    assert_eq!(spans[0].least, None);
    assert!(spans[0].most.is_some_and(|most| (most.si() - 8.5e-3).abs() < 1e-12), "{spans:?}");
    Ok(())
}

/// Cold-wound, the free height and the load of the original have the allowance of EN 15800, grade 2.
#[test]
fn a_cold_wound_original_has_the_allowance_of_the_standard() -> Result<(), Box<dyn Error>> {
    use coilnest::coil::Coiling;
    use coilnest::tolerance::{ColdWound, FREE_HEIGHT_SOURCE, Grade, LOAD_SOURCE};
    let spring = middle(DiameterKind::Mean);
    let mut original = spring.as_drawn();
    original.coiling = Some(Coiling::Cold);
    let asked = Asked { working: Some(mm(125.0)), ..Asked::default() };
    let judged = Case::new(original.clone(), original, asked).judge()?;
    let coil = Diameters::from_mean(mm(8.0), mm(60.0))?;
    let cold = ColdWound::new(coil, spring.turns(), mm(160.0))?;
    let free = cold.free_height(Grade::Two, spring.rate()).value;
    let load = cold.load(Grade::Two, spring.load(mm(125.0))).value;
    for (requirement, expected, source) in [
        (Requirement::FreeHeight, free.value, FREE_HEIGHT_SOURCE),
        (Requirement::Load, load.value, LOAD_SOURCE),
    ] {
        let line = judged.line(requirement).ok_or("a line")?;
        let margin = line.margin.ok_or("a margin")?.nominal.si();
        assert!(relative_eq!(margin, expected, max_relative = 1e-9), "{requirement:?}: {margin}");
        assert_eq!(line.source, Some(source));
        assert!(matches!(line.offered, Some(Offered::Range(_))));
    }
    // The gaps that the standard asks of dynamic duty: 1.5·7·(0.0015·60²/8 + 0.8) = 15.4875 mm.
    let reserve = judged.line(Requirement::Reserve).ok_or("a line")?;
    let margin = reserve.margin.ok_or("a margin")?.nominal.si();
    assert!(abs_diff_eq!(margin, (0.125 - 0.072 - 0.015_487_5), epsilon = 1e-12), "{margin}");
    Ok(())
}

/// What the steel bears, by its thickest bar; no more is borne for an original of another steel, and of
/// one without a strength it cannot be told.
///
/// Shigley's Mechanical Engineering Design, 10th ed., tables 10-4 and 10-6 (from memory): oil-tempered
/// wire breaks at 1855/d^0.187 `MPa` and as wound bears half of it, with the factor for curvature.
#[test]
fn the_stress_that_is_asked_is_what_the_steel_bears() -> Result<(), Box<dyn Error>> {
    let steel =
        |id: &str| TABLES.steels.iter().find(|steel| steel.id() == id).copied().ok_or("a steel");
    let of = |bar: f64, half: f64, id: &str| -> Result<Drawing, Box<dyn Error>> {
        let half = HalfWidths { bar: half, ..HalfWidths::default() };
        let spring = Spring { bar, ..middle(DiameterKind::Mean) };
        Ok(Drawing {
            allowable: None,
            tensile: None,
            steel: Some(steel(id)?),
            ..spring.within(half)
        })
    };
    let line = |original: &Drawing, candidate: &Drawing| -> Result<Line, Box<dyn Error>> {
        let judged = Case::new(original.clone(), candidate.clone(), Asked::default()).judge()?;
        Ok(judged.line(Requirement::StressAtSolid).ok_or("a line")?.clone())
    };
    let most = |line: &Line| match line.wanted {
        Some(Wanted::Within(AllowedRange { least: None, most: Some(most) })) => Ok(most.si() / 1e6),
        other => Err(format!("{other:?}")),
    };
    let (oil, other) =
        (of(8.0, 0.0, "shigley-oil-tempered-a229")?, of(8.0, 0.0, "mh-chrome-vanadium")?);
    // Against what the coil itself has: K·G·d·(L0 − 9 d)/(π·D²·7), C = 7.5.
    let own = 8.0 / 6.75 * 79_000.0 * 8.0 * 88.0 / (core::f64::consts::PI * 3600.0 * 7.0);
    let candidate = of(8.0, 0.1, "shigley-oil-tempered-a229")?;
    let borne = 0.5 * 1855.0 / libm::pow(8.1, 0.187);
    assert!(own > borne);
    let found = line(&other, &candidate)?;
    assert!(abs_diff_eq!(most(&found)?, borne, epsilon = 1e-9), "{found:?}");
    assert_eq!(found.verdict, Compliance::NotMet);
    assert!(found.source.is_some_and(|source| source.to_string().contains("Shigley")), "{found:?}");
    // Of the same steel the original's own stress may be had.
    let found = line(&oil, &oil)?;
    assert!(relative_eq!(most(&found)?, own, max_relative = 1e-9), "{found:?}");
    assert_eq!(found.verdict, Compliance::MetThroughout);
    // Hot-wound bar of which no strength is held.
    let unknown = of(8.0, 0.0, "unknown-hot-wound")?;
    let lacks = vec![Missing { whose: Whose::Candidate, figure: Figure::AllowableStress }];
    assert!(
        matches!(line(&oil, &unknown)?.verdict, Compliance::CannotTell { missing, .. } if missing == lacks)
    );
    Ok(())
}

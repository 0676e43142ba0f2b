//! What an order offers, asks and leaves open, and that knowing less never settles anything.

use super::less::{Dice, any_case};
use super::springs::{HalfWidths, middle, mm, newtons, per_mm};
use coilnest::coil::DiameterKind;
use coilnest::coil::Hand;
use coilnest::drawing::{Contradiction, Drawing, Given, LoadPoint};
use coilnest::replacement::{
    AllowedRange, Asked, Case, Dimension, Item, Open, Order, OrderDetail, OrderDetails, Question,
};
use oorandom::Rand64;

fn nothing_said() -> OrderDetails {
    OrderDetails::default()
}

#[test]
fn offered_and_asked_stand_apart_and_the_original_only_asks() {
    let spring = middle(DiameterKind::Outside);
    let mut candidate = spring.within(HalfWidths { bar: 0.1, ..HalfWidths::default() });
    candidate.hand = None;
    candidate.free = Some(Given::as_drawn(mm(160.0)));
    let asked = Asked {
        working: Some(mm(125.0)),
        free: Some(AllowedRange::between(mm(158.0), mm(163.0))),
        solid: Some(mm(72.0)),
        load: Some(AllowedRange::at_least(newtons(900.0))),
        ..Asked::default()
    };
    let mut case = Case::new(spring.exact(), candidate, asked);
    let order = case.order(&OrderDetails::of(Some(4), Vec::new()));
    let bar = order.bar.offered.unwrap();
    assert_eq!((bar.nominal, bar.limits.most), (Some(mm(8.0)), Some(mm(8.0) + mm(0.1))));
    assert_eq!((order.bar.asked, order.bar.open), (None, None));
    // What is asked fills in no tolerance of what is offered.
    assert_eq!(order.free.asked.unwrap().limits, AllowedRange::between(mm(158.0), mm(163.0)));
    assert_eq!(order.free.offered.unwrap().limits, AllowedRange { least: None, most: None });
    assert_eq!(order.free.open, Some(Open::NoTolerance));
    assert_eq!((order.hand.offered, order.hand.original), (None, Some(Hand::Right)));
    assert_eq!(order.hand.open, Some(Open::Borrowed));
    // 8 G d⁴ and so on: nobody states the rate, the load or the solid height.
    let follows = |open: Option<Open>| assert_eq!(open, Some(Open::Unstated));
    follows(order.rate.open);
    follows(order.solid.open);
    let [load] = order.loads.as_slice() else { panic!("{:?}", order.loads) };
    follows(load.load.open);
    assert_eq!(load.height, mm(125.0));
    assert_eq!(load.load.asked.unwrap().limits, AllowedRange::at_least(newtons(900.0)));
    // What is asked of the load at work is asked at no other height.
    case.candidate.loads =
        vec![LoadPoint { height: mm(140.0), load: Given::as_drawn(newtons(500.0)) }];
    let [light, at_work] = &case.order(&nothing_said()).loads[..] else { panic!("two loads") };
    assert_eq!((light.height, light.load.asked), (mm(140.0), None));
    assert!(at_work.load.asked.is_some());
    assert_eq!(order.quantity, Item { offered: None, asked: Some(4), original: None, open: None });
    let nothing = Case::new(Drawing::default(), Drawing::default(), Asked::default());
    let open = nothing.order(&nothing_said()).questions();
    assert!(open.iter().all(|(_, open)| *open == Open::Missing));
    assert_eq!(
        open.len(),
        14 + OrderDetail::ALL.into_iter().filter(|detail| detail.is_needed()).count()
    );
}

#[test]
fn the_order_of_the_original_asks_for_its_figures_within_their_tolerances() {
    let spring = middle(DiameterKind::Outside);
    let half = HalfWidths { bar: 0.1, free: 0.5, ..HalfWidths::default() };
    let mut original = spring.within(half);
    original.total_turns = original.total_turns.map(|turns| Given::as_drawn(turns.nominal()));
    let case = Case::new(original, Drawing::default(), Asked::default());
    let order = case.order_of_original(&nothing_said());
    assert!(order.is_of_original && order.bar.offered.is_none());
    assert_eq!(order.bar.original.unwrap().limits.least, Some(mm(8.0) - mm(0.1)));
    assert_eq!((order.bar.open, order.free.open), (None, None));
    assert_eq!(order.total_turns.open, Some(Open::NoTolerance));
    // A grade that is asked holds where a tolerance is missing.
    let grade = OrderDetails::of(None, vec![(OrderDetail::Grade, "EN 15800, grade 2".to_owned())]);
    assert_eq!(case.order_of_original(&grade).total_turns.open, None);
}

/// 2000 lb/in on sizes that give 1118 was printed without a word.
#[test]
fn what_contradicts_the_sizes_is_no_fact_of_an_order() {
    let spring = middle(DiameterKind::Outside);
    let rate = spring.rate();
    let mut candidate = spring.exact();
    candidate.rate = Some(Given::exact(rate * 1.8));
    candidate.solid = Some(Given::exact(mm(20.0)));
    candidate.loads = vec![LoadPoint { height: mm(125.0), load: Given::exact(newtons(9000.0)) }];
    let case = Case::new(spring.exact(), candidate, Asked::default());
    let order = case.order(&nothing_said());
    let contradicts = |open: Option<Open>| matches!(open, Some(Open::Contradicts(_)));
    assert!(contradicts(order.rate.open) && order.rate.offered.is_none());
    assert!(contradicts(order.solid.open) && order.solid.offered.is_none());
    assert!(contradicts(order.loads[0].load.open) && order.loads[0].load.offered.is_none());
    let Some(Open::Contradicts(Contradiction::Rate { stated, .. })) = order.rate.open else {
        panic!("{:?}", order.rate)
    };
    assert_eq!(stated, rate * 1.8);
}

#[test]
fn what_a_maker_states_stands_with_its_tolerance() {
    let spring = middle(DiameterKind::Outside);
    let rate = spring.rate();
    let mut candidate = spring.exact();
    candidate.rate = Some(Given::between(rate, Some(rate - per_mm(1.0)), None).unwrap());
    let load = spring.load(mm(125.0));
    let two = [(mm(125.0), load), (mm(110.0), spring.load(mm(110.0)))];
    candidate.loads = two
        .into_iter()
        .map(|(height, load)| LoadPoint {
            height,
            load: Given::around(load, load * 0.05, load * 0.05).unwrap(),
        })
        .collect();
    let case = Case::new(spring.exact(), candidate, Asked::default());
    let order = case.order(&nothing_said());
    assert_eq!(order.rate.open, Some(Open::NoTolerance));
    assert_eq!(order.loads.iter().map(|at| at.height).collect::<Vec<_>>(), [mm(125.0), mm(110.0)]);
    for at in &order.loads {
        let offered = at.load.offered.unwrap();
        assert!(offered.stated && at.load.open.is_none());
        assert_eq!(offered.limits.most, offered.nominal.map(|load| load + load * 0.05));
    }
    // A load that only the original states is asked of the candidate.
    let mut original = spring.exact();
    original.loads =
        vec![LoadPoint { height: mm(110.0), load: Given::exact(spring.load(mm(110.0))) }];
    let bare = Drawing { free: None, ..spring.exact() };
    let order = Case::new(original, bare, Asked::default()).order(&nothing_said());
    assert_eq!(order.loads[0].load.open, Some(Open::Borrowed));
}

/// The lines that are printed as facts: known of the candidate, and nothing about them to be settled.
fn facts(order: &Order) -> Vec<Question> {
    fn is<T, A>(item: &Item<T, A>) -> bool {
        item.offered.is_some() && item.open.is_none()
    }
    let loads = !order.loads.is_empty() && order.loads.iter().all(|at| is(&at.load));
    [
        (Question::Bar, is(&order.bar)),
        (Question::Diameter, is(&order.diameter)),
        (Question::FreeHeight, is(&order.free)),
        (Question::TotalTurns, is(&order.total_turns)),
        (Question::ActiveTurns, is(&order.active_turns)),
        (Question::Ends, is(&order.ends)),
        (Question::Hand, is(&order.hand)),
        (Question::Rate, is(&order.rate)),
        (Question::Loads, loads),
        (Question::SolidHeight, is(&order.solid)),
        (Question::Steel, is(&order.steel)),
        (Question::Peening, is(&order.peening)),
        (Question::SetRemoval, is(&order.set_removal)),
    ]
    .into_iter()
    .filter_map(|(question, is)| is.then_some(question))
    .collect()
}

fn without_tolerance<Q: Copy>(given: &mut Option<Given<Q>>) {
    *given = given.map(|given| Given::as_drawn(given.nominal()));
}

/// The candidate with a figure or a tolerance less, and the line that this is about.
fn less(dice: &mut Dice, of: &mut Drawing) -> Question {
    let which = dice.0.rand_range(0..17);
    match which {
        0 => of.bar = None,
        1 => of.diameter = None,
        2 => of.total_turns = None,
        3 => of.ends = None,
        4 => of.hand = None,
        5 => of.free = None,
        6 => of.rate = None,
        7 => of.loads.clear(),
        8 => of.solid = None,
        9 => of.dead_turns = None,
        10 => of.shear_modulus = None,
        11 => without_tolerance(&mut of.bar),
        12 => without_tolerance(&mut of.total_turns),
        13 => without_tolerance(&mut of.free),
        14 => without_tolerance(&mut of.rate),
        15 => of.surface = None,
        _ => of.presetting = None,
    }
    match which {
        0 | 11 => Question::Bar,
        1 => Question::Diameter,
        2 | 12 => Question::TotalTurns,
        3 => Question::Ends,
        4 => Question::Hand,
        5 | 13 => Question::FreeHeight,
        6 | 14 => Question::Rate,
        7 => Question::Loads,
        8 => Question::SolidHeight,
        9 => Question::ActiveTurns,
        10 => Question::Steel,
        15 => Question::Peening,
        _ => Question::SetRemoval,
    }
}

/// Less known of a candidate takes no question out of its order and makes none of its lines a fact. Only
/// that two statements contradict each other can no longer be seen where one of them is gone, and then
/// that one is asked for.
#[test]
fn knowing_less_settles_nothing() {
    let mut dice = Dice(Rand64::new(0x0d3a));
    let (mut lost, mut contradicted, mut seen) = (0_u32, 0_u32, 0_u32);
    while seen < 100_000 {
        let mut case = any_case(&mut dice);
        let candidate = &mut case.candidate;
        let drawn = candidate.solid().ok().map(|solid| solid.nominal());
        if let (true, Some(solid)) = (dice.often(), drawn) {
            let off = 0.5 + dice.0.rand_float();
            let given = Given::between(solid * off, Some(solid * off * 0.99), Some(solid * off));
            candidate.solid = given.ok();
        }
        let before = case.order(&nothing_said());
        let about = less(&mut dice, &mut case.candidate);
        let after = case.order(&nothing_said());
        seen += 1;
        let (asked_before, asked_after) = (before.questions(), after.questions());
        let is_asked = |of: Question| asked_after.iter().any(|(question, _)| *question == of);
        for (question, open) in asked_before {
            let contradicts = matches!(open, Open::Contradicts(_));
            contradicted += u32::from(contradicts);
            let stays = is_asked(question) || contradicts && is_asked(about);
            assert!(stays, "{question:?} {open:?} without {about:?}\n{case:#?}");
        }
        let was = facts(&before);
        for fact in facts(&after) {
            let was_doubted = before
                .questions()
                .into_iter()
                .any(|(question, open)| question == fact && matches!(open, Open::Contradicts(_)));
            assert!(
                was.contains(&fact) || was_doubted && is_asked(about),
                "{fact:?} without {about:?}\n{case:#?}"
            );
        }
        lost += u32::from(facts(&after).len() < was.len());
    }
    assert!(lost > 15_000 && contradicted > 5_000, "{lost} {contradicted}");
}

/// Nothing that the original has comes into the order of a candidate as anything but a question.
#[test]
fn nothing_of_the_original_is_offered() {
    let mut dice = Dice(Rand64::new(0xb0a4));
    for _ in 0..5_000 {
        let case = any_case(&mut dice);
        let alone = Case { original: Drawing::default(), ..case.clone() };
        let (order, alone) = (case.order(&nothing_said()), alone.order(&nothing_said()));
        // Heights at which the original's load is stated are asked for besides.
        let own = facts(&alone);
        assert!(facts(&order).iter().all(|fact| own.contains(fact)), "{case:#?}");
        let figures = |order: &Order| -> Vec<Option<Dimension<_>>> {
            vec![order.bar.offered, order.free.offered, order.solid.offered]
        };
        assert_eq!(figures(&order), figures(&alone));
    }
}

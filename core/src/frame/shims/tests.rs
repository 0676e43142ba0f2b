//! What is refused and in what words, and plans that are known by hand.

use super::*;
use crate::frame::{Place, Support};
use crate::nest::{Law, Member, Nest};
use crate::quantity::unit::{inch, millimeter, newton, newton_per_millimeter};
use crate::quantity::{SpringRate, si};
use approx::assert_relative_eq;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

/// Invented: 300 N/mm, 350 mm free.
fn at(along: f64, across: f64, ground: f64) -> Support {
    let law = Law::linear(SpringRate::new::<newton_per_millimeter>(300.0)).unwrap();
    let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }]);
    Support {
        place: Place { along: mm(along), across: mm(across) },
        nest: nest.unwrap(),
        stop: None,
        shim: mm(0.0),
        ground: mm(ground),
    }
}

/// Front left, front right, rear left, rear right.
fn corners(ground: [f64; 4]) -> Vec<Support> {
    let [a, b, c, d] = ground;
    vec![at(900.0, 500.0, a), at(900.0, -500.0, b), at(-900.0, 500.0, c), at(-900.0, -500.0, d)]
}

fn weight(along: f64, across: f64) -> Weight {
    let centre = Place { along: mm(along), across: mm(across) };
    Weight { load: Force::new::<newton>(40_000.0), centre }
}

fn plan(supports: Vec<Support>, stock: &[f64], largest: f64, aim: Aim) -> Plan {
    let may = vec![true; supports.len()];
    let stock: Vec<Length> = stock.iter().copied().map(mm).collect();
    let stock = Stock::new(&stock, mm(largest)).unwrap();
    Frame::new(supports, None).unwrap().shimmed(weight(0.0, 0.0), &stock, &may, aim).unwrap()
}

fn thicknesses(plan: &Plan) -> Vec<f64> {
    plan.under
        .iter()
        .map(|under| (under.thickness.get::<millimeter>() * 1e6).round() / 1e6)
        .collect()
}

#[test]
fn stocks_of_no_use_are_refused() {
    let sixty_fourth = 25.4 / 64.0;
    for (stock, largest, sentence) in [
        (
            vec![],
            10.0,
            "no shims in stock; at least one thickness was expected: give those that are at hand",
        ),
        (
            vec![1.0; 17],
            10.0,
            "17 thicknesses in stock; a number from 1 to 16 was expected: leave out those that others add up to",
        ),
        (
            vec![1.0, 0.0],
            10.0,
            "a shim in stock of 0 mm; a thickness above zero was expected: measure it again",
        ),
        (
            vec![-2.0],
            10.0,
            "a shim in stock of −2 mm; a thickness above zero was expected: measure it again",
        ),
        (
            vec![f64::NAN],
            10.0,
            "the thickness of a shim in stock is not a number; a length was expected: measure it again",
        ),
        (
            vec![1.0],
            f64::INFINITY,
            "the largest stack is not a number; a length was expected: measure it again",
        ),
        (vec![500.0], 10.0, "500 mm; a shim between 0 mm and 304.8 mm was expected"),
        (vec![5.0], 500.0, "500 mm; a shim between 0 mm and 304.8 mm was expected"),
        (
            vec![5.0, 4.0],
            3.0,
            "a largest stack of 3 mm; a stack of 4 mm or more was expected: that is the thinnest shim in stock; see whether both are in the same units",
        ),
        (
            vec![sixty_fourth],
            120.0,
            "more than 256 stacks of different thickness up to 120 mm from the shims in stock; a lower stack or fewer thin shims was expected: leave out the thinnest shims, or lower the largest stack",
        ),
    ] {
        let stock: Vec<Length> = stock.into_iter().map(mm).collect();
        assert_eq!(Stock::new(&stock, mm(largest)).unwrap_err().to_string(), sentence);
    }
    let frame = Frame::new(corners([0.0; 4]), None).unwrap();
    let stock = Stock::new(&[mm(1.0)], mm(2.0)).unwrap();
    assert_eq!(
        frame.shimmed(weight(0.0, 0.0), &stock, &[true; 3], Aim::Loads).unwrap_err().to_string(),
        "whether shims may go there is said of 3 nests; a word of all 4 was expected: say yes or no for each"
    );
    assert!(matches!(
        frame.shimmed(weight(900.0, 0.0), &stock, &[true; 4], Aim::Loads),
        Err(ShimError::Frame(FrameError::Tips { .. }))
    ));
}

#[test]
fn stacks_are_of_the_fewest_shims() {
    let inches = |x: f64| Length::new::<inch>(x);
    let stock = Stock::new(&[inches(0.375), inches(0.25), inches(0.125)], inches(0.75)).unwrap();
    let pieces: Vec<Vec<f64>> = stock
        .stacks()
        .iter()
        .map(|stack| {
            stack.pieces.iter().map(|piece| (piece.get::<inch>() * 1e9).round() / 1e9).collect()
        })
        .collect();
    // A half in two ways of two: that with the thickest.
    let expected: [&[f64]; 7] =
        [&[], &[0.125], &[0.25], &[0.375], &[0.375, 0.125], &[0.375, 0.25], &[0.375, 0.375]];
    assert_eq!(pieces, expected);
}

/// A corner that is low by 10 mm is short of k·10/4, and so is the other of its diagonal.
#[test]
fn a_low_corner_is_raised() {
    let raised = plan(corners([0.0, 0.0, 0.0, -10.0]), &[10.0], 10.0, Aim::Loads);
    assert_relative_eq!(raised.before.evenness.loads, 0.075, max_relative = 1e-12);
    assert!(raised.after.evenness.loads < 1e-12, "{raised:?}");
    // Under either of the diagonal the loads are even; only under the low one is the frame level.
    assert_eq!(thicknesses(&raised), [0.0, 0.0, 0.0, 10.0]);
    assert_relative_eq!(raised.before.evenness.corners.value, 0.005, max_relative = 1e-9);
    assert!(raised.after.evenness.corners.value < 1e-12);
    let [step] = raised.steps.as_slice() else { panic!("{:?}", raised.steps) };
    assert_eq!((step.support, step.stack.pieces.as_slice()), (3, [mm(10.0)].as_slice()));
    assert_relative_eq!(step.gains.get::<newton>(), 750.0, max_relative = 1e-9);
    assert_eq!((raised.remainder.chief, raised.exact), (Remains::Nothing, true));

    // In halves under both, for want of a thicker one.
    let halves = plan(corners([0.0, 0.0, 0.0, -10.0]), &[5.0], 5.0, Aim::Loads);
    assert_eq!(thicknesses(&halves), [5.0, 0.0, 0.0, 5.0]);
    let after: Vec<f64> = halves.steps.iter().map(|step| step.evenness.loads).collect();
    assert_relative_eq!(after[0], 0.0375, max_relative = 1e-9);
    assert!(after[1] < 1e-12);
}

/// Both corners of the front are 8 mm low: the loads are even, the frame is not level.
#[test]
fn shims_under_a_side_change_no_load() {
    let low = || corners([-8.0, -8.0, 0.0, 0.0]);
    let even = plan(low(), &[2.0, 4.0], 8.0, Aim::Loads);
    assert_eq!((even.handled, even.steps.len(), even.remainder.chief), (0, 0, Remains::Nothing));
    let level = plan(low(), &[2.0, 4.0], 8.0, Aim::Corners);
    assert_eq!(thicknesses(&level), [8.0, 8.0, 0.0, 0.0]);
    assert_eq!(level.handled, 4);
    assert_relative_eq!(level.before.evenness.corners.value, 0.004, max_relative = 1e-9);
    assert!(level.after.evenness.corners.value < 1e-12);
    for (before, after) in level.before.settled.supports.iter().zip(&level.after.settled.supports) {
        assert_relative_eq!(before.load.value, after.load.value, max_relative = 1e-12);
    }
}

/// Shims that lie there and do no harm stay, though no plan needs them; those that do are taken out,
/// which is one to handle, unless fewer are laid elsewhere.
#[test]
fn what_lies_there_is_kept_or_taken_out() {
    let mut supports = corners([0.0; 4]);
    supports[0].shim = mm(7.3);
    supports[1].shim = mm(7.3);
    let kept = plan(supports.clone(), &[5.0], 5.0, Aim::Loads);
    assert!(
        kept.under.iter().all(|under| under.packing == Packing::Kept && under.change.value == 0.0)
    );
    assert_eq!(thicknesses(&kept), [7.3, 7.3, 0.0, 0.0]);

    supports[1].shim = mm(0.0);
    let out = plan(supports, &[5.0], 5.0, Aim::Loads);
    assert_eq!(thicknesses(&out), [0.0; 4]);
    assert_eq!(out.handled, 1);
    assert_eq!(out.under[0].packing, Packing::Laid(Stack::default()));
    assert_relative_eq!(out.under[0].change.get::<millimeter>(), -7.3, max_relative = 1e-9);
}

/// Of four plans that mirror each other the shim goes to the nest farthest along, then across.
#[test]
fn of_mirrored_plans_the_foremost_is_taken() {
    // The rear left and front right are 3 mm high: one shim of 6, or of 3 under both of the others.
    let twisted = plan(corners([0.0, 3.0, 3.0, 0.0]), &[6.0], 6.0, Aim::Loads);
    assert_eq!(thicknesses(&twisted), [6.0, 0.0, 0.0, 0.0]);
}

#[test]
fn what_remains_is_told() {
    let twisted = || corners([0.0, 0.0, 0.0, -10.0]);
    let coarse = plan(twisted(), &[7.0], 14.0, Aim::Loads);
    assert_eq!(coarse.remainder.chief, Remains::Stock);
    assert_eq!(coarse.remainder.stock, coarse.after.evenness.of(Aim::Loads));
    let low = plan(twisted(), &[2.0], 2.0, Aim::Loads);
    assert_eq!(low.remainder.chief, Remains::Stack);

    let frame = Frame::new(twisted(), None).unwrap();
    let stock = Stock::new(&[mm(1.0)], mm(20.0)).unwrap();
    let off = frame.shimmed(weight(90.0, 0.0), &stock, &[true; 4], Aim::Loads).unwrap();
    // A tenth of the half length ahead: a tenth more in front.
    assert_eq!(off.remainder.chief, Remains::Frame);
    assert_relative_eq!(off.after.evenness.loads, 0.1, max_relative = 1e-9);
    let may = [false, true, true, false];
    let shut = frame.shimmed(weight(0.0, 0.0), &stock, &may, Aim::Loads).unwrap();
    assert_eq!((shut.handled, shut.remainder.chief), (0, Remains::Place));

    // Three carry by the lever, whatever lies under them.
    let mut three = corners([0.0, 4.0, 0.0, 0.0]);
    three.truncate(3);
    let frame = Frame::new(three, None).unwrap();
    let lever = frame.shimmed(weight(300.0, 100.0), &stock, &[true; 3], Aim::Loads).unwrap();
    assert_eq!((lever.handled, lever.remainder.chief, lever.exact), (0, Remains::Frame, true));
    let level =
        frame.shimmed(weight(300.0, 500.0 / 3.0), &stock, &[true; 3], Aim::Corners).unwrap();
    assert!(level.after.evenness.corners < mm(1e-6), "{level:?}");
    assert_eq!(thicknesses(&level), [4.0, 0.0, 4.0]);
}

/// A frame that warps freely has even loads on any shims.
#[test]
fn a_slack_frame_needs_no_shims() {
    let slack = si(0.0);
    let frame = Frame::new(corners([0.0, 0.0, 0.0, -10.0]), Some(slack)).unwrap();
    let stock = Stock::new(&[mm(5.0)], mm(10.0)).unwrap();
    let plan = frame.shimmed(weight(0.0, 0.0), &stock, &[true; 4], Aim::Loads).unwrap();
    assert_eq!((plan.handled, plan.remainder.chief), (0, Remains::Nothing));
    let level = frame.shimmed(weight(0.0, 0.0), &stock, &[true; 4], Aim::Corners).unwrap();
    assert_eq!(thicknesses(&level), [0.0, 0.0, 0.0, 10.0]);
}

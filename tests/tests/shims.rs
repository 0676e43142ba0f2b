//! Plans of shims against every plan that there is, each settled by itself.

#![expect(clippy::cast_precision_loss, reason = "no frame here has 2⁵² nests")]

use approx::abs_diff_eq;
use clarabel::algebra::CscMatrix;
use clarabel::solver::{DefaultSettings, DefaultSolver, IPSolver, SupportedConeT};
use coilnest::frame::shims::{Aim, Deviation, MOST_TRIED, Packing, Plan, ROUNDING, Remains, Stock};
use coilnest::frame::{Contact, Frame, Place, Settled, Support, Weight};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{meter, newton, newton_per_meter};
use coilnest::quantity::{Force, Length, SpringRate, WarpStiffness, si};
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

fn metres(x: f64) -> Length {
    Length::new::<meter>(x)
}

/// Random numbers, the same in every run.
struct Chance(TestRng);

impl Chance {
    fn new() -> Self {
        Self(TestRng::deterministic_rng(RngAlgorithm::ChaCha))
    }

    /// From 0 to 1, evenly.
    fn even(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / f64::from(u32::MAX)
    }

    fn within(&mut self, from: f64, to: f64) -> f64 {
        from + (to - from) * self.even()
    }

    fn below(&mut self, count: usize) -> usize {
        self.0.next_u32() as usize % count
    }

    fn one_in(&mut self, count: usize) -> bool {
        self.below(count) == 0
    }
}

/// A frame to be shimmed.
#[derive(Clone, Debug)]
struct Any {
    supports: Vec<Support>,
    warp: Option<WarpStiffness>,
    weight: Weight,
    thicknesses: Vec<f64>,
    largest: f64,
    may: Vec<bool>,
}

impl Any {
    /// Every second frame stands in a rectangle on like nests and even steps of ground, as the shop
    /// has it, where many plans are equal; the rest are of any shape.
    fn new(chance: &mut Chance, nests: usize) -> Self {
        let square = chance.one_in(2);
        let like = nest(chance);
        let mut supports = Vec::new();
        let (mut total, mut along, mut across) = (0.0, metres(0.0), metres(0.0));
        let unit = 0.001;
        for number in 0..nests {
            let place = if square && nests.is_multiple_of(2) {
                let (pair, side) = ((number / 2) as f64, (number % 2) as f64);
                Place { along: metres(1.2 * pair), across: metres(1.6 * side - 0.8) }
            } else {
                let turn = number as f64 + chance.within(0.0, 0.5);
                let angle = core::f64::consts::TAU * turn / nests as f64;
                let out = chance.within(0.5, 1.0);
                let (x, y) = (2.5 * out * libm::cos(angle), 1.2 * out * libm::sin(angle));
                Place { along: metres(0.3 + x), across: metres(y - 0.1) }
            };
            let pull = if square { 1.0 } else { chance.within(0.1, 1.0) };
            total += pull;
            along += place.along * pull;
            across += place.across * pull;
            let ground =
                if square { unit * chance.below(9) as f64 } else { chance.within(-0.035, 0.035) };
            supports.push(Support {
                place,
                nest: if square { like.clone() } else { nest(chance) },
                stop: chance.one_in(3).then(|| SpringRate::new::<newton_per_meter>(8e6)),
                shim: metres(0.0),
                ground: metres(ground),
            });
        }
        let mut thicknesses: Vec<f64> =
            (0..=chance.below(3)).map(|_| unit * (1 + chance.below(8)) as f64).collect();
        if !square {
            thicknesses.push(chance.within(0.001, 0.012));
        }
        let thinnest = thicknesses.iter().copied().fold(f64::INFINITY, f64::min);
        let largest = thinnest * chance.within(1.0, if nests > 4 { 2.5 } else { 6.0 });
        for support in &mut supports {
            support.shim = match chance.below(4) {
                0 => metres(thinnest),
                1 => metres(chance.within(0.0, 0.02)),
                _ => metres(0.0),
            };
        }
        let warp = [None, None, Some(5e2), Some(2e3), Some(2e5)][chance.below(5)];
        let each = chance.within(2e3, 3e4);
        Self {
            warp: warp.map(si),
            weight: Weight {
                load: Force::new::<newton>(each * nests as f64),
                centre: Place { along: along / total, across: across / total },
            },
            thicknesses,
            largest,
            may: (0..nests).map(|_| !chance.one_in(5)).collect(),
            supports,
        }
    }

    fn stock(&self) -> Option<Stock> {
        let thicknesses: Vec<Length> = self.thicknesses.iter().copied().map(metres).collect();
        Stock::new(&thicknesses, metres(self.largest)).ok()
    }

    /// None where it does not stand.
    fn plan(&self, aim: Aim) -> Option<Plan> {
        let frame = Frame::new(self.supports.clone(), self.warp).unwrap();
        frame.shimmed(self.weight, &self.stock()?, &self.may, aim).ok()
    }

    fn with(&self, shims: &[f64]) -> Option<Settled> {
        let mut supports = self.supports.clone();
        for (support, shim) in supports.iter_mut().zip(shims) {
            support.shim = metres(*shim);
        }
        Frame::new(supports, self.warp).unwrap().settle(self.weight).ok()
    }

    /// What may come under each nest, and how many shims are then to handle, counted here anew.
    fn choices(&self) -> Vec<Vec<(f64, usize)>> {
        let mut sums: Vec<(f64, usize)> = vec![(0.0, 0)];
        let mut from = 0;
        while from < sums.len() {
            let (sum, pieces) = sums[from];
            from += 1;
            for more in &self.thicknesses {
                let sum = sum + more;
                let known = sums.iter().any(|(known, _)| (known - sum).abs() < 1e-9);
                if sum <= self.largest + 1e-9 && !known {
                    sums.push((sum, pieces + 1));
                }
            }
        }
        let places = self.supports.iter().zip(&self.may);
        let choices = places.map(|(support, may)| {
            let now = support.shim.value;
            let mut choices = vec![(now, 0)];
            if *may {
                let others = sums.iter().filter(|(sum, _)| (sum - now).abs() > 1e-9);
                let out = usize::from(now > 1e-9);
                choices.extend(others.map(|(sum, pieces)| (*sum, pieces + out)));
            }
            choices
        });
        choices.collect()
    }
}

fn nest(chance: &mut Chance) -> Nest {
    let coils = 1 + chance.below(2);
    let rate = SpringRate::new::<newton_per_meter>;
    let coil = |chance: &mut Chance| {
        let free = chance.within(0.27, 0.3);
        let of = chance.within(8e4, 5e5);
        Member {
            free: metres(free),
            law: Law::linear(rate(of)).unwrap(),
            solid: Some(metres(free * chance.within(0.55, 0.75))),
            raise: metres(chance.within(-0.01, 0.01)),
        }
    };
    Nest::new((0..coils).map(|_| coil(chance)).collect()).unwrap()
}

/// Greatest deviation of the loads, and of the heights of the frame at its nests.
fn deviations(any: &Any, shims: &[f64], settled: &Settled) -> [f64; 2] {
    let loads = settled.supports.iter().map(|at| (at.share - 1.0).abs()).fold(0.0, f64::max);
    let heights: Vec<f64> = settled
        .supports
        .iter()
        .zip(&any.supports)
        .zip(shims)
        .map(|((at, support), shim)| (at.height + support.ground).value + shim)
        .collect();
    let mean = heights.iter().sum::<f64>() / heights.len() as f64;
    [loads, heights.iter().map(|height| (height - mean).abs()).fold(0.0, f64::max)]
}

fn value(deviation: Deviation) -> f64 {
    match deviation {
        Deviation::Load(load) => load,
        Deviation::Height(height) => height.value,
    }
}

/// All plans with what they are worth in the aim and in the other, and how many shims to handle.
fn every(any: &Any, aim: Aim) -> Vec<(Vec<f64>, f64, f64, usize)> {
    let choices = any.choices();
    let mut numbers = vec![0; choices.len()];
    let mut all = Vec::new();
    'plans: loop {
        let picked = choices.iter().zip(&numbers).map(|(choices, number)| choices[*number]);
        let (shims, handled): (Vec<f64>, Vec<usize>) = picked.unzip();
        if let Some(settled) = any.with(&shims) {
            let [loads, corners] = deviations(any, &shims, &settled);
            let (of, beside) = if aim == Aim::Loads { (loads, corners) } else { (corners, loads) };
            all.push((shims, of, beside, handled.iter().sum()));
        }
        for (number, choices) in numbers.iter_mut().zip(&choices) {
            *number += 1;
            if *number < choices.len() {
                continue 'plans;
            }
            *number = 0;
        }
        return all;
    }
}

/// What must hold of any plan. Heights of a frame that rocks, or of one past an empty nest, are known to
/// a rounding of the step that found them.
fn sound(any: &Any, aim: Aim, plan: &Plan) {
    let shims: Vec<f64> = plan.under.iter().map(|under| under.thickness.value).collect();
    let settled = any.with(&shims).unwrap();
    let found = deviations(any, &shims, &settled);
    // A frame that hardly resists warping may stand metres out of true past an empty nest.
    let near = |one: f64, other: f64| (one - other).abs() <= 1e-9 * other.abs().max(1.0);
    assert!(near(plan.after.evenness.loads, found[0]), "{plan:?}\n{any:?}");
    assert!(
        settled.rocks || near(plan.after.evenness.corners.value, found[1]),
        "{found:?} {plan:?}\n{any:?}"
    );
    let (before, after) = (value(plan.before.evenness.of(aim)), value(plan.after.evenness.of(aim)));
    assert!(after <= before, "{plan:?}\n{any:?}");
    assert!(near(value(plan.bound) + value(plan.gap), after) && value(plan.gap) >= 0.0);
    let of = &plan.remainder;
    let parts = [of.stock, of.stack, of.place, of.frame].map(value);
    assert!(near(parts.iter().sum(), after) && parts.iter().all(|part| *part >= 0.0), "{plan:?}");
    assert_eq!(of.chief == Remains::Nothing, after <= 4.0 * ROUNDING, "{plan:?}");
    let changed = plan.under.iter().filter(|under| under.packing != Packing::Kept);
    assert_eq!(changed.count(), plan.steps.len());
    let mut lies: Vec<f64> = any.supports.iter().map(|support| support.shim.value).collect();
    let mut settled = any.with(&lies);
    for step in &plan.steps {
        assert!(any.may[step.support]);
        assert!(near(step.before.value, lies[step.support]));
        lies[step.support] = step.stack.thickness.value;
        let next = any.with(&lies);
        if let (Some(one), Some(other)) = (&settled, &next) {
            let gained = other.supports[step.support].load - one.supports[step.support].load;
            assert!((gained - step.gains).value.abs() <= 1e-9 * any.weight.load.value);
            let found = deviations(any, &lies, other);
            assert!(near(found[0], step.evenness.loads));
        }
        settled = next;
    }
    for (lies, shim) in lies.iter().zip(&shims) {
        assert!(near(*lies, *shim));
    }
}

const FRAMES: usize = 1000;

#[test]
fn on_three_and_four_nests_no_plan_evens_loads_better() {
    no_plan_is_better(Aim::Loads);
}

#[test]
fn on_three_and_four_nests_no_plan_levels_better() {
    no_plan_is_better(Aim::Corners);
}

fn no_plan_is_better(aim: Aim) {
    let mut chance = Chance::new();
    let (mut compared, mut loose, mut bottomed, mut warped, mut changed) = (0, 0, 0, 0, 0);
    for number in 0..FRAMES {
        let any = Any::new(&mut chance, if number % 4 == 0 { 3 } else { 4 });
        if let Some(plan) = any.plan(aim) {
            sound(&any, aim, &plan);
            assert!(plan.exact, "{plan:?}\n{any:?}");
            let all = every(&any, aim);
            let least = all.iter().map(|plan| plan.1).fold(f64::INFINITY, f64::min);
            let equal: Vec<_> = all.iter().filter(|plan| plan.1 <= least + ROUNDING).collect();
            let fewest = equal.iter().map(|plan| plan.3).min().unwrap();
            let few = equal.iter().filter(|plan| plan.3 == fewest);
            let beside = few.map(|plan| plan.2).fold(f64::INFINITY, f64::min);
            let after = value(plan.after.evenness.of(aim));
            // Leaving all as it is stands where nothing is gained but a rounding.
            assert!(
                abs_diff_eq!(after, least, epsilon = 1e-9 * least.max(1.0)),
                "{after} {least} {aim:?} {plan:?}\n{any:?}"
            );
            assert_eq!(plan.handled, fewest, "{aim:?} {plan:?}\n{any:?}");
            let other = value(plan.after.evenness.of(match aim {
                Aim::Loads => Aim::Corners,
                Aim::Corners => Aim::Loads,
            }));
            assert!(
                plan.after.settled.rocks || other <= beside + 2.0 * ROUNDING,
                "{other} {beside} {aim:?} {plan:?}\n{any:?}"
            );
            compared += 1;
            let is = |contact| plan.before.settled.supports.iter().any(|at| at.contact == contact);
            loose += usize::from(is(Contact::Loose));
            bottomed += usize::from(is(Contact::Bottomed));
            warped += usize::from(any.warp.is_some());
            changed += usize::from(plan.handled > 0);
        }
    }
    println!(
        "{compared} compared, {loose} loose, {bottomed} bottomed, {warped} warped, {changed} changed"
    );
    assert!(compared * 4 >= FRAMES * 3, "{compared}");
    for some in [loose, bottomed, warped, changed] {
        assert!(
            some * 20 >= compared,
            "{loose} loose, {bottomed} bottomed, {warped} warped, {changed} changed"
        );
    }
}

/// The bound is below the best plan, and that not above ours; how often ours is the best.
fn against_every(nests: usize, frames: usize, tried: bool) -> (usize, usize, f64) {
    let mut chance = Chance::new();
    let (mut compared, mut best, mut worst) = (0, 0, 0.0_f64);
    while compared < frames {
        let any = Any::new(&mut chance, nests);
        let plans: usize = any.choices().iter().map(Vec::len).product();
        if (plans <= MOST_TRIED) != tried || plans > 60_000 {
            continue;
        }
        for aim in [Aim::Loads, Aim::Corners] {
            let Some(plan) = any.plan(aim) else { continue };
            sound(&any, aim, &plan);
            let all = every(&any, aim);
            let least = all.iter().map(|plan| plan.1).fold(f64::INFINITY, f64::min);
            let (bound, after) = (value(plan.bound), value(plan.after.evenness.of(aim)));
            assert!(
                bound <= least + 1e-9 && least <= after + 1e-9,
                "{bound} {least} {after} {any:?}"
            );
            assert!(!plan.exact || after <= least + 2.0 * ROUNDING, "{least} {plan:?}\n{any:?}");
            best += usize::from(after <= least + 2.0 * ROUNDING);
            let before = value(plan.before.evenness.of(aim));
            if before > least + 2.0 * ROUNDING {
                worst = worst.max((after - least) / (before - least));
            }
            compared += 1;
        }
    }
    println!(
        "{nests} nests: {compared} compared, {best} the best; at worst {worst} of the gain missed"
    );
    (compared, best, worst)
}

#[test]
fn few_plans_under_more_nests_are_all_tried() {
    let (compared, best, _) = against_every(5, FRAMES / 40, true);
    assert_eq!(compared, best);
}

#[test]
fn many_plans_under_more_nests_have_a_bound_and_are_mostly_the_best() {
    let (compared, best, _) = against_every(6, FRAMES / 40, false);
    assert!(best * 10 >= compared * 6, "{best} of {compared}");
}

/// The floor of the loads against a general solver of linear programs.
#[test]
fn no_loads_in_balance_are_more_even_than_the_bound() {
    let mut chance = Chance::new();
    let mut compared = 0;
    for number in 0..FRAMES / 4 {
        let mut any = Any::new(&mut chance, 5 + number % 8);
        // Nothing may be shimmed, so that the frame's part is all that the bound knows.
        any.may.fill(false);
        let Some(plan) = any.plan(Aim::Loads) else { continue };
        let expected = least_deviation(&any);
        let found = value(plan.remainder.frame);
        assert!(
            abs_diff_eq!(found, expected, epsilon = 1e-6 * (1.0 + expected)),
            "{found} {expected} {any:?}"
        );
        compared += 1;
    }
    assert!(compared * 10 >= FRAMES / 4 * 8, "{compared}");
}

/// The least d of loads F ≥ 0 with |F − m| ≤ d·m that balance the weight, in means.
fn least_deviation(any: &Any) -> f64 {
    let count = any.supports.len();
    let size = count + 1;
    let (mut rows, mut columns, mut values, mut right) = (vec![], vec![], vec![], vec![]);
    let mut put = |row: usize, column: usize, value: f64| {
        rows.push(row);
        columns.push(column);
        values.push(value);
    };
    let centre = any.weight.centre;
    let of = |place: Place| [1.0, place.along.value, place.across.value];
    for (row, total) in of(centre).into_iter().enumerate() {
        for (column, support) in any.supports.iter().enumerate() {
            put(row, column, of(support.place)[row]);
        }
        right.push(total * count as f64);
    }
    for column in 0..count {
        for (load, off, limit) in [(1.0, -1.0, 1.0), (-1.0, -1.0, -1.0), (-1.0, 0.0, 0.0)] {
            put(right.len(), column, load);
            put(right.len(), count, off);
            right.push(limit);
        }
    }
    let matrix = CscMatrix::new_from_triplets(right.len(), size, rows, columns, values);
    let mut linear = vec![0.0; size];
    linear[count] = 1.0;
    let settings = DefaultSettings { verbose: false, ..DefaultSettings::default() };
    let cones = [SupportedConeT::ZeroConeT(3), SupportedConeT::NonnegativeConeT(right.len() - 3)];
    let quadratic = CscMatrix::zeros((size, size));
    let mut solver =
        DefaultSolver::new(&quadratic, &linear, &matrix, &right, &cones, settings).unwrap();
    solver.solve();
    solver.solution.x[count]
}

#[test]
fn the_order_of_the_nests_does_not_matter() {
    let mut chance = Chance::new();
    for number in 0..FRAMES / 4 {
        let any = Any::new(&mut chance, 3 + number % 5);
        let mut turned = any.clone();
        let turn = 1 + chance.below(any.supports.len() - 1);
        turned.supports.rotate_left(turn);
        turned.may.rotate_left(turn);
        for aim in [Aim::Loads, Aim::Corners] {
            let (Some(plan), Some(mut other)) = (any.plan(aim), turned.plan(aim)) else { continue };
            other.under.rotate_right(turn);
            assert_eq!(plan.under, other.under, "{any:?}");
        }
    }
}

//! Frames on nests: against equilibria found elsewhere (`data/frames.json`), against another
//! library's quadratic programs, and what must hold of every frame.

#![expect(clippy::cast_precision_loss, reason = "no frame here has 2⁵² nests")]

use clarabel::algebra::CscMatrix;
use clarabel::solver::{DefaultSettings, DefaultSolver, IPSolver, SupportedConeT};
use coilnest::frame::beams::{Axle, Beam, Bearing, Seat};
use coilnest::frame::track::Track;
use coilnest::frame::{
    CoilDoubt, Contact, Frame, FrameError, Place, STOP_PER_RATE, Settled, Support, Weight,
};
use coilnest::nest::{Law, Member, Nest};
use coilnest::propagation::{DrawingDoubt, RateDoubt};
use coilnest::quantity::unit::{
    meter, millimeter, newton, newton_per_meter, newton_per_millimeter,
};
use coilnest::quantity::{Force, Length, SpringRate, WarpStiffness, si};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use serde::Deserialize;

fn metres(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn newtons(x: f64) -> Force {
    Force::new::<newton>(x)
}

fn near(found: f64, expected: f64, relative: f64) -> bool {
    (found - expected).abs() <= relative * expected.abs()
}

fn loads(settled: &Settled) -> Vec<f64> {
    settled.supports.iter().map(|at| at.load.value).collect()
}

// Equilibria found elsewhere.

#[derive(Deserialize)]
struct Data {
    frames: Vec<Case>,
}

#[derive(Deserialize)]
struct Case {
    name: String,
    weight: f64,
    x: f64,
    y: f64,
    z: f64,
    roll: f64,
    pitch: f64,
    potential: f64,
    nests: Vec<Under>,
    at_rest: Vec<Rest>,
}

#[derive(Deserialize)]
struct Under {
    x: f64,
    y: f64,
    lower: f64,
    upper: f64,
    coils: Vec<Coil>,
}

#[derive(Deserialize)]
struct Coil {
    free: f64,
    rate: f64,
    solid: f64,
    raised: f64,
    past_solid: f64,
}

#[derive(Deserialize)]
struct Rest {
    height: f64,
    load: f64,
    coils: Vec<CoilAtRest>,
}

#[derive(Deserialize)]
struct CoilAtRest {
    load: f64,
    solid: bool,
}

/// The data's signs and ours. A positive pitch lowers the front, so that our slope along is the pitch
/// with its sign changed; the roll is our slope across. The upper seat's height over the frame's plane
/// counts like a dip of the ground. Past solid the data give the first solid coil a rate of its own,
/// beside those that go on; we give the nest one.
fn support(under: &Under) -> Support {
    let rate = SpringRate::new::<newton_per_millimeter>;
    let member = |coil: &Coil| Member {
        free: mm(coil.free),
        law: Law::linear(rate(coil.rate)).unwrap(),
        solid: Some(mm(coil.solid)),
        raise: mm(coil.raised),
    };
    let nest = Nest::new(under.coils.iter().map(member).collect()).unwrap();
    let first = nest.solid().unwrap().member;
    let past = under.coils.iter().enumerate();
    let past = past.map(|(at, coil)| if at == first { coil.past_solid } else { coil.rate });
    Support {
        place: Place { along: mm(under.x), across: mm(under.y) },
        nest,
        stop: Some(rate(past.sum())),
        shim: mm(0.0),
        ground: mm(under.lower - under.upper),
    }
}

#[test]
fn loads_and_heights_are_those_of_exact_rationals() {
    let data: Data = serde_json::from_str(include_str!("../data/frames.json")).unwrap();
    let mut bottomed = 0;
    for case in &data.frames {
        let supports: Vec<Support> = case.nests.iter().map(support).collect();
        let frame = Frame::new(supports.clone(), None).unwrap();
        let centre = Place { along: mm(case.x), across: mm(case.y) };
        let weight = Weight { load: newtons(case.weight), centre };
        let settled = frame.settle(weight).unwrap();
        let name = &case.name;
        assert!(near(settled.heave.get::<millimeter>(), case.z, 1e-8), "{name}: {settled:?}");
        assert!(near(settled.slope_along, -case.pitch, 1e-8), "{name}: {settled:?}");
        assert!(near(settled.slope_across, case.roll, 1e-8), "{name}: {settled:?}");
        for ((found, expected), support) in
            settled.supports.iter().zip(&case.at_rest).zip(&supports)
        {
            assert!(near(found.load.value, expected.load, 1e-8), "{name}: {found:?}");
            let height = found.height.get::<millimeter>();
            assert!(near(height, expected.height, 1e-8), "{name}: {found:?}");
            let solid = expected.coils.iter().any(|coil| coil.solid);
            bottomed += usize::from(solid);
            let contact = if solid { Contact::Bottomed } else { Contact::Carrying };
            assert_eq!(found.contact, contact, "{name}");
            // The shares of the coils are for the nest to tell.
            if !solid {
                let state = support.nest.at_height(found.height).unwrap();
                for (member, coil) in state.members.iter().zip(&expected.coils) {
                    assert!(near(member.load.value, coil.load, 1e-7), "{name}: {member:?}");
                }
            }
        }
        let pose = [settled.heave.value, settled.slope_along, settled.slope_across, 0.0];
        let energy = energy(&supports, None, weight, &pose) * 1000.0;
        assert!(near(energy, case.potential, 1e-8), "{name}: {energy}");
    }
    assert_eq!((data.frames.len(), bottomed), (4, 1));
}

// Any frame.

/// A frame that is yet to be made, and its weight.
#[derive(Clone, Debug)]
struct Any {
    supports: Vec<Support>,
    warp: Option<WarpStiffness>,
    weight: Weight,
}

impl Any {
    fn frame(&self) -> Frame {
        Frame::new(self.supports.clone(), self.warp).unwrap()
    }

    /// None where a nest would have no height.
    fn settled(&self) -> Option<Settled> {
        match self.frame().settle(self.weight) {
            Err(FrameError::Crushed { .. }) => None,
            settled => Some(settled.unwrap()),
        }
    }
}

fn any_member() -> impl Strategy<Value = Member> {
    let stage = prop::option::of((0.1..0.9, 1.0..3.0));
    (0.25..0.4, 5e4..4e5, 0.3..0.5, -0.02..0.02, stage).prop_map(
        |(free, rate, travel, raise, stage)| {
            let rates = SpringRate::new::<newton_per_meter>;
            let law = Law::linear(rates(rate)).unwrap();
            let law = match stage {
                Some((from, more)) => {
                    law.then(metres(free * travel * from), rates(rate * more)).unwrap()
                }
                None => law,
            };
            let solid = Some(metres(free * (1.0 - travel)));
            Member { free: metres(free), law, solid, raise: metres(raise) }
        },
    )
}

/// Three to twelve nests round an oval, some loose, some bottomed, with the weight anywhere within.
fn any_frame() -> impl Strategy<Value = Any> {
    let nest = prop::collection::vec(any_member(), 1..=3);
    let stop = prop::option::of(6e6..5e7);
    let place = (0.0..0.5, 0.5..1.0, 0.01..1.0_f64);
    let support = (nest, stop, place, 0.0..0.02, -0.04..0.04);
    let warp = prop::option::of(3.0..8.0);
    (prop::collection::vec(support, 3..=12), warp, 5e3..4e4).prop_map(|(drawn, warp, each)| {
        let count = drawn.len() as f64;
        let (mut total, mut along, mut across) = (0.0, metres(0.0), metres(0.0));
        let mut supports = Vec::new();
        for (number, (members, stop, (turn, out, pull), shim, ground)) in
            drawn.into_iter().enumerate()
        {
            let angle = core::f64::consts::TAU * (number as f64 + turn) / count;
            let place = Place {
                along: metres(0.3 + 2.5 * out * libm::cos(angle)),
                across: metres(-0.1 + 1.2 * out * libm::sin(angle)),
            };
            total += pull;
            along += place.along * pull;
            across += place.across * pull;
            supports.push(Support {
                place,
                nest: Nest::new(members).unwrap(),
                stop: stop.map(SpringRate::new::<newton_per_meter>),
                shim: metres(shim),
                ground: metres(ground),
            });
        }
        let centre = Place { along: along / total, across: across / total };
        let warp = warp.map(|power| si(libm::pow(10.0, power)));
        Any { supports, warp, weight: Weight { load: newtons(each * count), centre } }
    })
}

/// Heights from which a further rate works against the frame, and that rate, in SI units.
fn springs(support: &Support) -> Vec<(f64, f64)> {
    let solid = support.nest.solid().map_or(f64::NEG_INFINITY, |solid| solid.height.value);
    let mut springs = Vec::new();
    for member in support.nest.members() {
        let touch = (member.free + member.raise).value;
        let steps = member.law.steps().map(|(from, step)| (touch - from.value, step.value));
        springs.extend(steps.filter(|(from, _)| *from > solid));
    }
    let at_solid: f64 = springs.iter().map(|(_, rate)| rate).sum();
    if solid.is_finite() {
        let stop = support.stop.map_or(STOP_PER_RATE * at_solid, |stop| stop.value);
        springs.push((solid, stop - at_solid));
    }
    springs
}

fn height(support: &Support, pose: &[f64; 4]) -> f64 {
    let (x, y) = (support.place.along.value, support.place.across.value);
    let [z, a, b, w] = pose;
    z + a * x + b * y + w * x * y - (support.ground + support.shim).value
}

fn energy(
    supports: &[Support],
    warp: Option<WarpStiffness>,
    weight: Weight,
    pose: &[f64; 4],
) -> f64 {
    let [z, a, b, w] = pose;
    let centre = weight.centre;
    let mut sum = weight.load.value * (z + a * centre.along.value + b * centre.across.value);
    sum += warp.map_or(0.0, |warp| warp.value * w * w / 2.0);
    for support in supports {
        let height = height(support, pose);
        for (from, rate) in springs(support) {
            sum += rate * (from - height).max(0.0).powi(2) / 2.0;
        }
    }
    sum
}

/// Heave, slopes and warp about the origin, from what is reported about the middle.
fn pose(any: &Any, settled: &Settled) -> [f64; 4] {
    let span = |of: fn(&Support) -> f64| {
        let each = || any.supports.iter().map(of);
        (each().fold(f64::INFINITY, f64::min), each().fold(f64::NEG_INFINITY, f64::max))
    };
    let (left, right) = span(|support| support.place.along.value);
    let (near, far) = span(|support| support.place.across.value);
    let warp = 4.0 * settled.warp.value / ((right - left) * (far - near));
    [
        settled.heave.value,
        settled.slope_along - warp * f64::midpoint(near, far),
        settled.slope_across - warp * f64::midpoint(left, right),
        warp,
    ]
}

/// The frames of a strategy, the same in every run.
fn drawn(count: usize) -> impl Iterator<Item = Any> {
    let mut runner = TestRunner::deterministic();
    let strategy = any_frame();
    (0..count).map(move |_| strategy.new_tree(&mut runner).unwrap().current())
}

const FRAMES: usize = 10_000;

/// The loads as a general solver of quadratic programs has them: how much shorter each spring is than
/// free is at least what the frame leaves of it and at least zero, at the least energy. Lengths in
/// cm from 25 cm up, forces in means, so that the solver's numbers are near one: the loads are known
/// to the root of what it leaves of the energy.
fn by_program(any: &Any) -> Vec<f64> {
    let unit = 0.01;
    let force = any.weight.load.value / any.supports.len() as f64;
    let springs: Vec<Vec<(f64, f64)>> = any.supports.iter().map(springs).collect();
    let count: usize = springs.iter().map(Vec::len).sum();
    let ways = if any.warp.is_some() { 4 } else { 3 };
    let size = ways + count;
    let centre = any.weight.centre;
    let mut linear = vec![0.0; size];
    let pull = [1.0, centre.along.value, centre.across.value];
    linear[..3].copy_from_slice(&pull.map(|part| part * any.weight.load.value / force));
    let (mut quadratic, mut rows, mut most) = (Vec::new(), Vec::new(), Vec::new());
    if let Some(warp) = any.warp {
        quadratic.push((3, 3, warp.value * unit / force));
    }
    let mut variable = ways;
    for (support, springs) in any.supports.iter().zip(&springs) {
        let (x, y) = (support.place.along.value, support.place.across.value);
        let over = (support.ground + support.shim).value;
        for (from, rate) in springs {
            quadratic.push((variable, variable, rate * unit / force));
            for (way, part) in [1.0, x, y, x * y].into_iter().take(ways).enumerate() {
                rows.push((most.len(), way, -part));
            }
            rows.push((most.len(), variable, -1.0));
            most.push(-(from + over - 0.25) / unit);
            rows.push((most.len(), variable, -1.0));
            most.push(0.0);
            variable += 1;
        }
    }
    let matrix = |height: usize, entries: &[(usize, usize, f64)]| {
        let rows = entries.iter().map(|(row, ..)| *row).collect();
        let columns = entries.iter().map(|(_, column, _)| *column).collect();
        let values = entries.iter().map(|(.., value)| *value).collect();
        CscMatrix::new_from_triplets(height, size, rows, columns, values)
    };
    let settings = DefaultSettings {
        verbose: false,
        tol_gap_abs: 1e-14,
        tol_gap_rel: 1e-16,
        tol_feas: 1e-12,
        ..DefaultSettings::default()
    };
    let cones = [SupportedConeT::NonnegativeConeT(most.len())];
    let (quadratic, rows) = (matrix(size, &quadratic), matrix(most.len(), &rows));
    let mut solver =
        DefaultSolver::new(&quadratic, &linear, &rows, &most, &cones, settings).unwrap();
    solver.solve();
    let mut shorter = solver.solution.x[ways..].iter();
    let load = |springs: &Vec<(f64, f64)>| {
        let each = springs.iter().zip(shorter.by_ref());
        each.map(|((_, rate), shorter)| rate * shorter * unit).sum()
    };
    springs.iter().map(load).collect()
}

#[test]
fn a_general_solver_finds_the_same_loads() {
    let (mut compared, mut loose, mut bottomed, mut warped) = (0, 0, 0, 0);
    for any in drawn(FRAMES) {
        let Some(settled) = any.settled() else { continue };
        let found = loads(&settled);
        let expected = by_program(&any);
        for (load, expected) in found.iter().zip(&expected) {
            let off = (load - expected).abs() / any.weight.load.value;
            assert!(off <= 1e-6, "{off}: {found:?}\n{expected:?}\n{any:?}");
        }
        let is = |contact| settled.supports.iter().any(|at| at.contact == contact);
        loose += usize::from(is(Contact::Loose));
        bottomed += usize::from(is(Contact::Bottomed));
        warped += usize::from(any.warp.is_some());
        compared += 1;
    }
    // Nearly all stand, and the hard ones are among them.
    assert!(compared * 100 >= FRAMES * 95, "{compared}");
    for some in [loose, bottomed, warped] {
        assert!(some * 10 >= FRAMES, "{loose} loose, {bottomed} bottomed, {warped} warped");
    }
}

proptest! {
    #[test]
    fn a_high_corner_moves_each_load_by_a_quarter(
        rate in 1e4..1e6, high in 0.0..0.01, length in 0.5..5.0, width in 0.5..3.0
    ) {
        let weight = 4.0 * rate * 0.1;
        let corner = |x: f64, y: f64, shim| Support {
            place: Place { along: metres(x * length), across: metres(y * width) },
            nest: one_coil(rate),
            stop: None,
            shim: metres(shim),
            ground: metres(0.0),
        };
        let corners =
            vec![corner(1.0, 1.0, high), corner(1.0, -1.0, 0.0), corner(-1.0, 1.0, 0.0), corner(-1.0, -1.0, 0.0)];
        let weight = Weight { load: newtons(weight), centre: Place::default() };
        let settled = Frame::new(corners, None).unwrap().settle(weight).unwrap();
        for (load, sign) in loads(&settled).iter().zip([1.0, -1.0, -1.0, 1.0]) {
            prop_assert!(near(*load, rate * 0.1 + sign * rate * high / 4.0, 1e-12));
        }
        let diagonal = settled.diagonal.unwrap();
        prop_assert!((diagonal.load.value - rate * high).abs() <= 1e-12 * weight.load.value);
        prop_assert!((diagonal.height.value + high / 2.0).abs() <= 1e-14);
    }

    #[test]
    fn forces_and_moments_balance(any in any_frame()) {
        let Some(settled) = any.settled() else { return Ok(()) };
        let Weight { load, centre } = any.weight;
        let [_, _, _, warp] = pose(&any, &settled);
        let (mut sum, mut along, mut across, mut twist) = (0.0, 0.0, 0.0, 0.0);
        for (support, at) in any.supports.iter().zip(loads(&settled)) {
            let (x, y) = (support.place.along.value, support.place.across.value);
            sum += at;
            along += at * x;
            across += at * y;
            twist += at * x * y;
        }
        prop_assert!((sum - load.value).abs() <= 1e-12 * load.value);
        prop_assert!((along - load.value * centre.along.value).abs() <= 1e-12 * load.value);
        prop_assert!((across - load.value * centre.across.value).abs() <= 1e-12 * load.value);
        if let Some(stiffness) = any.warp {
            // The warp is known to a rounding of the heights.
            let allowed = 1e-12 * load.value + 1e-15 * stiffness.value;
            prop_assert!((twist - stiffness.value * warp).abs() <= allowed);
        }
    }

    #[test]
    fn the_energy_is_no_higher_than_nearby(any in any_frame(), seed in any::<[u8; 32]>()) {
        let Some(settled) = any.settled() else { return Ok(()) };
        let pose = pose(&any, &settled);
        let of = |pose: &[f64; 4]| energy(&any.supports, any.warp, any.weight, pose);
        let least = of(&pose);
        // What sums of such terms lose, the places being within 3 m.
        let [z, a, b, w] = pose.map(f64::abs);
        let terms = any.weight.load.value * (z + 3.0 * a + 3.0 * b + 9.0 * w);
        let lost = 1e-14 * (terms + any.warp.map_or(0.0, |warp| warp.value * w * w));
        let mut chance = Chance(TestRng::from_seed(RngAlgorithm::ChaCha, &seed));
        for step in 0..1000 {
            // From a nanometre to a decimetre.
            let far = libm::pow(10.0, f64::from(step) / 125.0 - 9.0);
            let warp = if any.warp.is_some() { far } else { 0.0 };
            let reach = [far, far, far, warp];
            let mut other = pose;
            for (part, reach) in other.iter_mut().zip(reach) {
                *part += reach * (2.0 * chance.even() - 1.0);
            }
            prop_assert!(of(&other) >= least - lost);
        }
    }

    #[test]
    fn the_order_of_the_nests_does_not_matter(any in any_frame(), turn in 1_usize..12) {
        let Some(settled) = any.settled() else { return Ok(()) };
        let mut turned = any.clone();
        let turn = turn % turned.supports.len();
        turned.supports.rotate_left(turn);
        let mut back = loads(&turned.settled().unwrap());
        back.rotate_right(turn);
        for (load, other) in loads(&settled).iter().zip(back) {
            prop_assert!((load - other).abs() <= 1e-9 * any.weight.load.value);
        }
    }

    #[test]
    fn a_mirrored_frame_gives_a_mirrored_answer(any in any_frame(), across in any::<bool>()) {
        let Some(settled) = any.settled() else { return Ok(()) };
        let mut mirrored = any.clone();
        let turn = |place: &mut Place| {
            let side = if across { &mut place.across } else { &mut place.along };
            *side = -*side;
        };
        turn(&mut mirrored.weight.centre);
        mirrored.supports.iter_mut().for_each(|support| turn(&mut support.place));
        let other = mirrored.settled().unwrap();
        for (at, other) in settled.supports.iter().zip(&other.supports) {
            prop_assert!((at.load - other.load).value.abs() <= 1e-12 * any.weight.load.value);
            prop_assert!((at.height - other.height).value.abs() <= 1e-12);
            prop_assert_eq!(at.contact, other.contact);
        }
        let signs = if across { [1.0, -1.0] } else { [-1.0, 1.0] };
        let lean = [settled.lean_along.value, settled.lean_across.value];
        let other = [other.lean_along.value, other.lean_across.value];
        for ((lean, other), sign) in lean.iter().zip(other).zip(signs) {
            prop_assert!((lean - sign * other).abs() <= 1e-12);
        }
    }

    /// The walk from bend to bend finds what many small dips would, and no wheel is lifted sooner.
    #[test]
    fn the_least_dip_is_where_a_wheel_lifts(any in any_frame(), wheel in 0_usize..12) {
        let frame = any.frame();
        let wheel = wheel % any.supports.len();
        let wheels = (0..any.supports.len()).map(Bearing::under).collect();
        let Ok(track) = Track::new(&frame, any.weight, wheels) else { return Ok(()) };
        let least = |dip: Length| {
            let wheels = track.raised(wheel, -dip).unwrap();
            wheels.iter().map(|at| at.load.value).fold(f64::INFINITY, f64::min)
        };
        let weight = any.weight.load.value;
        match track.least_dip(wheel).unwrap() {
            None => prop_assert!(least(metres(0.609)) > 0.0),
            Some(lift) => {
                let at = track.raised(wheel, -lift.dip).unwrap()[lift.wheel];
                prop_assert!(at.load.value.abs() <= 1e-9 * weight, "{lift:?}: {at:?}");
                for part in [0.25, 0.5, 0.75, 0.99, 0.9999] {
                    prop_assert!(lift.dip.value <= 0.0 || least(lift.dip * part) > 0.0, "{lift:?}");
                }
            }
        }
    }
}

fn one_coil(rate: f64) -> Nest {
    let law = Law::linear(SpringRate::new::<newton_per_meter>(rate)).unwrap();
    Nest::new(vec![Member { free: metres(0.35), law, solid: None, raise: metres(0.0) }]).unwrap()
}

/// Random numbers, the same for the same seed.
struct Chance(TestRng);

impl Chance {
    /// From 0 to 1, both included, evenly.
    fn even(&mut self) -> f64 {
        f64::from(self.0.next_u32()) / f64::from(u32::MAX)
    }

    /// Normal, by the sum of twelve even ones, which is as good within three standard deviations.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// First order against coils that were made longer and stiffer by hand, and against the library's own
/// samples. Of 20 000 a standard deviation is known to 0.5 %; four of that are allowed.
#[test]
fn the_doubt_of_the_loads_is_the_scatter_of_sampled_frames() {
    let trials = 20_000;
    let doubt = |free, tape, own, steel, drawing| CoilDoubt {
        free: mm(free),
        tape: mm(tape),
        rate: RateDoubt { own, drawing, steel },
    };
    let data: Data = serde_json::from_str(include_str!("../data/frames.json")).unwrap();
    // The uneven frame of eight, and the one with a nest past solid.
    for case in &data.frames[2..] {
        let supports: Vec<Support> = case.nests.iter().map(support).collect();
        let doubts: Vec<Vec<CoilDoubt>> = supports
            .iter()
            .zip(1..)
            .map(|(support, number)| {
                let more = f64::from(number) / 40.0;
                // The outer coils are of one drawing, the others of another each.
                let coils = support.nest.members().iter().enumerate();
                coils
                    .map(|(number, _)| {
                        let drawing = DrawingDoubt { number, doubt: 0.004 };
                        doubt(0.1 + more, 0.15 - more / 2.0, 0.002 + more / 40.0, 0.006, drawing)
                    })
                    .collect()
            })
            .collect();
        let centre = Place { along: mm(case.x), across: mm(case.y) };
        let weight = Weight { load: newtons(case.weight), centre };
        let frame = Frame::new(supports.clone(), None).unwrap();
        let foretold = frame.doubted(weight, &doubts).unwrap();

        let mut chance = Chance(TestRng::deterministic_rng(RngAlgorithm::ChaCha));
        let mut sums = vec![[0.0; 4]; supports.len()];
        for _ in 0..trials {
            let (tape, steel) = (chance.normal(), chance.normal());
            let shapes = [(); 3].map(|()| chance.normal());
            let mut others = supports.clone();
            for ((support, under), doubts) in others.iter_mut().zip(&case.nests).zip(&doubts) {
                let coils = under.coils.iter().zip(doubts);
                let members = coils.map(|(coil, doubt)| {
                    let longer = doubt.free * chance.normal() + doubt.tape * tape;
                    let shaped = doubt.rate.drawing.doubt * shapes[doubt.rate.drawing.number];
                    let own = doubt.rate.own * chance.normal();
                    let stiffer = 1.0 + own + shaped + doubt.rate.steel * steel;
                    let rate = SpringRate::new::<newton_per_millimeter>(coil.rate * stiffer);
                    Member {
                        free: mm(coil.free) + longer,
                        law: Law::linear(rate).unwrap(),
                        solid: Some(mm(coil.solid)),
                        raise: mm(coil.raised),
                    }
                });
                support.nest = Nest::new(members.collect()).unwrap();
            }
            let settled = Frame::new(others, None).unwrap().settle(weight).unwrap();
            for ((sum, at), of) in sums.iter_mut().zip(&settled.supports).zip(&foretold) {
                let (load, height) =
                    ((at.load - of.load.value).value, (at.height - of.height.value).value);
                *sum = [
                    sum[0] + load,
                    sum[1] + load * load,
                    sum[2] + height,
                    sum[3] + height * height,
                ];
            }
        }
        let samples = frame.sampled(weight, &doubts, trials, 20_261_125).unwrap();
        let count = f64::from(trials);
        let allowed = 4.0 / (2.0 * count).sqrt() + 0.004;
        for (((sum, of), sample), number) in sums.iter().zip(&foretold).zip(&samples).zip(1..) {
            let scatter =
                |sum: f64, squares: f64| ((squares - sum * sum / count) / (count - 1.0)).sqrt();
            for off in [
                scatter(sum[0], sum[1]) / of.load.doubt.value - 1.0,
                scatter(sum[2], sum[3]) / of.height.doubt.value - 1.0,
                sample.load.doubt.value / of.load.doubt.value - 1.0,
            ] {
                assert!(off.abs() <= allowed, "{}, nest {number}: {off}", case.name);
            }
            let mean = (sample.load.value - of.load.value) / of.load.doubt;
            assert!(mean.value.abs() <= 4.0 / count.sqrt() + 0.02, "{mean:?}");
        }
        assert_eq!(samples, frame.sampled(weight, &doubts, trials, 20_261_125).unwrap());
        assert_ne!(samples, frame.sampled(weight, &doubts, trials, 7).unwrap());
    }
}

/// By hand: four coils of 200 N/mm under 40 kN. Two beams lie along the sides, each on two boxes
/// 3 m apart with nests 1 m in from either end; a box that dips by g lowers one nest by 2g/3 and the
/// other by g/3, of which only the difference twists: k/4 · g/3 off one nest, on to the other.
#[test]
fn a_beam_takes_two_thirds_off_a_dip() {
    let nest = |x, y| Support {
        place: Place { along: metres(x), across: metres(y) },
        nest: one_coil(200_000.0),
        stop: None,
        shim: metres(0.0),
        ground: metres(0.0),
    };
    let corners = vec![nest(0.5, 1.0), nest(-0.5, 1.0), nest(0.5, -1.0), nest(-0.5, -1.0)];
    let frame = Frame::new(corners, None).unwrap();
    let weight = Weight { load: newtons(40_000.0), centre: Place::default() };
    let boxes = |front, rear| {
        let seats =
            vec![Seat { support: front, at: metres(1.0) }, Seat { support: rear, at: metres(2.0) }];
        Beam::new([metres(0.0), metres(3.0)], seats).unwrap().boxes()
    };
    let ([a, b], [c, d]) = (boxes(0, 1), boxes(2, 3));
    let track =
        Track::new(&frame, weight, vec![a.clone(), b.clone(), c.clone(), d.clone()]).unwrap();
    let dipped = track.raised(0, mm(-30.0)).unwrap();
    // Nests: 10 000 ∓ 50 N/mm · 10 mm; boxes: a third of the difference of 1000 N.
    let lost = 500.0 / 3.0;
    for (at, expected) in dipped.iter().zip([-lost, lost, lost, -lost]) {
        assert!(near(at.load.value, 10_000.0 + expected, 1e-12), "{dipped:?}");
        assert!((at.unloading.unwrap() + expected / 10_000.0).abs() <= 1e-12, "{dipped:?}");
    }
    // Wheels nearer the middle than the boxes give and take half as much again.
    let [left, right] = Axle::new(metres(2.0), metres(1.0)).unwrap().wheels(&[a, c]);
    let [other, last] = Axle::new(metres(2.0), metres(1.0)).unwrap().wheels(&[b, d]);
    let track = Track::new(&frame, weight, vec![left, right, other, last]).unwrap();
    let dipped = track.raised(0, mm(-30.0)).unwrap();
    // A wheel's dip lowers the box above it by 3/2 and lifts the one across by 1/2, so that beams
    // twist by 3/2 + 1/2 = 2; and as much again for the wheels: 4 · 500/3.
    assert!(near(dipped[0].load.value, 10_000.0 - 4.0 * lost, 1e-12), "{dipped:?}");
}

//! Pads and plates over and under a nest: against a general solver of quadratic programs, which knows
//! springs that push and springs that hold, joined at points, and nothing of nests.

use clarabel::algebra::CscMatrix;
use clarabel::solver::{DefaultSettings, DefaultSolver, IPSolver, SupportedConeT};
use coilnest::nest::{Law, Member, Nest};
use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
use coilnest::quantity::{Force, Length, SpringRate};
use coilnest::stack::{Layer, Stack, StackError};
use oorandom::Rand64;
use std::collections::BTreeMap;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn rate(x: f64) -> SpringRate {
    SpringRate::new::<newton_per_millimeter>(x)
}

/// Coils as free height with raise and rate, layers as thickness and squeeze, in mm, N and N/mm.
struct Case {
    coils: Vec<(f64, f64)>,
    layers: Vec<(f64, Option<f64>)>,
}

impl Case {
    fn nest(&self) -> Nest {
        let member = |(free, k): &(f64, f64)| Member {
            free: mm(*free),
            law: Law::linear(rate(*k)).unwrap(),
            solid: None,
            raise: mm(0.0),
        };
        Nest::new(self.coils.iter().map(member).collect()).unwrap()
    }

    fn stack(&self) -> Stack {
        let layer = |(thickness, squeeze): &(f64, Option<f64>)| Layer {
            thickness: mm(*thickness),
            squeeze: squeeze.map(rate),
        };
        Stack::new(self.layers.iter().map(layer).collect()).unwrap()
    }
}

/// The load of all coils with beam and frame so far apart. Unknown are how far each point where layer lies
/// on layer or nest gives way, and how much shorter each coil is; a coil is at least as much shorter as its
/// place makes it, and never longer. The energy of what gives is least.
fn by_program(case: &Case, height: f64) -> f64 {
    let (layers, coils) = (case.layers.len(), case.coils.len());
    // Points over each layer; the nest stands on the last of them, and reaches up to the frame.
    let size = layers + coils;
    let mut quadratic: BTreeMap<(usize, usize), f64> = BTreeMap::new();
    let mut put = |row: usize, column: usize, rate: f64| {
        // In kN, so that the program's numbers are of one size.
        *quadratic.entry((row, column)).or_default() += rate / 1000.0;
    };
    let mut rows: Vec<(Vec<(usize, f64)>, f64)> = Vec::new();
    let mut rigid = 0;
    for (index, (_, squeeze)) in case.layers.iter().enumerate() {
        let under = index.checked_sub(1);
        if let Some(k) = squeeze {
            // k/2 · (over − under)²
            put(index, index, *k);
            if let Some(under) = under {
                put(under, under, *k);
                put(under, index, -k);
            }
        } else {
            let mut row = vec![(index, 1.0)];
            row.extend(under.map(|under| (under, -1.0)));
            rows.insert(rigid, (row, 0.0));
            rigid += 1;
        }
    }
    let top = layers.checked_sub(1);
    let thickness: f64 = case.layers.iter().map(|(thickness, _)| thickness).sum();
    for (index, (free, k)) in case.coils.iter().enumerate() {
        let at = layers + index;
        put(at, at, *k);
        // shorter ≥ free − (height − thickness + what gives way), shorter ≥ 0
        let mut row = vec![(at, -1.0)];
        row.extend(top.map(|top| (top, -1.0)));
        rows.push((row, height - thickness - free));
        rows.push((vec![(at, -1.0)], 0.0));
    }
    let most: Vec<f64> = rows.iter().map(|(_, most)| *most).collect();
    let triplets: Vec<(usize, usize, f64)> = rows
        .iter()
        .enumerate()
        .flat_map(|(row, (of, _))| of.iter().map(move |(column, value)| (row, *column, *value)))
        .collect();
    let rows = CscMatrix::new_from_triplets(
        rows.len(),
        size,
        triplets.iter().map(|(row, ..)| *row).collect(),
        triplets.iter().map(|(_, column, _)| *column).collect(),
        triplets.iter().map(|(.., value)| *value).collect(),
    );
    let (at, across) = quadratic.keys().copied().unzip();
    let values = quadratic.into_values().collect();
    let quadratic = CscMatrix::new_from_triplets(size, size, at, across, values);
    let settings = DefaultSettings {
        verbose: false,
        tol_gap_abs: 1e-13,
        tol_gap_rel: 1e-15,
        tol_feas: 1e-11,
        ..DefaultSettings::default()
    };
    let cones =
        [SupportedConeT::ZeroConeT(rigid), SupportedConeT::NonnegativeConeT(most.len() - rigid)];
    let mut solver =
        DefaultSolver::new(&quadratic, &vec![0.0; size], &rows, &most, &cones, settings).unwrap();
    solver.solve();
    let shorter = &solver.solution.x[layers..];
    case.coils.iter().zip(shorter).map(|((_, k), shorter)| k * shorter).sum()
}

#[test]
fn a_general_solver_finds_the_same_loads() {
    let mut chance = Rand64::new(14);
    let mut between = |least: f64, most: f64| least + (most - least) * chance.rand_float();
    let (mut soft, mut loose) = (0, 0);
    for _ in 0..500 {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "up to three")]
        let counts = [between(1.0, 4.0) as usize, between(0.0, 4.0) as usize];
        let coils = (0..counts[0]).map(|_| (between(280.0, 320.0), between(50.0, 400.0)));
        let coils = coils.collect();
        let layers = (0..counts[1]).map(|_| {
            let squeeze = between(0.0, 1.0) < 0.6;
            (between(3.0, 40.0), squeeze.then(|| between(2000.0, 50_000.0)))
        });
        let case = Case { coils, layers: layers.collect() };
        let (nest, stack) = (case.nest(), case.stack());
        let height = between(250.0, 300.0) + stack.thickness().get::<millimeter>();
        let expected = by_program(&case, height);
        let state = match stack.at_height(&nest, mm(height)) {
            Err(StackError::Crushed { layer, .. }) => {
                let (thickness, squeeze) = case.layers[layer - 1];
                assert!(expected / squeeze.unwrap() >= thickness, "{expected} {layer}");
                continue;
            }
            found => found.unwrap(),
        };
        let found = state.load.value;
        assert!((found - expected).abs() <= 1e-6 * expected.max(1000.0), "{found} {expected}");
        soft += usize::from(case.layers.iter().any(|(_, squeeze)| squeeze.is_some()));
        loose += usize::from(state.members.iter().any(|member| !member.touching));
        // And back: under that load both are so high, unless no coil is reached.
        let back = stack.on(&nest, state.load).unwrap().height.get::<millimeter>();
        let reached = state.load.value > 0.0;
        assert!((back - height).abs() < 1e-9 || !reached && back < height, "{back} {height}");
    }
    assert!(soft > 150 && loose > 50, "{soft} {loose}");
}

/// Coils of two stages, raised and solid: under each load the nest that is felt is lower by the squeeze.
#[test]
fn the_nest_that_is_felt_is_lower_by_the_squeeze() {
    let mut chance = Rand64::new(15);
    let mut between = |least: f64, most: f64| least + (most - least) * chance.rand_float();
    for _ in 0..300 {
        let mut member = || Member {
            free: mm(between(280.0, 320.0)),
            law: Law::linear(rate(between(50.0, 400.0)))
                .unwrap()
                .then(mm(between(20.0, 60.0)), rate(between(400.0, 600.0)))
                .unwrap(),
            solid: Some(mm(between(150.0, 200.0))),
            raise: mm(between(-10.0, 10.0)),
        };
        let nest = Nest::new(vec![member(), member()]).unwrap();
        let squeeze = between(2000.0, 20_000.0);
        let stack =
            Stack::new(vec![Layer { thickness: mm(30.0), squeeze: Some(rate(squeeze)) }]).unwrap();
        let felt = stack.over(&nest).unwrap();
        let solid = nest.at_height(nest.solid().unwrap().height).unwrap().load.value;
        for part in 0..=40 {
            let load = Force::new::<newton>(solid * f64::from(part) / 40.0);
            let (own, through) = (nest.at_load(load).unwrap(), felt.at_load(load).unwrap());
            let off = (own.height - through.height).value - load.value / (squeeze * 1e3);
            assert!(off.abs() < 1e-12, "{off}");
        }
        let stops = felt.solid().unwrap().height - nest.solid().unwrap().height;
        assert!((stops.value + solid / (squeeze * 1e3)).abs() < 1e-12);
    }
}

#[test]
fn what_makes_no_stack_is_named() {
    let layer = |thickness, squeeze: Option<f64>| Layer {
        thickness: mm(thickness),
        squeeze: squeeze.map(rate),
    };
    let nothing = Stack::new(vec![layer(10.0, None), layer(0.0, None)]);
    assert!(matches!(nothing, Err(StackError::Thickness { layer: 2, .. })), "{nothing:?}");
    let soft = Stack::new(vec![layer(10.0, Some(0.0))]);
    assert!(matches!(soft, Err(StackError::Squeeze { layer: 1, .. })), "{soft:?}");
    let pad = Stack::new(vec![layer(10.0, Some(100.0))]).unwrap();
    let crushed = pad.under(Force::new::<newton>(1000.0));
    assert!(matches!(crushed, Err(StackError::Crushed { layer: 1, .. })), "{crushed:?}");
}

//! Sized coils against a second calculation, against themselves, and against published designs.

use approx::{abs_diff_eq, assert_abs_diff_eq};
use coilnest::coil::buckling::{self, Seating};
use coilnest::coil::ends::{Ends, Turns};
use coilnest::coil::gaps::Duty;
use coilnest::coil::{Coiling, DiameterKind, Diameters};
use coilnest::drawing::{Drawing, Given};
use coilnest::material::{Against, Law, Span, Strength};
use coilnest::quantity::unit::{
    degree, gigapascal, inch, kilogram_per_cubic_meter, megapascal, meter, millimeter, newton,
    newton_per_meter, newton_per_millimeter, pound_force, pound_force_per_inch,
    pound_force_per_square_inch,
};
use coilnest::quantity::{Angle, Force, Length, MassDensity, Pressure, SpringRate};
use coilnest::sizing::{
    Allowed, Balance, Design, Factor, InnerCoil, Limit, LimitCheck, Make, Metal, Need, NeedError,
    Pair, PairSizing, Rank, Reserve, Room, Rounding, Sizing, Stiffness, Work, steps,
};
use coilnest::source::{Known, Source};
use std::f64::consts::PI;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn newtons(x: f64) -> Force {
    Force::new::<newton>(x)
}

fn rate(x: f64) -> SpringRate {
    SpringRate::new::<newton_per_millimeter>(x)
}

fn mpa(x: f64) -> Pressure {
    Pressure::new::<megapascal>(x)
}

fn stress(allowed: f64, factor: Factor) -> Allowed {
    Allowed::Stress { stress: mpa(allowed), factor }
}

fn steel(shear_gpa: f64, at_load: Allowed, at_solid: Option<Allowed>) -> Metal {
    Metal {
        shear_modulus: Pressure::new::<gigapascal>(shear_gpa),
        poisson: 0.3,
        density: MassDensity::new::<kilogram_per_cubic_meter>(7850.0),
        at_load,
        at_solid,
    }
}

fn near(found: f64, expected: f64, relative: f64) -> bool {
    (found - expected).abs() <= relative * expected.abs().max(found.abs())
}

/// `SplitMix64`: the same needs at every run.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    fn between(&mut self, least: f64, most: f64) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "53 bits are kept")]
        let part = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        least + part * (most - least)
    }

    fn chance(&mut self, part: f64) -> bool {
        self.between(0.0, 1.0) < part
    }

    fn of<T: Copy>(&mut self, list: &[T]) -> T {
        list[usize::try_from(self.next() % list.len() as u64).unwrap()]
    }
}

/// What is left of a radial gap, the inner coil grown: beyond what is asked, else beyond touching, and
/// free beyond half the difference of the bars, whichever is less.
fn spare(room: &Room, grown: f64, growth: f64, bars_apart: f64) -> f64 {
    match room.gap {
        Some(gap) => grown - gap.value,
        None => grown.min(grown + growth / 2.0 - bars_apart / 2.0),
    }
}

/// The sums of one coil done again in bare SI, from the formulas as their sources print them.
#[derive(Clone, Copy, Debug)]
struct ByHand {
    d: f64,
    mean: f64,
    n: f64,
    free: f64,
    rate: f64,
    solid: f64,
    least_solid: f64,
    growth: f64,
    pitch: f64,
    mass: f64,
}

impl ByHand {
    fn of(need: &Need, of: &Design) -> Self {
        Self::sized(need, of.coil, of.turns, of.free)
    }

    fn sized(need: &Need, coil: Diameters, turns: Turns, free: Length) -> Self {
        let (d, mean) = (coil.bar().value, coil.mean().value);
        let (n, free) = (turns.active(), free.value);
        let total = n + need.make.dead_turns;
        let g = need.metal.shear_modulus.value;
        let rate = g * d * d * d * d / (8.0 * mean * mean * mean * n);
        let bars = match need.make.ends {
            Ends::Open | Ends::Closed => total + 1.0,
            Ends::OpenGround | Ends::ClosedGround => total,
            Ends::TaperedGround => total - 0.3,
        };
        // The pitch follows from the usual height; the others stop a little higher or lower.
        let usual = bars * d;
        let other = match need.make.ends {
            Ends::Closed => (total + 1.5) * d,
            Ends::TaperedGround => 1.01 * (total - 0.5) * d,
            _ => usual,
        };
        let (least_solid, solid) = (usual.min(other), usual.max(other));
        let spaces = if need.make.ends == Ends::OpenGround { total } else { n };
        let pitch = d + (free - usual) / spaces;
        // Ends held: length of bar and turns are kept. Ends free: EN 13906-1 (from memory).
        let held = (mean * mean + (pitch * pitch - d * d) / (PI * PI)).sqrt() - mean;
        let free_to_turn = 0.1 * (pitch * pitch - 0.8 * pitch * d - 0.2 * d * d) / mean;
        let turn = (PI * PI * mean * mean + pitch * pitch).sqrt();
        // Dead turns lie a bar to the turn; open and ground ends have none that lie.
        let lying = if need.make.ends == Ends::OpenGround { 0.0 } else { total - n };
        let flat = (PI * PI * mean * mean + d * d).sqrt();
        let bar_length = (total - lying) * turn + lying * flat;
        let mass = need.metal.density.value * PI * d * d / 4.0 * bar_length;
        let growth = if pitch > d { held.max(free_to_turn) } else { 0.0 };
        Self { d, mean, n, free, rate, solid, least_solid, growth, pitch, mass }
    }

    fn stress(&self, allowed: Allowed, load: f64) -> f64 {
        let c = self.mean / self.d;
        let factor = match allowed.of(Length::new::<meter>(self.d)) {
            Ok((_, Factor::DirectShear)) => 1.0 + 0.5 / c,
            Ok((_, Factor::Bergstrasser)) => (c + 0.5) / (c - 0.75),
            Ok((_, Factor::Wahl)) => (4.0 * c - 1.0) / (4.0 * c - 4.0) + 0.615 / c,
            _ => 1.0,
        };
        factor * 8.0 * load * self.mean / (PI * self.d * self.d * self.d)
    }

    /// Each limit with its margin. `drawn` adds what only a drawing can fail.
    fn margins(&self, need: &Need, drawn: bool) -> Vec<(Limit, f64)> {
        let Need { work, room, reserve, make, metal } = need;
        let c = self.mean / self.d;
        let height = work.height.map(|height| height.value);
        let second = match work.stiffness {
            Stiffness::SecondLoad { height, .. } => Some(height.value),
            Stiffness::Rate { .. } => None,
        };
        let lowest = match (height, second) {
            (Some(first), Some(second)) => first.min(second),
            (Some(first), None) => first,
            (None, _) => self.free - work.load.value / self.rate,
        };
        let mut all = vec![
            (Limit::LowIndex, c / make.least_index - 1.0),
            (Limit::HighIndex, 1.0 - c / make.most_index),
        ];
        let angle = (self.pitch / (PI * self.mean)).atan();
        all.push((Limit::SteepPitch, 1.0 - angle / make.most_pitch_angle.value));
        let (outside, inside) = (self.mean + self.d + self.growth, self.mean - self.d);
        if let Some(pocket) = room.pocket {
            let needed = outside + 2.0 * room.clearance.value;
            all.push((Limit::Pocket, 1.0 - needed / pocket.value));
        }
        if let Some(post) = room.post {
            let least = post.value + 2.0 * room.clearance.value;
            all.push((Limit::Post, inside / least - 1.0));
        }
        if let Some(outer) = room.outer {
            let gap = (outer.mean().value - outer.bar().value - outside) / 2.0;
            let spare = spare(room, gap, self.growth, outer.bar().value - self.d);
            all.push((Limit::OuterCoil, spare / self.mean));
        }
        if let Some(inner) = room.inner {
            let (bar, growth) = (inner.coil.bar().value, inner.growth.value);
            let gap = (inside - inner.coil.mean().value - bar - growth) / 2.0;
            let spare = spare(room, gap, growth, self.d - bar);
            all.push((Limit::InnerCoil, spare / self.mean));
        }
        let bar = Length::new::<meter>(self.d);
        let load = self.rate * (self.free - lowest);
        let at_solid = self.rate * (self.free - self.least_solid);
        for (limit, allowed, load) in [
            (Limit::StressAtLoad, Some(metal.at_load), load),
            (Limit::StressAtSolid, metal.at_solid, at_solid),
        ] {
            let Some(allowed) = allowed else { continue };
            all.push(match allowed.of(bar) {
                Ok((most, _)) => (limit, 1.0 - self.stress(allowed, load) / most.value),
                Err(_) => (Limit::Strength, -1.0),
            });
        }
        if let Some(most) = room.solid {
            all.push((Limit::SolidHeight, 1.0 - self.solid / most.value));
        }
        if drawn || height.is_some() {
            let way = lowest - self.solid;
            let least = reserve.length.value.max(reserve.share * (self.free - lowest));
            all.push((Limit::Reserve, (way - least) / lowest));
            let thick = self.d > 0.02 || make.ends == Ends::TaperedGround;
            let usual = if thick { Coiling::Hot } else { Coiling::Cold };
            let gaps = match (make.coiling.unwrap_or(usual), reserve.duty) {
                (_, None) => None,
                (Coiling::Cold, Some(duty)) => {
                    let one = 0.0015 * self.mean * self.mean / self.d + 0.1 * self.d;
                    Some(self.n * one * if duty == Duty::Dynamic { 1.5 } else { 1.0 })
                }
                (Coiling::Hot, Some(duty)) => {
                    let one = 0.02 * (self.mean + self.d);
                    Some(self.n * one * if duty == Duty::Dynamic { 2.0 } else { 1.0 })
                }
            };
            all.extend(gaps.map(|least| (Limit::Gaps, (way - least) / lowest)));
        }
        if let Some(most) = room.free {
            all.push((Limit::FreeHeight, 1.0 - self.free / most.value));
        }
        // Shigley's form, eq. 10-10, of what EN 13906-1 writes otherwise.
        let (g, e) = (1.0, 2.0 * (1.0 + metal.poisson));
        let slender = make.seating.coefficient() * self.free / self.mean;
        let under = 1.0 - 2.0 * PI * PI * (e - g) / (2.0 * g + e) / (slender * slender);
        if under >= 0.0 {
            let buckles = self.free * e / (2.0 * (e - g)) * (1.0 - under.sqrt());
            all.push((Limit::Buckles, 1.0 - (self.free - self.solid) / buckles));
        }
        if drawn {
            let off = |found: f64, needed: f64| (found / needed - 1.0).abs();
            if let Some(height) = height {
                let load = self.rate * (self.free - height);
                all.push((Limit::Load, work.within - off(load, work.load.value)));
            }
            all.push(match work.stiffness {
                Stiffness::Rate { rate, within } => {
                    (Limit::Rate, within - off(self.rate, rate.value))
                }
                Stiffness::SecondLoad { load, height, within } => {
                    let found = self.rate * (self.free - height.value);
                    (Limit::SecondLoad, within - off(found, load.value))
                }
            });
        }
        all
    }
}

/// Whether a verdict is the one that these margins amount to.
fn same(verdict: &LimitCheck, margins: &[(Limit, f64)]) -> Result<(), String> {
    for limit in Limit::ALL {
        let here = margins.iter().filter(|(named, _)| *named == limit).map(|(_, margin)| *margin);
        let least = here.fold(f64::INFINITY, f64::min);
        if least.abs() > 1e-8 && verdict.failing.contains(limit) != (least < 0.0) {
            return Err(format!("{limit:?} by hand {least}, {verdict:?}"));
        }
    }
    let worst = margins.iter().map(|(_, margin)| *margin).fold(f64::INFINITY, f64::min);
    if (worst - verdict.margin).abs() > 1e-8 * (1.0 + worst.abs()) {
        return Err(format!("worst by hand {worst}, {verdict:?}"));
    }
    Ok(())
}

/// A drawing of exact sizes, of ends that only the need names.
fn drawn(coil: Diameters, turns: Turns, free: Length) -> Drawing {
    Drawing {
        bar: Some(Given::exact(coil.bar())),
        diameter: Some((DiameterKind::Mean, Given::exact(coil.mean()))),
        total_turns: Some(Given::exact(turns.total())),
        dead_turns: Some(Given::exact(turns.dead())),
        free: Some(Given::exact(free)),
        ..Drawing::default()
    }
}

/// A spring that was thought of first, a need that it meets or nearly meets, and sizes to search.
struct Case {
    need: Need,
    thought_of: Drawing,
    /// Whether nothing was asked for that it fails.
    meets: bool,
    bars: Vec<Length>,
    turns: Vec<f64>,
}

fn any_case(random: &mut Random) -> Case {
    let hot = random.chance(0.5);
    let size = if hot { random.between(10.0, 60.0) } else { random.between(1.0, 12.0) };
    let bar = mm(size);
    let ends = if hot { Ends::TaperedGround } else { random.of(&Ends::ALL) };
    let coiling = if hot { Coiling::Hot } else { Coiling::Cold };
    let coil = Diameters::from_mean(bar, bar * random.between(4.2, 11.0)).unwrap();
    let active = 0.25 * random.between(12.0, 56.0).floor();
    let factors = [Factor::Uncorrected, Factor::DirectShear, Factor::Bergstrasser, Factor::Wahl];
    let mut make = Make { coiling: Some(coiling), ..Make::usual(ends) };
    make.seating = random.of(&[Seating::Guided, Seating::Guided, Seating::OnePivoted]);
    let shear = random.between(76.0, 82.0);
    let (at_load, at_solid) = (random.of(&factors), random.of(&factors));
    let turns = Turns::new(active + make.dead_turns, make.dead_turns).unwrap();

    // Nothing asked of it yet: what it is.
    let mut need = Need {
        work: Work::at_any_height(newtons(1.0), rate(1.0)),
        room: Room::default(),
        reserve: Reserve::default(),
        make,
        metal: steel(shear, stress(1.0, at_load), Some(stress(1.0, at_solid))),
    };
    let solid = ByHand::sized(&need, coil, turns, mm(0.0)).solid;
    let most = (0.125 * PI * coil.index()).min(2.4);
    let open = random.between(1.15, most.max(1.2)) - 1.0;
    let metres = Length::new::<meter>;
    let spaces = if ends == Ends::OpenGround { turns.total() } else { active };
    let free = metres(solid + open * bar.value * spaces);
    let thought_of = drawn(coil, turns, free);
    let hand = ByHand::sized(&need, coil, turns, free);

    let lowest = metres(solid + random.between(0.2, 0.7) * (free.value - solid));
    let load = newtons(hand.rate * (free - lowest).value);
    let own_rate = SpringRate::new::<newton_per_meter>(hand.rate);
    need.work = match random.next() % 3 {
        0 => Work::at_height(load, lowest, own_rate),
        1 => Work::at_any_height(load, own_rate),
        _ => {
            let higher = lowest + random.between(0.2, 0.8) * (free - lowest);
            let less = newtons(hand.rate * (free - higher).value);
            if random.chance(0.5) {
                Work::two_loads(less, higher, load, lowest)
            } else {
                Work::two_loads(load, lowest, less, higher)
            }
        }
    };
    need.reserve.share = random.of(&[0.0, 0.15]);
    need.reserve.length = random.of(&[0.0, 0.1]) * (lowest - metres(solid));
    need.reserve.duty = random.of(&[None, Some(Duty::Static), Some(Duty::Dynamic)]);

    // Then limits about what it is: most leave it something in hand, some do not.
    let slack = |random: &mut Random| 1.0 + random.between(-0.04, 0.3);
    let given = |random: &mut Random, bound: f64| random.chance(0.5).then(|| metres(bound));
    let (outside, inside) = (coil.outside().value + hand.growth, coil.inside().value);
    need.room.clearance = random.of(&[0.0, 0.01]) * bar;
    need.room.gap = random.of(&[None, Some(0.0), Some(0.02)]).map(|share| share * bar);
    let across = slack(random);
    need.room.pocket = given(random, outside * across + 2.0 * need.room.clearance.value);
    let across = slack(random);
    need.room.post = given(random, inside / across - 2.0 * need.room.clearance.value);
    if random.chance(0.2) {
        let around = metres(outside * slack(random)) + 2.0 * need.room.gap.unwrap_or(0.3 * bar);
        need.room.outer = Diameters::from_inside(bar, around).ok();
    }
    if random.chance(0.2) {
        let within = metres(inside / slack(random)) - 2.0 * need.room.gap.unwrap_or_default();
        let coil = Diameters::from_outside(0.15 * within, 0.97 * within).unwrap();
        need.room.inner = Some(InnerCoil { coil, growth: 0.03 * within });
    }
    let tall = slack(random);
    need.room.solid = given(random, solid * tall).filter(|solid| *solid < lowest);
    let tall = slack(random);
    need.room.free = given(random, free.value * tall);
    let at_lowest = hand.stress(need.metal.at_load, need.work.greatest().value);
    need.metal.at_load = stress(at_lowest / 1e6 * slack(random), at_load);
    let at_solid_stress =
        hand.stress(stress(1.0, at_solid), hand.rate * (free.value - hand.least_solid));
    need.metal.at_solid =
        random.chance(0.7).then(|| stress(at_solid_stress / 1e6 * slack(random), at_solid));

    let margins = hand.margins(&need, true);
    let meets = margins.iter().all(|(_, margin)| *margin > 1e-7);
    let bars = vec![0.93 * bar, bar, 1.07 * bar];
    let turns = [-0.5, 0.0, 0.25, 1.0].map(|more| active + more);
    Case { need, thought_of, meets, bars, turns: turns.to_vec() }
}

/// Each need is met by what is offered, worked out a second way; a need that a coil meets is no
/// contradiction.
#[test]
fn what_is_offered_meets_all_that_was_asked() {
    const NEEDS: u32 = 100_000;
    let check = |seed: u64, count: u32| {
        let mut random = Random(seed);
        let (mut solved, mut offered, mut contradictions) = (0_u32, 0_u32, 0_u32);
        for number in 0..count {
            let case = any_case(&mut random);
            let rounding = match number % 3 {
                0 => Rounding::EXACT,
                1 => Rounding::METRIC,
                _ => Rounding::INCH,
            };
            let sizing = match Sizing::new(case.need, &case.bars, &case.turns) {
                Ok(sizing) => sizing,
                Err(error) => {
                    assert!(!case.meets, "{error}: {:?}", case.need);
                    contradictions += 1;
                    continue;
                }
            };
            if case.meets {
                let (_, verdict) = sizing.judge(&case.thought_of).unwrap();
                assert!(verdict.fits(), "{verdict:?}: {:?}", case.need);
            }
            let rank = if number % 2 == 0 { Rank::Mass } else { Rank::Stress };
            let sized = sizing.designs(&rounding, rank);
            assert_eq!(sized.designs.len() + sized.refused.len(), case.bars.len());
            solved += u32::from(!sized.designs.is_empty());
            for found in &sized.designs {
                offered += 1;
                agrees_with_its_drawing(&case.need, &found.design);
                let hand = ByHand::of(&case.need, &found.design);
                for (limit, margin) in hand.margins(&case.need, true) {
                    assert!(margin > -2e-9, "{limit:?} {margin}: {:?}", case.need);
                }
            }
            for why in &sized.refused {
                assert!(!why.verdict.fits());
            }
        }
        (solved, offered, contradictions)
    };
    let halves = std::thread::scope(|scope| {
        let halves = [1_u64, 2].map(|seed| scope.spawn(move || check(seed, NEEDS / 2)));
        halves.map(|half| half.join().unwrap())
    });
    let [solved, offered, contradictions] =
        [halves[0].0 + halves[1].0, halves[0].1 + halves[1].1, halves[0].2 + halves[1].2];
    println!(
        "{NEEDS} needs: {solved} solved by {offered} drawings, {contradictions} contradictions"
    );
    assert!(3 * solved >= NEEDS, "{solved} of {NEEDS} needs had a solution");
    assert!(contradictions > 0);
}

/// What a search says of a coil, and what its drawing answers.
#[track_caller]
fn agrees_with_its_drawing(need: &Need, design: &Design) {
    let drawing = design.drawing(need);
    let against = |allowed: Allowed| match allowed.of(design.coil.bar()).unwrap().1 {
        Factor::Uncorrected => Against::Plain,
        Factor::DirectShear => Against::DirectShear,
        Factor::Bergstrasser => Against::Curvature,
        Factor::Wahl => Against::Wahl,
    };
    let at_load = drawing.stress_at(design.lowest, against(need.metal.at_load)).unwrap();
    let same =
        |found: f64, drawn: f64| assert!(near(found, drawn, 1e-12), "{found} {drawn} {design:?}");
    same(design.stress_at_load.value, at_load.nominal().value);
    same(design.rate.value, drawing.rate().unwrap().nominal().value);
    same(design.solid.value, drawing.solid().unwrap().nominal().value);
    same(design.greatest_load.value, drawing.load(design.lowest).unwrap().nominal().value);
    let grown = design.coil.outside() + design.growth;
    same(grown.value, drawing.outside_at_solid().unwrap().nominal().value);
    if let Some(allowed) = need.metal.at_solid {
        let at_solid = drawing.stress_at_solid(against(allowed)).unwrap();
        same(design.stress_at_solid.value, at_solid.nominal().value);
    }
    assert_eq!(drawing.coiling, Some(need.make.coiling(design.coil.bar())));
    assert!(drawing.rate().unwrap().is_complete());
}

#[test]
fn the_map_is_what_each_cell_is_by_itself() {
    let mut random = Random(3);
    let (mut cells, mut fitting) = (0, 0);
    for _ in 0..400 {
        let case = any_case(&mut random);
        let bars = [0.5, 0.8, 0.93, 1.0, 1.07, 1.3].map(|times| times * case.bars[1]);
        let turns = steps(2.0, 16.0, 0.75);
        let Ok(sizing) = Sizing::new(case.need, &bars, &turns) else { continue };
        let map = sizing.map();
        assert_eq!(map.cells().len(), bars.len() * turns.len());
        for (bar, row) in bars.iter().zip(map.bars()) {
            for (active, cell) in turns.iter().zip(row) {
                let need = &case.need;
                let (d, k, g) = (bar.value, need.work.rate().value, need.metal.shear_modulus.value);
                let mean = (g * d * d * d * d / (8.0 * k * active)).cbrt();
                let Some(spring) = cell.design else {
                    assert!(mean <= d && cell.verdict.failing.contains(Limit::LowIndex));
                    continue;
                };
                assert!(near(spring.coil.mean().value, mean, 1e-12));
                let hand = ByHand::of(need, &spring);
                assert!(near(hand.rate, k, 1e-12));
                assert!(near(spring.solid.value, hand.solid, 1e-12));
                assert!(near(spring.mass.value, hand.mass, 1e-12));
                assert_abs_diff_eq!(
                    spring.growth.value,
                    hand.growth,
                    epsilon = 1e-12 * mean.max(1.0)
                );
                if let Some(height) = need.work.height {
                    let load = hand.rate * (hand.free - height.value);
                    assert!(near(load, need.work.load.value, 1e-9));
                } else {
                    // As low as the reserve lets it.
                    let margins = hand.margins(need, true);
                    let least = margins
                        .iter()
                        .filter(|(limit, _)| matches!(limit, Limit::Reserve | Limit::Gaps))
                        .map(|(_, margin)| margin.abs());
                    assert!(least.fold(f64::INFINITY, f64::min) < 1e-9);
                }
                let margins = hand.margins(need, false);
                same(&cell.verdict, &margins).unwrap();
                cells += 1;
                fitting += usize::from(cell.verdict.fits());
            }
        }
    }
    assert!(cells > 10_000 && fitting > 1000, "{fitting} of {cells} cells fit");
}

/// Each limit by itself, tightened: no cell that failed fits, and some that fitted fail.
#[test]
fn a_tighter_limit_never_helps() {
    let tighten: [fn(&mut Need, f64); 13] = [
        |need, by| need.room.pocket = need.room.pocket.map(|it| it / by),
        |need, by| need.room.post = need.room.post.map(|it| it * by),
        |need, by| need.room.clearance *= by,
        |need, by| {
            need.room.gap = need.room.gap.map(|gap| gap * (1.0 + 30.0 * (by - 1.0)));
        },
        |need, by| need.room.solid = need.room.solid.map(|it| it / by),
        |need, by| need.room.free = need.room.free.map(|it| it / by),
        |need, by| need.reserve.length *= 1.0 + 30.0 * (by - 1.0),
        |need, by| need.reserve.share *= by,
        |need, by| need.make.least_index *= by,
        |need, by| need.make.most_index /= by,
        |need, by| need.make.most_pitch_angle /= by,
        |need, by| {
            if let Allowed::Stress { stress, .. } = &mut need.metal.at_load {
                *stress /= by;
            }
        },
        |need, by| {
            if let Some(Allowed::Stress { stress, .. }) = &mut need.metal.at_solid {
                *stress /= by;
            }
        },
    ];
    let mut random = Random(4);
    let mut lost = [0_usize; 13];
    for _ in 0..1500 {
        let case = any_case(&mut random);
        let Ok(loose) = Sizing::new(case.need, &case.bars, &case.turns) else { continue };
        let before = loose.map();
        for (tighten, lost) in tighten.iter().zip(&mut lost) {
            let mut need = case.need;
            tighten(&mut need, random.between(1.0, 1.2));
            // A contradiction refuses every cell.
            let Ok(tight) = Sizing::new(need, &case.bars, &case.turns) else { continue };
            for (before, after) in before.cells().iter().zip(tight.map().cells()) {
                assert!(before.verdict.fits() || !after.verdict.fits(), "{before:?} {after:?}");
                *lost += usize::from(before.verdict.fits() && !after.verdict.fits());
            }
        }
    }
    assert!(lost.iter().all(|lost| *lost > 0), "{lost:?}");
}

#[test]
fn designs_are_ranked_and_a_refused_bar_says_why() {
    let need = Need {
        work: Work::at_height(newtons(3000.0), mm(150.0), rate(60.0)),
        room: Room { pocket: Some(mm(110.0)), clearance: mm(2.0), ..Room::default() },
        reserve: Reserve::default(),
        make: Make::usual(Ends::ClosedGround),
        metal: steel(
            81.5,
            stress(600.0, Factor::Bergstrasser),
            Some(stress(760.0, Factor::Uncorrected)),
        ),
    };
    let bars = [6.0, 9.0, 10.0, 11.0, 12.0, 13.0, 20.0].map(mm);
    let sizing = Sizing::new(need, &bars, &steps(3.0, 12.0, 0.25)).unwrap();
    let by_mass = sizing.designs(&Rounding::METRIC, Rank::Mass);
    let masses: Vec<f64> = by_mass.designs.iter().map(|it| it.design.mass.value).collect();
    assert!(masses.len() >= 3 && masses.is_sorted(), "{masses:?}");
    let by_stress = sizing.designs(&Rounding::METRIC, Rank::Stress);
    let stresses = by_stress.designs.iter().map(|it| it.design.stress_at_load.value);
    assert!(stresses.is_sorted());
    assert!(by_stress.designs[0].design.stress_at_load < by_mass.designs[0].design.stress_at_load);
    let of = |size: f64| by_mass.refused.iter().find(|why| why.bar == mm(size)).unwrap();
    // 6 mm bears 3000 N at an index of 4 with 8·1.385·3000·4/(π·36) = 1175 MPa at the least.
    assert!(of(6.0).always.contains(Limit::StressAtLoad));
    // 20 mm, twelve turns: D = ∛(81.5e3·20⁴/(8·60·12)) = 131 mm.
    assert!(of(20.0).always.contains(Limit::Pocket));
    for design in &by_mass.designs {
        let mean = design.design.coil.mean().get::<millimeter>() * 10.0;
        let free = design.design.free.get::<millimeter>() * 2.0;
        assert!((mean - mean.round()).abs() < 1e-6 && (free - free.round()).abs() < 1e-6);
    }
}

#[test]
fn a_pair_that_is_offered_meets_all_that_was_asked() {
    let mut random = Random(5);
    let (mut solved, mut offered) = (0, 0);
    for number in 0..400 {
        let hot = random.chance(0.5);
        let ends = if hot { Ends::TaperedGround } else { Ends::ClosedGround };
        let coiling = if hot { Coiling::Hot } else { Coiling::Cold };
        let height = random.between(120.0, 260.0);
        let load = random.between(5.0, 40.0) * 1e3;
        let deflection = random.between(0.15, 0.5) * height;
        let second = random.chance(0.3);
        let mut work = Work::at_height(newtons(load), mm(height), rate(load / deflection));
        if random.chance(0.3) {
            work.height = None;
        } else if second {
            let higher = height + 0.5 * deflection;
            work = Work::two_loads(newtons(load), mm(height), newtons(load / 2.0), mm(higher));
        }
        let at_load =
            stress(random.between(500.0, 800.0), random.of(&[Factor::Uncorrected, Factor::Wahl]));
        let need = Need {
            work,
            room: Room {
                pocket: Some(mm(random.between(140.0, 260.0))),
                post: random.chance(0.5).then(|| mm(random.between(20.0, 50.0))),
                clearance: mm(2.0),
                gap: random.chance(0.5).then(|| mm(random.between(1.0, 4.0))),
                ..Room::default()
            },
            reserve: Reserve::default(),
            make: Make { coiling: Some(coiling), ..Make::usual(ends) },
            metal: steel(78.5, at_load, Some(stress(950.0, Factor::Uncorrected))),
        };
        let bars = [10.0, 12.0, 14.0, 16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 32.0, 36.0].map(mm);
        let balance = Balance::default();
        let turns = steps(3.0, 14.0, 0.25);
        let Ok(sizing) = PairSizing::new(need, &bars, &turns, balance) else { continue };
        let rounding = if number % 2 == 0 { Rounding::METRIC } else { Rounding::EXACT };
        let sized = sizing.designs(&rounding, Rank::Mass);
        assert_eq!(sized.pairs.len() + sized.refused.len(), 55);
        assert!(sized.pairs.iter().map(|pair| pair.mass().value).is_sorted());
        solved += u32::from(!sized.pairs.is_empty());
        for pair in &sized.pairs {
            offered += 1;
            let hand = |design: &Design| ByHand::of(&need, design);
            let (outer, inner) = (hand(&pair.outer), hand(&pair.inner));
            assert!(near(outer.free, inner.free, 1e-12) && outer.d > inner.d);
            // Both together: one coil of both rates.
            let both = ByHand { rate: outer.rate + inner.rate, ..outer };
            let shared =
                |limit: &Limit| matches!(limit, Limit::Load | Limit::Rate | Limit::SecondLoad);
            let together = both.margins(&need, true);
            assert!(together.iter().all(|(limit, margin)| !shared(limit) || *margin > -2e-9));
            // Each in the room that the other leaves, at the height of both.
            let lowest = need.work.lowest().map_or_else(
                || outer.free - need.work.load.value / both.rate,
                |height| height.value,
            );
            let at_lowest = Length::new::<meter>(lowest);
            for (coil, room) in [
                (
                    outer,
                    Room {
                        post: None,
                        inner: Some(InnerCoil {
                            coil: pair.inner.coil,
                            growth: Length::new::<meter>(inner.growth),
                        }),
                        ..need.room
                    },
                ),
                (inner, Room { pocket: None, ..need.room }),
            ] {
                let alone =
                    Need { room, work: Work { height: Some(at_lowest), ..need.work }, ..need };
                let alone = if need.work.height.is_some() { Need { room, ..need } } else { alone };
                for (limit, margin) in coil.margins(&alone, true) {
                    assert!(shared(&limit) || margin > -2e-9, "{limit:?} {margin}");
                }
            }
            let apart = |a: f64, b: f64| (a - b).abs() / a.max(b);
            let under = |coil: &ByHand| coil.stress(at_load, coil.rate * (coil.free - lowest));
            assert!(apart(outer.solid, inner.solid) < balance.solid + 2e-9);
            assert!(apart(under(&outer), under(&inner)) < balance.stress + 2e-9);
        }
    }
    println!("{solved} of 400 needs solved by {offered} pairs");
    assert!(solved >= 133, "{solved}");
}

/// Nobody gave a clearance: every pair leaves half the difference of its bars between them, free, and
/// some would leave less if they might.
#[test]
fn a_pair_keeps_the_usual_radial_room() {
    let need = |gap| Need {
        work: Work::at_height(newtons(30_000.0), mm(220.0), rate(500.0)),
        room: Room { pocket: Some(mm(220.0)), gap, ..Room::default() },
        reserve: Reserve::default(),
        make: Make::usual(Ends::TaperedGround),
        metal: steel(78.5, stress(620.0, Factor::Uncorrected), None),
    };
    let bars = [14.0, 16.0, 18.0, 20.0, 22.0, 25.0, 28.0, 32.0, 36.0].map(mm);
    let found = |gap| {
        let turns = steps(3.0, 12.0, 0.25);
        let sizing = PairSizing::new(need(gap), &bars, &turns, Balance::default()).unwrap();
        sizing.designs(&Rounding::METRIC, Rank::Mass).pairs
    };
    let spare = |pair: &Pair| {
        let (outer, inner) = (pair.outer.coil, pair.inner.coil);
        let gap = (outer.inside() - inner.outside()) / 2.0;
        (gap - (outer.bar() - inner.bar()) / 2.0).value
    };
    let (usual, touching) = (found(None), found(Some(mm(0.0))));
    assert!(!usual.is_empty() && usual.iter().all(|pair| spare(pair) >= -1e-9));
    assert!(touching.iter().any(|pair| spare(pair) < -1e-3), "the room asks for nothing");
}

/// A need that nothing is wrong with.
fn sound() -> Need {
    Need {
        work: Work::at_height(newtons(3000.0), mm(150.0), rate(60.0)),
        room: Room {
            pocket: Some(mm(120.0)),
            post: Some(mm(30.0)),
            clearance: mm(2.0),
            ..Room::default()
        },
        reserve: Reserve::default(),
        make: Make::usual(Ends::ClosedGround),
        metal: steel(81.5, stress(650.0, Factor::Bergstrasser), None),
    }
}

fn refused(change: impl Fn(&mut Need)) -> String {
    let mut need = sound();
    change(&mut need);
    let bars = [8.0, 10.0, 12.0].map(mm);
    let error = Sizing::new(need, &bars, &steps(3.0, 12.0, 0.25)).unwrap_err();
    // Without the spaces that part thousands.
    error.to_string().replace('\u{202f}', "")
}

#[test]
fn needs_that_contradict_themselves_name_both_sides() {
    assert!(Sizing::new(sound(), &[mm(10.0)], &[6.0]).is_ok());
    let two = |first: (f64, f64), second: (f64, f64)| {
        let (load, height) = (newtons(first.0), mm(first.1));
        Work::two_loads(load, height, newtons(second.0), mm(second.1))
    };
    assert_eq!(
        refused(|need| need.work = two((1000.0, 150.0), (2000.0, 160.0))),
        "1000 N at a height of 150 mm and 2000 N at 160 mm; the greater load at the lower height was \
         expected: see whether the heights were exchanged"
    );
    assert_eq!(
        refused(|need| need.work = two((1000.0, 150.0), (2000.0, 150.0))),
        "both loads are at a height of 150 mm; a second height was expected: give the second load where \
         the coil stands lower or higher"
    );
    for (sentence, parts) in [
        (
            refused(|need| need.room.post = Some(mm(118.0))),
            ["the post takes 122 mm and the pocket leaves 116 mm", "exchanged"],
        ),
        (
            refused(|need| need.room.pocket = Some(mm(42.0))),
            ["the pocket leaves 38 mm", "of a bar of 8 mm, is 50 mm across"],
        ),
        (
            refused(|need| need.room.solid = Some(mm(155.0))),
            ["a greatest solid height of 155 mm", "lowest height at work of 150 mm"],
        ),
        (
            // 150 + 50·0.95/1.05 = 195.2 mm.
            refused(|need| need.room.free = Some(mm(190.0))),
            ["a greatest free height of 190 mm", "195.24 mm at the least"],
        ),
        (
            refused(|need| need.reserve.length = mm(150.0)),
            ["a height at work of 150 mm", "150 mm must be left to solid"],
        ),
        (
            // π·144·650/(8·1.3846·4) = 6637 N of a bar of 12 mm at an index of 4.
            refused(|need| need.work.load = newtons(9000.0)),
            ["a load of 8550 N", "bear 6637 N at the most, wound of 12 mm"],
        ),
        (
            refused(|need| {
                need.room.outer = Diameters::from_inside(mm(20.0), mm(60.0)).ok();
                let coil = Diameters::from_outside(mm(8.0), mm(62.0)).unwrap();
                need.room.inner = Some(InnerCoil { coil, growth: mm(1.0) });
            }),
            ["the inner coil takes 63 mm", "the outer coil leaves 60 mm"],
        ),
    ] {
        for part in parts {
            assert!(sentence.contains(part), "{sentence}");
        }
        assert!(sentence.contains(" was expected: "), "{sentence}");
    }
}

#[test]
fn a_number_that_is_none_is_refused_with_what_was_expected() {
    type Change = fn(&mut Need);
    let cases: [(Change, &str); 22] = [
        (|need| need.work.load = newtons(-5.0), "the load of −5 N; one above zero"),
        (|need| need.work.within = 1.5, "the tolerance of the load: 1.5; a share from 0 to 1"),
        (|need| need.work.height = Some(mm(0.0)), "the height at the load: 0 mm; a length above"),
        (
            |need| need.work = Work::at_any_height(newtons(5.0), rate(-1.0)),
            "a rate of −1 N/mm; one above zero",
        ),
        (
            |need| need.work = Work::at_any_height(newtons(5.0), rate(0.0)),
            "a rate of 0 N/mm; one above zero",
        ),
        (
            |need| {
                need.work = Work::two_loads(newtons(5.0), mm(60.0), newtons(-5.0), mm(50.0));
            },
            "the second load of −5 N",
        ),
        (
            |need| {
                need.work = Work::two_loads(newtons(5.0), mm(60.0), newtons(9.0), mm(50.0));
                need.work.height = None;
            },
            "a second load at a height of 50 mm, but no height of the first",
        ),
        (|need| need.room.pocket = Some(mm(f64::NAN)), "the pocket: "),
        (|need| need.room.post = Some(mm(-1.0)), "the post: −1 mm"),
        (|need| need.room.clearance = mm(-1.0), "the clearance: −1 mm; a length of zero or more"),
        (|need| need.room.gap = Some(mm(f64::INFINITY)), "the gap to a neighbour: "),
        (|need| need.reserve.length = mm(-1.0), "the reserve to solid: −1 mm"),
        (|need| need.reserve.share = -0.1, "the reserve as a share of the deflection: −0.1"),
        (|need| need.make.dead_turns = -1.0, "−1 dead turns; a count from 0 up"),
        (|need| need.make.least_index = 1.0, "an index from 1 to 12; a range that rises from 2"),
        (|need| need.make.most_index = 3.0, "an index from 4 to 3"),
        (
            |need| need.make.most_pitch_angle = Angle::new::<degree>(90.0),
            "a greatest pitch angle of",
        ),
        (|need| need.metal.shear_modulus = mpa(0.0), "a shear modulus of 0"),
        (|need| need.metal.poisson = 0.6, "Poisson's ratio of 0.6"),
        (|need| need.metal.density *= -1.0, "a density of −7850"),
        (
            |need| need.metal.at_load = stress(0.0, Factor::Uncorrected),
            "the stress allowed at load: 0",
        ),
        (
            |need| need.metal.at_solid = Some(stress(-1.0, Factor::Uncorrected)),
            "the stress allowed at solid: −1",
        ),
    ];
    for (change, part) in cases {
        let sentence = refused(change);
        assert!(sentence.starts_with(part) || sentence.contains(part), "{part}: {sentence}");
        assert!(sentence.contains(" expected: "), "{sentence}");
    }
    let choice = |bars: &[f64], turns: &[f64]| {
        let bars: Vec<Length> = bars.iter().map(|bar| mm(*bar)).collect();
        Sizing::new(sound(), &bars, turns).unwrap_err()
    };
    assert_eq!(
        choice(&[], &[5.0]).to_string(),
        "no bars to choose from; at least one was expected: give a list of sizes, or take the steel's row for their size"
    );
    assert!(choice(&[10.0], &[]).to_string().starts_with("no counts of turns to choose from"));
    assert!(choice(&[10.0, -1.0], &[5.0]).to_string().starts_with("a bar to choose from: −1 mm"));
    assert_eq!(
        choice(&[10.0], &[5.0, 0.25]).to_string(),
        "0.25 active turns to choose from; a count of 0.5 or more was expected: give turns that deflect"
    );
    assert!(matches!(choice(&[10.0; 1001], &[5.0; 1001]), NeedError::TooMany { .. }));
    let unheld = Strength::look_up("x", "hot-wound bar", "the maker's certificate");
    let mut need = sound();
    need.metal.at_load =
        Allowed::Share { strength: unheld, share: 0.5, factor: Factor::Uncorrected };
    let error = Sizing::new(need, &[mm(10.0)], &[5.0]).unwrap_err();
    assert!(matches!(error, NeedError::NoStrength(_)), "{error}");
    assert!(matches!(Rounding::new(Some(mm(0.0)), None), Err(NeedError::NotPositive { .. })));
}

/// Shigley's Mechanical Engineering Design, 10th ed., example 10-2 (from memory): 20 lbf at 2 in of
/// deflection, music wire as wound, squared and ground ends, at solid 1.15 times the load with a
/// factor of safety of 1.2 and Bergsträsser's factor against 0.45 of the strength; 4 ≤ C ≤ 12,
/// 3 ≤ Na ≤ 15, solid up to 1 in, free up to 4 in, and stable by eq. 10-12 with both ends flat.
#[test]
fn shigley_example_10_2() {
    let inches = Length::new::<inch>;
    let kpsi = |x: f64| Pressure::new::<pound_force_per_square_inch>(1e3 * x);
    let source = Source::new("Shigley", "table 10-4", Known::Memory);
    let law = Law::Power { coefficient: kpsi(201.0), unit: inches(1.0), exponent: 0.145 };
    let spans = vec![Span::new(inches(0.004), inches(0.256), law).unwrap()].leak();
    let music = Strength::look_up("m", "music wire", "Shigley").with_spans(spans, source).unwrap();
    let factor = Factor::Bergstrasser;
    let allowed = Allowed::Share { strength: music, share: 0.45 / 1.2, factor };
    let mut make = Make::usual(Ends::ClosedGround);
    make.seating = Seating::Guided;
    let mut metal = steel(1.0, allowed, Some(allowed));
    let need = |shear_mpsi: f64, metal: &mut Metal| {
        metal.shear_modulus = Pressure::new::<pound_force_per_square_inch>(1e6 * shear_mpsi);
        // The book's 2.63 of eq. 10-13.
        metal.poisson = 0.3;
        Need {
            work: Work::at_any_height(
                Force::new::<pound_force>(20.0),
                SpringRate::new::<pound_force_per_inch>(10.0),
            ),
            room: Room { solid: Some(inches(1.0)), free: Some(inches(4.0)), ..Room::default() },
            reserve: Reserve { length: mm(0.0), share: 0.15, duty: None },
            make,
            metal: *metal,
        }
    };
    // d, D, C, Na, Ls, L0, (L0)cr, figure of merit, as printed, inches.
    let printed = [
        [0.063, 0.391, 6.205, 39.1, 2.587, 4.887, 2.06, -0.409],
        [0.067, 0.479, 7.153, 26.9, 1.936, 4.236, 2.52, -0.399],
        [0.071, 0.578, 8.143, 19.3, 1.513, 3.813, 3.04, -0.398],
        [0.075, 0.688, 9.178, 14.2, 1.219, 3.519, 3.62, -0.404],
        [0.080, 0.843, 10.53, 10.1, 0.964, 3.264, 4.43, -0.417],
        [0.085, 1.017, 11.96, 7.3, 0.790, 3.090, 5.35, -0.438],
        [0.090, 1.211, 13.46, 5.4, 0.668, 2.968, 6.37, -0.467],
        [0.095, 1.427, 15.02, 4.1, 0.581, 2.881, 7.51, -0.505],
    ];
    // The book solves for the index at which the stress at solid is just the allowed one.
    let chain = |d: f64, shear: f64| {
        let alpha = 0.45 / 1.2 * 201e3 / libm::pow(d, 0.145);
        let beta = 8.0 * 1.15 * 20.0 / (PI * d * d);
        let half = (2.0 * alpha - beta) / (4.0 * beta);
        let mean = d * (half + (half * half - 3.0 * alpha / (4.0 * beta)).sqrt());
        (mean, shear * 1e6 * d.powi(4) * 2.0 / (8.0 * mean.powi(3) * 20.0))
    };
    for row in printed {
        let [d, mean, index, turns, solid, free, critical, merit] = row;
        let shear = if d < 0.064 { 11.85 } else { 11.75 };
        let (book_mean, active) = chain(d, shear);
        let need = need(shear, &mut metal);
        let sizing = Sizing::new(need, &[inches(d)], &[active]).unwrap();
        let map = sizing.map();
        let cell = &map.cells()[0];
        let spring = cell.design.unwrap();
        let to = |digits: f64, found: f64, printed: f64| {
            assert!(
                abs_diff_eq!(found, printed, epsilon = 0.5001 * digits),
                "{d} in: {found}, {printed}"
            );
        };
        let coil = spring.coil;
        to(1e-9, coil.mean().get::<inch>(), book_mean);
        to(1e-3, coil.mean().get::<inch>(), mean);
        to(if index < 10.0 { 1e-3 } else { 1e-2 }, coil.index(), index);
        to(0.1, cell.active, turns);
        to(1e-3, spring.solid.get::<inch>(), solid);
        to(1e-3, spring.free.get::<inch>(), free);
        // The book rounds its 2.63 first; ours is 2.62 for a Poisson's ratio of 0.3.
        let stable = buckling::stable_free_height(coil, Seating::Guided, 0.3).get::<inch>();
        assert!(near(stable, critical, 0.006), "{stable} {critical}");
        let volume = PI * PI * d * d * (cell.active + 2.0) * coil.mean().get::<inch>() / 4.0;
        to(1e-3, -2.6 * volume, merit);
        // Those that the book keeps, 0.080 and 0.085 in, are those that fit; nothing else does.
        assert_eq!(cell.verdict.fits(), d > 0.079 && d < 0.086, "{d}: {:?}", cell.verdict);
    }
    // All sizes at once, in steps of a tenth, with the book's own turns among them.
    let bars: Vec<Length> = printed[1..].iter().map(|row| inches(row[0])).collect();
    let mut turns = steps(3.0, 15.0, 0.1);
    turns.extend(printed[1..].iter().map(|row| chain(row[0], 11.75).1));
    turns.retain(|turns| (3.0..=15.0).contains(turns));
    let sizing = Sizing::new(need(11.75, &mut metal), &bars, &turns).unwrap();
    let sized = sizing.designs(&Rounding::EXACT, Rank::Mass);
    let sizes: Vec<f64> =
        sized.designs.iter().map(|it| it.design.coil.bar().get::<inch>()).collect();
    // Thicker wire fits too with more turns than just suffice, and is heavier; thinner wire never does.
    assert!(near(sizes[0], 0.080, 1e-9) && sizes.iter().all(|size| *size > 0.079), "{sizes:?}");
    assert!(sizes.iter().any(|size| near(*size, 0.085, 1e-9)), "{sizes:?}");
    let (mean, active) = chain(0.080, 11.75);
    let book = drawn(
        Diameters::from_mean(inches(0.080), inches(mean)).unwrap(),
        Turns::new(active + 2.0, 2.0).unwrap(),
        inches((active + 2.0) * 0.080 + 2.3),
    );
    let (of_book, verdict) = sizing.judge(&book).unwrap();
    assert!(verdict.fits(), "{verdict:?}");
    let ours = sized.designs[0].design.mass;
    assert!(ours <= of_book.mass * (1.0 + 1e-9), "{ours:?} {:?}", of_book.mass);
}

/// A textbook's design of one spring: what was asked, and the drawing that it comes to.
struct Book {
    place: &'static str,
    /// N and N/mm.
    asked: (f64, f64),
    /// How far the rate of the book's rounded drawing is off.
    within: f64,
    /// Allowed stress at load, times Wahl's factor, N/mm².
    allowed: f64,
    shear_gpa: f64,
    /// Bar, mean diameter, active turns, all turns, free height.
    drawing: [f64; 5],
    /// What the book leaves between the spring under load and solid, mm.
    reserve: f64,
    /// Bars beside the book's own.
    bars: &'static [f64],
}

/// All from open textbook companions, which solve the books' examples again from the books' figures;
/// the printed pages were not seen. The books hold the stress at load, with Wahl's factor, against an
/// allowed one, ask nothing at solid and of gaps, and round bar and turns up, which makes the rate
/// fall off: the tolerance is what that takes.
#[test]
fn textbook_designs_are_feasible_and_none_is_lighter_than_ours() {
    for book in [
        // 1250 N over 30 mm, half of 1090 N/mm²; gaps of 1 mm.
        Book {
            place: "Bhandari, Design of Machine Elements, example 10.1",
            asked: (1250.0, 1250.0 / 30.0),
            within: 0.02,
            allowed: 545.0,
            shear_gpa: 81.37,
            drawing: [7.0, 42.0, 8.0, 10.0, 110.0],
            reserve: 9.0,
            bars: &[6.0, 6.5, 8.0, 9.0],
        },
        // 2.5 to 3.5 kN over 5 mm, half of 1050 N/mm²; gaps of 0.5 mm. Turns rounded up from 4.48 to 5.
        Book {
            place: "Bhandari, example 10.2",
            asked: (3500.0, 200.0),
            within: 0.11,
            allowed: 525.0,
            shear_gpa: 81.37,
            drawing: [11.0, 55.0, 5.0, 7.0, 100.0],
            reserve: 3.0,
            bars: &[9.0, 10.0, 12.0, 13.0],
        },
        // 150 to 300 N over 5 mm; a clearance of 15 % of the deflection. Turns rounded up from 6.28 to 7.
        // Heights of 35 and 30 mm are told, but nine turns of 4 mm are 36 mm solid: only their
        // difference can be meant. The allowed stress is not told in what was seen; that of the
        // book's wire and load, 359 N/mm², is taken.
        Book {
            place: "Bhandari, example 10.4",
            asked: (300.0, 30.0),
            within: 0.11,
            allowed: 359.0,
            shear_gpa: 81.37,
            drawing: [4.0, 24.0, 7.0, 9.0, 49.0],
            reserve: 0.15 * 11.149,
            bars: &[3.5, 4.5, 5.0],
        },
        // 2400 N on eight springs over 15 mm, 0.3 of 1390 N/mm²; gaps of 1 mm.
        Book {
            place: "Bhandari, example 10.7",
            asked: (300.0, 20.0),
            within: 0.01,
            allowed: 417.0,
            shear_gpa: 81.37,
            drawing: [5.0, 40.0, 5.0, 7.0, 57.0],
            reserve: 6.0,
            bars: &[4.0, 4.25, 4.5, 5.5],
        },
        // 250 to 300 N over 8 mm, 420 N/mm²; a clearance of 15 % of the deflection.
        Book {
            place: "Sadhu Singh, example 8.1",
            asked: (300.0, 6.25),
            within: 0.01,
            allowed: 420.0,
            shear_gpa: 84.0,
            drawing: [4.25, 34.0, 13.95, 15.95, 123.0],
            reserve: 7.19,
            bars: &[4.0, 4.15, 4.5, 5.0],
        },
    ] {
        let mut work = Work::at_any_height(newtons(book.asked.0), rate(book.asked.1));
        work.stiffness = Stiffness::Rate { rate: rate(book.asked.1), within: book.within };
        let need = Need {
            work,
            room: Room::default(),
            reserve: Reserve { length: mm(book.reserve), share: 0.0, duty: None },
            make: Make::usual(Ends::ClosedGround),
            metal: steel(book.shear_gpa, stress(book.allowed, Factor::Wahl), None),
        };
        let [bar, mean, active, total, free] = book.drawing.map(|it| it);
        let bars: Vec<Length> = book.bars.iter().chain([&bar]).map(|bar| mm(*bar)).collect();
        let mut turns = steps(3.0, 20.0, 0.25);
        turns.push(active);
        let sizing = Sizing::new(need, &bars, &turns).unwrap();
        let drawing = drawn(
            Diameters::from_mean(mm(bar), mm(mean)).unwrap(),
            Turns::new(total, total - active).unwrap(),
            mm(free),
        );
        let (of_book, verdict) = sizing.judge(&drawing).unwrap();
        assert!(verdict.fits(), "{}: {verdict:?} {of_book:?}", book.place);
        let map = sizing.map();
        let cell =
            map.cells().iter().find(|cell| cell.bar == mm(bar) && near(cell.active, active, 1e-12));
        assert!(cell.unwrap().verdict.fits(), "{}: {cell:?}", book.place);
        let sized = sizing.designs(&Rounding::METRIC, Rank::Mass);
        let ours = sized.designs[0].design;
        println!(
            "{}: {:.4} kg, ours {:.4} kg of {} mm",
            book.place,
            of_book.mass.value,
            ours.mass.value,
            ours.coil.bar().get::<millimeter>()
        );
        assert!(ours.mass <= of_book.mass, "{}: {ours:?} {of_book:?}", book.place);
    }
}

/// A bar, a mean diameter, active turns and a free height in mm, with two dead turns.
fn ground(bar: f64, mean: f64, active: f64, free: f64) -> Drawing {
    drawn(
        Diameters::from_mean(mm(bar), mm(mean)).unwrap(),
        Turns::new(active + 2.0, 2.0).unwrap(),
        mm(free),
    )
}

/// Bhandari, Design of Machine Elements, example 10.17 (quoted in the open textbook companion of the
/// chapter): 6000 N over 50 mm on two coils of index 6 with 800 N/mm² in each, Wahl's factor.
///
/// The book rounds to bars of 10 and 7 mm with 6 and 10 turns and does not go through the sum again.
/// That pair carries 5572 N over 50 mm, 7 % less than asked; its stresses differ by 14 %, its solid
/// heights, 80 and 84 mm, by 5 %, and 0.5 mm are left between the coils where 1.5 mm were meant. With
/// these tolerances it is feasible.
#[test]
fn bhandari_example_10_17() {
    let mut work = Work::at_height(newtons(6000.0), mm(92.0), rate(120.0));
    work.within = 0.08;
    work.stiffness = Stiffness::Rate { rate: rate(120.0), within: 0.08 };
    let need = Need {
        work,
        room: Room { gap: Some(mm(0.3)), ..Room::default() },
        reserve: Reserve { length: mm(0.0), share: 0.15, duty: None },
        make: Make::usual(Ends::ClosedGround),
        metal: steel(81.37, stress(800.0, Factor::Wahl), None),
    };
    let balance = Balance { solid: 0.05, stress: 0.15 };
    let bars = [5.0, 6.0, 6.645, 7.0, 8.0, 9.0, 9.968, 10.0, 11.0].map(mm);
    let sizing = PairSizing::new(need, &bars, &steps(3.0, 14.0, 0.25), balance).unwrap();
    let book =
        sizing.judge(&ground(10.0, 60.0, 6.0, 142.0), &ground(7.0, 42.0, 10.0, 142.0)).unwrap();
    assert!(book.verdict().fits(), "{:?}", book.verdict());
    assert!(near(book.rate().get::<newton_per_millimeter>(), 111.444, 1e-5));
    let sized = sizing.designs(&Rounding::METRIC, Rank::Mass);
    let ours = sized.pairs[0];
    println!("book {:.4} kg, ours {:.4} kg", book.mass().value, ours.mass().value);
    assert!(ours.mass() <= book.mass());
    // With the bars as they are before rounding the loads are those printed.
    let exact = [9.968, 6.645].map(mm);
    let sizing = PairSizing::new(need, &exact, &steps(4.0, 14.0, 0.25), balance).unwrap();
    let sized = sizing.designs(&Rounding::EXACT, Rank::Mass);
    let pair = sized.pairs[0];
    let load = |spring: &Design| spring.greatest_load.get::<newton>();
    // The bars are printed to a thousandth of a millimetre, their squares so to 0.03 %.
    assert!(near(load(&pair.outer), 4153.846, 3e-4), "{}", load(&pair.outer));
    assert!(near(load(&pair.inner), 1846.154, 3e-4), "{}", load(&pair.inner));
}

/// Khurmi & Gupta, A Textbook of Machine Design, 2005 ed., example 23.15 (from memory): 5000 N over
/// 40 mm, index 6, 850 N/mm² with Wahl's factor, G 80 kN/mm². It comes to loads of 3461.5 and 1538.5 N
/// and bars of 8.83 and 5.89 mm before rounding; the bar of the inner coil after rounding is not known
/// here, so the pair is taken unrounded, with turns that give each coil 40 mm.
///
/// The book makes n1·d1 = n2·d2 of the active turns. With two dead turns at each coil the solid heights
/// then differ by 10 %, which the balance must admit.
#[test]
fn khurmi_gupta_example_23_15() {
    let need = Need {
        work: Work::at_height(newtons(5000.0), mm(70.0), rate(125.0)),
        room: Room { gap: Some(mm(1.0)), ..Room::default() },
        reserve: Reserve { length: mm(0.0), share: 0.15, duty: None },
        make: Make::usual(Ends::ClosedGround),
        metal: steel(80.0, stress(850.0, Factor::Wahl), None),
    };
    let balance = Balance { solid: 0.1, stress: 0.1 };
    // d1/d2 = C/(C − 2) = 1.5, so that loads are as 2.25 to 1.
    let (wide, narrow): (f64, f64) = (5000.0 * 2.25 / 3.25, 5000.0 / 3.25);
    assert!((wide - 3461.5).abs() < 0.05 && (narrow - 1538.5).abs() < 0.05);
    let bar = |load: f64| (8.0 * 1.2525 * load * 6.0 / (PI * 850.0)).sqrt();
    assert!((bar(wide) - 8.83).abs() < 0.005 && (bar(narrow) - 5.89).abs() < 0.005);
    let active = |load: f64| 80e3 * bar(load) / (8.0 * 216.0 * load / 40.0);
    let mut turns = steps(3.0, 12.0, 0.25);
    turns.extend([active(wide), active(narrow)]);
    let bars = [5.0, 5.5, bar(narrow), 6.0, 6.5, 7.0, 8.0, 8.5, bar(wide), 9.0, 9.5, 10.0].map(mm);
    let sizing = PairSizing::new(need, &bars, &turns, balance).unwrap();
    let of = |load| ground(bar(load), 6.0 * bar(load), active(load), 110.0);
    let pair = sizing.judge(&of(wide), &of(narrow)).unwrap();
    assert!(pair.verdict().fits(), "{pair:?}");
    assert!(near(pair.outer.greatest_load.value, wide, 1e-9));
    let sized = sizing.designs(&Rounding::EXACT, Rank::Mass);
    let ours = sized.pairs[0];
    println!("book {:.4} kg, ours {:.4} kg", pair.mass().value, ours.mass().value);
    assert!(ours.mass() <= pair.mass() * (1.0 + 1e-9));
}

/// Machinery's Handbook, 31st ed., pp. 317-319, fig. 14 (steps 2 to 5 read on the page, the rest from
/// memory): 36 lb over 1 1/4 in, outside 13/16 in. It comes to a wire of 0.0915 in with 9 active and 11
/// total turns and 1 1/2 in of way to solid; stress with Wahl's factor 102 300 psi at load, 122 800 at
/// solid. With 9 turns where 9.09 would do, the coil is 1 % stiffer than 36 lb over 1 1/4 in, and at solid
/// is stressed with 124 100 psi: the rate of 9 turns is what is asked for here.
#[test]
fn machinery_31_figure_14() {
    let inches = Length::new::<inch>;
    let shear_modulus = Pressure::new::<pound_force_per_square_inch>(11.2e6);
    let psi = |stress| Allowed::Stress {
        stress: Pressure::new::<pound_force_per_square_inch>(stress),
        factor: Factor::Wahl,
    };
    let coil = Diameters::from_outside(inches(0.0915), inches(13.0 / 16.0)).unwrap();
    let turns = Turns::new(11.0, 2.0).unwrap();
    let book = drawn(coil, turns, inches(11.0 * 0.0915 + 1.5));
    let needed = coilnest::coil::rate::rate(shear_modulus, coil, turns);
    assert!(near(needed.get::<pound_force_per_inch>(), 36.0 / 1.25, 0.011));
    let need = Need {
        work: Work::at_any_height(Force::new::<pound_force>(36.0), needed),
        room: Room { pocket: Some(inches(27.0 / 32.0)), ..Room::default() },
        reserve: Reserve { length: inches(0.24), share: 0.0, duty: None },
        make: Make::usual(Ends::ClosedGround),
        metal: Metal { shear_modulus, ..steel(1.0, psi(103e3), Some(psi(124.5e3))) },
    };
    let bars = [0.080, 0.0915, 0.1055, 0.120].map(inches);
    let sizing = Sizing::new(need, &bars, &steps(3.0, 14.0, 0.25)).unwrap();
    let (of_book, verdict) = sizing.judge(&book).unwrap();
    assert!(verdict.fits(), "{verdict:?} {of_book:?}");
    let sized = sizing.designs(&Rounding::EXACT, Rank::Mass);
    let ours = sized.designs[0].design.mass;
    println!("book {:.5} kg, ours {:.5} kg", of_book.mass.value, ours.value);
    assert!(ours <= of_book.mass * (1.0 + 1e-9));
}

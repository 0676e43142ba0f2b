//! Trucks that stand again: ten thousand are sampled, coil by coil, with a tape that is off and marks that
//! are coarse, and what was done to each is known.

use coilnest::frame::standing::{Cause, Explained, Spot, StandingError, Taped, above};
use coilnest::frame::{CoilDoubt, Frame, Place, Support, Weight};
use coilnest::nest::{Law, Member, Nest};
use coilnest::propagation::{DrawingDoubt, RateDoubt};
use coilnest::quantity::unit::{kilonewton, millimeter, newton_per_millimeter};
use coilnest::quantity::{Force, Length, SpringRate};
use coilnest::say::Nth;
use oorandom::Rand64;
use statrs::distribution::{ChiSquared, ContinuousCDF};

const TRUCKS: u32 = 10_000;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

struct Chance(Rand64);

impl Chance {
    fn between(&mut self, least: f64, most: f64) -> f64 {
        least + (most - least) * self.0.rand_float()
    }

    fn normal(&mut self) -> f64 {
        let radius = libm::sqrt(-2.0 * libm::log(1.0 - self.0.rand_float()));
        radius * libm::cos(std::f64::consts::TAU * self.0.rand_float())
    }

    fn one_of(&mut self, count: usize) -> usize {
        usize::try_from(self.0.rand_range(0..count as u64)).unwrap()
    }
}

/// A truck as it is written, and how far all of that is in doubt.
struct Truck {
    supports: Vec<Support>,
    weight: Weight,
    doubts: Vec<Vec<CoilDoubt>>,
}

/// How heights are taped: marks this far apart, a place off by up to so much, a tape by up to so much.
const MARKS: f64 = 1.6;
const PLACE: f64 = 1.5;
const TAPE: f64 = 0.7;

fn uniform(half_width: f64) -> f64 {
    half_width / 3f64.sqrt()
}

impl Truck {
    fn any(chance: &mut Chance) -> Self {
        let (along, across) = (chance.between(700.0, 1200.0), chance.between(400.0, 900.0));
        let mut places = vec![(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)];
        if chance.between(0.0, 1.0) < 0.3 {
            places.extend([(0.0, 1.0), (0.0, -1.0)]);
        }
        let rates = [chance.between(120.0, 250.0), chance.between(40.0, 100.0)];
        let rate = |number, drawing| RateDoubt {
            own: 0.01,
            drawing: DrawingDoubt { number, doubt: drawing },
            steel: 0.015,
        };
        let doubt = |number| CoilDoubt { free: mm(0.9), tape: mm(0.4), rate: rate(number, 0.03) };
        let nest = |chance: &mut Chance| {
            let coil = |free: f64, k: f64| Member {
                free: mm(free),
                law: Law::linear(SpringRate::new::<newton_per_millimeter>(k)).unwrap(),
                solid: None,
                raise: mm(0.0),
            };
            let outer = coil(350.0 + chance.between(-4.0, 4.0), rates[0]);
            let inner = coil(340.0 + chance.between(-4.0, 4.0), rates[1]);
            Nest::new(vec![outer, inner]).unwrap()
        };
        let support = |(x, y): &(f64, f64)| Support {
            place: Place { along: mm(x * along), across: mm(y * across) },
            nest: nest(chance),
            stop: None,
            shim: mm(0.0),
            ground: mm(0.0),
        };
        let supports: Vec<Support> = places.iter().map(support).collect();
        #[expect(clippy::cast_precision_loss, reason = "no truck stands on 2⁵² nests")]
        let nests = supports.len() as f64;
        let load = nests * (rates[0] + rates[1]) * chance.between(50.0, 70.0) * 1e-3;
        let centre = Place {
            along: mm(chance.between(-0.1, 0.1) * along),
            across: mm(chance.between(-0.1, 0.1) * across),
        };
        let weight = Weight { load: Force::new::<kilonewton>(load), centre };
        let doubts = supports.iter().map(|_| vec![doubt(0), doubt(1)]).collect();
        Self { supports, weight, doubts }
    }

    fn frame(&self) -> Frame {
        Frame::new(self.supports.clone(), None).unwrap()
    }

    /// The same with coils as they may truly be.
    fn truly(&self, chance: &mut Chance) -> Vec<Support> {
        let (tape, steel) = (chance.normal(), chance.normal());
        let shapes = [chance.normal(), chance.normal()];
        let mut supports = self.supports.clone();
        for (support, doubts) in supports.iter_mut().zip(&self.doubts) {
            let coils = support.nest.members().iter().zip(doubts).map(|(member, doubt)| {
                let longer = doubt.free * chance.normal() + doubt.tape * tape;
                let rate = doubt.rate;
                let stiffer = rate.own * chance.normal()
                    + rate.drawing.doubt * shapes[rate.drawing.number]
                    + rate.steel * steel;
                let own = member.law.rate_beyond(mm(0.0)) * (1.0 + stiffer);
                Member {
                    free: member.free + longer,
                    law: Law::linear(own).unwrap(),
                    ..member.clone()
                }
            });
            support.nest = Nest::new(coils.collect()).unwrap();
        }
        supports
    }
}

/// What stands, as it is taped: by marks, place and tape.
fn taped(heights: impl Iterator<Item = Length>, chance: &mut Chance) -> Vec<Taped> {
    let tape = chance.between(-TAPE, TAPE);
    let read = |(nest, height): (usize, Length)| {
        let seen = height.get::<millimeter>() + tape + chance.between(-PLACE, PLACE);
        let height = mm((seen / MARKS).round() * MARKS);
        Taped { at: Spot::Nest(nest), height, doubt: own_doubt() }
    };
    heights.enumerate().map(read).collect()
}

fn own_doubt() -> Length {
    mm(uniform(libm::hypot(MARKS / 2.0, PLACE)))
}

/// The same with errors that are as great, but normal.
fn taped_normally(heights: impl Iterator<Item = Length>, chance: &mut Chance) -> Vec<Taped> {
    let tape = mm(uniform(TAPE)) * chance.normal();
    let read = |(nest, height): (usize, Length)| {
        let height = height + tape + own_doubt() * chance.normal();
        Taped { at: Spot::Nest(nest), height, doubt: own_doubt() }
    };
    heights.enumerate().map(read).collect()
}

fn heights(supports: Vec<Support>, weight: Weight) -> Option<Vec<Length>> {
    let settled = Frame::new(supports, None).unwrap().settle(weight).ok()?;
    Some(settled.supports.iter().map(|at| at.height).collect())
}

#[test]
fn the_tail_is_that_of_another_library() {
    for errors in 1..=40u32 {
        let other = ChiSquared::new(f64::from(errors)).unwrap();
        for sum in [0.0, 0.01, 0.5, 1.0, 3.0, 7.5, 20.0, 60.0] {
            let (found, expected) = (above(errors as usize, sum), other.sf(sum));
            assert!((found - expected).abs() < 1e-12, "{errors} {sum}: {found} {expected}");
        }
    }
    assert_eq!((above(0, 0.0).to_bits(), above(0, 1.0).to_bits()), (1f64.to_bits(), 0));
}

/// Five in a hundred where errors are normal. Those of marks, places and tapes have an end, so that of them
/// fewer trucks are questioned.
#[test]
fn of_trucks_as_written_five_in_a_hundred_are_questioned() {
    assert!((450..=550).contains(&questioned(taped_normally)));
    assert!((250..=500).contains(&questioned(taped)));
}

fn questioned(tape: fn(std::vec::IntoIter<Length>, &mut Chance) -> Vec<Taped>) -> u32 {
    let mut chance = Chance(Rand64::new(9));
    let (mut questioned, mut heights_questioned) = (0, 0);
    for _ in 0..TRUCKS {
        let truck = Truck::any(&mut chance);
        let stands = heights(truck.truly(&mut chance), truck.weight).unwrap();
        let taped = tape(stands.into_iter(), &mut chance);
        let finding =
            truck.frame().standing(truck.weight, &truck.doubts, &taped, mm(uniform(TAPE))).unwrap();
        questioned += u32::from(!finding.agrees());
        heights_questioned += u32::from(finding.heights.iter().any(|height| !height.agrees));
        assert!(finding.agrees() || finding.causes.len() == 2 * taped.len() + 3);
    }
    println!("questioned {questioned}, single heights {heights_questioned} of {TRUCKS}");
    assert!(heights_questioned <= 600, "{heights_questioned} of {TRUCKS}");
    questioned
}

/// What is done to a truck that nobody wrote down, in millimetres or as a part of the weight.
fn plant(
    which: usize,
    size: f64,
    supports: &mut [Support],
    weight: &mut Weight,
) -> (Cause, Option<(usize, Length)>) {
    let nothing = coilnest::propagation::Doubted::default;
    let by = mm(size);
    let nests = supports.len();
    match which {
        _ if which < nests => {
            // A nest that is longer, as by a pad too many.
            supports[which].shim = mm(60.0) + by;
            (Cause::Nest { nest: which, by: nothing() }, None)
        }
        _ if which < 2 * nests => {
            let nest = which - nests;
            (Cause::Reading { at: Spot::Nest(nest), by: nothing() }, Some((nest, by)))
        }
        _ if which == 2 * nests => {
            weight.load *= 1.0 + size / 100.0;
            (Cause::Weight { by: coilnest::propagation::Doubted::default() }, None)
        }
        _ if which == 2 * nests + 1 => {
            weight.centre.along += by * 5.0;
            (Cause::Along { by: nothing() }, None)
        }
        _ => {
            weight.centre.across += by * 5.0;
            (Cause::Across { by: nothing() }, None)
        }
    }
}

fn is_same(one: &Cause, other: &Cause) -> bool {
    match (one, other) {
        (Cause::Nest { nest: a, .. }, Cause::Nest { nest: b, .. }) => a == b,
        (Cause::Reading { at: a, .. }, Cause::Reading { at: b, .. }) => a == b,
        _ => std::mem::discriminant(one) == std::mem::discriminant(other),
    }
}

/// How many of its doubts a cause is large.
fn in_doubts(cause: &Cause) -> f64 {
    match cause {
        Cause::Weight { by } => (by.value / by.doubt).value.abs(),
        Cause::Nest { by, .. }
        | Cause::Reading { by, .. }
        | Cause::Along { by }
        | Cause::Across { by } => (by.value / by.doubt).value.abs(),
    }
}

/// A cause is planted that two standard uncertainties tell from every other: without any error of coil or tape,
/// the next best explanation leaves a χ² of four or more. That is more than twice its own doubt: of causes that are
/// only that, 87 in 100 are named first and 98 in 100 explain as well as the first within four, because the four
/// heights of a frame on four nests leave some causes alike (the bounds of both were set once they were seen). No
/// order of causes does better than that of what they
/// leave.
#[test]
fn what_was_done_is_named_first_nine_times_in_ten() {
    let mut chance = Chance(Rand64::new(10));
    let (mut planted, mut named, mut drawn) = (0, 0, 0);
    let (mut large, mut first, mut near) = (0, 0, 0);
    let mut by_kind = std::collections::BTreeMap::new();
    while planted < TRUCKS {
        drawn += 1;
        let mut truck = Truck::any(&mut chance);
        for support in &mut truck.supports {
            support.shim = mm(60.0);
        }
        let which = chance.one_of(2 * truck.supports.len() + 3);
        // From a sheet of 3 mm to a pad or a slipped inch; of the weight as many per cent.
        let size = libm::exp(chance.between(libm::log(3.0), libm::log(40.0)));
        let size = if chance.between(0.0, 1.0) < 0.5 { size } else { -size };
        let (mut exact, mut weight) = (truck.supports.clone(), truck.weight);
        let (cause, read) = plant(which, size, &mut exact, &mut weight);
        let mut truly = truck.truly(&mut chance);
        plant(which, size, &mut truly, &mut truck.weight.clone());
        // A tape reaches from the lower seat to the frame, over whatever lies between; what is known of
        // that is taken off.
        let over = |supports: &[Support]| -> Option<Vec<Length>> {
            let stands = heights(supports.to_vec(), weight)?;
            let all = stands.into_iter().zip(supports);
            Some(all.map(|(height, support)| height + support.shim - mm(60.0)).collect())
        };
        let (Some(exact), Some(stands)) = (over(&exact), over(&truly)) else { continue };
        let misread = |mut all: Vec<Taped>| {
            if let Some((nest, by)) = read {
                all[nest].height += by;
            }
            all
        };
        let frame = truck.frame();
        let look = |all: &[Taped]| {
            frame.standing(truck.weight, &truck.doubts, all, mm(uniform(TAPE))).ok()
        };
        let doubt = own_doubt();
        let sharp = exact.into_iter().enumerate();
        let sharp = misread(
            sharp.map(|(nest, height)| Taped { at: Spot::Nest(nest), height, doubt }).collect(),
        );
        let Some(without_error) = look(&sharp) else { continue };
        let of_it = |one: &&Explained| is_same(&one.cause, &cause);
        let rival = without_error.causes.iter().find(|one| !of_it(one)).unwrap();
        let own = without_error.causes.iter().find(of_it).unwrap();
        let Some(finding) = look(&misread(taped(stands.into_iter(), &mut chance))) else {
            continue;
        };
        let is_named = of_it(&&finding.causes[0]);
        if in_doubts(&own.cause) > 2.0 {
            let left = finding.causes.iter().find(of_it).unwrap().left;
            large += 1;
            first += u32::from(is_named);
            near += u32::from(left - finding.causes[0].left < 4.0);
        }
        if rival.left < 4.0 {
            continue;
        }
        planted += 1;
        named += u32::from(is_named);
        let kind =
            format!("{cause:?}").chars().take_while(|c| c.is_alphabetic()).collect::<String>();
        let count: &mut (u32, u32) = by_kind.entry(kind).or_default();
        *count = (count.0 + u32::from(is_named), count.1 + 1);
    }
    println!("{named} of {planted} named first ({drawn} drawn): {by_kind:?}");
    println!("over twice its doubt: {first} first, {near} near the first of {large}");
    assert!(first * 100 >= large * 85 && near * 100 >= large * 97, "{first}, {near} of {large}");
    assert!(named * 10 >= planted * 9, "{named} of {planted}: {by_kind:?}");
    assert!(by_kind.values().all(|(_, planted)| *planted > 100), "{by_kind:?}");
}

/// The weight that heights tell, and where it acts, lie within ± as often as ± says.
#[test]
fn the_weight_lies_within_its_doubt_as_often_as_it_says() {
    let mut chance = Chance(Rand64::new(11));
    let mut within = [[0u32; 2]; 4];
    for _ in 0..TRUCKS {
        let truck = Truck::any(&mut chance);
        let truly = truck.truly(&mut chance);
        let settled = Frame::new(truly, None).unwrap().settle(truck.weight).unwrap();
        let taped = taped(settled.supports.iter().map(|at| at.height), &mut chance);
        let weighed = truck.frame().weigh(&truck.doubts, &taped, mm(uniform(TAPE))).unwrap();
        let which = chance.one_of(taped.len());
        let load = weighed.loads[which];
        let off = [
            (weighed.weight.value - truck.weight.load).value / weighed.weight.doubt.value,
            (weighed.along.value - truck.weight.centre.along).value / weighed.along.doubt.value,
            (weighed.across.value - truck.weight.centre.across).value / weighed.across.doubt.value,
            (load.value - settled.supports[which].load).value / load.doubt.value,
        ];
        for (count, off) in within.iter_mut().zip(off) {
            count[0] += u32::from(off.abs() <= 1.0);
            count[1] += u32::from(off.abs() <= 1.96);
        }
    }
    println!("weight, along, across, one load: within u and within 1.96 u of {TRUCKS}: {within:?}");
    for [one, two] in within {
        assert!((6600..=7050).contains(&one) && (9400..=9600).contains(&two), "{within:?}");
    }
}

/// A coupler ahead of the nests stands within ± as often as ± says; where it truly stands is worked out from
/// heave and slopes, by other code than its doubt.
#[test]
fn a_point_stands_within_its_doubt_as_often_as_it_says() {
    let mut chance = Chance(Rand64::new(13));
    let mut within = [0u32; 2];
    for _ in 0..TRUCKS {
        let truck = Truck::any(&mut chance);
        let place = Place {
            along: mm(chance.between(1300.0, 2500.0)),
            across: mm(chance.between(-500.0, 500.0)),
        };
        let settled = Frame::new(truck.truly(&mut chance), None).unwrap().settle(truck.weight);
        let settled = settled.unwrap();
        let truly =
            settled.heave + place.along * settled.slope_along + place.across * settled.slope_across;
        let stands = truck.frame().stands(truck.weight, &truck.doubts, &[Spot::Place(place)]);
        let stands = stands.unwrap()[0];
        let off = (truly - stands.value).value / stands.doubt.value;
        within[0] += u32::from(off.abs() <= 1.0);
        within[1] += u32::from(off.abs() <= 1.96);
    }
    println!("within u and within 1.96 u of {TRUCKS}: {within:?}");
    assert!((6600..=7050).contains(&within[0]) && (9400..=9600).contains(&within[1]), "{within:?}");
}

#[test]
fn heights_that_tell_nothing_are_named() {
    let truck = Truck::any(&mut Chance(Rand64::new(12)));
    let frame = truck.frame();
    let height = |nest, height| Taped { at: Spot::Nest(nest), height: mm(height), doubt: mm(0.5) };
    let look = |taped: &[Taped]| frame.standing(truck.weight, &truck.doubts, taped, mm(0.4));
    let two = [height(0, 300.0), height(1, 300.0)];
    assert_eq!(look(&two), Err(StandingError::Count { count: 2 }));
    let twice = [height(0, 300.0), height(1, 300.0), height(1, 300.0)];
    assert_eq!(look(&twice), Err(StandingError::Nest { nest: Nth(2) }));
    let below = [height(0, 300.0), height(1, -1.0), height(2, 300.0)];
    assert!(matches!(look(&below), Err(StandingError::Height { nest: Nth(2), .. })));
    let three = [height(0, 300.0), height(1, 300.0), height(2, 300.0)];
    assert!(look(&three).is_ok());
    let weighed = frame.weigh(&truck.doubts, &three, mm(0.4));
    assert_eq!(weighed, Err(StandingError::Count { count: 3 }));
    let loose: Vec<Taped> = (0..truck.supports.len()).map(|nest| height(nest, 400.0)).collect();
    assert_eq!(frame.weigh(&truck.doubts, &loose, mm(0.4)), Err(StandingError::Loose));
}

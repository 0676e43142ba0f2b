//! What must hold of every coil and every nest.

use coilnest::coil::ends::Turns;
use coilnest::coil::{Diameters, rate};
use coilnest::nest::{Law, Member, Nest, NestError, State};
use coilnest::quantity::unit::{
    inch, meter, millimeter, newton, newton_per_meter, pascal, pound_force, pound_force_per_inch,
};
use coilnest::quantity::{Force, Length, Pressure, SpringRate};
use proptest::prelude::*;

fn metres(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn spring_rate(bar: f64, index: f64, turns: f64, modulus: f64) -> f64 {
    let coil = Diameters::from_mean(metres(bar), metres(bar * index)).unwrap();
    rate::rate(Pressure::new::<pascal>(modulus), coil, Turns::new(turns, 0.0).unwrap()).value
}

/// One coil: free height, rate, travel to solid, raise, and a stiffer stage from a share of the
/// travel on. Sunk seats, coils shorter than their neighbours and coils solid first all come up.
fn any_member() -> impl Strategy<Value = Member> {
    let stage = prop::option::of((0.1..0.9, 1.0..3.0));
    (0.1..0.6, 1e4..2e6, 0.1..0.7, -0.03..0.03, stage).prop_map(
        |(free, rate, travel, raise, stage)| {
            let newtons = SpringRate::new::<newton_per_meter>;
            let law = Law::linear(newtons(rate)).unwrap();
            let law = match stage {
                Some((from, more)) => {
                    law.then(metres(free * travel * from), newtons(rate * more)).unwrap()
                }
                None => law,
            };
            Member {
                free: metres(free),
                law,
                solid: Some(metres(free * (1.0 - travel))),
                raise: metres(raise),
            }
        },
    )
}

/// From one coil to four.
fn any_members() -> impl Strategy<Value = Vec<Member>> {
    prop::collection::vec(any_member(), 1..=4)
}

fn nest(members: &[Member]) -> Nest {
    Nest::new(members.to_vec()).unwrap()
}

/// A height between solid and a little above free.
fn height(nest: &Nest, share: f64) -> Length {
    let solid = nest.solid().unwrap().height;
    solid + (nest.free_height() - solid) * share
}

fn near(found: f64, expected: f64, relative: f64) -> bool {
    (found - expected).abs() <= relative * expected.abs().max(found.abs())
}

proptest! {
    #[test]
    fn a_coil_is_softer_with_more_turns_or_diameter_and_stiffer_with_more_bar(
        bar in 1e-3..0.06, index in 2.0..15.0, turns in 0.6..40.0, modulus in 30e9..90e9, more in 1.001..2.0_f64
    ) {
        let plain = spring_rate(bar, index, turns, modulus);
        prop_assert!(near(spring_rate(bar, index, turns * more, modulus), plain / more, 1e-12));
        prop_assert!(near(spring_rate(bar, index * more, turns, modulus), plain / more.powi(3), 1e-12));
        // The mean diameter stays, so the index falls as the bar grows.
        let thicker = 1.0 + (more - 1.0) * 0.4;
        prop_assert!(near(spring_rate(bar * thicker, index / thicker, turns, modulus), plain * thicker.powi(4), 1e-12));
        prop_assert!(near(spring_rate(bar, index, turns, modulus * more), plain * more, 1e-12));
    }

    #[test]
    fn height_and_load_are_each_others_inverse(members in any_members(), share in 0.0..1.0) {
        let nest = nest(&members);
        let at_height = nest.at_height(height(&nest, share)).unwrap();
        let back = nest.at_load(at_height.load).unwrap();
        prop_assert!(near(back.height.value, at_height.height.value, 1e-9), "{back:?}\n{at_height:?}");
        prop_assert!(near(back.load.value, at_height.load.value, 1e-9));
    }

    #[test]
    fn the_shares_make_up_the_load(members in any_members(), newtons in 0.0..2e6) {
        let nest = nest(&members);
        let state = nest.at_load(Force::new::<newton>(newtons)).unwrap();
        let sum: f64 = state.members.iter().map(|member| member.load.value).sum();
        prop_assert!(near(sum + state.stop_load.value, newtons, 1e-9), "{state:?}");
        prop_assert!(near(sum, state.load.value, 1e-12));
        let borne = nest.at_height(nest.solid().unwrap().height).unwrap().load.value;
        prop_assert!(state.solid && state.stop_load.value > 0.0 || newtons <= borne * (1.0 + 1e-9));
        prop_assert!(!state.solid && state.stop_load.value <= 0.0 || newtons >= borne * (1.0 - 1e-9));
        for member in &state.members {
            prop_assert!(member.load.value >= 0.0);
            prop_assert_eq!(member.touching, member.load.value > 0.0);
            prop_assert!(member.to_solid.unwrap().value >= -1e-12);
        }
    }

    #[test]
    fn lower_means_more_load(members in any_members(), high in 0.0..1.1, lower in 0.0..1.0) {
        let nest = nest(&members);
        let (above, below) = (height(&nest, high), height(&nest, high * lower));
        let (above, below) = (nest.at_height(above).unwrap(), nest.at_height(below).unwrap());
        prop_assert!(below.load >= above.load);
        prop_assert!(below.load > above.load || below.load.value <= 0.0 || below.height >= above.height);
    }

    #[test]
    fn the_order_of_the_coils_does_not_matter(members in any_members(), newtons in 1.0..1e6, turn in 0_usize..4) {
        let mut turned = members.clone();
        turned.rotate_left(turn % members.len());
        let load = Force::new::<newton>(newtons);
        let (state, other) = (nest(&members).at_load(load).unwrap(), nest(&turned).at_load(load).unwrap());
        prop_assert!(near(state.height.value, other.height.value, 1e-12));
        for (place, member) in other.members.iter().enumerate() {
            let same = state.members[(place + turn % members.len()) % members.len()];
            prop_assert!((member.load.value - same.load.value).abs() <= 1e-9 * newtons);
        }
    }

    #[test]
    fn the_rate_is_the_slope_of_the_load(members in any_members(), share in 0.001..1.0) {
        let nest = nest(&members);
        let (at, step) = (height(&nest, share), metres(1e-7));
        let bends = nest.breakpoints();
        prop_assume!(bends.iter().all(|bend| (bend.height - at).abs() > 2.0 * step));
        let load = |height| nest.at_height(height).unwrap().load;
        let slope = (load(at - step) - load(at + step)) / (2.0 * step);
        prop_assert!((slope.value - nest.at_height(at).unwrap().rate.value).abs() <= 1e-6 * 8e6, "{slope:?}");
    }

    #[test]
    fn breakpoints_lie_in_order_and_hold_every_bend(members in any_members()) {
        let nest = nest(&members);
        let bends = nest.breakpoints();
        prop_assert!(bends.windows(2).all(|pair| pair[0].height >= pair[1].height));
        prop_assert_eq!(bends[0].height, nest.free_height());
        prop_assert_eq!(bends.last().copied(), nest.solid());
        // Between two bends the load is straight: its middle is the mean of its ends.
        let load = |height| nest.at_height(height).unwrap().load.value;
        for pair in bends.windows(2) {
            let middle = load((pair[0].height + pair[1].height) / 2.0);
            prop_assert!(near(middle, f64::midpoint(load(pair[0].height), load(pair[1].height)), 1e-9));
        }
    }

    /// To the last digit, from below solid to above free, in groups of heights and beside them.
    #[test]
    fn a_load_alone_is_the_load_of_the_whole_state(members in any_members(), shares in prop::collection::vec(-0.05..1.1, 0..40)) {
        let nest = nest(&members);
        let mut heights: Vec<Length> = shares.iter().map(|share| height(&nest, *share)).collect();
        heights.push(nest.solid().unwrap().height * (1.0 - 1e-13));
        let (mut loads, mut kept) = (vec![Force::new::<newton>(1.0); 3], State::default());
        let all = nest.loads_at(&heights, &mut loads);
        let states: Result<Vec<State>, NestError> = heights.iter().map(|height| nest.at_height(*height)).collect();
        prop_assert_eq!(all.err(), states.as_ref().err().copied());
        let expected: Vec<Force> = states.into_iter().flatten().map(|state| state.load).collect();
        prop_assert_eq!(loads, expected);
        for height in heights {
            let state = nest.at_height(height);
            prop_assert_eq!(nest.load_at(height), state.clone().map(|state| state.load));
            prop_assert_eq!(nest.at_height_into(height, &mut kept).map(|()| kept.clone()), state);
        }
    }

    #[test]
    fn a_height_that_is_no_number_has_no_load(members in any_members(), place in 0_usize..20, odd in prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY])) {
        let nest = nest(&members);
        let mut heights = vec![nest.free_height(); 20];
        heights[place] = metres(odd);
        let mut loads = Vec::new();
        prop_assert_eq!(nest.loads_at(&heights, &mut loads), Err(NestError::NotFinite { what: "height" }));
        prop_assert!(loads.is_empty());
    }

    /// The same nest written in inches and pounds, through units and back.
    #[test]
    fn inches_and_metres_give_one_nest(members in prop::collection::vec((4.0..24.0, 50.0..9000.0), 1..=3), pounds in 1.0..50_000.0) {
        let by_inch = members.iter().map(|(free, rate)| Member {
            free: Length::new::<inch>(*free),
            law: Law::linear(SpringRate::new::<pound_force_per_inch>(*rate)).unwrap(),
            solid: None,
            raise: Length::default(),
        });
        let by_metre = members.iter().map(|(free, rate)| Member {
            free: Length::new::<millimeter>(free * 25.4),
            law: Law::linear(SpringRate::new::<newton_per_meter>(rate * 4.448_221_615_260_5 / 0.025_4)).unwrap(),
            solid: None,
            raise: Length::default(),
        });
        let (by_inch, by_metre) = (Nest::new(by_inch.collect()).unwrap(), Nest::new(by_metre.collect()).unwrap());
        let one = by_inch.at_load(Force::new::<pound_force>(pounds)).unwrap();
        let other = by_metre.at_load(Force::new::<newton>(pounds * 4.448_221_615_260_5)).unwrap();
        // A height near zero is a difference of larger lengths, and holds their digits.
        let free = one.members[0].deflection.value.abs().max(one.height.value.abs());
        prop_assert!((one.height.value - other.height.value).abs() <= 1e-12 * free);
        for (a, b) in one.members.iter().zip(&other.members) {
            prop_assert!((a.load.value - b.load.value).abs() <= 1e-12 * one.load.value * (1.0 + free / 0.001));
        }
    }
}

/// Three coils by hand: rates 10, 20, 40 N/mm, free 300, 290 and 295 mm. The widest is not the
/// longest, the middle one stands 5 mm sunk, the narrowest on a packing of 10 mm: they touch at 300,
/// 285 and 305 mm. At 280 mm they bear 200, 100 and 1000 N.
#[test]
fn three_coils_on_seats_of_three_heights() {
    let coil = |free, rate, solid, raise| Member {
        free: Length::new::<millimeter>(free),
        law: Law::linear(SpringRate::new::<newton_per_meter>(rate * 1000.0)).unwrap(),
        solid: Some(Length::new::<millimeter>(solid)),
        raise: Length::new::<millimeter>(raise),
    };
    let nest = nest(&[
        coil(300.0, 10.0, 150.0, 0.0),
        coil(290.0, 20.0, 150.0, -5.0),
        coil(295.0, 40.0, 145.0, 10.0),
    ]);
    assert_eq!(nest.touch_order(), [2, 0, 1]);
    assert!(near(nest.free_height().get::<millimeter>(), 305.0, 1e-12));
    let solid = nest.solid().unwrap();
    assert_eq!(solid.member, 2);
    assert!(near(solid.height.get::<millimeter>(), 155.0, 1e-12));
    let state = nest.at_height(Length::new::<millimeter>(280.0)).unwrap();
    for (member, expected) in state.members.iter().zip([200.0, 100.0, 1000.0]) {
        assert!(near(member.load.get::<newton>(), expected, 1e-12), "{member:?}");
    }
    assert!(near(state.rate.get::<newton_per_meter>(), 70_000.0, 1e-12));
    // Between 305 and 300 mm only the packed coil carries: the widest stands loose.
    let state = nest.at_height(Length::new::<millimeter>(302.0)).unwrap();
    assert_eq!(
        state.members.iter().map(|member| member.touching).collect::<Vec<_>>(),
        [false, false, true]
    );
    let state = nest.at_load(Force::new::<newton>(1300.0)).unwrap();
    assert!(near(state.height.get::<millimeter>(), 280.0, 1e-12));
}

/// A wider coil that is shorter than the one inside it: the inner carries alone until it is met.
#[test]
fn a_wider_coil_shorter_than_its_inner() {
    let coil = |free, rate: f64| Member {
        free: Length::new::<millimeter>(free),
        law: Law::linear(SpringRate::new::<newton_per_meter>(rate)).unwrap(),
        solid: None,
        raise: Length::default(),
    };
    let nest = nest(&[coil(250.0, 50_000.0), coil(280.0, 10_000.0)]);
    assert_eq!(nest.touch_order(), [1, 0]);
    let loads = |newtons| {
        let state = nest.at_load(Force::new::<newton>(newtons)).unwrap();
        state.members.iter().map(|member| member.load.get::<newton>()).collect::<Vec<_>>()
    };
    // 30 mm of the inner bear 300 N; of each newton beyond, five sixths go to the outer.
    assert!(loads(240.0)[0].abs() <= 0.0 && near(loads(240.0)[1], 240.0, 1e-12));
    assert!(near(loads(900.0)[0], 500.0, 1e-12) && near(loads(900.0)[1], 400.0, 1e-12));
}

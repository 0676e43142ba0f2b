//! Doubts worked by hand, and what holds for any coil.

use super::corners::{Between, Toleranced};
use super::*;
use crate::quantity::unit::{gigapascal, millimeter, newton};
use approx::assert_relative_eq;
use core::ops::{Add, Sub};
use proptest::prelude::*;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

fn gpa(x: f64) -> Pressure {
    Pressure::new::<gigapascal>(x)
}

const EVERY_ACROSS: [Across; 3] = [Across::Mean, Across::Outside, Across::Inside];

const EVERY_INPUT: [Input; 6] = [
    Input::Bar,
    Input::Diameter,
    Input::TotalTurns,
    Input::DeadTurns,
    Input::ShearModulus,
    Input::FreeHeight,
];

fn plain() -> Sample {
    Sample {
        bar: Doubted { value: mm(20.0), doubt: mm(0.1) },
        across: Across::Outside,
        diameter: Doubted { value: mm(120.0), doubt: mm(0.5) },
        total_turns: Doubted { value: 7.5, doubt: 0.05 },
        dead_turns: Doubted::uniform(1.5, 0.25),
        shear_modulus: Doubted { value: gpa(78.5), doubt: gpa(0.8) },
        free: Doubted { value: mm(300.0), doubt: mm(0.6) },
    }
}

/// The sample with every doubt and one value scaled.
fn scaled(sample: &Sample, input: Input, value: f64, doubt: f64) -> Sample {
    let mut other = *sample;
    match input {
        Input::Bar => scale(&mut other.bar, value, doubt),
        Input::Diameter => scale(&mut other.diameter, value, doubt),
        Input::TotalTurns => scale(&mut other.total_turns, value, doubt),
        Input::DeadTurns => scale(&mut other.dead_turns, value, doubt),
        Input::ShearModulus => scale(&mut other.shear_modulus, value, doubt),
        Input::FreeHeight => scale(&mut other.free, value, doubt),
    }
    other
}

fn scale<Q: Copy + Mul<f64, Output = Q>>(what: &mut Doubted<Q>, value: f64, doubt: f64) {
    *what = Doubted { value: what.value * value, doubt: what.doubt * doubt };
}

/// Index from 3 to 12, from 2 active turns on, every doubt up to 3 %.
fn any_sample() -> impl Strategy<Value = Sample> {
    let across = prop::sample::select(EVERY_ACROSS.to_vec());
    let doubts = prop::array::uniform6(0.0..0.03);
    (across, 1.0..60.0, 3.0..12.0, 2.0..15.0, 0.0..3.0, 60.0..90.0, 100.0..600.0, doubts).prop_map(
        |(across, bar, index, active, dead, modulus, free, doubts)| {
            let diameter = bar * (index - across.mean_per_bar());
            let length = |x, doubt: f64| Doubted { value: mm(x), doubt: mm(x * doubt) };
            let [a, b, c, d, e, f] = doubts;
            Sample {
                bar: length(bar, a),
                across,
                diameter: length(diameter, b),
                total_turns: Doubted { value: active + dead, doubt: c * 10.0 },
                dead_turns: Doubted { value: dead, doubt: d * 10.0 },
                shear_modulus: Doubted { value: gpa(modulus), doubt: gpa(modulus * e) },
                free: length(free, f),
            }
        },
    )
}

fn between<Q>(of: Doubted<Q>) -> Between<Q>
where
    Q: Copy + fmt::Debug + PartialOrd + Add<Output = Q> + Sub<Output = Q>,
{
    Between::around(of.value, of.doubt, of.doubt).unwrap()
}

fn end<Q: Copy + fmt::Debug + PartialOrd>(of: Between<Q>, most: bool) -> Q {
    if most { of.most() } else { of.least() }
}

proptest! {
    #[test]
    fn a_sensitivity_is_the_slope_of_the_result(sample in any_sample(), share in 0.2..0.8) {
        let height = sample.free.value * share;
        let budget = load(&sample, height).unwrap();
        let moved = |input, by| load(&scaled(&sample, input, by, 1.0), height).unwrap().value;
        prop_assert_eq!(budget.parts.len(), EVERY_INPUT.len());
        for part in &budget.parts {
            let step = 1e-5;
            let rise = moved(part.input, 1.0 + step) - moved(part.input, 1.0 - step);
            let slope = (rise / (2.0 * step) / budget.value).value;
            prop_assert!((slope - part.sensitivity).abs() <= 1e-6 * (1.0 + slope.abs()), "{part:?}: {slope}");
        }
    }

    /// With the mean diameter measured they are the exponents of the rate.
    #[test]
    fn on_the_mean_diameter_the_sensitivities_are_4_and_3(sample in any_sample()) {
        let sample = Sample { across: Across::Mean, diameter: Doubted::exact(sample.bar.value * 7.0), ..sample };
        let parts = rate(&sample).unwrap().parts;
        let of = |input| parts.iter().find(|part| part.input == input).unwrap().sensitivity;
        prop_assert!((of(Input::Bar) - 4.0).abs() < 1e-12);
        prop_assert!((of(Input::Diameter) + 3.0).abs() < 1e-12);
        prop_assert!((of(Input::ShearModulus) - 1.0).abs() < 1e-12);
        // One per cent of all turns, dead and not, is one per cent of those at work.
        prop_assert!((of(Input::TotalTurns) + of(Input::DeadTurns) + 1.0).abs() < 1e-12);
    }

    /// What is said to be left is left, when the input is measured so much better.
    #[test]
    fn a_better_measurement_narrows_as_was_said(sample in any_sample(), share in 0.2..0.8, ratio in 0.0..1.5) {
        let height = sample.free.value * share;
        let budget = load(&sample, height).unwrap();
        for input in EVERY_INPUT {
            let better = load(&scaled(&sample, input, 1.0, ratio), height).unwrap();
            let off = (better.doubt - budget.doubt_left(input, ratio)).abs();
            // Where nearly all is one input's, what is left is a small difference of large squares.
            prop_assert!(off <= budget.doubt * 1e-7, "{input}");
        }
    }

    #[test]
    fn the_measurement_worth_making_leaves_the_least_doubt(sample in any_sample()) {
        let budget = rate(&sample).unwrap();
        prop_assume!(budget.worth_measuring().is_some());
        let left = |input| budget.doubt_left(input, 0.0);
        let best = budget.worth_measuring().unwrap().input;
        for input in EVERY_INPUT.into_iter().filter(|input| input.measured()) {
            prop_assert!(left(best) <= left(input));
        }
        let largest = budget.largest().unwrap().input;
        prop_assert!(EVERY_INPUT.into_iter().all(|input| left(largest) <= left(input)));
        let sum: f64 = budget.parts.iter().map(|part| part.share).sum();
        prop_assert!((sum - 1.0).abs() < 1e-12);
    }

    /// The two corners that are looked at are the ends of all 64, and are corners.
    #[test]
    fn two_corners_bound_the_other_sixty_two(sample in any_sample(), share in 0.2..0.8) {
        let drawing = Toleranced {
            bar: between(sample.bar),
            across: sample.across,
            diameter: between(sample.diameter),
            total_turns: between(sample.total_turns),
            dead_turns: Between::new(sample.dead_turns.value, sample.dead_turns.value + sample.dead_turns.doubt).unwrap(),
            shear_modulus: between(sample.shear_modulus),
            free: between(sample.free),
        };
        let height = sample.free.value * share;
        let (rates, loads) = (corners::rate(&drawing).unwrap(), corners::load(&drawing, height).unwrap());
        let mut met = [0; 4];
        for corner in 0..64_u32 {
            let most = |bit: u32| corner & (1 << bit) != 0;
            let at = Sample {
                bar: Doubted::exact(end(drawing.bar, most(0))),
                across: drawing.across,
                diameter: Doubted::exact(end(drawing.diameter, most(1))),
                total_turns: Doubted::exact(end(drawing.total_turns, most(2))),
                dead_turns: Doubted::exact(end(drawing.dead_turns, most(3))),
                shear_modulus: Doubted::exact(end(drawing.shear_modulus, most(4))),
                free: Doubted::exact(end(drawing.free, most(5))),
            };
            let (rate, load) = (rate(&at).unwrap().value, load(&at, height).unwrap().value);
            prop_assert!(rates.least() <= rate && rate <= rates.most());
            prop_assert!(loads.least() <= load && load <= loads.most());
            met[0] += u32::from(rate <= rates.least());
            met[1] += u32::from(rate >= rates.most());
            met[2] += u32::from(load <= loads.least());
            met[3] += u32::from(load >= loads.most());
        }
        prop_assert!(met.iter().all(|times| *times > 0), "{met:?}");
    }
}

#[test]
fn an_end_without_dead_turns_is_still_in_doubt() {
    let sample = Sample {
        total_turns: Doubted::exact(5.0),
        dead_turns: Doubted { value: 0.0, doubt: 0.1 },
        ..plain()
    };
    let parts = rate(&sample).unwrap().parts;
    let dead = parts.iter().find(|part| part.input == Input::DeadTurns).unwrap();
    let relative = (dead.doubt / rate(&sample).unwrap().value).value;
    assert_relative_eq!(relative, 0.02, max_relative = 1e-12);
    assert_relative_eq!(dead.sensitivity, 0.0);
}

#[test]
fn without_doubt_nothing_is_worth_measuring() {
    let mut sample = plain();
    for input in EVERY_INPUT {
        sample = scaled(&sample, input, 1.0, 0.0);
    }
    let budget = rate(&sample).unwrap();
    assert_eq!((budget.largest(), budget.worth_measuring()), (None, None));
    assert_relative_eq!(budget.doubt.value, 0.0);
    assert_relative_eq!(budget.doubt_left(Input::Bar, 0.0).value, 0.0);
}

/// The whole variance one input's: what is left is nought and no root of a rounding below it.
#[test]
fn the_only_input_in_doubt_leaves_nothing() {
    let mut sample = plain();
    for input in EVERY_INPUT.into_iter().filter(|input| *input != Input::Bar) {
        sample = scaled(&sample, input, 1.0, 0.0);
    }
    let budget = rate(&sample).unwrap();
    assert_eq!(budget.worth_measuring().map(|part| part.input), Some(Input::Bar));
    assert_relative_eq!(budget.doubt_left(Input::Bar, 0.0).value, 0.0);
}

#[test]
fn a_free_height_that_may_not_reach_bears_nothing_at_least() {
    let exact = |value| Between::only(value).unwrap();
    let drawing = Toleranced {
        bar: exact(mm(20.0)),
        across: Across::Mean,
        diameter: exact(mm(100.0)),
        total_turns: Between::only(7.5).unwrap(),
        dead_turns: Between::only(1.5).unwrap(),
        shear_modulus: Between::only(gpa(78.5)).unwrap(),
        free: Between::around(mm(300.0), mm(3.0), mm(3.0)).unwrap(),
    };
    let load = corners::load(&drawing, mm(299.0)).unwrap();
    assert_relative_eq!(load.least().get::<newton>(), 0.0);
    // 261.667 N/mm of 4 mm.
    assert_relative_eq!(load.most().get::<newton>(), 1046.667, max_relative = 1e-6);
    assert!(matches!(corners::load(&drawing, mm(303.0)), Err(PropagationError::Height { .. })));
    let thick = Toleranced { bar: Between::new(mm(20.0), mm(101.0)).unwrap(), ..drawing };
    assert!(matches!(corners::rate(&thick), Err(PropagationError::Diameters(_))));
    let few = Toleranced { dead_turns: Between::new(1.5, 7.2).unwrap(), ..drawing };
    assert!(matches!(corners::rate(&few), Err(PropagationError::Turns(_))));
    let middle = rate(&drawing.sample()).unwrap();
    assert_relative_eq!(middle.doubt.value, 0.0);
}

#[test]
fn a_refusal_names_the_value_and_the_remedy() {
    let refusal = |sample: Sample| load(&sample, mm(200.0)).unwrap_err().to_string();
    let bar = Doubted { value: mm(20.0), doubt: mm(-0.1) };
    assert_eq!(
        refusal(Sample { bar, ..plain() }),
        "the bar has a doubt of -0.0001 in SI units; nought or more was expected: give the doubt without a sign, or nought"
    );
    let free = Doubted { value: mm(300.0), doubt: mm(f64::NAN) };
    assert!(refusal(Sample { free, ..plain() }).starts_with("the free height has a doubt of NaN"));
    let shear_modulus = Doubted::exact(gpa(0.0));
    assert!(refusal(Sample { shear_modulus, ..plain() }).contains("of 0 Pa; one above zero"));
    let diameter = Doubted::exact(mm(30.0));
    assert!(refusal(Sample { diameter, ..plain() }).contains("leaves no hole"));
    let total_turns = Doubted::exact(1.75);
    assert!(refusal(Sample { total_turns, ..plain() }).contains("at least 0.5 is needed"));
    assert_eq!(
        load(&plain(), mm(300.0)).unwrap_err().to_string(),
        "a height of 0.3 m; above zero and below the free height of 0.3 m was expected: ask for a height under load"
    );
    assert!(load(&plain(), mm(f64::NAN)).is_err() && load(&plain(), mm(-1.0)).is_err());
    assert!(Between::new(2.0, 1.0).unwrap_err().to_string().contains("from 2.0 to 1.0"));
    assert!(Between::only(f64::NAN).is_err());
}

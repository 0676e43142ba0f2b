//! Doubts worked by hand, and what holds for any coil.

use super::*;
use crate::coil::{DiameterKind, ends::Ends};
use crate::quantity::Pressure;
use crate::quantity::unit::{gigapascal, millimeter};
use approx::assert_relative_eq;
use proptest::prelude::*;

fn mm(x: f64) -> Length {
    Length::new::<millimeter>(x)
}

const DIAMETER_KINDS: [DiameterKind; 3] =
    [DiameterKind::Mean, DiameterKind::Outside, DiameterKind::Inside];

const EVERY_INPUT: [Figure; 6] = [
    Figure::Bar,
    Figure::Diameter,
    Figure::TotalTurns,
    Figure::DeadTurns,
    Figure::ShearModulus,
    Figure::FreeHeight,
];

fn around<Q>(nominal: Q, half_width: Q) -> Given<Q>
where
    Q: Copy + core::fmt::Debug + PartialOrd,
    Q: core::ops::Add<Output = Q> + core::ops::Sub<Output = Q>,
{
    Given::around(nominal, half_width, half_width).unwrap()
}

fn plain() -> Drawing {
    Drawing {
        bar: Some(around(mm(20.0), mm(0.2))),
        diameter: Some((DiameterKind::Outside, around(mm(120.0), mm(0.9)))),
        total_turns: Some(around(7.5, 0.1)),
        dead_turns: Some(around(1.5, 0.5)),
        shear_modulus: Some(around(gpa(78.5), gpa(1.4))),
        free: Some(around(mm(300.0), mm(1.0))),
        ..Drawing::default()
    }
}

fn gpa(x: f64) -> Pressure {
    Pressure::new::<gigapascal>(x)
}

/// One figure scaled, and its half-width by another factor.
fn scaled(of: &Drawing, input: Figure, value: f64, width: f64) -> Drawing {
    fn scale<Q>(given: Given<Q>, value: f64, width: f64) -> Given<Q>
    where
        Q: Copy + core::fmt::Debug + PartialOrd + Mul<f64, Output = Q>,
        Q: core::ops::Add<Output = Q> + core::ops::Sub<Output = Q>,
    {
        around(given.nominal() * value, given.half_width() * width)
    }
    let mut other = of.clone();
    match input {
        Figure::Bar => other.bar = other.bar.map(|it| scale(it, value, width)),
        Figure::Diameter => {
            other.diameter = other.diameter.map(|(across, it)| (across, scale(it, value, width)));
        }
        Figure::TotalTurns => {
            other.total_turns = other.total_turns.map(|it| scale(it, value, width));
        }
        Figure::DeadTurns => other.dead_turns = other.dead_turns.map(|it| scale(it, value, width)),
        Figure::ShearModulus => {
            other.shear_modulus = other.shear_modulus.map(|it| scale(it, value, width));
        }
        _ => other.free = other.free.map(|it| scale(it, value, width)),
    }
    other
}

/// Index from 3 to 12, from 2 active turns on, every half-width up to 3 %.
fn any_drawing() -> impl Strategy<Value = Drawing> {
    let across = prop::sample::select(DIAMETER_KINDS.to_vec());
    let widths = prop::array::uniform6(0.0..0.03);
    (across, 1.0..60.0, 3.0..12.0, 2.0..15.0, 0.0..3.0, 60.0..90.0, 100.0..600.0, widths).prop_map(
        |(across, bar, index, active, dead, modulus, free, widths)| {
            let diameter = bar * (index - across.mean_per_bar());
            let length = |x, width: f64| around(mm(x), mm(x * width));
            let [a, b, c, d, e, f] = widths;
            Drawing {
                bar: Some(length(bar, a)),
                diameter: Some((across, length(diameter, b))),
                total_turns: Some(around(active + dead, c * 10.0)),
                dead_turns: Some(around(dead, d * 10.0)),
                shear_modulus: Some(around(gpa(modulus), gpa(modulus * e))),
                free: Some(length(free, f)),
                ..Drawing::default()
            }
        },
    )
}

fn height_of(drawing: &Drawing, share: f64) -> Length {
    drawing.free.unwrap().nominal() * share
}

proptest! {
    #[test]
    fn a_sensitivity_is_the_slope_of_the_result(drawing in any_drawing(), share in 0.2..0.8) {
        let height = height_of(&drawing, share);
        let budget = load(&drawing, height).unwrap();
        let moved = |input, by| load(&scaled(&drawing, input, by, 1.0), height).unwrap().value;
        prop_assert_eq!(budget.parts.len(), EVERY_INPUT.len());
        for part in &budget.parts {
            let step = 1e-5;
            let rise = moved(part.input, 1.0 + step) - moved(part.input, 1.0 - step);
            let slope = (rise / (2.0 * step) / budget.value).value;
            prop_assert!((slope - part.sensitivity).abs() <= 1e-6 * (1.0 + slope.abs()), "{part:?}: {slope}");
        }
    }

    /// With the mean diameter drawn they are the exponents of the rate.
    #[test]
    fn on_the_mean_diameter_the_sensitivities_are_4_and_3(drawing in any_drawing()) {
        let mean = Given::exact(drawing.bar.unwrap().nominal() * 7.0);
        let parts = rate(&Drawing { diameter: Some((DiameterKind::Mean, mean)), ..drawing }).unwrap().parts;
        let of = |input| parts.iter().find(|part| part.input == input).unwrap().sensitivity;
        prop_assert!((of(Figure::Bar) - 4.0).abs() < 1e-12);
        prop_assert!((of(Figure::Diameter) + 3.0).abs() < 1e-12);
        prop_assert!((of(Figure::ShearModulus) - 1.0).abs() < 1e-12);
        // One per cent of all turns, dead and not, is one per cent of those at work.
        prop_assert!((of(Figure::TotalTurns) + of(Figure::DeadTurns) + 1.0).abs() < 1e-12);
    }

    /// What is said to be left is left, when the input is measured so much better.
    #[test]
    fn a_better_measurement_narrows_as_was_said(drawing in any_drawing(), share in 0.2..0.8, ratio in 0.0..1.5) {
        let height = height_of(&drawing, share);
        let budget = load(&drawing, height).unwrap();
        for input in EVERY_INPUT {
            let better = load(&scaled(&drawing, input, 1.0, ratio), height).unwrap();
            let off = (better.doubt - budget.doubt_left(input, ratio)).abs();
            // Where nearly all is one input's, what is left is a small difference of large squares.
            prop_assert!(off <= budget.doubt * 1e-7, "{input}");
        }
    }

    #[test]
    fn the_measurement_worth_making_leaves_the_least_doubt(drawing in any_drawing()) {
        let budget = rate(&drawing).unwrap();
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

    /// Whose a doubt is changes nothing of how much there is of it.
    #[test]
    fn the_doubts_by_whose_they_are_make_up_the_whole(drawing in any_drawing()) {
        let budget = rate(&drawing).unwrap();
        let parted = RateDoubt::of(&drawing, 3).unwrap();
        let whole = (budget.doubt / budget.value).value;
        prop_assert!((parted.total() - whole).abs() <= 1e-12 * whole);
        prop_assert_eq!(parted.drawing.number, 3);
    }

    /// Whoever widens a tolerance or leaves out what is stated knows less.
    #[test]
    fn knowing_less_never_narrows_a_doubt(
        drawing in any_drawing(),
        input in prop::sample::select(EVERY_INPUT.to_vec()),
        wider in 1.0..4.0,
        stated in prop::option::of((-0.5..0.5, 0.0..0.1)),
    ) {
        let range = drawing.rate();
        prop_assume!(range.is_ok());
        let range = range.unwrap();
        let stated = stated.map(|(place, width)| {
            let reach = if place < 0.0 { range.nominal() - range.least() } else { range.most() - range.nominal() };
            let nominal = range.nominal() + reach * place;
            around(nominal, nominal * width)
        });
        let drawing = Drawing { rate: stated, ..drawing };
        let relative = |of: &Drawing| {
            let budget = rate(of).unwrap();
            (budget.doubt / budget.value).value
        };
        let known = relative(&drawing);
        prop_assert!(relative(&scaled(&drawing, input, 1.0, wider)) >= known * (1.0 - 1e-12));
        let unstated = Drawing { rate: None, ..drawing.clone() };
        prop_assert!(relative(&unstated) >= known * (1.0 - 1e-12));
        if let Some(stated) = stated {
            let loose = Drawing { rate: Some(Given::as_drawn(stated.nominal())), ..drawing.clone() };
            prop_assert!(relative(&loose) >= known * (1.0 - 1e-12));
            let wide = around(stated.nominal(), stated.half_width() * wider);
            let wide = Drawing { rate: Some(wide), ..drawing };
            prop_assert!(relative(&wide) >= known * (1.0 - 1e-12));
        }
    }
}

#[test]
fn an_end_without_dead_turns_is_still_in_doubt() {
    let open = Drawing {
        total_turns: Some(Given::exact(5.0)),
        dead_turns: None,
        ends: Some(Ends::Open),
        ..plain()
    };
    let budget = rate(&open).unwrap();
    let dead = budget.parts.iter().find(|part| part.input == Figure::DeadTurns).unwrap();
    // Half a turn over √3, of five.
    assert_relative_eq!((dead.doubt / budget.value).value, 0.1 / 3f64.sqrt(), max_relative = 1e-12);
    assert_relative_eq!(dead.sensitivity, 0.0);
}

#[test]
fn without_doubt_nothing_is_worth_measuring() {
    let mut drawing = plain();
    for input in EVERY_INPUT {
        drawing = scaled(&drawing, input, 1.0, 0.0);
    }
    let budget = rate(&drawing).unwrap();
    assert_eq!((budget.largest(), budget.worth_measuring()), (None, None));
    assert_relative_eq!(budget.doubt.value, 0.0);
    assert_relative_eq!(budget.doubt_left(Figure::Bar, 0.0).value, 0.0);
}

/// The whole variance one input's: what is left is zero and no root of a rounding below it.
#[test]
fn the_only_input_in_doubt_leaves_nothing() {
    let mut drawing = plain();
    for input in EVERY_INPUT.into_iter().filter(|input| *input != Figure::Bar) {
        drawing = scaled(&drawing, input, 1.0, 0.0);
    }
    let budget = rate(&drawing).unwrap();
    assert_eq!(budget.worth_measuring().map(|part| part.input), Some(Figure::Bar));
    assert_relative_eq!(budget.doubt_left(Figure::Bar, 0.0).value, 0.0);
}

#[test]
fn what_is_missing_is_named_and_a_loose_coil_carries_nothing() {
    let lacking = Drawing { bar: None, free: None, ..plain() };
    assert_eq!(rate(&lacking), Err(Figure::Bar.into()));
    let both = Figures::from(Figure::Bar) | Figure::FreeHeight.into();
    assert_eq!(load(&lacking, mm(200.0)), Err(both));
    let loose = load(&plain(), mm(310.0)).unwrap();
    assert_eq!((loose.value, loose.doubt), (Force::default(), Force::default()));
}

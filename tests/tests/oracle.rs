//! The normal distribution and the units against other people's libraries.

use approx::{abs_diff_eq, relative_eq};
use coilnest::quantity::unit::{
    foot, foot_pound_force, gigapascal, inch, kilogram_force, kilogram_force_per_millimeter,
    kip_force, kip_force_per_square_inch, million_pound_force_per_square_inch,
    newton_per_millimeter, pound, pound_force, pound_force_per_inch, pound_force_per_square_inch,
    pound_per_cubic_inch,
};
use coilnest::quantity::{Energy, Force, Length, Mass, MassDensity, Pressure, SpringRate};
use coilnest::verdict::{Limits, judge, normal};
use proptest::prelude::*;
use statrs::distribution::{ContinuousCDF, Normal};

/// What the other library's approximation of the error function holds.
const TEN_DIGITS: f64 = 1e-10;

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4096))]

    #[test]
    fn the_normal_distribution_is_another_librarys(z in -8.0..8.0) {
        let other = Normal::standard().cdf(z);
        prop_assert!((normal(z) - other).abs() <= TEN_DIGITS, "{z}: {} and {other}", normal(z));
    }

    #[test]
    fn a_verdict_weighs_the_tails_of_that_distribution(
        y in 0.30..0.40, u in 1e-5..0.01, least in 0.30..0.40, width in 0.0..0.05
    ) {
        let limits = Limits::new(Some(metres(least)), Some(metres(least + width))).unwrap();
        let verdict = judge(metres(y), metres(u), limits, 0.95);
        let other = Normal::new(y, u).unwrap();
        prop_assert!((verdict.p_short - other.cdf(least)).abs() <= TEN_DIGITS);
        prop_assert!((verdict.p_long - other.sf(least + width)).abs() <= TEN_DIGITS);
        prop_assert!((verdict.p_in - (other.cdf(least + width) - other.cdf(least))).abs() <= 2.0 * TEN_DIGITS);
    }
}

/// Forty-digit arithmetic, rounded to what floating point holds; it reaches into the tails, which ten digits do not.
#[test]
fn the_tails_of_the_normal_distribution_hold_all_their_digits() {
    for (z, exact) in [
        (-8.0, 6.220_960_574_271_784e-16),
        (-5.0, 2.866_515_718_791_939e-7),
        (-3.0, 0.001_349_898_031_630_094_5),
        (-1.645, 0.049_984_905_539_121_36),
        (-0.7, 0.241_963_652_223_073_03),
        (0.5, 0.691_462_461_274_013_1),
        (2.0, 0.977_249_868_051_820_8),
    ] {
        assert!(relative_eq!(normal(z), exact, max_relative = 1e-14), "{z}: {}", normal(z));
    }
}

fn metres(x: f64) -> Length {
    Length::new::<coilnest::quantity::unit::meter>(x)
}

/// A conversion by a calculator that works in exact rationals.
fn calculator(expression: &str) -> Result<f64, String> {
    let mut context = fend_core::Context::new();
    let result =
        fend_core::evaluate(&format!("@plain_number ({expression} to 17 sf)"), &mut context)?;
    let text = result.get_main_result();
    let number = text.trim_start_matches("approx. ");
    number.parse().map_err(|error| format!("{expression}: {text:?}: {error}"))
}

#[test]
fn units_are_the_calculators() -> Result<(), String> {
    for (ours, expression) in [
        (Length::new::<inch>(1.0).value, "1 inch / (1 m)"),
        (Length::new::<foot>(1.0).value, "1 foot / (1 m)"),
        (Mass::new::<pound>(1.0).value, "1 pound / (1 kg)"),
        (Force::new::<pound_force>(1.0).value, "1 lbf / (1 N)"),
        (Force::new::<kip_force>(1.0).value, "1000 lbf / (1 N)"),
        (Force::new::<kilogram_force>(1.0).value, "1 kgf / (1 N)"),
        (SpringRate::new::<pound_force_per_inch>(1.0).value, "1 lbf/inch / (1 N/m)"),
        (SpringRate::new::<newton_per_millimeter>(1.0).value, "1 N/mm / (1 N/m)"),
        (SpringRate::new::<kilogram_force_per_millimeter>(1.0).value, "1 kgf/mm / (1 N/m)"),
        (Pressure::new::<pound_force_per_square_inch>(1.0).value, "1 psi / (1 Pa)"),
        (Pressure::new::<kip_force_per_square_inch>(1.0).value, "1000 psi / (1 Pa)"),
        (Pressure::new::<million_pound_force_per_square_inch>(1.0).value, "10^6 psi / (1 Pa)"),
        (Pressure::new::<gigapascal>(1.0).value, "1 GPa / (1 Pa)"),
        (MassDensity::new::<pound_per_cubic_inch>(1.0).value, "1 pound/inch^3 / (1 kg/m^3)"),
        (Energy::new::<foot_pound_force>(1.0).value, "(1 foot / (1 m)) * (1 lbf / (1 N))"),
    ] {
        let other = calculator(expression)?;
        assert!(
            abs_diff_eq!(ours, other, epsilon = 2.0 * f64::EPSILON * other),
            "{expression}: {ours} and {other}"
        );
    }
    Ok(())
}

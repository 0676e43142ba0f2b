//! Quantities read and refused, what is written and read back, random texts.

use super::*;
use crate::bounds::{DEAD_TURNS, LEVEL, LOAD, MODULUS, RATE, STRESS, TURNS, WARP_STIFFNESS};
use crate::quantity::unit::{
    KILOGRAM_FORCE_N, POUND_FORCE_N, gigapascal, kilonewton, kip_force_per_square_inch, newton,
    newton_per_meter, pascal, pound_force, pound_force_per_inch, pound_force_per_square_inch,
};
use crate::quantity::{Force, Kind, SpringRate, Stress, shown, write};
use System::{Inch, Metric};
use approx::abs_diff_eq;
use proptest::prelude::*;

/// Within a unit in the last place or two: a text's number and a unit's factor are each the
/// nearest float, and are multiplied once.
fn same(found: f64, exact: f64, text: &str) {
    assert!(
        abs_diff_eq!(found, exact, epsilon = 2.0 * f64::EPSILON * exact.abs()),
        "{text:?}: {found:e} is not {exact:e}"
    );
}

#[test]
fn loads() {
    for (text, system, newtons) in [
        ("5000", Inch, 5000.0 * POUND_FORCE_N),
        ("5000", Metric, 5000.0),
        ("24 500 lb", Metric, 24_500.0 * POUND_FORCE_N),
        ("24\u{202f}500\u{a0}lb", Inch, 24_500.0 * POUND_FORCE_N),
        ("1\u{2009}234\u{2009}567 N", Inch, 1_234_567.0),
        ("5000lbs", Inch, 5000.0 * POUND_FORCE_N),
        ("5000 LBF", Inch, 5000.0 * POUND_FORCE_N),
        ("5000 pounds", Inch, 5000.0 * POUND_FORCE_N),
        ("5000 lb.", Inch, 5000.0 * POUND_FORCE_N),
        ("2.5 kip", Inch, 2500.0 * POUND_FORCE_N),
        ("22,5 kN", Inch, 22_500.0),
        ("22.5kn", Inch, 22_500.0),
        ("0,125 kN", Inch, 125.0),
        ("300 n", Inch, 300.0),
        ("100 kg", Metric, 100.0 * KILOGRAM_FORCE_N),
        ("100 kgf", Inch, 100.0 * KILOGRAM_FORCE_N),
        ("+300 N", Inch, 300.0),
        ("3e3 N", Inch, 3000.0),
        ("3E-1 kN", Inch, 300.0),
        ("3 × 10³ N", Inch, 3000.0),
        (".5 kN", Inch, 500.0),
        ("0", Inch, 0.0),
    ] {
        let load = read(text, system, &LOAD).unwrap_or_else(|refusal| panic!("{refusal}"));
        same(load.get::<newton>(), newtons, text);
    }
}

#[test]
fn rates() {
    let pound_per_inch = SpringRate::new::<pound_force_per_inch>(1.0).value;
    for (text, system, newtons_per_metre) in [
        ("1555", Inch, 1555.0 * pound_per_inch),
        ("272.3", Metric, 272_300.0),
        ("1 555 lb/in", Metric, 1555.0 * pound_per_inch),
        ("1555 lbf/in", Metric, 1555.0 * pound_per_inch),
        ("1555 lb/in.", Metric, 1555.0 * pound_per_inch),
        ("1555 lbs per inch", Metric, 1555.0 * pound_per_inch),
        ("1555 LB / IN", Metric, 1555.0 * pound_per_inch),
        ("272.3 N/mm", Inch, 272_300.0),
        ("272,3 n/mm", Inch, 272_300.0),
        ("272.3 kN/m", Inch, 272_300.0),
        ("272300 N/m", Inch, 272_300.0),
        ("27 kgf/mm", Inch, 27_000.0 * KILOGRAM_FORCE_N),
    ] {
        let rate = read(text, system, &RATE).unwrap_or_else(|refusal| panic!("{refusal}"));
        same(rate.get::<newton_per_meter>(), newtons_per_metre, text);
    }
}

#[test]
fn stresses_and_moduli() {
    let psi = POUND_FORCE_N / (0.025_4 * 0.025_4);
    for (text, system, pascals) in [
        ("58 000", Inch, 58_000.0 * psi),
        ("400", Metric, 400.0e6),
        ("58 000 psi", Metric, 58_000.0 * psi),
        ("58 ksi", Metric, 58_000.0 * psi),
        ("58 kpsi", Metric, 58_000.0 * psi),
        ("58000 lb/in²", Metric, 58_000.0 * psi),
        ("58000 lbf/in2", Metric, 58_000.0 * psi),
        ("400 mpa", Inch, 400.0e6),
        ("400 MPA", Inch, 400.0e6),
        ("400 N/mm2", Inch, 400.0e6),
        ("400 N/mm²", Inch, 400.0e6),
    ] {
        let stress = read(text, system, &STRESS).unwrap_or_else(|refusal| panic!("{refusal}"));
        same(stress.get::<pascal>(), pascals, text);
    }
    for (text, system, pascals) in [
        ("11.2e6 psi", Metric, 11.2e6 * psi),
        ("11.2E+6", Inch, 11.2e6 * psi),
        ("11.2 × 10⁶ psi", Inch, 11.2e6 * psi),
        ("11.2 Mpsi", Inch, 11.2e6 * psi),
        ("11 200 000 psi", Inch, 11.2e6 * psi),
        ("78.5 GPa", Inch, 78.5e9),
        ("78 500", Metric, 78.5e9),
        ("78,5 gpa", Metric, 78.5e9),
    ] {
        let modulus = read(text, system, &MODULUS).unwrap_or_else(|refusal| panic!("{refusal}"));
        same(modulus.get::<pascal>(), pascals, text);
    }
}

#[test]
fn plain_numbers() {
    for (text, turns) in [
        ("7 1/4", 7.25),
        ("7-1/4", 7.25),
        ("7¼", 7.25),
        ("7.25", 7.25),
        ("7,25", 7.25),
        ("7 1/4 turns", 7.25),
        ("7 1/3 coils", 7.0 + 1.0 / 3.0),
        ("12", 12.0),
    ] {
        same(read(text, Inch, &TURNS).expect(text), turns, text);
    }
    same(read("1/2", Inch, &DEAD_TURNS).unwrap(), 0.5, "1/2");
    for (text, level) in [
        ("95 %", 0.95),
        ("95%", 0.95),
        ("95", 0.95),
        ("0.95", 0.95),
        ("99,5 %", 0.995),
        ("95 percent", 0.95),
        ("95 per cent", 0.95),
    ] {
        same(read(text, Inch, &LEVEL).expect(text), level, text);
    }
    let warp = read("2 kN·m³", Inch, &WARP_STIFFNESS).unwrap();
    same(crate::quantity::WarpStiffness::si(warp), 2000.0, "2 kN·m³");
}

/// Kind, text, code, position, and the sentence after the text itself.
const REFUSALS: &str = "
load | lb | no-number | 0 | there is no number in it
load | about 5000 | stray-text | 0 | “about” has no place here
load | 5000 lb scant | unknown-unit | 5 | “lb scant” is no unit known here; write lb, kip, N, kN or kgf
load | 5000 stone | unknown-unit | 5 | “stone” is no unit known here; write lb, kip, N, kN or kgf
load | 5000 lb/in | wrong-unit | 5 | “lb/in” is a unit of rate; write lb, kip, N, kN or kgf
load | 5000 mm | wrong-unit | 5 | “mm” is a unit of length; write lb, kip, N, kN or kgf
load | 5 MN | unit-unclear | 2 | “MN” can be milli or mega; write lb, kip, N, kN or kgf
load | 5 mN | unit-unclear | 2 | “mN” can be milli or mega; write lb, kip, N, kN or kgf
load | 24,500 lb | comma-ambiguous | 2 | the comma can be read two ways; write 24 500 lb or 24.500 lb
load | 24,500 | comma-ambiguous | 2 | the comma can be read two ways; write 24 500 or 24.500
load | 1,234,567 N | comma-ambiguous | 1 | the comma can be read two ways; write 1 234 567 N
load | 1,234.5 N | comma-ambiguous | 1 | the comma can be read two ways; write 1 234.5 N
load | 5000 1/2 lb | stray-text | 5 | “1/2” has no place here
load | 5 000 00 lb | two-numbers | 6 | two numbers, 5 000 and 00, with nothing to join them
load | 5000-6000 lb | two-numbers | 5 | two numbers, 5000 and 6000, with nothing to join them
load | -5000 lb | negative | 0 | it cannot be below zero
load | 5e lb | unfinished | 2 | a number is missing after “e”
load | 5e400 | too-many-digits | 2 | too many digits; fourteen before the point and twenty behind it are kept
load | 5 × 10⁹⁹⁹ N | too-many-digits | 6 | too many digits; fourteen before the point and twenty behind it are kept
load | 5000 - | stray-text | 5 | “-” has no place here
load | 5000 lb.. | unknown-unit | 5 | “lb..” is no unit known here; write lb, kip, N, kN or kgf
load | 9e9 lb | too-large | 0 | a load is at most 2 248 000 lb
stress | 400 mPa | unit-unclear | 4 | “mPa” can be milli or mega; write psi, ksi, Mpsi, MPa, N/mm², GPa, kN/mm² or kgf/mm²
rate | 0 lb/in | too-small | 0 | a rate is at least 0.02 lb/in
turns | 7 5/4 | fraction-above-one | 2 | the fraction is more than a whole; did you mean 8 1/4?
turns | 7 % | wrong-unit | 2 | “%” is a unit of share; write a plain number
turns | 7. | unfinished | 1 | a number is missing after “.”
turns | 7 - | stray-text | 2 | “-” has no place here
level | 40 % | too-small | 0 | a decision level is at least 50 %
level | 100 % | too-large | 0 | a decision level is at most 99.99 %
";

#[test]
fn refusals() {
    let mut count = 0;
    for line in REFUSALS.lines().filter(|line| !line.is_empty()) {
        let cells: Vec<&str> = line.split(" | ").collect();
        let [kind, text, code, position, sentence] = cells[..] else { panic!("{line}") };
        let refusal = match kind {
            "load" => read(text, Inch, &LOAD).err(),
            "rate" => read(text, Inch, &RATE).err(),
            "stress" => read(text, Inch, &STRESS).err(),
            "turns" => read(text, Inch, &TURNS).err(),
            "level" => read(text, Inch, &LEVEL).err(),
            other => panic!("no kind is called {other}"),
        };
        let refusal = refusal.expect(text);
        assert_eq!(
            (refusal.code(), refusal.position().to_string(), refusal.to_string()),
            (code, position.to_owned(), format!("{text} — {sentence}"))
        );
        count += 1;
    }
    assert_eq!(count, 30);
    assert_eq!(read("", Inch, &LOAD).unwrap_err().code(), "empty");
}

#[test]
fn what_is_offered_reads_as_meant() {
    let refusal = read("24,500 lb", Metric, &LOAD).unwrap_err();
    assert_eq!(refusal.example(), "24 500 lb");
    let load = read(refusal.example(), Metric, &LOAD).unwrap();
    same(load.get::<pound_force>(), 24_500.0, refusal.example());
}

#[test]
fn units_spelt_out() {
    assert_eq!(spell_unit(" 5000 ", Inch, &LOAD).as_deref(), Some("5000 lb"));
    assert_eq!(spell_unit("24 500", Metric, &LOAD).as_deref(), Some("24 500 N"));
    assert_eq!(spell_unit("11.2e6", Inch, &MODULUS).as_deref(), Some("11.2e6 psi"));
    assert_eq!(spell_unit("272,3", Metric, &RATE).as_deref(), Some("272,3 N/mm"));
    assert_eq!(spell_unit("5000 lb", Metric, &LOAD), None);
    assert_eq!(spell_unit("24,500", Metric, &LOAD), None);
    assert_eq!(spell_unit("95", Inch, &LEVEL), None);
    assert_eq!(spell_unit("7 1/4", Inch, &TURNS), None);
}

/// What a text says, whatever the kind: an accepted one has a figure, lies within the bound,
/// and says the same with its unit spelt out, in either system.
fn makes_sense<K: Readable>(text: &str, system: System, bound: &'static Bound<K>) {
    match read(text, system, bound) {
        Ok(value) => {
            assert!(text.chars().any(char::is_numeric), "{text:?}");
            assert!(bound.check(value).is_ok(), "{text:?}");
            if let Some(spelt) = spell_unit(text, system, bound) {
                for system in [Inch, Metric] {
                    let again = read(&spelt, system, bound).map(K::si);
                    assert_eq!(again, Ok(K::si(value)), "{text:?} → {spelt:?}");
                }
            }
        }
        Err(refusal) => {
            assert!(refusal.position() <= text.chars().count(), "{text:?}");
            assert!(!refusal.to_string().is_empty() && !refusal.code().is_empty());
        }
    }
}

fn near_quantities() -> impl Strategy<Value = String> {
    let pieces = [
        "1", "24", "500", "000", "7", "0", " ", " ", "\u{202f}", ".", ",", "/", "-", "+", "e", "6",
        "%", "lb", "kip", "N", "kN", "mN", "lb/in", "N/mm", "psi", "MPa", "×", "10", "⁶", "¼",
        "turns", "²", "in",
    ];
    prop::collection::vec(prop::sample::select(pieces.to_vec()), 0..8)
        .prop_map(|pieces| pieces.concat())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn any_text(text in "\\PC{0,20}", metric: bool) {
        let system = if metric { Metric } else { Inch };
        makes_sense(&text, system, &LOAD);
        makes_sense(&text, system, &TURNS);
    }

    #[test]
    fn any_near_quantity(text in near_quantities(), metric: bool) {
        let system = if metric { Metric } else { Inch };
        makes_sense(&text, system, &LOAD);
        makes_sense(&text, system, &RATE);
        makes_sense(&text, system, &MODULUS);
        makes_sense(&text, system, &TURNS);
        makes_sense(&text, system, &LEVEL);
    }

    /// What is shown reads back within the digits shown: half a unit of the fourth, or of the third
    /// where a force is below a thousand, and of any stress.
    #[test]
    fn what_is_written_reads_back(newtons in LOAD.any_si(), rate in RATE.any_si(), stress in STRESS.any_si()) {
        for system in [Inch, Metric] {
            let near = |found: f64, exact: f64, part: f64| (found - exact).abs() <= part * exact;
            let (number, _) = shown::<Force>(Force::from_si(newtons), system);
            let part = if number < 1000.0 { 5e-3 } else { 5e-4 };
            let text = write::<Force>(Force::from_si(newtons), system);
            prop_assert!(near(read(&text, Inch, &LOAD).unwrap().value, newtons, part), "{text}");
            let text = write::<SpringRate>(SpringRate::from_si(rate), system);
            prop_assert!(near(read(&text, Inch, &RATE).unwrap().value, rate, 5e-4), "{text}");
            let text = write::<Stress>(Stress::from_si(stress), system);
            prop_assert!(near(read(&text, Inch, &STRESS).unwrap().value, stress, 5e-3), "{text}");
        }
    }
}

#[test]
fn the_units_agree_with_the_types() {
    for (text, si) in [
        ("1 kN", Force::new::<kilonewton>(1.0).value),
        ("1 lb", Force::new::<pound_force>(1.0).value),
    ] {
        same(read(text, Inch, &LOAD).unwrap().value, si, text);
    }
    for (text, si) in [
        ("1 psi", crate::quantity::Pressure::new::<pound_force_per_square_inch>(1.0).value),
        ("1 ksi", crate::quantity::Pressure::new::<kip_force_per_square_inch>(1.0).value),
        ("1 GPa", crate::quantity::Pressure::new::<gigapascal>(1.0).value),
    ] {
        same(read(text, Inch, &STRESS).unwrap().value, si, text);
    }
}

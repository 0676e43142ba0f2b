//! What the build made of the files.

use coilnest::material::{Presetting, Steel, Strength, StrengthError};
use coilnest::measured::TapeClass;
use coilnest::quantity::{Length, Pressure, unit};
use coilnest::sizing::Series;
use coilnest_tables::{DIAMETERS, ROWS, SIZES, STRENGTHS, TABLES};
use std::collections::BTreeSet;
use std::path::Path;

#[test]
fn the_steel_for_a_job_that_names_none_stands_first() {
    assert_eq!(TABLES.steels[0].id(), "unknown-hot-wound");
    assert!(TABLES.steels[0].shear_doubt().is_some());
}

#[test]
fn every_constant_has_its_row_in_a_file() {
    let steels = TABLES.steels.iter().map(Steel::id);
    let ids: BTreeSet<&str> = steels
        .chain(TABLES.tape_classes.iter().map(TapeClass::id))
        .chain(STRENGTHS.iter().map(Strength::id))
        .chain(SIZES.iter().map(Series::id))
        .collect();
    let rows: BTreeSet<&str> = ROWS.iter().map(|row| row.id).collect();
    assert_eq!(rows.len(), ROWS.len(), "an id stands twice");
    assert_eq!(ids.difference(&rows).collect::<Vec<_>>(), Vec::<&&str>::new());
    for row in ROWS {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(row.file);
        let text = std::fs::read_to_string(&file).unwrap();
        assert!(
            text.contains(&format!("id = \"{}\"", row.id)),
            "{} is not in {}",
            row.id,
            row.file
        );
    }
    for steel in TABLES.steels {
        let row = coilnest_tables::row(steel.id()).unwrap();
        assert_eq!(steel.row(), Some(row.to_string().as_str()));
    }
}

#[test]
fn a_strength_is_held_from_its_thinnest_to_its_thickest_bar_and_falls() {
    for strength in STRENGTHS {
        let Some((least, most)) = strength.sizes() else { continue };
        let refused = |bar: Length| {
            let refusal = strength.tensile(bar).unwrap_err();
            matches!(refusal, StrengthError::Outside { bar: named, .. } if named == bar)
        };
        assert!(refused(0.999_99 * least) && refused(1.000_01 * most), "{}", strength.id());
        let mut last = f64::INFINITY;
        for step in 0..=1000 {
            let bar = least + f64::from(step) / 1000.0 * (most - least);
            let tensile = strength.tensile(bar).unwrap().value.value;
            assert!(0.0 < tensile && tensile < last, "{} at {} m", strength.id(), bar.value);
            last = tensile;
            if let Ok(allowed) = strength.allowable(bar, Presetting::AsWound) {
                assert!(allowed.stress.value.value < tensile);
            }
        }
    }
}

/// The bounds as the table writes them, in the unit that it writes them in.
#[test]
fn a_bound_in_its_own_unit_is_inside() {
    for (id, size) in [
        ("shigley-a401", 0.375),
        ("shigley-a229", 0.5),
        ("shigley-a228", 0.004),
        ("shigley-302", 0.1),
    ] {
        let strength = coilnest_tables::strength(id).unwrap();
        let bar = |number: f64| Length::new::<unit::inch>(number);
        assert!(strength.tensile(bar(size)).is_ok(), "{id}");
        assert!(strength.tensile(Length::new::<unit::millimeter>(25.4 * size)).is_ok(), "{id}");
    }
}

/// Steels weigh from 7.6 to 8.0 kg/dm³ (common practice, no source).
#[test]
fn every_steel_but_one_says_how_heavy_it_is() {
    let without: Vec<&str> =
        TABLES.steels.iter().filter(|it| it.density().is_none()).map(Steel::id).collect();
    assert_eq!(without, ["mh-stainless-17-7ph"]);
    for density in TABLES.steels.iter().filter_map(Steel::density) {
        let heavy = density.value.get::<unit::kilogram_per_cubic_meter>();
        assert!((7600.0..8000.0).contains(&heavy), "{heavy}: {}", density.source);
    }
}

#[test]
fn every_steel_says_its_strength_or_where_it_stands() {
    let bar = Length::new::<unit::millimeter>(3.0);
    for steel in TABLES.steels {
        match steel.strength(bar) {
            Ok(tensile) => {
                let mpa = tensile.value.get::<unit::megapascal>();
                assert!((1000.0..2500.0).contains(&mpa), "{}: {mpa}", steel.id());
                assert!(steel.allowable_static(bar, Presetting::AsWound).is_ok(), "{}", steel.id());
            }
            Err(refusal) => {
                let sentence = refusal.to_string();
                assert!(sentence.contains("; look it up in "), "{}: {sentence}", steel.id());
            }
        }
    }
    let held = TABLES.steels.iter().filter(|steel| steel.strength(bar).is_ok()).count();
    assert!(held >= 12, "{held}");
    // Nobody knows the steel: nothing is made up.
    let unknown = TABLES.steels[0].strength(Length::new::<unit::millimeter>(30.0));
    assert!(matches!(unknown, Err(StrengthError::LookUp { .. })));
}

#[test]
fn authorities_on_one_wire_stand_beside_each_other() {
    let steel = TABLES.steel("shigley-oil-tempered-a229").unwrap();
    let bar = Length::new::<unit::millimeter>(10.0);
    let each: Vec<Pressure> =
        steel.strengths().iter().map(|it| it.tensile(bar).unwrap().value).collect();
    let [shigley, norton] = each[..] else { panic!("{each:?}") };
    assert!((shigley - norton).abs() > Pressure::new::<unit::megapascal>(1.0));
    assert_eq!(steel.strength(bar).unwrap().value, shigley);
}

#[test]
fn moduli_that_fall_with_size_hold_for_their_own_sizes_alone() {
    let fits = |id: &str, size: f64| {
        TABLES.steel(id).unwrap().fits(Length::new::<unit::inch>(size)).map_err(|it| it.to_string())
    };
    for wire in ["shigley-music-a228", "shigley-hard-drawn-a227"] {
        assert!(fits(&format!("{wire}-to-0.125"), 0.125).is_ok());
        assert!(fits(&format!("{wire}-to-0.125"), 0.0631).is_ok());
        assert!(fits(&format!("{wire}-over-0.125"), 0.1251).is_ok());
        assert!(fits(&format!("{wire}-to-0.125"), 0.063).is_err());
        assert!(fits(&format!("{wire}-to-0.125"), 0.1251).is_err());
        assert!(fits(&format!("{wire}-over-0.125"), 0.125).is_err());
    }
    assert_eq!(fits("shigley-music-a228-over-0.125", 0.250), Ok(()));
    assert_eq!(
        fits("shigley-music-a228-over-0.125", 0.256),
        Err("a bar of 6.5024 mm; one over 3.175 mm and up to 6.35 mm was expected: the moduli of Music wire A228, over 0.125 in (Shigley) are for these; take the row of its size".into())
    );
    assert_eq!(fits("en-10089", 2.0), Ok(()));
}

#[test]
fn the_diameter_bands_adjoin_and_allow_more_as_the_coil_grows() {
    for (band, next) in DIAMETERS.iter().zip(DIAMETERS.iter().skip(1)) {
        assert_eq!(band.up_to, next.over);
        let pairs = band.half_widths.iter().flatten().zip(next.half_widths.iter().flatten());
        assert!(pairs.into_iter().all(|(this, next)| this <= next), "over {} m", next.over.value);
    }
    for band in DIAMETERS {
        let [one, two, three] = band.half_widths;
        assert!(
            one.iter().zip(two).zip(three).all(|((one, two), three)| *one < two && two < three)
        );
    }
}

/// ISO 3 derives its numbers from the powers of ten's roots and rounds them by no more than 1.26 % (its
/// clause on rounding, from memory).
#[test]
fn preferred_numbers_lie_near_the_roots_of_ten() {
    for (id, roots) in [("iso-3-r20", 20), ("iso-3-r40", 40)] {
        let sizes = coilnest_tables::sizes(id).unwrap().sizes();
        assert_eq!(Ok(sizes.len()), usize::try_from(2 * roots + 1), "{id}");
        for (power, size) in (0..).zip(sizes) {
            let number = size.get::<unit::millimeter>();
            let off = number.powi(roots) / 10_f64.powi(power);
            let most = 1.0127_f64.powi(roots);
            assert!(off < most && off > 1.0 / most, "{id}: {number} mm");
        }
    }
}

#[test]
fn wire_sizes_span_those_whose_strength_is_held() {
    let wire = coilnest_tables::sizes("en-10270-1-wire").unwrap();
    let strength = coilnest_tables::strength("en-10270-1-sm-dm").unwrap();
    assert!(wire.sizes().iter().all(|size| strength.tensile(*size).is_ok()));
    let ends = (wire.sizes()[0], *wire.sizes().last().unwrap());
    let (least, most) = strength.sizes().unwrap();
    assert!((ends.0 - least).abs() < 1e-9 * least && (ends.1 - most).abs() < 1e-9 * most);
}

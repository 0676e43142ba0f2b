//! What documents print, and what coilnest computes.

use coilnest_tests::published::{Document, Tally, compare, load};
use std::path::Path;

#[test]
fn printed_values_agree() {
    let documents = load(&Path::new(env!("CARGO_MANIFEST_DIR")).join("published")).unwrap();
    let tally = compare(&documents);
    println!("{} values of {} documents agree", tally.agree, documents.len());
    for known in &tally.deviate {
        println!("known to deviate: {known}");
    }
    assert!(tally.failures.is_empty(), "\n{}", tally.failures.join("\n"));
}

/// The comparison itself, on one coil of rate 39.0625 N/mm by hand: 80e9 · 1e-8 / (8 · 5.12e-4 · 5).
fn tally_of(printed: &str) -> Result<Tally, String> {
    let text = format!(
        "title = 'A book'\n[[case]]\nname = 'a coil'\nplace = 'p. 1'\nknown = 'page'\n\
         given = {{ subject = 'coil', bar = '10 mm', mean = '80 mm', active-turns = 5.0, shear-modulus = '80 GPa' }}\n\
         [case.printed]\n{printed}"
    );
    let document: Document = toml::from_str(&text).map_err(|error| error.to_string())?;
    Ok(compare(&[document]))
}

#[test]
fn a_digit_too_far_fails() {
    for (printed, agrees) in [
        ("rate = '39.1 N/mm'", true),
        ("rate = '39.0 N/mm'", false),
        ("rate = '39.06 N/mm'", true),
        ("rate = '39.07 N/mm'", false),
        ("rate = { text = '39.0 N/mm', within = '0.2 %', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '0.1 %', because = 'a reason' }", false),
        ("rate = { text = '39.0 N/mm', within = '0.1 N/mm', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '1 last digits', because = 'a reason' }", true),
        ("rate = { text = '39.0 N/mm', within = '0.2 %', because = ' ' }", false),
        ("rate = { text = '39.1 N/mm', because = 'nothing to note' }", false),
        ("solid = '60 mm'", false),
        ("loads = ['1 N']", false),
        ("", false),
    ] {
        let tally = tally_of(printed).unwrap();
        assert_eq!(
            (tally.agree == 1, tally.failures.is_empty()),
            (agrees, agrees),
            "{printed}: {tally:?}"
        );
    }
}

#[test]
fn a_known_deviation_is_counted_and_fails_once_it_agrees() {
    let still =
        "index = '8'\nrate = { text = '38.0 N/mm', deviates = true, because = 'a misprint' }";
    let tally = tally_of(still).unwrap();
    assert_eq!((tally.agree, tally.deviate.len(), tally.failures.len()), (1, 1, 0), "{tally:?}");
    let tally = tally_of(&still.replace("38.0", "39.1")).unwrap();
    assert!(tally.failures[0].contains("agrees now; it was listed as: a misprint"), "{tally:?}");
}

#[test]
fn a_case_says_how_it_is_known_and_in_which_unit() {
    assert!(tally_of("rate = '39.1 furlongs'").is_err());
    assert!(tally_of("colour = '39.1 N/mm'").is_err());
    let text = "title = 'A book'\n[[case]]\nname = 'a'\nplace = 'p. 1'\nknown = 'hearsay'\n\
                given = { subject = 'unit', one = 'inch' }\nprinted = { in-si = '0.0254 m' }";
    assert!(toml::from_str::<Document>(&text.replace("hearsay", "page")).is_ok());
    assert!(toml::from_str::<Document>(text).is_err());
    assert!(toml::from_str::<Document>(&text.replace("known = 'hearsay'\n", "")).is_err());
    assert!(toml::from_str::<Document>(&text.replace("place = 'p. 1'\n", "")).is_err());
}

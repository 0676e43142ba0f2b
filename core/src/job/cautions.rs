//! What can hurt somebody at this work, and whose word goes before this program's.

use super::report::{Caution, Section};

/// The cautions that bind whenever a nest is handled or measured.
pub(crate) fn all() -> Vec<Caution> {
    let mut all = vec![caution(
        "stored-energy",
        Section::Nest,
        "A compressed nest lets go at once and without warning. Take the load off, and see that the coils are at their free height, before a tie, strap or pin is loosened.",
        "29 CFR 1910.147(d)(5), stored energy (read at the source)",
    )];
    all.extend(measure());
    all
}

/// Those of them that bind while coils are measured.
pub(crate) fn measure() -> Vec<Caution> {
    vec![
        caution(
            "raised-load",
            Section::Measure,
            "Nobody works under what only a jack holds. Block and chock first, on firm and level ground.",
            "29 CFR 1926.305 and 1910.244(a), jacks (read at the source); HSE, Working under vehicles (read at the source)",
        ),
        caution(
            "cracked-coil",
            Section::Measure,
            "A coil that is cracked, broken, nicked or deeply pitted goes to scrap whatever its height. Never cut, heat, weld or hammer one that is to go back.",
            "US Army TM 55-203, truck springs (read at the source); common practice",
        ),
        caution(
            "makers-word",
            Section::All,
            "The maker's manual, local codes and the judgement of a licensed or qualified person go before anything that stands here.",
            "common practice, no source",
        ),
    ]
}

/// The cautions that bind when a frame is raised, packed and let down.
pub(crate) fn level() -> Vec<Caution> {
    let caution = |code, text, source| caution(code, Section::Level, text, source);
    vec![
        caution(
            "jack-and-block",
            "Before you jack: chock the wheels that stay down, jack at the maker's points on firm and level ground, and set blocks or stands under the frame at once. Nobody reaches under what only a jack holds.",
            "29 CFR 1926.305 and 1910.244(a), jacks (read at the source); HSE, Working under vehicles (read at the source)",
        ),
        caution(
            "unload-the-nest",
            "Before a shim goes in or a coil comes out: the nest stands at its free height and nothing presses on it. A compressed nest lets go at once and without warning; no hand goes between its seats.",
            "29 CFR 1910.147(d)(5), stored energy (read at the source)",
        ),
        caution(
            "shim-within-the-manual",
            "Where shims may go, how thick, and how they are kept from creeping out is for the maker's manual and the rules of the line. What stands here is arithmetic. It is no permission to run.",
            "US Army TM 55-203, para 4-2, shims under truck springs (read at the source); common practice",
        ),
    ]
}

/// The cautions that bind when a coil is replaced or ordered.
pub(crate) fn replace() -> Vec<Caution> {
    let caution = |code, text, source| caution(code, Section::Replace, text, source);
    vec![
        caution(
            "no-heat",
            "A coil that does not fit is not made to fit: never cut, grind, heat, weld or hammer one that is to carry a load. Heat undoes the temper, and a nick is where a crack begins.",
            "UK MOT inspection manual, appendix on repairs (quoted elsewhere); common practice",
        ),
        caution(
            "look-for-cracks",
            "Look over the whole bar of each coil, the new one too, for cracks, nicks and rust pits before it goes in. No figure here sees them.",
            "US Army TM 55-203, truck springs (read at the source); common practice",
        ),
        caution(
            "who-approves",
            "Whether a spring may stand in for another is for the vehicle's maker, the rules of the line and a licensed or qualified person. What stands here is a comparison of figures.",
            "common practice, no source",
        ),
    ]
}

fn caution(
    code: &'static str,
    section: Section,
    text: &'static str,
    source: &'static str,
) -> Caution {
    Caution { code: code.into(), text: text.into(), source: source.into(), section }
}

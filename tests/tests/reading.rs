//! Tape readings: every sixty-fourth there and back, and a million texts that nobody should write.

use approx::relative_eq;
use coilnest::bounds::{self, Bound};
use coilnest::quantity::{Length, System};
use coilnest::reading::{Reading, Step, write_inch};

/// `15 3/8`, in lowest terms.
fn mixed(sixty_fourths: u32) -> String {
    let (whole, mut above, mut below) = (sixty_fourths / 64, sixty_fourths % 64, 64);
    while above > 0 && above.is_multiple_of(2) {
        (above, below) = (above / 2, below / 2);
    }
    match (whole, above) {
        (whole, 0) => format!("{whole}"),
        (0, above) => format!("{above}/{below}"),
        (whole, above) => format!("{whole} {above}/{below}"),
    }
}

/// Whether a mark is exactly so many sixty-fourths of an inch, 127/320 mm each.
fn is_exactly(reading: &Reading, sixty_fourths: u32) -> bool {
    let mark = reading.mark();
    match (mark.numer(), mark.denom()) {
        (Some(above), Some(below)) => above * 320 == below * 127 * u128::from(sixty_fourths),
        _ => false,
    }
}

#[test]
fn every_sixty_fourth_to_forty_inches_is_itself_again() {
    for n in 1..=40 * 64 {
        let text = mixed(n);
        let parse = |text: &str, system| Reading::parse(text, system, &bounds::READING).unwrap();
        let reading = parse(&text, System::Inch);
        assert!(is_exactly(&reading, n), "{text}: {reading:?}");
        assert_eq!(reading.to_string(), format!("{text} in"));
        assert_eq!(write_inch(reading.length(), Step::SixtyFourth), format!("{text} in"));
        assert_eq!(parse(&reading.to_string(), System::Metric), reading, "{text}");

        let (feet, rest) = (n / 768, n % 768);
        let by_foot = match rest {
            0 => format!("{feet}'"),
            rest => format!("{feet}' {}\"", mixed(rest)),
        };
        let inches = f64::from(n) / 64.0;
        let others = [
            by_foot,
            format!("{text}\""),
            text.replace(' ', "-"),
            format!("{inches:.6} in"),
            format!("{:.6} mm", inches * 25.4),
            format!("{:.9} m", inches * 0.025_4).replace('.', ","),
        ];
        for other in others {
            assert!(is_exactly(&parse(&other, System::Inch), n), "{other}");
        }
    }
}

#[test]
fn leans_come_back_with_their_mark() {
    for n in (1..=40 * 64).step_by(7) {
        for lean in ["scant", "full"] {
            let text = format!("{} in {lean}", mixed(n));
            let reading = Reading::parse(&text, System::Inch, &bounds::READING).unwrap();
            assert!(is_exactly(&reading, n), "{text}");
            assert_eq!(reading.to_string(), text);
        }
    }
}

/// A million texts, half of them of the pieces of which readings are made, half of any characters.
/// Whatever is accepted means what a second, simpler reader makes of it.
#[test]
fn a_million_random_texts_neither_panic_nor_pass_as_readings_when_they_are_none() {
    let mut random = Random(0x5EED_0FC0_1115);
    let (mut accepted, mut refused) = (0_u32, 0_u32);
    for turn in 0..1_000_000_u32 {
        let text = if turn.is_multiple_of(2) { random.pieces() } else { random.characters() };
        let system = if random.below(2) == 0 { System::Inch } else { System::Metric };
        let bound: &'static Bound<Length> = match random.below(4) {
            0 => &bounds::RAISE,
            _ => &bounds::READING,
        };
        let Ok(reading) = Reading::parse(&text, system, bound).inspect_err(|refusal| {
            assert!(refusal.position() <= text.chars().count(), "{text:?}: {refusal:?}");
            assert!(!refusal.to_string().is_empty());
        }) else {
            refused += 1;
            continue;
        };
        accepted += 1;
        let length = reading.length();
        assert!(bound.check(length).is_ok(), "{text:?}: {reading:?}");
        let meant = meant_mm(&text, system).unwrap_or(f64::NAN);
        let found = length.get::<coilnest::quantity::unit::millimeter>();
        assert!(
            relative_eq!(found, meant, max_relative = 1e-12),
            "{text:?}: {found} mm, not {meant} mm"
        );
        let written = reading.to_string();
        assert_eq!(
            Reading::parse(&written, system, bound).as_ref(),
            Ok(&reading),
            "{text:?}: {written}"
        );
    }
    println!("{accepted} accepted, {refused} refused");
    assert!(accepted > 20_000 && refused > 500_000, "{accepted} accepted, {refused} refused");
}

/// `SplitMix64`: the same texts on every run.
struct Random(u64);

impl Random {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    fn below(&mut self, bound: u64) -> u64 {
        self.next() % bound
    }

    fn pieces(&mut self) -> String {
        const PIECES: &[&str] = &[
            "15",
            "3/8",
            "7",
            "0",
            "1",
            "12",
            "63/64",
            "17/16",
            "1/3",
            "390,5",
            "15.375",
            ".5",
            "1 200",
            "/",
            "-",
            "–",
            "−",
            "+",
            ".",
            ",",
            "'",
            "\"",
            "′",
            "″",
            "’",
            "”",
            "''",
            "⅜",
            "½",
            "⅓",
            "³⁄₈",
            "¹⁵⁄₁₆",
            " ",
            " ",
            " ",
            "\u{202f}",
            "\u{a0}",
            "in",
            "in.",
            "inch",
            "ft",
            "feet",
            "mm",
            "cm",
            "m",
            "metres",
            "IN",
            "MM",
            "scant",
            "shy",
            "light",
            "full",
            "Heavy",
            "plus",
            "just under",
            "just over",
            "just",
            "short",
            "long",
            "lb",
            "e3",
            "99999999999999999999",
            "007",
        ];
        let count = 1 + self.below(6);
        let mut text = String::new();
        for _ in 0..count {
            let index = usize::try_from(self.below(PIECES.len() as u64)).unwrap_or_default();
            text.push_str(PIECES.get(index).unwrap_or(&""));
            if self.below(2) == 0 {
                text.push(' ');
            }
        }
        text
    }

    /// Digits now and then, so that not every text is refused for having none.
    fn characters(&mut self) -> String {
        let count = self.below(12);
        let any = |random: &mut Self| match random.below(4) {
            0 => char::from(b'0' + u8::try_from(random.below(10)).unwrap_or_default()),
            1 => char::from(b' ' + u8::try_from(random.below(95)).unwrap_or_default()),
            2 => u32::try_from(0x2000 + random.below(0x200))
                .ok()
                .and_then(char::from_u32)
                .unwrap_or(' '),
            _ => {
                u32::try_from(random.below(0x11_0000)).ok().and_then(char::from_u32).unwrap_or(' ')
            }
        };
        (0..count).map(|_| any(self)).collect()
    }
}

/// What a text means in millimetres: numbers and units in turn, leaning words left out. It admits
/// more than a reading may be, and nothing that has no meaning.
fn meant_mm(text: &str, system: System) -> Option<f64> {
    let plain = plain(text);
    let mut words: Vec<&str> = plain.split_whitespace().collect();
    words.retain(|word| !LEANS.contains(word));
    let negative = words.first() == Some(&"-");
    words.retain(|word| !matches!(*word, "-" | "+"));

    let (mut sum, mut group, mut after_feet) = (0.0, Vec::new(), false);
    for word in words {
        match UNITS.iter().find(|(name, _)| *name == word) {
            Some((_, size)) => {
                sum += amount(&group)? * size;
                after_feet = word == "ft" || word == "foot" || word == "feet";
                group.clear();
            }
            None => group.push(word),
        }
    }
    if !group.is_empty() {
        let bare = if after_feet || system == System::Inch { 25.4 } else { 1.0 };
        sum += amount(&group)? * bare;
    }
    Some(if negative { -sum } else { sum })
}

const LEANS: &[&str] = &[
    "scant", "shy", "light", "weak", "minus", "just", "under", "over", "full", "heavy", "strong",
    "plus", "proud",
];

const UNITS: &[(&str, f64)] = &[
    ("in", 25.4),
    ("inch", 25.4),
    ("inches", 25.4),
    ("ft", 304.8),
    ("foot", 304.8),
    ("feet", 304.8),
    ("mm", 1.0),
    ("cm", 10.0),
    ("m", 1000.0),
    ("metres", 1000.0),
];

/// `15`, `15 3/8`, `3/8`, or thousands in groups.
fn amount(group: &[&str]) -> Option<f64> {
    let (last, before) = group.split_last()?;
    let digits = before.concat();
    match last.split_once('/') {
        Some((above, below)) => {
            let whole = if digits.is_empty() { 0.0 } else { digits.parse::<f64>().ok()? };
            Some(whole + above.parse::<f64>().ok()? / below.parse::<f64>().ok()?)
        }
        None if before.is_empty() || last.split('.').next()?.len() == 3 => {
            format!("{digits}{last}").parse().ok()
        }
        None => None,
    }
}

fn ends_in_unit(plain: &str) -> bool {
    let last = plain.rsplit(' ').next();
    UNITS.iter().any(|(name, _)| last == Some(name))
}

/// The text in plain characters, words and numbers apart.
fn plain(text: &str) -> String {
    const VULGAR: &[(char, &str)] = &[
        ('½', "1/2"),
        ('¼', "1/4"),
        ('¾', "3/4"),
        ('⅛', "1/8"),
        ('⅜', "3/8"),
        ('⅝', "5/8"),
        ('⅞', "7/8"),
    ];
    let mut plain = String::new();
    let mut before = ' ';
    for c in text.to_lowercase().chars() {
        let raised = "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().position(|digit| digit == c);
        let lowered = "₀₁₂₃₄₅₆₇₈₉".chars().position(|digit| digit == c);
        let feet_before = matches!(before, '\'' | '′' | '’' | '‘' | 'ʹ' | 'ʼ' | '´' | '`');
        match c {
            _ if raised.is_some() => {
                let parted = if "⁰¹²³⁴⁵⁶⁷⁸⁹".contains(before) { "" } else { " " };
                plain.push_str(parted);
                plain.push_str(&raised.unwrap_or_default().to_string());
            }
            _ if lowered.is_some() => plain.push_str(&lowered.unwrap_or_default().to_string()),
            '⁄' | '∕' => plain.push('/'),
            '-' | '‐' | '‑' | '‒' | '–' | '—' | '−' => plain.push_str(" - "),
            '+' => plain.push_str(" + "),
            '"' | '″' | '”' | '“' | '‟' | 'ʺ' | '＂' => plain.push_str(" in "),
            '\'' | '′' | '’' | '‘' | 'ʹ' | 'ʼ' | '´' | '`' if feet_before && c == before =>
            {
                plain.truncate(plain.len() - " ft ".len());
                plain.push_str(" in ");
            }
            '\'' | '′' | '’' | '‘' | 'ʹ' | 'ʼ' | '´' | '`' => plain.push_str(" ft "),
            ',' => plain.push_str(if before.is_alphabetic() { " ." } else { "." }),
            // The stop of "in." is no decimal point.
            '.' if before.is_alphabetic() && ends_in_unit(&plain) => plain.push(' '),
            c => match VULGAR.iter().find(|(vulgar, _)| *vulgar == c) {
                Some((_, fraction)) => plain.extend([" ", fraction, " "]),
                None if c.is_alphabetic() != before.is_alphabetic() => plain.extend([' ', c]),
                None => plain.push(c),
            },
        }
        before = c;
    }
    plain
}

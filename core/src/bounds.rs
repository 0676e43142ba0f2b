//! Every limit on an input, once: from its row come the check, the sentence and the random values
//! of the property tests.
//!
//! The limits only keep out slips of the finger, such as a free height of 138 in for 13 7/8: they
//! are common sense, no source. What a spring ought to be like is for the cautions to say.

pub use crate::quantity::Bound;
use crate::quantity::unit::{INCH_M, POUND_FORCE_N};
use crate::quantity::{
    Force, Kind, Length, Modulus, Row, Share, Side, SpringRate, Stress, System, Turns,
    WarpStiffness,
};
use crate::say::{Message, Reader, Say};

/// A value outside the limits of its input.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("{}", self.say(System::Metric))]
pub struct OutOfBounds {
    si: f64,
    row: &'static Row,
}

impl<K: Kind> Bound<K> {
    /// Whether a value may stand for this input.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] if it is below the least, above the most, or not a number.
    pub fn check(&'static self, value: K::Value) -> Result<(), OutOfBounds> {
        let si = K::si(value);
        match self.row.side(si) {
            Side::Within => Ok(()),
            Side::Below | Side::Above => Err(OutOfBounds { si, row: &self.row }),
        }
    }
}

impl OutOfBounds {
    /// The name of the input in words.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.row.name()
    }

    /// A text that would do.
    #[must_use]
    pub fn example(&self, system: System) -> &'static str {
        self.row.example(system)
    }
}

impl Say for OutOfBounds {
    fn say_to(&self, reader: Reader<'_>) -> Message {
        let expected = self.row.sentence(reader.system);
        Message { read: self.row.limit(self.si, reader.system), expected, ..Message::default() }
    }
}

/// Declares each bound with its kind, name, limits in SI units, and an example in either system.
macro_rules! bounds {
    ($($(#[$doc:meta])+ $id:ident: $kind:ty, $name:literal, $limits:expr, $examples:expr;)+) => {
        $($(#[$doc])+ pub static $id: Bound<$kind> = Bound::new($name, $limits, $examples);)+
    };
}

bounds! {
    /// A tape reading of anything upright.
    READING: Length, "a reading", [INCH_M / 64.0, 3.048], ["13 7/8", "352.5"];
    /// A free height, and the least and most that a book allows it.
    FREE_HEIGHT: Length, "a free height", [INCH_M / 64.0, 3.048], ["13 15/16", "354"];
    /// The height of a coil or nest under load, or at which a question is asked.
    HEIGHT: Length, "a height", [INCH_M / 64.0, 3.048], ["11 1/2", "292"];
    /// A solid height.
    SOLID_HEIGHT: Length, "a solid height", [INCH_M / 64.0, 3.048], ["7 1/8", "181"];
    /// The diameter of a bar or wire.
    BAR: Length, "a bar", [INCH_M / 64.0, 0.152_4], ["1 1/16", "27"];
    /// An outside, mean or inside diameter of a coil.
    COIL_DIAMETER: Length, "a coil diameter", [INCH_M * 3.0 / 64.0, 1.524], ["7 3/4", "197"];
    /// The bore of a pocket that a coil goes into.
    POCKET: Length, "a bore", [INCH_M * 3.0 / 64.0, 1.524], ["8 1/4", "210"];
    /// The diameter of a post inside a coil.
    POST: Length, "a post", [INCH_M * 3.0 / 64.0, 1.524], ["3 1/2", "90"];
    /// How far a coil may be under or over the book.
    LIMIT: Length, "a limit", [0.0, 0.304_8], ["1/8", "3"];
    /// How far a size may be off, up or down.
    TOLERANCE: Length, "a tolerance", [0.0, 2.0 * INCH_M], ["1/64", "0.4"];
    /// How far a count of turns may be off, up or down.
    TURNS_TOLERANCE: Turns, "a tolerance of the turns", [0.0, 5.0], ["1/8", "0.125"];
    /// The distance between two marks of a tape.
    GRADUATION: Length, "a graduation", [INCH_M / 1000.0, INCH_M], ["1/16", "1"];
    /// The half-width of a tape's error or of how squarely the ends were met.
    TAPE_ERROR: Length, "an error", [0.0, INCH_M], ["1/64", "0.5"];
    /// The thickness of a shim.
    SHIM: Length, "a shim", [0.0, 0.304_8], ["1/8", "3"];
    /// How thick a pad, plate or liner is.
    LAYER: Length, "a thickness", [INCH_M / 1000.0, 0.304_8], ["3/8", "10"];
    /// What is added to the height of a frame for one of its points.
    ADDED: Length, "a height to add", [-3.048, 3.048], ["14 1/2", "370"];
    /// How far a packing raises a seat, or a sunk one lowers it.
    RAISE: Length, "a raised seat", [-0.609_6, 0.609_6], ["3/16", "5"];
    /// How far the ground rises or dips under a support.
    GROUND: Length, "a rise of the ground", [-0.609_6, 0.609_6], ["1/2", "12"];
    /// Where something stands along or across the frame.
    POSITION: Length, "a position", [-30.48, 30.48], ["36", "900"];
    /// How far apart two nests stand.
    APART: Length, "a distance between nests", [0.025_4, 60.96], ["72", "1800"];
    /// A number of turns, total or active.
    TURNS: Turns, "a number of turns", [0.5, 200.0], ["7 1/4", "7.25"];
    /// The turns at the ends that do not deflect.
    DEAD_TURNS: Turns, "a number of dead turns", [0.0, 10.0], ["1 1/2", "1.5"];
    /// A load.
    LOAD: Force, "a load", [0.0, 1.0e7], ["5000 lb", "22 000 N"];
    /// A spring's rate.
    RATE: SpringRate, "a rate", [0.02 * POUND_FORCE_N / INCH_M, 1.0e9], ["1500 lb/in", "260 N/mm"];
    /// How far a load may be off.
    LOAD_TOLERANCE: Force, "a tolerance of the load", [0.0, 1.0e6], ["100 lb", "500 N"];
    /// How far a rate may be off.
    RATE_TOLERANCE: SpringRate, "a tolerance of the rate", [0.0, 1.0e8], ["50 lb/in", "10 N/mm"];
    /// A shear or Young's modulus.
    MODULUS: Modulus, "a modulus", [1.0e6 * POUND_FORCE_N / (INCH_M * INCH_M), 1.0e12], ["11.2e6 psi", "78 500 MPa"];
    /// A stress.
    STRESS: Stress, "a stress", [0.0, 1.0e10], ["95 000 psi", "650 MPa"];
    /// How likely a verdict must be before it is given.
    LEVEL: Share, "a decision level", [0.5, 0.9999], ["95 %", "95 %"];
    /// Room to be left beside a coil.
    CLEARANCE: Length, "a clearance", [0.0, 0.304_8], ["1/16", "1.5"];
    /// The opening between the guides of a box.
    OPENING: Length, "an opening", [INCH_M / 64.0, 3.048], ["8 1/2", "216"];
    /// The width of a box.
    BOX_WIDTH: Length, "a box", [INCH_M / 64.0, 3.048], ["7 7/8", "200"];
    /// The thickness of a liner.
    LINER: Length, "a liner", [INCH_M / 1000.0, 0.152_4], ["1/4", "6"];
    /// What must be left between the height at work and solid.
    RESERVE: Length, "a reserve", [0.0, 3.048], ["1", "25"];
    /// The least factor of safety.
    SAFETY: Turns, "a factor of safety", [0.1, 100.0], ["1.3", "1.3"];
    /// How many are wanted.
    COUNT: Turns, "a quantity", [1.0, 1.0e6], ["8", "8"];
    /// By how much a load or a rate may be off.
    WITHIN: Share, "a tolerance", [0.0, 1.0], ["5 %", "5 %"];
    /// The stiffness of a frame against warping.
    WARP_STIFFNESS: WarpStiffness, "a warp stiffness", [0.0, 1.0e9], ["20 000 000 lb·in³", "1500 N·m³"];
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Readable, read, unit};
    use crate::reading::Reading;

    /// The limits that a sentence names, and the examples, are themselves accepted, in both
    /// systems: nobody is told to write what is then refused.
    #[test]
    fn what_the_sentences_say_is_accepted() {
        fn accepted(
            row: &Row,
            reads: impl Fn(&str, System) -> Result<f64, crate::quantity::Refusal>,
        ) {
            for system in [System::Inch, System::Metric] {
                for text in [row.least(system), row.most(system), row.example(system).to_owned()] {
                    match reads(&text, system) {
                        Ok(si) => assert_eq!(row.side(si), Side::Within),
                        Err(refusal) => panic!("{}: {refusal}", row.name()),
                    }
                }
            }
        }
        fn length(bound: &'static Bound<Length>) {
            accepted(&bound.row, |text, system| {
                Reading::parse(text, system, bound).map(|reading| reading.length().value)
            });
        }
        fn other<K: Readable>(bound: &'static Bound<K>) {
            accepted(&bound.row, |text, system| read(text, system, bound).map(K::si));
        }
        for bound in [
            &READING,
            &FREE_HEIGHT,
            &HEIGHT,
            &SOLID_HEIGHT,
            &BAR,
            &COIL_DIAMETER,
            &POCKET,
            &POST,
            &LIMIT,
            &TOLERANCE,
            &GRADUATION,
            &TAPE_ERROR,
            &SHIM,
            &LAYER,
            &ADDED,
            &RAISE,
            &GROUND,
            &POSITION,
            &APART,
            &CLEARANCE,
            &OPENING,
            &BOX_WIDTH,
            &LINER,
            &RESERVE,
        ] {
            length(bound);
        }
        other(&TURNS);
        other(&DEAD_TURNS);
        other(&TURNS_TOLERANCE);
        other(&LOAD);
        other(&LOAD_TOLERANCE);
        other(&RATE_TOLERANCE);
        other(&RATE);
        other(&MODULUS);
        other(&STRESS);
        other(&LEVEL);
        other(&SAFETY);
        other(&COUNT);
        other(&WITHIN);
        other(&WARP_STIFFNESS);
    }

    #[test]
    fn sentences() {
        for (sentence, text) in [
            (LIMIT.sentence(System::Inch), "a limit between 0 in and 12 in"),
            (RAISE.sentence(System::Metric), "a raised seat between −609.6 mm and 609.6 mm"),
            (GRADUATION.sentence(System::Inch), "a graduation between 0.001 in and 1 in"),
            (TURNS.sentence(System::Inch), "a number of turns between 0.5 and 200"),
            (LEVEL.sentence(System::Metric), "a decision level between 50 % and 99.99 %"),
            (
                RATE.sentence(System::Metric),
                "a rate between 0.003503 N/mm and 1\u{202f}000\u{202f}000 N/mm",
            ),
        ] {
            assert_eq!(sentence, text);
        }
    }

    #[test]
    fn values_are_weighed() {
        let inches = |inches| Length::new::<unit::inch>(inches);
        for (value, fits) in [
            (0.0, false),
            (1.0 / 64.0, true),
            (13.875, true),
            (120.0, true),
            (120.001, false),
            (-1.0, false),
            (f64::NAN, false),
            (f64::INFINITY, false),
        ] {
            assert_eq!(FREE_HEIGHT.check(inches(value)).is_ok(), fits, "{value}");
        }
        assert_eq!(
            FREE_HEIGHT.check(inches(-1.0)).unwrap_err().to_string(),
            "−25.4 mm; a free height between 0.3969 mm and 3\u{202f}048 mm was expected"
        );
    }
}

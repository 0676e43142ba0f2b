//! What is wrong, said once, in the units of whoever reads it.
//!
//! An error carries typed quantities and, where it is about a field, which. Its sentences stand once, in
//! [`Say`]; its [`Display`] is the metric one.
//!
//! # Example
//! ```
//! use coilnest::coil::{DiameterKind, DiametersError};
//! use coilnest::quantity::{Length, System, unit::inch};
//! use coilnest::say::Say;
//!
//! let inches = Length::new::<inch>;
//! let error = DiameterKind::Outside.coil(inches(1.5), inches(2.75)).unwrap_err();
//! assert!(matches!(error, DiametersError::NoHole { .. }));
//! let message = error.say(System::Inch);
//! assert_eq!(message.read, "a bar of 1 1/2 in in a coil of an outside diameter of 2 3/4 in");
//! assert_eq!(
//!     error.to_string(),
//!     "a bar of 38.1 mm in a coil of an outside diameter of 69.85 mm; \
//!      a diameter that leaves the coil open inside was expected: measure both again"
//! );
//! # Ok::<(), DiametersError>(())
//! ```

use crate::quantity::{
    Angle, Force, Kind, Length, MassDensity, Pressure, SpringRate, Stress, System, WarpStiffness,
    shown, tape_mark, unit, write, write_number,
};
use core::fmt::{self, Display};

/// Who reads it: in which units, and what the nests of the frame are called.
#[derive(Clone, Copy, Debug)]
pub struct Reader<'n> {
    /// The units.
    pub system: System,
    /// The nests by name, in the order of the frame; none where they have numbers alone.
    pub nests: &'n [&'n str],
}

impl From<System> for Reader<'_> {
    fn from(system: System) -> Self {
        Self { system, nests: &[] }
    }
}

/// What is wrong.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Message {
    /// What was read.
    pub read: String,
    /// What was expected; empty where nothing else would do.
    pub expected: String,
    /// What to do; empty where that goes without saying.
    pub hint: String,
}

impl Message {
    pub(crate) fn new(
        read: fmt::Arguments<'_>,
        expected: fmt::Arguments<'_>,
        hint: fmt::Arguments<'_>,
    ) -> Self {
        Self { read: read.to_string(), expected: expected.to_string(), hint: hint.to_string() }
    }

    /// The whole, with a text that would do.
    #[must_use]
    pub fn such_as(&self, example: &str) -> String {
        let mut whole = self.read.clone();
        for (before, part, behind) in [
            ("; ", &*self.expected, " was expected"),
            (", such as ", if self.expected.is_empty() { "" } else { example }, ""),
            (if self.expected.is_empty() { "; " } else { ": " }, &*self.hint, ""),
        ] {
            if !part.is_empty() {
                whole.extend([before, part, behind]);
            }
        }
        whole
    }
}

impl Display for Message {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.such_as(""))
    }
}

/// An error that says itself in the units of either system.
pub trait Say {
    /// What is wrong, to a reader.
    fn say_to(&self, reader: Reader<'_>) -> Message;

    /// What is wrong, in the units of a system.
    fn say(&self, system: System) -> Message {
        self.say_to(system.into())
    }
}

/// A value within a sentence.
pub(crate) trait InWords {
    fn in_words(&self, reader: Reader<'_>) -> String;
}

/// A nest of a frame, counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Nth(pub usize);

impl Nth {
    /// That of an index.
    pub(crate) const fn of(index: usize) -> Self {
        Self(index + 1)
    }
}

impl InWords for Nth {
    fn in_words(&self, reader: Reader<'_>) -> String {
        let name = self.0.checked_sub(1).and_then(|index| reader.nests.get(index));
        name.map_or_else(|| format!("nest {}", self.0), |name| (*name).to_owned())
    }
}

impl InWords for Length {
    /// The fraction of an inch that it is, or five digits.
    fn in_words(&self, reader: Reader<'_>) -> String {
        let mark = if reader.system == System::Inch { tape_mark(*self) } else { None };
        mark.unwrap_or_else(|| {
            let (number, unit) = shown::<Self>(*self, reader.system);
            format!("{} {unit}", write_number(number, 5))
        })
    }
}

impl InWords for f64 {
    fn in_words(&self, _: Reader<'_>) -> String {
        write_number(*self, 4)
    }
}

impl InWords for Angle {
    fn in_words(&self, _: Reader<'_>) -> String {
        format!("{}°", write_number(self.get::<unit::degree>(), 4))
    }
}

/// Values that are written as everywhere, by their kind.
macro_rules! words_as {
    ($($kind:ty: $of:ty),+) => {
        $(impl InWords for $of {
            fn in_words(&self, reader: Reader<'_>) -> String {
                write::<$kind>(<$kind>::from_si(self.value), reader.system)
            }
        })+
    };
}
words_as!(Force: Force, SpringRate: SpringRate, Stress: Pressure, MassDensity: MassDensity,
    WarpStiffness: WarpStiffness);

/// Words and counts, which are the same in both systems.
macro_rules! words_by_display {
    ($($of:ty),+ $(,)?) => {
        $(impl $crate::say::InWords for $of {
            fn in_words(&self, _: $crate::say::Reader<'_>) -> String {
                self.to_string()
            }
        })+
    };
}
pub(crate) use words_by_display;
words_by_display!(usize, u32, &str, String);

/// What something can be about, each with its name in a sentence.
macro_rules! fields {
    ($(#[$about:meta])* $name:ident { $($(#[$doc:meta])* $field:ident = $said:literal,)+ }) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        #[non_exhaustive]
        pub enum $name { $($(#[$doc])* $field,)+ }

        impl $crate::say::InWords for $name {
            fn in_words(&self, _: $crate::say::Reader<'_>) -> String {
                let said = match self { $(Self::$field => $said,)+ };
                said.to_owned()
            }
        }
    };
}
pub(crate) use fields;

/// What each kind of an error says: what was read, what was expected, what to do. The names in braces
/// are the fields of the kind. What it passes `through` speaks for itself.
macro_rules! says {
    ($error:ident $(through [$($of:ident),+])? { $(
        $kind:ident $({ $($field:ident),+ })? =>
            $read:literal, $expected:literal, $hint:literal;
    )* }) => {
        impl $crate::say::Say for $error {
            fn say_to(&self, reader: $crate::say::Reader<'_>) -> $crate::say::Message {
                let _ = reader;
                match self {
                    $(Self::$kind $({ $($field,)+ .. })? => {
                        $($(let $field = $crate::say::InWords::in_words($field, reader);)+)?
                        $crate::say::Message::new(
                            format_args!($read),
                            format_args!($expected),
                            format_args!($hint),
                        )
                    })*
                    $($(Self::$of(error) => error.say_to(reader),)+)?
                }
            }
        }
    };
}
pub(crate) use says;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::frame::FrameError;
    use crate::quantity::unit::{inch, millimeter, pound_force};

    /// In either system by units, and nests by name where they have one.
    #[test]
    fn an_error_speaks_to_its_reader() {
        let error = FrameError::Crushed {
            support: Nth(2),
            load: Force::new::<pound_force>(24_970.0),
            height: Length::new::<inch>(-1.5),
        };
        let hint = "a height above zero was expected: see whether the weight is right, and give the solid heights of its coils";
        assert_eq!(
            error.to_string(),
            format!("nest 2 would carry 111\u{202f}100 N at a height of −38.1 mm; {hint}")
        );
        let reader = Reader { system: System::Inch, nests: &["A left", "A right"] };
        assert_eq!(
            error.say_to(reader).to_string(),
            format!("A right would carry 24\u{202f}970 lb at a height of −1 1/2 in; {hint}")
        );
        // A nest without a name has its number.
        let reader = Reader { system: System::Inch, nests: &["A left"] };
        assert!(error.say_to(reader).read.starts_with("nest 2 would carry"));
    }

    #[test]
    fn what_is_not_said_leaves_no_mark() {
        let message = |expected: &str, hint: &str| Message {
            read: "0 lb".to_owned(),
            expected: expected.to_owned(),
            hint: hint.to_owned(),
        };
        for (message, whole) in [
            (message("", ""), "0 lb"),
            (message("more", ""), "0 lb; more was expected, such as 5 lb"),
            (message("", "weigh it"), "0 lb; weigh it"),
            (message("more", "weigh it"), "0 lb; more was expected, such as 5 lb: weigh it"),
        ] {
            assert_eq!(message.such_as("5 lb"), whole);
        }
    }

    /// A fraction where it is one, else decimals.
    #[test]
    fn lengths_are_said_as_a_tape_has_them() {
        let said = |length: Length, system| length.in_words(Reader::from(system));
        assert_eq!(said(Length::new::<inch>(6.375), System::Inch), "6 3/8 in");
        assert_eq!(said(Length::new::<inch>(14.025), System::Inch), "14.025 in");
        assert_eq!(said(Length::new::<millimeter>(161.925), System::Metric), "161.93 mm");
    }
}

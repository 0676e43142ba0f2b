//! A text of a report that is written nowhere but here, or was read back.

use core::fmt::{self, Debug, Display};
use core::ops::Deref;
use serde::Serialize;

/// What reads a report back has to keep its texts; what only writes one has them all at hand.
#[cfg(feature = "serde")]
type Kept = std::borrow::Cow<'static, str>;
#[cfg(not(feature = "serde"))]
type Kept = &'static str;

/// A text that the crate or the tables have ready, as a unit, a title or a code, or one that was read.
///
/// # Example
/// ```
/// use coilnest::job::report::Phrase;
///
/// let unit = Phrase::from("in");
/// assert_eq!(unit, "in");
/// assert_eq!(format!("1/2 {unit}"), "1/2 in");
/// let read: Phrase = serde_json::from_str(r#""in""#)?;
/// assert_eq!(read, unit);
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Clone, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[cfg_attr(feature = "serde", derive(serde::Deserialize))]
pub struct Phrase(Kept);

impl From<&'static str> for Phrase {
    fn from(text: &'static str) -> Self {
        Self(Kept::from(text))
    }
}

impl Deref for Phrase {
    type Target = str;

    fn deref(&self) -> &str {
        let Self(text) = self;
        text
    }
}

impl PartialEq<str> for Phrase {
    fn eq(&self, other: &str) -> bool {
        **self == *other
    }
}

impl PartialEq<&str> for Phrase {
    fn eq(&self, other: &&str) -> bool {
        **self == **other
    }
}

impl PartialEq<String> for Phrase {
    fn eq(&self, other: &String) -> bool {
        **self == **other
    }
}

impl Display for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self)
    }
}

impl Debug for Phrase {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Debug::fmt(&**self, f)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Phrase {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Phrase".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        generator.subschema_for::<String>()
    }
}

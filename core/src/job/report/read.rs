//! Objects of a report whose order counts, as they are read back.

use super::workings::Working;
use super::{Letters, Phrase, WorkingEntry, Workings};
use core::fmt;
use core::marker::PhantomData;
use serde::de::{Deserialize, Deserializer, Error, MapAccess, Visitor};

impl<'de> Deserialize<'de> for Workings {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let mut entries: Vec<(usize, WorkingEntry)> = Vec::new();
        for (key, entry) in pairs::<String, _, D>(from)? {
            let place = Self::place(&key);
            let place = place.ok_or_else(|| Error::unknown_field(&key, &["w1", "w2", "…"]))?;
            entries.push((place, entry));
        }
        entries.sort_by_key(|(place, _)| *place);
        // A key is a place among the others, so that none may be left out or stand twice.
        let gap = entries.iter().enumerate().find(|(index, (place, _))| index != place);
        match gap {
            Some((index, _)) => Err(Error::custom(format_args!(
                "working `w{}` is missing, or one before it stands twice",
                index + 1
            ))),
            None => Ok(Self(entries.into_iter().map(|(_, entry)| Working::Read(entry)).collect())),
        }
    }
}

impl<'de> Deserialize<'de> for Letters {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        pairs::<Phrase, String, D>(from).map(Self)
    }
}

/// What an object holds, in its order.
fn pairs<'de, K, V, D>(from: D) -> Result<Vec<(K, V)>, D::Error>
where
    K: Deserialize<'de>,
    V: Deserialize<'de>,
    D: Deserializer<'de>,
{
    struct InOrder<K, V>(PhantomData<(K, V)>);

    impl<'de, K: Deserialize<'de>, V: Deserialize<'de>> Visitor<'de> for InOrder<K, V> {
        type Value = Vec<(K, V)>;

        fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
            f.write_str("an object")
        }

        fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Self::Value, A::Error> {
            let mut pairs = Vec::new();
            while let Some(pair) = object.next_entry()? {
                pairs.push(pair);
            }
            Ok(pairs)
        }
    }

    from.deserialize_map(InOrder(PhantomData))
}

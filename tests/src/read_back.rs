//! Whether a report is read back as it was written.

use serde::Serialize;
use serde::de::DeserializeOwned;

/// A report is written, read, and written again.
///
/// # Errors
/// A sentence when it is not read, when another report is read, or when that has another text.
pub fn is_same<R: Serialize + DeserializeOwned + PartialEq>(report: &R) -> Result<(), String> {
    let text = serde_json::to_string(report).map_err(|error| error.to_string())?;
    let read: R = serde_json::from_str(&text).map_err(|error| {
        let start = error.column().saturating_sub(120);
        let near: String = text.chars().skip(start).take(160).collect();
        format!("{error}: … {near} …")
    })?;
    let again = serde_json::to_string(&read).map_err(|error| error.to_string())?;
    if again != text {
        let same = text.chars().zip(again.chars()).take_while(|(one, other)| one == other).count();
        let near = |text: &str| -> String {
            text.chars().skip(same.saturating_sub(80)).take(160).collect()
        };
        return Err(format!("{} is written again as {}", near(&text), near(&again)));
    }
    if read == *report { Ok(()) } else { Err(format!("another report is read from {text}")) }
}

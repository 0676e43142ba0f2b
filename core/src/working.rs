//! A figure's derivation as data: the formula, what was put in, what came out, and who says so.

/// How a figure came about.
///
/// # Example
/// ```
/// use coilnest::working::Working;
///
/// let working = Working {
///     formula: "C = D / d",
///     with: "5 in / 1 in".into(),
///     result: "5".into(),
///     source: "definition".into(),
/// };
/// assert_eq!(working.to_string(), "C = D / d = 5 in / 1 in = 5 [definition]");
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Working {
    /// The formula in symbols.
    pub formula: &'static str,
    /// The same with the numbers put in, each with its unit.
    pub with: String,
    /// The result with its unit.
    pub result: String,
    /// Where the formula, and any number not given by the reader, comes from.
    pub source: String,
}

impl core::fmt::Display for Working {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} = {} = {} [{}]", self.formula, self.with, self.result, self.source)
    }
}

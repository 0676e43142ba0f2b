//! The strength of a wire or bar, by a row of the tables or by a law that the example gives.

use super::{Output, metres, no};
use crate::measure::Measure;
use coilnest::material::{Against, Law, Presetting, Shares, Span, Strength};
use coilnest::quantity::{Pressure, unit};
use coilnest::source::{Known, Source};
use serde::Deserialize;

/// A wire or bar.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wire {
    bar: Measure,
    /// A strength of the tables, or else a law.
    row: Option<String>,
    law: Option<GivenLaw>,
}

/// `A/d^m` as an example gives it, with the share that it allows.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct GivenLaw {
    coefficient: Measure,
    /// The unit of size.
    per: Measure,
    exponent: f64,
    share: Option<f64>,
}

impl Wire {
    pub(super) fn compute(&self, output: Output) -> Result<f64, String> {
        let strength = match (&self.row, &self.law) {
            (Some(row), None) => {
                *coilnest_tables::strength(row).ok_or_else(|| format!("no strength {row:?}"))?
            }
            (None, Some(law)) => self.by_law(law)?,
            _ => return Err("one of row and law was expected".into()),
        };
        let bar = metres(&self.bar);
        let allowable = |presetting| strength.allowable(bar, presetting).map(|it| it.stress);
        let found = match output {
            Output::TensileStrength => strength.tensile(bar),
            Output::Allowable => allowable(Presetting::AsWound),
            Output::AllowableSetRemoved => allowable(Presetting::SetRemoved),
            _ => return no(output),
        };
        found.map(|found| found.value.value).map_err(|error| error.to_string())
    }

    fn by_law(&self, law: &GivenLaw) -> Result<Strength, String> {
        let source = Source::new("the example", "", Known::Page);
        let coefficient = Pressure::new::<unit::pascal>(law.coefficient.si());
        let (bar, unit) = (metres(&self.bar), metres(&law.per));
        let law_of_size = Law::Power { coefficient, unit, exponent: law.exponent };
        let span = Span::new(bar, 2.0 * bar, law_of_size).map_err(|error| error.to_string())?;
        let strength = Strength::look_up("example", "the example's wire", "the example")
            .with_spans(vec![span].leak(), source)
            .map_err(|error| error.to_string())?;
        let Some(share) = law.share else { return Ok(strength) };
        let shares = Shares::new(share, Against::Curvature, source);
        Ok(strength.with_shares(shares.map_err(|error| error.to_string())?))
    }
}

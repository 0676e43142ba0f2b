//! The strength of a wire or bar, by a row of the tables or by a law that the example gives.

use super::{Subject, no};
use crate::fields::Fields;
use crate::output::Output;
use coilnest::material::{Against, Law, Presetting, Shares, Span, Strength};
use coilnest::quantity::Length;
use coilnest::source::{Known, Source};

/// A wire or bar, with a strength of the tables or else a law.
pub(super) const WIRE: Subject = Subject { name: "wire", takes: &["bar", "row", "law"], compute };

fn compute(given: Fields<'_>, output: Output) -> Result<Vec<f64>, String> {
    let bar = given.length("bar")?;
    let strength = match ["row", "law"].map(|name| given.has(name)) {
        [true, false] => {
            let row = given.text("row")?;
            *coilnest_tables::strength(row).ok_or_else(|| format!("no strength {row:?}"))?
        }
        [false, true] => by_law(given, bar)?,
        _ => return Err("one of row and law was expected".into()),
    };
    let allowable = |presetting| strength.allowable(bar, presetting).map(|it| it.stress);
    let found = match output {
        Output::TensileStrength => strength.tensile(bar),
        Output::Allowable => allowable(Presetting::AsWound),
        Output::AllowableSetRemoved => allowable(Presetting::SetRemoved),
        _ => return no(output),
    };
    found.map(|found| vec![found.value.value]).map_err(|error| error.to_string())
}

/// `A/d^m` as an example gives it, `per` the unit of size, with the share that it allows.
fn by_law(given: Fields<'_>, bar: Length) -> Result<Strength, String> {
    let law = Fields::of(given.value("law")?, &["coefficient", "per", "exponent", "share"])?;
    let source = Source::new("the example", "", Known::Page);
    let law_of_size = Law::Power {
        coefficient: law.pressure("coefficient")?,
        unit: law.length("per")?,
        exponent: law.number("exponent")?,
    };
    let span = Span::new(bar, 2.0 * bar, law_of_size).map_err(|error| error.to_string())?;
    let strength = Strength::look_up("example", "the example's wire", "the example")
        .with_spans(vec![span].leak(), source)
        .map_err(|error| error.to_string())?;
    let Some(share) = law.maybe("share", Fields::number)? else { return Ok(strength) };
    let shares = Shares::new(share, Against::Curvature, source);
    Ok(strength.with_shares(shares.map_err(|error| error.to_string())?))
}

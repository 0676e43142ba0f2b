//! What a steel bears: its tensile strength against the size of the bar, and the share of it allowed.

use crate::quantity::{Length, Pressure, System};
use crate::say::{InWords, Reader, Say, says};
use crate::source::{Source, Sourced};
use std::fmt;
use thiserror::Error;

/// How tensile strength falls with the size of the bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Law {
    /// `S = A · (u/d)^m`, the usual `A/d^m` with the unit of size written out.
    Power {
        /// `A`, the strength at the unit of size.
        coefficient: Pressure,
        /// `u`, the unit of size: one millimetre or one inch.
        unit: Length,
        /// `m`, without dimension.
        exponent: f64,
    },
    /// `S = A − B · lg(d/u)`.
    Logarithm {
        /// `A`, the strength at the unit of size.
        coefficient: Pressure,
        /// `B`, what is lost from each size to the tenfold one.
        fall: Pressure,
        /// `u`, the unit of size.
        unit: Length,
    },
}

impl Law {
    /// The strength of a bar of that size, whatever sizes the law was made for.
    fn at(&self, bar: Length) -> Pressure {
        match *self {
            Self::Power { coefficient, unit, exponent } => {
                coefficient * libm::pow((unit / bar).value, exponent)
            }
            Self::Logarithm { coefficient, fall, unit } => {
                coefficient - fall * libm::log10((bar / unit).value)
            }
        }
    }
}

/// A law and the sizes that its source gives it for, both ends among them.
///
/// # Example
/// ```
/// use coilnest::material::{Law, Span};
/// use coilnest::quantity::{Length, Pressure, unit::{inch, megapascal, millimeter}};
///
/// let (coefficient, unit) = (Pressure::new::<megapascal>(2211.0), Length::new::<millimeter>(1.0));
/// let law = Law::Power { coefficient, unit, exponent: 0.145 };
/// let span = Span::new(Length::new::<inch>(0.004), Length::new::<inch>(0.256), law)?;
/// let strength = span.strength(Length::new::<millimeter>(2.5)).ok_or("outside")?;
/// assert!((strength.get::<megapascal>() - 1935.92).abs() < 0.01); // 2211 / 2.5^0.145
/// assert_eq!(span.strength(Length::new::<inch>(0.75)), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    from: Length,
    to: Length,
    law: Law,
}

/// Why a law, its sizes or a share make no strength.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
#[non_exhaustive]
pub enum RuleError {
    /// The sizes do not rise from above zero.
    #[error("the sizes must rise, from above zero")]
    Sizes,
    /// A strength that is nowhere above zero, or does not fall as the size rises.
    #[error("the strength must be above zero at every size, and fall as the size rises")]
    Law,
    /// A span does not begin where the one before it ends.
    #[error("each span of sizes must begin where the one before it ends")]
    Gap,
    /// A share of the tensile strength that is not between nothing and all of it.
    #[error("a share of the tensile strength must lie between 0 and 1")]
    Share,
}

impl Span {
    /// A law for the sizes from one to another.
    ///
    /// # Errors
    /// [`RuleError::Sizes`] when the sizes do not rise from above zero; [`RuleError::Law`] when a
    /// coefficient or unit is not above zero, an exponent or a fall below zero, or a logarithm falls
    /// to nothing within the next tenfold above the sizes.
    pub const fn new(from: Length, to: Length, law: Law) -> Result<Self, RuleError> {
        if !(from.value > 0.0 && to.value > from.value && to.value.is_finite()) {
            return Err(RuleError::Sizes);
        }
        let sound = match law {
            Law::Power { coefficient, unit, exponent } => {
                coefficient.value > 0.0 && unit.value > 0.0 && exponent >= 0.0
            }
            Law::Logarithm { coefficient, fall, unit } => {
                let (mut left, mut size) = (coefficient.value, unit.value);
                let sound = fall.value >= 0.0 && size > 0.0;
                while sound && size < to.value && left > 0.0 {
                    left -= fall.value;
                    size *= 10.0;
                }
                sound && left > 0.0
            }
        };
        if sound { Ok(Self { from, to, law }) } else { Err(RuleError::Law) }
    }

    /// The tensile strength of a bar of that size, none outside the sizes of the law.
    #[must_use]
    pub fn strength(&self, bar: Length) -> Option<Pressure> {
        // A bound in one unit and the same size in another differ in the last bit.
        let slack = 1e-9 * bar;
        (bar + slack >= self.from && bar - slack <= self.to).then(|| self.law.at(bar))
    }
}

/// Which stress an allowable one is to be compared with.
///
/// Authorities differ in it: a share of one is not a share of another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Against {
    /// The plain stress, `τ = 8FD/(πd³)`.
    Plain,
    /// The plain stress times the direct-shear factor, `1 + 0.5/C`.
    DirectShear,
    /// The plain stress times Bergsträsser's factor, or Wahl's, which is a little larger.
    Curvature,
    /// The plain stress times Wahl's factor.
    Wahl,
}

impl fmt::Display for Against {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Plain => "the uncorrected stress",
            Self::DirectShear => "the stress with the direct-shear factor 1 + 0.5/C",
            Self::Curvature => "the stress with Bergsträsser's factor",
            Self::Wahl => "the stress with Wahl's factor",
        })
    }
}

/// Whether a coil was pressed solid when it was made, so that it takes no further set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Presetting {
    /// As wound: its set was not taken out.
    AsWound,
    /// Its set was taken out (scragged, bulldozed).
    SetRemoved,
}

/// The share of its tensile strength that a bar may bear in torsion under a load at rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shares {
    as_wound: (f64, Against),
    set_removed: Option<(f64, Against)>,
    source: Source,
}

impl Shares {
    /// The share for a coil as wound, and what it is compared with.
    ///
    /// # Errors
    /// [`RuleError::Share`] when the share is not above 0 and below 1.
    pub const fn new(share: f64, against: Against, source: Source) -> Result<Self, RuleError> {
        if !(share > 0.0 && share < 1.0) {
            return Err(RuleError::Share);
        }
        Ok(Self { as_wound: (share, against), set_removed: None, source })
    }

    /// The same with the share for a coil whose set was removed.
    ///
    /// # Errors
    /// As [`Shares::new`].
    pub const fn with_set_removed(
        mut self,
        share: f64,
        against: Against,
    ) -> Result<Self, RuleError> {
        if !(share > 0.0 && share < 1.0) {
            return Err(RuleError::Share);
        }
        self.set_removed = Some((share, against));
        Ok(self)
    }

    const fn of(&self, presetting: Presetting) -> Option<(f64, Against)> {
        match presetting {
            Presetting::AsWound => Some(self.as_wound),
            Presetting::SetRemoved => self.set_removed,
        }
    }
}

/// A stress that may be borne, and the stress that it is to be compared with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowable {
    /// The stress, and who allows that share of the tensile strength.
    pub stress: Sourced<Pressure>,
    /// Who gives the tensile strength.
    pub strength_source: Source,
    /// What to compare it with.
    pub against: Against,
}

/// What one authority says of a steel's strength, and where to look up what it does not say.
///
/// # Example
/// ```
/// use coilnest::material::{Against, Law, Presetting, Shares, Span, Strength};
/// use coilnest::quantity::{Length, Pressure, System, unit::{inch, megapascal, millimeter}};
/// use coilnest::say::Say;
/// use coilnest::source::{Known, Source};
///
/// let source = Source::new("our own tests", "of 2025", Known::Page);
/// let (coefficient, unit) = (Pressure::new::<megapascal>(2000.0), Length::new::<millimeter>(1.0));
/// let law = Law::Power { coefficient, unit, exponent: 0.2 };
/// let spans = [Span::new(Length::new::<inch>(0.1), Length::new::<inch>(0.5), law)?];
/// let strength = Strength::look_up("ours", "our wire", "the maker's certificate")
///     .with_spans(Box::leak(Box::new(spans)), source)?
///     .with_shares(Shares::new(0.5, Against::Curvature, source)?);
///
/// let four = Length::new::<millimeter>(4.0);
/// let tensile = strength.tensile(four)?;
/// assert!((tensile.value.get::<megapascal>() - 1515.72).abs() < 0.01); // 2000 / 4^0.2
/// let allowed = strength.allowable(four, Presetting::AsWound)?;
/// assert_eq!(allowed.stress.value, 0.5 * tensile.value);
/// assert_eq!(allowed.against, Against::Curvature);
///
/// let refusal = strength.tensile(Length::new::<inch>(0.75)).unwrap_err();
/// assert_eq!(
///     refusal.say(System::Inch).to_string(),
///     "a bar of 3/4 in lies outside 0.1 in to 1/2 in, the sizes for which a strength of our wire \
///      is held here; look it up in the maker's certificate"
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    id: &'static str,
    name: &'static str,
    look_up: &'static str,
    by_size: Option<(&'static [Span], Source)>,
    shares: Option<Shares>,
}

/// Why there is no strength to work with.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum StrengthError {
    /// Nobody is named who says anything of this steel's strength.
    Unsaid {
        /// The steel.
        steel: &'static str,
    },
    /// The number is not known well enough to be held; the document has it.
    LookUp {
        /// What the strength is of.
        name: &'static str,
        /// Where it stands.
        look_up: &'static str,
    },
    /// The bar is thinner or thicker than any that the authority speaks of.
    Outside {
        /// What the strength is of.
        name: &'static str,
        /// The bar.
        bar: Length,
        /// The thinnest that is covered.
        least: Length,
        /// The thickest that is covered.
        most: Length,
        /// Where to look for this one.
        look_up: &'static str,
    },
    /// The strength is known, the share of it that may be borne is not.
    NoShare {
        /// What the strength is of.
        name: &'static str,
        /// The coil that the share was asked for.
        presetting: Presetting,
        /// Where it may stand.
        look_up: &'static str,
    },
}

says! {
    StrengthError {
        Unsaid { steel } =>
            "no strength of {steel} is held here", "",
            "take it from the drawing or the maker's certificate";
        LookUp { name, look_up } =>
            "no strength of {name} is held here", "", "look it up in {look_up}";
        Outside { name, bar, least, most, look_up } =>
            "a bar of {bar} lies outside {least} to {most}, the sizes for which a strength of {name} is held here",
            "", "look it up in {look_up}";
        NoShare { name, presetting, look_up } =>
            "no allowable stress is held here for a coil of {name} {presetting}", "",
            "look it up in {look_up}";
    }
}

impl InWords for Presetting {
    fn in_words(&self, _: Reader<'_>) -> String {
        let made = match self {
            Self::AsWound => "as wound",
            Self::SetRemoved => "whose set was removed",
        };
        made.to_owned()
    }
}

impl Strength {
    /// A strength of which nothing is held but the document that has it.
    ///
    /// `name` stands within a sentence: `music wire A228`. `look_up` names a document.
    #[must_use]
    pub const fn look_up(id: &'static str, name: &'static str, look_up: &'static str) -> Self {
        Self { id, name, look_up, by_size: None, shares: None }
    }

    /// The same with the tensile strength by size, in spans that rise and adjoin.
    ///
    /// # Errors
    /// [`RuleError::Sizes`] when there is no span, [`RuleError::Gap`] when one does not begin where
    /// the one before it ends.
    pub const fn with_spans(
        mut self,
        spans: &'static [Span],
        source: Source,
    ) -> Result<Self, RuleError> {
        let [first, rest @ ..] = spans else { return Err(RuleError::Sizes) };
        let (mut end, mut rest) = (first.to.value, rest);
        while let [next, after @ ..] = rest {
            // As exact as one unit turned into another is.
            let gap = next.from.value - end;
            if gap > 1e-9 * end || gap < -1e-9 * end {
                return Err(RuleError::Gap);
            }
            (end, rest) = (next.to.value, after);
        }
        self.by_size = Some((spans, source));
        Ok(self)
    }

    /// The same with the share of the tensile strength that is allowed.
    #[must_use]
    pub const fn with_shares(mut self, shares: Shares) -> Self {
        self.shares = Some(shares);
        self
    }

    /// The id of its row.
    #[must_use]
    pub const fn id(&self) -> &'static str {
        self.id
    }

    /// What it is of, as it stands in a sentence.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// The document that has what is not held here.
    #[must_use]
    pub const fn document(&self) -> &'static str {
        self.look_up
    }

    /// The thinnest and the thickest bar of which the tensile strength is held.
    #[must_use]
    pub const fn sizes(&self) -> Option<(Length, Length)> {
        match self.by_size {
            Some(([first, .., last], _)) => Some((first.from, last.to)),
            Some(([only], _)) => Some((only.from, only.to)),
            _ => None,
        }
    }

    /// The least tensile strength of a bar of that size.
    ///
    /// Where two spans meet, the one of the thinner bars holds.
    ///
    /// # Errors
    /// [`StrengthError::LookUp`] when no number is held, [`StrengthError::Outside`] when the bar is
    /// not among the sizes of the row.
    pub fn tensile(&self, bar: Length) -> Result<Sourced<Pressure>, StrengthError> {
        let Self { name, look_up, .. } = *self;
        let (Some((spans, source)), Some((least, most))) = (self.by_size, self.sizes()) else {
            return Err(StrengthError::LookUp { name, look_up });
        };
        spans
            .iter()
            .find_map(|span| span.strength(bar))
            .map(|value| Sourced { value, source })
            .ok_or(StrengthError::Outside { name, bar, least, most, look_up })
    }

    /// The torsional stress that a bar of that size may bear under a load at rest.
    ///
    /// ```text
    /// τ = share · S
    /// ```
    /// `S` tensile strength of the bar, Pa
    ///
    /// # Errors
    /// Those of [`Strength::tensile`]; [`StrengthError::NoShare`] when the authority gives no share
    /// for a coil made so.
    pub fn allowable(
        &self,
        bar: Length,
        presetting: Presetting,
    ) -> Result<Allowable, StrengthError> {
        let Self { name, look_up, .. } = *self;
        let tensile = self.tensile(bar)?;
        let no_share = StrengthError::NoShare { name, presetting, look_up };
        let shares = self.shares.ok_or(no_share)?;
        let (share, against) = shares.of(presetting).ok_or(no_share)?;
        let stress = Sourced { value: share * tensile.value, source: shares.source };
        Ok(Allowable { stress, strength_source: tensile.source, against })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit;
    use crate::source::Known;

    const SOURCE: Source = Source::new("", "", Known::Derived);

    fn mm(size: f64) -> Length {
        Length::new::<unit::millimeter>(size)
    }

    fn mpa(stress: f64) -> Pressure {
        Pressure::new::<unit::megapascal>(stress)
    }

    fn power(from: f64, to: f64) -> Result<Span, RuleError> {
        let law = Law::Power { coefficient: mpa(2000.0), unit: mm(1.0), exponent: 0.2 };
        Span::new(mm(from), mm(to), law)
    }

    fn strength(spans: Vec<Span>) -> Result<Strength, RuleError> {
        Strength::look_up("x", "x", "a book").with_spans(Vec::leak(spans), SOURCE)
    }

    #[test]
    fn what_is_no_law_is_refused() {
        assert_eq!(power(0.0, 2.0), Err(RuleError::Sizes));
        assert_eq!(power(2.0, 2.0), Err(RuleError::Sizes));
        assert_eq!(power(f64::NAN, 2.0), Err(RuleError::Sizes));
        assert_eq!(power(2.0, f64::INFINITY), Err(RuleError::Sizes));
        let span = |law| Span::new(mm(1.0), mm(20.0), law);
        let logarithm = |a, b| Law::Logarithm { coefficient: mpa(a), fall: mpa(b), unit: mm(1.0) };
        assert!(span(logarithm(1980.0, 740.0)).is_ok());
        assert_eq!(span(logarithm(1980.0, 1000.0)), Err(RuleError::Law));
        assert_eq!(span(logarithm(1980.0, -1.0)), Err(RuleError::Law));
        let rising = Law::Power { coefficient: mpa(2000.0), unit: mm(1.0), exponent: -0.1 };
        assert_eq!(span(rising), Err(RuleError::Law));
        for share in [0.0, 1.0, -0.1, f64::NAN] {
            assert_eq!(Shares::new(share, Against::Plain, SOURCE), Err(RuleError::Share));
        }
    }

    #[test]
    fn spans_adjoin_and_the_thinner_holds_where_they_meet() {
        let weaker = Law::Power { coefficient: mpa(1900.0), unit: mm(1.0), exponent: 0.2 };
        let next = |from| Span::new(mm(from), mm(9.0), weaker).unwrap();
        let whole = strength(vec![power(1.0, 3.0).unwrap(), next(3.0)]).unwrap();
        let at = |size| whole.tensile(mm(size)).map(|it| it.value.get::<unit::megapascal>());
        assert!((at(1.0).unwrap() - 2000.0).abs() < 1e-9);
        assert!((at(3.0).unwrap() - 1605.48).abs() < 0.01); // 2000 / 3^0.2
        assert!((at(3.1).unwrap() - 1515.24).abs() < 0.01); // 1900 / 3.1^0.2
        assert!(matches!(at(9.01), Err(StrengthError::Outside { .. })));
        assert!(matches!(at(f64::NAN), Err(StrengthError::Outside { .. })));
        assert_eq!(strength(vec![power(1.0, 3.0).unwrap(), next(3.5)]), Err(RuleError::Gap));
        assert_eq!(strength(vec![power(1.0, 3.0).unwrap(), next(2.5)]), Err(RuleError::Gap));
        assert_eq!(strength(vec![]), Err(RuleError::Sizes));
    }

    #[test]
    fn what_is_not_held_says_where_it_stands() {
        let bar = mm(4.0);
        let unknown = Strength::look_up("x", "hot-wound bar", "ASTM A125");
        let sentence = |error: StrengthError| error.to_string();
        assert_eq!(
            unknown.tensile(bar).map_err(sentence),
            Err("no strength of hot-wound bar is held here; look it up in ASTM A125".into())
        );
        assert_eq!(unknown.sizes(), None);
        let bare = strength(vec![power(1.0, 9.0).unwrap()]).unwrap();
        assert_eq!(
            bare.allowable(bar, Presetting::SetRemoved).map_err(sentence),
            Err("no allowable stress is held here for a coil of x whose set was removed; look it up in a book"
                .into())
        );
        let shares = Shares::new(0.45, Against::Curvature, SOURCE).unwrap();
        let shared = bare.with_shares(shares);
        assert!(shared.allowable(bar, Presetting::AsWound).is_ok());
        assert!(matches!(
            shared.allowable(bar, Presetting::SetRemoved),
            Err(StrengthError::NoShare { .. })
        ));
        let removed = shares.with_set_removed(0.6, Against::DirectShear).unwrap();
        let allowed = bare.with_shares(removed).allowable(bar, Presetting::SetRemoved).unwrap();
        assert_eq!(allowed.against, Against::DirectShear);
        assert!((allowed.stress.value.get::<unit::megapascal>() - 909.43).abs() < 0.01);
    }
}

//! Whether a coil lasts between two loads that come again and again.

use super::{Diameters, stress};
use crate::formula::Formula;
use crate::quantity::{Force, Length, Pressure, System};
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// Torsional stress that swings about a mean.
///
/// ```text
/// τa = K · 8 · Fa · D/(π · d³)      Fa = (Fmax − Fmin)/2
/// τm = K · 8 · Fm · D/(π · d³)      Fm = (Fmax + Fmin)/2
/// ```
/// `K` Bergsträsser's factor ([`stress::bergstrasser`]) · `D` mean diameter · `d` bar
///
/// # Source
/// [`CYCLE_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{fatigue::Cycle, Diameters};
/// use coilnest::quantity::{Force, Length, unit::{megapascal, millimeter, newton}};
///
/// let (mm, newtons) = (Length::new::<millimeter>, Force::new::<newton>);
/// let coil = Diameters::from_mean(mm(5.0), mm(40.0))?;
/// let cycle = Cycle::between(coil, newtons(100.0), newtons(500.0))?;
/// // 1.172414·8·200·40/(π·125), and the mean half as much again.
/// assert!((cycle.amplitude().get::<megapascal>() - 191.074).abs() < 1e-3);
/// assert!(((cycle.mean() / cycle.amplitude()).value - 1.5).abs() < 1e-12);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cycle {
    bar: Length,
    amplitude: Pressure,
    mean: Pressure,
}

/// [`Cycle::amplitude`] in symbols.
pub const AMPLITUDE: Formula =
    Formula::new("{τa} = {KB} · 8 · ({F2} − {F1}) / 2 · {D} / (π · {d}³)");

/// [`Cycle::mean`] in symbols.
pub const MEAN: Formula = Formula::new("{τm} = {KB} · 8 · ({F2} + {F1}) / 2 · {D} / (π · {d}³)");

/// Where [`Cycle::between`] comes from.
pub const CYCLE_SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "eqs. 10-31 to 10-33",
    Known::Memory,
);

/// Why nothing can be said of how long a coil lasts.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum FatigueError {
    /// The loads do not both press, or are the same, or the wrong way round.
    Loads {
        /// The lesser load.
        least: Force,
        /// The greater load.
        greatest: Force,
    },
    /// The bar is thicker than any that was tested.
    Bar {
        /// The bar.
        bar: Length,
        /// The thickest tested.
        most: Length,
    },
    /// The steel is too weak for the stresses of the tests.
    Tensile {
        /// The tensile strength.
        tensile: Pressure,
        /// What it must be above.
        least: Pressure,
    },
    /// The coil yields before it tires.
    Yields {
        /// The greatest stress.
        stress: Pressure,
        /// The yield strength in torsion.
        torsional_yield: Pressure,
    },
}

says! {
    FatigueError {
        Loads { least, greatest } =>
            "loads from {least} to {greatest}",
            "a lesser load of 0 or more and a greater one above it",
            "give the two between which the coil works";
        Bar { bar, most } =>
            "a bar of {bar}", "one up to {most}",
            "no thicker wire was tested; ask the maker for a diagram of the coil's own size";
        Tensile { tensile, least } =>
            "a tensile strength of {tensile}", "one above {least}",
            "check its unit, for the stresses of the tests would break this steel";
        Yields { stress, torsional_yield } =>
            "a stress of {stress}", "less than the yield strength of {torsional_yield} in torsion",
            "the coil sets; lower the load or take a thicker bar";
    }
}

/// The factor of safety against yielding, in symbols.
pub const YIELD: Formula = Formula::new("{nf} = {Ssy} / ({τa} + {τm})");

impl Cycle {
    /// Between the least and the greatest load at work.
    ///
    /// # Errors
    /// [`FatigueError::Loads`] unless the least is zero or more and the greatest above it.
    pub fn between(coil: Diameters, least: Force, greatest: Force) -> Result<Self, FatigueError> {
        if !(least.value >= 0.0 && greatest > least && greatest.value.is_finite()) {
            return Err(FatigueError::Loads { least, greatest });
        }
        let stressed = |load| stress::bergstrasser(coil.index()) * stress::uncorrected(load, coil);
        Ok(Self {
            bar: coil.bar(),
            amplitude: stressed((greatest - least) / 2.0),
            mean: stressed((greatest + least) / 2.0),
        })
    }

    /// Half of the swing, τa.
    #[must_use]
    pub fn amplitude(&self) -> Pressure {
        self.amplitude
    }

    /// The middle of the swing, τm.
    #[must_use]
    pub fn mean(&self) -> Pressure {
        self.mean
    }

    /// The top of the swing, τa + τm.
    #[must_use]
    pub fn greatest(&self) -> Pressure {
        self.amplitude + self.mean
    }
}

/// What was done to the surface of the bar.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Surface {
    /// Nothing.
    Unpeened,
    /// It was shot peened.
    Peened,
}

impl Surface {
    /// Amplitude and mean of the torsional stress that Zimmerli's springs bore without end.
    ///
    /// ```text
    /// unpeened  35.0 and 55.0 kpsi    241 and 379 MPa
    /// peened    57.5 and 77.5 kpsi    396 and 534 MPa
    /// ```
    ///
    /// # Source
    /// [`ZIMMERLI`].
    #[must_use]
    pub fn endured(self) -> (Pressure, Pressure) {
        let kpsi = Pressure::new::<crate::quantity::unit::kip_force_per_square_inch>;
        match self {
            Self::Unpeened => (kpsi(35.0), kpsi(55.0)),
            Self::Peened => (kpsi(57.5), kpsi(77.5)),
        }
    }
}

/// Where [`Surface::endured`] and [`thickest_tested`] come from.
pub const ZIMMERLI: Source = Source::new(
    "Zimmerli (1957), in Shigley's Mechanical Engineering Design, 10th ed.",
    "eqs. 10-28 and 10-29",
    Known::QuotedIn("a public sheet of spring formulas"),
);

/// The thickest wire to which Zimmerli's stresses apply: 3/8 in.
///
/// # Source
/// [`ZIMMERLI`].
#[must_use]
pub fn thickest_tested() -> Length {
    Length::new::<crate::quantity::unit::inch>(0.375)
}

/// Whether Zimmerli's stresses apply to a bar, whatever its steel.
///
/// # Errors
/// [`FatigueError::Bar`] above [`thickest_tested`].
///
/// # Source
/// [`ZIMMERLI`].
///
/// # Example
/// ```
/// use coilnest::coil::fatigue::tested;
/// use coilnest::quantity::{Length, unit::inch};
///
/// assert!(tested(Length::new::<inch>(0.375)).is_ok());
/// assert!(tested(Length::new::<inch>(0.376)).is_err());
/// ```
pub fn tested(bar: Length) -> Result<(), FatigueError> {
    let most = thickest_tested();
    // 3/8 in written in millimetres may be a last binary digit thicker.
    if bar > most * (1.0 + 1e-12) { Err(FatigueError::Bar { bar, most }) } else { Ok(()) }
}

/// Torsional strength of a spring steel.
///
/// ```text
/// Ssu = 0.67 · Sut
/// ```
/// `Sut` tensile strength
///
/// # Source
/// [`ULTIMATE_SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::fatigue;
/// use coilnest::quantity::{Pressure, unit::megapascal};
///
/// let ultimate = fatigue::torsional_ultimate(Pressure::new::<megapascal>(1500.0));
/// assert!((ultimate.get::<megapascal>() - 1005.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn torsional_ultimate(tensile: Pressure) -> Pressure {
    TORSIONAL_SHARE * tensile
}

const TORSIONAL_SHARE: f64 = 0.67;

/// Where [`torsional_ultimate`] comes from.
pub const ULTIMATE_SOURCE: Source =
    Source::new("Shigley's Mechanical Engineering Design, 10th ed.", "eq. 10-30", Known::Memory);

/// How mean and amplitude are weighed against each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Criterion {
    /// A straight line to the torsional strength.
    Goodman,
    /// A parabola to the torsional strength.
    Gerber,
    /// The amplitude alone: the mean does not matter.
    Sines,
}

impl Criterion {
    /// Every criterion, in the order in which a list shows them.
    pub const ALL: [Self; 3] = [Self::Goodman, Self::Gerber, Self::Sines];

    /// The factor of [`endurance`] in symbols.
    #[must_use]
    pub const fn formula(self) -> Formula {
        const GOODMAN: Formula = Formula::new("{nf} = 1 / ({τa} / {Sse} + {τm} / {Ssu})");
        const GERBER: Formula = Formula::new(
            "{nf} = 0.5 · ({Ssu} / {τm})² · {τa} / {Sse} · (√(1 + (2 · {τm} · {Sse} / ({Ssu} · {τa}))²) − 1)",
        );
        const SINES: Formula = Formula::new("{nf} = {Sse} / {τa}");
        match self {
            Self::Goodman => GOODMAN,
            Self::Gerber => GERBER,
            Self::Sines => SINES,
        }
    }
}

/// What a steel has: the strengths that a table or a certificate gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strength {
    /// Tensile strength of the bar in its own size, Sut.
    pub tensile: Pressure,
    /// Yield strength in torsion, Ssy.
    pub torsional_yield: Pressure,
}

/// How a coil stands by one criterion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Endurance {
    /// Amplitude that it bears about no mean at all, Sse.
    pub reversed: Pressure,
    /// Amplitude that it bears when mean and amplitude grow alike, Ssa.
    pub amplitude: Pressure,
    /// Factor of safety of its amplitude, nf; below 1 it breaks sooner or later.
    pub safety: f64,
}

/// Endurance of a coil between two loads, for a life without end.
///
/// ```text
/// Goodman  Sse = Sa/(1 − Sm/Ssu)       Ssa = r · Sse · Ssu/(r · Ssu + Sse)
/// Gerber   Sse = Sa/(1 − (Sm/Ssu)²)    Ssa = r² · Ssu²/(2 Sse) · [−1 + √(1 + (2 Sse/(r · Ssu))²)]
/// Sines    Sse = Sa                    Ssa = Sa
/// r = τa/τm      nf = Ssa/τa
/// ```
/// `Sa`, `Sm` amplitude and mean that the tested springs bore ([`Surface::endured`]) · `Ssu` torsional
/// strength ([`torsional_ultimate`]) · `τa`, `τm` the coil's own ([`Cycle`])
///
/// # Range
/// Steel wire up to 3/8 in (9.5 mm), whatever its steel and strength, sound and clean: no corrosion, no heat,
/// no shock. Hot-wound bar is thicker and its skin decarburised, so this says nothing of it.
///
/// # Source
/// [`SOURCE`], with the data of [`ZIMMERLI`].
///
/// # Errors
/// [`FatigueError::Bar`] above 3/8 in; [`FatigueError::Tensile`] when the torsional strength is not
/// above the mean stress of the tests; [`FatigueError::Yields`] when the greatest stress is beyond
/// the yield strength.
///
/// # Example
/// ```
/// use coilnest::coil::{fatigue::{self, Criterion, Cycle, Strength, Surface}, Diameters};
/// use coilnest::quantity::{Force, Length, Pressure, unit::{megapascal, millimeter, newton}};
///
/// let (mm, newtons, mpa) =
///     (Length::new::<millimeter>, Force::new::<newton>, Pressure::new::<megapascal>);
/// let coil = Diameters::from_mean(mm(5.0), mm(40.0))?;
/// let cycle = Cycle::between(coil, newtons(100.0), newtons(500.0))?;
/// let strength = Strength { tensile: mpa(1500.0), torsional_yield: mpa(675.0) };
/// let sines = fatigue::endurance(cycle, strength, Surface::Unpeened, Criterion::Sines)?;
/// assert!((sines.safety - 1.2629).abs() < 1e-4); // 241.317/191.074
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn endurance(
    cycle: Cycle,
    strength: Strength,
    surface: Surface,
    criterion: Criterion,
) -> Result<Endurance, FatigueError> {
    tested(cycle.bar)?;
    let (borne, about) = surface.endured();
    let Strength { tensile, torsional_yield } = strength;
    let ultimate = torsional_ultimate(tensile);
    // Not a number is refused too.
    if !(ultimate > about && ultimate.value.is_finite()) {
        return Err(FatigueError::Tensile { tensile, least: about / TORSIONAL_SHARE });
    }
    let stress = cycle.greatest();
    if stress > torsional_yield || torsional_yield.value.is_nan() {
        return Err(FatigueError::Yields { stress, torsional_yield });
    }
    let used = (about / ultimate).value;
    let ratio = (cycle.amplitude / cycle.mean).value;
    let (reversed, amplitude) = match criterion {
        Criterion::Goodman => {
            let reversed = borne / (1.0 - used);
            (reversed, ratio * reversed * ultimate / (ratio * ultimate + reversed))
        }
        Criterion::Gerber => {
            let reversed = borne / (1.0 - used * used);
            let steep = 2.0 * (reversed / (ratio * ultimate)).value;
            (reversed, ratio * ultimate / steep * ((1.0 + steep * steep).sqrt() - 1.0))
        }
        Criterion::Sines => (borne, borne),
    };
    Ok(Endurance { reversed, amplitude, safety: (amplitude / cycle.amplitude).value })
}

/// Where [`endurance`] comes from.
pub const SOURCE: Source = Source::new(
    "Shigley's Mechanical Engineering Design, 10th ed.",
    "section 10-9 and example 10-4, Goodman, Gerber and Sines in torsion",
    Known::Memory,
);

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::unit::{megapascal, millimeter, newton};

    fn newtons(x: f64) -> Force {
        Force::new::<newton>(x)
    }

    fn of(bar: f64, tensile: f64, torsional_yield: f64) -> Result<Endurance, FatigueError> {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(bar), mm(bar * 8.0)).unwrap();
        let cycle = Cycle::between(coil, newtons(100.0), newtons(500.0))?;
        let mpa = Pressure::new::<megapascal>;
        let strength = Strength { tensile: mpa(tensile), torsional_yield: mpa(torsional_yield) };
        endurance(cycle, strength, Surface::Unpeened, Criterion::Goodman)
    }

    #[test]
    fn what_the_tests_do_not_cover_is_refused() {
        assert!(of(9.525, 1500.0, 675.0).is_ok());
        for (refused, sentence) in [
            (
                of(10.0, 1500.0, 675.0),
                "a bar of 10 mm; one up to 9.525 mm was expected: no thicker wire was tested; ask the maker for a diagram of the coil's own size",
            ),
            (
                of(5.0, 565.0, 675.0),
                "a tensile strength of 565 MPa; one above 566 MPa was expected: check its unit, for the stresses of the tests would break this steel",
            ),
            (
                of(5.0, 1500.0, 477.0),
                "a stress of 478 MPa; less than the yield strength of 477 MPa in torsion was expected: the coil sets; lower the load or take a thicker bar",
            ),
        ] {
            assert_eq!(refused.unwrap_err().to_string(), sentence);
        }
        assert!(of(5.0, f64::NAN, 675.0).is_err());
        assert!(of(5.0, 1500.0, f64::NAN).is_err());
    }

    #[test]
    fn loads_that_are_no_cycle_are_refused() {
        let mm = Length::new::<millimeter>;
        let coil = Diameters::from_mean(mm(5.0), mm(40.0)).unwrap();
        assert!(Cycle::between(coil, newtons(0.0), newtons(500.0)).is_ok());
        for (least, greatest) in
            [(500.0, 500.0), (500.0, 100.0), (-1.0, 500.0), (0.0, f64::NAN), (0.0, f64::INFINITY)]
        {
            let refused = Cycle::between(coil, newtons(least), newtons(greatest));
            assert!(matches!(refused, Err(FatigueError::Loads { .. })), "{least} {greatest}");
        }
        assert_eq!(
            Cycle::between(coil, newtons(500.0), newtons(100.0)).unwrap_err().to_string(),
            "loads from 500 N to 100 N; a lesser load of 0 or more and a greater one above it was expected: give the two between which the coil works"
        );
    }
}

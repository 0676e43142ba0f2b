//! How far a rate or a load can be trusted, from the doubt of each number that it is reckoned from.
//!
//! A coil off the bench has measured numbers, each with a standard uncertainty: [`Sample`]. A
//! drawing has tolerances, between which a number may lie: [`corners::Toleranced`]. Either gives a
//! rate and a load; the sample with a [`Budget`] of who is to blame for the doubt, the drawing with
//! the least and the most that can come of it.

pub mod corners;

use crate::coil::ends::{Turns, TurnsError};
use crate::coil::{Diameters, DiametersError, rate};
use crate::quantity::{Force, Length, Pressure, SpringRate};
use crate::source::{Known, Source};
use core::fmt;
use core::ops::{Div, Mul};
use thiserror::Error;

/// Where the propagation of doubts comes from.
pub const SOURCE: Source = Source::new(
    "JCGM 100:2008",
    "5.1.2, root sum of squares of sensitivity times standard uncertainty",
    Known::Memory,
);

/// A value with one standard uncertainty.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Doubted<Q> {
    /// The value.
    pub value: Q,
    /// One standard uncertainty of it, from nought up.
    pub doubt: Q,
}

impl<Q: Default> Doubted<Q> {
    /// A value without doubt.
    #[must_use]
    pub fn exact(value: Q) -> Self {
        Self { value, doubt: Q::default() }
    }
}

impl<Q: Div<f64, Output = Q>> Doubted<Q> {
    /// A value known only to lie within ± a half-width.
    ///
    /// ```text
    /// u = a / √3
    /// ```
    ///
    /// # Source
    /// JCGM 100:2008, 4.3.7 (from memory).
    #[must_use]
    pub fn uniform(value: Q, half_width: Q) -> Self {
        Self { value, doubt: half_width / libm::sqrt(3.0) }
    }
}

/// What is not known of a coil's rate, by whose it is: each a standard uncertainty, as a part of the
/// rate.
///
/// What coils share does not average away over them, and cancels where one is compared with another.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RateDoubt {
    /// This coil's own.
    pub own: f64,
    /// What all coils of its drawing have alike: the shape of their ends.
    pub drawing: DrawingDoubt,
    /// What all coils of its steel have alike.
    pub steel: f64,
}

/// A doubt that all coils of one drawing have alike, with the drawing that it is of.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct DrawingDoubt {
    /// The drawing, by its number among those at hand.
    pub number: usize,
    /// One standard uncertainty, as a part of the value.
    pub doubt: f64,
}

impl RateDoubt {
    /// The doubt of one coil's rate by itself.
    #[must_use]
    pub fn total(&self) -> f64 {
        let of_drawing = self.drawing.doubt;
        libm::sqrt(self.own * self.own + of_drawing * of_drawing + self.steel * self.steel)
    }

    /// What it has of the doubt of a drawing: none of any but its own.
    #[must_use]
    pub fn of_drawing(&self, number: usize) -> f64 {
        if self.drawing.number == number { self.drawing.doubt } else { 0.0 }
    }
}

/// The drawings that rates are of, each once.
pub fn drawings<'d>(doubts: impl Iterator<Item = &'d RateDoubt>) -> Vec<usize> {
    let mut numbers: Vec<usize> = Vec::new();
    for doubt in doubts {
        if !numbers.contains(&doubt.drawing.number) {
            numbers.push(doubt.drawing.number);
        }
    }
    numbers
}

/// Which diameter of the coil was measured or drawn. The other two follow from it and the bar, so
/// that an error of the bar enters the mean diameter as well.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// The mean diameter D, from middle to middle of the bar.
    Mean,
    /// The outside diameter De; D = De − d.
    Outside,
    /// The inside diameter Di; D = Di + d.
    Inside,
}

impl Across {
    /// The coil of a bar and this diameter.
    ///
    /// # Errors
    /// [`DiametersError`] when the bar is not above zero or leaves no hole.
    pub fn coil(self, bar: Length, diameter: Length) -> Result<Diameters, DiametersError> {
        match self {
            Self::Mean => Diameters::from_mean(bar, diameter),
            Self::Outside => Diameters::from_outside(bar, diameter),
            Self::Inside => Diameters::from_inside(bar, diameter),
        }
    }

    /// What a thicker bar adds to the mean diameter: ∂D/∂d.
    const fn mean_per_bar(self) -> f64 {
        match self {
            Self::Mean => 0.0,
            Self::Outside => -1.0,
            Self::Inside => 1.0,
        }
    }
}

/// One of the numbers that a rate or a load is reckoned from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Input {
    /// The bar d.
    Bar,
    /// The diameter that was measured.
    Diameter,
    /// The total turns nt.
    TotalTurns,
    /// The turns that lie dead at the ends.
    DeadTurns,
    /// The shear modulus G.
    ShearModulus,
    /// The free height L0.
    FreeHeight,
}

impl Input {
    /// Whether caliper, tape or counting give it. The dead turns and the modulus are assumed; only
    /// a press, which measures the rate itself, makes up for them.
    #[must_use]
    pub const fn measured(self) -> bool {
        !matches!(self, Self::DeadTurns | Self::ShearModulus)
    }
}

impl fmt::Display for Input {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Bar => "the bar",
            Self::Diameter => "the diameter",
            Self::TotalTurns => "the total turns",
            Self::DeadTurns => "the dead turns",
            Self::ShearModulus => "the shear modulus",
            Self::FreeHeight => "the free height",
        })
    }
}

/// What caliper, tape and counting say of a coil, and what is taken of its steel and its ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sample {
    /// Bar d.
    pub bar: Doubted<Length>,
    /// Which diameter was measured.
    pub across: Across,
    /// That diameter.
    pub diameter: Doubted<Length>,
    /// All turns, tip to tip.
    pub total_turns: Doubted<f64>,
    /// Turns that lie dead at the ends: [`Ends::dead_turns`](crate::coil::ends::Ends::dead_turns)
    /// and, as a uniform half-width, [`DEAD_TURNS_DOUBT`](crate::coil::ends::DEAD_TURNS_DOUBT),
    /// unless more is known.
    pub dead_turns: Doubted<f64>,
    /// Shear modulus G.
    pub shear_modulus: Doubted<Pressure>,
    /// Free height L0.
    pub free: Doubted<Length>,
}

/// What one input does to a result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<Q> {
    /// The input.
    pub input: Input,
    /// By how many per cent the result changes where the input changes by one.
    pub sensitivity: f64,
    /// The standard uncertainty that the result would have from this input alone.
    pub doubt: Q,
    /// Its share of the variance, from 0 to 1; 0 where nothing is in doubt.
    pub share: f64,
}

/// A result with its doubt, and what each input has to do with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget<Q> {
    /// The result.
    pub value: Q,
    /// One standard uncertainty of it, by root sum of squares.
    pub doubt: Q,
    /// Every input, in the order of [`Input`].
    pub parts: Vec<Part<Q>>,
}

/// Why numbers and their doubts give no result.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum PropagationError {
    /// A doubt below nought, or not a number.
    #[error(
        "{input} has a doubt of {si} in SI units; nought or more was expected: give the doubt without a sign, or nought"
    )]
    Doubt {
        /// Whose doubt.
        input: Input,
        /// The doubt, in SI units.
        si: f64,
    },
    /// The shear modulus is not above zero.
    #[error("a shear modulus of {} Pa; one above zero was expected: steel has about 79e9 Pa", .modulus.value)]
    Modulus {
        /// The modulus.
        modulus: Pressure,
    },
    /// The height asked for is none at which the coil carries.
    #[error(
        "a height of {} m; above zero and below the free height of {} m was expected: ask for a height under load",
        .height.value, .free.value
    )]
    Height {
        /// The height.
        height: Length,
        /// The free height.
        free: Length,
    },
    /// Bar and diameter make no coil.
    #[error(transparent)]
    Diameters(#[from] DiametersError),
    /// The turns make no spring.
    #[error(transparent)]
    Turns(#[from] TurnsError),
}

/// One spring without any doubt.
#[derive(Clone, Copy)]
struct Spring {
    coil: Diameters,
    turns: Turns,
    shear_modulus: Pressure,
    free: Length,
}

impl Spring {
    fn new(
        coil: Diameters,
        turns: Turns,
        shear_modulus: Pressure,
        free: Length,
    ) -> Result<Self, PropagationError> {
        if !(shear_modulus.value > 0.0 && shear_modulus.value.is_finite()) {
            return Err(PropagationError::Modulus { modulus: shear_modulus });
        }
        Ok(Self { coil, turns, shear_modulus, free })
    }

    fn rate(&self) -> SpringRate {
        rate::rate(self.shear_modulus, self.coil, self.turns)
    }

    /// A height at which the spring carries.
    fn under_load(&self, height: Length) -> Result<Length, PropagationError> {
        if height.value > 0.0 && height < self.free && self.free.value.is_finite() {
            Ok(self.free - height)
        } else {
            Err(PropagationError::Height { height, free: self.free })
        }
    }
}

/// An input's value and doubt in SI units, and the relative change of the result per unit of it.
struct Term {
    input: Input,
    value: f64,
    doubt: f64,
    per_unit: f64,
}

impl Term {
    fn new(input: Input, value: f64, doubt: f64, per_unit: f64) -> Result<Self, PropagationError> {
        if doubt >= 0.0 && doubt.is_finite() {
            Ok(Self { input, value, doubt, per_unit })
        } else {
            Err(PropagationError::Doubt { input, si: doubt })
        }
    }
}

impl Sample {
    fn spring(&self) -> Result<Spring, PropagationError> {
        let coil = self.across.coil(self.bar.value, self.diameter.value)?;
        let turns = Turns::new(self.total_turns.value, self.dead_turns.value)?;
        Spring::new(coil, turns, self.shear_modulus.value, self.free.value)
    }

    /// What the rate of the spring has of each input.
    fn terms_of_rate(&self, spring: &Spring) -> Result<Vec<Term>, PropagationError> {
        let (bar, mean) = (spring.coil.bar().value, spring.coil.mean().value);
        let active = spring.turns.active();
        let (d, across) = (self.bar, self.diameter);
        let (total, dead, modulus) = (self.total_turns, self.dead_turns, self.shear_modulus);
        let per_bar = 4.0 / bar - 3.0 * self.across.mean_per_bar() / mean;
        Ok(vec![
            Term::new(Input::Bar, d.value.value, d.doubt.value, per_bar)?,
            Term::new(Input::Diameter, across.value.value, across.doubt.value, -3.0 / mean)?,
            Term::new(Input::TotalTurns, total.value, total.doubt, -1.0 / active)?,
            Term::new(Input::DeadTurns, dead.value, dead.doubt, 1.0 / active)?,
            Term::new(
                Input::ShearModulus,
                modulus.value.value,
                modulus.doubt.value,
                1.0 / modulus.value.value,
            )?,
        ])
    }
}

/// The rate of a measured coil, and its doubt.
///
/// ```text
/// k = G · d⁴ / (8 · D³ · n)      D = De − d = Di + d      n = nt − dead turns
///
/// (u_k/k)² = (u_G/G)² + (c_d · u_d/d)² + (c_D · u_D/D)² + (u_nt/n)² + (u_dead/n)²
///
/// measured across   c_d           on the diameter
/// mean              4             −3
/// outside           4 + 3/C       −3 (1 + 1/C)
/// inside            4 − 3/C       −3 (1 − 1/C)
/// ```
/// `d` bar, m · `D`, `De`, `Di` mean, outside, inside diameter, m · `nt`, `n` total, active turns ·
/// `G` shear modulus, Pa · `C` index · `u` one standard uncertainty; the factors on the right are
/// the sensitivities, so that one per cent more bar is four per cent and more of rate
///
/// # Range
/// That of [`coil::rate::rate`](rate::rate). First order: right to a part in a hundred of the doubt
/// while the relative doubt is under 5 %. The inputs are independent of each other; an error that a
/// caliper puts into bar and diameter alike is not told apart.
///
/// # Errors
/// [`PropagationError`], where the numbers make no spring or a doubt is below nought.
///
/// # Source
/// [`SOURCE`]; the sensitivities are derived from the rate.
///
/// # Example
/// A coil of 20 mm bar, 120 mm outside, 7½ turns, tapered ends, by caliper and count:
/// ```
/// use coilnest::coil::ends::{DEAD_TURNS_DOUBT, Ends};
/// use coilnest::propagation::{self, Across, Doubted, Input, Sample};
/// use coilnest::quantity::{Length, Pressure};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let gpa = Pressure::new::<gigapascal>;
/// let sample = Sample {
///     bar: Doubted { value: mm(20.0), doubt: mm(0.1) },
///     across: Across::Outside,
///     diameter: Doubted { value: mm(120.0), doubt: mm(0.5) },
///     total_turns: Doubted { value: 7.5, doubt: 0.05 },
///     dead_turns: Doubted::uniform(Ends::TaperedGround.dead_turns(), DEAD_TURNS_DOUBT),
///     shear_modulus: Doubted { value: gpa(78.5), doubt: gpa(0.8) },
///     free: Doubted { value: mm(300.0), doubt: mm(0.6) },
/// };
/// let rate = propagation::rate(&sample)?;
/// assert!((rate.value.get::<newton_per_millimeter>() - 261.667).abs() < 1e-3);
/// // 2.3 % from the bar, 1.5 % from the outside, 0.83 % and 4.8 % from the turns, 1.0 % from G.
/// assert!((rate.doubt.get::<newton_per_millimeter>() - 14.899).abs() < 5e-4);
/// assert_eq!(rate.largest().map(|part| part.input), Some(Input::DeadTurns));
/// // With the tools at hand, the bar is what to measure again; known exactly, it would leave 13.63.
/// assert_eq!(rate.worth_measuring().map(|part| part.input), Some(Input::Bar));
/// let left = rate.doubt_left(Input::Bar, 0.0);
/// assert!((left.get::<newton_per_millimeter>() - 13.630).abs() < 5e-4);
/// # Ok::<(), propagation::PropagationError>(())
/// ```
pub fn rate(sample: &Sample) -> Result<Budget<SpringRate>, PropagationError> {
    let spring = sample.spring()?;
    Ok(Budget::of(spring.rate(), &sample.terms_of_rate(&spring)?))
}

/// The load of a measured coil at a height, and its doubt.
///
/// ```text
/// F = k · s      s = L0 − h
/// u_F² = (s · u_k)² + (k · u_L0)²
/// ```
/// `k` rate, N/m, with its doubt by [`rate`](fn@rate) · `L0` free height, m · `h` height, m, taken
/// as exact
///
/// # Range
/// As [`rate`](fn@rate), and heights from below free to solid: that the coil can be so short is not
/// asked.
///
/// # Errors
/// [`PropagationError`], as for the rate and where the height is not below the free height.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::propagation::{self, Across, Doubted, Input, Sample};
/// use coilnest::quantity::{Length, Pressure, unit::{gigapascal, millimeter, newton}};
///
/// let mm = Length::new::<millimeter>;
/// let sample = Sample {
///     bar: Doubted::exact(mm(10.0)),
///     across: Across::Mean,
///     diameter: Doubted::exact(mm(80.0)),
///     total_turns: Doubted::exact(7.0),
///     dead_turns: Doubted { value: 2.0, doubt: 0.1 },
///     shear_modulus: Doubted::exact(Pressure::new::<gigapascal>(80.0)),
///     free: Doubted { value: mm(200.0), doubt: mm(1.0) },
/// };
/// let load = propagation::load(&sample, mm(160.0))?;
/// assert!((load.value.get::<newton>() - 1562.5).abs() < 1e-9); // 39.0625 · 40
/// // 0.1/5 of the load from the turns, 1/40 from the free height.
/// assert!((load.doubt.get::<newton>() - 1562.5 * 0.032_015_6).abs() < 1e-3);
/// assert_eq!(load.worth_measuring().map(|part| part.input), Some(Input::FreeHeight));
/// # Ok::<(), propagation::PropagationError>(())
/// ```
pub fn load(sample: &Sample, height: Length) -> Result<Budget<Force>, PropagationError> {
    let spring = sample.spring()?;
    let deflection = spring.under_load(height)?;
    let free = sample.free;
    let mut terms = sample.terms_of_rate(&spring)?;
    let per_unit = 1.0 / deflection.value;
    terms.push(Term::new(Input::FreeHeight, free.value.value, free.doubt.value, per_unit)?);
    Ok(Budget::of(spring.rate() * deflection, &terms))
}

impl<Q: Copy + Mul<f64, Output = Q>> Budget<Q> {
    fn of(value: Q, terms: &[Term]) -> Self {
        let relative = |term: &Term| term.per_unit.abs() * term.doubt;
        let variance: f64 = terms.iter().map(|term| relative(term) * relative(term)).sum();
        let share = |of: f64| if variance > 0.0 { of * of / variance } else { 0.0 };
        let part = |term: &Term| Part {
            input: term.input,
            sensitivity: term.per_unit * term.value,
            doubt: value * relative(term),
            share: share(relative(term)),
        };
        Self { value, doubt: value * libm::sqrt(variance), parts: terms.iter().map(part).collect() }
    }

    /// The input that has the largest share of the doubt; none where nothing is in doubt.
    #[must_use]
    pub fn largest(&self) -> Option<Part<Q>> {
        self.largest_of(|_| true)
    }

    /// The measurement that would narrow the result most if it were made better: the largest share
    /// among those that are measured ([`Input::measured`]); none where none of them is in doubt.
    ///
    /// [`Budget::doubt_left`] tells by how much. Where [`Budget::largest`] is another input, no
    /// measurement with caliper and tape does as much as a press test, which needs neither the dead
    /// turns nor the modulus.
    #[must_use]
    pub fn worth_measuring(&self) -> Option<Part<Q>> {
        self.largest_of(Input::measured)
    }

    fn largest_of(&self, wanted: impl Fn(Input) -> bool) -> Option<Part<Q>> {
        let parts = self.parts.iter().filter(|part| wanted(part.input) && part.share > 0.0);
        parts.copied().reduce(|first, next| if next.share > first.share { next } else { first })
    }

    /// The doubt that would be left if one input's doubt were `ratio` of what it is: 0 where it
    /// became known exactly, 0.5 where it was measured twice as well, above 1 where worse.
    ///
    /// ```text
    /// u' = u · √(1 − share · (1 − ratio²))
    /// ```
    #[must_use]
    pub fn doubt_left(&self, input: Input, ratio: f64) -> Q {
        let share: f64 =
            self.parts.iter().filter(|part| part.input == input).map(|part| part.share).sum();
        self.doubt * libm::sqrt(1.0 - share * (1.0 - ratio * ratio))
    }
}

#[cfg(test)]
mod tests;

//! How far a rate or a load can be trusted, from the doubt of each number that it is worked out from.
//!
//! A [`Drawing`] has tolerances, between which a number may lie. It gives the least and the most that can
//! come of it by itself; here it gives a rate and a load with a [`Budget`] of who is to blame for the
//! doubt.

use crate::coil::DiameterKind;
use crate::coil::ends::dead_turns_doubt;
use crate::drawing::{Drawing, Figure, Figures, Given, Point, both};
use crate::formula::Formula;
use crate::quantity::{Force, Length, SpringRate, si};
use crate::source::{Known, Source};
use core::ops::Mul;

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
    /// One standard uncertainty of it, from zero up.
    pub doubt: Q,
}

impl<Q: Default> Doubted<Q> {
    /// A value without doubt.
    #[must_use]
    pub fn exact(value: Q) -> Self {
        Self { value, doubt: Q::default() }
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
    /// That of the [rate](fn@rate) of a drawing, which has this number among those at hand.
    ///
    /// Coils of one drawing have the shape of their ends in common ([`dead_turns_doubt`]), coils of one steel
    /// its modulus. What its sizes or a stated rate may be off is each coil's own.
    ///
    /// # Errors
    /// What is missing.
    pub fn of(drawing: &Drawing, number: usize) -> Result<Self, Figures> {
        let (_, mut terms) = terms_that_count(drawing)?;
        let mut shared = Self::default();
        shared.drawing.number = number;
        if drawing.stated_rate().is_none() {
            for term in &mut terms {
                let per_unit = term.per_unit.abs();
                match term.input {
                    Figure::ShearModulus => {
                        shared.steel = per_unit * term.doubt;
                        term.doubt = 0.0;
                    }
                    Figure::DeadTurns => {
                        let (own, of_drawing) = dead_turns_doubt(term.half_width);
                        shared.drawing.doubt = per_unit * of_drawing;
                        term.doubt = own;
                    }
                    _ => {}
                }
            }
        }
        Ok(Self { own: libm::sqrt(variance(&terms)), ..shared })
    }

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

/// What one input does to a result.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part<Q> {
    /// The input.
    pub input: Figure,
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
    /// Every input.
    pub parts: Vec<Part<Q>>,
}

/// An input's value and doubt in SI units, and the relative change of the result per unit of it.
struct Term {
    input: Figure,
    value: f64,
    doubt: f64,
    half_width: f64,
    per_unit: f64,
    /// Whether both ends of its tolerance are known.
    told: bool,
}

impl Term {
    fn new(input: Figure, given: Given<f64>, per_unit: f64) -> Self {
        let (doubt, half_width) = (given.doubt(), given.half_width());
        let told = given.is_complete();
        Self { input, value: given.nominal(), doubt, half_width, per_unit, told }
    }
}

fn metres(given: Given<Length>) -> Given<f64> {
    given.map(|length| length.value)
}

/// By how many per cent a rate changes where an input changes by one, in symbols. `Dx` is the diameter
/// that is given.
#[must_use]
pub const fn sensitivity(input: Figure, across: DiameterKind) -> Formula {
    const MEAN: Formula = Formula::new("{sk} = 4");
    const OUTSIDE: Formula = Formula::new("{sk} = 4 + 3 · {d} / {D}");
    const INSIDE: Formula = Formula::new("{sk} = 4 − 3 · {d} / {D}");
    const DIAMETER: Formula = Formula::new("{sk} = −3 · {Dx} / {D}");
    const TOTAL: Formula = Formula::new("{sk} = −{nt} / ({nt} − {nd})");
    const DEAD: Formula = Formula::new("{sk} = {nd} / ({nt} − {nd})");
    const AS_IT_IS: Formula = Formula::new("{sk} = 1");
    match (input, across) {
        (Figure::Bar, DiameterKind::Mean) => MEAN,
        (Figure::Bar, DiameterKind::Outside) => OUTSIDE,
        (Figure::Bar, DiameterKind::Inside) => INSIDE,
        (Figure::Diameter, _) => DIAMETER,
        (Figure::TotalTurns, _) => TOTAL,
        (Figure::DeadTurns, _) => DEAD,
        _ => AS_IT_IS,
    }
}

/// What the rate by the sizes has of each of them.
fn terms(drawing: &Drawing) -> Result<(SpringRate, Vec<Term>), Figures> {
    let point = Point::nominal(drawing);
    let rate = point.drawn_rate()?;
    let (coil, turns) = (point.coil()?, point.turns()?);
    let (bar, mean, active) = (coil.bar().value, coil.mean().value, turns.active());
    let (across, diameter) = drawing.diameter.ok_or(Figure::Diameter)?;
    let shear = drawing.shear().ok_or(Figure::ShearModulus)?.map(|modulus| modulus.value);
    let per_bar = 4.0 / bar - 3.0 * across.mean_per_bar() / mean;
    let terms = vec![
        Term::new(Figure::Bar, metres(drawing.bar.ok_or(Figure::Bar)?), per_bar),
        Term::new(Figure::Diameter, metres(diameter), -3.0 / mean),
        Term::new(
            Figure::TotalTurns,
            drawing.total_turns.ok_or(Figure::TotalTurns)?,
            -1.0 / active,
        ),
        Term::new(Figure::DeadTurns, drawing.dead().ok_or(Figure::Ends)?, 1.0 / active),
        Term::new(Figure::ShearModulus, shear, 1.0 / shear.nominal()),
    ];
    Ok((rate, terms))
}

/// The rate of a coil by its sizes, whatever is stated, and its doubt.
///
/// ```text
/// k = G · d⁴ / (8 · D³ · n)      D = De − d = Di + d      n = nt − dead turns
///
/// (u_k/k)² = (u_G/G)² + (c_d · u_d/d)² + (c_D · u_D/D)² + (u_nt/n)² + (u_dead/n)²
///
/// drawn across      c_d           on the diameter
/// mean              4             −3
/// outside           4 + 3/C       −3 (1 + 1/C)
/// inside            4 − 3/C       −3 (1 − 1/C)
/// ```
/// `d` bar, m · `D`, `De`, `Di` mean, outside, inside diameter, m · `nt`, `n` total, active turns ·
/// `G` shear modulus, Pa · `C` index · `u` one standard uncertainty, [`Given::doubt`]; the factors on
/// the right are the sensitivities, so that one per cent more bar is four per cent and more of rate
///
/// A tolerance that nobody gave counts as exact: [`Drawing::drawn_rate`] names it.
///
/// # Range
/// That of [`coil::rate::rate`](crate::coil::rate::rate). First order: right to a part in a hundred of
/// the doubt while the relative doubt is under 5 %. The inputs are independent of each other; an error
/// that a caliper puts into bar and diameter alike is not told apart.
///
/// # Errors
/// What is missing.
///
/// # Source
/// [`SOURCE`]; the sensitivities are derived from the rate.
///
/// # Example
/// A coil of 20 mm bar, 120 mm outside, 7½ turns, tapered ends:
/// ```
/// use coilnest::coil::{DiameterKind, ends::Ends};
/// use coilnest::drawing::{Drawing, Figure, Given};
/// use coilnest::propagation;
/// use coilnest::quantity::{Length, Pressure};
/// use coilnest::quantity::unit::{gigapascal, millimeter, newton_per_millimeter};
///
/// let within = |value: f64, by: f64| {
///     let mm = Length::new::<millimeter>;
///     Given::around(mm(value), mm(by), mm(by))
/// };
/// let coil = Drawing {
///     bar: Some(within(20.0, 0.175)?),
///     diameter: Some((DiameterKind::Outside, within(120.0, 0.875)?)),
///     total_turns: Some(Given::exact(7.5)),
///     ends: Some(Ends::TaperedGround),
///     shear_modulus: Some(Given::exact(Pressure::new::<gigapascal>(78.5))),
///     ..Drawing::default()
/// };
/// let rate = propagation::drawn_rate(&coil).unwrap();
/// assert!((rate.value.get::<newton_per_millimeter>() - 261.667).abs() < 1e-3);
/// // 2.3 % from the bar, 1.5 % from the outside, 4.8 % from the dead turns.
/// assert!((rate.doubt.get::<newton_per_millimeter>() - 14.528).abs() < 5e-3);
/// assert_eq!(rate.largest().map(|part| part.input), Some(Figure::DeadTurns));
/// // With the tools at hand, the bar is what to measure again.
/// assert_eq!(rate.worth_measuring().map(|part| part.input), Some(Figure::Bar));
/// # Ok::<(), coilnest::drawing::Crossed<Length>>(())
/// ```
pub fn drawn_rate(drawing: &Drawing) -> Result<Budget<SpringRate>, Figures> {
    let (rate, terms) = terms(drawing)?;
    Ok(Budget::of(rate, &terms))
}

/// The rate that counts, the stated one before that of the sizes, and its doubt.
///
/// A stated rate is doubted by its tolerance. Sizes that are given with theirs, and to first order can
/// give that rate, bound it too: the lesser of both doubts holds, as in [`Drawing::rate`]. Where there are
/// none, a rate without a tolerance counts as exact.
///
/// # Errors
/// What is missing.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::drawing::{Drawing, Given};
/// use coilnest::propagation;
/// use coilnest::quantity::{SpringRate, unit::newton_per_millimeter};
///
/// let rate = SpringRate::new::<newton_per_millimeter>;
/// let stated = Given::around(rate(200.0), rate(10.0), rate(10.0))?;
/// let coil = Drawing { rate: Some(stated), ..Drawing::default() };
/// let doubt = propagation::rate(&coil).unwrap().doubt.get::<newton_per_millimeter>();
/// assert!((doubt - 10.0 / 3f64.sqrt()).abs() < 1e-9);
/// # Ok::<(), coilnest::drawing::Crossed<SpringRate>>(())
/// ```
pub fn rate(drawing: &Drawing) -> Result<Budget<SpringRate>, Figures> {
    let (value, terms) = terms_that_count(drawing)?;
    Ok(Budget::of(value, &terms))
}

fn terms_that_count(drawing: &Drawing) -> Result<(SpringRate, Vec<Term>), Figures> {
    let Some(stated) = drawing.stated_rate() else { return terms(drawing) };
    let value = si(stated.nominal());
    let own = vec![Term::new(Figure::Rate, stated, 1.0 / stated.nominal())];
    let drawn = terms(drawing).ok().filter(|(drawn, terms)| {
        let less_doubted = !stated.is_complete() || variance(terms) < variance(&own);
        let reach: f64 = terms.iter().map(|term| term.per_unit.abs() * term.half_width).sum();
        let off = (value / *drawn).value - 1.0;
        less_doubted && terms.iter().all(|term| term.told) && off.abs() <= reach
    });
    Ok((value, drawn.map_or(own, |(_, terms)| terms)))
}

/// The load at a height, zero where the coil stands free, and its doubt.
///
/// ```text
/// F = k · s      s = L0 − h
/// u_F² = (s · u_k)² + (k · u_L0)²
/// ```
/// `k` rate, N/m, with its doubt by [`rate`](fn@rate) · `L0` free height, m · `h` height, m, taken
/// as exact
///
/// # Range
/// As [`rate`](fn@rate), and heights from free to solid: that the coil can be so short is not asked.
///
/// # Errors
/// What is missing.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::drawing::{Drawing, Figure, Given};
/// use coilnest::propagation;
/// use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
///
/// let (mm, rate) = (Length::new::<millimeter>, SpringRate::new::<newton_per_millimeter>);
/// let by = rate(5.0);
/// let coil = Drawing {
///     rate: Given::around(rate(40.0), by, by).ok(),
///     free: Given::around(mm(200.0), mm(2.0), mm(2.0)).ok(),
///     ..Drawing::default()
/// };
/// let load = propagation::load(&coil, mm(160.0)).unwrap();
/// assert!((load.value.get::<newton>() - 1600.0).abs() < 1e-9);
/// // An eighth of the load from the rate, 1/20 from the free height, each over √3.
/// assert!((load.doubt.get::<newton>() - 1600.0 * 0.077_728_2).abs() < 1e-3);
/// assert_eq!(load.worth_measuring().map(|part| part.input), Some(Figure::FreeHeight));
/// ```
pub fn load(drawing: &Drawing, height: Length) -> Result<Budget<Force>, Figures> {
    let ((rate, mut terms), free) =
        both(terms_that_count(drawing), drawing.free.ok_or(Figure::FreeHeight.into()))?;
    let deflection = free.nominal() - height;
    if deflection <= Length::default() {
        return Ok(Budget::of(Force::default(), &[]));
    }
    terms.push(Term::new(Figure::FreeHeight, metres(free), 1.0 / deflection.value));
    Ok(Budget::of(rate * deflection, &terms))
}

fn variance(terms: &[Term]) -> f64 {
    terms.iter().map(|term| term.per_unit * term.doubt).map(|part| part * part).sum()
}

impl<Q: Copy + Mul<f64, Output = Q>> Budget<Q> {
    fn of(value: Q, terms: &[Term]) -> Self {
        let relative = |term: &Term| term.per_unit.abs() * term.doubt;
        let variance = variance(terms);
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
    /// among those that are measured ([`Figure::measured`]); none where none of them is in doubt.
    ///
    /// [`Budget::doubt_left`] tells by how much. Where [`Budget::largest`] is another input, no
    /// measurement with caliper and tape does as much as a press test, which needs neither the dead
    /// turns nor the modulus.
    #[must_use]
    pub fn worth_measuring(&self) -> Option<Part<Q>> {
        self.largest_of(Figure::measured)
    }

    fn largest_of(&self, wanted: impl Fn(Figure) -> bool) -> Option<Part<Q>> {
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
    pub fn doubt_left(&self, input: Figure, ratio: f64) -> Q {
        let share: f64 =
            self.parts.iter().filter(|part| part.input == input).map(|part| part.share).sum();
        self.doubt * libm::sqrt(1.0 - share * (1.0 - ratio * ratio))
    }
}

#[cfg(test)]
mod tests;

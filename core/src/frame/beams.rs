//! From nests to what carries them: an equalizer beam on two boxes, an axle on two wheels.
//!
//! A beam that is free to tilt shares out its loads by the lever, whatever its boxes do. The same
//! shares say how far a nest rises when a box does, for the work is the same either way.

use crate::formula::Formula;
use crate::quantity::{Force, Length, System};
use crate::say::{Nth, Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// What a wheel or a box carries.
pub const LOAD: Formula = Formula::new("{Q} = Σ [{c} · {F}]");

/// Where the shares come from.
pub const SOURCE: Source = Source::new("statics", "the lever", Known::Derived);

/// What carries parts of the loads of nests: a box, a wheel. Its own weight is not among them.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearing {
    parts: Vec<(usize, f64)>,
}

impl Bearing {
    /// What carries one nest and nothing else.
    #[must_use]
    pub fn under(support: usize) -> Self {
        Self { parts: vec![(support, 1.0)] }
    }

    /// Which nests it carries, and what part of each, none twice; below zero of a nest whose load
    /// lifts it.
    #[must_use]
    pub fn parts(&self) -> &[(usize, f64)] {
        &self.parts
    }

    /// What it carries, from the loads of all nests. A nest that is not in the list carries nothing.
    #[must_use]
    pub fn load(&self, loads: &[Force]) -> Force {
        let mut sum = Force::default();
        for (support, part) in &self.parts {
            sum += loads.get(*support).copied().unwrap_or_default() * *part;
        }
        sum
    }

    fn with(mut self, other: &Self, factor: f64) -> Self {
        for (support, part) in &other.parts {
            match self.parts.iter_mut().find(|(of, _)| of == support) {
                Some((_, sum)) => *sum += part * factor,
                None => self.parts.push((*support, part * factor)),
            }
        }
        self
    }
}

/// A nest on a beam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Which nest of the frame, from 0.
    pub support: usize,
    /// Where it stands along the beam.
    pub at: Length,
}

/// Why a beam or an axle cannot carry. Nests are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum BeamError {
    /// A beam that carries nothing.
    Empty,
    /// The boxes are not two places.
    Boxes {
        /// Where the first is.
        first: Length,
        /// Where the second is.
        second: Length,
    },
    /// A nest that is not between the boxes.
    Beyond {
        /// Which support.
        support: Nth,
        /// Where it stands.
        at: Length,
        /// Where the first box is.
        first: Length,
        /// Where the second box is.
        second: Length,
    },
    /// A nest that stands on the beam twice.
    Twice {
        /// Which support.
        support: Nth,
    },
    /// A distance that is not above zero.
    Apart {
        /// Boxes or wheels.
        what: &'static str,
        /// The distance.
        apart: Length,
    },
}

says! {
    BeamError {
        Empty => "a beam without a nest", "one or more", "give where each stands on the beam";
        Boxes { first, second } =>
            "the boxes of a beam at {first} and {second}", "the first before the second",
            "measure both from one end";
        Beyond { support, at, first, second } =>
            "{support} stands at {at} of the beam",
            "a place between its boxes at {first} and {second}",
            "measure it from the same end as the boxes";
        Twice { support } => "{support} is on the beam twice", "once", "take one away";
        Apart { what, apart } =>
            "the {what} of an axle are {apart} apart", "a distance above zero",
            "measure from middle to middle";
    }
}

/// An equalizer beam on two boxes.
///
/// ```text
/// R_2 = Σ F_i · (x_i − x_1)/(x_2 − x_1)      R_1 = Σ F_i − R_2
/// ```
/// `x_1`, `x_2` where the boxes are along the beam, `x_i` a nest, m · `F`, `R` loads of nests, boxes
///
/// # Range
/// A beam that tilts freely on both boxes, nests between them; its own weight is left out.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::frame::beams::{Beam, Seat};
/// use coilnest::quantity::{Force, Length, unit::{millimeter, newton}};
///
/// let (mm, n) = (Length::new::<millimeter>, Force::new::<newton>);
/// let seats = [Seat { support: 0, at: mm(500.0) }, Seat { support: 1, at: mm(1300.0) }];
/// let beam = Beam::new([mm(0.0), mm(2000.0)], seats.to_vec())?;
/// let [first, second] = beam.boxes();
/// let loads = [n(10_000.0), n(12_000.0)];
/// assert!((first.load(&loads).get::<newton>() - 11_700.0).abs() < 1e-9); // 0.75·10 + 0.35·12
/// assert!((second.load(&loads).get::<newton>() - 10_300.0).abs() < 1e-9);
/// # Ok::<(), coilnest::frame::beams::BeamError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Beam {
    boxes: [Length; 2],
    seats: Vec<Seat>,
}

impl Beam {
    /// A beam on boxes at two places along it, with nests between them.
    ///
    /// # Errors
    /// [`BeamError::Empty`], [`BeamError::Boxes`], [`BeamError::Beyond`], [`BeamError::Twice`].
    pub fn new(boxes: [Length; 2], seats: Vec<Seat>) -> Result<Self, BeamError> {
        let [first, second] = boxes;
        if !(first < second && (second - first).value.is_finite()) {
            return Err(BeamError::Boxes { first, second });
        }
        if seats.is_empty() {
            return Err(BeamError::Empty);
        }
        for (index, Seat { support, at }) in seats.iter().copied().enumerate() {
            if !(first..=second).contains(&at) {
                let support = Nth::of(support);
                return Err(BeamError::Beyond { support, at, first, second });
            }
            if seats.iter().take(index).any(|seat| seat.support == support) {
                return Err(BeamError::Twice { support: Nth::of(support) });
            }
        }
        Ok(Self { boxes, seats })
    }

    /// What each box carries.
    #[must_use]
    pub fn boxes(&self) -> [Bearing; 2] {
        let [first, second] = self.boxes;
        let share = |seat: &Seat| ((seat.at - first) / (second - first)).value;
        let near = self.seats.iter().map(|seat| (seat.support, 1.0 - share(seat)));
        let far = self.seats.iter().map(|seat| (seat.support, share(seat)));
        [Bearing { parts: near.collect() }, Bearing { parts: far.collect() }]
    }
}

/// An axle with a box on each side, and its two wheels.
///
/// ```text
/// Q_1 = R_1 · (c + j)/(2 c) + R_2 · (c − j)/(2 c)      Q_2 likewise
/// ```
/// `j` from box to box, `c` from one wheel's contact to the other's, m · `R`, `Q` loads of boxes,
/// wheels. Boxes outside the wheels take some load off the other side's wheel.
///
/// # Range
/// Boxes and wheels even about the middle; the axle's own weight is left out.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::frame::beams::{Axle, Bearing};
/// use coilnest::quantity::{Force, Length, unit::{millimeter, newton}};
///
/// let (mm, n) = (Length::new::<millimeter>, Force::new::<newton>);
/// let axle = Axle::new(mm(1800.0), mm(1200.0))?;
/// let [left, right] = axle.wheels(&[Bearing::under(0), Bearing::under(1)]);
/// let loads = [n(30_000.0), n(20_000.0)];
/// assert!((left.load(&loads).get::<newton>() - 32_500.0).abs() < 1e-9); // 1.25·30 − 0.25·20
/// assert!((right.load(&loads).get::<newton>() - 17_500.0).abs() < 1e-9);
/// # Ok::<(), coilnest::frame::beams::BeamError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axle {
    boxes: Length,
    wheels: Length,
}

impl Axle {
    /// An axle by the distances of its boxes and of its wheels.
    ///
    /// # Errors
    /// [`BeamError::Apart`].
    pub fn new(boxes: Length, wheels: Length) -> Result<Self, BeamError> {
        for (what, apart) in [("boxes", boxes), ("wheels", wheels)] {
            if !(apart.value > 0.0 && apart.value.is_finite()) {
                return Err(BeamError::Apart { what, apart });
            }
        }
        Ok(Self { boxes, wheels })
    }

    /// What each wheel carries, from what each box does.
    #[must_use]
    pub fn wheels(&self, boxes: &[Bearing; 2]) -> [Bearing; 2] {
        let [first, second] = boxes;
        let near = ((self.wheels + self.boxes) / (2.0 * self.wheels)).value;
        let far = 1.0 - near;
        let nothing = || Bearing { parts: Vec::new() };
        [
            nothing().with(first, near).with(second, far),
            nothing().with(first, far).with(second, near),
        ]
    }
}

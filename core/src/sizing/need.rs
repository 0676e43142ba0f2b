//! What a coil is needed for: its loads, its room, what it is made of and how.

use crate::coil::buckling::Seating;
use crate::coil::ends::Ends;
use crate::coil::gaps::{Duty, LEAST_CLASH_ALLOWANCE};
use crate::coil::stress::Factor;
use crate::coil::{Coiling, Diameters, proportions, set};
use crate::material::{Presetting, Steel, Strength, StrengthError};
use crate::quantity::unit::degree;
use crate::quantity::{Angle, Force, Length, MassDensity, Pressure, SpringRate};

/// By how much a load or a rate may be off where nobody says more: a twentieth.
///
/// Common practice, no source: sizes and turns come in steps, and a maker holds no less.
pub const USUAL_TOLERANCE: f64 = 0.05;

/// What the coil has to carry.
///
/// # Example
/// ```
/// use coilnest::quantity::{Force, Length, unit::{millimeter, newton, newton_per_millimeter}};
/// use coilnest::sizing::Work;
///
/// let (mm, newtons) = (Length::new::<millimeter>, Force::new::<newton>);
/// let work = Work::two_loads(newtons(1000.0), mm(120.0), newtons(1500.0), mm(110.0));
/// assert!((work.rate().get::<newton_per_millimeter>() - 50.0).abs() < 1e-9);
/// assert_eq!((work.lowest(), work.greatest()), (Some(mm(110.0)), newtons(1500.0)));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Work {
    /// A load F1.
    pub load: Force,
    /// The height h1 at which it is carried. None leaves it to the coil, which then stands as low
    /// under its load as its [`Reserve`] lets it.
    pub height: Option<Length>,
    /// By how much F1 may be off, as a share of it.
    pub within: f64,
    /// How stiff the coil is.
    pub stiffness: Stiffness,
}

/// How stiff a coil has to be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stiffness {
    /// By its rate.
    Rate {
        /// The rate k.
        rate: SpringRate,
        /// By how much it may be off, as a share of it.
        within: f64,
    },
    /// By a second load, `k = (F2 − F1)/(h1 − h2)`.
    SecondLoad {
        /// The load F2.
        load: Force,
        /// The height h2 at which it is carried.
        height: Length,
        /// By how much F2 may be off, as a share of it.
        within: f64,
    },
}

impl Work {
    /// A load at a height, and a rate, each within [`USUAL_TOLERANCE`].
    #[must_use]
    pub const fn at_height(load: Force, height: Length, rate: SpringRate) -> Self {
        let stiffness = Stiffness::Rate { rate, within: USUAL_TOLERANCE };
        Self { load, height: Some(height), within: USUAL_TOLERANCE, stiffness }
    }

    /// A load at whatever height, and a rate, within [`USUAL_TOLERANCE`].
    #[must_use]
    pub const fn at_any_height(load: Force, rate: SpringRate) -> Self {
        let stiffness = Stiffness::Rate { rate, within: USUAL_TOLERANCE };
        Self { load, height: None, within: USUAL_TOLERANCE, stiffness }
    }

    /// Two loads at two heights, each within [`USUAL_TOLERANCE`].
    #[must_use]
    pub const fn two_loads(load: Force, height: Length, second: Force, at: Length) -> Self {
        let stiffness = Stiffness::SecondLoad { load: second, height: at, within: USUAL_TOLERANCE };
        Self { load, height: Some(height), within: USUAL_TOLERANCE, stiffness }
    }

    /// The rate that is needed, k or `(F2 − F1)/(h1 − h2)`; zero where F2 has no first height to
    /// go by.
    #[must_use]
    pub fn rate(&self) -> SpringRate {
        match (self.stiffness, self.height) {
            (Stiffness::Rate { rate, .. }, _) => rate,
            (Stiffness::SecondLoad { load, height, .. }, Some(first)) => {
                (load - self.load) / (first - height)
            }
            (Stiffness::SecondLoad { .. }, None) => SpringRate::default(),
        }
    }

    /// The lowest height at work, where it is given.
    #[must_use]
    pub fn lowest(&self) -> Option<Length> {
        match (self.stiffness, self.height) {
            (Stiffness::SecondLoad { height, .. }, Some(first)) if height < first => Some(height),
            _ => self.height,
        }
    }

    /// The load at the lowest height, which is the greatest.
    #[must_use]
    pub fn greatest(&self) -> Force {
        match self.stiffness {
            Stiffness::SecondLoad { load, .. } if load > self.load => load,
            _ => self.load,
        }
    }
}

/// A coil within the one that is sized.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InnerCoil {
    /// Its bar and diameter, free.
    pub coil: Diameters,
    /// How much its outside diameter grows until it is solid.
    pub growth: Length,
}

/// The room that the coil has. What is not given asks for nothing; [`Room::default`] gives nothing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Room {
    /// Diameter of the pocket, which the outside of the coil, grown, must go into.
    pub pocket: Option<Length>,
    /// Diameter of the post, which the inside of the coil must go over.
    pub post: Option<Length>,
    /// Least radial clearance in the pocket and over the post.
    pub clearance: Length,
    /// The coil around this one.
    pub outer: Option<Diameters>,
    /// The coil within this one.
    pub inner: Option<InnerCoil>,
    /// Least radial gap to a neighbouring coil, the inner one of the two grown as it closes. Where none
    /// is given, the [usual](crate::nest::clearance::usual) one is left between the two as they stand
    /// free, and they do not touch when the inner one has grown.
    pub gap: Option<Length>,
    /// Greatest solid height.
    pub solid: Option<Length>,
    /// Greatest free height.
    pub free: Option<Length>,
}

/// What must be left between the lowest height at work and solid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reserve {
    /// At least this.
    pub length: Length,
    /// And at least this share of the deflection at the lowest height.
    pub share: f64,
    /// And at least the gaps that [`gaps::least`](crate::coil::gaps::least) asks for this duty, if any.
    pub duty: Option<Duty>,
}

impl Default for Reserve {
    /// [`LEAST_CLASH_ALLOWANCE`] of the deflection, and the gaps of a load at rest.
    fn default() -> Self {
        Self { length: Length::default(), share: LEAST_CLASH_ALLOWANCE, duty: Some(Duty::Static) }
    }
}

/// How the coil is made and seated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Make {
    /// Its ends.
    pub ends: Ends,
    /// Turns that lie dead at both ends together.
    pub dead_turns: f64,
    /// Whether it is wound cold or hot; as its bar and its ends tell where nobody says so.
    pub coiling: Option<Coiling>,
    /// How it is seated, for buckling.
    pub seating: Seating,
    /// The least index, 2 or more.
    pub least_index: f64,
    /// The greatest index.
    pub most_index: f64,
    /// The greatest pitch angle of the free coil.
    pub most_pitch_angle: Angle,
}

impl Make {
    /// How a coil of a bar is wound.
    #[must_use]
    pub fn coiling(&self, bar: Length) -> Coiling {
        self.coiling.unwrap_or_else(|| Coiling::of_bar(bar, Some(self.ends)))
    }

    /// Such ends with their usual dead turns, on seats that stay parallel and in line, an index from 4
    /// to 12 and a pitch angle up to 7.5°: what is [usual](proportions::unusual).
    #[must_use]
    pub fn usual(ends: Ends) -> Self {
        Self {
            ends,
            dead_turns: ends.dead_turns(),
            coiling: None,
            seating: Seating::Guided,
            least_index: proportions::LEAST_INDEX,
            most_index: proportions::MOST_INDEX,
            most_pitch_angle: Angle::new::<degree>(proportions::MOST_ANGLE_DEG),
        }
    }
}

/// The stress that a bar may bear, and which stress of the coil is compared with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Allowed {
    /// One stress for every bar.
    Stress {
        /// The stress.
        stress: Pressure,
        /// What is compared with it.
        factor: Factor,
    },
    /// A share of the least tensile strength of the bar's size.
    Share {
        /// The strength by size.
        strength: Strength,
        /// The share, above 0 and up to 1.
        share: f64,
        /// What is compared with it.
        factor: Factor,
    },
    /// What the authority of the strength allows under a load at rest, against the stress that it
    /// means: Bergsträsser's where it names a factor for the curvature.
    Row {
        /// The strength by size.
        strength: Strength,
        /// Whether the set was taken out.
        presetting: Presetting,
    },
}

impl Allowed {
    /// The stress for a bar, and the factor of what is compared with it.
    ///
    /// # Errors
    /// Those of [`Strength::allowable`].
    pub fn of(&self, bar: Length) -> Result<(Pressure, Factor), StrengthError> {
        match *self {
            Self::Stress { stress, factor } => Ok((stress, factor)),
            Self::Share { strength, share, factor } => {
                Ok((share * strength.tensile(bar)?.value, factor))
            }
            Self::Row { strength, presetting } => {
                let allowable = strength.allowable(bar, presetting)?;
                Ok((allowable.stress.value, set::meant(allowable.against)))
            }
        }
    }
}

/// What the coil is wound of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Metal {
    /// Shear modulus G.
    pub shear_modulus: Pressure,
    /// Poisson's ratio, from 0 to 0.5.
    pub poisson: f64,
    /// Density ρ.
    pub density: MassDensity,
    /// What it may bear at the lowest height at work.
    pub at_load: Allowed,
    /// What it may bear at solid; none asks for nothing there.
    pub at_solid: Option<Allowed>,
}

impl Metal {
    /// A steel by its row, which may bear at work and at solid what the first of its strengths allows
    /// under a load at rest.
    ///
    /// The moduli of some wires are for some sizes only: offer bars that [`Steel::fits`].
    ///
    /// # Errors
    /// [`StrengthError::Unsaid`] when the steel names no strength.
    pub fn of(
        steel: &Steel,
        density: MassDensity,
        presetting: Presetting,
    ) -> Result<Self, StrengthError> {
        let unsaid = StrengthError::Unsaid { steel: steel.name() };
        let strength = *steel.strengths().first().ok_or(unsaid)?;
        let allowed = Allowed::Row { strength, presetting };
        Ok(Self {
            shear_modulus: steel.shear_modulus().value,
            poisson: steel.poisson(),
            density,
            at_load: allowed,
            at_solid: Some(allowed),
        })
    }
}

/// All that is asked of a coil, or of a pair of coils together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Need {
    /// What it has to carry.
    pub work: Work,
    /// The room that it has.
    pub room: Room,
    /// What must be left to solid.
    pub reserve: Reserve,
    /// How it is made.
    pub make: Make,
    /// What it is made of.
    pub metal: Metal,
}

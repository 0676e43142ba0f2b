//! Whether a slender coil bends out sideways, and at what deflection.

use super::Diameters;
use crate::formula::Formula;
use crate::quantity::Length;
use crate::source::{Known, Source};

/// How a coil's two ends are seated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seating {
    /// Both ends flat on seats that stay parallel and in line.
    Guided,
    /// One end flat on its seat, the other on a pivot that stays in line.
    OnePivoted,
    /// Both ends on pivots that stay in line.
    BothPivoted,
    /// Both ends flat on seats that stay parallel, one of them free to move sideways.
    Sliding,
    /// One end flat on its seat, the other free to move and to tilt.
    OneFree,
}

impl Seating {
    /// Every seating, in the order in which a list shows them.
    pub const ALL: [Self; 5] =
        [Self::Guided, Self::OnePivoted, Self::BothPivoted, Self::Sliding, Self::OneFree];

    /// The seating coefficient ν: the length of a coil on two pivots that buckles alike, over its own.
    ///
    /// Guided 0.5, one pivoted 0.707, both pivoted 1, sliding 1, one free 2.
    ///
    /// # Source
    /// [`SOURCE`].
    #[must_use]
    pub const fn coefficient(self) -> f64 {
        match self {
            Self::Guided => 0.5,
            Self::OnePivoted => 0.707,
            Self::BothPivoted | Self::Sliding => 1.0,
            Self::OneFree => 2.0,
        }
    }
}

/// Free height over mean diameter, λ = L0/D.
///
/// # Example
/// ```
/// use coilnest::coil::{buckling, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(50.0))?;
/// assert!((buckling::slenderness(coil, mm(300.0)) - 6.0).abs() < 1e-12);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn slenderness(coil: Diameters, free: Length) -> f64 {
    (free / coil.mean()).value
}

/// The deflection at which a coil buckles; none where no deflection makes it.
///
/// ```text
/// sk = L0 · 0.5/(1 − γ) · {1 − √[1 − (1 − γ)/(0.5 + γ) · (π · D/(ν · L0))²]}
/// γ = G/E = 1/(2 (1 + Poisson's ratio))
/// ```
/// `L0` free height · `D` mean diameter · `ν` seating coefficient · `G`, `E` moduli
///
/// A deflection beyond the coil's travel to solid is none that it will ever reach. The textbook form
/// with `C1' = E/(2 (E − G))`, `C2' = 2 π² (E − G)/(2 G + E)` (Shigley, eq. 10-10) is the same, and
/// both are Haringx's column, whose stiffness falls as it shortens.
///
/// # Range
/// Poisson's ratio from 0 to 0.5, a free height above zero. The coefficients are those of a column that
/// does not shear, which matters with [`Seating::OnePivoted`] only: a steel coil of more than 4.4 mean
/// diameters buckles up to 2 % later than this says, a shorter one earlier, by 3 % at 4 diameters and
/// 11 % at 3.75, and even a little below [`stable_free_height`]. Closed ends seat less firmly than flat
/// plates.
///
/// # Source
/// [`SOURCE`].
///
/// # Example
/// ```
/// use coilnest::coil::{buckling::{self, Seating}, Diameters};
/// use coilnest::material::poisson;
/// use coilnest::quantity::{Length, Pressure, unit::{gigapascal, millimeter}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(50.0))?;
/// let poisson = poisson(Pressure::new::<gigapascal>(78.5), Pressure::new::<gigapascal>(206.0));
/// let buckles = buckling::deflection(coil, mm(300.0), Seating::Guided, poisson);
/// assert!(buckles.is_some_and(|s| (s.get::<millimeter>() - 126.214_235).abs() < 1e-6));
/// assert_eq!(buckling::deflection(coil, mm(260.0), Seating::Guided, poisson), None);
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn deflection(coil: Diameters, free: Length, seating: Seating, poisson: f64) -> Option<Length> {
    let gamma = shear_over_youngs(poisson);
    let stable = (stable_free_height(coil, seating, poisson) / free).value;
    let under_root = 1.0 - stable * stable;
    (under_root >= 0.0).then(|| free * (0.5 / (1.0 - gamma) * (1.0 - under_root.sqrt())))
}

/// [`slenderness`] in symbols.
pub const SLENDERNESS: Formula = Formula::new("{λ} = {L0} / {D}");

/// [`stable_free_height`] in symbols.
pub const STABLE: Formula = Formula::new("L0 = π · {D} / {ν} · √((1 − {γ}) / (0.5 + {γ}))");

/// The height at which it bends aside, in symbols.
pub const HEIGHT: Formula = Formula::new(
    "{Lk} = {L0} − {L0} · 0.5 / (1 − {γ}) · (1 − √(1 − (1 − {γ}) / (0.5 + {γ}) · (π · {D} / ({ν} · {L0}))²))",
);

/// Where [`deflection`], [`stable_free_height`] and [`Seating::coefficient`] come from.
pub const SOURCE: Source =
    Source::new("EN 13906-1:2013", "buckling, with the seating coefficient ν", Known::Memory);

/// The free height up to which a coil never buckles, however far it is pressed.
///
/// ```text
/// L0 = (π · D/ν) · √[(1 − γ)/(0.5 + γ)]      γ = G/E = 1/(2 (1 + Poisson's ratio))
/// ```
/// `D` mean diameter · `ν` seating coefficient. For steel it is 2.63 · D/ν.
///
/// # Range
/// Poisson's ratio from 0 to 0.5. With [`Seating::OnePivoted`] a coil a little shorter still buckles
/// when it is pressed by more than two thirds of its free height: see [`deflection`].
///
/// # Source
/// [`SOURCE`]; Shigley's Mechanical Engineering Design, 10th ed., eqs. 10-12 and 10-13 (from memory).
///
/// # Example
/// ```
/// use coilnest::coil::{buckling::{self, Seating}, Diameters};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let coil = Diameters::from_mean(mm(10.0), mm(50.0))?;
/// let stable = buckling::stable_free_height(coil, Seating::BothPivoted, 0.3);
/// assert!((stable.get::<millimeter>() - 131.0).abs() < 0.1); // 2.62·50
/// # Ok::<(), coilnest::coil::DiametersError>(())
/// ```
#[must_use]
pub fn stable_free_height(coil: Diameters, seating: Seating, poisson: f64) -> Length {
    let gamma = shear_over_youngs(poisson);
    let of_pivoted = core::f64::consts::PI * coil.mean() * ((1.0 - gamma) / (0.5 + gamma)).sqrt();
    of_pivoted / seating.coefficient()
}

/// γ = G/E = 1/(2 (1 + μ)) of an isotropic bar, μ being Poisson's ratio.
pub(crate) fn shear_over_youngs(poisson: f64) -> f64 {
    0.5 / (1.0 + poisson)
}

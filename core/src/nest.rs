//! Coils inside each other on common seats: load at a height, height at a load.
//!
//! Coil `i` of a nest stands on the lower seat, raised by `o_i` where it has a packing of its own.
//! At height `h` it is shorter than it would like by `s_i` and pushes with `F_i`:
//!
//! ```text
//! s_i = max(0, L0_i + o_i − h)      F_i = k_i · s_i      F = Σ F_i
//! solid height  h_s = max(Lc_i + o_i)
//! ```
//!
//! Load against height is therefore made of straight pieces, and both questions have exact answers:
//! nothing here iterates towards a result.

pub mod clearance;
mod law;

pub use law::{Law, LawError};

use crate::quantity::{Force, Length, SpringRate, System, si};
use crate::say::{Say, says};
use crate::source::{Known, Source};
use thiserror::Error;

/// Where the relations of a nest come from.
pub const SOURCE: Source =
    Source::new("statics", "springs side by side between two seats", Known::Derived);

/// One coil as it stands in a nest.
#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    /// Free height L0.
    pub free: Length,
    /// Load against its own deflection.
    pub law: Law,
    /// Solid height Lc, where known.
    pub solid: Option<Length>,
    /// How far its seat is raised (a packing), or sunk when negative.
    pub raise: Length,
}

impl Member {
    /// Height of the upper seat at which the coil begins to carry.
    #[must_use]
    pub fn touch_height(&self) -> Length {
        self.free + self.raise
    }

    /// Height of the upper seat at which the coil is solid.
    #[must_use]
    pub fn solid_height(&self) -> Option<Length> {
        self.solid.map(|solid| solid + self.raise)
    }

    fn deflection(&self, height: Length) -> Length {
        closed(self.touch_height(), height)
    }
}

/// How far a height lies under the one at which a coil is touched.
#[inline]
fn closed(touch: Length, height: Length) -> Length {
    let shorter = touch - height;
    if shorter.value > 0.0 { shorter } else { Length::default() }
}

/// Why coils make no nest, or a nest has no answer.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum NestError {
    /// A nest has at least one coil.
    Empty,
    /// A coil cannot be solid at or above its free height.
    SolidNotBelowFree {
        /// Which coil.
        index: usize,
        /// Its solid height.
        solid: Length,
        /// Its free height.
        free: Length,
    },
    /// A height, a raise or a load that is not a finite number.
    NotFinite {
        /// What it was.
        what: &'static str,
    },
    /// The height asked for lies below the solid height.
    BelowSolid {
        /// The height asked for.
        height: Length,
        /// The nest's solid height.
        solid: Length,
    },
}

says! {
    NestError {
        Empty => "a nest without a coil", "at least one coil", "add a seat";
        SolidNotBelowFree { solid, free } =>
            "a free height of {free} and a solid height of {solid}",
            "a free height above the solid height", "measure both again";
        NotFinite { what } => "a {what} that is no number", "a finite one", "measure it again";
        BelowSolid { height, solid } =>
            "a height of {height}", "a height from {solid} up",
            "the nest is solid there and cannot be lower";
    }
}

/// What happens at a bend of the load curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Event {
    /// A coil begins to carry.
    Touches,
    /// A coil goes over to the next stage of its law.
    Stage,
    /// A coil lies turn on turn and the nest stops.
    Solid,
}

/// A bend of the load curve: where it is, which coil makes it and how.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Breakpoint {
    /// Height of the upper seat.
    pub height: Length,
    /// Which coil.
    pub member: usize,
    /// What happens to it.
    pub event: Event,
}

/// A nest at a height.
#[derive(Clone, Debug, Default, PartialEq)]
#[non_exhaustive]
pub struct State {
    /// Height between the seats.
    pub height: Length,
    /// Load of the springs together.
    pub load: Force,
    /// Load beyond what the springs bear at solid, carried turn on turn.
    pub stop_load: Force,
    /// Rate of the coils that carry: load per further deflection.
    pub rate: SpringRate,
    /// Whether the nest stands at its solid height.
    pub solid: bool,
    /// Each coil, in the nest's order.
    pub members: Vec<MemberState>,
}

/// One coil of a nest at a height.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct MemberState {
    /// Its load.
    pub load: Force,
    /// How much shorter than free it stands.
    pub deflection: Length,
    /// What is left before it is solid.
    pub to_solid: Option<Length>,
    /// Whether it carries.
    pub touching: bool,
}

/// Coils inside each other on common seats.
///
/// # Example
/// ```
/// use coilnest::nest::{Law, Member, Nest};
/// use coilnest::quantity::{Force, Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
///
/// let mm = Length::new::<millimeter>;
/// let coil = |free, rate| -> Result<Member, coilnest::nest::LawError> {
///     let law = Law::linear(SpringRate::new::<newton_per_millimeter>(rate))?;
///     Ok(Member { free: mm(free), law, solid: None, raise: mm(0.0) })
/// };
/// let nest = Nest::new(vec![coil(300.0, 20.0)?, coil(290.0, 10.0)?])?;
///
/// let state = nest.at_load(Force::new::<newton>(500.0))?;
/// assert!((state.height.get::<millimeter>() - 280.0).abs() < 1e-9); // 20·20 + 10·10 = 500
/// let back = nest.at_height(state.height)?;
/// assert!((back.load.get::<newton>() - 500.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Nest {
    members: Vec<Member>,
    /// Every bend but the solid one, highest first.
    bends: Vec<Bend>,
    /// The coil that is solid first.
    solid: Option<Breakpoint>,
    /// The coils in order, where each has one rate alone.
    lines: Option<Vec<Line>>,
}

/// A coil of one rate: where it is touched, and its load from there on.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Line {
    touch: Length,
    rate: SpringRate,
}

/// A height that was written as the solid one may miss the sum of two others by a rounding.
const ROUNDED: f64 = 1.0 - 1e-12;

/// How many heights are looked at together: as many as a processor holds at hand.
const ABREAST: usize = 8;

/// A bend, with what it adds to the rate of the nest.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Bend {
    at: Breakpoint,
    step: SpringRate,
}

impl Nest {
    /// A nest of coils, in any order.
    ///
    /// # Errors
    /// [`NestError::Empty`]; [`NestError::SolidNotBelowFree`]; [`NestError::NotFinite`].
    pub fn new(members: Vec<Member>) -> Result<Self, NestError> {
        if members.is_empty() {
            return Err(NestError::Empty);
        }
        let mut bends: Vec<Bend> = Vec::new();
        for (index, member) in members.iter().enumerate() {
            if !(member.free.value.is_finite() && member.raise.value.is_finite()) {
                return Err(NestError::NotFinite { what: "free height or raise" });
            }
            if let Some(solid) = member.solid
                && (solid >= member.free || !solid.value.is_finite())
            {
                return Err(NestError::SolidNotBelowFree { index, solid, free: member.free });
            }
            let touch = member.touch_height();
            for (deflection, step) in member.law.steps() {
                let event = if deflection.value > 0.0 { Event::Stage } else { Event::Touches };
                let height = touch - deflection;
                let place = bends.partition_point(|bend| bend.at.height >= height);
                bends.insert(place, Bend { at: Breakpoint { height, member: index, event }, step });
            }
        }
        let known = members.iter().enumerate().filter_map(|(member, coil)| {
            let height = coil.solid_height()?;
            Some(Breakpoint { height, member, event: Event::Solid })
        });
        let solid =
            known.reduce(|first, next| if next.height > first.height { next } else { first });
        let line = |coil: &Member| {
            Some(Line { touch: coil.touch_height(), rate: coil.law.single_rate()? })
        };
        let lines = members.iter().map(line).collect();
        Ok(Self { members, bends, solid, lines })
    }

    /// The coils, in the order in which they were given.
    #[must_use]
    pub fn members(&self) -> &[Member] {
        &self.members
    }

    /// Height at which the first coil is touched; above it the nest carries nothing.
    #[must_use]
    pub fn free_height(&self) -> Length {
        self.bends.first().map_or_else(Length::default, |bend| bend.at.height)
    }

    /// The coils in the order in which they begin to carry.
    #[must_use]
    pub fn touch_order(&self) -> Vec<usize> {
        let touching = self.bends.iter().filter(|bend| bend.at.event == Event::Touches);
        touching.map(|bend| bend.at.member).collect()
    }

    /// The coil that is solid first, and the nest's height then; none while no coil's solid height
    /// is known.
    #[must_use]
    pub fn solid(&self) -> Option<Breakpoint> {
        self.solid
    }

    /// Every bend of the load curve from free to solid, highest first.
    #[must_use]
    pub fn breakpoints(&self) -> Vec<Breakpoint> {
        let solid = self.solid();
        let above = |bend: &Breakpoint| solid.is_none_or(|solid| bend.height > solid.height);
        self.bends.iter().map(|bend| bend.at).filter(above).chain(solid).collect()
    }

    /// Rate of the next deflection from a height on down.
    #[must_use]
    pub fn rate_below(&self, height: Length) -> SpringRate {
        let mut rate = SpringRate::default();
        for bend in self.bends.iter().take_while(|bend| bend.at.height >= height) {
            rate += bend.step;
        }
        rate
    }

    /// Loads at a height.
    ///
    /// # Errors
    /// [`NestError::BelowSolid`] when no nest can be that low; [`NestError::NotFinite`].
    pub fn at_height(&self, height: Length) -> Result<State, NestError> {
        let mut state = State::default();
        self.at_height_into(height, &mut state)?;
        Ok(state)
    }

    /// [`Nest::at_height`] into a state that is there already: nothing is allocated once it has room for
    /// every coil. Where there is no answer, the state stays as it was.
    ///
    /// # Errors
    /// As [`Nest::at_height`].
    ///
    /// # Example
    /// ```
    /// # use coilnest::nest::{Law, Member, Nest, NestError, State};
    /// # use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
    /// # let mm = Length::new::<millimeter>;
    /// # let law = Law::linear(SpringRate::new::<newton_per_millimeter>(20.0))?;
    /// # let nest = Nest::new(vec![Member { free: mm(300.0), law, solid: None, raise: mm(0.0) }])?;
    /// let mut state = State::default();
    /// for height in [290.0, 280.0, 270.0] {
    ///     nest.at_height_into(mm(height), &mut state)?;
    ///     assert!((state.load.get::<newton>() - 20.0 * (300.0 - height)).abs() < 1e-9);
    /// }
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn at_height_into(&self, height: Length, state: &mut State) -> Result<(), NestError> {
        self.fill(self.standing(height)?, Force::default(), state);
        Ok(())
    }

    /// The load at a height alone, by the same sum as [`Nest::at_height`], and without allocation.
    ///
    /// # Errors
    /// As [`Nest::at_height`].
    ///
    /// # Example
    /// ```
    /// # use coilnest::nest::{Law, Member, Nest, NestError};
    /// # use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
    /// # let mm = Length::new::<millimeter>;
    /// # let law = Law::linear(SpringRate::new::<newton_per_millimeter>(20.0))?;
    /// # let nest = Nest::new(vec![Member { free: mm(300.0), law, solid: Some(mm(200.0)), raise: mm(0.0) }])?;
    /// assert!((nest.load_at(mm(290.0))?.get::<newton>() - 200.0).abs() < 1e-9);
    /// assert!(matches!(nest.load_at(mm(199.0)), Err(NestError::BelowSolid { .. })));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[inline]
    pub fn load_at(&self, height: Length) -> Result<Force, NestError> {
        Ok(self.load(self.standing(height)?))
    }

    /// The loads at many heights, in their order: [`Nest::load_at`] of each, to the last digit.
    ///
    /// `loads` becomes as long as `heights`; nothing is allocated once it has room for them.
    ///
    /// # Errors
    /// As [`Nest::at_height`], of the first height that has no load. `loads` is empty then.
    ///
    /// # Example
    /// ```
    /// # use coilnest::nest::{Law, Member, Nest, NestError};
    /// # use coilnest::quantity::{Length, SpringRate, unit::{millimeter, newton, newton_per_millimeter}};
    /// # let mm = Length::new::<millimeter>;
    /// # let law = Law::linear(SpringRate::new::<newton_per_millimeter>(20.0))?;
    /// # let nest = Nest::new(vec![Member { free: mm(300.0), law, solid: None, raise: mm(0.0) }])?;
    /// let heights: Vec<Length> = (200..=310).map(|height| mm(f64::from(height))).collect();
    /// let mut loads = Vec::new();
    /// nest.loads_at(&heights, &mut loads)?;
    /// assert_eq!(loads.len(), heights.len());
    /// assert_eq!(loads[40], nest.load_at(heights[40])?);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn loads_at(&self, heights: &[Length], loads: &mut Vec<Force>) -> Result<(), NestError> {
        loads.resize(heights.len(), Force::default());
        let (groups, rest) = heights.as_chunks::<ABREAST>();
        let (filled, left) = loads.as_chunks_mut::<ABREAST>();
        let done = match &self.lines {
            Some(lines) => self.abreast(lines, groups, filled),
            None => self.one_by_one(groups.as_flattened(), filled.as_flattened_mut()),
        };
        let done = done.and_then(|()| self.one_by_one(rest, left));
        if done.is_err() {
            loads.clear();
        }
        done
    }

    fn one_by_one(&self, heights: &[Length], loads: &mut [Force]) -> Result<(), NestError> {
        for (height, load) in heights.iter().zip(loads) {
            *load = self.load_at(*height)?;
        }
        Ok(())
    }

    /// The same for whole groups of heights, each coil's line put to a group at once.
    fn abreast(
        &self,
        lines: &[Line],
        groups: &[[Length; ABREAST]],
        loads: &mut [[Force; ABREAST]],
    ) -> Result<(), NestError> {
        let (lowest, stop) = self
            .solid
            .map_or((si(f64::MIN), si(f64::MIN)), |solid| (solid.height * ROUNDED, solid.height));
        for (heights, loads) in groups.iter().zip(loads) {
            let stands = |height: Length| height >= lowest && height.value <= f64::MAX;
            if !heights.iter().fold(true, |all, height| all & stands(*height)) {
                for height in heights {
                    self.standing(*height)?;
                }
            }
            let heights = heights.map(|height| if height < stop { stop } else { height });
            let mut sums = [Force::default(); ABREAST];
            for line in lines {
                for (sum, height) in sums.iter_mut().zip(heights) {
                    *sum += line.rate * closed(line.touch, height);
                }
            }
            *loads = sums;
        }
        Ok(())
    }

    /// A height that was asked for, as the nest stands there.
    #[inline]
    fn standing(&self, height: Length) -> Result<Length, NestError> {
        if !height.value.is_finite() {
            return Err(NestError::NotFinite { what: "height" });
        }
        match self.solid {
            Some(solid) if height < solid.height * ROUNDED => {
                Err(NestError::BelowSolid { height, solid: solid.height })
            }
            Some(solid) if height < solid.height => Ok(solid.height),
            _ => Ok(height),
        }
    }

    /// Height at a load, by walking the bends of the load curve.
    ///
    /// No load, or a negative one, leaves the nest at its free height. A load past what the springs
    /// bear at solid leaves it there, the rest in [`State::stop_load`].
    ///
    /// # Errors
    /// [`NestError::NotFinite`].
    pub fn at_load(&self, load: Force) -> Result<State, NestError> {
        if !load.value.is_finite() {
            return Err(NestError::NotFinite { what: "load" });
        }
        let height = self.height_of_springs(load);
        if let Some(solid) = self.solid
            && height < solid.height
        {
            let borne = self.load(solid.height);
            return Ok(self.state(solid.height, load - borne));
        }
        Ok(self.state(height, Force::default()))
    }

    /// Height at which the springs alone, unstopped, bear the load.
    fn height_of_springs(&self, load: Force) -> Length {
        let mut height = self.free_height();
        let mut borne = Force::default();
        let mut rate = SpringRate::default();
        if load <= borne {
            return height;
        }
        for bend in &self.bends {
            let at_bend = borne + rate * (height - bend.at.height);
            if at_bend >= load {
                break;
            }
            (height, borne) = (bend.at.height, at_bend);
            rate += bend.step;
        }
        height - (load - borne) / rate
    }

    #[inline]
    fn load(&self, height: Length) -> Force {
        let mut sum = Force::default();
        if let Some(lines) = &self.lines {
            for line in lines {
                sum += line.rate * closed(line.touch, height);
            }
        } else {
            for member in &self.members {
                sum += member.law.load(member.deflection(height));
            }
        }
        sum
    }

    fn state(&self, height: Length, stop_load: Force) -> State {
        let mut state = State::default();
        self.fill(height, stop_load, &mut state);
        state
    }

    fn fill(&self, height: Length, stop_load: Force, state: &mut State) {
        let mut rate = SpringRate::default();
        let mut load = Force::default();
        state.members.clear();
        state.members.extend(self.members.iter().map(|member| {
            let deflection = member.deflection(height);
            let touching = deflection.value > 0.0;
            let carried = member.law.load(deflection);
            load += carried;
            if touching {
                rate += member.law.rate_beyond(deflection);
            }
            let stands = member.free - deflection;
            let to_solid = member.solid.map(|solid| stands - solid);
            MemberState { load: carried, deflection, to_solid, touching }
        }));
        (state.height, state.load, state.stop_load, state.rate) = (height, load, stop_load, rate);
        state.solid = self.solid.is_some_and(|solid| height <= solid.height);
    }
}

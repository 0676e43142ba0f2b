//! What a replacement does to the nest that it stands in and to the frame on it.

use super::asked::ReplacementError;
use super::particulars::{Figure, Particulars};
use super::point::{Point, both};
use super::range::Range;
use super::requirement::{Missing, Whose};
use super::{Case, corners};
use crate::coil::stress;
use crate::frame::{Frame, Settled, Support, Weight};
use crate::nest::{Law, Member, Nest};
use crate::quantity::{Force, Length, Pressure, WarpStiffness};

/// A coil of the nest and how far its seat is raised.
#[derive(Clone, Debug, PartialEq)]
pub struct Seated {
    /// The coil, of which the nominal figures are used.
    pub spring: Particulars,
    /// How far its seat is raised (a packing), or sunk when negative.
    pub raise: Length,
}

/// The nest that the original stands in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Around {
    /// The coils around it, the widest first.
    pub outer: Vec<Seated>,
    /// The coils within it, the widest first.
    pub inner: Vec<Seated>,
    /// How far its own seat is raised.
    pub raise: Length,
    /// Load of the nest; that at the working height with the original where none is given.
    pub load: Option<Force>,
}

/// The frame on nests of which one or more have the original in them.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderFrame {
    /// The nests under it, with the original in its place.
    pub supports: Vec<Support>,
    /// Stiffness of the frame against warping; rigid where none is given.
    pub warp: Option<WarpStiffness>,
    /// Which coils are replaced: the support and the place in its nest, both from 0.
    pub replaced: Vec<(usize, usize)>,
    /// What the frame bears.
    pub weight: Weight,
}

/// One coil of a nest under its load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoilStanding {
    /// What it carries.
    pub load: Force,
    /// The same as a part of the nest's load.
    pub share: f64,
    /// Its uncorrected stress, where bar and diameter are known.
    pub stress: Option<Pressure>,
}

/// A nest under its load.
#[derive(Clone, Debug, PartialEq)]
pub struct NestStanding {
    /// Height between its seats.
    pub height: Length,
    /// The coils, the widest first.
    pub coils: Vec<CoilStanding>,
    /// Load beyond what the springs bear at solid.
    pub stop_load: Force,
}

/// The nest before and after, and what is missing where it cannot be told.
#[derive(Clone, Debug, PartialEq)]
pub struct NestSwap {
    /// With the original.
    pub before: Result<NestStanding, Vec<Missing>>,
    /// With the candidate, nominal.
    pub after: Result<NestStanding, Vec<Missing>>,
    /// Height under the nest's load, over the candidate's tolerances.
    pub height: Result<Range<Length>, Vec<Missing>>,
    /// The candidate's share of the load, over its tolerances.
    pub share: Result<Range<f64>, Vec<Missing>>,
    /// Which coil stops the nest with the original, the widest being 0.
    pub stopped_by: Result<usize, Vec<Missing>>,
    /// Which coils may stop it with the candidate, over its tolerances.
    pub stops: Result<Vec<usize>, Vec<Missing>>,
}

/// The frame before and after, and what is missing where it cannot be told.
#[derive(Clone, Debug, PartialEq)]
pub struct FrameSwap {
    /// With the original.
    pub before: Settled,
    /// With the candidate, nominal.
    pub after: Result<Settled, Vec<Missing>>,
    /// The greatest part of the mean by which a load differs from it, with the original.
    pub deviation_before: f64,
    /// The same with the candidate, over its tolerances: the most is attained at a corner of them.
    pub deviation_after: Result<Range<f64>, Vec<Missing>>,
}

/// A coil as it stands in a nest.
fn member(point: &Point, raise: Length) -> Result<Member, Vec<Figure>> {
    let (rate, free) = both(point.rate(), point.free())?;
    let law = Law::linear(rate).map_err(|_| vec![Figure::Rate])?;
    Ok(Member { free, law, solid: point.solid().ok(), raise })
}

/// The coils of a nest with one spring in the original's place.
fn seats<'a>(
    nest: &'a Around,
    spring: &'a Particulars,
    whose: Whose,
) -> impl Iterator<Item = (Whose, &'a Particulars, Length)> {
    let seated = |seated: &'a Seated| (&seated.spring, seated.raise);
    let outer = nest.outer.iter().map(seated).enumerate();
    let inner = nest.inner.iter().map(seated).enumerate();
    outer
        .map(|(place, (spring, raise))| (Whose::Outer(place), spring, raise))
        .chain(core::iter::once((whose, spring, nest.raise)))
        .chain(inner.map(|(place, (spring, raise))| (Whose::Inner(place), spring, raise)))
}

/// What lies in the nest beside one spring: its members, and the place that is open.
struct Others {
    outer: Vec<Member>,
    inner: Vec<Member>,
    raise: Length,
    load: Force,
}

impl Others {
    fn of(case: &Case) -> Result<Self, Vec<Missing>> {
        let nest = case.nest.as_ref().ok_or_else(Vec::new)?;
        let mut found = Self {
            outer: Vec::new(),
            inner: Vec::new(),
            raise: nest.raise,
            load: Force::default(),
        };
        let mut lacks = Vec::new();
        for (whose, spring, raise) in seats(nest, &case.candidate, Whose::Candidate) {
            let into = match whose {
                Whose::Outer(_) => &mut found.outer,
                Whose::Inner(_) => &mut found.inner,
                _ => continue,
            };
            match whose.lacks(member(&Point::nominal(spring), raise)) {
                Ok(member) => into.push(member),
                Err(missing) => lacks.extend(missing),
            }
        }
        if !lacks.is_empty() {
            return Err(lacks);
        }
        found.load = found.load_of(case, nest)?;
        Ok(found)
    }

    /// The load of the nest: as given, else that at the working height with the original.
    fn load_of(&self, case: &Case, nest: &Around) -> Result<Force, Vec<Missing>> {
        let unknown = || vec![Missing { whose: Whose::Nest, figure: Figure::Load }];
        if let Some(load) = nest.load {
            return Ok(load);
        }
        let working = case.asked.working.ok_or_else(unknown)?;
        let before = Whose::Original.lacks(self.with(&Point::nominal(&case.original)))?;
        before.at_height(working).map(|state| state.load).map_err(|_| unknown())
    }

    fn with(&self, point: &Point) -> Result<Nest, Vec<Figure>> {
        let own = member(point, self.raise)?;
        let members = self.outer.iter().cloned().chain([own]).chain(self.inner.iter().cloned());
        Nest::new(members.collect()).map_err(|_| vec![Figure::SolidHeight])
    }

    fn height(&self, point: &Point) -> Result<f64, Vec<Figure>> {
        let state = self.with(point)?.at_load(self.load).map_err(|_| vec![Figure::Rate])?;
        Ok(state.height.value)
    }

    fn share(&self, point: &Point) -> Result<f64, Vec<Figure>> {
        let state = self.with(point)?.at_load(self.load).map_err(|_| vec![Figure::Rate])?;
        let own = state.members.get(self.outer.len()).map_or(0.0, |own| own.load.value);
        Ok(if self.load.value > 0.0 { own / self.load.value } else { 0.0 })
    }

    fn standing(
        &self,
        nest: &Around,
        spring: &Particulars,
        whose: Whose,
    ) -> Result<NestStanding, Vec<Missing>> {
        let built = whose.lacks(self.with(&Point::nominal(spring)))?;
        let rate = || vec![Missing { whose, figure: Figure::Rate }];
        let state = built.at_load(self.load).map_err(|_| rate())?;
        let coils = state.members.iter().zip(seats(nest, spring, whose)).map(|(coil, seat)| {
            let drawn = Point::nominal(seat.1).coil().ok();
            CoilStanding {
                load: coil.load,
                share: if self.load.value > 0.0 { (coil.load / self.load).value } else { 0.0 },
                stress: drawn.map(|drawn| stress::uncorrected(coil.load, drawn)),
            }
        });
        Ok(NestStanding {
            height: state.height,
            coils: coils.collect(),
            stop_load: state.stop_load,
        })
    }
}

/// Height of the nest under its load in SI units, over the candidate's tolerances.
pub(super) fn nest_height(case: &Case) -> Result<Range<f64>, Vec<Missing>> {
    let own = Whose::Candidate.lacks(member(&Point::nominal(&case.candidate), Length::default()));
    let (others, _) = both(Others::of(case), own)?;
    Whose::Candidate.lacks(corners::range(&case.candidate, |point| others.height(point)))
}

/// The nest before and after.
pub(super) fn nest(case: &Case, nest: &Around) -> NestSwap {
    let others = Others::of(case);
    let standing = |spring: &Particulars, whose: Whose| match &others {
        Ok(others) => others.standing(nest, spring, whose),
        Err(lacks) => Err(lacks.clone()),
    };
    let share = others.as_ref().map_err(Clone::clone).and_then(|others| {
        Whose::Candidate.lacks(corners::range(&case.candidate, |point| others.share(point)))
    });
    let metres = |value| Length { value, ..Length::default() };
    NestSwap {
        before: standing(&case.original, Whose::Original),
        after: standing(&case.candidate, Whose::Candidate),
        height: nest_height(case).map(|height| height.map(metres)),
        share,
        stopped_by: stops(nest, &case.original, Whose::Original)
            .and_then(|stops| stops.first().copied().ok_or_else(Vec::new)),
        stops: stops(nest, &case.candidate, Whose::Candidate),
    }
}

/// The coils that may be solid first: those whose most is not below the greatest least of all.
fn stops(nest: &Around, spring: &Particulars, whose: Whose) -> Result<Vec<usize>, Vec<Missing>> {
    let (mut heights, mut lacks) = (Vec::new(), Vec::new());
    for (owner, spring, raise) in seats(nest, spring, whose) {
        let solid = if owner == Whose::Candidate {
            spring.solid()
        } else {
            Point::nominal(spring).solid().map(Range::exact)
        };
        match owner.lacks(solid) {
            Ok(solid) => heights.push((solid.least() + raise, solid.most() + raise)),
            Err(missing) => lacks.extend(missing),
        }
    }
    if !lacks.is_empty() {
        return Err(lacks);
    }
    let surest = heights.iter().map(|(least, _)| *least).reduce(Length::max);
    let may = |most: Length| surest.is_some_and(|surest| most >= surest);
    Ok(heights
        .iter()
        .enumerate()
        .filter_map(|(place, (_, most))| may(*most).then_some(place))
        .collect())
}

impl UnderFrame {
    /// The frame with a coil in the places of the original.
    fn with(&self, own: &Member) -> Result<Frame, ReplacementError> {
        let mut supports = self.supports.clone();
        let stands = supports.len();
        for &(support, place) in &self.replaced {
            let counted = (support + 1, place + 1);
            let missing =
                |count| ReplacementError::Place { support: counted.0, place: counted.1, count };
            let post = supports.get_mut(support).ok_or(missing(stands))?;
            let mut members = post.nest.members().to_vec();
            let count = members.len();
            let coil = members.get_mut(place).ok_or(missing(count))?;
            *coil = Member { raise: coil.raise, ..own.clone() };
            post.nest = Nest::new(members)?;
        }
        Ok(Frame::new(supports, self.warp)?)
    }

    fn settled(&self, point: &Point) -> Result<Result<Settled, ReplacementError>, Vec<Figure>> {
        let own = member(point, Length::default())?;
        let settle = |frame: Frame| frame.settle(self.weight).map_err(ReplacementError::from);
        Ok(self.with(&own).and_then(settle))
    }
}

/// The greatest part of the mean by which a load differs from it.
fn greatest_deviation(settled: &Settled) -> f64 {
    let off = settled.supports.iter().map(|standing| (standing.share - 1.0).abs());
    off.fold(0.0, f64::max)
}

/// The greatest deviation with the candidate, over its tolerances.
///
/// Nothing is named as missing where the frame does not stand at some end of them.
pub(super) fn deviation(case: &Case) -> Result<Range<f64>, Vec<Missing>> {
    let under = case.frame.as_ref().ok_or_else(Vec::new)?;
    Whose::Candidate.lacks(corners::range(&case.candidate, |point| {
        under.settled(point)?.map(|settled| greatest_deviation(&settled)).map_err(|_| Vec::new())
    }))
}

/// The frame before and after.
///
/// # Errors
/// [`ReplacementError::Place`], [`ReplacementError::Frame`], [`ReplacementError::Nest`].
pub(super) fn frame(case: &Case, under: &UnderFrame) -> Result<FrameSwap, ReplacementError> {
    let before = Frame::new(under.supports.clone(), under.warp)?.settle(under.weight)?;
    let after = match under.settled(&Point::nominal(&case.candidate)) {
        Ok(settled) => Ok(settled?),
        Err(lacks) => Whose::Candidate.lacks(Err(lacks)),
    };
    Ok(FrameSwap {
        deviation_before: greatest_deviation(&before),
        before,
        after,
        deviation_after: deviation(case),
    })
}

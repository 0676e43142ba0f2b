//! What a replacement does to the nest that it stands in and to the frame on it.

use super::Case;
use super::asked::ReplacementError;
use super::offer::Offer;
use super::requirement::{Missing, Whose};
use crate::coil::{Diameters, stress};
use crate::drawing::{Drawing, Figure, Figures, Point, Range, at_corners, both};
use crate::frame::{Frame, Settled, Support, Weight};
use crate::nest::{Law, Member, Nest, State};
use crate::quantity::{Force, Length, Pressure, SpringRate, WarpStiffness};

/// A coil of the nest and how far its seat is raised.
#[derive(Clone, Debug, PartialEq)]
pub struct Seated {
    /// The coil, of which the nominal figures are used.
    pub spring: Drawing,
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
    /// Height under the nest's load, over the tolerances of all its coils.
    pub height: Result<Range<Length>, Vec<Missing>>,
    /// The candidate's share of the load, over the tolerances of all coils.
    pub share: Result<Range<f64>, Vec<Missing>>,
    /// Which coil stops the nest with the original, the widest being 0.
    pub stopped_by: Result<usize, Vec<Missing>>,
    /// Which coils may stop it with the candidate, over the tolerances of all.
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
fn member(point: &Point, raise: Length) -> Result<Member, Figures> {
    let (rate, free) = both(point.rate(), point.free())?;
    let law = Law::linear(rate).map_err(|_| Figures::from(Figure::Rate))?;
    Ok(Member { free, law, solid: point.solid().ok(), raise })
}

/// Which end of what varies.
#[derive(Clone, Copy)]
enum End {
    Least,
    Nominal,
    Most,
}

impl End {
    fn other(self) -> Self {
        match self {
            Self::Least => Self::Most,
            Self::Nominal => Self::Nominal,
            Self::Most => Self::Least,
        }
    }

    fn of<Q: Copy>(self, range: &Range<Q>) -> Q {
        match self {
            Self::Least => range.least(),
            Self::Nominal => range.nominal(),
            Self::Most => range.most(),
        }
    }
}

/// A coil in its seat: what it may be, and whose tolerances are not given.
struct Sat {
    whose: Whose,
    rate: Range<SpringRate>,
    free: Range<Length>,
    solid: Option<Range<Length>>,
    coil: Option<Diameters>,
    raise: Length,
}

impl Sat {
    fn new(whose: Whose, spring: &Drawing, raise: Length) -> Result<Self, Vec<Missing>> {
        let (rate, free) = whose.lacks(both(spring.rate(), spring.free()))?;
        let (solid, coil) = (spring.solid().ok(), Point::nominal(spring).coil().ok());
        Ok(Self { whose, rate, free, solid, coil, raise })
    }

    /// Its law with every figure at one end: more rate, free height and solid height each raise a nest.
    fn at(&self, end: End) -> Result<Member, Vec<Missing>> {
        let law = Law::linear(end.of(&self.rate));
        let law = self.whose.lacks(law.map_err(|_| Figure::Rate.into()))?;
        let solid = self.solid.as_ref().map(|solid| end.of(solid));
        Ok(Member { free: end.of(&self.free), law, solid, raise: self.raise })
    }

    fn untold(&self) -> Vec<Missing> {
        let solid = self.solid.map_or(Figures::NONE, |solid| solid.untold());
        self.whose.figures(self.rate.untold() | self.free.untold() | solid)
    }
}

/// A nest with one spring in the original's place, and its load.
struct Filled {
    seats: Vec<Sat>,
    own: usize,
    load: Force,
}

/// The coils of a nest with one spring in the original's place.
fn seats<'a>(
    nest: &'a Around,
    spring: &'a Drawing,
    whose: Whose,
) -> impl Iterator<Item = (Whose, &'a Drawing, Length)> {
    let seated = |seated: &'a Seated| (&seated.spring, seated.raise);
    let outer = nest.outer.iter().map(seated).enumerate();
    let inner = nest.inner.iter().map(seated).enumerate();
    outer
        .map(|(place, (spring, raise))| (Whose::Outer(place), spring, raise))
        .chain(core::iter::once((whose, spring, nest.raise)))
        .chain(inner.map(|(place, (spring, raise))| (Whose::Inner(place), spring, raise)))
}

impl Filled {
    fn of(case: &Case, spring: &Drawing, whose: Whose) -> Result<Self, Vec<Missing>> {
        let nest = case.nest.as_ref().ok_or_else(Vec::new)?;
        let (mut found, mut lacks) = (Vec::new(), Vec::new());
        for (whose, spring, raise) in seats(nest, spring, whose) {
            match Sat::new(whose, spring, raise) {
                Ok(sat) => found.push(sat),
                Err(missing) => lacks.extend(missing),
            }
        }
        if !lacks.is_empty() {
            return Err(lacks);
        }
        let filled = Self { seats: found, own: nest.outer.len(), load: Force::default() };
        let load = match nest.load {
            Some(load) => load,
            None if whose == Whose::Original => filled.load_at_work(case)?,
            None => Self::of(case, &case.original, Whose::Original)?.load,
        };
        Ok(Self { load, ..filled })
    }

    /// The load of the nest at the working height, as drawn.
    fn load_at_work(&self, case: &Case) -> Result<Force, Vec<Missing>> {
        let unknown = || vec![Missing { whose: Whose::Nest, figure: Figure::Load }];
        let working = case.asked.working.ok_or_else(unknown)?;
        let nest = self.nest(|_| End::Nominal)?;
        nest.at_height(working).map(|state| state.load).map_err(|_| unknown())
    }

    fn nest(&self, end: impl Fn(usize) -> End) -> Result<Nest, Vec<Missing>> {
        let members = self.seats.iter().enumerate().map(|(place, sat)| sat.at(end(place)));
        let members = members.collect::<Result<Vec<Member>, _>>()?;
        let whose = self.seats.get(self.own).map_or(Whose::Nest, |own| own.whose);
        whose.lacks(Nest::new(members).map_err(|_| Figure::SolidHeight.into()))
    }

    fn state(&self, end: impl Fn(usize) -> End) -> Result<State, Vec<Missing>> {
        let rate = || vec![Missing { whose: Whose::Nest, figure: Figure::Rate }];
        self.nest(end)?.at_load(self.load).map_err(|_| rate())
    }

    fn offer(&self, of: impl Fn(End) -> Result<f64, Vec<Missing>>) -> Result<Offer, Vec<Missing>> {
        let (least, nominal, most) = (of(End::Least)?, of(End::Nominal)?, of(End::Most)?);
        let untold = self.seats.iter().flat_map(Sat::untold).collect();
        Ok(Offer { range: Range::spanning(nominal, [least, most].into_iter()), untold })
    }

    fn height(&self) -> Result<Offer, Vec<Missing>> {
        self.offer(|end| Ok(self.state(|_| end)?.height.value))
    }

    /// Its share of the load is the least where it is at its least and all others are at their most.
    fn share(&self) -> Result<Offer, Vec<Missing>> {
        self.offer(|end| {
            let state = self.state(|place| if place == self.own { end } else { end.other() })?;
            let own = state.members.get(self.own).map_or(0.0, |own| own.load.value);
            Ok(if self.load.value > 0.0 { own / self.load.value } else { 0.0 })
        })
    }

    fn standing(&self) -> Result<NestStanding, Vec<Missing>> {
        let state = self.state(|_| End::Nominal)?;
        let coils = state.members.iter().zip(&self.seats).map(|(coil, sat)| CoilStanding {
            load: coil.load,
            share: if self.load.value > 0.0 { (coil.load / self.load).value } else { 0.0 },
            stress: sat.coil.map(|drawn| stress::uncorrected(coil.load, drawn)),
        });
        Ok(NestStanding {
            height: state.height,
            coils: coils.collect(),
            stop_load: state.stop_load,
        })
    }
}

/// The height of the nest under its load; every coil that could stop it must be known.
pub(super) fn nest_height(case: &Case) -> Result<Offer, Vec<Missing>> {
    let filled = Filled::of(case, &case.candidate, Whose::Candidate)?;
    let open = filled.seats.iter().filter(|sat| sat.solid.is_none());
    let open: Vec<Missing> =
        open.map(|sat| Missing { whose: sat.whose, figure: Figure::SolidHeight }).collect();
    if open.is_empty() { filled.height() } else { Err(open) }
}

pub(super) fn nest(case: &Case, nest: &Around) -> NestSwap {
    let filled = |spring, whose| Filled::of(case, spring, whose);
    let after = filled(&case.candidate, Whose::Candidate);
    let of_after = |of: fn(&Filled) -> Result<Offer, Vec<Missing>>| {
        let found = after.as_ref().map_err(Clone::clone).and_then(of);
        found.map(|offer| offer.range)
    };
    let metres = |value| Length { value, ..Length::default() };
    NestSwap {
        before: filled(&case.original, Whose::Original).and_then(|filled| filled.standing()),
        after: after.as_ref().map_err(Clone::clone).and_then(Filled::standing),
        height: of_after(Filled::height).map(|height| height.map(metres)),
        share: of_after(Filled::share),
        stopped_by: stops(nest, &case.original, Whose::Original, |solid| {
            (solid.nominal(), solid.nominal())
        })
        .and_then(|stops| stops.first().copied().ok_or_else(Vec::new)),
        stops: stops(nest, &case.candidate, Whose::Candidate, |solid| {
            (solid.least(), solid.most())
        }),
    }
}

/// The coils that may be solid before all others.
fn stops(
    nest: &Around,
    spring: &Drawing,
    whose: Whose,
    ends: fn(Range<Length>) -> (Length, Length),
) -> Result<Vec<usize>, Vec<Missing>> {
    let (mut heights, mut lacks) = (Vec::new(), Vec::new());
    for (owner, spring, raise) in seats(nest, spring, whose) {
        match owner.lacks(spring.solid()) {
            Ok(solid) => {
                let (least, most) = ends(solid);
                heights.push((least + raise, most + raise));
            }
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

    fn settled(&self, point: &Point) -> Result<Result<Settled, ReplacementError>, Figures> {
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

/// The greatest deviation of a load from the mean; the height at which the candidate stops must be known.
pub(super) fn deviation(case: &Case) -> Result<Offer, Vec<Missing>> {
    Whose::Candidate.lacks(case.candidate.solid())?;
    moved(case)
}

fn moved(case: &Case) -> Result<Offer, Vec<Missing>> {
    let under = case.frame.as_ref().ok_or_else(Vec::new)?;
    let range = at_corners(&case.candidate, |point| {
        under.settled(point)?.map(|settled| greatest_deviation(&settled)).map_err(|_| Figures::NONE)
    });
    Ok(Offer::of(Whose::Candidate, Whose::Candidate.lacks(range)?))
}

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
        deviation_after: moved(case).map(|offer| offer.range),
    })
}

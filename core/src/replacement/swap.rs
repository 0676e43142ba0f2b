//! What a replacement does to the nest that it stands in and to the frame on it.

use super::Case;
use super::asked::ReplacementError;
use super::offered::OfferedRange;
use super::requirement::{Missing, Whose};
use crate::coil::{Diameters, stress};
use crate::drawing::{Drawing, Figure, Figures, Point, Range, at_corners, both};
use crate::frame::{Frame, Settled, Support, Weight};
use crate::nest::{Law, Member, Nest, State};
use crate::quantity::{Force, Length, Pressure, SpringRate, WarpStiffness, si};

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

/// The frame on nests of which one or more are replaced, or have the original in them.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderFrame<Replaced = (usize, usize)> {
    /// The nests under it, as they are.
    pub supports: Vec<Support>,
    /// Stiffness of the frame against warping; rigid where none is given.
    pub warp: Option<WarpStiffness>,
    /// What is replaced, counted from 0: of a coil the support and the place in its nest, of a whole
    /// nest the support.
    pub replaced: Vec<Replaced>,
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
    /// Its bar and diameters, where they are known.
    pub coil: Option<Diameters>,
    /// Its rate.
    pub rate: SpringRate,
    /// Its free height.
    pub free: Length,
    /// Its solid height, where it is known.
    pub solid: Option<Length>,
    /// How far its seat is raised.
    pub raise: Length,
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

/// A nest before and after all of it is replaced, and what is missing where it cannot be told.
#[derive(Clone, Debug, PartialEq)]
pub struct WholeSwap {
    /// With the coils that are there.
    pub before: Result<NestStanding, Vec<Missing>>,
    /// With those that are offered, nominal.
    pub after: Result<NestStanding, Vec<Missing>>,
    /// Height under the nest's load, over the tolerances of all that are offered.
    pub height: Result<Range<Length>, Vec<Missing>>,
    /// Of each that is offered its share of the load, over the tolerances of all.
    pub shares: Result<Vec<Range<f64>>, Vec<Missing>>,
    /// Which coil stops the nest that is there, the widest being 0.
    pub stopped_by: Result<usize, Vec<Missing>>,
    /// Which of those that are offered may stop theirs, over the tolerances of all.
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
        self.with([end; 3])
    }

    /// Its law with rate, free and solid height each at an end.
    fn with(&self, [rate, free, solid]: [End; 3]) -> Result<Member, Vec<Missing>> {
        let law = Law::linear(rate.of(&self.rate));
        let law = self.whose.lacks(law.map_err(|_| Figure::Rate.into()))?;
        let solid = self.solid.as_ref().map(|range| solid.of(range));
        Ok(Member { free: free.of(&self.free), law, solid, raise: self.raise })
    }

    fn unstated(&self) -> Vec<Missing> {
        let solid = self.solid.map_or(Figures::NONE, |solid| solid.unstated());
        self.whose.figures(self.rate.unstated() | self.free.unstated() | solid)
    }
}

/// A coil of a nest: whose it is, its drawing, and how far its seat is raised.
type Seat<'a> = (Whose, &'a Drawing, Length);

/// A nest and its load.
struct Filled {
    seats: Vec<Sat>,
    /// Whose figures are lacking where its coils make no nest.
    whose: Whose,
    load: Force,
}

/// The coils of a nest with one spring in the original's place.
fn seats<'a>(
    nest: &'a Around,
    spring: &'a Drawing,
    whose: Whose,
) -> impl Iterator<Item = Seat<'a>> {
    let seated = |seated: &'a Seated| (&seated.spring, seated.raise);
    let outer = nest.outer.iter().map(seated).enumerate();
    let inner = nest.inner.iter().map(seated).enumerate();
    outer
        .map(|(place, (spring, raise))| (Whose::Outer(place), spring, raise))
        .chain(core::iter::once((whose, spring, nest.raise)))
        .chain(inner.map(|(place, (spring, raise))| (Whose::Inner(place), spring, raise)))
}

impl Filled {
    /// Without a load yet.
    fn with<'a>(seats: impl Iterator<Item = Seat<'a>>, whose: Whose) -> Result<Self, Vec<Missing>> {
        let (mut found, mut lacks) = (Vec::new(), Vec::new());
        for (whose, spring, raise) in seats {
            match Sat::new(whose, spring, raise) {
                Ok(sat) => found.push(sat),
                Err(missing) => lacks.extend(missing),
            }
        }
        if lacks.is_empty() {
            Ok(Self { seats: found, whose, load: Force::default() })
        } else {
            Err(lacks)
        }
    }

    fn of(case: &Case, spring: &Drawing, whose: Whose) -> Result<Self, Vec<Missing>> {
        let nest = case.nest.as_ref().ok_or_else(Vec::new)?;
        let filled = Self::with(seats(nest, spring, whose), whose)?;
        let load = match nest.load {
            Some(load) => load,
            None if whose == Whose::Original => filled.load_at(case.asked.working)?,
            None => Self::of(case, &case.original, Whose::Original)?.load,
        };
        Ok(Self { load, ..filled })
    }

    /// The load of the nest at the working height, as drawn.
    fn load_at(&self, working: Option<Length>) -> Result<Force, Vec<Missing>> {
        let unknown = || vec![Missing { whose: Whose::Nest, figure: Figure::Load }];
        let working = working.ok_or_else(unknown)?;
        let nest = self.nest(|_| End::Nominal)?;
        nest.at_height(working).map(|state| state.load).map_err(|_| unknown())
    }

    fn nest(&self, end: impl Fn(usize) -> End) -> Result<Nest, Vec<Missing>> {
        let members = self.seats.iter().enumerate().map(|(place, sat)| sat.at(end(place)));
        let members = members.collect::<Result<Vec<Member>, _>>()?;
        self.whose.lacks(Nest::new(members).map_err(|_| Figure::SolidHeight.into()))
    }

    fn state(&self, end: impl Fn(usize) -> End) -> Result<State, Vec<Missing>> {
        let rate = || vec![Missing { whose: Whose::Nest, figure: Figure::Rate }];
        self.nest(end)?.at_load(self.load).map_err(|_| rate())
    }

    fn offer(
        &self,
        of: impl Fn(End) -> Result<f64, Vec<Missing>>,
    ) -> Result<OfferedRange, Vec<Missing>> {
        let (least, nominal, most) = (of(End::Least)?, of(End::Nominal)?, of(End::Most)?);
        let unstated = self.seats.iter().flat_map(Sat::unstated).collect();
        Ok(OfferedRange { range: Range::spanning(nominal, [least, most].into_iter()), unstated })
    }

    fn height(&self) -> Result<OfferedRange, Vec<Missing>> {
        self.offer(|end| Ok(self.state(|_| end)?.height.value))
    }

    /// The share of one coil is the least where it is at its least and all others are at their most.
    fn share(&self, of: usize) -> Result<OfferedRange, Vec<Missing>> {
        self.offer(|end| {
            let state = self.state(|place| if place == of { end } else { end.other() })?;
            let own = state.members.get(of).map_or(0.0, |own| own.load.value);
            Ok(if self.load.value > 0.0 { own / self.load.value } else { 0.0 })
        })
    }

    fn standing(&self) -> Result<NestStanding, Vec<Missing>> {
        let state = self.state(|_| End::Nominal)?;
        let coils = state.members.iter().zip(&self.seats).map(|(coil, sat)| CoilStanding {
            load: coil.load,
            share: if self.load.value > 0.0 { (coil.load / self.load).value } else { 0.0 },
            stress: sat.coil.map(|drawn| stress::uncorrected(coil.load, drawn)),
            coil: sat.coil,
            rate: sat.rate.nominal(),
            free: sat.free.nominal(),
            solid: sat.solid.map(|solid| solid.nominal()),
            raise: sat.raise,
        });
        Ok(NestStanding {
            height: state.height,
            coils: coils.collect(),
            stop_load: state.stop_load,
        })
    }
}

impl Filled {
    /// The height of the nest under its load; every coil that could stop it must be known.
    fn sure_height(&self) -> Result<OfferedRange, Vec<Missing>> {
        let open = self.seats.iter().filter(|sat| sat.solid.is_none());
        let open: Vec<Missing> =
            open.map(|sat| Missing { whose: sat.whose, figure: Figure::SolidHeight }).collect();
        if open.is_empty() { self.height() } else { Err(open) }
    }
}

pub(super) fn nest_height(case: &Case) -> Result<OfferedRange, Vec<Missing>> {
    Filled::of(case, &case.candidate, Whose::Candidate)?.sure_height()
}

pub(super) fn nest(case: &Case, nest: &Around) -> NestSwap {
    let filled = |spring, whose| Filled::of(case, spring, whose);
    let after = filled(&case.candidate, Whose::Candidate);
    let of_after = |of: &dyn Fn(&Filled) -> Result<OfferedRange, Vec<Missing>>| {
        let found = after.as_ref().map_err(Clone::clone).and_then(of);
        found.map(|offer| offer.range)
    };
    let (there, offered) = (
        || seats(nest, &case.original, Whose::Original),
        || seats(nest, &case.candidate, Whose::Candidate),
    );
    NestSwap {
        before: filled(&case.original, Whose::Original).and_then(|filled| filled.standing()),
        after: after.as_ref().map_err(Clone::clone).and_then(Filled::standing),
        height: of_after(&Filled::height).map(|height| height.map(si)),
        share: of_after(&|filled| filled.share(nest.outer.len())),
        stopped_by: stopped_by(there()),
        stops: stops(offered()),
    }
}

/// The coil that stops a nest as it is drawn.
fn stopped_by<'a>(seats: impl Iterator<Item = Seat<'a>>) -> Result<usize, Vec<Missing>> {
    let stops = may_stop(seats, |solid| (solid.nominal(), solid.nominal()))?;
    stops.first().copied().ok_or_else(Vec::new)
}

/// The coils that may stop it, over the tolerances of all.
fn stops<'a>(seats: impl Iterator<Item = Seat<'a>>) -> Result<Vec<usize>, Vec<Missing>> {
    may_stop(seats, |solid| (solid.least(), solid.most()))
}

/// The coils that may be solid before all others.
fn may_stop<'a>(
    seats: impl Iterator<Item = Seat<'a>>,
    ends: fn(Range<Length>) -> (Length, Length),
) -> Result<Vec<usize>, Vec<Missing>> {
    let (mut heights, mut lacks) = (Vec::new(), Vec::new());
    for (owner, spring, raise) in seats {
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

impl<Replaced> UnderFrame<Replaced> {
    fn settle(&self, supports: Vec<Support>) -> Result<Settled, ReplacementError> {
        Ok(Frame::new(supports, self.warp)?.settle(self.weight)?)
    }

    /// The frame before and after.
    fn swap(
        &self,
        after: Result<Settled, Vec<Missing>>,
        moved: Result<OfferedRange, Vec<Missing>>,
    ) -> Result<FrameSwap, ReplacementError> {
        let before = self.settle(self.supports.clone())?;
        Ok(FrameSwap {
            deviation_before: FrameSwap::greatest_deviation(&before),
            before,
            after,
            deviation_after: moved.map(|offer| offer.range),
        })
    }
}

impl UnderFrame {
    /// The nests with a coil in the places of the original.
    fn with(&self, own: &Member) -> Result<Vec<Support>, ReplacementError> {
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
        Ok(supports)
    }

    fn settled(&self, point: &Point) -> Result<Result<Settled, ReplacementError>, Figures> {
        let own = member(point, Length::default())?;
        Ok(self.with(&own).and_then(|supports| self.settle(supports)))
    }
}

impl UnderFrame<usize> {
    /// The frame with other coils in the nests that are replaced.
    fn settled(&self, nest: &Nest) -> Result<Settled, ReplacementError> {
        let mut supports = self.supports.clone();
        let count = supports.len();
        for &support in &self.replaced {
            let missing = ReplacementError::Place { support: support + 1, place: 1, count };
            supports.get_mut(support).ok_or(missing)?.nest = nest.clone();
        }
        self.settle(supports)
    }
}

/// Loads that differ by less than this part are one: a frame is settled no closer.
const SETTLED: f64 = 1e-9;

impl FrameSwap {
    /// The greatest part of the mean by which a load differs from it.
    #[must_use]
    pub fn greatest_deviation(settled: &Settled) -> f64 {
        let off = settled.supports.iter().map(|standing| (standing.share - 1.0).abs());
        off.filter(|off| *off > SETTLED).fold(0.0, f64::max)
    }
}

/// The greatest deviation of a load from the mean; the height at which the candidate stops must be known.
pub(super) fn deviation(case: &Case) -> Result<OfferedRange, Vec<Missing>> {
    Whose::Candidate.lacks(case.candidate.solid())?;
    moved(case)
}

fn moved(case: &Case) -> Result<OfferedRange, Vec<Missing>> {
    let under = case.frame.as_ref().ok_or_else(Vec::new)?;
    let range = at_corners(&case.candidate, |point| {
        under
            .settled(point)?
            .map(|settled| FrameSwap::greatest_deviation(&settled))
            .map_err(|_| Figures::NONE)
    });
    Ok(OfferedRange::of(Whose::Candidate, Whose::Candidate.lacks(range)?))
}

pub(super) fn frame(case: &Case, under: &UnderFrame) -> Result<FrameSwap, ReplacementError> {
    let after = match under.settled(&Point::nominal(&case.candidate)) {
        Ok(settled) => Ok(settled?),
        Err(lacks) => Whose::Candidate.lacks(Err(lacks)),
    };
    under.swap(after, moved(case))
}

/// A whole nest and the one that replaces it, under one load.
pub(super) struct Exchange<'a> {
    there: Vec<Seat<'a>>,
    offered: Vec<Seat<'a>>,
    load: Option<Force>,
    working: Option<Length>,
}

/// Up to so many coils each is taken at the ends of its own tolerances, beyond all of them alike.
const EACH_ALONE: usize = 4;

impl<'a> Exchange<'a> {
    pub(super) fn new(
        there: &[(Whose, &'a Seated)],
        offered: &[(Whose, &'a Seated)],
        load: Option<Force>,
        working: Option<Length>,
    ) -> Self {
        let seats = |of: &[(Whose, &'a Seated)]| {
            of.iter().map(|(whose, seated)| (*whose, &seated.spring, seated.raise)).collect()
        };
        Self { there: seats(there), offered: seats(offered), load, working }
    }

    fn before(&self) -> Result<Filled, Vec<Missing>> {
        let filled = Filled::with(self.there.iter().copied(), Whose::Nest)?;
        let load = self.load.map_or_else(|| filled.load_at(self.working), Ok)?;
        Ok(Filled { load, ..filled })
    }

    fn after(&self) -> Result<Filled, Vec<Missing>> {
        let filled = Filled::with(self.offered.iter().copied(), Whose::Nest)?;
        let load = match self.load {
            Some(load) => load,
            None => self.before()?.load,
        };
        Ok(Filled { load, ..filled })
    }

    pub(super) fn height(&self) -> Result<OfferedRange, Vec<Missing>> {
        self.after()?.sure_height()
    }

    pub(super) fn swap(&self) -> WholeSwap {
        let after = self.after();
        let after = || after.as_ref().map_err(Clone::clone);
        let share = |filled: &Filled, place| Ok(filled.share(place)?.range);
        WholeSwap {
            before: self.before().and_then(|filled| filled.standing()),
            after: after().and_then(Filled::standing),
            height: after().and_then(|filled| Ok(filled.height()?.range.map(si))),
            shares: after().and_then(|filled| {
                (0..filled.seats.len()).map(|place| share(filled, place)).collect()
            }),
            stopped_by: stopped_by(self.there.iter().copied()),
            stops: stops(self.offered.iter().copied()),
        }
    }

    /// The greatest deviation of a load from the mean; where each coil stops must be known.
    pub(super) fn deviation(
        &self,
        under: &UnderFrame<usize>,
    ) -> Result<OfferedRange, Vec<Missing>> {
        for (whose, spring, _) in &self.offered {
            whose.lacks(spring.solid())?;
        }
        self.moved(under)
    }

    fn moved(&self, under: &UnderFrame<usize>) -> Result<OfferedRange, Vec<Missing>> {
        let filled = Filled::with(self.offered.iter().copied(), Whose::Nest)?;
        let deviation = |ends: &dyn Fn(usize) -> [End; 3]| {
            let members = filled.seats.iter().enumerate().map(|(place, sat)| sat.with(ends(place)));
            let nest = Nest::new(members.collect::<Result<Vec<Member>, _>>()?);
            let settled =
                nest.map_err(ReplacementError::from).and_then(|nest| under.settled(&nest));
            settled.map(|settled| FrameSwap::greatest_deviation(&settled)).map_err(|_| Vec::new())
        };
        let alone = filled.seats.len() <= EACH_ALONE;
        let ends = |corner: usize, place: usize| {
            let bits = corner >> if alone { 3 * place } else { 0 };
            [0, 1, 2].map(|bit| if bits >> bit & 1 == 0 { End::Least } else { End::Most })
        };
        let corners = 1_usize << if alone { 3 * filled.seats.len() } else { 3 };
        let nominal = deviation(&|_| [End::Nominal; 3])?;
        let all = (0..corners).map(|corner| deviation(&|place| ends(corner, place)));
        let all = all.collect::<Result<Vec<f64>, _>>()?;
        let unstated = filled.seats.iter().flat_map(Sat::unstated).collect();
        Ok(OfferedRange { range: Range::spanning(nominal, all.into_iter()), unstated })
    }

    pub(super) fn frame(&self, under: &UnderFrame<usize>) -> Result<FrameSwap, ReplacementError> {
        let nest = Filled::with(self.offered.iter().copied(), Whose::Nest)
            .and_then(|filled| filled.nest(|_| End::Nominal));
        let after = match nest {
            Ok(nest) => Ok(under.settled(&nest)?),
            Err(missing) => Err(missing),
        };
        under.swap(after, self.moved(under))
    }
}

//! A whole nest for a whole nest: several candidates at once, each in its place, the widest first.
//!
//! What the nest does as a whole is asked of all of them together, what breaks or bends is asked of each.
//! Where nothing is given, what is asked follows from the nest that is there, over its tolerances.

use super::asked::ReplacementError;
use super::limits::{AllowedRange, Measure};
use super::line::{self, Compliance, Line};
use super::offered::{self, OfferedRange};
use super::required::{self, COMMON, FREE_SHARE, LOAD_SHARE, ORIGINAL, Required};
use super::requirement::{Missing, Requirement, Whose};
use super::swap::{Exchange, FrameSwap, UnderFrame, WholeSwap};
use super::{Asked, Case, Overall, Seated, check, overall};
use crate::drawing::{Contradiction, Figure, Figures, Range, over_tolerances};
use crate::material::Against;
use crate::nest::NestError;
use crate::order::InOrder;
use crate::quantity::{Force, Length, si};
use crate::source::Sourced;

/// A coil of a nest, and the two loads between which it works for long.
#[derive(Clone, Debug, PartialEq)]
pub struct NestCoil {
    /// The coil in its seat.
    pub seated: Seated,
    /// The loads; without them nothing is asked of its life.
    pub cycle: Option<(Force, Force)>,
    /// Requirements that it alone need not meet, each with the reason of whoever waives it.
    pub waived: Vec<(Requirement, String)>,
}

/// A nest, the coils that may replace all of it, and what is asked.
///
/// Rate, loads, heights, pocket, post and what a frame makes of it are meant of the nest; stresses, the
/// factor of safety and the gaps between the turns of each coil; the gap and the hands of each two
/// neighbours. A reserve that is given is meant of the nest, which leaves no more than any of its coils.
#[derive(Clone, Debug, PartialEq)]
pub struct NestCase {
    /// The coils that are there, the widest first.
    pub there: Vec<Seated>,
    /// Those that may replace them, the widest first.
    pub offered: Vec<NestCoil>,
    /// What is asked.
    pub asked: Asked,
    /// Load of the nest; that at the working height with the coils that are there where none is given.
    pub load: Option<Force>,
    /// The frame on the nest and others, where that is of interest.
    pub frame: Option<UnderFrame<usize>>,
    /// Requirements that neither the nest nor any coil of it need meet, each with the reason.
    pub waived: Vec<(Requirement, String)>,
}

/// A requirement of the nest, or of one of its coils.
#[derive(Clone, Debug, PartialEq)]
pub struct NestLine {
    /// Which coil, the widest being 0; of a gap and of hands the outer of the two. None of the nest.
    pub place: Option<usize>,
    /// What is asked, offered, and the verdict.
    pub line: Line,
}

/// The verdict on a nest.
#[derive(Clone, Debug, PartialEq)]
pub struct NestJudgement {
    /// Every requirement that is asked.
    pub lines: Vec<NestLine>,
    /// All that are not waived together.
    pub overall: Overall,
    /// What is stated of a coil and its sizes cannot give.
    pub contradictions: Vec<(Whose, Contradiction)>,
    /// What it does to the nest.
    pub swap: WholeSwap,
    /// What it does to the frame.
    pub frame: Option<FrameSwap>,
}

/// One nest, and whose its coils are.
struct Coils<'a> {
    seats: Vec<(Whose, &'a Seated)>,
}

/// Heights closer than this, in metres, are one.
const SAME_HEIGHT: f64 = 1e-9;

/// What a nest has, over the tolerances of all its coils.
type Had = Result<OfferedRange, Vec<Missing>>;

impl Coils<'_> {
    /// A figure of every coil, put together to one of the nest at each end.
    fn all(
        &self,
        of: impl Fn(&Seated) -> Result<Range<f64>, Figures>,
        together: fn(f64, f64) -> f64,
    ) -> Had {
        let (mut found, mut lacks): (Option<Range<f64>>, Vec<Missing>) = (None, Vec::new());
        let mut unstated = Vec::new();
        for (whose, seated) in &self.seats {
            match whose.lacks(of(seated)) {
                Ok(range) => {
                    unstated.extend(whose.figures(range.unstated()));
                    found = Some(found.map_or(range, |all| {
                        let ends = [
                            together(all.least(), range.least()),
                            together(all.most(), range.most()),
                        ];
                        let nominal = together(all.nominal(), range.nominal());
                        Range::spanning(nominal, ends.into_iter())
                    }));
                }
                Err(missing) => lacks.extend(missing),
            }
        }
        match found {
            Some(range) if lacks.is_empty() => Ok(OfferedRange { range, unstated }),
            _ => Err(lacks),
        }
    }

    fn load(&self, height: Length) -> Had {
        let of = |seated: &Seated| seated.spring.load(height - seated.raise);
        self.all(|seated| Ok(of(seated)?.map(|load| load.value)), |one, other| one + other)
    }

    /// The rate of those that carry at a height: one that may stand free there may add nothing.
    fn rate(&self, height: Length) -> Had {
        let of = |seated: &Seated| {
            let (rate, free) = (seated.spring.rate()?, seated.spring.free()?);
            let carries = |free: Length, rate: f64| {
                if free + seated.raise > height { rate } else { 0.0 }
            };
            let end = |free, rate: crate::quantity::SpringRate| carries(free, rate.value);
            let ends = [end(free.least(), rate.least()), end(free.most(), rate.most())];
            let nominal = end(free.nominal(), rate.nominal());
            let unstated = rate.unstated() | free.unstated();
            Ok(Range::spanning(nominal, ends.into_iter()).resting_on(unstated))
        };
        self.all(of, |one, other| one + other)
    }

    fn free(&self) -> Had {
        let of =
            |seated: &Seated| Ok(seated.spring.free()?.map(|free| (free + seated.raise).value));
        self.all(of, f64::max)
    }

    fn solid(&self) -> Had {
        let of =
            |seated: &Seated| Ok(seated.spring.solid()?.map(|solid| (solid + seated.raise).value));
        self.all(of, f64::max)
    }

    /// One coil's stress when the nest is solid: at its own solid height, or where another coil stops
    /// it before. Solid heights are the least by those who differ.
    fn stress_at_solid(&self, place: usize, against: Against) -> Result<Range<f64>, Figures> {
        let Some((_, own)) = self.seats.get(place) else { return Err(Figures::NONE) };
        let others = self.seats.iter().enumerate().filter(|(at, _)| *at != place);
        let others = Coils { seats: others.map(|(_, seat)| *seat).collect() };
        let least_solid = |seated: &Seated| {
            let solid = over_tolerances(&seated.spring, |point| Ok(point.least_solid()?.value))?;
            Ok(solid.map(|solid| solid + seated.raise.value))
        };
        let stopped = if others.seats.is_empty() {
            Range::exact(f64::NEG_INFINITY)
        } else {
            let stopped = others.all(least_solid, f64::max);
            let OfferedRange { range, unstated } =
                stopped.map_err(|_| Figures::from(Figure::SolidHeight))?;
            let unstated = unstated.iter().fold(Figures::NONE, |all, one| all | one.figure.into());
            range.resting_on(unstated)
        };
        let at = |stop: f64| {
            over_tolerances(&own.spring, |point| {
                let stop = si(stop) - own.raise;
                let height = point.least_solid()?.max(stop);
                Ok(point.stress_at(height, against)?.value)
            })
        };
        // The later the others stop it, the further it is pressed.
        let (most, nominal, least) =
            (at(stopped.least())?, at(stopped.nominal())?, at(stopped.most())?);
        let ends = [least.least(), most.most()];
        let unstated = nominal.unstated() | stopped.unstated();
        Ok(Range::spanning(nominal.nominal(), ends.into_iter()).resting_on(unstated))
    }
}

impl NestCase {
    /// Judges the nest.
    ///
    /// # Errors
    /// As [`Case::judge`], and where there is no coil on either side.
    pub fn judge(&self) -> Result<NestJudgement, ReplacementError> {
        self.check()?;
        let mut lines = self.of_nest();
        for place in 0..self.offered.len() {
            lines.extend(self.of_coil(place));
        }
        for NestLine { place, line } in &mut lines {
            let own = place.and_then(|place| self.offered.get(place));
            let own = own.into_iter().flat_map(|coil| &coil.waived);
            let waived = own.chain(&self.waived).find(|(waived, _)| *waived == line.requirement);
            line.waived = waived.map(|(_, why)| why.clone());
        }
        let drawings = self.there().seats.into_iter().chain(self.offered().seats);
        let contradictions: Vec<(Whose, Contradiction)> = drawings
            .flat_map(|(whose, seated)| {
                seated.spring.contradictions().into_iter().map(move |it| (whose, it))
            })
            .collect();
        let overall = overall(&lines.iter().map(|line| &line.line), !contradictions.is_empty());
        let exchange = self.exchange();
        let frame = self.frame.as_ref().map(|under| exchange.frame(under)).transpose()?;
        Ok(NestJudgement { lines, overall, contradictions, swap: exchange.swap(), frame })
    }

    fn check(&self) -> Result<(), ReplacementError> {
        self.asked.check()?;
        if self.there.is_empty() || self.offered.is_empty() {
            return Err(ReplacementError::Nest(NestError::Empty));
        }
        for (whose, seated) in self.there().seats.into_iter().chain(self.offered().seats) {
            if !seated.raise.value.is_finite() {
                return Err(ReplacementError::Nest(NestError::NotFinite { what: "raise" }));
            }
            check::spring(whose, &seated.spring)?;
        }
        Ok(())
    }

    fn there(&self) -> Coils<'_> {
        let seats = self.there.iter().enumerate();
        Coils { seats: seats.map(|(place, seated)| (Whose::There(place), seated)).collect() }
    }

    fn offered(&self) -> Coils<'_> {
        let seats = self.offered.iter().enumerate();
        Coils { seats: seats.map(|(place, coil)| (Whose::Offered(place), &coil.seated)).collect() }
    }

    fn exchange(&self) -> Exchange<'_> {
        let (there, offered) = (self.there(), self.offered());
        Exchange::new(&there.seats, &offered.seats, self.load, self.asked.working)
    }

    /// The heights at which a coil that is there has a stated load, as the nest stands at them; each once,
    /// the highest first.
    #[must_use]
    pub fn stated_heights(&self) -> Vec<Length> {
        let of = |seated: &Seated| {
            let raise = seated.raise;
            seated.spring.loads.iter().map(|load| load.height + raise).collect::<Vec<_>>()
        };
        let mut heights: Vec<Length> = self.there.iter().flat_map(of).collect();
        heights.put_in_order(|one, other| other.value.total_cmp(&one.value));
        heights.dedup_by(|one, other| (*one - *other).abs().value < SAME_HEIGHT);
        heights
    }

    /// What is asked of the nest as a whole.
    fn of_nest(&self) -> Vec<NestLine> {
        let (there, offered, asked) = (self.there(), self.offered(), &self.asked);
        let si =
            |limits: Option<AllowedRange<Length>>| limits.map(|it| it.map(|length| length.value));
        let most = |had: Had| worst(had, |range| AllowedRange::at_most(range.most()));
        let mut found = vec![
            self.across(Requirement::Pocket, 0),
            self.across(Requirement::Post, self.offered.len().saturating_sub(1)),
            of_nest(
                Requirement::FreeHeight,
                Measure::Length,
                by(si(asked.free), || usual(there.free(), FREE_SHARE)),
                offered.free(),
            ),
            of_nest(
                Requirement::SolidHeight,
                Measure::Length,
                by(asked.solid.map(|solid| AllowedRange::at_most(solid.value)), || {
                    most(there.solid())
                }),
                offered.solid(),
            ),
        ];
        let stated = (0..=u8::MAX).zip(self.stated_heights());
        found.extend(stated.map(|(at, height)| {
            let required = usual(there.load(height), LOAD_SHARE);
            of_nest(Requirement::LoadAt(at), Measure::Load, required, offered.load(height))
        }));
        found.extend(asked.nest_height.map(|nest| {
            let required = Ok(Required::given(nest.map(|height| height.value)));
            of_nest(Requirement::NestHeight, Measure::Length, required, self.exchange().height())
        }));
        found.extend(self.frame.as_ref().zip(asked.deviation).map(|(under, most)| {
            let required = Ok(Required::given(AllowedRange::at_most(most)));
            let moved = self.exchange().deviation(under);
            of_nest(Requirement::Deviation, Measure::Number, required, moved)
        }));
        let Some(working) = asked.working else { return found };
        let left = |coils: &Coils<'_>| {
            let OfferedRange { range, unstated } = coils.solid()?;
            let left = |solid: f64| working.value - solid;
            let ends = [left(range.least()), left(range.most())];
            Ok(OfferedRange {
                range: Range::spanning(left(range.nominal()), ends.into_iter()),
                unstated,
            })
        };
        found.extend([
            of_nest(
                Requirement::Rate,
                Measure::Rate,
                by(asked.rate.map(|rate| rate.map(|rate| rate.value)), || {
                    usual(there.rate(working), LOAD_SHARE)
                }),
                offered.rate(working),
            ),
            of_nest(
                Requirement::Load,
                Measure::Load,
                by(asked.load.map(|load| load.map(|load| load.value)), || {
                    usual(there.load(working), LOAD_SHARE)
                }),
                offered.load(working),
            ),
        ]);
        found.extend(asked.reserve.map(|reserve| {
            let required = Ok(Required::given(AllowedRange::at_least(reserve.value)));
            of_nest(Requirement::Reserve, Measure::Length, required, left(&offered))
        }));
        found
    }

    /// The pocket by the widest coil, the post by the narrowest.
    fn across(&self, requirement: Requirement, place: usize) -> NestLine {
        // Of the nest that is there, the one that stood at that wall.
        let original = match requirement {
            Requirement::Pocket => self.there.first(),
            _ => self.there.last(),
        };
        let original = original.map(|seated| seated.spring.clone()).unwrap_or_default();
        let stood =
            if requirement == Requirement::Pocket { 0 } else { self.there.len().saturating_sub(1) };
        let mut line = line::judge(requirement, &Case { original, ..self.case(place) });
        rename(&mut line, place, stood);
        NestLine { place: None, line }
    }

    /// A coil that is offered, against the one in its place and beside its new neighbours.
    #[must_use]
    pub fn case(&self, place: usize) -> Case {
        let same = self.there.get(place).filter(|_| self.there.len() == self.offered.len());
        let own = self.offered.get(place);
        let raise = own.map(|own| own.seated.raise).unwrap_or_default();
        let seated = |coil: &NestCoil| coil.seated.clone();
        let asked = Asked {
            working: self.asked.working.map(|working| working - raise),
            cycle: own.and_then(|own| own.cycle),
            hand: None,
            ..self.asked.clone()
        };
        Case {
            nest: Some(super::Around {
                outer: self.offered.iter().take(place).map(seated).collect(),
                inner: self.offered.iter().skip(place + 1).map(seated).collect(),
                raise,
                load: None,
            }),
            ..Case::new(
                same.map(|same| same.spring.clone()).unwrap_or_default(),
                own.map(|own| own.seated.spring.clone()).unwrap_or_default(),
                asked,
            )
        }
    }

    /// What is asked of one coil.
    fn of_coil(&self, place: usize) -> Vec<NestLine> {
        let case = self.case(place);
        let (has_inner, at_work) = (place + 1 < self.offered.len(), case.asked.working.is_some());
        let same = self.there.len() == self.offered.len();
        // What is given is asked of the nest.
        let own_reserve = at_work && self.asked.reserve.is_none();
        let all = [
            (Requirement::InnerGap, has_inner),
            (Requirement::InnerHand, has_inner),
            (Requirement::Ends, same),
            (Requirement::StressAtWork, at_work),
            (Requirement::Buckling, at_work),
            (Requirement::Fatigue, case.asked.cycle.is_some()),
        ];
        let asked = all.into_iter().filter_map(|(requirement, asked)| asked.then_some(requirement));
        let mut lines: Vec<Line> = asked.map(|asked| line::judge(asked, &case)).collect();
        if own_reserve {
            lines.push(reserve(&case, same));
        }
        lines.push(self.stress_at_solid(&case, place));
        for line in &mut lines {
            rename(line, place, place);
        }
        lines.into_iter().map(|line| NestLine { place: Some(place), line }).collect()
    }

    fn stress_at_solid(&self, case: &Case, place: usize) -> Line {
        let against = required::against(case, case.asked.stress_at_solid);
        let given = case.asked.stress_at_solid;
        let given = given.map(|allowable| AllowedRange::at_most(allowable.stress.value));
        let same = self.there.len() == self.offered.len();
        let required = by(given, || {
            required::stress(case, |against| match self.there().stress_at_solid(place, against) {
                found if same => found,
                _ => Err(Figure::AllowableStress.into()),
            })
        });
        let offer = Whose::Candidate.lacks(self.offered().stress_at_solid(place, against));
        let offer = offer.map(|range| OfferedRange::of(Whose::Candidate, range));
        line::compared(Requirement::StressAtSolid, Measure::Stress, required, offer)
    }
}

/// The least gaps that EN 13906-1 asks at the working height: as of one coil for another, or, where none
/// stood in its place, those of its own turns.
fn reserve(case: &Case, same: bool) -> Line {
    if same {
        return line::judge(Requirement::Reserve, case);
    }
    let offer = offered::figure(Requirement::Reserve, case);
    line::compared(Requirement::Reserve, Measure::Length, required::own_gaps(case), offer)
}

fn of_nest(
    requirement: Requirement,
    measure: Measure,
    required: Result<Required, Vec<Missing>>,
    offer: Had,
) -> NestLine {
    NestLine { place: None, line: line::compared(requirement, measure, required, offer) }
}

/// What is given, else what follows from the nest that is there.
fn by(
    given: Option<AllowedRange<f64>>,
    else_by: impl FnOnce() -> Result<Required, Vec<Missing>>,
) -> Result<Required, Vec<Missing>> {
    match given {
        Some(limits) => Ok(Required::given(limits)),
        None => else_by(),
    }
}

/// No worse than the nest that is there at its worst.
fn worst(
    had: Had,
    limits: impl Fn(&Range<f64>) -> AllowedRange<f64>,
) -> Result<Required, Vec<Missing>> {
    Ok(Required::by(limits(&had?.range), ORIGINAL))
}

/// The range of the nest that is there, or a usual share about it where its tolerances are not given.
fn usual(had: Had, share: f64) -> Result<Required, Vec<Missing>> {
    let OfferedRange { range, unstated } = had?;
    let known = unstated.iter().fold(Figures::NONE, |all, one| all | one.figure.into());
    let usual = Sourced { value: share * range.nominal(), source: COMMON };
    let required = Required::like(&range.resting_on(known), || usual);
    Ok(Required { unstated, ..required })
}

/// Names the coils of a line by their places in the nest instead of by what stands around one of them.
fn rename(line: &mut Line, place: usize, stood: usize) {
    if let Compliance::MetAsDrawn { unstated: missing } | Compliance::CannotTell { missing } =
        &mut line.verdict
    {
        for one in missing {
            one.whose = match one.whose {
                Whose::Original => Whose::There(stood),
                Whose::Candidate => Whose::Offered(place),
                Whose::Outer(at) => Whose::Offered(at),
                Whose::Inner(at) => Whose::Offered(place + 1 + at),
                other => other,
            };
        }
    }
}

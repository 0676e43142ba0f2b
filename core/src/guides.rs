//! A box in its guides: how much clearance is left, and the liner that brings it right.
//!
//! ```text
//! c_i = A_i − l1_i − l2_i − B          at up to three heights, top to bottom
//! ```
//! `A` opening between the guides · `l1`, `l2` liners of the one side and of the other · `B` greatest
//! width of the box, which can meet the opening at every height of its travel
//!
//! A box that does not slide leaves its nest without work. Cold against warm, rust and dirt are not
//! worked out here.

use crate::formula::Formula;
use crate::measured::uniform;
use crate::quantity::{Length, System, si};
use crate::reading::Interval;
use crate::say::{Say, says, words_by_display};
use crate::source::{Known, Source};
use crate::verdict::{Limits, ROUNDING, judge};
use thiserror::Error;

/// Where the clearance comes from.
pub const SOURCE: Source =
    Source::new("geometry", "a box between two guides with their liners", Known::Derived);

/// The clearance in all at one height.
pub const CLEARANCE: Formula = Formula::new("{cl} = {A} − {l1} − {l2} − {B}");
/// The clearance on one side, with the box in the middle of the opening.
pub const ONE_SIDE: Formula = Formula::new("{cs} = ({A} − {B}) / 2 − {l1}");

/// At how many heights a size may be measured.
pub const MOST_HEIGHTS: usize = 3;

/// How many thicknesses of a stock are tried, the first ones: each is tried with each.
pub const MOST_STOCK: usize = 40;

/// The liners of the two sides.
type Sides<T> = [T; 2];

/// A size as measured, or what follows from several.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Size {
    /// The estimate.
    pub value: Length,
    /// One standard uncertainty of it.
    pub doubt: Length,
    /// The half-width of the coarsest reading in it, which is in the doubt too. Sizes are read to marks,
    /// and limits mostly stand on marks.
    pub marks: Length,
}

impl Size {
    /// A size without doubt.
    #[must_use]
    pub fn exact(value: Length) -> Self {
        Self { value, ..Self::default() }
    }

    /// What a reading says, by a tape or gauge that may be off by an error either way.
    #[must_use]
    pub fn read(said: Interval, error: Length) -> Self {
        let marks = said.half_width();
        let doubt = hypot(uniform(marks), uniform(error));
        Self { value: said.estimate(), doubt, marks }
    }

    /// The doubt that is left where it is known where between its marks the end lay.
    fn beside_marks(&self) -> Length {
        let (whole, marks) = (self.doubt.value, uniform(self.marks).value);
        si(libm::sqrt((whole * whole - marks * marks).max(0.0)))
    }

    /// Less another, with the doubt of both.
    fn less(self, other: Self) -> Self {
        let marks = if other.marks > self.marks { other.marks } else { self.marks };
        Self { value: self.value - other.value, doubt: hypot(self.doubt, other.doubt), marks }
    }

    /// Half of it.
    fn half(self) -> Self {
        Self { value: self.value / 2.0, doubt: self.doubt / 2.0, marks: self.marks / 2.0 }
    }

    /// Shifted.
    fn moved(self, by: Length) -> Self {
        Self { value: self.value + by, ..self }
    }
}

fn hypot(one: Length, other: Length) -> Length {
    si(libm::hypot(one.value, other.value))
}

/// A box, the opening it slides in, and the liners between.
///
/// # Example
/// An opening of 8 1/2 in, narrower by 1/16 in the middle, liners of 1/4 in, a box of 7 7/8 in:
/// ```
/// use coilnest::guides::{Guides, Size, Word};
/// use coilnest::quantity::{Length, unit::inch};
/// use coilnest::verdict::Limits;
///
/// let inches = |value: f64| Size::exact(Length::new::<inch>(value));
/// let guides = Guides::new(
///     vec![inches(8.5), inches(8.4375), inches(8.5)],
///     vec![inches(7.875)],
///     [vec![inches(0.25)], vec![inches(0.25)]],
/// )?;
/// // 8 7/16 − 1/4 − 1/4 − 7 7/8
/// assert!((guides.least().value.get::<inch>() - 0.0625).abs() < 1e-12);
/// assert!((guides.pinch().unwrap().value.get::<inch>() - 0.0625).abs() < 1e-12);
///
/// let limits = Limits::new(Some(inches(0.09375).value), Some(inches(0.1875).value))?;
/// assert_eq!(guides.judge(Some(limits), 0.95).word, Word::Tight);
/// // With one liner of 3/16 it has 1/8 in the middle and 3/16 at the ends.
/// let stock = [inches(0.25), inches(0.1875)];
/// let choice = guides.from_stock(&stock, limits, 0.95).unwrap();
/// assert_eq!((choice.liners, choice.verdict.word), ([None, Some(1)], Word::Free));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Guides {
    opening: Vec<Size>,
    widths: Vec<Size>,
    liners: Sides<Vec<Size>>,
}

/// What was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The opening between the guides.
    Opening,
    /// The box.
    Box,
    /// A liner, of side 0 or 1.
    Liner(usize),
}

impl core::fmt::Display for Part {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Opening => f.write_str("the opening"),
            Self::Box => f.write_str("the box"),
            Self::Liner(side) => write!(f, "liner {}", side + 1),
        }
    }
}

words_by_display!(Part);

/// Why sizes make no guides.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum GuidesError {
    /// A size at too many heights, or at none where there must be one.
    Count {
        /// Of what.
        part: Part,
        /// At how many heights.
        count: usize,
    },
    /// Sizes at numbers of heights that cannot be held against each other.
    HeightsDiffer {
        /// Of what.
        part: Part,
        /// At how many heights.
        count: usize,
        /// At how many heights the other.
        other: usize,
    },
    /// A size that is none, or a doubt below zero.
    Size {
        /// Of what.
        part: Part,
        /// The size.
        size: Length,
        /// Its doubt.
        doubt: Length,
    },
}

says! {
    GuidesError {
        Count { part, count } =>
            "{part} at {count} heights", "one to three heights, top to bottom",
            "give the ends and the narrowest";
        HeightsDiffer { part, count, other } =>
            "{part} at {count} heights, and another size at {other}",
            "one for all heights, or as many as the other", "measure both at the same heights";
        Size { part, size, doubt } =>
            "{part} of {size}, in doubt by {doubt}", "a size above zero and a doubt without sign",
            "measure it again";
    }
}

/// How a box stands in its guides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// Its clearance is within the limits.
    Free,
    /// Somewhere it has less than the least.
    Tight,
    /// Somewhere it has more than the most.
    Loose,
    /// None of these is sure enough.
    TooClose,
    /// Somewhere it has surely none: it does not slide.
    Seized,
    /// There is no limit to hold it against.
    NoLimit,
}

/// A verdict with what it rests on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClearanceVerdict {
    /// The verdict.
    pub word: Word,
    /// Probability that the clearance is within the limits at every height; none without limits.
    pub p_in: Option<f64>,
    /// When too close to call: whether some height stands on a limit, so that no gauge settles it.
    pub on_limit: bool,
}

/// Which liners are renewed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Renewed {
    /// That of one side, 0 or 1; the other stays.
    One(usize),
    /// Both, by two of one thickness.
    Both,
}

/// How thick a new liner may be: at least and at most, of which either may be open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thickness {
    /// The least that leaves no more clearance than the most, from no thickness up; open without a greatest
    /// limit.
    pub least: Option<Length>,
    /// The most that leaves the least clearance; open without a least limit.
    pub most: Option<Length>,
}

impl Thickness {
    /// What to aim at: the middle, or the end that there is.
    #[must_use]
    pub fn aim(&self) -> Option<Length> {
        match (self.least, self.most) {
            (Some(least), Some(most)) => Some((least + most) / 2.0),
            (one, other) => one.or(other),
        }
    }
}

/// Liners of a stock that are put in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// For each side which of the stock, counted from 0; none where its liner stays.
    pub liners: Sides<Option<usize>>,
    /// The verdict with them.
    pub verdict: ClearanceVerdict,
    /// The least clearance with them.
    pub clearance: Size,
}

impl Guides {
    /// From the opening, the width of the box and the liners of both sides, each at one to three heights
    /// from top to bottom. One value stands for all heights; a side without a liner is empty.
    ///
    /// # Errors
    /// [`GuidesError`].
    pub fn new(
        opening: Vec<Size>,
        widths: Vec<Size>,
        liners: Sides<Vec<Size>>,
    ) -> Result<Self, GuidesError> {
        let [first, second] = &liners;
        let parts = [
            (Part::Opening, &opening, 1),
            (Part::Box, &widths, 1),
            (Part::Liner(0), first, 0),
            (Part::Liner(1), second, 0),
        ];
        let mut heights = 1;
        for (part, sizes, least) in parts {
            let count = sizes.len();
            if !(least..=MOST_HEIGHTS).contains(&count) {
                return Err(GuidesError::Count { part, count });
            }
            let is_size = |size: &Size| {
                size.value.value > 0.0 && size.value.is_finite() && size.doubt.value >= 0.0
            };
            if let Some(size) = sizes.iter().find(|size| !is_size(size)) {
                let (size, doubt) = (size.value, size.doubt);
                return Err(GuidesError::Size { part, size, doubt });
            }
            // The box meets every height with its widest, however often it was measured.
            if count > 1 && part != Part::Box {
                if heights > 1 && heights != count {
                    return Err(GuidesError::HeightsDiffer { part, count, other: heights });
                }
                heights = count;
            }
        }
        Ok(Self { opening, widths, liners })
    }

    /// At how many heights the clearance is known.
    #[must_use]
    pub fn heights(&self) -> usize {
        let [first, second] = &self.liners;
        self.opening.len().max(first.len()).max(second.len())
    }

    /// The opening at a height from the top, counted from 0.
    #[must_use]
    pub fn opening(&self, height: usize) -> Size {
        at(&self.opening, height)
    }

    /// The liner of a side, 0 or 1, at a height from the top; without thickness where there is none.
    #[must_use]
    pub fn liner(&self, side: usize, height: usize) -> Size {
        self.liners.get(side).map_or_else(Size::default, |liner| at(liner, height))
    }

    /// The greatest width of the box.
    #[must_use]
    pub fn widest(&self) -> Size {
        extreme(self.widths.iter().copied(), |one, other| one > other)
    }

    /// The clearance in all at each height, top to bottom.
    ///
    /// ```text
    /// c_i = A_i − l1_i − l2_i − B        u² = u_A² + u_l1² + u_l2² + u_B²
    /// ```
    /// The doubts are taken as each one's own. What a tape has alike in all of them leaves no more than
    /// that here, since the opening is one and box and liners are at most three.
    ///
    /// # Source
    /// [`SOURCE`]; doubts by [`propagation::SOURCE`](crate::propagation::SOURCE).
    #[must_use]
    pub fn clearances(&self) -> Vec<Size> {
        let width = self.widest();
        (0..self.heights())
            .map(|height| {
                let taken = [self.liner(0, height), self.liner(1, height), width];
                taken.into_iter().fold(self.opening(height), Size::less)
            })
            .collect()
    }

    /// The least clearance over the travel.
    #[must_use]
    pub fn least(&self) -> Size {
        extreme(self.clearances().into_iter(), |one, other| one < other)
    }

    /// The least clearance on each side over the travel, with the box in the middle of the opening.
    ///
    /// ```text
    /// c = (A_i − B)/2 − l_i
    /// ```
    #[must_use]
    pub fn sides(&self) -> Sides<Size> {
        let width = self.widest();
        [0, 1].map(|side| {
            let each = (0..self.heights()).map(|height| {
                let room = self.opening(height).less(width);
                room.half().less(self.liner(side, height))
            });
            extreme(each, |one, other| one < other)
        })
    }

    /// How much more clearance there is at the top than at the bottom; none where one height is known.
    #[must_use]
    pub fn taper(&self) -> Option<Size> {
        let at = self.beside_box();
        match at.as_slice() {
            [top, .., bottom] => Some(top.less(*bottom)),
            _ => None,
        }
    }

    /// How much narrower the way is in the middle than at the narrower of its ends: pinched above zero,
    /// wide in the middle below it. None unless three heights are known.
    #[must_use]
    pub fn pinch(&self) -> Option<Size> {
        match self.beside_box().as_slice() {
            [top, middle, bottom] => {
                let narrower = if bottom.value < top.value { *bottom } else { *top };
                Some(narrower.less(*middle))
            }
            _ => None,
        }
    }

    /// The opening less its liners: where heights are compared, the box has no say.
    fn beside_box(&self) -> Vec<Size> {
        let heights = 0..self.heights();
        let way = |height| {
            let taken = [self.liner(0, height), self.liner(1, height)];
            taken.into_iter().fold(self.opening(height), Size::less)
        };
        heights.map(way).collect()
    }

    /// Judges the clearance against limits, at a decision level.
    ///
    /// It is seized where at some height it surely has none, tight where at some height it surely has
    /// less than the least, loose where at some height it surely has more than the most, and free where
    /// at every height it is within. Over m heights "surely" is `1 − (1 − level)/m`, so that three heights
    /// that all stand on a limit are not three times as likely to be called beyond it.
    ///
    /// Sizes that are read to marks differ by whole marks, and limits mostly stand on marks; so each word
    /// must hold with the clearance half a mark nearer to the other side, with the doubt that is left
    /// beside that. The probability is that of the estimate with its whole doubt.
    ///
    /// # Source
    /// [`verdict::SOURCE`](crate::verdict::SOURCE); the m-th part is Bonferroni's inequality, half a mark
    /// the usual correction for what is counted in steps. That both are used so is ours.
    #[must_use]
    pub fn judge(&self, limits: Option<Limits>, level: f64) -> ClearanceVerdict {
        let at = self.clearances();
        #[expect(clippy::cast_precision_loss, reason = "there are at most three")]
        let sure = 1.0 - (1.0 - level) / at.len() as f64;
        // The greatest probability, over the heights, of standing below a limit.
        let below = |limit: Option<Length>, nearer: f64| beyond(&at, limit, nearer, true);
        let above = |limit: Option<Length>, nearer: f64| beyond(&at, limit, nearer, false);
        let seized = below(Some(Length::default()), 1.0) >= sure;
        let Some(limits) = limits else {
            let word = if seized { Word::Seized } else { Word::NoLimit };
            return ClearanceVerdict { word, p_in: None, on_limit: false };
        };
        let (least, most) = (limits.least(), limits.most());
        let p_in = (1.0 - whole(&at, least, true) - whole(&at, most, false)).max(0.0);
        let word = if seized {
            Word::Seized
        } else if below(least, 1.0) >= sure {
            Word::Tight
        } else if above(most, -1.0) >= sure {
            Word::Loose
        } else if 1.0 - below(least, -1.0) - above(most, 1.0) >= level {
            Word::Free
        } else {
            Word::TooClose
        };
        let stands_on = |at: &Size, limit: Option<Length>| {
            limit.is_some_and(|limit| (at.value - limit).abs() <= ROUNDING)
        };
        let on_limit = word == Word::TooClose
            && at.iter().any(|at| stands_on(at, least) || stands_on(at, most));
        ClearanceVerdict { word, p_in: Some(p_in), on_limit }
    }

    /// How thick new liners are to be so that the clearance is within limits at every height, doubts left
    /// out; of two alike, each. None where no liner does it: the way is too uneven, or there is no room.
    ///
    /// ```text
    /// max(A_i − l_i) − B − TU  ≤  l  ≤  min(A_i − l_i) − B − TL         l_i of the liner that stays
    /// ```
    #[must_use]
    pub fn wanted(&self, renewed: Renewed, limits: Limits) -> Option<Thickness> {
        let width = self.widest().value;
        let room = |height| {
            let stays = match renewed {
                Renewed::One(side) => self.liner(1 - side.min(1), height).value,
                Renewed::Both => Length::default(),
            };
            self.opening(height).value - stays - width
        };
        let rooms = || (0..self.heights()).map(room);
        let narrowest = rooms().reduce(|a, b| if b < a { b } else { a })?;
        let widest = rooms().reduce(|a, b| if b > a { b } else { a })?;
        let share = if renewed == Renewed::Both { 2.0 } else { 1.0 };
        let least = limits.most().map(|most| (widest - most) / share);
        let most = limits.least().map(|least| (narrowest - least) / share);
        let has_room = most.is_none_or(|most| most.value > 0.0);
        let fits = least.zip(most).is_none_or(|(least, most)| least <= most + ROUNDING);
        let least = least.map(|least| if least.value > 0.0 { least } else { Length::default() });
        (has_room && fits).then_some(Thickness { least, most })
    }

    /// The liners of a stock, one or one for each side, that bring the clearance right.
    ///
    /// Of all choices that would be called free it takes the one with fewest new liners, of these the
    /// one with the sides most alike, of these the surest. Where none would be called free it is the one
    /// most likely within the limits; none where that is less likely than not. Of a stock no more than
    /// [`MOST_STOCK`] are tried.
    #[must_use]
    pub fn from_stock(&self, stock: &[Size], limits: Limits, level: f64) -> Option<Choice> {
        let each = || core::iter::once(None).chain((0..stock.len().min(MOST_STOCK)).map(Some));
        let mut best: Option<(Rank, Choice)> = None;
        for (first, second) in each().flat_map(|first| each().map(move |second| (first, second))) {
            let liners = [first, second];
            if liners == [None, None] {
                continue;
            }
            let fitted = self.fitted(stock, liners);
            let verdict = fitted.judge(Some(limits), level);
            let rank = Rank::of(&fitted, &verdict, liners);
            if best.as_ref().is_none_or(|(known, _)| rank.is_better(known)) {
                best = Some((rank, Choice { liners, verdict, clearance: fitted.least() }));
            }
        }
        let (_, choice) = best?;
        choice.verdict.p_in.is_some_and(|p_in| p_in >= 0.5).then_some(choice)
    }

    /// The same with liners of a stock put in.
    fn fitted(&self, stock: &[Size], liners: Sides<Option<usize>>) -> Self {
        let mut fitted = self.clone();
        for (liner, new) in fitted.liners.iter_mut().zip(liners) {
            if let Some(new) = new.and_then(|new| stock.get(new)) {
                *liner = vec![*new];
            }
        }
        fitted
    }
}

/// What makes one choice of liners better than another.
struct Rank {
    is_free: bool,
    new: usize,
    uneven: Length,
    p_in: f64,
}

impl Rank {
    fn of(fitted: &Guides, verdict: &ClearanceVerdict, liners: Sides<Option<usize>>) -> Self {
        let uneven = (0..fitted.heights()).fold(Length::default(), |most, height| {
            let off = (fitted.liner(0, height).value - fitted.liner(1, height).value).abs();
            if off > most { off } else { most }
        });
        let is_free = verdict.word == Word::Free;
        let new = liners.iter().flatten().count();
        Self { is_free, new, uneven, p_in: verdict.p_in.unwrap_or_default() }
    }

    fn is_better(&self, than: &Self) -> bool {
        if self.is_free != than.is_free {
            return self.is_free;
        }
        let surer = self.p_in > than.p_in;
        if !self.is_free {
            return surer;
        }
        if self.new != than.new {
            return self.new < than.new;
        }
        let off = self.uneven - than.uneven;
        if off.abs() > ROUNDING { off.value < 0.0 } else { surer }
    }
}

/// The value at a height; one value stands for all of them, and none is no thickness.
fn at(sizes: &[Size], height: usize) -> Size {
    let here = if sizes.len() > 1 { sizes.get(height) } else { sizes.first() };
    here.copied().unwrap_or_default()
}

fn extreme(lengths: impl Iterator<Item = Size>, goes_before: fn(Length, Length) -> bool) -> Size {
    let first = |one: Size, other: Size| {
        if goes_before(other.value, one.value) { other } else { one }
    };
    lengths.reduce(first).unwrap_or_default()
}

/// The greatest probability over the heights of lying below a limit, or above it: each clearance moved up
/// by so many half-widths of its marks, and in doubt by what is left beside them.
fn beyond(at: &[Size], limit: Option<Length>, nearer: f64, is_below: bool) -> f64 {
    let moved = at.iter().map(|at| (at.moved(at.marks * nearer).value, at.beside_marks()));
    greatest(moved, limit, is_below)
}

/// The same of the estimates with their whole doubt.
fn whole(at: &[Size], limit: Option<Length>, is_below: bool) -> f64 {
    greatest(at.iter().map(|at| (at.value, at.doubt)), limit, is_below)
}

fn greatest(
    at: impl Iterator<Item = (Length, Length)>,
    limit: Option<Length>,
    is_below: bool,
) -> f64 {
    let (least, most) = if is_below { (limit, None) } else { (None, limit) };
    let Ok(limits) = Limits::new(least, most) else { return 0.0 };
    let p_out = at.map(|(value, doubt)| 1.0 - judge(value, doubt, limits, 0.5).p_in);
    p_out.fold(0.0, f64::max)
}

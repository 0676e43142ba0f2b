//! A frame on several nests: what each carries, and how the frame stands.
//!
//! A nest stands at each support of a stiff frame. The frame comes down until the nests bear the
//! weight; where one stands higher or on a packing, or the weight off the middle, it leans, and with
//! more than three nests the loads depend on how far the tops of the nests are from one plane:
//!
//! ```text
//! h_i = z + a·x_i + b·y_i + w·x_i·y_i − g_i − t_i
//! Σ F_i = W     Σ F_i·x_i = W·x_c     Σ F_i·y_i = W·y_c     Σ F_i·x_i·y_i = K_w·w
//! ```
//! `z` heave · `a`, `b` slope along, across · `w` warp, 1/m, none of a rigid frame · `g` rise of the
//! ground, m · `t` shim, m · `W` weight at `x_c`, `y_c` · `K_w` warp stiffness, N·m³ · `h`, `F`
//! height and load of each nest, which only pushes
//!
//! That is the least of a convex energy, so that there is one answer for the loads.

pub mod beams;
mod doubt;
mod equilibrium;
mod path;
pub mod shims;
pub mod standing;
pub mod track;

use crate::order::InOrder;
pub use doubt::{CoilDoubt, DoubtError, LoadDoubt, Scatter};
pub use path::STOP_PER_RATE;

use crate::formula::Formula;
use crate::nest::Nest;
use crate::quantity::{Force, Length, SpringRate, System, WarpStiffness, si};
use crate::say::{InWords, Nth, Reader, Say, says};
use crate::source::{Known, Source};
use core::cmp::Ordering;
use equilibrium::{Energy, Post, Rest, Row};
use path::Path;
use thiserror::Error;

/// Where the equilibrium comes from.
pub const SOURCE: Source = Source::new("statics", "a frame on springs that push", Known::Derived);

/// The height of a nest under a frame that stands so.
pub const HEIGHT: Formula =
    Formula::new("{h} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) − {g} − {t}");
/// The same under a frame that warps.
pub const HEIGHT_WARPED: Formula = Formula::new(
    "{h} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) + {w} · ({x} − {xm}) · ({y} − {ym}) − {g} − {t}",
);

/// The height of a nest with layers over or under it.
pub const HEIGHT_STACKED: Formula =
    Formula::new("{h} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) − {g} − {t} − {T} + {sq}");
/// The same under a frame that warps.
pub const HEIGHT_STACKED_WARPED: Formula = Formula::new(
    "{h} = {z} + {a} · ({x} − {xm}) + {b} · ({y} − {ym}) + {w} · ({x} − {xm}) · ({y} − {ym}) − {g} − {t} − {T} + {sq}",
);

/// The least number of supports.
pub const LEAST_SUPPORTS: usize = 3;
/// The greatest number of supports.
pub const MOST_SUPPORTS: usize = 200;

/// A place on the plan of a frame, from an origin that is the caller's choice.
///
/// With a warp stiffness the origin is the point through which both lines run that warping leaves
/// straight: the middle of the frame.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Place {
    /// Along the frame, x.
    pub along: Length,
    /// Across it, y.
    pub across: Length,
}

/// A nest, where it stands, and what lies under it.
#[derive(Clone, Debug, PartialEq)]
pub struct Support {
    /// Where it stands on the plan.
    pub place: Place,
    /// The coils.
    pub nest: Nest,
    /// Stiffness past solid; [`STOP_PER_RATE`] times the nest's rate at solid where none is given.
    pub stop: Option<SpringRate>,
    /// Thickness of the shims under or over the nest, from zero up.
    pub shim: Length,
    /// How far the ground under it is raised, or dips when negative.
    pub ground: Length,
}

/// What the frame bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weight {
    /// The weight.
    pub load: Force,
    /// Where it acts.
    pub centre: Place,
}

/// Whether a nest bears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Contact {
    /// It carries nothing.
    Loose,
    /// Its springs carry.
    Carrying,
    /// It is past solid, and its turns lie on each other.
    Bottomed,
}

/// One nest under the settled frame.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct SettledSupport {
    /// What it carries.
    pub load: Force,
    /// The same as a part of the mean of all, 1 where it carries just that.
    pub share: f64,
    /// Height between its seats.
    pub height: Length,
    /// Whether it bears.
    pub contact: Contact,
}

/// How one diagonal of a frame differs from the other.
///
/// Nests with `u·v` above zero are on the one diagonal, those below on the other, where `u`, `v` are
/// their positions from the middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Diagonal {
    /// Load of the one less that of the other.
    pub load: Force,
    /// Mean height of its nests less that of the other's.
    pub height: Length,
}

/// A frame at rest.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub struct Settled {
    /// Each nest, in the frame's order.
    pub supports: Vec<SettledSupport>,
    /// The mean load of all nests, loose ones counted.
    pub mean: Force,
    /// Height of the frame over the datum of the ground, at the origin of the places.
    pub heave: Length,
    /// Rise along the frame per length, at the middle of the supports.
    pub slope_along: f64,
    /// Rise across the frame per length, at the middle of the supports.
    pub slope_across: f64,
    /// How much higher the frame stands at the farthest support along than at the nearest.
    pub lean_along: Length,
    /// How much higher the frame stands at the farthest support across than at the nearest.
    pub lean_across: Length,
    /// Height of the frame over the datum of the ground, at the middle of its supports.
    pub middle: Length,
    /// Twist of the frame, 1/m; 0 of a rigid one.
    pub twist: f64,
    /// How far warping lifts the corners of one diagonal; the others it lowers as much.
    pub warp: Length,
    /// One diagonal against the other, where each quarter of the plan has a nest.
    pub diagonal: Option<Diagonal>,
    /// Whether the nests that carry leave the frame free to rock. The loads are certain even so;
    /// heights, lean and warp are those of one of many ways to stand.
    pub rocks: bool,
    /// How many steps were taken.
    pub iterations: usize,
}

impl Settled {
    /// The mean height of all nests, loose ones counted.
    #[must_use]
    pub fn mean_height(&self) -> Length {
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let count = self.supports.len() as f64;
        let sum = self.supports.iter().map(|standing| standing.height).sum::<Length>();
        sum / count
    }
}

impl InWords for Place {
    fn in_words(&self, reader: Reader<'_>) -> String {
        format!("{} along, {} across", self.along.in_words(reader), self.across.in_words(reader))
    }
}

/// Why supports make no frame, or a frame does not stand. Supports are counted from 1.
#[derive(Clone, Copy, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum FrameError {
    /// Too few or too many supports.
    Count {
        /// How many there are.
        count: usize,
    },
    /// A length that is not a number.
    NotFinite {
        /// Which support.
        support: Nth,
        /// What it was.
        what: &'static str,
    },
    /// A shim of less than no thickness.
    Shim {
        /// Which support.
        support: Nth,
        /// The shim.
        shim: Length,
    },
    /// A stop that does not push back.
    Stop {
        /// Which support.
        support: Nth,
        /// The stiffness past solid.
        stop: SpringRate,
    },
    /// A warp stiffness below zero.
    Warp {
        /// The stiffness.
        warp: WarpStiffness,
    },
    /// Two supports at one place.
    SamePlace {
        /// One.
        first: Nth,
        /// The other.
        second: Nth,
        /// Where they stand.
        place: Place,
    },
    /// All supports in one line.
    InLine {
        /// How many there are.
        count: usize,
    },
    /// A weight that is not above zero.
    Weight {
        /// The weight.
        load: Force,
    },
    /// A centre of weight that is not a number.
    Centre,
    /// The weight is outside the supports.
    Tips {
        /// Where the weight acts.
        centre: Place,
        /// The support on one hand of it.
        first: Nth,
        /// The support on the other.
        second: Nth,
    },
    /// A nest that is pressed to nothing.
    Crushed {
        /// Which support.
        support: Nth,
        /// Its load.
        load: Force,
        /// Its height.
        height: Length,
    },
    /// A frame that is free to warp and finds no hold.
    Slack {
        /// Its stiffness.
        warp: WarpStiffness,
        /// How many steps were taken.
        steps: usize,
    },
    /// The steps came to no end.
    NotConverged {
        /// How many steps were taken.
        steps: usize,
    },
}

says! {
    FrameError {
        Count { count } =>
            "{count} nests under the frame",
            "a number of nests from {LEAST_SUPPORTS} to {MOST_SUPPORTS}", "add or take away nests";
        NotFinite { support, what } =>
            "{support}: its {what} is not a number", "a length", "measure it again";
        Shim { support, shim } =>
            "{support} has a shim of {shim}", "zero or more", "give a dip as ground, not as a shim";
        Stop { support, stop } =>
            "{support} has a stop of {stop}", "a rate above zero",
            "leave it out where it is not known";
        Warp { warp } =>
            "a warp stiffness of {warp}", "zero or more", "leave it out for a rigid frame";
        SamePlace { first, second, place } =>
            "{first} and {second} both stand at {place}", "a place of its own for each",
            "measure one of them again, or make one nest of both";
        InLine { count } =>
            "all {count} nests stand in one line, so that the frame tips",
            "at least one nest beside that line",
            "see whether positions along and across were exchanged or left out";
        Weight { load } =>
            "a weight of {load}", "one above zero",
            "give what the nests carry together, without a sign";
        Centre =>
            "the centre of weight is not a number", "a place along and across", "measure it again";
        Tips { centre, first, second } =>
            "the weight acts at {centre}, on or beyond the line between {first} and {second}, so that the frame tips",
            "a place within the nests", "measure it again, or see whether a nest is missing";
        Crushed { support, load, height } =>
            "{support} would carry {load} at a height of {height}", "a height above zero",
            "see whether the weight is right, and give the solid heights of its coils";
        Slack { warp, steps } =>
            "a frame with a warp stiffness of {warp} finds no rest on these nests after {steps} steps",
            "one that resists warping", "give a greater stiffness, or none for a rigid frame";
        NotConverged { steps } =>
            "the frame found no rest in {steps} steps", "a frame whose loads settle",
            "see whether a rate or a stop is far from those of the other nests";
    }
}

/// A stiff frame on nests.
///
/// # Example
/// A corner that is high by δ moves every load of four equal nests by kδ/4:
/// ```
/// use coilnest::frame::{Frame, Place, Support, Weight};
/// use coilnest::nest::{Law, Member, Nest};
/// use coilnest::quantity::{Force, Length, SpringRate};
/// use coilnest::quantity::unit::{millimeter, newton, newton_per_millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let law = Law::linear(SpringRate::new::<newton_per_millimeter>(300.0))?;
/// let nest = Nest::new(vec![Member { free: mm(350.0), law, solid: None, raise: mm(0.0) }])?;
/// let support = |x, y, shim| Support {
///     place: Place { along: mm(x), across: mm(y) },
///     nest: nest.clone(),
///     stop: None,
///     shim: mm(shim),
///     ground: mm(0.0),
/// };
/// let corners = vec![
///     support(900.0, 500.0, 10.0),
///     support(900.0, -500.0, 0.0),
///     support(-900.0, 500.0, 0.0),
///     support(-900.0, -500.0, 0.0),
/// ];
/// let frame = Frame::new(corners, None)?;
/// let weight = Weight { load: Force::new::<newton>(40_000.0), centre: Place::default() };
/// let settled = frame.settle(weight)?;
/// for (standing, expected) in settled.supports.iter().zip([10_750.0, 9250.0, 9250.0, 10_750.0]) {
///     assert!((standing.load.get::<newton>() - expected).abs() < 1e-8); // 300 · 10/4 = 750
/// }
/// assert!((settled.supports[0].share - 1.075).abs() < 1e-12);
/// assert!((settled.lean_along.get::<millimeter>() - 5.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
pub struct Frame {
    supports: Vec<Support>,
    posts: Vec<Post>,
    warp: Option<WarpStiffness>,
    extent: Extent,
}

/// The rectangle that the supports fill.
#[derive(Clone, Copy, Debug)]
struct Extent {
    middle: Place,
    size: Place,
}

/// Places nearer to each other than this part of the frame's size are one.
const SAME: f64 = 1e-9;
/// Supports whose spread beside their line is less than this part of that along it are in one line.
const IN_LINE: f64 = 1e-6;

impl Frame {
    /// A frame on supports, in any order; rigid where no warp stiffness is given.
    ///
    /// # Errors
    /// [`FrameError::Count`], [`FrameError::NotFinite`], [`FrameError::Shim`], [`FrameError::Stop`],
    /// [`FrameError::Warp`], [`FrameError::SamePlace`], [`FrameError::InLine`].
    pub fn new(supports: Vec<Support>, warp: Option<WarpStiffness>) -> Result<Self, FrameError> {
        let count = supports.len();
        if !(LEAST_SUPPORTS..=MOST_SUPPORTS).contains(&count) {
            return Err(FrameError::Count { count });
        }
        if let Some(warp) = warp.filter(|warp| !(warp.value >= 0.0 && warp.value.is_finite())) {
            return Err(FrameError::Warp { warp });
        }
        for (index, support) in supports.iter().enumerate() {
            support.check(Nth::of(index))?;
        }
        let extent = Extent::of(&supports);
        extent.check(&supports)?;
        let post = |support: &Support| Post {
            row: extent.row(support.place, warp.is_some()),
            offset: (support.ground + support.shim).value,
            path: Path::of(support),
        };
        let posts = supports.iter().map(post).collect();
        Ok(Self { supports, posts, warp, extent })
    }

    /// The supports, in the order in which they were given.
    #[must_use]
    pub fn supports(&self) -> &[Support] {
        &self.supports
    }

    /// The middle of its supports.
    #[must_use]
    pub fn middle(&self) -> Place {
        self.extent.middle
    }

    /// Its stiffness against warping; none of a rigid frame.
    #[must_use]
    pub fn warp(&self) -> Option<WarpStiffness> {
        self.warp
    }

    /// Where the frame comes to rest under a weight.
    ///
    /// # Range
    /// Small slopes, as of anything that still rides: positions on the plan stay as they are, and a
    /// nest is as high in the middle as between its seats.
    ///
    /// # Errors
    /// [`FrameError::Weight`], [`FrameError::Centre`]; [`FrameError::Tips`] where the weight is not
    /// within the supports; [`FrameError::Crushed`] where a nest would have no height;
    /// [`FrameError::Slack`] where a frame without warp stiffness finds no hold;
    /// [`FrameError::NotConverged`].
    ///
    /// # Source
    /// [`SOURCE`].
    pub fn settle(&self, weight: Weight) -> Result<Settled, FrameError> {
        self.check(weight)?;
        let rest = self.rest(&self.posts, weight, None)?;
        self.settled(&self.posts, weight, &rest)
    }

    /// Whether a weight is one, and within the supports.
    fn check(&self, weight: Weight) -> Result<(), FrameError> {
        let Weight { load, centre } = weight;
        if !(load.value > 0.0 && load.value.is_finite()) {
            return Err(FrameError::Weight { load });
        }
        if !(centre.along.value.is_finite() && centre.across.value.is_finite()) {
            return Err(FrameError::Centre);
        }
        match self.side_open(centre) {
            Some((first, second)) => {
                Err(FrameError::Tips { centre, first: Nth(first), second: Nth(second) })
            }
            None => Ok(()),
        }
    }

    /// The two supports, counted from 1, between which there is none on one side of a place.
    fn side_open(&self, centre: Place) -> Option<(usize, usize)> {
        let near = self.extent.span() * SAME;
        let mut around: Vec<(f64, usize)> = Vec::with_capacity(self.supports.len());
        for (index, support) in self.supports.iter().enumerate() {
            let (x, y) = (support.place.along - centre.along, support.place.across - centre.across);
            if libm::hypot(x.value, y.value) > near {
                around.push((libm::atan2(y.value, x.value), index + 1));
            }
        }
        around.put_in_order(|(one, _), (other, _)| one.total_cmp(other));
        let first = around.first().map(|(angle, index)| (angle + core::f64::consts::TAU, *index));
        let next = around.iter().copied().skip(1).chain(first);
        let open = |((from, _), (to, _)): &((f64, usize), (f64, usize))| {
            to - from >= core::f64::consts::PI - SAME
        };
        let gap = around.iter().copied().zip(next).find(open);
        gap.map(|((_, from), (_, to))| (from.min(to), from.max(to)))
    }

    fn energy<'a>(&self, posts: &'a [Post], weight: Weight) -> Energy<'a> {
        let pull = self.extent.pull(weight.centre, self.warp.is_some());
        let pull = pull.map(|part| weight.load.value * part);
        Energy { posts, pull, warp: self.warp.map(|warp| warp.value) }
    }

    /// The rest on posts that need not be the frame's own.
    fn rest(&self, posts: &[Post], weight: Weight, start: Option<Row>) -> Result<Rest, FrameError> {
        let rest = self.energy(posts, weight).settle(start);
        rest.map_err(|restless| match self.warp {
            Some(warp) if warp.value <= 0.0 => FrameError::Slack { warp, steps: restless.steps },
            _ => FrameError::NotConverged { steps: restless.steps },
        })
    }

    fn settled(&self, posts: &[Post], weight: Weight, rest: &Rest) -> Result<Settled, FrameError> {
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let mean = weight.load / posts.len() as f64;
        let mut supports = Vec::with_capacity(posts.len());
        for ((post, load), support) in posts.iter().zip(&rest.loads).zip(1..) {
            let (height, _) = post.at(&rest.pose);
            let contact = if post.path.is_bottomed(height) {
                Contact::Bottomed
            } else if *load > 0.0 {
                Contact::Carrying
            } else {
                Contact::Loose
            };
            let (load, height) = (si(*load), si(height));
            if height.value <= 0.0 {
                return Err(FrameError::Crushed { support: Nth(support), load, height });
            }
            supports.push(SettledSupport { load, share: (load / mean).value, height, contact });
        }
        let [z, a, b, w] = rest.pose;
        let Extent { middle, size } = self.extent;
        let (x, y) = (middle.along.value, middle.across.value);
        Ok(Settled {
            diagonal: diagonal(&self.supports, &supports, middle),
            supports,
            mean,
            heave: si(z - a * x - b * y + w * x * y),
            slope_along: a,
            slope_across: b,
            lean_along: size.along * a,
            lean_across: size.across * b,
            middle: si(z),
            twist: w,
            warp: si(w * size.along.value * size.across.value / 4.0),
            rocks: rest.rocks,
            iterations: rest.steps,
        })
    }
}

impl Support {
    fn check(&self, support: Nth) -> Result<(), FrameError> {
        for (what, length) in [
            ("position along", self.place.along),
            ("position across", self.place.across),
            ("shim", self.shim),
            ("ground", self.ground),
        ] {
            if !length.value.is_finite() {
                return Err(FrameError::NotFinite { support, what });
            }
        }
        if self.shim.value < 0.0 {
            return Err(FrameError::Shim { support, shim: self.shim });
        }
        match self.stop {
            Some(stop) if !(stop.value > 0.0 && stop.value.is_finite()) => {
                Err(FrameError::Stop { support, stop })
            }
            _ => Ok(()),
        }
    }
}

impl Extent {
    fn of(supports: &[Support]) -> Self {
        let span = |of: fn(&Support) -> Length| {
            let each = || supports.iter().map(|support| of(support).value);
            let (least, most) =
                (each().fold(f64::INFINITY, f64::min), each().fold(f64::NEG_INFINITY, f64::max));
            (si(f64::midpoint(least, most)), si(most - least))
        };
        let (x, length) = span(|support| support.place.along);
        let (y, width) = span(|support| support.place.across);
        Self { middle: Place { along: x, across: y }, size: Place { along: length, across: width } }
    }

    /// The greater side.
    fn span(&self) -> f64 {
        self.size.along.value.max(self.size.across.value)
    }

    /// Whether the places are apart and not all in one line.
    fn check(&self, supports: &[Support]) -> Result<(), FrameError> {
        let near = self.span() * SAME;
        for (first, one) in supports.iter().enumerate() {
            let others = supports.iter().enumerate().skip(first + 1);
            for (second, other) in others {
                let (x, y) =
                    (one.place.along - other.place.along, one.place.across - other.place.across);
                if libm::hypot(x.value, y.value) <= near {
                    let (first, second, place) = (Nth::of(first), Nth::of(second), one.place);
                    return Err(FrameError::SamePlace { first, second, place });
                }
            }
        }
        let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
        #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_SUPPORTS")]
        let count = supports.len() as f64;
        let from_middle = || supports.iter().map(|support| self.row(support.place, false));
        let (mut u_mean, mut v_mean) = (0.0, 0.0);
        for [_, u, v, _] in from_middle() {
            (u_mean, v_mean) = (u_mean + u / count, v_mean + v / count);
        }
        for [_, u, v, _] in from_middle() {
            let (u, v) = (u - u_mean, v - v_mean);
            (xx, xy, yy) = (xx + u * u, xy + u * v, yy + v * v);
        }
        // The product of the squared spreads along and beside the line, over the square of their sum.
        if xx * yy - xy * xy <= IN_LINE * IN_LINE * (xx + yy) * (xx + yy) {
            return Err(FrameError::InLine { count: supports.len() });
        }
        Ok(())
    }

    fn row(&self, place: Place, warps: bool) -> Row {
        let (u, v) =
            ((place.along - self.middle.along).value, (place.across - self.middle.across).value);
        [1.0, u, v, if warps { u * v } else { 0.0 }]
    }

    /// What a weight at a place does to each way of moving. Warping, which is about the origin of the
    /// places, does not move the weight; written about the middle, it lifts and tilts the frame too.
    fn pull(&self, centre: Place, warps: bool) -> Row {
        let [one, u, v, uv] = self.row(centre, warps);
        let xy = if warps { (centre.along * centre.across).value } else { 0.0 };
        [one, u, v, uv - xy]
    }
}

/// What the nests in one quarter of the plan add up to.
#[derive(Clone, Copy, Default)]
struct Quarter {
    count: f64,
    load: Force,
    height: Length,
}

fn diagonal(supports: &[Support], standing: &[SettledSupport], middle: Place) -> Option<Diagonal> {
    let [mut ahead_left, mut ahead_right, mut behind_left, mut behind_right] =
        [Quarter::default(); 4];
    for (support, at) in supports.iter().zip(standing) {
        let (u, v) = (support.place.along - middle.along, support.place.across - middle.across);
        let quarter = match (u.value.partial_cmp(&0.0)?, v.value.partial_cmp(&0.0)?) {
            (Ordering::Greater, Ordering::Greater) => &mut ahead_left,
            (Ordering::Greater, Ordering::Less) => &mut ahead_right,
            (Ordering::Less, Ordering::Greater) => &mut behind_left,
            (Ordering::Less, Ordering::Less) => &mut behind_right,
            _ => continue,
        };
        quarter.count += 1.0;
        quarter.load += at.load;
        quarter.height += at.height;
    }
    let quarters = [ahead_left, ahead_right, behind_left, behind_right];
    if quarters.iter().any(|quarter| quarter.count <= 0.0) {
        return None;
    }
    let load = |one: Quarter, other: Quarter| one.load + other.load;
    let height =
        |one: Quarter, other: Quarter| (one.height + other.height) / (one.count + other.count);
    Some(Diagonal {
        load: load(ahead_left, behind_right) - load(ahead_right, behind_left),
        height: height(ahead_left, behind_right) - height(ahead_right, behind_left),
    })
}

#[cfg(test)]
mod tests;

//! Where a frame comes to rest: the least of a convex energy made of quadratic pieces.
//!
//! ```text
//! h_i = q·g_i − o_i                  g_i = (1, u_i, v_i, u_i·v_i)      q = (z, a, b, w)
//! V(q) = Σ U_i(h_i) + W · q·g_c + ½ · K_w · w²           dU_i/dh_i = −F_i
//! ```
//! `u`, `v` positions from the middle of the supports, so that no digits are lost to a far origin.
//! Each step is Newton's, cut where the energy along it is least: exact, for the slope along a line
//! is straight between the heights at which a support's rate changes.

use super::path::{Path, Point};

/// Heave, slope along, slope across, warp; or what does work on each of them.
pub(super) type Row = [f64; 4];

/// A support as the energy sees it.
#[derive(Clone, Debug)]
pub(super) struct Post {
    pub(super) row: Row,
    /// Ground and shim together.
    pub(super) offset: f64,
    pub(super) path: Path,
}

/// All that the energy depends on.
#[derive(Clone, Copy)]
pub(super) struct Energy<'a> {
    pub(super) posts: &'a [Post],
    /// The weight's pull on each way of moving.
    pub(super) pull: Row,
    /// Stiffness against warping; none of a rigid frame.
    pub(super) warp: Option<f64>,
}

/// The least of the energy.
#[derive(Clone, Debug)]
pub(super) struct Rest {
    pub(super) pose: Row,
    pub(super) loads: Vec<f64>,
    pub(super) steps: usize,
    /// Whether the supports that carry leave a way of moving free.
    pub(super) rocks: bool,
    pub(super) stiffness: Factored,
}

/// Steps were spent, or the energy falls for ever.
#[derive(Clone, Copy, Debug)]
pub(super) struct NotConverged {
    pub(super) steps: usize,
}

/// Most frames need fewer than ten; two hundred nests that bottom one after the other need more.
const MOST_STEPS: usize = 500;

/// Part of the full stiffness that is lent to a frame which too few supports hold, so that a step
/// exists. It alters the way, and of what is held not the end.
const REGULARISATION: f64 = 1e-8;

/// A movement below which, in metres, a step is rounding.
const STILL: f64 = 1e-15;

/// What may be left of the forces or moments of a frame at rest, as a part of their magnitudes.
const BALANCED: f64 = 1e-9;

impl Post {
    fn height(&self, pose: &Row) -> f64 {
        dot(&self.row, pose) - self.offset
    }

    pub(super) fn at(&self, pose: &Row) -> (f64, Point) {
        let height = self.height(pose);
        (height, self.path.at(height))
    }
}

impl Energy<'_> {
    /// A level frame, as high as the supports would bear it evenly.
    fn level(&self) -> Row {
        #[expect(clippy::cast_precision_loss, reason = "no frame has 2⁵² supports")]
        let count = self.posts.len() as f64;
        let even = self.pull[0] / count;
        let sum: f64 = self.posts.iter().map(|post| post.path.under(even) + post.offset).sum();
        [sum / count, 0.0, 0.0, 0.0]
    }

    pub(super) fn settle(&self, start: Option<Row>) -> Result<Rest, NotConverged> {
        let mut pose = start.unwrap_or_else(|| self.level());
        let mut points: Vec<(f64, Point)> = Vec::with_capacity(self.posts.len());
        let mut straight = false;
        for steps in 1..=MOST_STEPS {
            points.clear();
            points.extend(self.posts.iter().map(|post| post.at(&pose)));
            let (stiffness, rocks) = self.stiffness(&points).ok_or(NotConverged { steps })?;
            let down = self.fall(&pose, &points);
            let step = stiffness.solve(&down);
            let moves = || self.posts.iter().map(|post| dot(&post.row, &step));
            let within = |((height, point), by): (&(f64, Point), f64)| {
                (point.below..=point.above).contains(&(height + by))
            };
            let was_straight = straight;
            straight = points.iter().zip(moves()).all(within);
            let still = moves().all(|by| by.abs() <= STILL);
            if (straight && was_straight) || still {
                // The last step is less than a height can hold, but the loads can.
                let loads = points.iter().zip(moves()).map(|((_, at), by)| at.load - at.rate * by);
                let loads: Vec<f64> = loads.map(|load| load.max(0.0)).collect();
                // On lent stiffness a frame that nothing holds comes to a stand, but to no rest.
                if !rocks || self.balances(&loads, &pose) {
                    return Ok(Rest { pose, loads, steps, rocks, stiffness });
                }
            }
            let far = if straight { 1.0 } else { self.far(&pose, &step, steps)? };
            pose = along(&pose, &step, far);
        }
        Err(NotConverged { steps: MOST_STEPS })
    }

    /// What pushes the pose on: the energy's slope with the sign changed.
    fn fall(&self, pose: &Row, points: &[(f64, Point)]) -> Row {
        let mut fall = self.pull.map(|pull| -pull);
        for (post, (_, at)) in self.posts.iter().zip(points) {
            fall = along(&fall, &post.row, at.load);
        }
        fall[3] = self.warp.map_or(0.0, |warp| fall[3] - warp * pose[3]);
        fall
    }

    /// Whether loads hold the weight in each way of moving, but for rounding.
    fn balances(&self, loads: &[f64], pose: &Row) -> bool {
        let warp = [0.0, 0.0, 0.0, self.warp.map_or(0.0, |warp| -warp * pose[3])];
        let mut left = along(&warp, &self.pull, -1.0);
        let mut size = left.map(f64::abs);
        for (post, load) in self.posts.iter().zip(loads) {
            left = along(&left, &post.row, *load);
            size = along(&size, &post.row.map(f64::abs), *load);
        }
        let ways = if self.warp.is_some() { 4 } else { 3 };
        left.iter().zip(size).take(ways).all(|(left, size)| left.abs() <= BALANCED * size)
    }

    /// The stiffness at a pose, and whether some had to be regularised.
    fn stiffness(&self, points: &[(f64, Point)]) -> Option<(Factored, bool)> {
        let rates = points.iter().map(|(_, at)| at.rate);
        let own = self.sum(rates);
        if let Some(factored) = Factored::of(&own) {
            return Some((factored, false));
        }
        let rates = points.iter().zip(self.posts);
        let regularised =
            self.sum(rates.map(|((_, at), post)| at.rate + REGULARISATION * post.path.full_rate()));
        Some((Factored::of(&regularised)?, true))
    }

    /// Σ k·g·gᵀ, lower triangle, with the warp's own.
    fn sum(&self, rates: impl Iterator<Item = f64>) -> [Row; 4] {
        let mut sum = [[0.0; 4]; 4];
        for (post, rate) in self.posts.iter().zip(rates) {
            for (row, of) in sum.iter_mut().zip(post.row) {
                *row = along(row, &post.row, rate * of);
            }
        }
        match self.warp {
            Some(warp) => sum[3][3] += warp,
            None => sum[3] = [0.0, 0.0, 0.0, 1.0],
        }
        sum
    }

    /// The energy's slope along a step, so far along it.
    fn slope(&self, pose: &Row, step: &Row, far: f64) -> f64 {
        let there = along(pose, step, far);
        let mut slope = dot(&self.pull, step) + self.warp.unwrap_or(0.0) * there[3] * step[3];
        for post in self.posts {
            slope -= post.at(&there).1.load * dot(&post.row, step);
        }
        slope
    }

    /// How far along a step the energy is least.
    fn far(&self, pose: &Row, step: &Row, steps: usize) -> Result<f64, NotConverged> {
        let mut bends = vec![0.0];
        for post in self.posts {
            let (height, by) = (post.height(pose), dot(&post.row, step));
            let reached = post.path.tops().map(|top| (top - height) / by);
            bends.extend(reached.filter(|far| *far > 0.0 && far.is_finite()));
        }
        bends.sort_by(f64::total_cmp);
        let falls = |far: &f64| self.slope(pose, step, *far) < 0.0;
        let rising = bends.partition_point(falls);
        let from = rising.checked_sub(1).and_then(|last| bends.get(last)).copied().unwrap_or(0.0);
        let to = bends.get(rising).copied().unwrap_or(2.0 * from + 1.0);
        let (before, after) = (self.slope(pose, step, from), self.slope(pose, step, to));
        let far = from + (to - from) * (before / (before - after));
        if far.is_finite() && far >= 0.0 { Ok(far) } else { Err(NotConverged { steps }) }
    }
}

pub(super) fn dot(one: &Row, other: &Row) -> f64 {
    let [a, b, c, d] = one;
    let [e, f, g, h] = other;
    a * e + b * f + c * g + d * h
}

/// `from + factor · by`.
pub(super) fn along(from: &Row, by: &Row, factor: f64) -> Row {
    let [a, b, c, d] = from;
    let [e, f, g, h] = by;
    [a + factor * e, b + factor * f, c + factor * g, d + factor * h]
}

/// A symmetric matrix as L·D·Lᵀ, written out for four rows.
#[derive(Clone, Debug)]
pub(super) struct Factored {
    diagonal: Row,
    /// Below the diagonal: of row 1; of row 2; of row 3.
    lower: ([f64; 1], [f64; 2], [f64; 3]),
}

/// A pivot that is less than this part of its diagonal is rounding.
const LEAST_PIVOT: f64 = 1e-12;

impl Factored {
    /// None where the matrix is not positive definite.
    pub(super) fn of(m: &[Row; 4]) -> Option<Self> {
        let pivot = |left: f64, of: f64| (left > LEAST_PIVOT * of).then_some(left);
        let d0 = pivot(m[0][0], 0.0)?;
        let (l10, l20, l30) = (m[1][0] / d0, m[2][0] / d0, m[3][0] / d0);
        let d1 = pivot(m[1][1] - l10 * l10 * d0, m[1][1])?;
        let (l21, l31) = ((m[2][1] - l20 * l10 * d0) / d1, (m[3][1] - l30 * l10 * d0) / d1);
        let d2 = pivot(m[2][2] - l20 * l20 * d0 - l21 * l21 * d1, m[2][2])?;
        let l32 = (m[3][2] - l30 * l20 * d0 - l31 * l21 * d1) / d2;
        let d3 = pivot(m[3][3] - l30 * l30 * d0 - l31 * l31 * d1 - l32 * l32 * d2, m[3][3])?;
        Some(Self { diagonal: [d0, d1, d2, d3], lower: ([l10], [l20, l21], [l30, l31, l32]) })
    }

    pub(super) fn solve(&self, right: &Row) -> Row {
        let ([l10], [l20, l21], [l30, l31, l32]) = self.lower;
        let [d0, d1, d2, d3] = self.diagonal;
        let y0 = right[0];
        let y1 = right[1] - l10 * y0;
        let y2 = right[2] - l20 * y0 - l21 * y1;
        let y3 = right[3] - l30 * y0 - l31 * y1 - l32 * y2;
        let x3 = y3 / d3;
        let x2 = y2 / d2 - l32 * x3;
        let x1 = y1 / d1 - l21 * x2 - l31 * x3;
        let x0 = y0 / d0 - l10 * x1 - l20 * x2 - l30 * x3;
        [x0, x1, x2, x3]
    }
}

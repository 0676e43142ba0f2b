//! Loads on three or four nests: with three there is one answer, with four one number is free.
//!
//! ```text
//! F_i = F0_i + l·n_i      Σ n_i = Σ n_i·u_i = Σ n_i·v_i = 0
//! Σ n_i·o_i = w·Σ n_i·u_i·v_i − Σ n_i·h_i(F_i)      K_w·w = Σ F_i·u_i·v_i − W·g_c
//! ```
//! The right side of the second line rises with `l`: the twist of the offsets `o`, ground and shim
//! together, gives `l`, and so all loads. `h_i` is the height of a nest under a load. Where `l` leaves a
//! nest empty, more twist changes nothing.

use super::ROUNDING;
use super::choice::Choice;
use super::task::{Found, Task, Value, farthest};
use crate::frame::equilibrium::Row;

/// How the loads hang on the twist.
pub(super) struct Twist {
    /// n; zeros of three nests.
    pub(super) null: Vec<f64>,
    /// F0, of the frame as it is.
    loads: Vec<f64>,
    mean: f64,
    /// Twist and l where a nest's rate changes, and at either end, rising. A single one where l does
    /// not change.
    bends: Vec<(f64, f64)>,
    /// What l may be so that no nest is pressed to nothing.
    stands: (f64, f64),
    /// w as its value at l = 0 and what it gains with l; none where it is not known from the loads.
    pub(super) warp: Option<(f64, f64)>,
    /// Σ n·u·v.
    pub(super) saddle: f64,
}

/// A part of one: below it a number n or a load is rounding.
pub(super) const TINY: f64 = 1e-9;

impl Twist {
    /// None of more than four nests.
    pub(super) fn of(task: &mut Task<'_>, kept: &Found) -> Option<Self> {
        let null = null(task)?;
        let shims = task.thicknesses(&kept.picks);
        let loads = task.rest(&shims, None).ok()?.loads;
        let (mut ends, mut stands) =
            ((f64::NEG_INFINITY, f64::INFINITY), (f64::NEG_INFINITY, f64::INFINITY));
        let mut factors = Vec::new();
        for ((post, n), load) in task.posts.iter().zip(&null).zip(&loads) {
            if n.abs() <= 0.0 {
                continue;
            }
            let empty = -load / n;
            let crushed = (post.path.at(0.0).load - load) / n;
            if *n > 0.0 {
                ends.0 = ends.0.max(empty);
                stands.1 = stands.1.min(crushed);
            } else {
                ends.1 = ends.1.min(empty);
                stands.0 = stands.0.max(crushed);
            }
            factors.extend(post.path.tops().map(|top| (post.path.at(top).load - load) / n));
        }
        let saddle: f64 = task.posts.iter().zip(&null).map(|(post, n)| n * post.row[3]).sum();
        let [.., pull] = task.pull();
        let warp = match task.warp() {
            None => Some((0.0, 0.0)),
            Some(warp) if warp > 0.0 => {
                let twists: f64 =
                    task.posts.iter().zip(&loads).map(|(post, load)| load * post.row[3]).sum();
                Some(((twists - pull) / warp, saddle / warp))
            }
            Some(_) => None,
        };
        let mut twist =
            Self { null, loads, mean: task.mean, bends: vec![(0.0, 0.0)], stands, warp, saddle };
        // A frame that warps freely has its loads set by that.
        let free = twist.warp.is_none()
            && saddle.abs()
                > TINY * task.posts.iter().map(|post| post.row[3].abs()).fold(0.0, f64::max);
        if ends.0.is_finite() && ends.1.is_finite() && !free {
            factors.retain(|factor| ends.0 < *factor && *factor < ends.1);
            factors.extend([ends.0, ends.1]);
            factors.sort_by(f64::total_cmp);
            factors.dedup();
            twist.bends = factors.iter().map(|factor| (twist.at(task, *factor), *factor)).collect();
        }
        Some(twist)
    }

    /// The twist of the offsets that goes with l.
    fn at(&self, task: &Task<'_>, factor: f64) -> f64 {
        let (warp, per) = self.warp.unwrap_or_default();
        let mut twist = (warp + per * factor) * self.saddle;
        for ((post, n), load) in task.posts.iter().zip(&self.null).zip(self.loads(factor)) {
            twist -= n * post.path.under(load);
        }
        twist
    }

    pub(super) fn loads(&self, factor: f64) -> impl Iterator<Item = f64> {
        self.loads.iter().zip(&self.null).map(move |(load, n)| (load + factor * n).max(0.0))
    }

    /// l at a twist of the offsets.
    pub(super) fn factor(&self, twist: f64) -> f64 {
        let next = self.bends.partition_point(|(at, _)| *at < twist);
        let before = next.checked_sub(1).and_then(|last| self.bends.get(last));
        match (before, self.bends.get(next)) {
            (Some((from, of)), Some((to, next))) => {
                of + (next - of) * ((twist - from) / (to - from))
            }
            (Some((_, end)), None) | (None, Some((_, end))) => *end,
            (None, None) => 0.0,
        }
    }

    /// The greatest deviation of a load.
    fn deviation(&self, factor: f64) -> f64 {
        self.loads(factor).map(|load| (load / self.mean - 1.0).abs()).fold(0.0, f64::max)
    }

    /// Between which l no load deviates by more than so much, and every nest stands.
    fn within(&self, deviation: f64) -> (f64, f64) {
        let mut within = self.stands;
        for (load, n) in self.loads.iter().zip(&self.null).filter(|(_, n)| n.abs() > 0.0) {
            let at = |off: f64| (self.mean * (1.0 + off) - load) / n;
            let (one, other) = (at(deviation), at(-deviation));
            within = (within.0.max(one.min(other)), within.1.min(one.max(other)));
        }
        within
    }

    /// The twists of the offsets that go with l between these, without end where l does not go on.
    fn span(&self, task: &Task<'_>, (least, most): (f64, f64)) -> (f64, f64) {
        let (Some((_, first)), Some((_, last))) = (self.bends.first(), self.bends.last()) else {
            return (f64::NEG_INFINITY, f64::INFINITY);
        };
        let from =
            if least <= *first { f64::NEG_INFINITY } else { self.at(task, least.min(*last)) };
        let to = if most >= *last { f64::INFINITY } else { self.at(task, most.max(*first)) };
        (from, to)
    }

    /// The l at which the loads are most even, whatever the shims.
    fn best(&self, task: &Task<'_>) -> f64 {
        let (least, most) = self.within(task.floor() + ROUNDING);
        let (Some((_, first)), Some((_, last))) = (self.bends.first(), self.bends.last()) else {
            return 0.0;
        };
        let (under, over) = (self.stands.0.max(*first), self.stands.1.min(*last));
        f64::midpoint(least, most).max(under).min(over)
    }

    /// The twist of the ground alone.
    fn ground(&self, task: &Task<'_>) -> f64 {
        task.nests.iter().zip(&self.null).map(|(nest, n)| nest.ground * n).sum()
    }

    /// The least deviation of the loads with shims of any thickness between limits under each nest.
    pub(super) fn least(&self, task: &Task<'_>, limits: &[(f64, f64)]) -> f64 {
        let ground = self.ground(task);
        let (mut from, mut to) = (ground, ground);
        for (n, (least, most)) in self.null.iter().zip(limits) {
            from += (n * least).min(n * most);
            to += (n * least).max(n * most);
        }
        let best = self.best(task);
        self.deviation(best.max(self.factor(from)).min(self.factor(to)))
    }

    /// The plan with the most even loads.
    ///
    /// Loads get less even to either side of the best twist, so that the best plan is the nearest to it
    /// on one side or the other. Twists are sums of one of two nests and one of the other two.
    pub(super) fn evenest(&self, task: &mut Task<'_>, kept: &Found) -> Found {
        let (Some(front), Some(rear)) = (self.half(task, 0), self.half(task, 2)) else {
            return kept.clone();
        };
        let ground = self.ground(task);
        let best = self.at(task, self.best(task)) - ground;
        let (below, above) = nearest(&front, &rear, best);
        let stands = |factor: &f64| self.stands.0 < *factor && *factor < self.stands.1;
        let either = [below, above].into_iter().filter(|twist| twist.is_finite());
        let either = either.map(|twist| self.factor(twist + ground)).filter(stands);
        let least = either.map(|factor| self.deviation(factor));
        let bound = least.fold(kept.value.loads, f64::min);
        let (from, to) = self.span(task, self.within(bound + ROUNDING));
        let most = front.groups.len() + rear.groups.len();
        for handled in 0..most {
            let mut equal = Vec::new();
            for (number, group) in front.groups.iter().enumerate().take(handled + 1) {
                let Some(others) = rear.groups.get(handled - number) else { continue };
                for one in group {
                    let first =
                        others.partition_point(|other| one.twist + other.twist + ground < from);
                    let fit = others.iter().skip(first);
                    for other in fit.take_while(|other| one.twist + other.twist + ground <= to) {
                        let picks: Vec<usize> = one.picks().chain(other.picks()).collect();
                        if let Some(value) = task.value(&picks) {
                            equal.push((picks, value));
                        }
                    }
                }
            }
            if let Some(found) = task.of_equals(equal, bound) {
                return found;
            }
        }
        Found { bound, ..kept.clone() }
    }

    /// All that may come under two nests, or one, from a nest on.
    fn half(&self, task: &Task<'_>, from: usize) -> Option<Half> {
        let mut each = task.nests.iter().zip(&self.null).skip(from);
        let (one, n) = each.next()?;
        let other = each.next().map(|(other, n)| (other.choices.as_slice(), *n));
        let mut half = Half::default();
        let twist = |choice: &Choice<'_>, n: f64| n * choice.thickness;
        for (pick, choice) in one.choices.iter().enumerate() {
            match other {
                None => half.add(
                    choice.handled,
                    Pair { twist: twist(choice, *n), first: pick, second: None },
                ),
                Some((others, m)) => {
                    for (second, next) in others.iter().enumerate() {
                        let twist = twist(choice, *n) + twist(next, m);
                        let pair = Pair { twist, first: pick, second: Some(second) };
                        half.add(choice.handled + next.handled, pair);
                    }
                }
            }
        }
        half.twists.sort_by(f64::total_cmp);
        for group in &mut half.groups {
            group.sort_by(|one, other| one.twist.total_cmp(&other.twist));
        }
        Some(half)
    }

    /// Deviations of a plan, without settling the frame where all nests carry.
    pub(super) fn value(&self, task: &mut Task<'_>, picks: &[usize]) -> Option<Value> {
        let shims = task.thicknesses(picks);
        let twist: f64 = self.null.iter().zip(&shims).map(|(n, shim)| n * shim).sum();
        let factor = self.factor(twist + self.ground(task));
        let mut heights = Vec::with_capacity(shims.len());
        let under = task.posts.iter().zip(&task.nests).zip(&shims).zip(self.loads(factor));
        for (((post, nest), shim), load) in under {
            let height = post.path.under(load);
            if load <= TINY * self.mean || height <= 0.0 {
                return task.value_from(&shims, None);
            }
            heights.push(height + nest.ground + shim);
        }
        Some(Value { loads: self.deviation(factor), corners: farthest(&heights) })
    }
}

/// What may come under some of the nests.
#[derive(Default)]
struct Half {
    /// By how many shims there are to handle, each rising by twist.
    groups: Vec<Vec<Pair>>,
    /// All, rising.
    twists: Vec<f64>,
}

struct Pair {
    twist: f64,
    first: usize,
    second: Option<usize>,
}

impl Pair {
    fn picks(&self) -> impl Iterator<Item = usize> {
        core::iter::once(self.first).chain(self.second)
    }
}

impl Half {
    fn add(&mut self, handled: usize, pair: Pair) {
        while self.groups.len() <= handled {
            self.groups.push(Vec::new());
        }
        self.twists.push(pair.twist);
        if let Some(group) = self.groups.get_mut(handled) {
            group.push(pair);
        }
    }
}

/// The greatest sum up to a target, and the least above it.
fn nearest(front: &Half, rear: &Half, target: f64) -> (f64, f64) {
    let (mut below, mut above) = (f64::NEG_INFINITY, f64::INFINITY);
    let mut over = rear.twists.len();
    for one in &front.twists {
        while over
            .checked_sub(1)
            .and_then(|last| rear.twists.get(last))
            .is_some_and(|last| one + last > target)
        {
            over -= 1;
        }
        if let Some(other) = over.checked_sub(1).and_then(|last| rear.twists.get(last)) {
            below = below.max(one + other);
        }
        if let Some(other) = rear.twists.get(over) {
            above = above.min(one + other);
        }
    }
    (below, above)
}

/// Of three nests zeros; of four the areas of the triangles of the others, with alternating signs, the
/// greatest 1.
fn null(task: &Task<'_>) -> Option<Vec<f64>> {
    let rows: Vec<Row> = task.posts.iter().map(|post| post.row).collect();
    let [a, b, c, d] = match rows.as_slice() {
        [_, _, _] => return Some(vec![0.0; 3]),
        [a, b, c, d] => [a, b, c, d],
        _ => return None,
    };
    let area = |one: &Row, other: &Row, last: &Row| {
        (other[1] - one[1]) * (last[2] - one[2]) - (other[2] - one[2]) * (last[1] - one[1])
    };
    let null = [area(b, c, d), -area(a, c, d), area(a, b, d), -area(a, b, c)];
    let most = null.iter().map(|n| n.abs()).fold(0.0, f64::max);
    // Three that are in line but for rounding leave the fourth out.
    let part = |n: f64| if n.abs() <= TINY * most { 0.0 } else { n / most };
    Some(null.map(part).to_vec())
}

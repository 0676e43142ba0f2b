//! Which of the chosen nests goes where, so that the frame stands level.
//!
//! Under a frame that is held level, nests push with loads `F` that differ a little. Where the weight
//! acts at the middle of the seats, three sums of them count, with `x`, `y` along and across from that
//! middle:
//!
//! ```text
//! across  Σ F·y / Σ F      along  Σ F·x / Σ F      twist  Σ F·(x·y − mean of x·y), over the greatest |x·y − mean|
//! ```
//!
//! The first two are how far from the middle the nests push together. The frame leans until they push
//! under its weight, so they are what stands out of level, and they come first: across before along,
//! because the seats are closer together across, and a frame leans and rolls over sooner that way. The
//! twist is what a lean cannot even out, and stays as a difference of the wheels' loads; of four
//! corners it is `F1 − F2 − F3 + F4`. It comes last on purpose. Of given nests the squares of what
//! leans and of what does not add up to the same wherever they go, so one is had for the other, and the
//! twist is what shims are for.

use crate::frame::Place;
use crate::quantity::{Force, Length, si};

/// Up to so many nests every order is tried; of more, exchanges of two until none is better.
pub const MOST_PLACED: usize = 8;

/// How nests push together at the common height, from the middle of their seats.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Balance {
    /// How far across they push.
    pub across: Length,
    /// How far along they push.
    pub along: Length,
    /// How much one diagonal pushes more than the other, corners counted full.
    pub twist: Force,
}

/// Parts of the greatest that a sum can have, below which two are one.
const SAME: f64 = 1e-12;
/// How many exchanges are looked at before it is left at that.
const MOST_EXCHANGES: usize = 20_000_000;

/// What is least, the first first: across, along, twist, nests' coils that move.
type Rank = [f64; 4];

/// The levers of the seats.
pub(super) struct Arms {
    /// Across, along, twist of each seat, each with the sum zero.
    seats: Vec<[f64; 3]>,
    /// How far the seats are from where places are counted, and 1 for the twist: the numbers that are
    /// rounded.
    far: [f64; 3],
}

impl Arms {
    pub(super) fn of(seats: &[Place]) -> Self {
        let size = |of: &[f64]| of.iter().copied().map(f64::abs).fold(0.0, f64::max);
        let given = |of: fn(&Place) -> Length| -> Vec<f64> {
            seats.iter().map(|place| of(place).value).collect()
        };
        let (y, x) = (given(|place| place.across), given(|place| place.along));
        let (far_across, far_along) = (size(&y), size(&x));
        let (across, along) = (centred(y), centred(x));
        let twist = centred(across.iter().zip(&along).map(|(y, x)| x * y).collect());
        let greatest = size(&twist);
        // Of seats in one line the products are rounding.
        let rounding = SAME * (far_across * size(&along) + far_along * size(&across));
        let twists = greatest > rounding;
        let twist = twist.into_iter().map(|arm| if twists { arm / greatest } else { 0.0 });
        let seats = across.into_iter().zip(along).zip(twist);
        Self {
            seats: seats.map(|((across, along), twist)| [across, along, twist]).collect(),
            far: [far_across, far_along, 1.0],
        }
    }

    fn sums(&self, loads: impl Iterator<Item = f64>) -> [f64; 3] {
        let mut sums = [0.0; 3];
        for (arms, load) in self.seats.iter().zip(loads) {
            sums = add(sums, *arms, load);
        }
        sums
    }

    pub(super) fn balance(&self, loads: &[f64]) -> Balance {
        let total: f64 = loads.iter().sum();
        let [across, along, twist] = self.sums(loads.iter().copied());
        let metres = |moment: f64| Length {
            value: if total > 0.0 { moment / total } else { 0.0 },
            ..Length::default()
        };
        Balance { across: metres(across), along: metres(along), twist: si(twist) }
    }

    /// The nest of each seat, and whether no other order is better. `stands` tells how many coils of a
    /// nest stand in a seat.
    pub(super) fn place(
        &self,
        loads: &[f64],
        stands: impl Fn(usize, usize) -> usize,
    ) -> (Vec<usize>, bool) {
        let total: f64 = loads.iter().sum();
        let [across, along, twist] = self.far.map(|far| SAME * total * far);
        let places = Places { arms: self, loads, stands, same: [across, along, twist, 0.5] };
        if loads.len() <= MOST_PLACED { (places.best(), true) } else { (places.exchanged(), false) }
    }
}

fn centred(mut of: Vec<f64>) -> Vec<f64> {
    #[expect(clippy::cast_precision_loss, reason = "there are at most MOST_NESTS")]
    let mean = of.iter().sum::<f64>() / of.len() as f64;
    for each in &mut of {
        *each -= mean;
    }
    of
}

fn add(sums: [f64; 3], arms: [f64; 3], load: f64) -> [f64; 3] {
    let [a, b, c] = sums;
    let [x, y, z] = arms;
    [a + x * load, b + y * load, c + z * load]
}

/// A search for the best places.
struct Places<'a, S> {
    arms: &'a Arms,
    loads: &'a [f64],
    stands: S,
    /// Ranks that differ by no more are one.
    same: Rank,
}

impl<S: Fn(usize, usize) -> usize> Places<'_, S> {
    /// What is one in the first part of the rank is told apart by the next only.
    fn best(&self) -> Vec<usize> {
        let mut ranks = Vec::new();
        self.each(&mut Vec::new(), [0.0; 3], 0, &mut |rank, _| {
            ranks.push(rank);
            false
        });
        let mut most = [f64::INFINITY; 4];
        for part in 0..most.len() {
            let left = ranks.iter().filter(|rank| within(rank, &most));
            let least =
                left.filter_map(|rank| rank.get(part).copied()).fold(f64::INFINITY, f64::min);
            if let (Some(most), Some(same)) = (most.get_mut(part), self.same.get(part)) {
                *most = least + same;
            }
        }
        let mut best = Vec::new();
        self.each(&mut Vec::new(), [0.0; 3], 0, &mut |rank, order| {
            let found = within(&rank, &most);
            if found {
                best = order.to_vec();
            }
            found
        });
        best
    }

    /// Shows every order until it is told that it suffices, and tells so in turn.
    fn each(
        &self,
        order: &mut Vec<usize>,
        sums: [f64; 3],
        stay: usize,
        show: &mut impl FnMut(Rank, &[usize]) -> bool,
    ) -> bool {
        let seat = order.len();
        let Some(arms) = self.arms.seats.get(seat) else {
            return show(rank(sums, stay), order);
        };
        for (nest, load) in self.loads.iter().enumerate() {
            if order.contains(&nest) {
                continue;
            }
            order.push(nest);
            let (sums, stay) = (add(sums, *arms, *load), stay + (self.stands)(nest, seat));
            if self.each(order, sums, stay, show) {
                return true;
            }
            order.pop();
        }
        false
    }

    /// The best exchange of two nests after the other. The nests, heaviest first, begin in the first
    /// seat, the last, the second, the last but one.
    fn exchanged(&self) -> Vec<usize> {
        let count = self.loads.len();
        let begins = |seat: usize| (2 * seat).min(2 * (count - seat) - 1);
        let mut order: Vec<usize> = (0..count).map(begins).collect();
        let mut looks = 0;
        loop {
            let load = |nest: &usize| self.loads.get(*nest).copied().unwrap_or_default();
            let sums = self.arms.sums(order.iter().map(load));
            let stay =
                order.iter().enumerate().map(|(seat, nest)| (self.stands)(*nest, seat)).sum();
            let mut best = rank(sums, stay);
            let mut exchange = None;
            let all: Vec<(&[f64; 3], usize, f64)> = (self.arms.seats.iter().zip(&order))
                .map(|(arms, nest)| (arms, *nest, load(nest)))
                .collect();
            for (one, (arms, nest, load)) in all.iter().enumerate() {
                for (other, (arms_of, nest_of, load_of)) in all.iter().enumerate().skip(one + 1) {
                    let moved = load_of - load;
                    let sums = add(add(sums, **arms, moved), **arms_of, -moved);
                    let before = (self.stands)(*nest, one) + (self.stands)(*nest_of, other);
                    let after = (self.stands)(*nest, other) + (self.stands)(*nest_of, one);
                    let rank = rank(sums, stay + after - before);
                    if self.better(&rank, &best) {
                        (best, exchange) = (rank, Some((one, other)));
                    }
                }
            }
            looks += all.len() * all.len() / 2;
            match exchange {
                Some((one, other)) if looks < MOST_EXCHANGES => order.swap(one, other),
                _ => return order,
            }
        }
    }

    fn better(&self, rank: &Rank, than: &Rank) -> bool {
        let parts = rank.iter().zip(than).zip(&self.same);
        let differs = parts.map(|((of, than), same)| (of - than, same));
        differs.into_iter().find(|(by, same)| by.abs() > **same).is_some_and(|(by, _)| by < 0.0)
    }
}

#[expect(clippy::cast_precision_loss, reason = "there are at most MOST_NESTS, of four coils")]
fn rank(sums: [f64; 3], stay: usize) -> Rank {
    let [across, along, twist] = sums.map(f64::abs);
    [across, along, twist, -(stay as f64)]
}

fn within(rank: &Rank, most: &Rank) -> bool {
    rank.iter().zip(most).all(|(of, most)| of <= most)
}

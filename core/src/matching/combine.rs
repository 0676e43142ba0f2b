//! Nests of three coils and more: no quick way is known that always finds the least spread.
//!
//! First a descent. All parts of one kind are taken out of the nests and put back as [`Pairs`] does it,
//! the rest of each nest being its other part; then those of the next kind, until no kind gains.
//!
//! Then, where all the nests that could be made are few enough to list, the proof. Listed by load,
//! each in turn is the least of the nests wanted; with it, from the loads that could still be better
//! than what is known, as many others are looked for that share no part. Mostly there are fewer in
//! reach than are wanted, and nothing is to be looked for. Of too many coils the same is done with
//! every second one, every fourth and so on by load, which finds well but proves nothing.

use super::Found;
use super::pairs::{Entry, Pairs, Taken};
use super::pieces::{Roles, Stock};
use super::{MOST_ROLES, spread};
use crate::progress::{Progress, part};

/// Up to so many possible nests are listed.
const MOST_LISTED: usize = 500_000;
/// Steps after which one window is left undecided, each one nest that is looked at.
const WINDOW_STEPS: usize = 2_000_000;
/// Steps after which all that are left are.
const STEPS: usize = 40_000_000;
/// Steps of a descent.
const DESCENT_STEPS: usize = 60_000_000;
/// Steps that one kind of part may take of it.
const KIND_STEPS: usize = 2_000_000;

/// The least spread, looked for below one that is known, in a share of the usual steps, one in `share`.
pub(super) fn search(
    stock: &Stock,
    plan: &[usize],
    wanted: usize,
    known: f64,
    slack: f64,
    share: usize,
    progress: &mut Progress<'_>,
) -> Found {
    let mut best = known;
    let mut nests = None;
    let descended = descend(
        stock,
        first(stock, plan),
        slack,
        DESCENT_STEPS / share,
        &mut progress.piece(0.0, 0.5),
    );
    let reached = spread(&loads(stock, &descended));
    if reached < best {
        (best, nests) = (reached, Some(descended));
    }
    let mut bound = best;
    if best > slack {
        let mut every = 1;
        let listed = loop {
            if every * wanted > fewest(stock) {
                break None;
            }
            match listed(stock, every) {
                Some(listed) => break Some(listed),
                None => every *= 2,
            }
        };
        bound = 0.0;
        if let Some(listed) = listed {
            let most_steps = STEPS / share;
            let mut windows = Windows {
                stock,
                listed: &listed,
                wanted,
                slack,
                best,
                nests,
                steps: 0,
                most_steps,
            };
            let proven = windows.search(&mut progress.piece(0.5, 1.0));
            (best, nests) = (windows.best, windows.nests);
            if every == 1 {
                bound = proven;
            }
        }
    }
    Found { nests, spread: best, bound: bound.max(apart(stock, wanted)).min(best) }
}

/// A spread that is there however the coils are chosen: the loads of one role differ by at least so
/// much, and those of the others can make up for no more than they differ themselves.
fn apart(stock: &Stock, wanted: usize) -> f64 {
    let mut sorted: Vec<Vec<f64>> = Vec::new();
    for role in 0..stock.roles() {
        let mut loads: Vec<f64> = stock.of_role(role).map(|(_, load)| load).collect();
        loads.sort_by(f64::total_cmp);
        sorted.push(loads);
    }
    let width = |loads: &Vec<f64>| loads.last().zip(loads.first()).map_or(0.0, |(b, a)| b - a);
    let all: f64 = sorted.iter().map(width).sum();
    let least = |loads: &Vec<f64>| {
        let windows = loads.windows(wanted).filter_map(|of| Some(of.last()? - of.first()?));
        windows.fold(f64::INFINITY, f64::min) - (all - width(loads))
    };
    sorted.iter().map(least).filter(|least| least.is_finite()).fold(0.0, f64::max)
}

fn load(stock: &Stock, pieces: &[usize]) -> f64 {
    pieces.iter().filter_map(|piece| stock.pieces.get(*piece)).map(|piece| piece.load).sum()
}

fn loads(stock: &Stock, nests: &[Vec<usize>]) -> Vec<f64> {
    nests.iter().map(|pieces| load(stock, pieces)).collect()
}

/// Nests as planned, the heavy parts of one kind with the light ones of the next.
fn first(stock: &Stock, plan: &[usize]) -> Vec<Vec<usize>> {
    let mut kinds: Vec<(Roles, Vec<usize>)> = Vec::new();
    let divisions = stock.divisions();
    for roles in divisions.iter().flatten() {
        if kinds.iter().all(|(kind, _)| kind != roles) {
            kinds.push((*roles, stock.of_roles(*roles).map(|entry| entry.id).collect()));
        }
    }
    let mut nests = Vec::new();
    for (division, count) in divisions.iter().zip(plan) {
        let mut made = vec![Vec::new(); *count];
        for (number, roles) in division.iter().enumerate() {
            let Some((_, ids)) = kinds.iter_mut().find(|(kind, _)| kind == roles) else { continue };
            let mut taken = ids.split_off(ids.len().saturating_sub(*count));
            if number % 2 == 1 {
                taken.reverse();
            }
            for (nest, id) in made.iter_mut().zip(taken) {
                nest.push(id);
            }
        }
        nests.append(&mut made);
    }
    nests
}

/// Puts the parts of one kind after the other where they are best.
fn descend(
    stock: &Stock,
    mut nests: Vec<Vec<usize>>,
    slack: f64,
    most_steps: usize,
    progress: &mut Progress<'_>,
) -> Vec<Vec<usize>> {
    let mut kinds: Vec<Roles> = stock.pieces.iter().map(|piece| piece.roles).collect();
    kinds.dedup();
    let mut best = spread(&loads(stock, &nests));
    let (mut steps, mut idle) = (0, 0);
    for kind in kinds.iter().cycle() {
        if idle == kinds.len() || steps >= most_steps || best <= slack {
            break;
        }
        let is_kind = |id: usize| stock.pieces.get(id).is_some_and(|piece| piece.roles == *kind);
        let (mut wholes, mut rests) = (Vec::new(), Vec::new());
        for (id, pieces) in nests.iter().enumerate() {
            let others: Vec<usize> = pieces.iter().copied().filter(|id| !is_kind(*id)).collect();
            let entry = Entry { load: load(stock, &others), id };
            if others.len() < pieces.len() { rests.push(entry) } else { wholes.push(entry) }
        }
        let pairs = Pairs::new(wholes, rests, stock.of_roles(*kind).collect(), nests.len());
        let done = part(steps, most_steps);
        let of_kind = part(steps + KIND_STEPS, most_steps);
        let solved = pairs.solve(best, slack, KIND_STEPS, &mut progress.piece(done, of_kind));
        steps += KIND_STEPS;
        idle += 1;
        for taken in solved.taken.into_iter().flatten() {
            if let Taken::Pair(nest, piece) = taken
                && let Some(old) = nests.get_mut(nest)
            {
                old.retain(|id| !is_kind(*id));
                old.push(piece);
                idle = 0;
            }
        }
        best = spread(&loads(stock, &nests));
    }
    nests
}

/// A nest that could be made.
#[derive(Clone, Copy, Debug)]
struct Possible {
    load: f64,
    pieces: [Option<u32>; MOST_ROLES],
}

impl Possible {
    fn pieces(&self) -> impl Iterator<Item = usize> {
        self.pieces.iter().flatten().filter_map(|id| usize::try_from(*id).ok())
    }

    fn shares(&self, other: &Self) -> bool {
        self.pieces.iter().flatten().any(|id| other.pieces.contains(&Some(*id)))
    }
}

/// How many coils the role has that has the fewest.
fn fewest(stock: &Stock) -> usize {
    (0..stock.roles()).map(|role| stock.of_role(role).count()).min().unwrap_or_default()
}

/// All nests that could be made of every so manieth piece, the least load first, unless they are too
/// many.
fn listed(stock: &Stock, every: usize) -> Option<Vec<Possible>> {
    let mut all = Vec::new();
    for division in stock.divisions() {
        let mut made = vec![Possible { load: 0.0, pieces: [None; MOST_ROLES] }];
        for (place, roles) in division.iter().enumerate() {
            let parts: Vec<Entry> = stock.of_roles(*roles).step_by(every).collect();
            if made.len().saturating_mul(parts.len()) + all.len() > MOST_LISTED {
                return None;
            }
            let mut more = Vec::with_capacity(made.len() * parts.len());
            for possible in &made {
                for part in &parts {
                    let mut next = *possible;
                    next.load += part.load;
                    *next.pieces.get_mut(place)? = Some(u32::try_from(part.id).ok()?);
                    more.push(next);
                }
            }
            made = more;
        }
        all.append(&mut made);
    }
    all.sort_unstable_by(|one, other| {
        one.load.total_cmp(&other.load).then_with(|| one.pieces.cmp(&other.pieces))
    });
    Some(all)
}

/// The search through windows of loads.
struct Windows<'a> {
    stock: &'a Stock,
    listed: &'a [Possible],
    wanted: usize,
    slack: f64,
    best: f64,
    nests: Option<Vec<Vec<usize>>>,
    steps: usize,
    most_steps: usize,
}

impl Windows<'_> {
    /// Lowers the best spread as far as it goes, and returns one below which none is.
    fn search(&mut self, progress: &mut Progress<'_>) -> f64 {
        // Windows left undecided, by the least width that holds enough nests, shared parts or not.
        let mut undecided = f64::INFINITY;
        for (start, least) in self.listed.iter().enumerate() {
            let Some(last) = self.listed.get(start + self.wanted - 1) else { break };
            progress.at(part(start, self.listed.len()));
            let narrow = last.load - least.load;
            let decided = self.steps < self.most_steps && self.lower(start, least.load);
            if !decided {
                undecided = undecided.min(narrow);
            }
        }
        undecided.min(self.best)
    }

    /// How many of the listed nests follow one up to below the best spread.
    fn reach(&self, least: f64) -> usize {
        self.listed.partition_point(|possible| possible.load - least < self.best - self.slack)
    }

    /// Lowers the best spread by nests of which a listed one is the least, and tells whether no
    /// lower one has it as its least.
    fn lower(&mut self, start: usize, least: f64) -> bool {
        let mut decided = true;
        let (mut none_below, mut end) = (start + self.wanted, self.reach(least));
        // All that is left at once, for mostly there is nothing; then half the way at a time.
        let mut until = end;
        while none_below <= end {
            match self.pack(start, until) {
                Packed::Nests(nests) => {
                    self.best = spread(&loads(self.stock, &nests));
                    self.nests = Some(nests);
                    end = self.reach(least);
                }
                Packed::Nothing => none_below = until + 1,
                Packed::Undecided => (none_below, decided) = (until + 1, false),
            }
            until = usize::midpoint(none_below, end);
        }
        decided
    }

    /// The wanted number of nests from a listed one up to before another, the first among them.
    fn pack(&mut self, start: usize, end: usize) -> Packed {
        let Some((first, others)) = self.listed.get(start..end).and_then(<[_]>::split_first) else {
            return Packed::Nothing;
        };
        let open: Vec<&Possible> = others.iter().filter(|other| !other.shares(first)).collect();
        let mut packer = Packer {
            stock: self.stock,
            uses: vec![0; self.stock.pieces.len()],
            steps: 0,
            taken: vec![first],
        };
        let packed = packer.pack(open, self.wanted - 1);
        self.steps += packer.steps + others.len() + 1;
        match packed {
            None => Packed::Undecided,
            Some(false) => Packed::Nothing,
            Some(true) => {
                Packed::Nests(packer.taken.iter().map(|nest| nest.pieces().collect()).collect())
            }
        }
    }
}

enum Packed {
    Nests(Vec<Vec<usize>>),
    Nothing,
    Undecided,
}

/// A search for nests that share no part.
struct Packer<'a> {
    stock: &'a Stock,
    /// How many open nests have a piece; all zero between two looks.
    uses: Vec<usize>,
    steps: usize,
    taken: Vec<&'a Possible>,
}

impl<'a> Packer<'a> {
    /// Whether so many of the open nests can be made; none when the steps run out.
    fn pack(&mut self, mut open: Vec<&'a Possible>, wanted: usize) -> Option<bool> {
        loop {
            if wanted == 0 {
                return Some(true);
            }
            self.steps += open.len();
            if self.steps > WINDOW_STEPS {
                return None;
            }
            let Some((piece, needed)) = self.rarest(&open, wanted) else { return Some(false) };
            let has = |nest: &Possible| nest.pieces().any(|id| id == piece);
            for nest in open.iter().copied().filter(|nest| has(nest)) {
                let others = open.iter().copied().filter(|other| !other.shares(nest)).collect();
                self.taken.push(nest);
                if self.pack(others, wanted - 1)? {
                    return Some(true);
                }
                self.taken.pop();
            }
            if needed {
                return Some(false);
            }
            open.retain(|nest| !has(nest));
        }
    }

    /// The piece that is in the fewest open nests, and whether it cannot be done without; first among
    /// those of a role that has just as many coils as nests are wanted. None where some role has less.
    fn rarest(&mut self, open: &[&Possible], wanted: usize) -> Option<(usize, bool)> {
        let mut seen = Vec::new();
        for id in open.iter().flat_map(|nest| nest.pieces()) {
            let uses = self.uses.get_mut(id)?;
            if *uses == 0 {
                seen.push(id);
            }
            *uses += 1;
        }
        let stock = self.stock;
        let roles = |id: usize| stock.pieces.get(id).map_or(0, |piece| piece.roles);
        let mut tight: Roles = 0;
        let mut enough = open.len() >= wanted;
        for role in 0..stock.roles() {
            let coils = seen.iter().filter(|id| roles(**id) & (1 << role) != 0).count();
            enough &= coils >= wanted;
            tight |= Roles::from(coils == wanted) << role;
        }
        let uses = &mut self.uses;
        let key = |id: &usize| {
            let needed = roles(*id) & tight != 0;
            (!needed, uses.get(*id).copied().unwrap_or_default(), *id)
        };
        let rarest = seen.iter().copied().min_by_key(key);
        for id in &seen {
            if let Some(uses) = uses.get_mut(*id) {
                *uses = 0;
            }
        }
        let rarest = rarest.filter(|_| enough)?;
        Some((rarest, roles(rarest) & tight != 0))
    }
}

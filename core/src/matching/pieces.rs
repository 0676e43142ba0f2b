//! What a nest is put together from: single coils, and coils that are tied.
//!
//! A tied set is one piece with the sum of its loads. A nest is then a choice of pieces that has each
//! role once, and no rule about ties is left.

use super::pairs::{Entry, Pairs};
use super::{Coil, MOST_ROLES, MatchingError, Role};
use crate::order::InOrder;

/// Roles as a set of bits.
pub(super) type Roles = u8;

/// Coils that go together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) roles: Roles,
    pub(super) load: f64,
    /// Which coil of each role, and its load.
    coils: [Option<(usize, f64)>; MOST_ROLES],
}

impl Piece {
    pub(super) fn single(role: usize, coil: usize, load: f64) -> Self {
        let mut piece = Self { roles: 0, load: 0.0, coils: [None; MOST_ROLES] };
        piece.add(role, coil, load);
        piece
    }

    /// The coil that was of this role before.
    fn add(&mut self, role: usize, coil: usize, load: f64) -> Option<usize> {
        self.roles |= 1 << role;
        self.load += load;
        let before = self.coils.get_mut(role)?.replace((coil, load));
        before.map(|(coil, _)| coil)
    }

    fn of_role(&self, role: usize) -> Option<(usize, f64)> {
        self.coils.get(role).copied().flatten()
    }
}

/// The marks by which coils are tied, each once, in order.
pub(super) struct Ties(Vec<usize>);

impl Ties {
    pub(super) fn of(roles: &[Role]) -> Self {
        let coils = roles.iter().flat_map(|role| &role.coils);
        let mut marks: Vec<usize> = coils.filter_map(|coil| coil.tie).collect();
        marks.put_in_order(Ord::cmp);
        marks.dedup();
        Self(marks)
    }

    /// The place of a coil's tie among them.
    pub(super) fn place(&self, coil: &Coil) -> Option<usize> {
        self.0.binary_search(&coil.tie?).ok()
    }

    /// Something for each tie, none to begin with.
    pub(super) fn each<T: Clone>(&self) -> Vec<Option<T>> {
        vec![None; self.0.len()]
    }
}

/// Every piece that may be used.
#[derive(Clone, Debug)]
pub(super) struct Stock {
    /// Sorted by roles, then load, then coils.
    pub(super) pieces: Vec<Piece>,
    roles: usize,
}

/// How many ways of splitting the nests among the divisions are tried. The first does unless ties of
/// four roles compete, and then some hundred.
const MOST_SPLITS: usize = 100_000;

impl Stock {
    pub(super) fn of(roles: &[Role]) -> Result<Self, MatchingError> {
        let mut pieces = Vec::new();
        let ties = Ties::of(roles);
        let mut tied: Vec<Option<(Piece, bool)>> = ties.each();
        for (role, of) in roles.iter().enumerate() {
            for (index, coil) in of.coils.iter().enumerate() {
                let single = Piece::single(role, index, coil.load.value);
                let Some(tie) = ties.place(coil).and_then(|place| tied.get_mut(place)) else {
                    pieces.extend(coil.usable.then_some(single));
                    continue;
                };
                let Some((piece, usable)) = tie else {
                    *tie = Some((single, coil.usable));
                    continue;
                };
                *usable &= coil.usable;
                if let Some(first) = piece.add(role, index, coil.load.value) {
                    let (name, first, second) = (of.name.clone(), first + 1, index + 1);
                    return Err(MatchingError::TiedTwice { name, first, second });
                }
            }
        }
        for (piece, usable) in tied.into_iter().flatten() {
            if piece.roles.is_power_of_two() {
                let role = roles.iter().enumerate().find_map(|(role, of)| {
                    piece.of_role(role).map(|(coil, _)| (of.name.clone(), coil + 1))
                });
                let (name, coil) = role.unwrap_or_default();
                return Err(MatchingError::TiedAlone { name, coil });
            }
            pieces.extend(usable.then_some(piece));
        }
        Ok(Self { pieces: Vec::new(), roles: roles.len() }.sorted(pieces))
    }

    fn sorted(mut self, mut pieces: Vec<Piece>) -> Self {
        let coils = |piece: &Piece| piece.coils.map(|coil| coil.map(|(coil, _)| coil));
        pieces.put_in_order(|one, other| {
            let by_load = one.load.total_cmp(&other.load);
            one.roles.cmp(&other.roles).then(by_load).then_with(|| coils(one).cmp(&coils(other)))
        });
        self.pieces = pieces;
        self
    }

    pub(super) fn with(&self, piece: Piece) -> Self {
        let mut pieces = self.pieces.clone();
        pieces.push(piece);
        Self { pieces: Vec::new(), roles: self.roles }.sorted(pieces)
    }

    pub(super) fn roles(&self) -> usize {
        self.roles
    }

    /// Coils of a role, and their loads.
    pub(super) fn of_role(&self, role: usize) -> impl Iterator<Item = (usize, f64)> {
        self.pieces.iter().filter_map(move |piece| piece.of_role(role))
    }

    /// Pieces of just these roles, the least load first.
    pub(super) fn of_roles(&self, roles: Roles) -> impl DoubleEndedIterator<Item = Entry> {
        let all = self.pieces.iter().enumerate();
        let of = all.filter(move |(_, piece)| piece.roles == roles);
        of.map(|(id, piece)| Entry { load: piece.load, id })
    }

    /// The greatest load that a nest could have.
    pub(super) fn greatest(&self) -> f64 {
        let most = |role| self.of_role(role).map(|(_, load)| load).fold(0.0, f64::max);
        (0..self.roles).map(most).sum()
    }

    /// The coil of each role that some pieces have.
    pub(super) fn coils(&self, pieces: &[usize]) -> Vec<usize> {
        let of = |role| {
            let each = pieces.iter().filter_map(|piece| self.pieces.get(*piece));
            each.filter_map(|piece| piece.of_role(role)).map(|(coil, _)| coil).next()
        };
        (0..self.roles).filter_map(of).collect()
    }

    pub(super) fn left_over(&self, roles: usize, nests: &[Vec<usize>]) -> Vec<Vec<usize>> {
        let of = |role| {
            let used = nests.iter().filter_map(|coils| coils.get(role).copied());
            let mut used: Vec<usize> = used.collect();
            used.put_in_order(Ord::cmp);
            let mut left: Vec<usize> = self.of_role(role).map(|(coil, _)| coil).collect();
            left.retain(|coil| used.binary_search(coil).is_err());
            left.put_in_order(Ord::cmp);
            left
        };
        (0..roles).map(of).collect()
    }

    fn all_roles(&self) -> Roles {
        (1 << self.roles) - 1
    }

    /// Of nests of one coil or two.
    pub(super) fn pairs(&self, wanted: usize) -> Pairs {
        let (firsts, seconds): (Vec<Entry>, Vec<Entry>) = if self.roles == 1 {
            (Vec::new(), Vec::new())
        } else {
            (self.of_roles(0b01).collect(), self.of_roles(0b10).collect())
        };
        Pairs::new(self.of_roles(self.all_roles()).collect(), firsts, seconds, wanted)
    }

    /// Every way in which pieces can make up a nest, the fewest pieces first.
    pub(super) fn divisions(&self) -> Vec<Vec<Roles>> {
        let mut divisions = Vec::new();
        divide(self.all_roles(), &mut Vec::new(), &mut divisions);
        divisions.put_in_order(|one, other| one.len().cmp(&other.len()));
        divisions
    }

    /// How many nests of each division make up the number wanted.
    pub(super) fn plan(&self, wanted: usize) -> Result<Vec<usize>, MatchingError> {
        let divisions = self.divisions();
        let mut counts = [0; 1 << MOST_ROLES];
        for piece in &self.pieces {
            if let Some(count) = counts.get_mut(usize::from(piece.roles)) {
                *count += 1;
            }
        }
        let mut split =
            Split { divisions: &divisions, counts, plan: Vec::new(), found: 0, tried: 0 };
        if split.fill(wanted, wanted) {
            split.plan.resize(divisions.len(), 0);
            return Ok(split.plan);
        }
        Err(MatchingError::Tied { found: split.found, wanted })
    }
}

fn divide(left: Roles, parts: &mut Vec<Roles>, divisions: &mut Vec<Vec<Roles>>) {
    if left == 0 {
        divisions.push(parts.clone());
        return;
    }
    let lowest = left & left.wrapping_neg();
    for part in (1..=left).filter(|part| part & !left == 0 && part & lowest != 0) {
        parts.push(part);
        divide(left & !part, parts, divisions);
        parts.pop();
    }
}

/// A search for the number of nests of each division, those of few pieces first.
struct Split<'a> {
    divisions: &'a [Vec<Roles>],
    /// How many pieces have just these roles.
    counts: [usize; 1 << MOST_ROLES],
    plan: Vec<usize>,
    found: usize,
    tried: usize,
}

impl Split<'_> {
    fn fill(&mut self, left: usize, wanted: usize) -> bool {
        self.found = self.found.max(wanted - left);
        if left == 0 {
            return true;
        }
        self.tried += 1;
        let Some(division) = self.divisions.get(self.plan.len()) else { return false };
        let count =
            |roles: &Roles| self.counts.get(usize::from(*roles)).copied().unwrap_or_default();
        let most = division.iter().map(count).min().unwrap_or_default().min(left);
        for nests in (0..=most).rev() {
            self.take(division, |count| count - nests);
            self.plan.push(nests);
            if self.fill(left - nests, wanted) {
                return true;
            }
            self.plan.pop();
            self.take(division, |count| count + nests);
            // A piece that can be whole with at most one single coil does best so: any other nest that
            // has the single would need more besides.
            let at_best = division.len() <= 2 && division.iter().any(|of| of.is_power_of_two());
            if self.tried > MOST_SPLITS || division.len() == 1 || at_best {
                break;
            }
        }
        false
    }

    fn take(&mut self, division: &[Roles], change: impl Fn(usize) -> usize) {
        for roles in division {
            if let Some(count) = self.counts.get_mut(usize::from(*roles)) {
                *count = change(*count);
            }
        }
    }
}

//! Which coil of those on the bench belongs in which seat.
//!
//! Each of `n` nests wants one coil of every role: an outer, an inner, perhaps a third. A coil comes
//! with its load at one height that is common to all nests, by its measured free height:
//!
//! ```text
//! f = k · max(0, L0 + o − h)       F = Σ f over the coils of a nest
//! ```
//! `k` rate · `L0` measured free height · `o` how far its seat is raised · `h` the common height
//!
//! Wanted is, in this order:
//!
//! 1. the least spread, greatest `F` less least, over every choice of coils;
//! 2. with the nests so chosen, the place of each from which the frame stands most level across,
//!    then along, then least twisted ([`Balance`]);
//! 3. among places that are equal in that, those in which most coils stand already.
//!
//! What is equal even then is settled by a fixed order, so that there is one answer.
//!
//! # Loads and heights
//! Where the coils of a role have one rate, nests of equal load at one height are equally high under
//! one load: heights differ by the differences of `F` over the rate of the nest, so the least spread of
//! the one is that of the other. It holds as long as every coil carries at both.
//!
//! # How sure the spread is
//! For nests of one or two coils the least spread is proven up to hundreds of coils. Of thousands, and
//! of nests of more, it is looked for as long as a fixed count of steps allows; [`Reach::bound`] is a
//! spread below which no choice can be, and equals the spread where that is proven the least, both to
//! a part in 10¹² of the greatest load.
//!
//! # Example
//! Three outer coils, two inner ones, two nests: the long outer goes with the short inner.
//! ```
//! use coilnest::frame::Place;
//! use coilnest::matching::{Coil, Role, matched};
//! use coilnest::quantity::{Force, Length, unit::{millimeter, newton}};
//!
//! let newtons = Force::new::<newton>;
//! let role = |name: &str, loads: &[f64]| {
//!     let coils = loads.iter().map(|load| Coil::new(newtons(*load))).collect();
//!     Role { name: name.into(), coils, new: None }
//! };
//! let seat = |across| Place { across: Length::new::<millimeter>(across), ..Place::default() };
//! let roles = [role("outer", &[9000.0, 9400.0, 8100.0]), role("inner", &[4500.0, 4000.0])];
//! let matched = matched(&roles, &[seat(800.0), seat(-800.0)])?;
//!
//! assert!((matched.reach.spread.get::<newton>() - 100.0).abs() < 1e-9); // 9000 + 4500, 9400 + 4000
//! assert!(matched.reach.exact());
//! assert_eq!(matched.left_over, [vec![2], vec![]]);
//! # Ok::<(), coilnest::matching::MatchingError>(())
//! ```

mod balance;
mod combine;
mod error;
mod pairs;
mod pieces;

use crate::order::InOrder;
use crate::progress::Progress;
pub use balance::{Balance, MOST_PLACED};
pub use error::{Lack, MatchingError};

use crate::bounds;
use crate::frame::Place;
use crate::quantity::{Force, si};
use crate::source::{Known, Source};
use balance::Arms;
use pieces::{Piece, Stock, Ties};

/// Where the sums and the proofs come from.
pub const SOURCE: Source =
    Source::new("statics", "springs side by side, and which of them to put there", Known::Derived);

/// The greatest number of roles.
pub const MOST_ROLES: usize = 4;
/// The greatest number of nests.
pub const MOST_NESTS: usize = 5000;

/// A coil on the bench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coil {
    /// Its load at the common height.
    pub load: Force,
    /// Whether it may be used. One whose verdict is short may not.
    pub usable: bool,
    /// Coils of different roles with the same number may not part: one nest gets them all, or none
    /// is used.
    pub tie: Option<usize>,
    /// The nest in which it stands now, counted from 0; none of a coil from the shelf.
    pub stays: Option<usize>,
}

impl Coil {
    /// A coil that may be used, from the shelf, tied to no other.
    #[must_use]
    pub fn new(load: Force) -> Self {
        Self { load, usable: true, tie: None, stays: None }
    }
}

/// The coils of which every nest wants one.
#[derive(Clone, Debug, PartialEq)]
pub struct Role {
    /// What it is called in messages: "outer".
    pub name: String,
    /// The coils, in any order.
    pub coils: Vec<Coil>,
    /// Load at the common height of a new coil by the book, to be told what buying one would do.
    pub new: Option<Force>,
}

/// A nest as it should be made up.
#[derive(Clone, Debug, PartialEq)]
pub struct Nest {
    /// Its coil of each role, counted from 0 in the role's order.
    pub coils: Vec<usize>,
    /// Its load at the common height.
    pub load: Force,
}

/// A spread that can be had.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Greatest load of a nest less the least.
    pub spread: Force,
    /// No choice of these coils has a spread below this.
    pub bound: Force,
}

impl Reach {
    /// Whether the spread is proven to be the least.
    #[must_use]
    pub fn exact(&self) -> bool {
        self.bound >= self.spread
    }
}

/// The coils as they stand in the nests now, short ones included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Before {
    /// Least and greatest load of a nest.
    pub ends: [Force; 2],
    /// How the nests balance.
    pub balance: Balance,
}

impl Before {
    /// Greatest load of a nest less the least.
    #[must_use]
    pub fn spread(&self) -> Force {
        let [least, most] = self.ends;
        most - least
    }
}

/// Which coil goes where.
#[derive(Clone, Debug, PartialEq)]
pub struct Matching {
    /// The nests, in the order of the seats.
    pub nests: Vec<Nest>,
    /// The spread of their loads.
    pub reach: Reach,
    /// How they balance.
    pub balance: Balance,
    /// Whether no other place of these nests balances better: so up to [`MOST_PLACED`] of them.
    pub balance_exact: bool,
    /// Coils that are to be put where they do not stand now.
    pub moved: usize,
    /// Of each role, the coils that could be used and are not.
    pub left_over: Vec<Vec<usize>>,
    /// How the nests stand now, where every seat has its coils.
    pub before: Option<Before>,
    /// Of each role, what could be reached with one new coil more, where its load is given.
    pub with_new: Vec<Option<Reach>>,
}

impl Matching {
    /// Least and greatest load of a nest.
    #[must_use]
    pub fn ends(&self) -> [Force; 2] {
        let loads: Vec<f64> = self.nests.iter().map(|nest| nest.load.value).collect();
        ends(&loads).map(si)
    }
}

/// Chooses coils for as many nests as there are seats, and places them.
///
/// # Range
/// Loads of coils that add up: each carries at the common height, or stays below it with no load.
///
/// # Errors
/// [`MatchingError::Lacking`] and [`MatchingError::Tied`] where the coils do not suffice; for slips
/// in what is given the other variants of [`MatchingError`].
///
/// # Source
/// [`SOURCE`].
pub fn matched(roles: &[Role], seats: &[Place]) -> Result<Matching, MatchingError> {
    matched_with_progress(roles, seats, &mut |_| {})
}

/// What [`matched`] does, telling a listener from time to time how much of it is decided, a part
/// from 0 to 1 that never falls.
///
/// # Errors
/// Those of [`matched`].
///
/// # Example
/// ```
/// use coilnest::frame::Place;
/// use coilnest::matching::{Coil, Role, matched, matched_with_progress};
/// use coilnest::quantity::{Force, unit::newton};
///
/// let loads = (0..400).map(|coil| 8000.0 + f64::from(coil * coil % 997));
/// let coils = loads.map(|load| Coil::new(Force::new::<newton>(load))).collect();
/// let roles = [Role { name: "outer".into(), coils, new: None }];
/// let seats = [Place::default(); 4];
///
/// let mut parts = Vec::new();
/// let matching = matched_with_progress(&roles, &seats, &mut |part| parts.push(part))?;
///
/// assert_eq!(matching, matched(&roles, &seats)?);
/// assert!(parts.is_sorted() && parts.iter().all(|part| (0.0..=1.0).contains(part)));
/// # Ok::<(), coilnest::matching::MatchingError>(())
/// ```
pub fn matched_with_progress(
    roles: &[Role],
    seats: &[Place],
    progress: &mut dyn FnMut(f64),
) -> Result<Matching, MatchingError> {
    let mut progress = Progress::new(progress);
    error::check(roles, seats)?;
    let wanted = seats.len();
    let present = Present::of(roles, wanted)?;
    let stock = Stock::of(roles)?;
    error::suffices(roles, &stock, wanted)?;
    let plan = stock.plan(wanted)?;
    let slack = SAME * stock.greatest();

    let new = roles.iter().filter(|role| role.new.is_some()).count();
    let [first, for_new] = shares(new);
    let found = search(&stock, &plan, wanted, f64::INFINITY, 1, &mut progress.piece(0.0, first));
    let mut nests: Vec<Vec<usize>> =
        found.nests.iter().flatten().map(|pieces| stock.coils(pieces)).collect();
    let mut bound = found.bound;
    if let Some(now) = present.kept(roles)
        && spread(&loads(roles, now)) <= found.spread + slack
    {
        nests = now.to_vec();
    }
    nests.put_in_order(|one, other| {
        load(roles, other).total_cmp(&load(roles, one)).then_with(|| one.cmp(other))
    });
    let least = spread(&loads(roles, &nests));
    if found.bound >= found.spread {
        bound = least;
    }

    let arms = Arms::of(seats);
    let stands =
        |nest: usize, seat: usize| nests.get(nest).map_or(0, |coils| standing(roles, coils, seat));
    let (places, balance_exact) = arms.place(&loads(roles, &nests), stands);
    let nests: Vec<Vec<usize>> =
        places.iter().filter_map(|nest| nests.get(*nest).cloned()).collect();
    let stay: usize =
        nests.iter().enumerate().map(|(seat, coils)| standing(roles, coils, seat)).sum();
    let placed = loads(roles, &nests);

    let mut done = first;
    let with_new = roles.iter().enumerate().map(|(role, of)| {
        let load = of.new?;
        let more = stock.with(Piece::single(role, of.coils.len(), load.value));
        let mut piece = progress.piece(done, done + for_new);
        done += for_new;
        let found = search(&more, &plan, wanted, least, FOR_NEW, &mut piece);
        Some(reach(found.spread.min(least), found.bound))
    });
    Ok(Matching {
        reach: reach(least, bound),
        balance: arms.balance(&placed),
        balance_exact,
        moved: wanted * roles.len() - stay,
        left_over: stock.left_over(roles.len(), &nests),
        before: present.before(roles, &arms),
        with_new: with_new.collect(),
        nests: nests
            .into_iter()
            .zip(placed)
            .map(|(coils, load)| Nest { coils, load: si(load) })
            .collect(),
    })
}

/// Loads nearer to each other than this part of the greatest are one.
const SAME: f64 = 1e-13;
/// What a new coil would do is looked for in this part of the steps.
const FOR_NEW: usize = 4;

/// Which part of the whole the search is, and each one for a new coil, by the steps that they may take.
#[expect(clippy::cast_precision_loss, reason = "there are at most MOST_ROLES new coils")]
fn shares(new: usize) -> [f64; 2] {
    let for_new = 1.0 / (FOR_NEW + new) as f64;
    [for_new * FOR_NEW as f64, for_new]
}

/// What a search came to.
struct Found {
    /// The pieces of each nest; none where nothing is below the spread that was known.
    nests: Option<Vec<Vec<usize>>>,
    spread: f64,
    bound: f64,
}

/// The least spread of `wanted` nests, if it is below one that is known, in a share of the usual steps.
fn search(
    stock: &Stock,
    plan: &[usize],
    wanted: usize,
    known: f64,
    share: usize,
    progress: &mut Progress<'_>,
) -> Found {
    let slack = SAME * stock.greatest();
    if stock.roles() > 2 {
        return combine::search(stock, plan, wanted, known, slack, share, progress);
    }
    let pairs = stock.pairs(wanted);
    let solved = pairs.solve(known, slack, pairs::STEPS / share, progress);
    let nests = solved.taken.map(|taken| taken.iter().map(|one| one.ids()).collect());
    Found { nests, spread: solved.spread, bound: solved.bound }
}

fn coil(roles: &[Role], role: usize, coil: usize) -> Option<&Coil> {
    roles.get(role)?.coils.get(coil)
}

fn load(roles: &[Role], coils: &[usize]) -> f64 {
    let each = coils.iter().enumerate().filter_map(|(role, of)| coil(roles, role, *of));
    each.map(|coil| coil.load.value).sum()
}

fn loads(roles: &[Role], nests: &[Vec<usize>]) -> Vec<f64> {
    nests.iter().map(|coils| load(roles, coils)).collect()
}

/// How many of the coils stand in a seat now.
fn standing(roles: &[Role], coils: &[usize], seat: usize) -> usize {
    let each = coils.iter().enumerate().filter_map(|(role, of)| coil(roles, role, *of));
    each.filter(|coil| coil.stays == Some(seat)).count()
}

fn ends(loads: &[f64]) -> [f64; 2] {
    let most = loads.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = loads.iter().copied().fold(f64::INFINITY, f64::min);
    [least, most]
}

fn spread(loads: &[f64]) -> f64 {
    let [least, most] = ends(loads);
    most - least
}

/// The nests as they stand now.
struct Present {
    /// The coil of each role in each nest, where every seat has its coils.
    nests: Option<Vec<Vec<usize>>>,
}

impl Present {
    fn of(roles: &[Role], wanted: usize) -> Result<Self, MatchingError> {
        let mut seats: Vec<Vec<Option<usize>>> = vec![vec![None; roles.len()]; wanted];
        for (role, of) in roles.iter().enumerate() {
            for (index, coil) in of.coils.iter().enumerate() {
                let Some(nest) = coil.stays else { continue };
                let seat = seats.get_mut(nest).and_then(|seat| seat.get_mut(role));
                let name = || of.name.clone();
                let Some(seat) = seat else {
                    let (coil, nest) = (index + 1, nest + 1);
                    return Err(MatchingError::Stays { name: name(), coil, nest, nests: wanted });
                };
                if let Some(first) = seat.replace(index) {
                    let (nest, first, second) = (nest + 1, first + 1, index + 1);
                    return Err(MatchingError::Crowded { name: name(), nest, first, second });
                }
            }
        }
        Ok(Self { nests: seats.into_iter().map(|seat| seat.into_iter().collect()).collect() })
    }

    /// The nests, where all of their coils may stay and none is parted from its tie.
    fn kept(&self, roles: &[Role]) -> Option<&[Vec<usize>]> {
        let nests = self.nests.as_deref()?;
        let ties = Ties::of(roles);
        let mut stays: Vec<Option<Option<usize>>> = ties.each();
        for coil in roles.iter().flat_map(|role| &role.coils) {
            if coil.stays.is_some() && !coil.usable {
                return None;
            }
            if let Some(first) = ties.place(coil).and_then(|place| stays.get_mut(place))
                && *first.get_or_insert(coil.stays) != coil.stays
            {
                return None;
            }
        }
        Some(nests)
    }

    fn before(&self, roles: &[Role], arms: &Arms) -> Option<Before> {
        let loads = loads(roles, self.nests.as_deref()?);
        Some(Before { ends: ends(&loads).map(si), balance: arms.balance(&loads) })
    }
}

fn reach(spread: f64, bound: f64) -> Reach {
    Reach { spread: si(spread), bound: si(bound.min(spread)) }
}

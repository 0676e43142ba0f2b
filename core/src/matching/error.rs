//! Why coils cannot be matched.

use super::pieces::Stock;
use super::{MOST_NESTS, MOST_ROLES, Role, bounds};
use crate::frame::Place;
use crate::quantity::{Force, System};
use crate::say::{InWords, Reader, Say, says};
use thiserror::Error;

/// A role of which there are too few coils.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lack {
    /// Which role, counted from 0.
    pub role: usize,
    /// What it is called.
    pub name: String,
    /// How many can be used.
    pub usable: usize,
    /// How many were left out: those that may not be used, and those that go with them.
    pub left_out: usize,
    /// How many more are needed.
    pub missing: usize,
}

/// Why coils cannot be matched. Nests and coils are counted from 1.
#[derive(Clone, Debug, Error, PartialEq)]
#[error("{}", self.say(System::Metric))]
#[non_exhaustive]
pub enum MatchingError {
    /// Nests of no coil, or of too many.
    Roles {
        /// How many there are.
        count: usize,
    },
    /// No nest, or too many.
    Seats {
        /// How many there are.
        count: usize,
    },
    /// A load that a coil cannot have.
    Load {
        /// The role.
        name: String,
        /// Which of its coils.
        coil: usize,
        /// The load.
        load: Force,
    },
    /// A load that a new coil cannot have.
    New {
        /// The role.
        name: String,
        /// The load.
        load: Force,
    },
    /// A place that is no place.
    Place {
        /// Which nest.
        nest: usize,
    },
    /// A coil in a nest that there is not.
    Stays {
        /// The role.
        name: String,
        /// Which of its coils.
        coil: usize,
        /// The nest that was given.
        nest: usize,
        /// How many nests there are.
        nests: usize,
    },
    /// Two coils in one seat.
    Crowded {
        /// The role.
        name: String,
        /// The nest.
        nest: usize,
        /// One coil.
        first: usize,
        /// The other.
        second: usize,
    },
    /// Two coils of a role tied together.
    TiedTwice {
        /// The role.
        name: String,
        /// One coil.
        first: usize,
        /// The other.
        second: usize,
    },
    /// A coil tied to no other.
    TiedAlone {
        /// The role.
        name: String,
        /// Which of its coils.
        coil: usize,
    },
    /// Too few coils of some role.
    Lacking {
        /// How many of each are wanted.
        wanted: usize,
        /// The roles that lack some.
        lacks: Vec<Lack>,
    },
    /// Enough coils, but not with those together that may not part.
    Tied {
        /// How many nests were found to be possible.
        found: usize,
        /// How many are wanted.
        wanted: usize,
    },
}

says! {
    MatchingError {
        Roles { count } =>
            "{count} roles in a nest", "a number from 1 to {MOST_ROLES}",
            "give one for each coil that stands in the same nest";
        Seats { count } =>
            "{count} nests to be filled", "a number from 1 to {MOST_NESTS}", "give a seat for each";
        Load { name, coil, load } =>
            "{name} coil {coil}: {load} at the common height", "a load of zero or more",
            "measure its free height again";
        New { name, load } =>
            "a new {name} coil: {load} at the common height", "a load of zero or more",
            "see the book for its free height and rate";
        Place { nest } =>
            "nest {nest}: its place is not a number or far off",
            "a place within a frame's reach along and across", "measure it again";
        Stays { name, coil, nest, nests } =>
            "{name} coil {coil} is said to stand in nest {nest}", "a nest from 1 to {nests}",
            "leave it out for a coil from the shelf";
        Crowded { name, first, second, nest } =>
            "{name} coils {first} and {second} are both said to stand in nest {nest}",
            "one of them", "see which of them is there";
        TiedTwice { name, first, second } =>
            "{name} coils {first} and {second} are marked as one pair",
            "a pair of different kinds of coil", "one nest cannot take both";
        TiedAlone { name, coil } =>
            "{name} coil {coil} is marked as one of a pair, but its mate is not there", "both coils of a pair",
            "mark its mate too, or take the mark away";
        Lacking { lacks, wanted } => "{lacks}", "{wanted} of each", "bring those that are missing";
        Tied { found, wanted } =>
            "nests that can be filled without parting a pair: {found}",
            "enough for {wanted}", "part a pair, or bring more coils";
    }
}

impl InWords for Vec<Lack> {
    fn in_words(&self, _: Reader<'_>) -> String {
        let each = self.iter().map(|Lack { name, usable, left_out, missing, .. }| {
            format!(
                "{name} coils that can be used: {usable}, with {left_out} left out as not fit for use, or as the mate of such a coil, and {missing} missing"
            )
        });
        each.collect::<Vec<_>>().join("; ")
    }
}

pub(super) fn check(roles: &[Role], seats: &[Place]) -> Result<(), MatchingError> {
    if !(1..=MOST_ROLES).contains(&roles.len()) {
        return Err(MatchingError::Roles { count: roles.len() });
    }
    if !(1..=MOST_NESTS).contains(&seats.len()) {
        return Err(MatchingError::Seats { count: seats.len() });
    }
    let is_place = |length| bounds::POSITION.check(length).is_ok();
    for (place, nest) in seats.iter().zip(1..) {
        if !(is_place(place.along) && is_place(place.across)) {
            return Err(MatchingError::Place { nest });
        }
    }
    for Role { name, coils, new } in roles {
        for (of, coil) in coils.iter().zip(1..) {
            if bounds::LOAD.check(of.load).is_err() {
                return Err(MatchingError::Load { name: name.clone(), coil, load: of.load });
            }
        }
        if let Some(load) = new.filter(|load| bounds::LOAD.check(*load).is_err()) {
            return Err(MatchingError::New { name: name.clone(), load });
        }
    }
    Ok(())
}

pub(super) fn suffices(roles: &[Role], stock: &Stock, wanted: usize) -> Result<(), MatchingError> {
    let mut lacks = Vec::new();
    for (role, of) in roles.iter().enumerate() {
        let usable = stock.of_role(role).count();
        if usable < wanted {
            let (left_out, missing) = (of.coils.len() - usable, wanted - usable);
            lacks.push(Lack { role, name: of.name.clone(), usable, left_out, missing });
        }
    }
    if lacks.is_empty() { Ok(()) } else { Err(MatchingError::Lacking { wanted, lacks }) }
}

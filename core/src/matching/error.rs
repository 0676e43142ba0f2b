//! Why coils cannot be matched.

use super::pieces::Stock;
use super::{MOST_NESTS, MOST_ROLES, Role, bounds};
use crate::frame::Place;
use crate::quantity::{Force, System, write};
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
    /// How many were left out: those that may not be used, and those that are tied to such.
    pub left_out: usize,
    /// How many more are needed.
    pub missing: usize,
}

/// Why coils cannot be matched. Nests and coils are counted from 1.
#[derive(Clone, Debug, Error, PartialEq)]
#[non_exhaustive]
pub enum MatchingError {
    /// Nests of no coil, or of too many.
    #[error(
        "roles in a nest: {count}; 1 to {MOST_ROLES} were expected: give one for each coil that stands in the same nest"
    )]
    Roles {
        /// How many there are.
        count: usize,
    },
    /// No nest, or too many.
    #[error("nests to be filled: {count}; 1 to {MOST_NESTS} were expected: give a seat for each")]
    Seats {
        /// How many there are.
        count: usize,
    },
    /// A load that a coil cannot have.
    #[error(
        "{name} coil {coil}: {} at the common height; {} was expected: measure its free height again",
        write::<Force>(*.load, System::Metric), bounds::LOAD.sentence(System::Metric)
    )]
    Load {
        /// The role.
        name: String,
        /// Which of its coils.
        coil: usize,
        /// The load.
        load: Force,
    },
    /// A load that a new coil cannot have.
    #[error(
        "a new {name} coil: {} at the common height; {} was expected: see the book for its free height and rate",
        write::<Force>(*.load, System::Metric), bounds::LOAD.sentence(System::Metric)
    )]
    New {
        /// The role.
        name: String,
        /// The load.
        load: Force,
    },
    /// A place that is no place.
    #[error(
        "nest {nest}: its place is not a number or far off; {} along and across was expected: measure it again",
        bounds::POSITION.sentence(System::Metric)
    )]
    Place {
        /// Which nest.
        nest: usize,
    },
    /// A coil in a nest that there is not.
    #[error(
        "{name} coil {coil} is said to stand in nest {nest}; a nest from 1 to {nests} was expected: leave it out for a coil from the shelf"
    )]
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
    #[error(
        "{name} coils {first} and {second} are both said to stand in nest {nest}; one was expected: see which of them is there"
    )]
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
    #[error(
        "{name} coils {first} and {second} are tied to each other; coils of different roles were expected: one nest cannot take both"
    )]
    TiedTwice {
        /// The role.
        name: String,
        /// One coil.
        first: usize,
        /// The other.
        second: usize,
    },
    /// A coil tied to no other.
    #[error(
        "{name} coil {coil} is tied, but to no other coil; two or more of one number were expected: tie the other, or leave it out"
    )]
    TiedAlone {
        /// The role.
        name: String,
        /// Which of its coils.
        coil: usize,
    },
    /// Too few coils of some role.
    #[error("{}", lacking(.lacks, *.wanted))]
    Lacking {
        /// How many of each are wanted.
        wanted: usize,
        /// The roles that lack some.
        lacks: Vec<Lack>,
    },
    /// Enough coils, but not with those together that may not part.
    #[error(
        "with tied coils kept together, nests that can be filled: {found}; {wanted} were expected: untie some, or bring more coils"
    )]
    Tied {
        /// How many nests were found to be possible.
        found: usize,
        /// How many are wanted.
        wanted: usize,
    },
}

fn lacking(lacks: &[Lack], wanted: usize) -> String {
    let each = lacks.iter().map(|Lack { name, usable, left_out, missing, .. }| {
        format!(
            "{name} coils that can be used: {usable}, with {left_out} left out, not fit for use or tied to such; {wanted} were expected: bring {missing} more"
        )
    });
    each.collect::<Vec<_>>().join("; ")
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

//! Coils cut through their axis, as the page draws them.

use super::coil::Coil;
use super::nest::ComputedNest;
use super::report::{Cut, SeatCut};
use crate::coil::{Hand, ends::Ends, section};
use crate::nest::State;
use crate::quantity::{self, Length, System};

/// The nest at a height.
pub(crate) fn nest(computed: &ComputedNest, state: &State, system: System) -> Cut {
    let seats = computed.seats.iter().zip(&state.members).enumerate();
    let seats = seats.filter_map(|(index, (seated, member))| {
        let stands = seated.standing.free? - member.deflection;
        let cut = coil(&seated.coil, seated.raise, stands, system)?;
        let solid = member.to_solid.is_some_and(|left| left.value <= 1e-9);
        Some(SeatCut { seat: index, touching: member.touching, solid, ..cut })
    });
    of(seats.collect(), state.height, system)
}

/// A coil by itself, free.
pub(crate) fn free(drawn: &Coil, system: System) -> Option<Cut> {
    let free = drawn.free()?;
    let cut = coil(drawn, Length::default(), free, system)?;
    Some(of(vec![cut], free, system))
}

fn of(seats: Vec<SeatCut>, height: Length, system: System) -> Cut {
    let outside = |width: f64, seat: &SeatCut| {
        let outside = seat.mean + seat.bar;
        if outside > width { outside } else { width }
    };
    let width = seats.iter().fold(0.0, outside);
    let (height, unit) = quantity::shown::<Length>(height, system);
    Cut { unit: unit.into(), height, width, seats }
}

fn coil(drawn: &Coil, bottom: Length, stands: Length, system: System) -> Option<SeatCut> {
    let (diameters, turns) = (drawn.diameters()?, drawn.turns()?);
    let number = |length: Length| quantity::shown::<Length>(length, system).0;
    let ends = drawn.drawing.ends.unwrap_or(Ends::Closed);
    let cuts = section::cuts(stands, diameters.bar(), turns, ends);
    let above = |heights: &[Length]| heights.iter().map(|h| number(*h + bottom)).collect();
    Some(SeatCut {
        seat: 0,
        bar: number(diameters.bar()),
        mean: number(diameters.mean()),
        bottom: number(bottom),
        top: number(bottom + stands),
        left: above(&cuts.left),
        right: above(&cuts.right),
        ground: ends.ground(),
        hand: drawn.drawing.hand.map(|hand| match hand {
            Hand::Left => "left".into(),
            Hand::Right => "right".into(),
        }),
        touching: true,
        solid: false,
    })
}

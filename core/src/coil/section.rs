//! Where a plane through the axis cuts the bar of a coil: what a half-section shows.

use super::ends::{Ends, Turns};
use super::solid;
use crate::quantity::Length;

/// Heights of the bar's centre above the lower seat, at both sides of the axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Cuts {
    /// Where the bar crosses the plane on the side on which its lower tip lies.
    pub left: Vec<Length>,
    /// Half a turn on from each of those.
    pub right: Vec<Length>,
}

/// The cuts of a coil that stands `height` high.
///
/// The bar's centre rises evenly in the dead turns and evenly, by the pitch, in those at work. It
/// starts half a bar above the seat, or on the seat where the end is ground, and the dead turns rise
/// by whatever brings the coil to its solid height when those at work lie bar on bar.
///
/// # Example
/// ```
/// use coilnest::coil::{ends::{Ends, Turns}, section};
/// use coilnest::quantity::{Length, unit::millimeter};
///
/// let mm = Length::new::<millimeter>;
/// let cuts = section::cuts(mm(110.0), mm(10.0), Turns::new(10.0, 0.0)?, Ends::Open);
/// let left: Vec<f64> = cuts.left.iter().map(|h| h.get::<millimeter>().round()).collect();
/// assert_eq!(left, [5.0, 15.0, 25.0, 35.0, 45.0, 55.0, 65.0, 75.0, 85.0, 95.0, 105.0]);
/// # Ok::<(), coilnest::coil::ends::TurnsError>(())
/// ```
#[must_use]
pub fn cuts(height: Length, bar: Length, turns: Turns, ends: Ends) -> Cuts {
    let start = if ends.ground() { 0.0 * bar } else { 0.5 * bar };
    let pitch = solid::pitch(height, bar, turns, ends);
    let (dead_turns, rise_of_dead) = if ends == Ends::OpenGround || turns.dead() <= 0.0 {
        (0.0, 0.0 * bar)
    } else {
        let rise = height - 2.0 * start - pitch * turns.active();
        (turns.dead() / 2.0, rise / turns.dead())
    };
    let center = |turn: f64| {
        let lower = within(turn, dead_turns);
        let upper = within(turn - (turns.total() - dead_turns), dead_turns);
        start + rise_of_dead * (lower + upper) + pitch * (turn - lower - upper)
    };
    let every_turn = |first: f64| {
        core::iter::successors(Some(first), |turn| Some(turn + 1.0))
            .take_while(|turn| *turn <= turns.total())
            .map(center)
            .collect()
    };
    Cuts { left: every_turn(0.0), right: every_turn(0.5) }
}

/// What of `turn` lies between zero and `most`.
fn within(turn: f64, most: f64) -> f64 {
    if turn <= 0.0 {
        0.0
    } else if turn >= most {
        most
    } else {
        turn
    }
}

#[cfg(test)]
mod tests {
    use super::super::ends::TurnsError;
    use super::*;
    use crate::quantity::unit::millimeter;

    #[test]
    fn the_bar_rises_from_seat_to_seat_and_never_overlaps_itself() -> Result<(), TurnsError> {
        let bar = Length::new::<millimeter>(12.0);
        for ends in Ends::ALL {
            let turns = Turns::new(9.0, ends.dead_turns())?;
            let solid = solid::height(bar, turns, ends);
            for height in [solid, solid * 1.4, solid * 2.5] {
                let cuts = cuts(height, bar, turns, ends);
                for side in [&cuts.left, &cuts.right] {
                    for (lower, upper) in side.iter().zip(side.iter().skip(1)) {
                        let gap = (*upper - *lower).get::<millimeter>();
                        // Tapered tips are thinner than the bar; whole bars keep a bar's distance.
                        let least = if ends == Ends::TaperedGround { 9.5 } else { 12.0 };
                        assert!(gap >= least - 1e-9, "{ends:?} {gap}");
                    }
                }
                let top = cuts.left.last().map_or(0.0, Length::get::<millimeter>);
                let reach = if ends.ground() { 0.0 } else { 6.0 };
                assert!(
                    (top - (height.get::<millimeter>() - reach)).abs() < 1e-9,
                    "{ends:?} {top}"
                );
            }
        }
        Ok(())
    }
}

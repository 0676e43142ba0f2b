//! Needs that no coil can meet, at the first of the two fields that contradict each other.

use super::path;
use crate::job::figures::{Pen, text};
use crate::job::report::Problem;
use crate::quantity::{Force, Length, Stress};
use crate::sizing::NeedError;

fn says(field: &str, read: &str, expected: &str, why: &str) -> Problem {
    Problem::new(&path().field(field), "contradiction", read, expected, why, "")
}

/// The error as a problem of the job, both sides named in its units.
pub(super) fn problem(pen: Pen, error: &NeedError) -> Problem {
    let length = |of: Length| pen.decimal(of).to_string();
    let load = |of: Force| pen.say::<Force>(of).to_string();
    match *error {
        NeedError::Load { what, load: of } => says(
            if what == "load" { "load" } else { "second_load" },
            &load(of),
            "a load above zero",
            &text!("the {what} presses no coil together: give what the coil carries"),
        ),
        NeedError::Stress { what, stress } => says(
            if what.ends_with("solid") { "stress_solid" } else { "stress" },
            &pen.say::<Stress>(stress).to_string(),
            "a stress above zero",
            &text!("{what} is nothing: take it from the steel's table or its certificate"),
        ),
        NeedError::SameHeight { height } => says(
            "second_height",
            &length(height),
            "another height than that of the first load",
            "both loads are at this height: give the second where the coil stands lower or higher",
        ),
        NeedError::NoFirstHeight { height } => says(
            "height",
            "",
            "the height of the first load",
            &text!(
                "the second load is at {}, but the first has no height: give it, or a rate",
                length(height)
            ),
        ),
        NeedError::SecondLoad { load: first, height, second, at } => says(
            "second_load",
            &load(second),
            "the greater load at the lower height",
            &text!(
                "it is carried at {}, and {} at {}: see whether the heights were exchanged",
                length(at),
                load(first),
                length(height)
            ),
        ),
        NeedError::SolidAboveWork { solid, lowest } => says(
            "solid",
            &length(solid),
            "a solid height below the lowest height at work",
            &text!(
                "at work the coil stands as low as {}: give the solid height that the room allows, or none",
                length(lowest)
            ),
        ),
        NeedError::ReserveAboveWork { reserve, lowest } => says(
            "height",
            &length(lowest),
            "a height at work above what must be left to solid",
            &text!(
                "at that load and rate {} must be left to solid: give more height, or a stiffer coil",
                length(reserve)
            ),
        ),
        NeedError::FreeBelowWork { most, free } => says(
            "free",
            &length(most),
            "as much free height as load and rate make",
            &text!(
                "load, height and rate make it {} at the least: allow more free height, or take a stiffer coil",
                length(free)
            ),
        ),
        ref other => of_bars(pen, other),
    }
}

/// Of the room across and the bars to choose from.
fn of_bars(pen: Pen, error: &NeedError) -> Problem {
    let length = |of: Length| pen.decimal(of).to_string();
    let load = |of: Force| pen.say::<Force>(of).to_string();
    match *error {
        NeedError::NoRoom { within, inner, around, outer } => says(
            "post",
            &length(inner),
            "room between them",
            &text!(
                "{within} takes this, and {around} leaves {}, clearances counted: see whether they were exchanged",
                length(outer)
            ),
        ),
        NeedError::NoBarFits { bar, outside, around, outer } => says(
            "pocket",
            &length(outer),
            "room for a coil of the bars to choose from",
            &text!(
                "{around} leaves this much, and the narrowest coil, of a bar of {}, is {} across: take thinner bars, or more room",
                length(bar),
                length(outside)
            ),
        ),
        NeedError::RoomCannotCarry { load: of, most, bar } => says(
            "load",
            &load(of),
            "a load that the bars bear in the room across",
            &text!(
                "in the room across, the bars bear {} at the most, wound of {}: give more room, thicker bars or a stronger steel, or share the load among more coils",
                load(most),
                length(bar)
            ),
        ),
        NeedError::Nothing { .. } => says(
            "bars",
            "",
            "bars to choose from",
            "the steel has none of the bars that are listed: give bars, or take the row of their size",
        ),
        NeedError::TooMany { bars, .. } => says(
            "bars",
            &text!("{bars}"),
            "fewer bars",
            "so many bars with all counts of turns take too long to try",
        ),
        NeedError::NoStrength(refusal) => {
            says("stress", "", "a stress that the bars may bear", &refusal.sentence(pen.system))
        }
        ref other => says("load", "", "a need that a coil can meet", &other.to_string()),
    }
}

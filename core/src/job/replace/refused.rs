//! Why nothing can be said of a replacement, at the field that contradicts, in the units of the job.

use super::place::Standing;
use super::{path, words};
use crate::drawing::Figure;
use crate::job::figures::{Pen, text};
use crate::job::problem::Path;
use crate::job::report::Problem;
use crate::quantity::{Force, Length};
use crate::replacement::{Amount, ReplacementError, Whose};

fn says(at: &Path, read: &str, expected: &str, why: &str) -> Problem {
    Problem::new(at, "contradiction", read, expected, why, "")
}

/// Where the drawings stand.
pub(super) struct Where<'a> {
    pub(super) original: &'a Path,
    pub(super) candidate: &'a Path,
    pub(super) cycle: &'a Path,
    pub(super) neighbours: Option<&'a Standing>,
    /// The coils of a whole nest: those that are there, and those that are offered.
    pub(super) nest: (&'a [Path], &'a [Path]),
}

impl Where<'_> {
    fn of(&self, whose: Whose) -> Path {
        let neighbour = match whose {
            Whose::Original => Some(self.original),
            Whose::Candidate => Some(self.candidate),
            Whose::Outer(place) => self.neighbours.and_then(|standing| standing.outer.get(place)),
            Whose::Inner(place) => self.neighbours.and_then(|standing| standing.inner.get(place)),
            Whose::There(place) => self.nest.0.get(place),
            Whose::Offered(place) => self.nest.1.get(place),
            Whose::Nest => None,
        };
        neighbour.cloned().unwrap_or_else(path)
    }
}

/// The error as a problem of the job.
pub(super) fn problem(pen: Pen, error: &ReplacementError, at: &Where<'_>) -> Problem {
    let asked = |field| path().field("asked").field(field);
    let length = |length: Length| pen.decimal(length).to_string();
    let amount = |of: Amount| words::amount(pen, of).to_string();
    match *error {
        ReplacementError::NotPositive { what, amount: of } => says(
            &asked(field(what)),
            &amount(of),
            "a number above zero",
            &text!(
                "{what} of nothing leaves no spring to choose: measure it again, or leave it out"
            ),
        ),
        ReplacementError::Negative { what, amount: of } => says(
            &asked(field(what)),
            &amount(of),
            "zero or more",
            &text!("{what} is below zero: give it without a sign, or leave it out"),
        ),
        ReplacementError::Crossed { what, least, most } => says(
            &asked(least_of(what)),
            &amount(least),
            "a least that is not above the most",
            &text!(
                "the least {} is above the most, {}: exchange the two",
                what.trim_start_matches("a "),
                amount(most)
            ),
        ),
        ReplacementError::PostInPocket { post, pocket, play } => says(
            &asked("post"),
            &length(post),
            "a post that leaves room for a coil",
            &text!(
                "a post of {} in a pocket of {}, with {} of play at each, leaves no room for a coil: see whether the two were exchanged",
                length(post),
                length(pocket),
                length(play)
            ),
        ),
        ReplacementError::SolidAboveWorking { solid, working } => says(
            &asked("solid"),
            &length(solid),
            "a solid height below the height at work",
            &text!(
                "at work the coil stands at {}, no higher than it may be solid: measure one of them again",
                length(working)
            ),
        ),
        ReplacementError::FreeBelowWorking { free, working } => says(
            &asked("free_most"),
            &length(free),
            "a free height above the height at work",
            &text!(
                "at work the coil stands at {}, so that it would carry nothing: measure one of them again",
                length(working)
            ),
        ),
        ReplacementError::ReserveAboveWorking { reserve, working } => says(
            &asked("reserve"),
            &length(reserve),
            "a reserve less than the height at work",
            &text!("the height at work is only {}: measure one of them again", length(working)),
        ),
        ReplacementError::Cycle { least, greatest } => says(
            at.cycle,
            &pen.say::<Force>(least).to_string(),
            "the lesser of the two loads between which the coil works",
            &text!("the greater load is {}, which is not above it", pen.say::<Force>(greatest)),
        ),
        ref other => of_spring(pen, other, at),
    }
}

/// Of what a spring itself contradicts at an end of its tolerances.
fn of_spring(pen: Pen, error: &ReplacementError, at: &Where<'_>) -> Problem {
    let length = |length: Length| pen.decimal(length).to_string();
    let amount = |of: Amount| words::amount(pen, of).to_string();
    match *error {
        ReplacementError::Figure { whose, figure, amount: of } => says(
            &at.of(whose).field(of_drawing(figure)),
            &amount(of),
            "a number above zero at the end of its tolerance too",
            &text!(
                "{figure} of {whose} may be as little as that: measure it again, or give a closer tolerance"
            ),
        ),
        ReplacementError::Coil { whose, .. } => says(
            &at.of(whose).field("tolerances"),
            "",
            "tolerances that leave a hole in the coil",
            &text!(
                "at the end of its tolerances {whose} has no hole: give closer ones, or measure the bar and the diameter again"
            ),
        ),
        ReplacementError::Turns { whose, .. } => says(
            &at.of(whose).field("tolerances").field("turns"),
            "",
            "a tolerance that leaves turns to deflect",
            &text!(
                "at the end of its tolerance {whose} has no turns that deflect: give a closer one"
            ),
        ),
        ReplacementError::SolidNotBelowFree { whose, solid, free } => says(
            &at.of(whose).field("free"),
            &length(free),
            "a free height above the solid height, at the ends of the tolerances too",
            &text!(
                "{whose} may be solid at {}: measure the bar, the turns and the free height again",
                length(solid)
            ),
        ),
        ref other => says(&path(), "", "coils that make a nest", &other.to_string()),
    }
}

/// The field of what is asked.
fn field(what: &str) -> &'static str {
    match what {
        "a pocket" => "pocket",
        "a post" => "post",
        "a working height" => "height",
        "a solid height" => "solid",
        "a stress at work" => "stress",
        "a stress at solid" => "stress_solid",
        "a factor of safety" => "safety",
        "a play" => "play",
        "a gap" => "gap",
        "a reserve" => "reserve",
        "a deviation" => "deviation",
        other => least_of(other),
    }
}

/// The field of the least of two.
fn least_of(what: &str) -> &'static str {
    match what {
        "a free height" => "free_least",
        "a rate" => "rate_least",
        _ => "load_least",
    }
}

fn of_drawing(figure: Figure) -> &'static str {
    match figure {
        Figure::Bar => "bar",
        Figure::TotalTurns => "turns",
        Figure::FreeHeight => "free",
        Figure::SolidHeight => "solid",
        Figure::Rate => "rate",
        Figure::ShearModulus => "shear_modulus",
        Figure::YoungsModulus => "youngs_modulus",
        _ => "tolerances",
    }
}

impl<'a> Where<'a> {
    /// Where nothing is offered yet.
    pub(super) fn alone(original: &'a Path, cycle: &'a Path) -> Self {
        Self { original, candidate: original, cycle, neighbours: None, nest: (&[], &[]) }
    }
}

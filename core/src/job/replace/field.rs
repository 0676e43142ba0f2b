//! Where the fields of a replacement stand in a job.

use super::path;
use super::place::NestAround;
use crate::drawing::Figure;
use crate::job::problem::Path;
use crate::job::report::Problem;
use crate::quantity::System;
use crate::replacement::{AskedField, ReplacementError, ReplacementField, Whose};
use crate::say::Say;

/// Where the drawings stand.
pub(super) struct Fields<'a> {
    pub(super) original: &'a Path,
    pub(super) candidate: &'a Path,
    pub(super) cycle: &'a Path,
    pub(super) neighbours: Option<&'a NestAround>,
    /// The coils of a whole nest: those that are there, and those that are offered.
    pub(super) nest: (&'a [Path], &'a [Path]),
}

impl<'a> Fields<'a> {
    /// Where nothing is offered yet.
    pub(super) fn alone(original: &'a Path, cycle: &'a Path) -> Self {
        Self { original, candidate: original, cycle, neighbours: None, nest: (&[], &[]) }
    }

    /// The error as a problem of the job.
    pub(super) fn problem(&self, system: System, error: &ReplacementError) -> Problem {
        Problem::said(&self.at(error.field()), "contradiction", &error.say(system), "")
    }

    fn at(&self, field: ReplacementField) -> Path {
        match field {
            ReplacementField::Asked(field) => path().field("asked").field(asked(field)),
            ReplacementField::Cycle => self.cycle.clone(),
            ReplacementField::Of(whose, figure) => self.of(whose).field(of_drawing(figure)),
            ReplacementField::Tolerance(whose, figure) => {
                let figure = figure.map_or("", of_drawing);
                self.of(whose).field("tolerances").field(figure)
            }
            _ => path(),
        }
    }

    fn of(&self, whose: Whose) -> Path {
        let drawing = match whose {
            Whose::Original => Some(self.original),
            Whose::Candidate => Some(self.candidate),
            Whose::Outer(place) => self.neighbours.and_then(|standing| standing.outer.get(place)),
            Whose::Inner(place) => self.neighbours.and_then(|standing| standing.inner.get(place)),
            Whose::There(place) => self.nest.0.get(place),
            Whose::Offered(place) => self.nest.1.get(place),
            Whose::Nest => None,
        };
        drawing.cloned().unwrap_or_else(path)
    }
}

/// The field of what is asked; of what a job does not ask, none.
fn asked(field: AskedField) -> &'static str {
    match field {
        AskedField::Pocket => "pocket",
        AskedField::Post => "post",
        AskedField::Play => "play",
        AskedField::Gap => "gap",
        AskedField::FreeLeast => "free_least",
        AskedField::FreeMost => "free_most",
        AskedField::RateLeast => "rate_least",
        AskedField::RateMost => "rate_most",
        AskedField::Working => "height",
        AskedField::LoadLeast => "load_least",
        AskedField::LoadMost => "load_most",
        AskedField::Solid => "solid",
        AskedField::StressAtWork => "stress",
        AskedField::StressAtSolid => "stress_solid",
        AskedField::Reserve => "reserve",
        AskedField::Safety => "safety",
        AskedField::Deviation => "deviation",
        _ => "",
    }
}

/// The field of a figure; of a diameter, which of three is not known, the tolerances.
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

//! What standards allow a new coil of the drawing.

use super::Whole;
use crate::coil::Coiling;
use crate::job::desk::Desk;
use crate::job::figures::{sentence, text};
use crate::job::report::{Allowance, Figure};
use crate::quantity::Force;
use crate::source::Source;
use crate::tolerance::{ColdWound, Feature, Grade, NoTolerance, Winding, look_up};

/// Of the middle grade; at half the travel where it goes by the load.
const GRADE: Grade = Grade::Two;

pub(super) fn allowances(desk: &mut Desk<'_>, whole: &Whole<'_>) -> Vec<Allowance> {
    let system = desk.system();
    let elsewhere = |winding, feature: Feature| {
        refused(feature.to_string(), &look_up(winding, feature).sentence(system))
    };
    if whole.coiling() == Coiling::Hot {
        return [Feature::FreeHeight, Feature::Load, Feature::SolidHeight]
            .map(|feature| elsewhere(Winding::Hot, feature))
            .into();
    }
    let spring = match ColdWound::new(whole.coil, whole.turns, whole.free) {
        Ok(spring) => spring,
        Err(error) => return vec![refused("all sizes".to_owned(), &error.sentence(system))],
    };
    let pen = desk.pen;
    let mut all = Vec::new();
    let mut held = |feature: Feature, figure: Figure, source: Source| {
        let half_width =
            desk.ledger.show(figure, "by the standard, grade 2", feature.to_string(), &source);
        all.push(Allowance {
            name: feature.to_string(),
            half_width: Some(half_width),
            sentence: None,
        });
    };
    let free = spring.free_height(GRADE, whole.rate);
    held(Feature::FreeHeight, pen.fine(free.value), free.source);
    let load = whole.rate * (whole.free - whole.solid) * 0.5;
    let allowed = spring.load(GRADE, load);
    let figure = pen.figure::<Force>(allowed.value);
    held(Feature::Load, figure, allowed.source);
    let squareness = spring.squareness(GRADE);
    held(Feature::Squareness, pen.fine(squareness.value), squareness.source);
    let parallelism = spring.parallelism(GRADE);
    held(Feature::Parallelism, pen.fine(parallelism.value), parallelism.source);
    let diameter: Result<_, NoTolerance> = spring.diameter(GRADE, desk.tables.diameters);
    match diameter {
        Ok(diameter) => {
            let figure = pen.fine(diameter.value);
            let name = Feature::Diameter.to_string();
            let half_width = desk.ledger.show(
                figure,
                "by the standard's table, grade 2",
                text!("D = {}", pen.decimal(whole.coil.mean())),
                &diameter.source,
            );
            all.push(Allowance { name, half_width: Some(half_width), sentence: None });
        }
        Err(error) => all.push(refused(Feature::Diameter.to_string(), &error.sentence(system))),
    }
    all.extend(
        [Feature::Rate, Feature::SolidHeight].map(|feature| elsewhere(Winding::Cold, feature)),
    );
    all
}

fn refused(name: String, why: &str) -> Allowance {
    Allowance { name, half_width: None, sentence: Some(sentence(why)) }
}

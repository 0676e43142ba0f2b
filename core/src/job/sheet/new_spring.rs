//! What standards allow a new coil of the drawing.

use super::Whole;
use crate::coil::Coiling;
use crate::job::desk::Desk;
use crate::job::figures::{sentence, text};
use crate::job::report::Allowance;
use crate::quantity::{Force, write_number};
use crate::tolerance::{ColdWound, Feature, Grade, Winding, look_up};

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
    let load = whole.rate * (whole.free - whole.solid) * 0.5;
    let (free, load) = (spring.free_height(GRADE, whole.rate), spring.load(GRADE, load));
    let (square, parallel) = (spring.squareness(GRADE), spring.parallelism(GRADE));
    let mut held = vec![
        (Feature::FreeHeight, pen.fine(free.value), free.source),
        (Feature::Load, pen.figure::<Force>(load.value), load.source),
        (Feature::Squareness, pen.fine(square.value), square.source),
        (Feature::Parallelism, pen.fine(parallel.value), parallel.source),
    ];
    let mut others = vec![
        elsewhere(Winding::Cold, Feature::Rate),
        elsewhere(Winding::Cold, Feature::SolidHeight),
    ];
    match spring.diameter(GRADE, desk.tables.diameters) {
        Ok(width) => held.push((Feature::Diameter, pen.fine(width.value), width.source)),
        Err(error) => {
            others.push(refused(Feature::Diameter.to_string(), &error.sentence(system)));
        }
    }
    let (mean, index) = (pen.decimal(whole.coil.mean()), whole.coil.index());
    let with =
        text!("d = {}, D = {mean}, C = {}", pen.decimal(whole.coil.bar()), write_number(index, 3));
    let held = held.into_iter().map(|(feature, figure, source)| {
        let figure = desk.ledger.show(figure, "by the standard, grade 2", with.clone(), &source);
        Allowance { name: feature.to_string(), half_width: Some(figure), sentence: None }
    });
    held.chain(others).collect()
}

fn refused(name: String, why: &str) -> Allowance {
    Allowance { name, half_width: None, sentence: Some(sentence(why)) }
}

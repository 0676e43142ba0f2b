//! What standards allow a new coil of the drawing.

use super::Whole;
use crate::coil::Coiling;
use crate::job::desk::Desk;
use crate::job::figures::{sentence, text};
use crate::job::formulas;
use crate::job::report::{Allowance, Figure};
use crate::quantity::{Force, SpringRate, write_number};
use crate::say::Say;
use crate::tolerance::{ColdWound, Feature, Grade, Winding, look_up};

/// Of the middle grade.
const GRADE: Grade = Grade::Two;

pub(super) fn allowances(desk: &mut Desk<'_>, whole: &Whole<'_>) -> Vec<Allowance> {
    let system = desk.system();
    let elsewhere = |winding, feature: Feature| {
        refused(feature.to_string(), &look_up(winding, feature).say(system).to_string())
    };
    if whole.drawn.drawing.coiling == Some(Coiling::Hot) {
        return [Feature::FreeHeight, Feature::Load, Feature::SolidHeight]
            .map(|feature| elsewhere(Winding::Hot, feature))
            .into();
    }
    let spring = match ColdWound::new(whole.coil, whole.turns, whole.free) {
        Ok(spring) => spring,
        Err(error) => return vec![refused("all sizes".to_owned(), &error.say(system).to_string())],
    };
    let mut all = vec![free_height(desk, whole, &spring)];
    for (name, at) in loads(whole) {
        all.push(load(desk, &spring, name, at));
    }
    all.push(squareness(desk, whole, &spring));
    all.push(parallelism(desk, whole, &spring));
    all.push(diameter(desk, whole, &spring));
    all.push(elsewhere(Winding::Cold, Feature::Rate));
    all.push(elsewhere(Winding::Cold, Feature::SolidHeight));
    all
}

/// The loads that are given; where none is, that at half the travel.
fn loads(whole: &Whole<'_>) -> Vec<(&'static str, Force)> {
    if let Some((least, most)) = whole.drawn.duty {
        return vec![("lesser load", least), ("greater load", most)];
    }
    let half = (whole.free - whole.solid.greatest) * 0.5;
    vec![("load at half the travel", whole.rate * half)]
}

fn free_height(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.free_height(GRADE, whole.rate);
    let figure = desk.ledger.work(
        pen.fine(allowed.value),
        formulas::FREE_HEIGHT,
        &[
            ("aF", &pen.say::<Force>(spring.basis())),
            ("kF", &write_number(spring.turns_factor(), 4)),
            ("q", &write_number(ColdWound::quality(GRADE), 2)),
            ("k", &pen.say::<SpringRate>(whole.rate)),
        ],
        &allowed.source,
    );
    held(Feature::FreeHeight.to_string(), figure)
}

fn load(desk: &mut Desk<'_>, spring: &ColdWound, name: &str, at: Force) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.load(GRADE, at);
    let figure = desk.ledger.work(
        pen.figure::<Force>(allowed.value),
        formulas::LOAD,
        &[
            ("aF", &pen.say::<Force>(spring.basis())),
            ("kF", &write_number(spring.turns_factor(), 4)),
            ("F", &pen.say::<Force>(at)),
            ("q", &write_number(ColdWound::quality(GRADE), 2)),
        ],
        &allowed.source,
    );
    held(text!("the {name}, {}", pen.say::<Force>(at)), figure)
}

fn squareness(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.squareness(GRADE);
    let figure = desk.ledger.work(
        pen.fine(allowed.value),
        formulas::SQUARENESS,
        &[("L0", &pen.decimal(whole.free))],
        &allowed.source,
    );
    held(Feature::Squareness.to_string(), figure)
}

fn parallelism(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.parallelism(GRADE);
    let figure = desk.ledger.work(
        pen.fine(allowed.value),
        formulas::PARALLELISM,
        &[("De", &pen.decimal(whole.coil.outside()))],
        &allowed.source,
    );
    held(Feature::Parallelism.to_string(), figure)
}

fn diameter(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = match spring.diameter(GRADE, desk.tables.diameters) {
        Ok(allowed) => allowed,
        Err(error) => {
            return refused(Feature::Diameter.to_string(), &error.say(pen.system).to_string());
        }
    };
    let source = text!(
        "{}, row of D = {} and C = {}",
        allowed.source,
        pen.decimal(whole.coil.mean()),
        write_number(whole.coil.index(), 3)
    );
    let figure = pen.fine(allowed.value);
    let by_table = pen.decimal(allowed.value);
    let figure = desk.ledger.work(figure, formulas::DIAMETER, &[("AD", &by_table)], &source);
    held(Feature::Diameter.to_string(), figure)
}

fn held(name: String, figure: Figure) -> Allowance {
    Allowance { name, half_width: Some(figure), sentence: None }
}

fn refused(name: String, why: &str) -> Allowance {
    Allowance { name, half_width: None, sentence: Some(sentence(why)) }
}

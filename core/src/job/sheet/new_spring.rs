//! What standards allow a new coil of the drawing.

use super::Whole;
use crate::coil::Coiling;
use crate::job::desk::Desk;
use crate::job::figures::{sentence, text};
use crate::job::report::{Allowance, Figure};
use crate::quantity::{Force, Length, SpringRate, write_number};
use crate::tolerance::{ColdWound, Feature, Grade, Winding, look_up};

/// Of the middle grade.
const GRADE: Grade = Grade::Two;

pub(super) fn allowances(desk: &mut Desk<'_>, whole: &Whole<'_>) -> Vec<Allowance> {
    let system = desk.system();
    let elsewhere = |winding, feature: Feature| {
        refused(feature.to_string(), &look_up(winding, feature).sentence(system))
    };
    if whole.drawn.drawing.coiling == Some(Coiling::Hot) {
        return [Feature::FreeHeight, Feature::Load, Feature::SolidHeight]
            .map(|feature| elsewhere(Winding::Hot, feature))
            .into();
    }
    let spring = match ColdWound::new(whole.coil, whole.turns, whole.free) {
        Ok(spring) => spring,
        Err(error) => return vec![refused("all sizes".to_owned(), &error.sentence(system))],
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
    let with = text!("{} / {}", basis(desk, spring), pen.say::<SpringRate>(whole.rate));
    let figure = pen.fine(allowed.value);
    let figure = desk.ledger.show(figure, "A = aF · kF · Q / R", with, &allowed.source);
    held(Feature::FreeHeight.to_string(), figure)
}

fn load(desk: &mut Desk<'_>, spring: &ColdWound, name: &str, at: Force) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.load(GRADE, at);
    let with = text!(
        "({} · {} + 1.5 · {}/100) · {}",
        pen.say::<Force>(spring.basis()),
        write_number(spring.turns_factor(), 4),
        pen.say::<Force>(at),
        write_number(ColdWound::quality(GRADE), 2)
    );
    let figure = pen.figure::<Force>(allowed.value);
    let formula = "A = (aF · kF + 1.5 · F/100) · Q, Q = 1 for grade 2";
    let figure = desk.ledger.show(figure, formula, with, &allowed.source);
    held(text!("the {name}, {}", pen.say::<Force>(at)), figure)
}

/// `aF · kF · Q` with its numbers.
fn basis(desk: &Desk<'_>, spring: &ColdWound) -> String {
    text!(
        "{} · {} · {}",
        desk.pen.say::<Force>(spring.basis()),
        write_number(spring.turns_factor(), 4),
        write_number(ColdWound::quality(GRADE), 2)
    )
}

fn squareness(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.squareness(GRADE);
    let with = text!("0.05 · {}", pen.decimal(whole.free));
    let figure = desk.ledger.show(
        pen.fine(allowed.value),
        "e1 = 0.05 · L0 for grade 2",
        with,
        &allowed.source,
    );
    held(Feature::Squareness.to_string(), figure)
}

fn parallelism(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = spring.parallelism(GRADE);
    let with = text!("0.03 · {}", pen.decimal(whole.coil.outside()));
    let figure = desk.ledger.show(
        pen.fine(allowed.value),
        "e2 = 0.03 · De for grade 2",
        with,
        &allowed.source,
    );
    held(Feature::Parallelism.to_string(), figure)
}

fn diameter(desk: &mut Desk<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let pen = desk.pen;
    let allowed = match spring.diameter(GRADE, desk.tables.diameters) {
        Ok(allowed) => allowed,
        Err(error) => return refused(Feature::Diameter.to_string(), &error.sentence(pen.system)),
    };
    let size = |length: Length| pen.decimal(length);
    let with =
        text!("D = {}, C = {}", size(whole.coil.mean()), write_number(whole.coil.index(), 3));
    let formula = "by the table, for D and C, grade 2";
    let figure = desk.ledger.show(pen.fine(allowed.value), formula, with, &allowed.source);
    held(Feature::Diameter.to_string(), figure)
}

fn held(name: String, figure: Figure) -> Allowance {
    Allowance { name, half_width: Some(figure), sentence: None }
}

fn refused(name: String, why: &str) -> Allowance {
    Allowance { name, half_width: None, sentence: Some(sentence(why)) }
}

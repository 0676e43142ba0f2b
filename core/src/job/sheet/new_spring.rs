//! What standards allow a new coil of the drawing.

use super::Whole;
use crate::coil::Coiling;
use crate::job::context::Context;
use crate::job::figures::{sentence, text};
use crate::job::formulas;
use crate::job::report::{Allowance, Figure};
use crate::quantity::{Force, SpringRate, write_number};
use crate::say::Say;
use crate::tolerance::{ColdWound, Feature, Grade, Winding, look_up};

/// Of the middle grade.
const GRADE: Grade = Grade::Two;

pub(super) fn allowances(context: &mut Context<'_>, whole: &Whole<'_>) -> Vec<Allowance> {
    let system = context.system();
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
    let mut all = vec![free_height(context, whole, &spring)];
    for (name, at) in loads(whole) {
        all.push(load(context, &spring, name, at));
    }
    all.push(squareness(context, whole, &spring));
    all.push(parallelism(context, whole, &spring));
    all.push(diameter(context, whole, &spring));
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

fn free_height(context: &mut Context<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let format = context.format;
    let allowed = spring.free_height(GRADE, whole.rate);
    let figure = context.ledger.work(
        format.fine(allowed.value),
        formulas::FREE_HEIGHT,
        &[
            ("aF", &format.say::<Force>(spring.basis())),
            ("kF", &write_number(spring.turns_factor(), 4)),
            ("q", &write_number(ColdWound::quality(GRADE), 2)),
            ("k", &format.say::<SpringRate>(whole.rate)),
        ],
        &allowed.source,
    );
    held(Feature::FreeHeight.to_string(), figure)
}

fn load(context: &mut Context<'_>, spring: &ColdWound, name: &str, at: Force) -> Allowance {
    let format = context.format;
    let allowed = spring.load(GRADE, at);
    let figure = context.ledger.work(
        format.figure::<Force>(allowed.value),
        formulas::LOAD,
        &[
            ("aF", &format.say::<Force>(spring.basis())),
            ("kF", &write_number(spring.turns_factor(), 4)),
            ("F", &format.say::<Force>(at)),
            ("q", &write_number(ColdWound::quality(GRADE), 2)),
        ],
        &allowed.source,
    );
    held(text!("the {name}, {}", format.say::<Force>(at)), figure)
}

fn squareness(context: &mut Context<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let format = context.format;
    let allowed = spring.squareness(GRADE);
    let figure = context.ledger.work(
        format.fine(allowed.value),
        formulas::SQUARENESS,
        &[("L0", &format.decimal(whole.free))],
        &allowed.source,
    );
    held(Feature::Squareness.to_string(), figure)
}

fn parallelism(context: &mut Context<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let format = context.format;
    let allowed = spring.parallelism(GRADE);
    let figure = context.ledger.work(
        format.fine(allowed.value),
        formulas::PARALLELISM,
        &[("De", &format.decimal(whole.coil.outside()))],
        &allowed.source,
    );
    held(Feature::Parallelism.to_string(), figure)
}

fn diameter(context: &mut Context<'_>, whole: &Whole<'_>, spring: &ColdWound) -> Allowance {
    let format = context.format;
    let allowed = match spring.diameter(GRADE, context.tables.diameters) {
        Ok(allowed) => allowed,
        Err(error) => {
            return refused(Feature::Diameter.to_string(), &error.say(format.system).to_string());
        }
    };
    let source = text!(
        "{}, row of D = {} and C = {}",
        allowed.source,
        format.decimal(whole.coil.mean()),
        write_number(whole.coil.index(), 3)
    );
    let figure = format.fine(allowed.value);
    let by_table = format.decimal(allowed.value);
    let figure = context.ledger.work(figure, formulas::DIAMETER, &[("AD", &by_table)], source);
    held(Feature::Diameter.to_string(), figure)
}

fn held(name: String, figure: Figure) -> Allowance {
    Allowance { name, half_width: Some(figure), sentence: None }
}

fn refused(name: String, why: &str) -> Allowance {
    Allowance { name, half_width: None, sentence: Some(sentence(why)) }
}

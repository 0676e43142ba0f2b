//! What the ends do between plates, beside the textbook's count of dead turns.

use super::trust;
use crate::coil::plates::{self, Band, Stage};
use crate::coil::{ends::Ends, ends::Turns, rate};
use crate::drawing::{Figure as Asked, Given};
use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::figures::text;
use crate::job::formulas;
use crate::job::report::{EndsReport, EndsStage, Figure};
use crate::quantity::{self, Modulus, SpringRate};

/// None for ends that were not computed, and where the drawing gives no rate.
pub(super) fn of(context: &mut Context<'_>, drawn: &Coil) -> Option<EndsReport> {
    let (coil, turns, ends) = (drawn.diameters()?, drawn.turns()?, drawn.drawing.ends?);
    let (shear, taken) = (drawn.shear()?, drawn.drawing.dead()?);
    let format = context.format;
    let mut stages = Vec::new();
    let mut bands = Vec::new();
    for stage in Stage::ALL {
        let band = plates::dead_turns(ends, stage)?;
        let mut at = |dead: f64| -> Option<Figure> {
            let turns = Turns::new(turns.total(), dead).ok()?;
            let figure = format.figure::<SpringRate>(rate::rate(shear, coil, turns));
            let source = text!("{}; dead turns: {}", rate::SOURCE, plates::SOURCE);
            Some(context.ledger.work(
                figure,
                rate::FORMULA_OF_ALL_TURNS,
                &[
                    ("G", &format.say::<Modulus>(shear)),
                    ("d", &format.decimal(coil.bar())),
                    ("D", &format.decimal(coil.mean())),
                    ("nt", &count(turns.total())),
                    ("nd", &count(dead)),
                ],
                source,
            ))
        };
        let (least, most) = (at(band.least)?, at(band.most)?);
        stages.push(EndsStage {
            name: name(stage).into(),
            dead: dead(context, band, stage),
            least,
            most,
        });
        bands.push((stage, band));
    }
    let mut said = sentence(taken, ends, &bands);
    if trust::ends_outweigh(drawn) {
        let more = text!(
            " With {} turns at work this outweighs everything else that is not known of the rate.",
            count(turns.active())
        );
        said.push_str(&more);
    }
    said.push_str(" A press test settles it.");
    Some(EndsReport { stages, sentence: said })
}

fn count(turns: f64) -> String {
    quantity::write_number(turns, 4)
}

fn span(band: Band) -> String {
    let tenth = |turns| quantity::write_fixed(turns, 1);
    text!("{} to {}", tenth(band.least), tenth(band.most))
}

const fn name(stage: Stage) -> &'static str {
    match stage {
        Stage::Light => "Light, the first tenth of the travel",
        Stage::AtWork => "At work, from 30 to 70\u{a0}%",
        Stage::NearSolid => "Near solid, from 70 to 90\u{a0}%",
    }
}

fn dead(context: &mut Context<'_>, band: Band, stage: Stage) -> Figure {
    let middle = f64::midpoint(band.least, band.most);
    let figure = Figure { text: span(band), ..context.format.figure::<quantity::Turns>(middle) };
    let over = match stage {
        Stage::Light => "the first tenth of the travel",
        Stage::AtWork => "30 to 70 % of the travel",
        Stage::NearSolid => "70 to 90 % of the travel",
    };
    let source = text!("{}, the middle of what they give over {over}", plates::SOURCE);
    let middle = count(middle);
    context.ledger.work(figure, formulas::DEAD_TURNS, &[("nd", &middle)], source)
}

fn sentence(dead: Given<f64>, ends: Ends, bands: &[(Stage, Band)]) -> String {
    let within = dead.range(Asked::DeadTurns);
    let outside: Vec<&str> = bands
        .iter()
        .filter(|(_, band)| band.least < within.least() || band.most > within.most())
        .map(|(stage, _)| match stage {
            Stage::Light => "when light",
            Stage::AtWork => "at work",
            Stage::NearSolid => "near solid",
        })
        .collect();
    let taken = match dead.half_width() {
        0.0 => text!("The {}, taken as exact here,", count(dead.nominal())),
        by => text!("The {} ± {} taken here", count(dead.nominal()), count(by)),
    };
    let mut said = "Between plates the dead turns grow with the load: the end turns lie down on their neighbours, and the coil gets stiffer.".to_owned();
    said.push_str(&if outside.is_empty() {
        text!(" {taken} holds throughout.")
    } else {
        text!(" {taken} does not hold {}.", quantity::joined(outside.iter(), " and "))
    });
    if ends == Ends::TaperedGround {
        said.push_str(&text!(
            " This is for tips tapered over 3/4 to 1 turn that just touch. Tapered over half a turn, {} lie dead at work; with a tip open by a twentieth of the bar, {} when light.",
            span(plates::half_turn_taper(Stage::AtWork)),
            span(plates::OPEN_TIP_LIGHT)
        ));
    }
    said
}

//! What the steel bears: at solid, under the two loads of its work, and between them for long.

use super::Whole;
use crate::coil::fatigue::{self, Criterion, Cycle, Strength, Surface};
use crate::coil::solid::Solid;
use crate::coil::stress::Factor;
use crate::coil::{bar, growth, rate, set, stress};
use crate::job::context::Context;
use crate::job::drawing::{Pressed, as_given, show_stress, show_stress_at};
use crate::job::figures::{Format, sentence, text};
use crate::job::formulas::{self, letter};
use crate::job::report::{DutyState, Fatigue, Figure, Safety, Sheet, Standing};
use crate::material::{Allowable, Presetting, Steel};
use crate::quantity::{self, Angle, Force, Length, Pressure, Stress};
use crate::say::Say;

pub(super) fn fill(context: &mut Context<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    let Some(steel) = whole.drawn.steel else { return };
    sheet.standing = Some(standing(
        context,
        whole,
        &steel,
        whole.drawn.drawing.presetting.unwrap_or(Presetting::AsWound),
    ));
    let Some((least, most)) = whole.drawn.duty else { return };
    let closes = whole.rate * (whole.free - whole.solid.greatest);
    if let Some(past) = [least, most].into_iter().find(|load| *load > closes) {
        let format = context.format;
        let sentence = text!(
            "{} is more than the {} that close it solid: give loads below that.",
            format.say::<Force>(past),
            format.say::<Force>(closes)
        );
        sheet.fatigue = Some(refused(sentence));
        return;
    }
    sheet.duty = [least, most].into_iter().map(|load| under(context, whole, load)).collect();
    sheet.fatigue = Some(between(context, whole, &steel, (least, most)));
}

fn standing(
    context: &mut Context<'_>,
    whole: &Whole<'_>,
    steel: &Steel,
    presetting: Presetting,
) -> Standing {
    let format = context.format;
    let Whole { coil, free, solid: Solid { least: solid, .. }, rate, .. } = *whole;
    let bar = coil.bar();
    let mut report = Standing {
        tensile: None,
        allowable: None,
        stress: None,
        factor: None,
        reserve: None,
        sets: None,
        sentence: String::new(),
    };
    if let Err(error) = steel.fits(bar) {
        report.sentence = sentence(&error.say(format.system).to_string());
        return report;
    }
    let tensile = match steel.strength(bar) {
        Ok(tensile) => tensile,
        Err(error) => {
            report.sentence = sentence(&error.say(format.system).to_string());
            return report;
        }
    };
    let figure = format.figure::<Stress>(tensile.value);
    let source = text!("{}, for a bar of {}", tensile.source, format.decimal(bar));
    let by_table = format.exact::<Stress>(tensile.value);
    let figure = context.ledger.work(figure, formulas::TENSILE, &[("Rm", &by_table)], source);
    report.tensile = Some(context.ledger.cite(figure, steel.row()));
    let Allowable { stress: allowed, against, .. } = match steel.allowable_static(bar, presetting) {
        Ok(allowable) => allowable,
        Err(error) => {
            report.sentence = sentence(&error.say(format.system).to_string());
            return report;
        }
    };
    let factor = set::meant(against);
    report.factor = Some(factor.name().into());
    let share = quantity::write_fixed((allowed.value / tensile.value).value * 100.0, 1);
    let figure = context.ledger.work(
        format.figure::<Stress>(allowed.value),
        formulas::ALLOWABLE,
        &[("j", &text!("{share} %")), ("Rm", &format.say::<Stress>(tensile.value))],
        &allowed.source,
    );
    report.allowable = Some(context.ledger.cite(figure, steel.row()));
    let load = rate * (free - solid);
    let Ok(at_solid) = set::at_solid(coil, load, allowed.value, against) else { return report };
    let pressed = Pressed { rate, free, to: solid };
    report.stress = Some(show_stress_at(context, coil, pressed, factor));
    report.reserve = Some(context.ledger.work(
        Format::percent(at_solid.reserve(), 0),
        formulas::RESERVE,
        &[
            ("τc", &format.say::<Stress>(at_solid.stress)),
            ("τz", &format.say::<Stress>(at_solid.allowable)),
        ],
        "definition",
    ));
    report.sets = Some(at_solid.sets());
    let compared = text!(
        "the stress at solid, {}, is {}, {} the {} that such wire bears",
        factor.name(),
        format.say::<Stress>(at_solid.stress),
        if at_solid.sets() { "above" } else { "below" },
        format.say::<Stress>(at_solid.allowable)
    );
    report.sentence = if at_solid.sets() {
        text!(
            "A new coil of this drawing, of wire no stronger than the least of the table, takes a set when it is closed solid: {compared}. Do not press it below {}.",
            format.height(at_solid.least_height(free, solid)).text
        )
    } else {
        text!(
            "A new coil of this drawing, of wire at least as strong as the least of the table, comes back when it is closed solid: {compared}. It says nothing of a coil that has been in service, whose steel nobody has tested: tape it, close it on a press and tape it again."
        )
    };
    report
}

fn under(context: &mut Context<'_>, whole: &Whole<'_>, load: Force) -> DutyState {
    let format = context.format;
    let Whole { coil, free, rate, .. } = *whole;
    let height = free - load / rate;
    let height_figure = context.ledger.work(
        format.height(height),
        rate::HEIGHT,
        &[
            ("L0", &format.decimal(free)),
            ("F", &format.say::<Force>(load)),
            ("k", &format.say::<quantity::SpringRate>(rate)),
        ],
        "definition",
    );
    let loaded = format.figure::<Force>(load);
    let load_figure = as_given::<Force>(context, loaded, letter!("F"), "the load as given");
    DutyState {
        load: load_figure,
        height: height_figure,
        stress: show_stress(context, coil, load, Factor::Uncorrected),
        stress_corrected: show_stress(context, coil, load, Factor::Bergstrasser),
        growth: grown(context, whole, height),
        gap: gap(context, whole, height),
    }
}

fn gap(context: &mut Context<'_>, whole: &Whole<'_>, height: Length) -> Option<Figure> {
    let format = context.format;
    let bar = whole.coil.bar();
    let (pitch, source) = whole.pitch_at(height);
    (pitch >= bar).then(|| {
        context.ledger.work(
            format.fine(pitch - bar),
            formulas::GAP_OF_TURNS,
            &[("p1", &format.decimal(pitch)), ("d", &format.decimal(bar))],
            &source,
        )
    })
}

fn radians(angle: Angle) -> String {
    text!("{} rad", quantity::write_number(angle.value, 7))
}

fn grown(context: &mut Context<'_>, whole: &Whole<'_>, height: Length) -> Option<Figure> {
    let format = context.format;
    let pitch = whole.drawn.pitch()?;
    let poisson = whole.drawn.drawing.poisson().ok()?;
    let coil = whole.coil;
    let (now, _) = whole.pitch_at(height);
    if now < coil.bar() || now > pitch {
        return None;
    }
    let growth = growth::larger(coil, pitch, now, poisson);
    let held = growth::held(coil, pitch, now) >= growth::free(coil, pitch, now, poisson);
    Some(context.ledger.work(
        format.fine(growth),
        if held { growth::HELD_AT } else { growth::FREE_AT },
        &[
            ("p", &format.decimal(pitch)),
            ("p1", &format.decimal(now)),
            ("D", &format.decimal(coil.mean())),
            ("β", &quantity::write_number(1.0 / (1.0 + poisson), 5)),
            ("α", &radians(bar::pitch_angle(coil, pitch))),
            ("α1", &radians(growth::angle_now(coil, pitch, now))),
        ],
        if held { &growth::HELD_SOURCE } else { &growth::FREE_ROD_SOURCE },
    ))
}

fn between(
    context: &mut Context<'_>,
    whole: &Whole<'_>,
    steel: &Steel,
    (least, most): (Force, Force),
) -> Fatigue {
    let format = context.format;
    let coil = whole.coil;
    let cycle = match Cycle::between(coil, least, most) {
        Ok(cycle) => cycle,
        Err(error) => return refused(sentence(&error.say(format.system).to_string())),
    };
    let mut report = refused(String::new());
    let mut show = |stress: Pressure, formula| {
        Some(context.ledger.work(
            format.figure::<Stress>(stress),
            formula,
            &[
                ("KB", &quantity::write_number(Factor::Bergstrasser.at(coil.index()), 5)),
                ("F1", &format.say::<Force>(least)),
                ("F2", &format.say::<Force>(most)),
                ("D", &format.decimal(coil.mean())),
                ("d", &format.decimal(coil.bar())),
            ],
            &fatigue::CYCLE_SOURCE,
        ))
    };
    report.amplitude = show(cycle.amplitude(), fatigue::AMPLITUDE);
    report.mean = show(cycle.mean(), fatigue::MEAN);
    if let Err(error) = fatigue::tested(coil.bar()) {
        report.sentence = sentence(&error.say(format.system).to_string());
        return report;
    }
    let strength = match strength(steel, whole) {
        Ok(strength) => strength,
        Err(error) => {
            report.sentence = sentence(&error.say(format.system).to_string());
            return report;
        }
    };
    let surface = whole.drawn.drawing.surface.unwrap_or(Surface::Unpeened);
    for criterion in Criterion::ALL {
        let name = match criterion {
            Criterion::Goodman => "Goodman",
            Criterion::Gerber => "Gerber",
            Criterion::Sines => "Sines",
        };
        match fatigue::endurance(cycle, strength, surface, criterion) {
            Ok(found) => {
                let source = text!("{}; {}", fatigue::SOURCE, fatigue::ZIMMERLI);
                let figure = Format::number(found.safety, 3);
                let ultimate = fatigue::torsional_ultimate(strength.tensile);
                let factor = context.ledger.work(
                    figure,
                    criterion.formula(),
                    &[
                        ("τa", &format.say::<Stress>(cycle.amplitude())),
                        ("τm", &format.say::<Stress>(cycle.mean())),
                        ("Sse", &format.say::<Stress>(found.reversed)),
                        ("Ssu", &format.say::<Stress>(ultimate)),
                    ],
                    source,
                );
                report.safety.push(Safety { name: name.into(), factor });
            }
            Err(error) => {
                report.sentence = sentence(&error.say(format.system).to_string());
                return report;
            }
        }
    }
    report.sentence = if report.safety.iter().any(|safety| safety.factor.si < 1.0) {
        "A factor below 1 does not last: bring the two loads nearer to each other or take a thicker bar."
    } else {
        "A factor above 1 lasts without end, as far as the tests of wire go; scale, rust, nicks and hot winding shorten that."
    }
    .into();
    report
}

/// The yield strength in torsion, for the stress with Bergsträsser's factor that a cycle has.
fn strength(steel: &Steel, whole: &Whole<'_>) -> Result<Strength, crate::material::StrengthError> {
    let bar = whole.coil.bar();
    let tensile = steel.strength(bar)?.value;
    let allowable = steel.allowable_static(bar, Presetting::AsWound)?;
    let index = whole.coil.index();
    let torsional_yield = allowable.stress.value * stress::bergstrasser(index)
        / set::factor(allowable.against, index);
    Ok(Strength { tensile, torsional_yield })
}

fn refused(sentence: String) -> Fatigue {
    Fatigue { amplitude: None, mean: None, safety: Vec::new(), sentence }
}

//! What the steel bears: at solid, under the two loads of its work, and between them for long.

use super::Whole;
use crate::coil::fatigue::{self, Criterion, Cycle, FatigueError, Strength, Surface};
use crate::coil::solid::Solid;
use crate::coil::stress::Factor;
use crate::coil::{growth, set, stress};
use crate::job::desk::Desk;
use crate::job::drawing::{closing_load, show_stress};
use crate::job::figures::{Pen, sentence, text};
use crate::job::report::{DutyState, Fatigue, Figure, Safety, Sheet, Standing};
use crate::material::{Allowable, Presetting, Steel};
use crate::quantity::{self, Force, Length, Pressure, Stress};

pub(super) fn fill(desk: &mut Desk<'_>, sheet: &mut Sheet, whole: &Whole<'_>) {
    let Some(steel) = whole.drawn.steel else { return };
    sheet.standing = Some(standing(
        desk,
        whole,
        &steel,
        whole.drawn.drawing.presetting.unwrap_or(Presetting::AsWound),
    ));
    let Some((least, most)) = whole.drawn.duty else { return };
    let closes = whole.rate * (whole.free - whole.solid.greatest);
    if let Some(past) = [least, most].into_iter().find(|load| *load > closes) {
        let pen = desk.pen;
        let sentence = text!(
            "{} is more than the {} that close it solid: give loads below that.",
            pen.say::<Force>(past),
            pen.say::<Force>(closes)
        );
        sheet.fatigue = Some(refused(sentence));
        return;
    }
    sheet.duty = [least, most].into_iter().map(|load| under(desk, whole, load)).collect();
    sheet.fatigue = Some(between(desk, whole, &steel, (least, most)));
}

fn standing(
    desk: &mut Desk<'_>,
    whole: &Whole<'_>,
    steel: &Steel,
    presetting: Presetting,
) -> Standing {
    let pen = desk.pen;
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
        report.sentence = sentence(&error.sentence(pen.system));
        return report;
    }
    let tensile = match steel.strength(bar) {
        Ok(tensile) => tensile,
        Err(error) => {
            report.sentence = sentence(&error.sentence(pen.system));
            return report;
        }
    };
    let with = pen.decimal(bar).to_string();
    let figure = pen.figure::<Stress>(tensile.value);
    let figure = desk.ledger.show(figure, "Rm of the bar's size", with, &tensile.source);
    report.tensile = Some(desk.ledger.cite(figure, steel.row()));
    let Allowable { stress: allowed, against, .. } = match steel.allowable_static(bar, presetting) {
        Ok(allowable) => allowable,
        Err(error) => {
            report.sentence = sentence(&error.sentence(pen.system));
            return report;
        }
    };
    let factor = set::meant(against);
    report.factor = Some(factor.name());
    let share = quantity::write_fixed((allowed.value / tensile.value).value * 100.0, 1);
    let figure = desk.ledger.show(
        pen.figure::<Stress>(allowed.value),
        "τz = share · Rm",
        text!("{share} % · {}", pen.say::<Stress>(tensile.value)),
        &allowed.source,
    );
    report.allowable = Some(desk.ledger.cite(figure, steel.row()));
    let load = rate * (free - solid);
    let Ok(at_solid) = set::at_solid(coil, load, allowed.value, against) else { return report };
    let from = closing_load(pen, rate, free, solid);
    report.stress = Some(show_stress(desk, coil, load, factor, &from));
    report.reserve = Some(desk.ledger.show(
        Pen::percent(at_solid.reserve(), 0),
        "1 − τc/τz",
        text!(
            "1 − {} / {}",
            pen.say::<Stress>(at_solid.stress),
            pen.say::<Stress>(at_solid.allowable)
        ),
        &"definition",
    ));
    report.sets = Some(at_solid.sets());
    let compared = text!(
        "the stress at solid, {}, is {}, {} the {} that such wire bears",
        factor.name(),
        pen.say::<Stress>(at_solid.stress),
        if at_solid.sets() { "above" } else { "below" },
        pen.say::<Stress>(at_solid.allowable)
    );
    report.sentence = if at_solid.sets() {
        text!(
            "A new coil of this drawing, of wire no stronger than the least of the table, takes a set when it is closed solid: {compared}. Do not press it below {}.",
            pen.height(at_solid.least_height(free, solid)).text
        )
    } else {
        text!(
            "A new coil of this drawing, of wire at least as strong as the least of the table, comes back when it is closed solid: {compared}. It says nothing of a coil that has been in service, whose steel nobody has tested: tape it, close it on a press and tape it again."
        )
    };
    report
}

fn under(desk: &mut Desk<'_>, whole: &Whole<'_>, load: Force) -> DutyState {
    let pen = desk.pen;
    let Whole { coil, free, rate, .. } = *whole;
    let height = free - load / rate;
    let with = text!(
        "{} − {} / {}",
        pen.decimal(free),
        pen.say::<Force>(load),
        pen.say::<quantity::SpringRate>(rate)
    );
    let figure = pen.height(height);
    let height_figure = desk.ledger.show(figure, "L = L0 − F / R", with, &"definition");
    let loaded = pen.figure::<Force>(load);
    let load_figure = crate::job::drawing::as_given(desk, loaded, "F", "the load as given");
    DutyState {
        load: load_figure,
        height: height_figure,
        stress: show_stress(desk, coil, load, Factor::Uncorrected, ""),
        stress_corrected: show_stress(desk, coil, load, Factor::Bergstrasser, ""),
        growth: grown(desk, whole, height),
        gap: gap(desk, whole, height),
    }
}

fn gap(desk: &mut Desk<'_>, whole: &Whole<'_>, height: Length) -> Option<Figure> {
    let pen = desk.pen;
    let bar = whole.coil.bar();
    let (pitch, source) = whole.pitch_at(height);
    let with = text!("{} − {}", pen.decimal(pitch), pen.decimal(bar));
    let figure = pen.fine(pitch - bar);
    (pitch >= bar).then(|| desk.ledger.show(figure, "gap = p − d", with, &source))
}

fn grown(desk: &mut Desk<'_>, whole: &Whole<'_>, height: Length) -> Option<Figure> {
    let pen = desk.pen;
    let pitch = whole.drawn.pitch()?;
    let poisson = whole.drawn.drawing.poisson().ok()?;
    let coil = whole.coil;
    let (now, _) = whole.pitch_at(height);
    if now < coil.bar() || now > pitch {
        return None;
    }
    let growth = growth::larger(coil, pitch, now, poisson);
    let with = text!(
        "p = {}, p1 = {}, D = {}, μ = {}",
        pen.decimal(pitch),
        pen.decimal(now),
        pen.decimal(coil.mean()),
        quantity::write_number(poisson, 3)
    );
    let source = text!("{}; {}", growth::HELD_SOURCE, growth::FREE_ROD_SOURCE);
    let formula = "the larger of ends held and ends free to turn";
    Some(desk.ledger.show(pen.fine(growth), formula, with, &source))
}

fn between(
    desk: &mut Desk<'_>,
    whole: &Whole<'_>,
    steel: &Steel,
    (least, most): (Force, Force),
) -> Fatigue {
    let pen = desk.pen;
    let coil = whole.coil;
    let cycle = match Cycle::between(coil, least, most) {
        Ok(cycle) => cycle,
        Err(error) => return refused(said(pen, &error)),
    };
    let mut report = refused(String::new());
    let [lesser, greater] = [least, most].map(|load| pen.say::<Force>(load));
    let numbers = text!(
        "K = {}, F1 = {lesser}, F2 = {greater}, D = {}, d = {}",
        quantity::write_number(Factor::Bergstrasser.at(coil.index()), 4),
        pen.decimal(coil.mean()),
        pen.decimal(coil.bar())
    );
    let mut show = |stress: Pressure, formula, with| {
        let figure = pen.figure::<Stress>(stress);
        Some(desk.ledger.show(figure, formula, with, &fatigue::CYCLE_SOURCE))
    };
    report.amplitude = show(
        cycle.amplitude(),
        "τa = K · 8 · (F2 − F1)/2 · D/(π d³), with Bergsträsser's factor K",
        text!("{numbers}"),
    );
    report.mean = show(
        cycle.mean(),
        "τm = K · 8 · (F2 + F1)/2 · D/(π d³), with Bergsträsser's factor K",
        numbers,
    );
    if let Err(error) = fatigue::tested(coil.bar()) {
        report.sentence = said(pen, &error);
        return report;
    }
    let strength = match strength(steel, whole) {
        Ok(strength) => strength,
        Err(error) => {
            report.sentence = sentence(&error.sentence(pen.system));
            return report;
        }
    };
    let surface = whole.drawn.drawing.surface.unwrap_or(Surface::Unpeened);
    for criterion in Criterion::ALL {
        let (name, formula) = match criterion {
            Criterion::Goodman => ("Goodman", "n = Ssa / τa on τa/Sse + τm/Ssu = 1/n"),
            Criterion::Gerber => ("Gerber", "n = Ssa / τa on τa/Sse + (τm/Ssu)² = 1"),
            Criterion::Sines => ("Sines", "n = Ssa / τa"),
        };
        match fatigue::endurance(cycle, strength, surface, criterion) {
            Ok(found) => {
                let with = text!(
                    "{} / {}, Ssu = 0.67 · {}",
                    pen.say::<Stress>(found.amplitude),
                    pen.say::<Stress>(cycle.amplitude()),
                    pen.say::<Stress>(strength.tensile)
                );
                let source = text!("{}; {}", fatigue::SOURCE, fatigue::ZIMMERLI);
                let figure = Pen::number(found.safety, 3);
                let factor = desk.ledger.show(figure, formula, with, &source);
                report.safety.push(Safety { name, factor });
            }
            Err(error) => {
                report.sentence = said(pen, &error);
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

/// Why there is no life to be told, in the units of the job.
fn said(pen: Pen, error: &FatigueError) -> String {
    match *error {
        FatigueError::Loads { least, greatest } => text!(
            "Loads from {} to {}: the greater must be above the lesser.",
            pen.say::<Force>(least),
            pen.say::<Force>(greatest)
        ),
        FatigueError::Bar { bar, most } => text!(
            "A bar of {}: the tests are of wire up to {}, so its life cannot be told from them. Ask the maker for a diagram of the coil's own size.",
            pen.decimal(bar),
            pen.decimal(most)
        ),
        FatigueError::Tensile { tensile, least } => text!(
            "A tensile strength of {}: above {} was expected, or the stresses of the tests would break it.",
            pen.say::<Stress>(tensile),
            pen.say::<Stress>(least)
        ),
        FatigueError::Yields { stress, torsional_yield } => text!(
            "A stress of {} is beyond the {} at which it yields in torsion: the coil sets. Lower the load or take a thicker bar.",
            pen.say::<Stress>(stress),
            pen.say::<Stress>(torsional_yield)
        ),
    }
}

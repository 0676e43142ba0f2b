//! The drawing sheet of a coil: what follows from its drawing beyond what a nest needs.

use super::desk::Desk;
use super::drawing::{self, Facts, GEOMETRY, as_given};
use super::entry::Entry;
use super::figures::{Pen, axes, text};
use super::input::Job;
use super::problem::Path;
use super::report::{CoilReport, Sheet, SheetAnswer, Workings};
use super::{assess, cut, file, unassessed};
use crate::coil::{Diameters, growth};
use crate::quantity::Angle;
use crate::tables::Tables;

/// The drawing sheet of the coil that has this name in a job.
#[must_use]
pub fn coil_sheet(job: &Job, tables: &Tables<'_>, coil_id: &str) -> SheetAnswer {
    if let Some(problem) = file::refused_format(job) {
        return SheetAnswer { problem: Some(problem), ..SheetAnswer::default() };
    }
    let mut desk = Desk::new(tables, assess::pen(job));
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let id_of =
        |drawing: &super::input::Drawing| drawing.id.given().map(|id| id.0.trim().to_owned());
    let named = drawings
        .iter()
        .filter_map(Entry::given)
        .find(|drawing| id_of(drawing).as_deref() == Some(coil_id));
    let Some(drawing) = named else {
        let names: Vec<String> =
            drawings.iter().filter_map(Entry::given).filter_map(id_of).collect();
        unassessed::expect_known(&mut desk, &Path::default(), coil_id, &names, "no-such-coil");
        return SheetAnswer { problem: desk.problems.into_iter().next(), ..SheetAnswer::default() };
    };
    let (facts, coil) = drawing::assess(&mut desk, &Path::default(), drawing);
    let sheet = filled(&mut desk, &facts, coil);
    SheetAnswer { sheet: Some(sheet), problem: None, workings: Workings(desk.ledger.entries) }
}

fn filled(desk: &mut Desk<'_>, facts: &Facts, coil: CoilReport) -> Sheet {
    let pen = desk.pen;
    let mut sheet = Sheet {
        coil,
        section: cut::free(facts, pen.system),
        axes: axes(pen.system),
        ..Sheet::default()
    };
    if let Some(free) = facts.free {
        sheet.free = Some(as_given(desk, pen.height(free), "L0", "the book's free height"));
    }
    if let (Some(free), Some(solid)) = (facts.free, facts.solid) {
        let with = text!("{} − {}", pen.decimal(free), pen.decimal(solid));
        let figure = pen.height(free - solid);
        sheet.travel = Some(desk.ledger.show(figure, "travel = L0 − Lc", with, &"definition"));
    }
    if let Some(coil) = facts.diameters {
        diameters(desk, &mut sheet, coil);
        helix(desk, &mut sheet, facts, coil);
    }
    sheet
}

fn diameters(desk: &mut Desk<'_>, sheet: &mut Sheet, coil: Diameters) {
    let pen = desk.pen;
    sheet.bar = Some(as_given(desk, pen.size(coil.bar()), "d", "the drawing"));
    let [bar, mean, outside] =
        [coil.bar(), coil.mean(), coil.outside()].map(|size| pen.decimal(size));
    let mut show =
        |size, formula, with| Some(desk.ledger.show(pen.size(size), formula, with, &GEOMETRY));
    sheet.mean = show(coil.mean(), "D = De − d", text!("{outside} − {bar}"));
    sheet.outside = show(coil.outside(), "De = D + d", text!("{mean} + {bar}"));
    sheet.inside = show(coil.inside(), "Di = D − d", text!("{mean} − {bar}"));
}

fn helix(desk: &mut Desk<'_>, sheet: &mut Sheet, facts: &Facts, coil: Diameters) {
    let Some(pitch) = facts.pitch else { return };
    let pen = desk.pen;
    let [p, bar, mean] = [pitch, coil.bar(), coil.mean()].map(|size| pen.decimal(size));
    let tangent = pitch.value / (core::f64::consts::PI * coil.mean().value);
    sheet.pitch_angle = Some(desk.ledger.show(
        Pen::angle(Angle { value: libm::atan(tangent), ..Angle::default() }),
        "tan α = p / (π · D)",
        text!("{p} / (π · {mean})"),
        &"geometry of the helix",
    ));
    sheet.growth_held = Some(desk.ledger.show(
        pen.fine(growth::held(coil, pitch, coil.bar())),
        "ΔD = √(D² + (p² − d²)/π²) − D",
        text!("√(({mean})² + (({p})² − ({bar})²)/π²) − {mean}"),
        &growth::HELD_SOURCE,
    ));
    sheet.growth_free = Some(desk.ledger.show(
        pen.fine(growth::free_at_solid(coil, pitch)),
        "ΔDe = 0.1 · (p² − 0.8 p d − 0.2 d²) / D",
        text!("p = {p}, d = {bar}, D = {mean}"),
        &growth::FREE_SOURCE,
    ));
}

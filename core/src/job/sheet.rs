//! The drawing sheet of a coil: all that follows from its drawing, beyond what a nest needs.

mod ends;
mod new_spring;
mod press;
mod shape;
mod stability;
mod steel;
mod strength;
mod taped;
mod trust;

use super::coil::Coil;
use super::context::Context;
use super::entry::Entry;
use super::figures::{axes, sentence, text};
use super::input::{Drawing, Job};
use super::problem::Path;
use super::report::{Sheet, SheetAnswer, Workings};
use super::{answer, cut, drawing, file};
use crate::coil::ends::{Ends, Turns};
use crate::coil::solid::Solid;
use crate::coil::{Diameters, proportions, solid};
use crate::quantity::{Length, SpringRate};
use crate::source::Source;
use crate::tables::Tables;

/// The drawing sheet of the coil that has this name in a job, or of the candidate for a replacement that
/// stands at this path, as `replace.candidates[0]`.
#[must_use]
pub fn coil_sheet(job: &Job, tables: &Tables<'_>, coil_id: &str) -> SheetAnswer {
    if let Some(problem) = file::refused_format(job) {
        return SheetAnswer { problem: Some(problem), ..SheetAnswer::default() };
    }
    let mut context = Context::new(tables, answer::format(job));
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let drawings = || drawings.iter().filter_map(Entry::given);
    let coil = drawings().find(|drawing| drawing.id.written() == coil_id);
    let Some(drawing) = coil.or_else(|| candidate(job, coil_id)) else {
        let names: Vec<String> =
            drawings().map(|drawing: &Drawing| drawing.id.written().to_owned()).collect();
        context.known(&Path::default(), coil_id, &names, "no-such-coil");
        return SheetAnswer {
            problem: context.problems.into_iter().next(),
            ..SheetAnswer::default()
        };
    };
    let drawn = Coil::read(&mut context, &Path::default(), 0, drawing);
    let mut sheet = filled(&mut context, &drawn);
    let tape = taped::of(&context, job, &drawn);
    sheet.press = press::of(&mut context, &drawn, tape);
    SheetAnswer { sheet: Some(sheet), problem: None, workings: Workings(context.ledger.entries) }
}

/// The candidate at a path.
fn candidate<'j>(job: &'j Job, path: &str) -> Option<&'j Drawing> {
    let candidates = &job.replace.given()?.candidates.given()?.0;
    let at = Path::of("replace").field("candidates");
    let found = candidates.iter().enumerate().find(|(index, _)| at.item(*index).text() == path);
    found.and_then(|(_, drawing)| drawing.given())
}

fn filled(context: &mut Context<'_>, drawn: &Coil) -> Sheet {
    let format = context.format;
    let mut coil = drawing::report(context, drawn);
    let row = drawn.modulus.1;
    coil.rate_drawing = coil.rate_drawing.take().map(|rate| context.ledger.cite(rate, row));
    if coil.rate_drawing.is_none() && drawn.diameters().is_some() && drawn.turns().is_some() {
        coil.rate = coil.rate.take().map(|rate| context.ledger.cite(rate, row));
    }
    let mut sheet = Sheet {
        coil,
        section: cut::free(drawn, format.system),
        axes: axes(format.system),
        ..Sheet::default()
    };
    shape::fill(context, &mut sheet, drawn);
    sheet.ends = ends::of(context, drawn);
    if let Some(coil) = Whole::of(drawn) {
        stability::fill(context, &mut sheet, &coil);
        strength::fill(context, &mut sheet, &coil);
        sheet.new_spring = new_spring::allowances(context, &coil);
    }
    sheet.steel = steel::row(context, drawn);
    sheet.trust = trust::of(context, drawn);
    if let Some(coil) = drawn.diameters() {
        let coiling = drawn.drawing.coiling.filter(|_| drawn.turns().is_some());
        let unusual = proportions::unusual(coil, drawn.turns(), drawn.pitch(), coiling);
        let said = |remark: &proportions::Unusual| {
            sentence(&text!("{} ({})", remark.sentence(format.system), remark.source()))
        };
        sheet.remarks = unusual.iter().map(said).collect();
    }
    sheet
}

/// A coil of which all is known that loads and heights follow from.
struct Whole<'d> {
    drawn: &'d Coil,
    coil: Diameters,
    turns: Turns,
    /// None where they are of no usual form.
    ends: Option<Ends>,
    free: Length,
    solid: Solid,
    rate: SpringRate,
}

impl<'d> Whole<'d> {
    fn of(drawn: &'d Coil) -> Option<Self> {
        Some(Self {
            drawn,
            coil: drawn.diameters()?,
            turns: drawn.turns()?,
            ends: drawn.drawing.ends,
            free: drawn.free()?,
            solid: drawn.solid()?,
            rate: drawn.rate?.value,
        })
    }

    /// The pitch at a height, and who says so.
    fn pitch_at(&self, height: Length) -> (Length, Source) {
        let bar = self.coil.bar();
        match self.ends {
            Some(ends) => (solid::pitch(height, bar, self.turns, ends), solid::pitch_source(ends)),
            None => (
                solid::pitch_from_solid(height, self.solid.greatest, bar, self.turns),
                solid::PITCH_FROM_SOLID_SOURCE,
            ),
        }
    }
}

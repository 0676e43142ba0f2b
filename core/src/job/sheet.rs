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

use super::desk::Desk;
use super::drawing::{self, Drawn};
use super::entry::Entry;
use super::figures::{axes, sentence, text};
use super::input::{Drawing, Job};
use super::problem::Path;
use super::report::{Sheet, SheetAnswer, Workings};
use super::service::{self, Service};
use super::{assess, cut, file};
use crate::coil::ends::{Ends, Turns};
use crate::coil::solid::Solid;
use crate::coil::{Coiling, Diameters, proportions, solid};
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
    let mut desk = Desk::new(tables, assess::pen(job));
    let drawings = job.coils.given().map_or(&[][..], |coils| coils.0.as_slice());
    let drawings = || drawings.iter().filter_map(Entry::given);
    let coil = drawings().find(|drawing| drawing.id.written() == coil_id);
    let Some(drawing) = coil.or_else(|| candidate(job, coil_id)) else {
        let names: Vec<String> =
            drawings().map(|drawing: &Drawing| drawing.id.written().to_owned()).collect();
        desk.known(&Path::default(), coil_id, &names, "no-such-coil");
        return SheetAnswer { problem: desk.problems.into_iter().next(), ..SheetAnswer::default() };
    };
    let drawn = drawing::assess(&mut desk, &Path::default(), 0, drawing);
    let service = service::read(&mut desk, &Path::default(), drawing);
    let mut sheet = filled(&mut desk, &drawn, &service);
    let tape = taped::of(&desk, job, &drawn.facts);
    sheet.press = press::of(&mut desk, &drawn, &service, tape);
    SheetAnswer { sheet: Some(sheet), problem: None, workings: Workings(desk.ledger.entries) }
}

/// The candidate at a path.
fn candidate<'j>(job: &'j Job, path: &str) -> Option<&'j Drawing> {
    let candidates = &job.replace.given()?.candidates.given()?.0;
    let at = Path::of("replace").field("candidates");
    let found = candidates.iter().enumerate().find(|(index, _)| at.item(*index).text() == path);
    found.and_then(|(_, drawing)| drawing.given())
}

fn filled(desk: &mut Desk<'_>, drawn: &Drawn, service: &Service) -> Sheet {
    let pen = desk.pen;
    let facts = &drawn.facts;
    let mut coil = drawn.report.clone();
    let row = drawn.moduli.as_ref().and_then(|moduli| moduli.row);
    coil.rate_drawing = coil.rate_drawing.take().map(|rate| desk.ledger.cite(rate, row));
    if coil.rate_drawing.is_none() && facts.diameters.is_some() && facts.turns.is_some() {
        coil.rate = coil.rate.take().map(|rate| desk.ledger.cite(rate, row));
    }
    let mut sheet = Sheet {
        coil,
        section: cut::free(facts, pen.system),
        axes: axes(pen.system),
        ..Sheet::default()
    };
    shape::fill(desk, &mut sheet, drawn, service);
    sheet.ends = ends::of(desk, drawn, service);
    if let Some(coil) = Whole::of(drawn) {
        stability::fill(desk, &mut sheet, &coil, service);
        strength::fill(desk, &mut sheet, &coil, service);
        sheet.new_spring = new_spring::allowances(desk, &coil, service);
    }
    sheet.steel = steel::row(desk, drawn);
    sheet.trust = trust::of(desk, drawn, service);
    if let Some(coil) = facts.diameters {
        let coiling = facts.turns.map(|_| Coiling::of(coil, facts.ends));
        let unusual = proportions::unusual(coil, facts.turns, facts.pitch, coiling);
        let said = |remark: &proportions::Unusual| {
            sentence(&text!("{} ({})", remark.sentence(pen.system), remark.source()))
        };
        sheet.remarks = unusual.iter().map(said).collect();
    }
    sheet
}

/// A coil of which all is known that loads and heights follow from.
struct Whole<'d> {
    drawn: &'d Drawn,
    coil: Diameters,
    turns: Turns,
    /// None where they are of no usual form.
    ends: Option<Ends>,
    free: Length,
    solid: Solid,
    rate: SpringRate,
}

impl<'d> Whole<'d> {
    fn of(drawn: &'d Drawn) -> Option<Self> {
        let facts = &drawn.facts;
        Some(Self {
            drawn,
            coil: facts.diameters?,
            turns: facts.turns?,
            ends: facts.ends,
            free: facts.free?,
            solid: facts.solid?,
            rate: facts.rate?.value,
        })
    }

    fn coiling(&self) -> Coiling {
        Coiling::of(self.coil, self.ends)
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

//! What the tape said of the coil that was pressed.

use crate::job::coil::Coil;
use crate::job::context::Context;
use crate::job::entry::Entry;
use crate::job::input::Job;
use crate::job::problem::Path;
use crate::job::seat::{Instrument, Judged};
use crate::job::taped::Taped;
use crate::propagation::Doubted;
use crate::quantity::Length;

/// The measured free height, where just one coil of the drawing was measured: of several, nobody has
/// written which one was on the press.
pub(super) fn of(context: &Context<'_>, job: &Job, drawn: &Coil) -> Option<Doubted<Length>> {
    // What is wrong with these fields stands in the report, at their paths.
    let mut aside = Context::new(context.tables, context.format);
    let at = Path::default();
    let instrument = Instrument::assess(&mut aside, job);
    let nests = job.nests.given()?.0.iter().filter_map(Entry::given);
    let seats = nests.filter_map(|nest| nest.seats.given()).flat_map(|seats| &seats.0);
    let mut measured = Vec::new();
    for seat in seats.filter_map(Entry::given).filter(|seat| seat.coil.written() == drawn.id) {
        let taped = Taped::read(&mut aside, &at, &seat.into(), instrument.graduation);
        if !taped.readings.is_empty() {
            measured.push(taped);
        }
    }
    let [taped] = measured.as_slice() else { return None };
    let measured = Judged::of(taped, drawn, &instrument).measured?;
    Some(Doubted { value: measured.mean, doubt: measured.doubt() })
}

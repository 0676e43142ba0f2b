//! The coils on the bench that have no seat yet.

use super::choices::Use;
use super::coil::Coil;
use super::context::Context;
use super::drafted::Bench;
use super::field::{Field, Plain};
use super::input::Job;
use super::labels::Marked;
use super::problem::Path;
use super::report::AsideReport;
use super::seat::{self, ByDrawing, Location};
use super::taped::Taped;
use std::rc::Rc;

/// A coil on the bench, as far as it could be read.
pub(crate) struct Lying<'b> {
    pub(crate) at: Path,
    pub(crate) label: String,
    pub(crate) coil: Option<&'b Coil>,
    pub(crate) taped: Taped,
    pub(crate) pair: String,
}

impl Lying<'_> {
    pub(crate) fn marked(&self) -> Marked<'_> {
        let coil = self.coil.map_or("", |drawn| drawn.id.as_str());
        Marked { at: self.at.clone(), coil, label: &self.label }
    }
}

/// Reads whether coils that are too close to call may be used: not unless the job says so.
pub(crate) fn uses(context: &mut Context<'_>, job: &Job) -> Use {
    context.read(&Path::default(), job.use_too_close()).unwrap_or(Use::OnlyDecided)
}

/// Reads the coils on the bench.
pub(crate) fn read<'b>(
    context: &mut Context<'_>,
    job: &Job,
    bench: &'b Bench<'_>,
) -> Vec<Lying<'b>> {
    let mut lying = Vec::new();
    for (at, item) in context.list(&Path::default(), job.bench()) {
        let Some((at, coil)) = context.object(&at, item) else { continue };
        let label = context.text(&at, coil.label()).unwrap_or_default().to_owned();
        let pair = context.text(&at, coil.pair()).unwrap_or_default().to_owned();
        let drawn = drawing_of(context, &at, coil.coil(), bench);
        let taped = Taped::read(context, &at, &coil.into(), bench.instrument.graduation);
        lying.push(Lying { at, label, coil: drawn, taped, pair });
    }
    lying
}

/// The drawing that a coil says it should be.
fn drawing_of<'b>(
    context: &mut Context<'_>,
    at: &Path,
    field: Field<'_, Plain>,
    bench: &'b Bench<'_>,
) -> Option<&'b Coil> {
    let path = field.path(at);
    let name = context.text(at, field)?;
    let found = bench.coil(name).map(Rc::as_ref);
    if found.is_none() {
        context.known(&path, name, &bench.coil_names(), "no-such-coil");
    }
    found
}

/// The coils that do not go back.
pub(crate) fn set_aside(
    context: &mut Context<'_>,
    job: &Job,
    bench: &Bench<'_>,
    by: &ByDrawing,
) -> Vec<AsideReport> {
    let mut aside = Vec::new();
    for (at, item) in context.list(&Path::default(), job.set_aside()) {
        let Some((at, coil)) = context.object(&at, item) else { continue };
        let taped = Taped::read(context, &at, &coil.into(), bench.instrument.graduation);
        let unknown = Coil::default();
        let drawn = drawing_of(context, &at, coil.coil(), bench).unwrap_or(&unknown);
        let taped = (&taped, &bench.instrument);
        let (_, mut report) = seat::judge(context, &at, drawn, taped, Location::Apart, by);
        report.label = context.text(&at, coil.label()).map(str::to_owned);
        let reason = context.text(&at, coil.reason()).map(str::to_owned);
        aside.push(AsideReport { coil: report, reason });
    }
    aside
}

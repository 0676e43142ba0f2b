//! The coils on the bench that have no seat yet.

use super::assess::Bench;
use super::desk::Desk;
use super::drawing::Facts;
use super::input::Job;
use super::problem::Path;
use super::seat;
use crate::reading::Interval;

/// A coil on the bench, as far as it could be read.
pub(crate) struct Lying<'b> {
    pub(crate) at: Path,
    pub(crate) label: String,
    pub(crate) facts: Option<&'b Facts>,
    pub(crate) readings: Vec<Interval>,
    pub(crate) pair: String,
}

/// Reads the coils on the bench.
pub(crate) fn read<'b>(desk: &mut Desk<'_>, job: &Job, bench: &'b Bench<'_>) -> Vec<Lying<'b>> {
    let list = Path::of("bench");
    let mut lying = Vec::new();
    for (index, entry) in desk.list(&list, &job.bench).iter().enumerate() {
        let at = list.item(index);
        let Some(coil) = desk.object(&at, entry) else { continue };
        let label = desk.text(&at, "label", &coil.label).unwrap_or_default().to_owned();
        let pair = desk.text(&at, "pair", &coil.pair).unwrap_or_default().to_owned();
        let facts = desk.text(&at, "coil", &coil.coil).and_then(|name| {
            let found = bench.facts(name);
            if found.is_none() {
                desk.known(&at.field("coil"), name, &bench.coil_names(), "no-such-coil");
            }
            found
        });
        let readings = seat::readings(desk, &at, &coil.readings, bench.gear.graduation);
        lying.push(Lying { at, label, facts, readings, pair });
    }
    lying
}

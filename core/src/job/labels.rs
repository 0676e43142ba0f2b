//! The labels on coils: one for each of a kind.

use super::context::Context;
use super::figures::text;
use super::problem::Path;

/// A coil by its kind and the label painted on it.
pub(crate) struct Marked<'a> {
    pub(crate) at: Path,
    pub(crate) coil: &'a str,
    pub(crate) label: &'a str,
}

/// Notes at each coil whose label another of its kind has too.
pub(crate) fn once<'m>(context: &mut Context<'_>, marked: impl Iterator<Item = Marked<'m>>) {
    // Put in one by one: a sort is more code than a first look at the page has room for.
    let mut sorted: Vec<Marked<'_>> = Vec::new();
    for one in marked.filter(|one| !one.label.is_empty()) {
        let place =
            sorted.partition_point(|before| (before.coil, before.label) <= (one.coil, one.label));
        sorted.insert(place, one);
    }
    for same in sorted.chunk_by(|a, b| (a.coil, a.label) == (b.coil, b.label)) {
        for one in same.iter().filter(|_| same.len() > 1) {
            let text = text!(
                "Label {} is on {} coils of this kind: paint another on one, so that neither is taken for the other.",
                one.label,
                same.len()
            );
            context.note(&one.at.field("label"), "label-twice", text);
        }
    }
}

//! The labels on coils: one for each of a kind.

use super::context::Context;
use super::figures::text;
use super::problem::Path;
use std::collections::BinaryHeap;

/// A coil by its kind and the label painted on it.
pub(crate) struct Marked<'a> {
    pub(crate) at: Path,
    pub(crate) coil: &'a str,
    pub(crate) label: &'a str,
}

/// Notes at each coil whose label another of its kind has too.
pub(crate) fn once<'m>(context: &mut Context<'_>, marked: impl Iterator<Item = Marked<'m>>) {
    let labelled: Vec<Marked<'_>> = marked.filter(|one| !one.label.is_empty()).collect();
    // By a heap: a sort of slices is more code than a first look at the page has room for.
    let kinds = labelled.iter().enumerate().map(|(index, one)| (one.coil, one.label, index));
    let sorted = kinds.collect::<BinaryHeap<_>>().into_sorted_vec();
    for same in sorted.chunk_by(|a, b| (a.0, a.1) == (b.0, b.1)) {
        for (_, label, index) in same.iter().filter(|_| same.len() > 1) {
            let Some(one) = labelled.get(*index) else { continue };
            let text = text!(
                "Label {label} is on {} coils of this kind: paint another on one, so that neither is taken for the other.",
                same.len()
            );
            context.note(&one.at.field("label"), "label-twice", text);
        }
    }
}

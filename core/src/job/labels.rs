//! The labels on coils: one for each of a kind.

use super::desk::Desk;
use super::figures::text;
use super::problem::Path;

/// A coil by its kind and the label painted on it.
pub(crate) struct Marked<'a> {
    pub(crate) at: Path,
    pub(crate) coil: &'a str,
    pub(crate) label: &'a str,
}

/// Notes at each coil whose label another of its kind has too.
pub(crate) fn once(desk: &mut Desk<'_>, marked: &[Marked<'_>]) {
    let mut sorted: Vec<&Marked<'_>> = marked.iter().filter(|one| !one.label.is_empty()).collect();
    sorted.sort_by_key(|one| (one.coil, one.label));
    for same in sorted.chunk_by(|a, b| (a.coil, a.label) == (b.coil, b.label)) {
        for one in same.iter().filter(|_| same.len() > 1) {
            let text = text!(
                "Label {} is on {} coils of this kind: paint another on one, so that neither is taken for the other.",
                one.label,
                same.len()
            );
            desk.note(&one.at.field("label"), "label-twice", text);
        }
    }
}

//! The roles that a coil can have: the drawings of a job.

use crate::job::entry::Entry;
use crate::job::input::{Drawing, Job};

/// A drawing that has an id, as it may be written.
struct Role<'j> {
    id: &'j str,
    name: &'j str,
    loose: [String; 2],
}

pub(super) struct Roles<'j>(Vec<Role<'j>>);

impl<'j> Roles<'j> {
    pub(super) fn of(job: &'j Job) -> Self {
        let drawings = job.coils.given().into_iter().flat_map(|coils| &coils.0);
        let role = |drawing: &'j Drawing| {
            let (id, name) = (drawing.id.written(), drawing.name.written());
            Role { id, name, loose: [id, name].map(str::to_lowercase) }
        };
        let roles = drawings.filter_map(Entry::given).map(role);
        Self(roles.filter(|role| !role.id.is_empty()).collect())
    }

    /// The ids that a text can mean, each once.
    pub(super) fn meant(&self, text: &str) -> Vec<&'j str> {
        if text.is_empty() {
            return self.ids(|_| true);
        }
        let loose = text.to_lowercase();
        let mut ids = self.ids(|role| role.id == text);
        if ids.is_empty() {
            ids = self.ids(|role| role.name == text);
        }
        if ids.is_empty() {
            ids = self.ids(|role| role.loose.contains(&loose));
        }
        ids
    }

    fn ids(&self, fits: impl Fn(&Role<'j>) -> bool) -> Vec<&'j str> {
        let mut ids = Vec::new();
        for role in self.0.iter().filter(|role| fits(role)) {
            if !ids.contains(&role.id) {
                ids.push(role.id);
            }
        }
        ids
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::file;

    #[test]
    fn a_role_is_an_id_or_a_name() {
        let job = r#"{ "format": "coilnest-job/1", "coils": [
            { "id": "outer", "name": "Outer coil" },
            { "id": "inner", "name": "outer" },
            { "id": "Small", "name": "Innermost" },
            { "id": "small", "name": "innermost" },
            { "name": "nameless" },
            7,
            { "id": "outer" }
        ] }"#;
        let job = file::open(job).unwrap();
        let roles = Roles::of(&job);
        for (text, ids) in [
            ("outer", &["outer"][..]),
            ("Outer coil", &["outer"]),
            ("OUTER COIL", &["outer"]),
            ("OUTER", &["outer", "inner"]),
            ("inner", &["inner"]),
            ("Innermost", &["Small"]),
            ("small", &["small"]),
            ("SMALL", &["Small", "small"]),
            ("nameless", &[]),
            ("outermost", &[]),
            ("", &["outer", "inner", "Small", "small"]),
        ] {
            assert_eq!(roles.meant(text), ids, "{text:?}");
        }
    }
}

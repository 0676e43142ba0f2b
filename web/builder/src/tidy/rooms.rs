//! Arrows between the rooms of `core` go one way: a room uses what stands before it.

use super::{File, Finding};

/// Each room after all that it may use.
const ROOMS: [&str; 26] = [
    "formula",
    "source",
    "quantity",
    "say",
    "bounds",
    "reading",
    "order",
    "progress",
    "material",
    "measured",
    "verdict",
    "coil",
    "change",
    "tolerance",
    "drawing",
    "nest",
    "propagation",
    "load_test",
    "guides",
    "stack",
    "frame",
    "matching",
    "replacement",
    "sizing",
    "tables",
    "job",
];
const TESTS: &str = "#[cfg(test)]\nmod tests {";

pub(super) fn uses_what_stands_before_it(file: &File) -> Vec<Finding> {
    let Some((room, text)) = room_of(file) else { return Vec::new() };
    let place = |name: &str| ROOMS.iter().position(|known| *known == name);
    let Some(own) = place(room) else {
        return vec![Finding::in_file(file, format!("`{room}` is no room that is known to tidy"))];
    };
    let code = text.split(TESTS).next().unwrap_or_default();
    let lines = code.lines().enumerate();
    let used = lines.filter(|(_, line)| !line.trim_start().starts_with("//"));
    used.flat_map(|(at, line)| line.split("crate::").skip(1).map(move |rest| (at, rest)))
        .filter_map(|(at, rest)| {
            let end = rest.find(|c: char| !c.is_alphanumeric() && c != '_').unwrap_or(rest.len());
            let name = rest.get(..end)?;
            (place(name)? > own).then(|| {
                Finding::in_line(
                    file,
                    at + 1,
                    format!("`{room}` uses `{name}`, which stands after it"),
                )
            })
        })
        .collect()
}

/// The room of a file of `core` that is no test, and its text.
fn room_of(file: &File) -> Option<(&str, &str)> {
    let path = file.path.strip_prefix("core/src/")?;
    let is_test = path.ends_with("/tests.rs") || path.contains("/tests/");
    let room = path.split('/').next()?.trim_end_matches(".rs");
    (room != "lib" && !is_test).then_some(())?;
    Some((room, file.text.as_deref()?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tidy::text_file;

    #[test]
    fn an_arrow_that_goes_back_is_found_outside_comments_and_tests() {
        let found =
            |path: &str, text: &str| uses_what_stands_before_it(&text_file(path, text)).len();
        assert_eq!(found("core/src/nest/law.rs", "use crate::job::Job;\n"), 1);
        assert_eq!(found("core/src/nest.rs", "let a = crate::quantity::A + crate::frame::B;\n"), 1);
        assert_eq!(found("core/src/nest.rs", "use crate::quantity::Length;\n"), 0);
        assert_eq!(found("core/src/nest.rs", "    // crate::job is not used\n"), 0);
        assert_eq!(found("core/src/nest.rs", &format!("{TESTS}\n    use crate::job;\n}}\n")), 0);
        assert_eq!(found("core/src/nest/tests.rs", "use crate::job::Job;\n"), 0);
        assert_eq!(found("core/src/lib.rs", "use crate::job::Job;\n"), 0);
        assert_eq!(found("tests/tests/nest.rs", "use crate::job::Job;\n"), 0);
        assert_eq!(found("core/src/attic.rs", ""), 1);
    }
}

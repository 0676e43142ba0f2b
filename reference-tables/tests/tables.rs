//! What the build made of the files.

use coilnest::material::Steel;
use coilnest::measured::TapeClass;
use coilnest_tables::{ROWS, TABLES};
use std::path::Path;

#[test]
fn the_rows_for_a_job_that_names_none_stand_first() {
    assert_eq!(TABLES.steels[0].id(), "unknown-hot-wound");
    assert!(TABLES.steels[0].shear_doubt().is_some());
    assert_eq!(TABLES.tape_classes[0].id(), "II");
}

#[test]
fn every_constant_has_its_row_in_a_file() {
    let steels = TABLES.steels.iter().map(Steel::id);
    let ids: Vec<&str> = steels.chain(TABLES.tape_classes.iter().map(TapeClass::id)).collect();
    assert_eq!(ROWS.iter().map(|row| row.id).collect::<Vec<_>>(), ids);
    for row in ROWS {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(row.file);
        let text = std::fs::read_to_string(&file).unwrap();
        assert!(
            text.contains(&format!("id = \"{}\"", row.id)),
            "{} is not in {}",
            row.id,
            row.file
        );
    }
}

//! Writes the schemas of a job and of a report for the page and for whoever writes such files.

use coilnest_tests::schema;
use std::process::ExitCode;

fn main() -> ExitCode {
    for schema in schema::all() {
        let path = schema.path();
        if let Err(error) = std::fs::write(&path, schema.text) {
            eprintln!("{}: {error}", path.display());
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

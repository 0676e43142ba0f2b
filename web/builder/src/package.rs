//! `cargo page --package DIR`: the whole engine as an npm package, for Node, browsers and bundlers.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::programs::{root, say};
use crate::wasm::Toolchain;
use crate::{bundle, engine, shipped};

/// Builds the engine and writes the package into a folder, in place of an earlier one.
pub(crate) fn deliver(into: &Path) -> Result<()> {
    let into = std::path::absolute(into)?;
    engine::build_whole(&Toolchain::find()?)?;
    write()?;
    bundle::copy(&written(), &into)?;
    say(&format!("The package is in {}: `npm pack` makes the file of it", into.display()));
    Ok(())
}

/// Where the package is put together.
fn written() -> PathBuf {
    root().join("target").join("package")
}

/// Puts the package together from the engine that was built last.
pub(crate) fn write() -> Result<()> {
    let (package, engine, templates) = (written(), engine::folder(), root().join("web/package"));
    if package.exists() {
        fs::remove_dir_all(&package)?;
    }
    let bindings = read(&engine.join("coilnest_web.js"))?;
    let snippets = PathBuf::from("snippets").join(snippet(&bindings));
    bundle::copy_all(&engine.join(&snippets), &package.join("engine").join(&snippets))?;
    for file in ["coilnest_web.js", "coilnest_web_bg.wasm"] {
        copy(&engine.join(file), &package.join("engine").join(file))?;
    }
    for file in ["README.md", "node.js", "browser.js"] {
        copy(&templates.join(file), &package.join(file))?;
    }
    for file in ["LICENSE-APACHE", "LICENSE-MIT"] {
        copy(&root().join(file), &package.join(file))?;
    }
    for file in ["job.schema.json", "report.schema.json"] {
        copy(&bundle::www().join("schema").join(file), &package.join(file))?;
    }
    let face = Face::of(&read(&engine.join("coilnest_web.d.ts"))?);
    let types = read(&bundle::www().join("src/engine/types.ts"))?;
    fs::write(package.join("coilnest.d.ts"), format!("{types}\n{}", face.declarations))?;
    fs::write(package.join("functions.js"), face.exports())?;
    fs::write(package.join("package.json"), manifest(&read(&templates.join("package.json"))?))?;
    shipped::write_with_package(&package)
}

fn read(file: &Path) -> Result<String> {
    fs::read_to_string(file).with_context(|| format!("cannot read {}", file.display()))
}

fn copy(from: &Path, to: &Path) -> Result<()> {
    fs::copy(from, to).with_context(|| format!("cannot copy {}", from.display()))?;
    Ok(())
}

/// The folder of the helper that the bindings import; an earlier build may have left others.
fn snippet(bindings: &str) -> &str {
    let after = bindings.split_once("./snippets/").map_or("", |(_, after)| after);
    after.split('/').next().unwrap_or_default()
}

/// The manifest with the version of the workspace.
fn manifest(template: &str) -> String {
    template.replace("0.0.0", env!("CARGO_PKG_VERSION"))
}

/// What the engine's bindings offer to whoever uses them: not what starts the engine.
struct Face {
    declarations: String,
    names: Vec<String>,
}

impl Face {
    fn of(types: &str) -> Self {
        let offered = types.split("export type InitInput").next().unwrap_or_default();
        let from = offered.rfind("/types\";").and_then(|at| Some(at + offered[at..].find('\n')?));
        let offered = offered.get(from.unwrap_or_default()..).unwrap_or_default();
        let own = |line: &&str| !line.contains("__wbg_");
        let declarations: String =
            offered.lines().filter(own).flat_map(|line| [line, "\n"]).collect();
        let name = |line: &str| {
            let rest = line.strip_prefix("export ")?;
            let rest = rest.strip_prefix("function ").or_else(|| rest.strip_prefix("class "))?;
            Some(rest.split([' ', '(']).next()?.to_owned())
        };
        let names = declarations.lines().filter_map(name).collect();
        Self { declarations, names }
    }

    fn exports(&self) -> String {
        format!("export {{ {} }} from './engine/coilnest_web.js';\n", self.names.join(", "))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TYPES: &str = r#"/* tslint:disable */
import type {
    Bell, Job,
} from "../../www/src/engine/types";
import type { Choices } from "../../www/src/engine/types";


/**
 * A frame.
 */
export class HeldFrame {
    free(): void;
}

export function __wbg_reset_state(): void;

export function bell(job: Job | string, path: string): Bell | undefined;

export type InitInput = URL;

export function initSync(module: InitInput): void;
"#;

    #[test]
    fn the_face_is_what_is_asked_not_what_starts_the_engine() {
        let face = Face::of(TYPES);
        assert_eq!(face.names, ["HeldFrame", "bell"]);
        let exports = "export { HeldFrame, bell } from './engine/coilnest_web.js';\n";
        assert_eq!(face.exports(), exports);
        assert!(face.declarations.contains("path: string): Bell | undefined;"));
        for other in ["import", "reset_state", "InitInput"] {
            assert!(!face.declarations.contains(other), "{other} in {}", face.declarations);
        }
    }

    #[test]
    fn the_manifest_has_the_version_of_the_workspace() {
        let manifest = manifest(r#"{ "name": "coilnest", "version": "0.0.0" }"#);
        assert!(manifest.contains(&format!("\"version\": \"{}\"", env!("CARGO_PKG_VERSION"))));
    }

    #[test]
    fn the_helper_is_the_one_that_is_imported() {
        assert_eq!(snippet("import { a } from './snippets/web-0d/src/plain.js';"), "web-0d");
    }
}

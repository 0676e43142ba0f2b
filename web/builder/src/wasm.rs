//! Where the standard library for wasm32 comes from: as it is, from rustup, or built from Debian's source package.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

use anyhow::{Context, Result, bail};
use serde::Deserialize;

use crate::debian;
use crate::programs::{cargo, output, program, run_within, say};

pub(crate) const TARGET: &str = "wasm32-unknown-unknown";
const FORCED_ROUTE: &str = "COILNEST_WASM_ROUTE";
const RUSTUP_LIMIT: Duration = Duration::from_secs(30);
const DEBIAN_RUST: [&str; 4] = ["rustc-web", "cargo-web", "rust-web-src", "rust-web-llvm"];

#[derive(Clone, Copy, Debug, PartialEq)]
enum Route {
    Present,
    Rustup,
    Debian,
}

impl Route {
    /// The routes to try, in this order.
    fn to_try(forced: Option<&str>) -> Result<Vec<Self>> {
        match forced {
            None | Some("") => Ok(vec![Self::Present, Self::Rustup, Self::Debian]),
            Some("present") => Ok(vec![Self::Present]),
            Some("rustup") => Ok(vec![Self::Rustup]),
            Some("debian") => Ok(vec![Self::Debian]),
            Some(other) => {
                bail!("{FORCED_ROUTE} is `{other}`; it can be present, rustup or debian")
            }
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Present => "already on this machine",
            Self::Rustup => "added by rustup",
            Self::Debian => "built from Debian's source package",
        }
    }

    fn take(self) -> Result<()> {
        match self {
            Self::Present => find_standard_library(),
            Self::Rustup => {
                say("Asking rustup for the wasm32 standard library (30 s at most)");
                let mut rustup = program("rustup");
                rustup.env_remove("RUST_BACKTRACE");
                run_within(RUSTUP_LIMIT, rustup.args(["target", "add", TARGET]))?;
                find_standard_library()
            }
            Self::Debian => find_debian_rust().or_else(|_| install_debian_rust()),
        }
    }
}

fn find_standard_library() -> Result<()> {
    let mut rustc = program("rustc");
    let folder = output(rustc.args(["--print", "target-libdir", "--target", TARGET]))?;
    if Path::new(folder.trim()).is_dir() {
        return Ok(());
    }
    bail!("rustc has no standard library for {TARGET}")
}

/// A cargo that can build for wasm32.
pub(crate) struct Toolchain {
    route: Route,
    /// Where its builds go.
    pub(crate) target_dir: PathBuf,
}

impl Toolchain {
    pub(crate) fn find() -> Result<Self> {
        let forced = std::env::var(FORCED_ROUTE).ok();
        let mut refusals = Vec::new();
        for route in Route::to_try(forced.as_deref())? {
            match route.take() {
                Ok(()) => {
                    say(&format!("The wasm32 standard library: {}", route.name()));
                    return Self::by(route);
                }
                Err(refusal) => refusals.push(format!("{refusal:#}")),
            }
        }
        bail!(
            "there is no wasm32 standard library: type `rustup target add {TARGET}` ({})",
            refusals.join("; ")
        )
    }

    fn by(route: Route) -> Result<Self> {
        let shared = target_dir()?;
        let target_dir = if route == Route::Debian { shared.join("debian") } else { shared };
        Ok(Self { route, target_dir })
    }

    /// This toolchain's cargo, ready for its words.
    pub(crate) fn cargo(&self) -> Result<Command> {
        if self.route != Route::Debian {
            return Ok(cargo());
        }
        let folders = std::env::var_os("PATH").unwrap_or_default();
        let debian_first = [PathBuf::from("/usr/bin"), PathBuf::from("/bin")].into_iter();
        let path = std::env::join_paths(debian_first.chain(std::env::split_paths(&folders)))?;
        let mut command = program("/usr/bin/cargo");
        for told_by_rustup in ["CARGO", "RUSTUP_TOOLCHAIN", "LD_LIBRARY_PATH"] {
            command.env_remove(told_by_rustup);
        }
        command
            .env("PATH", path)
            .env("RUSTC", "/usr/bin/rustc")
            .env("RUSTDOC", "/usr/bin/rustdoc")
            .env("RUSTC_BOOTSTRAP", "1")
            .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort")
            .env("CARGO_TARGET_DIR", &self.target_dir);
        Ok(command)
    }
}

/// The folder that this workspace's builds go to.
pub(crate) fn target_dir() -> Result<PathBuf> {
    #[derive(Deserialize)]
    struct Metadata {
        target_directory: PathBuf,
    }
    let printed = output(cargo().args(["metadata", "--no-deps", "--format-version=1"]))?;
    let metadata: Metadata = serde_json::from_str(&printed).context("cargo metadata")?;
    Ok(metadata.target_directory)
}

/// Debian's rustc, its cargo, the library's source, and the linker that its rustc looks for.
fn find_debian_rust() -> Result<()> {
    let parts = ["/usr/bin/rustc", "/usr/bin/cargo", "/usr/lib/rustlib/src", "/usr/bin/rust-lld"];
    match parts.iter().find(|part| !Path::new(part).exists()) {
        None => Ok(()),
        Some(missing) => bail!("Debian's Rust is not installed whole: {missing} is missing"),
    }
}

/// `rust-web-llvm` brings `rust-lld` as a link to a linker that it does not bring: the link names the package.
fn install_debian_rust() -> Result<()> {
    debian::install(&DEBIAN_RUST)?;
    let link = std::fs::read_link("/usr/bin/rust-lld").context("rust-web-llvm has no rust-lld")?;
    let package = link.file_name().context("rust-lld links to nothing")?.to_string_lossy();
    debian::install(&[&package])?;
    find_debian_rust()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn routes_are_tried_from_the_cheapest() {
        let all = vec![Route::Present, Route::Rustup, Route::Debian];
        assert_eq!(Route::to_try(None).unwrap(), all);
        assert_eq!(Route::to_try(Some("")).unwrap(), all);
    }

    #[test]
    fn a_forced_route_is_the_only_one() {
        assert_eq!(Route::to_try(Some("present")).unwrap(), [Route::Present]);
        assert_eq!(Route::to_try(Some("rustup")).unwrap(), [Route::Rustup]);
        assert_eq!(Route::to_try(Some("debian")).unwrap(), [Route::Debian]);
        let refusal = Route::to_try(Some("Debian")).unwrap_err().to_string();
        assert!(refusal.contains("`Debian`") && refusal.contains("present, rustup or debian"));
    }
}

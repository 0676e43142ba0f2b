//! Installing Debian's packages, where that is possible and allowed.

use std::process::Command;

use anyhow::{Context, Result, bail};

use crate::programs::{find, output, program, run, say};

/// Installs packages, or says in one line what a person has to type.
pub(crate) fn install(packages: &[&str]) -> Result<()> {
    let names = packages.join(" ");
    if find("apt-get").is_none() {
        bail!("not installed: {names} (Debian's names); install them in this system's own way");
    }
    if output(program("id").arg("-u"))?.trim() != "0" {
        bail!(
            "not installed: {names}; type `sudo apt-get install --no-install-recommends {names}`"
        );
    }
    say(&format!("Installing Debian's packages {names}"));
    if install_from_known_lists(packages).is_err() {
        say("Fetching Debian's list of packages, then trying again");
        run(&mut apt_get(&["update"]))?;
        install_from_known_lists(packages).with_context(|| format!("cannot install {names}"))?;
    }
    Ok(())
}

fn install_from_known_lists(packages: &[&str]) -> Result<()> {
    run(apt_get(&["install", "--yes", "--no-install-recommends"]).args(packages))
}

fn apt_get(words: &[&str]) -> Command {
    let mut command = program("apt-get");
    command
        .args(["--quiet=2", "--option=Dpkg::Use-Pty=0"])
        .args(words)
        .env("DEBIAN_FRONTEND", "noninteractive");
    command
}

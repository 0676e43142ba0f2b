//! Serving the built page on this machine, with Vite's own server for built pages.

use std::process::Command;

use anyhow::Result;

use crate::bundle::node;

const SERVER: &str = include_str!("serve.mjs");

/// Serves until Ctrl-C. Without a port: the first free one from 4173 on.
pub(crate) fn serve(port: Option<u16>) -> Result<()> {
    let mut server = node();
    server.args(["--input-type=module", "--eval", SERVER]);
    server.args(port.map(|port| port.to_string()));
    become_program(&mut server)
}

/// The server takes this program's place, so that whatever ends the one ends the other and frees the port.
#[cfg(unix)]
fn become_program(server: &mut Command) -> Result<()> {
    use std::os::unix::process::CommandExt;
    Err(anyhow::Error::new(server.exec()).context("cannot start node"))
}

#[cfg(not(unix))]
fn become_program(server: &mut Command) -> Result<()> {
    crate::programs::run(server)
}

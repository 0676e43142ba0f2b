//! Starting other programs from the root of the workspace: what they print, how long they may take, how they ended.

use std::ffi::OsStr;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Error, Result, anyhow, bail};

/// The root of the workspace that this program was built from.
pub(crate) fn root() -> &'static Path {
    let builder = Path::new(env!("CARGO_MANIFEST_DIR"));
    builder.ancestors().nth(2).unwrap_or(builder)
}

/// Says what is going on, on a line of its own.
pub(crate) fn say(what: &str) {
    println!("{what}");
}

/// A program to be started at the root, with nothing to read, and without what cargo told this one about itself.
pub(crate) fn program(name: impl AsRef<OsStr>) -> Command {
    let mut command = Command::new(name);
    command.current_dir(root()).stdin(Stdio::null());
    for (name, _) in std::env::vars_os() {
        let text = name.to_string_lossy();
        if text.starts_with("CARGO_PKG_") || text.starts_with("CARGO_MANIFEST_") {
            command.env_remove(&name);
        }
    }
    command
}

/// The cargo that started this program.
pub(crate) fn cargo() -> Command {
    program(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs to the end, printing to the terminal. A program that ends badly is an error.
pub(crate) fn run(command: &mut Command) -> Result<()> {
    if succeeds(command)? {
        return Ok(());
    }
    bail!("this failed, for the reason printed above: {}", written(command))
}

/// Runs to the end, printing to the terminal, and tells whether it ended well.
pub(crate) fn succeeds(command: &mut Command) -> Result<bool> {
    let status = command.status().map_err(|trouble| cannot_start(command, trouble))?;
    Ok(status.success())
}

/// What a program printed. One that ends badly is an error that holds its complaint, in one line.
pub(crate) fn output(command: &mut Command) -> Result<String> {
    let output = command.output().map_err(|trouble| cannot_start(command, trouble))?;
    if output.status.success() {
        return Ok(String::from_utf8_lossy(&output.stdout).into_owned());
    }
    let complaint = String::from_utf8_lossy(&output.stderr).into_owned();
    let words: Vec<&str> = complaint.split_whitespace().collect();
    bail!("`{}` failed: {}", written(command), words.join(" "))
}

/// Runs to the end, printing to the terminal, and keeps what was printed.
pub(crate) fn watch(command: &mut Command) -> Result<(ExitStatus, String)> {
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    let mut child = command.spawn().map_err(|trouble| cannot_start(command, trouble))?;
    let (out, err) = (child.stdout.take(), child.stderr.take());
    let printed = thread::scope(|scope| {
        let errors = scope.spawn(|| err.map(|err| pass_on(err, io::stderr())).transpose());
        let lines = out.map(|out| pass_on(out, io::stdout())).transpose()?;
        let errors = errors.join().unwrap_or(Ok(None))?;
        io::Result::Ok([lines, errors].into_iter().flatten().flatten().collect::<Vec<u8>>())
    })?;
    let status = child.wait()?;
    Ok((status, String::from_utf8_lossy(&printed).into_owned()))
}

fn pass_on(mut from: impl Read, mut to: impl Write) -> io::Result<Vec<u8>> {
    let mut all = Vec::new();
    let mut piece = [0; 8192];
    loop {
        let count = from.read(&mut piece)?;
        let Some(piece) = piece.get(..count).filter(|piece| !piece.is_empty()) else {
            return Ok(all);
        };
        to.write_all(piece)?;
        to.flush()?;
        all.extend_from_slice(piece);
    }
}

/// Runs to the end, but ends the program when `limit` is over.
pub(crate) fn run_within(limit: Duration, command: &mut Command) -> Result<()> {
    let mut child = command.spawn().map_err(|trouble| cannot_start(command, trouble))?;
    let started = Instant::now();
    while started.elapsed() < limit {
        match child.try_wait()? {
            Some(status) if status.success() => return Ok(()),
            Some(_) => bail!("`{}` failed", written(command)),
            None => thread::sleep(Duration::from_millis(50)),
        }
    }
    child.kill()?;
    child.wait()?;
    bail!("`{}` did not end within {} s", written(command), limit.as_secs())
}

/// Where a program is, when it can be started by its name.
pub(crate) fn find(name: &str) -> Option<PathBuf> {
    let folders = std::env::var_os("PATH")?;
    std::env::split_paths(&folders).map(|folder| folder.join(name)).find(|path| path.is_file())
}

fn written(command: &Command) -> String {
    let name = command.get_program().to_string_lossy();
    let words = command.get_args().map(|word| word.to_string_lossy());
    std::iter::once(name).chain(words).collect::<Vec<_>>().join(" ")
}

fn cannot_start(command: &Command, trouble: io::Error) -> Error {
    let name = command.get_program().to_string_lossy().into_owned();
    if trouble.kind() != io::ErrorKind::NotFound {
        return Error::new(trouble).context(format!("cannot start {name}"));
    }
    match name.as_str() {
        "node" | "npm" | "npm.cmd" => {
            anyhow!("{name} is not installed: install Node.js 20.19 or newer, which brings npm")
        }
        _ => anyhow!("{name} is not installed"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_missing_program_is_one_line_with_its_cure() {
        let trouble = run(&mut Command::new("no-such-program")).unwrap_err();
        assert_eq!(format!("{trouble:#}"), "no-such-program is not installed");

        let missing = io::Error::from(io::ErrorKind::NotFound);
        let trouble = cannot_start(&Command::new("npm"), missing).to_string();
        assert!(trouble.contains("install Node.js") && !trouble.contains('\n'), "{trouble}");
    }

    #[test]
    fn what_is_printed_is_kept_and_passed_on() {
        let mut terminal = Vec::new();
        let kept = pass_on(&b"running 3 tests\n"[..], &mut terminal).unwrap();
        assert_eq!(kept, b"running 3 tests\n");
        assert_eq!(terminal, kept);

        let (status, printed) = watch(cargo().arg("--version")).unwrap();
        assert!(status.success() && printed.starts_with("cargo "), "{printed}");
    }

    #[cfg(unix)]
    #[test]
    fn a_program_that_takes_too_long_is_ended() {
        let started = Instant::now();
        let trouble = run_within(Duration::from_millis(200), program("sleep").arg("20"));
        assert!(trouble.unwrap_err().to_string().contains("did not end"));
        assert!(started.elapsed() < Duration::from_secs(10));
    }
}

//! The program behind `cargo page` and `cargo verify`: builds the page, serves it, and runs every check.

mod advisories;
mod alike;
mod browser;
mod bundle;
mod chunks;
mod debian;
mod engine;
mod licences;
mod locks;
mod package;
mod page;
mod programs;
mod serve;
mod shipped;
mod size;
mod table;
mod tidy;
mod verify;
mod wasm;

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, Result, bail};
use lexopt::{Arg, ValueExt};

const USAGE: &str = "\
cargo page                build the page and serve it on this machine
cargo page --port N       the same, on port N
cargo page --out DIR      only build, into DIR, for any static host; prints the sizes
cargo page --package DIR  only build the npm package, into DIR
cargo page --engine       only build the engine, into target/engine
cargo verify              run every check
cargo verify STEP...      run the named steps only
cargo verify --list       name the steps";

fn main() -> ExitCode {
    match read_command_line(lexopt::Parser::from_env()).and_then(Command::carry_out) {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(trouble) => {
            eprintln!("{trouble:#}");
            ExitCode::FAILURE
        }
    }
}

#[derive(Debug, PartialEq)]
enum Command {
    Usage,
    Engine,
    Serve { port: Option<u16> },
    Deliver { into: PathBuf },
    Package { into: PathBuf },
    ListSteps,
    Verify { steps: Vec<String> },
}

impl Command {
    /// Whether everything that was asked for is right.
    fn carry_out(self) -> Result<bool> {
        match self {
            Self::Usage => {
                println!("{USAGE}");
                Ok(true)
            }
            Self::Engine => page::build_engine().map(|()| true),
            Self::Serve { port } => page::serve(port).map(|()| true),
            Self::Deliver { into } => page::deliver(&into),
            Self::Package { into } => package::deliver(&into).map(|()| true),
            Self::ListSteps => {
                verify::list_steps();
                Ok(true)
            }
            Self::Verify { steps } => verify::verify(&steps),
        }
    }
}

fn read_command_line(mut words: lexopt::Parser) -> Result<Command> {
    match words.next()? {
        Some(Arg::Value(word)) if word == "page" => read_page(&mut words),
        Some(Arg::Value(word)) if word == "verify" => read_verify(&mut words),
        None | Some(Arg::Long("help") | Arg::Short('h')) => Ok(Command::Usage),
        Some(other) => bail!("{}\n\n{USAGE}", other.unexpected()),
    }
}

fn read_page(words: &mut lexopt::Parser) -> Result<Command> {
    let mut command = Command::Serve { port: None };
    while let Some(word) = words.next()? {
        command = match (word, command) {
            (Arg::Long("help") | Arg::Short('h'), _) => return Ok(Command::Usage),
            (Arg::Long("port"), Command::Serve { port: None }) => {
                Command::Serve { port: Some(read_port(words)?) }
            }
            (Arg::Long("out"), Command::Serve { port: None }) => {
                Command::Deliver { into: words.value()?.into() }
            }
            (Arg::Long("package"), Command::Serve { port: None }) => {
                Command::Package { into: words.value()?.into() }
            }
            (Arg::Long("engine"), Command::Serve { port: None }) => Command::Engine,
            (other, _) => bail!("{}\n\n{USAGE}", other.unexpected()),
        };
    }
    Ok(command)
}

fn read_port(words: &mut lexopt::Parser) -> Result<u16> {
    let word = words.value()?.string()?;
    word.parse().with_context(|| format!("--port takes a number up to 65535, not `{word}`"))
}

fn read_verify(words: &mut lexopt::Parser) -> Result<Command> {
    let mut steps = Vec::new();
    while let Some(word) = words.next()? {
        match word {
            Arg::Long("help") | Arg::Short('h') => return Ok(Command::Usage),
            Arg::Long("list") => return Ok(Command::ListSteps),
            Arg::Value(step) => steps.push(step.string()?),
            other @ (Arg::Short(_) | Arg::Long(_)) => bail!("{}\n\n{USAGE}", other.unexpected()),
        }
    }
    Ok(Command::Verify { steps })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(words: &[&str]) -> Result<Command> {
        read_command_line(lexopt::Parser::from_args(words))
    }

    #[test]
    fn the_commands_are_read() {
        let cases: [(&[&str], Command); 8] = [
            (&[], Command::Usage),
            (&["page"], Command::Serve { port: None }),
            (&["page", "--port", "8080"], Command::Serve { port: Some(8080) }),
            (&["page", "--out=site"], Command::Deliver { into: "site".into() }),
            (&["page", "--package=npm"], Command::Package { into: "npm".into() }),
            (&["page", "--engine"], Command::Engine),
            (&["verify", "--list"], Command::ListSteps),
            (&["verify", "tidy"], Command::Verify { steps: vec!["tidy".to_owned()] }),
        ];
        for (words, command) in cases {
            assert_eq!(read(words).unwrap(), command, "{words:?}");
        }
    }

    #[test]
    fn what_cannot_be_meant_is_refused_with_the_usage() {
        for words in [&["bake"][..], &["page", "--out", "a", "--port", "1"], &["verify", "--fast"]]
        {
            let trouble = read(words).unwrap_err().to_string();
            assert!(trouble.contains("cargo verify"), "{words:?}: {trouble}");
        }
        assert!(read(&["page", "--port", "many"]).is_err());
    }
}

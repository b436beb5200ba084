//! The tubewright command line.

mod cli;
mod commands;
mod demonstration;
mod interrupt;
mod terminal;

use clap::Parser;
use std::process::ExitCode;

fn main() -> ExitCode {
    let cli = cli::Cli::parse();
    match commands::run(&cli) {
        Ok(done) => done.exit_code(),
        Err(failure) => {
            terminal::say(&failure.text());
            failure.exit_code()
        }
    }
}

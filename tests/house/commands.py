"""Every command and every option that the program takes is in the handbook, and nothing else is.

Usage: commands.py PROGRAM
"""

import re
import subprocess
import sys
from pathlib import Path

import tree

CHAPTER = "handbook/src/commands.md"
# What every command line tool has.
USUAL = {"--help", "--version"}


def help_of(program, *command):
    return subprocess.run([program, *command, "--help"], check=True, capture_output=True,
                          text=True).stdout


def commands_in(text):
    """The commands that a help text lists, but for help itself."""
    if "Commands:" not in text:
        return set()
    listed = text.split("Commands:")[1].split("Arguments:")[0].split("Options:")[0]
    return set(re.findall(r"^ {2}([a-z][a-z-]*)", listed, re.M)) - {"help"}


def options_of(program, *command):
    """The options of a command and of the commands below it (`tick got --count`)."""
    text = help_of(program, *command)
    options = set(re.findall(r"^ {2,}(?:-\w, )?(--[a-z-]+)", text, re.M)) - USUAL
    for below in commands_in(text):
        options |= options_of(program, *command, below)
    return options


def main():
    program = Path(sys.argv[1]).resolve()
    problems = []
    sections = dict(re.findall(r"^## `([a-z-]+)`\n(.*?)(?=^## |\Z)", (tree.ROOT / CHAPTER).read_text(),
                               re.M | re.S))
    commands = commands_in(help_of(program))
    for command in sorted(commands - set(sections)):
        problems.append(f"{CHAPTER}: `{command}` is missing")
    for command in sorted(set(sections) - commands):
        problems.append(f"{CHAPTER}: there is no command `{command}`")
    for command in sorted(commands & set(sections)):
        options = options_of(program, command)
        written = set(re.findall(r"`(--[a-z-]+)", sections[command]))
        for option in sorted(options - written):
            problems.append(f"{CHAPTER}: `{command}` has {option}, which is not explained")
        for option in sorted(written - options):
            problems.append(f"{CHAPTER}: `{command}` has no {option}")
    tree.verdict(problems, f"{len(commands)} commands are in the handbook with every option")


main()

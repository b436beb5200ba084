"""The handbook's worked example is a real job: what it and the README show of the program's output is
what the program prints today, and every figure that the chapter quotes stands in that output or in the
car's files.

Usage: worked_example.py PROGRAM [--write]; with --write the shown output is brought up to date (the
text is a person's to mend). A page is read from top to bottom; its comments say what is done:

  <!-- run: measure estate -->           the program is run, in a folder of its own; `(1)` behind the
                                         words is the exit code that is expected in place of 0
  <!-- again: cut estate -->             what that run printed last, without running it once more;
                                         `#1` behind the words: what it printed the first time
  <!-- edit: estate/build.toml: A => B -->    one place in a file is written anew
  <!-- show: START ... END -->           the fence that follows holds the last output's lines from the
                                         first that matches START to the one before the next that
                                         matches END; no END: to the end
  <!-- file: estate/build.toml: START ... END -->    the same from a file
"""

import re
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CHAPTER = ROOT / "handbook/src/worked-example.md"
README = ROOT / "README.md"
DIRECTIVE = re.compile(r"^<!-- (run|again|edit|show|file): (.*?) -->$")
# Inline code that is no quotation: keys, commands, files and answers that the reader types.
TYPED = re.compile(r"^(tubewright\b.*|[a-z-]+|[a-z-]+ = .*|\[+[a-z-]+\]+|[\w/-]+\.(toml|json|svg|dxf|step|glb))$")


class Job:
    """The folder in which the chapter's job is done."""

    def __init__(self, program, folder):
        self.program = program
        self.folder = folder
        self.output = ""
        self.printed = {}

    def run(self, words):
        wanted = 0
        if found := re.fullmatch(r"(.*) \((\d+)\)", words):
            words, wanted = found.group(1), int(found.group(2))
        arguments = [part or bare for part, bare in re.findall(r'"([^"]*)"|(\S+)', words)]
        ran = subprocess.run([self.program, *arguments], cwd=self.folder, capture_output=True,
                             text=True, timeout=900, stdin=subprocess.DEVNULL)
        if ran.returncode != wanted:
            raise SystemExit(f"`tubewright {words}` ended with {ran.returncode}, the chapter says "
                             f"{wanted}:\n{ran.stdout}{ran.stderr}")
        self.output = ran.stdout if ran.stdout.strip() else ran.stderr
        self.printed.setdefault(words, []).append(self.output)

    def again(self, words):
        words, number = re.fullmatch(r"(.*?)(?: #(\d+))?", words).groups()
        self.output = self.printed[words][int(number or 0) - 1]

    def edit(self, words):
        words = words.replace("\\n", "\n")
        name, old, new = re.fullmatch(r"(\S+): (.*) => (.*)", words, re.S).groups()
        path = self.folder / name
        text = path.read_text()
        if text.count(old) != 1:
            raise SystemExit(f"{name}: {old!r} stands {text.count(old)} times, not once")
        path.write_text(text.replace(old, new))

    def show(self, words, text=None):
        start, _, end = words.partition(" ... ")
        lines = (self.output if text is None else text).splitlines()
        first = next((n for n, line in enumerate(lines) if re.search(start, line)), None)
        if first is None:
            raise SystemExit(f"nothing was printed that matches {start!r}:\n" + "\n".join(lines))
        last = len(lines)
        if end:
            last = next((n for n in range(first + 1, len(lines)) if re.search(end, lines[n])), last)
        return "\n".join(line.rstrip() for line in lines[first:last]).strip("\n").splitlines()

    def file(self, words):
        name, lines = words.split(": ", 1)
        return self.show(lines, (self.folder / name).read_text())


def done(job, chapter):
    """The chapter with every shown output as it is today."""
    lines = chapter.splitlines()
    new = []
    at = 0
    while at < len(lines):
        new.append(lines[at])
        directive = DIRECTIVE.match(lines[at])
        at += 1
        if not directive:
            continue
        kind, words = directive.groups()
        shown = getattr(job, kind)(words)
        if kind in ("show", "file"):
            if not lines[at].startswith("```"):
                raise SystemExit(f"line {at + 1}: a fence must follow {lines[at - 1]}")
            new.append(lines[at])
            new.extend(shown)
            at = lines.index("```", at + 1)
    return "\n".join(new) + "\n"


def misquoted(job, chapter):
    """Inline code that neither the program printed nor the car's files hold."""
    said = [output for outputs in job.printed.values() for output in outputs]
    held = [path.read_text() for path in sorted(job.folder.rglob("*.toml"))]
    known = re.sub(r"\s+", " ", "\n".join(said + held))
    prose = re.sub(r"^```.*?^```$", "", chapter, flags=re.M | re.S)
    prose = re.sub(r"<!--.*?-->", "", prose, flags=re.S)
    quoted = {re.sub(r"\s+", " ", quote) for quote in re.findall(r"`([^`]+)`", prose)}
    return sorted(quote for quote in quoted if not TYPED.match(quote) and quote not in known)


def main():
    program = Path(sys.argv[1]).resolve()
    pages = {path: path.read_text() for path in [CHAPTER, README]}
    with tempfile.TemporaryDirectory() as folder:
        job = Job(program, Path(folder))
        today = {path: done(job, page) for path, page in pages.items()}
        wrong = misquoted(job, pages[CHAPTER])
    for path, page in pages.items():
        if "--write" in sys.argv[2:]:
            path.write_text(today[path])
        elif today[path] != page:
            old, new = next((old, new) for old, new in
                            zip(page.splitlines(), today[path].splitlines()) if old != new)
            sys.exit(f"{path.name} says      {old}\nthe program says  {new}\n"
                     "look at the difference that this makes, and read the text beside it:\n"
                     "  python3 tests/house/worked_example.py PROGRAM --write")
    if wrong:
        sys.exit("the worked example quotes what nothing printed: " + ", ".join(wrong))
    print(f"{sum(map(len, job.printed.values()))} runs print what the pages show")


main()

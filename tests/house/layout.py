"""Rules of the house that no compiler checks: files that a person can hold in the head, tests that
always run, and scripts that are strict."""

import re

import tree

LONGEST = 600
# Long tables may be long; everything else is two rooms in one.
TABLES = re.compile(r"(^|[/_-])(tables?|data|keys)([/_.-]|$)")

BANNED_IN_RUST = {
    "a test that is never run": r"#\[ignore",
    "a test that asks for a panic": r"#\[should_panic",
}


BANNED_IN_TESTS = {
    "a test that waits for the clock": r"\bthread::sleep\b",
}


def main():
    problems = []
    lengths = []
    for path in tree.files(".rs", ".py"):
        lines = (tree.ROOT / path).read_text().splitlines()
        lengths.append(len(lines))
        if len(lines) > LONGEST and not TABLES.search(str(path)):
            problems.append(f"{path}: {len(lines)} lines; above {LONGEST} a file is two rooms")
        if path.suffix == ".rs":
            banned = BANNED_IN_RUST | (BANNED_IN_TESTS if "tests" in path.parts else {})
            for number, line in enumerate(lines, 1):
                for what, pattern in banned.items():
                    # A kill at a random moment has to let a random moment pass.
                    is_kill = any(".kill()" in near for near in lines[number : number + 4])
                    if re.search(pattern, line) and not is_kill:
                        problems.append(f"{path}:{number}: {what}: {line.strip()}")
    for path in tree.files():
        first = (tree.text(path) or "").split("\n", 1)[0]
        if first.startswith("#!") and "bash" in first:
            if not re.search(r"^set -euo pipefail$", tree.text(path), re.M):
                problems.append(f"{path}: a script without `set -euo pipefail`")
        if re.search(r"(^|[/_-])utils?([/_.-]|$)", str(path)):
            problems.append(f"{path}: 'util' says nothing; name the room for what is in it")
    lengths.sort()
    median = lengths[len(lengths) // 2]
    tree.verdict(problems, f"{len(lengths)} source files, median {median} lines, longest {lengths[-1]}")


main()

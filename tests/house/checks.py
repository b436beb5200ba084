"""Every published value that is carried in `crates/*/tests/data/*.toml` has a test that runs it.

Usage: checks.py [--list]. A check counts as run when its id stands, in quotes, in a Rust test of the
crate that carries it, and the data file is read by one. With --list every id is printed with its data
and its test file.
"""

import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def carried():
    for data in sorted((ROOT / "crates").glob("*/tests/**/*.toml")):
        try:
            checks = tomllib.loads(data.read_text(encoding="utf-8")).get("check", [])
        except (tomllib.TOMLDecodeError, UnicodeDecodeError):
            continue  # bad on purpose
        if isinstance(checks, list):
            yield data, [check for check in checks if isinstance(check, dict) and "id" in check]


def main():
    wrong, rows = [], []
    for data, checks in carried():
        crate = data.relative_to(ROOT / "crates").parts[0]
        tests = {
            path: path.read_text(encoding="utf-8")
            for path in sorted((ROOT / "crates" / crate / "tests").rglob("*.rs"))
        }
        if checks and not any(data.name in text for text in tests.values()):
            wrong.append(f"{data.relative_to(ROOT)} is read by no test")
        for check in checks:
            here = [path for path, text in tests.items() if f'"{check["id"]}"' in text]
            if not here:
                wrong.append(f"{data.relative_to(ROOT)}: no test runs {check['id']}")
            if not check.get("source", "").strip():
                wrong.append(f"{data.relative_to(ROOT)}: {check['id']} names no source")
            rows += [(check["id"], data.name, path.relative_to(ROOT)) for path in here]
    known = [row[0] for row in rows]
    if "--list" in sys.argv:
        for name, data, path in sorted(rows, key=lambda row: (str(row[2]), row[0])):
            print(f"{name:34} {data:20} {path}")
    for line in wrong:
        print(line)
    print(f"{len(set(known))} published checks have their test, {len(wrong)} problems")
    sys.exit(bool(wrong) or not known)


main()

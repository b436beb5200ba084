"""The files that git keeps or would keep: what the house rules are about."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


def files(*suffixes):
    """Every file under version control or new and not ignored, relative to the root."""
    listed = subprocess.run(
        ["git", "ls-files", "-z", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT, check=True, capture_output=True,
    ).stdout.decode().split("\0")
    paths = sorted(Path(name) for name in set(listed) if name)
    return [
        path for path in paths
        if (ROOT / path).is_file() and (not suffixes or path.suffix in suffixes)
    ]


def text(path):
    """The text of a file, or None when it is no text."""
    raw = (ROOT / path).read_bytes()
    if b"\0" in raw[:8192]:
        return None
    try:
        return raw.decode()
    except UnicodeDecodeError:
        return None


def verdict(problems, good):
    """Prints the problems and ends; `good` says what was looked at."""
    for problem in problems:
        print(problem)
    if problems:
        sys.exit(f"{len(problems)} to mend")
    print(good)

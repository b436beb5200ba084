"""The files that the drawing crate writes, made once for all peers that read them."""

import atexit
import functools
import shutil
import subprocess
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


@functools.cache
def folder():
    where = Path(tempfile.mkdtemp(prefix="tubewright-sheets-"))
    atexit.register(shutil.rmtree, where, ignore_errors=True)
    subprocess.run(
        ["cargo", "run", "-q", "--locked", "-p", "tubewright-sheets", "--example", "write_sheets", "--", str(where)],
        cwd=ROOT, check=True, timeout=1200, stdin=subprocess.DEVNULL,
    )
    return where

"""Kills the program again and again while it saves; nothing may be lost.

Usage: kills.py PROGRAM COUNT. Each round gives a mark another name in a copy of a demonstration
car and kills the program (SIGKILL) after a time drawn at random over what the command takes. After
each kill every file must be wholly as before or wholly as after, and the build must open.
"""

import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FILES = ["build.toml", "stock.toml", "shop.toml"]


def command(program, *arguments):
    return subprocess.Popen(
        [program, *map(str, arguments)], stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE, stderr=subprocess.PIPE,
    )


def finish(process, wanted):
    out, err = process.communicate(timeout=120)
    assert process.returncode in wanted, (process.returncode, out.decode(), err.decode())


def contents(car):
    return {name: (car / name).read_bytes() for name in FILES if (car / name).exists()}


def main():
    program, count = Path(sys.argv[1]).resolve(), int(sys.argv[2])
    source = sorted((ROOT / "builds").glob("*/build.toml"))[0].parent
    rng = random.Random(1)
    with tempfile.TemporaryDirectory() as folder:
        car = Path(folder) / "car"
        shutil.copytree(source, car)
        names = ["A left", "A left again"]
        before = contents(car)
        begun = time.monotonic()
        finish(command(program, "rename", car, "mark", *names), (0,))
        took = time.monotonic() - begun
        after = contents(car)
        assert before != after
        seen = {"before": 0, "after": 0, "between": 0}
        for number in range(count):
            for name, text in before.items():
                (car / name).write_bytes(text)
            process = command(program, "rename", car, "mark", *names)
            time.sleep(rng.uniform(0.0, took * 1.2))
            process.send_signal(signal.SIGKILL)
            process.communicate(timeout=60)
            now = contents(car)
            for name, text in now.items():
                assert text in (before[name], after[name]), f"kill {number}: {name} is half written"
            assert now.keys() == before.keys(), f"kill {number}: a file is gone"
            seen["before" if now == before else "after" if now == after else "between"] += 1
            # Whatever a kill left behind, the build opens and the next save works.
            finish(command(program, "measure", car, "--json"), (0, 1, 2) if seen["between"] else (0, 1))
    print(f"{count} kills in {took * 1000:.0f} ms each: {seen}; nothing lost")


main()

"""Kills the program again and again while it saves; nothing may be lost.

Usage: kills.py PROGRAM COUNT. Each round gives a tube another name, which stands in two files of a
copy of a demonstration car, and kills the program (SIGKILL) after a time drawn at random over what
the command takes. After each kill every file must be wholly as before or wholly as after; once the
folder is opened again all of them must be one or the other, nothing may be left lying beside them,
and the next save must work.
"""

import random
import shutil
import signal
import subprocess
import sys
import tempfile
import time
import tomllib
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
        listed = sorted(path.name for path in car.iterdir())
        tube = tomllib.loads((car / "stock.toml").read_text())["tube"][0]["name"]
        names = [tube, "tube of another name"]
        before = contents(car)
        begun = time.monotonic()
        finish(command(program, "rename", car, "tube", *names), (0,))
        took = time.monotonic() - begun
        after = contents(car)
        changed = [name for name in before if before[name] != after[name]]
        assert len(changed) > 1, f"only {changed} changed: a save of one file proves little"
        seen = {"before": 0, "after": 0, "between": 0}
        for number in range(count):
            for name, text in before.items():
                (car / name).write_bytes(text)
            process = command(program, "rename", car, "tube", *names)
            time.sleep(rng.uniform(0.0, took * 1.2))
            process.send_signal(signal.SIGKILL)
            process.communicate(timeout=60)
            now = contents(car)
            for name, text in now.items():
                assert text in (before[name], after[name]), f"kill {number}: {name} is half written"
            assert now.keys() == before.keys(), f"kill {number}: a file is gone"
            seen["before" if now == before else "after" if now == after else "between"] += 1
            # Whoever opens the folder next finishes or forgets the save; a name that is not there
            # changes nothing itself.
            finish(command(program, "rename", car, "tube", "no such tube", "x"), (2,))
            opened = contents(car)
            assert opened in (before, after), f"kill {number}: one file is new and another old"
            beside = sorted(path.name for path in car.iterdir() if path.name != "plan.json")
            strays = [name for name in beside if name not in listed and not name.endswith(".lock")]
            if number % 20 == 0:
                finish(command(program, "measure", car, "--json"), (0, 1))
            if opened == before:
                finish(command(program, "rename", car, "tube", *names), (0,))
                strays = [name for name in strays if (car / name).exists()]
            assert contents(car) == after, f"kill {number}: the next save did not work"
            assert not strays, f"kill {number}: {strays} lie about"
    print(f"{count} kills in {took * 1000:.0f} ms each: {seen}; nothing lost")


main()

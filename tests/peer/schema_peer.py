"""The published schemas, judged by a validator from outside: they are sound schemas, they take the
demonstration cars and they refuse files that are bad on purpose. The program must refuse the same
files, and say in which line."""

import json
import re
import subprocess
import tempfile
import tomllib
from pathlib import Path

import jsonschema

ROOT = Path(__file__).resolve().parents[2]
KINDS = ["build", "stock", "shop"]


def schema(kind):
    found = json.loads((ROOT / "schemas" / f"{kind}.schema.json").read_text())
    judge = jsonschema.validators.validator_for(found)
    judge.check_schema(found)
    return judge(found)


def taken(validator, path):
    return not list(validator.iter_errors(tomllib.loads(path.read_text())))


def refused_by_program(program, kind, bad):
    """The words of the refusal."""
    with tempfile.TemporaryDirectory() as folder:
        folder = Path(folder)
        # A sound car around the bad file, so that only the bad file can be at fault.
        (folder / "build.toml").write_text('format = "tubewright-build/1"\nname = "sound"\n')
        (folder / f"{kind}.toml").write_text(bad.read_text())
        ran = subprocess.run(
            [program, "check", str(folder)], capture_output=True, text=True, timeout=60,
            stdin=subprocess.DEVNULL,
        )
    assert ran.returncode == 2, f"{bad}: the program ended with {ran.returncode}:\n{ran.stdout}{ran.stderr}"
    return ran.stdout + ran.stderr


def main(program):
    good = bad = 0
    for kind in KINDS:
        validator = schema(kind)
        for path in sorted((ROOT / "builds").glob(f"*/{kind}.toml")):
            errors = [f"{'/'.join(map(str, e.absolute_path))}: {e.message}"
                      for e in validator.iter_errors(tomllib.loads(path.read_text()))]
            assert not errors, f"{path} is refused: {errors[:3]}"
            good += 1
        for path in sorted((ROOT / "tests/peer/bad" / kind).glob("*.toml")):
            assert not taken(validator, path), f"the schema takes {path}"
            words = refused_by_program(program, kind, path)
            assert re.search(rf"{kind}\.toml:\d+:\d+", words), f"{path}: no line is named:\n{words}"
            bad += 1
    assert good >= 6 and bad >= 25
    return f"{good} demonstration files taken, {bad} bad ones refused by both"

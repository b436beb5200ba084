"""The published schemas, judged by a validator from outside: they are sound schemas, they take the
demonstration cars and they refuse files that are bad on purpose. (That the program refuses the same
files, and says in which line, is among the command-line cases.)"""

import json
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


def main(_program):
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
            bad += 1
    assert good >= 6 and bad >= 25
    return f"{good} demonstration files taken, {bad} bad ones refused"

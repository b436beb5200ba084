"""The published schemas, judged by a validator from outside: they are sound schemas, they take the
demonstration cars and they refuse files that are bad on purpose. (That the program refuses the same
files, and says in which line, is among the command-line cases.)"""

import copy
import json
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


def one_of_each(document):
    """The document with one element of each kind in each list: a slip is a slip in all of them."""
    small = {}
    for key, value in document.items():
        if isinstance(value, list):
            kinds = {}
            for row in value:
                kinds.setdefault(row.get("kind") or row.get("what"), row)
            value = list(kinds.values())
        small[key] = value
    return small


def tables(node):
    """Every table in a document, however deep."""
    if isinstance(node, dict):
        yield node
        node = list(node.values())
    if isinstance(node, list):
        for child in node:
            yield from tables(child)


def spoilt(document):
    """Runs through copies of the document with one slip each: a key that nothing reads, a value of
    another type, a quantity without its unit. The document is the same again afterwards."""
    for table in list(tables(document)):
        table["colour"] = "red"
        yield "an unknown key"
        del table["colour"]
        for key, value in list(table.items()):
            if isinstance(value, dict):
                continue
            for slip in [812, ""]:
                if slip == 812 and isinstance(value, (int, float)):
                    continue
                table[key] = slip
                yield f"{key} = {slip!r}"
            table[key] = value


def plan_of(program):
    """The plan that the program keeps for a demonstration car."""
    with tempfile.TemporaryDirectory() as folder:
        car = Path(folder) / "car"
        for words in [["new", car, "--like", "pickup-six"], ["route", car, "--effort", "2000"],
                      ["buy", car], ["check", car]]:
            ran = subprocess.run([program, *words], capture_output=True, text=True, timeout=600)
            assert ran.returncode in (0, 1), f"{words}: {ran.stderr}"
        return json.loads((car / "plan.json").read_text())


def spoilt_plans(plan):
    """Copies of a plan, each with one thing that no plan has."""
    for at, key, value in [
        ([], "format", "tubewright-plan/0"),
        ([], "colour", "red"),
        (["stages"], "paint", {"read": "0" * 64, "result": {}}),
        (["stages"], "survey", []),
        (["stages", "survey"], "colour", "red"),
        (["stages", "survey"], "read", "0" * 63),
        (["stages", "survey"], "read", 7),
    ]:
        bad = copy.deepcopy(plan)
        table = bad
        for step in at:
            table = table[step]
        table[key] = value
        yield f"{'/'.join([*at, key])} = {value!r}", bad
    for at in [["format"], ["stages"], ["stages", "survey", "read"], ["stages", "survey", "result"]]:
        bad = copy.deepcopy(plan)
        table = bad
        for step in at[:-1]:
            table = table[step]
        del table[at[-1]]
        yield f"{'/'.join(at)} left out", bad


def main(program):
    good = bad = slips = 0
    for kind in KINDS:
        validator = schema(kind)
        for path in sorted((ROOT / "builds").glob(f"*/{kind}.toml")):
            errors = [f"{'/'.join(map(str, e.absolute_path))}: {e.message}"
                      for e in validator.iter_errors(tomllib.loads(path.read_text()))]
            assert not errors, f"{path} is refused: {errors[:3]}"
            good += 1
            document = one_of_each(tomllib.loads(path.read_text()))
            assert validator.is_valid(document)
            for slip in spoilt(document):
                slips += 1
                assert not validator.is_valid(document), f"{path}: the schema takes {slip}"
        for path in sorted((ROOT / "tests/peer/bad" / kind).glob("*.toml")):
            assert not taken(validator, path), f"the schema takes {path}"
            bad += 1
    plan, validator = plan_of(program), schema("plan")
    assert {"survey", "bodies", "routes", "stock", "checks"} <= set(plan["stages"]), plan["stages"].keys()
    errors = [error.message for error in validator.iter_errors(plan)]
    assert not errors, f"the program's own plan is refused: {errors[:3]}"
    for slip, bad_plan in spoilt_plans(plan):
        bad += 1
        assert not validator.is_valid(bad_plan), f"the schema takes a plan with {slip}"
    assert good >= 6 and bad >= 36
    return (f"{good} demonstration files and a plan taken, {bad} bad ones and {slips} copies with one slip each "
            "refused")

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


def main(_program):
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
    assert good >= 6 and bad >= 25
    return (f"{good} demonstration files taken, {bad} bad ones and {slips} copies with one slip each "
            "refused")

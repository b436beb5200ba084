"""The patterns of the published schemas, judged by a validator from outside on the same texts as the
parser: what the parser takes they take, and what is of a wrong form they refuse."""

import json
import tomllib
from pathlib import Path

import jsonschema

ROOT = Path(__file__).resolve().parents[2]


def quantities(node):
    """Every schema of a quantity under a node."""
    if isinstance(node, dict):
        if "pattern" in node and "examples" in node:
            yield {"type": node["type"], "pattern": node["pattern"], "examples": node["examples"]}
        for child in node.values():
            yield from quantities(child)
    elif isinstance(node, list):
        for child in node:
            yield from quantities(child)


def main(_program):
    found = {}
    for kind in ["build", "stock", "shop"]:
        schema = json.loads((ROOT / "schemas" / f"{kind}.schema.json").read_text())
        for quantity in quantities(schema):
            patterns = found.setdefault(quantity["examples"][0], {})
            patterns[quantity["pattern"]] = jsonschema.Draft202012Validator(quantity)
    corpus = tomllib.loads(
        (ROOT / "crates/tubewright-build/tests/data/quantities.toml").read_text())
    texts = 0
    wrong = []
    for kind, lists in corpus.items():
        judges = found.get(lists["good"][0], {})
        assert judges, f"no schema gives {lists['good'][0]!r} as its example"
        for pattern, judge in judges.items():
            for wanted, listed in [(True, lists["good"]), (False, lists["bad"])]:
                for text in listed:
                    texts += 1
                    if judge.is_valid(text) != wanted:
                        wrong.append(f"{kind}: {text!r} should be {'taken' if wanted else 'refused'}"
                                     f" by {pattern}")
    assert not wrong, "\n".join(wrong)
    return f"{texts} texts judged by the patterns as by the parser"

"""Every crate that is linked in comes under a licence that deny.toml allows, from the registry.

deny.toml is in cargo-deny's own form, so whoever has that tool gets its deeper verdict from the same
file; this script needs nothing that is not on the machine already.
"""

import json
import re
import subprocess
import tomllib

import tree


def allowed_by(expression, allow):
    """Whether an SPDX expression can be met with licences in `allow`. AND binds before OR."""
    tokens = re.findall(r"\(|\)|[^\s()]+", expression.replace("/", " OR "))
    position = 0

    def peek():
        return tokens[position] if position < len(tokens) else None

    def take():
        nonlocal position
        position += 1
        return tokens[position - 1]

    def either():
        verdict = both()
        while peek() == "OR":
            take()
            verdict = both() or verdict
        return verdict

    def both():
        verdict = one()
        while peek() == "AND":
            take()
            verdict = one() and verdict
        return verdict

    def one():
        if peek() == "(":
            take()
            verdict = either()
            take()
            return verdict
        name = take()
        if peek() == "WITH":
            take()
            name = f"{name} WITH {take()}"
        return name in allow

    return either() and position == len(tokens)


def main():
    assert allowed_by("(MIT OR Apache-2.0) AND Unicode-3.0", {"MIT", "Unicode-3.0"})
    assert not allowed_by("MIT AND GPL-3.0-only", {"MIT"})
    rules = tomllib.loads((tree.ROOT / "deny.toml").read_text())
    allow = set(rules["licenses"]["allow"])
    denied = {ban["crate"] for ban in rules["bans"]["deny"]}
    packages = json.loads(subprocess.run(
        ["cargo", "metadata", "--format-version", "1", "--locked", "--all-features"],
        cwd=tree.ROOT, check=True, capture_output=True,
    ).stdout)["packages"]
    problems = []
    used = set()
    for package in packages:
        name = f"{package['name']} {package['version']}"
        expression = package["license"] or ""
        if not expression or not allowed_by(expression, allow):
            problems.append(f"{name}: licence {expression or 'not stated'!r} is not allowed by deny.toml")
        used |= {licence for licence in allow if licence in expression}
        if package["name"] in denied:
            problems.append(f"{name}: banned by deny.toml")
        source = package["source"]
        if source and not source.startswith(("registry+", "sparse+")):
            problems.append(f"{name}: comes from {source}, not from the registry")
    for licence in sorted(allow - used):
        problems.append(f"deny.toml allows {licence}, which nothing here comes under")
    tree.verdict(problems, f"{len(packages)} crates under {', '.join(sorted(used))}")


main()

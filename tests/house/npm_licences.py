"""Every package that goes into the built page comes under a licence that may go into the program, and
so does every one that builds or tests it; the lock file says which.
"""

import json

import tree

# What may be linked into a program under MIT or Apache-2.0.
BUNDLED = {"MIT", "ISC", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0", "0BSD"}
# What may only build or test.
TOOLS = BUNDLED | {"MPL-2.0", "CC0-1.0", "BlueOak-1.0.0", "Python-2.0"}


def main():
    lock = json.loads((tree.ROOT / "web/package-lock.json").read_text())
    problems = []
    packages = {path: entry for path, entry in lock["packages"].items() if path}
    for path, entry in packages.items():
        name = path.removeprefix("node_modules/")
        licence = entry.get("license", "none named")
        is_tool = entry.get("dev") or entry.get("devOptional")
        if licence not in (TOOLS if is_tool else BUNDLED):
            problems.append(f"{name}: {licence}")
        if not entry.get("integrity"):
            problems.append(f"{name}: no checksum in the lock file")
    tree.verdict(problems, f"{len(packages)} packages of the page, each under a licence that may")


main()

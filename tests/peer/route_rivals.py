"""Route problems, the program against two planners of others: never dearer than either, and no bound
above what either finds. `main` is a short look at two problems; `route_table.py` makes the table."""

import json
import subprocess
from pathlib import Path

from route_planners import Judge, answer_of, optimised, sampled

ROOT = Path(__file__).resolve().parents[2]
PROBLEMS = ROOT / "crates/tubewright-route/tests/problems"
NEAR = 0.01


def judge_program():
    subprocess.run(["cargo", "build", "--quiet", "--release", "--locked", "-p", "tubewright-route",
                    "--example", "judge"], cwd=ROOT, check=True)
    return ROOT / "target/release/examples/judge"


def compare(program, file, effort, optimiser_s, planner_s):
    """Costs of the program (with its bound), of the optimiser and of the planner; None for nothing."""
    judge = judge_program()
    data = json.loads(file.read_text())
    ours, bound = answer_of(program, file, judge, effort)
    theirs = {}
    for name, planner, seconds in (("optimiser", optimised, optimiser_s),
                                   ("planner", sampled, planner_s)):
        theirs[name] = planner(Judge(judge, file, data), seconds)
        if theirs[name] is not None:
            assert ours is not None and ours <= theirs[name] + NEAR, \
                f"{file.stem}: {ours} here, {theirs[name]} by the {name}"
            assert bound <= theirs[name] + NEAR, f"{file.stem}: bound {bound} above {theirs[name]}"
    return ours, bound, theirs["optimiser"], theirs["planner"]


def main(program):
    rows = []
    for name in ("a04-skew", "b02-under-crossmember"):
        ours, _, optimiser, planner = compare(program, PROBLEMS / f"{name}.json", 4000, 6, 3)
        rows.append(f"{name} {ours:.2f} (optimiser {optimiser or 'nothing'}, planner {planner or 'nothing'})")
    return "; ".join(rows)

"""The whole table of route problems: the program, a general optimiser given 30 s and a sampling planner
given 5 s of processor time. Needs `ompl==2.0.1` beside requirements.txt.
Usage: route_table.py PROGRAM [EFFORT] [FILE...]; without files the public problems."""

import sys
from pathlib import Path

from route_rivals import PROBLEMS, compare


def shown(cost):
    return f"{cost:8.2f}" if cost is not None else "       –"


def main():
    program = Path(sys.argv[1]).resolve()
    effort = int(sys.argv[2]) if len(sys.argv) > 2 else 20_000
    files = [Path(f) for f in sys.argv[3:]] or sorted(
        f for f in PROBLEMS.glob("*.json") if f.name[0] in "abcd")
    print(f"{'problem':24} {'cost':>8} {'bound':>8} {'optimiser':>9} {'planner':>8}")
    for file in files:
        ours, bound, optimiser, planner = compare(program, file, effort, 30, 5)
        print(f"{file.stem:24} {shown(ours)} {shown(bound)} {shown(optimiser):>9} {shown(planner)}",
              flush=True)


main()

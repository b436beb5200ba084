"""Two planners of others on route problems: a general global optimiser, and a sampling planner of a
general motion library with its paths made into bends. What each finds is judged by the walker."""

import json
import subprocess
import tempfile
import time
from pathlib import Path

import numpy as np
from scipy.optimize import differential_evolution

from route_space import Answer, Chain, Problem, unit


class Judge:
    """The cheapest answer that the walker lets pass."""

    def __init__(self, program, problem_file, data):
        self.program, self.file, self.data = program, problem_file, data
        self.best, self.first_s, self.begun = None, None, time.process_time()

    def look(self, solution):
        with tempfile.NamedTemporaryFile("w", suffix=".json") as answer:
            json.dump(solution, answer)
            answer.flush()
            said = json.loads(subprocess.run(
                [self.program, self.file, answer.name], check=True, capture_output=True, text=True,
            ).stdout)
        if said["holds"] and (self.best is None or said["cost"] < self.best):
            self.best = said["cost"]
            self.first_s = self.first_s or time.process_time() - self.begun
        return said


def optimised(judge, seconds, seed=1):
    """Differential evolution (Storn and Price 1997, as in scipy) over the corners of two, three and
    four bends; the place of a crossover and of components with them."""
    problem = Problem(judge.data)
    for bends in (2, 3, 4):
        answer = Answer(problem, bends)
        until = time.process_time() + seconds / 3
        found = differential_evolution(
            answer.price, [(0, 1)] * answer.size, rng=seed, popsize=8, maxiter=100_000, tol=0,
            polish=False, callback=lambda x, convergence=0: time.process_time() > until)
        judge.look(answer.solution(found.x))
    return judge.best


def sampled(judge, seconds, seed=1):
    """RRT* (Karaman and Frazzoli 2011, as in OMPL) for the tube's ball between the ends, again and
    again; each path is thinned to a polygon whose corners become bends. None where a problem has
    components or a crossover, which such a path knows nothing of."""
    if judge.data["components"] or judge.data["crossovers"] or len(judge.data["runs"]) != 1:
        return None
    from ompl import base, geometric, util

    util.setLogLevel(util.LogLevel.LOG_NONE)
    rng = np.random.default_rng(seed)
    problem = Problem(judge.data)
    run, (ends,) = problem.chains(None)[0]
    start, way, _, end, end_way, _ = ends
    tube = problem.tube(run)
    radius = tube["od"] / 2
    space = base.RealVectorStateSpace(3)
    bounds = base.RealVectorBounds(3)
    reach = 0.3 * np.linalg.norm(end - start) + 200
    for k in range(3):
        bounds.setLow(k, float(max(problem.low[k], min(start[k], end[k]) - reach)))
        bounds.setHigh(k, float(min(problem.high[k], max(start[k], end[k]) + reach)))
    space.setBounds(bounds)
    until = time.process_time() + seconds
    while time.process_time() < until:
        lead = tube["clr"] * rng.uniform(0.2, 1.5, 2)
        first, last = start + lead[0] * way, end - lead[1] * end_way
        setup = geometric.SimpleSetup(space)
        setup.setStateValidityChecker(lambda s: bool(
            problem.margin(np.array([[s[0], s[1], s[2]]]), radius)[0] > 0))
        a, b = space.allocState(), space.allocState()
        for k in range(3):
            a[k], b[k] = float(first[k]), float(last[k])
        setup.setStartAndGoalStates(a, b)
        setup.setPlanner(geometric.RRTstar(setup.getSpaceInformation()))
        if not setup.solve(float(min(0.5, max(until - time.process_time(), 0.05)))):
            continue
        setup.simplifySolution()
        path = setup.getSolutionPath()
        states = [np.array([s[0], s[1], s[2]]) for s in path.getStates()]
        corners = thinned(states)
        chain = Chain(problem, run, ends, corners, [])
        if chain.lack > 0.4:
            continue
        judge.look({"problem": judge.data["id"], "status": "solved",
                    "runs": {run["id"]: chain.pieces}, "crossovers": {}})
    return judge.best


def thinned(states):
    """Corners where the path turns by more than five degrees."""
    keep = [states[0]]
    for before, here, after in zip(states, states[1:], states[2:]):
        if unit(here - before) @ unit(after - here) < np.cos(np.radians(5)):
            keep.append(here)
    return [*keep, states[-1]]


def answer_of(program, problem_file, judge_program, effort):
    """The program's own answer, judged like the others."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "answer.json"
        subprocess.run([program, "route-problem", problem_file, "--out", out, "--effort", str(effort)],
                       check=False, capture_output=True)
        data = json.loads(Path(problem_file).read_text())
        judge = Judge(judge_program, problem_file, data)
        solution = json.loads(out.read_text())
        if solution["status"] == "solved":
            judge.look(solution)
        return judge.best, solution.get("lower_bound")

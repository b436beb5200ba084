"""The published networks, adjusted by the program and by scipy's least squares: the same places to a
millionth of a millimetre. The time of both is shown; it is no verdict, for machines differ."""

import json
import subprocess
import time
import tomllib
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares

ROOT = Path(__file__).resolve().parents[2]
DATA = ROOT / "crates/tubewright-survey/tests/data/networks.toml"
NEAR_MM = 1e-6


def model(inputs):
    """Names, start values and the function of the weighted misfits."""
    held = {m["p"]: np.array(m["xyz"], float) for m in inputs.get("datum_mm", [])}
    names = [m["p"] for m in inputs["approx_mm"]]
    start = np.array([m["xyz"] for m in inputs["approx_mm"]], float).ravel()
    readings = inputs["observations"]

    def misfits(x):
        places = dict(held)
        places.update(zip(names, x.reshape(-1, 3)))
        return [(shows(r, places) - r["value"]) / r["sigma"] for r in readings]

    return names, start, misfits


def shows(reading, places):
    kind, p = reading["kind"], places[reading["p"]]
    if kind == "height":
        return p[2]
    d = places[reading["q"]] - p
    if kind == "dist":
        return np.sqrt(d @ d)
    if kind == "hdist":
        return np.hypot(d[0], d[1])
    if kind == "incl_deg":
        return np.degrees(np.arctan2(d[2], np.hypot(d[0], d[1])))
    return {"sym_x": -d[0], "sym_y": p[1] + places[reading["q"]][1], "sym_z": -d[2]}[kind]


def adjusted(names, start, misfits):
    best = least_squares(misfits, start, method="trf", x_scale=1000.0,
                         xtol=1e-15, ftol=1e-15, gtol=1e-15, max_nfev=200)
    return dict(zip(names, best.x.reshape(-1, 3)))


def polished(names, places, misfits):
    """A last Gauss-Newton step with central differences, so that what is left is rounding."""
    x = np.concatenate([places[name] for name in names])
    for _ in range(3):
        columns = []
        for j in range(len(x)):
            step = np.zeros(len(x))
            step[j] = 1e-3
            columns.append((np.array(misfits(x + step)) - np.array(misfits(x - step))) / 2e-3)
        x = x - np.linalg.lstsq(np.array(columns).T, np.array(misfits(x)), rcond=1e-9)[0]
    return dict(zip(names, x.reshape(-1, 3)))


def off_mm(names, ours, theirs, is_free):
    """The largest difference: of places, or, where no place is held, of distances."""
    if not is_free:
        return max(np.abs(np.array(ours[n]) - theirs[n]).max() for n in names)
    return max(
        abs(np.linalg.norm(np.subtract(ours[a], ours[b])) - np.linalg.norm(theirs[a] - theirs[b]))
        for a in names for b in names
    )


def main(_program):
    ours = json.loads(subprocess.run(
        ["cargo", "run", "--quiet", "--release", "--locked", "-p", "tubewright-survey",
         "--example", "solve_networks"],
        cwd=ROOT, check=True, capture_output=True, text=True,
    ).stdout)
    checks = {c["id"]: c for c in tomllib.loads(DATA.read_text())["check"]}
    said = []
    for name, found in ours.items():
        inputs = checks[name]["inputs"]
        names, start, misfits = model(inputs)
        begun = time.perf_counter()
        theirs = adjusted(names, start, misfits)
        seconds = time.perf_counter() - begun
        theirs = polished(names, theirs, misfits)
        off = off_mm(names, found["places"], theirs, "datum_mm" not in inputs)
        assert off <= NEAR_MM, f"{name}: {off:.2e} mm apart"
        said.append(f"{name} within {off:.0e} mm, {seconds / found['seconds']:.0f} times as fast")
    assert len(said) >= 4
    return "; ".join(said)

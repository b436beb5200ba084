#!/usr/bin/env python3
"""Measures the three demonstration cars: from the true places of each (`cars/`), writes the
readings between the two comment lines of its `build.toml`, its scan, and the truth as a fixture;
then shows how well the readings fix the car and that a hidden run clears everything.

    python3 tests/truth/make_builds.py [--lines] [slug ...]      (needs numpy)

`--lines` also lists every pair of marks between which a tape can be pulled.

The seed is fixed: the same script writes the same bytes.
"""

import importlib
import sys
import tomllib
from pathlib import Path

import numpy as np

from jig import bodies, fixture, survey
from jig.runs import clearances, walked

HERE = Path(__file__).resolve().parent
BUILDS = HERE.parent.parent / "builds"
CARS = {"estate-v6": "cars.estate_v6", "kitcar-mid4": "cars.kitcar_mid4", "pickup-six": "cars.pickup_six"}
BEGIN = "# --- readings, as they were called out and written down ---"
END = "# --- end of readings ---"
PLACES = "# places: written by tests/truth/make_builds.py\n"
PLACES_END = "# end of places\n"


def between(text, begin, end, new):
    head, rest = text.split(begin)
    return head + begin + new + end + rest.split(end)[1]


def make(slug):
    car_file = importlib.import_module(CARS[slug])
    path = BUILDS / slug / "build.toml"
    text = path.read_text(encoding="utf-8")
    head, rest = text.split(BEGIN)
    _, tail = rest.split(END)
    doc = tomllib.loads(head + tail)
    truth = car_file.truth()
    car = survey.Car(doc, truth["places"], truth["ends"], truth["setups"])
    named = {m["name"] for m in doc["mark"]} | {p["name"] for p in doc["point"]}
    if named != set(truth["places"]):
        raise SystemExit(f"{slug}: places differ: {named ^ set(truth['places'])}")

    solids, _ = bodies.obstacles(doc, truth["places"], truth["setups"], skip=("scan", "ground", "half-space"))
    plan = survey.Plan(car, {name: distance for name, *_, distance in solids})
    car_file.measure(plan)
    for line in plan.blocked():
        print(f"   {slug}: a tape cannot pass {line}")
    if "--lines" in sys.argv:
        print("   open lines between marks:", plan.open_lines())
    planted = survey.take_readings(car, plan.readings, car_file.SEED, car_file.SLIPS, car_file.INCHES)
    judge_survey(slug, car, plan.readings, {p["reading"] for p in planted})

    runs = car_file.runs(truth)
    scans, seen = car_file.scans(truth, BUILDS / slug) if hasattr(car_file, "scans") else ({}, {})
    judge_runs(slug, doc, truth, runs, scans)

    for marks in seen.values():
        tail = between(tail, PLACES, PLACES_END, "".join(fixture.scan_place(m, p) for m, p in marks.items()))
    path.write_text(head + BEGIN + "\n\n" + fixture.readings_text(plan.readings) + END + tail, encoding="utf-8")
    fixture.write(HERE / f"{slug}.toml", slug, doc, truth, planted, runs, CARS[slug])


def judge_survey(slug, car, readings, slipped):
    print(f"== {slug}: {len(readings)} readings, {car.size} unknowns")
    named, kept = [], list(readings)
    while True:
        # The most doubtful reading is set aside until none is: these should be the slips.
        values = survey.observed(car, kept)
        labels = [r for r in kept for _ in range(survey.rows_of(r))]
        _, _, _, w, _ = survey.adjust(car, kept, values)
        worst = int(np.argmax(np.abs(w)))
        if abs(w[worst]) < 3.3:
            break
        named.append(labels[worst]["number"])
        kept = [r for r in kept if r["number"] != named[-1]]
    print(f"   doubtful readings {named}, planted slips {sorted(slipped)}")
    kept = [r for r in readings if r["number"] not in slipped]
    values = survey.observed(car, kept)
    labels = [r for r in kept for _ in range(survey.rows_of(r))]
    x, q, redundancy, w, chi = survey.adjust(car, kept, values)
    print(f"   without them: chi2 {chi:.0f} over {len(values) - car.size + 6}, largest |w| {np.abs(w).max():.1f}")
    print(f"   redundancy: median {np.median(redundancy):.2f}; below 0.2:")
    for k in np.argsort(redundancy):
        if redundancy[k] < 0.2:
            words = [str(v) for key, v in labels[k].items() if key not in ("setup", "reads")]
            print(f"     {redundancy[k]:.2f}  {' '.join(words)}")
    place = {}
    for name in car.place_names:
        at, _ = car.slot(name)
        place[name] = (np.sqrt(np.linalg.eigvalsh(q[at : at + 3, at : at + 3])[-1]), np.linalg.norm(x[at : at + 3]))
    worst = sorted(place.items(), key=lambda p: -p[1][0])[:6]
    print("   weakest places (sigma, error mm):", [(n, round(float(s), 1), round(float(e), 1)) for n, (s, e) in worst])
    for name in car.end_names:
        at, _ = car.slot(name)
        place = np.sqrt(np.linalg.eigvalsh(q[at : at + 3, at : at + 3])[-1])
        tilt = np.degrees(np.sqrt(np.linalg.eigvalsh(q[at + 3 : at + 5, at + 3 : at + 5])[-1]))
        error = np.degrees(np.linalg.norm(x[at + 3 : at + 5]))
        print(f"   end {name}: sigma {place:.1f} mm, {tilt:.2f} deg; error {np.linalg.norm(x[at : at + 3]):.1f} mm, {error:.2f} deg")


def judge_runs(slug, doc, truth, runs, scans):
    solids, gaps = bodies.obstacles(doc, truth["places"], truth["setups"], scans)
    sway = max([0.0] + [bodies.length_mm(c["sway"]) for c in doc["carrier"] if c["kind"] == "hung"])
    found = clearances(runs, solids, gaps, doc["carrier"], truth["places"], sway)
    print(f"   {len(solids)} bodies; spare beyond gap, sway and motion, tightest first:")
    for spare, run, what, body in found[:12]:
        print(f"     {spare:6.1f} mm  {run}: {what} to {body}")
    for run in runs:
        if run.pieces:
            at, travel = walked(run, run.vertices[1] - run.vertices[0])
            off, turned = np.linalg.norm(at - run.end[0]), np.linalg.norm(travel - run.end[1])
            if off > 1e-6 or turned > 1e-9:
                raise SystemExit(f"{slug}, {run.name}: the pieces end {off} mm away, {turned} rad askew")
        short = [p for p in run.pieces if p["type"] == "straight" and p["length_mm"] < 25 - 1e-9]
        over = [p for p in run.pieces if p["type"] == "bend" and not 5 <= p["angle_deg"] <= 90.05]
        print(f"   {run.name}: {len(run.pieces)} pieces", "SHORT" if short else "", short, over)
        print("     " + ", ".join(fixture.piece_words(p) for p in run.pieces))


if __name__ == "__main__":
    for slug in [a for a in sys.argv[1:] if a in CARS] or CARS:
        make(slug)

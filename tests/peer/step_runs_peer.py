"""The runs of a whole car as STEP, judged by a CAD kernel: every piece a valid solid, neighbours touch
and do not share steel."""

import json
import math
import re
import subprocess
import tempfile
from pathlib import Path

from OCP.BRepAlgoAPI import BRepAlgoAPI_Common
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepExtrema import BRepExtrema_DistShapeShape
from OCP.BRepGProp import BRepGProp
from OCP.GProp import GProp_GProps

from step_solids_peer import shapes

# Steel of a tube of 57 mm with a wall of 1.5 mm.
RING_MM2 = math.pi * (57.0 - 1.5) * 1.5


def volume(shape):
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, properties)
    return properties.Mass()


def judge_volumes(parts, told):
    """Straights and bends of the STEP file hold the steel of the lengths that the route names."""
    runs = told["alternatives"][0]["runs"]
    judged = 0
    for piece in (piece for run in runs for piece in run["pieces"]):
        length = {"straight": lambda p: p["length"],
                  "bend": lambda p: math.radians(p["angle"]) * p["clr"]}.get(piece["type"])
        if length is None:
            continue
        name, solid = next((name, solid) for name, solid in parts
                           if re.match(rf"{piece['mark']}\b", name))
        # Guldin: the ring's area times the way of its middle.
        want = RING_MM2 * length(piece)
        assert abs(volume(solid) - want) < 1e-5 * want + 0.01 * RING_MM2, (
            f"{name}: {volume(solid)} mm3, should be {want} mm3")
        judged += 1
    assert judged > 15, f"only {judged} pieces judged by volume"


def main(program):
    with tempfile.TemporaryDirectory() as where:
        folder = Path(where)
        subprocess.run([program, "new", folder / "car", "--like", "estate-v6"], check=True, capture_output=True)
        subprocess.run([program, "route", folder / "car", "--effort", "2000"], check=False,
                       capture_output=True, timeout=600)
        subprocess.run([program, "sheets", folder / "car", "--out", folder / "out", "--date", "2026-03-14"],
                       check=False, capture_output=True, timeout=600)
        parts = shapes(folder / "out" / "runs.step")
        told = json.loads(subprocess.run([program, "route", folder / "car", "--json", "--effort", "2000"], check=False,
                                         capture_output=True, text=True, timeout=600).stdout)
    judge_volumes(parts, told)
    runs = {}
    for name, solid in parts:
        assert BRepCheck_Analyzer(solid, True).IsValid(), f"{name}: not a valid solid"
        mark = re.match(r"([A-Z])(\d+)", name)
        assert mark, f"{name} does not begin with a mark"
        runs.setdefault(mark[1], []).append((int(mark[2]), name, solid))
    pairs = 0
    for letter in sorted(runs):
        pieces = sorted(runs[letter], key=lambda piece: piece[:2])
        numbers = sorted({number for number, _, _ in pieces})
        for number, after in zip(numbers, numbers[1:]):
            if after != number + 1:
                continue
            here = [(name, solid) for at, name, solid in pieces if at == number]
            there = [(name, solid) for at, name, solid in pieces if at == after]
            is_crossover = len(here) > 1 or len(there) > 1
            # A crossover is drawn as its arms: the run meets one of them.
            gap, name, other = min(
                (BRepExtrema_DistShapeShape(one, two).Value(), name, other)
                for name, one in here for other, two in there)
            shared = max(volume(BRepAlgoAPI_Common(one, two).Shape()) for _, one in here for _, two in there)
            pairs += 1
            # The sizes of the shop's steps close a run to its crossover within what the checks allow,
            # 3 mm; it is pulled in at the weld, so the two may stand apart or overlap by that much.
            apart, steel = (3.0, 3.0 * RING_MM2) if is_crossover else (0.01, 1.0)
            assert gap < apart, f"{name} and {other} stand {gap} mm apart"
            assert shared < steel, f"{name} and {other} share {shared} mm3 of steel"
    assert pairs > 20, f"only {pairs} pairs of neighbours"
    return f"{len(parts)} solids valid, {pairs} pairs of neighbours touch without clash"

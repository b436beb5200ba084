"""The runs of a whole car as STEP, judged by a CAD kernel: every piece a valid solid, neighbours touch
and do not share steel."""

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


def volume(shape):
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, properties)
    return properties.Mass()


def main(program):
    with tempfile.TemporaryDirectory() as where:
        folder = Path(where)
        subprocess.run([program, "new", folder / "car", "--like", "estate-v6"], check=True, capture_output=True)
        subprocess.run([program, "route", folder / "car", "--effort", "2000"], check=False,
                       capture_output=True, timeout=600)
        subprocess.run([program, "sheets", folder / "car", "--out", folder / "out", "--date", "2026-03-14"],
                       check=False, capture_output=True, timeout=600)
        parts = shapes(folder / "out" / "runs.step")
    runs = {}
    for name, solid in parts:
        assert BRepCheck_Analyzer(solid, True).IsValid(), f"{name}: not a valid solid"
        mark = re.match(r"([A-Z])(\d+)", name)
        assert mark, f"{name} does not begin with a mark"
        runs.setdefault(mark[1], []).append((int(mark[2]), name, solid))
    pairs = 0
    for letter in sorted(runs):
        pieces = sorted(runs[letter], key=lambda piece: piece[:2])
        for (number, name, solid), (after, other, neighbour) in zip(pieces, pieces[1:]):
            if after != number + 1:
                continue  # the arms of a crossover overlap in its middle and are one part
            pairs += 1
            gap = BRepExtrema_DistShapeShape(solid, neighbour).Value()
            assert gap < 0.01, f"{name} and {other} stand {gap} mm apart"
            shared = volume(BRepAlgoAPI_Common(solid, neighbour).Shape())
            assert shared < 1.0, f"{name} and {other} share {shared} mm3 of steel"
    assert pairs > 20, f"only {pairs} pairs of neighbours"
    return f"{len(parts)} solids valid, {pairs} pairs of neighbours touch without clash"

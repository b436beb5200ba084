"""A crossover of two split bends, judged by a CAD kernel: the same half is made there from a torus,
two cylinders and a box, and both halves must be valid, of that volume, and touch only in the plane."""

import math

from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCylinder, BRepPrimAPI_MakeTorus
from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt
from OCP.GProp import GProp_GProps

import sheets_files
from step_solids_peer import shapes

# As in the example that writes the files: OD 57, wall 1.5, CLR 85.5, plane 100 from the bend's axis.
OUTER, WALL, CLR, PLANE = 28.5, 1.5, 85.5, 100.0
CASES = {"split-cross-long": (90.0, 100.0), "split-cross-short": (30.0, 100.0)}


def volume(shape):
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, properties, 1e-9)
    return properties.Mass()


def rod(radius, degrees, leg):
    """Bend and legs as one full body, apex on x."""
    half = math.radians(degrees) / 2.0
    start = gp_Ax2(gp_Pnt(0, 0, 0), gp_Dir(0, 0, 1), gp_Dir(math.cos(half), -math.sin(half), 0))
    body = BRepPrimAPI_MakeTorus(start, CLR, radius, 2.0 * half).Shape()
    for sign in (-1.0, 1.0):
        at = gp_Pnt(CLR * math.cos(half), sign * CLR * math.sin(half), 0)
        along = gp_Dir(-math.sin(half), sign * math.cos(half), 0)
        leg_body = BRepPrimAPI_MakeCylinder(gp_Ax2(at, along), radius, leg).Shape()
        body = BRepAlgoAPI_Fuse(body, leg_body).Shape()
    return body


def half(degrees, leg):
    tube = BRepAlgoAPI_Cut(rod(OUTER, degrees, leg), rod(OUTER - WALL, degrees, leg)).Shape()
    box = BRepPrimAPI_MakeBox(gp_Pnt(PLANE, -500, -200), gp_Pnt(PLANE + 500, 500, 200)).Shape()
    return BRepAlgoAPI_Cut(tube, box).Shape()


def main(_program):
    for name, (degrees, leg) in CASES.items():
        parts = shapes(sheets_files.folder() / f"{name}.step")
        assert [part for part, _ in parts] == ["split bend one", "split bend two"], parts
        want = volume(half(degrees, leg))
        for part, solid in parts:
            assert BRepCheck_Analyzer(solid, True).IsValid(), f"{name}, {part}: not a valid solid"
            found = volume(solid)
            assert abs(found / want - 1.0) < 1e-5, f"{name}, {part}: {found} mm3, should be {want} mm3"
        shared = volume(BRepAlgoAPI_Common(parts[0][1], parts[1][1]).Shape())
        assert abs(shared) < 0.01, f"{name}: the halves share {shared} mm3"
    return f"{len(CASES)} crossovers of split bends, both halves valid, volumes within 1e-5, no clash"

"""STEP and glTF files, judged by a CAD kernel and a mesh library: sound solids with their names,
volumes against the sizes of the pieces, ends where the run says."""

import math
import tomllib

import numpy as np
import trimesh
from OCP.Bnd import Bnd_Box
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepBndLib import BRepBndLib
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepGProp import BRepGProp
from OCP.GeomAbs import GeomAbs_Cylinder, GeomAbs_Plane, GeomAbs_Torus
from OCP.GProp import GProp_GProps
from OCP.IFSelect import IFSelect_RetDone
from OCP.STEPCAFControl import STEPCAFControl_Reader
from OCP.TCollection import TCollection_ExtendedString
from OCP.TDataStd import TDataStd_Name
from OCP.collections import Sequence_TDF_Label
from OCP.TDF import TDF_Label
from OCP.TDocStd import TDocStd_Document
from OCP.TopAbs import TopAbs_FACE, TopAbs_SOLID
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS
from OCP.XCAFDoc import XCAFDoc_DocumentTool, XCAFDoc_ShapeTool

import sheets_files

DATA = sheets_files.ROOT / "crates/tubewright-sheets/tests/data/estate.toml"
OUTER, WALL = 28.5, 1.5


def face(shape):
    return TopoDS.Face_s(shape) if hasattr(TopoDS, "Face_s") else TopoDS.Face(shape)


def shapes(path):
    """(name, solid) of every part, in the order of the file."""
    reader = STEPCAFControl_Reader()
    reader.SetNameMode(True)
    assert reader.ReadFile(str(path)) == IFSelect_RetDone, f"{path.name} cannot be read"
    document = TDocStd_Document(TCollection_ExtendedString("judge"))
    assert reader.Transfer(document), f"{path.name} cannot be carried over"
    tool = XCAFDoc_DocumentTool.ShapeTool_s(document.Main())
    roots = Sequence_TDF_Label()
    tool.GetFreeShapes(roots)
    assert roots.Length() == 1, f"{path.name}: one assembly, not {roots.Length()}"
    parts = Sequence_TDF_Label()
    XCAFDoc_ShapeTool.GetComponents_s(roots.Value(1), parts)
    out = []
    for i in range(1, parts.Length() + 1):
        used = TDF_Label()
        XCAFDoc_ShapeTool.GetReferredShape_s(parts.Value(i), used)
        name = TDataStd_Name()
        assert used.FindAttribute(TDataStd_Name.GetID_s(), name), "a part without a name"
        shape = XCAFDoc_ShapeTool.GetShape_s(used)
        solids = TopExp_Explorer(shape, TopAbs_SOLID)
        assert solids.More(), f"{name.Get().ToExtString()}: no solid"
        solid = solids.Current()
        solids.Next()
        assert not solids.More(), f"{name.Get().ToExtString()}: more than one solid"
        out.append((name.Get().ToExtString(), solid))
    return out


def judged(name, solid, volume):
    check = BRepCheck_Analyzer(solid, True)
    assert check.IsValid(), f"{name}: not a valid solid"
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(solid, properties, 1e-10)
    found = properties.Mass()
    assert abs(found / volume - 1.0) < 1e-6, f"{name}: {found} mm3, should be {volume} mm3"
    kinds = []
    faces = TopExp_Explorer(solid, TopAbs_FACE)
    while faces.More():
        kinds.append(BRepAdaptor_Surface(face(faces.Current())).GetType())
        faces.Next()
    return kinds


def planes(solid):
    """Middle and outward direction of each flat face."""
    out = []
    faces = TopExp_Explorer(solid, TopAbs_FACE)
    while faces.More():
        one = face(faces.Current())
        if BRepAdaptor_Surface(one).GetType() == GeomAbs_Plane:
            p = GProp_GProps()
            BRepGProp.SurfaceProperties_s(one, p)
            c = p.CentreOfMass()
            out.append(np.array([c.X(), c.Y(), c.Z()]))
        faces.Next()
    return out


def ring(radius, wall):
    return math.pi * (radius**2 - (radius - wall) ** 2)


BODIES = {"flex": (38.0, 25.0), "cat": (55.0, 40.0), "resonator": (50.0, 40.0), "silencer": (65.0, 45.0)}


def expected(row):
    if row["type"] == "bend":
        return ring(OUTER, WALL) * 85.5 * math.radians(row["angle-deg"])
    length = row["length-mm"]
    if row["type"] == "straight":
        return ring(OUTER, WALL) * length
    body, neck = BODIES[row["name"].split()[0]]
    return math.pi * (OUTER**2 * 2 * neck + body**2 * (length - 2 * neck))


def walk(run):
    """Places of the joints, from the corners of the centre line and the lengths: straight stretches lie
    on the lines between corners."""
    corners = [np.array(v) for v in run["vertices"]]
    return corners[0], corners[-1]


def estate():
    found = shapes(sheets_files.folder() / "estate.step")
    runs = tomllib.loads(DATA.read_text())["run"]
    rows = [(mark, i, row) for mark, halves in [("L", (0, 1)), ("R", (2, 3))] for i in halves for row in runs[i]["pieces"]]
    plain = [(name, solid) for name, solid in found if " arm " not in name]
    arms = [(name, solid) for name, solid in found if " arm " in name]
    assert len(plain) == len(rows) and len(arms) == 4, f"{len(plain)} pieces and {len(arms)} arms"
    ends = {}
    for (name, solid), (mark, half, row) in zip(plain, rows):
        assert name.startswith(mark), f"{name} stands where a piece {mark}.. should"
        kinds = judged(name, solid, expected(row))
        round_kind = GeomAbs_Torus if row["type"] == "bend" else GeomAbs_Cylinder
        assert kinds.count(round_kind) >= 2, f"{name}: its surfaces are not recognised"
        middles = planes(solid)
        ends.setdefault(half, []).append((name, middles))
    for (name, solid) in arms:
        judged(name, solid, ring(OUTER, WALL) * math.hypot(120.0, 60.0))
    touched = 0
    for half, chain in ends.items():
        start, end = walk(runs[half])
        near = min(np.linalg.norm(m - start) for m in chain[0][1])
        assert near < 0.01, f"{chain[0][0]} begins {near} mm off"
        near = min(np.linalg.norm(m - end) for m in chain[-1][1])
        assert near < 0.01, f"{chain[-1][0]} ends {near} mm off"
        for (one, a), (two, b) in zip(chain, chain[1:]):
            gap = min(np.linalg.norm(p - q) for p in a for q in b)
            assert gap < 0.01, f"{one} and {two} miss each other by {gap} mm"
            touched += 1
    return len(found), touched


def cuts():
    found = shapes(sheets_files.folder() / "cuts.step")
    area = ring(31.75, 1.6)
    want = {"C1": area * 200.0, "C2": area * 200.0, "C3": area * (95.0 + 95.0 * math.radians(60.0))}
    assert [name for name, _ in found] == list(want), [name for name, _ in found]
    for name, solid in found:
        kinds = judged(name, solid, want[name])
        assert kinds.count(GeomAbs_Plane) == 2, f"{name}: {kinds}"
        # The middles of both end faces lie on the centre line, 200 mm apart.
        if name != "C3":
            a, b = planes(solid)
            assert abs(np.linalg.norm(a - b) - 200.0) < 0.01, f"{name}: ends {np.linalg.norm(a - b)} mm apart"


def gltf():
    watertight = 0
    for file in ["estate.glb", "cuts.glb"]:
        scene = trimesh.load(sheets_files.folder() / file, process=False)
        solids = dict(shapes(sheets_files.folder() / file.replace("glb", "step")))
        assert set(scene.graph.nodes_geometry) == set(solids), "the two files name different parts"
        for node in scene.graph.nodes_geometry:
            transform, geometry = scene.graph[node]
            mesh = scene.geometry[geometry].copy()
            mesh.apply_transform(transform)
            mesh.merge_vertices(merge_norm=True, merge_tex=True, digits_vertex=6)
            assert mesh.is_watertight, f"{node}: open mesh"
            assert mesh.is_winding_consistent and mesh.volume > 0, f"{node}: faces turned in"
            properties = GProp_GProps()
            BRepGProp.VolumeProperties_s(solids[node], properties)
            share = mesh.volume * 1e9 / properties.Mass()
            assert abs(share - 1.0) < 0.02, f"{node}: {share} of the solid's volume"
            # glTF: x to the right (y of the car), y up (z), z rearwards (x).
            box = Bnd_Box()
            BRepBndLib.AddOptimal_s(solids[node], box, True, False)
            lo, hi = box.CornerMin(), box.CornerMax()
            want = np.array([[c.Y(), c.Z(), c.X()] for c in (lo, hi)])
            assert np.max(np.abs(mesh.bounds * 1000.0 - want)) < 0.25, f"{node}: {mesh.bounds * 1000} against {want}"
            watertight += 1
    return watertight


def main(program):
    solids, touched = estate()
    cuts()
    meshes = gltf()
    return f"{solids + 3} valid solids, volumes within 1e-6, {touched} joints within 0.01 mm, {meshes} closed meshes"

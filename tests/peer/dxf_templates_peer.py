"""Templates at true scale, measured by outside readers: the DXF read by ezdxf, the SVG rendered by
resvg and measured in its pixels. The curves are worked out here again from their formulas."""

import io
import math
import re

import ezdxf
import numpy as np
import resvg_py
from PIL import Image

import sheets_files

PAPER = 0.1
LEAD = 40.0
DOTS_PER_MM = 40  # 1016 dots per inch: half a dot is 0.0125 mm


def mitre(q):
    return 31.75 * math.tan(math.radians(15.0)) * (1.0 - math.cos(q))


def saddle(q):
    r, header, angle = 25.4, 38.1, math.radians(30.0)
    root = math.sqrt(header**2 - (r * math.sin(q)) ** 2)
    return (root - r * math.cos(angle) * math.cos(q)) / math.sin(angle)


def points(msp, layer):
    out = []
    for e in msp.query(f'LINE[layer=="{layer}"]'):
        out += [e.dxf.start, e.dxf.end]
    for e in msp.query(f'POLYLINE[layer=="{layer}"]'):
        out += [v.dxf.location for v in e.vertices]
    return np.array([[p.x, p.y] for p in out])


def near(what, got, want, tolerance):
    assert abs(got - want) <= tolerance, f"{what}: {got} mm, should be {want} mm (within {tolerance} mm)"


def read(name):
    document = ezdxf.readfile(sheets_files.folder() / f"template-{name}.dxf")
    errors = document.audit().errors
    assert not errors, f"{name}: ezdxf finds errors: {[e.message for e in errors]}"
    return document.modelspace()


def strip_of(msp):
    ring = next(e for e in msp.query('POLYLINE[layer=="STRIP"]'))
    corners = np.array([[v.dxf.location.x, v.dxf.location.y] for v in ring.vertices])
    return corners.min(axis=0), corners.max(axis=0)


def dxf():
    measured = 0
    for name in ["mitre", "saddle", "hole", "split"]:
        msp = read(name)
        for layer, length in [("RULER-100-MM", 100.0), ("RULER-4-IN", 101.6)]:
            ruler = points(msp, layer)
            near(f"{name} {layer}", np.ptp(ruler[:, 0]), length, 0.01)
    for name, radius, curve in [("mitre", 31.75, mitre), ("saddle", 25.4, saddle)]:
        msp = read(name)
        low, high = strip_of(msp)
        girth = 2.0 * math.pi * (radius + PAPER / 2.0)
        near(f"{name} girth", high[0] - low[0], girth, 0.01)
        turns = np.linspace(0.0, 2.0 * math.pi, 3601)
        values = [curve(q) for q in turns]
        if name == "mitre":
            zero = low[1] + LEAD  # kept below: the square edge is 40 mm under the shortest line
        else:
            zero = high[1] - LEAD - max(values)
        ring = points(msp, "CURVE")
        # Every vertex on the curve, and every place of the curve on the line between vertices.
        for x, y in ring:
            near(f"{name} at {x}", y - zero, curve((x - low[0]) / girth * 2.0 * math.pi), 0.01)
            measured += 1
        order = np.argsort(ring[:, 0], kind="stable")
        drawn = np.interp(low[0] + girth * turns / (2.0 * math.pi), ring[order, 0], ring[order, 1])
        steep = 1.0 + np.max(np.abs(np.diff(values) / np.diff(girth * turns / (2.0 * math.pi))))
        off = np.max(np.abs(drawn - zero - values))
        assert off <= 0.01 * steep, f"{name}: the polyline misses the curve by {off} mm"
    # The hole: a boss of 22.2 mm, 8 mm off the axis of a 63.5 mm tube.
    ring = points(read("hole"), "CURVE")
    stretch = (31.75 + PAPER / 2.0) / 31.75
    round_mm = [31.75 * math.asin((11.1 * math.sin(q) + 8.0) / 31.75) * stretch for q in np.linspace(0, 2 * math.pi, 7201)]
    near("hole along", np.ptp(ring[:, 1]), 22.2, 0.01)
    near("hole round", np.ptp(ring[:, 0]), max(round_mm) - min(round_mm), 0.01)
    # The split: half length of the opening on the outside line, (R + r) acos(d / (R + r)).
    split = points(read("split"), "CURVE")
    rho = 95.0 + 31.75
    near("split", np.ptp(split[:, 1]), 2.0 * rho * math.acos(110.0 / rho), 0.01)
    return measured


def rendered(name, layers):
    """The picture in black and white with only the given layers left."""
    text = (sheets_files.folder() / f"template-{name}.svg").read_text()
    keep = re.findall(r'<g data-layer="([^"]*)">\n(.*?)^</g>$', text, re.S | re.M)
    body = "\n".join(f"<g>{inner}</g>" for layer, inner in keep if layer in layers)
    head = text[: text.index("<title>")]
    png = resvg_py.svg_to_bytes(
        svg_string=f"{head}{body}</svg>", background="#ffffff", skip_system_fonts=True,
        dpi=DOTS_PER_MM * 25.4,
    )
    return np.array(Image.open(io.BytesIO(bytes(png))).convert("L")) < 128


def span(dark, axis):
    at = np.flatnonzero(dark.any(axis=axis))
    return at[0] / DOTS_PER_MM, (at[-1] + 1) / DOTS_PER_MM


def svg():
    """Lengths of the rulers, and the mitre's curve column by column, in the pixels of the picture."""
    left, right = span(rendered("mitre", ["ruler-100-mm"]), 0)
    near("ruler in the rendered picture", right - left - 0.13, 100.0, 0.05)  # less the width of a line
    left, right = span(rendered("mitre", ["ruler-4-in"]), 0)
    near("inch ruler in the rendered picture", right - left - 0.13, 101.6, 0.05)
    outline = rendered("mitre", ["strip"])
    left, _ = span(outline, 0)
    _, bottom = span(outline, 1)
    left, bottom = left + 0.125, bottom - 0.125
    dark = rendered("mitre", ["curve"])
    radius = 31.75 + PAPER / 2.0
    worst = 0.0
    for q in np.radians(np.arange(15, 346, 15)):
        column = dark[:, round((left + radius * q) * DOTS_PER_MM)]
        rows = np.flatnonzero(column)
        middle = (rows[0] + rows[-1] + 1) / 2.0 / DOTS_PER_MM
        worst = max(worst, abs(bottom - middle - LEAD - mitre(q)))
    assert worst < 0.05, f"the rendered curve is off by {worst} mm"
    return worst


def main(program):
    measured = dxf()
    worst = svg()
    return f"{measured} places of DXF curves within 0.01 mm, rendered SVG within {worst:.3f} mm"

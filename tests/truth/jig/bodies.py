"""Bodies of a build file as signed distances (mm, negative inside), with the motions of their
carriers, made from the true places. Simple on purpose: this judges routes, it does not plan them."""

import numpy as np

from .quantities import angle_rad, length_mm, tyre_mm

WORDS = {
    "up": (0, 0, 1), "down": (0, 0, -1), "above": (0, 0, 1), "below": (0, 0, -1),
    "left": (0, -1, 0), "right": (0, 1, 0), "front": (-1, 0, 0), "rear": (1, 0, 0),
    "forwards": (-1, 0, 0), "rearwards": (1, 0, 0),
}
DEFAULT_GAPS = {
    "structure": 25, "floor": 20, "driveline": 25, "moving": 25, "tyre": 25, "soft": 75,
    "soft-shielded": 40, "fuel-brake": 75, "heat": 15, "ground": 120, "bonnet": 25, "service": 0,
    "run": 15, "self": 10,
}


def unit(v):
    v = np.asarray(v, float)
    return v / np.linalg.norm(v)


def word(name):
    return np.array(WORDS[name], float)


def capsule(a, b, radius):
    a, b = np.asarray(a, float), np.asarray(b, float)
    d = b - a

    def distance(p):
        t = np.clip((p - a) @ d / (d @ d), 0.0, 1.0)
        return np.linalg.norm(p - a - t[:, None] * d, axis=1) - radius

    return distance


def cylinder(a, b, radius):
    a, b = np.asarray(a, float), np.asarray(b, float)
    length = np.linalg.norm(b - a)
    u = (b - a) / length

    def distance(p):
        along = (p - a) @ u
        out = np.linalg.norm(p - a - along[:, None] * u, axis=1) - radius
        over = np.abs(along - length / 2.0) - length / 2.0
        outside = np.hypot(np.maximum(out, 0.0), np.maximum(over, 0.0))
        return outside + np.minimum(np.maximum(out, over), 0.0)

    return distance


def box(centre, axes, half):
    centre, axes, half = np.asarray(centre), np.array(axes), np.asarray(half)

    def distance(p):
        q = np.abs((p - centre) @ axes.T) - half
        outside = np.linalg.norm(np.maximum(q, 0.0), axis=1)
        return outside + np.minimum(q.max(axis=1), 0.0)

    return distance


def sphere(at, radius):
    return lambda p: np.linalg.norm(p - at, axis=1) - radius


def half_space(point, outward):
    return lambda p: (p - point) @ outward


def prism(corners, direction, depth):
    """An outline (best plane through its corners) extruded square to itself toward `direction`."""
    corners = np.array(corners)
    origin = corners.mean(axis=0)
    normal = np.linalg.svd(corners - origin)[2][2]
    normal = normal if normal @ direction > 0 else -normal
    u = unit(corners[1] - corners[0] - normal * ((corners[1] - corners[0]) @ normal))
    v = np.cross(normal, u)
    flat = np.column_stack([(corners - origin) @ u, (corners - origin) @ v])

    def distance(p):
        q = p - origin
        x = np.column_stack([q @ u, q @ v])
        best, inside = np.full(len(p), np.inf), np.zeros(len(p), bool)
        for a, b in zip(flat, np.roll(flat, -1, axis=0)):
            d = b - a
            t = np.clip((x - a) @ d / (d @ d), 0.0, 1.0)
            best = np.minimum(best, np.linalg.norm(x - a - t[:, None] * d, axis=1))
            crosses = (a[1] > x[:, 1]) != (b[1] > x[:, 1])
            with np.errstate(divide="ignore", invalid="ignore"):
                at = a[0] + (x[:, 1] - a[1]) / (b[1] - a[1]) * d[0]
            inside ^= crosses & (x[:, 0] < at)
        out = np.where(inside, -best, best)
        over = np.abs(q @ normal - depth / 2.0) - depth / 2.0
        outside = np.hypot(np.maximum(out, 0.0), np.maximum(over, 0.0))
        return outside + np.minimum(np.maximum(out, over), 0.0)

    return distance


def mesh(vertices, triangles):
    """Distance to an open surface of triangles, by brute force over those that are near."""
    a, b, c = (vertices[triangles[:, k]] for k in range(3))
    centres = (a + b + c) / 3.0
    spread = max(np.linalg.norm(v - centres, axis=1).max() for v in (a, b, c))

    def distance(points):
        out = np.empty(len(points))
        for k, p in enumerate(points):
            rough = np.linalg.norm(centres - p, axis=1)
            near = rough <= rough.min() + 2.0 * spread
            out[k] = triangle_distance(p, a[near], b[near], c[near]).min()
        return out

    return distance


def triangle_distance(p, a, b, c):
    normal = np.cross(b - a, c - a)
    normal /= np.maximum(np.linalg.norm(normal, axis=1), 1e-12)[:, None]
    best = np.full(len(a), np.inf)
    inside = np.ones(len(a), bool)
    for s, e in ((a, b), (b, c), (c, a)):
        d = e - s
        t = np.clip(((p - s) * d).sum(1) / np.maximum((d * d).sum(1), 1e-12), 0.0, 1.0)
        best = np.minimum(best, np.linalg.norm(p - s - t[:, None] * d, axis=1))
        inside &= (np.cross(d, p - s) * normal).sum(1) >= 0.0
    return np.where(inside, np.abs(((p - a) * normal).sum(1)), best)


def solid(body, places, setups, scans):
    kind = body["kind"]
    if kind == "rail":
        a, b = places[body["from"]], places[body["to"]]
        u = unit(b - a)
        side = np.sign((a + b)[1]) or 1.0
        across = unit(np.array([0, side, 0]) - u * (u[1] * side))  # outwards from the car's middle
        high = np.cross(u, across)
        high = high if high[2] > 0 else -high
        width, height = length_mm(body["width"]), length_mm(body["height"])
        level, inout = body["edge"].split()
        centre = (a + b) / 2.0 + across * (width / 2.0) * (-1 if inout == "outer" else 1)
        centre = centre + high * (height / 2.0) * (1 if level == "lower" else -1)
        return box(centre, [u, across, high], [np.linalg.norm(b - a) / 2.0, width / 2.0, height / 2.0])
    if kind == "tube":
        a, b = places[body["from"]], places[body["to"]]
        radius = length_mm(body["girth"]) / np.pi / 2.0 if "girth" in body else length_mm(body["diameter"]) / 2.0
        u, toward = unit(b - a), word(body["touched"])
        out = unit(toward - u * (toward @ u))
        return cylinder(a - out * radius, b - out * radius, radius)
    if kind == "tyre":
        radius, width = tyre_mm(body["marking"])
        inward = np.array([0.0, 1.0 if body["side"] == "left" else -1.0, 0.0])
        middle = places[body["hub"]] + inward * length_mm(body["inboard"])
        half = inward * (width / 2.0 + length_mm(body.get("bulge", "0 mm")))
        return cylinder(middle - half, middle + half, radius)
    if kind in ("tank", "outline"):
        corners = [places[c] for c in body["corners"]]
        return prism(corners, word(body["depth-goes"]), length_mm(body["depth"]))
    if kind == "box":
        a, b = places[body["corner"]], places[body["opposite"]]
        return box((a + b) / 2.0, np.eye(3), np.abs(b - a) / 2.0)
    if kind in ("capsule", "cylinder"):
        make = capsule if kind == "capsule" else cylinder
        return make(places[body["from"]], places[body["to"]], length_mm(body["diameter"]) / 2.0)
    if kind == "sphere":
        return sphere(places[body["at"]], length_mm(body["diameter"]) / 2.0)
    if kind == "half-space":
        a, b, c = (places[n] for n in body["through"])
        normal = unit(np.cross(b - a, c - a))
        # Keep-out lies "above": the outward normal points the other way.
        return half_space(a, normal if normal @ word(body["keep-out"]) < 0 else -normal)
    if kind == "ground":
        up, offset = setups[body["setup"]]
        return half_space(up * offset, up)
    if kind == "scan":
        return mesh(*scans[body["name"]])
    raise ValueError(kind)


def turn(axis, angle):
    x, y, z = axis
    k = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + np.sin(angle) * k + (1 - np.cos(angle)) * k @ k


def poses(carrier, places, steps=5):
    """Rigid motions (rotation, centre, shift) over the range of a carrier."""
    still = [(np.eye(3), np.zeros(3), np.zeros(3))]
    if carrier is None or carrier["kind"] == "hung":
        return still
    if carrier["kind"] == "engine":
        a, b = (places[n] for n in carrier["axis"])
        low, high = (angle_rad(t) for t in carrier["rock"])
        return [(turn(unit(b - a), t), a, np.zeros(3)) for t in np.linspace(low, high, steps)]
    low, high = -length_mm(carrier["droop"]), length_mm(carrier["bump"])
    lifts = [(np.eye(3), np.zeros(3), np.array([0, 0, z])) for z in np.linspace(low, high, 2 * steps - 1)]
    if "steer" not in carrier:
        return lifts
    a, b = (places[n] for n in carrier["kingpin"])
    low, high = (angle_rad(t) for t in carrier["steer"])
    return [
        (turn(unit(b - a), t), a, shift)
        for t in np.linspace(low, high, 2 * steps - 1)
        for _, _, shift in lifts
    ]


def obstacles(doc, places, setups, scans=None, skip=()):
    """(name, gap, carrier name, distance function) of every body but the kinds to skip; the gap
    counts a scan's noise."""
    gaps = DEFAULT_GAPS | {k: length_mm(v) for k, v in doc.get("gaps", {}).items()}
    out = []
    for body in doc["body"]:
        if body["kind"] in skip:
            continue
        gap = length_mm(body["gap"]) if "gap" in body else gaps[body["class"]]
        gap += length_mm(body.get("noise", "0 mm"))
        out.append((body["name"], gap, body.get("carrier", "chassis"), solid(body, places, setups, scans or {})))
    return out, gaps

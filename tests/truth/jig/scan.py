"""A scan of a floor as a phone makes it: noisy triangles in a frame of its own, as binary STL."""

import struct

import numpy as np


def height_field(height, xs, ys, step, hole, noise, seed):
    """Vertices and triangles of `z = height(x, y)` seen from below, less those in the hole."""
    rng = np.random.default_rng(seed)
    nx, ny = (int(round((b - a) / step)) + 1 for a, b in (xs, ys))
    gx, gy = np.meshgrid(np.linspace(*xs, nx), np.linspace(*ys, ny), indexing="ij")
    x = gx + rng.uniform(-0.2, 0.2, gx.shape) * step
    y = gy + rng.uniform(-0.2, 0.2, gy.shape) * step
    z = height(x, y) + rng.normal(0.0, noise, x.shape)
    vertices = np.column_stack([x.ravel(), y.ravel(), z.ravel()])
    index = np.arange(nx * ny).reshape(nx, ny)
    a, b, c, d = index[:-1, :-1].ravel(), index[1:, :-1].ravel(), index[1:, 1:].ravel(), index[:-1, 1:].ravel()
    triangles = np.concatenate([np.column_stack([a, c, b]), np.column_stack([a, d, c])])
    middle = vertices[triangles].mean(axis=1)
    return vertices, triangles[~hole(middle[:, 0], middle[:, 1])]


def write(path, vertices, triangles, seen, per_unit, seed, noise=0.8):
    """Writes the scan in its own frame and unit; gives the marks' places in it, with their noise."""
    rng = np.random.default_rng(seed)
    turn, _ = np.linalg.qr(rng.normal(size=(3, 3)))
    if np.linalg.det(turn) < 0:
        turn[:, 0] *= -1.0
    shift = rng.uniform(-1500.0, 1500.0, 3)

    def in_scan(p):
        return (p @ turn.T + shift) / per_unit

    corners = in_scan(vertices)[triangles].astype("<f4")
    normals = np.cross(corners[:, 1] - corners[:, 0], corners[:, 2] - corners[:, 0]).astype("<f4")
    normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-20)
    record = np.zeros(len(triangles), dtype=[("n", "<f4", 3), ("v", "<f4", (3, 3)), ("a", "<u2")])
    record["n"], record["v"] = normals, corners
    path.parent.mkdir(exist_ok=True)
    with path.open("wb") as file:
        file.write(b"cab floor from below, in metres".ljust(80, b" "))
        file.write(struct.pack("<I", len(triangles)))
        file.write(record.tobytes())
    return {m: np.round(in_scan(p + rng.normal(0.0, noise, 3)), 4) for m, p in seen.items()}

"""Solves the networks of `cargo run --release -p tubewright-survey --example dump_networks` with
scipy's least squares and compares: same distances to 1e-6 mm, and the ratio of the times.

    cargo run --release -p tubewright-survey --example dump_networks > networks.json
    python scipy_networks.py networks.json [least ratio]

Both start from the same rough places. scipy is timed twice: with its own finite differences, and with
the derivatives written out in numpy (the harder peer). Its time does not include covariance or
residual statistics; ours does. The exit code is 1 when a distance differs or scipy is not slower by the least
ratio (20 unless given), with the derivatives written out too.
"""

import json
import sys
import time

import numpy as np
import scipy
from scipy.optimize import least_squares

TOLERANCE_MM = 1e-6
REPEATS = 5


class Net:
    def __init__(self, raw):
        self.points = np.array([p["start"] for p in raw["points"]], float)
        self.free = np.array([not p["held"] for p in raw["points"]])
        obs = raw["observations"]
        self.value = np.array([o["value"] for o in obs])
        self.sigma = np.array([o["sigma"] for o in obs])
        self.p = np.array([o["p"] for o in obs])
        self.q = np.array([o["q"] for o in obs])
        kind = np.array([o["kind"] for o in obs])
        self.rows = {k: np.flatnonzero(kind == k) for k in sorted(set(kind))}
        self.column = np.cumsum(self.free) - 1
        self.count = int(self.free.sum())

    def start(self):
        return self.points[self.free].ravel()

    def places(self, x):
        places = self.points.copy()
        places[self.free] = x.reshape(-1, 3)
        return places

    def residuals(self, x):
        places = self.places(x)
        a, b = places[self.p], places[self.q]
        d = b - a
        run = np.hypot(d[:, 0], d[:, 1])
        model = np.empty(len(self.value))
        for kind, rows in self.rows.items():
            if kind == "dist":
                model[rows] = np.sqrt((d[rows] ** 2).sum(axis=1))
            elif kind == "hdist":
                model[rows] = run[rows]
            elif kind == "height":
                model[rows] = a[rows, 2]
            elif kind == "incl":
                model[rows] = np.arctan2(d[rows, 2], run[rows])
            elif kind == "sym_y":
                model[rows] = a[rows, 1] + b[rows, 1]
            else:
                k = "xyz".index(kind[-1])
                model[rows] = a[rows, k] - b[rows, k]
        return (model - self.value) / self.sigma

    def jacobian(self, x):
        places = self.places(x)
        a, b = places[self.p], places[self.q]
        d = b - a
        by_p = np.zeros((len(self.value), 3))
        by_q = np.zeros((len(self.value), 3))
        for kind, rows in self.rows.items():
            if kind == "dist":
                u = d[rows] / np.sqrt((d[rows] ** 2).sum(axis=1))[:, None]
                by_p[rows], by_q[rows] = -u, u
            elif kind == "hdist":
                u = d[rows] * [1, 1, 0]
                u = u / np.sqrt((u**2).sum(axis=1))[:, None]
                by_p[rows], by_q[rows] = -u, u
            elif kind == "height":
                by_p[rows, 2] = 1
            elif kind == "incl":
                run = np.hypot(d[rows, 0], d[rows, 1])
                s = (d[rows] ** 2).sum(axis=1)
                g = np.column_stack(
                    [-d[rows, 2] * d[rows, 0] / run, -d[rows, 2] * d[rows, 1] / run, run]
                ) / s[:, None]
                by_p[rows], by_q[rows] = -g, g
            elif kind == "sym_y":
                by_p[rows, 1] = by_q[rows, 1] = 1
            else:
                k = "xyz".index(kind[-1])
                by_p[rows, k], by_q[rows, k] = 1, -1
        j = np.zeros((len(self.value), 3 * self.count))
        index = np.arange(len(self.value))
        for ends, by in ((self.p, by_p), (self.q, by_q)):
            free = self.free[ends]
            for k in range(3):
                j[index[free], 3 * self.column[ends[free]] + k] += by[free, k]
        return j / self.sigma[:, None]


def distances(places):
    d = places[:, None, :] - places[None, :, :]
    return np.sqrt((d**2).sum(axis=2))


def timed(net, **options):
    least, result = np.inf, None
    for _ in range(REPEATS):
        begun = time.perf_counter()
        result = least_squares(
            net.residuals, net.start(), xtol=1e-15, ftol=1e-15, gtol=1e-15, **options
        )
        least = min(least, time.perf_counter() - begun)
    return least, result


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        raw = json.load(file)
    wanted = float(sys.argv[2]) if len(sys.argv) > 2 else 20.0
    print(f"scipy {scipy.__version__}, numpy {np.__version__}")
    print(f"{'network':26}{'largest difference':>20}{'ours':>12}{'scipy':>12}{'ratio':>8}{'with J':>12}{'ratio':>8}")
    sound = True
    for one in raw:
        net = Net(one)
        plain, _ = timed(net)
        written, result = timed(net, jac=net.jacobian)
        ours = np.array([p["adjusted"] for p in one["points"]])
        off = np.abs(distances(ours) - distances(net.places(result.x))).max()
        ratio, ratio_written = plain / one["seconds"], written / one["seconds"]
        print(
            f"{one['name']:26}{off:17.1e} mm{one['seconds'] * 1e3:9.3f} ms{plain * 1e3:9.2f} ms"
            f"{ratio:8.0f}{written * 1e3:9.2f} ms{ratio_written:8.0f}"
        )
        sound &= off <= TOLERANCE_MM and min(ratio, ratio_written) >= wanted
    print("same answer and faster by the wanted ratio" if sound else "NOT as wanted")
    return 0 if sound else 1


if __name__ == "__main__":
    sys.exit(main())

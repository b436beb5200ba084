"""Route problems for the peers: bodies as distances, chains as polygons of their tangents, pieces as
the form writes them. Written from the definition of the form alone."""

import numpy as np


def unit(v):
    return v / np.linalg.norm(v)


class Solid:
    """Distance of many places to one body, zero inside."""

    def __init__(self, body):
        self.kind = body["type"]
        get = lambda key: np.array(body[key], float)
        if self.kind == "box":
            self.centre, self.half = get("center"), get("half")
            self.axes = np.array(body.get("axes") or np.eye(3), float)
        elif self.kind in ("capsule", "cylinder"):
            self.a, self.b, self.r = get("a"), get("b"), body["r"]
        elif self.kind == "ground":
            self.z = body["z"]
        elif self.kind == "envelope":
            self.members = [Solid(m) for m in body["of"]]
        elif self.kind == "mesh":
            self.corners = get("vertices")[np.array(body["faces"], int)]
        else:
            raise ValueError(self.kind)

    def distance(self, p):
        if self.kind == "box":
            q = np.abs((p - self.centre) @ self.axes.T) - self.half
            return np.linalg.norm(np.maximum(q, 0), axis=1)
        if self.kind == "ground":
            return np.maximum(p[:, 2] - self.z, 0)
        if self.kind == "envelope":
            return np.min([m.distance(p) for m in self.members], axis=0)
        if self.kind == "mesh":
            return self.mesh(p)
        ab = self.b - self.a
        length = np.linalg.norm(ab)
        if self.kind == "capsule":
            t = np.clip((p - self.a) @ ab / length**2, 0, 1)
            off = np.linalg.norm(p - self.a - t[:, None] * ab, axis=1)
            return np.maximum(off - self.r, 0)
        along = (p - self.a) @ (ab / length)
        radial = np.linalg.norm(p - self.a - along[:, None] * (ab / length), axis=1)
        end = np.maximum(np.abs(along - length / 2) - length / 2, 0)
        return np.hypot(end, np.maximum(radial - self.r, 0))

    def mesh(self, p):
        a, b, c = (self.corners[:, k] for k in range(3))
        best = np.full(len(p), np.inf)
        for u, v in ((a, b), (b, c), (c, a)):
            uv = v - u
            t = np.einsum("nfk,fk->nf", p[:, None] - u, uv) / np.einsum("fk,fk->f", uv, uv)
            near = u + np.clip(t, 0, 1)[..., None] * uv
            best = np.minimum(best, np.linalg.norm(p[:, None] - near, axis=2).min(axis=1))
        normal = np.cross(b - a, c - a)
        normal /= np.linalg.norm(normal, axis=1)[:, None]
        height = np.einsum("nfk,fk->nf", p[:, None] - a, normal)
        foot = p[:, None] - height[..., None] * normal
        inside = np.ones_like(height, bool)
        for u, v in ((a, b), (b, c), (c, a)):
            inside &= np.einsum("nfk,nfk->nf", np.cross(np.broadcast_to(v - u, foot.shape), foot - u),
                                np.broadcast_to(normal, foot.shape)) >= 0
        best = np.minimum(best, np.where(inside, np.abs(height), np.inf).min(axis=1))
        # Solid angle over 4 pi is one inside (van Oosterom and Strackee, IEEE Trans. BME 30, 1983).
        x, y, z = (q - p[:, None] for q in (a, b, c))
        nx, ny, nz = (np.linalg.norm(q, axis=2) for q in (x, y, z))
        top = np.einsum("nfk,nfk->nf", x, np.cross(y, z))
        dot = lambda u, v: np.einsum("nfk,nfk->nf", u, v)
        under = nx * ny * nz + dot(x, y) * nz + dot(y, z) * nx + dot(z, x) * ny
        return np.where(np.arctan2(top, under).sum(axis=1) > np.pi, 0, best)


class Problem:
    def __init__(self, data):
        self.data, self.rules, self.cost = data, data["rules"], data["cost"]
        self.bodies = [
            (Solid(o), o["min_clearance"] if o["type"] == "ground" else data["gaps"][o["class"]])
            for o in data["obstacles"]
        ]
        self.low, self.high = (np.array(data["workspace"][k], float) for k in ("min", "max"))

    def margin(self, places, radii):
        """Distance less gap and radius, least over bodies and workspace."""
        best = np.minimum((places - self.low).min(axis=1), (self.high - places).min(axis=1))
        for solid, gap in self.bodies:
            best = np.minimum(best, solid.distance(places) - gap)
        return best - radii

    def tube(self, run):
        return self.data["tubes"][run["tube"]]

    def chains(self, pose):
        """For each run its chains: start, travel, twelve, end, travel there, components allowed."""
        out = []
        for run in self.data["runs"]:
            start = np.array(run["start"]["point"], float)
            way = np.array(run["start"]["dir"], float)
            up = np.array(run["start"]["up"], float)
            end, end_way = (np.array(run["end"][k], float) for k in ("point", "dir"))
            if not run.get("crossover"):
                out.append((run, [(start, way, up, end, end_way, run["components"])]))
                continue
            x = next(x for x in self.data["crossovers"] if x["id"] == run["crossover"])
            ports = x["ports"][run["side"]]
            at = lambda p: (np.array(ports[p]["point"]) + pose, np.array(ports[p]["dir"], float))
            (inlet, in_way), (outlet, out_way) = at("inlet"), at("outlet")
            z = np.array([0.0, 0, 1])
            out.append((run, [
                (start, way, up, inlet, in_way, run["components"]),
                (outlet, out_way, z, end, end_way, []),
            ]))
        return out


class Chain:
    """A chain made of corners and component places: pieces, price, lack of length, places."""

    def __init__(self, problem, run, ends, corners, shares):
        start, way, up, end, end_way, components = ends
        tube, rules = problem.tube(run), problem.rules
        clr = tube["clr"]
        places = [start, *corners, end]
        ways = [way]
        for p, q in zip(places[1:-2], places[2:-1]):
            ways.append(unit(q - p) if np.linalg.norm(q - p) > 1e-9 else way)
        ways.append(end_way)
        if not corners:
            ways = [way]
        angles = [float(np.arctan2(np.linalg.norm(np.cross(u, v)), u @ v))
                  for u, v in zip(ways[:-1], ways[1:])]
        backs = [0.0] + [clr * np.tan(min(a, 1.6) / 2) for a in angles] + [0.0]
        self.pieces, self.cost, self.lack = [], 0.0, 0.0
        self.places, self.radii = [], []
        normal = unit(up - (up @ way) * way)
        most = max(tube["stock_angles"])
        pending = list(zip(components, shares))
        for k, direction in enumerate(ways):
            base = places[k] + backs[k] * direction
            length = float((places[k + 1] - places[k]) @ direction) - backs[k] - backs[k + 1]
            mine = [c for c, (side, _) in pending if min(int(side * len(ways)), len(ways) - 1) == k]
            shares_here = [s for _, s in pending if min(int(s[0] * len(ways)), len(ways) - 1) == k]
            spare = length - sum(problem.data["components"][c]["length"] for c in mine)
            at = 0.0
            for c, (_, share) in zip(mine, shares_here):
                part = problem.data["components"][c]
                first = max(spare, 0) * share / max(len(mine), 1)
                self.straight(problem, tube, first)
                self.ball_line(base + at * direction, direction, first, tube["od"] / 2)
                at, spare = at + first, spare - first
                radius = part.get("diameter", part.get("height", 0)) / 2
                self.ball_line(base + at * direction, direction, part["length"], tube["od"] / 2)
                inner = min(radius, part["length"] / 2)
                self.ball_line(base + (at + inner) * direction, direction,
                               part["length"] - 2 * inner, radius)
                if part["zone"]:
                    for p in (base + at * direction, base + (at + part["length"]) * direction):
                        out = np.maximum(np.array(part["zone"]["min"]) - p, 0)
                        out += np.maximum(p - np.array(part["zone"]["max"]), 0)
                        self.lack += out.sum()
                self.pieces.append({"type": "component", "id": c, "roll": 0.0})
                self.cost += problem.cost["weld"]
                at += part["length"]
            self.straight(problem, tube, spare)
            self.ball_line(base + at * direction, direction, max(spare, 0), tube["od"] / 2)
            if k < len(angles):
                side = ways[k + 1] - (ways[k + 1] @ direction) * direction
                if np.linalg.norm(side) < 1e-9:
                    side = normal
                side = unit(side)
                clock = np.arctan2(np.cross(direction, normal) @ side, normal @ side)
                degrees = np.degrees(angles[k])
                self.bend(problem, tube, degrees, np.degrees(clock), most)
                tangent = places[k + 1] - backs[k + 1] * direction
                for t in np.linspace(0, angles[k], max(int(angles[k] * clr / 15), 2)):
                    self.places.append(tangent + clr * (np.sin(t) * direction + (1 - np.cos(t)) * side))
                    self.radii.append(tube["od"] / 2)
                normal = unit(np.cos(angles[k]) * side - np.sin(angles[k]) * direction)
        off = np.linalg.norm(np.cross(end - places[-2], end_way))
        self.lack += max(off - 0.5, 0.0)

    def ball_line(self, base, way, length, radius):
        for s in np.linspace(0, length, max(int(length / 15), 1) + 1):
            self.places.append(base + s * way)
            self.radii.append(radius)

    def straight(self, problem, tube, length):
        least = problem.rules["min_straight"]
        if length < 1e-4 and length > -1e-4:
            return
        if length < least:
            self.lack += min(abs(length), least - length) if length > 0 else -length
        length = max(length, 0.0)
        self.pieces.append({"type": "straight", "length": length})
        self.cost += problem.cost["weld"]
        self.cost += length / 1000 * (tube["straight_price_per_m"] + problem.cost["per_metre"])

    def bend(self, problem, tube, degrees, clock, most):
        least = problem.rules["min_bend_angle"]
        self.lack += max(least - degrees, 0) * 3 + max(degrees - most, 0) * 3
        stock = next((s for s in tube["stock_angles"] if s >= degrees - 0.05), most)
        self.pieces.append({"type": "bend", "angle": degrees, "clocking": clock})
        self.cost += tube["stock_price"][str(stock)] + problem.cost["weld"]
        self.cost += problem.cost["cut"] if abs(stock - degrees) > 0.05 else 0.0
        self.cost += degrees * (problem.cost["per_degree"]
                                + problem.cost["per_metre"] * tube["clr"] * np.pi / 180 / 1000)


class Answer:
    """All chains of a problem put together from a vector of numbers between 0 and 1."""

    def __init__(self, problem, bends):
        self.problem, self.bends = problem, bends
        chains = [c for _, cs in problem.chains(np.zeros(3)) for c in cs]
        crossed = bool(problem.data["crossovers"])
        self.size = 3 * crossed + sum(self.chain_size(len(c[5])) for c in chains)

    def chain_size(self, components):
        return min(self.bends, 2) + 3 * max(self.bends - 2, 0) + 2 * components

    def laid(self, x):
        problem = self.problem
        pose, at = np.zeros(3), 0
        if problem.data["crossovers"]:
            low, high = (np.array(problem.data["crossovers"][0][k], float)
                         for k in ("pose_min", "pose_max"))
            pose, at = low + x[:3] * (high - low), 3
        runs = []
        for run, chains in problem.chains(pose):
            laid = []
            for ends in chains:
                size = self.chain_size(len(ends[5]))
                laid.append(self.chain(run, ends, x[at:at + size]))
                at += size
            runs.append((run, laid))
        return pose, runs

    def chain(self, run, ends, x):
        start, way, _, end, end_way, components = ends
        reach = np.linalg.norm(end - start) + 150
        corners = []
        if self.bends >= 1:
            corners.append(start + x[0] * reach * way)
        if self.bends >= 2:
            low = np.maximum(np.minimum(start, end) - 200, self.problem.low)
            high = np.minimum(np.maximum(start, end) + 200, self.problem.high)
            for k in range(self.bends - 2):
                corners.append(low + x[2 + 3 * k:5 + 3 * k] * (high - low))
            corners.append(end - x[1] * reach * end_way)
        rest = x[min(self.bends, 2) + 3 * max(self.bends - 2, 0):].reshape(-1, 2)
        order = np.argsort(rest[:, 0], kind="stable")
        return Chain(self.problem, run, ends, corners, [tuple(rest[i]) for i in order])

    def price(self, x):
        """Price with a fine for each mm that is missing or too near."""
        _, runs = self.laid(np.asarray(x))
        total, apart = 0.0, []
        for _, chains in runs:
            total += self.problem.cost["weld"] + self.problem.cost["weld"] * (len(chains) - 1)
            for chain in chains:
                places, radii = np.array(chain.places), np.array(chain.radii)
                deep = np.maximum(-self.problem.margin(places, radii), 0)
                total += chain.cost + 2.0 * chain.lack + 0.3 * deep.sum() + 2.0 * deep.max()
            apart.append((np.concatenate([c.places for c in chains]),
                          np.concatenate([c.radii for c in chains])))
        for k, (p, r) in enumerate(apart):
            for q, s in apart[k + 1:]:
                gap = np.linalg.norm(p[:, None] - q[None], axis=2) - r[:, None] - s[None]
                total += 2.0 * max(self.problem.rules["run_gap"] - gap.min(), 0)
        return total

    def solution(self, x):
        pose, runs = self.laid(np.asarray(x))
        out = {}
        for run, chains in runs:
            pieces = list(chains[0].pieces)
            if run.get("crossover"):
                pieces.append({"type": "crossover", "id": run["crossover"]})
                pieces += chains[1].pieces
            out[run["id"]] = pieces
        return {"problem": self.problem.data["id"], "status": "solved", "runs": out,
                "crossovers": {x["id"]: {"point": list(map(float, pose))}
                               for x in self.problem.data["crossovers"]}}

"""Hidden runs: polylines rounded by stock bends, with their components, and the check that they
clear everything by sampling."""

import numpy as np

from .bodies import poses, unit
from .survey import frame_of


class Run:
    """A run from (point, travel), cornering at each vertex, to the last vertex. `parts` says what
    lies on leg k (from corner k to corner k + 1): `[(name, from the leg's start, length, radius)]`,
    measured from where the bend before it ends. `clr` is one radius, or one per corner. Rides on
    the engine up to `flex`."""

    def __init__(self, name, vertices, clr, od, parts, start_travel=None, flex=None):
        radii = list(clr) if hasattr(clr, "__len__") else [clr] * max(0, len(vertices) - 2)
        self.name, self.od, self.clr = name, od, radii
        self.pieces, self.balls = [], []  # balls: (point, radius, what, rides on engine)
        v = [np.asarray(p, float) for p in vertices]
        self.vertices = v
        directions = [unit(b - a) for a, b in zip(v, v[1:])]
        if start_travel is not None and directions[0] @ unit(start_travel) < 1 - 1e-9:
            raise ValueError(f"{name}: the first leg does not leave along the port")
        on_engine = flex is not None
        n = frame_of(directions[0])[0]
        at = v[0]
        for k, d in enumerate(directions):
            clr = radii[k] if k < len(radii) else 0.0
            if k + 1 < len(directions):
                turn_angle = np.arccos(np.clip(d @ directions[k + 1], -1, 1))
                setback = clr * np.tan(turn_angle / 2.0)
            else:
                turn_angle = setback = 0.0
            end = v[k + 1] - d * setback
            length = (end - at) @ d
            if length < -1e-9:
                raise ValueError(f"{name}: leg {k} is {-length:.1f} mm too short")
            done = 0.0
            for part, start, size, radius in parts.get(k, []):
                self.straight(at + d * done, d, start - done, on_engine)
                self.component(part, at + d * start, d, size, radius, on_engine)
                done = start + size
                if part == flex:
                    on_engine = False
            if length - done < -1e-9:
                raise ValueError(f"{name}: leg {k} lacks {done - length:.1f} mm for its components")
            self.straight(at + d * done, d, length - done, on_engine)
            if turn_angle > 1e-9:
                toward = unit(directions[k + 1] - d * (d @ directions[k + 1]))
                clock = np.arctan2(np.cross(d, n) @ toward, n @ toward)
                self.pieces.append({"type": "bend", "angle_deg": np.degrees(turn_angle), "clock_deg": np.degrees(clock), "clr_mm": clr})
                centre = end + toward * clr
                for t in np.linspace(0, turn_angle, max(3, int(turn_angle * clr / 5.0) + 2)):
                    self.balls.append((centre + clr * (d * np.sin(t) - toward * np.cos(t)), od / 2.0, "bend", on_engine))
                n = toward * np.cos(turn_angle) - d * np.sin(turn_angle)
                at = v[k + 1] + directions[k + 1] * setback
        self.end = (v[-1], directions[-1])

    def straight(self, at, d, length, on_engine):
        if length < 1e-9:
            return
        self.pieces.append({"type": "straight", "length_mm": length})
        for t in np.linspace(0, length, max(2, int(length / 5.0) + 1)):
            self.balls.append((at + d * t, self.od / 2.0, "straight", on_engine))

    def component(self, name, at, d, length, radius, on_engine):
        self.pieces.append({"type": "component", "name": name, "length_mm": length})
        for t in np.linspace(0, length, max(2, int(length / 5.0) + 1)):
            # Full radius out to the flat ends: no credit for rounded ends.
            self.balls.append((at + d * t, radius, name, on_engine))


def clearances(runs, bodies, gaps, carriers, places, sway):
    """What remains over gap, sway and motion, for each run and body: [(spare, run, what, body)]."""
    engine = next((c for c in carriers if c["kind"] == "engine"), None)
    by_name = {c["name"]: c for c in carriers}
    out = []
    for run in runs:
        centre = np.array([b[0] for b in run.balls])
        radius = np.array([b[1] for b in run.balls])
        rides = np.array([b[3] for b in run.balls])
        start = centre[0]
        for name, gap, carrier, distance in bodies:
            body_carrier = by_name.get(carrier)
            rides_too = carrier != "chassis" and body_carrier is engine and engine is not None
            worst = (np.inf, None)
            for rotation, about, shift in poses(body_carrier, places):
                for chassis_side in (True, False):
                    pick = rides != chassis_side
                    if not pick.any():
                        continue
                    # Pieces before the flex keep still against an engine body and rock against others.
                    if chassis_side:
                        moves = [(rotation, about, shift)]
                    elif rides_too:
                        moves = [(np.eye(3), np.zeros(3), np.zeros(3))]
                    else:
                        moves = [(rotation @ r2.T, about if about.any() else a2, shift) for r2, a2, _ in poses(engine, places)]
                    for r, a, s in moves:
                        # Move the run's points back into the body's rest position.
                        q = (centre[pick] - s - a) @ r + a
                        spare = distance(q) - radius[pick] - gap - (sway if chassis_side else 0.0)
                        near_port = np.linalg.norm(centre[pick] - start, axis=1) < 60.0
                        if rides_too or carrier == "engine":
                            spare = np.where(near_port, np.inf, spare)
                        k = int(np.argmin(spare))
                        if spare[k] < worst[0]:
                            worst = (spare[k], f"{run.balls[np.flatnonzero(pick)[k]][2]} at {np.round(centre[pick][k])}")
            out.append((worst[0], run.name, worst[1], name))
    for i, one in enumerate(runs):
        for other in runs[i + 1 :]:
            if not one.pieces or not other.pieces or one.name.split(",")[0] == other.name.split(",")[0]:
                continue  # a crossover touches its own runs
            worst = (np.inf, None)
            p = np.array([b[0] for b in other.balls])
            r = np.array([b[1] for b in other.balls])
            for ball in one.balls:
                spare = np.linalg.norm(p - ball[0], axis=1) - r - ball[1] - gaps["run"] - 2 * sway
                k = int(np.argmin(spare))
                if spare[k] < worst[0]:
                    worst = (spare[k], f"{ball[2]} at {np.round(ball[0])}")
            out.append((worst[0], one.name, worst[1], other.name))
    return sorted(out, key=lambda o: o[0])


def walked(run, start_travel):
    """Where the pieces of a run lead, from their lengths, angles and clocks alone: shows that the
    fixture's pieces and its corners say the same."""
    at, travel = run.vertices[0].copy(), unit(start_travel)
    normal = frame_of(travel)[0]
    for piece in run.pieces:
        if piece["type"] == "bend":
            clock, angle = np.radians([piece["clock_deg"], piece["angle_deg"]])
            normal = normal * np.cos(clock) + np.cross(travel, normal) * np.sin(clock)
            at = at + piece["clr_mm"] * (travel * np.sin(angle) + normal * (1.0 - np.cos(angle)))
            travel, normal = (
                travel * np.cos(angle) + normal * np.sin(angle),
                normal * np.cos(angle) - travel * np.sin(angle),
            )
        else:
            at = at + travel * piece["length_mm"]
    return at, travel

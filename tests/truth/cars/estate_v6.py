"""The small estate with a V6 set far back. Written in workshop coordinates: x from the front axle
rearwards, y to the right, z from the ground on its wheels; moved to the build's frame at the end."""

import numpy as np

from jig.runs import Run
from jig.survey import burnt, swapped_digits

from .moved import down, to_build_frame

SEED = 20260302
INCHES = False
OD, CLR = 57.0, 85.5
# What went wrong with the tape.
SLIPS = {
    ("A right", "gearbox mount"): ("the first 100 mm of the tape burnt and not taken off", burnt),
    ("A left", "B left"): ("swapped digits", swapped_digits),
}

PLACES = {
    "A left": (760, -450, 235), "A right": (760, 450, 235),
    "B left": (1950, -450, 236), "B right": (1951, 450, 235),
    "C left": (2260, -331, 662), "C right": (2262, 330, 661),
    "D left": (3610, -420, 452), "D right": (3606, 420, 450),
    "E left": (130, -545, 735), "E right": (128, 548, 733),
    "prop front under": (1082, 0, 402), "prop rear under": (2410, 2, 312),
    "gearbox low front left": (430, -118, 288), "gearbox high rear right": (1048, 121, 525),
    "engine mount line": (118, 1, 430), "gearbox mount": (902, 3, 290),
    "floor L low front inner": (722, -186, 372), "floor L high rear outer": (1990, -640, 402),
    "floor R low front inner": (720, 187, 371), "floor R high rear outer": (1992, 641, 402),
    "boot floor rear": (3480, 5, 656),
    "tank low front left": (3010, -205, 335), "tank high rear right": (3462, 203, 533),
    "hub RL": (2500, -738, 301), "hub RR": (2502, 739, 300),
    "diff centre": (2490, 4, 303),
    "X room low front left": (1120, -110, 200), "X room high rear right": (1900, 112, 290),
    "panhard body": (2640, 470, 345), "panhard axle": (2632, -440, 300),
    "tip point L": (3770, -430, 320), "tip point R": (3768, 432, 321),
}
PORTS = {
    "left port": ((380, -250, 400), down(40.0)),
    "right port": ((393, 252, 396), down(42.0, 1.5)),
}
SETUPS = {
    "on its wheels": ((0, 0, 1), (0, 0, 0)),
    "on the lift": ((0.019, -0.007, 1), (1500, 0, -1480)),
}
LEVEL = 230.0
X_IN = np.array([1330.0, 0.0, LEVEL])


def truth():
    return to_build_frame(PLACES, PORTS, SETUPS, "A left")


def runs(true):
    o = true["origin"]
    out = []
    toe = np.radians(15.0)
    for side, s in (("L", -1.0), ("R", 1.0)):
        name = "left bank" if s < 0 else "right bank"
        (centre, travel) = PORTS["left port" if s < 0 else "right port"]
        centre = np.array(centre, float)
        v1 = centre + travel * (centre[2] - LEVEL) / -travel[2]
        inlet = X_IN + [0, s * 60.0, 0]
        inward = np.array([np.cos(toe), -s * np.sin(toe), 0.0])
        v3 = inlet - inward * 100.0
        v2 = np.array([v3[0] - (abs(v1[1]) - abs(v3[1])), v1[1], LEVEL])
        before = Run(f"{name}, to the crossover", [p - o for p in (centre, v1, v2, v3, inlet)], CLR, OD,
                     {0: [("flex", 30.0, 150.0, 38.0)], 1: [(f"cat {side}", 30.0, 300.0, 55.0)]},
                     start_travel=travel, flex="flex")
        outlet = inlet + [240.0, 0, 0]
        outward = np.array([np.cos(toe), s * np.sin(toe), 0.0])
        v5 = outlet + outward * ((2015.0 - outlet[0]) / outward[0])
        tip = np.array(PLACES[f"tip point {side}"], float)
        v6, v7 = np.array([2330.0, s * 250.0, 545.0]), np.array([2710.0, s * 250.0, 545.0])
        v8 = np.array([2960.0, tip[1], tip[2]])
        after = Run(f"{name}, from the crossover", [p - o for p in (outlet, v5, v6, v7, v8, tip)], CLR, OD,
                    {0: [(f"resonator {side}", 90.0, 300.0, 50.0)], 4: [(f"silencer {side}", 40.0, 420.0, 65.0)]})
        out += [before, after]
    x = Run("X", [X_IN - o, X_IN + [240.0, 0, 0] - o], CLR, 2 * (60.0 + 32.0), {})
    x.pieces = []
    # The body of the crossover: four arms of 32 mm radius that meet in its middle.
    x.balls = []
    for s in (-1.0, 1.0):
        for along in (0.0, 240.0):
            port, middle = X_IN - o + [along, s * 60.0, 0], X_IN - o + [120.0, 0, 0]
            x.balls += [(port + (middle - port) * t, 32.0, "X", False) for t in np.linspace(0, 1, 30)]
    return out + [x]


def measure(plan):
    wheels, lift = "on its wheels", "on the lift"
    pairs = ["A", "B", "C", "D", "E"]
    left, right = [f"{p} left" for p in pairs], [f"{p} right" for p in pairs]
    # The marks first: every line between them that nothing blocks, then with the bob on the lift.
    plan.tapes(*zip(left, right))
    for a, b, c, d, e in (left, right):
        plan.tapes((e, a), (a, b), (b, c), (c, d))
    plan.tapes(("A left", "B right"), ("A right", "B left"), burnt="100 mm", note="hook bent: held at the 100 mm line")
    plan.tapes(("B left", "C right"), ("B right", "C left"))
    plan.plumbs(lift, ("A left", "D left"), ("A right", "D right"), ("B left", "D right"), ("B right", "D left"),
                ("E left", "A right"), ("E right", "A left"), ("E left", "B left"), ("E right", "B right"),
                ("A left", "C left"))
    plan.heights(wheels, *left, *right)
    plan.heights(lift, "A left", "A right", "B left", "B right", "C left", "D left", "D right", "E left", "E right")
    for pair in ("B", "C"):
        plan.add("symmetry", left=f"{pair} left", right=f"{pair} right")
    # The front: the wings can be reached.
    for point, count in (("gearbox low front left", 3), ("engine mount line", 3)):
        plan.heights(lift, point)
        plan.heights(wheels, point)
        plan.best_tapes(point, count, plumb=lift)
    # Under the car: tapes and one height on the lift, one more on its wheels. The gearbox mount did
    # not close at first and was measured from two more marks.
    wings = ("E left", "E right")
    for point in ("gearbox mount", "gearbox high rear right", "prop front under", "prop rear under",
                  "floor L low front inner", "floor L high rear outer", "floor R low front inner",
                  "floor R high rear outer", "boot floor rear", "tank low front left", "tank high rear right",
                  "tip point L", "tip point R"):
        plan.heights(lift, point)
        plan.heights(wheels, point)
        plan.best_tapes(point, 5 if point == "gearbox mount" else 3, plumb=lift, avoid=wings)
    plan.note("gearbox mount", "the mount would not close: two more lines taken")
    plan.add("inclination", frm="prop front under", to="prop rear under", setup=lift)
    plan.add("bearing", frm="prop front under", to="prop rear under", base=["A left", "B left"], setup=lift)
    # The axle hangs down on the lift, so it is measured on its wheels, with a level across for a
    # second height.
    for point, near in (("hub RL", "C left"), ("hub RR", "C right"), ("diff centre", "C right"),
                        ("panhard body", "C right"), ("panhard axle", "C left")):
        plan.heights(wheels, point)
        plan.add("offset", frm=near, to=point, along="plumb", setup=wheels)
        plan.best_tapes(point, 3, plumb=wheels, avoid=wings)
    for port in ("left port", "right port"):
        plan.add("face", end=port, clock="12:00", setup=wheels)
        plan.add("face", end=port, clock="12:00", setup=lift)
        plan.heights(wheels, port)
        plan.best_rims(port, ["12:00", "3:00", "6:00", "9:00"], 12, bolts=(1, 2))
    # Last, two rods stood up under the propshaft: the room in which the crossover may lie.
    for point in ("X room low front left", "X room high rear right"):
        plan.heights(lift, point)
        plan.heights(wheels, point)
        plan.best_tapes(point, 3, plumb=lift, avoid=wings)

"""The mid-engined kit car with a transverse turbocharged four. Workshop coordinates: x from the
front axle rearwards, y to the right, z from the ground on its wheels."""

import numpy as np

from jig.runs import Run
from jig.survey import from_wrong_mark, swapped_digits

from .moved import down, to_build_frame

SEED = 20260411
INCHES = False
OD, WIDE, TIGHT = 63.5, 95.3, 63.5
SLIPS = {
    ("C right", "D left"): ("measured from C left", from_wrong_mark("C left", "D left")),
    ("A right", "D right"): ("swapped digits", swapped_digits),
}

PLACES = {
    "A left": (2280, -400, 180), "A right": (2280, 400, 180),
    "B left": (2880, -400, 186), "B right": (2882, 400, 184),
    "C left": (2150, -432, 832), "C right": (2152, 430, 830),
    "D left": (2890, -428, 702), "D right": (2891, 430, 700),
    "engine low front left": (1852, -330, 262), "engine high rear right": (2240, 331, 702),
    "diff low front left": (2262, -252, 205), "diff high rear right": (2440, 148, 421),
    "hub RL": (2350, -765, 318), "hub RR": (2351, 764, 317),
    "frame tube front under": (2250, -452, 582), "frame tube rear under": (2872, -431, 600),
    "cross tube left under": (2900, -398, 622), "cross tube right under": (2901, 401, 621),
    "tub 1": (2482, -422, 512), "tub 2": (2480, -42, 511), "tub 3": (2858, -44, 512), "tub 4": (2860, -420, 513),
    "header tank middle": (2560, 330, 620),
    "mount left": (2050, -420, 500), "mount right": (2052, 431, 520),
    "tip point": (3005, -430, 360),
}
PORTS = {"turbine outlet": ((2340, -150, 655), down(15.0, 90.0))}
SETUPS = {
    "on its wheels": ((0, 0, 1), (0, 0, 0)),
    "on stands": ((-0.011, 0.006, 1), (2000, 0, -420)),
}


def truth():
    return to_build_frame(PLACES, PORTS, SETUPS, "A left")


def runs(true):
    port = np.array(PORTS["turbine outlet"][0], float)
    travel = PORTS["turbine outlet"][1]
    corner = port + travel * 250.0 / travel[1]
    vertices = [port, corner, (2800, 100, corner[2]), (2800, 100, 360), (2800, -430, 360), (3005, -430, 360)]
    return [
        Run("exhaust", [np.array(v, float) - true["origin"] for v in vertices], [TIGHT, WIDE, WIDE, WIDE], OD,
            {0: [("flex", 30.0, 120.0, 42.0)], 1: [("cat", 25.0, 250.0, 55.0)], 3: [("silencer", 30.0, 280.0, 75.0)]},
            start_travel=travel, flex="flex")
    ]


def measure(plan):
    wheels, stands = "on its wheels", "on stands"
    names = ["A", "B", "C", "D"]
    left, right = [f"{n} left" for n in names], [f"{n} right" for n in names]
    # A and B are 12 mm holes in the rails: across, the hook caught the far edge of the left one.
    plan.tapes(("A left", "A right"), ("B left", "B right"), hole={"at": "from", "diameter": "12 mm", "edge": "far"})
    plan.tapes(("C left", "C right"), ("D left", "D right"))
    for a, b, c, d in (left, right):
        plan.tapes((a, b), (a, c), (b, d), (c, d), (c, b))
    plan.tapes(("A left", "B right"), ("A right", "B left"), ("C left", "D right"), ("C right", "D left"),
               ("B right", "D left"), ("B left", "D right"), ("A right", "D right"))
    plan.plumbs(stands, ("C left", "A right"), ("C right", "A left"), ("D left", "A left"))
    plan.heights(wheels, *left, *right)
    plan.heights(stands, "A left", "A right", "B left", "B right")
    plan.add("plumb", frm="C left", to="D right", setup=stands)
    for pair in ("C", "D"):
        plan.add("symmetry", left=f"{pair} left", right=f"{pair} right")
    for point in ("engine low front left", "engine high rear right", "diff low front left", "diff high rear right",
                  "mount left", "mount right"):
        plan.heights(stands, point)
        if point == "diff low front left":
            plan.heights(wheels, point)
        plan.best_tapes(point, 4, plumb=stands)
    for point in ("frame tube front under", "frame tube rear under", "cross tube left under", "cross tube right under",
                  "tub 1", "tub 2", "tub 3", "tub 4"):
        plan.heights(wheels, point)
        plan.best_tapes(point, 4, plumb=wheels)
    # The tape reached the near side of the round tank: half of its 180 mm is missing.
    plan.heights(wheels, "header tank middle")
    plan.best_tapes("header tank middle", 4, side={"at": "to", "of": "180 mm", "face": "near"})
    plan.add("inclination", frm="frame tube front under", to="frame tube rear under", setup=stands)
    for point in ("hub RL", "hub RR", "tip point"):
        plan.heights(wheels, point)
        plan.best_tapes(point, 4, plumb=wheels)
    # The outlet, with the luggage tub lifted out.
    plan.taken_off = {"luggage tub"}
    for setup in (wheels, stands):
        plan.add("face", end="turbine outlet", clock="12:00", setup=setup)
    plan.add("offset", frm="C left", to="turbine outlet", along="plumb", setup=wheels)
    plan.best_rims("turbine outlet", ["12:00", "3:00", "6:00", "9:00"], 14, most=4, shortest=60.0)
    plan.note("turbine outlet", "luggage tub lifted out")
    plan.note("header tank middle", "to the near side of the tank")

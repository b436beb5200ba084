"""The pick-up with an inline six. Workshop coordinates in mm: x from the front axle rearwards, y to
the right, z from the ground on its wheels; its readings are taken in inches."""

import numpy as np

from jig import scan
from jig.runs import Run
from jig.survey import swapped_digits

from .moved import down, to_build_frame

SEED = 20260506
INCHES = True
OD, CLR = 63.5, 95.25
INCH = 25.4
SLIPS = {
    ("A left", "gearbox mount"): ("the first inch of the tape burnt and not taken off", lambda mm, _car: mm + INCH),
    ("A right", "B left"): ("a foot misread", lambda mm, _car: mm - 12.0 * INCH),
}

PLACES = {
    "A left": (700, -437, 430), "A right": (702, 437, 430),
    "B left": (2200, -438, 431), "B right": (2201, 436, 430),
    "C left": (3900, -437, 432), "C right": (3897, 437, 431),
    "D left": (2650, -300, 801), "D right": (2652, 302, 800),
    "E left": (250, -590, 905), "E right": (248, 592, 903),
    "F right": (1500, 552, 489),
    "crossmember low front left": (1302, -361, 472), "crossmember high rear right": (1400, 362, 552),
    "gearbox low front left": (502, -119, 402), "gearbox high rear right": (1252, 120, 648),
    "engine mount line": (101, 2, 560), "gearbox mount": (1251, 1, 404),
    "prop front under": (1310, 1, 436), "prop rear under": (2842, 0, 352),
    "tank 1": (1710, -352, 442), "tank 2": (1712, -152, 441), "tank 3": (2502, -150, 443), "tank 4": (2500, -351, 444),
    "bed rear": (3950, 3, 806),
    "hub RL": (3000, -812, 370), "hub RR": (3001, 814, 369), "diff centre": (3002, 1, 371),
    "spring front": (2452, 500, 402), "spring rear": (3482, 502, 426),
    "tip point": (3620, 830, 270),
}
PORTS = {"outlet": ((650, 246, 541), down(50.0, -2.0))}
SETUPS = {
    "on its wheels": ((0, 0, 1), (0, 0, 0)),
    "on the lift": ((0.008, 0.012, 1), (2000, 0, -1310)),
}


def truth():
    return to_build_frame(PLACES, PORTS, SETUPS, "A left")


def runs(true):
    port, travel = np.array(PORTS["outlet"][0], float), PORTS["outlet"][1]
    v1 = port + travel * (port[2] - 315.0) / -travel[2]
    tip = np.array(PLACES["tip point"], float)
    arrive = np.array([0.0, np.cos(np.radians(5.0)), -np.sin(np.radians(5.0))])
    v = [port, v1, (2300, 215, 315), (2610, 205, 640), (3310, 205, 640), tip - arrive * 600.0, tip]
    return [
        Run("exhaust", [np.array(p, float) - true["origin"] for p in v], CLR, OD,
            {0: [("flex", 30.0, 6 * INCH, 3.25 * INCH / 2)],
             1: [("cat", 60.0, 13 * INCH, 2.5 * INCH), ("silencer", 700.0, 20 * INCH, 3.5 * INCH)]},
            start_travel=travel, flex="flex")
    ]


def floor_height(x, y):
    """Underside of the cab floor: flat with pressed ribs, a tunnel over the gearbox."""
    side = np.clip((np.abs(y) - 170.0) / 60.0, 0.0, 1.0)
    tunnel = 150.0 * (1.0 - side * side * (3.0 - 2.0 * side))
    rib = np.where(np.abs(y) > 250.0, 8.0 * np.clip(np.cos(x * 2.0 * np.pi / 130.0) * 2.0, 0.0, 1.0), 0.0)
    toe_board = np.clip((900.0 - x) / 200.0, 0.0, 1.0) * 250.0
    return 490.0 + tunnel + toe_board - rib


def scans(true, folder):
    """Scanned from below in the scanner's own frame, in metres: noise of 1 mm, a hole on the left."""
    hole = lambda x, y: np.hypot(x - 1630.0, y + 420.0) < 90.0
    vertices, triangles = scan.height_field(floor_height, (610.0, 2090.0), (-700.0, 700.0), 20.0, hole, 1.0, SEED + 1)
    vertices = vertices - true["origin"]
    seen = {m: true["places"][m] for m in ("A left", "A right", "B left", "B right", "F right")}
    places = scan.write(folder / "scans" / "floor.stl", vertices, triangles, seen, per_unit=1000.0, seed=SEED + 2)
    return {"cab floor": (vertices, triangles)}, {"cab floor": places}


def measure(plan):
    wheels, lift = "on its wheels", "on the lift"
    names = ["A", "B", "C", "D", "E"]
    left, right = [f"{n} left" for n in names], [f"{n} right" for n in names]
    # Between the rails the gearbox, tank and shaft are in the way: the bob on the lift does it.
    plan.tapes(("C left", "C right"), ("D left", "D right"), ("E left", "E right"), ("A left", "B right"),
               ("A right", "B left"))
    for a, b, c, _, e in (left, right):
        plan.tapes((e, a), (a, b), (b, c))
        plan.tapes((a, c), burnt="1 in", plus_minus="3/16 in", note="long line, held at the inch; the tape may sag")
    plan.plumbs(lift, ("A left", "A right"), ("B left", "B right"), ("B left", "C right"), ("B right", "C left"),
                ("E left", "A right"), ("E right", "A left"), ("E left", "B left"), ("E right", "B right"),
                ("D left", "B left"), ("D right", "B right"), ("D left", "C right"), ("D right", "C left"))
    plan.heights(wheels, *left, *right)
    plan.heights(lift, *left, *right)
    for pair in ("C", "D"):
        plan.add("symmetry", left=f"{pair} left", right=f"{pair} right")
    wings = ("E left", "E right")
    for point in ("F right", "crossmember low front left", "crossmember high rear right", "gearbox low front left",
                  "gearbox high rear right", "engine mount line", "gearbox mount", "prop front under",
                  "tank 1", "tank 2", "tank 3", "tank 4", "bed rear", "spring front", "tip point"):
        plan.heights(lift, point)
        plan.heights(wheels, point)
        plan.best_tapes(point, {"gearbox mount": 5, "tip point": 4}.get(point, 3), plumb=lift,
                        avoid=() if point == "engine mount line" else wings)
    # The axle hangs down on the lift: these on its wheels, with a level across for a second height.
    for point, near in (("prop rear under", "C left"), ("hub RL", "D left"), ("hub RR", "D right"), ("diff centre", "D right"),
                        ("spring rear", "C right")):
        plan.heights(wheels, point)
        plan.add("offset", frm=near, to=point, along="plumb", setup=wheels)
        plan.best_tapes(point, 4 if point == "diff centre" else 3, plumb=wheels, avoid=wings)
    plan.add("inclination", frm="prop front under", to="prop rear under", setup=wheels)
    for setup in (wheels, lift):
        plan.add("face", end="outlet", clock="12:00", setup=setup)
        plan.heights(setup, "outlet")
    plan.best_rims("outlet", ["12:00", "3:00", "6:00", "9:00"], 13, bolts=(1, 3), reach=1800.0, plus_minus="1/16 in")

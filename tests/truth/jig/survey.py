"""A measured car: what a tape would read, which readings are worth taking, and how well they fix
every place. Written from the handbook's definitions, not from the program's code."""

from itertools import combinations

import numpy as np

from .quantities import angle_rad, clock_rad, length_mm, say_deg, say_inches, say_mm

TO_SIGMA = 1.0 / 1.959964  # ± is 19 in 20
UP = np.array([0.0, 0.0, 1.0])


def unit(v):
    v = np.asarray(v, float)
    return v / np.linalg.norm(v)


def frame_of(travel):
    """Twelve and three o'clock of an end that travels along `travel`."""
    up = UP - travel * travel[2]
    if np.linalg.norm(up) < 1e-6:
        up = np.array([1.0, 0.0, 0.0]) - travel * travel[0]
    twelve = unit(up)
    return twelve, np.cross(travel, twelve)


class Car:
    """The truth: marks and points (mm), ends as (centre, travel), set-ups as (up, offset) so that
    the floor is `up · x = offset`, in the car's frame."""

    def __init__(self, doc, places, ends, setups):
        self.doc = doc
        self.ends = {e["name"]: e for e in doc.get("end", [])}
        self.place_names = sorted(places)
        self.end_names = sorted(ends)
        self.setup_names = sorted(setups)
        self.true_places = {k: np.asarray(v, float) for k, v in places.items()}
        self.true_ends = {k: (np.asarray(c, float), unit(t)) for k, (c, t) in ends.items()}
        self.true_setups = {k: (unit(u), float(o)) for k, (u, o) in setups.items()}
        self.size = 3 * len(places) + 5 * len(ends) + 3 * len(setups)

    # The unknowns as one vector of corrections to the truth.
    def state(self, x):
        places, at = {}, 0
        for name in self.place_names:
            places[name] = self.true_places[name] + x[at : at + 3]
            at += 3
        ends = {}
        for name in self.end_names:
            centre, travel = self.true_ends[name]
            twelve, three = frame_of(travel)
            turned = unit(travel + np.tan(x[at + 3]) * twelve + np.tan(x[at + 4]) * three)
            ends[name] = (centre + x[at : at + 3], turned)
            at += 5
        setups = {}
        for name in self.setup_names:
            up, offset = self.true_setups[name]
            side = unit(np.cross(up, [1.0, 0.0, 0.0]))
            fore = np.cross(side, up)
            setups[name] = (unit(up + x[at] * fore + x[at + 1] * side), offset + x[at + 2])
            at += 3
        return places, ends, setups

    def slot(self, name):
        """First place in the vector, and how many, of a mark, point, end or set-up."""
        if name in self.place_names:
            return 3 * self.place_names.index(name), 3
        at = 3 * len(self.place_names)
        if name in self.end_names:
            return at + 5 * self.end_names.index(name), 5
        at += 5 * len(self.end_names)
        return at + 3 * self.setup_names.index(name), 3

    def locate(self, state, name, rim=None, bolt=None):
        places, ends, _ = state
        if name in places:
            return places[name]
        centre, travel = ends[name]
        if rim is None and bolt is None:
            return centre
        end = self.ends[name]
        if bolt is not None:
            clock = clock_rad(end["bolts"][bolt - 1]["clock"])
            radius = length_mm(end["bolts"][bolt - 1]["circle"]) / 2.0
        else:
            clock = clock_rad(rim)
            radius = length_mm(end.get("rim", end["od"])) / 2.0
        twelve, three = frame_of(travel)
        return centre + radius * (np.cos(clock) * twelve + np.sin(clock) * three)

    def predict(self, r, state):
        """What the reading would show, as a list (symmetry gives three): mm or rad."""
        places, ends, setups = state
        kind = r["kind"]
        if kind == "face":
            up, _ = setups[r["setup"]]
            twelve, three = frame_of(ends[r["end"]][1])
            clock = clock_rad(r["clock"])
            return [np.arcsin((np.cos(clock) * twelve + np.sin(clock) * three) @ up)]
        if kind == "height":
            up, offset = setups[r["setup"]]
            return [self.locate(state, r["of"], r.get("rim"), r.get("bolt")) @ up - offset]
        if kind == "symmetry":
            # The car's middle plane is y = 0 of its frame.
            a, b = places[r["left"]], places[r["right"]]
            return [a[0] - b[0], a[1] + b[1], a[2] - b[2]]
        a = self.locate(state, r["from"], r.get("from-rim"), r.get("from-bolt"))
        b = self.locate(state, r["to"], r.get("rim"), r.get("bolt"))
        d = b - a
        if kind == "tape":
            reads = np.linalg.norm(d)
            if "hole" in r:
                half = length_mm(r["hole"]["diameter"]) / 2.0
                reads += half if r["hole"]["edge"] == "far" else -half
            if "side" in r:
                half = length_mm(r["side"]["of"]) / 2.0
                reads += half if r["side"]["face"] == "far" else -half
            return [reads + length_mm(r.get("burnt", "0 mm"))]
        if kind == "offset":
            if r["along"] == "plumb":
                return [d @ setups[r["setup"]][0]]
            p, q = (places[name] for name in r["along"])
            return [d @ unit(q - p)]
        up, _ = setups[r["setup"]]
        if kind == "plumb":
            return [np.linalg.norm(d - up * (d @ up))]
        if kind == "inclination":
            return [np.arcsin(unit(d) @ up)]
        if kind == "bearing":
            p, q = (places[name] for name in r["base"])
            u, v = d - up * (d @ up), (q - p) - up * ((q - p) @ up)
            return [np.arctan2(np.cross(v, u) @ up * -1.0, u @ v)]  # clockwise from the base line to the line
        raise ValueError(kind)

    def sigma(self, r):
        if "plus-minus" in r:
            text = r["plus-minus"]
        else:
            accuracy = self.doc["accuracy"]
            key = {"inclination": "angle", "bearing": "angle", "face": "angle"}.get(
                r["kind"], r["kind"]
            )
            text = accuracy[key]
        value = angle_rad(text) if text.endswith("deg") else length_mm(text)
        return value * TO_SIGMA

    def jacobian(self, readings, x, columns=None):
        columns = range(self.size) if columns is None else columns
        out = []
        for j in columns:
            step = 1e-4 if self.is_length(j) else 1e-6
            plus, minus = x.copy(), x.copy()
            plus[j] += step
            minus[j] -= step
            out.append((self.all(readings, plus) - self.all(readings, minus)) / (2.0 * step))
        return np.array(out).T

    def is_length(self, j):
        at = 3 * len(self.place_names)
        if j < at:
            return True
        j -= at
        if j < 5 * len(self.end_names):
            return j % 5 < 3
        return (j - 5 * len(self.end_names)) % 3 == 2

    def all(self, readings, x):
        state = self.state(x)
        return np.array([v for r in readings for v in self.predict(r, state)])

    def frame_rows(self):
        """The choice of the frame as six rows: origin, level, centre line."""
        frame = self.doc["frame"]
        rows = np.zeros((6, self.size))
        at, _ = self.slot(frame["origin"])
        for k in range(2):
            rows[k, at + 2 * k] = 1.0  # x and z of the origin mark; y by the middle plane
        up, _ = self.slot(frame["level"])
        rows[2, up] = rows[3, up + 1] = 1000.0
        for k, names in enumerate(frame["centre-line"][:2]):
            for name in names:
                rows[4 + k, self.slot(name)[0] + 1] = 0.5
        return rows


def adjust(car, readings, observed, rounds=6):
    """Least squares from the truth on. Gives the corrections, their covariance, and for every
    scalar reading its redundancy and standardised residual."""
    x = np.zeros(car.size)
    sigma = np.array([car.sigma(r) for r in readings for _ in range(rows_of(r))])
    fixed = car.frame_rows()
    for _ in range(rounds):
        a = car.jacobian(readings, x) / sigma[:, None]
        b = (observed - car.all(readings, x)) / sigma
        normal = a.T @ a + fixed.T @ fixed * 1e6
        x = x + np.linalg.solve(normal, a.T @ b - fixed.T @ (fixed @ x) * 1e6)
    inverse = np.linalg.inv(normal)
    redundancy = 1.0 - np.einsum("ij,jk,ik->i", a, inverse, a)
    residual = (observed - car.all(readings, x)) / sigma
    return x, inverse, redundancy, residual / np.sqrt(np.maximum(redundancy, 1e-9)), residual @ residual


def rows_of(r):
    return 3 if r["kind"] == "symmetry" else 1


class Plan:
    """The order in which the shop measures: readings without their values."""

    def __init__(self, car, in_the_way):
        """`in_the_way`: distance functions, by name, of bodies that a tape cannot pass through.
        `taken_off` names those that are off the car while measuring."""
        self.taken_off = set()
        self.car = car
        self.readings = []
        self.free = [m["name"] for m in car.doc["mark"]]
        self.in_the_way = in_the_way

    def is_open(self, a, b, leave=60.0, dent=8.0):
        """Whether a tape can be pulled straight from a to b: what it touches within `leave` mm of
        its ends, or presses less than `dent` mm deep, does not stop it, nor does a body whose
        inside is measured (the middle of a wheel)."""
        length = np.linalg.norm(b - a)
        if length <= 2.0 * leave:
            return True
        t = np.linspace(leave / length, 1.0 - leave / length, 60)
        line = a + np.outer(t, b - a)
        ends = np.array([a, b])
        return all(
            distance(line).min() > -dent or distance(ends).min() < -dent
            for name, distance in self.in_the_way.items()
            if name not in self.taken_off
        )

    def blocked(self):
        """Tapes of the plan that would have to go through a body."""
        state = self.car.state(np.zeros(self.car.size))
        for r in self.readings:
            if r["kind"] == "tape":
                a = self.car.locate(state, r["from"], r.get("from-rim"), r.get("from-bolt"))
                b = self.car.locate(state, r["to"], r.get("rim"), r.get("bolt"))
                if not self.is_open(a, b):
                    yield f"{r['from']} to {r['to']} {r.get('rim', r.get('bolt', ''))}"

    def open_lines(self):
        p = self.car.true_places
        return [
            f"{a} - {b} {np.linalg.norm(p[a] - p[b]):.0f}"
            for a, b in combinations(self.free, 2)
            if self.is_open(p[a], p[b])
        ]

    def add(self, kind, **keys):
        keys = {k.replace("_", "-"): v for k, v in keys.items()}
        keys = {("from" if k == "frm" else k): v for k, v in keys.items()}
        self.readings.append({"kind": kind, **keys})

    def tapes(self, *pairs, **keys):
        for a, b in pairs:
            self.add("tape", frm=a, to=b, **keys)

    def plumbs(self, setup, *pairs):
        for a, b in pairs:
            self.add("plumb", frm=a, to=b, setup=setup)

    def note(self, place, words):
        """Writes a note on the last reading of a place."""
        last = [r for r in self.readings if place in (r.get("to"), r.get("of"))][-1]
        last["note"] = words

    def heights(self, setup, *places):
        for place in places:
            self.add("height", of=place, setup=setup)

    def gain(self, r, columns):
        zero = np.zeros(self.car.size)
        row = self.car.jacobian([r], zero, columns)[0]
        return row / self.car.sigma(r)

    def best_tapes(self, name, count, plumb=None, reach=2300.0, shortest=100.0, avoid=(), **keys):
        """The tapes from the marks that fix a point best and check each other best, with what is
        planned for it already (the marks taken as known). With a set-up given as `plumb`, distances
        between plumb-bob points may stand in for tapes that something blocks."""
        at, width = self.car.slot(name)
        columns = range(at, at + width)
        planned = [
            self.gain(r, columns)
            for r in self.readings
            if name in (r.get("of"), r.get("from"), r.get("to"))
        ]
        candidates = []
        for mark in self.free:
            a, b = self.car.true_places[mark], self.car.true_places[name]
            d = np.linalg.norm(b - a)
            if mark in avoid or mark == name or not shortest <= d <= reach:
                continue
            if self.is_open(a, b):
                r = {"kind": "tape", "from": mark, "to": name, **keys}
                candidates.append((r, self.gain(r, columns), d / 20000.0))
            if plumb and np.hypot(*(b - a)[:2]) >= shortest:
                r = {"kind": "plumb", "from": mark, "to": name, "setup": plumb}
                candidates.append((r, self.gain(r, columns), d / 20000.0 + 0.04))
        best = None
        for chosen in combinations(candidates, min(count, len(candidates))):
            a = np.array(planned + [c[1] for c in chosen])
            q = np.linalg.inv(a.T @ a + np.eye(3) * 1e-4)
            redundancy = (1.0 - np.einsum("ij,jk,ik->i", a, q, a)).min()
            score = min(redundancy, 0.4) - np.sqrt(np.trace(q)) / 15.0 - sum(c[2] for c in chosen)
            if best is None or score > best[0] + 1e-12:
                best = (score, [c[0] for c in chosen])
        self.readings += best[1]

    def best_rims(self, end, clocks, count, reach=1500.0, shortest=90.0, most=3, bolts=(), avoid=(),
                  plus_minus="2 mm"):
        """Tapes to clock marks of an end (and bolt holes) that fix its place and direction best."""
        at, width = self.car.slot(end)
        columns = range(at, at + width)
        weight = np.diag([1.0, 1.0, 1.0, 60.0**2, 60.0**2]) / 30.0**2
        info = weight.copy()
        for r in self.readings:
            if end in (r.get("of"), r.get("end"), r.get("to")):
                row = self.gain(r, columns)
                info = info + np.outer(row, row)
        spots = [{"rim": c} for c in clocks] + [{"bolt": b} for b in bolts]
        taken = []
        scale = np.diag([1.0, 1.0, 1.0, 120.0, 120.0])
        for _ in range(count):
            found = []
            for i, spot in enumerate(spots):
                if sum(1 for j, _ in taken if j == i) >= most:
                    continue
                # Every clock mark gets its second tape before any gets a third.
                early = sum(1 for j, _ in taken if j == i)
                for mark in self.free:
                    r = {"kind": "tape", "from": mark, "to": end, **spot, "plus-minus": plus_minus}
                    d = self.car.predict(r, self.car.state(np.zeros(self.car.size)))[0]
                    if (i, mark) in taken or mark in avoid or not shortest <= d <= reach:
                        continue
                    state = self.car.state(np.zeros(self.car.size))
                    b = self.car.locate(state, end, spot.get("rim"), spot.get("bolt"))
                    if not self.is_open(self.car.true_places[mark], b):
                        continue
                    row = self.gain(r, columns)
                    spread = scale @ np.linalg.inv(info + np.outer(row, row)) @ scale
                    found.append((max(0, early - 1), np.trace(spread), i, mark, row))
            if not found:
                break
            _, _, i, mark, row = min(found, key=lambda f: f[:4])
            info = info + np.outer(row, row)
            taken.append((i, mark))
        for i, mark in sorted(taken):
            self.add("tape", frm=mark, to=end, **spots[i], plus_minus=plus_minus)


def take_readings(car, readings, seed, slips, inches=False):
    """Reads every planned reading with a random error, rounds as the shop does, and plants the
    slips: `{(from, to): (what, function of the mm that it should read and the car)}`, each once. Numbers start at 1."""
    rng = np.random.default_rng(seed)
    state = car.state(np.zeros(car.size))
    say = say_inches if inches else say_mm
    planted = []
    for number, r in enumerate(readings, 1):
        r["number"] = number
        true = car.predict(r, state)
        noise = rng.normal(0.0, car.sigma(r), len(true))
        if r["kind"] == "symmetry":
            continue
        value = true[0] + noise[0]
        if r["kind"] in ("inclination", "bearing", "face"):
            r["reads"] = say_deg(value)
            continue
        key = (r.get("from"), r.get("to"))
        if r["kind"] in ("tape", "plumb") and key in slips and not any(s["key"] == key for s in planted):
            what, change = slips[key]
            wrong = change(value, car)
            planted.append(
                {"key": key, "reading": number, "slip": what, "should_read": say(value), "reads": say(wrong)}
            )
            value = wrong
        r["reads"] = say(value)
    if {s["key"] for s in planted} != set(slips):
        near = {(r.get("from"), r["to"]) for r in readings if r.get("to") in {k[1] for k in slips}}
        raise ValueError(f"a slip found no reading to spoil; there are {sorted(near)}")
    return [{k: v for k, v in s.items() if k != "key"} for s in planted]


def swapped_digits(mm, _car):
    """The tens and units written the wrong way round."""
    whole = round(mm)
    tens, units = divmod(whole % 100, 10)
    return float(whole - whole % 100 + 10 * units + tens)


def burnt(mm, _car):
    """The tape started at 100 mm and that was not taken off."""
    return mm + 100.0


def from_wrong_mark(mark, to):
    """The tape started from another mark than the one called out."""
    return lambda _mm, car: np.linalg.norm(car.true_places[mark] - car.true_places[to])


def observed(car, readings):
    values = []
    for r in readings:
        if r["kind"] == "symmetry":
            values += [0.0, 0.0, 0.0]
        elif r["kind"] in ("inclination", "bearing", "face"):
            values.append(angle_rad(r["reads"]))
        else:
            values.append(length_mm(r["reads"]))
    return np.array(values)

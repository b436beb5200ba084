// A little car of our own invention, as a person would measure it: where everything really is, and the
// tape readings that follow, to the millimetre.

const MARKS = {
  "A left": [0, -400, 0],
  "A right": [0, 410, 8],
  "B left": [1210, -395, 25],
  "B right": [1195, 405, -12],
  "C left": [620, -440, 360],
};
const TIP = [2300, 330, 190];
/** The flange looks rearwards: twelve o'clock is up, three to the right looking downstream. */
const FLANGE = [-150, 120, 260];
const RIM_RADIUS = 52;
const FLOOR = -180;
/** Looking downstream (rearwards) the car's right is on the left hand. */
const CLOCKS = { "12:00": [0, 0, 1], "4:30": [0, -Math.SQRT1_2, -Math.SQRT1_2], "7:30": [0, Math.SQRT1_2, -Math.SQRT1_2] };

export const SIDES = { "A left": "left", "A right": "right", "B left": "left", "B right": "right", "C left": "left" };

const reads = (a, b) => String(Math.round(Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])));

/** Tapes between all marks. */
export const BETWEEN_MARKS = Object.entries(MARKS).flatMap(([from, a], at) =>
  Object.entries(MARKS).slice(at + 1).map(([to, b]) => ({ from, to, reads: reads(a, b) })));

export const HEIGHTS = ["A left", "A right", "B left", "B right"].map((of) => ({ of, reads: String(Math.round(MARKS[of][2] - FLOOR)) }));

export const TO_TIP = ["A right", "B left", "B right", "C left"].map((from) => ({ from, to: "tip point", reads: reads(MARKS[from], TIP) }));

export const TO_FLANGE = Object.entries(CLOCKS).flatMap(([clock, way]) => {
  const rim = FLANGE.map((middle, axis) => middle + RIM_RADIUS * way[axis]);
  return ["A left", "A right", "B right", "C left"].map((from) => ({ from, to: "flange", clock, reads: reads(MARKS[from], rim) }));
});

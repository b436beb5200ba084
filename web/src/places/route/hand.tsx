// Moving a joint or a bend by hand on the shop drawing, and pinning it there.

import { useEffect, useRef, useState } from "preact/hooks";
import type { DragAsked, DragView, GapView, GripView, LaidViewView, PinView } from "../../api";
import { useAsked, useShop } from "../../shop";
import { answer } from "../../talk";
import { length, prose, small } from "../../units";
import type { Unit } from "../../units";

type Place = [number, number, number];

/** What is taken: which joint or bend of which run, and where it is to go. */
interface Taken {
  run: string;
  grip: GripView;
  to: Place;
}

export interface Hand {
  isOn: boolean;
  turn: (isOn: boolean) => void;
  /** Where the views draw the car. */
  laid: LaidViewView[];
  taken: Taken | null;
  /** The line as moved by hand, as far as it is worked out. */
  line: DragView | null;
  trouble: string | null;
  /** How far the room of a pin reaches each way, mm. */
  within: number;
  setWithin: (mm: number) => void;
  take: (run: string, grip: GripView) => void;
  move: (to: Place) => void;
  letGo: () => void;
  putBack: () => void;
}

/** Rooms of a pin, each way: a hand, a thumb, a tape's slip. */
const ROOMS = { mm: [10, 20, 40], in: [9.525, 19.05, 38.1] } as const;

export function useHand(): Hand {
  const { view, unit, solving, act } = useShop();
  const [isOn, setIsOn] = useState(false);
  const [taken, setTaken] = useState<Taken | null>(null);
  const [line, setLine] = useState<DragView | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [room, setRoom] = useState(1);
  const laid = useAsked<LaidViewView[]>("api/laid", view.version);
  // One question at a time: the newest place is asked for when the last answer is there.
  const asking = useRef<{ next: DragAsked | null; isBusy: boolean; whenStill: ((line: DragView) => void) | null }>({ next: null, isBusy: false, whenStill: null });

  const ask = (asked: DragAsked) => {
    const now = asking.current;
    now.next = asked;
    if (!now.isBusy) {
      void pump();
    }
  };
  const pump = async () => {
    const now = asking.current;
    now.isBusy = true;
    let last: DragView | null = null;
    while (now.next !== null) {
      const asked = now.next;
      now.next = null;
      try {
        last = await answer<DragView>("api/drag", asked);
        setLine(last);
        setTrouble(null);
      } catch (error) {
        last = null;
        setTrouble(error instanceof Error ? error.message : String(error));
      }
    }
    now.isBusy = false;
    const then = now.whenStill;
    now.whenStill = null;
    if (last !== null && then !== null) {
      then(last);
    }
  };
  const forget = () => {
    asking.current.next = null;
    asking.current.whenStill = null;
    setTaken(null);
    setLine(null);
    setTrouble(null);
  };
  // New ways are there, or are being looked for: what was drawn by hand is over.
  const ways = view.route.runs.map((run) => run.grips.map((grip) => grip.at.map(Math.round).join(" ")).join()).join("|");
  useEffect(forget, [ways, solving === null]);

  const asked = (what: Taken): DragAsked => ({ run: what.run, mark: what.grip.mark, isJoint: what.grip.isJoint, to: what.to });
  const within = ROOMS[unit][room] ?? ROOMS[unit][1];
  return {
    isOn,
    turn: (on) => { setIsOn(on); if (!on) { forget(); } },
    laid: laid.value ?? [],
    taken,
    line,
    trouble,
    within,
    setWithin: (mm) => setRoom(Math.max(0, ROOMS[unit].findIndex((one) => one === mm))),
    take: (run, grip) => {
      const what = { run, grip, to: [...grip.at] as Place };
      setTaken(what);
      ask(asked(what));
    },
    move: (to) => {
      if (taken !== null) {
        const what = { ...taken, to };
        setTaken(what);
        ask(asked(what));
      }
    },
    letGo: () => {
      if (taken === null) {
        return;
      }
      const pin = (there: DragView) => {
        void act({ do: "pin", run: taken.run, isJoint: taken.grip.isJoint, at: there.at, within: written(within, unit) });
      };
      if (asking.current.isBusy) {
        asking.current.whenStill = pin;
      } else if (line !== null) {
        pin(line);
      }
    },
    putBack: forget,
  };
}

/** A room as the files write it. */
function written(mm: number, unit: Unit): string {
  return length(mm, unit).replace("−", "-");
}

const along = (place: readonly number[], way: readonly number[]) => place.reduce((sum, value, at) => sum + value * (way[at] ?? 0), 0);

/** A place of the car on the paper of a view, mm. */
function onPaper(laid: LaidViewView, place: readonly number[]): [number, number] {
  return [laid.origin[0] + along(place, laid.right) * laid.scale, laid.origin[1] - along(place, laid.up) * laid.scale];
}

/** The place moved so that it lies there on the paper; how far it is from the eye stays. */
function fromPaper(laid: LaidViewView, place: Place, [x, y]: [number, number]): Place {
  const right = (x - laid.origin[0]) / laid.scale - along(place, laid.right);
  const up = (laid.origin[1] - y) / laid.scale - along(place, laid.up);
  return place.map((value, at) => value + right * (laid.right[at] ?? 0) + up * (laid.up[at] ?? 0)) as Place;
}

/** A hand with gloves on takes what is this near, px. */
const REACH = 32;

/** What lies over a view while something is moved by hand; pins are shown at any time. */
export function HandLayer({ view: name, words, hand }: { view: string; words: string; hand: Hand }) {
  const { view } = useShop();
  const layer = useRef<SVGSVGElement>(null);
  const isHeld = useRef(false);
  const laid = hand.laid.find((one) => one.view === name);
  if (laid === undefined) {
    return null;
  }
  const pointed = (event: PointerEvent): [number, number] | null => {
    const screen = layer.current?.getScreenCTM();
    if (screen === null || screen === undefined) {
      return null;
    }
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(screen.inverse());
    return [at.x, at.y];
  };
  const grab = (event: PointerEvent) => {
    const at = pointed(event);
    const screen = layer.current?.getScreenCTM();
    if (!hand.isOn || at === null || screen === null || screen === undefined) {
      return;
    }
    const near = view.route.runs
      .flatMap((run) => run.grips.filter((grip) => grip.isFree).map((grip) => ({ run: run.name, grip })))
      .map((one) => {
        const [x, y] = onPaper(laid, one.grip.at);
        return { ...one, far: Math.hypot(x - at[0], y - at[1]) * screen.a };
      })
      .sort((a, b) => a.far - b.far)[0];
    if (near === undefined || near.far > REACH) {
      return;
    }
    event.preventDefault();
    layer.current?.setPointerCapture(event.pointerId);
    isHeld.current = true;
    hand.take(near.run, near.grip);
  };
  const move = (event: PointerEvent) => {
    const at = pointed(event);
    if (isHeld.current && at !== null && hand.taken !== null) {
      hand.move(fromPaper(laid, hand.taken.to, at));
    }
  };
  const drop = () => {
    if (isHeld.current) {
      isHeld.current = false;
      const moved = hand.taken === null ? 0 : Math.hypot(...hand.taken.to.map((value, at) => value - (hand.taken?.grip.at[at] ?? 0)));
      // A touch without a move only takes it; the buttons do the rest.
      if (moved > 1) {
        hand.letGo();
      }
    }
  };
  const points = (places: readonly (readonly number[])[]) => places.map((place) => onPaper(laid, place).map((value) => value.toFixed(2)).join(",")).join(" ");
  const spot = (place: readonly number[]) => { const [x, y] = onPaper(laid, place); return { cx: x, cy: y }; };
  return (
    <svg
      ref={layer} class={`hand ${hand.isOn ? "on" : ""}`} viewBox={`0 0 ${laid.paper[0]} ${laid.paper[1]}`}
      role="img" aria-label={hand.isOn ? `joints and bends to take by hand, ${words}` : `pins ${words}`}
      onPointerDown={grab} onPointerMove={move} onPointerUp={drop} onPointerCancel={() => { isHeld.current = false; hand.putBack(); }}
    >
      {hand.line === null ? null : (
        <g class="drawn">
          {hand.line.line.map((stretch, at) => <polyline key={at} points={points(stretch.points)} stroke-width={2 * stretch.radius * laid.scale} />)}
          {hand.line.line.map((stretch, at) => <polyline key={`middle ${at}`} class="middle" points={points(stretch.points)} />)}
        </g>
      )}
      {view.route.pins.map((pin) => <Pinned key={`${pin.run} ${pin.number}`} pin={pin} laid={laid} />)}
      {hand.isOn ? view.route.runs.flatMap((run) => run.grips.filter((grip) => grip.isFree).map((grip) => (
        <circle key={`${run.name} ${grip.mark} ${grip.isJoint}`} class={grip.isJoint ? "joint" : "bend"} {...spot(grip.at)} r={grip.isJoint ? 1.5 : 2.1} />
      ))) : null}
      {hand.taken === null || hand.line === null ? null : <circle class="taken" {...spot(hand.line.at)} r={2.8} />}
    </svg>
  );
}

function Pinned({ pin, laid }: { pin: PinView; laid: LaidViewView }) {
  if (pin.at === null) {
    return null;
  }
  const [x, y] = onPaper(laid, pin.at);
  const half = Math.max(pin.within * laid.scale, 1.6);
  return (
    <g class="pin">
      <rect x={x - half} y={y - half} width={2 * half} height={2 * half} />
      <path d={`M${x} ${y} l-1.7 -5 a2.3 2.3 0 1 1 3.4 0 z`} />
    </g>
  );
}

const WAYS: readonly [string, Place][] = [
  ["forwards", [-1, 0, 0]], ["rearwards", [1, 0, 0]], ["left", [0, -1, 0]], ["right", [0, 1, 0]], ["up", [0, 0, 1]], ["down", [0, 0, -1]],
];
const STEPS = { mm: [2, 10, 50], in: [1.5875, 6.35, 25.4] } as const;

/** What is moved, and by how much: as high whatever is taken, so that the drawing below stays where it is. */
export function HandCard({ hand }: { hand: Hand }) {
  const { view } = useShop();
  const free = view.route.runs.flatMap((run) => run.grips.filter((grip) => grip.isFree).map((grip) => ({ run: run.name, grip, key: `${run.name}|${grip.mark}|${grip.isJoint}` })));
  if (free.length === 0) {
    return null;
  }
  return (
    <div class="byhand">
      <div class="buttons">
        <button type="button" aria-pressed={hand.isOn} onClick={() => hand.turn(!hand.isOn)}>move it by hand</button>
        {hand.isOn ? <span>Take a joint (dot) or a bend (ring) on a view and move it: both ends of the run stay. Letting go pins it there.</span> : null}
      </div>
      {hand.isOn ? <Moving hand={hand} free={free} /> : null}
    </div>
  );
}

function Moving({ hand, free }: { hand: Hand; free: { run: string; grip: GripView; key: string }[] }) {
  const { unit } = useShop();
  const [step, setStep] = useState(1);
  const { taken } = hand;
  const by = STEPS[unit][step] ?? STEPS[unit][1];
  const pick = (key: string) => {
    const found = free.find((one) => one.key === key);
    if (found === undefined) {
      hand.putBack();
    } else {
      hand.take(found.run, found.grip);
    }
  };
  const nudge = (way: Place) => {
    if (taken !== null) {
      hand.move(taken.to.map((value, at) => value + by * (way[at] ?? 0)) as Place);
    }
  };
  return (
    <>
      <div class="line">
        <select aria-label="joint or bend" value={taken === null ? "" : `${taken.run}|${taken.grip.mark}|${taken.grip.isJoint}`} onChange={(event) => pick(event.currentTarget.value)}>
          <option value="">which joint or bend?</option>
          {free.map((one) => <option key={one.key} value={one.key}>{one.grip.isJoint ? `joint ${one.grip.mark}` : `bend ${one.grip.mark}`}, {one.run}</option>)}
        </select>
        <label>pin holds it within <select aria-label="room of a pin" value={String(hand.within)} onChange={(event) => hand.setWithin(Number(event.currentTarget.value))}>
          {ROOMS[unit].map((mm) => <option key={mm} value={String(mm)}>± {length(mm, unit)}</option>)}
        </select></label>
      </div>
      <div class="buttons" role="group" aria-label={taken === null ? "move it" : `move ${taken.grip.mark}`}>
        {WAYS.map(([words, way]) => <button type="button" key={words} disabled={taken === null} onClick={() => nudge(way)}>{words}</button>)}
        <select aria-label="by how much" value={String(by)} onChange={(event) => setStep(Math.max(0, STEPS[unit].findIndex((mm) => String(mm) === event.currentTarget.value)))}>
          {STEPS[unit].map((mm) => <option key={mm} value={String(mm)}>by {length(mm, unit)}</option>)}
        </select>
      </div>
    </>
  );
}

/** What the line leaves free while it is moved. It lies over the foot of the window, so that the drawing does not
 * move away under the hand. */
export function HandFoot({ hand }: { hand: Hand }) {
  const { unit, act } = useShop();
  const { taken, line } = hand;
  if (taken === null) {
    return null;
  }
  const pinHere = () => {
    void act({ do: "pin", run: taken.run, isJoint: taken.grip.isJoint, at: line?.at ?? taken.grip.at, within: written(hand.within, unit) });
  };
  return (
    <div class="foot">
      <Moved taken={taken} line={line} />
      {hand.trouble === null ? null : <p class="bad" role="alert">{hand.trouble}</p>}
      <div class="buttons">
        <button type="button" class="main" onClick={pinHere}>pin {taken.grip.mark} here</button>
        <button type="button" class="quiet" onClick={hand.putBack}>put it back</button>
      </div>
    </div>
  );
}

function Moved({ taken, line }: { taken: Taken; line: DragView | null }) {
  const { unit } = useShop();
  if (line === null) {
    return <p>…</p>;
  }
  const off = line.at.map((value, at) => value - (taken.grip.at[at] ?? 0));
  const short = Math.hypot(...line.at.map((value, at) => value - taken.to[at]!));
  const words = [
    way(off[0] ?? 0, "rearwards", "forwards", unit), way(off[1] ?? 0, "to the right", "to the left", unit), way(off[2] ?? 0, "up", "down", unit),
  ].filter((one) => one !== null);
  return (
    <section class="gaps" aria-label="gaps of the line as drawn by hand">
      <p>
        <strong>{taken.grip.isJoint ? "Joint" : "Bend"} {taken.grip.mark} of {taken.run}</strong> {words.length === 0 ? "where it was found" : words.join(", ")}.
        {short > 3 ? ` It comes no nearer than ${length(short, unit)}: the ends stay where they are.` : ""}
      </p>
      <ul class="rows">
        {line.gaps.map((gap) => <GapRow key={gap.subject} gap={gap} />)}
      </ul>
      <p><small>{line.failing === 0 ? "Every gap that could be checked holds" : `${line.failing} ${line.failing === 1 ? "gap is" : "gaps are"} too small`} with the line as drawn by hand{line.unchecked === 0 ? "" : `; ${line.unchecked} not checked`}.</small></p>
    </section>
  );
}

function way(mm: number, ahead: string, back: string, unit: Unit): string | null {
  return Math.abs(mm) < 0.5 ? null : `${length(Math.abs(mm), unit)} ${mm < 0 ? back : ahead}`;
}

function GapRow({ gap }: { gap: GapView }) {
  const { unit } = useShop();
  const holds = gap.gap - (gap.plusMinus ?? 0) >= gap.wanted;
  return (
    <li class={holds ? "pass" : "fail"}>
      <span class="grow"><strong>{gap.subject}</strong> <small>{holds ? "holds" : "too small"}; at least {length(gap.wanted, unit)}</small></span>
      <span class="value">{small(gap.gap, unit)} ± {gap.plusMinus === null ? "not known" : small(gap.plusMinus, unit)}</span>
    </li>
  );
}

/** All pins, each with whether the way that is shown keeps it. */
export function Pins() {
  const { view, unit, act } = useShop();
  if (view.route.pins.length === 0) {
    return null;
  }
  return (
    <section aria-label="pins">
      <h3>Pins</h3>
      {view.route.stale === null ? null : <p><small>A line drawn by hand is not made of stock: <em>find them again</em> looks for pieces that come there.</small></p>}
      <ul class="rows">
        {view.route.pins.map((pin) => (
          <li key={`${pin.run} ${pin.number}`} class={pin.away !== null && pin.away <= BESIDE ? "pass" : ""}>
            <span class="grow">
              {pin.isJoint ? "A joint" : "The line"} of <strong>{pin.run}</strong> within {length(pin.within, unit)} of {prose(pin.words, unit)}
              <br /><small>{pin.at === null ? "its mark is not found" : pin.away === null ? "no way yet" : pin.away <= BESIDE ? "the way that is shown keeps it" : `the way that is shown stays ${length(pin.away, unit)} away`}</small>
            </span>
            <button type="button" onClick={() => act({ do: "unpin", run: pin.run, number: pin.number, words: pin.words })} aria-label={`unpin ${pin.words}`}>unpin</button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** So far beside its room still counts as in it, mm, as on Prove. */
const BESIDE = 3;

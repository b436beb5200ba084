// Taking a reading: from, to, what it reads. Three taps and the digits.

import { useState } from "preact/hooks";
import type { Deed, PlaceView, Spot, TakeView } from "../../api";
import { AHEAD, AngleKeypad, HIGHER, Keypad, SLOPES, TURNS } from "../../keypad";
import type { Ways } from "../../keypad";
import { useShop } from "../../shop";
import { clock } from "../../units";

type Kind = "tape" | "height" | "plumb" | "ahead" | "higher" | "slope" | "bearing" | "face";

interface KindSpec {
  words: string;
  /** How it is taken, where that is not plain. */
  how?: string;
  /** The first place is asked so. */
  from: string;
  needsTo: boolean;
  /** The two places that give a direction are asked so. */
  line?: string;
  needsSetup: boolean;
  /** Largest angle, degrees; none for a length. */
  most?: number;
  ways: Ways;
}

const KINDS: Record<Kind, KindSpec> = {
  tape: { words: "tape", from: "From", needsTo: true, needsSetup: false, ways: [] },
  height: { words: "height over the floor", from: "Of", needsTo: false, needsSetup: true, ways: [] },
  plumb: { words: "along the floor", from: "From", needsTo: true, needsSetup: true, ways: [] },
  ahead: {
    words: "how far ahead", from: "From", needsTo: true, line: "Along the line", needsSetup: false, ways: AHEAD,
    how: "A straight edge along the line, a square off it to each place: how far the second place lies ahead of the first, in the direction of the line.",
  },
  higher: { words: "how much higher", from: "From", needsTo: true, needsSetup: true, ways: HIGHER, how: "How much higher or lower the second place lies than the first, as the car stands." },
  slope: {
    words: "slope of a line", from: "From", needsTo: true, needsSetup: true, most: 90, ways: SLOPES,
    how: "Zero the angle finder on the floor that the car stands on. Up: the line rises from the first place to the second.",
  },
  bearing: {
    words: "turned from a line", from: "From", needsTo: true, line: "Turned from the line", needsSetup: true, most: 180, ways: TURNS,
    how: "Seen from above: by how much the line from place to place is turned from another line.",
  },
  face: {
    words: "slope of a face", from: "Face of", needsTo: false, needsSetup: true, most: 90, ways: SLOPES,
    how: "Zero the angle finder on the floor that the car stands on, then lay it on a straight edge across the face, from its middle toward a clock mark. Up: that side is the higher.",
  },
};

export function TakeReading({ wanted, done }: { wanted: TakeView | null; done: () => void }) {
  const { view, unit, act } = useShop();
  const setups = view.measure.setups;
  const [kind, setKind] = useState<Kind>(wanted?.kind ?? "tape");
  const [from, setFrom] = useState<Spot | null>(wanted?.from ?? null);
  const [to, setTo] = useState<Spot | null>(wanted?.to ?? null);
  const [line, setLine] = useState<(Spot | null)[]>([null, null]);
  const [setup, setSetup] = useState(wanted?.setup ?? setups[0]?.name ?? "");
  const [said, setSaid] = useState<string | null>(null);
  const spec = KINDS[kind];
  const stands = setup === "" ? setups[0]?.name ?? "" : setup;
  const [one, two] = line;
  const hasLine = spec.line === undefined || (one !== null && two !== null);
  const isReady = from !== null && (to !== null || !spec.needsTo) && hasLine && (!spec.needsSetup || stands !== "");
  const write = async (reads: string) => {
    const deed = deedOf(kind, from, to, line, stands, reads);
    if (deed !== null && await act(deed)) {
      setSaid(`${spotWords(from)}${to === null ? "" : ` to ${spotWords(to)}`}: ${reads}`);
      // The zero of the tape usually stays where it is.
      if (spec.needsTo) { setTo(null); } else { setFrom(null); }
      done();
    }
  };
  const pad = `${kind} ${spotWords(from)} ${spotWords(to)} ${line.map(spotWords).join(" ")}`;
  return (
    <section class="card" id="take">
      <h2>Take a reading</h2>
      <div class="tabs" role="group" aria-label="kind of reading">
        {(Object.keys(KINDS) as Kind[]).map((value) => (
          <button type="button" key={value} aria-pressed={kind === value} onClick={() => { setKind(value); setFrom(null); setTo(null); }}>{KINDS[value].words}</button>
        ))}
      </div>
      {spec.how === undefined ? null : <p>{spec.how}</p>}
      {!spec.needsSetup ? null : setups.length === 0 ? <p class="bad">Say first how the car stands: Add to the car, how it stands.</p> : (
        <label class="line">
          The car is
          <select value={stands} onChange={(event) => setSetup(event.currentTarget.value)}>
            {setups.map((one) => <option key={one.name}>{one.name}</option>)}
          </select>
        </label>
      )}
      {spec.line === undefined ? null : <Pick label={`${spec.line} from`} only="places" picked={one ?? null} pick={(spot) => setLine([spot, two ?? null])} {...(two == null ? {} : { but: two })} />}
      {spec.line === undefined || one == null ? null : <Pick label="toward" only="places" picked={two ?? null} pick={(spot) => setLine([one, spot])} but={one} />}
      {hasLine ? <Pick key={kind} label={spec.from} {...(kind === "face" ? { only: "ends" as const } : {})} picked={from} pick={setFrom} /> : null}
      {hasLine && spec.needsTo && from !== null ? <Pick label="To" picked={to} pick={setTo} but={from} /> : null}
      {!isReady ? null : spec.most === undefined ? (
        <Keypad key={pad} unit={unit} label="what it reads" ways={spec.ways} done={write} />
      ) : (
        <AngleKeypad key={pad} label="what it reads" ways={spec.ways} most={spec.most} done={write} />
      )}
      {said === null ? null : <p role="status" class="said">Written down: {said}</p>}
    </section>
  );
}

/** What is written; null while something is missing. */
function deedOf(kind: Kind, from: Spot | null, to: Spot | null, line: (Spot | null)[], setup: string, reads: string): Deed | null {
  const [one, two] = line.map((spot) => spot?.name);
  if (from === null) {
    return null;
  }
  if (kind === "height") {
    return { do: "addHeight", of: from, setup, reads };
  }
  if (kind === "face") {
    return from.rim === null ? null : { do: "addFace", end: from.name, toward: from.rim, setup, reads };
  }
  if (to === null) {
    return null;
  }
  switch (kind) {
    case "tape":
      return { do: "addTape", from, to, reads };
    case "plumb":
      return { do: "addPlumb", from, to, setup, reads };
    case "higher":
      return { do: "addOffset", from, to, along: null, setup, reads };
    case "slope":
      return { do: "addSlope", from, to, setup, reads };
    case "ahead":
      return one === undefined || two === undefined ? null : { do: "addOffset", from, to, along: [one, two], setup: null, reads };
    case "bearing":
      return one === undefined || two === undefined ? null : { do: "addBearing", from, to, base: [one, two], setup, reads };
  }
}

function spotWords(spot: Spot | null): string {
  return spot === null ? "" : spot.rim === null ? spot.name : `${spot.name} at ${clock(spot.rim)}`;
}

const HOURS = [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5];

interface PickProps {
  label: string;
  picked: Spot | null;
  pick: (spot: Spot | null) => void;
  but?: Spot;
  /** Only ends, by a clock mark of their face; or only marks and places. */
  only?: "ends" | "places";
}

function Pick({ label, picked, pick, but, only }: PickProps) {
  const { view } = useShop();
  const [end, setEnd] = useState<PlaceView | null>(null);
  const [wanted, setWanted] = useState("");
  if (picked !== null) {
    return (
      <p class="line picked">
        <span>{label} <strong>{spotWords(picked)}</strong></span>
        <button type="button" class="quiet" onClick={() => { pick(null); setEnd(null); }}>another</button>
      </p>
    );
  }
  if (end !== null) {
    return (
      <fieldset class="pick">
        <legend>{label} {end.name}, looking downstream at</legend>
        {HOURS.map((hours) => <button type="button" key={hours} onClick={() => pick({ name: end.name, rim: hours })}>{clock(hours)}</button>)}
        {only === "ends" ? null : <button type="button" onClick={() => pick({ name: end.name, rim: null })}>centre</button>}
        <button type="button" class="quiet" onClick={() => setEnd(null)}>back</button>
      </fieldset>
    );
  }
  const isOffered = (place: PlaceView) => (place.kind === "end" ? only !== "places" : only !== "ends");
  const all = view.measure.places.filter((place) => isOffered(place) && (place.kind === "end" || place.name !== but?.name));
  const isLong = all.length > 16;
  const shown = all.filter((place) => place.name.toLowerCase().includes(wanted.toLowerCase()));
  return (
    <fieldset class="pick">
      <legend>{label}</legend>
      {isLong ? <input class="find" placeholder="find a name" aria-label={`find a place to measure ${label.toLowerCase()}`} value={wanted} onInput={(event) => setWanted(event.currentTarget.value)} /> : null}
      {shown.map((place) => (
        <button
          type="button"
          key={place.name}
          class={place.kind}
          title={place.place ?? ""}
          onClick={() => (place.kind === "end" ? setEnd(place) : pick({ name: place.name, rim: null }))}
        >
          {place.name}{place.kind === "end" ? " …" : ""}
        </button>
      ))}
    </fieldset>
  );
}

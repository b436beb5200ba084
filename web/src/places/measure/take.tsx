// Taking a reading: from, to, what it reads. Three taps and the digits.

import { useState } from "preact/hooks";
import type { PlaceView, Spot, TakeView } from "../../api";
import { Keypad } from "../../keypad";
import { useShop } from "../../shop";
import { clock } from "../../units";

const KINDS = [["tape", "tape"], ["height", "height over the floor"], ["plumb", "along the floor"]] as const;

export function TakeReading({ wanted, done }: { wanted: TakeView | null; done: () => void }) {
  const { view, unit, act } = useShop();
  const setups = view.measure.setups;
  const [kind, setKind] = useState(wanted?.kind ?? "tape");
  const [from, setFrom] = useState<Spot | null>(wanted?.from ?? null);
  const [to, setTo] = useState<Spot | null>(wanted?.to ?? null);
  const [setup, setSetup] = useState(wanted?.setup ?? setups[0]?.name ?? "");
  const [said, setSaid] = useState<string | null>(null);
  const needsTo = kind !== "height";
  const stands = setup === "" ? setups[0]?.name ?? "" : setup;
  const isReady = from !== null && (to !== null || !needsTo) && (kind === "tape" || stands !== "");
  const write = async (reads: string) => {
    if (from === null || (needsTo && to === null)) {
      return;
    }
    const isKept =
      kind === "height" || to === null
        ? await act({ do: "addHeight", of: from, setup: stands, reads })
        : kind === "plumb"
          ? await act({ do: "addPlumb", from, to, setup: stands, reads })
          : await act({ do: "addTape", from, to, reads });
    if (isKept) {
      setSaid(`${spotWords(from)}${to === null ? "" : ` to ${spotWords(to)}`}: ${reads}`);
      // The zero of the tape usually stays where it is.
      if (needsTo) { setTo(null); } else { setFrom(null); }
      done();
    }
  };
  return (
    <section class="card" id="take">
      <h2>Take a reading</h2>
      <div class="tabs" role="group" aria-label="kind of reading">
        {KINDS.map(([value, words]) => (
          <button type="button" key={value} aria-pressed={kind === value} onClick={() => { setKind(value); setFrom(null); setTo(null); }}>{words}</button>
        ))}
      </div>
      {kind === "tape" ? null : setups.length === 0 ? <p class="bad">Say first how the car stands: Add to the car, how it stands.</p> : (
        <label class="line">
          The car is
          <select value={stands} onChange={(event) => setSetup(event.currentTarget.value)}>
            {setups.map((one) => <option key={one.name}>{one.name}</option>)}
          </select>
        </label>
      )}
      <Pick label={kind === "height" ? "Of" : "From"} picked={from} pick={setFrom} />
      {needsTo && from !== null ? <Pick label="To" picked={to} pick={setTo} but={from} /> : null}
      {isReady ? <Keypad key={`${kind} ${spotWords(from)} ${to === null ? "" : spotWords(to)}`} unit={unit} label="what it reads" done={write} /> : null}
      {said === null ? null : <p role="status" class="said">Written down: {said}</p>}
    </section>
  );
}

function spotWords(spot: Spot): string {
  return spot.rim === null ? spot.name : `${spot.name} at ${clock(spot.rim)}`;
}

const HOURS = [12, 1.5, 3, 4.5, 6, 7.5, 9, 10.5];

function Pick({ label, picked, pick, but }: { label: string; picked: Spot | null; pick: (spot: Spot | null) => void; but?: Spot }) {
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
        <button type="button" onClick={() => pick({ name: end.name, rim: null })}>centre</button>
        <button type="button" class="quiet" onClick={() => setEnd(null)}>back</button>
      </fieldset>
    );
  }
  const all = view.measure.places.filter((place) => place.kind === "end" || place.name !== but?.name);
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

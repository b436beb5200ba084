// Errands: the order of the stops that is back at the shop first, by typed minutes and opening hours.

import { useState } from "preact/hooks";
import type { ErrandsAsked, ErrandsView } from "../../api";
import { answer } from "../../talk";

interface StopTyped {
  name: string;
  opens: string;
  closes: string;
  /** Minutes there. */
  minutes: string;
  /** Minutes by road from the shop; empty when another road leads there. */
  fromShop: string;
}

interface RoadTyped {
  a: string;
  b: string;
  minutes: string;
}

interface Typed {
  leave: string;
  stops: StopTyped[];
  roads: RoadTyped[];
}

const SHOP = "shop";
const MOST_STOPS = 12;
const KEPT = `tubewright-errands ${location.pathname}`;
const NOTHING: Typed = { leave: "", stops: [], roads: [] };

/** What was typed here before: hours and minutes are the same next time. */
function kept(): Typed {
  try {
    const found = JSON.parse(localStorage.getItem(KEPT) ?? "null") as Partial<Typed> | null;
    return found !== null && Array.isArray(found.stops) && Array.isArray(found.roads) ? { ...NOTHING, ...found } : NOTHING;
  } catch {
    return NOTHING;
  }
}

/** Whole minutes; throws a sentence for anything else. */
function minutes(text: string, what: string): number {
  if (!/^\d{1,4}$/.test(text.trim())) {
    throw new Error(`Minutes ${what}: type a whole number.`);
  }
  return Number(text);
}

function asked(typed: Typed): ErrandsAsked {
  return {
    leave: typed.leave,
    stops: typed.stops.map(({ name, opens, closes, minutes: there }) => ({ name: name.trim(), opens, closes, minutes: minutes(there, `at ${name}`) })),
    roads: [
      ...typed.stops.filter((stop) => stop.fromShop.trim() !== "").map((stop) => ({ a: SHOP, b: stop.name.trim(), minutes: minutes(stop.fromShop, `from the shop to ${stop.name}`) })),
      ...typed.roads.map((road) => ({ a: road.a, b: road.b, minutes: minutes(road.minutes, `from ${road.a} to ${road.b}`) })),
    ],
  };
}

export function Errands({ suppliers }: { suppliers: string[] }) {
  const [typed, setTyped] = useState<Typed>(kept);
  const [found, setFound] = useState<ErrandsView | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const change = (next: Typed) => {
    setTyped(next);
    setFound(null);
    setTrouble(null);
    localStorage.setItem(KEPT, JSON.stringify(next));
  };
  const put = (at: number, more: Partial<StopTyped>) => {
    const old = typed.stops[at];
    const name = more.name;
    // A road keeps to its stop when that gets another name.
    const roads = old === undefined || name === undefined ? typed.roads : typed.roads.map((road) => ({ ...road, a: road.a === old.name ? name : road.a, b: road.b === old.name ? name : road.b }));
    change({ ...typed, roads, stops: typed.stops.map((stop, index) => (index === at ? { ...stop, ...more } : stop)) });
  };
  const add = (name: string) => change({ ...typed, stops: [...typed.stops, { name, opens: "", closes: "", minutes: "", fromShop: "" }] });
  const drop = (at: number) => {
    const gone = typed.stops[at]?.name;
    change({ ...typed, stops: typed.stops.filter((_, index) => index !== at), roads: typed.roads.filter((road) => road.a !== gone && road.b !== gone) });
  };
  const find = async () => {
    try {
      setFound(await answer<ErrandsView>("api/errands", asked(typed)));
      setTrouble(null);
    } catch (error) {
      setFound(null);
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  };
  const left = suppliers.filter((name) => typed.stops.every((stop) => stop.name !== name));
  const isFull = typed.stops.length >= MOST_STOPS;
  return (
    <details class={`card errands ${found === null ? "noprint" : ""}`}>
      <summary><h2>Errands{typed.stops.length === 0 ? "" : ` (${typed.stops.length} ${typed.stops.length === 1 ? "stop" : "stops"})`}</h2></summary>
      <p>Up to twelve stops with the hours they are open: the order that is back at the shop first. Minutes are your own; they are kept in this browser.</p>
      <form class="noprint" onSubmit={(event) => { event.preventDefault(); void find(); }}>
        <label class="line">Leave the shop at<input type="time" required value={typed.leave} onInput={(event) => change({ ...typed, leave: event.currentTarget.value })} /></label>
        {typed.stops.map((stop, at) => (
          <fieldset class="stop" key={at}>
            <legend>Stop {at + 1}</legend>
            <label class="line">Name<input required maxLength={200} value={stop.name} onInput={(event) => put(at, { name: event.currentTarget.value })} /></label>
            <label class="line">Opens<input type="time" required value={stop.opens} onInput={(event) => put(at, { opens: event.currentTarget.value })} /></label>
            <label class="line">Closes<input type="time" required value={stop.closes} onInput={(event) => put(at, { closes: event.currentTarget.value })} /></label>
            <label class="line">Minutes there<input inputMode="numeric" required value={stop.minutes} onInput={(event) => put(at, { minutes: event.currentTarget.value })} /></label>
            <label class="line">Minutes by road from the shop<input inputMode="numeric" value={stop.fromShop} placeholder="or a road from another stop" onInput={(event) => put(at, { fromShop: event.currentTarget.value })} /></label>
            <button type="button" class="quiet" onClick={() => drop(at)}>leave {stop.name === "" ? "this stop" : stop.name} out</button>
          </fieldset>
        ))}
        <div class="buttons">
          {isFull ? null : left.map((name) => <button type="button" key={name} onClick={() => add(name)}>add {name}</button>)}
          {isFull ? <span>Twelve stops are the most for one round.</span> : <button type="button" onClick={() => add("")}>add another stop</button>}
        </div>
        <Roads typed={typed} change={change} />
        <button type="submit" class="main" disabled={typed.stops.length === 0}>Find the order</button>
      </form>
      {trouble === null ? null : <p class="bad" role="alert">{trouble}</p>}
      {found === null ? null : <Found found={found} />}
    </details>
  );
}

/** Roads from stop to stop; without one the way leads past the shop. */
function Roads({ typed, change }: { typed: Typed; change: (next: Typed) => void }) {
  const places = [SHOP, ...typed.stops.map((stop) => stop.name).filter((name) => name !== "")];
  if (places.length < 3) {
    return null;
  }
  const put = (at: number, more: Partial<RoadTyped>) => change({ ...typed, roads: typed.roads.map((road, index) => (index === at ? { ...road, ...more } : road)) });
  const pick = (at: number, key: "a" | "b", words: string, value: string) => (
    <label class="line">{words}
      <select value={value} onChange={(event) => put(at, { [key]: event.currentTarget.value })}>
        {places.map((name) => <option key={name}>{name}</option>)}
      </select>
    </label>
  );
  return (
    <>
      {typed.roads.map((road, at) => (
        <fieldset class="stop" key={at}>
          <legend>Road {at + 1}</legend>
          {pick(at, "a", "From", road.a)}
          {pick(at, "b", "To", road.b)}
          <label class="line">Minutes, either way<input inputMode="numeric" required value={road.minutes} onInput={(event) => put(at, { minutes: event.currentTarget.value })} /></label>
          <button type="button" class="quiet" onClick={() => change({ ...typed, roads: typed.roads.filter((_, index) => index !== at) })}>leave this road out</button>
        </fieldset>
      ))}
      <div class="buttons">
        <button type="button" onClick={() => change({ ...typed, roads: [...typed.roads, { a: places[1] ?? SHOP, b: places[2] ?? SHOP, minutes: "" }] })}>add a road between two stops</button>
      </div>
    </>
  );
}

function Found({ found }: { found: ErrandsView }) {
  return (
    <div role="status" class="round-trip">
      <ol class="rows">
        <li><span class="grow">leave the shop</span><strong class="value">{found.leaves}</strong></li>
        {found.stops.map((stop) => <li key={stop.name}><span class="grow">done at {stop.name}</span><strong class="value">{stop.done}</strong></li>)}
        <li><span class="grow">back at the shop</span><strong class="value">{found.back}</strong></li>
      </ol>
      <p>No other order is back sooner, if the minutes hold.</p>
      {found.notVisited.length === 0 ? null : <p class="bad">Bought from, but not on the round: {found.notVisited.join(", ")}.</p>}
    </div>
  );
}

// The frame round the six places: what car it is, what was refused, what waits to be sent.

import { useCallback, useEffect, useMemo, useState } from "preact/hooks";
import type { Deed, Solving, View } from "./api";
import { Buy } from "./places/buy";
import { Cut } from "./places/cut";
import { Fit } from "./places/fit";
import { Measure } from "./places/measure";
import { Prove } from "./places/prove";
import { Route } from "./places/route";
import { Demonstration } from "./samples";
import { PLACES, ShopContext } from "./shop";
import type { PlaceName, Shop } from "./shop";
import { ask as request, forgetWaiting, listen, sendDeed, sendWaiting, tell, waiting } from "./talk";
import type { Unit } from "./units";

const SHOWN: Record<PlaceName, () => preact.JSX.Element> = { Measure, Route, Buy, Cut, Fit, Prove };

function placeFromAddress(): PlaceName {
  const wanted = decodeURIComponent(location.hash.slice(1));
  return PLACES.find((place) => place === wanted) ?? "Measure";
}

export function Page() {
  const [view, setView] = useState<View | null>(null);
  const [solving, setSolving] = useState<Solving | null>(null);
  const [isThere, setIsThere] = useState(true);
  const [refused, setRefused] = useState<string | null>(null);
  const [queued, setQueued] = useState(waiting());
  const [place, setPlace] = useState<PlaceName>(placeFromAddress());
  const [picked, setPicked] = useState<Unit | null>(pickedUnit());
  const [isDark, setIsDark] = useState(startsDark());
  const [flyTo, setFlyTo] = useState<[number, number, number] | null>(null);
  const unit: Unit = picked ?? (view?.units === "in" ? "in" : "mm");

  const refresh = useCallback(async () => {
    try {
      const fresh = await tell<View>("api/view");
      setView(fresh);
      setSolving(fresh.route.solving);
    } catch {
      // The next piece of news asks again; what was loaded stays on the page.
    }
  }, []);

  useEffect(
    () =>
      listen(
        (news) => {
          if (news.event === "solving") {
            setSolving(news.progress);
          } else {
            void refresh();
          }
        },
        setIsThere,
      ),
    [refresh],
  );
  useEffect(() => {
    const follow = () => {
      setPlace(placeFromAddress());
      window.scrollTo(0, 0);
    };
    window.addEventListener("hashchange", follow);
    return () => window.removeEventListener("hashchange", follow);
  }, []);
  useEffect(() => {
    document.documentElement.dataset["light"] = isDark ? "dark" : "bright";
    localStorage.setItem("light", isDark ? "dark" : "bright");
  }, [isDark]);
  useEffect(() => {
    if (view !== null) {
      document.title = `${view.name} · ${place} · tubewright`;
    }
  }, [view?.name, place]);

  const act = useCallback(
    async (deed: Deed) => {
      const sent = await sendDeed(deed);
      setQueued(waiting());
      setRefused(sent.kind === "refused" ? sent.refusal.words : null);
      if (sent.kind === "done") {
        await refresh();
      }
      return sent.kind !== "refused";
    },
    [refresh],
  );
  const ask = useCallback(
    async (path: string, method?: string, body?: unknown) => {
      const sent = await request(path, method, body);
      setRefused(sent.kind === "refused" ? sent.refusal.words : null);
      await refresh();
    },
    [refresh],
  );
  const goTo = (name: PlaceName) => { location.hash = name; };
  const fly = (at: [number, number, number]) => { setFlyTo([...at]); goTo("Route"); };
  const shop = useMemo<Shop | null>(
    () => (view === null ? null : { view, unit, solving, isThere, waiting: queued.map((one) => one.deed), act, ask, goTo, fly, flyTo }),
    [view, unit, solving, isThere, queued, act, ask, flyTo],
  );

  if (shop === null || view === null) {
    return <main class="first"><h1>tubewright</h1><p>Opening the build…</p></main>;
  }
  const Place = SHOWN[place];
  const errors = view.problems.filter((problem) => problem.isError);
  const changeUnit = () => {
    const next = unit === "mm" ? "in" : "mm";
    setPicked(next);
    localStorage.setItem("unit", next);
  };
  return (
    <ShopContext.Provider value={shop}>
      <header>
        <div class="name"><strong>{view.name}</strong>{view.note === null ? null : <small>{view.note}</small>}</div>
        <div class="tools">
          <button type="button" disabled={view.canUndo === null} title={view.canUndo ?? "nothing to take back"} onClick={() => ask("api/undo")}>take back</button>
          <button type="button" disabled={view.canRedo === null} title={view.canRedo ?? "nothing to do again"} onClick={() => ask("api/redo")}>do again</button>
          <button type="button" onClick={changeUnit} aria-label={`lengths in ${unit}; change`}>{unit}</button>
          <button type="button" onClick={() => setIsDark(!isDark)} aria-label={isDark ? "bright page" : "dark page"}>{isDark ? "☼" : "☾"}</button>
        </div>
      </header>
      <nav aria-label="places">
        {PLACES.map((name) => (
          <a key={name} href={`#${name}`} aria-current={name === place ? "page" : undefined}>{name}<Count place={name} view={view} /></a>
        ))}
      </nav>
      <main>
        <Demonstration />
        <h1>{place}</h1>
        {isThere ? null : <p class="card warn" role="status">The program cannot be reached. What you tick or type is kept here and offered again when it is back. Keep this page open: closed, it does not open again without the program (a list that was kept on the phone does).</p>}
        {queued.length > 0 && isThere ? (
          <div class="card warn" role="status">
            <p>{queued.length} {queued.length === 1 ? "entry was" : "entries were"} made while the program was out of reach:</p>
            <ul class="plain">{queued.map((one, at) => <li key={at}>{deedWords(one.deed)}</li>)}</ul>
            <div class="buttons">
              <button type="button" class="main" onClick={async () => { const reasons = await sendWaiting(); setQueued(waiting()); setRefused(reasons.length === 0 ? null : reasons.join(" ")); await refresh(); }}>Send now</button>
              <button type="button" class="quiet" onClick={() => { forgetWaiting(); setQueued([]); }}>Forget them</button>
            </div>
          </div>
        ) : null}
        {refused === null ? null : (
          <div class="card fail" role="alert"><p>{refused}</p><button type="button" class="quiet" onClick={() => setRefused(null)}>understood</button></div>
        )}
        {errors.map((problem) => <pre class="card fail" key={problem.words}>{problem.words}</pre>)}
        <Place />
      </main>
    </ShopContext.Provider>
  );
}

function pickedUnit(): Unit | null {
  const kept = localStorage.getItem("unit");
  return kept === "in" || kept === "mm" ? kept : null;
}

function startsDark(): boolean {
  const kept = localStorage.getItem("light");
  return kept === null ? matchMedia("(prefers-color-scheme: dark)").matches : kept === "dark";
}

/** What a deed that waits was, in few words. */
function deedWords(deed: Deed): string {
  switch (deed.do) {
    case "addTape":
      return `${deed.from.name} to ${deed.to.name}: ${deed.reads}`;
    case "addHeight":
      return `height of ${deed.of.name}: ${deed.reads}`;
    case "addPlumb":
      return `${deed.from.name} to ${deed.to.name} along the floor: ${deed.reads}`;
    case "addOffset":
      return `${deed.to.name} from ${deed.from.name}: ${deed.reads}`;
    case "addSlope":
    case "addBearing":
      return `${deed.from.name} to ${deed.to.name}: ${deed.reads}`;
    case "addFace":
      return `face of ${deed.end}: ${deed.reads}`;
    case "changeReading":
      return `reading ${deed.number}: ${deed.reads}`;
    case "addMark":
    case "addPoint":
    case "addSetup":
      return `added ${deed.name}`;
    case "shelveRest":
      return `${deed.left} of ${deed.piece} on the shelf`;
    case "happened": {
      const what = deed.what;
      if (what.kind === "got") { return `got ${what.count} × ${what.item}`; }
      if (what.kind === "out") { return `${what.item} is out`; }
      if (what.kind === "otherSize") { return `took ${what.count} × ${what.taken} for ${what.item}`; }
      return `${what.kind} ${"piece" in what ? what.piece : what.joint}`;
    }
    default:
      return "another change";
  }
}

/** How much in a place still wants a look. */
function Count({ place, view }: { place: PlaceName; view: View }) {
  const count = place === "Measure" ? view.measure.readings.filter((reading) => reading.doubt !== null && !reading.isDropped).length : 0;
  return count === 0 ? null : <span class="count" aria-label={`${count} to look at`}>{count}</span>;
}

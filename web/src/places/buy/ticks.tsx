// Keeping the list on the phone as a file, and taking its ticks over afterwards.

import { useState } from "preact/hooks";
import type { BuyView, Counter } from "../../api";
import { today, useShop } from "../../shop";
import { readTicks, savedList } from "./saved";
import type { SavedTick } from "./saved";

/** A file of the list, to be opened at the counter. Off until the substitutes are worked out. */
export function KeepList({ buy, counter, isFresh }: { buy: BuyView; counter: Counter | null; isFresh: boolean }) {
  const { view } = useShop();
  const keep = () => {
    if (counter === null) {
      return;
    }
    const file = new Blob([savedList(view.name, buy, counter, today())], { type: "text/html" });
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = `counter list ${today()}.html`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
  };
  return <button type="button" disabled={counter === null || !isFresh} onClick={keep}>{counter === null || !isFresh ? "Working out substitutes…" : "Keep the list on this phone"}</button>;
}

/** Ticks out of a saved list, looked at before they are written down. */
export function SavedTicks() {
  const { view, act } = useShop();
  const [text, setText] = useState("");
  const [ticks, setTicks] = useState<SavedTick[] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const look = () => {
    setSaid(null);
    try {
      setTicks(readTicks(text));
      setTrouble(null);
    } catch (error) {
      setTicks(null);
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  };
  const isThereAlready = (tick: SavedTick) => view.record.some((entry) => entry.what === tick.kind && entry.about === tick.item && entry.on === tick.on);
  const take = async () => {
    const left: SavedTick[] = [];
    for (const tick of ticks ?? []) {
      const { item, supplier, count, on } = tick;
      const what = tick.kind === "got" ? { kind: "got" as const, item, supplier, count } : { kind: "out" as const, item, supplier };
      // After the first that is refused the others wait, so that their order stays.
      if (left.length > 0 || !(await act({ do: "happened", on, what }))) {
        left.push(tick);
      }
    }
    setTicks(left.length === 0 ? null : left);
    if (left.length === 0) {
      setText("");
      setSaid("Written down.");
    }
  };
  return (
    <details class="card noprint">
      <summary>Ticks from a saved list</summary>
      <p>Back from the counter: copy the ticks in the list that was kept on the phone, paste them here.</p>
      <textarea rows={3} aria-label="ticks from a saved list" value={text} onInput={(event) => { setText(event.currentTarget.value); setTicks(null); }} />
      <div class="buttons"><button type="button" disabled={text.trim() === ""} onClick={look}>look at them</button>{said === null ? null : <span class="said" role="status">{said}</span>}</div>
      {trouble === null ? null : <p class="bad" role="alert">{trouble}</p>}
      {ticks === null ? null : (
        <>
          <ul class="rows">
            {ticks.map((tick, at) => (
              <li key={at} class={isThereAlready(tick) ? "doubt" : ""}>
                <span class="grow">{tick.kind === "got" ? `got ${tick.count} × ${tick.item}` : `${tick.item} is out`}<br /><small>{tick.supplier}, {tick.on}{isThereAlready(tick) ? ": the record has one like it of that day; leave it out if it is the same" : ""}</small></span>
                <button type="button" class="quiet" onClick={() => setTicks(ticks.filter((one) => one !== tick))}>leave out</button>
              </li>
            ))}
          </ul>
          <button type="button" class="main" disabled={ticks.length === 0} onClick={take}>write {ticks.length === 1 ? "it" : `all ${ticks.length}`} down</button>
        </>
      )}
    </details>
  );
}

// A spoiled piece: the cheapest remake on its card, and what is left of it for the shelf.

import { useEffect, useRef, useState } from "preact/hooks";
import type { MadeView, RemakeView } from "../../api";
import { AngleKeypad, Keypad } from "../../keypad";
import { today, useShop } from "../../shop";
import type { Shop } from "../../shop";

/** The piece that was ticked spoiled here a moment ago: its remake may come up on another card. */
let justSpoiled: string | null = null;

/** The marks that name this part alone: a long straight may be the leg of two bends and what lies between. */
export function ownMarks(marks: string[], parts: string[][]): string[] {
  const own = marks.filter((mark) => parts.filter((part) => part.includes(mark)).length === 1);
  return own.length === 0 ? marks.slice(0, 1) : own;
}

export async function spoil(act: Shop["act"], piece: string): Promise<void> {
  justSpoiled = piece;
  await act({ do: "happened", on: today(), what: { kind: "spoiled", piece } });
}

export function Remake({ remake, isFresh }: { remake: RemakeView; isFresh: boolean }) {
  const { unit, act } = useShop();
  const [isOpen, setIsOpen] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (isFresh && justSpoiled === remake.piece) {
      justSpoiled = null;
      place.current?.scrollIntoView({ block: "center" });
    }
  }, [isFresh, remake.piece]);
  const shelve = async (left: string) => {
    if (await act({ do: "shelveRest", piece: remake.piece, left })) {
      setIsOpen(false);
    }
  };
  const label = `what is left of ${remake.piece}`;
  return (
    <div class="remake" ref={place} role="status" aria-label={`remake of ${remake.piece}`}>
      <p class="bad">{remake.piece} is spoiled: mark it with paint, so that nobody tacks it.</p>
      {remake.trouble !== null ? <p class="bad">Its remake was not worked out: {remake.trouble}.</p> : (
        <>
          {remake.from === null ? <p class="bad">Nothing on the shelf or for sale makes it again: add stock or an offer on Buy.</p> : <p><strong>Remake. {remake.from}</strong></p>}
          <p>{remake.buying}</p>
          {remake.missing.length === 0 ? null : <p class="bad">Cannot be made: {remake.missing.join(", ")}.</p>}
        </>
      )}
      {remake.onShelf !== null ? <p>What is left of it lies on the shelf as “{remake.onShelf}”.</p> : remake.leftAs === "unknown" ? (
        <p>The record does not say what it came from: if something is left of it, put it on hand on Buy.</p>
      ) : (
        <button type="button" aria-expanded={isOpen} onClick={() => setIsOpen(!isOpen)}>something is left of it</button>
      )}
      {isOpen && remake.onShelf === null ? (
        <div class="opened">
          <p>{remake.leftAs === "length" ? "Measure the good straight that is left; it goes on the shelf and counts for the remake." : "Measure the good arc that is left, without legs; it goes on the shelf and counts for the remake."}</p>
          {remake.leftAs === "length" ? <Keypad unit={unit} label={label} done={shelve} /> : <AngleKeypad label={label} ways={[]} most={180} done={shelve} />}
        </div>
      ) : null}
    </div>
  );
}

/** What is cut already, once the cards hold only what is still to be cut. */
export function Made({ made, parts }: { made: MadeView[]; parts: string[][] }) {
  const { act } = useShop();
  if (made.length === 0) {
    return null;
  }
  return (
    <section class="card">
      <h2>Cut already</h2>
      <ul class="rows">
        {made.flatMap((item) => item.parts.map((marks) => (
          <li class="got" key={`${item.item} ${item.number} ${marks.join()}`}>
            <strong class="grow mark">{marks.join(" + ")}</strong>
            <span class="value">{item.item}{item.number > 1 ? ` no. ${item.number}` : ""}</span>
            <button type="button" class="quiet" aria-label={`${marks.join(" + ")} spoiled`} onClick={() => spoil(act, ownMarks(marks, parts)[0] ?? "")}>spoiled</button>
          </li>
        )))}
      </ul>
    </section>
  );
}

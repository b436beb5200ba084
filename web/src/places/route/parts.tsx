// The parts of the runs, and what of the stock could take their place.

import { useState } from "preact/hooks";
import type { PartChoice, PartView } from "../../api";
import { useAsked, useShop } from "../../shop";
import { length } from "../../units";
import type { Unit } from "../../units";

export function Parts() {
  const { view } = useShop();
  const parts = useAsked<PartView[]>("api/parts", view.version);
  const [opened, setOpened] = useState<string | null>(null);
  if (parts.value === null || parts.value.length === 0) {
    return null;
  }
  return (
    <section class={`card ${parts.isFresh ? "" : "stale"}`}>
      <h2>Parts</h2>
      <ul class="rows parts">
        {parts.value.map((part) => <Part key={part.component} part={part} isOpen={opened === part.component} open={setOpened} />)}
      </ul>
    </section>
  );
}

function Part({ part, isOpen, open }: { part: PartView; isOpen: boolean; open: (name: string | null) => void }) {
  const { act } = useShop();
  const now = part.choices.find((choice) => choice.isNow);
  const others = part.choices.length - 1;
  const longest = Math.max(...part.choices.map((choice) => choice.length));
  const take = async (item: string) => {
    if (await act({ do: "set", list: "component", name: part.component, key: "item", value: item })) {
      open(null);
    }
  };
  return (
    <li>
      <span class="grow"><strong>{part.component}</strong> <small>{part.kind}{part.runs.length === 0 ? ", in no run" : ` of ${part.runs.join(" and ")}`}</small><br />{now?.item}</span>
      {others < 1 ? <small>no other {part.kind} in the stock file</small> : (
        <button type="button" aria-expanded={isOpen} onClick={() => open(isOpen ? null : part.component)}>{isOpen ? "close" : `another (${others})`}</button>
      )}
      {isOpen ? (
        <div class="opened" role="group" aria-label={`what ${part.component} may be`}>
          {part.isChosen ? <p class="caution">A way is chosen and stands: another part is another way, which is found anew and then taken up.</p> : null}
          {part.choices.map((choice) => <Choice key={choice.item} choice={choice} longest={longest} take={take} />)}
        </div>
      ) : null}
    </li>
  );
}

function Choice({ choice, longest, take }: { choice: PartChoice; longest: number; take: (item: string) => Promise<void> }) {
  const { unit } = useShop();
  return (
    <section class={`choice ${choice.isNow ? "now" : ""}`} aria-label={choice.item}>
      <Picture choice={choice} longest={longest} />
      <div class="grow">
        <strong>{choice.item}</strong>
        <br /><small>{sizes(choice, unit)}</small>
        <br /><small>{choice.mass === null ? "mass not known" : `${choice.mass.toFixed(1)} kg`}; {money(choice)}</small>
        {choice.unfit === null ? null : <p class="bad">It does not fit: {choice.unfit}.</p>}
      </div>
      {choice.isNow ? <strong>it is this</strong> : <button type="button" class={choice.unfit === null ? "main" : ""} disabled={choice.unfit !== null} onClick={() => take(choice.item)} aria-label={`take ${choice.item}`}>take it</button>}
    </section>
  );
}

function money(choice: PartChoice): string {
  const has = choice.onHand > 0 ? `${choice.onHand} on hand` : null;
  const price = choice.price === null ? (has === null ? "nobody offers it" : null) : choice.price;
  return [has, price].filter((one) => one !== null).join("; ");
}

function sizes(choice: PartChoice, unit: Unit): string {
  const body = choice.body === null ? "no thicker than its tube" : choice.section === "round" ? `Ø ${length(choice.body[0], unit)}` : `${choice.section} ${length(choice.body[0], unit)} × ${length(choice.body[1], unit)}`;
  return `${length(choice.length, unit)} long, ${body}${choice.tube === null ? "" : `, for tube ${size(choice.tube, unit)}`}`;
}

/** A size that is named and not taped: as many digits as it has. */
function size(mm: number, unit: Unit): string {
  return unit === "mm" ? `${Number(mm.toFixed(1))} mm` : length(mm, unit);
}

/** From the side and from its end, all of one list to one scale. */
function Picture({ choice, longest }: { choice: PartChoice; longest: number }) {
  const [wide, high] = choice.body ?? [choice.tube ?? 50, choice.tube ?? 50];
  const tube = choice.tube ?? 0.6 * high;
  const [neckIn, neckOut] = choice.body === null ? [0, 0] : choice.necks;
  const room = Math.max(wide, high, 160);
  const middle = room / 2;
  const end = longest + 60 + wide / 2;
  const from = `${length(choice.length, "mm")} long`;
  return (
    <svg class="part" viewBox={`-4 -4 ${longest + 68 + Math.max(wide, 160)} ${room + 8}`} role="img" aria-label={`${choice.item} from the side and from its end: ${from}`}>
      <rect class="neck" x={0} y={middle - tube / 2} width={choice.length} height={tube} />
      <rect class="can" x={neckIn} y={middle - high / 2} width={Math.max(choice.length - neckIn - neckOut, 1)} height={high} rx={choice.section === "box" ? 2 : 10} />
      <rect class="can" x={end - wide / 2} y={middle - high / 2} width={wide} height={high} rx={choice.section === "box" ? 4 : Math.min(wide, high) / 2} />
      <circle class="hole" cx={end} cy={middle} r={tube / 2} />
    </svg>
  );
}

// Buy or make: what a bought part costs with its drive and wait, against the shop's own hours.

import { useState } from "preact/hooks";
import type { MakeAsked, MakeView } from "../../api";
import { answer } from "../../talk";

const FIELDS: readonly (readonly [keyof MakeAsked, string])[] = [
  ["price", "Price with tax and delivery"],
  ["drive", "Minutes on the road for it, there and back"],
  ["wait", "Minutes of waiting that stop the job"],
  ["make", "Minutes to make it, set-up counted"],
  ["material", "Material for making it"],
];

/** A number with a point or a comma; throws a sentence for anything else. */
function number(text: string, what: string): number {
  if (!/^\d+([.,]\d+)?$/.test(text.trim())) {
    throw new Error(`${what}: type a number, 0 when there is none.`);
  }
  return Number(text.trim().replace(",", "."));
}

export function BuyOrMake() {
  const [typed, setTyped] = useState<Record<string, string>>({});
  const [found, setFound] = useState<MakeView | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const compare = async () => {
    try {
      const asked = Object.fromEntries(FIELDS.map(([key, label]) => [key, number(typed[key] ?? "", label)])) as unknown as MakeAsked;
      setFound(await answer<MakeView>("api/buy-or-make", asked));
      setTrouble(null);
    } catch (error) {
      setFound(null);
      setTrouble(error instanceof Error ? error.message : String(error));
    }
  };
  return (
    <details class="card noprint">
      <summary><h2>Buy or make</h2></summary>
      <p>Price, drive and wait against the hours of the shop, at the rate of stock.toml. Amounts are plain numbers in its currency.</p>
      <form onSubmit={(event) => { event.preventDefault(); void compare(); }}>
        {FIELDS.map(([key, label]) => (
          <label class="line" key={key}>
            {label}
            <input required inputMode="decimal" maxLength={12} value={typed[key] ?? ""} onInput={(event) => { setTyped({ ...typed, [key]: event.currentTarget.value }); setFound(null); }} />
          </label>
        ))}
        <button type="submit" class="main">Compare</button>
      </form>
      {trouble === null ? null : <p class="bad" role="alert">{trouble}</p>}
      {found === null ? null : <p role="status"><strong class="big">{found.cheaper === "make" ? "Make it" : "Buy it"}.</strong> {found.words}</p>}
    </details>
  );
}

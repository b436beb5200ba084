// Marks of the car seen in a scan, each with where it is in the file's own units.

import type { Value } from "../api";

/** Fewest marks: three fix a scan and check nothing, the fourth checks them. */
const LEAST = 4;

interface Row {
  mark: string;
  at: [string, string, string];
}

const EMPTY: Row = { mark: "", at: ["", "", ""] };

function rows(value: string): Row[] {
  const kept = value === "" ? [] : value.split("\n").map((line): Row => {
    const [mark = "", x = "", y = "", z = ""] = line.split("\t");
    return { mark, at: [x, y, z] };
  });
  return [...kept, ...Array.from({ length: Math.max(0, LEAST - kept.length) }, () => EMPTY)];
}

function text(all: Row[]): string {
  return all.map((row) => [row.mark, ...row.at].join("\t")).join("\n");
}

/** What is written: each mark with its three numbers. What is no number is left as it was typed, for the program to name. */
export function seenPlaces(value: string): Value {
  const number = (typed: string): Value => {
    const plain = typed.trim().replace(",", ".").replace("\u2212", "-");
    return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : typed.trim();
  };
  return rows(value).filter((row) => row.mark !== "").map((row) => ({ mark: row.mark, at: row.at.map(number) }));
}

export function Seen({ label, names, value, set }: { label: string; names: string[]; value: string; set: (value: string) => void }) {
  const all = rows(value);
  const put = (at: number, row: Row) => set(text(all.map((old, index) => (index === at ? row : old))));
  return (
    <fieldset class="stop">
      <legend>{label}</legend>
      <p>Read x, y and z of each off the scanning program, in the file's own units. Four at least, far apart and not in one plane.</p>
      {all.map((row, at) => (
        <div class="line" key={at}>
          <select aria-label={`mark ${at + 1} seen in the scan`} required={at < LEAST} value={row.mark} onChange={(event) => put(at, { ...row, mark: event.currentTarget.value })}>
            <option value="">choose…</option>
            {names.map((name) => <option key={name}>{name}</option>)}
          </select>
          {(["x", "y", "z"] as const).map((axis, number) => (
            <input
              class="figure" key={axis} required={row.mark !== ""} inputMode="text" maxLength={20} placeholder={axis} aria-label={`${axis} of mark ${at + 1}`}
              value={row.at[number] ?? ""}
              onInput={(event) => put(at, { ...row, at: row.at.map((old, index) => (index === number ? event.currentTarget.value : old)) as Row["at"] })}
            />
          ))}
        </div>
      ))}
      <button type="button" onClick={() => set(text([...all, EMPTY]))}>one more mark</button>
    </fieldset>
  );
}

// A keypad for what a tape says: whole, fraction, unit. Large enough for gloves.

import { useState } from "preact/hooks";
import type { Unit } from "./units";

interface Props {
  unit: Unit;
  start?: string;
  label: string;
  /** For a length with a sign: the words for plus and for minus. */
  ways?: Ways;
  done: (reads: string) => void;
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"];
const FRACTIONS = [
  "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2",
  "9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16",
];

export function Keypad({ unit, start, label, ways = [], done }: Props) {
  const [isMinus, setIsMinus] = useState(false);
  const [inUnit, setInUnit] = useState<Unit>(unit);
  const [feet, setFeet] = useState("");
  const [whole, setWhole] = useState("");
  const [part, setPart] = useState("");
  const unsigned = written(inUnit, feet, whole, part);
  const text = isMinus && !isNothing(unsigned) ? `-${unsigned}` : unsigned;
  const press = (digit: string) => setWhole((whole + digit).slice(0, 5));
  return (
    <div class="keypad" role="group" aria-label={label}>
      <output class="reads" aria-live="polite">
        {text || (start ? `was ${start}` : "—")}
      </output>
      <div class="keys">
        {DIGITS.map((digit) => (
          <button type="button" key={digit} onClick={() => press(digit)}>{digit}</button>
        ))}
        <button type="button" onClick={() => setWhole(whole.slice(0, -1))} aria-label="take a digit back">⌫</button>
        <button type="button" onClick={() => { setWhole(""); setFeet(""); setPart(""); }}>clear</button>
      </div>
      {inUnit === "in" ? (
        <>
          <button type="button" class="wide" onClick={() => { setFeet(whole); setWhole(""); }} disabled={whole === ""}>
            ft
          </button>
          <div class="fractions">
            {FRACTIONS.map((value) => (
              <button type="button" key={value} aria-pressed={part === value} onClick={() => setPart(part === value ? "" : value)}>
                {value}
              </button>
            ))}
          </div>
        </>
      ) : (
        <button type="button" class="wide" aria-pressed={part === ".5"} onClick={() => setPart(part === ".5" ? "" : ".5")}>
          + half a millimetre
        </button>
      )}
      <WayTabs ways={ways} isMinus={isMinus} set={setIsMinus} />
      <div class="keypad-foot">
        <div class="tabs" role="group" aria-label="unit of this reading">
          {(["mm", "in"] as const).map((value) => (
            <button type="button" key={value} aria-pressed={inUnit === value} onClick={() => { setInUnit(value); setPart(""); setFeet(""); }}>
              {value}
            </button>
          ))}
        </div>
        <button type="button" class="main" disabled={text === ""} onClick={() => done(text)}>
          Write it down
        </button>
      </div>
    </div>
  );
}

/** Which way a reading with a sign goes: the words for it, and whether it is written with a minus. */
export type Ways = readonly (readonly [string, boolean])[];

export const SLOPES: Ways = [["up", false], ["down", true]];
export const TURNS: Ways = [["clockwise", false], ["against the clock", true]];
export const AHEAD: Ways = [["ahead", false], ["behind", true]];
export const HIGHER: Ways = [["higher", false], ["lower", true]];

function WayTabs({ ways, isMinus, set }: { ways: Ways; isMinus: boolean; set: (isMinus: boolean) => void }) {
  return ways.length === 0 ? null : (
    <div class="tabs ways-of-reading" role="group" aria-label="which way it goes">
      {ways.map(([words, minus]) => (
        <button type="button" key={words} aria-pressed={isMinus === minus} onClick={() => set(minus)}>{words}</button>
      ))}
    </div>
  );
}

interface AngleProps {
  label: string;
  /** What was written before. */
  start?: string;
  /** None for an angle that has no sign. */
  ways: Ways;
  /** Largest, degrees. */
  most: number;
  done: (reads: string) => void;
}

/** The same for degrees, to the half or the tenth: as an angle finder reads, or round a circle. */
export function AngleKeypad({ label, start, ways, most, done }: AngleProps) {
  const [isMinus, setIsMinus] = useState(false);
  const [digits, setDigits] = useState("");
  const press = (digit: string) => setDigits((digits + digit).slice(0, 5));
  const value = Number.parseFloat(digits);
  const isSound = Number.isFinite(value) && value <= most;
  const text = isSound ? `${isMinus && value > 0 ? "-" : ""}${value} deg` : "";
  return (
    <div class="keypad" role="group" aria-label={label}>
      <output class="reads" aria-live="polite">{text || digits || (start ? `was ${start}` : "—")}</output>
      {digits !== "" && !isSound ? <p class="bad" role="status">It is {most}° at most.</p> : null}
      <div class="keys">
        {DIGITS.map((digit) => (
          <button type="button" key={digit} onClick={() => press(digit)}>{digit}</button>
        ))}
        <button type="button" disabled={digits === "" || digits.includes(".")} onClick={() => press(".")} aria-label="point">.</button>
        <button type="button" onClick={() => setDigits(digits.slice(0, -1))} aria-label="take a digit back">⌫</button>
      </div>
      <WayTabs ways={ways} isMinus={isMinus} set={setIsMinus} />
      <div class="keypad-foot">
        <button type="button" class="main" disabled={!isSound} onClick={() => done(text)}>Write it down</button>
      </div>
    </div>
  );
}

/** Nought has no sign. */
function isNothing(text: string): boolean {
  return !/[1-9]/.test(text);
}

function written(unit: Unit, feet: string, whole: string, part: string): string {
  if (feet === "" && whole === "" && part === "") {
    return "";
  }
  if (unit === "mm") {
    return `${whole || "0"}${part} mm`;
  }
  const inches = part === "" ? whole || "0" : whole === "" ? part : `${whole}-${part}`;
  return feet === "" ? `${inches} in` : `${feet} ft ${inches} in`;
}

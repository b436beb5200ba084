// A keypad for what a tape says: whole, fraction, unit. Large enough for gloves.

import { useState } from "preact/hooks";
import type { Unit } from "./units";

interface Props {
  unit: Unit;
  start?: string;
  label: string;
  done: (reads: string) => void;
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3", "0"];
const FRACTIONS = [
  "1/16", "1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2",
  "9/16", "5/8", "11/16", "3/4", "13/16", "7/8", "15/16",
];

export function Keypad({ unit, start, label, done }: Props) {
  const [inUnit, setInUnit] = useState<Unit>(unit);
  const [feet, setFeet] = useState("");
  const [whole, setWhole] = useState("");
  const [part, setPart] = useState("");
  const text = written(inUnit, feet, whole, part);
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

/** The same for what an angle finder reads: degrees up or down from level, to the half or the tenth. */
export function AngleKeypad({ label, done }: { label: string; done: (reads: string) => void }) {
  const [isDown, setIsDown] = useState(false);
  const [digits, setDigits] = useState("");
  const press = (digit: string) => setDigits((digits + digit).slice(0, 5));
  const value = Number.parseFloat(digits);
  const isSound = Number.isFinite(value) && value <= 90;
  const text = isSound ? `${isDown && value > 0 ? "-" : ""}${value} deg` : "";
  return (
    <div class="keypad" role="group" aria-label={label}>
      <output class="reads" aria-live="polite">{text || digits || "—"}</output>
      <div class="keys">
        {DIGITS.map((digit) => (
          <button type="button" key={digit} onClick={() => press(digit)}>{digit}</button>
        ))}
        <button type="button" disabled={digits === "" || digits.includes(".")} onClick={() => press(".")} aria-label="point">.</button>
        <button type="button" onClick={() => setDigits(digits.slice(0, -1))} aria-label="take a digit back">⌫</button>
      </div>
      <div class="keypad-foot">
        <div class="tabs" role="group" aria-label="which way it slopes">
          {([["up", false], ["down", true]] as const).map(([words, down]) => (
            <button type="button" key={words} aria-pressed={isDown === down} onClick={() => setIsDown(down)}>{words}</button>
          ))}
        </div>
        <button type="button" class="main" disabled={!isSound} onClick={() => done(text)}>Write it down</button>
      </div>
    </div>
  );
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

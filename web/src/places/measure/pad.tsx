// The keypad that a reading is corrected with: a length, one with a sign, or an angle.

import type { ReadingView } from "../../api";
import { AHEAD, AngleKeypad, HIGHER, Keypad, SLOPES, TURNS } from "../../keypad";
import { useShop } from "../../shop";

export function Pad({ reading, label, done }: { reading: ReadingView; label: string; done: (reads: string) => void }) {
  const { unit } = useShop();
  const start = reading.reads === null ? {} : { start: reading.reads };
  switch (reading.pad) {
    case "length":
      return <Keypad unit={unit} {...start} label={label} done={done} />;
    case "ahead":
      return <Keypad unit={unit} {...start} label={label} ways={AHEAD} done={done} />;
    case "higher":
      return <Keypad unit={unit} {...start} label={label} ways={HIGHER} done={done} />;
    case "slope":
      return <AngleKeypad {...start} label={label} ways={SLOPES} most={90} done={done} />;
    case "turn":
      return <AngleKeypad {...start} label={label} ways={TURNS} most={180} done={done} />;
    case "none":
      return null;
  }
}

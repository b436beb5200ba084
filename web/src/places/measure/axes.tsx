// The car's axes: two pairs of marks and one way that it stands.

import { useState } from "preact/hooks";
import { useShop } from "../../shop";

export function Axes() {
  const { view, act } = useShop();
  const marks = view.measure.places.filter((place) => place.kind !== "end").map((place) => place.name);
  const setups = view.measure.setups.map((setup) => setup.name);
  const [chosen, setChosen] = useState([marks[0], marks[1], marks[2], marks[3]].map((name) => name ?? ""));
  const [level, setLevel] = useState(setups[0] ?? "");
  const choose = (at: number, name: string) => setChosen(chosen.map((old, index) => (index === at ? name : old)));
  const labels = ["Front pair, left", "Front pair, right", "Rear pair, left", "Rear pair, right"];
  const enough = marks.length >= 4 && setups.length > 0;
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        const [a = "", b = "", c = "", d = ""] = chosen;
        void act({ do: "chooseFrame", origin: a, centreLine: [[a, b], [c, d]], level });
      }}
    >
      <p>Two pairs of marks that mirror each other, front to rear, and one way that the car stands. No distance changes with this choice.</p>
      {enough ? null : <p class="bad">Four marks and one way that the car stands come first.</p>}
      {labels.map((label, at) => (
        <label class="line" key={label}>
          {label}
          <select value={chosen[at]} onChange={(event) => choose(at, event.currentTarget.value)}>
            {marks.map((name) => <option key={name}>{name}</option>)}
          </select>
        </label>
      ))}
      <label class="line">
        Plumb as it stands
        <select value={level} onChange={(event) => setLevel(event.currentTarget.value)}>
          {setups.map((name) => <option key={name}>{name}</option>)}
        </select>
      </label>
      <button type="submit" class="main" disabled={!enough}>Choose these</button>
    </form>
  );
}

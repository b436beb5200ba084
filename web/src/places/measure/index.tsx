// Measure: marks, readings, what they give, what is doubtful, what to take next.

import { useState } from "preact/hooks";
import type { TakeView } from "../../api";
import { CAR_FORMS } from "../../forms/car";
import { FormTabs } from "../../forms/tabs";
import { Samples } from "../../samples";
import { useShop } from "../../shop";
import { Sketch } from "../../sketch";
import { length } from "../../units";
import { Axes } from "./axes";
import { Places } from "./places";
import { DoubtfulReadings, Readings } from "./readings";
import { ScanUpload } from "./scan";
import { Steps } from "./steps";
import { TakeReading } from "./take";

export function Measure() {
  const { view } = useShop();
  const [take, setTake] = useState<TakeView | null>(null);
  const isNew = view.measure.places.length === 0;
  return (
    <div class="columns">
      <section>
        <Steps />
        {isNew ? null : <TakeReading key={take === null ? "" : JSON.stringify(take)} wanted={take} done={() => setTake(null)} />}
        <DoubtfulReadings />
        <Next take={(wanted) => { setTake(wanted); document.getElementById("take")?.scrollIntoView({ block: "start" }); }} />
        {isNew ? null : <Readings />}
      </section>
      <section>
        <FormTabs title="Add to the car" forms={CAR_FORMS} first={isNew ? "mark" : "place on something"} more={{ title: "axes", content: <Axes key={view.revision} /> }} />
        {isNew ? null : <ScanUpload />}
        {isNew ? <Samples /> : null}
        <Sketch />
        <Places />
      </section>
    </div>
  );
}

function Next({ take }: { take: (wanted: TakeView) => void }) {
  const { view, unit } = useShop();
  const { next, lacks } = view.measure;
  if (next.length + lacks.length === 0) {
    return null;
  }
  return (
    <section class="card">
      {next.length === 0 ? null : <h2>Measure this next</h2>}
      <ul class="rows">
        {next.map((one) => (
          <li key={one.what + one.why}>
            <span class="grow">
              <strong>{one.what}</strong>{one.shows === null ? null : <span> (about {length(one.shows, unit)})</span>}
              <br /><small>{one.why}</small>
            </span>
            {one.take === null ? null : <button type="button" onClick={() => { if (one.take !== null) { take(one.take); } }}>take it</button>}
          </li>
        ))}
      </ul>
      {lacks.length === 0 ? null : (
        <>
          <h2>Not found yet</h2>
          <ul class="plain">{lacks.map((words) => <li key={words}>{words}</li>)}</ul>
        </>
      )}
    </section>
  );
}

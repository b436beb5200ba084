// The demonstrations: to open and play with, and the way back.

import type { SampleView } from "./api";
import { useAsked, useShop } from "./shop";

/** Where the person's own build is served, seen from a demonstration. */
const OWN = "/";

function demonstration(): string | null {
  return /^\/demo\/([^/]+)\//.exec(location.pathname)?.[1] ?? null;
}

/** Says that this is a demonstration, where it is one. */
export function Demonstration() {
  const { ask } = useShop();
  if (demonstration() === null) {
    return null;
  }
  return (
    <div class="card sample" role="note">
      <p>A demonstration to play with: car, readings, suppliers and prices are invented. Nothing here touches your own build, and it is gone when the program ends.</p>
      <div class="buttons">
        <button type="button" onClick={() => ask("api/start-again")}>Start again from the original</button>
        <a class="button" href={OWN}>Back to your build</a>
      </div>
    </div>
  );
}

/** Links to the demonstrations. */
export function Samples() {
  const samples = useAsked<SampleView[]>("/api/samples", "1").value ?? [];
  if (samples.length === 0 || demonstration() !== null) {
    return null;
  }
  return (
    <div class="card">
      <h2>Look at a finished one first</h2>
      <p>Three invented cars to open and play with. Each is a copy; nothing there touches your build.</p>
      <ul class="plain links">
        {samples.map((sample) => <li key={sample.name}><a href={`/demo/${sample.name}/`}>{sample.title}</a></li>)}
      </ul>
    </div>
  );
}

// Sides of bodies that no run may pass.

import { useState } from "preact/hooks";
import { useShop } from "../../shop";

const SIDES: readonly [string, string][] = [["front", "in front"], ["rear", "behind"], ["left", "left"], ["right", "right"], ["above", "above"], ["below", "below"]];

export function Sides() {
  const { view, act } = useShop();
  const { sides } = view.route;
  const [picked, setPicked] = useState("");
  const body = sides.find((one) => one.body === picked);
  if (sides.length === 0) {
    return null;
  }
  const closed = sides.filter((one) => one.closed.length > 0);
  return (
    <details class="card" open={picked !== ""}>
      <summary>Keep off a side of a body ({closed.length === 0 ? "none" : closed.map((one) => one.body).join(", ")})</summary>
      <div class="line">
        <select aria-label="body to keep off" value={picked} onChange={(event) => setPicked(event.currentTarget.value)}>
          <option value="">which body?</option>
          {sides.map((one) => <option key={one.body} value={one.body}>{one.body}{one.closed.length > 0 ? ` (${one.closed.map(words).join(", ")} closed)` : ""}</option>)}
        </select>
      </div>
      {body === undefined ? null : (
        <>
          <div class="buttons" role="group" aria-label={`no run may pass ${body.body}`}>
            {SIDES.map(([side, said]) => {
              const isClosed = body.closed.includes(side);
              return <button type="button" key={side} aria-pressed={isClosed} onClick={() => act({ do: "closeSide", body: body.body, side, isClosed: !isClosed })}>not {said}</button>;
            })}
          </div>
          <p><small>{body.isByItself ? "What lies above a floor is the cabin or the load: that side is closed unless you open it. " : ""}Ways that are found from now on keep off what is pressed.</small></p>
        </>
      )}
    </details>
  );
}

function words(side: string): string {
  return SIDES.find(([name]) => name === side)?.[1] ?? side;
}

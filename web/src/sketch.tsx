// What is measured, from above and from the side: places, and the lines that join them.

import { useState } from "preact/hooks";
import type { PlaceKind } from "./api";
import { useShop } from "./shop";

interface Dot {
  name: string;
  kind: PlaceKind;
  x: number;
  across: number;
}

const SIDES = [["above", "from above"], ["side", "from the left side"]] as const;

export function Sketch() {
  const { view } = useShop();
  const [side, setSide] = useState<"above" | "side">("above");
  const dots = view.measure.places.flatMap((place): Dot[] =>
    place.at === null ? [] : [{ name: place.name, kind: place.kind, x: place.at[0], across: side === "above" ? -place.at[1] : -place.at[2] }],
  );
  if (dots.length < 2) {
    return null;
  }
  return (
    <section class="card">
      <h2>What is measured</h2>
      <div class="tabs" role="group" aria-label="side that the sketch is seen from">
        {SIDES.map(([value, words]) => <button type="button" key={value} aria-pressed={side === value} onClick={() => setSide(value)}>{words}</button>)}
      </div>
      <Flat title={side === "above" ? "from above" : "from the left side"} dots={dots} />
    </section>
  );
}

function Flat({ title, dots }: { title: string; dots: Dot[] }) {
  const { view } = useShop();
  const xs = dots.map((dot) => dot.x);
  const ys = dots.map((dot) => dot.across);
  const span = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys), 1);
  const margin = span * 0.07;
  const left = Math.min(...xs) - margin;
  const top = Math.min(...ys) - margin;
  const width = Math.max(...xs) - left + margin * 2.4;
  const height = Math.max(...ys) - top + margin;
  const byName = new Map(dots.map((dot) => [dot.name, dot]));
  const size = span / 42;
  const taken: { x: number; y: number }[] = [];
  /** A label goes where no other stands yet; one that finds no room is left to the tooltip. */
  const label = (dot: Dot) => {
    for (const [dx, dy] of [[0.6, -0.5], [0.6, 1.2], [-2.6, -0.5], [-2.6, 1.2]] as const) {
      const at = { x: dot.x + dx * size, y: dot.across + dy * size };
      if (taken.every((other) => Math.abs(other.x - at.x) > 5 * size || Math.abs(other.y - at.y) > size)) {
        taken.push(at);
        return at;
      }
    }
    return null;
  };
  return (
    <figure>
      <svg viewBox={`${left} ${top} ${width} ${height}`} role="img" aria-label={`the places that are measured, seen ${title}`}>
        {view.measure.lines.map((line, at) => {
          const [a, b] = [byName.get(line.from), byName.get(line.to)];
          return a && b ? <line key={at} class={line.isDoubtful ? "doubt" : "taped"} x1={a.x} y1={a.across} x2={b.x} y2={b.across} stroke-width={size / (line.isDoubtful ? 3 : 9)} /> : null;
        })}
        {dots.map((dot) => {
          const at = dot.kind === "point" ? null : label(dot);
          return (
            <g key={dot.name}>
              <circle class={dot.kind} cx={dot.x} cy={dot.across} r={size / (dot.kind === "point" ? 3.4 : 2.2)}><title>{dot.name}</title></circle>
              {at === null ? null : <text x={at.x} y={at.y} font-size={size * 1.15}>{dot.name}</text>}
            </g>
          );
        })}
      </svg>
      <figcaption>{title}; front on the left. Heavy lines: doubtful readings.</figcaption>
    </figure>
  );
}

// Route: the ways that were found, side by side, on the shop drawing and in the round; moved by hand.

import type { RunView, WayFigures, WayView } from "../../api";
import { HandCard, HandFoot, HandLayer, Pins, useHand } from "./hand";
import type { Hand } from "./hand";
import { Parts } from "./parts";
import { Sides } from "./sides";
import { Round } from "../../round";
import { today, useAsked, useShop } from "../../shop";
import type { Plan, FindingView } from "../../api";
import { degrees, length, long, prose, signedDegrees, small } from "../../units";
import type { Unit } from "../../units";

export function Route() {
  const { view, flyTo, unit } = useShop();
  const { route } = view;
  const hand = useHand();
  return (
    <>
      <Solve />
      {route.stale === null ? null : <p class="card warn">These ways are {route.stale}. Find them again.</p>}
      {route.chosen === null ? null : <p class="card good">Chosen: <strong>{route.chosen}</strong>. It is what is bought, cut, fitted and proved.</p>}
      {route.words === null ? null : <p class="card">{prose(route.words, unit)}</p>}
      {route.leftOut.map((words) => <p class="card warn" key={words}>Not routed: {prose(words, unit)}</p>)}
      <Ways />
      <div class="columns wide-left">
        <section class="card">
          <h2>Shop drawing</h2>
          <HandCard hand={hand} />
          <Drawing view="side" words="from the left side" hand={hand} />
          <Drawing view="above" words="from above" hand={hand} />
          <Drawing view="behind" words="from behind" hand={hand} />
          <Pins />
          <HandFoot hand={hand} />
        </section>
        <section>
          <div class="card">
            <h2>In the round</h2>
            <Round version={view.version} flyTo={flyTo} />
          </div>
          <Tightest />
          <Parts />
          <Sides />
          <InTheWay />
        </section>
      </div>
      {route.runs.map((run) => <Pieces key={run.name} run={run} />)}
    </>
  );
}

function Drawing({ view: name, words, hand }: { view: string; words: string; hand: Hand }) {
  const { view } = useShop();
  if (view.measure.places.every((place) => place.at === null)) {
    return null;
  }
  return (
    <figure class="drawing">
      <div class="over">
        <img src={`api/drawing?view=${name}&of=${view.version}`} alt={`the car and its runs ${words}`} />
        <HandLayer view={name} words={words} hand={hand} />
      </div>
      <figcaption>{words}</figcaption>
    </figure>
  );
}

function Solve() {
  const { view, solving, ask } = useShop();
  const { ways } = view.route;
  if (solving !== null) {
    return (
      <div class="card solving" role="status">
        <progress value={solving.done} max={solving.of} aria-label="work done" />
        <span>{solving.best === null ? "looking for a way…" : `best so far ${solving.best.toFixed(0)}`}</span>
        <button type="button" onClick={() => ask("api/solve", "DELETE")}>Stop</button>
      </div>
    );
  }
  const needs = [
    ...((view.names["run"] ?? []).length > 0 ? [] : ["a run from end to end (Measure, Add to the car)"]),
    ...((view.names["tube"] ?? []).length > 0 ? [] : ["a tube size (Buy, Your stock)"]),
  ];
  if (needs.length > 0) {
    return <p class="card">Before there is a way it takes {needs.join(" and ")}.</p>;
  }
  return (
    <div class="buttons">
      <button type="button" class={ways.length === 0 || view.route.stale !== null ? "main" : ""} onClick={() => ask("api/solve")}>
        {ways.length === 0 ? "Find ways" : "Find them again"}
      </button>
    </div>
  );
}

function Ways() {
  const { view } = useShop();
  const { ways, shown } = view.route;
  const figures = useAsked<WayFigures[]>("api/ways", view.version);
  if (ways.length === 0) {
    return null;
  }
  return (
    <div class="ways" role="group" aria-label="ways" tabIndex={0}>
      {ways.map((way, at) => <Way key={`${at} ${way.name}`} way={way} at={at} isShown={at === shown} figures={(figures.isFresh ? figures.value?.[at] : undefined) ?? null} />)}
    </div>
  );
}

function Way({ way, at, isShown, figures }: { way: WayView; at: number; isShown: boolean; figures: WayFigures | null }) {
  const { view, unit, ask, act } = useShop();
  const { chosen } = view.route;
  const isSame = figures?.offer !== null && figures?.offer !== undefined && figures.offer.length === 0;
  return (
    <section class={`card way ${isShown ? "shown" : ""}`}>
      <img src={`api/drawing?way=${at}&of=${view.version}`} alt={`way ${at + 1} from above`} />
      <h2>{at + 1}. {way.name}</h2>
      <dl>
        <div><dt>cost as cut</dt><dd>{figures === null ? "…" : figures.costAsCut?.toFixed(0) ?? "not known"}<small> all counted</small></dd></div>
        <div><dt>as searched</dt><dd>{way.cost.toFixed(0)}<small> (no way below {way.lowerBound.toFixed(0)})</small></dd></div>
        <div><dt>to buy</dt><dd>{figures === null ? "…" : figures.price ?? "not known"}</dd></div>
        <div><dt>welds</dt><dd>{figures === null ? "…" : `${figures.welds ?? "not known"}${figures.hours === null ? "" : `, ${figures.hours.toFixed(1)} h`}`}</dd></div>
        <div><dt>tube</dt><dd>{long(way.length, unit)}, {way.bendCount} bends, {way.bends.toFixed(0)}°</dd></div>
        <div><dt>mass</dt><dd>{figures === null ? "…" : `${figures.mass.toFixed(1)} kg`}{figures !== null && figures.withoutMass.length > 0 ? <small> without {figures.withoutMass.join(", ")}</small> : null}</dd></div>
        <div><dt>tightest</dt><dd>{figures === null ? "…" : figures.tightest === null ? "not checked" : <>{small(figures.tightest.gap, unit)}<small> ± {figures.tightest.plusMinus === null ? "not known" : small(figures.tightest.plusMinus, unit)}, {figures.tightest.subject}</small></>}</dd></div>
        <div><dt>ground</dt><dd>{figures === null ? "…" : figures.ground === null ? "not checked" : <>{small(figures.ground.gap, unit)}<small> ± {figures.ground.plusMinus === null ? "not known" : small(figures.ground.plusMinus, unit)}</small></>}</dd></div>
      </dl>
      {figures !== null && figures.missing > 0 ? <p class="bad">{figures.missing} pieces that nothing on hand or on offer makes</p> : null}
      {figures?.offer?.map((words) => <p key={words}><small>{words}</small></p>)}
      <div class="buttons">
        <button type="button" aria-pressed={isShown} onClick={() => ask("api/show", "POST", { way: at })}>{isShown ? "shown" : "show it"}</button>
        {chosen === null ? (
          <button type="button" class={isShown ? "main" : ""} onClick={() => act({ do: "choose", on: today(), way: at, name: way.name })}>choose it</button>
        ) : isSame ? <strong>the chosen one</strong> : (
          <button type="button" onClick={() => act({ do: "acceptWay", on: today(), way: at, name: way.name })}>take the change up</button>
        )}
      </div>
    </section>
  );
}

/** How many tight places are listed. */
const TIGHT = 8;

function Tightest() {
  const { view, fly, unit } = useShop();
  const plan = useAsked<Plan>("api/plan", view.version);
  const tight = (plan.value?.prove.findings ?? [])
    .filter((finding) => finding.at !== null && finding.value !== null && finding.limit !== null && finding.isLeast && finding.unit === "mm")
    .sort((a, b) => room(a) - room(b))
    .slice(0, TIGHT);
  if (tight.length === 0) {
    return null;
  }
  return (
    <section class={`card ${plan.isFresh ? "" : "stale"}`}>
      <h2>Tightest places</h2>
      <ul class="rows">
        {tight.map((finding) => (
          <li key={finding.title + finding.subject} class={finding.state}>
            <span class="grow"><strong>{finding.subject}</strong><br /><small>{stateWords(finding)}; at least {length(finding.limit ?? 0, unit)}</small></span>
            <span class="value">{withPlusMinus(finding, unit)}</span>
            <button type="button" onClick={() => { if (finding.at !== null) { fly(finding.at); } }} aria-label={`show ${finding.subject} in the round`}>show</button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function room(finding: FindingView): number {
  return (finding.value ?? 0) - (finding.plusMinus ?? 0) - (finding.limit ?? 0);
}

function stateWords(finding: FindingView): string {
  return { fail: "fails", notChecked: "not checked", pass: "passes", doesNotApply: "does not apply" }[finding.state];
}

function withPlusMinus(finding: FindingView, unit: Unit): string {
  const value = small(finding.value ?? 0, unit);
  return finding.plusMinus === null ? value : `${value} ± ${small(finding.plusMinus, unit)}`;
}

function InTheWay() {
  const { view, unit } = useShop();
  if (view.bodies.length === 0) {
    return null;
  }
  return (
    <details class="card">
      <summary>What is in the way ({view.bodies.length})</summary>
      <div class="scroll" tabIndex={0} role="region" aria-label="what is in the way">
        <table>
          <thead><tr><th scope="col">body</th><th scope="col">gap</th><th scope="col">±</th><th scope="col" class="words">what it is</th></tr></thead>
          <tbody>
            {view.bodies.map((body) => (
              <tr key={body.name}>
                <th scope="row">{body.name}</th>
                <td>{length(body.gap, unit)}</td>
                <td>{body.plusMinus === null ? "not known" : small(body.plusMinus, unit)}</td>
                <td class="words">{body.class}{body.isMoving ? ", moves" : ""}{body.missing === null ? "" : <span class="bad"> not there: {body.missing}</span>}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

function Pieces({ run }: { run: RunView }) {
  const { unit } = useShop();
  return (
    <details class="card">
      <summary>Pieces of {run.name} ({run.pieces.length})</summary>
      <p>Tube {run.tube}. In the shop's steps it ends {small(run.endError, unit)} and {degrees(run.endErrorTurn)} from where it should.</p>
      {run.atEnds.map((words) => <p key={words}>{prose(words, unit)}</p>)}
      <div class="scroll" tabIndex={0} role="region" aria-label={`pieces of ${run.name}`}>
        <table>
          <thead>
            <tr><th scope="col">piece</th><th scope="col">joint before</th><th scope="col">length</th><th scope="col">angle</th><th scope="col">clock</th><th scope="col" class="words">what</th></tr>
          </thead>
          <tbody>
            {run.pieces.map((piece) => (
              <tr key={piece.mark}>
                <th scope="row">{piece.mark}</th>
                <td>{piece.joint}</td>
                <td>{piece.length === null ? "" : length(piece.length, unit)}</td>
                <td>{piece.angle === null ? "" : degrees(piece.angle)}</td>
                <td>{piece.clock === null ? "" : signedDegrees(piece.clock)}</td>
                <td class="words">{piece.what}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  );
}

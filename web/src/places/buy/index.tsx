// Buy: the list by supplier; at the counter each line is ticked got, out or another size.

import { useState } from "preact/hooks";
import type { BuyLine, Counter, Deed, Plan, SubstituteView } from "../../api";
import { STOCK_FORMS } from "../../forms/stock";
import { FormTabs } from "../../forms/tabs";
import { PacketButton } from "../../packet";
import { today, useAsked, useShop } from "../../shop";
import { prose } from "../../units";
import { Errands } from "./errands";
import { BuyOrMake } from "./make";
import { KeepList, SavedTicks } from "./ticks";
import { substituteWords } from "./words";

export function Buy() {
  const { view } = useShop();
  const plan = useAsked<Plan>("api/plan", view.version);
  const counter = useAsked<Counter>("api/counter", view.version);
  const buy = plan.value?.buy ?? null;
  const substitutes = counter.value?.substitutes ?? [];
  return (
    <>
      {buy === null ? (
        <p class="card">{plan.value?.buyProblem ?? (plan.value === null ? "Working out what to buy…" : "There is no way yet, so there is nothing to buy: see Route.")}</p>
      ) : (
        <div class={plan.isFresh ? "" : "stale"}>
          <div class="card total">
            <p><strong class="big">{buy.price}</strong> with tax and delivery{buy.plannedAnew === null ? "" : ", for what is still to be bought"}; {buy.welds} welds. {buy.proof}</p>
            <p>For {buy.whatFor}.{buy.isChosen ? "" : " Choose a way before you buy."}</p>
            <div class="buttons noprint">
              <KeepList buy={buy} counter={counter.value} isFresh={counter.isFresh && plan.isFresh} />
              <button type="button" onClick={() => window.print()}>Print</button>
              <PacketButton />
              <button type="button" onClick={() => navigator.clipboard.writeText(asText(buy.lines, "\t"))}>Copy</button>
              <a class="button" download="buy.csv" href={`data:text/csv;charset=utf-8,${encodeURIComponent(asText(buy.lines, ","))}`}>CSV</a>
            </div>
          </div>
          {buy.plannedAnew === null ? null : (
            <div class="card warn" role="status">
              <h2>Planned anew</h2>
              <ul class="plain">{buy.plannedAnew.map((words) => <li key={words}>{words}</li>)}</ul>
              <p>The cut cards are for this list now.</p>
            </div>
          )}
          {buy.missing.map((words) => <p class="card fail" key={words}>{words}</p>)}
          {[...new Set(buy.lines.map((line) => line.supplier))].map((supplier) => (
            <section class="card" key={supplier}>
              <h2>{supplier}</h2>
              <ul class="rows counter">
                {buy.lines.filter((line) => line.supplier === supplier).map((line) => <Line key={line.item} line={line} substitutes={substitutes} />)}
                {buy.deliveries.filter((delivery) => delivery.supplier === supplier).map((delivery) => (
                  <li key="delivery"><span class="grow">delivery</span><span class="value">{delivery.charge}</span></li>
                ))}
              </ul>
            </section>
          ))}
          {buy.onHand.length === 0 ? null : <section class="card"><h2>From the shelf</h2><p>{buy.onHand.join(", ")}</p></section>}
          {buy.surplus.length === 0 ? null : <p class="card">Bought, and not asked for: {buy.surplus.join(", ")}.</p>}
          <Pairs counter={counter.value} isWaiting={!counter.isFresh} />
          <SavedTicks />
          <TakeAlong />
        </div>
      )}
      <Wanted counter={counter.value} />
      <Errands suppliers={[...new Set((buy?.lines ?? []).map((line) => line.supplier))]} />
      <BuyOrMake />
      <Stock />
    </>
  );
}

/** How a line stands with what waits to be sent counted in: at the counter the program is far. */
function standing(line: BuyLine, waiting: Deed[]): { got: number; isOut: boolean; taken: string[] } {
  let got = line.got;
  let isOut = line.isOut;
  const taken: string[] = [];
  for (const deed of waiting) {
    if (deed.do !== "happened" || !("item" in deed.what) || deed.what.item !== line.item) {
      continue;
    }
    if (deed.what.kind === "got" && deed.what.supplier === line.supplier) {
      got += deed.what.count;
      isOut = false;
    } else if (deed.what.kind === "out" && deed.what.supplier === line.supplier) {
      isOut = true;
    } else if (deed.what.kind === "otherSize") {
      taken.push(`${deed.what.count} × ${deed.what.taken}`);
    }
  }
  return { got, isOut, taken };
}

function Line({ line, substitutes }: { line: BuyLine; substitutes: SubstituteView[] }) {
  const { act, waiting } = useShop();
  const [isOther, setIsOther] = useState(false);
  const { got, isOut, taken } = standing(line, waiting);
  const isGot = got >= line.quantity;
  const instead = substitutes.find((one) => one.out.length === 1 && one.out[0] === line.item);
  const happened = (what: Extract<Deed, { do: "happened" }>["what"]) => act({ do: "happened", on: today(), what });
  return (
    <li class={isGot ? "got" : isOut ? "out" : ""}>
      <span class="number">{line.quantity} ×</span>
      <span class="grow">{line.item}{line.each === "" ? null : <small> {line.each} each</small>}{got > 0 && !isGot ? <small> · {got} got</small> : null}{taken.length > 0 ? <small> · took {taken.join(", ")}</small> : null}</span>
      <span class="value">{line.together}</span>
      {isGot ? <strong class="tick">got</strong> : (
        <span class="buttons">
          <button type="button" class="main" onClick={() => happened({ kind: "got", item: line.item, supplier: line.supplier, count: line.quantity - got })}>got</button>
          {line.quantity - got > 1 ? <button type="button" onClick={() => happened({ kind: "got", item: line.item, supplier: line.supplier, count: 1 })}>got 1</button> : null}
          <button type="button" aria-pressed={isOut} onClick={() => happened({ kind: "out", item: line.item, supplier: line.supplier })}>out</button>
          <button type="button" aria-expanded={isOther} onClick={() => setIsOther(!isOther)}>other</button>
        </span>
      )}
      {isOther && !isGot ? <Other line={line} count={line.quantity - got} done={() => setIsOther(false)} /> : null}
      {isGot || instead === undefined ? null : (
        <p class={`instead ${isOut ? "now" : ""}`}>
          {isOut ? <strong>Take instead: </strong> : "If it is out: "}
          {substituteWords(instead)}
        </p>
      )}
    </li>
  );
}

function Other({ line, count, done }: { line: BuyLine; count: number; done: () => void }) {
  const { view, act } = useShop();
  const [taken, setTaken] = useState("");
  const items = (view.names["item"] ?? []).filter((item) => item !== line.item);
  return (
    <div class="opened">
      <label class="line">
        Taken in its place
        <select value={taken} onChange={(event) => setTaken(event.currentTarget.value)}>
          <option value="">choose…</option>
          {items.map((item) => <option key={item}>{item}</option>)}
        </select>
      </label>
      <button type="button" class="main" disabled={taken === ""} onClick={async () => { if (await act({ do: "happened", on: today(), what: { kind: "otherSize", item: line.item, taken, count } })) { done(); } }}>took {count}</button>
    </div>
  );
}

function Pairs({ counter, isWaiting }: { counter: Counter | null; isWaiting: boolean }) {
  if (counter === null) {
    return <p class="card">Working out what to take when something is out…</p>;
  }
  if (counter.trouble !== null) {
    return <p class="card warn">No substitutes: {counter.trouble}</p>;
  }
  const pairs = counter.substitutes.filter((one) => one.out.length > 1);
  if (pairs.length === 0) {
    return null;
  }
  return (
    <details class={`card ${isWaiting ? "stale" : ""}`}>
      <summary>When two things are out</summary>
      <ul class="plain">{pairs.map((pair) => <li key={pair.out.join()}><strong>{pair.out.join(" and ")}:</strong> {substituteWords(pair)}</li>)}</ul>
    </details>
  );
}

function TakeAlong() {
  return (
    <details class="card">
      <summary>Take along</summary>
      <ul class="plain">
        <li>The list on the phone: <em>keep the list on this phone</em>, and open the file at the counter. Or leave this page open: it works without the laptop until it is closed. Or print it.</li>
        <li>An offcut of the tube, for trying on bends and clamps.</li>
        <li>Tape, calliper, marker. Measure centre-line radius, angle and legs of a bend before you pay.</li>
      </ul>
    </details>
  );
}

function Wanted({ counter }: { counter: Counter | null }) {
  const { unit } = useShop();
  if (counter === null) {
    return null;
  }
  return (
    <section class="card">
      <h2>Wanted</h2>
      {counter.wanted.length === 0 ? <p>Nothing: every part is on hand or on offer, and none that the runs need is left out.</p> : null}
      {counter.wanted.map((part) => (
        <div key={part.item + part.parts.join()}>
          <p><strong>{part.count} × {part.item}</strong>, for {part.parts.join(", ")}. Before paying check:</p>
          <ul class="plain">{part.checks.map((check) => <li key={check}>{prose(check, unit)}</li>)}</ul>
        </div>
      ))}
    </section>
  );
}

function Stock() {
  const { view, act } = useShop();
  const isEmpty = ["tube", "item", "supplier", "on-hand"].every((list) => (view.names[list] ?? []).length === 0);
  return (
    <div class="noprint">
      {isEmpty ? (
        <section class="card">
          <h2>Nothing in stock yet</h2>
          <p>Add tubes, items and prices below, or begin with the catalogue of an invented shop and put in your own sizes and prices one by one.</p>
          <p class="caution">Its suppliers, sizes and prices are invented: buy nothing by them.</p>
          <div class="buttons">
            {[["kitcar-mid4", "63.5 mm stainless"], ["estate-v6", "small stainless, two banks"], ["pickup-six", "inch sizes"]].map(([like = "", words = ""]) => (
              <button type="button" key={like} onClick={() => act({ do: "startStock", like })}>Begin with {words}</button>
            ))}
          </div>
        </section>
      ) : null}
      <FormTabs title="Your stock" forms={STOCK_FORMS} first="on hand" />
    </div>
  );
}

function asText(lines: BuyLine[], between: string): string {
  const quoted = (text: string) => (between === "," && /[",]/.test(text) ? `"${text.replaceAll("\"", "\"\"")}"` : text);
  return lines.map((line) => [String(line.quantity), line.item, line.supplier, line.each, line.together].map(quoted).join(between)).join("\n");
}

// The list as one file that opens without the program: text, looks and what ticks it, nothing from elsewhere.

import type { BuyView, Counter } from "../../api";
import { substituteWords } from "./words";

/** A tick that was set in a saved list. */
export interface SavedTick {
  kind: "got" | "out";
  item: string;
  supplier: string;
  count: number;
  on: string;
}

/** The first words of ticks as text. */
export const TICKS = "tubewright ticks 1";

/** What of the list the file's own script works with. */
interface SavedLine {
  item: string;
  supplier: string;
  quantity: number;
  got: number;
  isOut: boolean;
}
interface SavedList {
  name: string;
  head: string;
  lines: SavedLine[];
  pairs: { out: string[]; words: string }[];
}

/** The file. A phone that runs nothing in saved files still shows the list and all substitutes. */
export function savedList(name: string, buy: BuyView, counter: Counter, on: string): string {
  const list: SavedList = {
    name: `${name} ${on} ${buy.price}`,
    head: TICKS,
    lines: buy.lines.map(({ item, supplier, quantity, got, isOut }) => ({ item, supplier, quantity, got, isOut })),
    pairs: counter.substitutes.filter((one) => one.out.length > 1).map((one) => ({ out: one.out, words: substituteWords(one) })),
  };
  const suppliers = [...new Set(buy.lines.map((line) => line.supplier))];
  const body = suppliers.map((supplier) => `
<section><h2>${text(supplier)}</h2><ul>${buy.lines.map((line, at) => (line.supplier !== supplier ? "" : `
<li data-line="${at}"><p class="what"><b>${line.quantity} ×</b> <span>${text(line.item)}</span> <span class="price">${text(line.together)}</span></p>
<p class="state" role="status">${line.got >= line.quantity ? "got" : line.isOut ? "out" : line.got > 0 ? `${line.got} got` : ""}</p>
<p class="do"></p>${instead(counter, line.item)}</li>`)).join("")}
</ul></section>`).join("");
  const pairs = list.pairs.length === 0 ? "" : `
<section><h2>When two things are out</h2><ul>${list.pairs.map((pair) => `<li><p><b>${text(pair.out.join(" and "))}:</b> ${text(pair.words)}</p></li>`).join("")}</ul></section>`;
  const wanted = counter.wanted.length === 0 ? "" : `
<section><h2>Wanted</h2><ul>${counter.wanted.map((part) => `<li><p><b>${part.count} × ${text(part.item)}</b>, for ${text(part.parts.join(", "))}. Before paying check: ${text(part.checks.join("; "))}</p></li>`).join("")}</ul></section>`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="color-scheme" content="light dark">
<meta http-equiv="content-security-policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>${text(name)}: counter list</title><style>${LOOKS}</style></head>
<body><header><h1>${text(name)}</h1><p><b>${text(buy.price)}</b> with tax and delivery, as of ${text(on)}. For ${text(buy.whatFor)}.${buy.isChosen ? "" : " <b>Nothing is chosen yet: buy nothing by it.</b>"}</p>
<p id="still" class="note">If nothing happens when you press below, this phone runs nothing in saved files: read the list here and tick on paper.</p></header>
<div id="pair" role="status"></div><main>${body}${pairs}${wanted}
<section id="back" hidden><h2>Back at the laptop</h2><p>Copy the ticks, open the page of the build, and put them in on Buy by <em>ticks from a saved list</em>.</p>
<p><button id="copy" type="button">copy the ticks</button> <span id="said" role="status"></span></p>
<textarea id="ticks" readonly rows="4" aria-label="the ticks as text"></textarea></section></main>
<script type="application/json" id="list">${JSON.stringify(list).replaceAll("<", "\\u003c")}</script>
<script>(${ticking.toString()})();</script></body></html>
`;
}

function instead(counter: Counter, item: string): string {
  const found = counter.substitutes.find((one) => one.out.length === 1 && one.out[0] === item);
  return found === undefined ? "" : `<p class="instead"><b>If it is out:</b> ${text(substituteWords(found))}</p>`;
}

function text(words: string): string {
  return words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll("\"", "&quot;");
}

/** Ticks that were copied out of a saved list; throws a sentence when it is something else. */
export function readTicks(words: string): SavedTick[] {
  const at = words.indexOf(TICKS);
  let found: unknown = null;
  try {
    found = at < 0 ? null : JSON.parse(words.slice(at + TICKS.length));
  } catch {
    // Told below.
  }
  if (!Array.isArray(found)) {
    throw new Error(`These are no ticks of a saved list. They begin with “${TICKS}”: press copy in the saved list, then paste all of it here.`);
  }
  return found.map((one: Partial<SavedTick>) => {
    const isSound = (one.kind === "got" || one.kind === "out") && typeof one.item === "string" && typeof one.supplier === "string" && Number.isInteger(one.count) && (one.count ?? 0) >= 0 && /^\d{4}-\d\d-\d\d$/.test(one.on ?? "");
    if (!isSound) {
      throw new Error("One of these ticks cannot be read; copy them out of the saved list again.");
    }
    return one as SavedTick;
  });
}

/** Runs inside the saved file, alone: it may use nothing from outside itself. */
function ticking(): void {
  const list = JSON.parse(document.getElementById("list")?.textContent ?? "{}") as SavedList;
  const key = `tubewright-list ${list.name}`;
  const keep = { canKeep: true, ticks: [] as SavedTick[] };
  try {
    keep.ticks = JSON.parse(localStorage.getItem(key) ?? "[]") as SavedTick[];
    localStorage.setItem(key, JSON.stringify(keep.ticks));
  } catch {
    keep.canKeep = false;
  }
  const two = (value: number) => String(value).padStart(2, "0");
  const today = () => { const now = new Date(); return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`; };
  const of = (line: SavedLine) => keep.ticks.filter((tick) => tick.item === line.item && tick.supplier === line.supplier);
  const draw = () => {
    for (const part of document.querySelectorAll<HTMLElement>("[data-line]")) {
      const line = list.lines[Number(part.dataset["line"])];
      if (line === undefined) {
        continue;
      }
      const own = of(line);
      const got = line.got + own.reduce((sum, tick) => sum + (tick.kind === "got" ? tick.count : 0), 0);
      const isOut = own.length === 0 ? line.isOut : own[own.length - 1]?.kind === "out";
      const isGot = got >= line.quantity;
      part.className = isGot ? "got" : isOut ? "out" : "";
      const state = part.querySelector(".state");
      if (state !== null) {
        state.textContent = isGot ? "got" : `${isOut ? "out" : ""}${got > 0 ? ` ${got} got` : ""}`;
      }
      const lead = part.querySelector(".instead b");
      if (lead !== null) {
        lead.textContent = isOut ? "Take instead:" : "If it is out:";
      }
      const row = part.querySelector(".do");
      const button = (words: string, tick: SavedTick | null) => {
        const made = document.createElement("button");
        made.type = "button";
        made.textContent = words;
        made.setAttribute("aria-label", `${words}: ${line.item}`);
        made.onclick = () => {
          if (tick === null) {
            const last = own[own.length - 1];
            keep.ticks = keep.ticks.filter((one) => one !== last);
          } else {
            keep.ticks.push(tick);
          }
          save();
        };
        return made;
      };
      const tick = (kind: "got" | "out", count: number): SavedTick => ({ kind, item: line.item, supplier: line.supplier, count, on: today() });
      row?.replaceChildren(
        ...(isGot ? [] : [button("got", tick("got", line.quantity - got))]),
        ...(isGot || line.quantity - got < 2 ? [] : [button("got 1", tick("got", 1))]),
        ...(isGot || isOut ? [] : [button("out", tick("out", 0))]),
        ...(own.length === 0 ? [] : [button("take back", null)]),
      );
    }
    const out = list.lines.filter((line) => { const own = of(line); return (own.length === 0 ? line.isOut : own[own.length - 1]?.kind === "out"); }).map((line) => line.item);
    const pair = list.pairs.find((one) => one.out.length <= out.length && one.out.every((item) => out.includes(item)));
    const told = document.getElementById("pair");
    if (told !== null) {
      told.hidden = out.length < 2;
      told.textContent = out.length < 2 ? "" : pair === undefined ? `${out.join(" and ")} are out: that was not worked out beforehand. What stands below each holds for that one alone; ring the shop before you buy in place of both.` : `${out.join(" and ")} are out. Take instead: ${pair.words}`;
    }
    const back = document.getElementById("back");
    const ticks = document.getElementById("ticks") as HTMLTextAreaElement | null;
    if (back !== null && ticks !== null) {
      back.hidden = keep.ticks.length === 0;
      ticks.value = `${list.head} ${JSON.stringify(keep.ticks)}`;
    }
    const still = document.getElementById("still");
    if (still !== null) {
      still.textContent = keep.canKeep ? "This list works without the laptop. What you tick is kept in this browser, also when the page is closed." : "This browser keeps nothing for a saved file: leave the page open until the ticks are copied.";
    }
  };
  const save = () => {
    try {
      localStorage.setItem(key, JSON.stringify(keep.ticks));
    } catch {
      keep.canKeep = false;
    }
    draw();
  };
  const copy = document.getElementById("copy");
  if (copy !== null) {
    copy.onclick = () => {
      const ticks = document.getElementById("ticks") as HTMLTextAreaElement | null;
      ticks?.select();
      const said = (words: string) => { const at = document.getElementById("said"); if (at !== null) { at.textContent = words; } };
      const byHand = () => said("Hold the text below and copy it by hand.");
      if (navigator.clipboard === undefined) {
        byHand();
      } else {
        navigator.clipboard.writeText(ticks?.value ?? "").then(() => said("copied"), byHand);
      }
    };
  }
  draw();
}

const LOOKS = `
:root{--paper:#f3f0e8;--sheet:#fffdf8;--ink:#20262a;--line:#cdc6b8;--strong:#8d877b;--deep:#1d4a50;--deepink:#fff;--hot:#a33607;--hotsheet:#fbe7da;--good:#1f5c2b;--goodsheet:#e4f0e2}
@media (prefers-color-scheme:dark){:root{--paper:#171a1b;--sheet:#212627;--ink:#efece4;--line:#41484a;--strong:#788083;--deep:#8ccfd0;--deepink:#0d1c1c;--hot:#ff9c6b;--hotsheet:#41251a;--good:#93d69d;--goodsheet:#1f3324}}
*{box-sizing:border-box}body{margin:0;padding:.6rem;font:17px/1.42 system-ui,sans-serif;color:var(--ink);background:var(--paper)}
header,section,#pair{max-width:44rem;margin:0 auto .8rem;background:var(--sheet);border:1px solid var(--line);border-radius:4px;padding:.7rem}
#pair{border-left:6px solid var(--hot);background:var(--hotsheet)}#pair[hidden],#pair:empty,section[hidden]{display:none}
h1{font-size:1.4rem;margin:0 0 .4rem}h2{font-size:1.1rem;margin:0 0 .4rem}p{margin:.3rem 0}ul{list-style:none;margin:0;padding:0}
li{border-top:1px solid var(--line);padding:.5rem .4rem}li.got{background:var(--goodsheet);border-left:5px solid var(--good)}li.got .what{text-decoration:line-through}
li.out{background:var(--hotsheet);border-left:5px solid var(--hot)}li.got .instead{display:none}li.out .instead{font-size:1.05rem;font-weight:600}
.what{display:flex;gap:.5rem}.what span:first-of-type{flex:1}.state{font-weight:700}.state:empty{display:none}
.do{display:flex;flex-wrap:wrap;gap:.5rem}button{font:inherit;color:inherit;min-height:48px;min-width:64px;padding:0 .9rem;border:1px solid var(--strong);border-radius:4px;background:var(--sheet)}
.do button:first-child{background:var(--deep);color:var(--deepink);border-color:var(--deep);font-weight:600}.got .do button:first-child{background:var(--sheet);color:inherit;border-color:var(--strong);font-weight:400}
:focus-visible{outline:3px solid var(--hot);outline-offset:2px}textarea{width:100%;font:14px monospace;color:inherit;background:var(--paper);border:1px solid var(--strong)}
.note{font-size:.92rem}@media print{button,#back,#still{display:none}body{background:#fff;color:#000}}
`;

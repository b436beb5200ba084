// Cut: one card for each stock item, with its picture, marks and ticks.

import type { CardView, Plan, RemakeView } from "../../api";
import { PacketButton } from "../../packet";
import { today, useAsked, useShop } from "../../shop";
import { degrees, saw, signedDegrees, small } from "../../units";
import { Made, Remake, ownMarks, spoil } from "./remake";
import { Templates } from "./templates";

export function Cut() {
  const { view } = useShop();
  const plan = useAsked<Plan>("api/plan", view.version);
  const cards = plan.value?.cards ?? [];
  const { remakes = [], made = [] } = plan.value ?? {};
  if (cards.length + remakes.length + made.length === 0) {
    return <p class="card">{plan.value === null ? "Working out the cuts…" : "There is no way yet, so there is nothing to cut: see Route."}</p>;
  }
  const isOnACard = (remake: RemakeView) => cards.some((card) => card.parts.some((marks) => marks.includes(remake.piece)));
  const parts = [...cards, ...made].flatMap((one) => one.parts);
  const cuts = cards.reduce((sum, card) => sum + card.cuts.length, 0);
  return (
    <div class={plan.isFresh ? "" : "stale"}>
      <p class="card caution">
        Scribe a witness line along the whole item before the first cut, on a bend along its outside. Mark every cut before the first one. Measure
        from the end named, with the tape along the side named. Sawn tube is sharp: deburr; wear eye protection.
      </p>
      <div class="buttons noprint"><button type="button" onClick={() => window.print()}>Print the {cards.length} cards ({cuts} cuts)</button><PacketButton /></div>
      {plan.value?.buy?.isChosen === false ? <p class="card warn">No way is chosen yet: the marks below may change. Choose one on Route before the first cut.</p> : null}
      {remakes.filter((remake) => !isOnACard(remake)).map((remake) => (
        <section class="card fail" key={remake.piece}><h2>{remake.piece} <small>spoiled</small></h2><Remake remake={remake} isFresh={plan.isFresh} /></section>
      ))}
      <div class="cards">
        {cards.map((card) => <Card key={card.picture} card={card} parts={parts} remakes={remakes} isFresh={plan.isFresh} />)}
      </div>
      <Made made={made} parts={parts} />
      <Clocks plan={plan.value} />
      <Rolls plan={plan.value} />
      <Templates />
    </div>
  );
}

interface Remakes {
  /** Every part of the job by its marks. */
  parts: string[][];
  remakes: RemakeView[];
  /** False while what is shown is older than the last tick. */
  isFresh: boolean;
}

function Card({ card, parts, remakes, isFresh }: { card: CardView } & Remakes) {
  const { view, unit } = useShop();
  // A part that closes a stretch is left longer, by as much as the tape in use can show.
  const closing = unit === "mm" ? card.closing : card.closingInInches;
  const cuts = closing?.cuts ?? card.cuts;
  return (
    <section class="card cutcard">
      <h2>{card.item}{card.number > 1 ? ` no. ${card.number}` : ""} <small>{card.isOnHand ? "from the shelf" : "bought"}</small></h2>
      <p>{unit === "mm" ? card.stock : card.stockInInches}</p>
      <img src={`api/card?card=${card.picture}&unit=${unit}&of=${view.version}`} alt={`${card.item} with its cuts`} />
      {card.warnings.map((words) => <p class="bad" key={words}>{words}</p>)}
      {card.cuts.length === 0 ? <p>Used whole, no cut.</p> : (
        <div class="scroll" tabIndex={0} role="region" aria-label={`marks on ${card.item}`}>
          <table class="saw">
            <caption>marks in {unit}, from the end named</caption>
            <thead>
              <tr><th scope="col">cut</th><th scope="col">from</th><th scope="col">outside</th><th scope="col">inside</th><th scope="col">side</th><th scope="col">kerf</th></tr>
            </thead>
            <tbody>
              {cuts.map((cut) => (
                <tr key={cut.number}>
                  <th scope="row">{cut.number}</th>
                  <td>{cut.from}</td>
                  <td>{saw(cut.outside, unit)}</td>
                  <td>{saw(cut.inside, unit)}</td>
                  <td>{saw(cut.side, unit)}</td>
                  <td class={cut.dress === null ? "" : "bad"}>{cut.dress === null ? `to ${cut.kerfToward}${cut.saw === 0 ? "" : `, saw ${degrees(cut.saw)}`}` : "dress"}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {closing === null ? null : <p class="closing">{closing.words}</p>}
      {cuts.filter((cut) => cut.dress !== null).map((cut) => (
        <p class="bad" key={cut.number}>{cut.number} is not sawn: dress it down to its ring. Up to {small(cut.dress ?? 0, unit)} comes off, thinner than a blade can follow; a saw there scraps the part.</p>
      ))}
      <ul class="rows">
        {card.parts.map((marks) => <Part key={marks.join()} marks={marks} card={card} parts={parts} remakes={remakes} isFresh={isFresh} />)}
      </ul>
    </section>
  );
}

function Part({ marks, card, parts, remakes, isFresh }: { marks: string[]; card: CardView } & Remakes) {
  const { view, act, waiting } = useShop();
  const own = ownMarks(marks, parts);
  const first = own[0] ?? "";
  const happened = [
    ...view.record.filter((entry) => own.includes(entry.about)).map((entry) => entry.what),
    ...waiting.flatMap((deed) => (deed.do === "happened" && "piece" in deed.what && own.includes(deed.what.piece) ? [deed.what.kind as string] : [])),
  ].filter((what) => what === "cut" || what === "spoiled");
  const state = happened[happened.length - 1] ?? "";
  const remake = remakes.find((one) => own.includes(one.piece));
  return (
    <li class={state === "spoiled" ? "fail" : state === "cut" ? "got" : ""}>
      <strong class="grow mark">{marks.join(" + ")}</strong>
      {state === "cut" ? <strong class="tick">cut</strong> : (
        <button type="button" class="main" onClick={() => act({ do: "happened", on: today(), what: { kind: "cut", piece: first, from: card.item } })}>{state === "spoiled" ? "cut again" : "cut"}</button>
      )}
      {state === "spoiled" ? null : <button type="button" class="quiet" onClick={() => spoil(act, first)}>spoiled</button>}
      {remake !== undefined ? <Remake remake={remake} isFresh={isFresh} /> : state === "spoiled" ? (
        <p class="instead bad" role="status">{first} is spoiled: mark it with paint, so that nobody tacks it. {isFresh ? "Its remake is worked out when the program has the tick." : "Working out its remake…"}</p>
      ) : null}
    </li>
  );
}

function Clocks({ plan }: { plan: Plan | null }) {
  const { unit } = useShop();
  if (plan === null || plan.clocks.length === 0) {
    return null;
  }
  return (
    <section class="card">
      <h2>Clock of each part to the one before it</h2>
      <div class="scroll" tabIndex={0} role="region" aria-label="clocks">
        <table>
          <caption>clockwise looking downstream is plus, witness line to witness line; round the outside in {unit}</caption>
          <thead><tr><th scope="col">part</th><th scope="col">clock</th><th scope="col">round</th><th scope="col" class="words">run</th></tr></thead>
          <tbody>
            {plan.clocks.map((clock) => (
              <tr key={clock.run + clock.part.join()}>
                <th scope="row">{clock.part.join(" + ")}</th>
                <td>{signedDegrees(clock.clock)}</td>
                <td>{saw(clock.round, unit)}</td>
                <td class="words">{clock.run}{clock.isReversed ? ", turned end for end" : ""}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Rolls({ plan }: { plan: Plan | null }) {
  const { unit } = useShop();
  if (plan === null || plan.rolls.length === 0) {
    return null;
  }
  return (
    <section class="card">
      <h2>Roll of oval and box parts to the part before</h2>
      <p>Scribe their own witness line along the neck, in the middle of the broad side that lies up when they lie flat.</p>
      <div class="scroll" tabIndex={0} role="region" aria-label="rolls">
        <table>
          <caption>clockwise looking downstream is plus; round the neck in {unit}</caption>
          <thead><tr><th scope="col">part</th><th scope="col">roll</th><th scope="col">round</th><th scope="col">in the car</th><th scope="col" class="words">component</th></tr></thead>
          <tbody>
            {plan.rolls.map((roll) => (
              <tr key={roll.run + roll.mark}>
                <th scope="row">{roll.mark}</th>
                <td>{signedDegrees(roll.clock)}</td>
                <td>{saw(roll.round, unit)}</td>
                <td>{Math.abs(roll.fromFlat) < 0.05 ? "lies flat" : signedDegrees(roll.fromFlat)}</td>
                <td class="words">{roll.component}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

// Fit: tack in order, prove each joint with the tape, go on from where it really is.

import { useEffect, useState } from "preact/hooks";
import type { FitStepView, FitView, Happening, HungView, JointCheckView, JointSlope, JointTape, JointView, OfferView, TrimView } from "../api";
import { AngleKeypad, Keypad, SLOPES } from "../keypad";
import { today, useAsked, useShop } from "../shop";
import { tell } from "../talk";
import { clock, degrees, length, prose, signed, signedDegrees, small } from "../units";

export function Fit() {
  const { unit, view } = useShop();
  const fit = useAsked<FitView>("api/fit", view.version);
  const sheet = fit.value;
  if (sheet === null || (sheet.steps.length === 0 && sheet.trouble === null)) {
    return <p class="card">{sheet === null ? (fit.trouble ?? "Working out the order of tacking…") : "There is no way yet, so there is nothing to fit: see Route."}</p>;
  }
  return (
    <div class={fit.isFresh ? "" : "stale"}>
      {sheet.trouble === null ? null : <p class="card warn">{sheet.trouble}</p>}
      <p class="card caution">
        Under the car: cribbed or on stands, never on a jack alone. Battery off, fuel lines shielded, an extinguisher at hand. Steering and brakes
        nearby are judged by a licensed practitioner.
      </p>
      {sheet.isChosen ? null : <p class="card warn">No way is chosen yet, so joints have no marks that stay. Choose one on Route before the first tack.</p>}
      <p class="card">
        Tack on the car in this order, three short tacks to a joint. Before a part goes up scribe twelve o'clock in line with its witness line and the
        hours named round its open end, clockwise looking downstream. Move the open end until every tape reads as it should, within what is
        allowed; then tack.
      </p>
      {sheet.unclosed.map((words) => <p class="card fail" key={words}>{words}</p>)}
      {sheet.before.map((words) => <p class="card caution" key={words}>{prose(words, unit)}</p>)}
      {sheet.steps.map((step) => <Step key={step.number} step={step} isChosen={sheet.isChosen} />)}
      {sheet.bungs.length === 0 ? null : (
        <section class="card">
          <h2>Bungs for sensors</h2>
          <p>Mark the middle of the hole on the tacked run, hold the sensor there and turn its socket before drilling.</p>
          {sheet.bungs.map((words) => <p key={words}>{prose(words, unit)}.</p>)}
        </section>
      )}
      {sheet.hung.length === 0 ? null : (
        <section class="card">
          <h2>Hangers</h2>
          <p>Rod, rubber and bracket together take the reach; the load is what the rubber carries at rest, an estimate. None goes between the engine and a flex section. Look behind sheet for lines and wires before you drill; a can takes a strap and no weld.</p>
          {sheet.hung.map((group) => <Hung key={group.runs} group={group} />)}
        </section>
      )}
      <section class="card">
        <h2>Weld</h2>
        <p>When all is tacked and every tape reads true, take it down in one piece if it comes out so (Prove says whether a way out was found), bolt every flange to the engine or a thick plate, and weld off the car, each joint in quarters: 12 to 3, 6 to 9, 3 to 6, 9 to 12.</p>
        {sheet.welds.map((weld) => (
          <div key={weld.run} class="weld">
            <p><strong>{weld.run}</strong>: {weld.materials}, filler {weld.filler}. {weld.settings}</p>
            {weld.minds.map((minds) => <p key={minds} class="bad">Mind: {minds}.</p>)}
            {weld.purge === null ? null : <p>Purge: {weld.purge}</p>}
          </div>
        ))}
        {sheet.cautions.map((words) => <p class="caution" key={words}>Mind: {words}.</p>)}
        <JointTicks />
      </section>
    </div>
  );
}

function Hung({ group }: { group: HungView }) {
  const { unit } = useShop();
  if (group.trouble !== null) {
    return <p class="warn"><strong>{group.runs}</strong>: not placed. {prose(group.trouble, unit)}.</p>;
  }
  return (
    <>
      <h3>{group.runs} <small>{(group.kg ?? 0).toFixed(1)} kg behind the flex, sinks up to {small(group.sag ?? 0, unit)}</small></h3>
      <ul class="rows">
        {group.hangers.map((hanger) => (
          <li key={hanger.mark}>
            <strong class="number mark">{hanger.mark}</strong>
            <span class="grow">{prose(hanger.place, unit)}</span>
            <span class="value">about {hanger.newton.toFixed(0)} N</span>
          </li>
        ))}
      </ul>
      {group.isWithin ? null : <p class="warn">Not checked: on what was measured within reach no set of places carries it; Prove says how far off the best is.</p>}
    </>
  );
}

function Longer({ trim }: { trim: TrimView }) {
  const { unit } = useShop();
  return (
    <>
      <p>It is {prose(trim.words, unit)}. Hold it beside the gap, scribe both faces from the open ends, cut to the scribes, tack at both joints.</p>
      {trim.lack === null ? null : <p class="warn">{prose(trim.lack, unit)}</p>}
    </>
  );
}

function Step({ step, isChosen }: { step: FitStepView; isChosen: boolean }) {
  return (
    <section class="card">
      <h2>{step.number}. {step.act} <small>{step.run}</small></h2>
      {step.trim === null ? null : <Longer trim={step.trim} />}
      {step.held === null ? null : <p>{step.held}</p>}
      {step.checks.map((check) => <Check key={check.joint} check={check} isChosen={isChosen} />)}
    </section>
  );
}

function Check({ check, isChosen }: { check: JointCheckView; isChosen: boolean }) {
  const { view, unit, act } = useShop();
  const [typed, setTyped] = useState<Record<number, string>>({});
  const [at, setAt] = useState<number | null>(null);
  const record = view.record.filter((entry) => entry.about === check.joint);
  const isTacked = record.some((entry) => entry.what === "tacked");
  const readings = Object.entries(typed).flatMap(([index, reads]): JointTape[] => {
    const distance = check.distances[Number(index)];
    return distance === undefined ? [] : [{ from: distance.mark, rim: distance.hour, reads }];
  });
  const [slopes, setSlopes] = useState<JointSlope[]>([]);
  const tack = async () => {
    const what: Happening = { kind: "tacked", joint: check.joint, readings, slopes };
    if (await act({ do: "happened", on: today(), what })) {
      setTyped({});
      setSlopes([]);
      setAt(null);
    }
  };
  return (
    <div class="check">
      <h3>Tapes to {check.joint}{isTacked ? <small> · tacked</small> : null}</h3>
      <ul class="rows">
        {check.distances.map((distance, index) => (
          <li key={index}>
            <span class="grow">{distance.mark} to {clock(distance.hour)}</span>
            <span class="value"><strong>{length(distance.reads, unit)}</strong>{typed[index] === undefined ? null : <> · is {typed[index]}</>}</span>
            {isChosen ? <button type="button" aria-expanded={at === index} aria-label={`type what the tape from ${distance.mark} to ${clock(distance.hour)} of ${check.joint} reads`} onClick={() => setAt(at === index ? null : index)}>type</button> : null}
            {at === index ? (
              <div class="opened">
                <Keypad
                  unit={unit}
                  label={`tape from ${distance.mark}`}
                  done={(reads) => {
                    setTyped({ ...typed, [index]: reads });
                    setAt(index + 1 < check.distances.length ? index + 1 : null);
                  }}
                />
              </div>
            ) : null}
          </li>
        ))}
      </ul>
      {check.tolerance >= 0 ? (
        <p>Each may be off by <strong>{small(check.tolerance, unit)}</strong>{check.toleranceBy === null ? "" : `, for the gap to ${check.toleranceBy}`}. The joint is then held to ± {small(check.plusMinusAfter, unit)} (19 in 20); by the pieces alone ± {small(check.plusMinusBefore, unit)}.</p>
      ) : (
        <p class="bad">Even with tapes that read true the gap to {check.toleranceBy ?? "a body"} may be {small(-check.tolerance, unit)} short (19 in 20). What would do: {check.better.length === 0 ? "no single figure of the shop; move the body or give it a gap of its own" : check.better.join(", or ")}.</p>
      )}
      {check.loose === null ? null : <p class="bad">Not checked {check.loose[0]}: these distances leave it ± {small(check.loose[1], unit)} that way.</p>}
      {check.tooFew === null ? null : <p class="bad">Not checked: {check.distances.length} of 3 distances: {check.tooFew}.</p>}
      {check.advice === null ? null : <p>{prose(check.advice, unit)}.</p>}
      {isChosen ? <Slopes check={check} slopes={slopes} set={setSlopes} /> : null}
      {isChosen ? (
        <div class="buttons">
          <button type="button" class={isTacked && readings.length === 0 ? "" : "main"} onClick={tack}>{readings.length === 0 && slopes.length === 0 ? "tacked, not taped" : `tacked, with ${readings.length} ${readings.length === 1 ? "tape" : "tapes"}${slopes.length === 0 ? "" : ` and ${slopes.length} ${slopes.length === 1 ? "slope" : "slopes"}`}`}</button>
        </div>
      ) : null}
      {record.some((entry) => entry.what === "tacked" && entry.words.includes("taped")) ? <AsBuilt joint={check.joint} /> : null}
    </div>
  );
}

/** The face of the open end by the angle finder: how it leans, which tapes to a small rim hardly tell. */
function Slopes({ check, slopes, set }: { check: JointCheckView; slopes: JointSlope[]; set: (slopes: JointSlope[]) => void }) {
  const { view } = useShop();
  const setups = view.names["setup"] ?? [];
  const [setup, setSetup] = useState(setups[0] ?? "");
  const [at, setAt] = useState<number | null>(null);
  if (setups.length === 0) {
    return null;
  }
  return (
    <details class="slopes">
      <summary>Angle finder across its open face{slopes.length === 0 ? "" : `: ${slopes.length} read`}</summary>
      <p>Lay a straight edge across the open end, from the middle toward twelve o'clock, and then toward three: up when that side is the higher. What the plan has is for the car level.</p>
      <label class="line">
        The car stands
        <select value={setup} onChange={(event) => setSetup(event.currentTarget.value)}>
          {setups.map((name) => <option key={name} value={name}>{name}</option>)}
        </select>
      </label>
      <ul class="rows">
        {[12, 3].map((toward, index) => {
          const planned = check.slopes?.[index];
          const known = slopes.find((slope) => slope.toward === toward);
          return (
            <li key={toward}>
              <span class="grow">toward {clock(toward)}{planned === undefined ? "" : `, plan ${degrees(Math.abs(planned))} ${planned < 0 ? "down" : "up"}`}</span>
              <span class="value">{known === undefined ? "" : `is ${known.reads}, ${known.setup}`}</span>
              <button type="button" aria-expanded={at === toward} aria-label={`type the slope of ${check.joint} toward ${clock(toward)}`} onClick={() => setAt(at === toward ? null : toward)}>type</button>
              {at === toward ? (
                <div class="opened">
                  <AngleKeypad
                    label={`slope toward ${clock(toward)}`}
                    ways={SLOPES}
                    most={90}
                    done={(reads) => {
                      set([...slopes.filter((slope) => slope.toward !== toward), { toward, setup, reads }]);
                      setAt(toward === 12 ? 3 : null);
                    }}
                  />
                </div>
              ) : null}
            </li>
          );
        })}
      </ul>
    </details>
  );
}

function AsBuilt({ joint }: { joint: string }) {
  const { view, unit } = useShop();
  const [found, setFound] = useState<JointView | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let isWanted = true;
    tell<JointView>(`api/joint?mark=${encodeURIComponent(joint)}`).then(
      (value) => { if (isWanted) { setFound(value); setTrouble(null); } },
      (error: unknown) => { if (isWanted) { setTrouble(error instanceof Error ? error.message : String(error)); } },
    );
    return () => { isWanted = false; };
  }, [joint, view.version]);
  if (trouble !== null) {
    return <p class="bad">{trouble}</p>;
  }
  if (found === null) {
    return <p>Working out where {joint} is…</p>;
  }
  const off = Math.hypot(...found.off);
  return (
    <div class="built">
      <h3>{joint} as built</h3>
      <p>
        It lies <strong>{small(off, unit)}</strong> from the plan, {found.by}: {["rearwards", "to the right", "up"].map((way, axis) => `${signed(found.off[axis] ?? 0, unit)} ± ${small(found.plusMinus[axis] ?? 0, unit)} ${way}`).join(", ")}. It points {degrees(found.lean)} off and is turned {signedDegrees(found.roll)} (clockwise looking downstream).
      </p>
      {found.loose === null ? null : <p class="bad">{found.loose}</p>}
      {found.readings.some((reading) => reading.isDoubtful) ? (
        <p class="bad">{found.readings.filter((reading) => reading.isDoubtful).map((reading) => `${reading.from} reads ${length(reading.reads, unit)}, ${signed(reading.leftOver, unit)} against the others`).join("; ")}: tape it again before anything is cut for it.</p>
      ) : null}
      <h3>How to go on</h3>
      {found.offers.length === 0 ? <p>{found.whyNone}</p> : null}
      {found.offers.map((offer) => <Offer key={offer.number} offer={offer} joint={joint} />)}
    </div>
  );
}

function Offer({ offer, joint }: { offer: OfferView; joint: string }) {
  const { unit, act } = useShop();
  return (
    <div class={`offer ${offer.isGood ? "pass" : "fail"}`}>
      <p><strong>{offer.number}. {offer.what}</strong>: {offer.isGood ? "holds" : "does not hold"}</p>
      <p>Arrives {small(offer.arrivesOff, unit)} ± {small(offer.arrivesPlusMinus, unit)} and {degrees(offer.arrivesTurn)} off; tightest gap {offer.leastRoom === null ? "not known" : offer.leastRoom >= 0 ? `has ${small(offer.leastRoom, unit)} to spare` : `is ${small(-offer.leastRoom, unit)} too small`}.</p>
      {offer.failing.map((words) => <p class="bad" key={words}>{words}</p>)}
      {offer.changes.length === 0 ? null : <p>Changes: {offer.changes.join("; ")}.</p>}
      <p>Costs: {offer.lost.length === 0 ? "no cut steel lost" : `cut steel lost: ${offer.lost.join(", ")}`}{offer.recut.length === 0 ? "" : `; back to the saw: ${offer.recut.join(", ")}`}{offer.price === null ? "" : `; ${offer.price}`}.</p>
      {offer.missing.length === 0 ? null : <p class="bad">Cannot be made from what is on hand or for sale: {offer.missing.join(", ")}</p>}
      <button type="button" onClick={() => act({ do: "acceptOffer", on: today(), joint, number: offer.number, what: offer.what })}>take this one</button>
    </div>
  );
}

/** Every joint, ticked when it is welded and checked. */
function JointTicks() {
  const { view, act } = useShop();
  const happened = new Set(view.record.map((entry) => `${entry.what} ${entry.about}`));
  const joints = [...new Set(view.route.runs.flatMap((run) => [...run.pieces.map((piece) => piece.joint), run.lastJoint]))];
  return (
    <ul class="rows">
      {joints.map((joint) => (
        <li key={joint}>
          <strong class="number mark">{joint}</strong>
          <span class="grow">{happened.has(`tacked ${joint}`) ? "tacked" : ""}</span>
          <span class="buttons">
            {(["welded", "checked"] as const).map((kind) => {
              const isDone = happened.has(`${kind} ${joint}`);
              return <button type="button" key={kind} aria-pressed={isDone} disabled={isDone} aria-label={`${joint} ${kind}`} onClick={() => act({ do: "happened", on: today(), what: { kind, joint } })}>{kind}</button>;
            })}
          </span>
        </li>
      ))}
    </ul>
  );
}

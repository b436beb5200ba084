// The readings as they were typed, and the ones that do not agree.

import { useState } from "preact/hooks";
import type { ReadingView } from "../../api";
import { useShop } from "../../shop";
import { small } from "../../units";
import { Pad } from "./pad";

export function DoubtfulReadings() {
  const { view } = useShop();
  const doubtful = view.measure.readings.filter((reading) => reading.doubt !== null && !reading.isDropped);
  if (doubtful.length === 0) {
    return null;
  }
  return (
    <section class="card warn">
      <h2>{doubtful.length === 1 ? "A doubtful reading" : `${doubtful.length} doubtful readings`}</h2>
      <p>Set aside until you decide: the car is worked out without {doubtful.length === 1 ? "it" : "them"}. Measure again before you correct anything.</p>
      {doubtful.map((reading) => <Doubtful key={reading.number} reading={reading} />)}
    </section>
  );
}

function Doubtful({ reading }: { reading: ReadingView }) {
  const { act } = useShop();
  const [isAgain, setIsAgain] = useState(false);
  const change = async (reads: string) => {
    if (await act({ do: "changeReading", number: reading.number, was: reading.reads ?? "", reads })) {
      setIsAgain(false);
    }
  };
  return (
    <div class="doubtful">
      <p>{reading.doubt}</p>
      <div class="buttons">
        {reading.wasProbably === null ? null : (
          <button type="button" onClick={() => change(reading.wasProbably ?? "")}>It was {reading.wasProbably}</button>
        )}
        <button type="button" aria-expanded={isAgain} onClick={() => setIsAgain(!isAgain)}>I measured again</button>
        <button type="button" class="quiet" onClick={() => act({ do: "dropReading", number: reading.number, dropped: true })}>drop it</button>
      </div>
      {isAgain ? <Pad reading={reading} label={`reading ${reading.number} again`} done={change} /> : null}
    </div>
  );
}

/** Rows that are shown before the person asks for all. */
const FEW = 12;

export function Readings() {
  const { view } = useShop();
  const { readings, spare, agree, trouble } = view.measure;
  const [isAll, setIsAll] = useState(false);
  const rows = readings.slice().reverse();
  return (
    <section class="card">
      <h2>Readings</h2>
      <p>
        {readings.length} readings, {spare} of them to spare
        {agree === null ? "; nothing checks them yet." : agree ? "; they agree with each other." : "; they do not agree as well as their ± says."}
      </p>
      {trouble === null ? null : <p class="bad">{trouble}</p>}
      <ul class="rows">
        {(isAll ? rows : rows.slice(0, FEW)).map((reading) => <Row key={reading.number} reading={reading} />)}
      </ul>
      {rows.length > FEW ? <button type="button" class="quiet" onClick={() => setIsAll(!isAll)}>{isAll ? "show fewer" : `show all ${rows.length}`}</button> : null}
    </section>
  );
}

function Row({ reading }: { reading: ReadingView }) {
  const { unit, act } = useShop();
  const [isOpen, setIsOpen] = useState(false);
  const off = reading.off === null || reading.isDropped ? null : reading.unit === "mm" ? small(Math.abs(reading.off), unit) : `${Math.abs(reading.off).toFixed(1)}°`;
  return (
    <li class={reading.isDropped ? "dropped" : reading.doubt !== null ? "doubt" : ""}>
      <span class="number">{reading.number}</span>
      <span class="grow">
        {reading.what}
        {reading.doubt !== null && !reading.isDropped ? <small> · doubtful, set aside</small> : null}
        {reading.isUnchecked ? <small> · nothing else checks this one</small> : null}
        {reading.isDropped ? <small> · dropped</small> : null}
      </span>
      <span class="value">{reading.reads ?? "mirrored"}{off === null ? null : <small> off {off}</small>}</span>
      <button type="button" class="quiet" aria-expanded={isOpen} aria-label={`reading ${reading.number}: correct, drop or remove`} onClick={() => setIsOpen(!isOpen)}>…</button>
      {isOpen ? (
        <div class="opened">
          <Pad
            reading={reading}
            label={`reading ${reading.number} corrected`}
            done={async (reads) => {
              if (await act({ do: "changeReading", number: reading.number, was: reading.reads ?? "", reads })) {
                setIsOpen(false);
              }
            }}
          />
          <div class="buttons">
            {reading.isDropped ? (
              <button type="button" onClick={() => act({ do: "dropReading", number: reading.number, dropped: false })}>take back in</button>
            ) : (
              <button type="button" onClick={() => act({ do: "dropReading", number: reading.number, dropped: true })}>drop it</button>
            )}
            <button type="button" class="quiet" onClick={() => act({ do: "remove", list: "reading", name: String(reading.number) })}>remove it</button>
          </div>
        </div>
      ) : null}
    </li>
  );
}

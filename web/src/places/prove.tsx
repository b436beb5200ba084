// Prove: what fails, what nobody has checked, what passes.

import type { FindingView, Plan, StateView } from "../api";
import { PacketButton } from "../packet";
import { useAsked, useShop } from "../shop";
import { fixed, length, prose, small } from "../units";
import type { Unit } from "../units";

const STATES: readonly [StateView, string][] = [
  ["fail", "Fails"],
  ["notChecked", "Not checked"],
  ["pass", "Passes"],
  ["doesNotApply", "Does not apply to this car"],
];

export function Prove() {
  const { view } = useShop();
  const plan = useAsked<Plan>("api/plan", view.version);
  const prove = plan.value?.prove ?? null;
  if (prove === null) {
    return <p class="card">{plan.trouble ?? "Checking…"}</p>;
  }
  const isNothing = prove.findings.length === 0;
  return (
    <div class={plan.isFresh ? "" : "stale"}>
      <section class={`card ${isNothing || prove.fail > 0 ? "fail" : prove.notChecked > 0 ? "warn" : "good"}`}>
        <h2>What stands between here and running the engine</h2>
        <p class="tally">
          <strong class="fail">{prove.fail} fail</strong> <strong class="notChecked">{prove.notChecked} not checked</strong> <strong class="pass">{prove.pass} pass</strong>
        </p>
        {isNothing ? <p>Nothing is checked yet: measure first.</p> : null}
        {prove.fail > 0 ? <p>Do not run the engine while anything fails.</p> : null}
        {prove.notChecked > 0 ? <p>What is not checked has not passed: each one is for you to check by hand before the engine runs.</p> : null}
        <p class="caution">
          Steering, brakes and fuel lines are judged by a licensed practitioner; local law decides on emissions and noise. Exhaust gas holds carbon
          monoxide: run the engine outdoors.
        </p>
        <div class="buttons noprint"><button type="button" onClick={() => window.print()}>Print</button><PacketButton /></div>
      </section>
      {view.missing.length === 0 ? null : (
        <section class="card warn">
          <h2>What is still missing</h2>
          <ul class="plain">{view.missing.flatMap((job) => job.lacks.map((lack) => <li key={job.job + lack}>{job.job}: {lack}</li>))}</ul>
        </section>
      )}
      {STATES.map(([state, words]) => <Findings key={state} words={words} state={state} findings={prove.findings.filter((finding) => finding.state === state)} />)}
    </div>
  );
}

function Findings({ words, state, findings }: { words: string; state: StateView; findings: FindingView[] }) {
  if (findings.length === 0) {
    return null;
  }
  const rules = [...new Set(findings.map((finding) => finding.title))];
  const isOpen = state === "fail" || state === "notChecked";
  return (
    <details class="card" open={isOpen}>
      <summary><h2 class={state}>{words} ({findings.length})</h2></summary>
      {rules.map((rule) => {
        const ofRule = findings.filter((finding) => finding.title === rule);
        return (
          <div key={rule} class="rule">
            <h3>{rule}</h3>
            <p class="source">limit: {ofRule[0]?.source}</p>
            <ul class="rows findings">{ofRule.map((finding, at) => <Row key={finding.subject + String(at)} finding={finding} />)}</ul>
          </div>
        );
      })}
    </details>
  );
}

function Row({ finding }: { finding: FindingView }) {
  const { unit, fly } = useShop();
  return (
    <li class={finding.state}>
      <span class="grow">
        <strong>{finding.subject}</strong>
        {finding.place === null ? null : <small> at {finding.place}</small>}
        {finding.advice === "" ? null : <><br />{prose(finding.advice, unit)}</>}
      </span>
      <span class="value">{number(finding, unit)}</span>
      {finding.at === null ? null : <button type="button" class="noprint" aria-label={`show ${finding.subject} in the round`} onClick={() => { if (finding.at !== null) { fly(finding.at); } }}>show</button>}
    </li>
  );
}

function number(finding: FindingView, unit: Unit): string {
  if (finding.value === null) {
    return finding.state === "notChecked" ? "not checked" : "";
  }
  const is = (value: number) => (finding.unit === "mm" ? small(value, unit) : `${fixed(value, 1)}${finding.unit}`);
  const plusMinus = finding.plusMinus === null ? "" : ` ± ${is(finding.plusMinus)}`;
  const limit = finding.limit === null ? "" : `, ${finding.isLeast ? "at least" : "at most"} ${finding.unit === "mm" ? length(finding.limit, unit, 1) : is(finding.limit)}`;
  return `${is(finding.value)}${plusMinus}${limit}`;
}

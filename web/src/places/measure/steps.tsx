// From nothing to a route: what comes first, ticked when it is there.

import { useShop } from "../../shop";

export function Steps() {
  const { view } = useShop();
  const { measure, names } = view;
  const count = (list: string) => (names[list] ?? []).length;
  const found = measure.places.filter((place) => place.at !== null).length;
  const heights = measure.readings.filter((reading) => reading.what.startsWith("height")).length;
  const steps = [
    {
      what: "Mark the chassis",
      how: "Punch and ring at least four marks: a pair left and right in front, a pair behind; better six, at different heights. Say which side each is on.",
      isDone: count("mark") >= 4,
    },
    { what: "Say how the car stands", how: "On its wheels for ground clearance; on stands or the lift for the rest.", isDone: count("setup") > 0 },
    { what: "Measure between the marks", how: "Every mark to every other that the tape reaches, crosswise too: six lines for four marks.", isDone: measure.readings.length >= 6 },
    { what: "Take heights", how: "Of three marks or more above the floor, not in line.", isDone: heights >= 3 },
    { what: "Choose the axes", how: "Two pairs of marks, front to rear: Add to the car, axes.", isDone: found > 0 },
    { what: "Measure the ends", how: "Add each flange and the tip. A flange: three clock marks or more round its rim, from three marks each.", isDone: count("end") >= 2 },
    { what: "Measure what is in the way", how: "Three lines or more to each corner, from different marks; then build bodies from them.", isDone: count("body") > 0 },
    { what: "Say what tube and parts there are", how: "On Buy: your suppliers and your shelf.", isDone: count("tube") > 0 && count("item") > 0 },
    { what: "Add the run", how: "From end to end, through its parts. Then see Route.", isDone: count("run") > 0 },
  ];
  const open = steps.filter((step) => !step.isDone);
  if (open.length === 0) {
    return null;
  }
  return (
    <section class="card">
      <h2>From bare car to first route</h2>
      <ol class="steps">
        {steps.map((step) => (
          <li key={step.what} class={step.isDone ? "done" : step === open[0] ? "now" : ""}>
            <strong>{step.what}</strong>{step.isDone ? <span> done</span> : null}
            {step === open[0] ? <p>{step.how}</p> : null}
          </li>
        ))}
      </ol>
      <p class="caution">Never reach under a car that is held only by a jack: crib it, block it or put it on stands first.</p>
    </section>
  );
}

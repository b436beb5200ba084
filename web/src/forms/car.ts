// What is written into build.toml by forms.

import type { FormSpec, Values } from "./fields";
import { is } from "./fields";

const SIDES = [["left", "left"], ["right", "right"], ["centre", "centre"]] as const;
const CLASSES = [
  ["structure", "structure"], ["floor", "floor"], ["driveline", "driveline"], ["moving", "moving part"], ["tyre", "tyre"],
  ["soft", "soft, no shield (wiring, rubber, plastic)"], ["soft-shielded", "soft, behind a shield"], ["fuel-brake", "fuel or brake part"],
  ["heat", "hot metal"], ["ground", "ground"], ["bonnet", "bonnet"], ["service", "room that must stay free for service"],
] as const;
const WAYS = [["rearwards", "rearwards"], ["forwards", "forwards"], ["left", "left"], ["right", "right"], ["up", "up"], ["down", "down"]] as const;
const MATERIALS = [["304", "304 stainless"], ["321", "321 stainless"], ["409", "409 stainless"], ["mild", "mild steel"], ["cast iron", "cast iron"], ["aluminised", "aluminised steel"]] as const;
const PLACES = ["mark", "point"] as const;
/** What scanning programs write; no file says which. */
const FILE_UNITS = [["mm", "a millimetre"], ["cm", "a centimetre"], ["m", "a metre"], ["in", "an inch"]] as const;


/** An outlet of a steel that is welded. */
const mayBeSawn = (values: Values) =>
  values["kind"] !== "tip" && values["flows"] === "out" && ["304", "321", "409", "mild"].includes(values["material"] ?? "");

export const MARK: FormSpec = {
  list: "mark",
  title: "mark",
  words: "A punch mark, a hole or a scribed line on the car itself. Marks are measured from again and again.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "A left" },
    { key: "place", label: "Where it is", ask: "text", hint: "lower edge of the left rail", optional: true },
    { key: "side", label: "Side", ask: "choice", choices: SIDES, optional: true },
  ],
};

export const POINT: FormSpec = {
  list: "point",
  title: "place on something",
  words: "A corner, an edge or a centre of something that the tube must meet or miss.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "gearbox rear" },
    { key: "place", label: "Where it is", ask: "text", optional: true },
    { key: "side", label: "Side", ask: "choice", choices: SIDES, optional: true },
  ],
};

export const SETUP: FormSpec = {
  list: "setup",
  title: "how it stands",
  words: "Heights and plumb lines hold only for the way that the car stands. Ground clearance comes from one on its wheels.",
  caution: "Never reach under a car that is held only by a jack.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "on its wheels" },
    { key: "stance", label: "It stands on", ask: "choice", choices: [["wheels", "its wheels"], ["lift", "the lift"], ["stands", "stands"]] },
  ],
};

export const END: FormSpec = {
  list: "end",
  title: "end",
  words: "Where a run begins or ends: a flange of the engine, a sawn tube, the tip. Measure a flange round its rim at three clock marks or more, from three marks each; a tip is a wish: a place and a direction.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "left flange" },
    { key: "kind", label: "It is a", ask: "choice", choices: [["flange", "flange"], ["sawn tube", "sawn tube"], ["tip", "tip"]] },
    { key: "flows", label: "Gas", ask: "choice", choices: [["out", "comes out here: a run begins"], ["in", "goes in here: a run ends"]] },
    { key: "od", label: "Outside diameter of the tube", ask: "text", hint: "63.5 mm" },
    { key: "rim", label: "Diameter of the rim that is measured", ask: "text", hint: "104 mm", optional: true, when: is("kind", "flange", "sawn tube") },
    { key: "at", label: "Its centre is wished at", ask: "name", of: PLACES, when: is("kind", "tip") },
    { key: "points", label: "Gas flows there", ask: "choice", choices: WAYS, when: is("kind", "tip") },
    { key: "within", label: "The pieces may end off it by", ask: "text", hint: "10 mm", optional: true, when: is("kind", "tip") },
    { key: "room", label: "It may lie anywhere between two places", ask: "names", of: PLACES, hint: "two opposite corners, as along the valance", optional: true, when: is("kind", "tip") },
    { key: "may-turn.up", label: "It may be turned up or down by", ask: "text", hint: "5 deg", optional: true, when: is("kind", "tip") },
    { key: "may-turn.right", label: "It may be turned to either side by", ask: "text", hint: "10 deg", optional: true, when: is("kind", "tip") },
    { key: "material", label: "Material", ask: "choice", choices: MATERIALS, optional: true },
    { key: "held-by", label: "What holds there what meets it", ask: "choice", choices: [["bolts", "bolts"], ["sprung bolts", "sprung bolts over a ball and ring"], ["band clamp", "a band clamp round two collars"], ["slip", "slip: a tube over or into the sawn tube, and a clamp"]], optional: true, when: is("kind", "flange", "sawn tube") },
    { key: "saw-off.back", label: "It may be sawn off, up to so far back", ask: "text", hint: "40 mm; cast iron never", optional: true, when: mayBeSawn },
    { key: "saw-off.mitre", label: "What is welded on may lean away by", ask: "text", hint: "15 deg", optional: true, when: (values) => mayBeSawn(values) && (values["saw-off.back"] ?? "") !== "" },
    { key: "carrier", label: "Moves with", ask: "name", of: ["carrier"], optional: true },
    { key: "place", label: "Where it is", ask: "text", optional: true },
  ],
};

export const BODY: FormSpec = {
  list: "body",
  title: "in the way",
  words: "What the tube must keep away from, built from places that are measured and a few sizes.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "gearbox" },
    {
      key: "kind", label: "Shape", ask: "choice",
      choices: [
        ["box", "box between two opposite corners"], ["tube", "round tube touched along one side"], ["cylinder", "round bar between two centres"],
        ["capsule", "round bar with round ends"], ["sphere", "ball"], ["rail", "box rail along one edge"], ["tank", "tank on its corners"],
        ["outline", "plate or block by its corners"], ["tyre", "tyre"], ["half-space", "everything beyond a plane"], ["ground", "ground"], ["scan", "scan from a phone"],
      ],
    },
    { key: "class", label: "It is", ask: "choice", choices: CLASSES },
    { key: "corner", label: "One corner", ask: "name", of: PLACES, when: is("kind", "box") },
    { key: "opposite", label: "The opposite corner", ask: "name", of: PLACES, when: is("kind", "box") },
    { key: "from", label: "From", ask: "name", of: PLACES, when: is("kind", "tube", "cylinder", "capsule", "rail") },
    { key: "to", label: "To", ask: "name", of: PLACES, when: is("kind", "tube", "cylinder", "capsule", "rail") },
    { key: "touched", label: "The places lie on its side that is", ask: "choice", choices: [["below", "below"], ["above", "above"], ["left", "left"], ["right", "right"], ["front", "front"], ["rear", "rear"]], when: is("kind", "tube") },
    { key: "girth", label: "Tape round it", ask: "text", hint: "119 mm", when: is("kind", "tube") },
    { key: "diameter", label: "Diameter", ask: "text", hint: "64 mm", when: is("kind", "cylinder", "capsule", "sphere") },
    { key: "at", label: "Centre", ask: "name", of: PLACES, when: is("kind", "sphere") },
    { key: "edge", label: "The places lie on its edge that is", ask: "choice", choices: [["lower outer", "lower outer"], ["lower inner", "lower inner"], ["upper outer", "upper outer"], ["upper inner", "upper inner"]], when: is("kind", "rail") },
    { key: "width", label: "Width across the car", ask: "text", hint: "40 mm", when: is("kind", "rail") },
    { key: "height", label: "Height", ask: "text", hint: "40 mm", when: is("kind", "rail") },
    { key: "corners", label: "Corners in order", ask: "names", of: PLACES, when: is("kind", "tank", "outline") },
    { key: "depth", label: "Depth", ask: "text", hint: "170 mm", when: is("kind", "tank", "outline") },
    { key: "depth-goes", label: "From the corners the depth goes", ask: "choice", choices: [["up", "up"], ["down", "down"]], when: is("kind", "tank", "outline") },
    { key: "hub", label: "A place on the wheel's axis", ask: "name", of: PLACES, when: is("kind", "tyre") },
    { key: "marking", label: "Marking on its wall", ask: "text", hint: "225/45 R17", when: is("kind", "tyre") },
    { key: "side", label: "Side of the car", ask: "choice", choices: SIDES.slice(0, 2), when: is("kind", "tyre") },
    { key: "inboard", label: "From the hub place inwards to the middle of the tyre", ask: "text", hint: "45 mm", when: is("kind", "tyre") },
    { key: "through", label: "Three places in the plane", ask: "names", of: PLACES, when: is("kind", "half-space") },
    { key: "keep-out", label: "Taken is everything", ask: "choice", choices: [["above", "above"], ["below", "below"], ["left", "to the left"], ["right", "to the right"], ["front", "in front"], ["rear", "behind"]], when: is("kind", "half-space") },
    { key: "setup", label: "The floor, with the car", ask: "name", of: ["setup"], when: is("kind", "ground") },
    { key: "file", label: "Scan in the folder", ask: "name", of: ["scan"], when: is("kind", "scan") },
    { key: "unit", label: "One unit of the file is", ask: "choice", choices: FILE_UNITS, unset: true, when: is("kind", "scan") },
    { key: "noise", label: "Its surface may be off by (± 19 in 20)", ask: "text", hint: "3 mm", when: is("kind", "scan") },
    { key: "places", label: "Marks seen in it", ask: "seen", of: PLACES, when: is("kind", "scan") },
    { key: "carrier", label: "Moves with", ask: "name", of: ["carrier"], optional: true },
    { key: "gap", label: "Gap of its own", ask: "text", hint: "as its kind asks", optional: true },
    { key: "no-tip", label: "No tip may lie under it or nearer than", ask: "text", hint: "300 mm for doors, filler, what people sit over", optional: true },
  ],
};

export const CARRIER: FormSpec = {
  list: "carrier",
  title: "what moves",
  words: "Engine, axle, wheel or a part that hangs: what moves when the car is driven. Gaps are kept in every position.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "engine" },
    { key: "kind", label: "It is", ask: "choice", choices: [["engine", "the engine on its mounts"], ["axle", "an axle"], ["wheel", "a wheel"], ["hung", "a part that hangs"]] },
    { key: "axis", label: "Axis it rocks about, front then rear", ask: "names", of: PLACES, when: is("kind", "engine"), optional: true },
    { key: "rock", label: "Least and most rock", ask: "pair", hint: "−2 deg", when: is("kind", "engine"), optional: true },
    { key: "bump", label: "Travel upwards", ask: "text", hint: "60 mm", when: is("kind", "axle", "wheel"), optional: true },
    { key: "droop", label: "Travel downwards", ask: "text", hint: "60 mm", when: is("kind", "axle", "wheel"), optional: true },
    { key: "sway", label: "How far it sways", ask: "text", hint: "5 mm", when: is("kind", "hung") },
  ],
};

export const COMPONENT: FormSpec = {
  list: "component",
  title: "part in a run",
  words: "A flex section, catalyst, resonator, silencer or crossover that runs go through; a merge, fork or cone where they meet.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "cat" },
    { key: "item", label: "Item", ask: "name", of: ["item"] },
    { key: "carrier", label: "Moves with", ask: "name", of: ["carrier"], optional: true },
    { key: "zone", label: "Room it must lie in", ask: "names", of: PLACES, hint: "two opposite corners", optional: true },
    { key: "roll", label: "Rolled, clockwise looking downstream", ask: "text", hint: "0 deg", optional: true },
    { key: "stands", label: "Stretch that stays: the ends where gas comes in and goes out", ask: "names", of: ["end"], optional: true },
    { key: "along", label: "Places along it, in the order of flow", ask: "names", of: PLACES, optional: true },
    { key: "or", label: "Other crossovers that may stand in its place", ask: "names", of: ["component"], optional: true },
  ],
};

export const RUN: FormSpec = {
  list: "run",
  title: "run",
  words: "From one end to another, through its parts in the order of flow. Banks that share a tail end at a merge, and the tail starts from it.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "exhaust" },
    { key: "from", label: "From", ask: "name", of: ["end", "outlet"] },
    { key: "to", label: "To", ask: "name", of: ["end", "inlet"] },
    { key: "tube", label: "Tube", ask: "name", of: ["tube"] },
    { key: "through", label: "Through", ask: "names", of: ["passed"], hint: "in the order of flow", optional: true },
    { key: "max-bends", label: "Most bends", ask: "count", optional: true },
    { key: "passes", label: "A room it must pass through", ask: "names", of: PLACES, hint: "two opposite corners", optional: true, unwritten: true },
    { key: "joints-in", label: "A room that must hold a joint, where hands reach", ask: "names", of: PLACES, hint: "two opposite corners", optional: true, unwritten: true },
  ],
  also: (values) =>
    ["passes", "joints-in"].flatMap((key) => {
      const corners = (values[key] ?? "").split("\n").filter((name) => name !== "");
      return corners.length === 0 ? [] : [{ key, value: [corners] }];
    }),
};

export const CAR_FORMS: readonly FormSpec[] = [MARK, POINT, SETUP, END, BODY, CARRIER, COMPONENT, RUN];

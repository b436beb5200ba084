// What is written into stock.toml by forms.

import type { Field, Value } from "../api";
import type { FormSpec, Values } from "./fields";
import { is } from "./fields";

const MATERIALS = [["304", "304 stainless"], ["321", "321 stainless"], ["409", "409 stainless"], ["mild", "mild steel"], ["aluminised", "aluminised steel"]] as const;
const CANS = ["flex", "catalyst", "resonator", "silencer"] as const;
const SIDES = ["crossover", "merge", "fork"] as const;
const PARTS = [...CANS, ...SIDES, "cone"] as const;
const ROUND = "round";

export const TUBE: FormSpec = {
  list: "tube",
  title: "tube size",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "63.5x1.5 304" },
    { key: "od", label: "Outside diameter", ask: "text", hint: "63.5 mm" },
    { key: "wall", label: "Wall", ask: "text", hint: "1.5 mm" },
    { key: "material", label: "Material", ask: "choice", choices: MATERIALS },
  ],
};

export const ITEM: FormSpec = {
  list: "item",
  title: "item",
  words: "Something that can be bought: a bend, a length of tube, a part. Measure one before you trust its name.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "bend 63 45" },
    { key: "kind", label: "It is a", ask: "choice", choices: [["bend", "bend"], ["straight", "straight length"], ["flex", "flex section"], ["catalyst", "catalyst"], ["resonator", "resonator"], ["silencer", "silencer"], ["crossover", "crossover (X or H)"], ["hand-made crossover", "crossover of two bends, made by hand"], ["merge", "merge, two into one"], ["fork", "fork, one into two"], ["cone", "cone to another size"], ["stretch", "stretch that stands in the car and stays"]] },
    { key: "tube", label: "Tube size", ask: "name", of: ["tube"] },
    { key: "other", label: "Tube size of its one other port", ask: "name", of: ["tube"], when: is("kind", "merge", "fork", "cone"), optional: true, unwritten: true },
    { key: "angle", label: "Angle", ask: "text", hint: "45 deg", when: is("kind", "bend") },
    { key: "clr", label: "Centre-line radius", ask: "text", hint: "95.3 mm", when: is("kind", "bend") },
    { key: "legs", label: "Straight legs at both ends", ask: "pair", hint: "100 mm", when: is("kind", "bend") },
    { key: "bend", label: "Bend that both halves are made of", ask: "name", of: ["item"], when: is("kind", "hand-made crossover") },
    { key: "leg", label: "Leg that stays on at both ends of each", ask: "text", hint: "60 mm", when: is("kind", "hand-made crossover") },
    { key: "taken-off", label: "Taken off the back of each at its apex", ask: "text", hint: "8 mm", when: is("kind", "hand-made crossover") },
    { key: "length", label: "Length", ask: "text", hint: "1000 mm", when: is("kind", "straight", "stretch", ...PARTS) },
    { key: "body.shape", label: "Its body is", ask: "choice", choices: [[ROUND, "round"], ["oval", "oval"], ["box", "a box"]], when: is("kind", ...CANS) },
    { key: "body.diameter", label: "Diameter of its body", ask: "text", hint: "110 mm", when: (values) => is("kind", ...CANS)(values) && is("body.shape", ROUND)(values) },
    { key: "body.width", label: "Width of its body", ask: "text", hint: "220 mm", when: (values) => is("kind", ...CANS)(values) && is("body.shape", "oval", "box")(values) },
    { key: "body.height", label: "Height of its body", ask: "text", hint: "110 mm", when: (values) => is("kind", ...CANS)(values) && is("body.shape", "oval", "box")(values) },
    { key: "neck", label: "Neck at each end", ask: "text", hint: "35 mm", when: is("kind", ...CANS), optional: true },
    { key: "aside", label: "From its middle to each side, centre to centre", ask: "text", hint: "38 mm", when: is("kind", ...SIDES), unwritten: true },
    { key: "lean", label: "How far each side leans from its length", ask: "text", hint: "12 deg", when: is("kind", ...SIDES), unwritten: true },
    { key: "mass", label: "Mass", ask: "text", hint: "2.1 kg", when: is("kind", ...PARTS), optional: true },
  ],
  also: ports,
};

/** The ports of a part where runs meet, from what is asked of it. */
function ports(values: Values): Field[] {
  const said = (key: string) => (values[key] ?? "").trim().replace(/^\+\s*/, "");
  const [kind, length, aside, lean, other, tube] = ["kind", "length", "aside", "lean", "other", "tube"].map(said) as [string, string, string, string, string, string];
  const nought = "0 mm";
  const minus = (quantity: string) => (quantity.startsWith("-") ? quantity.slice(1).trim() : `-${quantity}`);
  const side = (right: boolean) => (right ? aside : minus(aside));
  const one = (name: string, at: string, flows: string): Value => ({ name, at: [at, nought, nought], flows, tube: other === "" ? tube : other });
  const both = (at: string, flows: string, inwards: boolean): Value[] =>
    ["L", "R"].map((name) => ({
      name,
      at: [at, side(name === "R"), nought],
      flows,
      turn: { up: "0 deg", right: (name === "L") === inwards ? lean : minus(lean) },
    }));
  switch (kind) {
    case "crossover":
      return [{ key: "ports", value: ["L", "R"].map((name) => ({ name, in: [nought, side(name === "R"), nought], out: [length, side(name === "R"), nought], toe: lean })) }];
    case "merge":
      return [{ key: "ports", value: [...both(nought, "in", true), one("out", length, "out")] }];
    case "fork":
      return [{ key: "kind", value: "merge" }, { key: "ports", value: [one("in", nought, "in"), ...both(length, "out", false)] }];
    case "cone":
      return [{ key: "ports", value: [{ name: "in", at: [nought, nought, nought], flows: "in" }, one("out", length, "out")] }];
    default:
      return [];
  }
}

export const SUPPLIER: FormSpec = {
  list: "supplier",
  title: "supplier",
  fields: [
    { key: "name", label: "Name", ask: "text" },
    { key: "delivery-charge", label: "Delivery, once per order", ask: "text", hint: "9.50 EUR", optional: true },
  ],
};

export const OFFER: FormSpec = {
  list: "offer",
  title: "offer",
  fields: [
    { key: "item", label: "Item", ask: "name", of: ["item"] },
    { key: "supplier", label: "Supplier", ask: "name", of: ["supplier"] },
    { key: "price", label: "Price of one", ask: "text", hint: "11.90 EUR" },
    { key: "quantity", label: "How many they have", ask: "count", optional: true },
    { key: "tax", label: "Tax to be added", ask: "text", hint: "19 %", optional: true },
    { key: "delivery", label: "When it comes", ask: "text", hint: "2 days", optional: true },
  ],
};

export const ON_HAND: FormSpec = {
  list: "on-hand",
  title: "on hand",
  words: "What lies in the shop: offcuts and leftovers, with sizes as measured. They are used first.",
  fields: [
    { key: "name", label: "Name", ask: "text", hint: "offcut 1" },
    { key: "kind", label: "It is a", ask: "choice", choices: [["straight", "straight length"], ["bend", "bend"], ["item", "whole item"]] },
    { key: "tube", label: "Tube size", ask: "name", of: ["tube"], when: is("kind", "straight", "bend") },
    { key: "length", label: "Length", ask: "text", hint: "268 mm", when: is("kind", "straight") },
    { key: "angle", label: "Angle as measured", ask: "text", hint: "47 deg", when: is("kind", "bend") },
    { key: "clr", label: "Centre-line radius as measured", ask: "text", hint: "95.3 mm", when: is("kind", "bend") },
    { key: "legs", label: "Straight legs at both ends", ask: "pair", hint: "100 mm", when: is("kind", "bend") },
    { key: "item", label: "Item", ask: "name", of: ["item"], when: is("kind", "item") },
    { key: "count", label: "How many", ask: "count", optional: true },
  ],
};

export const STOCK_FORMS: readonly FormSpec[] = [ON_HAND, TUBE, ITEM, SUPPLIER, OFFER];

// What is written into stock.toml by forms.

import type { FormSpec } from "./fields";
import { is } from "./fields";

const MATERIALS = [["304", "304 stainless"], ["321", "321 stainless"], ["409", "409 stainless"], ["mild", "mild steel"], ["aluminised", "aluminised steel"]] as const;
const PARTS = ["flex", "catalyst", "resonator", "silencer"] as const;

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
    { key: "kind", label: "It is a", ask: "choice", choices: [["bend", "bend"], ["straight", "straight length"], ["flex", "flex section"], ["catalyst", "catalyst"], ["resonator", "resonator"], ["silencer", "silencer"]] },
    { key: "tube", label: "Tube size", ask: "name", of: ["tube"] },
    { key: "angle", label: "Angle", ask: "text", hint: "45 deg", when: is("kind", "bend") },
    { key: "clr", label: "Centre-line radius", ask: "text", hint: "95.3 mm", when: is("kind", "bend") },
    { key: "legs", label: "Straight legs at both ends", ask: "pair", hint: "100 mm", when: is("kind", "bend") },
    { key: "length", label: "Length", ask: "text", hint: "1000 mm", when: is("kind", "straight", ...PARTS) },
    { key: "neck", label: "Neck at each end", ask: "text", hint: "35 mm", when: is("kind", ...PARTS), optional: true },
    { key: "mass", label: "Mass", ask: "text", hint: "2.1 kg", when: is("kind", ...PARTS), optional: true },
  ],
};

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

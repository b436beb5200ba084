// Forms that write one element of the files. What each asks is data; the program judges the values.

import { useState } from "preact/hooks";
import type { Field, Value } from "../api";
import { useShop } from "../shop";
import { Seen, seenPlaces } from "./seen";

export type Values = Record<string, string>;

export interface FieldSpec {
  /** What is written; `table.key` for a key of a small table. */
  key: string;
  label: string;
  /** How it is asked: words or a quantity, one of a list, names of something, a count. */
  ask: "text" | "choice" | "name" | "names" | "count" | "pair" | "seen";
  /** For `choice`: what is written and what is shown. */
  choices?: readonly (readonly [string, string])[];
  /** For `name` and `names`: which lists the names come from. */
  of?: readonly string[];
  hint?: string;
  optional?: boolean;
  /** A choice that is never made for the person. */
  unset?: boolean;
  /** Only asked: what is written comes from the form's `also`. */
  unwritten?: boolean;
  /** Asked only then. */
  when?: (values: Values) => boolean;
}

export interface FormSpec {
  list: string;
  title: string;
  words?: string;
  caution?: string;
  fields: readonly FieldSpec[];
  /** What is written besides, from all answers; it takes the place of what has the same key. */
  also?: (values: Values) => Field[];
}

/** Asks for a field only when `key` is one of the `wanted`. */
export const is = (key: string, ...wanted: string[]) => (values: Values) => wanted.includes(values[key] ?? "");

/** What is written for a form. */
export function written(spec: FormSpec, values: Values): Field[] {
  const fields: Field[] = [];
  for (const field of spec.fields) {
    const text = (values[field.key] ?? "").trim();
    if (text === "" || field.unwritten === true || (field.when !== undefined && !field.when(values))) {
      continue;
    }
    const value = valueOf(field, text);
    const [key, inner] = field.key.split(".", 2);
    if (key === undefined || inner === undefined) {
      fields.push({ key: field.key, value });
      continue;
    }
    const table = fields.find((one) => one.key === key);
    if (table === undefined) {
      fields.push({ key, value: { [inner]: value } });
    } else {
      table.value = { ...(table.value as Record<string, Value>), [inner]: value };
    }
  }
  const also = spec.also?.(values) ?? [];
  const isNew = (one: Field) => !fields.some((field) => field.key === one.key);
  return [...fields.map((field) => also.find((one) => one.key === field.key) ?? field), ...also.filter(isNew)];
}

function valueOf(field: FieldSpec, text: string): Value {
  if (field.ask === "count") {
    return Number.parseInt(text, 10);
  }
  if (field.ask === "names" || field.ask === "pair") {
    return text.split("\n").map((part) => part.trim()).filter((part) => part !== "");
  }
  return field.ask === "seen" ? seenPlaces(text) : text;
}

export function Form({ spec, done }: { spec: FormSpec; done?: () => void }) {
  const { act } = useShop();
  const [values, setValues] = useState<Values>(() => firstChoices(spec));
  const set = (key: string, value: string) => setValues((old) => ({ ...old, [key]: value }));
  return (
    <form
      onSubmit={async (event) => {
        event.preventDefault();
        if (await act({ do: "add", list: spec.list, fields: written(spec, values) })) {
          setValues(firstChoices(spec));
          done?.();
        }
      }}
    >
      {spec.words === undefined ? null : <p>{spec.words}</p>}
      {spec.fields.filter((field) => field.when === undefined || field.when(values)).map((field) => (
        <Input key={field.key} field={field} value={values[field.key] ?? ""} set={(value) => set(field.key, value)} />
      ))}
      {spec.caution === undefined ? null : <p class="caution">{spec.caution}</p>}
      <button type="submit" class="main">Add it</button>
    </form>
  );
}

function firstChoices(spec: FormSpec): Values {
  return Object.fromEntries(
    spec.fields.flatMap((field) => {
      const first = field.ask === "choice" && field.optional !== true && field.unset !== true ? field.choices?.[0]?.[0] : undefined;
      return first === undefined ? [] : [[field.key, first]];
    }),
  );
}

function Input({ field, value, set }: { field: FieldSpec; value: string; set: (value: string) => void }) {
  const { view } = useShop();
  const names = (field.of ?? []).flatMap((list) => view.names[list] ?? []);
  const isRequired = field.optional !== true;
  if (field.ask === "choice" || field.ask === "name") {
    const choices = field.choices ?? names.map((name) => [name, name] as const);
    return (
      <label class="line">
        {field.label}
        <select value={value} required={isRequired} onChange={(event) => set(event.currentTarget.value)}>
          {field.ask === "choice" && isRequired && field.unset !== true ? null : <option value="">{isRequired ? "choose…" : "not said"}</option>}
          {choices.map(([written, shown]) => <option key={written} value={written}>{shown}</option>)}
        </select>
      </label>
    );
  }
  if (field.ask === "names") {
    const picked = value === "" ? [] : value.split("\n");
    const toggle = (name: string) => set((picked.includes(name) ? picked.filter((one) => one !== name) : [...picked, name]).join("\n"));
    return (
      <fieldset class="pick">
        <legend>{field.label}{field.hint === undefined ? null : <small> {field.hint}</small>}</legend>
        {names.length === 0 ? <span>none yet</span> : names.map((name) => (
          <button type="button" key={name} aria-pressed={picked.includes(name)} onClick={() => toggle(name)}>
            {name}{picked.includes(name) ? <small> {picked.indexOf(name) + 1}</small> : null}
          </button>
        ))}
      </fieldset>
    );
  }
  if (field.ask === "seen") {
    return <Seen label={field.label} names={names} value={value} set={set} />;
  }
  if (field.ask === "pair") {
    const [one = "", two = ""] = value.split("\n");
    return (
      <label class="line">
        {field.label}
        <input value={one} required={isRequired} placeholder={field.hint} aria-label={`${field.label}, at end A`} onInput={(event) => set(`${event.currentTarget.value}\n${two}`)} />
        <input value={two} required={isRequired} placeholder={field.hint} aria-label={`${field.label}, at end B`} onInput={(event) => set(`${one}\n${event.currentTarget.value}`)} />
      </label>
    );
  }
  return (
    <label class="line">
      {field.label}
      <input
        value={value}
        required={isRequired}
        maxLength={200}
        inputMode={field.ask === "count" ? "numeric" : "text"}
        placeholder={field.hint}
        onInput={(event) => set(event.currentTarget.value)}
      />
    </label>
  );
}

// Several forms in one card, one shown at a time.

import { useState } from "preact/hooks";
import type { ComponentChildren } from "preact";
import type { FormSpec } from "./fields";
import { Form } from "./fields";

interface Props {
  title: string;
  forms: readonly FormSpec[];
  first: string;
  /** One more tab with content of its own. */
  more?: { title: string; content: ComponentChildren };
}

export function FormTabs({ title, forms, first, more }: Props) {
  const [shown, setShown] = useState(first);
  const spec = forms.find((form) => form.title === shown);
  return (
    <section class="card add">
      <h2>{title}</h2>
      <div class="tabs" role="group" aria-label={title}>
        {[...forms.map((form) => form.title), ...(more === undefined ? [] : [more.title])].map((name) => (
          <button type="button" key={name} aria-pressed={name === shown} onClick={() => setShown(name)}>{name}</button>
        ))}
      </div>
      {spec === undefined ? more?.content : <Form key={spec.title} spec={spec} />}
    </section>
  );
}

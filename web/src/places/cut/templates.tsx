// Wrap-round templates at true scale: seen, printed from the browser, or taken as a drawing.

import { useRef, useState } from "preact/hooks";
import type { TemplateView, TemplatesView } from "../../api";
import type { PaperName } from "../../print";
import { printAtTrueScale } from "../../print";
import { today, useAsked, useShop } from "../../shop";
import { length } from "../../units";

const PAPERS: readonly (readonly [PaperName, string])[] = [["a4", "A4"], ["letter", "US Letter"]];

export function Templates() {
  const { view, unit } = useShop();
  const [paper, setPaper] = useState<PaperName>(unit === "in" ? "letter" : "a4");
  const asked = `paper=${paper}&unit=${unit}&on=${today()}`;
  const found = useAsked<TemplatesView>(`api/templates?${asked}`, view.version);
  // On other paper the old list stays, and what was opened in it, until the new one is there.
  const last = useRef<TemplatesView | null>(null);
  last.current = found.value ?? last.current;
  const list = last.current;
  if (list === null) {
    return <p class="card">{found.trouble ?? "Working out the templates…"}</p>;
  }
  return (
    <section class={`card noprint ${found.isFresh ? "" : "stale"}`}>
      <h2>Templates to wrap round a tube</h2>
      {list.words.map((words) => <p key={words}>{words}</p>)}
      {list.trouble === null ? null : <p class="bad">{list.trouble}</p>}
      {list.templates.length === 0 ? null : (
        <>
          <p class="caution">
            Print at 100 %, actual size, not fitted to the page. Before you cut steel lay a rule on both check rulers of every sheet: 100 mm and 4 in must
            agree to the width of a line. A screen does not show true size.
          </p>
          <div class="tabs" role="group" aria-label="paper of the templates">
            {PAPERS.map(([value, words]) => <button type="button" key={value} aria-pressed={paper === value} onClick={() => setPaper(value)}>{words}</button>)}
          </div>
          {list.templates.map((template) => <Template key={template.file} template={template} paper={paper} asked={asked} />)}
        </>
      )}
    </section>
  );
}

function Template({ template, paper, asked }: { template: TemplateView; paper: PaperName; asked: string }) {
  const { view, unit } = useShop();
  const [trouble, setTrouble] = useState<string | null>(null);
  const of = `api/template?${asked}&number=${template.number}&of=${view.version}`;
  const size = `${length(template.width, unit)} × ${length(template.height, unit)}`;
  const print = async () => {
    const pages = Array.from({ length: template.pages }, (_, page) => `${of}&page=${page}`);
    setTrouble(await printAtTrueScale(pages, paper));
  };
  return (
    <details class="template">
      <summary>{template.title}</summary>
      <p>{template.lay}</p>
      <div class="buttons">
        <button type="button" class="main" onClick={print}>Print at true scale ({template.pages} {template.pages === 1 ? "page" : "pages"})</button>
        <a class="button" download={`${template.file}.svg`} href={of}>SVG</a>
        <a class="button" download={`${template.file}.dxf`} href={`${of}&as=dxf`}>DXF</a>
      </div>
      {trouble === null ? null : <p class="bad" role="alert">{trouble}</p>}
      <p>True size with its check rulers: {size}.</p>
      <div class="scroll" tabIndex={0} role="region" aria-label={`${template.title}, in one piece`}>
        <img class="true" src={of} alt={`${template.title}: ${size}, with check rulers of 100 mm and 4 in`} />
      </div>
    </details>
  );
}

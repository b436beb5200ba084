// The shop packet as a PDF: what is printed for the bench.

import { useState } from "preact/hooks";
import type { Refusal } from "./api";

export function PacketButton() {
  const [words, setWords] = useState<string | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const print = async () => {
    setIsBusy(true);
    setWords(null);
    try {
      const answer = await fetch("api/packet.pdf");
      if (answer.status === 409) {
        setWords(((await answer.json()) as Refusal).words);
      } else if (answer.ok) {
        const link = document.createElement("a");
        link.href = URL.createObjectURL(await answer.blob());
        link.download = "packet.pdf";
        link.click();
      } else {
        setWords(await answer.text());
      }
    } catch {
      setWords("The program cannot be reached.");
    }
    setIsBusy(false);
  };
  return (
    <>
      <button type="button" disabled={isBusy} onClick={print}>{isBusy ? "Setting the packet…" : "Shop packet (PDF)"}</button>
      {words === null ? null : <span role="status">{words}</span>}
    </>
  );
}

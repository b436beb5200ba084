// Printing drawings at true scale: one sheet of paper each, as large as the drawing says, no margin added.

export type PaperName = "a4" | "letter";

/** Prints the drawings at these addresses, each on a page of its own; null, or why it did not. */
export async function printAtTrueScale(sources: readonly string[], paper: PaperName): Promise<string | null> {
  const sheets = document.createElement("div");
  sheets.className = `truepages ${paper}`;
  const images = sources.map((source) => {
    const image = new Image();
    image.alt = "";
    image.src = source;
    sheets.append(image);
    return image;
  });
  document.body.append(sheets);
  document.documentElement.dataset["print"] = "truepages";
  const tidy = () => {
    sheets.remove();
    delete document.documentElement.dataset["print"];
  };
  try {
    await Promise.all(images.map((image) => image.decode()));
  } catch {
    tidy();
    return "The sheets could not be fetched: is the program still open?";
  }
  window.addEventListener("afterprint", tidy, { once: true });
  window.print();
  return null;
}

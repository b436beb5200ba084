// What stands on the list in words.

import type { SubstituteView } from "../../api";

/** What to take when something is out, what to leave, and what that costs. */
export function substituteWords(substitute: SubstituteView): string {
  if (substitute.missing.length > 0) {
    return `no substitute; ${substitute.missing.join(", ")} cannot be made. Ask elsewhere.`;
  }
  const more = substitute.more.length === 0 ? "nothing in its place, the rest serves" : substitute.more.join(", ");
  const less = substitute.less.filter((words) => !substitute.out.some((out) => words.includes(`× ${out} (`)));
  return `${more}${less.length === 0 ? "" : `; leave ${less.join(", ")}`}; ${substitute.difference} with the welds, ${substitute.price} in all${substitute.isCheaper ? ": cheaper than the list, which is not proven to be the cheapest; it may be bought though nothing is out" : ""}`;
}

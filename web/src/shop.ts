// What every place of the page shares: the view, the unit, and the ways to change something.

import { createContext } from "preact";
import { useContext, useEffect, useState } from "preact/hooks";
import type { Deed, Solving, View } from "./api";
import { tell } from "./talk";
import type { Unit } from "./units";

export interface Shop {
  view: View;
  unit: Unit;
  solving: Solving | null;
  /** False while the program cannot be reached. */
  isThere: boolean;
  /** Deeds that wait to be sent. */
  waiting: Deed[];
  /** Does something to the car; true when it was saved or kept for later. */
  act: (deed: Deed) => Promise<boolean>;
  /** Asks the program for something that is no change of the car. */
  ask: (path: string, method?: string, body?: unknown) => Promise<void>;
  goTo: (place: PlaceName) => void;
  /** Shows a place in the car in the round. */
  fly: (at: [number, number, number]) => void;
  flyTo: [number, number, number] | null;
}

export type PlaceName = "Measure" | "Route" | "Buy" | "Cut" | "Fit" | "Prove";

export const PLACES: readonly PlaceName[] = ["Measure", "Route", "Buy", "Cut", "Fit", "Prove"];

export const ShopContext = createContext<Shop | null>(null);

export function useShop(): Shop {
  const shop = useContext(ShopContext);
  if (shop === null) {
    throw new Error("outside the shop");
  }
  return shop;
}

/** Today as the record writes it. */
export function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export interface Asked<T> {
  value: T | null;
  /** True when the value belongs to what the page shows now. */
  isFresh: boolean;
  trouble: string | null;
}

/** Something that takes longer to work out: the last answer stays until the next one is there. */
const kept = new Map<string, { version: string; value: unknown }>();

export function useAsked<T>(path: string, version: string): Asked<T> {
  const [, redraw] = useState(0);
  const [trouble, setTrouble] = useState<string | null>(null);
  const last = kept.get(path);
  useEffect(() => {
    if (kept.get(path)?.version === version) {
      return;
    }
    let isWanted = true;
    tell<T>(path).then(
      (value) => {
        if (isWanted) {
          kept.set(path, { version, value });
          setTrouble(null);
          redraw((count) => count + 1);
        }
      },
      (error: unknown) => {
        if (isWanted) {
          setTrouble(error instanceof Error ? error.message : String(error));
        }
      },
    );
    return () => { isWanted = false; };
  }, [path, version]);
  return { value: (last?.value as T | undefined) ?? null, isFresh: last?.version === version, trouble };
}

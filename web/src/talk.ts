// Talking to the program. Addresses are relative, so that a demonstration below its own address is
// served by the same page. What cannot be sent is kept and offered again.

import type { Deed, News, Refusal } from "./api";

const WAITING = `tubewright-waiting ${location.pathname}`;

/** Something that the program tells. Throws a sentence when it does not. */
export async function tell<T>(path: string): Promise<T> {
  return read<T>(await fetch(path));
}

async function read<T>(found: Response): Promise<T> {
  if (found.status === 409) {
    throw new Error(((await found.json()) as Refusal).words);
  }
  if (!found.ok) {
    throw new Error(await found.text());
  }
  return (await found.json()) as T;
}

/** What the program answers to something that was typed. Throws a sentence when it does not. */
export function answer<T>(path: string, asked: unknown): Promise<T> {
  return posted<T>(path, "application/json", JSON.stringify(asked));
}

/** The same to a file that is sent as it is. */
export function send<T>(path: string, file: Blob): Promise<T> {
  return posted<T>(path, "application/octet-stream", file);
}

async function posted<T>(path: string, type: string, body: BodyInit): Promise<T> {
  let found: Response;
  try {
    found = await fetch(path, { method: "POST", headers: { "content-type": type }, body });
  } catch {
    throw new Error("The program cannot be reached.");
  }
  return read<T>(found);
}

/** How sending ended: done, kept until the program can be reached, or refused with a reason. */
export type Sent = { kind: "done" } | { kind: "kept" } | { kind: "refused"; refusal: Refusal };

/** A deed that waits, with the time when it was done. */
export interface Waiting {
  deed: Deed;
  at: string;
}

export async function sendDeed(deed: Deed): Promise<Sent> {
  const sent = await post("api/deed", deed);
  if (sent === "away") {
    keep([...waiting(), { deed, at: new Date().toISOString() }]);
    return { kind: "kept" };
  }
  return sent;
}

export async function ask(path: string, method = "POST", body?: unknown): Promise<Sent> {
  const sent = await post(path, body, method);
  return sent === "away"
    ? { kind: "refused", refusal: { words: "The program cannot be reached.", now: null } }
    : sent;
}

async function post(path: string, body: unknown, method = "POST"): Promise<Sent | "away"> {
  let answer: Response;
  try {
    answer = await fetch(path, {
      method,
      headers: body === undefined ? {} : { "content-type": "application/json" },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    return "away";
  }
  if (answer.ok) {
    return { kind: "done" };
  }
  if (answer.status === 409) {
    return { kind: "refused", refusal: (await answer.json()) as Refusal };
  }
  return { kind: "refused", refusal: { words: await answer.text(), now: null } };
}

/** Deeds that were done while the program was out of reach, oldest first. */
export function waiting(): Waiting[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(WAITING) ?? "[]");
    return Array.isArray(kept) ? (kept as Waiting[]) : [];
  } catch {
    return [];
  }
}

function keep(deeds: Waiting[]): void {
  localStorage.setItem(WAITING, JSON.stringify(deeds));
}

/** Sends what waits, in order. What is refused stays, with the reasons. */
export async function sendWaiting(): Promise<string[]> {
  const left: Waiting[] = [];
  const reasons: string[] = [];
  const deeds = waiting();
  for (const [at, one] of deeds.entries()) {
    const sent = await post("api/deed", one.deed);
    if (sent === "away") {
      left.push(...deeds.slice(at));
      break;
    }
    if (sent.kind === "refused") {
      reasons.push(sent.refusal.words);
      left.push(one);
    }
  }
  keep(left);
  return reasons;
}

export function forgetWaiting(): void {
  keep([]);
}

/** Hears of changes; `isThere` tells whether the program can be reached. */
export function listen(hear: (news: News) => void, isThere: (there: boolean) => void): () => void {
  const source = new EventSource("api/news");
  source.onopen = () => {
    isThere(true);
    hear({ event: "changed" });
  };
  source.onerror = () => isThere(false);
  source.onmessage = (message: MessageEvent<string>) => hear(JSON.parse(message.data) as News);
  return () => source.close();
}

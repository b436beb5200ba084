// The program under test, a browser, and a folder of our own for each test.

import { spawn, spawnSync, execFileSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
export const PROGRAM = process.env.TUBEWRIGHT ?? join(ROOT, "target/release/tubewright");
export const SHOTS = process.env.SHOTS ?? join(ROOT, "target/page-shots");
export const LAPTOP = { width: 1440, height: 900 };
export const PHONE = { width: 390, height: 844 };
/** A slow machine may take this long over a search for ways, ms. */
export const SEARCH = 180_000;
/** And this long over anything else. */
const PATIENCE = 60_000;

const made = [];
const running = new Set();

/** A new build folder: empty, or like a demonstration car. */
export function newBuild(like) {
  const above = mkdtempSync(join(tmpdir(), "tubewright-page-"));
  made.push(above);
  const folder = join(above, "car");
  execFileSync(PROGRAM, ["new", folder, ...(like ? ["--like", like] : [])]);
  return folder;
}

/** Runs the program to its end. */
export function run(...what) {
  return execFileSync(PROGRAM, what, { encoding: "utf8", stdio: ["ignore", "pipe", "ignore"] });
}

/** The same for a command that may have findings to tell; anything worse throws. */
export function found(...what) {
  const ended = spawnSync(PROGRAM, what, { encoding: "utf8" });
  if (ended.status !== 0 && ended.status !== 1) {
    throw new Error(`${what.join(" ")} ended with ${ended.status}: ${ended.stderr}`);
  }
  return ended.stdout;
}

/** The card of a page with this heading. */
export const card = (page, heading) => page.locator("section.card", { has: page.getByRole("heading", { name: heading, exact: true }) });

/** Ends what a failed test left running, and removes the folders. */
export function cleanUp() {
  for (const child of running) {
    child.kill("SIGKILL");
  }
  for (const folder of made) {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Starts the page on a folder. */
export async function open(folder, more = []) {
  const child = spawn(PROGRAM, ["open", folder, ...more], { stdio: ["ignore", "pipe", "inherit"] });
  running.add(child);
  child.on("exit", () => running.delete(child));
  const address = await new Promise((found, failed) => {
    let text = "";
    child.stdout.on("data", (chunk) => {
      text += chunk;
      const match = /http:\S+/.exec(text);
      if (match) {
        found(match[0]);
      }
    });
    child.on("exit", (code) => failed(new Error(`ended with ${code} before it gave an address`)));
  });
  return {
    address,
    pid: child.pid,
    stop: () =>
      new Promise((gone) => {
        child.once("exit", gone);
        child.kill("SIGINT");
      }),
  };
}

export async function browser() {
  const path = [process.env.CHROMIUM, "/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find((path) => path && existsSync(path));
  return chromium.launch({ executablePath: path, args: ["--no-sandbox", "--enable-unsafe-swiftshader"] });
}

/** A page that keeps what it should not do: ask another machine, or log an error. */
export async function visit(chrome, address, size, colorScheme = "light") {
  const context = await chrome.newContext({ viewport: size, colorScheme, hasTouch: size.width < 500 });
  const page = await context.newPage();
  page.setDefaultTimeout(PATIENCE);
  const host = new URL(address).host;
  page.troubles = [];
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (!["data:", "blob:"].includes(url.protocol) && url.host !== host) {
      page.troubles.push(`asked ${request.url()}`);
    }
  });
  page.on("console", (message) => {
    // That the program is away is told on the page; the browser logs it too.
    if (message.type() === "error" && !/ERR_(CONNECTION_REFUSED|INCOMPLETE_CHUNKED|EMPTY_RESPONSE|CONNECTION_RESET)/.test(message.text())) {
      page.troubles.push(message.text());
    }
  });
  page.on("pageerror", (error) => page.troubles.push(String(error)));
  await page.goto(address);
  await page.getByRole("heading", { level: 1, name: /Measure|Route|Buy|Cut|Fit|Prove/ }).waitFor();
  return page;
}

/** Goes to a place of the page and waits until everything on it is worked out. */
export async function go(page, place) {
  await page.getByRole("navigation").getByRole("link", { name: new RegExp(`^${place}`) }).click();
  await page.getByRole("heading", { level: 1, name: place }).waitFor();
  await settled(page);
}

export async function settled(page) {
  await page.waitForFunction(
    () => document.querySelector(".stale") === null && !/Working out|Checking…/.test(document.querySelector("main")?.innerText ?? ""),
    null,
    { timeout: PATIENCE },
  );
}

/** Types a length on the page's own keypad. */
export async function type(scope, digits) {
  for (const digit of digits) {
    await scope.getByRole("button", { name: digit, exact: true }).click();
  }
  await scope.getByRole("button", { name: "Write it down" }).click();
}

/** A screenshot to be looked at. */
export async function shot(page, name) {
  mkdirSync(SHOTS, { recursive: true });
  await page.waitForFunction(() => [...document.images].every((image) => image.complete));
  await page.screenshot({ path: join(SHOTS, `${name}.png`), fullPage: true });
}

// How quick the page is with a large scan: prints what it measures, judges nothing.
//
//     TUBEWRIGHT=… CHROMIUM=… node test/speed.mjs
//
// The pick-up's scan with each triangle split into 49, so that it has half a million.

import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { LAPTOP, PHONE, browser, cleanUp, found, go, newBuild, open, visit } from "./program.mjs";

const SPLIT = 7;

/** A binary STL with each triangle of another split into SPLIT × SPLIT; in metres; the new corners lie up to 0.2 mm off. */
function finer(stl) {
  const count = stl.readUInt32LE(80);
  const out = Buffer.alloc(84 + 50 * count * SPLIT * SPLIT);
  out.writeUInt32LE(count * SPLIT * SPLIT, 80);
  let at = 84;
  // The same place gets the same offset in every triangle that it belongs to, so that no holes open.
  const off = (x, y, z) => { const wave = Math.sin(x * 12.9898 + y * 78.233 + z * 37.719) * 43758.5453; return (wave - Math.floor(wave) - 0.5) * 0.0004; };
  for (let triangle = 0; triangle < count; triangle += 1) {
    const from = 84 + 50 * triangle;
    const corner = (which) => [0, 1, 2].map((axis) => stl.readFloatLE(from + 12 + 12 * which + 4 * axis));
    const [a, b, c] = [corner(0), corner(1), corner(2)];
    const place = (i, j) => {
      const k = SPLIT - i - j;
      const even = [0, 1, 2].map((axis) => (a[axis] * k + b[axis] * i + c[axis] * j) / SPLIT);
      const isCorner = [i, j, k].includes(SPLIT);
      const rounded = even.map((value) => Math.round(value * 1e5) / 1e5);
      return isCorner ? even : [even[0], even[1], even[2] + off(...rounded)];
    };
    const put = (corners) => {
      for (const [which, [x, y, z]] of corners.entries()) {
        out.writeFloatLE(x, at + 12 + 12 * which);
        out.writeFloatLE(y, at + 16 + 12 * which);
        out.writeFloatLE(z, at + 20 + 12 * which);
      }
      at += 50;
    };
    for (let i = 0; i < SPLIT; i += 1) {
      for (let j = 0; j < SPLIT - i; j += 1) {
        put([place(i, j), place(i + 1, j), place(i, j + 1)]);
        if (i + j < SPLIT - 1) {
          put([place(i + 1, j), place(i + 1, j + 1), place(i, j + 1)]);
        }
      }
    }
  }
  return out;
}

const memory = (pid) => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))[1]) / 1024;
const peak = (pid) => Number(/VmHWM:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))[1]) / 1024;
const ms = (value) => `${value.toFixed(0)} ms`;
const middle = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

async function measured(chrome, like, isLarge) {
  const folder = newBuild(like);
  let triangles = 0;
  if (isLarge) {
    const name = readdirSync(join(folder, "scans")).find((one) => one.endsWith(".stl"));
    const stl = finer(readFileSync(join(folder, "scans", name)));
    writeFileSync(join(folder, "scans", name), stl);
    triangles = stl.readUInt32LE(80);
  }
  const routed = performance.now();
  found("route", folder, "--effort", "4000");
  console.log(`\n${like}${isLarge ? `, scan of ${triangles} triangles` : ""}; ways found in ${ms(performance.now() - routed)}`);
  const started = performance.now();
  const program = await open(folder);
  console.log(`  program ready ${ms(performance.now() - started)}`);
  for (const [words, size] of [["laptop", LAPTOP], ["phone size", PHONE]]) {
    const opened = performance.now();
    const page = await visit(chrome, program.address, size);
    console.log(`  ${words}: Measure stands ${ms(performance.now() - opened)} after opening`);
    const route = performance.now();
    await go(page, "Route");
    console.log(`  ${words}: Route wholly there ${ms(performance.now() - route)}`);
    await page.waitForFunction(() => [...document.images].every((image) => image.complete));
    await page.getByRole("button", { name: "move it by hand" }).click();
    const layer = page.getByRole("img", { name: /take by hand, from above/ });
    await layer.scrollIntoViewIfNeeded();
    const spots = await layer.evaluate((svg) => [...svg.querySelectorAll("circle.joint")].map((one) => { const box = one.getBoundingClientRect(); return { x: box.x + box.width / 2, y: box.y + box.height / 2 }; }));
    const spot = spots[Math.floor(spots.length / 2)];
    await page.mouse.move(spot.x, spot.y);
    await page.mouse.down();
    await page.waitForSelector(".gaps .rows li");
    const times = [];
    for (let step = 1; step <= 25; step += 1) {
      // From the move of the hand until the gaps for that place are on the screen.
      const took = page.evaluate(() => new Promise((done) => {
        const from = performance.now();
        const watcher = new MutationObserver(() => { watcher.disconnect(); requestAnimationFrame(() => done(performance.now() - from)); });
        watcher.observe(document.querySelector(".hand .drawn"), { subtree: true, attributes: true, childList: true });
        setTimeout(() => done(NaN), 5000);
      }));
      await page.mouse.move(spot.x + step, spot.y + step * 0.7);
      times.push(await took);
    }
    await page.keyboard.press("Escape");
    const sound = times.filter((time) => !Number.isNaN(time));
    const asked = await page.evaluate(() => performance.getEntriesByType("resource").filter((one) => one.name.endsWith("api/drag")).map((one) => one.duration));
    console.log(`  ${words}: drag to gaps on the screen ${ms(middle(sound))} in the middle of ${sound.length}, slowest ${ms(Math.max(...sound))}; asking alone ${ms(middle(asked))}`);
    // Turning it in the round: frames while the mouse turns it.
    const round = page.getByRole("img", { name: /in the round; drag to turn/ });
    await page.mouse.up();
    await round.scrollIntoViewIfNeeded();
    const box = await round.boundingBox();
    const frames = page.evaluate(() => new Promise((done) => { const all = []; const next = (now) => { all.push(now); all.length < 60 ? requestAnimationFrame(next) : done((all[59] - all[0]) / 59); }; requestAnimationFrame(next); }));
    await page.mouse.move(box.x + 100, box.y + 100);
    await page.mouse.down();
    for (let step = 0; step < 60; step += 1) {
      await page.mouse.move(box.x + 100 + 2 * step, box.y + 100 + step);
    }
    await page.mouse.up();
    console.log(`  ${words}: a frame while it is turned in the round ${ms(await frames)} (drawn by the processor, no graphics card)`);
    const session = await page.context().newCDPSession(page);
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    console.log(`  ${words}: JS heap ${(usedSize / 1e6).toFixed(0)} MB`);
    await page.context().close();
  }
  console.log(`  program ${memory(program.pid).toFixed(0)} MB, at most ${peak(program.pid).toFixed(0)} MB`);
  await program.stop();
}

const chrome = await browser();
try {
  await measured(chrome, "kitcar-mid4", false);
  await measured(chrome, "pickup-six", true);
} finally {
  await chrome.close();
  cleanUp();
}

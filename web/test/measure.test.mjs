// Beside the car with more than a tape: angle finder, offsets, and a scan from a phone.

import assert from "node:assert/strict";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { LAPTOP, PHONE, browser, card, cleanUp, newBuild, open, shot, visit } from "./program.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(async () => {
  await chrome?.close();
  cleanUp();
});

const keyed = { ".": "point" };

/** Types on a keypad: its keys, which way it goes, and writes it down. */
async function keys(pad, typed, way) {
  for (const key of typed) {
    await pad.getByRole("button", { name: keyed[key] ?? key, exact: true }).click();
  }
  if (way !== undefined) {
    await pad.getByRole("button", { name: way, exact: true }).click();
  }
  await pad.getByRole("button", { name: "Write it down" }).click();
}

test("offsets, slopes, bearings and faces are typed on the keypads made for them", async () => {
  const folder = newBuild("kitcar-mid4");
  const program = await open(folder);
  const phone = await visit(chrome, program.address, PHONE);
  const take = card(phone, "Take a reading");
  const pad = take.getByRole("group", { name: "what it reads" });
  const list = (legend) => take.locator("fieldset", { has: phone.locator("legend", { hasText: new RegExp(`^${legend}`) }) });
  const pick = (legend, name) => list(legend).getByRole("button", { name, exact: true }).click();
  const kind = (name) => take.getByRole("button", { name, exact: true }).click();
  const written = (words) => phone.getByRole("status").filter({ hasText: `Written down: ${words}` }).waitFor();
  const last = () => readFileSync(join(folder, "build.toml"), "utf8").split("[[reading]]").at(-1);
  // A place ahead of another along a line: the line first, then from and to, and it lies behind.
  await kind("how far ahead");
  await pick("Along the line from", "A left");
  await pick("toward", "B left");
  await pick("From", "B left");
  await pick("To", "A left");
  await keys(pad, "601", "behind");
  await written("B left to A left: -601 mm");
  assert.match(last(), /kind = "offset"[^]*from = "B left"[^]*to = "A left"[^]*along = \["A left", "B left"\][^]*reads = "-601 mm"/);
  // How much higher, in inches, as the car stands.
  await kind("how much higher");
  await pick("From", "A left");
  await pick("To", "A right");
  await pad.getByRole("button", { name: "in", exact: true }).click();
  await pad.getByRole("button", { name: "3/8", exact: true }).click();
  await keys(pad, "2", "lower");
  await written("A left to A right: -2-3/8 in");
  assert.match(last(), /along = "plumb"[^]*setup = "[^"]+"[^]*reads = "-2-3\/8 in"/);
  await kind("slope of a line");
  await pick("From", "A left");
  await pick("To", "B left");
  await keys(pad, "1.5", "down");
  await written("A left to B left: -1.5 deg");
  assert.match(last(), /kind = "inclination"[^]*setup = "[^"]+"[^]*reads = "-1.5 deg"/);
  await kind("turned from a line");
  assert.equal(await pad.count(), 0, "no pad before everything is said");
  await pick("From", "A left");
  await pick("To", "A right");
  assert.match(await pad.innerText(), /against the clock/);
  for (const key of "200") {
    await pad.getByRole("button", { name: key, exact: true }).click();
  }
  await pad.getByText("It is 180° at most.").waitFor();
  assert.ok(await pad.getByRole("button", { name: "Write it down" }).isDisabled());
  for (let key = 0; key < 3; key += 1) {
    await pad.getByRole("button", { name: "take a digit back" }).click();
  }
  await keys(pad, "89.5", "against the clock");
  await written("A left to A right: -89.5 deg");
  assert.match(last(), /kind = "bearing"[^]*base = \["A left", "B left"\][^]*reads = "-89.5 deg"/);
  await shot(phone, "bearing-phone");
  // A face: only ends, by a clock mark, never the centre.
  await kind("slope of a face");
  const end = list("Face of").getByRole("button").first();
  const name = (await end.innerText()).replace(" …", "");
  await end.click();
  assert.equal(await list("Face of").getByRole("button", { name: "centre" }).count(), 0);
  await pick("Face of", "3:00");
  await shot(phone, "face-phone");
  await keys(pad, "4", "up");
  await written(`${name} at 3:00: 4 deg`);
  assert.match(last(), new RegExp(`kind = "face"[^]*end = "${name}"[^]*clock = "3:00"[^]*reads = "4 deg"`));
  // An angle is corrected with degrees, not with a tape.
  const number = /number = (\d+)/.exec(last())[1];
  await phone.getByRole("button", { name: `reading ${number}: correct, drop or remove` }).click();
  const again = phone.getByRole("group", { name: `reading ${number} corrected` });
  assert.match(await again.innerText(), /was 4 deg/);
  assert.equal(await again.getByRole("button", { name: "mm", exact: true }).count(), 0);
  await keys(again, "3.5", "down");
  await again.waitFor({ state: "detached" });
  assert.match(last(), /reads = "-3.5 deg"/);
  // What the program cannot take it refuses in words: an offset is along a line or straight up.
  const origin = new URL(program.address).origin;
  const spot = (name) => ({ name, rim: null });
  for (const [deed, words] of [
    [{ do: "addOffset", from: spot("A left"), to: spot("A right"), along: null, setup: null, reads: "3 mm" }, /along a line through two places, or straight up/],
    [{ do: "addSlope", from: spot("A left"), to: spot("A right"), setup: "nowhere", reads: "3 deg" }, /nowhere/],
    [{ do: "addSlope", from: spot("A left"), to: spot("A right"), setup: "on its wheels", reads: "3 mm" }, /angle|deg/],
    [{ do: "addFace", end: name, toward: 13, setup: "on its wheels", reads: "3 deg" }, /between 0 and 12/],
  ]) {
    const refused = await phone.request.post(`${origin}/api/deed`, { headers: { origin }, data: deed });
    assert.equal(refused.status(), 409, JSON.stringify(deed));
    assert.match((await refused.json()).words, words);
  }
  assert.deepEqual(phone.troubles, []);
  await program.stop();
});

/** A floor of two triangles with a rib, in metres, as a phone writes it. */
const FLOOR = "v 0 0 0\nv 1.2 0 0\nv 1.2 0.8 0\nv 0 0.8 0\nv 0.6 0.4 0.05\nf 1 2 5\nf 2 3 5\nf 3 4 5\nf 4 1 5\n";

test("a scan from a phone is put in, its unit is asked, and a body names it", async () => {
  const folder = newBuild("kitcar-mid4");
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await page.getByRole("heading", { name: "Scan from a phone" }).click();
  const scan = page.locator("details", { has: page.getByRole("heading", { name: "Scan from a phone" }) });
  const pick = (name, content) => scan.locator("input[type=file]").setInputFiles({ name, mimeType: "model/obj", buffer: Buffer.from(content) });
  const named = scan.locator("label.line", { hasText: "Name in the folder" }).locator("input");
  // Too large is said before it is sent.
  const huge = join(folder, "..", "huge.obj");
  writeFileSync(huge, Buffer.alloc(50 * 1024 * 1024 + 1, " "));
  await scan.locator("input[type=file]").setInputFiles(huge);
  await scan.getByRole("button", { name: "Put it into the folder" }).click();
  await scan.getByRole("alert").filter({ hasText: "at most 50 MB" }).waitFor();
  await pick("under floor.obj", FLOOR);
  assert.equal(await named.inputValue(), "under floor.obj");
  await named.fill("../floor.obj");
  await scan.getByRole("button", { name: "Put it into the folder" }).click();
  await scan.getByRole("alert").filter({ hasText: "is no name for a scan" }).waitFor();
  await named.fill("floor.obj");
  await scan.getByRole("button", { name: "Put it into the folder" }).click();
  await scan.getByText("scans/floor.obj is in the folder: 4 triangles.").waitFor();
  assert.match(await scan.innerText(), /1\.2 × 0\.800 × 0\.050 of its own units[^]*a\s+millimetre, the longest side would be 1\.2 mm; a metre, 1200 mm; an inch, 1\.2 in/);
  assert.equal(readFileSync(join(folder, "scans", "floor.obj"), "utf8"), FLOOR);
  await scan.getByRole("button", { name: "Put it into the folder" }).click();
  await scan.getByRole("alert").filter({ hasText: "never overwritten" }).waitFor();
  await shot(page, "scan-laptop");
  // A body names it: nothing is written before the unit is said.
  const form = card(page, "Add to the car");
  await form.getByRole("button", { name: "in the way", exact: true }).click();
  const line = (label) => form.locator("label.line").filter({ hasText: new RegExp(`^\\s*${label}`) }).locator("input, select").first();
  await line("Name").fill("under floor");
  await line("Shape").selectOption({ label: "scan from a phone" });
  await line("It is").selectOption({ label: "floor" });
  await line("Scan in the folder").selectOption("scans/floor.obj");
  assert.equal(await line("One unit of the file is").inputValue(), "", "the unit is never guessed");
  await line("Its surface may be off").fill("3 mm");
  const marks = ["A left", "A right", "B left", "B right"];
  const seen = [["0", "0", "0"], ["1.2", "0", "0"], ["1,2", "0.8", "0"], ["0", "0.8", "-0.25"]];
  for (const [at, mark] of marks.entries()) {
    await form.getByRole("combobox", { name: `mark ${at + 1} seen in the scan` }).selectOption(mark);
    for (const [axis, figure] of seen[at].entries()) {
      await form.getByRole("textbox", { name: `${"xyz"[axis]} of mark ${at + 1}` }).fill(figure);
    }
  }
  await form.getByRole("button", { name: "Add it" }).click();
  assert.ok(!readFileSync(join(folder, "build.toml"), "utf8").includes("under floor"), "it waits for the unit");
  await line("One unit of the file is").selectOption({ label: "a metre" });
  await shot(page, "scan-body-laptop");
  await form.getByRole("button", { name: "Add it" }).click();
  await page.waitForFunction(() => document.querySelector("section.add input")?.value === "");
  const text = readFileSync(join(folder, "build.toml"), "utf8");
  const body = text.slice(text.indexOf('name = "under floor"'));
  assert.match(body, /kind = "scan"[^]*file = "scans\/floor.obj"[^]*unit = "m"[^]*noise = "3 mm"/);
  assert.match(body, /\{ at = \[1\.2, 0\.8, 0\], mark = "B left" \}/);
  assert.match(body, /\{ at = \[0, 0\.8, -0\.25\], mark = "B right" \}/);
  assert.deepEqual(page.troubles.filter((words) => !/409/.test(words)), []);
  const phone = await visit(chrome, program.address, PHONE);
  await phone.getByRole("heading", { name: "Scan from a phone" }).click();
  assert.ok(await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth) <= 0, "as wide as the phone");
  await shot(phone, "scan-phone");
  await program.stop();
});

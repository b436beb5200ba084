// By hand on Route: a joint is moved and pinned, a side is closed, a part is changed for another.

import assert from "node:assert/strict";
import { appendFileSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { LAPTOP, PHONE, SEARCH, browser, card, cleanUp, found, go, newBuild, open, settled, shot, visit } from "./program.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(async () => {
  await chrome?.close();
  cleanUp();
});

const buildOf = (folder) => readFileSync(join(folder, "build.toml"), "utf8");

/** Where the circle of a free joint or bend stands on the screen, of the ones furthest apart from others. */
async function grips(page, view) {
  return page.getByRole("img", { name: new RegExp(`joints and bends to take by hand, ${view}`) }).evaluate((layer) =>
    [...layer.querySelectorAll("circle.joint, circle.bend")].map((circle) => {
      const box = circle.getBoundingClientRect();
      return { x: box.x + box.width / 2, y: box.y + box.height / 2, isJoint: circle.classList.contains("joint") };
    }));
}

/** The one that has most room round it on the screen: whoever points there means it. */
function alone(all, isJoint) {
  const room = (one) => Math.min(...all.filter((other) => other !== one).map((other) => Math.hypot(other.x - one.x, other.y - one.y)));
  return all.filter((one) => one.isJoint === isJoint).sort((a, b) => room(b) - room(a))[0];
}

async function axe(page, words) {
  await page.evaluate(readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
  const troubles = await page.evaluate(async () => {
    const result = await window.axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
    return result.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target).slice(0, 5).join("; ")}`);
  });
  assert.deepEqual(troubles, [], words);
  const small = await page.evaluate(() => [...document.querySelectorAll("button, select, input, nav a, a.button, summary")]
    .filter((target) => target.offsetParent !== null)
    .map((target) => ({ words: target.textContent, box: target.getBoundingClientRect() }))
    .filter(({ box }) => box.height < 47.5 || box.width < 44)
    .map(({ words: said, box }) => `${said}: ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`));
  assert.deepEqual(small, [], `${words}: targets for gloves`);
}

test("a joint is moved on the drawing, pinned there, kept by the next ways, and let go again", async () => {
  const folder = newBuild("kitcar-mid4");
  found("route", folder);
  const before = buildOf(folder);
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await go(page, "Route");
  await page.getByRole("button", { name: "move it by hand" }).click();
  const layer = page.getByRole("img", { name: /take by hand, from the left side/ });
  await layer.scrollIntoViewIfNeeded();
  const from = alone(await grips(page, "from the left side"), true);
  await page.mouse.move(from.x, from.y);
  const stands = async () => (await layer.boundingBox()).y;
  const y = await stands();
  await page.mouse.down();
  const gaps = page.getByRole("region", { name: "gaps of the line as drawn by hand" });
  await gaps.getByText(/where it was found/).waitFor();
  const atFirst = await gaps.locator(".value").allInnerTexts();
  // The gaps follow the hand while it moves, before it lets go.
  await page.mouse.move(from.x + 4, from.y - 5, { steps: 4 });
  await gaps.getByText(/mm (rearwards|forwards).*mm (up|down)/).waitFor();
  await page.waitForFunction((was) => document.querySelector(".gaps .rows").innerText.indexOf(was) < 0, atFirst[0]);
  assert.equal(await stands(), y, "the drawing stays under the hand");
  assert.equal(buildOf(folder), before, "nothing is written while the hand holds it");
  await shot(page, "hand-dragging-laptop");
  await page.mouse.up();
  const pins = page.getByRole("region", { name: "pins" });
  await pins.getByText(/A joint of .* within 20 mm of the pin/).waitFor();
  const pinned = buildOf(folder);
  assert.match(pinned, /pins = \[\{ what = "joint", near = "[^"]+", at = \["-?\d+ mm", "-?\d+ mm", "-?\d+ mm"\], within = "20 mm" \}\]/);
  assert.equal(pinned.replace(/pins = .*\n/, ""), before, "all else stays, comments too");
  await page.getByText(/These ways are older/).waitFor();
  await shot(page, "hand-pinned-laptop");
  // Taken back and done again, as any other change.
  await page.getByRole("button", { name: "take back" }).click();
  await pins.waitFor({ state: "detached" });
  assert.equal(buildOf(folder), before);
  await page.getByRole("button", { name: "do again" }).click();
  await pins.waitFor();
  assert.equal(buildOf(folder), pinned);
  // The ways that are found now keep it.
  await page.getByRole("button", { name: "Find them again" }).click();
  await page.getByText(/These ways are older/).waitFor({ state: "detached", timeout: SEARCH });
  await page.locator(".solving").waitFor({ state: "detached", timeout: SEARCH });
  await settled(page);
  await page.locator(".way").first().waitFor();
  await pins.getByText("the way that is shown keeps it").waitFor();
  await go(page, "Prove");
  await page.getByText(/has a joint in the pin/).first().waitFor({ state: "attached" });
  await go(page, "Route");
  await shot(page, "hand-kept-laptop");
  await pins.getByRole("button", { name: /^unpin/ }).click();
  await pins.waitFor({ state: "detached" });
  assert.equal(buildOf(folder), before, "unpinned, the file is as it was");
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("on the phone a bend is moved by the thumb or by buttons, and held pins are told in inches", async () => {
  const folder = newBuild("pickup-six");
  found("route", folder, "--effort", "6000");
  const program = await open(folder);
  const phone = await visit(chrome, program.address, PHONE);
  await go(phone, "Route");
  await phone.getByRole("button", { name: "move it by hand" }).click();
  const select = phone.getByRole("combobox", { name: "joint or bend" });
  const words = (await select.locator("option").allInnerTexts()).find((one) => one.startsWith("bend"));
  await select.selectOption({ label: words });
  const gaps = phone.getByRole("region", { name: "gaps of the line as drawn by hand" });
  await gaps.getByText("where it was found").waitFor();
  const moving = phone.getByRole("group", { name: /^move / });
  await moving.getByRole("button", { name: "up", exact: true }).click();
  await moving.getByRole("button", { name: "rearwards" }).click();
  await gaps.getByText(/in (rearwards|forwards|up|down|to the)/).waitFor();
  await shot(phone, "hand-phone");
  await axe(phone, "by hand on the phone");
  await phone.getByRole("button", { name: /^pin .* here$/ }).click();
  const pins = phone.getByRole("region", { name: "pins" });
  await pins.getByText(/The line of .* within 3\/4 in of the pin/).waitFor();
  assert.match(buildOf(folder), /what = "line", near = "[^"]+", at = \["-?[^"]* in", /);
  // The thumb on the drawing moves no page.
  const layer = phone.getByRole("img", { name: /take by hand, from above/ });
  await layer.evaluate((one) => one.scrollIntoView({ block: "start" }));
  const stands = async () => (await layer.boundingBox()).y;
  const y = await stands();
  const spot = alone(await grips(phone, "from above"), true);
  const touch = await phone.context().newCDPSession(phone);
  const at = (x, y) => [{ x, y }];
  await touch.send("Input.dispatchTouchEvent", { type: "touchStart", touchPoints: at(spot.x, spot.y) });
  for (let step = 1; step <= 5; step += 1) {
    await touch.send("Input.dispatchTouchEvent", { type: "touchMove", touchPoints: at(spot.x + step, spot.y + 2 * step) });
  }
  assert.ok(Math.abs(await stands() - y) < 2, "the page stays under the thumb");
  await touch.send("Input.dispatchTouchEvent", { type: "touchEnd", touchPoints: [] });
  await pins.getByText(/A joint of /).waitFor();
  assert.equal(buildOf(folder).match(/what = "(line|joint)", near/g).length, 2);
  await shot(phone, "hand-pinned-phone");
  const wide = await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${wide} px wider than the phone`);
  assert.deepEqual(phone.troubles, []);
  await program.stop();
});

test("a side of a body is closed and opened, and a floor is never opened by the way", async () => {
  const folder = newBuild("kitcar-mid4");
  found("route", folder);
  const before = buildOf(folder);
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP, "dark");
  await go(page, "Route");
  const sides = page.locator("details.card", { hasText: "Keep off a side of a body" });
  await sides.locator("summary").click();
  const select = sides.getByRole("combobox", { name: "body to keep off" });
  const body = (await select.locator("option").allInnerTexts()).find((one) => /shaft/i.test(one)) ?? (await select.locator("option").allInnerTexts())[1];
  await select.selectOption({ label: body });
  await sides.getByRole("button", { name: "not below" }).click();
  await sides.getByRole("button", { name: "not below", pressed: true }).waitFor();
  assert.match(buildOf(folder), /never-pass = \["below"\]/);
  await sides.getByRole("button", { name: "not left" }).click();
  await sides.getByRole("button", { name: "not left", pressed: true }).waitFor();
  assert.match(buildOf(folder), /never-pass = \["below", "left"\]/);
  await shot(page, "sides-dark");
  await axe(page, "sides in the dark");
  for (const side of ["not below", "not left"]) {
    await sides.getByRole("button", { name: side }).click();
    await sides.getByRole("button", { name: side, pressed: false }).waitFor();
  }
  assert.equal(buildOf(folder), before);
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("another part from the stock takes the place of one, with its picture, size and price", async () => {
  const folder = newBuild("kitcar-mid4");
  // Two more silencers in stock: one that fits, and one for a smaller tube, which does not.
  appendFileSync(join(folder, "stock.toml"), `
[[tube]]
name = "50x1.5 304"
od = "50 mm"
wall = "1.5 mm"
material = "304"

[[item]]
name = "silencer 63 flat"
kind = "silencer"
tube = "63.5x1.5 304"
length = "360 mm"
body = { shape = "oval", width = "200 mm", height = "110 mm" }
neck = "40 mm"

[[item]]
name = "silencer 50"
kind = "silencer"
tube = "50x1.5 304"
length = "300 mm"
body = { shape = "box", width = "150 mm", height = "100 mm" }
neck = "30 mm"
mass = "2.2 kg"

[[offer]]
item = "silencer 63 flat"
supplier = "North Road Tube"
price = "100.00 EUR"
tax = "19 %"
`);
  found("route", folder);
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await go(page, "Route");
  const parts = card(page, "Parts");
  const row = parts.locator("li", { has: page.getByRole("button", { name: /^another/ }) }).first();
  await row.waitFor();
  const name = await row.locator("strong").first().innerText();
  const was = new RegExp(`name = "${name}"\\nitem = "([^"]+)"`).exec(buildOf(folder))[1];
  await row.getByRole("button", { name: /^another/ }).click();
  const choices = parts.getByRole("group", { name: `what ${name} may be` });
  await choices.getByText("it is this").waitFor();
  const other = choices.getByRole("button", { name: /^take / }).and(page.locator(":enabled")).first();
  const item = (await other.getAttribute("aria-label")).slice("take ".length);
  const told = await choices.getByRole("region", { name: item }).innerText();
  assert.equal(item, "silencer 63 flat");
  assert.match(told, /360 mm long, oval 200 mm × 110 mm, for tube 63\.5 mm/);
  assert.match(told, /mass not known; 119\.00 EUR/);
  const unfit = choices.getByRole("region", { name: "silencer 50" });
  await unfit.getByText(/It does not fit: it is made for another tube/).waitFor();
  assert.ok(await unfit.getByRole("button", { name: "take silencer 50" }).isDisabled());
  await shot(page, "parts-laptop");
  await axe(page, "parts");
  await other.click();
  await page.getByText(/These ways are older/).waitFor();
  assert.match(buildOf(folder), new RegExp(`name = "${name}"\\nitem = "${item.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}"`));
  await page.getByRole("button", { name: "take back" }).click();
  await page.getByText(/These ways are older/).waitFor({ state: "detached" });
  assert.match(buildOf(folder), new RegExp(`name = "${name}"\\nitem = "${was.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}"`));
  const phone = await visit(chrome, program.address, PHONE, "dark");
  await go(phone, "Route");
  await card(phone, "Parts").getByRole("button", { name: /^another/ }).first().click();
  await card(phone, "Parts").scrollIntoViewIfNeeded();
  await shot(phone, "parts-phone-dark");
  assert.deepEqual([...page.troubles, ...phone.troubles], []);
  await program.stop();
});

// At the counter with a list that was kept on the phone: the page is closed, the program is gone, and the
// ticks come home.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { after, before, test } from "node:test";
import { PHONE, browser, cleanUp, found, go, newBuild, open, run, settled, shot, visit } from "./program.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(async () => {
  await chrome?.close();
  cleanUp();
});

test("a list that was kept opens without the program, keeps its ticks closed, and gives them back once", async () => {
  const folder = newBuild("kitcar-mid4");
  found("route", folder);
  run("route", folder, "--choose", "1");
  const program = await open(folder);
  const phone = await visit(chrome, program.address, PHONE);
  await go(phone, "Buy");
  await settled(phone);
  const [download] = await Promise.all([phone.waitForEvent("download"), phone.getByRole("button", { name: "Keep the list on this phone" }).click()]);
  const file = join(mkdtempSync(join(tmpdir(), "tubewright-list-")), download.suggestedFilename());
  assert.match(file, /counter list \d{4}-\d\d-\d\d\.html$/);
  await download.saveAs(file);
  const listed = JSON.parse(run("buy", folder, "--json"));
  // The laptop stays in the shop, and the page is closed.
  await phone.close();
  await program.stop();

  const context = await chrome.newContext({ viewport: PHONE, hasTouch: true });
  const troubles = [];
  const opened = async () => {
    const list = await context.newPage();
    list.on("request", (request) => { if (!request.url().startsWith("file:")) { troubles.push(`asked ${request.url()}`); } });
    list.on("console", (message) => { if (message.type() === "error") { troubles.push(message.text()); } });
    list.on("pageerror", (error) => troubles.push(String(error)));
    await list.goto(pathToFileURL(file).href);
    await list.getByText("This list works without the laptop.").waitFor();
    return list;
  };
  let list = await opened();
  for (const line of listed.buy) {
    await list.locator("li", { hasText: line.item }).first().waitFor();
  }
  const lines = await list.locator("[data-line]").count();
  assert.equal(lines, listed.buy.length);
  const line = (at) => list.locator(`[data-line="${at}"]`);
  const name = async (at) => line(at).locator(".what span").first().innerText();
  await shot(list, "kept-list-phone");
  await line(0).getByRole("button", { name: /^got:/ }).click();
  await line(0).locator(".state", { hasText: "got" }).waitFor();
  const bend = (await Promise.all([...Array(lines).keys()].map(name))).findIndex((item, at) => at > 0 && /bend/.test(item));
  await line(bend).getByRole("button", { name: /^out:/ }).click();
  await line(bend).locator(".state", { hasText: "out" }).waitFor();
  assert.match(await line(bend).locator(".instead").innerText(), /^Take instead: (.+ more with the welds, .+ in all|no substitute)/);
  const third = [...Array(lines).keys()].find((at) => at !== 0 && at !== bend);
  await line(third).getByRole("button", { name: /^out:/ }).click();
  await list.locator("#pair", { hasText: /are out/ }).waitFor();
  await shot(list, "kept-list-ticked-phone");
  await line(third).getByRole("button", { name: /^take back:/ }).click();
  // Closed, and opened again.
  await list.close();
  list = await opened();
  await line(0).locator(".state", { hasText: "got" }).waitFor();
  await line(bend).locator(".state", { hasText: "out" }).waitFor();
  await list.evaluate(readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
  const violations = await list.evaluate(async () => (await window.axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] })).violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target).join("; ")}`));
  assert.deepEqual(violations, []);
  const small = await list.evaluate(() => [...document.querySelectorAll("button")].map((one) => one.getBoundingClientRect()).filter((box) => box.height > 0 && (box.height < 47.5 || box.width < 44)).length);
  assert.equal(small, 0, "targets for gloves");
  await list.getByRole("button", { name: "copy the ticks" }).click();
  const ticks = await list.getByRole("textbox", { name: "the ticks as text" }).inputValue();
  const [outItem, gotItem] = [await name(bend), await name(0)];
  await list.emulateMedia({ colorScheme: "dark" });
  await shot(list, "kept-list-dark-phone");
  await list.close();
  // A phone that runs nothing in a saved file still reads it.
  const still = await chrome.newContext({ viewport: PHONE, javaScriptEnabled: false });
  const read = await still.newPage();
  await read.goto(pathToFileURL(file).href);
  await read.getByText("this phone runs nothing in saved files").waitFor();
  assert.equal(await read.locator("[data-line]").count(), listed.buy.length);
  assert.ok(await read.locator(".instead").count() > 0, "with what to take when something is out");

  // Back in the shop.
  const again = await open(folder);
  const page = await visit(chrome, again.address, PHONE);
  await go(page, "Buy");
  const home = page.locator("details.card", { hasText: "Ticks from a saved list" });
  await home.locator("summary").click();
  const box = home.getByRole("textbox", { name: "ticks from a saved list" });
  await box.fill("got two bends");
  await home.getByRole("button", { name: "look at them" }).click();
  await home.getByRole("alert").filter({ hasText: "These are no ticks of a saved list." }).waitFor();
  await box.fill(ticks);
  await home.getByRole("button", { name: "look at them" }).click();
  await home.getByText(new RegExp(`got \\d+ × ${gotItem.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}`)).waitFor();
  await home.getByText(`${outItem} is out`).waitFor();
  await shot(page, "ticks-home-phone");
  await home.getByRole("button", { name: "write all 2 down" }).click();
  await home.getByText("Written down.").waitFor();
  const record = readFileSync(join(folder, "shop.toml"), "utf8");
  assert.equal(record.split('what = "got"').length, 2);
  assert.equal(record.split('what = "out"').length, 2);
  await page.getByText("Planned anew").waitFor();
  // The same once more is seen before it counts twice.
  await box.fill(ticks);
  await home.getByRole("button", { name: "look at them" }).click();
  assert.equal(await home.getByText(/the record has one like it of that day/).count(), 2);
  assert.deepEqual([...troubles, ...page.troubles], []);
  await again.stop();
});

test("the marks on Cut leave the closing part longer, as on paper, in either unit", async () => {
  const folder = newBuild("kitcar-mid4");
  found("route", folder);
  run("route", folder, "--choose", "1");
  const cards = JSON.parse(found("cut", folder, "--json")).cards;
  const program = await open(folder);
  const page = await visit(chrome, program.address, PHONE);
  await go(page, "Cut");
  const closing = page.locator(".cutcard", { has: page.locator(".closing") });
  assert.ok(await closing.count() > 0, "some part closes a stretch");
  let longer = 0;
  for (let at = 0; at < await closing.count(); at += 1) {
    const one = closing.nth(at);
    const words = await one.locator(".closing").innerText();
    // Cut to the gap, a mark would be where the plain card has it; the table has it further on by what is told.
    for (const [, number, plain] of words.matchAll(/cut (\d+) ([\d.]+) mm/g)) {
      const row = one.locator("table.saw tbody tr", { has: page.locator("th", { hasText: new RegExp(`^${number}$`) }) });
      const [, outside, inside] = await row.locator("td").allInnerTexts();
      assert.ok(Math.abs(Number(outside) - Number(plain)) >= 0.9, `cut ${number}: ${outside} is not ${plain}`);
      assert.ok(Number(inside) > 0);
      longer += 1;
    }
  }
  assert.ok(longer > 0, "at least one card has its marks moved");
  assert.ok(cards.length >= await closing.count());
  await closing.first().scrollIntoViewIfNeeded();
  await shot(page, "closing-phone");
  await page.getByRole("button", { name: "lengths in mm; change" }).click();
  await closing.first().locator(".closing", { hasText: / in longer| in\./ }).first().waitFor();
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

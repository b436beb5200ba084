// A person at the page: from an empty folder, with a slip, at the counter, beside the car.

import assert from "node:assert/strict";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { BETWEEN_MARKS, HEIGHTS, SIDES, TO_FLANGE, TO_TIP } from "./car.mjs";
import { LAPTOP, PHONE, SEARCH, browser, card, go, newBuild, open, cleanUp, run, settled, shot, type, visit } from "./program.mjs";

const PLACES = ["Measure", "Route", "Buy", "Cut", "Fit", "Prove"];

let chrome;
before(async () => { chrome = await browser(); });
after(async () => {
  await chrome?.close();
  cleanUp();
});

const count = (text, what) => text.split(what).length - 1;

/** Picks a place in the card that takes readings; what is picked already stays. */
async function pick(page, label, name, clock) {
  const take = card(page, "Take a reading");
  const picked = take.locator("p.picked", { hasText: new RegExp(`^${label} `) });
  if (await picked.count() > 0) {
    if ((await picked.locator("strong").innerText()) === name && clock === undefined) {
      return;
    }
    await picked.getByRole("button", { name: "another" }).click();
  }
  const list = take.locator("fieldset", { has: page.locator("legend", { hasText: new RegExp(`^${label}`) }) });
  await list.getByRole("button", { name: clock === undefined ? name : `${name} …`, exact: true }).click();
  if (clock !== undefined) {
    await list.getByRole("button", { name: clock, exact: true }).click();
  }
}

async function tape(page, { from, to, clock, reads }) {
  await pick(page, "From", from);
  await pick(page, "To", to, clock);
  await type(card(page, "Take a reading"), reads);
  await page.getByRole("status").filter({ hasText: `Written down: ${from} to ${to}${clock === undefined ? "" : ` at ${clock}`}: ${reads} mm` }).waitFor();
}

/** Fills a form of the card by its labels. */
async function fill(page, title, tab, values) {
  const form = card(page, title);
  await form.getByRole("button", { name: tab, exact: true }).click();
  for (const [label, value] of Object.entries(values)) {
    const input = form.locator("label.line").filter({ hasText: new RegExp(`^\\s*${label}`) }).locator("input, select").first();
    if (await input.evaluate((element) => element.tagName) === "SELECT") {
      await input.selectOption({ label: value });
    } else {
      await input.fill(value);
    }
  }
  await form.getByRole("button", { name: "Add it" }).click();
}

test("from an empty folder to a printed list, with the phone", async () => {
  const folder = mkdtempSync(join(tmpdir(), "tubewright-empty-"));
  const program = await open(folder);
  const page = await visit(chrome, program.address, PHONE);
  await shot(page, "empty-phone");
  for (const [name, side] of Object.entries(SIDES)) {
    await fill(page, "Add to the car", "mark", { Name: name, Side: side });
    await card(page, "Take a reading").getByRole("button", { name, exact: true }).waitFor();
  }
  for (const line of BETWEEN_MARKS) {
    await tape(page, line);
  }
  await shot(page, "tapes-phone");
  await fill(page, "Add to the car", "how it stands", { Name: "on its wheels", "It stands on": "its wheels" });
  const take = card(page, "Take a reading");
  await take.getByRole("button", { name: "height over the floor" }).click();
  for (const { of, reads } of HEIGHTS) {
    await pick(page, "Of", of);
    await type(take, reads);
    await page.getByRole("status").filter({ hasText: `Written down: ${of}: ${reads} mm` }).waitFor();
  }
  const axes = card(page, "Add to the car");
  await axes.getByRole("button", { name: "axes", exact: true }).click();
  for (const [label, name] of [["Front pair, left", "A left"], ["Front pair, right", "A right"], ["Rear pair, left", "B left"], ["Rear pair, right", "B right"]]) {
    await axes.locator("label.line").filter({ hasText: new RegExp(`^${label}`) }).locator("select").selectOption(name);
  }
  await axes.getByRole("button", { name: "Choose these" }).click();
  await page.locator("tr", { hasText: "C left" }).locator("td").nth(3).waitFor();
  await fill(page, "Add to the car", "place on something", { Name: "tip point", Side: "right" });
  await take.getByRole("button", { name: "tape", exact: true }).click();
  for (const line of TO_TIP) {
    await tape(page, line);
  }
  await fill(page, "Add to the car", "end", { Name: "flange", "It is a": "flange", Gas: "comes out here: a run begins", "Outside diameter of the tube": "63.5 mm", "Diameter of the rim that is measured": "104 mm" });
  for (const line of TO_FLANGE) {
    await tape(page, line);
  }
  await fill(page, "Add to the car", "end", { Name: "tip", "It is a": "tip", Gas: "goes in here: a run ends", "Outside diameter of the tube": "63.5 mm", "Its centre is wished at": "tip point", "Gas flows there": "rearwards" });
  await page.getByText("they agree with each other").waitFor();
  await shot(page, "measured-phone");
  await go(page, "Buy");
  await page.getByRole("button", { name: "Begin with 63.5 mm stainless" }).click();
  await card(page, "Nothing in stock yet").waitFor({ state: "detached" });
  await go(page, "Measure");
  await fill(page, "Add to the car", "run", { Name: "exhaust", From: "flange", To: "tip", Tube: "63.5x1.5 304" });
  await go(page, "Route");
  await page.getByRole("button", { name: "Find ways" }).click();
  await page.locator(".way").first().waitFor({ timeout: SEARCH });
  await settled(page);
  await page.locator(".way").first().getByRole("button", { name: "choose it" }).click();
  await page.getByText("It is what is bought, cut, fitted and proved.").waitFor();
  await shot(page, "first-route-phone");
  await go(page, "Buy");
  const wanted = await page.locator(".counter li .grow").allInnerTexts();
  assert.ok(wanted.length > 1, "the list has lines");
  // On paper: the list without what only a screen can do.
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.getByRole("button").count(), 0, "no button is printed");
  await shot(page, "list-printed");
  const paper = await page.pdf({ format: "A4" });
  assert.ok(paper.length > 5_000, "the list goes to paper");
  // The command line says the same.
  const said = JSON.parse(run("buy", folder, "--json"));
  for (const line of said.buy) {
    assert.ok(wanted.some((words) => words.startsWith(line.item)), `${line.item} is on the page`);
  }
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("two banks into one tail are written on the page alone", async () => {
  const folder = newBuild("estate-v6");
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await go(page, "Buy");
  const tube = "57x1.5 304";
  const onDisk = async (file, words) => {
    for (let wait = 0; wait < 100; wait += 1) {
      const text = readFileSync(join(folder, file), "utf8");
      if (text.includes(words)) {
        return text;
      }
      await page.waitForTimeout(100);
    }
    throw new Error(`${file} never holds ${words}`);
  };
  const written = async (...rows) => {
    for (const [tab, values] of rows) {
      await fill(page, "Your stock", tab, values);
      await onDisk("stock.toml", `name = "${values.Name}"`);
    }
  };
  await written(
    ["tube size", { Name: "63.5x1.5 304", "Outside diameter": "63.5 mm", Wall: "1.5 mm", Material: "304 stainless" }],
    ["item", { Name: "merge to 63", "It is a": "merge, two into one", "Tube size": tube, "Tube size of its one other port": "63.5x1.5 304", Length: "180 mm", "From its middle": " +38 mm", "How far each side": "12 deg" }],
    ["item", { Name: "fork", "It is a": "fork, one into two", "Tube size": tube, Length: "180 mm", "From its middle": "40 mm", "How far each side": "12 deg" }],
    ["item", { Name: "cone to 63", "It is a": "cone to another size", "Tube size": tube, "Tube size of its one other port": "63.5x1.5 304", Length: "60 mm" }],
    ["item", { Name: "h-pipe", "It is a": "crossover (X or H)", "Tube size": tube, Length: "240 mm", "From its middle": "60 mm", "How far each side": "10 deg" }],
    ["item", { Name: "long can", "It is a": "silencer", "Tube size": tube, Length: "500 mm", "Its body is": "oval", "Width of its body": "220 mm", "Height of its body": "110 mm", "Neck at each end": "45 mm" }],
  );
  const stock = await onDisk("stock.toml", "long can");
  assert.match(stock, /name = "merge to 63"\nkind = "merge"/);
  assert.match(stock, /name = "fork"\nkind = "merge"/);
  assert.match(stock, /shape = "oval"/);
  assert.match(stock, /"-38 mm"/);
  await go(page, "Measure");
  for (const [name, item] of [["Y", "merge to 63"], ["parting", "fork"]]) {
    await fill(page, "Add to the car", "part in a run", { Name: name, Item: item });
  }
  // What the form offers is every way through that there is, by its name.
  const form = card(page, "Add to the car");
  await form.getByRole("button", { name: "run", exact: true }).click();
  const offered = async (label) => form.locator("label.line").filter({ hasText: new RegExp(`^\\s*${label}`) }).locator("option").allInnerTexts();
  for (let wait = 0; wait < 300 && !(await offered("To")).includes("parting.in"); wait += 1) {
    await page.waitForTimeout(100);
  }
  const [from, to] = [await offered("From"), await offered("To")];
  assert.ok(["Y.out", "parting.L", "parting.R"].every((port) => from.includes(port)), from.join(", "));
  assert.ok(["Y.L", "Y.R", "parting.in"].every((port) => to.includes(port)), to.join(", "));
  const through = await form.locator("fieldset.pick", { hasText: "Through" }).getByRole("button").allInnerTexts();
  assert.ok(through.includes("X.L") && !through.includes("Y"), through.join(", "));
  // The program takes what was written for what is meant.
  const wanted = run("wanted", folder);
  assert.match(wanted, /merge to 63/);
  assert.match(wanted, /port L for 57x1.5 304: 0 mm along, 38 mm to the side/);
  await shot(page, "merge-laptop");
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("taking back reaches the file, across a restart", async () => {
  const folder = newBuild("kitcar-mid4");
  const before = readFileSync(join(folder, "build.toml"), "utf8");
  const first = await open(folder);
  const page = await visit(chrome, first.address, LAPTOP);
  await tape(page, { from: "A left", to: "D right", reads: "840" });
  assert.notEqual(readFileSync(join(folder, "build.toml"), "utf8"), before);
  await first.stop();
  const again = await open(folder);
  const later = await visit(chrome, again.address, LAPTOP);
  await later.getByRole("button", { name: "take back" }).click();
  await later.waitForFunction(() => [...document.querySelectorAll("button")].some((button) => button.textContent === "do again" && !button.disabled));
  assert.equal(readFileSync(join(folder, "build.toml"), "utf8"), before);
  await again.stop();
});

test("a typed slip is named, with what it probably was", async () => {
  const folder = newBuild("kitcar-mid4");
  const program = await open(folder);
  const page = await visit(chrome, program.address, PHONE);
  // Reading 1 is 807: the digits swapped as a tired hand does.
  await page.getByRole("button", { name: /show all/ }).click();
  await page.getByRole("button", { name: "reading 1: correct, drop or remove" }).click();
  await type(page.getByRole("group", { name: "reading 1 corrected" }), "870");
  const doubt = page.locator(".card.warn", { hasText: "doubtful reading" });
  const likely = doubt.getByRole("button", { name: "It was 807 mm" });
  await likely.waitFor();
  assert.match(await doubt.innerText(), /reading 1, A left to A right: 870 was probably 807 \(digits exchanged\)/);
  await shot(page, "slip-phone");
  await likely.click();
  await likely.waitFor({ state: "detached" });
  assert.match(readFileSync(join(folder, "build.toml"), "utf8"), /number = 1\n(?:.*\n)*?reads = "807 mm"/);
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("ways, the counter, the saw, a tacked joint as built, and the board", async () => {
  const folder = newBuild("kitcar-mid4");
  let program = await open(folder);
  const { port } = new URL(program.address);
  const page = await visit(chrome, program.address, LAPTOP);
  await go(page, "Route");
  await page.getByRole("button", { name: "Find ways" }).click();
  await page.locator(".way").first().waitFor({ timeout: SEARCH });
  await settled(page);
  await page.waitForFunction(() => [...document.images].every((image) => image.complete && image.naturalWidth > 0));
  await shot(page, "route-laptop");
  await page.locator(".way").first().getByRole("button", { name: "choose it" }).click();
  await page.getByText("It is what is bought, cut, fitted and proved.").waitFor();
  for (const place of PLACES) {
    await go(page, place);
    await shot(page, `${place.toLowerCase()}-laptop`);
  }

  // At the counter the laptop is far: the phone has the list and what to take instead.
  const phone = await visit(chrome, program.address, PHONE);
  await go(phone, "Buy");
  await phone.locator(".instead").first().waitFor();
  await program.stop();
  await phone.getByText("The program cannot be reached").waitFor();
  const lines = phone.locator(".counter li", { has: phone.getByRole("button", { name: "got", exact: true }) });
  const names = await lines.locator(".grow").evaluateAll((all) => all.map((one) => one.firstChild.textContent));
  assert.ok(names.length >= 3, "there are lines to play with");
  const line = (name) => phone.locator(".counter li", { hasText: name }).first();
  await line(names[0]).getByRole("button", { name: "got", exact: true }).click();
  await line(names[0]).getByText("got", { exact: true }).waitFor();
  const bend = names.find((name) => /bend/.test(name)) ?? names[1];
  await line(bend).getByRole("button", { name: "out", exact: true }).click();
  await line(bend).getByText("Take instead:").waitFor();
  await shot(phone, "counter-phone");
  assert.equal(count(readFileSync(join(folder, "shop.toml"), "utf8"), 'what = "got"'), 0, "nothing reached the folder yet");
  program = await open(folder, ["--port", port]);
  await phone.getByRole("button", { name: "Send now" }).click();
  await phone.getByText("Planned anew").waitFor();
  await settled(phone);
  await shot(phone, "planned-anew-phone");
  const record = readFileSync(join(folder, "shop.toml"), "utf8");
  assert.equal(count(record, 'what = "got"'), 1);
  assert.equal(count(record, 'what = "out"'), 1);

  // At the saw.
  await go(phone, "Cut");
  const cut = phone.getByRole("button", { name: "cut", exact: true });
  const toCut = await cut.count();
  await cut.first().click();
  await phone.waitForFunction((before) => [...document.querySelectorAll(".cutcard button.main")].length < before, toCut);
  await shot(phone, "cut-phone");

  // Beside the car: tack a joint off its place, and type what the tapes read.
  await go(phone, "Fit");
  const check = phone.locator(".check", { has: phone.locator("li:nth-child(3)") }).first();
  const joint = (await check.locator("h3").first().innerText()).replace(/^Tapes to (\S+).*$/s, "$1");
  const distances = await check.locator("li .value strong").allInnerTexts();
  const opener = check.getByRole("button", { name: /type what the tape/ });
  await opener.first().click();
  for (const [at, words] of distances.entries()) {
    await type(check, String(Number.parseInt(words, 10) + (at === 0 ? 6 : 4)));
  }
  await check.getByText("Angle finder across its open face").click();
  await check.getByRole("button", { name: `type the slope of ${joint} toward 12:00` }).click();
  const slopes = [];
  for (const toward of ["12:00", "3:00"]) {
    const row = check.locator(".slopes li", { hasText: `toward ${toward}` });
    const [, planned, way] = (await row.innerText()).match(/plan ([\d.]+)° (up|down)/);
    // Read a little off the plan.
    const keys = Math.abs(Number.parseFloat(planned) - 0.5).toFixed(1);
    slopes.push(keys);
    const pad = check.getByRole("group", { name: /^slope toward/ });
    for (const key of keys) {
      await pad.getByRole("button", { name: key === "." ? "point" : key, exact: true }).click();
    }
    await pad.getByRole("button", { name: way, exact: true }).click();
    await shot(phone, "slope-phone");
    await pad.getByRole("button", { name: "Write it down" }).click();
  }
  await check.getByRole("button", { name: `tacked, with ${distances.length} tapes and 2 slopes` }).click();
  await phone.getByRole("heading", { name: `${joint} as built` }).waitFor();
  await phone.getByText(/It lies .* from the plan/).waitFor();
  await shot(phone, "as-built-phone");
  const tacked = readFileSync(join(folder, "shop.toml"), "utf8");
  assert.match(tacked, /what = "tacked"/);
  for (const reads of slopes) {
    assert.ok(tacked.includes(`${Number.parseFloat(reads)} deg`), `${reads} in ${tacked}`);
  }
  await go(phone, "Prove");
  await phone.getByText("What stands between here and running the engine").waitFor();
  for (const place of PLACES) {
    await go(phone, place);
    await shot(phone, `${place.toLowerCase()}-phone`);
    const wide = await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    assert.ok(wide <= 0, `${place} is ${wide} px wider than the phone`);
  }
  // The packet for the bench: a PDF, or the words of a program that was built without it.
  await go(page, "Prove");
  await page.getByRole("button", { name: "Shop packet (PDF)" }).click();
  await Promise.any([page.waitForEvent("download"), page.getByText("without its typesetting engine").waitFor()]);
  assert.deepEqual([...page.troubles, ...phone.troubles].filter((words) => !/409/.test(words)), []);
  await program.stop();
});

test("two pages and an editor lose nothing", async () => {
  const folder = newBuild("kitcar-mid4");
  const program = await open(folder);
  const one = await visit(chrome, program.address, LAPTOP);
  const two = await visit(chrome, program.address, LAPTOP);
  await fill(one, "Add to the car", "place on something", { Name: "from page one" });
  await two.locator("th", { hasText: "from page one" }).waitFor();
  const path = join(folder, "build.toml");
  writeFileSync(path, `${readFileSync(path, "utf8")}\n# an editor's comment\n[[point]]\nname = "from an editor"\n`);
  await two.locator("th", { hasText: "from an editor" }).waitFor();
  await fill(two, "Add to the car", "place on something", { Name: "from page two" });
  await one.locator("th", { hasText: "from page two" }).waitFor();
  // Both pages begin to correct the same reading: the second is told, and not obeyed.
  for (const page of [one, two]) {
    await page.getByRole("button", { name: /show all/ }).click();
    await page.getByRole("button", { name: "reading 5: correct, drop or remove" }).click();
  }
  await two.route("**/api/view", (route) => route.abort());
  await type(one.getByRole("group", { name: "reading 5 corrected" }), "602");
  await one.locator("li", { hasText: "602 mm" }).first().waitFor();
  await type(two.getByRole("group", { name: "reading 5 corrected" }), "999");
  await two.getByRole("alert").filter({ hasText: "changed elsewhere" }).waitFor();
  const text = readFileSync(path, "utf8");
  for (const words of ["from page one", "from an editor", "from page two", "# an editor's comment", '"602 mm"']) {
    assert.ok(text.includes(words), `${words} was lost`);
  }
  assert.ok(!text.includes("999 mm"));
  await program.stop();
});

test("a demonstration can be played with and started again, and touches nothing", async () => {
  const folder = newBuild();
  const before = readFileSync(join(folder, "build.toml"), "utf8");
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await shot(page, "empty-laptop");
  await page.getByRole("link", { name: /kit car/ }).click();
  await page.getByText("A demonstration to play with").waitFor();
  await fill(page, "Add to the car", "mark", { Name: "played with" });
  await page.locator("th", { hasText: "played with" }).waitFor();
  await page.getByRole("button", { name: "Start again from the original" }).click();
  await page.locator("th", { hasText: "played with" }).waitFor({ state: "detached" });
  await page.getByRole("link", { name: "Back to your build" }).click();
  await page.getByText("Mark the chassis").waitFor();
  assert.equal(readFileSync(join(folder, "build.toml"), "utf8"), before);
  assert.deepEqual(page.troubles, []);
  await program.stop();
});

test("readable by everybody: contrast, labels, order, size of targets", async () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  const folder = newBuild("kitcar-mid4");
  run("route", folder);
  const program = await open(folder);
  for (const [size, light] of [[PHONE, "light"], [LAPTOP, "dark"]]) {
    const page = await visit(chrome, program.address, size, light);
    for (const place of PLACES) {
      await go(page, place);
      if (light === "dark") {
        await shot(page, `${place.toLowerCase()}-dark`);
      }
      // Sent by the browser's own debugger, as the page's policy lets no script in but its own.
      await page.evaluate(axe);
      const found = await page.evaluate(async () => {
        const result = await window.axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
        return result.violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.target).slice(0, 5).join("; ")}`);
      });
      assert.deepEqual(found, [], `${place}, ${light}`);
      const small = await page.evaluate(() => [...document.querySelectorAll("button, select, input, nav a, a.button, summary")]
        .filter((target) => target.offsetParent !== null)
        .map((target) => ({ words: target.textContent, box: target.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 47.5 || box.width < 44)
        .map(({ words, box }) => `${words}: ${box.width.toFixed(0)} × ${box.height.toFixed(0)}`));
      assert.deepEqual(small, [], `${place}: targets for gloves`);
    }
  }
  await program.stop();
});

test("by the keyboard alone", async () => {
  const folder = newBuild("kitcar-mid4");
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? "");
  const reach = async (words) => {
    for (let step = 0; step < 200; step += 1) {
      await page.keyboard.press("Tab");
      if ((await focused()) === words) {
        return;
      }
    }
    assert.fail(`${words} cannot be reached with the keyboard`);
  };
  await reach("A left");
  await page.keyboard.press("Enter");
  await reach("D right");
  await page.keyboard.press("Enter");
  for (const digit of "841") {
    await reach(digit);
    await page.keyboard.press("Enter");
  }
  await reach("Write it down");
  await page.keyboard.press("Enter");
  await page.getByText("Written down: A left to D right: 841 mm").waitFor();
  await program.stop();
});

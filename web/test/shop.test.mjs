// At the saw and on the road: a spoiled piece, templates at true scale, errands, buy or make.

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { LAPTOP, PHONE, browser, card, cleanUp, found, go, newBuild, open, run, settled, shot, type, visit } from "./program.mjs";

let chrome;
before(async () => { chrome = await browser(); });
after(async () => {
  await chrome?.close();
  cleanUp();
});

/** A demonstration car with a way chosen. */
function chosen(like) {
  const folder = newBuild(like);
  found("route", folder);
  run("route", folder, "--choose", "1");
  return folder;
}

test("a spoiled piece: its remake stands on its card at once, and what is left counts", async () => {
  const folder = chosen("kitcar-mid4");
  const program = await open(folder);
  const phone = await visit(chrome, program.address, PHONE);
  const read = (file) => readFileSync(join(folder, file), "utf8");
  await go(phone, "Cut");
  // A part of a bend with both its legs: cut, and then spoiled. The mark that no other part has names it.
  const cards = JSON.parse(found("cut", folder, "--json")).cards;
  const pieces = cards.flatMap((one) => one.gives.map((part) => part.pieces));
  const marks = pieces.find((part) => part.length > 1);
  const mark = marks.find((one) => pieces.filter((part) => part.includes(one)).length === 1);
  const part = phone.locator(".cutcard li", { has: phone.getByText(marks.join(" + "), { exact: true }) });
  await part.getByRole("button", { name: "cut", exact: true }).click();
  await part.locator("strong.tick").waitFor();
  assert.match(read("shop.toml"), /what = "cut"\npiece = .*\nfrom = .*\nof = \{ number = 1/, "a cut is written down with the place where it lay");
  await part.getByRole("button", { name: "spoiled", exact: true }).click();
  const remake = phone.getByRole("status", { name: `remake of ${mark}` });
  await remake.getByText(/^Remake\. The cheapest: (from the shelf|buy): /).waitFor();
  await settled(phone);
  // It stands on the card of what the piece is made from, and the list says the same price.
  const on = phone.locator(".cutcard", { has: remake });
  const words = await remake.innerText();
  const stock = (await on.locator("h2").evaluate((head) => head.firstChild.textContent)).trim();
  assert.ok(words.includes(stock), `${stock} in ${words}`);
  const listed = JSON.parse(found("buy", folder, "--json"));
  assert.ok(listed.buy.length === 0 || words.includes(`${listed.price} with delivery`), `${listed.price} in ${words}`);
  assert.equal(JSON.parse(found("cut", folder, "--json")).cards.filter((one) => one.gives.some((part) => part.pieces.includes(mark))).length, 1, "the program cuts it again");
  await shot(phone, "spoiled-phone");
  // More than it was cannot be left of it; less goes on the shelf, and can be taken back.
  await remake.getByRole("button", { name: "something is left of it" }).click();
  const pad = phone.getByRole("group", { name: `what is left of ${mark}` });
  await type(pad, "170");
  await phone.getByRole("alert").filter({ hasText: `“170 deg” is more than ${mark} was` }).waitFor();
  await phone.getByRole("button", { name: "understood" }).click();
  for (let key = 0; key < 3; key += 1) {
    await pad.getByRole("button", { name: "take a digit back" }).click();
  }
  await type(pad, "9");
  await remake.getByText(`What is left of it lies on the shelf as “rest of ${mark}”.`).waitFor();
  assert.match(read("stock.toml"), new RegExp(`name = "rest of ${mark}"[^[]*angle = "9 deg"`));
  await phone.getByRole("button", { name: "take back" }).click();
  await remake.getByRole("button", { name: "something is left of it" }).waitFor();
  assert.ok(!read("stock.toml").includes(`rest of ${mark}`));
  // Cut again out of what the card says: it is done, and nothing is left to be made again.
  await settled(phone);
  await on.locator("li", { has: remake }).getByRole("button", { name: "cut again" }).click();
  await remake.waitFor({ state: "detached" });
  const done = card(phone, "Cut already");
  await done.locator("li", { hasText: mark }).waitFor();
  assert.equal(read("shop.toml").split('what = "cut"').length - 1, 2);
  assert.ok(!JSON.parse(found("cut", folder, "--json")).cards.some((one) => one.gives.some((part) => part.pieces.includes(mark))), "the program has it as made");
  await shot(phone, "cut-already-phone");
  // Cut twice is a slip: the record takes it once.
  const origin = new URL(program.address).origin;
  const again = await phone.request.post(`${origin}/api/deed`, { headers: { origin }, data: { do: "happened", on: "2026-05-01", what: { kind: "cut", piece: mark, from: stock } } });
  assert.equal(again.status(), 409);
  assert.match((await again.json()).words, /is cut already/);
  assert.deepEqual(phone.troubles.filter((words) => !/409/.test(words)), []);
  await program.stop();
});

const MM = 96 / 25.4;

test("templates are at true scale, on the page, on paper and as drawings", async () => {
  const folder = chosen("estate-v6");
  const program = await open(folder);
  const page = await visit(chrome, program.address, LAPTOP);
  await go(page, "Cut");
  const templates = card(page, "Templates to wrap round a tube");
  await templates.getByText(/100 mm and 4 in must/).waitFor();
  await shot(page, "templates-closed-laptop");
  const strip = templates.locator("details.template", { hasText: "clock strip for Ø57" });
  await strip.locator("summary").click();
  const image = strip.locator("img.true");
  await page.waitForFunction(() => [...document.querySelectorAll("details[open] img.true")].every((one) => one.complete && one.naturalWidth > 0));
  const svg = await (await page.request.get(new URL(await image.getAttribute("src"), program.address).href)).text();
  const [, width, box] = /<svg [^>]*width="([\d.]+)mm"[^>]*viewBox="0 0 ([\d.]+) /.exec(svg);
  assert.equal(width, box, "a millimetre of the drawing is one of the paper");
  // Once round a tube of 57 mm on paper of 0.1 mm, the tab and the room round it.
  assert.ok(Number(width) > Math.PI * 57.1 && Number(width) < Math.PI * 57.1 + 45, width);
  const shown = await image.evaluate((one) => one.getBoundingClientRect().width - 2);
  assert.ok(Math.abs(shown - Number(width) * MM) < 0.6, `${shown} px for ${width} mm`);
  const ruler = /data-layer="ruler-100-mm">([\s\S]*?)<\/g>/.exec(svg)[1];
  const across = [...ruler.matchAll(/M([\d.]+) /g)].map(([, x]) => Number(x));
  assert.ok(Math.abs(Math.max(...across) - Math.min(...across) - 100) < 0.01, "the check ruler is 100 mm long");
  assert.match(svg, /data-layer="ruler-4-in"/);
  await shot(page, "templates-laptop");
  // The drawing for another program is the same as the command's.
  const out = join(folder, "out");
  found("sheets", folder, "--out", out);
  const dxf = await (await page.request.get(new URL(await strip.getByRole("link", { name: "DXF" }).getAttribute("href"), program.address).href)).text();
  const curve = (text) => text.split("\n").filter((line) => /^\s*-?\d+\.\d+$/.test(line)).join();
  assert.ok(curve(dxf).length > 1000);
  assert.equal(curve(dxf), curve(readFileSync(join(out, "templates", "clock-strip-57.dxf"), "utf8")));
  // On paper: each page as large as its sheet, the drawing as large as it says.
  await page.evaluate(() => { window.print = () => { window.wasPrinted = true; }; });
  for (const [paper, size, points] of [["A4", [297, 210], [842, 595]], ["US Letter", [279.4, 215.9], [792, 612]]]) {
    await templates.getByRole("button", { name: paper, exact: true }).click();
    await settled(page);
    await strip.getByRole("button", { name: /^Print at true scale/ }).click();
    await page.waitForFunction(() => window.wasPrinted === true);
    await page.emulateMedia({ media: "print" });
    const sheets = await page.locator(".truepages img").evaluateAll((all) => all.map((one) => [one.getBoundingClientRect().width, one.getBoundingClientRect().height]));
    for (const sheet of sheets) {
      assert.ok(sheet.every((pixels, axis) => Math.abs(pixels - size[axis] * MM) < 0.1), `${sheet} px on ${paper}`);
    }
    assert.equal(await page.locator("#page").isVisible(), false, "nothing else is printed");
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
    const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [Math.round(w), Math.round(h)]);
    assert.deepEqual(boxes, sheets.map(() => points), `${paper}: one page for each sheet`);
    await page.evaluate(() => { window.wasPrinted = false; window.dispatchEvent(new Event("afterprint")); });
    await page.emulateMedia({ media: "screen" });
    await page.locator(".truepages").waitFor({ state: "detached" });
  }
  const phone = await visit(chrome, program.address, PHONE);
  await go(phone, "Cut");
  await card(phone, "Templates to wrap round a tube").locator("summary").first().click();
  assert.ok(await phone.evaluate(() => document.documentElement.scrollWidth - innerWidth) <= 0, "it scrolls inside its card");
  await shot(phone, "templates-phone");
  assert.deepEqual([...page.troubles, ...phone.troubles], []);
  await program.stop();
});

test("errands and buy or make say what the commands say", async () => {
  const folder = chosen("kitcar-mid4");
  const program = await open(folder);
  const phone = await visit(chrome, program.address, PHONE);
  await go(phone, "Buy");
  await phone.getByText("Errands").click();
  const form = phone.locator("details.errands");
  const suppliers = await form.getByRole("button", { name: /^add (?!another)/ }).allInnerTexts();
  assert.ok(suppliers.length > 0, "the suppliers of the list are offered");
  const line = (scope, label) => scope.locator("label.line", { hasText: label }).locator("input, select");
  await line(form, "Leave the shop at").fill("07:45");
  const names = ["North", "South", "Gasket shop"];
  const hours = [["08:00", "09:00", "15", "30"], ["10:00", "17:00", "20", "12"], ["08:00", "12:00", "5", ""]];
  for (const [at, name] of names.entries()) {
    await form.getByRole("button", { name: "add another stop" }).click();
    const stop = form.locator("fieldset.stop").nth(at);
    const [opens, closes, minutes, road] = hours[at];
    await line(stop, "Name").fill(name);
    await line(stop, "Opens").fill(opens);
    await line(stop, "Closes").fill(closes);
    await line(stop, "Minutes there").fill(minutes);
    await line(stop, "Minutes by road").fill(road);
  }
  // No road leads to the third yet: that is said, and not guessed.
  await form.getByRole("button", { name: "Find the order" }).click();
  await form.getByRole("alert").filter({ hasText: "no road leads to Gasket shop" }).waitFor();
  await form.getByRole("button", { name: "add a road between two stops" }).click();
  const road = form.locator("fieldset.stop").last();
  await line(road, "From").selectOption("North");
  await line(road, "To").selectOption("Gasket shop");
  await line(road, "Minutes, either way").fill("7");
  await form.getByRole("button", { name: "Find the order" }).click();
  await form.getByText("No other order is back sooner").waitFor();
  const said = JSON.parse(run(
    "errands", folder, "--json", "--leave", "7:45",
    ...names.flatMap((name, at) => ["--stop", `${name}, ${hours[at][0]}-${hours[at][1]}, ${hours[at][2]}`]),
    "--road", "shop, North, 30", "--road", "shop, South, 12", "--road", "North, Gasket shop, 7",
  ));
  const rows = await form.locator(".round-trip li").allInnerTexts();
  assert.deepEqual(rows.map((row) => row.replace(/\s+/g, " ").trim()), [
    "leave the shop 7:45",
    ...said.round.map((one) => `done at ${one.stop} ${one.leaves.trim()}`),
    `back at the shop ${said.back.trim()}`,
  ]);
  assert.match(await form.innerText(), /Bought from, but not on the round: /);
  await shot(phone, "errands-phone");
  // What was typed is there the next time; another name keeps its road.
  await phone.reload();
  await settled(phone);
  await phone.getByText("Errands (3 stops)").click();
  await line(form.locator("fieldset.stop").nth(2), "Name").fill("Gaskets");
  await form.getByRole("button", { name: "Find the order" }).click();
  await form.getByText(/done at Gaskets/).waitFor();

  await phone.getByRole("heading", { name: "Buy or make" }).click();
  const make = phone.locator("details", { has: phone.getByRole("heading", { name: "Buy or make" }) });
  const typed = { Price: "42,50", "Minutes on the road": "40", "Minutes of waiting": "0", "Minutes to make": "90", Material: "six" };
  for (const [label, value] of Object.entries(typed)) {
    await line(make, label).fill(value);
  }
  await make.getByRole("button", { name: "Compare" }).click();
  await make.getByRole("alert").filter({ hasText: "Material for making it: type a number" }).waitFor();
  await line(make, "Material").fill("6");
  await make.getByRole("button", { name: "Compare" }).click();
  await make.getByRole("status").waitFor();
  const sums = run("buy-or-make", folder, "--price", "42.5", "--drive", "40", "--wait", "0", "--make", "90", "--material", "6").replace(/\s+/g, " ").trim();
  const told = await make.getByRole("status").innerText();
  assert.ok(told.endsWith(sums), `${told} is ${sums}`);
  await shot(phone, "make-phone");
  assert.deepEqual(phone.troubles.filter((words) => !/409/.test(words)), []);
  await program.stop();
});

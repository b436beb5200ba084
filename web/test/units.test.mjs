// Lengths as the page writes them: never −0, never 12 in beside feet, and what is written is what was meant.

import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { test } from "node:test";
import { transformWithEsbuild } from "vite";

const source = new URL("../src/units.ts", import.meta.url);
const { code } = await transformWithEsbuild(await readFile(source, "utf8"), "units.ts", { format: "esm" });
const units = await import(`data:text/javascript,${encodeURIComponent(code)}`);

/** Millimetres about every thirty-second of an inch from −1 in to 50 in, on it and to either side. */
function* millimetres() {
  for (let parts = -32; parts <= 50 * 32; parts += 1) {
    for (const beside of [-0.39, -0.01, 0, 0.01, 0.39]) {
      yield parts / 32 * 25.4 + beside;
    }
  }
}

/** Inches of `11 ft 2-5/8 in`. */
function inches(text) {
  const found = /^(−?)(?:(\d+) ft )?(?:(\d+)(?:-(\d+)\/(\d+))?|(\d+)\/(\d+)) in$/.exec(text);
  assert.ok(found, text);
  const [, sign, feet = 0, whole = 0, top = 0, bottom = 1, over = 0, under = 1] = found;
  const value = 12 * feet + Number(whole) + top / bottom + over / under;
  assert.ok(feet === 0 || value - 12 * feet < 12, text);
  return sign === "" ? value : -value;
}

test("a length is written to the nearest division", () => {
  for (const mm of millimetres()) {
    for (const write of [units.length, units.long]) {
      const text = write(mm, "in");
      assert.ok(Math.abs(inches(text) - mm / 25.4) <= 1 / 32 + 1e-9, `${mm} mm as ${text}`);
    }
  }
  assert.equal(units.long((2 * 12 + 11.97) * 25.4, "in"), "3 ft 0 in");
  assert.equal(units.long(3850, "in"), "12 ft 7-9/16 in");
  assert.equal(units.long(3850, "mm"), "3.85 m");
});

test("nought has no minus, in no unit", () => {
  for (const mm of [...millimetres(), -1e-9, -0]) {
    for (const unit of ["mm", "in"]) {
      for (const write of [units.length, units.saw, units.small, units.coordinate, units.signed, units.long]) {
        const text = write(mm, unit);
        assert.ok(!text.includes("-0") && !/^−[0.]+( |$)/.test(text), `${mm} mm as ${text}`);
      }
    }
  }
  assert.equal(units.signed(-0.01, "mm"), "+0.0 mm");
  assert.equal(units.signed(-3.14, "mm"), "−3.1 mm");
  assert.equal(units.degrees(-0.01), "0.0°");
});

test("words have their lengths in inches, names keep theirs", () => {
  const words = "102 mm too near “pipe 60 mm”, bump 102 mm; M10 mmm 5 mm.";
  assert.equal(units.prose(words, "in"), "4 in too near “pipe 60 mm”, bump 4 in; M10 mmm 3/16 in.");
  assert.equal(units.prose(words, "mm"), words);
});

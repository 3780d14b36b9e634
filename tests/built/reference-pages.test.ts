// tests: what the reference pages show is what the functions do: the formula is that of STEPS, and a picture has the figures
// of its example.

import { readFileSync } from "node:fs";
import { basename, join } from "node:path";
import { describe, expect, test } from "vitest";
import { pagesIn } from "../../src/build/links.ts";
import { distFolder } from "../../src/build/paths.ts";
import { symbolInWords } from "../../src/build/reference/formulas.ts";
import { pictureOf } from "../../src/build/reference/pictures.ts";
import { readPage as read } from "../support/page-reader.ts";
import { sheet } from "../support/sheet.ts";

const pages = pagesIn(join(distFolder, "reference")).map((path) => ({
  name: basename(path),
  page: read(readFileSync(path, "utf8")),
}));
const texts = (page: ParentNode, selector: string) =>
  [...page.querySelectorAll(selector)].map(({ textContent }) => textContent ?? "");

describe("formulas", () => {
  const formulas = pages
    .map(({ name, page }) => ({
      name,
      lines: texts(page.querySelector(".math") ?? read(""), "annotation"),
      steps: texts(page, "pre").join("\n").split("\n"),
    }))
    .filter(({ lines }) => lines.length > 0);

  test("stand on most pages", () => expect(formulas.length).toBeGreaterThan(50));

  test.each(formulas)("$name: the symbols of each line are those of STEPS", ({ lines, steps }) => {
    const words = (text: string) => [...new Set(text.match(/[A-Za-z]\w*/g))];
    const notSymbols = new Set([
      "pi",
      "mod",
      "text",
      "atan2",
      "sin",
      "cos",
      "tan",
      "max",
      "min",
      "ln",
      "log",
    ]);
    const written = steps.filter((step) => step.includes(" = "));
    for (const line of lines) {
      const [symbol, ...others] = [...line.matchAll(/\\text\{([^}]+)\}/g)].map(([, name]) => name);
      // STEPS writes a line with its symbols, then the same line with figures.
      const step = written.find((one) => symbolInWords(one.split(" = ")[0]) === symbol);
      expect(step, `no line of STEPS for ${symbol}`).toBeDefined();
      const inStep = words(step!.slice(step!.indexOf(" = ")))
        .map(symbolInWords)
        .filter((name) => !notSymbols.has(name));
      for (const name of new Set(others)) expect(inStep, step).toContain(name);
    }
  });
});

describe("pictures", () => {
  const shown = (id: string) => texts(read(pictureOf(id)), "svg text");

  test.each([
    ["LIMITS", ["12 H7"]],
    ["REAMERLIMITS", ["20 H7"]],
  ])("%s has the limits of its example", (id, args) => {
    const [row] = sheet(id, ...args) as number[][];
    for (const size of row) expect(shown(id).join(" ")).toContain(size.toFixed(3));
  });

  test("RUNOUT and SCREWMOVES have the figures of their example", () => {
    const readings = [0, 0.003, 0.008, 0.005];
    const [[, angle]] = sheet("RUNOUT", ...readings) as number[][];
    expect(shown("RUNOUT")).toContain(`${Math.round(angle)}°`);
    const [moves] = sheet("SCREWMOVES", ...readings) as number[][];
    const moving = moves.filter((move) => move > 0);
    expect(moving).toHaveLength(2);
    for (const move of moving) expect(shown("SCREWMOVES")).toContain(`moves ${move}`);
  });

  test("VBLOCK has its reading and its diameter", () => {
    const [[diameter]] = sheet("VBLOCK", 15, 3) as number[][];
    expect(shown("VBLOCK")).toEqual(expect.arrayContaining([`diameter ${diameter}`, "reading 15"]));
  });
});

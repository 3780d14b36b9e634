// tests: a before and after of an invented part. Worked out in Python: Student's t for the range of the mean, the items
// of cost per part, payback and break-even.

import { describe, expect, test } from "vitest";
import { beforeAndAfter } from "../../src/papers/before-and-after.ts";
import { exampleRow as row } from "../support/example-parts.ts";
import { type PaperPage, paperPage } from "../support/paper-page.ts";

const readings = [
  [9, 12, 7, 11, 14, 10, 8, 13, 11, 6, 12, 10, 15, 9, 11, 8, 12, 10, 13, 9, 11, 7, 12, 10, 10],
  [10, 12, 9, 11, 13, 10, 8, 11, 12, 10, 9, 11, 13, 10, 11, 12, 9, 10, 11, 12, 8, 10, 11, 12, 10],
];
const lives = [
  [210, 190, 230, 205, 215],
  [940, 1010, 1080, 990, 1030],
];

/** Columns beside the page. */
const [LABEL, BASIS, PRESENT, PROPOSED] = ["N", "O", "P", "Q"];

async function comparison(count = 5): Promise<PaperPage> {
  const page = paperPage(beforeAndAfter(row, 46_352, "A4"));
  const { grid } = page;
  const rowOf = (label: string, from = 1) => {
    for (let at = from; at < 200; at++) if (grid.shown(`${LABEL}${at}`) === label) return at;
    throw new Error(`no input ${label}`);
  };
  const put = (
    label: string,
    present: string | number,
    proposed: string | number = "",
    basis = "measured",
  ) => {
    const at = rowOf(label);
    grid.type(`${PRESENT}${at}`, present);
    if (proposed !== "") grid.type(`${PROPOSED}${at}`, proposed);
    grid.type(`${BASIS}${at}`, basis);
  };
  put("Parts per year", 6000);
  put("Machine rate, per hour", 72);
  const operations = rowOf("Operations, s") + 1;
  [
    ["load", 40, 40],
    ["drill", 58, 60],
    ["bore", 66, ""],
    ["ream", 54, 24],
  ].forEach((cells, at) => {
    [LABEL, PRESENT, PROPOSED].forEach((column, index) => {
      if (cells[index] !== "") grid.type(`${column}${operations + at}`, cells[index]);
    });
    grid.type(`${BASIS}${operations + at}`, "measured");
  });
  put("Tool", "HSS", "coated carbide head");
  put("Price of the tool", 118, 240, "quoted");
  put("Edges", 1, 1);
  put("Regrinds", 4, 2);
  put("Cost of a regrind", 26, 60, "quoted");
  put("Edge change, s", 300, 180);
  put("Other cost per part", 0.55, 0.2);
  put("Scrap, share of the parts", 0.015, 0.005, "estimated");
  const edge = rowOf("Edge 1");
  const reading = rowOf("Reading 1");
  [PRESENT, PROPOSED].forEach((column, side) => {
    lives[side].slice(0, count).forEach((life, at) => {
      grid.type(`${column}${edge + at}`, life);
    });
    readings[side].forEach((um, at) => {
      grid.type(`${column}${reading + at}`, (16_000 + um) / 1000);
    });
  });
  grid.type(`${BASIS}${edge}`, "measured");
  grid.type(`${BASIS}${reading}`, "measured");
  put("Gauge: repeatability EV", 0.0005);
  put("Gauge: reproducibility AV", 0.0004);
  const investment = rowOf("Investment") + 1;
  [
    ["2 holders", 1900],
    ["3 heads", 720],
    ["trials", 1280],
    ["program", 1300],
  ].forEach(([label, amount], at) => {
    grid.type(`${LABEL}${investment + at}`, label);
    grid.type(`${PRESENT}${investment + at}`, amount);
  });
  return page;
}
const figures = (page: PaperPage, label: string) => page.line(label).slice(1, 3);

/** For the tests that only read. */
const filledIn = comparison();

describe("a before and after", () => {
  test("prints operations, tool and life", async () => {
    const page = await filledIn;
    expect(page.line("Cycle time, s").slice(1)).toEqual(["218", "124", "removed: bore"]);
    for (const [label, expected] of [
      ["Parts per hour", ["16.5", "29.0"]],
      ["Edge cost", ["44.40", "120.00"]],
      ["Mean life, parts", ["210", "1,010"]],
      ["Range of the mean, 95 %, from", ["191", "946"]],
      ["to", ["228", "1,073"]],
      ["Edges counted", ["5", "5"]],
      ["Edges per year", ["29", "6"]],
      ["Tools per year", ["6", "2"]],
    ] as const)
      expect(figures(page, label), label).toEqual(expected);
  });

  test("prints the measured holes with their number", async () => {
    const page = await filledIn;
    for (const [label, expected] of [
      ["Parts measured", ["25", "25"]],
      ["Lowest", ["16.006", "16.008"]],
      ["Highest", ["16.015", "16.013"]],
      ["Mean", ["16.0104", "16.0106"]],
      ["Standard deviation", ["0.0022", "0.0014"]],
      ["Cp", ["1.34", "2.17"]],
      ["Cpk", ["1.13", "1.78"]],
      ["Cpk at least (95 %)", ["0.84", "1.34"]],
      ["Expected in tolerance", ["99.97 %", "over 99.99 %"]],
    ] as const)
      expect(figures(page, label), label).toEqual(expected);
    expect(page.line("Parts measured")).toContain("gauge share 21 %, marginal");
  });

  test("prints the cost of a part item by item", async () => {
    const page = await filledIn;
    for (const [label, expected] of [
      ["Machine time", ["4.36", "2.48", "1.88"]],
      ["Edge", ["0.21", "0.12", "0.09"]],
      ["Edge change", ["0.03", "0.00", "0.03"]],
      ["Other operations", ["0.55", "0.20", "0.35"]],
      ["Scrap", ["0.08", "0.01", "0.06"]],
      ["Cost per part", ["5.23", "2.82", "2.41"]],
      ["Saving, % of present", ["46.1"]],
    ] as const) {
      expect(page.line(label).slice(1, 1 + expected.length), label).toEqual(expected);
    }
    expect(page.line("Cost per year").slice(1)).toEqual(["31,371", "16,899", "14,472"]);
  });

  test("prints the year from low to high life, and what if hours or scrap stay", async () => {
    const page = await filledIn;
    for (const [label, expected] of [
      ["Life, present", ["210", "210", "210", "228", "210", "210"]],
      ["Life, proposed", ["946", "1,010", "1,073", "946", "1,010", "1,010"]],
      ["Cost per part, present", ["5.23", "5.23", "5.23", expect.any(String), "5.23", "0.77"]],
      ["Cost per part, proposed", ["2.82", "2.82", "2.81", "2.82", "2.85", "0.32"]],
      ["Saving per part", ["2.40", "2.41", "2.42", "2.38", "2.38", "0.45"]],
      ["Saving per year", ["14,422", "14,472", "14,515", "14,306", "14,300", "2,716"]],
      ["Payback, months", ["4.3", "4.3", "4.3", "4.4", "4.4", "23.0"]],
    ] as const)
      expect(page.line(label).slice(1), label).toEqual(expected);
    const tools = page
      .text()
      .split("\n")
      .filter((text) => text.startsWith("Tools per year | "));
    expect(tools[1].split(" | ").slice(1)).toEqual(["3", "2", "2", "3", "2", "2"]);
    expect([
      page.beside("Investment"),
      page.beside("Break-even, parts"),
      page.beside("Machine hours freed per year"),
    ]).toEqual(["5,200", "2,156", "157"]);
    expect(page.text()).toContain("Saving per part: 2.41 USD (2.40 to 2.42); hours unused: 0.45");
    expect(page.text()).toContain("Saving per year: 14,472 USD (14,422 to 14,515); hours unused: 2,716");
    expect(page.text()).toContain("Payback, months: 4.3 (4.3 to 4.3); hours unused: 23.0");
  });

  test("says what it rests on and what nobody measured", async () => {
    const page = await filledIn;
    const text = page.text();
    expect(text).toContain("Life: mean of 5 edges (present) and 5 (proposed)");
    expect(text).toContain("Holes: 25 and 25 parts, gauge share 21 %, marginal.");
    expect(text).toContain(
      "Not measured: Price of the tool, Cost of a regrind, Scrap, share of the parts, 2 holders, 3 heads, trials, program.",
    );
    expect(text).not.toContain("Not stated");
    expect(text).not.toMatch(/up to|#[A-Z]/i);
  });

  test("with nothing typed shows no error and no zero that is none", async () => {
    const page = paperPage(beforeAndAfter(row, 46_352, "A4"));
    expect(page.text()).not.toMatch(/#[A-Z]/);
    expect(page.text()).toContain(
      "Not available yet. Type beside the page: parts per year, machine rate, operations (present), tool (present), price of the tool (present), operations (proposed), tool (proposed), price of the tool (proposed), lives (present), lives (proposed).",
    );
    expect(page.text()).not.toMatch(/Cost of a part|Saving per year|0\.00/);
    expect(page.text()).toContain("Not stated, counted as 0: edge change, s (present)");
    expect(page.beside("Cycle time, s")).toBe("");
  });

  test("with one life has no range, and the mean column only", async () => {
    const page = await comparison(1);
    expect(figures(page, "to")).toEqual(["one edge, no range", "one edge, no range"]);
    expect(page.line("Life, proposed").slice(1)).toEqual(["940", "940", "940"]);
    expect(page.text()).toContain("(one edge, no range)");
  });

  test("a scrap that is measured is not printed as today's", async () => {
    const page = await comparison();
    for (let at = 1; at < 60; at++)
      if (page.grid.shown(`${LABEL}${at}`) === "Scrap, share of the parts")
        page.grid.type(`${BASIS}${at}`, "measured");
    expect(page.line("Saving per part").slice(1)).toEqual(["2.40", "2.41", "2.42", "2.38", "0.45"]);
  });
});

// tests: the trouble sheet, filled in with invented readings. Form by hand: least-squares slope, entry less the mean of
// the others, middle less the mean of the ends; halves away from zero.

import { describe, expect, test } from "vitest";
import { remediesFor } from "../../src/calc/plans/remedies.ts";
import { symptoms, troubleSheet } from "../../src/papers/trouble-sheet.ts";
import { exampleRow as row } from "../support/example-parts.ts";
import { type PaperPage, paperPage } from "../support/paper-page.ts";

async function measured(...holes: readonly (readonly (number | "")[])[]): Promise<PaperPage> {
  const page = paperPage(troubleSheet(row, "A4"));
  page.fill("Position", 3, 20, 37);
  for (const [hole, readings] of holes.entries()) page.fill(`Hole ${hole + 1}`, ...readings);
  return page;
}
/** Rows of the second and third table: those that begin with the hole's name or number. */
const means = (page: PaperPage, hole: number) =>
  page
    .text()
    .split("\n")
    .filter((line) => line.startsWith(`Hole ${hole} |`))[1]
    .split(" | ")
    .slice(1);
const form = (page: PaperPage, hole: number) => page.line(String(hole)).slice(1);

describe("a trouble sheet", () => {
  test("prints the form of four holes and the causes of a bell-mouth", async () => {
    const page = await measured(
      [16.025, 16.027, 16.016, 16.016, 16.015, 16.015],
      [16.022, 16.024, 16.014, 16.014, 16.013, 16.014],
      [16.023, 16.024, 16.015, 16.016, 16.015, 16.014],
      [16.019, 16.021, 16.013, 16.013, 16.012, 16.013],
    );
    expect([1, 2, 3, 4].map((hole) => means(page, hole))).toEqual([
      ["16.0260", "16.0160", "16.0150"],
      ["16.0230", "16.0140", "16.0135"],
      ["16.0235", "16.0155", "16.0145"],
      ["16.0200", "16.0130", "16.0125"],
    ]);
    expect([1, 2, 3, 4].map((hole) => form(page, hole))).toEqual([
      ["−0.011", "+0.011", "−0.005", "bell-mouth", "16.027", "over by 0.009", "16.015", "ok", "0.002"],
      ["−0.010", "+0.009", "−0.004", "bell-mouth", "16.024", "over by 0.006", "16.013", "ok", "0.002"],
      ["−0.009", "+0.009", "−0.004", "bell-mouth", "16.024", "over by 0.006", "16.014", "ok", "0.001"],
      ["−0.008", "+0.007", "−0.003", "bell-mouth", "16.021", "over by 0.003", "16.012", "ok", "0.002"],
    ]);
    expect(page.beside("Suggested by the form")).toBe("bell-mouth");
    expect(page.beside("Causes listed for")).toBe("bell-mouth");
    const causes = page
      .text()
      .split("\n")
      .filter((line) => /^☐ \d/.test(line));
    expect(causes.length).toBe(7);
    expect(causes[0]).toContain("Spindle and hole out of line");
    expect(causes[6]).toContain("Chamfer teeth ground unequal");
  });

  test.each([
    [[16.01, 16.01, 16.006, 16.006, 16.002, 16.002], "taper"],
    [[16.02, 16.02, 16.021, 16.021, 16.02, 16.02], "oversize"],
    [[15.99, 15.99, 15.991, 15.991, 15.99, 15.99], "undersize"],
    [[16.004, 16.015, 16.004, 16.015, 16.004, 16.015], "not round"],
    [[16.008, 16.008, 16.008, 16.008, 16.008, 16.008], ""],
  ])("%j suggests %s", async (readings, symptom) => {
    const page = await measured(readings);
    expect(page.beside("Suggested by the form")).toBe(symptom);
  });

  test("lists all causes of every symptom, typed over the suggestion", async () => {
    const page = await measured();
    for (const symptom of symptoms) {
      page.fill("Another symptom", symptom);
      const causes = page
        .text()
        .split("\n")
        .filter((line) => /^☐ \d/.test(line));
      expect(causes.length, symptom).toBe(remediesFor(symptom).length);
    }
  });

  test("says what it lacks: a third position, a second direction, a temperature", async () => {
    const page = paperPage(troubleSheet(row, "A4"));
    page.fill("Position", 3, 20);
    page.fill("Hole 1", 16.02, "", 16.02);
    expect(page.line("1")).toContain("not available");
    expect(page.text()).toContain("Form not available: three positions needed.");
    expect(page.line("1")).toContain("one direction");
    expect(page.beside("Largest reading at 20 °C (68 °F)")).toBe("");
    page.fill("Part temperature, °C", 22);
    expect(page.beside("Largest reading at 20 °C (68 °F)")).toContain("not corrected");
    page.fill("Part temperature, °C", 40);
    // 16.02 / (1 + 11e-6 · 20) = 16.016; an iron's expansion is near 11e-6 to 12e-6.
    expect(page.beside("Largest reading at 20 °C (68 °F)")).toBe("16.016");
    expect(page.text()).toMatch(/Lock out the drive|Nothing is switched off/);
  });
});

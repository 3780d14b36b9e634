import { describe, expect, test } from "vitest";
import { cell, down, messageOf, row, said, sheet } from "../support/sheet.ts";

const rounded = (cells: unknown[]) => cells.map((one) => Number((one as number).toFixed(5)));

describe("TAYLORFIT", () => {
  const fit = [0.22723, 59.80661, 0.99494];

  test("takes texts as numbers and passes over a pair of which one is blank", () => {
    const speeds = down(20, "25", "", 0, 30, 40);
    const lives = down(120, 50, 70, 80, "20", null);
    expect(rounded(row("TAYLORFIT", speeds, lives))).toEqual(fit);
  });

  test("takes rows as well as columns", () => {
    expect(rounded(row("TAYLORFIT", [[20, 25, 30]], [[120, 50, 20]]))).toEqual(fit);
  });

  test("nothing recorded yet gives an empty row", () => {
    expect(sheet("TAYLORFIT", down(null, null), down(null, null))).toEqual([["", "", ""]]);
  });

  test.each([
    [down(20), down(120), /^speeds and lives hold 1 pair\. A fit needs two or more/],
    [down(20, null), down(null, 50), /^speeds and lives hold 0 pairs/],
    [down(20, 20), down(120, 50), /^speeds are all 20\. A fit needs lives at two speeds or more/],
    [down(20, 25, 30), down(120, 50), /^speeds has 3 cells and lives has 2. Make them the same size.$/],
    [down(20, "fast"), down(120, 50), /^speeds \(entry 2 of the list\) "fast" is not a number/],
    [down(20, 25), down(120, -5), /^lives \(entry 2 of the list\) is -5. Write a number over 0/],
  ])("refuses %j and %j in every cell", (speeds, lives, message) => {
    const cells = row("TAYLORFIT", speeds, lives);
    expect(cells.length).toBe(3);
    for (const one of cells) expect(messageOf(one)).toMatch(message);
  });

  test("lives that grow with the speed have no fit", () => {
    expect(messageOf(cell("TAYLORFIT", down(20, 30), down(50, 120)), "#N/A")).toMatch(
      /n lies between 0 and 1/,
    );
  });

  test("an error cell in a list makes the result that error", () => {
    const divided = { code: "#DIV/0!" };
    expect(row("TAYLORFIT", down(20, divided, 30), down(120, 50, 20))).toEqual([divided, divided, divided]);
  });
});

describe("lives and speeds", () => {
  test.each([0, 1, -0.2])("n of %d lies outside 0 to 1", (n) => {
    expect(messageOf(cell("TAYLORLIFE", 18, n, 60))).toMatch(/^n is/);
    expect(messageOf(cell("ECONOMICSPEED", n, 70, 120, 3, 30))).toMatch(/^n is/);
  });

  test("a life too long to compute with is refused, not shown as infinite", () => {
    expect(messageOf(cell("TAYLORLIFE", 1e-9, 0.001, 1e9))).toMatch(/too large to compute with/);
  });

  test("a column of speeds gives a life each, an empty row nothing", () => {
    // (60/v)^4: 60/20 is 3, 60/15 is 4.
    const cells = sheet("TAYLORLIFE", down(20, null, 15, 30), 0.25, 60);
    expect(cells.map(([life]) => (life === "" ? "" : Math.round(life as number)))).toEqual([81, "", 256, 16]);
  });

  test("a time in the cut of nothing is refused", () => {
    expect(messageOf(cell("PARTSPEREDGE", 120, 0))).toMatch(/^cutTime is /);
  });
});

describe("speeds of least cost and most parts", () => {
  test("where an edge costs nothing both are the same", () => {
    expect(cell("ECONOMICSPEED", 0.2, 70, 120, 0, 30)).toBeCloseTo(cell("FASTESTSPEED", 0.2, 70, 120), 9);
  });

  test("a change that costs nothing has no best speed", () => {
    expect(messageOf(cell("ECONOMICSPEED", 0.2, 70, 0, 0, 30))).toMatch(
      /^changeTime and edgeCost are both empty or 0/,
    );
    expect(messageOf(cell("FASTESTSPEED", 0.2, 70, 0))).toMatch(/^changeTime is /);
  });
});

describe("COSTATSPEED", () => {
  test("costs least at ECONOMICSPEED, but for the parts that are whole", () => {
    const [n, c, change, edge, rate] = [0.25, 60, 120, 40, 90];
    const best = cell("ECONOMICSPEED", n, c, change, edge, rate, 2);
    const cost = (speed: number) => row("COSTATSPEED", speed, n, c, 12, 0.3, 30, change, edge, rate, 2)[3];
    for (const share of [0.8, 0.9, 1.1, 1.2]) expect(cost(best * share)).toBeGreaterThan(cost(best));
  });

  test("in inches comes to the same time, life and cost as in mm", () => {
    const metric = row("COSTATSPEED", 18, 0.25, 60, 12, 0.3, 30, 120, 40, 90, 2);
    const feet = 1 / 0.3048;
    const [speed, c, feed] = [18 * feet, 60 * feet, 0.3 / 25.4];
    const inch = row("COSTATSPEED", speed, 0.25, c, "12 mm", feed, "30 mm", 120, 40, 90, 2, "in");
    expect(inch.map((one) => one.toFixed(6))).toEqual(metric.map((one) => one.toFixed(6)));
  });

  test("an edge that does not last one hole is no answer", () => {
    const cells = sheet("COSTATSPEED", down(18, 5000), 0.25, 60, 12, 0.3, 30, 120, 40, 90);
    expect(cells[0].every((one) => typeof one === "number")).toBe(true);
    expect(
      cells[1].map(said).every((one) => /^#N\/A surfaceSpeed is 5000\. .* less than one hole/.test(`${one}`)),
    ).toBe(true);
  });
});

// tests: the shop's own table, plans of one hole, forms of holes, and quantiles, against values worked by hand, published
// tables and a general-purpose library.

import { describe, expect, test } from "vitest";
import { erf } from "../../../src/build/mathjs.ts";
import { holeForm } from "../../../src/calc/setup/hole-form.ts";
import { normalQuantile, studentQuantile } from "../../../src/calc/setup/student.ts";
import { remedies } from "../../../src/data/remedies.ts";
import { cell, down, isError, messageOf, row, sheet } from "../../support/sheet.ts";
import { problemOf } from "../golden-file.ts";

const table = [
  ["Material", "Tool", "Over", "Up to", "Speed low", "Speed high", "Feed", "Stock", "Max RPM", "Note"],
  ["GGG40", "coated carbide", 10, 20, 80, 100, 1.2, null, 6000, "own trials"],
  ["ductile iron", "HSS", 0, 10, 18, 22, null, 0.15, null, null],
  ["ductile iron", "HSS", 10, 30, 16, 20, null, null, null, null],
  ["Alloy X", "", null, null, 5, 5, 0.1, null, null, "any tool"],
  [null, null, null, null, null, null, null, null, null, null],
];

describe("the shop's own table", () => {
  test.each([
    [["speed", "ductile iron", "coated carbide", 16], 90],
    [["SPEED", "GJS-400-15", "carbide head", 20], 90],
    [["Note", "ggg40", "TiAlN", 10.5], "own trials"],
    [["Feed", "Alloy X", "PCD", 3], 0.1],
    [["note", "alloy x"], "any tool"],
    [["speed", "ductile iron", "HSS", 10], 20],
    [["speed", "ductile iron", "HSS", 10.01], 18],
    [["feed", "ductile iron", undefined, 5], ""],
  ])("%j is %j", (args, expected) => {
    expect(cell("DATAFOR", table, ...args)).toBe(expected);
  });

  test("columns of columns, rows of rows", () => {
    expect(
      sheet("DATAFOR", table, "speed", "ductile iron", "HSS", down(5, 20, 40))
        .flat()
        .slice(0, 2),
    ).toEqual([20, 18]);
  });

  test("what it has no answer to", () => {
    expect(messageOf(cell("DATAFOR", table, "speed", "gray iron", "PCD", 12), "#N/A")).toBe(
      "table has no row for gray iron, PCD, 12.",
    );
    expect(messageOf(cell("DATAFOR", table, "price", "GGG40"))).toMatch(
      /^column "price" is not in table\. Its headers are material, tool,/,
    );
    expect(messageOf(cell("DATAFOR", table, "speed", "ductile iron", "HSS"))).toMatch(/^diameter is empty/);
    expect(messageOf(cell("DATAFOR", [["a"], [1]], "speed", "x"))).toMatch(/^table has no column "material"/);
    expect(
      cell(
        "DATAFOR",
        [
          ["material", "speed"],
          ["x", "fast"],
        ],
        "speed",
        "x",
      ),
    ).toBe("fast");
  });

  const steel = (...rows: unknown[][]) => [["material", "speed"], ...rows, ["C45", 15]];
  test("names each column once, and has 20,000 rows at the most; headers without a name are no columns", () => {
    const twice = [
      ["Material", "Speed", "speed, m/min"],
      ["C45", 15, 20],
    ];
    expect(messageOf(cell("DATAFOR", twice, "speed", "C45"))).toBe(
      'table has two columns "speed". Give each column its own header.',
    );
    const unnamed = [
      ["Material", null, null, "Speed"],
      ["C45", 1, 2, 15],
    ];
    expect(cell("DATAFOR", unnamed, "speed", "C45")).toBe(15);
    const rows = Array.from({ length: 20_000 }, () => ["GG25", 20]);
    expect(cell("DATAFOR", steel(...rows.slice(1)), "speed", "C45")).toBe(15);
    expect(messageOf(cell("DATAFOR", steel(...rows), "speed", "C45"))).toBe(
      "table has 20001 rows. Select at most 20000.",
    );
  });

  test("has rows that are empty, with spaces or nothing in them", () => {
    expect(cell("DATAFOR", steel([null, null], ["", "  "], [undefined, "\u200b"]), "speed", "C45")).toBe(15);
  });

  test("a table whose headers say the other unit is refused", () => {
    const metric = [
      ["Material", "Speed, m/min"],
      ["GG25", 20],
    ];
    expect(cell("DATAFOR", metric, "speed", "GG25")).toBe(20);
    expect(messageOf(cell("DATAFOR", metric, "speed", "GG25", undefined, undefined, "in"))).toMatch(
      /^table has the header "Speed, m\/min", and units is "in"/,
    );
  });
});

describe("numbers that a table has as text", () => {
  const sized = (over: unknown, upTo: unknown) => [
    ["material", "over", "up to", "speed"],
    ["steel", over, upTo, 8],
  ];
  const speedAt = (over: unknown, upTo: unknown, diameter: unknown, units?: string) =>
    cell("DATAFOR", sized(over, upTo), "speed", "steel", undefined, diameter, units);
  const planOf = (column: string, value: unknown, units = "mm") =>
    units === "mm"
      ? row("PLAN", "12 mm H7", "steel", 30, undefined, undefined, [
          ["material", column],
          ["steel", value],
        ])
      : row(
          "PLAN",
          ".5 in H7",
          "steel",
          1,
          undefined,
          undefined,
          [
            ["material", column],
            ["steel", value],
          ],
          "in",
        );

  test("a size with a unit of its own is converted, and one in inch style refused in mm", () => {
    // 3/8 in is 9.525 mm, 1/2 in is 12.7 mm.
    expect(speedAt("3/8 in", "1/2 in", 10)).toBe(8);
    expect(isError(speedAt("3/8 in", "1/2 in", 0.4))).toBe(true);
    expect(speedAt("10 mm", "20 mm", 0.5, "in")).toBe(8);
    expect(speedAt("3/8", "1/2", 0.4, "in")).toBe(8);
    expect(messageOf(speedAt("3/8", "1/2", 10))).toContain('"3/8" is an inch size');
  });

  test("a feed or stock with the other unit is converted", () => {
    expect(planOf("feed", "0.0127 in")[10]).toBeCloseTo(0.32258, 9);
    expect(planOf("feed", "0.3 mm", "in")[10]).toBeCloseTo(0.3 / 25.4, 12);
    expect(planOf("feed", "0.3 mm/rev")[10]).toBe(0.3);
    expect(planOf("stock", "0.01 in").slice(5, 8)).toEqual(["11.7", 11.7, 0.3]);
    expect(planOf("stock", "0.4 mm", "in")[5]).toBe("31/64");
    expect(planOf("feed per tooth", "0.05 mm/tooth")[10]).toBeCloseTo(0.4, 12);
  });

  test("the column's own unit is read, and every other one refused", () => {
    expect(planOf("speed", "22 m/min")[8]).toBe(22);
    expect(planOf("max rpm", "200 rpm")[9]).toBe(200);
    for (const [column, value] of [
      ["speed", "22 mm"],
      ["speed", "22 sfm"],
      ["feed", "0.05 mm/tooth"],
      ["feed per tooth", "0.3 mm/rev"],
      ["flutes", "6 mm"],
    ])
      expect(messageOf(planOf(column, value)[10]), `${column} ${value}`).toMatch(`table column "${column}"`);
  });

  test("flutes are whole, stock is less than the size, and an error cell comes back as itself", () => {
    expect(messageOf(planOf("flutes", 6.5)[10])).toContain('table column "flutes" has 6.5');
    expect(messageOf(planOf("stock", 12)[5])).toContain('table column "stock" has 12');
    expect(planOf("stock", 12)[0]).toBe(12);
    expect(planOf("speed", { code: "#DIV/0!" })[8]).toEqual({ code: "#DIV/0!" });
  });
});

describe("a plan", () => {
  const cells = (...args: unknown[]) => row("PLAN", ...args);

  test("takes the shop's values before the built-in ones", () => {
    // 90 m/min at 16 mm and 1.2 mm/rev: 2 + 40 + 3 mm in, and out at three times the feed.
    const plan = cells("16 H7 THRU", "ductile iron", 40, "coated carbide", undefined, table);
    expect(plan.slice(0, 8)).toEqual([16, 16.018, 16.008, 16.015, 16.01, "15.75", 15.75, 0.25]);
    expect(plan[8]).toBe(90);
    expect(plan[9]).toBeCloseTo(1790.4931, 4);
    expect(plan[11]).toBeCloseTo(2148.592, 3);
    expect(plan[12]).toBeCloseTo(1.6755, 4);
    expect(plan.slice(13)).toEqual([2.5, ""]);
  });

  test("is limited by the lower of the spindle's and the table's limit", () => {
    const plan = cells("16 H7 THRU", "ductile iron", 40, "coated carbide", 1500, table);
    expect(plan[8]).toBeCloseTo(75.398, 3);
    expect(plan.slice(9, 12)).toEqual([1500, 1.2, 1800]);
    expect(plan[12]).toBeCloseTo(2, 9);
    expect(plan[14]).toBe("limited by the spindle");
  });

  test("chooses the drill by the table's stock", () => {
    expect(cells("8 H7", "ductile iron", 10, undefined, undefined, table).slice(5, 8)).toEqual([
      "7.9",
      7.9,
      0.1,
    ]);
  });

  test("without a depth leaves time and depth ratio alone without an answer", () => {
    const plan = cells("12 H7", "C45");
    plan.forEach((one, at) => {
      expect(isError(one), `cell ${at + 1}`).toBe(at === 12 || at === 13);
    });
    expect(messageOf(plan[12], "#N/A")).toMatch(/^depth is empty/);
  });

  test("takes depth and through from the callout", () => {
    expect(cells("12 H7 x 30 deep", "C45")[13]).toBe(2.5);
    const [through, blind] = [cells("12 H7 THRU", "C45", 30), cells("12 H7", "C45", 30)];
    expect(through[12] / blind[12]).toBeCloseTo(35 / 32, 9);
  });

  test("of a hole coated after keeps speed and feed, and points to PREPLATE", () => {
    const plan = cells("12 H7 AFTER PLATING", "C45", 60);
    for (const at of [2, 3, 4, 5, 6, 7]) expect(messageOf(plan[at])).toContain("PREPLATE");
    expect(plan[8]).toBeCloseTo(13.716, 9);
    expect(plan[14]).toBe(
      "deeper than 4 diameters: less speed, a pilot hole; coated after reaming: sizes before coating by PREPLATE",
    );
  });

  test("goes by the lower limit where the nominal lies far outside the limits", () => {
    // 12 +0.52/+0.50 is a hole of 12.5.
    expect(cells("12 +0.52/+0.50", "C45", 25)[13]).toBe(2);
    expect(cells("12 +0.05/+0.02", "C45", 24)[13]).toBe(2);
  });

  test("warns in words, in one order", () => {
    expect(cells("10 H5 THRU", "Ti-6Al-4V", 50, undefined, 50)[14]).toBe(
      "limited by the spindle; deeper than 4 diameters: less speed, a pilot hole; tolerance narrower than the reamer's own; IT6 or finer: a finely adjusted or guided reamer, or a second pass; titanium chips burn: class D extinguisher, no water",
    );
    expect(cells("16 H7", "58 HRC", 20, "carbide")[14]).toBe(
      "no standard drill leaves the stock; hardened: carbide or CBN, little stock",
    );
  });

  test("is refused whole for a callout or material that cannot be read, and empty for an empty row", () => {
    for (const args of [
      ["hello", "C45"],
      ["12 H7", "blob"],
      ["12 h7", "C45"],
    ])
      for (const one of cells(...args)) expect(messageOf(one)).toMatch(/^(?:callout|material)/);
    expect(sheet("PLAN", down("12 H7", null), "C45")[1]).toEqual(new Array(15).fill(""));
  });
});

describe("the form of a hole", () => {
  test.each([
    [[12.02, 12.01, 12.01], [3, 15, 27], "bell-mouth"],
    [[12.0, 12.01, 12.01], [3, 15, 27], "tight entry"],
    [[12.016, 12.012, 12.01], [3, 15, 27], "taper"],
    [[12.0, 12.01, 12.0], [0, 15, 30], "barrel"],
    [[12.01, 12.0, 12.01], [0, 15, 30], "waist"],
    [[12.001, 12.002, 12.001], [0, 15, 30], "ok"],
    [[12.01, 12.012, 12.016], [27, 15, 3], "taper"],
  ])("%j at %j is %s", (diameters, positions, form) => {
    expect(holeForm(diameters, positions)[3]).toBe(form);
  });

  test("averages equal positions, and of an even number takes the two middle ones", () => {
    expect(holeForm([12.01, 12.03, 12.012, 12.01], [3, 3, 15, 27]).slice(0, 3)).toEqual(
      holeForm([12.02, 12.012, 12.01], [3, 15, 27]).slice(0, 3),
    );
    // Middle (12.012 + 12.010)/2, ends 12.016 and 12.008.
    expect(holeForm([12.016, 12.012, 12.01, 12.008], [0, 10, 20, 30])[2]).toBe(-0.001);
  });

  test("needs three positions", () => {
    expect(problemOf(() => holeForm([12, 12, 12], [0, 0, 5]))?.message).toMatch(/^positions has 2 different/);
  });
});

describe("quantiles", () => {
  // NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2: critical values of Student's t, upper 0.025.
  test.each([
    [1, 12.706],
    [2, 4.303],
    [4, 2.776],
    [10, 2.228],
    [30, 2.042],
    [100, 1.984],
  ])("Student's t of 97.5 %% with %d degrees is %d", (freedom, t) => {
    expect(studentQuantile(0.975, freedom)).toBeCloseTo(t, 3);
    expect(studentQuantile(0.025, freedom)).toBeCloseTo(-t, 3);
  });

  test("the normal quantile is the inverse of the distribution that mathjs has", () => {
    for (const share of [0.001, 0.05, 0.5, 0.9, 0.975, 0.9999])
      expect((1 + erf(normalQuantile(share) / Math.SQRT2)) / 2).toBeCloseTo(share, 12);
  });
});

describe("remedies", () => {
  test("have both units wherever they name a length, and come in the order to look", () => {
    const texts = Object.values(remedies).flatMap((rows) =>
      rows.flatMap(({ check, remedy }) => [check, remedy]),
    );
    expect(texts.length).toBeGreaterThan(150);
    for (const text of texts) if (/\d mm\b/.test(text)) expect(text).toMatch(/\d in\b|in per inch/);
    expect(sheet("REMEDIES", "oversize")[0][0]).toBe("Gauge not zeroed, or part still warm");
    expect(sheet("REMEDIES", "Bell-Mouth").length).toBe(7);
  });
});

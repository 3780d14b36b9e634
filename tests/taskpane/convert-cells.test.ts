// tests: converting in place. Expected figures are exact products and quotients with 25.4 (one inch in mm) and 0.3048
// (one foot in m), rounded by hand.

import { describe, expect, test } from "vitest";
import {
  type ConversionKind,
  conversionKinds,
  type Direction,
  decimalsOf,
  rounded,
} from "../../src/taskpane/actions/conversion-kinds.ts";
import {
  applyConversion,
  gather,
  placesOf,
  planConversion,
} from "../../src/taskpane/actions/convert-cells.ts";
import { changeHeader } from "../../src/taskpane/actions/header-units.ts";
import { formatDecimals, formatWords, isDateFormat } from "../../src/taskpane/actions/number-formats.ts";
import { quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { cellAddress, Refusal } from "../../src/workbook/workbook.ts";
import { type MemoryCell, MemoryWorkbook, refusal } from "../support/memory-workbook.ts";

const kind = (key: string) => conversionKinds.find((one) => one.key === key)!;
const length = kind("length");

async function converted(
  values: (number | MemoryCell | string | boolean)[],
  of: ConversionKind,
  direction: Direction,
  decimals?: number,
) {
  const cells = Object.fromEntries(values.map((value, index) => [`B${index + 2}`, value]));
  const workbook = new MemoryWorkbook({ Job: { B1: "Size", ...cells } }).select(`B2:B${values.length + 1}`);
  const gathered = await gather(workbook);
  const plan = planConversion(gathered, { kind: of, direction, decimals });
  await applyConversion(workbook, gathered, plan);
  return { plan, workbook, column: values.map((_, index) => workbook.at(`B${index + 2}`)) };
}

describe("figures", () => {
  test.each<[string, Direction, number[], number[]]>([
    // .5 × 25.4, .5005 × 25.4 = 12.7127, .0005 × 25.4 = .0127
    ["length", "to metric", [0.5, 0.5005, 0.0005], [12.7, 12.7127, 0.0127]],
    ["length", "to metric", [0.5, 1.25], [12.7, 31.75]],
    // 12.018 / 25.4 = .473149…, 12 / 25.4 = .472440…
    ["length", "to inch", [12.018, 12], [0.47315, 0.47244]],
    ["length", "to inch", [30, 12.5], [1.1811, 0.4921]],
    // 0.018 / 25.4 = .000708…: four decimals would be 1 % off, five are 0.2 % off
    ["length", "to inch", [0.018], [0.00071]],
    // 100 × .3048 = 30.48
    ["surface speed", "to metric", [100, 50], [30.5, 15.2]],
    // 15 / .3048 = 49.21…
    ["surface speed", "to inch", [15, 30.5], [49.2, 100.1]],
    ["feed per revolution", "to metric", [0.012, 0.0115], [0.3048, 0.2921]],
    ["feed per revolution", "to inch", [0.3], [0.0118]],
    ["feed rate", "to metric", [4.58], [116.3]],
    ["feed rate", "to inch", [116.3], [4.579]],
    // 1 lbf·in = .112984829 N·m
    ["torque", "to metric", [4, 12.5], [0.452, 1.412]],
    ["torque", "to inch", [0.45], [3.98]],
    ["roughness", "to metric", [32, 63], [0.81, 1.6]],
    ["roughness", "to inch", [0.8, 1.6], [31.5, 63]],
  ])("%s %s: %j becomes %j", async (key, direction, given, wanted) => {
    expect((await converted(given, kind(key), direction)).column).toEqual(wanted);
  });

  test("a person's own number of decimals counts, and a 0 that was none is told", async () => {
    const { column, plan } = await converted([0.5005, 0.01], length, "to metric", 0);
    expect(column).toEqual([13, 0]);
    expect(plan.notes.join()).toContain("1 figure would become 0");
  });

  test("formulas, texts, blanks, dates, percentages and spilled results are left alone and counted", async () => {
    const { column, plan } = await converted(
      [
        1,
        "=A1*2",
        "12 H7",
        "",
        { formula: 46387, format: "dd/mm/yyyy" },
        { formula: 0.05, format: "0.0%" },
        { value: 7, fixed: "spilled" },
        true,
        { formula: 0.5, format: "[h]:mm" },
        { formula: 2, format: '0.00 "in"' },
        { formula: 42, format: "$#,##0.00" },
        { formula: 42, format: "_-* #,##0.00 [$€-407]_-" },
        { formula: 3, format: "[$-409]0.000" },
      ],
      length,
      "to metric",
    );
    expect(column).toEqual([25.4, "=A1*2", "12 H7", "", 46387, 0.05, "", true, 0.5, 50.8, 42, 42, 76.2]);
    expect([...plan.leftAlone].sort()).toEqual(
      ["1 blank", "1 percentage", "2 dates", "2 formulas", "2 texts", "2 amounts of money"].sort(),
    );
    expect(plan.converted.length).toBe(3);
    expect(plan.notes).toContain(
      "The number format of 1 cell still writes the old unit (B11: in). Change the format too.",
    );
  });

  test("there and back gives the figures again", async () => {
    for (const value of [0.5, 0.1875, 0.5005, 1.0005, 3.25]) {
      const { column } = await converted([value], length, "to metric");
      expect((await converted(column as number[], length, "to inch")).column).toEqual([value]);
    }
  });
});

describe("the sheet", () => {
  const sheet = (): MemoryWorkbook =>
    new MemoryWorkbook({
      "Job's 7": {
        B4: "Depth (in)",
        B5: 1,
        B6: 2,
        D4: "Speed, sfm",
        D5: 100,
        D6: { formula: 50, format: "0" },
      },
    });

  test("several areas and their headers change in one step", async () => {
    const workbook = sheet().select("'Job''s 7'!B5:B6", "'Job''s 7'!D5:D6");
    const gathered = await gather(workbook);
    const plan = planConversion(gathered, { kind: length, direction: "to metric" });
    expect(placesOf(gathered)).toBe("B5:B6 and D5:D6 on Job's 7");
    expect(plan.headers).toEqual([{ address: "B4", before: "Depth (in)", after: "Depth (mm)" }]);
    expect(plan.notes).toContain('D4 says "Speed, sfm": is this a column of another kind (surface speed)?');
    await applyConversion(workbook, gathered, plan);
    expect([workbook.at("B4"), workbook.at("B5"), workbook.at("D5"), workbook.at("D4")]).toEqual([
      "Depth (mm)",
      25.4,
      2540,
      "Speed, sfm",
    ]);
    expect(workbook.steps.length).toBe(1);
  });

  test("a whole column is cut to what is used, and its header inside it is found", async () => {
    const workbook = sheet().select("'Job''s 7'!D1:D1048576");
    const gathered = await gather(workbook);
    const plan = planConversion(gathered, { kind: kind("surface speed"), direction: "to metric" });
    expect(plan.converted.map(({ address }) => address)).toEqual(["D5", "D6"]);
    expect(plan.headers[0].after).toBe("Speed, m/min");
    expect(plan.notes.join()).toContain("in 1 cell the format shows fewer decimals");
  });

  test("areas that overlap convert a cell once", async () => {
    const workbook = sheet().select("'Job''s 7'!B5:B6", "'Job''s 7'!B6:B6");
    const gathered = await gather(workbook);
    await applyConversion(
      workbook,
      gathered,
      planConversion(gathered, { kind: length, direction: "to metric" }),
    );
    expect(workbook.at("B6")).toBe(50.8);
  });

  test("a header that names the unit already is a warning", async () => {
    const workbook = new MemoryWorkbook({ Job: { A1: "Depth, mm", A2: 12.7 } }).select("A2:A2");
    const plan = planConversion(await gather(workbook), { kind: length, direction: "to metric" });
    expect(plan.notes[0]).toContain('A1 already says "Depth, mm"');
    expect(plan.headers).toEqual([]);
  });

  test("a merged or computed header is told and left", async () => {
    for (const cell of [
      { formula: "Depth (in)", fixed: "merged" },
      { formula: '="Depth (in)"', value: "Depth (in)" },
    ] as MemoryCell[]) {
      const workbook = new MemoryWorkbook({ Job: { A1: cell, A2: 1 } }).select("A2:A2");
      const gathered = await gather(workbook);
      const plan = planConversion(gathered, { kind: length, direction: "to metric" });
      expect(plan.notes.join()).toContain("stays as it is");
      await applyConversion(workbook, gathered, plan);
      expect(workbook.at("A2")).toBe(25.4);
    }
  });
});

describe("refusals, with nothing changed", () => {
  test("an empty selection, one without figures, a chart", async () => {
    const workbook = new MemoryWorkbook({ Job: { A1: "text", A2: "=A1" } }).select("C1:C9");
    const choice = { kind: length, direction: "to metric" } as const;
    expect(await refusal(async () => planConversion(await gather(workbook), choice))).toContain("empty");
    workbook.select("A1:A2");
    expect(await refusal(async () => planConversion(await gather(workbook), choice))).toMatch(
      /no plain figures.*1 text.*1 formula/,
    );
    workbook.select();
    expect(await refusal(gather(workbook))).toContain("chart");
  });

  test("a merged figure", async () => {
    const workbook = new MemoryWorkbook({ Job: { A1: 1, A2: { formula: 2, fixed: "merged" } } }).select(
      "A1:A2",
    );
    const gathered = await gather(workbook);
    expect(await refusal(() => planConversion(gathered, { kind: length, direction: "to metric" }))).toMatch(
      /^A2 is part of merged cells/,
    );
  });

  test("cells that changed since they were shown, and a locked sheet", async () => {
    const workbook = new MemoryWorkbook({ Job: { A1: 1, A2: 2 } }).select("A1:A2");
    const gathered = await gather(workbook);
    const plan = planConversion(gathered, { kind: length, direction: "to metric" });
    workbook.content.get("Job")!.set("A2", { formula: 3 });
    expect(await refusal(applyConversion(workbook, gathered, plan))).toContain("have changed");
    workbook.content.get("Job")!.set("A2", { formula: 2 });
    workbook.locked.add("Job");
    expect(await refusal(applyConversion(workbook, gathered, plan))).toContain("locked");
    expect([workbook.at("A1"), workbook.at("A2"), workbook.steps.length]).toEqual([1, 2, 0]);
  });
});

describe("headers", () => {
  test.each<[string, string, Direction, string | undefined]>([
    ["length", "Depth (in)", "to metric", "Depth (mm)"],
    ["length", "Depth [ in. ]", "to metric", "Depth [ mm ]"],
    ["length", "Depth, inches", "to metric", "Depth, mm"],
    ["length", "Depth in", "to metric", "Depth mm"],
    ["length", 'Depth (")', "to metric", "Depth (mm)"],
    ["length", "in", "to metric", "mm"],
    ["length", "Depth in plate", "to metric", undefined],
    ["length", "Finish", "to metric", undefined],
    ["length", "Drill Ø mm", "to inch", "Drill Ø in"],
    ["length", "Depth (MM)", "to inch", "Depth (in)"],
    ["surface speed", "Speed, ft/min", "to metric", "Speed, m/min"],
    ["surface speed", "SFM", "to metric", "m/min"],
    ["surface speed", "Speed (m/min)", "to inch", "Speed (ft/min)"],
    ["feed per revolution", "Feed, ipr", "to metric", "Feed, mm/rev"],
    ["feed per revolution", "Feed per rev (in)", "to metric", "Feed per rev (mm)"],
    ["feed per revolution", "Feed, mm/tooth", "to inch", "Feed, in/tooth"],
    ["feed rate", "Feed rate, ipm", "to metric", "Feed rate, mm/min"],
    ["feed rate", "Feed [mm/min]", "to inch", "Feed [in/min]"],
    ["torque", "Torque, lbf·in", "to metric", "Torque, N·m"],
    ["torque", "Torque (in-lb)", "to metric", "Torque (N·m)"],
    ["torque", "Torque, Nm", "to inch", "Torque, lbf·in"],
    ["roughness", "Ra, µin", "to metric", "Ra, µm"],
    ["roughness", "Ra (um)", "to inch", "Ra (µin)"],
  ])("%s: %s, %s, becomes %s", (key, header, direction, after) => {
    expect(changeHeader(header, kind(key), direction).after).toBe(after);
  });
});

test("number formats: dates, decimals", () => {
  for (const date of ["dd/mm/yyyy", "m/d/yy", "[h]:mm", "[$-409]d-mmm-yy;@", "hh:mm:ss"])
    expect(isDateFormat(date), date).toBe(true);
  for (const number of ["General", "0.000", '0.0 "mm"', "[Red]0.00", "#,##0", "0.00\\ \\d", "@"])
    expect(isDateFormat(number), number).toBe(false);
  expect(["0.000", "#,##0", "General", '0.0" in"', "0.00;(0.0)"].map(formatDecimals)).toEqual([
    3,
    0,
    undefined,
    1,
    2,
  ]);
});

test("number formats: the words beside the number", () => {
  expect(['0.000" in"', "0.000\\ \\i\\n", '0.000\\"', "General", '0.0;" in"'].map(formatWords)).toEqual([
    " in",
    " in",
    '"',
    "",
    "",
  ]);
});

test("rounds half away from zero, and counts written decimals", () => {
  expect([1.005, -1.005, 2.675, 0.0127].map((value, index) => rounded(value, index === 3 ? 3 : 2))).toEqual([
    1.01, -1.01, 2.68, 0.013,
  ]);
  expect([1, 0.5, 0.1 + 0.2, 1e-7, 12.018].map(decimalsOf)).toEqual([0, 1, 1, 7, 3]);
});

describe("rows that a filter hides", () => {
  const filtered = () => {
    const workbook = new MemoryWorkbook({ Job: { B1: "Size (in)", B2: 1, B3: 2, B4: 3 } }).select("B2:B4");
    workbook.hiddenRows.add(2);
    return workbook;
  };
  const choice = { kind: length, direction: "to metric" } as const;

  test("stay as they are and are counted, and the header stays with them", async () => {
    const workbook = filtered();
    const gathered = await gather(workbook);
    const plan = planConversion(gathered, choice);
    expect(plan.notes[0]).toMatch(/^1 hidden figure would stay .*Clear the filter/);
    await applyConversion(workbook, gathered, plan);
    expect(["B1", "B2", "B3", "B4"].map((cell) => workbook.at(cell))).toEqual(["Size (in)", 25.4, 2, 76.2]);
  });

  test("are converted where that is asked for, with the header", async () => {
    const workbook = filtered();
    const gathered = await gather(workbook);
    await applyConversion(workbook, gathered, planConversion(gathered, { ...choice, withHidden: true }));
    expect(["B1", "B2", "B3", "B4"].map((cell) => workbook.at(cell))).toEqual([
      "Size (mm)",
      25.4,
      50.8,
      76.2,
    ]);
  });

  test("alone are nothing to convert", async () => {
    const workbook = filtered().select("B3");
    const gathered = await gather(workbook);
    expect(await refusal(() => planConversion(gathered, choice))).toContain("1 hidden figure");
  });
});

describe("figures that formulas read in a unit of their own", () => {
  const notesFor = async (formula: string, unit = "in", direction: Direction = "to metric") => {
    const workbook = new MemoryWorkbook({
      Job: { A1: unit, B1: "Depth", B2: 1, B3: 2, C2: { formula, value: 7 } },
    });
    const gathered = await gather(workbook.select("B2:B3"));
    return planConversion(gathered, { kind: length, direction }).notes.join(" ");
  };

  test.each([
    ["=REAM.HOLETIME(B2:B3,4,,,,$A$1)", /C2 reads these figures and takes them in in\. Set A1 to "mm"/],
    ['=REAM.HOLETIME(B2:B3,4,,,,"in")', /C2 .* in in\. Give them "mm"/],
    ["=_xldudf_REAM_HOLETIME(B:B,4,,,,A1)", /Set A1 to "mm"/],
    ["=1+REAM.HOLETIME('Job'!B2,4,,,,A1)", /Set A1 to "mm"/],
    // The unit is in the inner call, and not the last argument of the outer one.
    ["=REAM.PRICE(REAM.HOLETIME(B2,4,,,,A1),45)", /Set A1 to "mm"/],
    ['=IF(A1="in",REAM.HOLETIME(B2,4,,,,A1),REAM.HOLETIME(B2,4))', /Set A1 to "mm"/],
    // Through names, tables and texts the cells cannot be told.
    ["=REAM.HOLETIME(Depths,4,,,,A1)", /may read these figures too: C2 \(Depths\)/],
    ["=REAM.HOLETIME(Jobs[Depth],4,,,,A1)", /may read .*C2 \(Jobs\[Depth\]\)/],
    ["=REAM.HOLETIME([@Depth],4,,,,A1)", /may read .*C2 \(\[@Depth\]\)/],
    ['=REAM.HOLETIME(INDIRECT("B2"),4,,,,A1)', /may read .*C2 \(INDIRECT\)/],
  ])("%s warns", async (formula, words) => {
    expect(await notesFor(formula)).toMatch(words);
  });

  test.each([
    ["=REAM.HOLETIME(D2:D3,4,,,,$A$1)", "in"],
    ["=REAM.HOLETIME(B2:B3,4,,,,$A$1)", "mm"],
    ["=REAM.HOLETIME(B2:B3,4)", "in"],
  ])("%s with the unit %s has nothing to warn of", async (formula, unit) => {
    expect(await notesFor(formula, unit)).toBe("");
  });

  test("through formulas of other kinds, which are counted", async () => {
    const workbook = new MemoryWorkbook({
      Job: { A1: "in", B2: 1, B3: 2, C2: "=B2+0.1", C3: "=B3+0.1", D9: "=SUM(D1:D3)" },
      "Cost's": {
        A1: "=MAX(Job!C2:C3)",
        A2: "=REAM.HOLETIME(A1,4,,,,Job!$A$1)",
        A3: "=REAM.PARTCOST(A2,72)",
      },
    });
    const { notes } = planConversion(await gather(workbook.select("B2:B3")), {
      kind: length,
      direction: "to metric",
    });
    expect(notes).toEqual([
      `The formula in 'Cost''s'!A2 reads these figures and takes them in in. Set A1 to "mm" once all its figures are converted. Until then the results do not fit.`,
      "3 other formulas read these figures, and their results change with them.",
    ]);
    expect(
      planConversion(await gather(workbook.select("D2:D3", "B3")), { kind: length, direction: "to inch" })
        .notes,
    ).toContain("3 other formulas read these figures, and their results change with them.");
  });

  test("on a sheet that is too large to look through, which is said", async () => {
    const workbook = new MemoryWorkbook({ Job: { B2: 1 }, Data: { A1: "=REAM.HOLETIME(Job!B2,4)" } });
    const read = workbook.read.bind(workbook);
    workbook.read = async (area) => {
      if (area.sheet === "Data") throw new Refusal("These are 300000 cells.");
      return read(area);
    };
    const { notes } = planConversion(await gather(workbook.select("B2")), {
      kind: length,
      direction: "to inch",
    });
    expect(notes).toEqual(["Data could not be looked through for formulas that read these figures."]);
  });

  test("a formula without a unit takes mm, so inches are warned of", async () => {
    expect(await notesFor("=REAM.HOLETIME(B2:B3,4)", "in", "to inch")).toMatch(/in mm\. Give them "in"/);
  });

  test("the quoting sheet's own units cell is named", async () => {
    const { top, columns } = quotingSheet(2);
    const cells = Object.fromEntries([
      ...top.flatMap((row, r) => row.map((cell, c) => [cellAddress(r, c), cell] as const)),
      ...columns.flatMap(({ first, each }, c) => {
        const content = each?.replaceAll("{row}", "9") ?? first;
        return content === undefined ? [] : [[cellAddress(8, c), content] as const];
      }),
      ["C9", "in"],
      ["G9", 1.25],
    ]);
    const workbook = new MemoryWorkbook({ Quote: cells }).select("G9");
    const { notes } = planConversion(await gather(workbook), { kind: length, direction: "to metric" });
    expect(notes.join(" ")).toMatch(/reads .* in in\. Set C9 to "mm"/);
  });
});

// tests: actions of the pane against the host behind Microsoft's own office.js: sheets that a hostile tester would bring.

import { afterEach, describe, expect, test } from "vitest";
import { paneHelp } from "../../src/build/pane-help.ts";
import { planCheck } from "../../src/taskpane/actions/check-figures.ts";
import { checkSheet } from "../../src/taskpane/actions/check-sheet.ts";
import { conversionKinds } from "../../src/taskpane/actions/conversion-kinds.ts";
import { applyConversion, gather, planConversion } from "../../src/taskpane/actions/convert-cells.ts";
import { freezeSheet } from "../../src/taskpane/actions/freeze-sheet.ts";
import { reenterFormulas } from "../../src/taskpane/actions/reenter-formulas.ts";
import { planFormula } from "../../src/taskpane/actions/write-formula.ts";
import { ExcelWorkbook } from "../../src/workbook/excel-workbook.ts";
import { type Box, giveExcel, type SheetDouble, takeExcelAway } from "../support/excel-host.ts";
import { refusal } from "../support/memory-workbook.ts";
import { declarations } from "../support/sheet.ts";

afterEach(takeExcelAway);
const workbook = new ExcelWorkbook();
const help = paneHelp(declarations);
const ids = declarations.map(({ id }) => id);
const length = conversionKinds.find(({ key }) => key === "length")!;
const toMetric = { kind: length, direction: "to metric" } as const;
const first: Box = [0, 0, 1, 1];

async function convert(): Promise<readonly string[]> {
  const gathered = await gather(workbook);
  const plan = planConversion(gathered, toMetric);
  await applyConversion(workbook, gathered, plan);
  return plan.notes;
}

describe("a sheet named with quotes, apostrophes and a sign of its own", () => {
  test.each(['Bill\'s "job" 📏', "R1C1", "2024", "TRUE", "C"])("%s", async (name) => {
    const other: SheetDouble = {
      name: "Costs",
      cells: [[`=REAM.HOLETIME('${name.replaceAll("'", "''")}'!A2,4,,,,"in")`]],
      values: [[12]],
    };
    const { sheets } = giveExcel([{ name, cells: [["Depth (in)"], [1], [2]] }, other], {
      sheet: name,
      boxes: [[0, 0, 1_048_576, 1]],
    });
    expect(await convert()).toEqual([
      'The formula in Costs!A1 reads these figures and takes them in in. Give them "mm" as their units. Until then the results do not fit.',
    ]);
    // 25.4 times.
    expect(sheets[0].cells).toEqual([["Depth (mm)"], [25.4], [50.8]]);
    expect(
      (await freezeSheet(Object.assign(workbook, {}), false).catch((thrown) => thrown)).message,
    ).toContain("has no REAM formula");
  });
});

describe("converting", () => {
  test("two columns of a filtered list in one message, hidden rows left", async () => {
    const { sheets, asked } = giveExcel(
      [
        {
          name: "Job",
          cells: [
            ["A (in)", "B (in)"],
            [1, 2],
            [3, 4],
            [5, 6],
          ],
          hiddenRows: [2],
        },
      ],
      {
        sheet: "Job",
        boxes: [
          [0, 0, 1_048_576, 1],
          [0, 1, 1_048_576, 1],
        ],
      },
    );
    expect((await convert())[0]).toMatch(/^2 hidden figures would stay/);
    expect(sheets[0].cells).toEqual([
      ["A (in)", "B (in)"],
      [25.4, 50.8],
      [3, 4],
      [127, 152.4],
    ]);
    const writing = asked.syncs.filter(
      (members) => members.includes("Range.Formulas") && asked.syncs.indexOf(members) > 0,
    );
    expect(writing.at(-1)!.filter((member) => member === "Range.Formulas").length).toBeGreaterThan(1);
  });
  test("a figure in a cell with the format Text is refused, and no other cell is changed", async () => {
    const cells = [[1], [2]];
    const { sheets } = giveExcel([{ name: "Job", cells, formats: [["General"], ["@"]] }], {
      sheet: "Job",
      boxes: [[0, 0, 2, 1]],
    });
    expect(await refusal(convert())).toContain("A2 has the number format Text");
    expect(sheets[0].cells).toEqual([[1], [2]]);
  });
  test("a protected sheet is refused", async () => {
    giveExcel([{ name: "Job", cells: [[1]], protected: true }], { sheet: "Job", boxes: [first] });
    expect(await refusal(convert())).toContain("is protected");
  });
});

describe("entering formulas again", () => {
  const stored = (): SheetDouble[] => [
    {
      name: "Job",
      cells: [
        ["=_xldudf_REAM_RPM(15,10)", "=[2]!_xldudf_REAM_LIMITS(A9)", "", "=REAM.RPM(1,2)", "=1+1"],
        ["=_xlfn._xldudf_REAM_RPM(15,12)", '=IF(A9="","",@REAM.RPM(15,10))', "", "", 5],
      ],
      values: [
        ["#NAME?", 12, 12.018, "=REAM.RPM(1,2)", 2],
        ["#NAME?", "#NAME?", "", "", 5],
      ],
      spilled: [[0, 1, 1, 2]],
    },
    { name: "Hidden", cells: [["=_XLDUDF_REAM_RPM(15,10)"]], values: [["#NAME?"]] },
    { name: "Empty", cells: [] },
  ];
  test("takes every stored form, leaves texts and others, and comes in one message", async () => {
    const { sheets, asked } = giveExcel(stored(), { sheet: "Job", boxes: [first] });
    expect(await reenterFormulas(workbook, ids)).toEqual({ formulas: 5, sheets: 2, steps: 1 });
    expect(sheets[0].cells).toEqual([
      ["=REAM.RPM(15,10)", "=REAM.LIMITS(A9)", "", "=REAM.RPM(1,2)", "=1+1"],
      ["=REAM.RPM(15,12)", '=IF(A9="","",@REAM.RPM(15,10))', "", "", 5],
    ]);
    expect(sheets[1].cells).toEqual([["=REAM.RPM(15,10)"]]);
    const writing = asked.syncs.map((members) => members.filter((one) => one === "Range.Formulas").length);
    // Two columns of the first sheet and one of the second, in one message.
    expect(Math.max(...writing)).toBe(3);
  });
  test("changes nothing where one sheet is protected", async () => {
    const given = stored();
    const { sheets } = giveExcel([given[0], { ...given[1], protected: true }], {
      sheet: "Job",
      boxes: [first],
    });
    const before = structuredClone(sheets.map(({ cells }) => cells));
    expect(await refusal(reenterFormulas(workbook, ids))).toContain('The sheet "Hidden" is protected');
    expect(sheets.map(({ cells }) => cells)).toEqual(before);
  });
});

describe("freezing", () => {
  test("#NAME? and what is at work are refused, and there is no copy", async () => {
    for (const [value, words] of [
      ["#NAME?", /1 REAM formulas show #NAME\?/],
      ["#BUSY!", /still computing/],
    ] as const) {
      const { sheets } = giveExcel([{ name: "Job", cells: [["=REAM.RPM(15,10)"]], values: [[value]] }], {
        sheet: "Job",
        boxes: [first],
      });
      expect(await refusal(freezeSheet(workbook))).toMatch(words);
      expect(sheets.length).toBe(1);
    }
  });
  test("a sheet of a name of 31 signs and a taken copy", async () => {
    const name = "A name of thirty-one characters";
    const cells = [["=REAM.RPM(15,10)"]];
    const { sheets } = giveExcel(
      [
        { name, cells, values: [[477.46]] },
        { name: `${name.slice(0, 22)} (values)`, cells: [] },
      ],
      { sheet: name, boxes: [first] },
    );
    const { name: copy } = await freezeSheet(workbook);
    expect(copy.length).toBeLessThanOrEqual(31);
    expect(new Set(sheets.map((sheet) => sheet.name)).size).toBe(3);
    expect(sheets.find((sheet) => sheet.name === copy)!.cells).toEqual([[477.46]]);
  });
});

describe("at the edges of a sheet", () => {
  const rpm = help.functions.find(({ id }) => id === "RPM")!;
  test("a column that would run over the last row is refused with a sentence", async () => {
    giveExcel([{ name: "Job", cells: [[15], [15], [15]] }], { sheet: "Job", boxes: [[1_048_575, 3, 1, 1]] });
    const entries = [{ text: "=A1:A3" }, { text: "10" }];
    expect(await refusal(planFormula(workbook, rpm, entries, "column"))).toContain("over the last row");
  });
  test("a cell with the format Text is refused before anything is shown", async () => {
    giveExcel([{ name: "Job", cells: [[15]], formats: [["General", "@"]] }], {
      sheet: "Job",
      boxes: [[0, 1, 1, 1]],
    });
    expect(await refusal(planFormula(workbook, rpm, [{ text: "=A1" }, { text: "10" }], "cell"))).toContain(
      "B1 has the number format Text",
    );
  });
  test("hand figures in the last columns have no room for verdicts", async () => {
    const line = Array.from({ length: 16_384 }, (_, column) => (column >= 16_381 ? column : ""));
    giveExcel([{ name: "Job", cells: [line, line] }], { sheet: "Job", boxes: [first] });
    const at = (column: number) => ({ sheet: "Job", row: 0, column, rows: 2, columns: 1 });
    expect(await refusal(planCheck(workbook, at(16_382), at(16_383)))).toContain("No column is empty");
  });
});

test("an empty sheet has nothing to check, convert, freeze or enter again", async () => {
  giveExcel([{ name: "Empty", cells: [] }], { sheet: "Empty", boxes: [[0, 0, 1_048_576, 16_384]] });
  expect(await refusal(checkSheet(workbook, help))).toContain("is empty");
  expect(await refusal(convert())).toContain("empty");
  expect(await refusal(freezeSheet(workbook))).toContain("is empty");
  expect(await refusal(reenterFormulas(workbook, ids))).toContain("no REAM formula");
});

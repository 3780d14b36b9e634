// tests: what Excel does not keep an add-in from, and what it refuses: data validation, PivotTables, a workbook open for
// reading, a protected structure, and every code of refusal. Microsoft: "data validation is triggered only if the user
// directly enters a value into a cell".

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, test } from "vitest";
import { paneHelp } from "../../src/build/pane-help.ts";
import { projectFolder } from "../../src/build/paths.ts";
import { planCheck } from "../../src/taskpane/actions/check-figures.ts";
import { conversionKinds } from "../../src/taskpane/actions/conversion-kinds.ts";
import { applyConversion, gather, planConversion } from "../../src/taskpane/actions/convert-cells.ts";
import { planFormula } from "../../src/taskpane/actions/write-formula.ts";
import { SENTENCES } from "../../src/workbook/excel-run.ts";
import { ExcelWorkbook } from "../../src/workbook/excel-workbook.ts";
import { type Box, giveExcel, type Refused, type SheetDouble, takeExcelAway } from "../support/excel-host.ts";
import { refusal } from "../support/memory-workbook.ts";
import { declarations } from "../support/sheet.ts";

afterEach(takeExcelAway);
const workbook = new ExcelWorkbook();
const help = paneHelp(declarations);
const column: Box = [0, 0, 4, 1];
const job = (more: Partial<SheetDouble> = {}): SheetDouble => ({
  name: "Job",
  cells: [["Depth (in)"], [1], [0.5], [0.25]],
  ...more,
});
const given = (more?: Partial<SheetDouble>, refused?: Refused) =>
  giveExcel([job(more)], { sheet: "Job", boxes: [column] }, refused ? { refused } : {});
const atMost = (most: number) => (content: unknown) => typeof content === "number" && content <= most;

async function convert(): Promise<readonly string[]> {
  const gathered = await gather(workbook);
  const length = conversionKinds.find(({ key }) => key === "length")!;
  const plan = planConversion(gathered, { kind: length, direction: "to metric" });
  await applyConversion(workbook, gathered, plan);
  return plan.notes;
}

describe("data validation", () => {
  test("is named before anything is written, and what breaks it is taken back", async () => {
    const { sheets } = given({ rules: [{ box: [2, 0, 2, 1], allows: atMost(10) }] });
    const gathered = await gather(workbook);
    const length = conversionKinds.find(({ key }) => key === "length")!;
    const plan = planConversion(gathered, { kind: length, direction: "to metric" });
    expect(plan.notes.join(" ")).toContain("data validation");
    expect(await refusal(applyConversion(workbook, gathered, plan))).toBe(
      "The data validation of A3 does not allow 12.7. Change the rule under Data > Data Validation first. Nothing was changed.",
    );
    expect(sheets[0].cells).toEqual(job().cells);
  });
  test("that the new figures keep to lets them in", async () => {
    const { sheets } = given({ rules: [{ box: [1, 0, 3, 1], allows: atMost(30) }] });
    await convert();
    expect(sheets[0].cells).toEqual([["Depth (mm)"], [25.4], [12.7], [6.35]]);
  });
  test("that holds a header to a list keeps a new one out", async () => {
    const { sheets } = given({
      rules: [{ box: [0, 0, 1, 1], allows: (content) => content === "Depth (in)" }],
    });
    expect(await refusal(convert())).toContain("A1 does not allow Depth (mm)");
    expect(sheets[0].cells).toEqual(job().cells);
  });
  test.each([{ style: "Warning" }, { style: "Information" }, { showAlert: false }] as const)(
    "that only asks, %j, does not keep them out",
    async (lenient) => {
      const { sheets } = given({ rules: [{ box: [1, 0, 3, 1], allows: atMost(10), ...lenient }] });
      expect((await convert()).join(" ")).toContain("data validation");
      expect(sheets[0].cells[1]).toEqual([25.4]);
    },
  );
  test("that a cell breaks already is not held against it", async () => {
    const { sheets } = given({ rules: [{ box: [1, 0, 1, 1], allows: atMost(0.1) }] });
    await convert();
    expect(sheets[0].cells[1]).toEqual([25.4]);
  });
  test("that cannot be asked for after writing has everything taken back", async () => {
    const { sheets } = given(
      { rules: [{ box: [1, 0, 3, 1], allows: atMost(100) }] },
      { member: "DataValidation.GetInvalidCellsOrNullObject", code: "GeneralException", after: 1, times: 1 },
    );
    expect(await refusal(convert())).toMatch(/Nothing was changed\.$/);
    expect(sheets[0].cells).toEqual(job().cells);
  });
  test("costs no message where there is none", async () => {
    const { asked } = given();
    await workbook.write([{ sheet: "Job", row: 1, column: 0, formulas: [[2]] }]);
    expect(asked.syncs.filter((members) => members.length > 0).length).toBeLessThanOrEqual(4);
    expect(asked.syncs.flat()).not.toContain("DataValidation.GetInvalidCellsOrNullObject");
  });
  test("keeps a formula out of its cell before it is put in, and verdicts out of its column", async () => {
    const rules = [{ box: [0, 2, 4, 1] as const, allows: () => false }];
    giveExcel(
      [
        job({
          cells: [
            [1, 1],
            [2, 2],
            [3, 3],
            [4, 4],
          ],
          rules,
        }),
      ],
      { sheet: "Job", boxes: [[1, 2, 1, 1]] },
    );
    const rpm = help.functions.find(({ id }) => id === "RPM")!;
    expect(await refusal(planFormula(workbook, rpm, [{ text: "=A2" }, { text: "=B2" }], "cell"))).toContain(
      "C2 has data validation",
    );
    const at = (first: number) => ({ sheet: "Job", row: 0, column: first, rows: 4, columns: 1 });
    expect((await planCheck(workbook, at(0), at(1))).target).toMatchObject({ column: 3 });
  });
});

describe("a PivotTable", () => {
  const pivots = [{ name: "Sales", box: [2, 0, 6, 3] as const }];
  test("among the cells to write is named, and nothing is written", async () => {
    const { sheets, asked } = given({ pivots });
    expect(await refusal(convert())).toBe(
      "A3 lies in the PivotTable Sales (A3:C8). Select cells outside it. Nothing was changed.",
    );
    expect(sheets[0].cells).toEqual(job().cells);
    const written = asked.syncs.filter(
      (members) => members.includes("Range.Formulas") && !members.includes("Range.Values"),
    );
    expect(written).toEqual([]);
  });
  test("between cells that are left as they are is no hindrance", async () => {
    const { sheets } = given({ pivots });
    await workbook.write([{ sheet: "Job", row: 1, column: 0, formulas: [[2], [undefined], [undefined]] }]);
    expect(sheets[0].cells[1]).toEqual([2]);
  });
});

test("a workbook open for reading says so where Excel refuses, and is written to where it does not", async () => {
  const refused = { member: "Range.Formulas", code: "AccessDenied", after: 1 };
  const box = { sheet: "Job", boxes: [column] };
  giveExcel([job()], box, { isReadOnly: true, refused });
  expect(await refusal(workbook.write([{ sheet: "Job", row: 1, column: 0, formulas: [[2]] }]))).toMatch(
    /^The workbook is open for reading only\..*Nothing was changed\.$/,
  );
  const { sheets } = giveExcel([job()], box, { isReadOnly: true });
  await workbook.write([{ sheet: "Job", row: 1, column: 0, formulas: [[2]] }]);
  expect(sheets[0].cells[1]).toEqual([2]);
});

test("a protected structure is named before a sheet is added or copied", async () => {
  const { sheets, asked } = giveExcel(
    [job({ cells: [["=REAM.RPM(1,2)"]] })],
    { sheet: "Job", boxes: [column] },
    { isStructureProtected: true },
  );
  const sheet = { name: "New", top: [], columns: [], rows: 1 };
  expect(await refusal(workbook.addSheet(sheet))).toContain("structure of the workbook is protected");
  expect(await refusal(workbook.copyAsValues("Job", () => true))).toContain("structure of the workbook");
  expect(sheets.length).toBe(1);
  expect(asked.added).toEqual([]);
});

test("somebody else's figure that came after the preview is not written over", async () => {
  const { sheets } = given();
  const gathered = await gather(workbook);
  const length = conversionKinds.find(({ key }) => key === "length")!;
  const plan = planConversion(gathered, { kind: length, direction: "to metric" });
  sheets[0].cells[2][0] = 0.75;
  expect(await refusal(applyConversion(workbook, gathered, plan))).toContain("have changed since");
  expect(sheets[0].cells[1]).toEqual([1]);
});

test("a formula that came to read the figures after the preview is looked at again", async () => {
  const values = job().cells;
  const { sheets } = given({ values });
  const gathered = await gather(workbook);
  const length = conversionKinds.find(({ key }) => key === "length")!;
  const plan = planConversion(gathered, { kind: length, direction: "to metric" });
  values[1][1] = 0.1;
  sheets[0].cells[1][1] = '=REAM.HOLETIME(A2,4,,,,"in")';
  expect(await refusal(applyConversion(workbook, gathered, plan))).toContain("formulas that read them");
  expect(sheets[0].cells[1][0]).toBe(1);
});

test("a sheet that is gone, or has another name, is not written to", async () => {
  for (const change of [
    (sheets: SheetDouble[]) => sheets.shift(),
    ([sheet]: SheetDouble[]) => {
      sheet.name = "Old";
    },
  ]) {
    const { sheets } = giveExcel([job(), { name: "Other", cells: [[1]] }], { sheet: "Job", boxes: [column] });
    const gathered = await gather(workbook);
    const length = conversionKinds.find(({ key }) => key === "length")!;
    const plan = planConversion(gathered, { kind: length, direction: "to metric" });
    change(sheets);
    expect(await refusal(applyConversion(workbook, gathered, plan))).toContain("is not there any more");
    expect(sheets.flatMap(({ cells }) => cells.flat())).not.toContain(25.4);
  }
});

describe("codes of refusal", () => {
  const types = readFileSync(join(projectFolder, "node_modules/@types/office-js/index.d.ts"), "utf8");
  const excel = types.slice(types.indexOf("declare namespace Excel {"));
  const codes = [
    ...excel
      .slice(excel.indexOf("enum ErrorCodes"))
      .split("}")[0]
      .matchAll(/= "(\w+)"/g),
  ].map(([, code]) => code);
  /** Of charts without series, bindings, links, queries, pictures of ranges and fills, none of which is asked for. */
  const foreign = [
    ...["DirtySupportingFormula", "EmptyChartSeries", "InvalidBinding", "OpenWorkbookLinksBlocked"],
    ...["PowerQueryRefreshResourceChallenge", "RangeImageExceedsLimit", "RefreshWorkbookLinksBlocked"],
    "UnsupportedFillType",
  ];
  test("are all known that Microsoft's types list and that can come here", () => {
    expect(codes.length).toBeGreaterThan(30);
    expect(codes.filter((code) => !(code in SENTENCES) && !foreign.includes(code))).toEqual([]);
  });
  test.each(Object.entries(SENTENCES))("%s is told, and no cell is changed", async (code, sentence) => {
    const { sheets } = given({}, { member: "Range.Formulas", code, after: 1 });
    expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(await refusal(workbook.write([{ sheet: "Job", row: 1, column: 0, formulas: [[2]] }]))).toBe(
      `${sentence} Nothing was changed.`,
    );
    expect(sheets[0].cells).toEqual(job().cells);
  });
});

test("the steps to undo are the messages that it takes", async () => {
  const long = "x".repeat(600);
  const formulas = Array.from({ length: 10_000 }, (_, row) => [`${long}${row}`]);
  const changes = [{ sheet: "Job", row: 0, column: 0, formulas }];
  const { asked } = giveExcel([{ name: "Job", cells: [] }], { sheet: "Job", boxes: [column] });
  const steps = await workbook.stepsToUndo(changes);
  expect(steps).toBeGreaterThan(2);
  await workbook.write(changes);
  const writing = asked.syncs.filter(
    (members) => members.includes("Range.Formulas") && !members.includes("Range.Values"),
  );
  expect(steps).toBe(writing.length);
  expect(await workbook.stepsToUndo([{ sheet: "Job", row: 0, column: 0, formulas: [[1]] }])).toBe(1);
});

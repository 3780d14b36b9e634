// tests: the adapter for Excel, against objects that give nothing before it is loaded and synchronised.

import { afterEach, describe, expect, test } from "vitest";
import { ExcelWorkbook } from "../../src/workbook/excel-workbook.ts";
import { Refusal } from "../../src/workbook/workbook.ts";
import { giveExcel, type SheetDouble } from "../support/excel-double.ts";

afterEach(() => {
  Reflect.deleteProperty(globalThis, "Excel");
  Reflect.deleteProperty(globalThis, "Office");
});

const quote = (): SheetDouble => ({
  name: "Bill's quote",
  cells: [
    ["Size (in)", "Hole"],
    [0.5, ".5000 +.0005/-.0000"],
    ["=REAM.STOCK(A2)", 12],
    [0.25, ""],
  ],
  values: [
    ["Size (in)", "Hole"],
    [0.5, ".5000 +.0005/-.0000"],
    [0.012, 12],
    [0.25, ""],
  ],
});
const workbook = new ExcelWorkbook();

describe("reading", () => {
  test("a whole column is cut to the used part, with formulas, values and formats", async () => {
    giveExcel([quote()], { sheet: "Bill's quote", boxes: [[0, 0, 1_048_576, 1]] });
    const [cells, ...rest] = await workbook.selected();
    expect(rest).toEqual([]);
    expect(cells).toEqual({
      sheet: "Bill's quote",
      row: 0,
      column: 0,
      rows: 4,
      columns: 1,
      formulas: [["Size (in)"], [0.5], ["=REAM.STOCK(A2)"], [0.25]],
      values: [["Size (in)"], [0.5], [0.012], [0.25]],
      formats: [["General"], ["General"], ["General"], ["General"]],
      holds: [[undefined], [undefined], [undefined], [undefined]],
    });
  });
  test("two areas are two, and one outside the used part is left out", async () => {
    giveExcel([quote()], {
      sheet: "Bill's quote",
      boxes: [
        [1, 0, 1, 1],
        [1, 1, 2, 1],
        [50, 7, 3, 3],
      ],
    });
    const areas = await workbook.selected();
    expect(areas.map(({ row, column, rows, columns }) => [row, column, rows, columns])).toEqual([
      [1, 0, 1, 1],
      [1, 1, 2, 1],
    ]);
  });
  test("the places are the areas as they are selected", async () => {
    giveExcel([quote()], {
      sheet: "Bill's quote",
      boxes: [
        [1, 0, 1, 1],
        [50, 7, 3, 3],
      ],
    });
    expect(await workbook.places()).toEqual([
      { sheet: "Bill's quote", row: 1, column: 0, rows: 1, columns: 1 },
      { sheet: "Bill's quote", row: 50, column: 7, rows: 3, columns: 3 },
    ]);
  });
  test("an empty sheet has no used part", async () => {
    giveExcel([{ name: "Empty", cells: [] }], { sheet: "Empty", boxes: [[0, 0, 1, 1]] });
    expect(await workbook.used("Empty")).toBeUndefined();
    expect(await workbook.selected()).toEqual([]);
  });
  test("a selected chart gets a sentence", async () => {
    giveExcel([quote()], "chart");
    await expect(workbook.selected()).rejects.toThrow("No cells are selected");
    await expect(workbook.active()).rejects.toBeInstanceOf(Refusal);
  });
  test("merged and spilled cells are told apart from the formula that spills", async () => {
    const sheet = { ...quote(), merged: [[0, 0, 1, 2]] as const, spilled: [[2, 0, 2, 1]] as const };
    giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 4, 2]] });
    const [cells] = await workbook.selected();
    expect(cells.holds).toEqual([
      ["merged", "merged"],
      [undefined, undefined],
      [undefined, undefined],
      ["spilled", undefined],
    ]);
  });
});

describe("writing", () => {
  test("writes only what is given, as one step to undo", async () => {
    const { sheets, asked } = giveExcel([quote()], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    const formulas = [["Size (mm)"], [12.7], [undefined], [6.35]];
    await workbook.write([{ sheet: "Bill's quote", row: 0, column: 0, formulas }]);
    expect(sheets[0].cells.map(([first]) => first)).toEqual(["Size (mm)", 12.7, "=REAM.STOCK(A2)", 6.35]);
    expect(sheets[0].cells[1][1]).toBe(".5000 +.0005/-.0000");
    expect(asked.merged).toBe(1);
  });
  test.each([
    ["a protected sheet", { protected: true }, "is protected"],
    ["merged cells", { merged: [[1, 0, 1, 2]] as const }, "A2 is part of merged cells"],
    ["a spilled cell", { spilled: [[0, 0, 2, 1]] as const }, "A2 shows the result of a formula"],
  ])("%s is refused and nothing is changed", async (_, odd, sentence) => {
    const { sheets } = giveExcel([{ ...quote(), ...odd }], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    const before = structuredClone(sheets[0].cells);
    const changes = [
      { sheet: "Bill's quote", row: 3, column: 0, formulas: [[6.35]] },
      { sheet: "Bill's quote", row: 1, column: 0, formulas: [[12.7]] },
    ];
    await expect(workbook.write(changes)).rejects.toThrow(sentence);
    expect(sheets[0].cells).toEqual(before);
  });
});

describe("sheets", () => {
  test("a copy has values in place of the formulas picked, spilled ones included", async () => {
    const sheet = { ...quote(), spilled: [[2, 0, 2, 1]] as const };
    const { sheets, asked } = giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 1, 1]] });
    const { name, replaced } = await workbook.copyAsValues(sheet.name, (formula) =>
      formula.includes("REAM."),
    );
    expect(name).toBe("Bill's quote (values)");
    expect(replaced).toBe(2);
    expect(sheets[1].cells.map(([first]) => first)).toEqual(["Size (in)", 0.5, 0.012, 0.25]);
    expect(sheets[0].cells[2][0]).toBe("=REAM.STOCK(A2)");
    expect(asked.activated).toEqual([name]);
  });
  test("a new sheet takes a free name, headers and the first formulas", async () => {
    const { sheets, asked } = giveExcel([{ name: "Quote", cells: [] }], {
      sheet: "Quote",
      boxes: [[0, 0, 1, 1]],
    });
    const name = await workbook.addSheet({
      name: "Quote",
      top: [["Units", "in"]],
      columns: [
        { header: "Callout", width: 20 },
        { header: "Material", width: 16, choices: Array.from({ length: 30 }, (_, at) => `material ${at}`) },
        { header: "Nominal", width: 10, format: "0.0000", first: '=REAM.CALLOUT(A3:A12,"nominal",B1)' },
      ],
      rows: 10,
    });
    expect(name).toBe("Quote 2");
    expect(asked.added).toEqual(["Quote 2"]);
    expect(sheets[1].cells[0].slice(0, 2)).toEqual(["Units", "in"]);
    expect(sheets[1].cells[1].slice(0, 3)).toEqual(["Callout", "Material", "Nominal"]);
    expect(sheets[1].cells[2][2]).toBe('=REAM.CALLOUT(A3:A12,"nominal",B1)');
    // A list over 255 characters stands in a column of its own.
    expect(sheets[1].cells[29][4]).toBe("material 29");
  });
});

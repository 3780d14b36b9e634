// tests: the adapter over the grid's model, without a browser.

import type { Model } from "@odoo/o-spreadsheet";
import { beforeAll, beforeEach, describe, expect, test } from "vitest";
import { registerSteps } from "../../src/workbook/grid-steps.ts";
import { GridWorkbook } from "../../src/workbook/grid-workbook.ts";
import { Refusal } from "../../src/workbook/workbook.ts";
import { library } from "../support/grid.ts";

let model: Model;
let workbook: GridWorkbook;

beforeAll(() => {
  registerSteps(library);
  registerSteps(library);
});

beforeEach(() => {
  model = new library.Model({
    formats: { 1: "dd/mm/yyyy" },
    sheets: [
      {
        id: "one",
        name: "Job 7",
        colNumber: 8,
        rowNumber: 20,
        cells: {
          B2: "Size (in)",
          B3: "0.5",
          B4: "=B3*2",
          B5: "three",
          B6: "46387",
          B7: "TRUE",
          D3: "=B3:B5",
          E3: "'31/64",
          F3: "title",
        },
        merges: ["F3:G3"],
        formats: { B6: 1 },
      },
      { id: "two", name: "Empty", colNumber: 3, rowNumber: 3, cells: {} },
      { id: "three", name: "Locked", colNumber: 3, rowNumber: 3, cells: { A1: "1" }, isLocked: true },
    ],
  } as any);
  workbook = new GridWorkbook(model);
});

const select = (...zones: [left: number, top: number, right: number, bottom: number][]) => {
  zones.forEach(([left, top, right, bottom], index) => {
    const zone = { left, top, right, bottom };
    if (index === 0) {
      model.selection.selectZone({ cell: { col: left, row: top }, zone });
    } else {
      model.selection.addCellToSelection(left, top);
      model.selection.setAnchorCorner(right, bottom);
    }
  });
};

const text = (col: number, row: number, sheetId = "one") =>
  model.getters.getCellText({ sheetId, col, row }, { showFormula: true });

describe("reading", () => {
  test("cuts a whole column to the used rows and tells what each cell is", async () => {
    select([1, 0, 1, 19]);
    const [cells] = await workbook.selected();
    expect(cells).toMatchObject({ sheet: "Job 7", row: 1, column: 1, rows: 6, columns: 1 });
    expect(cells.formulas.map(([cell]) => cell)).toEqual(["Size (in)", 0.5, "=B3*2", "three", 46387, true]);
    expect(cells.values.map(([cell]) => cell)).toEqual(["Size (in)", 0.5, 1, "three", 46387, true]);
    expect(cells.formats[0][0]).toBe("General");
    expect(cells.formats[4][0]).toMatch(/[dmy]/);
    expect(cells.fixed.flat()).toEqual(Array(6).fill(undefined));
    expect(await workbook.places()).toEqual([{ sheet: "Job 7", row: 0, column: 1, rows: 20, columns: 1 }]);
  });

  test("tells merged and spilled cells; the formula that spills is free", async () => {
    const cells = await workbook.read({ sheet: "Job 7", row: 2, column: 3, rows: 2, columns: 4 });
    expect(cells.fixed).toEqual([
      [undefined, undefined, "merged", "merged"],
      ["spilled", undefined, undefined, undefined],
    ]);
    expect(cells.formulas[0][0]).toBe("=B3:B5");
    expect(cells.formulas[1][0]).toBe("");
    expect(cells.values[1][0]).toBe(1);
    expect(cells.values[0][1]).toBe("31/64");
  });

  test("several areas; areas outside the used part are left out", async () => {
    select([1, 2, 1, 3], [3, 2, 3, 3], [0, 10, 0, 12]);
    const areas = await workbook.selected();
    expect(areas.map(({ row, column, rows }) => [row, column, rows])).toEqual([
      [2, 1, 2],
      [2, 3, 2],
    ]);
    model.dispatch("ACTIVATE_SHEET", { sheetIdFrom: "one", sheetIdTo: "two" });
    expect(await workbook.selected()).toEqual([]);
    expect(await workbook.used("Empty")).toBeUndefined();
  });

  test("tells the cells that hidden rows and columns keep out of sight", async () => {
    select([1, 2, 2, 4]);
    expect((await workbook.selected())[0].hidden).toBeUndefined();
    const hide = (dimension: "ROW" | "COL", element: number) =>
      model.dispatch("HIDE_COLUMNS_ROWS", { sheetId: "one", dimension, elements: [element] });
    expect(hide("ROW", 3).isSuccessful).toBe(true);
    expect((await workbook.selected())[0].hidden).toEqual([
      [false, false],
      [true, true],
      [false, false],
    ]);
    hide("COL", 2);
    expect((await workbook.selected())[0].hidden).toEqual([
      [false, true],
      [true, true],
      [false, true],
    ]);
  });

  test("tells the cells that a filter keeps out of sight", async () => {
    const ranges = [
      { _sheetId: "one", _zone: { left: 1, top: 1, right: 1, bottom: 4 }, unboundedZone: undefined },
    ] as any;
    const config = {
      ...(library as any).constants.DEFAULT_TABLE_CONFIG,
      styleId: "TableStyleMedium5",
      hasFilters: true,
      numberOfHeaders: 1,
    };
    const made = model.dispatch("CREATE_TABLE", { sheetId: "one", ranges, config, tableType: "static" });
    expect(made.isSuccessful).toBe(true);
    const value = { filterType: "values" as const, hiddenValues: ["0.5"] };
    expect(model.dispatch("UPDATE_FILTER", { sheetId: "one", col: 1, row: 1, value }).isSuccessful).toBe(
      true,
    );
    select([1, 1, 1, 4]);
    expect((await workbook.selected())[0].hidden).toEqual([[false], [true], [false], [false]]);
  });

  test("the active cell of merged cells is their first", async () => {
    select([6, 2, 6, 2]);
    expect(await workbook.active()).toEqual({ sheet: "Job 7", row: 2, column: 5, rows: 1, columns: 1 });
  });

  test("a selected chart is refused in a sentence", async () => {
    model.dispatch("CREATE_CHART", {
      sheetId: "one",
      figureId: "figure",
      chartId: "chart",
      col: 0,
      row: 0,
      offset: { x: 0, y: 0 },
      size: { width: 100, height: 100 },
      definition: {
        type: "bar",
        title: { text: "" },
        dataSetStyles: {},
        dataSource: { type: "range", dataSets: [], dataSetsHaveTitle: false },
        legendPosition: "none",
        stacked: false,
      },
    } as any);
    model.dispatch("SELECT_FIGURE", { figureId: "figure" });
    expect(model.getters.getSelectedFigureId()).toBe("figure");
    await expect(workbook.selected()).rejects.toThrow(/chart/);
    await expect(workbook.active()).rejects.toThrow(Refusal);
  });
});

describe("writing", () => {
  test("several changes are one step to undo", async () => {
    const before = JSON.stringify(model.exportData());
    await workbook.write([
      { sheet: "Job 7", row: 1, column: 1, formulas: [["Size (mm)"], [12.7]] },
      { sheet: "Empty", row: 0, column: 0, formulas: [["=1+1", undefined, false]] },
    ]);
    expect([text(1, 1), text(1, 2), text(0, 0, "two"), text(2, 0, "two")]).toEqual([
      "Size (mm)",
      "12.7",
      "=1+1",
      "FALSE",
    ]);
    model.dispatch("REQUEST_UNDO");
    const after = model.exportData();
    expect(after.sheets).toEqual(JSON.parse(before).sheets);
    expect(model.getters.canUndo()).toBe(false);
  });

  test("past the edge of the sheet it gets rows and columns, in the same step", async () => {
    await workbook.write([{ sheet: "Empty", row: 4, column: 5, formulas: [[7]] }]);
    expect(text(5, 4, "two")).toBe("7");
    model.dispatch("REQUEST_UNDO");
    expect(model.getters.getSheetSize("two")).toEqual({ numberOfRows: 3, numberOfCols: 3 });
  });

  test("nothing is written where one cell is held or the sheet is locked", async () => {
    const before = model.exportData().sheets;
    const refused = async (sheet: string, row: number, column: number, formulas: any[][]) =>
      workbook
        .write([
          { sheet: "Job 7", row: 2, column: 1, formulas: [[99]] },
          { sheet, row, column, formulas },
        ])
        .then(
          () => "written",
          (error) => (error instanceof Refusal ? error.message : String(error)),
        );
    expect(await refused("Job 7", 2, 5, [["x"]])).toMatch(/^F3 is part of merged cells/);
    expect(await refused("Job 7", 3, 3, [["x"]])).toMatch(/^D4 shows the result of a formula/);
    expect(await refused("Locked", 0, 0, [[2]])).toMatch(/Locked.*locked/);
    expect(await refused("Gone", 0, 0, [[2]])).toMatch(/no sheet "Gone"/);
    expect(model.exportData().sheets).toEqual(before);
    expect(model.getters.canUndo()).toBe(false);
  });

  test("what is written already is no fault", async () => {
    await workbook.write([{ sheet: "Job 7", row: 2, column: 1, formulas: [[0.5], ["=B3*3"]] }]);
    expect(text(1, 3)).toBe("=B3*3");
  });

  test("a workbook for reading only is refused", async () => {
    model.updateMode("readonly");
    await expect(workbook.write([{ sheet: "Job 7", row: 2, column: 1, formulas: [[2]] }])).rejects.toThrow(
      /reading only/,
    );
  });
});

describe("sheets", () => {
  const sheet = {
    name: "Empty",
    top: [["Title"], ["Units", "mm"]],
    columns: [
      { header: "Material", width: 20, choices: ["brass", "bronze"] },
      { header: "Size", width: 10, format: "0.000", first: 12 },
      { header: "Twice", width: 10, first: "=B4:B6*2" },
    ],
    rows: 3,
  };

  test("a new one has headers, formats, choices and formulas, is shown, and goes in one undo", async () => {
    const count = model.getters.getSheetIds().length;
    expect(await workbook.addSheet(sheet)).toBe("Empty 2");
    const id = model.getters.getActiveSheetId();
    expect(model.getters.getSheetName(id)).toBe("Empty 2");
    expect([text(0, 0, id), text(1, 1, id), text(0, 2, id), text(2, 2, id)]).toEqual([
      "Title",
      "mm",
      "Material",
      "Twice",
    ]);
    expect(model.getters.getEvaluatedCell({ sheetId: id, col: 1, row: 3 }).formattedValue).toBe("12.000");
    expect(model.getters.getEvaluatedCell({ sheetId: id, col: 2, row: 3 }).value).toBe(24);
    const rule = (row: number) => model.getters.getValidationRuleForCell({ sheetId: id, col: 0, row });
    expect(rule(3)?.criterion.values).toEqual(["brass", "bronze"]);
    expect([rule(2), rule(5)?.isBlocking, rule(6)]).toEqual([undefined, true, undefined]);
    model.dispatch("REQUEST_UNDO");
    expect(model.getters.getSheetIds().length).toBe(count);
  });

  test("a copy as values keeps texts texts and other formulas formulas", async () => {
    const asked: string[] = [];
    const copy = await workbook.copyAsValues("Job 7", (formula) => {
      asked.push(formula);
      return formula.includes("B3:B5");
    });
    expect(copy).toEqual({ name: "Job 7 (values)", replaced: 3 });
    expect(new Set(asked)).toEqual(new Set(["=B3*2", "=B3:B5"]));
    const id = model.getters.getActiveSheetId();
    expect(["D3", "D4", "D5"].map((_, index) => text(3, 2 + index, id))).toEqual(["0.5", "1", "three"]);
    expect(text(1, 3, id)).toBe("=B3*2");
    expect(model.getters.getEvaluatedCell({ sheetId: id, col: 4, row: 2 }).value).toBe("31/64");
    expect(text(3, 2, "one")).toBe("=B3:B5");
    expect((await workbook.copyAsValues("Job 7", () => true)).name).toBe("Job 7 (values) 2");
  });

  test("spilled texts that look like dates or numbers stay texts", async () => {
    await workbook.write([{ sheet: "Empty", row: 0, column: 0, formulas: [["='Job 7'!E3"], ['="007"']] }]);
    await workbook.copyAsValues("Empty", () => true);
    const sheetId = model.getters.getActiveSheetId();
    const value = (row: number) => model.getters.getEvaluatedCell({ sheetId, col: 0, row }).value;
    expect([value(0), value(1)]).toEqual(["31/64", "007"]);
  });
});

test("calls back after a change until it is told to stop", async () => {
  let calls = 0;
  const stop = workbook.onChange(() => calls++);
  await workbook.write([{ sheet: "Job 7", row: 2, column: 1, formulas: [[2]] }]);
  expect(calls).toBeGreaterThan(0);
  const heard = calls;
  model.selection.selectCell(0, 0);
  expect(calls).toBeGreaterThan(heard);
  stop();
  const last = calls;
  model.selection.selectCell(1, 1);
  expect(calls).toBe(last);
});

describe("data validation", () => {
  const rule = (isBlocking: boolean) =>
    model.dispatch("ADD_DATA_VALIDATION_RULE", {
      sheetId: "one",
      ranges: [{ _sheetId: "one", _zone: { left: 1, right: 1, top: 2, bottom: 2 } }],
      rule: {
        id: "rule",
        isBlocking,
        criterion: { type: "isLessThan", values: ["2"] },
      },
    } as never);
  const size = () => model.getters.getEvaluatedCell({ sheetId: "one", col: 1, row: 2 }).value;
  const write = (content: string | number) =>
    workbook.write([{ sheet: "Job 7", row: 2, column: 1, formulas: [[content]] }]);

  test("that keeps a user from typing a figure keeps it out, and leaves nothing behind", async () => {
    rule(true);
    const place = { sheet: "Job 7", row: 2, column: 1, rows: 1, columns: 1 };
    expect(await workbook.hasRules(place)).toBe(true);
    expect(await workbook.hasRules({ ...place, column: 2 })).toBe(false);
    await expect(write(12.7)).rejects.toThrow("The data validation of B3 does not allow 12.7.");
    expect(size()).toBe(0.5);
    await write(1.5);
    expect(size()).toBe(1.5);
  });
  test("that only warns lets it in", async () => {
    rule(false);
    await write(12.7);
    expect(size()).toBe(12.7);
  });
  test("that a cell breaks already is not held against it", async () => {
    await write(12.7);
    rule(true);
    await write(13);
    expect(size()).toBe(13);
  });
});

test("names stand for their cells", async () => {
  model.dispatch("CREATE_NAMED_RANGE", {
    name: "Size",
    ranges: [{ _sheetId: "one", _zone: { left: 1, right: 1, top: 2, bottom: 4 } }],
  } as never);
  expect((await workbook.meanings()).names).toEqual([
    { name: "Size", sheet: undefined, formula: "='Job 7'!$B$3:$B$5" },
  ]);
});

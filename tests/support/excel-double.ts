// tests: a workbook as Excel's API shows it, made of office-addin-mock objects, whose properties can be read only
// after load and sync.

import { createRequire } from "node:module";

const { OfficeMockObject } = createRequire(import.meta.url)("office-addin-mock");

type Content = string | number | boolean;

export interface SheetDouble {
  readonly name: string;
  readonly cells: Content[][];
  readonly values?: Content[][];
  readonly formats?: string[][];
  readonly protected?: boolean;
  /** Merged rectangles: row, column, rows, columns. */
  readonly merged?: readonly (readonly [number, number, number, number])[];
  /** Spilled rectangles, the first cell of each the formula's. */
  readonly spilled?: readonly (readonly [number, number, number, number])[];
}

type Box = readonly [row: number, column: number, rows: number, columns: number];

/** Sets Excel and Office for the test; gives the sheets to look at, and what was asked of the host. */
export function giveExcel(sheets: SheetDouble[], selection: { sheet: string; boxes: Box[] } | "chart") {
  const asked = { runs: 0, merged: 0, added: [] as string[], activated: [] as string[] };
  const mocks: { mock: any; commit: () => void }[] = [];
  const byName = (name: string) => sheets.find((sheet) => sheet.name === name)!;

  function made(properties: object, commit: () => void = () => {}): any {
    const mock = new OfficeMockObject(properties, "excel");
    // Known after a sync without being loaded.
    if ("isNullObject" in properties) mock.isNullObject = properties.isNullObject;
    mocks.push({ mock, commit: () => commit.call(mock) });
    return mock;
  }
  const nothing = () =>
    made({
      isNullObject: true,
      rowIndex: 0,
      columnIndex: 0,
      rowCount: 0,
      columnCount: 0,
      address: "",
      formulas: [],
      values: [],
      areas: [],
    });

  function usedBox(sheet: SheetDouble): Box | undefined {
    const filled = sheet.cells.flatMap((row, r) =>
      row.flatMap((cell, c) => (cell === "" ? [] : [[r, c] as const])),
    );
    if (filled.length === 0) return undefined;
    const [rows, columns] = [filled.map(([r]) => r), filled.map(([, c]) => c)];
    const [top, left] = [Math.min(...rows), Math.min(...columns)];
    return [top, left, Math.max(...rows) - top + 1, Math.max(...columns) - left + 1];
  }

  const inside = ([row, column, rows, columns]: Box, r: number, c: number) =>
    r >= row && r < row + rows && c >= column && c < column + columns;

  function rangeOf(sheet: SheetDouble, box: Box): any {
    const [row, column, rows, columns] = box;
    const isWhole = rows * columns > 10_000;
    const block = <T>(from: readonly (readonly T[])[], none: T): T[][] =>
      Array.from({ length: isWhole ? 0 : rows }, (_, r) =>
        Array.from({ length: columns }, (_, c) => from[row + r]?.[column + c] ?? none),
      );
    const spills = (sheet.spilled ?? []).some(
      (spill) => inside(box, spill[0], spill[1]) || inside(spill, row, column),
    );
    const own = { formulas: block(sheet.cells, ""), values: block(sheet.values ?? sheet.cells, "") };
    const range = made(
      {
        isNullObject: false,
        address: `${sheet.name}!R${row + 1}C${column + 1}`,
        rowIndex: row,
        columnIndex: column,
        rowCount: rows,
        columnCount: columns,
        ...own,
        numberFormat: block(sheet.formats ?? [], "General"),
        hasSpill: spills,
        columnHidden: false,
        format: { font: { bold: false }, columnWidth: 0 },
        dataValidation: { rule: "none" },
      },
      function (this: any) {
        for (const what of ["formulas", "values"] as const) {
          if (!Array.isArray(this[what]) || this[what] === own[what]) continue;
          this[what].forEach((line: Content[], r: number) => {
            line.forEach((content, c) => {
              sheet.cells[row + r] ??= [];
              sheet.cells[row + r][column + c] = content;
            });
          });
        }
      },
    );
    range.worksheet = made({ name: sheet.name });
    range.worksheet.getUsedRangeOrNullObject = () =>
      usedBox(sheet) ? rangeOf(sheet, usedBox(sheet)!) : nothing();
    range.getIntersectionOrNullObject = () => {
      const used = usedBox(sheet);
      if (!used) return nothing();
      const [top, left] = [Math.max(row, used[0]), Math.max(column, used[1])];
      const [bottom, right] = [
        Math.min(row + rows, used[0] + used[2]),
        Math.min(column + columns, used[1] + used[3]),
      ];
      return bottom > top && right > left
        ? rangeOf(sheet, [top, left, bottom - top, right - left])
        : nothing();
    };
    range.getCell = (r: number, c: number) => rangeOf(sheet, [row + r, column + c, 1, 1]);
    range.getMergedAreasOrNullObject = () => {
      const parts = (sheet.merged ?? []).filter((merge) => inside(box, merge[0], merge[1]));
      if (parts.length === 0) return nothing();
      const found = made({ isNullObject: false });
      found.areas = {
        load() {},
        items: parts.map((part) => ({
          rowIndex: part[0],
          columnIndex: part[1],
          rowCount: part[2],
          columnCount: part[3],
        })),
      };
      return found;
    };
    const spillAt = () => (sheet.spilled ?? []).find((spill) => inside(spill, row, column));
    range.getSpillParentOrNullObject = () =>
      spillAt() ? rangeOf(sheet, [spillAt()![0], spillAt()![1], 1, 1]) : nothing();
    range.getSpillingToRangeOrNullObject = () => (spillAt() ? rangeOf(sheet, spillAt()!) : nothing());
    return range;
  }

  function worksheetOf(sheet: SheetDouble): any {
    return {
      protection: made({ protected: sheet.protected ?? false }),
      getRangeByIndexes: (...box: [number, number, number, number]) => rangeOf(sheet, box),
      getCell: (row: number, column: number) => rangeOf(sheet, [row, column, 1, 1]),
      getUsedRangeOrNullObject: () => (usedBox(sheet) ? rangeOf(sheet, usedBox(sheet)!) : nothing()),
      freezePanes: { freezeRows() {} },
      activate: () => asked.activated.push(sheet.name),
      copy() {
        const copy = { ...sheet, name: "", cells: sheet.cells.map((row) => [...row]) };
        sheets.push(copy);
        return {
          ...worksheetOf(copy),
          set name(name: string) {
            Object.assign(copy, { name });
          },
          activate: () => asked.activated.push(copy.name),
        };
      },
    };
  }

  const worksheets = {
    load() {},
    get items() {
      return sheets.map(({ name }) => ({ name }));
    },
    getItem: (name: string) => worksheetOf(byName(name)),
    add(name: string) {
      asked.added.push(name);
      const sheet: SheetDouble = { name, cells: [] };
      sheets.push(sheet);
      return worksheetOf(sheet);
    },
  };
  const context = {
    workbook: {
      worksheets,
      getSelectedRanges() {
        if (selection === "chart")
          throw Object.assign(new Error("The current selection is invalid."), { code: "InvalidSelection" });
        const items = selection.boxes.map((box) => rangeOf(byName(selection.sheet), box));
        const load = (paths: string) => {
          for (const item of items) item.load(paths.replaceAll("items/", ""));
        };
        return { areas: { load, items } };
      },
      getActiveCell() {
        if (selection === "chart")
          throw Object.assign(new Error("The current selection is invalid."), { code: "InvalidSelection" });
        const [row, column] = selection.boxes[0];
        return rangeOf(byName(selection.sheet), [row, column, 1, 1]);
      },
    },
    async sync() {
      for (const { mock, commit } of mocks) {
        commit();
        await mock.sync();
      }
    },
  };
  Object.assign(globalThis, {
    Excel: {
      async run(...given: any[]) {
        asked.runs++;
        if (given.length === 2 && given[0].mergeUndoGroup) asked.merged++;
        return given.at(-1)(context);
      },
    },
    Office: {
      context: {
        requirements: {
          isSetSupported: (name: string, version: string) => name === "ExcelApi" && version === "1.20",
        },
      },
    },
  });
  return { sheets, asked };
}

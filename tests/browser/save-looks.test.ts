// tests: cells made bold, filled, framed, aligned and merged in the browser workbook, saved into the file that was
// opened: they look so in another program, and what they had of looks that the grid does not know stays.

import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { smallWorkbook, textsIn } from "../support/package.ts";
import { quickTest, runs } from "../support/share.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";
import { type Grid, type GridModel, names, savedAfter } from "./saving.ts";

const zone = (top: number, left: number, bottom = top, right = left) => ({ top, left, bottom, right });

async function styledFile(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Sheet1");
  for (let row = 1; row <= 6; row++) sheet.getCell(row, 2).value = row;
  sheet.getCell("B2").font = { name: "Consolas", size: 9, italic: true, underline: "double" };
  sheet.getCell("B2").numFmt = '[Red]#,##0.00_);"none"';
  sheet.getCell("B2").border = { left: { style: "double", color: { argb: "FF00AA00" } } };
  sheet.getCell("B2").protection = { locked: false };
  sheet.getCell("B3").fill = {
    type: "gradient",
    gradient: "angle",
    degree: 0,
    stops: [
      { position: 0, color: { argb: "FFFFFFFF" } },
      { position: 1, color: { argb: "FF0000FF" } },
    ],
  };
  sheet.getCell("B4").alignment = { horizontal: "right", indent: 2, wrapText: true };
  sheet.getCell("B5").note = "measured";
  book.addWorksheet("Other").getCell("A1").value = { formula: "SUM(Sheet1!B1:B6)", result: 21 };
  return new Uint8Array(await book.xlsx.writeBuffer());
}

async function sheetAfter(edit: (grid: Grid) => void) {
  const file = await styledFile();
  const saved = await savedAfter(file, edit);
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(saved!.bytes as never);
  const [was, now] = [textsIn(file), textsIn(saved!.bytes)];
  const changed = Object.keys(now).filter((name) => was[name] !== now[name]);
  return { sheet: book.worksheets[0], changed: changed.sort(), bytes: saved!.bytes };
}

const format = (grid: Grid, target: object[], style: object) => grid.run("SET_FORMATTING", { target, style });

describe("cells of a row that is new", () => {
  test("get the looks that they and those beside them are given", async () => {
    const { sheet } = await sheetAfter((grid) => {
      grid.insert("ROW", 2);
      format(grid, [zone(2, 1, 3, 1)], { fillColor: "#FF0000" });
    });
    for (const cell of ["B3", "B4"])
      expect(sheet.getCell(cell).fill, cell).toMatchObject({
        pattern: "solid",
        fgColor: { argb: "FFFF0000" },
      });
    expect(sheet.getCell("B2").font).toMatchObject({ name: "Consolas", underline: "double" });
  });
});

describe("rows and columns that stay in sight", () => {
  const frozenAfter = async (edit: (grid: Grid) => void) => {
    const { sheet, changed } = await sheetAfter(edit);
    expect(changed).toEqual(["xl/worksheets/sheet1.xml"]);
    const [{ state, xSplit = 0, ySplit = 0, topLeftCell }] = sheet.views as any[];
    return { state, xSplit, ySplit, topLeftCell };
  };

  quickTest("are written, and taken away again", async () => {
    const rows = (grid: Grid) => grid.run("FREEZE_ROWS", { quantity: 2 });
    const columns = (grid: Grid) => grid.run("FREEZE_COLUMNS", { quantity: 1 });
    expect(await frozenAfter(rows)).toEqual({ state: "frozen", xSplit: 0, ySplit: 2, topLeftCell: "A3" });
    expect(
      await frozenAfter((grid) => {
        rows(grid);
        columns(grid);
      }),
    ).toEqual({ state: "frozen", xSplit: 1, ySplit: 2, topLeftCell: "B3" });
    const saved = await savedAfter(await styledFile(), rows);
    const again = await savedAfter(saved!.bytes, (grid) => grid.run("UNFREEZE_ROWS", {}));
    expect(textsIn(again!.bytes)["xl/worksheets/sheet1.xml"]).not.toContain("pane");
  });

  quickTest("are written into a sheet that says nothing of how it is seen", async () => {
    const bare = smallWorkbook({
      sheets: { A: '<row r="1"><c r="A1"><v>1</v></c></row><row r="4"><c r="C4"><v>2</v></c></row>' },
    });
    const saved = await savedAfter(bare, (grid) => grid.run("FREEZE_ROWS", { quantity: 1 }));
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(saved!.bytes as never);
    expect(book.worksheets[0].views).toMatchObject([{ state: "frozen", ySplit: 1 }]);
    expect(book.worksheets[0].getCell("C4").value).toBe(2);
  });

  quickTest("are as many as there are of them when a row is inserted above", async () => {
    const saved = await savedAfter(await styledFile(), (grid) => grid.run("FREEZE_ROWS", { quantity: 2 }));
    const again = await savedAfter(saved!.bytes, (grid) => grid.insert("ROW", 1));
    expect(textsIn(again!.bytes)["xl/worksheets/sheet1.xml"]).toContain('ySplit="3"');
  });
});

describe("looks of cells", () => {
  quickTest("are added to what the cells had", async () => {
    const { sheet, changed, bytes } = await sheetAfter((grid) => {
      format(grid, [zone(1, 1)], { bold: true, textColor: "#112233" });
      format(grid, [zone(2, 1)], { strikethrough: true });
      format(grid, [zone(3, 1)], { fillColor: "#FFEE00", align: "center", verticalAlign: "middle" });
      format(grid, [zone(0, 1), zone(7, 0)], { fontSize: 20, wrapping: "wrap" });
      grid.run("SET_ZONE_BORDERS", {
        target: [zone(1, 1)],
        border: { position: "bottom", style: "thick", color: "#FF0000" },
      });
    });
    expect(sheet.getCell("B2").font).toMatchObject({
      name: "Consolas",
      size: 9,
      italic: true,
      bold: true,
      underline: "double",
      color: { argb: "FF112233" },
    });
    expect(sheet.getCell("B2")).toMatchObject({ value: 2, numFmt: '[Red]#,##0.00_);"none"' });
    expect(sheet.getCell("B2").protection).toMatchObject({ locked: false });
    expect(sheet.getCell("B2").border).toMatchObject({
      left: { style: "double", color: { argb: "FF00AA00" } },
      bottom: { style: "thick", color: { argb: "FFFF0000" } },
    });
    expect(sheet.getCell("B3").fill).toMatchObject({ type: "gradient" });
    expect(sheet.getCell("B3").font.strike).toBe(true);
    expect(sheet.getCell("B4").fill).toMatchObject({
      type: "pattern",
      pattern: "solid",
      fgColor: { argb: "FFFFEE00" },
    });
    expect(sheet.getCell("B4").alignment).toMatchObject({
      horizontal: "center",
      vertical: "middle",
      indent: 2,
      wrapText: true,
    });
    expect(sheet.getCell("B1").font).toMatchObject({ size: 20 });
    expect(sheet.getCell("A8").alignment).toMatchObject({ wrapText: true });
    expect(sheet.getCell("B5")).toMatchObject({ value: 5, note: "measured" });
    expect(changed).toEqual(["xl/styles.xml", "xl/worksheets/sheet1.xml"]);
    // And once more without a change.
    expect((await savedAfter(bytes, () => undefined))!.bytes).toEqual(bytes);
  });

  quickTest("go where they are taken away", async () => {
    const { sheet } = await sheetAfter((grid) => {
      format(grid, [zone(1, 1)], { italic: false });
      grid.run("SET_ZONE_BORDERS", { target: [zone(1, 1)], border: { position: "clear" } });
      grid.run("CLEAR_FORMATTING", { target: [zone(3, 1)] });
    });
    expect(sheet.getCell("B2").font).toMatchObject({ name: "Consolas", size: 9 });
    expect(sheet.getCell("B2").font.italic).toBeFalsy();
    expect(sheet.getCell("B2").border?.left?.style).toBeUndefined();
    expect(sheet.getCell("B4").alignment?.wrapText).toBeFalsy();
  });

  quickTest("of new rows are those of the row beside them, whatever the grid knows of them", async () => {
    const { sheet } = await sheetAfter((grid) => {
      grid.insert("ROW", 2, 2);
      grid.type(2, 1, "7");
    });
    // The grid takes the looks of a new row from the row below it.
    expect(sheet.getCell("B5").fill).toMatchObject({ type: "gradient" });
    expect(sheet.getCell("B2").font).toMatchObject({ name: "Consolas" });
    expect(sheet.getCell("B3").value).toBe(7);
  });

  quickTest("rows and columns are hidden and shown, cells are merged and taken apart", async () => {
    const { sheet, changed, bytes } = await sheetAfter((grid) => {
      grid.run("HIDE_COLUMNS_ROWS", { dimension: "ROW", elements: [3, 8] });
      grid.run("HIDE_COLUMNS_ROWS", { dimension: "COL", elements: [2] });
      grid.run("ADD_MERGE", { target: [zone(9, 0, 10, 2)] });
    });
    expect([3, 4, 9].map((row) => sheet.getRow(row).hidden)).toEqual([false, true, true]);
    expect([2, 3].map((column) => sheet.getColumn(column).hidden)).toEqual([false, true]);
    expect(sheet.getCell("C11").master.address).toBe("A10");
    expect(changed).toEqual(["xl/worksheets/sheet1.xml"]);
    const again = await savedAfter(bytes, (grid) => {
      grid.run("UNHIDE_COLUMNS_ROWS", { dimension: "ROW", elements: [3] });
      grid.run("REMOVE_MERGE", { target: [zone(9, 0, 10, 2)] });
    });
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(again!.bytes as never);
    expect(book.worksheets[0].getRow(4).hidden).toBe(false);
    expect(book.worksheets[0].getCell("C11").isMerged).toBe(false);
    expect(textsIn(again!.bytes)["xl/worksheets/sheet1.xml"]).not.toContain("mergeCell");
  });

  test("any of them come back when the file is opened again", async () => {
    const file = await styledFile();
    const style = fc.oneof(
      fc.record({ bold: fc.boolean() }),
      fc.record({ italic: fc.boolean(), underline: fc.boolean() }),
      // 10 is what the grid has where nothing is said, and it does not say it.
      fc.record({ strikethrough: fc.boolean(), fontSize: fc.constantFrom(6, 8, 9, 12, 14, 30) }),
      fc.record({ fillColor: fc.constantFrom("#FF0000", "#00FF7F", "") }),
      fc.record({ textColor: fc.constantFrom("#123456", "#000000") }),
      fc.record({
        align: fc.constant("center"),
        verticalAlign: fc.constantFrom("top", "middle", "bottom"),
      }),
      fc.record({ wrapping: fc.constantFrom("wrap", "overflow") }),
      fc.record({ rotation: fc.constantFrom(-Math.PI / 4, -Math.PI / 2, Math.PI / 4) }),
    );
    const border = fc.record({
      position: fc.constantFrom("all", "top", "left", "bottom", "right", "external", "clear"),
      style: fc.constantFrom("thin", "medium", "thick", "dashed", "dotted"),
      color: fc.constantFrom("#0000FF", "#000000"),
    });
    const place = fc
      .tuple(fc.nat({ max: 8 }), fc.nat({ max: 4 }), fc.nat({ max: 3 }), fc.nat({ max: 2 }))
      .map(([top, left, down, right]) => zone(top, left, top + down, left + right));
    const change = fc.oneof(fc.record({ place, style }), fc.record({ place, border }));
    const looks = ({ getters }: GridModel) => {
      const sheetId = getters.getSheetIds()[0];
      return Array.from({ length: 15 }, (_, row) =>
        Array.from({ length: 9 }, (_, col) => {
          // Where nobody says otherwise, text is black, at the bottom, and of the size that the file has for it.
          const {
            verticalAlign = "bottom",
            wrapping = "overflow",
            rotation = 0,
            fillColor = "",
            fontSize = 11,
            textColor = "#000000",
            ...own
          } = getters.getCellStyle({ sheetId, row, col }) as any;
          const sorted = Object.entries(own)
            .filter(([, value]) => value)
            .sort();
          const found = getters.getCellBorder({ sheetId, row, col } as never) ?? {};
          const drawn = Object.entries(found)
            .filter(([, line]) => line)
            .sort();
          return JSON.stringify([
            sorted,
            fontSize,
            textColor,
            verticalAlign,
            wrapping,
            Math.round(rotation * 57.3),
            fillColor,
            drawn,
          ]);
        }),
      );
    };
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 5 }), async (changes) => {
        let wanted: ReturnType<typeof looks> | undefined;
        const saved = await savedAfter(file, (grid) => {
          for (const one of changes) {
            if ("style" in one) format(grid, [one.place], one.style);
            else
              grid.model.dispatch("SET_ZONE_BORDERS", {
                sheetId: grid.model.getters.getSheetIds()[0],
                target: [one.place],
                border: one.border,
              } as never);
          }
          wanted = looks(grid.model);
        });
        const { model } = openWorkbook(saved!.bytes, gridLibrary, names);
        expect(looks(model)).toEqual(wanted);
      }),
      { numRuns: runs(25, 8) },
    );
  });
});

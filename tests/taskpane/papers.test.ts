// tests: the papers made from the quoting sheet of the invented shop.

import { unzipSync } from "fflate";
import { describe, expect } from "vitest";
import {
  dayNumber,
  makeCard,
  makeComparison,
  makeQuote,
  makeQuoteFile,
  makeTrouble,
} from "../../src/taskpane/actions/papers.ts";
import { letterOf, quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { Refusal } from "../../src/workbook/workbook.ts";
import { typeParts } from "../support/example-parts.ts";
import { type FunctionGrid, gridOf } from "../support/function-grid.ts";
import { refusal } from "../support/memory-workbook.ts";
import { longTest, quickTest } from "../support/share.ts";

const NOW = new Date(2026, 10, 26, 23, 30);

async function shop(): Promise<FunctionGrid> {
  const grid = gridOf(quotingSheet(6));
  typeParts(grid);
  return grid;
}
function fillData(grid: FunctionGrid): void {
  for (const [address, content] of Object.entries({
    B4: "Example Reaming Works",
    B8: "Q-0147",
    B12: "Example Hydraulics",
  }))
    grid.type(address, content, "Quote data");
  for (let row = 1; row < 40; row++)
    if (grid.shown(`A${row}`, "Quote data") === "Charge 1") {
      grid.type(`B${row}`, "Fixture", "Quote data");
      grid.type(`C${row}`, 650, "Quote data");
    }
}
const goTo = (grid: FunctionGrid, col: number, row: number) => grid.model.selection.selectCell(col, row);
const textOf = (grid: FunctionGrid) => {
  const lines: string[] = [];
  for (let row = 1; row < 60; row++)
    for (const column of "ABCDEFGHIJKL") lines.push(grid.shown(`${column}${row}`));
  return lines.filter((text) => text !== "").join(" | ");
};

describe("the customer quote", () => {
  quickTest("asks for its data once, then is made as values", async () => {
    const grid = await shop();
    expect(await makeQuote(grid.workbook, "A4", NOW)).toContain('"Quote data" is added');
    expect(grid.shown("B10", "Quote data")).toBe("2026-11-26");
    expect(await refusal(makeQuote(grid.workbook, "A4", NOW))).toContain("Shop name is empty");
    fillData(grid);
    expect(await makeQuote(grid.workbook, "A4", NOW)).toContain('"Quote Q-0147" is added');
    const text = textOf(grid);
    for (const words of [
      "3.44 | 860.00",
      "3.72 | 930.00",
      "3.64 | 364.00",
      "Total, USD | 2,804.00",
      "2026-12-26",
    ])
      expect(text).toContain(words);
    const sheetId = grid.model.getters.getActiveSheetId();
    const formulas = grid.model.getters.getCells(sheetId).filter((cell) => cell.isFormula);
    expect(formulas).toEqual([]);
  });

  quickTest("goes out as a file of its own", async () => {
    const grid = await shop();
    await makeQuote(grid.workbook, "A4", NOW);
    fillData(grid);
    const { told, file } = await makeQuoteFile(grid.workbook, "Letter", NOW);
    expect(told).toBe("Quote Q-0147.xlsx is saved: this sheet alone, values only.");
    const text = Object.values(unzipSync(file!.bytes))
      .map((bytes) => new TextDecoder().decode(bytes))
      .join("");
    expect(text).not.toMatch(/<f>|REAM\.|definedName|2\.28067|[Mm]achine rate/);
    expect(text).toContain("<v>2804</v>");
  });

  quickTest("has the same day in a workbook that counts from 1904, and in a file of its own", async () => {
    const grid = await shop();
    const from1904 = Object.assign(Object.create(grid.workbook), { dayShift: async () => -1462 });
    await makeQuote(from1904, "A4", NOW);
    fillData(grid);
    // 46352 − 1462, as such a workbook counts 2026-11-26.
    const number = () => grid.value("B10", "Quote data");
    expect(number()).toBe(44_890);
    const { file } = await makeQuoteFile(from1904, "A4", NOW);
    const text = Object.values(unzipSync(file!.bytes))
      .map((bytes) => new TextDecoder().decode(bytes))
      .join("");
    expect(text).toContain("<v>46352</v>");
    expect(text).not.toContain("<v>44890</v>");
    await makeQuote(from1904, "A4", NOW);
    // The grid counts from 1900.
    expect(textOf(grid)).toContain("2022-11-25");
    grid.type("B10", "'2026-11-26", "Quote data");
    await grid.workbook.show({ sheet: "Quote of holes", row: 8, column: 1, rows: 1, columns: 1 });
    await makeQuote(from1904, "A4", NOW);
    expect(textOf(grid)).toContain("2022-11-25");
  });

  quickTest("takes no figures that are still being computed", async () => {
    const grid = await shop();
    await makeQuote(grid.workbook, "A4", NOW);
    fillData(grid);
    const busy = Object.assign(Object.create(grid.workbook), {
      readComputed: async () => {
        throw new Refusal("Excel is still computing.");
      },
    });
    goTo(grid, 1, 9);
    await grid.workbook.show({ sheet: "Quote of holes", row: 8, column: 1, rows: 1, columns: 1 });
    for (const make of [makeQuote, makeQuoteFile, makeComparison])
      expect(await refusal(make(busy, "A4", NOW))).toContain("still computing");
    for (const make of [makeCard, makeTrouble])
      expect(await refusal(make(busy, "A4"))).toContain("still computing");
  });

  quickTest("is not made of a row without a price, and names the cell", async () => {
    const grid = await shop();
    await makeQuote(grid.workbook, "A4", NOW);
    fillData(grid);
    grid.type(`${letterOf("callout")}10`, "16", "Quote of holes");
    expect(await refusal(makeQuote(grid.workbook, "A4", NOW))).toContain(`${letterOf("price")}10`);
    grid.type(`${letterOf("callout")}10`, "16 H7", "Quote of holes");
    grid.type(`${letterOf("break1")}9`, "many", "Quote of holes");
    expect(await refusal(makeQuote(grid.workbook, "A4", NOW))).toContain(`Break 1 in ${letterOf("break1")}9`);
    grid.type(`${letterOf("break1")}9`, 50, "Quote of holes");
    grid.type(`${letterOf("price")}9`, 3.5, "Quote of holes");
    expect(await refusal(makeQuote(grid.workbook, "A4", NOW))).toContain("is not what its cost");
  });
});

describe("papers of a row", () => {
  longTest("are made from the row of the active cell, in its unit", async () => {
    const grid = await shop();
    goTo(grid, 1, 10);
    expect(await makeCard(grid.workbook, "A4")).toContain('"Set-up LV-5" is added');
    expect(textOf(grid)).toContain("Feed rate, in/min | 3.03");
    for (const units of ["inch", "Inches", '"']) {
      grid.type(`${letterOf("units")}11`, units, "Quote of holes");
      await grid.workbook.show({ sheet: "Quote of holes", row: 10, column: 1, rows: 1, columns: 1 });
      await makeCard(grid.workbook, "A4");
      expect(textOf(grid), units).toContain("Feed rate, in/min | 3.03");
    }
    goTo(grid, 1, 10);
    goTo(grid, 0, 0);
    expect(await refusal(makeCard(grid.workbook, "A4"))).toContain("is no quoting sheet");
    const sheet = { sheet: "Quote of holes", row: 9, column: 1, rows: 1, columns: 1 };
    await grid.workbook.show(sheet);
    expect(await makeTrouble(grid.workbook, "A4")).toContain('"Trouble VB-40" is added');
    await grid.workbook.show(sheet);
    expect(await makeComparison(grid.workbook, "A4", NOW)).toContain('"Before and after VB-40" is added');
    await grid.workbook.show({ ...sheet, row: 12 });
    expect(await refusal(makeCard(grid.workbook, "A4"))).toContain("Row 13 has no callout");
    // No card without a depth, and none with an input that cannot be used: the message names the cell.
    await grid.workbook.show({ ...sheet, row: 8 });
    grid.type(`${letterOf("callout")}9`, "12 H7", "Quote of holes");
    expect(await refusal(makeCard(grid.workbook, "A4"))).toContain(`Depth used in ${letterOf("depthUsed")}9`);
    grid.type(`${letterOf("depth")}9`, 30, "Quote of holes");
    grid.type(`${letterOf("material")}9`, "unobtainium", "Quote of holes");
    expect(await refusal(makeCard(grid.workbook, "A4"))).toMatch(/in [A-Z]+9 shows "#VALUE!"/);
    grid.type(`${letterOf("callout")}9`, "12 7H", "Quote of holes");
    await grid.workbook.show({ ...sheet, row: 8 });
    expect(await refusal(makeTrouble(grid.workbook, "A4"))).toContain("cannot be read");
  });

  quickTest("the day is that of the calendar on the wall", () => {
    expect(dayNumber(NOW)).toBe(46_352);
  });
});

// tests: the workbook that opens with the page: its sheets are those that the buttons make, and none of them is in error.

import { describe, expect, test } from "vitest";
import { holes } from "../../src/browser/demo-quote/holes.ts";
import { quoteWorkbook } from "../../src/browser/demo-quote/quote.ts";
import { Looks, sheetOfSteps } from "../../src/browser/sheet-of-steps.ts";
import { beforeAndAfter } from "../../src/papers/before-and-after.ts";
import { troubleSheet } from "../../src/papers/trouble-sheet.ts";
import { makeCard, makeQuote } from "../../src/taskpane/actions/papers.ts";
import { quoteColumns } from "../../src/taskpane/actions/quote-columns.ts";
import { quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { shopTablesOf } from "../../src/taskpane/actions/shop-table.ts";
import { keepPrintSetup } from "../../src/workbook/grid-print.ts";
import { GridWorkbook } from "../../src/workbook/grid-workbook.ts";
import { exampleRow } from "../support/example-parts.ts";
import { functionGrid, modelOfData } from "../support/function-grid.ts";

const { data, prints } = quoteWorkbook();
const model = modelOfData(data);
for (const [id, setup] of prints) keepPrintSetup(model, id, setup);
const { getters } = model;
const ids = getters.getSheetIds();
const nameOf = (id: string) => getters.getSheetName(id);
const idOf = (name: string) => ids.find((id) => nameOf(id) === name)!;
const texts = (name: string): string[] =>
  getters
    .getEvaluatedCellsPositions(idOf(name))
    .map((position) => getters.getEvaluatedCell(position).formattedValue)
    .filter((text) => text !== "");

describe("the demo", () => {
  test("tells one story: costs, the shop's table, a proposal, its set-up, its trouble", () => {
    expect(ids.map(nameOf)).toEqual([
      "Quote",
      "Inch and metric",
      "Costs of Q-0147",
      "Quote Q-0147",
      "Example shop table mm",
      "Before and after Valve block",
      "Set-up Valve block",
      "Trouble Valve block",
      "Hand figures",
    ]);
    for (const name of ["Costs of Q-0147", "Before and after Valve block", "Set-up Valve block"])
      expect(texts(name), name).toContain("4X ⌀16 H7 THRU");
    for (const name of ids.map(nameOf).filter((one) => !/^Inch/.test(one)))
      expect(texts(name).join(" "), name).toMatch(/invented/i);
  });

  test("has no cell in error but those that show what the functions refuse", () => {
    const errors = ids.flatMap((id) =>
      getters
        .getEvaluatedCellsPositions(id)
        .filter((position) => getters.getEvaluatedCell(position).type === "error")
        .map(() => nameOf(id)),
    );
    // Sizes in the long quote that no standard reamer or drill fits.
    expect(errors.filter((name) => name !== "Quote" && name !== "Inch and metric")).toEqual([]);
  });

  test("prices every row, and shows what the papers' figures are", () => {
    const open = getters.getEvaluatedCell({ sheetId: idOf("Costs of Q-0147"), row: 3, col: 1 });
    expect(open.value).toBe(0);
    const unitPrices = [8, 9, 10].map((row) =>
      Number(
        getters.getEvaluatedCell({ sheetId: idOf("Costs of Q-0147"), row, col: quoteColumns.length - 1 })
          .value,
      ).toFixed(2),
    );
    expect(texts("Quote Q-0147")).toEqual(expect.arrayContaining(unitPrices));
    expect(texts("Quote Q-0147").join()).not.toMatch(/margin|overhead|scrap|m\/min/i);
    const change = texts("Before and after Valve block").join("\n");
    for (const words of ["Saving per part: 2.41 USD (2.40 to 2.42); hours unused: 0.45", "46.1"])
      expect(change).toContain(words);
    const card = texts("Set-up Valve block");
    for (const words of ["1790", "2149", "over by 0.0032", "752", "3,008", "16.0045"])
      expect(card).toContain(words);
    expect(texts("Trouble Valve block")).toContain("bell-mouth");
  });

  test("has each part of the long quote in one metal", () => {
    const metals = new Map<string, Set<string>>();
    for (const { part, material } of holes) metals.set(part, (metals.get(part) ?? new Set()).add(material));
    for (const [part, its] of metals) expect([...its].length, part).toBe(1);
  });

  test("gives a card at the press of a button, and asks whose the quote is", async () => {
    const workbook = new GridWorkbook(model);
    const costs = { sheet: "Costs of Q-0147", row: 9, column: 0, rows: 1, columns: 1 };
    await workbook.show(costs);
    expect(await makeQuote(workbook, "A4", new Date(2026, 10, 26))).toContain('"Quote data" is added');
    await workbook.show(costs);
    expect(await makeCard(workbook, "A4")).toContain("is added");
  });
});

test("a new quote in the demo is computed from nothing invented", async () => {
  expect(await shopTablesOf(new GridWorkbook(model))).toEqual({});
});

describe("a sheet that opens with the page", () => {
  test.each([
    ["before and after", beforeAndAfter(exampleRow, 46_352, "A4")],
    ["trouble sheet", troubleSheet(exampleRow, "A4")],
    ["quoting sheet", quotingSheet(5)],
  ])("is the one that a button adds: %s", async (_, sheet) => {
    const looks = new Looks();
    const own = { ...sheetOfSteps(sheet, "own", looks), name: "Own" };
    const opened = modelOfData({ sheets: [own], ...looks.all });
    const { model: added, workbook } = functionGrid();
    await workbook.addSheet(sheet);
    const told = ({ getters: read }: typeof opened, sheetId: string) => {
      const { numberOfRows, numberOfCols } = read.getSheetSize(sheetId);
      const cells: unknown[] = [];
      for (let row = 0; row < Math.min(numberOfRows, 200); row++)
        for (let col = 0; col < numberOfCols; col++) {
          const position = { sheetId, row, col };
          const cell = read.getCell(position);
          // Two neighbors share the line between them: either may hold it.
          const right =
            read.getCellBorder(position)?.right ?? read.getCellBorder({ ...position, col: col + 1 })?.left;
          const below =
            read.getCellBorder(position)?.bottom ?? read.getCellBorder({ ...position, row: row + 1 })?.top;
          cells.push([
            read.getCellText(position, { showFormula: true }),
            cell?.format,
            read.getCellStyle(position),
            // Inside merged cells nothing is drawn.
            col < (read.getMerge(position)?.right ?? 0) ? "" : (right ?? "no line"),
            below ?? "no line",
            read.getMerge(position)?.right,
          ]);
        }
      return { cells, panes: read.getPaneDivisions(sheetId), width: read.getColSize(sheetId, 0) };
    };
    expect(told(opened, "own")).toEqual(told(added, added.getters.getActiveSheetId()));
  });
});

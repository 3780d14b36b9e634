// tests: tables of a file whose headers, last row or columns are changed in the browser workbook, and tables that are new
// there: what the table says is what its cells hold, as spreadsheet programs want it.

import { describe, expect, test } from "vitest";
import { readBook } from "../support/exceljs.ts";
import { partsOf, textsIn, zipped } from "../support/package.ts";
import { type Grid, savedAfter } from "./saving.ts";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const text = (cell: string, value: string) => `<c r="${cell}" t="str"><v>${value}</v></c>`;
const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;

const partsTable = (columns = "", totals = "") =>
  `<table xmlns="${MAIN}" id="3" name="Parts" displayName="Parts" ref="B2:D${totals ? 5 : 4}" ${totals ? 'totalsRowCount="1"' : 'totalsRowShown="0"'}><autoFilter ref="B2:D4"/><tableColumns count="3">${columns || '<tableColumn id="1" name="Size"/><tableColumn id="2" name="Depth"/><tableColumn id="4" name="Feed"/>'}</tableColumns><tableStyleInfo name="TableStyleMedium2" showRowStripes="1"/></table>`;

/** A table of two rows from B2 on, and a formula behind it. */
function file(formula = "SUM(B3:B4)", { columns = "", totals = "" } = {}): Uint8Array {
  const rows = [
    `<row r="2">${text("B2", "Size")}${text("C2", "Depth")}${text("D2", "Feed")}</row>`,
    `<row r="3">${number("B3", 6)}${number("C3", 20)}${number("D3", 100)}</row>`,
    `<row r="4">${number("B4", 8)}${number("C4", 30)}${number("D4", 120)}</row>`,
    totals,
    `<row r="9"><c r="A9"><f>${formula}</f><v>14</v></c></row>`,
  ];
  const parts = partsOf({
    sheets: { Jobs: rows.join(""), Other: "" },
    tables: [partsTable(columns, totals)],
  });
  const sheet = "xl/worksheets/sheet1.xml";
  const list = '<tableParts count="1"><tablePart r:id="rId1"/></tableParts>';
  const types = "[Content_Types].xml";
  const type =
    '<Override PartName="/xl/tables/table1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.table+xml"/>';
  return zipped({
    ...parts,
    [sheet]: parts[sheet].replace("</worksheet>", `${list}</worksheet>`),
    [types]: parts[types].replace("</Types>", `${type}</Types>`),
  });
}

/** What each table says of its columns, and what stands over them, as another library reads them. */
async function tablesIn(bytes: Uint8Array) {
  const book = await readBook(bytes);
  return book.worksheets.flatMap((sheet) =>
    Object.values((sheet as any).tables).map(({ table }: any) => {
      const [, left, top, right] = /^([A-Z])(\d+):([A-Z])/.exec(table.tableRef)!;
      const letters = [];
      for (let code = left.charCodeAt(0); code <= right.charCodeAt(0); code++)
        letters.push(String.fromCharCode(code));
      return {
        name: table.name,
        columns: table.columns.map(({ name }: { name: string }) => name),
        cells: letters.map((letter) => sheet.getCell(`${letter}${top}`).value),
      };
    }),
  );
}

describe("a header that is typed over", () => {
  test("is the header in the table too", async () => {
    const { bytes } = (await savedAfter(file(), (grid) => {
      grid.type(1, 1, 'Ø "new" & <old>');
      grid.type(1, 3, "250");
    }))!;
    const [table] = await tablesIn(bytes);
    expect(table.cells).toEqual(['Ø "new" & <old>', "Depth", "250"]);
    expect(table.columns).toEqual(table.cells);
    expect(textsIn(bytes)["xl/tables/table1.xml"]).toContain('id="3" name="Parts"');
  });

  test("stays what formulas call it by", async () => {
    const called = file("SUM(Parts[Size])");
    expect(await savedAfter(called, (grid) => grid.type(1, 1, "Diameter"))).toBeUndefined();
    expect(await savedAfter(called, (grid) => grid.type(1, 2, "Length"))).toBeDefined();
  });

  test.each([
    ["", '"Jobs" C2: each column of a table needs a header of its own, a text and no formula'],
    [
      "size",
      '"Jobs" C2 has the same text as B2: each column of a table needs a header of its own, a text and no formula',
    ],
    ["=1+1", '"Jobs" C2: each column of a table needs a header of its own, a text and no formula'],
  ])("to %j is refused", async (content, message) => {
    await expect(savedAfter(file(), (grid) => grid.type(1, 2, content))).rejects.toThrow(message);
  });
});

describe("the last row of a table", () => {
  const columns =
    '<tableColumn id="1" name="Size" totalsRowLabel="Total"/><tableColumn id="2" name="Depth" totalsRowFunction="sum"/><tableColumn id="4" name="Feed" totalsRowFunction="custom"><totalsRowFormula>MAX(D3:D4)</totalsRowFormula></tableColumn>';
  const totals = `<row r="5">${text("B5", "Total")}<c r="C5"><f>SUM(C3:C4)</f><v>50</v></c><c r="D5"><f>MAX(D3:D4)</f><v>120</v></c></row>`;

  test("is in the table what stands in its cells", async () => {
    const { bytes } = (await savedAfter(file(undefined, { columns, totals }), (grid) => {
      grid.type(4, 1, "All");
      grid.type(4, 2, "=AVERAGE(C3:C4)");
      grid.type(4, 3, "7");
    }))!;
    expect(/<tableColumns.*<\/tableColumns>/.exec(textsIn(bytes)["xl/tables/table1.xml"])![0]).toBe(
      '<tableColumns count="3"><tableColumn id="1" name="Size" totalsRowLabel="All"/><tableColumn id="2" name="Depth" totalsRowFunction="custom"><totalsRowFormula>AVERAGE(C3:C4)</totalsRowFormula></tableColumn><tableColumn id="4" name="Feed"/></tableColumns>',
    );
  });
});

describe("columns of a table", () => {
  test("that come in have a header, as Excel gives it, or the one that is typed", async () => {
    const { bytes } = (await savedAfter(file(), (grid) => {
      grid.insert("COL", 2, 2);
      grid.type(1, 3, "Coating");
    }))!;
    expect(await tablesIn(bytes)).toEqual([
      {
        name: "Parts",
        columns: ["Size", "Column1", "Coating", "Depth", "Feed"],
        cells: ["Size", "Column1", "Coating", "Depth", "Feed"],
      },
    ]);
    const table = textsIn(bytes)["xl/tables/table1.xml"];
    expect(table).toContain('ref="B2:F4"');
    expect([...table.matchAll(/tableColumn id="(\d+)"/g)].map(([, id]) => id)).toEqual([
      "1",
      "5",
      "6",
      "2",
      "4",
    ]);
  });

  test("go, unless a formula calls them", async () => {
    const remove = (grid: Grid) => grid.remove("COL", [2]);
    const { bytes } = (await savedAfter(file("SUM(Parts[Size])"), remove))!;
    expect(await tablesIn(bytes)).toMatchObject([{ columns: ["Size", "Feed"], cells: ["Size", "Feed"] }]);
    expect(textsIn(bytes)["xl/worksheets/sheet1.xml"]).toContain("<f>SUM(Parts[Size])</f><v>14</v>");
    expect(await savedAfter(file("SUM(Parts[Depth])"), remove)).toBeUndefined();
  });
});

describe("a table that is new", () => {
  const create = (
    grid: Grid,
    range: { left: number; top: number; right: number; bottom: number },
    sheet: number,
  ) => {
    const sheetId = grid.model.getters.getSheetIds()[sheet];
    grid.run(
      "CREATE_TABLE",
      {
        ranges: [{ _sheetId: sheetId, _zone: range }],
        tableType: "static",
        config: {
          hasFilters: true,
          totalRow: false,
          firstColumn: false,
          lastColumn: false,
          numberOfHeaders: 1,
          bandedRows: true,
          bandedColumns: false,
          styleId: "TableStyleMedium2",
          automaticAutofill: false,
        },
      },
      sheet,
    );
  };

  test("is written with its sheet; tables that were there keep their names", async () => {
    const { bytes, losses } = (await savedAfter(file(), (grid) => {
      for (const [i, header] of ["Tool", "12", "Price"].entries()) grid.type(0, i, header, 1);
      grid.type(1, 0, "A", 1);
      create(grid, { left: 0, top: 0, right: 2, bottom: 1 }, 1);
    }))!;
    expect(losses).toEqual([]);
    expect(await tablesIn(bytes)).toEqual([
      { name: "Parts", columns: ["Size", "Depth", "Feed"], cells: ["Size", "Depth", "Feed"] },
      { name: "Table1", columns: ["Tool", "12", "Price"], cells: ["Tool", "12", "Price"] },
    ]);
  });

  test("beside another of its sheet leaves that its name, which formulas call", async () => {
    const { bytes } = (await savedAfter(file("SUM(Parts[Size])"), (grid) => {
      grid.type(1, 5, "Tool");
      grid.type(2, 5, "A");
      create(grid, { left: 5, top: 1, right: 5, bottom: 2 }, 0);
      grid.type(0, 0, "=SUM(B3:B4)", 1);
    }))!;
    const tables = await tablesIn(bytes);
    expect(tables.map(({ name }) => name).sort()).toEqual(["Parts", "Table1"]);
    const ids = Object.entries(textsIn(bytes)).flatMap(([name, table]) =>
      name.startsWith("xl/tables/") ? [/<table\b[^>]*? id="(\d+)"/.exec(table)![1]] : [],
    );
    expect(new Set(ids).size).toBe(2);
  });

  test("with a header that no table may have is left out, which is told", async () => {
    const { bytes, losses } = (await savedAfter(file(), (grid) => {
      grid.type(0, 0, "Tool", 1);
      create(grid, { left: 0, top: 0, right: 1, bottom: 1 }, 1);
    }))!;
    expect(losses).toEqual([
      "Tables without a text of its own over each column (Other A1:B2): their cells stay",
    ]);
    expect((await tablesIn(bytes)).map(({ name }) => name)).toEqual(["Parts"]);
    expect(textsIn(bytes)["xl/worksheets/sheet2.xml"]).not.toContain("tablePart");
  });
});

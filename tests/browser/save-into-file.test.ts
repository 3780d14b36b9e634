// tests: a file opened in the browser workbook, changed and saved: the changed cells and what depends on them are in it,
// as another program reads it, and all else is as it was.

import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { saveChanges } from "../../src/browser/save-changes.ts";
import { saveIntoFile } from "../../src/browser/save-into-file.ts";
import { registerSteps } from "../../src/workbook/grid-steps.ts";
import { GridWorkbook } from "../../src/workbook/grid-workbook.ts";
import { cellAddress } from "../../src/workbook/workbook.ts";
import { putSheets } from "../../src/workbook/xlsx/add-sheets.ts";
import { readCell } from "../../src/workbook/xlsx/addresses.ts";
import { openPackage } from "../../src/workbook/xlsx/package.ts";
import { storedNames } from "../../src/workbook/xlsx/stored-names.ts";
import { readWorkbookParts } from "../../src/workbook/xlsx/workbook-parts.ts";
import { changesSince } from "../../src/workbook/xlsx-grid/changes.ts";
import { openWorkbook } from "../../src/workbook/xlsx-grid/open-file.ts";
import { keepTables, snapshotOf } from "../../src/workbook/xlsx-grid/snapshot.ts";
import { watchStructure } from "../../src/workbook/xlsx-grid/structure.ts";
import { TypedCells } from "../../src/workbook/xlsx-grid/typed-cells.ts";
import {
  packedEntries,
  partsOf,
  type SmallWorkbook,
  smallWorkbook,
  textsIn,
  zipped,
} from "../support/package.ts";
import { quickTest, runs } from "../support/share.ts";
import { functions, metadata } from "../support/small-functions.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";

watchStructure(gridLibrary as any);
registerSteps(gridLibrary as never);
const names = storedNames(metadata.functions.map(({ name }) => name));

type Edits = Readonly<Record<string, string>>;

/** The file after these cells of its first sheet were typed into. */
function saved(
  file: Uint8Array,
  edits: Edits,
  valuesOnly = false,
  more: (model: InstanceType<typeof gridLibrary.Model>, sheetId: string) => void = () => undefined,
) {
  const opened = openWorkbook(file, gridLibrary, names);
  const { model } = opened;
  keepTables(model);
  const before = snapshotOf(model);
  const [sheetId] = model.getters.getSheetIds();
  for (const [address, content] of Object.entries(edits)) {
    const { row, column } = readCell(address)!;
    model.dispatch("UPDATE_CELL", { sheetId, row, col: column, content } as any);
  }
  more(model, sheetId);
  const changes = changesSince(before, snapshotOf(model))!;
  expect(changes.rewritten).toEqual([]);
  return saveIntoFile(
    opened,
    changes,
    new TypedCells(model, gridLibrary, names, opened.parts.from1904),
    functions,
    valuesOnly,
  )!;
}

const sheetOf = (file: Uint8Array) =>
  /<sheetData>(.*)<\/sheetData>/s.exec(textsIn(file)["xl/worksheets/sheet1.xml"])![1];

const row = (at: number, ...cells: string[]) => `<row r="${at}">${cells.join("")}</row>`;
const f = (cell: string, text: string, value: string, more = "") =>
  `<c r="${cell}"${more}><f>${text}</f><v>${value}</v></c>`;
const n = (cell: string, value: number, more = "") => `<c r="${cell}"${more}><v>${value}</v></c>`;
const small = (rows: string, more: Partial<SmallWorkbook> = {}) =>
  smallWorkbook({ sheets: { Sheet1: rows }, ...more });

describe("saving into the file", () => {
  quickTest("without a change is the same bytes", () => {
    const file = small(
      row(1, n("A1", 1), '<c r="B1" t="inlineStr"><is><t>01</t></is></c>', f("C1", "A1*5", "4")),
    );
    expect(saved(file, {}).bytes).toEqual(file);
  });

  quickTest("writes what was typed, and computes what depends on it", () => {
    const rows =
      row(1, n("A1", 1, ' s="0"'), f("B1", "A1*2", "2"), f("C1", "_xldudf_REAM_TWICE(B1)", "4")) +
      row(
        2,
        '<c r="A2" t="inlineStr"><is><t>01</t></is></c>',
        f("B2", "C1+1", "5"),
        f("C2", "A2&amp;1", "9"),
      );
    const { bytes, changed, report } = saved(small(rows), { A1: "10", A3: "'007", D2: "TRUE", B1: "=A1*3" });
    expect(sheetOf(bytes)).toBe(
      row(1, n("A1", 10, ' s="0"'), f("B1", "A1*3", "30"), f("C1", "_xldudf_REAM_TWICE(B1)", "60")) +
        row(
          2,
          '<c r="A2" t="inlineStr"><is><t>01</t></is></c>',
          f("B2", "C1+1", "61"),
          f("C2", "A2&amp;1", "9"),
          '<c r="D2" t="b"><v>1</v></c>',
        ) +
        row(3, '<c r="A3" t="inlineStr"><is><t>007</t></is></c>'),
    );
    expect(changed).toBe(4);
    expect(report.sheets[0]).toMatchObject({ computed: 3, kept: 0 });
  });

  quickTest("leaves every other part as it was", () => {
    const file = small(row(1, n("A1", 1)), {
      more: {
        "xl/comments1.xml": "<comments/>",
        "docProps/app.xml": "<Properties/>",
        "xl/media/image1.png": "\u0001",
      },
    });
    const before = new Map(packedEntries(file));
    for (const [name, bytes] of packedEntries(saved(file, { A1: "2" }).bytes))
      if (name !== "xl/worksheets/sheet1.xml") expect(bytes, name).toEqual(before.get(name));
  });

  quickTest("writes beside a table and into aligned cells no more than cells", async () => {
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet("Sheet1");
    const columns = [{ name: "Hole" }, { name: "Price" }];
    sheet.addTable({ name: "Jobs", ref: "A1", headerRow: true, columns, rows: [["a", 1]] });
    sheet.getCell("A6").value = "open";
    for (const address of ["A6", "B6"]) sheet.getCell(address).alignment = { horizontal: "right" };
    const file = new Uint8Array(await book.xlsx.writeBuffer());
    const typed = { A3: "b", B3: "2", C1: "Note", C2: "soon", A6: "7", B6: "12" };
    const { bytes } = saved(file, typed);
    const again = new ExcelJS.Workbook();
    await again.xlsx.load(bytes as never);
    const cells = Object.keys(typed).map((address) => again.worksheets[0].getCell(address));
    expect(cells.map(({ value }) => value)).toEqual(["b", 2, "Note", "soon", 7, 12]);
    expect(cells.at(-1)!.alignment.horizontal).toBe("right");
    expect(textsIn(bytes)["xl/tables/table1.xml"]).toBe(textsIn(file)["xl/tables/table1.xml"]);
  });

  quickTest("empties a cell, and takes its formula from the list of formulas", () => {
    const relations =
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/></Relationships>';
    const file = small(row(1, n("A1", 1), f("B1", "A1", "1"), f("C1", "A1", "1")), {
      more: {
        "xl/_rels/workbook.xml.rels": relations,
        "xl/calcChain.xml": '<calcChain><c r="B1" i="1"/><c r="C1"/></calcChain>',
      },
    });
    const { bytes } = saved(file, { B1: "", A1: "" });
    expect(sheetOf(bytes)).toBe(row(1, '<c r="A1"></c>', '<c r="B1"></c>', f("C1", "A1", "0")));
    expect(textsIn(bytes)["xl/calcChain.xml"]).toBe('<calcChain><c r="C1" i="1"/></calcChain>');
  });

  quickTest("keeps the formulas that shared the text of a changed one", () => {
    const rows =
      row(1, n("A1", 1), '<c r="B1"><f t="shared" ref="B1:B3" si="0">A1*2</f><v>2</v></c>') +
      row(2, n("A2", 2), '<c r="B2"><f t="shared" si="0"/><v>4</v></c>') +
      row(3, n("A3", 3), '<c r="B3"><f t="shared" si="0"/><v>6</v></c>');
    const { bytes } = saved(small(rows), { B1: "5" });
    expect(sheetOf(bytes)).toBe(
      row(1, n("A1", 1), n("B1", 5)) +
        row(2, n("A2", 2), f("B2", "A2*2", "4")) +
        row(3, n("A3", 3), f("B3", "A3*2", "6")),
    );
  });

  quickTest(
    "a formula that spills gets its mark and its cells, and the file the part that tells of marks",
    async () => {
      const { bytes } = saved(small(row(1, n("A1", 3))), { B1: "=REAM.DOWN(A1)" });
      expect(sheetOf(bytes)).toBe(
        row(
          1,
          n("A1", 3),
          '<c r="B1" cm="1"><f t="array" ref="B1:B3">_xldudf_REAM_DOWN(A1)</f><v>1</v></c>',
        ) +
          row(2, n("B2", 2)) +
          row(3, n("B3", 3)),
      );
      const texts = textsIn(bytes);
      expect(texts["xl/metadata.xml"]).toContain("XLDAPR");
      expect(texts["[Content_Types].xml"]).toContain("/xl/metadata.xml");
      expect(texts["xl/_rels/workbook.xml.rels"]).toContain("sheetMetadata");
      const book = new ExcelJS.Workbook();
      await book.xlsx.load(bytes as never);
      expect(book.getWorksheet("Sheet1")!.getCell("B3").value).toBe(3);
    },
  );

  quickTest("a mistyped name and a missing argument stay formulas, and Excel is asked to compute", () => {
    const { bytes } = saved(small(row(1, n("A1", 3))), {
      B1: "=REAM.TWISE(A1)",
      C1: "=REAM.TWICE()",
      D1: "=SUMM(A1)",
    });
    expect(sheetOf(bytes)).toMatch(/<f[^>]*>REAM\.TWISE\(A1\)<\/f>/);
    expect(sheetOf(bytes)).toMatch(/<f[^>]*>_xldudf_REAM_TWICE\(\)<\/f>/);
    expect(sheetOf(bytes)).toMatch(/<f[^>]*>SUMM\(A1\)<\/f>/);
    expect(textsIn(bytes)["xl/workbook.xml"]).toContain('<calcPr fullCalcOnLoad="1"/>');
  });

  quickTest("keeps the count of dates from 1904", () => {
    const styles =
      '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts count="1"><font/></fonts><fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="2"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/><xf numFmtId="14" fontId="0" fillId="0" borderId="0" applyNumberFormat="1"/></cellXfs></styleSheet>';
    const parts = partsOf({
      sheets: {
        Sheet1: row(
          1,
          n("A1", 1, ' s="1"'),
          n("B1", 1),
          n("C1", 2, ' s="1"'),
          f("D1", "A1+1", "2", ' s="1"'),
        ),
      },
      workbookPr: '<workbookPr date1904="1"/>',
      more: { "xl/styles.xml": styles },
    });
    parts["[Content_Types].xml"] = parts["[Content_Types].xml"].replace(
      "</Types>",
      '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/></Types>',
    );
    parts["xl/_rels/workbook.xml.rels"] = parts["xl/_rels/workbook.xml.rels"].replace(
      "</Relationships>",
      '<Relationship Id="rIdT" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>',
    );
    const file = zipped(parts);
    const opened = openWorkbook(file, gridLibrary, names);
    const { model } = opened;
    const [sheetId] = model.getters.getSheetIds();
    // 2 January 1904.
    expect(model.getters.getEvaluatedCell({ sheetId, row: 0, col: 0 }).value).toBe(1463);
    expect(model.getters.getEvaluatedCell({ sheetId, row: 0, col: 1 }).value).toBe(1);
    expect(saved(file, {}).bytes).toEqual(file);
    expect(sheetOf(saved(file, { C1: "1/5/1904", B1: "7" }).bytes)).toBe(
      row(1, n("A1", 1, ' s="1"'), n("B1", 7), n("C1", 4, ' s="1"'), f("D1", "A1+1", "2", ' s="1"')),
    );
  });

  quickTest("with values only, REAM formulas are gone and others stay", () => {
    const rows = row(1, n("A1", 3), f("B1", "_xldudf_REAM_TWICE(A1)", "6"), f("C1", "B1+1", "7"));
    expect(sheetOf(saved(small(rows), { A1: "4" }, true).bytes)).toBe(
      row(1, n("A1", 4), n("B1", 8), f("C1", "B1+1", "9")),
    );
  });

  test("any change comes back when the file is opened again", () => {
    const content = fc.oneof(
      fc.integer({ min: -999, max: 999 }).map(String),
      fc.constantFrom(
        "text",
        "'01",
        "TRUE",
        "",
        "=A1+1",
        "=REAM.TWICE(A1)",
        "=SUM(A1:B3)",
        "=REAM.DOWN(2)",
        "1.5",
        "x<&y",
      ),
    );
    const address = fc
      .tuple(fc.integer({ min: 0, max: 8 }), fc.integer({ min: 0, max: 4 }))
      .map(([line, column]) => cellAddress(line, column));
    const rows = row(1, n("A1", 1), f("B1", "A1*2", "2")) + row(4, n("C4", 5), f("D4", "SUM(C1:C9)", "5"));
    fc.assert(
      fc.property(fc.dictionary(address, content, { maxKeys: 6 }), (edits) => {
        const { bytes } = saved(small(rows), edits);
        const cells = (file: Uint8Array) => {
          const { model } = openWorkbook(file, gridLibrary, names);
          return snapshotOf(model).sheets[0].cells;
        };
        const first = cells(bytes);
        for (const [cell, typed] of Object.entries(edits))
          expect((first[cell] ?? "").replaceAll(" ", "")).toBe(typed.replaceAll(" ", ""));
        // And once more without a change.
        expect(saved(bytes, {}).bytes.length).toBe(bytes.length);
      }),
      { numRuns: runs(30, 6) },
    );
  });
});

describe("number formats, widths and heights", () => {
  async function styled() {
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet("Sheet1");
    sheet.getCell("A1").value = 2.5;
    sheet.getCell("A1").font = { name: "Consolas", size: 9, bold: true };
    sheet.getCell("A1").note = "measured";
    sheet.getColumn(3).numFmt = "0.0";
    sheet.getColumn(3).width = 20;
    sheet.getColumn(4).width = 20;
    sheet.getColumn(5).width = 20;
    sheet.getRow(2).height = 40;
    sheet.getCell("A2").value = "x";
    sheet.getCell("A9").value = 7;
    sheet.getCell("B9").value = { formula: "A9*2", result: 14 };
    book.addWorksheet("Other").getCell("A1").value = { formula: "Sheet1!A9", result: 7 };
    return new Uint8Array(await book.xlsx.writeBuffer());
  }

  const read = async (bytes: Uint8Array) => {
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(bytes as never);
    return book.worksheets[0];
  };

  quickTest("are written into the parts that say them, and what is not changed stays", async () => {
    const file = await styled();
    const { bytes } = saved(file, { A5: "5%", A6: "1/5/2024", D1: "$5" }, false, (model, sheetId) => {
      const run = (type: string, more: object) =>
        model.dispatch(type as never, { sheetId, ...more } as never);
      run("SET_FORMATTING", { target: [{ top: 0, bottom: 0, left: 0, right: 0 }], format: "0.0000" });
      run("SET_FORMATTING", { target: [{ top: 0, bottom: 11, left: 2, right: 2 }], format: "0.000" });
      run("RESIZE_COLUMNS_ROWS", { dimension: "COL", elements: [1, 3], size: 200 });
      run("RESIZE_COLUMNS_ROWS", { dimension: "ROW", elements: [1, 3, 8, 11], size: 60 });
    });
    const sheet = await read(bytes);
    expect(sheet.getCell("A1")).toMatchObject({
      value: 2.5,
      numFmt: "0.0000",
      font: { name: "Consolas", size: 9, bold: true },
      note: "measured",
    });
    expect(["A5", "A6", "D1", "C4", "C12", "A9"].map((cell) => sheet.getCell(cell).numFmt)).toEqual([
      "0%",
      "m/d/yyyy",
      "[$$]#,##0",
      "0.000",
      "0.000",
      undefined,
    ]);
    expect(sheet.getCell("A5").value).toBe(0.05);
    // As the grid's library writes 200 and 60 pixels.
    expect([2, 3, 4, 5].map((column) => sheet.getColumn(column).width)).toEqual([28.6, 20, 28.6, 20]);
    expect([2, 4, 9, 12].map((row) => sheet.getRow(row).height)).toEqual([45, 45, 45, 45]);
    expect(sheet.getCell("B9").value).toMatchObject({ formula: "A9*2", result: 14 });
    const [was, now] = [textsIn(file), textsIn(bytes)];
    expect(
      Object.keys(was)
        .filter((name) => was[name] !== now[name])
        .sort(),
    ).toEqual(["xl/styles.xml", "xl/worksheets/sheet1.xml"]);
    // And come back so.
    expect(saved(bytes, {}).bytes).toEqual(bytes);
  });

  test("any of them come back when the file is opened again", async () => {
    const file = await styled();
    const at = fc.nat({ max: 11 });
    const change = fc.oneof(
      fc.record({ column: at, size: fc.integer({ min: 30, max: 300 }) }),
      fc.record({ row: at, size: fc.integer({ min: 10, max: 90 }) }),
      fc.record({
        row: at,
        column: fc.nat({ max: 5 }),
        down: fc.nat({ max: 5 }),
        format: fc.constantFrom("0.00", "#,##0", "0.0%", "yyyy-mm-dd", "hh:mm", "[$€]0.00"),
      }),
    );
    const looks = ({ getters }: InstanceType<typeof gridLibrary.Model>) => {
      const sheetId = getters.getActiveSheetId();
      const all = Array.from({ length: 18 }, (_, i) => i);
      return {
        widths: all.map((i) => getters.getColSize(sheetId, i)),
        heights: all.map((i) => getters.getRowSize(sheetId, i)),
        formats: all.map((row) => all.map((col) => getters.getEvaluatedCell({ sheetId, row, col }).format)),
      };
    };
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        let wanted: ReturnType<typeof looks> | undefined;
        const { bytes } = saved(file, {}, false, (model, sheetId) => {
          const run = (type: string, more: object) =>
            model.dispatch(type as never, { sheetId, ...more } as never);
          for (const one of changes) {
            if ("format" in one)
              run("SET_FORMATTING", {
                target: [{ top: one.row, bottom: one.row + one.down, left: one.column, right: one.column }],
                format: one.format,
              });
            else if ("column" in one)
              run("RESIZE_COLUMNS_ROWS", { dimension: "COL", elements: [one.column], size: one.size });
            else run("RESIZE_COLUMNS_ROWS", { dimension: "ROW", elements: [one.row], size: one.size });
          }
          wanted = looks(model);
        });
        const again = looks(openWorkbook(bytes, gridLibrary, names).model);
        expect(again.formats).toEqual(wanted!.formats);
        for (const sizes of ["widths", "heights"] as const)
          again[sizes].forEach((size, i) => {
            expect(Math.abs(size - wanted![sizes][i])).toBeLessThanOrEqual(1);
          });
      }),
      { numRuns: runs(15, 5) },
    );
  });

  quickTest("a number with the format of texts is a text, and the other way round", async () => {
    const book = new ExcelJS.Workbook();
    const sheet = book.addWorksheet("Sheet1");
    sheet.getCell("A1").value = 12;
    sheet.getCell("A2").value = "12";
    sheet.getCell("A2").numFmt = "@";
    const file = new Uint8Array(await book.xlsx.writeBuffer());
    const { bytes } = saved(file, {}, false, (model, sheetId) => {
      for (const [row, format] of [
        [0, "@"],
        [1, "0.0"],
      ] as const)
        model.dispatch("SET_FORMATTING", {
          sheetId,
          target: [{ top: row, bottom: row, left: 0, right: 0 }],
          format,
        } as never);
    });
    const again = await read(bytes);
    expect([1, 2].map((row) => [again.getCell(row, 1).value, again.getCell(row, 1).numFmt])).toEqual([
      ["12", "@"],
      [12, "0.0"],
    ]);
  });

  quickTest("a format that programs may read otherwise asks for the whole sheet", async () => {
    const opened = openWorkbook(await styled(), gridLibrary, names);
    const { model } = opened;
    const before = snapshotOf(model);
    const target = [{ top: 0, bottom: 0, left: 0, right: 0 }];
    const sheetId = model.getters.getActiveSheetId();
    model.dispatch("SET_FORMATTING", { sheetId, target, format: "hhhh:mm:ss" } as never);
    expect(changesSince(before, snapshotOf(model))!.rewritten).toEqual([0]);
  });
});

describe("a sheet that is new", () => {
  /** A file with styles, a macro and a comment, into which a sheet is put as a paper is. */
  async function withPaper(make: (workbook: GridWorkbook) => Promise<unknown>, own = book()) {
    const file = new Uint8Array(await (await own).xlsx.writeBuffer());
    const opened = openWorkbook(file, gridLibrary, names);
    const { model } = opened;
    const before = snapshotOf(model);
    await make(new GridWorkbook(model));
    const saving = { model, library: gridLibrary, names, functions, valuesOnly: false };
    const saved = (await saveChanges(opened, before, saving))!;
    const again = new ExcelJS.Workbook();
    await again.xlsx.load(saved.bytes as never);
    return { file, opened, saved, again, model };
  }

  async function book() {
    const made = new ExcelJS.Workbook();
    const sheet = made.addWorksheet("Jobs");
    sheet.getCell("A1").value = 3;
    sheet.getCell("A1").numFmt = "0.0000";
    sheet.getCell("A1").font = { name: "Consolas", size: 9 };
    sheet.getCell("A1").note = "measured";
    sheet.getCell("B1").value = { formula: "A1*2", result: 6 };
    sheet.pageSetup.printArea = "A1:B2";
    return made;
  }

  const paper = (workbook: GridWorkbook) =>
    workbook.addSheet({
      name: "Quote & more",
      top: [["For", "a <customer>"]],
      columns: [
        { header: "Size", width: 12, format: "0.00", first: "=Jobs!B1+1", each: undefined },
        { header: "Twice", width: 20, first: "=REAM.TWICE(A3)" },
      ],
      rows: 1,
    } as never);

  quickTest("is put behind the others, with its styles and values, and every other part stays", async () => {
    const { file, saved, again } = await withPaper(paper);
    const [was, now] = [textsIn(file), textsIn(saved.bytes)];
    const changed = Object.keys(was).filter((name) => was[name] !== now[name]);
    expect(changed.sort()).toEqual([
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/styles.xml",
      "xl/workbook.xml",
    ]);
    expect(again.worksheets.map(({ name }) => name)).toEqual(["Jobs", "Quote & more"]);
    const [jobs, quote] = again.worksheets;
    expect(jobs.getCell("A1")).toMatchObject({ value: 3, numFmt: "0.0000" });
    expect(jobs.getCell("A1").font).toMatchObject({ name: "Consolas", size: 9 });
    expect(quote.getCell("B1").value).toBe("a <customer>");
    expect(quote.getCell("A3")).toMatchObject({ numFmt: "0.00", value: { formula: "Jobs!B1+1", result: 7 } });
    expect(quote.getCell("A2").font.bold).toBe(true);
    expect(quote.getCell("A2").fill).toMatchObject({ fgColor: { argb: "FFDCEBF2" } });
    // Computed by the engine that fills files.
    expect(quote.getCell("B3")).toMatchObject({ value: { result: 14 } });
    expect(saved.places).toEqual([0, 1]);
    expect(saved.report.sheets.map(({ sheet }) => sheet)).toEqual(["Jobs", "Quote & more"]);
  });

  quickTest("is saved once more with what was typed into it", async () => {
    const { opened, saved, model } = await withPaper(paper);
    const file = openPackage(saved.bytes);
    const now = { ...opened, file, parts: readWorkbookParts(file), places: saved.places };
    const before = snapshotOf(model);
    const sheetId = model.getters.getSheetIds()[1];
    model.dispatch("UPDATE_CELL", { sheetId, row: 4, col: 0, content: "=Jobs!A1*100" } as never);
    const changes = changesSince(before, snapshotOf(model))!;
    expect(changes).toMatchObject({ rewritten: [], added: [] });
    const cells = new TypedCells(model, gridLibrary, names, false);
    const { bytes } = saveIntoFile(now, changes, cells, functions, false)!;
    const again = new ExcelJS.Workbook();
    await again.xlsx.load(bytes as never);
    expect(again.worksheets[1].getCell("A5").value).toMatchObject({ formula: "Jobs!A1*100", result: 300 });
    expect(again.worksheets[1].getCell("A3").value).toMatchObject({ result: 7 });
  });

  quickTest("may come with another", async () => {
    const { again } = await withPaper(async (workbook) => {
      await paper(workbook);
      await paper(workbook);
    });
    expect(again.worksheets.map(({ name }) => name)).toEqual(["Jobs", "Quote & more", "Quote & more 2"]);
    expect(again.worksheets[2].getCell("A3").value).toMatchObject({ result: 7 });
  });

  quickTest("is not put into styles that are written under a prefix", async () => {
    const parts = textsIn(new Uint8Array(await (await book()).xlsx.writeBuffer()));
    parts["xl/styles.xml"] = parts["xl/styles.xml"]
      .replaceAll(/<(\/?)(?=[a-z])/gi, "<$1x:")
      .replace(" xmlns=", " xmlns:x=");
    const file = openPackage(zipped(parts));
    const from = { ...file, picture: () => undefined };
    expect(putSheets(file, { sheets: [], styles: parts["xl/styles.xml"], from })).toBeUndefined();
  });
});

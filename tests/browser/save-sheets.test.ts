// tests: sheets moved, deleted, added and copied in the browser workbook, and names of ranges, saved into the file that
// was opened: what they are is worked out here from a list of sheets, and read back by another library.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readBook } from "../support/exceljs.ts";
import { partsOf, partsThatDiffer, smallWorkbook, textsIn, zipped } from "../support/package.ts";
import { quickTest, runs } from "../support/share.ts";
import { type Grid, savedAfter } from "./saving.ts";

const number = (cell: string, value: number) => `<c r="${cell}"><v>${value}</v></c>`;
const formula = (cell: string, text: string, value: number | string) =>
  `<c r="${cell}"><f>${text}</f><v>${value}</v></c>`;

/** Each sheet has a number of its own, and the sum of the one before it and of itself. */
const NAMES = ["Jobs", "Rates", "Old quote", "Notes"];
const file = (more: Parameters<typeof smallWorkbook>[0]["more"] = {}, definedNames = "") =>
  smallWorkbook({
    sheets: Object.fromEntries(
      NAMES.map((name, i) => {
        const before = i === 0 ? "" : `'${NAMES[i - 1]}'!A1+`;
        const sum = (i === 0 ? 0 : 10 ** (i - 1)) + 10 ** i;
        return [name, `<row r="1">${number("A1", 10 ** i)}${formula("B1", `${before}A1`, sum)}</row>`];
      }),
    ),
    definedNames,
    more,
  });

const move = (grid: Grid, sheet: number, delta: number) => grid.run("MOVE_SHEET", { delta }, sheet);
const create = (grid: Grid, name: string, position: number) =>
  grid.run("CREATE_SHEET", { sheetId: `id of ${name}`, name, position, rows: 20, cols: 8 });

describe("sheets in another order", () => {
  const names = [
    `<definedName name="Rate">Rates!$A$1</definedName>`,
    `<definedName name="_xlnm.Print_Area" localSheetId="2">'Old quote'!$A$1:$B$1</definedName>`,
  ].join("");

  quickTest("are so in the list of sheets, and no other part is touched", async () => {
    const before = file({}, names);
    const saved = await savedAfter(before, (grid) => move(grid, 2, -2));
    expect(partsThatDiffer(before, saved!.bytes)).toEqual(["xl/workbook.xml"]);
    expect(saved!.losses).toEqual([]);
    expect(saved!.places).toEqual([0, 1, 2, 3]);
    const book = await readBook(saved!.bytes);
    expect(book.worksheets.map(({ name }) => name)).toEqual(["Old quote", "Jobs", "Rates", "Notes"]);
    const list = textsIn(saved!.bytes)["xl/workbook.xml"];
    expect(list).toContain(`<definedName name="_xlnm.Print_Area" localSheetId="0">`);
    expect(list).toContain('<sheet name="Old quote" sheetId="3" r:id="rId3"/>');
    expect(book.worksheets[0].getCell("B1").value).toMatchObject({ formula: "'Rates'!A1+A1", result: 110 });
  });

  quickTest("keep in sight the one that was, and its neighbor once it is gone", async () => {
    const shown = file();
    const parts = textsIn(shown);
    const view = (tab: number) =>
      smallWorkbook({
        sheets: { A: "", B: "", C: "" },
        more: {
          "xl/workbook.xml": parts["xl/workbook.xml"]
            .replace(
              /<sheets>.*<\/sheets>/,
              (list) => `<bookViews><workbookView activeTab="${tab}"/></bookViews>${list}`,
            )
            .replace('name="Jobs"', 'name="A"')
            .replace('name="Rates"', 'name="B"')
            .replace('name="Old quote"', 'name="C"')
            .replace(/<sheet name="Notes"[^>]*>/, ""),
        },
      });
    const tab = (bytes: Uint8Array) => /activeTab="(\d)"/.exec(textsIn(bytes)["xl/workbook.xml"])![1];
    expect(tab((await savedAfter(view(2), (grid) => move(grid, 2, -2)))!.bytes)).toBe("0");
    expect(tab((await savedAfter(view(0), (grid) => move(grid, 2, -2)))!.bytes)).toBe("1");
    expect(tab((await savedAfter(view(2), (grid) => grid.run("DELETE_SHEET", {}, 0)))!.bytes)).toBe("1");
    expect(tab((await savedAfter(view(1), (grid) => grid.run("DELETE_SHEET", {}, 1)))!.bytes)).toBe("1");
    expect(tab((await savedAfter(view(2), (grid) => grid.run("DELETE_SHEET", {}, 2)))!.bytes)).toBe("0");
  });

  quickTest("are not moved within a sum over sheets", async () => {
    const spans = smallWorkbook({
      sheets: {
        First: `<row r="1">${number("A1", 1)}</row>`,
        Sum: `<row r="1">${formula("A1", "SUM(First:Last!B1)", 0)}</row>`,
        Last: "",
        Far: "",
      },
    });
    expect(await savedAfter(spans, (grid) => move(grid, 3, -2))).toBeUndefined();
    expect(await savedAfter(spans, (grid) => grid.type(0, 1, "5", 3))).toBeDefined();
  });
});

describe("a sheet that is deleted", () => {
  quickTest(
    "is gone with its parts; formulas that read it say so, as does what depends on them",
    async () => {
      const before = file(
        {},
        `<definedName name="Rate">Rates!$A$1</definedName><definedName name="Own" localSheetId="1">5</definedName><definedName name="Note" localSheetId="3">Notes!$A$1</definedName>`,
      );
      const saved = await savedAfter(before, (grid) => grid.run("DELETE_SHEET", {}, 1));
      expect(partsThatDiffer(before, saved!.bytes)).toEqual([
        "[Content_Types].xml",
        "xl/_rels/workbook.xml.rels",
        "xl/workbook.xml",
        "xl/worksheets/sheet2.xml",
        "xl/worksheets/sheet3.xml",
      ]);
      const now = textsIn(saved!.bytes);
      expect(now["xl/worksheets/sheet2.xml"]).toBeUndefined();
      expect(now["[Content_Types].xml"]).not.toContain("sheet2.xml");
      expect(now["xl/workbook.xml"]).toContain(
        '<definedNames><definedName name="Rate">#REF!</definedName><definedName name="Note" localSheetId="2">Notes!$A$1</definedName></definedNames>',
      );
      const book = await readBook(saved!.bytes);
      expect(book.worksheets.map(({ name }) => name)).toEqual(["Jobs", "Old quote", "Notes"]);
      expect(book.worksheets[1].getCell("B1").value).toEqual({
        formula: "#REF!+A1",
        result: { error: "#REF!" },
      });
      expect(book.worksheets[2].getCell("B1").value).toMatchObject({ result: 1100 });
    },
  );

  quickTest("is not taken out where formulas call one of its tables", async () => {
    const table = `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="Parts" displayName="Parts" ref="A1:A2" totalsRowShown="0"><autoFilter ref="A1:A2"/><tableColumns count="1"><tableColumn id="1" name="Size"/></tableColumns></table>`;
    const sized = (text: string) =>
      smallWorkbook({
        sheets: {
          List: `<row r="1"><c r="A1" t="str"><v>Size</v></c></row><row r="2">${number("A2", 7)}</row>`,
          Quote: `<row r="1">${formula("A1", text, 7)}</row>`,
        },
        tables: [table],
      });
    const remove = (grid: Grid) => grid.run("DELETE_SHEET", {}, 0);
    expect(await savedAfter(sized("SUM(Parts[Size])"), remove)).toBeUndefined();
    const { bytes } = (await savedAfter(sized("SUM(List!A2)"), remove))!;
    expect(Object.keys(textsIn(bytes)).filter((name) => /table|sheet1/.test(name))).toEqual([]);
  });
});

describe("a sheet that is copied", () => {
  const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
  const types = "application/vnd.openxmlformats-officedocument";
  const relation = (id: string, kind: string, target: string) =>
    `<Relationship Id="${id}" Type="${OFFICE}/${kind}" Target="${target}"/>`;
  const relations = (...all: string[]) =>
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${all.join("")}</Relationships>`;

  /** A job with a table, a note, a chart, a name of its own, formats by condition, and the settings of its printer. */
  function job(): Uint8Array {
    const rows = [
      `<row r="1"><c r="A1" t="str"><v>Size</v></c><c r="B1" t="str"><v>Twice</v></c></row>`,
      `<row r="2">${number("A2", 6)}${formula("B2", "Parts[[#This Row],[Size]]*2", 12)}</row>`,
      `<row r="3">${number("A3", 8)}${formula("B3", "'Job 1'!A3*2", 16)}</row>`,
      `<row r="5">${formula("A5", "SUM(Parts[Size])*Own+Rates!A1", 17)}</row>`,
    ];
    const parts = partsOf({
      sheets: { "Job 1": rows.join(""), Rates: `<row r="1">${number("A1", 3)}</row>` },
      definedNames: `<definedName name="Own" localSheetId="0">'Job 1'!$D$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">'Job 1'!$A$1:$B$5</definedName>`,
    });
    const sheet = "xl/worksheets/sheet1.xml";
    const around = `<conditionalFormatting sqref="A2"><cfRule type="expression" priority="1"><formula>'Job 1'!$A$2&gt;Rates!$A$1</formula></cfRule></conditionalFormatting><pageSetup orientation="landscape" r:id="rId4"/><drawing r:id="rId1"/><legacyDrawing r:id="rId2"/><tableParts count="1"><tablePart r:id="rId5"/></tableParts>`;
    parts[sheet] = parts[sheet]
      .replace(
        "<sheetData>",
        `<sheetPr codeName="Job"/><sheetViews><sheetView tabSelected="1" workbookViewId="0"/></sheetViews><sheetData>`,
      )
      .replace("</worksheet>", `${around}</worksheet>`);
    parts["xl/worksheets/_rels/sheet1.xml.rels"] = relations(
      relation("rId1", "drawing", "../drawings/drawing1.xml"),
      relation("rId2", "vmlDrawing", "../drawings/vmlDrawing1.vml"),
      relation("rId3", "comments", "../comments1.xml"),
      relation("rId4", "printerSettings", "../printerSettings/printerSettings1.bin"),
      relation("rId5", "table", "../tables/table1.xml"),
      '<Relationship Id="rId6" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/hyperlink" Target="https://example.com/a%20b" TargetMode="External"/>',
    );
    parts["xl/drawings/drawing1.xml"] =
      `<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing"/>`;
    parts["xl/drawings/_rels/drawing1.xml.rels"] = relations(
      relation("rId1", "chart", "../charts/chart1.xml"),
      relation("rId2", "image", "../media/image1.png"),
    );
    parts["xl/charts/chart1.xml"] =
      `<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:f>'Job 1'!$A$2:$A$3</c:f><c:f>Rates!$A$1</c:f></c:chartSpace>`;
    parts["xl/media/image1.png"] = "no picture";
    parts["xl/drawings/vmlDrawing1.vml"] = "<xml/>";
    parts["xl/printerSettings/printerSettings1.bin"] = "settings";
    parts["xl/comments1.xml"] =
      `<comments xmlns="${MAIN}"><authors><author/></authors><commentList><comment ref="A2" authorId="0"><text><t>measured</t></text></comment></commentList></comments>`;
    parts["xl/tables/table1.xml"] =
      `<table xmlns="${MAIN}" id="1" name="Parts" displayName="Parts" ref="A1:B3" totalsRowShown="0"><autoFilter ref="A1:B3"/><tableColumns count="2"><tableColumn id="1" name="Size"/><tableColumn id="2" name="Twice"><calculatedColumnFormula>Parts[[#This Row],[Size]]*2</calculatedColumnFormula></tableColumn></tableColumns></table>`;
    const override = (part: string, type: string) =>
      `<Override PartName="/xl/${part}" ContentType="${types}.${type}+xml"/>`;
    parts["[Content_Types].xml"] = parts["[Content_Types].xml"].replace(
      "</Types>",
      `<Default Extension="vml" ContentType="${types}.vmlDrawing"/><Default Extension="png" ContentType="image/png"/><Default Extension="bin" ContentType="${types}.spreadsheetml.printerSettings"/>${override("drawings/drawing1.xml", "drawing")}${override("charts/chart1.xml", "drawingml.chart")}${override("comments1.xml", "spreadsheetml.comments")}${override("tables/table1.xml", "spreadsheetml.table")}</Types>`,
    );
    return zipped(parts);
  }

  const copy = (grid: Grid, name = "Job 2") =>
    grid.run("DUPLICATE_SHEET", { sheetIdTo: "the copy", sheetNameTo: name }, 0);

  quickTest(
    "is copied with all that hangs on it: charts, formats, names and tables are for its own cells",
    async () => {
      const before = job();
      const saved = await savedAfter(before, (grid) => copy(grid));
      expect(saved!.losses).toEqual([]);
      expect(saved!.added).toBe(1);
      expect(saved!.places).toEqual([0, 1, 2]);
      const now = textsIn(saved!.bytes);
      const made = partsThatDiffer(before, saved!.bytes);
      expect(made).toEqual([
        "[Content_Types].xml",
        "xl/_rels/workbook.xml.rels",
        "xl/charts/chart2.xml",
        "xl/comments2.xml",
        "xl/drawings/_rels/drawing2.xml.rels",
        "xl/drawings/drawing2.xml",
        "xl/drawings/vmlDrawing2.vml",
        "xl/tables/table2.xml",
        "xl/workbook.xml",
        "xl/worksheets/_rels/sheet3.xml.rels",
        "xl/worksheets/sheet3.xml",
      ]);
      const sheet = now["xl/worksheets/sheet3.xml"];
      expect(sheet).toContain("<f>Parts2[[#This Row],[Size]]*2</f><v>12</v>");
      expect(sheet).toContain("<f>'Job 1'!A3*2</f>");
      expect(sheet).toContain("<f>SUM(Parts2[Size])*Own+Rates!A1</f>");
      expect(sheet).toContain("<formula>'Job 2'!$A$2&gt;Rates!$A$1</formula>");
      expect(sheet).not.toMatch(/tabSelected|codeName|rId4/);
      expect(now["xl/charts/chart2.xml"]).toContain("<c:f>'Job 2'!$A$2:$A$3</c:f><c:f>Rates!$A$1</c:f>");
      expect(now["xl/tables/table2.xml"]).toContain('id="2" name="Parts2" displayName="Parts2"');
      expect(now["xl/tables/table2.xml"]).toContain("<calculatedColumnFormula>Parts2[[#This Row],[Size]]*2<");
      expect(now["xl/comments2.xml"]).toBe(now["xl/comments1.xml"]);
      expect(now["xl/worksheets/_rels/sheet3.xml.rels"]).not.toContain("printerSettings");
      expect(now["xl/worksheets/_rels/sheet3.xml.rels"]).toContain('Target="https://example.com/a%20b"');
      expect(now["xl/drawings/_rels/drawing2.xml.rels"]).toContain('Target="../media/image1.png"');
      expect(now["[Content_Types].xml"].match(/\.spreadsheetml\.table\+xml/g)).toHaveLength(2);
      const list = now["xl/workbook.xml"];
      expect(list.indexOf('name="Job 2"')).toBeLessThan(list.indexOf('name="Rates"'));
      expect(list).toContain(`<definedName name="Own" localSheetId="1">'Job 2'!$D$1</definedName>`);
      expect(list).toContain(
        `<definedName name="_xlnm.Print_Area" localSheetId="1">'Job 2'!$A$1:$B$5</definedName>`,
      );
      expect(list).toContain(`<definedName name="Own" localSheetId="0">'Job 1'!$D$1</definedName>`);
    },
  );

  quickTest("has the changes of both, whenever they were made", async () => {
    const saved = await savedAfter(file(), (grid) => {
      grid.type(0, 0, "7");
      copy(grid, "Copied");
      grid.type(0, 0, "9", 1);
      grid.rename("Second", 1);
      grid.run("DUPLICATE_SHEET", { sheetIdTo: "again", sheetNameTo: "Third" }, 1);
      grid.type(0, 2, "=Second!A1+A1", 2);
    });
    const book = await readBook(saved!.bytes);
    expect(book.worksheets.map(({ name }) => name)).toEqual(["Jobs", "Second", "Third", ...NAMES.slice(1)]);
    const values = book.worksheets
      .slice(0, 3)
      .map((sheet) => [sheet.getCell("A1").value, sheet.getCell("B1").result]);
    expect(values).toEqual([
      [7, 7],
      [9, 9],
      [9, 9],
    ]);
    expect(book.worksheets[2].getCell("C1").result).toBe(18);
    expect(book.worksheets[3].getCell("B1").result).toBe(17);
  });

  quickTest(
    "after rows were inserted is written as a new sheet is, and what it has not is told",
    async () => {
      const saved = await savedAfter(job(), (grid) => {
        grid.insert("ROW", 1);
        copy(grid);
      });
      expect(saved!.losses).toContain("Comments and notes");
      const book = await readBook(saved!.bytes);
      expect(book.worksheets.map(({ name }) => name)).toEqual(["Job 1", "Job 2", "Rates"]);
      expect(book.worksheets[1].getCell("A3").value).toBe(6);
    },
  );
});

describe("names of ranges", () => {
  const name = (text: string, range: string) => `<definedName name="${text}">${range}</definedName>`;
  quickTest(
    "that are new, other and gone are so in the file, and what calls them is computed anew",
    async () => {
      const before = smallWorkbook({
        sheets: {
          Jobs: `<row r="1">${number("A1", 3)}${formula("B1", "Rate*2", 8)}${formula("C1", "Gone*2", 10)}<c r="D1" t="e"><f>New+1</f><v>#NAME?</v></c></row>`,
          Rates: `<row r="1">${number("A1", 4)}${number("B1", 5)}</row>`,
        },
        definedNames: `${name("Rate", "Rates!$A$1")}${name("Fixed", "0.25")}${name("Gone", "Rates!$B$1")}`,
      });
      const saved = await savedAfter(before, (grid) => {
        const [jobs, rates] = grid.model.getters.getSheetIds();
        const ranges = (sheetId: string, row: number, col: number) => [
          { _sheetId: sheetId, _zone: { top: row, bottom: row, left: col, right: col } },
        ];
        grid.run("UPDATE_NAMED_RANGE", {
          oldRangeName: "Rate",
          newRangeName: "Rate",
          ranges: ranges(jobs, 0, 0),
        });
        grid.run("CREATE_NAMED_RANGE", { name: "New", ranges: ranges(rates, 0, 1) });
        grid.run("DELETE_NAMED_RANGE", { name: "Gone" });
      });
      expect(partsThatDiffer(before, saved!.bytes)).toEqual(["xl/workbook.xml", "xl/worksheets/sheet1.xml"]);
      expect(textsIn(saved!.bytes)["xl/workbook.xml"]).toContain(
        `<definedNames>${name("Rate", "Jobs!$A$1")}${name("Fixed", "0.25")}${name("New", "Rates!$B$1")}</definedNames>`,
      );
      const cell = (address: string) =>
        saved && readBook(saved.bytes).then((book) => book.worksheets[0].getCell(address).result);
      expect(await cell("B1")).toBe(6);
      expect(await cell("D1")).toBe(6);
      // What nothing here knows keeps its value, is counted, and Excel is asked for it.
      expect(saved!.report.sheets.map(({ kept }) => kept)).toEqual([1, 0]);
      expect(textsIn(saved!.bytes)["xl/workbook.xml"]).toContain('<calcPr fullCalcOnLoad="1"/>');
    },
  );

  quickTest("that others call do not go", async () => {
    const before = file({}, name("Rate", "Rates!$A$1") + name("Double", "Rate*2"));
    const remove = (grid: Grid) => grid.run("DELETE_NAMED_RANGE", { name: "Rate" });
    expect(await savedAfter(before, remove)).toBeUndefined();
  });
});

describe("any of these, one after the other", () => {
  interface Sheet {
    name: string;
    value: number;
    /** The sheet that its formula reads. */
    reads: string | "gone" | undefined;
  }
  const step = fc.oneof(
    fc.record({ kind: fc.constant("move" as const), at: fc.nat(5), to: fc.nat(5) }),
    fc.record({ kind: fc.constant("remove" as const), at: fc.nat(5) }),
    fc.record({ kind: fc.constant("create" as const), at: fc.nat(5) }),
    fc.record({ kind: fc.constant("rename" as const), at: fc.nat(5) }),
    fc.record({ kind: fc.constant("copy" as const), at: fc.nat(5) }),
    fc.record({ kind: fc.constant("type" as const), at: fc.nat(5), value: fc.integer({ min: 1, max: 99 }) }),
    fc.record({ kind: fc.constant("insert" as const), at: fc.nat(5) }),
  );

  test("gives the sheets, their numbers and the sums that they should have", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 6 }), async (steps) => {
        const sheets: (Sheet & { row: number })[] = NAMES.map((name, i) => ({
          name,
          value: 10 ** i,
          reads: NAMES[i - 1],
          row: 0,
        }));
        let count = 0;
        const saved = await savedAfter(file(), (grid) => {
          for (const one of steps) {
            const at = one.at % sheets.length;
            const sheet = sheets[at];
            if (one.kind === "move") {
              const to = one.to % sheets.length;
              if (to === at) continue;
              move(grid, at, to - at);
              sheets.splice(to, 0, ...sheets.splice(at, 1));
            }
            if (one.kind === "remove" && sheets.length > 1) {
              grid.run("DELETE_SHEET", {}, at);
              sheets.splice(at, 1);
              for (const other of sheets) if (other.reads === sheet.name) other.reads = "gone";
            }
            if (one.kind === "create") {
              const name = `New ${++count}`;
              create(grid, name, at);
              grid.type(0, 0, String(count), at);
              grid.type(0, 1, `='${sheet.name}'!A${sheet.row + 1}+A1`, at);
              sheets.splice(at, 0, { name, value: count, reads: sheet.name, row: 0 });
            }
            if (one.kind === "copy") {
              const name = `Copy ${++count}`;
              grid.run("DUPLICATE_SHEET", { sheetIdTo: `id of ${name}`, sheetNameTo: name }, at);
              sheets.splice(at + 1, 0, { ...sheet, name });
            }
            if (one.kind === "rename") {
              const name = `Named ${++count}`;
              grid.rename(name, at);
              for (const other of sheets) if (other.reads === sheet.name) other.reads = name;
              sheet.name = name;
            }
            if (one.kind === "type") {
              grid.type(sheet.row, 0, String(one.value), at);
              sheet.value = one.value;
            }
            if (one.kind === "insert") {
              grid.insert("ROW", 0, 1, at);
              sheet.row++;
            }
          }
        });
        const book = await readBook(saved!.bytes);
        expect(book.worksheets.map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
        sheets.forEach(({ value, reads, row }, i) => {
          const own = book.worksheets[i];
          expect(own.getCell(row + 1, 1).value).toBe(value);
          const other = sheets.find(({ name }) => name === reads);
          const sum = reads === "gone" ? { error: "#REF!" } : value + (other?.value ?? 0);
          expect(own.getCell(row + 1, 2).result).toEqual(sum);
        });
      }),
      { numRuns: runs(60, 20) },
    );
  });
});

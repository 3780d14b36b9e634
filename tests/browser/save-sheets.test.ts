// tests: sheets moved, deleted, added and copied in the browser workbook, and names of ranges, saved into the file that
// was opened: what they are is worked out here from a list of sheets, and read back by another library.

import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { smallWorkbook, textsIn } from "../support/package.ts";
import { quickTest, runs } from "../support/share.ts";
import { type Grid, savedAfter } from "./saving.ts";

const read = async (bytes: Uint8Array) => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes as never);
  return book;
};

const partsThatDiffer = (before: Uint8Array, after: Uint8Array) => {
  const [was, now] = [textsIn(before), textsIn(after)];
  return Object.keys({ ...was, ...now })
    .filter((name) => was[name] !== now[name])
    .sort();
};

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
    const book = await read(saved!.bytes);
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
      const book = await read(saved!.bytes);
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
        saved && read(saved.bytes).then((book) => book.worksheets[0].getCell(address).result);
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
        const book = await read(saved!.bytes);
        expect(book.worksheets.map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
        sheets.forEach(({ value, reads, row }, i) => {
          const own = book.worksheets[i];
          expect(own.getCell(row + 1, 1).value).toBe(value);
          const other = sheets.find(({ name }) => name === reads);
          const sum = reads === "gone" ? { error: "#REF!" } : value + (other?.value ?? 0);
          expect(own.getCell(row + 1, 2).result).toEqual(sum);
        });
      }),
      { numRuns: runs(60, 12) },
    );
  });
});

// tests: rows and columns inserted and taken out in the browser workbook, and sheets that get other names, saved into
// the file that was opened: what names a cell follows it, and every other part stays. Where references go is worked out
// here from the rows and columns themselves, not from their numbers.

import ExcelJS from "exceljs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columnName } from "../../src/workbook/xlsx/addresses.ts";
import { structureSteps } from "../../src/workbook/xlsx-grid/structure.ts";
import { readBook } from "../support/exceljs.ts";
import { partsThatDiffer, smallWorkbook, textsIn } from "../support/package.ts";
import { longTest, quickTest, runs } from "../support/share.ts";
import { gridLibrary } from "../workbook/xlsx-grid/grid-library.ts";
import { savedAfter } from "./saving.ts";

const ROWS = 8;
const COLUMNS = 6;
/** Numbers stand in the first columns, formulas behind them. */
const NUMBERS = 3;

/** A cell or a range of the first sheet, by the rows and columns that it had at first. */
interface Reference {
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
  readonly isRange: boolean;
}

/** Rows or columns in their order, each by a number of its own: from NEW on those that were not there at first. */
type Order = readonly number[];
const NEW = 1000;

/** The rows or columns of each reference: those from its first to its last, and what was inserted between two of them. */
type Members = readonly ReadonlySet<number>[];

function run(members: ReadonlySet<number>, order: Order): readonly [number, number] | undefined {
  const left = order.flatMap((line, at) => (members.has(line) ? [at] : []));
  return left.length === 0 ? undefined : [left[0], left[left.length - 1]];
}

const lines = ([first, last]: readonly [number, number]) =>
  new Set(Array.from({ length: last - first + 1 }, (_, i) => first + i));

/** Rows or columns as the steps leave them. */
class Lines {
  order: Order;
  members: Members;
  private next = NEW;

  constructor(count: number, spans: readonly (readonly [number, number])[]) {
    this.order = [...lines([0, count - 1])];
    this.members = spans.map(lines);
  }

  insert(at: number, count: number): void {
    const added = Array.from({ length: count }, () => this.next++);
    const [before, behind] = [this.order[at - 1], this.order[at]];
    this.members = this.members.map((own) =>
      own.has(before) && own.has(behind) ? new Set([...own, ...added]) : own,
    );
    this.order = this.order.toSpliced(at, 0, ...added);
  }

  remove(at: number, count: number): void {
    this.order = this.order.toSpliced(at, count);
  }
}

interface Place {
  readonly down: readonly [number, number] | undefined;
  readonly across: readonly [number, number] | undefined;
}

function textOf({ isRange }: Reference, { down, across }: Place, sheet: string): string {
  const cell = (column: number, row: number) => `${columnName(column)}${row + 1}`;
  const area =
    !down || !across
      ? "#REF!"
      : isRange
        ? `${cell(across[0], down[0])}:${cell(across[1], down[1])}`
        : cell(across[0], down[0]);
  const whole = area === "#REF!" ? area : sheet + area;
  return isRange ? `SUM(${whole})` : `${whole}*1`;
}

const numberAt = (row: number, column: number) => row * 10 + column + 1;

function sumOf({ down, across }: Place, rowOrder: Order, columnOrder: Order) {
  if (!down || !across) return { error: "#REF!" };
  let sum = 0;
  for (const row of rowOrder.slice(down[0], down[1] + 1))
    for (const column of columnOrder.slice(across[0], across[1] + 1))
      if (row < NEW && column < NEW) sum += numberAt(row, column);
  return sum;
}

const span = (count: number) =>
  fc
    .tuple(fc.nat({ max: count - 1 }), fc.nat({ max: count - 1 }))
    .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
const reference = fc
  .record({ rows: span(ROWS), columns: span(NUMBERS), isRange: fc.boolean() })
  .map(
    (one): Reference =>
      one.isRange
        ? one
        : { rows: [one.rows[0], one.rows[0]], columns: [one.columns[0], one.columns[0]], isRange: false },
  );
const step = fc.record({
  dimension: fc.constantFrom("ROW" as const, "COL" as const),
  isInsert: fc.boolean(),
  at: fc.nat({ max: 9 }),
  count: fc.integer({ min: 1, max: 3 }),
});

const allRows = [...lines([0, ROWS - 1])];
const allColumns = [...lines([0, COLUMNS - 1])];

/** The formulas stand behind the numbers, one to a row, and once more on another sheet. */
function fileWith(references: readonly Reference[]): Uint8Array {
  const shown = (value: ReturnType<typeof sumOf>) =>
    typeof value === "object" ? value.error : String(value);
  const placeOf = ({ rows, columns }: Reference): Place => ({ down: rows, across: columns });
  const cellOf = (address: string, sheet: string, one: Reference) =>
    `<c r="${address}"><f>${textOf(one, placeOf(one), sheet)}</f><v>${shown(sumOf(placeOf(one), allRows, allColumns))}</v></c>`;
  const rows = allRows.map((row) => {
    const numbers = Array.from(
      { length: NUMBERS },
      (_, column) => `<c r="${columnName(column)}${row + 1}"><v>${numberAt(row, column)}</v></c>`,
    );
    const own = references[row] ? cellOf(`E${row + 1}`, "", references[row]) : "";
    return `<row r="${row + 1}">${numbers.join("")}${own}</row>`;
  });
  const others = references.map((one, i) => `<row r="${i + 1}">${cellOf(`B${i + 1}`, "Jobs!", one)}</row>`);
  const third = '<row r="1"><c r="A1"><v>7</v></c><c r="B1"><f>A1*2</f><v>14</v></c></row>';
  return smallWorkbook({ sheets: { Jobs: rows.join(""), Other: others.join(""), Third: third } });
}

describe("rows and columns inserted and taken out", () => {
  test("formulas follow, on their sheet and on others, and have their values; other parts stay", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(reference, { minLength: 2, maxLength: ROWS }),
        fc.array(step, { minLength: 1, maxLength: 4 }),
        async (references, steps) => {
          const file = fileWith(references);
          const down = new Lines(
            ROWS,
            references.map(({ rows }) => rows),
          );
          const across = new Lines(
            COLUMNS,
            references.map(({ columns }) => columns),
          );
          const saved = await savedAfter(file, (grid) => {
            for (const { dimension, isInsert, at, count } of steps) {
              const own = dimension === "ROW" ? down : across;
              const place = Math.min(at, own.order.length - 1);
              if (isInsert) {
                grid.insert(dimension, place, count);
                own.insert(place, count);
                continue;
              }
              const gone = Math.min(count, own.order.length - place);
              if (gone >= own.order.length) continue;
              grid.remove(dimension, [...lines([place, place + gone - 1])]);
              own.remove(place, gone);
            }
          });
          const [was, now] = [textsIn(file), textsIn(saved!.bytes)];
          expect(now["xl/worksheets/sheet3.xml"]).toBe(was["xl/worksheets/sheet3.xml"]);
          const book = await readBook(saved!.bytes);
          const [jobs, other] = book.worksheets;
          const check = (cell: ExcelJS.Cell, i: number, sheet: string) => {
            const place = {
              down: run(down.members[i], down.order),
              across: run(across.members[i], across.order),
            };
            const text = textOf(references[i], place, sheet);
            const value = sumOf(place, down.order, across.order);
            expect({ text: cell.formula, value: cell.result ?? 0 }).toEqual({ text, value });
          };
          references.forEach((_, i) => {
            check(other.getCell(i + 1, 2), i, "Jobs!");
            const [row, column] = [down.order.indexOf(i), across.order.indexOf(4)];
            if (row >= 0 && column >= 0) check(jobs.getCell(row + 1, column + 1), i, "");
          });
          down.order.forEach((row, at) => {
            across.order.forEach((column, beside) => {
              if (column >= NUMBERS && column < NEW) return;
              const wanted = row >= NEW || column >= NEW ? null : numberAt(row, column);
              expect(jobs.getCell(at + 1, beside + 1).value).toBe(wanted);
            });
          });
        },
      ),
      { numRuns: runs(40, 20) },
    );
  });
});

const PIXEL =
  "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

/** A sheet with something of every kind at row 6 and in column C, and another that reads it. */
async function fullFile(): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Jobs", { views: [{ state: "frozen", xSplit: 0, ySplit: 2 }] });
  for (let row = 1; row <= 12; row++) sheet.getCell(row, 3).value = row;
  for (const row of [6, 7]) sheet.getCell(row, 4).value = { formula: `C${row}*2`, result: row * 2 };
  sheet.getCell("C6").font = { name: "Consolas", size: 9, bold: true };
  sheet.getCell("C6").note = "measured";
  sheet.getRow(6).height = 33;
  sheet.getColumn(3).width = 21;
  sheet.mergeCells("E6:F7");
  sheet.getCell("G6").value = { text: "a page", hyperlink: "https://example.com/page" };
  sheet.getCell("H6").dataValidation = { type: "list", allowBlank: true, formulae: ["$C$6:$C$9"] };
  sheet.addConditionalFormatting({
    ref: "C6:C9",
    rules: [
      {
        type: "expression",
        formulae: ["$C6>$C$8"],
        priority: 1,
        style: { fill: { type: "pattern", pattern: "solid", bgColor: { argb: "FFFF0000" } } },
      },
    ],
  });
  sheet.addTable({
    name: "Prices",
    ref: "J6",
    headerRow: true,
    columns: [{ name: "Hole", filterButton: true }, { name: "Price" }],
    rows: [
      ["a", 1],
      ["b", 2],
    ],
  });
  sheet.autoFilter = "C5:D12";
  sheet.pageSetup.printArea = "A1:D12";
  sheet.pageSetup.orientation = "landscape";
  sheet.headerFooter.oddFooter = "&LOffer 12";
  sheet.addImage(book.addImage({ base64: PIXEL, extension: "png" }), "M6:N8");
  book.definedNames.add("Jobs!$C$6:$C$9", "Sizes");
  const other = book.addWorksheet("Other");
  other.getCell("A1").value = { formula: "SUM(Sizes)+Jobs!C6", result: 36 };
  other.getCell("A2").value = "kept";
  other.getCell("A2").note = "of the other sheet";
  return new Uint8Array(await book.xlsx.writeBuffer());
}

describe("references", () => {
  const cases = [
    ["SUM(A1:A500)", "SUM(A1:A502)"],
    ["SUM(A2:A1048576)", "SUM(A2:A1048576)"],
    ["SUM($A$1:$A$1048576)", "SUM($A$1:$A$1048576)"],
    ["SUM(A:A)", "SUM(A:A)"],
    ["SUM($3:$9)", "SUM($5:$11)"],
    ["SUM(A1:A2)", "SUM(A1:A2)"],
    ["SUM(A1:A3)", "SUM(A1:A5)"],
    ["A3", "A5"],
    ["A2", "A2"],
    ["$B$900", "$B$902"],
    ['INDIRECT("A5")&"A5"', 'INDIRECT("A5")&"A5"'],
    ["LOG10(A5)", "LOG10(A7)"],
    ["Jobs!A5+'Jobs'!A6+Other!A5", "Jobs!A7+'Jobs'!A8+Other!A5"],
    ["OFFSET(A5,1,0)", "OFFSET(A7,1,0)"],
    ["SUM(A1:INDEX(A1:A9,5))", "SUM(A1:INDEX(A1:A11,5))"],
  ];

  quickTest("are where two rows come before the third as Excel has them then", async () => {
    const cells = cases.map(
      ([formula], i) => `<c r="${columnName(2 + i)}1"><f>${formula.replaceAll("&", "&amp;")}</f><v>0</v></c>`,
    );
    const sheets = {
      Jobs: `<row r="1">${cells.join("")}</row>`,
      Other: '<row r="1"><c r="A1"><v>1</v></c></row>',
    };
    const saved = await savedAfter(smallWorkbook({ sheets }), (grid) => grid.insert("ROW", 2, 2));
    const [jobs] = (await readBook(saved!.bytes)).worksheets;
    expect(cases.map(([formula], i) => [formula, jobs.getCell(1, 3 + i).formula])).toEqual(cases);
  });
});

describe("a result that fills several cells", () => {
  /** 1, 2 and 3 below one another, and a sum of them. */
  async function filled(): Promise<Uint8Array> {
    const first = await savedAfter(
      smallWorkbook({ sheets: { Jobs: '<row r="1"><c r="A1"><v>3</v></c></row>' } }),
      (grid) => {
        grid.type(0, 1, "=REAM.DOWN(A1)");
        grid.type(0, 2, "=SUM(B1:B9)");
      },
    );
    return first!.bytes;
  }
  const column = async (bytes: Uint8Array) => {
    const [sheet] = (await readBook(bytes)).worksheets;
    return [1, 2, 3, 4, 5, 6].map((row) => sheet.getCell(row, 2).result ?? sheet.getCell(row, 2).value);
  };

  quickTest("fills them again where a row comes between, or one of them is taken out", async () => {
    const between = await savedAfter(await filled(), (grid) => grid.insert("ROW", 1, 2));
    expect(await column(between!.bytes)).toEqual([1, 2, 3, null, null, null]);
    expect(textsIn(between!.bytes)["xl/worksheets/sheet1.xml"]).toContain('ref="B1:B3"');
    const out = await savedAfter(await filled(), (grid) => grid.remove("ROW", [1]));
    expect(await column(out!.bytes)).toEqual([1, 2, 3, null, null, null]);
    expect((await readBook(out!.bytes)).worksheets[0].getCell("C1").value).toMatchObject({
      formula: "SUM(B1:B8)",
      result: 6,
    });
  });

  quickTest("moves whole, and goes with its formula", async () => {
    const moved = await savedAfter(await filled(), (grid) => grid.insert("ROW", 0, 2));
    expect(await column(moved!.bytes)).toEqual([null, null, 1, 2, 3, null]);
    expect(textsIn(moved!.bytes)["xl/worksheets/sheet1.xml"]).toContain('ref="B3:B5"');
    const gone = await savedAfter(await filled(), (grid) => grid.remove("COL", [1]));
    expect((await readBook(gone!.bytes)).worksheets[0].getCell("B1").value).toMatchObject({
      formula: "SUM(#REF!)",
    });
    const cut = await savedAfter(await filled(), (grid) => grid.remove("ROW", [0]));
    expect(await column(cut!.bytes)).toEqual([null, null, null, null, null, null]);
  });
});

describe("what hangs on cells", () => {
  quickTest("moves down with them", async () => {
    const file = await fullFile();
    const saved = await savedAfter(file, (grid) => {
      grid.insert("ROW", 3, 2);
      grid.type(3, 2, "100");
    });
    const book = await readBook(saved!.bytes);
    const [sheet, other] = book.worksheets;
    expect(sheet.getCell("C4").value).toBe(100);
    expect(sheet.getCell("C8")).toMatchObject({ value: 6, note: "measured" });
    expect(sheet.getCell("C8").font).toMatchObject({ name: "Consolas", size: 9, bold: true });
    expect([sheet.getRow(8).height, sheet.getColumn(3).width]).toEqual([33, 21]);
    expect(sheet.getCell("D9").value).toMatchObject({ formula: "C9*2", result: 14 });
    expect(sheet.getCell("F9").master.address).toBe("E8");
    expect(sheet.getCell("G8").value).toMatchObject({ hyperlink: "https://example.com/page" });
    expect(sheet.getCell("H8").dataValidation.formulae).toEqual(["$C$8:$C$11"]);
    expect((sheet as any).conditionalFormattings).toMatchObject([
      { ref: "C8:C11", rules: [{ formulae: ["$C8>$C$10"] }] },
    ]);
    expect((sheet.getTable("Prices") as any).table).toMatchObject({ tableRef: "J8:K10" });
    expect(sheet.autoFilter).toBe("C7:D14");
    expect(sheet.pageSetup).toMatchObject({ printArea: "A1:D14", orientation: "landscape" });
    expect(sheet.headerFooter.oddFooter).toBe("&LOffer 12");
    expect(sheet.getImages()[0].range).toMatchObject({ tl: { nativeRow: 7 }, br: { nativeRow: 10 } });
    expect(sheet.views[0]).toMatchObject({ state: "frozen", ySplit: 2 });
    expect(book.definedNames.getRanges("Sizes").ranges).toEqual(["Jobs!$C$8:$C$11"]);
    expect(other.getCell("A1").value).toMatchObject({ formula: "SUM(Sizes)+Jobs!C8", result: 36 });
    expect(other.getCell("A2")).toMatchObject({ value: "kept", note: "of the other sheet" });
    const changed = partsThatDiffer(file, saved!.bytes);
    expect(
      changed.filter(
        (name) => !/sheet[12]\.xml$|comments1|vmlDrawing1|drawing1|table1|workbook\.xml$/.test(name),
      ),
    ).toEqual([]);
  });

  longTest("moves up, and is gone with them", async () => {
    const saved = await savedAfter(await fullFile(), (grid) => grid.remove("ROW", [3, 6]));
    const book = await readBook(saved!.bytes);
    const [sheet, other] = book.worksheets;
    expect([4, 5, 6, 7].map((row) => sheet.getCell(row, 3).value)).toEqual([5, 6, 8, 9]);
    expect(sheet.getCell("C5").note).toBe("measured");
    expect(sheet.getCell("D5").value).toMatchObject({ formula: "C5*2", result: 12 });
    expect(sheet.getCell("D6").value).toBeNull();
    expect(sheet.getCell("F5").master.address).toBe("E5");
    expect(sheet.getCell("H5").dataValidation.formulae).toEqual(["$C$5:$C$7"]);
    expect((sheet as any).conditionalFormattings).toMatchObject([
      { ref: "C5:C7", rules: [{ formulae: ["$C5>$C$6"] }] },
    ]);
    expect((sheet.getTable("Prices") as any).table).toMatchObject({ tableRef: "J5:K6" });
    expect(sheet.getCell("J6").value).toBe("b");
    expect(book.definedNames.getRanges("Sizes").ranges).toEqual(["Jobs!$C$5:$C$7"]);
    expect(other.getCell("A1").value).toMatchObject({ formula: "SUM(Sizes)+Jobs!C5", result: 29 });
  });

  quickTest("is not written where a table would lose its header", async () => {
    expect(await savedAfter(await fullFile(), (grid) => grid.remove("ROW", [5]))).toBeUndefined();
  });

  longTest("moves to the right with them", async () => {
    const saved = await savedAfter(await fullFile(), (grid) => grid.insert("COL", 1, 1));
    const book = await readBook(saved!.bytes);
    const [sheet, other] = book.worksheets;
    expect(sheet.getCell("D6")).toMatchObject({ value: 6, note: "measured" });
    expect(sheet.getColumn(4).width).toBe(21);
    expect(sheet.getCell("E7").value).toMatchObject({ formula: "D7*2", result: 14 });
    expect(sheet.getCell("I6").dataValidation.formulae).toEqual(["$D$6:$D$9"]);
    expect((sheet as any).conditionalFormattings).toMatchObject([
      { ref: "D6:D9", rules: [{ formulae: ["$D6>$D$8"] }] },
    ]);
    expect((sheet.getTable("Prices") as any).table).toMatchObject({ tableRef: "K6:L8" });
    expect(sheet.getImages()[0].range).toMatchObject({ tl: { nativeCol: 13 } });
    expect(book.definedNames.getRanges("Sizes").ranges).toEqual(["Jobs!$D$6:$D$9"]);
    expect(other.getCell("A1").value).toMatchObject({ formula: "SUM(Sizes)+Jobs!D6", result: 36 });
  });

  quickTest("goes by the new name of its sheet", async () => {
    const file = await fullFile();
    const saved = await savedAfter(file, (grid) => {
      grid.rename("Jobs & more");
      grid.type(5, 2, "1000");
    });
    const book = await readBook(saved!.bytes);
    expect(book.worksheets.map(({ name }) => name)).toEqual(["Jobs & more", "Other"]);
    expect(book.worksheets[1].getCell("A1").value).toMatchObject({
      formula: "SUM(Sizes)+'Jobs & more'!C6",
      result: 1024 + 1000,
    });
    expect(partsThatDiffer(file, saved!.bytes)).toEqual([
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
      "xl/worksheets/sheet2.xml",
    ]);
  });

  longTest("is shown by charts, in whatever sheet they stand, and by shapes", async () => {
    const chart = (refs: string) =>
      `<c:chartSpace xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart"><c:ser>${refs}</c:ser><c:style val="7"/></c:chartSpace>`;
    const refs = (rows: string) =>
      `<c:cat><c:f>Jobs!$A$1:$A$2</c:f></c:cat><c:val><c:f>(Jobs!${rows},Other!$A$3)</c:f></c:val>`;
    const shape = (cell: string) =>
      `<xdr:wsDr xmlns:xdr="x"><xdr:sp macro="" textlink="Jobs!${cell}"><xdr:txBody/></xdr:sp></xdr:wsDr>`;
    const file = smallWorkbook({
      sheets: {
        Jobs: '<row r="5"><c r="A5"><v>1</v></c></row>',
        Other: '<row r="3"><c r="A3"><v>1</v></c></row>',
      },
      more: { "xl/charts/chart1.xml": chart(refs("$A$2:$A$5")), "xl/drawings/drawing1.xml": shape("$A$5") },
    });
    const typed = await savedAfter(file, (grid) => grid.type(4, 0, "9"));
    expect(partsThatDiffer(file, typed!.bytes)).toEqual(["xl/worksheets/sheet1.xml"]);
    const other = await savedAfter(file, (grid) => grid.insert("ROW", 4, 1, 1));
    expect(partsThatDiffer(file, other!.bytes)).toEqual([]);
    const now = textsIn((await savedAfter(file, (grid) => grid.insert("ROW", 2, 2)))!.bytes);
    expect(now["xl/charts/chart1.xml"]).toBe(chart(refs("$A$2:$A$7")));
    expect(now["xl/drawings/drawing1.xml"]).toContain('textlink="Jobs!$A$7"');
  });

  longTest("is where it was once all is undone", async () => {
    const file = await fullFile();
    const saved = await savedAfter(file, (grid) => {
      grid.insert("ROW", 3, 2);
      grid.remove("COL", [1]);
      for (let i = 0; i < 2; i++) grid.model.dispatch("REQUEST_UNDO");
    });
    expect(saved!.bytes).toEqual(file);
  });

  longTest("is known of a draft too, which keeps the workbook as the grid has it", async () => {
    await savedAfter(await fullFile(), ({ model }) => {
      model.dispatch("ADD_COLUMNS_ROWS", {
        sheetId: model.getters.getSheetIds()[0],
        sheetName: "Jobs",
        dimension: "ROW",
        base: 3,
        position: "before",
        quantity: 2,
      } as never);
      const kept = structuredClone((model as any)._exportData(false));
      expect(structureSteps(new gridLibrary.Model(kept))).toEqual([
        { kind: "insert", sheetId: "Jobs", axis: "row", at: 3, count: 2 },
      ]);
    });
  });

  quickTest("is not written where it is not certain what becomes of it", async () => {
    const array =
      '<row r="2"><c r="A2"><f t="array" ref="A2:A4">B2:B4*2</f><v>0</v></c></row><row r="3"><c r="A3"><v>0</v></c></row><row r="4"><c r="A4"><v>0</v></c></row>';
    const unsafe = {
      "an array cut in two": smallWorkbook({ sheets: { Jobs: array } }),
      "a sum over sheets": smallWorkbook({
        sheets: {
          Jobs: '<row r="5"><c r="A5"><v>1</v></c></row>',
          Other: '<row r="1"><c r="A1"><f>SUM(Jobs:Last!A5)</f><v>1</v></c></row>',
          Last: "",
        },
      }),
      "a name without dollar signs": smallWorkbook({
        sheets: { Jobs: '<row r="5"><c r="A5"><v>1</v></c></row>' },
        definedNames: '<definedName name="Above">Jobs!A5</definedName>',
      }),
    };
    for (const [what, file] of Object.entries(unsafe))
      expect(await savedAfter(file, (grid) => grid.insert("ROW", 2)), what).toBeUndefined();
  });
});

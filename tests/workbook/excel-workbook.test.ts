// tests: the adapter for Excel, against objects that give nothing before it is loaded and synchronised.

import { afterEach, describe, expect } from "vitest";
import { beforeAndAfter } from "../../src/papers/before-and-after.ts";
import { setUpCard } from "../../src/papers/set-up-card.ts";
import { troubleSheet } from "../../src/papers/trouble-sheet.ts";
import { quotingSheet } from "../../src/taskpane/actions/quoting-sheet.ts";
import { ExcelWorkbook } from "../../src/workbook/excel-workbook.ts";
import { type NewSheet, Refusal } from "../../src/workbook/workbook.ts";
import { apiSetOf, askedFor } from "../support/api-sets.ts";
import { giveExcel, type SheetDouble, takeExcelAway } from "../support/excel-host.ts";
import { longTest, quickTest } from "../support/share.ts";

afterEach(takeExcelAway);

const quote = (): SheetDouble => ({
  name: "Bill's quote",
  cells: [
    ["Size (in)", "Hole"],
    [0.5, ".5000 +.0005/-.0000"],
    ["=REAM.STOCK(A2)", 12],
    [0.25, ""],
  ],
  values: [
    ["Size (in)", "Hole"],
    [0.5, ".5000 +.0005/-.0000"],
    [0.012, 12],
    [0.25, ""],
  ],
});
const workbook = new ExcelWorkbook(async () => "iVBORw0KGgo=");

describe("reading", () => {
  quickTest("a whole column is cut to the used part, with formulas, values and formats", async () => {
    giveExcel([quote()], { sheet: "Bill's quote", boxes: [[0, 0, 1_048_576, 1]] });
    const [cells, ...rest] = await workbook.selected();
    expect(rest).toEqual([]);
    expect(cells).toEqual({
      sheet: "Bill's quote",
      row: 0,
      column: 0,
      rows: 4,
      columns: 1,
      formulas: [["Size (in)"], [0.5], ["=REAM.STOCK(A2)"], [0.25]],
      values: [["Size (in)"], [0.5], [0.012], [0.25]],
      formats: [["General"], ["General"], ["General"], ["General"]],
      fixed: [[undefined], [undefined], [undefined], [undefined]],
    });
  });
  quickTest("two areas are two, and one outside the used part is left out", async () => {
    giveExcel([quote()], {
      sheet: "Bill's quote",
      boxes: [
        [1, 0, 1, 1],
        [1, 1, 2, 1],
        [50, 7, 3, 3],
      ],
    });
    const areas = await workbook.selected();
    expect(areas.map(({ row, column, rows, columns }) => [row, column, rows, columns])).toEqual([
      [1, 0, 1, 1],
      [1, 1, 2, 1],
    ]);
  });
  quickTest("the places are the areas as they are selected", async () => {
    giveExcel([quote()], {
      sheet: "Bill's quote",
      boxes: [
        [1, 0, 1, 1],
        [50, 7, 3, 3],
      ],
    });
    expect(await workbook.places()).toEqual([
      { sheet: "Bill's quote", row: 1, column: 0, rows: 1, columns: 1 },
      { sheet: "Bill's quote", row: 50, column: 7, rows: 3, columns: 3 },
    ]);
  });
  quickTest("an empty sheet has no used part", async () => {
    giveExcel([{ name: "Empty", cells: [] }], { sheet: "Empty", boxes: [[0, 0, 1, 1]] });
    expect(await workbook.used("Empty")).toBeUndefined();
    expect(await workbook.selected()).toEqual([]);
  });
  quickTest("a selected chart gets a sentence", async () => {
    giveExcel([quote()], "chart");
    await expect(workbook.selected()).rejects.toThrow("No cells are selected");
    await expect(workbook.active()).rejects.toBeInstanceOf(Refusal);
  });
  quickTest(
    "spilled cells are told apart from the formula that spills; merged ones where something is to be written",
    async () => {
      const sheet = { ...quote(), merged: [[0, 0, 1, 2]] as const, spilled: [[2, 0, 2, 1]] as const };
      const { asked } = giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 4, 2]] });
      const [cells] = await workbook.selected();
      expect(cells.fixed).toEqual([
        [undefined, undefined],
        [undefined, undefined],
        [undefined, undefined],
        ["spilled", undefined],
      ]);
      expect(asked.syncs.flat()).not.toContain("Range.GetMergedAreasOrNullObject");
      const { fixed } = await workbook.read(cells, true);
      expect(fixed[0]).toEqual(["merged", "merged"]);
    },
  );
  quickTest("the formula that a cell's content comes from is found", async () => {
    const sheet = { ...quote(), spilled: [[2, 0, 2, 2]] as const };
    giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 1, 1]] });
    const at = (row: number, column: number) => ({ sheet: sheet.name, row, column, rows: 1, columns: 1 });
    expect(await workbook.homeOf(at(3, 1))).toEqual(at(2, 0));
    expect(await workbook.homeOf(at(2, 0))).toEqual(at(2, 0));
    expect(await workbook.homeOf(at(1, 0))).toEqual(at(1, 0));
  });
  quickTest("rows that a filter hides are said", async () => {
    const sheet = { ...quote(), hiddenRows: [1, 3] };
    giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 4, 1]] });
    const [cells] = await workbook.selected();
    expect(cells.hidden).toEqual([[false], [true], [false], [true]]);
    giveExcel([quote()], { sheet: sheet.name, boxes: [[0, 0, 4, 1]] });
    expect((await workbook.selected())[0].hidden).toBeUndefined();
    giveExcel([{ ...quote(), hiddenRows: [0, 1, 2, 3] }], { sheet: sheet.name, boxes: [[0, 0, 4, 1]] });
    expect((await workbook.selected())[0].hidden).toEqual([[true], [true], [true], [true]]);
  });
  quickTest("the table that a cell lies in is named", async () => {
    const sheet = { ...quote(), tables: [{ name: "Jobs", box: [0, 0, 3, 2] as const }] };
    giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 1, 1]] });
    const at = (row: number) => ({ sheet: sheet.name, row, column: 0, rows: 1, columns: 1 });
    expect(await workbook.tableAt(at(1))).toBe("Jobs");
    expect(await workbook.tableAt(at(3))).toBeUndefined();
  });
  longTest("what comes to over 5 MB is read and written in slices", async () => {
    // 600 signs in a row, as formula and value: 6 MB as they are written, more as they are read.
    const long = "x".repeat(600);
    const cells = Array.from({ length: 10_000 }, (_, row) => [row, `${long}${row}`]);
    const { sheets, asked } = giveExcel([{ name: "Long", cells }], {
      sheet: "Long",
      boxes: [[0, 0, 1_048_576, 2]],
    });
    const [read] = await workbook.selected();
    expect(read.values.length).toBe(10_000);
    expect(read.values[9_999]).toEqual([9_999, `${long}9999`]);
    const formulas = read.values.map(([first, text]) => [Number(first) + 1, `=${text}`]);
    await workbook.write([{ ...read, formulas }]);
    expect(sheets[0].cells[9_999]).toEqual([10_000, `=${long}9999`]);
    expect(sheets[0].cells[0]).toEqual([1, `=${long}0`]);
    const writing = asked.syncs.filter(
      (members) => members.includes("Range.Formulas") && !members.includes("Range.Values"),
    );
    expect(writing.length).toBeGreaterThan(1);
    expect(writing.length).toBeLessThan(6);
  });
  quickTest("a part that only formats make too large is cut to what is filled", async () => {
    const sheet: SheetDouble = { ...quote(), formatted: [0, 0, 1_048_576, 3] };
    giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 1_048_576, 16_384]] });
    const [cells] = await workbook.selected();
    expect([cells.rows, cells.columns]).toEqual([4, 2]);
    expect(await workbook.used(sheet.name)).toMatchObject({ rows: 4, columns: 2 });
    giveExcel([{ ...sheet, formatted: [0, 0, 20, 3] }], { sheet: sheet.name, boxes: [[0, 0, 1, 1]] });
    expect(await workbook.used(sheet.name)).toMatchObject({ rows: 20, columns: 3 });
  });
  longTest("spilled results among many cells are found without asking each", async () => {
    const rows = 2000;
    const spilled = [
      [1, 1, 1500, 1],
      [3, 2, 2, 2],
    ] as const;
    const sheet: SheetDouble = {
      name: "Many",
      cells: Array.from({ length: rows }, (_, row) => [row, row === 1 ? "=REAM.X(A2:A1501)" : 1, "", ""]),
      spilled,
    };
    sheet.cells[3][2] = "=REAM.LIMITS(A4:A5)";
    const { asked } = giveExcel([sheet], { sheet: "Many", boxes: [[0, 0, 1, 1]] });
    const { fixed } = await workbook.read({ sheet: "Many", row: 0, column: 0, rows, columns: 4 });
    const found = fixed.map((line, row) =>
      line.map((_, column) =>
        spilled.some(([top, left, height, width]) => {
          const isIn = row >= top && row < top + height && column >= left && column < left + width;
          return isIn && !(row === top && column === left);
        })
          ? "spilled"
          : undefined,
      ),
    );
    expect(fixed).toEqual(found);
    const members = asked.syncs.flat();
    expect(members.filter((name) => name === "Range.GetSpillParentOrNullObject").length).toBeLessThan(2500);
    expect(asked.syncs.filter((one) => one.length > 0).length).toBeLessThan(6);
  });
  quickTest("a text that begins with = is told apart from a formula", async () => {
    const sheet: SheetDouble = {
      name: "Notes",
      cells: [["=REAM.RPM(15,10)", "=REAM.RPM(15,10)"]],
      values: [["=REAM.RPM(15,10)", 477.46]],
    };
    giveExcel([sheet], { sheet: "Notes", boxes: [[0, 0, 1, 1]] });
    const { formulas } = await workbook.read({ sheet: "Notes", row: 0, column: 0, rows: 1, columns: 2 });
    expect(formulas).toEqual([["'=REAM.RPM(15,10)", "=REAM.RPM(15,10)"]]);
  });
  quickTest("a single cell in a hidden row is said to be hidden", async () => {
    const sheet: SheetDouble = { name: "One", cells: [[], [0.5]], hiddenRows: [1] };
    giveExcel([sheet], { sheet: "One", boxes: [[0, 0, 1_048_576, 1]] });
    expect((await workbook.selected())[0].hidden).toEqual([[true]]);
  });
});

describe("writing", () => {
  quickTest("writes only what is given, as one step to undo", async () => {
    const { sheets, asked } = giveExcel([quote()], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    const formulas = [["Size (mm)"], [12.7], [undefined], [6.35]];
    await workbook.write([{ sheet: "Bill's quote", row: 0, column: 0, formulas }]);
    expect(sheets[0].cells.map(([first]) => first)).toEqual(["Size (mm)", 12.7, "=REAM.STOCK(A2)", 6.35]);
    expect(sheets[0].cells[1][1]).toBe(".5000 +.0005/-.0000");
    expect(asked.runs.length).toBe(2);
  });
  quickTest.each([
    ["a protected sheet", { protected: true }, "is protected"],
    ["merged cells", { merged: [[1, 0, 1, 2]] as const }, "A2 is part of merged cells"],
    ["a spilled cell", { spilled: [[0, 0, 2, 1]] as const }, "A2 shows the result of a formula"],
  ])("%s is refused and nothing is changed", async (_, odd, sentence) => {
    const { sheets } = giveExcel([{ ...quote(), ...odd }], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    const before = structuredClone(sheets[0].cells);
    const changes = [
      { sheet: "Bill's quote", row: 3, column: 0, formulas: [[6.35]] },
      { sheet: "Bill's quote", row: 1, column: 0, formulas: [[12.7]] },
    ];
    await expect(workbook.write(changes)).rejects.toThrow(sentence);
    expect(sheets[0].cells).toEqual(before);
  });
});

describe("a cell with the number format Text", () => {
  const texts = (): SheetDouble => ({ ...quote(), formats: quote().cells.map(() => ["@", "@"]) });
  quickTest.each<[string, string | number]>([
    ["a formula", "=REAM.RPM(1,2)"],
    ["a number", 12.7],
  ])("takes no %s, which would stay a text", async (_, content) => {
    const { sheets } = giveExcel([texts()], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    const before = structuredClone(sheets[0].cells);
    const act = workbook.write([{ sheet: "Bill's quote", row: 1, column: 0, formulas: [[content]] }]);
    await expect(act).rejects.toThrow("A2 has the number format Text");
    expect(sheets[0].cells).toEqual(before);
  });
  quickTest("takes a text", async () => {
    const { sheets } = giveExcel([texts()], { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] });
    await workbook.write([{ sheet: "Bill's quote", row: 0, column: 0, formulas: [["Size (mm)"]] }]);
    expect(sheets[0].cells[0][0]).toBe("Size (mm)");
  });
});

describe("what is computed", () => {
  const place = { sheet: "Bill's quote", row: 2, column: 0, rows: 1, columns: 1 };
  const box = { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] as [[number, number, number, number]] };
  quickTest("is read once Excel is done, and not as it was before", async () => {
    const sheet = quote();
    const { asked } = giveExcel([sheet], box, { states: ["Calculating", "Pending"] });
    // The function's old value stands under its loading mark until Excel is done.
    const values = sheet.values!;
    setTimeout(() => {
      values[2][0] = 0.014;
    }, 300);
    expect((await workbook.readComputed(place)).values).toEqual([[0.014]]);
    expect(asked.syncs.flat().filter((name) => name === "Application.CalculationState").length).toBe(4);
  });
  quickTest("is refused where Excel computes only when asked to", async () => {
    giveExcel([quote()], box, { states: ["Pending"], calculationMode: "Manual" });
    await expect(workbook.readComputed(place)).rejects.toThrow("Press F9");
    giveExcel([quote()], box, { states: ["Pending"], calculationMode: "Manual" });
    await expect(workbook.copyAsValues("Bill's quote", () => true)).rejects.toThrow("Press F9");
  });
});

describe("where Excel stops in the middle of writing", () => {
  const changes = [
    { sheet: "Bill's quote", row: 0, column: 0, formulas: [["Size (mm)"], [12.7], [undefined], [6.35]] },
    { sheet: "Bill's quote", row: 1, column: 1, formulas: [["=A2"]] },
  ];
  quickTest("what was written is taken back", async () => {
    const { sheets } = giveExcel(
      [quote()],
      { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] },
      { refused: { member: "Range.Formulas", code: "PivotTableRangeConflict", after: 3, times: 1 } },
    );
    const before = structuredClone(sheets[0].cells);
    await expect(workbook.write(changes)).rejects.toThrow(/PivotTable is in the way.*Nothing was changed\.$/);
    expect(sheets[0].cells).toEqual(before);
  });
  quickTest("it is said where that fails too", async () => {
    giveExcel(
      [quote()],
      { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] },
      { refused: { member: "Range.Formulas", code: "RequestAborted", after: 3 } },
    );
    await expect(workbook.write(changes)).rejects.toThrow(/Look at the cells first: a part may have been/);
  });
});

describe("a copy with values", () => {
  const box = { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] as [[number, number, number, number]] };
  const ours = (formula: string) => formula.includes("REAM.");

  quickTest("waits until Excel has computed", async () => {
    const { asked } = giveExcel([quote()], box, { states: ["Calculating", "Pending", "Done"] });
    expect((await workbook.copyAsValues("Bill's quote", ours)).replaced).toBe(1);
    const looks = asked.syncs.findIndex((members) => members.includes("Worksheet.Copy"));
    const states = asked.syncs
      .slice(0, looks)
      .filter((members) => members.includes("Application.CalculationState"));
    expect(states.length).toBe(4);
  });
  quickTest("is not kept where the sheet changed while it was made", async () => {
    // Somebody else puts in a row between the values and the copy.
    const sheet = quote();
    const { sheets } = giveExcel([sheet], box, {
      states: ["Done", "Done"],
      beforeCopy: () => sheet.cells.splice(1, 0, [1, "put in"]),
    });
    await expect(workbook.copyAsValues("Bill's quote", ours)).rejects.toThrow("changed while it was copied");
    expect(sheets.map(({ name }) => name)).toEqual(["Bill's quote"]);
  });
  quickTest("asks for all spilled results at once", async () => {
    const sheet = {
      name: "Many",
      cells: Array.from({ length: 30 }, () => ["=REAM.LIMITS(A1)", ""]),
      values: Array.from({ length: 30 }, (_, row) => [row, row + 0.5]),
      spilled: Array.from({ length: 30 }, (_, row) => [row, 0, 1, 2] as const),
    };
    const { sheets, asked } = giveExcel([sheet], { sheet: "Many", boxes: [[0, 0, 1, 1]] });
    expect((await workbook.copyAsValues("Many", ours)).replaced).toBe(60);
    expect(sheets[1].cells[29]).toEqual([29, 29.5]);
    expect(
      asked.syncs.filter((members) => members.includes("Range.GetSpillingToRangeOrNullObject")).length,
    ).toBe(1);
  });
  quickTest("leaves no copy behind where Excel refuses the values", async () => {
    const { sheets, asked } = giveExcel([quote()], box, {
      // Values are read three times before they are written.
      refused: { member: "Range.Values", code: "AccessDenied", after: 3 },
    });
    await expect(workbook.copyAsValues("Bill's quote", ours)).rejects.toThrow("protected");
    expect(sheets.map(({ name }) => name)).toEqual(["Bill's quote"]);
    expect(asked.syncs.flat()).toContain("Worksheet.Copy");
  });
  quickTest("keeps texts that look like something else", async () => {
    const sheet = { name: "Drills", cells: [["=REAM.DRILLNAME(B1)"]], values: [["31/64"]] };
    const { sheets } = giveExcel([sheet], { sheet: "Drills", boxes: [[0, 0, 1, 1]] });
    await workbook.copyAsValues("Drills", ours);
    // The host takes off the apostrophe that keeps a text one; without it, this would have become a date.
    expect(sheets[1].cells[0]).toEqual(["31/64"]);
  });
  quickTest("comes of a sheet of more than 5 MB", async () => {
    const cells = Array.from({ length: 1000 }, (_, row) =>
      Array.from({ length: 20 }, () => `=REAM.RPM(${row + 1},${"1+".repeat(30)}1)`),
    );
    const long = "x".repeat(300);
    const values = cells.map((line, row) => line.map((_, column) => `${long}${row + column / 100}`));
    const { sheets } = giveExcel([{ name: "Long", cells, values }], { sheet: "Long", boxes: [[0, 0, 1, 1]] });
    expect((await workbook.copyAsValues("Long", ours)).replaced).toBe(20_000);
    expect(sheets[1].cells[999][19]).toBe(`${long}999.19`);
  });
  quickTest("leaves texts that begin with = alone", async () => {
    const sheet: SheetDouble = {
      name: "Notes",
      cells: [["=REAM.RPM(1,2)", "=REAM.RPM(1,2)"]],
      values: [["=REAM.RPM(1,2)", 159]],
    };
    const { sheets } = giveExcel([sheet], { sheet: "Notes", boxes: [[0, 0, 1, 1]] });
    expect((await workbook.copyAsValues("Notes", ours)).replaced).toBe(1);
    expect(sheets[1].cells[0]).toEqual(["=REAM.RPM(1,2)", 159]);
  });
  quickTest("of an empty sheet is refused", async () => {
    giveExcel([{ name: "Empty", cells: [] }], { sheet: "Empty", boxes: [[0, 0, 1, 1]] });
    await expect(workbook.copyAsValues("Empty", ours)).rejects.toThrow("is empty");
  });
});

describe("what Excel refuses becomes a sentence", () => {
  quickTest.each([
    ["Range.Formulas", "InvalidOperationInCellEditMode", "Press Enter or Esc"],
    ["Range.Formulas", "RequestPayloadSizeLimitExceeded", "Select fewer cells"],
    ["Range.Formulas", "UndoNotSupported", "cannot undo"],
    ["Range.Formulas", "AccessDenied", "is protected"],
    ["Range.Formulas", "SpillConflict", "run over filled cells"],
    ["Range.Formulas", "SomethingNew", "Excel says SomethingNew"],
  ])("%s: %s", async (member, code, sentence) => {
    const { sheets } = giveExcel(
      [quote()],
      { sheet: "Bill's quote", boxes: [[0, 0, 1, 1]] },
      { refused: { member, code } },
    );
    const before = structuredClone(sheets[0].cells);
    const act = workbook.write([{ sheet: "Bill's quote", row: 1, column: 0, formulas: [[12.7]] }]);
    await expect(act).rejects.toThrow(sentence);
    await expect(act).rejects.toBeInstanceOf(Refusal);
    expect(sheets[0].cells).toEqual(before);
  });
});

describe("every action", () => {
  const place = { sheet: "Bill's quote", row: 1, column: 0, rows: 1, columns: 1 };
  const sheet: NewSheet = {
    name: "New",
    top: [["Units", "in"]],
    columns: [{ header: "Depth", width: 10, format: "0.0", first: 1, choices: ["a", "b"] }],
    rows: 3,
  };
  const hole = {
    part: "VB-40",
    drawing: "",
    callout: "4X ⌀16 H7 THRU",
    units: "mm" as const,
    material: "ductile iron",
    tool: "coated carbide",
    depth: 40,
    holes: 4,
  };
  /** With the most messages that it may take. */
  const actions: readonly (readonly [name: string, act: () => Promise<unknown>, most: number])[] = [
    ["selected", () => workbook.selected(), 7],
    ["places", () => workbook.places(), 1],
    ["active", () => workbook.active(), 1],
    ["read", () => workbook.read(place), 2],
    ["readComputed", () => workbook.readComputed(place), 3],
    ["dayShift", () => workbook.dayShift(), 1],
    ["read to write", () => workbook.read(place, true), 3],
    ["sheets", () => workbook.sheets(), 1],
    ["homeOf", () => workbook.homeOf(place), 1],
    ["tableAt", () => workbook.tableAt(place), 1],
    ["filledFrom", () => workbook.filledFrom(place), 1],
    ["meanings", () => workbook.meanings(), 2],
    ["hasRules", () => workbook.hasRules(place), 1],
    ["show", () => workbook.show(place), 1],
    ["used", () => workbook.used(place.sheet), 1],
    ["write", () => workbook.write([{ ...place, formulas: [[1]] }]), 4],
    ["addSheet", () => workbook.addSheet(sheet), 2],
    ["addSheet of a quote", () => workbook.addSheet(quotingSheet(20)), 2],
    // One more to learn where the picture goes, and one to put it there.
    ["addSheet of a set-up card", () => workbook.addSheet(setUpCard({ row: hole }, "A4")), 4],
    ["addSheet of a before and after", () => workbook.addSheet(beforeAndAfter(hole, 46_352, "A4")), 2],
    ["addSheet of a trouble sheet", () => workbook.addSheet(troubleSheet(hole, "Letter")), 2],
    // One of them to see whether the copy is of what was read.
    ["copyAsValues", () => workbook.copyAsValues(place.sheet, (text) => text.includes("REAM")), 7],
  ];

  const isLong = ([name]: (typeof actions)[number]) => /^addSheet of a [bst]/.test(name);
  const uses = [
    [quickTest, actions.filter((one) => !isLong(one))],
    [longTest, actions.filter(isLong)],
  ] as const;
  for (const [each, some] of uses)
    each.each(some)(
      "%s uses what the manifest asks for, in no group, in few messages",
      async (_, act, most) => {
        const { asked } = giveExcel([quote()], {
          sheet: "Bill's quote",
          boxes: [
            [0, 0, 2, 2],
            [3, 0, 1, 1],
          ],
        });
        await act();
        // Excel.run sends one of its own at the end, which only lets go of ranges.
        expect(asked.syncs.filter((members) => members.length > 0).length).toBeLessThanOrEqual(most);
        for (const options of asked.runs) expect(options ?? {}).not.toHaveProperty("mergeUndoGroup");
        const members = new Set(asked.syncs.flat());
        expect(members.size).toBeGreaterThan(0);
        for (const member of members)
          expect(`${member} ${apiSetOf(member)}`).toBe(`${member} ${within(apiSetOf(member))}`);
      },
    );

  quickTest("the types are read as they are meant", () => {
    expect(apiSetOf("Range.GetSpillParentOrNullObject")).toBe("1.12");
    expect(apiSetOf("Range.GetMergedAreasOrNullObject")).toBe("1.13");
    expect(apiSetOf("Worksheet.Copy")).toBe("1.7");
  });

  /** The set itself if the manifests ask for one as high, else what they ask for. */
  function within(set: string): string {
    const number = (text: string) => Number(text.split(".")[1]);
    return number(set) <= number(askedFor) ? set : `is over ${askedFor}`;
  }
});

describe("sheets", () => {
  quickTest("a quoting sheet of 1,000 rows comes in messages that Excel takes", async () => {
    const { sheets } = giveExcel([{ name: "Start", cells: [] }], { sheet: "Start", boxes: [[0, 0, 1, 1]] });
    const shop = { sheet: "Shop table mm", address: "$A$4:$P$204" };
    const name = await workbook.addSheet(
      quotingSheet(1000, { mm: shop, in: { ...shop, sheet: "Shop table in" } }),
    );
    expect(sheets.map((sheet) => sheet.name)).toEqual(["Start", name]);
    expect(String(sheets[1].cells[1007].at(-1))).toMatch(/^=IF\(B1008=/);
  });
  quickTest("a new sheet that Excel refuses halfway is not left behind", async () => {
    const { sheets } = giveExcel(
      [{ name: "Start", cells: [] }],
      { sheet: "Start", boxes: [[0, 0, 1, 1]] },
      { refused: { member: "Range.Formulas", code: "AccessDenied", after: 5 } },
    );
    await expect(workbook.addSheet(quotingSheet(20))).rejects.toThrow("is protected");
    expect(sheets.map((sheet) => sheet.name)).toEqual(["Start"]);
  });
  quickTest("a copy has values in place of the formulas picked, spilled ones included", async () => {
    const sheet = { ...quote(), spilled: [[2, 0, 2, 1]] as const };
    const { sheets, asked } = giveExcel([sheet], { sheet: sheet.name, boxes: [[0, 0, 1, 1]] });
    const { name, replaced } = await workbook.copyAsValues(sheet.name, (formula) =>
      formula.includes("REAM."),
    );
    expect(name).toBe("Bill's quote (values)");
    expect(replaced).toBe(2);
    expect(sheets[1].cells.map(([first]) => first)).toEqual(["Size (in)", 0.5, 0.012, 0.25]);
    expect(sheets[0].cells[2][0]).toBe("=REAM.STOCK(A2)");
    expect(asked.activated).toEqual([name]);
  });
  quickTest("a new sheet takes a free name, headers and the first formulas", async () => {
    const { sheets, asked } = giveExcel([{ name: "Quote", cells: [] }], {
      sheet: "Quote",
      boxes: [[0, 0, 1, 1]],
    });
    const name = await workbook.addSheet({
      name: "Quote",
      top: [["Units", "in"]],
      columns: [
        { header: "Callout", width: 20 },
        { header: "Material", width: 16, choices: Array.from({ length: 30 }, (_, at) => `material ${at}`) },
        { header: "Nominal", width: 10, format: "0.0000", first: '=REAM.CALLOUT(A3:A12,"nominal",B1)' },
      ],
      rows: 10,
    });
    expect(name).toBe("Quote 2");
    expect(asked.added).toEqual(["Quote 2"]);
    expect(sheets[1].cells[0].slice(0, 2)).toEqual(["Units", "in"]);
    expect(sheets[1].cells[1].slice(0, 3)).toEqual(["Callout", "Material", "Nominal"]);
    expect(sheets[1].cells[2][2]).toBe('=REAM.CALLOUT(A3:A12,"nominal",B1)');
    // A list over 255 characters stands in a column of its own.
    expect(sheets[1].cells[29][4]).toBe("material 29");
  });
});

quickTest("the numbers for days of a workbook that counts from 1904", async () => {
  giveExcel([quote()], "chart", { from1904: true });
  // Excel's own pages: the same day is 1,462 less there.
  expect(await workbook.dayShift()).toBe(-1462);
  giveExcel([quote()], "chart");
  expect(await workbook.dayShift()).toBe(0);
});

quickTest.each([
  [".", false],
  [",", true],
] as const)("the host's decimal %s", async (decimalSeparator, isComma) => {
  giveExcel([quote()], "chart", { decimalSeparator });
  expect(await workbook.hasDecimalComma()).toBe(isComma);
});

// tests: sheets that make a check cry wolf, and mistakes that hide in them.

import { beforeAll, describe, expect, test } from "vitest";
import { registered } from "../../functions/register.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { checkSheet } from "../../src/taskpane/actions/check-sheet.ts";
import { cellAddress } from "../../src/workbook/workbook.ts";
import { type MemoryCell, MemoryWorkbook } from "../support/memory-workbook.ts";
import { share } from "../support/share.ts";
import { declarations } from "../support/sheet.ts";

const help = paneHelp(declarations);
beforeAll(() => {
  Object.assign(globalThis, { reamwrightFunctions: registered });
});

type Line = readonly (string | number | MemoryCell)[];
/** Formulas show 1 where nothing else is said. */
async function found(lines: readonly Line[]): Promise<string[]> {
  const cells: Record<string, string | number | MemoryCell> = {};
  lines.forEach((line, row) => {
    line.forEach((content, column) => {
      if (content === "") return;
      const isFormula = typeof content === "string" && content.startsWith("=");
      cells[cellAddress(row, column)] = isFormula ? { formula: content, value: 1 } : content;
    });
  });
  const workbook = new MemoryWorkbook({ Job: cells });
  const told = (await checkSheet(workbook, help)).map(({ address, what }) => `${address}: ${what}`);
  expect(workbook.steps).toEqual([]);
  return told;
}
const down = (first: number, last: number, line: Line): Line[] =>
  Array.from({ length: last - first + 1 }, (_, at) =>
    line.map((cell) => (typeof cell === "string" ? cell.replaceAll("{row}", String(first + at)) : cell)),
  );

describe("no alarm", () => {
  test.each<[string, Line[]]>([
    [
      "years over columns of formulas",
      [
        ["Item", 2024, 2025, 2026],
        ...down(2, 6, ["P-{row}", "=Data!B{row}", "=Data!C{row}", "=Data!D{row}"]),
      ],
    ],
    [
      "batch sizes over columns of prices",
      [
        ["Part", 10, 50, 100],
        ...down(2, 6, ["P-{row}", "=$F{row}+45/B$1", "=$F{row}+45/C$1", "=$F{row}+45/D$1", "", 4]),
      ],
    ],
    [
      "a table of speeds by diameters",
      [
        ["", 10, 15, 20],
        [8, "=REAM.RPM(B$1,$A2)", "=REAM.RPM(C$1,$A2)", "=REAM.RPM(D$1,$A2)"],
        [10, "=REAM.RPM(B$1,$A3)", "=REAM.RPM(C$1,$A3)", "=REAM.RPM(D$1,$A3)"],
        [12, "=REAM.RPM(B$1,$A4)", "=REAM.RPM(C$1,$A4)", "=REAM.RPM(D$1,$A4)"],
      ],
    ],
    [
      "an opening balance",
      [
        ["Used", "Left"],
        ["", 500],
        ...down(3, 8, [20, "=B2-A{row}"]).map((line, at) => [line[0], `=B${at + 2}-A${at + 3}`]),
      ],
    ],
    [
      "a running total whose first row is its own",
      [["Qty", "Total"], [5, "=A2"], ...[3, 4, 5, 6].map((row) => [5, `=B${row - 1}+A${row}`])],
    ],
    [
      "sums written with plus",
      [
        ["Op", "Min"],
        ...down(2, 3, ["a", "=C{row}*2", 1]),
        ["sum", "=B2+B3"],
        ...down(5, 6, ["b", "=C{row}*2", 1]),
        ["sum", "=B5+B6"],
      ],
    ],
    [
      "a line for each group that comes back",
      [
        ["", "Price"],
        ...[2, 5, 8].flatMap((row) => [
          ["a", `=C${row}*1.2`, 3],
          ["b", `=C${row + 1}*1.2`, 3],
          ["set-up", `=45/D${row + 2}`, "", 10],
        ]),
      ],
    ],
    [
      "totals, an average and a share below",
      [
        ["Qty", "Price", "Amount", "Share"],
        ...down(2, 6, [10, 3.5, "=A{row}*B{row}", "=C{row}/C$7"]),
        ["=SUM(A2:A6)", "=AVERAGE(B2:B6)", "=SUM(C2:C6)", "=SUM(D2:D6)"],
      ],
    ],
    [
      "units of each row of its own",
      [
        ["Dia", "Units", "Speed", "rpm"],
        [10, "mm", 15, "=REAM.RPM(C2,A2,,B2)"],
        [0.5, "in", 50, "=REAM.RPM(C3,A3,,B3)"],
        [12, "mm", 15, "=REAM.RPM(C4,A4,,B4)"],
      ],
    ],
    [
      "a header for both units",
      [["Diameter (mm or in)", "Speed", "rpm"], ...down(2, 4, [10, 15, "=REAM.RPM(B{row},A{row})"])],
    ],
    [
      "units in a row below the headers",
      [
        ["Diameter", "Speed", "rpm"],
        ["mm", "m/min", "rev/min"],
        ...down(3, 6, [10, 15, "=REAM.RPM(B{row},A{row})"]),
      ],
    ],
    [
      "a merged title",
      [
        [
          { formula: "Job 12 in", fixed: "merged" },
          { value: "", fixed: "merged" },
          { value: "", fixed: "merged" },
        ],
        ["Dia (mm)", "Speed", "rpm"],
        ...down(3, 6, [10, 15, "=REAM.RPM(B{row},A{row})"]),
      ],
    ],
    [
      "two blocks side by side, and an empty column",
      [
        ["Dia", "rpm", "", "Cost", "Price"],
        ...down(2, 4, [10, "=REAM.RPM(15,A{row})", "", 3, "=D{row}*1.3"]),
        ...down(5, 8, ["", "", "", 3, "=D{row}*1.3"]),
      ],
    ],
    [
      "dates, and texts of days",
      [
        ["Day", "Due"],
        [45000, "=A2+7"],
        [45001, "=A3+7"],
        [45002, "=A4+7"],
        ["12.05.2024", ""],
        ["2024-05-12", ""],
      ],
    ],
    [
      "part numbers, revisions, fractions and callouts",
      [
        ["No.", "Rev", "Size", "Callout"],
        ["00123", "A", "1/2", "12 H7"],
        [4711, 1, 0.5, "12"],
        [4712, 2, "3/8", "10-32"],
        [4713, 3, 0.25, "M6"],
      ],
    ],
    ["part numbers that nothing sums", [["No."], ["4711"], ["4712"], ["4713"]]],
    [
      "two columns of other lengths that are not given together",
      [["A", "B"], ...down(2, 9, [1, 2]), ["=SUM(A2:A9)", "=SUM(B2:B5)"]],
    ],
    [
      "a unit for all and a column",
      [
        ["Units", "mm"],
        ["Dia", "Speed", "rpm"],
        ["=1", 15, "=REAM.RPM(B3:B6,A3:A6,,$B$1)"],
        [10, 15],
        [10, 15],
        [10, 15],
      ],
    ],
    [
      "formulas with blanks between groups",
      [...down(1, 3, ["=B{row}*2", 1]), [""], ...down(5, 7, ["=B{row}*3", 1])],
    ],
    [
      "a form with one figure and one formula each",
      [
        ["Dia", 10],
        ["Speed", 15],
        ["rpm", "=REAM.RPM(B2,B1)"],
        ["Feed", 0.2],
        ["Feed rate", "=REAM.FEEDRATE(B4,B3)"],
      ],
    ],
  ])("at %s", async (_, lines) => {
    expect(await found(lines)).toEqual([]);
  });
});

describe("the mistake is found", () => {
  const speeds = (changed: Readonly<Record<number, string | number>>, at = 2): Line[] => [
    ["Dia (mm)", "Speed (m/min)", "rpm", "Feed rate"],
    ...down(2, 9, [10, 15, "=REAM.RPM(B{row},A{row})", "=REAM.FEEDRATE(0.3,C{row})"]).map((line, index) =>
      line.map((cell, column) =>
        column === at && changed[index + 2] !== undefined ? changed[index + 2] : cell,
      ),
    ),
  ];
  test.each<[string, Line[], string[]]>([
    ["a number over the first row", speeds({ 2: 480 }), ["C2: 480 is typed where the column has a formula."]],
    ["a number over the last row", speeds({ 9: 480 }), ["C9: 480 is typed where the column has a formula."]],
    [
      "numbers over three rows",
      speeds({ 4: 480, 5: 480, 6: 480 }),
      ["C4:C6: 480 is typed where the column has a formula."],
    ],
    [
      "a number over a running total",
      [
        ["Qty", "Total"],
        [5, "=A2"],
        [5, "=B2+A3"],
        [5, "=B3+A4"],
        [5, 99],
        [5, "=B5+A6"],
      ],
      ["B5: 99 is typed where the column has a formula."],
    ],
    [
      "a row that reads the row above",
      speeds({ 5: "=REAM.RPM(B4,A5)" }),
      ["C5: The formula differs from those above and below it."],
    ],
    [
      "a number over a table of prices",
      [
        ["Part", 10, 50, 100],
        ...down(2, 6, ["P", "=$F{row}+45/B$1", "=$F{row}+45/C$1", "=$F{row}+45/D$1", "", 4]).map(
          (line, at) => (at === 2 ? ["P", line[1], 5.2, line[3], "", 4] : line),
        ),
      ],
      ["C4: 5.2 is typed where the column has a formula."],
    ],
    [
      "one row in inches under a header in mm",
      [
        ["Dia (mm)", "rpm"],
        [10, "=REAM.RPM(15,A2)"],
        [0.5, '=REAM.RPM(50,A3,,"in")'],
        [10, "=REAM.RPM(15,A4)"],
      ],
      [
        'B3: diameter is taken in in, but A1 says "Dia (mm)".',
        "B3: The formula differs from those above and below it.",
      ],
    ],
    [
      "a column of texts that a sum passes over",
      [
        ["Qty", "Price"],
        ["10", "3,50"],
        ["20", "4,25"],
        ["=SUM(A2:A3)", "=SUM(B2:B3)"],
      ],
      [
        'A2: "10" is a text that looks like a number.',
        'B2: "3,50" is a text that looks like a number.',
        'A3: "20" is a text that looks like a number.',
        'B3: "4,25" is a text that looks like a number.',
      ],
    ],
    [
      "numbers as texts in all spellings",
      [
        ["Dia"],
        [10],
        [12],
        ["1,234.5"],
        ["1\u00a0234"],
        ["1\u202f234,5"],
        ["15\u00a0"],
        ["'15"],
        ["1'234"],
        ["\u22125"],
        ["+3.5"],
        ["1e3"],
        ["85 %"],
        [".5"],
      ],
      [
        'A4: "1,234.5"',
        'A5: "1\u00a0234"',
        'A6: "1\u202f234,5"',
        'A7: "15\u00a0"',
        `A8: "'15"`,
        `A9: "1'234"`,
        'A10: "\u22125"',
        'A11: "+3.5"',
        'A12: "1e3"',
        'A13: "85 %"',
        'A14: ".5"',
      ].map((one) => `${one} is a text that looks like a number.`),
    ],
    [
      "a sum that leaves a row out, among sums below columns",
      [["A", "B", "C"], ...down(2, 6, [1, 2, 3]), ["=SUM(A2:A6)", "=SUM(B2:B5)", "=SUM(C2:C6)"]],
      ["B7: The formula differs from those beside it."],
    ],
    [
      "ranges of unequal length",
      [
        ["Dia", "Speed", "rpm"],
        [10, 15, "=REAM.RPM(B2:B5,A2:A4)"],
        [10, 15],
        [10, 15],
        [10, 15],
      ],
      ["C2: surfaceSpeed has 4 cells and diameter has 3."],
    ],
  ])("%s", async (_, lines, told) => {
    expect(await found(lines)).toEqual(told);
  });
});

test("a long sheet: each mistake once, and nothing else", async () => {
  const last = share([5_001], [20_001])[0];
  const lines = down(2, last, [
    10,
    15,
    "=REAM.RPM(B{row},A{row})",
    "=REAM.FEEDRATE(0.3,C{row})",
    "P-{row}",
  ]).map((line) => [...line]);
  lines[1_100][2] = 480;
  lines[last - 2][3] = 140;
  lines[1_500][0] = "12,5";
  expect(await found([["Dia (mm)", "Speed (m/min)", "rpm", "Feed rate", "Part"], ...lines])).toEqual([
    "C1102: 480 is typed where the column has a formula.",
    'A1502: "12,5" is a text that looks like a number.',
    `D${last}: 140 is typed where the column has a formula.`,
  ]);
});

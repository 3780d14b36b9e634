// tests: counts, sums, means and extremes under conditions, and exact look-ups, held to a plain walk over the rows, on
// columns long enough for orders and trees; and that a column of them reads its cells once, not once for each formula.

import * as reader from "@e965/xlsx";
import fc from "fast-check";
import { expect, test } from "vitest";
import { RangeIndex } from "../../src/fill/builtins/range-index.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { Grid } from "../../src/fill/grid.ts";
import { escapeXml } from "../../src/workbook/xlsx/xml-text.ts";
import { joined, smallWorkbook } from "../support/package.ts";
import { runs } from "../support/share.ts";
import { functions } from "../support/small-functions.ts";

type Cell = number | string | null | { error: string };
const ROWS = 150;

const mixed: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: -9, max: 9 }) },
  { weight: 3, arbitrary: fc.constantFrom("a", "A", "ab", "b", "3", "") },
  { weight: 1, arbitrary: fc.constant(null) },
);
const column = (cell: fc.Arbitrary<Cell>) => fc.array(cell, { minLength: ROWS, maxLength: ROWS });
const clean = fc.oneof(
  { weight: 9, arbitrary: fc.integer({ min: -99, max: 99 }) },
  { weight: 1, arbitrary: fc.constantFrom<Cell>("a", null) },
);
const oneError = fc.oneof(
  { weight: 99, arbitrary: clean },
  { weight: 1, arbitrary: fc.constant({ error: "#N/A" }) },
);

interface Asked {
  readonly operator: string;
  readonly wanted: number | string;
}
const asked: fc.Arbitrary<Asked> = fc.record({
  operator: fc.constantFrom("", "=", "<>", "<", "<=", ">", ">="),
  wanted: fc.oneof(fc.integer({ min: -10, max: 10 }), fc.constantFrom("a", "ab", "b")),
});
const wild = fc.record({
  operator: fc.constantFrom("", "<>"),
  wanted: fc.constantFrom("a*", "?", "*b", "a?"),
});

/** What Excel's help says of conditions: a number asks for numbers, by = and <> also for texts that are one. */
function meets({ operator, wanted }: Asked, cell: Cell): boolean {
  const sign = operator || "=";
  const isOther = sign === "<>";
  if (typeof wanted === "string" && /[*?]/.test(wanted)) {
    const pattern = new RegExp(`^${wanted.replaceAll("*", ".*").replaceAll("?", ".")}$`, "i");
    return (typeof cell === "string" && pattern.test(cell)) !== isOther;
  }
  let value: unknown = cell;
  if (typeof wanted === "number" && (sign === "=" || isOther) && cell === "3") value = 3;
  if (typeof value !== typeof wanted) return isOther;
  const [a, b] =
    typeof wanted === "string"
      ? [String(value).toLowerCase(), wanted.toLowerCase()]
      : [Number(value), wanted];
  if (sign === "=") return a === b;
  if (isOther) return a !== b;
  if (sign === "<") return a < b;
  if (sign === "<=") return a <= b;
  return sign === ">" ? a > b : a >= b;
}

const xml = (name: string, cell: Cell) => {
  if (cell === null) return "";
  if (typeof cell === "number") return `<c r="${name}"><v>${cell}</v></c>`;
  if (typeof cell === "object") return `<c r="${name}" t="e"><v>${cell.error}</v></c>`;
  return `<c r="${name}" t="str"><v>${cell}</v></c>`;
};

/** The values of formulas in column E on, in row 1, 2 and so on. */
function computed(columns: readonly (readonly Cell[])[], formulas: readonly string[]): unknown[] {
  const rows = columns[0].map((_, row) => {
    const own = columns.map((cells, at) => xml(`${"ABCD"[at]}${row + 1}`, cells[row])).join("");
    const formula = formulas[row] ? `<c r="E${row + 1}"><f>${escapeXml(formulas[row])}</f></c>` : "";
    return `<row r="${row + 1}">${own}${formula}</row>`;
  });
  const file = smallWorkbook({ sheets: { S: rows.join("") }, workbookPr: '<calcPr fullCalcOnLoad="1"/>' });
  const { pieces, report } = fillWorkbook(file, functions);
  expect(report.sheets[0].kept).toBe(0);
  const { S: sheet } = reader.read(joined(pieces!), { type: "array" }).Sheets;
  return formulas.map((_, row) => {
    const cell: reader.CellObject = sheet[`E${row + 1}`];
    return cell.t === "e" ? cell.w : cell.v;
  });
}

const written = ({ operator, wanted }: Asked) =>
  operator === "" && typeof wanted === "number" ? String(wanted) : `"${operator}${wanted}"`;

interface Span {
  readonly top: number;
  readonly bottom: number;
}
const span = fc.oneof(
  { weight: 3, arbitrary: fc.constant({ top: 1, bottom: ROWS }) },
  { weight: 1, arbitrary: fc.integer({ min: 1, max: ROWS }).map((bottom) => ({ top: 1, bottom })) },
  {
    weight: 1,
    arbitrary: fc.integer({ min: 1, max: ROWS - 80 }).map((top) => ({ top, bottom: top + 79 })),
  },
);

const ask = fc.oneof({ weight: 5, arbitrary: asked }, { weight: 1, arbitrary: wild });
const question = fc.record({
  name: fc.constantFrom("COUNTIFS", "SUMIFS", "AVERAGEIFS", "_xlfn.MINIFS", "_xlfn.MAXIFS"),
  span,
  conditions: fc.array(fc.tuple(fc.constantFrom("A", "B", "C"), ask), { minLength: 1, maxLength: 3 }),
});

const formulaOf = ({
  name,
  span: { top, bottom },
  conditions,
}: {
  name: string;
  span: Span;
  conditions: [string, Asked][];
}) => {
  const range = (letter: string) => `${letter}${top}:${letter}${bottom}`;
  const pairs = conditions.map(([letter, one]) => `${range(letter)},${written(one)}`);
  return `${name}(${name === "COUNTIFS" ? "" : `${range("D")},`}${pairs.join(",")})`;
};

function expected(
  columns: readonly (readonly Cell[])[],
  { name, span: { top, bottom }, conditions }: { name: string; span: Span; conditions: [string, Asked][] },
): unknown {
  const found: Cell[] = [];
  for (let row = top - 1; row < bottom; row++)
    if (conditions.every(([letter, one]) => meets(one, columns["ABC".indexOf(letter)][row])))
      found.push(columns[3][row]);
  if (name === "COUNTIFS") return found.length;
  const error = found.find((cell) => typeof cell === "object" && cell !== null);
  if (error) return (error as { error: string }).error;
  const numbers = found.filter((cell) => typeof cell === "number");
  const total = numbers.reduce((a, b) => a + b, 0);
  if (name === "SUMIFS") return total;
  if (name === "AVERAGEIFS") return numbers.length === 0 ? "#DIV/0!" : total / numbers.length;
  if (numbers.length === 0) return 0;
  return name.endsWith("MINIFS") ? Math.min(...numbers) : Math.max(...numbers);
}

test("conditions give what a walk over the rows gives", () => {
  const sheet = fc.tuple(
    column(mixed),
    column(mixed),
    column(fc.integer({ min: -9, max: 9 })),
    fc.oneof(column(clean), column(oneError)),
  );
  fc.assert(
    fc.property(sheet, fc.array(question, { minLength: 60, maxLength: ROWS }), (columns, questions) => {
      const values = computed(columns, questions.map(formulaOf));
      values.forEach((value, i) => {
        const wanted = expected(columns, questions[i]);
        if (typeof wanted === "number" && !Number.isInteger(wanted)) expect(value).toBeCloseTo(wanted, 10);
        else expect(value, formulaOf(questions[i])).toBe(wanted);
      });
    }),
    { numRuns: runs(25, 8) },
  );
});

test("exact look-ups give the first cell of their kind", () => {
  fc.assert(
    fc.property(column(mixed), fc.array(mixed, { minLength: 40, maxLength: 60 }), (cells, wanted) => {
      const values = wanted.filter((one) => one !== null && one !== "");
      const columns = [cells, cells.map((_, row) => 1000 + row)];
      const found = values.map((value) =>
        cells.findIndex((cell) =>
          typeof cell === "string" && typeof value === "string"
            ? cell.toLowerCase() === value.toLowerCase()
            : cell === value,
        ),
      );
      const text = (value: Cell) => (typeof value === "string" ? `"${value}"` : String(value));
      const forms: readonly [(value: Cell) => string, number][] = [
        [(value) => `MATCH(${text(value)},A1:A${ROWS},0)`, 1],
        [(value) => `VLOOKUP(${text(value)},A1:B${ROWS},2,FALSE)`, 1000],
        [(value) => `_xlfn.XLOOKUP(${text(value)},A1:A${ROWS},B1:B${ROWS})`, 1000],
      ];
      for (const [form, first] of forms)
        expect(computed(columns, values.map(form))).toEqual(
          found.map((place) => (place < 0 ? "#N/A" : place + first)),
        );
    }),
    { numRuns: runs(10, 5) },
  );
});

test.each([
  ["one range", (row: number) => `SUMIFS(A$1:A$400,B$1:B$400,B${row})`],
  ["one range, by size", (row: number) => `AVERAGEIFS(A$1:A$400,B$1:B$400,">="&B${row})`],
  ["a range that grows", (row: number) => `COUNTIF(B$1:B${row},B${row})`],
  ["a table", (row: number) => `VLOOKUP(B${row},B$1:C$400,2,FALSE)`],
])("a column of formulas over %s reads its cells once", (_, formula) => {
  const rows = Array.from({ length: 400 }, (_, i) => {
    const row = i + 1;
    const cells = ["A", "B", "C"].map((letter) => `<c r="${letter}${row}"><v>${row % 50}</v></c>`).join("");
    return `<row r="${row}">${cells}<c r="E${row}"><f>${escapeXml(formula(row))}</f></c></row>`;
  });
  const file = smallWorkbook({ sheets: { S: rows.join("") }, workbookPr: '<calcPr fullCalcOnLoad="1"/>' });
  let read = 0;
  const { matrix } = Grid.prototype;
  Grid.prototype.matrix = function (area) {
    const given = matrix.call(this, area);
    read += given.length * (given[0]?.length ?? 0);
    return given;
  };
  try {
    expect(fillWorkbook(file, functions).report.sheets[0]).toMatchObject({ computed: 400, kept: 0 });
  } finally {
    Grid.prototype.matrix = matrix;
  }
  expect(read).toBeLessThanOrEqual(800);
});

test.each<[string, (row: number) => string, (own: number, key: number, from: number) => boolean]>([
  ["one condition", (row) => `SUMIFS(C$1:C${row},A$1:A${row},A${row})`, (own, key) => own === key],
  ["others than one", (row) => `SUMIFS(C$1:C${row},A$1:A${row},"<>"&A${row})`, (own, key) => own !== key],
  [
    "one of them by size",
    (row) => `SUMIFS(C$1:C${row},A$1:A${row},A${row},C$1:C${row},">2")`,
    (own, key, value) => own === key && value > 2,
  ],
])(
  "sums of ranges that grow, %s, are those of each range, and read no cell of it twice",
  (_, formula, holds) => {
    const ROWS_DOWN = 600;
    const keys = Array.from({ length: ROWS_DOWN }, (_, i) => (i * 7) % 5);
    const values = keys.map((_, i) => ((i * 31) % 97) / 10);
    const { valueAt } = RangeIndex.prototype;
    let read = 0;
    RangeIndex.prototype.valueAt = function (place) {
      read++;
      return valueAt.call(this, place);
    };
    let given: unknown[];
    try {
      given = computed(
        [keys, keys, values],
        keys.map((_, i) => formula(i + 1)),
      );
    } finally {
      RangeIndex.prototype.valueAt = valueAt;
    }
    const wanted = keys.map((key, row) => {
      let sum = 0;
      for (let i = 0; i <= row; i++) if (holds(keys[i], key, values[i])) sum += values[i];
      return sum;
    });
    expect(given).toEqual(wanted);
    // For each of five keys a few times, and not for each row.
    expect(read).toBeLessThan(40 * ROWS_DOWN);
  },
);

test("a sum under a condition over the column that it stands in goes on from row to row", () => {
  const rows = Array.from({ length: 200 }, (_, i) => {
    const row = i + 1;
    const formula = row === 1 ? "1" : `SUMIFS(E$1:E${row - 1},A$1:A${row - 1},">0")`;
    return `<row r="${row}"><c r="A${row}"><v>${row % 20 === 0 ? 1 : 0}</v></c><c r="E${row}"><f>${escapeXml(formula)}</f></c></row>`;
  });
  const file = smallWorkbook({ sheets: { S: rows.join("") }, workbookPr: '<calcPr fullCalcOnLoad="1"/>' });
  const { S: sheet } = reader.read(joined(fillWorkbook(file, functions).pieces!), { type: "array" }).Sheets;
  const wanted: number[] = [1];
  for (let row = 2; row <= 200; row++)
    wanted.push(wanted.filter((_, i) => (i + 1) % 20 === 0).reduce((a, b) => a + b, 0));
  expect(wanted.map((_, i) => sheet[`E${i + 1}`].v)).toEqual(wanted);
});

test("an empty condition is 0 where Microsoft's help says so, and in doubt where a 0 stands", () => {
  const columns = [
    [0, 3, 0, 5],
    [1, 2, 3, 4],
    [null, null, null, null],
  ];
  expect(computed(columns, ["COUNTIFS(A1:A4,C1)", "AVERAGEIF(A1:A4,C1,B1:B4)", "COUNTIF(B1:B4,C1)"])).toEqual(
    [2, 2, 0],
  );
  for (const formula of ["COUNTIF(A1:A4,C1)", "SUMIF(A1:A4,C1,B1:B4)"])
    expect(() => computed(columns, [formula])).toThrow(/expected 1 to be/);
});

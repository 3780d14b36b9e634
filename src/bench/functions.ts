// bench: worksheet functions over columns against a bare loop that builds the same result arrays, in one run.
// Prints ratios of least times; run it with `npm run bench`.

import type { Matrix } from "../../functions/register.ts";

interface Case {
  readonly name: string;
  /** How many times the bare loop the function may take. */
  readonly limit: number;
  readonly columns: (rows: number) => any[][][];
  readonly call: (columns: any[][][]) => Matrix;
  readonly bare: (columns: any[][][]) => Matrix;
}

const ROWS = 100_000;
const ROUNDS = 15;

class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}
Object.assign(globalThis, {
  CustomFunctions: {
    Error: CellError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    associate() {},
  },
});

const { rpm, cuttingData } = await import("../../functions/speeds.ts");
const { limits } = await import("../../functions/fits.ts");

const column = (rows: number, cell: (row: number) => unknown): any[][] =>
  Array.from({ length: rows }, (_, row) => [cell(row)]);
const nothing = { address: "Sheet1!A1" };
const toEach = (columns: any[][][], result: (row: number) => any[]): Matrix => {
  const results: Matrix = [];
  for (let row = 0; row < columns[0]!.length; row++) results.push(result(row));
  return results;
};

const twoNumbers = (columns: any[][][]) => toEach(columns, (row) => [row + 0.5, row + 0.75]);
const cases: Case[] = [
  {
    name: "RPM",
    limit: 4,
    columns: (rows) => [column(rows, (row) => 10 + (row % 90)), column(rows, (row) => 2 + (row % 500) / 10)],
    call: ([speeds, diameters]) => rpm(speeds!, diameters!, nothing as any),
    bare: (columns) => {
      const [speeds, diameters] = columns as [any[][], any[][]];
      const results: Matrix = [];
      for (let row = 0; row < speeds.length; row++)
        results.push([(1000 * speeds[row]![0]) / (Math.PI * diameters[row]![0])]);
      return results;
    },
  },
  {
    name: "LIMITS, callouts that repeat",
    limit: 8,
    columns: (rows) => [column(rows, (row) => `${3 + (row % 200)} H${6 + (row % 4)}`)],
    call: ([callouts]) => limits(callouts!, nothing as any),
    bare: twoNumbers,
  },
  {
    name: "LIMITS, callouts all different",
    limit: 30,
    columns: (rows) => [column(rows, (row) => `${(3 + row / 1000).toFixed(3)} H7`)],
    call: ([callouts]) => limits(callouts!, nothing as any),
    bare: twoNumbers,
  },
];
void cuttingData;

function milliseconds(run: () => unknown): number {
  const start = performance.now();
  run();
  return performance.now() - start;
}

/** Least times of both, taken in turn so that neither has the quieter moments. */
function leastTimes(one: Case, rows: number): { call: number; bare: number } {
  let call = Number.POSITIVE_INFINITY;
  let bare = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS; round++) {
    const columns = JSON.parse(JSON.stringify(one.columns(rows)));
    const repeat = Math.max(1, Math.round(10_000 / rows));
    const times = (run: () => unknown) => milliseconds(() => Array.from({ length: repeat }, run)) / repeat;
    bare = Math.min(
      bare,
      times(() => one.bare(columns)),
    );
    call = Math.min(
      call,
      times(() => one.call(columns)),
    );
  }
  return { call, bare };
}

let missed = 0;
for (const one of cases) {
  const few = leastTimes(one, 1000);
  const many = leastTimes(one, ROWS);
  const ratio = many.call / many.bare;
  const growth = many.call / few.call / (many.bare / few.bare);
  if (ratio > one.limit || growth > 1.6) missed++;
  console.log(
    `${one.name}: ${ratio.toFixed(2)}× a bare loop (at most ${one.limit}×), ${many.call.toFixed(1)} ms for ${ROWS} rows; growth per row ${growth.toFixed(2)}× the loop's own (at most 1.6×)`,
  );
}
process.exitCode = missed ? 1 : 0;

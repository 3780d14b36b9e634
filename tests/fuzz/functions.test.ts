// tests: every worksheet function under random calls, `npm run test:long` makes about a million rows, `npm run fuzz` more and from another
// seed each time; FUZZ_RUNS and FUZZ_SEED set both. fast-check prints the seed of a failure and the smallest call that fails.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FAULT } from "../../functions/cells.ts";
import { type Cells, declarations, isError, said, sheet } from "../support/sheet.ts";
import { callsOf, type FuzzCall } from "./calls.ts";
import { keptCalls } from "./kept-calls.ts";

const numRuns = Number(process.env.FUZZ_RUNS ?? 5);
const seed = Number(process.env.FUZZ_SEED ?? 20_260_401);
console.log(`fuzz: ${numRuns} calls of each of ${declarations.length} functions, seed ${seed}`);

/** Functions whose result is of a shape of its own, or that take an argument whole. */
const whole = new Set(
  declarations
    .filter(({ parameters, cells }) => cells.length === 0 || parameters.some(({ whole: one }) => one))
    .map(({ id }) => id),
);
for (const id of ["HEADERS", "REMEDIES"]) whole.add(id);

const run = ({ id, args }: FuzzCall): Cells => sheet(id, ...args.map((range) => range ?? undefined));

function expectSound(call: FuzzCall, cells: Cells): void {
  const given = new Set(
    call.args
      .flat(2)
      .filter(isError)
      .map(({ code }) => code),
  );
  expect(cells.length).toBeGreaterThan(0);
  for (const row of cells) {
    expect(row.length).toBe(cells[0].length);
    expect(row.length).toBeGreaterThan(0);
    for (const cell of row) {
      if (typeof cell === "number") expect(Number.isFinite(cell) && !Object.is(cell, -0)).toBe(true);
      else if (isError(cell)) {
        if (given.has(cell.code) && !cell.message) continue;
        expect(["#VALUE!", "#N/A"]).toContain(cell.code);
        expect(cell.message).toMatch(/\S/);
        expect(cell.message).not.toContain(FAULT);
        expect(cell.message!.length).toBeLessThan(700);
        // What came is quoted; the rest of the sentence is ours.
        expect(cell.message!.replace(/".*"/g, "")).not.toMatch(
          /[\u0000-\u001f]|undefined|\[object|NaN|Infinity/,
        );
      } else expect(["string", "boolean"]).toContain(typeof cell);
    }
  }
}

const isBlank = (cell: unknown) =>
  cell === null || cell === 0 || (typeof cell === "string" && cell.trim() === "");

/** A message that writes the call out has a value where a single call has one, and an argument's name where it has a range. */
function withoutCall(cell: unknown): unknown {
  const shown = said(cell);
  return typeof shown === "string" ? shown.replace(/=REAM\.\w+\(.*\)/, "=REAM…") : shown;
}

/** A column gives what its rows give one by one. Blanks apart: a row is empty by other rules than a single call. */
function expectRows({ id, args, rows }: FuzzCall, cells: Cells): void {
  if (rows === 1 || cells.length !== rows) return;
  for (let row = 0; row < rows; row++) {
    const alone = args.map((range) => (range && range.length > 1 ? [range[row]] : range));
    if (alone.some((range) => range && isBlank(range[0][0]))) continue;
    expect(run({ id, args: alone, rows: 1 })[0].map(withoutCall)).toEqual(cells[row].map(withoutCall));
  }
  const reversed = args.map((range) => (range && range.length > 1 ? [...range].reverse() : range));
  expect(run({ id, args: reversed, rows }).map((row) => row.map(said))).toEqual(
    [...cells].reverse().map((row) => row.map(said)),
  );
}

function check(call: FuzzCall): void {
  const cells = run(call);
  expectSound(call, cells);
  expect(run(call).map((row) => row.map(said))).toEqual(cells.map((row) => row.map(said)));
  if (!whole.has(call.id)) expectRows(call, cells);
}

describe("random calls", () => {
  test.each(declarations.map((declaration) => [declaration.id, declaration] as const))(
    "%s",
    (_, declaration) => {
      const calls = declaration.parameters.length === 0 ? 1 : numRuns;
      fc.assert(fc.property(callsOf(declaration), check), { numRuns: calls, seed });
    },
  );
});

describe("calls that once failed", () => {
  test.each(keptCalls)("$id $args", (call) => check(call));
});

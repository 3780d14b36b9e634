// tests: ranges spread against each other as Excel's operators do; row functions and lists have rules of their own.

import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { associated } from "../support/custom-functions.ts";
import { readFormula } from "../support/formula.ts";
import { across, cell, declarations, down, messageOf, said, sheet } from "../support/sheet.ts";

const rpm = (speed: number, diameter: number) => (1000 * speed) / (Math.PI * diameter);

describe("ranges", () => {
  test("a single value serves all", () => {
    expect(sheet("FEEDRATE", 0.5, down(10, 20, 30))).toEqual([[5], [10], [15]]);
    expect(sheet("FEEDRATE", 0.5, across(10, 20, 30))).toEqual([[5, 10, 15]]);
  });

  test("columns go row by row", () => {
    expect(sheet("FEEDRATE", down(1, 2, 3), down(10, 20, 30))).toEqual([[10], [40], [90]]);
  });

  test("a column with a row gives a grid", () => {
    expect(sheet("FEEDRATE", down(1, 2, 3), across(10, 20))).toEqual([
      [10, 20],
      [20, 40],
      [30, 60],
    ]);
    expect(sheet("FEEDRATE", across(1, 2), down(10, 20, 30))).toEqual([
      [10, 20],
      [20, 40],
      [30, 60],
    ]);
  });

  test("a block meets a column, a row and a block", () => {
    const block = [
      [1, 2],
      [3, 4],
    ];
    expect(sheet("FEEDRATE", block, down(10, 100))).toEqual([
      [10, 20],
      [300, 400],
    ]);
    expect(sheet("FEEDRATE", block, across(10, 100))).toEqual([
      [10, 200],
      [30, 400],
    ]);
    expect(sheet("FEEDRATE", block, block)).toEqual([
      [1, 4],
      [9, 16],
    ]);
  });

  test("where sizes do not meet the cell is #N/A, the others stand", () => {
    const cells = sheet("FEEDRATE", down(1, 2, 3), down(10, 20)).flat();
    expect(cells.slice(0, 2)).toEqual([10, 40]);
    expect(messageOf(cells[2], "#N/A")).toMatch(/ has \d cells? and .* Make them the same size\.$/);

    const grid = sheet("FEEDRATE", across(1, 2, 3), [
      [10, 20],
      [30, 40],
    ]);
    expect(grid.map((line) => line.slice(0, 2))).toEqual([
      [10, 40],
      [30, 80],
    ]);
    for (const line of grid)
      expect(messageOf(line[2], "#N/A")).toMatch(/ has \d cells? and .* Make them the same size\.$/);
  });

  test("optional arguments and units spread too", () => {
    expect(sheet("RPM", 15, 10, down(100, 1000))).toEqual([[100], [rpm(15, 10)]]);
    expect(sheet("RPM", 15, down(10, 20), across(100, 1000))).toEqual([
      [100, rpm(15, 10)],
      [100, rpm(15, 20)],
    ]);
  });
});

describe("row functions", () => {
  test("give their cells side by side, a row per input row", () => {
    expect(sheet("LIMITS", down("12 H7", "20 P7"))).toEqual([
      [12, 12.018],
      [19.965, 19.986],
    ]);
  });

  test("an error or an empty text fills all cells", () => {
    const cells = sheet("LIMITS", down("12 H7", "", "12 L7", "24 T7"));
    expect(cells[1]).toEqual(["", ""]);
    expect(cells[2].map((one) => messageOf(one))).toEqual(new Array(2).fill(expect.stringContaining("L7")));
    expect(cells[3].map((one) => messageOf(one, "#N/A"))).toEqual(
      new Array(2).fill(expect.stringContaining("T7")),
    );
  });

  const rowFunctions = declarations.filter(({ row, parameters }) => row.length > 0 && parameters.length > 0);
  test.each(rowFunctions.map(({ id }) => id))("%s refuses a range wider than a column", (id) => {
    const { args } = readFormula(declarations.find((one) => one.id === id)!.examples[0].formula);
    // Lists are taken whole, so a wide one is no fault.
    const at = args.findIndex((arg) => arg !== undefined && !Array.isArray(arg));
    if (at < 0) return;
    const { name } = declarations.find((one) => one.id === id)!.parameters[at];
    const wide = args.map((arg, index) => (index === at ? [[arg, arg]] : arg));
    const cells = sheet(id, ...wide);
    for (const one of cells.flat())
      expect(messageOf(one)).toBe(`${name} is 2 columns wide. Give one column.`);
    const { row } = declarations.find((one) => one.id === id)!;
    expect(cells.map((line) => line.length)).toEqual([row.length]);
  });

  test("name the argument that is too wide, not a list beside it", () => {
    expect(messageOf(cell("CUTSOVER", across(12.014, 12.015), across(12, 13)))).toMatch(
      /^reamer is 2 columns wide/,
    );
  });
});

describe("lists", () => {
  test("are taken whole, in a column, a row or a block", () => {
    const holes = [12.014, 12.015, 12.016];
    for (const list of [
      down(...holes),
      across(...holes),
      [
        [12.014, 12.015],
        [12.016, null],
      ],
    ])
      expect(sheet("CUTSOVER", list, 12.011)).toEqual([[0.004, 0.002]]);
  });

  test("blanks are passed over, zeros too where zero is a blank", () => {
    expect(sheet("CUTSOVER", down(12.014, null, "", " ", 0, 12.016, 12.015), 12.011)).toEqual([
      [0.004, 0.002],
    ]);
  });

  test("both of a pair are passed over if either is blank", () => {
    const fit = sheet("TAYLORFIT", down(20, 25, 30), down(120, 50, 20));
    expect(sheet("TAYLORFIT", down(20, 22, 25, null, 30), down(120, "", 50, 40, 20))).toEqual(fit);
  });

  test("an error cell makes the result that error", () => {
    const error = { code: "#DIV/0!" };
    for (const one of sheet("CUTSOVER", down(12.014, error, "x"), 12.011).flat()) expect(one).toBe(error);
  });

  test("any other bad entry is #VALUE! with its position", () => {
    expect(messageOf(cell("CUTSOVER", down(12.014, null, "x", true), 12.011))).toMatch(
      /entry 3 of the list.*"x"/,
    );
    expect(messageOf(cell("SHAREDREAMERS", down("12 H7", "12 L7")))).toMatch(/entry 2 of the list.*12 L7/);
    expect(messageOf(cell("SHAREDREAMERS", down("12 H7", null, "12 h8")))).toMatch(
      /^callouts .entry 3 of the list. "12 h8": h8 is a shaft class. Is H8 meant/,
    );
  });

  test("lists that belong together and differ in length are #VALUE!", () => {
    expect(messageOf(cell("TAYLORFIT", down(20, 25, 30), down(120, 50)))).toMatch(
      /^speeds has \d cells and lives has \d/,
    );
    expect(messageOf(cell("TOOLFOR", 5, down(0, 6), down(6), down("A", "B")))).toMatch(
      /Make them the same size/,
    );
  });

  test("a list beside a column serves every row", () => {
    expect(sheet("CUTSOVER", down(12.014, 12.016), down(12.011, 12.013)).map((line) => line[0])).toEqual([
      0.004, 0.002,
    ]);
  });

  test("all blank gives an empty text", () => {
    expect(sheet("CUTSOVER", down(null, "", 0), 12.011)).toEqual([["", ""]]);
  });
});

test("a grid of more results than a sheet shows is refused in a sentence", () => {
  const column = Array.from({ length: 1_000_000 }, () => [10]);
  const across16384 = [new Array(16_384).fill(15)];
  expect(messageOf(cell("RPM", across16384, column))).toMatch(/a grid of 1000000 by 16384 results/);
});

describe("one call over a column gives what one call per row gives", () => {
  const spreading = declarations.filter(
    ({ id, parameters }) =>
      parameters.some(({ whole }) => !whole) &&
      !["STEPS", "CHECKOF", "COMPARE", "SHAREDREAMERS", "HEADERS", "REMEDIES"].includes(id) &&
      !["TAYLORFIT", "HOLEFORM", "LIFERANGE"].includes(id),
  );
  const others = [null, "", 0, -1, 1e9, "abc", "12,5", "1/2", "0.5 in", "12 H7", true, { code: "#N/A" }];

  test.each(spreading.map(({ id }) => id))("%s", (id) => {
    const { args } = readFormula(declarations.find((one) => one.id === id)!.examples[0].formula);
    const isList = (arg: unknown) => Array.isArray(arg);
    const columns = fc.integer({ min: 2, max: 6 }).chain((length) =>
      fc.tuple(
        ...args.map((arg) =>
          isList(arg) || arg === undefined
            ? fc.constant(arg)
            : fc.array(fc.oneof({ weight: 3, arbitrary: fc.constant(arg) }, fc.constantFrom(...others)), {
                minLength: length,
                maxLength: length,
              }),
        ),
      ),
    );
    fc.assert(
      fc.property(columns, (given) => {
        const spread = given.map((arg, index) =>
          Array.isArray(arg) && !isList(args[index]) ? arg.map((one: unknown) => [one]) : arg,
        );
        const rows = (spread.find((arg, index) => Array.isArray(arg) && !isList(args[index])) as unknown[])
          .length;
        const whole = sheet(id, ...spread);
        for (let i = 0; i < rows; i++) {
          // Two rows of the same cells: a call with single cells has a rule of its own for an empty row.
          const one = spread.map((arg, index) =>
            Array.isArray(arg) && !isList(args[index]) ? [arg[i], arg[i]] : arg,
          );
          const [first, second] = sheet(id, ...one);
          expect(whole[i].map(said)).toEqual(first.map(said));
          expect(second.map(said)).toEqual(first.map(said));
        }
      }),
      { numRuns: 12 },
    );
  });

  test("the order of the rows makes no difference", () => {
    const callouts = ["12 H7", "20 P7", "4X Ø8 H7 THRU", "", "12 L7", "1/2 in H7", "24 T7"];
    const forward = sheet("REAMERLIMITS", down(...callouts)).map((line) => line.map(said));
    const backward = sheet("REAMERLIMITS", down(...callouts.toReversed())).map((line) => line.map(said));
    expect(backward.toReversed()).toEqual(forward);
  });
});

describe("the host's invocation object", () => {
  const invocation = { address: "Sheet1!A1", functionName: "RPM", isInValuePreview: false };

  test("stands after the last argument given, for one left out", () => {
    const call = associated.get("RPM")!;
    const plain = [[rpm(15, 10)]];
    expect(call([[15]], [[10]], invocation)).toEqual(plain);
    expect(call([[15]], [[10]], null, invocation)).toEqual(plain);
    expect(call([[15]], [[10]], null, null, invocation)).toEqual(plain);
  });

  test("is no required argument either", () => {
    expect(messageOf(associated.get("RPM")!([[15]], invocation)[0][0])).toMatch(/^diameter is empty or 0/);
    expect(associated.get("RPM")!(invocation)).toEqual([[""]]);
  });
});

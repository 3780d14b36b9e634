// tests: between Excel's shapes and the grid's.

import { expect, test } from "vitest";
import { type ErrorClass, gridFunction } from "../../src/browser/register-functions.ts";
import type { MetadataFunction } from "../../src/build/metadata.ts";

class WorksheetError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}
const errorTypes = new Set(["#N/A", "#REF", "#VALUE!", "#DIV/0!"]);

const described = (...parameters: object[]) =>
  ({
    id: "TEST",
    name: "TEST",
    description: "Gives.",
    parameters,
    result: {},
  }) as unknown as MetadataFunction;
const a = { name: "a", description: "A, mm" };
const b = { name: "b", description: "B, mm", optional: true };
const more = { name: "more", description: "More, mm", repeating: true };

function run(parameters: object[], answer: unknown[][], ...given: any[]) {
  let args: any[] = [];
  const call = (...received: any[]) => {
    args = received;
    return answer;
  };
  const registered = gridFunction(described(...parameters), call, errorTypes, WorksheetError as ErrorClass);
  return { result: registered.compute(...given), args, registered };
}

test("a cell becomes a matrix of one, an argument left out null, and an invocation stands last", () => {
  const { args } = run([a, b], [[1]], { value: 5 });
  expect(args).toEqual([[[5]], null, { functionName: "TEST" }]);
  expect(run([a, b], [[1]], undefined, { value: "mm" }).args).toEqual([
    null,
    [["mm"]],
    { functionName: "TEST" },
  ]);
});

test("a range is turned from columns into rows; blanks are null", () => {
  const range = [
    [{ value: 1 }, { value: 2 }, { value: null }],
    [{ value: "x" }, { value: true }, undefined],
  ];
  const { args } = run([a], [[1]], range);
  expect(args[0]).toEqual([
    [1, "x"],
    [2, true],
    [null, null],
  ]);
});

test("repeating arguments come in one list", () => {
  const { args } = run([a, more], [[1]], { value: 1 }, { value: 2 }, [[{ value: 3 }, { value: 4 }]]);
  expect(args).toEqual([[[1]], [[[2]], [[3], [4]]], { functionName: "TEST" }]);
  expect(run([a, more], [[1]], { value: 1 }).args).toEqual([[[1]], [], { functionName: "TEST" }]);
});

test("an error cell goes in with Excel's code and comes out with the grid's", () => {
  const { args } = run([a], [[1]], { value: "#REF", message: "gone" });
  expect(args[0][0][0]).toEqual(new WorksheetError("#REF!", "gone"));
  expect(run([a], [[new WorksheetError("#REF!", "gone")]], { value: 1 }).result).toEqual({
    value: "#REF",
    message: "gone",
  });
});

test("a matrix of one comes out as a cell, any other column by column", () => {
  expect(run([a], [[7]], { value: 1 }).result).toEqual({ value: 7 });
  const bad = new WorksheetError("#VALUE!", "a is wrong");
  expect(
    run(
      [a],
      [
        [1, "two"],
        [bad, ""],
      ],
      { value: 1 },
    ).result,
  ).toEqual([
    [{ value: 1 }, { value: "#VALUE!", message: "a is wrong" }],
    [{ value: "two" }, { value: "" }],
  ]);
});

test("what no function may give shows as an error, not as 0", () => {
  for (const nothing of [null, undefined, {}]) {
    expect(run([a], [[nothing]], { value: 1 }).result).toEqual({ value: "#VALUE!" });
  }
});

test("the help says which arguments may be left out or repeated", () => {
  const { args } = run([a, b], [[1]], { value: 1 }).registered;
  expect(args.map(({ name, optional, repeating }) => [name, optional, repeating])).toEqual([
    ["a", false, false],
    ["b", true, false],
  ]);
});

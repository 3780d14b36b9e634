// tests: what Microsoft's generator lets pass, our build does not, and it says where.

import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { isCellAddress, storedName } from "../../src/build/check-declarations.ts";
import { readDeclarations } from "../../src/build/declarations.ts";
import { entryModule } from "../../src/build/entry.ts";
import { buildMetadata } from "../../src/build/metadata.ts";

const good = `/**
 * Gives something, "so" & so on.
 *
 * @customfunction SPEED.OF
 * @param size Size, mm or in
 * @param [units] "mm" or "in"; "mm" if omitted
 * @returns Something, mm or in
 * @remarks Inside a table write INDEX(REAM.SPEED.OF([@Size]),1,2)
 * as a person would.
 * @example =REAM.SPEED.OF(1) // 2
 * @example =REAM.SPEED.OF("a // b") // "ok"
 * @see sources: practice, derived
 */
export function speedOf(size: any[][], units?: any[][]): any[][] {
  return [[size, units]];
}
`;

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "functions-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const write = (text: string, name = "some.ts") => writeFileSync(join(folder, name), text);

describe("a good declaration", () => {
  test("is read whole", () => {
    write(good);
    const [declaration] = readDeclarations(folder);
    expect(declaration).toMatchObject({
      id: "SPEED.OF",
      exportName: "speedOf",
      topic: "some",
      description: 'Gives something, "so" & so on.',
      remarks: "Inside a table write INDEX(REAM.SPEED.OF([@Size]),1,2) as a person would.",
      returns: "Something, mm or in",
      row: [],
      sources: ["practice", "derived"],
      faults: [],
      examples: [
        { formula: "=REAM.SPEED.OF(1)", result: "2" },
        { formula: '=REAM.SPEED.OF("a // b")', result: '"ok"' },
      ],
      parameters: [
        { name: "size", description: "Size, mm or in", optional: false, repeating: false },
        { name: "units", description: '"mm" or "in"; "mm" if omitted', optional: true, repeating: false },
      ],
    });
  });

  test("becomes metadata that takes matrices and errors, and no rich data", async () => {
    write(good);
    const metadata = await buildMetadata(folder, "https://host.example");
    expect(Object.keys(metadata)).toEqual(["allowErrorForDataTypeAny", "functions"]);
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
    expect(metadata.functions[0]).toEqual({
      id: "SPEED.OF",
      name: "SPEED.OF",
      description: 'Gives something, "so" & so on.',
      helpUrl: "https://host.example/reference/SPEED.OF.html",
      parameters: [
        { name: "size", description: "Size, mm or in", type: "any", dimensionality: "matrix" },
        {
          name: "units",
          description: '"mm" or "in"; "mm" if omitted',
          type: "any",
          dimensionality: "matrix",
          optional: true,
        },
      ],
      result: { dimensionality: "matrix" },
    });
  });

  test("of a row function says what its cells are and how to take one", async () => {
    write(good.replace(" * @returns", " * @row least size, greatest size\n * @returns"));
    const [{ description }] = (await buildMetadata(folder)).functions;
    expect(description).toBe(
      'Gives something, "so" & so on. Cells: least size, greatest size. ' +
        "Inside a table: INDEX(REAM.SPEED.OF([@Size]),1,2).",
    );
  });

  test("an argument named like a word of the language loses the _ behind it", async () => {
    write(good.replaceAll("size: any", "class_: any").replaceAll("@param size", "@param class_"));
    const [{ parameters }] = (await buildMetadata(folder)).functions;
    expect(parameters.map(({ name }) => name)).toEqual(["class", "units"]);
  });

  test("is imported and registered with its sources", () => {
    write(good);
    const module = entryModule(readDeclarations(folder));
    expect(module).toContain("import { speedOf as call0 }");
    expect(module).toContain('register("SPEED.OF", call0, ["practice","derived"], [');
  });

  test("may have helpers beside it that are no functions of the sheet", async () => {
    write(`${good}\nexport function helper(size: string): string {\n  return size;\n}\n`);
    expect((await buildMetadata(folder)).functions.map(({ id }) => id)).toEqual(["SPEED.OF"]);
  });
});

const edited = (from: string | RegExp, to: string) =>
  good.replace(from, to).replaceAll("REAM.SPEED.OF", "REAM.SPEED.OF");
const renamed = (id: string) => good.replaceAll("SPEED.OF", id);

const faults: [what: string, text: string, said: string][] = [
  ["a cell address as a name", renamed("RPM1"), "cell address"],
  ["a row and column as a name", renamed("R12C3"), "cell address"],
  ["an id of two letters", renamed("UP"), "3 to 64"],
  ["an id in small letters", renamed("Speed"), "capitals"],
  [
    "a required argument after an optional one",
    edited("(size: any[][], units?", "(size?: any[][], units"),
    "after an optional",
  ],
  ["no description", edited(/ \* Gives.*\n \*\n/, ""), "no description"],
  ["a @param for no parameter", edited("@param size Size", "@param width Size"), "width is for no parameter"],
  ["a parameter without a @param", edited(/ \* @param size.*\n/, ""), "size has no @param"],
  [
    "two @params for a parameter",
    edited(" * @returns", " * @param size Again, mm\n * @returns"),
    "two @param",
  ],
  ["a @param without a text", edited("@param size Size, mm or in", "@param size"), "@param size has no text"],
  ["a @param that disagrees on optional", edited("@param [units]", "@param units"), "disagree"],
  ["no @returns", edited(/ \* @returns.*\n/, ""), "no @returns"],
  ["no @example", edited(/ \* @example.*\n/g, ""), "no @example"],
  ["an example without a result", edited(" // 2", ""), "must read =FORMULA // result"],
  ["an example of another function", edited("=REAM.SPEED.OF(1)", "=REAM.OTHER(1)"), "does not call"],
  ["no source", edited(/ \* @see.*\n/, ""), "no @see"],
  ["a function that is not exported", edited("export function", "function"), "not exported"],
  ["a scalar parameter", edited("size: any[][]", "size: any"), "must be any[][]"],
  ["a parameter with a default", edited("units?: any[][]", "units: any[][] = []"), "default"],
  ["a scalar result", edited("): any[][] {", "): any {"), "result must be declared"],
  [
    "a repeating argument that is not last",
    edited("(size: any[][], units?", "(size: any[][][], units?"),
    "repeating parameter size is not the last",
  ],
  ["a name with spaces", edited("@customfunction SPEED.OF", "@customfunction SPEED.OF Speed"), "id alone"],
  ["one cell in a @row", edited(" * @returns", " * @row size\n * @returns"), "@row names one cell"],
  ["a description too long for Excel", edited("Gives something", `Gives ${"a ".repeat(600)}`), "over 1024"],
  ["a @param too long for Excel", edited("Size, mm or in", `Size, mm or in${" a".repeat(300)}`), "over 512"],
];

describe("the build fails on", () => {
  test.each(faults)("%s", async (_, text, said) => {
    expect(text).not.toBe(good);
    write(text);
    const failed = buildMetadata(folder);
    await expect(failed).rejects.toThrow(said);
    await expect(failed).rejects.toThrow("some.ts");
  });

  test("an arrow function, which the generator passes over in silence", async () => {
    write(
      `${good}${good.replace("SPEED.OF", "OTHER").replace(/export function[\s\S]*/, "export const other = (size: any[][]): any[][] => size;\n")}`,
    );
    await expect(buildMetadata(folder)).rejects.toThrow("2 @customfunction tags but 1");
  });

  test("one id in two files, naming both", async () => {
    write(good, "one.ts");
    write(good, "two.ts");
    await expect(buildMetadata(folder)).rejects.toThrow(
      /two\.ts: SPEED\.OF: is declared twice, see .*one\.ts/,
    );
  });

  test("two ids that Excel stores alike", async () => {
    write(good, "one.ts");
    write(renamed("SPEED_OF"), "two.ts");
    await expect(buildMetadata(folder)).rejects.toThrow(
      /two\.ts: SPEED_OF: is stored in a file as SPEED\.OF is/,
    );
  });

  test("no function at all", async () => {
    write("export const nothing = 1;\n");
    await expect(buildMetadata(folder)).rejects.toThrow("no function is declared");
  });

  test("several faults, and says all of them", async () => {
    write(renamed("UP").replace(/ \* @returns.*\n/, ""), "one.ts");
    write(edited(/ \* @example.*\n/g, ""), "two.ts");
    await expect(buildMetadata(folder)).rejects.toThrow(
      /one\.ts: UP: id[\s\S]*one\.ts: UP: no @returns[\s\S]*two\.ts/,
    );
  });
});

// The last column of a sheet is XFD, the last row 1048576.
test.each(["A1", "RPM1", "XFD1048576", "R1C1", "R12", "C3", "RC", "r1c1"])("%s is a cell address", (name) => {
  expect(isCellAddress(name)).toBe(true);
});
test.each(["XFE1", "A1048577", "A0", "SIZEAT20", "RPM", "RUNOUT", "CUTSOVER"])("%s is none", (name) => {
  expect(isCellAddress(name)).toBe(false);
});

test("a stored name has no dots", () => expect(storedName("Speed.Of")).toBe("SPEED_OF"));

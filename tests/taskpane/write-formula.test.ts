// tests: a function put into the active cell, for one cell and for a whole column.

import { describe, expect, test } from "vitest";
import { readDeclarations } from "../../src/build/declarations.ts";
import { paneHelp } from "../../src/build/pane-help.ts";
import { readReference, referenceTo } from "../../src/taskpane/actions/references.ts";
import {
  type Entry,
  literal,
  planFormula,
  putFormula,
  type Reach,
} from "../../src/taskpane/actions/write-formula.ts";
import { MemoryWorkbook, refusal } from "../support/memory-workbook.ts";

const { functions } = paneHelp(readDeclarations());
const described = (id: string) => functions.find((one) => one.id === id)!;

const sheet = () =>
  new MemoryWorkbook({
    Quote: {
      A1: 6000,
      B5: "Callout",
      B6: "12 H7",
      B7: "20 H7",
      B8: "8 H8",
      C6: 15,
      C7: 12,
      C8: 10,
      B10: "total",
      H6: "in the way",
      J6: "=REAM.RPM(1,2)",
    },
    "Bob's (2)": { A1: 10, A2: 12 },
  });

const entries = (...texts: (string | Entry)[]): Entry[] =>
  texts.map((entry) => (typeof entry === "string" ? { text: entry } : entry));

async function formula(id: string, at: string, reach: Reach, ...texts: (string | Entry)[]): Promise<string> {
  const workbook = sheet().select(at);
  return (await planFormula(workbook, described(id), entries(...texts), reach)).formula;
}

describe("one cell", () => {
  test("values, texts, fixed cells and gaps", async () => {
    expect(await formula("RPM", "E6", "cell", "15", "10")).toBe("=REAM.RPM(15,10)");
    expect(await formula("RPM", "E6", "cell", " .5 ", "=B6/2", "", "in")).toBe('=REAM.RPM(.5,B6/2,,"in")');
    expect(await formula("RPM", "E6", "cell", "c6", "12,5", "$A$1")).toBe('=REAM.RPM(C6,"12,5",$A$1)');
    expect(await formula("LIMITS", "E6", "cell", '12 H7 "x"')).toBe('=REAM.LIMITS("12 H7 ""x""")');
  });

  test("of a taken column, the cell in its row", async () => {
    expect(await formula("RPM", "E7", "cell", "=C6:C8", "10")).toBe("=REAM.RPM(C7,10)");
    expect(await refusal(formula("RPM", "E9", "cell", "=C6:C8", "10"))).toMatch(/^E9 is in no row of C6:C8/);
  });

  test("a list stays whole", async () => {
    expect(await formula("TAYLORFIT", "E6", "cell", "=C6:C8", "=B6:B8")).toBe("=REAM.TAYLORFIT(C6:C8,B6:B8)");
  });

  test("H7 and D2 are words where a class or a material belongs, unless = is before them", async () => {
    expect(await formula("UPPERDEV", "E6", "cell", "12", "H7")).toBe('=REAM.UPPERDEV(12,"H7")');
    expect(await formula("UPPERDEV", "E6", "cell", "12", "=H7")).toBe("=REAM.UPPERDEV(12,H7)");
    expect(await formula("STARTSPEED", "E6", "cell", "D2")).toBe('=REAM.STARTSPEED("D2")');
  });

  test("cells on another sheet carry its name, quoted", async () => {
    expect(await formula("RPM", "E6", "cell", { text: "=A1", sheet: "Bob's (2)" }, "10")).toBe(
      "=REAM.RPM('Bob''s (2)'!A1,10)",
    );
    expect(await formula("RPM", "E6", "cell", "'Bob''s (2)'!A2", { text: "=C6", sheet: "Quote" })).toBe(
      "=REAM.RPM('Bob''s (2)'!A2,C6)",
    );
  });
});

describe("the whole column", () => {
  test("taken columns become one formula", async () => {
    const workbook = sheet().select("E6");
    const plan = await planFormula(workbook, described("LIMITS"), entries("=B6:B8"), "column");
    expect(plan.formula).toBe("=REAM.LIMITS(B6:B8)");
    await putFormula(workbook, plan);
    expect(workbook.at("E6")).toBe("=REAM.LIMITS(B6:B8)");
    expect(workbook.steps.length).toBe(1);
  });

  test("a cell in the row of the formula grows down to the last filled row, a setting stays", async () => {
    expect(await formula("RPM", "E6", "column", "=C6", "10", "=A1")).toBe("=REAM.RPM(C6:C8,10,A1)");
    expect(await formula("LIMITS", "E7", "column", "B7")).toBe("=REAM.LIMITS(B7:B8)");
    expect(await formula("RPM", "E6", "column", "$C$6", "=C6")).toBe("=REAM.RPM($C$6,C6:C8)");
  });

  test("results stand in the rows of what they come from", async () => {
    expect(await formula("RPM", "E7", "column", "=C1:C8", "=B6:B8")).toBe("=REAM.RPM(C7:C8,B7:B8)");
    expect(await formula("RPM", "E20", "column", "=C6:C8", "10")).toBe("=REAM.RPM(C6:C8,10)");
    expect(await refusal(formula("RPM", "E5", "column", "=C6:C8", "10"))).toMatch(
      /^E5 is above C6:C8.*row 6/,
    );
    const other = { text: "=A1:A2", sheet: "Bob's (2)" };
    expect(await formula("RPM", "E6", "column", other, "10")).toBe("=REAM.RPM('Bob''s (2)'!A1:A2,10)");
  });

  test("columns of different rows, and none at all, are refused", async () => {
    expect(await refusal(formula("RPM", "E6", "column", "=C6:C8", "=B6:B7"))).toContain(
      "C6:C8 has 3, B6:B7 has 2",
    );
    expect(await refusal(formula("RPM", "E6", "column", "15", "10"))).toMatch(/^No column is given/);
  });

  test("no room, a filled cell, and a circle are refused", async () => {
    // LIMITS gives two cells side by side: G6 needs H6.
    expect(await refusal(formula("LIMITS", "G6", "column", "=B6:B8"))).toMatch(/^H6 is in the way.*G6:H8/);
    expect(await refusal(formula("RPM", "H6", "cell", "15", "10"))).toMatch(/^H6 is filled/);
    expect(await refusal(formula("RPM", "C7", "column", "=C6:C8", "10"))).toMatch(/^C7 lies among the cells/);
    expect(await refusal(formula("LIMITS", "A6", "column", "=B6:B8"))).toMatch(/A6:B8, which meets B6:B8/);
  });

  test("a formula of ours is replaced", async () => {
    expect(await formula("RPM", "J6", "cell", "15", "10")).toBe("=REAM.RPM(15,10)");
  });
});

test("what is needed is asked for by its name", async () => {
  expect(await refusal(formula("RPM", "E6", "cell", "15", ""))).toMatch(/^diameter is needed/);
  expect(await refusal(planFormula(sheet().select(), described("RPM"), entries("1", "2"), "cell"))).toContain(
    "chart",
  );
});

test("values as a formula writes them", () => {
  for (const [text, written] of [
    ["12", "12"],
    ["-.5", "-.5"],
    ["1e3", "1e3"],
    ["15%", "15%"],
    ["true", "TRUE"],
    ['"in"', '"in"'],
    ["in", '"in"'],
    ["1/2", '"1/2"'],
    ['"', '""""'],
    ['a "b"', '"a ""b"""'],
  ])
    expect(literal(text)).toBe(written);
});

test("references are read and written", () => {
  const sheetName = "Job 7";
  for (const text of ["B3", "B3:D9", "AA10:AB11"]) {
    const { area, fixed } = readReference(text, sheetName)!;
    expect(fixed).toBe(false);
    expect(referenceTo(area, sheetName)).toBe(text);
  }
  expect(referenceTo(readReference("$b$3", "x")!.area, "x", true)).toBe("$B$3");
  expect(readReference("D9:B3", "x")!.area).toMatchObject({ row: 2, column: 1, rows: 7, columns: 3 });
  expect(referenceTo(readReference("B3", sheetName)!.area, "other")).toBe("'Job 7'!B3");
  expect(referenceTo(readReference("B3", "R1C1")!.area, "other")).toBe("'R1C1'!B3");
  for (const text of ["12 H7", "B", "B0", "H7/g6", "B3:", "1", ""])
    expect(readReference(text, "x")).toBeUndefined();
});

test("a formula with semicolons asks for commas; an array may have them", async () => {
  const workbook = sheet().select("E6");
  const plan = (text: string) => planFormula(workbook, described("RPM"), entries(text, "10"), "cell");
  expect(await refusal(plan("=MAX(C6;C7)"))).toBe(
    "surfaceSpeed: write commas between the arguments of a formula here, as in =MAX(A2,B2).",
  );
  expect((await plan('=MAX({15;12},LEN(";"))')).formula).toBe('=REAM.RPM(MAX({15;12},LEN(";")),10)');
});

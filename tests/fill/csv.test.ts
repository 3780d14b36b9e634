// tests: CSV files with columns added, read again by another reader.

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { fillCsv } from "../../src/fill/csv/fill-csv.ts";
import { cellValue, RecordReader } from "../../src/fill/csv/records.ts";
import { CellError } from "../../src/fill/formula/values.ts";
import { Refusal } from "../../src/workbook/workbook.ts";
import { functions, metadata } from "../support/small-functions.ts";

const folder = mkdtempSync(join(tmpdir(), "fill-csv-"));
afterAll(() => rmSync(folder, { recursive: true }));
let files = 0;

async function fill(content: string | Uint8Array, formulas: string[], units?: "mm" | "in") {
  const input = join(folder, `in-${++files}.csv`);
  const output = join(folder, `out-${files}.csv`);
  writeFileSync(input, content);
  const report = await fillCsv({ input, output, formulas, units }, functions, metadata, () => {});
  return { report, bytes: readFileSync(output), text: readFileSync(output, "utf8") };
}

const refusal = async (content: string | Uint8Array, ...formulas: string[]): Promise<string> => {
  const before = readdirSync(folder).length;
  try {
    await fill(content, formulas);
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    // Nothing but what the test itself has written.
    expect(readdirSync(folder).length).toBe(before + 1);
    return (error as Refusal).message;
  }
  throw new Error("not refused");
};

describe("columns are added", () => {
  test("to rows that stay as they are, to the letter", async () => {
    const rows = ['a,"b ""x"", c",7', '=1+1,@x,"8"', ",,", "-,+,0.5"];
    const { text } = await fill(["name,other,size", ...rows, ""].join("\n"), ["twice=REAM.TWICE(size)"]);
    const results = ["14", "16", "", "1"];
    expect(text).toBe(
      ["name,other,size,twice", ...rows.map((line, i) => `${line},${results[i]}`), ""].join("\n"),
    );
  });

  test("several, later ones from earlier ones, from constants and from the sheet's own functions", async () => {
    const { text, report } = await fill("size\n2\n3\n", [
      "twice=REAM.TWICE(size)",
      "first, second =REAM.PAIR(twice)",
      "four=REAM.TWICE(2)",
      'mark=IF(ROUND(twice/4,0)>1,"large, very",REAM.TWICE(REAM.TWICE(size)))',
    ]);
    expect(parse(text, { columns: true })).toEqual([
      { size: "2", twice: "4", first: "4", second: "5", four: "4", mark: "8" },
      { size: "3", twice: "6", first: "6", second: "7", four: "4", mark: "large, very" },
    ]);
    expect(report).toEqual({
      rows: 2,
      columns: ["twice", "first", "second", "four", "mark"],
      errors: 0,
      firstErrors: [],
    });
  });

  test("errors with their rows, which spoil only themselves", async () => {
    const { text, report } = await fill("size\n1\nx\n#N/A\n\n4\n", ["twice=REAM.TWICE(size)"]);
    expect(text).toBe("size,twice\n1,2\nx,#VALUE!\n#N/A,#N/A\n\n4,8\n");
    expect(report.errors).toBe(2);
    expect(report.firstErrors).toEqual([
      { row: 3, column: "twice", error: "#VALUE!", message: 'value "x" is not a number' },
      { row: 4, column: "twice", error: "#N/A", message: "" },
    ]);
  });

  test("under names in brackets, in any case, with other delimiters, line ends and a mark at the start", async () => {
    const { bytes } = await fill("\ufeffCut size;n\r\n2;a\r\n3", ["twice = =REAM.TWICE([cut SIZE])"]);
    expect(bytes.toString("utf8")).toBe("\ufeffCut size;n;twice\r\n2;a;4\r\n3;;6");
    const { text } = await fill("a1\tb\n2\tz,y\n", ["t=REAM.TWICE(A1)"]);
    expect(text).toBe("a1\tb\tt\n2\tz,y\t4\n");
  });

  test("in inches where functions are not told the units", async () => {
    const orders = ["a=REAM.TWICE(size)", 'b=REAM.TWICE(size,"mm")'];
    expect((await fill("size\n2\n", orders, "in")).text).toBe("size,a,b\n2,40,4\n");
    expect((await fill("size\n2\n", orders, "mm")).text).toBe("size,a,b\n2,4,4\n");
  });

  test("to a file without rows, and without a last line end", async () => {
    expect((await fill("size\n", ["t=REAM.TWICE(size)"])).text).toBe("size,t\n");
    expect((await fill("size", ["t=REAM.TWICE(size)"])).text).toBe("size,t");
    expect((await fill("size\r\n1\n2\r\n3", ["t=REAM.TWICE(size)"])).text).toBe("size,t\r\n1,2\n2,4\r\n3,6");
  });

  test("with decimal commas where the file has them, and where semicolons say so", async () => {
    const orders = ["t=REAM.TWICE(size)"];
    const given = async (content: string) => (await fill(content, orders)).text;
    expect(await given("size;n\n6,009;a\n7;b\n")).toBe("size;n;t\n6,009;a;12,018\n7;b;14\n");
    expect(await given("size;n\n2;a\n")).toBe("size;n;t\n2;a;4\n");
    expect((await fill("size;n\n1;a\n", ["t=size/4"])).text).toBe("size;n;t\n1;a;0,25\n");
    expect(await given("size;n\n6.009;a\n")).toBe("size;n;t\n6.009;a;12.018\n");
    expect(await given("size\tn\n6,009\ta\n")).toBe("size\tn\tt\n6,009\ta\t12,018\n");
    expect(await given("size\tn\n1\t2.5\n")).toBe("size\tn\tt\n1\t2.5\t2\n");
    // A point among commas may be thousands.
    expect(await given("size;n\n6,5;a\n7,5;b\n1.250;c\n")).toBe(
      "size;n;t\n6,5;a;13\n7,5;b;15\n1.250;c;#VALUE!\n",
    );
  });

  test("an odd cell spoils its row alone", async () => {
    const { text, report } = await fill('share,n\n5%,1\n2,2\n"1,250",3\n(4),4\n', ["t=share*2", "u=t+n"]);
    expect(text).toBe(
      'share,n,t,u\n5%,1,#VALUE!,#VALUE!\n2,2,4,6\n"1,250",3,#VALUE!,#VALUE!\n(4),4,#VALUE!,#VALUE!\n',
    );
    expect(report.firstErrors[0]).toMatchObject({ row: 2, column: "t" });
    expect((await fill("share\n5%\n", ["t=share*2"])).text).toBe("share,t\n5%,#VALUE!\n");
  });

  test("under a header with a line break in it", async () => {
    expect((await fill('"cut\nsize";n\n2;a\n', ["t=REAM.TWICE([cut\nsize])"])).text).toBe(
      '"cut\nsize";n;t\n2;a;4\n',
    );
  });

  test("to texts in either encoding, which keep their bytes", async () => {
    const western = Buffer.from("größe,n\nØ,2\n", "latin1");
    const { bytes } = await fill(western, ["t=REAM.TWICE(n)", 'u=[größe]&"é"']);
    expect(bytes.subarray(0, 7)).toEqual(western.subarray(0, 7));
    expect(bytes.toString("latin1").split("\n")[1]).toBe(`Ø,2,4,${Buffer.from("Øé").toString("latin1")}`);
    const { text } = await fill("größe,n\nØ,2\n", ['u=[größe]&"é"']);
    expect(text).toBe("größe,n,u\nØ,2,Øé\n");
  });

  test("over many batches and pieces of the file, as another reader reads them", async () => {
    const count = 25_003;
    const rows = Array.from(
      { length: count },
      (_, i) => `"part ""${i}"",\n${"x".repeat(i % 90)}",${i % 1000}`,
    );
    const { text, report } = await fill(`name,size\n${rows.join("\n")}\n`, ["twice=REAM.TWICE(size)"]);
    const read: string[][] = parse(text);
    expect(report.rows).toBe(count);
    expect(read.length).toBe(count + 1);
    for (const i of [1, 9_999, 10_000, 10_001, 20_000, count])
      expect(read[i]).toEqual([
        `part "${i - 1}",\n${"x".repeat((i - 1) % 90)}`,
        String((i - 1) % 1000),
        String(2 * ((i - 1) % 1000)),
      ]);
  });

  test("any table comes back with its cells", async () => {
    const field = fc.string({ maxLength: 8 }).map((text) => text.replace(/[\0\r]/g, ""));
    const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(field, field), { minLength: 1, maxLength: 6 }), async (table) => {
        const lines = table.map((line) => line.map(quoted).join(","));
        const { text } = await fill(`"a","b"\n${lines.join("\n")}\n`, ['c="x"']);
        expect(parse(text).slice(1)).toEqual(table.map((line) => [...line, "x"]));
      }),
      { numRuns: 30 },
    );
  });
});

describe("what cannot be done is refused, and nothing is written", () => {
  const csv = "size,name\n1,a\n2,b\n";
  test.each<[string, string | Uint8Array, string[], string]>([
    ["no name", csv, ["REAM.TWICE(size)"], "is no column"],
    ["no formula", csv, ["t="], "is no column"],
    [
      "an unknown column",
      csv,
      ["t=REAM.TWICE(width)"],
      'names the column "width", and the file has "size", "name"',
    ],
    ["a cell", csv, ["t=REAM.TWICE(A1)"], "names cells, not columns"],
    ["a name that is there", csv, ["Name=REAM.TWICE(size)"], 'a column "Name" already'],
    ["an unknown function", csv, ["t=REAM.NEVER(size)"], "REAM.NEVER, which is not known here"],
    ["a formula that breaks off", csv, ["t=REAM.TWICE(size"], "breaks off"],
    ["a sum", csv, ["t=SUM(size)"], "takes columns whole"],
    ["a list", csv, ["t=REAM.TOTAL(size)"], "takes columns whole"],
    ["too few names", csv, ["t=REAM.PAIR(size)"], "gives 2 columns, and 1 is named"],
    ["too many names", csv, ["a,b=REAM.TWICE(size)"], "gives 1 columns, and 2 are named"],
    ["a result of another length", csv, ["t=REAM.DOWN(5)"], "row by row"],
    [
      "a row that is too long",
      "a,b\n1,2\n1,2,3\n",
      ["t=REAM.TWICE(a)"],
      "row 3 has 3 fields, and the header has 2",
    ],
    [
      "a quote that does not end",
      'a,b\n1,"2\n3,4\n',
      ["t=REAM.TWICE(a)"],
      "row 2 has a quote that does not end",
    ],
    ["two columns of one name", "a,A\n1,2\n", ["t=REAM.TWICE(a)"], 'the column "a" twice'],
    ["an empty file", "", ["t=REAM.TWICE(a)"], "the file is empty"],
    ["a workbook", Uint8Array.of(0x50, 0x4b, 3, 4, 0), ["t=1"], "an archive"],
    ["UTF-16", Uint8Array.of(0xff, 0xfe, 0x61, 0), ["t=1"], "UTF-16"],
    ["bytes that are no text", "a\n1\0\n", ["t=1"], "no CSV text"],
  ])("%s", async (_, content, formulas, says) => {
    expect(await refusal(content, ...formulas)).toContain(says);
  });

  test("a file that is not there", async () => {
    const job = {
      input: join(folder, "none.csv"),
      output: join(folder, "none-out.csv"),
      formulas: ["t=1"],
      units: undefined,
    };
    await expect(fillCsv(job, functions, metadata, () => {})).rejects.toThrow("there is no such file");
  });
});

describe("fields", () => {
  test.each<[string, unknown]>([
    ["", null],
    ["12", 12],
    ["-1.5e3", -1500],
    [".5", 0.5],
    ["1,5", "1,5"],
    ["0x10", "0x10"],
    ["1e999", "1e999"],
    ["1/2", "1/2"],
    ["12 H7", "12 H7"],
    ["TRUE", true],
    ["false", false],
    ["True story", "True story"],
    ["#N/A", new CellError("#N/A")],
    ["#1", "#1"],
    ["=1+1", "=1+1"],
  ])("%s is read as %s", (field, value) => {
    expect(cellValue(field, ".")).toEqual(value);
  });

  test("are found wherever the file is cut into pieces", () => {
    const text = 'a,"b\r\n""c""",\r\n1,2,3\r\n"",,"x"';
    const whole = read([text]);
    expect(whole).toEqual([
      ["a", '"b\r\n""c"""', ""],
      ["1", "2", "3"],
      ['""', "", '"x"'],
    ]);
    for (let at = 0; at <= text.length; at++)
      expect(read([text.slice(0, at), text.slice(at)])).toEqual(whole);
  });

  function read(pieces: string[]): string[][] {
    const reader = new RecordReader(0x2c);
    const rows: string[][] = [];
    [...pieces, ""].forEach((piece, i) => {
      reader.read(piece, i === pieces.length, (all, { start, ends, fields }) => {
        rows.push(
          Array.from({ length: fields }, (_, k) => all.slice(k === 0 ? start : ends[k - 1] + 1, ends[k])),
        );
      });
    });
    return rows;
  }
});

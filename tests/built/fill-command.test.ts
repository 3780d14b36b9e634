// tests: `npm run fill` as a person runs it: files, what is printed, how it ends, and files that mean harm.

import { type ChildProcess, fork, spawn, spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { projectFolder } from "../../src/build/paths.ts";
import { compoundFile, hostileWorkbooks, lyingBomb } from "../support/hostile.ts";
import { smallWorkbook, textsIn } from "../support/package.ts";
import { longSuite, longTest, manyRows, share } from "../support/share.ts";

const folder = mkdtempSync(join(tmpdir(), "fill-command-"));
afterAll(() => rmSync(folder, { recursive: true }));
const at = (...names: string[]) => join(folder, ...names);

const loader = pathToFileURL(join(projectFolder, "node_modules", "tsx", "dist", "loader.mjs")).href;
const program = ["--import", loader, join(projectFolder, "src", "fill", "main.ts")];

interface Ended {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Most tests run in one process that is warm; `commandLine` starts one of its own. */
let warm: ChildProcess;
beforeAll(() => {
  warm = fork(join(projectFolder, "tests", "support", "fill-process.ts"), {
    cwd: folder,
    execArgv: ["--import", loader],
  });
});
afterAll(() => {
  warm.kill();
});

function fill(...args: string[]): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const broken = (code: number | null) => reject(new Error(`the process ended with ${code}`));
    warm.once("exit", broken);
    warm.once("message", (ended: Ended) => {
      warm.off("exit", broken);
      resolve(ended);
    });
    warm.send(args);
  });
}

function commandLine(...args: string[]): Ended {
  const { status, stdout, stderr } = spawnSync(process.execPath, [...program, ...args], {
    encoding: "utf8",
    cwd: folder,
  });
  return { status: status!, stdout, stderr };
}

const formula = (cell: string, text: string) => `<c r="${cell}"><f>${text}</f><v>0</v></c>`;
const quote = (...formulas: string[]) =>
  smallWorkbook({
    sheets: {
      Quote: `<row r="1"><c r="A1"><v>15</v></c><c r="B1"><v>10</v></c>${formulas.map((text, i) => formula(`${"CDEF"[i]}1`, text)).join("")}</row>`,
    },
  });
// 1000·15/(π·10)
const RPM = 477.464829275686;
const good = () => quote("_xldudf_REAM_RPM(A1,B1)", "ROUND(C1,0)");
const storedValue = (path: string, cell: string) =>
  new RegExp(`r="${cell}"[^>]*>(?:<f>[^<]*</f>)?<v>([^<]*)</v>`).exec(
    textsIn(readFileSync(path))["xl/worksheets/sheet1.xml"],
  )?.[1];

describe("a workbook", () => {
  test("is filled beside or in its place, and ends with 0", async () => {
    const original = good();
    writeFileSync(at("good.xlsx"), original);
    const beside = commandLine("good.xlsx", "out/filled.xlsx");
    expect(beside).toMatchObject({ status: 0, stderr: "" });
    expect(beside.stdout).toContain("Quote: 2 cells computed\n");
    expect(Number(storedValue(at("out", "filled.xlsx"), "C1"))).toBeCloseTo(RPM, 9);
    expect(storedValue(at("out", "filled.xlsx"), "D1")).toBe("477");
    expect(readFileSync(at("good.xlsx")).equals(original)).toBe(true);
    expect((await fill("good.xlsx")).status).toBe(0);
    expect(readFileSync(at("good.xlsx")).equals(readFileSync(at("out", "filled.xlsx")))).toBe(true);
  });

  test("becomes a copy that computes without the functions, beside the file and never in its place", async () => {
    const original = quote("_xldudf_REAM_RPM(A1,B1)", "_xldudf_REAM_STOCK(B1)");
    writeFileSync(at("own.xlsx"), original);
    const { status, stdout } = await fill("own.xlsx", "own-copy.xlsx", "--own-formulas");
    expect(status).toBe(0);
    expect(stdout).toContain("1 cell computed by the spreadsheet's own formulas\n");
    expect(stdout).toContain("  Quote!D1: 1 cell as a value: STOCK looks up a table");
    const sheet = textsIn(readFileSync(at("own-copy.xlsx")))["xl/worksheets/sheet1.xml"];
    expect(sheet).toContain("1000*A1/(PI()*B1)");
    expect(sheet).not.toMatch(/REAM/i);
    const { stdout: told } = await fill("own.xlsx", "own-copy.xlsx", "--own-formulas", "--json");
    expect(JSON.parse(told).files[0].own).toMatchObject({ formulas: 1, left: 0 });
    for (const names of [["own.xlsx"], ["own.xlsx", "./own.xlsx"]]) {
      const refused = await fill(...names, "--own-formulas");
      expect(refused).toMatchObject({ status: 2 });
      expect(refused.stderr).toContain("--own-formulas makes a copy. Name another file or folder for it");
    }
    expect(readFileSync(at("own.xlsx")).equals(original)).toBe(true);
  });

  test("with cells in error, or cells that are kept, ends with 1 and says which", async () => {
    writeFileSync(at("bad.xlsx"), quote('REAM.RPM("fast",B1)', "CUBEVALUE(C1)", "REAM.RPM(A1,B1)"));
    const { status, stdout } = await fill("bad.xlsx");
    expect(status).toBe(1);
    expect(stdout).toContain(
      "Quote: 2 cells computed, 1 in error, 1 cell not computed, with the old value kept\n",
    );
    expect(stdout).toMatch(/ {2}C1 #VALUE! surfaceSpeed "fast" .+\n/);
    expect(stdout).toContain("  D1 kept: the function CUBEVALUE\n");
    writeFileSync(at("kept.xlsx"), quote("NOW()+REAM.RPM(A1,B1)"));
    expect((await fill("kept.xlsx")).status).toBe(1);
  });

  test("is reported to machines", async () => {
    writeFileSync(at("json.xlsx"), quote("REAM.RPM(A1,0)"));
    const { status, stdout } = await fill("json.xlsx", "--json");
    expect(status).toBe(1);
    const [file] = JSON.parse(stdout.slice(stdout.indexOf("{"))).files;
    expect(file).toMatchObject({ file: at("json.xlsx"), output: at("json.xlsx"), written: true });
    expect(file.sheets[0]).toMatchObject({
      sheet: "Quote",
      computed: 1,
      errors: 1,
      firstErrors: [{ cell: "C1", error: "#VALUE!", message: expect.stringContaining("diameter") }],
    });
  });

  test("written by another program, with functions that spill", async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet("Limits");
    sheet.getCell("A1").value = "12 H7";
    for (const cell of ["C1", "D1"]) sheet.getCell(cell).value = 0;
    sheet.getCell("B1").value = { formula: "INDEX(_xldudf_REAM_LIMITS(A1),1,2)", result: 0 };
    sheet.getCell("C1").value = {
      formula: "_xldudf_REAM_LIMITS(A1)",
      ref: "C1:D1",
      shareType: "array",
      result: 0,
    } as never;
    writeFileSync(at("spill.xlsx"), new Uint8Array(await workbook.xlsx.writeBuffer()));
    expect((await fill("spill.xlsx")).status).toBe(0);
    // ISO 286: 12 H7 is +0.018/0.
    expect(["B1", "D1"].map((cell) => storedValue(at("spill.xlsx"), cell))).toEqual(["12.018", "12.018"]);
  });

  test("without our functions is not touched at all", async () => {
    writeFileSync(at("none.xlsx"), quote("1+1"));
    const before = statSync(at("none.xlsx")).mtimeMs;
    const { status, stdout } = await fill("none.xlsx");
    expect(status).toBe(0);
    expect(stdout).toContain("nothing to fill");
    expect(statSync(at("none.xlsx")).mtimeMs).toBe(before);
  });
});

describe("a folder", () => {
  test("of workbooks is filled, each in its turn, bad ones told apart", async () => {
    mkdirSync(at("many"));
    for (let i = 0; i < 5; i++) writeFileSync(at("many", `quote-${i}.xlsx`), good());
    writeFileSync(at("many", "locked.xlsx"), compoundFile("EncryptedPackage"));
    writeFileSync(at("many", "~$quote-0.xlsx"), "x");
    writeFileSync(at("many", "notes.txt"), "x");
    const { status, stdout, stderr } = await fill("many", "many-out");
    expect(status).toBe(2);
    expect(stderr).toContain("locked.xlsx: the workbook is locked with a password");
    expect(stdout.match(/2 cells computed/g)?.length).toBe(5);
    expect(readdirSync(at("many-out")).sort()).toEqual([0, 1, 2, 3, 4].map((i) => `quote-${i}.xlsx`));
    rmSync(at("many", "locked.xlsx"));
    expect((await fill("many")).status).toBe(0);
    expect(Number(storedValue(at("many", "quote-3.xlsx"), "C1"))).toBeCloseTo(RPM, 9);
  });

  test("without workbooks is refused", () => {
    mkdirSync(at("bare"));
    expect(commandLine("bare")).toMatchObject({
      status: 2,
      stdout: "",
      stderr: expect.stringContaining("holds no .xlsx"),
    });
  });
});

describe("a CSV file", () => {
  test("gets its columns", () => {
    writeFileSync(at("jobs.csv"), 'part,speed,diameter,callout\n1,15,10,12 H7\n2,"15",x,12 H7\n');
    const { status, stdout } = commandLine(
      "jobs.csv",
      "jobs-out.csv",
      "--formula",
      "rpm=REAM.RPM(speed,diameter)",
      "--formula",
      "lower,upper=REAM.LIMITS(callout)",
    );
    expect(status).toBe(1);
    expect(stdout).toContain("2 rows computed for rpm, lower, upper, 1 cells in error");
    expect(stdout).toMatch(/row 3, rpm #VALUE! diameter "x"/);
    const [header, first, second] = readFileSync(at("jobs-out.csv"), "utf8").split("\n");
    expect(header).toBe("part,speed,diameter,callout,rpm,lower,upper");
    expect(first).toMatch(/^1,15,10,12 H7,477\.46482927\d+,12,12\.018$/);
    expect(second).toBe('2,"15",x,12 H7,#VALUE!,12,12.018');
  });

  test("in inches, for machines, in its place", async () => {
    writeFileSync(at("inch.csv"), "speed,diameter\n50,.5\n");
    const { status, stdout } = await fill(
      "inch.csv",
      "--units",
      "in",
      "--json",
      "--formula",
      "rpm=REAM.RPM(speed,diameter)",
    );
    expect(status).toBe(0);
    expect(JSON.parse(stdout.slice(stdout.indexOf("{")))).toMatchObject({
      rows: 1,
      columns: ["rpm"],
      errors: 0,
    });
    // 12·50/(π·0.5)
    expect(Number(readFileSync(at("inch.csv"), "utf8").split("\n")[1].split(",")[2])).toBeCloseTo(
      381.971863,
      5,
    );
  });

  test("without a row for a value is refused, and left as it is", async () => {
    writeFileSync(at("sizes.csv"), "measured,callout\n12.001,12 H7\n12.002,12 H7\n");
    const { status, stderr } = await fill(
      "sizes.csv",
      "--formula",
      "a,b,c,d=REAM.CAPABILITY(measured,callout)",
    );
    expect(status).toBe(2);
    expect(stderr).toContain("CAPABILITY takes columns whole");
    expect(readFileSync(at("sizes.csv"), "utf8")).toBe("measured,callout\n12.001,12 H7\n12.002,12 H7\n");
  });
});

describe("what is asked for", () => {
  test.each<[string, string[], string]>([
    ["nothing", [], "no file is named"],
    ["too much", ["a.xlsx", "b.xlsx", "c.xlsx"], "one file too many"],
    ["an unknown option", ["--fast", "a.xlsx"], "--fast"],
    ["a file that is not there", ["none-there.xlsx"], "no such file"],
    ["another kind of file", [join(projectFolder, "package.json")], "no .xlsx, .xlsm or .csv file"],
    ["formulas for a workbook", ["good.xlsx", "--formula", "a=1"], "is for CSV files"],
    ["other units", ["jobs.csv", "--units", "km", "--formula", "a=1"], '--units is "km"'],
    ["no formula for a CSV", ["jobs.csv"], "needs a --formula"],
  ])("%s ends with 2 and one sentence", async (_, args, says) => {
    const { status, stdout, stderr } = await fill(...args);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toContain(says);
    expect(stderr.trim().split("\n").length).toBe(1);
  });

  test.each(["/dev/null", "a link to it"])(
    "an output that is no regular file is refused: %s",
    async (given) => {
      const output = given === "/dev/null" ? given : at("null");
      if (output !== given) symlinkSync("/dev/null", output);
      writeFileSync(at("speeds.csv"), "speed,diameter\n15,10\n");
      writeFileSync(at("good-output.xlsx"), good());
      for (const args of [
        ["speeds.csv", output, "--formula", "rpm=REAM.RPM(speed,diameter)"],
        ["good-output.xlsx", output],
      ]) {
        const { status, stderr } = await fill(...args);
        expect([status, stderr]).toEqual([2, expect.stringContaining("it is no regular file")]);
      }
      expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
    },
  );

  test("help is a page", async () => {
    expect(await fill("--help")).toMatchObject({
      status: 0,
      stdout: expect.stringContaining("npm run fill -- IN.xlsx"),
    });
  });
});

describe("hostile files", () => {
  beforeAll(() => mkdirSync(at("hostile")));

  longTest("are each refused in one sentence, with 2, and nothing is written", async () => {
    const files = Object.entries(hostileWorkbooks());
    const says = new Map<string, string>();
    files.forEach(([, hostile], i) => {
      const file = `file-${String(i).padStart(2, "0")}.xlsx`;
      writeFileSync(at("hostile", file), hostile.bytes);
      says.set(file, hostile.says);
    });
    const before = [...says.keys()].map((name) => readFileSync(at("hostile", name)));
    const { status, stdout, stderr } = await fill("hostile");
    expect(status).toBe(2);
    expect(stdout).toBe("");
    const lines = stderr.trim().split("\n");
    expect(lines.length, stderr).toBe(files.length);
    for (const [name, part] of says) {
      const line = lines.find((one) => one.includes(name));
      expect(line, name).toContain(part);
    }
    expect(readdirSync(at("hostile")).sort()).toEqual([...says.keys()]);
    [...says.keys()].forEach((name, i) => {
      expect(readFileSync(at("hostile", name)).equals(before[i]), name).toBe(true);
    });
    mkdirSync(at("few-hostile"));
    for (const name of [...says.keys()].slice(0, 3))
      copyFileSync(at("hostile", name), at("few-hostile", name));
    await fill("few-hostile", "hostile-out");
    expect(existsSync(at("hostile-out"))).toBe(false);
  });

  const large: readonly (readonly [name: string, make: () => Uint8Array])[] = [
    ["a zip bomb that lies", () => lyingBomb(1000)],
    ["empty rows without number", () => emptyRows()],
    ["a formula that asks for more memory than there is", () => greedy()],
  ];

  test.each(share([], large))("memory stays bounded: %s", async (name, make) => {
    const path = at(`${name.replaceAll(" ", "-")}.xlsx`);
    writeFileSync(path, make());
    const { peak } = await watched([path]);
    // In MiB.
    expect(peak).toBeLessThan(1500);
  });

  const emptyRows = () =>
    smallWorkbook({
      sheets: {
        A: `${Array.from({ length: manyRows }, (_, i) => `<row r="${i + 1}"/>`).join("")}<row r="1048576">${formula("A1048576", "REAM.RPM(15,10)")}</row>`,
      },
    });
  const greedy = () =>
    quote("REAM.RPM(A1:XFD1048576,B1)", 'REAM.LIMITS(REPT("9",32767))', "SUM(REAM.RPM(A:A,1:1))");
});

longSuite("an interruption", () => {
  const large = () => {
    const rows = Array.from({ length: manyRows / 50 }, (_, i) => {
      const row = i + 1;
      return `<row r="${row}"><c r="A${row}"><v>${row}</v></c>${formula(`B${row}`, `REAM.RPM(A${row},10)`)}</row>`;
    });
    return smallWorkbook({ sheets: { A: rows.join("") } });
  };

  test("leaves the old file or the new one, whole, whenever it comes", async () => {
    const path = at("large.xlsx");
    const before = large();
    writeFileSync(path, before);
    const { milliseconds } = await watched([path]);
    const after = readFileSync(path);
    expect(after.equals(before)).toBe(false);
    for (const part of [0.5, 0.8, 0.9, 0.95]) {
      writeFileSync(path, before);
      await killed([path], milliseconds * part);
      const now = readFileSync(path);
      expect(now.equals(before) || now.equals(after)).toBe(true);
    }
  });

  describe("takes away what was being written", () => {
    const content = `speed,diameter\n${"15,10\n".repeat(1_000_000)}`;
    const path = at("slow.csv");
    const link = at("linked", "to-slow.csv");
    beforeAll(() => {
      writeFileSync(path, content);
      mkdirSync(at("linked"));
      symlinkSync(path, link);
    });
    const left = () =>
      [...readdirSync(folder), ...readdirSync(at("linked"))].filter((name) => /slow/.test(name));

    const signals: readonly (readonly [signal: NodeJS.Signals, given: string])[] = [
      ["SIGTERM", link],
      ["SIGINT", path],
      ["SIGHUP", link],
    ];

    test.each(signals)("by %s at %s", async (signal, given) => {
      const child = spawn(process.execPath, [...program, given, "--formula", "rpm=REAM.RPM(speed,diameter)"]);
      const ended = new Promise((resolve) => child.on("exit", resolve));
      await until(() => left().some((name) => name.endsWith(".tmp")));
      child.kill(signal);
      expect(await ended).toBe(2);
      expect(left()).toEqual(["slow.csv", "to-slow.csv"]);
      expect(readFileSync(path, "utf8") === content).toBe(true);
      expect(lstatSync(link).isSymbolicLink()).toBe(true);
    });
  });
});

async function until(isSo: () => boolean): Promise<void> {
  for (let i = 0; i < 3000 && !isSo(); i++) await new Promise((resolve) => setTimeout(resolve, 10));
  expect(isSo()).toBe(true);
}

/** Runs the command to its end; the most memory it had, in MiB, and how long it took. */
async function watched(args: string[]): Promise<{ peak: number; milliseconds: number }> {
  const start = Date.now();
  const report = at("memory.txt");
  const tail = `process.on("exit", () => require("node:fs").writeFileSync(${JSON.stringify(report)}, String(process.resourceUsage().maxRSS)))`;
  writeFileSync(at("tail.cjs"), tail);
  const child = spawn(process.execPath, ["--require", at("tail.cjs"), ...program, ...args]);
  await new Promise((resolve) => child.on("exit", resolve));
  return { peak: Number(readFileSync(report, "utf8")) / 1024, milliseconds: Date.now() - start };
}

async function killed(args: string[], after: number): Promise<void> {
  const child = spawn(process.execPath, [...program, ...args]);
  const ended = new Promise((resolve) => child.on("exit", resolve));
  await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, after))]);
  child.kill("SIGKILL");
  await ended;
}

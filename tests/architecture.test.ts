// tests: the rules of the tree: which room may know which, where the host is named, what no file says.

import { dirname, join, relative } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { files, modules, namesIn, textOf } from "./support/modules.ts";

/** A module's room: `functions`, or the folder under src. */
const roomOf = (file: string) => (file.startsWith("functions/") ? "functions" : file.split("/")[1]);

/** What each room may import from; its own is understood. */
const knows: Readonly<Record<string, readonly string[]>> = {
  data: [],
  calc: ["data"],
  functions: ["data", "calc"],
  workbook: ["data", "calc", "functions"],
  papers: ["data", "calc", "functions", "workbook"],
  taskpane: ["data", "calc", "functions", "workbook", "papers", "fill"],
  reference: ["taskpane"],
  browser: ["data", "calc", "functions", "workbook", "papers", "taskpane", "fill"],
  build: ["data", "calc", "functions", "workbook", "papers", "taskpane", "browser"],
  fill: ["data", "calc", "functions", "workbook", "build"],
  bench: ["data", "calc", "functions", "build", "fill"],
};

interface Import {
  readonly file: string;
  readonly from: string;
}

/** What functions.json looks like, known to whoever reads it; a type is gone once it is built. */
const TYPES_OF_METADATA = /^import type \{[^}]*\} from "\.\.\/build\/metadata\.ts";$/gm;

/** Every import and re-export, static and dynamic, as it is written. */
const imports: readonly Import[] = modules.flatMap((file) =>
  ts
    .preProcessFile(textOf(file).replace(TYPES_OF_METADATA, ""), true, true)
    .importedFiles.map(({ fileName }) => ({ file, from: fileName })),
);
const isOwn = ({ from }: Import) => from.startsWith(".");
const targetOf = ({ file, from }: Import) => relative(".", join(dirname(file), from));

describe("rooms", () => {
  test("are all known, and each has modules", () => {
    const rooms = new Set(modules.map(roomOf));
    expect(Object.keys(knows)).toEqual(expect.arrayContaining([...rooms]));
    for (const room of ["data", "calc", "functions", "build"]) expect(rooms).toContain(room);
  });

  test("know only the rooms before them", () => {
    const faults = imports
      .filter(isOwn)
      .map((one) => ({ ...one, from: targetOf(one) }))
      .filter(({ file, from }) => /^(src|functions)\//.test(from) && roomOf(from) !== roomOf(file))
      .filter(({ file, from }) => !knows[roomOf(file)].includes(roomOf(from)));
    expect(faults).toEqual([]);
  });

  test("the pane knows of fill how it computes a formula, and nothing else", () => {
    const known = imports
      .filter(isOwn)
      .filter(({ file }) => roomOf(file) === "taskpane")
      .map(targetOf)
      .filter((target) => target.startsWith("src/fill/"));
    expect(known.length).toBeGreaterThan(0);
    for (const target of known)
      expect(target).toMatch(/^src\/fill\/(?:formula\/|grid\.ts$|worksheet-functions\.ts$)/);
  });

  test("do not reach outside src and functions", () => {
    const faults = imports
      .filter(isOwn)
      .filter((one) => !/^(src|functions)\//.test(targetOf(one)))
      .filter(({ file }) => roomOf(file) !== "build" && roomOf(file) !== "browser");
    expect(faults).toEqual([]);
  });

  test("data, calc and functions need no package", () => {
    const packages = imports.filter(
      (one) => !isOwn(one) && ["data", "calc", "functions"].includes(roomOf(one.file)),
    );
    expect(packages).toEqual([]);
  });

  test("zod stays where data comes in from outside", () => {
    const users = imports.filter(({ from }) => /^zod($|\/)/.test(from)).map(({ file }) => file);
    expect(users.length).toBeGreaterThan(0);
    for (const file of users) expect(file).toMatch(/^src\/(?:workbook|taskpane\/help|browser|fill|build)/);
  });

  test("imports between modules name the file with its ending", () => {
    const faults = imports.filter(isOwn).filter(({ from }) => !/\.[a-z]+$/.test(from));
    expect(faults).toEqual([]);
  });
});

/** The modules in whose code (not comments, texts or types of another library) a global is named. */
const modulesNaming = (name: string) => modules.filter((file) => namesIn(file).has(name));

describe("the host", () => {
  test("CustomFunctions is named in functions, in the browser workbook's registration and where built code is run", () => {
    const allowed = /^functions\/|^src\/browser\/(shim|main|register-functions)\.ts$|^src\/(build|bench)\//;
    const users = modulesNaming("CustomFunctions");
    expect(users).toEqual(expect.arrayContaining(["functions/cells.ts", "functions/register.ts"]));
    expect(users.filter((file) => !allowed.test(file))).toEqual([]);
  });

  test.each(["Office", "Excel"])(
    "%s is named in the Excel workbook and the start of the pane alone",
    (name) => {
      const allowed = /^src\/workbook\/excel|^src\/taskpane\/(page|start)\.ts$/;
      expect(modulesNaming(name).filter((file) => !allowed.test(file))).toEqual([]);
    },
  );

  test("calc and functions know no clock, chance, locale, network or page", () => {
    for (const name of ["Date", "performance", "Intl", "fetch", "document", "process", "toLocaleString"]) {
      const users = modulesNaming(name).filter((file) =>
        ["data", "calc", "functions"].includes(roomOf(file)),
      );
      expect(users, name).toEqual([]);
    }
    const chance = modules.filter((file) => textOf(file).includes("Math.random"));
    expect(chance.filter((file) => !/^src\/(build|bench)\//.test(file))).toEqual([]);
  });
});

describe("files", () => {
  test.each(modules)("%s says in its first line what room it is in", (file) => {
    expect(textOf(file).startsWith(`// ${roomOf(file)}: `)).toBe(true);
  });

  test.each(modules)("%s has a name in kebab-case", (file) => {
    expect(file.split("/").at(-1)).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*(\.test)?\.ts$/);
  });

  /** A table is as long as what it lists; the vocabulary of the arguments is one. */
  const isTable = (file: string) => file.startsWith("src/data/") || file === "functions/arguments.ts";

  /** Lines that are neither empty nor comment: what a declaration says in its doc comment is no code. */
  const linesOfCode = (text: string) =>
    text
      .replace(/^\s*\/\*\*?[\s\S]*?\*\/\s*$/gm, "")
      .split("\n")
      .filter((line) => /\S/.test(line) && !/^\s*\/\//.test(line)).length;

  test("a module has at most 250 lines of code, unless it is a table", () => {
    const long = modules.filter((file) => !isTable(file) && linesOfCode(textOf(file)) > 250);
    expect(long).toEqual([]);
  });

  const words = [
    "trans" + "cript",
    "seed " + "document",
    "/wo" + "rk/",
    "/fa" + "rm/",
    "/ho" + "me/",
    "registry\\.np" + "mjs",
    "TO" + "DO",
    "FIX" + "ME",
  ];
  const readable = files.filter((file) => !/\.(png|ico|svg|xlsx|woff2?)$|^package-lock\.json$/.test(file));

  test("no file names the place where it was made, or work left over", () => {
    const pattern = new RegExp(
      words.map((word) => (/^\w/.test(word) ? `\\b${word}\\b` : word)).join("|"),
      "i",
    );
    const faults = readable.flatMap((file) => {
      const found = pattern.exec(textOf(file));
      return found ? [`${file}: ${found[0]}`] : [];
    });
    expect(faults).toEqual([]);
  });

  test("no test is left out, and none runs alone", () => {
    const pattern = /\b(test|describe|it)\.(only|skip|to[d]o)\(/;
    expect(files.filter((file) => file.endsWith(".test.ts") && pattern.test(textOf(file)))).toEqual([]);
  });

  test("every golden file names its source on its first line", () => {
    const golden = files.filter((file) => /^tests\/golden\/.*\.csv$/.test(file));
    expect(golden.length).toBeGreaterThan(10);
    for (const file of golden) expect(textOf(file).split("\n")[0], file).toMatch(/^# source: \S/);
  });

  test("every golden file is run by a test", () => {
    const tests = files.filter((file) => /^tests\/.*\.ts$/.test(file)).map(textOf);
    const golden = files.flatMap((file) => /^tests\/golden\/(.*)\.csv$/.exec(file)?.[1] ?? []);
    const idle = golden.filter((name) => !tests.some((text) => text.includes(`"${name}"`)));
    expect(idle).toEqual([]);
  });
});

// tests: our functions written in the spreadsheet's own, computed by LibreOffice over random inputs, blanks and figures
// that they refuse among them: the same number, or an error where ours shows one.

import * as reader from "@e965/xlsx";
import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { vocabulary } from "../../functions/arguments.ts";
import { fillWorkbook } from "../../src/fill/fill-workbook.ts";
import { loadFunctions } from "../../src/fill/load-functions.ts";
import { knownFunctions } from "../../src/workbook/own-formulas/known.ts";
import { ownFormulas } from "../../src/workbook/own-formulas/own-formula.ts";
import { ownCells } from "../../src/workbook/own-formulas/rewrite.ts";
import { cellName } from "../../src/workbook/xlsx/addresses.ts";
import { joined } from "../support/package.ts";
import { sheet as called, isError } from "../support/sheet.ts";
import { converted } from "./office.ts";

const ROWS = 60;
/** Where the inputs of a row begin, behind the results. */
const INPUTS = 6;
/** A generator of its own, so that a failure comes again. */
let state = 20_261_126;
const random = () => {
  state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
  return state / 2_147_483_648;
};
const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)];

/** Pairs of units that CONVERT knows, of one kind or not. */
const UNITS = ["mm", "in", "um", "thou", "C", "F", "m/min", "sfm", "bar", "psi"];

function input(name: string): number | string | undefined {
  if (name === "units") return pick(["mm", "in", "inch", " IN ", "metric", "furlong", undefined, undefined]);
  if (name === "toolMaterial") return pick(["steel", "carbide", "HSS", "wood", undefined]);
  const { accepts } = vocabulary[name as keyof typeof vocabulary];
  if (random() < 0.08) return pick([undefined, undefined, 0, -1, 1, 1.5]);
  if (/^at\d/.test(name)) return Math.round(random() * 30 - 10) / 1000;
  if (name === "flutes") return pick([3, 5, 6, 7, 9]);
  if (name === "angle") return pick([60, 107, 108, 110, 130, undefined]);
  if (/^angle\d$/.test(name)) return pick([0, 45, 90, 180, 270, undefined]);
  if (/degrees/.test(accepts)) return Math.round(random() * 90 + 80);
  if (/whole/.test(accepts)) return 1 + Math.floor(random() * 12);
  if (/share|between 0 and 1|under 1|up to 1/.test(accepts)) return Math.round(random() * 90 + 5) / 100;
  return Math.round(10 ** (random() * 4 - 1) * 1000) / 1000;
}

interface Asked {
  readonly label: string;
  readonly address: string;
  readonly ours: unknown;
}

/** What a cell of the recalculated file shows that ours does not. */
function differences(
  asked: readonly Asked[],
  computed: Record<string, { t?: string; v?: unknown }>,
): string[] {
  return asked.flatMap(({ label, address, ours }) => {
    const { t, v = "" } = computed[address] ?? {};
    const told = `${label}: ${t} ${v}, ours ${isError(ours) ? ours.code : JSON.stringify(ours)}`;
    if (isError(ours)) return t === "e" ? [] : [told];
    if (ours === "") return v === "" && t !== "e" ? [] : [told];
    const off = Math.abs(Number(v) - Number(ours));
    return t === "n" && off <= 1e-9 * Math.max(1, Math.abs(Number(ours))) ? [] : [told];
  });
}

async function recalculated(book: ExcelJS.Workbook) {
  const file = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  return reader.read(converted(file, "xlsx")).Sheets.Own;
}

test("every function that can be written so gives what ours gives", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Own");
  const asked: Asked[] = [];
  let row = 0;
  for (const [id, { required, optional, words = [], given }] of knownFunctions)
    for (let at = 0; at < ROWS; at++, row++) {
      const names = [...required, ...optional];
      const values = names.map((name) => (words.includes(name) && !given ? pick(UNITS) : input(name)));
      const args = names.map((name, index) => {
        if (index >= required.length && random() < 0.3) return "";
        if (words.includes(name) && !given) return `"${values[index]}"`;
        if (name === "units" && random() < 0.6) return pick(["", '"mm"', '"in"']);
        return cellName(row, INPUTS + index);
      });
      const formulas = ownFormulas(id, args);
      const ours = called(
        id,
        ...names.map((_, index) => {
          if (args[index] === "") return undefined;
          return args[index].startsWith('"') ? args[index].slice(1, -1) : (values[index] ?? null);
        }),
      )[0];
      // Units of two kinds: ours shows an error, and there is no such formula.
      if ("why" in formulas && id === "CONVERT" && isError(ours[0])) continue;
      if ("why" in formulas) throw new Error(`${id}(${args.join(",")}): ${formulas.why}`);
      values.forEach((value, index) => {
        if (value !== undefined) sheet.getCell(row + 1, INPUTS + index + 1).value = value;
      });
      for (const [along, formula] of formulas.entries()) {
        sheet.getCell(row + 1, along + 1).value = { formula };
        asked.push({
          label: `${id}(${args.join(",")}) ${JSON.stringify(values)}[${along}] ${formula}`,
          address: cellName(row, along),
          ours: ours[along] ?? ours[0],
        });
      }
    }
  expect(differences(asked, await recalculated(book))).toEqual([]);
}, 120_000);

test("a fit, a range of lives and a stack-up give what ours give", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Own");
  const asked: Asked[] = [];
  for (let at = 0; at < ROWS; at++) {
    const height = 2 + Math.floor(random() * 5);
    const top = at * 10;
    const speeds = Array.from({ length: height }, () =>
      random() < 0.1 ? null : Math.round(15 + random() * 20),
    );
    const lives = speeds.map((speed) =>
      random() < 0.1 ? null : Math.round(((60 / (speed ?? 20)) ** 4 * (0.8 + random() * 0.4) + 1) * 10) / 10,
    );
    const column = (cells: readonly unknown[]) => cells.map((one) => [one]);
    speeds.forEach((speed, down) => {
      if (speed !== null) sheet.getCell(top + down + 1, INPUTS + 1).value = speed;
      if (lives[down] !== null) sheet.getCell(top + down + 1, INPUTS + 2).value = lives[down];
    });
    const range = (along: number) =>
      `${cellName(top, INPUTS + along)}:${cellName(top + height - 1, INPUTS + along)}`;
    const calls: [string, string[], unknown[]][] = [
      ["TAYLORFIT", [range(0), range(1)], [column(speeds), column(lives)]],
      ["LIFERANGE", [range(1)], [column(lives)]],
      ["LIFERANGE", [range(1), "0.9"], [column(lives), 0.9]],
      ["CUTSOVER", [range(0), "14.2"], [column(speeds), 14.2]],
      ["CUTSOVER", [range(0), "0.5", '"in"'], [column(speeds), 0.5, "in"]],
      ["STACKUP", [range(0), "3"], [column(speeds), 3]],
    ];
    for (const [line, [id, args, given]] of calls.entries()) {
      const formulas = ownFormulas(id, args) as string[];
      const ours = called(id, ...given)[0];
      for (const [along, formula] of formulas.entries()) {
        sheet.getCell(top + line + 1, along + 1).value = { formula };
        asked.push({
          label: `${id} ${JSON.stringify(given)} ${formula}`,
          address: cellName(top + line, along),
          ours: ours[along] ?? ours[0],
        });
      }
    }
  }
  expect(differences(asked, await recalculated(book))).toEqual([]);
}, 120_000);

test("a column of them gives what one call over the column gives, empty rows among them", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Own");
  const asked: Asked[] = [];
  const height = 8;
  const columns = [INPUTS, INPUTS + 1, INPUTS + 2, INPUTS + 3].map((along) =>
    Array.from({ length: height }, (_, at) =>
      at === 3 ? null : at === 5 && along > INPUTS ? null : Math.round(random() * 400 + 10) / 10,
    ),
  );
  const units = Array.from({ length: height }, (_, at) => (at === 3 ? null : pick(["mm", "in", null])));
  const range = (along: number) => `${cellName(0, INPUTS + along)}:${cellName(height - 1, INPUTS + along)}`;
  [...columns, units].forEach((cells, along) => {
    cells.forEach((cell, at) => {
      if (cell !== null) sheet.getCell(at + 1, INPUTS + along + 1).value = cell;
    });
  });
  const column = (along: number) => columns[along].map((one) => [one]);
  const calls: [string, string, unknown[]][] = [
    ["RPM", `${range(0)},10`, [column(0), 10]],
    [
      "RPM",
      `${range(0)},${range(1)},,${range(4)}`,
      [column(0), column(1), undefined, units.map((one) => [one])],
    ],
    ["FEEDRATE", `0.2,${range(1)}`, [0.2, column(1)]],
    ["CONVERT", `${range(0)},"in","mm"`, [column(0), "in", "mm"]],
    ["CLEANUP", `${range(0)},0.05`, [column(0), 0.05]],
    ["TOOLSNEEDED", `${range(2)},${range(3)},2`, [column(2), column(3), 2]],
  ];
  calls.forEach(([id, args, given], block) => {
    const own = ownCells(`=REAM.${id}(${args})`);
    if ("why" in own) throw new Error(own.why);
    const ours = called(id, ...given);
    own.cells.forEach((cells, down) => {
      cells.forEach((formula, along) => {
        const [row, at] = [block * 10 + 20 + down, along];
        sheet.getCell(row + 1, at + 1).value = { formula: formula.slice(1) };
        asked.push({
          label: `${id}(${args}) row ${down} ${formula}`,
          address: cellName(row, at),
          ours: ours[down][along],
        });
      });
    });
  });
  expect(differences(asked, await recalculated(book))).toEqual([]);
}, 120_000);

test("the copy that fill makes follows its inputs", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Own");
  sheet.getCell("A1").value = 15;
  sheet.getCell("B1").value = 10;
  sheet.getCell("C1").value = { formula: "_xldudf_REAM_RPM(A1,B1)" };
  sheet.getCell("D1").value = { formula: "_xldudf_REAM_FEEDRATE(0.2,C1)" };
  sheet.getCell("E1").value = { formula: "IF(D1>0,_xldudf_REAM_HOLETIME(30,D1,2,3),0)" };
  const { pieces } = fillWorkbook(
    new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer),
    loadFunctions(),
    () => {},
    true,
  );
  const copy = new ExcelJS.Workbook();
  await copy.xlsx.load(joined(pieces!) as never);
  const own = copy.getWorksheet("Own")!;
  own.getCell("B1").value = 12;
  // Without their old values, so that LibreOffice has to compute them.
  for (const name of ["C1", "D1", "E1"]) own.getCell(name).value = { formula: own.getCell(name).formula };
  const computed = await recalculated(copy);
  const rpm = (1000 * 15) / (Math.PI * 12);
  const expected = { C1: rpm, D1: 0.2 * rpm, E1: (2 * 60 * 35) / (0.2 * rpm) };
  for (const [name, value] of Object.entries(expected)) expect(computed[name].v).toBeCloseTo(value, 9);
}, 120_000);

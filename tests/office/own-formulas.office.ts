// tests: our functions written in the spreadsheet's own, computed by LibreOffice over random inputs, blanks and figures
// that they refuse among them: the same number, or an error where ours shows one.

import * as reader from "@e965/xlsx";
import ExcelJS from "exceljs";
import { expect, test } from "vitest";
import { vocabulary } from "../../functions/arguments.ts";
import { knownFunctions } from "../../src/workbook/own-formulas/known.ts";
import { ownFormula } from "../../src/workbook/own-formulas/own-formula.ts";
import { cell, isError } from "../support/sheet.ts";
import { converted } from "./office.ts";

const ROWS = 60;
/** A generator of its own, so that a failure comes again. */
let state = 20_261_126;
const random = () => {
  state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
  return state / 2_147_483_648;
};
const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)];

function input(name: string): number | undefined {
  const { accepts } = vocabulary[name as keyof typeof vocabulary];
  if (random() < 0.08) return pick([undefined, undefined, 0, -1, 1, 1.5]);
  if (/whole/.test(accepts)) return 1 + Math.floor(random() * 12);
  if (/share|between 0 and 1|under 1/.test(accepts)) return Math.round(random() * 90 + 5) / 100;
  return Math.round(10 ** (random() * 4 - 1) * 1000) / 1000;
}

test("every function that can be written so gives what ours gives", async () => {
  const book = new ExcelJS.Workbook();
  const sheet = book.addWorksheet("Own");
  const expected: { label: string; ours: unknown }[] = [];
  for (const [id, { required, optional }] of knownFunctions)
    for (let at = 0; at < ROWS; at++) {
      const row = expected.length + 1;
      const names = [...required, ...optional];
      const units = pick(["", '"mm"', '"in"']);
      const values = names.map((name) => (name === "units" ? undefined : input(name)));
      const left = optional.map(() => random() < 0.3);
      const args = names.map((name, index) => {
        if (name === "units") return units;
        if (index >= required.length && left[index - required.length]) return "";
        return `${String.fromCharCode(66 + index)}${row}`;
      });
      const formula = ownFormula(id, args);
      expect(formula, `${id}(${args.join(",")})`).toBeDefined();
      values.forEach((value, index) => {
        if (value !== undefined) sheet.getCell(row, index + 2).value = value;
      });
      sheet.getCell(row, 1).value = { formula: formula! };
      const given = names.map((name, index) => {
        if (name === "units") return units === "" ? undefined : units.slice(1, 3);
        return args[index] === "" ? undefined : (values[index] ?? null);
      });
      expected.push({ label: `${row} ${id}(${given.join(", ")}) ${formula}`, ours: cell(id, ...given) });
    }
  const file = new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
  const computed = reader.read(converted(file, "xlsx")).Sheets.Own;
  const wrong = expected.flatMap(({ label, ours }, at) => {
    const { t, v = "" } = computed[`A${at + 1}`] ?? {};
    const told = `${label}: ${t} ${v}, ours ${isError(ours) ? ours.code : JSON.stringify(ours)}`;
    if (isError(ours)) return t === "e" ? [] : [told];
    if (ours === "") return v === "" && t !== "e" ? [] : [told];
    const off = Math.abs(Number(v) - Number(ours));
    return t === "n" && off <= 1e-9 * Math.max(1, Math.abs(Number(ours))) ? [] : [told];
  });
  expect(wrong).toEqual([]);
});

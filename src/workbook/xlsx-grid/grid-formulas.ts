// workbook: formulas between an .xlsx file and the browser workbook's grid, which names errors and newer functions
// otherwise than a file does.

import { sheetReference } from "../workbook.ts";
import { isFormula } from "../xlsx/formula-syntax.ts";
import { calledAt, functionsIn, type Token, tokensOf } from "../xlsx/formula-tokens.ts";
import type { StoredNames } from "../xlsx/stored-names.ts";
import { withStoredSyntax } from "../xlsx/stored-syntax.ts";
import type { GridLibrary } from "./library.ts";
import { plainNative, storedNative } from "./new-functions.ts";

/** Functions that the grid lets go without their last argument, and what the format wants there. */
const lastArguments: ReadonlyMap<string, string> = new Map([
  ...["ROUND", "ROUNDUP", "ROUNDDOWN", "IFERROR"].map((name) => [name, "0"] as const),
  ...["FLOOR", "CEILING"].map((name) => [name, "1"] as const),
]);

/** A formula as the grid takes it, without "=". */
export function gridFormula(formula: string, names: StoredNames): string {
  const tokens = tokensOf(names.decode(formula));
  return tokens
    .map(({ kind, text }, i) => {
      if (kind === "error" && text.toUpperCase() === "#REF!") return "#REF";
      return calledAt(tokens, i) ? plainNative(text) : text;
    })
    .join("");
}

/** A formula of the grid, without "=", as a file holds it. */
export function fileFormula(formula: string, names: StoredNames): string {
  const tokens = tokensOf(withStoredSyntax(names.encode(formula)));
  let result = "";
  for (let i = 0; i < tokens.length; i++) {
    const { text } = tokens[i];
    const name = calledAt(tokens, i);
    if (text === "#" && tokens[i + 1]?.text.toUpperCase() === "REF") {
      result += "#REF!";
      i++;
    } else if (isSheetName(tokens, i)) result += sheetReference(text);
    else if (!name) result += missingArgument(tokens, i) + text;
    else result += name.startsWith("_xldudf_") ? name : storedNative(name);
  }
  return result;
}

/** The grid has names such as R1C1 and 2024 without the quotes that they need. */
const isSheetName = (tokens: readonly Token[], i: number): boolean =>
  (tokens[i].kind === "name" || tokens[i].kind === "number") &&
  tokens[i + 1]?.text === "!" &&
  tokens[i - 1]?.kind !== "bracket";

/** What goes before the parenthesis that token `i` closes: the last argument of its function, if that is missing. */
function missingArgument(tokens: readonly Token[], i: number): string {
  if (tokens[i].text !== ")") return "";
  let depth = 0;
  for (let at = i - 1; at >= 0; at--) {
    const { text } = tokens[at];
    if (text === ")" || text === "}") depth++;
    else if (text === "{") depth--;
    else if (text === "," && depth === 0) return "";
    else if (text === "(" && depth-- === 0) {
      const wanted = lastArguments.get(tokens[at - 1]?.text.toUpperCase() ?? "");
      return wanted === undefined || at === i - 1 ? "" : `,${wanted}`;
    }
  }
  return "";
}

/**
 * Whether a formula of the grid can stand in a file: it is whole, and has no function that the grid alone has. A name
 * that nobody knows may be a mistyped one: it stays, for it is easier to repair than to write anew.
 */
export function isForOthers(formula: string, { registries }: Pick<GridLibrary, "registries">): boolean {
  const registry = registries.functionRegistry as any;
  const isOfGrid = (name: string) => registry.contains(name) && !registry.get(name).isExported;
  return (
    isFormula(formula.replace(/^=/, "").replaceAll(/#REF(?!!)/gi, "#REF!")) &&
    !functionsIn(formula).some(isOfGrid)
  );
}

/** Whether a formula reads cells or names of another workbook: `[1]Sheet1!A1`, `'[1]Sheet 1'!A1`, `[1]!Rate`. */
export function readsOtherWorkbook(formula: string): boolean {
  if (!formula.includes("[")) return false;
  return tokensOf(formula).some(({ kind, text }, i, tokens) =>
    kind === "bracket"
      ? /^\[\d+\]$/.test(text) && tokens[i - 1]?.kind !== "name"
      : kind === "sheet" && /^'[^[]*\[[^\]]+\]/.test(text) && tokens[i + 1]?.text === "!",
  );
}

/** Whether a formula of a file names a table's cells. */
export const readsTable = (formula: string): boolean =>
  formula.includes("[") && tokensOf(formula).some(({ kind }) => kind === "bracket");

const takesRanges = new Set(
  `SUM SUMIF SUMIFS SUMPRODUCT AVERAGE AVERAGEIF AVERAGEIFS COUNT COUNTA COUNTBLANK COUNTIF COUNTIFS MIN MAX PRODUCT
MEDIAN STDEV STDEV.S STDEV.P VAR VAR.S VAR.P LARGE SMALL RANK MATCH VLOOKUP HLOOKUP AND OR ROWS COLUMNS`.split(
    /\s+/,
  ),
);
const givesOne = new Set(
  `ABS ACOS ASIN ATAN CEILING COS DATE DEGREES EXP FLOOR IF IFERROR INT ISBLANK ISERROR ISNUMBER LEFT LEN LN LOG LOG10
LOWER MID MOD MONTH NOT NOW PI POWER RADIANS RIGHT ROUND ROUNDDOWN ROUNDUP SIGN SIN SQRT SUBSTITUTE TAN TEXT TODAY TRIM
UPPER VALUE YEAR`.split(/\s+/),
);
const before = new Set(["(", ","]);
const after = new Set([")", ","]);

/**
 * Whether a formula that fills one cell never fills more, and never works through a range: every range in it is a
 * whole argument of a function that takes ranges, and every function is one that is known to give one value.
 */
export function fillsOneCell(formula: string): boolean {
  const tokens = tokensOf(formula).filter(({ kind }) => kind !== "space");
  const open: string[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const { kind, text } = tokens[i];
    if (text === "(") open.push(calledAt(tokens, i - 1 < 0 ? i : i - 1)?.toUpperCase() ?? "");
    else if (text === ")") open.pop();
    else if (text === "{" || text === "#" || kind === "bracket" || kind === "unknown") return false;
    else if (text === ":") {
      if (!takesRanges.has(open.at(-1) ?? "") || !isWholeArgument(tokens, i)) return false;
    } else if (kind === "name") {
      const called = calledAt(tokens, i)?.toUpperCase();
      if (called && !takesRanges.has(called) && !givesOne.has(called)) return false;
      if (!called && !isPlainName(tokens, i)) return false;
    }
  }
  return true;
}

function isWholeArgument(tokens: readonly Token[], colon: number): boolean {
  let start = colon - 1;
  if (tokens[start - 1]?.text === "!") start -= 2;
  return before.has(tokens[start - 1]?.text ?? "") && after.has(tokens[colon + 2]?.text ?? "");
}

/** A cell, a sheet before its mark, one end of a range, TRUE or FALSE: no defined name, which may be a range. */
function isPlainName(tokens: readonly Token[], i: number): boolean {
  const { text } = tokens[i];
  const beside = [tokens[i - 1]?.text, tokens[i + 1]?.text];
  if (beside[1] === "!" || beside.includes(":")) return true;
  return /^(?:\$?[A-Z]{1,3}\$?\d+|TRUE|FALSE)$/i.test(text);
}

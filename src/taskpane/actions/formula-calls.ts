// taskpane: the calls of our functions in a formula, with their arguments as they are written, and the cells it reads.

import { type Area, cutTo } from "../../workbook/workbook.ts";
import { type Token, tokensOf } from "../../workbook/xlsx/formula-tokens.ts";
import { readReference } from "./references.ts";

export interface FormulaCall {
  /** Without the namespace: "RPM". */
  readonly id: string;
  /** As written, "" for one left out. */
  readonly args: readonly string[];
}

/** All ways in which a sheet may hold the name of a function of ours, at the start of the name. */
const OURS = /^(?:_xlfn\.)?(?:_xludf\.)?(?:_xldudf_REAM_|REAM\.)/i;

let last: { readonly formula: string; readonly words: readonly Token[] } | undefined;

/** The words of a formula, which is asked several things in turn. */
function wordsOf(formula: string): readonly Token[] {
  if (last?.formula !== formula) last = { formula, words: tokensOf(formula.slice(1)) };
  return last.words;
}

/** The calls of our functions, in the order in which they start; those inside others too. */
export function ourCalls(formula: string): FormulaCall[] {
  if (!formula.startsWith("=") || !/ream[._]/i.test(formula)) return [];
  const tokens = wordsOf(formula);
  return tokens.flatMap((token, at) => {
    if (token.kind !== "name" || !OURS.test(token.text)) return [];
    const open = tokens[at + 1]?.kind === "space" ? at + 2 : at + 1;
    if (tokens[open]?.text !== "(") return [];
    return [{ id: token.text.replace(OURS, "").toUpperCase(), args: argumentsFrom(tokens, open + 1) }];
  });
}

/** Whether a formula calls one of our functions; names in quoted texts do not count. */
export const callsOurs = (formula: string): boolean => ourCalls(formula).length > 0;

function argumentsFrom(tokens: readonly Token[], start: number): string[] {
  const args: string[] = [""];
  for (let at = start, depth = 0; at < tokens.length; at++) {
    const { text, kind } = tokens[at];
    if (kind === "operator") {
      if (depth === 0 && text === ")") break;
      if (depth === 0 && text === ",") {
        args.push("");
        continue;
      }
      if (text === "(" || text === "{") depth++;
      else if (text === ")" || text === "}") depth--;
    }
    args[args.length - 1] += text;
  }
  const trimmed = args.map((arg) => arg.trim());
  return trimmed.length === 1 && trimmed[0] === "" ? [] : trimmed;
}

/** What a formula may read cells by without naming them: names, tables, and functions that make references. */
export function namesIn(formula: string): string[] {
  const tokens = wordsOf(formula).filter(({ kind }) => kind !== "space");
  return tokens.flatMap(({ kind, text }, at) => {
    const next = tokens[at + 1];
    if (kind === "bracket") return tokens[at - 1]?.kind === "name" || next?.text === "!" ? [] : [text];
    if (kind !== "name" || next?.text === "!") return [];
    if (next?.text === "(") return /^(?:INDIRECT|OFFSET)$/i.test(text) ? [text] : [];
    if (next?.kind === "bracket") return [text + next.text];
    const isCell = readReference(text, "") !== undefined || /^\$?[A-Z]{1,3}$/i.test(text);
    return isCell || /^(?:true|false)$/i.test(text) ? [] : [text];
  });
}

const BETWEEN = new Set(["name", "number", "sheet"]);

/** Every cell, range, column and row that a formula names, on the sheet that it stands on unless it says another. */
export function areasRead(
  formula: string,
  sheet: string,
  bounds: (sheet: string) => Area | undefined,
): Area[] {
  if (!formula.startsWith("=")) return [];
  const tokens = wordsOf(formula);
  const areas: Area[] = [];
  for (let at = 0; at < tokens.length; at++) {
    if (!BETWEEN.has(tokens[at].kind)) continue;
    let text = tokens[at].text;
    let end = at;
    while (/^[:!]$/.test(tokens[end + 1]?.text ?? "") && BETWEEN.has(tokens[end + 2]?.kind ?? "")) {
      text += tokens[end + 1].text + tokens[end + 2].text;
      end += 2;
    }
    const isCall = tokens[end + 1]?.text === "(";
    at = end;
    const area = isCall ? undefined : areaOf(text, sheet, bounds);
    if (area) areas.push(area);
  }
  return areas;
}

function areaOf(text: string, sheet: string, bounds: (sheet: string) => Area | undefined): Area | undefined {
  const cells = readReference(text, sheet);
  if (cells) return cells.area;
  // Whole columns and rows reach as far as there are cells.
  const [, quoted, plain, first, last] =
    /^(?:(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!)?\$?([A-Z]{1,3}|\d{1,7}):\$?([A-Z]{1,3}|\d{1,7})$/iu.exec(
      text,
    ) ?? [];
  if (!first || !last) return undefined;
  const on = quoted?.replaceAll("''", "'") ?? plain ?? sheet;
  const used = bounds(on);
  if (!used) return undefined;
  const isRow = /\d/.test(first);
  const corners = isRow ? `A${first}:XFD${last}` : `${first}1:${last}1048576`;
  const whole = readReference(corners, on)?.area;
  return whole && cutTo(whole, used);
}

// calc: how many holes a callout is for.

import { isDepthAhead } from "./depths.ts";
import type { Cursor } from "./quantities.ts";
import { isCounted, type Token } from "./tokens.ts";
import { areLimits, isJoint } from "./tolerances.ts";
import type { Written } from "./written.ts";

const isWhole = (token: Token | undefined) => token?.kind === "number" && /^\d{1,5}$/.test(token.text);

/** `4 HOLES` */
export const isCountAhead = (cursor: Cursor): boolean => isWhole(cursor.peek()) && isCounted(cursor.peek(1));

/** A count at reading: `4X`, `4 HOLES`, `(4)`, `4-⌀12`, `2x2-⌀6`. */
export function readCount(cursor: Cursor, written: Written): boolean {
  const [token, next] = [cursor.peek()!, cursor.peek(1)];
  if (token.kind !== "number" || cursor.is("diameter", -1)) return false;
  if (isCounted(next) && (isWhole(token) || next?.role !== "known")) {
    setCount(cursor, written, token.text);
    if (next?.role === "hole") written.holeWord ??= next.text;
    cursor.at += 2;
    return true;
  }
  if (!isWhole(token)) return false;
  // `4-PLACES`
  if (next?.text === "-" && next.joined && cursor.peek(2)?.joined && isCounted(cursor.peek(2))) {
    setCount(cursor, written, token.text);
    cursor.at += 3;
    return true;
  }
  if (cursor.isText("(", -1) && cursor.isText(")", 1)) {
    setCount(cursor, written, token.text);
    cursor.at += isCounted(cursor.peek(2)) ? 3 : 1;
    return true;
  }
  return readTimes(cursor, written) || readHyphen(cursor, written);
}

/** `4X`, and a class X8 that is none: `4X8 H7`. */
function readTimes(cursor: Cursor, written: Written): boolean {
  const { text } = cursor.peek()!;
  const next = cursor.peek(1);
  if (!written.size && next?.kind === "class" && next.joined && /^x/i.test(next.text)) {
    const after = cursor.peek(2);
    if (
      !after ||
      !(after.kind === "class" || after.kind === "sign" || after.kind === "plusminus" || after.text === "/")
    )
      refuseTimesOrClass(cursor, text, next.text);
    cursor.at++;
    cursor.splitTimes();
    cursor.at--;
  }
  const times = cursor.peek(1);
  if (times?.role !== "times") return false;
  const after = cursor.peek(2);
  if (written.size && after?.kind === "number" && (!times.joined || after.joined)) return false;
  if (after?.text === "°") return false;
  cursor.at += 2;
  // `2x2-⌀6`: two rows of two.
  const isProduct = isWhole(after) && cursor.isText("-", 1) && cursor.is("diameter", 2);
  if (isProduct) cursor.at += 2;
  setCount(cursor, written, isProduct ? String(Number(text) * Number(after!.text)) : text);
  written.isCountApart = !times.joined && after?.kind === "number" && !after.joined && !isProduct;
  return true;
}

function refuseTimesOrClass(cursor: Cursor, count: string, className: string): never {
  return cursor.refuse(
    `could be ${count} holes of ${className.slice(1)}, or size ${count} with the class ${className}. Write ${count}X ⌀${className.slice(1)} H7, or ${count} ${className}.`,
  );
}

/** `4-⌀12 H7`; two numbers that are limits stay limits: `12-⌀12.018`. */
function readHyphen(cursor: Cursor, written: Written): boolean {
  if (written.size || !cursor.isText("-", 1) || !cursor.is("diameter", 2)) return false;
  const { text } = cursor.peek()!;
  let ahead = 3;
  while (cursor.is("diameter", ahead)) ahead++;
  const other = cursor.peek(ahead);
  if (other?.kind !== "number") {
    if (other?.role !== "ream" && other?.role !== "extreme") return false;
  } else if (isLimitOf(text, other.text) && !hasOwnTolerance(cursor, ahead)) {
    return false;
  }
  setCount(cursor, written, text);
  cursor.at += 2;
  return true;
}

/** Whether the number `ahead` has a tolerance of its own: a class, a deviation, or another limit. */
const hasOwnTolerance = (cursor: Cursor, ahead: number) =>
  cursor.ahead(() => {
    cursor.at += ahead;
    const size = cursor.quantity();
    cursor.skip("diameter");
    if (isJoint(cursor) || cursor.is("extreme")) return true;
    if (!cursor.isKind("number"))
      return cursor.isKind("class") || cursor.isKind("sign") || cursor.isKind("plusminus");
    if (isDepthAhead(cursor)) return false;
    const { value, decimals } = cursor.quantity();
    return value === 0 || (decimals === size.decimals && areLimits(size.value, value));
  });

function isLimitOf(text: string, other: string): boolean {
  const decimal = other.replace(",", ".");
  return decimal.includes(".") && areLimits(Number(text), Number(decimal));
}

/** `QTY 4`, `Anzahl: 4`, `N°4 fori` */
export function readCountBefore(cursor: Cursor, written: Written): void {
  const { text } = cursor.take();
  if (cursor.isText(":") || cursor.isText("=")) cursor.take();
  if (!cursor.isKind("number"))
    cursor.refuse(`has ${text} without a number of holes after it. Write one, like 4X.`);
  setCount(cursor, written, cursor.take().text);
  if (isCounted(cursor.peek())) cursor.take();
}

/** `12 H7 x 4 PLACES`: behind the size, with the × before it. */
export function readCountBehind(cursor: Cursor, written: Written): boolean {
  if (!written.size || !isWhole(cursor.peek(1)) || !isCounted(cursor.peek(2))) return false;
  cursor.take();
  return readCount(cursor, written);
}

/** Counts said in a part of the note that is not read further. */
export function readDroppedCounts(cursor: Cursor, tokens: readonly Token[], written: Written): void {
  tokens.forEach((token, at) => {
    const next = tokens[at + 1];
    const isTimes = next?.role === "times" && tokens[at + 2]?.kind !== "number";
    if (isWhole(token) && (isCounted(next) || isTimes)) setCount(cursor, written, token.text);
  });
}

/** `12 H7 C'BORE 20 x 5 DP 4 HOLES`: a count at the end of the note is that of the hole, where it has none before. */
export function readCountAtEnd(cursor: Cursor, written: Written): void {
  const rest = cursor.tokens
    .slice(cursor.at)
    .filter(({ role, text }) => role !== "through" && role !== "known" && !"(),;".includes(text));
  if (written.count === undefined) readDroppedCounts(cursor, rest.slice(-2), written);
}

function setCount(cursor: Cursor, written: Written, text: string): void {
  const count = Number(text);
  if (!/^\d{1,5}$/.test(text) || count === 0)
    cursor.refuse(`has ${text} as a number of holes. Write a whole number of 1 or more.`);
  if (written.count !== undefined && written.count !== count)
    cursor.refuse(`has two numbers of holes, ${written.count} and ${count}. Write one.`);
  written.count = count;
}

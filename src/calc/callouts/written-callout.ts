// calc: a callout as it is written, part by part, before the parts are joined to a size with its deviations.

import {
  CIRCLE_WORDS,
  COUNTED,
  DEEP,
  DIAMETER,
  GEOMETRIC,
  IGNORED,
  LEAST,
  MODIFIERS,
  ROUGHNESS,
  ROUGHNESS_WORDS,
  STOP,
  THREAD,
  THROUGH,
  TIMES,
  TO,
  UNIT_WORDS,
} from "./drawing-words.ts";
import type { Cursor, Quantity } from "./quantities.ts";

export interface WrittenDeviation {
  readonly sign: 1 | -1;
  readonly quantity: Quantity;
}

export interface Written {
  size: Quantity | undefined;
  /** The other limit, where two limits are written. */
  limit: Quantity | undefined;
  /** One or two deviations, or ± one. */
  deviations: WrittenDeviation[];
  plusMinus: boolean;
  classes: string[];
  count: number;
  depth: Quantity | undefined;
  through: boolean;
  marks: string[];
}

/** Reads every part of a callout. @throws Problem "wrong" at what it cannot place */
export function readParts(cursor: Cursor): Written {
  const written: Written = {
    size: undefined,
    limit: undefined,
    deviations: [],
    plusMinus: false,
    classes: [],
    count: 1,
    depth: undefined,
    through: false,
    marks: [],
  };
  while (cursor.peek() && !cursor.is(STOP)) readPart(cursor, written);
  return written;
}

function readPart(cursor: Cursor, written: Written): void {
  const token = cursor.peek()!;
  if (token.kind === "number") readNumber(cursor, written);
  else if (token.kind === "class") readClass(cursor, written);
  else if (token.kind === "sign" || token.kind === "plusminus") readDeviations(cursor, written);
  else if (token.kind === "mark" || MODIFIERS.has(token.text)) written.marks.push(cursor.take().text);
  else if (GEOMETRIC.has(token.text)) skipFrame(cursor);
  else if (ROUGHNESS.has(token.text)) skipRoughness(cursor);
  else if (token.text === "ON") skipBoltCircle(cursor);
  else if (THREAD.has(token.text)) cursor.refuse("is a thread, not a reamed hole");
  else if (DIAMETER.has(token.text) || IGNORED.has(token.text)) cursor.take();
  else if (THROUGH.has(token.text)) {
    cursor.take();
    written.through = true;
  } else if (token.text === "↧" || TIMES.has(token.text) || DEEP.has(token.text)) {
    cursor.take();
    if (!cursor.isKind("number")) cursor.refuse(`has ${token.text} without a depth after it`);
    readDepth(cursor, written);
  } else if (UNIT_WORDS.has(token.text) && written.size && !written.size.units) {
    const units = token.text === "MM" ? "mm" : "in";
    cursor.take();
    written.size = { ...written.size, units };
  } else if (/^[A-Z]{1,2}$/.test(token.text) && written.size && cursor.isKind("number", 1))
    cursor.refuse(`can't be read at "${token.text}": write a class without a space, like H7`);
  else cursor.refuse(`can't be read at "${token.text}"`);
}

function readNumber(cursor: Cursor, written: Written): void {
  const isCount = cursor.is(COUNTED, 1) || (cursor.is(TIMES, 1) && !cursor.isKind("number", 2));
  if (isCount) {
    written.count = readCount(cursor);
    cursor.take();
  } else if (written.size === undefined) {
    readSize(cursor, written);
  } else if (isDepthAhead(cursor)) {
    readDepth(cursor, written);
  } else if (!readClassLimits(cursor, written)) readDeviations(cursor, written);
}

function readCount(cursor: Cursor): number {
  const { text } = cursor.take();
  const count = Number(text);
  if (!/^\d{1,5}$/.test(text) || count === 0)
    cursor.refuse(`has ${text} as a number of holes: write a whole number`);
  return count;
}

function isDepthAhead(cursor: Cursor): boolean {
  const start = cursor.at;
  try {
    cursor.quantity();
    cursor.skip(LEAST);
    return cursor.is(DEEP);
  } finally {
    cursor.at = start;
  }
}

function readDepth(cursor: Cursor, written: Written): void {
  if (written.depth) cursor.refuse("has two depths");
  written.depth = cursor.quantity();
  cursor.skip(LEAST);
  cursor.skip(DEEP);
}

/** What joins two limits. */
const JOINTS = new Set(["-", "/", ...TO]);

const areLimits = (first: number, second: number) =>
  Math.min(first, second) > 0 && Math.max(first, second) <= 1.2 * Math.min(first, second);

/** A size, or two limits: the larger at most 1.2 times the smaller. */
function readSize(cursor: Cursor, written: Written): void {
  written.size = cursor.quantity();
  const joint = cursor.peek();
  if (!joint || !JOINTS.has(joint.text)) return;
  const start = cursor.at;
  cursor.take();
  cursor.skip(DIAMETER);
  if (cursor.isKind("number")) {
    const limit = cursor.quantity();
    if (areLimits(written.size.value, limit.value)) {
      written.limit = limit;
      return;
    }
  }
  cursor.at = start;
  if (joint.text !== "-")
    cursor.refuse(`can't be read at "${joint.text}": two limits differ by 20 % at most`);
}

/** The limits of a class, written beside it: `12 H7 (12.018/12.000)`. They become deviations, which must be its own. */
function readClassLimits(cursor: Cursor, { size, limit, classes, deviations }: Written): boolean {
  if (classes.length === 0 || deviations.length > 0 || limit) return false;
  const start = cursor.at;
  const first = cursor.quantity();
  if (cursor.skip(JOINTS)) cursor.skip(DIAMETER);
  const limits = cursor.isKind("number") ? [first, cursor.quantity()] : [];
  const isLimit = ({ value, units }: Quantity) =>
    (units ?? size!.units) === size!.units && Math.abs(value - size!.value) <= size!.value / 4;
  if (limits.every(isLimit) && limits.some(({ decimals }) => decimals > 0)) {
    for (const quantity of limits) {
      const value = quantity.value - size!.value;
      deviations.push({ sign: value < 0 ? -1 : 1, quantity: { ...quantity, value: Math.abs(value) } });
    }
    return true;
  }
  cursor.at = start;
  return false;
}

/** `H7`, `H7/g6`, `RC4`; a letter x before a number is a depth once the size has its tolerance. */
function readClass(cursor: Cursor, written: Written): void {
  const { text } = cursor.peek()!;
  const hasTolerance = written.classes.length > 0 || written.deviations.length > 0 || written.limit;
  if (hasTolerance && /^x\d/i.test(text)) {
    cursor.splitToken(1);
    cursor.take();
    readDepth(cursor, written);
    return;
  }
  if (!written.size) {
    if (/^M\d/.test(text)) cursor.refuse("is a thread, not a reamed hole");
    // A letter for the diameter sign (`O12 H7`), or a radius.
    if (cursor.isKind("class", 1))
      cursor.refuse(`has ${text} for a size: write the diameter as a number, or with ⌀`);
    cursor.refuse(`has ${text} without a size before it: write 12 ${text}`);
  }
  if (written.classes.length > 0)
    cursor.refuse(`has two tolerance classes, ${written.classes[0]} and ${text}`);
  written.classes.push(cursor.take().text);
  if (cursor.peek()?.text === "/" && cursor.isKind("class", 1)) {
    cursor.take();
    written.classes.push(cursor.take().text);
  }
}

const SEPARATORS = new Set(["/", ",", ";"]);

function readDeviations(cursor: Cursor, written: Written): void {
  if (!written.size) cursor.refuse("has a deviation without a size before it");
  if (written.deviations.length > 0 || written.limit)
    cursor.refuse(`can't be read at "${cursor.peek()!.text}": the size has its tolerance already`);
  if (cursor.isKind("plusminus")) {
    cursor.take();
    if (!cursor.isKind("number")) cursor.refuse("has ± without a number after it");
    written.plusMinus = true;
    written.deviations.push({ sign: 1, quantity: cursor.quantity(true) });
    return;
  }
  for (let entry = 0; entry < 2; entry++) {
    const start = cursor.at;
    if (entry === 1) cursor.skip(SEPARATORS);
    const signed = cursor.isKind("sign");
    const sign = signed && cursor.take().text === "-" ? -1 : 1;
    if (!cursor.isKind("number")) {
      if (entry === 0) cursor.refuse(`has ${sign < 0 ? "-" : "+"} without a number after it`);
      cursor.at = start;
      return;
    }
    const quantity = cursor.quantity(true);
    if (!signed && quantity.value !== 0) {
      if (entry === 0) refuseUnsigned(quantity, written, cursor);
      cursor.at = start;
      return;
    }
    written.deviations.push({ sign, quantity });
  }
}

function refuseUnsigned(quantity: Quantity, { size, classes }: Written, cursor: Cursor): never {
  const limits = classes.length === 0 && areLimits(size!.value, quantity.value);
  const hint = limits
    ? `for two limits write ${size!.text}/${quantity.text}`
    : "a deviation needs its sign, a callout has one size";
  return cursor.refuse(`can't be read at "${quantity.text}": ${hint}`);
}

/** A tolerance frame: its value, modifiers and datum letters. */
function skipFrame(cursor: Cursor): void {
  cursor.take();
  let hasValue = false;
  for (let token = cursor.peek(); token; token = cursor.peek()) {
    const isValue = token.kind === "number" || DIAMETER.has(token.text);
    // An X before a number says how deep.
    const isDepth = TIMES.has(token.text) && cursor.isKind("number", 1);
    const isDatum = token.kind === "word" && /^(?:[A-Z]|[A-F]{2,4}|CZ)$/.test(token.text) && !isDepth;
    if (isValue && hasValue) return;
    if (!isValue && !isDatum && token.kind !== "mark" && !/^[|[\]-]$/.test(token.text)) return;
    hasValue ||= token.kind === "number";
    cursor.take();
  }
}

function skipRoughness(cursor: Cursor): void {
  cursor.take();
  cursor.skip(ROUGHNESS);
  if (cursor.isKind("number")) cursor.take();
  while (cursor.skip(ROUGHNESS_WORDS));
}

function skipBoltCircle(cursor: Cursor): void {
  cursor.take();
  while (cursor.skip(DIAMETER) || cursor.skip(CIRCLE_WORDS));
  if (!cursor.isKind("number")) cursor.refuse("has ON without a circle after it");
  cursor.quantity();
  while (cursor.skip(CIRCLE_WORDS));
}

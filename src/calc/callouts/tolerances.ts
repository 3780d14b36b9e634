// calc: the tolerance beside a size: a class, deviations, or limits beside a class.

import type { Cursor, Quantity } from "./quantities.ts";
import { isToleranced, type Written, type WrittenDeviation, type WrittenTolerance } from "./written.ts";

/** Two numbers that may be limits: the larger at most 1.2 times the smaller. */
export const areLimits = (first: number, second: number): boolean =>
  Math.min(first, second) > 0 && Math.max(first, second) <= 1.2 * Math.min(first, second);

/** What joins two limits. */
export const isJoint = (cursor: Cursor, ahead = 0): boolean =>
  cursor.is("joint", ahead) || /^[-/~÷]$/.test(cursor.peek(ahead)?.text ?? "");

/** One or two deviations with their signs, or ± one. Undefined where a number without a sign stands first. */
export function readTolerance(cursor: Cursor): WrittenTolerance | undefined {
  if (cursor.isKind("plusminus")) {
    cursor.take();
    if (!cursor.isKind("number")) cursor.refuse("has ± without a number after it. Write one, like ±0.01.");
    return { plusMinus: true, deviations: [{ sign: 1, quantity: cursor.quantity(true) }] };
  }
  const first = readDeviation(cursor);
  if (!first) return undefined;
  const second = cursor.attempt(() => {
    if (/^[/,;]$/.test(cursor.peek()?.text ?? "")) cursor.take();
    return readDeviation(cursor);
  });
  return { plusMinus: false, deviations: inOneUnit(second ? [first, second] : [first]) };
}

function readDeviation(cursor: Cursor): WrittenDeviation | undefined {
  return cursor.attempt(() => {
    const isSigned = cursor.isKind("sign");
    const sign = isSigned && cursor.take().text === "-" ? -1 : 1;
    if (!cursor.isKind("number")) return undefined;
    const quantity = cursor.quantity(true);
    if (isSigned && /^0\d/.test(quantity.text)) refuseLeadingZero(quantity.text, cursor);
    return isSigned || quantity.value === 0 ? { sign, quantity } : undefined;
  });
}

/** `-002`: a decimal mark is lost. */
const refuseLeadingZero = (text: string, cursor: Cursor): never =>
  cursor.refuse(`has a deviation of ${text}. Write its decimal point, like .${text} or 0.${text.slice(1)}.`);

/** `+15 µm/0`, `+40/+10 µm`: one µm is for both. */
function inOneUnit(deviations: WrittenDeviation[]): WrittenDeviation[] {
  if (!deviations.some(({ quantity }) => quantity.units === "µm")) return deviations;
  return deviations.map(({ sign, quantity }) => ({
    sign,
    quantity: { ...quantity, units: quantity.units ?? "µm" },
  }));
}

/** A tolerance, which is the size's unless it stands behind something else. */
export function readSizeTolerance(cursor: Cursor, written: Written): void {
  const { text, start, end } = cursor.peek()!;
  if (!written.size)
    cursor.refuse("has a deviation without a size before it. Write the size first, like 12 +0.018/0.");
  if (written.tolerance || written.limit)
    cursor.refuse(
      `can't be read at "${text}": the size has its tolerance already. Write one size with one tolerance.`,
    );
  refuseBehind(cursor, written);
  const isSign = cursor.isKind("sign");
  written.tolerance = readTolerance(cursor);
  if (written.tolerance) return;
  if (isSign) cursor.refuse(`has ${text} without a number after it. Write a deviation, like ${text}0.018.`);
  const number = cursor.plain.slice(start, end);
  const letters = cursor.peek(1);
  if (/^\d{1,2}$/.test(text) && letters?.joined && !letters.role && /^[A-Z]{1,2}$/.test(letters.text)) {
    const written = cursor.plain.slice(letters.start, letters.end);
    cursor.refuse(`has ${text}${written}. A class begins with its letter: is ${written}${text} meant?`);
  }
  cursor.refuse(
    written.classes.length === 0 && areLimits(written.size!.value, Number(text.replace(",", ".")))
      ? `can't be read at "${number}". For two limits write ${written.size!.text}/${number}.`
      : `can't be read at "${number}". A deviation needs its sign, and a callout has one size.`,
  );
}

/** A tolerance belongs to the dimension that it follows. */
function refuseBehind(cursor: Cursor, { behind, size }: Written): void {
  if (behind)
    cursor.refuse(
      `has "${cursor.peek()!.text}" behind ${behind}, so it is no tolerance of ${size!.text}. Write the tolerance next to the size.`,
    );
}

/** The limits of a class, beside it: `12 H7 (12.018/12.000)`. They become deviations, which must be its own. */
export function readClassLimits(cursor: Cursor, written: Written): boolean {
  const { size, limit, classes, tolerance } = written;
  if (!size || classes.length === 0 || tolerance || limit || written.behind) return false;
  const isLimit = ({ value, units }: Quantity) =>
    (units ?? size.units) === size.units && Math.abs(value - size.value) <= size.value / 4;
  const deviations = cursor.attempt(() => {
    const first = cursor.quantity();
    if (isJoint(cursor)) cursor.take();
    cursor.skip("diameter");
    const limits = cursor.isKind("number") ? [first, cursor.quantity()] : [];
    if (!limits.every(isLimit) || !limits.some(({ decimals }) => decimals > 0)) return undefined;
    return limits.map((quantity): WrittenDeviation => {
      const value = quantity.value - size.value;
      return { sign: value < 0 ? -1 : 1, quantity: { ...quantity, value: Math.abs(value) } };
    });
  });
  if (deviations) written.tolerance = { plusMinus: false, deviations };
  return deviations !== undefined;
}

/** `H7`, `H7/g6`, `H7-g6`, `RC4`. */
export function readClass(cursor: Cursor, written: Written): void {
  const { text } = cursor.peek()!;
  if (!written.size) {
    if (/^M\d/.test(text)) cursor.refuse(THREAD);
    // A letter for the diameter sign (`O12 H7`), or a radius.
    if (cursor.isKind("class", 1))
      cursor.refuse(`has ${text} for a size. Write the diameter as a number, or with ⌀.`);
    cursor.refuse(`has ${text} without a size before it. Write the size first, like 12 ${text}.`);
  }
  if (/^M\d/.test(text) && (isToleranced(written) || !isBehindSize(cursor))) cursor.refuse(THREAD);
  if (isTapDrill(cursor, written.size))
    cursor.refuse(
      `could be ${written.size.text} with the class ${text}, or the drill for an ${text} thread. Write the class with its deviations, or the size to be reamed.`,
    );
  if (written.classes.length > 0)
    cursor.refuse(`has two tolerance classes, ${written.classes[0]} and ${text}. Write one.`);
  refuseBehind(cursor, written);
  written.classes.push(cursor.take().text);
  if (/^[/-]$/.test(cursor.peek()?.text ?? "") && cursor.isKind("class", 1)) {
    cursor.take();
    written.classes.push(cursor.take().text);
  }
}

/** `8.5 DRILL M10`: a class stands next to its size. */
const isBehindSize = (cursor: Cursor) =>
  cursor.isKind("number", -1) || cursor.is("unit", -1) || cursor.is("diameter", -1);

/** `6.8 M8`: the tap drills of the coarse threads whose names are classes too; no one gives such a size a class. */
const TAP_DRILLS: Readonly<Record<string, number>> = {
  M3: 2.5,
  M4: 3.3,
  M5: 4.2,
  M8: 6.8,
  M10: 8.5,
  M12: 10.2,
};
const isTapDrill = (cursor: Cursor, { value }: Quantity) =>
  TAP_DRILLS[cursor.peek()!.text] === value && !cursor.isText("(", 1) && !cursor.isKind("sign", 1);

export const THREAD =
  "is a thread, not a reamed hole. Write the size and tolerance of a plain hole, like 12 H7.";

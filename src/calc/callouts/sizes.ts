// calc: the size of a callout: one number, or two limits joined, one above the other, or called MIN and MAX.

import { readCount } from "./counts.ts";
import { isDepthAhead } from "./depths.ts";
import type { Cursor, Quantity } from "./quantities.ts";
import { isCircleAhead, isNumberNext, isRoughnessAhead } from "./set-aside.ts";
import { areLimits, isJoint } from "./tolerances.ts";
import { refuseCountOrLimits, refuseTwoSizes } from "./wide-limits.ts";
import { isToleranced, nothingWritten, type Written } from "./written.ts";

/** A size, or two limits. */
export function readSize(cursor: Cursor, written: Written): void {
  written.behind = undefined;
  const isFirst = written.count === undefined && !cursor.is("diameter", -1);
  written.size = cursor.quantity();
  const mayBeCount = !cursor.skip("diameter") && isFirst;
  written.limit = joinedLimit(cursor, written.size, mayBeCount) ?? stackedLimit(cursor, written.size);
}

const isExact = ({ decimals, isFraction }: Quantity) => decimals > 0 || isFraction;

function joinedLimit(cursor: Cursor, size: Quantity, mayBeCount: boolean): Quantity | undefined {
  if (!isJoint(cursor)) return undefined;
  const joint = cursor.peek()!;
  const isWord = joint.kind === "word";
  if (isWord && !isNumberNext(cursor)) return undefined;
  return (
    cursor.attempt(() => {
      cursor.take();
      const hasSign = cursor.skip("diameter");
      if (!cursor.isKind("number")) return undefined;
      const limit = cursor.quantity();
      // `8,37 -10/-28 µm` are deviations.
      if (cursor.isText("/") || cursor.is("micron")) return undefined;
      if (!areLimits(size.value, limit.value) || !(isExact(size) || isExact(limit))) return undefined;
      const isNamed = hasSign || cursor.is("diameter") || cursor.is("drill") || cursor.is("ream");
      if (joint.text === "-" && mayBeCount) refuseCountOrLimits(size, limit, isNamed, cursor);
      return limit;
    }) ??
    (joint.text === "-"
      ? undefined
      : cursor.refuse(
          `can't be read at "${cursor.plain.slice(joint.start, joint.end)}". Two limits differ by 20 % at most, and one has a decimal point.`,
        ))
  );
}

/** Limits one above the other, or apart by spaces: as many decimals in both. */
function stackedLimit(cursor: Cursor, size: Quantity): Quantity | undefined {
  return cursor.attempt(() => {
    cursor.skip("diameter");
    if (!cursor.isKind("number") || isSomethingElse(cursor)) return undefined;
    const limit = cursor.quantity();
    cursor.skip("diameter");
    const isAlike = limit.decimals === size.decimals && size.decimals >= (cursor.units === "mm" ? 2 : 3);
    if (!isAlike || !areLimits(size.value, limit.value)) return undefined;
    refuseTwoSizes(size, limit, cursor);
    return limit;
  });
}

/** A number that the words behind it make a count, a depth, a roughness or a bolt circle. */
const isSomethingElse = (cursor: Cursor) =>
  isDepthAhead(cursor) ||
  isRoughnessAhead(cursor) ||
  isCircleAhead(cursor) ||
  cursor.ahead(() => readCount(cursor, nothingWritten()));

/** `.5000 MIN .5005 MAX`, `MAX 12.018 MIN 12.000` */
export function readExtreme(cursor: Cursor, written: Written): void {
  if (written.size && isToleranced(written) && isNumberNext(cursor)) {
    // `MIN 30 DEEP`
    cursor.take();
    if (isDepthAhead(cursor)) return;
    cursor.at--;
  }
  const isPrefix = written.size === undefined;
  if (isToleranced(written) || written.tolerance || written.behind) refuseExtreme(cursor);
  const first = cursor.take().text;
  const one = isPrefix ? numberAt(cursor) : written.size!;
  if (/^[-/,;]$/.test(cursor.peek()?.text ?? "")) cursor.take();
  const other = isPrefix ? undefined : numberAt(cursor);
  if (!cursor.is("extreme") || cursor.peek()!.text.slice(0, 3) === first.slice(0, 3)) refuseExtreme(cursor);
  cursor.take();
  const two = other ?? numberAt(cursor);
  if (first.startsWith("MIN") === one.value > two.value || one.value === two.value)
    cursor.refuse("has a MIN that is not under its MAX. Write the two limits again.");
  written.size = one;
  written.limit = two;
}

function numberAt(cursor: Cursor): Quantity {
  cursor.skip("diameter");
  if (!cursor.isKind("number")) refuseExtreme(cursor);
  const quantity = cursor.quantity();
  cursor.skip("diameter");
  return quantity;
}

function refuseExtreme(cursor: Cursor): never {
  return cursor.refuse("has a MIN or MAX alone. Write both limits, like 12.000 MIN 12.018 MAX.");
}

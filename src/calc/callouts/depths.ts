// calc: the depth of a hole in a callout, with the tolerance that is the depth's own.

import type { Cursor, Quantity } from "./quantities.ts";
import { readTolerance } from "./tolerances.ts";
import type { Written } from "./written.ts";

/** `30 DEEP`, `.50 MIN DEEP`, `20 +0,5 tief` */
export function isDepthAhead(cursor: Cursor): boolean {
  return cursor.ahead(() => {
    cursor.quantity();
    if (cursor.isKind("sign") || cursor.isKind("plusminus")) readTolerance(cursor);
    cursor.skip("extreme");
    return cursor.is("deep");
  });
}

/** What stands behind an ×, a depth sign or a word for it; `isTimes` if behind an ×. */
export function readDepth(cursor: Cursor, written: Written, isTimes = false): void {
  if (written.depth) cursor.refuse("has two depths. Write one.");
  const isExtreme = cursor.skip("extreme");
  const depth = cursor.quantity();
  const end = cursor.at;
  while (cursor.peek()) {
    if (cursor.isKind("sign") || cursor.isKind("plusminus")) {
      const tolerance = readTolerance(cursor);
      if (!tolerance)
        cursor.refuse(`has ${cursor.peek()!.text} without a number after it. Write one, or delete it.`);
      if (tolerance!.deviations.some(({ quantity }) => quantity.value > depth.value / 2))
        cursor.refuse("has two depths. Write one.");
    } else if (!(cursor.skip("extreme") || cursor.skip("deep") || cursor.skip("deep-sign"))) break;
  }
  if (cursor.isText("[") && cursor.isKind("number", 1)) passSecondDepth(cursor, depth);
  written.depth = depth;
  written.isDepthBare = isTimes && !isExtreme && cursor.at === end;
  written.behind = "the depth";
}

/** `↧.75 [19.05]`: the depth in the other unit, which must agree within its rounding. */
function passSecondDepth(cursor: Cursor, depth: Quantity): void {
  cursor.take();
  const second = cursor.quantity();
  if (cursor.isKind("sign") || cursor.isKind("plusminus")) readTolerance(cursor);
  const value = (depth.units ?? cursor.units) === "in" ? depth.value * 25.4 : depth.value / 25.4;
  const isSame = Math.abs(second.value - value) <= 10 ** -second.decimals / 2 + 1e-9;
  if (!cursor.isText("]") || !isSame) cursor.refuse("has two depths. Write one.");
  cursor.take();
}

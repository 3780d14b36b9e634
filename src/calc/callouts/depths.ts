// calc: the depth of a hole in a callout, with the tolerance that is the depth's own.

import type { Cursor } from "./quantities.ts";
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
  written.depth = depth;
  written.isDepthBare = isTimes && !isExtreme && cursor.at === end;
  written.behind = "the depth";
}

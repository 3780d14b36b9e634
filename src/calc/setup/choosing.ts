// calc: where the chips go, and which tool of the shop's own list covers a size.

import { none, shown, wrong } from "../problem.ts";

const FORWARD =
  "flush forward: left-hand helix (right-hand cut), or straight flutes in short-chipping material";
const BACK =
  "flush from the center and back along the flutes: right-hand helix or straight flutes with coolant through, never left-hand helix";
const FORWARD_INTERRUPTED =
  "flush forward: left-hand helix (right-hand cut), at least one edge always bearing";
const BACK_INTERRUPTED = `${BACK}; at least one edge always bearing`;

/** Advice on flutes and coolant: `blocked` where chips cannot leave ahead, `interrupted` by a keyway or cross hole. */
export function chipPath(holeKind: "through" | "blind", blocked = false, interrupted = false): string {
  if (holeKind === "through" && !blocked) return interrupted ? FORWARD_INTERRUPTED : FORWARD;
  return interrupted ? BACK_INTERRUPTED : BACK;
}

/** Sizes are compared after this much. */
const HAIR = 1e-9;

/** The first entry whose range covers the size: over, up to and including; the lowest range includes its lower end. */
export function toolFor<Entry>(
  size: number,
  over: readonly number[],
  upTo: readonly number[],
  entries: readonly Entry[],
): Entry {
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < over.length; i++) {
    if (!(over[i] < upTo[i])) {
      wrong(`over is ${shown(over[i])} in position ${i + 1}, not less than upTo ${shown(upTo[i])}.`);
    }
    if (over[i] < lowest) lowest = over[i];
  }
  for (let i = 0; i < over.length; i++) {
    const above = size > over[i] + HAIR || (over[i] === lowest && size >= lowest - HAIR);
    if (above && size <= upTo[i] + HAIR) return entries[i];
  }
  return none(`size is ${shown(size)}. No range of over and upTo covers it.`);
}

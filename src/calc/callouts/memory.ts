// calc: callouts read before, by text and unit, in bounded room. A quoting sheet repeats a few callouts down a column.

import type { Units } from "../lengths.ts";
import type { Callout } from "./callout.ts";

const SLOTS = 4096;
const slots: Readonly<Record<Units, (Callout | undefined)[]>> = {
  mm: new Array(SLOTS).fill(undefined),
  in: new Array(SLOTS).fill(undefined),
};
/** The hash of the text in each slot: most texts that are not in it are told from it without fetching it. */
const hashes: Readonly<Record<Units, Int32Array>> = { mm: new Int32Array(SLOTS), in: new Int32Array(SLOTS) };

/** From the first characters of a text: cheaper than the hash that a Map takes of a fresh string. */
export function hashOf(text: string): number {
  const end = Math.min(text.length, 16);
  let hash = text.length;
  for (let at = 0; at < end; at++) hash = (hash * 31 + text.charCodeAt(at)) | 0;
  return hash;
}

const slotOf = (hash: number) => hash & (SLOTS - 1);

export function inSlot(hash: number, text: string, units: Units): Callout | undefined {
  const slot = slotOf(hash);
  if (hashes[units][slot] !== hash) return undefined;
  const callout = slots[units][slot];
  return callout !== undefined && callout.text === text ? callout : undefined;
}

/** Keeps a callout whose text comes for the second time: most of a column of many texts never does. */
export function keepInSlot(hash: number, units: Units, callout: Callout): void {
  const slot = slotOf(hash);
  if (hashes[units][slot] === hash) slots[units][slot] = callout;
  else hashes[units][slot] = hash;
}

const KEPT = 512;
const kept: Readonly<Record<Units, Map<string, Callout>>> = { mm: new Map(), in: new Map() };

/** A callout that took the full reader: dear enough to find again when another text took its slot. */
export function recall(text: string, units: Units): Callout | undefined {
  return kept[units].get(text);
}

export function remember(text: string, units: Units, callout: Callout): void {
  if (kept[units].size >= KEPT) kept[units].clear();
  kept[units].set(text, callout);
}

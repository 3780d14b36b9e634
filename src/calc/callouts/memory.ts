// calc: callouts read before, by text and unit, in bounded room. A quoting sheet repeats a few callouts down a column.

import type { Units } from "../lengths.ts";
import type { Callout } from "./callout.ts";

const SLOTS = 4096;
const slots: Readonly<Record<Units, (Callout | undefined)[]>> = {
  mm: new Array(SLOTS).fill(undefined),
  in: new Array(SLOTS).fill(undefined),
};

/** A slot for a text, from its first characters: cheaper than the hash that a Map takes of a fresh string. */
export function slotOf(text: string): number {
  const end = Math.min(text.length, 16);
  let slot = text.length;
  for (let at = 0; at < end; at++) slot = (slot * 31 + text.charCodeAt(at)) | 0;
  return slot & (SLOTS - 1);
}

export function inSlot(slot: number, text: string, units: Units): Callout | undefined {
  const callout = slots[units][slot];
  return callout !== undefined && callout.text === text ? callout : undefined;
}

export function keepInSlot(slot: number, units: Units, callout: Callout): void {
  slots[units][slot] = callout;
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

// tests: callouts read before are found again by text and unit, never for another, and in bounded room.

import { expect, test } from "vitest";
import { hashOf, inSlot, keepInSlot, recall, remember } from "../../../src/calc/callouts/memory.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";

const callout = (text: string) => readCallout(text, "callout", "mm");

test("hashes are whole numbers of 32 bits, the same for the same text, and spread a column well over 4096 slots", () => {
  const columns = [
    Array.from({ length: 512 }, (_, k) => `${(3 + k / 100).toFixed(2)} H7`),
    Array.from({ length: 512 }, (_, k) => `${k + 1} H${6 + (k % 4)}`),
    Array.from({ length: 512 }, (_, k) => `12 +0.0${k}/0`),
  ];
  for (const column of columns) {
    const hashes = column.map(hashOf);
    for (const hash of hashes) expect(hash | 0).toBe(hash);
    expect(column.map(hashOf)).toEqual(hashes);
    // Thrown at random, 512 texts take about 480 slots.
    expect(new Set(hashes.map((hash) => hash & 4095)).size).toBeGreaterThan(400);
  }
  for (const text of ["", "1", "12 H"]) expect(hashOf(text)).toBe(hashOf(text));
});

test("a slot keeps the callout that comes again, for its own text and unit alone", () => {
  const kept = callout("12.34 H7");
  keepInSlot(7, "mm", kept);
  expect(inSlot(7, "12.34 H7", "mm")).toBeUndefined();
  keepInSlot(7, "mm", kept);
  expect(inSlot(7, "12.34 H7", "mm")).toBe(kept);
  expect(inSlot(7, "12.34 H8", "mm")).toBeUndefined();
  expect(inSlot(7, "12.34 H7", "in")).toBeUndefined();
  expect(inSlot(8, "12.34 H7", "mm")).not.toBe(kept);
  // In one slot, one drives the other out; a hash of its own finds neither.
  const other = callout("12.35 H7");
  for (let time = 0; time < 2; time++) keepInSlot(7 + 4096, "mm", other);
  expect(inSlot(7, "12.34 H7", "mm")).toBeUndefined();
  expect(inSlot(7, "12.35 H7", "mm")).toBeUndefined();
  expect(inSlot(7 + 4096, "12.35 H7", "mm")).toBe(other);
});

test("what took the full reader is recalled by text and unit", () => {
  const dear = callout("dia 12.34 H7");
  remember("a text", "mm", dear);
  expect(recall("a text", "mm")).toBe(dear);
  expect(recall("a text", "in")).toBeUndefined();
  expect(recall("another", "mm")).toBeUndefined();
});

test("512 are recalled at the most: the next one starts anew", () => {
  const one = callout("12 H7");
  const gone = () => recall("first", "in") === undefined;
  remember("first", "in", one);
  let last = 0;
  while (!gone() && last < 2000) remember(`before ${++last}`, "in", one);
  expect(gone()).toBe(true);
  // Only the one that drove the others out is there now.
  expect(recall(`before ${last}`, "in")).toBe(one);
  for (let k = 1; k < 512; k++) remember(`after ${k}`, "in", one);
  expect(recall(`before ${last}`, "in")).toBe(one);
  remember("one too many", "in", one);
  expect(recall(`before ${last}`, "in")).toBeUndefined();
  expect(recall("one too many", "in")).toBe(one);
});

test("a callout that repeats is read no more: the same object comes back", () => {
  for (const text of ["12.71 H7", "dia 12.72 H7"]) {
    callout(text);
    expect(callout(text)).toBe(callout(text));
  }
});

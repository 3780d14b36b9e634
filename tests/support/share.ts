// tests: what `npm test` runs of tests that repeat one idea many times; `npm run test:long` runs the whole.

import { test } from "vitest";

const isWhole = process.env.TESTS === "whole";

/** The cases that stand for all in `npm test`, and in the long tests all. */
export const share = <Case>(some: readonly Case[], all: readonly Case[]): readonly Case[] =>
  isWhole ? all : some;

/** A test that only the long tests have: a variant of one that `npm test` has, as slow as that. */
export function longTest(name: string, run: () => Promise<void>): void {
  if (isWhole) test(name, run);
}

/** How often a property is tried: in `npm test` a fourth of it. */
export const runs = (whole: number): number => (isWhole ? whole : Math.ceil(whole / 4));

/** As many rows as a file made to do harm would have. */
export const manyRows = isWhole ? 1_000_000 : 25_000;

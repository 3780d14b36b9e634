// tests: what `npm test` runs of tests that repeat one idea many times; `npm run test:long` runs the whole.

import { describe, test } from "vitest";

const isWhole = process.env.TESTS === "whole";

/** The cases that stand for all in `npm test`, and in the long tests all. */
export const share = <Case>(some: readonly Case[], all: readonly Case[]): readonly Case[] =>
  isWhole ? all : some;

/** A test that only the long tests have: a variant of one that `npm test` has, as slow as that. */
export const longTest = isWhole ? test : test.skip;

/** Several of them. */
export const longSuite = isWhole ? describe : describe.skip;

/** A test that `npm test` has whole, in a file that the long tests have more of: it is not run twice. */
export const quickTest = isWhole ? test.skip : test;

/** How often a property is tried: in `npm test` a part of it, a fourth unless the property takes long. */
export const runs = (whole: number, part = 4): number => (isWhole ? whole : Math.ceil(whole / part));

/** As many rows as a file made to do harm would have. */
export const manyRows = isWhole ? 1_000_000 : 10_000;

// tests: what a source is called goes with its kind, so that no value from memory reads as print.

import { expect, test } from "vitest";
import { sources } from "../src/data/sources.ts";

test.each(Object.entries(sources))("%s says no other kind than its own", (_, { kind, text }) => {
  if (kind !== "practice") expect(text).not.toMatch(/common practice/);
  if (kind !== "memory") expect(text).not.toMatch(/from memory/);
  if (kind === "memory") expect(text).toMatch(/from memory/);
});

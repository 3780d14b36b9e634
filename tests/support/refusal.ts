// tests: what every refusal has in common: it names its argument, ends as a sentence, and nothing of a program is in it.

import { expect } from "vitest";

/** @param names of the arguments that it may be about; any where there are none */
export function expectSentences(message: string | undefined, names: readonly string[] = []): void {
  expect(message).toMatch(new RegExp(`^(?:${names.length === 0 ? "\\w" : names.join("|")})`));
  expect(message).toMatch(/[^\s.,:;][.?]$/);
  // What came is quoted.
  expect(message!.replace(/"[^"]*"/g, '""')).not.toMatch(
    /undefined|null|NaN|Infinity|\[object|\s{2}|\s[.,:?](?!\d)/,
  );
}

// tests: notes as drawings of seven countries write them: read to the limits they mean, or refused. No third outcome.

import { describe, expect, test } from "vitest";
import { calloutPart, limits } from "../../../src/calc/callouts/limits.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import type { Units } from "../../../src/calc/lengths.ts";
import { Problem } from "../../../src/calc/problem.ts";
import { readTable } from "../../support/csv.ts";
import { expectSentences } from "../../support/refusal.ts";

/** Line breaks and tabs are written as \n and \t in the file. */
const written = (text: string) => text.replaceAll("\\n", "\n").replaceAll("\\t", "\t");

function outcome(text: string, units: Units) {
  try {
    const callout = readCallout(text, "callout", units);
    return [
      ...limits(callout, units),
      calloutPart(callout, "count"),
      calloutPart(callout, "depth", units),
      calloutPart(callout, "through"),
    ];
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    expectSentences(thrown.message, ["callout"]);
    return "refused";
  }
}

describe("notes of drawings", () => {
  test.each(readTable("drawing-notes"))("$callout ($units), $origin", (row) => {
    const meant = [
      Number(row.lower),
      Number(row.upper),
      Number(row.count),
      row.depth === "" ? "" : Number(row.depth),
      row.through === "" ? "" : row.through === "TRUE",
    ];
    expect(outcome(written(row.callout), row.units as Units)).toEqual(row.lower === "" ? "refused" : meant);
  });
});

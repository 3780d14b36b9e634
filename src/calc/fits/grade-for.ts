// calc: how fine a tolerance is, and what usually reaches it.

import type { Callout } from "../callouts/callout.ts";
import { gradeFor } from "./iso286.ts";

/** The coarsest standard tolerance grade no wider than the tolerance, and how it is usually made. */
export function gradeAndProcess(callout: Callout): [string, string] {
  const grade = gradeFor(callout.upper - callout.lower, callout.nominal);
  return [grade, processFor(grade)];
}

/** Common practice, no source. */
function processFor(grade: string): string {
  const number = Number(grade.slice(2));
  if (number >= 11) return "drilling";
  if (number >= 8) return "one reaming pass";
  return number >= 6 ? "a guided or a second reaming pass" : "honing";
}

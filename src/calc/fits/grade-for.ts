// calc: how fine a tolerance is, and what usually reaches it.

import type { Callout } from "../callouts/callout.ts";
import type { Formula } from "../formula.ts";
import { lengthText } from "../lengths.ts";
import type { Ticks } from "../ticks.ts";
import * as ticks from "../ticks.ts";
import { gradeFor, standardTolerance } from "./iso286.ts";

/** The coarsest standard tolerance grade no wider than the tolerance, and how it is usually made. */
export function gradeAndProcess(callout: Callout): [string, string] {
  const grade = gradeFor(ticks.widthOf(callout), callout.nominal);
  return [grade, processFor(grade)];
}
gradeAndProcess.formula = {
  source: "iso-286-1",
  steps: () => [],
  conclusion: (_units, callout: Callout) => {
    const { nominal } = callout;
    const [grade, usual] = gradeAndProcess(callout);
    const text = (length: Ticks) => `${lengthText(length, "mm")} mm`;
    const width = standardTolerance(nominal, grade.slice(2));
    return [
      `tolerance ${text(ticks.widthOf(callout))}; ${grade} at ${text(nominal)} is ${text(width)}, the coarsest grade no wider`,
      usual,
    ];
  },
} satisfies Formula;

/** Common practice, no source. */
function processFor(grade: string): string {
  const number = Number(grade.slice(2));
  if (number >= 11) return "drilling";
  if (number >= 8) return "one reaming pass";
  if (number === 7)
    return "one reaming pass, with a reamer ground to the window and runout within RUNOUTCHECK's limit";
  if (number === 6) return "one pass with a finely adjusted or guided reamer, or a second pass";
  return "honing or a special tool";
}

// calc: causes of a bad hole with check and remedy, in the order to look.

import { remedies, type Symptom } from "../../data/remedies.ts";

/** Rows of cause, how to check, remedy. */
export function remediesFor(symptom: Symptom): string[][] {
  return remedies[symptom].map(({ cause, check, remedy }) => [cause, check, remedy]);
}

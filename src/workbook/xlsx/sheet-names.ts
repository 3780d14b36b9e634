// workbook: names that the sheets of a workbook may have.

import { Refusal } from "../workbook.ts";

const LONGEST = 31;

/** @throws Refusal for names that no workbook may have */
export function refuseSheetNames(names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names) {
    const key = name.toUpperCase();
    if (name.length > LONGEST)
      throw new Refusal(
        `the sheet "${name}" needs a shorter name: Excel takes no more than ${LONGEST} characters`,
      );
    if (/[[\]:*?/\\]|^'|'$/.test(name))
      throw new Refusal(
        `the sheet "${name}" needs another name: Excel takes none of [ ] : * ? / \\ and no ' at its ends`,
      );
    if (key === "HISTORY")
      throw new Refusal('a sheet needs another name than "History", which Excel keeps for itself');
    if (seen.has(key)) throw new Refusal(`two sheets are named "${name}": Excel takes that name for one`);
    seen.add(key);
  }
}

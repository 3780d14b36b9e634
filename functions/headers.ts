// functions: the headers of the cells that a function gives.

import type { Units } from "../src/calc/lengths.ts";
import { hasOwn } from "../src/calc/own.ts";
import { shown, wrong } from "../src/calc/problem.ts";
import { registered } from "./register.ts";

/** Headers that are not cells of a row. */
const ownHeaders: Readonly<Record<string, readonly string[]>> = {
  COMPARE: ["line", "present", "proposed", "saving"],
};

/** One row: name and unit of each cell. @throws Problem "wrong" for what is no function, or has its header already */
export function headersOf(functionName: string, units: Units = "mm"): string[][] {
  const id = functionName.toUpperCase().replace(/^REAM\./, "");
  const own = hasOwn(ownHeaders, id) ? ownHeaders[id] : undefined;
  if (own) return [[...own]];
  const one = registered.get(id);
  if (!one)
    return wrong(`functionName is ${shown(functionName)}. Write the name of a function, such as "PLAN".`);
  if (one.cells.length === 0)
    return wrong(`functionName is ${id}, whose result has its own header or shape. HEADERS has none for it.`);
  return [
    one.cells.map(({ name, units: [mm, inch] }) => {
      const unit = units === "mm" ? mm : inch;
      return unit === "" ? name : `${name}, ${unit}`;
    }),
  ];
}

// calc: the two tool materials and the names people give them.

import { shown, wrong } from "./problem.ts";

export type Tool = "HSS" | "carbide";

const names = new Map<string, Tool>([
  ["hss", "HSS"],
  ["hsse", "HSS"],
  ["hssco", "HSS"],
  ["hsseco", "HSS"],
  ["cobalt", "HSS"],
  ["highspeedsteel", "HSS"],
  ["carbide", "carbide"],
  ["solidcarbide", "carbide"],
  ["cementedcarbide", "carbide"],
  ["hm", "carbide"],
  ["vhm", "carbide"],
]);

/** The tool material by any of its names, any case (`HSS-E`, `cobalt`, `solid carbide`, `VHM`). */
export function findTool(text: string = "HSS"): Tool {
  if (text === "HSS" || text === "carbide") return text;
  return (
    names.get(text.slice(0, 40).toLowerCase().replace(/[\s-]/g, "")) ??
    wrong(`tool ${shown(text)} is not known: write HSS or carbide`)
  );
}

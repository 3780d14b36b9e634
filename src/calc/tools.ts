// calc: the kinds of tool and the names people give them.

import type { ModernTool } from "../data/modern-tools.ts";
import { shown, wrong } from "./problem.ts";

export type Tool = "HSS" | "carbide" | ModernTool;

/** Other names of each kind, in the spelling that `fold` leaves. */
const otherNames: Readonly<Record<Tool, string>> = {
  HSS: "hsse hssco hsseco hsspm hssepm pmhss cobalt highspeedsteel",
  carbide: "solidcarbide cementedcarbide tungstencarbide hm vhm hartmetall vollhartmetall",
  "brazed carbide": "brazed carbidetipped tippedcarbide tipped",
  "coated carbide": "coated carbidehead exchangeablehead indexable tin ticn tialn altin",
  cermet: "",
  PCD: "pkd diamond",
  CBN: "pcbn",
  "guided blade": "singleblade guidedsingleblade",
};

export const tools = Object.keys(otherNames) as Tool[];

const names = new Map<string, Tool>(
  tools.flatMap((tool) => [
    [fold(tool), tool] as const,
    ...otherNames[tool].split(" ").map((name) => [name, tool] as const),
  ]),
);
names.delete("");

function fold(text: string): string {
  return text.slice(0, 40).toLowerCase().replace(/[\s-]/g, "");
}

/** The kind of tool by any of its names, any case (`HSS-E`, `VHM`, `carbide-tipped`, `PKD`); HSS where none is given. */
export function findTool(text: string = "HSS"): Tool {
  return (
    names.get(fold(text)) ??
    wrong(
      `tool ${shown(text)} is not known. Write ${tools.slice(0, -1).join(", ")}, or ${tools[tools.length - 1]}.`,
    )
  );
}

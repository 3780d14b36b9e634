// workbook: the functions of ours that can be written in the spreadsheet's own: those whose written formula, the one that
// STEPS shows, needs no table.

import { edgeCost, partCost, payback, price, saving, toolCost } from "../../calc/cost/part-cost.ts";
import { fastestSpeed, partsPerEdge, taylorLife, taylorSpeed } from "../../calc/cost/tool-life.ts";
import {
  feedFromTooth,
  feedPerRevolution,
  feedPerTooth,
  feedRate,
  spindleSpeed,
  surfaceSpeedOf,
} from "../../calc/cutting/spindle.ts";
import { cycleTime, holeTime, hoursSaved, partsPerShift } from "../../calc/cutting/time.ts";
import type { Formula } from "../../calc/formula.ts";

export interface KnownFunction {
  readonly calculate: ((...args: any[]) => unknown) & { readonly formula: Formula };
  readonly required: readonly string[];
  readonly optional: readonly string[];
  /** Further conditions under which there is no result, over the texts of the arguments ("" for one left out). */
  readonly none?: (text: (name: string) => string) => string;
  /** Arguments that stand in the formula as they are, since they are needed where it reads them. */
  readonly asGiven?: readonly string[];
  /** Arguments whose blank leaves a part of the formula out, though they have a default. */
  readonly leavesOut?: readonly string[];
}

const known = (
  calculate: KnownFunction["calculate"],
  required: string,
  optional = "",
  more: Pick<KnownFunction, "none" | "asGiven" | "leavesOut"> = {},
): KnownFunction => ({
  calculate,
  required: required.split(" "),
  optional: optional === "" ? [] : optional.split(" "),
  ...more,
});

/** A condition on one argument. */
const when = (name: string, condition: string) => ({
  none: (text: (name: string) => string) => `${text(name)}${condition}`,
});

/** An edge or its change costs something, and nobody says how many parts it makes. */
function edgeWithoutParts(text: (name: string) => string): string {
  const costs = ["edgeCost", "changeTime"].map(text).filter((one) => one !== "");
  if (costs.length === 0) return "FALSE";
  const cost = `OR(${costs.map((one) => `N(${one})<>0`).join(",")})`;
  const parts = text("partsPerEdge");
  return parts === "" ? cost : `AND(N(${parts})=0,${cost})`;
}

/** A set-up takes time, and its rate or the batch is blank. */
function setupWithoutRate(text: (name: string) => string): string {
  const time = text("setupTime");
  if (time === "") return "FALSE";
  const needed = ["setupRate", "batch"].map((name) => (text(name) === "" ? "TRUE" : `N(${text(name)})=0`));
  return `AND(N(${time})<>0,OR(${needed.join(",")}))`;
}

export const knownFunctions: ReadonlyMap<string, KnownFunction> = new Map([
  ["RPM", known(spindleSpeed, "surfaceSpeed diameter", "maxRpm units")],
  ["SURFACESPEED", known(surfaceSpeedOf, "rpm diameter", "units")],
  ["FEEDRATE", known(feedRate, "feedPerRev rpm")],
  ["FEEDPERREV", known(feedPerRevolution, "feedRate rpm")],
  ["FEEDPERTOOTH", known(feedPerTooth, "feedPerRev flutes")],
  ["FEEDFROMTOOTH", known(feedFromTooth, "feedPerTooth flutes")],
  ["HOLETIME", known(holeTime, "depth feedRate", "leadIn overrun retractRate units")],
  ["CYCLETIME", known(cycleTime, "holeTime", "holes moveTime toolChange loadTime")],
  ["PARTSPERSHIFT", known(partsPerShift, "cycleTime shiftHours", "uptime", when("cycleTime", "=0"))],
  ["HOURSSAVED", known(hoursSaved, "presentCycle proposedCycle partsPerYear")],
  ["TAYLORLIFE", known(taylorLife, "surfaceSpeed n c")],
  ["TAYLORSPEED", known(taylorSpeed, "life n c")],
  ["PARTSPEREDGE", known(partsPerEdge, "life cutTime", "", when("cutTime", "=0"))],
  ["FASTESTSPEED", known(fastestSpeed, "n c changeTime", "timeFactor", when("changeTime", "=0"))],
  ["EDGECOST", known(edgeCost, "price", "edges regrinds regrindCost")],
  ["TOOLCOST", known(toolCost, "edgeCost partsPerEdge")],
  [
    "PARTCOST",
    known(partCost, "cycleTime machineRate", "edgeCost partsPerEdge changeTime otherCost scrapRate", {
      none: edgeWithoutParts,
    }),
  ],
  [
    "PRICE",
    known(price, "cost", "setupTime setupRate batch overhead margin", {
      none: setupWithoutRate,
      asGiven: ["setupRate", "batch"],
      leavesOut: ["setupTime"],
    }),
  ],
  ["SAVING", known(saving, "presentCost proposedCost")],
  ["PAYBACK", known(payback, "investment savingPerPart partsPerYear", "", when("savingPerPart", "<=0"))],
]);

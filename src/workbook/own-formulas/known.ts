// workbook: the functions of ours that can be written in the spreadsheet's own: those whose written formula, the one that
// STEPS shows, needs no table.

import { convert } from "../../calc/checking/convert.ts";
import {
  breakEven,
  edgeCost,
  partCost,
  payback,
  price,
  saving,
  toolCost,
} from "../../calc/cost/part-cost.ts";
import * as toolLife from "../../calc/cost/tool-life.ts";
import { cpkBound, machineRate, toolsNeeded } from "../../calc/cost/tool-stock.ts";
import * as spindle from "../../calc/cutting/spindle.ts";
import * as time from "../../calc/cutting/time.ts";
import { power } from "../../calc/cutting/torque.ts";
import type { Formula } from "../../calc/formula.ts";
import type { Units } from "../../calc/lengths.ts";
import { coolantFlow, deflection } from "../../calc/setup/coolant-and-bending.ts";
import { vBlock } from "../../calc/setup/measuring.ts";
import { runout, runoutAt, screwMoves } from "../../calc/setup/runout.ts";
import { cleanUp, drillDepth } from "../../calc/stock/stock.ts";

/** The text of an argument in the formula, "" for one left out. */
type TextOf = (name: string) => string;

export interface KnownFunction {
  readonly calculate: ((...args: any[]) => unknown) & { readonly formula: Formula };
  readonly required: readonly string[];
  readonly optional: readonly string[];
  /** How many cells it gives, 1 unless said. */
  readonly cells?: number;
  /** Further conditions under which there is no result. */
  readonly none?: (text: TextOf, units: Units) => string;
  /** What the formula reads beside its arguments, or in their place. */
  readonly given?: (text: TextOf, units: Units) => Readonly<Record<string, string>>;
  /** The cells where what STEPS shows depends on the numbers: the formula for all of them. */
  readonly write?: (text: TextOf, units: Units) => readonly string[];
  /** Arguments that stand in the formula as they are, since they are needed where it reads them. */
  readonly asGiven?: readonly string[];
  /** Arguments whose blank leaves a part of the formula out, though they have a default. */
  readonly leavesOut?: readonly string[];
  /** Arguments that are words: written out, or for `given` in a cell. */
  readonly words?: readonly string[];
  /** Lines that are rounded as lengths are, to 1e-7: on the way, or where they leave the function. */
  readonly rounded?: readonly string[];
  readonly roundedResults?: readonly string[];
}

type More = Omit<KnownFunction, "calculate" | "required" | "optional">;

const known = (
  calculate: KnownFunction["calculate"],
  required: string,
  optional = "",
  more: More = {},
): KnownFunction => ({
  calculate,
  required: required.split(" "),
  optional: optional === "" ? [] : optional.split(" "),
  ...more,
});

/** A condition on one argument. */
const when = (name: string, condition: string): More => ({
  none: (text) => `${text(name)}${condition}`,
});

/** A cell's value, or what stands for an empty one. */
const or = (text: string, otherwise: string) =>
  text === "" ? otherwise : /^\d/.test(text) ? text : `IF(OR(${text}="",${text}=0),${otherwise},${text})`;

/** An edge or its change costs something, and nobody says how many parts it makes. */
function edgeWithoutParts(text: TextOf): string {
  const costs = ["edgeCost", "changeTime"].map(text).filter((one) => one !== "");
  if (costs.length === 0) return "FALSE";
  const cost = `OR(${costs.map((one) => `N(${one})<>0`).join(",")})`;
  const parts = text("partsPerEdge");
  return parts === "" ? cost : `AND(N(${parts})=0,${cost})`;
}

/** A set-up takes time, and its rate or the batch is blank. */
function setupWithoutRate(text: TextOf): string {
  const time = text("setupTime");
  if (time === "") return "FALSE";
  const needed = ["setupRate", "batch"].map((name) => (text(name) === "" ? "TRUE" : `N(${text(name)})=0`));
  return `AND(N(${time})<>0,OR(${needed.join(",")}))`;
}

/** Opposite sums that differ by more than a quarter of the runout, and by more than 0.002 mm (0.0001 in). */
function isNotRound(text: TextOf, units: Units): string {
  const [at0, at90, at180, at270] = ["at0", "at90", "at180", "at270"].map(text);
  const apart = `ABS(${at0}+${at180}-(${at90}+${at270}))`;
  const eccentricity = `SQRT(((${at0}-${at180})/2)^2+((${at90}-${at270})/2)^2)`;
  return `${apart}>MAX(${eccentricity}/2,${units === "mm" ? "0.002" : "0.0001"})+1E-9`;
}
const readings = {
  none: isNotRound,
  rounded: ["ex", "ey"],
  roundedResults: ["runout", "move"],
} satisfies More;

/** One angle without the other, or two readings at one distance. */
function isOneAngle(text: TextOf): string {
  const [first, second] = ["angle1", "angle2"].map((name) => (text(name) === "" ? '""' : text(name)));
  return `OR((${first}="")<>(${second}=""),${text("distance1")}=${text("distance2")})`;
}

/** The modulus of the tool's material, which may stand in a cell. */
function modulusOf(text: string): string {
  const word = text === "" ? '""' : `LOWER(TRIM(${text}))`;
  return `IF(${word}="carbide",600000,IF(OR(${word}="",${word}="steel",${word}="hss"),210000,NA()))`;
}

/** More fixed cost and less per part, or no more of either; the differences without what floating point adds. */
function breakEvenOf(text: TextOf): string[] {
  const fixed = `ROUND(${text("proposedFixed")}-${text("presentFixed")},10)`;
  const perPart = `ROUND(${text("presentCost")}-${text("proposedCost")},10)`;
  const isNoMore = `AND(${fixed}<=0,${perPart}>=0,OR(${fixed}<0,${perPart}>0))`;
  return [`IF(AND(${fixed}>0,${perPart}>0),${fixed}/${perPart},IF(${isNoMore},0,NA()))`];
}

const fitting = (flutes: string) => `(180-360/${flutes})`;

const life = "surfaceSpeed n c";

export const knownFunctions: ReadonlyMap<string, KnownFunction> = new Map([
  ["CONVERT", known(convert, "value from to", "", { words: ["from", "to"] })],
  ["RPM", known(spindle.spindleSpeed, "surfaceSpeed diameter", "maxRpm units")],
  ["SURFACESPEED", known(spindle.surfaceSpeedOf, "rpm diameter", "units")],
  ["FEEDRATE", known(spindle.feedRate, "feedPerRev rpm")],
  ["FEEDPERREV", known(spindle.feedPerRevolution, "feedRate rpm")],
  ["FEEDPERTOOTH", known(spindle.feedPerTooth, "feedPerRev flutes")],
  ["FEEDFROMTOOTH", known(spindle.feedFromTooth, "feedPerTooth flutes")],
  ["DEPTHRATIO", known(spindle.depthRatio, "depth diameter")],
  ["CLEANUP", known(cleanUp, "stock offset", "units", { cells: 2, roundedResults: ["minimum", "maximum"] })],
  [
    "DRILLDEPTH",
    known(drillDepth, "reamedDepth bevelLead", "chipRoom drill pointAngle units", {
      cells: 2,
      asGiven: ["chipRoom", "pointAngle"],
      given: (text) => ({
        chipRoom: or(text("chipRoom"), "0"),
        pointAngle: or(text("pointAngle"), "118"),
      }),
      roundedResults: ["fullDepth", "toPoint"],
    }),
  ],
  ["HOLETIME", known(time.holeTime, "depth feedRate", "leadIn overrun retractRate units")],
  ["CYCLETIME", known(time.cycleTime, "holeTime", "holes moveTime toolChange loadTime")],
  ["PARTSPERSHIFT", known(time.partsPerShift, "cycleTime shiftHours", "uptime", when("cycleTime", "=0"))],
  [
    "MACHINESNEEDED",
    known(time.machinesNeeded, "partsPerYear cycleTime hoursPerYear", "uptime scrapRate", {
      cells: 2,
      none: (text) => `${text("cycleTime")}=0`,
    }),
  ],
  ["HOURSSAVED", known(time.hoursSaved, "presentCycle proposedCycle partsPerYear")],
  ["POWER", known(power, "torque rpm", "efficiency units")],
  ["TAYLORLIFE", known(toolLife.taylorLife, life)],
  ["TAYLORSPEED", known(toolLife.taylorSpeed, "life n c")],
  ["PARTSPEREDGE", known(toolLife.partsPerEdge, "life cutTime", "", when("cutTime", "=0"))],
  [
    "ECONOMICSPEED",
    known(toolLife.economicSpeed, "n c changeTime edgeCost machineRate", "timeFactor", {
      none: (text) => `OR(${text("machineRate")}=0,AND(${text("changeTime")}=0,${text("edgeCost")}=0))`,
    }),
  ],
  ["FASTESTSPEED", known(toolLife.fastestSpeed, "n c changeTime", "timeFactor", when("changeTime", "=0"))],
  [
    "COSTATSPEED",
    known(
      toolLife.costAtSpeed,
      `${life} diameter feedPerRev depth changeTime edgeCost machineRate`,
      "timeFactor units",
      {
        cells: 4,
        // An edge that lasts less than one hole.
        none: (text, units) =>
          `INT((${text("c")}/${text("surfaceSpeed")})^(1/${text("n")})*${units === "mm" ? 1000 : 12}*${text("surfaceSpeed")}*${text("feedPerRev")}/(PI()*${text("diameter")}*${text("depth")})+1E-9)<1`,
      },
    ),
  ],
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
  [
    "BREAKEVEN",
    known(breakEven, "presentFixed presentCost proposedFixed proposedCost", "", { write: breakEvenOf }),
  ],
  ["MACHINERATE", known(machineRate, "price years hours", "interest space energy upkeep uptime")],
  ["TOOLSNEEDED", known(toolsNeeded, "parts partsPerEdge", "edges regrinds", { cells: 2 })],
  [
    "CPKBOUND",
    known(cpkBound, "cpk count", "confidence", {
      none: (text) => `${text("count")}<2`,
      given: (text) => ({ z: `NORMSINV(${or(text("confidence"), "0.95")})` }),
    }),
  ],
  ["RUNOUT", known(runout, "at0 at90 at180 at270", "units", { ...readings, cells: 3 })],
  ["SCREWMOVES", known(screwMoves, "at0 at90 at180 at270", "units", { ...readings, cells: 4 })],
  [
    "RUNOUTAT",
    known(runoutAt, "reading1 distance1 reading2 distance2 distance", "angle1 angle2", {
      none: isOneAngle,
      asGiven: ["angle2"],
      roundedResults: ["runout"],
    }),
  ],
  [
    "VBLOCK",
    known(vBlock, "reading flutes", "angle units", {
      none: (text) =>
        `OR(${text("reading")}<=0,${text("flutes")}<3,MOD(${text("flutes")},2)<>1,ABS(${or(text("angle"), fitting(text("flutes")))}-${fitting(text("flutes"))})>5+1E-9)`,
      asGiven: ["angle"],
      given: (text) => ({ angle: or(text("angle"), fitting(text("flutes"))) }),
      roundedResults: ["diameter"],
    }),
  ],
  [
    "COOLANTFLOW",
    known(coolantFlow, "bore pressure", "bores coefficient units", { given: () => ({ density: "1000" }) }),
  ],
  [
    "DEFLECTION",
    known(deflection, "force length diameter", "toolMaterial units", {
      words: ["toolMaterial"],
      given: (text) => ({ modulus: modulusOf(text("toolMaterial")) }),
    }),
  ],
]);

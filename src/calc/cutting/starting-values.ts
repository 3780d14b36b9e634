// calc: starting speed and feed by material and tool, before the shop's own trials correct them.

import type { Material } from "../../data/materials/materials.ts";
import { type ModernToolRow, modernTools } from "../../data/modern-tools.ts";
import { carbideSpeedFactors, hardCarbideSpeeds, reamingFeeds } from "../../data/reaming-feeds.ts";
import type { Formula, FormulaStep, Given } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { none } from "../problem.ts";
import type { Tool } from "../tools.ts";
import { defaultFlutes } from "./flutes.ts";
import { spindleSpeed, surfaceSpeedOf } from "./spindle.ts";

const METERS_PER_FOOT = 0.3048;
const MM_PER_INCH = 25.4;
/** From this diameter a modern tool takes its whole feed per tooth, mm. */
const FULL_FEED_FROM = 10;

/** The row of a tool other than HSS and solid carbide; undefined for those two. @throws Problem "none" */
function modernRow({ key }: Material, tool: Tool): ModernToolRow | undefined {
  if (tool === "HSS" || tool === "carbide") return undefined;
  const row = modernTools.find((one) => one.tool === tool && one.materials.includes(key));
  return (
    row ??
    none(`tool is ${tool}, which has no starting values for ${key}. Use another tool or your own data.`)
  );
}

/** Range of starting cutting speed, in the unit in which its table is printed. */
function speedRange(material: Material, tool: Tool): { low: number; high: number; unit: "m/min" | "ft/min" } {
  const modern = modernRow(material, tool);
  if (modern) return { low: modern.speed[0], high: modern.speed[1], unit: "m/min" };
  const { hssLow, hssHigh, key } = material;
  if (hssLow === null || hssHigh === null) {
    if (tool === "carbide") return { ...hardCarbideSpeeds[key], unit: "ft/min" };
    return none(`material is ${key}, which has no cutting speed in HSS. Set tool to "carbide".`);
  }
  if (tool === "HSS") return { low: hssLow, high: hssHigh, unit: "ft/min" };
  const { low, high } = carbideSpeedFactors;
  return { low: low * hssLow, high: high * hssHigh, unit: "ft/min" };
}

const speedUnit = (units: Units) => (units === "mm" ? "m/min" : "ft/min");

/** Starting cutting speed, the middle of the range, m/min (ft/min); 1 ft is 0.3048 m exactly. */
export function startingSpeed(material: Material, tool: Tool = "HSS", units: Units = "mm"): number {
  const { low, high, unit } = speedRange(material, tool);
  if (unit === speedUnit(units)) return (low + high) / 2;
  return units === "mm" ? ((low + high) * 3048) / 20000 : (low + high) / 2 / METERS_PER_FOOT;
}
startingSpeed.formula = {
  source: "start-speed",
  given: (material: Material, tool: Tool = "HSS") => {
    const { low, high, unit } = speedRange(material, tool);
    return { lowSpeed: [low, unit], highSpeed: [high, unit] };
  },
  steps: (units, material: Material, tool: Tool = "HSS") => {
    const { unit } = speedRange(material, tool);
    const middle = "(lowSpeed + highSpeed) / 2";
    const converted = units === "mm" ? `inmpermin(${middle})` : `inftpermin(${middle})`;
    return [
      {
        symbol: "surfaceSpeed",
        expression: unit === speedUnit(units) ? middle : converted,
        unit: speedUnit(units),
      },
    ];
  },
} satisfies Formula;

/** Feed per revolution of a reamer with the default flutes in a material of feed factor 1, in/rev, diameter in inches. */
function tableFeed(inches: number): number {
  const [firstDiameter, firstFeed] = reamingFeeds[0];
  if (inches <= firstDiameter) return (firstFeed * inches) / firstDiameter;
  const last = reamingFeeds.length - 1;
  if (inches >= reamingFeeds[last][0]) return reamingFeeds[last][1];
  let row = 1;
  while (inches > reamingFeeds[row][0]) row++;
  const [fromDiameter, fromFeed] = reamingFeeds[row - 1];
  const [toDiameter, toFeed] = reamingFeeds[row];
  return fromFeed + ((toFeed - fromFeed) * (inches - fromDiameter)) / (toDiameter - fromDiameter);
}

/**
 * Starting feed per revolution, mm (in). HSS and solid carbide: the table's feed over the default flutes, times flutes
 * and feed factor. Other tools: the middle of the feed per tooth times flutes, less under 10 mm.
 */
export function startingFeed(
  material: Material,
  diameter: number,
  tool: Tool = "HSS",
  flutes?: number,
  units: Units = "mm",
): number {
  const modern = modernRow(material, tool);
  if (modern) {
    const inUnits = units === "mm" ? 1 : MM_PER_INCH;
    const [low, high] = modern.feedPerTooth;
    const share = Math.min(1, (diameter * inUnits) / FULL_FEED_FROM);
    return (((low + high) / 2) * share * (flutes ?? defaultFlutes(diameter, tool, units))) / inUnits;
  }
  const perInch = units === "mm" ? MM_PER_INCH : 1;
  const feed = tableFeed(diameter / perInch) * perInch * material.feedFactor;
  return flutes === undefined ? feed : (feed / defaultFlutes(diameter, tool, units)) * flutes;
}
startingFeed.formula = {
  source: "start-feed",
  given: (
    material: Material,
    diameter: number,
    tool: Tool = "HSS",
    flutes?: number,
    units: Units = "mm",
  ): Given => {
    const usualFlutes = defaultFlutes(diameter, tool, units);
    const modern = modernRow(material, tool);
    if (modern) {
      const [lowFeed, highFeed] = modern.feedPerTooth;
      return {
        lowFeed: [lowFeed, "mm"],
        highFeed: [highFeed, "mm"],
        fullFeedFrom: [FULL_FEED_FROM, "mm"],
        flutes: flutes ?? usualFlutes,
      };
    }
    return {
      tableFeed: [tableFeed(units === "mm" ? diameter / MM_PER_INCH : diameter), "in"],
      feedFactor: material.feedFactor,
      usualFlutes,
    };
  },
  steps: (
    units,
    material: Material,
    _diameter,
    tool: Tool = "HSS",
    flutes?: number,
  ): readonly FormulaStep[] => {
    if (modernRow(material, tool)) {
      const diameter = units === "mm" ? "diameter" : "inmm(diameter)";
      const feed = `(lowFeed + highFeed) / 2 * min(1, ${diameter} / fullFeedFrom) * flutes`;
      return [{ symbol: "feedPerRev", expression: units === "mm" ? feed : `inin(${feed})`, unit: units }];
    }
    const feed = `tableFeed * feedFactor${flutes === undefined ? "" : " / usualFlutes * flutes"}`;
    return [{ symbol: "feedPerRev", expression: units === "mm" ? `inmm(${feed})` : feed, unit: units }];
  },
} satisfies Formula;

/** Row: cutting speed after the cap, rpm, feed per revolution, feed rate. */
export function cuttingData(
  material: Material,
  diameter: number,
  tool: Tool = "HSS",
  flutes?: number,
  maxRpm?: number,
  units: Units = "mm",
): number[] {
  const speed = startingSpeed(material, tool, units);
  const rpm = spindleSpeed(speed, diameter, maxRpm, units);
  const feed = startingFeed(material, diameter, tool, flutes, units);
  return [rpm === maxRpm ? surfaceSpeedOf(rpm, diameter, units) : speed, rpm, feed, feed * rpm];
}
cuttingData.formula = {
  source: "start-feed",
  given: (
    material: Material,
    diameter: number,
    tool?: Tool,
    flutes?: number,
    _maxRpm?: number,
    units: Units = "mm",
  ) => ({
    ...startingSpeed.formula.given(material, tool),
    ...startingFeed.formula.given(material, diameter, tool, flutes, units),
  }),
  steps: (units, material: Material, diameter: number, tool?: Tool, flutes?: number, maxRpm?: number) => {
    const [start] = startingSpeed.formula.steps(units, material, tool);
    const feeds = startingFeed.formula.steps(units, material, diameter, tool, flutes);
    const startSpeed = { ...start, symbol: "startSpeed" };
    const rpm = spindleSpeed.stepFrom("startSpeed", units, maxRpm);
    const [capped] = surfaceSpeedOf.formula.steps(units);
    const feedRate = { symbol: "feedRate", expression: "feedPerRev * rpm", unit: `${units}/min` };
    return [
      startSpeed,
      { ...rpm, result: 1 },
      { ...capped, result: 0 },
      { ...feeds[0], result: 2 },
      { ...feedRate, result: 3 },
    ];
  },
} satisfies Formula;

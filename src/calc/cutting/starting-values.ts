// calc: starting speed and feed from the material table, before the shop's own trials correct them.

import type { Material } from "../../data/materials/materials.ts";
import { carbideSpeedFactors, hardenedCarbideSpeed, reamingFeeds } from "../../data/reaming-feeds.ts";
import type { Formula } from "../formula.ts";
import type { Units } from "../lengths.ts";
import { none } from "../problem.ts";
import type { Tool } from "../tools.ts";
import { spindleSpeed, surfaceSpeedOf } from "./spindle.ts";

/** Range of starting surface speed in ft/min; a material without a speed in HSS is `none`. */
function speedRange(material: Material, tool: Tool): { low: number; high: number } {
  const { hssLow, hssHigh } = material;
  if (hssLow === null || hssHigh === null) {
    if (tool === "carbide") return hardenedCarbideSpeed;
    none(`material ${material.key} has no reaming speed in HSS: give tool "carbide"`);
  }
  if (tool === "HSS") return { low: hssLow, high: hssHigh };
  return { low: carbideSpeedFactors.low * hssLow, high: carbideSpeedFactors.high * hssHigh };
}

/** Starting surface speed, the middle of the table's range, m/min (ft/min); 1 ft/min is 0.3048 m/min exactly. */
export function startingSpeed(material: Material, tool: Tool = "HSS", units: Units = "mm"): number {
  const { low, high } = speedRange(material, tool);
  return units === "mm" ? ((low + high) * 3048) / 20000 : (low + high) / 2;
}
startingSpeed.formula = {
  source: "start-speed",
  given: (material: Material, tool: Tool = "HSS") => {
    const { low, high } = speedRange(material, tool);
    return { lowSpeed: low, highSpeed: high };
  },
  steps: (units) => [
    {
      symbol: "surfaceSpeed",
      expression: `(lowSpeed + highSpeed) / 2${units === "mm" ? " * 0.3048" : ""}`,
      unit: units === "mm" ? "m/min" : "ft/min",
    },
  ],
} satisfies Formula;

/** The even number nearest 1.5·√D + 2, D in mm, halves up. */
export function defaultFlutes(diameter: number, units: Units = "mm"): number {
  const millimetres = units === "mm" ? diameter : diameter * 25.4;
  return 2 * Math.floor((1.5 * Math.sqrt(millimetres) + 2) / 2 + 0.5);
}
defaultFlutes.formula = {
  source: "reamer-teeth",
  steps: (units) => [
    {
      symbol: "flutes",
      expression: `2 * floor((1.5 * sqrt(diameter${units === "mm" ? "" : " * 25.4"}) + 2) / 2 + 0.5)`,
      unit: "",
    },
  ],
} satisfies Formula;

/** Feed per revolution of a reamer with the default flutes in a material of feed factor 1, in/rev, diameter in inches. */
function tableFeed(inches: number): number {
  const last = reamingFeeds.length - 1;
  if (inches <= reamingFeeds[0][0]) return reamingFeeds[0][1];
  if (inches >= reamingFeeds[last][0]) return reamingFeeds[last][1];
  let row = 1;
  while (inches > reamingFeeds[row][0]) row++;
  const [fromDiameter, fromFeed] = reamingFeeds[row - 1];
  const [toDiameter, toFeed] = reamingFeeds[row];
  return fromFeed + ((toFeed - fromFeed) * (inches - fromDiameter)) / (toDiameter - fromDiameter);
}

/** Starting feed per revolution, mm (in): the table's feed over the default flutes, times flutes and feed factor. */
export function startingFeed(
  material: Material,
  diameter: number,
  _tool: Tool = "HSS",
  flutes?: number,
  units: Units = "mm",
): number {
  const perInch = units === "mm" ? 25.4 : 1;
  const feed = tableFeed(diameter / perInch) * perInch * material.feedFactor;
  return flutes === undefined ? feed : (feed / defaultFlutes(diameter, units)) * flutes;
}
startingFeed.formula = {
  source: "start-feed",
  given: (material: Material, diameter: number, _tool?: Tool, _flutes?: number, units: Units = "mm") => ({
    tableFeed: tableFeed(units === "mm" ? diameter / 25.4 : diameter),
    feedFactor: material.feedFactor,
    defaultFlutes: defaultFlutes(diameter, units),
  }),
  steps: (units, _material, _diameter, _tool, flutes?: number) => [
    {
      symbol: "feedPerRev",
      expression: `tableFeed${units === "mm" ? " * 25.4" : ""} / defaultFlutes * ${
        flutes === undefined ? "defaultFlutes" : "flutes"
      } * feedFactor`,
      unit: units,
    },
  ],
} satisfies Formula;

/** Row: surface speed after the cap, rpm, feed per revolution, feed rate. */
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
  steps: (units, _material, _diameter, _tool, flutes?: number, maxRpm?: number) => {
    const [speed] = startingSpeed.formula.steps(units);
    const [feed] = startingFeed.formula.steps(units, null, 0, undefined, flutes);
    const [rpm] = spindleSpeed.formula.steps(units, 0, 0, maxRpm);
    const [capped] = surfaceSpeedOf.formula.steps(units);
    return [
      { ...speed, symbol: "startSpeed" },
      { ...rpm, symbol: "speedOfSpindle", expression: rpm.expression.replace("surfaceSpeed", "startSpeed") },
      { ...capped, expression: capped.expression.replace("rpm", "speedOfSpindle") },
      { symbol: "rpm", expression: "speedOfSpindle", unit: "rev/min" },
      feed,
      { symbol: "feedRate", expression: "feedPerRev * rpm", unit: `${units}/min` },
    ];
  },
} satisfies Formula;

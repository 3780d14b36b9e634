// calc: everything for one hole from its callout. Each cell has its own answer: a Problem in place of a value is that
// cell's error alone. Lengths in mm (in).

import type { Material } from "../../data/materials/materials.ts";
import { type Callout, limitsOf } from "../callouts/callout.ts";
import { defaultFlutes } from "../cutting/flutes.ts";
import { spindleSpeed, surfaceSpeedOf } from "../cutting/spindle.ts";
import { startingFeed, startingSpeed } from "../cutting/starting-values.ts";
import { holeTime } from "../cutting/time.ts";
import { gradeFor } from "../fits/iso286.ts";
import type { Formula } from "../formula.ts";
import { fromTicks, type Units } from "../lengths.ts";
import { none, Problem, resultOrProblem, wrong } from "../problem.ts";
import { holeLimits, reamerLimits } from "../reamers/reamer-limits.ts";
import { reamerSize } from "../reamers/stepped-series.ts";
import { drillFor, drillLeaving } from "../stock/drill-name.ts";
import * as ticks from "../ticks.ts";
import { INCH, MILLIMETER } from "../ticks.ts";
import type { Tool } from "../tools.ts";
import { type NamedMaterial, type NamedTool, ShopTable } from "./shop-table.ts";

type Cell = number | string | Problem;

/** Common practice, no source. */
const APPROACH = { mm: 2, in: 0.08 } as const;
const OVERRUN = { mm: 3, in: 0.12 } as const;
const FAST_RETRACT = 3;
const DEEP_FROM = 4;
/** A nominal size further than this outside its limits is no size to cut by. */
const FAR_OUTSIDE = { mm: ticks.dividedBy(MILLIMETER, 10), in: ticks.times(INCH, 0.004) } as const;

export interface KnownMaterial extends NamedMaterial {
  readonly material: Material;
}

export interface KnownTool extends NamedTool {
  readonly tool: Tool;
}

/** What a table of the shop says of the hole, each undefined where it is silent. */
interface ShopData {
  readonly speed?: number;
  readonly feed?: number;
  readonly feedPerTooth?: number;
  readonly flutes?: number;
  readonly stock?: number;
  readonly maxRpm?: number;
  readonly maxDepthRatio?: number;
}

/** What follows from a cell that is a Problem is the same Problem. */
function from<A extends Cell, B extends Cell>(value: A | Problem, calculate: (value: A) => B): B | Problem {
  return value instanceof Problem ? value : resultOrProblem(() => calculate(value));
}

/**
 * Row of 15: lower limit, upper limit, reamer minimum, reamer maximum, reamer size, drill name, drill diameter, stock,
 * cutting speed, spindle speed, feed per revolution, feed rate, time per hole, depth ratio, warnings.
 */
export function plan(
  callout: Callout,
  material: KnownMaterial,
  depth?: number,
  tool: KnownTool = { text: "HSS", tool: "HSS" },
  maxRpm?: number,
  table?: readonly (readonly unknown[])[],
  units: Units = "mm",
): Cell[] {
  const { material: metal } = material;
  const { tool: kind } = tool;
  const limits = holeLimits(callout, units);
  const size = sizeToCut(callout, units);
  const shop = table ? shopData(table, material, tool, size, units) : {};
  const flutes = shop.flutes;
  const reamer = resultOrProblem(() => reamerLimits(callout, 0, units));
  const order = resultOrProblem(() => reamerSize(callout, 0, undefined, units));
  const drill = callout.coated ? coatedDrill(callout, units) : drillOf(size, metal, shop.stock, units);
  const speed = resultOrProblem(() => shop.speed ?? startingSpeed(metal, kind, units));
  const cap = Math.min(maxRpm ?? Number.POSITIVE_INFINITY, shop.maxRpm ?? Number.POSITIVE_INFINITY);
  const rpm = from(speed, (value) => spindleSpeed(value, size, cap, units));
  const isCapped = typeof rpm === "number" && rpm === cap;
  const cutting = isCapped ? surfaceSpeedOf(cap, size, units) : speed;
  const feed = resultOrProblem(() => feedOf(shop, metal, size, kind, flutes, units));
  const feedRate = from(feed, (value) => from(rpm, (speedOfSpindle) => value * speedOfSpindle) as number);
  const deep = depth ?? (callout.depth === undefined ? undefined : fromTicks(callout.depth, units));
  const overrun = callout.through ? OVERRUN[units] : 0;
  const time = from(feedRate, (rate) =>
    deep === undefined
      ? noDepth()
      : holeTime(deep, rate, APPROACH[units], overrun, kind === "HSS" ? rate : FAST_RETRACT * rate),
  );
  const ratio = resultOrProblem(() => (deep === undefined ? noDepth() : deep / size));
  const deepest = shop.maxDepthRatio ?? DEEP_FROM;
  const warnings = [
    isCapped && "limited by the spindle",
    typeof ratio === "number" &&
      ratio > deepest &&
      `deeper than ${deepest} diameters: less speed, a pilot hole`,
    drill[0] instanceof Problem && drill[0].kind === "none" && "no standard drill leaves the stock",
    order instanceof Problem && order.kind === "none" && "tolerance narrower than the reamer's own",
    isFine(callout) && "IT6 or finer: a finely adjusted or guided reamer, or a second pass",
    metal.iso513 === "H" && "hardened: carbide or CBN, little stock",
    (metal.key === "magnesium" || metal.key === "titanium") &&
      `${metal.key} chips burn: class D extinguisher, no water`,
    callout.coated && "coated after reaming: sizes before coating by PREPLATE",
  ].filter((warning): warning is string => typeof warning === "string");
  return [
    fromTicks(limits.lower, units),
    fromTicks(limits.upper, units),
    ...(reamer instanceof Problem ? [reamer, reamer] : reamer),
    order,
    ...drill,
    cutting,
    rpm,
    feed,
    feedRate,
    time,
    ratio,
    warnings.join("; "),
  ];
}

/** The cells are those of other functions, whose own steps show each. */
plan.formula = {
  source: "practice",
  steps: () => [],
  conclusion: () => [
    "limits: as LIMITS",
    "reamer: as REAMERLIMITS and REAMERSIZE",
    "drill and stock: as DRILLFOR, or the drill nearest the table's stock",
    "speed and feed: as CUTTINGDATA, or the table's, capped by the lower limit of spindle and table",
    "time: as HOLETIME with approach 2 mm (0.08 in), overrun 3 mm (0.12 in) in a through hole",
    "retract at the feed in HSS, at three times the feed otherwise",
    "STEPS of each of these shows its calculation",
  ],
} satisfies Formula;

function noDepth(): never {
  return none("depth is empty, and the callout has none. Enter the depth of the hole.");
}

/** The nominal size, or the lower limit where the nominal lies far outside the limits. */
function sizeToCut(callout: Callout, units: Units): number {
  const { lower, upper } = limitsOf(callout, units);
  const far = FAR_OUTSIDE[callout.units];
  const isFar = callout.nominal < ticks.minus(lower, far) || callout.nominal > ticks.plus(upper, far);
  return fromTicks(isFar ? lower : callout.nominal, units);
}

function drillOf(
  size: number,
  material: Material,
  stock: number | undefined,
  units: Units,
): [Cell, Cell, Cell] {
  const drill = resultOrProblem(() => {
    if (stock === undefined) return drillFor(size, material, undefined, units);
    if (stock >= size)
      wrong(
        `table column "stock" has ${stock}, not less than the size ${size}. Write the stock on diameter.`,
      );
    return drillLeaving(size, stock, units);
  });
  return drill instanceof Problem ? [drill, drill, drill] : drill;
}

/** The reamer functions say what to do about a hole that is coated after. */
function coatedDrill(callout: Callout, units: Units): [Cell, Cell, Cell] {
  const problem = resultOrProblem(() => reamerLimits(callout, 0, units)) as Problem;
  return [problem, problem, problem];
}

function feedOf(
  shop: ShopData,
  material: Material,
  size: number,
  tool: Tool,
  flutes: number | undefined,
  units: Units,
): number {
  if (shop.feed !== undefined) return shop.feed;
  if (shop.feedPerTooth !== undefined)
    return shop.feedPerTooth * (flutes ?? defaultFlutes(size, tool, units));
  return startingFeed(material, size, tool, flutes, units);
}

function shopData(
  cells: readonly (readonly unknown[])[],
  material: NamedMaterial,
  tool: NamedTool,
  size: number,
  units: Units,
): ShopData {
  const table = new ShopTable(cells, units);
  const row = table.find(material, tool, size);
  if (!row) return {};
  const number = (column: string) => {
    const value = table.number(row, column);
    return value === 0 ? undefined : value;
  };
  return {
    speed: number("speed"),
    feed: number("feed"),
    feedPerTooth: number("feed per tooth"),
    flutes: number("flutes"),
    stock: number("stock"),
    maxRpm: number("max rpm"),
    maxDepthRatio: number("max depth ratio"),
  };
}

function isFine(callout: Callout): boolean {
  const grade = resultOrProblem(() => gradeFor(ticks.widthOf(callout), callout.nominal));
  return grade instanceof Problem || Number(grade.slice(2)) <= 6;
}

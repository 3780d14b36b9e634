// taskpane: the picture of a toleranced hole: its tolerance interval, that of a new reamer and the wear allowance,
// to one scale.

import { limits } from "../../calc/callouts/limits.ts";
import { readCallout } from "../../calc/callouts/read-callout.ts";
import { fromTicks, roundLength, type Units } from "../../calc/lengths.ts";
import { reamerLimits } from "../../calc/reamers/reamer-limits.ts";
import { type Figures, INK, QUIET, type Scene, type Shape, spread } from "../../papers/pictures/scene.ts";

export interface HoleFacts {
  readonly callout: string;
  readonly units: Units;
  readonly cutsOver: number;
  readonly nominal: number;
  readonly lower: number;
  readonly upper: number;
  readonly reamerMinimum: number;
  readonly reamerMaximum: number;
  /** The diameter at which a reamer is worn out: the hole's minimum less what it cuts over. */
  readonly wornOut: number;
}

/** @throws Problem for a callout that can't be read or that leaves no room for a reamer */
export function holeFacts(text: string, units: Units, cutsOver = 0): HoleFacts {
  const callout = readCallout(text, "callout", units);
  const [reamerMinimum, reamerMaximum] = reamerLimits(callout, cutsOver, units);
  const [lower, upper] = limits(callout, units);
  return {
    callout: text.replace(/\s+/g, " ").trim(),
    units,
    cutsOver,
    nominal: fromTicks(callout.nominal, units),
    lower,
    upper,
    reamerMinimum,
    reamerMaximum,
    wornOut: roundLength(lower - cutsOver),
  };
}

const COLORS = { hole: "#bcd9e8", free: "#f1e3c4", reamer: "#2f7d5b", wear: "#bfe0cf", line: "#5c6b78" };
const WIDTH = 390;
const TOP = 46;
const DRAWN = 210;
const HOLE = { x: 62, width: 68 };
const REAMER = { x: 138, width: 106 };
const LABELS = REAMER.x + REAMER.width + 10;
const LABEL_GAP = 14;

function sizeText(size: number, units: Units): string {
  return size.toFixed(units === "mm" ? 3 : 5);
}

export function holePicture(facts: HoleFacts): Scene {
  const { units, nominal, lower, upper, reamerMinimum, reamerMaximum, wornOut } = facts;
  const tolerance = upper - lower;
  // The nominal size is drawn where it is near.
  const isNear = nominal > lower - 0.6 * tolerance && nominal < upper + 0.6 * tolerance;
  const sizes = [lower, upper, reamerMinimum, reamerMaximum, wornOut, ...(isNear ? [nominal] : [])];
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  const y = (size: number) => TOP + (DRAWN * (high - size)) / (high - low);
  const interval = (x: number, width: number, from: number, to: number, fill: string): Shape => ({
    kind: "rect",
    x,
    width,
    y: y(Math.max(from, to)),
    height: Math.abs(y(from) - y(to)),
    fill,
    stroke: COLORS.line,
  });
  const shapes: Shape[] = [
    { kind: "text", x: HOLE.x + HOLE.width / 2, y: TOP - 12, text: "Hole", anchor: "middle", bold: true },
    {
      kind: "text",
      x: REAMER.x + REAMER.width / 2,
      y: TOP - 12,
      text: "Reamer",
      anchor: "middle",
      bold: true,
    },
    { kind: "text", x: 8, y: 16, text: shortened(facts.callout), bold: true },
    { kind: "text", x: WIDTH - 8, y: 16, text: `sizes in ${units}`, anchor: "end", fill: QUIET },
    interval(HOLE.x, HOLE.width, lower, upper, COLORS.hole),
    interval(REAMER.x, REAMER.width, reamerMaximum, reamerMinimum, COLORS.reamer),
  ];
  const free = upper - facts.cutsOver;
  if (free > reamerMaximum) shapes.push(interval(REAMER.x, REAMER.width, free, reamerMaximum, COLORS.free));
  if (wornOut < reamerMinimum)
    shapes.push(interval(REAMER.x, REAMER.width, reamerMinimum, wornOut, COLORS.wear));
  shapes.push(
    ...intervalName(HOLE, y(lower), y(upper), "tolerance"),
    ...intervalName(REAMER, y(free), y(reamerMaximum), "oversize allowance"),
    ...intervalName(REAMER, y(reamerMaximum), y(reamerMinimum), "new reamer", "#ffffff"),
    ...intervalName(REAMER, y(reamerMinimum), y(wornOut), "wear allowance"),
  );
  if (isNear) {
    const at = y(nominal);
    shapes.push({
      kind: "line",
      x1: HOLE.x - 8,
      x2: REAMER.x + REAMER.width,
      y1: at,
      y2: at,
      stroke: INK,
      dash: "6 3",
    });
  }
  shapes.push(...sizeLabels(facts, y), ...zoneLabels(facts, y));
  return {
    title: `Tolerance and reamer zones of ${facts.callout}`,
    description: describe(facts),
    width: WIDTH,
    height: TOP + DRAWN + 20,
    shapes,
  };
}

/** The name of an interval inside it, where there is room for one. */
function intervalName(
  bar: { readonly x: number; readonly width: number },
  from: number,
  to: number,
  text: string,
  fill = INK,
): Shape[] {
  if (Math.abs(from - to) < LABEL_GAP) return [];
  return [{ kind: "text", x: bar.x + bar.width / 2, y: (from + to) / 2 + 4, text, anchor: "middle", fill }];
}

/** Limits of the hole on the left, those of the reamer between the bars and the words. */
function sizeLabels(facts: HoleFacts, y: (size: number) => number): Shape[] {
  const { units, lower, upper } = facts;
  const left = spread([y(upper), y(lower)], LABEL_GAP);
  return [upper, lower].map((size, index) => ({
    kind: "text",
    x: HOLE.x - 6,
    y: left[index] + 4,
    text: sizeText(size, units),
    anchor: "end",
  }));
}

function zoneLabels(facts: HoleFacts, y: (size: number) => number): Shape[] {
  const { units, reamerMinimum, reamerMaximum, wornOut } = facts;
  const entries: { at: number; text: string; bold?: boolean }[] = [
    { at: reamerMaximum, text: `${sizeText(reamerMaximum, units)} new, maximum` },
    { at: reamerMinimum, text: `${sizeText(reamerMinimum, units)} new, minimum` },
    { at: wornOut, text: `${sizeText(wornOut, units)} worn out` },
  ];
  const heights = spread(
    entries.map(({ at }) => y(at)),
    LABEL_GAP,
  );
  return entries.flatMap(({ at, text }, index): Shape[] => [
    {
      kind: "line",
      x1: REAMER.x + REAMER.width,
      x2: LABELS - 2,
      y1: y(at),
      y2: heights[index],
      stroke: COLORS.line,
    },
    { kind: "text", x: LABELS, y: heights[index] + 4, text },
  ]);
}

const shortened = (text: string) => (text.length > 34 ? `${text.slice(0, 33)}…` : text);

function describe(facts: HoleFacts): string {
  const { units, lower, upper, reamerMinimum, reamerMaximum, wornOut, cutsOver } = facts;
  const size = (value: number) => `${sizeText(value, units)} ${units}`;
  const over =
    cutsOver === 0
      ? ""
      : ` The reamer is taken to cut ${size(Math.abs(cutsOver))} ${cutsOver > 0 ? "over" : "under"} its size.`;
  return `The hole may be from ${size(lower)} to ${size(upper)}. A new reamer is from ${size(reamerMinimum)} to ${size(reamerMaximum)}, and is worn out at ${size(wornOut)}.${over}`;
}

export function holeFigures(facts: HoleFacts): Figures {
  const { units, nominal, lower, upper, reamerMinimum, reamerMaximum, wornOut } = facts;
  const row = (what: string, value: number) => [what, sizeText(value, units)];
  return {
    caption: `${facts.callout}: sizes in ${units}`,
    head: ["", `Size, ${units}`],
    rows: [
      row("Nominal size", nominal),
      row("Upper limit of the hole", upper),
      row("Lower limit of the hole", lower),
      row("Tolerance of the hole", upper - lower),
      row("Maximum new reamer", reamerMaximum),
      row("Minimum new reamer", reamerMinimum),
      row("Worn-out reamer", wornOut),
      row("Wear allowance of the smallest new reamer", reamerMinimum - wornOut),
    ],
  };
}

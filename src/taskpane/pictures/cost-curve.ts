// taskpane: cost per hole against surface speed, from the user's own Taylor figures, with the speed of minimum cost and
// the speed of most holes per hour.

import { costAtSpeed, economicSpeed, fastestSpeed } from "../../calc/cost/tool-life.ts";
import type { Units } from "../../calc/lengths.ts";
import { Problem, wrong } from "../../calc/problem.ts";
import { type Figures, INK, niceSteps, QUIET, type Scene, type Shape } from "../../papers/pictures/scene.ts";

/** As in COSTATSPEED: changeTime in seconds, machineRate per hour. */
export interface CostInputs {
  readonly n: number;
  readonly c: number;
  readonly diameter: number;
  readonly feedPerRev: number;
  readonly depth: number;
  readonly changeTime: number;
  readonly edgeCost: number;
  readonly machineRate: number;
  /** Time in the hole over time in the cut: 1 rapid out, 2 fed out. */
  readonly timeFactor: number;
  readonly units: Units;
}

export interface CurvePoint {
  readonly speed: number;
  readonly life: number;
  readonly holes: number;
  readonly cost: number;
}

export interface CurveFacts {
  readonly inputs: CostInputs;
  readonly points: readonly CurvePoint[];
  readonly minimumCost: CurvePoint;
  readonly fastest: CurvePoint;
}

const STEPS = 120;

/** @throws Problem for figures that give no curve */
export function curveFacts(inputs: CostInputs): CurveFacts {
  for (const [name, value] of Object.entries(inputs)) {
    if (name === "units") continue;
    const mayBeZero = name === "edgeCost" || name === "changeTime";
    if (!Number.isFinite(value) || value < 0 || (value === 0 && !mayBeZero))
      wrong(`${name} is ${value}: give a number ${mayBeZero ? "of 0 or more" : "over 0"}`);
  }
  const { n, c, changeTime, edgeCost, machineRate, timeFactor } = inputs;
  if (n >= 1) wrong(`n is ${n}: it must be a number between 0 and 1`);
  const economic = economicSpeed(n, c, changeTime, edgeCost, machineRate, timeFactor);
  const fast = fastestSpeed(n, c, changeTime, timeFactor);
  const [low, high] = [Math.min(economic, fast) * 0.5, Math.max(economic, fast) * 1.25];
  const points: CurvePoint[] = [];
  for (let step = 0; step <= STEPS; step++) {
    const point = pointAt(low + ((high - low) * step) / STEPS, inputs);
    if (point) points.push(point);
  }
  const minimumCost = pointAt(economic, inputs);
  const fastest = pointAt(fast, inputs);
  if (!minimumCost || !fastest || points.length < 2)
    wrong(
      "the speeds of minimum cost and of most holes leave an edge less than one hole: check n, C and the times",
    );
  return { inputs, points, minimumCost, fastest };
}

/** Undefined where an edge does not last for one hole. */
function pointAt(speed: number, inputs: CostInputs): CurvePoint | undefined {
  const { n, c, diameter, feedPerRev, depth, changeTime, edgeCost, machineRate, timeFactor, units } = inputs;
  try {
    const [, life, holes, cost] = costAtSpeed(
      speed,
      n,
      c,
      diameter,
      feedPerRev,
      depth,
      changeTime,
      edgeCost,
      machineRate,
      timeFactor,
      units,
    );
    return { speed, life, holes, cost };
  } catch (thrown) {
    if (thrown instanceof Problem && thrown.kind === "none") return undefined;
    throw thrown;
  }
}

const WIDTH = 340;
const HEIGHT = 270;
const FRAME = { left: 52, right: 14, top: 46, bottom: 42 };
const COLORS = { curve: "#1b5e7a", minimumCost: "#2f7d5b", fastest: "#a34b12", grid: "#dde3e8" };

const speedUnit = (units: Units) => (units === "mm" ? "m/min" : "ft/min");
const speedText = (speed: number) => speed.toFixed(1);

/** As many decimals as tell the costs of the curve apart. */
function costText(cost: number): string {
  return cost >= 10 ? cost.toFixed(2) : cost >= 0.1 ? cost.toFixed(3) : cost.toPrecision(3);
}

export function costCurve(facts: CurveFacts): Scene {
  const { points, minimumCost, fastest, inputs } = facts;
  const [left, right] = [points[0].speed, points[points.length - 1].speed];
  // The far ends rise steeply; what matters lies near the minimum cost.
  const top = Math.max(fastest.cost * 1.05, minimumCost.cost * 1.8);
  const costs = niceSteps(0, top, 5);
  const highest = Math.max(top, costs[costs.length - 1]);
  const x = (speed: number) =>
    FRAME.left + ((WIDTH - FRAME.left - FRAME.right) * (speed - left)) / (right - left);
  const y = (cost: number) => FRAME.top + (HEIGHT - FRAME.top - FRAME.bottom) * (1 - cost / highest);
  const bottom = y(0);
  const shapes: Shape[] = [];
  for (const cost of costs) {
    shapes.push(
      {
        kind: "line",
        x1: FRAME.left,
        x2: WIDTH - FRAME.right,
        y1: y(cost),
        y2: y(cost),
        stroke: COLORS.grid,
      },
      { kind: "text", x: FRAME.left - 6, y: y(cost) + 4, text: String(cost), anchor: "end", fill: QUIET },
    );
  }
  for (const speed of niceSteps(left, right, 5)) {
    shapes.push(
      { kind: "line", x1: x(speed), x2: x(speed), y1: bottom, y2: bottom + 4, stroke: INK },
      { kind: "text", x: x(speed), y: bottom + 16, text: String(speed), anchor: "middle", fill: QUIET },
    );
  }
  const shown = points.filter(({ cost }) => cost <= highest);
  shapes.push(
    { kind: "line", x1: FRAME.left, x2: WIDTH - FRAME.right, y1: bottom, y2: bottom, stroke: INK },
    {
      kind: "text",
      x: (FRAME.left + WIDTH - FRAME.right) / 2,
      y: HEIGHT - 8,
      text: `Cutting speed, ${speedUnit(inputs.units)}`,
      anchor: "middle",
    },
    {
      kind: "text",
      x: 12,
      y: (FRAME.top + bottom) / 2,
      text: "Cost per hole",
      anchor: "middle",
      turned: true,
    },
    {
      kind: "curve",
      points: shown.map(({ speed, cost }) => [x(speed), y(cost)] as const),
      stroke: COLORS.curve,
    },
    ...mark(minimumCost, "minimum cost", COLORS.minimumCost, false, 14),
    ...mark(fastest, "most holes per hour", COLORS.fastest, true, 30),
  );
  return {
    title: "Cost per hole against cutting speed",
    description: describe(facts),
    width: WIDTH,
    height: HEIGHT,
    shapes,
  };

  /** A line up from the curve's foot to its name over the frame, and a dot on the curve. */
  function mark(point: CurvePoint, name: string, fill: string, square: boolean, height: number): Shape[] {
    const at = x(point.speed);
    const anchor = at > WIDTH / 2 ? "end" : "start";
    const text = `${name}: ${speedText(point.speed)} ${speedUnit(inputs.units)}`;
    return [
      { kind: "line", x1: at, x2: at, y1: FRAME.top - 10, y2: bottom, stroke: fill, dash: "4 3" },
      { kind: "text", x: anchor === "end" ? at + 4 : at - 4, y: height, text, anchor, fill, bold: true },
      { kind: "dot", x: at, y: y(point.cost), fill, square },
    ];
  }
}

function describe({ minimumCost, fastest, inputs }: CurveFacts): string {
  const at = ({ speed, cost, holes }: CurvePoint) =>
    `${speedText(speed)} ${speedUnit(inputs.units)} at ${costText(cost)} per hole and ${holes} holes per edge`;
  return `Cost per hole is lowest at ${at(minimumCost)}. Most holes per hour come at ${at(fastest)}. Slower and faster than the minimum-cost speed, a hole costs more.`;
}

export function curveFigures(facts: CurveFacts): Figures {
  const { points, minimumCost, fastest, inputs } = facts;
  const picked = [0, 1, 2, 3, 4].map((part) => points[Math.round(((points.length - 1) * part) / 4)]);
  const rows: [string, CurvePoint][] = [
    ...picked.map((point): [string, CurvePoint] => ["", point]),
    ["minimum cost", minimumCost],
    ["most holes per hour", fastest],
  ];
  rows.sort(([, a], [, b]) => a.speed - b.speed);
  return {
    caption: "Cost per hole at some cutting speeds",
    head: [
      `Speed, ${speedUnit(inputs.units)}`,
      "Life of an edge, min",
      "Holes per edge",
      "Cost per hole",
      "",
    ],
    rows: rows.map(([name, { speed, life, holes, cost }]) => [
      speedText(speed),
      String(Number(life.toPrecision(3))),
      String(holes),
      costText(cost),
      name,
    ]),
  };
}

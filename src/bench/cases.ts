// bench: what is timed. Each case has columns that repeat little, and the bare loop that computes the same from them.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Matrix } from "../../functions/register.ts";
import { type BuiltFunction, runFunctionsScript } from "../build/built-functions.ts";
import { distFolder } from "../build/paths.ts";
import { buildIfStale } from "../build/stale.ts";

/** The functions as they are built, in an engine of their own: what a host runs. */
function builtFunctions(): (id: string) => BuiltFunction {
  buildIfStale();
  const built = runFunctionsScript(readFileSync(join(distFolder, "functions.js"), "utf8"));
  return (id) => built.get(id)!;
}

const built = builtFunctions();
const [rpm, limits, torque, taylorLife, partCost, costAtSpeed, runout, convert, check, inspect] = [
  ...["RPM", "LIMITS", "TORQUE", "TAYLORLIFE", "PARTCOST", "COSTATSPEED", "RUNOUT", "CONVERT", "CHECK"],
  "INSPECT",
].map(built) as BuiltFunction[] as [
  ...[BuiltFunction, BuiltFunction, BuiltFunction, BuiltFunction, BuiltFunction],
  ...[BuiltFunction, BuiltFunction, BuiltFunction, BuiltFunction, BuiltFunction],
];

export interface Case {
  readonly name: string;
  /** How many times the bare loop the function may take. */
  readonly limit: number;
  readonly columns: (rows: number) => any[][][];
  readonly call: (columns: any[][][]) => Matrix;
  readonly bare: (columns: any[][][]) => Matrix;
}

const column = (rows: number, cell: (row: number) => unknown): any[][] =>
  Array.from({ length: rows }, (_, row) => [cell(row)]);
/** A column that runs from a value in small steps and starts again. */
const from = (start: number, step: number, rows: number): any[][] =>
  column(rows, (row) => start + step * (row % 97));
const one = (value: unknown): any[][] => [[value]];
/** What the host appends to every call. */
const host: any = { address: "Sheet1!A1" };
const [n, c, feed, change, edge, rate] = [0.25, 60, 0.3, 120, 40, 90].map(one) as [
  any[][],
  any[][],
  any[][],
  any[][],
  any[][],
  any[][],
];

const twoNumbers = ([callouts]: any[][][]): Matrix => {
  const results: Matrix = [];
  for (let row = 0; row < callouts.length; row++) results.push([row + 0.5, row + 0.75]);
  return results;
};

export const cases: readonly Case[] = [
  {
    name: "RPM",
    limit: 2,
    columns: (rows) => [from(10, 1, rows), from(2, 0.1, rows)],
    call: ([speeds, diameters]) => rpm(speeds, diameters, host),
    bare: (columns) => {
      const [speeds, diameters] = columns as [any[][], any[][]];
      const results: Matrix = [];
      for (let row = 0; row < speeds.length; row++)
        results.push([(1000 * speeds[row][0]) / (Math.PI * diameters[row][0])]);
      return results;
    },
  },
  {
    name: "LIMITS, callouts that repeat",
    limit: 6,
    columns: (rows) => [column(rows, (row) => `${3 + (row % 200)} H${6 + (row % 4)}`)],
    call: ([callouts]) => limits(callouts, host),
    bare: twoNumbers,
  },
  {
    name: "LIMITS, callouts all different",
    limit: 15,
    columns: (rows) => [column(rows, (row) => `${(4 + row / 1000).toFixed(3)} H7`)],
    call: ([callouts]) => limits(callouts, host),
    bare: twoNumbers,
  },
  {
    name: "TORQUE",
    limit: 6,
    columns: (rows) => [from(10, 0.1, rows), from(9.8, 0.1, rows), from(0.2, 0.001, rows)],
    call: ([diameters, drills, feeds]) =>
      torque(one("medium-carbon steel"), diameters, drills, feeds, one(6), host),
    bare: (columns) => {
      const [diameters, drills, feeds] = columns as [any[][], any[][], any[][]];
      const results: Matrix = [];
      for (let row = 0; row < diameters.length; row++) {
        const [diameter, drill, feed] = [diameters[row][0], drills[row][0], feeds[row][0]];
        const force = 2220 * ((feed / 6) * Math.sin(Math.PI / 4)) ** -0.14;
        results.push([(force * feed * (diameter * diameter - drill * drill)) / 8000]);
      }
      return results;
    },
  },
  {
    name: "TAYLORLIFE",
    limit: 6,
    columns: (rows) => [from(10, 0.2, rows)],
    call: ([speeds]) => taylorLife(speeds, one(0.25), one(60)),
    bare: ([speeds]) => {
      const results: Matrix = [];
      for (let row = 0; row < speeds.length; row++) results.push([(60 / speeds[row][0]) ** (1 / 0.25)]);
      return results;
    },
  },
  {
    name: "PARTCOST, all columns",
    limit: 6,
    columns: (rows) => [
      from(20, 1, rows),
      from(60, 1, rows),
      from(20, 0.5, rows),
      from(100, 10, rows),
      from(60, 5, rows),
      from(1, 0.25, rows),
      from(0.01, 0.001, rows),
    ],
    call: ([cycles, rates, edges, parts, changes, others, scrap]) =>
      partCost(cycles, rates, edges, parts, changes, others, scrap),
    bare: ([cycles, rates, edges, parts, changes, others, scrap]) => {
      const results: Matrix = [];
      for (let row = 0; row < cycles.length; row++) {
        const rate = rates[row][0];
        const edge = (edges[row][0] + (rate * changes[row][0]) / 3600) / parts[row][0];
        const sum = (rate * cycles[row][0]) / 3600 + edge + others[row][0];
        results.push([sum / (1 - scrap[row][0])]);
      }
      return results;
    },
  },
  {
    name: "COSTATSPEED",
    limit: 6,
    columns: (rows) => [from(15, 0.1, rows), from(4, 0.25, rows), from(20, 1, rows)],
    call: ([speeds, diameters, depths]) =>
      costAtSpeed(speeds, n, c, diameters, feed, depths, change, edge, rate),
    bare: ([speeds, diameters, depths]) => {
      const results: Matrix = [];
      for (let row = 0; row < speeds.length; row++) {
        const speed = speeds[row][0];
        const time = (60 * Math.PI * diameters[row][0] * depths[row][0]) / (1000 * speed * 0.3);
        const life = (60 / speed) ** (1 / 0.25);
        const parts = Math.floor((60 * life) / time + 1e-9);
        results.push([time, life, parts, (90 * time) / 3600 + (40 + (90 * 120) / 3600) / parts]);
      }
      return results;
    },
  },
  {
    name: "RUNOUT",
    limit: 6,
    columns: (rows) => [
      from(0, 0.0001, rows),
      from(0.003, 0.0001, rows),
      from(0.008, 0.0001, rows),
      from(0.005, 0.0001, rows),
    ],
    call: ([at0, at90, at180, at270]) => runout(at0, at90, at180, at270),
    bare: (columns) => {
      const [at0, at90, at180, at270] = columns as [any[][], any[][], any[][], any[][]];
      const round = (value: number) => Math.round(value * 1e7) / 1e7;
      const results: Matrix = [];
      for (let row = 0; row < at0.length; row++) {
        const ex = round((at0[row][0] - at180[row][0]) / 2);
        const ey = round((at90[row][0] - at270[row][0]) / 2);
        const eccentricity = Math.sqrt(ex * ex + ey * ey);
        const angle = (Math.atan2(ey, ex) * 180) / Math.PI;
        results.push([round(2 * eccentricity), angle < 0 ? angle + 360 : angle, round(eccentricity)]);
      }
      return results;
    },
  },
  {
    name: "CONVERT",
    limit: 6,
    columns: (rows) => [from(0.1, 0.01, rows)],
    call: ([values]) => convert(values, one("in"), one("mm")),
    bare: ([values]) => {
      const results: Matrix = [];
      for (let row = 0; row < values.length; row++) results.push([values[row][0] * 25.4]);
      return results;
    },
  },
  {
    name: "CHECK",
    limit: 6,
    columns: (rows) => [from(380, 0.03, rows), from(381, 0.03, rows)],
    call: ([figures, expected]) => check(figures, expected),
    bare: ([figures, expected]) => {
      const results: Matrix = [];
      for (let row = 0; row < figures.length; row++) {
        const off = figures[row][0] / expected[row][0] - 1;
        const text = `${Number((100 * Math.abs(off)).toPrecision(3))} % ${off > 0 ? "high" : "low"}`;
        results.push([Math.abs(off) <= 0.01 ? `within 1 %: ${text}` : text]);
      }
      return results;
    },
  },
  {
    name: "INSPECT",
    limit: 6,
    columns: (rows) => [from(12, 0.0001, rows)],
    call: ([sizes]) => inspect(sizes, one("12 H7")),
    bare: ([sizes]) => {
      const results: Matrix = [];
      for (let row = 0; row < sizes.length; row++) {
        const size = Math.round(sizes[row][0] * 1e7) / 1e7;
        results.push([size < 12 ? "under" : size > 12.018 ? "over" : "in"]);
      }
      return results;
    },
  },
];

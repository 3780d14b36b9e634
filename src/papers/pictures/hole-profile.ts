// papers: the profile of measured holes, 500-fold in diameter, with the tolerance band shaded, drawn from the sentence
// that tells the same: `Profile, mm: limits 16.000 to 16.018; positions 3.0, 20.0; hole 1: 16.0260, 16.0160.`

import { INK, QUIET, type Scene, type Shape, spread } from "./scene.ts";

const START = "Profile, ";
/** What stands for a mean that was not measured. */
const NONE = "–";

export interface HoleProfile {
  readonly units: string;
  readonly lower: number;
  readonly upper: number;
  readonly positions: readonly number[];
  readonly holes: readonly { readonly name: string; readonly means: readonly (number | undefined)[] }[];
}

interface Cells {
  readonly lower: string;
  readonly upper: string;
  readonly positions: readonly string[];
  /** The cells of the means of each hole, in the order of the positions. */
  readonly holes: readonly (readonly string[])[];
}

/** The formula of the sentence, "" as long as fewer than two positions have a mean. */
export function holeProfileFormula(units: "mm" | "in", { lower, upper, positions, holes }: Cells): string {
  const [size, fine, place] = units === "mm" ? ["0.000", "0.0000", "0.0"] : ["0.0000", "0.00000", "0.00"];
  const joined = (cells: readonly string[]) => `TEXTJOIN(", ",TRUE,${cells.join(",")})`;
  const places = joined(positions.map((cell) => `IF(${cell}="","",TEXT(${cell},"${place}"))`));
  const told = holes.map((cells, hole) => {
    const means = cells.map(
      (cell, at) => `IF(${positions[at]}="","",IF(ISNUMBER(${cell}),TEXT(${cell},"${fine}"),"${NONE}"))`,
    );
    return `IF(COUNT(${cells.join(",")})=0,"","; hole ${hole + 1}: "&${joined(means)})`;
  });
  return `=IF(OR(COUNT(${positions.join(",")})<2,COUNT(${holes.flat().join(",")})<2),"","${START}${units}: limits "&TEXT(${lower},"${size}")&" to "&TEXT(${upper},"${size}")&"; positions "&${places}&${told.join("&")}&".")`;
}

const NUMBER = /^-?\d{1,6}[.,]\d{1,6}$/;
const number = (digits: string): number | undefined =>
  NUMBER.test(digits) ? Number(digits.replace(",", ".")) : undefined;

export function readHoleProfile(text: string): HoleProfile | undefined {
  if (text.length > 1000) return undefined;
  const [, units, low, high, places, rest] =
    /^Profile, (mm|in): limits (\S+) to (\S+); positions ([^;]+)((?:; hole \d: [^;]+)+)\.$/.exec(text) ?? [];
  const [lower, upper] = [number(low ?? ""), number(high ?? "")];
  if (lower === undefined || upper === undefined || !(upper > lower)) return undefined;
  const positions = places.split(", ").map(number);
  if (positions.some((position) => position === undefined)) return undefined;
  const holes = rest
    .slice(2)
    .split("; ")
    .map((hole) => {
      const [name, means] = hole.split(": ");
      return { name, means: means.split(", ").map(number) };
    });
  if (holes.some(({ means }) => means.length !== positions.length)) return undefined;
  return { units, lower, upper, positions: positions as number[], holes };
}

const FOLD = 500;
/** CSS pixels to the unit on paper. */
const PIXELS = { mm: 96 / 25.4, in: 96 } as const;
const WIDTH = 560;
const LEFT = 62;
const RIGHT = 70;
const TOP = 24;
const MARKS = ["", "6 3", "2 3", "9 3 2 3"];
/** Heights between which the profile is drawn, px. */
const [LEAST, MOST] = [60, 260];

/** Diameter upward, position from the entry to the right. */
export function holeProfile(text: string): Scene | undefined {
  const read = readHoleProfile(text);
  if (!read) return undefined;
  const { units, lower, upper, positions, holes } = read;
  const all = [lower, upper, ...holes.flatMap(({ means }) => means.filter((mean) => mean !== undefined))];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const scale = FOLD * PIXELS[units as "mm" | "in"];
  const wanted = (most - least) * scale;
  // A form that leaves the sheet is drawn smaller, and says so.
  const fold = Math.min(FOLD, (FOLD * MOST) / wanted);
  const pixels = (scale * fold) / FOLD;
  const room = Math.max(0, LEAST - (most - least) * pixels) / 2 / pixels;
  const [low, high] = [least - room, most + room];
  const height = (high - low) * pixels;
  const [first, last] = [Math.min(...positions), Math.max(...positions)];
  const y = (size: number) => TOP + (high - size) * pixels;
  const x = (position: number) =>
    LEFT + ((WIDTH - LEFT - RIGHT) * (position - first)) / Math.max(last - first, 1e-9);
  const decimals = units === "mm" ? 3 : 4;
  const shapes: Shape[] = [
    {
      kind: "rect",
      x: LEFT,
      y: y(upper),
      width: WIDTH - LEFT - RIGHT,
      height: y(lower) - y(upper),
      fill: "#e3e8ec",
      stroke: QUIET,
    },
    { kind: "text", x: 4, y: 13, text: `Mean diameter, ${units}`, bold: true },
    {
      kind: "text",
      x: WIDTH - 4,
      y: 13,
      text: `${Math.round(fold)}-fold in diameter; tolerance shaded`,
      anchor: "end",
      fill: QUIET,
    },
    ...[upper, lower].map(
      (limit): Shape => ({
        kind: "text",
        x: LEFT - 5,
        y: y(limit) + 4,
        text: limit.toFixed(decimals),
        anchor: "end",
      }),
    ),
  ];
  for (const position of positions)
    shapes.push(
      { kind: "line", x1: x(position), x2: x(position), y1: TOP + height, y2: TOP + height + 5, stroke: INK },
      {
        kind: "text",
        x: x(position),
        y: TOP + height + 17,
        text: String(position),
        anchor: "middle",
        fill: QUIET,
      },
    );
  const ends: { name: string; x: number; y: number }[] = [];
  holes.forEach(({ name, means }, hole) => {
    const points = means.flatMap((mean, at) =>
      mean === undefined ? [] : [[x(positions[at]), y(mean)] as const],
    );
    if (points.length === 0) return;
    const [endX, endY] = points[points.length - 1];
    shapes.push(
      { kind: "curve", points, stroke: INK, ...(MARKS[hole] ? { dash: MARKS[hole] } : {}) },
      ...points.map(
        ([at, down]): Shape => ({ kind: "dot", x: at, y: down, fill: INK, square: hole % 2 === 1 }),
      ),
    );
    ends.push({ name, x: endX, y: endY });
  });
  const heights = spread(
    ends.map(({ y: down }) => down),
    13,
  );
  ends.forEach(({ name, x: at }, index) => {
    shapes.push({ kind: "text", x: at + 10, y: heights[index] + 4, text: name });
  });
  return {
    title: "Profile of the holes",
    description: text,
    width: WIDTH,
    height: TOP + height + 24,
    shapes,
    isToScale: true,
  };
}

// papers: the cross-section of a hole, drawn from the sentence that tells the same:
// `Cross-section, mm: hole 16.000 to 16.018; reamed 40.0 deep, through; drill 15.75.`

import { hatching, INK, type Scene, type Shape } from "./scene.ts";

const START = "Cross-section, ";

export interface HoleSection {
  readonly units: string;
  readonly lower: string;
  readonly upper: string;
  readonly depth: string;
  readonly isThrough: boolean;
  /** Depth of the drill to its full diameter and to its point, where they are known. */
  readonly full: string | undefined;
  readonly point: string | undefined;
  readonly chamfer: string | undefined;
  readonly drill: string | undefined;
}

interface Cells {
  readonly lower: string;
  readonly upper: string;
  readonly depth: string;
  readonly through: string;
  readonly full: string;
  readonly point: string;
  readonly chamfer: string;
  readonly drill: string;
}

/** The formula of the sentence, "" as long as limits or depth are no numbers. */
export function holeSectionFormula(units: "mm" | "in", cells: Cells): string {
  const { lower, upper, depth, through, full, point, chamfer, drill } = cells;
  const [size, deep] = units === "mm" ? ["0.000", "0.0"] : ["0.0000", "0.00"];
  const text = (cell: string, format: string) => `TEXT(${cell},"${format}")`;
  const drilled = `IF(ISNUMBER(${full}),", drilled "&${text(full, deep)}&", to the point "&${text(point, deep)}&IF(ISNUMBER(${chamfer}),", chamfer "&${text(chamfer, deep)},""),"")`;
  return `=IF(COUNT(${lower},${upper},${depth})<3,"","${START}${units}: hole "&${text(lower, size)}&" to "&${text(upper, size)}&"; reamed "&${text(depth, deep)}&" deep, "&IF(${through}=TRUE,"through","blind"&${drilled})&IF(${drill}="",".","; drill "&${drill}&"."))`;
}

const NUMBER = "(\\d{1,6}[.,]\\d{1,6})";
const pattern = new RegExp(
  `^${START}(mm|in): hole ${NUMBER} to ${NUMBER}; reamed ${NUMBER} deep, (through|blind)(?:, drilled ${NUMBER}, to the point ${NUMBER})?(?:, chamfer ${NUMBER})?(?:; drill ([^;]{1,40}))?\\.$`,
);

export function readHoleSection(text: string): HoleSection | undefined {
  const [, units, lower, upper, depth, kind, full, point, chamfer, drill] =
    (text.length < 300 && pattern.exec(text)) || [];
  if (units === undefined) return undefined;
  return { units, lower, upper, depth, isThrough: kind === "through", full, point, chamfer, drill };
}

const WIDTH = 300;
const HEIGHT = 152;
const TOP = 34;
const DRAWN = 86;
const MIDDLE = 108;
const METAL = "#e3e8ec";

/** Depth to scale; widths as they look best, with the drill a little narrower than the reamer. */
export function holeSection(text: string): Scene | undefined {
  const read = readHoleSection(text);
  if (!read) return undefined;
  const { units, lower, upper, isThrough, drill, chamfer } = read;
  const number = (digits: string) => Number(digits.replace(",", "."));
  const depth = number(read.depth);
  const full = read.full === undefined ? undefined : number(read.full);
  const point = read.point === undefined ? undefined : number(read.point);
  const deepest = isThrough ? depth : Math.max(depth, point ?? depth * 1.15);
  const y = (deep: number) => TOP + (DRAWN * deep) / deepest;
  const [reamed, drilled] = [30, 24];
  const block = { x: MIDDLE - 52, width: 104, height: isThrough ? DRAWN : DRAWN + 8 };
  const bottom = TOP + block.height;
  const shapes: Shape[] = [
    { kind: "rect", x: block.x, y: TOP, width: block.width, height: block.height, fill: METAL, stroke: INK },
    ...hatching(block.x, TOP, block.width, block.height, "#9aa7b2", 9),
  ];
  const white = (half: number, from: number, to: number): Shape => ({
    kind: "rect",
    x: MIDDLE - half,
    y: from,
    width: 2 * half,
    height: to - from,
    fill: "#ffffff",
    stroke: INK,
  });
  if (!isThrough && full !== undefined) {
    shapes.push(white(drilled, y(depth), y(full)));
    for (const side of [-1, 1]) shapes.push(line(MIDDLE + side * drilled, y(full), MIDDLE, y(point ?? full)));
  }
  shapes.push(white(reamed, TOP, y(depth)));
  if (!isThrough && chamfer !== undefined)
    for (const side of [-1, 1])
      shapes.push(
        line(MIDDLE + side * reamed, y(depth - number(chamfer)), MIDDLE + side * drilled, y(depth)),
      );
  shapes.push({ ...line(MIDDLE, TOP - 8, MIDDLE, bottom + 8), dash: "8 3 2 3" });
  // Diameter over the hole, depths at its sides.
  shapes.push(
    line(MIDDLE - reamed, TOP - 10, MIDDLE + reamed, TOP - 10),
    ...[-reamed, reamed].map((at) => line(MIDDLE + at, TOP - 14, MIDDLE + at, TOP)),
    {
      kind: "text",
      x: MIDDLE,
      y: TOP - 18,
      text: `⌀ ${lower}–${upper} ${units}`,
      anchor: "middle",
      bold: true,
    },
    ...depthMark(block.x + block.width + 12, y(depth), `reamed ${read.depth}${isThrough ? " through" : ""}`),
  );
  if (!isThrough && full !== undefined)
    shapes.push(...depthMark(block.x - 8, y(full), `drilled ${read.full}`, "end"));
  const below = [
    drill === undefined ? "" : `drill ${drill}`,
    read.point === undefined ? "" : `to the point ${read.point}`,
    chamfer === undefined ? "" : `chamfer ${chamfer}`,
  ];
  const words = below.filter((text) => text !== "").join(" · ");
  shapes.push({ kind: "text", x: MIDDLE, y: HEIGHT - 3, text: words, anchor: "middle" });
  return {
    title: "Cross-section of the hole",
    description: text,
    width: WIDTH,
    height: HEIGHT,
    shapes,
  };

  function depthMark(x: number, to: number, words: string, anchor: "start" | "end" = "start"): Shape[] {
    const side = anchor === "start" ? 1 : -1;
    return [
      line(x, TOP, x, to),
      line(x - 4, TOP, x + 4, TOP),
      line(x - 4, to, x + 4, to),
      { kind: "text", x: x + side * 5, y: (TOP + to) / 2 + 4, text: words, anchor },
    ];
  }
}

function line(x1: number, y1: number, x2: number, y2: number): Shape & { kind: "line" } {
  return { kind: "line", x1, y1, x2, y2, stroke: INK };
}

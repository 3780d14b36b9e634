// papers: the cost of a part item by item as paired bars, present over proposed, drawn from the sentence that tells the
// same: `Bar chart, USD per part, present and proposed: machine time 4.36 and 2.48; edge 0.21 and 0.12.`

import { hatching, INK, QUIET, type Scene, type Shape } from "./scene.ts";

const START = "Bar chart, ";
const MIDDLE = " per part, present and proposed: ";

export interface CostItem {
  readonly name: string;
  readonly present: number;
  readonly proposed: number;
}

/**
 * The formula of the sentence, "" as long as an item is no number.
 * @param items name, cell of the present process, cell of the proposed one
 */
export function costBarsFormula(
  currency: string,
  items: readonly (readonly [name: string, present: string, proposed: string])[],
): string {
  const cells = items.flatMap(([, present, proposed]) => [present, proposed]);
  const told = items.map(
    ([name, present, proposed]) =>
      `"${name.toLowerCase()} "&TEXT(${present},"0.00")&" and "&TEXT(${proposed},"0.00")`,
  );
  return `=IF(COUNT(${cells.join(",")})<${cells.length},"","${START}"&${currency}&"${MIDDLE}"&${told.join('&"; "&')}&".")`;
}

/** Reads the sentence back; undefined for any other text. */
export function readCostBars(text: string): { currency: string; items: CostItem[] } | undefined {
  const at = text.indexOf(MIDDLE);
  if (!text.startsWith(START) || at < 0 || text.length > 1000) return undefined;
  const items = text
    .slice(at + MIDDLE.length)
    .replace(/\.$/, "")
    .split("; ")
    .map((item) => /^([a-z ]{1,40}) (\d+[.,]\d\d) and (\d+[.,]\d\d)$/.exec(item));
  if (items.some((item) => item === null)) return undefined;
  const number = (digits: string) => Number(digits.replace(",", "."));
  return {
    currency: text.slice(START.length, at),
    items: items.map((item) => ({ name: item![1], present: number(item![2]), proposed: number(item![3]) })),
  };
}

/** The end of the axis: the next 1, 2 or 5 with zeros, or with a decimal point before it. */
export function axisEnd(largest: number): number {
  if (!(largest > 0)) return 1;
  const power = Math.floor(Math.log10(largest));
  const steps = [1, 2, 5, 10].map((step) => Number(`${step}e${power}`));
  return steps.find((step) => step >= largest) ?? steps[3];
}

const LABELS = 106;
const VALUES = 40;
const TOP = 38;
const BAR = 12;
const PAIR = 2 * BAR + 10;

/** @param length of the axis, px */
export function costBars(text: string, length = 222): Scene | undefined {
  const read = readCostBars(text);
  if (!read) return undefined;
  const { currency, items } = read;
  const end = axisEnd(Math.max(...items.flatMap(({ present, proposed }) => [present, proposed])));
  const x = (value: number) => LABELS + (length * value) / end;
  const bottom = TOP + items.length * PAIR;
  const shapes: Shape[] = [
    { kind: "text", x: 4, y: 13, text: `Cost per part, ${currency}`, bold: true },
    ...key(LABELS, 27, "present", false),
    ...key(LABELS + 84, 27, "proposed", true),
  ];
  items.forEach(({ name, present, proposed }, index) => {
    const y = TOP + index * PAIR + 4;
    shapes.push({ kind: "text", x: LABELS - 6, y: y + BAR + 4, text: name, anchor: "end" });
    shapes.push(...bar(y, present, false), ...bar(y + BAR, proposed, true));
  });
  shapes.push({ kind: "line", x1: LABELS, x2: LABELS, y1: TOP, y2: bottom, stroke: INK });
  shapes.push({ kind: "line", x1: LABELS, x2: x(end), y1: bottom, y2: bottom, stroke: INK });
  for (const part of [0, 0.5, 1]) {
    const at = x(part * end);
    shapes.push(
      { kind: "line", x1: at, x2: at, y1: bottom, y2: bottom + 4, stroke: INK },
      {
        kind: "text",
        x: at,
        y: bottom + 15,
        text: String(Number((part * end).toPrecision(6))),
        anchor: "middle",
        fill: QUIET,
      },
    );
  }
  return {
    title: `Cost per part, ${currency}`,
    description: text,
    width: LABELS + length + VALUES,
    height: bottom + 20,
    shapes,
  };

  function bar(y: number, value: number, isProposed: boolean): Shape[] {
    const width = x(value) - LABELS;
    const label: Shape = { kind: "text", x: LABELS + width + 4, y: y + BAR - 2, text: value.toFixed(2) };
    return value === 0 ? [label] : [...filled(LABELS, y, width, BAR - 1, isProposed), label];
  }
}

const key = (x: number, y: number, text: string, isProposed: boolean): Shape[] => [
  ...filled(x, y - 9, 20, 10, isProposed),
  { kind: "text", x: x + 25, y, text },
];

/** Present light with an outline, proposed dark with hatching. */
function filled(x: number, y: number, width: number, height: number, isProposed: boolean): Shape[] {
  const fill = isProposed ? "#566473" : "#eef2f5";
  const box: Shape = { kind: "rect", x, y, width, height, fill, stroke: INK };
  return isProposed ? [box, ...hatching(x, y, width, height, "#ffffff", 7)] : [box];
}

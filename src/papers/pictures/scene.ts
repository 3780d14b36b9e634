// papers: a picture as data, and as SVG. The SVG carries its own colors on white paper, so that it looks the same
// where it is pasted.

import { escapeAttribute, escapeXml } from "../../workbook/xlsx/xml-text.ts";

export type Shape =
  | {
      readonly kind: "rect";
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly fill: string;
      readonly stroke?: string;
    }
  | {
      readonly kind: "line";
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly stroke: string;
      readonly dash?: string;
    }
  | {
      readonly kind: "text";
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor?: "start" | "middle" | "end";
      readonly fill?: string;
      readonly bold?: boolean;
      readonly turned?: boolean;
    }
  | {
      readonly kind: "curve";
      readonly points: readonly (readonly [number, number])[];
      readonly stroke: string;
      readonly dash?: string;
    }
  | {
      readonly kind: "dot";
      readonly x: number;
      readonly y: number;
      readonly fill: string;
      readonly square?: boolean;
    };

export interface Scene {
  readonly title: string;
  /** What the picture shows, in sentences. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Whether its lengths on paper count. */
  readonly isToScale?: boolean;
}

/** A picture's figures as a table. */
export interface Figures {
  readonly caption: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export const INK = "#1d2733";
export const QUIET = "#4d5a67";
const TEXT_SIZE = 11;
const SVG = "http://www.w3.org/2000/svg";

/** An element of an SVG, before it is a node or a text. */
interface Drawn {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number | undefined>>;
  readonly inside: string | readonly Drawn[];
}
const drawn = (name: string, attributes: Drawn["attributes"], inside: Drawn["inside"] = ""): Drawn => ({
  name,
  attributes,
  inside,
});

/** @param id the start of the ids of title and description, one of its own in the page */
export const renderScene = (scene: Scene, id: string, page: Document = document): SVGSVGElement =>
  nodeOf(drawnScene(scene, id), page) as SVGSVGElement;

/** The picture as the text of an SVG file. */
export const sceneText = (scene: Scene): string => textOf(drawnScene(scene, "picture"));

function nodeOf({ name, attributes, inside }: Drawn, page: Document): SVGElement {
  const element = page.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes))
    if (value !== undefined && key !== "xmlns") element.setAttribute(key, String(value));
  if (typeof inside === "string") element.textContent = inside;
  else element.append(...inside.map((one) => nodeOf(one, page)));
  return element;
}

function textOf({ name, attributes, inside }: Drawn): string {
  const stated = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${escapeAttribute(String(value))}"`);
  const within = typeof inside === "string" ? escapeXml(inside) : inside.map(textOf).join("");
  return `<${name}${stated.join("")}>${within}</${name}>`;
}

function drawnScene({ title, description, width, height, shapes }: Scene, id: string): Drawn {
  return drawn(
    "svg",
    {
      xmlns: SVG,
      viewBox: `0 0 ${width} ${height}`,
      width,
      height,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-description`,
      "font-family": "system-ui, 'Segoe UI', Arial, sans-serif",
      "font-size": TEXT_SIZE,
    },
    [
      drawn("title", { id: `${id}-title` }, title),
      drawn("desc", { id: `${id}-description` }, description),
      drawn("rect", { width, height, fill: "#ffffff" }),
      ...shapes.map(drawnShape),
    ],
  );
}

function drawnShape(shape: Shape): Drawn {
  switch (shape.kind) {
    case "rect": {
      const { x, y, width, height, fill, stroke = "none" } = shape;
      const place = { x: fixed(x), y: fixed(y), width: fixed(width), height: fixed(height) };
      return drawn("rect", { ...place, fill, stroke });
    }
    case "line": {
      const { x1, y1, x2, y2, stroke, dash } = shape;
      const place = { x1: fixed(x1), y1: fixed(y1), x2: fixed(x2), y2: fixed(y2) };
      return drawn("line", { ...place, stroke, "stroke-dasharray": dash });
    }
    case "text": {
      const { x, y, text, anchor = "start", fill = INK, bold, turned } = shape;
      const [left, down] = [fixed(x), fixed(y)];
      return drawn(
        "text",
        {
          x: left,
          y: down,
          fill,
          "text-anchor": anchor,
          ...(bold ? { "font-weight": 600 } : {}),
          ...(turned ? { transform: `rotate(-90 ${left} ${down})` } : {}),
        },
        text,
      );
    }
    case "curve": {
      const points = shape.points.map(([x, y]) => `${fixed(x)},${fixed(y)}`).join(" ");
      const { stroke, dash } = shape;
      return drawn("polyline", { points, fill: "none", stroke, "stroke-width": 2, "stroke-dasharray": dash });
    }
    case "dot": {
      const { x, y, fill, square } = shape;
      return square
        ? drawn("rect", { x: fixed(x - 4.5), y: fixed(y - 4.5), width: 9, height: 9, fill })
        : drawn("circle", { cx: fixed(x), cy: fixed(y), r: 5, fill });
    }
  }
}

/** Slanting lines over a rectangle, so that it is told from others without color. */
export function hatching(
  x: number,
  y: number,
  width: number,
  height: number,
  stroke: string,
  gap = 6,
): Shape[] {
  const lines: Shape[] = [];
  for (let at = gap; at < width + height; at += gap) {
    // From the lower or left edge up to the upper or right one.
    const [x1, y1] = at <= height ? [x, y + at] : [x + at - height, y + height];
    const [x2, y2] = at <= width ? [x + at, y] : [x + width, y + at - width];
    lines.push({ kind: "line", x1, y1, x2, y2, stroke });
  }
  return lines;
}

const fixed = (value: number) => Number(value.toFixed(2));

/** Round steps that divide a span into about `count` parts. */
export function niceSteps(low: number, high: number, count: number): number[] {
  const raw = (high - low) / count;
  const magnitude = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 2.5, 5, 10].map((factor) => factor * magnitude).find((one) => one >= raw)!;
  const steps: number[] = [];
  for (let index = Math.ceil(low / step); index * step <= high + step * 1e-9; index++)
    steps.push(Number((index * step).toPrecision(12)));
  return steps;
}

/** Heights of labels moved apart so that none covers another; they stay in order and near their places. */
export function spread(places: readonly number[], gap: number): number[] {
  const order = places.map((place, index) => ({ place, index })).sort((a, b) => a.place - b.place);
  const moved = order.map(({ place }) => place);
  for (let round = 0; round < 50; round++) {
    for (let index = 1; index < moved.length; index++) {
      const lacking = gap - (moved[index] - moved[index - 1]);
      if (lacking <= 0) continue;
      moved[index - 1] -= lacking / 2;
      moved[index] += lacking / 2;
    }
  }
  const result = new Array<number>(places.length);
  order.forEach(({ index }, rank) => {
    result[index] = moved[rank];
  });
  return result;
}

// taskpane: a picture as data, and as SVG. The SVG carries its own colors on white paper, so that it looks the same
// where it is pasted.

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

/** @param id the start of the ids of title and description, one of its own in the page */
export function renderScene(scene: Scene, id: string, page: Document = document): SVGSVGElement {
  const svg = make(page, "svg", {
    viewBox: `0 0 ${scene.width} ${scene.height}`,
    width: scene.width,
    height: scene.height,
    role: "img",
    "aria-labelledby": `${id}-title ${id}-description`,
    "font-family": "system-ui, 'Segoe UI', Arial, sans-serif",
    "font-size": TEXT_SIZE,
  }) as SVGSVGElement;
  svg.append(
    make(page, "title", { id: `${id}-title` }, scene.title),
    make(page, "desc", { id: `${id}-description` }, scene.description),
    make(page, "rect", { width: scene.width, height: scene.height, fill: "#ffffff" }),
    ...scene.shapes.map((shape) => renderShape(shape, page)),
  );
  return svg;
}

function renderShape(shape: Shape, page: Document): SVGElement {
  switch (shape.kind) {
    case "rect": {
      const { x, y, width, height, fill, stroke = "none" } = shape;
      return make(page, "rect", {
        x: fixed(x),
        y: fixed(y),
        width: fixed(width),
        height: fixed(height),
        fill,
        stroke,
      });
    }
    case "line": {
      const { x1, y1, x2, y2, stroke, dash } = shape;
      return make(page, "line", {
        x1: fixed(x1),
        y1: fixed(y1),
        x2: fixed(x2),
        y2: fixed(y2),
        stroke,
        "stroke-dasharray": dash,
      });
    }
    case "text": {
      const { x, y, text, anchor = "start", fill = INK, bold, turned } = shape;
      return make(
        page,
        "text",
        {
          x: fixed(x),
          y: fixed(y),
          fill,
          "text-anchor": anchor,
          ...(bold ? { "font-weight": 600 } : {}),
          ...(turned ? { transform: `rotate(-90 ${fixed(x)} ${fixed(y)})` } : {}),
        },
        text,
      );
    }
    case "curve": {
      const points = shape.points.map(([x, y]) => `${fixed(x)},${fixed(y)}`).join(" ");
      return make(page, "polyline", { points, fill: "none", stroke: shape.stroke, "stroke-width": 2 });
    }
    case "dot": {
      const { x, y, fill, square } = shape;
      return square
        ? make(page, "rect", { x: fixed(x - 4.5), y: fixed(y - 4.5), width: 9, height: 9, fill })
        : make(page, "circle", { cx: fixed(x), cy: fixed(y), r: 5, fill });
    }
  }
}

function make(
  page: Document,
  name: string,
  attributes: Readonly<Record<string, string | number | undefined>>,
  text = "",
): SVGElement {
  const element = page.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) element.setAttribute(key, String(value));
  }
  if (text) element.textContent = text;
  return element;
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

// build: pictures for the pages where words fail, each of the page's own first example.

import { JSDOM } from "jsdom";
import { INK, QUIET, renderScene, type Scene, type Shape } from "../../papers/pictures/scene.ts";
import { holeFacts, holePicture } from "../../taskpane/pictures/hole-picture.ts";

const LINE = "#5c6b78";
const STRONG = "#a34b12";
const WIDTH = 390;
type Point = readonly [x: number, y: number];

/** A point around a center, the angle in degrees clockwise from the top. */
const around = ([x, y]: Point, radius: number, degrees: number): Point => {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.sin(angle), y - radius * Math.cos(angle)];
};

const arc = (center: Point, radius: number, from = 0, to = 360, stroke = LINE): Shape => ({
  kind: "curve",
  points: Array.from({ length: 73 }, (_, at) => around(center, radius, from + ((to - from) * at) / 72)),
  stroke,
});

const line = ([x1, y1]: Point, [x2, y2]: Point, stroke = LINE, dash?: string): Shape => ({
  kind: "line",
  x1,
  y1,
  x2,
  y2,
  stroke,
  ...(dash ? { dash } : {}),
});

const text = ([x, y]: Point, words: string, more: Partial<Shape & { kind: "text" }> = {}): Shape => ({
  kind: "text",
  x,
  y: y + 4,
  text: words,
  anchor: "middle",
  ...more,
});

/** A line with a head at its end. */
function arrow([x1, y1]: Point, [x2, y2]: Point, stroke: string): Shape[] {
  const back = Math.atan2(y1 - y2, x1 - x2);
  const side = (turn: number): Point => [x2 + 8 * Math.cos(back + turn), y2 + 8 * Math.sin(back + turn)];
  return [
    line([x1, y1], [x2, y2], stroke),
    { kind: "curve", points: [side(0.4), [x2, y2], side(-0.4)], stroke },
  ];
}

/** The readings 0, 0.003, 0.008, 0.005 at four marks; fits the examples of RUNOUT and SCREWMOVES. */
function marksPicture(hasScrews: boolean): Scene {
  const center: Point = [WIDTH / 2, 150];
  const radius = 70;
  const shapes: Shape[] = [
    arc(center, radius),
    text(center, "tool", { fill: QUIET, y: center[1] - 12 }),
    ...arrow(around(center, 12, 194), around(center, radius - 8, 194), STRONG),
    text([center[0] + 6, center[1] + 20], "high side", { anchor: "start", fill: STRONG }),
    text([center[0] + 6, center[1] + 34], "194°", { anchor: "start", fill: STRONG }),
    // The indicator over mark 0.
    line([center[0], center[1] - radius - 34], [center[0], center[1] - radius], INK),
    { kind: "dot", x: center[0], y: center[1] - radius - 40, fill: INK },
    text([center[0] + 12, center[1] - radius - 46], "indicator:", { anchor: "start" }),
    text([center[0] + 12, center[1] - radius - 32], "plus is toward the plunger", { anchor: "start" }),
    // Marks pass the indicator in order, so the tool turns against their numbers.
    arc(center, radius + 16, -20, -62, QUIET),
    ...arrow(around(center, radius + 16, -58), around(center, radius + 16, -64), QUIET),
    text([center[0] - 100, center[1] - 84], "turn by hand", { fill: QUIET }),
  ];
  const readings = ["0", "0.003", "0.008", "0.005"];
  readings.forEach((reading, at) => {
    const degrees = 90 * at;
    shapes.push(line(around(center, radius - 5, degrees), around(center, radius + 5, degrees), INK));
    const anchor = at === 1 ? "start" : at === 3 ? "end" : "middle";
    const [x, y] = around(center, at === 0 ? radius - 14 : radius + 20, degrees);
    if (!hasScrews) shapes.push(text([x, y], `mark ${degrees}: ${reading}`, { anchor }));
  });
  if (hasScrews)
    ["does not move", "does not move", "moves 0.004", "moves 0.001"].forEach((move, at) => {
      const degrees = 90 * at;
      const anchor = at === 1 ? "start" : at === 3 ? "end" : "middle";
      const moves = move !== "does not move";
      if (moves)
        shapes.push(
          ...arrow(around(center, radius + 24, degrees), around(center, radius + 4, degrees), STRONG),
        );
      const [x, y] = around(center, at === 0 ? radius - 14 : radius + 32, degrees);
      shapes.push(text([x, y], at === 0 ? "screw at 0°" : `screw at ${degrees}°`, { anchor }));
      if (at > 0) shapes.push(text([x, y + 14], move, { anchor, fill: moves ? STRONG : QUIET }));
    });
  return {
    title: hasScrews ? "The four screws and which of them move" : "The four marks and the high side",
    description: hasScrews
      ? "Readings of 0, 0.003, 0.008, and 0.005 mm at marks 0, 90, 180, and 270. The screw at 180° pushes the tool by 0.004 mm, the screw at 270° by 0.001 mm. The other two do not move."
      : "A tool seen along its axis, with marks 0, 90, 180, and 270 numbered in the order in which they pass the indicator. The readings are 0, 0.003, 0.008, and 0.005 mm; the high side is at 194°.",
    width: WIDTH,
    height: 280,
    shapes,
  };
}

/** Three edges of 10 mm in a V of 60°, 15 mm high: the first example of VBLOCK. */
function vBlockPicture(): Scene {
  const radius = 46;
  const center: Point = [150, 92];
  const apex: Point = [center[0], center[1] + 2 * radius];
  const top: Point = [center[0], center[1] - radius];
  const right = 292;
  const shapes: Shape[] = [
    arc(center, radius),
    line(apex, around(apex, 3.2 * radius, 30), INK),
    line(apex, around(apex, 3.2 * radius, -30), INK),
    ...[0, 120, 240].map((degrees): Shape => {
      const [x, y] = around(center, radius, degrees);
      return { kind: "dot", x, y, fill: STRONG };
    }),
    text(center, "diameter 10"),
    arc(apex, 30, -30, 30, QUIET),
    text([apex[0], apex[1] - 40], "60°", { fill: QUIET }),
    line(top, [right + 10, top[1]], LINE, "4 3"),
    line(apex, [right + 10, apex[1]], LINE, "4 3"),
    ...arrow([right, (top[1] + apex[1]) / 2], [right, top[1]], INK),
    ...arrow([right, (top[1] + apex[1]) / 2], [right, apex[1]], INK),
    text([right + 8, (top[1] + apex[1]) / 2], "reading 15", { anchor: "start" }),
  ];
  return {
    title: "A tool of three flutes in a V-block of 60°",
    description:
      "Two of the three edges touch the sides of the V, the third is on top. The reading is the height of the top edge over the apex of the V: 15 mm for a diameter of 10 mm.",
    width: WIDTH,
    height: 215,
    shapes,
  };
}

const hole = (callout: string) => () => holePicture(holeFacts(callout, "mm"));
const pictures: Readonly<Record<string, () => Scene>> = {
  LIMITS: hole("12 H7"),
  REAMERLIMITS: hole("20 H7"),
  WEARALLOWANCE: hole("20 H7"),
  RUNOUT: () => marksPicture(false),
  SCREWMOVES: () => marksPicture(true),
  VBLOCK: vBlockPicture,
};

/** The picture of a function's page as SVG, or nothing. */
export function pictureOf(id: string): string {
  const scene = pictures[id]?.();
  if (!scene) return "";
  const { document, XMLSerializer } = new JSDOM().window;
  return new XMLSerializer().serializeToString(renderScene(scene, "picture", document));
}

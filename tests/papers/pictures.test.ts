// tests: the pictures of the papers, drawn from the words that tell them. Lengths by hand: value / end of the axis × its
// length; 500-fold: 0.018 mm is 9 mm on paper, 34.02 px at 96 to the inch.

import { describe, expect, test } from "vitest";
import { beforeAndAfter } from "../../src/papers/before-and-after.ts";
import { axisEnd, costBars, readCostBars } from "../../src/papers/pictures/cost-bars.ts";
import { drawnWords } from "../../src/papers/pictures/drawn-words.ts";
import { holeProfile, readHoleProfile } from "../../src/papers/pictures/hole-profile.ts";
import { holeSection, readHoleSection } from "../../src/papers/pictures/hole-section.ts";
import { type Scene, sceneText } from "../../src/papers/pictures/scene.ts";
import { setUpCard } from "../../src/papers/set-up-card.ts";
import { troubleSheet } from "../../src/papers/trouble-sheet.ts";
import { exampleRow as row } from "../support/example-parts.ts";
import { paperPage } from "../support/paper-page.ts";

const BARS =
  "Bar chart, USD per part, present and proposed: machine time 4.36 and 2.48; edge 0.21 and 0.12; edge change 0.03 and 0.00; other operations 0.55 and 0.20; scrap 0.08 and 0.01.";
const texts = ({ shapes }: Scene) => shapes.flatMap((shape) => (shape.kind === "text" ? [shape.text] : []));
const rects = ({ shapes }: Scene) => shapes.flatMap((shape) => (shape.kind === "rect" ? [shape] : []));

describe("the bars of a before and after", () => {
  test("are as long as their values on an axis to the next 1, 2 or 5", () => {
    expect([4.36, 0.21, 1, 1.01, 0.0021, 5.01, 47].map(axisEnd)).toEqual([5, 0.5, 1, 2, 0.005, 10, 50]);
    const scene = costBars(BARS, 400)!;
    // The first two tell the colors.
    const widths = rects(scene)
      .slice(2)
      .map(({ width }) => Number(width.toFixed(1)));
    expect(widths.slice(0, 2)).toEqual([348.8, 198.4]);
    // A zero has no bar, but its figure.
    expect(widths.length).toBe(9);
    for (const value of ["4.36", "2.48", "0.00", "0.01"]) expect(texts(scene)).toContain(value);
    expect(scene.description).toBe(BARS);
    expect(scene.title).toBe("Cost per part, USD");
  });

  test("are told apart without color: one of each pair is hatched", () => {
    const lines = costBars(BARS)!.shapes.filter(
      (shape) => shape.kind === "line" && shape.stroke === "#ffffff",
    );
    expect(lines.length).toBeGreaterThan(20);
  });

  test("are not drawn from other words", () => {
    for (const text of [
      "",
      BARS.slice(4),
      BARS.replace("4.36", "#N/A"),
      BARS.replace("; edge", ", edge"),
      `${BARS}${" ".repeat(2000)}`,
    ])
      expect(readCostBars(text), text.slice(0, 60)).toBeUndefined();
  });

  test("have no words, and no picture, while something is missing", async () => {
    const page = paperPage(beforeAndAfter(row, 46_352, "A4"));
    expect(page.text()).not.toContain("Bar chart");
  });
});

describe("the cross-section of a set-up card", () => {
  test("follows the hole, its depth and its drill", async () => {
    const page = paperPage(setUpCard({ row }, "A4"));
    const told = page
      .text()
      .split(/ \| |\n/)
      .find((text) => text.startsWith("Cross-section"))!;
    expect(told).toBe("Cross-section, mm: hole 16.000 to 16.018; reamed 40.0 deep, through; drill 15.75.");
    const scene = drawnWords(told)!;
    expect(texts(scene)).toEqual(
      expect.arrayContaining(["⌀ 16.000–16.018 mm", "reamed 40.0 through", "drill 15.75"]),
    );
  });

  test("of a blind hole shows how deep the drill goes, and the chamfer", async () => {
    const blind = { ...row, callout: "2X ⌀12 H7 x 30 deep", material: "medium-carbon steel", tool: "HSS" };
    const page = paperPage(setUpCard({ row: { ...blind, depth: "" } }, "A4"));
    page.fill("Chamfer of the reamer, mm", 1.5);
    page.fill("Chip room below", 3);
    const told = page
      .text()
      .split(/ \| |\n/)
      .find((text) => text.startsWith("Cross-section"))!;
    expect(readHoleSection(told)).toEqual({
      units: "mm",
      lower: "12.000",
      upper: "12.018",
      depth: "30.0",
      isThrough: false,
      full: "34.5",
      point: "38.0",
      chamfer: "1.5",
      drill: "11.8",
    });
    expect(texts(holeSection(told)!)).toEqual(
      expect.arrayContaining(["drilled 34.5", "drill 11.8 · to the point 38.0 · chamfer 1.5"]),
    );
  });

  test("goes to Excel as the text of an SVG file, with its words in it", () => {
    const { svg } = setUpCard({ row }, "A4").pictures![0];
    expect(svg!.text).toMatch(/^<svg xmlns="http:\/\/www.w3.org\/2000\/svg".*<\/svg>$/s);
    expect(svg!.text).toContain("<desc");
    const hostile = { ...holeSection(readable)!, title: `<script>"&` };
    expect(sceneText(hostile)).toContain("&lt;script&gt;");
    expect(sceneText(hostile)).not.toContain("<script>");
  });
  const readable = "Cross-section, mm: hole 16.000 to 16.018; reamed 40.0 deep, through.";
});

describe("the profile of a trouble sheet", () => {
  const told =
    "Profile, mm: limits 16.000 to 16.018; positions 3.0, 20.0, 37.0; hole 1: 16.0260, 16.0160, 16.0150; hole 2: 16.0230, –, 16.0135.";

  test("is 500-fold in diameter, with the tolerance shaded", () => {
    const scene = holeProfile(told)!;
    expect(scene.isToScale).toBe(true);
    const [band] = rects(scene);
    expect(band.height).toBeCloseTo((0.018 * 500 * 96) / 25.4, 6);
    const curves = scene.shapes.flatMap((shape) => (shape.kind === "curve" ? [shape] : []));
    expect(curves.map(({ points }) => points.length)).toEqual([3, 2]);
    const [entry, middle] = curves[0].points;
    expect(middle[1] - entry[1]).toBeCloseTo((0.01 * 500 * 96) / 25.4, 6);
    expect(texts(scene)).toEqual(expect.arrayContaining(["hole 1", "hole 2", "16.018", "16.000"]));
    expect(texts(scene).join()).toContain("500-fold");
  });

  test("that would leave the page is drawn smaller and says so", () => {
    const scene = holeProfile(told.replace("16.0260", "17.0260"))!;
    expect(scene.height).toBeLessThan(320);
    expect(texts(scene).join()).not.toContain("500-fold");
  });

  test("follows the measured means, and is not drawn from less than two", async () => {
    const page = paperPage(troubleSheet(row, "A4"));
    expect(page.text()).not.toContain("Profile, mm");
    page.fill("Position", 3, 20, 37);
    page.fill("Hole 1", 16.025, 16.027, 16.016, 16.016, 16.015, 16.015);
    page.fill("Hole 3", 16.023, 16.024, "", "", 16.015, 16.014);
    const words = page
      .text()
      .split("\n")
      .find((text) => text.startsWith("Profile"))!;
    expect(words).toBe(
      "Profile, mm: limits 16.000 to 16.018; positions 3.0, 20.0, 37.0; hole 1: 16.0260, 16.0160, 16.0150; hole 3: 16.0235, –, 16.0145.",
    );
    expect(readHoleProfile(words)!.holes.map(({ name }) => name)).toEqual(["hole 1", "hole 3"]);
    expect(readHoleProfile(words.replace("16.018", "15.018"))).toBeUndefined();
  });
});

// tests: what a refusal says to write instead, made of the user's own text, is a callout that is read.

import { expect, test } from "vitest";
import { limits } from "../../../src/calc/callouts/limits.ts";
import { readCallout } from "../../../src/calc/callouts/read-callout.ts";
import type { Units } from "../../../src/calc/lengths.ts";
import { readTable } from "../../support/csv.ts";
import { problemOf } from "../golden-file.ts";

/** Messages that write the callout again: the advice stands in the groups. */
const ADVICE: readonly RegExp[] = [
  /could be mm or inches\. Write (.+), or (.+)\.$/,
  /could be µm or mm\. Write (.+), or (.+)\.$/,
  /For µm write (.+)\.$/,
  /in a sheet in mm\. Write (.+), set units to "in", or write (.+)\.$/,
  /has one deviation alone\. Write (.+)\.$/,
  /For two limits write (.+)\.$/,
  /could be \d+ holes of .+ with the class .+ Write (.+), or (.+)\.$/,
  /Write it behind the size, like (.+) or (.+) \(a title block may state it\)\.$/,
  /Write it next to the size, like (.+)\.$/,
  /could be two sizes, .+ Write (.+), or one size/,
  /or two limits\. Write .+ with its tolerance, or (.+)\.$/,
];
const messageOf = (text: string, units: Units) =>
  problemOf(() => readCallout(text, "callout", units))?.message;
const adviceFor = (text: string, units: Units): string[] => {
  const message = messageOf(text, units) ?? "";
  return ADVICE.flatMap((pattern) => pattern.exec(message)?.slice(1) ?? []);
};

const refused = [
  ...readTable("callouts-refused"),
  ...readTable("drawing-notes").filter(({ lower }) => lower === ""),
  ...["0.8", "0.5", "1", "0,9"].map((callout) => ({ callout, units: "mm" })),
  ...[".04", ".05", ".06"].map((callout) => ({ callout, units: "in" })),
].map(({ callout, units }) => ({
  text: callout.replaceAll("\\n", "\n").replaceAll("\\t", "\t"),
  units: units as Units,
}));
const advised = refused.flatMap(({ text, units }) =>
  adviceFor(text, units).map((advice) => [advice, units, text] as const),
);

test.each(advised)("%s (%s), for %j", (advice, units) => {
  // What is left doubtful is refused once more, and what is then said to write is read.
  const more = adviceFor(advice, units);
  for (const one of more.length > 0 ? more : [advice]) expect(messageOf(one, units)).toBeUndefined();
});

test("each kind of advice is among them", () => {
  const messages = refused.map(({ text, units }) => messageOf(text, units) ?? "");
  for (const pattern of ADVICE) expect(messages.some((message) => pattern.test(message))).toBe(true);
});

test.each<[string, Units, ...(readonly [advice: string, lower: number, upper: number])[]]>([
  ["12 ±0.0005", "mm", ["12 mm ±0.0005", 11.9995, 12.0005], ["12 in ±0.0005", 304.7873, 304.8127]],
  ["2.500-2.508", "mm", ["2.500-2.508 mm", 2.5, 2.508], ["2.500-2.508 in", 63.5, 63.7032]],
  ["2 +0.010/0", "in", ["2 mm +0.010/0", 0.0787402, 0.0791339], ["2 in +0.010/0", 2, 2.01]],
  ["200 +40/-10", "mm", ["200 +0.040/-0.010", 199.99, 200.04], ["200 mm +40/-10", 190, 240]],
  ["160 0/-30", "mm", ["160 0/-0.030", 159.97, 160], ["160 mm 0/-30", 130, 160]],
  ["160 ±20", "mm", ["160 ±0.020", 159.98, 160.02], ["160 mm ±20", 140, 180]],
  ["160 -10.5/-30", "mm", ["160 -0.0105/-0.030", 159.97, 159.9895], ["160 mm -10.5/-30", 130, 149.5]],
  ["3/8 +.001/0", "mm", ["3/8 in +.001/0", 9.525, 9.5504], ["3/8 mm +.001/0", 0.375, 0.376]],
  [".4995/.5005", "mm", [".4995-.5005 in", 12.6873, 12.7127], [".4995-.5005 mm", 0.4995, 0.5005]],
  ["12 +0.018", "mm", ["12 +0.018/0", 12, 12.018]],
  ["12 -0.018", "mm", ["12 0/-0.018", 11.982, 12]],
  ["98-106.259", "mm", ["98.000-106.259", 98, 106.259]],
  ["1-1.125", "in", ["1.000-1.125", 1, 1.125]],
])("of %s (%s) all readings are told, and each is read as what it says", (text, units, ...readings) => {
  expect(adviceFor(text, units)).toEqual(readings.map(([advice]) => advice));
  for (const [advice, ...ends] of readings)
    expect(limits(readCallout(advice, "callout", units), units)).toEqual(ends);
});

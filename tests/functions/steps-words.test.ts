// tests: what STEPS says in words: the rows of a table that an answer rests on, and the comparison that it is.

import { describe, expect, test } from "vitest";
import { sheet } from "../support/sheet.ts";

const linesOf = (id: string, ...args: unknown[]) =>
  sheet("STEPS", id, ...args)
    .map(([line]) => String(line))
    .filter((line) => !line.startsWith("source: "));

describe("a part of a callout", () => {
  test("that is a deviation of a class comes about as the class does", () => {
    for (const [part, id] of [
      ["lower", "LOWERDEV"],
      ["upper", "UPPERDEV"],
    ]) {
      const lines = linesOf("CALLOUT", " 12 P7 ", part);
      expect(lines.slice(0, -1)).toEqual(linesOf(id, 12, "P7").slice(0, -1));
      expect(lines.length).toBeGreaterThan(3);
    }
    // ISO 286-2: 12 P7 is −11 and −29 µm.
    expect(linesOf("CALLOUT", " 12 P7 ", "lower").at(-1)).toBe("lower of 12 P7: -0.029");
  });
  test("that is none is said alone", () => {
    expect(linesOf("CALLOUT", "4X 12 H7", "count")).toEqual(["count of 4X 12 H7: 4"]);
    expect(linesOf("CALLOUT", "12 +0.018/0", "upper")).toEqual(["upper of 12 +0.018/0: 0.018"]);
  });
});

test("a grade is set beside the tolerance", () => {
  // ISO 286-1: IT7 over 10 to 18 mm is 18 µm.
  expect(linesOf("GRADEFOR", "12 +0.020/0")).toEqual([
    "tolerance 0.02 mm; IT7 at 12 mm is 0.018 mm, the coarsest grade no wider",
    "one reaming pass, with a reamer ground to the window and runout within RUNOUTCHECK's limit",
  ]);
});

test("a class and a grade are read with blanks around them, and said without", () => {
  // ISO 286-1: IT7 over 10 to 18 mm is 18 µm, 0.000709 in.
  const line = "IT7 over 10 up to 18 mm: 18 µm";
  expect(linesOf("ITWIDTH", 12, " IT7 ")).toEqual([line, "IT7 = 0.018 mm"]);
  expect(linesOf("ITWIDTH", "12 mm", 7, "in")).toEqual([line, "IT7 = 0.00071 in"]);
  const lines = [line, "fundamental deviation g, over 10 up to 18 mm: es = −6 µm", "ei = es − IT7 = −24 µm"];
  expect(linesOf("UPPERDEV", 12, " g7 ")).toEqual([...lines, "upper limit deviation = −0.006 mm"]);
  expect(linesOf("LOWERDEV", "12 mm", " g7 ", "in")).toEqual([
    ...lines,
    "lower limit deviation = −0.00094 in",
  ]);
});

test("a fit is named with the reason", () => {
  // ISO 286-2: 12 H7 +18/0, g6 −6/−17, n6 +23/+12, s6 +39/+28 µm.
  expect(linesOf("FITTYPE", "12 H7/g6").at(-1)).toBe("clearance: the minimum clearance is 0 or more");
  expect(linesOf("FITTYPE", "12 H7/n6").at(-1)).toBe(
    "transition: the minimum clearance is negative and the maximum positive",
  );
  expect(linesOf("FITTYPE", "12 H7/s6").at(-1)).toBe("interference: the maximum clearance is 0 or less");
});

test("a stepped reamer is shown with its band, 4 µm to 5.5 mm, 5 µm above, .0002 in", () => {
  // 5.49 H8 and 5.5 H7 are 18 and 12 µm wide (ISO 286-1): 15 % and 35 % rounded up are 3 and 7, 2 and 5 µm.
  expect(linesOf("REAMERSIZE", "5.49 H8")).toEqual([
    "window of a new reamer: 5.498 mm to 5.505 mm",
    "steps of 0.01 mm: 5.5 mm, up to 5.504 mm with its band, lies in the window",
  ]);
  expect(linesOf("REAMERSIZE", "5.5 H7")).toEqual([
    "window of a new reamer: 5.505 mm to 5.51 mm",
    "steps of 0.01 mm: 5.5 mm, up to 5.504 mm with its band, is below the window",
    "steps of 0.005 mm: 5.505 mm, up to 5.51 mm with its band, lies in the window",
  ]);
  expect(linesOf("REAMERSIZE", ".5000 +.0005/0", undefined, undefined, "in")).toEqual([
    "window of a new reamer: 0.5002 in to 0.5004 in",
    "steps of 0.0005 in: 0.5 in, up to 0.5002 in with its band, is below the window",
    "steps of 0.0001 in: 0.5002 in, up to 0.5004 in with its band, lies in the window",
  ]);
  expect(linesOf("REAMERSIZE", ".2000 +.0005/0", undefined, undefined, "in").at(-1)).toBe(
    "steps of 0.0001 in: 0.2002 in, up to 0.2004 in with its band, lies in the window",
  );
});

test("a drill is shown among those that leave the stock", () => {
  // Over 5 to 20 mm 0.2 to 0.3 mm, over 3/16 to 1/2 in .008 to .016 in: common practice.
  expect(linesOf("DRILLFOR", 12)).toEqual([
    "usual stock: 0.2 mm to 0.3 mm, middle 0.25 mm",
    "11.7 mm leaves 0.3 mm",
    "11.8 mm leaves 0.2 mm",
    "nearest the middle, of two the larger: 11.8",
  ]);
  expect(linesOf("DRILLFOR", 0.5, undefined, undefined, "in")).toEqual([
    "usual stock: 0.008 in to 0.016 in, middle 0.012 in",
    "31/64 (0.484375 in) leaves 0.015625 in",
    "nearest the middle, of two the larger: 31/64",
  ]);
  expect(linesOf("DRILLNAME", 11.75)).toEqual([
    "largest standard drill up to 11.75 mm: 11.7 mm",
    "next larger: 11.8 mm",
  ]);
  expect(linesOf("DRILLNAME", 0.48, undefined, "in")).toEqual([
    "largest standard drill up to 0.48 in: 15/32 (0.46875 in)",
    "next larger: 31/64 (0.484375 in)",
  ]);
  expect(linesOf("DRILLNAME", 100)).toEqual(["largest standard drill up to 100 mm: 100 mm"]);
});

test("shared reamers are shown with the window of each hole", () => {
  // 12 H7 12.008–12.015, 12 +0.020/0 12.010–12.017: 5 µm in common.
  expect(linesOf("SHAREDREAMERS", [[" 12 H7 "], ["12 +0.020/0"]])).toEqual([
    "window for 12 H7: 12.008 to 12.015 mm",
    "window for 12 +0.020/0: 12.01 to 12.017 mm",
    "one reamer of 12.01 to 12.015 mm for 12 H7; 12 +0.020/0",
  ]);
});

test("a plan names the functions that its cells are", () => {
  const lines = linesOf("PLAN", "12 H7", "C45", 30).join("\n");
  for (const id of ["LIMITS", "REAMERLIMITS", "REAMERSIZE", "DRILLFOR", "CUTTINGDATA", "HOLETIME", "STEPS"])
    expect(lines).toContain(id);
  for (const value of ["2 mm", "3 mm", "0.08 in", "0.12 in"]) expect(lines).toContain(value);
});

test("a share of the tolerance says which class of gauge it is", () => {
  // 10 H7 is 15 µm wide: 6·√(0.8² + 0.6²) = 6 µm, 40 %; of 0.25 and 0 µm 1.5 µm, 10 %.
  expect(linesOf("GAUGESHARE", 0.0008, 0.0006, "10 H7").at(-1)).toMatch(/^unfit: /);
  expect(linesOf("GAUGESHARE", 0.00025, 0, "10 H7").at(-1)).toMatch(/^good: /);
  expect(linesOf("GAUGESHARE", 0.0005, 0, "10 H7").at(-1)).toMatch(/^marginal: /);
});

test("a runout is set beside its limit, the usual one where none is given", () => {
  expect(linesOf("RUNOUTCHECK", 0.008)).toEqual(["runout 0.008 mm, limit 0.005 mm", "over by 0.003"]);
  expect(linesOf("RUNOUTCHECK", 0.008, 0.01)).toEqual(["runout 0.008 mm, limit 0.01 mm", "ok"]);
  expect(linesOf("RUNOUTCHECK", 0.0003, undefined, "in")).toEqual([
    "runout 0.0003 in, limit 0.0002 in",
    "over by 0.0001",
  ]);
});

test("runout in one plane is one line, with angles a sum of vectors", () => {
  expect(linesOf("RUNOUTAT", 0.004, 20, 0.004, 120, 160).length).toBe(3);
  const lines = linesOf("RUNOUTAT", 0.004, 20, 0.004, 120, 160, 0, 90);
  const names = lines.filter((_, at) => at % 3 === 0).map((line) => line.split(" = ")[0]);
  expect(names).toEqual(["x1", "y1", "x2", "y2", "x", "y", "runout"]);
  // x = 4·(1 − 1.4), y = 4·1.4 µm.
  expect(lines.at(-1)).toMatch(/^runout = 0\.005824\d* as the readings$/);
});

test("squares of readings have a unit of area", () => {
  // 1.5² + 1.5² µm².
  expect(linesOf("CAPABILITY", [[10.0075], [10.0105], [10.009]], "10 H7")[1]).toBe(
    "spread = √(0.0000045 mm² / (3 − 1))",
  );
  expect(linesOf("CAPABILITY", [[0.5001], [0.5003], [0.5002]], ".5000 +.0005/0", "in")[1]).toBe(
    "spread = √(2e-8 in² / (3 − 1))",
  );
});

import { describe, expect, test } from "vitest";
import { across, cell, down, messageOf, sheet } from "../support/sheet.ts";

describe("TORQUE", () => {
  test("in inches is the torque in mm in lbf·in", () => {
    // 1 lbf·in is 0.1129848290276167 N·m (NIST SP 811).
    const metric = cell("TORQUE", "C45", 12.7, 12.3, 0.254, 6);
    const inch = cell("TORQUE", "C45", "12.7 mm", "12.3 mm", 0.01, 6, 45, "in");
    expect(inch).toBeCloseTo(metric / 0.1129848290276167, 9);
  });

  test("a drill as large as the reamer spoils its own row only", () => {
    const cells = sheet("TORQUE", "C45", 10, down(9.8, 10), 0.24, 6);
    expect(cells[0][0]).toBeCloseTo(0.4344633, 6);
    expect(messageOf(cells[1][0])).toMatch(/^drill is 10, not smaller than the diameter 10/);
  });

  test.each([
    [["unobtainium", 10, 9.8, 0.24, 6], /^material "unobtainium" is not known/],
    [["C45", 10, undefined, 0.24, 6], /^drill is empty or 0/],
    [["C45", 10, 9.8, 0.24, 6.5], /^flutes is 6.5. Write a whole number/],
    [["C45", 10, 9.8, 0.24, 6, 91], /^chamferAngle is 91. Write an angle in degrees over 0, up to 90/],
  ])("%j", (args, message) => {
    expect(messageOf(cell("TORQUE", ...args))).toMatch(message);
  });
});

describe("POWER", () => {
  test("a column of torques with a row of speeds gives a grid", () => {
    const cells = sheet("POWER", down(100, 50), across(955, 1910));
    expect(cells.map((row) => row.map((power: any) => power.toFixed(3)))).toEqual([
      ["10.001", "20.001"],
      ["5.000", "10.001"],
    ]);
  });

  test("an efficiency divides, and none over 1 is taken", () => {
    expect(cell("POWER", 100, 955, 0.8)).toBeCloseTo(cell("POWER", 100, 955) / 0.8, 12);
    expect(messageOf(cell("POWER", 100, 955, 80))).toMatch(/^efficiency is 80. Write 0.8 for 80 %/);
  });
});

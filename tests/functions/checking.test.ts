import { describe, expect, test } from "vitest";
import { across, cell, down, messageOf, sheet } from "../support/sheet.ts";

describe("CONVERT", () => {
  test("0 is a value, texts are numbers, an empty row is nothing", () => {
    expect(sheet("CONVERT", down(0, "12,5", " 1/2 ", null), "in", "mm")).toEqual([
      [0],
      [317.5],
      [12.7],
      [""],
    ]);
    expect(cell("CONVERT", 0, "C", "F")).toBe(32);
  });

  test("one value into a row of units", () => {
    expect(sheet("CONVERT", 1, "IN", across("mm", "thou", "uin"))).toEqual([[25.4, 1000, 1e6]]);
  });

  test.each([
    [[1, "ipm", "ipr"], /needs the rpm/],
    [[1, "mm", "kW"], /^from is "mm" \(length\) and to is "kW" \(power\)/],
    [[1, "furlong", "mm"], /^from "furlong" is not a known unit/],
    [[1, "mm", "cubit"], /^to "cubit" is not a known unit/],
    [["1 in", "in", "mm"], /^value "1 in" carries a unit/],
    [["much", "in", "mm"], /^value "much" is not a number/],
    [[1, null, "mm"], /^from is empty or 0/],
  ])("refuses %j", (args, message) => {
    expect(messageOf(cell("CONVERT", ...args))).toMatch(message);
  });
});

describe("CHECK", () => {
  test("a column of hand figures, 0 among them", () => {
    expect(sheet("CHECK", down(381.7, 0, null, "763,94"), 381.972).flat()).toEqual([
      "within 1 %: 0.0712 % low",
      "100 % low",
      "",
      expect.stringMatching(/^2 times too high: radius for diameter or /),
    ]);
    expect(cell("CHECK", 0, 0)).toBe("ok");
  });

  test("a share of nothing is refused", () => {
    expect(messageOf(cell("CHECK", 1, 0))).toMatch(/^expected is 0 and handFigure is 1/);
    expect(messageOf(cell("CHECK", 1, 1, 5))).toMatch(/^allowedShare is 5. Write 0.05 for 5 %/);
  });
});

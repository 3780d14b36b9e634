// tests: units: the words for them, what they set, units written in a cell.

import { describe, expect, test } from "vitest";
import { across, cell, declarations, down, messageOf, row, sheet } from "../support/sheet.ts";

describe("the words", () => {
  test.each(["mm", "MM", "Metric", " metric ", "mm\u00a0"])("%j is mm", (units) => {
    expect(cell("STOCK", 10, undefined, units)).toBe(0.25);
  });

  test.each(["in", "IN", "In", "inch", "INCHES", '"', " inches "])("%j is in", (units) => {
    // 0.008 to 0.016 in is left to 1/2 in.
    expect(cell("STOCK", 0.5, undefined, units)).toBe(0.012);
  });

  test.each([undefined, null, "", "  ", [[null]], [[""]]])("left out or blank (%j) is mm", (units) => {
    expect(cell("STOCK", 10, undefined, units)).toBe(0.25);
  });

  test.each(["cm", "millimetre", "i", "__proto__", "constructor", 25.4, true, "m m"])(
    "%j is refused",
    (units) => {
      const message = messageOf(cell("STOCK", 10, undefined, units));
      expect(message).toMatch(/^units .*"mm" or "in"/);
    },
  );

  test("a bad unit spoils its row alone", () => {
    const cells = sheet("STOCK", down(10, 10, 0.5), undefined, down("mm", "cm", "in")).flat();
    expect([cells[0], cells[2]]).toEqual([0.25, 0.012]);
    expect(messageOf(cells[1])).toContain('"cm"');
  });

  test("may stand in a column or a row, as any argument", () => {
    expect(sheet("MAXSIZE", "0.9 H7", across("mm", "in"))).toEqual([[0.91, 0.90083]]);
  });
});

describe("the set of units", () => {
  // 12·V/(π·D) with V in ft/min and D in in; 1000·v/(π·D) with v in m/min and D in mm.
  test("surface speed is in m/min or ft/min, diameter in mm or in", () => {
    expect(cell("RPM", 15, 10)).toBeCloseTo(477.464829, 6);
    expect(cell("RPM", 80, 0.5, undefined, "in")).toBeCloseTo(611.154981, 6);
    expect(cell("RPM", 80 * 0.3048, 12.7)).toBeCloseTo(611.154981, 6);
  });

  test("deviations come in the unit of the sheet, so that size plus deviation is a size", () => {
    expect(cell("UPPERDEV", 20, "P7")).toBe(-0.014);
    // 0.018 mm is 0.000709 in.
    expect(cell("UPPERDEV", 0.5, "H7", "in")).toBe(0.00071);
  });

  test("power is in kW or hp, torque in N·m or lbf·in", () => {
    // 2π·955·100/60000 kW; 63025.36 lbf·in·rev/min to the hp.
    expect(cell("POWER", 100, 955)).toBeCloseTo(10.00074, 4);
    expect(cell("POWER", 63025.36, 1, undefined, "in")).toBeCloseTo(1, 6);
  });

  test("temperature is in °C or °F", () => {
    // 68 °F is 20 °C: nothing expands.
    expect(cell("SIZEAT20", 2, 68, "aluminum", undefined, undefined, "in")).toBe(2);
    expect(cell("SIZEAT20", 50, 20, "aluminum")).toBe(50);
  });

  test("a hole takes seconds in either", () => {
    expect(cell("HOLETIME", 25.4, 254)).toBe(12);
    expect(cell("HOLETIME", 1, 10, undefined, undefined, undefined, "in")).toBe(12);
  });
});

describe("a unit written in the cell", () => {
  test("wins over units and is converted", () => {
    expect(cell("STOCK", "0.5 in")).toBe(0.25);
    expect(cell("STOCK", "12.7 mm", undefined, "in")).toBe(0.012);
    expect(cell("RPM", 15, "0.5 in")).toBeCloseTo(cell("RPM", 15, 12.7), 9);
    expect(row("CLEANUP", '1/64"', "0.1 mm")).toEqual([0.0984375, 0.2984375]);
    expect(row("LIMITS", "12 mm H7", "in")).toEqual([0.4724409, 0.4731509]);
  });

  test("is its cell's alone", () => {
    const cells = sheet("STOCK", down(12.7, "0.5 in", "12.7 mm", 12.7)).flat();
    expect(cells).toEqual([0.25, 0.25, 0.25, 0.25]);
  });

  const withoutUnits = ["FEEDRATE", "FEEDPERREV", "FEEDPERTOOTH", "RUNOUTAT", "STACKUP"];
  test.each(withoutUnits)("%s has no units and refuses one", (id) => {
    const { parameters } = declarations.find((declaration) => declaration.id === id)!;
    expect(parameters.map(({ name }) => name)).not.toContain("units");
    const message = messageOf(cell(id, "0.3 mm", 1, 1, 2, 1));
    expect(message).toContain(`"0.3 mm" carries a unit that ${parameters[0].name} does not take`);
  });

  test("DEPTHRATIO has no units and takes them", () => {
    expect(cell("DEPTHRATIO", 30, 12)).toBe(2.5);
    expect(cell("DEPTHRATIO", "1 in", "10 mm")).toBeCloseTo(2.54, 12);
    expect(cell("DEPTHRATIO", "25.4 mm", "1 in")).toBeCloseTo(1, 12);
    expect(cell("DEPTHRATIO", "1 in", '1/2"')).toBe(2);
    expect(cell("DEPTHRATIO", "30 mm", 12)).toBe(2.5);
    // 30 mm or 30 in, 2.4 or 60 diameters.
    expect(messageOf(cell("DEPTHRATIO", 30, "0.5 in"))).toBe(
      "depth is 30, which could be mm or inches beside a length in inches. Write its unit too.",
    );
    expect(messageOf(cell("DEPTHRATIO", "1 in", 10))).toMatch(/^diameter is 10, which could be/);
  });
});

test("STARTSPEED: the table in one unit, the other converted exactly", () => {
  for (const material of ["low-carbon steel", "aluminum", "titanium", "gray iron"])
    for (const tool of ["HSS", "carbide"])
      expect(cell("STARTSPEED", material, tool)).toBeCloseTo(
        cell("STARTSPEED", material, tool, "in") * 0.3048,
        9,
      );
});

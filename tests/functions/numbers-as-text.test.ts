// tests: cells that hold numbers as text, and numbers that are none.

import { describe, expect, test } from "vitest";
import { cell, down, messageOf, sheet } from "../support/sheet.ts";

describe("a length as text", () => {
  test.each([
    ["12,5", 12.5],
    [" 12.5 ", 12.5],
    ["12.5 mm", 12.5],
    ["3 µm", 0.003],
    ["3 um", 0.003],
    ["250 micron", 0.25],
    ["500 thou", 12.7],
    ["1/2 in", 12.7],
    [".500 mm", 0.5],
    ["0.500", 0.5],
    [".5", 0.5],
    ["0.5 in", 12.7],
    ['1/2"', 12.7],
    ["\u00a012,5\u202fmm", 12.5],
  ])("%j is %d mm", (text, length) => {
    expect(cell("DRILLDEPTH", text, 1)).toBe(length + 1);
  });

  test.each([
    [".500", 0.5],
    ["1/2", 0.5],
    ["1 1/2", 1.5],
    ["1-1/2", 1.5],
    ["31/64", 0.484375],
    ["500 mil", 0.5],
    ["12.7 mm", 0.5],
  ])("%j is %d in", (text, length) => {
    expect(sheet("CLEANUP", text, 0, "in")).toEqual([[length / 2, length / 2]]);
  });

  test.each(["3/8", ".500", "1-1/2", "31/64", ",500", ".0005"])(
    "%j is no length in a sheet in mm",
    (text) => {
      const message = messageOf(cell("RPM", 20, text));
      expect(message).toContain(`diameter "${text}" is `);
      expect(message).toMatch(/an inch size\. Write .* in, or /);
      expect(messageOf(sheet("REAMERLIMITS", "12 H7", text)[0][0])).toMatch(/^cutsOver .* inch size/);
      expect(messageOf(cell("HOLETIME", text, 100))).toMatch(/^depth .* inch size/);
      expect(messageOf(cell("UPPERDEV", text, "H7"))).toMatch(/^size .* inch size/);
      expect(cell("DEPTHRATIO", text, text)).toBe(1);
    },
  );

  test("in a column beside numbers", () => {
    expect(sheet("FEEDRATE", 2, down("12,5", 12.5, " 12.5 ")).flat()).toEqual([25, 25, 25]);
  });
});

describe("other numbers as text are read likewise, without units", () => {
  test.each([
    ["12,5", 12.5],
    ["1/2", 0.5],
    ["1-1/2", 1.5],
    [".5", 0.5],
  ])("%j is %d", (text, number) => {
    expect(cell("FEEDRATE", text, 1)).toBe(number);
  });

  test("a share in percent", () => {
    expect(cell("PARTSPERSHIFT", 60, 8, "85 %")).toBe(408);
    expect(cell("PARTSPERSHIFT", 60, 8, "85%")).toBe(408);
    expect(cell("PRICE", 10, null, null, null, "12,5 %")).toBe(11.25);
    expect(messageOf(cell("PARTSPERSHIFT", 60, 8, "185 %"))).toMatch(/^uptime is "185 %"/);
    expect(messageOf(cell("PARTSPERSHIFT", 60, 8, 85))).toBe("uptime is 85. Write 0.85 for 85 %.");
    expect(messageOf(cell("FEEDRATE", "15 %", 1))).toMatch(/^feedPerRev "15 %"/);
  });

  test("the unit that an argument has anyway", () => {
    expect(cell("RPM", "15 m/min", "10 mm")).toBe(cell("RPM", 15, 10));
    expect(cell("RPM", "80 sfm", "1/2", undefined, "in")).toBe(cell("RPM", 80, 0.5, undefined, "in"));
    expect(cell("RPM", 15, 10, "400 rpm")).toBe(400);
    expect(cell("FEEDRATE", 0.3, "382 rev/min")).toBe(cell("FEEDRATE", 0.3, 382));
    expect(cell("HOLETIME", 30, "290 mm/min")).toBe(cell("HOLETIME", 30, 290));
    expect(cell("CYCLETIME", "30 s")).toBe(30);
    expect(sheet("RPM", "15 m/min", 10, undefined, down("mm", "mm")).flat()).toEqual(
      sheet("RPM", 15, down(10, 10)).flat(),
    );
  });

  test.each([
    ["RPM", ["15 m/min", 0.5, undefined, "in"], /^surfaceSpeed "15 m\/min" .*like 80\./],
    ["RPM", ["80 ft/min", 10], /^surfaceSpeed "80 ft\/min"/],
    ["RPM", ["15 mm", 10], /^surfaceSpeed "15 mm" carries a unit .*in m\/min/],
    ["HOLETIME", [30, "290 rpm"], /^feedRate "290 rpm"/],
    ["FEEDRATE", ["0.3 mm", 400], /^feedPerRev "0.3 mm" carries a unit/],
  ] as const)("%s%j: no other unit", (id, args, message) => {
    expect(messageOf(cell(id, ...args))).toMatch(message);
  });

  test("shares, counts and angles", () => {
    expect(cell("PARTSPERSHIFT", 60, 8, "0,85")).toBe(408);
    expect(cell("FEEDPERTOOTH", 0.6, "6")).toBeCloseTo(0.1, 12);
    expect(sheet("DRILLDEPTH", 30, 2, 3, 11.7, "118")).toEqual(sheet("DRILLDEPTH", 30, 2, 3, 11.7, 118));
  });
});

describe("a comma", () => {
  test.each([
    ["0,250", 0.25],
    [",250", 0.25],
    ["1,25", 1.25],
    ["1,2500", 1.25],
    ["00,125", 0.125],
  ])("%j: decimal, as nothing else can be meant", (text, number) => {
    expect(cell("FEEDRATE", text, 1)).toBe(number);
  });

  test.each(["1,250", "12,500", "10,001"])("%j is refused, and the message says why", (text) => {
    const [whole, rest] = text.split(",");
    expect(messageOf(cell("FEEDRATE", text, 1))).toContain(`could be ${whole}.${rest} or ${whole}${rest}`);
  });

  test.each(["1.250,5", "1,250.5"])("%j has both marks", (text) => {
    expect(messageOf(cell("FEEDRATE", text, 1))).toMatch(/^feedPerRev .*both a comma and a point/);
  });
});

describe("a drill by its name, in either unit", () => {
  // Number and letter sizes as in ASME B94.11M: #15 0.1800 in, F 0.2570 in, #80 0.0135 in.
  test.each([
    ["#15", 0.18],
    ["No. 15", 0.18],
    ["no 15", 0.18],
    ["F", 0.257],
    ["f", 0.257],
    ["#80", 0.0135],
    ["31/64", 0.484375],
    ["1-7/32", 1.21875],
    ["0.5 in", 0.5],
    ["12.7 mm", 0.5],
  ])("%j is %d in", (text, inches) => {
    expect(sheet("DRILLDEPTH", 1, 0.1, 0, text, undefined, "in")).toEqual(
      sheet("DRILLDEPTH", 1, 0.1, 0, inches, undefined, "in"),
    );
    expect(sheet("DRILLDEPTH", 30, 2, 3, text)).toEqual(sheet("DRILLDEPTH", 30, 2, 3, inches * 25.4));
  });

  test("a bare number is a diameter, and other texts are refused", () => {
    expect(sheet("DRILLDEPTH", 30, 2, 3, "11.7")).toEqual(sheet("DRILLDEPTH", 30, 2, 3, 11.7));
    for (const text of ["#0", "#99", "AA", "No.", "1/0", "__proto__", "#1.5"])
      expect(messageOf(sheet("DRILLDEPTH", 30, 2, 3, text)[0][0])).toMatch(/^drill /);
  });
});

describe("refused", () => {
  test.each(["abc 12", "12 abc", "approx. 12", "12 or 13", "Ø12 H7", "12;5", "12_5", "1'250"])(
    "%j: no number is taken out of the middle of a text",
    (text) => {
      const message = messageOf(cell("STOCK", text));
      expect(message).toMatch(/^diameter /);
      expect(message).toContain(`"${text}"`);
    },
  );

  test.each([true, false])("%j is no number", (value) => {
    expect(messageOf(cell("STOCK", value))).toMatch(/^diameter is (TRUE|FALSE). Write a length over 0/);
    expect(messageOf(cell("FEEDRATE", 1, value))).toMatch(/^rpm is (TRUE|FALSE)/);
    expect(messageOf(cell("LIMITS", value))).toMatch(/^callout is (TRUE|FALSE)/);
  });

  test.each([
    "٣",
    "１２",
    "१२",
    "½",
    "Ⅻ",
    "12\u0000",
    "\u0007",
    "__proto__",
    "constructor",
    "1e3",
    "Infinity",
    "NaN",
  ])("%j", (text) => {
    expect(messageOf(cell("STOCK", text))).toMatch(/^diameter .* is not a number/);
  });

  test.each([-1, "-1", -0.0001])("%j: not over 0", (value) => {
    expect(messageOf(cell("STOCK", value))).toBe(
      `diameter is ${typeof value === "string" ? `"${value}"` : value}. Write a length over 0, like 12.5.`,
    );
  });
});

describe("a length over 3150 mm (124 in)", () => {
  // 1 February 2025 is day 45689 of a sheet.
  test.each([45689, 3150.01, "4000", -45689])("%j is refused with the hint at a date", (value) => {
    expect(messageOf(cell("STOCK", value))).toMatch(/^diameter is .*over 3150 mm.*1\/2.*date/);
  });

  test("in inches from 124 on", () => {
    expect(messageOf(cell("STOCK", 124.001, undefined, "in"))).toMatch(/over 124 in.*date/);
    expect(cell("STOCK", 124, undefined, "in")).toBe(0.0415);
    expect(messageOf(cell("STOCK", "125 in"))).toMatch(/over 3150 mm.*date/);
  });

  test("3150 mm is none", () => {
    expect(cell("UPPERDEV", 3150, "H7")).toBe(0.21);
  });

  test("holds in a column as for a single cell, and for what may be negative", () => {
    expect(
      sheet("STOCK", down(45689, 45689))
        .flat()
        .map((one) => messageOf(one)),
    ).toEqual(new Array(2).fill(messageOf(cell("STOCK", 45689))));
    expect(messageOf(cell("REAMERLIMITS", "12 H7", -4000))).toMatch(/^cutsOver .*over 3150 mm/);
    expect(messageOf(sheet("REAMERLIMITS", "12 H7", down(0, -4000))[1][0])).toMatch(
      /^cutsOver .*over 3150 mm/,
    );
  });

  test("holds for the depths and diameters of DEPTHRATIO", () => {
    expect(messageOf(cell("DEPTHRATIO", 45689, 12))).toMatch(/^depth is .*date/);
    expect(messageOf(cell("DEPTHRATIO", 12, "45689"))).toMatch(/^diameter is .*date/);
  });

  test("does not hold for what is no length", () => {
    expect(cell("FEEDRATE", 1, 45689)).toBe(45689);
  });
});

describe("long and odd texts", () => {
  const long = "x".repeat(50_000);
  test("are refused with their length, wherever a text may stand", () => {
    for (const message of [
      messageOf(cell("STOCK", long)),
      messageOf(cell("LIMITS", long)),
      messageOf(cell("UPPERDEV", 12, long)),
      messageOf(cell("STOCK", 12, long)),
      messageOf(cell("STOCK", 12, undefined, long)),
      messageOf(cell("STOCK", 12, undefined, long)),
      messageOf(cell("DRILLNAME", 12, long)),
      messageOf(cell("CONVERT", 1, long, "mm")),
      messageOf(cell("HOLETIME", 1, 1, undefined, undefined, long)),
      messageOf(cell("CHIPPATH", "through", long)),
    ]) {
      expect(message).toMatch(/^\w+ is a text of 50000 characters/);
      expect(message.length).toBeLessThan(120);
    }
  });

  test("with a thousand brackets are no danger", () => {
    for (const text of ["(".repeat(199), "[".repeat(199), "1/".repeat(99), "-".repeat(199)])
      for (const id of ["LIMITS", "STOCK"]) expect(messageOf(cell(id, text))).toMatch(/^(callout|diameter) /);
  });

  test("are quoted shortened, without control characters", () => {
    const message = messageOf(cell("STOCK", `12\u0001\u0007\n${"ab ".repeat(60)}`));
    expect(message).not.toMatch(/[\u0000-\u001f]/);
    expect(message).toContain("…");
    expect(message.length).toBeLessThan(130);
  });
});

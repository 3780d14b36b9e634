// tests: the two errors that a function raises, and error cells that come in.

import { describe, expect, test } from "vitest";
import { across, cell, down, isError, messageOf, said, sheet } from "../support/sheet.ts";

describe("one bad row", () => {
  test("spoils that row only", () => {
    const cells = sheet("STOCK", down(10, "abc", -1, 45689, true, { code: "#N/A" }, 10)).flat();
    expect([cells[0], cells[6]]).toEqual([0.25, 0.25]);
    expect(cells.slice(1, 6).every(isError)).toBe(true);
  });
});

describe("#VALUE!: the input is wrong", () => {
  test.each([
    ["text where a number belongs", cell("STOCK", "abc"), /^diameter "abc"/],
    ["a class that is none", cell("UPPERDEV", 12, "7H"), /^class "7H"/],
    ["a letter that is not used", cell("UPPERDEV", 12, "L7"), /^class "L7".*I, L, O, Q, and W/],
    ["a grade out of range", cell("UPPERDEV", 12, "H19"), /^class "H19".*01 to 18/],
    ["a grade out of range", cell("ITWIDTH", 12, 19), /^grade "19"/],
    ["an unknown material", cell("STOCK", 12, "unobtainium"), /^material "unobtainium"/],
    ["an unknown tool", cell("STARTSPEED", "C45", "stone"), /^tool "stone"/],
    ["an unknown unit", cell("STOCK", 12, undefined, "cm"), /^units "cm"/],
    ["an unknown series", cell("DRILLNAME", 12, "wood"), /^series "wood"/],
    ["an unknown part", cell("CALLOUT", "12 H7", "colour"), /^part "colour"/],
    ["a callout that can't be read", cell("LIMITS", "hello"), /^callout "hello"/],
    ["a negative diameter", cell("RPM", 15, -10), /^diameter is -10/],
    ["n of 1", cell("TAYLORLIFE", 18, 1, 60), /^n is 1/],
    ["n over 1", cell("TAYLORLIFE", 18, 1.5, 60), /^n is 1.5/],
    ["a drill not smaller than the reamer", cell("STOCKCHECK", 12, 12), /^drill is 12, not smaller/],
    [
      "flutes that are no whole number",
      cell("FEEDPERTOOTH", 0.6, 5.5),
      /^flutes is 5.5. Write a whole number/,
    ],
  ])("%s", (_, result, message) => {
    expect(messageOf(result)).toMatch(message);
  });

  test("numbers too large to compute with", () => {
    expect(messageOf(cell("FEEDRATE", 1e300, 1e300))).toMatch(/too large to compute with/);
  });
});

describe("#N/A: the input is right and there is no answer", () => {
  test.each([
    ["a class not defined at that size", cell("UPPERDEV", 24, "T7"), /^class "T7" is not defined.* 24 mm/],
    ["a fit not tabulated at that size", cell("LIMITS", "25 RC4", "in"), /RC4.*25 in/],
    ["no drill so small", cell("DRILLNAME", 0.01), /^diameter is 0.01/],
    ["no reamer step in the window", cell("REAMERSIZE", "10 H6"), /^callout leaves a window/],
    ["no payback", cell("PAYBACK", 6000, -0.1, 40_000), /./],
    ["a tolerance too narrow for the rule", cell("REAMERLIMITS", "12 mm +0.001/0"), /^callout /],
    ["acceptance limits that cross", cell("ACCEPTLIMITS", "10 H7", 0.01), /^uncertainty is 0.01/],
  ])("%s", (_, result, message) => {
    expect(messageOf(result, "#N/A")).toMatch(message);
  });
});

describe("an error cell given as input", () => {
  const raisable = ["#VALUE!", "#N/A", "#DIV/0!", "#NUM!", "#NULL!"];

  test.each(raisable)("%s comes back as itself", (code) => {
    const error = { code };
    expect(sheet("LIMITS", down("12 H7", error))[1]).toEqual([error, error]);
    // Alone it is thrown to the host, as one of its own class.
    expect(cell("STOCK", error)).toMatchObject({ code });
    expect(cell("RPM", 15, 10, error)).toMatchObject({ code });
  });

  test.each(["#NAME?", "#REF!", "#SPILL!", "#CALC!", "#GETTING_DATA", "#FIELD!", "#BLOCKED!", "#BUSY!"])(
    "%s, which a function can't raise, becomes #VALUE! naming the argument",
    (code) => {
      const message = messageOf(cell("STOCK", { code }));
      expect(message).toMatch(/^diameter /);
      expect(message).toContain(code);
    },
  );

  test("is known by its code, whatever its class", () => {
    class Other {
      readonly code = "#NUM!";
    }
    const errors = [
      new Other(),
      Object.assign(new Error("x"), { code: "#NUM!" }),
      { code: "#NUM!", message: "m", stack: "" },
    ];
    for (const error of errors) expect(cell("STOCK", down(error, 10))).toBe(error);
  });

  test("may come as a value alone, not in a range", () => {
    expect(cell("RPM", [[15]], { code: "#NULL!" })).toMatchObject({ code: "#NULL!" });
  });

  test("the first argument's error counts, in every row for itself", () => {
    const [first, second] = [{ code: "#NULL!" }, { code: "#NUM!" }];
    expect(sheet("FEEDRATE", down(first, 1, 1), down(second, second, 2)).flat()).toEqual([first, second, 2]);
    expect(sheet("FEEDRATE", down(first, 1), across(1, second))).toEqual([
      [first, first],
      [1, second],
    ]);
  });

  test("text that looks like an error is text", () => {
    expect(messageOf(cell("STOCK", "#N/A"))).toMatch(/^diameter "#N\/A" is not a number/);
  });
});

describe("messages", () => {
  const messages = [
    ...sheet("STOCK", down("abc", -1, 45689, true, "1,250", "1.250,5")).flat(),
    ...sheet(
      "LIMITS",
      down("12", "H7", "12 +0.018", "M12", ".500 H7", "12 L7", "24 T7", "12 H7 (+0.021/0)"),
    ).map((line) => line[0]),
    cell("REAMERLIMITS", "12 h7"),
    cell("WEARALLOWANCE", "12 h7", 12),
    cell("REAMERSIZE", "10 H6"),
    cell("RPM", 15, null),
  ];

  test.each(messages.map((one) => [String(said(one)), one]))("%s", (_, one) => {
    const message = messageOf(one, (one as { code: "#VALUE!" }).code);
    expect(message.replace(/"[^"]*"/g, "").split(/[.!?] (?=[A-Z])/).length).toBeLessThanOrEqual(2);
    expect(message).not.toMatch(/\n/);
    expect(message.length).toBeLessThan(200);
  });

  test.each<[string, unknown, string]>([
    [
      "units one place too early",
      cell("RPM", 15, 10, "in"),
      'maxRpm is "in". Leave maxRpm empty: =REAM.RPM(15, 10, , "in").',
    ],
    [
      "units two places too early",
      cell("STARTFEED", "C45", 10, " in "),
      'tool is "in". Leave tool empty: =REAM.STARTFEED("C45", 10, , , "in").',
    ],
    [
      "units too early behind a text of two lines, which nobody types",
      cell("STARTFEED", "C45\n", 10, "in"),
      'tool is "in". Leave tool empty: =REAM.STARTFEED(material, 10, , , "in").',
    ],
    [
      "units too early beside a column",
      sheet("RPM", 15, down(10, 12), "in")[0][0],
      'maxRpm is "in". Leave maxRpm empty: =REAM.RPM(15, diameter, , "in").',
    ],
    [
      "units too early behind what no cell holds",
      cell(
        "DATAFOR",
        [
          ["material", "speed"],
          ["C45", 15],
        ],
        Number.NaN,
        "C45",
        undefined,
        "in",
      ),
      'diameter is "in". Leave diameter empty: =REAM.DATAFOR(table, column, "C45", , , "in").',
    ],
    [
      "units in place of a size",
      cell("RPM", 15, "inch"),
      'diameter is "inch". Enter a length over 0, and give units last.',
    ],
    [
      "a speed in the other unit",
      cell("RPM", "50 sfm", 10),
      'surfaceSpeed "50 sfm" is in sfm. Write it in m/min, like 15.',
    ],
    [
      "a class turned round",
      cell("LIMITS", "12 7H"),
      'callout "12 7H" has 7H. A class begins with its letter: is H7 meant?',
    ],
    [
      "a size alone, as a number",
      cell("LIMITS", 12),
      'callout "12" has no tolerance. Write it behind the size, like 12 H7 or 12 ±0.1 (a title block may state it).',
    ],
    [
      "a comma",
      cell("RPM", 15, "1,250"),
      'diameter "1,250" could be 1.250 or 1250. Write the one you mean, without a comma.',
    ],
    [
      "a word for a speed",
      cell("RPM", "fast", 10),
      'surfaceSpeed "fast" is not a number. Write one, like 15.',
    ],
    [
      "a word for a rate",
      cell("HOLETIME", 30, 290, 0, 0, "fast"),
      'retractRate "fast" is not a number. Write a feed rate, or "rapid".',
    ],
    ["a share in percent", cell("PARTSPERSHIFT", 60, 8, 85), "uptime is 85. Write 0.85 for 85 %."],
    ["a blank", cell("RPM", 15, null), "diameter is empty or 0. Enter a length over 0."],
    [
      "a callout for a size",
      cell("RPM", 15, "12 H7"),
      'diameter "12 H7" is a callout. Write the number alone, like 12.5.',
    ],
    [
      "an inch size",
      cell("RPM", 20, "3/8"),
      'diameter "3/8" is an inch size. Write 3/8 in, or set units to "in".',
    ],
    [
      "an inch size",
      cell("RPM", 20, ".500"),
      'diameter ".500" is written like an inch size. Write .500 in, or 0.500 for mm.',
    ],
    ["a number below 0", cell("RPM", 15, 10, -5), "maxRpm is -5. Write a number over 0, like 6000."],
    [
      "half a flute",
      cell("FEEDPERTOOTH", 0.6, 5.5),
      "flutes is 5.5. Write a whole number of 1 or more, like 6.",
    ],
    [
      "a word for units",
      cell("RPM", 15, 10, undefined, "cm"),
      'units "cm" is not known. Write "mm" or "in".',
    ],
    ["a yes or no", cell("CHIPPATH", "through", "maybe"), 'blocked is "maybe". Write TRUE or FALSE.'],
    [
      "a date",
      cell("RPM", 15, 45689),
      "diameter is 45689, over 3150 mm. A fraction typed into a plain cell (1/2) becomes a date, so write 0.5 or '1/2.",
    ],
    [
      "a coated hole",
      cell("REAMERLIMITS", "12 H7 AFTER PLATING"),
      'callout "12 H7 AFTER PLATING" holds after coating. Calculate the limits before it with PREPLATE, and ream to those.',
    ],
    [
      "another unit",
      cell("RPM", "15 mm", 10),
      'surfaceSpeed "15 mm" carries a unit that surfaceSpeed does not take. Write it in m/min.',
    ],
  ])("%s", (_, one, words) => {
    expect(messageOf(one)).toBe(words);
  });

  test("PREPLATE takes a coated hole, as LIMITS does", () => {
    expect(sheet("PREPLATE", "10 H7 AFTER PLATING", 0.05, 0.005, 0.5)).toEqual([[10.055, 10.06]]);
    expect(sheet("LIMITS", "10 H7 AFTER PLATING")).toEqual([[10, 10.015]]);
    for (const id of ["REAMERSIZE", "SHAREDREAMERS"])
      expect(messageOf(cell(id, "10 H7 nach dem Verzinken"))).toContain("PREPLATE");
    expect(messageOf(cell("WEARALLOWANCE", "10 H7 AFTER ANODIZE", 10.01))).toContain("PREPLATE");
  });

  test("say what a shaft should have been", () => {
    for (const id of ["REAMERLIMITS", "REAMERSIZE", "PREPLATE"])
      expect(messageOf(cell(id, "12 h7", id === "PREPLATE" ? 0.01 : undefined))).toMatch(
        /^callout.*h7 is a shaft class\. Is H7 meant\?/,
      );
  });
});

test("results hold no error of the engine and no signed zero", () => {
  expect(Object.is(cell("LOWERDEV", 20, "H7"), 0)).toBe(true);
  expect(Object.is(cell("UPPERDEV", 20, "h7"), 0)).toBe(true);
  expect(Object.is(cell("SAVING", 2, 2), 0)).toBe(true);
});

describe("an error that is all of the result", () => {
  /** What the host gets from the function itself. */
  const thrownBy = (call: () => unknown): unknown => {
    try {
      return call();
    } catch (thrown) {
      return thrown;
    }
  };
  const { Error: HostError } = (globalThis as any).CustomFunctions;
  const host = (globalThis as any).CustomFunctions.associate;

  test("is thrown, of the host's class and with its message; one among others stays in its cell", async () => {
    const calls = new Map<string, (...args: unknown[]) => unknown>();
    (globalThis as any).CustomFunctions.associate = (id: string, call: () => unknown) => calls.set(id, call);
    const { register } = await import("../../functions/register.ts");
    const { rpm } = await import("../../functions/speeds.ts");
    register("RPM", rpm, ["spindle-speed"], []);
    (globalThis as any).CustomFunctions.associate = host;
    const call = calls.get("RPM")!;
    const alone = thrownBy(() => call([["fast"]], [[10]], null, null));
    expect(alone).toBeInstanceOf(HostError);
    expect(messageOf(alone)).toContain('surfaceSpeed "fast"');
    const passed = thrownBy(() => call([[{ code: "#DIV/0!" }]], [[10]], null, null));
    expect(passed).toBeInstanceOf(HostError);
    expect(passed).toMatchObject({ code: "#DIV/0!" });
    const [[first], [second]] = call([["fast"], [15]], [[10]], null, null) as unknown[][];
    expect(isError(first)).toBe(true);
    expect(second).toBeCloseTo(477.4648, 4);
  });
});

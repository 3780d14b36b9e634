// tests: every tool of the pane beside the browser workbook, in a real browser. Expected figures: 1 in is 25.4 mm; rpm
// is 1000·v/(π·d); limits of 12 H7 by ISO 286-1:2010 Table 1, its reamer by ISO 522 (15 % and 35 % of 18 µm).

import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { longTest } from "../support/share.ts";
import { startBrowser, type TestBrowser, type Watched } from "./browser.ts";
import {
  cellPlace,
  newSheet,
  openPane,
  paste,
  press,
  select,
  selectedIs,
  told,
  tool,
  undo,
} from "./pane-page.ts";
import { goTo, readSheet } from "./workbook-page.ts";

let browser: TestBrowser;
let watched: Watched;
beforeAll(async () => {
  browser = await startBrowser();
  watched = await openPane(browser, false);
});
afterAll(() => browser?.close());

test("the cautions are one click away, and come once before the first speed", async () => {
  const { page } = watched;
  await tool(page, "cautions");
  expect(await page.locator("#pane-cautions li").count()).toBeGreaterThan(3);
  await tool(page, "find");
  await page.locator("#pane-query").fill("rpm");
  await page.locator("#pane-found button").first().click();
  await page.locator("#pane-argument-surfaceSpeed-0").fill("15");
  await page.locator("#pane-argument-diameter-0").fill("10");
  await select(page, "C40");
  await page.locator("#pane-put [type=submit]").click();
  await page.locator("#pane-first[open]").waitFor();
  expect(await told(page, () => page.keyboard.press("Escape"))).toContain("not read");
  expect((await readSheet(page)).C40).toBeUndefined();
  await page.locator("#pane-put [type=submit]").click();
  expect(await press(page, "#pane-first [value=read]")).toBe("C40 holds =REAM.RPM(15,10)");
  await select(page, "C41");
  expect(await press(page, "#pane-put [type=submit]")).toBe("C41 holds =REAM.RPM(15,10)");
  await page.locator("#pane-back").click();
});

describe("finding and putting in a function", () => {
  test("by what one wants, with its arguments taken from the sheet, for a whole column", async () => {
    const { page } = watched;
    await newSheet(page, [
      ["Diameter", "Speed", "Rpm"],
      ["10", "15"],
      ["20", "15"],
      ["40", "15"],
    ]);
    await tool(page, "find");
    await page.locator("#pane-query").fill("rpm");
    await page.locator("#pane-found button").first().click();
    expect(await page.locator("#pane-name").textContent()).toBe("REAM.RPM");
    expect(await page.locator("#pane-examples").textContent()).toContain("=REAM.RPM(15, 10) gives 477.4648");
    await select(page, "B2:B4");
    expect(await press(page, "[aria-label='Take the selection for surfaceSpeed']")).toMatch(
      /^surfaceSpeed is .*B2:B4/,
    );
    await select(page, "A2:A4");
    await press(page, "[aria-label='Take the selection for diameter']");
    await select(page, "C2");
    await page.locator("input[name=reach][value=column]").check();
    await page.waitForFunction(
      () => document.getElementById("pane-formula")!.textContent === "=REAM.RPM(B2:B4,A2:A4)",
    );
    expect(await press(page, "#pane-put [type=submit]")).toBe("C2 holds =REAM.RPM(B2:B4,A2:A4)");
    const sheet = await readSheet(page);
    expect(Number(sheet.C2)).toBeCloseTo(15000 / (Math.PI * 10), 1);
    expect(Number(sheet.C4)).toBeCloseTo(15000 / (Math.PI * 40), 1);
  });

  longTest("for one cell, and again over it", async () => {
    const { page } = watched;
    await select(page, "E3");
    await page.locator("input[name=reach][value=cell]").check();
    expect(await press(page, "#pane-put [type=submit]")).toBe("E3 holds =REAM.RPM(B3,A3)");
    await page.locator("#pane-argument-maxRpm-0").fill("200");
    expect(await press(page, "#pane-put [type=submit]")).toBe("E3 holds =REAM.RPM(B3,A3,200)");
    expect((await readSheet(page)).E3).toBe("200");
  });

  longTest("refusals: a filled cell, spilled cells, no room, two areas", async () => {
    const { page } = watched;
    const before = await readSheet(page);
    await select(page, "A3");
    expect(await press(page, "#pane-put [type=submit]")).toMatch(/^A3 lies among the cells/);
    await select(page, "C3");
    expect(await press(page, "#pane-put [type=submit]")).toMatch(/^C3 shows the result of a formula/);
    await page.locator("input[name=reach][value=column]").check();
    await select(page, "E2");
    expect(await press(page, "#pane-put [type=submit]")).toMatch(/^E3 is in the way/);
    await select(page, "A2:A3");
    const place = await cellPlace(page, 1, 3);
    await page.keyboard.down("Control");
    await page.mouse.click(place.x, place.y);
    await page.keyboard.up("Control");
    await selectedIs(page, "A2:A3 and B4");
    expect(await press(page, "[aria-label='Take the selection for diameter']")).toMatch(
      /^2 areas are selected/,
    );
    expect(await readSheet(page)).toEqual(before);
  });

  test("a task leads to its functions", async () => {
    const { page } = watched;
    await page.locator("#pane-back").click();
    await page.locator("#pane-query").fill("");
    await page.locator("#pane-found button", { hasText: "How much stock do I leave" }).click();
    await expect(page.locator("#pane-found button b").allTextContents()).resolves.toEqual(
      expect.arrayContaining(["REAM.STOCKRANGE", "REAM.STOCK"]),
    );
  });
});

describe("inch and metric", () => {
  test("shows the change, makes it in one step with its header, and one undo takes it back", async () => {
    const { page } = watched;
    await newSheet(page, [
      ["Depth (in)", "Note", "Speed, sfm"],
      ["1", "12 H7", "100"],
      ["0.5005", "", "50"],
      ["=A2*2", "", ""],
    ]);
    await tool(page, "convert");
    await select(page, "A2:B4");
    await page.locator("#pane-convert [type=submit]").click();
    await page.locator("#pane-change").waitFor();
    expect(await page.locator("#pane-change-facts").textContent()).toMatch(
      /2 figures in A2:B4 .*4 decimals.*1 header.*1 formula/,
    );
    await expect(page.locator("#pane-change-rows tr").allTextContents()).resolves.toEqual([
      "A1Depth (in)Depth (mm)",
      "A2125.4000",
      "A30.500512.7127",
    ]);
    expect((await readSheet(page)).A2).toBe("1");
    await page.locator("#pane-decimals").fill("3");
    await page.locator("#pane-decimals").press("Tab");
    await page.waitForFunction(() =>
      document.getElementById("pane-change-rows")!.textContent.includes("12.713"),
    );
    await page.locator("#pane-decimals").fill("");
    await page.locator("#pane-decimals").press("Tab");
    await page.waitForFunction(() =>
      document.getElementById("pane-change-rows")!.textContent.includes("12.7127"),
    );
    expect(await press(page, "#pane-apply")).toBe("2 figures converted to metric in A2:B4 on Sheet2.");
    const sheet = await readSheet(page);
    expect([sheet.A1, sheet.A2, sheet.A3, sheet.A4, sheet.B2, sheet.C2]).toEqual([
      "Depth (mm)",
      "25.4",
      "12.7127",
      "50.8",
      "12 H7",
      "100",
    ]);
    await undo(page);
    const undone = await readSheet(page);
    expect([undone.A1, undone.A2, undone.A3, undone.A4]).toEqual(["Depth (in)", "1", "0.5005", "2"]);
  });

  longTest("two areas, and a whole column with its header", async () => {
    const { page } = watched;
    await select(page, "A2:A3");
    const from = await cellPlace(page, 2, 1);
    const to = await cellPlace(page, 2, 2);
    await page.keyboard.down("Control");
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 3 });
    await page.mouse.up();
    await page.keyboard.up("Control");
    await selectedIs(page, "A2:A3 and C2:C3");
    await page.locator("#pane-convert [type=submit]").click();
    await page.waitForFunction(() =>
      document.getElementById("pane-change-facts")!.textContent.includes("4 figures in A2:A3 and C2:C3"),
    );
    const header = await cellPlace(page, 2, 0);
    await page.mouse.click(header.x, header.y - 24);
    await selectedIs(page, "C1:C100");
    await page.locator("#pane-kind").selectOption("surface speed");
    await page.locator("#pane-convert [type=submit]").click();
    await page.waitForFunction(() =>
      document.getElementById("pane-change-rows")!.textContent.includes("m/min"),
    );
    expect(await press(page, "#pane-apply")).toMatch(/^2 figures converted/);
    const sheet = await readSheet(page);
    // 100 and 50 ft/min times 0.3048
    expect([sheet.C1, sheet.C2, sheet.C3]).toEqual(["Speed, m/min", "30.5", "15.2"]);
    await page.locator("#pane-kind").selectOption("length");
  });

  longTest("merged and spilled cells, empty cells: a sentence, nothing changed", async () => {
    const { page } = watched;
    await paste(page, [["7", "8"]], "E2");
    await select(page, "E2:E3");
    await page.locator(".o-menu-item-button[title='Merge cells'], [title='Merge cells']").first().click();
    await paste(page, [["=A2:A3"]], "H2");
    const before = await readSheet(page);
    await select(page, "E2:F2", "E2:F3");
    expect(await press(page, "#pane-convert [type=submit]")).toMatch(/^E2 is part of merged cells/);
    await select(page, "H2:H3");
    expect(await press(page, "#pane-convert [type=submit]")).toMatch(/no plain figures.*2 formulas/);
    await select(page, "K7:L9");
    expect(await press(page, "#pane-convert [type=submit]")).toMatch(/empty/);
    expect(await page.locator("#pane-status").getAttribute("data-tone")).toBe("refused");
    expect(await readSheet(page)).toEqual(before);
  });
});

describe("checking hand figures", () => {
  test("names the slips in a column and sums them up, on a sheet with quotes in its name", async () => {
    const { page } = watched;
    await newSheet(page, [
      ["Diameter", "By hand", "Formula"],
      ["10", "477", "=REAM.RPM(15,A2:A4)"],
      ["20", "477.46", ""],
      ["40", "119", ""],
    ]);
    await page.locator(".o-sheet", { hasText: "Sheet3" }).dblclick();
    await page.keyboard.press("Control+a");
    await page.keyboard.type('Job "7" & co');
    await page.keyboard.press("Enter");
    await tool(page, "check");
    await select(page, "B2:C4");
    expect(await press(page, "#pane-check-both")).toMatch(/'Job "7" & co'!B2:B4/);
    expect(await press(page, "#pane-check [type=submit]")).toBe("2 ok, 1 off. The verdicts are in D2:D4.");
    const sheet = await readSheet(page);
    expect([sheet.D1, sheet.D2, sheet.D4]).toEqual(["Check", "ok", "ok"]);
    expect(sheet.D3).toMatch(/^2 times too high: .*radius for diameter/);
    expect(await page.locator("#pane-verdict-facts").textContent()).toMatch(
      /2 ok, 1 off.*1 row: .*radius for diameter/,
    );
    expect(await page.locator("#pane-verdict-rows").textContent()).toContain("B3");
  });

  longTest("columns of different length, and one column for two, are refused", async () => {
    const { page } = watched;
    await select(page, "B2:B4");
    expect(await press(page, "#pane-check-both")).toMatch(/^Select two columns/);
    await page.locator("#pane-hand").fill("B2:B3");
    expect(await press(page, "#pane-check [type=submit]")).toMatch(/B2:B3 has 2 rows and C2:C4 3/);
    await page.locator("#pane-hand").fill("the first");
    expect(await press(page, "#pane-check [type=submit]")).toMatch(/no range of cells/);
    await page.locator("#pane-hand").fill("");
    expect(await press(page, "#pane-check [type=submit]")).toMatch(/^Hand figures: take a selection/);
  });
});

describe("sheets", () => {
  longTest("a new quote is complete in its example row and takes an inch row beside it", async () => {
    const { page } = watched;
    await tool(page, "quote");
    await page.locator("#pane-rows").fill("20");
    expect(await press(page, "#pane-quote [type=submit]")).toMatch(/^The sheet "Quote of holes.*" is added/);
    let sheet = await readSheet(page);
    expect(["T9", "U9", "V9", "W9"].map((cell) => sheet[cell])).toEqual([
      "12.000",
      "12.018",
      "12.008",
      "12.015",
    ]);
    expect(sheet.AO9).toBe("3.44");
    expect(sheet.B3).toBe("860.00");
    expect(sheet.AO10).toBeUndefined();
    await paste(page, [["Second", ".7500 ±.0005 THRU", "in", "", "GG25", "HSS-E", "1", "", "10"]], "A10");
    sheet = await readSheet(page);
    expect(sheet.T10).toBe("0.7495");
    expect(sheet.AO10).toMatch(/^\d/);
    expect(sheet.AL10).toContain("tool and edge change are not in the cost");
  });

  longTest("rows below a quote get their formulas, and a shop table is checked", async () => {
    const { page } = watched;
    await paste(page, [["Last", "10 H7 x 20", "mm", "", "4140", "HSS", "", "", "50"]], "A29");
    expect((await readSheet(page)).A29).toBe("Last");
    await page.locator("#pane-rows").fill("2");
    expect(await press(page, "#pane-quote-continue")).toBe("3 rows got their formulas.");
    expect((await readSheet(page)).AO29).toMatch(/^\d/);
    expect(await press(page, "#pane-shop [type=submit]")).toMatch(/^The sheet "Shop table mm" is added/);
    expect(await press(page, "#pane-shop-check")).toBe("The table has no problems.");
    await page.locator(".o-sheet-name", { hasText: /^Quote of holes$/ }).click();
  });

  longTest("a frozen copy has values and texts where our formulas were", async () => {
    const { page } = watched;
    const before = await readSheet(page);
    await tool(page, "freeze");
    expect(await press(page, "#pane-freeze [type=submit]")).toMatch(
      /^The sheet "Quote of holes.* \(values\)" holds \d+ values in place of REAM formulas\. \d+ other formulas/,
    );
    const after = await readSheet(page);
    expect(after).toEqual(before);
    await goTo(page, "T9");
    await page.waitForFunction(() =>
      Array.from(document.querySelectorAll("#selected dt")).every(
        ({ textContent }) => textContent !== "Formula",
      ),
    );
    expect(await press(page, "#pane-freeze [type=submit]")).toMatch(/has no REAM formula/);
  });

  longTest("the demo's own quote freezes too, errors and all", async () => {
    const { page } = watched;
    await page.locator(".o-sheet-name", { hasText: /^Quote$/ }).click();
    const before = await readSheet(page);
    expect(await press(page, "#pane-freeze [type=submit]")).toMatch(/^The sheet "Quote \(values\)"/);
    expect(await readSheet(page)).toEqual(before);
    await page.locator(".o-sheet-name", { hasText: /^Quote$/ }).click();
  });
});

describe("pictures", () => {
  longTest("the hole of the active cell, with its figures and a copy", async () => {
    const { page } = watched;
    await page.locator(".o-sheet-name", { hasText: /^Quote$/ }).click();
    await tool(page, "hole");
    await goTo(page, "C6");
    expect(await press(page, "#pane-callout-take")).toBe("12 H7 THRU is drawn.");
    const picture = page.locator("#pane-hole-picture svg");
    expect(await picture.getAttribute("role")).toBe("img");
    expect(await picture.locator("desc").textContent()).toContain("from 12.008 mm to 12.015 mm");
    expect(await page.locator("#pane-hole-picture table").textContent()).toContain(
      "Upper limit of the hole12.018",
    );
    expect(await press(page, "#pane-hole-picture button >> nth=1")).toContain("copied");
    const text = await page.evaluate(() => navigator.clipboard.readText());
    expect(text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*12\.015/s);
    expect(await press(page, "#pane-hole-picture button >> nth=0")).toBe("The picture is copied.");
    const types = await page.evaluate(async () =>
      (await navigator.clipboard.read()).flatMap(({ types }) => types),
    );
    expect(types).toContain("image/png");
  });

  longTest("a picture that can't be copied is laid open as text", async () => {
    const { page } = watched;
    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error("blocked"));
    });
    expect(await press(page, "#pane-hole-picture button >> nth=1")).toMatch(/^Copying is blocked here/);
    expect(await page.locator("#pane-hole-picture textarea").inputValue()).toMatch(/^<svg/);
    await page.evaluate(() => {
      delete (navigator.clipboard as { writeText?: unknown }).writeText;
    });
  });

  longTest("what is no callout is refused in a sentence", async () => {
    const { page } = watched;
    await page.locator("#pane-callout").fill("M12");
    expect(await press(page, "#pane-hole [type=submit]")).toMatch(/thread/);
    await page.locator("#pane-callout").fill("<b>12 H7</b>");
    expect(await press(page, "#pane-hole [type=submit]")).toMatch(/^Callout/);
    expect(await page.locator("#pane-status b").count()).toBe(0);
    await goTo(page, "A2");
    expect(await press(page, "#pane-callout-take")).toMatch(/^A2 is empty/);
  });

  longTest("the curve from eight selected figures", async () => {
    const { page } = watched;
    await newSheet(page, [["0.25"], ["60"], ["12"], ["0.3"], ["30"], ["120"], ["40"], ["90"]]);
    await tool(page, "curve");
    await select(page, "A1:A8");
    expect(await press(page, "#pane-curve-take")).toBe("8 figures are taken.");
    expect(await press(page, "#pane-curve [type=submit]")).toBe("The curve is drawn.");
    expect(await page.locator("#pane-curve-picture svg desc").textContent()).toMatch(
      /23\.4 m\/min.*45\.6 m\/min/,
    );
    await page.locator("#pane-curve-n").fill("1.5");
    expect(await press(page, "#pane-curve [type=submit]")).toMatch(/^N is 1.5/);
    await page.locator("#pane-curve-diameter").fill("1/2");
    expect(await press(page, "#pane-curve [type=submit]")).toMatch(/"1\/2" is an inch size/);
    await select(page, "A1:A3");
    expect(await press(page, "#pane-curve-take")).toMatch(/3 figures: select eight or nine/);
  });
});

longTest("a locked sheet is told and stays as it is", async () => {
  const { page } = watched;
  await newSheet(page, [["0.25"], ["60"], ["12"], ["0.3"], ["30"]]);
  await page.locator(".o-sheet.active, .o-sheet[data-id].active").first().click({ button: "right" });
  await page.locator(".o-menu-item", { hasText: "Lock" }).first().click();
  await tool(page, "convert");
  await select(page, "A3:A5");
  await page.locator("#pane-convert [type=submit]").click();
  await page.locator("#pane-change").waitFor();
  expect(await press(page, "#pane-apply")).toMatch(/locked/);
  expect((await readSheet(page)).A3).toBe("12");
});

test("has needed no network, broken no policy and raised no error", () => {
  expect(watched.elsewhere).toEqual([]);
  expect(watched.violations).toEqual([]);
  expect(watched.errors).toEqual([]);
});

describe("what stands in the sheet", () => {
  test("a cell is explained: its inputs with their cells, steps, source", async () => {
    const { page, errors } = watched;
    await newSheet(page, [["15", "10", "=REAM.RPM(A1,B1)"]]);
    await select(page, "C1");
    await tool(page, "explain");
    await page.locator("#pane-explain [type=submit]").click();
    await page.locator("#pane-explained").waitFor();
    expect(await page.locator("#pane-explained-title").textContent()).toBe("C1: REAM.RPM");
    expect(await page.locator(".pane-explained-args tr").first().textContent()).toMatch(/^surfaceSpeedA115/);
    // 1000·15/(π·10)
    expect(await page.locator(".pane-explained-steps").textContent()).toContain("477.46");
    expect(await page.locator(".pane-explained-sources li").count()).toBeGreaterThan(0);
    expect(errors).toEqual([]);
  });

  longTest(
    "a formula with a name, another sheet and a call in a call has the steps of both calls",
    async () => {
      const { page, errors } = watched;
      await newSheet(page, [["30"]]);
      const sheet = (await page.locator(".o-sheet.active").first().textContent())!.trim();
      await page.locator(".o-named-range-selector input").first().fill("Pace");
      await page.locator(".o-named-range-selector input").first().press("Enter");
      await newSheet(page, [
        ["0.3", "12", `=REAM.FEEDRATE(A1,REAM.RPM(Pace,B1*2))`, `=REAM.RPM('${sheet}'!A1,B1)`],
      ]);
      await select(page, "C1");
      await tool(page, "explain");
      await page.locator("#pane-explain [type=submit]").click();
      await page.locator("#pane-explained").waitFor();
      expect(await page.locator("#pane-explained-title").textContent()).toBe("C1: REAM.FEEDRATE, REAM.RPM");
      // 1000·30/(π·24) = 397.887…, times 0.3
      const steps = await page.locator(".pane-explained-steps").allTextContents();
      expect(steps[0]).toContain("119.366");
      expect(steps[1]).toContain("397.887");
      const inner = page.locator(".pane-explained-args").nth(1).locator("tr");
      expect(await inner.first().textContent()).toMatch(/^surfaceSpeedPace \(.*A1\)30/);
      expect(await inner.nth(1).textContent()).toMatch(/^diameterB1\*2 \(B1\)24/);
      expect(await page.locator("#pane-explained-otherwise").isVisible()).toBe(false);
      await select(page, "D1");
      await page.locator("#pane-explain [type=submit]").click();
      await page.waitForFunction(() =>
        document.getElementById("pane-explained-title")!.textContent!.startsWith("D1"),
      );
      expect(await page.locator(".pane-explained-args tr").first().textContent()).toMatch(/A1.*30/);
      expect(errors).toEqual([]);
    },
  );

  longTest("a double click does once what a click does", async () => {
    const { page } = watched;
    await newSheet(page, [["10", "=REAM.RPM(15,A1)"]]);
    await select(page, "B1");
    await tool(page, "freeze");
    const sheets = await page.locator(".o-sheet").count();
    expect(await told(page, () => page.locator("#pane-freeze [type=submit]").dblclick())).toContain(
      "holds 1 values",
    );
    await page.waitForFunction(() => document.getElementById("pane")!.getAttribute("aria-busy") === null);
    expect(await page.locator(".o-sheet").count()).toBe(sheets + 1);
  });

  test("a sheet is checked, and each finding leads to its cell", async () => {
    const { page } = watched;
    await newSheet(page, [
      ["1", "=A1*2"],
      ["2", "=A2*2"],
      ["3", "7"],
      ["4", "=A4*2"],
    ]);
    await tool(page, "look");
    expect(await press(page, "#pane-look [type=submit]")).toBe("1 finding on this sheet.");
    expect(await page.locator("#pane-looked-rows").textContent()).toBe(
      "B3 7 is typed where the column has a formula.",
    );
    expect(await press(page, "#pane-looked-rows button")).toBe("B3 is selected.");
    await selectedIs(page, "B3");
  });
});

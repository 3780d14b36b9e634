// tests: functions.js under Microsoft's own custom functions runtime, with messages in the shape that Excel sends.
// The shape is not documented; @microsoft/office-js is pinned for it.

import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { distFolder, projectFolder } from "../../src/build/paths.ts";
import { startBrowser, type TestBrowser } from "./browser.ts";

const officeFolder = join(projectFolder, "node_modules/@microsoft/office-js/dist");
/** Flag of a call whose function takes error cells, as `allowErrorForDataTypeAny` asks. */
const allowError = 4;

interface Answer {
  ok: boolean;
  value: any;
  code?: number;
}

/** The bridge through which the runtime talks to Excel; it answers each request with an empty result. */
const bridge = `
  var sent = [];
  var _richApiNativeBridge = {
    sendMessageToHost(text) {
      const message = JSON.parse(text);
      sent.push(message);
      if (message.type !== 1) return;
      const body = JSON.stringify({ Results: [] });
      const answer = { id: message.id, type: 2, message: { statusCode: 200, headers: {}, body } };
      setTimeout(() => _richApiNativeBridge.onMessageFromHost(JSON.stringify(answer)), 0);
    },
  };`;

let browser: TestBrowser;
let page: Page;
const errors: string[] = [];
beforeAll(async () => {
  browser = await startBrowser();
  page = await browser.newPage();
  page.on("pageerror", (error) => errors.push(error.message));
  const at = "http://host.test/";
  await page.route(`${at}**`, (route) => {
    const name = new URL(route.request().url()).pathname.slice(1);
    if (name === "functions.js") return route.fulfill({ path: join(distFolder, name) });
    if (name !== "") return route.fulfill({ path: join(officeFolder, name) });
    const scripts = ["custom-functions-runtime.js", "functions.js"].map(
      (script) => `<script src="${script}"></script>`,
    );
    return route.fulfill({
      contentType: "text/html",
      body: `<!doctype html><title>host</title><script>${bridge}</script>${scripts.join("")}`,
    });
  });
  await page.goto(at);
  await page.waitForFunction(() => "onMessageFromHost" in (globalThis as any)._richApiNativeBridge);
});
afterAll(() => browser?.close());

/** Calls functions as Excel does, all in one message; gives the answers in order. */
async function call(calls: [id: string, args: unknown[]][], flags = 0): Promise<Answer[]> {
  await page.evaluate(
    ([wanted, callFlags]) => {
      const host = globalThis as any;
      host.sent.length = 0;
      const entries = (wanted as [string, unknown[]][]).map(([id, args], index) => ({
        messageCategory: 1,
        messageType: 1000,
        targetId: "",
        id: index,
        message: [index, id, args, "Sheet1!A1", callFlags],
      }));
      host._richApiNativeBridge.onMessageFromHost(JSON.stringify({ id: 1, type: 3, message: { entries } }));
    },
    [calls, flags] as const,
  );
  const read = () =>
    page.evaluate(() => {
      const found: [number, boolean, unknown, number?][] = [];
      const look = (value: any): void => {
        if (typeof value === "string" && /^[[{]/.test(value)) {
          try {
            look(JSON.parse(value));
          } catch {}
        } else if (Array.isArray(value)) {
          if (typeof value[0] === "number" && typeof value[1] === "boolean") found.push(value as any);
          else value.forEach(look);
        } else if (value && typeof value === "object") Object.values(value).forEach(look);
      };
      look((globalThis as any).sent);
      return found;
    });
  await expect.poll(async () => (await read()).length).toBe(calls.length);
  const answers = (await read()).sort((a, b) => a[0] - b[0]);
  return answers.map(([, ok, value, code]) => ({ ok, value, code }));
}

test("loads without an error", () => {
  expect(errors).toEqual([]);
});

test("a column in, a column out", async () => {
  const [{ ok, value }] = await call([["RPM", [[[15], [30]], [[10], [10]], null, null]]]);
  expect(ok).toBe(true);
  expect(value.map((row: number[]) => row.length)).toEqual([1, 1]);
  // 1000·15/(π·10), and twice that
  expect(value[0][0]).toBeCloseTo(477.464829, 6);
  expect(value[1][0]).toBeCloseTo(954.929659, 6);
});

test("a row function gives its cells side by side", async () => {
  const [{ value }] = await call([["LIMITS", [[["12 H7"], ["20 H7"]], null]]]);
  // ISO 286-1: IT7 is 18 µm over 10 to 18 mm, 21 µm over 18 to 30 mm
  expect(value).toEqual([
    [12, 12.018],
    [20, 20.021],
  ]);
});

test("a bad row becomes an error cell with a message, its neighbors stay", async () => {
  const [{ ok, value }] = await call([["LIMITS", [[["12 H7"], ["M12"], ["20 H7"]], null]]]);
  expect(ok).toBe(true);
  expect(value[0]).toEqual([12, 12.018]);
  expect(value[2]).toEqual([20, 20.021]);
  for (const cell of value[1]) {
    expect(JSON.stringify(cell)).toContain("#VALUE!");
    expect(JSON.stringify(cell)).toContain("thread");
  }
});

test("an error that is all of the result is thrown, and arrives with its message", async () => {
  const [answer] = await call([["RPM", [[["fast"]], [[10]], null, null]]]);
  expect(JSON.stringify(answer)).toContain('surfaceSpeed \\"fast\\"');
});

test("#NAME? given as input becomes #VALUE! that names the argument", async () => {
  const error = { type: "CustomFunctionError", code: "#NAME?" };
  const [{ value }] = await call([["RPM", [[[15], [error]], [[10], [10]], null, null]]], allowError);
  expect(JSON.stringify(value[1][0])).toMatch(/#VALUE!.*surfaceSpeed holds the error #NAME\?/);
});

test("an error cell given as input comes back as itself", async () => {
  const error = { type: "CustomFunctionError", code: "#DIV/0!" };
  const [{ value }] = await call([["RPM", [[[15], [error]], [[10], [10]], null, null]]], allowError);
  expect(value[0][0]).toBeCloseTo(477.464829, 6);
  expect(JSON.stringify(value[1][0])).toContain("#DIV/0!");
});

test("empty cells are the same as null, 0 and empty text", async () => {
  for (const blank of [null, 0, ""]) {
    const [{ value }] = await call([["RPM", [[[15], [blank]], [[10], [blank]], null, null]]]);
    expect(value[1]).toEqual([""]);
  }
});

test("many calls in one message are all answered", async () => {
  const calls = Array.from({ length: 200 }, (_, index): [string, unknown[]] => [
    "RPM",
    [[[15]], [[index + 1]], null, null],
  ]);
  const answers = await call(calls);
  answers.forEach(({ ok, value }, index) => {
    expect(ok).toBe(true);
    expect(value[0][0]).toBeCloseTo(15000 / (Math.PI * (index + 1)), 6);
  });
});

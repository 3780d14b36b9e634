// tests: what axe-core finds on a page, and the color schemes it is asked in.

import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { projectFolder } from "../../src/build/paths.ts";
import { share } from "../support/share.ts";

const axe = readFileSync(join(projectFolder, "node_modules", "axe-core", "axe.min.js"), "utf8");

/** What axe-core finds in a part of the page, serious or worse, one line each. */
export async function findings(page: Page, part: string): Promise<string[]> {
  if (!(await page.evaluate(() => "axe" in globalThis))) await page.evaluate(axe);
  return page.evaluate(async (selector) => {
    const { violations } = await (globalThis as any).axe.run(selector, { resultTypes: ["violations"] });
    return violations
      .filter(({ impact }: { impact: string }) => impact === "serious" || impact === "critical")
      .flatMap(({ id, nodes }: { id: string; nodes: { html: string }[] }) =>
        nodes.map(({ html }) => `${id}: ${html.slice(0, 120)}`),
      );
  }, part);
}

type Scheme = readonly ["light" | "dark", "none" | "active"];
const schemes: readonly Scheme[] = [
  ["light", "none"],
  ["dark", "none"],
  ["light", "active"],
  ["dark", "active"],
];

/** Dark in the quick suite, all in the long one. */
export const someSchemes = share(schemes.slice(1, 2), schemes);

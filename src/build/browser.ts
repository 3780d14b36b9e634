// build: a browser without a window, for icons, the screenshot and the tests. On Linux x64 it comes with the
// packages; elsewhere an installed Chrome or Edge is taken.

import { createRequire } from "node:module";
import chromiumPackage from "@sparticuz/chromium";
import type { Browser, BrowserServer, LaunchOptions } from "playwright-core";

/** Required: Node looks through what it imports for names, which takes as long again as to load it. */
export const { chromium } = createRequire(import.meta.url)(
  "playwright-core",
) as typeof import("playwright-core");

export const launchBrowser = (): Promise<Browser> => withBrowser((options) => chromium.launch(options));

/** A browser that several processes connect to, at its `wsEndpoint()`. */
export const launchBrowserServer = (): Promise<BrowserServer> =>
  withBrowser((options) => chromium.launchServer(options));

async function withBrowser<Launched>(
  launch: (options: LaunchOptions) => Promise<Launched>,
): Promise<Launched> {
  if (process.platform === "linux" && process.arch === "x64") {
    // Not the package's own arguments: they turn the web's security off and run all in one process.
    const executablePath = await chromiumPackage.executablePath();
    return launch({ executablePath, args: ["--no-sandbox"], headless: true });
  }
  const faults: string[] = [];
  for (const channel of ["chrome", "msedge"]) {
    try {
      return await launch({ channel, headless: true });
    } catch (error) {
      faults.push(`${channel}: ${String(error).split("\n")[0]}`);
    }
  }
  throw new Error(`No browser to test in: install Google Chrome or Microsoft Edge. ${faults.join("; ")}`);
}

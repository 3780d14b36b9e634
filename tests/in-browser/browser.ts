// tests: a connection to the browser and a server of dist/ for a test file, and pages that tell what they asked for and what was
// refused to them.

import type { BrowserContextOptions, Page } from "playwright-core";
import { inject } from "vitest";
import { chromium } from "../../src/build/browser.ts";
import { distFolder } from "../../src/build/paths.ts";
import { createFileServer, listen } from "../../src/build/server.ts";

export interface Watched {
  readonly page: Page;
  /** Requests to anywhere but the server of dist/; each is refused unless `answers` has an answer. */
  readonly elsewhere: string[];
  /** What the page's own policy refused. */
  readonly violations: string[];
  /** Uncaught errors and errors written to the console. */
  readonly errors: string[];
}

export interface TestBrowser {
  /** An empty page in a context of its own. */
  newPage(options?: BrowserContextOptions): Promise<Page>;
  /** Where dist/ is served, without a slash at the end. */
  readonly address: string;
  open(
    path: string,
    answers?: (url: string) => string | undefined,
    /** What is done before the page is loaded. */
    before?: (page: Page) => Promise<void>,
  ): Promise<Watched>;
  close(): Promise<void>;
}

/** Ends only what hangs: a slow machine is no fault. In ms. */
const TIMEOUT = 120_000;

export async function startBrowser(): Promise<TestBrowser> {
  const server = createFileServer(distFolder);
  const address = `http://127.0.0.1:${await listen(server, 0)}`;
  const browser = await chromium.connect(inject("browserAddress"));
  const newPage = async (options: BrowserContextOptions = {}) => {
    const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, ...options });
    context.setDefaultTimeout(TIMEOUT);
    return context.newPage();
  };
  return {
    newPage,
    address,
    async open(path, answers = () => undefined, before) {
      const page = await newPage();
      const context = page.context();
      const watched: Watched = { page, elsewhere: [], violations: [], errors: [] };
      await context.route(new RegExp(`^(?!${address}/|data:|blob:)`), (route) => {
        const url = route.request().url();
        watched.elsewhere.push(url);
        const file = answers(url);
        return file ? route.fulfill({ path: file }) : route.abort("internetdisconnected");
      });
      await page.exposeFunction("reportViolation", (text: string) => watched.violations.push(text));
      await page.addInitScript(() => {
        document.addEventListener("securitypolicyviolation", (event) => {
          (window as any).reportViolation(
            `${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}`,
          );
        });
      });
      page.on("pageerror", (error) => watched.errors.push(error.message));
      page.on("console", (message) => {
        const refused = message.text().includes("net::ERR_INTERNET_DISCONNECTED");
        if (message.type() === "error" && !refused) watched.errors.push(message.text());
      });
      await before?.(page);
      await page.goto(`${address}/${path}`);
      return watched;
    },
    async close() {
      await browser.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

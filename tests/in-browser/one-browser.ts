// tests: one browser for all files; each connects to it.

import type { TestProject } from "vitest/node";
import { launchBrowserServer } from "../../src/build/browser.ts";

declare module "vitest" {
  interface ProvidedContext {
    readonly browserAddress: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const browser = await launchBrowserServer();
  project.provide("browserAddress", browser.wsEndpoint());
  return () => browser.close();
}

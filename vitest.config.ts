import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import "./tests/support/engine.ts";

// Time limits only end what hangs: a slow machine is no fault.
const limits = {
  testTimeout: 300_000,
  hookTimeout: 300_000,
  expect: { poll: { timeout: 120_000 } },
};

/** Two libraries in a form that loads in less than half of the time. */
const resolve = {
  alias: {
    exceljs: "exceljs/dist/exceljs.min.js",
    typescript: fileURLToPath(new URL("tests/support/typescript.cjs", import.meta.url)),
  },
};

export default defineConfig({
  test: {
    projects: [
      {
        resolve,
        test: {
          name: "sources",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/in-browser/**", "tests/built/**"],
          // Modules are loaded once for many files: libraries of seconds among them, and no test leaves anything behind.
          pool: "threads",
          isolate: false,
          // Both cores: the runner would leave one of two idle.
          maxWorkers: 2,
          ...limits,
        },
      },
      {
        resolve,
        test: {
          name: "built",
          include: ["tests/in-browser/**/*.test.ts", "tests/built/**/*.test.ts"],
          globalSetup: ["tests/in-browser/build-aside.ts", "tests/in-browser/one-browser.ts"],
          setupFiles: ["tests/in-browser/wait-for-build.ts"],
          pool: "threads",
          isolate: false,
          // A test of a page waits for the browser half of its time.
          maxWorkers: 3,
          sequence: { groupOrder: 1 },
          ...limits,
        },
      },
    ],
  },
});

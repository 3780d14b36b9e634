import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    // Both cores: the runner would leave one of two idle.
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: "sources",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/in-browser/**", "tests/built/**"],
          // Modules are loaded once for many files: libraries of seconds among them, and no test leaves anything behind.
          pool: "threads",
          isolate: false,
          // Time limits only end what hangs: a slow machine is no fault.
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        test: {
          name: "built",
          include: ["tests/in-browser/**/*.test.ts", "tests/built/**/*.test.ts"],
          globalSetup: ["tests/in-browser/build-first.ts", "tests/in-browser/one-browser.ts"],
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});

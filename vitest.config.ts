import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "sources",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/in-browser/**", "tests/built/**"],
          // Time limits only end what hangs: a slow machine is no fault.
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
      {
        test: {
          name: "built",
          include: ["tests/in-browser/**/*.test.ts", "tests/built/**/*.test.ts"],
          globalSetup: ["tests/in-browser/build-first.ts"],
          // One browser at a time.
          fileParallelism: false,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});

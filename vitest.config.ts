import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: "sources",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/browser/**", "tests/built/**"],
        },
      },
      {
        test: {
          name: "built",
          include: ["tests/browser/**/*.test.ts", "tests/built/**/*.test.ts"],
          globalSetup: ["tests/browser/build-first.ts"],
          // One browser at a time.
          fileParallelism: false,
          testTimeout: 60_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});

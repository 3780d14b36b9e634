import { defineConfig } from "vitest/config";

/** What needs LibreOffice: `npm run test:office`. */
export default defineConfig({
  test: {
    name: "office",
    include: ["tests/office/**/*.office.ts"],
    globalSetup: ["tests/browser/build-first.ts"],
    // One LibreOffice at a time.
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});

import { defineConfig } from "vitest/config";

/** What needs LibreOffice: `npm run test:office`. */
export default defineConfig({
  test: {
    name: "office",
    include: ["tests/office/**/*.office.ts"],
    globalSetup: ["tests/in-browser/build-aside.ts"],
    setupFiles: ["tests/in-browser/wait-for-build.ts"],
    // One LibreOffice at a time.
    fileParallelism: false,
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});

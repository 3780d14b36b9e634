import { defineConfig } from "vitest/config";

/** The tests that mutation testing of src/calc runs: of calculations and functions, random ones from a fixed seed. */
export default defineConfig({
  test: {
    include: [
      "tests/calc/**/*.test.ts",
      "tests/functions/{steps,fits,check-values,measuring,setup,cost,tool-life,torque,checking}.test.ts",
    ],
    setupFiles: ["tests/support/fixed-seed.ts"],
    env: { CALLOUT_RUNS: "300" },
    // A slow machine fails no test, which would count as a fault found: Stryker ends what hangs, and counts it apart.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
  },
});

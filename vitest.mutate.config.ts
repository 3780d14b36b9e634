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
  },
});

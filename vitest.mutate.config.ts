import { defineConfig } from "vitest/config";

/** The tests that mutation testing of src/calc runs: those of calculations and functions, without browser and build. */
export default defineConfig({
  test: { include: ["tests/calc/**/*.test.ts", "tests/functions/**/*.test.ts", "tests/contract.test.ts"] },
});

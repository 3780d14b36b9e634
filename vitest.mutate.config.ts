import { defineConfig } from "vitest/config";

/** The tests that mutation testing of src/calc runs: quick ones of calculations and functions, no random testing. */
export default defineConfig({
  test: {
    include: [
      "tests/calc/**/*.test.ts",
      "tests/functions/{steps,fits,check-values,measuring,setup,cost,tool-life,torque,checking}.test.ts",
    ],
    exclude: ["tests/calc/callouts/grammar.test.ts"],
  },
});

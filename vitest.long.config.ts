import { defineConfig } from "vitest/config";

/** The whole of what `npm test` runs a tenth of: `npm run test:long`. */
export default defineConfig({
  test: {
    name: "long",
    include: ["tests/fuzz/**/*.test.ts", "tests/calc/callouts/grammar.test.ts"],
    maxWorkers: 2,
    testTimeout: 3_600_000,
    env: { FUZZ_RUNS: process.env.FUZZ_RUNS ?? "750", CALLOUT_RUNS: "20000" },
  },
});

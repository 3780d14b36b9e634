import { defineConfig } from "vitest/config";

/** The tests that mutation testing of src/fill runs; what fills whole sheets takes too long for each of its faults. */
export default defineConfig({
  test: {
    include: ["tests/fill/**/*.test.ts"],
    testNamePattern: /^(?!.*(million|as long as a sheet|zip bomb))/,
    // As in vitest.mutate.config.ts.
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
  },
});

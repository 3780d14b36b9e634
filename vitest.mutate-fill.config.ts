import { defineConfig } from "vitest/config";

/** The tests that mutation testing of src/fill runs; what fills whole sheets takes too long for each of its faults. */
export default defineConfig({
  test: {
    include: ["tests/fill/**/*.test.ts"],
    testNamePattern: /^(?!.*(million|as long as a sheet|zip bomb))/,
    testTimeout: 60_000,
  },
});

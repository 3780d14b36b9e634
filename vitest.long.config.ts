import { defineConfig } from "vitest/config";
import "./tests/support/engine.ts";

/** The whole of what `npm test` runs a share of: `npm run test:long`. */
export default defineConfig({
  test: {
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: "long",
          include: [
            "tests/contract.test.ts",
            "tests/fuzz/**/*.test.ts",
            "tests/build/{how-to-add,unified-manifest}.test.ts",
            "tests/taskpane/{attacked-sheets,papers,quoting-sheet}.test.ts",
            "tests/workbook/excel-workbook.test.ts",
            "tests/workbook/xlsx-grid/losses.test.ts",
            "tests/calc/callouts/*.test.ts",
            "tests/calc/checking/checking.test.ts",
            "tests/calc/fits/iso286.test.ts",
            "tests/browser/save-{into-file,looks,sheets,structure}.test.ts",
            "tests/fill/{criteria,formulas,workbooks}.test.ts",
            "tests/functions/hand-figures.test.ts",
            "tests/workbook/excel-api.long.ts",
            "tests/workbook/xlsx-grid/open-file.test.ts",
          ],
          testTimeout: 3_600_000,
          hookTimeout: 3_600_000,
          env: { TESTS: "whole", FUZZ_RUNS: process.env.FUZZ_RUNS ?? "400", CALLOUT_RUNS: "20000" },
        },
      },
      {
        test: {
          name: "long, built",
          include: [
            "tests/built/fill-command.test.ts",
            "tests/built/package.test.ts",
            "tests/in-browser/**/*.long.ts",
            "tests/in-browser/excel-page.test.ts",
            "tests/in-browser/pane-access.test.ts",
            "tests/in-browser/pane-axe.test.ts",
            "tests/in-browser/pane.test.ts",
            "tests/in-browser/reference.test.ts",
            "tests/in-browser/workbook.test.ts",
          ],
          globalSetup: ["tests/in-browser/build-aside.ts", "tests/in-browser/one-browser.ts"],
          setupFiles: ["tests/in-browser/wait-for-build.ts"],
          testTimeout: 3_600_000,
          hookTimeout: 3_600_000,
          expect: { poll: { timeout: 120_000 } },
          env: { TESTS: "whole" },
        },
      },
    ],
  },
});

// build: a process that tries mutants one by one, each on modules loaded anew, so that none sees what another left.

import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Script } from "node:vm";
import * as vitest from "./tests.ts";

/** Where the switched sources look, and what they count: the instrumenter's contract. */
interface Switches {
  activeMutant?: string;
  currentTestId?: string;
  hitCount?: number;
  hitLimit?: number;
  mutantCoverage?: {
    readonly static: Record<string, number>;
    readonly perTest: Record<string, Record<string, number>>;
  };
}

/** A mutant, the tests to run by file and place, and how often it may be passed before it counts as endless. */
export interface Trial {
  readonly mutant: string;
  readonly tests: readonly (readonly [file: string, places: readonly number[]])[];
  readonly hitLimit: number;
  /** Whether it is on while modules load, tables of test cases among them. */
  readonly isOnAtLoad: boolean;
}
export type Verdict = "Killed" | "Survived" | "Timeout";

/** A file's tests without a mutant. */
export interface DryRun {
  readonly file: string;
  /** How long each test takes, in ms, and which mutants it passes. */
  readonly tests: readonly { readonly took: number; readonly passed: Int32Array }[];
  readonly failed: readonly string[];
  /** Passed as modules are loaded. */
  readonly atLoad: readonly string[];
  /** How often each mutant is passed by all tests together. */
  readonly hits: Readonly<Record<string, number>>;
}

const [, , scriptFile] = process.argv;
const script = new Script(
  `(function (module, require) { ${readFileSync(scriptFile, "utf8")}\nreturn module.exports; })`,
  { filename: scriptFile },
);
const outside = createRequire(import.meta.url);
// The same random cases each time: a mutant is found by the tests, not by chance.
outside("fast-check").configureGlobal({ seed: 20_260_401 });
console.log = () => {};

const host = globalThis as { __stryker__?: Switches; CustomFunctions?: unknown };
const switches: Switches = {};
host.__stryker__ = switches;

function freshModules(): Record<string, () => void> {
  delete host.CustomFunctions;
  return script.runInThisContext()({ exports: {} }, (name: string) =>
    name === "vitest" ? vitest : outside(name),
  );
}

async function dryRun(file: string): Promise<DryRun> {
  switches.activeMutant = undefined;
  switches.hitCount = undefined;
  switches.currentTestId = undefined;
  switches.mutantCoverage = { static: {}, perTest: {} };
  const { perTest } = switches.mutantCoverage;
  const passing: DryRun["tests"][number][] = [];
  const failed: string[] = [];
  const hits: Record<string, number> = {};
  const { tests, afterwards } = vitest.testsOf(freshModules()[file]);
  for (const [place, run] of tests.entries()) {
    const id = String(place);
    switches.currentTestId = id;
    const start = performance.now();
    try {
      await run();
    } catch (thrown) {
      failed.push(`${file}, test ${place}: ${thrown}`);
    }
    const took = performance.now() - start;
    const passed = perTest[id] ?? {};
    for (const [mutant, count] of Object.entries(passed)) hits[mutant] = (hits[mutant] ?? 0) + count;
    passing.push({ took, passed: Int32Array.from(Object.keys(passed), Number) });
    delete perTest[id];
  }
  for (const run of afterwards) await run();
  return { file, tests: passing, failed, atLoad: Object.keys(switches.mutantCoverage.static), hits };
}

async function verdictOn({ mutant, tests: places, hitLimit, isOnAtLoad }: Trial): Promise<Verdict> {
  switches.currentTestId = undefined;
  switches.hitCount = 0;
  switches.hitLimit = hitLimit;
  const modules = freshModules();
  const isEndless = () => switches.hitCount! > hitLimit;
  for (const [file, wanted] of places) {
    try {
      switches.activeMutant = isOnAtLoad ? mutant : undefined;
      const { tests, afterwards } = vitest.testsOf(modules[file]);
      switches.activeMutant = mutant;
      for (const place of wanted) await tests[place]?.();
      for (const run of afterwards) await run();
    } catch {
      return isEndless() ? "Timeout" : "Killed";
    }
  }
  return isEndless() ? "Timeout" : "Survived";
}

process.on("message", async (order: string | Trial) => {
  process.send!(typeof order === "string" ? await dryRun(order) : await verdictOn(order));
});

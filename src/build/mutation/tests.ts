// build: what tests import in place of vitest while mutants are tried. It collects them; vitest's own `expect` judges.

import {
  chai,
  GLOBAL_EXPECT,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  type MatcherState,
  setState,
} from "@vitest/expect";

type Run = (...values: any[]) => unknown;
type Add = (name: string, run: () => unknown) => void;

export interface Tests {
  readonly tests: (() => unknown)[];
  readonly afterwards: (() => unknown)[];
}
let collected: Tests = { tests: [], afterwards: [] };

/** The tests that a module registers as it is loaded. */
export function testsOf(load: () => void): Tests {
  collected = { tests: [], afterwards: [] };
  load();
  return collected;
}

const each = (add: Add) => (cases: readonly unknown[]) => (name: string, run: Run) => {
  for (const one of cases) add(name, () => (Array.isArray(one) ? run(...one) : run(one)));
};
const addTest: Add = (_, run) => void collected.tests.push(run);
const addGroup: Add = (_, run) => void run();

/** What the long tests alone have is not run here. */
const skip: Add = () => {};

export const test = Object.assign(addTest, { each: each(addTest), skip });
/** By its other name. */
export const it = Object.assign((...given: Parameters<Add>) => addTest(...given), {
  each: each(addTest),
  skip,
});
export const describe = Object.assign(addGroup, { each: each(addGroup), skip });
export const afterAll = (run: () => unknown) => void collected.afterwards.push(run);

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
export const expect = chai.expect as any;
Object.defineProperty(globalThis, GLOBAL_EXPECT, { value: expect });
setState<MatcherState>({ assertionCalls: 0, isExpectingAssertions: false }, expect);

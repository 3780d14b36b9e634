// tests: a formula as a host with a decimal comma shows it.

import { expect, test } from "vitest";
import { inHostForm } from "../../src/taskpane/actions/host-formula.ts";

test.each([
  ["=REAM.RPM(15,0.5)", "=REAM.RPM(15;0,5)"],
  ['=REAM.RPM(15, .5, , "in")', '=REAM.RPM(15; ,5; ; "in")'],
  ['=REAM.LIMITS("12,5 +0.018/0",A2)', '=REAM.LIMITS("12,5 +0.018/0";A2)'],
  ["=REAM.RPM('Cost, 1.5'!A2:A9,B2)", "=REAM.RPM('Cost, 1.5'!A2:A9;B2)"],
  ["=INDEX(REAM.LIMITS(A2),1,2)", "=INDEX(REAM.LIMITS(A2);1;2)"],
  ["=REAM.CUTSOVER({12.014;12.015},12.011)", "=REAM.CUTSOVER({12.014;12.015};12,011)"],
])("%s", (formula, shown) => {
  expect(inHostForm(formula, true)).toBe(shown);
  expect(inHostForm(formula, false)).toBe(formula);
});

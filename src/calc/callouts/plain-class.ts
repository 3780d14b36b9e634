// calc: the short way for the commonest callout, a size and a class and nothing else (`12 H7`, `⌀12.5H7`).
// It reads only what the full reader reads to the same result, and leaves everything else to it.

import { isClassName, limitDeviations } from "../fits/iso286.ts";
import { LONGEST, TICKS_PER_IN, TICKS_PER_MM, toTicks, type Units } from "../lengths.ts";
import type { Callout } from "./callout.ts";

const ZERO = 48;
const POINT = 46;
const SPACE = 32;
const POWERS = [1, 10, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

/** The callout, or undefined where the full reader has to look. @throws Problem as `limitDeviations` does */
export function readPlainClass(text: string, units: Units): Callout | undefined {
  const end = text.length;
  let at = 0;
  const first = text.charCodeAt(0);
  if (first === 0xd8 || first === 0x2300 || first === 0xf8) at = text.charCodeAt(1) === SPACE ? 2 : 1;
  const start = at;
  let digits = 0;
  let decimals = -1;
  let whole = 0;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    const digit = code - ZERO;
    if (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === POINT && decimals < 0 && digits > 0) {
      decimals = 0;
    } else break;
  }
  if (at === start || digits > 11 || decimals > 7 || whole === 0) return undefined;
  const scale = POWERS[Math.max(decimals, 0)]!;
  const nominal =
    units === "mm" ? whole * (TICKS_PER_MM / scale) : Math.round((whole * TICKS_PER_IN) / scale);
  if (nominal > toTicks(LONGEST[units], units)) return undefined;
  while (text.charCodeAt(at) === SPACE) at++;
  const letters = at;
  let upper = false;
  for (; at < end && at < letters + 2; at++) {
    const code = text.charCodeAt(at);
    if (code >= 65 && code <= 90) upper = true;
    else if (code < 97 || code > 122) break;
  }
  if (at === letters || at === end || end - at > 2) return undefined;
  for (let k = at; k < end; k++) {
    const digit = text.charCodeAt(k) - ZERO;
    if (digit < 0 || digit > 9) return undefined;
  }
  const className = text.slice(letters);
  if (!isPlainClass(className)) return undefined;
  const { lower, upper: greatest } = limitDeviations(nominal, className);
  return {
    text,
    nominal,
    lower,
    upper: greatest,
    units,
    kind: upper ? "hole" : "shaft",
    className,
    iso: true,
    shaft: undefined,
    count: 1,
    depth: undefined,
    through: false,
    marks: "",
  };
}

const known = new Map<string, boolean>();

function isPlainClass(className: string): boolean {
  let answer = known.get(className);
  if (answer === undefined) {
    answer = isClassName(className) && !/^x/i.test(className);
    if (known.size < 1000) known.set(className, answer);
  }
  return answer;
}

// calc: the short way for the commonest callout, a size and a class and nothing else (`12 H7`, `⌀12.5H7`).
// It reads only what the full reader reads to the same result, and leaves everything else to it.

import { type CompiledClass, compile, deviationsAt, isClassName, isHoleClass } from "../fits/iso286.ts";
import { LONGEST, TICKS_PER_IN, TICKS_PER_MM, toTicks, type Units } from "../lengths.ts";
import type { Callout, Deviations } from "./callout.ts";

const ZERO = 48;
const POINT = 46;
const SPACE = 32;
const POWERS = [1, 10, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

/** The callout, or undefined where the full reader has to look. @throws Problem as `deviationsAt` does */
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
  let key = 0;
  for (; at < end && at < letters + 2; at++) {
    const code = text.charCodeAt(at);
    if (code < 65 || code > 122 || (code > 90 && code < 97)) break;
    key = key * 128 + code;
  }
  if (at === letters || at === end || end - at > 2) return undefined;
  for (; at < end; at++) {
    const digit = text.charCodeAt(at) - ZERO;
    if (digit < 0 || digit > 9) return undefined;
    key = key * 128 + digit + ZERO;
  }
  const found = known.get(key) ?? look(text.slice(letters), key);
  if (found === undefined) return undefined;
  const deviations = deviationsAt(found.compiled, nominal, found.className);
  if (nominal + deviations.lower <= 0 || (deviations.upper - deviations.lower) * 4 > nominal)
    return undefined;
  return new PlainCallout(text, nominal, units, found, deviations);
}

/** A size and a class, and what every such callout has in common: small, as columns hold them by the thousand. */
class PlainCallout implements Callout {
  constructor(
    readonly text: string,
    readonly nominal: number,
    readonly units: Units,
    private readonly of: PlainClass,
    private readonly deviations: Deviations,
  ) {}

  get lower() {
    return this.deviations.lower;
  }
  get upper() {
    return this.deviations.upper;
  }
  get kind() {
    return this.of.kind;
  }
  get className() {
    return this.of.className;
  }
  get iso() {
    return true;
  }
  get shaft() {
    return undefined;
  }
  get count() {
    return 1;
  }
  get depth() {
    return undefined;
  }
  get through() {
    return false;
  }
  get marks() {
    return "";
  }
}

interface PlainClass {
  readonly className: string;
  readonly kind: "hole" | "shaft";
  readonly compiled: CompiledClass;
}

/** Classes by the codes of their characters. An x may stand for "times", so those are left to the full reader. */
const known = new Map<number, PlainClass>();

function look(className: string, key: number): PlainClass | undefined {
  if (!isClassName(className) || /^x/i.test(className)) return undefined;
  const kind = isHoleClass(className) ? "hole" : "shaft";
  const found: PlainClass = { className, kind, compiled: compile(className) };
  known.set(key, found);
  return found;
}

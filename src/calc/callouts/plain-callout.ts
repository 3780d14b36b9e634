// calc: the short way for the commonest callouts and nothing else: a size and a class (`12 H7`, `⌀12.5H7`), a size and
// its deviations (`12 +0.018/0`, `.500 ±.0005`). It reads only what the full reader reads to the same result, and leaves
// everything else to it.

import { type CompiledClass, compile, deviationsAt, isClassName, isHoleClass } from "../fits/iso286.ts";
import { LONGEST, toTicks, type Units } from "../lengths.ts";
import * as ticks from "../ticks.ts";
import { INCH, type Limits, MICROMETER, MILLIMETER, TICK, type Ticks, ZERO } from "../ticks.ts";
import type { Callout } from "./callout.ts";

const DIGIT_ZERO = 48;
const POINT = 46;
const SPACE = 32;
const PLUS = 43;
const MINUS = 45;
const SLASH = 47;
const PLUS_MINUS = 0xb1;
/** `ZC18` */
const LONGEST_CLASS = 4;
const POWERS = [1, 10, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

const longest: Readonly<Record<Units, Ticks>> = {
  mm: toTicks(LONGEST.mm, "mm"),
  in: toTicks(LONGEST.in, "in"),
};

/** Where the last decimal ended, whether its first character was its point, and how many decimals it has (−1: no point). */
let scanned = 0;
let startedWithPoint = false;
let decimalsScanned = -1;

/** Under 0 and NaN, which no size is: a second type beside the ticks would cost time in long columns. */
const NO_DECIMAL = ticks.negative(TICK);
const NO_DEVIATION = ticks.times(TICK, Number.NaN);

/** A decimal with a point; NO_DECIMAL where there is none or one with more digits than are read here. */
function scanDecimal(text: string, from: number, units: Units): Ticks {
  let digits = 0;
  let decimals = -1;
  let whole = 0;
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    const digit = code - DIGIT_ZERO;
    if (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === POINT && decimals < 0) {
      decimals = 0;
    } else break;
  }
  scanned = at;
  startedWithPoint = text.charCodeAt(from) === POINT;
  decimalsScanned = decimals;
  if (digits === 0 || digits > 11 || decimals > 7) return NO_DECIMAL;
  const scale = POWERS[Math.max(decimals, 0)];
  return units === "mm"
    ? ticks.times(ticks.dividedBy(MILLIMETER, scale), whole)
    : ticks.rounded(ticks.dividedBy(ticks.times(INCH, whole), scale));
}

/** Sizes that the full reader has to look at, as they may be in the other unit: these and a few more. */
function mayBeInches(nominal: Ticks, decimals: number): boolean {
  return decimals >= 3 && (decimals > 3 || nominal < ticks.times(MILLIMETER, 4));
}

function mayBeMillimeters(nominal: Ticks, decimals: number): boolean {
  if (nominal < INCH) return false;
  return decimals < (nominal < ticks.times(INCH, 3) ? 3 : 4) || nominal > ticks.times(INCH, 8);
}

function skipSpaces(text: string, from: number): number {
  let at = from;
  while (text.charCodeAt(at) === SPACE) at++;
  return at;
}

/** The callout, or undefined where the full reader has to look. @throws Problem as `deviationsAt` does */
export function readPlainCallout(text: string, units: Units): Callout | undefined {
  const first = text.charCodeAt(0);
  const hasSign = first === 0xd8 || first === 0x2300 || first === 0xf8;
  const nominal = scanDecimal(text, hasSign ? skipSpaces(text, 1) : 0, units);
  if (nominal <= ZERO || nominal > longest[units]) return undefined;
  // In mm a size in inch style is refused, with a sentence.
  if (startedWithPoint && units === "mm") return undefined;
  if (units === "mm" ? mayBeInches(nominal, decimalsScanned) : mayBeMillimeters(nominal, decimalsScanned))
    return undefined;
  const at = skipSpaces(text, scanned);
  const code = text.charCodeAt(at);
  return code >= 65 && code <= 122
    ? readClass(text, at, nominal, units)
    : readDeviations(text, at, nominal, units, at > scanned);
}

function readClass(text: string, letters: number, nominal: Ticks, units: Units): Callout | undefined {
  if (text.length - letters > LONGEST_CLASS) return undefined;
  let key = 0;
  for (let at = letters; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code > 127) return undefined;
    key = key * 128 + code;
  }
  const found = known.get(key) ?? look(text.slice(letters), key);
  if (found === undefined) return undefined;
  const deviations = deviationsAt(found.compiled, nominal, found.className);
  if (isOdd(deviations, nominal)) return undefined;
  return new PlainCallout(text, nominal, units, found, deviations);
}

/** Two deviations, each with its sign unless it is 0, or ± one, up to the end of the text. */
function readDeviations(
  text: string,
  from: number,
  nominal: Ticks,
  units: Units,
  isApart: boolean,
): Callout | undefined {
  if (text.charCodeAt(from) === PLUS_MINUS) {
    const deviation = scanDecimal(text, skipSpaces(text, from + 1), units);
    if (deviation <= ZERO || decimalsScanned < 1 || scanned !== text.length) return undefined;
    return withDeviations(text, nominal, units, ticks.negative(deviation), deviation);
  }
  const first = scanSigned(text, from, units);
  // Without a space before it a 0 would be a digit of the size.
  if (Number.isNaN(first) || (first === ZERO && !isApart)) return undefined;
  const separator = text.charCodeAt(scanned);
  if (separator !== SLASH && separator !== SPACE) return undefined;
  const second = scanSigned(text, skipSpaces(text, scanned + 1), units);
  if (Number.isNaN(second) || scanned !== text.length) return undefined;
  return withDeviations(text, nominal, units, ticks.smaller(first, second), ticks.larger(first, second));
}

/** A deviation; NO_DEVIATION for a number other than 0 without its sign. */
function scanSigned(text: string, from: number, units: Units): Ticks {
  const code = text.charCodeAt(from);
  const sign = code === PLUS ? 1 : code === MINUS ? -1 : 0;
  const start = sign === 0 ? from : from + 1;
  const value = scanDecimal(text, start, units);
  if (value < ZERO || (sign === 0 && value !== ZERO)) return NO_DEVIATION;
  // A decimal mark, or a space behind it, may be lost.
  if (
    decimalsScanned > 4 ||
    (scanned > start + 1 && decimalsScanned < 0 && text.charCodeAt(start) === DIGIT_ZERO)
  )
    return NO_DEVIATION;
  // Whole numbers may be µm.
  if (decimalsScanned < 1 && value >= ticks.times(MILLIMETER, 3)) return NO_DEVIATION;
  return ticks.plus(ticks.times(value, sign), ZERO);
}

function withDeviations(
  text: string,
  nominal: Ticks,
  units: Units,
  lower: Ticks,
  upper: Ticks,
): Callout | undefined {
  // What the full reader may doubt in mm.
  if (units === "mm" && (nominal < MILLIMETER || ticks.minus(upper, lower) < ticks.times(MICROMETER, 2)))
    return undefined;
  // A number as large as that may be the other limit: `12-12.018`.
  if (lower === upper || ticks.times(ticks.larger(ticks.absolute(lower), ticks.absolute(upper)), 4) > nominal)
    return undefined;
  const deviations = { lower, upper };
  return isOdd(deviations, nominal)
    ? undefined
    : new PlainCallout(text, nominal, units, NO_CLASS, deviations);
}

function isOdd(deviations: Limits, nominal: Ticks): boolean {
  return ticks.plus(nominal, deviations.lower) <= ZERO || ticks.times(ticks.widthOf(deviations), 4) > nominal;
}

/** What every such callout has in common stands in its class: small, as columns hold them by the thousand. */
class PlainCallout implements Callout {
  constructor(
    readonly text: string,
    readonly nominal: Ticks,
    readonly units: Units,
    private readonly of: PlainClass,
    private readonly deviations: Limits,
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
    return this.of.compiled !== undefined;
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
  get coated() {
    return false;
  }
  get marks() {
    return "";
  }
  get note() {
    return "";
  }
}

interface PlainClass {
  readonly className: string;
  readonly kind: "hole" | "shaft";
  /** Undefined for a callout without a class. */
  readonly compiled: CompiledClass | undefined;
}

interface IsoClass extends PlainClass {
  readonly compiled: CompiledClass;
}

const NO_CLASS: PlainClass = { className: "", kind: "hole", compiled: undefined };

/** Classes by the codes of their characters. An x may stand for "times" and M for a thread: left to the full reader. */
const known = new Map<number, IsoClass>();

function look(className: string, key: number): IsoClass | undefined {
  if (!isClassName(className) || /^[MXx]/.test(className)) return undefined;
  const kind = isHoleClass(className) ? "hole" : "shaft";
  const found: IsoClass = { className, kind, compiled: compile(className) };
  known.set(key, found);
  return found;
}

// calc: numbers written as text: decimals with point or comma, fractions, mixed numbers, a unit behind them.

import type { Units } from "./lengths.ts";
import { shown, wrong } from "./problem.ts";

const UNIT = /^(?:mm|millimet(?:er|re)s?)$/i;
const INCH = /^(?:in\.?|inch(?:es)?|"|″|”|'')$/i;
const DECIMAL = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
// Without leading zeros, which dates have: 08/03.
const FRACTION = /^(?:(\d+)(?: |-))?([1-9]\d*) ?\/ ?([1-9]\d*)$/;
const NUMBER = /^([⌀Øø] ?)?([+-]?) ?([\d., /-]*?) ?([a-zµμ°º%"″”'][^\d,;:()]*1?)?$/i;
/** Three or more decimals and no leading zero. */
const INCH_STYLE = /^[.,]\d{3}/;
/** Units of length by their names, in mm or in. */
const LENGTHS: ReadonlyMap<string, readonly [divisor: number, units: Units]> = new Map<
  string,
  [number, Units]
>([
  ["um", [1000, "mm"]],
  ["µm", [1000, "mm"]],
  ["μm", [1000, "mm"]],
  ["micron", [1000, "mm"]],
  ["microns", [1000, "mm"]],
  ["thou", [1000, "in"]],
  ["mil", [1000, "in"]],
  ["mils", [1000, "in"]],
]);
/** Other ways to write a unit, without spaces, points and hyphens. */
const UNITS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    "m/min": "m/min mpm m/mn",
    "ft/min": "ft/min sfm sfpm fpm",
    "rev/min": "rpm rev/min r/min u/min tr/min giri/min min1",
    "mm/min": "mm/min",
    "in/min": "in/min ipm",
    mm: "mm mm/rev mm/r mm/u mm/tr",
    in: "in in/rev in/r ipr",
    "mm/tooth": "mm/tooth mm/z",
    "in/tooth": "in/tooth ipt",
    s: "s sec secs second seconds",
    min: "min mins minute minutes",
    h: "h hr hrs hour hours",
    "°": "° º deg degree degrees",
    "°C": "°c ºc c",
    "°F": "°f ºf f",
    N·m: "nm n·m",
    lbf·in: "lbfin lbf·in inlb inlbf lbin",
    kW: "kw",
    hp: "hp",
    N: "n",
    lbf: "lbf lb",
    bar: "bar",
    psi: "psi",
    "L/min": "l/min lpm",
    gpm: "gpm",
    parts: "parts pcs pieces",
    "per hour": "/h /hr perhour",
    "%": "%",
  }).flatMap(([unit, names]) => names.split(" ").map((name) => [name, unit] as const)),
);

/** Every kind of space as one plain space, every kind of minus as "-", no space around. */
export function plainText(text: string): string {
  return text
    .replace(/[\s\u200b\ufeff]+/g, " ")
    .trim()
    .replace(/[−–‐‑]/g, "-");
}

/** The unit a text names, if it names one. */
export function unitOf(text: string): Units | undefined {
  return UNIT.test(text) ? "mm" : INCH.test(text) ? "in" : undefined;
}

/** Whether a unit as it is written is this one. */
function isUnit(written: string, unit: string): boolean {
  return UNITS.get(written.toLowerCase().replace(/[ .-]/g, "")) === unit;
}

/** True where a comma could as well part thousands: `1,250`, not `0,250`, `,250` or `1,25`. */
export function isCommaOpen(decimal: string): boolean {
  const comma = decimal.indexOf(",");
  return comma > 0 && /[1-9]/.test(decimal.slice(0, comma)) && decimal.length - comma === 4;
}

/** A plain decimal with point or comma; undefined if it is not one (two marks, other characters). */
function readDecimal(text: string): number | undefined {
  return DECIMAL.test(text) ? Number(text.replace(",", ".")) : undefined;
}

/** `1/2`, `1 1/2`, `1-1/2`; undefined if it is not one. */
function readFraction(text: string): number | undefined {
  const parts = FRACTION.exec(text);
  if (!parts) return undefined;
  const share = Number(parts[2]) / Number(parts[3]);
  if (parts[1] !== undefined && share >= 1) return undefined;
  return Number(parts[1] ?? 0) + share;
}

export interface NumberText {
  /** As it is written, or in `units` where a length carries a unit. */
  readonly value: number;
  /** Of a length that carries a unit, mm or in; undefined without a unit, and beside one of another kind. */
  readonly units: Units | undefined;
  /** The unit as it is written, "" if there is none. */
  readonly unit: string;
  /** A fraction, or a decimal like .500. */
  readonly isInchStyle: boolean;
}

/**
 * A number written as text, with the unit behind it if there is one.
 * @param name the argument, for the message
 * @param example a number that the argument may be
 * @param own the unit that may stand behind the number, beside those of length
 * @throws Problem "wrong" when the text is not one number and nothing else
 */
export function readNumberText(text: string, name: string, example = "12.5", own = ""): NumberText {
  if (text.length > 200) wrong(`${name} is a text of ${text.length} characters. Write one number.`);
  const parts = NUMBER.exec(plainText(text));
  const unit = parts?.[4]?.trimEnd() ?? "";
  const [divisor, units] = lengthUnit(unit);
  const isKnown = unit === "" || units !== undefined || (own !== "" && isUnit(unit, own));
  if (!parts || parts[3] === "") return wrong(notANumber(text, name, example));
  if (!isKnown) return wrong(otherUnit(text, unit, name, example, own));
  const digits = parts[3];
  if (digits.includes(",") && digits.includes("."))
    wrong(`${name} ${shown(text)} has both a comma and a point. Write it with a decimal point alone.`);
  if (isCommaOpen(digits) && DECIMAL.test(digits)) {
    const [whole, rest] = digits.split(",");
    wrong(
      `${name} ${shown(text)} could be ${whole}.${rest} or ${whole}${rest}. Write the one you mean, without a comma.`,
    );
  }
  const decimal = readDecimal(digits);
  const size = decimal ?? readFraction(digits);
  if (size === undefined) return wrong(notANumber(text, name, example));
  const value = (parts[2] === "-" ? -size : size) / divisor;
  return { value, units, unit, isInchStyle: decimal === undefined || INCH_STYLE.test(digits) };
}

/** A number that may carry the unit `own` and no other; a share (`%`) is returned as one. */
export function readOwnNumberText(text: string, name: string, example: string, own: string): number {
  const { value, unit } = readNumberText(text, name, example, own);
  if (unit !== "" && !(own !== "" && isUnit(unit, own))) refuseUnit(text, name, own);
  return unit === "%" ? value / 100 : value;
}

export function refuseUnit(text: string, name: string, own: string): never {
  const instead = own === "" || own === "%" ? "the number alone" : `it in ${own}`;
  return wrong(`${name} ${shown(text)} carries a unit that ${name} does not take. Write ${instead}.`);
}

/** A length in `units`: converted if it carries the other unit. @throws Problem "wrong" for one in inch style and mm */
export function readLengthText(text: string, name: string, units: Units, example?: string): number {
  const read = readNumberText(text, name, example);
  if (read.unit === "" && read.isInchStyle && units === "mm") refuseInchStyle(text, name);
  return lengthIn(read, units);
}

/** A length in `units`; one without a unit is in them already. */
export function lengthIn({ value, units: own }: NumberText, units: Units): number {
  if (!own || own === units) return value;
  return own === "in" ? value * 25.4 : value / 25.4;
}

/** `3/8` and `.500` in a sheet in mm. */
function refuseInchStyle(text: string, name: string): never {
  const plain = plainText(text);
  return wrong(
    plain.includes("/")
      ? `${name} ${shown(text)} is an inch size. Write ${plain} in, or set units to "in".`
      : `${name} ${shown(text)} is written like an inch size. Write ${plain} in, or 0${plain.replace(/^[+-]/, "")} for mm.`,
  );
}

function lengthUnit(unit: string): readonly [divisor: number, units: Units | undefined] {
  return LENGTHS.get(unit.toLowerCase()) ?? [1, unitOf(unit)];
}

/** A unit that this argument has not, like m/min in a sheet in inches; anything else behind the number is no unit. */
function otherUnit(text: string, unit: string, name: string, example: string, own: string): string {
  if (own === "" || !UNITS.has(unit.toLowerCase().replace(/[ .-]/g, "")))
    return notANumber(text, name, example);
  return `${name} ${shown(text)} is in ${unit}. Write it in ${own}, like ${example}.`;
}

const CALLOUT = /^[⌀Øø]? ?[\d.,]+ ?(?:[A-DF-WYZa-df-wyz][A-Za-z]?\d{1,2}$|[+±])/;

function notANumber(text: string, name: string, example: string): string {
  const isCallout = CALLOUT.test(plainText(text));
  return `${name} ${shown(text)} is ${isCallout ? "a callout" : "not a number"}. Write ${isCallout ? "the number alone" : "one"}, like ${example}.`;
}

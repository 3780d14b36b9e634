// calc: conversion between the units of the trade, not rounded.

import { type UnitRow, unitTable } from "../../data/units.ts";
import type { Formula } from "../formula.ts";
import { shown, wrong } from "../problem.ts";

/** to = (value·numerator + offset)/denominator, in whole numbers where they fit. */
interface Conversion {
  readonly numerator: number;
  readonly offset: number;
  readonly denominator: number;
  readonly whole: boolean;
}

/** Other ways to write a unit, in the spelling that `spelling` leaves. */
const otherSpellings: ReadonlyMap<string, string> = new Map(
  Object.entries({
    in: ["inch", "inches", "ins", '"', "''"],
    ft: ["foot", "feet"],
    um: ["micron", "microns", "micrometer", "micrometers", "micrometre", "micrometres"],
    thou: ["mil", "mils", "thous"],
    mm: ["millimeter", "millimeters", "millimetre", "millimetres"],
    m: ["meter", "meters", "metre", "metres"],
    tenth: ["tenths"],
    uin: ["microinch", "microinches"],
    sfm: ["ft/min", "fpm", "sfpm"],
    ipm: ["in/min"],
    ipr: ["in/rev"],
    ipt: ["in/tooth"],
    nm: ["n-m"],
    ncm: ["n-cm"],
    "lbf-in": ["in-lb", "in-lbs", "in-lbf", "lb-in", "lbs-in"],
    "lbf-ft": ["ft-lb", "ft-lbs", "ft-lbf", "lb-ft", "lbs-ft"],
    n: ["newton", "newtons"],
    c: ["°c"],
    f: ["°f"],
    mpa: ["n/mm2"],
    "l/min": ["l/minute", "lpm"],
    gpm: ["gal/min"],
  }).flatMap(([unit, names]) => names.map((name) => [name, unit] as const)),
);

/** Any case, any micro sign, a raised 2 or 3, a point or a blank for the hyphen of a product. */
function spelling(unit: string): string {
  const plain = unit
    .trim()
    .toLowerCase()
    .replace(/[\u00b5\u03bc]/g, "u")
    .replace(/\u00b2/g, "2")
    .replace(/\u00b3/g, "3")
    .replace(/\s*\/\s*/g, "/")
    .replace(/\s*[·⋅.\s]\s*/g, "-");
  return otherSpellings.get(plain) ?? plain;
}

const units: ReadonlyMap<string, UnitRow> = new Map(
  unitTable.flatMap((row) => [[row[0], row] as const, [spelling(row[0]), row] as const]),
);

/** A decimal under 1e21, as `String` writes it, as a fraction of whole numbers. */
function fraction(decimal: number): [bigint, bigint] {
  const [digits, exponent = "0"] = String(decimal).split("e");
  const [whole, part = ""] = digits.split(".");
  return [BigInt(whole + part), 10n ** BigInt(part.length - Number(exponent))];
}

function commonFactor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : commonFactor(b, a % b);
}

function unitCalled(unit: string, argument: string): UnitRow {
  const row = units.get(unit) ?? units.get(spelling(unit));
  if (row !== undefined) return row;
  return wrong(
    `${argument} ${shown(unit)} is not a known unit. Write one of ${unitTable.map((known) => known[0]).join(", ")}.`,
  );
}

function prepare(from: UnitRow, to: UnitRow): Conversion {
  const [fromName, fromKind, fromNumerator, fromDenominator, fromZero] = from;
  const [toName, toKind, toNumerator, toDenominator, toZero] = to;
  if (fromKind !== toKind) {
    const feeds = [fromKind, toKind].every((kind) => kind === "feed rate" || kind === "feed per revolution");
    wrong(
      feeds
        ? `from ${shown(fromName)} to ${shown(toName)} needs the rpm. Use FEEDRATE or FEEDPERREV.`
        : `from is ${shown(fromName)} (${fromKind}) and to is ${shown(toName)} (${toKind}). Write two units of one kind.`,
    );
  }
  // (value − fromZero)·f/g + toZero, f/g the ratio of the two units; zeros are whole numbers.
  const over = (a: [bigint, bigint], b: [bigint, bigint]): [bigint, bigint] => [a[0] * b[1], a[1] * b[0]];
  const [top, bottom] = over(
    over(fraction(fromNumerator), fraction(fromDenominator)),
    over(fraction(toNumerator), fraction(toDenominator)),
  );
  const common = commonFactor(top, bottom);
  const [numerator, denominator] = [top / common, bottom / common];
  const offset = BigInt(toZero) * denominator - BigInt(fromZero) * numerator;
  const whole = numerator < 1n << 53n && denominator < 1n << 53n;
  return {
    numerator: whole ? Number(numerator) : Number(numerator) / Number(denominator),
    offset: Number(offset),
    denominator: whole ? Number(denominator) : 1,
    whole,
  };
}

const conversions = new Map<UnitRow, Map<UnitRow, Conversion>>();

function conversion(fromUnit: string, toUnit: string): Conversion {
  const from = unitCalled(fromUnit, "from");
  const to = unitCalled(toUnit, "to");
  let found = conversions.get(from)?.get(to);
  if (found === undefined) {
    found = prepare(from, to);
    const others = conversions.get(from) ?? new Map();
    conversions.set(from, others.set(to, found));
  }
  return found;
}

/** The conversion of the call before: down a column it is nearly always the same. */
let latest: Conversion | undefined;
let latestFrom: string | undefined;
let latestTo: string | undefined;

/** A millionth: a value of up to six decimals is a whole number of them. */
const PARTS = 1e6;

/**
 * A value in another unit of the same kind. A decimal that is stated to six places or fewer comes out as the double
 * nearest to the exact result.
 */
export function convert(value: number, from: string, to: string): number {
  if (from !== latestFrom || to !== latestTo) {
    latest = conversion(from, to);
    latestFrom = from;
    latestTo = to;
  }
  const { numerator, offset, denominator, whole } = latest!;
  if (whole) {
    const parts = Math.round(value * PARTS);
    const top = parts * numerator + offset * PARTS;
    const bottom = denominator * PARTS;
    if (
      parts / PARTS === value &&
      Math.abs(top) <= Number.MAX_SAFE_INTEGER &&
      bottom <= Number.MAX_SAFE_INTEGER
    ) {
      return top / bottom;
    }
  }
  return (value * numerator + offset) / denominator;
}
convert.formula = {
  source: "si-units",
  steps: (_units, _value, from: string, to: string) => {
    const { numerator, offset, denominator } = conversion(from, to);
    const multiplied = numerator >= denominator;
    const factor = multiplied ? numerator / denominator : denominator / numerator;
    const shift = Math.abs(offset / (multiplied ? denominator : numerator));
    let written = `value ${multiplied ? "*" : "/"} ${factor}`;
    if (factor === 1) written = "value";
    else if (offset > 0) written = `value * ${factor} + ${shift}`;
    else if (offset < 0) written = `(value - ${shift}) / ${factor}`;
    return [{ symbol: "converted", expression: written, unit: to }];
  },
} satisfies Formula;

// calc: numbers written as text: decimals with point or comma, fractions, mixed numbers, a unit behind a length.

import type { Units } from "./lengths.ts";
import { shown, wrong } from "./problem.ts";

const UNIT = /^(?:mm|millimet(?:er|re)s?)$/i;
const INCH = /^(?:in\.?|inch(?:es)?|"|″|”|'')$/i;
const DECIMAL = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)(?: |-))?(\d+) ?\/ ?(\d+)$/;
const LENGTH = /^([⌀Øø] ?)?([+-]?) ?([\d., /-]*?) ?([a-z]+\.?|"|″|”|'')?$/i;

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
  if (!parts || Number(parts[3]) === 0) return undefined;
  const share = Number(parts[2]) / Number(parts[3]);
  if (parts[1] !== undefined && share >= 1) return undefined;
  return Number(parts[1] ?? 0) + share;
}

/**
 * A number written as text, with the unit behind it if there is one.
 * @param name the argument, for the message
 * @throws Problem "wrong" when the text is not one number and nothing else
 */
export function readNumberText(text: string, name: string): { value: number; units: Units | undefined } {
  if (text.length > 200) wrong(`${name} is a text of ${text.length} characters: write one number`);
  const parts = LENGTH.exec(plainText(text));
  const units = parts?.[4] === undefined ? undefined : unitOf(parts[4]);
  if (!parts || (parts[4] !== undefined && units === undefined)) return wrong(notANumber(text, name));
  const digits = parts[3];
  if (digits.includes(",") && digits.includes("."))
    wrong(`${name} ${shown(text)} has both a comma and a point: write it with a point alone`);
  if (isCommaOpen(digits) && DECIMAL.test(digits)) {
    const [whole, rest] = digits.split(",");
    wrong(
      `${name} ${shown(text)} could be ${whole}.${rest} or ${whole}${rest}: write ${whole}.${rest} or ${whole}${rest}`,
    );
  }
  const size = readDecimal(digits) ?? readFraction(digits);
  if (size === undefined) return wrong(notANumber(text, name));
  return { value: parts[2] === "-" ? -size : size, units };
}

function notANumber(text: string, name: string): string {
  return `${name} ${shown(text)} is not a number: write one like 12.5, 31/64 or 1-1/2`;
}

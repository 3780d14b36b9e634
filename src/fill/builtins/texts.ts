// fill: the spreadsheet's texts.

import type { Argument, Context } from "../formula/evaluate.ts";
import {
  finite,
  fittingText,
  isError,
  type Scalar,
  sameNumber,
  toNumber,
  toText,
  Unsupported,
  valueError,
} from "../formula/values.ts";
import { eachCell, many, type Named, ranged, scalar, text, throwIfError, truth } from "./define.ts";
import { hasWildcards, wildcardPattern } from "./wildcards.ts";

/** Of texts and, behind them, whole numbers; what is left out is undefined. */
function ofText(
  name: string,
  texts: number,
  call: (...values: any[]) => Scalar,
  fewestArguments = call.length,
  mostArguments = fewestArguments,
): Named {
  return scalar(
    name,
    (...values: Scalar[]) => {
      const read = values.map((value, i) => (i < texts ? toText(value) : toNumber(value)));
      const error = read.find(isError);
      if (error) return error;
      return call(...read.map((value) => (typeof value === "number" ? Math.trunc(value) : value)));
    },
    fewestArguments,
    mostArguments,
  );
}

function find(wanted: string, inside: string, start: number): Scalar {
  if (start < 1 || start > inside.length + 1) return valueError();
  const place = inside.indexOf(wanted, start - 1);
  return place < 0 ? valueError() : place + 1;
}

function search(wanted: string, inside: string, start: number): Scalar {
  if (!hasWildcards(wanted)) return find(wanted.toLowerCase(), inside.toLowerCase(), start);
  if (start < 1 || start > inside.length + 1) return valueError();
  const place = inside.slice(start - 1).search(new RegExp(wildcardPattern(wanted), "isu"));
  return place < 0 ? valueError() : place + start;
}

function substitute(inside: string, old: string, now: string, which?: number): Scalar {
  if (which !== undefined && which < 1) return valueError();
  if (old === "") return inside;
  const pieces = inside.split(old);
  if (which === undefined) return fittingText(pieces.join(now));
  if (which >= pieces.length) return inside;
  return fittingText(pieces.slice(0, which).join(old) + now + pieces.slice(which).join(old));
}

const proper = (value: string) =>
  value.toLowerCase().replace(/(^|[^\p{L}])(\p{L})/gu, (_, before, letter) => before + letter.toUpperCase());

function joined(args: readonly Argument[], context: Context): Scalar {
  let result = "";
  eachCell(args, context, (value) => {
    result += throwIfError(toText(value));
    throwIfError(fittingText(result));
  });
  return result;
}

function joinedWith(args: readonly Argument[], context: Context): Scalar {
  const between = text(args, 0);
  const skips = truth(args, 1, true);
  const texts: string[] = [];
  eachCell(args.slice(2), context, (value) => {
    const one = throwIfError(toText(value));
    if (one !== "" || !skips) texts.push(one);
  });
  return fittingText(texts.join(between));
}

const simpleFormat = /^([^0#.,%"\\]*)(#,##)?([0#]*)(?:\.(0+))?(%?)([^0#.,%"\\;]*)$/;
/** Letters that a format reads as dates, as signs or as exponents. */
const formatLetters = /[a-z@*_?/[\]]/i;

/** TEXT with a format of digits alone; dates, fractions and colors are not known here. */
function formatted(value: Scalar, format: Scalar): Scalar {
  const asked = toText(format);
  if (isError(asked)) return asked;
  if (typeof value === "string" || typeof value === "boolean") throw new Unsupported("TEXT of a text");
  const number = toNumber(value);
  if (isError(number)) return number;
  const found = simpleFormat.exec(asked);
  const [, before = "", thousands, whole = "", decimals = "", percent = "", after = ""] = found ?? [];
  if (!found || formatLetters.test(before + after) || (!thousands && !/^#*0+$/.test(whole)))
    throw new Unsupported(`TEXT with the format ${JSON.stringify(asked.slice(0, 30))}`);
  const size = Math.abs(percent ? number * 100 : number);
  if (size >= 1e15) throw new Unsupported("TEXT of a very large number");
  const shown = fixed(size, decimals.length);
  const [digits = "", rest] = shown.split(".");
  const least = whole.replaceAll("#", "").length;
  const padded = (least === 0 && digits === "0" ? "" : digits).padStart(least, "0");
  const grouped = thousands ? padded.replace(/\B(?=(\d{3})+$)/g, ",") : padded;
  const minus = number < 0 && /[1-9]/.test(shown) ? "-" : "";
  return minus + before + grouped + (rest ? `.${rest}` : "") + percent + after;
}

/** Halves away from zero, of what 15 digits show. */
function fixed(size: number, decimals: number): string {
  const [mantissa, exponent = "0"] = Number(size.toPrecision(15)).toExponential().split("e");
  const scaled = Math.floor(Number(`${mantissa}e${Number(exponent) + decimals}`) + 0.5);
  const digits = scaled.toFixed(0).padStart(decimals + 1, "0");
  return decimals === 0 ? digits : `${digits.slice(0, -decimals)}.${digits.slice(-decimals)}`;
}

const left = (value: string, count = 1) => (count < 0 ? valueError() : value.slice(0, count));
const right = (value: string, count = 1) =>
  count < 0 ? valueError() : count === 0 ? "" : value.slice(-count);

export const texts: readonly Named[] = [
  ofText("LEN", 1, (value: string) => value.length),
  ofText("LEFT", 1, left, 1, 2),
  ofText("RIGHT", 1, right, 1, 2),
  ofText("MID", 1, (value: string, start: number, count: number) =>
    start < 1 || count < 0 ? valueError() : value.slice(start - 1, start - 1 + count),
  ),
  ofText("UPPER", 1, (value: string) => value.toUpperCase()),
  ofText("LOWER", 1, (value: string) => value.toLowerCase()),
  ofText("PROPER", 1, proper),
  ofText("TRIM", 1, (value: string) => value.replace(/ +/g, " ").replace(/^ | $/g, "")),
  ofText("EXACT", 2, (a: string, b: string) => a === b),
  ofText("FIND", 2, (a: string, b: string, start = 1) => find(a, b, start), 2, 3),
  ofText("SEARCH", 2, (a: string, b: string, start = 1) => search(a, b, start), 2, 3),
  ofText("SUBSTITUTE", 3, substitute, 3, 4),
  scalar("REPLACE", (value, start, count, now) => {
    const [old, fresh, from, size] = [toText(value!), toText(now!), toNumber(start!), toNumber(count!)];
    for (const one of [old, from, size, fresh]) if (isError(one)) return one;
    const at = Math.trunc(from as number) - 1;
    if (at < 0 || (size as number) < 0) return valueError();
    const inside = old as string;
    return fittingText(
      inside.slice(0, at) + (fresh as string) + inside.slice(at + Math.trunc(size as number)),
    );
  }),
  ofText("REPT", 1, (value: string, count: number) =>
    count < 0 || value.length * count > 1e6 ? valueError() : fittingText(value.repeat(count)),
  ),
  scalar(
    "CONCATENATE",
    (...values) => {
      let result = "";
      for (const value of values) {
        const one = toText(value);
        if (isError(one)) return one;
        result += one;
      }
      return fittingText(result);
    },
    1,
    many,
  ),
  ranged("CONCAT", 1, many, "r", joined),
  ranged("TEXTJOIN", 3, many, "rvr", joinedWith),
  scalar("VALUE", (value) => (typeof value === "boolean" ? valueError() : toNumber(value!)), 1),
  scalar("TEXT", formatted),
  scalar(
    "DELTA",
    (a, b = 0) => {
      const [left, right] = [toNumber(a!), toNumber(b)];
      return isError(left) ? left : isError(right) ? right : sameNumber(left, right) ? 1 : 0;
    },
    1,
    2,
  ),
  scalar("HYPERLINK", (link, shown = link) => shown!, 1, 2),
  scalar(
    "FIXED",
    (value, decimals = 2, plain = false) => {
      const [number, places] = [toNumber(value!), toNumber(decimals)];
      if (isError(number)) return number;
      if (isError(places)) return places;
      if (places < 0 || places > 15 || !finite(number)) throw new Unsupported("FIXED with such places");
      return formatted(number, `${plain ? "0" : "#,##0"}${places > 0 ? `.${"0".repeat(places)}` : ""}`);
    },
    1,
    3,
  ),
];

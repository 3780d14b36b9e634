// fill: values as a spreadsheet computes with them, and how one kind becomes another.

/** An error in a cell; `code` is what the cell shows. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** null is an empty cell. */
export type Scalar = number | string | boolean | null | CellError;
export type Matrix = Scalar[][];

/** Cells on one sheet; `bottom` and `right` belong to it. */
export class Area {
  constructor(
    readonly sheet: number,
    readonly top: number,
    readonly left: number,
    readonly bottom: number,
    readonly right: number,
  ) {}
  get isCell(): boolean {
    return this.top === this.bottom && this.left === this.right;
  }
}

export type Value = Scalar | Matrix | Area;

export const isError = (value: unknown): value is CellError => value instanceof CellError;
export const isMatrix = (value: Value): value is Matrix => Array.isArray(value);

export const valueError = (message?: string) => new CellError("#VALUE!", message);
export const notAvailable = (message?: string) => new CellError("#N/A", message);
export const numberError = (message?: string) => new CellError("#NUM!", message);
export const referenceError = (message?: string) => new CellError("#REF!", message);
export const divisionByZero = () => new CellError("#DIV/0!");

/**
 * Thrown where it is not known for certain what a spreadsheet program would give: the cell keeps its old value, and
 * the report counts it.
 */
export class Unsupported extends Error {
  override name = "Unsupported";
}

/** A text that is a number in some places of the world and none, or another, in others. */
export class DoubtfulText extends Unsupported {
  constructor(text: string) {
    super(`takes the text ${JSON.stringify(text.slice(0, 30))} for a number`);
  }
}

const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;

export function toNumber(value: Scalar): number | CellError {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (value === null) return 0;
  if (typeof value !== "string") return value;
  const text = value.trim();
  if (plainNumber.test(text)) return Number(text);
  if (mayBeNumber(text)) throw new DoubtfulText(text);
  return valueError(`${JSON.stringify(text.slice(0, 40))} is no number`);
}

const words =
  /jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?|[ap]m?\b/gi;
const exponent = /(\d)e(?=[+-]?\d)/gi;

/** Money, thousands, percentages, negatives in parentheses, dates and times depend on where the program runs. */
function mayBeNumber(text: string): boolean {
  if (!/\p{N}/u.test(text) || text.length > 100) return false;
  return /^[\p{N}\p{Sc}\s.,:;/%'’()+\u2212-]*$/u.test(text.replace(exponent, "$1").replace(words, ""));
}

/** A number as a text holds it: 15 digits, as spreadsheets show. */
function numberText(value: number): string {
  const rounded = Number(value.toPrecision(15));
  const size = Math.abs(rounded);
  if (rounded === 0) return "0";
  if (size >= 1e15 || size < 1e-4) throw new Unsupported("writes a very large or very small number as text");
  return String(rounded);
}

export function toText(value: Scalar): string | CellError {
  if (typeof value === "string") return value;
  if (typeof value === "number") return numberText(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value === null ? "" : value;
}

export function toBoolean(value: Scalar): boolean | CellError {
  if (typeof value === "boolean") return value;
  if (typeof value === "number") return value !== 0;
  if (value === null) return false;
  if (typeof value !== "string") return value;
  const text = value.toUpperCase();
  return text === "TRUE" ? true : text === "FALSE" ? false : valueError();
}

/** The most characters that a cell holds. */
const LONGEST_TEXT = 32_767;

export const fittingText = (text: string): string | CellError =>
  text.length > LONGEST_TEXT ? valueError() : text;

/** Whether a cell can hold the value: the last question before it is written. */
export const fitsCell = (value: Scalar): boolean =>
  typeof value === "number"
    ? Number.isFinite(value)
    : typeof value === "string"
      ? value.length <= LONGEST_TEXT
      : value === null || typeof value === "boolean" || value instanceof CellError;

/** Numbers nearer to 0 are 0 (Microsoft: Floating-point arithmetic may give inaccurate results in Excel). */
const LEAST_NUMBER = 2 ** -1022;

/** A result that a cell can hold: never NaN, an infinity or -0. */
export function finite(value: number): number | CellError {
  if (value - value !== 0) return numberError();
  return Math.abs(value) < LEAST_NUMBER ? 0 : value;
}

const collator = new Intl.Collator("en", { sensitivity: "accent" });

/** Texts are alike whatever their case. */
export const compareTexts = (a: string, b: string): number => (a === b ? 0 : collator.compare(a, b));

/** Numbers are alike if their first fifteen digits are. */
export function sameNumber(a: number, b: number): boolean {
  if (a === b) return true;
  const difference = Math.abs(a - b);
  return difference < Math.abs(a) * 2 ** -47 && a.toPrecision(15) === b.toPrecision(15);
}

const rank = (value: Scalar) => (typeof value === "number" ? 0 : typeof value === "string" ? 1 : 2);

/** Below 0, 0 or above 0: numbers before texts before FALSE before TRUE; an empty cell is the other's least value. */
export function compare(a: Scalar, b: Scalar): number {
  const left = a ?? (typeof b === "string" ? "" : typeof b === "boolean" ? false : 0);
  const right = b ?? (typeof a === "string" ? "" : typeof a === "boolean" ? false : 0);
  if (typeof left === "number" && typeof right === "number")
    return sameNumber(left, right) ? 0 : left - right;
  if (typeof left === "string" && typeof right === "string") return compareTexts(left, right);
  if (rank(left) !== rank(right)) return rank(left) - rank(right);
  return Number(left) - Number(right);
}

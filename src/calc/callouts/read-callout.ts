// calc: reads a callout: the text on the drawing becomes a size with its limit deviations.

import { inchFit, isInchFit } from "../fits/ansi-b41.ts";
import { isHoleClass, limitDeviations } from "../fits/iso286.ts";
import {
  LONGEST,
  lengthText,
  TICKS_PER_IN,
  TICKS_PER_MM,
  TICKS_PER_UM,
  toTicks,
  type Units,
} from "../lengths.ts";
import { plainText } from "../number-text.ts";
import { Problem, shown, wrong } from "../problem.ts";
import type { Callout, Deviations } from "./callout.ts";
import { OTHER_OPERATIONS, REAM } from "./drawing-words.ts";
import { readPlainClass } from "./plain-class.ts";
import { Cursor, type Quantity, ticksOf } from "./quantities.ts";
import { type Token, tokenize } from "./tokens.ts";
import { readParts, type Written } from "./written-callout.ts";

const LONGEST_TEXT = 200;
const COUNT_BEFORE = /^\(?(\d{1,5})\)? ?[xX×] ?(?=[⌀ØøΦφ.\d]|dia|%%c)/i;

/**
 * Reads a callout.
 * @param name the argument, for messages
 * @param units the unit of sizes written without one
 * @throws Problem "wrong" for a text that is no callout, "none" for a class not defined at its size
 */
export function readCallout(text: string, name: string, units: Units): Callout {
  const known = recall(text, units);
  if (known) return known;
  try {
    const read = readPlainClass(text, units) ?? readWhole(text, name, units);
    remember(text, units, read);
    return read;
  } catch (thrown) {
    if (!(thrown instanceof Problem) || thrown.message.startsWith(name)) throw thrown;
    throw new Problem(thrown.kind, `${name} ${shown(text)}: ${thrown.message}`);
  }
}

const GENERATION = 8192;
const recent = { mm: new Map<string, Callout>(), in: new Map<string, Callout>() };
const older = { mm: new Map<string, Callout>(), in: new Map<string, Callout>() };

function recall(text: string, units: Units): Callout | undefined {
  return recent[units].get(text) ?? older[units].get(text);
}

function remember(text: string, units: Units, callout: Callout): void {
  if (text.length > LONGEST_TEXT) return;
  if (recent[units].size >= GENERATION) {
    older[units] = recent[units];
    recent[units] = new Map();
  }
  recent[units].set(text, callout);
}

function readWhole(text: string, name: string, units: Units): Callout {
  if (text.length > LONGEST_TEXT)
    wrong(`${name} is a text of ${text.length} characters: a callout has at most ${LONGEST_TEXT}`);
  const plain = plainText(text);
  const before = COUNT_BEFORE.exec(plain);
  if (!before) return readDrawing(plain, text, name, units);
  try {
    const callout = readDrawing(plain.slice(before[0].length), text, name, units);
    return { ...callout, count: Math.max(1, Number(before[1])) };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    try {
      return readDrawing(plain, text, name, units);
    } catch {
      throw thrown;
    }
  }
}

function readDrawing(plain: string, text: string, name: string, units: Units): Callout {
  const cursor = new Cursor(reamed(tokenize(plain, name)), text, name, units);
  return join(readParts(cursor), cursor, units);
}

/** Of a note with several operations, the tokens that belong to REAM. */
function reamed(tokens: Token[]): Token[] {
  const at = tokens.findIndex((token) => REAM.has(token.text));
  if (at < 0 || !tokens.some((token) => OTHER_OPERATIONS.has(token.text))) return tokens;
  const isEnd = (token: Token) => OTHER_OPERATIONS.has(token.text);
  const isBorder = (token: Token) => isEnd(token) || token.text === "," || token.text === ";";
  let after = tokens.slice(at + 1);
  const end = after.findIndex(isEnd);
  if (end >= 0) {
    const border = after.slice(0, end).findLastIndex(isBorder);
    after = after.slice(0, border >= 0 ? border : end);
  }
  const firstNumber = after.findIndex((token) => token.kind === "number");
  if (
    firstNumber >= 0 &&
    !after.slice(0, firstNumber).some((token) => token.kind === "sign" || token.kind === "plusminus")
  )
    return after;
  return [...tokens.slice(tokens.slice(0, at).findLastIndex(isBorder) + 1, at), ...after];
}

/** The written parts, joined to one size with its deviations. */
function join(written: Written, cursor: Cursor, sheetUnits: Units): Callout {
  const { size, limit } = written;
  if (!size) return cursor.refuse("has no size: write 12 H7 or 12 +0.018/0");
  const [first, second] = written.classes;
  const inch = first !== undefined && isInchFit(first);
  const stated = statedUnits([size, limit, ...written.deviations.map((one) => one.quantity)], cursor);
  const units = stated ?? (inch ? "in" : sheetUnits);
  if (units === "mm" && stated === undefined) refuseInchStyle([size, limit], cursor);
  const sizes = [ticksOf(size, units), ...(limit ? [ticksOf(limit, units)] : [])];
  const nominal = Math.min(...sizes);
  if (nominal <= 0) cursor.refuse("has a size of 0");
  if (Math.max(...sizes) > toTicks(LONGEST[units], units))
    cursor.refuse(`has a size over ${LONGEST[units]} ${units}`);
  const rest = {
    text: cursor.callout,
    nominal,
    units,
    count: written.count,
    depth: written.depth && ticksOf(written.depth, units),
    through: written.through,
    marks: written.marks.join(" "),
  };
  if (limit) {
    if (first) cursor.refuse(`has both limits and the class ${first}`);
    const deviations = { lower: 0, upper: Math.max(...sizes) - nominal };
    return {
      ...rest,
      ...checked(deviations, nominal, units, cursor),
      kind: "hole",
      className: "",
      iso: false,
      shaft: undefined,
    };
  }
  const deviations = written.deviations.length > 0 ? statedDeviations(written, units, cursor) : undefined;
  if (first === undefined) {
    if (!deviations) return cursor.refuse("has no tolerance: write 12 H7 or 12 +0.018/0");
    return {
      ...rest,
      ...checked(deviations, nominal, units, cursor),
      kind: "hole",
      className: "",
      iso: false,
      shaft: undefined,
    };
  }
  const read = inch
    ? fromInchFit(first, second, nominal, cursor)
    : fromClasses(first, second, nominal, cursor);
  if (deviations) refuseContradiction(read, deviations, written, units, cursor);
  return { ...rest, ...read };
}

function statedUnits(quantities: (Quantity | undefined)[], cursor: Cursor): Units | undefined {
  const units = new Set(quantities.flatMap((quantity) => quantity?.units ?? []));
  if (units.size > 1) cursor.refuse("is written in mm and in inches: write it in one of them");
  return [...units][0];
}

function refuseInchStyle(sizes: (Quantity | undefined)[], cursor: Cursor): void {
  for (const size of sizes)
    if (size && /^\.\d{3}/.test(size.text))
      cursor.refuse(`looks like inches (${size.text}) and units is "mm": give units "in" or write mm`);
  const [first] = sizes;
  if (first?.text.startsWith(".") && first.joinedToWord)
    cursor.refuse(`has ${first.text} written to a word: put a space, to tell ${first.text} from ${first.text.slice(1)}`);
}

type Toleranced = Pick<Callout, "lower" | "upper" | "kind" | "className" | "iso" | "shaft">;

function fromInchFit(fit: string, second: string | undefined, nominal: number, cursor: Cursor): Toleranced {
  if (second) cursor.refuse(`has ${fit}/${second}: an inch fit stands alone`);
  const className = fit.toUpperCase();
  const read = inchFit(nominal, className);
  return {
    lower: read.holeLower,
    upper: read.holeUpper,
    kind: "hole",
    className,
    iso: false,
    shaft: { lower: read.shaftLower, upper: read.shaftUpper, className },
  };
}

function fromClasses(first: string, second: string | undefined, nominal: number, cursor: Cursor): Toleranced {
  if (second === undefined)
    return {
      ...limitDeviations(nominal, first),
      kind: isHoleClass(first) ? "hole" : "shaft",
      className: first,
      iso: true,
      shaft: undefined,
    };
  if (isHoleClass(first) === isHoleClass(second))
    cursor.refuse(
      `has ${first}/${second}: a fit is a hole in capitals and a shaft in small letters, like H7/g6`,
    );
  const [hole, shaft] = isHoleClass(first) ? [first, second] : [second, first];
  return {
    ...limitDeviations(nominal, hole),
    kind: "hole",
    className: hole,
    iso: true,
    shaft: { ...limitDeviations(nominal, shaft), className: shaft },
  };
}

/** Deviations as written; beside a class, whole numbers are µm. */
function statedDeviations(written: Written, units: Units, cursor: Cursor): Deviations {
  const { deviations, plusMinus, classes, size } = written;
  const inMicrometres =
    classes.length > 0 && deviations.every(({ quantity }) => /^\d+$/.test(quantity.text) && !quantity.units);
  const values = deviations.map(({ sign, quantity }) =>
    inMicrometres ? sign * quantity.value * TICKS_PER_UM : sign * ticksOf(quantity, units),
  );
  const [first, second] = values as [number, number | undefined];
  if (plusMinus) return { lower: -first, upper: first };
  if (second === undefined) {
    const [{ sign, quantity }] = deviations as [(typeof deviations)[0]];
    const example = sign > 0 ? `${size!.text} +${quantity.text}/0` : `${size!.text} 0/-${quantity.text}`;
    return cursor.refuse(`has one deviation alone: write ${example}`);
  }
  return { lower: Math.min(first, second), upper: Math.max(first, second) };
}

function checked(deviations: Deviations, nominal: number, units: Units, cursor: Cursor): Deviations {
  const { lower, upper } = deviations;
  if (Math.abs(lower) >= nominal || Math.abs(upper) >= nominal)
    cursor.refuse("has a deviation as large as the size");
  if (upper === lower) cursor.refuse("has a tolerance of 0: its two limits are the same");
  if (upper - lower > nominal / 4)
    cursor.refuse(`has a tolerance of ${lengthText(upper - lower, units)}, wider than a quarter of the size`);
  return { lower: lower + 0, upper: upper + 0 };
}

/** Stated deviations must be those of the class, as far as their decimals go (to 0.001 mm or 0.0001 in at the worst). */
function refuseContradiction(
  read: Deviations & { readonly className: string },
  stated: Deviations,
  written: Written,
  units: Units,
  cursor: Cursor,
): void {
  const decimals = Math.max(...written.deviations.map(({ quantity }) => quantity.decimals));
  const coarsest = units === "mm" ? TICKS_PER_UM : TICKS_PER_IN / 1e4;
  const step =
    decimals === 0
      ? TICKS_PER_UM
      : Math.min(coarsest, (units === "mm" ? TICKS_PER_MM : TICKS_PER_IN) / 10 ** decimals);
  if (Math.abs(read.lower - stated.lower) <= step / 2 && Math.abs(read.upper - stated.upper) <= step / 2)
    return;
  const text = (one: Deviations) => `${signedText(one.upper, units)}/${signedText(one.lower, units)}`;
  cursor.refuse(`contradicts itself: ${read.className} is ${text(read)}, written is ${text(stated)}`);
}

function signedText(ticks: number, units: Units): string {
  return `${ticks > 0 ? "+" : ""}${lengthText(ticks, units)}`;
}

// fill: what a condition such as ">12" asks of a cell, and how the cells that meet it are found without reading them all.

import {
  CellError,
  compareTexts,
  type Scalar,
  sameNumber,
  toNumber,
  Unsupported,
} from "../formula/values.ts";
import { type Key, keyOf } from "./range-index.ts";
import { hasWildcards, literalStart, wildcardTest } from "./wildcards.ts";

export interface Condition {
  /** Alike for conditions that ask the same. */
  readonly name: string;
  readonly meets: (value: Scalar) => boolean;
  /** The cells that meet it: those under a key, or texts like a pattern; or all others, if it says `isOther`. */
  readonly key?: Key;
  readonly like?: { readonly start: string; readonly test: (value: string) => boolean };
  readonly isOther?: boolean;
  /** It is met by what is on one side in a range that is sorted. */
  readonly side?: { readonly of: "number" | "string"; readonly isBelow: boolean };
}

type Asked = Omit<Condition, "name">;

const compares: Readonly<Record<string, (difference: number) => boolean>> = {
  "=": (difference) => difference === 0,
  "<>": (difference) => difference !== 0,
  "<": (difference) => difference < 0,
  ">": (difference) => difference > 0,
  "<=": (difference) => difference <= 0,
  ">=": (difference) => difference >= 0,
};

const errors = /^#(?:N\/A|NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!)$/i;

/** A number in a condition asks for numbers and for texts that are one, a text for texts. */
export function conditionOf(condition: Scalar): Condition {
  if (condition instanceof CellError)
    return { name: `error ${condition.code}`, ...ofError("=", condition.code) };
  const given = condition ?? 0;
  return { name: `${typeof given} ${given}`, ...asked(given) };
}

function asked(given: string | number | boolean): Asked {
  if (typeof given === "boolean") return { meets: (value) => value === given };
  const [, operator = "=", wanted = ""] = /^(<>|<=|>=|=|<|>)?([\s\S]*)$/.exec(String(given))!;
  const holds = compares[operator];
  if (wanted === "") return { meets: ofNothing(operator, String(given)) };
  if (/^(?:true|false)$/i.test(wanted)) throw new Unsupported("a condition on TRUE or FALSE");
  if (errors.test(wanted)) return ofError(operator, wanted.toUpperCase());
  const number = typeof given === "number" ? given : toNumber(wanted);
  if (typeof number === "number") return ofNumber(operator, holds, number);
  return ofText(operator, holds, wanted);
}

function ofError(operator: string, code: string): Asked {
  if (operator !== "=" && operator !== "<>") throw new Unsupported("an error that is compared by size");
  const isEqual = operator === "=";
  return { meets: (value) => (value instanceof CellError && value.code === code) === isEqual };
}

const sideOf = (of: "number" | "string", operator: string) => ({ of, isBelow: operator.startsWith("<") });

function ofNumber(operator: string, holds: (difference: number) => boolean, number: number): Asked {
  const readsTexts = operator === "=" || operator === "<>";
  const meets = (value: Scalar) => {
    const cell = typeof value === "string" && readsTexts ? numberIn(value) : value;
    if (typeof cell !== "number") return operator === "<>";
    return holds(sameNumber(cell, number) ? 0 : cell - number);
  };
  if (readsTexts) return { meets, key: keyOf(number), isOther: operator === "<>" };
  return { meets, side: sideOf("number", operator) };
}

function ofText(operator: string, holds: (difference: number) => boolean, wanted: string): Asked {
  const isEqual = operator === "=";
  if (hasWildcards(wanted)) {
    if (!isEqual && operator !== "<>") throw new Unsupported("wildcards that are compared by size");
    const test = wildcardTest(wanted);
    const meets = (value: Scalar) => (typeof value === "string" && test(value)) === isEqual;
    return { meets, like: { start: literalStart(wanted), test }, isOther: !isEqual };
  }
  if (!isEqual && operator !== "<>")
    return {
      meets: (value) => typeof value === "string" && holds(compareTexts(value, wanted)),
      side: sideOf("string", operator),
    };
  const key = keyOf(wanted);
  const meets = (value: Scalar) => (typeof value === "string" && keyOf(value) === key) === isEqual;
  return { meets, key, isOther: !isEqual };
}

function ofNothing(operator: string, given: string): (value: Scalar) => boolean {
  if (given === "") return (value) => value === null || value === "";
  if (operator === "=") return (value) => value === null;
  if (operator === "<>") return (value) => value !== null;
  return () => false;
}

function numberIn(value: string): Scalar {
  const number = toNumber(value);
  return typeof number === "number" ? number : value;
}

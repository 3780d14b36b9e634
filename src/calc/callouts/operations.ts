// calc: of a note with several operations, the part that belongs to reaming.

import { lastIndexOf } from "../own.ts";
import type { Token } from "./tokens.ts";

export interface Operations {
  /** What is said of the reamed hole. */
  readonly kept: Token[];
  readonly before: readonly Token[];
  readonly after: readonly Token[];
}

const isOperation = (token: Token) => token.role === "drill";
const isBorder = (token: Token) => isOperation(token) || token.text === "," || token.text === ";";
const isTolerance = ({ kind }: Token) => kind === "sign" || kind === "plusminus";

/** `11.7 DRILL, 12 H7 REAM`, `DRILL 11.7, REAM 12 H7`: the size stands behind REAM, or before it where none stands behind. */
export function reamedPart(tokens: Token[]): Operations {
  const at = tokens.findIndex(({ role, text }) => role === "ream" || text === "ALESAGE");
  if (at < 0 || !tokens.some(isOperation)) return { kept: tokens, before: [], after: [] };
  const behind = tokens.slice(at + 1);
  const next = behind.findIndex(isOperation);
  const border = next < 0 ? -1 : lastIndexOf(behind.slice(0, next), isBorder);
  const end = next < 0 ? behind.length : border >= 0 ? border : next;
  const own = behind.slice(0, end);
  const after = behind.slice(end);
  const start = hasSize(own) ? at : lastIndexOf(tokens.slice(0, at), isBorder) + 1;
  return { kept: [...tokens.slice(start, at), ...own], before: tokens.slice(0, start), after };
}

/** Whether a number stands there that is no count, depth or deviation. */
function hasSize(tokens: readonly Token[]): boolean {
  const isOther = (token: Token | undefined) =>
    token?.role === "count" || token?.role === "hole" || token?.role === "deep";
  const first = tokens.findIndex((token, at) => token.kind === "number" && !isOther(tokens[at + 1]));
  return (
    first >= 0 &&
    !tokens
      .slice(0, first)
      .some(
        (token) =>
          isTolerance(token) || token.role === "deep" || token.role === "deep-sign" || token.role === "times",
      )
  );
}

/** `3. REAM 12 H7`: the number of an entry in a list of notes. */
export function withoutItemNumber(tokens: Token[]): Token[] {
  const [first, second] = tokens;
  const isItem =
    first?.kind === "number" &&
    /^\d{1,2}\.$/.test(first.text) &&
    second?.role !== undefined &&
    !second.joined;
  return isItem && second.role !== "unit" && second.role !== "times" ? tokens.slice(1) : tokens;
}

// calc: reads a callout: the text on the drawing becomes a size with its limit deviations.

import type { Units } from "../lengths.ts";
import { plainText } from "../number-text.ts";
import { Problem, shown, wrong } from "../problem.ts";
import type { Callout } from "./callout.ts";
import { COUNTED, DEEP, DIAMETER_SIGNS, OTHER_OPERATIONS, REAM } from "./drawing-words.ts";
import { join } from "./join-parts.ts";
import { inSlot, keepInSlot, recall, remember, slotOf } from "./memory.ts";
import { readPlainCallout } from "./plain-callout.ts";
import { Cursor } from "./quantities.ts";
import { type Token, tokenize } from "./tokens.ts";
import { readParts } from "./written-callout.ts";

const LONGEST_TEXT = 200;
/** `4X 12`, `(4X) ⌀12`, and with a hyphen before a diameter sign alone: `4-⌀12`. */
const COUNT_BEFORE = new RegExp(
  `^\\(?(\\d{1,5})\\)? ?(?:[x×] ?(?=[.\\d])|[-x×] ?(?=[${DIAMETER_SIGNS}]|dia|%%c))`,
  "i",
);

/**
 * Reads a callout.
 * @param name the argument, for messages
 * @param units the unit of sizes written without one
 * @throws Problem "wrong" for a text that is no callout, "none" for a class not defined at its size
 */
export function readCallout(text: string, name: string, units: Units): Callout {
  const slot = slotOf(text);
  const known = inSlot(slot, text, units);
  if (known) return known;
  try {
    const read = readPlainCallout(text, units) ?? recall(text, units) ?? readWhole(text, name, units);
    keepInSlot(slot, units, read);
    return read;
  } catch (thrown) {
    if (!(thrown instanceof Problem) || thrown.message.startsWith(name)) throw thrown;
    throw new Problem(thrown.kind, `${name} ${shown(text)}: ${thrown.message}`);
  }
}

function readWhole(text: string, name: string, units: Units): Callout {
  if (text.length > LONGEST_TEXT)
    wrong(`${name} is a text of ${text.length} characters: a callout has at most ${LONGEST_TEXT}`);
  const callout = readCounted(plainText(text).replace(/ ?\.$/, ""), text, name, units);
  remember(text, units, callout);
  return callout;
}

/** A callout with the number of holes before it, where that reads; `4X8` alone is size 4 and class X8. */
function readCounted(plain: string, text: string, name: string, units: Units): Callout {
  const before = COUNT_BEFORE.exec(plain);
  if (!before) return readDrawing(plain, text, name, units);
  try {
    const callout = readDrawing(plain.slice(before[0].length), text, name, units);
    return { ...callout, count: Math.max(1, Number(before[1])) };
  } catch (thrown) {
    if (!(thrown instanceof Problem)) throw thrown;
    try {
      return readDrawing(plain, text, name, units);
    } catch (other) {
      throw other instanceof Problem && other.kind === "none" ? other : thrown;
    }
  }
}

function readDrawing(plain: string, text: string, name: string, units: Units): Callout {
  const cursor = new Cursor(reamed(tokenize(plain, name)), text, name, units);
  return join(readParts(cursor), cursor, units);
}

const isCountOrDepth = (wordAfter: string) => COUNTED.has(wordAfter) || DEEP.has(wordAfter);

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
  const firstNumber = after.findIndex(
    (token, index) => token.kind === "number" && !isCountOrDepth(after[index + 1]?.text ?? ""),
  );
  if (
    firstNumber >= 0 &&
    !after.slice(0, firstNumber).some((token) => token.kind === "sign" || token.kind === "plusminus")
  )
    return after;
  return [...tokens.slice(tokens.slice(0, at).findLastIndex(isBorder) + 1, at), ...after];
}

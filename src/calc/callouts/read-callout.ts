// calc: reads a callout: the text on the drawing becomes a size with its limit deviations.

import type { Units } from "../lengths.ts";
import { plainText } from "../number-text.ts";
import { Problem, shown, wrong } from "../problem.ts";
import type { Callout } from "./callout.ts";
import { readCount, readCountAtEnd, readDroppedCounts } from "./counts.ts";
import { join } from "./join-parts.ts";
import { hashOf, inSlot, keepInSlot, recall, remember } from "./memory.ts";
import { reamedPart, withoutItemNumber } from "./operations.ts";
import { readPlainCallout } from "./plain-callout.ts";
import { Cursor } from "./quantities.ts";
import { type Token, tokenize } from "./tokens.ts";
import { nothingWritten, type Written } from "./written.ts";
import { readParts } from "./written-callout.ts";

const LONGEST_TEXT = 200;
/**
 * Reads a callout.
 * @param name the argument, for messages
 * @param units the unit of sizes written without one
 * @throws Problem "wrong" for a text that is no callout, "none" for a class not defined at its size
 */
export function readCallout(text: string, name: string, units: Units): Callout {
  const hash = hashOf(text);
  const known = inSlot(hash, text, units);
  if (known) return known;
  try {
    const read = readPlainCallout(text, units) ?? recall(text, units) ?? readWhole(text, name, units);
    keepInSlot(hash, units, read);
    return read;
  } catch (thrown) {
    if (!(thrown instanceof Problem) || thrown.message.startsWith(name)) throw thrown;
    throw new Problem(thrown.kind, `${name} ${shown(text)}: ${thrown.message}`);
  }
}

function readWhole(text: string, name: string, units: Units): Callout {
  if (text.length > LONGEST_TEXT)
    wrong(`${name} is a text of ${text.length} characters. Write a callout of at most ${LONGEST_TEXT}.`);
  const plain = plainLines(text);
  const tokens = withoutItemNumber(tokenize(plain, name));
  const written = nothingWritten();
  const whole = new Cursor(tokens, plain, text, name, units);
  while (whole.isKind("number") && readCount(whole, written)) whole.skip("diameter");
  const { kept, before, after } = reamedPart(tokens.slice(whole.at));
  if (before.length + after.length > 0) written.holeWord = "REAM";
  const cursor = new Cursor(kept, plain, text, name, units);
  readParts(cursor, written);
  readCountAtEnd(cursor, written);
  readDropped(cursor, before, after, written);
  const callout = join(written, cursor);
  remember(text, units, callout);
  return callout;
}

/** What other operations say of the same hole: how many, and that it goes through. */
function readDropped(
  cursor: Cursor,
  before: readonly Token[],
  after: readonly Token[],
  written: Written,
): void {
  readDroppedCounts(cursor, [...before, ...after], written);
  if (!written.depth && before.some(({ role }) => role === "through")) written.through = true;
  if (after.some(({ kind }) => kind === "class" || kind === "sign" || kind === "plusminus"))
    cursor.refuse("has a second tolerance behind REAM. Write the reamed size alone.");
}

const FRACTIONS: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/** As plainText, with line breaks kept, full-width characters as plain ones, and fractions of one character written out. */
function plainLines(text: string): string {
  return text
    .split(/[\n\r\v\f\u0085\u2028\u2029]/)
    .map((line) =>
      plainText(
        line
          .replace(/[\uff01-\uff5e]/g, (wide) => String.fromCharCode(wide.charCodeAt(0) - 0xfee0))
          .replace(/[½¼¾⅛⅜⅝⅞]/g, (one, at) => `${/\d$/.test(line.slice(0, at)) ? " " : ""}${FRACTIONS[one]}`)
          .replace(/，/g, ",")
          .replace(/、/g, ", ")
          .replace(/。/g, "; ")
          .replace(/〜/g, "~")
          .replace(/[⁄∕]/g, "/")
          .replace(/[—‒―]/g, "-")
          .replace(/[✕✖⨯]/g, "×")
          .replace(/№/g, "N°")
          // Half-width katakana, and units of one character: ㎜.
          .replace(/[\u3380-\u33df\uff66-\uff9f]+/g, (one) => one.normalize("NFKC")),
      ),
    )
    .filter((line) => line !== "")
    .join("\n")
    .replace(/ ?\.$/, "");
}

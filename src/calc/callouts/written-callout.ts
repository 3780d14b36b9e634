// calc: reads a callout part by part: the size with its tolerance, and what stands around it.

import type { Role } from "../../data/drawing-words.ts";
import { isCountAhead, readCount, readCountBefore, readCountBehind } from "./counts.ts";
import { isDepthAhead, readDepth } from "./depths.ts";
import { isAfterAtEnd } from "./drawing-words.ts";
import type { Cursor, Quantity } from "./quantities.ts";
import {
  isChamferAhead,
  isCircleAhead,
  isNumberNext,
  isRoughnessAhead,
  readAfter,
  readBefore,
  readPhrase,
  refuseTaper,
  refuseUnknown,
  skipChamfer,
  skipCircle,
  skipFrame,
  skipNumberAndRoughness,
  skipRoughness,
} from "./set-aside.ts";
import { readExtreme, readSize } from "./sizes.ts";
import type { Token } from "./tokens.ts";
import {
  areLimits,
  readClass,
  readClassLimits,
  readSizeTolerance,
  readTolerance,
  THREAD,
} from "./tolerances.ts";
import { isToleranced, keepNote, nothingWritten, type Written } from "./written.ts";

/** Reads every part of a callout. @throws Problem "wrong" at what it cannot place */
export function readParts(cursor: Cursor, written: Written = nothingWritten()): Written {
  while (cursor.peek() && !isStop(cursor, written)) readPart(cursor, written);
  return written;
}

type Reader = (cursor: Cursor, written: Written, token: Token) => void;

const pass: Reader = (cursor) => void cursor.take();
const holeWord: Reader = (cursor, written, token) => {
  written.holeWord ??= token.text;
  cursor.take();
};
const keepMark: Reader = (cursor, written) => void written.marks.push(cursor.take().text);
const depthBehind: Reader = (cursor, written, token) => {
  if (token.role === "times" && readCountBehind(cursor, written)) return;
  cursor.take();
  if (!cursor.isKind("number", cursor.is("extreme") ? 1 : 0))
    cursor.refuse(`has ${token.text} without a depth after it. Write one, like x 30.`);
  readDepth(cursor, written, token.role === "times");
};
const circleOrWord: Reader = (cursor, written, token) => {
  if (skipCircle(cursor, written)) return;
  if (!cursor.peek(1) && token.role === "on")
    cursor.refuse(`has ${token.text} without a circle after it. Write one, like ON ⌀80 B.C.`);
  readWord(cursor, written);
};

/** What a word or symbol begins, by its role; any other is a word. */
const readers: { readonly [role in Role]?: Reader } = {
  through(cursor, written, token) {
    holeWord(cursor, written, token);
    written.through = true;
  },
  diameter: pass,
  hole: holeWord,
  ream: holeWord,
  drill: holeWord,
  known: pass,
  modifier: keepMark,
  times: depthBehind,
  deep: depthBehind,
  "deep-sign": depthBehind,
  extreme: readExtreme,
  frame(cursor, written) {
    if (!skipFrame(cursor, written)) readWord(cursor, written);
  },
  roughness: skipRoughness,
  on: circleOrWord,
  circle: circleOrWord,
  chamfer: skipChamfer,
  phrase: readPhrase,
  after: readAfter,
  including: readAfter,
  before: readBefore,
  coated(cursor, written, token) {
    written.coated = true;
    keepNote(written, cursor, token.start, token.end);
    cursor.take();
  },
  "count-before": readCountBefore,
  thread: (cursor) => cursor.refuse(THREAD),
  taper: refuseTaper,
  radius: (cursor, _, token) =>
    cursor.refuse(`has a radius (${token.text}). Write the diameter with its tolerance, like 12 H7.`),
  // A number of holes whose number is lost in a copy.
  count(cursor, written, token) {
    if (!/^(?:NO|EA|REQD)$/.test(token.text))
      cursor.refuse(`has ${token.text} without a number before it. Write one, like 4 PLACES.`);
    readWord(cursor, written);
  },
  change: (cursor, _, token) =>
    cursor.refuse(`has ${token.text}, which changes what the size means. Write the size to be reamed alone.`),
  /** A unit behind the tolerance is the size's. */
  unit(cursor, written) {
    const before = cursor.peek(-1);
    const isBehindNumber = before?.kind === "number" || before?.kind === "class" || before?.text === ")";
    const units = isBehindNumber && written.size && !written.size.units ? cursor.unit() : undefined;
    if (units === "mm" || units === "in") written.size = { ...written.size!, units };
    else readWord(cursor, written);
  },
};

function readPart(cursor: Cursor, written: Written): void {
  const token = cursor.peek()!;
  if (token.kind === "number") readNumber(cursor, written);
  else if (token.kind === "class") readClassOrDepth(cursor, written, token);
  else if (isSeparator(cursor, written) || isClassSeparator(cursor, written)) cursor.take();
  else if (token.kind === "sign" || token.kind === "plusminus") readSizeTolerance(cursor, written);
  else if (token.kind === "mark") keepMark(cursor, written, token);
  else if ("()[],;&".includes(token.text)) {
    if (!readBracket(cursor, written)) cursor.take();
  } else ((token.role && readers[token.role]) ?? readWord)(cursor, written, token);
}

/** `8 H7 / 20 tief`, `8 H7 - 20 tief`, `8 H7 - 2 OFF` */
const isSeparator = (cursor: Cursor, written: Written) =>
  (cursor.isText("-") || cursor.isText("/")) &&
  isToleranced(written) &&
  cursor.isKind("number", 1) &&
  cursor.ahead(() => {
    cursor.take();
    return isCountAhead(cursor) || isDepthAhead(cursor);
  });

/** `⌀12-H7`; without its sign the number may be a count, and M6 a thread. */
const isClassSeparator = (cursor: Cursor, written: Written) =>
  cursor.isText("-") &&
  cursor.isKind("class", 1) &&
  !/^m/i.test(cursor.peek(1)!.text) &&
  cursor.isKind("number", -1) &&
  cursor.is("diameter", -2) &&
  !isToleranced(written);

/** A letter x before a number is a depth once the size has its tolerance. */
function readClassOrDepth(cursor: Cursor, written: Written, { text }: Token): void {
  if (!/^x/i.test(text) || !isToleranced(written)) readClass(cursor, written);
  else cursor.splitTimes();
}

/** A word that means nothing here, or not in this place: a note behind a whole tolerance. */
function readWord(cursor: Cursor, written: Written): void {
  const { kind, text, start, end, joined } = cursor.peek()!;
  if (
    kind === "word" &&
    /^[A-Z]{1,2}$/.test(text) &&
    written.size &&
    !isToleranced(written) &&
    cursor.isKind("number", 1)
  )
    cursor.refuse(`can't be read at "${text}". Write a class without a space, like H7.`);
  // `±0.01S`: a figure that was copied as a letter.
  if (kind === "word" && joined && /^[A-Z]{1,2}$/.test(text) && cursor.isKind("number", -1))
    cursor.refuse(
      `has "${cursor.plain.slice(cursor.peek(-1)!.start, end)}". Write the number in figures, with a space behind it.`,
    );
  // `GO/NO-GO`
  const joinsWords = text === "/" && cursor.isKind("word", -1) && cursor.isKind("word", 1);
  if (!isToleranced(written) || (kind !== "word" && !joinsWords)) refuseUnknown(cursor);
  if (isAfterAtEnd(text)) written.coated ||= "perhaps";
  keepNote(written, cursor, start, end);
  cursor.take();
}

function readNumber(cursor: Cursor, written: Written): void {
  if (readCount(cursor, written)) return;
  if (cursor.isText(":", 1) && cursor.isKind("number", 2)) refuseTaper(cursor);
  if (written.size === undefined) readSize(cursor, written);
  else if (isChamferAhead(cursor)) skipChamfer(cursor, written);
  else if (isDepthAhead(cursor)) readDepth(cursor, written);
  else if (isRoughnessAhead(cursor)) skipNumberAndRoughness(cursor, written);
  else if (isCircleAhead(cursor)) circleOrWord(cursor, written, cursor.peek()!);
  else if (!readClassLimits(cursor, written)) readSizeTolerance(cursor, written);
}

/** Whether another feature begins: a counterbore, a countersink. */
function isStop(cursor: Cursor, written: Written): boolean {
  const angle = cursor.is("times") ? 1 : 0;
  // `90° CSK`
  if (cursor.isKind("number", angle) && cursor.isText("°", angle + 1) && cursor.is("stop", angle + 2))
    return true;
  if (cursor.is("stop-sign")) return true;
  if (!cursor.is("stop")) return false;
  const before = cursor.peek(-1);
  const isOwn =
    isToleranced(written) &&
    !cursor.peek()!.startsLine &&
    before?.role === undefined &&
    !/^[,;]$/.test(before?.text ?? "");
  const { text } = cursor.take();
  const isDepth =
    cursor.is("deep") ||
    isSmaller(cursor, written) ||
    cursor.is("deep-sign") ||
    cursor.is("times") ||
    (cursor.isKind("number") && isDepthAhead(cursor));
  cursor.at--;
  // `20 H8 C'BORE 5 DEEP`: the size is that of the counterbore.
  if (isOwn && isDepth) cursor.refuse(`has ${text} right behind the size. Write the reamed size alone.`);
  return true;
}

/** A counterbore is larger than its hole: a smaller number is its depth. */
const isSmaller = (cursor: Cursor, { size }: Written) =>
  cursor.ahead(() => {
    cursor.skip("diameter");
    return (
      size !== undefined &&
      cursor.isKind("number") &&
      !cursor.isText("°", 1) &&
      cursor.quantity().value <= size.value
    );
  });

/** `(12.70 ±.02)`, `[.500]`: the same size in the other unit. False where the bracket holds something else. */
function readBracket(cursor: Cursor, written: Written): boolean {
  const open = cursor.peek()!.text;
  const { size } = written;
  if (!size || written.second || !/^[([]$/.test(open)) return false;
  const close = cursor.tokens.findIndex(
    ({ text }, at) => at > cursor.at && text === (open === "(" ? ")" : "]"),
  );
  const inner = cursor.tokens.slice(cursor.at + 1, close);
  if (close < 0 || (open === "(" && isOfThisSize(cursor, written))) return false;
  const isInch = size.units === "in" || (!size.units && cursor.units === "in");
  const inside = cursor.within(inner, isInch ? "mm" : "in");
  if (inside.isKind("sign") || inside.isKind("plusminus")) {
    if (open === "(") return false;
    written.second = { ...nothingWritten(), tolerance: readTolerance(inside) };
  } else if (isNumberNext(inside, 0)) {
    const second = readParts(inside);
    if (open === "(" && !isConverted(size, second)) return false;
    written.second = second;
  } else return false;
  cursor.at = close + 1;
  return true;
}

/** Whether a number in round brackets is about this size in the other unit. */
function isConverted(size: Quantity, { size: other }: Written): boolean {
  if (!other) return false;
  const factor = other.value > size.value ? 25.4 : 1 / 25.4;
  return areLimits(size.value * factor, other.value);
}

/** A count, or what stands in brackets behind a class: its deviations or its limits. */
function isOfThisSize(cursor: Cursor, written: Written): boolean {
  return cursor.ahead(() => {
    cursor.take();
    cursor.skip("diameter");
    if (!cursor.isKind("number") || Number(cursor.peek()!.text) === 0) return true;
    if (readCount(cursor, { ...written, count: undefined })) return true;
    return readClassLimits(cursor, { ...written });
  });
}

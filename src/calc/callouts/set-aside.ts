// calc: what a callout says of other things than the size: tolerance frames, roughness, bolt circles, chamfers, notes.

import { readCount } from "./counts.ts";
import { isDepthAhead } from "./depths.ts";
import { FRAME_WORDS, isUncoated, ROUGHNESS_WORDS } from "./drawing-words.ts";
import type { Cursor } from "./quantities.ts";
import { refuseCharacter, type Token } from "./tokens.ts";
import { readTolerance } from "./tolerances.ts";
import { keepNote, nothingWritten, type Written } from "./written.ts";

/** Whether a number, or a diameter sign with one, comes next. */
export const isNumberNext = (cursor: Cursor, ahead = 1) =>
  cursor.isKind("number", ahead) || (cursor.is("diameter", ahead) && cursor.isKind("number", ahead + 1));

/** A tolerance frame: its value, modifiers and datum letters; false for the word alone. */
export function skipFrame(cursor: Cursor, written: Written): boolean {
  const isWord = cursor.isKind("word");
  let hasValue = false;
  const start = cursor.at;
  cursor.take();
  for (let token = cursor.peek(); token; token = cursor.peek()) {
    const isValue = token.kind === "number" || token.role === "diameter";
    // An X before a number says how deep.
    const isDepth = token.role === "times" && cursor.isKind("number", 1);
    const isDatum =
      token.kind === "word" && (/^(?:[A-Z]|[A-F]{2,4}|CZ)$/.test(token.text) || FRAME_WORDS.has(token.text));
    const isSign = token.role === "frame" || token.kind === "mark" || /^[|[\]-]$/.test(token.text);
    if (isValue ? hasValue : isDepth || !(isDatum || isSign)) break;
    hasValue ||= token.kind === "number";
    cursor.take();
  }
  if (isWord && !hasValue) {
    cursor.at = start;
    return false;
  }
  written.behind = "a tolerance frame";
  return true;
}

/** `63√`, `32 FINISH` */
export function skipNumberAndRoughness(cursor: Cursor, written: Written): void {
  cursor.at += 2;
  written.behind = "a roughness";
}

/** `Ra 0.8`, `√ 1,6`, `FINISH 32 RMS`. */
export function skipRoughness(cursor: Cursor, written: Written): void {
  const isRoughness = () => cursor.is("roughness") || ROUGHNESS_WORDS.has(cursor.peek()?.text ?? "");
  const isAfter = () => isRoughness() || cursor.is("micron") || cursor.is("extreme") || cursor.is("unit");
  while (isRoughness() || cursor.is("extreme")) cursor.take();
  if (cursor.isKind("number")) {
    cursor.take();
    while (isAfter()) cursor.take();
  }
  written.behind = "a roughness";
}

/** `63√`, `32 FINISH`, `0.8 µin`: a number that the word behind it makes a roughness. */
export function isRoughnessAhead(cursor: Cursor): boolean {
  const next = cursor.peek(1);
  if (!next || !(next.role === "roughness" || /^(?:[µΜ]IN|UIN)$/.test(next.text))) return false;
  const isBehind = next.text === "√" ? next.joined : !/^R[AZT]$/.test(next.text);
  return isBehind || !cursor.isKind("number", 2);
}

/** `ON ⌀80 B.C.`, `PCD 80`, `auf Lochkreis 80 ±0,1`; false for the word alone. */
export function skipCircle(cursor: Cursor, written: Written): boolean {
  const isRead = cursor.attempt(() => {
    let isCircle = false;
    const skip = () => {
      const known = cursor.is("circle") || cursor.is("diameter");
      if (known) isCircle = true;
      const passed = known || cursor.is("on") || /^(?:A|AN|OF|LE|UN|IL|DEM)$/.test(cursor.peek()?.text ?? "");
      if (passed) cursor.take();
      return passed;
    };
    while (skip());
    if (!cursor.isKind("number")) return undefined;
    cursor.quantity();
    skipTolerance(cursor);
    while (skip());
    return isCircle || undefined;
  });
  if (isRead) written.behind = "a bolt circle";
  return isRead === true;
}

function skipTolerance(cursor: Cursor): void {
  if (cursor.isKind("sign") || cursor.isKind("plusminus")) readTolerance(cursor);
}

/** `80 PCD`, `3.000 B.C.` */
export const isCircleAhead = (cursor: Cursor): boolean =>
  cursor.ahead(() => {
    cursor.quantity();
    return cursor.is("circle");
  });

/** `1 x 45°`, `1x45°` */
export const isChamferAhead = (cursor: Cursor): boolean =>
  (isTimesNumber(cursor, 1) && cursor.isText("°", 2)) ||
  (cursor.is("times", 1) && cursor.isKind("number", 2) && cursor.isText("°", 3));

const isTimesNumber = (cursor: Cursor, ahead: number) =>
  cursor.isKind("class", ahead) && /^x/i.test(cursor.peek(ahead)!.text);

/** A size and an angle, in either order, or the size alone; a count or depth behind it is the hole's. */
export function skipChamfer(cursor: Cursor, written: Written): void {
  written.behind = "a chamfer";
  let hasSize = false;
  let hasAngle = false;
  while (!(hasSize && hasAngle && !cursor.is("chamfer"))) {
    const isNumber = cursor.isKind("number") || isTimesNumber(cursor, 0);
    if (isNumber && hasSize !== hasAngle && isOfHole(cursor)) return;
    if (isDepthBehindTimes(cursor)) return;
    if (isNumber && cursor.isText("°", 1)) hasAngle = true;
    else if (isNumber) hasSize = true;
    else if (
      !(
        cursor.is("chamfer") ||
        cursor.is("times") ||
        cursor.is("diameter") ||
        cursor.isText("°") ||
        (cursor.is("unit") && cursor.isKind("number", -1))
      )
    )
      return;
    cursor.take();
  }
  if (cursor.isText("°")) cursor.take();
}

const isDepthBehindTimes = (cursor: Cursor) =>
  cursor.is("times") &&
  cursor.ahead(() => {
    cursor.take();
    return cursor.isKind("number") && isDepthAhead(cursor);
  });

const isOfHole = (cursor: Cursor) =>
  cursor.isKind("number") &&
  (isDepthAhead(cursor) || cursor.ahead(() => readCount(cursor, nothingWritten())));

/** `FOR 5/16 DOWEL`, `SEE NOTE 3`: to the comma, semicolon, bracket or end of the line. */
export function readPhrase(cursor: Cursor, written: Written): void {
  const { start } = cursor.take();
  let { end } = cursor.peek(-1)!;
  for (let token = cursor.peek(); token && !isPhraseEnd(cursor); token = cursor.peek()) {
    // `FOR 1:50 PIN`
    const isRatio = token.text === "1" && cursor.isText(":", 1) && cursor.isKind("number", 2);
    if (token.role === "taper" || isRatio) refuseTaper(cursor);
    ({ end } = cursor.take());
  }
  keepNote(written, cursor, start, end);
}

function isPhraseEnd(cursor: Cursor): boolean {
  const { text, startsLine, role } = cursor.peek()!;
  return startsLine || text === "," || text === ";" || text === ")" || text === "]" || role === "stop-sign";
}

/** `AFTER PLATING`, `nach dem Verzinken`, `WITH PLATING`: the words up to the coat. Other words behind AFTER may be one. */
export function readAfter(cursor: Cursor, written: Written, { role, text }: Token): void {
  if (readCoat(cursor, written)) {
    written.coated = true;
    return;
  }
  const words = wordsBehind(cursor);
  // `H. T.` is one word.
  if (role === "after" && words.length > 0 && ![...words, words.join("")].some(isUncoated))
    written.coated ||= "perhaps";
  if (/^NACH/.test(text) && words.length > 0) readPhrase(cursor, written);
  else keepWord(cursor, written);
}

function wordsBehind(cursor: Cursor): string[] {
  const words: string[] = [];
  while (words.length < 4 && cursor.isKind("word", words.length + 1))
    words.push(cursor.peek(words.length + 1)!.text);
  return words;
}

/** `BEFORE PLATING`: the size is that of the reamed hole. */
export function readBefore(cursor: Cursor, written: Written): void {
  if (!readCoat(cursor, written)) keepWord(cursor, written);
}

/** The words up to a coat, as a note; false where none follows. */
function readCoat(cursor: Cursor, written: Written): boolean {
  const isCoat = (ahead: number) => cursor.is("coat", ahead) || cursor.is("coated", ahead);
  const coat = [1, 2, 3, 4].find((ahead) => isCoat(ahead) || !cursor.isKind("word", ahead));
  if (coat === undefined || !isCoat(coat)) return false;
  const { start } = cursor.peek()!;
  cursor.at += coat + 1;
  keepNote(written, cursor, start, cursor.peek(-1)!.end);
  return true;
}

function keepWord(cursor: Cursor, written: Written): void {
  const { start, end } = cursor.take();
  keepNote(written, cursor, start, end);
}

export function refuseTaper(cursor: Cursor): never {
  return cursor.refuse("has a taper or cone. A callout here is a straight round hole or shaft.");
}

/** A word of no known meaning belongs to a note once the size has its tolerance. */
export function refuseUnknown(cursor: Cursor): never {
  const { kind, text, start, end } = cursor.peek()!;
  if (kind === "other") refuseCharacter(text, cursor.callout, cursor.name);
  return cursor.refuse(
    `can't be read at "${cursor.plain.slice(start, end)}". Write the size with its tolerance first, like 12 H7, then the words.`,
  );
}

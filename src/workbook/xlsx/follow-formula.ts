// workbook: a formula whose references follow where rows, columns or the name of a sheet change, as Excel has them follow.

import { sheetReference } from "../workbook.ts";
import type { Corner } from "./addresses.ts";
import { readCorner } from "./addresses.ts";
import { type Token, tokensOf } from "./formula-tokens.ts";
import { cornerAt, isFixed, type LineShift, lineOf } from "./line-shift.ts";

/** A change of one sheet: of its lines, or of its name; without either the sheet is gone. */
export interface SheetChange {
  readonly sheet: string;
  readonly lines?: LineShift;
  readonly name?: string;
}

export interface Followed {
  readonly text: string;
  /** Whether its value may be another: a range has more or fewer cells, or a cell is gone. */
  readonly isOther: boolean;
}

/** The first line of the cells that share a formula, before and now. */
export interface Base {
  readonly before: number;
  readonly now: number;
}

/**
 * Undefined if it is not certain what becomes of it.
 * @param home the sheet in which the formula stands; undefined where it stands in none
 * @param sheets the names of all sheets, in their order before the change
 * @param base where references without a dollar sign are counted from, if many cells share the formula; null if from
 * a cell that is not known
 */
export function follow(
  formula: string,
  home: string | undefined,
  change: SheetChange,
  sheets: readonly string[],
  base?: Base | null,
): Followed | undefined {
  const tokens = tokensOf(formula);
  const reader = new Reader(tokens, home, change, sheets, base);
  return reader.read();
}

/** What is left of a reference to cells that are gone. */
const GONE = "#REF!";

const isSame = (a: string, b: string): boolean => a.toUpperCase() === b.toUpperCase();

const unquoted = (token: Token): string =>
  token.kind === "sheet" ? token.text.slice(1, -1).replaceAll("''", "'") : token.text;

/** What may stand before a reference: a sheet, several, or a sheet of another workbook. */
interface Qualifier {
  /** How many tokens it has, its "!" included. */
  readonly length: number;
  readonly first: string;
  readonly last: string;
  readonly isOutside: boolean;
}

class Reader {
  private text = "";
  private isOther = false;
  private isCertain = true;

  constructor(
    private readonly tokens: readonly Token[],
    private readonly home: string | undefined,
    private readonly change: SheetChange,
    private readonly sheets: readonly string[],
    private readonly base: Base | null | undefined,
  ) {}

  read(): Followed | undefined {
    for (let i = 0; i < this.tokens.length; ) i = this.next(i);
    return this.isCertain ? { text: this.text, isOther: this.isOther } : undefined;
  }

  private next(i: number): number {
    const { tokens } = this;
    const qualifier = this.qualifierAt(i);
    if (!qualifier) {
      const isHome = this.home !== undefined && isSame(this.home, this.change.sheet);
      return this.reference(i, isHome, "");
    }
    const { length, first, last, isOutside } = qualifier;
    const written = tokens
      .slice(i, i + length)
      .map(({ text }) => text)
      .join("");
    const places = [first, last].map((name) => this.sheets.findIndex((own) => isSame(own, name)));
    const changed = this.sheets.findIndex((own) => isSame(own, this.change.sheet));
    const isOne = isSame(first, last);
    const isMeant = !isOutside && isOne && isSame(first, this.change.sheet);
    if (!isOutside && !isOne && changed >= Math.min(...places) && changed <= Math.max(...places))
      this.isCertain = false;
    const { lines, name } = this.change;
    if (isMeant && !lines && name === undefined) {
      this.isOther = true;
      this.text += GONE;
      return this.afterReference(i + length);
    }
    const before = isMeant && name !== undefined ? `${sheetReference(name)}!` : written;
    return this.reference(i + length, isMeant, before);
  }

  private qualifierAt(i: number): Qualifier | undefined {
    const { tokens } = this;
    const { kind, text } = tokens[i];
    // `!A1` is on whatever sheet is in sight; what is not known may be a part of a name.
    if (kind === "unknown" || (text === "!" && this.change.lines)) this.isCertain = false;
    const at = (offset: number) => tokens[i + offset]?.text;
    if (kind === "bracket" && at(2) === "!") return { length: 3, first: "", last: "", isOutside: true };
    if (kind === "bracket" && at(1) === "!") return { length: 2, first: "", last: "", isOutside: true };
    if (kind !== "sheet" && kind !== "name" && kind !== "number") return undefined;
    if (at(1) === "!") {
      const name = unquoted(tokens[i]);
      const [first, last = first] = name.split(":");
      return { length: 2, first, last, isOutside: name.includes("[") };
    }
    const isSpan = kind === "name" && at(1) === ":" && tokens[i + 2]?.kind === "name" && at(3) === "!";
    // `A1:Sheet1!B2` is a reference and another.
    if (!isSpan || readCorner(tokens[i].text)) return undefined;
    return { length: 4, first: tokens[i].text, last: at(2)!, isOutside: false };
  }

  private cornerAt(i: number): Corner | undefined {
    const token = this.tokens[i];
    if (token?.kind !== "name" && token?.kind !== "number") return undefined;
    const following = this.tokens[i + 1]?.text;
    return following === "(" || following === "!" ? undefined : readCorner(token.text);
  }

  /** Goes past what stands at a place: a reference as it is now, anything else as it is. */
  private reference(i: number, isMeant: boolean, before: string): number {
    const { tokens } = this;
    if (i >= tokens.length) {
      this.text += before;
      return i;
    }
    const first = this.cornerAt(i);
    const isCell = first?.row !== undefined && first.column !== undefined;
    const second = first && tokens[i + 1]?.text === ":" ? this.cornerAt(i + 2) : undefined;
    const isRange = second !== undefined && isAlike(first!, second);
    if (!first || (!isCell && !isRange)) {
      this.text += before + tokens[i].text;
      return i + 1;
    }
    const end = isRange ? i + 3 : i + 1;
    const { lines } = this.change;
    if (!isMeant || !lines) {
      this.text +=
        before +
        tokens
          .slice(i, end)
          .map(({ text }) => text)
          .join("");
      return end;
    }
    this.besideColons(i, end, isRange, before !== "");
    const now = this.shifted(first, isRange ? second : undefined, lines, before !== "");
    this.text += now === GONE ? GONE : before + now;
    return end;
  }

  /**
   * `A1:B2:C3`, `Sheet1!A1:Sheet1!B2` and `A1 : B2` are no ranges that are read here; of `A1:INDEX(...)` it is not known
   * which cells are in it.
   */
  private besideColons(start: number, end: number, isRange: boolean, isQualified: boolean): void {
    const { tokens } = this;
    const word = (at: number, step: number) => (tokens[at]?.kind === "space" ? at + step : at);
    const colon = word(end, 1);
    const isBefore = tokens[colon]?.text === ":";
    const isBehind = !isQualified && tokens[word(start - 1, -1)]?.text === ":";
    if (isBefore || isBehind) this.isOther = true;
    if (isRange && (isBefore || isBehind)) this.isCertain = false;
    const other = word(colon + 1, 1);
    if (isBefore && (this.cornerAt(other) || tokens[other + 1]?.text === "!")) this.isCertain = false;
  }

  private afterReference(i: number): number {
    const isRange = this.cornerAt(i) && this.tokens[i + 1]?.text === ":" && this.cornerAt(i + 2);
    if (this.cornerAt(i)) return i + (isRange ? 3 : 1);
    // A name or an error of the sheet that is gone.
    return i + 1;
  }

  private shifted(first: Corner, second: Corner | undefined, lines: LineShift, isQualified: boolean): string {
    const { axis } = lines;
    const [from, to] = [lineOf(first, axis), lineOf(second ?? first, axis)];
    const asWritten = (corner: Corner) => cornerAt(corner, axis, lineOf(corner, axis)!);
    const written = [first, ...(second ? [second] : [])];
    // Whole columns where rows change: some of their cells may be gone.
    if (from === undefined || to === undefined) {
      if (lines.isWithin(0, lines.last)) this.isOther = true;
      return written.map((corner) => wholeCorner(corner)).join(":");
    }
    const [low, high] = [Math.min(from, to), Math.max(from, to)];
    if (lines.isWithin(low, high)) this.isOther = true;
    const now = lines.run(low, high);
    const isFree = written.some((corner) => !isFixed(corner, axis));
    if (this.base !== undefined && isFree) return this.fromBase(written, now, lines, isQualified);
    if (!now) {
      this.isOther = true;
      return GONE;
    }
    if (now[0] === low && now[1] === high) return written.map(asWritten).join(":");
    const ends = from <= to ? now : [now[1], now[0]];
    return written.map((corner, i) => cornerAt(corner, axis, ends[i])).join(":");
  }

  /** A reference that is counted from the first of the cells that share the formula. */
  private fromBase(
    written: readonly Corner[],
    now: readonly [number, number] | undefined,
    { axis, line }: LineShift,
    isQualified: boolean,
  ): string {
    const { base } = this;
    const isOwn = !isQualified || (this.home !== undefined && isSame(this.home, this.change.sheet));
    const places = written.map((corner) => lineOf(corner, axis)!);
    const isMoved = !now || now[0] !== Math.min(...places) || now[1] !== Math.max(...places);
    if (!base || !isOwn) {
      if (isMoved) this.isCertain = false;
      return written.map((corner, i) => cornerAt(corner, axis, places[i])).join(":");
    }
    return written
      .map((corner, i) => {
        if (isFixed(corner, axis)) {
          const fixed = line(places[i]);
          if (fixed === undefined) this.isCertain = false;
          return cornerAt(corner, axis, fixed ?? places[i]);
        }
        const moved = base.now + places[i] - base.before;
        if (places[i] !== base.before && line(places[i]) !== moved) this.isCertain = false;
        return cornerAt(corner, axis, Math.max(0, moved));
      })
      .join(":");
  }
}

const isAlike = (a: Corner, b: Corner): boolean =>
  (a.row === undefined) === (b.row === undefined) && (a.column === undefined) === (b.column === undefined);

const wholeCorner = (corner: Corner): string =>
  cornerAt(corner, corner.row === undefined ? "column" : "row", (corner.row ?? corner.column)!);

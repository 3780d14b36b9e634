// fill: the cells of a range, found by their values instead of looked through. Ranges of the same columns that overlap
// share one block, so that a range that grows from row to row is read once.

import { firstFrom } from "../../workbook/xlsx/ascending.ts";
import type { Cells } from "../formula/evaluate.ts";
import { Area, type Scalar, toNumber, Unsupported } from "../formula/values.ts";

export type Key = number | string;

/** Numbers that are alike have one key, and texts that are alike. */
export const keyOf = (value: Key): Key =>
  typeof value === "number" ? Number(value.toPrecision(15)) : value.toLowerCase();

/** Places in reading order: those of a list from one to before another, each less the offset. */
export interface Places {
  readonly list: readonly number[];
  readonly from: number;
  readonly to: number;
  readonly offset: number;
}

let blocks = 0;

/** Cells that have been read, row by row; more rows may follow. */
class Block {
  readonly id = blocks++;
  readonly cells: Scalar[] = [];
  private readonly byKey = new Map<Key, number[]>();
  /** Texts that are a number in some places of the world and not in others. */
  private readonly doubtful: number[] = [];
  private indexed = 0;
  private texts: string[] | undefined;
  private bottom: number;
  private since: number;

  constructor(
    private readonly source: Cells,
    private readonly area: Area,
  ) {
    this.since = source.mark(area.sheet);
    this.bottom = area.top - 1;
    this.grow(area.bottom);
  }

  /** Whether one of its cells has changed since it was read. */
  isChanged(): boolean {
    const { sheet, top, left, right } = this.area;
    const now = this.source.mark(sheet);
    if (now === this.since) return false;
    if (this.source.isChangedSince(new Area(sheet, top, left, this.bottom, right), this.since)) return true;
    this.since = now;
    return false;
  }

  private get width(): number {
    return this.area.right - this.area.left + 1;
  }

  /** Whether rows from here on are among its own, or follow them at once. */
  adjoins({ sheet, top, left, right }: Area): boolean {
    const own = this.area;
    const isOver = sheet === own.sheet && left === own.left && right === own.right;
    return isOver && top >= own.top && top <= this.bottom + 1;
  }

  grow(bottom: number): void {
    if (bottom <= this.bottom) return;
    const { sheet, left, right } = this.area;
    for (const line of this.source.matrix(new Area(sheet, this.bottom + 1, left, bottom, right)))
      for (const cell of line) this.cells.push(cell);
    this.bottom = bottom;
  }

  placeOf(row: number): number {
    return (row - this.area.top) * this.width;
  }

  under(key: Key, from: number, to: number): Places {
    this.index();
    if (typeof key === "number") {
      // Says that it is not known, if it is a number that is asked for.
      const doubtful = this.doubtful[firstFrom(this.doubtful, from)];
      if (doubtful !== undefined && doubtful < to) toNumber(this.cells[doubtful]!);
    }
    return within(this.byKey.get(key) ?? [], from, to);
  }

  firstOf(value: Key, from: number, to: number): number {
    this.index();
    const places = within(this.byKey.get(keyOf(value)) ?? [], from, to);
    for (let i = places.from; i < places.to; i++) {
      const place = places.list[i];
      if (typeof this.cells[place] === typeof value) return place - from;
    }
    return -1;
  }

  like(start: string, test: (value: string) => boolean, from: number, to: number): number[] {
    this.index();
    this.texts ??= [...this.byKey.keys()].filter((key) => typeof key === "string").sort();
    const found: number[] = [];
    for (let i = firstFrom(this.texts, start); i < this.texts.length; i++) {
      if (!this.texts[i].startsWith(start)) break;
      const list = this.byKey.get(this.texts[i])!;
      if (!test(this.cells[list[0]] as string)) continue;
      const { from: first, to: end } = within(list, from, to);
      for (let k = first; k < end; k++) found.push(list[k] - from);
    }
    return found.sort((a, b) => a - b);
  }

  private index(): void {
    if (this.indexed === this.cells.length) return;
    this.texts = undefined;
    for (; this.indexed < this.cells.length; this.indexed++) {
      const cell = this.cells[this.indexed];
      if (typeof cell === "number") this.add(keyOf(cell));
      else if (typeof cell === "string") {
        this.add(keyOf(cell));
        const number = this.numberIn(cell);
        if (number !== undefined) this.add(keyOf(number));
      }
    }
  }

  private add(key: Key): void {
    const found = this.byKey.get(key);
    if (found) found.push(this.indexed);
    else this.byKey.set(key, [this.indexed]);
  }

  private numberIn(text: string): number | undefined {
    try {
      const number = toNumber(text);
      return typeof number === "number" ? number : undefined;
    } catch (error) {
      if (!(error instanceof Unsupported)) throw error;
      this.doubtful.push(this.indexed);
      return undefined;
    }
  }
}

const within = (list: readonly number[], from: number, to: number): Places => ({
  list,
  from: firstFrom(list, from),
  to: firstFrom(list, to),
  offset: from,
});

/** The cells of one range; places in it count from its first cell. */
export class RangeIndex {
  /** Alike for the same cells. */
  readonly name: string;
  /** Alike for ranges of the same columns that begin at the same row. */
  readonly start: string;

  constructor(
    private readonly block: Block,
    private readonly from: number,
    readonly size: number,
  ) {
    this.start = `${block.id} ${from}`;
    this.name = `${this.start} ${size}`;
  }

  valueAt(place: number): Scalar {
    return place < this.size ? (this.block.cells[this.from + place] ?? null) : null;
  }

  /** Places of a number, or of texts that are it, or of a text. */
  under(key: Key): Places {
    return this.block.under(key, this.from, this.from + this.size);
  }

  /** The first place of a value of its own kind; -1 if there is none. */
  firstOf(value: Key): number {
    return this.block.firstOf(value, this.from, this.from + this.size);
  }

  /** Places of texts that begin so, in small letters, and pass a test. */
  like(start: string, test: (value: string) => boolean): number[] {
    return this.block.like(start, test, this.from, this.from + this.size);
  }
}

const read = new WeakMap<Cells, Map<string, Block[]>>();

/** The index of a range, of cells as they are now; a range to the end of the sheet is cut where the cells end. */
export function indexOf(area: Area, cells: Cells): RangeIndex {
  const cut = cells.cut(area);
  const key = `${cut.sheet} ${cut.left} ${cut.right}`;
  let all = read.get(cells);
  if (!all) {
    all = new Map();
    read.set(cells, all);
  }
  const known = (all.get(key) ?? []).filter((one) => !one.isChanged());
  let block = known.find((one) => one.adjoins(cut));
  if (block) block.grow(cut.bottom);
  else {
    block = new Block(cells, cut);
    known.push(block);
  }
  all.set(key, known);
  const from = block.placeOf(cut.top);
  return new RangeIndex(block, from, block.placeOf(cut.bottom + 1) - from);
}

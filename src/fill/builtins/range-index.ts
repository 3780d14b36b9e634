// fill: the cells of a range, found by their values instead of looked through.

import { CellError, type Scalar, toNumber, Unsupported } from "../formula/values.ts";

/** Numbers that are alike have one key, and texts that are alike. */
export const keyOf = (value: number | string): number | string =>
  typeof value === "number" ? Number(value.toPrecision(15)) : value.toLowerCase();

export class RangeIndex {
  private byKey: Map<number | string, number[]> | undefined;
  /** The places of all numbers, from the least. */
  private ordered: number[] | undefined;
  /** A text that is a number in some places of the world and not in others. */
  private doubtful: string | undefined;
  private readonly sums = new WeakMap<RangeIndex, Float64Array | "none">();

  /** The cells in reading order; `revision` tells whether they are still the same. */
  constructor(
    readonly cells: readonly Scalar[],
    readonly revision: number,
  ) {}

  /** Places in reading order, for a number also those of texts that are it. */
  under(key: number | string): readonly number[] {
    this.byKey ??= this.index();
    // Says that it is not known, if it is a number that is asked for.
    if (typeof key === "number" && this.doubtful !== undefined) toNumber(this.doubtful);
    return this.byKey.get(key) ?? [];
  }

  /** The numbers below or above one, as `meets` tells of each. */
  beside(side: "below" | "above", meets: (value: Scalar) => boolean): Slice {
    const ordered = this.inOrder();
    let [low, high] = [0, ordered.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (meets(this.cells[ordered[middle]]!) === (side === "below")) low = middle + 1;
      else high = middle;
    }
    return side === "below" ? new Slice(this, 0, low) : new Slice(this, low, ordered.length);
  }

  inOrder(): readonly number[] {
    const number = (at: number) => this.cells[at] as number;
    this.ordered ??= this.cells
      .flatMap((cell, at) => (typeof cell === "number" ? at : []))
      .sort((a, b) => number(a) - number(b) || a - b);
    return this.ordered;
  }

  /** Sums over the places in order, in a tree: the sums of halves, of quarters and so on. None if an error is there. */
  sumsOf(range: RangeIndex): Float64Array | undefined {
    let sums = this.sums.get(range);
    if (!sums) {
      const ordered = this.inOrder();
      const values = ordered.map((at) => range.cells[at] ?? null);
      sums = "none";
      if (!range.cells.some((cell) => cell instanceof CellError)) {
        sums = new Float64Array(2 * ordered.length);
        for (let i = 0; i < values.length; i++)
          sums[values.length + i] = typeof values[i] === "number" ? (values[i] as number) : 0;
        for (let i = values.length - 1; i > 0; i--) sums[i] = sums[2 * i] + sums[2 * i + 1];
      }
      this.sums.set(range, sums);
    }
    return sums === "none" ? undefined : sums;
  }

  private index(): Map<number | string, number[]> {
    const byKey = new Map<number | string, number[]>();
    const add = (key: number | string, at: number) => {
      const found = byKey.get(key);
      if (found) found.push(at);
      else byKey.set(key, [at]);
    };
    this.cells.forEach((cell, at) => {
      if (typeof cell === "number") add(keyOf(cell), at);
      else if (typeof cell === "string") {
        add(keyOf(cell), at);
        const number = this.numberIn(cell);
        if (number !== undefined) add(keyOf(number), at);
      }
    });
    return byKey;
  }

  private numberIn(text: string): number | undefined {
    try {
      const number = toNumber(text);
      return typeof number === "number" ? number : undefined;
    } catch (error) {
      if (!(error instanceof Unsupported)) throw error;
      this.doubtful = text;
      return undefined;
    }
  }
}

/** Numbers of a range that follow one another in size. */
export class Slice {
  constructor(
    private readonly index: RangeIndex,
    private readonly from: number,
    private readonly to: number,
  ) {}

  get length(): number {
    return this.to - this.from;
  }

  /** In reading order. */
  places(): readonly number[] {
    return this.index
      .inOrder()
      .slice(this.from, this.to)
      .sort((a, b) => a - b);
  }

  /** The sum of what stands at these places in another range; undefined if an error is in it. */
  sum(range: RangeIndex): number | undefined {
    const sums = this.index.sumsOf(range);
    if (!sums) return undefined;
    const size = sums.length / 2;
    let total = 0;
    for (let [low, high] = [this.from + size, this.to + size]; low < high; low >>= 1, high >>= 1) {
      if (low & 1) total += sums[low++];
      if (high & 1) total += sums[--high];
    }
    return total;
  }
}

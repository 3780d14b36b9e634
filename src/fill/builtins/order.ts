// fill: the cells of a range from the least to the greatest, and the sums and extremes of any that follow one another.

import { CellError, compareTexts, type Scalar } from "../formula/values.ts";
import type { Condition } from "./conditions.ts";
import type { RangeIndex } from "./range-index.ts";

export interface Fold {
  /** Of no cell. */
  readonly start: number;
  readonly of: (value: number) => number;
  readonly join: (a: number, b: number) => number;
}

export const folds = {
  sum: { start: 0, of: (value) => value, join: (a, b) => a + b },
  count: { start: 0, of: () => 1, join: (a, b) => a + b },
  minimum: { start: Number.POSITIVE_INFINITY, of: (value) => value, join: Math.min },
  maximum: { start: Number.NEGATIVE_INFINITY, of: (value) => value, join: Math.max },
} satisfies Record<string, Fold>;
export type Kind = keyof typeof folds;

/** Places from the least to the greatest of what stands there. */
export class Order {
  readonly places: readonly number[];
  private readonly trees = new Map<string, Tree>();

  constructor(
    places: readonly number[],
    readonly index: RangeIndex,
    of: "number" | "string",
  ) {
    const own: number[] = [];
    for (let i = 0; i < places.length; i++) if (typeof index.valueAt(places[i]) === of) own.push(places[i]);
    const rises =
      of === "number"
        ? (a: number, b: number) => (index.valueAt(a) as number) - (index.valueAt(b) as number)
        : (a: number, b: number) => compareTexts(index.valueAt(a) as string, index.valueAt(b) as string);
    this.places = own.sort((a, b) => rises(a, b) || a - b);
  }

  tree(range: RangeIndex, kind: Kind | "error"): Tree {
    const key = `${kind} ${range.name}`;
    let tree = this.trees.get(key);
    if (!tree) {
      const fold: Fold = kind === "error" ? folds.minimum : folds[kind];
      const leaf = (value: Scalar, place: number) => {
        if (kind === "error") return value instanceof CellError ? place : fold.start;
        return typeof value === "number" ? fold.of(value) : fold.start;
      };
      tree = new Tree(
        this.places.map((place) => leaf(range.valueAt(place), place)),
        fold,
      );
      this.trees.set(key, tree);
    }
    return tree;
  }

  /** The first of those that a condition by size leaves, and the one behind the last. */
  bounds({ meets, side }: Condition): readonly [from: number, to: number] {
    let [low, high] = [0, this.places.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (meets(this.index.valueAt(this.places[middle])) === side!.isBelow) low = middle + 1;
      else high = middle;
    }
    return side!.isBelow ? [0, low] : [low, this.places.length];
  }
}

/** Values joined in halves, in quarters and so on. */
class Tree {
  private readonly nodes: Float64Array;

  constructor(
    values: readonly number[],
    private readonly fold: Fold,
  ) {
    const size = values.length;
    this.nodes = new Float64Array(2 * size);
    this.nodes.set(values, size);
    for (let i = size - 1; i > 0; i--) this.nodes[i] = fold.join(this.nodes[2 * i], this.nodes[2 * i + 1]);
  }

  between(from: number, to: number): number {
    const { nodes, fold } = this;
    const size = nodes.length / 2;
    let result = fold.start;
    for (let [low, high] = [from + size, to + size]; low < high; low >>= 1, high >>= 1) {
      if (low & 1) result = fold.join(result, nodes[low++]);
      if (high & 1) result = fold.join(result, nodes[--high]);
    }
    return result;
  }
}

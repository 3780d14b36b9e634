// fill: the places in ranges where conditions hold, and the sums, counts and extremes of what stands there. What was found
// once is kept and goes on where ranges grow from row to row, and what conditions by size leave is found in an order, so that
// a column of formulas takes time with its length and not with the square of it.

import { firstFrom } from "../../workbook/xlsx/ascending.ts";
import { CellError } from "../formula/values.ts";
import type { Condition } from "./conditions.ts";
import { type Fold, folds, type Kind, Order } from "./order.ts";
import type { Places, RangeIndex } from "./range-index.ts";

export interface Asked {
  readonly index: RangeIndex;
  readonly condition: Condition;
}

/** Of the numbers at the places that were found; an error there is thrown. */
export interface Found {
  readonly count: number;
  fold(range: RangeIndex, kind: Kind): number;
}

/** So few are added one by one, in the order in which they stand. */
const FEW = 64;

/** The first places that a selection has, in reading order. */
class Listed implements Found {
  private readonly orders = new Map<string, Order>();
  private readonly asked = new Set<string>();
  private own: readonly number[] | undefined;

  constructor(
    private readonly selection: Selection,
    readonly count: number,
  ) {}

  get places(): readonly number[] {
    this.own ??= this.selection.places.slice(0, this.count);
    return this.own;
  }

  fold(range: RangeIndex, kind: Kind): number {
    return this.selection.fold(range, kind, this.count);
  }

  /** Those where more conditions hold. */
  meeting(conditions: readonly Asked[]): Listed {
    const left = this.places.filter((place) => meetsAll(conditions, place));
    return listOf(left);
  }

  /** Sorted by what stands there in a range; not yet the first time, for that may be the only one. */
  order(index: RangeIndex, of: "number" | "string"): Order | undefined {
    const key = `${of} ${index.name}`;
    let order = this.orders.get(key);
    if (!order && this.asked.has(key)) {
      order = new Order(this.places, index, of);
      this.orders.set(key, order);
    }
    this.asked.add(key);
    return order;
  }
}

const listOf = (places: number[]): Listed => new Listed(new Selection(places), places.length);

function meetsAll(conditions: readonly Asked[], place: number): boolean {
  for (let i = 0; i < conditions.length; i++)
    if (!conditions[i].condition.meets(conditions[i].index.valueAt(place))) return false;
  return true;
}

/** Places that follow one another in an order. */
class Span implements Found {
  constructor(
    private readonly order: Order,
    private readonly from: number,
    private readonly to: number,
  ) {}

  get count(): number {
    return Math.max(0, this.to - this.from);
  }

  list(): Listed {
    return listOf(this.order.places.slice(this.from, this.to).sort((a, b) => a - b));
  }

  fold(range: RangeIndex, kind: Kind): number {
    if (this.count <= FEW) return this.list().fold(range, kind);
    const error = this.order.tree(range, "error").between(this.from, this.to);
    if (error !== Number.POSITIVE_INFINITY) throw range.valueAt(error);
    return this.order.tree(range, kind).between(this.from, this.to);
  }
}

/** The most places that are kept for conditions to come. */
const MOST_KEPT = 4_000_000;

/** Where conditions held, for formulas that ask the same, of the same ranges or of longer ones. */
export class Selections {
  private readonly known = new Map<string, Selection>();
  /** How long the ranges of conditions by size were when they were last asked for. */
  private readonly lengths = new Map<string, number>();
  private kept = 0;

  /** The places where all conditions hold. */
  where(asked: readonly Asked[]): Found {
    const size = Math.min(...asked.map(({ index }) => index.size));
    const [{ index: one, condition: only }] = asked;
    if (asked.length === 1 && only.key !== undefined && !only.isOther)
      return {
        count: length(one.under(only.key)),
        fold: (range, kind) => this.listed(asked, size).fold(range, kind),
      };
    const sides = asked.filter(({ condition }) => condition.side);
    if (sides.length > 0 && this.grows(asked, size)) return this.listed(asked, size);
    const listed = this.listed(
      asked.filter(({ condition }) => !condition.side),
      size,
    );
    if (sides.length === 0) return listed;
    const [{ index, condition }] = sides;
    const isOne = (one: Asked) =>
      one.index.name === index.name && one.condition.side!.of === condition.side!.of;
    const order = listed.count > FEW ? listed.order(index, condition.side!.of) : undefined;
    if (!order) return listed.meeting(sides);
    let [from, to] = order.bounds(condition);
    for (const side of sides.filter(isOne)) {
      const [first, end] = order.bounds(side.condition);
      [from, to] = [Math.max(from, first), Math.min(to, end)];
    }
    const span = new Span(order, from, Math.max(from, to));
    const others = sides.filter((side) => !isOne(side));
    return others.length === 0 ? span : span.list().meeting(others);
  }

  /** Whether the same was asked of ranges of another length. */
  private grows(asked: readonly Asked[], size: number): boolean {
    const key = nameOf(asked);
    const before = this.lengths.get(key);
    if (before === undefined && this.lengths.size < MOST_KEPT) this.lengths.set(key, size);
    return before !== undefined && before !== size;
  }

  private listed(asked: readonly Asked[], size: number): Listed {
    const key = nameOf(asked);
    let selection = this.known.get(key);
    if (!selection) {
      selection = new Selection();
      this.known.set(key, selection);
      this.kept++;
    }
    this.kept += selection.reach(asked, size);
    if (this.kept > MOST_KEPT) {
      this.known.clear();
      this.kept = 0;
    }
    return selection.before(size);
  }
}

const nameOf = (asked: readonly Asked[]) =>
  asked.map(({ index, condition }) => `${index.start} ${condition.name}`).join("\n");

interface Folded {
  /** Of the first place, of the first two and so on. */
  readonly results: number[];
  /** How many come before the first error. */
  error: number;
}

/** Places where conditions hold in ranges that begin at the same cells, found as far as a range has reached. */
class Selection {
  private reached = 0;
  private readonly lists = new Map<number, Listed>();
  private readonly folded = new Map<string, Folded>();

  constructor(readonly places: number[] = []) {}

  /** Looks on to the end of the ranges, among the fewest places that an index leaves. Returns how many are new. */
  reach(asked: readonly Asked[], size: number): number {
    const { reached, places } = this;
    if (size <= reached) return 0;
    const found = asked.flatMap((one) => {
      const own = placesOf(one, reached);
      return own ? { one, own: from(own, reached) } : [];
    });
    const isEqual = found.filter(({ one }) => !one.condition.isOther);
    const [finder] = isEqual.length > 0 ? isEqual.sort((a, b) => length(a.own) - length(b.own)) : found;
    const others = asked.filter((one) => one !== finder?.one);
    // Kept only when all were asked: a condition throws where a cell is in doubt.
    const more: number[] = [];
    const add = (place: number) => {
      if (meetsAll(others, place)) more.push(place);
    };
    let next = reached;
    if (finder) {
      const { list, from: first, to, offset } = finder.own;
      for (let i = first; i < to; i++) {
        const place = list[i] - offset;
        if (place >= size) break;
        if (finder.one.condition.isOther) for (; next < place; next++) add(next);
        else add(place);
        next = place + 1;
      }
    }
    if (!finder || finder.one.condition.isOther) for (; next < size; next++) add(next);
    this.reached = size;
    for (const place of more) places.push(place);
    return more.length;
  }

  /** Those in ranges of this size. */
  before(size: number): Listed {
    const count = firstFrom(this.places, size);
    let list = this.lists.get(count);
    if (!list) {
      list = new Listed(this, count);
      this.lists.set(count, list);
    }
    return list;
  }

  /** Added from the first on, as a sum is. */
  fold(range: RangeIndex, kind: Kind, count: number): number {
    const { start, of, join }: Fold = folds[kind];
    if (count === 0) return start;
    // A range that ends before the places do may be longer the next time.
    const isWhole = this.places[count - 1] < range.size;
    const key = `${kind} ${isWhole ? range.start : range.name}`;
    let folded = this.folded.get(key);
    if (!folded) {
      folded = { results: [], error: Number.POSITIVE_INFINITY };
      this.folded.set(key, folded);
    }
    const { results } = folded;
    for (let i = results.length; i < count; i++) {
      const value = range.valueAt(this.places[i]);
      const before = i === 0 ? start : results[i - 1];
      results.push(typeof value === "number" ? join(before, of(value)) : before);
      if (value instanceof CellError) folded.error = Math.min(folded.error, i);
    }
    if (folded.error < count) throw range.valueAt(this.places[folded.error]);
    return results[count - 1];
  }
}

function placesOf({ index, condition: { key, like } }: Asked, reached: number): Places | undefined {
  if (key !== undefined) return index.under(key);
  // Texts like a pattern are gone through once.
  if (!like || reached > 0) return undefined;
  const list = index.like(like.start, like.test);
  return { list, from: 0, to: list.length, offset: 0 };
}

const from = (places: Places, first: number): Places => ({
  ...places,
  from: Math.max(places.from, firstFrom(places.list, first + places.offset)),
});

const length = ({ from, to }: Places): number => to - from;

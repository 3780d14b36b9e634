// fill: the places in ranges where conditions hold, and the sums, counts and extremes of what stands there. What was found
// once is kept, and what conditions by size leave is found in an order, so that a column of formulas takes time with its
// length and not with the square of it.

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

/** Places in reading order. */
class Listed implements Found {
  private readonly folded = new Map<string, number>();
  private readonly orders = new Map<string, Order>();
  private readonly asked = new Set<string>();

  constructor(readonly places: readonly number[]) {}

  get count(): number {
    return this.places.length;
  }

  fold(range: RangeIndex, kind: Kind): number {
    const key = `${kind} ${range.name}`;
    const known = this.folded.get(key);
    if (known !== undefined) return known;
    const { start, of, join }: Fold = folds[kind];
    let result = start;
    for (let i = 0; i < this.places.length; i++) {
      const value = range.at(this.places[i]);
      if (typeof value === "number") result = join(result, of(value));
      else if (value instanceof CellError) throw value;
    }
    this.folded.set(key, result);
    return result;
  }

  /** Those where more conditions hold. */
  meeting(conditions: readonly Asked[]): Listed {
    const left: number[] = [];
    for (let i = 0; i < this.places.length; i++) {
      const place = this.places[i];
      if (conditions.every(({ index, condition }) => condition.meets(index.at(place)))) left.push(place);
    }
    return new Listed(left);
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
    return new Listed(this.order.places.slice(this.from, this.to).sort((a, b) => a - b));
  }

  fold(range: RangeIndex, kind: Kind): number {
    if (this.count <= FEW) return this.list().fold(range, kind);
    const error = this.order.tree(range, "error").between(this.from, this.to);
    if (error !== Number.POSITIVE_INFINITY) throw range.at(error);
    return this.order.tree(range, kind).between(this.from, this.to);
  }
}

/** The most places that are kept for conditions to come. */
const MOST_KEPT = 4_000_000;

/** Where conditions held, for formulas that ask the same. */
export class Selections {
  private readonly known = new Map<string, Listed>();
  private kept = 0;

  /** The places where all conditions hold. */
  where(asked: readonly Asked[]): Found {
    const size = Math.min(...asked.map(({ index }) => index.size));
    const sides = asked.filter(({ condition }) => condition.side);
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

  /** The places where conditions hold that are no conditions by size. */
  private listed(asked: readonly Asked[], size: number): Listed {
    const key = `${size} ${asked.map(({ index, condition }) => `${index.name} ${condition.name}`).join("\n")}`;
    let listed = this.known.get(key);
    if (!listed) {
      listed = select(asked, size);
      this.kept += listed.count + 1;
      if (this.kept > MOST_KEPT) {
        this.known.clear();
        this.kept = listed.count;
      }
      this.known.set(key, listed);
    }
    return listed;
  }
}

/** Looks through the fewest places that an index leaves. */
function select(asked: readonly Asked[], size: number): Listed {
  const found = asked.flatMap((one) => {
    const places = placesOf(one);
    return places ? { one, places } : [];
  });
  const isEqual = found.filter(({ one }) => !one.condition.isOther);
  const [finder] = isEqual.length > 0 ? isEqual.sort((a, b) => length(a.places) - length(b.places)) : found;
  const listed = new Listed(finder ? listOf(finder.places, finder.one.condition.isOther, size) : upTo(size));
  const others = asked.filter((one) => one !== finder?.one);
  return others.length === 0 ? listed : listed.meeting(others);
}

function placesOf({ index, condition: { key, like } }: Asked): Places | undefined {
  if (key !== undefined) return index.under(key);
  if (!like) return undefined;
  const list = index.like(like.start, like.test);
  return { list, from: 0, to: list.length, offset: 0 };
}

const length = ({ from, to }: Places): number => to - from;

/** The places as a list, or all others. */
function listOf({ list, from, to, offset }: Places, isOther: boolean | undefined, size: number): number[] {
  const places: number[] = [];
  let next = 0;
  for (let i = from; i < to; i++) {
    const place = list[i] - offset;
    if (place >= size) break;
    if (isOther) for (; next < place; next++) places.push(next);
    else places.push(place);
    next = place + 1;
  }
  if (isOther) for (; next < size; next++) places.push(next);
  return places;
}

const upTo = (size: number): number[] => Array.from({ length: size }, (_, place) => place);

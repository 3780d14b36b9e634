// calc: the numbers of a callout: decimals with point or comma, fractions and mixed numbers, each with its unit.

import type { Role } from "../../data/drawing-words.ts";
import { LONGEST, toTicks, type Units } from "../lengths.ts";
import { isCommaOpen, unitOf } from "../number-text.ts";
import { shown, wrong } from "../problem.ts";
import type { Ticks } from "../ticks.ts";
import type { Token } from "./tokens.ts";

export interface Quantity {
  readonly value: number;
  /** The unit written with it, if any; µm stands with deviations alone. */
  readonly units: Units | "µm" | undefined;
  /** As written. */
  readonly text: string;
  /** How many decimals are written; 0 for a fraction. */
  readonly decimals: number;
  readonly isFraction: boolean;
}

export function ticksOf(quantity: Quantity, units: Units): Ticks {
  return quantity.units === "µm"
    ? toTicks(quantity.value / 1000, "mm")
    : toTicks(quantity.value, quantity.units ?? units);
}

/** The tokens of a callout and the place where reading stands. */
export class Cursor {
  at = 0;
  private readonly decimalComma: boolean;
  /** The unit written somewhere, else the sheet's. */
  readonly units: Units;

  constructor(
    readonly tokens: Token[],
    /** The text that the tokens stand in. */
    readonly plain: string,
    readonly callout: string,
    readonly name: string,
    readonly sheetUnits: Units,
  ) {
    this.decimalComma = tokens.some(
      ({ kind, text }) => kind === "number" && text.includes(",") && !isCommaOpen(text),
    );
    const written = tokens.find((token, at) => this.isUnit(at) && token.role === "unit");
    this.units = (written && unitOf(written.text)) ?? sheetUnits;
  }

  /** Another reading of some of the tokens. */
  within(tokens: Token[], sheetUnits: Units): Cursor {
    return new Cursor(tokens, this.plain, this.callout, this.name, sheetUnits);
  }

  /** The token at reading, or `ahead` of it. */
  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  is(role: Role, ahead = 0): boolean {
    return this.peek(ahead)?.role === role;
  }

  isText(text: string, ahead = 0): boolean {
    return this.peek(ahead)?.text === text;
  }

  isKind(kind: Token["kind"], ahead = 0): boolean {
    return this.peek(ahead)?.kind === kind;
  }

  take(): Token {
    return this.tokens[this.at++];
  }

  /** Steps over the token at reading if it does this. */
  skip(role: Role): boolean {
    const is = this.is(role);
    if (is) this.at++;
    return is;
  }

  /** What `look` finds from here on, reading left where it stands. */
  ahead<T>(look: () => T): T {
    const start = this.at;
    try {
      return look();
    } finally {
      this.at = start;
    }
  }

  /** What `attempt` reads; nothing is read where it gives undefined. */
  attempt<T>(attempt: () => T | undefined): T | undefined {
    const start = this.at;
    const read = attempt();
    if (read === undefined) this.at = start;
    return read;
  }

  /** Parts the token at reading into an x and a number. */
  splitTimes(): void {
    const token = this.peek()!;
    const middle = token.start + 1;
    this.tokens.splice(
      this.at,
      1,
      { ...token, kind: "word", text: "X", role: "times", end: middle },
      { ...token, kind: "number", text: token.text.slice(1), role: undefined, joined: true, start: middle },
    );
  }

  refuse(why: string): never {
    return wrong(`${this.name} ${shown(this.callout)} ${why}`);
  }

  /** A unit, and not the word "in" of `IN BOTH PARTS` or the quotation mark of `"A"`. */
  private isUnit(at: number): boolean {
    const token = this.tokens[at];
    if (token?.role === "micron") return true;
    if (token?.role !== "unit") return false;
    if (token.text === "MM" || token.text.startsWith("INCH")) return true;
    const next = this.tokens[at + 1];
    if (token.text === "IN") return !next || !isPlainWord(next);
    return this.tokens[at - 1]?.kind === "number" && (next?.kind !== "word" || next.role !== undefined);
  }

  /** The unit at reading, taken. */
  unit(): Units | "µm" | undefined {
    if (!this.isUnit(this.at)) return undefined;
    const { role, text } = this.take();
    return role === "micron" ? "µm" : unitOf(text);
  }

  /** A number with its unit. In a deviation no space parts a whole number from a fraction. */
  quantity(inDeviation = false): Quantity {
    const first = this.at;
    const share = this.mixed(inDeviation) ?? this.fraction(inDeviation);
    const value = share ?? this.decimal(inDeviation);
    const written = this.plain.slice(this.tokens[first].start, this.tokens[this.at - 1].end);
    const text = inDeviation ? withoutStop(written) : written;
    const mark = text.search(/[.,]/);
    return {
      value,
      units: inDeviation || !this.is("micron") ? this.unit() : undefined,
      text,
      decimals: mark < 0 ? 0 : text.length - mark - 1,
      isFraction: share !== undefined,
    };
  }

  private wholeAt(ahead: number): number | undefined {
    const token = this.peek(ahead);
    return token?.kind === "number" && /^\d+$/.test(token.text) ? Number(token.text) : undefined;
  }

  private fractionAt(ahead: number): number | undefined {
    const over = this.wholeAt(ahead);
    const under = this.wholeAt(ahead + 2);
    const isJoined =
      this.isText("/", ahead + 1) && this.peek(ahead + 1)!.joined && this.peek(ahead + 2)?.joined;
    return over !== undefined && isJoined && under ? over / under : undefined;
  }

  private mixed(inDeviation: boolean): number | undefined {
    const whole = this.wholeAt(0);
    if (inDeviation || whole === undefined) return undefined;
    const hyphen = this.isText("-", 1) ? 1 : 0;
    const share = this.fractionAt(1 + hyphen);
    if (share === undefined || share >= 1) return undefined;
    this.at += 4 + hyphen;
    return whole + share;
  }

  private fraction(inDeviation: boolean): number | undefined {
    const share = this.fractionAt(0);
    if (share === undefined || (inDeviation && share >= 1)) return undefined;
    this.at += 3;
    return share;
  }

  private decimal(inDeviation: boolean): number {
    const { text: taken, joined } = this.take();
    const written = inDeviation ? withoutStop(taken) : taken;
    const text =
      joined && /^[.,]\d+$/.test(written) && this.units === "mm" ? this.behindWord(written) : written;
    if (/[.,]\d*[.,]/.test(text))
      this.refuse(`has ${shown(text)}, a number with two marks. Write it with one decimal point.`);
    if (isCommaOpen(text) && !this.decimalComma) {
      const joined = text.replace(",", "");
      if (Number(joined) <= LONGEST[this.units])
        this.refuse(
          `has ${text}, which could be ${text.replace(",", ".")} or ${joined}. Write the one you mean, without a comma.`,
        );
    }
    return Number(text.replace(",", "."));
  }

  /** `prof.16`: in mm the point is the word's, where words of its kind are shortened with one. */
  private behindWord(text: string): string {
    const before = this.peek(-2);
    if (before?.kind !== "word") return text;
    if (before.text === "PROF") return text.slice(1);
    return this.refuse(`has ${text} written to a word. Put a space, to tell ${text} from ${text.slice(1)}.`);
  }
}

/** A point behind a deviation ends a sentence. */
const withoutStop = (text: string) => text.replace(/([.,]\d+)\.$/, "$1");

/** A word of no known meaning, or a number that begins a count: what may follow the word "in". */
const isPlainWord = (token: Token) =>
  (token.kind === "word" && (token.role === undefined || token.role === "known")) || token.kind === "number";

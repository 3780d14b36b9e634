// calc: the numbers of a callout: decimals with point or comma, fractions and mixed numbers, each with its unit.

import { LONGEST, toTicks, type Units } from "../lengths.ts";
import { isCommaOpen, unitOf } from "../number-text.ts";
import { shown, wrong } from "../problem.ts";
import { UNIT_WORDS } from "./drawing-words.ts";
import type { Token } from "./tokens.ts";

export interface Quantity {
  readonly value: number;
  /** The unit written with it, if any. */
  readonly units: Units | undefined;
  /** As written. */
  readonly text: string;
  /** How many decimals are written; 0 for a fraction. */
  readonly decimals: number;
  /** Written to a word without a space (`DIA.12`). */
  readonly joinedToWord: boolean;
}

export function ticksOf(quantity: Quantity, units: Units): number {
  return toTicks(quantity.value, quantity.units ?? units);
}

/** The tokens of a callout and the place where reading stands. */
export class Cursor {
  at = 0;
  private readonly decimalComma: boolean;
  private readonly units: Units;

  constructor(
    readonly tokens: Token[],
    readonly callout: string,
    readonly name: string,
    units: Units,
  ) {
    this.decimalComma = tokens.some(
      ({ kind, text }) => kind === "number" && text.includes(",") && !isCommaOpen(text),
    );
    const written = tokens.find((token) => UNIT_WORDS.has(token.text));
    this.units = (written && unitOf(written.text)) ?? units;
  }

  /** The token at reading, or `ahead` of it. */
  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  is(set: ReadonlySet<string>, ahead = 0): boolean {
    const token = this.peek(ahead);
    return token !== undefined && set.has(token.text);
  }

  isKind(kind: Token["kind"], ahead = 0): boolean {
    return this.peek(ahead)?.kind === kind;
  }

  take(): Token {
    return this.tokens[this.at++];
  }

  /** Steps over the token at reading if it is one of these. */
  skip(set: ReadonlySet<string>): boolean {
    const is = this.is(set);
    if (is) this.at++;
    return is;
  }

  /** Parts the token at reading into a word of `length` letters and a number. */
  splitToken(length: number): void {
    const { text, joined } = this.peek()!;
    this.tokens.splice(
      this.at,
      1,
      { kind: "word", text: text.slice(0, length).toUpperCase(), joined },
      { kind: "number", text: text.slice(length), joined: true },
    );
  }

  refuse(why: string): never {
    return wrong(`${this.name} ${shown(this.callout)} ${why}`);
  }

  /** A number with its unit. In a deviation no space parts a whole number from a fraction. */
  quantity(inDeviation = false): Quantity {
    const first = this.at;
    const joinedToWord = this.peek()!.joined && this.peek(-1)?.kind === "word";
    const value = this.mixed(inDeviation) ?? this.fraction(inDeviation) ?? this.decimal();
    const text = this.tokens
      .slice(first, this.at)
      .map((token) => token.text)
      .join("");
    const units = this.is(UNIT_WORDS) ? unitOf(this.take().text) : undefined;
    const mark = text.search(/[.,]/);
    return { value, units, text, decimals: mark < 0 ? 0 : text.length - mark - 1, joinedToWord };
  }

  private wholeAt(ahead: number): number | undefined {
    const token = this.peek(ahead);
    return token?.kind === "number" && /^\d+$/.test(token.text) ? Number(token.text) : undefined;
  }

  private fractionAt(ahead: number): number | undefined {
    const over = this.wholeAt(ahead);
    const under = this.wholeAt(ahead + 2);
    return over !== undefined && this.peek(ahead + 1)?.text === "/" && under ? over / under : undefined;
  }

  private mixed(inDeviation: boolean): number | undefined {
    const whole = this.wholeAt(0);
    if (inDeviation || whole === undefined) return undefined;
    const hyphen = this.peek(1)?.text === "-" ? 1 : 0;
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

  private decimal(): number {
    const { text } = this.take();
    if (/[.,]\d*[.,]\d/.test(text))
      this.refuse(`has ${shown(text)}, a number with two marks: write it with a point alone`);
    if (!text.includes(",")) return Number(text);
    if (isCommaOpen(text) && !this.decimalComma) {
      const joined = text.replace(",", "");
      if (Number(joined) <= LONGEST[this.units])
        this.refuse(
          `has ${text}, which could be ${text.replace(",", ".")} or ${joined}: write it without the comma`,
        );
    }
    return Number(text.replace(",", "."));
  }
}

// tests: callouts of a known meaning, in spellings drawn from the written grammar.

import { calloutGrammar, calloutWords } from "../../src/build/reference/callout-grammar.ts";

/** What a callout says; lengths as decimals in `units`. */
export interface Meaning {
  readonly units: "mm" | "in";
  readonly size: string;
  /** One of class, deviations and limits; a class has its own of both too. */
  readonly className?: string;
  readonly deviations?: { readonly upper: string; readonly lower: string };
  readonly limits?: readonly [least: string, greatest: string];
  readonly count: number;
  readonly depth: string;
}

/** Draws a whole number under `below`. */
export type Draw = (below: number) => number;

/** Rules that a meaning cannot have: a callout has one kind of tolerance. */
const KINDS = { className: "with-class", deviations: "with-deviations", limits: "with-limits" } as const;

interface Told {
  count: boolean;
  depth: boolean;
  through: boolean;
  marks: string[];
  notes: string[];
}

/** A spelling of the meaning, and what of it is told. */
export function spell(meaning: Meaning, draw: Draw): { text: string; told: Told } {
  const told: Told = { count: false, depth: false, through: false, marks: [], notes: [] };
  const kind = meaning.className ? KINDS.className : meaning.deviations ? KINDS.deviations : KINDS.limits;

  const pick = <T>(from: readonly T[]): T => from[draw(from.length)]!;

  function expand(rule: string): string {
    const ways = rule === "toleranced" ? [kind] : calloutGrammar[rule];
    return pick(ways).split(" ").map(part).join("");
  }

  function part(symbol: string): string {
    if (symbol.endsWith("?")) return draw(2) === 0 ? "" : part(symbol.slice(0, -1));
    if (symbol.endsWith("*"))
      return Array.from({ length: draw(3) }, () => part(symbol.slice(0, -1))).join("");
    if (symbol === "_") return pick(["", " ", ""]);
    if (symbol === "-") return pick([" ", " ", "  ", "\u00a0", "\n"]);
    if (symbol.startsWith('"')) return symbol.slice(1, -1);
    if (symbol in calloutGrammar) return once(symbol);
    return meant(symbol);
  }

  /** A count, a depth and a way through are each said once. */
  function once(rule: string): string {
    if (rule === "count-before" || rule === "count-after") {
      if (told.count) return "";
      told.count = true;
    }
    if (rule === "depth" || rule === "through") {
      if (told[rule]) return "";
      told[rule] = true;
    }
    return expand(rule);
  }

  function decimal(number: string): string {
    // A comma is told from thousands by its digits; only such numbers are written with one.
    const safe = /^\d*\.(?:\d{1,2}|\d{4,})$|^0?\.\d+$/.test(number);
    return safe && meaning.units === "mm" && draw(4) === 0 ? number.replace(".", ",") : number;
  }

  function meant(symbol: string): string {
    switch (symbol) {
      case "SIZE":
        return decimal(meaning.size);
      case "LIMIT":
        return meaning.limits![0];
      case "OTHER-LIMIT":
        return meaning.limits![1];
      case "CLASS":
        return meaning.className!;
      case "COUNT":
        return String(meaning.count);
      case "DEPTH":
        return meaning.depth;
      case "UNIT":
        return meaning.units === "mm" ? "mm" : pick(["in", "inch", '"']);
      case "DEVIATIONS":
        return deviations();
      case "MODIFIER": {
        const mark = pick(calloutWords.MODIFIER);
        told.marks.push(mark.toUpperCase());
        return mark;
      }
      case "NOTE":
      case "PHRASE": {
        const note = pick(calloutWords[symbol]);
        told.notes.push(note);
        return note;
      }
      case "MICROMETERS":
        return meaning.units === "mm" ? micrometers() : deviations();
      default:
        return symbol in calloutWords ? pick(calloutWords[symbol]) : symbol;
    }
  }

  function deviations(): string {
    const { upper, lower } = meaning.deviations!;
    const bare = (value: string) => value.replace(/^[+-]/, "");
    if (Number(upper) === -Number(lower))
      return pick([`±${bare(upper)}`, `+/-${bare(upper)}`, `± ${bare(upper)}`, `%%p${bare(upper)}`]);
    const minus = (value: string) => (value.startsWith("-") && draw(3) === 0 ? `−${bare(value)}` : value);
    const both = [minus(upper), minus(lower)];
    if (draw(3) === 0) both.reverse();
    return both.join(pick(["/", " ", " / "]));
  }

  function micrometers(): string {
    const { upper, lower } = meaning.deviations!;
    const whole = (value: string) => (Number(value) * 1000).toFixed(1).replace(/\.0$/, "");
    const signed = (value: string) =>
      Number(value) > 0 ? `+${whole(value)}` : whole(value).replace(/^-0$/, "0");
    if (Number(upper) === -Number(lower)) return `±${whole(upper)} µm`;
    return `${signed(upper)}/${signed(lower)}${pick([" µm", "µm"])}`;
  }

  return { text: expand("callout"), told };
}

// workbook: a line of a written formula (see src/calc/evaluate.ts for its grammar) in the spreadsheet's own functions.

import { conversions } from "../../calc/evaluate.ts";
import { hasOwn } from "../../calc/own.ts";

/** Each function with its arguments as texts that may stand in brackets. Hairs as in evaluate.ts. */
const functions: Readonly<Record<string, (...args: string[]) => string>> = {
  min: (...args) => `MIN(${args.join(",")})`,
  max: (...args) => `MAX(${args.join(",")})`,
  wholedown: (value) => `INT(${value}+1E-9)`,
  wholeup: (value) => `(0-INT(1E-9-(${value})))`,
  nearesteven: (value) => `(2*INT((${value})/2+0.5))`,
  roundup: (value, step) => `((0-INT(1E-9-(${value})/(${step})))*(${step}))`,
  roundto: (value, step) => `(INT((${value})/(${step})+0.5)*(${step}))`,
  mod: (value, turn) => `((${value})-(${turn})*INT((${value})/(${turn})))`,
  sqrt: (value) => `SQRT(${value})`,
  sind: (angle) => `SIN(RADIANS(${angle}))`,
  cosd: (angle) => `COS(RADIANS(${angle}))`,
  tand: (angle) => `TAN(RADIANS(${angle}))`,
  // A spreadsheet names x first, and has no angle for 0, 0.
  atan2d: (y, x) => `IF(AND((${y})=0,(${x})=0),0,DEGREES(ATAN2(${x},${y})))`,
  ln: (value) => `LN(${value})`,
  exp: (value) => `EXP(${value})`,
  abs: (value) => `ABS(${value})`,
};

const token = /\s*(?:(\d+\.?\d*(?:e[+-]?\d+)?|\.\d+(?:e[+-]?\d+)?)|([A-Za-z_]\w*)|([-+*/^(),]))/y;

/** @param textOf what stands for a name; undefined if nothing does, and then the whole is undefined */
export function inSpreadsheet(
  expression: string,
  textOf: (name: string) => string | undefined,
): string | undefined {
  const tokens: string[] = [];
  token.lastIndex = 0;
  for (let match = token.exec(expression); match; match = token.exec(expression))
    tokens.push(match[1] ?? match[2] ?? match[3]);
  let next = 0;
  let isKnown = true;

  function joined(part: () => string, signs: string): string {
    let text = part();
    while (signs.includes(tokens[next] ?? "none")) text += tokens[next++] + part();
    return text;
  }
  const sum = (): string => joined(product, "+-");
  const product = (): string => joined(signed, "*/");
  function signed(): string {
    if (tokens[next] !== "-") return power();
    next++;
    // A spreadsheet takes -a^2 as (-a)^2.
    return `(0-${signed()})`;
  }
  function power(): string {
    const base = operand();
    if (tokens[next] !== "^") return base;
    next++;
    return `(${base}^(${signed()}))`;
  }
  function operand(): string {
    const word = tokens[next++];
    if (word === "(") {
      const inner = sum();
      next++;
      return `(${inner})`;
    }
    if (/^[\d.]/.test(word)) return word;
    if (tokens[next] !== "(") {
      const text = word === "pi" ? "PI()" : textOf(word);
      if (text === undefined) isKnown = false;
      return text ?? "";
    }
    const args: string[] = [];
    do {
      next++;
      args.push(sum());
    } while (tokens[next] === ",");
    next++;
    const factor = conversions.get(word)?.factor;
    if (factor !== undefined) return `((${args[0]})*${factor})`;
    const own = hasOwn(functions, word) ? functions[word] : undefined;
    if (!own) isKnown = false;
    return own?.(...args) ?? "";
  }

  const text = sum();
  return isKnown && next === tokens.length ? text : undefined;
}

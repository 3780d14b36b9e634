// build: formulas set as mathematics (MathML, no fonts or styles of its own) from the lines that calculations carry.

import katex from "katex";
import type { MathNode } from "mathjs";
import type { FormulaStep } from "../../calc/formula.ts";
import { parse } from "../mathjs.ts";

/** A line `symbol = expression` as MathML. */
export function mathOf({ symbol, expression }: FormulaStep): string {
  return katex.renderToString(
    `${nameInTex(symbol)} = ${parse(expression).toTex({ handler, parenthesis: "auto" })}`,
    {
      output: "mathml",
      displayMode: true,
      throwOnError: true,
    },
  );
}

const FUNCTION_NAMES: Readonly<Record<string, string>> = {
  wholedown: "\\operatorname{round\\,down}",
  wholeup: "\\operatorname{round\\,up}",
  nearesteven: "\\operatorname{nearest\\,even}",
  roundto: "\\operatorname{round}",
  sind: "\\sin",
  cosd: "\\cos",
  tand: "\\tan",
  atan2d: "\\operatorname{atan2}",
  roundup: "\\operatorname{round\\,up}",
  normal: "\\Phi",
};

function handler(node: MathNode, options: object): string | undefined {
  const any = node as any;
  if (any.isSymbolNode) return any.name === "pi" ? "\\pi" : nameInTex(any.name);
  if (any.isFunctionNode && FUNCTION_NAMES[any.fn.name]) {
    const inputs = any.args.map((input: MathNode) => input.toTex(options)).join(",\\ ");
    return `${FUNCTION_NAMES[any.fn.name]}\\left(${inputs}\\right)`;
  }
  return undefined;
}

/** `feedPerRev` as the words "feed per rev". */
function nameInTex(name: string): string {
  return `\\text{${symbolInWords(name)}}`;
}

export const symbolInWords = (name: string) => name.replace(/([a-z])([A-Z])/g, "$1 $2").toLowerCase();

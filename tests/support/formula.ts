// tests: works out a formula of an example as a sheet would, and reads what stands behind it.

import { associated } from "./custom-functions.ts";
import { type Cells, sheet } from "./sheet.ts";

const TOKEN = /\s*("(?:[^"]|"")*"|REAM\.[A-Z0-9._]+|TRUE|FALSE|#N\/A|#VALUE!|-?[\d.]+(?:e-?\d+)?|[(){},;])/gy;

/** Parts a text into quoted texts, numbers, words and marks. */
function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(text);
    if (!found) throw new Error(`can't read ${text} at ${at}`);
    tokens.push(found[1]!);
  }
  return tokens;
}

function constant(token: string): unknown {
  if (token.startsWith('"')) return token.slice(1, -1).replaceAll('""', '"');
  if (token === "TRUE" || token === "FALSE") return token === "TRUE";
  if (Number.isNaN(Number(token))) throw new Error(`${token} is no value`);
  return Number(token);
}

export interface Call {
  readonly id: string;
  readonly args: readonly unknown[];
}

/** `=REAM.RPM(15, , {1;2})` as the id and the arguments, undefined where one is left out. */
export function readFormula(formula: string): Call {
  const tokens = tokensOf(formula.replace(/^=/, ""));
  let at = 0;
  function call(): Call {
    const id = tokens[at++]!.replace("REAM.", "");
    if (!associated.has(id)) throw new Error(`no function ${id}`);
    const args: unknown[] = [];
    if (tokens[at++] !== "(") throw new Error(`no ( in ${formula}`);
    if (tokens[at] === ")") {
      at++;
      return { id, args };
    }
    for (;;) {
      args.push(tokens[at] === "," || tokens[at] === ")" ? undefined : argument());
      if (tokens[at++] === ")") return { id, args };
    }
  }
  function argument(): unknown {
    const token = tokens[at]!;
    if (token.startsWith("REAM.")) {
      const inner = call();
      return sheet(inner.id, ...inner.args);
    }
    at++;
    return token === "{" ? array() : constant(token);
  }
  function array(): Cells {
    const rows: unknown[][] = [[]];
    for (;;) {
      rows.at(-1)!.push(constant(tokens[at++]!));
      const mark = tokens[at++];
      if (mark === "}") return rows;
      if (mark === ";") rows.push([]);
    }
  }
  const read = call();
  if (at !== tokens.length) throw new Error(`${formula} has more than one call`);
  return read;
}

/** Cells as an example writes them: a row's apart by commas, rows by semicolons. */
export function readResult(result: string): string[][] {
  const rows: string[][] = [[]];
  for (const token of tokensOf(result)) {
    if (token === ";") rows.push([]);
    else if (token !== ",") rows.at(-1)!.push(token);
  }
  return rows;
}

/** Whether a cell is what an example writes, a number to the digits written. */
export function isAsWritten(cell: unknown, written: string): boolean {
  if (written.startsWith("#")) return (cell as { code?: string }).code === written;
  if (written.startsWith('"') || written === "TRUE" || written === "FALSE") return cell === constant(written);
  const decimals = written.split(".")[1]?.length ?? 0;
  return typeof cell === "number" && Math.abs(cell - Number(written)) <= 0.5 * 10 ** -decimals * (1 + 1e-9);
}

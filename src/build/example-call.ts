// build: a call as an example of a function writes it: numbers, texts, TRUE and FALSE, {arrays}, calls inside calls,
// and nothing between commas for an argument that is left out.

export type Literal = number | string | boolean;

export interface ExampleCall {
  readonly id: string;
  readonly args: readonly (Literal | Literal[][] | ExampleCall | undefined)[];
}

const TOKEN = /\s*("(?:[^"]|"")*"|REAM\.[A-Z0-9._]+|TRUE|FALSE|#N\/A|#VALUE!|-?[\d.]+(?:e-?\d+)?|[(){},;])/gy;

/** Parts a text into quoted texts, numbers, words and marks. */
export function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.trimEnd().length) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(text);
    if (!found) throw new Error(`can't read ${text} at ${at}`);
    tokens.push(found[1]);
  }
  return tokens;
}

export function literal(token: string): Literal {
  if (token.startsWith('"')) return token.slice(1, -1).replaceAll('""', '"');
  if (token === "TRUE" || token === "FALSE") return token === "TRUE";
  if (Number.isNaN(Number(token))) throw new Error(`${token} is no value`);
  return Number(token);
}

/** `=REAM.RPM(15, , {1;2})`, or a throw at anything that is more or other than one call. */
export function readCall(formula: string): ExampleCall {
  const tokens = tokensOf(formula.replace(/^=/, ""));
  let at = 0;
  const read = call();
  if (at !== tokens.length) throw new Error(`${formula} has more than one call`);
  return read;

  function call(): ExampleCall {
    const name = tokens[at++] ?? "";
    if (!name.startsWith("REAM.")) throw new Error(`${formula} calls ${name}, no function of ours`);
    if (tokens[at++] !== "(") throw new Error(`no ( in ${formula}`);
    const args: ExampleCall["args"][number][] = [];
    if (tokens[at] === ")") at++;
    else
      do args.push(tokens[at] === "," || tokens[at] === ")" ? undefined : argument());
      while (follows(",", ")"));
    return { id: name.slice("REAM.".length), args };
  }

  function argument(): Literal | Literal[][] | ExampleCall {
    if (tokens[at]?.startsWith("REAM.")) return call();
    const token = tokens[at++] ?? "";
    if (token !== "{") return literal(token);
    const rows: Literal[][] = [];
    do {
      rows.push([]);
      do rows.at(-1)!.push(literal(tokens[at++] ?? ""));
      while (tokens[at] === "," && at++ > 0);
    } while (follows(";", "}"));
    return rows;
  }

  /** Passes over the next mark: true if it goes on, false if it ends here. */
  function follows(onward: string, end: string): boolean {
    const mark = tokens[at++];
    if (mark !== onward && mark !== end)
      throw new Error(`${mark ?? "the end"} in ${formula}, where ${end} belongs`);
    return mark === onward;
  }
}

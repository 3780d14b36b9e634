// workbook: the names of add-in functions as a file holds them. A file has `_xldudf_REAM_RPM(` where a user has
// `REAM.RPM(`; which of the underscores was a dot can only be told by looking the name up.

import { type Token, tokensOf } from "./formula-tokens.ts";

export const namespace = "REAM";

const storedPrefix = "_xldudf_";
const prefixes = /^(?:_xlfn\.)?(?:_xludf\.)?(?:_xldudf_)?/i;

const keyOf = (name: string): string => name.toUpperCase().replaceAll(".", "_");

export interface StoredNames {
  /** A formula as a user writes it, from one as a file holds it in any of the known forms. */
  decode(formula: string): string;
  /** A formula as a file holds it. */
  encode(formula: string): string;
  /** The name as a user writes it, if it is one of ours in any form. */
  find(name: string): string | undefined;
}

/** For functions by their names without the namespace: `RPM`. */
export function storedNames(names: Iterable<string>): StoredNames {
  const known = new Map<string, string>();
  for (const name of names) {
    const full = `${namespace}.${name}`;
    const key = keyOf(full);
    if (known.has(key)) throw new Error(`${full} and ${known.get(key)} are stored by one name`);
    known.set(key, full);
  }
  const find = (name: string) => known.get(keyOf(name.replace(prefixes, "")));

  const replaceCalls = (formula: string, replace: (full: string) => string): string => {
    if (!mentionsNamespace(formula)) return formula;
    const tokens = tokensOf(formula);
    let result = "";
    for (let i = 0; i < tokens.length; i++) {
      const call = linkedCall(tokens, i);
      const full = call && find(tokens[call.name].text);
      result += full ? replace(full) : tokens[i].text;
      if (full) i = call.name;
    }
    return result;
  };
  return {
    find,
    decode: (formula) => replaceCalls(formula, (full) => full),
    encode: (formula) => replaceCalls(formula, (full) => storedPrefix + full.replaceAll(".", "_")),
  };
}

/** The name of any function as a user writes it, in capitals: newer ones have prefixes in a file. */
export const functionName = (name: string, names: StoredNames): string =>
  names.find(name) ?? name.replace(/^_xlfn\.(?:_xlws\.)?/i, "").toUpperCase();

/** A quick look, so that a formula without us is not parsed. */
export function mentionsNamespace(formula: string): boolean {
  return /ream[._]/i.test(formula);
}

/** The name of the function that is called from token `i` on, its workbook (`[2]!`) left aside. */
function linkedCall(tokens: readonly Token[], i: number): { readonly name: number } | undefined {
  const linked = tokens[i].kind === "bracket" && tokens[i + 1]?.text === "!";
  const name = linked ? i + 2 : i;
  if (tokens[name]?.kind !== "name") return undefined;
  const next = tokens[name + 1]?.kind === "space" ? name + 2 : name + 1;
  return tokens[next]?.text === "(" ? { name } : undefined;
}

// build: what is mutated together: a function, a member of a class, or another statement of a module.

import { readFileSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { projectFolder } from "../paths.ts";

/** Lines and columns from 0. */
export interface Range {
  readonly start: { readonly line: number; readonly column: number };
  readonly end: { readonly line: number; readonly column: number };
}

export interface Piece {
  /** From the root of the project. */
  readonly file: string;
  readonly range: Range;
}

/** The files that the patterns name, from the root of the project. */
export const filesOf = (patterns: readonly string[], without: readonly string[] = []): string[] =>
  ts.sys
    .readDirectory(projectFolder, [".ts"], without, patterns)
    .map((path) => relative(projectFolder, path).replaceAll("\\", "/"))
    .sort();

export function piecesOf(file: string): Piece[] {
  const text = readFileSync(join(projectFolder, file), "utf8");
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const placeOf = (at: number) => {
    const { line, character } = source.getLineAndCharacterOfPosition(at);
    return { line, column: character };
  };
  return source.statements
    .filter(
      (one) =>
        !ts.isImportDeclaration(one) && !ts.isInterfaceDeclaration(one) && !ts.isTypeAliasDeclaration(one),
    )
    .flatMap((one): readonly ts.Node[] => (ts.isClassDeclaration(one) ? one.members : [one]))
    .map((one) => ({ file, range: { start: placeOf(one.getStart(source)), end: placeOf(one.end) } }));
}

/** A seed as a number from 0 to under 1, far from that of the next seed: a step of the generator mulberry32. */
function fractionOf(seed: number): number {
  let mixed = (seed + 0x6d2b79f5) | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
  mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
}

/** Every nth piece from a random one on, so that each file has its share; the same for the same seed. */
export function drawn(pieces: readonly Piece[], share: number, seed: number): Piece[] {
  if (share === 1) return [...pieces];
  const random = fractionOf(seed);
  const kept: Piece[] = [];
  for (let at = random / share; at < pieces.length; at += 1 / share) kept.push(pieces[Math.floor(at)]);
  return kept;
}

export const isIn = ({ start, end }: Range, line: number): boolean => line >= start.line && line <= end.line;

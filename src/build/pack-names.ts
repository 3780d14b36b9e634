// build: `npm run names`. Packs the names of materials for functions.js: folded, sorted, without those that the rules for
// prefixes and suffixes find anyway, each name as what it shares with the one before and its own rest.

import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { findMaterialAmong, fold, namesFrom } from "../calc/materials/find-material.ts";
import { materials } from "../data/materials/materials.ts";
import { materialNames } from "../data/materials/names.ts";
import { sourceFolder } from "./paths.ts";

export const packedNamesFile = join(sourceFolder, "data", "materials", "packed-names.ts");

/** `A` shares nothing with the name before, `B` one character, and so on. */
function packed(names: readonly string[]): string {
  let before = "";
  return [...new Set(names)]
    .sort()
    .map((name) => {
      let shared = 0;
      while (shared < 25 && shared < name.length && name[shared] === before[shared]) shared++;
      before = name;
      return String.fromCharCode(65 + shared) + name.slice(shared);
    })
    .join("");
}

/** A name as people write it: in capitals or small letters, run together, or hyphens for its spaces. */
export const spellingsOf = (name: string): string[] =>
  [name, name.replace(/[ /-]/g, ""), name.replaceAll(" ", "-")].flatMap((one) => [
    one,
    one.toUpperCase(),
    one.toLowerCase(),
  ]);

/** The text of src/data/materials/packed-names.ts. */
export function packedNamesModule(): string {
  const written = Object.entries(materialNames).flatMap(([key, names]) =>
    names.split("; ").map((name) => ({ key, name, folded: fold(name) })),
  );
  written.sort((a, b) => a.folded.length - b.folded.length || (a.folded < b.folded ? -1 : 1));
  const kept = new Map<string, string[]>(materials.map(({ key }) => [key, [fold(key)]]));
  const names = namesFrom(kept);
  for (const { key, name, folded } of written) {
    if (isFound(name, key)) continue;
    kept.get(key)!.push(folded);
    names.one.set(folded, names.one.get(fold(key))!);
  }
  function isFound(name: string, key: string): boolean {
    try {
      return spellingsOf(name).every((spelling) => findMaterialAmong(names, spelling).key === key);
    } catch {
      return false;
    }
  }
  const lines = [...kept].map(([key, own]) => `  ${JSON.stringify(key)}: ${JSON.stringify(packed(own))},`);
  return [
    "// data: the names of names.ts, packed by `npm run names`: see src/build/pack-names.ts. Do not edit.",
    "",
    "// biome-ignore format: made by a program",
    "export const packedNames: Readonly<Record<string, string>> = {",
    ...lines,
    "};",
    "",
  ].join("\n");
}

if (process.argv[1]?.endsWith("pack-names.ts")) writeFileSync(packedNamesFile, packedNamesModule());

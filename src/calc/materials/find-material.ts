// calc: finds a material by its key, by a designation, or by a hardness, as a user writes them.

import { hardness, type Material, materials, ownExpansions } from "../../data/materials/materials.ts";
import {
  type Among,
  brinellPattern,
  HARDENED_FROM_HB,
  hardenedPattern,
  hrcPattern,
  kindWords,
  prefixes,
  suffixes,
} from "../../data/materials/name-parts.ts";
import { packedNames } from "../../data/materials/packed-names.ts";
import { twoMetalNames } from "../../data/materials/two-metal-names.ts";
import { hasOwn } from "../own.ts";
import { shown, wrong } from "../problem.ts";

const DEFAULT_MATERIAL = "medium-carbon steel";
const LONGEST_NAME = 60;
/** More parts around a name than any drawing has. */
const MOST_PARTS = 5;

const byKey = new Map(materials.map((material) => [material.key, material]));

export interface Names {
  readonly one: Map<string, Material>;
  /** As the table of names that two metals bear has them. */
  readonly two: ReadonlyMap<string, string>;
}
let unpacked: Names | undefined;

/** The names by their folded spelling, unpacked when the first one is asked for. */
function names(): Names {
  unpacked ??= namesFrom(Object.entries(packedNames).map(([key, packed]) => [key, namesIn(packed)] as const));
  return unpacked;
}

/** Names from folded ones by the key of their material. */
export function namesFrom(byMaterial: Iterable<readonly [key: string, names: readonly string[]]>): Names {
  const expansions = new Map(Object.entries(ownExpansions).map(([name, own]) => [fold(name), own]));
  const one = new Map<string, Material>();
  for (const [key, folded] of byMaterial) {
    const material = byKey.get(key)!;
    for (const name of folded) {
      const expansion = expansions.get(name);
      one.set(name, expansion === undefined ? material : { ...material, expansion });
    }
  }
  const two = new Map(Object.entries(twoMetalNames).map(([name, meanings]) => [fold(name), meanings]));
  return { one, two };
}

/** The names of a packed text: a capital says how many characters each shares with the one before. */
function namesIn(packed: string): string[] {
  let name = "";
  return (packed.match(/[A-Z][^A-Z]*/g) ?? []).map((part) => {
    name = name.slice(0, part.charCodeAt(0) - 65) + part.slice(1);
    return name;
  });
}

/** One spelling for many: no case, accents, spaces, hyphens, or slashes; a dot counts between figures only. */
export function fold(text: string): string {
  return text
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replaceAll("ß", "ss")
    .replace(/(\d),(?=\d)/g, "$1.")
    .replace(/\.(?!\d)/g, "")
    .replace(/([^\d]|^)\./g, "$1")
    .replace(/aluminium/g, "aluminum")
    .replace(/grey/g, "gray")
    .replace(/[\s\-_/]/g, "");
}

/** What is looked for under one name: which materials may answer, and by what standard. */
interface Wanted {
  readonly among: readonly Among[];
  readonly system: string;
  readonly parts: number;
  readonly names: Names;
  /** Sentences for names that stay two metals; the first is said if nothing else answers. */
  readonly doubts: string[];
}

const isAmong = ({ key, iso513 }: Material, among: Among) => among.includes(key) || among.includes(iso513);

/**
 * A material by key or name (`4140`, `gray cast iron`, `EN AW-6082-T6`, `1.4301`, `58 HRC`). A number cell that lost
 * the zeros of a Werkstoffnummer gets them back (1.431 is 1.4310).
 * @throws Problem "wrong" naming both metals of a name that has two, or the nearest names
 */
export function findMaterial(name: string | number = DEFAULT_MATERIAL): Material {
  return byKey.get(name as string) ?? findMaterialAmong(names(), name);
}

/** As findMaterial, among names of one's own. */
export function findMaterialAmong(own: Names, name: string | number): Material {
  const text = typeof name === "number" && !Number.isInteger(name) ? name.toFixed(4) : String(name).trim();
  const exact = byKey.get(text);
  if (exact) return exact;
  const plain = text.replace(/\s+/g, " ").replace(/[−–‐‑]/g, "-");
  const doubts: string[] = [];
  const found =
    plain.length > LONGEST_NAME
      ? undefined
      : find(plain, { among: [], system: "", parts: 0, names: own, doubts });
  return found ?? wrong(doubts[0] ?? unknown(text, own));
}

function find(name: string, wanted: Wanted): Material | undefined {
  const key = fold(name);
  if (key === "") return undefined;
  const material = wanted.names.one.get(key) ?? wanted.names.one.get(likelyMeant(key));
  if (material) return wanted.among.every((among) => isAmong(material, among)) ? material : undefined;
  const meanings = wanted.names.two.get(key) ?? wanted.names.two.get(key.replace(/^gr(?=\d)/, "grade"));
  if (meanings) return oneOf(name, meaningsOf(meanings), wanted);
  if (wanted.parts === MOST_PARTS) return undefined;
  return (
    byHardness(name, wanted) ??
    withoutSuffix(name, wanted) ??
    withoutPrefix(name, wanted) ??
    withKind(name, wanted)
  );
}

/** The letter O for the figure in S355JO, and an iron number without its `EN-` or with it. */
function likelyMeant(key: string): string {
  if (key.startsWith("engj")) return key.slice(2);
  return key.startsWith("gj") ? `en${key}` : key.replace(/^(s\d{3}j)o/, (_, steel) => `${steel}0`);
}

interface NameMeaning {
  /** The standard or name, and what it is. */
  readonly text: string;
  /** The key of its material, "" where the table has none for it. */
  readonly key: string;
}

/** What a name can be, from its line in the table of names that two metals bear. */
export function meaningsOf(line: string): NameMeaning[] {
  return line.split("; or ").map((meaning) => {
    const [text, stated] = meaning.split(" = ") as [string, string | undefined];
    const key = stated ?? /: (.+?)(?: \(|[,;]|$)/.exec(text)?.[1] ?? "";
    return { text, key: byKey.has(key) ? key : "" };
  });
}

/** The one meaning that the standard, the state, or the kind of metal named beside it allows. */
function oneOf(name: string, meanings: readonly NameMeaning[], wanted: Wanted): Material | undefined {
  const system = fold(wanted.system);
  const possible = meanings.filter(
    ({ text, key }) =>
      (system === "" || sameSystem(fold(text), system)) &&
      (wanted.among.length === 0 ||
        (key !== "" && wanted.among.every((among) => isAmong(byKey.get(key)!, among)))),
  );
  const [only] = possible;
  if (possible.length === 1 && only.key !== "" && (system !== "" || wanted.among.length > 0))
    return byKey.get(only.key)!;
  const listed = (possible.length > 1 ? possible : meanings).map(({ text }) => text).join("; or ");
  wanted.doubts.push(
    `material ${shown(name)} can be ${listed}. Write the standard or the metal with it, or a key of MATERIALS().`,
  );
  return undefined;
}

const AMERICAN_STEELS = /^(?:aisi|sae|astm|uns)/;

function sameSystem(meaning: string, system: string): boolean {
  if (meaning.startsWith(system)) return true;
  if (/^(?:enaw|aw|aa)/.test(system)) return /^(?:enaw|aa)/.test(meaning);
  if (/^(?:enac|ac)/.test(system)) return /^(?:enac|aa)/.test(meaning);
  return AMERICAN_STEELS.test(system) && AMERICAN_STEELS.test(meaning);
}

/** `58 HRC`, `D2 60 HRC`, `100Cr6 hardened`: hardened steel, its cutting force by the hardness. */
function byHardness(name: string, wanted: Wanted): Material | undefined {
  const hrc = hrcPattern.exec(name)?.groups;
  if (hrc) {
    const low = Number(hrc.low ?? hrc.low2);
    const value = (low + Number(hrc.high ?? hrc.high2 ?? low)) / 2;
    const isHard = value >= hardness.lowest && value <= hardness.highest;
    if (hrc.base.trim() === "") {
      if (isHard) return hardenedTo(value);
      return wrong(
        `material is ${shown(name)}. A hardness alone is hardened steel from ${hardness.lowest} to ${hardness.highest} HRC: write the metal.`,
      );
    }
    const base = find(hrc.base.trim(), { ...wanted, parts: wanted.parts + 1 });
    if (!base || !isSteel(base)) return base;
    if (value > hardness.highest) return undefined;
    return isHard ? hardenedTo(value) : base;
  }
  const brinell = brinellPattern.exec(name)?.groups;
  if (brinell && Number(brinell.value ?? brinell.value2) >= HARDENED_FROM_HB) {
    const base =
      brinell.base.trim() === ""
        ? byKey.get("hardened steel")
        : find(brinell.base.trim(), { ...wanted, parts: wanted.parts + 1 });
    if (base && isSteel(base))
      wrong(`material is ${shown(name)}, a hardened steel. Write its hardness in HRC, such as 50 HRC.`);
    return base;
  }
  const hardened = hardenedPattern.exec(name)?.groups;
  const base = hardened && find(hardened.base, { ...wanted, parts: wanted.parts + 1 });
  return base && isSteel(base) ? byKey.get("hardened steel") : undefined;
}

function hardenedTo(hrc: number): Material {
  const [from, to] = hardness.kc11;
  const share = Math.min(1, (hrc - from.hrc) / (to.hrc - from.hrc));
  return { ...byKey.get("hardened steel")!, kc11: from.kc11 + (to.kc11 - from.kc11) * share };
}

const isSteel = ({ iso513 }: Material) => iso513 === "P" || iso513 === "M" || iso513 === "H";

function narrowed(wanted: Wanted, among: Among | undefined, system = wanted.system): Wanted {
  return {
    ...wanted,
    among: among ? [...wanted.among, among] : wanted.among,
    system,
    parts: wanted.parts + 1,
  };
}

function withoutSuffix(name: string, wanted: Wanted): Material | undefined {
  for (const { pattern, among } of suffixes) {
    const base = pattern.exec(name)?.groups?.base;
    const found = base && find(base, narrowed(wanted, among));
    if (found) return found;
  }
  return undefined;
}

function withoutPrefix(name: string, wanted: Wanted): Material | undefined {
  for (const { pattern, among } of prefixes) {
    const { base, system } = pattern.exec(name)?.groups ?? {};
    const found = base && find(base, narrowed(wanted, among, system ?? wanted.system));
    if (found) return found;
  }
  return undefined;
}

/** `304 stainless`, `steel C45`, `A2 tool steel`: words for the kind of metal before or behind the name. */
function withKind(name: string, wanted: Wanted): Material | undefined {
  const words = name.split(/[ ,]+/);
  for (let cut = 1; cut < words.length; cut++)
    for (const [kind, rest] of [
      [words.slice(0, cut), words.slice(cut)],
      [words.slice(cut), words.slice(0, cut)],
    ]) {
      const among = kindOf(kind.join(" "), wanted.names);
      const found = among && find(rest.join(" "), narrowed(wanted, among));
      if (found) return found;
    }
  return undefined;
}

/** What a word for a kind of metal allows: the table's, or the one material that the word is a name of. */
function kindOf(words: string, names: Names): Among | undefined {
  const key = fold(words);
  if (hasOwn(kindWords, key)) return kindWords[key];
  const material = names.one.get(key);
  return material && /^[a-z]+$/.test(key) ? [material.key] : undefined;
}

function unknown(name: string, own: Names): string {
  const words = name.toLowerCase().match(/[a-z]{3,}/g) ?? [];
  const keys = materials.map(({ key }) => key);
  const near = keys.filter((key) => words.some((word) => key.includes(word)));
  const similar = near.length > 0 ? near : similarNames(name, own);
  const advice =
    similar.length > 0
      ? `Did you mean ${listOf(similar)}?`
      : "Write a designation such as 4140 or 1.4301, or a key of MATERIALS().";
  return `material ${shown(name)} is not known. ${advice}`;
}

/** Names of the same length with one character changed. */
function similarNames(name: string, own: Names): string[] {
  const key = fold(name.slice(0, LONGEST_NAME));
  if (key.length < 3) return [];
  const near = (other: string) => {
    if (other.length !== key.length) return false;
    let differences = 0;
    for (let at = 0; at < key.length && differences < 2; at++) if (other[at] !== key[at]) differences++;
    return differences === 1;
  };
  return [...own.one.keys()]
    .filter(near)
    .slice(0, 3)
    .map((other) => other.toUpperCase());
}

function listOf(texts: readonly string[]): string {
  const shownTexts = texts.slice(0, 6);
  return shownTexts.length === 1
    ? shownTexts[0]
    : `${shownTexts.slice(0, -1).join(", ")} or ${shownTexts[shownTexts.length - 1]}`;
}

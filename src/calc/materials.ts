// calc: finds a material by its key or any of its names as a person writes them.

import { type Material, materialColumnSources, materials } from "../data/materials/materials.ts";
import { hardenedCarbideSpeed } from "../data/reaming-feeds.ts";
import { shown, wrong } from "./problem.ts";

const DEFAULT_MATERIAL = "medium-carbon steel";

const exact = new Map<string, Material>();
const folded = new Map<string, Material>();
for (const material of materials)
  for (const name of [material.key, ...material.aliases]) {
    exact.set(name, material);
    folded.set(fold(name), material);
  }

/** One spelling for many: no case, no spaces, dashes or other marks, one of grey/gray, aluminium/aluminum. */
function fold(text: string): string {
  return text
    .toLowerCase()
    .replace(/aluminium/g, "aluminum")
    .replace(/grey/g, "gray")
    .replace(/machining/g, "cutting")
    .replace(/[^a-z0-9]/g, "");
}

/**
 * A material of the table by key or alias (`4140`, `grey cast iron`, `EN-GJL-250`, `Ti-6Al-4V`).
 * @throws Problem "wrong" naming the nearest keys
 */
export function findMaterial(text: string | number = DEFAULT_MATERIAL): Material {
  const name = String(text);
  return exact.get(name) ?? findFolded(name) ?? wrong(unknown(name));
}

function findFolded(name: string): Material | undefined {
  if (name.length > 60) return undefined;
  const key = fold(name)
    .replace(/^(?:en(?:aw|ac)?|aw|ac|aisi|sae|astm|uns|ss)(?=[a-z]?\d|gj)/, "")
    .replace(/(?<=\d)t\d{1,4}$/, "");
  return folded.get(key) ?? findWithKind(name.trim().split(/\s+/)) ?? findSteel(key);
}

/** `304 stainless`, `4140 steel`, `aluminum 6061`: a name with words before or behind it that its key has too. */
function findWithKind(words: readonly string[]): Material | undefined {
  if (words.length < 2) return undefined;
  for (const at of [0, words.length - 1]) {
    const material = folded.get(fold(words[at]));
    const others = words.filter((_, index) => index !== at).map(fold);
    if (
      material &&
      others.every((word) => fold(material.key).includes(word) || (word === "steel" && isSteel(material)))
    )
      return material;
  }
  return undefined;
}

/** `austenitic stainless steel`. */
function findSteel(key: string): Material | undefined {
  const material = key.endsWith("steel") ? folded.get(key.slice(0, -5)) : undefined;
  return material && isSteel(material) ? material : undefined;
}

function isSteel({ iso513 }: Material): boolean {
  return iso513 === "P" || iso513 === "M" || iso513 === "H";
}

function unknown(name: string): string {
  const words = name.toLowerCase().match(/[a-z]{3,}/g) ?? [];
  const keys = materials.map(({ key }) => key);
  const near = keys.filter((key) => words.some((word) => key.includes(word)));
  return `material ${shown(name)} is not known: write one of ${(near.length ? near : keys).join(", ")}`;
}

const COLUMNS = [
  ...["key", "ISO 513 group", "what it is", "speed range", "feed factor"],
  ...["kc1.1 (N/mm²)", "mc", "expansion (µm/(m·K))", "source"],
];

/** The material table as a sheet shows it, with a header. */
export function materialTable(): (string | number)[][] {
  const rows = materials.map((material) => [
    ...[material.key, material.iso513, material.what, speedText(material), material.feedFactor],
    ...[material.kc11, material.mc, material.expansion, sourceText(material)],
  ]);
  return [COLUMNS, ...rows];
}

function speedText({ hssLow, hssHigh }: Material): string {
  if (hssLow === null || hssHigh === null)
    return rangeText("carbide", hardenedCarbideSpeed.low, hardenedCarbideSpeed.high);
  return rangeText("HSS", hssLow, hssHigh);
}

function rangeText(tool: string, low: number, high: number): string {
  const metric = (speed: number) => (speed * 0.3048).toFixed(1);
  return `${tool} ${low}–${high} ft/min (${metric(low)}–${metric(high)} m/min)`;
}

function sourceText({ speedSource }: Material): string {
  const { feedFactor, kc11, expansion } = materialColumnSources;
  return `speed: ${speedSource}; feed factor: ${feedFactor}; kc1.1 and mc: ${kc11}; expansion: ${expansion}`;
}

// calc: the material table as a sheet shows it.

import { type Material, materialColumnSources, materials } from "../../data/materials/materials.ts";
import { hardCarbideSpeeds } from "../../data/reaming-feeds.ts";

const COLUMNS = [
  ...["key", "ISO 513 group", "what it is", "cutting speed (m/min)", "cutting speed (ft/min)", "feed factor"],
  ...["stock factor", "kc1.1 (N/mm²)", "mc", "expansion (µm/(m·K))", "source"],
];

/** A header and a row for each material. */
export function materialTable(): (string | number)[][] {
  const rows = materials.map((material) => [
    ...[material.key, material.iso513, material.what, speedText(material, 0.3048), speedText(material, 1)],
    ...[material.feedFactor, material.stockFactor, material.kc11, material.mc, material.expansion],
    sourceText(material),
  ]);
  return [[...COLUMNS], ...rows];
}

/** @param factor from ft/min to the unit of the column */
function speedText({ key, hssLow, hssHigh }: Material, factor: number): string {
  const range = (tool: string, low: number, high: number) => {
    const text = (speed: number) => (factor === 1 ? String(speed) : (speed * factor).toFixed(1));
    return `${tool} ${text(low)}–${text(high)}`;
  };
  if (hssLow !== null && hssHigh !== null) return range("HSS", hssLow, hssHigh);
  const { low, high } = hardCarbideSpeeds[key];
  return range("carbide", low, high);
}

function sourceText({ speedSource }: Material): string {
  const { feedFactor, stockFactor, kc11, expansion } = materialColumnSources;
  return `speed: ${speedSource}; feed and stock factors: ${feedFactor === stockFactor ? feedFactor : `${feedFactor}, ${stockFactor}`}; kc1.1 and mc: ${kc11}; expansion: ${expansion}`;
}

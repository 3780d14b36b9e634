// data: starting cutting speed and feed per tooth for tools other than HSS and solid carbide (source key "modern-tools").
// Common practice, no source; wide ranges: the tool's own data and the shop's own records come first. The feed holds at
// 10 mm and above; under that it shrinks with the diameter.

export interface ModernToolRow {
  readonly tool: ModernTool;
  readonly materials: readonly string[];
  /** m/min. */
  readonly speed: readonly [low: number, high: number];
  /** mm; of a guided blade, which has one tooth, per revolution. */
  readonly feedPerTooth: readonly [low: number, high: number];
}

export type ModernTool = "brazed carbide" | "coated carbide" | "cermet" | "PCD" | "CBN" | "guided blade";

const row = (
  tool: ModernTool,
  materials: string,
  speed: readonly [number, number],
  feedPerTooth: readonly [number, number],
): ModernToolRow => ({ tool, materials: materials.split("; "), speed, feedPerTooth });

// biome-ignore format: a row to a line
export const modernTools: readonly ModernToolRow[] = [
  row("brazed carbide", "free-cutting steel", [25, 50], [0.05, 0.12]),
  row("brazed carbide", "low-carbon steel; medium-carbon steel; case-hardening steel; cast steel", [18, 35], [0.05, 0.12]),
  row("brazed carbide", "alloy steel; bearing steel; tool steel", [10, 20], [0.04, 0.1]),
  row("brazed carbide", "free-cutting stainless", [15, 28], [0.05, 0.1]),
  row("brazed carbide", "ferritic stainless; martensitic stainless; austenitic stainless; precipitation-hardening stainless", [8, 15], [0.04, 0.08]),
  row("brazed carbide", "duplex stainless", [6, 12], [0.03, 0.07]),
  row("brazed carbide", "gray iron; malleable iron", [22, 42], [0.06, 0.15]),
  row("brazed carbide", "ductile iron; compacted iron", [20, 35], [0.05, 0.12]),
  row("brazed carbide", "austempered iron", [8, 15], [0.04, 0.08]),
  row("brazed carbide", "aluminum; copper", [60, 120], [0.08, 0.2]),
  row("brazed carbide", "magnesium", [80, 150], [0.08, 0.2]),
  row("brazed carbide", "cast aluminum; silicon aluminum", [60, 120], [0.08, 0.2]),
  row("brazed carbide", "brass", [60, 120], [0.06, 0.15]),
  row("brazed carbide", "bronze", [30, 60], [0.06, 0.15]),
  row("brazed carbide", "aluminum bronze", [15, 35], [0.05, 0.12]),
  row("brazed carbide", "titanium", [8, 15], [0.04, 0.08]),
  row("brazed carbide", "nickel alloy; cobalt alloy", [6, 12], [0.03, 0.06]),
  row("brazed carbide", "hardened steel", [6, 12], [0.02, 0.05]),
  row("brazed carbide", "plastic", [20, 60], [0.06, 0.15]),
  row("coated carbide", "free-cutting steel; low-carbon steel; medium-carbon steel; case-hardening steel; cast steel", [80, 150], [0.1, 0.2]),
  row("coated carbide", "alloy steel; bearing steel", [60, 120], [0.1, 0.18]),
  row("coated carbide", "tool steel", [40, 80], [0.06, 0.14]),
  row("coated carbide", "free-cutting stainless; ferritic stainless; martensitic stainless", [30, 60], [0.08, 0.15]),
  row("coated carbide", "austenitic stainless; precipitation-hardening stainless", [20, 50], [0.06, 0.12]),
  row("coated carbide", "duplex stainless", [15, 35], [0.05, 0.1]),
  row("coated carbide", "gray iron; malleable iron", [80, 150], [0.12, 0.25]),
  row("coated carbide", "ductile iron; compacted iron", [60, 120], [0.1, 0.2]),
  row("coated carbide", "austempered iron", [30, 60], [0.06, 0.12]),
  row("coated carbide", "aluminum; copper; magnesium", [100, 250], [0.12, 0.25]),
  row("coated carbide", "cast aluminum; silicon aluminum", [100, 220], [0.12, 0.25]),
  row("coated carbide", "brass; bronze", [80, 160], [0.1, 0.2]),
  row("coated carbide", "aluminum bronze", [40, 90], [0.08, 0.15]),
  row("coated carbide", "titanium", [15, 30], [0.05, 0.1]),
  row("coated carbide", "nickel alloy; cobalt alloy", [10, 25], [0.04, 0.08]),
  row("coated carbide", "hardened steel", [12, 25], [0.03, 0.06]),
  row("coated carbide", "plastic", [60, 150], [0.08, 0.2]),
  row("cermet", "free-cutting steel; low-carbon steel; medium-carbon steel; case-hardening steel; cast steel", [120, 220], [0.08, 0.18]),
  row("cermet", "alloy steel; bearing steel", [90, 180], [0.08, 0.15]),
  row("cermet", "free-cutting stainless; ferritic stainless; martensitic stainless", [60, 120], [0.06, 0.12]),
  row("cermet", "ductile iron; compacted iron", [100, 180], [0.08, 0.16]),
  row("PCD", "aluminum; copper; magnesium", [200, 500], [0.1, 0.25]),
  row("PCD", "cast aluminum; silicon aluminum", [250, 600], [0.1, 0.25]),
  row("PCD", "brass; bronze; aluminum bronze", [150, 350], [0.08, 0.2]),
  row("PCD", "plastic", [150, 400], [0.06, 0.15]),
  row("CBN", "gray iron", [200, 500], [0.08, 0.18]),
  row("CBN", "hardened steel", [60, 120], [0.03, 0.08]),
  row("guided blade", "free-cutting steel; low-carbon steel; medium-carbon steel; case-hardening steel; cast steel; alloy steel; bearing steel", [60, 120], [0.1, 0.25]),
  row("guided blade", "gray iron; malleable iron; ductile iron; compacted iron", [60, 110], [0.12, 0.3]),
  row("guided blade", "aluminum; cast aluminum; silicon aluminum", [100, 300], [0.12, 0.3]),
  row("guided blade", "free-cutting stainless; ferritic stainless; martensitic stainless; austenitic stainless", [25, 60], [0.08, 0.2]),
];

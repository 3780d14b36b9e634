// data: workpiece materials: starting values for reaming (source keys "start-speed", "start-feed", "stock-practice",
// "kienzle", "expansion", "iso-513"). Speeds are in ft/min, as the handbooks print them, and carry their source in the
// row; for the other columns see materialColumnSources. names.ts has the names that each is found by.

export interface Material {
  readonly key: string;
  /** ISO 513 application group. */
  readonly iso513: "P" | "M" | "K" | "N" | "S" | "H";
  readonly what: string;
  /** Reaming speed in HSS, ft/min; null where HSS is not used. */
  readonly hssLow: number | null;
  readonly hssHigh: number | null;
  readonly speedSource: string;
  /** Share of the starting feed. */
  readonly feedFactor: number;
  /** Share of the stock allowance, as in stockShares. */
  readonly stockFactor: 0.5 | 1 | 1.5;
  /** kc1.1, N/mm². */
  readonly kc11: number;
  /** mc. */
  readonly mc: number;
  /** Linear expansion, µm/(m·K). */
  readonly expansion: number;
}

export const materialColumnSources = {
  feedFactor: "common practice, no source",
  stockFactor: "common practice, no source",
  kc11: "Kienzle, textbook value from memory",
  mc: "Kienzle, textbook value from memory",
  expansion: "textbook value from memory",
} as const;

/** Hardened steel by its hardness: kc1.1 runs straight between these and stays at the second (values from memory). */
export const hardness = {
  lowest: 45,
  highest: 65,
  assumed: 55,
  kc11: [
    { hrc: 45, kc11: 2550 },
    { hrc: 62, kc11: 4870 },
  ],
} as const;

/** Where one designation expands otherwise than its group, µm/(m·K): values from memory. */
export const ownExpansions: Readonly<Record<string, number>> = Object.fromEntries(
  ["416", "S41600", "1.4005", "X12CrS13", "416S21", "416S29", "416S37", "416S41", "SUS416"].map((name) => [
    name,
    9.9,
  ]),
);

// biome-ignore format: two lines to a material
export const materials: readonly Material[] = [
  { key: "free-cutting steel", iso513: "P", what: "sulphurized or leaded bar", hssLow: 70, hssHigh: 100, speedSource: "common practice, no source",
    feedFactor: 1.1, stockFactor: 1, kc11: 1200, mc: 0.18, expansion: 11.5 },
  { key: "low-carbon steel", iso513: "P", what: "to 0.25 % C", hssLow: 50, hssHigh: 70, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 1780, mc: 0.17, expansion: 11.5 },
  { key: "medium-carbon steel", iso513: "P", what: "0.3 to 0.55 % C", hssLow: 40, hssHigh: 50, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 2220, mc: 0.14, expansion: 11.5 },
  { key: "alloy steel", iso513: "P", what: "quenched and tempered to 300 HB", hssLow: 25, hssHigh: 35, speedSource: "half of the drilling speed 50-70 (US Navy course 14345; TC 9-524 rule)",
    feedFactor: 0.9, stockFactor: 1, kc11: 2500, mc: 0.26, expansion: 11.5 },
  { key: "tool steel", iso513: "P", what: "annealed", hssLow: 35, hssHigh: 40, speedSource: "USCTI handbook, value from memory",
    feedFactor: 0.8, stockFactor: 1, kc11: 2100, mc: 0.26, expansion: 11.5 },
  { key: "hardened steel", iso513: "H", what: "45 to 65 HRC, 55 if no hardness is given; not for HSS", hssLow: null, hssHigh: null, speedSource: "common practice, no source",
    feedFactor: 0.5, stockFactor: 0.5, kc11: 3915, mc: 0.25, expansion: 11.5 },
  { key: "free-cutting stainless", iso513: "M", what: "303", hssLow: 40, hssHigh: 50, speedSource: "USCTI handbook 20-50, upper part, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 1800, mc: 0.21, expansion: 17.3 },
  { key: "austenitic stainless", iso513: "M", what: "304 and 316", hssLow: 20, hssHigh: 35, speedSource: "USCTI handbook 20-50; handbook 304 35 (value from memory)",
    feedFactor: 0.9, stockFactor: 1.5, kc11: 2350, mc: 0.21, expansion: 17.3 },
  { key: "martensitic stainless", iso513: "M", what: "410, 416, 420, 431, annealed", hssLow: 20, hssHigh: 40, speedSource: "USCTI handbook 20-50, value from memory",
    feedFactor: 0.9, stockFactor: 1, kc11: 2150, mc: 0.21, expansion: 10.5 },
  { key: "gray iron", iso513: "K", what: "to 220 HB", hssLow: 70, hssHigh: 100, speedSource: "USCTI handbook, soft cast iron, value from memory",
    feedFactor: 1.2, stockFactor: 1, kc11: 1160, mc: 0.26, expansion: 11 },
  { key: "ductile iron", iso513: "K", what: "ferritic to pearlitic", hssLow: 50, hssHigh: 70, speedSource: "handbook, ferritic 65, value from memory",
    feedFactor: 1.1, stockFactor: 1, kc11: 1480, mc: 0.24, expansion: 11 },
  { key: "malleable iron", iso513: "K", what: "ferritic to pearlitic", hssLow: 60, hssHigh: 90, speedSource: "common practice, no source",
    feedFactor: 1.1, stockFactor: 1, kc11: 1180, mc: 0.24, expansion: 11 },
  { key: "aluminum", iso513: "N", what: "wrought", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 780, mc: 0.23, expansion: 23.6 },
  { key: "cast aluminum", iso513: "N", what: "silicon to 12 %", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 700, mc: 0.25, expansion: 21.5 },
  { key: "magnesium", iso513: "N", what: "chips burn: no water on fine chips, see the cautions", hssLow: 170, hssHigh: 270, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 350, mc: 0.25, expansion: 26 },
  { key: "brass", iso513: "N", what: "free-cutting", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.2, stockFactor: 1, kc11: 780, mc: 0.18, expansion: 20.5 },
  { key: "bronze", iso513: "N", what: "bearing and high-tensile bronze", hssLow: 50, hssHigh: 100, speedSource: "high-tensile bronze 50-70 (USCTI, value from memory), softer grades common practice",
    feedFactor: 1, stockFactor: 1, kc11: 1000, mc: 0.25, expansion: 18 },
  { key: "copper", iso513: "N", what: "pure copper", hssLow: 40, hssHigh: 60, speedSource: "common practice, no source",
    feedFactor: 1, stockFactor: 1.5, kc11: 1100, mc: 0.25, expansion: 17 },
  { key: "titanium", iso513: "S", what: "Ti-6Al-4V", hssLow: 10, hssHigh: 20, speedSource: "USCTI handbook, value from memory",
    feedFactor: 0.8, stockFactor: 1.5, kc11: 1370, mc: 0.21, expansion: 8.6 },
  { key: "nickel alloy", iso513: "S", what: "age-hardened or solution-treated", hssLow: 15, hssHigh: 30, speedSource: "nickel-copper alloy 25-35 (USCTI, value from memory); harder alloys common practice",
    feedFactor: 0.7, stockFactor: 1.5, kc11: 2600, mc: 0.27, expansion: 13 },
  { key: "plastic", iso513: "N", what: "acetal and nylon; no ISO 513 group of its own", hssLow: 60, hssHigh: 100, speedSource: "common practice, no source",
    feedFactor: 1.2, stockFactor: 1.5, kc11: 200, mc: 0.25, expansion: 100 },
  { key: "case-hardening steel", iso513: "P", what: "as delivered", hssLow: 45, hssHigh: 65, speedSource: "common practice, no source",
    feedFactor: 1, stockFactor: 1, kc11: 2100, mc: 0.26, expansion: 11.5 },
  { key: "bearing steel", iso513: "P", what: "annealed", hssLow: 25, hssHigh: 35, speedSource: "common practice, no source",
    feedFactor: 0.8, stockFactor: 1, kc11: 2100, mc: 0.25, expansion: 11.5 },
  { key: "cast steel", iso513: "P", what: "unalloyed", hssLow: 35, hssHigh: 50, speedSource: "common practice, no source",
    feedFactor: 1, stockFactor: 1, kc11: 1800, mc: 0.16, expansion: 11.5 },
  { key: "ferritic stainless", iso513: "M", what: "430", hssLow: 30, hssHigh: 50, speedSource: "common practice, no source",
    feedFactor: 0.9, stockFactor: 1, kc11: 1800, mc: 0.21, expansion: 10.4 },
  { key: "duplex stainless", iso513: "M", what: "2205 and the like", hssLow: 15, hssHigh: 30, speedSource: "common practice, no source",
    feedFactor: 0.8, stockFactor: 1.5, kc11: 2400, mc: 0.21, expansion: 13 },
  { key: "precipitation-hardening stainless", iso513: "M", what: "17-4 PH, solution-annealed", hssLow: 15, hssHigh: 30, speedSource: "common practice, no source",
    feedFactor: 0.8, stockFactor: 1, kc11: 2300, mc: 0.21, expansion: 10.8 },
  { key: "compacted iron", iso513: "K", what: "GJV-450", hssLow: 40, hssHigh: 60, speedSource: "common practice, no source",
    feedFactor: 1, stockFactor: 1, kc11: 1450, mc: 0.25, expansion: 11 },
  { key: "austempered iron", iso513: "K", what: "not for HSS", hssLow: null, hssHigh: null, speedSource: "common practice, no source",
    feedFactor: 0.7, stockFactor: 1, kc11: 1800, mc: 0.25, expansion: 11 },
  { key: "silicon aluminum", iso513: "N", what: "over 12 % Si", hssLow: 80, hssHigh: 130, speedSource: "common practice, no source",
    feedFactor: 1.2, stockFactor: 1.5, kc11: 750, mc: 0.25, expansion: 19 },
  { key: "aluminum bronze", iso513: "N", what: "C95400 and the like", hssLow: 35, hssHigh: 60, speedSource: "common practice, no source",
    feedFactor: 0.9, stockFactor: 1, kc11: 1100, mc: 0.25, expansion: 16.5 },
  { key: "cobalt alloy", iso513: "S", what: "L605", hssLow: 10, hssHigh: 20, speedSource: "common practice, no source",
    feedFactor: 0.6, stockFactor: 1.5, kc11: 2800, mc: 0.27, expansion: 13 },
];

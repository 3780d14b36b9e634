// data: workpiece materials: starting values for reaming (source keys "start-speed", "start-feed", "stock", "kienzle",
// "reference-temperature", "iso-513"). Speeds are in ft/min, as the handbooks print them, and carry their source in
// the row; for the other columns see materialColumnSources.

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
  /** Share of the stock allowance. */
  readonly stockFactor: number;
  /** kc1.1, N/mm². */
  readonly kc11: number;
  /** mc. */
  readonly mc: number;
  /** Linear expansion, µm/(m·K). */
  readonly expansion: number;
  readonly aliases: readonly string[];
}

/** Which material a designation (AISI, UNS, EN) belongs to is a value from memory. */
export const materialColumnSources = {
  feedFactor: "common practice, no source",
  stockFactor: "common practice, no source",
  kc11: "Kienzle, textbook value from memory",
  mc: "Kienzle, textbook value from memory",
  expansion: "textbook value from memory",
} as const;

// biome-ignore format: three lines to a material
export const materials: readonly Material[] = [
  { key: "free-cutting steel", iso513: "P", what: "sulphurized or leaded bar", hssLow: 70, hssHigh: 100, speedSource: "common practice, no source",
    feedFactor: 1.1, stockFactor: 1, kc11: 1500, mc: 0.22, expansion: 11.5,
    aliases: ["1215", "12L14", "11SMnPb30", "leaded steel", "free-machining steel", "11SMn30", "1.0715", "1.0718"] },
  { key: "low-carbon steel", iso513: "P", what: "to 0.25 % C", hssLow: 50, hssHigh: 70, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 1780, mc: 0.17, expansion: 11.5,
    aliases: ["1018", "1020", "A36", "S235", "mild steel", "CRS", "1010", "S275", "S355", "St37", "1.0037", "1.0038", "HRS"] },
  { key: "medium-carbon steel", iso513: "P", what: "0.3 to 0.55 % C", hssLow: 40, hssHigh: 50, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 2220, mc: 0.14, expansion: 11.5,
    aliases: ["1045", "C45", "1040", "1035", "1050", "C45E", "1.0503", "1.1191"] },
  { key: "alloy steel", iso513: "P", what: "quenched and tempered to 300 HB", hssLow: 25, hssHigh: 35, speedSource: "half of the drilling speed 50-70 (US Navy course 14345; TC 9-524 rule)",
    feedFactor: 0.9, stockFactor: 1, kc11: 2500, mc: 0.26, expansion: 11.5,
    aliases: ["4140", "4340", "42CrMo4", "8620", "4130", "4140 PH", "4140 prehard", "16MnCr5", "1.7131", "1.7225", "34CrNiMo6", "1.6582"] },
  { key: "tool steel", iso513: "P", what: "annealed", hssLow: 35, hssHigh: 40, speedSource: "USCTI handbook, value from memory",
    feedFactor: 0.8, stockFactor: 1, kc11: 2130, mc: 0.18, expansion: 11.5,
    aliases: ["D2", "O1", "A2", "H13", "S7", "M2", "P20", "1.2379", "1.2344", "1.2510"] },
  { key: "hardened steel", iso513: "H", what: "45 to 62 HRC; not for HSS", hssLow: null, hssHigh: null, speedSource: "common practice, no source",
    feedFactor: 0.5, stockFactor: 1, kc11: 2550, mc: 0.25, expansion: 11.5,
    aliases: ["hardened", "60 HRC"] },
  { key: "free-cutting stainless", iso513: "M", what: "303 and 416", hssLow: 40, hssHigh: 50, speedSource: "USCTI handbook 20-50, upper part, value from memory",
    feedFactor: 1, stockFactor: 1, kc11: 1800, mc: 0.21, expansion: 17.3,
    aliases: ["303", "416", "free-machining stainless", "1.4305"] },
  { key: "austenitic stainless", iso513: "M", what: "304 and 316", hssLow: 20, hssHigh: 35, speedSource: "USCTI handbook 20-50; handbook 304 35 (value from memory)",
    feedFactor: 0.9, stockFactor: 1.5, kc11: 2350, mc: 0.21, expansion: 17.3,
    aliases: ["304", "316", "304L", "316L", "stainless", "18/8", "stainless steel", "1.4301", "1.4307", "1.4401", "1.4404", "1.4571", "X5CrNi18-10"] },
  { key: "martensitic stainless", iso513: "M", what: "410 420 17-4 PH annealed", hssLow: 20, hssHigh: 40, speedSource: "USCTI handbook 20-50, value from memory",
    feedFactor: 0.9, stockFactor: 1, kc11: 2150, mc: 0.21, expansion: 10.5,
    aliases: ["410", "420", "17-4 PH", "17-4", "440C", "1.4021", "1.4125", "1.4542"] },
  { key: "gray iron", iso513: "K", what: "to 220 HB", hssLow: 70, hssHigh: 100, speedSource: "USCTI handbook, soft cast iron, value from memory",
    feedFactor: 1.2, stockFactor: 1, kc11: 1160, mc: 0.26, expansion: 11,
    aliases: ["grey iron", "gray cast iron", "grey cast iron", "cast iron", "GG25", "GJL-250", "class 30", "GJL-200", "GJL-300", "GG20", "GG30"] },
  { key: "ductile iron", iso513: "K", what: "ferritic to pearlitic", hssLow: 50, hssHigh: 70, speedSource: "handbook, ferritic 65, value from memory",
    feedFactor: 1.1, stockFactor: 1, kc11: 1480, mc: 0.24, expansion: 11,
    aliases: ["nodular iron", "SG iron", "GJS-400", "GJS-400-15", "GGG40", "65-45-12", "GJS-500-7", "GGG50"] },
  { key: "malleable iron", iso513: "K", what: "ferritic to pearlitic", hssLow: 60, hssHigh: 90, speedSource: "common practice, no source",
    feedFactor: 1.1, stockFactor: 1, kc11: 1180, mc: 0.24, expansion: 11,
    aliases: ["malleable"] },
  { key: "aluminum", iso513: "N", what: "wrought", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 780, mc: 0.23, expansion: 23.6,
    aliases: ["aluminium", "6061", "7075", "2024", "5083", "aluminum alloy", "6082", "5754", "AlMg3", "AlMgSi1", "alu"] },
  { key: "cast aluminum", iso513: "N", what: "silicon to 12 %", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 700, mc: 0.25, expansion: 21.5,
    aliases: ["cast aluminium", "A356", "A380", "AlSi9", "AlSi10Mg"] },
  { key: "magnesium", iso513: "N", what: "chips burn: no water on fine chips, see the cautions", hssLow: 170, hssHigh: 270, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.3, stockFactor: 1.5, kc11: 350, mc: 0.25, expansion: 26,
    aliases: ["AZ31", "AZ91", "magnesium alloy"] },
  { key: "brass", iso513: "N", what: "free-cutting", hssLow: 130, hssHigh: 200, speedSource: "USCTI handbook, value from memory",
    feedFactor: 1.2, stockFactor: 1, kc11: 780, mc: 0.18, expansion: 20.5,
    aliases: ["C360", "CuZn39Pb3", "C36000", "360"] },
  { key: "bronze", iso513: "N", what: "bearing and high-tensile bronze", hssLow: 50, hssHigh: 100, speedSource: "high-tensile bronze 50-70 (USCTI, value from memory), softer grades common practice",
    feedFactor: 1, stockFactor: 1, kc11: 1000, mc: 0.25, expansion: 18,
    aliases: ["C932", "CuSn8", "C93200", "660"] },
  { key: "copper", iso513: "N", what: "pure copper", hssLow: 40, hssHigh: 60, speedSource: "common practice, no source",
    feedFactor: 1, stockFactor: 1.5, kc11: 1100, mc: 0.25, expansion: 17,
    aliases: ["ETP copper", "Cu-ETP", "C110", "C11000"] },
  { key: "titanium", iso513: "S", what: "Ti-6Al-4V", hssLow: 10, hssHigh: 20, speedSource: "USCTI handbook, value from memory",
    feedFactor: 0.8, stockFactor: 1.5, kc11: 1370, mc: 0.21, expansion: 8.6,
    aliases: ["Ti-6Al-4V", "Ti64", "grade 5", "Ti", "titanium alloy", "3.7165"] },
  { key: "nickel alloy", iso513: "S", what: "age-hardened or solution-treated", hssLow: 15, hssHigh: 30, speedSource: "nickel-copper alloy 25-35 (USCTI, value from memory); harder alloys common practice",
    feedFactor: 0.7, stockFactor: 1.5, kc11: 2600, mc: 0.27, expansion: 13,
    aliases: ["alloy 718", "alloy 625", "alloy 400", "nickel", "718", "625", "2.4668"] },
  { key: "plastic", iso513: "N", what: "acetal and nylon; no ISO 513 group of its own", hssLow: 60, hssHigh: 100, speedSource: "common practice, no source",
    feedFactor: 1.2, stockFactor: 1.5, kc11: 200, mc: 0.25, expansion: 100,
    aliases: ["acetal", "POM", "nylon", "PA"] },
];

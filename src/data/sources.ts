// data: every citation once, under a key. `kind` says how far it can be trusted:
// print (a published standard, handbook or textbook), exact (a definition), derived (from first principles),
// practice (common practice, no source), memory (a value known by heart, named but not seen).

export interface Source {
  readonly kind: "print" | "exact" | "derived" | "practice" | "memory";
  readonly text: string;
}

export const sources = {
  "iso-286-1": { kind: "print", text: "ISO 286-1:2010, Tables 1 to 5" },
  "iso-286-2": { kind: "print", text: "ISO 286-2:2010" },
  "ansi-b4.1": {
    kind: "print",
    text: "ANSI B4.1-1967 (R1987), as printed in Machinery's Handbook",
  },
  "iso-14253-1": { kind: "print", text: "ISO 14253-1, decision rules for conformity with specifications" },
  "iso-513": { kind: "print", text: "ISO 513, application groups of hard cutting materials" },
  "reamer-limits": {
    kind: "print",
    text: "ISO 522 / DIN 1420 rule (15 % and 35 % of the tolerance), as in Sharma, Textbook of Production Engineering, ch. 15",
  },
  "reamer-rounding": {
    kind: "memory",
    text: "DIN 1420: each share of the tolerance rounded up to 0.001 mm, value from memory; 0.00005 in likewise",
  },
  "reamer-nominal-band": { kind: "practice", text: "common practice, no source" },
  practice: { kind: "practice", text: "common practice, no source" },
  derived: { kind: "derived", text: "derived from first principles" },
  "stock-metric": { kind: "print", text: "stock for 2 to 50 mm: trade-school text (2023)" },
  "stock-practice": {
    kind: "practice",
    text: "stock under 2 mm, over 50 mm and in inches, and its share by material: common practice, no source",
  },
  "pre-ream-drill": {
    kind: "print",
    text: "reamed size less stock less drill oversize, trade-school text (2023)",
  },
  "drill-sizes": {
    kind: "print",
    text: "number, letter, and fraction drills to 1 in: handbook drill tables; metric drills to 25 mm: BS 328",
  },
  "taper-shank-drills": {
    kind: "memory",
    text: "longer drills by step: ISO 235 and DIN 345 (metric), ANSI B94.11M (inch), values from memory",
  },
  "drill-point": { kind: "derived", text: "geometry of the drill point" },
  "spindle-speed": {
    kind: "print",
    text: "12·V/(π·D) and 1000·v/(π·D), open textbook Manufacturing Processes; US Army TM 1-420",
  },
  feed: { kind: "derived", text: "feed rate = feed per revolution × rev/min; feed per tooth × teeth" },
  "start-speed": {
    kind: "memory",
    text: "HSS reaming speeds: USCTI handbook and others, values from memory, each row with its source in MATERIALS()",
  },
  "start-speed-carbide": {
    kind: "print",
    text: "solid carbide: twice the lower to three times the upper HSS speed, published for drills (US Navy course 14345)",
  },
  "modern-tools": {
    kind: "practice",
    text: "speed and feed per tooth of other tools, and of hard materials in carbide: common practice, no source",
  },
  "start-feed": { kind: "print", text: "drilling feeds by diameter, US Navy course 14345" },
  "start-feed-practice": {
    kind: "practice",
    text: "twice the drilling feed, its share by material and flutes, less under .094 in: common practice, no source",
  },
  "reamer-teeth": {
    kind: "print",
    text: "1.5·√D + 2 teeth, Sharma, Textbook of Production Engineering, ch. 15",
  },
  "flutes-practice": {
    kind: "practice",
    text: "an even number, at most 12 in heads and cermet, PCD, CBN, one in a guided blade: common practice, no source",
  },
  "machining-time": {
    kind: "print",
    text: "length of travel over feed rate, Groover and Machinery's Handbook",
  },
  "plug-gauges": { kind: "print", text: "GOST 24853-81, the ISO/R 1938 scheme" },
  "plug-gauge-rule": {
    kind: "practice",
    text: "the 10 % rule, 5 % of the tolerance at each end for the gauges: common practice, no source",
  },
  kienzle: {
    kind: "memory",
    text: "Kienzle: kc = kc1.1·h^−mc; kc1.1 and mc are textbook values from memory",
  },
  "torque-power": { kind: "derived", text: "power = torque × angular speed" },
  taylor: { kind: "print", text: "Taylor: v·T^n = C; n and C from the user's own records" },
  "economic-speed": {
    kind: "memory",
    text: "Groover, Fundamentals of Modern Manufacturing (minimum cost, maximum production), value from memory",
  },
  cost: { kind: "derived", text: "cost accounting from first principles" },
  "break-even": { kind: "print", text: "Panneerselvam, Engineering Economics, ex. 1.1" },
  runout: { kind: "derived", text: "first harmonic of four readings, from first principles" },
  "v-block": { kind: "derived", text: "geometry of a V-block over odd flutes" },
  "root-sum-square": { kind: "derived", text: "sum of independent variances" },
  capability: { kind: "print", text: "NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6" },
  "gauge-study": {
    kind: "practice",
    text: "6·√(EV² + AV²) over the tolerance, 10 % and 30 %: common practice, no source",
  },
  "reference-temperature": { kind: "print", text: "ISO 1: reference temperature 20 °C" },
  expansion: { kind: "memory", text: "linear expansion of the materials, textbook values from memory" },
  remedies: { kind: "practice", text: "causes, checks, and remedies: common practice, no source" },
  "shop-table": { kind: "practice", text: "your own table" },
  "hole-form": { kind: "derived", text: "least-squares slope and differences of the readings" },
  "hole-form-limit": {
    kind: "practice",
    text: "straight within 0.002 mm (0.0001 in): common practice, no source",
  },
  student: { kind: "print", text: "Student's t, NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.1" },
  "cpk-bound": {
    kind: "memory",
    text: "lower confidence bound of Cpk after Bissell (1990), value from memory",
  },
  "coolant-flow": { kind: "derived", text: "flow through a bore: bores·C·A·√(2Δp/ρ)" },
  "coolant-flow-practice": {
    kind: "practice",
    text: "discharge coefficient 0.7, water: common practice, no source",
  },
  deflection: { kind: "print", text: "cantilever with an end load, F·L³/(3·E·I), handbooks of mechanics" },
  "elastic-modulus": {
    kind: "memory",
    text: "elastic modulus of steel and carbide: textbook values from memory",
  },
  "si-units": { kind: "exact", text: "NIST SP 811, Appendix B; BIPM, The International System of Units" },
  "chip-path": { kind: "practice", text: "common practice, no source" },
  "runout-limit": { kind: "practice", text: "common practice, no source" },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;

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
    text: "ISO 522 / DIN 1420 rule (15 % and 35 % of the tolerance), as in Sharma, Textbook of Production Engineering, ch. 15; rounding each share up to 0.001 mm is a value from memory",
  },
  "reamer-nominal-band": { kind: "practice", text: "common practice, no source" },
  practice: { kind: "practice", text: "common practice, no source" },
  derived: { kind: "derived", text: "derived from first principles" },
  stock: {
    kind: "print",
    text: "metric stock: trade-school text (2023); inch stock: common practice, no source",
  },
  "pre-ream-drill": {
    kind: "print",
    text: "reamed size less stock less what the drill cuts over, trade-school text (2023)",
  },
  "drill-sizes": {
    kind: "print",
    text: "number, letter and fraction drills: handbook drill tables; metric drills: BS 328",
  },
  "drill-point": { kind: "derived", text: "geometry of the drill point; 118° is common practice" },
  "spindle-speed": {
    kind: "print",
    text: "12·V/(π·D) and 1000·v/(π·D), open textbook Manufacturing Processes; US Army TM 1-420",
  },
  feed: { kind: "derived", text: "feed rate = feed per revolution × rev/min; feed per tooth × teeth" },
  "start-speed": {
    kind: "memory",
    text: "HSS reaming speeds by material, row by row as said in the material table; carbide twice the lower to three times the upper is published for drills (US Navy course 14345), common practice for reamers",
  },
  "start-feed": {
    kind: "print",
    text: "twice the drilling feeds of US Navy course 14345; doubling, the feed factors and scaling by flutes are common practice, no source",
  },
  "reamer-teeth": {
    kind: "print",
    text: "1.5·√D + 2 teeth, Sharma, Textbook of Production Engineering, ch. 15",
  },
  "machining-time": {
    kind: "print",
    text: "length of travel over feed rate, Groover and Machinery's Handbook",
  },
  "plug-gauges": { kind: "print", text: "GOST 24853-81, the ISO/R 1938 scheme" },
  kienzle: {
    kind: "memory",
    text: "Kienzle: kc = kc1.1·h^−mc; kc1.1 and mc are textbook values from memory",
  },
  "torque-power": { kind: "derived", text: "power = torque × angular speed" },
  taylor: { kind: "print", text: "Taylor: v·T^n = C; n and C from the user's own records" },
  "economic-speed": {
    kind: "memory",
    text: "Groover, Fundamentals of Modern Manufacturing (least cost and most production), value from memory; Ghosh & Mallik, example 4.26",
  },
  cost: { kind: "derived", text: "cost accounting from first principles" },
  "break-even": { kind: "print", text: "Panneerselvam, Engineering Economics, ex. 1.1" },
  runout: { kind: "derived", text: "first harmonic of four readings, from first principles" },
  "v-block": { kind: "derived", text: "geometry of a V-block over odd flutes; 60° and 108° also in print" },
  "root-sum-square": { kind: "derived", text: "sum of independent variances" },
  capability: { kind: "print", text: "NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6" },
  "gauge-study": {
    kind: "practice",
    text: "6·√(EV² + AV²) over the tolerance; 10 % and 30 % are common practice, no source",
  },
  "reference-temperature": {
    kind: "print",
    text: "ISO 1: reference temperature 20 °C; expansion coefficients are values from memory",
  },
  "si-units": { kind: "exact", text: "NIST SP 811, Appendix B; BIPM, The International System of Units" },
  "chip-path": { kind: "practice", text: "common practice, no source" },
  "runout-limit": { kind: "practice", text: "common practice, no source" },
} as const satisfies Record<string, Source>;

export type SourceKey = keyof typeof sources;

// data: every citation once, under a key. `kind` says how far it can be trusted:
// print (a published standard, handbook or textbook), exact (a definition), derived (from first principles),
// practice (common practice, no source), memory (a value known by heart, named but not seen).

export interface Source {
  readonly kind: "print" | "exact" | "derived" | "practice" | "memory";
  readonly text: string;
}

const of =
  (kind: Source["kind"]) =>
  (text: string): Source => ({ kind, text });
const [print, exact, derived, practice, memory] = [
  of("print"),
  of("exact"),
  of("derived"),
  of("practice"),
  of("memory"),
];

export const sources = {
  "iso-286-1": print("ISO 286-1:2010, Tables 1 to 5"),
  "iso-286-2": print("ISO 286-2:2010"),
  "ansi-b4.1": print("ANSI B4.1-1967 (R1987), as printed in Machinery's Handbook"),
  "iso-14253-1": print("ISO 14253-1, decision rules for conformity with specifications"),
  "iso-513": print("ISO 513, application groups of hard cutting materials"),
  "reamer-limits": print(
    "ISO 522 / DIN 1420 rule (15 % and 35 % of the tolerance), as in Sharma, Textbook of Production Engineering, ch. 15",
  ),
  "reamer-rounding": memory(
    "DIN 1420: each share of the tolerance rounded up to 0.001 mm, value from memory; 0.00005 in likewise",
  ),
  "reamer-nominal-band": practice("common practice, no source"),
  practice: practice("common practice, no source"),
  derived: derived("derived from first principles"),
  "stock-metric": print("stock for 2 to 50 mm: trade-school text (2023)"),
  "stock-practice": practice(
    "stock under 2 mm, over 50 mm and in inches, and its share by material: common practice, no source",
  ),
  "pre-ream-drill": print("reamed size less stock less drill oversize, trade-school text (2023)"),
  "drill-sizes": print(
    "number, letter, and fraction drills to 1 in: handbook drill tables; metric drills to 25 mm: BS 328",
  ),
  "taper-shank-drills": memory(
    "longer drills by step: ISO 235 and DIN 345 (metric), ANSI B94.11M (inch), values from memory",
  ),
  "drill-point": derived("geometry of the drill point"),
  "spindle-speed": print(
    "12·V/(π·D) and 1000·v/(π·D), open textbook Manufacturing Processes; US Army TM 1-420",
  ),
  feed: derived("feed rate = feed per revolution × rev/min; feed per tooth × teeth"),
  "start-speed": memory(
    "HSS reaming speeds: USCTI handbook and others, values from memory, each row with its source in MATERIALS()",
  ),
  "start-speed-carbide": print(
    "solid carbide: twice the lower to three times the upper HSS speed, published for drills (US Navy course 14345)",
  ),
  "modern-tools": practice(
    "speed and feed per tooth of other tools, and of hard materials in carbide: common practice, no source",
  ),
  "start-feed": print("drilling feeds by diameter, US Navy course 14345"),
  "start-feed-practice": practice(
    "twice the drilling feed, its share by material and flutes, less under .094 in: common practice, no source",
  ),
  "reamer-teeth": print("1.5·√D + 2 teeth, Sharma, Textbook of Production Engineering, ch. 15"),
  "flutes-practice": practice(
    "an even number, at most 12 in heads and cermet, PCD, CBN, one in a guided blade: common practice, no source",
  ),
  "machining-time": print("length of travel over feed rate, Groover and Machinery's Handbook"),
  "plug-gauges": print("GOST 24853-81, the ISO/R 1938 scheme"),
  "plug-gauge-rule": practice(
    "the 10 % rule, 5 % of the tolerance at each end for the gauges: common practice, no source",
  ),
  kienzle: memory("Kienzle: kc = kc1.1·h^−mc; kc1.1 and mc are textbook values from memory"),
  "torque-power": derived("power = torque × angular speed"),
  taylor: print("Taylor: v·T^n = C; n and C from the user's own records"),
  "economic-speed": memory(
    "Groover, Fundamentals of Modern Manufacturing (minimum cost, maximum production), value from memory",
  ),
  cost: derived("cost accounting from first principles"),
  "break-even": print("Panneerselvam, Engineering Economics, ex. 1.1"),
  runout: derived("first harmonic of four readings, from first principles"),
  "v-block": derived("geometry of a V-block over odd flutes"),
  "root-sum-square": derived("sum of independent variances"),
  capability: print("NIST/SEMATECH e-Handbook of Statistical Methods, 6.1.6"),
  "gauge-study": practice("6·√(EV² + AV²) over the tolerance, 10 % and 30 %: common practice, no source"),
  "reference-temperature": print("ISO 1: reference temperature 20 °C"),
  expansion: memory("linear expansion of the materials, textbook values from memory"),
  remedies: practice("causes, checks, and remedies: common practice, no source"),
  "shop-table": practice("your own table"),
  "hole-form": derived("least-squares slope and differences of the readings"),
  "hole-form-limit": practice("straight within 0.002 mm (0.0001 in): common practice, no source"),
  student: print("Student's t, NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.1"),
  "cpk-bound": memory("lower confidence bound of Cpk after Bissell (1990), value from memory"),
  "coolant-flow": derived("flow through a bore: bores·C·A·√(2Δp/ρ)"),
  "coolant-flow-practice": practice("discharge coefficient 0.7, water: common practice, no source"),
  deflection: print("cantilever with an end load, F·L³/(3·E·I), handbooks of mechanics"),
  "elastic-modulus": memory("elastic modulus of steel and carbide: textbook values from memory"),
  "si-units": exact("NIST SP 811, Appendix B; BIPM, The International System of Units"),
  "chip-path": practice("common practice, no source"),
  "runout-limit": practice("common practice, no source"),
};

export type SourceKey = keyof typeof sources;

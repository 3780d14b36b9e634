// calc: the words and symbols that stand around a size on a drawing.

export const THROUGH = new Set(["THRU", "THROUGH", "DURCH"]);
export const DEEP = new Set(["DEEP", "DP", "DEPTH", "TIEF"]);
/** The diameter sign, and what is written for it. */
export const DIAMETER_SIGNS = "⌀∅ØøΦφϕ";
export const DIAMETER = new Set([...DIAMETER_SIGNS, "%%c", "%%C", "DIA", "DIAMETER"]);
/** Beside a depth: `30 MIN DEEP`. */
export const LEAST = new Set(["MIN", "MAX"]);
export const COUNTED = new Set(["HOLES", "HOLE", "PL", "PLACES", "PLCS"]);
export const TIMES = new Set(["X", "×"]);
export const REAM = new Set(["REAM", "REAMED"]);
/** Operations before or beside reaming: their sizes are not the reamed one. */
export const OTHER_OPERATIONS = new Set(["DRILL", "DRILLED", "BORE", "BORED", "PREDRILL"]);
export const THREAD = new Set([
  ...["UNC", "UNF", "UNEF", "UNS", "UN", "UNJF", "NPT", "NPTF", "BSP", "BSPP", "BSPT", "TR"],
  ...["TAP", "TAPPED", "THREAD", "THD", "GEWINDE"],
]);
export const MODIFIERS = new Set(["ENVELOPE", "CT"]);
export const IGNORED = new Set([
  ...["TYP", "ALL", "(", ")", "[", "]", ",", ";", "REAM", "REAMED", "HOLE", "HOLES", "MIN"],
  ...["EQ", "SP", "EQUALLY", "SPACED", "NEAR", "FAR", "BOTH", "SIDE", "SIDES"],
]);
/** At these the description of another feature begins (counterbore, countersink). */
export const STOP = new Set(["⌴", "⌵"]);
export const GEOMETRIC = new Set([..."⌖⟂⌭◎○⌰⏥⌓⌒∥∠⌯↗⌮"]);
export const ROUGHNESS = new Set(["√", "RA", "RZ"]);
export const TO = new Set(["TO", "BIS"]);
export const UNIT_WORDS = new Set(["MM", "IN", "INCH", "INCHES", '"', "″", "”", "''"]);
/** What may stand inside a roughness, a tolerance frame or a bolt circle after its number. */
export const ROUGHNESS_WORDS = new Set(["RA", "RZ", "µM", "ΜM", "UM", "µIN", "UIN", "MAX", "MM", "IN"]);
export const CIRCLE_WORDS = new Set(["BC", "PC", "PCD", "BOLT", "CIRCLE", "A", "AN", "DIA", ...UNIT_WORDS]);

// build: the grammar of callouts, written once: the reference prints it, and the tests generate callouts from it that
// must be read back. A name in capitals stands for a text that depends on what the callout says.

/** Alternatives of each rule. `?` may be left out, `*` may repeat, `_` is any space or none, `-` one space at least. */
export const calloutGrammar: Readonly<Record<string, readonly string[]>> = {
  callout: ["before? toleranced after* aside?", "before? toleranced - note more*"],
  before: ["count-before -", "count-before - REAM-WORD -", "REAM-WORD -", "HOLE-WORD -"],
  "count-before": [
    "COUNT TIMES",
    "COUNT - TIMES",
    "COUNT - HOLES",
    'COUNT "-" DIAMETER-SIGN',
    "OPEN COUNT CLOSE",
    "QUANTITY-WORD - COUNT",
  ],
  toleranced: ["with-class", "with-deviations", "with-limits"],
  "with-class": [
    "diameter? SIZE unit? _ CLASS",
    "diameter? SIZE unit? _ CLASS fit-shaft",
    "diameter? SIZE unit? _ CLASS - stated",
  ],
  "fit-shaft": ['"/g6"', '"/h6"', '"-g6"'],
  stated: [
    "OPEN DEVIATIONS CLOSE",
    "OPEN LIMIT JOINT OTHER-LIMIT CLOSE",
    "LIMIT - OTHER-LIMIT",
    "OPEN MICROMETERS CLOSE",
  ],
  "with-deviations": ["diameter? SIZE unit? - DEVIATIONS", "diameter? SIZE unit? - MICROMETERS"],
  "with-limits": [
    "diameter? LIMIT JOINT OTHER-LIMIT unit?",
    "diameter? LIMIT - diameter? OTHER-LIMIT unit?",
    "diameter? LIMIT - LEAST-WORD - OTHER-LIMIT - GREATEST-WORD",
    "GREATEST-WORD - OTHER-LIMIT - LEAST-WORD - LIMIT",
  ],
  diameter: ["DIAMETER-SIGN _", "DIAMETER-WORD -"],
  unit: ["_ UNIT"],
  after: ["more", "- modifier"],
  more: ["- through", "- depth", "- typical", "- count-after", "- NOTE"],
  through: ["THROUGH-WORD"],
  depth: [
    "DEPTH-SIGN _ DEPTH",
    "TIMES - DEPTH - DEEP-WORD",
    "DEPTH - DEEP-WORD",
    'DEPTH - "MIN" - DEEP-WORD',
    "DEPTH-SIGN _ DEPTH - DEPTH-TOLERANCE",
    "DEPTH - DEPTH-TOLERANCE - DEEP-WORD",
  ],
  modifier: ["MODIFIER"],
  typical: ["TYPICAL-WORD"],
  "count-after": ["COUNT - HOLES", "OPEN COUNT TIMES CLOSE", "OPEN COUNT CLOSE"],
  aside: ["- note", "- other-feature", "- PHRASE", '"," - PHRASE'],
  note: ["frame", "roughness", "circle"],
  frame: [
    "FRAME-SIGN _ DIAMETER-SIGN? 0.1 - FRAME-MODIFIER? - A - B",
    '"|" FRAME-SIGN "|" DIAMETER-SIGN? 0.1 - FRAME-MODIFIER? "|" A "|" B "|"',
    '"POSITION" - 0.1 - A - B',
  ],
  roughness: ['"Ra" - ROUGHNESS', '"√" _ ROUGHNESS', 'ROUGHNESS "√"', 'ROUGHNESS - "FINISH"'],
  circle: ['"ON" - DIAMETER-SIGN 80 - "B.C."'],
  "other-feature": [
    "FEATURE-SIGN _ DIAMETER-SIGN 20 - DEPTH-SIGN 5",
    "FEATURE-WORD - DIAMETER-SIGN 800 - DEPTH-SIGN 5",
  ],
};

/** What the names in capitals may be written as, where that does not depend on the callout. */
export const calloutWords: Readonly<Record<string, readonly string[]>> = {
  TIMES: ["X", "x", "×"],
  HOLES: ["HOLES", "holes", "PL", "PLACES", "OFF", "No.", "POSNS", "Stück", "trous", "fori", "agujeros"],
  "QUANTITY-WORD": ["QTY", "Anzahl"],
  "HOLE-WORD": ["HOLE", "Bohrung", "alésage", "foro", "taladro"],
  "REAM-WORD": ["REAM", "ream", "Reiben", "aléser", "alesare", "escariar", "リーマ", "铰"],
  "DIAMETER-SIGN": ["Ø", "⌀", "∅", "ø", "φ", "%%c"],
  "DIAMETER-WORD": ["dia", "DIA", "DIA."],
  OPEN: ["("],
  CLOSE: [")"],
  JOINT: ["-", " - ", "/", " to ", "–", "~", " bis "],
  "LEAST-WORD": ["MIN", "min."],
  "GREATEST-WORD": ["MAX", "max."],
  "THROUGH-WORD": [
    ...["THRU", "THROUGH", "THRU ALL", "thru", "DURCH", "durchgehend", "débouchant", "passante", "pasante"],
    ...["通し", "通孔"],
  ],
  "DEPTH-SIGN": ["↧"],
  "DEPTH-TOLERANCE": ["+0.5/0", "±0.1"],
  "DEEP-WORD": ["DEEP", "deep", "DP", "TIEF"],
  "TYPICAL-WORD": ["TYP", "TYP.", "EQUALLY SPACED", "EQ SP"],
  MODIFIER: ["Ⓔ", "(E)", "ENVELOPE", "CT", "Ⓜ", "Ⓛ"],
  "FRAME-MODIFIER": ["Ⓜ", "Ⓛ"],
  "FRAME-SIGN": ["⌖", "⟂", "⌭", "◎", "○", "⌰"],
  ROUGHNESS: ["0.8", "1,6", "32"],
  "FEATURE-SIGN": ["⌴", "⌵"],
  "FEATURE-WORD": ["C'BORE", "CBORE", "CSK", "SPOTFACE", "Senkung", "lamage", "ザグリ", "沉孔"],
  NOTE: ["SLIP FIT", "FAR SIDE ONLY", "DEBURR BOTH ENDS", "AFTER PLATING", "beidseitig entgratet"],
  PHRASE: ["FOR 5/16 DOWEL", "SEE NOTE 3", "PER SPEC 2017", "siehe Detail 4", "pour goupille 8 m6"],
};

/** The grammar as lines for the reference page: a rule's alternatives one below another. */
export function grammarLines(): string[] {
  const rules = Object.entries(calloutGrammar).map(([name, ways]) =>
    ways
      .map((way, index) => (index === 0 ? `${name} = ${way}` : `${" ".repeat(name.length)} | ${way}`))
      .join("\n"),
  );
  const words = Object.entries(calloutWords).map(
    ([name, ways]) => `${name} = ${ways.map((way) => JSON.stringify(way)).join(" | ")}`,
  );
  return [...rules, "", ...words];
}

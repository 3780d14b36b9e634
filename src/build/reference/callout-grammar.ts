// build: the grammar of callouts, written once: the reference prints it, and the tests generate callouts from it that
// must be read back. A name in capitals stands for a text that depends on what the callout says.

/** Alternatives of each rule. `?` may be left out, `*` may repeat, `_` is any space or none, `-` one space at least. */
export const calloutGrammar: Readonly<Record<string, readonly string[]>> = {
  callout: ["before? toleranced after* aside?", "before? toleranced - note more*"],
  before: ["count-before -", "count-before - REAM-WORD -", "REAM-WORD -"],
  "count-before": ["COUNT TIMES", "COUNT - TIMES", "COUNT - HOLES", 'COUNT "-" DIAMETER-SIGN'],
  toleranced: ["with-class", "with-deviations", "with-limits"],
  "with-class": [
    "diameter? SIZE unit? _ CLASS",
    "diameter? SIZE unit? _ CLASS fit-shaft",
    "diameter? SIZE unit? _ CLASS - stated",
  ],
  "fit-shaft": ['"/g6"', '"/h6"'],
  stated: ["OPEN DEVIATIONS CLOSE", "OPEN LIMIT JOINT OTHER-LIMIT CLOSE"],
  "with-deviations": ["diameter? SIZE unit? - DEVIATIONS"],
  "with-limits": ["diameter? LIMIT JOINT OTHER-LIMIT unit?"],
  diameter: ["DIAMETER-SIGN _", "DIAMETER-WORD -"],
  unit: ["_ UNIT"],
  after: ["more", "- modifier"],
  more: ["- through", "- depth", "- typical", "- count-after"],
  through: ["THROUGH-WORD"],
  depth: [
    "DEPTH-SIGN _ DEPTH",
    "TIMES - DEPTH - DEEP-WORD",
    "DEPTH - DEEP-WORD",
    'DEPTH - "MIN" - DEEP-WORD',
  ],
  modifier: ["MODIFIER"],
  typical: ["TYPICAL-WORD"],
  "count-after": ["COUNT - HOLES", "OPEN COUNT TIMES CLOSE"],
  aside: ["- note", "- other-feature"],
  note: ["frame", "roughness", "circle"],
  frame: ["FRAME-SIGN _ DIAMETER-SIGN? 0.1 - FRAME-MODIFIER? - A - B"],
  roughness: ['"Ra" - ROUGHNESS', '"√" _ ROUGHNESS'],
  circle: ['"ON" - DIAMETER-SIGN 80 - "B.C."'],
  "other-feature": ["FEATURE-SIGN _ DIAMETER-SIGN 20 - DEPTH-SIGN 5"],
};

/** What the names in capitals may be written as, where that does not depend on the callout. */
export const calloutWords: Readonly<Record<string, readonly string[]>> = {
  TIMES: ["X", "x", "×"],
  HOLES: ["HOLES", "holes", "PL", "PLACES"],
  "REAM-WORD": ["REAM", "ream"],
  "DIAMETER-SIGN": ["Ø", "⌀", "∅", "ø", "φ", "%%c"],
  "DIAMETER-WORD": ["dia", "DIA", "DIA."],
  OPEN: ["("],
  CLOSE: [")"],
  JOINT: ["-", " - ", "/", " to ", "–"],
  "THROUGH-WORD": ["THRU", "THROUGH", "THRU ALL", "thru", "DURCH"],
  "DEPTH-SIGN": ["↧"],
  "DEEP-WORD": ["DEEP", "deep", "DP", "TIEF"],
  "TYPICAL-WORD": ["TYP", "TYP.", "EQUALLY SPACED", "EQ SP"],
  MODIFIER: ["Ⓔ", "(E)", "ENVELOPE", "CT", "Ⓜ", "Ⓛ"],
  "FRAME-MODIFIER": ["Ⓜ", "Ⓛ"],
  "FRAME-SIGN": ["⌖", "⟂", "⌭", "◎", "○", "⌰"],
  ROUGHNESS: ["0.8", "1,6", "32"],
  "FEATURE-SIGN": ["⌴", "⌵"],
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

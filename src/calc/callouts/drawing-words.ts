// calc: the words and symbols that stand around a size on a drawing, by what they do there.

import { drawingWords, type Role, uncoatedBeginnings } from "../../data/drawing-words.ts";

/** The diameter sign, and what is written for it: Greek and Cyrillic letters, and what a symbol font leaves in a copy. */
export const DIAMETER_SIGNS = "⌀∅ØøΦφϕФфÆ";

export const roles: ReadonlyMap<string, Role> = new Map(
  Object.entries(drawingWords).flatMap(([role, list]) => list.map((word) => [word, role as Role] as const)),
);

/** A word as the table has it: capitals, no accents, points or apostrophes. */
export function plainWord(word: string): string {
  const capitals = word.toUpperCase();
  return (
    /^[\x20-\x7e]*$/.test(capitals) ? capitals : capitals.normalize("NFD").replace(/[\u0300-\u036f]/g, "")
  )
    .replace(/([A-Z])[.'’]/g, "$1")
    .normalize("NFC");
}

/** The longest word, or phrase of words, of the table has this many. */
export const LONGEST_PHRASE = 4;
/** Inside a tolerance frame, a roughness or a bolt circle after its number. */
export const FRAME_WORDS = new Set(["TO", "WITHIN", "TIR", "FIM", "DATUM", "WRT", "RFS", "MMC"]);
export const ROUGHNESS_WORDS = new Set(["µIN", "ΜIN", "UIN", "AA", "CLA", "<", "≤", "=", ":"]);

/** Whether a word behind AFTER names something that adds no layer; EN is a standard, ENAMEL none. */
export const isUncoated = (word: string): boolean =>
  word === "EN" || uncoatedBeginnings.some((one) => word.startsWith(one));
/** `塗装後`, `镀锌后`; not after hardening, welding, assembling or grinding. */
export const isAfterAtEnd = (word: string): boolean =>
  /.[後后]$/.test(word) && !/[热熱焼溶焊淬組组立研磨]|装配/.test(word);

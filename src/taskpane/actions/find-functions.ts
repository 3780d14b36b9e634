// taskpane: finds functions by what a person wants: "rpm", "how much stock", "speed that costs least".

import type { Help, HelpFunction } from "../help.ts";

/** Words that say nothing of what is wanted. */
const EMPTY_WORDS = new Set(
  "a an and are as at be by can do does for from get give has have how i in is it me my need of on or should so that the to want what when which with would you much many long big".split(
    " ",
  ),
);

/** Words of the shop floor for words of the help. */
const OTHER_WORDS: Readonly<Record<string, string>> = {
  revs: "rpm",
  revolutions: "rpm",
  turns: "rpm",
  sfm: "surface",
  ipr: "feedperrev",
  ipm: "feedrate",
  predrill: "drill",
  oversize: "cutsover",
  bell: "runout",
  tir: "runout",
  money: "cost",
  quote: "price",
  allowance: "stock",
  cpk: "capability",
  coating: "plate",
  anodise: "anodizing",
  anodize: "anodizing",
};

/** How much a word found there says. */
const WEIGHTS = { name: 12, namePart: 8, task: 5, description: 4, argument: 2, rest: 1 };

interface Entry {
  readonly described: HelpFunction;
  readonly name: string;
  readonly task: ReadonlySet<string>;
  readonly description: ReadonlySet<string>;
  readonly argument: ReadonlySet<string>;
  readonly rest: ReadonlySet<string>;
  /** Its first place among the tasks, for those that are equally good. */
  readonly place: number;
}

export type Finder = (query: string) => readonly HelpFunction[];

export function functionFinder(help: Help): Finder {
  const entries = help.functions.map((described): Entry => {
    const tasks = help.tasks.filter(({ ids }) => ids.includes(described.id));
    const { parameters } = described;
    return {
      described,
      name: described.id.toLowerCase(),
      task: wordsOf(...tasks.map(({ task }) => task)),
      description: wordsOf(described.description),
      argument: wordsOf(...parameters.map(({ name }) => name)),
      rest: wordsOf(
        described.topic,
        described.remarks,
        described.returns,
        ...parameters.map(({ description }) => description),
      ),
      place: Math.min(1000, ...tasks.map(({ ids }) => ids.indexOf(described.id))),
    };
  });
  return (query) => {
    const all = query.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
    const said = all.filter((word) => !EMPTY_WORDS.has(word));
    const wanted = said.length > 0 ? said : all;
    if (wanted.length === 0) return [];
    const joined = all.join("");
    return entries
      .map((entry) => ({ entry, ...worth(entry, wanted, joined) }))
      .filter(({ score }) => score > 0)
      .sort((a, b) => b.met - a.met || b.score - a.score || a.entry.place - b.entry.place)
      .map(({ entry }) => entry.described);
  };
}

function worth(entry: Entry, wanted: readonly string[], joined: string): { met: number; score: number } {
  let met = 0;
  let score = 0;
  for (const word of wanted) {
    const best = Math.max(wordWorth(entry, word), wordWorth(entry, OTHER_WORDS[word] ?? word));
    if (best > 0) met++;
    score += best;
  }
  // "feed rate", "part cost": the words together are the name.
  if (entry.name === joined) score += 2 * WEIGHTS.name;
  return { met, score };
}

function wordWorth(entry: Entry, word: string): number {
  const root = stem(word);
  let score = 0;
  if (entry.name === word || entry.name === root) score += 2 * WEIGHTS.name;
  else if (entry.name.startsWith(root)) score += WEIGHTS.name;
  else if (root.length > 2 && entry.name.includes(root)) score += WEIGHTS.namePart;
  for (const part of ["task", "description", "argument", "rest"] as const)
    if (has(entry[part], root)) score += WEIGHTS[part];
  return score;
}

function has(words: ReadonlySet<string>, root: string): boolean {
  if (words.has(root)) return true;
  if (root.length < 4) return false;
  for (const word of words) if (word.startsWith(root)) return true;
  return false;
}

function wordsOf(...texts: readonly string[]): Set<string> {
  const words = new Set<string>();
  for (const text of texts) {
    // feedPerRev is found by "feed" and by "feedperrev".
    for (const word of text.match(/[\p{L}\p{N}]+/gu) ?? []) {
      words.add(stem(word.toLowerCase()));
      for (const part of word.match(/[A-Z]?[a-z]+/g) ?? []) words.add(stem(part.toLowerCase()));
    }
  }
  return words;
}

/** Speeds and speed are one word; pass stays pass. */
function stem(word: string): string {
  return word.length > 3 && word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word;
}

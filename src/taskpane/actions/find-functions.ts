// taskpane: finds functions by what people ask: "rpm", "how much stock", "chip load". The pane and the reference search
// with it. A query that fits nothing is answered with the likeliest functions of all.

import { hasOwn } from "../../calc/own.ts";
import type { Help, HelpFunction } from "../help.ts";

/** Words that say nothing of what is wanted. */
const FILLERS = new Set(
  "a all am an and any are as at be by can could do does for from get give has have how i if in into is it its like me must my need no of on one or our please should show so some tell than that the their them then there these this to too use using want was we what whats when where which who why will with without would you your calculate find know make work much many long".split(
    " ",
  ),
);

/** How much a word found there counts. */
const WEIGHTS = { name: 14, namePart: 8, keyword: 8, task: 4, description: 4, argument: 2, rest: 1 } as const;
/** A phrase that the query has whole counts this for each of its words. */
const PHRASE = 12;
/** What is answered where nothing fits. */
const LIKELIEST = ["PLAN", "LIMITS", "REAMERSIZE", "DRILLFOR", "CUTTINGDATA", "PRICE"];

interface Entry {
  readonly described: HelpFunction;
  readonly name: string;
  readonly fields: Readonly<
    Record<"keyword" | "task" | "description" | "argument" | "rest", ReadonlySet<string>>
  >;
  readonly phrases: readonly (readonly string[])[];
  /** Its first place among the tasks, for those that are equally good. */
  readonly place: number;
}

export interface Found {
  readonly functions: readonly HelpFunction[];
  /** False where nothing fits and the likeliest of all stand in. */
  readonly fits: boolean;
}

export type Finder = (query: string) => Found;

export function functionFinder(help: Help): Finder {
  const entries = help.functions.map((described) => entryOf(described, help));
  const known = new Set(
    entries.flatMap((entry) => [...Object.values(entry.fields)].flatMap((words) => [...words])),
  );
  const rarity = rarityOf(entries);
  return (query) => {
    const all = (query.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).slice(0, 40);
    if (all.length === 0) return { functions: [], fits: true };
    const meant = all.filter((word) => !FILLERS.has(word));
    const words = (meant.length > 0 ? meant : all).map((word) => rootsOf(word, known, help.otherWords));
    const joined = all.join("");
    const ranked = entries
      .map((entry) => ({ entry, score: worth(entry, words, joined, rarity) }))
      .filter(({ score }) => score > 0)
      .sort((a, b) => b.score - a.score || a.entry.place - b.entry.place);
    if (ranked.length > 0) return { functions: ranked.map(({ entry }) => entry.described), fits: true };
    return { functions: help.functions.filter(({ id }) => LIKELIEST.includes(id)), fits: false };
  };
}

function entryOf(described: HelpFunction, help: Help): Entry {
  const tasks = help.tasks.filter(({ ids }) => ids.includes(described.id));
  const { parameters } = described;
  const phrases = described.keywords.map((phrase) => [...wordsOf(phrase)]);
  return {
    described,
    name: described.id.toLowerCase(),
    phrases: phrases.filter((words) => words.length > 1),
    fields: {
      keyword: new Set(phrases.flat()),
      task: wordsOf(...tasks.map(({ task }) => task)),
      description: wordsOf(described.description),
      argument: wordsOf(...parameters.map(({ name }) => name)),
      rest: wordsOf(
        ...[described.topic, described.remarks, described.returns, ...described.row],
        ...parameters.flatMap(({ description, choices }) => [description, ...choices]),
      ),
    },
    place: Math.min(1000, ...tasks.map(({ ids }) => ids.indexOf(described.id))),
  };
}

/** The fewer functions a word stands with, the more it says. */
function rarityOf(entries: readonly Entry[]): (word: string) => number {
  const counts = new Map<string, number>();
  for (const { fields } of entries)
    for (const word of new Set(Object.values(fields).flatMap((words) => [...words])))
      counts.set(word, (counts.get(word) ?? 0) + 1);
  return (word) => Math.log(1 + entries.length / (counts.get(word) ?? entries.length));
}

/** A word as the index has it: its root, what the shop means by it, or the nearest known spelling. */
function rootsOf(
  word: string,
  known: ReadonlySet<string>,
  others: Readonly<Record<string, string>>,
): string[] {
  const roots = [stem(word), ...kindOf(word)];
  const other = hasOwn(others, word) ? others[word] : undefined;
  if (other) roots.push(stem(other));
  if (!other && !known.has(roots[0]) && word.length > 3)
    roots.push(...[...known].filter((one) => isNear(one, roots[0])).slice(0, 3));
  return roots;
}

/** "h7" is a class and asks for limits; "4140", "316l" and "a380" are metals. */
function kindOf(word: string): string[] {
  if (/^(?:[a-h]|js?|[kmnp]|it)\d{1,2}$/.test(word)) return ["limit", "callout"];
  return /^(?:[a-z]{0,3}\d{3,5}[a-z]{0,2}|\d{1,2}[a-z]{2,}\d*)$/.test(word) ? ["material"] : [];
}

function worth(
  entry: Entry,
  words: readonly (readonly string[])[],
  joined: string,
  rarity: (word: string) => number,
): number {
  let score = 0;
  for (const roots of words) score += Math.max(...roots.map((root) => wordWorth(entry, root) * rarity(root)));
  const said = new Set(words.flat());
  for (const phrase of entry.phrases)
    if (phrase.some((word) => said.has(word)) && phrase.every((word) => said.has(word) || FILLERS.has(word)))
      score += PHRASE * phrase.length;
  // "feed rate", "part cost": the words together are the name.
  return entry.name === joined ? score + 1000 : score;
}

function wordWorth({ name, fields }: Entry, root: string): number {
  let score = 0;
  if (name === root) score += 4 * WEIGHTS.name;
  else if (root.length > 2 && name.startsWith(root)) score += WEIGHTS.name;
  else if (root.length > 3 && name.includes(root)) score += WEIGHTS.namePart;
  for (const field of ["keyword", "task", "description", "argument", "rest"] as const)
    if (has(fields[field], root)) score += WEIGHTS[field];
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

/** Speeds and speed are one word, reaming and ream, plated and plate; pass stays pass. */
function stem(word: string): string {
  if (word.length > 6 && word.endsWith("ing")) return word.slice(0, -3);
  if (word.length > 5 && word.endsWith("ed")) return word.slice(0, -2);
  return word.length > 3 && word.endsWith("s") && !word.endsWith("ss") ? word.slice(0, -1) : word;
}

/** One letter changed, left out, added, or two swapped; two such mistakes in long words. */
function isNear(one: string, other: string): boolean {
  const most = other.length > 7 ? 2 : 1;
  if (Math.abs(one.length - other.length) > most || one.length < 4) return false;
  let before: number[] = [];
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (let i = 1; i <= one.length; i++) {
    const next = [i];
    for (let j = 1; j <= other.length; j++) {
      const swap =
        i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]
          ? before[j - 2] + 1
          : Number.POSITIVE_INFINITY;
      const change = row[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1);
      next.push(Math.min(row[j] + 1, next[j - 1] + 1, change, swap));
    }
    [before, row] = [row, next];
  }
  return row[other.length] <= most;
}
